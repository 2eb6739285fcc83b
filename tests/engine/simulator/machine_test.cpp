// SPDX-License-Identifier: Apache-2.0
#include "engine/simulator/machine.h"

#include <gtest/gtest.h>

#include <cmath>

#include "engine/simulator/simulator.h"
#include "engine/units/degree.h"

namespace hingepin::simulator {
namespace {

TEST(MachineTest, EveryDrawnLinkageClosesRackedAndItsLiftCylinderLengthensOverTheTravel) {
  Random random(11);
  for (int i = 0; i < 150; ++i) {
    const Machine m = drawMachine(random);
    const auto linkage = linkage::Linkage::make(m.as_built);
    ASSERT_TRUE(linkage.has_value()) << i;
    ASSERT_TRUE(linkage::Linkage::make(m.drawing).has_value()) << i;
    double before = 0.0;
    for (double boom = m.lowest_rad; boom <= m.highest_rad; boom += kDegree) {
      ASSERT_TRUE(linkage->tilt(boom, m.tilt_length_m).has_value()) << i;
      const auto c = linkage->liftCylinder(boom);
      EXPECT_GT(c.first, 0.0);
      EXPECT_GT(c.value, before);
      before = c.value;
    }
    EXPECT_TRUE(linkage->tilt(m.reference_rad, m.as_built.tilt_cylinder_retracted.inMetres()).has_value());
    EXPECT_GE(m.operating_mass_kg, 8000.0);
    EXPECT_LE(m.operating_mass_kg, 25000.0);
    EXPECT_GT(m.frame.mass_kg, 0.6 * m.operating_mass_kg);
    EXPECT_LT(m.window_low_rad, m.window_high_rad);
  }
}

TEST(MachineTest, FrictionShareHasItsStatedSpreadAndIsNeverNegative) {
  Random random(12);
  constexpr int kMachines = 1500;
  double sum = 0.0;
  double squares = 0.0;
  for (int i = 0; i < kMachines; ++i) {
    const double share = drawMachine(random).load_friction_share;
    ASSERT_GE(share, 0.0);
    sum += share;
    squares += share * share;
  }
  const double mean = sum / kMachines;
  const double sd = std::sqrt(squares / kMachines - mean * mean);
  // A normal of 1.0 and 0.5 % cut off at zero: mean 1.0276 %, SD 0.4714 %. Four standard errors of 1500
  // draws.
  EXPECT_NEAR(mean, 0.010276, 4.0 * 0.00471 / std::sqrt(kMachines));
  EXPECT_NEAR(sd, 0.004714, 4.0 * 0.00471 / std::sqrt(2.0 * kMachines));
}

TEST(MachineTest, TheRatedLoadNodsTheMachineHalfToTwoDegreesAndStaysBelowRelief) {
  Random random(13);
  for (int i = 0; i < 60; ++i) {
    const Machine m = drawMachine(random);
    Plan still;
    still.from_rad = 0.0;
    const auto empty = move(m, Part{}, 55.0, 0.0, still);
    const auto loaded =
        move(m, loadAt(m.rated_payload_kg, m.heap_along_m, m.heap_across_m), 55.0, 0.0, still);
    ASSERT_TRUE(empty.has_value() && loaded.has_value());
    const double nod_deg = (empty->instants[0].pitch_rad - loaded->instants[0].pitch_rad) / kDegree;
    EXPECT_GT(nod_deg, 0.5) << i;
    EXPECT_LT(nod_deg, 2.0) << i;
    EXPECT_GT(loaded->instants[0].head_Pa, 90e5) << i;
    EXPECT_LT(loaded->instants[0].head_Pa, 200e5) << i;
    EXPECT_GT(empty->instants[0].head_Pa, 20e5) << i;
  }
}

TEST(MachineTest, TheSameStreamDrawsTheSameMachine) {
  Random a(5);
  Random b(5);
  Random c(6);
  const Machine first = drawMachine(a);
  const Machine again = drawMachine(b);
  const Machine other = drawMachine(c);
  EXPECT_EQ(first.operating_mass_kg, again.operating_mass_kg);
  EXPECT_EQ(first.head_sensor.bow, again.head_sensor.bow);
  EXPECT_NE(first.operating_mass_kg, other.operating_mass_kg);
}

}  // namespace
}  // namespace hingepin::simulator
