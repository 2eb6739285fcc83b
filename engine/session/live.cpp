// SPDX-License-Identifier: Apache-2.0
#include "engine/session/live.h"

#include <algorithm>
#include <cmath>
#include <span>

#include "engine/calibration/angles.h"
#include "engine/procedures/evaluate.h"
#include "engine/session/fitting.h"
#include "engine/units/number.h"
#include "engine/units/ucum.h"

namespace hingepin::session {
namespace {

using calibration::LiftLog;
using calibration::LiftRow;
using calibration::SensorUnit;
using procedures::Step;
using procedures::StepKind;

constexpr std::size_t kMostLineBytes = 65536;
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

/// Speed over the last part of a second as the slope of a least-squares line, so that single noisy samples
/// tell nothing.
double slope(std::span<const std::pair<double, double>> points) {
  if (points.size() < 3) return 0.0;
  double mean_t = 0.0;
  double mean_x = 0.0;
  for (const auto& [t, x] : points) {
    mean_t += t;
    mean_x += x;
  }
  mean_t /= static_cast<double>(points.size());
  mean_x /= static_cast<double>(points.size());
  double above = 0.0;
  double below = 0.0;
  for (const auto& [t, x] : points) {
    above += (t - mean_t) * (x - mean_x);
    below += (t - mean_t) * (t - mean_t);
  }
  return below > 0.0 ? above / below : 0.0;
}

/// A mean with the digits that its spread leaves a meaning.
std::string rounded(double value_si, double spread_si, const Unit& unit) {
  const double value = unit.fromSi(value_si);
  const double spread = std::abs(spread_si) * unit.divisor / unit.factor;
  const int decimals =
      spread > 0.0 ? std::clamp(1 - static_cast<int>(std::floor(std::log10(spread))), 0, 5) : 4;
  const double scale = std::pow(10.0, decimals);
  double shown = std::round(value * scale) / scale;
  if (shown == 0.0) shown = 0.0;  // never "-0"
  return writeNumber(shown) + " " + std::string(unit.ucum);
}

}  // namespace

Feed::Feed(const Edge& edge, LiveLimits limits) : edge_(edge), limits_(limits) {}

void Feed::disconnected() {
  rest_.clear();
  cut_ = false;
  header_.clear();
}

bool Feed::isAlive(std::int64_t now_ms) const {
  return !rows_.empty() && now_ms - last_ms_ <= limits_.silent_ms;
}

double Feed::rowsPerSecond() const {
  if (rows_.size() < 2) return 0.0;
  const std::size_t used = std::min<std::size_t>(rows_.size(), 100);
  const double span_s = rows_.back().time_s - rows_[rows_.size() - used].time_s;
  return span_s > 0.0 ? static_cast<double>(used - 1) / span_s : 0.0;
}

void Feed::take(std::string_view bytes, std::int64_t at_ms) {
  while (!bytes.empty()) {
    const std::size_t end = bytes.find('\n');
    const std::string_view part = bytes.substr(0, end);
    if (!cut_) rest_ += part;
    if (rest_.size() > kMostLineBytes) {
      rest_.clear();
      cut_ = true;
      ++unreadable_;
    }
    if (end == std::string_view::npos) return;
    bytes.remove_prefix(end + 1);
    if (!cut_) {
      if (rest_.ends_with('\r')) rest_.pop_back();
      if (!rest_.empty()) line(rest_, at_ms);
    }
    rest_.clear();
    cut_ = false;
  }
}

bool Feed::header(std::string_view text) {
  const Expected<LiftLog> read = edge_.read_log(std::string(text) + "\n", "live");
  if (!read) {
    fault_ = read.error();
    return false;
  }
  header_ = text;
  boom_sensor_unit_ = read->boom_sensor_unit;
  bucket_sensor_unit_ = read->bucket_sensor_unit;
  rows_.clear();
  lines_.clear();
  fault_.reset();
  ++connection_;
  return true;
}

void Feed::line(std::string_view text, std::int64_t at_ms) {
  const bool named = text.find("time") != std::string_view::npos;
  if (header_.empty() || named) {
    if (!header(text)) ++unreadable_;
    return;
  }
  const Expected<LiftLog> read = edge_.read_log(header_ + "\n" + std::string(text) + "\n", "live");
  if (!read) {
    fault_ = read.error();
    ++unreadable_;
    return;
  }
  if (read->rows.empty()) return;
  const LiftRow& row = read->rows.front();
  if (!rows_.empty() && row.time_s <= rows_.back().time_s) {
    // A clock that began anew, or the same row twice.
    if (row.time_s > rows_.back().time_s - limits_.kept_s && row.time_s > rows_.front().time_s) return;
    rows_.clear();
    lines_.clear();
    ++connection_;
  }
  rows_.push_back(row);
  lines_.emplace_back(text);
  last_ms_ = at_ms;
  while (rows_.back().time_s - rows_.front().time_s > limits_.kept_s || rows_.size() > 200000) {
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
    : step_(step), line_(std::move(line)) {
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
  if (low && high) {
    window_known_ = true;
    window_low_rad_ = *low;
    window_high_rad_ = *high;
  }
}

void Watch::restart() {
  travel_ = Travel::Still;
  last_travel_ = Travel::Still;
  still_since_s_ = looked_until_s_;
  begun_ = false;
  done_ = false;
}

double Watch::position(const LiftRow& row) const {
  return line_ ? line_->line.angle(row.boom_sensor) : row.boom_sensor;
}

Sight Watch::look(const Feed& feed, std::int64_t now_ms) {
  Sight sight;
  sight.alive = feed.isAlive(now_ms);
  sight.wanted_rad = wanted_rad_;
  if (line_ && !feed.rows().empty() && line_->unit != feed.boomSensorUnit()) line_.reset();
  if (feed.connection() != connection_) {
    if (connection_ != 0 && begun_ && !done_) trouble_ = Message{"live-dropped-out", {}};
    connection_ = feed.connection();
    rows_looked_at_ = false;
    restart();
  }
  if (!sight.alive) {
    if (begun_ && !done_) trouble_ = Message{"live-dropped-out", {}};
    if (!done_) restart();
    sight.trouble = trouble_;
    sight.done = done_;
    return sight;
  }
  const LiveLimits& limits = feed.limits();
  const std::deque<LiftRow>& rows = feed.rows();
  // Only the rows since the last look decide about travel; each is looked at once.
  std::size_t first = rows.size();
  while (first > 0 && (!rows_looked_at_ || rows[first - 1].time_s > looked_until_s_)) --first;
  if (!rows_looked_at_) {
    first = rows.size() - 1;
    still_since_s_ = rows.back().time_s;
    rows_looked_at_ = true;
  }
  for (std::size_t index = first; index < rows.size(); ++index) {
    const double now_s = rows[index].time_s;
    std::vector<std::pair<double, double>> recent;
    for (std::size_t back = index + 1; back-- > 0 && rows[back].time_s > now_s - 0.4;) {
      recent.emplace_back(rows[back].time_s, position(rows[back]));
    }
    const double at = position(rows[index]);
    lowest_ = seen_ ? std::min(lowest_, at) : at;
    highest_ = seen_ ? std::max(highest_, at) : at;
    seen_ = true;
    const double reach = highest_ - lowest_;
    const double speed = slope(recent);
    const double still = line_ ? limits.still_rad_per_s : std::max(limits.still_share_per_s * reach, 1e-9);
    const Travel now = std::abs(speed) <= still ? Travel::Still : speed > 0 ? Travel::Up : Travel::Down;
    if (now != travel_) {
      if (now == Travel::Still) {
        still_since_s_ = now_s;
        last_travel_ = travel_;
      } else if (!begun_) {
        begun_s_ = now_s;
        begun_at_ = at;
      }
      travel_ = now;
    }
    if (travel_ != Travel::Still && !begun_) {
      const double way = std::abs(at - begun_at_);
      begun_ = way > (line_ ? limits.begun_rad : std::max(limits.begun_share * reach, 1e-9));
      if (begun_) trouble_.reset();
    }
    looked_until_s_ = now_s;
  }
  sight.travel = travel_;
  if (line_) sight.boom_rad = position(rows.back());
  sight.bucket_reading = rows.back().bucket_sensor;
  if (!done_) {
    if (step_.kind == StepKind::Reading) lookAtReading(feed, sight);
    if (step_.kind == StepKind::Pose) lookAtPose(feed, sight);
    if (step_.kind == StepKind::Pass) lookAtPass(feed, sight);
  }
  sight.trouble = trouble_;
  sight.done = done_;
  if (done_) sight.progress = 1.0;
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
    most = line_ ? limits.angle_spread_rad / std::abs(line_->line.slope_rad_per_unit)
                 : std::max(0.02 * (highest_ - lowest_), 0.005 * std::abs(middle));
  }
  const bool rests = travel_ == Travel::Still && until_s - still_since_s_ >= limits.steady_s;
  sight.value = rounded(mean, spread, *unit);
  sight.steady = spread <= most && rests;
  sight.progress = std::clamp((until_s - still_since_s_) / limits.steady_s, 0.0, 1.0);
}

void Watch::lookAtPose(const Feed& feed, Sight& sight) {
  const LiveLimits& limits = feed.limits();
  const double hold_s = hold_s_ > 0.0 ? hold_s_ : limits.hold_s;
  const double now_s = feed.rows().back().time_s;
  if (travel_ != Travel::Still) {
    sight.progress = 0.0;
    return;
  }
  if (wanted_rad_ && within_rad_ && sight.boom_rad &&
      std::abs(*sight.boom_rad - *wanted_rad_) > *within_rad_) {
    if (begun_)
      trouble_ = Message{"live-not-at-pose",
                         {{"angle", Amount{*sight.boom_rad * 57.29577951308232, "deg", 1}},
                          {"wanted", Amount{*wanted_rad_ * 57.29577951308232, "deg", 1}}}};
    return;
  }
  const bool wrong_side =
      (step_.approach == procedures::Approach::FromBelow && last_travel_ == Travel::Down) ||
      (step_.approach == procedures::Approach::FromAbove && last_travel_ == Travel::Up);
  if (wrong_side) {
    trouble_ = Message{step_.approach == procedures::Approach::FromBelow ? "live-approach-from-below"
                                                                         : "live-approach-from-above",
                       {}};
    return;
  }
  trouble_.reset();
  sight.progress = std::clamp((now_s - still_since_s_) / hold_s, 0.0, 1.0);
  // By itself only where the procedure says from when on it may be so.
  if (hold_s_ > 0.0 && sight.progress >= 1.0 && (begun_ || !sight.boom_rad || !wanted_rad_)) done_ = begun_;
}

void Watch::lookAtPass(const Feed& feed, Sight& sight) {
  const LiveLimits& limits = feed.limits();
  const double now_s = feed.rows().back().time_s;
  const double at = position(feed.rows().back());
  const double reach = std::max(highest_ - lowest_, 1e-9);
  const bool up = step_.direction == procedures::Direction::Up;
  if (!begun_) return;
  sight.progress = std::clamp(std::abs(at - begun_at_) / reach, 0.0, 0.99);
  if (travel_ != Travel::Still || now_s - still_since_s_ < limits.after_s) return;
  const Travel wanted = up ? Travel::Up : Travel::Down;
  if (last_travel_ != wanted) {
    trouble_ = Message{up ? "live-pass-went-down" : "live-pass-went-up", {}};
    begun_ = false;
    return;
  }
  const double low = std::min(at, begun_at_);
  const double high = std::max(at, begun_at_);
  const bool whole = line_ && window_known_ ? low <= window_low_rad_ && high >= window_high_rad_
                                            : high - low >= limits.full_share * reach;
  if (!whole) {
    trouble_ = Message{"live-pass-too-short", {}};
    begun_ = false;
    return;
  }
  log_ = feed.log(begun_s_ - limits.before_s, now_s);
  done_ = true;
}

std::vector<std::pair<double, double>> Watch::track(const Feed& feed, double rod_share) const {
  std::vector<std::pair<double, double>> points;
  if (!begun_ && !done_) return points;
  for (const LiftRow& row : feed.rows()) {
    if (row.time_s < begun_s_) continue;
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
