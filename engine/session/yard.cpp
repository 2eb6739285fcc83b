// SPDX-License-Identifier: Apache-2.0
#include "engine/session/yard.h"

#include <utility>

#include "engine/records/record.h"
#include "engine/records/seal.h"

namespace hingepin::session {
namespace {

/// Seals and keeps the list after the newest.
Expected<std::string> keepNext(store::Store& store, records::SignersVerdict newest,
                               const records::SecretKey& yard_key, std::int64_t now_utc_ms) {
  if (newest.list->yard_key != yard_key.publicKey()) {
    return fail(ErrorKind::InvalidInput, "yard-key-other",
                {{"key", records::thumbprint(newest.list->yard_key)}});
  }
  newest.list->number += 1;
  newest.list->previous = newest.name;
  const Expected<records::SealedSigners> sealed = records::sealSigners(*newest.list, yard_key);
  if (!sealed) return std::unexpected(sealed.error());
  if (const Expected<void> kept = store.putSigners(*sealed, now_utc_ms); !kept)
    return std::unexpected(kept.error());
  return sealed->name;
}

/// Seals and keeps the first list of a yard's key, and accepts it.
Expected<std::string> keepRoot(store::Store& store, const records::SignersList& root,
                               const records::SecretKey& yard_key, std::int64_t now_utc_ms) {
  const Expected<records::SealedSigners> sealed = records::sealSigners(root, yard_key);
  if (!sealed) return std::unexpected(sealed.error());
  if (const Expected<void> kept = store.putSigners(*sealed, now_utc_ms); !kept)
    return std::unexpected(kept.error());
  if (const Expected<void> accepted = store.acceptRoot(sealed->name); !accepted)
    return std::unexpected(accepted.error());
  return sealed->name;
}

}  // namespace

Expected<records::SignersVerdict> signersOf(const store::Store& store) {
  const Expected<std::vector<records::SealedSigners>> lists = store.signersLists();
  if (!lists) return std::unexpected(lists.error());
  const Expected<std::vector<std::string>> roots = store.acceptedRoots();
  if (!roots) return std::unexpected(roots.error());
  std::vector<records::StoredText> texts;
  for (const records::SealedSigners& list : *lists) texts.push_back({.text = list.text, .name = list.name});
  records::SignersVerdict verdict = records::newestSigners(texts, *roots);
  if (!verdict.list) return fail(ErrorKind::InvalidInput, "signers-none");
  return verdict;
}

Expected<std::string> makeYard(store::Store& store, const records::SecretKey& yard_key,
                               std::vector<records::Signer> signers, std::int64_t now_utc_ms) {
  const Expected<std::vector<std::string>> roots = store.acceptedRoots();
  if (!roots) return std::unexpected(roots.error());
  if (!roots->empty()) return fail(ErrorKind::InvalidInput, "yard-already-made", {{"list", roots->back()}});
  return keepRoot(store, {.yard_key = yard_key.publicKey(), .signers = std::move(signers), .revocations = {}},
                  yard_key, now_utc_ms);
}

Expected<std::string> renewYard(store::Store& store, const records::SecretKey& yard_key,
                                const std::vector<records::Signer>& signers, std::int64_t now_utc_ms) {
  Expected<records::SignersVerdict> newest = signersOf(store);
  if (!newest) return std::unexpected(newest.error());
  records::SignersList root{.yard_key = yard_key.publicKey(),
                            .signers = std::move(newest->list->signers),
                            .revocations = std::move(newest->list->revocations)};
  root.signers.insert(root.signers.end(), signers.begin(), signers.end());
  return keepRoot(store, root, yard_key, now_utc_ms);
}

Expected<std::string> addSigners(store::Store& store, const records::SecretKey& yard_key,
                                 const std::vector<records::Signer>& signers, std::int64_t now_utc_ms) {
  Expected<records::SignersVerdict> newest = signersOf(store);
  if (!newest) return std::unexpected(newest.error());
  newest->list->signers.insert(newest->list->signers.end(), signers.begin(), signers.end());
  return keepNext(store, *std::move(newest), yard_key, now_utc_ms);
}

Expected<std::string> revokeSigner(store::Store& store, const records::SecretKey& yard_key,
                                   std::string_view key, const std::optional<std::string>& last,
                                   std::int64_t now_utc_ms) {
  Expected<records::SignersVerdict> newest = signersOf(store);
  if (!newest) return std::unexpected(newest.error());
  records::Revocation revocation{.key = std::string(key)};
  if (last) {
    const Expected<std::optional<store::StoredStatement>> stored = store.statement(*last);
    if (!stored) return std::unexpected(stored.error());
    if (!*stored) return fail(ErrorKind::NotFound, "record-not-in-store", {{"record", *last}});
    const Expected<records::Sealed> sealed = records::readSealed((*stored)->text);
    if (!sealed) return std::unexpected(sealed.error());
    const Expected<records::Statement> statement = records::readPayload(sealed->payload, sealed->type);
    if (!statement) return std::unexpected(statement.error());
    const records::ChainPlace& place = records::envelopeOf(*statement).place;
    if (place.key != key) {
      return fail(ErrorKind::InvalidInput, "signer-not-of-record", {{"record", *last}, {"key", place.key}});
    }
    revocation.trusted.push_back({.epoch = place.epoch, .sequence = place.sequence, .name = *last});
  }
  std::erase_if(newest->list->revocations, [&](const records::Revocation& each) { return each.key == key; });
  newest->list->revocations.push_back(std::move(revocation));
  return keepNext(store, *std::move(newest), yard_key, now_utc_ms);
}

}  // namespace hingepin::session
