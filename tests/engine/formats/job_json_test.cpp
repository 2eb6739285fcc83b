// SPDX-License-Identifier: Apache-2.0
#include "engine/formats/job_json.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "tests/engine/formats/samples.h"

namespace hingepin::formats {
namespace {

using calibration::Job;
using calibration::LiftKind;
using calibration::LiftLog;
using calibration::Pace;
using calibration::SensorUnit;

Expected<JobFile> read(const std::string& text) {
  return readJob(text, "yard/job.json", openerOf(kSampleLogs));
}

/// The sample with `from` (which must be there) replaced by `to`.
/// "code pointer" of the error.
std::string faultOfJob(const std::string& text, ErrorKind kind = ErrorKind::InvalidInput) {
  const Expected<JobFile> job = read(text);
  if (job) return "";
  EXPECT_EQ(job.error().kind, kind) << job.error().message.code;
  EXPECT_GT(job.error().place.line, 0U) << job.error().message.code;
  return job.error().message.code + " " + job.error().place.pointer;
}

TEST(JobJsonTest, ReadsEveryKey) {
  const Expected<JobFile> file = read(kSampleJob);
  ASSERT_TRUE(file) << file.error().message.code << " " << file.error().place.pointer;
  const Job& job = file->job;
  EXPECT_EQ(job.unit.id, "L-27");
  EXPECT_EQ(job.unit.lift_cylinders.count, 2);
  EXPECT_EQ(job.unit.lift_cylinders.bore.inMetres(), 0.13);
  EXPECT_EQ(job.unit.lift_cylinders.rod.inMetres(), 0.075);
  EXPECT_EQ(job.unit.rated_payload.inKilograms(), 4500);
  EXPECT_DOUBLE_EQ(job.unit.weigh_window->low.inDegrees(), -8);
  EXPECT_DOUBLE_EQ(job.unit.weigh_window->high.inDegrees(), 18);
  EXPECT_EQ(job.unit.pressure_sensor->range.inBar(), 350);
  EXPECT_EQ(job.unit.pressure_sensor->span_u.inOnes(), 0.005);
  EXPECT_EQ(job.unit.load_friction->mean.inOnes(), 0.015);
  EXPECT_EQ(job.unit.oil_grade, 32);
  EXPECT_EQ(job.unit.linkage->lift_boom_pin.across.inMetres(), -0.24);
  EXPECT_EQ(job.unit.linkage->tilt_cylinder_extended.inMetres(), 1.709);
  EXPECT_EQ(job.attachment->bucket->inKilograms(), 1250);
  EXPECT_EQ(job.attachment->cutting_edge->along.inMetres(), 1.22);
  EXPECT_EQ(job.attachment->payload_center_u->across.inMetres(), 0.08);
  EXPECT_EQ(job.gravity->inMetresPerSecondSquared(), 9.80665);
  EXPECT_DOUBLE_EQ(job.site->latitude.inDegrees(), 44.5);
  ASSERT_EQ(job.poses.size(), 5U);
  EXPECT_EQ(job.poses[1].bucket_sensor, 2.28);
  EXPECT_FALSE(job.poses[1].boom_angle_u);
  EXPECT_FALSE(job.poses[4].bucket_sensor);
  EXPECT_EQ(job.boom_sensor_unit, SensorUnit::Volt);
  ASSERT_EQ(job.lifts.size(), 3U);
  EXPECT_EQ(job.lifts[0].direction, calibration::Direction::Up);
  EXPECT_EQ(job.lifts[0].readings.rows.size(), 3U);
  EXPECT_EQ(job.lifts[1].kind, LiftKind::TestMass);
  EXPECT_EQ(job.lifts[1].pace, Pace::Fast);
  EXPECT_EQ(job.lifts[1].mass->inKilograms(), 2000);
  EXPECT_EQ(job.lifts[1].name, "mass.csv");
  EXPECT_EQ(job.lifts[1].pointer, "/lifts/1");
  EXPECT_TRUE(job.lifts[2].readings.typed_points);
  EXPECT_EQ(job.lifts[2].name, "lifts/2 points");
  EXPECT_DOUBLE_EQ(*job.lifts[2].readings.rows[0].boom_speed_rad_per_s, 0.13962634015954636);
  EXPECT_DOUBLE_EQ(job.lifts[2].readings.rows[1].head_pressure_Pa, 1290 * 6894.757293168361);
  ASSERT_EQ(job.loads.size(), 1U);
  EXPECT_EQ(job.loads[0].net_u->inKilograms(), 15);
  EXPECT_EQ(job.loads[0].lifts[0].kind, LiftKind::Load);
}

TEST(JobJsonTest, WhatIsAbsentStaysAbsent) {
  const Expected<JobFile> file = read(R"({"format": "hingepin-job/1", "unit": {"id": "A",
    "lift_cylinders": {"count": 1, "bore": "4 [in_i]", "rod": "2 [in_i]"}, "rated_payload": "5000 [lb_av]"},
    "poses": [{"pose": "boom-lowest", "boom_sensor": "100 1"}],
    "lifts": [{"kind": "empty", "points": [{"boom_sensor": "120 1", "head_pressure": "8 MPa"}]}]})");
  ASSERT_TRUE(file) << file.error().message.code;
  const Job& job = file->job;
  EXPECT_FALSE(job.unit.weigh_window || job.unit.linkage || job.unit.pressure_sensor ||
               job.unit.load_friction || job.unit.oil_grade || job.attachment || job.gravity || job.site ||
               job.bucket_sensor_unit);
  EXPECT_EQ(job.boom_sensor_unit, SensorUnit::Count);
  EXPECT_TRUE(job.loads.empty());
  EXPECT_FALSE(job.lifts[0].direction);
}

TEST(JobJsonTest, FaultsNameTheirPointer) {
  const std::vector<std::pair<std::string, std::string>> cases = {
      {sampleWith(kSampleJob, "hingepin-job/1", "hingepin-job/2"), "format-unsupported /format"},
      {sampleWith(kSampleJob, "\"format\": \"hingepin-job/1\",", ""), "json-missing-key "},
      {sampleWith(kSampleJob, "\"id\": \"L-27\",", ""), "json-missing-key /unit"},
      {sampleWith(kSampleJob, "\"L-27\"", "\"\""), "text-empty /unit/id"},
      {sampleWith(kSampleJob, "\"L-27\"", "27"), "json-wrong-kind /unit/id"},
      {sampleWith(kSampleJob, "\"id\": \"L-27\",", "\"id\": \"L-27\", \"colour\": 1,"),
       "json-unknown-key /unit/colour"},
      {sampleWith(kSampleJob, "\"count\": 2", "\"count\": 0"), "cylinder-count /unit/lift_cylinders/count"},
      {sampleWith(kSampleJob, "\"count\": 2", "\"count\": 2.5"), "cylinder-count /unit/lift_cylinders/count"},
      {sampleWith(kSampleJob, "\"count\": 2", "\"count\": -1"), "cylinder-count /unit/lift_cylinders/count"},
      {sampleWith(kSampleJob, "\"count\": 2", "\"count\": 1e30"),
       "cylinder-count /unit/lift_cylinders/count"},
      {sampleWith(kSampleJob, "\"count\": 2", "\"count\": \"2\""),
       "json-wrong-kind /unit/lift_cylinders/count"},
      {sampleWith(kSampleJob, "\"130 mm\"", "\"130\""), "quantity-malformed /unit/lift_cylinders/bore"},
      {sampleWith(kSampleJob, "\"130 mm\"", "\"130 bar\""), "unit-wrong-dimension /unit/lift_cylinders/bore"},
      {sampleWith(kSampleJob, "\"130 mm\"", "\"130 furlong\""), "unit-unknown /unit/lift_cylinders/bore"},
      {sampleWith(kSampleJob, "\"130 mm\"", "130"), "json-wrong-kind /unit/lift_cylinders/bore"},
      {sampleWith(kSampleJob, "\"130 mm\"", "\"-130 mm\""), "value-out-of-range /unit/lift_cylinders/bore"},
      {sampleWith(kSampleJob, "\"130 mm\"", "\"1e999 mm\""), "number-out-of-range /unit/lift_cylinders/bore"},
      {sampleWith(kSampleJob, "\"75 mm\"", "\"130 mm\""),
       "rod-not-thinner-than-bore /unit/lift_cylinders/rod"},
      {sampleWith(kSampleJob, "\"4500 kg\"", "\"0 kg\""), "value-out-of-range /unit/rated_payload"},
      {sampleWith(kSampleJob, "[\"-8 deg\", \"18 deg\"]", "[\"18 deg\", \"-8 deg\"]"),
       "window-upside-down /unit/weigh_window"},
      {sampleWith(kSampleJob, "[\"-8 deg\", \"18 deg\"]", "[\"18 deg\"]"),
       "pair-expected /unit/weigh_window"},
      {sampleWith(kSampleJob, "[\"-8 deg\", \"18 deg\"]", "\"18 deg\""),
       "json-wrong-kind /unit/weigh_window"},
      {sampleWith(kSampleJob, "[\"-8 deg\", \"18 deg\"]", "[\"-8 deg\", \"118 deg\"]"),
       "value-out-of-range /unit/weigh_window/1"},
      {sampleWith(kSampleJob, "z-bar", "parallel"), "linkage-kind-unsupported /unit/linkage/kind"},
      {sampleWith(kSampleJob, "\"link_length\": \"0.609 m\",", ""), "json-missing-key /unit/linkage"},
      {sampleWith(kSampleJob, "\"0.71 m\"", "\"-0.71 m\""),
       "value-out-of-range /unit/linkage/bellcrank_tilt_arm"},
      {sampleWith(kSampleJob, "\"0.609 m\"", "\"0.05 m\""),
       "linkage-number-implausible /unit/linkage/link_length"},
      {sampleWith(kSampleJob, "[\"0.08 m\", \"-0.53 m\"]", "[\"0.08 m\", \"-0.53 kg\"]"),
       "unit-wrong-dimension /unit/linkage/lift_frame_pin/1"},
      {sampleWith(kSampleJob, "ISO VG 32", "ISO VG 33"), "oil-grade-malformed /unit/oil/grade"},
      {sampleWith(kSampleJob, "\"1.5 %\"", "\"150 %\""), "value-out-of-range /unit/load_friction/mean"},
      {sampleWith(kSampleJob, "\"9.80665 m/s2\"", "\"98.0665 m/s2\""), "value-out-of-range /gravity"},
      {sampleWith(kSampleJob, "\"44.5 deg\"", "\"144.5 deg\""), "value-out-of-range /site/latitude"},
      {sampleWith(kSampleJob, "boom-lowest", "boom-low"), "word-unknown /poses/0/pose"},
      {sampleWith(kSampleJob, "\"boom_sensor\": \"0.71 V\", ", ""), "json-missing-key /poses/0"},
      {sampleWith(kSampleJob, "\"0.71 V\"", "\"0.71 bar\""), "sensor-reading-malformed /poses/0/boom_sensor"},
      {sampleWith(kSampleJob, "\"4.22 V\"", "\"4.22 deg\""), "sensor-unit-changes /poses/1/boom_sensor"},
      {sampleWith(kSampleJob, "\"0.3 deg\"", "\"0 deg\""), "value-out-of-range /poses/0/boom_angle_u"},
      {sampleWith(kSampleJob, "\"kind\": \"empty\", \"pace\": \"slow\"",
                  "\"kind\": \"full\", \"pace\": \"slow\""),
       "word-unknown /lifts/0/kind"},
      {sampleWith(kSampleJob, "\"kind\": \"empty\", \"pace\": \"slow\"", "\"kind\": \"empty\""),
       "json-missing-key /lifts/0"},
      {sampleWith(kSampleJob, "\"mass\": \"2000 kg\", ", ""), "json-missing-key /lifts/1"},
      {sampleWith(kSampleJob, "\"kind\": \"test-mass\"", "\"kind\": \"empty\""),
       "mass-of-empty-lift /lifts/1/mass"},
      {sampleWith(kSampleJob, "\"log\": \"mass.csv\"", "\"log\": \"\""), "text-empty /lifts/1/log"},
      {sampleWith(kSampleJob, ", \"log\": \"mass.csv\"", ""), "lift-without-readings /lifts/1"},
      {sampleWith(kSampleJob, "\"log\": \"mass.csv\"", "\"log\": \"mass.csv\", \"points\": []"),
       "points-beside-log /lifts/1/points"},
      {sampleWith(kSampleJob, "\"up\"", "\"sideways\""), "word-unknown /lifts/0/direction"},
      {sampleWith(kSampleJob, "\"2.31 V\"", "\"2.31 deg\""),
       "sensor-unit-changes /lifts/2/points/1/boom_sensor"},
      {sampleWith(kSampleJob, ", \"head_pressure\": \"1290 [psi]\"", ""),
       "json-missing-key /lifts/2/points/1"},
      {sampleWith(kSampleJob, "{ \"net\": \"21840 kg\", ", "{ "), "json-missing-key /loads/0"},
      {sampleWith(kSampleJob, "{ \"pace\": \"fast\", \"log\": \"load-1.csv\" }",
                  "{ \"kind\": \"load\", \"pace\": \"fast\", \"log\": \"load-1.csv\" }"),
       "json-unknown-key /loads/0/lifts/0/kind"},
      {"[]", "json-wrong-kind "},
      {"{}", "json-missing-key "},
  };
  for (const auto& [text, fault] : cases) EXPECT_EQ(faultOfJob(text), fault);
}

TEST(JobJsonTest, EmptyListsCannotSupportAResult) {
  const auto replaced = [](const std::string& key, const std::string& until) {
    const std::size_t from = kSampleJob.find("\"" + key + "\": [");
    const std::size_t to = kSampleJob.find(until, from);
    return kSampleJob.substr(0, from) + "\"" + key + "\": []" + kSampleJob.substr(to);
  };
  EXPECT_EQ(faultOfJob(replaced("lifts", ",\n  \"loads\""), ErrorKind::Insufficient), "lifts-empty /lifts");
  EXPECT_EQ(faultOfJob(replaced("poses", ",\n  \"lifts\""), ErrorKind::Insufficient), "poses-empty /poses");
  EXPECT_EQ(faultOfJob(replaced("points", " }\n  ],"), ErrorKind::Insufficient),
            "points-empty /lifts/2/points");
}

TEST(JobJsonTest, AMalformedFileIsToldBeforeAnInsufficientOne) {
  const std::string empty = sampleWith(kSampleJob, "\"log\": \"mass.csv\"", "\"points\": []");
  EXPECT_EQ(faultOfJob(empty, ErrorKind::Insufficient), "points-empty /lifts/1/points");
  std::string worse = empty;
  worse.replace(worse.find("21840 kg"), 8, "21840 mm");
  EXPECT_EQ(faultOfJob(worse), "unit-wrong-dimension /loads/0/net");
}

TEST(JobJsonTest, AMissingLogIsNamedWhereTheJobNamesIt) {
  EXPECT_EQ(faultOfJob(sampleWith(kSampleJob, "mass.csv", "nowhere.csv"), ErrorKind::NotFound),
            "file-not-found /lifts/1/log");
}

TEST(JobJsonTest, AFaultyLogIsNamedByItsOwnLine) {
  auto logs = kSampleLogs;
  logs["yard/mass.csv"] += "0.08,x,,1,,,\n";
  const Expected<JobFile> job = readJob(kSampleJob, "yard/job.json", openerOf(logs));
  ASSERT_FALSE(job);
  EXPECT_EQ(job.error().place.file, "yard/mass.csv");
  EXPECT_EQ(job.error().place.line, 6U);
  EXPECT_EQ(job.error().place.column, 6U);
}

TEST(JobJsonTest, ALogWhoseSensorIsInAnotherUnitThanThePosesIsRefused) {
  auto logs = kSampleLogs;
  logs["yard/mass.csv"] = "time [s],boom_sensor [1],head_pressure [bar]\n0,1,2\n";
  const Expected<JobFile> job = readJob(kSampleJob, "yard/job.json", openerOf(logs));
  ASSERT_FALSE(job);
  EXPECT_EQ(job.error().kind, ErrorKind::InvalidInput);
  EXPECT_EQ(job.error().message.code, "sensor-not-as-poses");
  EXPECT_EQ(job.error().place.pointer, "/lifts/1/log");
}

TEST(ReadLiftTest, TakesALogOrTypedReadings) {
  EXPECT_EQ(readLift(sourceOf(kSampleLog), "a.csv")->rows.size(), 3U);
  const std::string typed =
      "\xEF\xBB\xBF\n {\"format\": \"hingepin-readings/1\", \"points\": [{\"boom_sensor\": \"2 V\", "
      "\"head_pressure\": \"9 MPa\"}]}";
  for (const std::size_t chunk : {1U, 3U, 65536U}) {
    const Expected<LiftLog> log = readLift(sourceOf(typed, chunk), "a.json");
    ASSERT_TRUE(log) << log.error().message.code;
    EXPECT_TRUE(log->typed_points);
    EXPECT_EQ(log->rows.at(0).head_pressure_Pa, 9e6);
  }
  const Expected<LiftLog> job = readLift(sourceOf(kSampleJob), "job.json");
  ASSERT_FALSE(job);
  EXPECT_EQ(job.error().kind, ErrorKind::InvalidInput);
  const std::string empty = "{\"format\": \"hingepin-readings/1\", \"points\": []}";
  EXPECT_EQ(readLift(sourceOf(empty), "a.json").error().kind, ErrorKind::Insufficient);
}

}  // namespace
}  // namespace hingepin::formats
