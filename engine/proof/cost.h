// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/base/error.h"
#include "engine/proof/proof.h"

namespace hingepin::proof {

/// Standard uncertainty of a net weighed on a truck scale whose certificate says nothing: as a scale of class
/// III that keeps its limits in service, evenly spread within them (OIML R 76-1:2006 Table 6 and 3.5.2).
[[nodiscard]] Mass assumedScaleU(Mass interval, Mass net);

/// What the error was costing. @param scatter_kg sample standard deviation of one weighing, 0 if not known
[[nodiscard]] Cost costOf(const Costs& costs, const ProofResult& result, double scatter_kg);

/// A scatter that a plan reckons with.
struct PlannedScatter {
  double sd_kg = 0.0;
  double degrees_of_freedom = 0.0;
};

/// How many buckets, in whole trucks, the rule decides with at the wanted rate, all trucks taken together; or
/// how many weighed in the loader.
/// @param scatter of one weighing, where the plan gives none
/// Errors: those of `limitAt`; Insufficient "plan-without-repeatability".
[[nodiscard]] Expected<PlanResult> planFor(const Plan& plan, const Proof& proof,
                                           const PlannedScatter& scatter);

}  // namespace hingepin::proof
