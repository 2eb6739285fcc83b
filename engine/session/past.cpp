// SPDX-License-Identifier: Apache-2.0
#include "engine/session/past.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <optional>
#include <span>
#include <tuple>
#include <utility>

#include "engine/proof/history.h"
#include "engine/session/catalogue.h"
#include "engine/session/record_view.h"
#include "engine/statistics/distributions.h"
#include "engine/units/ucum.h"

namespace hingepin::session {
namespace {

using store::Store;

constexpr double kMsPerDay = 86'400'000.0;
/// Where a chart's centre and spread begin to mean something (common practice, no source).
constexpr std::size_t kBaselinePoints = 5;
/// A day further off than this is not told: no drift stays straight that long.
constexpr double kFarthest_days = 3650.0;

bool isShiftProof(const HistoryPoint& point) { return point.procedure == "shift-proof"; }

/// The proofs of a scale as checks over days; a teaching that was proved begins a new setting.
std::vector<proof::Check> checksOf(const std::vector<HistoryPoint>& points) {
  std::vector<proof::Check> checks;
  bool set = false;
  const auto add = [&](const HistoryPoint& point, double error) {
    checks.push_back(
        {.at = double(point.utc_ms) / kMsPerDay, .error = error, .set_before = std::exchange(set, false)});
  };
  for (const HistoryPoint& point : points) {
    if (point.calibration) {
      // Of a job that taught, the first proof is as found only where a second one follows.
      const bool found = point.error_found_percent && point.error_found_percent != point.error_percent;
      if (found) add(point, *point.error_found_percent);
      set = true;
    }
    if (point.error_percent) add(point, *point.error_percent);
  }
  return checks;
}

std::optional<std::int64_t> asDay(const std::optional<double>& days, double last_days) {
  if (!days || *days > last_days + kFarthest_days) return std::nullopt;
  return std::llround(*days * kMsPerDay);
}

void tellDrift(const ScalePast& past, WhenAgain& when) {
  const std::vector<proof::Check> checks = checksOf(past.points);
  const Expected<proof::Trend> trend = proof::trendOf(checks);
  if (!trend) {
    when.no_drift = trend.error().message;
    return;
  }
  const double k =
      statistics::studentQuantile(0.5 + 0.5 * statistics::kTwoSigmaCoverage, trend->degrees_of_freedom);
  ErrorDrift drift{.checks = static_cast<int>(checks.size()),
                   .per_30_days_percent = 30.0 * trend->drift,
                   .per_30_days_expanded_percent = 30.0 * k * trend->drift_u,
                   .error_percent = trend->error};
  for (const HistoryPoint& point : past.points) {
    if (point.error_limit_percent) drift.limit_percent = point.error_limit_percent;
  }
  if (drift.limit_percent && *drift.limit_percent > 0.0) {
    const proof::Leaving leaving =
        proof::leavingOf(*trend, *drift.limit_percent, statistics::kTwoSigmaCoverage);
    drift.expected_utc_ms = asDay(leaving.expected, trend->last_at);
    drift.earliest_utc_ms = asDay(leaving.earliest, trend->last_at);
    drift.latest_utc_ms = asDay(leaving.latest, trend->last_at);
  }
  when.drift = drift;
}

/// What the charts say of the newest of these values.
void tellSignals(const std::vector<double>& values, const char* jump, const char* shift, const char* ucum,
                 int decimals, std::vector<Message>& signals) {
  if (values.size() <= kBaselinePoints) return;
  const std::span<const double> all(values);
  const Expected<proof::Baseline> baseline = proof::baselineOf(all.first(values.size() - 1));
  if (!baseline) return;
  const auto newest = [&](const std::vector<std::size_t>& indices) {
    return !indices.empty() && indices.back() == values.size() - 1;
  };
  const proof::ControlChart individuals = proof::shewhartChart(all, *baseline);
  if (newest(individuals.signals)) {
    signals.push_back({jump,
                       {{"value", Amount{values.back(), ucum, decimals}},
                        {"low", Amount{individuals.low, ucum, decimals}},
                        {"high", Amount{individuals.high, ucum, decimals}}}});
  } else if (newest(proof::ewmaChart(all, *baseline).signals) ||
             newest(proof::cusumChart(all, *baseline).signals)) {
    signals.push_back({shift, {{"centre", Amount{baseline->centre, ucum, decimals}}}});
  }
}

/// Zero and span as found: a setting brings them back, so that all of a scale's life is one chart. What the
/// first job found was taught with something else.
void tellCharts(const ScalePast& past, WhenAgain& when) {
  std::vector<double> zeros, errors;
  for (const HistoryPoint& point : past.points) {
    if (point.calibration && &point == &past.points.front()) continue;
    if (point.zero_found_kg) zeros.push_back(*point.zero_found_kg);
    if (point.error_found_percent) errors.push_back(*point.error_found_percent);
  }
  tellSignals(zeros, "chart-zero-jump", "chart-zero-shift", "kg", 0, when.signals);
  tellSignals(errors, "chart-span-jump", "chart-span-shift", "%", 2, when.signals);
}

/// The interval after the last teaching: what led to it, changed by the error that it was found with.
std::optional<std::int64_t> nextInterval(const std::vector<HistoryPoint>& points) {
  const HistoryPoint* before = nullptr;
  std::optional<std::int64_t> interval;
  for (const HistoryPoint& point : points) {
    if (!point.calibration) continue;
    if (before != nullptr && point.error_found_percent && point.error_limit_percent &&
        point.error_found_percent != point.error_percent && point.utc_ms > before->utc_ms) {
      const proof::Staircase rule{.shortest = 1.0};
      interval = std::llround(
          kMsPerDay * proof::nextInterval(double(point.utc_ms - before->utc_ms) / kMsPerDay,
                                          *point.error_found_percent, *point.error_limit_percent, rule));
    }
    before = &point;
  }
  return interval;
}

/// The meter readings of a job.
void addHours(const RecordedJob& job, std::vector<proof::HourReading>& hours) {
  for (const RecordedTry& each : job.tries) {
    if (each.quantity != "operating-hours" || !each.counts) continue;
    if (const std::optional<double> seconds = siOf(each.value))
      hours.push_back({each.utc_ms, *seconds / 3600.0});
  }
}

}  // namespace

std::optional<proof::Event> eventOf(const JsonValue& content) {
  if (textAt(content, {"kind"}) != "event") return std::nullopt;
  const std::string name = textAt(content, {"event"});
  const auto row = std::ranges::find(proof::kEventNames, name, &Named<proof::Event>::name);
  return row == proof::kEventNames.end() ? std::nullopt : std::optional(row->value);
}

Expected<UnitPast> pastOf(const Store& store, std::string_view unit,
                          const std::vector<std::string>& attachments) {
  const Expected<std::vector<std::string>> names = store.statementNames(unit);
  if (!names) return std::unexpected(names.error());
  UnitPast past;
  for (const std::string& attachment : attachments) past.scales[attachment];
  struct Told {
    std::string attachment;
    proof::Happening happening;
    std::string record;
  };
  std::vector<Told> told;
  std::vector<proof::HourReading> hours;
  for (const std::string& name : *names) {
    const Expected<records::Record> record = recordOf(store, name);
    if (!record) continue;  // a further signature, or what verification will speak of
    if (const std::optional<proof::Event> event = eventOf(record->content)) {
      told.push_back(
          {textAt(record->content, {"attachment", "id"}), {*event, record->envelope.sealed_utc_ms}, name});
      continue;
    }
    const std::optional<RecordedJob> job = readRecordedJob(record->content);
    if (!job) continue;
    const Expected<bool> here = job->unit_profile.empty() ? true : store.hasBlob(job->unit_profile);
    if (!here) return std::unexpected(here.error());
    past.is_final = past.is_final && *here;
    addHours(*job, hours);
    if (job->attachment.empty()) continue;
    HistoryPoint point = historyPointOf(store, *job, name);
    if (isShiftProof(point) && point.phase == "failed")
      told.push_back({job->attachment, {proof::Event::ShiftProofFailed, point.utc_ms}, name});
    if (point.zero_kg || point.error_percent || point.calibration)
      past.scales[job->attachment].points.push_back(std::move(point));
  }
  std::ranges::sort(hours, {}, &proof::HourReading::utc_ms);
  std::ranges::sort(told, {}, [](const Told& each) { return each.happening.utc_ms; });
  for (auto& [attachment, scale] : past.scales) {
    std::ranges::sort(scale.points, {}, [](const auto& each) { return std::tie(each.utc_ms, each.record); });
    scale.hours = hours;
    for (const Told& each : told) {
      if (!each.attachment.empty() && each.attachment != attachment) continue;
      scale.happenings.push_back(each.happening);
      scale.happening_records.push_back(each.record);
    }
  }
  return past;
}

Expected<UnitPast> pastOf(const Store& store, std::string_view unit, const std::vector<store::Pair>& pairs) {
  std::vector<std::string> attachments;
  for (const store::Pair& pair : pairs) attachments.push_back(pair.attachment);
  return pastOf(store, unit, attachments);
}

WhenAgain whenAgain(const ScalePast& past, const store::Pair& pair, const UnitProfile* profile) {
  WhenAgain when;
  tellDrift(past, when);
  tellCharts(past, when);
  when.next_interval_ms = nextInterval(past.points);

  proof::DueAsked asked{.hours = past.hours, .happenings = past.happenings};
  for (const HistoryPoint& point : past.points) {
    if (point.calibration) asked.taught_utc_ms = point.utc_ms;
    if (point.verdict == "passed") asked.proved_utc_ms = point.utc_ms;
  }
  const bool by_shift = std::ranges::any_of(past.points, isShiftProof);
  if (asked.taught_utc_ms && by_shift)
    asked.happenings.push_back({proof::Event::Taught, *asked.taught_utc_ms});
  // The store has the day that held when it was taught; a profile that changed since does not move it.
  if (pair.due_utc_ms) {
    if (!asked.taught_utc_ms) asked.taught_utc_ms = 0;
    asked.every_ms = *pair.due_utc_ms - *asked.taught_utc_ms;
  }
  if (profile != nullptr) {
    if (const std::optional<double> use_s = siOf(profile->recheck_after_use))
      asked.every_hours = *use_s / 3600.0;
  }
  if (when.drift && when.drift->latest_utc_ms) asked.leaving_utc_ms = when.drift->earliest_utc_ms;
  when.reasons = proof::dueReasons(asked);
  return when;
}

std::vector<std::string> sayWhenAgain(const WhenAgain& when, const Reader& reader) {
  std::vector<std::string> lines;
  const auto day = [&](std::int64_t utc_ms) { return dateText(utc_ms, reader); };
  for (const proof::DueReason& reason : when.reasons)
    lines.push_back(
        say({"due-line", {{"day", day(reason.utc_ms)}, {"why", say(reason.why, reader)}}}, reader));
  if (const auto& drift = when.drift) {
    lines.push_back(say({"drift-told",
                         {{"drift", Amount{drift->per_30_days_percent, "%", 2}},
                          {"u", Amount{drift->per_30_days_expanded_percent, "%", 2}},
                          {"checks", Amount{double(drift->checks), "1"}}}},
                        reader));
    if (drift->expected_utc_ms && drift->earliest_utc_ms && drift->latest_utc_ms) {
      lines.push_back(say({"leaving-between",
                           {{"day", day(*drift->expected_utc_ms)},
                            {"early", day(*drift->earliest_utc_ms)},
                            {"late", day(*drift->latest_utc_ms)}}},
                          reader));
    } else if (drift->earliest_utc_ms) {
      lines.push_back(say({"leaving-not-before", {{"early", day(*drift->earliest_utc_ms)}}}, reader));
    } else if (drift->limit_percent) {
      lines.push_back(say({"leaving-not-seen", {}}, reader));
    }
  }
  for (const Message& signal : when.signals) lines.push_back(say(signal, reader));
  if (when.next_interval_ms)
    lines.push_back(
        say({"interval-told", {{"days", Amount{double(*when.next_interval_ms) / kMsPerDay, "1"}}}}, reader));
  return lines;
}

}  // namespace hingepin::session
