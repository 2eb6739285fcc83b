// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <limits>
#include <span>
#include <string>

namespace hingepin::statistics {

/// One line of an uncertainty budget: a named contribution to the result, already in the unit of the result.
struct Contribution {
  std::string name;
  double standard_uncertainty = 0.0;
  double degrees_of_freedom = std::numeric_limits<double>::infinity();
};

struct CombinedUncertainty {
  double standard_uncertainty = 0.0;
  double degrees_of_freedom = 0.0;  ///< Welch-Satterthwaite, GUM eq. G.2b; infinity if all are
  double coverage_factor = 0.0;
  double expanded_uncertainty = 0.0;
};

/// Root sum of squares of independent contributions (GUM 5.1.2 with sensitivities taken in), expanded for
/// `coverage`.
[[nodiscard]] CombinedUncertainty combine(std::span<const Contribution> contributions, double coverage);

}  // namespace hingepin::statistics
