// SPDX-License-Identifier: Apache-2.0
#include "engine/session/profile.h"

#include <gmock/gmock.h>

#include "tests/engine/procedures/samples.h"
#include "tests/engine/session/yard.h"

namespace hingepin::session {
namespace {

std::string unitWith(const std::string& patch) {
  return procedures::samples::patched(testFile("files/unit.json"), patch);
}

TEST(ProfileTest, AUnitSaysWhatItsMonitorShowsAndHowItIsTaught) {
  const UnitProfile unit = need(readUnitProfile(testFile("files/unit.json"), "unit.json", folder::edge()));
  EXPECT_EQ(unit.id, "L-27");
  EXPECT_EQ(unit.monitor.front().quantity, "indication");
  EXPECT_EQ(unit.monitor.front().step, "5 kg");
  EXPECT_THAT(unit.teaching, testing::Contains("logged"));
  EXPECT_TRUE(unit.practice);
  // What the block of the calibration says need not be said twice; what is said comes first.
  EXPECT_EQ(unit.entries.at("rated-payload"), "4500 kg");
  EXPECT_EQ(unit.entries.at("window-low"), "-5 deg");
  const UnitProfile silent = need(
      readUnitProfile(unitWith(R"([{"op": "remove", "path": "/entries"}])"), "unit.json", folder::edge()));
  EXPECT_EQ(silent.entries.at("window-low"), "-8 deg");
}

TEST(ProfileTest, AFaultIsNamedWithItsPlace) {
  const auto fault = [](const std::string& patch) {
    const auto read = readUnitProfile(unitWith(patch), "unit.json", folder::edge());
    return read ? std::string() : read.error().message.code + " " + read.error().place.pointer;
  };
  EXPECT_EQ(fault(R"([{"op": "replace", "path": "/format", "value": "hingepin-unit/2"}])"),
            "format-unsupported /format");
  EXPECT_EQ(fault(R"([{"op": "add", "path": "/colour", "value": "red"}])"), "json-unknown-key /colour");
  EXPECT_EQ(fault(R"([{"op": "remove", "path": "/unit/rated_payload"}])"), "json-missing-key /unit");
  EXPECT_EQ(fault(R"([{"op": "replace", "path": "/unit/rated_payload", "value": "4500 m"}])"),
            "unit-wrong-dimension /unit/rated_payload");
  EXPECT_EQ(fault(R"([{"op": "replace", "path": "/monitor/0/quantity", "value": "weight"}])"),
            "quantity-unknown /monitor/0/quantity");
  EXPECT_EQ(fault(R"([{"op": "replace", "path": "/monitor/0/unit", "value": "bar"}])"),
            "unit-wrong-dimension /monitor/0/unit");
  EXPECT_EQ(fault(R"([{"op": "replace", "path": "/monitor/0/unit", "value": "ton"}])"),
            "unit-unknown /monitor/0/unit");
  EXPECT_EQ(fault(R"([{"op": "replace", "path": "/monitor/0/step", "value": "5 bar"}])"),
            "unit-wrong-dimension /monitor/0/step");
  EXPECT_EQ(fault(R"([{"op": "replace", "path": "/entries/oil-minimum", "value": "warm"}])"),
            "quantity-malformed /entries/oil-minimum");
  EXPECT_EQ(fault(R"([{"op": "replace", "path": "/recheck_after", "value": "90 kg"}])"),
            "unit-wrong-dimension /recheck_after");
  EXPECT_EQ(fault(R"([{"op": "replace", "path": "/practice", "value": false}])"),
            "json-wrong-kind /practice");
  EXPECT_EQ(fault(R"([{"op": "remove", "path": "/unit"}])"), "json-missing-key ");
}

TEST(ProfileTest, TheYardSaysByWhatProofsAreJudgedWhereAUnitSaysNothing) {
  const std::string yard = R"json({"format":"hingepin-yard/1","proof":{
    "tolerance":{"scheme":"oiml-r51","class":"Y(b)","interval":"20 kg","stage":"in-service"},
    "decision":{"rule":"guarded","confidence":0.9}}})json";
  const std::string silent = testFile("files/unit.json");
  const auto together = [&](const std::string& unit) {
    return need(readUnitProfile(need(withYard(unit, yard)), "unit.json", folder::edge()));
  };
  const proof::Terms all = together(silent).terms;
  EXPECT_EQ(std::get<proof::ClassLimit>(*all.tolerance).accuracy_class, "Y(b)");
  EXPECT_EQ(all.decision.rule, proof::Rule::Guarded);
  const proof::Terms own =
      together(
          unitWith(
              R"([{"op": "add", "path": "/proof", "value": {"tolerance": {"scheme": "percent", "limit": "2 %"}}}])"))
          .terms;
  EXPECT_DOUBLE_EQ(std::get<proof::PercentLimit>(*own.tolerance).limit.inOnes(), 0.02);
  EXPECT_EQ(own.decision.confidence, 0.9) << "of which the unit says nothing";
  const std::string full = unitWith(
      R"([{"op": "add", "path": "/proof", "value": {"tolerance": {"scheme": "percent", "limit": "2 %"}, "decision": {"rule": "simple"}}}])");
  EXPECT_EQ(need(withYard(full, yard)), full) << "as it is, to the byte";
  EXPECT_EQ(need(withYard(silent, "")), silent);
  EXPECT_EQ(need(withYard(silent, R"({"format":"hingepin-yard/1"})")), silent);
  EXPECT_EQ(together(silent).entries, need(readUnitProfile(silent, "unit.json", folder::edge())).entries);
}

TEST(ProfileTest, AFaultInTheYardsProfileIsNamedWithItsPlace) {
  const auto fault = [](const std::string& text) {
    const auto read = readYardProfile(text, "yard.json", folder::edge());
    return read ? std::string() : read.error().message.code + " " + read.error().place.pointer;
  };
  EXPECT_EQ(fault(R"({"format":"hingepin-yard/1"})"), "");
  EXPECT_EQ(fault(R"({"format":"hingepin-unit/1"})"), "format-unsupported /format");
  EXPECT_EQ(fault(R"({"format":"hingepin-yard/1","unit":{}})"), "json-unknown-key /unit");
  EXPECT_EQ(fault(R"({"format":"hingepin-yard/1","proof":{"decision":{"rule":"mild"}}})"),
            "word-unknown /proof/decision/rule");
  EXPECT_EQ(
      fault(R"({"format":"hingepin-yard/1","proof":{"tolerance":{"scheme":"percent","limit":"90 %"}}})"),
      "value-out-of-range /proof/tolerance/limit");
}

TEST(ProfileTest, EveryShortenedTextIsRefused) {
  const std::string unit = testFile("files/unit.json");
  // The last byte is the line end after the object.
  for (std::size_t length = 0; length + 1 < unit.size(); length += 7) {
    EXPECT_FALSE(readUnitProfile(unit.substr(0, length), "unit.json", folder::edge()).has_value()) << length;
  }
  const std::string attachment = testFile("files/attachment.json");
  for (std::size_t length = 0; length + 1 < attachment.size(); ++length) {
    EXPECT_FALSE(readAttachmentProfile(attachment.substr(0, length), "a.json", folder::edge()).has_value())
        << length;
  }
}

}  // namespace
}  // namespace hingepin::session
