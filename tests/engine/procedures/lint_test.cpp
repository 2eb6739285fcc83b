// SPDX-License-Identifier: Apache-2.0
#include "engine/procedures/lint.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>

#include "tests/engine/procedures/samples.h"

namespace hingepin::procedures {
namespace {

using samples::everythingText;
using samples::exampleText;
using samples::patched;
using samples::procedureOf;

std::vector<std::string> told(const std::vector<Finding>& findings) {
  std::vector<std::string> lines;
  for (const Finding& finding : findings) lines.push_back(finding.problem.code + " " + finding.pointer);
  return lines;
}

TEST(LintTest, ExampleOfTheDescriptionHasNoFinding) {
  const Procedure procedure = procedureOf(exampleText());
  const TextCodes codes = textCodesOf(procedure);
  EXPECT_THAT(told(lint(procedure, &codes)), testing::IsEmpty());
}

TEST(LintTest, ProcedureWithEveryKindOfStepAndCheckHasNoFinding) {
  const Procedure procedure = procedureOf(everythingText());
  const TextCodes codes = textCodesOf(procedure);
  EXPECT_THAT(told(lint(procedure, &codes)), testing::IsEmpty());
}

TEST(LintTest, TextThatNoCatalogueHasIsNamed) {
  const Procedure procedure = procedureOf(exampleText());
  TextCodes codes = textCodesOf(procedure);
  codes.erase("hold-still");
  codes.erase("oil-too-cold");
  codes.erase("boom-moves-avoidance");
  EXPECT_THAT(told(lint(procedure, &codes)),
              testing::UnorderedElementsAre("text-code-unknown /steps/4/text",
                                            "text-code-unknown /steps/2/on_failure/mark",
                                            "text-code-unknown /cautions/0/avoidance"));
}

// files/spoiled.json: [what is wrong, RFC 6902 patch of everything.json, the one finding that must come].
TEST(LintTest, EachSpoiledProcedureHasExactlyItsFinding) {
  const auto rows =
      nlohmann::ordered_json::parse(samples::fileText("tests/engine/procedures/files/spoiled.json"));
  ASSERT_GT(rows.size(), 60U);
  for (const auto& row : rows) {
    SCOPED_TRACE(row[0].get<std::string>());
    const std::vector<Finding> findings =
        lint(procedureOf(patched(everythingText(), row[1].dump())), nullptr);
    EXPECT_THAT(told(findings), testing::ElementsAre(row[2].get<std::string>()));
  }
}

TEST(LintTest, EveryFindingHasItsMendUnderTheSameValues) {
  const auto rows =
      nlohmann::ordered_json::parse(samples::fileText("tests/engine/procedures/files/spoiled.json"));
  for (const auto& row : rows) {
    for (const Finding& finding : lint(procedureOf(patched(everythingText(), row[1].dump())), nullptr)) {
      EXPECT_TRUE(finding.mend.code.starts_with("mend-")) << finding.problem.code;
      EXPECT_EQ(finding.mend.values.size(), finding.problem.values.size());
    }
  }
}

}  // namespace
}  // namespace hingepin::procedures
