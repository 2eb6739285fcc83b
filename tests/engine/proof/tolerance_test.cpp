// SPDX-License-Identifier: Apache-2.0
#include "engine/proof/tolerance.h"

#include <gmock/gmock.h>

#include <cmath>

#include "engine/units/ucum.h"
#include "tests/engine/proof/kilograms.h"
#include "tests/reference/tolerances.h"

namespace hingepin::proof {
namespace {

const Mass kRated = Mass::fromKilograms(4500);

Mass pounds(double value) { return Mass::fromSi(findUnit("[lb_av]")->toSi(value)); }

double intervalsAllowed(ClassScheme scheme, std::string_view accuracy_class, Stage stage, Mass interval,
                        double load_intervals) {
  const Expected<Mass> limit = limitAt(ClassLimit{scheme, std::string(accuracy_class), interval, stage},
                                       load_intervals * interval, kRated);
  return limit ? *limit / interval : NAN;
}

template <std::size_t Size>
void expectTable(ClassScheme scheme, const std::array<reference::ToleranceRow, Size>& table, Mass interval) {
  for (std::size_t i = 0; i < Size; ++i) {
    const reference::ToleranceRow& row = table[i];
    const bool has_end = std::isfinite(row.to);
    const bool goes_on = i + 1 < Size && table[i + 1].accuracy_class == row.accuracy_class;
    SCOPED_TRACE(std::string(row.accuracy_class) + " to " + std::to_string(row.to));
    const auto expectAt = [&](double load, const reference::ToleranceRow& expected) {
      EXPECT_NEAR(intervalsAllowed(scheme, row.accuracy_class, Stage::Initial, interval, load),
                  expected.when_new, 1e-9);
      EXPECT_NEAR(intervalsAllowed(scheme, row.accuracy_class, Stage::InService, interval, load),
                  expected.in_use, 1e-9);
    };
    expectAt(row.from == 0.0 ? 0.0 : row.from + 0.01, row);
    expectAt(has_end ? (row.from + row.to) / 2.0 : row.from * 10.0, row);
    if (!has_end) continue;
    expectAt(row.to, row);
    if (goes_on) expectAt(row.to + 1.0, table[i + 1]);
    const bool ends = !goes_on && row.accuracy_class != "III L";
    if (ends) {
      EXPECT_TRUE(
          std::isnan(intervalsAllowed(scheme, row.accuracy_class, Stage::Initial, interval, row.to + 1.0)));
    }
  }
}

TEST(ToleranceTest, OimlR76IsItsTableAtEveryStepAndEdge) {
  for (const double interval_kg : {0.001, 5.0, 20.0, 50.0})
    expectTable(ClassScheme::OimlR76, reference::kOimlR76, kg(interval_kg));
}

TEST(ToleranceTest, OimlR51IsItsTableAtEveryStepAndEdge) {
  expectTable(ClassScheme::OimlR51, reference::kOimlR51, kg(20));
}

TEST(ToleranceTest, Handbook44IsItsTableAtEveryStepAndEdge) {
  expectTable(ClassScheme::NistHb44, reference::kNistHb44, kg(5));
  expectTable(ClassScheme::NistHb44, reference::kNistHb44, pounds(50));
}

TEST(ToleranceTest, Handbook44ClassThreeLongGoesOnWithoutEnd) {
  // 10000 d: 2 d up to 1000 d and 18 more steps of 500 d. Source: Handbook 44 section 2.20 Table 6, from
  // memory.
  EXPECT_NEAR(intervalsAllowed(ClassScheme::NistHb44, "III L", Stage::InService, kg(10), 10000), 20, 1e-9);
  EXPECT_NEAR(intervalsAllowed(ClassScheme::NistHb44, "III L", Stage::Initial, kg(10), 10000), 10, 1e-9);
  EXPECT_NEAR(intervalsAllowed(ClassScheme::NistHb44, "III L", Stage::InService, kg(10), 10001), 21, 1e-9);
}

TEST(ToleranceTest, LoadBeyondTheLastRowCannotBeJudged) {
  const Expected<Mass> limit =
      limitAt(ClassLimit{ClassScheme::OimlR76, "IIII", kg(2), Stage::InService}, kg(2002), kRated);
  ASSERT_FALSE(limit);
  EXPECT_EQ(limit.error().kind, ErrorKind::Insufficient);
  EXPECT_EQ(limit.error().message.code, "load-beyond-tolerance");
}

TEST(ToleranceTest, ClassOfAnotherSchemeIsRefusedWithThoseThatAreKnown) {
  const Expected<Mass> limit =
      limitAt(ClassLimit{ClassScheme::OimlR76, "Y(a)", kg(2), Stage::InService}, kg(20), kRated);
  ASSERT_FALSE(limit);
  EXPECT_EQ(limit.error().kind, ErrorKind::InvalidInput);
  EXPECT_EQ(limit.error().message.code, "accuracy-class-unknown");
  EXPECT_EQ(std::get<std::string>(limit.error().message.values[1].second), "I, II, III, IIII");
}

TEST(ToleranceTest, PercentIsOfTheReferenceOrOfTheRatedPayload) {
  const Fraction one = Fraction::fromPercent(1);
  EXPECT_NEAR(limitAt(PercentLimit{one, Of::Reference}, kg(2000), kRated)->inKilograms(), 20, 1e-12);
  EXPECT_NEAR(limitAt(PercentLimit{one, Of::Rated}, kg(2000), kRated)->inKilograms(), 45, 1e-12);
}

TEST(ToleranceTest, OwnStepsHoldUpToTheirEdgeAndEndWithTheLast) {
  const StepLimit steps{{{kg(1000), kg(20)}, {kg(3000), kg(30)}, {kg(5000), kg(40)}}};
  EXPECT_EQ(limitAt(steps, kg(0), kRated)->inKilograms(), 20);
  EXPECT_EQ(limitAt(steps, kg(1000), kRated)->inKilograms(), 20);
  EXPECT_EQ(limitAt(steps, kg(1000.1), kRated)->inKilograms(), 30);
  EXPECT_EQ(limitAt(steps, kg(5000), kRated)->inKilograms(), 40);
  EXPECT_EQ(limitAt(steps, kg(5000.1), kRated).error().message.code, "load-beyond-tolerance");
}

}  // namespace
}  // namespace hingepin::proof
