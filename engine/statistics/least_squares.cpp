// SPDX-License-Identifier: Apache-2.0
#include "engine/statistics/least_squares.h"

#include <Eigen/Cholesky>
#include <cmath>
#include <utility>

#include "engine/statistics/householder.h"

namespace hingepin::statistics {
namespace {

Eigen::Index spareRows(NoiseScale scale) { return scale == NoiseScale::FromResiduals ? 1 : 0; }

/// `whitener` takes rows (a matrix or the residuals) to errors of unit variance.
template <class Whitener>
Expected<LinearFit> fitWhitened(const Eigen::MatrixXd& design, const Eigen::VectorXd& observations,
                                const Whitener& whitener, NoiseScale scale) {
  auto solution = solveByHouseholder(whitener(design), whitener(observations));
  if (!solution) return std::unexpected(std::move(solution.error()));

  LinearFit fit;
  fit.coefficients = std::move(solution->coefficients);
  fit.residuals = observations - design * fit.coefficients;
  fit.chi_squared = whitener(fit.residuals).squaredNorm();
  fit.degrees_of_freedom = static_cast<int>(design.rows() - design.cols());
  if (fit.degrees_of_freedom > 0) fit.residual_scale = std::sqrt(fit.chi_squared / fit.degrees_of_freedom);
  fit.covariance = solution->covariance(scale == NoiseScale::FromResiduals ? fit.residual_scale : 1.0);
  return fit;
}

}  // namespace

Expected<LinearFit> fitWeighted(const Eigen::MatrixXd& design, const Eigen::VectorXd& observations,
                                const Eigen::VectorXd& standard_uncertainty, NoiseScale scale) {
  if (auto checked = checkProblem(design, observations, spareRows(scale)); !checked)
    return std::unexpected(std::move(checked.error()));
  if (auto checked = checkPositive(standard_uncertainty, design.rows()); !checked)
    return std::unexpected(std::move(checked.error()));
  const auto whitener = [&](const auto& rows) {
    return (standard_uncertainty.cwiseInverse().asDiagonal() * rows).eval();
  };
  return fitWhitened(design, observations, whitener, scale);
}

Expected<LinearFit> fitGeneralised(const Eigen::MatrixXd& design, const Eigen::VectorXd& observations,
                                   const Eigen::MatrixXd& covariance, NoiseScale scale) {
  if (auto checked = checkProblem(design, observations, spareRows(scale)); !checked)
    return std::unexpected(std::move(checked.error()));
  const Eigen::Index n = design.rows();
  if (covariance.rows() != n || covariance.cols() != n) {
    return fail(ErrorKind::InvalidInput, "fit-sizes-differ",
                {{"expected", Amount{static_cast<double>(n), "1"}},
                 {"found", Amount{static_cast<double>(covariance.rows()), "1"}}});
  }
  if (!covariance.allFinite()) return fail(ErrorKind::InvalidInput, "fit-not-finite");
  // Rounding may leave a computed covariance a little asymmetric; more is a mistake of the caller.
  const Eigen::LLT<Eigen::MatrixXd> cholesky(covariance);
  if ((covariance - covariance.transpose()).cwiseAbs().maxCoeff() > 1e-9 * covariance.cwiseAbs().maxCoeff() ||
      cholesky.info() != Eigen::Success)
    return fail(ErrorKind::InvalidInput, "fit-covariance-not-positive-definite");
  const auto whitener = [&](const auto& rows) { return cholesky.matrixL().solve(rows).eval(); };
  return fitWhitened(design, observations, whitener, scale);
}

}  // namespace hingepin::statistics
