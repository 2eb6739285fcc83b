// SPDX-License-Identifier: Apache-2.0
#include "engine/calibration/pass_noise.h"

#include <gtest/gtest.h>

#include <Eigen/LU>
#include <Eigen/QR>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "engine/base/random.h"

namespace hingepin::calibration {
namespace {

constexpr double kStep_s = 0.04;
constexpr Eigen::Index kRows = 100;

Eigen::VectorXd wander(Random& random, double memory_s) {
  Eigen::VectorXd series(kRows);
  const double kept = std::exp(-kStep_s / memory_s);
  double value = random.normal();
  for (Eigen::Index i = 0; i < kRows; ++i) {
    series(i) = value;
    value = kept * value + std::sqrt(1.0 - kept * kept) * random.normal();
  }
  return series;
}

TEST(PassNoiseTest, BounceColumnsAreTheDampedCosineAndSine) {
  const Bounce bounce{1.3, 0.7, true};
  const Eigen::MatrixXd columns = bounceColumns({bounce}, kRows, kStep_s);
  ASSERT_EQ(columns.cols(), 4);
  for (Eigen::Index i = 0; i < kRows; ++i) {
    const double time_s = kStep_s * static_cast<double>(i);
    const double size = std::exp(-0.7 * time_s);
    const double phase = 2.0 * std::numbers::pi * 1.3 * time_s;
    // A hundred rotations round off to about 1e-15 each.
    EXPECT_NEAR(columns(i, 0), size * std::cos(phase), 1e-12);
    EXPECT_NEAR(columns(i, 1), size * std::sin(phase), 1e-12);
    EXPECT_NEAR(columns(i, 2), time_s * size * std::cos(phase), 1e-11);
    EXPECT_NEAR(columns(i, 3), time_s * size * std::sin(phase), 1e-11);
  }
}

TEST(PassNoiseTest, WhiteningUndoesTheStatedCorrelation) {
  for (const double turn_Hz : {0.0, 0.9}) {
    const PassNoise noise{.wander = 3.0, .memory_s = 0.3, .turn_Hz = turn_Hz};
    const Eigen::MatrixXd root = whitened(noise, Eigen::MatrixXd::Identity(kRows, kRows), kStep_s);
    Eigen::MatrixXd correlation(kRows, kRows);
    for (Eigen::Index i = 0; i < kRows; ++i)
      for (Eigen::Index k = 0; k < kRows; ++k) {
        const double lag_s = std::abs(static_cast<double>(i - k)) * kStep_s;
        correlation(i, k) = (i == k ? 1.0 : 0.0) +
                            3.0 * std::exp(-lag_s / 0.3) * std::cos(2.0 * std::numbers::pi * turn_Hz * lag_s);
      }
    EXPECT_LT((root * correlation * root.transpose() - Eigen::MatrixXd::Identity(kRows, kRows))
                  .cwiseAbs()
                  .maxCoeff(),
              1e-10);
  }
}

/// The level of a series and its standard uncertainty, by generalised least squares, averaged over the
/// models.
std::pair<double, double> levelOf(const Eigen::VectorXd& series) {
  double mean = 0.0;
  double squares = 0.0;
  double variance = 0.0;
  const Eigen::VectorXd level = Eigen::VectorXd::Ones(kRows);
  for (const PassNoise& noise : plausibleNoise(level, series, kStep_s)) {
    const Eigen::MatrixXd bounces = bounceColumns(noise.bounces, kRows, kStep_s);
    Eigen::MatrixXd all(kRows, 2 + bounces.cols());
    all << level, bounces, series;
    all = whitened(noise, all, kStep_s);
    const Eigen::MatrixXd design = all.leftCols(1 + bounces.cols());
    const Eigen::VectorXd fitted = design.householderQr().solve(all.rightCols(1));
    const double scatter =
        (all.rightCols(1) - design * fitted).squaredNorm() / static_cast<double>(kRows - design.cols());
    mean += noise.weight * fitted(0);
    squares += noise.weight * fitted(0) * fitted(0);
    variance += noise.weight * scatter * (design.transpose() * design).inverse()(0, 0);
  }
  return {mean, std::sqrt(variance + std::max(0.0, squares - mean * mean))};
}

TEST(PassNoiseTest, OfAMachineThatIsJoltedAllTheWayTheScatterIsTold) {
  // Two wanders of equal size, a quarter turn apart, make a swing whose correlation is a cosine that fades.
  // The SD of an SD of 100 is 7 %.
  double squares = 0.0;
  double told = 0.0;
  constexpr int kSeries = 100;
  for (int i = 0; i < kSeries; ++i) {
    Random random(200 + i);
    const Eigen::VectorXd cosine = wander(random, 1.0);
    const Eigen::VectorXd sine = wander(random, 1.0);
    Eigen::VectorXd series(kRows);
    for (Eigen::Index k = 0; k < kRows; ++k) {
      const double phase = 2.0 * std::numbers::pi * 0.95 * kStep_s * static_cast<double>(k);
      series(k) = cosine(k) * std::cos(phase) + sine(k) * std::sin(phase) + 0.2 * random.normal();
    }
    const auto [level, level_u] = levelOf(series);
    squares += level * level;
    told += level_u * level_u;
  }
  EXPECT_GT(told, 0.9 * 0.9 * squares);
  EXPECT_LT(told, 1.3 * 1.3 * squares);
}

TEST(PassNoiseTest, ABounceIsFoundWithItsPitch) {
  Random random(3);
  const Eigen::MatrixXd level = Eigen::MatrixXd::Ones(kRows, 1);
  const Eigen::MatrixXd bounce = bounceColumns({{1.1, 0.5, false}}, kRows, kStep_s);
  Eigen::VectorXd series = 20.0 * level + 6.0 * bounce.col(0) - 3.0 * bounce.col(1);
  for (double& value : series) value += 0.5 * random.normal();
  const std::vector<PassNoise> noises = plausibleNoise(level, series, kStep_s);
  ASSERT_FALSE(noises.front().bounces.empty());
  EXPECT_NEAR(noises.front().bounces.front().frequency_Hz, 1.1, 0.03);
  // With the bounce fitted, the level is good to the noise: 0.5 / sqrt(100) and a little for what the columns
  // share.
  const Eigen::MatrixXd columns = bounceColumns(noises.front().bounces, kRows, kStep_s);
  Eigen::MatrixXd design(kRows, 1 + columns.cols());
  design << level, columns;
  EXPECT_NEAR(Eigen::VectorXd(design.householderQr().solve(series))(0), 20.0, 0.25);
}

TEST(PassNoiseTest, AWanderIsSeldomTakenForABounce) {
  const Eigen::MatrixXd level = Eigen::MatrixXd::Ones(kRows, 1);
  int with_bounce = 0;
  int swinging = 0;
  constexpr int kSeries = 60;
  for (int i = 0; i < kSeries; ++i) {
    Random random(100 + i);
    Eigen::VectorXd series = wander(random, 0.3);
    for (double& value : series) value += 0.3 * random.normal();
    const PassNoise found = plausibleNoise(level, series, kStep_s).front();
    with_bounce += found.bounces.empty() ? 0 : 1;
    swinging += found.turn_Hz > 0.0 ? 1 : 0;
  }
  EXPECT_LE(with_bounce, kSeries / 6);
  EXPECT_LE(swinging, kSeries / 6);
}

TEST(PassNoiseTest, WeightsAreAProbabilityOverTheModels) {
  Random random(8);
  const Eigen::VectorXd series = wander(random, 0.2);
  const std::vector<PassNoise> noises = plausibleNoise(Eigen::MatrixXd::Ones(kRows, 1), series, kStep_s);
  double sum = 0.0;
  for (std::size_t i = 0; i < noises.size(); ++i) {
    sum += noises[i].weight;
    if (i > 0) {
      EXPECT_LE(noises[i].weight, noises[i - 1].weight);
    }
  }
  EXPECT_NEAR(sum, 1.0, 1e-12);
}

TEST(PassNoiseTest, AHandfulOfRowsIsTakenAsIndependent) {
  const Eigen::VectorXd series = Eigen::VectorXd::LinSpaced(8, 1.0, 2.0);
  const std::vector<PassNoise> noises = plausibleNoise(Eigen::MatrixXd::Ones(8, 1), series, kStep_s);
  ASSERT_EQ(noises.size(), 1U);
  EXPECT_EQ(noises.front().wander, 0.0);
  EXPECT_TRUE(noises.front().bounces.empty());
}

}  // namespace
}  // namespace hingepin::calibration
