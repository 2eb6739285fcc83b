// SPDX-License-Identifier: Apache-2.0
#include "engine/calibration/pass.h"

#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <sstream>

#include "tests/engine/calibration/ideal_loader.h"

namespace hingepin::calibration {
namespace {

using test::IdealLoader;

SensorLine exactLine() {
  return {.reading_at = 0.71, .angle_rad = -40 * kDegree, .slope_rad_per_unit = kDegree / 0.0399};
}

constexpr linkage::Range kWindow{-8 * kDegree, 18 * kDegree};

TEST(FindPassTest, HoldsAndSlowDownsAreCutOff) {
  const LiftLog log =
      IdealLoader().lift({.mass_kg = 1000, .from_rad = -12 * kDegree, .to_rad = 20 * kDegree});
  const auto pass = findPass(log, exactLine(), kWindow, 30 * kDegree, std::nullopt);
  ASSERT_TRUE(pass.has_value());
  EXPECT_EQ(pass->direction, Direction::Up);
  // A second's hold at either end would show as rows that do not move.
  for (Eigen::Index i = 1; i < pass->size(); ++i)
    EXPECT_GT(pass->boom_angle_rad(i), pass->boom_angle_rad(i - 1));
  EXPECT_LT(pass->boom_angle_rad.minCoeff(), -8 * kDegree);
  EXPECT_GT(pass->boom_angle_rad.maxCoeff(), 17 * kDegree);
}

TEST(FindPassTest, RowsAreKeptWithinTheWindowAndItsMargin) {
  const LiftLog log = IdealLoader().lift({.mass_kg = 1000});
  const auto pass = findPass(log, exactLine(), kWindow, 5 * kDegree, std::nullopt);
  ASSERT_TRUE(pass.has_value());
  EXPECT_GE(pass->boom_angle_rad.minCoeff(), -13 * kDegree);
  EXPECT_LE(pass->boom_angle_rad.maxCoeff(), 23 * kDegree);
}

TEST(FindPassTest, ALoweringLogIsALoweringPass) {
  const LiftLog log = IdealLoader().lift({.mass_kg = 1000, .rising = false});
  const auto pass = findPass(log, exactLine(), kWindow, 0.0, std::nullopt);
  ASSERT_TRUE(pass.has_value());
  EXPECT_EQ(pass->direction, Direction::Down);
  EXPECT_LT(pass->boom_speed_rad_per_s(0), 0.0);
  EXPECT_FALSE(findPass(log, exactLine(), kWindow, 0.0, Direction::Up).has_value());
}

TEST(FindPassTest, APauseOfStickSlipDoesNotEndTheTravel) {
  const LiftLog moving = IdealLoader().lift({.mass_kg = 1000});
  LiftLog log = moving;
  log.rows.clear();
  double held_s = 0.0;
  for (const LiftRow& row : moving.rows) {
    LiftRow copy = row;
    copy.time_s += held_s;
    log.rows.push_back(copy);
    // Half way it sticks for 0.4 s.
    if (held_s == 0.0 && exactLine().angle(row.boom_sensor) > 4 * kDegree)
      for (int k = 0; k < 20; ++k) {
        held_s += 0.02;
        copy.time_s = row.time_s + held_s;
        log.rows.push_back(copy);
      }
  }
  const auto pass = findPass(log, exactLine(), kWindow, 0.0, std::nullopt);
  ASSERT_TRUE(pass.has_value());
  EXPECT_LT(pass->boom_angle_rad.minCoeff(), -7 * kDegree);
  EXPECT_GT(pass->boom_angle_rad.maxCoeff(), 17 * kDegree);
  EXPECT_EQ(pass->other_travels, 0);
}

TEST(FindPassTest, OtherTravelsInTheSameLogAreCounted) {
  LiftLog log = IdealLoader().lift({.mass_kg = 1000});
  const LiftLog second = IdealLoader().lift({.mass_kg = 1000, .rising = false});
  const LiftLog third = IdealLoader().lift({.mass_kg = 1000});
  for (const LiftLog* next : {&second, &third}) {
    const double start_s = log.rows.back().time_s + 0.02;
    for (LiftRow row : next->rows) {
      row.time_s += start_s;
      log.rows.push_back(row);
    }
  }
  const auto pass = findPass(log, exactLine(), kWindow, 0.0, Direction::Up);
  ASSERT_TRUE(pass.has_value());
  EXPECT_EQ(pass->other_travels, 1);
}

TEST(FindPassTest, TheSpeedIsThatOfTheSensorLine) {
  const IdealLoader loader;
  const LiftLog log = loader.lift({.mass_kg = 1000, .cylinder_speed_m_per_s = 0.1});
  const auto pass = findPass(log, exactLine(), kWindow, 0.0, std::nullopt);
  ASSERT_TRUE(pass.has_value());
  // A constant cylinder speed over the moment arm in the middle; the arm varies by some per cent over the
  // window.
  const double expected = 0.1 / loader.geometry.liftCylinder(5 * kDegree).first;
  EXPECT_NEAR(pass->boom_speed_rad_per_s(0), expected, 0.05 * expected);
}

// The record of lift-cylinder pressures of a wheel loader at work (its file says where it is from and that
// its origin is not stated). It has no boom angle, so one is laid beside it: at rest, and a lift of 9 s where
// the record is loaded.
TEST(FindPassTest, CopesWithAMeasuredPressureRecord) {
  const std::string path =
      std::string(HINGEPIN_SOURCE_DIR) + "/../shared/reference/methods/lift_pressure_trace.csv";
  std::ifstream file(path);
  if (!file) GTEST_SKIP() << "needs lift_pressure_trace.csv, which is not part of a clone";
  LiftLog resting;
  resting.name = "trace";
  resting.has_rod_pressure = true;
  LiftLog lifting = resting;
  std::string line;
  while (std::getline(file, line)) {
    std::stringstream cells(line);
    double time_s = 0.0;
    double head_bar = 0.0;
    double rod_bar = 0.0;
    char comma = 0;
    if (!(cells >> time_s >> comma >> head_bar >> comma >> rod_bar)) continue;
    LiftRow row;
    row.time_s = time_s;
    row.head_pressure_Pa = head_bar * 1e5;
    row.rod_pressure_Pa = rod_bar * 1e5;
    row.boom_sensor = IdealLoader::sensorOf(-35 * kDegree);
    resting.rows.push_back(row);
    const double risen = std::clamp((time_s - 70.0) / 9.0, 0.0, 1.0);
    row.boom_sensor = IdealLoader::sensorOf((-35 + 75 * risen) * kDegree);
    lifting.rows.push_back(row);
  }
  ASSERT_GT(lifting.rows.size(), 10000U);
  const auto at_rest = findPass(resting, exactLine(), kWindow, 0.0, std::nullopt);
  ASSERT_FALSE(at_rest.has_value());
  EXPECT_EQ(at_rest.error().message.code, "boom-did-not-move");
  const auto pass = findPass(lifting, exactLine(), kWindow, 0.0, std::nullopt);
  ASSERT_TRUE(pass.has_value());
  // The header reads off 136.5 bar with a scatter of 9.5 bar for 70 to 80 s.
  EXPECT_NEAR(pass->head_pressure_Pa.mean() / 1e5, 136.5, 9.5);
}

}  // namespace
}  // namespace hingepin::calibration
