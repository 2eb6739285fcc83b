// SPDX-License-Identifier: Apache-2.0
#include "engine/records/record.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "engine/records/encoding.h"

namespace hingepin::records {
namespace {

constexpr std::string_view kRecordFormat = "hingepin-record/1";
constexpr std::string_view kSignatureFormat = "hingepin-signature/1";

using Members = std::vector<std::pair<std::string, JsonValue>>;

std::string_view typeOf(const Statement& statement) {
  return std::holds_alternative<Record>(statement) ? kRecordType : kSignatureType;
}

Members envelopeMembers(const Envelope& envelope) {
  const ChainPlace& place = envelope.place;
  return {{"chain", jsonObject({{"epoch", jsonString(place.epoch)},
                                {"installation", jsonString(place.installation)},
                                {"key", jsonString(place.key)},
                                {"previous", place.previous ? jsonString(*place.previous) : jsonNull()},
                                {"sequence", jsonInteger(place.sequence)}})},
          {"role", jsonString(envelope.role)},
          {"sealed_utc_ms", jsonInteger(envelope.sealed_utc_ms)}};
}

JsonValue toJson(const Record& record) {
  Members members = envelopeMembers(record.envelope);
  members.emplace_back("format", jsonString(std::string(kRecordFormat)));
  members.emplace_back("content", record.content);
  if (record.amends) members.emplace_back("amends", jsonString(*record.amends));
  if (!record.personal.empty()) {
    Members personal;
    for (const auto& [label, name] : record.personal) personal.emplace_back(label, jsonString(name));
    members.emplace_back("personal", jsonObject(std::move(personal)));
  }
  return jsonObject(std::move(members));
}

JsonValue toJson(const Signature& signature) {
  Members members = envelopeMembers(signature.envelope);
  members.emplace_back("format", jsonString(std::string(kSignatureFormat)));
  members.emplace_back("record", jsonString(signature.record));
  return jsonObject(std::move(members));
}

Expected<std::string> hashNameAt(const JsonNode& object, std::string_view key) {
  return stringAt(object, key, isHashName, "64 hexadecimal digits");
}

Expected<ChainPlace> readPlace(const JsonNode& node) {
  if (auto known = node.expectObject({"epoch", "installation", "key", "previous", "sequence"}); !known) {
    return std::unexpected(known.error());
  }
  auto epoch = stringAt(node, "epoch", isEpoch, "16 bytes in base64url");
  auto installation = stringAt(node, "installation", isThumbprint, "a key's thumbprint");
  auto key = stringAt(node, "key", isThumbprint, "a key's thumbprint");
  const auto sequence = integerAt(node, "sequence", 1);
  const auto previous_node = node.at("previous");
  for (const auto* text : {&epoch, &installation, &key}) {
    if (!*text) return std::unexpected(text->error());
  }
  if (!sequence) return std::unexpected(sequence.error());
  if (!previous_node) return std::unexpected(previous_node.error());
  ChainPlace place{.key = *std::move(key),
                   .installation = *std::move(installation),
                   .epoch = *std::move(epoch),
                   .sequence = *sequence};
  if (previous_node->value().kind != JsonKind::Null) {
    auto previous = hashNameAt(node, "previous");
    if (!previous) return std::unexpected(previous.error());
    place.previous = *std::move(previous);
  }
  if (place.previous.has_value() != (place.sequence > 1)) {
    return previous_node->error("json-value-unexpected", {{"expected", "null at sequence 1, else a hash"}});
  }
  return place;
}

Expected<Envelope> readEnvelope(const JsonNode& root, std::string_view format) {
  const auto found = stringAt(root, "format", [](std::string_view) { return true; }, "");
  if (!found) return std::unexpected(found.error());
  if (*found != format) {
    return root.at("format")->error("json-value-unexpected", {{"expected", std::string(format)}});
  }
  const auto chain = root.at("chain");
  if (!chain) return std::unexpected(chain.error());
  auto place = readPlace(*chain);
  if (!place) return std::unexpected(place.error());
  auto role = stringAt(root, "role", isLabel, "a role such as technician");
  if (!role) return std::unexpected(role.error());
  const auto sealed_utc_ms = integerAt(root, "sealed_utc_ms", 0);
  if (!sealed_utc_ms) return std::unexpected(sealed_utc_ms.error());
  return Envelope{.place = *std::move(place), .role = *std::move(role), .sealed_utc_ms = *sealed_utc_ms};
}

Expected<Statement> readRecord(const JsonNode& root) {
  if (auto known =
          root.expectObject({"amends", "chain", "content", "format", "personal", "role", "sealed_utc_ms"});
      !known) {
    return std::unexpected(known.error());
  }
  auto envelope = readEnvelope(root, kRecordFormat);
  if (!envelope) return std::unexpected(envelope.error());
  const auto content = root.at("content");
  if (!content) return std::unexpected(content.error());
  if (content->value().kind != JsonKind::Object) {
    return content->error("json-value-unexpected", {{"expected", "an object"}});
  }
  Record record{.envelope = *std::move(envelope), .content = content->value()};
  if (root.find("amends")) {
    auto amends = hashNameAt(root, "amends");
    if (!amends) return std::unexpected(amends.error());
    record.amends = *std::move(amends);
  }
  if (const auto personal = root.find("personal")) {
    const JsonValue& value = personal->value();
    const bool labelled =
        value.kind == JsonKind::Object && !value.keys.empty() && std::ranges::all_of(value.keys, isLabel);
    if (!labelled) {
      return personal->error("json-value-unexpected", {{"expected", "an object of labels and hashes"}});
    }
    for (const std::string& label : value.keys) {
      auto name = hashNameAt(*personal, label);
      if (!name) return std::unexpected(name.error());
      record.personal.emplace(label, *std::move(name));
    }
  }
  return record;
}

Expected<Statement> readSignature(const JsonNode& root) {
  if (auto known = root.expectObject({"chain", "format", "record", "role", "sealed_utc_ms"}); !known) {
    return std::unexpected(known.error());
  }
  auto envelope = readEnvelope(root, kSignatureFormat);
  if (!envelope) return std::unexpected(envelope.error());
  auto record = hashNameAt(root, "record");
  if (!record) return std::unexpected(record.error());
  return Signature{.envelope = *std::move(envelope), .record = *std::move(record)};
}

}  // namespace

const Envelope& envelopeOf(const Statement& statement) {
  return std::visit([](const auto& any) -> const Envelope& { return any.envelope; }, statement);
}

bool isLabel(std::string_view text) {
  const auto is_part = [](char byte) { return (byte >= 'a' && byte <= 'z') || (byte >= '0' && byte <= '9'); };
  bool after_hyphen = true;
  for (const char byte : text) {
    if (!is_part(byte) && (byte != '-' || after_hyphen)) return false;
    after_hyphen = byte == '-';
  }
  return !after_hyphen && text.size() <= 64;
}

Expected<std::string> payloadOf(const Statement& statement) {
  Expected<std::string> payload =
      canonicalJson(std::visit([](const auto& any) { return toJson(any); }, statement));
  if (!payload) return payload;
  // The reader is the one home of the rules.
  if (Expected<Statement> read = readPayload(*payload, typeOf(statement)); !read) {
    return std::unexpected(std::move(read.error()));
  }
  return payload;
}

Expected<Statement> readPayload(std::string_view payload, std::string_view type) {
  const Expected<JsonDocument> document = readCanonicalJson(payload, kMostPayloadBytes);
  if (!document) return std::unexpected(document.error());
  if (Expected<void> done = checkSealable(document->root); !done) return std::unexpected(done.error());
  return type == kRecordType ? readRecord(JsonNode(*document)) : readSignature(JsonNode(*document));
}

Expected<SealedStatement> sealStatement(const Statement& statement, const SecretKey& key) {
  if (envelopeOf(statement).place.key != key.id()) {
    return fail(ErrorKind::InvalidInput, "seal-key-mismatch");
  }
  const Expected<std::string> payload = payloadOf(statement);
  if (!payload) return std::unexpected(payload.error());
  return SealedStatement{hashName(*payload), seal(*payload, typeOf(statement), key)};
}

Head headAfter(const ChainPlace& place, std::string name) {
  return {.key = place.key, .epoch = place.epoch, .sequence = place.sequence, .name = std::move(name)};
}

}  // namespace hingepin::records
