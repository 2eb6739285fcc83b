// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <Eigen/Core>

#include "engine/base/error.h"

namespace hingepin::statistics {

/// What every fit of this area asks of its input: rows that match, at least one unknown, at least
/// `spare_rows` rows more than unknowns, all finite. Errors: InvalidInput "fit-sizes-differ",
/// "fit-no-unknowns", "fit-not-finite"; Insufficient "fit-too-few-observations".
[[nodiscard]] Expected<void> checkProblem(const Eigen::MatrixXd& design, const Eigen::VectorXd& observations,
                                          Eigen::Index spare_rows);

/// InvalidInput unless all (n) values are finite and above zero: "fit-sizes-differ",
/// "fit-uncertainty-not-positive" (names the first row that is not, from 1).
[[nodiscard]] Expected<void> checkPositive(const Eigen::VectorXd& values, Eigen::Index rows);

/// The least-squares solution of A b = y.
struct Solution {
  Eigen::VectorXd coefficients;  ///< (p)
  Eigen::MatrixXd root;          ///< (p, p) C with C C^T = (A^T A)^-1

  /// sd^2 C C^T, symmetric to the last bit: the covariance when each row of y has this SD.
  [[nodiscard]] Eigen::MatrixXd covariance(double sd) const;
};

/// By Householder QR with column pivoting. Columns are first brought to lengths within a factor of two of
/// each other by powers of two, which rounds nothing, so that rank does not depend on their units. They count
/// as dependent when a pivot falls below 10 max(n, p) epsilon of the largest. Errors: RankDeficient
/// "fit-rank-deficient"; InvalidInput "fit-not-finite" (overflow of the weighted rows included).
[[nodiscard]] Expected<Solution> solveByHouseholder(Eigen::MatrixXd a, const Eigen::VectorXd& y);

}  // namespace hingepin::statistics
