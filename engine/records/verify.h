// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "engine/records/chain.h"
#include "engine/records/finding.h"
#include "engine/records/personal.h"
#include "engine/records/record.h"
#include "engine/records/signers.h"

namespace hingepin::records {

/// A personal object as it was kept.
struct StoredPersonal {
  std::string name;
  Salt salt{};
  std::string bytes;
};

/// All that is known, in any order, any number of times.
struct Evidence {
  std::vector<StoredText> statements{};  ///< records and further signatures
  std::vector<StoredText> signers_lists{};
  std::vector<std::string> accepted_roots{};  ///< as newestSigners() takes them
  std::vector<Head> known_heads{};            ///< heads that others have told of
  std::vector<StoredPersonal> personal{};
  std::vector<std::string> erased{};  ///< names of personal objects that were erased on purpose
};

/// What a list of signers says of each key, for looking up.
class ListedKeys {
 public:
  explicit ListedKeys(const std::optional<SignersList>& list);
  [[nodiscard]] const PublicKey* find(const std::string& key) const;
  /// Why a key may not sign so: a code of verify(); nullptr where it may.
  [[nodiscard]] const char* faultOf(const std::string& key, std::string_view role,
                                    std::int64_t sealed_utc_ms) const;

 private:
  struct Listed {
    PublicKey key;
    std::vector<Signer> roles;
  };
  std::unordered_map<std::string, Listed> keys_;
};

/// What one sealed text is worth by itself. Revocation is about chains, and is not looked at.
struct Judgement {
  std::string name;                      ///< the hash of its payload, or of the text where there is none
  std::string key{};                     ///< by which it says it is sealed
  std::optional<Statement> statement{};  ///< where its seal holds
  const char* fault = nullptr;           ///< why it is refused: a code of verify()
  std::optional<Error> cause{};          ///< what the reader said of a malformed one
};
[[nodiscard]] Judgement judge(std::string_view text, const ListedKeys& keys);

enum class Standing {
  Trusted,      ///< sealed by a key that the yard lists for the role, not revoked
  Quarantined,  ///< the seal holds, but the key was revoked and this may have been made after
  Refused,      ///< malformed, altered, or by somebody who may not sign so
};

struct StatementVerdict {
  std::string name;       ///< the hash of its payload, or of its whole text where there is no payload
  std::string kept_as{};  ///< what it was kept as, where that is never its name; findings are about that
  Standing standing = Standing::Refused;
  std::optional<Statement> statement{};  ///< where its seal holds
};

struct Verification {
  std::vector<StatementVerdict> statements{};  ///< each once, in the order given
  SignersVerdict signers{};
  std::vector<Finding> findings{};
};

/// Says exactly what holds and what does not. Besides those of newestSigners() (in `signers`) and
/// checkChains() over all statements whose seal holds, findings have these codes.
///
/// Refused:
/// - "record-malformed": not what this program writes; `cause` tells more
/// - "record-altered": the seal does not hold, or the name is not that of the payload; the finding is about
///   the name it was kept under. A text that is also here under its right name stands.
/// - "record-unknown-signer": sealed by a key that is not on the list
/// - "record-wrong-role": the list does not have the key in the role it signs as
/// - "record-outside-validity": the claimed time is outside the dates of key and role
///
/// Quarantined:
/// - "record-after-revocation": a revoked key's, and not on the way to its last trusted link
/// - "record-revocation-unproved": a revoked key's, by its number before the last trusted link; whether it
///   leads there can't be told while links between are missing
///
/// Said beside:
/// - "record-same-phone": two signed one record on one installation
/// - "record-same-signer": one key signed one record twice
/// - "record-signed-not-here": a signature on a record that is not here
/// - "record-amended": a trusted record corrects this one
/// - "record-amended-not-here": corrects a record that is not here
/// - "personal-erased", "personal-altered", "personal-not-arrived": an object that a record refers to
[[nodiscard]] Verification verify(const Evidence& evidence);

}  // namespace hingepin::records
