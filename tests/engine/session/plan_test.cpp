// SPDX-License-Identifier: Apache-2.0
// Whole jobs through the program itself, in one yard: each plan of plans/ becomes a script, the script a job,
// the job a record. All records are then verified from the store, from exported files, and by other programs.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <iostream>
#include <map>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "tests/engine/cli/process.h"
#include "tests/engine/cli/quick_key.h"
#include "tests/engine/session/plan.h"
#include "tests/engine/session/practice.h"

namespace hingepin::cli {
namespace {

namespace fs = std::filesystem;
using ::testing::_;
using ::testing::AllOf;
using ::testing::ContainsRegex;
using ::testing::Each;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::Pair;
using ::testing::UnorderedElementsAreArray;
using Json = nlohmann::ordered_json;
using Texts = std::vector<std::string>;

const fs::path kTests = fs::path(HINGEPIN_SOURCE_DIR) / "tests/engine/session";
constexpr std::string_view kEnding = ".plan.json";
constexpr const char* kAgo = "2026-01-01T00:00:00Z";
constexpr int kNotInstalled = 77;

Json planOf(const std::string& name) {
  return session::readPlan(kTests / "plans" / (name + std::string(kEnding)));
}

/// In the order in which the jobs were done.
Texts plans() {
  std::vector<std::pair<std::string, std::string>> begun;
  for (const auto& entry : fs::directory_iterator(kTests / "plans")) {
    const std::string file = entry.path().filename().string();
    if (!file.ends_with(kEnding)) continue;
    const std::string name = file.substr(0, file.size() - kEnding.size());
    begun.emplace_back(planOf(name).at("header").at("begun_utc"), name);
  }
  std::ranges::sort(begun);
  Texts names;
  for (const auto& [time, name] : begun) names.push_back(name);
  return names;
}

/// A yard in a folder, with the practice unit and its logs. What a plan makes is made once.
class YardByCommand {
 public:
  YardByCommand() {
    writeText(path() / "passphrase", kPassphrase + std::string("\n"));
    for (const auto& [name, text] : session::practiceFiles()) writeText(path() / name, text);
    writeText(path() / "photo.txt", "not a real photo");
    writeText(path() / "signature.txt", "not a real signature");
    Texts make = {"signers", "make", "--yard-key", "yard", "--from", kAgo};
    for (const auto& [key, role] : {std::pair("yard", ""),
                                    {"technician-1", "technician"},
                                    {"technician-2", "technician"},
                                    {"lead-1", "safety-lead"},
                                    {"operator-1", "operator"},
                                    {"clerk-1", "yard-clerk"}}) {
      makeQuickKey(path() / "store", key);
      if (*role == '\0') continue;
      make.insert(make.end(), {"--signer", std::string(key) + ":" + role});
    }
    root_ = done(make);
    root_.pop_back();
    done({"units", "put", (kTests / "files/unit.json").string()});
    done({"attachments", "put", (kTests / "files/attachment.json").string()});
  }

  [[nodiscard]] ProcessResult run(Texts arguments) const {
    arguments.insert(arguments.end(), {"--store", "store", "--passphrase-file", "passphrase"});
    return runHingepin(arguments, path());
  }
  /// Runs what must succeed. @return what it printed
  std::string done(const Texts& arguments) const {
    const ProcessResult result = run(arguments);
    EXPECT_EQ(result.status, 0) << arguments[0] << " " << arguments[1] << ": " << result.diagnostics;
    return result.output;
  }
  /// The script of a plan, as a file beside the store. @return its text
  std::string script(const std::string& plan) const {
    const std::string text = session::scriptOf(kTests / "plans" / (plan + std::string(kEnding))).text;
    writeText(path() / (plan + ".jsonl"), text);
    return text;
  }
  /// A plan's job, after those that it stands after. @return what the program said at its end
  const std::string& work(const std::string& plan) {
    if (const auto known = said_.find(plan); known != said_.end()) return known->second;
    for (const Json& before : planOf(plan).value("after", Json::array())) work(before);
    script(plan);
    return said_[plan] = done({"jobs", "run", plan + ".jsonl"});
  }
  /// A word that the program said at a job's end: "job", "record".
  std::string named(const std::string& plan, const std::string& what) {
    const std::string& text = work(plan);
    const std::size_t at = text.find(what + " ");
    if (at == std::string::npos) return "";
    const std::size_t begin = at + what.size() + 1;
    return text.substr(begin, text.find('\n', begin) - begin);
  }
  Json contentOf(const std::string& plan) {
    return Json::parse(done({"records", "show", named(plan, "record")})).at("content");
  }
  [[nodiscard]] const fs::path& path() const { return folder_.path(); }
  [[nodiscard]] const std::string& root() const { return root_; }

 private:
  TemporaryFolder folder_;
  std::string root_;
  std::map<std::string, std::string> said_;
};

YardByCommand& yard() {
  static YardByCommand shared;
  return shared;
}

class PlanTest : public testing::TestWithParam<std::string> {};

TEST_P(PlanTest, RunsFromItsFirstLineToItsRecord) {
  ASSERT_NE(yard().named(GetParam(), "record"), "");
  const Json content = yard().contentOf(GetParam());
  const Json expected = planOf(GetParam()).at("expect");
  EXPECT_EQ(content.at("phase"), expected.at("phase"));
  EXPECT_EQ(content.contains("tag"), expected.at("phase") != "done");
  EXPECT_EQ(content.at("calibration").is_object(), expected.value("calibrated", false));
  EXPECT_EQ(content.contains("linkage") && content["linkage"].is_object(), expected.value("surveyed", false));
  Texts not_passed;
  for (const Json& each : content.at("tries")) {
    if (each.at("outcome") != "passed") not_passed.push_back(each.at("about"));
  }
  EXPECT_THAT(not_passed, UnorderedElementsAreArray(expected.value("not_passed", Texts())));
  EXPECT_EQ(content.value("failed_step", ""), expected.value("failed_step", ""));
  Texts marks;
  for (const Json& each : content.at("marks")) marks.push_back(each.at("mark"));
  EXPECT_THAT(marks, UnorderedElementsAreArray(expected.value("marks", Texts())));
}

std::string testNameOf(const testing::TestParamInfo<std::string>& plan) {
  std::string name = plan.param;
  std::ranges::replace(name, '-', '_');
  return name;
}
INSTANTIATE_TEST_SUITE_P(Plans, PlanTest, testing::ValuesIn(plans()), testNameOf);

/// The yard's records as files; every plan was run before.
class ExportTest : public testing::Test {
 protected:
  static void SetUpTestSuite() {
    for (const std::string& plan : plans()) yard().work(plan);
    yard().done({"records", "sign", yard().named("main-logged", "record"), "--key", "lead-1", "--role",
                 "safety-lead"});
    yard().done({"records", "export", "exported"});
  }
  static ProcessResult peer(const char* program, const char* script) {
    return runProgram(program, {script, "exported"}, yard().path(), {.most_seconds = 100});
  }
};

/// What "records verify --json" says.
struct Verified {
  std::map<std::string, std::string> standings{};
  std::set<std::string> findings{};
};
Verified verified(Texts arguments) {
  arguments.insert(arguments.begin(), {"records", "verify", "--json"});
  Verified verified;
  std::istringstream lines(yard().done(arguments));
  for (std::string line; std::getline(lines, line);) {
    const Json each = Json::parse(line);
    if (each.contains("finding")) {
      verified.findings.insert(each.at("finding").get<std::string>());
    } else {
      verified.standings[each.at("name")] = each.at("standing");
    }
  }
  return verified;
}

TEST_F(ExportTest, EveryRecordIsTrustedAndNothingIsFound) {
  const Verified here = verified({});
  EXPECT_EQ(here.standings.size(), plans().size() + 1) << "the records, and the further signature";
  EXPECT_THAT(here.standings, Each(Pair(_, "trusted")));
  // The further signature was made in the same store.
  EXPECT_THAT(here.findings, ElementsAre("record-same-phone"));
  EXPECT_THAT(yard().done({"store", "check"}), HasSubstr("Nothing is wrong."));
  const Verified there = verified({"exported", "--root", yard().root()});
  EXPECT_EQ(there.standings, here.standings);
  // What is about people stays behind.
  EXPECT_THAT(there.findings, ElementsAre("personal-not-arrived", "record-same-phone"));
}

TEST_F(ExportTest, NobodyIsTrustedWithoutTheYardsRoot) {
  const ProcessResult result = yard().run({"records", "verify", "exported"});
  EXPECT_EQ(result.status, 1);
  EXPECT_THAT(result.output, Not(HasSubstr("trusted\n")));
}

TEST_F(ExportTest, NpmJoseVerifiesEverySealAndNoFlippedBit) {
  const ProcessResult result = peer("node", HINGEPIN_JOSE_PEER);
  if (result.status == kNotInstalled || result.status == 127) {
    GTEST_SKIP() << "npm's jose is not installed: node, and npm ci in "
                 << fs::path(HINGEPIN_JOSE_PEER).parent_path();
  }
  EXPECT_EQ(result.status, 0) << result.diagnostics;
  std::cout << result.output;
}

TEST_F(ExportTest, JwcryptoVerifiesEverySealAndNoFlippedBit) {
  const ProcessResult result = peer("/usr/bin/python3", HINGEPIN_JWCRYPTO_PEER);
  if (result.status == kNotInstalled || result.status == 127) {
    GTEST_SKIP() << "python3-jwcrypto is not installed";
  }
  EXPECT_EQ(result.status, 0) << result.diagnostics;
  std::cout << result.output;
}

TEST_F(ExportTest, ABitFlippedInAFileIsFoundWhereverItLies) {
  // The first record of its chain can be judged alone.
  const std::string name = yard().named("walk-round", "record");
  const fs::path altered = yard().path() / "altered";
  const fs::path file = altered / "statements" / (name + ".jws.json");
  fs::create_directories(altered / "statements");
  fs::copy(yard().path() / "exported/signers", altered / "signers");
  fs::copy(yard().path() / "exported/statements" / file.filename(), file);
  const Texts verify = {"records", "verify", "altered", "--json", "--root", yard().root()};
  EXPECT_THAT(yard().done(verify), HasSubstr("trusted"));
  const std::string text = readText(file);
  for (std::size_t at = 1; at < text.size(); at += text.size() / 25) {
    std::string flipped = text;
    flipped[at] = static_cast<char>(flipped[at] ^ (1 << (at % 7)));
    writeText(file, flipped);
    const ProcessResult result = yard().run(verify);
    EXPECT_EQ(result.status, 1) << "byte " << at;
    EXPECT_THAT(result.output, ContainsRegex("record-(altered|malformed)")) << "byte " << at;
    EXPECT_THAT(result.output, Not(HasSubstr("trusted"))) << "byte " << at;
  }
}

/// A script that was changed by hand, run as another one.
ProcessResult runChanged(const std::string& plan, const std::string& from, const std::string& to) {
  std::string text = yard().script(plan);
  const std::size_t at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  if (at != std::string::npos) text.replace(at, from.size(), to);
  writeText(yard().path() / "changed.jsonl", text);
  return yard().run({"jobs", "run", "changed.jsonl"});
}

TEST(OrderTest, NoJobBeginsBeforeTheWalkRound) {
  Json unit = Json::parse(readText(kTests / "files/unit.json"));
  unit["unit"]["id"] = "L-28";
  writeText(yard().path() / "new-unit.json", unit.dump());
  yard().done({"units", "put", "new-unit.json"});
  for (const char* plan : {"main-own-routine", "warm-up", "shift-proof", "stops", "after-sensor-work",
                           "after-hydraulic-work", "check-out"}) {
    const ProcessResult result = runChanged(plan, "\"L-27\"", "\"L-28\"");
    EXPECT_EQ(result.status, 2) << plan;
    EXPECT_THAT(result.diagnostics, HasSubstr("walk-round")) << plan;
  }
  EXPECT_THAT(yard().done({"jobs", "list", "--unit", "L-28"}), Not(HasSubstr("running")));
}

TEST(OrderTest, AWalkRoundOfAnotherStartOfThePhoneIsTooOld) {
  yard().work("walk-round");
  const ProcessResult result = runChanged("warm-up", "T06:00:00Z", "T06:01:00Z");
  EXPECT_EQ(result.status, 2);
  EXPECT_THAT(result.diagnostics, HasSubstr("walk-round"));
}

TEST(OrderTest, NobodyConfirmsAloneWhereTheYardDoesNotAllowIt) {
  const ProcessResult result = runChanged("lockout-alone", R"(,"lone_work":"unconfirmed")", "");
  EXPECT_EQ(result.status, 2);
  EXPECT_THAT(result.diagnostics, AllOf(HasSubstr("changed.jsonl:"), HasSubstr("second")));
}

TEST(OrderTest, AScriptThatLeavesOutAPressStopsThere) {
  yard().work("walk-round");
  const ProcessResult result = runChanged("warm-up", "{\"press\":\"work\"}\n", "");
  EXPECT_EQ(result.status, 2);
  EXPECT_THAT(result.diagnostics, AllOf(HasSubstr("changed.jsonl:"), HasSubstr(R"({"press":"work"})")));
}

TEST(TagTest, OfAFailedJobSaysWhatNotToUseAndWhy) {
  for (const char* plan : {"main-failed", "main-abandoned", "shift-proof-failed", "return-check-failed",
                           "lockout-failed", "walk-round-failed"}) {
    const std::string tag = yard().done({"jobs", "tag", yard().named(plan, "job")});
    EXPECT_THAT(tag, AllOf(HasSubstr("L-27"), HasSubstr("GP-2.7"),
                           HasSubstr(yard().named(plan, "record").substr(0, 12)), Not(HasSubstr("{"))))
        << plan;
    EXPECT_THAT(yard().work(plan), HasSubstr(planOf(plan)["expect"]["phase"].get<std::string>())) << plan;
  }
  EXPECT_NE(yard().run({"jobs", "tag", yard().named("main-logged", "job")}).status, 0);
}

TEST(HandOverTest, WhoTookOverEndsTheJobAndThePhoneWasStartedTwice) {
  const Json content = yard().contentOf("main-handed-over");
  const Json& last = content.at("tries").back();
  EXPECT_EQ(content.at("people").at(last.at("by").get<std::size_t>()).at("device"), "phone-3");
  std::set<std::string> starts;
  for (const Json& each : content.at("tries")) starts.insert(each.at("boot").get<std::string>());
  EXPECT_EQ(starts.size(), 2U);
}

TEST(CompareTest, SaysHowTheUnitCameBack) {
  const std::string text = yard().done(
      {"records", "compare", yard().named("check-out", "record"), yard().named("return-check", "record")});
  EXPECT_THAT(text, AllOf(HasSubstr("87 h"), HasSubstr("-55 %"), HasSubstr("-3 mm"), HasSubstr("window")));
}

TEST(PracticeTest, TypedReadingsAreThoseOfTheHeldPracticeUnit) {
  const Json stations = Json::parse(session::practiceFiles().at("stations.json"));
  const Json says = planOf("main-typed").at("says");
  for (const char* load : {"empty", "mass"}) {
    for (const auto& [of_station, of_step] : {std::pair("boom_angle", "-point-angle"),
                                              {"boom_sensor", "-point-sensor"},
                                              {"head_pressure", "-point-head"},
                                              {"rod_pressure", "-point-rod"}}) {
      const Json& said = says.at(load + std::string(of_step));
      for (std::size_t point = 0; point < 5; ++point) {
        EXPECT_EQ(said.is_array() ? said.at(point) : said, stations.at(load).at(point).at(of_station))
            << load << of_step;
      }
    }
  }
}

}  // namespace
}  // namespace hingepin::cli
