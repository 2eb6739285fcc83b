// SPDX-License-Identifier: Apache-2.0
#include "engine/session/dispute.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <set>

#include "engine/proof/doubt.h"
#include "engine/records/canonical_json.h"
#include "engine/session/catalogue.h"
#include "engine/session/moment.h"
#include "engine/session/past.h"

namespace hingepin::session {
namespace {

/// Of a reference mass whose own is not on record, as formats.md takes it.
constexpr double kReferenceU_percent = 0.1;

/// The doubt of a mean error from its own indications. One indication alone has no scatter to go by.
std::optional<double> expandedPercent(const std::vector<double>& indications_kg, double reference_kg,
                                      const std::optional<double>& reference_u_kg) {
  const auto count = static_cast<double>(indications_kg.size());
  if (indications_kg.size() < 2) return std::nullopt;
  const double mean = std::accumulate(indications_kg.begin(), indications_kg.end(), 0.0) / count;
  double squares = 0.0;
  for (const double each : indications_kg) squares += (each - mean) * (each - mean);
  const proof::Doubt doubt{
      .scatter_u_kg = std::sqrt(squares / (count - 1.0) / count),
      .degrees_of_freedom = count - 1.0,
      .normal_u_kg = reference_u_kg.value_or(kReferenceU_percent / 100.0 * reference_kg)};
  return proof::halfWidth(doubt) / reference_kg * 100.0;
}

std::optional<ProvedError> provedIn(const HistoryPoint& point, bool as_left) {
  const std::optional<double> error = as_left ? point.error_percent : point.error_found_percent;
  if (!error || !point.reference_kg) return std::nullopt;
  const std::vector<double>& indications = as_left ? point.indications_kg : point.found_indications_kg;
  const double reference_kg = *point.reference_kg;
  // A single reading is worth no less doubt than the limit it was held against.
  const double alone = std::max(2.0 * kReferenceU_percent, point.error_limit_percent.value_or(0.0));
  return ProvedError{
      .record = point.record,
      .procedure = point.procedure,
      .utc_ms = point.utc_ms,
      .error_percent = *error,
      .expanded_percent = expandedPercent(indications, reference_kg, point.reference_u_kg).value_or(alone),
      .indications = static_cast<int>(indications.size()),
      .reference_kg = reference_kg,
      .limit_percent = point.error_limit_percent};
}

void widen(Dispute& dispute, const ProvedError& proved) {
  const double low = proved.error_percent - proved.expanded_percent;
  const double high = proved.error_percent + proved.expanded_percent;
  dispute.low_percent = std::min(dispute.low_percent.value_or(low), low);
  dispute.high_percent = std::max(dispute.high_percent.value_or(high), high);
}

std::string decimal(double value) { return fmt::format("{:.3f}", value); }

JsonValue provedJson(const std::optional<ProvedError>& proved) {
  using namespace records;
  if (!proved) return jsonNull();
  return jsonObject(
      {{"record", jsonString(proved->record)},
       {"procedure", jsonString(proved->procedure)},
       {"ended_utc_ms", jsonInteger(proved->utc_ms)},
       {"error_percent", jsonString(decimal(proved->error_percent))},
       {"expanded_uncertainty_percent", jsonString(decimal(proved->expanded_percent))},
       {"indications", jsonInteger(proved->indications)},
       {"reference_kg", jsonString(decimal(proved->reference_kg))},
       {"limit_percent", proved->limit_percent ? jsonString(decimal(*proved->limit_percent)) : jsonNull()}});
}

}  // namespace

Expected<Dispute> disputeOf(const store::Store& store, const std::string& unit, const std::string& attachment,
                            std::int64_t utc_ms) {
  const Expected<std::optional<store::Unit>> stored = store.unit(unit);
  if (!stored) return std::unexpected(stored.error());
  if (!*stored) return fail(ErrorKind::NotFound, "unit-not-in-store", {{"unit", unit}});
  const Expected<UnitPast> past = pastOf(store, unit, std::vector{attachment});
  if (!past) return std::unexpected(past.error());
  const ScalePast& scale = past->scales.find(attachment)->second;

  Dispute dispute{.unit = unit, .attachment = attachment, .utc_ms = utc_ms};
  const HistoryPoint* untold = nullptr;  // taught since the last proof, without one of its own
  for (const HistoryPoint& point : scale.points) {
    if (point.utc_ms <= utc_ms) {
      if (const auto proved = provedIn(point, true)) {
        dispute.before = proved;
        untold = nullptr;
      } else if (point.calibration) {
        untold = &point;
      }
    } else if (const auto proved = provedIn(point, false); proved && !dispute.after) {
      // What a job shows that taught without a proof as found is about the scale after it.
      if (point.calibration && point.error_found_percent == point.error_percent) continue;
      dispute.after = proved;
    }
  }
  std::set<std::string> behind;
  if (untold != nullptr) {
    // The proof before says nothing of a scale that was taught since.
    behind.insert(untold->record);
    dispute.before.reset();
    dispute.remarks.push_back({"dispute-taught-unproved", {{"time", utcText(untold->utc_ms)}}});
  }
  for (const auto* proved : {&dispute.before, &dispute.after}) {
    if (!*proved) continue;
    widen(dispute, **proved);
    behind.insert((*proved)->record);
  }
  const std::int64_t from = dispute.before ? dispute.before->utc_ms : 0;
  const std::int64_t to = dispute.after ? dispute.after->utc_ms : INT64_MAX;
  if (dispute.before && dispute.after && to > from)
    dispute.between_percent = std::lerp(dispute.before->error_percent, dispute.after->error_percent,
                                        double(utc_ms - from) / double(to - from));
  dispute.remarks.push_back({dispute.before && dispute.after ? "dispute-bounded"
                             : dispute.before                ? "dispute-open-after"
                             : dispute.after                 ? "dispute-open-before"
                                                             : "dispute-unproved",
                             {}});
  for (std::size_t i = 0; i < scale.happenings.size(); ++i) {
    const proof::Happening& each = scale.happenings[i];
    if (each.utc_ms <= from || each.utc_ms >= to) continue;
    dispute.remarks.push_back({"due-event-" + std::string(nameIn(proof::kEventNames, each.event)), {}});
    behind.insert(scale.happening_records[i]);
  }
  // What was taught or proved between, though it bounds nothing, belongs to the story.
  for (const HistoryPoint& point : scale.points) {
    if (point.utc_ms >= from && point.utc_ms <= to) behind.insert(point.record);
  }
  dispute.records.assign(behind.begin(), behind.end());
  return dispute;
}

std::string writeDispute(const Dispute& dispute) {
  using namespace records;
  const auto maybe = [](const std::optional<double>& value) {
    return value ? jsonString(decimal(*value)) : jsonNull();
  };
  std::vector<JsonValue> remarks, names;
  for (const Message& message : dispute.remarks) remarks.push_back(jsonString(message.code));
  for (const std::string& name : dispute.records) names.push_back(jsonString(name));
  const JsonValue content = jsonObject({{"format", jsonString("hingepin-dispute/1")},
                                        {"unit", jsonString(dispute.unit)},
                                        {"attachment", jsonString(dispute.attachment)},
                                        {"utc_ms", jsonInteger(dispute.utc_ms)},
                                        {"before", provedJson(dispute.before)},
                                        {"after", provedJson(dispute.after)},
                                        {"low_percent", maybe(dispute.low_percent)},
                                        {"high_percent", maybe(dispute.high_percent)},
                                        {"between_percent", maybe(dispute.between_percent)},
                                        {"remarks", jsonArray(std::move(remarks))},
                                        {"records", jsonArray(std::move(names))}});
  // Only numbers that are not finite could not be written, and here are none.
  return canonicalJson(content).value_or("");
}

std::vector<std::string> sayDispute(const Dispute& dispute, const Reader& reader) {
  std::vector<std::string> lines;
  const auto percent = [](double value) { return Amount{value, "%", 2}; };
  const auto tell = [&](const char* code, const ProvedError& proved) {
    lines.push_back(say({code,
                         {{"time", dateTimeText(proved.utc_ms, reader)},
                          {"error", percent(proved.error_percent)},
                          {"u", percent(proved.expanded_percent)},
                          {"record", proved.record.substr(0, 12)}}},
                        reader));
  };
  if (dispute.before) tell("dispute-before", *dispute.before);
  if (dispute.after) tell("dispute-after", *dispute.after);
  if (dispute.low_percent)
    lines.push_back(say({"dispute-worth",
                         {{"time", dateTimeText(dispute.utc_ms, reader)},
                          {"low", percent(*dispute.low_percent)},
                          {"high", percent(*dispute.high_percent)}}},
                        reader));
  if (dispute.between_percent)
    lines.push_back(say({"dispute-between", {{"error", percent(*dispute.between_percent)}}}, reader));
  for (const Message& message : dispute.remarks) lines.push_back(say(message, reader));
  lines.push_back(say({"document-not-for-trade", {}}, reader));
  return lines;
}

}  // namespace hingepin::session
