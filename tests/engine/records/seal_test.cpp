// SPDX-License-Identifier: Apache-2.0
#include "engine/records/seal.h"

#include <gtest/gtest.h>

#include "engine/records/encoding.h"
#include "tests/engine/records/people.h"

namespace hingepin::records {
namespace {

// A sealed text put together by hand, so that headers of others can be tried; the signature is always right.
std::string sealedWith(const SecretKey& key, const std::string& header, const std::string& payload = "{}") {
  const std::string encoded_header = base64Url(bytesOf(header));
  const std::string encoded_payload = base64Url(bytesOf(payload));
  return "{\"payload\":\"" + encoded_payload + "\",\"signatures\":[{\"protected\":\"" + encoded_header +
         "\",\"signature\":\"" + base64Url(key.sign(encoded_header + "." + encoded_payload)) + "\"}]}";
}

std::string soundHeader(const SecretKey& key) {
  return "{\"alg\":\"EdDSA\",\"kid\":\"" + key.id() + "\",\"typ\":\"hingepin-record\"}";
}

TEST(SealTest, WhatIsSealedComesBackAndHolds) {
  const SecretKey key = keyOf(1);
  const std::string text = seal("{\"a\":1}", kRecordType, key);
  EXPECT_EQ(text, sealedWith(key, soundHeader(key), "{\"a\":1}"));
  const Expected<Sealed> sealed = readSealed(text);
  ASSERT_TRUE(sealed);
  EXPECT_EQ(sealed->payload, "{\"a\":1}");
  EXPECT_EQ(sealed->type, kRecordType);
  ASSERT_EQ(sealed->seals.size(), 1U);
  EXPECT_EQ(sealed->seals[0].key, key.id());
  EXPECT_TRUE(sealHolds(sealed->seals[0], key.publicKey()));
  EXPECT_FALSE(sealHolds(sealed->seals[0], keyOf(2).publicKey()));
}

TEST(SealTest, TwoKeysGiveTheSameBytesInEitherOrder) {
  const SecretKey one = keyOf(1), two = keyOf(2);
  const SecretKey* const forth[] = {&one, &two};
  const SecretKey* const back[] = {&two, &one};
  const std::string text = seal("{}", kSignersType, forth);
  EXPECT_EQ(text, seal("{}", kSignersType, back));
  const Expected<Sealed> sealed = readSealed(text);
  ASSERT_TRUE(sealed);
  ASSERT_EQ(sealed->seals.size(), 2U);
  for (const Seal& seal : sealed->seals) {
    EXPECT_TRUE(sealHolds(seal, (seal.key == one.id() ? one : two).publicKey()));
  }
}

TEST(SealTest, AnyOtherHeaderIsRefusedThoughItsSignatureIsRight) {
  const SecretKey key = keyOf(1);
  const std::string kid = "\"kid\":\"" + key.id() + "\"";
  const std::string typ = "\"typ\":\"hingepin-record\"";
  const std::string alg = "\"alg\":\"EdDSA\"";
  for (const std::string& header : std::initializer_list<std::string>{
           "",
           "{}",
           "{" + alg + "}",
           "{" + alg + "," + kid + "}",
           "{" + alg + "," + typ + "}",
           "{\"alg\":\"none\"," + kid + "," + typ + "}",
           "{\"alg\":\"HS256\"," + kid + "," + typ + "}",
           "{\"alg\":\"ES256\"," + kid + "," + typ + "}",
           "{\"alg\":\"eddsa\"," + kid + "," + typ + "}",
           "{\"alg\":\"Ed25519\"," + kid + "," + typ + "}",
           "{" + kid + "," + alg + "," + typ + "}",
           "{" + alg + ", " + kid + "," + typ + "}",
           "{" + alg + "," + kid + "," + typ + "} ",
           "{" + alg + ",\"crit\":[\"b64\"]," + kid + "," + typ + "}",
           "{" + alg + ",\"b64\":false," + kid + "," + typ + "}",
           "{" + alg + ",\"jku\":\"https://example.invalid\"," + kid + "," + typ + "}",
           "{" + alg + ",\"jwk\":{\"crv\":\"Ed25519\",\"kty\":\"OKP\",\"x\":\"" +
               publicKeyText(key.publicKey()) + "\"}," + kid + "," + typ + "}",
           "{" + alg + "," + kid + "," + typ + ",\"x5u\":\"\"}",
           "{" + alg + "," + kid + "," + kid + "," + typ + "}",
           "{" + alg + "," + kid + ",\"typ\":\"JWT\"}",
           "{" + alg + "," + kid + ",\"typ\":\"\"}",
           "{" + alg + ",\"kid\":\"\"," + typ + "}",
           "{" + alg + ",\"kid\":\"" + key.id() + "=\"," + typ + "}"}) {
    EXPECT_EQ(codeOf(readSealed(sealedWith(key, header))), "seal-header-unexpected") << header;
  }
  EXPECT_EQ(codeOf(readSealed(sealedWith(key, soundHeader(key)))), "");
}

TEST(SealTest, AnyOtherFormOfTheObjectIsRefused) {
  const SecretKey key = keyOf(1);
  const std::string text = seal("{\"a\":1}", kRecordType, key);
  const Sealed sealed = readSealed(text).value();
  const std::string& signed_bytes = sealed.seals[0].signed_bytes;
  const std::string header = signed_bytes.substr(0, signed_bytes.find('.'));
  const std::string encoded = signed_bytes.substr(header.size() + 1);
  const std::string payload = "\"payload\":\"" + encoded + "\"";
  const std::string protected_header = "\"protected\":\"" + header + "\"";
  const std::string signature = "\"signature\":\"" + base64Url(sealed.seals[0].signature) + "\"";
  const std::string one = "{" + protected_header + "," + signature + "}";
  ASSERT_EQ(text, "{" + payload + ",\"signatures\":[" + one + "]}");
  for (const std::string& other : std::initializer_list<std::string>{
           "", " " + text, text + "\n", text + text, "{\"signatures\":[" + one + "]," + payload + "}",
           "{" + payload + ",\"signatures\":[]}", "{" + payload + ",\"signatures\":[" + one + "],\"x\":1}",
           "{" + payload + ",\"signatures\":[" + one + "," + one + "]}",
           "{" + payload + ",\"signatures\":[{\"header\":{}," + protected_header + "," + signature + "}]}",
           "{" + payload + ",\"signatures\":[{" + protected_header + ",\"header\":{}," + signature + "}]}",
           "{" + payload + ",\"signatures\":[{" + signature + "," + protected_header + "}]}",
           "{" + payload + ",\"signatures\":[{" + protected_header + ", " + signature + "}]}",
           "{" + payload + "," + protected_header + "," + signature + "}",
           "{\"payload\":\"\",\"signatures\":[" + one + "]}",
           "{\"payload\":\"" + encoded + "=\",\"signatures\":[" + one + "]}",
           signed_bytes + "." + base64Url(sealed.seals[0].signature)}) {
    EXPECT_EQ(codeOf(readSealed(other)), "seal-malformed") << other;
  }
}

TEST(SealTest, ASealForOneTypeDoesNotHoldForAnother) {
  const SecretKey key = keyOf(1);
  const Sealed record = readSealed(seal("{}", kRecordType, key)).value();
  Sealed other = readSealed(seal("{}", kSignatureType, key)).value();
  other.seals[0].signature = record.seals[0].signature;
  EXPECT_FALSE(sealHolds(other.seals[0], key.publicKey()));
}

TEST(SealTest, TwoSealsOfDifferentTypesAreRefused) {
  const SecretKey one = keyOf(1), two = keyOf(2);
  const SecretKey* const keys[] = {&one, &two};
  std::string text = seal("{}", kSignersType, keys);
  ASSERT_EQ(codeOf(readSealed(text)), "");
  const SecretKey& second = one.id() < two.id() ? two : one;
  const std::string list = seal("{}", kSignersType, second), record = seal("{}", kRecordType, second);
  const std::size_t from = std::string_view(list).find("[") + 1;
  const std::string of_list = list.substr(from), of_record = record.substr(from);
  ASSERT_TRUE(text.ends_with(of_list));
  text.replace(text.size() - of_list.size(), of_list.size(), of_record);
  EXPECT_EQ(codeOf(readSealed(text)), "seal-header-unexpected");
}

TEST(SealTest, ZerosAndNothingNeverReadAsSealed) {
  for (std::size_t length = 0; length < 600; ++length) {
    EXPECT_EQ(codeOf(readSealed(std::string(length, '\0'))), "seal-malformed");
  }
  EXPECT_EQ(codeOf(readSealed(std::string(2 * kMostPayloadBytes, 'A'))), "json-too-large");
}

TEST(SealTest, TheLargestPayloadCanBeSealedAndReadBack) {
  const std::string text = seal(std::string(kMostPayloadBytes, 'a'), kRecordType, keyOf(1));
  EXPECT_EQ(codeOf(readSealed(text)), "");
  const std::string larger = seal(std::string(kMostPayloadBytes + 1, 'a'), kRecordType, keyOf(1));
  EXPECT_EQ(codeOf(readSealed(larger)), "seal-malformed");
}

}  // namespace
}  // namespace hingepin::records
