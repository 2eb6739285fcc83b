// SPDX-License-Identifier: Apache-2.0
#include "engine/sync/parcel.h"

#include <algorithm>
#include <charconv>
#include <utility>

#include "engine/records/canonical_json.h"
#include "engine/records/chain.h"
#include "engine/records/encoding.h"
#include "engine/records/seal.h"

namespace hingepin::sync {
namespace {

using records::jsonArray;
using records::jsonInteger;
using records::jsonObject;
using records::jsonString;

constexpr const char* kParcelFormat = "hingepin-parcel/1";
constexpr const char* kDeviceFormat = "hingepin-device/1";
constexpr std::string_view kWanted = "wanted-";
constexpr std::size_t kSourceLength = 64 + 1 + 32;
constexpr int kSequenceDigits = 12;

std::string digits(std::int64_t number, std::size_t width) {
  std::string text = std::to_string(number);
  return text.size() < width ? std::string(width - text.size(), '0') + text : text;
}

bool isHexadecimal(std::string_view text) {
  return std::ranges::all_of(
      text, [](char byte) { return (byte >= '0' && byte <= '9') || (byte >= 'a' && byte <= 'f'); });
}

bool isSource(std::string_view text) {
  return text.size() == kSourceLength && text[64] == '-' && isHexadecimal(text.substr(0, 64)) &&
         isHexadecimal(text.substr(65));
}

bool isAny(std::string_view) { return true; }

/// "000000000012-HASH"
std::string placeText(const ParcelPlace& place) {
  return digits(place.sequence, kSequenceDigits) + "-" + place.name;
}

std::optional<ParcelPlace> placeOfText(std::string_view source, std::string_view text) {
  if (text.size() != kSequenceDigits + 65U || text[kSequenceDigits] != '-') return std::nullopt;
  ParcelPlace place{.source = std::string(source), .sequence = 0, .name = std::string(text.substr(13))};
  const std::string_view number = text.substr(0, kSequenceDigits);
  const auto [end, code] = std::from_chars(number.data(), number.data() + number.size(), place.sequence);
  const bool sound = code == std::errc() && end == number.data() + number.size() && place.sequence >= 1 &&
                     records::isHashName(place.name) && isSource(source);
  return sound ? std::optional(place) : std::nullopt;
}

std::string lineOf(std::vector<std::pair<std::string, JsonValue>> members) {
  return records::canonicalJson(jsonObject(std::move(members))).value_or("");
}

std::unexpected<Error> altered(const ParcelPlace& place) {
  return fail(ErrorKind::InvalidInput, "parcel-altered",
              {{"source", shortName(place.source)},
               {"sequence", Amount{static_cast<double>(place.sequence), "1", 0}}});
}

/// A sealed payload of one of the types here, read as canonical JSON of one format.
struct Opened {
  records::Sealed sealed;
  JsonDocument document;
};
std::optional<Opened> openSealed(std::string_view text, std::string_view type) {
  Expected<records::Sealed> sealed = records::readSealed(text);
  if (!sealed || sealed->type != type || sealed->seals.size() != 1) return std::nullopt;
  Expected<JsonDocument> document = records::readCanonicalJson(sealed->payload, records::kMostPayloadBytes);
  if (!document || document->root.kind != JsonKind::Object) return std::nullopt;
  return Opened{*std::move(sealed), *std::move(document)};
}

std::optional<std::vector<ParcelPlace>> readSeen(const JsonNode& root) {
  const auto node = root.at("seen");
  if (!node) return std::nullopt;
  const auto elements = node->elements();
  if (!elements) return std::nullopt;
  std::vector<ParcelPlace> seen;
  for (const JsonNode& each : *elements) {
    if (!each.expectObject({"name", "sequence", "source"})) return std::nullopt;
    auto name = records::stringAt(each, "name", records::isHashName, "");
    const auto sequence = records::integerAt(each, "sequence", 1);
    auto source = records::stringAt(each, "source", isSource, "");
    if (!name || !sequence || !source) return std::nullopt;
    seen.push_back({*std::move(source), *sequence, *std::move(name)});
  }
  return seen;
}

struct ReadManifest {
  Manifest manifest;
  std::string body;  ///< hash of all after the manifest's line
};

std::optional<ReadManifest> readAll(std::string_view text) {
  const auto opened = openSealed(text, records::kParcelType);
  if (!opened) return std::nullopt;
  const JsonNode root(opened->document);
  if (!root.expectObject({"body", "device", "epoch", "format", "previous", "seen", "sequence", "voucher"})) {
    return std::nullopt;
  }
  const auto format = records::stringAt(root, "format", isAny, "");
  auto body = records::stringAt(root, "body", records::isHashName, "");
  const auto device = records::stringAt(root, "device", isAny, "");
  auto epoch = records::stringAt(root, "epoch", records::isEpoch, "");
  const auto sequence = records::integerAt(root, "sequence", 1);
  auto seen = readSeen(root);
  if (!format || *format != kParcelFormat || !body || !device || !epoch || !sequence || !seen) {
    return std::nullopt;
  }
  const auto key = records::readPublicKey(*device);
  if (!key || !records::sealHolds(opened->sealed.seals.front(), *key)) return std::nullopt;
  ReadManifest read{.manifest = {.place = {.source = sourceOf(*key, *epoch),
                                           .sequence = *sequence,
                                           .name = records::hashName(opened->sealed.payload)},
                                 .seen = *std::move(seen),
                                 .device = *key,
                                 .epoch = *std::move(epoch)},
                    .body = *std::move(body)};
  if (root.find("previous")) {
    auto previous = records::stringAt(root, "previous", records::isHashName, "");
    if (!previous) return std::nullopt;
    read.manifest.previous = *std::move(previous);
  }
  if (root.find("voucher")) {
    auto voucher = records::stringAt(root, "voucher", isAny, "");
    if (!voucher) return std::nullopt;
    read.manifest.voucher = *std::move(voucher);
  }
  if (read.manifest.previous.has_value() != (*sequence > 1)) return std::nullopt;
  return read;
}

}  // namespace

std::string sourceOf(const records::PublicKey& device, std::string_view epoch) {
  return records::hashName(records::publicKeyText(device)) + "-" +
         records::hexadecimal(records::fromBase64Url(epoch).value_or(""));
}

std::string shortName(std::string_view source) { return std::string(source.substr(0, 12)); }

std::string parcelFolder(std::string_view source, std::int64_t sequence) {
  return "parcels/" + std::string(source) + "/" + digits(sequence / kPlacesInFolder, 8);
}

std::string parcelObject(const ParcelPlace& place) {
  return parcelFolder(place.source, place.sequence) + "/" + placeText(place);
}

std::optional<ParcelPlace> parcelOfFile(std::string_view source, std::string_view file) {
  return placeOfText(source, file);
}

std::string headObject(const ParcelPlace& place) {
  return std::string(kHeadsFolder) + "/" + place.source + "-" + placeText(place);
}

std::optional<ParcelPlace> headOfFile(std::string_view file) {
  if (file.size() <= kSourceLength || file[kSourceLength] != '-') return std::nullopt;
  return placeOfText(file.substr(0, kSourceLength), file.substr(kSourceLength + 1));
}

std::string wantedObject(const Wanted& wanted) {
  const std::string start = std::string(kHeadsFolder) + "/" + std::string(kWanted);
  switch (wanted.kind) {
    case Wanted::Kind::Parcel:
      return start + "parcel-" + wanted.parcel.source + "-" + placeText(wanted.parcel);
    case Wanted::Kind::Blob:
      return start + "blob-" + wanted.name;
    case Wanted::Kind::Personal:
      return start + "personal-" + wanted.name;
  }
  return "";
}

std::optional<Wanted> wantedOfFile(std::string_view file) {
  if (!file.starts_with(kWanted)) return std::nullopt;
  file.remove_prefix(kWanted.size());
  const auto rest = [&](std::string_view start) {
    return file.starts_with(start) ? std::optional(file.substr(start.size())) : std::nullopt;
  };
  if (const auto place = rest("parcel-")) {
    auto parcel = headOfFile(*place);
    if (!parcel) return std::nullopt;
    return Wanted{.kind = Wanted::Kind::Parcel, .parcel = *std::move(parcel)};
  }
  for (const auto& [start, kind] :
       {std::pair{"blob-", Wanted::Kind::Blob}, std::pair{"personal-", Wanted::Kind::Personal}}) {
    const auto name = rest(start);
    if (name && records::isHashName(*name)) return Wanted{.kind = kind, .name = std::string(*name)};
  }
  return std::nullopt;
}

std::string blobPieceObject(std::string_view hash) {
  return "pieces/" + std::string(hash.substr(0, 2)) + "/" + std::string(hash);
}

std::string personalFolder(std::string_view name) { return "personal/" + std::string(name); }

std::string personalPieceObject(std::string_view name, std::int64_t number) {
  return personalFolder(name) + "/" + digits(number, 6);
}

std::string blobLine(std::string_view bytes, const std::string& media_type) {
  std::vector<JsonValue> pieces;
  for (std::size_t at = 0; at < bytes.size(); at += kPieceBytes) {
    pieces.push_back(jsonString(records::hashName(bytes.substr(at, kPieceBytes))));
  }
  return lineOf({{"blob", jsonString(records::hashName(bytes))},
                 {"media_type", jsonString(media_type)},
                 {"pieces", jsonArray(std::move(pieces))},
                 {"size", jsonInteger(static_cast<std::int64_t>(bytes.size()))}});
}

std::string personalLine(const store::Personal& personal) {
  if (personal.erased) return lineOf({{"erased", jsonString(personal.name)}});
  return lineOf(
      {{"personal", jsonString(personal.name)},
       {"size", jsonInteger(static_cast<std::int64_t>(personal.salt.size() + personal.bytes.size()))}});
}

std::optional<Item> readItem(std::string_view line) {
  if (line.starts_with(R"({"payload":)")) return Item{.kind = Item::Kind::Sealed};
  const auto document = records::readCanonicalJson(line, kMostParcelBytes);
  if (!document || document->root.kind != JsonKind::Object) return std::nullopt;
  const JsonNode root(*document);
  const auto hash = [&](const char* key) { return records::stringAt(root, key, records::isHashName, ""); };
  if (root.find("erased")) {
    auto name = hash("erased");
    if (!name || !root.expectObject({"erased"})) return std::nullopt;
    return Item{.kind = Item::Kind::Erased, .name = *std::move(name)};
  }
  const auto size = records::integerAt(root, "size", 0);
  if (!size || *size > static_cast<std::int64_t>(store::kMostBlobBytes + 32)) return std::nullopt;
  const std::int64_t count =
      (*size + static_cast<std::int64_t>(kPieceBytes) - 1) / static_cast<std::int64_t>(kPieceBytes);
  if (root.find("personal")) {
    auto name = hash("personal");
    if (!name || !root.expectObject({"personal", "size"}) || *size < 32) return std::nullopt;
    Item item{.kind = Item::Kind::Personal, .name = *std::move(name), .size = *size};
    for (std::int64_t number = 0; number < count; ++number) {
      item.pieces.push_back(personalPieceObject(item.name, number));
    }
    return item;
  }
  auto name = hash("blob");
  auto media_type = records::stringAt(root, "media_type", isAny, "");
  const auto pieces = root.at("pieces");
  if (!name || !media_type || !pieces || !root.expectObject({"blob", "media_type", "pieces", "size"})) {
    return std::nullopt;
  }
  const auto elements = pieces->elements();
  if (!elements || std::ssize(*elements) != count) return std::nullopt;
  Item item{.kind = Item::Kind::Blob,
            .name = *std::move(name),
            .media_type = *std::move(media_type),
            .size = *size};
  for (const JsonNode& each : *elements) {
    const auto piece = each.string();
    if (!piece || !records::isHashName(*piece)) return std::nullopt;
    item.pieces.push_back(blobPieceObject(*piece));
  }
  return item;
}

std::string parcelBytes(std::string_view manifest, const std::vector<std::string>& lines) {
  std::size_t size = manifest.size() + 1 + lines.size();
  for (const std::string& line : lines) size += line.size();
  std::string bytes;
  bytes.reserve(size);
  bytes += manifest;
  bytes += '\n';
  for (const std::string& line : lines) {
    bytes += line;
    bytes += '\n';
  }
  return bytes;
}

Expected<SealedParcel> makeParcel(const Device& device, std::int64_t sequence,
                                  const std::optional<std::string>& previous,
                                  const std::vector<ParcelPlace>& seen, std::string body) {
  std::vector<JsonValue> heads;
  for (const ParcelPlace& each : seen) {
    heads.push_back(jsonObject({{"name", jsonString(each.name)},
                                {"sequence", jsonInteger(each.sequence)},
                                {"source", jsonString(each.source)}}));
  }
  std::vector<std::pair<std::string, JsonValue>> members = {
      {"body", jsonString(records::hashName(body))},
      {"device", jsonString(records::publicKeyText(device.key.publicKey()))},
      {"epoch", jsonString(device.epoch)},
      {"format", jsonString(kParcelFormat)},
      {"seen", jsonArray(std::move(heads))},
      {"sequence", jsonInteger(sequence)}};
  if (previous) members.emplace_back("previous", jsonString(*previous));
  if (!device.voucher.empty()) members.emplace_back("voucher", jsonString(device.voucher));
  const Expected<std::string> payload = records::canonicalJson(jsonObject(std::move(members)));
  if (!payload) return std::unexpected(payload.error());
  SealedParcel parcel{.place = {.source = sourceOf(device.key.publicKey(), device.epoch),
                                .sequence = sequence,
                                .name = records::hashName(*payload)},
                      .manifest = records::seal(*payload, records::kParcelType, device.key),
                      .bytes = ""};
  parcel.bytes = std::move(body.insert(0, parcel.manifest + '\n'));
  return parcel;
}

Expected<OpenedParcel> openParcel(std::string_view bytes, const ParcelPlace& expected) {
  const std::size_t end = bytes.find('\n');
  if (bytes.size() > kMostParcelBytes || end == std::string_view::npos) return altered(expected);
  const std::string_view sealed = bytes.substr(0, end);
  std::string_view body = bytes.substr(end + 1);
  std::optional<ReadManifest> read = readAll(sealed);
  if (!read || records::hashName(body) != read->body) return altered(expected);
  const ParcelPlace& place = read->manifest.place;
  if (place != expected) {
    return fail(ErrorKind::InvalidInput,
                place.source == expected.source ? "parcel-out-of-order" : "parcel-replaced",
                {{"source", shortName(expected.source)},
                 {"sequence", Amount{static_cast<double>(expected.sequence), "1", 0}}});
  }
  OpenedParcel opened{.manifest = std::move(read->manifest), .sealed = std::string(sealed), .lines = {}};
  while (!body.empty()) {
    const std::size_t stop = body.find('\n');
    if (stop == std::string_view::npos) return altered(expected);
    opened.lines.emplace_back(body.substr(0, stop));
    body.remove_prefix(stop + 1);
  }
  return opened;
}

Expected<Manifest> readManifest(std::string_view sealed) {
  std::optional<ReadManifest> read = readAll(sealed);
  if (!read) return altered({});
  return std::move(read->manifest);
}

std::string vouch(const records::PublicKey& device, std::string_view epoch,
                  const records::SecretKey& signer) {
  return records::seal(lineOf({{"device", jsonString(records::publicKeyText(device))},
                               {"epoch", jsonString(std::string(epoch))},
                               {"format", jsonString(kDeviceFormat)}}),
                       records::kDeviceType, signer);
}

bool isVouchedFor(const Manifest& manifest, const records::ListedKeys& keys,
                  const std::optional<records::SignersList>& list) {
  if (!list || manifest.voucher.empty()) return false;
  const Expected<records::Sealed> sealed = records::readSealed(manifest.voucher);
  if (!sealed || sealed->type != records::kDeviceType || sealed->seals.size() != 1) return false;
  const records::Seal& seal = sealed->seals.front();
  const records::PublicKey* const key = keys.find(seal.key);
  if (key == nullptr || !records::sealHolds(seal, *key)) return false;
  const bool revoked =
      std::ranges::find(list->revocations, seal.key, &records::Revocation::key) != list->revocations.end();
  return !revoked &&
         sealed->payload == lineOf({{"device", jsonString(records::publicKeyText(manifest.device))},
                                    {"epoch", jsonString(manifest.epoch)},
                                    {"format", jsonString(kDeviceFormat)}});
}

}  // namespace hingepin::sync
