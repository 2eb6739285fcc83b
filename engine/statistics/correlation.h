// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <Eigen/Core>

namespace hingepin::statistics {

/// Lag-k autocorrelations r_0 ... r_max_lag of an evenly spaced series about its mean (biased, so positive
/// definite). Lags beyond the series are 0, and so are all but r_0 of a constant series.
[[nodiscard]] Eigen::VectorXd autocorrelation(const Eigen::VectorXd& series, int max_lag);

/// How many independent values an evenly spaced, correlated series is worth for its mean:
/// n / (1 + 2 sum (1 - k/n) r_k), the sum ended by Geyer's initial positive sequence (1992), within [1, n].
/// n for a constant series; NaN if a value is.
[[nodiscard]] double effectiveSampleSize(const Eigen::VectorXd& series);

/// An autoregressive model e_t = a_1 e_(t-1) + ... + a_p e_(t-p) + w_t.
struct Autoregression {
  Eigen::VectorXd coefficients;  ///< (p)
  double innovation_sd = 0.0;
};

/// Burg's method with the order chosen in [0, max_order] by AICc (Hurvich and Tsai 1989). Stable by
/// construction.
/// @param series residuals: its mean is taken as zero, not removed. A value that is not finite gives order 0
/// and an SD of NaN.
[[nodiscard]] Autoregression fitAutoregression(const Eigen::VectorXd& series, int max_order);

/// Filters each column (n rows, evenly spaced) by the model: row t becomes x_t - sum a_k x_(t-k). The first p
/// rows are whitened by the exact stationary start (Cholesky of their autocovariance), so that no row is
/// lost. Every row then has the SD innovation_sd.
/// @param model stable, as fitAutoregression makes it
[[nodiscard]] Eigen::MatrixXd whiten(const Autoregression& model, const Eigen::MatrixXd& columns);

}  // namespace hingepin::statistics
