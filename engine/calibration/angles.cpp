// SPDX-License-Identifier: Apache-2.0
#include "engine/calibration/angles.h"

#include <algorithm>
#include <cmath>

#include "engine/statistics/distributions.h"
#include "engine/statistics/least_squares.h"
#include "engine/units/degree.h"

namespace hingepin::calibration {
namespace {

constexpr double kDefaultAngleU_rad = 0.5 * kDegree;
constexpr double kLeastSpread_rad = 20.0 * kDegree;

std::string poseName(const PoseReading& pose) { return std::string(nameIn(kPoseNames, pose.kind)); }

std::string pointerOf(std::size_t pose) { return "/poses/" + std::to_string(pose); }

/// Weighted straight line with known uncertainties, offset taken at the weighted mean reading.
Expected<SensorLine> fitLine(const std::vector<double>& readings, const std::vector<double>& angles_rad,
                             const std::vector<double>& angle_u_rad) {
  const auto n = static_cast<Eigen::Index>(readings.size());
  double weight_sum = 0.0;
  double mean = 0.0;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const double weight = 1.0 / (angle_u_rad[i] * angle_u_rad[i]);
    weight_sum += weight;
    mean += weight * readings[i];
  }
  mean /= weight_sum;
  Eigen::MatrixXd design(n, 2);
  for (Eigen::Index i = 0; i < n; ++i) design.row(i) << 1.0, readings[i] - mean;
  const auto fit = statistics::fitWeighted(design, Eigen::Map<const Eigen::VectorXd>(angles_rad.data(), n),
                                           Eigen::Map<const Eigen::VectorXd>(angle_u_rad.data(), n),
                                           statistics::NoiseScale::Known);
  if (!fit) return std::unexpected(fit.error());
  return SensorLine{.reading_at = mean,
                    .angle_rad = fit->coefficients(0),
                    .slope_rad_per_unit = fit->coefficients(1),
                    .angle_u_rad = std::sqrt(fit->covariance(0, 0)),
                    .slope_u_rad_per_unit = std::sqrt(fit->covariance(1, 1)),
                    .chi_squared = fit->chi_squared,
                    .degrees_of_freedom = fit->degrees_of_freedom};
}

/// The boom's share of a pose's place in the travel: lowest 0, reference 1, highest 2; bucket poses have
/// none.
int orderOf(PoseKind kind) {
  switch (kind) {
    case PoseKind::BoomLowest:
      return 0;
    case PoseKind::BoomReference:
      return 1;
    case PoseKind::BoomHighest:
      return 2;
    default:
      return -1;
  }
}

Expected<void> checkOrder(const Job& job) {
  for (std::size_t i = 0; i < job.poses.size(); ++i) {
    for (std::size_t j = 0; j < job.poses.size(); ++j) {
      const PoseReading& lower = job.poses[i];
      const PoseReading& higher = job.poses[j];
      if (orderOf(lower.kind) < 0 || orderOf(higher.kind) <= orderOf(lower.kind)) continue;
      if (lower.boom_angle && higher.boom_angle && *lower.boom_angle >= *higher.boom_angle)
        return fail(ErrorKind::InvalidInput, "poses-out-of-order",
                    {{"lower", poseName(lower)},
                     {"lower_angle", Amount{lower.boom_angle->inDegrees(), "deg", 1}},
                     {"higher", poseName(higher)},
                     {"higher_angle", Amount{higher.boom_angle->inDegrees(), "deg", 1}}},
                    {.pointer = pointerOf(j) + "/boom_angle"});
    }
  }
  return {};
}

/// The sense in which the reading changes as the boom rises must be one from pose to pose.
Expected<void> checkSense(const Job& job, const SensorLine& line) {
  for (std::size_t i = 0; i < job.poses.size(); ++i) {
    for (std::size_t j = 0; j < job.poses.size(); ++j) {
      const PoseReading& lower = job.poses[i];
      const PoseReading& higher = job.poses[j];
      if (orderOf(lower.kind) < 0 || orderOf(higher.kind) <= orderOf(lower.kind)) continue;
      if ((higher.boom_sensor - lower.boom_sensor) * line.slope_rad_per_unit < 0.0)
        return fail(ErrorKind::InvalidInput, "pose-readings-contradict",
                    {{"lower", poseName(lower)}, {"higher", poseName(higher)}},
                    {.pointer = pointerOf(j) + "/boom_sensor"});
    }
  }
  return {};
}

void warnOfRepeats(const Job& job, const SensorLine& line, std::vector<Message>& warnings) {
  for (std::size_t i = 0; i < job.poses.size(); ++i) {
    for (std::size_t j = i + 1; j < job.poses.size(); ++j) {
      if (job.poses[i].kind != job.poses[j].kind || orderOf(job.poses[i].kind) < 0) continue;
      const double difference_rad =
          std::abs(line.slope_rad_per_unit * (job.poses[i].boom_sensor - job.poses[j].boom_sensor));
      if (difference_rad > 1.0 * kDegree)
        warnings.push_back(
            {"pose-read-twice-differently",
             {{"pose", poseName(job.poses[i])}, {"difference", Amount{difference_rad / kDegree, "deg", 1}}}});
    }
  }
}

}  // namespace

Expected<SensorLine> fitBoomLine(const Job& job, std::vector<Message>& warnings) {
  std::vector<double> readings;
  std::vector<double> angles_rad;
  std::vector<double> angle_u_rad;
  for (const PoseReading& pose : job.poses) {
    if (!pose.boom_angle) continue;
    readings.push_back(pose.boom_sensor);
    angles_rad.push_back(pose.boom_angle->inRadians());
    angle_u_rad.push_back(pose.boom_angle_u ? pose.boom_angle_u->inRadians() : kDefaultAngleU_rad);
  }
  if (readings.size() < 2)
    return fail(ErrorKind::Insufficient, "poses-too-few",
                {{"count", Amount{double(readings.size()), "1", 0}}}, {.pointer = "/poses"});
  const auto [lowest, highest] = std::ranges::minmax(angles_rad);
  if (highest - lowest < kLeastSpread_rad * (1.0 - 1e-9))
    return fail(ErrorKind::Insufficient, "poses-too-close",
                {{"spread", Amount{(highest - lowest) / kDegree, "deg", 1}},
                 {"needed", Amount{kLeastSpread_rad / kDegree, "deg", 0}}},
                {.pointer = "/poses"});
  const auto [least, most] = std::ranges::minmax(readings);
  const double magnitude = std::max({std::abs(least), std::abs(most), 1e-12});
  if (most - least < 1e-6 * magnitude)
    return fail(ErrorKind::Insufficient, "poses-share-one-reading", {}, {.pointer = "/poses"});
  if (auto order = checkOrder(job); !order) return std::unexpected(order.error());

  const Expected<SensorLine> line = fitLine(readings, angles_rad, angle_u_rad);
  if (!line) return line;
  if (auto sense = checkSense(job, *line); !sense) return std::unexpected(sense.error());

  if (line->degrees_of_freedom > 0 &&
      line->chi_squared > statistics::chiSquaredQuantile(0.99, line->degrees_of_freedom)) {
    double worst_rad = 0.0;
    for (std::size_t i = 0; i < readings.size(); ++i)
      if (const double off = angles_rad[i] - line->angle(readings[i]); std::abs(off) > std::abs(worst_rad))
        worst_rad = off;
    warnings.push_back({"poses-off-the-line", {{"off", Amount{std::abs(worst_rad) / kDegree, "deg", 1}}}});
  }
  if (job.boom_sensor_unit == SensorUnit::Radian) {
    if (std::abs(std::abs(line->slope_rad_per_unit) - 1.0) > 0.2)
      warnings.push_back(
          {"boom-sensor-span-implausible",
           {{"slope", Amount{line->slope_rad_per_unit, "1", 3}}, {"unit", std::string("rad/rad")}}});
  } else if (job.boom_sensor_unit == SensorUnit::Volt &&
             (std::abs(line->slope_rad_per_unit) > 120 * kDegree || most - least > 12.0 || least < -0.5)) {
    warnings.push_back(
        {"boom-sensor-span-implausible",
         {{"slope", Amount{line->slope_rad_per_unit / kDegree, "1", 1}}, {"unit", std::string("deg/V")}}});
  }
  if (line->slope_rad_per_unit < 0.0)
    warnings.push_back(
        {"boom-sensor-reversed", {{"unit", std::string(nameIn(kSensorUnitNames, job.boom_sensor_unit))}}});
  warnOfRepeats(job, *line, warnings);
  return line;
}

Expected<std::optional<BucketSensor>> fitBucketSensor(const Job& job, const SensorLine& boom_line,
                                                      const linkage::Linkage* geometry,
                                                      std::vector<Message>& warnings) {
  BucketSensor sensor;
  std::vector<double> readings;
  std::vector<double> bellcrank_rad;
  std::optional<double> racked;
  std::optional<double> dumped;
  std::vector<std::pair<double, double>> racked_over_boom;
  for (std::size_t i = 0; i < job.poses.size(); ++i) {
    const PoseReading& pose = job.poses[i];
    if (!pose.bucket_sensor) continue;
    const double boom_rad = boom_line.angle(pose.boom_sensor);
    const bool is_dumped = pose.kind == PoseKind::BucketDumped;
    if (is_dumped) dumped = pose.bucket_sensor;
    if (pose.kind == PoseKind::BucketRacked) racked = pose.bucket_sensor;
    if (!is_dumped) racked_over_boom.emplace_back(boom_rad, *pose.bucket_sensor);
    if (geometry == nullptr) continue;
    const double tilt_m = (is_dumped ? geometry->geometry().tilt_cylinder_retracted
                                     : geometry->geometry().tilt_cylinder_extended)
                              .inMetres();
    const auto state = geometry->tilt(boom_rad, tilt_m);
    if (!state) {
      // A pose slightly past where the loop closes must not stop the job: the other poses still give the
      // line.
      warnings.push_back({"pose-outside-linkage", {{"pose", poseName(pose)}}});
      continue;
    }
    readings.push_back(*pose.bucket_sensor);
    bellcrank_rad.push_back(state->bellcrank_by_boom.value);
  }
  if (racked_over_boom.empty()) return std::nullopt;

  std::ranges::sort(racked_over_boom);
  for (const auto& [boom_rad, reading] : racked_over_boom) {
    if (!sensor.racked_boom_angle_rad.empty() &&
        boom_rad - sensor.racked_boom_angle_rad.back() < 1.0 * kDegree) {
      sensor.racked_reading.back() = 0.5 * (sensor.racked_reading.back() + reading);
      continue;
    }
    sensor.racked_boom_angle_rad.push_back(boom_rad);
    sensor.racked_reading.push_back(reading);
  }
  if (!racked && !sensor.racked_reading.empty())
    racked = sensor.racked_reading[sensor.racked_reading.size() / 2];
  if (dumped && racked) sensor.dumped_less_racked = *dumped - *racked;
  if (sensor.dumped_less_racked && std::abs(*sensor.dumped_less_racked) < 1e-9) {
    return fail(ErrorKind::Insufficient, "bucket-poses-share-one-reading", {}, {.pointer = "/poses"});
  }

  if (geometry != nullptr && readings.size() >= 2) {
    const auto [low, high] = std::ranges::minmax(bellcrank_rad);
    const auto [least, most] = std::ranges::minmax(readings);
    if (high - low > 5.0 * kDegree && most > least) {
      const std::vector<double> u(readings.size(), kDefaultAngleU_rad);
      const Expected<SensorLine> line = fitLine(readings, bellcrank_rad, u);
      if (!line) return std::unexpected(line.error());
      sensor.bellcrank_line = *line;
      double worst_rad = 0.0;
      for (std::size_t i = 0; i < readings.size(); ++i)
        worst_rad = std::max(worst_rad, std::abs(bellcrank_rad[i] - line->angle(readings[i])));
      if (worst_rad > 4.0 * kDegree)
        warnings.push_back(
            {"bucket-sensor-off-the-linkage", {{"off", Amount{worst_rad / kDegree, "deg", 1}}}});
    }
  }
  return sensor;
}

}  // namespace hingepin::calibration
