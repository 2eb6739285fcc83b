// SPDX-License-Identifier: Apache-2.0
#include "engine/statistics/correlation.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

namespace hingepin::statistics {
namespace {

/// Sum of x_t x_(t+lag) over n; 0 beyond the series.
double lagProduct(const Eigen::VectorXd& centred, Eigen::Index lag) {
  const Eigen::Index n = centred.size();
  return lag < n ? centred.head(n - lag).dot(centred.tail(n - lag)) / static_cast<double>(n) : 0.0;
}

Eigen::VectorXd centre(const Eigen::VectorXd& series) {
  return series.size() == 0 ? series : Eigen::VectorXd(series.array() - series.mean());
}

}  // namespace

Eigen::VectorXd autocorrelation(const Eigen::VectorXd& series, int max_lag) {
  const Eigen::VectorXd centred = centre(series);
  const double variance = lagProduct(centred, 0);
  Eigen::VectorXd result = Eigen::VectorXd::Zero(max_lag + 1);
  result(0) = 1.0;
  if (variance == 0.0) return result;
  for (int lag = 1; lag <= max_lag; ++lag) result(lag) = lagProduct(centred, lag) / variance;
  return result;
}

double effectiveSampleSize(const Eigen::VectorXd& series) {
  const Eigen::Index n = series.size();
  const auto count = static_cast<double>(n);
  const Eigen::VectorXd centred = centre(series);
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

Autoregression fitAutoregression(const Eigen::VectorXd& series, int max_order) {
  // A reflection of exactly one is a unit root, which has no stationary start.
  constexpr double kLargestReflection = 1.0 - 1e-6;
  const Eigen::Index n = series.size();
  Autoregression best;
  if (n == 0) return best;
  const auto count = static_cast<double>(n);
  const auto criterion = [count](double variance, double order) {
    return count * std::log(variance) + count * (count + order) / (count - order - 2.0);
  };

  double variance = series.squaredNorm() / count;
  best.innovation_sd = std::sqrt(variance);
  double least = criterion(variance, 0.0);
  Eigen::VectorXd forward = series;
  Eigen::VectorXd backward = series;
  Eigen::VectorXd coefficients;
  const Eigen::Index highest = std::min<Eigen::Index>(max_order, n - 3);
  for (Eigen::Index order = 1; order <= highest && variance > 0.0; ++order) {
    const Eigen::Index rows = n - order;
    const Eigen::VectorXd ahead = forward.tail(rows);
    const Eigen::VectorXd behind = backward.segment(order - 1, rows);
    const double power = ahead.squaredNorm() + behind.squaredNorm();
    if (!(power > 0.0)) break;
    const double reflection =
        std::clamp(2.0 * ahead.dot(behind) / power, -kLargestReflection, kLargestReflection);
    forward.tail(rows) = ahead - reflection * behind;
    backward.tail(rows) = behind - reflection * ahead;
    Eigen::VectorXd next(order);
    next.head(order - 1) = coefficients - reflection * coefficients.reverse();
    next(order - 1) = reflection;
    coefficients = std::move(next);
    variance *= 1.0 - reflection * reflection;
    if (const double value = criterion(variance, static_cast<double>(order)); value < least) {
      least = value;
      best = {coefficients, std::sqrt(variance)};
    }
    if (std::abs(reflection) == kLargestReflection) break;
  }
  return best;
}

Eigen::MatrixXd whiten(const Autoregression& model, const Eigen::MatrixXd& columns) {
  const Eigen::Index order = model.coefficients.size();
  const Eigen::Index start = std::min(order, columns.rows());
  Eigen::MatrixXd result(columns.rows(), columns.cols());
  for (Eigen::Index t = start; t < columns.rows(); ++t) {
    result.row(t) = columns.row(t);
    for (Eigen::Index k = 1; k <= order; ++k) result.row(t) -= model.coefficients(k - 1) * columns.row(t - k);
  }
  // The best predictors of lower order, by Levinson's recursion run backwards, are the rows of that Cholesky
  // factor's inverse; `gain` is the SD of the innovation over that of the prediction from so few values.
  Eigen::VectorXd predictor = model.coefficients;
  double gain = 1.0;
  for (Eigen::Index t = order - 1; t >= 0; --t) {
    const double reflection = predictor(t);
    const double kept = 1.0 - reflection * reflection;
    const Eigen::VectorXd head = predictor.head(t);
    predictor = (head + reflection * head.reverse()) / kept;
    gain *= std::sqrt(kept);
    if (t >= start) continue;
    result.row(t) = columns.row(t);
    for (Eigen::Index k = 1; k <= t; ++k) result.row(t) -= predictor(k - 1) * columns.row(t - k);
    result.row(t) *= gain;
  }
  return result;
}

}  // namespace hingepin::statistics
