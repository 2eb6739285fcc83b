// SPDX-License-Identifier: Apache-2.0
#include "engine/statistics/straight_line.h"

#include <gtest/gtest.h>

#include <Eigen/Cholesky>
#include <array>
#include <cmath>
#include <limits>

#include "engine/base/random.h"
#include "tests/reference/straight_line.h"

namespace hingepin::statistics {
namespace {

using Eigen::VectorXd;

template <std::size_t n>
VectorXd vectorOf(const std::array<double, n>& values) {
  return VectorXd::Map(values.data(), static_cast<Eigen::Index>(n));
}

void expectLine(const StraightLine& line, const reference::LineResult& expected, double relative) {
  EXPECT_NEAR(line.intercept / expected.intercept, 1.0, relative);
  EXPECT_NEAR(line.slope / expected.slope, 1.0, relative);
  EXPECT_NEAR(std::sqrt(line.covariance(0, 0)) / expected.u_intercept, 1.0, relative);
  EXPECT_NEAR(std::sqrt(line.covariance(1, 1)) / expected.u_slope, 1.0, relative);
  EXPECT_NEAR(line.covariance(0, 1) / expected.covariance, 1.0, relative);
  EXPECT_NEAR(line.chi_squared / expected.chi_squared, 1.0, relative);
}

TEST(StraightLineTest, ExactXGivesTheLineOfIso28037Example1AndItsUse) {
  const auto& example = reference::kIso28037Example1;
  const auto line = fitStraightLine(
      {vectorOf(example.x), vectorOf(example.y), VectorXd::Zero(6), vectorOf(example.u_y), {}},
      NoiseScale::Known);
  ASSERT_TRUE(line);
  expectLine(*line, example.result, 1e-12);
  EXPECT_EQ(line->degrees_of_freedom, 4);
  const auto back = readBack(*line, example.inverse.given, example.inverse.u_given);
  ASSERT_TRUE(back);
  EXPECT_NEAR(back->value, example.inverse.value, 1e-13);
  EXPECT_NEAR(back->standard_uncertainty, example.inverse.u_value, 1e-13);
  const Estimate forward = predict(*line, example.forward.given, example.forward.u_given);
  EXPECT_NEAR(forward.value, example.forward.value, 1e-13);
  EXPECT_NEAR(forward.standard_uncertainty, example.forward.u_value, 1e-13);
}

TEST(StraightLineTest, UnknownScaleGivesTheLineOfIso28037AnnexEAndItsInverse) {
  const auto& example = reference::kIso28037AnnexE;
  const auto line =
      fitStraightLine({vectorOf(example.x), vectorOf(example.y), VectorXd::Zero(6), VectorXd::Ones(6), {}},
                      NoiseScale::FromResiduals);
  ASSERT_TRUE(line);
  expectLine(*line, example.result, 1e-11);  // the sum of squares is printed to 12 digits
  const auto back = readBack(*line, example.inverse_y, line->residual_scale);
  ASSERT_TRUE(back);
  EXPECT_NEAR(back->value, example.inverse_x, 5e-4);
  EXPECT_NEAR(back->standard_uncertainty, example.u_inverse_x, 5e-4);
}

TEST(StraightLineTest, ErrorsInBothGiveTheLineOfIso28037Example3) {
  const auto& example = reference::kIso28037Example3;
  const auto line = fitStraightLine(
      {vectorOf(example.x), vectorOf(example.y), vectorOf(example.u_x), vectorOf(example.u_y), {}},
      NoiseScale::Known);
  ASSERT_TRUE(line);
  EXPECT_NEAR(line->intercept, example.printed.intercept, 5.1e-5);
  EXPECT_NEAR(std::sqrt(line->covariance(0, 0)), example.printed.u_intercept, 5.1e-5);
  EXPECT_NEAR(line->slope, example.printed.slope, 1e-3);  // printed truncated
  EXPECT_NEAR(std::sqrt(line->covariance(1, 1)), example.printed.u_slope, 5.1e-5);
  EXPECT_NEAR(line->covariance(0, 1), example.printed.covariance, 5.1e-5);
  EXPECT_NEAR(line->chi_squared, example.printed.chi_squared, 5.1e-4);
  expectLine(*line, example.refit, 1e-8);  // nine decimals
  EXPECT_EQ(line->degrees_of_freedom, 4);
}

TEST(StraightLineTest, PearsonsPointsWithYorksWeightsGiveTheCertifiedLine) {
  const auto& example = reference::kPearsonYork;
  const LinePoints points{vectorOf(example.x),
                          vectorOf(example.y),
                          vectorOf(example.weight_x).cwiseInverse().cwiseSqrt(),
                          vectorOf(example.weight_y).cwiseInverse().cwiseSqrt(),
                          {}};
  const auto line = fitStraightLine(points, NoiseScale::Known);
  const auto scaled = fitStraightLine(points, NoiseScale::FromResiduals);
  ASSERT_TRUE(line && scaled);
  EXPECT_NEAR(line->intercept / example.result.intercept, 1.0, 1e-12);
  EXPECT_NEAR(line->slope / example.result.slope, 1.0, 1e-12);
  expectLine(*line, example.result, 1e-11);
  EXPECT_NEAR(std::sqrt(scaled->covariance(0, 0)) / example.scaled_u_intercept, 1.0, 1e-11);
  EXPECT_NEAR(std::sqrt(scaled->covariance(1, 1)) / example.scaled_u_slope, 1.0, 1e-11);
}

LinePoints randomPoints(std::uint64_t seed, Eigen::Index n, double intercept, double slope,
                        double correlation) {
  Random random(seed);
  LinePoints points{VectorXd(n), VectorXd(n), VectorXd(n), VectorXd(n), VectorXd(n)};
  for (Eigen::Index i = 0; i < n; ++i) {
    points.u_x(i) = random.uniform(0.05, 0.3);
    points.u_y(i) = random.uniform(0.1, 0.5);
    points.covariance_xy(i) = correlation * points.u_x(i) * points.u_y(i);
    const double x = random.uniform(0.0, 10.0);
    const double shared = random.normal();
    const double own = random.normal();
    points.x(i) = x + points.u_x(i) * shared;
    points.y(i) = intercept + slope * x +
                  points.u_y(i) * (correlation * shared + std::sqrt(1.0 - correlation * correlation) * own);
  }
  return points;
}

/// Sum of the squared distances of the points in the metric of their covariances.
double chiSquared(const LinePoints& points, double intercept, double slope) {
  double sum = 0.0;
  for (Eigen::Index i = 0; i < points.x.size(); ++i) {
    const double residual = points.y(i) - intercept - slope * points.x(i);
    sum += residual * residual /
           (std::pow(points.u_y(i), 2) + std::pow(slope * points.u_x(i), 2) -
            2.0 * slope * points.covariance_xy(i));
  }
  return sum;
}

TEST(StraightLineTest, LineIsTheMinimumOfChiSquaredForAnyCovariance) {
  for (std::uint64_t seed = 0; seed < 200; ++seed) {
    Random random(seed);
    const double slope = std::pow(10.0, random.uniform(-2.0, 2.0)) * (seed % 2 ? 1.0 : -1.0);
    const LinePoints points =
        randomPoints(100 + seed, 12, random.uniform(-5.0, 5.0), slope, random.uniform(-0.9, 0.9));
    const auto line = fitStraightLine(points, NoiseScale::Known);
    ASSERT_TRUE(line) << slope;
    const double least = chiSquared(points, line->intercept, line->slope);
    EXPECT_NEAR(line->chi_squared, least, 1e-9 * least);
    const double u_slope = std::sqrt(line->covariance(1, 1));
    const double u_intercept = std::sqrt(line->covariance(0, 0));
    for (const double sign : {-1.0, 1.0}) {
      EXPECT_GT(chiSquared(points, line->intercept, line->slope + sign * 1e-4 * u_slope), least);
      EXPECT_GT(chiSquared(points, line->intercept + sign * 1e-4 * u_intercept, line->slope), least);
    }
  }
}

TEST(StraightLineTest, AdjustedPointsAreTheMostProbableOnTheLine) {
  const LinePoints points = randomPoints(1, 12, 1.0, 2.0, 0.5);
  const auto line = fitStraightLine(points, NoiseScale::Known);
  ASSERT_TRUE(line);
  for (Eigen::Index i = 0; i < 12; ++i) {
    Eigen::Matrix2d covariance{{std::pow(points.u_x(i), 2), points.covariance_xy(i)},
                               {points.covariance_xy(i), std::pow(points.u_y(i), 2)}};
    const auto distance = [&](double x) {
      const Eigen::Vector2d off(points.x(i) - x, points.y(i) - line->intercept - line->slope * x);
      return off.dot(covariance.ldlt().solve(off));
    };
    const double x = line->x_adjusted(i);
    EXPECT_LT(distance(x), distance(x + 1e-4));
    EXPECT_LT(distance(x), distance(x - 1e-4));
  }
}

TEST(StraightLineTest, CovarianceIsTheSpreadOverRepetitions) {
  for (const double correlation : {0.0, 0.7}) {
    constexpr int kRepetitions = 4000;
    Eigen::Matrix2d spread = Eigen::Matrix2d::Zero();
    Eigen::Matrix2d stated = Eigen::Matrix2d::Zero();
    double chi_squared = 0.0;
    for (int k = 0; k < kRepetitions; ++k) {
      const auto line = fitStraightLine(
          randomPoints(20000 + static_cast<std::uint64_t>(k), 20, 1.0, 2.0, correlation), NoiseScale::Known);
      ASSERT_TRUE(line);
      const Eigen::Vector2d error(line->intercept - 1.0, line->slope - 2.0);
      spread += error * error.transpose() / kRepetitions;
      stated += line->covariance / kRepetitions;
      chi_squared += line->chi_squared / kRepetitions;
    }
    // A variance from 4000 has an SD of 2.2 %, the mean of chi-squared (18, SD 6) one of 0.1.
    EXPECT_LT((spread - stated).norm(), 0.09 * stated.norm());
    EXPECT_NEAR(chi_squared, 18.0, 0.4);
  }
}

TEST(StraightLineTest, ExchangingXAndYGivesTheSameLine) {
  const LinePoints points = randomPoints(2, 15, 1.0, 2.0, 0.3);
  const LinePoints exchanged{points.y, points.x, points.u_y, points.u_x, points.covariance_xy};
  const auto line = fitStraightLine(points, NoiseScale::Known);
  const auto other = fitStraightLine(exchanged, NoiseScale::Known);
  ASSERT_TRUE(line && other);
  EXPECT_NEAR(other->slope, 1.0 / line->slope, 1e-11);
  EXPECT_NEAR(other->intercept, -line->intercept / line->slope, 1e-11);
  EXPECT_NEAR(other->chi_squared, line->chi_squared, 1e-9);
}

TEST(StraightLineTest, UnitsOffsetAndOrderDoNotMatter) {
  const LinePoints points = randomPoints(3, 15, 1.0, 2.0, 0.3);
  const auto line = fitStraightLine(points, NoiseScale::Known);
  const LinePoints other{(1e-3 * points.x.reverse()).array() + 0.05, 1e5 * points.y.reverse(),
                         1e-3 * points.u_x.reverse(), 1e5 * points.u_y.reverse(),
                         1e2 * points.covariance_xy.reverse()};
  const auto moved = fitStraightLine(other, NoiseScale::Known);
  ASSERT_TRUE(line && moved);
  EXPECT_NEAR(moved->slope / 1e8, line->slope, 1e-11);
  EXPECT_NEAR(moved->intercept / 1e5, line->intercept - 50.0 * line->slope, 1e-9);
  EXPECT_NEAR(std::sqrt(moved->covariance(1, 1)) / 1e8, std::sqrt(line->covariance(1, 1)), 1e-11);
  EXPECT_NEAR(moved->chi_squared, line->chi_squared, 1e-9);
}

TEST(StraightLineTest, LevelLineSettlesAndCannotBeReadBack) {
  const VectorXd x = VectorXd::LinSpaced(8, 0.0, 7.0);
  const auto line = fitStraightLine(
      {x, VectorXd::Constant(8, 3.0), VectorXd::Constant(8, 0.1), VectorXd::Constant(8, 0.1), {}},
      NoiseScale::Known);
  ASSERT_TRUE(line);
  EXPECT_NEAR(line->slope, 0.0, 1e-14);
  EXPECT_NEAR(line->intercept, 3.0, 1e-14);
  StraightLine level = *line;
  level.slope = 0.0;
  const auto back = readBack(level, 3.0, 0.1);
  ASSERT_FALSE(back);
  EXPECT_EQ(back.error().message.code, "line-has-no-slope");
}

TEST(StraightLineTest, ReadingBackUndoesPredicting) {
  const auto line = fitStraightLine(randomPoints(4, 10, 1.0, -2.0, 0.0), NoiseScale::Known);
  ASSERT_TRUE(line);
  const Estimate y = predict(*line, 4.2, 0.0);
  const auto x = readBack(*line, y.value, 0.0);
  ASSERT_TRUE(x);
  EXPECT_NEAR(x->value, 4.2, 1e-12);
  EXPECT_NEAR(x->standard_uncertainty, y.standard_uncertainty / std::abs(line->slope), 1e-12);
}

TEST(StraightLineTest, TwoPointsAreJoined) {
  const auto line = fitStraightLine({Eigen::Vector2d(1.0, 3.0),
                                     Eigen::Vector2d(2.0, 8.0),
                                     Eigen::Vector2d(0.1, 0.1),
                                     Eigen::Vector2d(0.2, 0.3),
                                     {}},
                                    NoiseScale::Known);
  ASSERT_TRUE(line);
  EXPECT_NEAR(line->slope, 3.0, 1e-12);
  EXPECT_NEAR(line->intercept, -1.0, 1e-12);
  EXPECT_EQ(line->degrees_of_freedom, 0);
  // Error of the slope from the ends: sqrt(0.04 + 0.09 + 9 * 0.02) / 2.
  EXPECT_NEAR(std::sqrt(line->covariance(1, 1)), std::sqrt(0.31) / 2.0, 1e-12);
}

TEST(StraightLineTest, InputThatCannotBeFittedIsRefusedByKind) {
  const LinePoints good = randomPoints(5, 6, 1.0, 2.0, 0.2);
  const auto kindOf = [](const LinePoints& points, NoiseScale scale = NoiseScale::Known) {
    const auto line = fitStraightLine(points, scale);
    EXPECT_FALSE(line);
    return line ? ErrorKind::NotFound : line.error().kind;
  };
  const double nan = std::numeric_limits<double>::quiet_NaN();
  for (VectorXd LinePoints::* member :
       {&LinePoints::x, &LinePoints::y, &LinePoints::u_x, &LinePoints::u_y, &LinePoints::covariance_xy}) {
    LinePoints points = good;
    (points.*member)(2) = nan;
    EXPECT_EQ(kindOf(points), ErrorKind::InvalidInput);
    points = good;
    (points.*member).conservativeResize(5);
    EXPECT_EQ(kindOf(points), ErrorKind::InvalidInput);
  }
  LinePoints points = good;
  points.u_x(1) = -0.1;
  EXPECT_EQ(kindOf(points), ErrorKind::InvalidInput);
  points = good;
  points.u_y(1) = 0.0;
  EXPECT_EQ(kindOf(points), ErrorKind::InvalidInput);
  points = good;
  points.covariance_xy(1) = points.u_x(1) * points.u_y(1);
  EXPECT_EQ(kindOf(points), ErrorKind::InvalidInput);
  points = good;
  points.x.setConstant(4.0);
  EXPECT_EQ(kindOf(points), ErrorKind::RankDeficient);

  const LinePoints two{good.x.head(2), good.y.head(2), good.u_x.head(2), good.u_y.head(2), {}};
  EXPECT_EQ(kindOf(two, NoiseScale::FromResiduals), ErrorKind::Insufficient);
  EXPECT_EQ(kindOf({good.x.head(1), good.y.head(1), good.u_x.head(1), good.u_y.head(1), {}}),
            ErrorKind::Insufficient);
}

}  // namespace
}  // namespace hingepin::statistics
