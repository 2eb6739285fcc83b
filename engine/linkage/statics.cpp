// SPDX-License-Identifier: Apache-2.0
#include "engine/linkage/statics.h"

#include <cmath>

namespace hingepin::linkage {
namespace {

PointMotion operator+(const PointMotion& a, const PointMotion& b) {
  return {{a.x.value + b.x.value, a.x.first + b.x.first, a.x.second + b.x.second},
          {a.y.value + b.y.value, a.y.first + b.y.first, a.y.second + b.y.second}};
}

PointMotion operator*(double s, const PointMotion& a) {
  return {{s * a.x.value, s * a.x.first, s * a.x.second}, {s * a.y.value, s * a.y.first, s * a.y.second}};
}

PointMotion quarterTurn(const PointMotion& a) { return {{-a.y.value, -a.y.first, -a.y.second}, a.x}; }

/// The unit vector at an angle that moves with the boom.
PointMotion unit(const Derivatives& angle) {
  const double c = std::cos(angle.value), s = std::sin(angle.value);
  const double turn = angle.first, turn_squared = angle.first * angle.first;
  return {{c, -s * turn, -s * angle.second - c * turn_squared},
          {s, c * turn, c * angle.second - s * turn_squared}};
}

/// A point given along and across a moving direction.
PointMotion at(const Pin& pin, const PointMotion& along) {
  return pin.along.inMetres() * along + pin.across.inMetres() * quarterTurn(along);
}

}  // namespace

Expected<Derivatives> potentialEnergy(const Linkage& linkage, double boom_angle_rad, double tilt_length_m,
                                      const LinkageMasses& masses, Acceleration gravity) {
  const auto state = linkage.tilt(boom_angle_rad, tilt_length_m);
  if (!state) return std::unexpected(state.error());
  const ZBarGeometry& geometry = linkage.geometry();

  Derivatives bellcrank = state->bellcrank_by_boom;  // against the boom; now to the horizontal
  bellcrank.value += boom_angle_rad;
  bellcrank.first += 1.0;
  Derivatives link_arm = bellcrank, bucket_arm = state->bucket_by_boom;
  link_arm.value += geometry.bellcrank_angle.inRadians();
  bucket_arm.value += geometry.bucket_pin_angle.inRadians();

  const PointMotion boom_along = unit({boom_angle_rad, 1.0, 0.0});
  const PointMotion bucket_along = unit(state->bucket_by_boom);
  const PointMotion hinge_pin = geometry.boom_length.inMetres() * boom_along;
  const PointMotion pivot = at(geometry.bellcrank_pivot, boom_along);
  const PointMotion link_start = pivot + geometry.bellcrank_link_arm.inMetres() * unit(link_arm);
  const PointMotion link_end = hinge_pin + geometry.bucket_pin_distance.inMetres() * unit(bucket_arm);
  const PointMotion link_along = (1.0 / geometry.link_length.inMetres()) * (link_end + -1.0 * link_start);

  Derivatives moment{};
  const auto add = [&](const std::vector<PointMass>& body, const PointMotion& origin,
                       const PointMotion& along) {
    for (const PointMass& point : body) {
      const double mass_kg = point.mass.inKilograms();
      const Derivatives y = (origin + at(point.position, along)).y;
      moment.value += mass_kg * y.value;
      moment.first += mass_kg * y.first;
      moment.second += mass_kg * y.second;
    }
  };
  add(masses.boom, PointMotion{}, boom_along);
  add(masses.bellcrank, pivot, unit(bellcrank));
  add(masses.link, link_start, link_along);
  add(masses.bucket, hinge_pin, bucket_along);
  const double g = gravity.inMetresPerSecondSquared();
  return Derivatives{g * moment.value, g * moment.first, g * moment.second};
}

Expected<double> liftForce(const Linkage& linkage, double boom_angle_rad, double tilt_length_m,
                           const LinkageMasses& masses, Acceleration gravity) {
  const auto energy = potentialEnergy(linkage, boom_angle_rad, tilt_length_m, masses, gravity);
  if (!energy) return std::unexpected(energy.error());
  const double arm_m = linkage.liftCylinder(boom_angle_rad).first;
  if (!(arm_m > 0.0)) {
    const Range boom = linkage.liftRange();
    const auto degrees = [](double rad) { return Amount{Angle::fromRadians(rad).inDegrees(), "deg", 1}; };
    return fail(
        ErrorKind::InvalidInput, "boom-outside-lift-range",
        {{"boom_angle", degrees(boom_angle_rad)}, {"low", degrees(boom.low)}, {"high", degrees(boom.high)}});
  }
  return energy->first / arm_m;
}

}  // namespace hingepin::linkage
