// SPDX-License-Identifier: Apache-2.0
#include "engine/records/signers.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "engine/records/canonical_json.h"
#include "engine/records/chain.h"
#include "engine/records/encoding.h"
#include "engine/records/record.h"

namespace hingepin::records {
namespace {

constexpr std::string_view kFormat = "hingepin-signers/1";

JsonValue toJson(const Signer& signer) {
  std::vector<std::pair<std::string, JsonValue>> members = {
      {"key", jsonString(publicKeyText(signer.key))},
      {"role", jsonString(signer.role)},
      {"valid_from_utc_ms", jsonInteger(signer.valid_from_utc_ms)}};
  if (signer.valid_until_utc_ms) {
    members.emplace_back("valid_until_utc_ms", jsonInteger(*signer.valid_until_utc_ms));
  }
  return jsonObject(std::move(members));
}

JsonValue toJson(const Revocation& revocation) {
  std::vector<JsonValue> trusted;
  for (const TrustedUntil& until : revocation.trusted) {
    trusted.push_back(jsonObject({{"epoch", jsonString(until.epoch)},
                                  {"record", jsonString(until.name)},
                                  {"sequence", jsonInteger(until.sequence)}}));
  }
  return jsonObject({{"key", jsonString(revocation.key)}, {"trusted", jsonArray(std::move(trusted))}});
}

JsonValue toJson(const SignersList& list) {
  std::vector<JsonValue> signers;
  for (const Signer& signer : list.signers) signers.push_back(toJson(signer));
  std::vector<JsonValue> revocations;
  for (const Revocation& revocation : list.revocations) revocations.push_back(toJson(revocation));
  return jsonObject({{"format", jsonString(std::string(kFormat))},
                     {"number", jsonInteger(list.number)},
                     {"previous", list.previous ? jsonString(*list.previous) : jsonNull()},
                     {"revocations", jsonArray(std::move(revocations))},
                     {"signers", jsonArray(std::move(signers))},
                     {"yard_key", jsonString(publicKeyText(list.yard_key))}});
}

Expected<PublicKey> publicKeyAt(const JsonNode& object, std::string_view name) {
  const auto text = stringAt(object, name, [](std::string_view) { return true; }, "");
  if (!text) return std::unexpected(text.error());
  Expected<PublicKey> key = readPublicKey(*text);
  if (!key) {
    return object.at(name)->error("json-value-unexpected",
                                  {{"expected", "an Ed25519 public key in base64url"}});
  }
  return key;
}

Expected<Signer> readSigner(const JsonNode& node) {
  if (auto known = node.expectObject({"key", "role", "valid_from_utc_ms", "valid_until_utc_ms"}); !known) {
    return std::unexpected(known.error());
  }
  const auto key = publicKeyAt(node, "key");
  if (!key) return std::unexpected(key.error());
  auto role = stringAt(node, "role", isLabel, "a role such as technician");
  if (!role) return std::unexpected(role.error());
  const auto from = integerAt(node, "valid_from_utc_ms", 0);
  if (!from) return std::unexpected(from.error());
  Signer signer{.key = *key, .role = *std::move(role), .valid_from_utc_ms = *from};
  if (node.find("valid_until_utc_ms")) {
    const auto until = integerAt(node, "valid_until_utc_ms", *from);
    if (!until) return std::unexpected(until.error());
    signer.valid_until_utc_ms = *until;
  }
  return signer;
}

Expected<TrustedUntil> readTrustedUntil(const JsonNode& node) {
  if (auto known = node.expectObject({"epoch", "record", "sequence"}); !known) {
    return std::unexpected(known.error());
  }
  auto epoch = stringAt(node, "epoch", isEpoch, "16 bytes in base64url");
  auto name = stringAt(node, "record", isHashName, "64 hexadecimal digits");
  const auto sequence = integerAt(node, "sequence", 1);
  if (!epoch) return std::unexpected(epoch.error());
  if (!name) return std::unexpected(name.error());
  if (!sequence) return std::unexpected(sequence.error());
  return TrustedUntil{.epoch = *std::move(epoch), .sequence = *sequence, .name = *std::move(name)};
}

template <class T>
Expected<std::vector<T>> readAll(const JsonNode& object, std::string_view name,
                                 Expected<T> (*read)(const JsonNode&)) {
  const auto array = object.at(name);
  if (!array) return std::unexpected(array.error());
  const auto nodes = array->elements();
  if (!nodes) return std::unexpected(nodes.error());
  std::vector<T> all;
  for (const JsonNode& node : *nodes) {
    Expected<T> one = read(node);
    if (!one) return std::unexpected(std::move(one.error()));
    all.push_back(*std::move(one));
  }
  return all;
}

Expected<Revocation> readRevocation(const JsonNode& node) {
  if (auto known = node.expectObject({"key", "trusted"}); !known) return std::unexpected(known.error());
  auto key = stringAt(node, "key", isThumbprint, "a key's thumbprint");
  if (!key) return std::unexpected(key.error());
  auto trusted = readAll(node, "trusted", readTrustedUntil);
  if (!trusted) return std::unexpected(trusted.error());
  return Revocation{.key = *std::move(key), .trusted = *std::move(trusted)};
}

Expected<SignersList> readList(std::string_view payload) {
  const Expected<JsonDocument> document = readCanonicalJson(payload, kMostPayloadBytes);
  if (!document) return std::unexpected(document.error());
  if (Expected<void> done = checkSealable(document->root); !done) return std::unexpected(done.error());
  const JsonNode root(*document);
  if (auto known = root.expectObject({"format", "number", "previous", "revocations", "signers", "yard_key"});
      !known) {
    return std::unexpected(known.error());
  }
  const auto format =
      stringAt(root, "format", [](std::string_view text) { return text == kFormat; }, kFormat);
  const auto number = integerAt(root, "number", 1);
  const auto yard_key = publicKeyAt(root, "yard_key");
  const auto previous_node = root.at("previous");
  auto signers = readAll(root, "signers", readSigner);
  auto revocations = readAll(root, "revocations", readRevocation);
  if (!format) return std::unexpected(format.error());
  if (!number) return std::unexpected(number.error());
  if (!yard_key) return std::unexpected(yard_key.error());
  if (!previous_node) return std::unexpected(previous_node.error());
  if (!signers) return std::unexpected(signers.error());
  if (!revocations) return std::unexpected(revocations.error());
  SignersList list{.number = *number,
                   .yard_key = *yard_key,
                   .signers = *std::move(signers),
                   .revocations = *std::move(revocations)};
  if (previous_node->value().kind != JsonKind::Null) {
    auto previous = stringAt(root, "previous", isHashName, "64 hexadecimal digits");
    if (!previous) return std::unexpected(previous.error());
    list.previous = *std::move(previous);
  }
  if (list.previous && list.number == 1) {
    return previous_node->error("json-value-unexpected", {{"expected", "null in the first list"}});
  }
  return list;
}

bool isSealedBy(const Sealed& sealed, const PublicKey& key) {
  const std::string id = thumbprint(key);
  const auto seal = std::ranges::find(sealed.seals, id, &Seal::key);
  return seal != sealed.seals.end() && sealHolds(*seal, key);
}

}  // namespace

Expected<SealedSigners> sealSigners(const SignersList& list, const SecretKey& yard_key,
                                    const SecretKey* old_yard_key) {
  if (yard_key.publicKey() != list.yard_key || (old_yard_key && old_yard_key->id() == yard_key.id())) {
    return fail(ErrorKind::InvalidInput, "seal-key-mismatch");
  }
  const Expected<std::string> payload = canonicalJson(toJson(list));
  if (!payload) return std::unexpected(payload.error());
  if (Expected<SignersList> read = readList(*payload); !read) return std::unexpected(std::move(read.error()));
  std::vector<const SecretKey*> keys = {&yard_key};
  if (old_yard_key) keys.push_back(old_yard_key);
  return SealedSigners{hashName(*payload), seal(*payload, kSignersType, keys)};
}

Expected<ReadSigners> readSigners(std::string_view text) {
  Expected<Sealed> sealed = readSealed(text);
  if (!sealed) return std::unexpected(std::move(sealed.error()));
  if (sealed->type != kSignersType) return fail(ErrorKind::InvalidInput, "seal-header-unexpected");
  Expected<SignersList> list = readList(sealed->payload);
  if (!list) return std::unexpected(std::move(list.error()));
  if (!isSealedBy(*sealed, list->yard_key)) return fail(ErrorKind::InvalidInput, "signers-altered");
  std::string name = hashName(sealed->payload);
  return ReadSigners{std::move(name), *std::move(list), *std::move(sealed)};
}

SignersVerdict newestSigners(std::span<const StoredText> lists, std::span<const std::string> accepted_roots) {
  SignersVerdict verdict;
  const auto say = [&verdict](const char* code, const ReadSigners& list) {
    verdict.findings.push_back({.message = {code,
                                            {{"list", list.name},
                                             {"number", countOf(list.list.number)},
                                             {"key", thumbprint(list.list.yard_key)}}},
                                .subject = list.name});
  };

  std::vector<ReadSigners> sound;
  // A text may be kept under several names: which of them comes first must not matter.
  std::set<std::pair<std::string_view, std::optional<std::string>>> seen;
  std::set<std::string_view> sound_texts;
  for (const StoredText& stored : lists) {
    if (!seen.emplace(stored.text, stored.name).second) continue;
    Expected<ReadSigners> read = readSigners(stored.text);
    const std::string name = read ? read->name : "";
    if (read && (!stored.name || *stored.name == name)) {
      if (sound_texts.insert(stored.text).second) sound.push_back(*std::move(read));
      continue;
    }
    const bool altered = read || read.error().message.code == "signers-altered";
    Finding finding{.message = {altered ? "signers-altered" : "signers-malformed", {}},
                    .subject = stored.name.value_or(name)};
    if (!read) finding.cause = read.error();
    finding.message.values.emplace_back("list", finding.subject);
    verdict.findings.push_back(std::move(finding));
  }

  std::map<std::string, std::vector<const ReadSigners*>> by_previous;
  std::map<std::string, const ReadSigners*> by_name;
  const ReadSigners* newest = nullptr;
  std::ptrdiff_t newest_rank = -1;
  for (const ReadSigners& read : sound) {
    by_name.emplace(read.name, &read);
    if (read.list.previous) {
      by_previous[*read.list.previous].push_back(&read);
      continue;
    }
    const std::ptrdiff_t rank = std::ranges::find(accepted_roots, read.name) - accepted_roots.begin();
    if (rank == std::ssize(accepted_roots)) {
      say("signers-root-not-accepted", read);
    } else if (rank > newest_rank) {
      newest = &read;
      newest_rank = rank;
    }
  }
  for (const ReadSigners& read : sound) {
    if (read.list.previous && !by_name.contains(*read.list.previous)) say("signers-not-arrived-yet", read);
  }
  // The name that was accepted last counts even while its list is not here: an older root must not come back.
  if (!accepted_roots.empty() && newest_rank != std::ssize(accepted_roots) - 1) newest = nullptr;
  if (newest == nullptr) {
    verdict.findings.push_back({.message = {"signers-none", {}}});
    return verdict;
  }
  if (newest_rank > 0) say("signers-root-replaced", *newest);

  while (true) {
    std::vector<const ReadSigners*> next;
    for (const ReadSigners* candidate : by_previous[newest->name]) {
      const bool continues = candidate->list.number == newest->list.number + 1 &&
                             isSealedBy(candidate->sealed, newest->list.yard_key);
      if (!continues) {
        say("signers-not-continued", *candidate);
      } else if (std::ranges::find(next, candidate->name, &ReadSigners::name) == next.end()) {
        next.push_back(candidate);
      }
    }
    if (next.size() > 1) {
      for (const ReadSigners* branch : next) say("signers-fork", *branch);
    }
    if (next.size() != 1) break;
    if (next[0]->list.yard_key != newest->list.yard_key) say("signers-key-changed", *next[0]);
    newest = next[0];
  }
  verdict.list = newest->list;
  verdict.name = newest->name;
  return verdict;
}

}  // namespace hingepin::records
