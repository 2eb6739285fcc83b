// SPDX-License-Identifier: Apache-2.0
#include "engine/linkage/statics.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>

#include "tests/engine/linkage/machines.h"
#include "tests/engine/linkage/quadrature.h"
#include "tests/reference/thesis_linkage.h"

namespace hingepin::linkage {
namespace {

constexpr Acceleration kGravity = Acceleration::fromMetresPerSecondSquared(9.80665);

TEST(StaticsTest, WorkOfTheLiftCylinderIsTheRiseOfPotentialEnergy) {
  for (const Machine& machine : machines()) {
    const Linkage linkage = Linkage::make(machine.geometry).value();
    for (const double share : {0.3, 0.6, 1.0}) {
      const double tilt = std::lerp(machine.geometry.tilt_cylinder_retracted.inMetres(),
                                    machine.geometry.tilt_cylinder_extended.inMetres(), share);
      const auto energy = [&](double boom) {
        return potentialEnergy(linkage, boom, tilt, machine.masses, kGravity).value().value;
      };
      const double rise = energy(machine.boom.high) - energy(machine.boom.low);
      const double work = integrate(
          [&](double lift) {
            return liftForce(linkage, linkage.boomAngle(lift).value(), tilt, machine.masses, kGravity)
                .value();
          },
          linkage.liftCylinder(machine.boom.low).value, linkage.liftCylinder(machine.boom.high).value, 60);
      EXPECT_GT(rise, 0.0);
      EXPECT_NEAR(work, rise, 1e-9 * rise) << machine.name;
    }
  }
}

TEST(StaticsTest, MomentAndItsSlopeAreDerivativesOfTheEnergy) {
  for (const Machine& machine : machines()) {
    const Linkage linkage = Linkage::make(machine.geometry).value();
    const double tilt = std::lerp(machine.geometry.tilt_cylinder_retracted.inMetres(),
                                  machine.geometry.tilt_cylinder_extended.inMetres(), 0.6);
    for (double boom = -35 * kDegree; boom <= 30 * kDegree; boom += 2 * kDegree) {
      const auto at = [&](double angle) {
        return potentialEnergy(linkage, angle, tilt, machine.masses, kGravity).value();
      };
      // Four neighbours at h: error h^4/30 of the fifth derivative, rounding 1e-16/h.
      const double h = 1e-3;
      const auto slope = [&](auto member) {
        return (at(boom - 2 * h).*member - 8 * at(boom - h).*member + 8 * at(boom + h).*member -
                at(boom + 2 * h).*member) /
               (12 * h);
      };
      const Derivatives here = at(boom);
      EXPECT_NEAR(here.first, slope(&Derivatives::value), 1e-8 * std::abs(here.first));
      EXPECT_NEAR(here.second, slope(&Derivatives::first), 1e-8 * std::abs(here.first));
    }
  }
}

TEST(StaticsTest, ALoadInTheBucketPressesByItsRiseOverTheCylinders) {
  const Machine machine = demoMachine();
  const Linkage linkage = Linkage::make(machine.geometry).value();
  const double boom = 5 * kDegree, tilt = 1.709;
  LinkageMasses load;
  load.bucket = {pointMass(1000, 0.60, 0.45)};
  const auto motion = linkage.bucketPoint(boom, tilt, pinAt(0.60, 0.45)).value();
  EXPECT_NEAR(liftForce(linkage, boom, tilt, load, kGravity).value(),
              1000 * 9.80665 * motion.y.first / linkage.liftCylinder(boom).first, 1e-6);
  // The rise is not the horizontal distance: the bucket turns on the boom.
  EXPECT_GT(std::abs(motion.y.first - motion.x.value), 0.05);
}

TEST(StaticsTest, OutsideTheLiftRangeThereIsNoForce) {
  const Machine machine = demoMachine();
  const Linkage linkage = Linkage::make(machine.geometry).value();
  const double boom = linkage.liftRange().low - 1 * kDegree;
  const Range range = linkage.tiltRange(boom);
  ASSERT_LE(range.low, range.high);
  const auto force = liftForce(linkage, boom, 0.5 * (range.low + range.high), machine.masses, kGravity);
  ASSERT_FALSE(force);
  EXPECT_EQ(force.error().message.code, "boom-outside-lift-range");
  EXPECT_FALSE(liftForce(linkage, 0.0, 0.1, machine.masses, kGravity));
}

namespace thesis = reference::thesis_linkage;

TEST(ThesisLinkageTest, StartPoseIsTheOneDrawn) {
  const Linkage linkage = Linkage::make(thesisMachine().geometry).value();
  const double boom = thesis::kStartBoomAngle_deg * kDegree;
  const auto pins = linkage.pins(boom, thesis::kStartTiltLength).value();
  // The source's coordinates and its lengths agree to 4 mm.
  EXPECT_NEAR(pins.hinge_pin[0], thesis::kStartBucketPin[0], 4e-3);
  EXPECT_NEAR(pins.hinge_pin[1], thesis::kStartBucketPin[1], 4e-3);
  EXPECT_NEAR(pins.lift_boom_pin[0], thesis::kStartLiftBoomPin[0], 1e-3);
  EXPECT_NEAR(pins.lift_boom_pin[1], thesis::kStartLiftBoomPin[1], 1e-3);
  EXPECT_NEAR(linkage.liftCylinder(boom).value, thesis::kStartLiftLength, 2e-4);
  EXPECT_NEAR(linkage.liftCylinder(boom).first, thesis::kLiftArmAtStart, 1e-4);
  // The lift lengths seen in its data lie in the range where the cylinder lengthens.
  for (const double length : thesis::kLiftLengthSeen) EXPECT_TRUE(linkage.boomAngle(length));
}

TEST(ThesisLinkageTest, ClosesOverTheStrokeSeenFromMinus40To30Degrees) {
  const Linkage linkage = Linkage::make(thesisMachine().geometry).value();
  double nearest = 10.0, farthest = 0.0;
  for (int i = 0; i <= 70; ++i) {
    const double boom = (thesis::kClosingBoomAngles_deg[0] + i) * kDegree;
    const Range range = linkage.tiltRange(boom);
    EXPECT_EQ(range.low, thesis::kTiltLengthSeen[0]);
    EXPECT_EQ(range.high, thesis::kTiltLengthSeen[1]);
    for (int j = 0; j <= 20; ++j) {
      const double tilt = std::lerp(range.low, range.high, j / 20.0);
      const auto pins = linkage.pins(boom, tilt).value();
      const double apart = std::hypot(pins.hinge_pin[0] - pins.bellcrank_link_pin[0],
                                      pins.hinge_pin[1] - pins.bellcrank_link_pin[1]);
      nearest = std::min(nearest, apart);
      farthest = std::max(farthest, apart);
    }
  }
  EXPECT_NEAR(nearest, thesis::kClosingPinDistance[0], 0.005);  // given to 0.01 m
  EXPECT_NEAR(farthest, thesis::kClosingPinDistance[1], 0.005);
}

TEST(ThesisLinkageTest, EmptyStaticsAgreeWithTheFigureGiven) {
  const Linkage linkage = Linkage::make(thesisMachine().geometry).value();
  const double boom = thesis::kStartBoomAngle_deg * kDegree, tilt = thesis::kStartTiltLength;
  const double bucket = linkage.tilt(boom, tilt)->bucket_by_boom.value;
  const double x = thesis::kBucketCentreAtStart[0], y = thesis::kBucketCentreAtStart[1];
  const LinkageMasses empty{
      .boom = {pointMass(thesis::kBoomMass, thesis::kBoomCentre[0], thesis::kBoomCentre[1])},
      .bellcrank = {pointMass(thesis::kRockerMass, 0.0, 0.0)},
      .link = {pointMass(thesis::kLinkMass, 0.5 * thesis::kLinkLength, 0.0)},
      .bucket = {pointMass(thesis::kBucketMass, std::cos(bucket) * x + std::sin(bucket) * y,
                           std::cos(bucket) * y - std::sin(bucket) * x)}};
  const double moment = potentialEnergy(linkage, boom, tilt, empty, kGravity)->first;
  const double area = thesis::kLiftCylinders * std::numbers::pi / 4 * thesis::kLiftBore * thesis::kLiftBore;
  const double pressure_bar = liftForce(linkage, boom, tilt, empty, kGravity).value() / area / 1e5;
  // The figure does not say how it counts the turning of the bucket on the boom, nor where the rocker has its
  // centre of gravity (here on its pivot). Were all parts carried rigidly by the boom, each weight would
  // press by its horizontal distance: that is the other end of what the figure can mean.
  const auto pins = linkage.pins(boom, tilt).value();
  const double rigid = kGravity.inMetresPerSecondSquared() *
                       (thesis::kBoomMass * (std::cos(boom) * thesis::kBoomCentre[0] -
                                             std::sin(boom) * thesis::kBoomCentre[1]) +
                        thesis::kRockerMass * pins.bellcrank_pivot[0] +
                        thesis::kLinkMass * 0.5 * (pins.bellcrank_link_pin[0] + pins.bucket_link_pin[0]) +
                        thesis::kBucketMass * (pins.hinge_pin[0] + x));
  EXPECT_LT(moment, thesis::kEmptyMomentAtStart);
  EXPECT_GT(rigid, thesis::kEmptyMomentAtStart);
  EXPECT_LT(rigid - moment, 0.025 * thesis::kEmptyMomentAtStart);
  const double arm = linkage.liftCylinder(boom).first;
  EXPECT_LT(pressure_bar, thesis::kEmptyPressureAtStart_bar);
  EXPECT_GT(rigid / arm / area / 1e5, thesis::kEmptyPressureAtStart_bar);
  // The figure's own moment, over the arm and the bore, gives its own pressure to the digits it has.
  EXPECT_NEAR(thesis::kEmptyMomentAtStart / arm / area / 1e5, thesis::kEmptyPressureAtStart_bar, 0.1);
  std::printf("empty moment %.2f kN.m, %.2f bar (rigidly carried %.2f kN.m)\n", moment / 1e3, pressure_bar,
              rigid / 1e3);
}

}  // namespace
}  // namespace hingepin::linkage
