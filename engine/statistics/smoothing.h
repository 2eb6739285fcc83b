// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <Eigen/Core>

#include "engine/base/error.h"

namespace hingepin::statistics {

/// Cubic B-splines on evenly spaced knots over [low, high]; `intervals` intervals give intervals + 3
/// functions.
struct SplineBasis {
  double low;
  double high;
  int intervals;

  [[nodiscard]] int size() const { return intervals + 3; }
  /// Values of all functions at x (clamped to [low, high]): (size). `derivative` 0, 1 or 2.
  [[nodiscard]] Eigen::RowVectorXd row(double x, int derivative = 0) const;
  [[nodiscard]] Eigen::MatrixXd design(const Eigen::VectorXd& x) const;
  /// R with R^T R = integral of (f'')^2 dx for f = sum b_i B_i, exact: (rows, size).
  [[nodiscard]] Eigen::MatrixXd roughnessRoot() const;
};

struct SmoothFit {
  SplineBasis basis;
  Eigen::VectorXd coefficients;
  Eigen::MatrixXd covariance;  ///< Bayesian (Wahba 1983): (X'WX + lambda P)^-1 times the noise variance
  double smoothing = 0.0;      ///< lambda
  double effective_parameters = 0.0;  ///< trace of the hat matrix
  double residual_scale = 0.0;

  [[nodiscard]] double value(double x) const { return basis.row(x).dot(coefficients); }
};

/// Penalised spline: minimises sum ((y - f)/u)^2 + lambda * integral (f'')^2, lambda by generalised
/// cross-validation (Craven and Wahba 1979). Solved by QR of the stacked system.
/// @param standard_uncertainty (n) > 0, relative weights; the noise scale comes from the residuals
/// @param x (n) within the basis, n >= 3, two of them different
/// Errors: InvalidInput (basis, sizes, non-finite, uncertainty, x outside the basis), Insufficient (n < 3),
/// RankDeficient (all x alike).
[[nodiscard]] Expected<SmoothFit> fitSmooth(const Eigen::VectorXd& x, const Eigen::VectorXd& y,
                                            const Eigen::VectorXd& standard_uncertainty,
                                            const SplineBasis& basis);

}  // namespace hingepin::statistics
