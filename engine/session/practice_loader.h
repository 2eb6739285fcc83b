// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/base/random.h"
#include "engine/procedures/procedure.h"
#include "engine/simulator/simulator.h"

/// A loader to practise on: the simulator, driven by what a step asks for, as a feed of lift-log lines.
namespace hingepin::session {

/// The codes of what may happen to it; what each is stands in the catalogues.
[[nodiscard]] std::vector<std::string> practiceMishaps();

class PracticeLoader {
 public:
  /// @param number of the draw of its hidden errors; the machine is the simulator's invented unit "L-27"
  explicit PracticeLoader(std::uint64_t number);

  /// Does what a pose or a pass asks for, beginning at a time of the feed, or once it has done what it is
  /// about; other steps leave it standing. It goes from where it stands: with the bucket racked, first to
  /// where a pass begins if it isn't there, and tilts the bucket at the end. What is in the bucket came in or
  /// went out before.
  /// @param mass_kg in the bucket
  /// Errors: those of the simulator, with the machine as it was.
  [[nodiscard]] Expected<void> begin(const procedures::Step& step, double mass_kg, double time_s);
  /// What happens to it from the next movement on.
  void suffer(std::vector<simulator::Happening> happenings) { happenings_ = std::move(happenings); }
  /// The same by its code, as large as usual; nothing happens any more for a code that is none.
  void suffer(std::string_view mishap);
  /// The lines of the feed up to a time, 50 a second, the header first and after every drop-out.
  [[nodiscard]] std::string linesUntil(double time_s);
  /// Sends nothing between now and that time.
  void dropOut(double until_s) { silent_until_s_ = until_s; }

  [[nodiscard]] bool isMoving(double time_s) const { return time_s < busy_until_s_; }
  /// Where the boom truly was at the last line.
  [[nodiscard]] double boom_rad() const { return now_rad_; }
  [[nodiscard]] const simulator::Machine& machine() const { return machine_; }

 private:
  struct Coming {
    simulator::LogRow row;
    double boom_rad;
    std::optional<simulator::LogRow> rest{};  ///< of the last of a movement: what it reads at rest after it
  };

  [[nodiscard]] Expected<double> goalOf(const procedures::Step& step) const;
  [[nodiscard]] Expected<simulator::LiftRecord> lift(simulator::Machine machine, double tilt_m,
                                                     const simulator::Plan& plan, double mass_kg);
  [[nodiscard]] Expected<simulator::LogRow> restAt(double boom_rad, double tilt_m, double mass_kg);
  void addTilt(const simulator::LogRow& from, const simulator::LogRow& to, double boom_rad, double& end_s,
               std::vector<Coming>& rows);
  [[nodiscard]] simulator::LogRow noisy(simulator::LogRow row, double time_s);

  Random random_;
  simulator::Machine machine_;
  std::uint64_t movements_ = 0;
  double oil_Cel_ = 55.0;
  double boom_rad_;  ///< where all that is begun ends
  double tilt_m_;
  simulator::LogRow end_{};  ///< what it reads there
  std::vector<simulator::Happening> happenings_;
  std::deque<Coming> rows_;    ///< still to come
  simulator::LogRow still_{};  ///< what it reads while nothing comes
  double now_rad_;
  double sent_until_s_ = 0.0;
  double busy_until_s_ = 0.0;
  double silent_until_s_ = 0.0;
  bool header_sent_ = false;
};

}  // namespace hingepin::session
