// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/base/error.h"
#include "engine/records/keys.h"
#include "engine/records/signers.h"
#include "engine/session/moment.h"
#include "engine/store/store.h"

/// A new phone joins a yard, with no network: it asks with a key of its own, the phone that has the yard's
/// key lets it in, and what it has to know of the yard comes back. Both are codes from screen to camera.
/// README.md has the format.
namespace hingepin::session {

/// How far apart the clocks of both phones, and asking and letting in, may lie: an old picture of a code
/// lets nobody in.
inline constexpr std::int64_t kJoinHolds_ms = 24LL * 60 * 60 * 1000;

/// Who asks to be let in. Whoever made the code holds the secret of the key; who that is, only a person sees.
struct Joining {
  records::PublicKey key{};
  std::string name{};       ///< as its holder gave it
  std::string device{};     ///< the new phone's installation
  std::string nonce{};      ///< 16 random bytes in base64url
  std::int64_t utc_ms = 0;  ///< by the new phone's clock
};

/// What people compare on both screens: the first 12 characters of a key's thumbprint.
[[nodiscard]] std::string shortKey(const records::PublicKey& key);

/// The code by which a new phone asks to be let in.
/// @param name of the key's holder @param device this phone
/// Errors: InvalidInput "text-empty", "join-name-too-long".
[[nodiscard]] Expected<std::string> askToJoin(const records::SecretKey& key, std::string_view name,
                                              const std::string& device, const Moment& now,
                                              const records::FillBytes& fill);

/// Errors: InvalidInput "join-code-malformed", "join-altered" (the key's seal does not hold); those of the
/// members, with the JSON Pointer.
[[nodiscard]] Expected<Joining> readJoin(std::string_view code);

/// What the new phone is shown.
struct LetIn {
  std::string code{};
  bool has_lists = false;  ///< else they did not fit, and have to come with an exchange or as a file
};

/// On the phone that has the yard's key: puts the key on the list of signers and keeps its holder's name, in
/// one commit. A code that comes again is answered again, and the list stays as it is.
/// @param role that the key is listed for
/// Errors: those of readJoin and of signersOf; InvalidInput "join-too-old", "join-key-revoked",
/// "yard-key-other"; those of addSigners and of the store.
[[nodiscard]] Expected<LetIn> letIn(store::Store& store, const records::SecretKey& yard_key,
                                    std::string_view join_code, std::string_view role, const Moment& now,
                                    const records::FillBytes& fill);

/// What the yard's phone answers.
struct Admission {
  std::string of{};    ///< hash name of the request
  std::string root{};  ///< name of the root list to accept: the first, where there are any
  records::PublicKey yard_key{};
  std::string role{};
  std::vector<std::pair<records::PublicKey, std::string>> names{};  ///< of keys
  std::vector<records::SealedSigners> lists{};                      ///< from the root to the newest, or none
};

/// The code of an admission, sealed by the yard's key. REQUIRES: lists that this key alone sealed.
[[nodiscard]] std::string codeOfAdmission(const Admission& admission, const records::SecretKey& yard_key);

/// Errors: InvalidInput "admission-code-malformed", "admission-altered" (the seal of the key that it names
/// does not hold); those of the members, with the JSON Pointer.
[[nodiscard]] Expected<Admission> readAdmission(std::string_view code);

/// On the new phone: accepts the root, keeps lists and names, in one commit.
/// @param join_code what askToJoin() gave
/// Errors: those of readJoin and readAdmission; InvalidInput "admission-of-another" (it answers something
/// else), "join-already" (this store has accepted a yard), "admission-lists-broken" (they are no chain from
/// that root, or not of that yard), "admission-key-not-listed"; those of the store.
[[nodiscard]] Expected<Admission> takeAdmission(store::Store& store, std::string_view join_code,
                                                std::string_view admission_code, const Moment& now,
                                                const records::FillBytes& fill);

}  // namespace hingepin::session
