// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "engine/calibration/model.h"
#include "engine/session/empty_lift.h"
#include "engine/units/ucum.h"

namespace hingepin::cli {

/// The empty passes and their tare as characters, at most 100 columns wide.
[[nodiscard]] std::string plotOf(const session::EmptyLift& empty, const calibration::Calibration& calibration,
                                 UnitSystem system);

/// The same as a drawing for a page.
[[nodiscard]] std::string drawingOf(const session::EmptyLift& empty,
                                    const calibration::Calibration& calibration, UnitSystem system);

}  // namespace hingepin::cli
