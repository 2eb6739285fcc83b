// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <regex>
#include <sstream>
#include <string>

#include "tests/engine/cli/process.h"

namespace hingepin::cli {
namespace {

using ::testing::ContainsRegex;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::MatchesRegex;
using ::testing::Not;
using ::testing::StartsWith;

constexpr const char* kDeviceThatIsFull = "/dev/full";

double kilograms(const std::string& text) {
  EXPECT_TRUE(text.ends_with(" kg")) << text;
  return std::stod(text);
}

TEST(CommandTest, HelpNamesEveryCommand) {
  const ProcessResult help = runHingepin({"help"}, practiceFolder());
  EXPECT_EQ(help.status, 0);
  for (const char* command : {"calibrate", "weigh", "prove", "simulate", "linkage", "stops", "help"}) {
    EXPECT_THAT(help.output, HasSubstr(command));
    const ProcessResult about = runHingepin({"help", command}, practiceFolder());
    EXPECT_EQ(about.status, 0);
    EXPECT_THAT(about.output, HasSubstr(std::string("Usage: hingepin ") + command));
  }
}

TEST(CommandTest, VersionSaysWhatItWasBuiltWithWhereAsked) {
  const std::string version = runHingepin({"--version"}, practiceFolder()).output;
  EXPECT_THAT(version, MatchesRegex("hingepin [0-9.]+\n"));
  const std::string verbose = runHingepin({"--version", "--verbose"}, practiceFolder()).output;
  EXPECT_THAT(verbose, StartsWith(version));
  for (const char* const part : {"compiler", "Boost", "CLI11", "Eigen", "fmt", "libsodium", "nlohmann-json",
                                 "OpenSSL", "SQLite", "zlib"}) {
    EXPECT_THAT(verbose, ContainsRegex(std::string(part) + " +[0-9]+[.][0-9]+"));
  }
  EXPECT_EQ(runHingepin({"--verbose"}, practiceFolder()).status, 2);
}

TEST(CommandTest, PracticeLoadsAreWeighedNearTheirTruth) {
  const ProcessResult weighed =
      runHingepin({"weigh", "calibration.json", "load-1.csv", "load-2.csv", "--json"}, practiceFolder());
  ASSERT_EQ(weighed.status, 0) << weighed.diagnostics;
  const auto truth = nlohmann::json::parse(readText(practiceFolder() / "truth.json"));
  std::istringstream lines(weighed.output);
  int count = 0;
  for (std::string line; std::getline(lines, line); ++count) {
    const auto json = nlohmann::json::parse(line);
    EXPECT_EQ(json.size(), json.contains("rows_left_out") ? 6U : 5U);
    const double doubt_kg = kilograms(json.at("expanded_uncertainty"));
    EXPECT_GT(doubt_kg, 0.0);
    EXPECT_LT(doubt_kg, 300.0);
    EXPECT_GE(json.at("coverage_factor").get<double>(), 2.0);
    EXPECT_TRUE(json.at("warnings").is_array());
    EXPECT_THAT(weighed.output, Not(HasSubstr("{log}")));
    // Three times the interval, so that one draw in a thousand million would fail.
    const auto& lifts = truth.at("unknown");
    const auto lift =
        std::ranges::find(lifts, json.at("log"), [](const nlohmann::json& one) { return one.at("file"); });
    ASSERT_NE(lift, lifts.end());
    const double true_kg = lift->at("mass_kg");
    EXPECT_NEAR(kilograms(json.at("mass")), true_kg, 3.0 * doubt_kg);
  }
  EXPECT_EQ(count, 2);
}

TEST(CommandTest, UnitsAreShownAsAskedButJsonStaysInKilograms) {
  const auto in = [](const char* units, bool json) {
    std::vector<std::string> arguments = {"--units", units, "weigh", "calibration.json", "load-1.csv"};
    if (json) arguments.push_back("--json");
    return runHingepin(arguments, practiceFolder()).output;
  };
  EXPECT_THAT(in("metric", false), HasSubstr(" kg ± "));
  EXPECT_THAT(in("us", false), HasSubstr(" lb ± "));
  EXPECT_EQ(nlohmann::json::parse(in("us", true)).at("mass"),
            nlohmann::json::parse(in("metric", true)).at("mass"));
}

TEST(CommandTest, EachLogGetsItsLineAndTheWorstStatusCounts) {
  const TemporaryFolder folder;
  writeText(folder.path() / "empty.csv", "time [s],boom_sensor [V],head_pressure [bar]\n0,1,\n");
  writeText(folder.path() / "bad.csv", "time [s]\n");
  const std::string calibration = (practiceFolder() / "calibration.json").string();
  const std::string good = (practiceFolder() / "load-1.csv").string();
  const auto weigh = [&](std::vector<std::string> logs) {
    logs.insert(logs.begin(), {"weigh", "--json", calibration});
    return runHingepin(logs, folder.path());
  };
  EXPECT_EQ(weigh({good}).status, 0);
  EXPECT_EQ(weigh({good, "empty.csv"}).status, 1);
  const ProcessResult all = weigh({"bad.csv", good, "empty.csv", "nowhere.csv"});
  EXPECT_EQ(all.status, 2);
  std::istringstream lines(all.output);
  std::vector<nlohmann::json> answers;
  for (std::string line; std::getline(lines, line);) answers.push_back(nlohmann::json::parse(line));
  ASSERT_EQ(answers.size(), 4U);
  EXPECT_EQ(answers[0].at("error").at("code"), "csv-missing-column");
  EXPECT_TRUE(answers[1].contains("mass"));
  EXPECT_EQ(answers[2].at("error").at("code"), "readings-all-missing");
  EXPECT_EQ(answers[3].at("error").at("code"), "file-not-found");
  EXPECT_EQ(answers[3].at("log"), "nowhere.csv");
}

TEST(CommandTest, LinkageShowsItsTable) {
  const ProcessResult linkage = runHingepin({"linkage", "job.json"}, practiceFolder());
  EXPECT_EQ(linkage.status, 0) << linkage.diagnostics;
  for (const char* word :
       {"moment arm", "racked", "tilt from", "load arm", "edge height", "boom-reference", "\n  0.0°"}) {
    EXPECT_THAT(linkage.output, HasSubstr(word));
  }
}

TEST(CommandTest, ReportIsAPageThatNeedsNothingElse) {
  const TemporaryFolder folder;
  const std::string job = (practiceFolder() / "job.json").string();
  ASSERT_EQ(runHingepin({"calibrate", job, "--out", "c.json", "--report", "r.html"}, folder.path()).status,
            0);
  const std::string page = readText(folder.path() / "r.html");
  EXPECT_THAT(page, StartsWith("<!DOCTYPE html>"));
  EXPECT_THAT(page, HasSubstr("<svg"));
  EXPECT_THAT(page, Not(HasSubstr("http")));
  EXPECT_THAT(page, Not(HasSubstr("<script")));
}

std::size_t timesIn(const std::string& text, std::string_view part) {
  std::size_t times = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++times;
  return times;
}

TEST(CommandTest, ReportDrawsPosesResidualsAndTheTareWithItsBandAndBreaksDownTheDoubt) {
  const TemporaryFolder folder;
  const std::string job = (practiceFolder() / "job.json").string();
  ASSERT_EQ(
      runHingepin({"--units", "us", "calibrate", job, "--out", "c.json", "--report", "r.html"}, folder.path())
          .status,
      0);
  const std::string page = readText(folder.path() / "r.html");
  EXPECT_EQ(timesIn(page, "<svg"), 3U);
  EXPECT_EQ(timesIn(page, "</svg>"), 3U);
  EXPECT_EQ(timesIn(page, "<polygon"), 1U) << "the band of the tare";
  EXPECT_EQ(timesIn(page, ">psi</text>"), 2U);
  EXPECT_EQ(timesIn(page, "nan"), 0U);
  EXPECT_THAT(page, HasSubstr("legal for trade"));
  // The shares of a budget are whole per cents of one variance.
  const std::size_t budget = page.find("share of the variance");
  ASSERT_NE(budget, std::string::npos);
  int sum = 0;
  int lines = 0;
  const std::size_t end = page.find("</table>", budget);
  for (std::size_t at = page.find(" %</td>", budget); at < end; at = page.find(" %</td>", at + 1)) {
    sum += std::stoi(page.substr(page.rfind('>', at) + 1));
    ++lines;
  }
  EXPECT_GT(lines, 3);
  EXPECT_NEAR(sum, 100, lines / 2.0);
}

TEST(CommandTest, TheSameSeedGivesTheSameBytes) {
  const TemporaryFolder folder;
  for (const char* out : {"a", "b"}) {
    ASSERT_EQ(runHingepin({"simulate", "--demo", "--out", out, "--seed", "7"}, folder.path()).status, 0);
  }
  for (const auto& entry : std::filesystem::directory_iterator(folder.path() / "a")) {
    EXPECT_EQ(readText(entry.path()), readText(folder.path() / "b" / entry.path().filename()))
        << entry.path();
  }
  ASSERT_EQ(runHingepin({"simulate", "--demo", "--out", "c", "--seed", "8"}, folder.path()).status, 0);
  EXPECT_NE(readText(folder.path() / "a/load-1.csv"), readText(folder.path() / "c/load-1.csv"));
}

TEST(CommandTest, AMachineIsDrawnByItsNumberAndWeighsItsLoads) {
  const TemporaryFolder folder;
  for (const char* number : {"5", "6"}) {
    ASSERT_EQ(runHingepin({"simulate", "--machine-seed", number, "--out", number}, folder.path()).status, 0);
  }
  EXPECT_NE(readText(folder.path() / "5/job.json"), readText(folder.path() / "6/job.json"));
  ASSERT_EQ(runHingepin({"calibrate", "5/job.json", "--out", "c.json"}, folder.path()).status, 0);
  EXPECT_EQ(runHingepin({"weigh", "c.json", "5/load-1.csv"}, folder.path()).status, 0);
  for (const char* other : {"--demo", "--seed=2"}) {
    EXPECT_EQ(runHingepin({"simulate", "--machine-seed", "5", other, "--out", "x"}, folder.path()).status, 2);
  }
}

TEST(CommandTest, HelpListsTheMisbehavioursThatSimulateTakes) {
  const TemporaryFolder folder;
  const std::string help = runHingepin({"help", "simulate"}, folder.path()).output;
  std::istringstream lines(help.substr(help.find("Misbehaviours:")));
  std::string line;
  std::getline(lines, line);
  int count = 0;
  for (; std::getline(lines, line) && !line.empty(); ++count) {
    std::istringstream words(line);
    std::string name;
    words >> name;
    EXPECT_EQ(runHingepin({"simulate", "--misbehaviour", name, "--out", name}, folder.path()).status, 0)
        << name;
  }
  EXPECT_EQ(count, 16);
}

TEST(CommandTest, CalibrateTellsWhatItFound) {
  const TemporaryFolder folder;
  const std::string job = (practiceFolder() / "job.json").string();
  const auto calibrate = [&](const char* locale) {
    return runHingepin({"calibrate", job, "--out", "c.json"}, folder.path(), {.locale = locale}).output;
  };
  const std::string text = calibrate("C.UTF-8");
  for (const char* part : {"L-27", "4500 kg", "-8.0° to 18.0°", "boom-reference", "mass-2000-slow.csv",
                           "2000 kg", "weigh window", "slow pass", "fast pass", "taught tare"}) {
    EXPECT_THAT(text, HasSubstr(part));
  }
  // Common practice, no source: a fraction of a degree off the reference pose hardly matters. With a decimal.
  EXPECT_TRUE(std::regex_search(
      text, std::regex("reference pose +changes a load of the rated payload by [0-9]+\\.[0-9] kg")));
  EXPECT_THAT(text, HasSubstr("┤"));

  const std::string ascii = calibrate("C");
  EXPECT_TRUE(std::ranges::all_of(ascii, [](char byte) { return static_cast<unsigned char>(byte) < 0x80; }));
  EXPECT_THAT(ascii, HasSubstr("-8.0 deg to 18.0 deg"));
  EXPECT_THAT(ascii, Not(HasSubstr("?")));
  // The plot is as wide as a narrow window of a terminal.
  std::istringstream lines(
      ascii.substr(ascii.find("Head pressure"), ascii.find("slow pass") - ascii.find("Head pressure")));
  for (std::string line; std::getline(lines, line);) EXPECT_LE(line.size(), 100U) << line;
}

TEST(CommandTest, AFailedCalibrationLeavesTheOldOneAlone) {
  const TemporaryFolder folder;
  writeText(folder.path() / "c.json", "old");
  writeText(folder.path() / "job.json", "{}");
  EXPECT_EQ(runHingepin({"calibrate", "job.json", "--out", "c.json"}, folder.path()).status, 2);
  EXPECT_EQ(readText(folder.path() / "c.json"), "old");
}

TEST(CommandTest, AWrittenFileReplacesTheOldOneAndLeavesNothingElseBehind) {
  const TemporaryFolder folder;
  const std::string job = (practiceFolder() / "job.json").string();
  writeText(folder.path() / "c.json", "old");
  std::filesystem::create_symlink("c.json", folder.path() / "link.json");
  ASSERT_EQ(runHingepin({"calibrate", job, "--out", "link.json"}, folder.path()).status, 0);
  EXPECT_TRUE(std::filesystem::is_symlink(folder.path() / "link.json"));
  EXPECT_EQ(readText(folder.path() / "c.json"), readText(practiceFolder() / "calibration.json"));
  EXPECT_EQ(std::distance(std::filesystem::directory_iterator(folder.path()), {}), 2);
}

TEST(CommandTest, OutputThatCannotBeWrittenIsSaid) {
  const TemporaryFolder folder;
  const std::string job = (practiceFolder() / "job.json").string();
  const std::vector<std::string> outputs = {"nowhere/c.json", ".", kDeviceThatIsFull};
  for (const std::string& output : outputs) {
    const ProcessResult result = runHingepin({"calibrate", job, "--out", output}, folder.path());
    EXPECT_EQ(result.status, 2) << output;
    EXPECT_THAT(result.diagnostics, StartsWith(output + ": "));
  }
  const ProcessResult full = runHingepin({"help"}, folder.path(), {.output_path = kDeviceThatIsFull});
  EXPECT_EQ(full.status, 2);
  EXPECT_THAT(full.diagnostics, HasSubstr("standard output"));
}

TEST(CommandTest, AnInputIsNotOverwritten) {
  const TemporaryFolder folder;
  std::filesystem::copy(practiceFolder(), folder.path(), std::filesystem::copy_options::recursive);
  for (const char* output : {"job.json", "./job.json", "empty-slow.csv"}) {
    const std::string before = readText(folder.path() / output);
    const ProcessResult result = runHingepin({"calibrate", "job.json", "--out", output}, folder.path());
    EXPECT_EQ(result.status, 2);
    EXPECT_EQ(readText(folder.path() / output), before);
  }
}

}  // namespace
}  // namespace hingepin::cli
