// SPDX-License-Identifier: Apache-2.0
#include "engine/calibration/pass.h"

#include <algorithm>
#include <cmath>
#include <functional>

#include "engine/statistics/smoothing.h"
#include "engine/units/degree.h"

namespace hingepin::calibration {
namespace {

constexpr double kMovingSpeed_rad_per_s = 0.6 * kDegree;  // slower is creep or noise, not a travel
constexpr double kSpeedWindow_s = 0.4;
constexpr double kAccelerationKnots_s = 0.5;
constexpr double kPauseInTravel_s = 0.6;  // stick-slip pauses shorter than this do not end a travel
constexpr double kSteadyShare =
    0.8;  // of the pace within the window; a constant flow varies less over these angles
constexpr double kTrim_s = 0.25;  // the speed window blurs the ends by this much
constexpr double kLeastTravel_rad = 2.0 * kDegree;
constexpr double kLeastTime_s = 0.4;
constexpr Eigen::Index kLeastRows = 8;
constexpr double kFinestStep_s = 0.02;
constexpr Eigen::Index kMostPassRows =
    120;                             // means of neighbours; enough to see a bounce of 5 Hz in a slow pass
constexpr int kSpikeReach = 5;       // neighbours on each side
constexpr double kSpikeLimit = 6.0;  // robust standard deviations

using Column = std::vector<double>;

double medianOf(Column values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

/// Replaces samples far from the median of their neighbours (Hampel's identifier) by that median.
void removeSpikes(Column& values) {
  const auto n = static_cast<int>(values.size());
  if (n < 2 * kSpikeReach + 1) return;
  const Column original = values;
  const auto [least, most] = std::ranges::minmax(original);
  const double floor = 1e-3 * (most - least);  // quantised data often have a median deviation of zero
  Column deviations(n, 0.0);
  Column medians(n, 0.0);
  for (int i = 0; i < n; ++i) {
    const int first = std::clamp(i - kSpikeReach, 0, n - 2 * kSpikeReach - 1);
    const Column near(original.begin() + first, original.begin() + first + 2 * kSpikeReach + 1);
    medians[i] = medianOf(near);
    deviations[i] = std::abs(original[i] - medians[i]);
  }
  const double scale = std::max(medianOf(deviations) / 0.67449, floor);
  for (int i = 0; i < n; ++i) {
    const int first = std::clamp(i - kSpikeReach, 0, n - 2 * kSpikeReach - 1);
    Column near;
    near.reserve(2 * kSpikeReach + 1);
    for (int j = first; j < first + 2 * kSpikeReach + 1; ++j)
      near.push_back(std::abs(original[j] - medians[i]));
    const double local = medianOf(near) / 0.67449;
    if (deviations[i] > kSpikeLimit * std::max(local, scale)) values[i] = medians[i];
  }
}

/// Linear interpolation of (times, values) at rising `at`; ends are held.
Column interpolate(const Column& times, const Column& values, const Column& at) {
  Column result(at.size());
  std::size_t right = 1;
  for (std::size_t i = 0; i < at.size(); ++i) {
    while (right + 1 < times.size() && times[right] < at[i]) ++right;
    if (times.size() == 1 || at[i] <= times.front()) {
      result[i] = values.front();
    } else if (at[i] >= times.back()) {
      result[i] = values.back();
    } else {
      const double share = (at[i] - times[right - 1]) / (times[right] - times[right - 1]);
      result[i] = values[right - 1] + share * (values[right] - values[right - 1]);
    }
  }
  return result;
}

struct Travel {
  Eigen::Index first;
  Eigen::Index last;  // inclusive
  double sign;
};

/// Stretches of one sense of movement, pauses shorter than kPauseInTravel_s bridged.
std::vector<Travel> findTravels(const Column& speeds, double step_s) {
  std::vector<Travel> travels;
  const auto longest_pause = static_cast<Eigen::Index>(std::ceil(kPauseInTravel_s / step_s));
  for (Eigen::Index i = 0; i < std::ssize(speeds); ++i) {
    if (std::abs(speeds[i]) < kMovingSpeed_rad_per_s) continue;
    const double sign = speeds[i] > 0.0 ? 1.0 : -1.0;
    if (!travels.empty() && travels.back().sign == sign && i - travels.back().last <= longest_pause)
      travels.back().last = i;
    else
      travels.push_back({i, i, sign});
  }
  return travels;
}

Column boxMean(const Column& values, int reach) {
  const auto n = static_cast<int>(values.size());
  Column sums(n + 1, 0.0);
  for (int i = 0; i < n; ++i) sums[i + 1] = sums[i] + values[i];
  Column means(n);
  for (int i = 0; i < n; ++i) {
    const int here = std::min({reach, i, n - 1 - i});  // a shorter, still centred window at the ends
    means[i] = (sums[i + here + 1] - sums[i - here]) / (2 * here + 1);
  }
  return means;
}

Eigen::VectorXd blockMeans(const Column& values, Eigen::Index first, Eigen::Index blocks,
                           Eigen::Index per_block) {
  Eigen::VectorXd means(blocks);
  for (Eigen::Index b = 0; b < blocks; ++b) {
    double sum = 0.0;
    for (Eigen::Index k = 0; k < per_block; ++k) sum += values[first + b * per_block + k];
    means(b) = sum / static_cast<double>(per_block);
  }
  return means;
}

Eigen::VectorXd pick(const Eigen::VectorXd& values, const std::vector<Eigen::Index>& kept) {
  if (values.size() == 0) return values;
  Eigen::VectorXd result(std::ssize(kept));
  for (Eigen::Index i = 0; i < std::ssize(kept); ++i) result(i) = values(kept[i]);
  return result;
}

std::optional<double> meanTemperature(const LiftLog& log) {
  double sum_K = 0.0;
  std::size_t count = 0;
  for (const LiftRow& row : log.rows)
    if (row.oil_temperature_K) {
      sum_K += *row.oil_temperature_K;
      ++count;
    }
  if (count == 0) return std::nullopt;
  return sum_K / static_cast<double>(count);
}

std::unexpected<Error> nothingInWindow(const LiftLog& log, double seen_low_rad, double seen_high_rad,
                                       double low_rad, double high_rad) {
  return fail(ErrorKind::Insufficient, "nothing-in-window",
              {{"log", log.name},
               {"seen_low", Amount{seen_low_rad / kDegree, "deg", 1}},
               {"seen_high", Amount{seen_high_rad / kDegree, "deg", 1}},
               {"low", Amount{low_rad / kDegree, "deg", 1}},
               {"high", Amount{high_rad / kDegree, "deg", 1}}},
              {.file = log.name});
}

Expected<Pass> typedPass(const LiftLog& log, const SensorLine& boom_line, double low_rad, double high_rad,
                         double margin_rad) {
  std::vector<const LiftRow*> rows;
  int within = 0;
  double seen_low_rad = 1e9;
  double seen_high_rad = -1e9;
  double speed_sum = 0.0;
  for (const LiftRow& row : log.rows) {
    const double angle_rad = boom_line.angle(row.boom_sensor);
    seen_low_rad = std::min(seen_low_rad, angle_rad);
    seen_high_rad = std::max(seen_high_rad, angle_rad);
    if (angle_rad < low_rad - margin_rad || angle_rad > high_rad + margin_rad) continue;
    rows.push_back(&row);
    within += angle_rad >= low_rad && angle_rad <= high_rad;
    speed_sum += row.boom_speed_rad_per_s.value_or(0.0);
  }
  if (within == 0) return nothingInWindow(log, seen_low_rad, seen_high_rad, low_rad, high_rad);
  const auto n = std::ssize(rows);
  Pass pass;
  pass.typed_points = true;
  pass.direction = speed_sum < 0.0 ? Direction::Down : Direction::Up;
  pass.step_s = 1.0;
  for (Eigen::VectorXd* column :
       {&pass.boom_angle_rad, &pass.boom_speed_rad_per_s, &pass.boom_acceleration_rad_per_s2,
        &pass.head_pressure_Pa, &pass.rod_pressure_Pa, &pass.pitch_rad})
    column->setZero(n);
  const bool has_bucket =
      std::ranges::all_of(rows, [](const LiftRow* row) { return row->bucket_sensor.has_value(); });
  pass.has_pitch = std::ranges::all_of(rows, [](const LiftRow* row) { return row->pitch_rad.has_value(); });
  if (has_bucket) pass.bucket_reading.setZero(n);
  for (Eigen::Index i = 0; i < n; ++i) {
    const LiftRow& row = *rows[i];
    pass.boom_angle_rad(i) = boom_line.angle(row.boom_sensor);
    pass.boom_speed_rad_per_s(i) = row.boom_speed_rad_per_s.value_or(0.0);
    pass.head_pressure_Pa(i) = row.head_pressure_Pa;
    pass.rod_pressure_Pa(i) = row.rod_pressure_Pa.value_or(0.0);
    if (pass.has_pitch) pass.pitch_rad(i) = *row.pitch_rad;
    if (has_bucket) pass.bucket_reading(i) = *row.bucket_sensor;
  }
  pass.oil_temperature_K = meanTemperature(log);
  return pass;
}

}  // namespace

Expected<Pass> findPass(const LiftLog& log, const SensorLine& boom_line, linkage::Range window_rad,
                        double margin_rad, std::optional<Direction> wanted) {
  const auto [low_rad, high_rad] = window_rad;
  if (log.rows.empty())
    return fail(ErrorKind::Insufficient, log.rows_read > 0 ? "readings-all-missing" : "log-has-no-rows",
                {{"log", log.name}, {"dropped", Amount{static_cast<double>(log.rows_dropped), "1", 0}}},
                {.file = log.name});
  if (log.typed_points) return typedPass(log, boom_line, low_rad, high_rad, margin_rad);
  if (std::ssize(log.rows) < kLeastRows)
    return fail(ErrorKind::Insufficient, "log-too-short",
                {{"log", log.name},
                 {"rows", Amount{static_cast<double>(log.rows.size()), "1", 0}},
                 {"needed", Amount{static_cast<double>(kLeastRows), "1", 0}}},
                {.file = log.name});

  // Columns with spikes out, on an even grid.
  Column times;
  Column gaps;
  for (const LiftRow& row : log.rows) {
    if (!times.empty()) gaps.push_back(row.time_s - times.back());
    times.push_back(row.time_s);
  }
  const double span_s = times.back() - times.front();
  const double step_s = std::max(medianOf(gaps), span_s / (2.0 * LiftLogBuilder::kMostRows));
  Column grid(static_cast<std::size_t>(span_s / step_s) + 1);
  for (std::size_t i = 0; i < grid.size(); ++i) grid[i] = times.front() + static_cast<double>(i) * step_s;
  const auto column = [&](const std::function<std::optional<double>(const LiftRow&)>& read,
                          bool with_spikes) -> Column {
    Column at;
    Column values;
    for (const LiftRow& row : log.rows)
      if (const std::optional<double> value = read(row)) {
        at.push_back(row.time_s);
        values.push_back(*value);
      }
    if (values.empty()) return {};
    if (!with_spikes) removeSpikes(values);
    return interpolate(at, values, grid);
  };
  const Column angles =
      column([&](const LiftRow& row) { return std::optional(boom_line.angle(row.boom_sensor)); }, false);
  const Column heads = column([](const LiftRow& row) { return std::optional(row.head_pressure_Pa); }, false);
  Column rods = column([](const LiftRow& row) { return row.rod_pressure_Pa; }, false);
  if (rods.empty()) rods.assign(grid.size(), 0.0);
  Column pitches = column([](const LiftRow& row) { return row.pitch_rad; }, false);
  const Column buckets = column([](const LiftRow& row) { return row.bucket_sensor; }, false);
  const bool has_pitch = !pitches.empty();
  if (!has_pitch) pitches.assign(grid.size(), 0.0);

  // Travels of the boom, and the one that covers most of the angles asked for.
  const auto n = std::ssize(grid);
  const int reach = std::max(1, static_cast<int>(std::lround(0.5 * kSpeedWindow_s / step_s)));
  const Column means = boxMean(angles, reach);
  Column speeds(n, 0.0);
  for (Eigen::Index i = 0; i < n; ++i) {
    const Eigen::Index before = std::max<Eigen::Index>(0, i - reach);
    const Eigen::Index after = std::min<Eigen::Index>(n - 1, i + reach);
    if (after > before)
      speeds[i] = (means[after] - means[before]) / (static_cast<double>(after - before) * step_s);
  }
  const std::vector<Travel> travels = findTravels(speeds, step_s);
  const Travel* best = nullptr;
  double best_cover_rad = 0.0;
  int covering = 0;
  double seen_low_rad = 1e9;
  double seen_high_rad = -1e9;
  for (const Travel& travel : travels) {
    if (wanted && (travel.sign > 0.0) != (*wanted == Direction::Up)) continue;
    const auto [from_rad, to_rad] = std::minmax(means[travel.first], means[travel.last]);
    if (to_rad - from_rad < kLeastTravel_rad) continue;
    seen_low_rad = std::min(seen_low_rad, from_rad);
    seen_high_rad = std::max(seen_high_rad, to_rad);
    const double cover_rad = std::min(to_rad, high_rad) - std::max(from_rad, low_rad);
    if (cover_rad < kLeastTravel_rad) continue;
    ++covering;
    // The first of several like travels is taken, so a second must cover clearly more to win.
    if (cover_rad > best_cover_rad + 1.0 * kDegree) {
      best_cover_rad = cover_rad;
      best = &travel;
    }
  }
  if (best == nullptr) {
    if (seen_high_rad > seen_low_rad)
      return nothingInWindow(log, seen_low_rad, seen_high_rad, low_rad, high_rad);
    return fail(ErrorKind::Insufficient, "boom-did-not-move",
                {{"log", log.name}, {"needed", Amount{kLeastTravel_rad / kDegree, "deg", 0}}},
                {.file = log.name});
  }

  // Its steady part.
  Column pace;
  for (Eigen::Index i = best->first; i <= best->last; ++i)
    if (means[i] >= low_rad && means[i] <= high_rad) pace.push_back(std::abs(speeds[i]));
  if (pace.empty()) return nothingInWindow(log, seen_low_rad, seen_high_rad, low_rad, high_rad);
  const double steady_speed = kSteadyShare * medianOf(pace);
  Eigen::Index first = best->first;
  Eigen::Index last = best->last;
  while (first < last && std::abs(speeds[first]) < steady_speed) ++first;
  while (last > first && std::abs(speeds[last]) < steady_speed) --last;
  const auto trim = static_cast<Eigen::Index>(std::lround(kTrim_s / step_s));
  if (last - first > 6 * trim) {
    first += trim;
    last -= trim;
  }

  const Eigen::Index per_block =
      std::max<Eigen::Index>({1, static_cast<Eigen::Index>(kFinestStep_s / step_s + 1e-6),
                              (last - first + kMostPassRows) / kMostPassRows});
  const Eigen::Index blocks = (last - first + 1) / per_block;
  const double block_s = step_s * static_cast<double>(per_block);
  if (blocks < kLeastRows || block_s * static_cast<double>(blocks) < kLeastTime_s)
    return nothingInWindow(log, seen_low_rad, seen_high_rad, low_rad, high_rad);

  Pass pass;
  pass.direction = best->sign > 0.0 ? Direction::Up : Direction::Down;
  pass.step_s = block_s;
  pass.has_pitch = has_pitch;
  pass.other_travels = covering - 1;
  pass.boom_angle_rad = blockMeans(angles, first, blocks, per_block);
  const double duration_s = block_s * static_cast<double>(blocks - 1);
  const Eigen::VectorXd block_times = Eigen::VectorXd::LinSpaced(blocks, 0.0, duration_s);
  const statistics::SplineBasis basis{0.0, duration_s,
                                      std::clamp(static_cast<int>(duration_s / kAccelerationKnots_s), 1, 30)};
  const auto smooth =
      statistics::fitSmooth(block_times, pass.boom_angle_rad, Eigen::VectorXd::Ones(blocks), basis);
  if (!smooth) return std::unexpected(smooth.error());
  pass.boom_acceleration_rad_per_s2.resize(blocks);
  for (Eigen::Index b = 0; b < blocks; ++b)
    pass.boom_acceleration_rad_per_s2(b) = basis.row(block_times(b), 2).dot(smooth->coefficients);
  pass.head_pressure_Pa = blockMeans(heads, first, blocks, per_block);
  pass.rod_pressure_Pa = blockMeans(rods, first, blocks, per_block);
  pass.pitch_rad = blockMeans(pitches, first, blocks, per_block);
  if (!buckets.empty()) pass.bucket_reading = blockMeans(buckets, first, blocks, per_block);
  pass.oil_temperature_K = meanTemperature(log);

  std::vector<Eigen::Index> kept;
  Eigen::Index within = 0;
  for (Eigen::Index b = 0; b < blocks; ++b) {
    const double angle_rad = pass.boom_angle_rad(b);
    if (angle_rad >= low_rad - margin_rad && angle_rad <= high_rad + margin_rad) kept.push_back(b);
    within += angle_rad >= low_rad && angle_rad <= high_rad;
  }
  if (within < kLeastRows || block_s * static_cast<double>(within) < kLeastTime_s)
    return nothingInWindow(log, seen_low_rad, seen_high_rad, low_rad, high_rad);
  for (Eigen::VectorXd* values :
       {&pass.boom_angle_rad, &pass.boom_acceleration_rad_per_s2, &pass.head_pressure_Pa,
        &pass.rod_pressure_Pa, &pass.pitch_rad, &pass.bucket_reading})
    *values = pick(*values, kept);
  // The slope of angle over time.
  const Eigen::VectorXd from_middle =
      Eigen::VectorXd::LinSpaced(pass.size(), -0.5, 0.5) * block_s * static_cast<double>(pass.size() - 1);
  pass.boom_speed_rad_per_s.setConstant(pass.size(),
                                        from_middle.dot(pass.boom_angle_rad) / from_middle.squaredNorm());
  return pass;
}

}  // namespace hingepin::calibration
