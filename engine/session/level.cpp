// SPDX-License-Identifier: Apache-2.0
#include "engine/session/level.h"

#include <Eigen/Core>
#include <algorithm>
#include <cmath>

#include "engine/statistics/correlation.h"
#include "engine/units/degree.h"

namespace hingepin::session {
namespace {

constexpr double kGravity = 9.80665;

struct Mean {
  double x = 0.0;
  double y = 0.0;
  double z = 0.0;
};

Mean meanOf(std::span<const AccelerationSample> samples) {
  Mean mean;
  for (const AccelerationSample& each : samples) {
    mean.x += each.x_m_per_s2;
    mean.y += each.y_m_per_s2;
    mean.z += each.z_m_per_s2;
  }
  const auto count = static_cast<double>(samples.size());
  return {mean.x / count, mean.y / count, mean.z / count};
}

double slopeOf(const Mean& mean) { return std::atan2(mean.y, std::hypot(mean.x, mean.z)); }
double crossOf(const Mean& mean) { return std::atan2(mean.x, std::hypot(mean.y, mean.z)); }

/// Standard uncertainty of the mean of a series whose values are alike to their neighbours.
double uncertaintyOfMean(const Eigen::VectorXd& values, double effective) {
  const double squares = (values.array() - values.mean()).square().sum();
  const double variance = squares / static_cast<double>(values.size() - 1);
  return std::sqrt(variance / effective);
}

/// A sensor with coarse steps may say the same number all the time; what is left then is rounding.
double effectiveSize(const Eigen::VectorXd& values) {
  constexpr double kRounding_rad = 1e-9;
  if (values.maxCoeff() - values.minCoeff() < kRounding_rad) return static_cast<double>(values.size());
  return statistics::effectiveSampleSize(values);
}

}  // namespace

Expected<LevelReading> readLevel(std::span<const AccelerationSample> samples, const LevelLimits& limits) {
  constexpr std::size_t kFewest = 20;
  const bool finite = std::ranges::all_of(samples, [](const AccelerationSample& each) {
    return std::isfinite(each.time_s) && std::isfinite(each.x_m_per_s2) && std::isfinite(each.y_m_per_s2) &&
           std::isfinite(each.z_m_per_s2);
  });
  if (samples.size() < kFewest || !finite ||
      samples.back().time_s - samples.front().time_s < limits.least_s) {
    return fail(ErrorKind::Insufficient, "level-too-few");
  }
  const Mean mean = meanOf(samples);
  const double size = std::hypot(mean.x, mean.y, mean.z);
  if (std::abs(size - kGravity) > limits.gravity_within * kGravity)
    return fail(ErrorKind::Insufficient, "level-not-gravity");
  double squares = 0.0;
  const auto count = static_cast<Eigen::Index>(samples.size());
  Eigen::VectorXd slopes(count);
  Eigen::VectorXd crosses(count);
  for (Eigen::Index index = 0; index < count; ++index) {
    const AccelerationSample& each = samples[static_cast<std::size_t>(index)];
    const Mean at{each.x_m_per_s2, each.y_m_per_s2, each.z_m_per_s2};
    squares += (at.x - mean.x) * (at.x - mean.x) + (at.y - mean.y) * (at.y - mean.y) +
               (at.z - mean.z) * (at.z - mean.z);
    slopes(index) = slopeOf(at);
    crosses(index) = crossOf(at);
  }
  if (std::sqrt(squares / static_cast<double>(count)) > limits.most_spread) {
    return fail(ErrorKind::Insufficient, "level-moved");
  }
  const std::size_t third = samples.size() / 3;
  const Mean early = meanOf(samples.first(third));
  const Mean late = meanOf(samples.last(third));
  const double drift =
      std::max(std::abs(slopeOf(early) - slopeOf(late)), std::abs(crossOf(early) - crossOf(late)));
  if (drift > limits.most_drift_rad) return fail(ErrorKind::Insufficient, "level-moved");
  const double effective = effectiveSize(slopes);
  // Fewer independent values than this say nothing about their own scatter.
  constexpr double kFewestEffective = 4.0;
  if (!(effective >= kFewestEffective)) return fail(ErrorKind::Insufficient, "level-too-few");
  return LevelReading{.slope_rad = slopeOf(mean),
                      .slope_u_rad = uncertaintyOfMean(slopes, effective),
                      .cross_rad = crossOf(mean),
                      .cross_u_rad = uncertaintyOfMean(crosses, effectiveSize(crosses)),
                      .samples = static_cast<int>(count),
                      .effective_samples = effective};
}

Expected<LevelResult> combineLevels(const LevelReading& first, const LevelReading& turned,
                                    const LevelLimits& limits, std::optional<double> known_zero_rad) {
  const double slope = (first.slope_rad - turned.slope_rad) / 2.0;
  const double cross = (first.cross_rad - turned.cross_rad) / 2.0;
  const double zero = (first.slope_rad + turned.slope_rad) / 2.0;
  const bool alike = std::abs(first.slope_rad - turned.slope_rad) < limits.least_change_rad &&
                     std::abs(first.cross_rad - turned.cross_rad) < limits.least_change_rad;
  const bool known_otherwise =
      known_zero_rad && std::abs(zero - *known_zero_rad) > limits.most_zero_change_rad;
  if ((alike && std::abs(zero) > limits.most_zero_rad / 2.0) || known_otherwise)
    return fail(ErrorKind::Insufficient, "level-not-turned");
  if (std::abs(zero) > limits.most_zero_rad) {
    return fail(ErrorKind::Insufficient, "level-zero-implausible",
                {{"zero", Amount{zero / kDegree, "deg", 1}},
                 {"most", Amount{limits.most_zero_rad / kDegree, "deg", 0}}});
  }
  const double scatter = 0.5 * std::hypot(first.slope_u_rad, turned.slope_u_rad);
  const double placing = limits.placing_u_rad / std::sqrt(2.0);
  // A turn that misses by a: the second reading is -(slope cos a + cross sin a).
  const double turn = std::hypot(0.5 * std::abs(cross) * limits.turn_u_rad,
                                 0.25 * std::abs(slope) * limits.turn_u_rad * limits.turn_u_rad);
  const double axes = std::hypot(cross * limits.cross_axis_u, slope * limits.gain_u);
  return LevelResult{.slope_rad = slope,
                     .slope_u_rad = std::hypot(std::hypot(scatter, placing), std::hypot(turn, axes)),
                     .zero_rad = zero};
}

}  // namespace hingepin::session
