// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "engine/base/error.h"
#include "engine/calibration/job.h"
#include "engine/calibration/model.h"

namespace hingepin::session {

/// Head pressure at a boom angle, less what the rod side pushes back: p_head - p_rod * A_rod / A_head. It is
/// the lift-cylinder force over the head area.
struct PressurePoint {
  double boom_angle_rad;
  double pressure_Pa;
};

struct EmptyPass {
  std::string name;
  calibration::Pace pace = calibration::Pace::Slow;
  bool lowering = false;
  std::vector<PressurePoint> readings;  ///< in the order of the log
};

/// The empty passes of a job beside the tare that they taught.
struct EmptyLift {
  std::vector<EmptyPass> passes;
  std::vector<PressurePoint> tare;  ///< rising, at rest, over the angles that the passes cover; rising
};

/// What of the rod side's pressure is taken off the head side's: rod area over head area.
[[nodiscard]] double rodShareOf(const calibration::LiftCylinders& cylinders);

/// The empty passes of a job, by the line of its boom sensor.
/// @param calibration whose summaries tell the direction of a pass; nullptr: as the job states it
[[nodiscard]] std::vector<EmptyPass> emptyPasses(const calibration::Job& job,
                                                 const calibration::SensorLine& boom_line, double rod_share,
                                                 const calibration::Calibration* calibration);

/// @param points of the tare, 2 or more
/// Errors: those of linkage::Linkage::make.
[[nodiscard]] Expected<EmptyLift> emptyLift(const calibration::Job& job,
                                            const calibration::Calibration& calibration, int points);

}  // namespace hingepin::session
