// SPDX-License-Identifier: Apache-2.0
#include "engine/simulator/oil.h"

#include <cmath>

namespace hingepin::simulator {

namespace {

constexpr double kZeroCelsius_K = 273.15;

double doubleLog(double viscosity_mm2_per_s) { return std::log10(std::log10(viscosity_mm2_per_s + 0.7)); }

}  // namespace

Oil mineralOil(double grade) {
  // A straight line in the law's own axes through the usual VG 32 and VG 100 oils of viscosity index 100: 5.4
  // and 11.2 mm2/s at 100 Cel (from memory). It gives 6.8 at VG 46.
  const double low = doubleLog(32.0);
  const double high = doubleLog(100.0);
  const double share = (doubleLog(grade) - low) / (high - low);
  const double hot = doubleLog(5.4) + share * (doubleLog(11.2) - doubleLog(5.4));
  return {grade, std::pow(10.0, std::pow(10.0, hot)) - 0.7};
}

double viscosity(const Oil& oil, double temperature_Cel) {
  const double cool = std::log10(40.0 + kZeroCelsius_K);
  const double warm = std::log10(100.0 + kZeroCelsius_K);
  const double slope =
      (doubleLog(oil.at_40_Cel_mm2_per_s) - doubleLog(oil.at_100_Cel_mm2_per_s)) / (warm - cool);
  const double at =
      doubleLog(oil.at_40_Cel_mm2_per_s) - slope * (std::log10(temperature_Cel + kZeroCelsius_K) - cool);
  return std::pow(10.0, std::pow(10.0, at)) - 0.7;
}

}  // namespace hingepin::simulator
