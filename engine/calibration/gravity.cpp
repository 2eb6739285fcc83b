// SPDX-License-Identifier: Apache-2.0
#include "engine/calibration/gravity.h"

#include <cmath>

namespace hingepin::calibration {

Expected<LocalGravity> gravityAt(Angle latitude, Length height) {
  constexpr double kLowest_m = -500.0, kHighest_m = 6000.0;
  if (!(std::abs(latitude.inDegrees()) <= 90.0))
    return fail(ErrorKind::InvalidInput, "latitude-out-of-range",
                {{"value", Amount{latitude.inDegrees(), "deg", 2}},
                 {"low", Amount{-90.0, "deg", 0}},
                 {"high", Amount{90.0, "deg", 0}}});
  if (!(height.inMetres() >= kLowest_m && height.inMetres() <= kHighest_m))
    return fail(ErrorKind::InvalidInput, "height-out-of-range",
                {{"value", Amount{height.inMetres(), "m", 0}},
                 {"low", Amount{kLowest_m, "m", 0}},
                 {"high", Amount{kHighest_m, "m", 0}}});

  // GRS 80: gravity at the equator, the formula's constant, the first eccentricity squared.
  constexpr double kEquator_m_s2 = 9.7803267715;
  constexpr double kConstant = 0.001931851353;
  constexpr double kEccentricitySquared = 0.0066943800229;
  constexpr double kFreeAir_per_s2 = 3.086e-6;
  constexpr double kAnomaly_m_s2 = 5e-4;
  const double sine_squared = std::pow(std::sin(latitude.inRadians()), 2);
  const double at_sea_level =
      kEquator_m_s2 * (1.0 + kConstant * sine_squared) / std::sqrt(1.0 - kEccentricitySquared * sine_squared);
  return LocalGravity{
      Acceleration::fromMetresPerSecondSquared(at_sea_level - kFreeAir_per_s2 * height.inMetres()),
      Acceleration::fromMetresPerSecondSquared(kAnomaly_m_s2)};
}

}  // namespace hingepin::calibration
