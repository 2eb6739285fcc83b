// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace hingepin::session {

/// Now, as whoever calls knows it: the session has no clock.
struct Moment {
  std::int64_t at_ms = 0;  ///< of the monotonic clock since the phone started, >= 0
  std::string boot;        ///< names that start of the phone
  std::int64_t utc_ms = 0;
};

/// "2026-05-04T07:00:00Z", with milliseconds where there are any: a date and time of RFC 3339 in UTC.
[[nodiscard]] std::string utcText(std::int64_t utc_ms);
/// @return nothing unless `text` is what utcText() can have written, between the years 1970 and 9999.
[[nodiscard]] std::optional<std::int64_t> readUtc(std::string_view text);

}  // namespace hingepin::session
