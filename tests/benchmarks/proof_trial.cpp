// SPDX-License-Identifier: Apache-2.0
#include "tests/engine/proof/proof_trial.h"

#include <fmt/format.h>

#include <cstdlib>
#include <string_view>

namespace {

using namespace hingepin;
using namespace hingepin::proof;

void intervals(int proofs) {
  fmt::print("| readings | step | u of reference | held |\n");
  for (const auto& [step, reference_u] : {std::pair(5.0, 3.0), {0.0, 0.0}, {10.0, 6.0}, {20.0, 3.0}}) {
    for (const int readings : {3, 2, 5, 10}) {
      const double held = coverage({readings, 10.0, step, reference_u}, proofs, Random(101));
      fmt::print("| {} | {} kg | {} kg | {:.2f} % |\n", readings, step, reference_u, 100.0 * held);
      std::fflush(stdout);
    }
  }
}

void acceptance(int proofs) {
  fmt::print("| readings | scatter | step | accepted |\n");
  for (const auto& [scatter, step] : {std::pair(4.0, 1.0), {4.0, 5.0}, {8.0, 5.0}}) {
    for (const int readings : {3, 2, 10}) {
      const double share = acceptedAtTheLimit({readings, scatter, step, 1.0}, 20.0, proofs, Random(103));
      fmt::print("| {} | {} kg | {} kg | {:.2f} % |\n", readings, scatter, step, 100.0 * share);
      std::fflush(stdout);
    }
  }
}

void buckets(int proofs) {
  fmt::print("| mass read | scatter | buckets | decided |\n");
  for (const int readings : {0, 30, 10}) {
    for (const double scatter : {30.0, 60.0, 100.0}) {
      Loading loading{.scatter = scatter};
      loading.readings = readings;
      const Decided decided = decidedAsPlanned(loading, proofs, Random(107));
      fmt::print("| {} | {} kg | {} | {:.1f} % |\n", readings > 0 ? readings : kReadingsOfKnown, scatter,
                 decided.buckets, 100.0 * decided.share);
      std::fflush(stdout);
    }
  }
}

/// The loader itself weighed: the interval of the truck scale is in every bucket.
void weighings(int proofs) {
  fmt::print("| interval | scatter | weighings | decided | held |\n");
  for (const double interval : {10.0, 20.0}) {
    for (const double scatter : {10.0, 30.0, 60.0}) {
      Loading loading{.on_scale = true, .scatter = scatter, .scale_u = 3.0, .interval = interval};
      loading.readings = 0;
      const Decided decided = decidedAsPlanned(loading, proofs, Random(109));
      fmt::print("| {} kg | {} kg | {} | {:.1f} % | {:.1f} % |\n", interval, scatter, decided.buckets,
                 100.0 * decided.share, 100.0 * decided.held);
      std::fflush(stdout);
    }
  }
}

}  // namespace

/// hingepin_proof_trial intervals|acceptance|buckets|weighings PROOFS: what tests/benchmarks/RESULTS.md says
/// of proofs.
int main(int argument_count, char** arguments) {
  if (argument_count != 3) return 2;
  const std::string_view what = arguments[1];
  const int proofs = std::atoi(arguments[2]);
  if (what == "intervals") intervals(proofs);
  if (what == "acceptance") acceptance(proofs);
  if (what == "buckets") buckets(proofs);
  if (what == "weighings") weighings(proofs);
}
