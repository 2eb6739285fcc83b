// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/session/locale.h"
#include "engine/store/store.h"

/// What a scale was worth on a given day: bounded by the proofs before and after it.
namespace hingepin::session {

/// The error that one proof showed, in percent of the load.
struct ProvedError {
  std::string record{};
  std::string procedure{};
  std::int64_t utc_ms = 0;
  double error_percent = 0.0;
  double expanded_percent = 0.0;  ///< 95.45 %: scatter of its indications, and 0.1 % of the reference
  int indications = 0;
  double reference_kg = 0.0;
  std::optional<double> limit_percent{};
};

struct Dispute {
  std::string unit{};
  std::string attachment{};
  std::int64_t utc_ms = 0;
  std::optional<ProvedError> before{};  ///< the last proof up to then, as left
  std::optional<ProvedError> after{};   ///< the first one after, as found
  /// Between which errors it stood then, doubt included: from both proofs, or from the one that there is.
  std::optional<double> low_percent{};
  std::optional<double> high_percent{};
  std::optional<double> between_percent{};  ///< on the straight line between both
  /// "dispute-bounded", "dispute-open-before", "dispute-open-after", "dispute-unproved", and what was
  /// recorded between the two: "dispute-event" ...
  std::vector<Message> remarks{};
  std::vector<std::string> records{};  ///< what all of this stands on, the oldest first
};

/// @param utc_ms the moment that the load was weighed
/// Errors: NotFound "unit-not-in-store"; those of the store.
[[nodiscard]] Expected<Dispute> disputeOf(const store::Store& store, const std::string& unit,
                                          const std::string& attachment, std::int64_t utc_ms);

/// The same for another program: "hingepin-dispute/1", as README.md beside this file describes it.
[[nodiscard]] std::string writeDispute(const Dispute& dispute);

/// In words, a line each.
[[nodiscard]] std::vector<std::string> sayDispute(const Dispute& dispute, const Reader& reader);

}  // namespace hingepin::session
