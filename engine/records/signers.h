// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/records/finding.h"
#include "engine/records/keys.h"
#include "engine/records/seal.h"

namespace hingepin::records {

/// A key, a role it may sign as, and when. A key with two roles, or with one role twice, stands in as many
/// entries.
struct Signer {
  PublicKey key;
  std::string role;
  std::int64_t valid_from_utc_ms = 0;
  std::optional<std::int64_t> valid_until_utc_ms{};  ///< the first moment that is not valid any more
};

/// The last link of one of a key's chains that is still trusted.
struct TrustedUntil {
  std::string epoch;
  std::int64_t sequence = 1;
  std::string name;
};

/// From a revoked key only what leads up to one of these links is trusted, whatever the date of the rest
/// says. None: nothing is.
struct Revocation {
  std::string key;  ///< thumbprint
  std::vector<TrustedUntil> trusted{};
};

/// Who may sign as what, as the yard says. Each list holds all that is in force: a key that it leaves out is
/// unknown, and a revocation that it leaves out is lifted.
struct SignersList {
  std::int64_t number = 1;
  std::optional<std::string> previous{};  ///< hash name of the list before; missing in a root list
  PublicKey yard_key;
  std::vector<Signer> signers{};
  std::vector<Revocation> revocations{};
};

struct SealedSigners {
  std::string name;
  std::string text;
};

/// Seals a list with the yard's key. Where the yard changes its key, the first list of the new one is sealed
/// with both (`old_yard_key`). Where the key was lost, the new one begins with a root list, and a person has
/// to accept it. Errors: InvalidInput "seal-key-mismatch" when `yard_key` is not the list's; those of
/// readSigners.
[[nodiscard]] Expected<SealedSigners> sealSigners(const SignersList& list, const SecretKey& yard_key,
                                                  const SecretKey* old_yard_key = nullptr);

/// A list sealed by its own yard key. Whether that key is to be trusted is another question.
struct ReadSigners {
  std::string name;
  SignersList list;
  Sealed sealed;
};

/// Errors: InvalidInput "signers-altered" when its own yard key's seal does not hold; those of readSealed,
/// readCanonicalJson, checkSealable and of the members.
[[nodiscard]] Expected<ReadSigners> readSigners(std::string_view text);

/// A sealed text and the name under which it was kept or sent, if it had one.
struct StoredText {
  std::string text;
  std::optional<std::string> name{};
};

struct SignersVerdict {
  std::optional<SignersList> list;  ///< the newest that is trusted
  std::string name{};               ///< of that list
  std::vector<Finding> findings{};
};

/// Finds the newest trusted list. It starts at the root list that a person accepted last, and follows the
/// chain: each next list has the next number, names the one before and is sealed with that one's yard key,
/// and with its own where that is another.
/// @param accepted_roots names of root lists that a person has accepted, in the order of acceptance
/// @return with findings by code:
/// "signers-malformed", "signers-altered"
/// "signers-root-not-accepted"   a root list that no person has accepted
/// "signers-root-replaced"       a person accepted a new root: the yard's key before it was given up
/// "signers-key-changed"         the yard changed its key, and both keys say so
/// "signers-fork"                two next lists: the one before them is the newest trusted
/// "signers-not-continued"       the next by its number and what it names, but not sealed with the key it
/// needs "signers-not-arrived-yet"     a list whose predecessor is not here "signers-none"                no
/// trusted list at all
[[nodiscard]] SignersVerdict newestSigners(std::span<const StoredText> lists,
                                           std::span<const std::string> accepted_roots);

}  // namespace hingepin::records
