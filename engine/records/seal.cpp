// SPDX-License-Identifier: Apache-2.0
#include "engine/records/seal.h"

#include <algorithm>
#include <array>
#include <optional>

#include "engine/records/encoding.h"

namespace hingepin::records {
namespace {

constexpr std::array kTypes = {kRecordType, kSignatureType,    kSignersType, kParcelType,
                               kDeviceType, kConfirmationType, kJoinType,    kAdmissionType};
constexpr std::string_view kBeforePayload = R"({"payload":")";
constexpr std::string_view kBeforeSignatures = R"(","signatures":[)";
constexpr std::string_view kBeforeHeader = R"({"protected":")";
constexpr std::string_view kBeforeSignature = R"(","signature":")";
constexpr std::string_view kAfterSignature = R"("})";
constexpr std::string_view kEnd = "]}";
constexpr std::string_view kBeforeKey = R"({"alg":"EdDSA","kid":")";
constexpr std::string_view kBeforeType = R"(","typ":")";
constexpr std::string_view kAfterType = R"("})";
// Payload in base64url, and more than two seals can take.
constexpr std::size_t kMostSealedBytes = kMostPayloadBytes / 3 * 4 + 2048;

std::string headerText(std::string_view key, std::string_view type) {
  std::string text(kBeforeKey);
  text += key;
  text += kBeforeType;
  text += type;
  text += kAfterType;
  return text;
}

/// Takes a text apart from the front: there is only one way to write a sealed object, so no JSON reader is
/// needed.
class Cursor {
 public:
  explicit Cursor(std::string_view text) : text_(text) {}

  bool skip(std::string_view expected) {
    if (!text_.substr(at_).starts_with(expected)) return false;
    at_ += expected.size();
    return true;
  }
  std::string_view untilQuote() {
    const std::string_view rest = text_.substr(at_);
    const std::string_view value = rest.substr(0, rest.find('"'));
    at_ += value.size();
    return value;
  }
  [[nodiscard]] bool atEnd() const { return at_ == text_.size(); }
  [[nodiscard]] std::unexpected<Error> malformed() const {
    return fail(ErrorKind::InvalidInput, "seal-malformed",
                {{"offset", Amount{static_cast<double>(at_), "1", 0}}});
  }

 private:
  std::string_view text_;
  std::size_t at_ = 0;
};

struct Header {
  std::string_view key;
  std::string_view type;
};

std::optional<Header> readHeader(std::string_view text) {
  Cursor cursor(text);
  if (!cursor.skip(kBeforeKey)) return std::nullopt;
  const std::string_view key = cursor.untilQuote();
  if (!isThumbprint(key) || !cursor.skip(kBeforeType)) return std::nullopt;
  const std::string_view type = cursor.untilQuote();
  const bool known = std::ranges::find(kTypes, type) != kTypes.end();
  if (!known || !cursor.skip(kAfterType) || !cursor.atEnd()) return std::nullopt;
  return Header{key, type};
}

std::string signingInput(std::string_view protected_header, std::string_view encoded_payload) {
  std::string input;
  input.reserve(protected_header.size() + 1 + encoded_payload.size());
  input += protected_header;
  input += '.';
  input += encoded_payload;
  return input;
}

std::string beginningOf(std::string_view encoded_payload, std::size_t seals) {
  std::string text;
  text.reserve(encoded_payload.size() + 512 * seals);
  text += kBeforePayload;
  text += encoded_payload;
  text += kBeforeSignatures;
  return text;
}

void addSignature(std::string& text, std::string_view protected_header,
                  std::span<const std::uint8_t, 64> signature) {
  text += kBeforeHeader;
  text += protected_header;
  text += kBeforeSignature;
  text += base64Url(signature);
  text += kAfterSignature;
}

}  // namespace

std::string seal(std::string_view payload, std::string_view type, std::span<const SecretKey* const> keys) {
  std::vector<const SecretKey*> ordered(keys.begin(), keys.end());
  std::ranges::sort(ordered, {}, [](const SecretKey* key) { return key->id(); });
  const std::string encoded_payload = base64Url(bytesOf(payload));
  std::string text = beginningOf(encoded_payload, ordered.size());
  for (const SecretKey* key : ordered) {
    const std::string protected_header = base64Url(bytesOf(headerText(key->id(), type)));
    if (key != ordered.front()) text += ',';
    addSignature(text, protected_header, key->sign(signingInput(protected_header, encoded_payload)));
  }
  text += kEnd;
  return text;
}

std::string sealedOf(std::string_view payload, std::string_view type, std::string_view key,
                     std::span<const std::uint8_t, 64> signature) {
  std::string text = beginningOf(base64Url(bytesOf(payload)), 1);
  addSignature(text, base64Url(bytesOf(headerText(key, type))), signature);
  text += kEnd;
  return text;
}

std::string seal(std::string_view payload, std::string_view type, const SecretKey& key) {
  const SecretKey* const keys[] = {&key};
  return seal(payload, type, keys);
}

Expected<Sealed> readSealed(std::string_view text) {
  if (text.size() > kMostSealedBytes) {
    return fail(ErrorKind::InvalidInput, "json-too-large",
                {{"most", Amount{static_cast<double>(kMostSealedBytes), "1", 0}}});
  }
  Cursor cursor(text);
  Sealed sealed;
  if (!cursor.skip(kBeforePayload)) return cursor.malformed();
  const std::string_view encoded_payload = cursor.untilQuote();
  std::optional<std::string> payload = fromBase64Url(encoded_payload);
  if (!payload || payload->empty() || payload->size() > kMostPayloadBytes) return cursor.malformed();
  sealed.payload = *std::move(payload);
  if (!cursor.skip(kBeforeSignatures)) return cursor.malformed();
  do {
    Seal seal;
    if (sealed.seals.size() == kMostSeals || !cursor.skip(kBeforeHeader)) return cursor.malformed();
    const std::string_view protected_header = cursor.untilQuote();
    const std::optional<std::string> header_text = fromBase64Url(protected_header);
    if (!header_text || !cursor.skip(kBeforeSignature)) return cursor.malformed();
    const std::optional<Header> header = readHeader(*header_text);
    if (!header || (!sealed.seals.empty() && header->type != sealed.type)) {
      return fail(ErrorKind::InvalidInput, "seal-header-unexpected");
    }
    if (!sealed.seals.empty() && header->key <= sealed.seals.back().key) return cursor.malformed();
    sealed.type = header->type;
    seal.key = header->key;
    seal.signed_bytes = signingInput(protected_header, encoded_payload);
    const std::optional<std::string> signature = fromBase64Url(cursor.untilQuote());
    if (!signature || signature->size() != seal.signature.size() || !cursor.skip(kAfterSignature)) {
      return cursor.malformed();
    }
    std::ranges::copy(bytesOf(*signature), seal.signature.begin());
    sealed.seals.push_back(std::move(seal));
  } while (cursor.skip(","));
  if (!cursor.skip(kEnd) || !cursor.atEnd()) return cursor.malformed();
  return sealed;
}

bool sealHolds(const Seal& seal, const PublicKey& key) {
  return signatureHolds(key, seal.signed_bytes, seal.signature);
}

}  // namespace hingepin::records
