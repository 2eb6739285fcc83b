// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/base/error.h"
#include "engine/units/quantity.h"

namespace hingepin::calibration {

/// A hydraulic oil by its kinematic viscosity at two temperatures, with relative standard uncertainties.
struct Oil {
  double at_40_Cel_mm2_s;
  double at_40_Cel_relative_u;
  double at_100_Cel_mm2_s;
  double at_100_Cel_relative_u;
};

/// A positive value with its relative standard uncertainty (k = 1).
struct RelativeEstimate {
  double value;
  double relative_u;
};

/// The oil of a viscosity grade, "ISO VG n": at 40 Cel the grade's midpoint, its limits of 10 % either way
/// taken as a rectangle; at 100 Cel a mineral oil of viscosity index 100, with a doubt for indexes from about
/// 90 to 150.
/// @param grade n of the series 2, 3, 5, 7, 10, 15, 22, 32, 46, 68, 100, ... 3200
/// Errors: InvalidInput "oil-grade-unknown" with "grade" for any other number.
/// Accuracy: viscosities at 100 Cel are from memory, typical mineral oil; 10 % instead of 6 % doubt outside
/// VG 15 to 100. Source: ISO 3448 (midpoints and limits, from memory).
[[nodiscard]] Expected<Oil> oilOfGrade(int grade);

/// Kinematic viscosity, mm2/s, by log10(log10(v + 0.7)) = A - B log10(T/K) through the oil's two points.
/// @param temperature -20 to 110 Cel
/// Errors: InvalidInput "oil-temperature-out-of-range" with "value", "low", "high".
/// Accuracy: the law's constant of 0.7 holds above about 2 mm2/s; below, that is in grades up to VG 7 when
/// hot, add some per cent. Below its pour point an oil does not follow the law. Source: ASTM D341 (Walther's
/// law).
[[nodiscard]] Expected<RelativeEstimate> kinematicViscosity(const Oil& oil, Temperature temperature);

/// Viscosity at one temperature over that at another. The same oil is doubtful in both, so the doubt shrinks
/// as the temperatures come together. Errors: as kinematicViscosity.
[[nodiscard]] Expected<RelativeEstimate> viscosityRatio(const Oil& oil, Temperature temperature,
                                                        Temperature reference);

}  // namespace hingepin::calibration
