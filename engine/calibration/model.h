// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "engine/base/error.h"
#include "engine/statistics/uncertainty.h"

namespace hingepin::calibration {

/// What weighing one lift gave.
struct Weighing {
  double mass_kg = 0.0;
  double standard_uncertainty_kg = 0.0;
  double expanded_uncertainty_kg = 0.0;  ///< for 95.45 % coverage
  double coverage_factor = 0.0;
  double degrees_of_freedom = 0.0;
  std::vector<statistics::Contribution> budget;  ///< kg; names are message codes
  std::vector<Message> warnings;
};

/// PLACEHOLDER until the lift model is written.
struct Calibration {
  std::string unit_id;
};

}  // namespace hingepin::calibration
