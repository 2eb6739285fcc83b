// SPDX-License-Identifier: Apache-2.0
#include "engine/statistics/robust.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "engine/base/random.h"
#include "engine/statistics/least_squares.h"
#include "tests/reference/stack_loss.h"

namespace hingepin::statistics {
namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;

struct Regression {
  MatrixXd design;
  VectorXd observations;
};

Regression stackLoss() {
  Regression problem{MatrixXd(21, 4), VectorXd(21)};
  for (Eigen::Index i = 0; i < 21; ++i) {
    const auto& row = reference::kStackLoss[static_cast<std::size_t>(i)];
    problem.design.row(i) << row.air_flow, row.water_temperature, row.acid, 1.0;
    problem.observations(i) = row.loss;
  }
  return problem;
}

const Eigen::Vector2d kTruth(120.0, -3.0);

Regression line(std::uint64_t seed, Eigen::Index n, double sd, Eigen::Index outliers) {
  Random random(seed);
  Regression problem{MatrixXd(n, 2), VectorXd(n)};
  for (Eigen::Index i = 0; i < n; ++i) {
    problem.design.row(i) << 1.0, random.uniform(-1.0, 1.0);
    problem.observations(i) = problem.design.row(i) * kTruth + sd * random.normal();
    if (i < outliers) problem.observations(i) += 50.0 + 30.0 * random.uniform();
  }
  return problem;
}

TEST(RobustTest, StackLossComesOutAsPublished) {
  const Regression problem = stackLoss();
  for (const auto& [loss, expected] : {std::pair{RobustLoss::Huber, reference::kStackLossHuber},
                                       std::pair{RobustLoss::Bisquare, reference::kStackLossBisquare}}) {
    const auto fit = fitRobust(problem.design, problem.observations, VectorXd::Ones(21), loss);
    ASSERT_TRUE(fit);
    for (Eigen::Index j = 0; j < 4; ++j) {
      const auto index = static_cast<std::size_t>(j);
      // The printed fit stopped early, by some 1e-4; the converged one is printed to eight decimals.
      EXPECT_NEAR(fit->coefficients(j), expected.printed[index], 1e-4);
      EXPECT_NEAR(fit->coefficients(j), expected.converged[index], 2e-8);
      // Four digits are printed, and the scale enters squared: 2e-4 from where R and SAS stopped.
      EXPECT_NEAR(fit->covariance(j, j) / expected.variances[index], 1.0, 1e-3);
    }
    EXPECT_NEAR(fit->scale, expected.printed_scale, 5e-4);
    EXPECT_NEAR(fit->weights(20), expected.weight_of_row_21, 1e-4);
  }
}

TEST(RobustTest, ScaleAboutZeroIsTheSdOfNormalData) {
  Random random(1);
  VectorXd series(100001);
  for (double& value : series) value = 2.5 * random.normal();
  EXPECT_NEAR(scaleAboutZero(series), 2.5, 4.0 * 2.5 * 1.167 / std::sqrt(100001.0));  // efficiency 37 %
}

TEST(RobustTest, ScaleAboutZeroTakesTheMiddle) {
  EXPECT_DOUBLE_EQ(scaleAboutZero(Eigen::Vector3d(-5.0, 1.0, 2.0)) * 0.67448975019608171, 2.0);
  EXPECT_DOUBLE_EQ(scaleAboutZero(Eigen::Vector4d(-5.0, 1.0, 2.0, 3.0)) * 0.67448975019608171, 2.5);
  EXPECT_EQ(scaleAboutZero(VectorXd()), 0.0);
  EXPECT_TRUE(std::isnan(scaleAboutZero(Eigen::Vector2d(1.0, std::numeric_limits<double>::quiet_NaN()))));
}

TEST(RobustTest, GrossOutliersAreShutOut) {
  const Regression problem = line(2, 100, 1.0, 20);
  const auto bisquare =
      fitRobust(problem.design, problem.observations, VectorXd::Ones(100), RobustLoss::Bisquare);
  const auto clean = fitWeighted(problem.design.bottomRows(80), problem.observations.tail(80),
                                 VectorXd::Ones(80), NoiseScale::FromResiduals);
  ASSERT_TRUE(bisquare && clean);
  EXPECT_EQ(bisquare->weights.head(20).maxCoeff(), 0.0);
  EXPECT_LT((bisquare->coefficients - clean->coefficients).cwiseAbs().maxCoeff(), 0.1);
}

TEST(RobustTest, ExactDataUnderOutliersComeBackExactly) {
  const Regression problem = line(3, 40, 0.0, 8);
  for (const RobustLoss loss : {RobustLoss::Huber, RobustLoss::Bisquare}) {
    const auto fit = fitRobust(problem.design, problem.observations, VectorXd::Ones(40), loss);
    ASSERT_TRUE(fit);
    EXPECT_LT((fit->coefficients - kTruth).cwiseAbs().maxCoeff(), 1e-9);
    EXPECT_TRUE(fit->covariance.allFinite());
  }
}

TEST(RobustTest, DataWithoutNoiseOrValueAreFitted) {
  const Regression problem = line(4, 10, 0.0, 0);
  for (const VectorXd& y : {problem.observations, VectorXd(VectorXd::Zero(10))}) {
    const auto fit = fitRobust(problem.design, y, VectorXd::Ones(10), RobustLoss::Bisquare);
    ASSERT_TRUE(fit);
    EXPECT_LT((problem.design * fit->coefficients - y).norm(), 1e-10);
  }
}

TEST(RobustTest, CovarianceIsTheSpreadOverRepetitionsWithAndWithoutOutliers) {
  for (const RobustLoss loss : {RobustLoss::Huber, RobustLoss::Bisquare}) {
    Eigen::Vector2d spread = Eigen::Vector2d::Zero();
    Eigen::Vector2d stated = Eigen::Vector2d::Zero();
    constexpr int kRepetitions = 400;
    for (int k = 0; k < kRepetitions; ++k) {
      const Regression problem = line(1000 + static_cast<std::uint64_t>(k), 60, 2.0, 0);
      const auto fit = fitRobust(problem.design, problem.observations, VectorXd::Ones(60), loss);
      ASSERT_TRUE(fit);
      spread += (fit->coefficients - kTruth).cwiseAbs2() / kRepetitions;
      stated += fit->covariance.diagonal() / kRepetitions;
    }
    // A variance from 400 has an SD of 7 %; the formula itself is of first order in p / n.
    for (Eigen::Index j = 0; j < 2; ++j) EXPECT_NEAR(stated(j) / spread(j), 1.0, 0.22);
  }
}

TEST(RobustTest, SmallSamplesSettle) {
  for (std::uint64_t seed = 0; seed < 300; ++seed) {
    const Regression problem = line(5000 + seed, 4 + static_cast<Eigen::Index>(seed % 9), 1.0, seed % 3 == 0);
    const auto n = problem.design.rows();
    for (const RobustLoss loss : {RobustLoss::Huber, RobustLoss::Bisquare})
      EXPECT_TRUE(fitRobust(problem.design, problem.observations, VectorXd::Ones(n), loss)) << seed;
  }
}

TEST(RobustTest, PriorWeightOfTwoIsTheRowTwice) {
  const Regression problem = line(5, 30, 1.0, 3);
  VectorXd weight = VectorXd::Ones(30);
  const auto unit = fitRobust(problem.design, problem.observations, weight, RobustLoss::Huber);
  const auto heavier = fitRobust(problem.design, problem.observations, 7.0 * weight, RobustLoss::Huber);
  ASSERT_TRUE(unit && heavier);
  EXPECT_TRUE(heavier->coefficients.isApprox(unit->coefficients, 1e-9));
  EXPECT_TRUE(heavier->covariance.isApprox(unit->covariance, 1e-8));
  EXPECT_TRUE(heavier->residuals.isApprox(unit->residuals, 1e-8));
  EXPECT_NEAR(heavier->scale, std::sqrt(7.0) * unit->scale, 1e-8);
  weight(12) = 1e12;
  const auto pinned = fitRobust(problem.design, problem.observations, weight, RobustLoss::Huber);
  ASSERT_TRUE(pinned);
  EXPECT_LT(std::abs(pinned->residuals(12)), 1e-3);
}

TEST(RobustTest, UnitsAndOrderDoNotMatter) {
  const Regression problem = line(6, 30, 1.0, 5);
  for (const RobustLoss loss : {RobustLoss::Huber, RobustLoss::Bisquare}) {
    const auto fit = fitRobust(problem.design, problem.observations, VectorXd::Ones(30), loss);
    const auto scaled = fitRobust(1e3 * problem.design, 1e8 * problem.observations, VectorXd::Ones(30), loss);
    const auto reversed = fitRobust(problem.design.colwise().reverse(), problem.observations.reverse(),
                                    VectorXd::Ones(30), loss);
    ASSERT_TRUE(fit && scaled && reversed);
    EXPECT_TRUE((scaled->coefficients / 1e5).isApprox(fit->coefficients, 1e-9));
    EXPECT_TRUE((scaled->covariance / 1e10).isApprox(fit->covariance, 1e-8));
    EXPECT_TRUE(reversed->coefficients.isApprox(fit->coefficients, 1e-9));
  }
}

TEST(RobustTest, InputThatCannotBeFittedIsRefusedByKind) {
  const Regression problem = line(7, 10, 1.0, 0);
  const auto kindOf = [](const Expected<RobustFit>& fit) {
    EXPECT_FALSE(fit);
    return fit.error().kind;
  };
  const VectorXd ones = VectorXd::Ones(10);
  VectorXd bad = problem.observations;
  bad(2) = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(kindOf(fitRobust(problem.design, bad, ones, RobustLoss::Huber)), ErrorKind::InvalidInput);
  bad = ones;
  bad(2) = 0.0;
  EXPECT_EQ(kindOf(fitRobust(problem.design, problem.observations, bad, RobustLoss::Huber)),
            ErrorKind::InvalidInput);
  EXPECT_EQ(kindOf(fitRobust(problem.design.topRows(2), problem.observations.head(2), ones.head(2),
                             RobustLoss::Huber)),
            ErrorKind::Insufficient);
  MatrixXd dependent = problem.design;
  dependent.col(1) = 3.0 * dependent.col(0);
  EXPECT_EQ(kindOf(fitRobust(dependent, problem.observations, ones, RobustLoss::Bisquare)),
            ErrorKind::RankDeficient);
}

}  // namespace
}  // namespace hingepin::statistics
