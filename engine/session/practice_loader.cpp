// SPDX-License-Identifier: Apache-2.0
#include "engine/session/practice_loader.h"

#include <algorithm>
#include <cmath>

#include "engine/linkage/linkage.h"
#include "engine/procedures/evaluate.h"
#include "engine/simulator/scenario.h"
#include "engine/units/ucum.h"

namespace hingepin::session {
namespace {

using procedures::BoomPlace;
using procedures::BucketPlace;
using procedures::Step;
using procedures::StepKind;

constexpr double kPeriod_s = 0.02;
constexpr double kDegree = 0.017453292519943295;
constexpr double kPosing_rad_per_s = 0.22;

std::string withoutHeader(const std::string& csv) { return csv.substr(csv.find('\n') + 1); }

}  // namespace

PracticeLoader::PracticeLoader(std::uint64_t number)
    : random_(number),
      machine_([&] {
        Random drawn = random_.fork(1);
        return simulator::practiceMachine(drawn);
      }()),
      boom_rad_(machine_.lowest_rad + 6.0 * kDegree),
      tilt_m_(machine_.tilt_length_m) {
  // How it reads while it stands: a short travel that ends there.
  const double start = boom_rad_;
  boom_rad_ = start - 2.0 * kDegree;
  Step settle;
  settle.kind = StepKind::Pose;
  settle.boom = BoomPlace::Ground;
  static_cast<void>(begin(settle, 0.0, 0.0));
  if (!rows_.empty()) still_ = rows_.back();
  rows_.clear();
  busy_until_s_ = 0.0;
}

Expected<void> PracticeLoader::begin(const Step& step, double mass_kg, double time_s) {
  if (step.kind != StepKind::Pose && step.kind != StepKind::Pass) return {};
  mass_kg_ = mass_kg;
  const auto linkage = linkage::Linkage::make(machine_.as_built);
  if (!linkage) return std::unexpected(linkage.error());
  const double ground_rad = machine_.lowest_rad + 6.0 * kDegree;
  double goal = boom_rad_;
  double from = boom_rad_;
  double speed = kPosing_rad_per_s;
  simulator::Plan plan;
  if (step.kind == StepKind::Pass) {
    const bool up = step.direction == procedures::Direction::Up;
    from = up ? machine_.lowest_rad + 0.02 : machine_.highest_rad - 0.02;
    goal = up ? machine_.highest_rad - 0.02 : machine_.lowest_rad + 0.02;
    speed = step.pace == procedures::Pace::Slow   ? machine_.slow_rad_per_s
            : step.pace == procedures::Pace::Fast ? machine_.fast_rad_per_s
                                                  : 0.5 * (machine_.slow_rad_per_s + machine_.fast_rad_per_s);
    tilt_m_ = machine_.tilt_length_m;
  } else {
    switch (step.boom) {
      case BoomPlace::Lowest:
        goal = machine_.lowest_rad + 0.02;
        break;
      case BoomPlace::Highest:
        goal = machine_.highest_rad - 0.02;
        break;
      case BoomPlace::Level:
        goal = machine_.reference_rad;
        break;
      case BoomPlace::Carry:
        goal = machine_.lowest_rad + 14.0 * kDegree;
        break;
      case BoomPlace::Ground:
        goal = ground_rad;
        break;
      case BoomPlace::Any:
        goal = boom_rad_ + 12.0 * kDegree > machine_.window_high_rad ? machine_.window_low_rad
                                                                     : boom_rad_ + 12.0 * kDegree;
        goal = std::max(goal, machine_.window_low_rad);
        break;
    }
    if (step.boom_angle && !step.boom_angle->text.empty()) {
      if (const auto wanted = readSi(step.boom_angle->text, Dimension::Angle)) goal = *wanted;
    }
    goal = std::clamp(goal, machine_.lowest_rad + 0.02, machine_.highest_rad - 0.02);
    if (step.bucket == BucketPlace::RackedBack) tilt_m_ = machine_.tilt_length_m;
    if (step.bucket == BucketPlace::Dumped) tilt_m_ = linkage->tiltRange(goal).low + 0.005;
    if (step.bucket == BucketPlace::Level) {
      if (const auto level = linkage->tiltLengthOfBucket(goal, 0.0)) tilt_m_ = *level;
    }
  }
  simulator::Machine machine = machine_;
  machine.tilt_length_m = tilt_m_;
  // A dumped bucket doesn't close everywhere: the bucket moves where the boom stands in the end.
  if (step.kind == StepKind::Pose && step.bucket != BucketPlace::RackedBack &&
      step.bucket != BucketPlace::Any) {
    from = goal - std::copysign(3.0 * kDegree, goal - machine_.lowest_rad - 0.1);
  }
  plan.from_rad = std::clamp(from, machine_.lowest_rad + 0.01, machine_.highest_rad - 0.01);
  plan.wait_s = step.kind == StepKind::Pass ? 1.0 : 0.4;
  const auto move = [&](double to, double pace) {
    plan.moves.push_back({.to_rad = to, .speed_rad_per_s = pace, .hold_s = 1.5});
  };
  if (step.kind == StepKind::Pose) {
    const bool under = step.approach == procedures::Approach::FromBelow && goal < plan.from_rad;
    const bool over = step.approach == procedures::Approach::FromAbove && goal > plan.from_rad;
    if (under) move(std::max(goal - 6.0 * kDegree, machine_.lowest_rad + 0.01), kPosing_rad_per_s);
    if (over) move(std::min(goal + 6.0 * kDegree, machine_.highest_rad - 0.01), kPosing_rad_per_s);
  }
  const double last = plan.moves.empty() ? plan.from_rad : plan.moves.back().to_rad;
  if (std::abs(goal - last) < 2.0 * kDegree) {
    move(goal > 0 ? goal - 5.0 * kDegree : goal + 5.0 * kDegree, kPosing_rad_per_s);
    if (step.approach == procedures::Approach::FromBelow && goal <= 0)
      plan.moves.back().to_rad = std::max(goal - 4.0 * kDegree, machine_.lowest_rad + 0.005);
  }
  move(goal, speed);
  simulator::Lift lift;
  if (mass_kg > 0.0)
    lift.load = simulator::loadAt(mass_kg, machine_.heap_true_along_m, machine_.heap_true_across_m);
  lift.oil_Cel = oil_Cel_;
  lift.plan = plan;
  lift.logging.pitch = true;
  lift.happenings = happenings_;
  auto record = simulator::simulate(machine, lift, random_.fork(100 + movements_++));
  if (!record) return std::unexpected(record.error());
  rows_.clear();
  const double begin_s = std::max(time_s, sent_until_s_) + kPeriod_s;
  for (simulator::LogRow& row : record->rows) {
    row.time_s += begin_s;
    rows_.push_back(row);
  }
  busy_until_s_ = rows_.empty() ? begin_s : rows_.back().time_s;
  boom_rad_ = goal;
  return {};
}

std::string PracticeLoader::linesUntil(double time_s) {
  std::vector<simulator::LogRow> due;
  while (sent_until_s_ + kPeriod_s <= time_s) {
    if (!rows_.empty()) {
      if (rows_.front().time_s > time_s) break;
      still_ = rows_.front();
      rows_.pop_front();
      if (still_.time_s <= sent_until_s_) continue;
      sent_until_s_ = still_.time_s;
      due.push_back(still_);
      continue;
    }
    sent_until_s_ += kPeriod_s;
    simulator::LogRow row = still_;
    row.time_s = sent_until_s_;
    // At rest the sensors' own noise is all that changes.
    const auto noisy = [&](std::optional<double>& value, double deviation) {
      if (value) *value += deviation * random_.normal();
    };
    noisy(row.boom_sensor, machine_.boom_sensor.noise_sd);
    noisy(row.bucket_sensor, machine_.bucket_sensor.noise_sd);
    noisy(row.head_pressure_Pa, machine_.head_sensor.noise_sd_Pa);
    noisy(row.rod_pressure_Pa, machine_.rod_sensor.noise_sd_Pa);
    if (row.rod_pressure_Pa) row.rod_pressure_Pa = std::max(0.0, *row.rod_pressure_Pa);
    due.push_back(row);
  }
  if (time_s < silent_until_s_) {
    header_sent_ = false;
    return {};
  }
  if (due.empty() && header_sent_) return {};
  const std::string csv = simulator::csvOf(machine_, due);
  const std::string text = header_sent_ ? withoutHeader(csv) : csv;
  if (!due.empty()) header_sent_ = true;
  return due.empty() ? std::string() : text;
}

}  // namespace hingepin::session
