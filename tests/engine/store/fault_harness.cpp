// SPDX-License-Identifier: Apache-2.0
// Stores on a disk that fails: fault_harness <cases of each kind> [first seed]
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>

#include "tests/engine/store/fault_cases.h"

namespace {

using hingepin::store::Tally;

int run(const char* what, std::string (*runCase)(std::uint64_t, Tally&), std::uint64_t first,
        std::uint64_t cases) {
  Tally tally;
  int wrong = 0;
  for (std::uint64_t seed = first; seed < first + cases; ++seed) {
    const std::string said = runCase(seed, tally);
    if (said.empty()) continue;
    ++wrong;
    std::printf("%s, seed %llu: %s\n", what, static_cast<unsigned long long>(seed), said.c_str());
  }
  std::printf(
      "%s: %lld cases, %lld power losses, %lld with faults, %lld operations acknowledged, %lld unanswered "
      "but done, "
      "%lld refused on opening, %lld lost something, %d wrong\n",
      what, static_cast<long long>(tally.cases), static_cast<long long>(tally.power_losses),
      static_cast<long long>(tally.faults), static_cast<long long>(tally.acknowledged),
      static_cast<long long>(tally.unanswered), static_cast<long long>(tally.refused_open),
      static_cast<long long>(tally.lost), wrong);
  return wrong;
}

}  // namespace

int main(int count, char** arguments) {
  const std::uint64_t cases = count > 1 ? std::strtoull(arguments[1], nullptr, 10) : 10000;
  const std::uint64_t first = count > 2 ? std::strtoull(arguments[2], nullptr, 10) : 1;
  int wrong = run("power loss", hingepin::store::losePowerCase, first, cases);
  wrong += run("fault", hingepin::store::faultCase, first, cases);
  wrong += run("lying disk", hingepin::store::lyingCase, first, cases);
  return wrong == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
