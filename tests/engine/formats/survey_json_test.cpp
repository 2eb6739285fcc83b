// SPDX-License-Identifier: Apache-2.0
#include "engine/formats/survey_json.h"

#include <gtest/gtest.h>

#include <string>
#include <utility>

#include "engine/formats/job_json.h"
#include "engine/units/degree.h"
#include "tests/engine/formats/samples.h"

namespace hingepin::formats {
namespace {

using survey::Kind;
using survey::Pin;

constexpr const char* kUnit =
    R"("unit": { "id": "L-27", "lift_cylinders": { "count": 2, "bore": "130 mm", "rod": "75 mm" }, "rated_payload": "4500 kg" })";

std::string surveyOf(const std::string& measurement, const std::string& more = "") {
  return std::string(R"({ "format": "hingepin-survey/1", )") + kUnit + more +
         R"(, "poses": [ { "pose": "low", "tilt_cylinder": "extended" }, { "pose": "free" } ], "measurements": [)" +
         measurement + "] }";
}

/// "code pointer" of the error.
std::string faultOf(const std::string& text) {
  const auto file = readSurvey(text, "yard/survey.json");
  if (file) return "";
  EXPECT_EQ(file.error().kind, ErrorKind::InvalidInput);
  EXPECT_GT(file.error().place.line, 0U);
  return file.error().message.code + " " + file.error().place.pointer;
}

TEST(SurveyJsonTest, ReadsEachKindWithItsUncertainty) {
  const auto file = readSurvey(kSampleSurvey, "survey.json");
  ASSERT_TRUE(file) << file.error().message.code << " " << file.error().place.pointer;
  const auto& list = file->survey.measurements;
  ASSERT_EQ(list.size(), 13U);
  EXPECT_EQ(list[0].value, 2.55);
  EXPECT_EQ(list[0].u, 0.004);
  EXPECT_FALSE(list[0].target.pose.has_value());
  EXPECT_NEAR(list[1].value, 54.5 * 0.0254, 1e-12);
  EXPECT_EQ(list[1].u, 0.003);
  EXPECT_EQ(list[1].target.pose, std::optional<std::size_t>(0));
  EXPECT_NEAR(list[3].u, 0.2 * kDegree, 1e-15);
  EXPECT_NEAR(list[4].u, 0.25 * kDegree, 1e-15);
  EXPECT_EQ(list[5].target.from, Pin::HingePin);
  EXPECT_EQ(list[9].value, -0.53);
  EXPECT_EQ(list[10].target.number, 3U);
  EXPECT_NEAR(list[11].value, 184 * kDegree, 1e-12);
  EXPECT_NEAR(list[11].u, 0.25 * kDegree, 1e-15);
  EXPECT_NEAR(file->survey.ground_u_rad, 0.5 * kDegree, 1e-15);
  ASSERT_EQ(file->survey.poses.size(), 2U);
  EXPECT_EQ(file->survey.poses[0].tilt_end, std::optional(survey::TiltEnd::Extended));
  EXPECT_FALSE(file->survey.poses[1].tilt_end.has_value());
}

TEST(SurveyJsonTest, EdgeToEdgeBecomesCentreToCentre) {
  const auto centre = [](const std::string& more) {
    const auto file = readSurvey(
        surveyOf(R"({ "kind": "distance", "from": "boom-pivot", "to": "hinge-pin", "value": "1000 mm", )" +
                 more + "}"),
        "survey.json");
    return file ? file->survey.measurements[0].value : -1.0;
  };
  EXPECT_EQ(centre(R"("edges": "like")"), 1.0);
  EXPECT_NEAR(centre(R"("edges": "like", "pin_diameters": ["80 mm", "60 mm"])"), 0.99, 1e-12);
  EXPECT_NEAR(centre(R"("edges": "inner", "pin_diameters": ["80 mm", "60 mm"])"), 1.07, 1e-12);
  EXPECT_NEAR(centre(R"("edges": "outer", "pin_diameters": ["80 mm", "60 mm"])"), 0.93, 1e-12);
}

TEST(SurveyJsonTest, WhatIsWrongIsNamedWhereItStands) {
  const std::string distance = R"("kind": "distance", "from": "boom-pivot", "to": "hinge-pin")";
  for (const auto& [measurement, fault] : std::initializer_list<std::pair<std::string, std::string>>{
           {R"({ "kind": "guess", "value": "1 m" })", "word-unknown /measurements/0/kind"},
           {R"({ )" + distance + " }", "json-missing-key /measurements/0"},
           {R"({ )" + distance + R"(, "value": "3 deg" })", "unit-wrong-dimension /measurements/0/value"},
           {R"({ )" + distance + R"(, "value": "2550" })", "quantity-malformed /measurements/0/value"},
           {R"({ )" + distance + R"(, "value": "99 m" })", "value-out-of-range /measurements/0/value"},
           {R"({ )" + distance + R"(, "value": "1 m", "u": "0 mm" })",
            "value-out-of-range /measurements/0/u"},
           {R"({ )" + distance + R"(, "value": "1 m", "pin": "hinge-pin" })",
            "json-unknown-key /measurements/0/pin"},
           {R"({ )" + distance + R"(, "value": "1 m", "pose": "high" })",
            "survey-pose-unknown /measurements/0/pose"},
           {R"({ )" + distance + R"(, "value": "1 m", "edges": "inner" })",
            "survey-diameters-missing /measurements/0"},
           {R"({ )" + distance + R"(, "value": "1 m", "pin_diameters": ["80 mm", "80 mm"] })",
            "survey-diameters-without-edges /measurements/0/pin_diameters"},
           {R"({ )" + distance +
                R"(, "value": "50 mm", "edges": "outer", "pin_diameters": ["80 mm", "80 mm"] })",
            "survey-distance-not-positive /measurements/0"},
           {R"({ "kind": "distance", "from": "hinge-pin", "to": "hinge-pin", "value": "1 m" })",
            "survey-same-pin /measurements/0"},
           {R"({ "kind": "distance", "from": "lift-frame-pin", "to": "lift-boom-pin", "value": "1 m" })",
            "survey-pose-missing /measurements/0"},
           {R"({ "kind": "bucket-floor-angle", "value": "1 deg" })", "survey-pose-missing /measurements/0"},
           {R"({ "kind": "boom-plate-offset", "pin": "lift-frame-pin", "value": "1 m" })",
            "survey-pin-off-boom /measurements/0"},
           {R"({ "kind": "data-sheet", "number": "boom", "value": "1 m" })",
            "word-unknown /measurements/0/number"}})
    EXPECT_EQ(faultOf(surveyOf(measurement)), fault) << measurement;
  EXPECT_EQ(faultOf(surveyOf("", R"(, "tape": "5 mm")")), "json-unknown-key /tape");
  EXPECT_EQ(faultOf(surveyOf("", R"(, "poses": [])")), "json-duplicate-key /poses");
  EXPECT_EQ(faultOf(R"({ "format": "hingepin-survey/2", "unit": {}, "measurements": [] })").substr(0, 18),
            "format-unsupported");
  EXPECT_EQ(readSurvey(surveyOf(""), "s")->survey.measurements.size(), 0U);
}

TEST(SurveyJsonTest, MoreThanAnybodyMeasuresIsRefusedBeforeItIsReckonedWith) {
  const std::string one = R"({ "kind": "ground-angle", "value": "0.4 deg" })";
  std::string measurements = one;
  for (int i = 1; i < 500; ++i) measurements += ", " + one;
  EXPECT_EQ(faultOf(surveyOf(measurements)), "");
  EXPECT_EQ(faultOf(surveyOf(measurements + ", " + one)), "list-too-long /measurements");
  std::string poses = R"({ "pose": "0" })";
  for (int i = 1; i <= 50; ++i) poses += R"(, { "pose": ")" + std::to_string(i) + "\" }";
  EXPECT_EQ(faultOf(std::string(R"({ "format": "hingepin-survey/1", )") + kUnit + R"(, "poses": [)" + poses +
                    R"(], "measurements": [)" + one + "] }"),
            "list-too-long /poses");
}

TEST(SurveyJsonTest, ALinkageWithItsDoubtGoesThroughTheJobUnchanged) {
  const auto job = readJob(kSampleJob, "yard/job.json", openerOf(kSampleLogs));
  ASSERT_TRUE(job);
  const linkage::ZBarGeometry& geometry = *job->job.unit.linkage;
  linkage::LinkageDoubt doubt(2);
  doubt[0][0] = 0.0031234;
  doubt[0][12] = -0.0123;
  doubt[1][5] = 0.2;
  const std::string text = std::string(R"({ "format": "hingepin-job/1", "unit": )") +
                           unitWithLinkage(std::string("{") + std::string(kUnit).substr(9), geometry, doubt) +
                           R"(, "poses": [], "lifts": [] })";
  const auto read = readUnfinishedJob(text, "job.json", openerOf(kSampleLogs));
  ASSERT_TRUE(read) << read.error().message.code << read.error().place.pointer;
  for (const linkage::LinkageNumber& number : linkage::linkageNumbers())
    EXPECT_NEAR(number.get(*read->unit.linkage), number.get(geometry), 1e-7) << number.name;
  ASSERT_TRUE(read->unit.linkage_u.has_value());
  ASSERT_EQ(read->unit.linkage_u->size(), 2U);
  for (std::size_t k = 0; k < 2; ++k)
    for (std::size_t i = 0; i < linkage::kLinkageNumbers; ++i)
      EXPECT_NEAR((*read->unit.linkage_u)[k][i], doubt[k][i], 1e-7);
}

TEST(SurveyJsonTest, ADoubtNeedsALinkageAndKnowsItsNumbers) {
  const auto fault = [](const std::string& unit_more) {
    const auto read = readUnfinishedJob(std::string(R"({ "format": "hingepin-job/1", )") +
                                            std::string(kUnit).substr(0, std::string(kUnit).size() - 1) +
                                            unit_more + R"(}, "poses": [], "lifts": [] })",
                                        "job.json", openerOf(kSampleLogs));
    return read ? "" : read.error().message.code + " " + read.error().place.pointer;
  };
  EXPECT_EQ(fault(R"(, "linkage_u": [ { "boom_length": "3 mm" } ])"),
            "linkage-doubt-without-linkage /unit/linkage_u");
  EXPECT_EQ(fault(R"(, "linkage_u": [ { "boom": "3 mm" } ])"), "json-unknown-key /unit/linkage_u/0/boom");
  EXPECT_EQ(fault(R"(, "linkage_u": [ { "link_length": "3 deg" } ])"),
            "unit-wrong-dimension /unit/linkage_u/0/link_length");
}

}  // namespace
}  // namespace hingepin::formats
