// SPDX-License-Identifier: Apache-2.0
#pragma once

namespace hingepin::simulator {

/// A hydraulic oil by two measured kinematic viscosities, as its data sheet gives them (mm2/s).
struct Oil {
  double at_40_Cel_mm2_per_s = 46.0;
  double at_100_Cel_mm2_per_s = 6.8;
};

/// A mineral oil of viscosity index about 100.
/// @param grade n of "ISO VG n" (ISO 3448): mm2/s at 40 Cel, 10 to 150.
[[nodiscard]] Oil mineralOil(double grade);

/// Kinematic viscosity in mm2/s by the temperature law of ASTM D341, log10(log10(nu + 0.7)) = A - B
/// log10(T/K), through the oil's two points. Its constant 0.7 holds above about 2 mm2/s.
[[nodiscard]] double viscosity(const Oil& oil, double temperature_Cel);

}  // namespace hingepin::simulator
