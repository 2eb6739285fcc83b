// SPDX-License-Identifier: Apache-2.0
// Whole jobs through the program itself: each plan of plans/ becomes a script, the script a job, the job a
// record, and the record is verified from the store, from exported files, and by npm's jose.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>
#include <vector>

#include "tests/engine/cli/process.h"
#include "tests/engine/session/practice.h"

namespace hingepin::cli {
namespace {

namespace fs = std::filesystem;
using ::testing::HasSubstr;
using ::testing::UnorderedElementsAreArray;
using Json = nlohmann::json;

const fs::path kPlans = fs::path(HINGEPIN_SOURCE_DIR) / "tests/engine/session/plans";
const fs::path kProfiles = fs::path(HINGEPIN_SOURCE_DIR) / "tests/engine/session/files";
constexpr const char* kAgo = "2026-01-01T00:00:00Z";
constexpr int kNotInstalled = 77;

std::vector<std::string> plans() {
  std::vector<std::string> names;
  constexpr std::string_view kEnding = ".plan.json";
  for (const auto& entry : fs::directory_iterator(kPlans)) {
    const std::string name = entry.path().filename().string();
    if (name.ends_with(kEnding)) names.push_back(name.substr(0, name.size() - kEnding.size()));
  }
  std::ranges::sort(names);
  return names;
}

/// A yard of its own in a folder, with the practice unit and its logs.
class YardByCommand {
 public:
  YardByCommand() {
    writeText(folder_.path() / "passphrase", "seven brave otters hum\n");
    for (const auto& [name, text] : session::practiceFiles()) writeText(folder_.path() / name, text);
    writeText(folder_.path() / "photo.txt", "not a real photo");
    writeText(folder_.path() / "signature.txt", "not a real signature");
    std::vector<std::string> make = {"signers", "make", "--yard-key", "yard", "--from", kAgo};
    for (const auto& [key, role] : {std::pair("yard", ""),
                                    {"technician-1", "technician"},
                                    {"technician-2", "technician"},
                                    {"lead-1", "safety-lead"},
                                    {"operator-1", "operator"},
                                    {"clerk-1", "yard-clerk"}}) {
      done({"keys", "make", key});
      if (*role == '\0') continue;
      make.insert(make.end(), {"--signer", std::string(key) + ":" + role});
    }
    root_ = done(make);
    root_.pop_back();
    done({"units", "put", (kProfiles / "unit.json").string()});
    done({"attachments", "put", (kProfiles / "attachment.json").string()});
  }

  [[nodiscard]] ProcessResult run(std::vector<std::string> arguments) const {
    arguments.insert(arguments.end(), {"--store", "store", "--passphrase-file", "passphrase"});
    return runProgram(HINGEPIN_PROGRAM, arguments, folder_.path(), {.most_seconds = 200});
  }
  /// Runs what must succeed. @return what it printed
  std::string done(const std::vector<std::string>& arguments) const {
    const ProcessResult result = run(arguments);
    EXPECT_EQ(result.status, 0) << arguments[0] << " " << arguments[1] << ": " << result.diagnostics;
    return result.output;
  }
  /// A plan's job from its first line to its record. @return the record's name
  std::string work(const std::string& plan) const {
    const ProcessResult written =
        runProgram(HINGEPIN_WRITE_SCRIPT, {(kPlans / (plan + ".plan.json")).string()}, folder_.path());
    EXPECT_EQ(written.status, 0) << written.diagnostics;
    writeText(folder_.path() / (plan + ".jsonl"), written.output);
    const std::string said = done({"jobs", "run", plan + ".jsonl"});
    const std::size_t at = said.find("record ");
    return at == std::string::npos ? "" : said.substr(at + 7, 64);
  }
  [[nodiscard]] const fs::path& path() const { return folder_.path(); }
  [[nodiscard]] const std::string& root() const { return root_; }

 private:
  TemporaryFolder folder_;
  std::string root_;
};

class PlanTest : public testing::TestWithParam<std::string> {};

TEST_P(PlanTest, RunsFromItsFirstLineToARecordThatVerifies) {
  const YardByCommand yard;
  const Json plan = Json::parse(readText(kPlans / (GetParam() + ".plan.json")));
  for (const Json& before : plan.value("after", Json::array())) ASSERT_NE(yard.work(before), "");
  const std::string record = yard.work(GetParam());
  ASSERT_NE(record, "");

  const Json content = Json::parse(yard.done({"records", "show", record})).at("content");
  const Json expected = plan.at("expect");
  EXPECT_EQ(content.at("phase"), expected.at("phase"));
  EXPECT_EQ(content.contains("tag"), expected.at("phase") != "done");
  EXPECT_EQ(content.at("calibration").is_object(), expected.value("calibrated", false));
  std::vector<std::string> not_passed;
  for (const Json& each : content.at("tries")) {
    if (each.at("outcome") != "passed") not_passed.push_back(each.at("about"));
  }
  EXPECT_THAT(not_passed,
              UnorderedElementsAreArray(expected.value("not_passed", std::vector<std::string>())));
  EXPECT_EQ(content.value("failed_step", ""), expected.value("failed_step", ""));
  if (expected.contains("marks")) {
    std::vector<std::string> marks;
    for (const Json& each : content.at("marks")) marks.push_back(each.at("mark"));
    EXPECT_THAT(marks, UnorderedElementsAreArray(expected.at("marks").get<std::vector<std::string>>()));
  }

  yard.done({"records", "verify"});
  yard.done({"store", "check"});
  yard.done({"records", "export", "exported"});
  EXPECT_THAT(yard.done({"records", "verify", "exported", "--root", yard.root()}), HasSubstr(record));
  // Without the yard's root nobody is trusted.
  EXPECT_EQ(yard.run({"records", "verify", "exported"}).status, 1);
  const ProcessResult peer = runProgram("node", {HINGEPIN_JOSE_PEER, "exported"}, yard.path());
  const bool installed = peer.status != kNotInstalled && peer.status != 127;
  EXPECT_TRUE(!installed || peer.status == 0) << peer.diagnostics;
}

std::string testNameOf(const testing::TestParamInfo<std::string>& plan) {
  std::string name = plan.param;
  std::ranges::replace(name, '-', '_');
  return name;
}
INSTANTIATE_TEST_SUITE_P(Plans, PlanTest, testing::ValuesIn(plans()), testNameOf);

TEST(PeerTest, NpmJoseIsThereToVerifyThePlansRecords) {
  const TemporaryFolder folder;
  const ProcessResult peer = runProgram("node", {HINGEPIN_JOSE_PEER, folder.path().string()}, folder.path());
  if (peer.status == kNotInstalled || peer.status == 127) {
    GTEST_SKIP() << "npm's jose is not installed: node, and npm ci in "
                 << fs::path(HINGEPIN_JOSE_PEER).parent_path();
  }
  EXPECT_NE(peer.status, 0) << "a folder without records";
}

}  // namespace
}  // namespace hingepin::cli
