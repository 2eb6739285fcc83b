// SPDX-License-Identifier: Apache-2.0
#include "engine/records/encoding.h"

#include <gtest/gtest.h>

#include "engine/base/random.h"
#include "tests/reference/records.h"

namespace hingepin::records {
namespace {

TEST(EncodingTest, Base64AgreesWithRfc4648) {
  for (const auto& [bytes, text] : reference::kBase64) {
    EXPECT_EQ(base64Url(bytesOf(bytes)), text);
    EXPECT_EQ(fromBase64Url(text), bytes);
  }
}

TEST(EncodingTest, Base64OfAnyBytesComesBack) {
  Random random(1);
  for (int round = 0; round < 2000; ++round) {
    std::string bytes(random.bits() % 70, '\0');
    for (char& byte : bytes) byte = static_cast<char>(random.bits());
    EXPECT_EQ(fromBase64Url(base64Url(bytesOf(bytes))), bytes);
  }
}

TEST(EncodingTest, EachByteStringHasOneEncodingOnly) {
  // All texts of two characters: those that decode are exactly the 256 that encode a byte.
  int accepted = 0;
  for (int first = 0; first < 256; ++first) {
    for (int second = 0; second < 256; ++second) {
      const std::string text = {static_cast<char>(first), static_cast<char>(second)};
      const std::optional<std::string> bytes = fromBase64Url(text);
      if (!bytes) continue;
      ++accepted;
      EXPECT_EQ(base64Url(bytesOf(*bytes)), text);
    }
  }
  EXPECT_EQ(accepted, 256);
}

TEST(EncodingTest, PaddingOtherAlphabetsAndBlanksAreRefused) {
  for (const char* text : {"Zg==", "Zm8=", "+/+/", "Zm9v ", "\nZm9v", "Z", "Zm9vY", "Zh", "Zm9"}) {
    EXPECT_FALSE(fromBase64Url(text)) << text;
  }
}

TEST(EncodingTest, NamesAreSha256InHexadecimal) {
  EXPECT_EQ(hashName("abc"), reference::kSha256OfAbc);
  EXPECT_TRUE(isHashName(hashName("")));
  EXPECT_FALSE(isHashName(""));
  EXPECT_FALSE(isHashName(std::string(63, 'a')));
  EXPECT_FALSE(isHashName(std::string(64, 'A')));
  EXPECT_FALSE(isHashName(std::string(64, '\0')));
}

}  // namespace
}  // namespace hingepin::records
