// SPDX-License-Identifier: Apache-2.0
#include "engine/session/live.h"

#include <algorithm>
#include <cmath>
#include <span>

#include "engine/calibration/angles.h"
#include "engine/procedures/evaluate.h"
#include "engine/session/fitting.h"
#include "engine/units/degree.h"
#include "engine/units/number.h"
#include "engine/units/ucum.h"

namespace hingepin::session {
namespace {

using calibration::LiftLog;
using calibration::LiftRow;
using calibration::LogLine;
using calibration::SensorUnit;
using procedures::Step;
using procedures::StepKind;

constexpr std::size_t kMostPoints = 400;

/// How a feed's sensor reads in the units of a step: the SI value's dimension must be that of the unit.
std::optional<Dimension> dimensionOf(SensorUnit unit) {
  switch (unit) {
    case SensorUnit::Volt:
      return Dimension::Voltage;
    case SensorUnit::Radian:
      return Dimension::Angle;
    case SensorUnit::Count:
      return Dimension::Number;
  }
  return std::nullopt;
}

struct Value {
  double value_si;
  Dimension dimension;
};

/// What a row says of a quantity that procedures name; nothing where the feed has no such column.
std::optional<Value> valueOf(const LiftRow& row, const Feed& feed, const std::optional<KnownLine>& line,
                             std::string_view quantity) {
  const auto of = [](std::optional<double> value, Dimension dimension) -> std::optional<Value> {
    if (!value) return std::nullopt;
    return Value{*value, dimension};
  };
  if (quantity == "boom-sensor") return of(row.boom_sensor, *dimensionOf(feed.boomSensorUnit()));
  if (quantity == "bucket-sensor" && feed.bucketSensorUnit()) {
    return of(row.bucket_sensor, *dimensionOf(*feed.bucketSensorUnit()));
  }
  if (quantity == "boom-angle" && line && line->unit == feed.boomSensorUnit()) {
    return of(line->line.angle(row.boom_sensor), Dimension::Angle);
  }
  if (quantity == "head-pressure") return of(row.head_pressure_Pa, Dimension::Pressure);
  if (quantity == "rod-pressure") return of(row.rod_pressure_Pa, Dimension::Pressure);
  if (quantity == "oil-temperature") return of(row.oil_temperature_K, Dimension::Temperature);
  if (quantity == "engine-speed") return of(row.engine_speed_per_s, Dimension::Frequency);
  if (quantity == "pitch") return of(row.pitch_rad, Dimension::Angle);
  return std::nullopt;
}

double median(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::ranges::nth_element(values, middle);
  return *middle;
}

struct Slope {
  double value = 0.0;
  double u = 0.0;  ///< standard uncertainty from the scatter about the line
};

/// Speed as the slope of a least-squares line, so that single noisy samples tell nothing.
Slope slopeOf(std::span<const std::pair<double, double>> points) {
  if (points.size() < 3) return {};
  const auto count = static_cast<double>(points.size());
  double mean_t = 0.0;
  double mean_x = 0.0;
  for (const auto& [t, x] : points) {
    mean_t += t / count;
    mean_x += x / count;
  }
  double above = 0.0;
  double below = 0.0;
  double spread = 0.0;
  for (const auto& [t, x] : points) {
    above += (t - mean_t) * (x - mean_x);
    below += (t - mean_t) * (t - mean_t);
    spread += (x - mean_x) * (x - mean_x);
  }
  if (!(below > 0.0)) return {};
  const double value = above / below;
  return {value, std::sqrt(std::max(0.0, spread - value * above) / (count - 2.0) / below)};
}

/// What an angle is in the readings of a sensor whose line is not known.
double perRadian(SensorUnit unit, double reading, const LiveLimits& limits) {
  switch (unit) {
    case SensorUnit::Volt:
      return 1.0 / limits.rad_per_volt;
    case SensorUnit::Count:
      // The next power of two above the reading stands for the range.
      return std::exp2(std::ceil(std::log2(std::max(std::abs(reading), 256.0)))) / limits.rad_per_share;
    case SensorUnit::Radian:
      return 1.0;
  }
  return 1.0;
}

/// The middle of the last five values up to one: a spike is no movement.
template <class Field>
double despiked(const std::deque<LiftRow>& rows, std::size_t index, double from_s, Field field) {
  std::vector<double> values;
  constexpr std::size_t kMiddleOf = 5;
  for (std::size_t count = 0; count <= index && values.size() < kMiddleOf; ++count) {
    const LiftRow& row = rows[index - count];
    if (row.time_s <= from_s) break;
    if (const std::optional<double> value = field(row)) values.push_back(*value);
  }
  return values.empty() ? 0.0 : median(std::move(values));
}

/// A mean with the digits that its spread leaves a meaning.
std::string rounded(double value, double spread_si, const Unit& unit) {
  const double spread = std::abs(spread_si) * unit.divisor / unit.factor;
  const int decimals =
      spread > 0.0 ? std::clamp(1 - static_cast<int>(std::floor(std::log10(spread))), 0, 5) : 4;
  const double scale = std::pow(10.0, decimals);
  double shown = std::round(value * scale) / scale;
  if (shown == 0.0) shown = 0.0;  // never "-0"
  return writeNumber(shown) + " " + std::string(unit.ucum);
}

}  // namespace

Feed::Feed(const Edge& edge, LiveLimits limits) : edge_(edge), limits_(limits), reader_(edge.open_feed()) {}

void Feed::disconnected() { reader_ = edge_.open_feed(); }

bool Feed::isAlive(std::int64_t now_ms) const {
  return !rows_.empty() && last_ms_ && now_ms - *last_ms_ <= limits_.silent_ms;
}

double Feed::rowsPerSecond() const {
  if (rows_.size() < 2) return 0.0;
  const std::size_t used = std::min<std::size_t>(rows_.size(), 100);
  const double span_s = rows_.back().time_s - rows_[rows_.size() - used].time_s;
  return span_s > 0.0 ? static_cast<double>(used - 1) / span_s : 0.0;
}

std::optional<LiftRow> Feed::current() const {
  if (rows_.empty()) return std::nullopt;
  const double until_s = rows_.back().time_s;
  const auto mean = [&](auto field) -> std::optional<double> {
    double sum = 0.0;
    int count = 0;
    for (auto row = rows_.rbegin(); row != rows_.rend() && row->time_s > until_s - limits_.shown_s; ++row) {
      const std::optional<double> value = field(*row);
      if (!value) continue;
      sum += *value;
      ++count;
    }
    return count > 0 ? std::optional(sum / count) : std::nullopt;
  };
  return LiftRow{
      .time_s = until_s,
      .boom_sensor = *mean([](const LiftRow& row) { return std::optional(row.boom_sensor); }),
      .head_pressure_Pa = *mean([](const LiftRow& row) { return std::optional(row.head_pressure_Pa); }),
      .rod_pressure_Pa = mean([](const LiftRow& row) { return row.rod_pressure_Pa; }),
      .bucket_sensor = mean([](const LiftRow& row) { return row.bucket_sensor; }),
      .engine_speed_per_s = mean([](const LiftRow& row) { return row.engine_speed_per_s; }),
      .pitch_rad = mean([](const LiftRow& row) { return row.pitch_rad; }),
      .oil_temperature_K = mean([](const LiftRow& row) { return row.oil_temperature_K; }),
      .boom_speed_rad_per_s = std::nullopt};
}

void Feed::take(std::string_view bytes, std::int64_t at_ms) {
  reader_(bytes, [&](const Expected<LogLine>& line, const LiftLog& log) { lineCame(line, log, at_ms); });
}

void Feed::begin() {
  rows_.clear();
  lines_.clear();
  ++connection_;
}

void Feed::lineCame(const Expected<LogLine>& line, const LiftLog& log, std::int64_t at_ms) {
  if (!line) {
    fault_ = line.error();
    fault_at_ms_ = at_ms;
    ++unreadable_;
    return;
  }
  if (line->is_header) {
    header_ = line->text;
    boom_sensor_unit_ = log.boom_sensor_unit;
    bucket_sensor_unit_ = log.bucket_sensor_unit;
    fault_.reset();
    begin();
    return;
  }
  if (fault_ && at_ms - fault_at_ms_ > limits_.fault_ms) fault_.reset();
  if (!line->row) return;
  const LiftRow& row = *line->row;
  const double silent_s = static_cast<double>(limits_.silent_ms) / 1000.0;
  if (!rows_.empty() && row.time_s <= rows_.back().time_s) {
    // The same row twice, or rows that overtook each other; further back it is a clock that began anew.
    if (row.time_s > rows_.back().time_s - silent_s) {
      ++unreadable_;
      return;
    }
    begin();
  }
  // Gone is what did not come, and also what came late in one lump without a hole: whoever watches saw
  // nothing.
  const bool gone = (last_ms_ && at_ms - *last_ms_ > limits_.silent_ms) ||
                    (!rows_.empty() && row.time_s - rows_.back().time_s > silent_s);
  if (gone) ++drop_outs_;
  lowest_ = rows_.empty() ? row.boom_sensor : std::min(lowest_, row.boom_sensor);
  highest_ = rows_.empty() ? row.boom_sensor : std::max(highest_, row.boom_sensor);
  rows_.push_back(row);
  lines_.emplace_back(line->text);
  last_ms_ = at_ms;
  constexpr std::size_t kMostRows = 200'000;
  while (rows_.back().time_s - rows_.front().time_s > limits_.kept_s || rows_.size() > kMostRows) {
    rows_.pop_front();
    lines_.pop_front();
  }
}

std::string Feed::log(double from_s, double until_s) const {
  std::string text = header_ + "\n";
  for (std::size_t index = 0; index < rows_.size(); ++index) {
    if (rows_[index].time_s < from_s || rows_[index].time_s > until_s) continue;
    text += lines_[index];
    text += '\n';
  }
  return text;
}

std::optional<KnownLine> boomLineOf(const OpenJob& job, const Edge& edge, const BlobSource& logs) {
  const std::optional<std::string> text =
      calibrationJobOf(job.procedure, job.state, job.unit, attachmentOf(job));
  if (!text) return std::nullopt;
  const Expected<calibration::Job> read = edge.read_job(*text, logs);
  if (!read) return std::nullopt;
  std::vector<Message> warnings;
  const Expected<calibration::SensorLine> line = calibration::fitBoomLine(*read, warnings);
  if (!line) return std::nullopt;
  return KnownLine{*line, read->boom_sensor_unit};
}

std::optional<KnownLine> boomLineOf(const calibration::Calibration& calibration) {
  return KnownLine{calibration.boom_line, calibration.boom_sensor_unit};
}

Watch::Watch(const procedures::Procedure& procedure, const procedures::State& state, const Step& step,
             std::optional<KnownLine> line)
    : step_(step), line_(line) {
  const auto number = [&](const std::optional<procedures::Limit>& limit) -> std::optional<double> {
    if (!limit) return std::nullopt;
    const Expected<ReadQuantity> read = procedures::valueOf(procedure, state, *limit);
    return read ? std::optional(read->value_si) : std::nullopt;
  };
  wanted_rad_ = number(step.boom_angle);
  within_rad_ = number(step.within);
  hold_s_ =
      step.duration.empty() ? 0.0 : static_cast<double>(procedures::milliseconds(step.duration)) / 1000.0;
  const std::optional<double> low = number(procedures::Limit{.text = {}, .entry = "window-low"});
  const std::optional<double> high = number(procedures::Limit{.text = {}, .entry = "window-high"});
  if (low && high) window_rad_ = {*low, *high};
  hands_on_levers_ = state.open.contains(procedures::Hazard::RaisedBoom);
}

void Watch::Mover::look(double at, double before, double slope, double slope_u, double now_s,
                        const Pace& pace) {
  if (legs.empty()) {
    legs.push_back({at, at});
    rest = at;
  }
  // What the scatter could be as well is no movement, unless it is fast.
  const double speed = std::abs(slope);
  const bool moves = speed > pace.still && (speed > 4.0 * slope_u || speed > 10.0 * pace.still);
  if (moves && !moving) moving_since_s = now_s;
  if (!moves && moving) still_since_s = now_s;
  // The newest positions may belong to a movement that isn't seen yet.
  if (!moves && !moving) rest = now_s - still_since_s > pace.over_s ? before : at;
  moving = moves;
  if (moves) rising = slope > 0.0;
  Leg& leg = legs.back();
  const bool up = leg.to >= leg.from;
  if (std::abs(leg.to - leg.from) < pace.turn) {
    if (std::abs(at - leg.from) > std::abs(leg.to - leg.from)) leg.to = at;
  } else if (up ? at > leg.to : at < leg.to) {
    leg.to = at;
  } else if (std::abs(at - leg.to) > pace.turn) {
    const double turned_at = leg.to;
    legs.push_back({turned_at, at});
  }
}

void Watch::restart(double now_s) {
  boom_ = {.still_since_s = now_s};
  bucket_ = {.still_since_s = now_s};
  begun_ = false;
  held_ = false;
}

double Watch::position(const LiftRow& row) const {
  return line_ ? line_->line.angle(row.boom_sensor) : row.boom_sensor;
}

double Watch::stillSince_s() const { return std::max(boom_.still_since_s, bucket_.still_since_s); }

void Watch::follow(const Feed& feed, std::size_t index) {
  const LiveLimits& limits = feed.limits();
  const std::deque<LiftRow>& rows = feed.rows();
  const double now_s = rows[index].time_s;
  const auto move = [&](Mover& mover, double per_rad, auto field) {
    std::vector<std::pair<double, double>> recent;
    for (std::size_t count = 0; count <= index; ++count) {
      const std::size_t back = index - count;
      if (rows[back].time_s <= now_s - limits.speed_s) break;
      if (field(rows[back]))
        recent.emplace_back(rows[back].time_s, despiked(rows, back, now_s - limits.speed_s, field));
    }
    if (recent.empty()) return;
    const Slope slope = slopeOf(recent);
    mover.look(recent.front().second, recent.back().second, slope.value, slope.u, now_s,
               {.still = limits.still_rad_per_s * per_rad,
                .turn = limits.turn_rad * per_rad,
                .over_s = limits.speed_s});
  };
  const double boom_per_rad = line_ ? 1.0 : perRadian(feed.boomSensorUnit(), rows[index].boom_sensor, limits);
  move(boom_, boom_per_rad, [&](const LiftRow& row) { return std::optional(position(row)); });
  double bucket_per_rad = 1.0;
  if (feed.bucketSensorUnit()) {
    bucket_per_rad = perRadian(*feed.bucketSensorUnit(), rows[index].bucket_sensor.value_or(0.0), limits);
    move(bucket_, bucket_per_rad, [](const LiftRow& row) { return row.bucket_sensor; });
  }
  if (begun_ || boom_.legs.empty()) return;
  const double way = std::abs(boom_.legs.back().to - boom_.rest);
  if (boom_.moving && way > limits.begun_rad * boom_per_rad) {
    begun_ = true;
    begun_s_ = boom_.moving_since_s;
    begun_at_ = boom_.rest;
    boom_.legs = {{boom_.rest, boom_.legs.back().to}};
    trouble_.reset();
  } else if (step_.kind == StepKind::Pose && bucket_.moving &&
             std::abs(bucket_.legs.back().to - bucket_.rest) > limits.begun_rad * bucket_per_rad) {
    begun_ = true;
    begun_s_ = bucket_.moving_since_s;
    begun_at_ = position(rows[index]);
    trouble_.reset();
  }
}

Sight Watch::look(const Feed& feed, std::int64_t now_ms) {
  Sight sight;
  sight.alive = feed.isAlive(now_ms);
  sight.wanted_rad = wanted_rad_;
  sight.trouble = trouble_;
  sight.held = held_;
  sight.done = done_;
  if (feed.rows().empty()) return sight;
  if (line_ && line_->unit != feed.boomSensorUnit()) line_.reset();
  const std::deque<LiftRow>& rows = feed.rows();
  const bool gone = !sight.alive || feed.connection() != connection_ || feed.dropOuts() != drop_outs_;
  if (gone && !done_) {
    if (begun_ && step_.kind != StepKind::Reading) trouble_ = Message{"live-dropped-out", {}};
    restart(rows.back().time_s);
    looked_until_s_.reset();
  }
  connection_ = feed.connection();
  drop_outs_ = feed.dropOuts();
  sight.trouble = trouble_;
  sight.held = held_;
  if (!sight.alive) return sight;
  // Each row is looked at once; the first look begins with the newest.
  std::size_t first = rows.size() - 1;
  if (looked_until_s_) {
    first = rows.size();
    while (first > 0 && rows[first - 1].time_s > *looked_until_s_) --first;
  } else {
    restart(rows.back().time_s);
  }
  for (std::size_t index = first; index < rows.size(); ++index) follow(feed, index);
  looked_until_s_ = rows.back().time_s;
  const Mover& mover = boom_;
  if (mover.moving) sight.travel = mover.rising ? Travel::Up : Travel::Down;
  if (line_) {
    sight.boom_rad = position(*feed.current());
    if (wanted_rad_) sight.off_rad = *wanted_rad_ - *sight.boom_rad;
  }
  sight.bucket_reading = feed.current()->bucket_sensor;
  if (!done_) {
    if (step_.kind == StepKind::Reading) lookAtReading(feed, sight);
    if (step_.kind == StepKind::Pose) lookAtPose(feed, sight);
    if (step_.kind == StepKind::Pass) lookAtPass(feed, sight);
  }
  sight.begun = begun_;
  sight.trouble = trouble_;
  sight.held = held_;
  sight.done = done_ || (sight.steady && hands_on_levers_);
  if (sight.done) sight.progress = 1.0;
  return sight;
}

void Watch::lookAtReading(const Feed& feed, Sight& sight) const {
  if (step_.source != procedures::Source::Machine) return;
  const LiveLimits& limits = feed.limits();
  std::vector<double> values;
  std::optional<Dimension> dimension;
  const double until_s = feed.rows().back().time_s;
  for (auto row = feed.rows().rbegin(); row != feed.rows().rend() && row->time_s > until_s - limits.steady_s;
       ++row) {
    const std::optional<Value> value = valueOf(*row, feed, line_, step_.quantity);
    if (!value) continue;
    values.push_back(value->value_si);
    dimension = value->dimension;
  }
  if (values.size() < 3 || !dimension) return;
  std::optional<Unit> unit = findUnit(step_.unit);
  if (!unit || unit->dimension != *dimension) {
    unit.reset();
    for (const procedures::OtherUnit& other : step_.others) {
      const std::optional<Unit> found = findUnit(other.unit);
      if (found && found->dimension == *dimension) unit = found;
    }
  }
  if (!unit) return;
  const double middle = median(values);
  std::vector<double> off;
  off.reserve(values.size());
  for (const double value : values) off.push_back(std::abs(value - middle));
  const double spread = 1.4826 * median(off);  // robust standard deviation of a normal spread
  double mean = 0.0;
  std::size_t used = 0;
  for (const double value : values) {
    if (std::abs(value - middle) > 5.0 * spread && spread > 0.0) continue;  // a spike
    mean += value;
    ++used;
  }
  mean /= static_cast<double>(used);
  double most = limits.angle_spread_rad;
  if (*dimension == Dimension::Pressure) most = limits.pressure_spread_Pa;
  if (*dimension == Dimension::Temperature) most = limits.temperature_spread_K;
  if (*dimension == Dimension::Voltage || *dimension == Dimension::Number) {
    most = limits.angle_spread_rad * (*dimension == Dimension::Voltage
                                          ? perRadian(SensorUnit::Volt, middle, limits)
                                          : perRadian(SensorUnit::Count, middle, limits));
  }
  if (*dimension == Dimension::Frequency) most = limits.engine_spread_per_s;
  sight.value = rounded(unit->fromSi(mean), spread, *unit);
  sight.spread = rounded(spread * unit->divisor / unit->factor, spread, *unit);
  const bool moving = boom_.moving || bucket_.moving;
  sight.progress = moving ? 0.0 : std::clamp((until_s - stillSince_s()) / limits.steady_s, 0.0, 1.0);
  sight.steady = spread <= most && !moving && sight.progress >= 1.0;
}

void Watch::lookAtPose(const Feed& feed, Sight& sight) {
  const double hold_s = hold_s_ > 0.0 ? hold_s_ : feed.limits().hold_s;
  held_ = false;
  if (boom_.moving || bucket_.moving) {
    if (begun_) trouble_.reset();
    return;
  }
  const bool judged = sight.off_rad && within_rad_;
  if (judged && std::abs(*sight.off_rad) > *within_rad_) {
    if (begun_)
      trouble_ = Message{"live-not-at-pose",
                         {{"angle", Amount{*sight.boom_rad / kDegree, "deg", 1}},
                          {"wanted", Amount{*wanted_rad_ / kDegree, "deg", 1}}}};
    return;
  }
  const bool either = step_.approach == procedures::Approach::Either;
  // Nothing moved: it may stand there already, and only where an angle says so is that known.
  if (!begun_ && !(judged && either)) return;
  if (line_ && !either && !boom_.legs.empty()) {
    const bool rose = boom_.legs.back().to > boom_.legs.back().from;
    const bool from_below = step_.approach == procedures::Approach::FromBelow;
    if (rose != from_below) {
      trouble_ = Message{from_below ? "live-approach-from-below" : "live-approach-from-above", {}};
      return;
    }
  }
  trouble_.reset();
  sight.progress = std::clamp((feed.rows().back().time_s - stillSince_s()) / hold_s, 0.0, 1.0);
  held_ = sight.progress >= 1.0;
  // By itself only where the procedure says from when on it may be so.
  done_ = held_ && hold_s_ > 0.0;
}

void Watch::lookAtPass(const Feed& feed, Sight& sight) {
  const LiveLimits& limits = feed.limits();
  if (!begun_) return;
  const double now_s = feed.rows().back().time_s;
  const double at = position(feed.rows().back());
  const double seen = feed.seenSpan() * (line_ ? std::abs(line_->line.slope_rad_per_unit) : 1.0);
  sight.progress = seen > 0.0 ? std::clamp(std::abs(at - begun_at_) / seen, 0.0, 0.99) : 0.0;
  if (boom_.moving || now_s - boom_.still_since_s < limits.after_s) return;
  const auto refuse = [&](const char* code) {
    trouble_ = Message{code, {}};
    const double still_since_s = boom_.still_since_s;
    restart(still_since_s);
    boom_.rest = at;
  };
  // The longest way in one go counts; where no line is known, either way may be the one asked for.
  const bool up = step_.direction == procedures::Direction::Up;
  std::optional<Leg> longest;
  for (const Leg& leg : boom_.legs) {
    if (line_ && (leg.to > leg.from) != up) continue;
    if (!longest || std::abs(leg.to - leg.from) > std::abs(longest->to - longest->from)) longest = leg;
  }
  if (!longest || (line_ && std::abs(longest->to - longest->from) < limits.begun_rad)) {
    refuse(up ? "live-pass-went-down" : "live-pass-went-up");
    return;
  }
  const double low = std::min(longest->from, longest->to);
  const double high = std::max(longest->from, longest->to);
  const bool whole = line_ && window_rad_ ? low <= window_rad_->first && high >= window_rad_->second
                                          : high - low >= limits.full_share * seen;
  if (!whole) {
    refuse("live-pass-too-short");
    return;
  }
  log_ = feed.log(begun_s_ - limits.before_s, now_s);
  done_s_ = now_s;
  done_ = true;
}

std::vector<std::pair<double, double>> Watch::track(const Feed& feed, double rod_share) const {
  std::vector<std::pair<double, double>> points;
  if (!begun_ && !done_) return points;
  for (const LiftRow& row : feed.rows()) {
    if (row.time_s < begun_s_ || (done_ && row.time_s > done_s_)) continue;
    points.emplace_back(position(row), row.head_pressure_Pa - rod_share * row.rod_pressure_Pa.value_or(0.0));
  }
  if (points.size() <= kMostPoints) return points;
  std::vector<std::pair<double, double>> thinned;
  const double step = static_cast<double>(points.size()) / kMostPoints;
  for (std::size_t index = 0; index < kMostPoints; ++index) {
    thinned.push_back(points[static_cast<std::size_t>(static_cast<double>(index) * step)]);
  }
  return thinned;
}

}  // namespace hingepin::session
