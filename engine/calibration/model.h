// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <Eigen/Core>
#include <optional>
#include <string>
#include <vector>

#include "engine/base/error.h"
#include "engine/calibration/job.h"
#include "engine/calibration/lift_log.h"
#include "engine/statistics/smoothing.h"
#include "engine/statistics/uncertainty.h"

namespace hingepin::calibration {

/// A straight line from a sensor's reading to an angle: angle = angle_rad + slope * (reading - reading_at).
struct SensorLine {
  double reading_at = 0.0;  ///< weighted mean of the readings, where offset and slope are uncorrelated
  double angle_rad = 0.0;
  double slope_rad_per_unit = 0.0;
  double angle_u_rad = 0.0;           ///< standard uncertainty of angle_rad
  double slope_u_rad_per_unit = 0.0;  ///< standard uncertainty of the slope
  double chi_squared = 0.0;
  int degrees_of_freedom = 0;

  [[nodiscard]] double angle(double reading) const {
    return angle_rad + slope_rad_per_unit * (reading - reading_at);
  }
};

/// How the bucket sensor says "racked back". With a linkage its line gives the bellcrank's angle against the
/// boom; without one, the racked readings are interpolated over the boom angle.
struct BucketSensor {
  std::optional<SensorLine> bellcrank_line;
  std::vector<double> racked_boom_angle_rad;  ///< rising
  std::vector<double> racked_reading;
  std::optional<double> dumped_less_racked;  ///< reading dumped minus racked, at one boom angle
};

/// Where each unknown of the lift model stands in the state vector. The tare is a spline over the boom angle,
/// in the unit of the balance: N m of lift-cylinder moment where a linkage is known, N of lift-cylinder force
/// where none is.
enum Unknown : int {
  kViscousSpeed,        // balance per m/s (rad/s without linkage) of boom speed and relative viscosity
  kOrificeSpeed,        // balance per speed squared
  kSpeedOverAngle,      // change of the viscous term over the boom angle, per rad
  kEmptyFriction,       // half the gap between rising and lowering empty, at the window's middle
  kEmptyFrictionSlope,  // and its change per rad
  kPressureSpan,        // relative gain error of the pressure sensors
  kPressureBow,         // terminal-based non-linearity, symmetric about mid-range, share of range at its peak
  kPressureSkew,        // and its antisymmetric part
  kLoadFriction,        // share of the lift force that friction takes while rising
  kHeapAlong,           // payload centre less its stated place, m, along the bucket floor
  kHeapAcross,          // and square to it
  kTestMassAlong,       // the same for a test mass
  kTestMassAcross,
  kAngleOffset,   // errors of the boom line, rad
  kAngleSlope,    // in units of its standard uncertainty
  kAngleCurve,    // non-linearity of the boom sensor, rad
  kTyreSag,       // nose-down pitch at rated payload, rad
  kLinkageScale,  // relative error of the load arm from pin tolerances
  kGravity,       // relative
  kViscosityLaw,  // error of the viscosity law, in its standard uncertainties
  kSpan,          // free factor where only known masses give the span
  kSpanTilt,      // and its change over the window, from noise of the passes that gave it
  kUnknowns       // their number; the spline's coefficients follow
};

/// What is known of all unknowns: means, and a factor whose columns are independent sources (covariance =
/// factor * factor^T), so that an uncertainty can be split by source exactly.
struct State {
  Eigen::VectorXd mean;
  Eigen::MatrixXd factor;
  std::vector<std::string> sources;  ///< one name a column, a message code
};

/// A comparison of a known mass with what the model made of it before it was told.
struct MassCheck {
  std::string name;
  double reference_kg = 0.0;
  double predicted_kg = 0.0;
  double difference_u_kg = 0.0;  ///< standard uncertainty of the difference
};

struct PassSummary {
  std::string name;
  LiftKind kind = LiftKind::Empty;
  Direction direction = Direction::Up;
  bool typed_points = false;
  double low_rad = 0.0;
  double high_rad = 0.0;
  double mean_speed_rad_per_s = 0.0;
  std::optional<double> oil_temperature_K;
  int rows = 0;
  double effective_rows = 0.0;
  double residual_Pa = 0.0;          ///< SD of the residuals, as head pressure
  std::optional<int> rows_left_out;  ///< of the log; not known of calibrations made before this was counted
};

/// A finished calibration: everything that weighing needs, and what was taken for granted.
struct Calibration {
  std::string unit_id;
  std::string attachment_id;
  double rated_payload_kg = 0.0;
  int cylinder_count = 2;
  double head_area_m2 = 0.0;  ///< of one cylinder
  double rod_area_m2 = 0.0;
  bool uses_rod_pressure = false;
  bool uses_pitch = false;
  SensorUnit boom_sensor_unit = SensorUnit::Volt;
  std::optional<SensorUnit> bucket_sensor_unit;
  SensorLine boom_line;
  std::optional<BucketSensor> bucket_sensor;
  double window_low_rad = 0.0;
  double window_high_rad = 0.0;
  double gravity_m_per_s2 = 9.80665;
  std::optional<linkage::ZBarGeometry> linkage;
  linkage::Pin payload_center;
  double attachment_mass_kg = 0.0;  ///< coupler and bucket; 0 if not stated
  PressureSensor pressure_sensor;
  int oil_grade = 46;
  double boom_length_m = 0.0;  ///< of the linkage, or guessed from the rated payload

  statistics::SplineBasis tare_basis{0, 1, 1};
  std::vector<double>
      log_span;  ///< without a linkage: log of balance per kg, a polynomial in angle less window middle
  std::vector<double>
      log_pace;  ///< and log of boom speed over that at the window's middle, while the oil flow is constant
  bool lowering_taught = false;
  bool speed_taught = false;  ///< passes at two paces told what moving costs
  double slow_speed_rad_per_s = 0.0;
  double fast_speed_rad_per_s = 0.0;
  double taught_temperature_K = 0.0;  ///< mean of the empty passes; 0 if no temperature was given
  double lowest_temperature_K = 0.0;
  double highest_temperature_K = 0.0;
  /// What one degree of error at the boom-reference pose does to a rated payload; nothing if no such pose was
  /// given.
  std::optional<double> reference_pose_kg_per_deg;
  State state;

  std::vector<MassCheck> mass_checks;
  std::vector<PassSummary> passes;
  std::vector<Message> taken;     ///< what was taken where the job was silent
  std::vector<Message> warnings;  ///< what a person should look at
};

/// What weighing one lift gave.
struct Weighing {
  double mass_kg = 0.0;
  double standard_uncertainty_kg = 0.0;
  double expanded_uncertainty_kg = 0.0;  ///< for 95.45 % coverage
  double coverage_factor = 0.0;
  double degrees_of_freedom = 0.0;
  std::vector<statistics::Contribution> budget;  ///< kg; names are message codes, largest first
  Direction direction = Direction::Up;
  double low_rad = 0.0;  ///< the part of the window that was used
  double high_rad = 0.0;
  double mean_speed_rad_per_s = 0.0;
  std::optional<double> oil_temperature_K;
  int rows = 0;
  int rows_left_out = 0;  ///< of the log: a reading was missing, or beyond its sensor's range
  std::vector<Message> warnings;
};

}  // namespace hingepin::calibration
