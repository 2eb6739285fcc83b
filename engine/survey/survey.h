// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <Eigen/Core>
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "engine/base/error.h"
#include "engine/base/named.h"
#include "engine/linkage/numbers.h"
#include "engine/units/degree.h"

namespace hingepin::survey {

/// The centres of the pins, named as in linkage::PinPositions.
enum class Pin {
  BoomPivot,
  HingePin,
  LiftFramePin,
  LiftBoomPin,
  TiltFramePin,
  BellcrankPivot,
  BellcrankTiltPin,
  BellcrankLinkPin,
  BucketLinkPin
};
inline constexpr std::array kPinNames = {Named{"boom-pivot", Pin::BoomPivot},
                                         Named{"hinge-pin", Pin::HingePin},
                                         Named{"lift-frame-pin", Pin::LiftFramePin},
                                         Named{"lift-boom-pin", Pin::LiftBoomPin},
                                         Named{"tilt-frame-pin", Pin::TiltFramePin},
                                         Named{"bellcrank-pivot", Pin::BellcrankPivot},
                                         Named{"bellcrank-tilt-pin", Pin::BellcrankTiltPin},
                                         Named{"bellcrank-link-pin", Pin::BellcrankLinkPin},
                                         Named{"bucket-link-pin", Pin::BucketLinkPin}};

enum class Kind {
  Distance,          ///< between the centres of two pins, m
  Horizontal,        ///< how far `to` is forward of `from`, by plumb line, m
  Vertical,          ///< how far `to` is above `from`, by level, m
  Height,            ///< of `from` above the ground, m
  Inclination,       ///< of the line `from` -> `to` above the horizontal, rad
  BoomPlateAngle,    ///< of a straight edge of the boom above the horizontal, rad
  BoomPlateOffset,   ///< how far that edge is above `from`, square to it, m
  BucketFloorAngle,  ///< of the bucket floor, heel to cutting edge, above the horizontal, rad
  GroundAngle,       ///< of the ground under the machine, rising forwards, rad
  DataSheet          ///< a number of the linkage as a paper gives it, m or rad
};
inline constexpr std::array kKindNames = {Named{"distance", Kind::Distance},
                                          Named{"horizontal", Kind::Horizontal},
                                          Named{"vertical", Kind::Vertical},
                                          Named{"height", Kind::Height},
                                          Named{"inclination", Kind::Inclination},
                                          Named{"boom-plate-angle", Kind::BoomPlateAngle},
                                          Named{"boom-plate-offset", Kind::BoomPlateOffset},
                                          Named{"bucket-floor-angle", Kind::BucketFloorAngle},
                                          Named{"ground-angle", Kind::GroundAngle},
                                          Named{"data-sheet", Kind::DataSheet}};

[[nodiscard]] bool takesTwoPins(Kind kind);
[[nodiscard]] bool takesOnePin(Kind kind);

/// What is measured, apart from what it gave.
struct Target {
  Kind kind = Kind::Distance;
  Pin from = Pin::BoomPivot;
  Pin to = Pin::HingePin;
  std::size_t number = 0;                ///< of linkage::linkageNumbers(), of DataSheet
  std::optional<std::size_t> pose = {};  ///< of Survey::poses

  friend bool operator==(const Target&, const Target&) = default;
};

/// Whether the value is an angle; else it is a length.
[[nodiscard]] bool isAngle(const Target& target);
/// Whether the value changes as the linkage moves, so that a pose has to be named.
[[nodiscard]] bool needsPose(const Target& target);
/// Whether the pin is on the boom, whose straight edge can be measured against it.
[[nodiscard]] bool isOnBoom(Pin pin);

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
