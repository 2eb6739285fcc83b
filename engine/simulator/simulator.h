// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/base/random.h"
#include "engine/simulator/dynamics.h"
#include "engine/simulator/machine.h"

namespace hingepin::simulator {

/// What a technician meets.
enum class Mishap {
  ColdOil,
  AirInOil,
  WornSeal,
  LeakingCylinder,
  StickingPin,
  SlippedAngleSensor,
  LooseConnector,
  PressureZeroOff,
  BlockedPressureLine,
  CushioningOn,
  SuspensionOn,
  BucketNotRacked,
  DirtyBucket,
  SlopingGround,
  SoftTyre,
  WrongAttachment,
};

/// A mishap as data. The sentence that tells a person what it is stands in translations/ under `code`.
struct MishapKind {
  Mishap mishap;
  std::string_view code;
  std::string_view ucum;  ///< unit of its size
  double usual;
  double least;
  double most;
};

[[nodiscard]] std::span<const MishapKind> mishapKinds();
[[nodiscard]] const MishapKind& kindOf(Mishap mishap);

struct Happening {
  Mishap mishap;
  double size;  ///< in the kind's unit
};

/// How a log is taken.
struct Logging {
  double rate_Hz = 50.0;       ///< 10 to 1000
  double jitter_s = 0.0;       ///< standard deviation of the moment of a sample, which its stamp follows
  double stamp_error_s = 0.0;  ///< standard deviation of the stamp against that moment
  double dropped_share = 0.0;  ///< samples that never arrive
  double missing_cell_share = 0.0;
  double spike_share = 0.0;  ///< readings that are wild, of boom sensor and head pressure
  bool rod_pressure = true;
  bool bucket_sensor = true;
  bool engine_speed = true;
  bool pitch = false;
  bool oil_temperature = true;
};

/// One lift as it is asked of the simulator.
struct Lift {
  std::optional<Part> load;  ///< payload or test mass, in the bucket's frame
  double oil_Cel = 55.0;
  double slope_rad = 0.0;  ///< of the ground, nose up positive
  Plan plan;
  Logging logging;
  std::vector<Happening> happenings;
};

/// One sample as the log has it; an absent value is an empty cell. Sensors in their output's unit.
struct LogRow {
  double time_s;
  std::optional<double> boom_sensor;
  std::optional<double> bucket_sensor;
  std::optional<double> head_pressure_Pa;
  std::optional<double> rod_pressure_Pa;
  std::optional<double> engine_speed_per_min;
  std::optional<double> pitch_rad;
  std::optional<double> oil_temperature_Cel;
};

struct LiftRecord {
  std::vector<LogRow> rows;
  Motion truth;
};

/// A lift with its log. The same machine, lift and stream give the same rows.
/// Errors: those of `move`; InvalidInput "simulator-mishap-size" for a size outside its kind's range.
[[nodiscard]] Expected<LiftRecord> simulate(const Machine& machine, const Lift& lift, Random random);

/// Readings typed from a monitor: the lift's moves are its stations, each read at the end of its hold and
/// rounded to the monitor's steps. One row a station, its time that of the reading.
struct MonitorSteps {
  double angle = 0.01;  ///< in the sensor's unit
  double pressure_Pa = 1e5;
  double temperature_K = 1.0;
};
[[nodiscard]] Expected<std::vector<LogRow>> readStations(const Machine& machine, const Lift& lift,
                                                         const MonitorSteps& steps, Random random);

/// A boom sensor's and a bucket sensor's reading at rest, mean of a second or so, rounded to `step`.
[[nodiscard]] double readAtRest(const AngleSensor& sensor, double angle_rad, double step, Random& random);

/// A plan of one travel.
[[nodiscard]] Plan onePass(double from_rad, double to_rad, double speed_rad_per_s);

/// Rising to each station from below, held there.
[[nodiscard]] Plan stationsFromBelow(double from_rad, std::span<const double> stations_rad,
                                     double speed_rad_per_s);

/// A load of this mass in the bucket; a heap of its density about its centre.
[[nodiscard]] Part loadAt(double mass_kg, double along_m, double across_m);

}  // namespace hingepin::simulator
