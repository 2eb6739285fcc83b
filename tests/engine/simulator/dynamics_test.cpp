// SPDX-License-Identifier: Apache-2.0
#include "engine/simulator/dynamics.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>
#include <vector>

#include "engine/simulator/simulator.h"
#include "engine/units/degree.h"
#include "tests/engine/simulator/practice_machine.h"

namespace hingepin::simulator {
namespace {

/// No friction, no losses, no air, no leak, built as drawn.
Machine lossless() {
  Machine m = practice();
  Friction& f = m.friction;
  f.seal_N_per_Pa = f.seal_preload_N = f.seal_viscous_N_s_per_m = f.pin_coefficient = 0.0;
  LiftHydraulics& h = m.hydraulics;
  h.air_share = h.flow_droop = h.piston_leak_m3_per_s_Pa = 0.0;
  h.head_line_laminar = h.head_line_orifice = h.rod_line_laminar = h.rod_line_orifice = 0.0;
  h.rod_valve_orifice = 0.0;
  m.frame.tyre_damping_N_m_s_per_rad = 0.0;
  return m;
}

void putOnStands(Machine& m) { m.frame.tyre_stiffness_N_m_per_rad = std::numeric_limits<double>::infinity(); }

Part someLoad() { return loadAt(3000.0, 0.65, 0.40); }

/// Potential energy of the moving parts with the frame level, put together apart from the simulator.
double potential(const Machine& m, const Part& load, double boom_rad) {
  const auto linkage = linkage::Linkage::make(m.as_built).value();
  const auto pins = linkage.pins(boom_rad, m.tilt_length_m).value();
  const auto tilt = linkage.tilt(boom_rad, m.tilt_length_m).value();
  const auto height = [](const std::array<double, 2>& at, double turned_rad, const Part& part) {
    return part.mass_kg *
           (at[1] + part.along_m * std::sin(turned_rad) + part.across_m * std::cos(turned_rad));
  };
  const double bucket_rad = tilt.bucket_by_boom.value;
  const double link_arm_rad = std::atan2(pins.bellcrank_link_pin[1] - pins.bellcrank_pivot[1],
                                         pins.bellcrank_link_pin[0] - pins.bellcrank_pivot[0]);
  double moment = height(pins.boom_pivot, boom_rad, m.parts.boom);
  moment += height(pins.bellcrank_pivot, link_arm_rad, m.parts.bellcrank);
  moment += m.parts.link_kg * 0.5 * (pins.bellcrank_link_pin[1] + pins.bucket_link_pin[1]);
  moment += m.parts.tilt_cylinder_kg * pins.bellcrank_tilt_pin[1];
  for (const Part& part : {m.parts.bucket, m.parts.coupler, load})
    moment += height(pins.hinge_pin, bucket_rad, part);
  return m.gravity_m_per_s2 * moment;
}

TEST(DynamicsTest, StaticForceIsTheRiseOfPotentialEnergyOverTheCylindersLengthening) {
  Machine m = lossless();
  putOnStands(m);
  const auto linkage = linkage::Linkage::make(m.as_built).value();
  for (const Part& load : {Part{}, someLoad()}) {
    for (double deg = -38.0; deg <= 46.0; deg += 4.0) {
      Plan still;
      still.from_rad = deg * kDegree;
      const auto motion = move(m, load, 50.0, 0.0, still);
      ASSERT_TRUE(motion.has_value());
      const Instant& rest = motion->instants[0];
      const double force =
          rest.cylinder_head_Pa * headArea(m.hydraulics) - rest.rod_Pa * rodArea(m.hydraulics);
      const double h = 1e-4;
      const double dV = potential(m, load, deg * kDegree + h) - potential(m, load, deg * kDegree - h);
      const double dc =
          linkage.liftCylinder(deg * kDegree + h).value - linkage.liftCylinder(deg * kDegree - h).value;
      // The simulator's table holds slopes to about 1e-7; the differences here to 1e-8.
      EXPECT_NEAR(force, dV / dc, 1e-6 * force) << deg << " deg, " << load.mass_kg << " kg";
    }
  }
}

TEST(DynamicsTest, WithoutLossesTheWorkOfPressureIsTheRiseOfKineticAndPotentialEnergy) {
  for (const bool stands : {true, false}) {
    Machine m = lossless();
    if (stands) putOnStands(m);
    const Part load = someLoad();
    Plan plan = onePass(-30.0 * kDegree, 35.0 * kDegree, m.fast_rad_per_s);
    const auto motion = move(m, load, 50.0, 0.0, plan);
    const auto table = MechanicsTable::make(m, load);
    ASSERT_TRUE(motion.has_value() && table.has_value());
    const double k = stands ? 0.0 : m.frame.tyre_stiffness_N_m_per_rad;
    // The tyres' rest, from the first moment of the state at rest.
    const Mechanics first = table->at(motion->instants[0].boom_rad);
    const double g = m.gravity_m_per_s2;
    const double pitch = motion->instants[0].pitch_rad;
    const double rest_rad =
        stands ? 0.0
               : pitch + g * (first.forward.value * std::cos(pitch) - first.up.value * std::sin(pitch)) / k;
    const auto energy = [&](const Instant& i) {
      const Mechanics at = table->at(i.boom_rad);
      const double w = i.boom_rad_per_s;
      const double W = i.pitch_rad_per_s;
      const double tyre = i.pitch_rad - rest_rad;
      return 0.5 * at.boom.value * w * w + at.mixed.value * w * W + 0.5 * at.pitch.value * W * W +
             g * (at.forward.value * std::sin(i.pitch_rad) + at.up.value * std::cos(i.pitch_rad)) +
             (stands ? 0.0 : 0.5 * k * tyre * tyre);
    };
    double work = 0.0;
    double largest_kinetic = 0.0;
    const double start = energy(motion->instants[0]);
    for (std::size_t i = 1; i < motion->instants.size(); ++i) {
      const Instant& a = motion->instants[i - 1];
      const Instant& b = motion->instants[i];
      const auto force = [&](const Instant& s) {
        return s.cylinder_head_Pa * headArea(m.hydraulics) - s.rod_Pa * rodArea(m.hydraulics);
      };
      work += 0.5 * (force(a) + force(b)) *
              (table->at(b.boom_rad).cylinder.value - table->at(a.boom_rad).cylinder.value);
      const Mechanics at = table->at(b.boom_rad);
      largest_kinetic = std::max(largest_kinetic, 0.5 * at.boom.value * b.boom_rad_per_s * b.boom_rad_per_s);
      // A thousandth of the largest kinetic energy, so that an inertia wrong by a percent would show; what is
      // left is the trapezoid's error over a step.
      ASSERT_NEAR(energy(b) - start, work, 1e-3 * 0.5 * at.boom.value * m.fast_rad_per_s * m.fast_rad_per_s)
          << b.time_s;
    }
    EXPECT_GT(largest_kinetic, 1000.0);
    EXPECT_GT(work, 50e3);
  }
}

/// Frequency of the boom's speed from `from_s` to `until_s`, by its crossings of zero.
double frequency(const Motion& motion, double from_s, double until_s = 1e9) {
  std::vector<double> crossings;
  for (std::size_t i = 1; i < motion.instants.size(); ++i) {
    const Instant& a = motion.instants[i - 1];
    const Instant& b = motion.instants[i];
    if (a.time_s < from_s || a.time_s > until_s || a.boom_rad_per_s * b.boom_rad_per_s > 0.0) continue;
    crossings.push_back(a.time_s +
                        (b.time_s - a.time_s) * a.boom_rad_per_s / (a.boom_rad_per_s - b.boom_rad_per_s));
  }
  if (crossings.size() < 3) return 0.0;
  return 0.5 * static_cast<double>(crossings.size() - 1) / (crossings.back() - crossings.front());
}

TEST(DynamicsTest, AfterAStopTheBoomBouncesAsAMassOnItsOilColumn) {
  Machine m = lossless();
  putOnStands(m);
  for (const Part& load : {Part{}, someLoad()}) {
    Plan plan = onePass(-20.0 * kDegree, 5.0 * kDegree, m.slow_rad_per_s);
    plan.moves[0].hold_s = 6.0;
    plan.moves[0].stop_s = 0.02;
    const auto motion = move(m, load, 50.0, 0.0, plan);
    const auto table = MechanicsTable::make(m, load);
    ASSERT_TRUE(motion.has_value() && table.has_value());
    const Instant& end = motion->instants.back();
    const double seen_Hz = frequency(*motion, end.time_s - 5.5);

    // Small motion about rest: k = (A c')^2 beta_e / volume - F c'' + V''.
    double mean_rad = 0.0;
    int count = 0;
    for (const Instant& i : motion->instants) {
      if (i.time_s > end.time_s - 5.5) {
        mean_rad += i.boom_rad;
        ++count;
      }
    }
    mean_rad /= count;
    const double h = 1e-3;
    const Mechanics at = table->at(mean_rad);
    const double bend =
        (table->at(mean_rad + h).cylinder.by_boom - table->at(mean_rad - h).cylinder.by_boom) / (2.0 * h);
    const double g = m.gravity_m_per_s2;
    const double hollow =
        g * (table->at(mean_rad + h).up.by_boom - table->at(mean_rad - h).up.by_boom) / (2.0 * h);
    const double force = g * at.up.by_boom / at.cylinder.by_boom;
    const double area = headArea(m.hydraulics);
    const double volume = m.hydraulics.dead_volume_m3 + area * (at.cylinder.value - m.hydraulics.shortest_m);
    const double stiffness =
        area * at.cylinder.by_boom * area * at.cylinder.by_boom * m.hydraulics.bulk_modulus_Pa / volume -
        force * bend + hollow;
    const double expected_Hz = std::sqrt(stiffness / at.boom.value) / (2.0 * std::numbers::pi);
    // Half a percent: the bounce is not quite small.
    EXPECT_NEAR(seen_Hz, expected_Hz, 0.005 * expected_Hz) << load.mass_kg << " kg";
  }
}

TEST(DynamicsTest, DrawnMachinesBounceAtOneToFourHertzOnStands) {
  Random random(21);
  for (int k = 0; k < 40; ++k) {
    Machine m = drawMachine(random);
    putOnStands(m);
    m.friction.seal_N_per_Pa = m.friction.seal_preload_N = m.friction.pin_coefficient = 0.0;
    const double load_kg = k % 2 == 0 ? 0.0 : m.rated_payload_kg;
    Plan plan = onePass(m.lowest_rad + 2.0 * kDegree, 10.0 * kDegree, m.slow_rad_per_s);
    plan.moves[0].hold_s = 4.0;
    const auto motion = move(m, loadAt(load_kg, m.heap_along_m, m.heap_across_m), 50.0, 0.0, plan);
    ASSERT_TRUE(motion.has_value());
    const double bounce_Hz = frequency(*motion, motion->held_s[0] - 4.0);
    EXPECT_GT(bounce_Hz, 1.0) << k;
    EXPECT_LT(bounce_Hz, 4.0) << k;
  }
}

TEST(DynamicsTest, OnTyresTheBounceAfterAStopDiesWithinSeconds) {
  Random random(22);
  for (int k = 0; k < 24; ++k) {
    const Machine m = drawMachine(random);
    const double load_kg = k % 2 == 0 ? 0.0 : m.rated_payload_kg;
    Plan plan = onePass(m.lowest_rad + 2.0 * kDegree, 10.0 * kDegree, m.slow_rad_per_s);
    plan.moves[0].hold_s = 6.0;
    const auto motion = move(m, loadAt(load_kg, m.heap_along_m, m.heap_across_m), 50.0, 0.0, plan);
    ASSERT_TRUE(motion.has_value());
    const double stop_s = motion->held_s[0] - 6.0;
    double early = 0.0;
    double late = 0.0;
    for (const Instant& i : motion->instants) {
      if (i.time_s < stop_s) continue;
      if (i.time_s < stop_s + 1.0) early = std::max(early, std::abs(i.boom_rad_per_s));
      if (i.time_s > stop_s + 5.0) late = std::max(late, std::abs(i.boom_rad_per_s));
    }
    EXPECT_GT(early, 0.2 * kDegree) << k;
    EXPECT_LT(late, 0.25 * early) << k;
  }
}

double pressureAt(const Motion& motion, double boom_rad, double after_s) {
  for (std::size_t i = 1; i < motion.instants.size(); ++i) {
    const Instant& a = motion.instants[i - 1];
    const Instant& b = motion.instants[i];
    if (a.time_s > after_s && (a.boom_rad - boom_rad) * (b.boom_rad - boom_rad) <= 0.0)
      return b.cylinder_head_Pa;
  }
  return std::numeric_limits<double>::quiet_NaN();
}

TEST(DynamicsTest, FrictionAddsToPressureOnTheWayUpAndTakesFromItOnTheWayDown) {
  Machine smooth = lossless();
  putOnStands(smooth);
  smooth.friction.seal_viscous_N_s_per_m = 1e5;  // in both, so that the bounce dies and cancels
  Machine rough = smooth;
  rough.friction.seal_N_per_Pa = 0.0;
  rough.friction.seal_preload_N = 1000.0;  // a plain force: 2 kN with two cylinders
  rough.friction.breakaway_ratio = 1.0;
  const auto pass = [](const Machine& m, bool up) {
    Plan plan = onePass((up ? -35.0 : 40.0) * kDegree, (up ? 40.0 : -35.0) * kDegree, m.slow_rad_per_s);
    plan.lever_wobble = 0.0;
    plan.moves[0].ramp_s = 2.0;  // gently, so that the bounce is small
    return move(m, Part{}, 50.0, 0.0, plan).value();
  };
  const double shift_Pa = 2000.0 / headArea(rough.hydraulics);
  const Motion smooth_up = pass(smooth, true);
  const Motion rough_up = pass(rough, true);
  const Motion smooth_down = pass(smooth, false);
  const Motion rough_down = pass(rough, false);
  double up = 0.0;
  double down = 0.0;
  int count = 0;
  for (double deg = 0.0; deg < 15.0; deg += 0.1, ++count) {
    up += pressureAt(rough_up, deg * kDegree, 2.0) - pressureAt(smooth_up, deg * kDegree, 2.0);
    down += pressureAt(rough_down, deg * kDegree, 2.0) - pressureAt(smooth_down, deg * kDegree, 2.0);
  }
  // A plain force shifts the pressure by itself; what is left of the bounce, a little out of phase, is the
  // rest.
  EXPECT_NEAR(up / count, shift_Pa, 0.05 * shift_Pa);
  EXPECT_NEAR(down / count, -shift_Pa, 0.05 * shift_Pa);
}

TEST(DynamicsTest, TheUpDownGapIsTwiceTheDrawnFrictionShareOfTheLiftForce) {
  Machine smooth = lossless();
  putOnStands(smooth);
  smooth.friction.seal_viscous_N_s_per_m = 1e5;  // in both, so that the bounce dies and cancels
  smooth.friction.breakaway_ratio = 1.0;
  smooth.hydraulics.rod_back_pressure_Pa = 0.0;
  Machine rough = smooth;
  const Machine drawn = practice();
  rough.friction.seal_N_per_Pa = drawn.friction.seal_N_per_Pa;
  rough.friction.pin_coefficient = drawn.friction.pin_coefficient;
  const auto pass = [](const Machine& m, bool up) {
    Plan plan = onePass((up ? -35.0 : 40.0) * kDegree, (up ? 40.0 : -35.0) * kDegree, m.slow_rad_per_s);
    plan.lever_wobble = 0.0;
    plan.moves[0].ramp_s = 2.0;
    return move(m, someLoad(), 50.0, 0.0, plan).value();
  };
  const auto gapAndSum = [&](const Machine& m) {
    const Motion up = pass(m, true);
    const Motion down = pass(m, false);
    double gap = 0.0;
    double sum = 0.0;
    for (double deg = -6.0; deg < 6.0; deg += 0.1) {
      gap += pressureAt(up, deg * kDegree, 2.0) - pressureAt(down, deg * kDegree, 2.0);
      sum += pressureAt(up, deg * kDegree, 2.0) + pressureAt(down, deg * kDegree, 2.0);
    }
    return std::pair{gap, sum};
  };
  const auto [gap, sum] = gapAndSum(rough);
  const double viscous_gap = gapAndSum(smooth).first;
  // The share is set at level; the pins' part moves a little with the angle, and the bounce is not all gone.
  EXPECT_NEAR((gap - viscous_gap) / sum, drawn.load_friction_share, 0.05 * drawn.load_friction_share);
}

TEST(DynamicsTest, HalvingTheStepConvergesAndTheStepInUseIsFine) {
  struct Off {
    double most_Pa = 0.0;
    double most_rad = 0.0;
    double sum_Pa = 0.0;
  };
  // Oil column: as the practice unit has it, and half of it, stiffer than that of any drawn machine.
  for (const double column : {1.0, 0.5}) {
    Machine m = practice();
    m.hydraulics.dead_volume_m3 *= column;
    const Plan plan = onePass(m.lowest_rad + 0.01, 40.0 * kDegree, m.fast_rad_per_s);
    const auto run = [&](double step_s) {
      return move(m, someLoad(), 5.0, 0.0, plan, {step_s, 60.0}).value();
    };
    const Motion used = run(1e-3);
    const Motion fine = run(0.5e-3);
    const Motion finest = run(0.125e-3);
    const std::size_t common =
        std::min({used.instants.size(), (fine.instants.size() + 1) / 2, (finest.instants.size() + 7) / 8});
    const auto off = [&](const Motion& motion, std::size_t every) {
      Off result;
      for (std::size_t i = 0; i < common; ++i) {
        const Instant& one = motion.instants[every * i];
        const Instant& best = finest.instants[8 * i];
        const double off_Pa = std::abs(one.head_Pa - best.head_Pa);
        result.most_Pa = std::max(result.most_Pa, off_Pa);
        result.most_rad = std::max(result.most_rad, std::abs(one.boom_rad - best.boom_rad));
        result.sum_Pa += off_Pa;
      }
      return result;
    };
    const Off of_used = off(used, 1);
    const Off of_fine = off(fine, 2);
    // Far below one step of a 12-bit transducer (0.1 bar) and of an angle sensor (0.02 deg).
    EXPECT_LT(of_used.most_Pa, 10.0);
    EXPECT_LT(of_used.most_rad, 0.002 * kDegree);
    // Half the step, half the error; with the stiff column what is left is a fraction of a pascal where the
    // boom breaks away, and only gets less.
    EXPECT_LT(of_fine.sum_Pa, (column < 1.0 ? 1.0 : 0.5) * of_used.sum_Pa);
  }
}

TEST(DynamicsTest, AnOverloadIsRefusedAndSoIsALiftBeyondTheTravel) {
  const Machine m = practice();
  const auto heavy = move(m, loadAt(15000.0, 0.6, 0.45), 50.0, 0.0, onePass(0.0, 0.3, m.slow_rad_per_s));
  ASSERT_FALSE(heavy.has_value());
  EXPECT_EQ(heavy.error().message.code, "simulator-load-too-heavy");
  const auto far = move(m, Part{}, 50.0, 0.0, onePass(0.0, 1.2, m.slow_rad_per_s));
  ASSERT_FALSE(far.has_value());
  EXPECT_EQ(far.error().message.code, "simulator-outside-travel");
}

TEST(DynamicsTest, ColdOilCostsHeadPressureByItsViscosity) {
  const Machine m = practice();
  const auto mean = [&](double cel) {
    const Motion motion =
        move(m, Part{}, cel, 0.0, onePass(-35.0 * kDegree, 40.0 * kDegree, m.slow_rad_per_s)).value();
    double sum = 0.0;
    int count = 0;
    for (double deg = -8.0; deg < 18.0; deg += 0.1, ++count) sum += pressureAt(motion, deg * kDegree, 1.5);
    return sum / count;
  };
  const double cold = mean(0.0);
  const double mild = mean(40.0);
  const double hot = mean(70.0);
  EXPECT_GT(cold - mild, 2e5);
  // What viscosity adds goes with viscosity: 577 - 46 against 46 - 15 mm2/s (the reference table), to a
  // fifth, for the pace and the rod side differ slightly.
  EXPECT_NEAR((cold - mild) / (mild - hot), (577.32 - 46.0) / (46.0 - 14.85), 0.2 * 17.06);
}

}  // namespace
}  // namespace hingepin::simulator
