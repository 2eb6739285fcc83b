// SPDX-License-Identifier: Apache-2.0
#include "engine/base/strict_json.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "engine/base/text.h"

namespace hingepin {
namespace {

std::string codeOf(const std::string& text) {
  const Expected<JsonDocument> document = readJson(text, "f.json");
  return document ? "" : document.error().message.code;
}

// RFC 8259 sections 2 to 7.
TEST(StrictJsonTest, WhatTheGrammarAllowsIsRead) {
  for (const std::string text :
       {"{}", "[]", "0", "-0", "1E+5", "\"\"", "null", " \t\r\n true \n", "[1,[2,{\"a\":false}]]",
        "\"\\u00e9\\ud83d\\ude00\\/\"", "\xEF\xBB\xBF{}", "\"\xF0\x9F\x98\x80\""}) {
    EXPECT_EQ(codeOf(text), "") << text;
  }
}

TEST(StrictJsonTest, WhatTheGrammarForbidsIsRefused) {
  for (const std::string text :
       {"",          " ",          "{",        "[1,]",       "{\"a\":1,}",  "{'a':1}",
        "{a:1}",     "[01]",       "[+1]",     "[.5]",       "[1.]",        "[0x1]",
        "[NaN]",     "[Infinity]", "// c\n{}", "{} /* c */", "{} {}",       "[1 2]",
        "{\"a\" 1}", "{\"a\":}",   "\"\n\"",   "\"\\x41\"",  "\"\\ud800\"", "[1e999]",
        "nul",       "truefalse",  "]",        "[\"a",       "\xEF\xBB{}",  "{}\xEF\xBB\xBF"}) {
    EXPECT_NE(codeOf(text), "") << text;
  }
  EXPECT_EQ(codeOf(std::string("{}\0x", 4)), "json-syntax");
}

TEST(StrictJsonTest, InvalidUtf8IsNamedAsSuch) {
  // Table 3-7 of the Unicode Standard 15: overlong, surrogate, beyond U+10FFFF, cut short, stray
  // continuation.
  for (const std::string bad :
       {"\xC0\x80", "\xE0\x80\x80", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\xE2\x82", "\x80", "\xFF"}) {
    EXPECT_EQ(codeOf("\"" + bad + "\""), "not-utf8");
  }
  EXPECT_EQ(firstBadUtf8("ab\xC3\xA9\xED\x9F\xBF\xEE\x80\x80\xF4\x8F\xBF\xBF"), std::string::npos);
}

TEST(StrictJsonTest, FaultsCarryLineAndColumn) {
  const Expected<JsonDocument> syntax = readJson("{\n  \"\xC3\xA9\": 1,,\n}", "f.json");
  ASSERT_FALSE(syntax);
  EXPECT_EQ(syntax.error().place.file, "f.json");
  EXPECT_EQ(syntax.error().place.line, 2U);
  EXPECT_EQ(syntax.error().place.column, 10U);  // characters, not bytes

  const Expected<JsonDocument> duplicate =
      readJson("{\"x\": [0, {\n  \"a/b\": 1,\n  \"a/b\": 2}]}", "f.json");
  ASSERT_FALSE(duplicate);
  EXPECT_EQ(duplicate.error().message.code, "json-duplicate-key");
  EXPECT_EQ(duplicate.error().place.line, 3U);
  EXPECT_EQ(duplicate.error().place.column, 3U);
  EXPECT_EQ(duplicate.error().place.pointer, "/x/1/a~1b");
}

TEST(StrictJsonTest, ValuesKnowTheirPlace) {
  const Expected<JsonDocument> document =
      readJson("{\"a\": [1, 22 ,\n  \"s\\\"\\\\\"],\n \"b\":{\"c\":true},\"d\":-1.5e3\n}", "f.json");
  ASSERT_TRUE(document);
  const auto at = [&](const char* pointer) {
    const Place place = document->place(pointer);
    return std::to_string(place.line) + ":" + std::to_string(place.column);
  };
  EXPECT_EQ(at(""), "1:1");
  EXPECT_EQ(at("/a"), "1:7");
  EXPECT_EQ(at("/a/0"), "1:8");
  EXPECT_EQ(at("/a/1"), "1:11");
  EXPECT_EQ(at("/a/2"), "2:3");
  EXPECT_EQ(at("/b/c"), "3:11");
  EXPECT_EQ(at("/d"), "3:21");
  EXPECT_EQ(at("/a/9"), "1:7");
  EXPECT_EQ(at("/b/nothing/more"), "3:6");
  EXPECT_EQ(readJson("\"abc\"", "f")->root.offset, 0U);
}

TEST(StrictJsonTest, DeepNestingIsAnErrorNotACrash) {
  EXPECT_EQ(codeOf(std::string(kMostJsonDepth, '[') + std::string(kMostJsonDepth, ']')), "");
  EXPECT_EQ(codeOf(std::string(kMostJsonDepth + 1, '[') + std::string(kMostJsonDepth + 1, ']')),
            "json-too-deep");
  EXPECT_EQ(codeOf(std::string(5000000, '[')), "json-too-deep");
  std::string objects;
  for (int level = 0; level < 100000; ++level) objects += "{\"a\":";
  EXPECT_EQ(codeOf(objects), "json-too-deep");
}

TEST(StrictJsonTest, ManyKeysAreReadQuickly) {
  std::string text = "{";
  for (int key = 0; key < 100000; ++key) text.append(1, '"').append(std::to_string(key)).append("\":0,");
  EXPECT_EQ(codeOf(text + "\"x\":0}"), "");
  EXPECT_EQ(codeOf(text + "\"7\":0}"), "json-duplicate-key");
}

}  // namespace
}  // namespace hingepin
