// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <array>

#include "engine/base/random.h"
#include "engine/procedures/lint.h"
#include "tests/fuzz/json_mutator.h"
#include "tests/fuzz/runner_laws.h"

namespace {

using namespace hingepin;
using namespace hingepin::procedures;
using fuzz::require;

constexpr int kMostEvents = 120;

std::uint64_t hashOf(std::string_view text) {  // FNV-1a
  std::uint64_t hash = 14695981039346656037U;
  for (const char byte : text) hash = (hash ^ static_cast<unsigned char>(byte)) * 1099511628211U;
  return hash;
}

std::string textOf(const std::optional<Limit>& limit, const Procedure& procedure,
                   const StartOptions& options) {
  if (!limit) return "1 1";
  if (limit->entry.empty()) return limit->text;
  const auto given = options.entries.find(limit->entry);
  if (given != options.entries.end()) return given->second;
  const auto entry = std::ranges::find(procedure.entries, limit->entry, &Entry::id);
  return entry == procedure.entries.end() ? "1 1" : entry->standard;
}

/// Runs a procedure with answers drawn at random, most of them what is asked for.
class Run {
 public:
  Run(const Procedure& procedure, Random& random)
      : procedure_(procedure), random_(random), technician_(procedure) {
    if (!procedure.run_roles.empty()) technician_.role = procedure.run_roles.front();
    if (!procedure.variants.empty()) {
      technician_.options.variant = procedure.variants[pick(procedure.variants.size())].id;
    }
    technician_.options.lone_work = static_cast<LoneWork>(pick(3));
    for (const Entry& entry : procedure.entries) {
      if (entry.standard.empty()) technician_.options.entries[entry.id] = "1 " + entry.unit;
    }
    for (const Prerequisite& needed : procedure.prerequisites) {
      technician_.options.completed.push_back({needed.procedure, 0});
    }
    for (const Step& step : procedure.steps) {
      if (step.kind == StepKind::Reading) {
        technician_.says[step.id] = textOf(step.plausible.low, procedure, technician_.options);
      }
    }
  }

  void run(bool clean) {
    for (int event = 0; event < kMostEvents && !hasEnded(technician_.state().phase); ++event) {
      if (pick(5) == 0) {
        take(disturbed());
      } else if (const std::string back = technician_.asked().back_to; !back.empty() && pick(8) == 0) {
        require(take(technician_.event(EventType::GoBack, back)), "what is offered can be done again",
                refusal_);
      } else {
        const bool taken = take(honest());
        require(taken || !clean, "what is asked for can be answered", refusal_);
        if (!taken) return finish(false);
      }
    }
    finish(clean);
  }

 private:
  std::size_t pick(std::size_t count) { return random_.bits() % count; }

  bool take(const Event& event) {
    const State before = technician_.state();
    technician_.now_ms = std::max(technician_.now_ms, event.at_ms);
    const std::string refusal = technician_.tell(event);
    const bool taken = refusal == "";
    if (!taken) refusal_ = refusal + ": " + writeEvent(event);
    if (taken) {
      fuzz::requireOffered(procedure_, before, event, technician_.state());
      technician_.who = technician_.state().person;
      technician_.role = technician_.state().role;
      technician_.device = technician_.state().device;
      technician_.boot = technician_.state().boot;
    }
    require(taken || technician_.state() == before, "a refusal changes nothing");
    return taken;
  }

  Event honest() {
    const Prompt asked = technician_.asked();
    technician_.now_ms += static_cast<std::int64_t>(pick(2000));
    Event event = technician_.honest();
    const Step* step = findStep(procedure_, asked.about);
    if (asked.ask == Ask::Acknowledge) step = stepOfCaution();
    if (step == nullptr || asked.ask == Ask::ZoneClear) return event;
    event.sure = asked.ask == Ask::Doubt;
    if (step->second_person && !procedure_.confirm_roles.empty()) {
      event.role = procedure_.confirm_roles.front();
    }
    if (!step->roles.empty()) {
      event.role = step->roles.front();
      if (!step->on_glass && !step->second_person) event.who = "key-of-" + event.role;
    }
    return event;
  }

  /// The step that shows a caution, unless it is read again after an interruption.
  [[nodiscard]] const Step* stepOfCaution() const {
    const State& state = technician_.state();
    if (!state.unread.empty()) return nullptr;
    const std::vector<Step>& steps =
        state.phase == Phase::MakingSafe ? procedure_.make_safe : procedure_.steps;
    return state.position < steps.size() ? &steps[state.position] : nullptr;
  }

  Event disturbed() {
    constexpr std::array kValues = {"0 1",      "-1 kg", "1e308 bar", "1e-308 m", "40 Cel", "1 [degF]", "",
                                    "nonsense", "1 V",   "0.5 %",     "90 deg",   "15 min", "2000 1"};
    constexpr std::array kAnswers = {"yes",     "no",     "done", "failed", "skipped",     "signed",
                                     "refused", "absent", "hung", "taken",  "unconfirmed", "written"};
    Event event = honest();
    switch (pick(9)) {
      case 0:
        event.type = static_cast<EventType>(pick(static_cast<std::size_t>(EventType::Abandon) + 1));
        break;
      case 1:
        event.value = kValues[pick(kValues.size())];
        break;
      case 2:
        event.answer = kAnswers[pick(kAnswers.size())];
        break;
      case 3:
        if (const Prompt asked = technician_.asked(); !asked.answers.empty()) {
          event.answer = asked.answers[pick(asked.answers.size())];
        }
        break;
      case 4:
        event.how = static_cast<How>(pick(4));
        break;
      case 5:
        event.at_ms = pick(2) == 0 ? event.at_ms + 3'600'000 : event.at_ms - 5000;
        break;
      case 6:
        event.boot = "boot-" + std::to_string(pick(4));
        break;
      case 7:
        event.who = pick(2) == 0 ? "" : "key-of-somebody";
        event.device = "phone-2";
        break;
      default:
        event.type = EventType::Interrupt;
        break;
    }
    return event;
  }

  /// However far it has come, a job can be given up, and then ends.
  void finish(bool clean) {
    if (clean && technician_.state().phase == Phase::Running) {
      require(take(technician_.event(EventType::Abandon)), "a running job can be abandoned", refusal_);
    }
    const std::size_t most = 4 * procedure_.make_safe.size() + procedure_.cautions.size() + 4;
    for (std::size_t event = 0; clean && event < most; ++event) {
      const Phase phase = technician_.state().phase;
      if (hasEnded(phase) || phase == Phase::NotStarted) break;
      require(take(honest()), "what making safe asks for can be answered", refusal_);
    }
    const Phase phase = technician_.state().phase;
    require(!clean || hasEnded(phase) || phase == Phase::NotStarted, "an abandoned job ends");
    fuzz::requireReplayable(procedure_, technician_.journal(), technician_.state(), technician_.measure);
  }

  const Procedure& procedure_;
  Random& random_;
  samples::Technician technician_;
  std::string refusal_{};
};

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  const std::string text(fuzz::textOf(bytes, size));
  const Expected<Procedure> read = readProcedure(text, "fuzz.json");
  if (!read) {
    fuzz::requireSound(read.error());
    require(read.error().place.file == "fuzz.json" && read.error().place.line > 0, "an error says where");
    return 0;
  }
  const std::vector<Finding> findings = lint(*read, nullptr);
  for (const Finding& finding : findings) {
    require(!finding.problem.code.empty() && !finding.mend.code.empty(), "a finding has its mend");
  }
  Random random(hashOf(text));
  Run(*read, random).run(findings.empty());
  return 0;
}

HINGEPIN_MUTATE_JSON(false)
