// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "engine/records/verify.h"
#include "engine/store/store.h"
#include "engine/sync/parcel.h"

/// What arrives is looked at here before the store sees it. For the sources and tests of this area.
namespace hingepin::sync {

/// A message as canonical JSON, and back.
[[nodiscard]] std::string textOf(const Message& message);
[[nodiscard]] Message messageOf(const std::string& text);

class Intake {
 public:
  /// Errors: those of the store.
  [[nodiscard]] static Expected<Intake> over(store::Store& store, std::int64_t now_utc_ms);

  struct Taken {
    std::int64_t statements = 0;  ///< new here
    std::int64_t quarantined = 0;
    std::vector<Message> findings{};
  };
  /// Takes a parcel in one commit: each of its lines is verified by itself, and one that fails waits in
  /// quarantine without holding up the rest. Errors: those of the store.
  [[nodiscard]] Expected<Taken> take(const OpenedParcel& parcel);
  /// Looks again at all that waits in quarantine: a signer may be known by now. Errors: those of the store.
  [[nodiscard]] Expected<Taken> lookAgain();
  /// Whether a list of signers came in that may let out what is in quarantine.
  [[nodiscard]] bool hasNewSigners() const { return new_signers_; }

 private:
  Intake(store::Store& store, std::int64_t now_utc_ms) : store_(&store), now_utc_ms_(now_utc_ms) {}
  [[nodiscard]] Expected<void> readSignersLists();
  /// What becomes of a line: how it stands in the parcel's row, or why it is not taken.
  struct Fate {
    std::string item{};
    bool is_new = false;
    std::optional<Message> why{};
  };
  [[nodiscard]] Expected<Fate> takeSealed(const std::string& line);
  [[nodiscard]] Expected<Fate> takeStatement(const std::string& line);
  [[nodiscard]] Expected<void> awaitEvidence(const records::Record& record);
  [[nodiscard]] Expected<const char*> faultByRevocation(const std::string& name,
                                                        const records::ChainPlace& place) const;
  [[nodiscard]] Expected<Fate> takeAgain(const store::Quarantined& object);
  [[nodiscard]] Expected<void> expectBlob(const Item& item, const std::string& line);
  [[nodiscard]] Expected<void> expectPersonal(const Item& item, const std::string& line, bool trusted);
  /// Whether the device of a source is vouched for, by its newest parcel.
  [[nodiscard]] Expected<bool> isTrusted(const std::string& source) const;
  [[nodiscard]] Expected<void> quarantine(const std::string& line, const std::string& source, Message why);

  store::Store* store_;
  std::int64_t now_utc_ms_;
  std::optional<records::SignersList> list_{};
  records::ListedKeys keys_{std::nullopt};
  bool new_signers_ = false;
  std::set<std::string> named_{};  ///< personal objects that records of the parcel at hand name
};

}  // namespace hingepin::sync
