// SPDX-License-Identifier: Apache-2.0
#include "engine/statistics/uncertainty.h"

#include <cmath>

#include "engine/statistics/distributions.h"

namespace hingepin::statistics {

CombinedUncertainty combine(std::span<const Contribution> contributions, double coverage) {
  CombinedUncertainty result;
  for (const Contribution& contribution : contributions)
    result.standard_uncertainty = std::hypot(result.standard_uncertainty, contribution.standard_uncertainty);

  // Ratios, so that fourth powers neither overflow nor vanish.
  double inverse_degrees = 0.0;
  for (const Contribution& contribution : contributions) {
    if (contribution.standard_uncertainty == 0.0) continue;
    const double ratio = contribution.standard_uncertainty / result.standard_uncertainty;
    inverse_degrees += ratio * ratio * ratio * ratio / contribution.degrees_of_freedom;
  }
  result.degrees_of_freedom = 1.0 / inverse_degrees;
  result.coverage_factor = coverageFactor(coverage, result.degrees_of_freedom);
  result.expanded_uncertainty = result.coverage_factor * result.standard_uncertainty;
  return result;
}

}  // namespace hingepin::statistics
