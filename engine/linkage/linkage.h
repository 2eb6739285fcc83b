// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <vector>

#include "engine/base/error.h"
#include "engine/units/quantity.h"

namespace hingepin::linkage {

/// A point of the linkage file: two lengths in the frame that the field's comment names.
struct Pin {
  Length along;
  Length across;
};

/// A Z-bar loader linkage, in the plane of the boom: x forward, y up, angles positive from x towards y.
/// Frame pins are measured from the boom pivot A; boom pins along A->B and square to it (up when the boom is
/// level). B is the hinge pin between boom and bucket.
struct ZBarGeometry {
  Length boom_length;
  Length boom_pivot_height;
  Pin lift_frame_pin;
  Pin lift_boom_pin;
  Pin tilt_frame_pin;
  Pin bellcrank_pivot;
  Length bellcrank_tilt_arm;
  Length bellcrank_link_arm;
  Angle bellcrank_angle;  ///< from the tilt arm to the link arm
  Length link_length;
  Length bucket_pin_distance;
  Angle bucket_pin_angle;  ///< of B->link pin, from the bucket's floor direction (heel to cutting edge)
  Length tilt_cylinder_retracted;
  Length tilt_cylinder_extended;
};

/// A function of one variable with its first two derivatives.
struct Derivatives {
  double value;
  double first;
  double second;
};

/// A point in the frame of A (x forward, y up) with its derivatives by the boom angle while the tilt cylinder
/// keeps its length. Metres and radians.
struct PointMotion {
  Derivatives x;
  Derivatives y;
};

/// The tilt side of the linkage at one boom angle and one tilt-cylinder length. Angles in radians.
/// `*_by_boom`: value and derivatives by the boom angle at constant tilt-cylinder length.
/// `*_by_tilt`: the same value, derivatives by the tilt-cylinder length at constant boom angle.
/// At the very ends of what can close a triangle is flat, and derivatives grow without bound.
struct TiltState {
  /// Angle of the tilt arm against A->B; not wrapped, so without a seam.
  Derivatives bellcrank_by_boom;
  Derivatives bellcrank_by_tilt;
  /// Angle of the bucket floor above the horizontal (racked back is positive), within half a turn.
  Derivatives bucket_by_boom;
  Derivatives bucket_by_tilt;
};

/// All pins in the frame of A, metres.
struct PinPositions {
  std::array<double, 2> boom_pivot, hinge_pin, lift_frame_pin, lift_boom_pin, tilt_frame_pin, bellcrank_pivot,
      bellcrank_tilt_pin, bellcrank_link_pin, bucket_link_pin;
};

/// An angle interval in radians, or a length interval in metres.
struct Range {
  double low;
  double high;
};

/// A linkage that is consistent in itself. All angles in radians, all lengths in metres.
class Linkage {
 public:
  /// Checks the numbers of a linkage file: positive lengths, plausible sizes and proportions, loops that
  /// close.
  /// Errors: InvalidInput; the message names the field to look at ("field": "bellcrank_link_arm"; a
  /// coordinate of a pin by its index, "lift_frame_pin/1"), the value and the range that would be plausible;
  /// `place.pointer` is the field's name with a leading slash. "linkage-numbers-disagree" names none: no
  /// single number would mend the linkage.
  [[nodiscard]] static Expected<Linkage> make(const ZBarGeometry& geometry);

  [[nodiscard]] const ZBarGeometry& geometry() const { return geometry_; }

  /// Lift-cylinder length c(beta), its moment arm c' and c'' (m, m/rad, m/rad2).
  [[nodiscard]] Derivatives liftCylinder(double boom_angle_rad) const;

  /// The boom angle at which the lift cylinder has this length, on the branch where it lengthens as the boom
  /// rises. Errors: InvalidInput "lift-length-out-of-range" with the range that can be reached.
  [[nodiscard]] Expected<double> boomAngle(double lift_length_m) const;

  /// The boom angles between which the lift cylinder lengthens all the way (c' > 0), within (-pi, pi).
  [[nodiscard]] Range liftRange() const;

  /// The tilt side at a boom angle and a tilt-cylinder length, both loops on the branch that formats.md
  /// names. Errors: InvalidInput "tilt-loop-cannot-close" or "bucket-loop-cannot-close" with the lengths that
  /// can close, whether or not the cylinder reaches them; "linkage-never-closes" where none can.
  [[nodiscard]] Expected<TiltState> tilt(double boom_angle_rad, double tilt_length_m) const;

  /// Tilt-cylinder length for a bellcrank angle against the boom, as the bucket sensor senses it.
  /// Exact, defined for every angle; does not ask whether the bucket loop closes.
  [[nodiscard]] double tiltLengthOfBellcrank(double boom_angle_rad, double bellcrank_angle_rad) const;

  /// The bucket angle above the horizontal for a bellcrank angle against the boom.
  /// Errors: InvalidInput "bellcrank-angle-out-of-range" with the angles for which the bucket loop closes.
  [[nodiscard]] Expected<double> bucketOfBellcrank(double boom_angle_rad, double bellcrank_angle_rad) const;

  /// The tilt-cylinder length that gives a bucket angle above the horizontal; where two do, past a dead
  /// centre, the one at which the bucket racks back as the cylinder extends.
  /// Errors: InvalidInput "bucket-angle-out-of-range" with the range of bucket angles that can be reached
  /// between the cylinder's ends.
  [[nodiscard]] Expected<double> tiltLengthOfBucket(double boom_angle_rad, double bucket_angle_rad) const;

  /// The tilt-cylinder lengths for which both loops close at this boom angle, intersected with the cylinder's
  /// own two ends; empty (low > high) if none.
  [[nodiscard]] Range tiltRange(double boom_angle_rad) const;

  /// Position and derivatives of a point fixed in the bucket, given from B along the floor direction and
  /// square to it.
  [[nodiscard]] Expected<PointMotion> bucketPoint(double boom_angle_rad, double tilt_length_m,
                                                  const Pin& point) const;

  [[nodiscard]] Expected<PinPositions> pins(double boom_angle_rad, double tilt_length_m) const;

 private:
  explicit Linkage(const ZBarGeometry& geometry) : geometry_(geometry) {}
  ZBarGeometry geometry_;
};

}  // namespace hingepin::linkage
