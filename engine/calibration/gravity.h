// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/base/error.h"
#include "engine/units/quantity.h"

namespace hingepin::calibration {

struct LocalGravity {
  Acceleration value;
  Acceleration standard_uncertainty;
};

/// Gravity at a place from its geodetic latitude and its height above the sea: normal gravity of the
/// ellipsoid by Somigliana's formula, less 3.086e-6 /s2 for each metre of height (the linear free-air
/// gradient).
/// @param latitude -90 to 90 deg, either sign for either hemisphere
/// @param height -500 to 6000 m
/// Errors: InvalidInput "latitude-out-of-range", "height-out-of-range" with "value", "low", "high".
/// Accuracy: the formula to 1e-10 m/s2. Real gravity differs from it by the free-air anomaly of the place,
/// 3e-4 to 5e-4 m/s2 as a standard deviation over land; the standard uncertainty given is 5e-4 m/s2 (from
/// memory, typical). What the linear gradient leaves out, 7e-13 /(m s2) of the height squared, is below 3e-5
/// m/s2. Source: Moritz, Geodetic Reference System 1980, Bulletin geodesique 54 (1980) 395; gradient:
/// standard geodesy value, from memory.
[[nodiscard]] Expected<LocalGravity> gravityAt(Angle latitude, Length height);

}  // namespace hingepin::calibration
