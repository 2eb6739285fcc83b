// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <span>

#include "tests/engine/procedures/library_files.h"
#include "tests/engine/procedures/technician.h"
#include "tests/reference/energy_control.h"

namespace hingepin::procedures {
namespace {

using reference::EnergyControlParagraph;
using reference::EnergyPart;
using samples::kHash;
using samples::libraryProcedure;
using samples::libraryWords;
using samples::Technician;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr std::string_view kGeneralIndustryRule = "1910.147";
const std::string kNotCovered = "It does not cover " + std::string(reference::kNotCoveredByGeneralIndustry);

bool cites(const Step& step, std::string_view paragraph) {
  return std::ranges::find(step.cites, paragraph) != step.cites.end();
}

/// Where on a way through a procedure each step stands that cites a paragraph.
std::vector<std::size_t> placesOf(const Procedure& procedure, const std::string& way,
                                  std::string_view paragraph) {
  std::vector<std::size_t> places;
  std::size_t place = 0;
  for (const Step& step : procedure.steps) {
    if (!hasStep(way, step)) continue;
    if (cites(step, paragraph)) places.push_back(place);
    ++place;
  }
  return places;
}

/// That every paragraph of a part is cited, and those that the rule orders are met in its order.
void expectInOrder(const std::string& id, EnergyPart part) {
  const Procedure procedure = libraryProcedure(id);
  for (const std::string& way : samples::waysOf(procedure)) {
    std::size_t earliest = 0;
    int order = 0;
    std::size_t latest = 0;
    for (const EnergyControlParagraph& each : reference::kGeneralIndustry) {
      if (each.part != part) continue;
      const std::vector<std::size_t> places = placesOf(procedure, way, each.paragraph);
      ASSERT_FALSE(places.empty()) << id << " " << way << ": " << each.paragraph << ", " << each.gist;
      if (each.order == 0) continue;
      if (each.order != order) earliest = latest;
      order = each.order;
      EXPECT_GE(places.front(), earliest) << id << " " << way << ": " << each.paragraph;
      latest = std::max(latest, places.back());
    }
  }
}

TEST(LockoutTest, EachParagraphOfGeneralIndustryIsCoveredInItsSequence) {
  expectInOrder("lockout", EnergyPart::Lockout);
  expectInOrder("lockout-removal", EnergyPart::Removal);
  expectInOrder("lockout-removal", EnergyPart::Test);
  const Procedure lockout = libraryProcedure("lockout");
  for (const EnergyControlParagraph& each : reference::kGeneralIndustry) {
    if (each.part != EnergyPart::Group && each.part != EnergyPart::Before) continue;
    EXPECT_FALSE(placesOf(lockout, "boom-down", each.paragraph).empty()) << each.paragraph;
  }
}

TEST(LockoutTest, PeopleAreToldAfterTheLockIsOffAndBeforeTheEngineStarts) {
  const Procedure removal = libraryProcedure("lockout-removal");
  for (const std::string& way : samples::waysOf(removal)) {
    const std::vector<std::size_t> told = placesOf(removal, way, "29 CFR 1910.147(e)(2)(ii)");
    const std::vector<std::size_t> off = placesOf(removal, way, "29 CFR 1910.147(e)(3)");
    const std::vector<std::size_t> on = placesOf(removal, way, "29 CFR 1910.147(f)(1)(iv)");
    EXPECT_LT(off.back(), told.front());
    EXPECT_LT(told.back(), on.front());
  }
}

TEST(LockoutTest, RaisedBoomIsBlockedAsConstructionAndMinesWantIt) {
  const Procedure lockout = libraryProcedure("lockout");
  for (const EnergyControlParagraph& each : reference::kElsewhere) {
    bool blocked = false;
    for (const Step& step : lockout.steps) {
      const bool blocks =
          step.near && std::ranges::find(step.closes, Hazard::RaisedBoom) != step.closes.end();
      blocked = blocked || (blocks && cites(step, each.paragraph));
    }
    EXPECT_TRUE(blocked) << each.paragraph << ", " << each.gist;
  }
  EXPECT_FALSE(placesOf(lockout, "boom-down", "29 CFR 1926.600(a)(3)(i)").empty());
  EXPECT_FALSE(placesOf(lockout, "boom-down", "30 CFR 56.14105").empty());
}

/// The sentences of a text; a paragraph number holds points of its own.
std::vector<std::string> sentencesOf(const std::string& text) {
  std::vector<std::string> sentences;
  std::size_t begin = 0;
  for (std::size_t end = text.find(". "); end != std::string::npos; end = text.find(". ", begin)) {
    sentences.push_back(text.substr(begin, end - begin));
    begin = end + 2;
  }
  sentences.push_back(text.substr(begin));
  return sentences;
}

TEST(LockoutTest, NothingClaimsTheRuleOfGeneralIndustryForConstruction) {
  std::size_t spoken = 0;
  for (const auto& [code, words] : libraryWords()) {
    if (words.find(kGeneralIndustryRule) == std::string::npos) continue;
    ++spoken;
    EXPECT_THAT(words, HasSubstr(kNotCovered)) << code;
    for (const std::string& sentence : sentencesOf(words)) {
      const bool both = sentence.find(kGeneralIndustryRule) != std::string::npos &&
                        (sentence.find("onstruction") != std::string::npos);
      EXPECT_FALSE(both) << code << ": " << sentence;
    }
  }
  EXPECT_GE(spoken, 1U);
  // Whoever is shown a paragraph was told before where it applies.
  for (const std::string id : {"lockout", "lockout-removal"}) {
    const Procedure procedure = libraryProcedure(id);
    bool told = false;
    for (const Step& step : procedure.steps) {
      const auto words = libraryWords().find(step.detail);
      told = told || (words != libraryWords().end() && words->second.find(kNotCovered) != std::string::npos);
      EXPECT_TRUE(told || step.cites.empty()) << id << ": " << step.id;
    }
  }
}

TEST(LockoutTest, HonestWorkEndsDoneWithNothingOpen) {
  for (const std::string id : {"lockout", "lockout-removal"}) {
    for (const std::string way : {"boom-down", "boom-on-support"}) {
      Technician technician(libraryProcedure(id), way);
      EXPECT_TRUE(technician.work());
      EXPECT_EQ(technician.state().phase, Phase::Done) << id << " " << way;
      EXPECT_THAT(technician.state().open, IsEmpty());
      EXPECT_THAT(technician.marks(), IsEmpty());
    }
  }
}

TEST(LockoutTest, LoneWorkFollowsTheYardsPolicy) {
  const auto outcome = [](LoneWork policy, auto change) {
    Technician technician(libraryProcedure("lockout"), "boom-on-support");
    technician.options.lone_work = policy;
    EXPECT_TRUE(technician.workUntil("second"));
    Event event = technician.honest();
    change(event);
    const std::string refusal = technician.tell(event);
    if (!refusal.empty()) return refusal;
    EXPECT_TRUE(technician.work());
    EXPECT_EQ(technician.state().phase, Phase::Done);
    const std::vector<std::string> marks = technician.marks();
    return marks.empty() ? std::string("confirmed") : marks.front();
  };
  const auto beside = [](Event&) {};
  const auto same_phone = [](Event& event) { event.device = "phone-1"; };
  const auto from_afar = [](Event& event) { event.hashes = {kHash}; };
  const auto alone = [](Event& event) {
    event.who = "key-of-technician";
    event.role = "technician";
    event.answer = "unconfirmed";
  };
  const auto both_in_one = [](Event& event) {
    event.who = "key-of-technician";
    event.role = "technician";
  };
  for (const LoneWork policy : {LoneWork::NotAllowed, LoneWork::PhotoFromAfar, LoneWork::Unconfirmed}) {
    EXPECT_EQ(outcome(policy, beside), "confirmed");
    EXPECT_EQ(outcome(policy, same_phone), "second-person-on-same-phone");
    EXPECT_EQ(outcome(policy, both_in_one), "second-person-is-the-first");
  }
  EXPECT_EQ(outcome(LoneWork::NotAllowed, from_afar), "lone-work-not-allowed");
  EXPECT_EQ(outcome(LoneWork::NotAllowed, alone), "lone-work-not-allowed");
  EXPECT_EQ(outcome(LoneWork::PhotoFromAfar, from_afar), "second-person-from-afar");
  EXPECT_EQ(outcome(LoneWork::PhotoFromAfar, alone), "lone-work-not-allowed");
  EXPECT_EQ(outcome(LoneWork::Unconfirmed, from_afar), "second-person-from-afar");
  EXPECT_EQ(outcome(LoneWork::Unconfirmed, alone), "second-person-missing");
}

TEST(LockoutTest, MachineThatStartsAtTheTryIsIsolatedAnewAndTriedAgain) {
  Technician technician(libraryProcedure("lockout"), "boom-down");
  ASSERT_TRUE(technician.workUntil("try-start"));
  ASSERT_EQ(technician.tell(EventType::ZoneClear, "try-start"), "");
  ASSERT_EQ(technician.tell(EventType::Answer, "try-start", "no"), "");
  EXPECT_EQ(technician.asked().about, "isolate");
  EXPECT_TRUE(technician.work());
  EXPECT_EQ(technician.state().phase, Phase::Done);
  std::size_t tries = 0;
  for (const Try& each : technician.state().tries) {
    tries += each.event.about == "try-start" && each.event.type == EventType::Answer ? 1U : 0U;
  }
  EXPECT_EQ(tries, 2U);
}

TEST(LockoutTest, MachineThatStillStartsEndsTaggedNotLockedOut) {
  Technician technician(libraryProcedure("lockout"), "boom-down");
  for (int round = 0; round < 3; ++round) {
    ASSERT_TRUE(technician.workUntil("try-start"));
    ASSERT_EQ(technician.tell(EventType::ZoneClear, "try-start"), "");
    ASSERT_EQ(technician.tell(EventType::Answer, "try-start", "no"), "");
  }
  EXPECT_EQ(technician.state().phase, Phase::MakingSafe);
  EXPECT_TRUE(technician.work());
  EXPECT_EQ(technician.state().phase, Phase::Failed);
  EXPECT_EQ(technician.procedure().tag, "tag-not-locked-out");
  EXPECT_EQ(technician.journal().back().about, "tag");
}

TEST(LockoutTest, SecondPersonWhoSeesAFaultSendsTheWorkBack) {
  Technician technician(libraryProcedure("lockout"), "boom-on-support");
  ASSERT_TRUE(technician.workUntil("second"));
  Event no = technician.honest();
  no.answer = "no";
  ASSERT_EQ(technician.tell(no), "");
  EXPECT_EQ(technician.asked().about, "isolate");
  EXPECT_TRUE(technician.work());
  EXPECT_EQ(technician.state().phase, Phase::Done);
}

TEST(LockoutTest, AbandonedWithTheBoomUpItIsLoweredAndTheOilLetGoBeforeTheTag) {
  Technician technician(libraryProcedure("lockout"), "boom-on-support");
  ASSERT_TRUE(technician.workUntil("support"));
  ASSERT_EQ(technician.tell(EventType::Abandon), "");
  std::vector<std::string> asked;
  while (technician.state().phase == Phase::MakingSafe) {
    if (technician.asked().ask != Ask::ZoneClear) asked.push_back(technician.asked().about);
    ASSERT_EQ(technician.tell(technician.honest()), "");
  }
  EXPECT_THAT(asked,
              ElementsAre("safe-out", "safe-lower-support", "safe-engine-off", "safe-release", "safe-told"));
  EXPECT_TRUE(technician.work());
  EXPECT_EQ(technician.state().phase, Phase::Abandoned);
  EXPECT_THAT(technician.state().open, IsEmpty());
}

TEST(LockoutTest, WithTheSupportFittedNobodyIsAskedToLowerTheBoom) {
  Technician technician(libraryProcedure("lockout"), "boom-on-support");
  ASSERT_TRUE(technician.workUntil("release-on-support"));
  ASSERT_EQ(technician.tell(EventType::Abandon), "");
  std::set<std::string> asked;
  while (technician.state().phase == Phase::MakingSafe) {
    asked.insert(technician.asked().about);
    ASSERT_EQ(technician.tell(technician.honest()), "");
  }
  EXPECT_FALSE(asked.contains("safe-lower-support"));
  EXPECT_TRUE(asked.contains("safe-release"));
}

TEST(LockoutTest, LockOfSomebodyElseStaysOn) {
  Technician technician(libraryProcedure("lockout-removal"), "boom-down");
  ASSERT_TRUE(technician.workUntil("own-lock"));
  ASSERT_EQ(technician.tell(EventType::Answer, "own-lock", "no"), "");
  EXPECT_TRUE(technician.work());
  EXPECT_EQ(technician.state().phase, Phase::Failed);
  EXPECT_EQ(technician.state().failed_step, "own-lock");
}

TEST(LockoutTest, SomebodyStillAtTheMachineIsCountedAgain) {
  Technician technician(libraryProcedure("lockout-removal"), "boom-on-support");
  ASSERT_TRUE(technician.workUntil("counted"));
  ASSERT_EQ(technician.tell(EventType::Answer, "counted", "no"), "");
  EXPECT_EQ(technician.asked().about, "counted");
  EXPECT_TRUE(technician.work());
  EXPECT_EQ(technician.state().phase, Phase::Done);
}

}  // namespace
}  // namespace hingepin::procedures
