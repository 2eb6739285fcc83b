// SPDX-License-Identifier: Apache-2.0
#pragma once

/// Kinematic viscosity of an ISO VG 46 oil, mm2/s, by ASTM D341 in the form log10(log10(v + 0.7)) = A - B
/// log10(T/K) through 46 mm2/s at 40 Cel (ISO 3448 midpoint) and 6.8 mm2/s at 100 Cel (typical mineral oil of
/// viscosity index 100, from memory); worked out apart from this project's code.
namespace hingepin::reference {

inline constexpr double kWaltherA = 9.417992554;
inline constexpr double kWaltherB = 3.684441498;

struct OilViscosity {
  double temperature_Cel;
  double viscosity_mm2_s;  ///< four decimals
};

inline constexpr OilViscosity kVg46[] = {{-20, 4517.8408}, {-10, 1474.3266}, {0, 577.3214}, {10, 261.8737},
                                         {20, 133.8382},   {30, 75.3945},    {40, 46.0000}, {50, 29.9730},
                                         {60, 20.6227},    {70, 14.8473},    {80, 11.1026}, {90, 8.5720},
                                         {100, 6.8000}};

// Midpoints of ISO 3448, mm2/s at 40 Cel, by grade (from memory).
struct Grade {
  int number;
  double midpoint_mm2_s;
};
inline constexpr Grade kIso3448[] = {{2, 2.2},   {3, 3.2},     {5, 4.6},     {7, 6.8},     {10, 10},
                                     {15, 15},   {22, 22},     {32, 32},     {46, 46},     {68, 68},
                                     {100, 100}, {150, 150},   {220, 220},   {320, 320},   {460, 460},
                                     {680, 680}, {1000, 1000}, {1500, 1500}, {2200, 2200}, {3200, 3200}};

}  // namespace hingepin::reference
