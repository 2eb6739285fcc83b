// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "tests/engine/cli/place.h"

namespace hingepin::cli {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::StartsWith;

/// The lines of a text.
std::vector<std::string> linesOf(const std::string& text) {
  std::istringstream stream(text);
  std::vector<std::string> lines;
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

class TablesCommandTest : public ::testing::Test {
 protected:
  const Place place;
  std::string first = place.seal(place.walkRound(R"({"hours":"4211 h","fuel":"80 %"})"));
  std::string second = place.seal(place.walkRound(R"({"hours":"4219.5 h","fuel":"75 %"})"));
};

TEST_F(TablesCommandTest, PostgresAnswersFromWhatTheRecordsHold) {
  place.done({"store", "tables", "office"});
  // What the records say, by another way: as they were sealed.
  std::size_t tries = 0;
  for (const std::string& record : {first, second}) {
    tries += nlohmann::json::parse(place.done({"records", "show", record}))["content"]["tries"].size();
  }
  const ProcessResult result = runProgram(
      "/bin/bash",
      {std::string(HINGEPIN_SOURCE_DIR) + "/tests/engine/cli/postgres.sh",
       (place.path() / "postgres").string(), (place.path() / "office").string(),
       "SELECT count(*) FROM hingepin.readings",
       "SELECT record, unit, attachment, procedure, phase, standing, practice FROM hingepin.jobs ORDER BY "
       "ended, "
       "record",
       "SELECT max(value) - min(value), min(unit), min(value_si) FROM hingepin.readings WHERE step = 'hours'",
       "SELECT profile->'unit'->>'rated_payload' FROM hingepin.units JOIN hingepin.jobs USING (unit) LIMIT 1",
       "SELECT extract(epoch FROM min(begun))::bigint FROM hingepin.jobs"},
      place.path(), {.most_seconds = 120});
  if (result.status == 77) GTEST_SKIP() << result.diagnostics;
  ASSERT_EQ(result.status, 0) << result.diagnostics;
  const std::vector<std::string> said = linesOf(result.output);
  ASSERT_EQ(said.size(), 6U) << result.output;
  EXPECT_EQ(said[0], std::to_string(tries));
  std::vector<std::string> expected;
  for (const std::string& record : {first, second}) {
    expected.push_back(record + ",L-27,GP-2.7,walk-round,done,trusted,t");
  }
  EXPECT_THAT(std::vector<std::string>({said[1], said[2]}), ::testing::UnorderedElementsAreArray(expected));
  EXPECT_EQ(said[3], "8.5,h,15159600");  // 4211 h in seconds
  EXPECT_EQ(said[4], "4500 kg");
  EXPECT_EQ(said[5], "1777875000");  // 2026-05-04T06:10:00Z (GNU date)
}

TEST_F(TablesCommandTest, TablesAreCsvOfRfc4180WithoutNamesOfPeople) {
  place.done({"store", "tables", "office"});
  const auto lines = linesOf(readText(place.path() / "office" / "jobs.csv"));
  ASSERT_EQ(lines.size(), 3U);
  EXPECT_THAT(lines[0], StartsWith("record,job,unit,attachment,procedure,"));
  EXPECT_THAT(readText(place.path() / "office" / "units.csv"), HasSubstr(R"(L-27,true,"{)"));
  EXPECT_THAT(readText(place.path() / "office" / "units.csv"), HasSubstr(R"(""rated_payload"")"));
  for (const char* table : {"units.csv", "jobs.csv", "readings.csv"}) {
    EXPECT_THAT(readText(place.path() / "office" / table), Not(HasSubstr("technician-1"))) << table;
  }
}

}  // namespace
}  // namespace hingepin::cli
