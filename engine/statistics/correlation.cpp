// SPDX-License-Identifier: Apache-2.0
#include "engine/statistics/correlation.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace hingepin::statistics {
namespace {

/// Sum of x_t x_(t+lag) over n; 0 beyond the series.
double lagProduct(const Eigen::VectorXd& centred, Eigen::Index lag) {
  const Eigen::Index n = centred.size();
  return lag < n ? centred.head(n - lag).dot(centred.tail(n - lag)) / static_cast<double>(n) : 0.0;
}

}  // namespace

double effectiveSampleSize(const Eigen::VectorXd& series) {
  const Eigen::Index n = series.size();
  const auto count = static_cast<double>(n);
  if (n == 0) return 0.0;
  const Eigen::VectorXd centred = series.array() - series.mean();
  const double variance = lagProduct(centred, 0);
  if (std::isnan(variance)) return std::numeric_limits<double>::quiet_NaN();
  if (variance == 0.0) return count;
  const auto correlation = [&](Eigen::Index lag) { return lagProduct(centred, lag) / variance; };
  double sum = 0.0;
  for (Eigen::Index even = 0; even < n; even += 2) {
    const double first = correlation(even);
    const double second = correlation(even + 1);
    if (!(first + second > 0.0)) break;
    const auto lag = static_cast<double>(even);
    if (even > 0) sum += (1.0 - lag / count) * first;
    sum += (1.0 - (lag + 1.0) / count) * second;
  }
  const double inflation = 1.0 + 2.0 * sum;
  return inflation > 0.0 ? std::clamp(count / inflation, 1.0, count) : count;
}

}  // namespace hingepin::statistics
