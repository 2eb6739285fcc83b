// SPDX-License-Identifier: Apache-2.0
#include "engine/session/empty_lift.h"

#include <gtest/gtest.h>

namespace hingepin::session {
namespace {

constexpr double kRising_N = 60000.0;

/// One slow pass that rises and one that comes down, and a tare that asks for the same force at every angle.
calibration::Calibration taught() {
  calibration::Calibration calibration;
  calibration.cylinder_count = 2;
  calibration.head_area_m2 = 0.0130;
  calibration.rod_area_m2 = 0.0091;
  calibration.boom_line.slope_rad_per_unit = 0.5;
  calibration.tare_basis = {-0.4, 0.5, 3};
  calibration.state.mean = Eigen::VectorXd::Zero(calibration::kUnknowns + calibration.tare_basis.size());
  calibration.state.mean.tail(calibration.tare_basis.size()).setConstant(kRising_N);  // B-splines sum to one
  calibration.passes.resize(2);
  calibration.passes[0].name = "up.csv";
  calibration.passes[0].low_rad = -0.3;
  calibration.passes[0].high_rad = 0.6;
  calibration.passes[1].name = "down.csv";
  calibration.passes[1].direction = calibration::Direction::Down;
  calibration.passes[1].low_rad = -0.4;
  calibration.passes[1].high_rad = 0.5;
  return calibration;
}

calibration::Job recorded() {
  calibration::Job job;
  for (const char* name : {"up.csv", "down.csv"}) {
    calibration::Lift lift;
    lift.name = name;
    lift.readings.rows.resize(2);
    lift.readings.rows[0].boom_sensor = 0.4;
    lift.readings.rows[0].head_pressure_Pa = 50e5;
    lift.readings.rows[0].rod_pressure_Pa = 10e5;
    lift.readings.rows[1].boom_sensor = 0.6;
    lift.readings.rows[1].head_pressure_Pa = 52e5;
    job.lifts.push_back(lift);
  }
  calibration::Lift loaded = job.lifts[0];
  loaded.kind = calibration::LiftKind::TestMass;
  job.lifts.push_back(loaded);
  return job;
}

TEST(EmptyLiftTest, ReadingsAreThoseOfTheEmptyPassesLessTheRodSidesShare) {
  const EmptyLift empty = emptyLift(recorded(), taught(), 11).value();
  ASSERT_EQ(empty.passes.size(), 2U);
  EXPECT_FALSE(empty.passes[0].lowering);
  EXPECT_TRUE(empty.passes[1].lowering);
  ASSERT_EQ(empty.passes[0].readings.size(), 2U);
  EXPECT_DOUBLE_EQ(empty.passes[0].readings[0].boom_angle_rad, 0.2);
  EXPECT_DOUBLE_EQ(empty.passes[0].readings[0].pressure_Pa, 50e5 - 10e5 * 0.7);
  EXPECT_DOUBLE_EQ(empty.passes[0].readings[1].pressure_Pa, 52e5);
}

TEST(EmptyLiftTest, TheTareIsTheForceOverTheHeadAreaWhereRisingPassesTaughtIt) {
  const EmptyLift empty = emptyLift(recorded(), taught(), 11).value();
  ASSERT_EQ(empty.tare.size(), 11U);
  EXPECT_DOUBLE_EQ(empty.tare.front().boom_angle_rad, -0.3);
  EXPECT_DOUBLE_EQ(empty.tare.back().boom_angle_rad, 0.5);
  // Rounding of a sum of four splines.
  for (const PressurePoint& point : empty.tare) EXPECT_NEAR(point.pressure_Pa, kRising_N / 0.026, 1e-6);
}

TEST(EmptyLiftTest, WithALinkageTheTareIsAMomentOverTheArm) {
  calibration::Calibration calibration = taught();
  linkage::ZBarGeometry geometry;  // the example of the job format
  geometry.boom_length = Length::fromMetres(2.55);
  geometry.boom_pivot_height = Length::fromMetres(1.95);
  geometry.lift_frame_pin = {Length::fromMetres(0.08), Length::fromMetres(-0.53)};
  geometry.lift_boom_pin = {Length::fromMetres(1.5), Length::fromMetres(-0.24)};
  geometry.tilt_frame_pin = {Length::fromMetres(0.164), Length::fromMetres(-0.158)};
  geometry.bellcrank_pivot = {Length::fromMetres(1.543), Length::fromMetres(0.487)};
  geometry.bellcrank_tilt_arm = Length::fromMetres(0.71);
  geometry.bellcrank_link_arm = Length::fromMetres(0.792);
  geometry.bellcrank_angle = Angle::fromDegrees(184);
  geometry.link_length = Length::fromMetres(0.609);
  geometry.bucket_pin_distance = Length::fromMetres(0.307);
  geometry.bucket_pin_angle = Angle::fromDegrees(94);
  geometry.tilt_cylinder_retracted = Length::fromMetres(1.364);
  geometry.tilt_cylinder_extended = Length::fromMetres(1.709);
  calibration.linkage = geometry;
  const EmptyLift empty = emptyLift(recorded(), calibration, 5).value();
  const linkage::Linkage linkage = linkage::Linkage::make(geometry).value();
  ASSERT_EQ(empty.tare.size(), 5U);
  for (const PressurePoint& point : empty.tare) {
    // The arm by a central difference of the cylinder's length: to the square of its step.
    const double h = 1e-5;
    const double arm_m = (linkage.liftCylinder(point.boom_angle_rad + h).value -
                          linkage.liftCylinder(point.boom_angle_rad - h).value) /
                         (2.0 * h);
    EXPECT_NEAR(point.pressure_Pa * 0.026 * arm_m, kRising_N, 1e-4 * kRising_N);
  }
}

TEST(EmptyLiftTest, NothingTaughtRisingHasNoTare) {
  calibration::Calibration calibration = taught();
  calibration.passes.clear();
  EXPECT_TRUE(emptyLift(recorded(), calibration, 5).value().tare.empty());
}

}  // namespace
}  // namespace hingepin::session
