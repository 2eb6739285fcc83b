// SPDX-License-Identifier: Apache-2.0
#include "engine/proof/due.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <tuple>

namespace hingepin::proof {
namespace {

constexpr double kMsPerDay = 86'400'000.0;
/// A use that would take longer than this to come due is not told as a day.
constexpr double kFarthest_days = 3650.0;

/// The hour meter at a time: between readings on a straight line, after the last at the mean rate.
std::optional<double> hoursAt(const std::vector<HourReading>& readings, std::int64_t utc_ms) {
  if (readings.empty() || utc_ms < readings.front().utc_ms) return std::nullopt;
  const auto after = std::ranges::find_if(readings, [&](const auto& each) { return each.utc_ms >= utc_ms; });
  if (after != readings.end() && after->utc_ms == utc_ms) return after->hours;
  if (readings.size() < 2) return readings.front().hours;
  const auto& from = after == readings.end() ? readings.front() : *(after - 1);
  const auto& to = after == readings.end() ? readings.back() : *after;
  if (to.utc_ms == from.utc_ms) return to.hours;
  return from.hours +
         (to.hours - from.hours) * double(utc_ms - from.utc_ms) / double(to.utc_ms - from.utc_ms);
}

/// When the hours since the teaching come to what the yard allows.
std::optional<std::int64_t> hoursDue(const DueAsked& asked) {
  if (!asked.every_hours || !asked.taught_utc_ms || asked.hours.empty()) return std::nullopt;
  const std::optional<double> begin = hoursAt(asked.hours, *asked.taught_utc_ms);
  if (!begin) return std::nullopt;
  const double due_hours = *begin + *asked.every_hours;
  const HourReading& first = asked.hours.front();
  const HourReading& last = asked.hours.back();
  if (last.hours >= due_hours) {
    const auto reached =
        std::ranges::find_if(asked.hours, [&](const auto& each) { return each.hours >= due_hours; });
    return reached->utc_ms;
  }
  const double days = double(last.utc_ms - first.utc_ms) / kMsPerDay;
  if (!(last.hours > first.hours) || !(days > 0.0)) return std::nullopt;
  const double left_days = (due_hours - last.hours) / ((last.hours - first.hours) / days);
  if (left_days > kFarthest_days) return std::nullopt;
  return last.utc_ms + std::llround(left_days * kMsPerDay);
}

}  // namespace

bool isSettledByShiftProof(Event event) {
  return event == Event::Taught || event == Event::AttachmentChanged || event == Event::TyresChanged ||
         event == Event::BatteryLost || event == Event::Overloaded;
}

std::vector<DueReason> dueReasons(const DueAsked& asked) {
  std::vector<DueReason> reasons;
  if (!asked.taught_utc_ms) return reasons;
  const std::int64_t taught = *asked.taught_utc_ms;
  const std::int64_t proved = asked.proved_utc_ms.value_or(0);
  if (asked.every_ms)
    reasons.push_back({{"due-by-time", {{"days", Amount{double(*asked.every_ms) / kMsPerDay, "1"}}}},
                       taught + *asked.every_ms});
  if (const std::optional<std::int64_t> when = hoursDue(asked))
    reasons.push_back({{"due-by-hours", {{"hours", Amount{*asked.every_hours, "h"}}}}, *when});
  if (asked.leaving_utc_ms) reasons.push_back({{"due-by-drift", {}}, *asked.leaving_utc_ms});
  for (const Happening& each : asked.happenings) {
    // A teaching makes its own first shift due: only a proof after it settles that.
    const bool settled = each.event == Event::Taught         ? each.utc_ms < proved
                         : isSettledByShiftProof(each.event) ? each.utc_ms <= std::max(taught, proved)
                                                             : each.utc_ms <= taught;
    if (settled) continue;
    const std::string code = "due-event-" + std::string(nameIn(kEventNames, each.event));
    reasons.push_back({{code, {}}, each.utc_ms});
  }
  std::ranges::sort(reasons, {}, [](const DueReason& each) { return std::tie(each.utc_ms, each.why.code); });
  return reasons;
}

}  // namespace hingepin::proof
