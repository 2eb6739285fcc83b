// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <cmath>

#include "engine/base/random.h"
#include "engine/proof/proof.h"
#include "tests/engine/proof/kilograms.h"

/// Proofs of a scale whose truth is known. All of it is drawn; no code is shared with how a proof is judged.
namespace hingepin::proof {

/// A scale and how it is proved, in kg.
struct Situation {
  int readings = 3;
  double scatter = 10.0;
  double step = 1.0;         ///< of the display; 0: none
  double reference_u = 1.0;  ///< how the stated mass strays from the true one
};

inline double displayed(double value, double step) {
  return step > 0.0 ? std::round(value / step) * step : value;
}

/// One known mass of about 3000 kg, read by a scale whose true error there is `error`.
inline Proof drawnProof(const Situation& situation, double error, double limit, Rule rule, Random& random) {
  Proof proof;
  proof.unit = "drawn";
  proof.rated_payload = kg(5000);
  proof.tolerance = StepLimit{{{kg(10000), kg(limit)}}};
  proof.decision.rule = rule;
  proof.display_step = kg(situation.step);
  const double truth = 3000.0 + random.uniform(0.0, 100.0);
  KnownMass mass;
  mass.reference = kg(truth + situation.reference_u * random.normal());
  mass.reference_u = kg(situation.reference_u);
  for (int i = 0; i < situation.readings; ++i) {
    const double shown = truth + error + situation.scatter * random.normal();
    mass.indications.push_back(kg(displayed(shown, situation.step)));
  }
  proof.masses.push_back(mass);
  return proof;
}

/// The share of proofs whose interval holds the true error.
inline double coverage(const Situation& situation, int proofs, Random random) {
  int held = 0;
  for (int i = 0; i < proofs; ++i) {
    const double error = random.uniform(-30.0, 30.0);
    const Proof proof = drawnProof(situation, error, 20.0, Rule::Simple, random);
    const Finding found = prove(proof).value().masses[0].error;
    held += std::abs(found.value_kg - error) <= found.expanded_uncertainty_kg * (1.0 + 1e-9) ? 1 : 0;
  }
  return held / static_cast<double>(proofs);
}

/// The share of proofs that a guarded rule of 95 % accepts although the true error is at the limit.
inline double acceptedAtTheLimit(const Situation& situation, double limit, int proofs, Random random) {
  int accepted = 0;
  for (int i = 0; i < proofs; ++i) {
    const double error = random.uniform() < 0.5 ? limit : -limit;
    const Proof proof = drawnProof(situation, error, limit, Rule::Guarded, random);
    accepted += prove(proof).value().verdict == Verdict::Holds ? 1 : 0;
  }
  return accepted / static_cast<double>(proofs);
}

/// Readings of the known mass where its scatter is known well.
inline constexpr int kReadingsOfKnown = 200;

/// A loader that fills trucks, or is weighed itself, in kg a bucket.
struct Loading {
  bool on_scale = false;
  double scatter = 60.0;
  double error = 20.0;
  double limit = 45.0;
  double scale_u = 10.0;
  double interval = 20.0;
  int buckets_per_truck = 5;
  double rate = 0.9;
  int readings =
      20;  ///< of the known mass that tells the scatter; 0: the plan states it, and it is known well
};

struct Decided {
  int buckets = 0;  ///< that were said to be needed, as a mean
  double share = 0.0;
  double held = 0.0;  ///< of the intervals of a loader on the scale, those that hold the true error
  double none = 0.0;  ///< of the proofs, those of which no number was said to decide
};

/// The loader weighed empty, then with each of so many buckets.
inline LoaderOnScale drawnOnScale(const Loading& loading, int buckets, double scale_error, Random& random) {
  LoaderOnScale loader;
  loader.scale.interval = kg(loading.interval);
  loader.scale.net_u = kg(loading.scale_u);
  const double empty = 15000.0 + random.uniform(0.0, 1000.0);
  loader.empty = kg(displayed(empty, loading.interval));
  for (int bucket = 0; bucket < buckets; ++bucket) {
    const double held = 4500.0 + 200.0 * random.normal();
    loader.buckets.push_back({kg(displayed(empty + held + scale_error, loading.interval)),
                              kg(held + loading.error + loading.scatter * random.normal())});
  }
  return loader;
}

/// How often as many buckets as were said to be needed do decide.
inline Decided decidedAsPlanned(const Loading& loading, int proofs, Random random) {
  int decided = 0;
  int planned = 0;
  int covered = 0;
  double buckets = 0.0;
  std::optional<PlanResult> stated;
  for (int i = 0; i < proofs; ++i) {
    Proof proof =
        drawnProof({loading.readings > 0 ? loading.readings : kReadingsOfKnown, loading.scatter, 0.0, 1.0},
                   loading.error, loading.limit, Rule::Guarded, random);
    proof.plan =
        Plan{.bucket = kg(4500), .loader_on_scale = loading.on_scale, .buckets = loading.buckets_per_truck};
    proof.plan->scale_interval = kg(loading.interval);
    proof.plan->scale_net_u = kg(loading.scale_u);
    proof.plan->error = kg(loading.error);
    proof.plan->rate = loading.rate;
    if (loading.readings == 0) proof.plan->repeatability = kg(loading.scatter);
    // What the plan states itself is the same each time.
    if (!stated || loading.readings > 0) stated = *prove(proof).value().plan;
    const PlanResult plan = *stated;
    if (!plan.buckets) continue;
    ++planned;
    buckets += *plan.buckets;
    const double scale_error = loading.scale_u * random.normal();  // of each net, the same all day
    if (loading.on_scale) {
      proof.loader_on_scale.push_back(drawnOnScale(loading, *plan.buckets, scale_error, random));
      proof.plan.reset();
      const ProofResult result = prove(proof).value();
      decided += result.loader_on_scale[0].verdict != Verdict::Undecided ? 1 : 0;
      const Finding& found = result.loader_on_scale[0].error;
      covered += std::abs(found.value_kg - loading.error) <= found.expanded_uncertainty_kg ? 1 : 0;
      continue;
    }
    for (int truck = 0; truck < *plan.trucks; ++truck) {
      TruckLoad load;
      load.scale.interval = kg(loading.interval);
      load.scale.net_u = kg(loading.scale_u);
      double gross = 13000.0 + random.uniform(0.0, 1000.0);
      load.tare = kg(displayed(gross, loading.interval));
      for (int bucket = 0; bucket < loading.buckets_per_truck; ++bucket) {
        const double held = 4500.0 + 200.0 * random.normal();
        gross += held;
        load.indications.push_back(kg(held + loading.error + loading.scatter * random.normal()));
      }
      load.gross = kg(displayed(gross + scale_error, loading.interval));
      proof.trucks.push_back(load);
    }
    proof.plan.reset();
    const ProofResult result = prove(proof).value();
    const Judgement& judged = result.trucks_together ? *result.trucks_together : result.trucks[0];
    decided += judged.verdict != Verdict::Undecided ? 1 : 0;
  }
  return {planned > 0 ? static_cast<int>(std::lround(buckets / planned)) : 0,
          planned > 0 ? decided / static_cast<double>(planned) : 0.0,
          planned > 0 ? covered / static_cast<double>(planned) : 0.0,
          1.0 - planned / static_cast<double>(proofs)};
}

}  // namespace hingepin::proof
