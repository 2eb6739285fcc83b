// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "engine/procedures/runner.h"

/// What the runner computes with numbers.
namespace hingepin::procedures {

/// A limit as it holds for this job. Errors: InvalidInput "entry-missing" and those of readAnyQuantity.
[[nodiscard]] Expected<ReadQuantity> valueOf(const Procedure& procedure, const State& state,
                                             const Limit& limit);

/// Evaluates the check of a step.
/// Errors: those of valueOf; "fit-not-at-hand" without a measure, "proof-not-at-hand" without a judge; an
/// error of either that is not Insufficient.
[[nodiscard]] Expected<Verdict> evaluate(const Procedure& procedure, const State& state, const Step& step,
                                         std::int64_t now_ms, const Measure& measure, const Judge& judge);

/// Whether a value lies within limits of this job, both included. Errors: those of valueOf.
[[nodiscard]] Expected<bool> isWithin(const Procedure& procedure, const State& state, const Limits& limits,
                                      double value_si);

/// What somebody may have meant who typed a quantity that is not plausible: a slipped decimal point, or
/// another unit of the same dimension.
[[nodiscard]] std::vector<std::string> suggestionsFor(const Procedure& procedure, const State& state,
                                                      const Limits& plausible, const std::string& typed);

/// Whether a value may be older than it may be: its age is over the limit, or unknown.
[[nodiscard]] bool isOlder(const State& state, const Observation& observation, std::int64_t now_ms,
                           const std::string& limit);

/// A duration of the file in milliseconds; 0 if it is none.
[[nodiscard]] std::int64_t milliseconds(const std::string& duration);

}  // namespace hingepin::procedures
