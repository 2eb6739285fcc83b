// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cmath>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "engine/procedures/evaluate.h"
#include "engine/procedures/journal.h"
#include "engine/procedures/runner.h"
#include "tests/engine/procedures/samples.h"

namespace hingepin::procedures::samples {

inline const std::string kHash(64, 'a');

/// A job with its journal, and somebody who does what is asked.
class Technician {
 public:
  explicit Technician(Procedure procedure, std::string variant = "") : procedure_(std::move(procedure)) {
    options.variant = std::move(variant);
  }

  /// Of everything.json.
  static Technician onEverything(const std::string& variant = "typed") {
    Technician technician(procedureOf(everythingText()), variant);
    technician.options.entries = {{"upper-height", "3.42 m"}};
    technician.options.completed = {{"walk-round", 3'600'000}};
    technician.says = {{"pin-distance", "1200 mm"}, {"oil", "55 Cel"},
                       {"angle-true", "3 deg"},     {"angle-shown", "3.2 deg"},
                       {"pressure", "88 bar"},      {"shown", "2000 kg"},
                       {"edge", "3.4 m"},           {"survey-distance", "2550 mm"},
                       {"survey-angle", "-30 deg"}};
    return technician;
  }

  [[nodiscard]] const Procedure& procedure() const { return procedure_; }
  [[nodiscard]] const State& state() const { return state_; }
  [[nodiscard]] const std::vector<Event>& journal() const { return journal_; }
  [[nodiscard]] Prompt asked() const { return prompt(procedure_, state_); }

  [[nodiscard]] Event event(EventType type, std::string about = "", std::string answer = "") const {
    Event made{.type = type, .at_ms = now_ms, .boot = boot, .who = who, .role = role, .device = device};
    made.about = std::move(about);
    made.answer = std::move(answer);
    return made;
  }

  /// @return "" if the event was taken, else the code of its refusal.
  std::string tell(const Event& event) {
    Expected<State> next =
        apply(procedure_, state_, event, measure, [this](const Step& step) { return judged(step); });
    if (!next) return next.error().message.code;
    state_ = *std::move(next);
    journal_.push_back(event);
    return "";
  }
  std::string tell(EventType type, std::string about = "", std::string answer = "") {
    return tell(event(type, std::move(about), std::move(answer)));
  }
  std::string read(const std::string& step, const std::string& value, How how = How::Typed,
                   bool sure = false) {
    Event reading = event(EventType::Reading, step);
    reading.value = value;
    reading.how = how;
    reading.sure = sure;
    return tell(reading);
  }

  /// What an honest person does next.
  [[nodiscard]] Event honest() const {
    const Prompt asked = this->asked();
    const Step* step = findStep(procedure_, asked.about);
    switch (asked.ask) {
      case Ask::Start: {
        Event start = event(EventType::Start);
        start.start = options;
        return start;
      }
      case Ask::Resume:
        return event(who == state_.person ? EventType::Resume : EventType::TakeOver);
      case Ask::Acknowledge:
        return event(EventType::Acknowledge, asked.about);
      case Ask::ZoneClear:
        return event(EventType::ZoneClear, asked.about);
      case Ask::Begin:
        return event(EventType::Begin, asked.about);
      case Ask::Hold: {
        Event done = event(EventType::Answer, asked.about, "done");
        done.at_ms = std::max(now_ms, *asked.finished_at_ms);
        return done;
      }
      case Ask::Reading:
      case Ask::Doubt: {
        Event reading = event(EventType::Reading, asked.about);
        const auto said = says.find(asked.about);
        reading.value = said == says.end() ? "0 1" : said->second;
        return reading;
      }
      case Ask::Evaluate:
        return event(EventType::Evaluate, asked.about);
      case Ask::Tag:
        return event(EventType::Answer, "tag", "hung");
      case Ask::Answer: {
        Event answer = event(EventType::Answer, asked.about, asked.answers.front());
        if (step->second_person) {
          answer.who = state_.person == "key-of-lead" ? "key-of-another-lead" : "key-of-lead";
          answer.role = "safety-lead";
          answer.device = "phone-of-lead";
        }
        if (!step->roles.empty()) {
          answer.role = step->roles.front();
          answer.who = step->on_glass ? "" : "key-of-" + answer.role;
        }
        if (step->kind == StepKind::Evidence || step->kind == StepKind::Pass || step->on_glass) {
          answer.hashes = {kHash};
        }
        if (step->kind == StepKind::Note) answer.value = "as found";
        return answer;
      }
      case Ask::Nothing:
        break;
    }
    return event(EventType::Resume);
  }

  /// Does what is asked until a step is asked for, or the job ends. @return whether it came there.
  bool workUntil(const std::string& step, int most = 1000) {
    for (; most > 0 && !hasEnded(state_.phase); --most) {
      if (!step.empty() && asked().about == step) return true;
      const Event next = honest();
      now_ms = next.at_ms + pace_ms;
      if (tell(next) != "") return false;
    }
    return hasEnded(state_.phase) && step.empty();
  }
  bool work() { return workUntil(""); }

  [[nodiscard]] std::vector<std::string> marks() const {
    std::vector<std::string> marks;
    for (const Mark& mark : state_.marks) marks.push_back(mark.mark);
    return marks;
  }
  [[nodiscard]] std::size_t counting(const std::string& step) const {
    return observationsOf(procedure_, state_, step).size();
  }

  StartOptions options{};
  std::map<std::string, std::string> says{};
  std::string who = "key-of-technician";
  std::string role = "technician";
  std::string device = "phone-1";
  std::string boot = "boot-1";
  std::int64_t now_ms = 1000;
  std::int64_t pace_ms = 1500;
  Measure measure = [](const Check&, std::span<const Observation>) -> Expected<double> { return 1.0e5; };

  std::vector<Verdict> verdicts{};  ///< of the next checks that isJudged, before `judged` has its own

 private:
  /// The mean against the last reference, both of one mass. Anything else holds.
  [[nodiscard]] Expected<Verdict> judged(const Step& step) {
    if (!verdicts.empty()) {
      const Verdict next = verdicts.front();
      verdicts.erase(verdicts.begin());
      return next;
    }
    if (step.check->kind != CheckKind::Proof) return Verdict{.passed = true};
    double sum = 0.0;
    double count = 0.0;
    for (const std::string& of : step.check->of) {
      for (const Observation& each : observationsOf(procedure_, state_, of)) {
        sum += each.value_si;
        count += 1.0;
      }
    }
    const auto reference = observationsOf(procedure_, state_, step.check->reference);
    const Expected<ReadQuantity> within = valueOf(procedure_, state_, *step.check->within);
    if (reference.empty() || count == 0.0 || !within) return fail(ErrorKind::Insufficient, "no-value");
    const double mass = reference.back().value_si;
    const double limit =
        within->unit.dimension == Dimension::Mass ? within->value_si : within->value_si * mass;
    return Verdict{.passed = std::abs(sum / count - mass) <= limit};
  }

  Procedure procedure_;
  State state_{};
  std::vector<Event> journal_{};
};

}  // namespace hingepin::procedures::samples
