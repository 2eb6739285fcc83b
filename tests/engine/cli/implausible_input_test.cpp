// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <functional>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>
#include <vector>

#include "tests/engine/cli/process.h"

// Files that are well formed and can't be meant so.
namespace hingepin::cli {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using Json = nlohmann::ordered_json;

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size())) {
    text.replace(at, from.size(), to);
  }
  return text;
}

/// A log whose rows are changed one by one; row 0 is the first after the header.
std::string changed(const std::string& log,
                    const std::function<void(std::size_t, std::vector<std::string>&)>& change) {
  std::istringstream lines(log);
  std::string line;
  std::getline(lines, line);
  std::string text = line + "\n";
  for (std::size_t row = 0; std::getline(lines, line); ++row) {
    std::vector<std::string> cells(1);
    for (const char byte : line) {
      if (byte == ',') {
        cells.emplace_back();
      } else {
        cells.back() += byte;
      }
    }
    change(row, cells);
    for (std::size_t at = 0; at < cells.size(); ++at) text += (at > 0 ? "," : "") + cells[at];
    text += "\n";
  }
  return text;
}

/// A log less some of its rows.
std::string withoutRows(const std::string& log, const std::function<bool(std::size_t)>& isOut) {
  std::istringstream lines(log);
  std::string line;
  std::getline(lines, line);
  std::string text = line + "\n";
  for (std::size_t row = 0; std::getline(lines, line); ++row) {
    if (!isOut(row)) text += line + "\n";
  }
  return text;
}

constexpr std::size_t kHeadPressure = 3;

/// The practice job in a folder of its own, to be spoiled.
class ImplausibleInputTest : public ::testing::Test {
 protected:
  ImplausibleInputTest() {
    for (const auto& file : std::filesystem::directory_iterator(practiceFolder())) {
      std::filesystem::copy(file.path(), folder_.path() / file.path().filename());
    }
    job_ = Json::parse(text("job.json"));
  }
  [[nodiscard]] std::string text(const std::string& name) const { return readText(folder_.path() / name); }
  void write(const std::string& name, const std::string& text) const {
    writeText(folder_.path() / name, text);
  }
  [[nodiscard]] ProcessResult calibrate() const {
    write("job.json", job_.dump());
    return runHingepin({"calibrate", "job.json", "--out", "made.json"}, folder_.path());
  }
  [[nodiscard]] ProcessResult weigh(const std::string& log) const {
    return runHingepin({"weigh", "calibration.json", log}, folder_.path());
  }
  [[nodiscard]] Json weighed(const std::string& log) const {
    const ProcessResult result = runHingepin({"weigh", "--json", "calibration.json", log}, folder_.path());
    EXPECT_EQ(result.status, 0) << result.diagnostics;
    return Json::parse(result.output);
  }
  /// Status 1, a sentence that says so, and nothing written.
  void expectNoCalibration(const std::string& sentence) const {
    const ProcessResult result = calibrate();
    EXPECT_EQ(result.status, 1) << result.output;
    EXPECT_THAT(result.diagnostics, HasSubstr(sentence));
    EXPECT_THAT(result.diagnostics, HasSubstr("/lifts/"));
    EXPECT_FALSE(std::filesystem::exists(folder_.path() / "made.json"));
  }

  TemporaryFolder folder_;
  Json job_;
};

double kilograms(const Json& mass) { return std::stod(mass.get<std::string>()); }

int leftOut(const Json& weighing) { return weighing.value("rows_left_out", 0); }

TEST_F(ImplausibleInputTest, ATestMassWithAnEmptyLogIsRefused) {
  job_["lifts"][2]["log"] = "empty-slow.csv";
  expectNoCalibration("too far off to be taken for a span");
  job_["unit"].erase("linkage");
  expectNoCalibration("do not differ from the empty ones as masses would");
}

TEST_F(ImplausibleInputTest, AnEmptyLogWithTheMassInTheBucketIsRefused) {
  job_["lifts"][0]["log"] = "mass-2000-slow.csv";
  job_["lifts"][1]["log"] = "mass-2000-slow.csv";
  job_["lifts"][2]["log"] = "empty-slow.csv";
  expectNoCalibration("too far off to be taken for a span");
  job_["unit"].erase("linkage");
  expectNoCalibration("do not differ from the empty ones as masses would");
}

TEST_F(ImplausibleInputTest, ATestMassInTheWrongUnitIsRefusedWhereTheLinkageKnowsBetter) {
  job_["lifts"][2]["mass"] = "2000 [lb_av]";
  expectNoCalibration("too far off to be taken for a span");
}

TEST_F(ImplausibleInputTest, BarThatAreCalledKilopascalsAreRefused) {
  for (const char* const name : {"load-1.csv", "mass-2000-slow.csv"}) {
    write(name, replaced(text(name), "[bar]", "[kPa]"));
  }
  const ProcessResult result = weigh("load-1.csv");
  EXPECT_EQ(result.status, 1) << result.output;
  EXPECT_THAT(result.diagnostics, HasSubstr("load-1.csv: "));
  EXPECT_THAT(result.diagnostics, HasSubstr("Check the unit of the pressures"));
  expectNoCalibration("too far off to be taken for a span");

  for (const char* const name : {"empty-slow.csv", "empty-fast.csv"}) {
    write(name, replaced(text(name), "[bar]", "[kPa]"));
  }
  expectNoCalibration("Check the unit of the pressures");
}

TEST_F(ImplausibleInputTest, ReadingsBeyondTheSensorsRangeAreLeftOutAndSaid) {
  const auto oneInTwenty = [](std::size_t row) { return row % 20 == 0; };
  for (const std::string name : {"load-1.csv", "load-6.csv"}) {
    SCOPED_TRACE(name);
    const std::string log = text(name);
    const Json whole = weighed(name);
    std::size_t beyond = 0;
    write(name, changed(log, [&](std::size_t row, std::vector<std::string>& cells) {
            if (!oneInTwenty(row) || cells[kHeadPressure].empty()) return;  // missing already
            cells[kHeadPressure] = "400";
            ++beyond;
          }));
    const Json json = weighed(name);
    EXPECT_THAT(json.at("warnings").dump(),
                HasSubstr("left out " + std::to_string(beyond) + " rows whose pressures reach the end"));
    EXPECT_EQ(json.at("rows_left_out"), leftOut(whole) + static_cast<int>(beyond));
    // Left out is left out: as if the rows had never been there.
    write(name, withoutRows(log, oneInTwenty));
    const Json without = weighed(name);
    EXPECT_EQ(json.at("mass"), without.at("mass"));
    EXPECT_EQ(json.at("expanded_uncertainty"), without.at("expanded_uncertainty"));
    // One row in twenty less moves a mean by sqrt(1/19) of its standard uncertainty where that is all noise,
    // which is half of what is stated (k = 2).
    EXPECT_NEAR(kilograms(json.at("mass")), kilograms(whole.at("mass")),
                0.5 * std::sqrt(1.0 / 19.0) * kilograms(whole.at("expanded_uncertainty")));
  }
}

TEST_F(ImplausibleInputTest, ALogMostlyBeyondTheSensorsRangeIsRefused) {
  job_["unit"]["pressure_sensor"] = {{"range", "60 bar"}};
  expectNoCalibration("rows have pressures at the end of their sensors' range, 60 bar, or beyond");
  write("load-1.csv", replaced(text("load-1.csv"), "head_pressure [bar]", "head_pressure [MPa]"));
  const ProcessResult result = weigh("load-1.csv");
  EXPECT_EQ(result.status, 1) << result.output;
  EXPECT_THAT(result.diagnostics, HasSubstr("Check the unit of the pressures"));
}

TEST_F(ImplausibleInputTest, FewMissingReadingsAreCountedAndManyWarnedOf) {
  const std::string whole = text("load-1.csv");
  const int before = leftOut(weighed("load-1.csv"));
  EXPECT_LE(before, 5);  // the practice logger misses a reading now and then
  const auto without = [&](std::size_t every) {
    write("load-1.csv", changed(whole, [every](std::size_t row, std::vector<std::string>& cells) {
            if (row % every == 1) cells[kHeadPressure] = "";
          }));
    return weighed("load-1.csv");
  };
  const Json few = without(1000);
  EXPECT_EQ(few.at("rows_left_out"), before + 1);
  EXPECT_THAT(few.at("warnings").dump(), Not(HasSubstr("left out")));
  const Json many = without(25);
  EXPECT_EQ(many.at("rows_left_out"), before + 25);
  EXPECT_THAT(many.at("warnings").dump(), HasSubstr("because a required reading was missing"));
}

TEST_F(ImplausibleInputTest, ACalibrationKeepsHowManyRowsWereLeftOut) {
  ASSERT_EQ(calibrate().status, 0);
  const int before = Json::parse(text("made.json")).at("passes")[0].at("rows_left_out");
  write("empty-slow.csv",
        changed(text("empty-slow.csv"), [](std::size_t row, std::vector<std::string>& cells) {
          if (row == 7) cells[kHeadPressure] = "";
        }));
  const ProcessResult result = calibrate();
  ASSERT_EQ(result.status, 0) << result.diagnostics;
  const Json made = Json::parse(text("made.json"));
  EXPECT_EQ(made.at("passes")[0].at("rows_left_out"), before + 1);
  EXPECT_THAT(made.at("warnings").dump(), Not(HasSubstr("rows-dropped")));
}

TEST_F(ImplausibleInputTest, ANumericCellThatIsNotUtf8IsSaidToBeThat) {
  write("load-1.csv", changed(text("load-1.csv"), [](std::size_t row, std::vector<std::string>& cells) {
          if (row == 1) cells[kHeadPressure] = "98\xB5";
        }));
  const ProcessResult result = weigh("load-1.csv");
  EXPECT_EQ(result.status, 2);
  EXPECT_THAT(result.diagnostics, HasSubstr("load-1.csv:3:"));
  EXPECT_THAT(result.diagnostics, HasSubstr("is not UTF-8 text"));
  EXPECT_THAT(result.diagnostics, Not(HasSubstr("is not a number")));
}

}  // namespace
}  // namespace hingepin::cli
