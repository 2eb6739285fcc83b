// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <span>

#include "engine/base/error.h"

/// A phone laid on a surface as a level: its accelerometer says how the surface slopes.
namespace hingepin::session {

/// One sample of an accelerometer at rest, which shows the reaction to gravity: x along the phone's short
/// side, y along its long side, z out of the screen. Evenly spaced in time.
struct AccelerationSample {
  double time_s;
  double x_m_per_s2;
  double y_m_per_s2;
  double z_m_per_s2;
};

/// How the phone lay, its own zero error not yet taken off; standard uncertainties from scatter alone.
struct LevelReading {
  double slope_rad;  ///< along the phone's long side, positive where its top is higher
  double slope_u_rad;
  double cross_rad;  ///< along its short side, positive where its right side is higher
  double cross_u_rad;
  int samples;
  double effective_samples;  ///< what they are worth, being alike to their neighbours
};

/// Judgement, where no reason stands beside a number.
struct LevelLimits {
  double least_s = 1.0;
  double gravity_within = 0.03;   ///< of 9.81 m/s2: gain errors of phones are a few per cent
  double most_spread = 0.25;      ///< m/s2, of one sample: an idling engine, not a hand
  double most_drift_rad = 0.005;  ///< 0.3 deg between the first and the last third: it was moved
  double most_zero_rad = 0.09;    ///< 5 deg: phones are soldered better than that, and camera bumps tilt less
  double most_zero_change_rad = 0.009;  ///< 0.5 deg from one day to the next, by temperature
  double least_change_rad =
      0.0009;                     ///< 0.05 deg: below this a slope of more than that can't have been turned
  double placing_u_rad = 0.0017;  ///< 0.1 deg: how well it comes to lie on the same spot again
  double turn_u_rad = 0.05;       ///< 3 deg: how well half a turn is made by eye along an edge
  double cross_axis_u =
      0.01;  ///< share of the cross slope that the long axis sees (data sheets: 1 to 2 %, from memory)
  double gain_u = 0.01;  ///< share by which two axes' gains differ (data sheets: 1 to 3 %, from memory)
};

/// One lay of the phone.
/// Errors: Insufficient "level-too-few", "level-not-gravity", and "level-moved" where it was moved, knocked
/// or shaken.
[[nodiscard]] Expected<LevelReading> readLevel(std::span<const AccelerationSample> samples,
                                               const LevelLimits& limits = {});

/// What two lays give, the phone turned half round on the spot between them.
struct LevelResult {
  double slope_rad;    ///< of the surface, along the phone's long side as it lay first
  double slope_u_rad;  ///< standard uncertainty
  double zero_rad;     ///< the phone's own error, which cancels
};

/// The reversal method: the slope changes its sign with the turn, the zero error does not. slope = (first -
/// second) / 2, zero = (first + second) / 2. The uncertainty holds scatter, coming to lie on the same spot,
/// a turn that misses half round, what the long axis sees of the cross slope, and gains.
/// Source: Evans, Hocken, Estler 1996, Self-calibration: reversal, redundancy, error separation, and
/// "absolute testing", CIRP Annals 45, 617 (from memory); common practice with spirit levels.
/// @param known_zero_rad of this phone by earlier measurements, if there were any: the only sure way to find
/// that a phone on a nearly level spot was not turned
/// Errors: Insufficient "level-not-turned" where both readings are alike though the spot isn't level, or a
/// known zero says so; "level-zero-implausible".
[[nodiscard]] Expected<LevelResult> combineLevels(const LevelReading& first, const LevelReading& turned,
                                                  const LevelLimits& limits = {},
                                                  std::optional<double> known_zero_rad = std::nullopt);

}  // namespace hingepin::session
