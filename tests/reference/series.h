// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>

namespace hingepin::reference {

// Luteinizing hormone in blood at 10 min intervals, 48 samples. Source: Diggle 1990, Time Series: A
// Biostatistical Introduction, table A.1, series 3 (data set "lh" of R).
inline constexpr std::array<double, 48> kHormone{2.4, 2.4, 2.4, 2.2, 2.1, 1.5, 2.3, 2.3, 2.5, 2.0, 1.9, 1.7,
                                                 2.2, 1.8, 3.2, 3.2, 2.7, 2.2, 2.2, 1.9, 1.9, 1.8, 2.7, 3.0,
                                                 2.3, 2.0, 2.0, 2.9, 2.9, 2.7, 2.7, 2.3, 2.6, 2.4, 1.8, 1.7,
                                                 1.5, 1.4, 2.1, 3.3, 3.5, 3.5, 3.1, 2.6, 2.1, 3.4, 3.0, 2.9};
// Partial autocorrelations at lags 1 and 2 (Yule-Walker). Source: output of R's ar(lh), read in a public
// listing.
inline constexpr std::array<double, 2> kHormonePartial{0.5755244755244756, -0.22340997286429742};
// Burg's coefficients of order 3 and innovation variance about the mean. Source: output of R's ar(lh, method
// = "burg"), from memory.
inline constexpr std::array<double, 3> kHormoneBurg{0.6588, -0.0608, -0.2234};
inline constexpr double kHormoneBurgVariance = 0.1786;

}  // namespace hingepin::reference
