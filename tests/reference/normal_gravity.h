// SPDX-License-Identifier: Apache-2.0
#pragma once

/// Normal gravity at sea level, m/s2, and gravity at a height by another formula.
namespace hingepin::reference {

struct NormalGravity {
  double latitude_deg;
  double height_m;
  double grs80_at_sea_level;  ///< Moritz, Geodetic Reference System 1980, Somigliana's formula; ten decimals
  double welmec_at_height;    ///< WELMEC 2, gravity zones: 9.780318 (1 + 0.0053024 s - 0.0000058 s2) -
                              ///< 0.000003085 h
};

inline constexpr NormalGravity kNormalGravity[] = {
    {0, 0, 9.7803267715, 9.7803180000},     {15, 0, 9.7837863976, 9.7837777234},
    {30, 0, 9.7932487036, 9.7932402452},    {45, 0, 9.8061992025, 9.8061908532},
    {45, 1000, 9.8061992025, 9.8031058532}, {52.3, 80, 9.8127389183, 9.8124837099},
    {60, 100, 9.8191783850, 9.8188613242},  {75, 0, 9.8286980584, 9.8286890718},
    {90, 0, 9.8321863685, 9.8321771582}};

// Published with GRS 80 (Moritz 1980): gravity at the equator and at the poles; at 45 deg, from memory.
inline constexpr double kGrs80Equator = 9.7803267715;
inline constexpr double kGrs80Pole = 9.8321863685;
inline constexpr double kGrs80At45 = 9.806199203;

}  // namespace hingepin::reference
