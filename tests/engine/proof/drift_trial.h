// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cmath>
#include <cstdint>
#include <optional>
#include <vector>

#include "engine/base/random.h"
#include "engine/proof/history.h"

/// Scales that drift with known truth, proved at visits: how often the band of `leavingOf` holds the true
/// time.
namespace hingepin::proof {

struct DriftCase {
  int checks = 5;                ///< a scale, at times that scatter about a month apart
  int settings = 1;              ///< how many of these were set anew, evenly through the history
  double drift_per_month = 0.1;  ///< of the limit
  double scatter = 0.1;          ///< of one visit, of the limit
};

struct DriftRate {
  int scales = 0;
  int held = 0;
  int early = 0;    ///< the true time lies before the band
  int late = 0;     ///< after it
  int bounded = 0;  ///< both ends of the band are told
  [[nodiscard]] double share() const { return double(held) / double(scales); }
};

/// @return what came of `scales` scales. A scale that is beyond its limit already at its last visit leaves
/// then.
inline DriftRate runDrift(const DriftCase& drift, int scales, double coverage, Random random) {
  DriftRate rate;
  const double limit = 1.0;
  for (int scale = 0; scale < scales; ++scale) {
    std::vector<Check> checks;
    double at = 0.0, offset = 0.2 * random.normal();
    double truth = 0.0;
    const double direction = random.uniform() < 0.5 ? -1.0 : 1.0;
    double since = 0.0;
    for (int i = 0; i < drift.checks; ++i) {
      at += 0.7 + 0.6 * random.uniform();
      since += i > 0 ? at - checks.back().at : 0.0;
      const bool set = i > 0 && drift.settings > 1 && i % (drift.checks / drift.settings) == 0;
      if (set) {
        offset = 0.2 * random.normal();
        since = 0.0;
      }
      truth = offset + direction * drift.drift_per_month * since;
      checks.push_back({.at = at, .error = truth + drift.scatter * random.normal(), .set_before = set});
    }
    // The true line from the last visit on.
    std::optional<double> true_at;
    if (std::abs(truth) >= limit) {
      true_at = at;
    } else if (drift.drift_per_month != 0.0) {
      true_at = at + (limit - direction * truth) / drift.drift_per_month;
    }
    const Expected<Trend> trend = trendOf(checks);
    if (!trend) continue;
    const Leaving leaving = leavingOf(*trend, limit, coverage);
    ++rate.scales;
    const double t = true_at.value_or(HUGE_VAL);
    const bool early = leaving.earliest ? t < *leaving.earliest : t < HUGE_VAL;
    const bool late = leaving.latest && t > *leaving.latest;
    rate.early += early;
    rate.late += late;
    rate.held += !early && !late;
    rate.bounded += leaving.earliest && leaving.latest;
  }
  return rate;
}

}  // namespace hingepin::proof
