// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/base/strict_json.h"
#include "engine/session/locale.h"
#include "engine/store/store.h"

namespace hingepin::session {

enum class DifferenceKind {
  Value,   ///< a number that was read
  Answer,  ///< something said to be so, or not
  Text,    ///< a note, or the monitor's words
  Photo,   ///< photos on both sides, for a person to look at
  Only,    ///< asked on one side alone
};

/// One thing that is not as it was.
struct Difference {
  std::string step;
  DifferenceKind kind = DifferenceKind::Value;
  std::string before{};  ///< "" where it was not asked
  std::string after{};
  std::string change{};  ///< of a value: by how much, as a quantity
};

/// What differs between two records of one unit, by the ids of their steps: how a machine left and how it
/// came back. The last value that counts stands for a step. Photos are listed wherever both have them, since
/// only a person can compare them.
/// @param before, after contents of records
/// Errors: InvalidInput "records-of-different-units".
[[nodiscard]] Expected<std::vector<Difference>> compareRecords(const JsonValue& before,
                                                               const JsonValue& after);

/// A difference in words (a code and values).
[[nodiscard]] Message messageOf(const Difference& difference);

/// What differs between two records of a store, for people: steps and answers in their words, photos by the
/// beginning of their names.
/// @param before, after names of records
/// Errors: those of compareRecords and of tell (told.h).
[[nodiscard]] Expected<std::vector<std::string>> differencesFor(const store::Store& store,
                                                                std::string_view before,
                                                                std::string_view after, const Reader& reader);

}  // namespace hingepin::session
