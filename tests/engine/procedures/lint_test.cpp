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

/// Every text code that a file uses.
TextCodes codesOf(const Procedure& procedure) {
  TextCodes codes = {procedure.title, procedure.comes_first, procedure.tag};
  codes.insert(procedure.tools.begin(), procedure.tools.end());
  for (const Variant& variant : procedure.variants) codes.insert(variant.text);
  for (const Caution& caution : procedure.cautions) {
    codes.insert({caution.hazard, caution.consequence, caution.avoidance});
  }
  for (const auto* steps : {&procedure.steps, &procedure.make_safe}) {
    for (const Step& step : *steps) {
      codes.insert({step.text, step.detail, step.zone_clear});
      if (step.on_failure) codes.insert(step.on_failure->mark);
      for (const Answer& answer : step.answers) codes.insert(answer.text);
    }
  }
  return codes;
}

TEST(LintTest, ExampleOfTheDescriptionHasNoFinding) {
  const Procedure procedure = procedureOf(exampleText());
  const TextCodes codes = codesOf(procedure);
  EXPECT_THAT(told(lint(procedure, &codes)), testing::IsEmpty());
}

TEST(LintTest, ProcedureWithEveryKindOfStepAndCheckHasNoFinding) {
  const Procedure procedure = procedureOf(everythingText());
  const TextCodes codes = codesOf(procedure);
  EXPECT_THAT(told(lint(procedure, &codes)), testing::IsEmpty());
}

TEST(LintTest, TextThatNoCatalogueHasIsNamed) {
  const Procedure procedure = procedureOf(exampleText());
  TextCodes codes = codesOf(procedure);
  codes.erase("hold-still");
  codes.erase("oil-too-cold");
  codes.erase("boom-moves-avoidance");
  EXPECT_THAT(told(lint(procedure, &codes)),
              testing::UnorderedElementsAre("text-code-unknown /steps/4/text",
                                            "text-code-unknown /steps/2/on_failure/mark",
                                            "text-code-unknown /cautions/0/avoidance"));
}

struct Spoiled {
  const char* what;
  const char* patch;    ///< RFC 6902
  const char* finding;  ///< the only one
};

class SpoiledTest : public testing::TestWithParam<Spoiled> {};

TEST_P(SpoiledTest, HasExactlyThatFindingWithItsMend) {
  const Procedure procedure = procedureOf(patched(everythingText(), GetParam().patch));
  const std::vector<Finding> findings = lint(procedure, nullptr);
  EXPECT_THAT(told(findings), testing::ElementsAre(GetParam().finding));
  for (const Finding& finding : findings) EXPECT_EQ(finding.mend.code, finding.problem.code + "-mend");
}

INSTANTIATE_TEST_SUITE_P(Rules, SpoiledTest,
                         testing::Values(Spoiled{
                             "placeholder", R"([{"op":"add","path":"/steps/1/only","value":["nowhere"]}])",
                             "x"}),
                         [](const auto& row) {
                           std::string name = row.param.what;
                           std::ranges::replace(name, '-', '_');
                           return name;
                         });

}  // namespace
}  // namespace hingepin::procedures
