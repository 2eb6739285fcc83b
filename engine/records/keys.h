// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <string>
#include <string_view>

#include "engine/base/error.h"
#include "engine/records/encoding.h"

namespace hingepin::records {

/// Fills all of a span with random bytes fit for keys; handed in, since the engine has no random source.
using FillBytes = std::function<void(std::span<std::uint8_t>)>;

/// An Ed25519 public key (RFC 8032).
struct PublicKey {
  std::array<std::uint8_t, 32> bytes{};
  bool operator==(const PublicKey&) const = default;
};

/// The JWK thumbprint of a key (RFC 7638, members crv, kty and x of RFC 8037): 43 characters. What `kid`
/// holds and records name people by.
[[nodiscard]] std::string thumbprint(const PublicKey& key);
[[nodiscard]] bool isThumbprint(std::string_view text);

/// The x of a JWK, and back. Points of small order or outside the main subgroup are refused: for such a key a
/// signature could be made without a secret.
/// Errors: InvalidInput "key-malformed".
[[nodiscard]] std::string publicKeyText(const PublicKey& key);
[[nodiscard]] Expected<PublicKey> readPublicKey(std::string_view text);

/// The key as a JSON Web Key (RFC 7517, RFC 8037) with its thumbprint as `kid`: canonical JSON.
[[nodiscard]] std::string jsonWebKey(const PublicKey& key);

/// An Ed25519 secret key. Wiped when it goes.
class SecretKey {
 public:
  /// @param seed the 32 bytes that RFC 8032 calls the private key
  explicit SecretKey(std::span<const std::uint8_t, 32> seed);
  ~SecretKey();
  SecretKey(SecretKey&& other) noexcept;
  SecretKey& operator=(SecretKey&& other) noexcept;
  SecretKey(const SecretKey&) = delete;
  SecretKey& operator=(const SecretKey&) = delete;

  [[nodiscard]] const PublicKey& publicKey() const { return public_key_; }
  /// The thumbprint of the public key.
  [[nodiscard]] const std::string& id() const { return id_; }
  [[nodiscard]] std::span<const std::uint8_t, 32> seed() const { return std::span(bytes_).first<32>(); }
  /// The signature of Ed25519 (pure) over the bytes.
  [[nodiscard]] std::array<std::uint8_t, 64> sign(std::string_view bytes) const;

 private:
  std::array<std::uint8_t, 64> bytes_{};  // seed, then public key
  PublicKey public_key_;
  std::string id_;
};

[[nodiscard]] SecretKey newSecretKey(const FillBytes& fill);

/// Whether the signature over the bytes is the key's. Signatures with a non-canonical S and points of small
/// order are refused.
[[nodiscard]] bool signatureHolds(const PublicKey& key, std::string_view bytes,
                                  std::span<const std::uint8_t, 64> signature);

/// What making one guess at a passphrase costs. The defaults are the second choice of RFC 9106 section 4 (3
/// passes, 64 MiB), on one lane.
struct PassphraseCost {
  std::uint64_t passes = 3;
  std::uint64_t memory_KiB = 65536;
};
inline constexpr std::uint64_t kMostPasses = 64;
inline constexpr std::uint64_t kMostMemory_KiB = 1048576;

/// Errors: InvalidInput "passphrase-too-short" (less than 12 characters), "passphrase-too-plain" (less than 6
/// different characters, digits alone, or mostly runs such as "abcdef" and "4444").
[[nodiscard]] Expected<void> checkPassphrase(std::string_view passphrase);

/// Wraps a secret key: Argon2id (RFC 9106, version 1.3) of the passphrase with a random salt gives the key
/// under which XChaCha20-Poly1305 seals the seed; all else in the text is authenticated with it.
/// @return canonical JSON, "hingepin-key/1"
/// Errors: those of checkPassphrase; InvalidInput "key-cost-out-of-range"; Insufficient "key-memory-short".
[[nodiscard]] Expected<std::string> wrapKey(const SecretKey& key, std::string_view passphrase,
                                            PassphraseCost cost, const FillBytes& fill);

/// Errors: InvalidInput "key-malformed", "key-cost-out-of-range"; "key-not-opened" (wrong passphrase or
/// altered: no one can tell which); Insufficient "key-memory-short".
[[nodiscard]] Expected<SecretKey> unwrapKey(std::string_view text, std::string_view passphrase);

}  // namespace hingepin::records
