// SPDX-License-Identifier: Apache-2.0
#include "engine/session/moment.h"

#include <fmt/format.h>

#include <array>
#include <chrono>

namespace hingepin::session {

std::string utcText(std::int64_t utc_ms) {
  using namespace std::chrono;
  const sys_time<milliseconds> time{milliseconds(utc_ms)};
  const sys_days days = floor<std::chrono::days>(time);
  const year_month_day date(days);
  const hh_mm_ss clock(time - days);
  std::string text = fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}", static_cast<int>(date.year()),
                                 static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()),
                                 clock.hours().count(), clock.minutes().count(), clock.seconds().count());
  if (const auto part = clock.subseconds().count(); part != 0) text += fmt::format(".{:03}", part);
  return text + "Z";
}

std::optional<std::int64_t> readUtc(std::string_view text) {
  // Digits where the layout has a 0, the character itself everywhere else.
  constexpr std::string_view kLayout = "0000-00-00T00:00:00";
  if (text.size() != kLayout.size() + 1 && text.size() != kLayout.size() + 5) return std::nullopt;
  const std::string layout = std::string(kLayout) + (text.size() == kLayout.size() + 1 ? "Z" : ".000Z");
  std::array<std::int64_t, 7> parts{};  // year, month, day, hour, minute, second, millisecond
  std::size_t part = 0;
  for (std::size_t index = 0; index < layout.size(); ++index) {
    if (layout[index] == '0') {
      if (text[index] < '0' || text[index] > '9') return std::nullopt;
      parts[part] = parts[part] * 10 + (text[index] - '0');
    } else {
      if (text[index] != layout[index]) return std::nullopt;
      ++part;
    }
  }
  using namespace std::chrono;
  const year_month_day date{year(static_cast<int>(parts[0])), month(static_cast<unsigned>(parts[1])),
                            day(static_cast<unsigned>(parts[2]))};
  if (!date.ok() || parts[0] < 1970 || parts[3] > 23 || parts[4] > 59 || parts[5] > 59) return std::nullopt;
  const auto time =
      sys_days(date).time_since_epoch() + hours(parts[3]) + minutes(parts[4]) + seconds(parts[5]);
  const std::int64_t utc_ms = duration_cast<milliseconds>(time).count() + parts[6];
  return utcText(utc_ms) == text ? std::optional(utc_ms) : std::nullopt;
}

}  // namespace hingepin::session
