// SPDX-License-Identifier: Apache-2.0
#include "engine/session/machine_drawing.h"

#include <gtest/gtest.h>

#include <cmath>

#include "engine/base/random.h"
#include "engine/simulator/machine.h"
#include "engine/units/degree.h"

namespace hingepin::session {
namespace {

double distance(const DrawnPoint& a, const DrawnPoint& b) { return std::hypot(a[0] - b[0], a[1] - b[1]); }

calibration::LoaderUnit practiceUnit() {
  Random random(1);
  calibration::LoaderUnit unit;
  unit.linkage = simulator::practiceMachine(random).drawing;
  return unit;
}

TEST(MachineDrawingTest, PartsKeepTheirLengthsWhereverTheyStand) {
  const calibration::LoaderUnit unit = practiceUnit();
  const linkage::ZBarGeometry& of = *unit.linkage;
  for (double boom_deg = -40.0; boom_deg <= 48.0; boom_deg += 4.0) {
    for (const double racked : {0.0, 0.3, 0.7, 1.0}) {
      const auto drawn = drawMachine(unit, nullptr, boom_deg * kDegree, racked);
      if (!drawn) continue;  // dumped, its loop doesn't close everywhere
      EXPECT_TRUE(drawn->known);
      // Metres; rounding only.
      constexpr double kSame = 1e-9;
      EXPECT_NEAR(distance(drawn->boom_pivot, drawn->hinge_pin), of.boom_length.inMetres(), kSame);
      EXPECT_NEAR(distance(drawn->bellcrank_pivot, drawn->bellcrank_tilt_pin),
                  of.bellcrank_tilt_arm.inMetres(), kSame);
      EXPECT_NEAR(distance(drawn->bellcrank_pivot, drawn->bellcrank_link_pin),
                  of.bellcrank_link_arm.inMetres(), kSame);
      EXPECT_NEAR(distance(drawn->bellcrank_link_pin, drawn->bucket_link_pin), of.link_length.inMetres(),
                  kSame);
      EXPECT_NEAR(distance(drawn->hinge_pin, drawn->bucket_link_pin), of.bucket_pin_distance.inMetres(),
                  kSame);
      const double tilt_m = distance(drawn->tilt_frame_pin, drawn->bellcrank_tilt_pin);
      EXPECT_GE(tilt_m, of.tilt_cylinder_retracted.inMetres() - kSame);
      EXPECT_LE(tilt_m, of.tilt_cylinder_extended.inMetres() + kSame);
      EXPECT_NEAR(drawn->boom_pivot[1], of.boom_pivot_height.inMetres(), kSame);
      EXPECT_NEAR(drawn->hinge_pin[1] - drawn->boom_pivot[1],
                  of.boom_length.inMetres() * std::sin(boom_deg * kDegree), kSame);
    }
  }
}

TEST(MachineDrawingTest, WhatIsMeasuredIsDrawnWhereItIs) {
  const auto drawn = drawMachine(practiceUnit(), nullptr, 10.0 * kDegree, 1.0);
  ASSERT_TRUE(drawn);
  using survey::Kind;
  using survey::Pin;
  const auto measure = [&](const survey::Target& target) { return drawMeasure(*drawn, target).value(); };
  const auto slope = [](const DrawnMeasure& line) {
    return std::atan2(line.to[1] - line.from[1], line.to[0] - line.from[0]);
  };
  constexpr double kSame = 1e-9;

  const DrawnMeasure cylinder =
      measure({.kind = Kind::Distance, .from = Pin::LiftFramePin, .to = Pin::LiftBoomPin});
  EXPECT_EQ(cylinder.from, drawn->lift_frame_pin);
  EXPECT_EQ(cylinder.to, drawn->lift_boom_pin);

  const DrawnMeasure forward =
      measure({.kind = Kind::Horizontal, .from = Pin::BoomPivot, .to = Pin::LiftFramePin});
  EXPECT_EQ(forward.to, drawn->lift_frame_pin);
  EXPECT_NEAR(slope(forward), forward.to[0] > forward.from[0] ? 0.0 : kDegree * 180.0, kSame);
  EXPECT_EQ(forward.helpers.at(0)[0], drawn->boom_pivot);

  const DrawnMeasure height = measure({.kind = Kind::Height, .from = Pin::HingePin});
  EXPECT_EQ(height.from[1], 0.0);
  EXPECT_EQ(height.to, drawn->hinge_pin);

  // The straight edge runs along the pins of the boom, and the way to a pin is square to it.
  EXPECT_NEAR(slope(measure({.kind = Kind::BoomPlateAngle})), 10.0 * kDegree, kSame);
  const DrawnMeasure offset = measure({.kind = Kind::BoomPlateOffset, .from = Pin::LiftBoomPin});
  EXPECT_EQ(offset.to, drawn->lift_boom_pin);
  EXPECT_NEAR(slope(offset), -80.0 * kDegree, kSame);

  EXPECT_NEAR(slope(measure({.kind = Kind::BucketFloorAngle})), drawn->bucket_rad, kSame);
  EXPECT_FALSE(drawMeasure(*drawn, {.kind = Kind::DataSheet}));
}

TEST(MachineDrawingTest, TheWindowIsAnArcOfTheHingePin) {
  calibration::LoaderUnit unit = practiceUnit();
  unit.weigh_window = {Angle::fromDegrees(-8.0), Angle::fromDegrees(18.0)};
  const auto drawn = drawMachine(unit, nullptr, 0.0, 1.0);
  ASSERT_TRUE(drawn);
  ASSERT_GE(drawn->window_arc.size(), 2U);
  for (const DrawnPoint& point : drawn->window_arc)
    EXPECT_NEAR(distance(point, drawn->boom_pivot), 2.55, 1e-9);
  EXPECT_NEAR(drawn->window_arc.front()[1], 1.95 + 2.55 * std::sin(-8.0 * kDegree), 1e-9);
  EXPECT_NEAR(drawn->window_arc.back()[1], 1.95 + 2.55 * std::sin(18.0 * kDegree), 1e-9);
}

TEST(MachineDrawingTest, AtItsLevelShareTheFloorIsLevel) {
  const calibration::LoaderUnit unit = practiceUnit();
  for (double boom_deg = -34.0; boom_deg <= 40.0; boom_deg += 4.0) {
    const double share = levelShare(unit, boom_deg * kDegree);
    if (share <= 0.0 || share >= 1.0) continue;
    const auto drawn = drawMachine(unit, nullptr, boom_deg * kDegree, share);
    ASSERT_TRUE(drawn) << boom_deg;
    // The drawing keeps a little off the cylinder's ends, where loops are flat.
    EXPECT_NEAR(drawn->bucket_rad / kDegree, 0.0, 1.0) << boom_deg;
    EXPECT_NEAR(drawn->heel[1], drawn->cutting_edge[1], 0.03);
  }
}

TEST(MachineDrawingTest, WherePinsAreUnknownAPlausibleLoaderIsDrawnAndSaidToBeSo) {
  const calibration::LoaderUnit unit;
  for (double boom_deg = -60.0; boom_deg <= 80.0; boom_deg += 5.0) {
    const auto drawn = drawMachine(unit, nullptr, boom_deg * kDegree, 1.0);
    ASSERT_TRUE(drawn) << boom_deg;
    EXPECT_FALSE(drawn->known);
    EXPECT_GE(drawn->bucket.size(), 6U);
    for (const DrawnPoint& point : drawn->bucket)
      EXPECT_TRUE(std::isfinite(point[0]) && std::isfinite(point[1]));
  }
}

}  // namespace
}  // namespace hingepin::session
