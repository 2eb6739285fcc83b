// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <gtest/gtest.h>

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "engine/base/random.h"
#include "engine/records/verify.h"

// Invented people, phones and records for tests.
namespace hingepin::records {

inline FillBytes seededFill(std::uint64_t seed) {
  return [random = Random(seed)](std::span<std::uint8_t> bytes) mutable {
    for (std::uint8_t& byte : bytes) byte = static_cast<std::uint8_t>(random.bits() >> 56U);
  };
}

inline SecretKey keyOf(std::uint64_t seed) { return newSecretKey(seededFill(seed)); }

inline std::string epochOf(std::uint64_t seed) {
  std::array<std::uint8_t, 16> bytes{};
  seededFill(seed)(bytes);
  return epochName(bytes);
}

inline constexpr std::int64_t kNow = 1'780'000'000'000;

/// One key on one phone: seals statements one after the other.
struct Phone {
  SecretKey key;
  std::string role = "technician";
  std::string installation = key.id();
  std::string epoch = epochOf(7);
  std::optional<Head> head{};
  std::int64_t now = kNow;

  Envelope next() {
    return {.place = nextPlace(head, key.id(), installation, epoch), .role = role, .sealed_utc_ms = now++};
  }
  SealedStatement sealNext(const Statement& statement) {
    Expected<SealedStatement> sealed = sealStatement(statement, key);
    EXPECT_TRUE(sealed.has_value()) << (sealed ? ""
                                               : sealed.error().message.code + sealed.error().place.pointer);
    if (!sealed) return {};
    head = headAfter(envelopeOf(statement).place, sealed->name);
    return *std::move(sealed);
  }
  SealedStatement record(const std::string& note = "demo") {
    return sealNext(
        Record{.envelope = next(),
               .content = jsonObject({{"note", jsonString(note)}, {"reading_mV", jsonInteger(2431)}})});
  }
  SealedStatement sign(const std::string& name) {
    return sealNext(Signature{.envelope = next(), .record = name});
  }
};

inline Signer listed(const SecretKey& key, std::string role) {
  return {.key = key.publicKey(), .role = std::move(role), .valid_from_utc_ms = kNow - 1'000'000};
}

/// A yard whose root list with these signers was accepted.
inline Evidence yardWith(const SecretKey& yard_key, std::vector<Signer> signers,
                         std::vector<Revocation> revocations = {}) {
  const Expected<SealedSigners> sealed = sealSigners({.yard_key = yard_key.publicKey(),
                                                      .signers = std::move(signers),
                                                      .revocations = std::move(revocations)},
                                                     yard_key);
  EXPECT_TRUE(sealed.has_value());
  if (!sealed) return {};
  return {.signers_lists = {{.text = sealed->text}}, .accepted_roots = {sealed->name}};
}

inline std::vector<std::string> codesOf(const std::vector<Finding>& findings) {
  std::vector<std::string> codes;
  for (const Finding& finding : findings) codes.push_back(finding.message.code);
  return codes;
}

/// code -> what a finding with it says it is about
inline std::vector<std::pair<std::string, std::string>> saidOf(const std::vector<Finding>& findings) {
  std::vector<std::pair<std::string, std::string>> said;
  for (const Finding& finding : findings) said.emplace_back(finding.message.code, finding.subject);
  return said;
}

inline std::string flipped(std::string text, std::size_t bit) {
  text[bit / 8] = static_cast<char>(static_cast<unsigned char>(text[bit / 8]) ^ (1U << (bit % 8)));
  return text;
}

/// Of the error; "" where there is none.
std::string codeOf(const auto& expected) { return expected ? "" : expected.error().message.code; }

}  // namespace hingepin::records
