// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cmath>

namespace hingepin::linkage {

/// The integral of a smooth function by Gauss and Legendre's rule of five points on each of `panels` equal
/// panels. Nodes and weights: Abramowitz and Stegun 1964, table 25.4, in closed form.
template <class Function>
double integrate(Function function, double from, double to, int panels) {
  const double inner = std::sqrt(5.0 - 2.0 * std::sqrt(10.0 / 7.0)) / 3.0;
  const double outer = std::sqrt(5.0 + 2.0 * std::sqrt(10.0 / 7.0)) / 3.0;
  const double inner_weight = (322.0 + 13.0 * std::sqrt(70.0)) / 900.0;
  const double outer_weight = (322.0 - 13.0 * std::sqrt(70.0)) / 900.0;
  const double half = 0.5 * (to - from) / panels;
  double sum = 0.0;
  for (int i = 0; i < panels; ++i) {
    const double centre = from + (2 * i + 1) * half;
    sum += 128.0 / 225.0 * function(centre);
    for (const double side : {-1.0, 1.0})
      sum += inner_weight * function(centre + side * inner * half) +
             outer_weight * function(centre + side * outer * half);
  }
  return sum * half;
}

}  // namespace hingepin::linkage
