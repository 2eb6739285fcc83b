// SPDX-License-Identifier: Apache-2.0
#include "engine/calibration/lift_log.h"

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

}  // namespace

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
