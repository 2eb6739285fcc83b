// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

#include "engine/calibration/model.h"
#include "engine/session/empty_lift.h"
#include "engine/units/ucum.h"

namespace hingepin::cli {

/// How readings of a kind look in a plot.
struct Mark {
  std::string_view name;
  std::string_view sign;    ///< one column wide
  std::string_view colour;  ///< of a drawing; the shape tells as much
};
inline constexpr Mark kTareMark{"taught tare, boom at rest", "─", "#111111"};
inline constexpr Mark kLineMark{"fitted", "─", "#111111"};
[[nodiscard]] const Mark& markOf(calibration::LiftKind kind, calibration::Pace pace, bool lowering);

/// What a plot of an empty lift shows.
[[nodiscard]] std::string pressureTitle(const calibration::Calibration& calibration);

/// The empty passes and their tare as characters, at most 100 columns wide.
[[nodiscard]] std::string plotOf(const session::EmptyLift& empty, const calibration::Calibration& calibration,
                                 UnitSystem system);

}  // namespace hingepin::cli
