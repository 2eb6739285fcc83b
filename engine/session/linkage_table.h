// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "engine/base/error.h"
#include "engine/calibration/job.h"
#include "engine/linkage/linkage.h"

namespace hingepin::session {

/// The linkage at one boom angle. SI units, radians; absent where the loops can't close, or what they need is
/// not known.
struct LinkageRow {
  double boom_angle_rad = 0.0;
  linkage::Derivatives lift_cylinder{};         ///< length, moment arm, its derivative: m, m/rad, m/rad2
  std::optional<double> racked_bucket_rad;      ///< bucket above the horizontal, tilt cylinder extended
  std::optional<double> dumped_bucket_rad;      ///< the same, retracted as far as the loops close
  std::optional<linkage::Range> tilt_length_m;  ///< between which tilt-cylinder lengths the loops close
  std::optional<double> load_arm_m;             ///< rise of the load point per radian of boom, racked
  std::optional<double> cutting_edge_height_m;  ///< above ground, racked
  std::optional<double> heel_height_m;
};

struct LinkageTable {
  linkage::Range lift_range_rad{};  ///< where the lift cylinder lengthens as the boom rises
  linkage::Range
      travel_rad{};  ///< what the rows cover: between the job's poses, else what the linkage allows
  bool travel_from_poses = false;
  bool payload_center_known = false;  ///< else the load arm is that of the hinge pin
  std::vector<LinkageRow> rows;       ///< rising by `step`
};

/// Errors: InvalidInput "job-has-no-linkage" (pointer "/unit"); those of Linkage::make, by pointer into the
/// job.
[[nodiscard]] Expected<LinkageTable> tabulateLinkage(const calibration::Job& job, Angle step);

}  // namespace hingepin::session
