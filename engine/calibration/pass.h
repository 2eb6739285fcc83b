// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <Eigen/Core>
#include <optional>

#include "engine/base/error.h"
#include "engine/calibration/lift_log.h"
#include "engine/calibration/model.h"
#include "engine/linkage/linkage.h"

namespace hingepin::calibration {

/// The steady part of one travel of the boom, evenly spaced in time (or typed points in their order), SI
/// units.
struct Pass {
  Direction direction = Direction::Up;
  bool typed_points = false;
  double step_s = 0.0;
  Eigen::VectorXd boom_angle_rad;        ///< against the machine's frame
  Eigen::VectorXd boom_speed_rad_per_s;  ///< the mean of a log in every row; of typed points each its own
  Eigen::VectorXd
      boom_acceleration_rad_per_s2;  ///< as the sensor shows it, bounce and all; 0 for typed points
  Eigen::VectorXd head_pressure_Pa;
  Eigen::VectorXd rod_pressure_Pa;  ///< 0 where none was measured
  Eigen::VectorXd pitch_rad;        ///< 0 where none was measured
  Eigen::VectorXd bucket_reading;   ///< empty where none was measured
  bool has_pitch = false;
  std::optional<double> oil_temperature_K;  ///< mean
  int other_travels = 0;                    ///< further travels of the boom in the same log, not used

  [[nodiscard]] Eigen::Index size() const { return boom_angle_rad.size(); }
};

/// Finds the travel that covers most of a window of boom angles in a log, and the steady part of it: spikes
/// taken out, gaps bridged, the start, the slow-down and the hold at the end cut off. Rows within the window
/// and a margin are kept.
/// @param wanted direction to look for, if known
/// Errors: Insufficient "log-has-no-rows", "boom-did-not-move", "nothing-in-window", "readings-all-missing".
[[nodiscard]] Expected<Pass> findPass(const LiftLog& log, const SensorLine& boom_line,
                                      linkage::Range window_rad, double margin_rad,
                                      std::optional<Direction> wanted);

}  // namespace hingepin::calibration
