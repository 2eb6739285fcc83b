// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>

namespace hingepin::reference {

// Stack loss of an ammonia plant. Source: Brownlee 1965, Statistical Theory and Methodology in Science and
// Engineering; data and results as in the robust-regression tests of statsmodels (results_rlm.py), which took
// them from R (rlm) and SAS.
struct StackLossRow {
  double loss, air_flow, water_temperature, acid;
};
inline constexpr std::array<StackLossRow, 21> kStackLoss{
    {{42, 80, 27, 89}, {37, 80, 27, 88}, {37, 75, 25, 90}, {28, 62, 24, 87}, {18, 62, 22, 87},
     {18, 62, 23, 87}, {19, 62, 24, 93}, {20, 62, 24, 93}, {15, 58, 23, 87}, {14, 58, 18, 80},
     {14, 58, 18, 89}, {13, 58, 17, 88}, {11, 58, 18, 82}, {12, 58, 19, 93}, {8, 50, 18, 89},
     {7, 50, 18, 86},  {8, 50, 19, 72},  {8, 50, 19, 79},  {9, 50, 20, 80},  {15, 56, 20, 82},
     {15, 70, 20, 91}}};

// Coefficients of air flow, water temperature, acid and the constant. `printed` is R's, which stops early;
// `converged` is an independent refit. `variances` are SAS's H1 (Huber 1981, eq. 6.5), in the same order.
struct StackLossResult {
  std::array<double, 4> printed;
  std::array<double, 4> converged;
  double printed_scale;
  double weight_of_row_21;
  std::array<double, 4> variances;
};
inline constexpr StackLossResult kStackLossHuber{{0.82937387, 0.92610818, -0.12784916, -41.02653105},
                                                 {0.82938433, 0.92606597, -0.12784672, -41.02649835},
                                                 2.4407137948148447,
                                                 0.36814106,
                                                 {0.01232, 0.09177, 0.01655, 95.8813}};
inline constexpr StackLossResult kStackLossBisquare{{0.9275471, 0.65073222, -0.11233103, -42.28525369},
                                                    {0.92755732, 0.65071769, -0.11233315, -42.28535078},
                                                    2.2818858795649497,
                                                    0.00222999,
                                                    {0.01161, 0.08646, 0.01559, 90.3354}};

}  // namespace hingepin::reference
