// SPDX-License-Identifier: Apache-2.0
#include "tests/fuzz/json_mutator.h"
#include "tests/fuzz/runner_laws.h"

namespace {

using namespace hingepin;
using namespace hingepin::procedures;
using fuzz::require;

constexpr std::size_t kMostEvents = 200;

}  // namespace

/// One event a line, of a job by a procedure that has every kind of step.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  static const Procedure procedure = samples::procedureOf(samples::everythingText());
  static const Measure measure = [](const Check&, std::span<const Observation>) -> Expected<double> {
    return 1.0e5;
  };
  std::string_view text = fuzz::textOf(bytes, size);
  State state;
  std::vector<Event> taken;
  for (std::size_t count = 0; !text.empty() && count < kMostEvents; ++count) {
    const std::string_view line = text.substr(0, text.find('\n'));
    text.remove_prefix(std::min(line.size() + 1, text.size()));
    const Expected<Event> read = readEvent(std::string(line), "journal");
    if (!read) {
      fuzz::requireSound(read.error());
      require(read.error().place.file == "journal", "an error names the file");
      continue;
    }
    const Expected<Event> again = readEvent(writeEvent(*read), "journal");
    require(again.has_value() && *again == *read, "what is read is written so that it reads the same");
    Expected<State> next = apply(procedure, state, *read, measure);
    if (!next) {
      fuzz::requireSound(next.error());
      continue;
    }
    fuzz::requireOffered(procedure, state, *read, *next);
    state = *std::move(next);
    taken.push_back(*read);
    static_cast<void>(prompt(procedure, state));
  }
  fuzz::requireReplayable(procedure, taken, state, measure);
  return 0;
}

HINGEPIN_MUTATE_JSON(true)
