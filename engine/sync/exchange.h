// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "engine/base/error.h"
#include "engine/store/store.h"
#include "engine/sync/parcel.h"
#include "engine/sync/remote.h"

namespace hingepin::sync {

/// How far one exchange has come.
struct Progress {
  std::int64_t parcels_sent = 0;
  std::int64_t parcels_to_send = 0;
  std::int64_t parcels_received = 0;
  std::int64_t statements_received = 0;  ///< new here, verified and stored
  std::int64_t quarantined = 0;
  std::int64_t evidence_sent = 0;
  std::int64_t evidence_received = 0;
  std::int64_t bytes_sent = 0;
  std::int64_t bytes_received = 0;
};

struct Options {
  std::int64_t now_utc_ms = 0;
  std::string far_side;  ///< its address, to remember what it has shown; "": not remembered
  std::function<void(const Progress&)> progress{};  ///< told after each step
  std::function<bool()> goes_on{};                  ///< asked between steps; absent: always
};

/// What an exchange did. What kept a part of it from being done is in `stopped`; the next one goes on there.
struct Outcome {
  Progress progress;
  std::vector<Message> findings{};  ///< what the far side lacks, altered, hides or took back
  std::optional<Error> stopped{};   ///< the first thing that kept it from being whole
  /// Another installation sends as this device: this one was copied. Nothing was sent; a new device is
  /// needed.
  bool is_doubled = false;
};

/// Makes both sides hold what either holds: what waits is packed, parcels that only the far side has are
/// fetched, verified and stored, those that it lacks are put there, and evidence follows. Asks for one list
/// of heads, and for nothing more where nothing is new. Safe to break off at any moment and to repeat.
///
/// Findings by code:
/// - "parcel-altered", "parcel-out-of-order", "parcel-replaced": what lies there under a name is not that
/// - "parcel-missing": the far side lacks parcels of a source while later ones are there
/// - "parcel-fork": two parcels at one place of a source
/// - "parcel-not-arrived-yet": another device holds a later parcel than the far side shows
/// - "far-side-rolled-back": it shows less than it has shown before
/// - "evidence-altered", "evidence-not-there"
/// Errors: those of the store. What the far side does wrong is in the outcome.
[[nodiscard]] Expected<Outcome> exchange(store::Store& store, const Remote& remote, const Device& device,
                                         const Options& options);

/// Something that has not reached a far side, and why.
struct Waits {
  store::Waiting what;
  Message why;
};
/// @param last what kept the last exchange from being whole
[[nodiscard]] Expected<std::vector<Waits>> whatWaits(const store::Store& store,
                                                     const std::optional<Error>& last);

/// What arrived and was not taken, with the reason in words for a person.
struct InQuarantine {
  std::string name;
  std::string source;
  Message why;
};
[[nodiscard]] Expected<std::vector<InQuarantine>> inQuarantine(const store::Store& store);

}  // namespace hingepin::sync
