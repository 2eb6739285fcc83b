// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/base/named.h"
#include "engine/units/quantity.h"

namespace hingepin::calibration {

/// What an angle sensor reports in: volts, counts, or an angle of its own (radians once read).
enum class SensorUnit { Volt, Count, Radian };

/// What messages call a sensor's unit; an angle may have been given in either of its units.
inline constexpr std::array kSensorUnitNames = {Named{"V", SensorUnit::Volt}, Named{"1", SensorUnit::Count},
                                                Named{"deg", SensorUnit::Radian}};

enum class Direction { Up, Down };

/// One sample of a lift, or the mean of a few neighbouring ones. SI units; pressures are gauge.
struct LiftRow {
  double time_s = 0.0;
  double boom_sensor = 0.0;
  double head_pressure_Pa = 0.0;
  std::optional<double> rod_pressure_Pa;
  std::optional<double> bucket_sensor;
  std::optional<double> engine_speed_per_s;
  std::optional<double> pitch_rad;  ///< nose up is positive
  std::optional<double> oil_temperature_K;
  std::optional<double> boom_speed_rad_per_s;  ///< typed points only; a point without one was held still
};

/// One line of a log as it comes.
struct LogLine {
  std::string_view text{};       ///< without its end; lives until the next line is read
  std::optional<LiftRow> row{};  ///< none of a header, nor where a required reading is missing
  bool is_header = false;
};

/// The readings of one lift.
struct LiftLog {
  std::string name;
  SensorUnit boom_sensor_unit = SensorUnit::Volt;
  std::optional<SensorUnit> bucket_sensor_unit;
  bool typed_points = false;  ///< static points from a monitor, not a time series
  bool has_rod_pressure = false;
  std::vector<LiftRow> rows;
  std::size_t rows_read = 0;
  std::size_t rows_dropped = 0;       ///< a required reading was missing
  std::size_t rows_beyond_range = 0;  ///< left out because a pressure was beyond its sensor's range
  std::vector<std::string> unknown_columns;
};

/// Is told a line of a feed, or what was wrong with it, and the log of the header before it, without rows.
using LogLineSink = std::function<void(const Expected<LogLine>& line, const LiftLog& log)>;

/// Whether a head or rod pressure is at the end of its sensor's range or beyond, where it tells nothing.
[[nodiscard]] bool isBeyondRange(const LiftRow& row, Pressure range);

/// Leaves out the rows that are beyond the range, and counts them.
void leaveOutBeyondRange(LiftLog& log, Pressure range);

/// Warns of rows that were left out, where they are a share that matters.
/// Errors: Insufficient "pressures-out-of-range" where more are beyond the range than within.
[[nodiscard]] Expected<void> judgeRows(const LiftLog& log, Pressure range, std::vector<Message>& warnings);

/// Gathers samples in bounded memory: when more than `kMostRows` have come, neighbouring rows are averaged in
/// pairs, and so are all that follow. A field of the mean is the mean of those rows that have it, absent if
/// none has.
class LiftLogBuilder {
 public:
  static constexpr std::size_t kMostRows = 32768;
  void add(const LiftRow& row);
  [[nodiscard]] std::vector<LiftRow> take();

 private:
  std::vector<LiftRow> rows_;
  std::size_t rows_per_mean_ = 1;
  LiftRow mean_;                             // of the rows not yet in rows_
  std::size_t in_mean_ = 0;                  // how many they are
  std::array<std::size_t, 6> with_field_{};  // how many of them have each optional field
};

}  // namespace hingepin::calibration
