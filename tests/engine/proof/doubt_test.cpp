// SPDX-License-Identifier: Apache-2.0
#include "engine/proof/doubt.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "engine/base/random.h"
#include "engine/statistics/distributions.h"
#include "tests/reference/gum.h"

namespace hingepin::proof {
namespace {

TEST(DoubtTest, ScatterAloneIsExpandedByGumTableG2) {
  for (const reference::CoverageRow& row : reference::kCoverageFactors) {
    const Doubt doubt{.scatter_u_kg = 3.0, .degrees_of_freedom = row.degrees_of_freedom};
    // Column p = 95.45 %, half a unit of its sixth decimal.
    EXPECT_NEAR(halfWidth(doubt) / 3.0, row.factors[3], 5.1e-7) << row.degrees_of_freedom;
  }
}

TEST(DoubtTest, WithoutScatterNormalAndRectangularKeepTheirExactWidths) {
  EXPECT_NEAR(halfWidth({.normal_u_kg = 3.0}), 6.0, 1e-12);
  EXPECT_NEAR(halfWidth({.rectangular_half_kg = 3.0}), 3.0 * statistics::kTwoSigmaCoverage, 1e-9);
  // With endless degrees of freedom the scatter is a normal like the other.
  EXPECT_NEAR(halfWidth({.scatter_u_kg = 3.0, .normal_u_kg = 4.0}), 10.0, 1e-9);
}

// Source: JCGM 106:2012 clause 7, the Zener diode (tests/reference/gum.h says what of it is from memory): one
// limit, so the other is put out of reach.
TEST(DoubtTest, ProbabilityOfConformityIsThatOfJcgm106) {
  const double middle = (reference::kZenerLimit_V - 100.0) / 2.0;
  const double half = (reference::kZenerLimit_V + 100.0) / 2.0;
  EXPECT_NEAR(probabilityWithin(reference::kZenerValue_V - middle,
                                {.normal_u_kg = reference::kZenerUncertainty_V}, half),
              reference::kZenerConformance, 1e-9);
}

// Source: JCGM 106:2012 table 1, guard bands z u for a wanted probability.
TEST(DoubtTest, AtTheGuardBandOfJcgm106TheProbabilityIsTheWantedOne) {
  for (const auto& [probability, z] : reference::kConformanceQuantiles) {
    EXPECT_NEAR(probabilityWithin(1000.0 - z * 5.0, {.normal_u_kg = 5.0}, 1000.0), probability, 1e-8);
  }
}

TEST(DoubtTest, ProbabilityOfScatterAloneIsStudents) {
  const Doubt doubt{.scatter_u_kg = 5.0, .degrees_of_freedom = 2.0};
  EXPECT_NEAR(probabilityWithin(12.0, doubt, 20.0),
              statistics::studentCdf(8.0 / 5.0, 2.0) - statistics::studentCdf(-32.0 / 5.0, 2.0), 1e-12);
}

TEST(DoubtTest, ProbabilityOfAllThreeIsThatOfSimulation) {
  const int kDraws = 400000;
  for (const Doubt& doubt : {Doubt{5.0, 2.0, 3.0, 4.0}, Doubt{1.0, 1.0, 3.0, 4.0}, Doubt{5.0, 4.0, 0.0, 6.0},
                             Doubt{8.0, 9.0, 0.1, 0.0}, Doubt{0.1, 1.0, 0.2, 5.0}}) {
    Random random(7);
    int inside = 0;
    for (int i = 0; i < kDraws; ++i) {
      const double t = statistics::studentQuantile(random.uniform(), doubt.degrees_of_freedom);
      const double truth = 6.0 + t * doubt.scatter_u_kg + random.normal() * doubt.normal_u_kg +
                           random.uniform(-1.0, 1.0) * doubt.rectangular_half_kg;
      inside += std::abs(truth) <= 10.0 ? 1 : 0;
    }
    // Four standard deviations of so many draws.
    EXPECT_NEAR(probabilityWithin(6.0, doubt, 10.0), inside / static_cast<double>(kDraws),
                4.0 * 0.5 / std::sqrt(kDraws));
  }
}

TEST(DoubtTest, PriorAndReadingAreWeighedAsJcgm106Says) {
  // Normal prior and reading: the posterior is normal, mean and variance weighted by the inverse variances.
  // Source: JCGM 106:2012 clause 7.2 and annex A.
  const double prior_u = 4.0;
  const double u = 3.0;
  const double mean = 10.0 * prior_u * prior_u / (prior_u * prior_u + u * u);
  const double spread = prior_u * u / std::hypot(prior_u, u);
  EXPECT_NEAR(probabilityWithin(10.0, {.normal_u_kg = u}, 8.0, NormalPrior{0.0, prior_u}),
              statistics::normalCdf((8.0 - mean) / spread) - statistics::normalCdf((-8.0 - mean) / spread),
              1e-9);
  // A prior that says nothing is as none.
  const Doubt doubt{5.0, 3.0, 2.0, 1.0};
  EXPECT_NEAR(probabilityWithin(10.0, doubt, 12.0, NormalPrior{0.0, 1e6}),
              probabilityWithin(10.0, doubt, 12.0), 1e-3);
}

TEST(DoubtTest, GlobalRisksAreThoseOfSimulation) {
  const NormalPrior prior{2.0, 8.0};
  const double u = 3.0;
  const Risks risks = globalRisks(prior, u, 10.0, 7.0);
  Random random(11);
  const int kDraws = 400000;
  int accepted_wrongly = 0;
  int rejected_wrongly = 0;
  for (int i = 0; i < kDraws; ++i) {
    const double truth = prior.mean_kg + prior.u_kg * random.normal();
    const bool accepted = std::abs(truth + u * random.normal()) <= 7.0;
    accepted_wrongly += accepted && std::abs(truth) > 10.0 ? 1 : 0;
    rejected_wrongly += !accepted && std::abs(truth) <= 10.0 ? 1 : 0;
  }
  EXPECT_NEAR(risks.consumers, accepted_wrongly / static_cast<double>(kDraws), 1e-3);
  EXPECT_NEAR(risks.producers, rejected_wrongly / static_cast<double>(kDraws), 3e-3);
  EXPECT_GT(risks.producers, risks.consumers);
}

TEST(DoubtTest, RoundingShiftsAMeanOnlyWhereTheStepHidesTheScatter) {
  EXPECT_DOUBLE_EQ(roundingHalf(0.0, 10.0), 5.0);
  EXPECT_LT(roundingHalf(10.0, 10.0), 1e-6);
  EXPECT_EQ(roundingHalf(3.0, 0.0), 0.0);
}

TEST(DoubtTest, ReadingsOnTwoMarksComeFromBetweenThem) {
  // A share p on the upper mark: mean p, variance p (1 - p), and a truth in the middle between the marks.
  for (const double share : {0.0, 0.1, 0.25, 0.4, 0.5}) {
    EXPECT_NEAR(roundingHalf(10.0 * std::sqrt(share * (1.0 - share)), 10.0), 10.0 * (0.5 - share), 1e-6);
  }
}

TEST(DoubtTest, AStepChangesNothingOfAScatterThatIsWide) {
  for (const int readings : {2, 5, 20}) {
    EXPECT_DOUBLE_EQ(unhiddenScatter(12.0, readings, 10.0), 12.0);
    EXPECT_EQ(unhiddenScatter(12.0, readings, 0.0), 12.0);
    EXPECT_GT(unhiddenScatter(0.0, readings, 10.0), 0.0);
  }
}

}  // namespace
}  // namespace hingepin::proof
