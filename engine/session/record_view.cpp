// SPDX-License-Identifier: Apache-2.0
#include "engine/session/record_view.h"

#include <algorithm>

#include "engine/session/job_record.h"
#include "engine/units/ucum.h"

namespace hingepin::session {
namespace {

std::int64_t integerAt(const JsonValue& object, std::string_view key) {
  const JsonValue* const value = memberAt(object, {key});
  return value != nullptr && value->kind == JsonKind::Number ? static_cast<std::int64_t>(value->number) : 0;
}

bool flagAt(const JsonValue& object, std::initializer_list<std::string_view> path) {
  const JsonValue* const value = memberAt(object, path);
  return value != nullptr && value->kind == JsonKind::Boolean && value->boolean;
}

std::vector<std::string> textsAt(const JsonValue& object, std::string_view key) {
  std::vector<std::string> texts;
  const JsonValue* const value = memberAt(object, {key});
  if (value == nullptr || value->kind != JsonKind::Array) return texts;
  for (const JsonValue& item : value->items) texts.push_back(item.text);
  return texts;
}

template <class Read>
auto listAt(const JsonValue& object, std::string_view key, Read read) {
  std::vector<decltype(read(object))> list;
  const JsonValue* const value = memberAt(object, {key});
  if (value == nullptr || value->kind != JsonKind::Array) return list;
  for (const JsonValue& item : value->items) list.push_back(read(item));
  return list;
}

RecordedCheck checkOf(const JsonValue& value) {
  std::vector<std::pair<std::string, std::string>> scale;
  if (const JsonValue* const steps = memberAt(value, {"scale"})) {
    for (std::size_t index = 0; index < steps->keys.size(); ++index)
      scale.emplace_back(steps->keys[index], steps->items[index].text);
  }
  return {.kind = textAt(value, {"kind"}),
          .of = textsAt(value, "of"),
          .low = textAt(value, {"low"}),
          .high = textAt(value, {"high"}),
          .value = textAt(value, {"value"}),
          .target = textAt(value, {"target"}),
          .within = textAt(value, {"within"}),
          .at_most = textAt(value, {"at_most"}),
          .reference_entry = textAt(value, {"reference_entry"}),
          .reference = textAt(value, {"reference"}),
          .duration = textAt(value, {"duration"}),
          .fit = textAt(value, {"fit"}),
          .gross = textAt(value, {"gross"}),
          .tare = textAt(value, {"tare"}),
          .interval = textAt(value, {"interval"}),
          .legal_gross = textAt(value, {"legal_gross"}),
          .scale = std::move(scale)};
}

RecordedTry tryOf(const JsonValue& value, const std::vector<RecordedPerson>& people) {
  RecordedTry read{.type = textAt(value, {"type"}),
                   .about = textAt(value, {"about"}),
                   .kind = textAt(value, {"kind"}),
                   .answer = textAt(value, {"answer"}),
                   .value = textAt(value, {"value"}),
                   .how = textAt(value, {"how"}),
                   .quantity = textAt(value, {"quantity"}),
                   .independent = flagAt(value, {"independent"}),
                   .hashes = textsAt(value, "hashes"),
                   .utc_ms = integerAt(value, "wall_utc_ms"),
                   .outcome = textAt(value, {"outcome"}),
                   .counts = flagAt(value, {"counts"}),
                   .result = textAt(value, {"result"}),
                   .reason = textAt(value, {"reason"}),
                   .limit = textAt(value, {"limit"}),
                   .more = integerAt(value, "more"),
                   .step = textAt(value, {"step"}),
                   .confirmation = textAt(value, {"confirmation"})};
  const auto by = static_cast<std::size_t>(std::max<std::int64_t>(integerAt(value, "by"), 0));
  if (by < people.size()) read.by = people[by];
  if (const JsonValue* const check = memberAt(value, {"check"})) read.check = checkOf(*check);
  return read;
}

}  // namespace

std::optional<RecordedJob> readRecordedJob(const JsonValue& content) {
  if (textAt(content, {"kind"}) != "job") return std::nullopt;
  RecordedJob job{.job = textAt(content, {"job"}),
                  .unit = textAt(content, {"unit", "id"}),
                  .unit_profile = textAt(content, {"unit", "profile"}),
                  .attachment = textAt(content, {"attachment", "id"}),
                  .procedure = textAt(content, {"procedure", "id"}),
                  .procedure_hash = textAt(content, {"procedure", "hash"}),
                  .words = textAt(content, {"words", "hash"}),
                  .language = textAt(content, {"words", "language"}),
                  .variant = textAt(content, {"start", "variant"}),
                  .phase = textAt(content, {"phase"}),
                  .tag = textAt(content, {"tag"}),
                  .failed_step = textAt(content, {"failed_step"}),
                  .engine = textAt(content, {"engine"}),
                  .practice = flagAt(content, {"unit", "practice"}),
                  .begun_utc_ms = integerAt(content, "begun_utc_ms"),
                  .ended_utc_ms = integerAt(content, "ended_utc_ms")};
  if (const JsonValue* const procedure = memberAt(content, {"procedure"})) {
    job.version = integerAt(*procedure, "version");
  }
  if (const JsonValue* const entries = memberAt(content, {"start", "entries"})) {
    for (std::size_t index = 0; index < entries->keys.size(); ++index) {
      job.entries.emplace_back(entries->keys[index], entries->items[index].text);
    }
  }
  job.people = listAt(content, "people", [](const JsonValue& value) {
    return RecordedPerson{textAt(value, {"key"}), textAt(value, {"role"}), textAt(value, {"device"})};
  });
  job.tries = listAt(content, "tries", [&](const JsonValue& value) { return tryOf(value, job.people); });
  job.marks = listAt(content, "marks", [](const JsonValue& value) {
    return RecordedMark{textAt(value, {"step"}), textAt(value, {"mark"})};
  });
  const JsonValue* const calibration = memberAt(content, {"calibration"});
  if (calibration != nullptr && calibration->kind == JsonKind::Object) job.calibration = calibration;
  return job;
}

std::optional<double> siOf(std::string_view quantity) {
  const Expected<ReadQuantity> read = readAnyQuantity(quantity);
  return read ? std::optional(read->value_si) : std::nullopt;
}

std::vector<std::size_t> readingsBefore(const RecordedJob& job, std::size_t index,
                                        const std::vector<std::string>& steps) {
  std::vector<std::size_t> counting;
  std::vector<std::size_t> last_round;
  for (std::size_t at = 0; at < index; ++at) {
    const RecordedTry& each = job.tries[at];
    if (each.check && each.about == job.tries[index].about) last_round.clear();
    if (std::ranges::find(steps, each.about) == steps.end() || each.type != "reading" || !siOf(each.value)) {
      continue;
    }
    last_round.push_back(at);
    if (each.counts) counting.push_back(at);
  }
  return counting.empty() ? last_round : counting;
}

std::vector<double> valuesBefore(const RecordedJob& job, std::size_t index,
                                 const std::vector<std::string>& steps) {
  std::vector<double> values;
  for (const std::size_t at : readingsBefore(job, index, steps)) values.push_back(*siOf(job.tries[at].value));
  return values;
}

}  // namespace hingepin::session
