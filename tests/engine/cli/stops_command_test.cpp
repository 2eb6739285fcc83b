// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <string>

#include "tests/engine/cli/process.h"

namespace hingepin::cli {
namespace {

using ::testing::HasSubstr;
using Json = nlohmann::ordered_json;

/// The stops of the practice unit, wanted and proved over two cycles.
Json stops() {
  return {{"format", "hingepin-stops/1"},
          {"unit", nlohmann::json::parse(readText(practiceFolder() / "job.json")).at("unit")},
          {"attachment",
           {{"id", "GP-2.7"}, {"heel", {"-0.10 m", "-0.22 m"}}, {"cutting_edge", {"1.22 m", "-0.22 m"}}}},
          {"boom_line", {{"boom_sensor", "0.71 V"}, {"boom_angle", "-40 deg"}, {"slope", "0.0399 V/deg"}}},
          {"wanted", {{"lower", "250 mm"}, {"upper", "3100 mm"}, {"level", "0 deg"}}},
          {"cycles",
           {{{"lower", "262 mm"}, {"upper", "3085 mm"}, {"level", "0.6 deg"}},
            {{"lower", "256 mm"}, {"upper", "3089 mm"}, {"level", "0.4 deg"}}}},
          {"limits", {{"height", "50 mm"}, {"level", "2 deg"}}}};
}

ProcessResult run(const Json& file, bool json) {
  const TemporaryFolder folder;
  writeText(folder.path() / "stops.json", file.dump(1));
  std::vector<std::string> arguments = {"stops", "stops.json"};
  if (json) arguments.emplace_back("--json");
  return runHingepin(arguments, folder.path());
}

double number(const Json& text) { return std::stod(text.get<std::string>()); }

TEST(StopsCommandTest, JsonTellsWhatToSetAndWhatTheCyclesShow) {
  const ProcessResult result = run(stops(), true);
  ASSERT_EQ(result.status, 0) << result.diagnostics;
  const Json json = Json::parse(result.output);
  const Json& lower = json.at("wanted").at("lower");
  EXPECT_NEAR(number(lower.at("edge_height")), 250, 0.5);
  EXPECT_NEAR(number(lower.at("heel_height")), 250, 0.5);
  EXPECT_NEAR(number(lower.at("boom_sensor")), 0.71 + 0.0399 * (number(lower.at("boom_angle")) + 40), 2e-4);
  EXPECT_EQ(json.at("wanted").at("upper").at("edge_height"), "3100.0 mm");
  EXPECT_EQ(json.at("wanted").at("level").at("tilt_cylinder_length"), lower.at("tilt_cylinder_length"));
  const Json& cycles = json.at("cycles");
  EXPECT_EQ(cycles.at("lower").at("offset"), "9.0 mm");
  EXPECT_EQ(cycles.at("upper").at("offset"), "-13.0 mm");
  EXPECT_NEAR(number(cycles.at("lower").at("scatter")), 6 / std::sqrt(2.0), 0.06);
  EXPECT_EQ(cycles.at("level").at("verdict"), "holds");
  EXPECT_EQ(json.at("verdict"), "holds");
}

TEST(StopsCommandTest, ACycleBeyondTheLimitDoesNotHold) {
  Json file = stops();
  file["cycles"][1]["upper"] = "3020 mm";
  const Json json = Json::parse(run(file, true).output);
  EXPECT_EQ(json.at("cycles").at("upper").at("verdict"), "does-not-hold");
  EXPECT_EQ(json.at("cycles").at("lower").at("verdict"), "holds");
  EXPECT_EQ(json.at("verdict"), "does-not-hold");
}

TEST(StopsCommandTest, APersonReadsTheSameWithItsCaution) {
  const ProcessResult result = run(stops(), false);
  EXPECT_EQ(result.status, 0);
  for (const char* words :
       {"What to set", "Where it halted", "tilt cylinder", "Keep everybody out of the zone"})
    EXPECT_THAT(result.output, HasSubstr(words));
}

TEST(StopsCommandTest, MeasuredHeightsAreEnoughWithoutALinkage) {
  Json file = stops();
  file.erase("unit");
  file.erase("attachment");
  const ProcessResult result = run(file, true);
  ASSERT_EQ(result.status, 0) << result.diagnostics;
  const Json json = Json::parse(result.output);
  EXPECT_TRUE(json.at("wanted").at("lower").contains("reason"));
  EXPECT_EQ(json.at("cycles").at("lower").at("offset"), "9.0 mm");
  file.erase("cycles");
  EXPECT_EQ(run(file, true).status, 1);
}

TEST(StopsCommandTest, WhatIsWrongIsToldWithItsPlace) {
  struct Wrong {
    const char* pointer;
    Json value;
    const char* said;
  };
  for (const Wrong& wrong :
       {Wrong{"/wanted/upper", "9 m", "can't stand at 9000 mm"}, Wrong{"/wanted/lower", "250 deg", "length"},
        Wrong{"/boom_line/slope", "0.0399 V", "is not a slope"},
        Wrong{"/boom_line/slope", "0 V/deg", "slope is zero"}, Wrong{"/cycles/0/middle", "1 m", "middle"},
        Wrong{"/limits/height", "0 mm", "0 mm"}}) {
    Json file = stops();
    file[Json::json_pointer(wrong.pointer)] = wrong.value;
    const ProcessResult result = run(file, true);
    EXPECT_EQ(result.status, 2) << wrong.pointer;
    EXPECT_THAT(result.diagnostics, HasSubstr(wrong.said));
    EXPECT_THAT(result.diagnostics, HasSubstr("stops.json:"));
    EXPECT_TRUE(Json::parse(result.output).contains("error"));
  }
}

}  // namespace
}  // namespace hingepin::cli
