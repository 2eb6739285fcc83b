// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <Eigen/Core>

namespace hingepin::statistics {

/// How many independent values an evenly spaced, correlated series is worth for its mean:
/// n / (1 + 2 sum (1 - k/n) r_k) of its lag-k autocorrelations r_k about its mean, the sum ended by Geyer's
/// initial positive sequence (1992), within [1, n]. n for a constant series; NaN if a value is.
[[nodiscard]] double effectiveSampleSize(const Eigen::VectorXd& series);

}  // namespace hingepin::statistics
