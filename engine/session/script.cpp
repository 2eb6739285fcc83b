// SPDX-License-Identifier: Apache-2.0
#include "engine/session/script.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>
#include <nlohmann/json.hpp>
#include <utility>

#include "engine/base/json_walk.h"
#include "engine/base/text.h"
#include "engine/session/moment.h"
#include "engine/units/ucum.h"

namespace hingepin::session {
namespace {

using procedures::Ask;
using procedures::EventType;
using procedures::How;
using procedures::LoneWork;
using procedures::Step;
using procedures::StepKind;
using Json = nlohmann::ordered_json;

constexpr std::array kLoneWork = {Named<LoneWork>{"not-allowed", LoneWork::NotAllowed},
                                  Named<LoneWork>{"photo-from-afar", LoneWork::PhotoFromAfar},
                                  Named<LoneWork>{"unconfirmed", LoneWork::Unconfirmed}};
constexpr std::array kHows = {Named<How>{"typed", How::Typed}, Named<How>{"log", How::Log},
                              Named<How>{"live", How::Live}, Named<How>{"monitor", How::Monitor}};

class LineReader : public JsonWalk {
 public:
  LineReader(const JsonDocument& document, std::size_t number) : root_(document), number_(number) {}

  [[nodiscard]] const JsonNode& root() const { return root_; }
  [[nodiscard]] bool has(std::string_view key) const { return root_.find(key).has_value(); }
  /// The first fault, in the script's line.
  [[nodiscard]] std::optional<Error> fault() const {
    std::optional<Error> fault = error();
    if (fault) fault->place.file = root_.place().file;
    if (fault) fault->place.line = number_;
    return fault;
  }
  std::string text(const JsonNode& parent, std::string_view key) {
    return orEmpty(parent, key, [this](const JsonNode& node) { return taken(node.name()); });
  }
  std::optional<std::int64_t> utc(std::string_view key) {
    const std::optional<JsonNode> node = root_.find(key);
    if (!node) return std::nullopt;
    const std::optional<std::int64_t> read = readUtc(taken(node->string()));
    if (!read) keep(node->error("script-time-malformed", {{"text", excerpt(node->value().text)}}));
    return read;
  }

 private:
  JsonNode root_;
  std::size_t number_;
};

Expected<JsonDocument> readLine(std::string_view text, const std::string& file, std::size_t number) {
  Expected<JsonDocument> document = readJson(std::string(text), file);
  if (!document) document.error().place.line = number;
  return document;
}

}  // namespace

Expected<ScriptHeader> readScriptHeader(std::string_view text, const std::string& file) {
  const Expected<JsonDocument> document = readLine(text, file, 1);
  if (!document) return std::unexpected(document.error());
  LineReader reader(*document, 1);
  const JsonNode& root = reader.root();
  reader.object(root, {"format", "procedure", "variant", "unit", "attachment", "language", "words",
                       "lone_work", "entries", "begun_utc", "phone_started_utc", "people", "in_charge"});
  if (const std::optional<Error> fault = reader.fault()) return std::unexpected(*fault);
  if (const std::string format = reader.text(root, "format"); format != "hingepin-script/1") {
    reader.keep(root.error("format-unsupported",
                           {{"text", excerpt(format)}, {"expected", std::string("hingepin-script/1")}}));
  }
  ScriptHeader header;
  header.procedure = reader.text(root, "procedure");
  header.variant = reader.text(root, "variant");
  header.unit = reader.text(root, "unit");
  header.attachment = reader.text(root, "attachment");
  if (reader.has("language")) header.language = reader.text(root, "language");
  header.words = reader.text(root, "words");
  header.lone_work = reader.optionalNamed(root, "lone_work", kLoneWork, LoneWork::NotAllowed);
  header.begun_utc_ms = reader.utc("begun_utc");
  header.phone_started_utc_ms = reader.utc("phone_started_utc");
  if (const std::optional<JsonNode> entries = root.find("entries")) {
    for (const auto& [id, entry] : reader.taken(entries->members())) {
      header.entries[id] = reader.taken(entry.name());
    }
  }
  reader.required(root, "people", [&](const JsonNode& people) {
    for (const auto& [name, person] : reader.taken(people.members())) {
      if (!reader.object(person, {"role", "key", "device"})) continue;
      header.people[name] = {
          .role = reader.required(person, "role",
                                  [&](const JsonNode& role) { return reader.taken(role.name()); }),
          .key = reader.text(person, "key"),
          .device = reader.text(person, "device")};
    }
    return 0;
  });
  header.in_charge = reader.text(root, "in_charge");
  if (header.in_charge.empty() && header.people.size() == 1) header.in_charge = header.people.begin()->first;
  if (!header.people.contains(header.in_charge)) {
    reader.keep(root.error("script-person-unknown", {{"name", excerpt(header.in_charge)}}));
  }
  if (const std::optional<Error> fault = reader.fault()) return std::unexpected(*fault);
  return header;
}

Expected<ScriptLine> readScriptLine(std::string_view text, const std::string& file, std::size_t number) {
  const Expected<JsonDocument> document = readLine(text, file, number);
  if (!document) return std::unexpected(document.error());
  LineReader reader(*document, number);
  const JsonNode& root = reader.root();
  reader.object(root,
                {"after", "who", "acknowledge", "press", "begin", "step", "value", "how", "sure", "answer",
                 "words", "files", "interrupt", "resume", "take_over", "go_back", "abandon", "restart"});
  if (const std::optional<Error> fault = reader.fault()) return std::unexpected(*fault);
  ScriptLine line{.number = number};
  if (const std::string after = reader.text(root, "after"); !after.empty()) {
    const double after_s = reader.taken(readSi(after, Dimension::Time));
    constexpr double kLongest_s = 1e9;
    if (after_s < 0.0 || after_s > kLongest_s) {
      reader.keep(root.error("script-time-malformed", {{"text", excerpt(after)}}));
    }
    line.after_ms = std::llround(std::clamp(after_s, 0.0, kLongest_s) * 1000.0);
  }
  line.who = reader.text(root, "who");
  line.how = reader.optionalNamed(root, "how", kHows, How::Typed);
  line.sure = reader.flag(root, "sure");
  int said = 0;
  const auto control = [&](std::string_view key, EventType type) {
    if (!reader.flag(root, key)) return;
    ++said;
    line.type = type;
  };
  control("interrupt", EventType::Interrupt);
  control("resume", EventType::Resume);
  control("take_over", EventType::TakeOver);
  control("abandon", EventType::Abandon);
  control("restart", EventType::Interrupt);
  line.restart = reader.has("restart");
  const auto about = [&](std::string_view key, EventType type) {
    if (!reader.has(key)) return;
    ++said;
    line.type = type;
    line.about = reader.text(root, key);
  };
  about("acknowledge", EventType::Acknowledge);
  about("press", EventType::ZoneClear);
  about("begin", EventType::Begin);
  about("go_back", EventType::GoBack);
  const bool reads = reader.has("value");
  about("step", reads ? EventType::Reading : EventType::Answer);
  line.answer = reader.text(root, "answer");
  line.value = reads ? reader.text(root, "value") : reader.text(root, "words");
  if (const std::optional<JsonNode> files = root.find("files")) {
    for (const JsonNode& path : reader.taken(files->elements()))
      line.files.push_back(reader.taken(path.name()));
  }
  // One thing a line; a step has a value or an answer, nothing else has either.
  const bool step = reader.has("step");
  const bool clear = said == 1 && step == (reads != reader.has("answer")) && (step || !reads) &&
                     !(reads && reader.has("words")) &&
                     (step || !(reader.has("words") || reader.has("files")));
  if (!clear) reader.keep(root.error("script-line-unclear"));
  if (const std::optional<Error> fault = reader.fault()) return std::unexpected(*fault);
  return line;
}

Expected<Script> readScript(std::string_view text, const std::string& file) {
  Script script;
  bool has_header = false;
  for (std::size_t number = 1; !text.empty(); ++number) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view row = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (row.find_first_not_of(" \t\r") == std::string_view::npos) continue;
    if (!has_header) {
      Expected<ScriptHeader> header = readScriptHeader(row, file);
      if (!header) return std::unexpected(std::move(header.error()));
      script.header = *std::move(header);
      has_header = true;
      continue;
    }
    Expected<ScriptLine> line = readScriptLine(row, file, number);
    if (!line) return std::unexpected(std::move(line.error()));
    script.lines.push_back(*std::move(line));
  }
  if (!has_header) return fail(ErrorKind::InvalidInput, "script-empty", {}, {.file = file});
  return script;
}

Expected<procedures::Event> eventOf(const ScriptHeader& header, const ScriptLine& line,
                                    const std::map<std::string, std::string>& key_of,
                                    const procedures::State& state) {
  procedures::Event event{.type = line.type,
                          .who = state.person,
                          .role = state.role,
                          .device = state.device,
                          .how = line.how,
                          .about = line.about,
                          .answer = line.answer,
                          .value = line.value,
                          .sure = line.sure};
  if (line.who.empty()) return event;
  const auto person = header.people.find(line.who);
  if (person == header.people.end()) {
    return fail(ErrorKind::InvalidInput, "script-person-unknown", {{"name", excerpt(line.who)}});
  }
  const auto key = key_of.find(person->second.key);
  event.who = key == key_of.end() ? "" : key->second;
  event.role = person->second.role;
  if (!person->second.device.empty()) event.device = person->second.device;
  return event;
}

std::string awaitedLine(const procedures::Procedure& procedure, const procedures::State& state) {
  const procedures::Prompt asked = procedures::prompt(procedure, state);
  const Step* step = procedures::findStep(procedure, asked.about);
  Json line = Json::object();
  switch (asked.ask) {
    case Ask::Start:
    case Ask::Nothing:
    case Ask::Evaluate:
      return "";
    case Ask::Resume:
      line["resume"] = true;
      break;
    case Ask::Acknowledge:
      line["acknowledge"] = asked.about;
      break;
    case Ask::ZoneClear:
      line["press"] = asked.about;
      break;
    case Ask::Begin:
      line["begin"] = asked.about;
      break;
    case Ask::Hold:
      line["after"] = "... s";
      line["step"] = asked.about;
      line["answer"] = "done";
      break;
    case Ask::Reading:
    case Ask::Doubt:
      line["step"] = asked.about;
      line["value"] = "... " + (step != nullptr ? step->unit : std::string("1"));
      if (step != nullptr && step->source == procedures::Source::Machine) line["how"] = "monitor";
      if (asked.ask == Ask::Doubt) line["sure"] = true;
      break;
    case Ask::Answer:
    case Ask::Tag: {
      line["step"] = asked.about;
      std::string answers;
      for (const std::string& answer : asked.answers) answers += (answers.empty() ? "" : " | ") + answer;
      line["answer"] = answers;
      if (step == nullptr) break;
      if (step->kind == StepKind::Evidence || step->on_glass ||
          (step->kind == StepKind::Pass && step->log == procedures::LogNeed::Required)) {
        line["files"] = {"..."};
      }
      if (step->kind == StepKind::Note || step->kind == StepKind::Monitor) line["words"] = "...";
      if (step->second_person || !step->roles.empty()) line["who"] = "...";
      break;
    }
  }
  return line.dump();
}

}  // namespace hingepin::session
