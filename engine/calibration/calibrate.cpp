// SPDX-License-Identifier: Apache-2.0
#include <Eigen/Cholesky>
#include <Eigen/QR>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/calibration/angles.h"
#include "engine/calibration/calibration.h"
#include "engine/calibration/gravity.h"
#include "engine/calibration/lift_model.h"
#include "engine/calibration/linkage_doubt.h"
#include "engine/calibration/pass.h"
#include "engine/calibration/pass_noise.h"
#include "engine/calibration/state.h"
#include "engine/statistics/correlation.h"
#include "engine/statistics/distributions.h"
#include "engine/statistics/least_squares.h"
#include "engine/statistics/robust.h"
#include "engine/units/degree.h"

namespace hingepin::calibration {
namespace {

constexpr int kTareIntervals = 6;
constexpr int kOwnTerms = 3;
constexpr double kLeastPaceTime_s = 3.0;
constexpr double kTypicalFastSpeed_rad_per_s = 20.0 * kDegree;

constexpr double kModelMisfit = 5e-4;  // of the tare: what the model leaves out of inertia and shape

// Doubts that no key of a job states. Standard uncertainties.
// What orifices, and so no viscosity, cost of the lift pressure at the taught fast pace. With the rod side
// measured these are the ends and bends of the hoses between sensors and cylinders: two to five dynamic
// pressures of oil at 3 to 6 m/s on the head side, of 2 to 5 m/s on the rod side, which is 0.1 to 0.7 bar;
// but a third of what moving costs at most, where that is little. Where the rod side is not measured, the
// return line's valve comes first, and it is an orifice.
constexpr double kLineOrifice_Pa = 0.35e5;
constexpr double kLineOrifice_u_Pa = 0.25e5;
constexpr double kMostLineOrificeShare = 0.35;
constexpr double kUnmeasuredRodViscousShare = 0.25;
constexpr double kUnmeasuredRodViscousShare_u = 0.2;
constexpr double kMovingCostShare =
    0.015;  // of the tare at a typical fast pace, where only one pace was taught
constexpr double kMovingCostShare_u = 0.015;
constexpr double kConstantFrictionShare = 0.002;  // of the tare: seal preload, which no load adds to
constexpr double kConstantFrictionShare_u = 0.004;
constexpr double kAngleCurve_u_rad = 0.25 * kDegree;
constexpr double kTyreSag_rad =
    1.0 * kDegree;  // nose down at rated payload; 1 to 2 deg derived from tyre stiffness
constexpr double kTyreSag_u_rad = 0.6 * kDegree;
constexpr double kLinkageScale_u =
    0.001;  // of the load arm, from the tolerances of the pins; a judgement, no source
constexpr double kHeapCentre_u_m = 0.08;
constexpr double kGuessedCentre_u_m = 0.15;
constexpr double kDefaultGravity = 9.80665;
constexpr double kDefaultGravity_u = 0.015;
constexpr double kDefaultMassU = 0.001;
constexpr double kSuspectDisagreement = 3.0;  // standard uncertainties
constexpr double kAbsurdDisagreement = 2.0;   // as a factor: a slip of unit, log or mass, and no span
// The empty boom and attachment weigh on the cylinders as 0.3 to 2 rated payloads would; far beyond is a
// slip.
constexpr double kLeastTare = 0.05;
constexpr double kMostTare = 10.0;

struct PreparedPass {
  const Lift* lift;
  Pass pass;
  ModelRows rows;
};

std::string directionName(Direction direction) { return direction == Direction::Up ? "up" : "down"; }

/// Where a lift's own pass lies, its direction and bucket checked.
Expected<PreparedPass> prepare(const Calibration& calibration, const LiftModel& model, const Lift& lift,
                               std::vector<Message>& warnings) {
  if (lift.readings.boom_sensor_unit != calibration.boom_sensor_unit)
    return fail(ErrorKind::InvalidInput, "sensor-unit-differs", {{"log", lift.name}},
                {.pointer = lift.pointer});
  Expected<Pass> pass =
      findPass(lift.readings, calibration.boom_line,
               {calibration.window_low_rad, calibration.window_high_rad}, kWindowMargin_rad, std::nullopt);
  if (!pass) {
    Error error = pass.error();
    if (error.place.pointer.empty()) error.place.pointer = lift.pointer;
    return std::unexpected(error);
  }
  if (lift.direction && *lift.direction != pass->direction)
    return fail(ErrorKind::InvalidInput, "direction-disagrees",
                {{"log", lift.name},
                 {"stated", directionName(*lift.direction)},
                 {"found", directionName(pass->direction)}},
                {.pointer = lift.pointer + "/direction"});
  if (pass->other_travels > 0)
    warnings.push_back(
        {"log-has-several-travels",
         {{"log", lift.name}, {"others", Amount{static_cast<double>(pass->other_travels), "1", 0}}}});
  const RackCheck rack = checkRacked(calibration, model, *pass);
  if (rack.known && std::abs(rack.bucket_offset_rad) > 3.0 * kDegree)
    warnings.push_back(
        {"pass-not-racked",
         {{"log", lift.name}, {"offset", Amount{std::abs(rack.bucket_offset_rad) / kDegree, "deg", 1}}}});
  Expected<ModelRows> rows = model.rows(*pass, 0.0);
  if (!rows) {
    Error error = rows.error();
    error.place.pointer = lift.pointer;
    return std::unexpected(error);
  }
  return PreparedPass{&lift, std::move(*pass), std::move(*rows)};
}

/// Angle interval that all passes of a kind cover, for the default window.
Expected<void> chooseWindow(const Job& job, Calibration& calibration) {
  if (job.unit.weigh_window) {
    calibration.window_low_rad = job.unit.weigh_window->low.inRadians();
    calibration.window_high_rad = job.unit.weigh_window->high.inRadians();
    return {};
  }
  double low_rad = -kDefaultWindow_rad;
  double high_rad = kDefaultWindow_rad;
  for (const Lift& lift : job.lifts) {
    if (lift.kind != LiftKind::Empty) continue;
    const Expected<Pass> pass = findPass(lift.readings, calibration.boom_line,
                                         {-kDefaultWindow_rad, kDefaultWindow_rad}, 0.0, std::nullopt);
    if (!pass) {
      Error error = pass.error();
      if (error.place.pointer.empty()) error.place.pointer = lift.pointer;
      return std::unexpected(error);
    }
    low_rad = std::max(low_rad, pass->boom_angle_rad.minCoeff());
    high_rad = std::min(high_rad, pass->boom_angle_rad.maxCoeff());
  }
  if (high_rad - low_rad < 1.0 * kDegree)
    return fail(ErrorKind::Insufficient, "passes-share-no-angles", {}, {.pointer = "/lifts"});
  calibration.window_low_rad = low_rad;
  calibration.window_high_rad = high_rad;
  calibration.taken.push_back(
      {"taken-weigh-window",
       {{"low", Amount{low_rad / kDegree, "deg", 1}}, {"high", Amount{high_rad / kDegree, "deg", 1}}}});
  return {};
}

/// Everything that stands in the job, and what is taken where it is silent.
Expected<void> takeJob(const Job& job, Calibration& calibration, double& gravity_relative_u) {
  const LoaderUnit& unit = job.unit;
  auto taken = [&](std::string code, std::vector<std::pair<std::string, MessageValue>> values) {
    calibration.taken.push_back({std::move(code), std::move(values)});
  };
  calibration.unit_id = unit.id;
  calibration.rated_payload_kg = unit.rated_payload.inKilograms();
  calibration.cylinder_count = unit.lift_cylinders.count;
  const double bore_m = unit.lift_cylinders.bore.inMetres();
  const double rod_m = unit.lift_cylinders.rod.inMetres();
  calibration.head_area_m2 = std::numbers::pi / 4.0 * bore_m * bore_m;
  calibration.rod_area_m2 = std::numbers::pi / 4.0 * (bore_m * bore_m - rod_m * rod_m);
  calibration.boom_sensor_unit = job.boom_sensor_unit;
  calibration.bucket_sensor_unit = job.bucket_sensor_unit;
  calibration.linkage = unit.linkage;
  if (unit.pressure_sensor) {
    calibration.pressure_sensor = *unit.pressure_sensor;
  } else {
    taken("taken-pressure-sensor",
          {{"range", Amount{calibration.pressure_sensor.range.inBar(), "bar", 0}},
           {"span_u", Amount{calibration.pressure_sensor.span_u.inPercent(), "%", 2}},
           {"linearity_u", Amount{calibration.pressure_sensor.linearity_u.inPercent(), "%", 2}}});
  }
  if (unit.oil_grade)
    calibration.oil_grade = *unit.oil_grade;
  else
    taken("taken-oil", {{"grade", "ISO VG " + std::to_string(calibration.oil_grade)}});

  // Loaders of a shape: lengths go with the cube root of the payload; 2.55 m at 4500 kg.
  calibration.boom_length_m = unit.linkage ? unit.linkage->boom_length.inMetres()
                                           : 2.55 * std::cbrt(calibration.rated_payload_kg / 4500.0);
  calibration.payload_center = usualPayloadCenter(Length::fromMetres(calibration.boom_length_m));
  if (job.attachment) {
    calibration.attachment_id = job.attachment->id;
    calibration.attachment_mass_kg = job.attachment->coupler.value_or(Mass()).inKilograms() +
                                     job.attachment->bucket.value_or(Mass()).inKilograms();
    if (job.attachment->payload_center) calibration.payload_center = *job.attachment->payload_center;
  }
  if (unit.linkage && !(job.attachment && job.attachment->payload_center)) {
    taken("taken-payload-center", {{"along", Amount{calibration.payload_center.along.inMetres(), "m", 2}},
                                   {"across", Amount{calibration.payload_center.across.inMetres(), "m", 2}}});
    calibration.warnings.push_back({"payload-center-guessed", {}});
  }
  gravity_relative_u = 0.0;
  if (job.gravity) {
    calibration.gravity_m_per_s2 = job.gravity->inMetresPerSecondSquared();
  } else if (job.site) {
    const Expected<LocalGravity> local = gravityAt(job.site->latitude, job.site->height);
    if (!local) {
      Error error = local.error();
      error.place.pointer = "/site";
      return std::unexpected(error);
    }
    calibration.gravity_m_per_s2 = local->value.inMetresPerSecondSquared();
    gravity_relative_u = local->standard_uncertainty / local->value;
  } else {
    gravity_relative_u = kDefaultGravity_u / kDefaultGravity;
    taken("taken-gravity",
          {{"gravity", Amount{kDefaultGravity, "m/s2", 5}}, {"u", Amount{kDefaultGravity_u, "m/s2", 3}}});
  }
  return {};
}

Expected<void> checkLinkage(const Job& job, const LiftModel& model, const SensorLine& line) {
  if (model.geometry() == nullptr) return {};
  double low_rad = 1e9;
  double high_rad = -1e9;
  for (const PoseReading& pose : job.poses) {
    low_rad = std::min(low_rad, line.angle(pose.boom_sensor));
    high_rad = std::max(high_rad, line.angle(pose.boom_sensor));
  }
  const linkage::Range range = model.geometry()->liftRange();
  if (low_rad < range.low - 0.5 * kDegree || high_rad > range.high + 0.5 * kDegree)
    return fail(ErrorKind::InvalidInput, "lift-cylinder-shortens",
                {{"low", Amount{low_rad / kDegree, "deg", 1}},
                 {"high", Amount{high_rad / kDegree, "deg", 1}},
                 {"range_low", Amount{range.low / kDegree, "deg", 1}},
                 {"range_high", Amount{range.high / kDegree, "deg", 1}}},
                {.pointer = "/unit/linkage/lift_frame_pin"});
  return {};
}

void summarise(Calibration& calibration, const PreparedPass& pass, LiftKind kind, double residual_Pa,
               double effective_rows) {
  PassSummary summary;
  summary.name = pass.lift->name;
  summary.kind = kind;
  summary.direction = pass.pass.direction;
  summary.typed_points = pass.pass.typed_points;
  summary.low_rad = pass.pass.boom_angle_rad.minCoeff();
  summary.high_rad = pass.pass.boom_angle_rad.maxCoeff();
  summary.mean_speed_rad_per_s = pass.pass.boom_speed_rad_per_s.cwiseAbs().mean();
  summary.oil_temperature_K = pass.pass.oil_temperature_K;
  summary.rows = static_cast<int>(pass.pass.size());
  summary.effective_rows = effective_rows;
  summary.residual_Pa = residual_Pa;
  summary.rows_left_out =
      static_cast<int>(pass.lift->readings.rows_dropped + pass.lift->readings.rows_beyond_range);
  calibration.passes.push_back(summary);
}

/// Tare, speed and empty friction from all empty passes together: penalised generalised least squares.
Expected<void> fitTare(Calibration& calibration, const std::vector<PreparedPass>& empties) {
  // The basis spans what the passes cover.
  double low_rad = 1e9;
  double high_rad = -1e9;
  Eigen::Index rows = 0;
  bool has_log = false;
  const PreparedPass* longest = &empties.front();
  for (const PreparedPass& pass : empties) {
    low_rad = std::min(low_rad, pass.pass.boom_angle_rad.minCoeff());
    high_rad = std::max(high_rad, pass.pass.boom_angle_rad.maxCoeff());
    rows += pass.pass.size();
    has_log = has_log || !pass.pass.typed_points;
    if (pass.pass.size() > longest->pass.size()) longest = &pass;
  }
  if (high_rad - low_rad < 1e-4) {  // one typed point: a constant
    low_rad -= 0.5 * kDegree;
    high_rad += 0.5 * kDegree;
  }
  const int size = calibration.tare_basis.size();
  const int known_names = kEmptyFrictionSlope + 1 + size;  // the first few, then the spline
  // No two passes are alike: each has a small offset, slope and bend of its own, which is not kept. They also
  // keep what the model lacks in shape from being taken for knowledge of speed or friction.
  const auto passes = static_cast<int>(empties.size());
  const int shared_terms = known_names + kOwnTerms * passes;
  const double middle_rad = 0.5 * (calibration.window_low_rad + calibration.window_high_rad);
  const double half_rad = 0.5 * (calibration.window_high_rad - calibration.window_low_rad);
  auto reduced = [&](const PreparedPass& pass) {
    const Eigen::MatrixXd& full = pass.rows.tare;
    Eigen::MatrixXd part = Eigen::MatrixXd::Zero(full.rows(), shared_terms);
    part.leftCols(kEmptyFrictionSlope + 1) = full.leftCols(kEmptyFrictionSlope + 1);
    part.middleCols(kEmptyFrictionSlope + 1, size) = full.rightCols(size);
    const auto own = known_names + kOwnTerms * static_cast<int>(&pass - empties.data());
    part.col(own).setOnes();
    part.col(own + 1) = (pass.rows.angle_rad.array() - middle_rad) / half_rad;
    part.col(own + 2) = part.col(own + 1).array().square() - 1.0 / 3.0;
    return part;
  };

  // How rough the curve may be: cross-validation on the longest pass; typed points are too few to ask.
  const double typical = longest->rows.balance.mean();
  const double fit_span_rad = high_rad - low_rad;
  double roughness_weight =
      1.0 / std::pow(0.05 * typical / (fit_span_rad * fit_span_rad) * std::sqrt(fit_span_rad), 2);
  if (!longest->pass.typed_points) {
    const auto smooth =
        statistics::fitSmooth(longest->pass.boom_angle_rad, longest->rows.balance,
                              Eigen::VectorXd::Ones(longest->pass.size()), calibration.tare_basis);
    if (!smooth) return std::unexpected(smooth.error());
    if (smooth->residual_scale > 0.0)
      roughness_weight =
          std::min(1e12, smooth->smoothing) / (smooth->residual_scale * smooth->residual_scale);
  }
  const Eigen::MatrixXd roughness = calibration.tare_basis.roughnessRoot();

  // Weak knowledge that keeps what the passes do not tell within reason.
  const double arm = longest->rows.arm.mean();
  const double cylinder_speed = arm * kTypicalFastSpeed_rad_per_s;
  const double ratio = longest->rows.viscosity_ratio;
  const double viscous_effect = arm * cylinder_speed;  // balance per unit of kViscousSpeed, warm
  const double orifice_effect = arm * cylinder_speed * cylinder_speed;  // and of kOrificeSpeed
  Eigen::VectorXd prior_mean = Eigen::VectorXd::Zero(kEmptyFrictionSlope + 1 + kOwnTerms * passes);
  Eigen::VectorXd prior_u =
      Eigen::VectorXd::Constant(prior_mean.size(), kPassRepeatability_u * std::abs(typical));
  prior_u(kViscousSpeed) = 0.5 * typical / viscous_effect;
  prior_u(kOrificeSpeed) = 0.5 * typical / orifice_effect;
  prior_u(kSpeedOverAngle) = 0.01 * typical / viscous_effect / 0.35;
  prior_mean(kEmptyFriction) = 0.012 * typical;
  prior_u(kEmptyFriction) = 0.03 * typical;
  prior_u(kEmptyFrictionSlope) = 0.02 * typical / 0.35;

  const Eigen::Index extra = roughness.rows() + prior_u.size();
  Eigen::MatrixXd design = Eigen::MatrixXd::Zero(rows + extra, shared_terms);
  Eigen::VectorXd observed(rows + extra);
  auto stackPriors = [&]() {
    design.bottomRows(extra).setZero();
    observed.tail(extra).setZero();
    design.block(rows, kEmptyFrictionSlope + 1, roughness.rows(), size) =
        std::sqrt(roughness_weight) * roughness;
    for (Eigen::Index k = 0; k < prior_u.size(); ++k) {
      design(rows + roughness.rows() + k, k <= kEmptyFrictionSlope ? k : k + size) = 1.0 / prior_u(k);
      observed(rows + roughness.rows() + k) = prior_mean(k) / prior_u(k);
    }
  };
  const Eigen::VectorXd ones = Eigen::VectorXd::Ones(rows + extra);

  // First fit with equal weights a pass, then with each pass's own scatter and correlation.
  stackPriors();
  Eigen::Index at = 0;
  for (const PreparedPass& pass : empties) {
    const double scale = std::max(1e-4 * typical, 1.0);
    design.block(at, 0, pass.pass.size(), shared_terms) = reduced(pass) / (scale * 10.0);
    observed.segment(at, pass.pass.size()) = pass.rows.balance / (scale * 10.0);
    at += pass.pass.size();
  }
  auto fit = statistics::fitWeighted(design, observed, ones, statistics::NoiseScale::Known);
  if (!fit) return std::unexpected(fit.error());
  const Eigen::VectorXd first = fit->coefficients;
  // Where moving costs little, its cost is not read out of the scatter.
  const double cost_per_speed = first(kViscousSpeed) + first(kOrificeSpeed) * orifice_effect / viscous_effect;
  prior_u(kViscousSpeed) = 0.05 * typical / viscous_effect;
  if (calibration.uses_rod_pressure)
    prior_u(kViscousSpeed) = std::max(prior_u(kViscousSpeed), std::abs(cost_per_speed));

  // What is left of each pass says how its noise hangs together; a bounce that stands out gets its two
  // columns.
  std::vector<PassNoise> noises;
  std::vector<Eigen::MatrixXd> bounces;
  Eigen::Index unknowns = shared_terms;
  for (const PreparedPass& pass : empties) {
    const Eigen::MatrixXd part = reduced(pass);
    const Eigen::VectorXd left = (pass.rows.balance - part * first).cwiseQuotient(pass.rows.arm);
    PassNoise noise;
    // So quiet that what is left is the model's own shape: no noise to be modelled.
    const bool quiet =
        left.squaredNorm() < std::pow(kModelMisfit * typical / arm, 2) * static_cast<double>(left.size());
    if (!pass.pass.typed_points && !quiet) {
      // The tare is known from all passes, so only a level and a slope of this one stand beside the noise.
      const auto own = known_names + kOwnTerms * static_cast<int>(&pass - empties.data());
      noise = plausibleNoise(part.middleCols(own, 2), left, pass.pass.step_s).front();
    }
    bounces.push_back(pass.rows.arm.asDiagonal() *
                      bounceColumns(noise.bounces, pass.pass.size(), pass.pass.step_s));
    noises.push_back(std::move(noise));
    unknowns += bounces.back().cols();
  }
  design.setZero(rows + extra, unknowns);
  Eigen::VectorXd start = Eigen::VectorXd::Zero(unknowns);
  start.head(shared_terms) = first;

  at = 0;
  stackPriors();
  Eigen::Index bounce_at = shared_terms;
  for (const PreparedPass& pass : empties) {
    const Eigen::MatrixXd& bounce = bounces[&pass - empties.data()];
    const Eigen::Index n = pass.pass.size();
    Eigen::MatrixXd part = Eigen::MatrixXd::Zero(n, unknowns);
    part.leftCols(shared_terms) = reduced(pass);
    part.middleCols(bounce_at, bounce.cols()) = bounce;
    Eigen::VectorXd residuals = pass.rows.balance - part * start;
    if (bounce.cols() > 0) {
      start.segment(bounce_at, bounce.cols()) = bounce.colPivHouseholderQr().solve(residuals);
      residuals -= bounce * start.segment(bounce_at, bounce.cols());
    }
    bounce_at += bounce.cols();
    const double head_force = calibration.cylinder_count * calibration.head_area_m2;
    const double mean_arm = pass.rows.arm.mean();
    Eigen::MatrixXd columns(n, unknowns + 1);
    columns << part, pass.rows.balance;
    double noise =
        std::sqrt(residuals.squaredNorm() / static_cast<double>(std::max<Eigen::Index>(1, n - size)));
    double effective = static_cast<double>(n);
    if (pass.pass.typed_points) {
      constexpr double kTypedReadingU_Pa = 0.5e5;
      noise = std::max(noise, kTypedReadingU_Pa * head_force * mean_arm / 2.0);
    } else if (noise < kModelMisfit * std::abs(typical)) {
      noise = kModelMisfit * std::abs(typical);
    } else {
      const PassNoise& own = noises[&pass - empties.data()];
      columns = whitened(own, columns, pass.pass.step_s);
      const Eigen::VectorXd white = columns.col(unknowns) - columns.leftCols(unknowns) * start;
      noise = std::sqrt(white.squaredNorm() / static_cast<double>(std::max<Eigen::Index>(1, n - size)));
      effective = statistics::effectiveSampleSize(residuals);
    }
    design.middleRows(at, n) = columns.leftCols(unknowns) / noise;
    observed.segment(at, n) = columns.col(unknowns) / noise;
    at += n;

    summarise(calibration, pass, LiftKind::Empty,
              std::sqrt(residuals.squaredNorm() / static_cast<double>(n)) / (head_force * mean_arm),
              effective);
  }
  fit = statistics::fitWeighted(design, observed, ones, statistics::NoiseScale::Known);
  if (!fit) return std::unexpected(fit.error());

  State& state = calibration.state;
  const int all = kUnknowns + size;
  state.mean.setZero(all);
  state.factor.setZero(all, known_names);
  state.sources.assign(known_names, "budget-empty-passes");
  const Eigen::MatrixXd root = fit->covariance.topLeftCorner(known_names, known_names).llt().matrixL();
  state.mean.head(kEmptyFrictionSlope + 1) = fit->coefficients.head(kEmptyFrictionSlope + 1);
  state.mean.tail(size) = fit->coefficients.segment(kEmptyFrictionSlope + 1, size);
  state.factor.topRows(kEmptyFrictionSlope + 1) = root.topRows(kEmptyFrictionSlope + 1);
  state.factor.bottomRows(size) = root.bottomRows(size);

  // How what moving costs divides between viscosity and orifices, where the passes do not tell.
  Eigen::RowVectorXd row = Eigen::RowVectorXd::Zero(all);
  if (calibration.speed_taught) {
    const double faster = arm * calibration.fast_speed_rad_per_s;
    const double viscous = arm * faster * ratio;
    const double orifice = arm * faster * faster;
    // The passes tell what the fast one costs more than the slow one, and so, for a viscous share, the whole.
    const double slower = calibration.slow_speed_rad_per_s / calibration.fast_speed_rad_per_s;
    const double more = (1.0 - slower) * viscous * state.mean(kViscousSpeed) +
                        (1.0 - slower * slower) * orifice * state.mean(kOrificeSpeed);
    const auto wholeCost = [&](double viscous_share) {
      return std::abs(more) / (1.0 - slower * slower - viscous_share * slower * (1.0 - slower));
    };
    if (calibration.uses_rod_pressure) {
      const double per_pascal = calibration.cylinder_count * calibration.head_area_m2 * arm;
      row(kOrificeSpeed) = orifice;
      observe(state, row,
              std::min(kLineOrifice_Pa * per_pascal,
                       kMostLineOrificeShare * wholeCost(1.0 - kMostLineOrificeShare)),
              kLineOrifice_u_Pa * per_pascal, "budget-speed-and-oil");
    } else {
      row(kViscousSpeed) = (1.0 - kUnmeasuredRodViscousShare) * viscous;
      row(kOrificeSpeed) = -kUnmeasuredRodViscousShare * orifice;
      observe(state, row, 0.0,
              std::max(kUnmeasuredRodViscousShare_u * wholeCost(kUnmeasuredRodViscousShare), 1e-4 * typical),
              "budget-speed-and-oil");
    }
  } else {
    row(kOrificeSpeed) = orifice_effect;
    observe(state, row, 0.0, 0.3 * kMovingCostShare_u * typical, "budget-speed-and-oil");
    row.setZero();
    row(kViscousSpeed) = viscous_effect;
    observe(state, row, kMovingCostShare * typical, kMovingCostShare_u * typical, "budget-speed-and-oil");
  }
  return {};
}

bool isTarePlausible(double tare_kg, const Calibration& calibration) {
  const double share = tare_kg / calibration.rated_payload_kg;
  return share > kLeastTare && share < kMostTare;
}

/// With a linkage: whether the empty machine weighs as one can.
Expected<void> checkTare(const Calibration& calibration, const std::vector<PreparedPass>& empties) {
  for (const PreparedPass& pass : empties) {
    const double tare_kg = (pass.rows.tare * calibration.state.mean).mean() / pass.rows.span.mean();
    if (!isTarePlausible(tare_kg, calibration))
      return fail(ErrorKind::Insufficient, "empty-pressures-implausible",
                  {{"log", pass.lift->name},
                   {"share", Amount{100.0 * tare_kg / calibration.rated_payload_kg, "%", 1}}},
                  {.pointer = pass.lift->pointer});
  }
  return {};
}

/// Without a linkage: the shape of balance per kg over the angle, from the loaded passes; masses known only
/// in sum are unknowns of their own, scaled to their sum afterwards.
Expected<void> fitSpanShape(Calibration& calibration, const LiftModel& model,
                            const std::vector<PreparedPass>& masses,
                            const std::vector<std::vector<PreparedPass>>& loads, const Job& job) {
  struct Member {
    const PreparedPass* pass;
    int group;  // -1: mass known
  };
  std::vector<Member> members;
  for (const PreparedPass& pass : masses) members.push_back({&pass, -1});
  for (std::size_t g = 0; g < loads.size(); ++g)
    for (const PreparedPass& pass : loads[g]) members.push_back({&pass, static_cast<int>(g)});
  const double middle_rad = model.windowMiddle_rad();
  Eigen::Index rows = 0;
  for (const Member& member : members) rows += member.pass->pass.size();
  constexpr int kDegreeOfShape = 2;
  const auto count = static_cast<Eigen::Index>(members.size());
  Eigen::MatrixXd design = Eigen::MatrixXd::Zero(rows, kDegreeOfShape + count);
  Eigen::VectorXd observed(rows);
  Eigen::Index used = 0;
  double spread_low = 1e9;
  double spread_high = -1e9;
  for (Eigen::Index k = 0; k < count; ++k) {
    const PreparedPass& pass = *members[k].pass;
    const Eigen::VectorXd tare = pass.rows.tare * calibration.state.mean;
    Eigen::VectorXd load = pass.rows.balance - tare;
    // The shape is that of an ideal lift: what a weighing will take off for tyres and friction is taken off
    // here too.
    const double about_kg = members[k].group < 0 ? pass.lift->mass->inKilograms()
                                                 : job.loads[members[k].group].net.inKilograms() /
                                                       static_cast<double>(loads[members[k].group].size());
    const double tare_kg = about_kg * tare.mean() / load.mean();
    if (!isTarePlausible(tare_kg, calibration))
      return fail(ErrorKind::Insufficient, "known-masses-do-not-show", {}, {.pointer = pass.lift->pointer});
    const double sag_rad = pass.pass.has_pitch ? 0.0 : kTyreSag_rad * about_kg / calibration.rated_payload_kg;
    const double direction = pass.pass.direction == Direction::Up ? 1.0 : -1.0;
    const double friction = job.unit.load_friction.value_or(LoadFriction{}).mean.inOnes();
    load -= (sag_rad * pass.rows.gravity_tan.cwiseProduct(tare + load) + direction * friction * load).eval();
    for (Eigen::Index i = 0; i < load.size(); ++i) {
      // rows.span holds only the inertia and pitch factor as long as log_span is empty.
      if (!(load(i) > 0.0)) continue;
      const double off_rad = pass.rows.angle_rad(i) - middle_rad;
      spread_low = std::min(spread_low, off_rad);
      spread_high = std::max(spread_high, off_rad);
      observed(used) = std::log(load(i) / pass.rows.span(i));
      double power = 1.0;
      for (int d = 0; d < kDegreeOfShape; ++d) design(used, d) = power *= off_rad;
      design(used, kDegreeOfShape + k) = 1.0;
      ++used;
    }
  }
  const bool flat = spread_high - spread_low < 3.0 * kDegree || used < kDegreeOfShape + count + 2;
  const int degree = flat ? 0 : kDegreeOfShape;
  const Eigen::MatrixXd part = design.topRows(used).rightCols(count + degree);
  const auto fit = statistics::fitRobust(part, observed.head(used), Eigen::VectorXd::Ones(used),
                                         statistics::RobustLoss::Huber);
  if (!fit) return fail(ErrorKind::Insufficient, "known-masses-do-not-show", {}, {.pointer = "/lifts"});
  calibration.log_span.assign(1, 0.0);
  for (int d = 0; d < degree; ++d) calibration.log_span.push_back(fit->coefficients(d));

  // The scale: known masses each give one, groups give one for their sum.
  double weight = 0.0;
  double sum = 0.0;
  std::vector<double> group_sums(loads.size(), 0.0);
  for (Eigen::Index k = 0; k < count; ++k) {
    const double log_level = fit->coefficients(degree + k);
    if (members[k].group < 0) {
      sum += log_level - std::log(members[k].pass->lift->mass->inKilograms());
      weight += 1.0;
    } else {
      group_sums[members[k].group] += std::exp(log_level);
    }
  }
  if (weight == 0.0)
    for (std::size_t g = 0; g < loads.size(); ++g) {
      sum += std::log(group_sums[g] / job.loads[g].net.inKilograms());
      weight += 1.0;
    }
  calibration.log_span[0] = sum / weight;
  return {};
}

/// Without a linkage: how a constant oil flow moves the boom over the angle, from the slowest empty log,
/// where bounce disturbs least: a cubic of angle over time, its speed as a quadratic of angle in the
/// logarithm.
std::vector<double> paceOverAngle(const std::vector<PreparedPass>& empties, double middle_rad) {
  const PreparedPass* slowest = nullptr;
  for (const PreparedPass& pass : empties) {
    const double duration_s = pass.pass.step_s * static_cast<double>(pass.pass.size());
    if (pass.pass.typed_points || duration_s < kLeastPaceTime_s) continue;
    if (slowest == nullptr || duration_s > slowest->pass.step_s * static_cast<double>(slowest->pass.size()))
      slowest = &pass;
  }
  if (slowest == nullptr) return {};
  const Eigen::Index n = slowest->pass.size();
  const Eigen::ArrayXd time = Eigen::ArrayXd::LinSpaced(n, -1.0, 1.0);
  Eigen::MatrixXd powers(n, 4);
  powers << Eigen::ArrayXd::Ones(n), time, time.square(), time.cube();
  const Eigen::VectorXd cubic = powers.householderQr().solve(slowest->pass.boom_angle_rad);
  const Eigen::ArrayXd angle = (powers * cubic).array() - middle_rad;
  const Eigen::ArrayXd speed = (cubic(1) + 2.0 * cubic(2) * time + 3.0 * cubic(3) * time.square()).abs();
  if (speed.minCoeff() < 0.3 * speed.maxCoeff()) return {};
  Eigen::MatrixXd design(n, 3);
  design << Eigen::ArrayXd::Ones(n), angle, angle.square();
  const Eigen::VectorXd log_pace = design.householderQr().solve(speed.log().matrix());
  return {0.0, log_pace(1), log_pace(2)};
}

/// What the job's doubt of the linkage does to a mass, cause by cause; none without such a doubt.
Expected<std::optional<std::vector<MassEffect>>> linkageDoubt(const Job& job,
                                                              const Calibration& calibration) {
  if (!calibration.linkage || !job.unit.linkage_u) return std::nullopt;
  const auto effects = massEffects(*calibration.linkage, calibration.payload_center,
                                   {calibration.window_low_rad, calibration.window_high_rad});
  if (!effects) {
    Error error = effects.error();
    error.place.pointer = "/unit/linkage";
    return std::unexpected(error);
  }
  std::vector<MassEffect> causes;
  for (const linkage::PerNumber& cause : *job.unit.linkage_u) {
    MassEffect& sum = causes.emplace_back();
    for (std::size_t i = 0; i < cause.size(); ++i) {
      sum.level += cause[i] * (*effects)[i].level;
      sum.slope += cause[i] * (*effects)[i].slope;
    }
  }
  return causes;
}

/// Level and slope of what the linkage's doubt does over the window, as they go together.
void setLinkagePrior(State& state, const std::vector<MassEffect>& causes) {
  double levels = 0.0;
  double slopes = 0.0;
  double both = 0.0;
  for (const MassEffect& cause : causes) {
    levels += cause.level * cause.level;
    slopes += cause.slope * cause.slope;
    both += cause.level * cause.slope;
  }
  const double level_u = std::sqrt(levels);
  const double slope_of_level = level_u > 0.0 ? both / level_u : 0.0;
  setPrior(state, kLinkageScale, 0.0, level_u, "budget-linkage");
  state.factor(kSpanTilt, state.factor.cols() - 1) = slope_of_level;
  setPrior(state, kSpanTilt, 0.0, std::sqrt(std::max(0.0, slopes - slope_of_level * slope_of_level)),
           "budget-linkage");
}

void setPriors(Calibration& calibration, const Job& job, double gravity_relative_u,
               const std::optional<std::vector<MassEffect>>& linkage_doubt) {
  State& state = calibration.state;
  const bool has_linkage = calibration.linkage.has_value();
  setPrior(state, kPressureSpan, 0.0, calibration.pressure_sensor.span_u.inOnes(), "budget-pressure-span");
  // The stated doubt is that of the largest deviation: most of it bow, some of it skew.
  const double linearity_u = calibration.pressure_sensor.linearity_u.inOnes();
  setPrior(state, kPressureBow, 0.0, 0.9 * linearity_u, "budget-pressure-linearity");
  setPrior(state, kPressureSkew, 0.0, 0.44 * linearity_u, "budget-pressure-linearity");
  LoadFriction friction;
  if (job.unit.load_friction) {
    friction = *job.unit.load_friction;
  } else if (has_linkage) {
    calibration.taken.push_back({"taken-load-friction",
                                 {{"mean", Amount{friction.mean.inPercent(), "%", 1}},
                                  {"u", Amount{friction.u.inPercent(), "%", 1}}}});
  }
  setPrior(state, kLoadFriction, friction.mean.inOnes(), friction.u.inOnes(), "budget-load-friction");
  double along_u_m = kHeapCentre_u_m;
  double across_u_m = kHeapCentre_u_m;
  if (job.attachment && job.attachment->payload_center_u) {
    along_u_m = job.attachment->payload_center_u->along.inMetres();
    across_u_m = job.attachment->payload_center_u->across.inMetres();
  } else if (!job.attachment || !job.attachment->payload_center) {
    along_u_m = across_u_m = kGuessedCentre_u_m;
  }
  setPrior(state, kHeapAlong, 0.0, along_u_m, "budget-payload-center");
  setPrior(state, kHeapAcross, 0.0, across_u_m, "budget-payload-center");
  setPrior(state, kTestMassAlong, 0.0, along_u_m, "budget-test-mass-center");
  setPrior(state, kTestMassAcross, 0.0, across_u_m, "budget-test-mass-center");
  setPrior(state, kAngleOffset, 0.0, calibration.boom_line.angle_u_rad, "budget-poses");
  setPrior(state, kAngleSlope, 0.0, 1.0, "budget-poses");
  setPrior(state, kAngleCurve, 0.0, kAngleCurve_u_rad, "budget-boom-sensor");
  setPrior(state, kTyreSag, kTyreSag_rad, kTyreSag_u_rad, "budget-tyres");
  if (linkage_doubt)
    setLinkagePrior(state, *linkage_doubt);
  else
    setPrior(state, kLinkageScale, 0.0, has_linkage ? kLinkageScale_u : 0.0, "budget-linkage");
  setPrior(state, kGravity, 0.0, has_linkage ? gravity_relative_u : 0.0, "budget-gravity");
  setPrior(state, kViscosityLaw, 0.0, 1.0, "budget-speed-and-oil");
  if (!has_linkage) {
    setPrior(state, kSpan, 0.0, 0.5, "budget-test-mass");
    setPrior(state, kSpanTilt, 0.0, 0.003, "budget-test-mass");
  } else if (!linkage_doubt) {
    setPrior(state, kSpanTilt, 0.0, kLinkageScale_u, "budget-linkage");
  }
}

/// Empty friction beside the share that load-proportional friction would make of the tare.
void learnFriction(Calibration& calibration, const LiftModel& model) {
  State& state = calibration.state;
  const Eigen::RowVectorXd spline = calibration.tare_basis.row(model.windowMiddle_rad());
  const double rising = spline.dot(state.mean.tail(spline.size()));
  Eigen::RowVectorXd row = Eigen::RowVectorXd::Zero(state.mean.size());
  row(kEmptyFriction) = 1.0;
  row(kLoadFriction) = -rising;
  observe(state, row, kConstantFrictionShare * rising, kConstantFrictionShare_u * rising,
          "budget-load-friction");
}

/// What one degree more at the boom-reference pose does to a rated payload in the middle of the window.
std::optional<double> referencePoseEffect(const Job& job, const Calibration& calibration,
                                          const LiftModel& model) {
  const auto reference = std::ranges::find_if(job.poses, [](const PoseReading& pose) {
    return pose.kind == PoseKind::BoomReference && pose.boom_angle.has_value();
  });
  if (reference == job.poses.end()) return std::nullopt;
  if (model.geometry() == nullptr) return 0.0;  // known masses give the span where they were read
  Job shifted;
  shifted.boom_sensor_unit = job.boom_sensor_unit;
  shifted.poses = job.poses;
  PoseReading& pose = shifted.poses[reference - job.poses.begin()];
  pose.boom_angle = *pose.boom_angle + Angle::fromDegrees(1.0);
  std::vector<Message> ignored;
  const Expected<SensorLine> line = fitBoomLine(shifted, ignored);
  if (!line) return std::nullopt;
  const double middle_rad = model.windowMiddle_rad();
  const SensorLine& now = calibration.boom_line;
  const double reading = now.reading_at + (middle_rad - now.angle_rad) / now.slope_rad_per_unit;
  const linkage::Derivatives lift = model.geometry()->liftCylinder(middle_rad);
  const auto centre = model.geometry()->bucketPoint(
      middle_rad, model.geometry()->geometry().tilt_cylinder_extended.inMetres(), calibration.payload_center);
  if (!centre) return std::nullopt;
  const double log_span_slope = centre->y.second / centre->y.first - lift.second / lift.first;
  return -calibration.rated_payload_kg * log_span_slope * (line->angle(reading) - middle_rad);
}

Expected<void> learnMass(Calibration& calibration, const std::string& name, const std::string& pointer,
                         double reference_kg, double reference_u_kg, const MassEstimate& estimate,
                         bool judged) {
  State& state = calibration.state;
  const double noise_u_kg = std::hypot(std::hypot(reference_u_kg, estimate.noise_u_kg),
                                       estimate.repeatability_u_kg, estimate.unsteady_u_kg);
  const double doubt_kg = std::hypot(standardUncertainty(state, estimate.jacobian), noise_u_kg);
  const double difference_kg = reference_kg - estimate.mass_kg;
  if (judged) {
    if (estimate.mass_kg < reference_kg / kAbsurdDisagreement ||
        estimate.mass_kg > reference_kg * kAbsurdDisagreement)
      return fail(ErrorKind::Insufficient, "known-mass-absurd",
                  {{"lift", name},
                   {"reference", Amount{reference_kg, "kg", 0}},
                   {"predicted", Amount{estimate.mass_kg, "kg", 0}}},
                  {.pointer = pointer});
    calibration.mass_checks.push_back({name, reference_kg, estimate.mass_kg, doubt_kg});
    if (std::abs(difference_kg) > kSuspectDisagreement * doubt_kg)
      calibration.warnings.push_back({"known-mass-disagrees",
                                      {{"lift", name},
                                       {"reference", Amount{reference_kg, "kg", 0}},
                                       {"predicted", Amount{estimate.mass_kg, "kg", 0}},
                                       {"doubt", Amount{2.0 * doubt_kg, "kg", 0}}}});
  }
  observe(state, estimate.jacobian, difference_kg + estimate.jacobian.dot(state.mean), noise_u_kg,
          "budget-test-mass");
  return {};
}

/// A job whose pressures are all within their sensors' range.
Expected<Calibration> calibrateUsable(const Job& job, std::vector<Message> warnings) {
  Calibration calibration;
  calibration.warnings = std::move(warnings);
  if (job.lifts.empty() && job.loads.empty())
    return fail(ErrorKind::Insufficient, "job-has-no-lifts", {}, {.pointer = "/lifts"});
  const bool has_empty =
      std::ranges::any_of(job.lifts, [](const Lift& lift) { return lift.kind == LiftKind::Empty; });
  const bool has_mass =
      std::ranges::any_of(job.lifts, [](const Lift& lift) { return lift.kind == LiftKind::TestMass; });
  if (!job.unit.linkage && !has_mass && job.loads.empty())
    return fail(ErrorKind::Insufficient, "no-way-to-weigh", {}, {.pointer = "/unit"});
  if (!has_empty) return fail(ErrorKind::Insufficient, "no-empty-pass", {}, {.pointer = "/lifts"});

  double gravity_relative_u = 0.0;
  if (auto taken = takeJob(job, calibration, gravity_relative_u); !taken)
    return std::unexpected(taken.error());
  const Expected<SensorLine> line = fitBoomLine(job, calibration.warnings);
  if (!line) return std::unexpected(line.error());
  calibration.boom_line = *line;
  Expected<LiftModel> model = LiftModel::make(calibration);
  if (!model) {
    Error error = model.error();
    if (!error.place.pointer.starts_with("/unit"))
      error.place.pointer = "/unit/linkage" + error.place.pointer;
    return std::unexpected(error);
  }
  if (auto checked = checkLinkage(job, *model, *line); !checked) return std::unexpected(checked.error());
  auto bucket = fitBucketSensor(job, *line, model->geometry(), calibration.warnings);
  if (!bucket) return std::unexpected(bucket.error());
  calibration.bucket_sensor = std::move(*bucket);
  if (auto window = chooseWindow(job, calibration); !window) return std::unexpected(window.error());

  // Passes, cut to the window and a little more; the tare's basis spans the same.
  const double low_rad = calibration.window_low_rad - kWindowMargin_rad;
  const double high_rad = calibration.window_high_rad + kWindowMargin_rad;
  calibration.tare_basis = {low_rad, high_rad, 1};
  std::vector<PreparedPass> empties;
  std::vector<PreparedPass> masses;
  std::vector<std::vector<PreparedPass>> loads(job.loads.size());
  for (const Lift& lift : job.lifts) {
    auto pass = prepare(calibration, *model, lift, calibration.warnings);
    if (!pass) return std::unexpected(pass.error());
    (lift.kind == LiftKind::Empty ? empties : masses).push_back(std::move(*pass));
  }
  for (std::size_t g = 0; g < job.loads.size(); ++g) {
    if (job.loads[g].lifts.empty())
      return fail(ErrorKind::Insufficient, "job-has-no-lifts", {},
                  {.pointer = job.loads[g].pointer + "/lifts"});
    for (const Lift& lift : job.loads[g].lifts) {
      auto pass = prepare(calibration, *model, lift, calibration.warnings);
      if (!pass) return std::unexpected(pass.error());
      loads[g].push_back(std::move(*pass));
    }
  }

  // What the empty passes have taught: paces, directions, temperatures, and the angles in which the tare is
  // known.
  bool rising_taught = false;
  double temperature_sum_K = 0.0;
  int temperatures = 0;
  double slowest = 1e9;
  double fastest = 0.0;
  Eigen::Index log_rows = 0;
  double taught_low_rad = high_rad;
  double taught_high_rad = low_rad;
  calibration.uses_pitch = true;
  for (const PreparedPass& pass : empties) {
    if (pass.pass.direction == Direction::Up) {
      rising_taught = true;
      taught_low_rad = std::min(taught_low_rad, pass.pass.boom_angle_rad.minCoeff());
      taught_high_rad = std::max(taught_high_rad, pass.pass.boom_angle_rad.maxCoeff());
    } else {
      calibration.lowering_taught = true;
    }
    if (!pass.pass.typed_points) log_rows += pass.pass.size();
    const double speed = pass.pass.boom_speed_rad_per_s.cwiseAbs().mean();
    slowest = std::min(slowest, speed);
    fastest = std::max(fastest, speed);
    calibration.uses_rod_pressure = calibration.uses_rod_pressure || pass.lift->readings.has_rod_pressure;
    calibration.uses_pitch = calibration.uses_pitch && pass.pass.has_pitch;
    if (const auto& temperature_K = pass.pass.oil_temperature_K) {
      if (temperatures == 0)
        calibration.lowest_temperature_K = calibration.highest_temperature_K = *temperature_K;
      calibration.lowest_temperature_K = std::min(calibration.lowest_temperature_K, *temperature_K);
      calibration.highest_temperature_K = std::max(calibration.highest_temperature_K, *temperature_K);
      temperature_sum_K += *temperature_K;
      ++temperatures;
    }
  }
  if (!rising_taught) return fail(ErrorKind::Insufficient, "no-rising-empty-pass", {}, {.pointer = "/lifts"});
  if (taught_low_rad > calibration.window_low_rad + 1.0 * kDegree ||
      taught_high_rad < calibration.window_high_rad - 1.0 * kDegree) {
    calibration.window_low_rad = std::max(calibration.window_low_rad, taught_low_rad);
    calibration.window_high_rad = std::min(calibration.window_high_rad, taught_high_rad);
    calibration.warnings.push_back({"window-not-covered",
                                    {{"low", Amount{calibration.window_low_rad / kDegree, "deg", 1}},
                                     {"high", Amount{calibration.window_high_rad / kDegree, "deg", 1}}}});
  }
  calibration.slow_speed_rad_per_s = slowest;
  calibration.fast_speed_rad_per_s = fastest;
  calibration.speed_taught = fastest > 1.2 * slowest && fastest - slowest > 1.0 * kDegree;
  if (temperatures > 0) calibration.taught_temperature_K = temperature_sum_K / temperatures;
  if (!calibration.speed_taught) calibration.warnings.push_back({"one-pace-taught", {}});
  if (temperatures == 0) calibration.warnings.push_back({"oil-temperature-unknown", {}});
  if (!calibration.uses_rod_pressure) calibration.taken.push_back({"taken-rod-pressure", {}});

  if (!calibration.linkage) calibration.log_pace = paceOverAngle(empties, model->windowMiddle_rad());
  const int intervals = log_rows > 0 ? std::clamp(static_cast<int>(log_rows / 25), 2, kTareIntervals) : 1;
  calibration.tare_basis = {low_rad, high_rad, intervals};
  auto again = [&](PreparedPass& pass) -> Expected<void> {
    Expected<ModelRows> rows = model->rows(pass.pass, 0.0);
    if (!rows) return std::unexpected(rows.error());
    pass.rows = std::move(*rows);
    return {};
  };
  for (PreparedPass& pass : empties)
    if (auto done = again(pass); !done) return std::unexpected(done.error());
  for (PreparedPass& pass : masses)
    if (auto done = again(pass); !done) return std::unexpected(done.error());
  for (auto& group : loads)
    for (PreparedPass& pass : group)
      if (auto done = again(pass); !done) return std::unexpected(done.error());

  if (auto fitted = fitTare(calibration, empties); !fitted) return std::unexpected(fitted.error());
  if (calibration.linkage)
    if (auto checked = checkTare(calibration, empties); !checked) return std::unexpected(checked.error());
  if (!calibration.linkage) {
    if (auto shaped = fitSpanShape(calibration, *model, masses, loads, job); !shaped)
      return std::unexpected(shaped.error());
    for (PreparedPass& pass : masses)
      if (auto done = again(pass); !done) return std::unexpected(done.error());
    for (auto& group : loads)
      for (PreparedPass& pass : group)
        if (auto done = again(pass); !done) return std::unexpected(done.error());
  }
  calibration.reference_pose_kg_per_deg = referencePoseEffect(job, calibration, *model);
  const auto linkage_doubt = linkageDoubt(job, calibration);
  if (!linkage_doubt) return std::unexpected(linkage_doubt.error());
  setPriors(calibration, job, gravity_relative_u, *linkage_doubt);
  if (calibration.lowering_taught) learnFriction(calibration, *model);

  // Known masses, each against what is known so far.
  bool judged = calibration.linkage.has_value();
  for (const PreparedPass& pass : masses) {
    const MassEstimate estimate = estimateMass(calibration, *model, pass.pass, pass.rows, true);
    const double reference_kg = pass.lift->mass->inKilograms();
    const double reference_u_kg =
        pass.lift->mass_u ? pass.lift->mass_u->inKilograms() : kDefaultMassU * reference_kg;
    summarise(calibration, pass, LiftKind::TestMass, estimate.residual_Pa, estimate.degrees_of_freedom + 1.0);
    if (auto learned = learnMass(calibration, pass.lift->name, pass.lift->pointer, reference_kg,
                                 reference_u_kg, estimate, judged);
        !learned)
      return std::unexpected(learned.error());
    judged = true;
  }
  for (std::size_t g = 0; g < loads.size(); ++g) {
    MassEstimate sum;
    sum.jacobian = Eigen::RowVectorXd::Zero(calibration.state.mean.size());
    for (const PreparedPass& pass : loads[g]) {
      const MassEstimate estimate = estimateMass(calibration, *model, pass.pass, pass.rows, false);
      sum.mass_kg += estimate.mass_kg;
      sum.jacobian += estimate.jacobian;
      sum.noise_u_kg = std::hypot(std::hypot(sum.noise_u_kg, estimate.noise_u_kg),
                                  estimate.repeatability_u_kg, estimate.unsteady_u_kg);
      summarise(calibration, pass, LiftKind::Load, estimate.residual_Pa, estimate.degrees_of_freedom + 1.0);
    }
    const double net_kg = job.loads[g].net.inKilograms();
    const double net_u_kg = job.loads[g].net_u ? job.loads[g].net_u->inKilograms() : kDefaultMassU * net_kg;
    const std::string& pointer = job.loads[g].pointer;
    if (auto learned = learnMass(calibration, pointer, pointer, net_kg, net_u_kg, sum, judged); !learned)
      return std::unexpected(learned.error());
    judged = true;
  }
  return calibration;
}

}  // namespace

Expected<Calibration> calibrate(const Job& job) {
  const Pressure range = job.unit.pressure_sensor.value_or(PressureSensor{}).range;
  Job usable = job;
  std::vector<Message> warnings;
  const auto judge = [&](Lift& lift) -> Expected<void> {
    leaveOutBeyondRange(lift.readings, range);
    Expected<void> judged = judgeRows(lift.readings, range, warnings);
    if (!judged) judged.error().place.pointer = lift.pointer;
    return judged;
  };
  for (Lift& lift : usable.lifts)
    if (auto judged = judge(lift); !judged) return std::unexpected(judged.error());
  for (LoadGroup& group : usable.loads)
    for (Lift& lift : group.lifts)
      if (auto judged = judge(lift); !judged) return std::unexpected(judged.error());
  return calibrateUsable(usable, std::move(warnings));
}

}  // namespace hingepin::calibration
