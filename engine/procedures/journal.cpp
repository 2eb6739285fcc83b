// SPDX-License-Identifier: Apache-2.0
#include "engine/procedures/journal.h"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>
#include <utility>

#include "engine/base/json_walk.h"

namespace hingepin::procedures {
namespace {

using Json = nlohmann::json;  // keeps its keys sorted

constexpr std::array kEventTypes = {
    Named{"start", EventType::Start},          Named{"acknowledge", EventType::Acknowledge},
    Named{"zone-clear", EventType::ZoneClear}, Named{"begin", EventType::Begin},
    Named{"answer", EventType::Answer},        Named{"reading", EventType::Reading},
    Named{"evaluate", EventType::Evaluate},    Named{"interrupt", EventType::Interrupt},
    Named{"resume", EventType::Resume},        Named{"take-over", EventType::TakeOver},
    Named{"abandon", EventType::Abandon},      Named{"go-back", EventType::GoBack}};
constexpr std::array kHows = {Named{"typed", How::Typed}, Named{"log", How::Log}, Named{"live", How::Live},
                              Named{"monitor", How::Monitor}};
constexpr std::array kLoneWork = {Named{"not-allowed", LoneWork::NotAllowed},
                                  Named{"photo-from-afar", LoneWork::PhotoFromAfar},
                                  Named{"unconfirmed", LoneWork::Unconfirmed}};
constexpr std::array kPhases = {Named{"not-started", Phase::NotStarted},
                                Named{"running", Phase::Running},
                                Named{"making-safe", Phase::MakingSafe},
                                Named{"tagging", Phase::Tagging},
                                Named{"done", Phase::Done},
                                Named{"failed", Phase::Failed},
                                Named{"abandoned", Phase::Abandoned}};
constexpr std::array kOutcomes = {Named{"passed", Outcome::Passed}, Named{"failed", Outcome::Failed},
                                  Named{"doubted", Outcome::Doubted}, Named{"expired", Outcome::Expired},
                                  Named{"more", Outcome::More}};

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
  put(object, "confirmation", event.confirmation);
  if (event.start) object["start"] = toJson(*event.start);
  return object;
}

/// Text that is not UTF-8 can't come from a journal; from elsewhere it is replaced rather than thrown over.
std::string canonical(const Json& value) {
  return value.dump(-1, ' ', false, Json::error_handler_t::replace);
}

class EventReader : public JsonWalk {
 public:
  Event read(const JsonDocument& document);

 private:
  std::string text(const JsonNode& parent, std::string_view key) {
    return optional(parent, key, [&](const JsonNode& node) { return taken(node.name()); }).value_or("");
  }
  std::int64_t integer(const JsonNode& node) { return whole(node, -kMostInteger, kMostInteger); }
  std::optional<std::int64_t> maybeInteger(const JsonNode& parent, std::string_view key) {
    return optional(parent, key, [&](const JsonNode& node) { return integer(node); });
  }
  StartOptions options(const JsonNode& node);
};

StartOptions EventReader::options(const JsonNode& node) {
  if (!object(node, {"lone_work", "variant", "entries", "completed"})) return {};
  StartOptions options{.variant = text(node, "variant"),
                       .lone_work = requiredNamed(node, "lone_work", kLoneWork)};
  if (const std::optional<JsonNode> entries = node.find("entries")) {
    for (const auto& [id, text] : taken(entries->members())) options.entries[id] = taken(text.name());
  }
  if (const std::optional<JsonNode> completed = node.find("completed")) {
    for (const JsonNode& each : taken(completed->elements())) {
      if (!object(each, {"procedure", "age_ms"})) return {};
      options.completed.push_back(
          {.procedure = required(each, "procedure", [&](const JsonNode& id) { return taken(id.string()); }),
           .age_ms = maybeInteger(each, "age_ms")});
    }
  }
  return options;
}

Event EventReader::read(const JsonDocument& document) {
  const JsonNode root(document);
  if (!object(root, {"type", "at_ms", "how", "wall_utc_ms", "boot", "who", "role", "device", "about",
                     "answer", "value", "hashes", "sure", "confirmation", "start"})) {
    return {};
  }
  Event event{.type = requiredNamed(root, "type", kEventTypes)};
  event.at_ms = required(root, "at_ms", [&](const JsonNode& node) { return integer(node); });
  event.how = requiredNamed(root, "how", kHows);
  event.wall_utc_ms = maybeInteger(root, "wall_utc_ms");
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
  event.sure = flag(root, "sure");
  event.confirmation = text(root, "confirmation");
  if (const std::optional<JsonNode> start = root.find("start")) event.start = options(*start);
  return event;
}

Json toJson(const Try& made) {
  Json object = {
      {"event", toJson(made.event)}, {"outcome", nameIn(kOutcomes, made.outcome)}, {"counts", made.counts}};
  put(object, "result", made.result);
  put(object, "reason", made.reason);
  put(object, "limit", made.limit);
  if (made.more > 0) object["more"] = made.more;
  put(object, "step", made.step);
  putList(object, "rounds", made.rounds);
  return object;
}

}  // namespace

std::string_view nameOf(Phase phase) { return nameIn(kPhases, phase); }
std::string_view nameOf(Outcome outcome) { return nameIn(kOutcomes, outcome); }

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
