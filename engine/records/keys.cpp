// SPDX-License-Identifier: Apache-2.0
#include "engine/records/keys.h"

#include <sodium.h>

#include <algorithm>
#include <set>
#include <utility>
#include <vector>

#include "engine/records/canonical_json.h"

namespace hingepin::records {
namespace {

constexpr std::size_t kLeastPassphrase = 12;
constexpr std::size_t kLeastDifferent = 6;
constexpr std::size_t kMostKeyBytes = 1024;
constexpr std::string_view kFormat = "hingepin-key/1";

using PassphraseSalt = std::array<std::uint8_t, crypto_pwhash_argon2id_SALTBYTES>;
using Nonce = std::array<std::uint8_t, crypto_aead_xchacha20poly1305_ietf_NPUBBYTES>;
constexpr std::size_t kBoxBytes = 32 + crypto_aead_xchacha20poly1305_ietf_ABYTES;

/// Chooses the library's code for this processor; without it all works, slowly.
void prepareLibrary() {
  static const int prepared = sodium_init();
  static_cast<void>(prepared);
}

struct WipedKey {
  std::array<std::uint8_t, crypto_aead_xchacha20poly1305_ietf_KEYBYTES> bytes{};
  WipedKey() = default;
  WipedKey(const WipedKey&) = delete;
  WipedKey& operator=(const WipedKey&) = delete;
  ~WipedKey() { sodium_memzero(bytes.data(), bytes.size()); }
};

struct WrappedKey {
  std::string key;
  PassphraseCost cost;
  std::string nonce;
  std::string salt;
};

// The text without its box: what is authenticated beside the secret.
JsonValue openPart(const WrappedKey& wrapped) {
  return jsonObject({{"format", jsonString(std::string(kFormat))},
                     {"kdf", jsonString("argon2id")},
                     {"key", jsonString(wrapped.key)},
                     {"memory_KiB", jsonInteger(static_cast<std::int64_t>(wrapped.cost.memory_KiB))},
                     {"nonce", jsonString(base64Url(bytesOf(wrapped.nonce)))},
                     {"passes", jsonInteger(static_cast<std::int64_t>(wrapped.cost.passes))},
                     {"salt", jsonString(base64Url(bytesOf(wrapped.salt)))}});
}

std::string canonicalOpenPart(const WrappedKey& wrapped) {
  return canonicalJson(openPart(wrapped)).value_or("");
}

Expected<void> derive(std::string_view passphrase, const WrappedKey& wrapped, WipedKey& derived) {
  if (wrapped.cost.passes < 1 || wrapped.cost.passes > kMostPasses || wrapped.cost.memory_KiB < 8 ||
      wrapped.cost.memory_KiB > kMostMemory_KiB) {
    return fail(ErrorKind::InvalidInput, "key-cost-out-of-range");
  }
  prepareLibrary();
  const int failed =
      crypto_pwhash_argon2id(derived.bytes.data(), derived.bytes.size(), passphrase.data(), passphrase.size(),
                             bytesOf(wrapped.salt).data(), wrapped.cost.passes,
                             wrapped.cost.memory_KiB * 1024, crypto_pwhash_argon2id_ALG_ARGON2ID13);
  if (failed != 0) return fail(ErrorKind::Insufficient, "key-memory-short");
  return {};
}

std::unexpected<Error> malformedKey() { return fail(ErrorKind::InvalidInput, "key-malformed"); }

}  // namespace

std::string publicKeyText(const PublicKey& key) { return base64Url(key.bytes); }

std::string thumbprint(const PublicKey& key) {
  return base64Url(bytesOf(sha256(R"({"crv":"Ed25519","kty":"OKP","x":")" + publicKeyText(key) + "\"}")));
}

std::string jsonWebKey(const PublicKey& key) {
  return R"({"alg":"EdDSA","crv":"Ed25519","kid":")" + thumbprint(key) + R"(","kty":"OKP","x":")" +
         publicKeyText(key) + "\"}";
}

bool isThumbprint(std::string_view text) { return text.size() == 43 && fromBase64Url(text).has_value(); }

Expected<PublicKey> readPublicKey(std::string_view text) {
  const std::optional<std::string> bytes = fromBase64Url(text);
  PublicKey key;
  if (!bytes || bytes->size() != key.bytes.size()) return malformedKey();
  std::ranges::copy(bytesOf(*bytes), key.bytes.begin());
  if (crypto_core_ed25519_is_valid_point(key.bytes.data()) != 1) return malformedKey();
  return key;
}

SecretKey::SecretKey(std::span<const std::uint8_t, 32> seed) {
  crypto_sign_seed_keypair(public_key_.bytes.data(), bytes_.data(), seed.data());
  id_ = thumbprint(public_key_);
}

SecretKey::~SecretKey() { sodium_memzero(bytes_.data(), bytes_.size()); }

SecretKey::SecretKey(SecretKey&& other) noexcept { *this = std::move(other); }

SecretKey& SecretKey::operator=(SecretKey&& other) noexcept {
  if (this == &other) return *this;
  bytes_ = other.bytes_;
  public_key_ = other.public_key_;
  id_ = std::move(other.id_);
  sodium_memzero(other.bytes_.data(), other.bytes_.size());
  return *this;
}

std::array<std::uint8_t, 64> SecretKey::sign(std::string_view bytes) const {
  std::array<std::uint8_t, 64> signature;
  crypto_sign_detached(signature.data(), nullptr, bytesOf(bytes).data(), bytes.size(), bytes_.data());
  return signature;
}

SecretKey newSecretKey(const FillBytes& fill) {
  WipedKey seed;
  fill(seed.bytes);
  return SecretKey(seed.bytes);
}

bool signatureHolds(const PublicKey& key, std::string_view bytes,
                    std::span<const std::uint8_t, 64> signature) {
  return crypto_sign_verify_detached(signature.data(), bytesOf(bytes).data(), bytes.size(),
                                     key.bytes.data()) == 0;
}

Expected<void> checkPassphrase(std::string_view passphrase) {
  std::vector<char> characters;  // of each character its first byte: enough to count and compare
  for (const char byte : passphrase) {
    if ((static_cast<unsigned char>(byte) & 0xC0U) != 0x80U) characters.push_back(byte);
  }
  if (characters.size() < kLeastPassphrase) {
    return fail(ErrorKind::InvalidInput, "passphrase-too-short",
                {{"least", Amount{static_cast<double>(kLeastPassphrase), "1", 0}}});
  }
  // Whole characters differ where their bytes do, so bytes are what is counted here.
  const bool few = std::set<char>(passphrase.begin(), passphrase.end()).size() < kLeastDifferent;
  const bool digits_only =
      std::ranges::all_of(characters, [](char character) { return character >= '0' && character <= '9'; });
  std::size_t runs = 0;
  for (std::size_t at = 1; at < characters.size(); ++at) {
    const int step = int{characters[at]} - int{characters[at - 1]};
    const bool ascii = static_cast<unsigned char>(characters[at]) < 0x80;
    if (ascii && step >= -1 && step <= 1) ++runs;
  }
  if (few || digits_only || runs * 2 >= characters.size()) {
    return fail(ErrorKind::InvalidInput, "passphrase-too-plain");
  }
  return {};
}

Expected<std::string> wrapKey(const SecretKey& key, std::string_view passphrase, PassphraseCost cost,
                              const FillBytes& fill) {
  if (Expected<void> strong = checkPassphrase(passphrase); !strong) return std::unexpected(strong.error());
  PassphraseSalt salt{};
  Nonce nonce{};
  fill(salt);
  fill(nonce);
  const WrappedKey wrapped{.key = key.id(), .cost = cost, .nonce = textOf(nonce), .salt = textOf(salt)};
  WipedKey derived;
  if (Expected<void> done = derive(passphrase, wrapped, derived); !done) return std::unexpected(done.error());
  const std::string open_part = canonicalOpenPart(wrapped);
  std::array<std::uint8_t, kBoxBytes> box{};
  crypto_aead_xchacha20poly1305_ietf_encrypt(box.data(), nullptr, key.seed().data(), key.seed().size(),
                                             bytesOf(open_part).data(), open_part.size(), nullptr,
                                             nonce.data(), derived.bytes.data());
  JsonValue whole = openPart(wrapped);
  whole.keys.emplace_back("box");
  whole.items.push_back(jsonString(base64Url(box)));
  return canonicalJson(whole);
}

Expected<SecretKey> unwrapKey(std::string_view text, std::string_view passphrase) {
  const Expected<JsonDocument> document = readCanonicalJson(text, kMostKeyBytes);
  if (!document || !checkSealable(document->root)) return malformedKey();
  const JsonNode root(*document);
  if (!root.expectObject({"box", "format", "kdf", "key", "memory_KiB", "nonce", "passes", "salt"})) {
    return malformedKey();
  }
  const auto text_at = [&root](std::string_view name) {
    return stringAt(root, name, [](std::string_view) { return true; }, "").value_or("");
  };
  const auto bytes_at = [&text_at](std::string_view name) {
    return fromBase64Url(text_at(name)).value_or("");
  };
  const WrappedKey wrapped{
      .key = text_at("key"),
      .cost = {.passes = static_cast<std::uint64_t>(integerAt(root, "passes", 0).value_or(0)),
               .memory_KiB = static_cast<std::uint64_t>(integerAt(root, "memory_KiB", 0).value_or(0))},
      .nonce = bytes_at("nonce"),
      .salt = bytes_at("salt")};
  const std::string box = bytes_at("box");
  if (text_at("format") != kFormat || text_at("kdf") != "argon2id" || box.size() != kBoxBytes ||
      wrapped.nonce.size() != Nonce{}.size() || wrapped.salt.size() != PassphraseSalt{}.size()) {
    return malformedKey();
  }
  WipedKey derived;
  if (Expected<void> done = derive(passphrase, wrapped, derived); !done) return std::unexpected(done.error());
  const std::string open_part = canonicalOpenPart(wrapped);
  WipedKey seed;
  const int failed = crypto_aead_xchacha20poly1305_ietf_decrypt(
      seed.bytes.data(), nullptr, nullptr, bytesOf(box).data(), box.size(), bytesOf(open_part).data(),
      open_part.size(), bytesOf(wrapped.nonce).data(), derived.bytes.data());
  if (failed != 0) return fail(ErrorKind::InvalidInput, "key-not-opened");
  SecretKey key(seed.bytes);
  if (key.id() != wrapped.key) return malformedKey();
  return key;
}

}  // namespace hingepin::records
