// SPDX-License-Identifier: Apache-2.0
#include "engine/calibration/viscosity.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace hingepin::calibration {
namespace {

struct Grade {
  int number;
  double at_40_Cel_mm2_s;
  double at_100_Cel_mm2_s;
};

// At 40 Cel: the midpoints of ISO 3448. At 100 Cel: mineral oil of viscosity index 100, from memory; the very
// thin and very thick ones carried on along the trend of the others.
constexpr Grade kGrades[] = {
    {2, 2.2, 1.03},       {3, 3.2, 1.30},       {5, 4.6, 1.63},       {7, 6.8, 2.08},
    {10, 10.0, 2.64},     {15, 15.0, 3.4},      {22, 22.0, 4.3},      {32, 32.0, 5.4},
    {46, 46.0, 6.8},      {68, 68.0, 8.7},      {100, 100.0, 11.4},   {150, 150.0, 15.0},
    {220, 220.0, 19.4},   {320, 320.0, 24.9},   {460, 460.0, 31.5},   {680, 680.0, 40.7},
    {1000, 1000.0, 52.4}, {1500, 1500.0, 68.3}, {2200, 2200.0, 86.8}, {3200, 3200.0, 109.0}};

double ordinate(double viscosity_mm2_s) { return std::log10(std::log10(viscosity_mm2_s + 0.7)); }

/// d(ln v) / d(ordinate), up to a factor that is the same for all v.
double steepness(double viscosity_mm2_s) {
  const double shifted = viscosity_mm2_s + 0.7;
  return shifted * std::log(shifted) / viscosity_mm2_s;
}

/// Viscosity and its relative sensitivity to the relative change of each of the oil's two points.
struct Sensitive {
  double value;
  double by_40_Cel;
  double by_100_Cel;
};

Expected<Sensitive> viscosity(const Oil& oil, Temperature temperature) {
  constexpr double kLowest_Cel = -20.0, kHighest_Cel = 110.0;
  // A bound that went through kelvin must still count as inside.
  constexpr double kRounding_Cel = 1e-9;
  const double celsius = temperature.inCelsius();
  if (!(celsius >= kLowest_Cel - kRounding_Cel && celsius <= kHighest_Cel + kRounding_Cel))
    return fail(ErrorKind::InvalidInput, "oil-temperature-out-of-range",
                {{"value", Amount{celsius, "Cel", 0}},
                 {"low", Amount{kLowest_Cel, "Cel", 0}},
                 {"high", Amount{kHighest_Cel, "Cel", 0}}});
  const double cool_K = 313.15, hot_K = 373.15;
  const double share = std::log(temperature.inKelvin() / cool_K) / std::log(hot_K / cool_K);
  const double value = std::pow(10.0, std::pow(10.0, std::lerp(ordinate(oil.at_40_Cel_mm2_s),
                                                               ordinate(oil.at_100_Cel_mm2_s), share))) -
                       0.7;
  const double here = steepness(value);
  return Sensitive{value, (1.0 - share) * here / steepness(oil.at_40_Cel_mm2_s),
                   share * here / steepness(oil.at_100_Cel_mm2_s)};
}

}  // namespace

Expected<Oil> oilOfGrade(int grade) {
  const auto* found = std::ranges::find(kGrades, grade, &Grade::number);
  if (found == std::end(kGrades))
    return fail(ErrorKind::InvalidInput, "oil-grade-unknown",
                {{"grade", Amount{static_cast<double>(grade), "1", 0}}});
  const double limits_u = 0.10 / std::numbers::sqrt3;
  return Oil{found->at_40_Cel_mm2_s, limits_u, found->at_100_Cel_mm2_s,
             grade >= 15 && grade <= 100 ? 0.06 : 0.10};
}

Expected<RelativeEstimate> kinematicViscosity(const Oil& oil, Temperature temperature) {
  const auto here = viscosity(oil, temperature);
  if (!here) return std::unexpected(here.error());
  return RelativeEstimate{here->value, std::hypot(here->by_40_Cel * oil.at_40_Cel_relative_u,
                                                  here->by_100_Cel * oil.at_100_Cel_relative_u)};
}

Expected<RelativeEstimate> viscosityRatio(const Oil& oil, Temperature temperature, Temperature reference) {
  const auto here = viscosity(oil, temperature);
  if (!here) return std::unexpected(here.error());
  const auto there = viscosity(oil, reference);
  if (!there) return std::unexpected(there.error());
  return RelativeEstimate{here->value / there->value,
                          std::hypot((here->by_40_Cel - there->by_40_Cel) * oil.at_40_Cel_relative_u,
                                     (here->by_100_Cel - there->by_100_Cel) * oil.at_100_Cel_relative_u)};
}

}  // namespace hingepin::calibration
