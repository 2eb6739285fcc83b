// SPDX-License-Identifier: Apache-2.0
#include "engine/session/script.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "engine/session/moment.h"
#include "tests/engine/session/yard.h"

namespace hingepin::session {
namespace {

constexpr const char* kHeader =
    R"({"format":"hingepin-script/1","procedure":"walk-round","unit":"L-27","people":{"technician-1":{"role":"technician","key":"technician-1"}}})";

TEST(MomentTest, UtcTextComesBack) {
  // RFC 3339 section 5.8 has this moment with two decimals; its count of seconds is from memory.
  EXPECT_EQ(readUtc("1985-04-12T23:20:50.520Z"), 482196050520);
  for (const std::int64_t utc_ms : {0LL, 1LL, 951'782'400'000LL, 4'102'444'799'999LL}) {
    EXPECT_EQ(readUtc(utcText(utc_ms)), utc_ms) << utcText(utc_ms);
  }
}

TEST(MomentTest, WhatIsNoMomentIsNotRead) {
  for (const char* text : {"", "2026-02-29T00:00:00Z", "2026-13-01T00:00:00Z", "2026-01-01T24:00:00Z",
                           "2026-01-01T00:60:00Z", "2026-01-01 00:00:00Z", "2026-01-01T00:00:00",
                           "2026-1-01T00:00:00Z0", "1969-12-31T23:59:59Z", "2026-01-01T00:00:00.000Z"}) {
    EXPECT_FALSE(readUtc(text).has_value()) << text;
  }
}

TEST(ScriptTest, EachKindOfLineIsRead) {
  using procedures::EventType;
  const auto line = [](const char* text) { return need(readScriptLine(text, "script", 7)); };
  EXPECT_EQ(line(R"({"acknowledge":"a-caution"})").type, EventType::Acknowledge);
  EXPECT_EQ(line(R"({"press":"a-step"})").type, EventType::ZoneClear);
  EXPECT_EQ(line(R"({"begin":"a-step","after":"1.5 min"})").after_ms, 90'000);
  const ScriptLine reading = line(R"({"step":"oil","value":"52 Cel","how":"monitor","sure":true})");
  EXPECT_EQ(reading.type, EventType::Reading);
  EXPECT_EQ(reading.value, "52 Cel");
  EXPECT_EQ(reading.how, procedures::How::Monitor);
  EXPECT_TRUE(reading.sure);
  const ScriptLine answer =
      line(R"({"who":"lead-1","step":"note","answer":"written","words":"a dent","files":["a","b"]})");
  EXPECT_EQ(answer.type, EventType::Answer);
  EXPECT_EQ(answer.value, "a dent");
  EXPECT_EQ(answer.files.size(), 2U);
  EXPECT_EQ(answer.number, 7U);
  EXPECT_TRUE(line(R"({"restart":true})").restart);
  EXPECT_EQ(line(R"({"take_over":true,"who":"lead-1"})").type, EventType::TakeOver);
  EXPECT_EQ(line(R"({"abandon":true})").type, EventType::Abandon);
  EXPECT_EQ(line(R"({"go_back":"oil"})").type, EventType::GoBack);
}

TEST(ScriptTest, ALineThatSaysNothingClearIsRefusedWithItsNumber) {
  for (const char* text :
       {R"({})", R"({"step":"oil"})", R"({"step":"oil","value":"1 m","answer":"yes"})",
        R"({"press":"a","begin":"a"})", R"({"press":"a","answer":"yes"})", R"({"value":"1 m"})",
        R"({"acknowledge":"a","words":"b"})", R"({"interrupt":false})", R"({"who":"x","nonsense":1})",
        R"({"press":"a","after":"-1 s"})", R"({"press":"a","after":"1 m"})", R"([])", R"({"press":)"}) {
    const Expected<ScriptLine> line = readScriptLine(text, "script.jsonl", 12);
    ASSERT_FALSE(line.has_value()) << text;
    EXPECT_EQ(line.error().place.line, 12U) << text;
    EXPECT_EQ(line.error().place.file, "script.jsonl") << text;
  }
}

TEST(ScriptTest, TheHeaderNamesWhoIsThere) {
  const ScriptHeader header = need(readScriptHeader(kHeader, "script"));
  EXPECT_EQ(header.in_charge, "technician-1");
  EXPECT_EQ(header.language, "en");
  const auto code = [](std::string text) { return codeOf(readScriptHeader(text, "script")); };
  EXPECT_EQ(code(R"({"format":"hingepin-script/2","people":{}})"), "format-unsupported");
  EXPECT_EQ(code(R"({"format":"hingepin-script/1","people":{"a":{"role":"technician"}},"in_charge":"b"})"),
            "script-person-unknown");
  EXPECT_EQ(
      code(R"({"format":"hingepin-script/1","begun_utc":"today","people":{"a":{"role":"technician"}}})"),
      "script-time-malformed");
  EXPECT_EQ(code(R"({"format":"hingepin-script/1","people":{"a":{}}})"), "json-missing-key");
  EXPECT_EQ(codeOf(readScript("\n\n", "script")), "script-empty");
}

TEST(ScriptTest, BlankLinesCountAndAreLeftOut) {
  const Script script = need(readScript(std::string(kHeader) + "\n\n{\"press\":\"a\"}\r\n", "script"));
  ASSERT_EQ(script.lines.size(), 1U);
  EXPECT_EQ(script.lines.front().number, 3U);
}

TEST(ScriptTest, TheAwaitedLineIsOneThatTheJobTakes) {
  Yard yard;
  yard.says = {{"hours", {"4211 h"}}, {"fuel", {"80 %"}}};
  OpenJob job = yard.begin("walk-round");
  ScriptHeader header = need(readScriptHeader(kHeader, "script"));
  while (!procedures::hasEnded(job.state.phase)) {
    std::string text = awaitedLine(job.procedure, job.state);
    // What only a person knows, filled in.
    const auto fill = [&](const std::string& from, const std::string& with) {
      if (const std::size_t at = text.find(from); at != std::string::npos)
        text.replace(at, from.size(), with);
    };
    fill("... h", "4211 h");
    fill("... %", "80 %");
    fill("... s", "60 s");
    fill(R"(["..."])", "[]");
    fill(R"("words":"...")", R"("words":"none")");
    const std::size_t bar = text.find(" | ");
    if (bar != std::string::npos) text.erase(bar, text.find('"', bar) - bar);
    const ScriptLine line = need(readScriptLine(text, "script", 1));
    procedures::Event event = need(eventOf(header, line, {}, job.state));
    if (event.answer == "taken") event.hashes = {std::string(64, '0')};
    yard.now.at_ms += line.after_ms;
    ASSERT_EQ(codeOf(yard.tell(job, event)), "") << text;
  }
  EXPECT_EQ(awaitedLine(job.procedure, job.state), "");
}

}  // namespace
}  // namespace hingepin::session
