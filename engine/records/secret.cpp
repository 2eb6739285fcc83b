// SPDX-License-Identifier: Apache-2.0
#include "engine/records/secret.h"

#include <sodium.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <vector>

#include "engine/base/strict_json.h"
#include "engine/records/canonical_json.h"
#include "engine/records/encoding.h"

namespace hingepin::records {
namespace {

constexpr const char* kSecretFormat = "hingepin-secret/1";

using Nonce = std::array<std::uint8_t, crypto_aead_xchacha20poly1305_ietf_NPUBBYTES>;

/// Wiped when it goes.
struct DerivedKey {
  std::array<std::uint8_t, crypto_aead_xchacha20poly1305_ietf_KEYBYTES> bytes{};
  explicit DerivedKey(const SecretKey& owner) {
    static const int prepared = sodium_init();
    static_cast<void>(prepared);
    const std::string_view context = kSecretFormat;
    crypto_generichash(bytes.data(), bytes.size(), bytesOf(context).data(), context.size(),
                       owner.seed().data(), owner.seed().size());
  }
  DerivedKey(const DerivedKey&) = delete;
  DerivedKey& operator=(const DerivedKey&) = delete;
  ~DerivedKey() { sodium_memzero(bytes.data(), bytes.size()); }
};

/// What stands beside the box, and is authenticated with it.
std::string openPart(const std::string& owner, const Nonce& nonce) {
  return kSecretFormat + (" " + owner) + " " + base64Url(nonce);
}

}  // namespace

std::string sealSecret(std::string_view secret, const SecretKey& owner, const FillBytes& fill) {
  Nonce nonce{};
  fill(nonce);
  const DerivedKey key(owner);
  const std::string beside = openPart(owner.id(), nonce);
  std::vector<std::uint8_t> box(secret.size() + crypto_aead_xchacha20poly1305_ietf_ABYTES);
  crypto_aead_xchacha20poly1305_ietf_encrypt(box.data(), nullptr, bytesOf(secret).data(), secret.size(),
                                             bytesOf(beside).data(), beside.size(), nullptr, nonce.data(),
                                             key.bytes.data());
  return canonicalJson(jsonObject({{"box", jsonString(base64Url(box))},
                                   {"format", jsonString(kSecretFormat)},
                                   {"key", jsonString(owner.id())},
                                   {"nonce", jsonString(base64Url(nonce))}}))
      .value_or("");
}

Expected<std::string> openSecret(std::string_view text, const SecretKey& owner) {
  const auto refused = [] { return fail(ErrorKind::InvalidInput, "secret-not-opened"); };
  const auto document = readJson(std::string(text), "");
  if (!document || document->root.kind != JsonKind::Object) return refused();
  const JsonNode root(*document);
  const auto at = [&](std::string_view key) {
    const auto node = root.find(key);
    return node ? node->string().value_or("") : "";
  };
  const auto nonce_bytes = fromBase64Url(at("nonce"));
  const auto box = fromBase64Url(at("box"));
  Nonce nonce{};
  if (at("format") != kSecretFormat || at("key") != owner.id() || !nonce_bytes ||
      nonce_bytes->size() != nonce.size() || !box ||
      box->size() < crypto_aead_xchacha20poly1305_ietf_ABYTES) {
    return refused();
  }
  std::ranges::copy(bytesOf(*nonce_bytes), nonce.begin());
  const DerivedKey key(owner);
  const std::string beside = openPart(owner.id(), nonce);
  std::string secret(box->size() - crypto_aead_xchacha20poly1305_ietf_ABYTES, '\0');
  const int failed = crypto_aead_xchacha20poly1305_ietf_decrypt(
      reinterpret_cast<std::uint8_t*>(secret.data()), nullptr, nullptr, bytesOf(*box).data(), box->size(),
      bytesOf(beside).data(), beside.size(), nonce.data(), key.bytes.data());
  if (failed != 0) return refused();
  return secret;
}

}  // namespace hingepin::records
