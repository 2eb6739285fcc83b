// SPDX-License-Identifier: Apache-2.0
#include "engine/calibration/lift_log.h"

#include <algorithm>
#include <utility>

namespace hingepin::calibration {
namespace {

constexpr std::array kOptionalFields = {&LiftRow::rod_pressure_Pa,    &LiftRow::bucket_sensor,
                                        &LiftRow::engine_speed_per_s, &LiftRow::pitch_rad,
                                        &LiftRow::oil_temperature_K,  &LiftRow::boom_speed_rad_per_s};
constexpr std::array kRequiredFields = {&LiftRow::time_s, &LiftRow::boom_sensor, &LiftRow::head_pressure_Pa};

/// Takes `value` into the running mean of `count` values, itself counted.
void takeInto(double& mean, double value, std::size_t count) {
  mean += (value - mean) / static_cast<double>(count);
}

LiftRow meanOf(const LiftRow& first, const LiftRow& second) {
  LiftRow mean = first;
  for (const auto field : kRequiredFields) takeInto(mean.*field, second.*field, 2);
  for (const auto field : kOptionalFields) {
    if (!(mean.*field)) {
      mean.*field = second.*field;
    } else if (second.*field) {
      takeInto(*(mean.*field), *(second.*field), 2);
    }
  }
  return mean;
}

// Fewer rows than this share can't move a mass, whichever they are.
constexpr double kShareToSay = 0.02;

}  // namespace

bool isBeyondRange(const LiftRow& row, Pressure range) {
  return std::max(row.head_pressure_Pa, row.rod_pressure_Pa.value_or(0.0)) >= range.inPascals();
}

void leaveOutBeyondRange(LiftLog& log, Pressure range) {
  log.rows_beyond_range +=
      std::erase_if(log.rows, [&](const LiftRow& row) { return isBeyondRange(row, range); });
}

Expected<void> judgeRows(const LiftLog& log, Pressure range, std::vector<Message>& warnings) {
  const auto count = [](std::size_t rows) { return Amount{static_cast<double>(rows), "1", 0}; };
  const std::size_t beyond = log.rows_beyond_range;
  const std::vector<std::pair<std::string, MessageValue>> of_range = {
      {"log", log.name}, {"beyond", count(beyond)}, {"range", Amount{range.inBar(), "bar", 0}}};
  if (beyond > log.rows.size()) {
    return fail(ErrorKind::Insufficient, "pressures-out-of-range", of_range, {.file = log.name});
  }
  if (beyond > 0) warnings.push_back({"pressures-beyond-range", of_range});
  if (static_cast<double>(log.rows_dropped) > kShareToSay * static_cast<double>(log.rows_read)) {
    warnings.push_back(
        {"rows-dropped",
         {{"log", log.name}, {"dropped", count(log.rows_dropped)}, {"rows", count(log.rows_read)}}});
  }
  return {};
}

void LiftLogBuilder::add(const LiftRow& row) {
  if (rows_per_mean_ == 1 && rows_.size() < kMostRows) {
    rows_.push_back(row);
    return;
  }
  if (rows_.size() == kMostRows && in_mean_ == 0) {
    for (std::size_t pair = 0; pair < kMostRows / 2; ++pair)
      rows_[pair] = meanOf(rows_[2 * pair], rows_[2 * pair + 1]);
    rows_.resize(kMostRows / 2);
    rows_per_mean_ *= 2;
  }
  if (in_mean_ == 0) {
    mean_ = LiftRow{};
    with_field_ = {};
  }
  ++in_mean_;
  for (const auto field : kRequiredFields) takeInto(mean_.*field, row.*field, in_mean_);
  for (std::size_t index = 0; index < kOptionalFields.size(); ++index) {
    const auto field = kOptionalFields[index];
    if (!(row.*field)) continue;
    if (!(mean_.*field)) mean_.*field = 0.0;
    takeInto(*(mean_.*field), *(row.*field), ++with_field_[index]);
  }
  if (in_mean_ == rows_per_mean_) {
    rows_.push_back(mean_);
    in_mean_ = 0;
  }
}

std::vector<LiftRow> LiftLogBuilder::take() {
  if (in_mean_ > 0) rows_.push_back(mean_);
  std::vector<LiftRow> rows = std::move(rows_);
  *this = LiftLogBuilder();
  return rows;
}

}  // namespace hingepin::calibration
