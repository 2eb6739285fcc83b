// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <string_view>

#include "engine/formats/job_json.h"
#include "engine/formats/lift_log_csv.h"
#include "tests/fuzz/require.h"

namespace {

using namespace hingepin;
using fuzz::require;

void requireSame(const Expected<calibration::LiftLog>& one, const Expected<calibration::LiftLog>& other) {
  require(one.has_value() == other.has_value(), "how the bytes arrive does not matter");
  if (!one) {
    require(one.error().message.code == other.error().message.code &&
                one.error().place.line == other.error().place.line &&
                one.error().place.column == other.error().place.column,
            "nor to the error");
    return;
  }
  require(one->rows.size() == other->rows.size() && one->rows_read == other->rows_read &&
              one->rows_dropped == other->rows_dropped && one->unknown_columns == other->unknown_columns,
          "nor to the rows");
}

/// What a live feed of these bytes tells, and that whatever rows came after a header are a log.
std::string toldOf(std::string_view text, std::size_t piece) {
  formats::LiftLogLines lines("feed", formats::LogOrigin::Feed);
  std::string told;
  std::string log;
  double last_s = -std::numeric_limits<double>::infinity();
  const auto requireLog = [&log] {
    if (log.empty()) return;
    const auto read = formats::readLiftLog(formats::sourceOf(log), "live.csv");
    require(read.has_value(), "the rows of a feed are a log");
  };
  for (; !text.empty(); text.remove_prefix(std::min(piece, text.size()))) {
    lines.take(text.substr(0, piece), [&](const Expected<calibration::LogLine>& line, const auto&) {
      if (!line) {
        fuzz::requireSound(line.error());
        require(line.error().place.line > 0, "an error says where");
        told += line.error().message.code + std::to_string(line.error().place.line) + '\n';
      } else if (line->is_header) {
        requireLog();
        log = std::string(line->text) + '\n';
        last_s = -std::numeric_limits<double>::infinity();
        told += "header\n";
      } else {
        told += std::string(line->text) + '\n';
        if (!line->row || line->row->time_s <= last_s) return;
        last_s = line->row->time_s;
        log += std::string(line->text) + '\n';
      }
    });
  }
  requireLog();
  return told;
}

}  // namespace

/// A log, or readings typed from a monitor.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  const std::string_view text = fuzz::textOf(bytes, size);
  const Expected<calibration::LiftLog> log = formats::readLift(formats::sourceOf(text), "lift.csv");
  requireSame(log, formats::readLift(formats::sourceOf(text, 7), "lift.csv"));
  require(toldOf(text, text.size()) == toldOf(text, 7), "nor what a feed tells");
  if (!log) {
    fuzz::requireSound(log.error());
    require(log.error().place.file == "lift.csv" && log.error().place.line > 0, "an error says where");
    return 0;
  }
  require(log->rows.size() <= log->rows_read && log->rows_dropped <= log->rows_read, "rows are counted");
  double last_s = -std::numeric_limits<double>::infinity();
  for (const calibration::LiftRow& row : log->rows) {
    require(std::isfinite(row.boom_sensor) && std::isfinite(row.head_pressure_Pa), "readings are finite");
    for (const auto& reading : {row.rod_pressure_Pa, row.bucket_sensor, row.engine_speed_per_s, row.pitch_rad,
                                row.oil_temperature_K, row.boom_speed_rad_per_s}) {
      require(!reading || std::isfinite(*reading), "also those that may be missing");
    }
    require(log->typed_points || row.time_s > last_s, "time increases");
    last_s = row.time_s;
  }
  return 0;
}
