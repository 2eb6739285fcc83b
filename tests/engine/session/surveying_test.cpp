// SPDX-License-Identifier: Apache-2.0
#include "engine/session/surveying.h"

#include <fmt/format.h>
#include <gmock/gmock.h>

#include <nlohmann/json.hpp>
#include <set>

#include "engine/base/random.h"
#include "engine/session/job_record.h"
#include "tests/engine/cli/process.h"
#include "tests/engine/linkage/machines.h"
#include "tests/engine/session/yard.h"
#include "tests/engine/survey/surveyor.h"

namespace hingepin::session {
namespace {

using procedures::Event;
using procedures::EventType;
using procedures::Outcome;
using procedures::Phase;
using procedures::Step;
using ::testing::Contains;
using ::testing::IsEmpty;
using Json = nlohmann::ordered_json;

/// Somebody who works through the library's survey on the demo machine, with an invented unit's profile.
class SurveyedYard : public Yard {
 public:
  SurveyedYard() {
    says = {{"hours", {"4211 h"}}, {"fuel", {"80 %"}}};
    OpenJob round = begin("walk-round");
    EXPECT_EQ(work(round), "");
    need(seal(round));
  }

  /// To the end. @param stands at how many heights @param left_out steps that are left out at first; "all":
  /// each, always
  OpenJob survey(int stands, std::set<std::string> left_out = {}, const Entries& entries = {}) {
    NewJob begun = jobOf("linkage-survey");
    begun.entries = entries;
    OpenJob job = need(tryBegin(begun));
    int stood = 0;
    while (!procedures::hasEnded(job.state.phase)) {
      Event event = honest(job);
      const Step* const step = procedures::findStep(job.procedure, event.about);
      const bool asks = event.type == EventType::Reading || event.type == EventType::Answer;
      if (asks && event.about == "down") pose_ = surveyor_.stand("down", -36 * kDegree, {}, flat_m());
      if (asks && event.about == "stand") {
        pose_ =
            surveyor_.stand("stand", std::lerp(-38.0, 46.0, std::min(1.0, stood / (stands - 1.0))) * kDegree,
                            survey::TiltEnd::Extended);
        ++stood;
      }
      if (event.about == "another") event.answer = stood < stands ? "another" : "enough";
      if (event.type == EventType::Reading && step->survey) {
        if (left_out.contains("all") || left_out.erase(step->id) > 0) {
          event.type = EventType::Answer;
          event.answer = "skipped";
          event.value.clear();
        } else {
          event.value = valueOf(*step);
        }
      }
      const Expected<void> taken = tell(job, event);
      EXPECT_TRUE(taken) << event.about << " " << taken.error().message.code << " " << event.value;
      if (!taken) break;
    }
    return job;
  }
  [[nodiscard]] Json profile() { return Json::parse((*need(store.unit("L-27"))).profile); }
  /// The file of a record's survey.
  [[nodiscard]] std::string surveyFile(const std::string& record) {
    const records::Record read = need(recordOf(store, record));
    return need(blobsOf(store)(textAt(read.content, {"linkage", "survey"})));
  }

  std::map<std::string, std::string> typed{};  ///< by step, once, instead of what is so

 private:
  [[nodiscard]] double flat_m() const {
    return need(need(linkage::Linkage::make(surveyor_.truth)).tiltLengthOfBucket(-36 * kDegree, 0.0));
  }
  std::string valueOf(const Step& step) {
    if (const auto found = typed.find(step.id); found != typed.end()) {
      const std::string value = found->second;
      typed.erase(found);
      return value;
    }
    survey::Target target = *step.survey;
    if (survey::needsPose(target)) target.pose = pose_;
    const bool angle = survey::isAngle(target);
    const double u = angle ? surveyor_.inclinometer_u_rad : surveyor_.tape_u_m;
    const double value = surveyor_.trueValue(target) + u * random_.normal();
    return angle ? fmt::format("{:.1f} deg", value / kDegree) : fmt::format("{:.0f} mm", value * 1000.0);
  }

  survey::Surveyor surveyor_{.truth = linkage::demoMachine().geometry};
  std::size_t pose_ = 0;
  Random random_{11};
};

std::vector<std::string> reasonsOf(const OpenJob& job) {
  std::vector<std::string> reasons;
  for (const procedures::Try& each : job.state.tries)
    if (each.event.about == "linkage") reasons.push_back(each.reason);
  return reasons;
}

TEST(SurveyingTest, AJobGivesTheLinkageThatTheCommandLineGivesOfTheSameNumbers) {
  SurveyedYard yard;
  const OpenJob job = yard.survey(6, {"frame-tilt", "stand-height-hinge"});
  ASSERT_EQ(job.state.phase, Phase::Done) << job.state.failed_step;
  EXPECT_THAT(job.state.marks, IsEmpty());
  const std::string record = need(yard.seal(job));
  const Json unit = yard.profile().at("unit");
  ASSERT_TRUE(unit.contains("linkage_u"));

  // By another way: the file that the record names, through the program.
  cli::writeText(yard.folder.path() / "survey.json", yard.surveyFile(record));
  const cli::ProcessResult told =
      cli::runHingepin({"survey", "survey.json", "--out", "new.json"}, yard.folder.path());
  ASSERT_EQ(told.status, 0) << told.diagnostics;
  const Json by_command = Json::parse(cli::readText(yard.folder.path() / "new.json")).at("unit");
  EXPECT_EQ(unit.at("linkage"), by_command.at("linkage"));
  EXPECT_EQ(unit.at("linkage_u"), by_command.at("linkage_u"));

  // And it is the machine's: the boom within four standard uncertainties of a tape.
  EXPECT_NEAR(std::stod(unit.at("linkage").at("boom_length").get<std::string>()),
              linkage::demoMachine().geometry.boom_length.inMetres(), 4 * 0.005);
}

TEST(SurveyingTest, AWrongValueIsNamedSetAsideAndMeasuredAgain) {
  SurveyedYard yard;
  yard.typed = {{"boom-lift", "1700 mm"}};
  const OpenJob job = yard.survey(6);
  EXPECT_EQ(job.state.phase, Phase::Done);
  EXPECT_THAT(reasonsOf(job), ::testing::ElementsAre("survey-measurement-disagrees", ""));
  const auto failed = std::ranges::find(job.state.tries, std::string("survey-measurement-disagrees"),
                                        &procedures::Try::reason);
  EXPECT_EQ(failed->step, "boom-lift");
  EXPECT_THAT(job.state.marks, IsEmpty());
  const std::vector<Message> said = saySurvey(failed->result, failed->reason, failed->limit, "the words");
  ASSERT_EQ(said.size(), 1U);
  EXPECT_EQ(said[0].code, "check-survey-set-aside");
}

TEST(SurveyingTest, TooLittleAsksForMoreAndLeavesTheUnitAsItIs) {
  SurveyedYard yard;
  const Json before = yard.profile();
  const OpenJob job = yard.survey(2, {"all"});
  EXPECT_EQ(job.state.phase, Phase::Done);
  EXPECT_THAT(reasonsOf(job),
              ::testing::ElementsAre("survey-empty", "survey-empty", "survey-empty", "survey-empty"));
  ASSERT_FALSE(job.state.marks.empty());
  EXPECT_EQ(job.state.marks.front().mark, "survey-doubtful-mark");
  const std::string record = need(yard.seal(job));
  EXPECT_EQ(textAt(need(recordOf(yard.store, record)).content, {"linkage", "survey"}), "");
  EXPECT_EQ(yard.profile(), before);
}

TEST(SurveyingTest, WhatHelpsMostIsAskedForOnTheSpotWhereTheMachineNeedNotMove) {
  SurveyedYard yard;
  const OpenJob job = yard.survey(
      6, {"boom", "boom-lift", "lift-hinge", "height-pivot", "height-lift", "frame-lift", "forward-lift"},
      {{"linkage-doubt", "0.5 %"}});
  EXPECT_EQ(job.state.phase, Phase::Done);
  int on_the_spot = 0;
  for (std::size_t index = 0; index + 1 < job.state.tries.size(); ++index) {
    const procedures::Try& each = job.state.tries[index];
    if (each.event.about != "linkage" || each.reason.empty()) continue;
    EXPECT_EQ(each.reason, "survey-too-doubtful");
    const Step* const step = procedures::findStep(job.procedure, each.step);
    ASSERT_NE(step, nullptr);
    const bool moves = survey::needsPose(*step->survey);
    if (each.outcome == Outcome::Failed && !moves && job.state.tries[index + 1].event.about == each.step)
      ++on_the_spot;
  }
  EXPECT_GE(on_the_spot, 2);
}

}  // namespace
}  // namespace hingepin::session
