// SPDX-License-Identifier: Apache-2.0
#include "engine/statistics/householder.h"

#include <Eigen/QR>
#include <algorithm>
#include <cmath>
#include <limits>

namespace hingepin::statistics {
namespace {

Amount count(Eigen::Index value) { return {static_cast<double>(value), "1"}; }

/// y - A b with the accuracy of twice the digits (two-sum of Knuth, product by fused multiply-add), rounded
/// once.
Eigen::VectorXd exactResidual(const Eigen::MatrixXd& a, const Eigen::VectorXd& b, const Eigen::VectorXd& y) {
  Eigen::VectorXd sum = y;
  Eigen::VectorXd lost = Eigen::VectorXd::Zero(y.size());
  for (Eigen::Index j = 0; j < a.cols(); ++j) {
    for (Eigen::Index i = 0; i < a.rows(); ++i) {
      const double product = -a(i, j) * b(j);
      const double next = sum(i) + product;
      const double added = next - sum(i);
      lost(i) += (sum(i) - (next - added)) + (product - added) + std::fma(-a(i, j), b(j), -product);
      sum(i) = next;
    }
  }
  return sum + lost;
}

}  // namespace

Expected<void> checkProblem(const Eigen::MatrixXd& design, const Eigen::VectorXd& observations,
                            Eigen::Index spare_rows) {
  const Eigen::Index n = design.rows();
  const Eigen::Index p = design.cols();
  if (observations.size() != n) {
    return fail(ErrorKind::InvalidInput, "fit-sizes-differ",
                {{"expected", count(n)}, {"found", count(observations.size())}});
  }
  if (p == 0) return fail(ErrorKind::InvalidInput, "fit-no-unknowns");
  if (n < p + spare_rows) {
    return fail(ErrorKind::Insufficient, "fit-too-few-observations",
                {{"expected", count(p + spare_rows)}, {"found", count(n)}});
  }
  if (!design.allFinite() || !observations.allFinite())
    return fail(ErrorKind::InvalidInput, "fit-not-finite");
  return {};
}

Expected<void> checkPositive(const Eigen::VectorXd& values, Eigen::Index rows) {
  if (values.size() != rows) {
    return fail(ErrorKind::InvalidInput, "fit-sizes-differ",
                {{"expected", count(rows)}, {"found", count(values.size())}});
  }
  for (Eigen::Index i = 0; i < rows; ++i) {
    if (!(values(i) > 0.0) || !std::isfinite(values(i)))
      return fail(ErrorKind::InvalidInput, "fit-uncertainty-not-positive", {{"row", count(i + 1)}});
  }
  return {};
}

Eigen::MatrixXd Solution::covariance(double sd) const {
  Eigen::MatrixXd result = Eigen::MatrixXd::Zero(root.rows(), root.rows());
  result.selfadjointView<Eigen::Lower>().rankUpdate(root, sd * sd);
  result.triangularView<Eigen::StrictlyUpper>() = result.transpose();
  return result;
}

Expected<Solution> solveByHouseholder(Eigen::MatrixXd a, const Eigen::VectorXd& y) {
  const Eigen::Index p = a.cols();
  Eigen::VectorXd scale(p);
  for (Eigen::Index j = 0; j < p; ++j) {
    int exponent = 0;
    std::frexp(a.col(j).stableNorm(), &exponent);
    scale(j) = std::ldexp(1.0, -exponent);
    a.col(j) *= scale(j);
  }
  if (!a.allFinite() || !y.allFinite() || !scale.allFinite())
    return fail(ErrorKind::InvalidInput, "fit-not-finite");

  Eigen::ColPivHouseholderQR<Eigen::MatrixXd> qr;
  qr.setThreshold(10.0 * static_cast<double>(std::max(a.rows(), p)) * std::numeric_limits<double>::epsilon());
  qr.compute(a);
  if (qr.rank() < p) {
    return fail(ErrorKind::RankDeficient, "fit-rank-deficient",
                {{"rank", count(qr.rank())}, {"unknowns", count(p)}});
  }
  Solution solution;
  solution.coefficients = qr.solve(y);
  // One step of refinement wins back digits that a badly conditioned design costs.
  solution.coefficients += qr.solve(exactResidual(a, solution.coefficients, y));
  solution.coefficients.array() *= scale.array();
  const Eigen::MatrixXd inverse =
      qr.matrixR().topLeftCorner(p, p).triangularView<Eigen::Upper>().solve(Eigen::MatrixXd::Identity(p, p));
  solution.root = scale.asDiagonal() * (qr.colsPermutation() * inverse);
  return solution;
}

}  // namespace hingepin::statistics
