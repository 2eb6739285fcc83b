// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "engine/base/error.h"
#include "engine/proof/due.h"
#include "engine/session/locale.h"

namespace hingepin::session {

/// How the error of one scale drifts, in percent of the load, from its own proofs.
struct ErrorDrift {
  int checks = 0;
  double per_30_days_percent = 0.0;
  double per_30_days_expanded_percent = 0.0;  ///< its expanded uncertainty, 95.45 %
  double error_percent = 0.0;                 ///< by the line, at the last proof
  std::optional<double> limit_percent{};
  std::optional<std::int64_t> expected_utc_ms{};  ///< the day it leaves its limit; none where it does not
  std::optional<std::int64_t> earliest_utc_ms{};  ///< the band of 95.45 % around it
  std::optional<std::int64_t> latest_utc_ms{};    ///< none: it may never
};

/// When one scale has to be proved again, why, and what its own history says of that.
struct WhenAgain {
  std::vector<proof::DueReason> reasons{};  ///< the soonest first
  std::optional<ErrorDrift> drift{};
  std::optional<Message> no_drift{};               ///< why there is none
  std::vector<Message> signals{};                  ///< of the control charts, about the newest proof
  std::optional<std::int64_t> next_interval_ms{};  ///< after the last teaching, by the staircase of OIML D 10
};

/// All of it in words, a line each.
[[nodiscard]] std::vector<std::string> sayWhenAgain(const WhenAgain& when, const Reader& reader);

}  // namespace hingepin::session
