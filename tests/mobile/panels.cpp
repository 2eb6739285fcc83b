// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels.h"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <map>
#include <utility>

#include "engine/folder/folder.h"
#include "engine/procedures/library.h"
#include "engine/procedures/runner.h"
#include "engine/session/practice_answers.h"
#include "engine/session/profile.h"
#include "engine/session/surveying.h"
#include "job_view.h"

namespace hingepin::mobile {
namespace {

using procedures::Ask;
using procedures::Event;
using procedures::EventType;
using procedures::State;
using procedures::Step;
using procedures::StepKind;
using session::OpenJob;

constexpr const char* kHash = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";
constexpr const char* kPerson = "technician-1";

enum class Course { Good, Failing, GivenUp };

std::string testFile(const std::string& name) {
  std::ifstream file(std::string(HINGEPIN_SOURCE_DIR) + "/tests/engine/session/files/" + name,
                     std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

std::string codeOf(const Error& error) { return error.message.code + " " + error.place.pointer; }

/// The fits themselves are tried elsewhere: here they all hold.
Expected<double> noResidual(const procedures::Check&, std::span<const procedures::Observation>) {
  return 0.0;
}

/// What was found in one language.
struct Told {
  session::Words words{};  ///< of the procedure that is walked
  Panels panels{};
  std::map<QString, qsizetype> said{};  ///< how much each panel says
};
using ToldIn = std::map<std::string, Told>;

class Walk {
 public:
  Walk(OpenJob job, Course course, ToldIn& told) : job_(std::move(job)), course_(course), told_(told) {}

  /// @return why it went no further; "" at the end
  std::string run(const Event& start) {
    if (const std::string refused = take(start); !refused.empty()) return refused;
    constexpr int kMost = 1500;
    for (int count = 0; count < kMost; ++count) {
      keep();
      if (procedures::hasEnded(job_.state.phase)) return "";
      const std::string refused = goOn();
      if (!refused.empty()) return refused;
    }
    return "no end";
  }

 private:
  std::string take(Event event) {
    event.at_ms = now_ms_;
    event.boot = "boot-1";
    Expected<State> next = procedures::apply(job_.procedure, job_.state, event, noResidual,
                                             session::judgeOf(job_, folder::edge()));
    if (!next) return event.about + ": " + codeOf(next.error());
    job_.state = *std::move(next);
    job_.journal.push_back(std::move(event));
    return "";
  }
  [[nodiscard]] Event by(EventType type, const std::string& about) const {
    return {.type = type,
            .who = job_.state.person,
            .role = job_.state.role,
            .device = job_.state.device,
            .about = about};
  }
  /// What else may be on the screen at this step: a doubted number, an interruption.
  void keepBeside(const procedures::Prompt& asked) {
    if (course_ != Course::Good) return;
    const State before = job_.state;
    const auto goBack = [&] {
      job_.state = before;
      job_.journal.pop_back();
    };
    if (asked.ask == Ask::Reading) {
      const Expected<session::PracticeAnswer> answer = person_.answer(job_);
      if (!answer) return;
      for (const char* factor : {"0", "00", "000"}) {
        Event typed = by(EventType::Reading, asked.about);
        typed.value = answer->event.value;
        const std::size_t space = typed.value.find(' ');
        std::string digits = typed.value.substr(0, space);
        std::erase(digits, '.');
        typed.value = digits + factor + typed.value.substr(space);
        if (!take(typed).empty()) continue;
        const bool doubted = job_.state.doubt.has_value();
        if (doubted) keep();
        goBack();
        if (doubted) return;
      }
    }
    if (asked.ask == Ask::ZoneClear) {
      if (!take(by(EventType::Interrupt, asked.about)).empty()) return;
      keep();
      job_.state.person = "technician-2";
      keep();
      goBack();
    }
  }
  std::string goOn() {
    const procedures::Prompt asked = procedures::prompt(job_.procedure, job_.state);
    const Step* const step = procedures::findStep(job_.procedure, asked.about);
    keepBeside(asked);
    if (course_ == Course::GivenUp && job_.state.phase == procedures::Phase::Running &&
        asked.ask == Ask::ZoneClear && ++moved_ == 3) {
      return take(by(EventType::Abandon, ""));
    }
    if (asked.ask == Ask::Evaluate) {
      Event event = by(EventType::Evaluate, asked.about);
      event.how = procedures::How::Live;
      return take(event);
    }
    // A log is as long as a pass: the practice person need not make one.
    const bool logged = step != nullptr && asked.ask == Ask::Answer && step->kind == StepKind::Pass;
    Event event = by(EventType::Answer, asked.about);
    if (logged) {
      event.answer = "done";
      if (step->log != procedures::LogNeed::None) event.hashes = {kHash};
    } else {
      const Expected<session::PracticeAnswer> answer = person_.answer(job_);
      if (!answer) return codeOf(answer.error());
      event = answer->event;
      now_ms_ = std::max(now_ms_ + answer->takes_ms, answer->not_before_ms.value_or(0));
      if (answer->file != session::FileNeed::None) event.hashes = {kHash};
      if (answer->second_person) {
        event.who = "lead-1";
        event.device = "phone-2";
      } else if (answer->file != session::FileNeed::Signature) {
        event.who = job_.state.person;
        event.role = job_.state.role;
      }
      if (event.device.empty()) event.device = job_.state.device;
    }
    if (course_ == Course::Failing && step != nullptr && asked.ask == Ask::Answer &&
        failures_[asked.about]++ == 0) {
      Event bad = event;
      bad.answer = step->kind == StepKind::Confirm                                ? "no"
                   : step->kind == StepKind::Pose || step->kind == StepKind::Pass ? "failed"
                                                                                  : "";
      if (!bad.answer.empty() && take(bad).empty()) return "";
    }
    return take(event);
  }
  void keep() {
    for (auto& [language, told] : told_) {
      job_.job.language = language;
      std::swap(job_.words, told.words);
      keepIn(told);
      std::swap(job_.words, told.words);
    }
  }
  /// Keeps the job under the name of its situation, where none before had as much to say.
  void keepIn(Told& told) {
    const JobView view = viewOf(job_, {{.language = job_.job.language}, kPerson, "technician"});
    QStringList parts = {view.ask};
    if (view.ask == QLatin1String("caution")) parts.append(view.signal_word);
    if (view.ask == QLatin1String("answer")) parts.append(view.kind);
    if (view.second_person) parts.append(QStringLiteral("second"));
    if (view.on_glass) parts.append(QStringLiteral("glass"));
    if (view.optional) parts.append(QStringLiteral("optional"));
    if (view.optional && !view.measure.isEmpty()) parts.append(view.quantity);
    if (!view.found.isEmpty()) parts.append(QStringLiteral("found"));
    if (view.ask == QLatin1String("answer") && view.log == QLatin1String("required"))
      parts.append(QStringLiteral("log"));
    if (!view.failed.isEmpty()) parts.append(QStringLiteral("again"));
    if (!view.mine) parts.append(QStringLiteral("foreign"));
    if (view.phase != QLatin1String("running")) parts.append(view.phase);
    const QString name = parts.join(QLatin1Char('-'));
    qsizetype length = view.text.size() + view.detail.size() + view.hazard.size() + view.consequence.size() +
                       view.avoidance.size() + view.failed.size() + view.low.size() + view.high.size();
    for (const QVariant& answer : view.answers)
      length += answer.toMap().value(QStringLiteral("text")).toString().size();
    for (const QString& line : view.tag + view.marks + view.found) length += line.size();
    qsizetype& most = told.said[name];
    if (length < most) return;
    most = length;
    const auto same = std::ranges::find(told.panels.all, name, &Panel::name);
    if (same == told.panels.all.end()) {
      told.panels.all.push_back({name, job_});
    } else {
      same->job = job_;
    }
  }

  OpenJob job_;
  Course course_;
  ToldIn& told_;
  session::PracticePerson person_{1};
  std::map<std::string, int> failures_;
  int moved_ = 0;
  std::int64_t now_ms_ = 600'000;
};

}  // namespace

std::map<std::string, Panels> panelsIn(const std::vector<std::string>& languages) {
  ToldIn told;
  for (const std::string& language : languages) told[language] = {};
  std::string refused;
  const auto unit = session::readUnitProfile(testFile("unit.json"), "unit.json", folder::edge());
  const auto attachment =
      session::readAttachmentProfile(testFile("attachment.json"), "attachment.json", folder::edge());
  if (!unit || !attachment) refused = "the profiles can't be read";
  for (const procedures::LibraryEntry& entry : procedures::library()) {
    if (!refused.empty()) break;
    const auto procedure = procedures::readProcedure(std::string(entry.text), std::string(entry.id));
    if (!procedure) {
      refused = codeOf(procedure.error());
      break;
    }
    for (auto& [language, in] : told) {
      auto words = session::wordsFor(*procedure, language);
      if (!words) refused = codeOf(words.error());
      if (words) in.words = *std::move(words);
    }
    std::vector<std::string> ways;
    for (const procedures::Variant& variant : procedure->variants) ways.push_back(variant.id);
    if (ways.empty()) ways.emplace_back();
    for (const std::string& way : ways) {
      const OpenJob job{.job = {.id = "0f1e2d3c",
                                .unit = "L-27",
                                .attachment = "GP-2.7",
                                .procedure_id = procedure->id,
                                .procedure = "",
                                .words = "",
                                .language = ""},
                        .procedure = *procedure,
                        .words = {},
                        .unit = *unit,
                        .attachment = *attachment};
      Event start{.type = EventType::Start, .who = kPerson, .role = "technician", .device = "phone-1"};
      start.hashes = {std::string(64, '0'), std::string(64, '1')};  // of the profiles, which no panel opens
      start.start = procedures::StartOptions{.variant = way};
      start.start->entries = session::entriesFor(*procedure, *unit, &*attachment, {});
      for (const procedures::Prerequisite& needed : procedure->prerequisites)
        start.start->completed.push_back({needed.procedure, 1000});
      for (const Course course : {Course::Good, Course::Failing, Course::GivenUp}) {
        const std::string why = Walk(job, course, told).run(start);
        if (!why.empty()) refused = procedure->id + " " + way + ": " + why;
      }
    }
  }
  std::map<std::string, Panels> panels;
  for (auto& [language, in] : told) {
    in.panels.refused = refused;
    panels[language] = std::move(in.panels);
  }
  return panels;
}

}  // namespace hingepin::mobile
