// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "engine/base/random.h"
#include "engine/formats/job_json.h"
#include "engine/formats/lift_log_csv.h"
#include "tests/engine/formats/samples.h"

namespace hingepin::formats {
namespace {

// Under the sanitizers, a read past an end or an undefined conversion ends the test.

void readDamagedJob(const std::string& text) {
  const Expected<JobFile> job = readJob(text, "yard/job.json", openerOf(kSampleLogs));
  if (job) {
    EXPECT_TRUE(std::isfinite(job->job.unit.rated_payload.inKilograms()));
    EXPECT_FALSE(job->job.lifts.empty());
  } else {
    EXPECT_FALSE(job.error().message.code.empty());
    EXPECT_FALSE(job.error().place.file.empty());
  }
}

void readDamagedLog(const std::string& text) {
  const Expected<calibration::LiftLog> log = readLift(sourceOf(text, 37), "lift.csv");
  if (log) {
    EXPECT_LE(log->rows.size(), log->rows_read);
    for (const calibration::LiftRow& row : log->rows) EXPECT_TRUE(std::isfinite(row.head_pressure_Pa));
  } else {
    EXPECT_FALSE(log.error().message.code.empty());
    EXPECT_EQ(log.error().place.file, "lift.csv");
  }
}

template <class Read>
void flipBytes(const std::string& text, std::uint64_t seed, int rounds, Read read) {
  Random random(seed);
  for (int round = 0; round < rounds; ++round) {
    std::string damaged = text;
    const int flips = 1 + static_cast<int>(random.uniform(0, 4));
    for (int flip = 0; flip < flips; ++flip) {
      damaged[random.bits() % damaged.size()] = static_cast<char>(random.bits() & 0xFFU);
    }
    read(damaged);
  }
}

TEST(DamageTest, AJobCutAtAnyByteGivesAnError) {
  for (std::size_t length = 0; length < kSampleJob.size(); ++length) {
    EXPECT_FALSE(readJob(kSampleJob.substr(0, length), "yard/job.json", openerOf(kSampleLogs))) << length;
  }
}

TEST(DamageTest, ALogCutAtAnyByteGivesValueOrError) {
  for (std::size_t length = 0; length < kSampleLog.size(); ++length)
    readDamagedLog(kSampleLog.substr(0, length));
}

TEST(DamageTest, AJobWithAnyByteReplacedGivesValueOrError) {
  for (std::size_t at = 0; at < kSampleJob.size(); ++at) {
    std::string damaged = kSampleJob;
    for (const char byte : {'\0', '"', '{', ',', '9', '\xFF'}) {
      damaged[at] = byte;
      readDamagedJob(damaged);
    }
  }
  flipBytes(kSampleJob, 1, 3000, readDamagedJob);
}

TEST(DamageTest, ALogWithAnyByteReplacedGivesValueOrError) {
  for (std::size_t at = 0; at < kSampleLog.size(); ++at) {
    std::string damaged = kSampleLog;
    for (int byte = 0; byte < 256; ++byte) {
      damaged[at] = static_cast<char>(byte);
      readDamagedLog(damaged);
    }
  }
  flipBytes(kSampleLog, 2, 10000, readDamagedLog);
}

TEST(ByteSourceTest, ReadingStopsBeyondTheSizeLimit) {
  const std::string text(5000, ' ');
  EXPECT_TRUE(readAll(sourceOf(text, 100), "f.json", 5000));
  const Expected<std::string> read = readAll(sourceOf(text, 100), "f.json", 4999);
  ASSERT_FALSE(read);
  EXPECT_EQ(read.error().message.code, "file-too-large");
}

}  // namespace
}  // namespace hingepin::formats
