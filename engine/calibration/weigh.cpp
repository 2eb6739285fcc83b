// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <cmath>

#include "engine/calibration/calibration.h"
#include "engine/calibration/lift_model.h"
#include "engine/calibration/pass.h"
#include "engine/calibration/state.h"
#include "engine/statistics/distributions.h"
#include "engine/statistics/uncertainty.h"
#include "engine/units/degree.h"

namespace hingepin::calibration {
namespace {

constexpr double kZeroDrift_u = 0.0001;  // of the pressure range, between teaching and weighing; a judgement
constexpr double kZeroPerKelvin_u =
    2e-5;  // and for each kelvin between them: a band of 0.25 % over 50 K and more
constexpr double kUnknownTemperature_u =
    0.4;  // of the viscous term: 40 to 75 Cel spans a factor of about three
constexpr double kMostUnracked_rad = 15.0 * kDegree;
constexpr double kWarnUnracked_rad = 2.0 * kDegree;
constexpr double kRackReading_u_rad = 0.5 * kDegree;  // a bucket within this of its stop counts as racked
constexpr double kFastMargin = 1.15;
constexpr double kSlowMargin = 0.7;

// A loaded machine bounces on its tyres about once a second (common practice, no source). A travel that takes
// less than a period and a half cannot tell the mass from a bounce, and is too short for its start and its
// end to be cut off.
constexpr double kShortTravel_s = 1.5;
constexpr double kMostSwing = 0.06;  // of the rated payload, in such a travel; by the trial

constexpr double kLeastOfTare = 0.5;  // less than half of what the empty machine needs is no lift of it

/// Of a log whose pressures are all within their sensors' range.
Expected<Weighing> weighUsable(const Calibration& calibration, const LiftLog& log) {
  if (log.boom_sensor_unit != calibration.boom_sensor_unit)
    return fail(ErrorKind::InvalidInput, "sensor-unit-differs", {{"log", log.name}}, {.file = log.name});
  const Expected<LiftModel> model = LiftModel::make(calibration);
  if (!model) return std::unexpected(model.error());

  Weighing weighing;
  if (auto judged = judgeRows(log, calibration.pressure_sensor.range, weighing.warnings); !judged)
    return std::unexpected(judged.error());
  // A rising travel is wanted; a lowering one will do where lowering was taught.
  const auto find = [&](Direction direction) {
    return findPass(log, calibration.boom_line, {calibration.window_low_rad, calibration.window_high_rad},
                    kWindowMargin_rad, direction);
  };
  Expected<Pass> pass = find(Direction::Up);
  if (!pass) {
    Expected<Pass> down = find(Direction::Down);
    if (!down) return std::unexpected(pass.error());
    if (!calibration.lowering_taught)
      return fail(ErrorKind::Insufficient, "lowering-not-taught", {{"log", log.name}}, {.file = log.name});
    pass = std::move(down);
  }

  const RackCheck rack = checkRacked(calibration, *model, *pass);
  double tilt_offset_m = 0.0;
  if (rack.known && std::abs(rack.bucket_offset_rad) > kMostUnracked_rad)
    return fail(ErrorKind::Insufficient, "bucket-not-racked",
                {{"log", log.name}, {"offset", Amount{std::abs(rack.bucket_offset_rad) / kDegree, "deg", 0}}},
                {.file = log.name});
  if (rack.known && std::abs(rack.bucket_offset_rad) > kWarnUnracked_rad) {
    tilt_offset_m = rack.tilt_offset_m;
    weighing.warnings.push_back(
        {"bucket-off-its-stop", {{"offset", Amount{std::abs(rack.bucket_offset_rad) / kDegree, "deg", 1}}}});
  }
  Expected<ModelRows> rows = model->rows(*pass, tilt_offset_m);
  if (!rows && tilt_offset_m != 0.0) rows = model->rows(*pass, tilt_offset_m = 0.0);
  if (!rows) return std::unexpected(rows.error());
  const double share = rows->balance.mean() / (rows->tare * calibration.state.mean).mean();
  if (share < kLeastOfTare)
    return fail(ErrorKind::Insufficient, "pressures-below-empty",
                {{"log", log.name}, {"share", Amount{100.0 * share, "%", 0}}}, {.file = log.name});
  const MassEstimate estimate = estimateMass(calibration, *model, *pass, *rows, false);
  const double travel_s = pass->step_s * static_cast<double>(pass->size());
  if (!pass->typed_points && travel_s < kShortTravel_s &&
      estimate.swing_kg > kMostSwing * calibration.rated_payload_kg)
    return fail(ErrorKind::Insufficient, "lift-too-short",
                {{"log", log.name},
                 {"time", Amount{travel_s, "s", 1}},
                 {"swing", Amount{estimate.swing_kg, "kg", 0}}},
                {.file = log.name});

  std::vector<statistics::Contribution> budget = splitBySource(calibration.state, estimate.jacobian);
  budget.push_back({"budget-lift-noise", estimate.noise_u_kg, estimate.degrees_of_freedom});
  budget.push_back({"budget-repeatability", estimate.repeatability_u_kg});
  budget.push_back({"budget-unsteady", estimate.unsteady_u_kg});
  const double apart_K = pass->oil_temperature_K && calibration.taught_temperature_K > 0.0
                             ? *pass->oil_temperature_K - calibration.taught_temperature_K
                             : 15.0;
  budget.push_back({"budget-zero-drift", std::abs(estimate.kg_per_pascal) *
                                             std::hypot(kZeroDrift_u, kZeroPerKelvin_u * apart_K) *
                                             calibration.pressure_sensor.range.inPascals()});
  const double viscous_kg =
      std::abs(estimate.jacobian(kViscousSpeed) * calibration.state.mean(kViscousSpeed));
  const double speed = pass->boom_speed_rad_per_s.cwiseAbs().mean();
  if (!pass->oil_temperature_K && speed > 0.0) {
    budget.push_back({"budget-oil-temperature", kUnknownTemperature_u * viscous_kg});
    weighing.warnings.push_back({"oil-temperature-unknown", {}});
  }
  if (rack.known && std::abs(rack.bucket_offset_rad) > kWarnUnracked_rad) {
    // Half of what the offset costs stays in doubt; without a linkage all of a rough guess (0.3 % of payload
    // a degree).
    double cost_kg = 0.003 * estimate.mass_kg * std::abs(rack.bucket_offset_rad) / kDegree;
    if (tilt_offset_m != 0.0) {
      if (const auto racked_rows = model->rows(*pass, 0.0))
        cost_kg = 0.5 * std::abs(estimate.mass_kg -
                                 estimateMass(calibration, *model, *pass, *racked_rows, false).mass_kg) +
                  0.1 * cost_kg;
    }
    budget.push_back({"budget-bucket", cost_kg});
  } else if (rack.known && calibration.linkage) {
    if (const auto tilted = model->rows(*pass, -1e-3)) {
      // A millimetre of tilt cylinder tells what half a degree of bucket is worth.
      const double per_metre =
          (estimateMass(calibration, *model, *pass, *tilted, false).mass_kg - estimate.mass_kg) / 1e-3;
      const auto state =
          model->geometry()->tilt(pass->boom_angle_rad.mean(),
                                  model->geometry()->geometry().tilt_cylinder_extended.inMetres() - 1e-3);
      if (state)
        budget.push_back(
            {"budget-bucket", std::abs(per_metre / state->bucket_by_tilt.first) * kRackReading_u_rad * 0.5});
    }
  }

  const statistics::CombinedUncertainty combined = statistics::combine(budget, statistics::kTwoSigmaCoverage);
  if (!std::isfinite(estimate.mass_kg) || !std::isfinite(combined.expanded_uncertainty))
    return fail(ErrorKind::Insufficient, "mass-not-a-number", {{"log", log.name}}, {.file = log.name});
  std::erase_if(budget, [&](const statistics::Contribution& line) {
    return line.standard_uncertainty < 1e-6 * combined.standard_uncertainty;
  });
  std::ranges::sort(budget, std::greater{}, &statistics::Contribution::standard_uncertainty);
  weighing.mass_kg = estimate.mass_kg;
  weighing.standard_uncertainty_kg = combined.standard_uncertainty;
  weighing.expanded_uncertainty_kg = combined.expanded_uncertainty;
  weighing.coverage_factor = combined.coverage_factor;
  weighing.degrees_of_freedom = combined.degrees_of_freedom;
  weighing.budget = std::move(budget);
  weighing.direction = pass->direction;
  weighing.low_rad = std::max(calibration.window_low_rad, pass->boom_angle_rad.minCoeff());
  weighing.high_rad = std::min(calibration.window_high_rad, pass->boom_angle_rad.maxCoeff());
  weighing.mean_speed_rad_per_s = speed;
  weighing.oil_temperature_K = pass->oil_temperature_K;
  weighing.rows = estimate.rows;

  auto warn = [&](std::string code, std::vector<std::pair<std::string, MessageValue>> values) {
    weighing.warnings.push_back({std::move(code), std::move(values)});
  };
  if (speed > kFastMargin * calibration.fast_speed_rad_per_s && calibration.speed_taught)
    warn("faster-than-taught", {{"speed", Amount{speed / kDegree, "deg/s", 0}},
                                {"taught", Amount{calibration.fast_speed_rad_per_s / kDegree, "deg/s", 0}}});
  if (speed > 0.0 && calibration.speed_taught && speed < kSlowMargin * calibration.slow_speed_rad_per_s)
    warn("slower-than-taught", {{"speed", Amount{speed / kDegree, "deg/s", 0}},
                                {"taught", Amount{calibration.slow_speed_rad_per_s / kDegree, "deg/s", 0}}});
  if (!calibration.speed_taught && speed > kFastMargin * calibration.fast_speed_rad_per_s)
    warn("moving-cost-unknown", {});
  double speed_and_oil_kg = 0.0;
  for (const statistics::Contribution& line : weighing.budget)
    if (line.name == "budget-speed-and-oil") speed_and_oil_kg = line.standard_uncertainty;
  if (speed_and_oil_kg > 0.7 * combined.standard_uncertainty && calibration.taught_temperature_K > 0.0 &&
      pass->oil_temperature_K)
    warn("oil-far-from-taught", {{"oil", Amount{*pass->oil_temperature_K - 273.15, "Cel", 0}},
                                 {"taught", Amount{calibration.taught_temperature_K - 273.15, "Cel", 0}}});
  if (weighing.high_rad - weighing.low_rad <
          0.4 * (calibration.window_high_rad - calibration.window_low_rad) &&
      !pass->typed_points)
    warn("partial-lift", {{"low", Amount{weighing.low_rad / kDegree, "deg", 0}},
                          {"high", Amount{weighing.high_rad / kDegree, "deg", 0}}});
  if (weighing.mass_kg > 1.1 * calibration.rated_payload_kg)
    warn("above-rated-payload", {{"rated", Amount{calibration.rated_payload_kg, "kg", 0}}});
  if (weighing.mass_kg < -weighing.expanded_uncertainty_kg) warn("mass-below-zero", {});
  if (pass->other_travels > 0)
    warn("log-has-several-travels",
         {{"log", log.name}, {"others", Amount{static_cast<double>(pass->other_travels), "1", 0}}});
  weighing.rows_left_out = static_cast<int>(log.rows_dropped + log.rows_beyond_range);
  if (calibration.uses_rod_pressure && !log.has_rod_pressure) warn("rod-pressure-missing", {});
  for (const std::string& column : log.unknown_columns) warn("column-unknown", {{"column", column}});
  return weighing;
}

}  // namespace

Expected<Weighing> weigh(const Calibration& calibration, const LiftLog& log) {
  const Pressure range = calibration.pressure_sensor.range;
  if (std::ranges::none_of(log.rows, [&](const LiftRow& row) { return isBeyondRange(row, range); }))
    return weighUsable(calibration, log);
  LiftLog usable = log;
  leaveOutBeyondRange(usable, range);
  return weighUsable(calibration, usable);
}

}  // namespace hingepin::calibration
