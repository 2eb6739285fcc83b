// SPDX-License-Identifier: Apache-2.0
#include "engine/procedures/runner.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <iterator>
#include <span>
#include <utility>

#include "engine/base/contains.h"
#include "engine/procedures/evaluate.h"

namespace hingepin::procedures {
namespace {

constexpr std::string_view kTag = "tag";

/// Whether a journal can hold it.
bool isExact(std::int64_t number) { return -kMostInteger <= number && number <= kMostInteger; }

bool isHash(std::string_view text) {
  return text.size() == 64 && std::ranges::all_of(text, [](char character) {
           return (character >= '0' && character <= '9') || (character >= 'a' && character <= 'f');
         });
}

std::optional<std::size_t> indexOf(const Procedure& procedure, std::string_view id) {
  const auto found = std::ranges::find(procedure.steps, id, &Step::id);
  if (found == procedure.steps.end()) return std::nullopt;
  return static_cast<std::size_t>(found - procedure.steps.begin());
}

/// A repeat: from one index to the step that closes it.
struct Range {
  std::size_t first;
  std::size_t last;
  [[nodiscard]] bool holds(std::size_t index) const { return first <= index && index <= last; }
};

std::vector<Range> rangesOf(const Procedure& procedure, const State& state) {
  std::vector<Range> ranges;
  for (std::size_t last = 0; last < procedure.steps.size(); ++last) {
    const Step& step = procedure.steps[last];
    if (!step.repeat || !hasStep(state.start.variant, step)) continue;
    const std::optional<std::size_t> first = indexOf(procedure, step.repeat->from);
    if (first && *first <= last) ranges.push_back({*first, last});
  }
  return ranges;
}

int roundOf(const State& state, const std::string& step) {
  const auto found = state.rounds.find(step);
  return found == state.rounds.end() ? 0 : found->second;
}

/// The step that whoever is in charge may do again: the last one that was only seen, read or written down,
/// with nothing but cautions and checks since. One that sends somebody near the linkage only where what is
/// asked for now does so too, since else that may have had the engine started; never over a movement, a
/// hazard that began or ended, a second person or the seam of a repeat, and not while the step now asked for
/// may have begun to move. Or nullptr.
const Step* stepToDoAgain(const Procedure& procedure, const State& state) {
  const bool begun = state.zone_clear || state.held_since_ms || !state.reading_again.empty();
  if (state.phase != Phase::Running || state.paused || !state.unread.empty() || begun) return nullptr;
  std::size_t index = state.position;
  // Whoever is asked for something near the linkage is safe there, and has been since the step before.
  const bool near_now = index < procedure.steps.size() && procedure.steps[index].near;
  while (index > 0) {
    for (const Range& range : rangesOf(procedure, state)) {
      if (range.first == index) return nullptr;
    }
    const Step& step = procedure.steps[--index];
    if (!hasStep(state.start.variant, step)) continue;
    if (step.repeat || step.moves || !step.opens.empty() || !step.closes.empty()) return nullptr;
    switch (step.kind) {
      case StepKind::Caution:
      case StepKind::Check:
        continue;
      case StepKind::Confirm:
      case StepKind::Monitor:
      case StepKind::Reading:
      case StepKind::Evidence:
      case StepKind::Note:
        if (step.second_person || !step.roles.empty() || (step.near && !near_now)) return nullptr;
        return &step;
      default:
        return nullptr;
    }
  }
  return nullptr;
}

bool isSafeStepAsked(const State& state, const Step& step) {
  if (!step.closes.empty()) {
    return std::ranges::any_of(step.closes, [&](Hazard hazard) { return state.open.contains(hazard); });
  }
  return true;
}

/// The step that the job is at, or nullptr where it is at none.
const Step* currentStep(const Procedure& procedure, const State& state) {
  if (state.phase == Phase::MakingSafe) {
    return state.position < procedure.make_safe.size() ? &procedure.make_safe[state.position] : nullptr;
  }
  if (state.phase != Phase::Running) return nullptr;
  if (!state.reading_again.empty()) return findStep(procedure.steps, state.reading_again.front());
  return state.position < procedure.steps.size() ? &procedure.steps[state.position] : nullptr;
}

const std::vector<std::string>& rolesFor(const Procedure& procedure, const Step& step) {
  if (!step.roles.empty()) return step.roles;
  return step.second_person ? procedure.confirm_roles : procedure.run_roles;
}

/// Every id that the readings of a check stand under.
std::vector<std::string> readingsOf(const Check& check) {
  std::vector<std::string> readings = check.of;
  std::ranges::move(knownOf(check), std::back_inserter(readings));
  return readings;
}

class Runner {
 public:
  Runner(const Procedure& procedure, State state, const Event& event, const Measure& measure,
         const Judge& judge)
      : procedure_(procedure), state_(std::move(state)), event_(event), measure_(measure), judge_(judge) {}

  Expected<State> run();

 private:
  using Done = Expected<void>;

  [[nodiscard]] std::unexpected<Error> refuse(
      std::string code, std::vector<std::pair<std::string, MessageValue>> values = {}) const {
    return fail(ErrorKind::InvalidInput, std::move(code), std::move(values));
  }
  Done start();
  Done takeTime();
  Done control(bool& handled);
  Done acknowledgeAgain();
  Done tag();
  Done step(const Step& step);
  [[nodiscard]] Done mayAnswer(const Step& step) const;
  [[nodiscard]] Done needPerson() const;
  [[nodiscard]] Done needInCharge() const;
  [[nodiscard]] Done needHashes(std::size_t least) const;
  [[nodiscard]] Done await(EventType type) const;
  Done answered(const Step& step);
  Done secondPerson(const Step& step);
  Done reading(const Step& step);
  Done check(const Step& step);
  [[nodiscard]] Done answerFits(const Step& step) const;

  void interrupted();
  void keep(Outcome outcome, bool counts, std::string result = {}, std::string reason = {});
  void leaveStep();
  void pass(const Step& step);
  void failed(const Step& step) { failed(step, failureOf(procedure_, step), step.id, true); }
  void failed(const Step& step, const std::optional<OnFailure>& failure, const std::string& counter,
              bool more_helps);
  void goOn(const Step& step, bool closes);
  void advance();
  void goBack(const std::string& to, std::size_t since = 0);
  [[nodiscard]] std::size_t lookedAtSince(const Step& step, const std::string& to) const;
  void supersede(const std::string& step);
  void stop(const Step& step);
  void makeSafe(std::size_t from);
  void mark(const Step& step, std::string mark) { state_.marks.push_back({step.id, std::move(mark)}); }

  const Procedure& procedure_;
  State state_;
  const Event& event_;
  const Measure& measure_;
  const Judge& judge_;
};

Runner::Done Runner::needPerson() const {
  if (event_.how != How::Typed) return refuse("press-needs-a-person", {{"step", event_.about}});
  return {};
}

Runner::Done Runner::needInCharge() const {
  if (event_.who != state_.person || event_.role != state_.role) return refuse("not-in-charge");
  return {};
}

Runner::Done Runner::needHashes(std::size_t least) const {
  if (event_.hashes.size() < least) return refuse("evidence-missing", {{"step", event_.about}});
  return {};
}

Runner::Done Runner::await(EventType type) const {
  if (event_.type != type) return refuse("event-not-awaited", {{"step", event_.about}});
  return {};
}

Runner::Done Runner::start() {
  if (event_.type != EventType::Start || !event_.start) return refuse("job-not-started");
  const StartOptions& options = *event_.start;
  if (event_.who.empty()) return refuse("not-in-charge");
  if (!contains(procedure_.run_roles, event_.role)) return refuse("role-may-not", {{"role", event_.role}});
  if (const Done person = needPerson(); !person) return person;
  const bool known = procedure_.variants.empty()
                         ? options.variant.empty()
                         : std::ranges::find(procedure_.variants, options.variant, &Variant::id) !=
                               procedure_.variants.end();
  if (!known) return refuse("variant-unknown", {{"variant", options.variant}});
  for (const auto& [id, text] : options.entries) {
    const auto entry = std::ranges::find(procedure_.entries, id, &Entry::id);
    if (entry == procedure_.entries.end()) return refuse("entry-unknown", {{"entry", id}});
    const Expected<ReadQuantity> standard = readAnyQuantity(entry->standard);
    const std::optional<Unit> unit = standard ? standard->unit : findUnit(entry->unit);
    if (!unit) return refuse("procedure-not-sound");
    if (const Expected<double> value = readSi(text, unit->dimension); !value) {
      return std::unexpected(value.error());
    }
  }
  for (const Entry& entry : procedure_.entries) {
    if (entry.standard.empty() && !options.entries.contains(entry.id)) {
      return refuse("entry-missing", {{"entry", entry.id}});
    }
  }
  for (const Prerequisite& needed : procedure_.prerequisites) {
    bool done = false;
    bool young = false;
    for (const Completed& completed : options.completed) {
      if (completed.procedure != needed.procedure) continue;
      done = true;
      young = young || (completed.age_ms && *completed.age_ms >= 0 &&
                        *completed.age_ms <= milliseconds(needed.not_older_than));
    }
    if (!young) {
      return refuse(done ? "prerequisite-too-old" : "prerequisite-missing",
                    {{"procedure", needed.procedure}});
    }
  }
  state_.start = options;
  state_.person = event_.who;
  state_.role = event_.role;
  state_.device = event_.device;
  state_.boot = event_.boot;
  state_.at_ms = event_.at_ms;
  state_.phase = Phase::Running;
  state_.position = 0;
  keep(Outcome::Passed, true);
  while (state_.position < procedure_.steps.size() &&
         !hasStep(state_.start.variant, procedure_.steps[state_.position])) {
    ++state_.position;
  }
  if (state_.position == procedure_.steps.size()) return refuse("procedure-not-sound");
  return {};
}

Runner::Done Runner::takeTime() {
  if (event_.boot == state_.boot) {
    if (event_.at_ms < state_.at_ms) return refuse("time-went-back");
  } else {
    if (contains(state_.old_boots, event_.boot)) return refuse("time-went-back");
    state_.old_boots.push_back(state_.boot);
    state_.boot = event_.boot;
    state_.paused = true;
    interrupted();
  }
  state_.at_ms = event_.at_ms;
  return {};
}

void Runner::interrupted() {
  leaveStep();
  state_.unread.clear();
  for (const Caution& caution : procedure_.cautions) {
    const bool open =
        std::ranges::any_of(caution.covers, [&](Hazard hazard) { return state_.open.contains(hazard); });
    if (open) state_.unread.push_back(caution.id);
  }
}

void Runner::leaveStep() {
  state_.zone_clear = false;
  state_.held_since_ms.reset();
  state_.doubt.reset();
}

Runner::Done Runner::control(bool& handled) {
  handled = true;
  switch (event_.type) {
    case EventType::Start:
      return refuse("job-already-started");
    case EventType::Interrupt:
      state_.paused = true;
      interrupted();
      break;
    case EventType::Resume:
      if (!state_.paused) return refuse("event-not-awaited", {{"step", event_.about}});
      if (const Done allowed = needInCharge(); !allowed) return allowed;
      if (const Done person = needPerson(); !person) return person;
      state_.device = event_.device;
      state_.paused = false;
      break;
    case EventType::TakeOver:
      if (event_.who.empty() || !contains(procedure_.run_roles, event_.role)) {
        return refuse("role-may-not", {{"role", event_.role}});
      }
      if (const Done person = needPerson(); !person) return person;
      state_.person = event_.who;
      state_.role = event_.role;
      state_.device = event_.device;
      state_.paused = false;
      interrupted();
      break;
    case EventType::GoBack: {
      const Step* const again = stepToDoAgain(procedure_, state_);
      if (again == nullptr || event_.about != again->id) {
        return refuse("event-not-awaited", {{"step", event_.about}});
      }
      if (const Done allowed = needInCharge(); !allowed) return allowed;
      if (const Done person = needPerson(); !person) return person;
      keep(Outcome::Passed, false);
      goBack(again->id);
      return {};
    }
    case EventType::Abandon:
      // Whoever may run it may also stop it: the one in charge may have gone.
      if (event_.who.empty() || !contains(procedure_.run_roles, event_.role)) {
        return refuse("role-may-not", {{"role", event_.role}});
      }
      if (const Done person = needPerson(); !person) return person;
      if (state_.phase != Phase::Running) return refuse("event-not-awaited", {{"step", event_.about}});
      keep(Outcome::Passed, true);
      state_.abandoned = true;
      state_.person = event_.who;
      state_.role = event_.role;
      state_.device = event_.device;
      if (const Step* const current = currentStep(procedure_, state_)) state_.failed_step = current->id;
      makeSafe(0);
      return {};
    default:
      handled = false;
      return {};
  }
  keep(Outcome::Passed, true);
  return {};
}

Runner::Done Runner::acknowledgeAgain() {
  if (const Done awaited = await(EventType::Acknowledge); !awaited) return awaited;
  if (event_.about != state_.unread.front()) return refuse("wrong-step", {{"step", event_.about}});
  if (const Done person = needPerson(); !person) return person;
  if (const Done allowed = needInCharge(); !allowed) return allowed;
  keep(Outcome::Passed, true);
  state_.unread.erase(state_.unread.begin());
  return {};
}

Runner::Done Runner::tag() {
  if (const Done awaited = await(EventType::Answer); !awaited) return awaited;
  if (event_.about != kTag || event_.answer != "hung") return refuse("wrong-step", {{"step", event_.about}});
  if (const Done person = needPerson(); !person) return person;
  if (const Done allowed = needInCharge(); !allowed) return allowed;
  keep(Outcome::Passed, true);
  state_.phase = state_.abandoned ? Phase::Abandoned : Phase::Failed;
  return {};
}

void Runner::keep(Outcome outcome, bool counts, std::string result, std::string reason) {
  Try made{.event = event_,
           .outcome = outcome,
           .counts = counts,
           .result = std::move(result),
           .reason = std::move(reason)};
  const std::optional<std::size_t> index =
      state_.phase == Phase::Running ? indexOf(procedure_, event_.about) : std::nullopt;
  if (index) {
    for (const Range& range : rangesOf(procedure_, state_)) {
      if (!range.holds(*index)) continue;
      const std::string& id = procedure_.steps[range.last].id;
      made.rounds.emplace(id, roundOf(state_, id));
    }
  }
  state_.tries.push_back(std::move(made));
}

void Runner::supersede(const std::string& step) {
  for (Try& each : state_.tries) {
    if (each.event.about == step) each.counts = false;
  }
}

void Runner::advance() {
  std::size_t next = state_.position + 1;
  while (next < procedure_.steps.size() && !hasStep(state_.start.variant, procedure_.steps[next])) ++next;
  state_.position = next;
  if (next < procedure_.steps.size()) return;
  // A procedure without findings closes what it opens; with another one the job can't be called done.
  if (state_.open.empty()) {
    state_.phase = Phase::Done;
  } else {
    makeSafe(0);
  }
}

void Runner::goOn(const Step& step, bool closes) {
  leaveStep();
  state_.open.insert(step.opens.begin(), step.opens.end());
  if (closes) {
    for (const Hazard hazard : step.closes) state_.open.erase(hazard);
  }
  if (state_.phase == Phase::MakingSafe) {
    makeSafe(state_.position + 1);
    return;
  }
  if (!state_.reading_again.empty()) {
    state_.reading_again.erase(state_.reading_again.begin());
    return;
  }
  if (step.repeat) {
    const std::optional<std::size_t> first = indexOf(procedure_, step.repeat->from);
    if (first && *first <= state_.position && roundOf(state_, step.id) + 1 < step.repeat->times) {
      state_.rounds[step.id] = roundOf(state_, step.id) + 1;
      for (std::size_t inner = *first; inner < state_.position; ++inner) {
        state_.rounds.erase(procedure_.steps[inner].id);
      }
      state_.position = *first;
      return;
    }
  }
  advance();
}

void Runner::pass(const Step& step) { goOn(step, true); }

/// The first try that a failed check looked at, for a way back to `to`: a repeatability with a reference
/// looks at one mass, so those before it stay.
std::size_t Runner::lookedAtSince(const Step& step, const std::string& to) const {
  if (!step.check || step.check->kind != CheckKind::Repeatability || step.check->reference.empty()) return 0;
  std::size_t goal = 0;
  std::size_t since = 0;
  for (std::size_t at = 0; at < state_.tries.size(); ++at) {
    const Try& each = state_.tries[at];
    if (each.event.about == to) goal = at;
    if (each.counts && each.event.about == step.check->reference) since = goal;
  }
  return since;
}

/// @param since the first try that no longer counts, where it is of a step from `to` on
void Runner::goBack(const std::string& to, std::size_t since) {
  state_.reading_again.clear();
  leaveStep();
  const std::optional<std::size_t> goal = indexOf(procedure_, to);
  if (!goal || *goal > state_.position) {
    makeSafe(0);
    return;
  }
  // Rounds of a repeat that holds both ends stay; all other rounds since the goal are begun again.
  std::vector<std::string> common;
  for (const Range& range : rangesOf(procedure_, state_)) {
    const std::string& id = procedure_.steps[range.last].id;
    if (range.holds(*goal) && range.holds(state_.position)) {
      common.push_back(id);
    } else if (range.last >= *goal) {
      state_.rounds.erase(id);
    }
  }
  for (Try& each : std::span(state_.tries).subspan(since)) {
    const std::optional<std::size_t> index = indexOf(procedure_, each.event.about);
    if (!index || *index < *goal) continue;
    const bool this_round = std::ranges::all_of(common, [&](const std::string& id) {
      const auto round = each.rounds.find(id);
      return round == each.rounds.end() || round->second == roundOf(state_, id);
    });
    if (this_round) each.counts = false;
  }
  state_.position = *goal;
}

void Runner::makeSafe(std::size_t from) {
  leaveStep();
  state_.paused = false;
  state_.reading_again.clear();
  state_.phase = Phase::MakingSafe;
  state_.position = from;
  while (state_.position < procedure_.make_safe.size() &&
         !isSafeStepAsked(state_, procedure_.make_safe[state_.position])) {
    ++state_.position;
  }
  if (state_.position == procedure_.make_safe.size()) state_.phase = Phase::Tagging;
}

void Runner::stop(const Step& step) {
  state_.failed_step = step.id;
  makeSafe(0);
}

/// @param counter under what its times are counted; @param more_helps whether reading more can change it
void Runner::failed(const Step& step, const std::optional<OnFailure>& failure, const std::string& counter,
                    bool more_helps) {
  leaveStep();
  // What failed may have begun.
  state_.open.insert(step.opens.begin(), step.opens.end());
  if (state_.phase == Phase::MakingSafe) return;  // asked for again
  if (!failure || failure->action == FailureAction::Stop) return stop(step);
  const auto waive = [&] {
    state_.tries.back().counts = true;
    mark(step, failure->mark);
    goOn(step, false);
  };
  if (failure->action == FailureAction::GoOn) return waive();
  int& failures = state_.failures[counter];
  if (failures >= failure->at_most.value_or(0) || !more_helps) {
    if (failure->goes_on_then) return waive();
    return stop(step);
  }
  ++failures;
  if (failure->action == FailureAction::GoBack) return goBack(failure->to, lookedAtSince(step, failure->to));
  if (failure->action == FailureAction::More) {
    // All that was read goes on counting. A repeat that has ended is gone through once more, and those within
    // it as often as they say.
    state_.tries.back().outcome = Outcome::More;
    state_.reading_again.clear();
    const std::optional<std::size_t> goal = indexOf(procedure_, failure->to);
    if (!goal || *goal > state_.position) return makeSafe(0);
    for (const Range& range : rangesOf(procedure_, state_)) {
      if (range.first > *goal) state_.rounds.erase(procedure_.steps[range.last].id);
    }
    state_.position = *goal;
    return;
  }
  if (failure->action != FailureAction::ReadAgain || !step.check) return;
  if (step.check->kind == CheckKind::Survey) {
    // The one that it names, where that can be measured without bringing the machine into a pose.
    const Step* const named = findStep(procedure_.steps, state_.tries.back().step);
    if (named != nullptr && named->survey && !survey::needsPose(*named->survey))
      state_.reading_again.push_back(named->id);
  } else {
    for (const std::string& reading : readingsOf(*step.check)) {
      if (findStep(procedure_.steps, reading) == nullptr) continue;
      supersede(reading);
      state_.reading_again.push_back(reading);
    }
  }
}

Runner::Done Runner::mayAnswer(const Step& step) const {
  const std::vector<std::string>& roles = rolesFor(procedure_, step);
  if (step.roles.empty()) return needInCharge();
  if (!contains(roles, event_.role)) {
    return refuse("role-may-not", {{"role", event_.role}, {"step", step.id}});
  }
  if (event_.who.empty() && !step.on_glass) return refuse("not-in-charge");
  return {};
}

Runner::Done Runner::secondPerson(const Step& step) {
  if (const Done person = needPerson(); !person) return person;
  if (event_.answer == "unconfirmed") {
    if (state_.start.lone_work != LoneWork::Unconfirmed) return refuse("lone-work-not-allowed");
    if (const Done allowed = needInCharge(); !allowed) return allowed;
    keep(Outcome::Passed, true);
    mark(step, "second-person-missing");
    pass(step);
    return {};
  }
  if (event_.answer == "no" && event_.who == state_.person) {
    keep(Outcome::Failed, false);
    failed(step);
    return {};
  }
  if (event_.who.empty() || event_.who == state_.person) return refuse("second-person-is-the-first");
  if (!contains(rolesFor(procedure_, step), event_.role)) {
    return refuse("role-may-not", {{"role", event_.role}, {"step", step.id}});
  }
  const bool from_afar = !event_.hashes.empty();
  if (from_afar && state_.start.lone_work == LoneWork::NotAllowed) return refuse("lone-work-not-allowed");
  const bool yes = event_.answer == "yes";
  keep(yes ? Outcome::Passed : Outcome::Failed, yes);
  if (from_afar) mark(step, "second-person-from-afar");
  if (!from_afar && event_.device == state_.device) mark(step, "second-person-on-same-phone");
  if (yes) {
    pass(step);
  } else {
    failed(step);
  }
  return {};
}

Runner::Done Runner::answerFits(const Step& step) const {
  if (!contains(answersTo(step), event_.answer)) {
    return refuse("answer-unknown", {{"answer", event_.answer}, {"step", step.id}});
  }
  switch (step.kind) {
    case StepKind::Confirm:
      return needPerson();
    case StepKind::Hold: {
      if (event_.answer == "failed") return {};
      if (!state_.held_since_ms) return refuse("hold-not-begun", {{"step", step.id}});
      const std::int64_t left_ms = milliseconds(step.duration) - (event_.at_ms - *state_.held_since_ms);
      if (left_ms > 0) {
        return refuse("hold-too-short",
                      {{"step", step.id}, {"left", Amount{static_cast<double>(left_ms) / 1000.0, "s", 1}}});
      }
      return {};
    }
    case StepKind::Pass:
      return needHashes(event_.answer == "done" && step.log == LogNeed::Required ? 1 : 0);
    case StepKind::Evidence:
      return needHashes(event_.answer == "taken" ? 1 : 0);
    case StepKind::Note:
      if (event_.answer == "written" && event_.value.empty()) {
        return refuse("note-empty", {{"step", step.id}});
      }
      return {};
    case StepKind::Sign:
      if (const Done person = needPerson(); !person) return person;
      // Nobody can sign that they are not there: that is said by the one in charge.
      if (event_.answer != "signed") return needInCharge();
      return needHashes(step.on_glass ? 1 : 0);
    default:
      return {};
  }
}

Runner::Done Runner::answered(const Step& step) {
  if (const Done awaited = await(EventType::Answer); !awaited) return awaited;
  if (const Done fits = answerFits(step); !fits) return fits;
  if (step.second_person) return secondPerson(step);
  const bool absent = step.kind == StepKind::Sign && event_.answer != "signed";
  if (!absent) {
    if (const Done allowed = mayAnswer(step); !allowed) return allowed;
  }
  bool passed = true;
  if (step.kind == StepKind::Monitor) {
    passed = std::ranges::find(step.answers, event_.answer, &Answer::id)->passes;
  } else if (absent) {
    passed = std::ranges::any_of(step.may_be, [&](Absence may) { return nameOf(may) == event_.answer; });
  } else {
    passed = event_.answer != "no" && event_.answer != "failed";
  }
  keep(passed ? Outcome::Passed : Outcome::Failed, passed);
  if (absent && passed)
    mark(step, event_.answer == nameOf(Absence::Absent) ? "signer-absent" : "signer-refused");
  if (passed) {
    pass(step);
  } else {
    failed(step);
  }
  return {};
}

/// The unit of a reading that a typed quantity belongs to, by its dimension, and what is plausible there.
struct Shown {
  std::optional<Unit> unit;
  const Limits* plausible;
};

Shown shownAs(const Step& step, const std::string& typed) {
  const Expected<ReadQuantity> read = readAnyQuantity(typed);
  for (const OtherUnit& other : step.others) {
    const std::optional<Unit> unit = findUnit(other.unit);
    if (read && unit && unit->dimension == read->unit.dimension) return {unit, &other.plausible};
  }
  return {findUnit(step.unit), &step.plausible};
}

Runner::Done Runner::reading(const Step& step) {
  if (step.optional && event_.type == EventType::Answer) return answered(step);
  if (const Done awaited = await(EventType::Reading); !awaited) return awaited;
  if (const Done allowed = mayAnswer(step); !allowed) return allowed;
  if (step.source == Source::Independent && event_.how == How::Monitor) {
    return refuse("reading-not-independent", {{"step", step.id}});
  }
  const Shown shown = shownAs(step, event_.value);
  if (!shown.unit) return refuse("procedure-not-sound");
  const Expected<double> value_si = readSi(event_.value, shown.unit->dimension);
  if (!value_si) return std::unexpected(value_si.error());
  const Expected<bool> plausible = isWithin(procedure_, state_, *shown.plausible, *value_si);
  if (!plausible) return std::unexpected(plausible.error());
  Expected<bool> accepted = true;
  if (step.accept) accepted = isWithin(procedure_, state_, *step.accept, *value_si);
  if (!accepted) return std::unexpected(accepted.error());
  if (!*plausible) {
    // Only the number that was doubted can be confirmed, and only by a person.
    const bool confirmed = event_.sure && event_.how != How::Live && event_.how != How::Log && state_.doubt &&
                           state_.doubt->value == event_.value;
    if (!confirmed) {
      keep(Outcome::Doubted, false);
      state_.doubt = Doubt{event_.value, suggestionsFor(procedure_, state_, *shown.plausible, event_.value)};
      return {};
    }
    mark(step, "implausible-confirmed");
  }
  keep(*accepted ? Outcome::Passed : Outcome::Failed, *accepted);
  if (*accepted) {
    pass(step);
  } else {
    failed(step);
  }
  return {};
}

Runner::Done Runner::check(const Step& step) {
  if (const Done awaited = await(EventType::Evaluate); !awaited) return awaited;
  for (const std::string& id : readingsOf(*step.check)) {
    const Step* const reading = findStep(procedure_.steps, id);
    if (reading == nullptr || !reading->expires) continue;
    const std::vector<Observation> values = observationsOf(procedure_, state_, id);
    const bool expired = std::ranges::any_of(values, [&](const Observation& value) {
      return isOlder(state_, value, event_.at_ms, reading->expires->after);
    });
    if (!expired) continue;
    if (!reading->expires->from.empty()) {
      keep(Outcome::Expired, false);
      goBack(reading->expires->from);
      return {};
    }
    supersede(id);
    state_.reading_again.push_back(id);
  }
  if (!state_.reading_again.empty()) {
    keep(Outcome::Expired, false);
    return {};
  }
  Expected<Verdict> verdict = evaluate(procedure_, state_, step, event_.at_ms, measure_, judge_);
  if (!verdict) return std::unexpected(std::move(verdict.error()));
  const bool passed = verdict->passed;
  keep(passed ? Outcome::Passed : Outcome::Failed, passed, std::move(verdict->result),
       std::move(verdict->reason));
  state_.tries.back().limit = std::move(verdict->limit);
  state_.tries.back().more = verdict->more;
  state_.tries.back().step = std::move(verdict->step);
  if (verdict->set_aside) state_.tries[*verdict->set_aside].counts = false;
  if (passed) {
    pass(step);
  } else if (verdict->undecided && step.undecided) {
    failed(step, step.undecided, step.id + "/undecided", verdict->more > 0);
  } else {
    failed(step);
  }
  return {};
}

Runner::Done Runner::step(const Step& step) {
  const std::string& name = step.kind == StepKind::Caution ? step.caution : step.id;
  if (event_.about != name) return refuse("wrong-step", {{"step", event_.about}, {"awaited", name}});
  if (event_.type == EventType::ZoneClear) {
    if (!step.moves || state_.zone_clear) return refuse("event-not-awaited", {{"step", event_.about}});
    if (const Done person = needPerson(); !person) return person;
    if (const Done allowed = needInCharge(); !allowed) return allowed;
    keep(Outcome::Passed, true);
    state_.zone_clear = true;
    state_.open.insert(step.opens.begin(), step.opens.end());
    return {};
  }
  if (step.moves && !state_.zone_clear) return refuse("zone-not-clear", {{"step", step.id}});
  switch (step.kind) {
    case StepKind::Caution: {
      if (const Done awaited = await(EventType::Acknowledge); !awaited) return awaited;
      if (const Done person = needPerson(); !person) return person;
      if (const Done allowed = mayAnswer(step); !allowed) return allowed;
      keep(Outcome::Passed, true);
      pass(step);
      return {};
    }
    case StepKind::Reading:
      return reading(step);
    case StepKind::Check:
      return check(step);
    case StepKind::Hold:
      if (event_.type == EventType::Begin) {
        if (const Done allowed = mayAnswer(step); !allowed) return allowed;
        keep(Outcome::Passed, true);
        state_.held_since_ms = event_.at_ms;  // begun anew when it was disturbed
        return {};
      }
      return answered(step);
    default:
      return answered(step);
  }
}

Expected<State> Runner::run() {
  const bool exact =
      isExact(event_.at_ms) && isExact(event_.wall_utc_ms.value_or(0)) &&
      (!event_.start || std::ranges::all_of(event_.start->completed, [](const Completed& each) {
        return isExact(each.age_ms.value_or(0));
      }));
  if (!exact || event_.at_ms < 0 || event_.boot.empty()) return refuse("time-malformed");
  if (!std::ranges::all_of(event_.hashes, isHash)) return refuse("hash-malformed");
  Done done;
  if (state_.phase == Phase::NotStarted) {
    done = start();
  } else if (hasEnded(state_.phase)) {
    return refuse("job-ended");
  } else {
    done = takeTime();
    bool handled = false;
    if (done) done = control(handled);
    if (done && !handled) {
      if (state_.paused) return refuse("job-paused");
      if (!state_.unread.empty()) {
        done = acknowledgeAgain();
      } else if (state_.phase == Phase::Tagging) {
        done = tag();
      } else if (const Step* const current = currentStep(procedure_, state_)) {
        done = step(*current);
      } else {
        return refuse("procedure-not-sound");
      }
    }
  }
  if (!done) return std::unexpected(std::move(done.error()));
  return std::move(state_);
}

/// The decimals that a quantity was written with, and its number and unit.
MessageValue amountOf(const Procedure& procedure, const State& state, const Limit& limit) {
  const Expected<ReadQuantity> read = valueOf(procedure, state, limit);
  // An entry of a unit that is not known yet goes by its name.
  if (!read) return limit.text.empty() ? "(" + limit.entry + ")" : limit.text;
  std::string text = limit.text;
  if (const auto given = state.start.entries.find(limit.entry); given != state.start.entries.end()) {
    text = given->second;
  } else if (!limit.entry.empty()) {
    text = std::ranges::find(procedure.entries, limit.entry, &Entry::id)->standard;
  }
  const std::string number = text.substr(0, text.find(' '));
  const std::size_t point = number.find('.');
  const int decimals = point == std::string::npos ? 0 : static_cast<int>(number.size() - point - 1);
  return Amount{read->unit.fromSi(read->value_si), std::string(read->unit.ucum), decimals};
}

bool isPlan(const Step& step) { return step.check && step.check->kind == CheckKind::Plan; }

/// What the last plan said beforehand; a dash where it has said nothing, or that no number decides.
void addPlan(const Procedure& procedure, const State& state, Message& message) {
  MessageValue buckets = "-";
  MessageValue smallest = "-";
  for (const Try& each : state.tries) {
    const Step* const made = findStep(procedure, each.event.about);
    if (!each.counts || made == nullptr || !isPlan(*made)) continue;
    buckets = each.more > 0 ? MessageValue(Amount{static_cast<double>(each.more), "1"}) : "-";
    smallest = amountOf(procedure, state, Limit{.text = each.result});
  }
  message.values.emplace_back("buckets", std::move(buckets));
  message.values.emplace_back("smallest", std::move(smallest));
}

Message wordsOf(const Procedure& procedure, const State& state, const Step& step, std::string code) {
  Message message{std::move(code), {}};
  const auto add = [&](const char* name, const std::optional<Limit>& limit) {
    if (limit) message.values.emplace_back(name, amountOf(procedure, state, *limit));
  };
  const auto addTime = [&](const std::string& duration) {
    if (!duration.empty()) add("time", Limit{.text = duration});
  };
  const auto addCount = [&](const char* name, int count) {
    message.values.emplace_back(name, Amount{static_cast<double>(count), "1"});
  };
  addTime(step.duration);
  if (step.kind == StepKind::Reading) {
    const Limits& shown = step.accept ? *step.accept : step.plausible;
    add("low", shown.low);
    add("high", shown.high);
    message.values.emplace_back("unit", step.unit);
  }
  add("angle", step.boom_angle);
  add("within", step.within);
  if (step.check) {
    const Check& check = *step.check;
    add("low", check.low);
    add("high", check.high);
    add("value", check.value);
    add("target", check.target);
    add("within", check.within);
    add("at_most", check.at_most);
    addTime(check.duration);
    if (check.count > 0) addCount("count", check.count);
  }
  if (std::ranges::any_of(procedure.steps, isPlan)) addPlan(procedure, state, message);
  const std::optional<std::size_t> index = indexOf(procedure, step.id);
  if (!index) return message;
  // The innermost repeat around the step.
  std::optional<Range> inner;
  for (const Range& range : rangesOf(procedure, state)) {
    if (range.holds(*index) && (!inner || range.last - range.first < inner->last - inner->first))
      inner = range;
  }
  if (inner) {
    const Step& last = procedure.steps[inner->last];
    addCount("times", last.repeat->times);
    addCount("round", roundOf(state, last.id) + 1);
  }
  return message;
}

}  // namespace

bool hasEnded(Phase phase) {
  return phase == Phase::Done || phase == Phase::Failed || phase == Phase::Abandoned;
}

Message textOf(const Procedure& procedure, const State& state, const Step& step) {
  return wordsOf(procedure, state, step, step.text);
}

std::vector<std::string> answersTo(const Step& step) {
  switch (step.kind) {
    case StepKind::Confirm:
      if (step.second_person) return {"yes", "no", "unconfirmed"};
      return {"yes", "no"};
    case StepKind::Monitor: {
      std::vector<std::string> answers;
      for (const Answer& answer : step.answers) answers.push_back(answer.id);
      return answers;
    }
    case StepKind::Hold:
    case StepKind::Pose:
    case StepKind::Pass:
      return {"done", "failed"};
    case StepKind::Evidence:
      if (step.optional) return {"taken", "skipped"};
      return {"taken"};
    case StepKind::Note:
      if (step.optional) return {"written", "skipped"};
      return {"written"};
    case StepKind::Sign:
      return {"signed", "absent", "refused"};
    case StepKind::Reading:
      if (step.optional) return {"skipped"};
      return {};
    case StepKind::Caution:
    case StepKind::Check:
      return {};
  }
  return {};
}

std::vector<Observation> observationsOf(const Procedure& procedure, const State& state,
                                        std::string_view step) {
  std::vector<Observation> observations;
  const Step* const found = findStep(procedure.steps, step);
  if (found == nullptr) return observations;
  for (const Try& each : state.tries) {
    if (!each.counts || each.event.about != step) continue;
    if (found->kind == StepKind::Reading && each.event.type == EventType::Reading) {
      const Expected<ReadQuantity> read = readAnyQuantity(each.event.value);
      if (read) {
        observations.push_back({found, read->value_si, each.event.at_ms, each.event.boot, each.event.hashes});
      }
    } else if (found->kind == StepKind::Pass && each.event.type == EventType::Answer) {
      observations.push_back({found, 0.0, each.event.at_ms, each.event.boot, each.event.hashes});
    }
  }
  return observations;
}

Expected<State> apply(const Procedure& procedure, State state, const Event& event, const Measure& measure,
                      const Judge& judge) {
  return Runner(procedure, std::move(state), event, measure, judge).run();
}

Prompt prompt(const Procedure& procedure, const State& state) {
  Prompt asked;
  if (state.phase == Phase::NotStarted) {
    asked.ask = Ask::Start;
    asked.text = {procedure.title, {}};
    asked.detail = procedure.comes_first;
    return asked;
  }
  if (hasEnded(state.phase)) return asked;
  if (state.paused) {
    asked.ask = Ask::Resume;
    return asked;
  }
  const auto askCaution = [&](const std::string& id) {
    asked.ask = Ask::Acknowledge;
    asked.about = id;
    asked.caution = id;
    return asked;
  };
  if (!state.unread.empty()) return askCaution(state.unread.front());
  if (state.phase == Phase::Tagging) {
    asked.ask = Ask::Tag;
    asked.about = kTag;
    asked.text = {procedure.tag, {}};
    asked.answers = {"hung"};
    return asked;
  }
  const Step* const step = currentStep(procedure, state);
  if (step == nullptr) return asked;
  if (const Step* const again = stepToDoAgain(procedure, state)) asked.back_to = again->id;
  if (!state.tries.empty() && state.tries.back().outcome != Outcome::Passed &&
      state.tries.back().outcome != Outcome::Doubted &&
      !(state.tries.back().outcome == Outcome::More && state.tries.back().event.type == EventType::Answer)) {
    asked.after_failure = state.tries.size() - 1;
  }
  if (step->kind == StepKind::Caution) return askCaution(step->caution);
  asked.about = step->id;
  asked.detail = step->detail;
  if (step->moves && !state.zone_clear) {
    asked.ask = Ask::ZoneClear;
    asked.text = wordsOf(procedure, state, *step, step->zone_clear);
    return asked;
  }
  asked.text = wordsOf(procedure, state, *step, step->text);
  switch (step->kind) {
    case StepKind::Reading:
      asked.ask = state.doubt ? Ask::Doubt : Ask::Reading;
      asked.answers = answersTo(*step);
      if (state.doubt) asked.suggestions = state.doubt->suggestions;
      break;
    case StepKind::Check:
      asked.ask = Ask::Evaluate;
      asked.by_itself = true;
      break;
    case StepKind::Hold:
      asked.ask = state.held_since_ms ? Ask::Hold : Ask::Begin;
      asked.answers = answersTo(*step);
      if (state.held_since_ms) {
        asked.finished_at_ms = *state.held_since_ms + milliseconds(step->duration);
        asked.by_itself = true;
      } else {
        // Whoever has just said that it stands there need not say so twice.
        const Step* const before =
            state.tries.empty() ? nullptr : findStep(procedure, state.tries.back().event.about);
        asked.by_itself = before != nullptr && before->kind == StepKind::Pose &&
                          state.tries.back().outcome == Outcome::Passed &&
                          state.tries.back().event.type == EventType::Answer;
      }
      break;
    case StepKind::Confirm:
      asked.ask = Ask::Answer;
      asked.answers = answersTo(*step);
      if (step->second_person && state.start.lone_work != LoneWork::Unconfirmed) asked.answers.pop_back();
      break;
    default:
      asked.ask = Ask::Answer;
      asked.answers = answersTo(*step);
      break;
  }
  return asked;
}

}  // namespace hingepin::procedures
