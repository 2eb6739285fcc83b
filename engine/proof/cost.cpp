// SPDX-License-Identifier: Apache-2.0
#include "engine/proof/cost.h"

#include <cmath>
#include <limits>
#include <utility>

#include "engine/statistics/distributions.h"

namespace hingepin::proof {
namespace {

constexpr int kMostWeighings = 200;  // of trucks, or of the loader
constexpr double kTonne_kg = 1000.0;

struct Share {
  double value = 0.0;
  double u = 0.0;
};

/// The error of a load of `load_kg` as a share of it.
Share shareAt(const ProofResult& result, double load_kg) {
  if (result.correction) {
    const Correction& correction = *result.correction;
    const double slope = 1.0 / correction.span_factor;
    const double slope_u = correction.span_factor_u * slope * slope;
    const double covariance = -correction.covariance_kg * slope * slope;
    const double variance =
        std::pow(correction.zero_u_kg, 2) + std::pow(load_kg * slope_u, 2) + 2.0 * load_kg * covariance;
    return {slope - 1.0 + correction.zero_kg / load_kg, std::sqrt(std::max(variance, 0.0)) / load_kg};
  }
  double error_kg = 0.0;
  double reference_kg = 0.0;
  double variance = 0.0;
  for (const std::vector<Judgement>* list : {&result.masses, &result.trucks, &result.loader_on_scale}) {
    for (const Judgement& judgement : *list) {
      error_kg += judgement.error.value_kg;
      reference_kg += judgement.reference_kg;
      variance += std::pow(judgement.error.standardUncertainty(), 2);
    }
  }
  if (reference_kg <= 0.0) return {};
  return {error_kg / reference_kg, std::sqrt(variance) / reference_kg};
}

double meanLoad(const ProofResult& result) {
  double sum_kg = 0.0;
  double count = 0.0;
  for (const Judgement& mass : result.masses) {
    sum_kg += mass.reference_kg;
    count += 1.0;
  }
  for (const Judgement& truck : result.trucks) {
    sum_kg += truck.reference_kg;
    count += truck.count;
  }
  for (const Judgement& loader : result.loader_on_scale) {
    sum_kg += loader.reference_kg;
    count += 1.0;
  }
  return count > 0.0 ? sum_kg / count : 0.0;
}

/// The estimate, from `low` to `high`, at which the probability of conformity falls through `wanted`.
double estimateAt(const Doubt& doubt, double limit_kg, double wanted, double low, double high) {
  for (int i = 0; i < 50; ++i) {
    const double middle = (low + high) / 2.0;
    (probabilityWithin(middle, doubt, limit_kg) > wanted ? low : high) = middle;
  }
  return (low + high) / 2.0;
}

/// How often a guarded rule decides if the true error is `error_kg`.
double rateOfDeciding(const Doubt& doubt, double error_kg, double limit_kg, double confidence) {
  const double far_kg = limit_kg + 100.0 * doubt.standardUncertainty();
  double rate = 0.0;
  if (probabilityWithin(0.0, doubt, limit_kg) >= confidence) {
    const double accepted_kg = estimateAt(doubt, limit_kg, confidence, 0.0, far_kg);
    rate += probabilityWithin(error_kg, doubt, accepted_kg);
  }
  if (probabilityWithin(0.0, doubt, limit_kg) > 1.0 - confidence) {
    const double rejected_kg = estimateAt(doubt, limit_kg, 1.0 - confidence, 0.0, far_kg);
    rate += 1.0 - probabilityWithin(error_kg, doubt, rejected_kg);
  } else {
    rate = 1.0;  // whatever is read speaks against it
  }
  return rate;
}

}  // namespace

Mass assumedScaleU(Mass interval, Mass net) {
  const ClassLimit in_service{ClassScheme::OimlR76, "III", interval, Stage::InService};
  // A net beyond the class's last row is judged by that row.
  const Expected<Mass> limit = limitAt(in_service, std::min(net, 10000.0 * interval), Mass());
  return limit.value_or(3.0 * interval) / std::sqrt(3.0);
}

Cost costOf(const Costs& costs, const ProofResult& result, double scatter_kg) {
  Cost cost;
  const bool has_truck = costs.truck_target && costs.buckets_per_truck;
  const double load_kg =
      has_truck ? costs.truck_target->inKilograms() / *costs.buckets_per_truck : meanLoad(result);
  if (load_kg <= 0.0) return cost;
  const Share share = shareAt(result, load_kg);
  // What was there for each kilogram that was shown.
  const double true_per_shown = 1.0 / (1.0 + share.value);
  const double per_day_t = costs.per_day.inKilograms() / kTonne_kg;
  cost.given_away_t_per_day = per_day_t * (true_per_shown - 1.0);
  cost.given_away_u_t_per_day = per_day_t * share.u * true_per_shown * true_per_shown;
  if (costs.price_per_tonne) cost.money_per_day = cost.given_away_t_per_day * *costs.price_per_tonne;
  if (costs.truck_target && costs.truck_legal) {
    const double over_kg =
        costs.truck_target->inKilograms() * true_per_shown - costs.truck_legal->inKilograms();
    cost.overload_kg_per_truck = over_kg;
    if (costs.trucks_per_day && costs.buckets_per_truck) {
      const double sd_kg = scatter_kg * std::sqrt(*costs.buckets_per_truck);
      const double over = sd_kg > 0.0 ? statistics::normalCdf(over_kg / sd_kg) : (over_kg > 0.0 ? 1.0 : 0.0);
      cost.trucks_over_per_day = *costs.trucks_per_day * over;
    }
  }
  return cost;
}

Expected<PlanResult> planFor(const Plan& plan, const Proof& proof, const PlannedScatter& scatter) {
  const Expected<Mass> limit = limitAt(proof.tolerance, plan.bucket, proof.rated_payload.value_or(Mass()));
  if (!limit) return std::unexpected(limit.error());
  if (!plan.repeatability && scatter.degrees_of_freedom <= 0.0)
    return fail(ErrorKind::Insufficient, "plan-without-repeatability");
  const double sd_kg = plan.repeatability ? plan.repeatability->inKilograms() : scatter.sd_kg;
  const double degrees =
      plan.repeatability ? std::numeric_limits<double>::infinity() : scatter.degrees_of_freedom;
  // Trucks add up to one sum, of which each takes so many buckets; the loader's buckets give one mean.
  const double each = plan.loader_on_scale ? 1.0 : plan.buckets;
  const double interval_kg = plan.scale_interval.inKilograms();
  const double net_u_kg =
      plan.scale_net_u.value_or(assumedScaleU(plan.scale_interval, each * plan.bucket)).inKilograms();
  const double error_kg = plan.error.value_or(Mass()).inKilograms();

  /// Of what `times` weighings say, for one bucket.
  const auto doubtOf = [&](int times) {
    if (plan.loader_on_scale) {
      return Doubt{.scatter_u_kg = std::hypot(sd_kg, interval_kg / std::sqrt(12.0)) / std::sqrt(times),
                   .degrees_of_freedom = std::max(times - 1.0, 1.0),
                   .normal_u_kg = net_u_kg,
                   .rectangular_half_kg = interval_kg / 2.0};
    }
    // Rounding of gross and tare.
    return Doubt{.scatter_u_kg = sd_kg / std::sqrt(times * each),
                 .degrees_of_freedom = degrees,
                 .normal_u_kg = std::hypot(interval_kg / std::sqrt(6.0) / std::sqrt(times), net_u_kg) / each};
  };
  PlanResult result;
  result.smallest_error_shown_kg = halfWidth(doubtOf(plan.loader_on_scale ? plan.buckets : 1));
  const auto decides = [&](int times) {
    return proof.decision.rule == Rule::Simple ||
           rateOfDeciding(doubtOf(times), error_kg, limit->inKilograms(), proof.decision.confidence) >=
               plan.rate;
  };
  // One weighing of the loader says nothing of the scatter. More weighings decide more often.
  int fewest = plan.loader_on_scale ? 2 : 1;
  if (!decides(fewest)) {
    if (!decides(kMostWeighings)) return result;
    int too_few = std::exchange(fewest, kMostWeighings);
    while (fewest - too_few > 1) {
      const int middle = (too_few + fewest) / 2;
      (decides(middle) ? fewest : too_few) = middle;
    }
  }
  if (!plan.loader_on_scale) result.trucks = fewest;
  result.buckets = fewest * static_cast<int>(each);
  return result;
}

}  // namespace hingepin::proof
