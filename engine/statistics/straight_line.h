// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <Eigen/Core>

#include "engine/base/error.h"
#include "engine/statistics/least_squares.h"

namespace hingepin::statistics {

/// Points with errors in both coordinates, all (n).
struct LinePoints {
  Eigen::VectorXd x;
  Eigen::VectorXd y;
  Eigen::VectorXd u_x;  ///< standard uncertainty, >= 0
  Eigen::VectorXd u_y;  ///< standard uncertainty, > 0
  Eigen::VectorXd
      covariance_xy;  ///< of x and y of one point, below u_x u_y in size; empty when there is none
};

/// The line y = intercept + slope x.
struct StraightLine {
  double intercept = 0.0;
  double slope = 0.0;
  Eigen::Matrix2d covariance = Eigen::Matrix2d::Zero();  ///< of (intercept, slope)
  Eigen::VectorXd x_adjusted;                            ///< (n) the most probable x, on the line
  double chi_squared = 0.0;
  double residual_scale = 0.0;  ///< sqrt(chi_squared / degrees_of_freedom); 0 for two points
  int degrees_of_freedom = 0;   ///< n - 2
};

/// A value with its standard uncertainty.
struct Estimate {
  double value = 0.0;
  double standard_uncertainty = 0.0;
};

/// Straight line through points with errors in both coordinates, independent from point to point.
/// Covariance of the coefficients at the adjusted points, which is that of maximum likelihood; ISO/TS 28037
/// gives the same.
/// @param points n >= 2 (n > 2 for FromResiduals)
/// Errors: InvalidInput "line-covariance-invalid" and, as fitWeighted, sizes, non-finite, uncertainty;
/// Insufficient (n too small, "fit-did-not-converge": a line too steep for its points to tell); RankDeficient
/// (all x alike). Source: York, Evensen, Lopez Martinez, De Basabe Delgado 2004, Am. J. Phys. 72, 367, eq.
/// 13; ISO/TS 28037:2010 clause 7.
[[nodiscard]] Expected<StraightLine> fitStraightLine(const LinePoints& points, NoiseScale scale);

/// y at x, an x with an error of its own, independent of the fit.
[[nodiscard]] Estimate predict(const StraightLine& line, double x, double u_x);

/// Inverse use: the x that gives y, a y with an error of its own, independent of the fit; to first order.
/// Errors: Insufficient "line-has-no-slope"; InvalidInput (not finite).
/// Source: ISO/TS 28037:2010 clause 11.
[[nodiscard]] Expected<Estimate> readBack(const StraightLine& line, double y, double u_y);

}  // namespace hingepin::statistics
