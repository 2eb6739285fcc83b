// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "engine/procedures/runner.h"

/// The text forms of events and states: canonical JSON (RFC 8785) with whole numbers and strings only. What
/// is empty is left out.
namespace hingepin::procedures {

/// The names that they have for these.
[[nodiscard]] std::string_view nameOf(Phase phase);
[[nodiscard]] std::string_view nameOf(Outcome outcome);

[[nodiscard]] std::string writeEvent(const Event& event);

/// Errors: those of readJson and JsonNode, "word-unknown", "count-out-of-range".
[[nodiscard]] Expected<Event> readEvent(std::string text, std::string file);

/// Equal states give equal bytes, and no two different ones do.
[[nodiscard]] std::string writeState(const State& state);

/// The state after all events of a journal. Errors: those of apply.
[[nodiscard]] Expected<State> replay(const Procedure& procedure, std::span<const Event> journal,
                                     const Measure& measure = {});

}  // namespace hingepin::procedures
