// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <deque>
#include <string>
#include <vector>

#include "engine/base/error.h"
#include "engine/base/random.h"
#include "engine/procedures/procedure.h"
#include "engine/simulator/simulator.h"

/// A loader to practise on: the simulator, driven by what a step asks for, as a feed of lift-log lines.
namespace hingepin::session {

class PracticeLoader {
 public:
  /// @param number of the draw of its hidden errors; the machine is the simulator's invented unit "L-27"
  explicit PracticeLoader(std::uint64_t number);

  /// Does what a pose or a pass asks for, beginning at a time of the feed; other steps leave it standing.
  /// @param mass_kg in the bucket
  /// Errors: those of the simulator.
  [[nodiscard]] Expected<void> begin(const procedures::Step& step, double mass_kg, double time_s);
  /// What happens to it from the next movement on.
  void suffer(std::vector<simulator::Happening> happenings) { happenings_ = std::move(happenings); }
  /// The lines of the feed up to a time, 50 a second, the header first and after every drop-out.
  [[nodiscard]] std::string linesUntil(double time_s);
  /// Sends nothing between now and that time.
  void dropOut(double until_s) { silent_until_s_ = until_s; }

  [[nodiscard]] bool isMoving(double time_s) const { return time_s < busy_until_s_; }
  [[nodiscard]] double boom_rad() const { return boom_rad_; }
  [[nodiscard]] const simulator::Machine& machine() const { return machine_; }

 private:
  Random random_;
  simulator::Machine machine_;
  std::uint64_t movements_ = 0;
  double oil_Cel_ = 55.0;
  double boom_rad_;
  double tilt_m_;
  double mass_kg_ = 0.0;
  std::vector<simulator::Happening> happenings_;
  std::deque<simulator::LogRow> rows_;  ///< still to come
  simulator::LogRow still_{};           ///< what it reads at rest
  double sent_until_s_ = 0.0;
  double busy_until_s_ = 0.0;
  double silent_until_s_ = 0.0;
  bool header_sent_ = false;
};

}  // namespace hingepin::session
