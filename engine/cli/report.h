// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "engine/calibration/model.h"
#include "engine/session/lift_curves.h"
#include "engine/units/ucum.h"

namespace hingepin::cli {

struct WeighedLift {
  std::string log;
  calibration::Weighing weighing;
};

/// The job's own lifts of a known mass as the calibration weighs them now, which shows what its doubt is made
/// of; the empty ones where there is no other.
[[nodiscard]] std::vector<WeighedLift> weighedLifts(const calibration::Job& job,
                                                    const calibration::Calibration& calibration);

/// What a calibration found, as a page that needs no other file and reads on a phone and on paper.
[[nodiscard]] std::string calibrationHtml(const calibration::Job& job,
                                          const calibration::Calibration& calibration,
                                          const session::LiftCurves& curves,
                                          const std::vector<WeighedLift>& weighed, UnitSystem system);

}  // namespace hingepin::cli
