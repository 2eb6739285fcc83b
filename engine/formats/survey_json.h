// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>

#include "engine/base/error.h"
#include "engine/base/strict_json.h"
#include "engine/calibration/job.h"
#include "engine/survey/survey.h"
#include "engine/units/degree.h"

namespace hingepin::formats {

/// A survey and the text it was read from.
struct SurveyFile {
  JsonDocument document;
  calibration::LoaderUnit unit;  ///< without a linkage
  std::optional<calibration::Attachment> attachment;
  survey::Survey survey;  ///< measurements in the file's order
  double tape_u_m = 0.005;
  double inclinometer_u_rad = 0.3 * kDegree;
};

/// Reads a survey ("hingepin-survey/1"). What was measured from edge to edge of two pins becomes the distance
/// of their centres.
/// Errors: InvalidInput (malformed, out of range, a pose missing or unknown, ...), with file, line and JSON
/// Pointer. No measurement at all is well formed.
[[nodiscard]] Expected<SurveyFile> readSurvey(std::string text, const std::string& file);

/// The unit's text as a job has it, as JSON, with the linkage and what is in doubt of it put in.
/// REQUIRES: `unit_json` is a unit of a job or a survey that was read.
[[nodiscard]] std::string unitWithLinkage(const std::string& unit_json, const linkage::ZBarGeometry& geometry,
                                          const linkage::LinkageDoubt& doubt);

}  // namespace hingepin::formats
