// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/records/keys.h"

namespace hingepin::records {

/// What is sealed, as `typ` names it. A seal made for one never holds for another.
inline constexpr std::string_view kRecordType = "hingepin-record";
inline constexpr std::string_view kSignatureType = "hingepin-signature";
inline constexpr std::string_view kSignersType = "hingepin-signers";
inline constexpr std::string_view kParcelType = "hingepin-parcel";
inline constexpr std::string_view kDeviceType = "hingepin-device";
inline constexpr std::string_view kConfirmationType = "hingepin-confirmation";
inline constexpr std::string_view kJoinType = "hingepin-join";
inline constexpr std::string_view kAdmissionType = "hingepin-admission";

inline constexpr std::size_t kMostPayloadBytes = 1U << 20U;
inline constexpr std::size_t kMostSeals = 2;

/// One signature of a JSON Web Signature.
struct Seal {
  std::string key;           ///< the thumbprint that `kid` holds
  std::string signed_bytes;  ///< protected header and payload as sent, in base64url, with a dot between
  std::array<std::uint8_t, 64> signature{};
};

/// A JSON Web Signature that is well formed; whether its seals hold is another question.
struct Sealed {
  std::string type;
  std::string payload;  ///< decoded
  std::vector<Seal> seals;
};

/// Seals a payload: JSON Web Signature in the general JSON serialisation (RFC 7515 section 7.2.1), alg EdDSA
/// with Ed25519 (RFC 8037), one protected header {alg, kid, typ} a signature, all of it canonical JSON.
/// Signatures stand in the order of their kid, so that the same seals give the same bytes. REQUIRES: a
/// payload of kMostPayloadBytes at most; one to kMostSeals keys, all different.
[[nodiscard]] std::string seal(std::string_view payload, std::string_view type,
                               std::span<const SecretKey* const> keys);
[[nodiscard]] std::string seal(std::string_view payload, std::string_view type, const SecretKey& key);

/// What seal() gives for one key, from its parts: where they came one by one. Whether the seal holds is
/// another question. REQUIRES: what seal() does, and a thumbprint.
[[nodiscard]] std::string sealedOf(std::string_view payload, std::string_view type, std::string_view key,
                                   std::span<const std::uint8_t, 64> signature);

/// Reads what seal() can have written and nothing else: no other member, blank, header, alg, or encoding.
/// Errors: InvalidInput "seal-malformed" with the offset, "seal-header-unexpected", "json-too-large".
[[nodiscard]] Expected<Sealed> readSealed(std::string_view text);

[[nodiscard]] bool sealHolds(const Seal& seal, const PublicKey& key);

}  // namespace hingepin::records
