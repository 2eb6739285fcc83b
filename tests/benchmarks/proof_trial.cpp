// SPDX-License-Identifier: Apache-2.0
#include "tests/engine/proof/proof_trial.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numbers>
#include <string_view>
#include <vector>

namespace {

using namespace hingepin;
using namespace hingepin::proof;

void intervals(int proofs, const Random& random) {
  fmt::print("| readings | step | u of reference | held |\n");
  for (const auto& [step, reference_u] : {std::pair(5.0, 3.0), {0.0, 0.0}, {10.0, 6.0}, {20.0, 3.0}}) {
    for (const int readings : {2, 3, 5, 10}) {
      const double held = coverage({readings, 10.0, step, reference_u}, proofs, random);
      fmt::print("| {} | {} kg | {} kg | {:.2f} % |\n", readings, step, reference_u, 100.0 * held);
      std::fflush(stdout);
    }
  }
}

void acceptance(int proofs, const Random& random) {
  fmt::print("| readings | scatter | step | accepted |\n");
  for (const auto& [scatter, step] : {std::pair(4.0, 1.0), {4.0, 5.0}, {8.0, 5.0}}) {
    for (const int readings : {3, 2, 10}) {
      const double share = acceptedAtTheLimit({readings, scatter, step, 1.0}, 20.0, proofs, random);
      fmt::print("| {} | {} kg | {} kg | {:.2f} % |\n", readings, scatter, step, 100.0 * share);
      std::fflush(stdout);
    }
  }
}

void buckets(int proofs, const Random& random) {
  fmt::print("| mass read | scatter | buckets | decided |\n");
  for (const int readings : {0, 30, 10}) {
    for (const double scatter : {30.0, 60.0, 100.0}) {
      Loading loading{.scatter = scatter};
      loading.readings = readings;
      const Decided decided = decidedAsPlanned(loading, proofs, random);
      fmt::print("| {} | {} kg | {} | {:.1f} % |\n", readings > 0 ? readings : kReadingsOfKnown, scatter,
                 decided.buckets, 100.0 * decided.share);
      std::fflush(stdout);
    }
  }
}

/// The loader itself weighed: the interval of the truck scale is in every bucket.
void weighings(int proofs, const Random& random) {
  fmt::print("| interval | scatter | weighings | decided | held |\n");
  for (const double interval : {10.0, 20.0}) {
    for (const double scatter : {10.0, 30.0, 60.0}) {
      Loading loading{.on_scale = true, .scatter = scatter, .scale_u = 3.0, .interval = interval};
      loading.readings = 0;
      const Decided decided = decidedAsPlanned(loading, proofs, random);
      fmt::print("| {} kg | {} kg | {} | {:.1f} % | {:.1f} % |\n", interval, scatter, decided.buckets,
                 100.0 * decided.share, 100.0 * decided.held);
      std::fflush(stdout);
    }
  }
}

double normal(double z) { return 0.5 * std::erfc(-z / std::numbers::sqrt2); }

/// The probability that two readings stand `apart` marks from each other and their mean misses the truth by
/// more than `width`: exact but for the 200 places between two marks at which the truth is taken. All in
/// steps.
double missed(int apart, double width, double scatter, double reference_u) {
  constexpr int kPlaces = 200;
  const int reach = static_cast<int>(std::ceil(7.0 * scatter)) + 2;
  double sum = 0.0;
  for (int place = 0; place < kPlaces; ++place) {
    const double truth = (place + 0.5) / kPlaces - 0.5;
    const auto shown = [&](int mark) {
      return normal((mark + 0.5 - truth) / scatter) - normal((mark - 0.5 - truth) / scatter);
    };
    for (int mark = -reach; mark <= reach; ++mark) {
      const double probability = (apart > 0 ? 2.0 : 1.0) * shown(mark) * shown(mark + apart);
      const double error = mark + apart / 2.0 - truth;
      const double outside =
          1.0 - normal((width - error) / reference_u) + normal((-width - error) / reference_u);
      sum += probability * outside / kPlaces;
    }
  }
  return sum;
}

/// Two readings tell by how many marks they differ and no more. Of all ways to give each such difference a
/// width that hold the truth in `rate` of proofs whatever the scatter, the one that exceeds the rate least at
/// the scatter asked for. Widths of readings two and more marks apart are taken as wide enough always, so no
/// real way does better.
void attainable() {
  fmt::print("| rate to keep | scatter | u of reference | least held |\n");
  for (const double rate : {0.9545, 0.95}) {
    for (const auto& [scatter, reference_u] : {std::pair(0.5, 0.15), {1.0, 0.6}}) {
      std::vector<double> widths;
      for (double width = 0.4; width < 9.0; width += width < 2.0 ? 0.04 : 0.25) widths.push_back(width);
      const auto missedBy = [&](int apart, double at_scatter) {
        std::vector<double> shares;
        for (const double width : widths) shares.push_back(missed(apart, width, at_scatter, reference_u));
        return shares;
      };
      // By widths of readings that are alike, and of those one mark apart.
      std::vector<std::vector<bool>> allowed(widths.size(), std::vector<bool>(widths.size(), true));
      const auto forAll = [&](double at_scatter, const auto& see) {
        const std::vector<double> alike = missedBy(0, at_scatter);
        const std::vector<double> next = missedBy(1, at_scatter);
        for (std::size_t i = 0; i < widths.size(); ++i)
          for (std::size_t j = 0; j < widths.size(); ++j) see(i, j, alike[i] + next[j]);
      };
      for (const double any : {0.05, 0.1, 0.2, 0.4, 0.5, 0.6, 0.8, 1.0, 1.2, 1.5, 2.0, 3.0, 4.0, 5.0, 7.0})
        forAll(any, [&](std::size_t i, std::size_t j, double share) {
          if (share > 1.0 - rate) allowed[i][j] = false;
        });
      double most_missed = 0.0;
      forAll(scatter, [&](std::size_t i, std::size_t j, double share) {
        if (allowed[i][j]) most_missed = std::max(most_missed, share);
      });
      fmt::print("| {:.2f} % | {} steps | {} steps | {:.2f} % |\n", 100.0 * rate, scatter, reference_u,
                 100.0 * (1.0 - most_missed));
      std::fflush(stdout);
    }
  }
}

}  // namespace

/// hingepin_proof_trial intervals|acceptance|buckets|weighings PROOFS SEED, or attainable: what
/// tests/benchmarks/RESULTS.md says of proofs.
int main(int argument_count, char** arguments) {
  const std::string_view what = argument_count > 1 ? arguments[1] : "";
  if (what == "attainable") {
    attainable();
    return 0;
  }
  if (argument_count != 4) return 2;
  const int proofs = std::atoi(arguments[2]);
  const Random random(static_cast<std::uint64_t>(std::atoll(arguments[3])));
  if (what == "intervals") intervals(proofs, random);
  if (what == "acceptance") acceptance(proofs, random);
  if (what == "buckets") buckets(proofs, random);
  if (what == "weighings") weighings(proofs, random);
}
