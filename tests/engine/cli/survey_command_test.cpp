// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <string>

#include "tests/engine/cli/process.h"
#include "tests/engine/linkage/machines.h"
#include "tests/engine/survey/survey_text.h"

namespace hingepin::cli {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using Json = nlohmann::ordered_json;

/// The practice unit, surveyed without an error.
Json practiceSurvey() {
  Json unit = Json::parse(readText(practiceFolder() / "job.json")).at("unit");
  unit.erase("linkage");
  const survey::Surveyor surveyor =
      survey::usualSurvey({.truth = linkage::demoMachine().geometry}, -38 * kDegree, 46 * kDegree);
  return Json::parse(survey::surveyText(surveyor, unit.dump()));
}

struct Surveyed {
  ProcessResult result;
  std::string job;
};
Surveyed surveyed(const Json& file, const std::vector<std::string>& more) {
  const TemporaryFolder folder;
  writeText(folder.path() / "survey.json", file.dump(1));
  std::vector<std::string> arguments = {"survey", "survey.json"};
  arguments.insert(arguments.end(), more.begin(), more.end());
  Surveyed done{runHingepin(arguments, folder.path()), ""};
  if (std::filesystem::exists(folder.path() / "new.json")) done.job = readText(folder.path() / "new.json");
  return done;
}

double numberOf(const Json& text) { return std::stod(text.get<std::string>()); }

TEST(SurveyCommandTest, APersonReadsNumbersCostAndWhatToMeasureNext) {
  const Surveyed done = surveyed(practiceSurvey(), {});
  EXPECT_EQ(done.result.status, 0) << done.result.diagnostics;
  EXPECT_THAT(done.result.output, HasSubstr("Linkage of L-27 from 49 measurements"));
  EXPECT_THAT(done.result.output, HasSubstr("boom length"));
  EXPECT_THAT(done.result.output, HasSubstr("2550 mm"));
  EXPECT_THAT(done.result.output, HasSubstr("a rated payload of 4500 kg is in doubt by"));
  EXPECT_THAT(done.result.output, HasSubstr("What would help most"));
  EXPECT_THAT(done.result.output, HasSubstr("engine off, key out, pressure relieved"));
  EXPECT_THAT(done.result.output, Not(HasSubstr("DISAGREES")));
  const Surveyed us = surveyed(practiceSurvey(), {"--units", "us"});
  EXPECT_THAT(us.result.output, HasSubstr("100.39 in"));
}

TEST(SurveyCommandTest, JsonGivesTheLinkageItsCostAndTheBestNextMeasurement) {
  const Surveyed done = surveyed(practiceSurvey(), {"--json"});
  ASSERT_EQ(done.result.status, 0) << done.result.diagnostics;
  const Json json = Json::parse(done.result.output);
  EXPECT_NEAR(numberOf(json.at("numbers").at("boom_length").at("value")), 2550, 0.5);
  EXPECT_NEAR(numberOf(json.at("numbers").at("bucket_pin_angle").at("value")), 94, 0.2);
  const double now_kg = numberOf(json.at("mass_expanded_uncertainty"));
  EXPECT_GT(now_kg, 0.005 * 4500);
  EXPECT_LT(now_kg, 0.015 * 4500);
  EXPECT_LT(numberOf(json.at("next").at(0).at("mass_expanded_uncertainty")), now_kg);
  EXPECT_TRUE(json.at("disagrees").is_null());
  EXPECT_EQ(json.at("measurements").size(), 49U);
}

TEST(SurveyCommandTest, AWrongMeasurementIsNamed) {
  Json file = practiceSurvey();
  const double right_m = numberOf(file["measurements"][1]["value"]);
  file["measurements"][1]["value"] = fmt::format("{:.4f} m", right_m + 0.08);
  const Surveyed done = surveyed(file, {});
  EXPECT_EQ(done.result.status, 0);
  EXPECT_THAT(done.result.output, HasSubstr("The first of these DISAGREES with all others"));
  EXPECT_THAT(done.result.output, HasSubstr("distance boom pivot to lift boom pin"));
  EXPECT_EQ(Json::parse(surveyed(file, {"--json"}).result.output).at("disagrees"), 1);
}

TEST(SurveyCommandTest, TheLinkageGoesIntoAJobThatThenWeighsWithItsDoubt) {
  const TemporaryFolder folder;
  for (const auto& entry : std::filesystem::directory_iterator(practiceFolder()))
    std::filesystem::copy(entry.path(), folder.path() / entry.path().filename());
  writeText(folder.path() / "survey.json", practiceSurvey().dump(1));
  // Without the test mass, which would tell what the linkage doesn't.
  Json job = Json::parse(readText(folder.path() / "job.json"));
  auto& lifts = job["lifts"];
  lifts.erase(std::remove_if(lifts.begin(), lifts.end(),
                             [](const Json& lift) { return lift.at("kind") == "test-mass"; }),
              lifts.end());
  writeText(folder.path() / "plain.json", job.dump(1));
  ASSERT_EQ(
      runHingepin({"survey", "survey.json", "--job", "plain.json", "--out", "surveyed.json"}, folder.path())
          .status,
      0);
  const auto weighed = [&](const std::string& of) {
    const ProcessResult made = runHingepin({"calibrate", of, "--out", "c.json"}, folder.path());
    EXPECT_EQ(made.status, 0) << made.diagnostics;
    return Json::parse(runHingepin({"weigh", "c.json", "load-1.csv", "--json"}, folder.path()).output);
  };
  const Json plain = weighed("plain.json");
  const Json with_doubt = weighed("surveyed.json");
  EXPECT_NEAR(numberOf(with_doubt.at("mass")), numberOf(plain.at("mass")),
              0.002 * numberOf(plain.at("mass")));
  // The survey's 0.5 % (one standard uncertainty) beside the 0.1 % that pins of a drawing have.
  const double before = numberOf(plain.at("expanded_uncertainty"));
  const double after = numberOf(with_doubt.at("expanded_uncertainty"));
  const double survey_kg = std::sqrt(after * after - before * before);
  EXPECT_NEAR(survey_kg / numberOf(plain.at("mass")), 2.0 * std::sqrt(0.0054 * 0.0054 - 0.001 * 0.001),
              0.002);
}

TEST(SurveyCommandTest, ABeginningIsMadeOfTheSurveysUnitWithoutAJob) {
  const Surveyed done = surveyed(practiceSurvey(), {"--out", "new.json"});
  EXPECT_EQ(done.result.status, 0) << done.result.diagnostics;
  const Json job = Json::parse(done.job);
  EXPECT_EQ(job.at("format"), "hingepin-job/1");
  EXPECT_EQ(job.at("unit").at("linkage_u").size(), 18U);
  EXPECT_NEAR(numberOf(job.at("unit").at("linkage").at("lift_boom_pin").at(1)), -0.24, 1e-3);
}

TEST(SurveyCommandTest, WhatIsNotEnoughOrWrongIsSaidWithItsStatus) {
  Json file = practiceSurvey();
  file["measurements"] = Json::array();
  Surveyed done = surveyed(file, {});
  EXPECT_EQ(done.result.status, 1);
  EXPECT_THAT(done.result.diagnostics, HasSubstr("/measurements: The survey holds no measurement."));
  file["measurements"].push_back({{"kind", "height"}, {"pin", "tooth"}, {"value", "1 m"}});
  done = surveyed(file, {"--json"});
  EXPECT_EQ(done.result.status, 2);
  EXPECT_THAT(done.result.diagnostics, HasSubstr("/measurements/0/pin"));
  EXPECT_EQ(Json::parse(done.result.output).at("error").at("code"), "word-unknown");
  EXPECT_EQ(surveyed(practiceSurvey(), {"--out", "survey.json"}).result.status, 2);
}

}  // namespace
}  // namespace hingepin::cli
