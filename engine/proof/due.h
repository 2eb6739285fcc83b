// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "engine/base/error.h"
#include "engine/base/named.h"

/// When a scale has to be proved again, and why. Times are ms of UTC since 1970.
namespace hingepin::proof {

/// What makes a proof due whatever the calendar says (common practice, no source).
enum class Event {
  Taught,             ///< taught or corrected: its first shift
  AttachmentChanged,  ///< another, or the same one repaired
  SensorChanged,
  CylinderChanged,
  ControllerChanged,
  TyresChanged,
  BatteryLost,
  EdgeWelded,  ///< wear edge or bucket
  BoomWelded,
  Overloaded,
  ShiftProofFailed
};
inline constexpr std::array kEventNames = {Named{"taught", Event::Taught},
                                           Named{"attachment-changed", Event::AttachmentChanged},
                                           Named{"sensor-changed", Event::SensorChanged},
                                           Named{"cylinder-changed", Event::CylinderChanged},
                                           Named{"controller-changed", Event::ControllerChanged},
                                           Named{"tyres-changed", Event::TyresChanged},
                                           Named{"battery-lost", Event::BatteryLost},
                                           Named{"edge-welded", Event::EdgeWelded},
                                           Named{"boom-welded", Event::BoomWelded},
                                           Named{"overloaded", Event::Overloaded},
                                           Named{"shift-proof-failed", Event::ShiftProofFailed}};

/// Whether a shift proof that holds is enough after this event; after the others the scale is taught and
/// proved anew.
[[nodiscard]] bool isSettledByShiftProof(Event event);

struct Happening {
  Event event;
  std::int64_t utc_ms = 0;
};

/// What the hour meter showed.
struct HourReading {
  std::int64_t utc_ms = 0;
  double hours = 0.0;
};

/// What is known of one scale with one attachment.
struct DueAsked {
  std::optional<std::int64_t> taught_utc_ms{};  ///< taught and proved
  std::optional<std::int64_t> proved_utc_ms{};  ///< last proof that held; teaching that ended with one counts
  std::optional<std::int64_t> every_ms{};       ///< the yard's longest time without teaching and proof
  std::optional<double> every_hours{};          ///< likewise in hours of use
  std::vector<HourReading> hours{};             ///< the oldest first
  std::vector<Happening> happenings{};
  std::optional<std::int64_t>
      leaving_utc_ms{};  ///< earliest day that its own drift takes it out of tolerance
};

/// "due-by-time", "due-by-hours", "due-by-drift", "due-event-..." of the event.
struct DueReason {
  Message why;
  std::int64_t utc_ms = 0;  ///< since when, or from when on; by hours an expectation
};

/// Every reason, the soonest first; empty where nothing makes it due. A scale that was never taught has none
/// either: it is not calibrated, which is another state.
[[nodiscard]] std::vector<DueReason> dueReasons(const DueAsked& asked);

}  // namespace hingepin::proof
