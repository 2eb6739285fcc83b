// SPDX-License-Identifier: Apache-2.0
#include "engine/records/secret.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/engine/records/people.h"

namespace hingepin::records {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

const FillBytes kFill = [](std::span<std::uint8_t> bytes) { std::ranges::fill(bytes, std::uint8_t{7}); };

TEST(SecretTest, OnlyItsOwnKeyOpensASecret) {
  const std::string sealed = sealSecret("demo password", keyOf(1), kFill);
  EXPECT_THAT(sealed, Not(HasSubstr("demo")));
  EXPECT_EQ(openSecret(sealed, keyOf(1)).value_or(""), "demo password");
  EXPECT_FALSE(openSecret(sealed, keyOf(2)).has_value());
  EXPECT_EQ(openSecret(sealSecret("", keyOf(1), kFill), keyOf(1)).value_or("none"), "");
}

TEST(SecretTest, WhatWasAlteredOrIsNoSecretDoesNotOpen) {
  const std::string sealed = sealSecret("demo password", keyOf(1), kFill);
  for (std::size_t at = 0; at < sealed.size(); ++at) {
    std::string altered = sealed;
    altered[at] = altered[at] == 'A' ? 'B' : 'A';
    EXPECT_FALSE(openSecret(altered, keyOf(1)).has_value()) << altered;
  }
  for (const char* text : {"", "{}", "[]", "not JSON"}) EXPECT_FALSE(openSecret(text, keyOf(1)).has_value());
}

}  // namespace
}  // namespace hingepin::records
