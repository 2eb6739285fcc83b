// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <vector>

#include "engine/base/error.h"
#include "engine/session/edge.h"
#include "engine/session/when_again.h"
#include "engine/store/store.h"

/// Which scales are due, without reading the records of those that nothing has happened to.
namespace hingepin::session {

/// Number of the way in which whenAgain works. To be raised with every change of what it says: what was kept
/// by another number is worked out anew.
inline constexpr std::int64_t kDueRule = 2;

/// A pair and why it is due.
struct DuePair {
  store::Pair pair;
  WhenAgain when;
};

/// Pairs that are due at or before a time, the soonest first, those that nothing makes due last.
/// @param until_utc_ms INT64_MAX for all. Errors: those of the store.
[[nodiscard]] Expected<std::vector<DuePair>> duePairs(const store::Store& store, const Edge& edge,
                                                      std::int64_t until_utc_ms);

/// Those of one unit, by attachment, from its records. Errors: those of the store; NotFound
/// "unit-not-in-store".
[[nodiscard]] Expected<std::vector<DuePair>> duePairsOf(const store::Store& store, const std::string& unit,
                                                        const Edge& edge);

/// Works out what is not kept, and keeps it; takes as long as there are records of units that something
/// happened to since. Errors: those of the store. After one nothing is wrong: duePairs works it out each
/// time.
[[nodiscard]] Expected<void> keepDue(store::Store& store, const Edge& edge);

}  // namespace hingepin::session
