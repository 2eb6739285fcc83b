// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "engine/calibration/job.h"
#include "engine/survey/target.h"

/// Where everything of a loader's linkage stands, for a drawing from the side.
namespace hingepin::session {

using DrawnPoint = std::array<double, 2>;  ///< m: forward of the boom pivot, above ground

struct MachineDrawing {
  bool known = false;    ///< false: a plausible loader of no particular make, since the pins are not on file
  double low_rad = 0.0;  ///< of the boom's travel
  double high_rad = 0.0;
  DrawnPoint boom_pivot{}, hinge_pin{}, lift_frame_pin{}, lift_boom_pin{}, tilt_frame_pin{},
      bellcrank_pivot{}, bellcrank_tilt_pin{}, bellcrank_link_pin{}, bucket_link_pin{};
  std::vector<DrawnPoint> bucket;  ///< outline, closed
  DrawnPoint cutting_edge{};
  DrawnPoint heel{};
  std::vector<DrawnPoint> window_arc;  ///< where the hinge pin goes within the weigh window
  double bucket_rad = 0.0;             ///< floor above the horizontal
};

/// @param racked share of the tilt cylinder's way: 1 racked back, 0 dumped
/// The boom angle is held within the travel that the linkage allows. Nothing where even the plausible loader
/// can't stand so.
[[nodiscard]] std::optional<MachineDrawing> drawMachine(const calibration::LoaderUnit& unit,
                                                        const calibration::Attachment* attachment,
                                                        double boom_rad, double racked);

/// What is to be measured, as a line from the one point to the other; of an angle, the line that has it.
struct DrawnMeasure {
  DrawnPoint from{};
  DrawnPoint to{};
  std::vector<std::array<DrawnPoint, 2>> helpers{};  ///< plumb lines, levels, the straight edge of the boom
};
/// Nothing for a number of a data sheet.
[[nodiscard]] std::optional<DrawnMeasure> drawMeasure(const MachineDrawing& drawing,
                                                      const survey::Target& target);

/// The share of the tilt cylinder's way at which the bucket floor is level there.
[[nodiscard]] double levelShare(const calibration::LoaderUnit& unit, double boom_rad);

}  // namespace hingepin::session
