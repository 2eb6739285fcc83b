// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "engine/base/error.h"
#include "engine/base/strict_json.h"
#include "engine/calibration/job.h"
#include "engine/calibration/model.h"
#include "engine/linkage/numbers.h"
#include "engine/proof/proof.h"
#include "engine/survey/survey.h"

namespace hingepin::session {

/// Gives the bytes of a file by its SHA-256.
using BlobSource = std::function<Expected<std::string>(const std::string& hash)>;

/// Takes bytes of a live feed as they come and tells each line that they complete.
using FeedReader = std::function<void(std::string_view bytes, const calibration::LogLineSink& each)>;

/// A survey of a linkage, read.
struct SurveyRead {
  calibration::LoaderUnit unit;
  std::optional<calibration::Attachment> attachment;
  survey::Survey survey;
  double tape_u_m = 0.0;
  double inclinometer_u_rad = 0.0;
};

/// What reads and writes the files at the edge. Handed in, for formats lie outside the session; the functions
/// named are those of engine/formats.
struct Edge {
  std::function<Expected<void>(const JsonDocument&, const JsonNode&)> check_unit;        // readUnit
  std::function<Expected<void>(const JsonDocument&, const JsonNode&)> check_attachment;  // readAttachment
  std::function<Expected<proof::Terms>(const JsonNode&)> read_terms;                     // readTerms
  std::function<Expected<calibration::LiftLog>(const std::string& bytes, const std::string& file)>
      read_log;                           // readLiftLog
  std::function<FeedReader()> open_feed;  // LiftLogLines, a new one for each connection
  /// A calibration job whose logs are named by their hash. (readJob)
  std::function<Expected<calibration::Job>(std::string text, const BlobSource& logs)> read_job;
  std::function<std::string(const calibration::Calibration&)> write_calibration;         // writeCalibration
  std::function<Expected<calibration::Calibration>(std::string text)> read_calibration;  // readCalibration
  std::function<Expected<SurveyRead>(std::string text)> read_survey;                     // readSurvey
  std::function<std::string(const std::string& unit_json, const linkage::ZBarGeometry&,
                            const linkage::LinkageDoubt&)>
      unit_with_linkage;  // unitWithLinkage
};

}  // namespace hingepin::session
