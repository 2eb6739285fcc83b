// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "engine/cli/words.h"
#include "engine/units/ucum.h"

namespace hingepin::cli {

/// What the process ends with, see engine/formats/README.md.
enum ExitStatus : int {
  kDone = 0,
  kInsufficient = 1,  ///< well formed, but it can't support a result
  kWrong = 2,         ///< the command or a file is wrong
};

struct CalibrateOptions {
  std::string job;
  std::string out;
  std::string report;  ///< empty: none
};
[[nodiscard]] int calibrateCommand(const CalibrateOptions& options, UnitSystem system);

struct WeighOptions {
  std::string calibration;
  std::vector<std::string> logs;
  bool json = false;
};
[[nodiscard]] int weighCommand(const WeighOptions& options, UnitSystem system);

struct ProveOptions {
  std::string proof;
  bool json = false;
};
[[nodiscard]] int proveCommand(const ProveOptions& options, UnitSystem system);

struct SimulateOptions {
  std::string out;
  bool demo = false;  ///< the practice unit, taken where nothing else is asked for
  std::uint64_t seed = 1;
  std::optional<std::uint64_t> machine_seed;  ///< a machine drawn at random instead
  std::vector<std::string> misbehaviours;
};
/// Name and sentence of each misbehaviour, a line each.
[[nodiscard]] std::string misbehaviourList(UnitSystem system);
[[nodiscard]] int simulateCommand(const SimulateOptions& options, UnitSystem system);

[[nodiscard]] int linkageCommand(const std::string& job, UnitSystem system);

[[nodiscard]] int stopsCommand(const std::string& path, bool json, UnitSystem system);

struct SurveyOptions {
  std::string survey;
  std::string job;  ///< that the linkage is put into; empty: begun anew
  std::string out;  ///< the job that is written; empty: none
  bool json = false;
};
[[nodiscard]] int surveyCommand(const SurveyOptions& options, UnitSystem system);

/// By the user's locale; JSON is UTF-8 whatever that is.
[[nodiscard]] Charset terminalCharset();

/// Prints a text; says why if it can't.
[[nodiscard]] int print(const std::string& text, UnitSystem system);

/// Complains on standard error. @return the exit status that goes with the error.
[[nodiscard]] int complain(const Error& error, UnitSystem system);

}  // namespace hingepin::cli
