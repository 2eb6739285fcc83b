// SPDX-License-Identifier: Apache-2.0
#include "engine/session/script.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>
#include <nlohmann/json.hpp>
#include <utility>

#include "engine/base/strict_json.h"
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

template <class T>
using Names = std::initializer_list<std::pair<std::string_view, T>>;

const Names<LoneWork> kLoneWork = {{"not-allowed", LoneWork::NotAllowed},
                                   {"photo-from-afar", LoneWork::PhotoFromAfar},
                                   {"unconfirmed", LoneWork::Unconfirmed}};
const Names<How> kHows = {
    {"typed", How::Typed}, {"log", How::Log}, {"live", How::Live}, {"monitor", How::Monitor}};

/// Reads one line of a script; keeps the first fault.
class LineReader {
 public:
  LineReader(const JsonDocument& document, std::size_t number) : root_(document), number_(number) {}

  [[nodiscard]] const JsonNode& root() const { return root_; }
  [[nodiscard]] bool has(std::string_view key) const { return root_.find(key).has_value(); }
  [[nodiscard]] std::optional<Error> error() const { return error_; }

  void keep(Error error) {
    error.place.line = number_;
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
  std::string text(const JsonNode& parent, std::string_view key, std::string otherwise = "") {
    const std::optional<JsonNode> node = parent.find(key);
    return node ? taken(node->name()) : otherwise;
  }
  std::string needed(const JsonNode& parent, std::string_view key) {
    const Expected<JsonNode> node = parent.at(key);
    if (node) return taken(node->name());
    keep(node.error());
    return "";
  }
  template <class T>
  T named(std::string_view key, const Names<T>& names) {
    const std::optional<JsonNode> node = root_.find(key);
    if (!node) return names.begin()->second;
    const std::string text = taken(node->string());
    const auto* const found = std::ranges::find(names, text, &std::pair<std::string_view, T>::first);
    if (found != names.end()) return found->second;
    std::string known;
    for (const auto& [name, value] : names) known += (known.empty() ? "" : ", ") + std::string(name);
    keep(node->error("value-not-on-list", {{"known", known}}).error());
    return names.begin()->second;
  }
  std::optional<std::int64_t> utc(std::string_view key) {
    const std::optional<JsonNode> node = root_.find(key);
    if (!node) return std::nullopt;
    const std::optional<std::int64_t> read = readUtc(taken(node->string()));
    if (!read) keep(node->error("script-time-malformed", {{"text", excerpt(node->value().text)}}).error());
    return read;
  }
  /// A member that says something by being there.
  bool flag(std::string_view key) {
    const std::optional<JsonNode> node = root_.find(key);
    if (node && (node->value().kind != JsonKind::Boolean || !node->value().boolean)) {
      keep(node->wrongKind("true").error());
    }
    return node.has_value();
  }

 private:
  JsonNode root_;
  std::size_t number_;
  std::optional<Error> error_;
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
  reader.object(root, {"format", "procedure", "variant", "unit", "attachment", "language", "lone_work",
                       "entries", "begun_utc", "phone_started_utc", "people", "in_charge"});
  if (reader.error()) return std::unexpected(*reader.error());
  if (const std::string format = reader.text(root, "format"); format != "hingepin-script/1") {
    reader.keep(root.error("format-unsupported",
                           {{"text", excerpt(format)}, {"expected", std::string("hingepin-script/1")}})
                    .error());
  }
  ScriptHeader header;
  header.procedure = reader.text(root, "procedure");
  header.variant = reader.text(root, "variant");
  header.unit = reader.text(root, "unit");
  header.attachment = reader.text(root, "attachment");
  header.language = reader.text(root, "language", "en");
  header.lone_work = reader.named("lone_work", kLoneWork);
  header.begun_utc_ms = reader.utc("begun_utc");
  header.phone_started_utc_ms = reader.utc("phone_started_utc");
  if (const std::optional<JsonNode> entries = root.find("entries")) {
    if (entries->value().kind != JsonKind::Object) reader.keep(entries->wrongKind("an object").error());
    for (const std::string& id : entries->value().keys) header.entries[id] = reader.text(*entries, id);
  }
  const Expected<JsonNode> people = root.at("people");
  if (!people) {
    reader.keep(people.error());
  } else if (people->value().kind != JsonKind::Object) {
    reader.keep(people->wrongKind("an object").error());
  } else {
    for (const std::string& name : people->value().keys) {
      const JsonNode person = *people->find(name);
      reader.object(person, {"role", "key", "device"});
      if (reader.error()) break;
      header.people[name] = {.role = reader.needed(person, "role"),
                             .key = reader.text(person, "key"),
                             .device = reader.text(person, "device")};
    }
  }
  header.in_charge = reader.text(root, "in_charge");
  if (header.in_charge.empty() && header.people.size() == 1) header.in_charge = header.people.begin()->first;
  if (!header.people.contains(header.in_charge)) {
    reader.keep(root.error("script-person-unknown", {{"name", excerpt(header.in_charge)}}).error());
  }
  if (reader.error()) return std::unexpected(*reader.error());
  return header;
}

Expected<ScriptLine> readScriptLine(std::string_view text, const std::string& file, std::size_t number) {
  const Expected<JsonDocument> document = readLine(text, file, number);
  if (!document) return std::unexpected(document.error());
  LineReader reader(*document, number);
  const JsonNode& root = reader.root();
  reader.object(root, {"after", "who", "acknowledge", "press", "begin", "step", "value", "how", "sure",
                       "answer", "words", "files", "interrupt", "resume", "take_over", "abandon", "restart"});
  if (reader.error()) return std::unexpected(*reader.error());
  ScriptLine line{.number = number};
  if (const std::string after = reader.text(root, "after"); !after.empty()) {
    const double after_s = reader.taken(readSi(after, Dimension::Time));
    constexpr double kLongest_s = 1e9;
    if (after_s < 0.0 || after_s > kLongest_s) {
      reader.keep(root.error("script-time-malformed", {{"text", excerpt(after)}}).error());
    }
    line.after_ms = std::llround(std::clamp(after_s, 0.0, kLongest_s) * 1000.0);
  }
  line.who = reader.text(root, "who");
  line.how = reader.named("how", kHows);
  line.sure = reader.flag("sure");
  int said = 0;
  const auto control = [&](std::string_view key, EventType type) {
    if (!reader.flag(key)) return;
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
  if (!clear) reader.keep(root.error("script-line-unclear").error());
  if (reader.error()) return std::unexpected(*reader.error());
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
  using Json = nlohmann::ordered_json;
  const procedures::Prompt asked = procedures::prompt(procedure, state);
  const Step* step = procedures::findStep(procedure.steps, asked.about);
  if (step == nullptr) step = procedures::findStep(procedure.make_safe, asked.about);
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
