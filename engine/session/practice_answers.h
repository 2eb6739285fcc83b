// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/base/random.h"
#include "engine/procedures/runner.h"
#include "engine/session/job.h"
#include "engine/simulator/machine.h"
#include "engine/survey/target.h"

/// What a careful person with good instruments would answer on a practice machine.
namespace hingepin::session {

/// The scale of a practice machine and what stands about: what its monitor would show, and what a person
/// measures. Masses in kg.
struct PracticeScale {
  double zero_kg = 0.0;        ///< what it shows with an empty bucket before it is zeroed
  double zero_after_kg = 0.0;  ///< after
  double span = 1.0;           ///< indication over load
  double span_after = 1.0;     ///< once it was taught in this job
  double scatter_kg = 4.0;     ///< standard deviation of an indication
  double mass_kg = 2000.0;     ///< the known mass, as its plate says
  double oil_Cel = 52.0;
  double hours = 4200.0;
  double fuel_percent = 80.0;
  double tread_mm = 38.0;
};

enum class Failing { Once, Always };

struct PracticeWishes {
  /// By step: fails although it need not. Of a check its readings are made such.
  std::map<std::string, Failing, std::less<>> failing{};
  /// By step, what is answered or typed instead; of several each time the next, the last stays.
  std::map<std::string, std::vector<std::string>, std::less<>> says{};
};

/// What has to be handed in beside an answer; keepFile keeps it and its name goes into the event's hashes.
enum class FileNeed { None, Photo, File, Log, Signature };

struct PracticeAnswer {
  procedures::Event
      event;  ///< without who, device, hashes and time; `role` is empty for whoever is in charge
  bool second_person = false;  ///< somebody else has to answer, in the role of the event
  FileNeed file = FileNeed::None;
  std::string log{};                            ///< CSV, of FileNeed::Log
  std::int64_t takes_ms = 2000;                 ///< how long a person takes for it
  std::optional<std::int64_t> not_before_ms{};  ///< of the monotonic clock: the end of a hold
};

/// Answers for one job. Poses, loads and pressures are those of the simulator's invented unit "L-27".
class PracticePerson {
 public:
  /// @param number of the draw of the machine's hidden errors
  /// @param scatter of the draw of what is read
  explicit PracticePerson(std::uint64_t number, PracticeScale scale = {}, PracticeWishes wishes = {},
                          std::uint64_t scatter = 0);

  /// What to hand in now. Errors: InvalidInput "job-has-ended"; those of the simulator.
  [[nodiscard]] Expected<PracticeAnswer> answer(const OpenJob& job);

  [[nodiscard]] const simulator::Machine& machine() const { return machine_; }

 private:
  [[nodiscard]] Expected<std::string> valueOf(const OpenJob& job, const procedures::Step& step);
  [[nodiscard]] Expected<double> surveyed(const OpenJob& job, const survey::Target& target) const;
  [[nodiscard]] Expected<double> siOf(const OpenJob& job, const procedures::Step& step);
  [[nodiscard]] double referenceOf(const OpenJob& job, const procedures::Step& step) const;
  [[nodiscard]] Expected<std::string> logOf(const procedures::Step& step);
  [[nodiscard]] bool shallFail(const OpenJob& job, std::string_view step) const;
  /// What is wished to be said of a step now; nothing where there is no wish.
  [[nodiscard]] std::optional<std::string> wished(std::string_view step);

  Random random_;
  simulator::Machine machine_;
  PracticeScale scale_;
  PracticeWishes wishes_;
  std::uint64_t drawn_ = 0;
};

}  // namespace hingepin::session
