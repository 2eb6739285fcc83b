// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "engine/proof/due.h"
#include "engine/session/edge.h"
#include "engine/session/job_record.h"
#include "engine/session/overview.h"
#include "engine/session/profile.h"
#include "engine/session/when_again.h"
#include "engine/store/store.h"

/// What the records say of a scale over time, and what follows for it.
namespace hingepin::session {

/// One unit with one attachment.
struct ScalePast {
  std::vector<HistoryPoint> points{};            ///< the oldest first
  std::vector<proof::Happening> happenings{};    ///< of the unit or this attachment
  std::vector<std::string> happening_records{};  ///< that say so, in the same order
  std::vector<proof::HourReading> hours{};       ///< of the unit
};
struct UnitPast {
  std::map<std::string, ScalePast, std::less<>> scales{};  ///< by attachment
  bool is_final = true;  ///< false: profiles that its records name have not come yet, and may tell more
};

/// By attachment, from every record of the unit; those of `attachments` are there in any case.
/// Errors: those of the store.
[[nodiscard]] Expected<UnitPast> pastOf(const store::Store& store, std::string_view unit,
                                        const std::vector<std::string>& attachments);
/// The same with the attachments of a unit's pairs.
[[nodiscard]] Expected<UnitPast> pastOf(const store::Store& store, std::string_view unit,
                                        const std::vector<store::Pair>& pairs);

/// @param profile nullptr where it can't be read: then hours do not count
/// The first shift after a teaching is due where the unit is proved by shift at all. By drift it is due at
/// the beginning of the band, once drift is plain; below that the band is told and nothing is due by it.
[[nodiscard]] WhenAgain whenAgain(const ScalePast& past, const store::Pair& pair, const UnitProfile* profile);

/// The event that a record's content tells; nothing where it is no event's.
[[nodiscard]] std::optional<proof::Event> eventOf(const JsonValue& content);

}  // namespace hingepin::session
