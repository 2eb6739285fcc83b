// SPDX-License-Identifier: Apache-2.0
#include "engine/statistics/correlation.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "engine/base/random.h"

namespace hingepin::statistics {
namespace {

using Eigen::VectorXd;

/// A stationary e_t = rho e_(t-1) + w_t, by running in.
VectorXd firstOrder(double rho, Eigen::Index n, Random& random) {
  constexpr Eigen::Index kRunIn = 500;
  VectorXd series = VectorXd::Zero(n + kRunIn);
  for (Eigen::Index t = 1; t < series.size(); ++t) series(t) = rho * series(t - 1) + random.normal();
  return series.tail(n);
}

TEST(CorrelationTest, EffectiveSampleSizeOfAShortSeriesIsThatDoneByHand) {
  // r_1 = 0.25; r_2 + r_3 = -0.75 ends the sum: 4 / (1 + 2 * 3/4 * 0.25).
  EXPECT_NEAR(effectiveSampleSize(Eigen::Vector4d(1.0, 2.0, 3.0, 4.0)), 4.0 / 1.375, 1e-14);
}

TEST(CorrelationTest, EffectiveSampleSizeDoesNotDependOnUnitOrOffset) {
  Random random(1);
  const VectorXd series = firstOrder(0.7, 200, random);
  const VectorXd other = (-1e6 * series).array() + 4.5e6;
  EXPECT_NEAR(effectiveSampleSize(other), effectiveSampleSize(series), 1e-8);
}

TEST(CorrelationTest, EffectiveSampleSizeOfAFirstOrderProcessIsTheKnownFraction) {
  for (const double rho : {0.0, 0.3, 0.6, 0.9}) {
    Random random(3);
    constexpr Eigen::Index kCount = 4000;
    constexpr int kSeries = 40;
    double mean = 0.0;
    for (int k = 0; k < kSeries; ++k) mean += effectiveSampleSize(firstOrder(rho, kCount, random)) / kSeries;
    // Geyer's rule keeps positive pairs only, which costs white noise some 5 % at this length.
    EXPECT_NEAR(mean / kCount / ((1.0 - rho) / (1.0 + rho)), 1.0, 0.08) << rho;
  }
}

TEST(CorrelationTest, EffectiveSampleSizeStaysWithinOneAndTheCount) {
  Random random(4);
  EXPECT_EQ(effectiveSampleSize(firstOrder(-0.9, 500, random)), 500.0);
  EXPECT_GE(effectiveSampleSize(VectorXd::LinSpaced(50, 0.0, 1.0)), 1.0);
  EXPECT_LT(effectiveSampleSize(VectorXd::LinSpaced(50, 0.0, 1.0)), 5.0);
  EXPECT_EQ(effectiveSampleSize(VectorXd::Constant(1, 7.0)), 1.0);
  EXPECT_EQ(effectiveSampleSize(VectorXd::Constant(30, 7.0)), 30.0);
  EXPECT_EQ(effectiveSampleSize(VectorXd()), 0.0);
}

TEST(CorrelationTest, NanIsNotHidden) {
  VectorXd series = VectorXd::LinSpaced(20, 0.0, 1.0);
  series(7) = std::numeric_limits<double>::quiet_NaN();
  EXPECT_TRUE(std::isnan(effectiveSampleSize(series)));
}

}  // namespace
}  // namespace hingepin::statistics
