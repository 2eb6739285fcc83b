// SPDX-License-Identifier: Apache-2.0
#include "engine/session/practice_answers.h"

#include <gmock/gmock.h>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>
#include <vector>

#include "engine/procedures/library.h"
#include "engine/session/job_record.h"
#include "tests/engine/session/yard.h"

namespace hingepin::session {
namespace {

using procedures::Outcome;
using procedures::Phase;
using ::testing::Contains;
using ::testing::IsEmpty;

/// Does what a practice person answers, to the end. @return why it went no further; "" at the end
std::string workThrough(Yard& yard, OpenJob& job, PracticePerson& person) {
  for (int count = 0; count < 3000 && !procedures::hasEnded(job.state.phase); ++count) {
    Expected<PracticeAnswer> answer = person.answer(job);
    if (!answer) return answer.error().message.code;
    procedures::Event event = answer->event;
    yard.now.at_ms = std::max(yard.now.at_ms + answer->takes_ms, answer->not_before_ms.value_or(0));
    if (answer->file != FileNeed::None) {
      event.hashes = {need(keepFile(yard.store, job, event.about,
                                    answer->file == FileNeed::Log ? answer->log : "not a real picture",
                                    "file", folder::fillBytes, yard.now, folder::edge()))};
    }
    const bool on_glass = answer->file == FileNeed::Signature;
    if (answer->second_person) {
      event.who = yard.lead.id();
      event.role = "safety-lead";
      event.device = "phone-2";
    } else if (!on_glass) {
      event.who = job.state.person;
      event.role = job.state.role;
    }
    if (event.device.empty()) event.device = job.state.device;
    const Expected<void> taken = handIn(yard.store, job, event, yard.now, folder::edge());
    if (!taken) return event.about + ": " + taken.error().message.code + " " + event.value + event.answer;
  }
  return procedures::hasEnded(job.state.phase) ? "" : "no end";
}

std::vector<std::string> failedSteps(const OpenJob& job) {
  std::vector<std::string> failed;
  for (const procedures::Try& each : job.state.tries) {
    if (each.outcome != Outcome::Passed && each.outcome != Outcome::More) failed.push_back(each.event.about);
  }
  return failed;
}

struct Way {
  std::string procedure;
  std::string variant;
};

/// Every way through every procedure of the library that a technician runs.
std::vector<Way> ways() {
  std::vector<Way> all;
  for (const procedures::LibraryEntry& entry : procedures::library()) {
    const auto procedure = need(procedures::readProcedure(std::string(entry.text), std::string(entry.id)));
    if (std::ranges::find(procedure.run_roles, "technician") == procedure.run_roles.end()) continue;
    for (const auto& variant : procedure.variants) all.push_back({procedure.id, variant.id});
    if (procedure.variants.empty()) all.push_back({procedure.id, ""});
  }
  return all;
}

class EveryWayTest : public testing::TestWithParam<Way> {};

TEST_P(EveryWayTest, GoodAnswersLeadToTheEndWithNothingFailed) {
  Yard yard;
  const auto run = [&](const Way& way) {
    OpenJob job = yard.begin(way.procedure, way.variant);
    PracticePerson person(1);
    EXPECT_EQ(workThrough(yard, job, person), "") << way.procedure;
    EXPECT_EQ(job.state.phase, Phase::Done) << job.state.failed_step;
    EXPECT_THAT(failedSteps(job), IsEmpty());
    EXPECT_THAT(job.state.marks, IsEmpty());
    EXPECT_NE(need(yard.seal(job)), "");
  };
  if (GetParam().procedure != "walk-round") run({"walk-round", ""});
  run(GetParam());
}

std::string testNameOf(const testing::TestParamInfo<Way>& way) {
  std::string name = way.param.procedure + "_" + way.param.variant;
  std::ranges::replace(name, '-', '_');
  return name;
}
INSTANTIATE_TEST_SUITE_P(Library, EveryWayTest, testing::ValuesIn(ways()), testNameOf);

/// A mass that the record of a teaching job predicted before it was told, and its reference.
TEST(PracticeSurveyTest, ACalibrationWeighsWithTheSurveyedLinkage) {
  Yard yard;
  const auto done = [&](const std::string& procedure, const std::string& variant) {
    OpenJob job = yard.begin(procedure, variant);
    PracticePerson person(1);
    EXPECT_EQ(workThrough(yard, job, person), "") << procedure;
    return need(recordOf(yard.store, need(yard.seal(job))));
  };
  done("walk-round", "");
  const records::Record survey = done("linkage-survey", "");
  const std::string profile = (*need(yard.store.unit("L-27"))).profile;
  EXPECT_EQ(need(blobsOf(yard.store)(textAt(survey.content, {"linkage", "unit_profile"}))), profile);
  const auto unit = nlohmann::json::parse(profile).at("unit");
  ASSERT_TRUE(unit.contains("linkage_u"));

  const records::Record taught = done("after-attachment-change", "typed-readings");
  const auto job_file =
      nlohmann::json::parse(need(blobsOf(yard.store)(textAt(taught.content, {"calibration", "job_file"}))));
  EXPECT_EQ(job_file.at("unit").at("linkage"), unit.at("linkage"));
  const JsonValue* const masses = memberAt(taught.content, {"calibration", "known_masses"});
  ASSERT_NE(masses, nullptr);
  ASSERT_FALSE(masses->items.empty());
  const auto numberAt = [&](const char* key) { return std::stod(textAt(masses->items[0], {key})); };
  // Weighed by the surveyed linkage alone, before the mass was told.
  EXPECT_NEAR(numberAt("predicted_kg"), numberAt("reference_kg"), 3 * numberAt("difference_u_kg"));
  EXPECT_LT(numberAt("difference_u_kg"), 0.05 * numberAt("reference_kg"));
}

class WishedFailureTest : public testing::Test {
 protected:
  WishedFailureTest() {
    OpenJob walk = yard_.begin("walk-round");
    PracticePerson person(1);
    EXPECT_EQ(workThrough(yard_, walk, person), "");
    need(yard_.seal(walk));
  }
  OpenJob run(const std::string& step, Failing failing) {
    OpenJob job = yard_.begin("shift-proof", "known-mass");
    PracticePerson person(1, {}, {.failing = {{step, failing}}, .says = {}});
    EXPECT_EQ(workThrough(yard_, job, person), "");
    return job;
  }
  Yard yard_;
};

TEST_F(WishedFailureTest, ACheckThatFailsOnceIsRepeatedAndHolds) {
  for (const char* step : {"mass-error", "mass-spread", "zero-holds", "attachment", "oil"}) {
    const OpenJob job = run(step, Failing::Once);
    EXPECT_EQ(job.state.phase, Phase::Done) << step;
    EXPECT_THAT(failedSteps(job), Contains(step)) << step;
  }
}

TEST_F(WishedFailureTest, ACheckThatAlwaysFailsEndsTheJobWithItsTag) {
  for (const char* step : {"mass-error", "mass-spread", "zero-holds", "attachment"}) {
    const OpenJob job = run(step, Failing::Always);
    EXPECT_EQ(job.state.phase, Phase::Failed) << step;
    EXPECT_EQ(job.state.failed_step, step);
  }
}

TEST_F(WishedFailureTest, WhatIsSaidInsteadStandsInTheJournal) {
  OpenJob job = yard_.begin("shift-proof", "known-mass");
  PracticePerson person(1, {}, {.failing = {}, .says = {{"shown-mass", {"1995 kg", "2005 kg"}}}});
  EXPECT_EQ(workThrough(yard_, job, person), "");
  const auto values = procedures::observationsOf(job.procedure, job.state, "shown-mass");
  ASSERT_EQ(values.size(), 5U);
  EXPECT_EQ(values[0].value_si, 1995.0);
  EXPECT_EQ(values[4].value_si, 2005.0);
}

}  // namespace
}  // namespace hingepin::session
