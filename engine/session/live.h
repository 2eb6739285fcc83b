// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <cstdint>
#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/base/error.h"
#include "engine/calibration/lift_log.h"
#include "engine/calibration/model.h"
#include "engine/procedures/runner.h"
#include "engine/session/edge.h"
#include "engine/session/job.h"

/// Live readings: the columns of a lift log as lines of CSV that come while the machine moves.
namespace hingepin::session {

/// When readings count as still, steady, gone. Judgement where no reason stands beside a number.
struct LiveLimits {
  std::int64_t silent_ms = 1000;  ///< without a row: dropped out (a gateway sends 10 to 100 a second)
  double steady_s = 1.0;          ///< over which a value is averaged and its spread looked at
  double still_rad_per_s = 0.01;  ///< 0.6 deg/s; a slow pass is some 9 deg/s
  double still_share_per_s =
      0.006;                  ///< the same where no angle is known: share of what the sensor was seen to span
  double begun_rad = 0.05;    ///< a travel, not a twitch of the lever
  double begun_share = 0.03;  ///< the same where no angle is known
  double full_share = 0.6;    ///< of the span that was seen: a pass where no weigh window is known
  double after_s = 1.0;       ///< stillness that ends a pass, kept in its log
  double before_s = 1.5;      ///< stillness before it, kept in its log
  double hold_s = 2.0;        ///< of a pose that says no time of its own
  double pressure_spread_Pa = 2e5;  ///< of a steady pressure: pump ripple is below, a moving boom above
  double temperature_spread_K = 1.0;
  double angle_spread_rad = 0.0035;  ///< 0.2 deg
  double kept_s = 180.0;             ///< of rows
};

/// What came in, and whether it still comes.
class Feed {
 public:
  explicit Feed(const Edge& edge, LiveLimits limits = {});

  /// Takes bytes as they come; whole lines are read, the rest waits. A line that can't be read is counted and
  /// left out; a new header begins a new connection, also in the middle.
  void take(std::string_view bytes, std::int64_t at_ms);
  /// The connection ended: what comes next begins with a header.
  void disconnected();

  [[nodiscard]] bool isAlive(std::int64_t now_ms) const;
  [[nodiscard]] const std::deque<calibration::LiftRow>& rows() const { return rows_; }
  [[nodiscard]] calibration::SensorUnit boomSensorUnit() const { return boom_sensor_unit_; }
  [[nodiscard]] std::optional<calibration::SensorUnit> bucketSensorUnit() const {
    return bucket_sensor_unit_;
  }
  /// How many connections began; a watch begins again with each.
  [[nodiscard]] std::size_t connection() const { return connection_; }
  [[nodiscard]] std::size_t unreadable() const { return unreadable_; }
  [[nodiscard]] double rowsPerSecond() const;
  /// What is wrong with what came, if anything: its header or its last unreadable line.
  [[nodiscard]] const std::optional<Error>& fault() const { return fault_; }
  /// The lines of the rows between two times, with the header: a lift log.
  [[nodiscard]] std::string log(double from_s, double until_s) const;
  [[nodiscard]] const LiveLimits& limits() const { return limits_; }

 private:
  void line(std::string_view text, std::int64_t at_ms);
  [[nodiscard]] bool header(std::string_view text);

  const Edge& edge_;
  LiveLimits limits_;
  std::string rest_;
  bool cut_ = false;  // the rest of an overlong line is thrown away
  std::string header_;
  std::deque<calibration::LiftRow> rows_;
  std::deque<std::string> lines_;  // as many as rows_
  calibration::SensorUnit boom_sensor_unit_ = calibration::SensorUnit::Volt;
  std::optional<calibration::SensorUnit> bucket_sensor_unit_;
  std::size_t connection_ = 0;
  std::size_t unreadable_ = 0;
  std::int64_t last_ms_ = 0;
  std::optional<Error> fault_;
};

/// The line from the boom sensor's reading to the boom's angle, and what it comes from.
struct KnownLine {
  calibration::SensorLine line;
  calibration::SensorUnit unit = calibration::SensorUnit::Volt;
};

/// That of the job's own poses, where they give one already. Nothing where they don't.
[[nodiscard]] std::optional<KnownLine> boomLineOf(const OpenJob& job, const Edge& edge,
                                                  const BlobSource& logs);
/// That of a stored calibration. Nothing where it can't be read.
[[nodiscard]] std::optional<KnownLine> boomLineOf(const calibration::Calibration& calibration);

enum class Travel { Still, Up, Down };

/// What the live readings say about the step that is asked for.
struct Sight {
  bool alive = false;
  Travel travel = Travel::Still;
  std::optional<double> boom_rad{};
  std::optional<double> bucket_reading{};
  std::optional<double> wanted_rad{};  ///< where the step wants the boom
  std::string value{};                 ///< of a reading: steady mean, as a quantity in a unit of the step
  bool steady = false;                 ///< that value may be taken
  double progress = 0.0;               ///< 0 to 1, of the hold or the pass
  bool done = false;                   ///< the pose was held or the pass is complete
  std::optional<Message> trouble{};    ///< why it is not, in words for the person
};

/// Watches one step of a job on a feed. Make a new one for each step and each try; look at it at every row.
class Watch {
 public:
  /// @param line angle of the boom sensor, if known
  Watch(const procedures::Procedure& procedure, const procedures::State& state, const procedures::Step& step,
        std::optional<KnownLine> line);

  [[nodiscard]] Sight look(const Feed& feed, std::int64_t now_ms);
  /// The log of a pass that is complete; "" before.
  [[nodiscard]] const std::string& log() const { return log_; }
  /// Lift pressure (head less what the rod side pushes back, where measured) over boom angle, or over the
  /// sensor's reading where no line is known, of the pass so far; at most 400 points.
  [[nodiscard]] std::vector<std::pair<double, double>> track(const Feed& feed, double rod_share) const;

 private:
  void restart();
  [[nodiscard]] double position(const calibration::LiftRow& row) const;
  void lookAtReading(const Feed& feed, Sight& sight) const;
  void lookAtPose(const Feed& feed, Sight& sight);
  void lookAtPass(const Feed& feed, Sight& sight);

  procedures::Step step_;
  std::optional<KnownLine> line_;
  std::optional<double> wanted_rad_;
  std::optional<double> within_rad_;
  double hold_s_ = 0.0;
  double window_low_rad_ = 0.0;
  double window_high_rad_ = 0.0;
  bool window_known_ = false;

  std::size_t connection_ = 0;
  double lowest_ = 0.0;  // of positions seen
  double highest_ = 0.0;
  bool seen_ = false;
  double looked_until_s_ = 0.0;
  bool rows_looked_at_ = false;
  Travel travel_ = Travel::Still;
  Travel last_travel_ = Travel::Still;  // before the present stillness
  double still_since_s_ = 0.0;
  bool begun_ = false;
  double begun_s_ = 0.0;
  double begun_at_ = 0.0;
  bool done_ = false;
  std::optional<Message> trouble_;
  std::string log_;
};

}  // namespace hingepin::session
