// SPDX-License-Identifier: Apache-2.0
#include "tests/engine/session/plan.h"

#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <stdexcept>

#include "engine/folder/folder.h"
#include "engine/procedures/library.h"
#include "engine/procedures/runner.h"
#include "engine/session/catalogue.h"
#include "engine/session/profile.h"
#include "engine/session/script.h"
#include "engine/session/surveying.h"
#include "engine/units/ucum.h"

namespace hingepin::session {

namespace {

using namespace hingepin::procedures;
using Json = nlohmann::ordered_json;

std::string textOf(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

[[noreturn]] void giveUp(const std::string& why) { throw std::runtime_error(why); }

std::string durationText(std::int64_t duration_ms) {
  return duration_ms % 1000 == 0 ? fmt::format("{} s", duration_ms / 1000)
                                 : fmt::format("{} ms", duration_ms);
}

template <class T>
T orGiveUp(Expected<T> value, const std::string& about) {
  if (value) return *std::move(value);
  const Error& error = value.error();
  giveUp(about + ": " + error.place.pointer + " " +
         session::say(session::englishCatalogue(), error.message, UnitSystem::Metric));
}

class Writer {
 public:
  Writer(Procedure procedure, Json plan, const std::filesystem::path& folder)
      : procedure_(std::move(procedure)), plan_(std::move(plan)) {
    header_text_ = plan_.at("header").dump();
    header_ = orGiveUp(session::readScriptHeader(header_text_, "the plan's header"), "header");
    for (const auto& [name, person] : header_.people) {
      if (!person.key.empty()) key_of_[person.key] = "key:" + person.key;
    }
    const auto profile = [&](const char* key) { return textOf(folder / plan_.value(key, "")); };
    // The program has checked the blocks when the profiles were put into its store.
    const auto accept = [](const JsonDocument&, const JsonNode&) -> Expected<void> { return {}; };
    session::Edge edge;
    edge.check_unit = accept;
    edge.check_attachment = accept;
    entries_ = header_.entries;
    if (!plan_.contains("unit")) return;
    unit_ = orGiveUp(session::readUnitProfile(profile("unit"), "unit", edge), "unit");
    std::optional<session::AttachmentProfile> attachment;
    if (plan_.contains("attachment")) {
      attachment =
          orGiveUp(session::readAttachmentProfile(profile("attachment"), "attachment", edge), "attachment");
    }
    entries_ = session::entriesFor(procedure_, unit_, attachment ? &*attachment : nullptr, header_.entries);
  }

  PlannedScript write() {
    script_.text = header_text_ + "\n";
    start();
    constexpr int kMostLines = 5000;
    for (int count = 0; count < kMostLines && !hasEnded(state_.phase); ++count) {
      const Prompt asked = prompt(procedure_, state_);
      if (asked.ask == Ask::Evaluate) {
        evaluate(asked.about);
        continue;
      }
      if (insertLines(asked.about)) continue;
      take(lineFor(asked));
    }
    if (!hasEnded(state_.phase)) giveUp("the job does not end; it is at " + prompt(procedure_, state_).about);
    constexpr const char* kEnds[] = {"done", "failed", "abandoned"};
    script_.remarks += "the job ends as ";
    script_.remarks += kEnds[static_cast<int>(state_.phase) - static_cast<int>(Phase::Done)];
    if (!state_.failed_step.empty()) script_.remarks += " at " + state_.failed_step;
    script_.remarks += "\n";
    return script_;
  }

 private:
  void start() {
    const session::ScriptPerson& person = header_.people.at(header_.in_charge);
    Event event{.type = EventType::Start,
                .at_ms = now_ms_,
                .boot = "boot",
                .who = key_of_[person.key],
                .role = person.role,
                .device = person.device.empty() ? "phone" : person.device};
    event.start = StartOptions{
        .variant = header_.variant, .lone_work = header_.lone_work, .entries = entries_, .completed = {}};
    for (const Prerequisite& needed : procedure_.prerequisites) {
      event.start->completed.push_back({needed.procedure, 0});
    }
    state_ = orGiveUp(apply(procedure_, {}, event), "start");
  }

  void evaluate(const std::string& step) {
    const Event event{.type = EventType::Evaluate,
                      .at_ms = now_ms_,
                      .boot = "boot",
                      .who = state_.person,
                      .role = state_.role,
                      .device = state_.device,
                      .about = step};
    const Measure measure = [&](const Check&, std::span<const Observation>) -> Expected<double> {
      const Json said = next("residuals", step);
      if (said.is_null()) return 0.0;
      return orGiveUp(readAnyQuantity(said.get<std::string>()), step).value_si;
    };
    const std::size_t tries = state_.tries.size();
    const session::OpenJob job{
        .job = {}, .procedure = procedure_, .words = {}, .unit = unit_, .state = state_};
    const Judge judge = session::judgeOf(job, folder::edge());
    state_ = orGiveUp(apply(procedure_, state_, event, measure, judge), step);
    if (state_.tries.size() > tries && state_.tries.back().outcome != Outcome::Passed) {
      script_.remarks += fmt::format("  the check {} does not pass: {}{}\n", step, state_.tries.back().result,
                                     state_.tries.back().reason);
    }
  }

  /// Lines of the plan that stand before a step, once.
  bool insertLines(const std::string& step) {
    if (!plan_.contains("before") || !plan_["before"].contains(step)) return false;
    const Json lines = plan_["before"][step];
    plan_["before"].erase(step);
    for (const Json& line : lines) take(line);
    return true;
  }

  /// What the plan says of a step: the next of a list, of which the last stays.
  Json next(const char* part, const std::string& step) {
    if (!plan_.contains(part) || !plan_[part].contains(step)) return nullptr;
    Json& said = plan_[part][step];
    if (!said.is_array()) return said;
    if (said.empty()) return nullptr;
    Json first = said.front();
    if (said.size() > 1) said.erase(said.begin());
    return first;
  }

  Json lineFor(const Prompt& asked) {
    switch (asked.ask) {
      case Ask::Resume:
        return {{"resume", true}};
      case Ask::Acknowledge:
        return {{"acknowledge", asked.about}};
      case Ask::ZoneClear:
        return {{"press", asked.about}};
      case Ask::Begin:
        return {{"begin", asked.about}};
      case Ask::Hold: {
        Json line = {{"after", durationText(*asked.finished_at_ms - now_ms_)},
                     {"step", asked.about},
                     {"answer", "done"}};
        return said(asked.about, std::move(line), "answer");
      }
      case Ask::Tag:
        return {{"step", "tag"}, {"answer", "hung"}};
      default:
        break;
    }
    const Step* step = findStep(procedure_, asked.about);
    if (step == nullptr) giveUp("no step " + asked.about);
    Json line = {{"step", step->id}};
    if (asked.ask == Ask::Doubt) {
      const Json meant = next("meant", step->id);
      line["value"] = meant.is_string() ? meant : Json(state_.doubt->value);
      if (!meant.is_string()) line["sure"] = true;
      if (step->source == Source::Machine) line["how"] = "monitor";
      return line;
    }
    if (step->kind == StepKind::Reading) {
      if (step->source == Source::Machine) line["how"] = "monitor";
      line = said(step->id, std::move(line), "value");
      if (!line.contains("value") && !line.contains("answer")) {
        line["value"] = someValue(*step);
        script_.remarks +=
            fmt::format("  the plan says nothing of the reading {}: {}\n", step->id, line["value"].dump());
      }
      addWho(*step, line);
      return line;
    }
    line["answer"] = asked.answers.front();
    if (step->kind == StepKind::Monitor) {
      for (const Answer& answer : step->answers) {
        if (!answer.passes) continue;
        line["answer"] = answer.id;
        break;
      }
    }
    line = said(step->id, std::move(line), "answer");
    const std::string answer = line["answer"];
    if (answer == "taken" && !line.contains("files")) line["files"] = {"photo.txt"};
    if (answer == "written" && !line.contains("words")) line["words"] = "nothing to note";
    if (answer == "signed" && step->on_glass && !line.contains("files")) line["files"] = {"signature.txt"};
    if (answer == "done" && step->kind == StepKind::Pass && step->log == LogNeed::Required &&
        !line.contains("files")) {
      giveUp("the plan names no log for the pass " + step->id);
    }
    addWho(*step, line);
    return line;
  }

  /// Puts what the plan says of a step into a line: a text is its value or answer, an object is merged.
  Json said(const std::string& step, Json line, const char* key) {
    const Json says = next("says", step);
    if (says.is_string()) line[key] = says;
    if (says.is_object()) line.merge_patch(says);
    return line;
  }

  /// Somebody who may answer, where that is not the one in charge.
  void addWho(const Step& step, Json& line) {
    if (line.contains("who")) return;
    const bool absent = step.kind == StepKind::Sign && line["answer"] != "signed";
    if (absent || (step.second_person && line["answer"] != "yes")) return;
    const std::vector<std::string>& roles =
        !step.roles.empty() ? step.roles : (step.second_person ? procedure_.confirm_roles : step.roles);
    if (roles.empty()) return;
    if (!step.second_person && std::ranges::find(roles, state_.role) != roles.end()) return;
    for (const std::string& role : roles) {
      for (const auto& [name, person] : header_.people) {
        const bool in_charge = !person.key.empty() && key_of_[person.key] == state_.person;
        if (person.role != role || (step.second_person && in_charge) ||
            (person.key.empty() && !step.on_glass)) {
          continue;
        }
        line["who"] = name;
        return;
      }
    }
    giveUp("nobody among the people may answer " + step.id);
  }

  /// A number that the step takes.
  [[nodiscard]] std::string someValue(const Step& step) const {
    const auto valueOf = [&](const std::optional<Limit>& limit) -> std::optional<double> {
      if (!limit) return std::nullopt;
      std::string text = limit->text;
      if (!limit->entry.empty()) {
        const auto given = entries_.find(limit->entry);
        text = given != entries_.end()
                   ? given->second
                   : std::ranges::find(procedure_.entries, limit->entry, &Entry::id)->standard;
      }
      return orGiveUp(readAnyQuantity(text), step.id).value_si;
    };
    std::optional<double> low = valueOf(step.plausible.low);
    std::optional<double> high = valueOf(step.plausible.high);
    if (step.accept && step.accept->low) low = valueOf(step.accept->low);
    if (step.accept && step.accept->high) high = valueOf(step.accept->high);
    const double value_si = low && high ? (*low + *high) / 2.0 : low.value_or(high.value_or(0.0));
    const Unit unit = *findUnit(step.unit);
    return fmt::format("{:.6g} {}", unit.fromSi(value_si), step.unit);
  }

  void take(const Json& line) {
    const std::string text = line.dump();
    const session::ScriptLine read = orGiveUp(session::readScriptLine(text, "line", ++lines_ + 1), text);
    now_ms_ += read.after_ms;
    Event event = orGiveUp(session::eventOf(header_, read, key_of_, state_), text);
    event.at_ms = now_ms_;
    event.boot = "boot";
    event.hashes.assign(read.files.size(), std::string(64, '0'));
    state_ = orGiveUp(apply(procedure_, state_, event), text);
    script_.text += text + "\n";
  }

  Procedure procedure_;
  Json plan_;
  std::string header_text_;
  session::ScriptHeader header_;
  session::Entries entries_;
  std::map<std::string, std::string> key_of_;
  session::UnitProfile unit_{};
  State state_;
  std::int64_t now_ms_ = 1000;
  std::size_t lines_ = 0;
  PlannedScript script_;
};

}  // namespace

Json readPlan(const std::filesystem::path& path) {
  Json plan = Json::parse(textOf(path), nullptr, false);
  if (!plan.is_object() || !plan.contains("like")) return plan;
  Json whole = readPlan(path.parent_path() / plan["like"].get<std::string>());
  plan.erase("like");
  whole.merge_patch(plan);
  return whole;
}

PlannedScript scriptOf(const std::filesystem::path& path) {
  Json plan = readPlan(path);
  if (!plan.is_object() || !plan.contains("header")) giveUp("no plan with a header: " + path.string());
  const std::string id = plan["header"].value("procedure", "");
  const LibraryEntry* const entry = findInLibrary(id);
  const std::string text =
      entry != nullptr ? std::string(entry->text) : textOf(std::filesystem::path(path).replace_filename(id));
  if (text.empty()) giveUp("there is no procedure " + id);
  return Writer(orGiveUp(readProcedure(text, id), id), std::move(plan), path.parent_path()).write();
}

}  // namespace hingepin::session
