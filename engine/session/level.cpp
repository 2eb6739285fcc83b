// SPDX-License-Identifier: Apache-2.0
#include "engine/session/level.h"

#include <algorithm>
#include <cmath>
#include <vector>

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

/// The standard uncertainty of a mean of readings that are alike to their neighbours, by means of blocks:
/// their scatter counts, not that of single samples.
double uncertaintyOfMean(const std::vector<double>& values) {
  constexpr std::size_t kBlocks = 10;
  const std::size_t length = values.size() / kBlocks;
  std::vector<double> means;
  for (std::size_t block = 0; block < kBlocks; ++block) {
    double sum = 0.0;
    for (std::size_t index = 0; index < length; ++index) sum += values[block * length + index];
    means.push_back(sum / static_cast<double>(length));
  }
  double mean = 0.0;
  for (const double each : means) mean += each / kBlocks;
  double squares = 0.0;
  for (const double each : means) squares += (each - mean) * (each - mean);
  return std::sqrt(squares / (kBlocks - 1) / kBlocks);
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
  const double size = std::sqrt(mean.x * mean.x + mean.y * mean.y + mean.z * mean.z);
  if (std::abs(size - kGravity) > limits.gravity_within * kGravity)
    return fail(ErrorKind::Insufficient, "level-not-gravity");
  double squares = 0.0;
  std::vector<double> slopes;
  for (const AccelerationSample& each : samples) {
    const double dx = each.x_m_per_s2 - mean.x;
    const double dy = each.y_m_per_s2 - mean.y;
    const double dz = each.z_m_per_s2 - mean.z;
    squares += dx * dx + dy * dy + dz * dz;
    slopes.push_back(slopeOf({each.x_m_per_s2, each.y_m_per_s2, each.z_m_per_s2}));
  }
  if (std::sqrt(squares / static_cast<double>(samples.size())) > limits.most_spread) {
    return fail(ErrorKind::Insufficient, "level-moved");
  }
  const std::size_t third = samples.size() / 3;
  const Mean early = meanOf(samples.first(third));
  const Mean late = meanOf(samples.last(third));
  const double drift = std::max({std::abs(slopeOf(early) - slopeOf(late)),
                                 std::abs(std::atan2(early.x, early.z) - std::atan2(late.x, late.z))});
  if (drift > limits.most_drift_rad) return fail(ErrorKind::Insufficient, "level-moved");
  return LevelReading{slopeOf(mean), uncertaintyOfMean(slopes), static_cast<int>(samples.size())};
}

Expected<LevelResult> combineLevels(const LevelReading& first, const LevelReading& turned,
                                    const LevelLimits& limits) {
  const double slope = (first.slope_rad - turned.slope_rad) / 2.0;
  const double zero = (first.slope_rad + turned.slope_rad) / 2.0;
  const bool alike = std::abs(first.slope_rad - turned.slope_rad) < limits.least_change_rad;
  if (std::abs(zero) > limits.most_zero_rad || (alike && std::abs(zero) > limits.most_zero_rad / 2.0)) {
    return fail(ErrorKind::Insufficient, "level-not-turned");
  }
  const double u = std::sqrt(first.slope_u_rad * first.slope_u_rad + turned.slope_u_rad * turned.slope_u_rad +
                             2.0 * limits.placing_u_rad * limits.placing_u_rad) /
                   2.0;
  return LevelResult{slope, u, zero};
}

}  // namespace hingepin::session
