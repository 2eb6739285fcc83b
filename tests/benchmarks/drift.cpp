// SPDX-License-Identifier: Apache-2.0
#include <cstdio>
#include <cstdlib>

#include "tests/engine/proof/drift_trial.h"

using namespace hingepin;
using namespace hingepin::proof;

/// How often the band around the day on which a drifting scale leaves its limit holds the true day.
/// Arguments: scales a case, seed.
int main(int count, char** arguments) {
  const int scales = count > 1 ? std::atoi(arguments[1]) : 100'000;
  const std::uint64_t seed = count > 2 ? std::strtoull(arguments[2], nullptr, 10) : 1;
  std::printf(
      "| proofs | settings | drift a month | scatter | inside its 95 %% band | before | after | both ends "
      "told |\n");
  std::printf("| --- | --- | --- | --- | --- | --- | --- | --- |\n");
  std::uint64_t part = 0;
  for (const DriftCase& each :
       {DriftCase{.checks = 3, .drift_per_month = 0.1, .scatter = 0.02},
        DriftCase{.checks = 3, .drift_per_month = 0.05, .scatter = 0.1},
        DriftCase{.checks = 5, .drift_per_month = 0.1, .scatter = 0.05},
        DriftCase{.checks = 5, .drift_per_month = 0.02, .scatter = 0.1},
        DriftCase{.checks = 9, .settings = 3, .drift_per_month = 0.1, .scatter = 0.1},
        DriftCase{.checks = 12, .settings = 2, .drift_per_month = 0.05, .scatter = 0.1},
        DriftCase{.checks = 12, .drift_per_month = 0.03, .scatter = 0.05},
        DriftCase{.checks = 12, .drift_per_month = 0.0, .scatter = 0.1}}) {
    const DriftRate rate = runDrift(each, scales, 0.95, Random(seed).fork(++part));
    const auto percent = [&](int of) { return 100.0 * of / rate.scales; };
    std::printf("| %d | %d | %.2f | %.2f | %.2f %% | %.2f %% | %.2f %% | %.1f %% |\n", each.checks,
                each.settings, each.drift_per_month, each.scatter, percent(rate.held), percent(rate.early),
                percent(rate.late), percent(rate.bounded));
  }
}
