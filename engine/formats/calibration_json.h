// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "engine/base/error.h"
#include "engine/calibration/model.h"

namespace hingepin::formats {

/// Writes "hingepin-calibration/1": SI numbers in their shortest form that reads back equal, units in the
/// keys.
[[nodiscard]] std::string writeCalibration(const calibration::Calibration& calibration);

/// Reads it back. Errors: InvalidInput with file, line and JSON Pointer: those of readJson, missing or
/// unknown keys, values of the wrong kind, and tables whose sizes do not fit each other
/// ("calibration-inconsistent").
[[nodiscard]] Expected<calibration::Calibration> readCalibration(std::string text, const std::string& file);

}  // namespace hingepin::formats
