// SPDX-License-Identifier: Apache-2.0
#include <cmath>

#include "engine/formats/survey_json.h"
#include "engine/survey/answer.h"
#include "tests/fuzz/json_mutator.h"
#include "tests/fuzz/require.h"

namespace {

using namespace hingepin;
using fuzz::require;

// An estimate takes as long as the cube of what is unknown; a mutated survey of more is only read.
constexpr std::size_t kMostMeasurements = 20;
constexpr std::size_t kMostPoses = 3;

void requireSound(const survey::Survey& survey) {
  for (const survey::Measurement& each : survey.measurements) {
    require(std::isfinite(each.value) && std::isfinite(each.u), "measurements are finite");
    require(each.u > 0.0, "nothing is measured exactly");
    require(!each.target.pose || *each.target.pose < survey.poses.size(), "a pose is one of the file");
    require(!survey::needsPose(each.target) || each.target.pose, "what moves has its pose");
    require(each.target.kind != survey::Kind::Distance || each.value > 0.0, "pins are apart");
  }
}

void requireSound(const formats::SurveyFile& file, const survey::Answer& answer) {
  require(answer.estimate.checks.size() == file.survey.measurements.size(), "each measurement is checked");
  for (const linkage::LinkageNumber& number : linkage::linkageNumbers())
    require(std::isfinite(number.get(answer.estimate.geometry)), "a linkage is finite");
  for (const double u : linkage::standardUncertainties(answer.estimate.doubt))
    require(std::isfinite(u) && u >= 0.0, "a doubt is not below nothing");
  require(answer.mass_u.has_value() != answer.unusable.has_value(), "a linkage has a cost or a reason");
  require(!answer.mass_u || (std::isfinite(*answer.mass_u) && *answer.mass_u >= 0.0), "a cost is finite");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  const Expected<formats::SurveyFile> read =
      formats::readSurvey(std::string(fuzz::textOf(bytes, size)), "yard/survey.json");
  if (!read) {
    fuzz::requireSound(read.error());
    require(!read.error().place.file.empty() && read.error().place.line > 0, "an error says where");
    return 0;
  }
  require(!read->unit.linkage, "a surveyed unit has no linkage");
  requireSound(read->survey);
  if (read->survey.measurements.size() > kMostMeasurements || read->survey.poses.size() > kMostPoses)
    return 0;
  const Expected<survey::Answer> answer = survey::tellSurvey(read->survey, read->unit, read->attachment,
                                                             read->tape_u_m, read->inclinometer_u_rad);
  if (!answer) {
    fuzz::requireSound(answer.error());
    require(read->document.place(answer.error().place.pointer).line > 0, "what it points at is in the file");
    return 0;
  }
  requireSound(*read, *answer);
  return 0;
}

HINGEPIN_MUTATE_JSON(false)
