// SPDX-License-Identifier: Apache-2.0
#include "engine/statistics/monte_carlo.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "engine/statistics/distributions.h"

namespace hingepin::statistics {
namespace {

const double kRoot3 = std::sqrt(3.0);

// Source: JCGM 101:2008 clause 9.2.2, four standard normal inputs: u = 2, 95 % interval +-3.92 (from memory;
// exact here).
TEST(MonteCarloTest, SumOfFourNormalsIsNormal) {
  const auto result = propagate(
      [](Random& random) { return random.normal() + random.normal() + random.normal() + random.normal(); },
      Random(1), 0.95, 2, 10'000'000);
  ASSERT_TRUE(result.converged);
  // Two digits of 2.0: half a unit of the second is 0.05, stable to two standard deviations.
  EXPECT_NEAR(result.mean, 0.0, 0.05);
  EXPECT_NEAR(result.standard_uncertainty, 2.0, 0.05);
  EXPECT_NEAR(result.low, -3.92, 0.05);
  EXPECT_NEAR(result.high, 3.92, 0.05);
}

// Source: JCGM 101:2008 clause 9.2.3, four rectangular inputs of variance 1: u = 2, 95 % interval +-3.88
// (from memory). Exact: the upper tail of the sum of four uniforms is (4 - s)^4 / 24.
TEST(MonteCarloTest, SumOfFourRectangularsHasItsExactInterval) {
  const double end = 2.0 * kRoot3 * (2.0 - std::pow(24.0 * 0.025, 0.25));
  ASSERT_NEAR(end, 3.88, 0.005);
  const auto sum = [](Random& random) {
    double total = 0.0;
    for (int i = 0; i < 4; ++i) total += random.uniform(-kRoot3, kRoot3);
    return total;
  };
  const auto result = propagate(sum, Random(2), 0.95, 2, 10'000'000);
  ASSERT_TRUE(result.converged);
  EXPECT_NEAR(result.standard_uncertainty, 2.0, 0.05);
  EXPECT_NEAR(result.low, -end, 0.05);
  EXPECT_NEAR(result.high, end, 0.05);
}

// Source: JCGM 101:2008 clause 9.2.4, one rectangular input ten times as wide: u = 10.1, 95 % interval
// +-17.0, where the normal would give +-19.9 (from memory).
TEST(MonteCarloTest, DominantRectangularIsFarFromNormal) {
  const auto sum = [](Random& random) {
    double total = random.uniform(-10.0 * kRoot3, 10.0 * kRoot3);
    for (int i = 0; i < 3; ++i) total += random.uniform(-kRoot3, kRoot3);
    return total;
  };
  const auto result = propagate(sum, Random(3), 0.95, 3, 10'000'000);
  ASSERT_TRUE(result.converged);
  EXPECT_NEAR(result.standard_uncertainty, std::sqrt(103.0), 0.05);
  // Three digits of 10.1 and the printed one: half a tenth each.
  EXPECT_NEAR(result.low, -17.0, 0.1);
  EXPECT_NEAR(result.high, 17.0, 0.1);
}

// Source: JCGM 101:2008 clause 9.3, calibration of a mass standard against another in air, in mg: 1.2341, u =
// 0.0754, shortest 95 % interval 1.0834 to 1.3825, where first-order propagation gives u = 0.0539 (from
// memory).
TEST(MonteCarloTest, MassStandardOfJcgm101HasItsUncertainty) {
  const auto deviation = [](Random& random) {
    const double reference_mg = 100000.0 + 0.050 * random.normal();
    const double added_mg = 1.234 + 0.020 * random.normal();
    const double air = random.uniform(1.10, 1.30);
    const double weight = random.uniform(7000.0, 9000.0);
    const double standard = random.uniform(7950.0, 8050.0);
    return (reference_mg + added_mg) * (1.0 + (air - 1.2) * (1.0 / weight - 1.0 / standard)) - 100000.0;
  };
  const auto result = propagate(deviation, Random(4), 0.95, 2, 10'000'000);
  ASSERT_TRUE(result.converged);
  // Two digits of 0.075: 0.0005; the shortest interval is flat at its minimum and less sure.
  EXPECT_NEAR(result.mean, 1.2341, 5e-4);
  EXPECT_NEAR(result.standard_uncertainty, 0.0754, 5e-4);
  EXPECT_NEAR(result.shortest_low, 1.0834, 4e-3);
  EXPECT_NEAR(result.shortest_high, 1.3825, 4e-3);
}

TEST(MonteCarloTest, ShortestIntervalOfAnExponentialStartsAtZero) {
  const auto result = propagate([](Random& random) { return -std::log(1.0 - random.uniform()); }, Random(5),
                                0.95, 2, 10'000'000);
  ASSERT_TRUE(result.converged);
  EXPECT_NEAR(result.mean, 1.0, 0.05);
  EXPECT_NEAR(result.low, -std::log(0.975), 0.05);
  EXPECT_NEAR(result.high, -std::log(0.025), 0.05);
  EXPECT_NEAR(result.shortest_low, 0.0, 0.02);
  EXPECT_NEAR(result.shortest_high, -std::log(0.05), 0.05);
}

TEST(MonteCarloTest, ToleranceMeansWhatItSays) {
  // Over repeated runs the errors stay within the tolerance about as often as two standard deviations
  // promise. The stop looks again after each block, so that it is met a little too early.
  constexpr int kRuns = 30;
  int within = 0;
  for (int k = 0; k < kRuns; ++k) {
    const auto result = propagate([](Random& random) { return 2.0 * random.normal(); }, Random(6).fork(k),
                                  0.95, 2, 10'000'000);
    ASSERT_TRUE(result.converged);
    within += std::abs(result.high - 3.919928) <= 0.05 && std::abs(result.standard_uncertainty - 2.0) <= 0.05;
  }
  testing::Test::RecordProperty("within", within);
  EXPECT_GE(within, 25);
}

TEST(MonteCarloTest, MoreDigitsTakeMoreTrials) {
  const auto trial = [](Random& random) { return 2.0 * random.normal(); };
  const auto coarse = propagate(trial, Random(7), 0.95, 1, 10'000'000);
  const auto fine = propagate(trial, Random(7), 0.95, 2, 10'000'000);
  EXPECT_LT(coarse.trials, fine.trials);
  EXPECT_EQ(fine.trials % 10'000, 0);
  EXPECT_TRUE(coarse.converged && fine.converged);
}

TEST(MonteCarloTest, HighCoverageTakesLongerBlocks) {
  const auto result =
      propagate([](Random& random) { return random.normal(); }, Random(8), 0.999, 1, 10'000'000);
  EXPECT_EQ(result.trials % 100'000, 0);
  EXPECT_NEAR(result.high, normalQuantile(0.9995), 0.1);
}

TEST(MonteCarloTest, LimitOfTrialsIsKeptAndSaid) {
  const auto trial = [](Random& random) { return random.normal(); };
  for (const long limit : {2L, 500L, 35'000L}) {
    const auto result = propagate(trial, Random(9), 0.95, 6, limit);
    EXPECT_FALSE(result.converged);
    EXPECT_LE(result.trials, limit);
    EXPECT_GE(result.trials, 2);
    EXPECT_LE(result.low, result.high);
  }
  EXPECT_EQ(propagate(trial, Random(9), 0.95, 6, -5).trials, 2);
}

TEST(MonteCarloTest, SameSeedGivesTheSameResult) {
  const auto trial = [](Random& random) { return random.normal() * random.uniform(); };
  const auto first = propagate(trial, Random(10), 0.95, 1, 1'000'000);
  const auto second = propagate(trial, Random(10), 0.95, 1, 1'000'000);
  EXPECT_EQ(first.mean, second.mean);
  EXPECT_EQ(first.shortest_high, second.shortest_high);
  EXPECT_EQ(first.trials, second.trials);
}

TEST(MonteCarloTest, ConstantHasNoUncertainty) {
  const auto result = propagate([](Random&) { return 1234.1; }, Random(11), 0.95, 2, 1'000'000);
  EXPECT_TRUE(result.converged);
  EXPECT_EQ(result.mean, 1234.1);
  EXPECT_EQ(result.standard_uncertainty, 0.0);
  EXPECT_EQ(result.low, 1234.1);
  EXPECT_EQ(result.shortest_high, 1234.1);
}

TEST(MonteCarloTest, ValueThatIsNotFiniteIsNotAveragedAway) {
  const auto result = propagate([](Random& random) { return std::log(random.uniform() - 0.001); }, Random(12),
                                0.95, 2, 1'000'000);
  EXPECT_TRUE(std::isnan(result.mean));
  EXPECT_TRUE(std::isnan(result.high));
  EXPECT_FALSE(result.converged);
}

TEST(MonteCarloTest, CoverageOutOfRangeGivesNan) {
  const auto trial = [](Random& random) { return random.normal(); };
  for (const double coverage : {0.0, 1.0, -1.0, std::numeric_limits<double>::quiet_NaN()})
    EXPECT_TRUE(std::isnan(propagate(trial, Random(13), coverage, 2, 100'000).mean));
}

}  // namespace
}  // namespace hingepin::statistics
