// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <vector>

#include "engine/base/error.h"
#include "engine/simulator/machine.h"

namespace hingepin::simulator {

/// A function of the boom angle with its first derivative.
struct Slope {
  double value;
  double by_boom;
};

/// The linkage with a bucket held at one tilt-cylinder length and one load, seen as a body with two freedoms:
/// the boom angle (beta) and the frame's pitch (theta). x and y from the rear wheels' foot along the
/// machine's own axes.
///   T = 1/2 boom w^2 + mixed w W + 1/2 pitch W^2,   V = g (x sin(theta) + y cos(theta))
/// with x and y the first moments of mass of everything.
struct Mechanics {
  Slope cylinder;  ///< lift-cylinder length c, m
  Slope forward;   ///< first moment of mass, kg m
  Slope up;
  Slope boom;  ///< generalised inertias, kg m2
  Slope mixed;
  Slope pitch;
  Slope pin_lever;  ///< sum over the pins of radius times reaction times turn, over the lift force, m
};

/// `Mechanics` over the machine's travel, from the positions of all parts on a fine grid.
class MechanicsTable {
 public:
  /// @param load a part in the bucket's frame; mass 0 for an empty bucket
  /// Errors: those of linkage::Linkage where a loop cannot close on the travel.
  [[nodiscard]] static Expected<MechanicsTable> make(const Machine& machine, const Part& load);
  [[nodiscard]] Mechanics at(double boom_rad) const;

 private:
  static constexpr int kFunctions = 7;
  using Cell = std::array<std::array<double, 4>, kFunctions>;
  double low_rad_ = 0.0;
  double step_rad_ = 1.0;
  std::vector<Cell> cells_;
};

/// One travel of the boom within a plan.
struct Move {
  double to_rad = 0.0;
  double speed_rad_per_s = 0.16;  ///< mean over the travel's moment arms; the flow is what is constant
  double ramp_s = 0.7;            ///< lever from nothing to full travel's flow
  double slow_down_rad = 0.10;    ///< the flow falls over this angle before the end
  double slow_down_to = 0.25;     ///< to this share
  double stop_s = 0.15;           ///< lever back to hold
  double hold_s = 1.5;            ///< held still after it
};

struct Plan {
  double from_rad = 0.0;
  double seal_state = 0.0;  ///< how friction was left: 1 as after rising, -1 as after lowering
  double wait_s = 1.0;
  double lever_wobble = 0.02;  ///< share by which the hand wanders
  double lever_phase_rad = 0.0;
  std::vector<Move> moves;
};

/// The machine's true state at one moment, with the pressures at the sensors.
struct Instant {
  double time_s;
  double boom_rad;
  double boom_rad_per_s;
  double pitch_rad;  ///< of the frame against its stand, nose up positive
  double head_Pa;
  double rod_Pa;
  double cylinder_head_Pa;  ///< inside the cylinder
  double pitch_rad_per_s;
};

struct Motion {
  std::vector<Instant> instants;  ///< every step
  std::vector<double> held_s;     ///< end of each move's hold
};

/// How the motion is worked out; the defaults are what the logs are made with.
struct Integration {
  double step_s = 1e-3;
  double longest_s = 180.0;  ///< a boom that stalls is given up here
};

/// Moves a loader: fixed-step Runge-Kutta of fourth order on boom angle, pitch, cylinder pressure and
/// friction, with a lever that looks at the boom every 5 ms. The rod side follows its flow at once, for its
/// oil column is soft only while it is open to the tank; its trapping in the hold is left out, which would
/// raise the bounce's frequency after a stop.
/// @param slope_rad of the ground, nose up positive
/// Errors: InvalidInput "simulator-load-too-heavy" if the relief valve opens at rest,
/// "simulator-outside-travel".
[[nodiscard]] Expected<Motion> move(const Machine& machine, const Part& load, double oil_Cel,
                                    double slope_rad, const Plan& plan, const Integration& integration = {});

}  // namespace hingepin::simulator
