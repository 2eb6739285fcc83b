// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/records/signers.h"
#include "engine/store/store.h"

/// A yard's list of signers: each change is a new list that names the one before.
namespace hingepin::session {

/// The newest trusted list. Errors: InvalidInput "signers-none"; those of the store.
[[nodiscard]] Expected<records::SignersVerdict> signersOf(const store::Store& store);

/// Makes the root list of a new yard, keeps it, and accepts it. @return its name
/// Errors: InvalidInput "yard-already-made" where a root is accepted already.
[[nodiscard]] Expected<std::string> makeYard(store::Store& store, const records::SecretKey& yard_key,
                                             std::vector<records::Signer> signers, std::int64_t now_utc_ms);

/// Begins the list anew with another key of the yard, where the one before was lost (a restored phone has
/// none), and accepts it here: whoever could sign before, what was revoked, and `signers`. Other phones have
/// to accept it too. @return its name. Errors: those of signersOf.
[[nodiscard]] Expected<std::string> renewYard(store::Store& store, const records::SecretKey& yard_key,
                                              const std::vector<records::Signer>& signers,
                                              std::int64_t now_utc_ms);

/// Adds signers, in a list after the newest.
/// @return its name. Errors: those of signersOf; InvalidInput "yard-key-other".
[[nodiscard]] Expected<std::string> addSigners(store::Store& store, const records::SecretKey& yard_key,
                                               const std::vector<records::Signer>& signers,
                                               std::int64_t now_utc_ms);

/// Revokes a key from a record on: only what leads up to `last` is trusted any more; nothing without it.
/// Errors: those of signersOf; InvalidInput "yard-key-other"; NotFound "record-not-in-store";
/// "signer-not-of-record" when the record is not that key's.
[[nodiscard]] Expected<std::string> revokeSigner(store::Store& store, const records::SecretKey& yard_key,
                                                 std::string_view key, const std::optional<std::string>& last,
                                                 std::int64_t now_utc_ms);

}  // namespace hingepin::session
