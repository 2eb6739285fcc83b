// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <functional>

#include "engine/base/random.h"

namespace hingepin::statistics {

struct MonteCarloResult {
  double mean = 0.0;
  double standard_uncertainty = 0.0;
  double low = 0.0;  ///< ends of the probabilistically symmetric coverage interval
  double high = 0.0;
  double shortest_low = 0.0;  ///< ends of the shortest coverage interval
  double shortest_high = 0.0;
  long trials = 0;
  bool converged = false;  ///< the numerical tolerance was met before max_trials
};

/// Adaptive Monte Carlo of JCGM 101:2008 clause 7.9: blocks of 10^4 trials (of
/// 100 / (1 - coverage) if that is more) until mean, standard uncertainty and interval
/// ends are stable (2 standard deviations of the averages) to the numerical tolerance of `significant_digits`
/// digits of the standard uncertainty.
/// @param trial draws the inputs from the stream it is handed and returns one value of the output
/// @param coverage within (0, 1)
/// @param max_trials never exceeded (2 at the least); below two blocks nothing can be said to have converged
/// @return NaNs and 0 trials for a coverage out of range or a value that is not finite
[[nodiscard]] MonteCarloResult propagate(const std::function<double(Random&)>& trial, Random random,
                                         double coverage, int significant_digits, long max_trials);

}  // namespace hingepin::statistics
