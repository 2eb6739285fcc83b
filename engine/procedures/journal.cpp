// SPDX-License-Identifier: Apache-2.0
#include "engine/procedures/journal.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <nlohmann/json.hpp>
#include <utility>

#include "engine/base/strict_json.h"

namespace hingepin::procedures {
namespace {

using Json = nlohmann::json;  // keeps its keys sorted

template <class T>
using Name = std::pair<std::string_view, T>;

constexpr std::array kEventTypes = {Name<EventType>{"start", EventType::Start},
                                    Name<EventType>{"acknowledge", EventType::Acknowledge},
                                    Name<EventType>{"zone-clear", EventType::ZoneClear},
                                    Name<EventType>{"begin", EventType::Begin},
                                    Name<EventType>{"answer", EventType::Answer},
                                    Name<EventType>{"reading", EventType::Reading},
                                    Name<EventType>{"evaluate", EventType::Evaluate},
                                    Name<EventType>{"interrupt", EventType::Interrupt},
                                    Name<EventType>{"resume", EventType::Resume},
                                    Name<EventType>{"take-over", EventType::TakeOver},
                                    Name<EventType>{"abandon", EventType::Abandon}};
constexpr std::array kHows = {Name<How>{"typed", How::Typed}, Name<How>{"log", How::Log},
                              Name<How>{"live", How::Live}, Name<How>{"monitor", How::Monitor}};
constexpr std::array kLoneWork = {Name<LoneWork>{"not-allowed", LoneWork::NotAllowed},
                                  Name<LoneWork>{"photo-from-afar", LoneWork::PhotoFromAfar},
                                  Name<LoneWork>{"unconfirmed", LoneWork::Unconfirmed}};
constexpr std::array kPhases = {Name<Phase>{"not-started", Phase::NotStarted},
                                Name<Phase>{"running", Phase::Running},
                                Name<Phase>{"making-safe", Phase::MakingSafe},
                                Name<Phase>{"tagging", Phase::Tagging},
                                Name<Phase>{"done", Phase::Done},
                                Name<Phase>{"failed", Phase::Failed},
                                Name<Phase>{"abandoned", Phase::Abandoned}};
constexpr std::array kOutcomes = {
    Name<Outcome>{"passed", Outcome::Passed}, Name<Outcome>{"failed", Outcome::Failed},
    Name<Outcome>{"doubted", Outcome::Doubted}, Name<Outcome>{"expired", Outcome::Expired}};

template <class T, std::size_t Size>
std::string nameIn(const std::array<Name<T>, Size>& table, T value) {
  return std::string(std::ranges::find(table, value, &Name<T>::second)->first);
}

void put(Json& object, const char* key, const std::string& text) {
  if (!text.empty()) object[key] = text;
}
template <class List>
void putList(Json& object, const char* key, const List& list) {
  if (!list.empty()) object[key] = list;
}

Json toJson(const StartOptions& options) {
  Json object = {{"lone_work", nameIn(kLoneWork, options.lone_work)}};
  put(object, "variant", options.variant);
  for (const auto& [id, text] : options.entries) object["entries"][id] = text;
  for (const Completed& completed : options.completed) {
    Json each = {{"procedure", completed.procedure}};
    if (completed.age_ms) each["age_ms"] = *completed.age_ms;
    object["completed"].push_back(std::move(each));
  }
  return object;
}

Json toJson(const Event& event) {
  Json object = {
      {"type", nameIn(kEventTypes, event.type)}, {"at_ms", event.at_ms}, {"how", nameIn(kHows, event.how)}};
  if (event.wall_utc_ms) object["wall_utc_ms"] = *event.wall_utc_ms;
  put(object, "boot", event.boot);
  put(object, "who", event.who);
  put(object, "role", event.role);
  put(object, "device", event.device);
  put(object, "about", event.about);
  put(object, "answer", event.answer);
  put(object, "value", event.value);
  putList(object, "hashes", event.hashes);
  if (event.sure) object["sure"] = true;
  if (event.start) object["start"] = toJson(*event.start);
  return object;
}

/// Text that is not UTF-8 can't come from a journal; from elsewhere it is replaced rather than thrown over.
std::string canonical(const Json& value) {
  return value.dump(-1, ' ', false, Json::error_handler_t::replace);
}

class EventReader {
 public:
  Event read(const JsonDocument& document);
  [[nodiscard]] const std::optional<Error>& error() const { return error_; }

 private:
  void keep(Error error) {
    if (!error_) error_ = std::move(error);
  }
  template <class T>
  T taken(Expected<T> read) {
    if (read) return *std::move(read);
    keep(std::move(read.error()));
    return {};
  }
  void object(const JsonNode& node, std::initializer_list<std::string_view> known) {
    if (const Expected<void> checked = node.expectObject(known); !checked) keep(checked.error());
  }
  std::string text(const JsonNode& parent, std::string_view key) {
    const std::optional<JsonNode> node = parent.find(key);
    return node ? taken(node->name()) : std::string();
  }
  std::int64_t whole(const JsonNode& node) {
    constexpr double kMost = 9007199254740991.0;
    const double number = taken(node.number());
    if (number == std::floor(number) && std::abs(number) <= kMost) return static_cast<std::int64_t>(number);
    keep(node.error("count-out-of-range", {{"low", Amount{-kMost, "1"}}, {"high", Amount{kMost, "1"}}})
             .error());
    return 0;
  }
  std::optional<std::int64_t> maybeWhole(const JsonNode& parent, std::string_view key) {
    const std::optional<JsonNode> node = parent.find(key);
    return node ? std::optional(whole(*node)) : std::nullopt;
  }
  template <class T, std::size_t Size>
  T named(const JsonNode& parent, std::string_view key, const std::array<Name<T>, Size>& table) {
    const Expected<JsonNode> node = parent.at(key);
    if (!node) {
      keep(node.error());
      return table.front().second;
    }
    const std::string name = taken(node->string());
    const auto row = std::ranges::find(table, name, &Name<T>::first);
    if (row != table.end()) return row->second;
    std::string names;
    for (const Name<T>& each : table) names += (names.empty() ? "" : ", ") + std::string(each.first);
    keep(node->error("value-not-on-list", {{"known", names}}).error());
    return table.front().second;
  }
  StartOptions options(const JsonNode& node);

  std::optional<Error> error_;
};

StartOptions EventReader::options(const JsonNode& node) {
  object(node, {"lone_work", "variant", "entries", "completed"});
  if (error_) return {};
  StartOptions options{.variant = text(node, "variant"), .lone_work = named(node, "lone_work", kLoneWork)};
  if (const std::optional<JsonNode> entries = node.find("entries")) {
    if (entries->value().kind != JsonKind::Object) {
      object(*entries, {});
      return {};
    }
    for (const std::string& id : entries->value().keys) options.entries[id] = text(*entries, id);
  }
  if (const std::optional<JsonNode> completed = node.find("completed")) {
    for (const JsonNode& each : taken(completed->elements())) {
      object(each, {"procedure", "age_ms"});
      if (error_) return {};
      options.completed.push_back(
          {.procedure = text(each, "procedure"), .age_ms = maybeWhole(each, "age_ms")});
    }
  }
  return options;
}

Event EventReader::read(const JsonDocument& document) {
  const JsonNode root(document);
  object(root, {"type", "at_ms", "how", "wall_utc_ms", "boot", "who", "role", "device", "about", "answer",
                "value", "hashes", "sure", "start"});
  if (error_) return {};
  Event event{.type = named(root, "type", kEventTypes)};
  const Expected<JsonNode> at = root.at("at_ms");
  if (!at) {
    keep(at.error());
    return {};
  }
  event.at_ms = whole(*at);
  event.how = named(root, "how", kHows);
  event.wall_utc_ms = maybeWhole(root, "wall_utc_ms");
  event.boot = text(root, "boot");
  event.who = text(root, "who");
  event.role = text(root, "role");
  event.device = text(root, "device");
  event.about = text(root, "about");
  event.answer = text(root, "answer");
  event.value = text(root, "value");
  if (const std::optional<JsonNode> hashes = root.find("hashes")) {
    for (const JsonNode& hash : taken(hashes->elements())) event.hashes.push_back(taken(hash.name()));
  }
  if (const std::optional<JsonNode> sure = root.find("sure")) {
    event.sure = sure->value().kind == JsonKind::Boolean && sure->value().boolean;
    if (!event.sure) keep(sure->error("value-not-on-list", {{"known", "true"}}).error());
  }
  if (const std::optional<JsonNode> start = root.find("start")) event.start = options(*start);
  return event;
}

Json toJson(const Try& made) {
  Json object = {
      {"event", toJson(made.event)}, {"outcome", nameIn(kOutcomes, made.outcome)}, {"counts", made.counts}};
  put(object, "result", made.result);
  put(object, "reason", made.reason);
  putList(object, "rounds", made.rounds);
  return object;
}

}  // namespace

std::string writeEvent(const Event& event) { return canonical(toJson(event)); }

Expected<Event> readEvent(std::string text, std::string file) {
  const Expected<JsonDocument> document = readJson(std::move(text), std::move(file));
  if (!document) return std::unexpected(document.error());
  EventReader reader;
  Event event = reader.read(*document);
  if (reader.error()) return std::unexpected(*reader.error());
  return event;
}

std::string writeState(const State& state) {
  Json object = {{"phase", nameIn(kPhases, state.phase)},
                 {"start", toJson(state.start)},
                 {"position", state.position},
                 {"at_ms", state.at_ms},
                 {"tries", Json::array()}};
  put(object, "person", state.person);
  put(object, "role", state.role);
  put(object, "device", state.device);
  put(object, "failed_step", state.failed_step);
  put(object, "boot", state.boot);
  if (state.paused) object["paused"] = true;
  if (state.zone_clear) object["zone_clear"] = true;
  if (state.abandoned) object["abandoned"] = true;
  if (state.held_since_ms) object["held_since_ms"] = *state.held_since_ms;
  putList(object, "reading_again", state.reading_again);
  putList(object, "rounds", state.rounds);
  putList(object, "failures", state.failures);
  putList(object, "unread", state.unread);
  putList(object, "old_boots", state.old_boots);
  for (const Hazard hazard : state.open) object["open"].push_back(std::string(nameOf(hazard)));
  for (const Mark& mark : state.marks) object["marks"].push_back({{"step", mark.step}, {"mark", mark.mark}});
  if (state.doubt) {
    object["doubt"] = {{"value", state.doubt->value}, {"suggestions", state.doubt->suggestions}};
  }
  for (const Try& made : state.tries) object["tries"].push_back(toJson(made));
  return canonical(object);
}

Expected<State> replay(const Procedure& procedure, std::span<const Event> journal, const Measure& measure) {
  State state;
  for (const Event& event : journal) {
    Expected<State> next = apply(procedure, std::move(state), event, measure);
    if (!next) return next;
    state = *std::move(next);
  }
  return state;
}

}  // namespace hingepin::procedures
