// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <Eigen/Core>

#include "engine/base/error.h"

namespace hingepin::statistics {

/// Whether the stated uncertainties are believed, or only their ratios (the scale then comes from the
/// residuals).
enum class NoiseScale { Known, FromResiduals };

/// A linear least-squares fit y = X b + e.
struct LinearFit {
  Eigen::VectorXd coefficients;  ///< (p)
  Eigen::MatrixXd covariance;    ///< (p, p), of the coefficients
  Eigen::VectorXd residuals;     ///< (n) y - X b, in the unit of y
  double chi_squared = 0.0;      ///< sum of squared weighted residuals
  double residual_scale =
      0.0;  ///< sqrt(chi_squared / degrees_of_freedom); the residual SD for unit weights; 0 if n = p
  int degrees_of_freedom = 0;  ///< n - p
};

/// Weighted least squares by Householder QR with column pivoting (no normal equations).
/// Model: independent errors, SD of error i is standard_uncertainty(i) (times one unknown scale for
/// FromResiduals).
/// @param design (n, p) finite, n >= p (n > p for FromResiduals)
/// @param observations (n) finite
/// @param standard_uncertainty (n) > 0
/// Errors: InvalidInput (sizes, non-finite, non-positive uncertainty), Insufficient (n too small),
/// RankDeficient (says the rank). Accuracy: NIST StRD Norris, Pontius and NoInt1 to 1e-12 relative or better,
/// Wampler1 and 2 to 1e-11.
[[nodiscard]] Expected<LinearFit> fitWeighted(const Eigen::MatrixXd& design,
                                              const Eigen::VectorXd& observations,
                                              const Eigen::VectorXd& standard_uncertainty, NoiseScale scale);

/// Generalised least squares: errors have this full covariance (times a scale for FromResiduals), whitened by
/// Cholesky. Errors as above, and InvalidInput if the covariance is not positive definite.
[[nodiscard]] Expected<LinearFit> fitGeneralised(const Eigen::MatrixXd& design,
                                                 const Eigen::VectorXd& observations,
                                                 const Eigen::MatrixXd& covariance, NoiseScale scale);

}  // namespace hingepin::statistics
