// SPDX-License-Identifier: Apache-2.0
#include "engine/session/join.h"

#include <zlib.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <span>

#include "engine/base/json_walk.h"
#include "engine/records/canonical_json.h"
#include "engine/records/encoding.h"
#include "engine/records/record.h"
#include "engine/records/seal.h"
#include "engine/session/code.h"
#include "engine/session/people.h"
#include "engine/session/yard.h"

namespace hingepin::session {
namespace {

using records::jsonArray;
using records::jsonInteger;
using records::jsonObject;
using records::jsonString;

constexpr std::string_view kJoinPrefix = "HINGEPIN:JOIN:";
constexpr std::string_view kAdmissionPrefix = "HINGEPIN:ADMIT:";
constexpr std::string_view kJoinFormat = "hingepin-join/1";
constexpr std::string_view kAdmissionFormat = "hingepin-admission/1";

/// A code of kMostCodeBytes that unpacks to more than this is none of ours.
constexpr std::size_t kMostUnpackedBytes = 64U << 10U;
constexpr std::size_t kShortKeyCharacters = 12;

using Signature = std::array<std::uint8_t, kSignatureBytes>;

Signature signatureFrom(std::string_view bytes) {
  Signature signature{};
  std::ranges::copy(records::bytesOf(bytes), signature.begin());
  return signature;
}

/// The bytes, and after them the signature of a seal of this type over them.
std::string sealedBytes(std::string bytes, std::string_view type, const records::SecretKey& key) {
  // What seal() wrote can be read.
  const records::Sealed sealed =
      records::readSealed(records::seal(bytes, type, key)).value_or(records::Sealed{});
  bytes += records::textOf(sealed.seals.front().signature);
  return bytes;
}

bool sealedBytesHold(std::string_view bytes, std::string_view signature, std::string_view type,
                     const records::PublicKey& key) {
  const auto sealed =
      records::readSealed(records::sealedOf(bytes, type, records::thumbprint(key), signatureFrom(signature)));
  return sealed && records::sealHolds(sealed->seals.front(), key);
}

/// Takes a signature off the end. REQUIRES: that there is one.
std::string_view takeSignature(std::string_view& bytes) {
  const std::string_view signature = bytes.substr(bytes.size() - kSignatureBytes);
  bytes.remove_suffix(kSignatureBytes);
  return signature;
}

std::string packed(std::string_view text) {
  uLongf size = compressBound(static_cast<uLong>(text.size()));
  std::string bytes(size, '\0');
  // It can't fail: the place is large enough, and a few hundred kilobytes of memory are there.
  (void)compress2(reinterpret_cast<Bytef*>(bytes.data()), &size, reinterpret_cast<const Bytef*>(text.data()),
                  static_cast<uLong>(text.size()), Z_BEST_COMPRESSION);
  bytes.resize(size);
  return bytes;
}

/// What was packed at the beginning of the bytes, which are shortened by it. Nothing for what is not packed
/// so.
std::optional<std::string> unpacked(std::string_view& bytes) {
  std::string text(kMostUnpackedBytes, '\0');
  uLongf size = static_cast<uLongf>(text.size());
  uLong taken = static_cast<uLong>(bytes.size());
  if (uncompress2(reinterpret_cast<Bytef*>(text.data()), &size, reinterpret_cast<const Bytef*>(bytes.data()),
                  &taken) != Z_OK) {
    return std::nullopt;
  }
  text.resize(size);
  bytes.remove_prefix(taken);
  return text;
}

class JoinReader : public CodeWalk {
 public:
  records::PublicKey key(const JsonNode& node) {
    if (const Expected<records::PublicKey> read = records::readPublicKey(taken(node.string()))) return *read;
    keep(node.error("json-value-unexpected", {{"expected", "an Ed25519 public key in base64url"}}));
    return {};
  }
  records::PublicKey keyAt(const JsonNode& node, std::string_view member) {
    return required(node, member, [&](const JsonNode& found) { return key(found); });
  }
};

Expected<Admission> admissionOf(std::string_view json) {
  const Expected<JsonDocument> document = records::readCanonicalJson(json, kMostUnpackedBytes);
  if (!document) return std::unexpected(document.error());
  const JsonNode root(*document);
  JoinReader reader;
  if (!reader.object(root, {"format", "of", "root", "yard_key", "role", "names"}))
    reader.keep(root.wrongKind("an object"));
  reader.format(root, kAdmissionFormat);
  Admission admission;
  admission.of = hashNameOf(reader.text(root, "of", isDigest, "32 bytes in base64url"));
  if (root.find("root"))
    admission.root = hashNameOf(reader.text(root, "root", isDigest, "32 bytes in base64url"));
  admission.yard_key = reader.keyAt(root, "yard_key");
  admission.role = reader.text(root, "role", records::isLabel, "a role such as technician");
  admission.names = reader.required(root, "names", [&](const JsonNode& list) {
    std::vector<std::pair<records::PublicKey, std::string>> names;
    for (const JsonNode& each : reader.taken(list.elements())) {
      const std::vector<JsonNode> pair = reader.taken(each.elements());
      if (pair.size() != 2 || !isName(reader.taken(pair[1].string()))) {
        reader.keep(each.wrongKind("a key and its holder's name"));
        break;
      }
      names.emplace_back(reader.key(pair[0]), reader.taken(pair[1].string()));
    }
    return names;
  });
  if (reader.error()) return std::unexpected(*reader.error());
  return admission;
}

/// The lists from the root to the newest.
Expected<std::vector<records::SealedSigners>> chainOf(const store::Store& store, const std::string& newest) {
  Expected<std::vector<records::SealedSigners>> kept = store.signersLists();
  if (!kept) return kept;
  std::vector<records::SealedSigners> chain;
  for (std::optional<std::string> name = newest; name;) {
    const auto found = std::ranges::find(*kept, *name, &records::SealedSigners::name);
    // newestSigners has read each of them on its way here.
    const records::ReadSigners read = records::readSigners(found->text).value();
    name = read.list.previous;
    chain.insert(chain.begin(), std::move(*found));
  }
  return chain;
}

bool listsKey(const records::SignersList& list, const records::PublicKey& key, std::string_view role,
              std::int64_t utc_ms) {
  return std::ranges::any_of(list.signers, [&](const records::Signer& each) {
    return each.key == key && each.role == role &&
           (!each.valid_until_utc_ms || utc_ms < *each.valid_until_utc_ms);
  });
}

bool revokes(const records::SignersList& list, const records::PublicKey& key) {
  return std::ranges::find(list.revocations, records::thumbprint(key), &records::Revocation::key) !=
         list.revocations.end();
}

}  // namespace

std::string codeOfAdmission(const Admission& admission, const records::SecretKey& yard_key) {
  std::vector<JsonValue> names;
  for (const auto& [key, name] : admission.names)
    names.push_back(jsonArray({jsonString(records::publicKeyText(key)), jsonString(name)}));
  std::vector<std::pair<std::string, JsonValue>> members = {
      {"format", jsonString(std::string(kAdmissionFormat))},
      {"of", jsonString(digestOf(admission.of))},
      {"yard_key", jsonString(records::publicKeyText(admission.yard_key))},
      {"role", jsonString(admission.role)},
      {"names", jsonArray(std::move(names))}};
  if (admission.lists.empty()) members.emplace_back("root", jsonString(digestOf(admission.root)));
  std::string text = canonical(jsonObject(std::move(members)));
  std::string signatures;
  for (const records::SealedSigners& list : admission.lists) {
    const records::Sealed sealed = records::readSealed(list.text).value_or(records::Sealed{});
    text += "\n" + sealed.payload;
    signatures += records::textOf(sealed.seals.front().signature);
  }
  return codeFrom(kAdmissionPrefix,
                  sealedBytes(packed(text) + signatures, records::kAdmissionType, yard_key));
}

std::string shortKey(const records::PublicKey& key) {
  return records::thumbprint(key).substr(0, kShortKeyCharacters);
}

Expected<std::string> askToJoin(const records::SecretKey& key, std::string_view name,
                                const std::string& device, const Moment& now,
                                const records::FillBytes& fill) {
  if (name.find_first_not_of(" \t\r\n") == std::string_view::npos)
    return fail(ErrorKind::InvalidInput, "text-empty");
  if (!isName(name)) return fail(ErrorKind::InvalidInput, "join-name-too-long");
  std::array<std::uint8_t, 16> nonce{};
  fill(nonce);
  Expected<std::string> json =
      records::canonicalJson(jsonObject({{"format", jsonString(std::string(kJoinFormat))},
                                         {"key", jsonString(records::publicKeyText(key.publicKey()))},
                                         {"name", jsonString(std::string(name))},
                                         {"device", jsonString(device)},
                                         {"nonce", jsonString(records::base64Url(nonce))},
                                         {"utc_ms", jsonInteger(now.utc_ms)}}));
  if (!json) return std::unexpected(std::move(json.error()));
  return codeFrom(kJoinPrefix, sealedBytes(*std::move(json), records::kJoinType, key));
}

Expected<Joining> readJoin(std::string_view code) {
  const Expected<std::string> bytes = bytesOfCode(code, kJoinPrefix, "join-code-malformed");
  if (!bytes) return std::unexpected(bytes.error());
  if (bytes->size() <= kSignatureBytes) return fail(ErrorKind::InvalidInput, "join-code-malformed");
  std::string_view json = *bytes;
  const std::string_view signature = takeSignature(json);
  const Expected<JsonDocument> document = records::readCanonicalJson(json, kMostCodeBytes);
  if (!document) return std::unexpected(document.error());
  const JsonNode root(*document);
  JoinReader reader;
  if (!reader.object(root, {"format", "key", "name", "device", "nonce", "utc_ms"}))
    reader.keep(root.wrongKind("an object"));
  reader.format(root, kJoinFormat);
  Joining joining;
  joining.key = reader.keyAt(root, "key");
  joining.name = reader.text(root, "name", isName, "a name of one line");
  joining.device = reader.text(root, "device", isName, "a name of one line");
  joining.nonce = reader.text(root, "nonce", isNonce, "16 bytes in base64url");
  joining.utc_ms = reader.taken(records::integerAt(root, "utc_ms", 0));
  if (reader.error()) return std::unexpected(*reader.error());
  if (!sealedBytesHold(json, signature, records::kJoinType, joining.key))
    return fail(ErrorKind::InvalidInput, "join-altered");
  return joining;
}

Expected<LetIn> letIn(store::Store& store, const records::SecretKey& yard_key, std::string_view join_code,
                      std::string_view role, const Moment& now, const records::FillBytes& fill) {
  const Expected<Joining> joining = readJoin(join_code);
  if (!joining) return std::unexpected(joining.error());
  const auto refuse = [&](const char* code) {
    return fail(ErrorKind::InvalidInput, code, {{"key", shortKey(joining->key)}});
  };
  if (std::abs(now.utc_ms - joining->utc_ms) > kJoinHolds_ms) return refuse("join-too-old");
  Expected<store::Batch> batch = store.beginBatch();
  if (!batch) return std::unexpected(batch.error());
  Expected<records::SignersVerdict> newest = signersOf(store);
  if (!newest) return std::unexpected(newest.error());
  if (newest->list->yard_key != yard_key.publicKey()) {
    return fail(ErrorKind::InvalidInput, "yard-key-other",
                {{"key", records::thumbprint(newest->list->yard_key)}});
  }
  if (revokes(*newest->list, joining->key)) return refuse("join-key-revoked");
  if (!listsKey(*newest->list, joining->key, role, now.utc_ms)) {
    // By the clock of either phone its holder may sign from now on.
    const Expected<std::string> added =
        addSigners(store, yard_key,
                   {{.key = joining->key,
                     .role = std::string(role),
                     .valid_from_utc_ms = std::min(now.utc_ms, joining->utc_ms)}},
                   now.utc_ms);
    if (!added) return std::unexpected(added.error());
    newest = signersOf(store);
    if (!newest) return std::unexpected(newest.error());
  }
  Expected<Names> names = namesOf(store);
  if (!names) return std::unexpected(names.error());
  if (std::string& known = (*names)[records::thumbprint(joining->key)]; known != joining->name) {
    known = joining->name;
    const Expected<std::string> kept =
        keepName(store, records::thumbprint(joining->key), joining->name, fill, now.utc_ms);
    if (!kept) return std::unexpected(kept.error());
  }
  Expected<std::vector<records::SealedSigners>> chain = chainOf(store, newest->name);
  if (!chain) return std::unexpected(chain.error());
  Admission admission{.of = records::hashName(*bytesOfCode(join_code, kJoinPrefix, "join-code-malformed")),
                      .root = chain->front().name,
                      .yard_key = yard_key.publicKey(),
                      .role = std::string(role)};
  LetIn bare{.code = codeOfAdmission(admission, yard_key)};
  // A list that another key sealed too has no place in a code.
  const bool fits = std::ranges::all_of(*chain, [&](const records::SealedSigners& list) {
    const records::Sealed sealed = records::readSealed(list.text).value_or(records::Sealed{});
    return sealed.seals.size() == 1 && sealed.seals.front().key == yard_key.id();
  });
  if (fits) admission.lists = *std::move(chain);
  const LetIn listed{.code = codeOfAdmission(admission, yard_key), .has_lists = fits};
  for (const records::Signer& each : newest->list->signers) {
    const auto named = names->find(records::thumbprint(each.key));
    if (each.key == joining->key || named == names->end() || !isName(named->second)) continue;
    admission.names.emplace_back(each.key, std::move(named->second));
    names->erase(named);
  }
  const LetIn whole{.code = codeOfAdmission(admission, yard_key), .has_lists = fits};
  if (const Expected<void> committed = batch->commit(); !committed) return std::unexpected(committed.error());
  for (const LetIn& each : {whole, listed}) {
    if (each.code.size() <= kMostCodeBytes) return each;
  }
  return bare;
}

Expected<Admission> readAdmission(std::string_view code) {
  const auto malformed = [] { return fail(ErrorKind::InvalidInput, "admission-code-malformed"); };
  const Expected<std::string> bytes = bytesOfCode(code, kAdmissionPrefix, "admission-code-malformed");
  if (!bytes) return std::unexpected(bytes.error());
  if (bytes->size() <= kSignatureBytes) return malformed();
  std::string_view sealed = *bytes;
  const std::string_view signature = takeSignature(sealed);
  std::string_view seals = sealed;
  const std::optional<std::string> text = unpacked(seals);
  if (!text) return malformed();
  std::string_view lines = *text;
  Expected<Admission> admission = admissionOf(lines.substr(0, lines.find('\n')));
  if (!admission) return admission;
  if (!sealedBytesHold(sealed, signature, records::kAdmissionType, admission->yard_key))
    return fail(ErrorKind::InvalidInput, "admission-altered");
  const auto count = static_cast<std::size_t>(std::ranges::count(lines, '\n'));
  // Of a chain the first list is the root.
  if (seals.size() != count * kSignatureBytes || admission->root.empty() == (count == 0)) return malformed();
  for (; !seals.empty(); seals.remove_prefix(kSignatureBytes)) {
    lines.remove_prefix(lines.find('\n') + 1);
    const std::string_view payload = lines.substr(0, lines.find('\n'));
    // A list that one key sealed, the yard's: else the seal does not hold.
    admission->lists.push_back(
        {.name = records::hashName(payload),
         .text = records::sealedOf(payload, records::kSignersType, records::thumbprint(admission->yard_key),
                                   signatureFrom(seals.substr(0, kSignatureBytes)))});
  }
  if (admission->root.empty()) admission->root = admission->lists.front().name;
  return admission;
}

Expected<Admission> takeAdmission(store::Store& store, std::string_view join_code,
                                  std::string_view admission_code, const Moment& now,
                                  const records::FillBytes& fill) {
  const Expected<Joining> own = readJoin(join_code);
  if (!own) return std::unexpected(own.error());
  Expected<Admission> admission = readAdmission(admission_code);
  if (!admission) return admission;
  if (admission->of != records::hashName(*bytesOfCode(join_code, kJoinPrefix, "join-code-malformed")))
    return fail(ErrorKind::InvalidInput, "admission-of-another");
  Expected<store::Batch> batch = store.beginBatch();
  if (!batch) return std::unexpected(batch.error());
  const Expected<std::vector<std::string>> roots = store.acceptedRoots();
  if (!roots) return std::unexpected(roots.error());
  if (!roots->empty()) return fail(ErrorKind::InvalidInput, "join-already", {{"list", roots->back()}});
  if (!admission->lists.empty()) {
    std::vector<records::StoredText> texts;
    for (const records::SealedSigners& list : admission->lists)
      texts.push_back({.text = list.text, .name = list.name});
    const records::SignersVerdict verdict = records::newestSigners(texts, std::span(&admission->root, 1));
    if (!verdict.list || !verdict.findings.empty() || verdict.name != admission->lists.back().name ||
        verdict.list->yard_key != admission->yard_key) {
      return fail(ErrorKind::InvalidInput, "admission-lists-broken");
    }
    if (!listsKey(*verdict.list, own->key, admission->role, now.utc_ms) || revokes(*verdict.list, own->key)) {
      return fail(ErrorKind::InvalidInput, "admission-key-not-listed",
                  {{"key", shortKey(own->key)}, {"role", admission->role}});
    }
  }
  for (const records::SealedSigners& list : admission->lists) {
    if (const Expected<void> kept = store.putSigners(list, now.utc_ms, false); !kept)
      return std::unexpected(kept.error());
  }
  if (const Expected<void> accepted = store.acceptRoot(admission->root); !accepted)
    return std::unexpected(accepted.error());
  for (const auto& [key, name] : admission->names) {
    const Expected<std::string> kept = keepName(store, records::thumbprint(key), name, fill, now.utc_ms);
    if (!kept) return std::unexpected(kept.error());
  }
  if (const Expected<void> committed = batch->commit(); !committed) return std::unexpected(committed.error());
  return admission;
}

}  // namespace hingepin::session
