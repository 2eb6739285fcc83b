// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <nlohmann/json.hpp>
#include <regex>
#include <string>
#include <vector>

#include "tests/engine/cli/process.h"

namespace hingepin::cli {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using Json = nlohmann::ordered_json;

/// What every refusal has in common: the status, a message that says where and what, no hole in it. A crash
/// would end the tests themselves.
void expectRefusal(const ProcessResult& result, int status, const std::string& where, const std::string& what,
                   const std::string& about) {
  SCOPED_TRACE(about);
  EXPECT_EQ(result.status, status) << result.diagnostics;
  EXPECT_THAT(result.diagnostics, HasSubstr(where));
  EXPECT_THAT(result.diagnostics, HasSubstr(what));
  EXPECT_FALSE(std::regex_search(result.diagnostics, std::regex("\\{[a-z_]+\\}"))) << result.diagnostics;
  EXPECT_FALSE(std::regex_search(result.diagnostics, std::regex("^([^:\\n]+): (.*: )?\\1: ")))
      << result.diagnostics;
}

// The lift log ----------------------------------------------------------------------------------

const std::string kLogHeader = "time [s],boom_sensor [V],head_pressure [bar]\n";

struct LogCase {
  std::string text;
  int status;
  std::string where;
  std::string what;
};

TEST(MalformedInputTest, LiftLogs) {
  const std::string rows = "0,2.1,90\n0.02,2.2,91\n";
  const std::vector<LogCase> cases = {
      {"", 2, "log.csv:1: ", "Expected a header"},
      {"\xEF\xBB\xBF", 2, "log.csv:1: ", "Expected a header"},
      {"\n\n\n", 2, "log.csv:1:1: ", "Expected a header"},
      {rows, 2, "log.csv:1:1: ", "Expected a header"},
      {"a,b,c\n" + rows, 2, "log.csv:1:1: ", "Expected a header"},
      {"time [s],boom_sensor [V]\n0,1\n", 2, "log.csv:1:1: ", "\"head_pressure\""},
      {"time [s],head_pressure [bar]\n0,1\n", 2, "log.csv:1:1: ", "\"boom_sensor\""},
      {"boom_sensor [V],head_pressure [bar]\n0,1\n", 2, "log.csv:1:1: ", "\"time\""},
      {"Time [s],boom_sensor [V],head_pressure [bar]\n" + rows, 2, "log.csv:1:1: ", "\"time\""},
      {"time [s];boom_sensor [V];head_pressure [bar]\n0;1;2\n", 2, "log.csv:1:1: ", "separated by commas"},
      {"time [s]\tboom_sensor [V]\thead_pressure [bar]\n", 2, "log.csv:1:1: ", "time"},
      {"time,boom_sensor [V],head_pressure [bar]\n" + rows, 2, "log.csv:1:1: ", "square brackets"},
      {"time [s],boom_sensor (V),head_pressure [bar]\n" + rows, 2, "log.csv:1:10: ", "square brackets"},
      {"time [s],boom_sensor  [V],head_pressure [bar]\n" + rows, 2, "log.csv:1:10: ", "one space"},
      {"time [s],boom_sensor [V],head_pressure [V]\n" + rows, 2, "log.csv:1:26: ", "bar, kPa, MPa, [psi]"},
      {"time [s],boom_sensor [V],head_pressure [PSI]\n" + rows, 2, "log.csv:1:26: ", "bar, kPa, MPa, [psi]"},
      {"time [h],boom_sensor [V],head_pressure [bar]\n" + rows, 2, "log.csv:1:1: ", "s, ms"},
      {"time [s],boom_sensor [kg],head_pressure [bar]\n" + rows, 2, "log.csv:1:10: ", "mass"},
      {"time [s],boom_sensor [V],head_pressure [bar],time [s]\n0,1,2,0\n", 2, "log.csv:1:46: ", "twice"},
      {"time [s],boom_sensor [V],head_pressure [bar],n\xF6te\n0,1,2,\n", 2, "log.csv:1:47: ", "UTF-8"},
      {std::string("t\0i\0m\0e\0", 8), 2, "log.csv:1:1: ", "Expected a header"},
      {std::string("\xFF\xFEt\0", 4), 2, "log.csv:1:1: ", "UTF-8"},
      {kLogHeader + "0,2.1,NaN\n", 2, "log.csv:2:7: ", "not a number"},
      {kLogHeader + "0,2.1,inf\n", 2, "log.csv:2:7: ", "not a number"},
      {kLogHeader + "0,-Infinity,3\n", 2, "log.csv:2:3: ", "not a number"},
      {kLogHeader + "0,2.1,n/a\n", 2, "log.csv:2:7: ", "empty cell where a reading is missing"},
      {kLogHeader + "0,2.1,90\n0.02,2.1,#REF!\n", 2, "log.csv:3:10: ", "not a number"},
      {kLogHeader + "12:00:01,2.1,90\n", 2, "log.csv:2:1: ", "not a number"},
      {kLogHeader + "0,2.1,0x5A\n", 2, "log.csv:2:7: ", "not a number"},
      {kLogHeader + "0,2.1,9O\n", 2, "log.csv:2:7: ", "not a number"},
      {kLogHeader + "0,2.1,1e\n", 2, "log.csv:2:7: ", "not a number"},
      {kLogHeader + "0,2.1,.\n", 2, "log.csv:2:7: ", "not a number"},
      {kLogHeader + "0,2.1,--9\n", 2, "log.csv:2:7: ", "not a number"},
      {kLogHeader + "0,2.1, 90\n", 2, "log.csv:2:7: ", "not a number"},
      {kLogHeader + "0,2.1,90 bar\n", 2, "log.csv:2:7: ", "not a number"},
      {kLogHeader + "0,2.1,1e999\n", 2, "log.csv:2:7: ", "can't be a reading"},
      {kLogHeader + "0,2.1,1e99\n", 2, "log.csv:2:7: ", "Expected a value from"},
      {kLogHeader + "0,2.1,\"90,5\"\n", 2, "log.csv:2:7: ", "decimal point"},
      {kLogHeader + "0,2.1,90,5\n", 2, "log.csv:2:1: ", "4 cells, the header 3"},
      {kLogHeader + "0,2.1\n", 2, "log.csv:2:1: ", "2 cells, the header 3"},
      {kLogHeader + "0,2.1,90\n0.02,2.1,90,\n", 2, "log.csv:3:1: ", "4 cells"},
      {kLogHeader + "0,2.1,90\n\n0.02,2.1,90\n", 2, "log.csv:3:1: ", "blank"},
      {kLogHeader + "0,2.1,90\n0,2.1,90\n", 2, "log.csv:3:1: ", "increase from row to row"},
      {kLogHeader + "0.1,2.1,90\n0.05,2.1,90\n", 2, "log.csv:3:1: ", "increase from row to row"},
      {kLogHeader + "0,2.1,\"90\n", 2, "log.csv:2: ", "never closed"},
      {kLogHeader + "0,2.1,\"90\"1\n", 2, "log.csv:2:11: ", "whole cell"},
      {kLogHeader + "0,2.1,9\"0\n", 2, "log.csv:2:8: ", "whole cell"},
      {kLogHeader + std::string(100000, '9') + "\n", 2, "log.csv:2: ", "longer than 65536 bytes"},
      {std::string(5000000, 'x'), 2, "log.csv:1: ", "longer than 65536 bytes"},
      {std::string(5000000, ','), 2, "log.csv:1: ", "longer than 65536 bytes"},
      {kLogHeader + std::string("0,2.1,9\0000\n", 10), 2, "log.csv:2:7: ", "not a number"},
      {"\x89PNG\r\n\x1A\n" + std::string(1000, '\0'), 2, "log.csv:1:1: ", "UTF-8"},
      {"{\"format\": \"hingepin-readings/1\"}", 2, "log.csv:1:1: ", "\"points\""},
      {"{\"format\": \"hingepin-readings/2\", \"points\": []}", 2, "/format: ", "hingepin-readings/1"},
      {"{\"format\": \"hingepin-readings/1\", \"points\": [{\"boom_sensor\": \"2 V\"}]}", 2,
       "/points/0: ", "\"head_pressure\""},
      {"{\"format\": \"hingepin-readings/1\", \"points\": [}", 2, "log.csv:1:46: ", "not valid JSON"},
      {"{\"format\": \"hingepin-readings/1\", \"points\": []}", 1, "/points: ", "At least one reading"},
      {kLogHeader, 1, "log.csv", "no rows"},
      {kLogHeader + "0,2.1,\n0.02,2.2,\n", 1, "log.csv", "all required readings"},
      {kLogHeader + "0,2.1,90\n", 1, "log.csv", "rows"},
      {"time [s],boom_sensor [1],head_pressure [bar]\n" + rows, 2, "log.csv", "another unit"},
  };
  const TemporaryFolder folder;
  std::filesystem::copy_file(practiceFolder() / "calibration.json", folder.path() / "calibration.json");
  for (const LogCase& log : cases) {
    writeText(folder.path() / "log.csv", log.text);
    expectRefusal(runHingepin({"weigh", "calibration.json", "log.csv"}, folder.path()), log.status, log.where,
                  log.what, log.text.substr(0, 120));
  }
}

// The job ---------------------------------------------------------------------------------------

struct JobEdit {
  std::string pointer;
  std::string value;  ///< JSON; empty takes the key away
  int status;
  std::string where;  ///< in the message; empty for the pointer itself
  std::string what;
};

TEST(MalformedInputTest, JobValues) {
  const std::vector<JobEdit> cases = {
      {"/format", "", 2, "job.json:1:1: ", "\"format\" is missing"},
      {"/format", "\"hingepin-job/9\"", 2, "", "hingepin-job/1"},
      {"/format", "1", 2, "", "Expected a string"},
      {"/unit", "", 2, "job.json:1:1: ", "\"unit\" is missing"},
      {"/unit", "[]", 2, "", "Expected an object"},
      {"/unit/id", "\"\"", 2, "", "must not be empty"},
      {"/unit/id", "null", 2, "", "Expected a string"},
      {"/unit/maker", "\"x\"", 2, "", "\"maker\" is not known"},
      {"/a~1b", "0", 2, "", "\"a/b\" is not known"},
      {"/unit/lift_cylinders", "", 2, "/unit: ", "\"lift_cylinders\" is missing"},
      {"/unit/lift_cylinders/count", "0", 2, "", "whole number from 1"},
      {"/unit/lift_cylinders/count", "1.5", 2, "", "whole number from 1"},
      {"/unit/lift_cylinders/count", "\"2\"", 2, "", "Expected a number"},
      {"/unit/lift_cylinders/bore", "\"130mm\"", 2, "", "one space"},
      {"/unit/lift_cylinders/bore", "\"130,5 mm\"", 2, "", "one space"},
      {"/unit/lift_cylinders/bore", "\"0x82 mm\"", 2, "", "one space"},
      {"/unit/lift_cylinders/bore", "\"NaN mm\"", 2, "", "one space"},
      {"/unit/lift_cylinders/bore", "\"130 MM\"", 2, "", "is not known"},
      {"/unit/lift_cylinders/bore", "\"130 kg\"", 2, "", "unit of mass, expected a unit of length"},
      {"/unit/lift_cylinders/bore", "\"1e400 mm\"", 2, "", "too large"},
      {"/unit/lift_cylinders/bore", "\"-130 mm\"", 2, "", "from 20 mm to 1000 mm"},
      {"/unit/lift_cylinders/bore", "130", 2, "", "a number, one space and a UCUM code"},
      {"/unit/lift_cylinders/rod", "\"131 mm\"", 2, "", "thinner"},
      {"/unit/rated_payload", "\"0 kg\"", 2, "", "Expected a value from"},
      {"/unit/rated_payload", "\"4500\"", 2, "", "one space"},
      {"/unit/weigh_window", "[\"18 deg\", \"-8 deg\"]", 2, "", "lower angle"},
      {"/unit/weigh_window", "[\"18 deg\"]", 2, "", "two quantities, found 1"},
      {"/unit/weigh_window/1", "\"18 m\"", 2, "", "unit of length, expected a unit of angle"},
      {"/unit/linkage/kind", "\"four-bar\"", 2, "", "not supported yet"},
      {"/unit/linkage/link_length", "", 2, "/unit/linkage: ", "\"link_length\" is missing"},
      {"/unit/linkage/link_length", "\"0.1 m\"", 2, "/unit/linkage/link_length", ""},
      {"/unit/linkage/lift_boom_pin", "[\"1.5 m\"]", 2, "", "two quantities"},
      {"/unit/linkage/lift_frame_pin", "[\"0.08 m\", \"1.53 m\"]", 2, "/unit/linkage", ""},
      {"/unit/linkage/tilt_cylinder_extended", "\"1.2 m\"", 2, "/unit/linkage/tilt_cylinder_extended", ""},
      {"/unit/oil", "{\"grade\": \"ISO VG 47\"}", 2, "/unit/oil/grade", "ISO 3448"},
      {"/unit/pressure_sensor", "{\"range\": \"400 kg\"}", 2, "/unit/pressure_sensor/range", "pressure"},
      {"/unit/load_friction", "{\"mean\": \"-1 %\"}", 2, "/unit/load_friction/mean", "Expected a value from"},
      {"/attachment/bucket", "\"-5 kg\"", 2, "", "Expected a value from"},
      {"/attachment/id", "", 2, "/attachment: ", "\"id\" is missing"},
      {"/gravity", "\"1.62 m/s2\"", 2, "", "Expected a value from"},
      {"/site", "{\"latitude\": \"95 deg\", \"height\": \"0 m\"}", 2, "/site/latitude",
       "Expected a value from"},
      {"/poses", "", 2, "job.json:1:1: ", "\"poses\" is missing"},
      {"/poses", "{}", 2, "", "Expected an array"},
      {"/poses", "[]", 1, "", "At least two poses"},
      {"/poses/0/pose", "\"boom-top\"", 2, "", "boom-lowest"},
      {"/poses/0/boom_sensor", "", 2, "/poses/0: ", "\"boom_sensor\" is missing"},
      {"/poses/0/boom_sensor", "\"0.71 A\"", 2, "", "V, mV, 1 (counts), deg, rad"},
      {"/poses/1/boom_sensor", "\"422 1\"", 2, "", "another unit"},
      {"/poses/1/boom_angle", "\"-45 deg\"", 2, "/poses", ""},
      {"/poses/0/boom_angle_u", "\"0 deg\"", 2, "", "Expected a value from"},
      {"/lifts", "", 2, "job.json:1:1: ", "\"lifts\" is missing"},
      {"/lifts", "[]", 1, "", "At least one empty pass"},
      {"/lifts/0/kind", "\"full\"", 2, "", "empty, test-mass"},
      {"/lifts/0/pace", "\"medium\"", 2, "", "slow, fast"},
      {"/lifts/0/pace", "", 2, "/lifts/0: ", "\"pace\" is missing"},
      {"/lifts/0/direction", "\"down\"", 2, "/lifts/0/direction", "down"},
      {"/lifts/0/mass", "\"5 kg\"", 2, "", "An empty lift has no mass"},
      {"/lifts/2/mass", "", 2, "/lifts/2: ", "\"mass\" is missing"},
      {"/lifts/0/log", "\"nowhere.csv\"", 2, "/lifts/0/log", "There is no file"},
      {"/lifts/0/log", "\".\"", 2, "/lifts/0/log", "folder"},
      {"/lifts/0/log", "\"truth.json\"", 2, "truth.json:1:1: ", "header"},
      {"/lifts/0/log", "", 2, "/lifts/0: ", "no readings"},
      {"/lifts/0/points", "[]", 2, "", "Expected only one of them"},
      {"/lifts/0", "{\"kind\": \"empty\", \"points\": []}", 1, "/lifts/0/points", "At least one reading"},
      {"/lifts/0",
       "{\"kind\": \"empty\", \"points\": [{\"boom_sensor\": \"2 V\", \"head_pressure\": \"9 kg\"}]}", 2,
       "/lifts/0/points/0/head_pressure", "pressure"},
      {"/lifts/0",
       "{\"kind\": \"empty\", \"points\": [{\"boom_sensor\": \"2 deg\", \"head_pressure\": \"9 bar\"}]}", 2,
       "/lifts/0", "unit"},
      {"/loads", "[{\"net\": \"9 t\", \"lifts\": []}]", 1, "/loads/0/lifts", ""},
      {"/loads", "[{\"lifts\": []}]", 2, "/loads/0: ", "\"net\" is missing"},
  };
  const TemporaryFolder folder;
  std::filesystem::copy(practiceFolder(), folder.path());
  const Json job = Json::parse(readText(practiceFolder() / "job.json"));
  for (const JobEdit& edit : cases) {
    Json edited = job;
    const Json::json_pointer pointer(edit.pointer);
    if (edit.value.empty()) {
      edited.at(pointer.parent_pointer()).erase(pointer.back());
    } else {
      edited[pointer] = Json::parse(edit.value);
    }
    writeText(folder.path() / "job.json", edited.dump(1));
    expectRefusal(runHingepin({"calibrate", "job.json", "--out", "c.json"}, folder.path()), edit.status,
                  edit.where.empty() ? edit.pointer + ": " : edit.where, edit.what,
                  edit.pointer + " = " + edit.value);
    EXPECT_FALSE(std::filesystem::exists(folder.path() / "c.json"));
  }
}

TEST(MalformedInputTest, JobsThatCannotSupportAResult) {
  const TemporaryFolder folder;
  std::filesystem::copy(practiceFolder(), folder.path());
  const Json job = Json::parse(readText(practiceFolder() / "job.json"));
  const auto refuse = [&](const Json& edited, const std::string& what) {
    writeText(folder.path() / "job.json", edited.dump(1));
    expectRefusal(runHingepin({"calibrate", "job.json", "--out", "c.json"}, folder.path()), 1,
                  "job.json:", what, what);
  };
  Json no_way = job;
  no_way.at("unit").erase("linkage");
  no_way.at("lifts").erase(2);
  refuse(no_way, "Add one of the three");
  Json one_pose = job;
  one_pose["poses"] = Json::array({job.at("poses").at(0)});
  refuse(one_pose, "At least two");
  Json one_reading = job;
  for (Json& pose : one_reading.at("poses")) pose["boom_sensor"] = "2.43 V";
  refuse(one_reading, "same boom reading");
  Json close = job;
  close.at("poses").at(0)["boom_angle"] = "0 deg";
  close.at("poses").at(1)["boom_angle"] = "5 deg";
  refuse(close, "or more apart");
  Json no_empty = job;
  no_empty["lifts"] = Json::array({job.at("lifts").at(2)});
  refuse(no_empty, "no empty pass");
}

TEST(MalformedInputTest, JobText) {
  const std::string good = readText(practiceFolder() / "job.json");
  const auto at = [&good](const char* text) { return good.find(text); };
  const auto with = [&good](std::size_t offset, const std::string& text) {
    return std::string(good).insert(offset, text);
  };
  struct TextCase {
    std::string text;
    std::string where;
    std::string what;
  };
  const std::vector<TextCase> cases = {
      {"", "job.json:1:1: ", "not valid JSON"},
      {"hello", "job.json:1:", "not valid JSON"},
      {"[]", "job.json:1:1: ", "Expected an object"},
      {"42", "job.json:1:1: ", "Expected an object"},
      {good.substr(0, good.size() / 2), "job.json:", "not valid JSON"},
      {good + "}", "job.json:", "not valid JSON"},
      {"// a comment\n" + good, "job.json:1:", "not valid JSON"},
      {with(at("\"unit\""), "/* x */"), "job.json:3:", "not valid JSON"},
      {with(at("\"unit\""), ","), "job.json:3:3: ", "not valid JSON"},
      {with(good.rfind('}'), ","), "job.json:", "not valid JSON"},
      {with(at("\"unit\""), "unit: 1, "), "job.json:3:", "not valid JSON"},
      {with(at("\"unit\""), "'x': 1, "), "job.json:3:", "not valid JSON"},
      {with(at("\"unit\""), "\"x\": 01, "), "job.json:3:", "not valid JSON"},
      {with(at("\"unit\""), "\"x\": NaN, "), "job.json:3:", "not valid JSON"},
      {with(at("\"unit\""), "\"x\": 1e999, "), "job.json:3:", "not valid JSON"},
      {with(at("\"unit\""), "\"x\": \"\\q\", "), "job.json:3:", "not valid JSON"},
      {with(at("\"unit\""), "\"x\": \"\\ud800\", "), "job.json:3:", "not valid JSON"},
      {with(at("\"unit\""), "\"x\": \"a\nb\", "), "job.json:3:", "not valid JSON"},
      {with(at("\"unit\""), "\"format\": 1, "), "job.json:3:3: /format: ", "twice"},
      {with(at("L-27"), "\xFF"), "job.json:4:12: ", "UTF-8"},
      {with(at("L-27"), std::string(1, '\0')), "job.json:4:12: ", "zero byte"},
      {std::string(1000000, '['), "job.json:1:65: ", "nested"},
      {std::string(17U << 20U, ' '), "job.json: ", "larger than 16 MiB"},
  };
  const TemporaryFolder folder;
  std::filesystem::copy(practiceFolder(), folder.path());
  for (const TextCase& text_case : cases) {
    writeText(folder.path() / "job.json", text_case.text);
    for (const std::vector<std::string>& arguments :
         {std::vector<std::string>{"calibrate", "job.json", "--out", "c.json"},
          std::vector<std::string>{"linkage", "job.json"}}) {
      expectRefusal(runHingepin(arguments, folder.path()), 2, text_case.where, text_case.what,
                    text_case.text.substr(0, 60));
    }
  }
}

// The calibration -------------------------------------------------------------------------------

TEST(MalformedInputTest, Calibrations) {
  const std::string good = readText(practiceFolder() / "calibration.json");
  const Json json = Json::parse(good);
  const auto with = [&json](const std::string& pointer, const Json& value) {
    Json edited = json;
    edited[Json::json_pointer(pointer)] = value;
    return edited.dump(1);
  };
  const auto without = [&json](const std::string& key) {
    Json edited = json;
    edited.erase(key);
    return edited.dump(1);
  };
  const std::vector<std::pair<std::string, std::string>> cases = {
      {"", "calibration.json:1:1: "},
      {"{}", "calibration.json:1:1: "},
      {good.substr(0, good.size() / 2), "calibration.json:"},
      {std::string(good.size(), '\0'), "calibration.json:1:1: "},
      {readText(practiceFolder() / "job.json"), "/format: "},
      {readText(practiceFolder() / "load-1.csv"), "calibration.json:1:"},
      {with("/format", "hingepin-calibration/2"), "/format: "},
      {with("/extra", 1), "/extra: "},
      {with("/rated_payload_kg", "4500 kg"), "/rated_payload_kg: "},
      {with("/rated_payload_kg", -1), "calibration.json:"},
      {with("/head_area_m2", 0), "calibration.json:"},
      {with("/boom_line/slope_rad_per_unit", 0), "calibration.json:"},
      {with("/boom_sensor_unit", "A"), "/boom_sensor_unit: "},
      {with("/state", Json::object()), "calibration.json:"},
      {with("/state/mean", Json::array({1, 2, 3})), "calibration.json:"},
      {with("/tare_basis/intervals", 100000000), "calibration.json:"},
      {with("/tare_basis/intervals", 2.5), "calibration.json:"},
      {with("/tare_basis/intervals", 1e300), "calibration.json:"},
      {with("/window_low_rad", 3), "calibration.json:"},
      {with("/state/factor/8/2", 1e300), "/state/factor/8/2: "},
      {with("/linkage/link_length_m", 0.05), "/linkage: "},
      {without("boom_line"), "calibration.json:1:1: "},
      {without("state"), "calibration.json:1:1: "},
  };
  const TemporaryFolder folder;
  std::filesystem::copy_file(practiceFolder() / "load-1.csv", folder.path() / "load-1.csv");
  for (const auto& [text, where] : cases) {
    writeText(folder.path() / "calibration.json", text);
    expectRefusal(runHingepin({"weigh", "calibration.json", "load-1.csv"}, folder.path()), 2, where, "",
                  text.substr(0, 80));
  }
}

// The command line ------------------------------------------------------------------------------

TEST(MalformedInputTest, CommandLines) {
  const std::vector<std::pair<std::vector<std::string>, std::string>> cases = {
      {{}, "A command is expected"},
      {{"calibration"}, "calibration"},
      {{"--nonsense"}, "--nonsense"},
      {{"calibrate"}, "required"},
      {{"calibrate", "job.json"}, "--out is required"},
      {{"calibrate", "job.json", "--out"}, "--out"},
      {{"calibrate", "job.json", "more.json", "--out", "c.json"}, "more.json"},
      {{"calibrate", "nowhere.json", "--out", "c.json"}, "There is no file nowhere.json"},
      {{"calibrate", ".", "--out", "c.json"}, "folder"},
      {{"calibrate", "", "--out", "c.json"}, "There is no file"},
      {{"calibrate", "job.json", "--out", "no/where/c.json"}, "can't be written"},
      {{"calibrate", "job.json", "--out", ""}, "can't be written"},
      {{"calibrate", "job.json", "--out", "c.json", "--report", "no/where/r.html"}, "can't be written"},
      {{"weigh"}, "required"},
      {{"weigh", "calibration.json"}, "required"},
      {{"weigh", "nowhere.json", "load-1.csv"}, "There is no file nowhere.json"},
      {{"weigh", "calibration.json", "nowhere.csv"}, "There is no file nowhere.csv"},
      {{"weigh", "calibration.json", "."}, "folder"},
      {{"weigh", "calibration.json", "load-1.csv", "--xml"}, "--xml"},
      {{"weigh", "job.json", "load-1.csv"}, "hingepin-calibration/1"},
      {{"--units", "imperial", "help"}, "metric,us"},
      {{"simulate"}, "--out is required"},
      {{"simulate", "--demo", "--out", "job.json"}, "can't be written"},
      {{"simulate", "--demo", "--out", "x", "--seed", "many"}, "--seed"},
      {{"simulate", "--demo", "--out", "x", "--seed", "-1"}, "--seed"},
      {{"simulate", "--demo", "--out", "x", "--misbehaviour", "gremlins"}, "cold-oil"},
      {{"linkage"}, "required"},
      {{"linkage", "nowhere.json"}, "There is no file"},
      {{"help", "nothing"}, "no command nothing"},
  };
  const TemporaryFolder folder;
  std::filesystem::copy(practiceFolder(), folder.path());
  for (const auto& [arguments, what] : cases) {
    expectRefusal(runHingepin(arguments, folder.path()), 2, "", what,
                  fmt::format("{}", fmt::join(arguments, " ")));
  }
}

}  // namespace
}  // namespace hingepin::cli
