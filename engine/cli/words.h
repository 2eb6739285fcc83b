// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "engine/base/error.h"
#include "engine/calibration/model.h"
#include "engine/formats/strict_json.h"
#include "engine/session/linkage_table.h"
#include "engine/units/ucum.h"

namespace hingepin::cli {

/// "file:line:column: /json/pointer: sentence", what does not apply left out.
[[nodiscard]] std::string sayError(const Error& error, UnitSystem system);

/// A result of weighing for a person: mass, uncertainty, budget with bars, warnings.
[[nodiscard]] std::string sayWeighing(const std::string& log, const calibration::Weighing& weighing,
                                      UnitSystem system);

/// One line of JSON as the contract of `weigh --json` has it, with its line end.
[[nodiscard]] std::string weighingJson(const std::string& log, const calibration::Weighing& weighing,
                                       UnitSystem system);
[[nodiscard]] std::string errorJson(const std::string& log, const Error& error, UnitSystem system);

/// What a calibration found, for a person, with a plot of the empty lift over the boom angle.
[[nodiscard]] std::string sayCalibration(const calibration::Calibration& calibration, UnitSystem system);

/// The same as a page of its own.
[[nodiscard]] std::string calibrationHtml(const calibration::Calibration& calibration, UnitSystem system);

/// Poses, moment arms and ranges as tables.
[[nodiscard]] std::string sayLinkage(const calibration::Job& job, const session::LinkageTable& table,
                                     UnitSystem system);

}  // namespace hingepin::cli
