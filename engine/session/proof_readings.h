// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "engine/procedures/procedure.h"
#include "engine/proof/proof.h"
#include "engine/session/record_view.h"

/// Proofs as the readings of a job give them.
namespace hingepin::session {

/// Where the numbers of a proof stand among the tries of its record.
struct ProofReadings {
  proof::Proof proof;
  struct Mass {
    std::optional<std::size_t> reference;  ///< nothing where an entry of the job says it
    std::string reference_entry;
    std::string limit_entry;  ///< or the check that has it
    std::string pace;         ///< "slow", "fast", "own", ""
    bool truck = false;       ///< a ticket of a truck scale, not a mass
    std::vector<std::size_t> indications;
  };
  std::vector<Mass> masses;        ///< of each of `proof.masses`
  std::vector<std::size_t> zeros;  ///< of each of `proof.zero_indications`
};

/// What the checks of a record compared with something known, as found first, then as left; each with the
/// readings that a check looked at last. Masses with the same limit (a share of the reference, or a mass)
/// make one proof.
/// @param rated, step of the machine: its rated payload and what its monitor shows the mass in
[[nodiscard]] std::vector<ProofReadings> proofsOf(const RecordedJob& job,
                                                  const procedures::Procedure& procedure,
                                                  std::optional<Mass> rated, std::optional<Mass> step);

}  // namespace hingepin::session
