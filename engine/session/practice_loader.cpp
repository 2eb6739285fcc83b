// SPDX-License-Identifier: Apache-2.0
#include "engine/session/practice_loader.h"

#include <algorithm>
#include <cmath>
#include <span>

#include "engine/linkage/linkage.h"
#include "engine/simulator/scenario.h"
#include "engine/units/degree.h"
#include "engine/units/ucum.h"

namespace hingepin::session {
namespace {

using procedures::Approach;
using procedures::BoomPlace;
using procedures::BucketPlace;
using procedures::Pace;
using procedures::Step;
using procedures::StepKind;
using simulator::LogRow;

constexpr double kPeriod_s = 0.02;
constexpr double kPosing_rad_per_s = 0.22;     // between a slow and a fast pass
constexpr double kTilt_s = 2.5;                // from racked to dumped
constexpr double kEnd_rad = 0.02;              // left before the cylinder's ends
constexpr double kRunUp_rad = 10.0 * kDegree;  // before the weigh window, for the speed to become steady

/// Every reading of two rows, put together by a function.
template <class Combine>
LogRow combine(const LogRow& a, const LogRow& b, Combine with) {
  LogRow row = a;
  for (auto field :
       {&LogRow::boom_sensor, &LogRow::bucket_sensor, &LogRow::head_pressure_Pa, &LogRow::rod_pressure_Pa,
        &LogRow::engine_speed_per_min, &LogRow::pitch_rad, &LogRow::oil_temperature_Cel}) {
    if (a.*field && b.*field) row.*field = with(*(a.*field), *(b.*field));
  }
  return row;
}

/// The middle of each reading over the last part of a hold: what it reads at rest, less its noise.
LogRow restOf(const std::vector<LogRow>& rows) {
  constexpr double kLast_s = 0.6;
  LogRow rest = rows.back();
  for (auto field :
       {&LogRow::boom_sensor, &LogRow::bucket_sensor, &LogRow::head_pressure_Pa, &LogRow::rod_pressure_Pa,
        &LogRow::engine_speed_per_min, &LogRow::pitch_rad, &LogRow::oil_temperature_Cel}) {
    double sum = 0.0;
    int count = 0;
    for (auto row = rows.rbegin(); row != rows.rend() && row->time_s > rows.back().time_s - kLast_s; ++row) {
      if (!((*row).*field)) continue;
      sum += *((*row).*field);
      ++count;
    }
    if (count > 0) rest.*field = sum / count;
  }
  return rest;
}

std::string withoutHeader(const std::string& csv) { return csv.substr(csv.find('\n') + 1); }

}  // namespace

std::vector<std::string> practiceMishaps() {
  std::vector<std::string> codes;
  for (const simulator::MishapKind& kind : simulator::mishapKinds()) codes.emplace_back(kind.code);
  return codes;
}

PracticeLoader::PracticeLoader(std::uint64_t number)
    : random_(number),
      machine_([&] {
        Random drawn = random_.fork(1);
        return simulator::practiceMachine(drawn);
      }()),
      boom_rad_(machine_.lowest_rad + 6.0 * kDegree),
      tilt_m_(machine_.tilt_length_m),
      now_rad_(boom_rad_) {
  // The practice unit stands so whatever its draw; a simulator that refuses leaves the cells of the feed
  // empty.
  end_ = restAt(boom_rad_, tilt_m_, 0.0).value_or(LogRow{});
  still_ = end_;
}

void PracticeLoader::suffer(std::string_view mishap) {
  happenings_.clear();
  const auto kinds = simulator::mishapKinds();
  const auto kind = std::ranges::find(kinds, mishap, &simulator::MishapKind::code);
  if (kind != kinds.end()) happenings_.push_back({kind->mishap, kind->usual});
}

Expected<double> PracticeLoader::goalOf(const Step& step) const {
  const double low = machine_.lowest_rad + kEnd_rad;
  const double high = machine_.highest_rad - kEnd_rad;
  if (step.kind == StepKind::Pass) return step.direction == procedures::Direction::Up ? high : low;
  if (step.boom_angle && !step.boom_angle->text.empty()) {
    const Expected<double> wanted = readSi(step.boom_angle->text, Dimension::Angle);
    if (!wanted) return std::unexpected(wanted.error());
    return std::clamp(*wanted, low, high);
  }
  switch (step.boom) {
    case BoomPlace::Lowest:
      return low;
    case BoomPlace::Highest:
      return high;
    case BoomPlace::Level:
      // About level is level enough; then only the bucket moves.
      if (step.approach == Approach::Either && std::abs(boom_rad_ - machine_.reference_rad) < 5.0 * kDegree)
        return boom_rad_;
      return machine_.reference_rad;
    case BoomPlace::Carry:
      return machine_.lowest_rad + 14.0 * kDegree;
    case BoomPlace::Ground:
      return machine_.lowest_rad + 6.0 * kDegree;
    case BoomPlace::Any:
      break;
  }
  // Another place within the weigh window each time.
  const double next = boom_rad_ + 5.0 * kDegree;
  return next < machine_.window_low_rad || next > machine_.window_high_rad ? machine_.window_low_rad : next;
}

Expected<simulator::LiftRecord> PracticeLoader::lift(simulator::Machine machine, double tilt_m,
                                                     const simulator::Plan& plan, double mass_kg) {
  machine.tilt_length_m = tilt_m;
  simulator::Lift lift;
  if (mass_kg > 0.0)
    lift.load = simulator::loadAt(mass_kg, machine.heap_true_along_m, machine.heap_true_across_m);
  lift.oil_Cel = oil_Cel_;
  lift.plan = plan;
  lift.logging.pitch = true;
  lift.happenings = happenings_;
  return simulator::simulate(machine, lift, random_.fork(100 + movements_++));
}

Expected<LogRow> PracticeLoader::restAt(double boom_rad, double tilt_m, double mass_kg) {
  // A short way there, for friction to be as after a movement. A dumped bucket doesn't close over the whole
  // travel.
  simulator::Machine machine = machine_;
  constexpr double kWay_rad = 3.0 * kDegree;
  const bool from_above = boom_rad - kWay_rad < machine.lowest_rad;
  machine.lowest_rad = std::max(machine.lowest_rad, boom_rad - 1.3 * kWay_rad);
  machine.highest_rad = std::min(machine.highest_rad, boom_rad + 1.3 * kWay_rad);
  simulator::Plan plan;
  plan.from_rad = boom_rad + (from_above ? kWay_rad : -kWay_rad);
  plan.wait_s = 0.2;
  plan.moves.push_back({.to_rad = boom_rad, .speed_rad_per_s = kPosing_rad_per_s});
  const Expected<simulator::LiftRecord> record = lift(machine, tilt_m, plan, mass_kg);
  if (!record) return std::unexpected(record.error());
  return restOf(record->rows);
}

LogRow PracticeLoader::noisy(LogRow row, double time_s) {
  row.time_s = time_s;
  const auto sensed = [&](std::optional<double>& value, double deviation, double step) {
    if (!value) return;
    *value += deviation * random_.normal();
    if (step > 0.0) *value = std::round(*value / step) * step;
  };
  sensed(row.boom_sensor, machine_.boom_sensor.noise_sd, machine_.boom_sensor.step);
  sensed(row.bucket_sensor, machine_.bucket_sensor.noise_sd, machine_.bucket_sensor.step);
  sensed(row.head_pressure_Pa, machine_.head_sensor.noise_sd_Pa, machine_.head_sensor.step_Pa);
  sensed(row.rod_pressure_Pa, machine_.rod_sensor.noise_sd_Pa, machine_.rod_sensor.step_Pa);
  sensed(row.engine_speed_per_min, 4.0, 1.0);
  sensed(row.pitch_rad, 0.05 * kDegree, 0.01 * kDegree);
  sensed(row.oil_temperature_Cel, 0.0, 1.0);
  return row;
}

void PracticeLoader::addTilt(const LogRow& from, const LogRow& to, double boom_rad, double& end_s,
                             std::vector<Coming>& rows) {
  const int count = static_cast<int>(kTilt_s / kPeriod_s);
  for (int index = 1; index <= count; ++index) {
    const double share = static_cast<double>(index) / count;
    const double eased = share * share * (3.0 - 2.0 * share);
    end_s += kPeriod_s;
    rows.push_back(
        {noisy(combine(from, to, [&](double a, double b) { return a + eased * (b - a); }), end_s), boom_rad});
  }
  rows.back().rest = to;
}

Expected<void> PracticeLoader::begin(const Step& step, double mass_kg, double time_s) {
  if (step.kind != StepKind::Pose && step.kind != StepKind::Pass) return {};
  const auto linkage = linkage::Linkage::make(machine_.as_built);
  if (!linkage) return std::unexpected(linkage.error());
  const Expected<double> goal = goalOf(step);
  if (!goal) return std::unexpected(goal.error());
  const double racked_m = machine_.tilt_length_m;
  double tilt_m = racked_m;
  if (step.kind == StepKind::Pose && step.bucket == BucketPlace::Dumped)
    tilt_m = std::max(machine_.as_built.tilt_cylinder_retracted.inMetres(), linkage->tiltRange(*goal).low);
  if (step.kind == StepKind::Pose && step.bucket == BucketPlace::Level) {
    const Expected<double> level = linkage->tiltLengthOfBucket(*goal, 0.0);
    if (!level) return std::unexpected(level.error());
    tilt_m = *level;
  }

  simulator::Plan plan;
  plan.from_rad = boom_rad_;
  plan.wait_s = 0.5;
  const auto move = [&](double to_rad, double speed_rad_per_s, double hold_s) {
    plan.moves.push_back({.to_rad = to_rad, .speed_rad_per_s = speed_rad_per_s, .hold_s = hold_s});
  };
  if (step.kind == StepKind::Pass) {
    const bool up = step.direction == procedures::Direction::Up;
    const bool at_start = up ? boom_rad_ < machine_.window_low_rad - kRunUp_rad
                             : boom_rad_ > machine_.window_high_rad + kRunUp_rad;
    constexpr double kRest_s = 2.5;  // long enough to tell the way there from the pass
    if (!at_start)
      move(up ? machine_.lowest_rad + kEnd_rad : machine_.highest_rad - kEnd_rad, kPosing_rad_per_s, kRest_s);
    const double speed_rad_per_s = step.pace == Pace::Slow   ? machine_.slow_rad_per_s
                                   : step.pace == Pace::Fast ? machine_.fast_rad_per_s
                                                             : kPosing_rad_per_s;
    move(*goal, speed_rad_per_s, 1.5);
  } else {
    const bool below = step.approach == Approach::FromBelow;
    const bool above = step.approach == Approach::FromAbove;
    constexpr double kThere_rad = 0.3 * kDegree;
    constexpr double kPast_rad = 6.0 * kDegree;
    if ((below && boom_rad_ > *goal - kThere_rad) || (above && boom_rad_ < *goal + kThere_rad)) {
      move(std::clamp(*goal + (below ? -kPast_rad : kPast_rad), machine_.lowest_rad + 0.5 * kEnd_rad,
                      machine_.highest_rad - 0.5 * kEnd_rad),
           kPosing_rad_per_s, 0.8);
    }
    if (!plan.moves.empty() || std::abs(*goal - boom_rad_) > kThere_rad) move(*goal, kPosing_rad_per_s, 1.5);
  }

  // All is worked out before anything is taken over.
  std::vector<Coming> rows;
  double end_s = std::max({time_s, sent_until_s_, busy_until_s_});
  LogRow rest = end_;
  double boom_rad = boom_rad_;
  double tilted_m = tilt_m_;
  const auto tiltTo = [&](double wanted_m) -> Expected<void> {
    if (std::abs(wanted_m - tilted_m) < 1e-4) return {};
    const Expected<LogRow> after = restAt(boom_rad, wanted_m, mass_kg);
    if (!after) return std::unexpected(after.error());
    addTilt(rest, *after, boom_rad, end_s, rows);
    rest = *after;
    tilted_m = wanted_m;
    return {};
  };
  if (!plan.moves.empty()) {
    if (Expected<void> done = tiltTo(racked_m); !done) return done;
    const Expected<simulator::LiftRecord> record = lift(machine_, racked_m, plan, mass_kg);
    if (!record) return std::unexpected(record.error());
    const std::vector<simulator::Instant>& instants = record->truth.instants;
    const double begin_s = end_s + kPeriod_s;
    for (LogRow row : record->rows) {
      const auto at = std::ranges::lower_bound(instants, row.time_s, {}, &simulator::Instant::time_s);
      boom_rad = at == instants.end() ? instants.back().boom_rad : at->boom_rad;
      row.time_s += begin_s;
      rows.push_back({row, boom_rad});
    }
    rest = restOf(record->rows);
    rows.back().rest = rest;
    end_s = rows.back().row.time_s;
  }
  if (Expected<void> done = tiltTo(tilt_m); !done) return done;

  boom_rad_ = boom_rad;
  tilt_m_ = tilted_m;
  end_ = rest;
  busy_until_s_ = end_s;
  rows_.insert(rows_.end(), rows.begin(), rows.end());
  return {};
}

std::string PracticeLoader::linesUntil(double time_s) {
  std::vector<LogRow> due;
  while (sent_until_s_ + kPeriod_s <= time_s) {
    if (rows_.empty() || rows_.front().row.time_s > sent_until_s_ + 1.5 * kPeriod_s) {
      sent_until_s_ += kPeriod_s;
      due.push_back(noisy(still_, sent_until_s_));
      continue;
    }
    if (rows_.front().row.time_s > time_s) break;
    const Coming next = rows_.front();
    rows_.pop_front();
    now_rad_ = next.boom_rad;
    if (next.rest) still_ = *next.rest;
    if (next.row.time_s <= sent_until_s_) continue;
    sent_until_s_ = next.row.time_s;
    due.push_back(next.row);
  }
  // What nobody got is lost, and a gateway that comes back says its header again.
  const auto lost =
      std::ranges::find_if(due, [&](const LogRow& row) { return row.time_s >= silent_until_s_; });
  if (lost != due.begin()) header_sent_ = false;
  due.erase(due.begin(), lost);
  if (due.empty()) return {};
  const std::string csv = simulator::csvOf(machine_, due);
  const std::string text = header_sent_ ? withoutHeader(csv) : csv;
  header_sent_ = true;
  return text;
}

}  // namespace hingepin::session
