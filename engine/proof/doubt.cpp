// SPDX-License-Identifier: Apache-2.0
#include "engine/proof/doubt.h"

#include <algorithm>
#include <cmath>

#include "engine/statistics/distributions.h"

namespace hingepin::proof {
namespace {

using statistics::normalCdf;

/// Fractions of a normal's spread beyond which nothing is looked for.
constexpr double kFarOut = 8.0;
constexpr int kTNodes = 200;
constexpr int kTNodesOfPrior = 1000;  // there the integrand may jump
constexpr int kEvenNodes = 32;
constexpr int kNormalNodes = 161;

double normalDensity(double z) { return std::exp(-z * z / 2.0) / std::sqrt(2.0 * M_PI); }

/// Integral of the normal distribution function from minus infinity.
double cumulatedNormal(double z) { return z * normalCdf(z) + normalDensity(z); }

/// P(X <= x) of the sum of a normal and an even spread.
double boundedCdf(double x, double u, double half) {
  if (half <= 1e-6 * u) return u > 0.0 ? normalCdf(x / u) : (x < 0.0 ? 0.0 : 1.0);
  if (u <= 1e-6 * half) return std::clamp((x + half) / (2.0 * half), 0.0, 1.0);
  return std::clamp(u / (2.0 * half) * (cumulatedNormal((x + half) / u) - cumulatedNormal((x - half) / u)),
                    0.0, 1.0);
}

/// Half width that covers 95.45 % of the sum of a normal and an even spread.
double boundedHalfWidth(double u, double half) {
  if (half <= 1e-6 * u) return 2.0 * u;
  double low = 0.0;
  double high = 2.0 * u + half;
  for (int i = 0; i < 60; ++i) {
    const double middle = (low + high) / 2.0;
    (2.0 * boundedCdf(middle, u, half) - 1.0 < statistics::kTwoSigmaCoverage ? low : high) = middle;
  }
  return high;
}

/// The i-th of so many equally probable values of a scatter's error.
double scatterNode(const Doubt& doubt, int i, int nodes) {
  return doubt.scatter_u_kg * statistics::studentQuantile((i + 0.5) / nodes, doubt.degrees_of_freedom);
}

double withinFlat(double estimate, const Doubt& doubt, double limit) {
  const double u = doubt.normal_u_kg;
  const double half = doubt.rectangular_half_kg;
  const double a = doubt.scatter_u_kg;
  const auto bounded = [&](double at) {
    return boundedCdf(limit - at, u, half) - boundedCdf(-limit - at, u, half);
  };
  if (a == 0.0) return bounded(estimate);
  // Whichever of the two is wider is taken as the smooth integrand.
  double sum = 0.0;
  if (a <= std::hypot(u, half / kRoot3)) {
    for (int i = 0; i < kTNodes; ++i) sum += bounded(estimate + scatterNode(doubt, i, kTNodes));
    return sum / kTNodes;
  }
  const auto scattered = [&](double at) {
    return statistics::studentCdf((limit - at) / a, doubt.degrees_of_freedom) -
           statistics::studentCdf((-limit - at) / a, doubt.degrees_of_freedom);
  };
  const double reach = half + kFarOut * u;
  if (reach == 0.0) return scattered(estimate);
  const double cell = 2.0 * reach / kNormalNodes;
  for (int i = 0; i < kNormalNodes; ++i) {
    const double from = -reach + i * cell;
    sum += (boundedCdf(from + cell, u, half) - boundedCdf(from, u, half)) *
           scattered(estimate + from + cell / 2.0);
  }
  return sum;
}

double withinUnder(const NormalPrior& prior, double estimate, const Doubt& doubt, double limit) {
  const double u = doubt.normal_u_kg;
  const double share = prior.u_kg * prior.u_kg / (prior.u_kg * prior.u_kg + u * u);
  const double spread = u * std::sqrt(share);
  const double expected_spread = std::hypot(prior.u_kg, u);
  const int t_nodes = doubt.scatter_u_kg > 0.0 ? kTNodesOfPrior : 1;
  const int even_nodes = doubt.rectangular_half_kg > 0.0 ? kEvenNodes : 1;
  double weight = 0.0;
  double inside = 0.0;
  // Weights relative to the largest, so that an estimate far from the prior does not vanish.
  double largest = -std::numeric_limits<double>::infinity();
  for (int pass = 0; pass < 2; ++pass) {
    for (int i = 0; i < t_nodes; ++i) {
      const double t = t_nodes > 1 ? scatterNode(doubt, i, t_nodes) : 0.0;
      for (int j = 0; j < even_nodes; ++j) {
        const double even =
            even_nodes > 1 ? doubt.rectangular_half_kg * ((2 * j + 1.0) / even_nodes - 1.0) : 0.0;
        const double at = estimate + t + even;
        const double z = (at - prior.mean_kg) / expected_spread;
        if (pass == 0) {
          largest = std::max(largest, -z * z / 2.0);
          continue;
        }
        const double w = std::exp(-z * z / 2.0 - largest);
        const double mean = prior.mean_kg + share * (at - prior.mean_kg);
        weight += w;
        inside += w * (boundedCdf(limit - mean, spread, 0.0) - boundedCdf(-limit - mean, spread, 0.0));
      }
    }
  }
  return inside / weight;
}

}  // namespace

double Doubt::standardUncertainty() const {
  return std::hypot(scatter_u_kg, normal_u_kg, rectangular_half_kg / kRoot3);
}

double halfWidth(const Doubt& doubt) {
  const double bounded = boundedHalfWidth(doubt.normal_u_kg, doubt.rectangular_half_kg);
  if (doubt.scatter_u_kg == 0.0) return bounded;
  const double t =
      statistics::studentQuantile((1.0 + statistics::kTwoSigmaCoverage) / 2.0, doubt.degrees_of_freedom);
  const double scatter = doubt.scatter_u_kg * doubt.scatter_u_kg;
  const double rest =
      (1.0 - 0.4 / doubt.degrees_of_freedom) *
      (doubt.normal_u_kg * doubt.normal_u_kg + doubt.rectangular_half_kg * doubt.rectangular_half_kg / 3.0);
  const double factor_squared = (t * t * scatter + 4.0 * rest) / (scatter + rest);
  return std::hypot(bounded, doubt.scatter_u_kg * std::sqrt(factor_squared));
}

double probabilityWithin(double estimate_kg, const Doubt& doubt, double limit_kg,
                         const std::optional<NormalPrior>& prior) {
  const double p =
      prior ? withinUnder(*prior, estimate_kg, doubt, limit_kg) : withinFlat(estimate_kg, doubt, limit_kg);
  return std::clamp(p, 0.0, 1.0);
}

double unhiddenScatter(double scatter_kg, int readings, double step_kg) {
  if (step_kg == 0.0) return scatter_kg;
  // Of a step, or pure numbers; found by simulation, so that the interval neither misses the rate nor exceeds
  // it by more than it must.
  constexpr double kHiddenByTwo = 0.25;
  constexpr double kFewMarks = 0.45;
  constexpr double kOverstated = 0.85;
  const double degrees = readings - 1.0;
  const double few_marks = std::exp(-std::pow(scatter_kg / (kFewMarks * step_kg), 4));
  return std::max(scatter_kg * (1.0 - kOverstated / std::sqrt(degrees) * few_marks),
                  kHiddenByTwo * step_kg / (degrees * degrees));
}

double roundingHalf(double scatter_kg, double step_kg) {
  if (step_kg == 0.0) return 0.0;
  const double ratio = scatter_kg / step_kg;
  return step_kg / 2.0 * std::sqrt(std::max(0.0, 1.0 - 4.0 * ratio * ratio));
}

Risks globalRisks(const NormalPrior& prior, double u_kg, double limit_kg, double acceptance_kg) {
  // Midpoints of the prior, split at the limits, where the integrands jump.
  constexpr int kCells = 2000;
  const double low = prior.mean_kg - kFarOut * prior.u_kg;
  const double high = prior.mean_kg + kFarOut * prior.u_kg;
  const auto accepted = [&](double truth) {
    return boundedCdf(acceptance_kg - truth, u_kg, 0.0) - boundedCdf(-acceptance_kg - truth, u_kg, 0.0);
  };
  const auto integrate = [&](double from, double to, auto&& value) {
    from = std::max(from, low);
    to = std::min(to, high);
    if (from >= to) return 0.0;
    double sum = 0.0;
    const double cell = (to - from) / kCells;
    for (int i = 0; i < kCells; ++i) {
      const double truth = from + (i + 0.5) * cell;
      sum += normalDensity((truth - prior.mean_kg) / prior.u_kg) / prior.u_kg * value(truth) * cell;
    }
    return sum;
  };
  const auto rejected = [&](double truth) { return 1.0 - accepted(truth); };
  return {.consumers = integrate(low, -limit_kg, accepted) + integrate(limit_kg, high, accepted),
          .producers = integrate(-limit_kg, limit_kg, rejected)};
}

}  // namespace hingepin::proof
