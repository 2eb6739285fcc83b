// SPDX-License-Identifier: Apache-2.0
#include "engine/statistics/smoothing.h"

#include <Eigen/QR>
#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "engine/statistics/householder.h"

namespace hingepin::statistics {
namespace {

/// The weighted data brought down to a triangle, and the penalty; one solution for each lambda.
class PenalisedProblem {
 public:
  PenalisedProblem(const Eigen::MatrixXd& weighted_design, const Eigen::VectorXd& weighted_y,
                   Eigen::MatrixXd roughness_root)
      : roughness_root_(std::move(roughness_root)), rows_(static_cast<double>(weighted_design.rows())) {
    const Eigen::Index kept = std::min(weighted_design.rows(), weighted_design.cols());
    const Eigen::HouseholderQR<Eigen::MatrixXd> qr(weighted_design);
    const Eigen::VectorXd rotated = qr.householderQ().adjoint() * weighted_y;
    triangle_ = qr.matrixQR().topRows(kept).triangularView<Eigen::Upper>();
    rotated_y_ = rotated.head(kept);
    beyond_ = rotated.tail(rotated.size() - kept).squaredNorm();
  }

  /// The lambda at which data and penalty weigh alike.
  [[nodiscard]] double balance() const { return triangle_.squaredNorm() / roughness_root_.squaredNorm(); }

  struct Point {
    Solution solution;
    double effective_parameters;
    double residual_sum;
    double score;  ///< generalised cross-validation
  };

  [[nodiscard]] Expected<Point> at(double lambda) const {
    Eigen::MatrixXd stacked(triangle_.rows() + roughness_root_.rows(), triangle_.cols());
    stacked << triangle_, std::sqrt(lambda) * roughness_root_;
    Eigen::VectorXd right = Eigen::VectorXd::Zero(stacked.rows());
    right.head(rotated_y_.size()) = rotated_y_;
    auto solution = solveByHouseholder(std::move(stacked), right);
    if (!solution) return std::unexpected(std::move(solution.error()));
    Point point{std::move(*solution), 0.0, 0.0, std::numeric_limits<double>::infinity()};
    point.effective_parameters = (triangle_ * point.solution.root).squaredNorm();
    point.residual_sum = (triangle_ * point.solution.coefficients - rotated_y_).squaredNorm() + beyond_;
    // A curve through every point has no residuals left to judge it by.
    const double spare = rows_ - point.effective_parameters;
    if (spare > 1e-3) point.score = rows_ * point.residual_sum / (spare * spare);
    return point;
  }

 private:
  Eigen::MatrixXd triangle_;
  Eigen::VectorXd rotated_y_;
  Eigen::MatrixXd roughness_root_;
  double beyond_ = 0.0;
  double rows_;
};

}  // namespace

Eigen::RowVectorXd SplineBasis::row(double x, int derivative) const {
  Eigen::RowVectorXd values = Eigen::RowVectorXd::Zero(size());
  if (std::isnan(x)) return Eigen::RowVectorXd::Constant(size(), x);
  const double width = (high - low) / intervals;
  const double position = (std::clamp(x, low, high) - low) / width;
  const int interval = std::min(static_cast<int>(position), intervals - 1);
  const double u = position - interval;
  const double v = 1.0 - u;
  auto four = values.segment<4>(interval);
  if (derivative == 0) {
    four << v * v * v / 6.0, ((3.0 * u - 6.0) * u * u + 4.0) / 6.0, ((3.0 * v - 6.0) * v * v + 4.0) / 6.0,
        u * u * u / 6.0;
  } else if (derivative == 1) {
    four << -v * v, (3.0 * u - 4.0) * u, -(3.0 * v - 4.0) * v, u * u;
    four /= 2.0 * width;
  } else {
    four << v, 3.0 * u - 2.0, 3.0 * v - 2.0, u;
    four /= width * width;
  }
  return values;
}

Eigen::MatrixXd SplineBasis::design(const Eigen::VectorXd& x) const {
  Eigen::MatrixXd result(x.size(), size());
  for (Eigen::Index i = 0; i < x.size(); ++i) result.row(i) = row(x(i));
  return result;
}

Eigen::MatrixXd SplineBasis::roughnessRoot() const {
  // f'' is a straight line from p to q within an interval h: its square integrates to h ((p + q)^2 / 4 + (q -
  // p)^2 / 12).
  const double width = (high - low) / intervals;
  const double mean_factor = std::sqrt(width) / 2.0;
  const double change_factor = std::sqrt(width / 12.0);
  Eigen::MatrixXd root(2 * intervals, size());
  Eigen::RowVectorXd at_start = row(low, 2);
  for (int i = 0; i < intervals; ++i) {
    Eigen::RowVectorXd at_end = Eigen::RowVectorXd::Zero(size());
    at_end.segment<3>(i + 1) << 1.0, -2.0, 1.0;
    at_end /= width * width;
    root.row(2 * i) = mean_factor * (at_start + at_end);
    root.row(2 * i + 1) = change_factor * (at_end - at_start);
    at_start = std::move(at_end);
  }
  return root;
}

Expected<SmoothFit> fitSmooth(const Eigen::VectorXd& x, const Eigen::VectorXd& y,
                              const Eigen::VectorXd& standard_uncertainty, const SplineBasis& basis) {
  if (!(basis.high > basis.low) || !std::isfinite(basis.high - basis.low) || basis.intervals < 1)
    return fail(ErrorKind::InvalidInput, "smooth-basis-invalid");
  // A straight line, to which the penalty leads, takes two; the noise takes one more.
  constexpr Eigen::Index kLeastRows = 3;
  if (auto checked = checkProblem(x, y, kLeastRows - 1); !checked)
    return std::unexpected(std::move(checked.error()));
  if (auto checked = checkPositive(standard_uncertainty, x.size()); !checked)
    return std::unexpected(std::move(checked.error()));
  const double slack = 1e-9 * (basis.high - basis.low);
  for (Eigen::Index i = 0; i < x.size(); ++i) {
    if (x(i) < basis.low - slack || x(i) > basis.high + slack) {
      return fail(ErrorKind::InvalidInput, "smooth-outside-basis",
                  {{"row", Amount{static_cast<double>(i + 1), "1"}}});
    }
  }

  const PenalisedProblem problem(standard_uncertainty.cwiseInverse().asDiagonal() * basis.design(x),
                                 y.cwiseQuotient(standard_uncertainty), basis.roughnessRoot());

  // From stiff to loose in half decades, ties to the stiffer, then golden section between the neighbours of
  // the best.
  constexpr double kStiffest = 8.0;
  constexpr double kLoosest = -10.0;
  constexpr double kStep = 0.5;
  const double balance = problem.balance();
  const auto lambda = [&](double decade) { return balance * std::pow(10.0, decade); };
  auto best = problem.at(lambda(kStiffest));
  if (!best) return std::unexpected(std::move(best.error()));
  double best_decade = kStiffest;
  const auto consider = [&](double decade) -> double {
    auto point = problem.at(lambda(decade));
    if (!point) return std::numeric_limits<double>::infinity();
    const double score = point->score;
    if (score < best->score) {
      best = std::move(point);
      best_decade = decade;
    }
    return score;
  };
  for (double decade = kStiffest - kStep; decade >= kLoosest; decade -= kStep) consider(decade);

  constexpr double kGolden = 0.61803398874989485;
  double left = best_decade - kStep;
  double right = best_decade + kStep;
  double inner_left = right - kGolden * (right - left);
  double inner_right = left + kGolden * (right - left);
  double score_left = consider(inner_left);
  double score_right = consider(inner_right);
  // A thousandth of a decade of lambda is far below what it is known to.
  while (right - left > 1e-3) {
    if (score_left < score_right) {
      right = std::exchange(inner_right, inner_left);
      score_right = score_left;
      inner_left = right - kGolden * (right - left);
      score_left = consider(inner_left);
    } else {
      left = std::exchange(inner_left, inner_right);
      score_left = score_right;
      inner_right = left + kGolden * (right - left);
      score_right = consider(inner_right);
    }
  }

  SmoothFit fit{basis, best->solution.coefficients, {}, lambda(best_decade), best->effective_parameters, 0.0};
  fit.residual_scale =
      std::sqrt(best->residual_sum / (static_cast<double>(x.size()) - best->effective_parameters));
  fit.covariance = best->solution.covariance(fit.residual_scale);
  return fit;
}

}  // namespace hingepin::statistics
