// SPDX-License-Identifier: Apache-2.0
#include "engine/statistics/least_squares.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "engine/base/random.h"
#include "tests/reference/gum.h"
#include "tests/reference/straight_line.h"
#include "tests/reference/strd.h"

namespace hingepin::statistics {
namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;

MatrixXd powers(const VectorXd& x, int lowest, int count) {
  MatrixXd design(x.size(), count);
  for (int j = 0; j < count; ++j) design.col(j) = x.array().pow(lowest + j);
  return design;
}

/// Relative where the truth is not zero.
double relativeError(double value, double truth) {
  return truth == 0.0 ? std::abs(value) : std::abs(value / truth - 1.0);
}

struct StrdErrors {
  double estimates = 0.0;
  double standard_deviations = 0.0;
  double residual_sd = 0.0;
};

/// The largest relative errors against the certified values.
StrdErrors strdErrors(const reference::StrdProblem& problem) {
  const auto n = static_cast<Eigen::Index>(problem.points.size());
  VectorXd x(n);
  VectorXd y(n);
  Eigen::Index i = 0;
  for (const auto& [point_y, point_x] : problem.points) {
    y(i) = point_y;
    x(i++) = point_x;
  }
  const auto fit = fitWeighted(powers(x, problem.lowest_power, static_cast<int>(problem.estimates.size())), y,
                               VectorXd::Ones(n), NoiseScale::FromResiduals);
  StrdErrors errors;
  EXPECT_TRUE(fit.has_value()) << problem.name;
  if (!fit) return errors;
  for (std::size_t j = 0; j < problem.estimates.size(); ++j) {
    const auto index = static_cast<Eigen::Index>(j);
    errors.estimates =
        std::max(errors.estimates, relativeError(fit->coefficients(index), problem.estimates.begin()[j]));
    errors.standard_deviations = std::max(
        errors.standard_deviations,
        relativeError(std::sqrt(fit->covariance(index, index)), problem.standard_deviations.begin()[j]));
  }
  errors.residual_sd = relativeError(fit->residual_scale, problem.residual_sd);
  return errors;
}

TEST(LeastSquaresTest, CertifiedProblemsComeOutToTheDigitsOfADouble) {
  for (const auto* problem : {&reference::kNorris, &reference::kPontius, &reference::kNoInt1}) {
    const StrdErrors errors = strdErrors(*problem);
    testing::Test::RecordProperty(std::string(problem->name), std::to_string(-std::log10(errors.estimates)));
    // The certified values have 15 digits; conditioning costs a few of the 16 of a double.
    EXPECT_LT(errors.estimates, 1e-12) << problem->name;
    EXPECT_LT(errors.standard_deviations, 1e-12) << problem->name;
    EXPECT_LT(errors.residual_sd, 1e-12) << problem->name;
  }
}

TEST(LeastSquaresTest, CertifiedQuinticsKeepElevenDigits) {
  for (const auto* problem : {&reference::kWampler1, &reference::kWampler2}) {
    const StrdErrors errors = strdErrors(*problem);
    testing::Test::RecordProperty(std::string(problem->name), std::to_string(-std::log10(errors.estimates)));
    // A raw quintic on 0 ... 20 has a condition of about 1e5 even with its columns scaled: what the rounding
    // of y costs.
    EXPECT_LT(errors.estimates, 1e-11) << problem->name;
    // Zero by certificate; y of Wampler1 reaches 3e6.
    EXPECT_LT(errors.standard_deviations, 1e-9) << problem->name;
    EXPECT_LT(errors.residual_sd, 1e-9) << problem->name;
  }
}

TEST(LeastSquaresTest, ThermometerLineIsThatOfGumH3) {
  const auto n = static_cast<Eigen::Index>(reference::kThermometerPoints.size());
  VectorXd t(n);
  VectorXd b(n);
  for (Eigen::Index i = 0; i < n; ++i) {
    const auto& [reading, correction] = reference::kThermometerPoints[static_cast<std::size_t>(i)];
    t(i) = reading - reference::kThermometerReference_Cel;
    b(i) = correction;
  }
  const auto fit = fitWeighted(powers(t, 0, 2), b, VectorXd::Ones(n), NoiseScale::FromResiduals);
  ASSERT_TRUE(fit);
  const double u_y1 = std::sqrt(fit->covariance(0, 0));
  const double u_y2 = std::sqrt(fit->covariance(1, 1));
  const double correlation = fit->covariance(0, 1) / (u_y1 * u_y2);
  const Eigen::RowVector2d at_30(1.0, 10.0);
  const double correction = at_30 * fit->coefficients;
  const double u_correction = std::sqrt(at_30 * fit->covariance * at_30.transpose());
  EXPECT_EQ(fit->degrees_of_freedom, 9);

  const auto& printed = reference::kThermometerPrinted;  // to half a unit of its last digit
  EXPECT_NEAR(fit->coefficients(0), printed.y1, 5e-5);
  EXPECT_NEAR(u_y1, printed.u_y1, 5e-5);
  EXPECT_NEAR(fit->coefficients(1), printed.y2, 5e-6);
  EXPECT_NEAR(u_y2, printed.u_y2, 5e-6);
  EXPECT_NEAR(correlation, printed.correlation, 5e-4);
  EXPECT_NEAR(fit->residual_scale, printed.residual_sd, 5e-5);
  EXPECT_NEAR(correction, printed.correction_at_30, 5e-5);
  EXPECT_NEAR(u_correction, printed.u_correction_at_30, 5e-5);

  const auto& refit = reference::kThermometerRefit;  // differences of 24 Cel readings lose two digits
  EXPECT_LT(relativeError(fit->coefficients(0), refit.y1), 1e-12);
  EXPECT_LT(relativeError(u_y1, refit.u_y1), 1e-12);
  EXPECT_LT(relativeError(fit->coefficients(1), refit.y2), 1e-12);
  EXPECT_LT(relativeError(u_y2, refit.u_y2), 1e-12);
  EXPECT_LT(relativeError(correlation, refit.correlation), 1e-12);
  EXPECT_LT(relativeError(fit->residual_scale, refit.residual_sd), 1e-12);
  EXPECT_LT(relativeError(correction, refit.correction_at_30), 1e-12);
  EXPECT_LT(relativeError(u_correction, refit.u_correction_at_30), 1e-12);
}

void expectLine(const LinearFit& fit, const reference::LineResult& expected) {
  EXPECT_LT(relativeError(fit.coefficients(0), expected.intercept), 1e-12);
  EXPECT_LT(relativeError(fit.coefficients(1), expected.slope), 1e-12);
  EXPECT_LT(relativeError(std::sqrt(fit.covariance(0, 0)), expected.u_intercept), 1e-12);
  EXPECT_LT(relativeError(std::sqrt(fit.covariance(1, 1)), expected.u_slope), 1e-12);
  EXPECT_LT(relativeError(fit.covariance(0, 1), expected.covariance), 1e-12);
}

TEST(LeastSquaresTest, KnownWeightsGiveTheLineOfIso28037Example1) {
  const auto& example = reference::kIso28037Example1;
  const VectorXd x = VectorXd::Map(example.x.data(), 6);
  const VectorXd y = VectorXd::Map(example.y.data(), 6);
  const auto fit = fitWeighted(powers(x, 0, 2), y, VectorXd::Constant(6, example.u_y[0]), NoiseScale::Known);
  ASSERT_TRUE(fit);
  expectLine(*fit, example.result);
  EXPECT_LT(relativeError(fit->chi_squared, example.result.chi_squared), 1e-12);
  EXPECT_EQ(fit->degrees_of_freedom, 4);
}

TEST(LeastSquaresTest, UnknownScaleGivesTheLineOfIso28037AnnexE) {
  const auto& example = reference::kIso28037AnnexE;
  const VectorXd x = VectorXd::Map(example.x.data(), 6);
  const VectorXd y = VectorXd::Map(example.y.data(), 6);
  const auto fit = fitWeighted(powers(x, 0, 2), y, VectorXd::Ones(6), NoiseScale::FromResiduals);
  ASSERT_TRUE(fit);
  expectLine(*fit, example.result);
  EXPECT_LT(relativeError(fit->chi_squared, example.result.chi_squared), 1e-11);  // printed to 12 digits
}

struct Problem {
  MatrixXd design;
  VectorXd observations;
  VectorXd uncertainty;
};

Problem randomProblem(std::uint64_t seed, Eigen::Index n, Eigen::Index p) {
  Random random(seed);
  Problem problem{MatrixXd(n, p), VectorXd(n), VectorXd(n)};
  for (Eigen::Index i = 0; i < n; ++i) {
    for (Eigen::Index j = 0; j < p; ++j) problem.design(i, j) = random.normal();
    problem.observations(i) = random.uniform(-3.0, 9.0);
    problem.uncertainty(i) = random.uniform(0.2, 2.0);
  }
  return problem;
}

TEST(LeastSquaresTest, ExactDataComeBackWithNothingLeftOver) {
  const Problem problem = randomProblem(1, 30, 5);
  const VectorXd truth = VectorXd::LinSpaced(5, -2.0, 7.0);
  const auto fit =
      fitWeighted(problem.design, problem.design * truth, problem.uncertainty, NoiseScale::Known);
  ASSERT_TRUE(fit);
  EXPECT_LT((fit->coefficients - truth).norm(), 1e-13);
  EXPECT_LT(fit->chi_squared, 1e-25);
}

TEST(LeastSquaresTest, WeightedResidualsAreOrthogonalToTheDesign) {
  const Problem problem = randomProblem(2, 40, 4);
  const auto fit = fitWeighted(problem.design, problem.observations, problem.uncertainty, NoiseScale::Known);
  ASSERT_TRUE(fit);
  const VectorXd weighted = fit->residuals.cwiseQuotient(problem.uncertainty.cwiseAbs2());
  EXPECT_LT((problem.design.transpose() * weighted).norm(), 1e-11);
}

TEST(LeastSquaresTest, UnitsOfTheColumnsAndOfTheDataOnlyRescaleTheResult) {
  const Problem problem = randomProblem(3, 25, 3);
  VectorXd units(3);
  units << 1e-9, 7.0, 3e12;
  const double unit_y = 9.80665e3;
  const auto fit = fitWeighted(problem.design, problem.observations, problem.uncertainty, NoiseScale::Known);
  const auto scaled = fitWeighted(problem.design * units.asDiagonal(), unit_y * problem.observations,
                                  unit_y * problem.uncertainty, NoiseScale::Known);
  ASSERT_TRUE(fit && scaled);
  const VectorXd back = units / unit_y;
  EXPECT_TRUE(scaled->coefficients.cwiseProduct(back).isApprox(fit->coefficients, 1e-13));
  EXPECT_TRUE((back.asDiagonal() * scaled->covariance * back.asDiagonal()).isApprox(fit->covariance, 1e-13));
  EXPECT_NEAR(scaled->chi_squared, fit->chi_squared, 1e-12 * fit->chi_squared);
}

TEST(LeastSquaresTest, OrderOfTheRowsDoesNotMatter) {
  const Problem problem = randomProblem(4, 25, 3);
  const auto fit =
      fitWeighted(problem.design, problem.observations, problem.uncertainty, NoiseScale::FromResiduals);
  const auto reversed = fitWeighted(problem.design.colwise().reverse(), problem.observations.reverse(),
                                    problem.uncertainty.reverse(), NoiseScale::FromResiduals);
  ASSERT_TRUE(fit && reversed);
  EXPECT_TRUE(reversed->coefficients.isApprox(fit->coefficients, 1e-13));
  EXPECT_TRUE(reversed->covariance.isApprox(fit->covariance, 1e-13));
}

TEST(LeastSquaresTest, CommonFactorOfTheUncertaintiesIsIrrelevantWhenTheScaleComesFromResiduals) {
  const Problem problem = randomProblem(5, 25, 3);
  const auto fit =
      fitWeighted(problem.design, problem.observations, problem.uncertainty, NoiseScale::FromResiduals);
  const auto other = fitWeighted(problem.design, problem.observations, 12.5 * problem.uncertainty,
                                 NoiseScale::FromResiduals);
  ASSERT_TRUE(fit && other);
  EXPECT_TRUE(other->covariance.isApprox(fit->covariance, 1e-13));
  EXPECT_NEAR(other->residual_scale * 12.5, fit->residual_scale, 1e-12);
}

TEST(LeastSquaresTest, CovarianceIsTheSpreadOfTheCoefficientsOverRepetitions) {
  const Problem problem = randomProblem(6, 12, 2);
  const Eigen::Vector2d truth(1.0, -4.0);
  Random random(60);
  constexpr int kRepetitions = 20000;
  Eigen::Matrix2d spread = Eigen::Matrix2d::Zero();
  MatrixXd covariance;
  for (int k = 0; k < kRepetitions; ++k) {
    VectorXd y = problem.design * truth;
    for (Eigen::Index i = 0; i < y.size(); ++i) y(i) += problem.uncertainty(i) * random.normal();
    const auto fit = fitWeighted(problem.design, y, problem.uncertainty, NoiseScale::Known);
    ASSERT_TRUE(fit);
    spread += (fit->coefficients - truth) * (fit->coefficients - truth).transpose() / kRepetitions;
    covariance = fit->covariance;
  }
  // A variance from 20000 repetitions has a relative standard deviation of 1 %.
  EXPECT_LT((spread - covariance).norm(), 0.04 * covariance.norm());
}

TEST(LeastSquaresTest, DiagonalCovarianceIsWeightedLeastSquares) {
  const Problem problem = randomProblem(7, 20, 3);
  const MatrixXd covariance = problem.uncertainty.cwiseAbs2().asDiagonal();
  for (const NoiseScale scale : {NoiseScale::Known, NoiseScale::FromResiduals}) {
    const auto weighted = fitWeighted(problem.design, problem.observations, problem.uncertainty, scale);
    const auto generalised = fitGeneralised(problem.design, problem.observations, covariance, scale);
    ASSERT_TRUE(weighted && generalised);
    EXPECT_TRUE(generalised->coefficients.isApprox(weighted->coefficients, 1e-12));
    EXPECT_TRUE(generalised->covariance.isApprox(weighted->covariance, 1e-12));
    EXPECT_NEAR(generalised->chi_squared, weighted->chi_squared, 1e-12 * weighted->chi_squared);
  }
}

TEST(LeastSquaresTest, CorrelatedErrorsFollowTheTextbookFormula) {
  const Problem problem = randomProblem(8, 15, 2);
  MatrixXd covariance(15, 15);
  for (int i = 0; i < 15; ++i)
    for (int j = 0; j < 15; ++j)
      covariance(i, j) = std::pow(0.8, std::abs(i - j)) * (1.0 + 0.1 * i) * (1.0 + 0.1 * j);
  const auto fit = fitGeneralised(problem.design, problem.observations, covariance, NoiseScale::Known);
  ASSERT_TRUE(fit);
  const MatrixXd inverse = covariance.inverse();
  const MatrixXd expected = (problem.design.transpose() * inverse * problem.design).inverse();
  EXPECT_TRUE(fit->covariance.isApprox(expected, 1e-11));
  EXPECT_TRUE(fit->coefficients.isApprox(
      expected * problem.design.transpose() * inverse * problem.observations, 1e-11));
  EXPECT_NEAR(fit->chi_squared, fit->residuals.dot(inverse * fit->residuals), 1e-10);
}

TEST(LeastSquaresTest, MeanOfTwoCorrelatedReadingsIsKnownInClosedForm) {
  const MatrixXd design = MatrixXd::Ones(2, 1);
  const auto fit = fitGeneralised(design, Eigen::Vector2d(1.0, 2.0), Eigen::Matrix2d{{1.0, 0.5}, {0.5, 4.0}},
                                  NoiseScale::Known);
  ASSERT_TRUE(fit);
  // Weights (4 - 0.5) : (1 - 0.5), variance (1 * 4 - 0.25) / (1 + 4 - 1).
  EXPECT_NEAR(fit->coefficients(0), (3.5 * 1.0 + 0.5 * 2.0) / 4.0, 1e-15);
  EXPECT_NEAR(fit->covariance(0, 0), 3.75 / 4.0, 1e-15);
}

TEST(LeastSquaresTest, ExactlyDeterminedFitIsKeptWhenTheNoiseIsKnown) {
  const Problem problem = randomProblem(9, 3, 3);
  const auto fit = fitWeighted(problem.design, problem.observations, problem.uncertainty, NoiseScale::Known);
  ASSERT_TRUE(fit);
  EXPECT_EQ(fit->degrees_of_freedom, 0);
  EXPECT_EQ(fit->residual_scale, 0.0);
  EXPECT_TRUE(fit->covariance.allFinite());
}

TEST(LeastSquaresTest, TooFewObservationsAreInsufficient) {
  const Problem problem = randomProblem(10, 3, 3);
  const auto from_residuals =
      fitWeighted(problem.design, problem.observations, problem.uncertainty, NoiseScale::FromResiduals);
  ASSERT_FALSE(from_residuals);
  EXPECT_EQ(from_residuals.error().kind, ErrorKind::Insufficient);
  const auto known = fitWeighted(problem.design.topRows(2), problem.observations.head(2),
                                 problem.uncertainty.head(2), NoiseScale::Known);
  ASSERT_FALSE(known);
  EXPECT_EQ(known.error().message.code, "fit-too-few-observations");
}

TEST(LeastSquaresTest, DependentColumnsAreRankDeficientInAnyUnit) {
  for (std::uint64_t seed = 11; seed < 31; ++seed) {
    Problem problem = randomProblem(seed, 12 + 20 * static_cast<Eigen::Index>(seed - 11), 4);
    problem.design.col(3) = 1e7 * problem.design.col(0) - 3e5 * problem.design.col(1) / 7.0;
    const auto fit =
        fitWeighted(problem.design, problem.observations, problem.uncertainty, NoiseScale::Known);
    ASSERT_FALSE(fit);
    EXPECT_EQ(fit.error().kind, ErrorKind::RankDeficient);
    EXPECT_EQ(std::get<Amount>(fit.error().message.values.at(0).second).value, 3.0);
  }
}

TEST(LeastSquaresTest, ZeroColumnIsRankDeficient) {
  Problem problem = randomProblem(12, 12, 3);
  problem.design.col(1).setZero();
  const auto fit = fitWeighted(problem.design, problem.observations, problem.uncertainty, NoiseScale::Known);
  ASSERT_FALSE(fit);
  EXPECT_EQ(fit.error().kind, ErrorKind::RankDeficient);
  problem.design.setZero();
  const auto nothing =
      fitWeighted(problem.design, problem.observations, problem.uncertainty, NoiseScale::Known);
  ASSERT_FALSE(nothing);
  EXPECT_EQ(nothing.error().kind, ErrorKind::RankDeficient);
}

TEST(LeastSquaresTest, NonFiniteInputIsInvalidWhereverItStands) {
  for (const double bad :
       {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
    Problem in_design = randomProblem(13, 8, 2);
    in_design.design(3, 1) = bad;
    Problem in_data = randomProblem(13, 8, 2);
    in_data.observations(3) = bad;
    Problem in_uncertainty = randomProblem(13, 8, 2);
    in_uncertainty.uncertainty(3) = bad;
    for (const Problem& problem : {in_design, in_data, in_uncertainty}) {
      const auto fit =
          fitWeighted(problem.design, problem.observations, problem.uncertainty, NoiseScale::Known);
      ASSERT_FALSE(fit);
      EXPECT_EQ(fit.error().kind, ErrorKind::InvalidInput);
    }
  }
}

TEST(LeastSquaresTest, WeightsThatOverflowAreInvalid) {
  Problem problem = randomProblem(14, 8, 2);
  problem.observations(2) = 1e200;
  problem.uncertainty(2) = 1e-200;
  const auto fit = fitWeighted(problem.design, problem.observations, problem.uncertainty, NoiseScale::Known);
  ASSERT_FALSE(fit);
  EXPECT_EQ(fit.error().message.code, "fit-not-finite");
}

TEST(LeastSquaresTest, UncertaintyOfZeroOrBelowIsInvalidAndNamesItsRow) {
  for (const double bad : {0.0, -1.0}) {
    Problem problem = randomProblem(15, 8, 2);
    problem.uncertainty(4) = bad;
    const auto fit =
        fitWeighted(problem.design, problem.observations, problem.uncertainty, NoiseScale::Known);
    ASSERT_FALSE(fit);
    EXPECT_EQ(fit.error().message.code, "fit-uncertainty-not-positive");
    EXPECT_EQ(std::get<Amount>(fit.error().message.values.at(0).second).value, 5.0);
  }
}

TEST(LeastSquaresTest, SizesThatDifferAreInvalid) {
  const Problem problem = randomProblem(16, 8, 2);
  const auto short_data =
      fitWeighted(problem.design, problem.observations.head(7), problem.uncertainty, NoiseScale::Known);
  const auto short_uncertainty =
      fitWeighted(problem.design, problem.observations, problem.uncertainty.head(7), NoiseScale::Known);
  const auto short_covariance =
      fitGeneralised(problem.design, problem.observations, MatrixXd::Identity(7, 8), NoiseScale::Known);
  ASSERT_FALSE(short_data || short_uncertainty || short_covariance);
  for (const auto& fit : {short_data, short_uncertainty, short_covariance})
    EXPECT_EQ(fit.error().message.code, "fit-sizes-differ");
  const auto no_unknowns =
      fitWeighted(MatrixXd(8, 0), problem.observations, problem.uncertainty, NoiseScale::Known);
  ASSERT_FALSE(no_unknowns);
  EXPECT_EQ(no_unknowns.error().kind, ErrorKind::InvalidInput);
}

TEST(LeastSquaresTest, CovarianceMustBeSymmetricAndPositiveDefinite) {
  const Problem problem = randomProblem(17, 3, 1);
  const MatrixXd indefinite{{1.0, 2.0, 0.0}, {2.0, 1.0, 0.0}, {0.0, 0.0, 1.0}};
  const MatrixXd skew{{1.0, 0.5, 0.0}, {0.0, 1.0, 0.0}, {0.0, 0.0, 1.0}};
  for (const MatrixXd& covariance : {indefinite, skew}) {
    const auto fit = fitGeneralised(problem.design, problem.observations, covariance, NoiseScale::Known);
    ASSERT_FALSE(fit);
    EXPECT_EQ(fit.error().message.code, "fit-covariance-not-positive-definite");
  }
}

}  // namespace
}  // namespace hingepin::statistics
