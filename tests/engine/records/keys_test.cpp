// SPDX-License-Identifier: Apache-2.0
#include "engine/records/keys.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "engine/records/canonical_json.h"
#include "engine/records/personal.h"
#include "tests/engine/records/people.h"
#include "tests/reference/records.h"

namespace hingepin::records {
namespace {

std::string bytesOfHex(std::string_view hex) {
  std::string bytes;
  for (std::size_t at = 0; at + 1 < hex.size(); at += 2) {
    bytes += static_cast<char>(std::stoi(std::string(hex.substr(at, 2)), nullptr, 16));
  }
  return bytes;
}

template <std::size_t N>
std::array<std::uint8_t, N> arrayOf(std::string_view bytes) {
  std::array<std::uint8_t, N> array{};
  EXPECT_EQ(bytes.size(), N);
  std::ranges::copy(bytesOf(bytes.substr(0, N)), array.begin());
  return array;
}

void expectVector(std::string_view secret, std::string_view public_key, std::string_view message,
                  std::string_view signature) {
  const SecretKey key(arrayOf<32>(bytesOfHex(secret)));
  const std::string bytes = bytesOfHex(message);
  EXPECT_EQ(hexadecimal(textOf(key.publicKey().bytes)), public_key);
  EXPECT_EQ(hexadecimal(textOf(key.sign(bytes))), signature);
  EXPECT_TRUE(signatureHolds(key.publicKey(), bytes, arrayOf<64>(bytesOfHex(signature))));
  EXPECT_FALSE(signatureHolds(key.publicKey(), bytes + "x", arrayOf<64>(bytesOfHex(signature))));
}

TEST(KeysTest, SignaturesAgreeWithRfc8032) {
  for (const auto& [secret, public_key, message, signature] : reference::kEd25519) {
    expectVector(secret, public_key, message, signature);
  }
}

TEST(KeysTest, SignaturesAgreeWithAllVectorsOfRfc8032) {
  const auto file =
      std::filesystem::path(HINGEPIN_SOURCE_DIR) / "../shared/reference/crypto/ed25519_rfc8032.json";
  if (!std::filesystem::exists(file)) GTEST_SKIP() << "missing: " << file;
  std::ifstream stream(file, std::ios::binary);
  const auto document = readJson({std::istreambuf_iterator<char>(stream), {}}, "");
  ASSERT_TRUE(document);
  const auto vectors = JsonNode(*document).at("vectors")->elements();
  ASSERT_EQ(vectors->size(), 5U);
  for (const JsonNode& vector : *vectors) {
    SCOPED_TRACE(*vector.at("name")->string());
    expectVector(*vector.at("secret_key")->string(), *vector.at("public_key")->string(),
                 *vector.at("message")->string(), *vector.at("signature")->string());
  }
}

TEST(KeysTest, EveryFlippedBitOfASignatureOrKeyIsNoticed) {
  const SecretKey key = keyOf(1);
  const std::string message = "two buckets";
  const std::string signature = textOf(key.sign(message));
  const std::string public_key = textOf(key.publicKey().bytes);
  for (std::size_t bit = 0; bit < signature.size() * 8; ++bit) {
    EXPECT_FALSE(signatureHolds(key.publicKey(), message, arrayOf<64>(flipped(signature, bit)))) << bit;
  }
  for (std::size_t bit = 0; bit < public_key.size() * 8; ++bit) {
    EXPECT_FALSE(signatureHolds({arrayOf<32>(flipped(public_key, bit))}, message, arrayOf<64>(signature)))
        << bit;
  }
  EXPECT_FALSE(signatureHolds(key.publicKey(), message, arrayOf<64>(std::string(64, '\0'))));
  EXPECT_FALSE(signatureHolds({}, message, arrayOf<64>(std::string(64, '\0'))));
}

// S + L signs the same message in the plain equation; RFC 8032 section 5.1.7 demands S < L.
TEST(KeysTest, ASignatureWithItsScalarRaisedByTheGroupOrderIsRefused) {
  const std::string order = bytesOfHex("edd3f55c1a631258d69cf7a2def9de1400000000000000000000000000000010");
  const SecretKey key = keyOf(2);
  auto signature = key.sign("m");
  unsigned carry = 0;
  for (std::size_t at = 0; at < 32; ++at) {
    carry += signature[32 + at] + static_cast<unsigned char>(order[at]);
    signature[32 + at] = static_cast<std::uint8_t>(carry);
    carry >>= 8U;
  }
  EXPECT_EQ(carry, 0U);
  EXPECT_FALSE(signatureHolds(key.publicKey(), "m", signature));
}

TEST(KeysTest, JwkThumbprintAndSignatureAgreeWithRfc8037) {
  const SecretKey key(arrayOf<32>(bytesOfHex(reference::kEd25519[0].secret)));
  EXPECT_EQ(publicKeyText(key.publicKey()), reference::kJwkX);
  EXPECT_EQ(key.id(), reference::kJwkThumbprint);
  EXPECT_TRUE(isThumbprint(key.id()));
  EXPECT_EQ(base64Url(key.sign(reference::kJwsSigningInput)), reference::kJwsSignature);
}

TEST(KeysTest, APublicKeyComesBackAndWeakOnesAreRefused) {
  const PublicKey key = keyOf(3).publicKey();
  EXPECT_EQ(readPublicKey(publicKeyText(key)).value(), key);
  // Small order: 0 (order 4), 1 (the neutral point); not canonical: p, p + 1. Source: RFC 8032 section 5.1,
  // by hand.
  for (const char* hex : {"0000000000000000000000000000000000000000000000000000000000000000",
                          "0100000000000000000000000000000000000000000000000000000000000000",
                          "edffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff7f",
                          "eeffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff7f",
                          "ecffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff7f"}) {
    EXPECT_EQ(codeOf(readPublicKey(base64Url(bytesOf(bytesOfHex(hex))))), "key-malformed") << hex;
  }
  EXPECT_EQ(codeOf(readPublicKey("")), "key-malformed");
  EXPECT_EQ(codeOf(readPublicKey(publicKeyText(key) + "A")), "key-malformed");
}

TEST(PersonalTest, TheNameOfAnObjectAgreesWithRfc4231) {
  Salt salt{};  // a shorter key is filled with zeros by HMAC itself
  std::fill_n(salt.begin(), 20, std::uint8_t{0x0b});
  EXPECT_EQ(personalName(salt, "Hi There"), reference::kHmacOfHiThere);
}

constexpr std::string_view kPassphrase = "loader with nine buckets";
// The least that Argon2 takes, so that the tests are quick; what one guess costs is not what they check.
constexpr PassphraseCost kCheap{.passes = 1, .memory_KiB = 8};

TEST(KeyWrapTest, AWrappedKeyComesBackWithItsPassphraseOnly) {
  const SecretKey key = keyOf(4);
  const std::string text = wrapKey(key, kPassphrase, kCheap, seededFill(5)).value();
  const Expected<SecretKey> back = unwrapKey(text, kPassphrase);
  ASSERT_TRUE(back);
  EXPECT_EQ(back->id(), key.id());
  EXPECT_EQ(textOf(back->seed()), textOf(key.seed()));
  EXPECT_EQ(codeOf(unwrapKey(text, "loader with nine bucketS")), "key-not-opened");
  EXPECT_EQ(codeOf(unwrapKey(text, "")), "key-not-opened");
}

TEST(KeyWrapTest, SaltAndNonceMakeEachWrappingDifferent) {
  const SecretKey key = keyOf(4);
  EXPECT_NE(wrapKey(key, kPassphrase, kCheap, seededFill(5)).value(),
            wrapKey(key, kPassphrase, kCheap, seededFill(6)).value());
}

TEST(KeyWrapTest, TheStatedCostIsTheDefault) {
  const std::string text = wrapKey(keyOf(4), kPassphrase, {}, seededFill(5)).value();
  EXPECT_NE(text.find("\"memory_KiB\":65536"), std::string::npos);
  EXPECT_NE(text.find("\"passes\":3"), std::string::npos);
  EXPECT_TRUE(unwrapKey(text, kPassphrase));
}

TEST(KeyWrapTest, EveryFlippedBitAndEveryCutIsNoticed) {
  const std::string text = wrapKey(keyOf(4), kPassphrase, kCheap, seededFill(5)).value();
  for (std::size_t bit = 0; bit < text.size() * 8; ++bit) {
    const Expected<SecretKey> read = unwrapKey(flipped(text, bit), kPassphrase);
    EXPECT_FALSE(read) << bit;
  }
  for (std::size_t length = 0; length < text.size(); ++length) {
    EXPECT_EQ(codeOf(unwrapKey(text.substr(0, length), kPassphrase)), "key-malformed");
    EXPECT_EQ(codeOf(unwrapKey(std::string(length, '\0'), kPassphrase)), "key-malformed");
  }
}

TEST(KeyWrapTest, CostsOutOfRangeAreRefusedBeforeMemoryIsTaken) {
  const SecretKey key = keyOf(4);
  for (const PassphraseCost cost : {PassphraseCost{0, 8}, PassphraseCost{1, 7}, PassphraseCost{65, 8},
                                    PassphraseCost{1, kMostMemory_KiB + 1}}) {
    EXPECT_EQ(codeOf(wrapKey(key, kPassphrase, cost, seededFill(5))), "key-cost-out-of-range");
  }
  std::string text = wrapKey(key, kPassphrase, kCheap, seededFill(5)).value();
  const std::string cheap = "\"memory_KiB\":8,";
  text.replace(text.find(cheap), cheap.size(), "\"memory_KiB\":99999999999,");
  EXPECT_EQ(codeOf(unwrapKey(text, kPassphrase)), "key-cost-out-of-range");
}

TEST(KeyWrapTest, PinsAndPlainRunsAreNotTakenForAPassphrase) {
  for (const char* text : {"", "4711", "loader", "elevenchars", "Hören wir!!"}) {
    EXPECT_EQ(codeOf(checkPassphrase(text)), "passphrase-too-short") << text;
  }
  for (const char* text : {"aaaaaaaaaaaaaaaa", "abababababababab", "123456789012", "471108159263",
                           "abcdefghijklmn", "zyxwvutsrqponm", "aabbccddeeffgg", "abcabcabcabcabc"}) {
    EXPECT_EQ(codeOf(checkPassphrase(text)), "passphrase-too-plain") << text;
  }
  for (const char* text : {"loader with nine buckets", "kT8-vQ2.mZ5x", "Schaufel über Kies"}) {
    EXPECT_EQ(codeOf(checkPassphrase(text)), "") << text;
  }
  EXPECT_EQ(codeOf(wrapKey(keyOf(4), "4711", kCheap, seededFill(5))), "passphrase-too-short");
}

}  // namespace
}  // namespace hingepin::records
