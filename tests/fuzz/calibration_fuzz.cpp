// SPDX-License-Identifier: Apache-2.0
#include <cmath>

#include "engine/calibration/calibration.h"
#include "engine/formats/calibration_json.h"
#include "tests/fuzz/json_mutator.h"
#include "tests/fuzz/require.h"

namespace {

using namespace hingepin;
using fuzz::require;

calibration::LiftLog heldAt(double reading, double head_pressure_Pa, calibration::SensorUnit unit) {
  calibration::LiftLog log;
  log.name = "held";
  log.typed_points = true;
  log.boom_sensor_unit = unit;
  for (const double step : {0.0, 1.0, 2.0}) {
    calibration::LiftRow row;
    row.boom_sensor = reading + 1e-3 * step;
    row.head_pressure_Pa = head_pressure_Pa * (1 + 1e-3 * step);
    log.rows.push_back(row);
  }
  log.rows_read = log.rows.size();
  return log;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  const Expected<calibration::Calibration> read =
      formats::readCalibration(std::string(fuzz::textOf(bytes, size)), "calibration.json");
  if (!read) {
    fuzz::requireSound(read.error());
    require(read.error().place.file == "calibration.json" && read.error().place.line > 0,
            "an error says where");
    return 0;
  }
  const std::string written = formats::writeCalibration(*read);
  const Expected<calibration::Calibration> again = formats::readCalibration(written, "calibration.json");
  require(again.has_value(), "what is written reads back");
  require(formats::writeCalibration(*again) == written, "as the same numbers");

  // A lift in the middle of the window is weighed, or it is said why not.
  const double middle_rad = 0.5 * (read->window_low_rad + read->window_high_rad);
  const double slope = read->boom_line.slope_rad_per_unit;
  const double reading = read->boom_line.reading_at + (middle_rad - read->boom_line.angle_rad) / slope;
  if (!std::isfinite(reading)) return 0;
  const Expected<calibration::Weighing> weighed =
      calibration::weigh(*read, heldAt(reading, 1.2e7, read->boom_sensor_unit));
  if (weighed) {
    require(std::isfinite(weighed->mass_kg) && std::isfinite(weighed->expanded_uncertainty_kg),
            "a mass is a number, and so is its doubt");
  } else {
    fuzz::requireSound(weighed.error());
  }
  return 0;
}

HINGEPIN_MUTATE_JSON(false)
