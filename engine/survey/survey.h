// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <Eigen/Core>
#include <optional>
#include <string>
#include <vector>

#include "engine/base/error.h"
#include "engine/linkage/numbers.h"
#include "engine/survey/target.h"
#include "engine/units/degree.h"

namespace hingepin::survey {

struct Measurement {
  Target target;
  double value = 0.0;
  double u = 0.0;  ///< standard uncertainty, > 0
};

enum class TiltEnd { Retracted, Extended };

/// A position in which the linkage stood while several things were measured. Its angles are not supposed to
/// be known.
struct Pose {
  std::string name;
  std::optional<TiltEnd> tilt_end = {};  ///< where the tilt cylinder is at one of its ends
};

struct Survey {
  std::vector<Pose> poses;
  std::vector<Measurement> measurements;
  double ground_u_rad = 0.3 * kDegree;  ///< how level the ground was taken to be
};

/// A measurement against all the others.
struct Check {
  double standardised = 0.0;  ///< measured less estimated, over what that difference may be
  double others = 0.0;        ///< what all the others make of it
  double redundancy = 0.0;    ///< 0: nothing else tells it, so it can't be checked; 1: it adds nothing
};

/// A linkage estimated from a survey.
struct Estimate {
  linkage::ZBarGeometry geometry;
  linkage::LinkageDoubt doubt;
  linkage::PerNumber told;    ///< of each number, how much of what was in doubt beforehand is gone: 0 to 1
  std::vector<Check> checks;  ///< of the measurements, in their order
  std::optional<std::size_t> disagrees;  ///< the measurement that fits worst, where it fits too badly
  /// Numbers that could as well have the other sign, as far as the measurements tell; `doubt` covers both.
  std::vector<std::size_t> either_sign;
  double chi_squared = 0.0;
  std::vector<double> boom_angles_rad;  ///< of the poses

  /// Unknowns in units of what was in doubt of them beforehand, at the optimum; the columns of `root` are
  /// independent causes. For `gains`.
  Eigen::VectorXd unknowns;
  Eigen::MatrixXd root;
};

/// The linkage that agrees best with a survey: least squares over the linkage's numbers, the pose's angles,
/// the boom plate and the ground together, from a loader of middling proportions with wide doubts (Levenberg
/// 1944, Marquardt 1963; each step by a QR decomposition). Pins that distances show as in a mirror are tried
/// on the other side too. What disagrees is found by the studentised residual (Baarda 1968, data snooping).
/// Errors: Insufficient "survey-empty", "survey-not-found" (no optimum), "survey-loops-untold" (too little is
/// measured of bellcrank and link to tell on which side their loops close). `place.pointer` leads to the
/// measurement that fits worst, "/measurements/3".
[[nodiscard]] Expected<Estimate> estimate(const Survey& survey);

/// What a measurement would be worth.
struct Gain {
  Target target;
  double u = 0.0;                        ///< with which it is supposed to be measured
  std::optional<double> boom_angle_rad;  ///< where a new pose is wanted: the boom near this, its angle
                                         ///< measured with it, the bucket racked back
  double effect_u = 0.0;                 ///< standard uncertainty of the effect after it
};

/// For everything that a tape and an inclinometer could still measure: the standard uncertainty of an effect
/// that it would leave, the least first. Linear, at the estimate.
/// @param effect derivative of the effect by each number of the linkage
[[nodiscard]] std::vector<Gain> gains(const Survey& survey, const Estimate& estimate,
                                      const linkage::PerNumber& effect, double tape_u_m,
                                      double inclinometer_u_rad);

/// Standard uncertainty of an effect that is linear in the numbers.
[[nodiscard]] double effectUncertainty(const linkage::LinkageDoubt& doubt, const linkage::PerNumber& effect);

}  // namespace hingepin::survey
