// SPDX-License-Identifier: Apache-2.0
#include "engine/procedures/procedure.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>

#include "engine/procedures/lint.h"
#include "tests/engine/procedures/samples.h"
#include "tests/engine/soak.h"

namespace hingepin::procedures {
namespace {

using samples::everythingText;
using samples::exampleText;
using samples::patched;
using testing::Eq;

TEST(ProcedureTest, ExampleOfTheDescriptionIsReadAsItStands) {
  const Procedure procedure = samples::procedureOf(exampleText());
  EXPECT_EQ(procedure.id, "example-shift-proof");
  EXPECT_EQ(procedure.version, 1);
  EXPECT_EQ(procedure.steps.size(), 12U);
  const Step& oil = *findStep(procedure.steps, "oil");
  EXPECT_EQ(oil.pointer, "/steps/2");
  EXPECT_EQ(oil.accept->low->entry, "oil-minimum");
  EXPECT_TRUE(oil.on_failure->goes_on_then);
  EXPECT_EQ(findStep(procedure.steps, "lower")->repeat->times, 3);
  EXPECT_TRUE(findStep(procedure.steps, "lift")->moves);
}

struct Malformed {
  const char* what;
  const char* patch;
  const char* code;
  const char* pointer;
};

class MalformedTest : public testing::TestWithParam<Malformed> {};

TEST_P(MalformedTest, IsRefusedWithCodeAndPlace) {
  const Expected<Procedure> read = readProcedure(patched(exampleText(), GetParam().patch), "bad.json");
  ASSERT_FALSE(read.has_value());
  EXPECT_EQ(read.error().message.code, GetParam().code);
  EXPECT_EQ(read.error().place.pointer, GetParam().pointer);
  EXPECT_GT(read.error().place.line, 0U);
  EXPECT_GT(read.error().place.column, 0U);
}

INSTANTIATE_TEST_SUITE_P(
    Reader, MalformedTest,
    testing::Values(
        Malformed{"unknown-key", R"([{"op":"add","path":"/extra","value":1}])", "json-unknown-key", "/extra"},
        Malformed{"key-of-another-kind", R"([{"op":"add","path":"/steps/1/unit","value":"kg"}])",
                  "json-unknown-key", "/steps/1/unit"},
        Malformed{"check-opens", R"([{"op":"add","path":"/steps/8/opens","value":["overhead"]}])",
                  "json-unknown-key", "/steps/8/opens"},
        Malformed{"no-tag", R"([{"op":"remove","path":"/tag"}])", "json-missing-key", ""},
        Malformed{"other-format", R"([{"op":"replace","path":"/format","value":"hingepin-procedure/2"}])",
                  "format-unknown", "/format"},
        Malformed{"prose", R"([{"op":"replace","path":"/steps/1/text","value":"Lower the bucket."}])",
                  "id-malformed", "/steps/1/text"},
        Malformed{"half-a-version", R"([{"op":"replace","path":"/version","value":1.5}])",
                  "count-out-of-range", "/version"},
        Malformed{"kind", R"([{"op":"replace","path":"/steps/1/kind","value":"code"}])", "word-unknown",
                  "/steps/1/kind"},
        Malformed{"hazard", R"([{"op":"replace","path":"/steps/3/opens/0","value":"boredom"}])",
                  "word-unknown", "/steps/3/opens/0"},
        Malformed{"no-limit", R"([{"op":"replace","path":"/steps/2/accept","value":{}}])", "limit-missing",
                  "/steps/2/accept"},
        Malformed{"false-flag", R"([{"op":"add","path":"/steps/1/near","value":false}])", "json-wrong-kind",
                  "/steps/1/near"},
        Malformed{"mark", R"([{"op":"add","path":"/on_failure/mark","value":"why"}])", "mark-without-go-on",
                  "/on_failure/mark"},
        Malformed{"two-of", R"([{"op":"add","path":"/steps/8/check/of/0","value":"oil"}])", "list-too-long",
                  "/steps/8/check/of"},
        Malformed{"default-and-unit", R"([{"op":"add","path":"/entries/0/default","value":"1 kg"}])",
                  "default-or-unit", "/entries/0"},
        Malformed{"both-counts",
                  R"([{"op":"replace","path":"/steps/8/check","value":{"kind":"at-least","of":["shown"]}}])",
                  "value-or-count", "/steps/8/check"},
        Malformed{"nobody", R"([{"op":"replace","path":"/roles/run","value":[]}])", "list-too-short",
                  "/roles/run"}),
    [](const auto& row) {
      std::string name = row.param.what;
      std::ranges::replace(name, '-', '_');
      return name;
    });

TEST(ProcedureTest, DamagedFilesAreRefusedOrReadButNeverCrash) {
  const std::string whole = everythingText();
  std::mt19937 random(20240611);
  const auto below = [&](std::size_t bound) { return random() % bound; };
  for (unsigned round = 0; round < cases(800); ++round) {
    std::string text = whole;
    switch (below(4)) {
      case 0:
        text.resize(below(text.size()));
        break;
      case 1:
        text[below(text.size())] = static_cast<char>(below(256));
        break;
      case 2:
        text.erase(below(text.size()), 1 + below(40));
        break;
      default:
        text.insert(below(text.size()), text.substr(below(text.size()), below(60)));
    }
    const Expected<Procedure> read = readProcedure(text, "damaged.json");
    if (read) {
      const std::vector<Finding> findings = lint(*read, nullptr);
      for (const Finding& finding : findings) EXPECT_FALSE(finding.problem.code.empty());
    } else {
      EXPECT_FALSE(read.error().message.code.empty());
      EXPECT_GT(read.error().place.line, 0U) << read.error().message.code;
    }
  }
}

}  // namespace
}  // namespace hingepin::procedures
