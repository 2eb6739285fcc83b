// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cmath>
#include <vector>

#include "tests/engine/linkage/machines.h"
#include "tests/engine/linkage/multibody_peer.h"

/// A machine of the tests, built in the independent multibody library.
namespace hingepin::linkage {

inline constexpr Acceleration kGravity = Acceleration::fromMetresPerSecondSquared(9.80665);

inline peer::Point point(const Pin& pin) { return {pin.along.inMetres(), pin.across.inMetres()}; }
inline peer::Point onArm(Length length, Angle angle) {
  return {length.inMetres() * std::cos(angle.inRadians()), length.inMetres() * std::sin(angle.inRadians())};
}
inline std::vector<peer::PointMass> points(const std::vector<PointMass>& masses) {
  std::vector<peer::PointMass> result;
  for (const PointMass& mass : masses) result.push_back({mass.mass.inKilograms(), point(mass.position)});
  return result;
}

inline peer::MultibodyLoader multibodyLoader(const Machine& machine) {
  const ZBarGeometry& g = machine.geometry;
  return peer::MultibodyLoader({.boom_length = g.boom_length.inMetres(),
                                .lift_frame_pin = point(g.lift_frame_pin),
                                .lift_boom_pin = point(g.lift_boom_pin),
                                .tilt_frame_pin = point(g.tilt_frame_pin),
                                .bellcrank_pivot = point(g.bellcrank_pivot),
                                .bellcrank_tilt_pin = onArm(g.bellcrank_tilt_arm, Angle{}),
                                .bellcrank_link_pin = onArm(g.bellcrank_link_arm, g.bellcrank_angle),
                                .link_length = g.link_length.inMetres(),
                                .bucket_link_pin = onArm(g.bucket_pin_distance, g.bucket_pin_angle),
                                .boom = points(machine.masses.boom),
                                .bellcrank = points(machine.masses.bellcrank),
                                .link = points(machine.masses.link),
                                .bucket = points(machine.masses.bucket),
                                .gravity_m_s2 = kGravity.inMetresPerSecondSquared()});
}

}  // namespace hingepin::linkage
