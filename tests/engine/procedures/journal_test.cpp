// SPDX-License-Identifier: Apache-2.0
#include "engine/procedures/journal.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>
#include <random>
#include <set>

#include "tests/engine/procedures/technician.h"
#include "tests/engine/soak.h"

namespace hingepin::procedures {
namespace {

using samples::kHash;
using samples::Technician;

/// Somebody who presses anything, more often than not what is asked for.
class Chance {
 public:
  explicit Chance(unsigned seed) : random_(seed), clumsy_(seed % 2 == 0) {}

  std::size_t below(std::size_t bound) { return bound == 0 ? 0 : random_() % bound; }
  template <class List>
  auto oneOf(const List& list) {
    return *(std::begin(list) + static_cast<std::ptrdiff_t>(below(std::size(list))));
  }

  Event next(Technician& technician) {
    technician.now_ms += static_cast<std::int64_t>(below(40) == 0 ? below(2'000'000) : below(5'000));
    Event event = technician.honest();
    if (below(8) != 0) {
      if (event.type == EventType::Reading && below(6) == 0) event.value = oneOf(kValues);
      if (event.type == EventType::Reading && below(6) == 0) event.sure = true;
      if (event.type == EventType::Answer && clumsy_ && below(2) == 0)
        event.answer = technician.asked().answers.back();
      return event;
    }
    switch (below(10)) {
      case 0:
        event.type = oneOf(kTypes);
        break;
      case 1:
        event.answer = oneOf(kAnswers);
        break;
      case 2:
        if (!technician.procedure().steps.empty()) event.about = oneOf(technician.procedure().steps).id;
        break;
      case 3:
        event.who = oneOf(kPeople);
        break;
      case 4:
        event.role = oneOf(kRoles);
        break;
      case 5:
        event.how = oneOf(kHows);
        break;
      case 6:
        technician.boot = "boot-" + std::to_string(below(5));
        event.boot = technician.boot;
        break;
      case 7:
        event.at_ms -= static_cast<std::int64_t>(below(100'000));
        break;
      case 8:
        event.hashes.clear();
        break;
      default:
        event = technician.event(oneOf(kTypes));
        event.who = oneOf(kPeople);
        if (event.type == EventType::Abandon && below(12) != 0) event.type = EventType::Interrupt;
        if (event.type == EventType::TakeOver) technician.who = event.who;
    }
    return event;
  }

 private:
  inline static const std::vector<std::string> kValues = {"1 kg",   "2000 kg", "900 bar", "3 deg", "-12 deg",
                                                          "39 Cel", "4.1 m",   "0.3 m",   "x",     "88 bar"};
  inline static const std::vector<EventType> kTypes = {
      EventType::Start,  EventType::Acknowledge, EventType::ZoneClear, EventType::Begin,
      EventType::Answer, EventType::Reading,     EventType::Evaluate,  EventType::Interrupt,
      EventType::Resume, EventType::TakeOver,    EventType::Abandon,   EventType::GoBack};
  inline static const std::vector<std::string> kAnswers = {
      "yes", "no", "done", "failed", "signed", "taken", "absent", "unconfirmed", "again", "hung"};
  inline static const std::vector<std::string> kPeople = {"key-of-technician", "key-of-another",
                                                          "key-of-lead", ""};
  inline static const std::vector<std::string> kRoles = {"technician", "safety-lead", "customer"};
  inline static const std::vector<How> kHows = {How::Typed, How::Log, How::Live, How::Monitor};
  std::mt19937 random_;
  bool clumsy_;
};

/// How often a step must count once the job is done.
int timesOf(const Procedure& procedure, const std::string& variant, std::size_t index) {
  int times = 1;
  for (std::size_t last = index; last < procedure.steps.size(); ++last) {
    const Step& step = procedure.steps[last];
    if (!step.repeat || !hasStep(variant, step)) continue;
    const Step* const first = findStep(procedure.steps, step.repeat->from);
    if (static_cast<std::size_t>(first - procedure.steps.data()) <= index) times *= step.repeat->times;
  }
  return times;
}

void expectDoneMeansDone(const Technician& technician) {
  const Procedure& procedure = technician.procedure();
  const State& state = technician.state();
  for (std::size_t index = 0; index < procedure.steps.size(); ++index) {
    const Step& step = procedure.steps[index];
    if (!hasStep(state.start.variant, step)) continue;
    int counting = 0;
    for (const Try& each : state.tries) {
      const bool finishes = each.event.type == EventType::Answer || each.event.type == EventType::Reading ||
                            each.event.type == EventType::Evaluate ||
                            each.event.type == EventType::Acknowledge;
      const std::string& name = step.kind == StepKind::Caution ? step.caution : step.id;
      if (!finishes || !each.counts || each.event.about != name) continue;
      const bool marked =
          std::ranges::any_of(state.marks, [&](const Mark& mark) { return mark.step == step.id; });
      EXPECT_TRUE(each.outcome == Outcome::Passed || marked) << step.id;
      ++counting;
    }
    const int times = timesOf(procedure, state.start.variant, index);
    if (step.kind == StepKind::Caution) {
      EXPECT_GE(counting, times) << step.id;  // shown again after each interruption
    } else {
      EXPECT_EQ(counting, times) << step.id;
    }
  }
  EXPECT_TRUE(state.open.empty());
}

void expectAPressBeforeEachMovement(const Technician& technician) {
  const State& state = technician.state();
  bool cleared = false;
  for (const Try& each : state.tries) {
    const Step* step = findStep(technician.procedure(), each.event.about);
    if (each.event.type == EventType::ZoneClear) {
      EXPECT_FALSE(cleared);
      cleared = true;
    } else if (step != nullptr && step->moves && each.event.type == EventType::Answer) {
      EXPECT_TRUE(cleared) << step->id;
      cleared = false;
    } else {
      cleared = false;
    }
  }
}

/// What is judged from outside holds, as it does for the technician.
Expected<Verdict> holds(const Step&) { return Verdict{.passed = true}; }

Expected<State> replayed(const Technician& technician, const std::vector<Event>& journal) {
  State state;
  for (const Event& event : journal) {
    Expected<State> next = apply(technician.procedure(), std::move(state), event, technician.measure, holds);
    if (!next) return next;
    state = *std::move(next);
  }
  return state;
}

TEST(JournalTest, RandomJobsKeepEveryLaw) {
  int done = 0;
  int failed = 0;
  int abandoned = 0;
  for (unsigned seed = 0; seed < cases(80); ++seed) {
    SCOPED_TRACE(seed);
    Chance chance(seed);
    Technician technician =
        Technician::onEverything(std::vector<std::string>{"own-routine", "typed", "logged"}[seed % 3]);
    technician.options.lone_work = static_cast<LoneWork>(chance.below(3));
    std::size_t readings = 0;
    for (std::size_t round = 0; round < 40 + seed % 400 && !hasEnded(technician.state().phase); ++round) {
      const State before = technician.state();
      const Event event = chance.next(technician);
      if (!technician.tell(event).empty()) {
        EXPECT_EQ(technician.state(), before);
        continue;
      }
      technician.now_ms = std::max(technician.now_ms, event.at_ms);
      readings += event.type == EventType::Reading ? 1U : 0U;
      EXPECT_GE(technician.state().tries.size(), before.tries.size());
    }
    // From anywhere an honest person gets to an end, however the job stands.
    technician.who = technician.state().person.empty() ? technician.who : technician.state().person;
    technician.role = technician.state().role.empty() ? technician.role : technician.state().role;
    technician.boot = technician.state().boot.empty() ? technician.boot : technician.state().boot;
    technician.now_ms = std::max(technician.now_ms, technician.state().at_ms);
    const std::size_t journalled = technician.journal().size();
    EXPECT_TRUE(technician.work()) << technician.asked().about;
    for (std::size_t index = journalled; index < technician.journal().size(); ++index) {
      readings += technician.journal()[index].type == EventType::Reading ? 1U : 0U;
    }
    std::size_t kept = 0;
    for (const Try& each : technician.state().tries) kept += each.event.type == EventType::Reading ? 1U : 0U;
    EXPECT_EQ(kept, readings);
    expectAPressBeforeEachMovement(technician);
    EXPECT_TRUE(technician.state().open.empty());
    switch (technician.state().phase) {
      case Phase::Done:
        ++done;
        expectDoneMeansDone(technician);
        break;
      case Phase::Failed:
      case Phase::Abandoned:
        ++(technician.state().phase == Phase::Failed ? failed : abandoned);
        EXPECT_EQ(technician.journal().back().about, "tag");
        break;
      default:
        ADD_FAILURE() << "no end";
    }
    // Through the text of the journal, as after a kill.
    std::vector<Event> journal;
    for (const Event& event : technician.journal()) {
      const Expected<Event> read = readEvent(writeEvent(event), "journal");
      ASSERT_TRUE(read.has_value()) << read.error().message.code;
      EXPECT_EQ(*read, event);
      journal.push_back(*read);
    }
    const Expected<State> again = replayed(technician, journal);
    ASSERT_TRUE(again.has_value());
    EXPECT_EQ(writeState(*again), writeState(technician.state()));
  }
  RecordProperty("done", done);
  RecordProperty("failed", failed);
  RecordProperty("abandoned", abandoned);
  // Every way to end was seen.
  EXPECT_GT(done, 4);
  EXPECT_GT(failed, 4);
  EXPECT_GT(abandoned, 4);
}

TEST(JournalTest, EveryPrefixOfAJournalReplaysToTheStateThatWasShown) {
  Technician technician = Technician::onEverything("logged");
  State again;
  while (!hasEnded(technician.state().phase)) {
    const Event event = technician.honest();
    technician.now_ms = event.at_ms + 1500;
    ASSERT_EQ(technician.tell(event), "");
    Expected<State> next = apply(technician.procedure(), std::move(again),
                                 *readEvent(writeEvent(event), "journal"), technician.measure, holds);
    ASSERT_TRUE(next.has_value());
    again = *std::move(next);
    EXPECT_EQ(writeState(again), writeState(technician.state()));
  }
}

TEST(JournalTest, DamagedEventsAreRefusedOrReadButNeverCrash) {
  Technician technician = Technician::onEverything();
  Event start = technician.honest();
  start.hashes = {kHash};
  start.wall_utc_ms = -5;
  start.value = "a \"quoted\" µ\n";
  const std::string whole = writeEvent(start);
  EXPECT_EQ(*readEvent(whole, "journal"), start);
  std::mt19937 random(7);
  for (int round = 0; round < 20000; ++round) {
    std::string text = whole;
    text[random() % text.size()] = static_cast<char>(random() % 256);
    if (random() % 3 == 0) text.resize(random() % text.size());
    const Expected<Event> read = readEvent(text, "journal");
    if (read) {
      static_cast<void>(apply(technician.procedure(), State{}, *read));
    } else {
      EXPECT_FALSE(read.error().message.code.empty());
    }
  }
}

TEST(JournalTest, AProcedureThatWasCompletedIsNamed) {
  const std::string text =
      R"({"at_ms":1,"how":"typed","start":{"completed":[{"age_ms":5}],"lone_work":"not-allowed"},"type":"start"})";
  const Expected<Event> read = readEvent(text, "journal");
  ASSERT_FALSE(read.has_value());
  EXPECT_EQ(read.error().message.code, "json-missing-key");
  EXPECT_EQ(read.error().place.pointer, "/start/completed/0");
}

TEST(JournalTest, EventTextIsCanonical) {
  Event event{.type = EventType::Reading, .at_ms = 12, .boot = "b", .who = "k"};
  event.value = "88 bar";
  event.how = How::Monitor;
  EXPECT_EQ(writeEvent(event),
            R"({"at_ms":12,"boot":"b","how":"monitor","type":"reading","value":"88 bar","who":"k"})");
}

TEST(JournalTest, StatesThatDifferInAnyFieldDifferInTheirBytes) {
  const std::vector<std::function<void(State&)>> changes = {
      [](State&) {},
      [](State& state) { state.phase = Phase::Running; },
      [](State& state) { state.start.variant = "v"; },
      [](State& state) { state.start.lone_work = LoneWork::Unconfirmed; },
      [](State& state) { state.start.entries["e"] = "1 m"; },
      [](State& state) { state.start.completed = {{"p", std::nullopt}}; },
      [](State& state) { state.start.completed = {{"p", 0}}; },
      [](State& state) { state.person = "k"; },
      [](State& state) { state.role = "k"; },
      [](State& state) { state.device = "k"; },
      [](State& state) { state.paused = true; },
      [](State& state) { state.position = 1; },
      [](State& state) { state.reading_again = {"s"}; },
      [](State& state) { state.rounds["s"] = 1; },
      [](State& state) { state.failures["s"] = 1; },
      [](State& state) { state.open = {Hazard::Overhead}; },
      [](State& state) { state.unread = {"s"}; },
      [](State& state) { state.zone_clear = true; },
      [](State& state) { state.held_since_ms = 0; },
      [](State& state) { state.doubt = Doubt{"1 m", {}}; },
      [](State& state) { state.doubt = Doubt{"1 m", {"10 m"}}; },
      [](State& state) { state.marks = {{"s", "m"}}; },
      [](State& state) { state.failed_step = "s"; },
      [](State& state) { state.abandoned = true; },
      [](State& state) { state.boot = "k"; },
      [](State& state) { state.old_boots = {"s"}; },
      [](State& state) { state.at_ms = 1; },
      [](State& state) { state.tries = {Try{}}; },
      [](State& state) { state.tries = {Try{.outcome = Outcome::Doubted}}; },
      [](State& state) { state.tries = {Try{.counts = false}}; },
      [](State& state) { state.tries = {Try{.result = "1 m"}}; },
      [](State& state) { state.tries = {Try{.reason = "r"}}; },
      [](State& state) { state.tries = {Try{.step = "s"}}; },
      [](State& state) { state.tries = {Try{.rounds = {{"s", 0}}}}; },
      [](State& state) { state.tries = {Try{.event = {.sure = true}}}; },
      [](State& state) { state.tries = {Try{.event = {.wall_utc_ms = 0}}}; },
  };
  std::set<std::string> bytes;
  for (const auto& change : changes) {
    State state;
    change(state);
    EXPECT_TRUE(bytes.insert(writeState(state)).second) << writeState(state);
  }
}

// A procedure that the linter would refuse must still give states or errors only.
TEST(JournalTest, ProceduresWithFindingsNeverCrashTheRunner) {
  const auto rows =
      nlohmann::ordered_json::parse(samples::fileText("tests/engine/procedures/files/spoiled.json"));
  unsigned seed = 0;
  for (const auto& row : rows) {
    Technician technician(samples::procedureOf(samples::patched(samples::everythingText(), row[1].dump())),
                          row[1].dump().find("/variants") == std::string::npos ? "typed" : "");
    const Technician whole = Technician::onEverything();
    technician.options.completed = whole.options.completed;
    technician.options.completed.push_back({"everything", 0});
    technician.options.entries = whole.options.entries;
    technician.says = whole.says;
    Chance chance(seed++);
    for (unsigned round = 0; round < cases(80) && !hasEnded(technician.state().phase); ++round) {
      technician.tell(chance.next(technician));
      EXPECT_FALSE(writeState(technician.state()).empty());
    }
  }
}

}  // namespace
}  // namespace hingepin::procedures
