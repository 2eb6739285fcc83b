// SPDX-License-Identifier: Apache-2.0
#include "engine/procedures/runner.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <limits>

#include "tests/engine/procedures/technician.h"

namespace hingepin::procedures {
namespace {

using samples::kHash;
using samples::patched;
using samples::procedureOf;
using samples::Technician;
using testing::Contains;
using testing::ElementsAre;
using testing::IsEmpty;

TEST(RunnerTest, HonestWorkEndsDoneInEveryVariant) {
  for (const std::string variant : {"own-routine", "typed", "logged"}) {
    SCOPED_TRACE(variant);
    Technician technician = Technician::onEverything(variant);
    EXPECT_TRUE(technician.work());
    EXPECT_EQ(technician.state().phase, Phase::Done);
    EXPECT_THAT(technician.state().open, IsEmpty());
    EXPECT_EQ(technician.counting("shown"), 3U);
    EXPECT_EQ(technician.counting("pressure"), variant == "typed" ? 4U : 0U);
    EXPECT_EQ(technician.tell(EventType::Resume), "job-ended");
  }
}

TEST(RunnerTest, ExampleOfTheDescriptionRunsToItsEnd) {
  Technician technician(procedureOf(samples::exampleText()));
  technician.options.entries = {{"test-mass", "2 t"}};
  technician.options.completed = {{"walk-round", 1000}};
  technician.says = {{"oil", "131 [degF]"}, {"shown", "2010 kg"}};
  EXPECT_TRUE(technician.work());
  EXPECT_EQ(technician.state().phase, Phase::Done);
}

TEST(RunnerTest, StartNeedsRolePrerequisitesEntriesAndVariant) {
  const auto refusal = [](auto change) {
    Technician technician = Technician::onEverything();
    change(technician);
    return technician.tell(technician.honest());
  };
  EXPECT_EQ(refusal([](Technician&) {}), "");
  EXPECT_EQ(refusal([](Technician& each) { each.role = "operator"; }), "role-may-not");
  EXPECT_EQ(refusal([](Technician& each) { each.who = ""; }), "not-in-charge");
  EXPECT_EQ(refusal([](Technician& each) { each.options.completed.clear(); }), "prerequisite-missing");
  EXPECT_EQ(refusal([](Technician& each) { each.options.completed[0].age_ms = 12 * 3'600'000 + 1; }),
            "prerequisite-too-old");
  EXPECT_EQ(refusal([](Technician& each) { each.options.completed[0].age_ms.reset(); }),
            "prerequisite-too-old");
  EXPECT_EQ(refusal([](Technician& each) { each.options.entries.clear(); }), "entry-missing");
  EXPECT_EQ(refusal([](Technician& each) { each.options.entries["upper-height"] = "3 kg"; }),
            "unit-wrong-dimension");
  EXPECT_EQ(refusal([](Technician& each) { each.options.entries["dream"] = "3 kg"; }), "entry-unknown");
  EXPECT_EQ(refusal([](Technician& each) { each.options.variant = "dreamt"; }), "variant-unknown");
}

TEST(RunnerTest, MovementNeedsAPersonsPressAtEveryTry) {
  Technician technician = Technician::onEverything();
  ASSERT_TRUE(technician.workUntil("go-level"));
  EXPECT_EQ(technician.asked().ask, Ask::ZoneClear);
  EXPECT_EQ(technician.tell(EventType::Answer, "go-level", "done"), "zone-not-clear");
  Event by_itself = technician.event(EventType::ZoneClear, "go-level");
  by_itself.how = How::Live;
  EXPECT_EQ(technician.tell(by_itself), "press-needs-a-person");
  EXPECT_EQ(technician.tell(EventType::ZoneClear, "go-level"), "");
  EXPECT_EQ(technician.tell(EventType::Answer, "go-level", "failed"), "");
  EXPECT_EQ(technician.asked().ask, Ask::ZoneClear);
  EXPECT_EQ(technician.tell(EventType::Answer, "go-level", "done"), "zone-not-clear");
  EXPECT_EQ(technician.tell(EventType::ZoneClear, "go-level"), "");
  Event reached = technician.event(EventType::Answer, "go-level", "done");
  reached.how = How::Live;
  EXPECT_EQ(technician.tell(reached), "");
}

TEST(RunnerTest, CautionIsPassedByAPersonOnly) {
  Technician technician = Technician::onEverything();
  ASSERT_EQ(technician.tell(technician.honest()), "");
  Event press = technician.honest();
  ASSERT_EQ(press.type, EventType::Acknowledge);
  press.how = How::Live;
  EXPECT_EQ(technician.tell(press), "press-needs-a-person");
  press.how = How::Typed;
  press.who = "key-of-stranger";
  EXPECT_EQ(technician.tell(press), "not-in-charge");
}

TEST(RunnerTest, SecondPressOnAStepThatIsPastIsRefused) {
  Technician technician = Technician::onEverything();
  ASSERT_TRUE(technician.workUntil("engine-off"));
  EXPECT_EQ(technician.tell(EventType::Answer, "engine-off", "yes"), "");
  EXPECT_EQ(technician.tell(EventType::Answer, "engine-off", "yes"), "wrong-step");
  EXPECT_EQ(technician.tell(EventType::Answer, "fit-support", "perhaps"), "answer-unknown");
}

TEST(RunnerTest, HoldTakesItsTimeAndBeginsAnewAfterARestart) {
  Technician technician = Technician::onEverything();
  ASSERT_TRUE(technician.workUntil("settle"));
  EXPECT_EQ(technician.tell(EventType::Answer, "settle", "done"), "hold-not-begun");
  ASSERT_EQ(technician.tell(EventType::Begin, "settle"), "");
  technician.now_ms += 9'999;
  EXPECT_EQ(technician.tell(EventType::Answer, "settle", "done"), "hold-too-short");
  technician.boot = "boot-2";
  technician.now_ms = 50'000;
  EXPECT_EQ(technician.tell(EventType::Answer, "settle", "done"), "job-paused");
  ASSERT_EQ(technician.tell(EventType::Resume), "");
  while (technician.asked().ask == Ask::Acknowledge) ASSERT_EQ(technician.tell(technician.honest()), "");
  EXPECT_EQ(technician.asked().ask, Ask::Begin);
  EXPECT_FALSE(technician.asked().by_itself);
  ASSERT_EQ(technician.tell(EventType::Begin, "settle"), "");
  technician.now_ms += 10'000;
  EXPECT_EQ(technician.tell(EventType::Answer, "settle", "done"), "");
}

TEST(RunnerTest, HoldBeginsByItselfRightAfterAPose) {
  Technician technician = Technician::onEverything();
  ASSERT_TRUE(technician.workUntil("settle"));
  EXPECT_FALSE(technician.asked().by_itself);
  State state = technician.state();
  Try posed;
  posed.event = {.type = EventType::Answer, .about = "go-level", .answer = "done"};
  state.tries.push_back(posed);
  EXPECT_TRUE(prompt(technician.procedure(), state).by_itself);
  state.tries.back().outcome = Outcome::Failed;
  EXPECT_FALSE(prompt(technician.procedure(), state).by_itself);
}

TEST(RunnerTest, NobodyCanTurnTheClockBack) {
  Technician technician = Technician::onEverything();
  ASSERT_TRUE(technician.workUntil("oil"));
  technician.now_ms -= 5'000;
  EXPECT_EQ(technician.read("oil", "55 Cel"), "time-went-back");
  technician.now_ms += 5'000;
  technician.boot = "boot-2";
  ASSERT_EQ(technician.tell(EventType::Resume), "");
  technician.boot = "boot-1";
  technician.now_ms += 60'000;
  EXPECT_EQ(technician.tell(EventType::Interrupt), "time-went-back");
}

TEST(RunnerTest, WhatNoJournalCanHoldIsRefused) {
  const Technician fresh = Technician::onEverything();
  const Event start = fresh.honest();
  const auto refusalOf = [&](const Event& event) {
    Technician technician = fresh;
    const std::string refusal = technician.tell(event);
    EXPECT_EQ(readEvent(writeEvent(event), "journal").has_value(), refusal.empty()) << writeEvent(event);
    return refusal;
  };
  for (const std::int64_t ms : {kMostInteger, kMostInteger + 1, std::numeric_limits<std::int64_t>::max(),
                                -kMostInteger, -kMostInteger - 1, std::numeric_limits<std::int64_t>::min()}) {
    const std::string expected = ms >= -kMostInteger && ms <= kMostInteger ? "" : "time-malformed";
    Event event = start;
    event.wall_utc_ms = ms;
    EXPECT_EQ(refusalOf(event), expected) << ms;
    event = start;
    event.start->completed.push_back({.procedure = "other", .age_ms = ms});
    EXPECT_EQ(refusalOf(event), expected) << ms;
    if (ms < 0) continue;
    event = start;
    event.at_ms = ms;
    EXPECT_EQ(refusalOf(event), expected) << ms;
  }
}

TEST(RunnerTest, WallClockChangesNothingButItself) {
  Technician early = Technician::onEverything();
  Technician late = Technician::onEverything();
  while (!hasEnded(early.state().phase)) {
    Event event = early.honest();
    early.now_ms = late.now_ms = event.at_ms + 1500;
    event.wall_utc_ms = 1;
    ASSERT_EQ(early.tell(event), "");
    event.wall_utc_ms = -4'000'000'000'000;
    ASSERT_EQ(late.tell(event), "");
    EXPECT_EQ(early.asked().about, late.asked().about);
  }
  EXPECT_EQ(late.state().phase, Phase::Done);
}

TEST(RunnerTest, ReadingTooOldIsReadAgainOnTheSpot) {
  Technician technician = Technician::onEverything();
  ASSERT_TRUE(technician.workUntil("oil-known"));
  technician.now_ms += 16 * 60'000;  // it expires after 15 min
  ASSERT_EQ(technician.tell(EventType::Evaluate, "oil-known"), "");
  EXPECT_EQ(technician.asked().about, "oil");
  EXPECT_EQ(technician.asked().ask, Ask::Reading);
  ASSERT_EQ(technician.read("oil", "52 Cel"), "");
  EXPECT_EQ(technician.asked().about, "oil-known");
  ASSERT_EQ(technician.tell(EventType::Evaluate, "oil-known"), "");
  EXPECT_EQ(technician.asked().about, "lift");
  EXPECT_EQ(technician.counting("oil"), 1U);
  EXPECT_TRUE(technician.work());
  EXPECT_EQ(technician.state().phase, Phase::Done);
}

TEST(RunnerTest, ReadingOfUnknownAgeAfterARestartIsReadAgain) {
  Technician technician = Technician::onEverything();
  ASSERT_TRUE(technician.workUntil("oil-known"));
  technician.boot = "boot-2";
  technician.now_ms = 10;
  ASSERT_EQ(technician.tell(EventType::Interrupt), "");
  ASSERT_TRUE(technician.workUntil("oil-known"));
  ASSERT_EQ(technician.tell(EventType::Evaluate, "oil-known"), "");
  EXPECT_EQ(technician.asked().about, "oil");
}

TEST(RunnerTest, ExpiredReadingOfAPoseGoesBackToThePose) {
  Technician technician = Technician::onEverything();
  ASSERT_TRUE(technician.workUntil("angle-agrees"));
  technician.now_ms += 31 * 60'000;
  ASSERT_EQ(technician.tell(EventType::Evaluate, "angle-agrees"), "");
  EXPECT_EQ(technician.asked().about, "go-level");
  EXPECT_EQ(technician.asked().ask, Ask::ZoneClear);
  EXPECT_EQ(technician.counting("angle-true"), 0U);
  ASSERT_TRUE(technician.asked().after_failure.has_value());
  EXPECT_EQ(technician.state().tries[*technician.asked().after_failure].outcome, Outcome::Expired);
  EXPECT_TRUE(technician.work());
  EXPECT_EQ(technician.state().phase, Phase::Done);
}

TEST(RunnerTest, GoingBackKeepsTheEarlierTriesAndCountsOnlyTheNew) {
  Technician technician = Technician::onEverything();
  ASSERT_TRUE(technician.workUntil("lift"));
  int lift = 0;
  while (technician.asked().about != "spread") {
    if (technician.asked().about == "shown")
      technician.says["shown"] = std::to_string(2000 + 100 * lift++) + " kg";
    const Event next = technician.honest();
    technician.now_ms = next.at_ms + 1500;
    ASSERT_EQ(technician.tell(next), "");
  }
  EXPECT_EQ(technician.counting("shown"), 3U);
  ASSERT_EQ(technician.tell(EventType::Evaluate, "spread"), "");
  EXPECT_EQ(technician.state().tries.back().outcome, Outcome::Failed);
  // Sample standard deviation of 2000, 2100, 2200.
  EXPECT_EQ(technician.state().tries.back().result, "100 kg");
  EXPECT_EQ(technician.asked().about, "lift");
  EXPECT_EQ(technician.counting("shown"), 0U);
  technician.says["shown"] = "2005 kg";
  EXPECT_TRUE(technician.work());
  EXPECT_EQ(technician.state().phase, Phase::Done);
  EXPECT_EQ(technician.counting("shown"), 3U);
  std::size_t readings = 0;
  for (const Try& each : technician.state().tries) readings += each.event.about == "shown" ? 1U : 0U;
  EXPECT_EQ(readings, 6U);
}

TEST(RunnerTest, GoingBackWithinARepeatLeavesTheEarlierRoundsAlone) {
  Technician technician(
      procedureOf(patched(
          samples::everythingText(),
          R"([{"op":"add","path":"/steps/30","value":{"id":"sane","kind":"confirm","text":"t","on_failure":{"do":"go-back","to":"shown","at_most":1}}}])")),
      "typed");
  const Technician whole = Technician::onEverything();
  technician.options = whole.options;
  technician.says = whole.says;
  ASSERT_TRUE(technician.workUntil("sane"));
  ASSERT_EQ(technician.tell(EventType::Answer, "sane", "yes"), "");
  ASSERT_TRUE(technician.workUntil("sane"));
  EXPECT_EQ(technician.counting("shown"), 2U);
  ASSERT_EQ(technician.tell(EventType::Answer, "sane", "no"), "");
  EXPECT_EQ(technician.asked().about, "shown");
  EXPECT_EQ(technician.counting("shown"), 1U);
  EXPECT_TRUE(technician.work());
  EXPECT_EQ(technician.state().phase, Phase::Done);
  EXPECT_EQ(technician.counting("shown"), 3U);
}

TEST(RunnerTest, InnerRepeatIsDoneInFullInEachRoundOfTheOuter) {
  Technician technician(
      procedureOf(patched(samples::everythingText(),
                          R"([{"op":"add","path":"/steps/29/repeat","value":{"from":"shown","times":2}}])")),
      "typed");
  const Technician whole = Technician::onEverything();
  technician.options = whole.options;
  technician.says = whole.says;
  EXPECT_TRUE(technician.work());
  EXPECT_EQ(technician.state().phase, Phase::Done);
  EXPECT_EQ(technician.counting("shown"), 6U);
}

TEST(RunnerTest, CheckThatFailsTooOftenEndsWithMakingSafeAndTheTag) {
  Technician technician = Technician::onEverything();
  technician.says["edge"] = "3.9 m";  // the stop should be at 3.42 m
  EXPECT_TRUE(technician.work());
  EXPECT_EQ(technician.state().phase, Phase::Failed);
  EXPECT_EQ(technician.state().failed_step, "stop-height");
  EXPECT_EQ(technician.journal().back().about, "tag");
  std::vector<std::string> last;
  for (std::size_t index = technician.journal().size() - 4; index < technician.journal().size(); ++index) {
    last.push_back(technician.journal()[index].about);
  }
  // The boom is down already, so nobody is asked to move it.
  EXPECT_THAT(last, ElementsAre("stop-height", "safe-off", "safe-photo", "tag"));
}

TEST(RunnerTest, AMeasurementOfTheLinkageMayBeLeftOut) {
  Technician technician = Technician::onEverything();
  ASSERT_TRUE(technician.workUntil("survey-distance"));
  EXPECT_THAT(technician.asked().answers, ElementsAre("skipped"));
  EXPECT_EQ(technician.tell(EventType::Answer, "survey-distance", "done"), "answer-unknown");
  ASSERT_EQ(technician.tell(EventType::Answer, "survey-distance", "skipped"), "");
  EXPECT_EQ(technician.counting("survey-distance"), 0U);
  EXPECT_EQ(technician.asked().back_to, "survey-distance");  // both are near the linkage, at rest
  EXPECT_TRUE(technician.work());
  EXPECT_EQ(technician.state().phase, Phase::Done);
}

TEST(RunnerTest, WhatDisagreesInASurveyIsSetAsideAndMeasuredAgainOnTheSpot) {
  Technician technician = Technician::onEverything();
  ASSERT_TRUE(technician.workUntil("surveyed"));
  std::size_t wrong = 0;
  for (std::size_t index = 0; index < technician.state().tries.size(); ++index)
    if (technician.state().tries[index].event.about == "survey-distance") wrong = index;
  technician.verdicts.push_back({.reason = "wrong", .step = "survey-distance", .set_aside = wrong});
  ASSERT_EQ(technician.tell(EventType::Evaluate, "surveyed"), "");
  EXPECT_FALSE(technician.state().tries[wrong].counts);
  EXPECT_EQ(technician.state().tries.back().step, "survey-distance");
  EXPECT_EQ(technician.asked().about, "survey-distance");
  EXPECT_EQ(technician.counting("survey-angle"), 1U);
  ASSERT_EQ(technician.read("survey-distance", "2540 mm"), "");
  EXPECT_EQ(technician.asked().about, "surveyed");
  EXPECT_EQ(technician.counting("survey-distance"), 1U);
}

TEST(RunnerTest, WhatNeedsAPoseIsSetAsideAndTheRestJudgedAnew) {
  Technician technician = Technician::onEverything();
  ASSERT_TRUE(technician.workUntil("surveyed"));
  const std::size_t last = technician.state().tries.size() - 1;
  ASSERT_EQ(technician.state().tries[last].event.about, "survey-angle");
  technician.verdicts.push_back({.reason = "wrong", .step = "survey-angle", .set_aside = last});
  ASSERT_EQ(technician.tell(EventType::Evaluate, "surveyed"), "");
  EXPECT_EQ(technician.counting("survey-angle"), 0U);
  EXPECT_EQ(technician.asked().about, "surveyed");
}

TEST(RunnerTest, WhatWasOnlyReadCanBeDoneAgainAndTheFirstTryStays) {
  Technician technician = Technician::onEverything();
  int went_back = 0;
  std::set<std::string> visited;
  while (!hasEnded(technician.state().phase)) {
    const Prompt asked = technician.asked();
    if (!asked.back_to.empty() && visited.insert(asked.back_to + " " + asked.about).second) {
      const Step* const step = findStep(technician.procedure(), asked.back_to);
      ASSERT_NE(step, nullptr);
      EXPECT_FALSE(step->moves || step->second_person || !step->opens.empty() || !step->closes.empty())
          << step->id;
      const std::set<Hazard> open = technician.state().open;
      const std::size_t tries = technician.state().tries.size();
      const std::size_t counted = technician.counting(step->id);
      ASSERT_EQ(technician.tell(EventType::GoBack, asked.back_to), "");
      EXPECT_EQ(technician.state().tries.size(), tries + 1);
      EXPECT_EQ(technician.state().open, open);
      if (step->kind == StepKind::Reading) {
        EXPECT_EQ(technician.counting(step->id), counted - 1) << step->id;
      }
      EXPECT_EQ(technician.asked().about, step->id);
      ++went_back;
    }
    technician.now_ms += 1000;
    const Event next = technician.honest();
    technician.now_ms = std::max(technician.now_ms, next.at_ms);
    ASSERT_EQ(technician.tell(next), "");
  }
  EXPECT_EQ(technician.state().failed_step, "");
  EXPECT_EQ(technician.state().phase, Phase::Done);
  EXPECT_GT(went_back, 5);
}

TEST(RunnerTest, NobodyGoesBackOverAMovementOrWhileTheZoneIsPressedClear) {
  Technician technician = Technician::onEverything();
  while (!hasEnded(technician.state().phase)) {
    const Prompt asked = technician.asked();
    if (technician.state().zone_clear) {
      EXPECT_EQ(asked.back_to, "") << asked.about;
    }
    const std::string wanted = asked.back_to;
    for (const Step& step : technician.procedure().steps) {
      if (step.id == wanted) continue;
      Event back = technician.event(EventType::GoBack, step.id);
      EXPECT_FALSE(apply(technician.procedure(), technician.state(), back)) << step.id;
    }
    technician.now_ms += 1000;
    const Event next = technician.honest();
    technician.now_ms = std::max(technician.now_ms, next.at_ms);
    ASSERT_EQ(technician.tell(next), "");
  }
}

TEST(RunnerTest, AbandonedJobLowersTheBoomAndHangsTheTag) {
  Technician technician = Technician::onEverything();
  ASSERT_TRUE(technician.workUntil("shown"));
  ASSERT_EQ(technician.tell(EventType::Abandon), "");
  EXPECT_EQ(technician.asked().about, "safe-lower");
  EXPECT_EQ(technician.asked().ask, Ask::ZoneClear);
  ASSERT_EQ(technician.tell(EventType::ZoneClear, "safe-lower"), "");
  ASSERT_EQ(technician.tell(EventType::Answer, "safe-lower", "failed"), "");
  EXPECT_EQ(technician.asked().about, "safe-lower");
  EXPECT_EQ(technician.tell(EventType::Abandon), "event-not-awaited");
  EXPECT_TRUE(technician.work());
  EXPECT_EQ(technician.state().phase, Phase::Abandoned);
  EXPECT_THAT(technician.state().open, IsEmpty());
}

TEST(RunnerTest, ColdOilGoesOnWithItsMarkAfterTheLastTry) {
  Technician technician = Technician::onEverything();
  technician.says["oil"] = "31 Cel";
  EXPECT_TRUE(technician.work());
  EXPECT_EQ(technician.state().phase, Phase::Done);
  EXPECT_THAT(technician.marks(), Contains("oil-too-cold"));
  EXPECT_EQ(technician.counting("oil"), 1U);
}

TEST(RunnerTest, InterruptionDropsThePressAndShowsTheCautionsOfOpenHazardsAgain) {
  Technician technician = Technician::onEverything();
  ASSERT_TRUE(technician.workUntil("down"));
  ASSERT_EQ(technician.tell(EventType::ZoneClear, "down"), "");
  ASSERT_EQ(technician.tell(EventType::Interrupt), "");
  EXPECT_EQ(technician.asked().ask, Ask::Resume);
  EXPECT_EQ(technician.tell(EventType::Answer, "down", "done"), "job-paused");
  ASSERT_EQ(technician.tell(EventType::Resume), "");
  EXPECT_EQ(technician.asked().caution, "boom-moves");
  ASSERT_EQ(technician.tell(EventType::Acknowledge, "boom-moves"), "");
  EXPECT_EQ(technician.asked().caution, "oil-pressed");
  ASSERT_EQ(technician.tell(EventType::Acknowledge, "oil-pressed"), "");
  EXPECT_EQ(technician.asked().ask, Ask::ZoneClear);
}

TEST(RunnerTest, AnotherPersonTakesOverAndTheFirstIsNoLongerInCharge) {
  Technician technician = Technician::onEverything();
  ASSERT_TRUE(technician.workUntil("engine-off"));
  technician.who = "key-of-another";
  EXPECT_EQ(technician.tell(EventType::Answer, "engine-off", "yes"), "not-in-charge");
  ASSERT_EQ(technician.tell(EventType::TakeOver), "");
  EXPECT_EQ(technician.asked().ask, Ask::Acknowledge);
  ASSERT_TRUE(technician.workUntil("engine-off"));
  technician.who = "key-of-technician";
  EXPECT_EQ(technician.tell(EventType::Answer, "engine-off", "yes"), "not-in-charge");
  technician.who = "key-of-another";
  EXPECT_TRUE(technician.work());
  EXPECT_EQ(technician.state().person, "key-of-another");
}

TEST(RunnerTest, LoneWorkFollowsTheYardsPolicy) {
  const auto answer = [](LoneWork policy, auto change) {
    Technician technician = Technician::onEverything();
    technician.options.lone_work = policy;
    EXPECT_TRUE(technician.workUntil("locked"));
    Event event = technician.honest();
    change(event);
    const std::string refusal = technician.tell(event);
    if (!refusal.empty()) return refusal;
    const std::vector<std::string> marks = technician.marks();
    EXPECT_EQ(technician.asked().about, "locked-by-two");
    EXPECT_TRUE(technician.work());
    EXPECT_EQ(technician.state().phase, Phase::Done);
    return marks.empty() ? std::string("taken") : marks.front();
  };
  const auto as_is = [](Event&) {};
  const auto same = [](Event& event) {
    event.who = "key-of-technician";
    event.role = "technician";
  };
  const auto photo = [](Event& event) { event.hashes = {kHash}; };
  const auto alone = [&](Event& event) {
    same(event);
    event.answer = "unconfirmed";
  };
  EXPECT_EQ(answer(LoneWork::NotAllowed, as_is), "taken");
  EXPECT_EQ(answer(LoneWork::NotAllowed, [](Event& event) { event.device = "phone-1"; }),
            "second-person-on-same-phone");
  EXPECT_EQ(answer(LoneWork::NotAllowed, [](Event& event) { event.role = "customer"; }), "role-may-not");
  EXPECT_EQ(answer(LoneWork::NotAllowed, same), "second-person-is-the-first");
  EXPECT_EQ(answer(LoneWork::NotAllowed, photo), "lone-work-not-allowed");
  EXPECT_EQ(answer(LoneWork::NotAllowed, alone), "lone-work-not-allowed");
  EXPECT_EQ(answer(LoneWork::PhotoFromAfar, photo), "second-person-from-afar");
  EXPECT_EQ(answer(LoneWork::PhotoFromAfar, alone), "lone-work-not-allowed");
  EXPECT_EQ(answer(LoneWork::Unconfirmed, photo), "second-person-from-afar");
  EXPECT_EQ(answer(LoneWork::Unconfirmed, alone), "second-person-missing");
}

TEST(RunnerTest, SlippedDecimalPointAndWrongUnitAreDoubtedAndKept) {
  Technician technician = Technician::onEverything();
  ASSERT_TRUE(technician.workUntil("pressure"));
  ASSERT_EQ(technician.read("pressure", "1240 bar", How::Monitor), "");
  Prompt asked = technician.asked();
  EXPECT_EQ(asked.ask, Ask::Doubt);
  EXPECT_THAT(asked.suggestions, testing::IsSupersetOf({"124 bar", "1240 [psi]", "1240 kPa"}));
  EXPECT_EQ(technician.counting("pressure"), 0U);
  // Being sure of another number confirms nothing.
  ASSERT_EQ(technician.read("pressure", "1250 bar", How::Monitor, true), "");
  EXPECT_EQ(technician.asked().ask, Ask::Doubt);
  ASSERT_EQ(technician.read("pressure", "124 bar", How::Monitor), "");
  EXPECT_EQ(technician.counting("pressure"), 1U);
  EXPECT_THAT(technician.marks(), IsEmpty());
  ASSERT_TRUE(technician.workUntil("pressure"));
  ASSERT_EQ(technician.read("pressure", "1240 bar", How::Monitor), "");
  ASSERT_EQ(technician.read("pressure", "1240 bar", How::Monitor, true), "");
  EXPECT_THAT(technician.marks(), ElementsAre("implausible-confirmed"));
  EXPECT_EQ(technician.counting("pressure"), 2U);
  std::size_t kept = 0;
  for (const Try& each : technician.state().tries) kept += each.event.about == "pressure" ? 1U : 0U;
  EXPECT_EQ(kept, 5U);
  EXPECT_EQ(technician.read("edge", "1 m"), "wrong-step");
}

TEST(RunnerTest, ReadingOfAnotherDimensionOrWithoutAUnitIsRefused) {
  Technician technician = Technician::onEverything();
  ASSERT_TRUE(technician.workUntil("pressure"));
  EXPECT_EQ(technician.read("pressure", "88 kg"), "unit-wrong-dimension");
  EXPECT_EQ(technician.read("pressure", "88"), "quantity-malformed");
  EXPECT_EQ(technician.read("pressure", "88,5 bar"), "quantity-malformed");
  EXPECT_EQ(technician.read("pressure", "1276 [psi]"), "");
}

TEST(RunnerTest, MonitorIsNoReferenceForItself) {
  Technician technician = Technician::onEverything();
  ASSERT_TRUE(technician.workUntil("angle-true"));
  EXPECT_EQ(technician.read("angle-true", "3 deg", How::Monitor), "reading-not-independent");
  EXPECT_EQ(technician.read("angle-true", "3 deg", How::Typed), "");
}

TEST(RunnerTest, AgreementIsAlsoJudgedAsAShareOfTheReference) {
  const auto phase = [](const std::string& shown) {
    Technician technician(procedureOf(samples::exampleText()));
    technician.options.entries = {{"test-mass", "2000 kg"}};
    technician.options.completed = {{"walk-round", 1000}};
    technician.says = {{"oil", "55 Cel"}, {"shown", shown}};
    EXPECT_TRUE(technician.work());
    return technician.state().phase;
  };
  EXPECT_EQ(phase("2020 kg"), Phase::Done);  // 1 % of 2000 kg, the limit itself
  EXPECT_EQ(phase("1980 kg"), Phase::Done);
  EXPECT_EQ(phase("2021 kg"), Phase::Failed);
}

TEST(RunnerTest, LimitOfTheUnitTakesThePlaceOfTheDefault) {
  Technician technician = Technician::onEverything();
  technician.options.entries["oil-minimum"] = "140 [degF]";  // 60 Cel
  ASSERT_TRUE(technician.workUntil("oil"));
  ASSERT_EQ(technician.read("oil", "59.9 Cel"), "");
  EXPECT_EQ(technician.state().tries.back().outcome, Outcome::Failed);
  ASSERT_EQ(technician.read("oil", "60 Cel"), "");
  EXPECT_EQ(technician.state().tries.back().outcome, Outcome::Passed);
}

TEST(RunnerTest, FitIsMeasuredByTheFunctionHandedIn) {
  Technician technician = Technician::onEverything("logged");
  std::size_t seen = 0;
  technician.measure = [&](const Check& check, std::span<const Observation> values) -> Expected<double> {
    EXPECT_EQ(check.fit, Fit::LiftPressure);
    seen = values.size();
    EXPECT_THAT(values.front().hashes, ElementsAre(kHash));
    return 1.5e5;
  };
  ASSERT_TRUE(technician.workUntil("fits"));
  ASSERT_EQ(technician.tell(EventType::Evaluate, "fits"), "");
  EXPECT_EQ(seen, 1U);
  EXPECT_EQ(technician.state().tries.back().result, "1.5 bar");
  EXPECT_EQ(technician.state().tries.back().outcome, Outcome::Passed);
}

TEST(RunnerTest, FitThatCannotBeMadeFailsTheCheckAndABrokenOneLeavesTheJob) {
  Technician technician = Technician::onEverything("logged");
  ASSERT_TRUE(technician.workUntil("fits"));
  technician.measure = {};
  EXPECT_EQ(technician.tell(EventType::Evaluate, "fits"), "fit-not-at-hand");
  technician.measure = [](const Check&, std::span<const Observation>) -> Expected<double> {
    return fail(ErrorKind::NotFound, "log-gone");
  };
  EXPECT_EQ(technician.tell(EventType::Evaluate, "fits"), "log-gone");
  technician.measure = [](const Check&, std::span<const Observation>) -> Expected<double> {
    return fail(ErrorKind::Insufficient, "nothing-in-the-weigh-window");
  };
  EXPECT_EQ(technician.tell(EventType::Evaluate, "fits"), "");
  EXPECT_EQ(technician.state().tries.back().reason, "nothing-in-the-weigh-window");
  EXPECT_EQ(technician.asked().about, "slow");
}

TEST(RunnerTest, PassNeedsItsLogAndEvidenceItsHash) {
  Technician technician = Technician::onEverything("logged");
  ASSERT_TRUE(technician.workUntil("settings-photo"));
  EXPECT_EQ(technician.tell(EventType::Answer, "settings-photo", "taken"), "evidence-missing");
  EXPECT_EQ(technician.tell(EventType::Answer, "settings-photo", "skipped"), "answer-unknown");
  Event short_hash = technician.event(EventType::Answer, "settings-photo", "taken");
  short_hash.hashes = {"abc"};
  EXPECT_EQ(technician.tell(short_hash), "hash-malformed");
  ASSERT_TRUE(technician.workUntil("slow"));
  ASSERT_EQ(technician.tell(EventType::ZoneClear, "slow"), "");
  EXPECT_EQ(technician.tell(EventType::Answer, "slow", "done"), "evidence-missing");
}

TEST(RunnerTest, OperatorWhoIsAbsentOrRefusesIsRecorded) {
  for (const std::string outcome : {"absent", "refused"}) {
    Technician technician = Technician::onEverything();
    ASSERT_TRUE(technician.workUntil("shown-to-operator"));
    EXPECT_EQ(technician.tell(EventType::Answer, "shown-to-operator", "signed"), "evidence-missing");
    ASSERT_EQ(technician.tell(EventType::Answer, "shown-to-operator", outcome), "");
    EXPECT_THAT(technician.marks(), ElementsAre("signer-" + outcome));
    EXPECT_TRUE(technician.work());
    EXPECT_EQ(technician.state().phase, Phase::Done);
  }
}

TEST(RunnerTest, WordsGetTheNumbersOfTheStep) {
  Technician technician = Technician::onEverything();
  ASSERT_TRUE(technician.workUntil("oil"));
  const Prompt asked = technician.asked();
  EXPECT_EQ(asked.text.code, "oil");
  ASSERT_EQ(asked.text.values.size(), 2U);
  EXPECT_EQ(asked.text.values[0].first, "low");
  EXPECT_EQ(std::get<Amount>(asked.text.values[0].second).ucum, "Cel");
  EXPECT_NEAR(std::get<Amount>(asked.text.values[0].second).value, 40.0, 1e-12);  // rounding of the offset
  ASSERT_TRUE(technician.workUntil("shown"));
  const Message words = technician.asked().text;
  EXPECT_THAT(words.values, Contains(testing::Field(&std::pair<std::string, MessageValue>::first, "times")));
}

}  // namespace
}  // namespace hingepin::procedures
