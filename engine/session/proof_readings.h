// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "engine/procedures/procedure.h"
#include "engine/procedures/runner.h"
#include "engine/proof/proof.h"
#include "engine/session/edge.h"
#include "engine/session/job.h"
#include "engine/session/profile.h"
#include "engine/session/record_view.h"
#include "engine/store/store.h"

/// Proofs as the readings of a job give them.
namespace hingepin::session {

/// Where the numbers of a proof stand among the tries of its record.
struct ProofReadings {
  proof::Proof proof{};
  struct Known {
    /// Of a truck gross and tare, of a loader on a scale tare and each gross; empty where an entry says it.
    std::vector<std::size_t> references{};
    std::string reference_entry{};
    std::string limit_entry{};  ///< or the check that has it, or "proof": the unit's own terms
    std::string pace{};         ///< "slow", "fast", "own", ""
    bool truck = false;         ///< of a truck scale, not a mass
    bool weighed = false;       ///< by the engine from logs of the lifts, not by the machine
    std::vector<std::size_t> indications{};
  };
  std::vector<Known> masses{};       ///< of each of `proof.masses`
  std::vector<Known> trucks{};       ///< of each of `proof.trucks`
  std::vector<Known> loaders{};      ///< of each of `proof.loader_on_scale`
  std::vector<std::size_t> zeros{};  ///< of each of `proof.zero_indications`
};

/// What a machine's profile says of its scale.
struct ScaleFacts {
  std::optional<Mass> rated{};
  std::optional<Mass> step{};  ///< what its monitor shows a mass in
  proof::Terms terms{};
};
[[nodiscard]] ScaleFacts factsOf(const UnitProfile& unit);

/// What one check compares with something known, from the readings before it; nothing for another check or
/// without readings. A mass belongs to the indications after it, a truck to those between tare and gross, and
/// a loaded loader to the last before it.
/// @param index of the check among the tries
[[nodiscard]] std::optional<ProofReadings> readingsOfCheck(const RecordedJob& job,
                                                           const procedures::Procedure& procedure,
                                                           std::size_t index, const ScaleFacts& facts);

/// What a proof on a truck scale compared: `trucks` or `loaders`; neither of another check.
[[nodiscard]] ProofReadings onTruckScale(const RecordedJob& job, std::size_t index);

/// What the checks of a record compared with something known, as found first, then as left; each with the
/// readings that a check looked at last. What is held against the same limit makes one proof.
[[nodiscard]] std::vector<ProofReadings> proofsOf(const RecordedJob& job,
                                                  const procedures::Procedure& procedure,
                                                  const ScaleFacts& facts);

/// What a verdict goes by: each mass, and the trucks, of which several decide as one.
[[nodiscard]] std::vector<const proof::Judgement*> judgementsOf(const proof::ProofResult& result);
/// That which stands worst. REQUIRES: one at least.
[[nodiscard]] const proof::Judgement& worstOf(const std::vector<const proof::Judgement*>& all);

/// Judges a proof of a job by the terms of its unit, else by the limit of the procedure and the
/// simple rule. Of several masses it tells the one that stands worst.
/// Errors: Insufficient "no-value"; those of proof::prove.
[[nodiscard]] Expected<procedures::Verdict> judged(const OpenJob& job, const procedures::Step& check);

/// What the engine weighed in the lift that an indication is asked for.
struct WeighedLift {
  std::string value{};  ///< in kg, with the digits that its uncertainty leaves
  double expanded_kg = 0.0;
  std::string calibration{};  ///< hash of what it was weighed by; "" for the one that the job itself gives
};
/// By the calibration that the job gives; as found, and in a procedure that teaches nothing, by that which
/// holds for unit and attachment. Nothing for another step, where that lift has no log, and where no such
/// calibration weighs it. Takes as long as a fit. Errors: those of the store.
[[nodiscard]] Expected<std::optional<WeighedLift>> weighedLift(const store::Store& store, const OpenJob& job,
                                                               const procedures::Step& reading,
                                                               const Edge& edge);

/// What came of such a check, in words; nothing for another.
/// @param result, reason, limit, more as in procedures::Try
[[nodiscard]] std::optional<Message> sayProof(const std::string& result, const std::string& reason,
                                              const std::string& limit, std::int64_t more);

}  // namespace hingepin::session
