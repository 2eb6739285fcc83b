// SPDX-License-Identifier: Apache-2.0
#include "engine/simulator/simulator.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <vector>

#include "engine/units/degree.h"
#include "tests/engine/simulator/practice_machine.h"

namespace hingepin::simulator {
namespace {

Lift aLift(const Machine& m) {
  Lift lift;
  lift.plan = onePass(-35.0 * kDegree, 40.0 * kDegree, m.slow_rad_per_s);
  return lift;
}

bool same(const LogRow& a, const LogRow& b) {
  return a.time_s == b.time_s && a.boom_sensor == b.boom_sensor && a.bucket_sensor == b.bucket_sensor &&
         a.head_pressure_Pa == b.head_pressure_Pa && a.rod_pressure_Pa == b.rod_pressure_Pa &&
         a.oil_temperature_Cel == b.oil_temperature_Cel;
}

TEST(SimulatorTest, TheSameStreamGivesTheSameRowsAndAnotherDoesNot) {
  const Machine m = practice();
  Lift lift = aLift(m);
  lift.logging.jitter_s = 2e-3;
  lift.logging.missing_cell_share = 0.01;
  const auto first = simulate(m, lift, Random(1)).value().rows;
  const auto again = simulate(m, lift, Random(1)).value().rows;
  const auto other = simulate(m, lift, Random(2)).value().rows;
  ASSERT_EQ(first.size(), again.size());
  std::size_t different = 0;
  for (std::size_t i = 0; i < first.size(); ++i) {
    EXPECT_TRUE(same(first[i], again[i])) << i;
    if (!same(first[i], other[i])) ++different;
  }
  EXPECT_GT(different, first.size() / 2);
}

TEST(SimulatorTest, NoiseHasItsStatedSpreadAndReadingsFallOnTheConvertersSteps) {
  Machine m = practice();
  m.hydraulics.piston_leak_m3_per_s_Pa = 0.0;
  m.head_sensor.drift_Pa_per_s = 0.0;
  Lift lift = aLift(m);
  lift.plan.wait_s = 60.0;  // held still, so that only the sensors move
  lift.logging.rate_Hz = 100.0;
  const auto record = simulate(m, lift, Random(4)).value();
  double sum = 0.0;
  double squares = 0.0;
  double volt_sum = 0.0;
  double volt_squares = 0.0;
  int count = 0;
  for (const LogRow& row : record.rows) {
    const double steps = *row.head_pressure_Pa / m.head_sensor.step_Pa;
    EXPECT_NEAR(steps, std::round(steps), 1e-6);
    const double volts = *row.boom_sensor / m.boom_sensor.step;
    EXPECT_NEAR(volts, std::round(volts), 1e-6);
    if (row.time_s > 59.0) continue;
    sum += *row.head_pressure_Pa;
    squares += *row.head_pressure_Pa * *row.head_pressure_Pa;
    volt_sum += *row.boom_sensor;
    volt_squares += *row.boom_sensor * *row.boom_sensor;
    ++count;
  }
  const double sd = std::sqrt(squares / count - (sum / count) * (sum / count));
  const double volt_sd = std::sqrt(volt_squares / count - (volt_sum / count) * (volt_sum / count));
  // Rounding adds a twelfth of a step squared. Four standard errors of 5900 readings are 4 %, and the oil's
  // settling at the start is below that.
  const double expected = std::hypot(m.head_sensor.noise_sd_Pa, m.head_sensor.step_Pa / std::sqrt(12.0));
  const double volt_expected = std::hypot(m.boom_sensor.noise_sd, m.boom_sensor.step / std::sqrt(12.0));
  EXPECT_NEAR(sd, expected, 0.05 * expected);
  EXPECT_NEAR(volt_sd, volt_expected, 0.08 * volt_expected);
}

TEST(SimulatorTest, ATransducersErrorIsItsSpanBowAndSOfTheTruePressure) {
  Machine m = practice();
  PressureSensor& s = m.head_sensor;
  s = PressureSensor{};
  s.span_error = 0.01;
  s.bow = 0.002;
  s.s_shape = -0.001;
  Lift lift = aLift(m);
  const auto record = simulate(m, lift, Random(4)).value();
  double least = 1.0;
  double most = 0.0;
  for (const LogRow& row : record.rows) {
    const auto step = static_cast<std::size_t>(std::lround(row.time_s / record.truth.instants[1].time_s));
    const double p = record.truth.instants[std::min(step, record.truth.instants.size() - 1)].head_Pa;
    const double u = p / 400e5;
    const double expected =
        1.01 * p + 400e5 * (0.002 * 4.0 * u * (1.0 - u) -
                            0.001 * 6.0 * std::sqrt(3.0) * u * (1.0 - u) * (1.0 - 2.0 * u));
    EXPECT_NEAR(*row.head_pressure_Pa, expected, 2.0);  // the sample's place between steps
    least = std::min(least, u);
    most = std::max(most, u);
  }
  EXPECT_GT(most - least, 0.01);
}

TEST(SimulatorTest, JitterKeepsTimeRisingAndGapsComeAtTheirStatedShare) {
  const Machine m = practice();
  for (const double rate_Hz : {10.0, 50.0, 200.0, 1000.0}) {
    Lift lift = aLift(m);
    lift.logging.rate_Hz = rate_Hz;
    lift.logging.jitter_s = 0.3 / rate_Hz;
    lift.logging.stamp_error_s = 0.3 / rate_Hz;
    lift.logging.dropped_share = 0.05;
    lift.logging.missing_cell_share = 0.03;
    const auto record = simulate(m, lift, Random(8)).value();
    const double whole = record.truth.instants.back().time_s * rate_Hz + 1.0;
    const auto rows = static_cast<double>(record.rows.size());
    // Five standard errors.
    EXPECT_NEAR(rows / whole, 0.95, 5.0 * std::sqrt(0.05 * 0.95 / whole) + 1.0 / whole);
    double missing = 0.0;
    for (std::size_t i = 0; i < record.rows.size(); ++i) {
      if (i > 0) {
        ASSERT_GT(record.rows[i].time_s, record.rows[i - 1].time_s);
      }
      if (!record.rows[i].head_pressure_Pa) ++missing;
    }
    EXPECT_NEAR(missing / rows, 0.03, 5.0 * std::sqrt(0.03 / rows));
  }
}

TEST(SimulatorTest, AReversedSensorFallsAsTheBoomRises) {
  Machine m = practice();
  m.boom_sensor.gain_per_rad *= -1.0;
  const auto rows = simulate(m, aLift(m), Random(1)).value().rows;
  EXPECT_GT(*rows.front().boom_sensor, *rows.back().boom_sensor + 1.0);
}

TEST(SimulatorTest, AStaticStationReachedFromBelowReadsHigherThanFromAbove) {
  Machine m = practice();
  m.friction.seal_N_per_Pa *= 4.0;  // so that the gap is wider than the monitor's step
  m.friction.seal_preload_N *= 4.0;
  const std::array up = {-10.0 * kDegree, 0.0, 10.0 * kDegree};
  const std::array down = {10.0 * kDegree, 0.0, -10.0 * kDegree};
  Lift rising;
  rising.plan = stationsFromBelow(-20.0 * kDegree, up, m.slow_rad_per_s);
  Lift sinking;
  sinking.plan = stationsFromBelow(20.0 * kDegree, down, m.slow_rad_per_s);
  sinking.plan.seal_state = 1.0;
  const auto from_below = readStations(m, rising, {0.01, 0.1e5, 1.0}, Random(1)).value();
  const auto from_above = readStations(m, sinking, {0.01, 0.1e5, 1.0}, Random(1)).value();
  ASSERT_EQ(from_below.size(), 3u);
  ASSERT_EQ(from_above.size(), 3u);
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_NEAR(*from_below[i].boom_sensor, *from_above[2 - i].boom_sensor, 0.015);
    EXPECT_GT(*from_below[i].head_pressure_Pa, *from_above[2 - i].head_pressure_Pa + 0.2e5);
  }
}

TEST(SimulatorTest, TypedReadingsAreRoundedToTheMonitorsSteps) {
  const Machine m = practice();
  const std::array stations = {-10.0 * kDegree, 0.0, 10.0 * kDegree};
  Lift lift;
  lift.oil_Cel = 51.4;
  lift.plan = stationsFromBelow(-20.0 * kDegree, stations, m.slow_rad_per_s);
  const auto rows = readStations(m, lift, {0.01, 1e5, 1.0}, Random(1)).value();
  ASSERT_EQ(rows.size(), 3u);
  double before = 0.0;
  for (const LogRow& row : rows) {
    EXPECT_NEAR(std::remainder(*row.head_pressure_Pa, 1e5), 0.0, 1e-3);
    EXPECT_NEAR(std::remainder(*row.boom_sensor, 0.01), 0.0, 1e-9);
    EXPECT_EQ(*row.oil_temperature_Cel, 51.0);
    EXPECT_GT(*row.boom_sensor, before);
    before = *row.boom_sensor;
  }
}

TEST(SimulatorTest, PartialLiftsAndLiftsFromMidWayAndAnyPaceRunWithTheirOwnSpeed) {
  const Machine m = practice();
  for (const double share : {0.0, 0.4, 1.0}) {
    const double speed = m.slow_rad_per_s + share * (m.fast_rad_per_s - m.slow_rad_per_s);
    Lift lift;
    lift.load = loadAt(2500.0, 0.6, 0.45);
    lift.plan = onePass(-12.0 * kDegree, 22.0 * kDegree, speed);
    const auto record = simulate(m, lift, Random(1)).value();
    EXPECT_NEAR(record.truth.instants.front().boom_rad, -12.0 * kDegree, 1e-12);
    EXPECT_NEAR(record.truth.instants.back().boom_rad, 22.0 * kDegree, 1.0 * kDegree);
    double fastest = 0.0;
    for (const Instant& i : record.truth.instants) {
      if (i.boom_rad > 0.0 && i.boom_rad < 10.0 * kDegree) fastest = std::max(fastest, i.boom_rad_per_s);
    }
    // The flow is what is constant: near level the moment arm is longest and the boom slowest, and the valve
    // droops.
    EXPECT_GT(fastest, 0.65 * speed);
    EXPECT_LT(fastest, 1.1 * speed);
  }
}

}  // namespace
}  // namespace hingepin::simulator
