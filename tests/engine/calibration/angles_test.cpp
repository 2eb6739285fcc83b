// SPDX-License-Identifier: Apache-2.0
#include "engine/calibration/angles.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "engine/base/random.h"
#include "tests/engine/calibration/ideal_loader.h"

namespace hingepin::calibration {
namespace {

using test::has;
using test::IdealLoader;

TEST(BoomLineTest, ExactPosesGiveTheExactLine) {
  std::vector<Message> warnings;
  const auto line = fitBoomLine(IdealLoader().job(true), warnings);
  ASSERT_TRUE(line.has_value());
  for (const double angle_deg : {-40.0, -7.5, 0.0, 31.0, 48.0})
    EXPECT_NEAR(line->angle(IdealLoader::sensorOf(angle_deg * kDegree)), angle_deg * kDegree, 1e-12);
  EXPECT_TRUE(warnings.empty());
}

TEST(BoomLineTest, TwoPosesGiveTheLineThroughThemAndItsUncertaintyFollowsFromThem) {
  Job job = IdealLoader().job(true);
  job.poses.pop_back();
  std::vector<Message> warnings;
  const auto line = fitBoomLine(job, warnings);
  ASSERT_TRUE(line.has_value());
  // Two points of equal uncertainty u: the middle is known to u/sqrt(2), the slope to u sqrt(2) over the
  // distance.
  const double u_rad = 0.3 * kDegree;
  EXPECT_NEAR(line->angle_u_rad, u_rad / std::sqrt(2.0), 1e-9);
  const double distance = IdealLoader::sensorOf(48 * kDegree) - IdealLoader::sensorOf(-40 * kDegree);
  EXPECT_NEAR(line->slope_u_rad_per_unit, u_rad * std::sqrt(2.0) / distance, 1e-9);
}

TEST(BoomLineTest, UncertaintyOfTheLineIsTheScatterOverManyTechnicians) {
  // Property: 4000 draws of the pose errors; the SD of an SD is 1/sqrt(2 n) = 1.1 %, 5 % is four of them.
  Random random(77);
  const Job exact = IdealLoader().job(true);
  std::vector<Message> warnings;
  const double at = IdealLoader::sensorOf(5 * kDegree);
  double sum = 0.0;
  double squares = 0.0;
  double stated = 0.0;
  constexpr int kDraws = 4000;
  for (int i = 0; i < kDraws; ++i) {
    Job job = exact;
    for (PoseReading& pose : job.poses)
      pose.boom_angle = *pose.boom_angle + random.normal() * *pose.boom_angle_u;
    const auto line = fitBoomLine(job, warnings);
    ASSERT_TRUE(line.has_value());
    const double error = line->angle(at) - 5 * kDegree;
    sum += error;
    squares += error * error;
    stated = std::hypot(line->angle_u_rad, line->slope_u_rad_per_unit * (at - line->reading_at));
  }
  EXPECT_NEAR(std::sqrt(squares / kDraws), stated, 0.05 * stated);
  EXPECT_NEAR(sum / kDraws, 0.0, 4 * stated / std::sqrt(kDraws));
}

TEST(BoomLineTest, APoseFarOffTheLineIsSaid) {
  Job job = IdealLoader().job(true);
  job.poses[2].boom_sensor += 0.20;  // 5 deg
  std::vector<Message> warnings;
  ASSERT_TRUE(fitBoomLine(job, warnings).has_value());
  EXPECT_TRUE(has(warnings, "poses-off-the-line"));
}

TEST(BoomLineTest, ASensorThatFallsAsTheBoomRisesWorksAndIsSaid) {
  Job job = IdealLoader().job(true);
  for (PoseReading& pose : job.poses) pose.boom_sensor = 5.0 - pose.boom_sensor;
  std::vector<Message> warnings;
  const auto line = fitBoomLine(job, warnings);
  ASSERT_TRUE(line.has_value());
  EXPECT_LT(line->slope_rad_per_unit, 0.0);
  EXPECT_TRUE(has(warnings, "boom-sensor-reversed"));
  EXPECT_NEAR(line->angle(5.0 - IdealLoader::sensorOf(0.1)), 0.1, 1e-12);
}

TEST(BoomLineTest, OnePoseReadTwiceDifferentlyIsSaid) {
  Job job = IdealLoader().job(true);
  job.poses.push_back(job.poses[0]);
  job.poses.back().boom_sensor += 0.08;
  std::vector<Message> warnings;
  ASSERT_TRUE(fitBoomLine(job, warnings).has_value());
  EXPECT_TRUE(has(warnings, "pose-read-twice-differently"));
}

TEST(BoomLineTest, AnImplausibleSpanIsSaid) {
  Job job = IdealLoader().job(true);
  for (PoseReading& pose : job.poses) pose.boom_sensor = 2.0 + 0.01 * (pose.boom_sensor - 2.0);
  std::vector<Message> warnings;
  ASSERT_TRUE(fitBoomLine(job, warnings).has_value());
  EXPECT_TRUE(has(warnings, "boom-sensor-span-implausible"));
}

TEST(BoomLineTest, TooFewOrTooCloseOrEqualPosesCannotMakeALine) {
  std::vector<Message> warnings;
  Job few = IdealLoader().job(true);
  few.poses.resize(1);
  EXPECT_EQ(fitBoomLine(few, warnings).error().message.code, "poses-too-few");
  Job close = IdealLoader().job(true);
  close.poses.erase(close.poses.begin());
  close.poses[0].boom_angle = Angle::fromDegrees(22.9);
  EXPECT_EQ(fitBoomLine(close, warnings).error().message.code, "poses-too-close");
  Job equal = IdealLoader().job(true);
  for (PoseReading& pose : equal.poses) pose.boom_sensor = 2.0;
  const Error error = fitBoomLine(equal, warnings).error();
  EXPECT_EQ(error.message.code, "poses-share-one-reading");
  EXPECT_EQ(error.kind, ErrorKind::Insufficient);
}

TEST(BoomLineTest, PosesExactlyTwentyDegreesApartAreEnough) {
  Job job = IdealLoader().job(true);
  job.poses.erase(job.poses.begin());
  job.poses[0].boom_angle = Angle::fromDegrees(23);
  job.poses[0].boom_sensor = IdealLoader::sensorOf(23 * kDegree);
  std::vector<Message> warnings;
  EXPECT_TRUE(fitBoomLine(job, warnings).has_value());
}

TEST(BoomLineTest, LowestAboveHighestIsRefusedWithItsPlace) {
  Job job = IdealLoader().job(true);
  std::swap(job.poses[0].boom_angle, job.poses[1].boom_angle);
  std::vector<Message> warnings;
  const auto line = fitBoomLine(job, warnings);
  ASSERT_FALSE(line.has_value());
  EXPECT_EQ(line.error().message.code, "poses-out-of-order");
  EXPECT_EQ(line.error().kind, ErrorKind::InvalidInput);
  EXPECT_EQ(line.error().place.pointer, "/poses/1/boom_angle");
}

TEST(BoomLineTest, ReadingsThatContradictTheOrderAreRefused) {
  Job job = IdealLoader().job(true);
  job.poses[2].boom_sensor = job.poses[1].boom_sensor + 0.4;  // the reference pose read above the highest
  std::vector<Message> warnings;
  const auto line = fitBoomLine(job, warnings);
  ASSERT_FALSE(line.has_value());
  EXPECT_EQ(line.error().message.code, "pose-readings-contradict");
}

TEST(BucketSensorTest, ItsLineMapsBackToTheBellcrankAngle) {
  const IdealLoader loader;
  Job job = loader.job(true);
  job.bucket_sensor_unit = SensorUnit::Volt;
  const auto reading = [&](double boom_rad, double tilt_m) {
    return 2.5 + 0.6 * loader.geometry.tilt(boom_rad, tilt_m)->bellcrank_by_boom.value;
  };
  for (PoseReading& pose : job.poses) pose.bucket_sensor = reading(pose.boom_angle->inRadians(), 1.709);
  PoseReading dumped;
  dumped.kind = PoseKind::BucketDumped;
  dumped.boom_sensor = IdealLoader::sensorOf(3 * kDegree);
  dumped.bucket_sensor = reading(3 * kDegree, 1.364);
  job.poses.push_back(dumped);
  std::vector<Message> warnings;
  const SensorLine boom_line = *fitBoomLine(job, warnings);
  const auto sensor = fitBucketSensor(job, boom_line, &loader.geometry, warnings);
  ASSERT_TRUE(sensor.has_value());
  ASSERT_TRUE(sensor->has_value());
  ASSERT_TRUE((*sensor)->bellcrank_line.has_value());
  const double wanted_rad = loader.geometry.tilt(0.1, 1.6)->bellcrank_by_boom.value;
  EXPECT_NEAR((*sensor)->bellcrank_line->angle(reading(0.1, 1.6)), wanted_rad, 1e-9);
}

}  // namespace
}  // namespace hingepin::calibration
