// SPDX-License-Identifier: Apache-2.0
#include "engine/records/canonical_json.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <bit>
#include <charconv>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <limits>

#include "engine/base/random.h"
#include "engine/records/encoding.h"
#include "tests/reference/records.h"

namespace hingepin::records {
namespace {

namespace fs = std::filesystem;

const fs::path kVectors = fs::path(HINGEPIN_SOURCE_DIR) / ".." / "shared" / "reference" / "crypto" / "jcs";

std::string readFile(const fs::path& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

std::string canonicalOf(std::string text) {
  const Expected<JsonDocument> document = readJson(std::move(text), "");
  if (!document) return "not JSON: " + document.error().message.code;
  return canonicalJson(document->root).value_or("not canonical");
}

std::string refusalOf(std::string_view text) {
  const Expected<JsonDocument> document = readCanonicalJson(text, 10000);
  return document ? "" : document.error().message.code;
}

TEST(CanonicalJsonTest, NumbersAgreeWithRfc8785AppendixB) {
  for (const auto& [bits, text] : reference::kCanonicalNumbers) {
    EXPECT_EQ(numberText(std::bit_cast<double>(bits)), text);
  }
}

// The first numbers are listed in a file; after them come 2000 doubles in a row from 0010000000000000 on, of
// which the file holds the first, then SHA-256 of 32 zero bytes, of that hash, and so on, each four
// little-endian doubles of which zeros and those not finite are left out. The published hashes confirm this
// reading.
TEST(CanonicalJsonTest, AHundredThousandNumbersHaveThePublishedHash) {
  const fs::path file = kVectors / "es6_numbers_first1000.csv";
  if (!fs::exists(file)) GTEST_SKIP() << "missing: " << file;
  std::string lines;
  std::size_t count = 0;
  std::size_t expected = 0;
  const auto add = [&](std::uint64_t bits) {
    char hex[20];
    std::snprintf(hex, sizeof hex, "%llx", static_cast<unsigned long long>(bits));
    lines += std::string(hex) + "," + numberText(std::bit_cast<double>(bits)) + "\n";
    ++count;
    if (count != reference::kCanonicalNumberHashes[expected].first) return;
    EXPECT_EQ(hashName(lines), reference::kCanonicalNumberHashes[expected].second) << count;
    ++expected;
  };
  constexpr std::uint64_t kRow = 0x0010000000000000;
  bool row_seen = false;  // its first double stands among the listed ones too
  std::ifstream listed(file);
  for (std::string line; std::getline(listed, line);) {
    std::uint64_t bits = 0;
    std::from_chars(line.data(), line.data() + line.size(), bits, 16);
    if (bits == kRow && row_seen) break;
    row_seen |= bits == kRow;
    add(bits);
  }
  for (std::uint64_t step = 0; step < 2000; ++step) add(kRow + step);
  std::string block(32, '\0');
  while (expected < reference::kCanonicalNumberHashes.size()) {
    block = sha256(block);
    for (std::size_t at = 0; at < 32 && expected < reference::kCanonicalNumberHashes.size(); at += 8) {
      std::uint64_t bits = 0;
      for (std::size_t byte = 8; byte-- > 0;)
        bits = (bits << 8U) | static_cast<unsigned char>(block[at + byte]);
      const double value = std::bit_cast<double>(bits);
      if (value != 0.0 && std::isfinite(value)) add(bits);
    }
  }
}

TEST(CanonicalJsonTest, EveryNumberReadsBackToItsBits) {
  Random random(2);
  for (int round = 0; round < 20000; ++round) {
    const double value = std::bit_cast<double>(random.bits());
    if (!std::isfinite(value)) continue;
    const std::string text = numberText(value);
    double back = 0.0;
    ASSERT_EQ(std::from_chars(text.data(), text.data() + text.size(), back).ptr, text.data() + text.size());
    EXPECT_EQ(std::bit_cast<std::uint64_t>(back), std::bit_cast<std::uint64_t>(value)) << text;
    EXPECT_EQ(refusalOf(text), "");
  }
}

TEST(CanonicalJsonTest, TheVectorsOfRfc8785AreReproduced) {
  if (!fs::exists(kVectors / "input")) GTEST_SKIP() << "missing: " << kVectors / "input";
  int files = 0;
  for (const auto& entry : fs::directory_iterator(kVectors / "input")) {
    const std::string expected = readFile(kVectors / "output" / entry.path().filename());
    EXPECT_EQ(canonicalOf(readFile(entry.path())), expected) << entry.path();
    EXPECT_EQ(refusalOf(expected), "") << entry.path();
    ++files;
  }
  EXPECT_EQ(files, 6);
}

// Source: RFC 8785 section 3.2.3, the order of its example, from memory; here with own values.
TEST(CanonicalJsonTest, KeysStandInTheOrderOfUtf16) {
  EXPECT_EQ(canonicalOf("{\"\\u20ac\":1,\"\\r\":2,\"\\ufb33\":3,\"1\":4,\"\\ud83d\\ude00\":5,\"\\u0080\":6,"
                        "\"\\u00f6\":7,\"\":8,\"11\":9}"),
            "{\"\":8,\"\\r\":2,\"1\":4,\"11\":9,\"\xC2\x80\":6,\"\xC3\xB6\":7,\"\xE2\x82\xAC\":1,"
            "\"\xF0\x9F\x98\x80\":5,\"\xEF\xAC\xB3\":3}");
}

TEST(CanonicalJsonTest, WhatIsNotCanonicalIsRefused) {
  for (const char* text :
       {" 1", "1 ", "1.0", "1e0", "-0", "0.0", "1E+21", "100e1", "{\"b\":1,\"a\":2}", "[1, 2]", "\"\\u0041\"",
        "\"\\/\"", "\"\\u000A\"", "\"\\u000a\"", "9007199254740993",
        "\xEF\xBB\xBF"
        "1"}) {
    EXPECT_EQ(refusalOf(text), "json-not-canonical") << text;
  }
  EXPECT_EQ(refusalOf(""), "json-syntax");
  EXPECT_EQ(refusalOf(std::string(40, '\0')), "json-syntax");
  EXPECT_EQ(refusalOf("1e400"), "json-syntax");
  EXPECT_EQ(refusalOf("NaN"), "json-syntax");
  EXPECT_EQ(refusalOf("\"\\ud800\""), "json-syntax");
  EXPECT_EQ(refusalOf("\"\xED\xA0\x80\""), "not-utf8");
  EXPECT_EQ(refusalOf("{\"a\":1,\"a\":1}"), "json-duplicate-key");
  EXPECT_EQ(refusalOf("\"" + std::string(10000, 'a') + "\""), "json-too-large");
}

TEST(CanonicalJsonTest, WhatCannotBeWrittenIsRefusedWithItsPlace) {
  const auto fault = [](const JsonValue& value) {
    const Expected<std::string> text = canonicalJson(value);
    return text ? "" : text.error().message.code + " " + text.error().place.pointer;
  };
  JsonValue number = jsonInteger(0);
  number.number = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(fault(jsonObject({{"a/b", jsonArray({jsonNull(), number})}})), "json-number-not-finite /a~1b/1");
  number.number = std::numeric_limits<double>::infinity();
  EXPECT_EQ(fault(number), "json-number-not-finite ");
  EXPECT_EQ(fault(jsonArray({jsonString("\xFF")})), "not-utf8 /0");
  EXPECT_EQ(fault(jsonObject({{"k", jsonNull()}, {"k", jsonNull()}})), "json-duplicate-key /k");
}

TEST(CanonicalJsonTest, OnlyExactIntegersAndShallowValuesCanBeSealed) {
  const auto fault = [](std::string text) {
    const Expected<JsonDocument> document = readJson(std::move(text), "");
    const Expected<void> done = checkSealable(document->root);
    return done ? "" : done.error().message.code + " " + done.error().place.pointer;
  };
  EXPECT_EQ(fault("{\"a\":[9007199254740991,-9007199254740991,0,true,null,\"1.5\"]}"), "");
  EXPECT_EQ(fault("{\"a\":[9007199254740992]}"), "json-number-not-integer /a/0");
  EXPECT_EQ(fault("[0,-9007199254740992]"), "json-number-not-integer /1");
  EXPECT_EQ(fault("[0.5]"), "json-number-not-integer /0");
  EXPECT_EQ(fault("[1e300]"), "json-number-not-integer /0");
  EXPECT_EQ(fault(std::string(24, '[') + std::string(24, ']')), "");
  EXPECT_THAT(fault(std::string(25, '[') + std::string(25, ']')),
              ::testing::StartsWith("json-too-deep /0/0"));
}

}  // namespace
}  // namespace hingepin::records
