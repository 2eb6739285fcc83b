// SPDX-License-Identifier: Apache-2.0
#include "engine/statistics/robust.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>
#include <vector>

#include "engine/statistics/householder.h"

namespace hingepin::statistics {
namespace {

constexpr double kHuber = 1.345;
constexpr double kBisquare = 4.685;
constexpr int kMaxIterations = 2000;  // a small sample may creep by 2 % a step
constexpr int kScaleIterations = 100;

/// psi(t) / t.
double weightOf(RobustLoss loss, double t) {
  if (loss == RobustLoss::Huber) return std::abs(t) <= kHuber ? 1.0 : kHuber / std::abs(t);
  const double inside = std::max(0.0, 1.0 - (t / kBisquare) * (t / kBisquare));
  return inside * inside;
}

/// psi'(t).
double slopeOf(RobustLoss loss, double t) {
  if (loss == RobustLoss::Huber) return std::abs(t) <= kHuber ? 1.0 : 0.0;
  const double square = (t / kBisquare) * (t / kBisquare);
  return square < 1.0 ? (1.0 - square) * (1.0 - 5.0 * square) : 0.0;
}

/// The rows with the prior weights taken in.
struct Rows {
  Eigen::MatrixXd design;
  Eigen::VectorXd observations;
};

/// Goes on from `fit`, whose residuals are those of `rows`.
Expected<void> iterate(const Rows& rows, RobustLoss loss, RobustFit& fit) {
  // Below this, residuals are rounding: data that fit exactly have no scale to speak of.
  const double rounding = 1e-13 * rows.observations.cwiseAbs().maxCoeff();
  for (int step = 0; step < kMaxIterations; ++step) {
    // In a small sample the median can jump back and forth for ever; with the scale held, the steps go
    // downhill.
    if (step < kScaleIterations) fit.scale = scaleAboutZero(fit.residuals);
    const double divisor = std::max(fit.scale, rounding);
    if (divisor > 0.0) {
      fit.weights = fit.residuals.unaryExpr([&](double r) { return weightOf(loss, r / divisor); });
    } else {
      fit.weights.setOnes(fit.residuals.size());
    }
    const Eigen::VectorXd root = fit.weights.cwiseSqrt();
    auto solution = solveByHouseholder(root.asDiagonal() * rows.design, root.cwiseProduct(rows.observations));
    if (!solution) return std::unexpected(std::move(solution.error()));
    fit.coefficients = std::move(solution->coefficients);
    Eigen::VectorXd residuals = rows.observations - rows.design * fit.coefficients;
    const double change = (residuals - fit.residuals).cwiseAbs().maxCoeff();
    fit.residuals = std::move(residuals);
    ++fit.iterations;
    if (change <= 1e-10 * fit.scale + rounding) {
      if (step < kScaleIterations) fit.scale = scaleAboutZero(fit.residuals);
      return {};
    }
  }
  return fail(ErrorKind::Insufficient, "fit-did-not-converge", {{"iterations", Amount{kMaxIterations, "1"}}});
}

}  // namespace

double scaleAboutZero(const Eigen::VectorXd& residuals) {
  if (residuals.size() == 0) return 0.0;
  if (residuals.hasNaN()) return std::numeric_limits<double>::quiet_NaN();
  std::vector<double> sizes(static_cast<std::size_t>(residuals.size()));
  Eigen::VectorXd::Map(sizes.data(), residuals.size()) = residuals.cwiseAbs();
  const auto middle = sizes.begin() + static_cast<std::ptrdiff_t>(sizes.size() / 2);
  std::nth_element(sizes.begin(), middle, sizes.end());
  double median = *middle;
  if (sizes.size() % 2 == 0) median = (median + *std::max_element(sizes.begin(), middle)) / 2.0;
  return median / 0.67448975019608171;
}

Expected<RobustFit> fitRobust(const Eigen::MatrixXd& design, const Eigen::VectorXd& observations,
                              const Eigen::VectorXd& prior_weight, RobustLoss loss) {
  if (auto checked = checkProblem(design, observations, 1); !checked)
    return std::unexpected(std::move(checked.error()));
  if (auto checked = checkPositive(prior_weight, design.rows()); !checked)
    return std::unexpected(std::move(checked.error()));
  const Eigen::VectorXd prior_root = prior_weight.cwiseSqrt();
  const Rows rows{prior_root.asDiagonal() * design, prior_root.cwiseProduct(observations)};

  const auto start = solveByHouseholder(rows.design, rows.observations);
  if (!start) return std::unexpected(start.error());
  RobustFit fit;
  fit.residuals = rows.observations - rows.design * start->coefficients;
  // Bisquare has many minima; Huber, which has one, leads it to the right one.
  if (auto done = iterate(rows, RobustLoss::Huber, fit); !done)
    return std::unexpected(std::move(done.error()));
  if (loss == RobustLoss::Bisquare) {
    if (auto done = iterate(rows, loss, fit); !done) return std::unexpected(std::move(done.error()));
  }

  const auto n = static_cast<double>(design.rows());
  const auto p = static_cast<double>(design.cols());
  double psi_squared = 0.0;
  double slope = 0.0;
  double slope_squared = 0.0;
  for (Eigen::Index i = 0; i < design.rows(); ++i) {
    const double t = fit.scale > 0.0 ? fit.residuals(i) / fit.scale : 0.0;
    const double psi = weightOf(loss, t) * t;
    psi_squared += psi * psi;
    slope += slopeOf(loss, t) / n;
    slope_squared += slopeOf(loss, t) * slopeOf(loss, t) / n;
  }
  // About half of the residuals lie within 0.67449 scales, where psi' is near 1; beyond it is above -0.8:
  // slope > 0.
  const double correction = 1.0 + p / n * (slope_squared - slope * slope) / (slope * slope);
  fit.covariance = start->covariance(correction * fit.scale * std::sqrt(psi_squared / (n - p)) / slope);
  fit.residuals = observations - design * fit.coefficients;
  return fit;
}

}  // namespace hingepin::statistics
