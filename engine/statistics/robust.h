// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <Eigen/Core>

#include "engine/base/error.h"

namespace hingepin::statistics {

enum class RobustLoss {
  Huber,     ///< tuning constant 1.345
  Bisquare,  ///< Tukey, tuning constant 4.685, started from Huber
};

struct RobustFit {
  Eigen::VectorXd coefficients;
  Eigen::MatrixXd covariance;  ///< Huber (1981) eq. 6.5 sandwich for M-estimates, scale estimated
  Eigen::VectorXd residuals;
  Eigen::VectorXd weights;  ///< (n) in [0, 1], of the last step
  double scale =
      0.0;  ///< median(|r|) / 0.67449, centred at zero, re-estimated in each of the first 100 steps
  int iterations = 0;
};

/// M-estimate by iteratively reweighted least squares (QR in each step).
/// @param prior_weight (n) > 0: each residual is multiplied by its root before the loss; ones when all are
/// alike
/// @param design (n, p), n > p
/// Errors: as fitWeighted; Insufficient "fit-did-not-converge".
[[nodiscard]] Expected<RobustFit> fitRobust(const Eigen::MatrixXd& design,
                                            const Eigen::VectorXd& observations,
                                            const Eigen::VectorXd& prior_weight, RobustLoss loss);

/// Median of the absolute deviations from zero over 0.67449: the SD for normal data. 0 for an empty vector.
[[nodiscard]] double scaleAboutZero(const Eigen::VectorXd& residuals);

}  // namespace hingepin::statistics
