// SPDX-License-Identifier: Apache-2.0
#include "engine/session/due_list.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <optional>
#include <string>
#include <tuple>
#include <utility>

#include "engine/records/canonical_json.h"
#include "engine/session/job_record.h"
#include "engine/session/past.h"
#include "engine/session/profile.h"

namespace hingepin::session {
namespace {

using namespace records;
using store::ScaleDue;
using store::Store;

/// So many units are worked out in one commit: others who write wait that long.
constexpr std::size_t kUnitsOfACommit = 128;

JsonValue jsonNumber(double value) { return {.kind = JsonKind::Number, .number = value}; }

JsonValue jsonOf(const Message& message) {
  std::vector<std::pair<std::string, JsonValue>> values;
  for (const auto& [name, value] : message.values) {
    const auto* const amount = std::get_if<Amount>(&value);
    values.emplace_back(name, amount == nullptr
                                  ? jsonString(std::get<std::string>(value))
                                  : jsonArray({jsonNumber(amount->value), jsonString(amount->ucum),
                                               jsonInteger(amount->decimals)}));
  }
  return jsonObject({{"code", jsonString(message.code)}, {"values", jsonObject(std::move(values))}});
}

/// The number there is at a place of an object; nothing for another kind.
std::optional<double> numberAt(const JsonValue& object, std::string_view key) {
  const JsonValue* const value = memberAt(object, {key});
  return value != nullptr && value->kind == JsonKind::Number ? std::optional(value->number) : std::nullopt;
}

std::optional<std::int64_t> timeAt(const JsonValue& object, std::string_view key) {
  const std::optional<double> number = numberAt(object, key);
  return number ? std::optional(static_cast<std::int64_t>(*number)) : std::nullopt;
}

Message messageOf(const JsonValue& json) {
  Message message{textAt(json, {"code"}), {}};
  const JsonValue* const values = memberAt(json, {"values"});
  for (std::size_t index = 0; values != nullptr && index < values->keys.size(); ++index) {
    const JsonValue& value = values->items[index];
    MessageValue read = value.text;
    if (value.items.size() == 3)
      read = Amount{value.items[0].number, value.items[1].text, static_cast<int>(value.items[2].number)};
    message.values.emplace_back(values->keys[index], std::move(read));
  }
  return message;
}

std::string textOf(const WhenAgain& when) {
  std::vector<std::pair<std::string, JsonValue>> members;
  const auto add = [](auto& to, const char* key, const auto& value) {
    if (value) to.emplace_back(key, jsonNumber(static_cast<double>(*value)));
  };
  std::vector<JsonValue> reasons, signals;
  for (const proof::DueReason& each : when.reasons)
    reasons.push_back(jsonObject({{"at", jsonInteger(each.utc_ms)}, {"why", jsonOf(each.why)}}));
  for (const Message& each : when.signals) signals.push_back(jsonOf(each));
  members.emplace_back("reasons", jsonArray(std::move(reasons)));
  members.emplace_back("signals", jsonArray(std::move(signals)));
  if (when.no_drift) members.emplace_back("no_drift", jsonOf(*when.no_drift));
  add(members, "interval", when.next_interval_ms);
  if (when.drift) {
    std::vector<std::pair<std::string, JsonValue>> drift{
        {"checks", jsonInteger(when.drift->checks)},
        {"per", jsonNumber(when.drift->per_30_days_percent)},
        {"u", jsonNumber(when.drift->per_30_days_expanded_percent)},
        {"error", jsonNumber(when.drift->error_percent)}};
    add(drift, "limit", when.drift->limit_percent);
    add(drift, "expected", when.drift->expected_utc_ms);
    add(drift, "earliest", when.drift->earliest_utc_ms);
    add(drift, "latest", when.drift->latest_utc_ms);
    members.emplace_back("drift", jsonObject(std::move(drift)));
  }
  // A number that is not finite can't be written: then it is worked out each time.
  return canonicalJson(jsonObject(std::move(members))).value_or("");
}

std::optional<WhenAgain> whenOf(const std::string& told) {
  if (told.empty()) return std::nullopt;
  const Expected<JsonDocument> document = readJson(told, "");
  if (!document) return std::nullopt;
  const JsonValue& root = document->root;
  const JsonValue* const reasons = memberAt(root, {"reasons"});
  const JsonValue* const signals = memberAt(root, {"signals"});
  if (reasons == nullptr || signals == nullptr) return std::nullopt;
  WhenAgain when;
  for (const JsonValue& each : reasons->items) {
    const JsonValue* const why = memberAt(each, {"why"});
    const std::optional<std::int64_t> at = timeAt(each, "at");
    if (why == nullptr || !at) return std::nullopt;
    when.reasons.push_back({messageOf(*why), *at});
  }
  for (const JsonValue& each : signals->items) when.signals.push_back(messageOf(each));
  if (const JsonValue* const none = memberAt(root, {"no_drift"})) when.no_drift = messageOf(*none);
  when.next_interval_ms = timeAt(root, "interval");
  if (const JsonValue* const drift = memberAt(root, {"drift"})) {
    when.drift = ErrorDrift{.checks = static_cast<int>(numberAt(*drift, "checks").value_or(0.0)),
                            .per_30_days_percent = numberAt(*drift, "per").value_or(0.0),
                            .per_30_days_expanded_percent = numberAt(*drift, "u").value_or(0.0),
                            .error_percent = numberAt(*drift, "error").value_or(0.0),
                            .limit_percent = numberAt(*drift, "limit"),
                            .expected_utc_ms = timeAt(*drift, "expected"),
                            .earliest_utc_ms = timeAt(*drift, "earliest"),
                            .latest_utc_ms = timeAt(*drift, "latest")};
  }
  return when;
}

/// The pairs of a unit with what is worked out of them, from all records of the unit.
struct WorkedOut {
  std::vector<DuePair> pairs;
  bool is_final = true;  ///< false: something that a record names has yet to come
};
Expected<WorkedOut> workOut(const Store& store, const std::string& unit_id, const Edge& edge) {
  const Expected<std::optional<store::Unit>> unit = store.unit(unit_id);
  if (!unit) return std::unexpected(unit.error());
  if (!*unit) return fail(ErrorKind::NotFound, "unit-not-in-store", {{"unit", unit_id}});
  Expected<std::vector<store::Pair>> pairs = store.pairsOf(unit_id);
  if (!pairs) return std::unexpected(pairs.error());
  const Expected<UnitPast> past = pastOf(store, unit_id, *pairs);
  if (!past) return std::unexpected(past.error());
  const Expected<UnitProfile> profile = readUnitProfile((*unit)->profile, "unit " + unit_id, edge);
  WorkedOut worked{.pairs = {}, .is_final = past->is_final};
  for (store::Pair& pair : *pairs) {
    WhenAgain when =
        whenAgain(past->scales.find(pair.attachment)->second, pair, profile ? &*profile : nullptr);
    worked.pairs.push_back({std::move(pair), std::move(when)});
  }
  return worked;
}

std::optional<std::int64_t> firstDue(const WhenAgain& when) {
  return when.reasons.empty() ? std::nullopt : std::optional(when.reasons.front().utc_ms);
}

}  // namespace

Expected<std::vector<DuePair>> duePairs(const Store& store, const Edge& edge, std::int64_t until_utc_ms) {
  const Expected<std::vector<ScaleDue>> scales = store.scalesDue(kDueRule, until_utc_ms);
  if (!scales) return std::unexpected(scales.error());
  std::vector<DuePair> list;
  std::string worked_out;  // the unit whose pairs are all in the list already
  for (const ScaleDue& scale : *scales) {
    if (scale.unit == worked_out) continue;
    if (std::optional<WhenAgain> when = whenOf(scale.told)) {
      Expected<std::optional<store::Pair>> pair = store.pair(scale.unit, scale.attachment);
      if (!pair) return std::unexpected(pair.error());
      list.push_back({**std::move(pair), *std::move(when)});
      continue;
    }
    Expected<WorkedOut> worked = workOut(store, scale.unit, edge);
    if (!worked) return std::unexpected(worked.error());
    std::erase_if(list, [&](const DuePair& each) { return each.pair.unit == scale.unit; });
    for (DuePair& each : worked->pairs) {
      if (firstDue(each.when).value_or(INT64_MAX) <= until_utc_ms) list.push_back(std::move(each));
    }
    worked_out = scale.unit;
  }
  std::ranges::sort(list, {}, [](const DuePair& each) {
    return std::tuple(firstDue(each.when).value_or(INT64_MAX), each.pair.unit, each.pair.attachment);
  });
  return list;
}

Expected<std::vector<DuePair>> duePairsOf(const Store& store, const std::string& unit, const Edge& edge) {
  Expected<WorkedOut> worked = workOut(store, unit, edge);
  if (!worked) return std::unexpected(worked.error());
  return std::move(worked->pairs);
}

Expected<void> keepDue(Store& store, const Edge& edge) {
  const Expected<std::vector<ScaleDue>> missing = store.scalesDue(kDueRule, INT64_MIN);
  if (!missing) return std::unexpected(missing.error());
  std::vector<std::string> units;
  for (const ScaleDue& each : *missing) {
    if (each.told.empty() && (units.empty() || units.back() != each.unit)) units.push_back(each.unit);
  }
  for (std::size_t from = 0; from < units.size(); from += kUnitsOfACommit) {
    Expected<store::Batch> batch = store.beginBatch();
    if (!batch) return std::unexpected(batch.error());
    for (std::size_t index = from; index < std::min(units.size(), from + kUnitsOfACommit); ++index) {
      const Expected<WorkedOut> worked = workOut(store, units[index], edge);
      if (!worked) return std::unexpected(worked.error());
      if (!worked->is_final) continue;
      for (const DuePair& each : worked->pairs) {
        std::string told = textOf(each.when);
        if (told.empty()) continue;
        const Expected<void> kept = store.keepDue({.unit = each.pair.unit,
                                                   .attachment = each.pair.attachment,
                                                   .due_utc_ms = firstDue(each.when),
                                                   .told = std::move(told)},
                                                  kDueRule);
        if (!kept) return kept;
      }
    }
    if (const Expected<void> kept = batch->commit(); !kept) return kept;
  }
  return {};
}

}  // namespace hingepin::session
