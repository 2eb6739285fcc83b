// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cmath>
#include <ostream>
#include <string>
#include <vector>

#include "engine/linkage/linkage.h"
#include "engine/linkage/statics.h"
#include "engine/units/degree.h"
#include "tests/reference/thesis_linkage.h"

namespace hingepin::linkage {

struct Machine {
  std::string name;
  ZBarGeometry geometry;
  Range boom;  ///< the travel to test, radians
  Pin heel, cutting_edge;
  LinkageMasses masses;
};

inline Pin pinAt(double along_m, double across_m) {
  return {Length::fromMetres(along_m), Length::fromMetres(across_m)};
}
inline PointMass pointMass(double mass_kg, double along_m, double across_m) {
  return {Mass::fromKilograms(mass_kg), pinAt(along_m, across_m)};
}

/// The demo unit of the project, invented, with invented masses: bodies, pins and a payload.
inline Machine demoMachine() {
  const auto m = [](double value) { return Length::fromMetres(value); };
  return {
      .name = "demo",
      .geometry = {.boom_length = m(2.55),
                   .boom_pivot_height = m(1.95),
                   .lift_frame_pin = pinAt(0.08, -0.53),
                   .lift_boom_pin = pinAt(1.50, -0.24),
                   .tilt_frame_pin = pinAt(0.164, -0.158),
                   .bellcrank_pivot = pinAt(1.543, 0.487),
                   .bellcrank_tilt_arm = m(0.71),
                   .bellcrank_link_arm = m(0.792),
                   .bellcrank_angle = Angle::fromDegrees(184),
                   .link_length = m(0.609),
                   .bucket_pin_distance = m(0.307),
                   .bucket_pin_angle = Angle::fromDegrees(94),
                   .tilt_cylinder_retracted = m(1.364),
                   .tilt_cylinder_extended = m(1.709)},
      .boom = {-40 * kDegree, 48 * kDegree},
      .heel = pinAt(-0.10, -0.22),
      .cutting_edge = pinAt(1.22, -0.22),
      .masses = {
          .boom = {pointMass(1150, 1.32, 0.12), pointMass(28, 2.55, 0.0), pointMass(24, 1.50, -0.24),
                   pointMass(22, 1.543, 0.487)},
          .bellcrank = {pointMass(310, 0.04, -0.03), pointMass(14, 0.71, 0.0)},
          .link = {pointMass(58, 0.3045, 0.02), pointMass(12, 0.0, 0.0), pointMass(12, 0.609, 0.0)},
          .bucket = {pointMass(320, 0.08, 0.05), pointMass(1250, 0.55, 0.25), pointMass(4500, 0.60, 0.45)}}};
}

/// The linkage of the thesis. Its bucket's floor direction is not given: 100 degrees is chosen here. Its
/// payload, pins, heel and edge are ours.
inline Machine thesisMachine() {
  namespace t = reference::thesis_linkage;
  const auto m = [](double value) { return Length::fromMetres(value); };
  return {.name = "thesis",
          .geometry = {.boom_length = m(t::kBoomLength),
                       .boom_pivot_height = m(t::kBoomPivotHeight),
                       .lift_frame_pin = pinAt(t::kLiftFramePin[0], t::kLiftFramePin[1]),
                       .lift_boom_pin = pinAt(t::kLiftBoomPin[0], t::kLiftBoomPin[1]),
                       .tilt_frame_pin = pinAt(t::kTiltFramePin[0], t::kTiltFramePin[1]),
                       .bellcrank_pivot = pinAt(t::kRockerPivot[0], t::kRockerPivot[1]),
                       .bellcrank_tilt_arm = m(std::hypot(t::kRockerTiltPin[0], t::kRockerTiltPin[1])),
                       .bellcrank_link_arm = m(t::kRockerLinkArm),
                       .bellcrank_angle = Angle::fromDegrees(t::kRockerAngle_deg),
                       .link_length = m(t::kLinkLength),
                       .bucket_pin_distance = m(t::kBucketPinDistance),
                       .bucket_pin_angle = Angle::fromDegrees(100),
                       .tilt_cylinder_retracted = m(t::kTiltLengthSeen[0]),
                       .tilt_cylinder_extended = m(t::kTiltLengthSeen[1])},
          .boom = {-45 * kDegree, 30 * kDegree},
          .heel = pinAt(-0.15, -0.25),
          .cutting_edge = pinAt(1.15, -0.25),
          .masses = {.boom = {pointMass(t::kBoomMass, t::kBoomCentre[0], t::kBoomCentre[1]),
                              pointMass(30, t::kBoomLength, 0.0)},
                     .bellcrank = {pointMass(t::kRockerMass, 0.0, 0.0), pointMass(15, 0.5357, 0.0)},
                     .link = {pointMass(t::kLinkMass, 0.5 * t::kLinkLength, 0.0), pointMass(12, 0.0, 0.0)},
                     .bucket = {pointMass(t::kBucketMass, 0.45, 0.30), pointMass(5000, 0.55, 0.50)}}};
}

inline std::vector<Machine> machines() { return {demoMachine(), thesisMachine()}; }

/// Names a machine in the output of parameterised tests.
inline void PrintTo(const Machine& machine, std::ostream* out) { *out << machine.name; }

}  // namespace hingepin::linkage
