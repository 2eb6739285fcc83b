// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <string>

#include "tests/engine/cli/process.h"

namespace hingepin::cli {
namespace {

using ::testing::HasSubstr;

const std::string kMasses =
    R"("masses": [{"reference": "2000 kg", "reference_u": "1 kg",
                   "indications": ["1998 kg", "2000 kg", "2003 kg"]}])";

ProcessResult proveText(const std::string& text, bool json = true) {
  std::ofstream(practiceFolder() / "proof.json") << text;
  std::vector<std::string> arguments = {"prove", "proof.json"};
  if (json) arguments.emplace_back("--json");
  return runHingepin(arguments, practiceFolder());
}

std::string proofWith(
    const std::string& rest,
    const std::string& tolerance = R"({"scheme": "percent", "limit": "1 %", "of": "reference"})") {
  return R"({"format": "hingepin-proof/1", "unit": "L-27", "rated_payload": "4500 kg", "tolerance": )" +
         tolerance + ", " + rest + "}";
}

TEST(ProveCommandTest, JsonHasTheKeysOfTheContract) {
  const ProcessResult proved =
      proveText(proofWith(kMasses + R"(, "zero_indications": ["5 kg", "0 kg", "5 kg"],
                     "trucks": [{"gross": "36120 kg", "tare": "13460 kg", "scale_interval": "20 kg",
                                 "indications": ["4480 kg", "4535 kg"]}])"));
  ASSERT_EQ(proved.status, 0) << proved.diagnostics;
  const auto json = nlohmann::json::parse(proved.output);
  EXPECT_EQ(json.at("verdict"), "does-not-hold");
  EXPECT_EQ(json.at("masses").at(0).at("verdict"), "holds");
  EXPECT_EQ(json.at("masses").at(0).at("error"), "0.333 kg");
  EXPECT_EQ(json.at("masses").at(0).at("repeatability"), "2.517 kg");
  EXPECT_EQ(json.at("masses").at(0).at("limit"), "20 kg");
  EXPECT_EQ(json.at("trucks").at(0).at("net"), "22660 kg");
  EXPECT_EQ(json.at("trucks").at(0).at("verdict"), "does-not-hold");
  for (const char* key : {"expanded_uncertainty", "probability_of_conformity"}) {
    EXPECT_TRUE(json.at("masses").at(0).contains(key));
    EXPECT_TRUE(json.at("trucks").at(0).contains(key));
  }
  EXPECT_TRUE(json.at("span_factor").is_number());
  EXPECT_TRUE(json.at("span_factor_u").is_number());
  EXPECT_TRUE(json.at("zero").is_string());
  EXPECT_TRUE(json.at("zero_u").is_string());
  EXPECT_FALSE(json.contains("reason"));
  EXPECT_THAT(std::string(json.at("note")), HasSubstr("legal for trade"));
}

TEST(ProveCommandTest, OneLevelHasNullSpanAndZeroAndAReason) {
  const auto json = nlohmann::json::parse(proveText(proofWith(kMasses)).output);
  for (const char* key : {"span_factor", "span_factor_u", "zero", "zero_u"})
    EXPECT_TRUE(json.at(key).is_null());
  EXPECT_THAT(std::string(json.at("reason")), HasSubstr("two loads"));
  EXPECT_EQ(json.at("verdict"), "holds");
}

TEST(ProveCommandTest, StatusSaysWhetherTheFileOrItsReadingsAreAtFault) {
  EXPECT_EQ(proveText(proofWith(kMasses)).status, 0);
  EXPECT_EQ(proveText(proofWith(R"("masses": [])")).status, 1);
  const ProcessResult beyond = proveText(
      proofWith(kMasses, R"({"scheme": "steps", "steps": [{"up_to": "1000 kg", "limit": "20 kg"}]})"));
  EXPECT_EQ(beyond.status, 1);
  EXPECT_THAT(beyond.diagnostics, HasSubstr("/masses/0: "));
  EXPECT_EQ(nlohmann::json::parse(beyond.output).at("error").at("code"), "load-beyond-tolerance");
  EXPECT_EQ(proveText("{").status, 2);
  EXPECT_EQ(proveText(proofWith(R"("masses": 3)")).status, 2);
  EXPECT_EQ(proveText(proofWith(R"("mass": [])")).status, 2);
  EXPECT_EQ(runHingepin({"prove", "there-is-none.json"}, practiceFolder()).status, 2);
  EXPECT_EQ(runHingepin({"prove"}, practiceFolder()).status, 2);
}

TEST(ProveCommandTest, PersonReadsVerdictWhatToEnterAndThatItIsNotLegalForTrade) {
  const ProcessResult said =
      proveText(proofWith(kMasses + R"(, "when": "as-found", "zero_indications": ["0 kg", "1 kg"])"), false);
  ASSERT_EQ(said.status, 0) << said.diagnostics;
  for (const char* part :
       {"L-27, as found: holds", "2000 kg", "What to enter", "span factor", "legal for trade"})
    EXPECT_THAT(said.output, HasSubstr(part));
}

}  // namespace
}  // namespace hingepin::cli
