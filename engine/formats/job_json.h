// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>

#include "engine/base/error.h"
#include "engine/base/strict_json.h"
#include "engine/calibration/job.h"
#include "engine/formats/byte_source.h"
#include "engine/units/ucum.h"

namespace hingepin::formats {

/// A job and the text it was read from, which tells line and column of a JSON Pointer.
struct JobFile {
  JsonDocument document;
  calibration::Job job;
};

/// Reads a job ("hingepin-job/1") and the logs that it names, through `open`, by paths relative to the job's
/// own. Errors: InvalidInput (malformed, out of range, sensors in another unit than their poses, ...),
/// NotFound and IoFailed of a log, Insufficient for empty `poses`, `lifts` or `points` in an otherwise
/// well-formed job. All with file, line and JSON Pointer, or line and column of a log.
[[nodiscard]] Expected<JobFile> readJob(std::string text, const std::string& file, const Opener& open);

/// Reads a job that is still being measured: empty `poses` and `lifts` are taken as they are. Errors: as
/// readJob, but none of kind Insufficient.
[[nodiscard]] Expected<calibration::Job> readUnfinishedJob(std::string text, const std::string& file,
                                                           const Opener& open);

/// Reads a `unit` or an `attachment` as a job has them, where another file holds one.
/// Errors: InvalidInput, those of readJob.
[[nodiscard]] Expected<calibration::LoaderUnit> readUnit(const JsonDocument& document, const JsonNode& unit);
[[nodiscard]] Expected<calibration::Attachment> readAttachment(const JsonNode& attachment);

/// What an angle sensor says, in the base unit of its SensorUnit.
struct SensorReading {
  calibration::SensorUnit unit = calibration::SensorUnit::Volt;
  double value = 0.0;
};
/// Errors: InvalidInput "json-wrong-kind", "sensor-reading-malformed".
[[nodiscard]] Expected<SensorReading> readSensor(const JsonNode& node);
/// What a sensor that reads in this unit is; nothing where none does.
[[nodiscard]] std::optional<calibration::SensorUnit> sensorUnitOf(const Unit& unit);

/// Reads one lift to be weighed: a log (CSV) or typed readings ("hingepin-readings/1"), told apart by the
/// first character that is not white space. Errors: as readLiftLog and readJob.
[[nodiscard]] Expected<calibration::LiftLog> readLift(const ByteSource& source, const std::string& file);

}  // namespace hingepin::formats
