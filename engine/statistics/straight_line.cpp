// SPDX-License-Identifier: Apache-2.0
#include "engine/statistics/straight_line.h"

#include <cmath>
#include <utility>

#include "engine/statistics/householder.h"

namespace hingepin::statistics {
namespace {

using Array = Eigen::ArrayXd;

Expected<void> checkPoints(const LinePoints& points, Eigen::Index spare_rows) {
  const Eigen::Index n = points.x.size();
  // Two unknowns: one column stands for them, so one row more is asked for.
  if (auto checked = checkProblem(points.x, points.y, spare_rows + 1); !checked) return checked;
  if (auto checked = checkPositive(points.u_y, n); !checked) return checked;
  for (const Eigen::VectorXd* values : {&points.u_x, &points.covariance_xy}) {
    if (values == &points.covariance_xy && values->size() == 0) continue;
    if (values->size() != n) {
      return fail(ErrorKind::InvalidInput, "fit-sizes-differ",
                  {{"expected", Amount{static_cast<double>(n), "1"}},
                   {"found", Amount{static_cast<double>(values->size()), "1"}}});
    }
    if (!values->allFinite()) return fail(ErrorKind::InvalidInput, "fit-not-finite");
  }
  for (Eigen::Index i = 0; i < n; ++i) {
    const Amount row{static_cast<double>(i + 1), "1"};
    if (points.u_x(i) < 0.0)
      return fail(ErrorKind::InvalidInput, "fit-uncertainty-not-positive", {{"row", row}});
    if (points.covariance_xy.size() == 0 || points.covariance_xy(i) == 0.0) continue;
    if (!(std::abs(points.covariance_xy(i)) < points.u_x(i) * points.u_y(i)))
      return fail(ErrorKind::InvalidInput, "line-covariance-invalid", {{"row", row}});
  }
  return {};
}

}  // namespace

Expected<StraightLine> fitStraightLine(const LinePoints& points, NoiseScale scale) {
  if (auto checked = checkPoints(points, scale == NoiseScale::FromResiduals ? 1 : 0); !checked)
    return std::unexpected(std::move(checked.error()));
  const Eigen::Index n = points.x.size();
  const Array x = points.x;
  const Array y = points.y;
  const Array variance_x = points.u_x.array().square();
  const Array variance_y = points.u_y.array().square();
  const Array covariance = points.covariance_xy.size() == 0 ? Array::Zero(n) : Array(points.covariance_xy);

  // The start takes x for exact; it finds out too whether the x differ.
  Eigen::MatrixXd design(n, 2);
  design << Eigen::VectorXd::Ones(n), points.x;
  const auto start = fitWeighted(design, points.y, points.u_y, NoiseScale::Known);
  if (!start) return std::unexpected(start.error());

  constexpr int kMaxIterations = 500;
  StraightLine line;
  line.slope = start->coefficients(1);
  line.degrees_of_freedom = static_cast<int>(n) - 2;
  for (int step = 0; step < kMaxIterations; ++step) {
    const Array weight = (variance_y + line.slope * (line.slope * variance_x - 2.0 * covariance)).inverse();
    const double sum = weight.sum();
    const double mean_x = (weight * x).sum() / sum;
    const double mean_y = (weight * y).sum() / sum;
    const Array u = x - mean_x;
    const Array v = y - mean_y;
    const Array beta =
        weight * (u * variance_y + line.slope * v * variance_x - (line.slope * u + v) * covariance);
    const double slope = (weight * beta * v).sum() / (weight * beta * u).sum();
    const Array adjusted = mean_x + beta;
    const double mean_adjusted = (weight * adjusted).sum() / sum;
    const double variance = 1.0 / (weight * (adjusted - mean_adjusted).square()).sum();
    if (!std::isfinite(slope) || !std::isfinite(variance)) break;
    // To rounding of the slope, or far below its uncertainty where the slope itself is next to nothing.
    const bool settled =
        std::abs(slope - line.slope) <= 1e-13 * std::abs(slope) + 1e-11 * std::sqrt(variance);
    line.slope = slope;
    if (!settled) continue;

    line.intercept = mean_y - slope * mean_x;
    line.x_adjusted = adjusted;
    line.chi_squared = (weight * (y - line.intercept - slope * x).square()).sum();
    if (line.degrees_of_freedom > 0)
      line.residual_scale = std::sqrt(line.chi_squared / line.degrees_of_freedom);
    const double mixed = -mean_adjusted * variance;
    line.covariance << 1.0 / sum - mean_adjusted * mixed, mixed, mixed, variance;
    if (scale == NoiseScale::FromResiduals) line.covariance *= line.residual_scale * line.residual_scale;
    return line;
  }
  return fail(ErrorKind::Insufficient, "fit-did-not-converge", {{"iterations", Amount{kMaxIterations, "1"}}});
}

Estimate predict(const StraightLine& line, double x, double u_x) {
  const Eigen::RowVector2d gradient(1.0, x);
  const double variance = gradient * line.covariance * gradient.transpose();
  return {line.intercept + line.slope * x, std::hypot(std::sqrt(variance), line.slope * u_x)};
}

Expected<Estimate> readBack(const StraightLine& line, double y, double u_y) {
  if (!std::isfinite(y) || !std::isfinite(u_y)) return fail(ErrorKind::InvalidInput, "fit-not-finite");
  const double x = (y - line.intercept) / line.slope;
  if (!std::isfinite(x)) return fail(ErrorKind::Insufficient, "line-has-no-slope");
  const double u_line = predict(line, x, 0.0).standard_uncertainty;
  return Estimate{x, std::hypot(u_line, u_y) / std::abs(line.slope)};
}

}  // namespace hingepin::statistics
