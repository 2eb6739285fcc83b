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
  std::int64_t fault_ms = 5000;   ///< a line that can't be read is said for so long after it
  double shown_s = 0.3;           ///< over which a shown value is smoothed: an eye follows 3 changes a second
  double steady_s = 1.0;          ///< over which a value is averaged and its spread looked at
  double speed_s = 0.5;           ///< over which a speed is looked at
  double still_rad_per_s = 0.01;  ///< 0.6 deg/s; a slow pass is some 9 deg/s, a sinking boom below 0.1
  double turn_rad = 0.01;         ///< back by so much is another travel; the bounce of a stop is smaller
  double begun_rad = 0.05;        ///< a travel, not a twitch of the lever
  double rad_per_volt = 0.44;     ///< where no line is known: 25 deg a volt, some 4 V over 100 deg
  double rad_per_share = 1.7;     ///< of counts: such sensors turn some 100 deg over their whole range
  double full_share = 0.6;        ///< of the span that was seen: a pass where no weigh window is known
  double after_s = 1.0;           ///< stillness that ends a pass, kept in its log
  double before_s = 1.5;          ///< before its movement, kept in its log
  double hold_s = 2.0;            ///< of a pose that says no time of its own
  double pressure_spread_Pa = 2e5;  ///< of a steady pressure: pump ripple is below, a moving boom above
  double temperature_spread_K = 1.0;
  double angle_spread_rad = 0.0035;  ///< 0.2 deg
  double engine_spread_per_s = 0.5;  ///< 30 /min: a governor hunts less
  double kept_s = 180.0;             ///< of rows
};

/// What came in, and whether it still comes.
class Feed {
 public:
  /// @param edge must outlive it
  explicit Feed(const Edge& edge, LiveLimits limits = {});

  /// Takes bytes as they come; whole lines are read, the rest waits. A line that can't be read is counted and
  /// left out; a new header begins a new connection, also in the middle, and so does a clock that goes back.
  void take(std::string_view bytes, std::int64_t at_ms);
  /// The connection ended: what comes next begins with a header.
  void disconnected();

  [[nodiscard]] bool isAlive(std::int64_t now_ms) const;
  [[nodiscard]] const std::deque<calibration::LiftRow>& rows() const { return rows_; }
  /// The mean of the last rows, smooth enough to be shown; its time is that of the newest. Nothing where no
  /// row came.
  [[nodiscard]] std::optional<calibration::LiftRow> current() const;
  [[nodiscard]] calibration::SensorUnit boomSensorUnit() const { return boom_sensor_unit_; }
  [[nodiscard]] std::optional<calibration::SensorUnit> bucketSensorUnit() const {
    return bucket_sensor_unit_;
  }
  /// How far the boom sensor's readings of this connection lie apart.
  [[nodiscard]] double seenSpan() const { return rows_.empty() ? 0.0 : highest_ - lowest_; }
  /// How many connections began; a watch begins again with each.
  [[nodiscard]] std::size_t connection() const { return connection_; }
  /// How often nothing came for so long that it counts as gone, and came again.
  [[nodiscard]] std::size_t dropOuts() const { return drop_outs_; }
  [[nodiscard]] std::size_t unreadable() const { return unreadable_; }
  [[nodiscard]] double rowsPerSecond() const;
  /// What is wrong with what came, if anything: its header or a line lately.
  [[nodiscard]] const std::optional<Error>& fault() const { return fault_; }
  /// The lines of the rows between two times, with the header: a lift log.
  [[nodiscard]] std::string log(double from_s, double until_s) const;
  [[nodiscard]] const LiveLimits& limits() const { return limits_; }

 private:
  void begin();
  void lineCame(const Expected<calibration::LogLine>& line, const calibration::LiftLog& log,
                std::int64_t at_ms);

  const Edge& edge_;
  LiveLimits limits_;
  FeedReader reader_;
  std::string header_;
  std::deque<calibration::LiftRow> rows_;
  std::deque<std::string> lines_;  // as many as rows_
  calibration::SensorUnit boom_sensor_unit_ = calibration::SensorUnit::Volt;
  std::optional<calibration::SensorUnit> bucket_sensor_unit_;
  double lowest_ = 0.0;
  double highest_ = 0.0;
  std::size_t connection_ = 0;
  std::size_t drop_outs_ = 0;
  std::size_t unreadable_ = 0;
  std::optional<std::int64_t> last_ms_;
  std::optional<Error> fault_;
  std::int64_t fault_at_ms_ = 0;
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

/// Where no line is known, Up means that the sensor's reading rises.
enum class Travel { Still, Up, Down };

/// What the live readings say about the step that is asked for.
struct Sight {
  bool alive = false;
  Travel travel = Travel::Still;
  bool begun = false;  ///< it has moved since the step was asked for, or since it was refused
  std::optional<double> boom_rad{};
  std::optional<double> bucket_reading{};
  std::optional<double> wanted_rad{};  ///< where the step wants the boom
  std::optional<double> off_rad{};     ///< from where it stands to there: positive is up
  std::string value{};                 ///< of a reading: steady mean, as a quantity in a unit of the step
  std::string spread{};                ///< its standard deviation over that time, in the same unit
  bool steady = false;                 ///< that value may be taken
  double progress = 0.0;               ///< 0 to 1, of the hold or the pass
  bool held = false;                   ///< the pose was held long enough
  /// The pose was held where the step says for how long, the pass is complete, or the value of a reading is
  /// steady while the boom is up, when both hands are on the levers.
  bool done = false;
  std::optional<Message> trouble{};  ///< why it is not, in words for the person
};

/// Watches one step of a job on a feed. Make a new one for each step and each try; look at it at every row.
class Watch {
 public:
  /// @param line angle of the boom sensor, if known; without it neither direction nor angle is judged
  Watch(const procedures::Procedure& procedure, const procedures::State& state, const procedures::Step& step,
        std::optional<KnownLine> line);

  [[nodiscard]] Sight look(const Feed& feed, std::int64_t now_ms);
  /// The log of a pass that is complete; "" before.
  [[nodiscard]] const std::string& log() const { return log_; }
  /// Lift pressure (head less what the rod side pushes back, where measured) over boom angle, or over the
  /// sensor's reading where no line is known, of the pass so far; at most 400 points.
  [[nodiscard]] std::vector<std::pair<double, double>> track(const Feed& feed, double rod_share) const;

 private:
  /// A travel one way, from where it turned to the furthest that it came.
  struct Leg {
    double from = 0.0;
    double to = 0.0;
  };
  /// What is still, and what turns back, in the units of a sensor.
  struct Pace {
    double still;
    double turn;
    double over_s;
  };
  /// How one sensor moves.
  struct Mover {
    bool moving = false;
    bool rising = false;
    double rest = 0.0;  // where it stood before it moved
    double moving_since_s = 0.0;
    double still_since_s = 0.0;
    std::vector<Leg> legs{};
    /// @param before where it was at the beginning of the time over which the slope was looked at
    void look(double at, double before, double slope, double slope_u, double now_s, const Pace& pace);
  };

  void restart(double now_s);
  void follow(const Feed& feed, std::size_t index);
  [[nodiscard]] double position(const calibration::LiftRow& row) const;
  [[nodiscard]] double stillSince_s() const;
  void lookAtReading(const Feed& feed, Sight& sight) const;
  void lookAtPose(const Feed& feed, Sight& sight);
  void lookAtPass(const Feed& feed, Sight& sight);

  procedures::Step step_;
  std::optional<KnownLine> line_;
  std::optional<double> wanted_rad_;
  std::optional<double> within_rad_;
  double hold_s_ = 0.0;
  bool hands_on_levers_ = false;
  std::optional<std::pair<double, double>> window_rad_;

  std::size_t connection_ = 0;
  std::size_t drop_outs_ = 0;
  std::optional<double> looked_until_s_;
  Mover boom_;
  Mover bucket_;
  bool begun_ = false;
  double begun_s_ = 0.0;
  double begun_at_ = 0.0;
  bool held_ = false;
  bool done_ = false;
  double done_s_ = 0.0;
  std::optional<Message> trouble_;
  std::string log_;
};

}  // namespace hingepin::session
