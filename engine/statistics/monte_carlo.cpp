// SPDX-License-Identifier: Apache-2.0
#include "engine/statistics/monte_carlo.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <span>
#include <vector>

namespace hingepin::statistics {
namespace {

/// Mean, standard uncertainty and ends of the symmetric coverage interval (JCGM 101 clauses 7.6 and 7.7).
using Summary = std::array<double, 4>;

/// How many of the sorted values the coverage interval spans, and where the symmetric one begins (from 0).
struct IntervalRanks {
  std::size_t span;
  std::size_t begin;
};

IntervalRanks ranks(std::size_t count, double coverage) {
  const auto m = static_cast<double>(count);
  const auto span = static_cast<std::size_t>(std::clamp(std::floor(coverage * m + 0.5), 1.0, m - 1.0));
  const std::size_t outside = count - span;
  return {span, std::max<std::size_t>((outside + 1) / 2, 1) - 1};
}

Summary summarise(std::span<const double> sorted, double coverage) {
  const auto count = static_cast<double>(sorted.size());
  double mean = 0.0;
  for (const double value : sorted) mean += value - sorted.front();
  mean = sorted.front() + mean / count;
  double squares = 0.0;
  for (const double value : sorted) squares += (value - mean) * (value - mean);
  const auto [span, begin] = ranks(sorted.size(), coverage);
  return {mean, std::sqrt(squares / (count - 1.0)), sorted[begin], sorted[begin + span]};
}

/// Half a unit of the last of so many significant digits of u (clause 7.9.2).
double tolerance(double u, int significant_digits) {
  if (u == 0.0) return 0.0;
  return 0.5 * std::pow(10.0, std::floor(std::log10(u)) - significant_digits + 1);
}

/// Sums over the blocks, from which the standard deviation of an average of them follows.
struct Averages {
  double blocks = 0.0;
  Summary mean{};
  Summary squares{};  ///< about the mean

  void add(const Summary& block) {
    blocks += 1.0;
    for (std::size_t k = 0; k < block.size(); ++k) {
      const double change = block[k] - mean[k];
      mean[k] += change / blocks;
      squares[k] += change * (block[k] - mean[k]);
    }
  }
  /// The standard deviation of all values, from the means and deviations of blocks of one size.
  [[nodiscard]] double pooledSd(double block) const {
    const double within = (block - 1.0) * (squares[1] + blocks * mean[1] * mean[1]);
    return std::sqrt((within + block * squares[0]) / (block * blocks - 1.0));
  }
  [[nodiscard]] bool stable(double allowed) const {
    return blocks > 1.0 && std::ranges::all_of(squares, [&](double square) {
             return 2.0 * std::sqrt(square / (blocks * (blocks - 1.0))) <= allowed;
           });
  }
};

}  // namespace

MonteCarloResult propagate(const std::function<double(Random&)>& trial, Random random, double coverage,
                           int significant_digits, long max_trials) {
  constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
  constexpr MonteCarloResult kNothing{kNan, kNan, kNan, kNan, kNan, kNan, 0, false};
  if (!(coverage > 0.0 && coverage < 1.0)) return kNothing;
  const auto limit = static_cast<std::size_t>(std::max(max_trials, 2L));
  const double tails = std::ceil(100.0 / (1.0 - coverage));
  const std::size_t block =
      std::min(limit, static_cast<std::size_t>(std::clamp(tails, 1e4, static_cast<double>(limit) + 1e4)));

  MonteCarloResult result;
  std::vector<double> values;
  std::vector<double> sorted;
  Averages averages;
  do {
    for (std::size_t i = 0; i < block; ++i) {
      values.push_back(trial(random));
      if (!std::isfinite(values.back())) return kNothing;
    }
    sorted.assign(values.end() - static_cast<std::ptrdiff_t>(block), values.end());
    std::ranges::sort(sorted);
    averages.add(summarise(sorted, coverage));

    result.converged =
        averages.stable(tolerance(averages.pooledSd(static_cast<double>(block)), significant_digits));
  } while (!result.converged && values.size() + block <= limit);
  result.trials = static_cast<long>(values.size());

  std::ranges::sort(values);
  const Summary all = summarise(values, coverage);
  result.mean = all[0];
  result.standard_uncertainty = all[1];
  result.low = all[2];
  result.high = all[3];
  const std::size_t span = ranks(values.size(), coverage).span;
  std::size_t shortest = 0;
  for (std::size_t r = 1; r + span < values.size(); ++r) {
    if (values[r + span] - values[r] < values[shortest + span] - values[shortest]) shortest = r;
  }
  result.shortest_low = values[shortest];
  result.shortest_high = values[shortest + span];
  return result;
}

}  // namespace hingepin::statistics
