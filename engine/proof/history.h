// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "engine/base/error.h"

/// What the proofs of one scale say over time: drift, the day it leaves its tolerance, how long it may go
/// unproved, and whether something changed. Times are days, or hours in use; errors and limits share one
/// unit, whichever.
namespace hingepin::proof {

/// One proof of a scale.
struct Check {
  double at = 0.0;          ///< rising from check to check
  double error = 0.0;       ///< as found
  double relative_u = 1.0;  ///< > 0, its standard uncertainty over that of the others; their size is not used
  bool set_before = false;  ///< the scale was taught or corrected since the check before
};

/// A straight drift, the same after each setting, and where it stands at the last check.
struct Trend {
  double drift = 0.0;  ///< per unit of time
  double drift_u = 0.0;
  double error = 0.0;  ///< at the last check, by the line
  double error_u = 0.0;
  double covariance = 0.0;  ///< of the two
  double scatter = 0.0;     ///< of a check of relative_u 1 about the line, standard deviation
  int degrees_of_freedom = 0;
  double last_at = 0.0;
};

/// Least squares; the scatter comes from the residuals, so that what varies from visit to visit counts.
/// Errors: Insufficient "history-too-short" where checks are not at least two more than settings (the first
/// counts as one), "history-at-one-time"; InvalidInput "history-disordered".
[[nodiscard]] Expected<Trend> trendOf(std::span<const Check> checks);

/// When the error leaves -limit to limit, on the time scale of the checks.
struct Leaving {
  std::optional<double> expected;  ///< by the line itself; none where it goes back or stays
  std::optional<double> earliest;  ///< none where even the steepest drift that the checks allow stays within
  std::optional<double> latest;    ///< none where they allow that it never leaves
};

/// The band holds the true time in `coverage` of cases where the drift is straight and the scatter normal
/// (at least; about as often as said where the drift is plain). A scale that is beyond its limit at the last
/// check leaves then. Source: Fieller 1954, J. R. Stat. Soc. B 16, 175 (from memory), with Student's t.
/// @param limit > 0
[[nodiscard]] Leaving leavingOf(const Trend& trend, double limit, double coverage);

/// The ways of OIML D 10:2007 / ILAC-G24:2007 to find the next interval (from memory, no text at hand):
/// method 1, the staircase; method 2, the control chart, and method 3, time in use, by leavingOf over days or
/// hours; method 4, checks in service, by what an event makes due (due.h).
struct Staircase {
  double safe_share = 0.8;  ///< of the limit, within which the interval grows (the example of D 10)
  double lengthen = 1.25;   ///< common practice, no source
  double shorten = 0.5;     ///< common practice, no source
  double shortest = 1.0;
  double longest = 1e9;
};
/// @param interval that led to this check
[[nodiscard]] double nextInterval(double interval, double error, double limit, const Staircase& rule);

/// A chart's centre and spread.
struct Baseline {
  double centre = 0.0;
  double sigma = 0.0;
};
/// Mean, and the mean moving range over 1.128 (d2 of two; NIST/SEMATECH e-Handbook 6.3.2.2).
/// Errors: Insufficient "history-too-short" with fewer than two values, "history-without-scatter" where all
/// are alike.
[[nodiscard]] Expected<Baseline> baselineOf(std::span<const double> values);

/// A chart of values in order: what it shows of each, its limits, and which of them signal.
struct ControlChart {
  std::vector<double> shown{};
  double low = 0.0;
  double high = 0.0;
  std::vector<std::size_t> signals{};  ///< indices, rising
};
/// Individuals within `width` sigma (6.3.2.2).
[[nodiscard]] ControlChart shewhartChart(std::span<const double> values, const Baseline& baseline,
                                         double width = 3.0);
/// Exponentially weighted moving average, begun at the centre, its limits those of a long run (6.3.2.4).
/// @param weight of the newest value, within (0, 1]
[[nodiscard]] ControlChart ewmaChart(std::span<const double> values, const Baseline& baseline,
                                     double weight = 0.3, double width = 3.0);

/// Cumulative sums upwards and downwards (6.3.2.3).
struct CusumChart {
  std::vector<double> high_sums{};
  std::vector<double> low_sums{};
  double decision = 0.0;  ///< a sum above it signals
  std::vector<std::size_t> signals{};
};
/// @param slack in sigma: half the shift that matters @param decision in sigma
[[nodiscard]] CusumChart cusumChart(std::span<const double> values, const Baseline& baseline,
                                    double slack = 0.5, double decision = 5.0);

}  // namespace hingepin::proof
