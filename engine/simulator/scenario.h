// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "engine/base/error.h"
#include "engine/base/random.h"
#include "engine/simulator/simulator.h"

namespace hingepin::simulator {

/// Texts by file name, for whoever may write files.
using Files = std::map<std::string, std::string>;

/// In which units a log is written.
struct LogStyle {
  bool milliseconds = false;
  bool millivolts = false;          ///< for sensors in volts
  const char* pressure = "bar";     ///< "bar", "kPa", "MPa" or "[psi]"
  const char* temperature = "Cel";  ///< "Cel", "[degF]" or "K"
};

/// The lift log as CSV. Columns that hold no reading at all are left out.
[[nodiscard]] std::string csvOf(const Machine& machine, const std::vector<LogRow>& rows,
                                const LogStyle& style = {});

/// What a job file tells.
struct JobParts {
  bool linkage = true;
  bool attachment = true;
  bool gravity = true;
  bool oil = true;               ///< the grade, where it is not the default
  bool edge = false;             ///< heel and cutting edge
  bool pressure_sensor = false;  ///< its doubts as they are drawn, where the defaults would say otherwise
  std::optional<double> payload_center_u_m{};  ///< how well its centre is known each way; not stated without
  std::string attachment_id = "GP";
  std::array<double, 3> pose_u_deg = {0.3, 0.3,
                                      0.6};  ///< of the lowest, highest and reference pose; 0: no angle
};

/// A lift as the job file names it, with how it is made.
struct JobLift {
  std::string kind;               ///< "empty", "test-mass", "load"
  std::string pace;               ///< "slow", "fast", "" for a pace between
  std::string direction;          ///< "up", "down" or "" to leave it to the readings
  std::string file;               ///< name of the log; of the readings where typed
  std::optional<double> mass_kg;  ///< as the papers say
  std::optional<double> mass_u_kg;
  bool typed = false;  ///< stations read from a monitor instead of a log
  LogStyle style;
  Lift lift;
};

/// A job with its truth.
struct Scenario {
  std::string note;
  Machine machine;
  JobParts parts;
  std::vector<JobLift> taught;   ///< stand in the job
  std::vector<JobLift> unknown;  ///< to be weighed
};

/// job.json, one log a lift, typed unknowns as hingepin-readings/1, truth.json, and README.txt with the note.
/// The same scenario and number give the same bytes. Errors: those of `simulate`.
[[nodiscard]] Expected<Files> filesOf(const Scenario& scenario, Random random);

/// The practice job: the invented unit "L-27", empty-slow.csv, empty-fast.csv, mass-2000-slow.csv, and six
/// loads.
[[nodiscard]] Scenario demoScenario(std::uint64_t number);

/// What a drawn machine is taught by.
enum class Teaching { RisingOverLinkage, BothWaysOverLinkage, TestMass, TestMassOverLinkage };

/// A machine drawn at random (8 to 25 t) with its logger, the lifts that teach it, and four loads, whole
/// lifts and partial ones.
[[nodiscard]] Scenario drawScenario(Teaching teaching, Random& random);

/// The drawn machine of this number, with linkage and test mass.
[[nodiscard]] Scenario drawnScenario(std::uint64_t number);

}  // namespace hingepin::simulator
