// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "engine/base/error.h"
#include "engine/base/strict_json.h"
#include "engine/calibration/stops.h"

namespace hingepin::formats {

/// What a stops file asks, with the names it gives and the text that tells line and column of a pointer.
struct StopsFile {
  JsonDocument document;
  std::string unit;        ///< id, "" where the file has no unit
  std::string attachment;  ///< likewise
  calibration::StopsAsked asked;
};

/// Reads "hingepin-stops/1". Errors: InvalidInput with file, line and JSON Pointer: those of readJob, and
/// "slope-malformed", "slope-zero", "sensor-unit-changes".
[[nodiscard]] Expected<StopsFile> readStops(std::string text, const std::string& file);

}  // namespace hingepin::formats
