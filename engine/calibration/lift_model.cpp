// SPDX-License-Identifier: Apache-2.0
#include "engine/calibration/lift_model.h"

#include <Eigen/Cholesky>
#include <Eigen/QR>
#include <algorithm>
#include <cmath>

#include "engine/calibration/pass_noise.h"
#include "engine/units/degree.h"

namespace hingepin::calibration {
namespace {

// Where no linkage tells them, as shares of the boom length: radius of the loaded and the empty linkage's
// inertia about the boom pivot. They only scale a correction of some tenths of a percent.
constexpr double kPayloadRadiusShare = 1.15;
constexpr double kEmptyRadiusShare = 0.85;
// A boom that speeds up against the frame accelerates its load less, or more, as the frame gives way on its
// tyres.
constexpr double kFeltAcceleration = 0.5;
constexpr double kFeltAcceleration_u = 0.4;
constexpr double kUnknownCentreShare_per_m =
    0.035;  // relative change of the load arm per metre of centre, no linkage
constexpr double kDefaultTemperature_K = 323.15;
constexpr Eigen::Index kLeastRowsForSlope = 9;  // beside the levels
constexpr double kOutsideWindow_u =
    0.005;  // of the payload: how well the model holds beyond the window; a judgement

/// Terminal-based non-linearity: zero at both ends of the range, peak 1; symmetric, then antisymmetric about
/// mid-range.
double bow(double share_of_range) { return 4.0 * share_of_range * (1.0 - share_of_range); }
double skew(double share_of_range) {
  constexpr double kPeak = 0.09622504486493764;  // of t (1 - t) (1 - 2 t)
  return share_of_range * (1.0 - share_of_range) * (1.0 - 2.0 * share_of_range) / kPeak;
}

}  // namespace

Expected<LiftModel> LiftModel::make(const Calibration& calibration) {
  std::optional<linkage::Linkage> geometry;
  if (calibration.linkage) {
    Expected<linkage::Linkage> made = linkage::Linkage::make(*calibration.linkage);
    if (!made) return std::unexpected(made.error());
    geometry = *made;
  }
  const Expected<Oil> oil = oilOfGrade(calibration.oil_grade);
  if (!oil) {
    Error error = oil.error();
    error.place.pointer = "/unit/oil/grade";
    return std::unexpected(error);
  }
  return LiftModel(calibration, geometry, *oil);
}

LiftModel::Motion LiftModel::motionOf(const Pass& pass) const {
  const Eigen::Index n = pass.size();
  Motion motion{pass.boom_speed_rad_per_s, Eigen::VectorXd::Zero(n)};
  if (pass.typed_points || n < 2) return motion;
  // The oil flow is taken as constant: what the sensor shows beyond that is bounce, whose inertia is its own.
  const double middle_rad = windowMiddle_rad();
  const auto polynomial = [&](double off_rad, int derivative) {
    double sum = 0.0;
    for (std::size_t k = 1; k < calibration_->log_pace.size(); ++k) {
      const auto power = static_cast<double>(k);
      sum += derivative == 0 ? calibration_->log_pace[k] * std::pow(off_rad, power)
                             : calibration_->log_pace[k] * power * std::pow(off_rad, power - 1.0);
    }
    return sum;
  };
  // Speed per unit of flow, and its logarithmic slope over the angle.
  Eigen::VectorXd per_flow(n);
  Eigen::VectorXd slope(n);
  for (Eigen::Index i = 0; i < n; ++i) {
    if (geometry_) {
      const linkage::Derivatives lift = geometry_->liftCylinder(pass.boom_angle_rad(i));
      per_flow(i) = 1.0 / lift.first;
      slope(i) = -lift.second / lift.first;
    } else {
      per_flow(i) = std::exp(polynomial(pass.boom_angle_rad(i) - middle_rad, 0));
      slope(i) = polynomial(pass.boom_angle_rad(i) - middle_rad, 1);
    }
  }
  // Time is the integral of angle over speed, so the mean speed is that of the harmonic mean.
  const double flow = pass.boom_speed_rad_per_s(0) * per_flow.cwiseInverse().mean();
  motion.speed_rad_per_s = flow * per_flow;
  motion.acceleration_rad_per_s2 = motion.speed_rad_per_s.cwiseAbs2().cwiseProduct(slope);
  return motion;
}

Expected<ModelRows> LiftModel::rows(const Pass& pass, double tilt_offset_m) const {
  const Calibration& calibration = *calibration_;
  const Eigen::Index n = pass.size();
  const double gravity = calibration.gravity_m_per_s2;
  const double middle_rad = windowMiddle_rad();
  ModelRows rows;
  rows.angle_rad = pass.boom_angle_rad;
  const double taught_K =
      calibration.taught_temperature_K > 0.0 ? calibration.taught_temperature_K : kDefaultTemperature_K;
  const auto oil_temperature = Temperature::fromKelvin(pass.oil_temperature_K.value_or(taught_K));
  const Expected<RelativeEstimate> ratio =
      viscosityRatio(oil_, oil_temperature, Temperature::fromCelsius(40.0));
  if (!ratio) return std::unexpected(ratio.error());
  const Expected<RelativeEstimate> change =
      viscosityRatio(oil_, oil_temperature, Temperature::fromKelvin(taught_K));
  if (!change) return std::unexpected(change.error());
  rows.viscosity_ratio = ratio->value;
  rows.viscosity_change_u = change->relative_u;
  rows.tare.setZero(n, unknowns());
  for (Eigen::VectorXd* column :
       {&rows.balance, &rows.arm, &rows.span, &rows.span_along, &rows.span_across, &rows.log_span_slope,
        &rows.gravity_tan, &rows.unracked_tare, &rows.unsteady_span, &rows.unsteady_tare})
    column->setZero(n);

  const Motion motion = motionOf(pass);
  rows.speed_rad_per_s = motion.speed_rad_per_s;
  for (Eigen::Index i = 0; i < n; ++i) {
    const double angle_rad = pass.boom_angle_rad(i);
    const double speed = motion.speed_rad_per_s(i);
    const double unsteady =
        pass.typed_points ? 0.0 : pass.boom_acceleration_rad_per_s2(i) - motion.acceleration_rad_per_s2(i);
    const double acceleration = motion.acceleration_rad_per_s2(i) + kFeltAcceleration * unsteady;
    const double pitch_rad = pass.pitch_rad(i);
    const double force_N = calibration.cylinder_count * (pass.head_pressure_Pa(i) * calibration.head_area_m2 -
                                                         pass.rod_pressure_Pa(i) * calibration.rod_area_m2);
    rows.unsteady_tare(i) =
        kEmptyRadiusShare * calibration.boom_length_m * unsteady / (gravity * std::cos(angle_rad));
    double arm = 1.0;
    const double tilted_rad = angle_rad + pitch_rad;
    rows.gravity_tan(i) = std::tan(tilted_rad);
    // The empty linkage taken as one body turning about the pivot: good enough for corrections of a few
    // tenths of a percent.
    const double gravity_share =
        (std::cos(tilted_rad) + kEmptyRadiusShare * calibration.boom_length_m * acceleration / gravity) /
        std::cos(angle_rad);
    if (geometry_) {
      const linkage::Derivatives lift = geometry_->liftCylinder(angle_rad);
      arm = lift.first;
      const double racked_m = geometry_->geometry().tilt_cylinder_extended.inMetres();
      const double tilt_m = racked_m + tilt_offset_m;
      const auto span_of = [&](const linkage::PointMotion& point, bool with_inertia) {
        double span = gravity * (point.y.first * std::cos(pitch_rad) + point.x.first * std::sin(pitch_rad));
        if (with_inertia)
          span += (point.x.first * point.x.first + point.y.first * point.y.first) * acceleration +
                  (point.x.first * point.x.second + point.y.first * point.y.second) * speed * speed;
        return span;
      };
      const auto point_at = [&](double along_m, double across_m, double length_m) {
        return geometry_->bucketPoint(angle_rad, length_m,
                                      {calibration.payload_center.along + Length::fromMetres(along_m),
                                       calibration.payload_center.across + Length::fromMetres(across_m)});
      };
      const auto centre = point_at(0.0, 0.0, tilt_m);
      const auto along = point_at(1.0, 0.0, tilt_m);
      const auto across = point_at(0.0, 1.0, tilt_m);
      if (!centre) return std::unexpected(centre.error());
      if (!along) return std::unexpected(along.error());
      if (!across) return std::unexpected(across.error());
      rows.span(i) = span_of(*centre, true);
      const double still = span_of(*centre, false);
      rows.span_along(i) = span_of(*along, false) - still;
      rows.span_across(i) = span_of(*across, false) - still;
      rows.unsteady_span(i) =
          (centre->x.first * centre->x.first + centre->y.first * centre->y.first) * unsteady;
      rows.log_span_slope(i) = centre->y.second / centre->y.first - lift.second / lift.first;
      if (tilt_offset_m != 0.0 && calibration.attachment_mass_kg > 0.0) {
        const auto racked = point_at(0.0, 0.0, racked_m);
        if (!racked) return std::unexpected(racked.error());
        rows.unracked_tare(i) = calibration.attachment_mass_kg * (still - span_of(*racked, false));
      }
    } else {
      double power = 1.0;
      double log_span = 0.0;
      for (const double coefficient : calibration.log_span) {
        log_span += coefficient * power;
        power *= angle_rad - middle_rad;
      }
      const double share =
          (std::cos(tilted_rad) + kPayloadRadiusShare * calibration.boom_length_m * acceleration / gravity) /
          std::cos(angle_rad);
      rows.span(i) = std::exp(log_span) * share;
      rows.unsteady_span(i) = std::exp(log_span) * kPayloadRadiusShare * calibration.boom_length_m *
                              unsteady / (gravity * std::cos(angle_rad));
      rows.span_along(i) = kUnknownCentreShare_per_m * rows.span(i);
      rows.span_across(i) = rows.span_along(i);
    }
    rows.arm(i) = arm;
    rows.balance(i) = force_N * arm;
    auto tare = rows.tare.row(i);
    const double cylinder_speed = arm * speed;
    tare(kViscousSpeed) = arm * cylinder_speed * rows.viscosity_ratio;
    tare(kOrificeSpeed) = arm * cylinder_speed * std::abs(cylinder_speed);
    tare(kSpeedOverAngle) = tare(kViscousSpeed) * (angle_rad - middle_rad);
    if (pass.direction == Direction::Down) {
      tare(kEmptyFriction) = -2.0;
      tare(kEmptyFrictionSlope) = -2.0 * (angle_rad - middle_rad);
    }
    tare.segment(kUnknowns, calibration.tare_basis.size()) =
        gravity_share * calibration.tare_basis.row(angle_rad);
  }
  return rows;
}

MassEstimate estimateMass(const Calibration& calibration, const LiftModel& model, const Pass& pass,
                          const ModelRows& rows, bool is_test_mass) {
  const Eigen::Index n = pass.size();
  const Eigen::VectorXd& mean = calibration.state.mean;
  const Eigen::VectorXd tare = rows.tare * mean + rows.unracked_tare;
  const Eigen::VectorXd load = rows.balance - tare;

  // Everything below is in newtons of cylinder force, so that the arm does not weight the rows. To find the
  // noise, rows beyond the window have a mass of their own.
  Eigen::VectorXd inside(n);
  for (Eigen::Index i = 0; i < n; ++i)
    inside(i) =
        rows.angle_rad(i) >= calibration.window_low_rad && rows.angle_rad(i) <= calibration.window_high_rad;
  const auto within = static_cast<Eigen::Index>(inside.sum());
  const Eigen::VectorXd per_arm = rows.arm.cwiseInverse();
  const Eigen::VectorXd span_force = rows.span.cwiseProduct(per_arm);
  Eigen::MatrixXd levels(n, n - within >= 3 ? 2 : 1);
  levels.col(0) = levels.cols() == 2 ? Eigen::VectorXd(span_force.cwiseProduct(inside)) : span_force;
  if (levels.cols() == 2) levels.col(1) = span_force - levels.col(0);
  const Eigen::VectorXd load_force = load.cwiseProduct(per_arm);
  const Eigen::VectorXd along = (rows.angle_rad.array() - model.windowMiddle_rad()) / model.windowHalf_rad();
  // What is in doubt (angles, friction, a pass unlike the taught ones) leaves a slope over the travel and is
  // counted by itself: taken for noise, it would look like a long wander and be counted twice.
  const bool may_slope = !pass.typed_points && n > levels.cols() + kLeastRowsForSlope;
  Eigen::MatrixXd slope(n, may_slope ? 1 : 0);
  if (may_slope) slope.col(0) = span_force.cwiseProduct(along);
  // Typed points are far apart; what a log's samples have in common is taken from what a level and bounces
  // leave.
  Eigen::MatrixXd regressors(n, levels.cols() + slope.cols());
  regressors << levels, slope;
  const std::vector<PassNoise> noises =
      pass.typed_points ? std::vector<PassNoise>(1) : plausibleNoise(regressors, load_force, pass.step_s);
  const double first_mass_kg = levels.colPivHouseholderQr().solve(load_force)(0);
  MassEstimate estimate;

  // Columns: load, what a pascal does, then the derivative of (tare + mass * span) by each unknown.
  const double head_force = calibration.cylinder_count * calibration.head_area_m2;
  const double rod_share = calibration.rod_area_m2 / calibration.head_area_m2;
  const double range_Pa = calibration.pressure_sensor.range.inPascals();
  const double rod_part_Pa = rod_share * pass.rod_pressure_Pa.mean();
  const double direction = pass.direction == Direction::Up ? 1.0 : -1.0;
  const SensorLine& line = calibration.boom_line;
  Eigen::MatrixXd columns(n, 2 + mean.size());
  double mass_kg = first_mass_kg;
  for (int round = 0; round < 2; ++round) {
    columns.col(0) = load;
    columns.col(1) = rows.arm * head_force;
    columns.rightCols(mean.size()) = rows.tare;
    auto by = [&](int unknown) { return columns.col(2 + unknown); };
    const Eigen::VectorXd payload = mass_kg * rows.span;
    for (Eigen::Index i = 0; i < n; ++i) {
      const double arm = rows.arm(i);
      // The model's pressures, not the readings: a doubt that carried the readings' noise would weigh rows by
      // it.
      const double empty = (tare(i) / (arm * head_force) + rod_part_Pa) / range_Pa;
      const double loaded = empty + payload(i) / (arm * head_force * range_Pa);
      by(kPressureBow)(i) = arm * head_force * range_Pa * (bow(loaded) - bow(empty));
      by(kPressureSkew)(i) = arm * head_force * range_Pa * (skew(loaded) - skew(empty));
      const double angle = payload(i) * rows.log_span_slope(i);
      by(kAngleOffset)(i) = angle;
      by(kAngleCurve)(i) = angle;
      by(kAngleSlope)(i) =
          angle * line.slope_u_rad_per_unit / line.slope_rad_per_unit * (rows.angle_rad(i) - line.angle_rad);
      by(kTyreSag)(i) = pass.has_pitch ? 0.0
                                       : rows.gravity_tan(i) * (tare(i) + payload(i)) * mass_kg /
                                             calibration.rated_payload_kg;
      by(kViscosityLaw)(i) = rows.tare(i, kViscousSpeed) * mean(kViscousSpeed) * rows.viscosity_change_u;
      by(kSpanTilt)(i) = payload(i) * along(i);
    }
    by(kPressureSpan) = payload;
    by(kLoadFriction) = direction * payload;
    by(kLinkageScale) = payload;
    by(kGravity) = payload;
    by(kSpan) = payload;
    by(is_test_mass ? kTestMassAlong : kHeapAlong) = mass_kg * rows.span_along;
    by(is_test_mass ? kTestMassAcross : kHeapAcross) = mass_kg * rows.span_across;

    // No two passes are alike: an offset, a slope and a bend of this one, as in the empty passes.
    const Eigen::VectorXd whole = kPassRepeatability_u * (tare + payload).cwiseProduct(per_arm);
    // Rows outside the window count with a doubt of their own, so that they help to tell a bounce from a mass
    // without deciding the mass.
    Eigen::MatrixXd own(n, 5);
    own << whole, whole.cwiseProduct(along),
        whole.cwiseProduct((along.array().square() - 1.0 / 3.0).matrix()),
        kOutsideWindow_u * payload.cwiseProduct(per_arm).cwiseProduct(Eigen::VectorXd::Ones(n) - inside),
        kFeltAcceleration_u *
            (mass_kg * rows.unsteady_span + tare.cwiseProduct(rows.unsteady_tare)).cwiseProduct(per_arm);

    // Rows are weighed by their noise and by all that is in doubt (best linear unbiased estimate, Aitken
    // 1936), so that an angle at which the load's centre or the viscosity matters less counts for more. Then
    // the average over the models of the noise, and their spread.
    const Eigen::MatrixXd forces = per_arm.asDiagonal() * columns;
    Eigen::RowVectorXd average = Eigen::RowVectorXd::Zero(columns.cols() + own.cols());
    double freedom = 0.0;
    double variance = 0.0;
    double squared_mass = 0.0;
    for (const PassNoise& noise : noises) {
      const Eigen::MatrixXd bounces = bounceColumns(noise.bounces, n, pass.step_s);
      const Eigen::Index count = 1 + bounces.cols();
      const Eigen::Index known = slope.cols() + count;
      Eigen::MatrixXd all(n, known + columns.cols() + own.cols());
      all << slope, span_force, bounces, forces, own;
      all = whitened(noise, all, pass.step_s);
      const auto design = all.middleCols(slope.cols(), count);
      const Eigen::VectorXd left =
          all.col(known) - all.leftCols(known) * all.leftCols(known).householderQr().solve(all.col(known));
      const auto own_freedom = static_cast<double>(std::max<Eigen::Index>(1, n - known));
      const double noise_variance = std::max(left.squaredNorm() / own_freedom,
                                             1e-12 * load_force.squaredNorm() / static_cast<double>(n));
      const Eigen::MatrixXd doubts = all.middleCols(known + 2, mean.size()) * calibration.state.factor;
      Eigen::MatrixXd covariance =
          doubts * doubts.transpose() + all.rightCols(own.cols()) * all.rightCols(own.cols()).transpose();
      covariance.diagonal().array() += noise_variance;
      const Eigen::LLT<Eigen::MatrixXd> root(covariance);
      const Eigen::MatrixXd weighted = root.solve(design);
      const Eigen::MatrixXd normal = design.transpose() * weighted;
      const Eigen::VectorXd weights =
          weighted * normal.ldlt().solve(Eigen::VectorXd(Eigen::VectorXd::Unit(count, 0)));
      const Eigen::RowVectorXd solution = weights.transpose() * all.rightCols(columns.cols() + own.cols());
      average += noise.weight * solution;
      variance += noise.weight * noise_variance * weights.squaredNorm();
      squared_mass += noise.weight * solution(0) * solution(0);
      // A wander leaves fewer independent rows: about one a memory for its share of the variance.
      const double independent =
          own_freedom / (1.0 + noise.wander / (1.0 + noise.wander) * 2.0 * noise.memory_s / pass.step_s);
      freedom += noise.weight * std::max(1.0, independent);
    }
    estimate.noise_u_kg = std::sqrt(variance + std::max(0.0, squared_mass - average(0) * average(0)));
    estimate.degrees_of_freedom = freedom;
    estimate.jacobian = -average.segment(2, mean.size());
    estimate.repeatability_u_kg = average.segment(2 + mean.size(), own.cols() - 1).norm();
    estimate.unsteady_u_kg = std::abs(average(average.size() - 1));
    estimate.kg_per_pascal = average(1);
    estimate.mass_kg = average(0);
    // What the state already knows of the unknowns that are not in the tare (their base value is 0).
    for (int unknown = kEmptyFrictionSlope + 1; unknown < kUnknowns; ++unknown)
      estimate.mass_kg += estimate.jacobian(unknown) * mean(unknown);
    mass_kg = estimate.mass_kg;
  }
  estimate.rows = static_cast<int>(within);
  estimate.bounces = static_cast<int>(noises.front().bounces.size());
  const double level_kg = span_force.dot(load_force) / span_force.squaredNorm();
  estimate.swing_kg = (load_force - level_kg * span_force).norm() / span_force.norm();
  {
    const Eigen::MatrixXd bounces = bounceColumns(noises.front().bounces, n, pass.step_s);
    Eigen::MatrixXd seen(n, levels.cols() + bounces.cols());
    seen << levels, bounces;
    const Eigen::VectorXd left = load_force - seen * seen.colPivHouseholderQr().solve(load_force);
    estimate.residual_Pa = std::sqrt(left.squaredNorm() / static_cast<double>(n)) / head_force;
  }
  if (pass.typed_points && n < 3) {
    // One or two typed points show no scatter of their own: a reading is good to about half a bar.
    constexpr double kTypedReadingU_Pa = 0.5e5;
    estimate.noise_u_kg =
        std::max(estimate.noise_u_kg, std::abs(estimate.kg_per_pascal) * kTypedReadingU_Pa / std::sqrt(n));
    estimate.degrees_of_freedom = 50.0;
  }
  return estimate;
}

RackCheck checkRacked(const Calibration& calibration, const LiftModel& model, const Pass& pass) {
  RackCheck check;
  if (!calibration.bucket_sensor || pass.bucket_reading.size() == 0) return check;
  const BucketSensor& sensor = *calibration.bucket_sensor;
  if (sensor.bellcrank_line && model.geometry() != nullptr) {
    const linkage::Linkage& geometry = *model.geometry();
    const double racked_m = geometry.geometry().tilt_cylinder_extended.inMetres();
    double offset_m = 0.0;
    double offset_rad = 0.0;
    Eigen::Index counted = 0;
    for (Eigen::Index i = 0; i < pass.size(); ++i) {
      const double boom_rad = pass.boom_angle_rad(i);
      const double bellcrank_rad = sensor.bellcrank_line->angle(pass.bucket_reading(i));
      const double length_m = geometry.tiltLengthOfBellcrank(boom_rad, bellcrank_rad);
      const auto racked = geometry.tilt(boom_rad, racked_m);
      if (!racked) continue;
      offset_m += length_m - racked_m;
      offset_rad += (length_m - racked_m) * racked->bucket_by_tilt.first;
      ++counted;
    }
    if (counted == 0) return check;
    check.tilt_offset_m = offset_m / static_cast<double>(counted);
    check.bucket_offset_rad = offset_rad / static_cast<double>(counted);
    check.known = true;
    return check;
  }
  if (!sensor.dumped_less_racked) return check;
  // Without a linkage: the full stroke turns a bucket by about 95 deg (common practice, no source).
  constexpr double kFullStroke_rad = 95.0 * kDegree;
  const std::vector<double>& at = sensor.racked_boom_angle_rad;
  double share = 0.0;
  for (Eigen::Index i = 0; i < pass.size(); ++i) {
    const double boom_rad = pass.boom_angle_rad(i);
    double racked = sensor.racked_reading.front();
    for (std::size_t k = 1; k < at.size(); ++k) {
      const double between = std::clamp((boom_rad - at[k - 1]) / (at[k] - at[k - 1]), 0.0, 1.0);
      if (boom_rad >= at[k - 1] || k == 1)
        racked = sensor.racked_reading[k - 1] +
                 between * (sensor.racked_reading[k] - sensor.racked_reading[k - 1]);
    }
    share += (pass.bucket_reading(i) - racked) / *sensor.dumped_less_racked;
  }
  check.bucket_offset_rad = -kFullStroke_rad * share / static_cast<double>(pass.size());
  check.known = true;
  return check;
}

}  // namespace hingepin::calibration
