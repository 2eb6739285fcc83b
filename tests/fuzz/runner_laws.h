// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "tests/engine/procedures/technician.h"
#include "tests/fuzz/require.h"

namespace hingepin::fuzz {

/// What holds of an event that was taken: going back is offered before it is, undoes no hazard and leads to
/// what it names.
inline void requireOffered(const procedures::Procedure& procedure, const procedures::State& before,
                           const procedures::Event& event, const procedures::State& after) {
  using namespace procedures;
  if (event.type != EventType::GoBack) return;
  require(!event.about.empty() && prompt(procedure, before).back_to == event.about, "going back is offered");
  require(after.open == before.open, "going back opens and closes no hazard");
  require(after.tries.size() == before.tries.size() + 1, "going back takes away no try");
  require(prompt(procedure, after).about == event.about, "going back leads to the step it names");
}

/// What holds of a journal and its state, whatever came before.
inline void requireReplayable(const procedures::Procedure& procedure,
                              const std::vector<procedures::Event>& journal, const procedures::State& state,
                              const procedures::Measure& measure) {
  using namespace procedures;
  std::vector<Event> read_back;
  for (const Event& event : journal) {
    const std::string text = writeEvent(event);
    const Expected<Event> read = readEvent(text, "journal");
    require(read.has_value(), "an event that was taken reads back");
    require(writeEvent(*read) == text, "as the same bytes");
    read_back.push_back(*read);
  }
  const Expected<State> replayed = replay(procedure, read_back, measure);
  require(replayed.has_value(), "a journal can be replayed");
  require(*replayed == state && writeState(*replayed) == writeState(state), "to the same state");
}

}  // namespace hingepin::fuzz
