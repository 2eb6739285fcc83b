// SPDX-License-Identifier: Apache-2.0
#include "engine/statistics/smoothing.h"

#include <gtest/gtest.h>

#include <Eigen/LU>
#include <cmath>
#include <limits>

#include "engine/base/random.h"

namespace hingepin::statistics {
namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;

const SplineBasis kBasis{-8.0, 18.0, 13};

VectorXd randomCoefficients(const SplineBasis& basis, std::uint64_t seed) {
  Random random(seed);
  VectorXd coefficients(basis.size());
  for (double& coefficient : coefficients) coefficient = random.normal();
  return coefficients;
}

TEST(SplineBasisTest, FunctionsAreNonNegativeAndSumToOne) {
  for (const double x : {-8.0, -7.3, 0.0, 2.0, 5.71, 17.999, 18.0}) {
    const Eigen::RowVectorXd row = kBasis.row(x);
    EXPECT_EQ(row.size(), kBasis.size());
    EXPECT_GE(row.minCoeff(), 0.0);
    EXPECT_NEAR(row.sum(), 1.0, 1e-15);
    EXPECT_NEAR(kBasis.row(x, 1).sum(), 0.0, 1e-15);
    EXPECT_NEAR(kBasis.row(x, 2).sum(), 0.0, 1e-15);
    EXPECT_LE((row.array() > 0.0).count(), 4);
  }
}

TEST(SplineBasisTest, DerivativesAgreeWithFiniteDifferences) {
  const VectorXd coefficients = randomCoefficients(kBasis, 1);
  constexpr double kStep = 1e-5;
  for (double x = -7.9; x < 17.9; x += 0.173) {
    const double slope = kBasis.row(x, 1).dot(coefficients);
    const double curvature = kBasis.row(x, 2).dot(coefficients);
    const double value_difference =
        (kBasis.row(x + kStep) - kBasis.row(x - kStep)).dot(coefficients) / (2.0 * kStep);
    const double slope_difference =
        (kBasis.row(x + kStep, 1) - kBasis.row(x - kStep, 1)).dot(coefficients) / (2.0 * kStep);
    EXPECT_NEAR(slope, value_difference, 1e-9);             // rounding 1e-16 / 1e-5, truncation 1e-10
    EXPECT_NEAR(curvature, slope_difference, 5.0 * kStep);  // a knot between the two has a jump of f'''
  }
}

TEST(SplineBasisTest, ValueSlopeAndCurvatureAreContinuousAtTheKnots) {
  const VectorXd coefficients = randomCoefficients(kBasis, 2);
  for (int knot = 1; knot < kBasis.intervals; ++knot) {
    const double x = kBasis.low + knot * (kBasis.high - kBasis.low) / kBasis.intervals;
    for (int derivative = 0; derivative <= 2; ++derivative) {
      EXPECT_NEAR(kBasis.row(x - 1e-12, derivative).dot(coefficients),
                  kBasis.row(x + 1e-12, derivative).dot(coefficients), 1e-10);
    }
  }
}

TEST(SplineBasisTest, StraightLineIsReproducedExactly) {
  VectorXd knots(kBasis.size());
  for (int i = 0; i < kBasis.size(); ++i) knots(i) = kBasis.low + (i - 1) * 2.0;
  for (const double x : {-8.0, -3.3, 0.0, 7.77, 18.0}) {
    EXPECT_NEAR(kBasis.row(x).dot(knots), x, 1e-13);
    EXPECT_NEAR(kBasis.row(x, 1).dot(knots), 1.0, 1e-14);
    EXPECT_NEAR(kBasis.row(x, 2).dot(knots), 0.0, 1e-14);
  }
}

TEST(SplineBasisTest, ArgumentIsHeldWithinTheRange) {
  EXPECT_EQ(kBasis.row(-100.0), kBasis.row(-8.0));
  EXPECT_EQ(kBasis.row(1e300), kBasis.row(18.0));
  EXPECT_TRUE(kBasis.row(std::numeric_limits<double>::quiet_NaN()).hasNaN());
}

TEST(SplineBasisTest, OneIntervalIsACubic) {
  const SplineBasis cubic{0.0, 1.0, 1};
  const VectorXd x = VectorXd::LinSpaced(4, 0.0, 1.0);
  const VectorXd y = x.array().cube() - 2.0 * x.array();
  const VectorXd coefficients = cubic.design(x).fullPivLu().solve(y);
  EXPECT_NEAR(cubic.row(0.37).dot(coefficients), 0.37 * 0.37 * 0.37 - 2.0 * 0.37, 1e-13);
  EXPECT_NEAR(cubic.row(0.37, 2).dot(coefficients), 6.0 * 0.37, 1e-12);
}

TEST(SplineBasisTest, RoughnessIsTheIntegralOfTheSquaredCurvature) {
  for (const SplineBasis& basis : {kBasis, SplineBasis{0.0, 1.0, 1}, SplineBasis{-1e-3, 2e-3, 7}}) {
    const VectorXd coefficients = randomCoefficients(basis, 3);
    // Simpson's rule between the knots, exact for the square of a straight line.
    double integral = 0.0;
    const double width = (basis.high - basis.low) / basis.intervals;
    for (int i = 0; i < basis.intervals; ++i) {
      const double start = basis.low + i * width;
      const auto squared = [&](double fraction) {
        return std::pow(basis.row(start + fraction * width, 2).dot(coefficients), 2);
      };
      integral += width / 6.0 * (squared(1e-13) + 4.0 * squared(0.5) + squared(1.0 - 1e-13));
    }
    EXPECT_NEAR((basis.roughnessRoot() * coefficients).squaredNorm(), integral, 1e-10 * integral);
  }
}

TEST(SplineBasisTest, RoughnessOfAParabolaIsFourTimesTheRange) {
  VectorXd coefficients(kBasis.size());
  // x^2 has the coefficients k^2 - h^2 / 3 at the knots k.
  for (int i = 0; i < kBasis.size(); ++i)
    coefficients(i) = std::pow(kBasis.low + (i - 1) * 2.0, 2) - 4.0 / 3.0;
  EXPECT_NEAR(kBasis.row(3.3).dot(coefficients), 3.3 * 3.3, 1e-12);
  EXPECT_NEAR((kBasis.roughnessRoot() * coefficients).squaredNorm(), 4.0 * 26.0, 1e-10);
}

struct Data {
  VectorXd x;
  VectorXd y;
  VectorXd uncertainty;
};

double hump(double x) { return 120.0 + 40.0 * std::sin(0.25 * x) - 0.4 * x; }

Data noisyHump(std::uint64_t seed, Eigen::Index n, double sd) {
  Random random(seed);
  Data data{VectorXd(n), VectorXd(n), VectorXd(n)};
  for (Eigen::Index i = 0; i < n; ++i) {
    data.x(i) = random.uniform(kBasis.low, kBasis.high);
    data.uncertainty(i) = random.uniform(0.5, 2.0);
    data.y(i) = hump(data.x(i)) + sd * data.uncertainty(i) * random.normal();
  }
  return data;
}

TEST(SmoothFitTest, SolutionTraceAndCrossValidationAreThoseOfTheDenseFormula) {
  const Data data = noisyHump(4, 80, 3.0);
  const auto fit = fitSmooth(data.x, data.y, data.uncertainty, kBasis);
  ASSERT_TRUE(fit);
  const MatrixXd design = data.uncertainty.cwiseInverse().asDiagonal() * kBasis.design(data.x);
  const VectorXd y = data.y.cwiseQuotient(data.uncertainty);
  const MatrixXd root = kBasis.roughnessRoot();
  const auto normal = [&](double lambda) -> MatrixXd {
    return (design.transpose() * design + lambda * root.transpose() * root).inverse();
  };
  const auto score = [&](double lambda) {
    const MatrixXd hat = design * normal(lambda) * design.transpose();
    return (y - hat * y).squaredNorm() / std::pow(80.0 - hat.trace(), 2);
  };
  const MatrixXd inverse = normal(fit->smoothing);
  const MatrixXd hat = design * inverse * design.transpose();
  const double variance = (y - hat * y).squaredNorm() / (80.0 - hat.trace());
  EXPECT_TRUE(fit->coefficients.isApprox(inverse * design.transpose() * y, 1e-9));
  EXPECT_NEAR(fit->effective_parameters, hat.trace(), 1e-9);
  EXPECT_NEAR(fit->residual_scale, std::sqrt(variance), 1e-9);
  EXPECT_TRUE(fit->covariance.isApprox(variance * inverse, 1e-8));
  for (const double factor : {1e-4, 0.1, 0.8, 1.25, 10.0, 1e4})
    EXPECT_GE(score(factor * fit->smoothing), score(fit->smoothing) * (1.0 - 1e-12)) << factor;
}

TEST(SmoothFitTest, CurveLiesCloserToTheTruthThanTheNoiseAndItsBandHoldsIt) {
  constexpr int kRepetitions = 60;
  constexpr double kNoise = 3.0;
  double squared_error = 0.0;
  double scale = 0.0;
  int held = 0;
  int points = 0;
  for (int k = 0; k < kRepetitions; ++k) {
    const Data data = noisyHump(100 + static_cast<std::uint64_t>(k), 200, kNoise);
    const auto fit = fitSmooth(data.x, data.y, data.uncertainty, kBasis);
    ASSERT_TRUE(fit);
    scale += fit->residual_scale / kRepetitions;
    for (double x = -7.5; x < 18.0; x += 0.5) {
      const Eigen::RowVectorXd row = kBasis.row(x);
      const double error = fit->value(x) - hump(x);
      const double sd = std::sqrt(row * fit->covariance * row.transpose());
      squared_error += error * error;
      held += std::abs(error) <= 2.0 * sd;
      ++points;
    }
  }
  // Some 7 effective parameters in 200 readings: sqrt(7 / 200) of the noise.
  EXPECT_LT(std::sqrt(squared_error / points), 0.25 * kNoise);
  EXPECT_NEAR(scale, kNoise, 0.05 * kNoise);
  // Nychka 1988: the band covers about its nominal 95.45 % on average over the curve; errors within a curve
  // hang together, so that some 60 x 7 are independent, SD 1 %.
  const double coverage = static_cast<double>(held) / points;
  testing::Test::RecordProperty("coverage", std::to_string(coverage));
  EXPECT_GT(coverage, 0.92);
  EXPECT_LT(coverage, 0.985);
}

TEST(SmoothFitTest, StraightLineIsSmoothedToItself) {
  const VectorXd x = VectorXd::LinSpaced(40, -8.0, 18.0);
  const VectorXd y = (3.0 - 0.7 * x.array());
  const auto fit = fitSmooth(x, y, VectorXd::Ones(40), kBasis);
  ASSERT_TRUE(fit);
  for (const double at : {-8.0, 0.1, 17.0}) EXPECT_NEAR(fit->value(at), 3.0 - 0.7 * at, 1e-10);
  EXPECT_LT(fit->residual_scale, 1e-10);
}

TEST(SmoothFitTest, NoisyStraightLineNeedsLittleMoreThanTwoParameters) {
  Random random(5);
  double parameters = 0.0;
  for (int k = 0; k < 20; ++k) {
    const VectorXd x = VectorXd::LinSpaced(100, -8.0, 18.0);
    VectorXd y = 3.0 - 0.7 * x.array();
    for (double& value : y) value += random.normal();
    const auto fit = fitSmooth(x, y, VectorXd::Ones(100), kBasis);
    ASSERT_TRUE(fit);
    EXPECT_GT(fit->effective_parameters, 2.0 - 1e-6);
    parameters += fit->effective_parameters / 20.0;
  }
  EXPECT_LT(parameters, 4.0);
}

TEST(SmoothFitTest, FewerReadingsThanFunctionsAreBridged) {
  const Eigen::Matrix<double, 5, 1> x{-8.0, -2.0, 4.0, 11.0, 18.0};
  const VectorXd y = x.array().square();
  const auto fit = fitSmooth(x, y, VectorXd::Ones(5), kBasis);
  ASSERT_TRUE(fit);
  EXPECT_TRUE(fit->coefficients.allFinite());
  EXPECT_LT(fit->effective_parameters, 5.0);
}

TEST(SmoothFitTest, UnitsOfXYAndUncertaintyOnlyRescaleTheCurve) {
  const Data data = noisyHump(6, 60, 2.0);
  const auto fit = fitSmooth(data.x, data.y, data.uncertainty, kBasis);
  const double degree = M_PI / 180.0;
  const SplineBasis radians{kBasis.low * degree, kBasis.high * degree, kBasis.intervals};
  const auto other = fitSmooth(degree * data.x, 1e5 * data.y, 7.0 * data.uncertainty, radians);
  ASSERT_TRUE(fit && other);
  // Rounding moves the place of the flat minimum of the score by a little of a thousandth of a decade.
  EXPECT_NEAR(other->effective_parameters, fit->effective_parameters, 1e-3);
  for (const double x : {-7.0, 2.0, 15.0}) EXPECT_NEAR(other->value(x * degree), 1e5 * fit->value(x), 10.0);
  EXPECT_NEAR(other->residual_scale * 7.0 / 1e5, fit->residual_scale, 1e-4);
}

TEST(SmoothFitTest, OrderOfTheReadingsDoesNotMatter) {
  const Data data = noisyHump(7, 60, 2.0);
  const auto fit = fitSmooth(data.x, data.y, data.uncertainty, kBasis);
  const auto reversed = fitSmooth(data.x.reverse(), data.y.reverse(), data.uncertainty.reverse(), kBasis);
  ASSERT_TRUE(fit && reversed);
  EXPECT_NEAR(reversed->effective_parameters, fit->effective_parameters, 1e-3);
  for (const double x : {-7.0, 2.0, 15.0}) EXPECT_NEAR(reversed->value(x), fit->value(x), 1e-4);
}

TEST(SmoothFitTest, InputThatCannotBeFittedIsRefusedByKind) {
  const Data data = noisyHump(8, 20, 1.0);
  const auto kindOf = [](const Expected<SmoothFit>& fit) {
    EXPECT_FALSE(fit);
    return fit.error().kind;
  };
  VectorXd bad = data.y;
  bad(3) = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(kindOf(fitSmooth(data.x, bad, data.uncertainty, kBasis)), ErrorKind::InvalidInput);
  bad = data.x;
  bad(3) = 18.5;
  EXPECT_EQ(kindOf(fitSmooth(bad, data.y, data.uncertainty, kBasis)), ErrorKind::InvalidInput);
  bad = data.uncertainty;
  bad(3) = 0.0;
  EXPECT_EQ(kindOf(fitSmooth(data.x, data.y, bad, kBasis)), ErrorKind::InvalidInput);
  EXPECT_EQ(kindOf(fitSmooth(data.x, data.y.head(19), data.uncertainty, kBasis)), ErrorKind::InvalidInput);
  EXPECT_EQ(kindOf(fitSmooth(data.x, data.y, data.uncertainty, {1.0, 1.0, 4})), ErrorKind::InvalidInput);
  EXPECT_EQ(kindOf(fitSmooth(data.x, data.y, data.uncertainty, {-8.0, 18.0, 0})), ErrorKind::InvalidInput);
  EXPECT_EQ(kindOf(fitSmooth(data.x.head(2), data.y.head(2), data.uncertainty.head(2), kBasis)),
            ErrorKind::Insufficient);
  EXPECT_EQ(kindOf(fitSmooth(VectorXd::Constant(20, 3.3), data.y, data.uncertainty, kBasis)),
            ErrorKind::RankDeficient);
}

}  // namespace
}  // namespace hingepin::statistics
