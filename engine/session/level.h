// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <span>

#include "engine/base/error.h"

/// A phone laid on a surface as a level: its accelerometer says how the surface slopes.
namespace hingepin::session {

/// One sample of an accelerometer at rest, which shows the reaction to gravity: x along the phone's short
/// side, y along its long side, z out of the screen.
struct AccelerationSample {
  double time_s;
  double x_m_per_s2;
  double y_m_per_s2;
  double z_m_per_s2;
};

/// A slope along the phone's long side, with its standard uncertainty from scatter.
struct LevelReading {
  double slope_rad;  ///< positive where the top of the phone is higher
  double slope_u_rad;
  int samples;
};

/// Judgement, where no reason stands beside a number.
struct LevelLimits {
  double least_s = 1.0;
  double gravity_within = 0.03;   ///< of 9.81 m/s2: gain errors of phones are a few per cent
  double most_spread = 0.25;      ///< m/s2, of one sample: an idling engine, not a hand
  double most_drift_rad = 0.005;  ///< 0.3 deg between the first and the last third: it was moved
  double most_zero_rad = 0.09;    ///< 5 deg: phones are soldered better than that, and camera bumps tilt less
  double least_change_rad =
      0.0009;                     ///< 0.05 deg: below this a slope of more than that can't have been turned
  double placing_u_rad = 0.0017;  ///< 0.1 deg: how well it comes to lie on the same spot again
};

/// One lay of the phone. Errors: Insufficient "level-too-few", "level-moved", "level-not-gravity".
[[nodiscard]] Expected<LevelReading> readLevel(std::span<const AccelerationSample> samples,
                                               const LevelLimits& limits = {});

/// What two lays give, the phone turned half round on the spot between them.
struct LevelResult {
  double slope_rad;    ///< of the surface, along the phone's long side as it lay first
  double slope_u_rad;  ///< standard uncertainty
  double zero_rad;     ///< the phone's own error, which cancels
};

/// The reversal method: the slope changes its sign with the turn, the zero error does not. slope = (first -
/// second) / 2, zero = (first + second) / 2. A turn that misses half round by an angle a costs the slope a
/// share 1 - cos(a): 0.4 % at 5 deg. Common practice with spirit levels, no source. Errors: Insufficient
/// "level-not-turned" where both readings are alike and far from level, so that the zero error would be
/// implausible.
[[nodiscard]] Expected<LevelResult> combineLevels(const LevelReading& first, const LevelReading& turned,
                                                  const LevelLimits& limits = {});

}  // namespace hingepin::session
