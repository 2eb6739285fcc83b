// SPDX-License-Identifier: Apache-2.0
#include "engine/certificate/certificate.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "engine/certificate/markup.h"
#include "tests/engine/certificate/example.h"

namespace hingepin::certificate {
namespace {

using ::testing::HasSubstr;
using ::testing::IsSubsetOf;
using ::testing::Not;

/// JCGM 100:2008, 7.2.6: "it usually suffices to quote u_c(y) and U to at most two significant digits".
TEST(CertificateTest, AnUncertaintyShowsTwoDigits) {
  EXPECT_EQ(decimalsFor(6.4), 1);
  EXPECT_EQ(decimalsFor(12.0), 0);
  EXPECT_EQ(decimalsFor(250.0), 0);
  EXPECT_EQ(decimalsFor(0.0021), 4);
  EXPECT_EQ(decimalsFor(0.0), 0);
  EXPECT_EQ(decimalsFor(std::nan("")), 0);
}

TEST(CertificateTest, EveryFigureHasANameOfItsOwnAndSaysWhereItComesFrom) {
  const Certificate certificate = exampleCertificate();
  std::set<std::size_t> read;
  for (const Reading& reading : certificate.readings) read.insert(reading.number);
  std::set<std::string> names;
  for (const auto& [name, figure] : figuresOf(certificate)) {
    EXPECT_TRUE(names.insert(name).second) << name;
    EXPECT_NE(figure->readings.empty(), figure->entry.empty()) << name;
    EXPECT_THAT(figure->readings, IsSubsetOf(read)) << name;
  }
  EXPECT_EQ(names.size(), 2 + 5 * 6 + 1 + 2 + 4)
      << "all that the example has: 5 results of 6 numbers each, and others";
}

TEST(MarkupTest, EscapesWhatWouldEndATextOrAnAttribute) {
  EXPECT_EQ(escaped("<b a='1' c=\"2\">&"), "&lt;b a=&#39;1&#39; c=&quot;2&quot;&gt;&amp;");
}

/// XML 1.0, 5th edition, section 2.2: Char. What is none of it is no XML at all, even as a reference.
TEST(MarkupTest, ReplacesWhatXmlHasNoPlaceFor) {
  EXPECT_EQ(escaped(std::string("a\0b", 3)), "a\uFFFDb");
  EXPECT_EQ(escaped("a\x1B[31mb"), "a\uFFFD[31mb");
  EXPECT_EQ(escaped("a\xFFz"), "a\uFFFDz");
  EXPECT_EQ(escaped("a\xED\xA0\x80z"), "a\uFFFD\uFFFD\uFFFDz") << "half of a surrogate pair";
  EXPECT_EQ(escaped("a\xEF\xBF\xBFz"), "a\uFFFDz") << "U+FFFF";
  EXPECT_EQ(escaped("1\u202E2"), "1\uFFFD2") << "digits must not turn round";
  EXPECT_EQ(escaped("\u206635 kg\u2069, \u2068\u2066a\u2069\u2069"),
            "\u206635 kg\u2069, \u2068\u2066a\u2069\u2069")
      << "numbers in words that are read from the right";
  EXPECT_EQ(escaped("\u2066a \u2067b\u2069"), "\uFFFDa \u2067b\u2069") << "goes on after the text";
  EXPECT_EQ(escaped("a\u2069 b\u2066"), "a\uFFFD b\uFFFD");
  EXPECT_EQ(escaped("a\tb\nc Ünï كتلة 😀"), "a\tb\nc Ünï كتلة 😀");
}

TEST(MarkupTest, AnImageAddressHoldsNoQuoteOrBracket) {
  const std::string address = imageAddress("<svg a='#fff'>ü</svg>");
  EXPECT_EQ(address.find_first_of("<>\"'# "), std::string::npos);
  EXPECT_THAT(address, HasSubstr("%3Csvg"));
  EXPECT_THAT(address, HasSubstr("%C3%BC"));
}

}  // namespace
}  // namespace hingepin::certificate
