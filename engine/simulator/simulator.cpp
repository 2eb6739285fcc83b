// SPDX-License-Identifier: Apache-2.0
#include "engine/simulator/simulator.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <string>

#include "engine/units/degree.h"

namespace hingepin::simulator {

namespace {

constexpr std::array kMishaps = {
    MishapKind{Mishap::ColdOil, "mishap-cold-oil", "Cel", 5.0, -20.0, 30.0},
    MishapKind{Mishap::AirInOil, "mishap-air-in-oil", "%", 20.0, 2.0, 40.0},
    MishapKind{Mishap::WornSeal, "mishap-worn-seal", "1", 6.0, 2.0, 15.0},
    MishapKind{Mishap::LeakingCylinder, "mishap-leaking-cylinder", "deg/s", 0.5, 0.05, 3.0},
    MishapKind{Mishap::StickingPin, "mishap-sticking-pin", "%", 8.0, 2.0, 25.0},
    MishapKind{Mishap::SlippedAngleSensor, "mishap-slipped-angle-sensor", "deg", 4.0, -20.0, 20.0},
    MishapKind{Mishap::LooseConnector, "mishap-loose-connector", "%", 4.0, 0.5, 40.0},
    MishapKind{Mishap::PressureZeroOff, "mishap-pressure-zero-off", "bar", 4.0, -20.0, 20.0},
    MishapKind{Mishap::BlockedPressureLine, "mishap-blocked-pressure-line", "s", 1.5, 0.2, 10.0},
    MishapKind{Mishap::CushioningOn, "mishap-cushioning-on", "deg", 20.0, 5.0, 40.0},
    MishapKind{Mishap::SuspensionOn, "mishap-suspension-on", "L", 3.0, 0.5, 10.0},
    MishapKind{Mishap::BucketNotRacked, "mishap-bucket-not-racked", "mm", 60.0, 5.0, 200.0},
    MishapKind{Mishap::DirtyBucket, "mishap-dirty-bucket", "kg", 150.0, 10.0, 1000.0},
    MishapKind{Mishap::SlopingGround, "mishap-sloping-ground", "deg", 3.0, -10.0, 10.0},
    MishapKind{Mishap::SoftTyre, "mishap-soft-tyre", "%", 40.0, 10.0, 90.0},
    MishapKind{Mishap::WrongAttachment, "mishap-wrong-attachment", "kg", 300.0, -800.0, 2000.0},
};

/// What the mishaps do to the readings rather than to the machine.
struct Readout {
  double slip_rad = 0.0;
  double off_share = 0.0;  // of the time without contact
  double lag_s = 0.0;      // of the head pressure
};

/// The mishap's doing, on the machine, on the way it is driven and on what is read.
void happen(const Happening& happening, Machine& machine, Lift& lift, Readout& readout) {
  const double size = happening.size;
  LiftHydraulics& h = machine.hydraulics;
  Friction& f = machine.friction;
  switch (happening.mishap) {
    case Mishap::ColdOil:
      lift.oil_Cel = size;
      break;
    case Mishap::AirInOil:
      h.air_share += size / 100.0;
      break;
    case Mishap::WornSeal:
      // Of a seal that was usual before, however good this one is.
      f.seal_N_per_Pa = size * std::max(f.seal_N_per_Pa, 0.6e-4 * h.bore_m / 0.13);
      f.seal_preload_N *= size;
      f.breakaway_ratio = 1.0 + 1.5 * (f.breakaway_ratio - 1.0);
      break;
    case Mishap::LeakingCylinder: {
      // Sinks at `size` with the pressure of a half-full bucket, 90 bar, on the mean moment arm.
      const double arm = (h.longest_m - h.shortest_m) / (machine.highest_rad - machine.lowest_rad);
      h.piston_leak_m3_per_s_Pa = size * kDegree * arm * headArea(h) / 90e5;
      break;
    }
    case Mishap::StickingPin:
      f.bush_catch_share = size / 100.0;
      break;
    case Mishap::SlippedAngleSensor:
      readout.slip_rad = size * kDegree;
      break;
    case Mishap::LooseConnector:
      readout.off_share = size / 100.0;
      break;
    case Mishap::PressureZeroOff:
      machine.head_sensor.zero_Pa += size * 1e5;
      break;
    case Mishap::BlockedPressureLine:
      readout.lag_s = size;
      break;
    case Mishap::CushioningOn:
      for (Move& m : lift.plan.moves) {
        m.slow_down_rad = size * kDegree;
        m.slow_down_to = 0.08;
      }
      break;
    case Mishap::SuspensionOn:
      h.suspension_gas_m3 = size * 1e-3;
      break;
    case Mishap::BucketNotRacked:
      machine.tilt_length_m -= size * 1e-3;
      break;
    case Mishap::DirtyBucket: {
      // Mud sits where heel and floor meet: weigh it in with the bucket.
      Part& bucket = machine.parts.bucket;
      const double heel_along = 0.15;
      const double both = bucket.mass_kg + size;
      bucket.along_m = (bucket.mass_kg * bucket.along_m + size * heel_along) / both;
      bucket.across_m = (bucket.mass_kg * bucket.across_m + size * 0.0) / both;
      bucket.mass_kg = both;
      break;
    }
    case Mishap::SlopingGround:
      lift.slope_rad += size * kDegree;
      break;
    case Mishap::SoftTyre:
      machine.frame.tyre_stiffness_N_m_per_rad *= 1.0 - size / 100.0;
      break;
    case Mishap::WrongAttachment:
      machine.parts.bucket.inertia_kg_m2 *= 1.0 + size / machine.parts.bucket.mass_kg;
      machine.parts.bucket.mass_kg = std::max(50.0, machine.parts.bucket.mass_kg + size);
      break;
  }
}

double toStep(double value, double step) { return step > 0.0 ? std::round(value / step) * step : value; }

double read(const AngleSensor& s, double angle_rad) {
  const double ripple = s.first_rad * std::sin(angle_rad + s.first_phase_rad) +
                        s.second_rad * std::sin(2.0 * angle_rad + s.second_phase_rad);
  return s.offset + s.gain_per_rad * (angle_rad + ripple);
}

double read(const PressureSensor& s, double pressure_Pa, double oil_Cel, double time_s) {
  const double u = std::clamp(pressure_Pa / s.range_Pa, 0.0, 1.0);
  // Both shapes have a largest value of 1.
  const double bow = 4.0 * u * (1.0 - u);
  const double s_shape = 6.0 * std::numbers::sqrt3 * u * (1.0 - u) * (1.0 - 2.0 * u);
  return pressure_Pa * (1.0 + s.span_error) + s.range_Pa * (s.bow * bow + s.s_shape * s_shape) + s.zero_Pa +
         s.zero_Pa_per_K * (oil_Cel - 50.0) + s.drift_Pa_per_s * time_s;
}

double digital(const AngleSensor& s, double value, Random& random) {
  value = toStep(value + s.noise_sd * random.normal(), s.step);
  switch (s.output) {
    case AngleOutput::Volt:
      return std::clamp(value, 0.0, 5.0);
    case AngleOutput::Count:
      return std::clamp(value, 0.0, 4095.0);
    case AngleOutput::Degree:
      break;
  }
  return value;
}

double digital(const PressureSensor& s, double value_Pa, Random& random) {
  return std::clamp(toStep(value_Pa + s.noise_sd_Pa * random.normal(), s.step_Pa), 0.0, s.range_Pa);
}

/// State between two steps, along the line.
Instant between(const std::vector<Instant>& instants, double time_s) {
  const double step_s = instants.size() > 1 ? instants[1].time_s : 1.0;
  const double place = std::clamp(time_s / step_s, 0.0, static_cast<double>(instants.size() - 1));
  const auto i = std::min(static_cast<std::size_t>(place), instants.size() - 2);
  const double u = place - static_cast<double>(i);
  const Instant& a = instants[i];
  const Instant& b = instants[i + 1];
  const auto mix = [u](double from, double to) { return from + u * (to - from); };
  return {time_s,
          mix(a.boom_rad, b.boom_rad),
          mix(a.boom_rad_per_s, b.boom_rad_per_s),
          mix(a.pitch_rad, b.pitch_rad),
          mix(a.head_Pa, b.head_Pa),
          mix(a.rod_Pa, b.rod_Pa),
          mix(a.cylinder_head_Pa, b.cylinder_head_Pa),
          mix(a.pitch_rad_per_s, b.pitch_rad_per_s)};
}

/// A blocked line's pressure follows the true one as through a leaky capacitor.
void lag(std::vector<Instant>& instants, double lag_s) {
  if (lag_s <= 0.0 || instants.size() < 2) return;
  const double share = -std::expm1(-instants[1].time_s / lag_s);
  double follows = instants.front().head_Pa;
  for (Instant& instant : instants) {
    follows += share * (instant.head_Pa - follows);
    instant.head_Pa = follows;
  }
}

struct Ready {
  Machine machine;
  Lift lift;
  Readout readout;
  Motion motion;
};

Expected<Ready> run(const Machine& machine, const Lift& lift) {
  Ready ready{machine, lift, {}, {}};
  for (const Happening& happening : lift.happenings) {
    const MishapKind& kind = kindOf(happening.mishap);
    if (!(happening.size >= kind.least && happening.size <= kind.most)) {
      return fail(ErrorKind::InvalidInput, "simulator-mishap-size",
                  {{"mishap", std::string(kind.code)},
                   {"low", Amount{kind.least, std::string(kind.ucum), 1}},
                   {"high", Amount{kind.most, std::string(kind.ucum), 1}}});
    }
    happen(happening, ready.machine, ready.lift, ready.readout);
  }
  auto motion = move(ready.machine, ready.lift.load.value_or(Part{}), ready.lift.oil_Cel,
                     ready.lift.slope_rad, ready.lift.plan);
  if (!motion) return std::unexpected(motion.error());
  ready.motion = std::move(*motion);
  return ready;
}

/// The bucket sensor's angle over the travel: its own small table, for the loops are dear to close at every
/// sample.
class BellcrankAngle {
 public:
  static Expected<BellcrankAngle> make(const Machine& machine) {
    const auto linkage = linkage::Linkage::make(machine.as_built);
    if (!linkage) return std::unexpected(linkage.error());
    BellcrankAngle table;
    table.low_rad_ = machine.lowest_rad - kDegree;
    for (double boom = table.low_rad_; boom < machine.highest_rad + kDegree + kStep_rad; boom += kStep_rad) {
      const auto tilt = linkage->tilt(boom, machine.tilt_length_m);
      if (!tilt) break;
      table.angles_rad_.push_back(tilt->bellcrank_by_boom);
    }
    return table;
  }
  [[nodiscard]] double at(double boom_rad) const {
    const double place = (boom_rad - low_rad_) / kStep_rad;
    const auto i = static_cast<std::size_t>(
        std::clamp(std::round(place), 0.0, static_cast<double>(angles_rad_.size() - 1)));
    const double off = (place - static_cast<double>(i)) * kStep_rad;
    const linkage::Derivatives& d = angles_rad_[i];
    return d.value + off * (d.first + 0.5 * off * d.second);
  }

 private:
  static constexpr double kStep_rad = 0.5 * kDegree;
  double low_rad_ = 0.0;
  std::vector<linkage::Derivatives> angles_rad_;
};

}  // namespace

std::span<const MishapKind> mishapKinds() { return kMishaps; }

const MishapKind& kindOf(Mishap mishap) {
  return *std::find_if(kMishaps.begin(), kMishaps.end(),
                       [&](const MishapKind& k) { return k.mishap == mishap; });
}

Expected<LiftRecord> simulate(const Machine& original, const Lift& asked, Random random) {
  auto ready = run(original, asked);
  if (!ready) return std::unexpected(ready.error());
  const Machine& machine = ready->machine;
  const Lift& lift = ready->lift;
  const Logging& log = lift.logging;
  const auto bellcrank = BellcrankAngle::make(machine);
  if (!bellcrank) return std::unexpected(bellcrank.error());

  std::vector<Instant> seen = ready->motion.instants;
  lag(seen, ready->readout.lag_s);

  const double end_s = seen.back().time_s;
  const double period_s = 1.0 / log.rate_Hz;
  // A stamp keeps its place among its neighbours, so that time always rises.
  const double most_s = 0.45 * period_s;
  const double stamp_step_s = log.rate_Hz > 200.0 ? 1e-5 : 1e-4;
  const double slip_s = end_s * random.uniform(0.35, 0.6);
  const double pitch_offset_rad = 0.1 * kDegree * random.normal();
  const double thermometer_K = 0.8 * random.normal();
  double off_until_s = -1.0;

  LiftRecord record;
  record.rows.reserve(static_cast<std::size_t>(end_s * log.rate_Hz) + 1);
  for (std::size_t k = 0; static_cast<double>(k) * period_s <= end_s; ++k) {
    const double moved_s = std::clamp(log.jitter_s * random.normal(), -0.5 * most_s, 0.5 * most_s);
    const double error_s = std::clamp(log.stamp_error_s * random.normal(), -0.5 * most_s, 0.5 * most_s);
    const double true_s = std::clamp(static_cast<double>(k) * period_s + moved_s, 0.0, end_s);
    const Instant at = between(seen, true_s);
    const double slip_rad = true_s >= slip_s ? ready->readout.slip_rad : 0.0;

    LogRow row{};
    row.time_s = std::max(0.0, toStep(static_cast<double>(k) * period_s + moved_s + error_s, stamp_step_s));
    row.boom_sensor = digital(machine.boom_sensor, read(machine.boom_sensor, at.boom_rad + slip_rad), random);
    row.bucket_sensor =
        digital(machine.bucket_sensor, read(machine.bucket_sensor, bellcrank->at(at.boom_rad)), random);
    row.head_pressure_Pa =
        digital(machine.head_sensor, read(machine.head_sensor, at.head_Pa, lift.oil_Cel, true_s), random);
    row.rod_pressure_Pa =
        digital(machine.rod_sensor, read(machine.rod_sensor, at.rod_Pa, lift.oil_Cel, true_s), random);
    row.engine_speed_per_min = std::round(machine.engine_speed_per_min + 4.0 * random.normal());
    row.pitch_rad = toStep(
        at.pitch_rad + lift.slope_rad + pitch_offset_rad + 0.05 * kDegree * random.normal(), 0.01 * kDegree);
    row.oil_temperature_Cel = std::round(lift.oil_Cel + thermometer_K);

    if (ready->readout.off_share > 0.0) {
      // Contact goes for 0.05 to 0.25 s at a time.
      const double mean_s = 0.15;
      if (true_s >= off_until_s && random.uniform() < ready->readout.off_share * period_s / mean_s) {
        off_until_s = true_s + random.uniform(0.05, 0.25);
      }
      if (true_s < off_until_s) row.boom_sensor = 0.0;
    }
    if (random.uniform() < log.spike_share) {
      *row.head_pressure_Pa =
          toStep(machine.head_sensor.range_Pa * random.uniform(0.0, 1.0), machine.head_sensor.step_Pa);
    }
    if (random.uniform() < log.spike_share) {
      row.boom_sensor =
          digital(machine.boom_sensor,
                  read(machine.boom_sensor, random.uniform(machine.lowest_rad, machine.highest_rad)), random);
    }
    for (auto* cell : {&row.boom_sensor, &row.bucket_sensor, &row.head_pressure_Pa, &row.rod_pressure_Pa,
                       &row.engine_speed_per_min, &row.pitch_rad, &row.oil_temperature_Cel}) {
      if (random.uniform() < log.missing_cell_share) cell->reset();
    }
    if (!log.rod_pressure) row.rod_pressure_Pa.reset();
    if (!log.bucket_sensor) row.bucket_sensor.reset();
    if (!log.engine_speed) row.engine_speed_per_min.reset();
    if (!log.pitch) row.pitch_rad.reset();
    if (!log.oil_temperature) row.oil_temperature_Cel.reset();
    if (random.uniform() >= log.dropped_share) record.rows.push_back(row);
  }
  record.truth = std::move(ready->motion);
  return record;
}

Expected<std::vector<LogRow>> readStations(const Machine& original, const Lift& asked,
                                           const MonitorSteps& steps, Random random) {
  auto ready = run(original, asked);
  if (!ready) return std::unexpected(ready.error());
  const Machine& machine = ready->machine;
  const auto bellcrank = BellcrankAngle::make(machine);
  if (!bellcrank) return std::unexpected(bellcrank.error());
  lag(ready->motion.instants, ready->readout.lag_s);

  std::vector<LogRow> rows;
  for (const double held_s : ready->motion.held_s) {
    // A monitor shows a mean of half a second or so.
    constexpr int kShown = 10;
    double head = 0.0;
    double rod = 0.0;
    for (int i = 0; i < kShown; ++i) {
      const double at_s = held_s - 0.05 * i;
      const Instant at = between(ready->motion.instants, at_s);
      head += digital(machine.head_sensor, read(machine.head_sensor, at.head_Pa, ready->lift.oil_Cel, at_s),
                      random);
      rod +=
          digital(machine.rod_sensor, read(machine.rod_sensor, at.rod_Pa, ready->lift.oil_Cel, at_s), random);
    }
    const Instant at = between(ready->motion.instants, held_s);
    LogRow row{};
    row.time_s = held_s;
    row.boom_sensor = readAtRest(machine.boom_sensor, at.boom_rad, steps.angle, random);
    row.bucket_sensor = readAtRest(machine.bucket_sensor, bellcrank->at(at.boom_rad), steps.angle, random);
    row.head_pressure_Pa = toStep(head / kShown, steps.pressure_Pa);
    row.rod_pressure_Pa = toStep(rod / kShown, steps.pressure_Pa);
    row.oil_temperature_Cel = toStep(ready->lift.oil_Cel, steps.temperature_K);
    if (!asked.logging.rod_pressure) row.rod_pressure_Pa.reset();
    if (!asked.logging.bucket_sensor) row.bucket_sensor.reset();
    if (!asked.logging.oil_temperature) row.oil_temperature_Cel.reset();
    rows.push_back(row);
  }
  return rows;
}

double readAtRest(const AngleSensor& sensor, double angle_rad, double step, Random& random) {
  double sum = 0.0;
  constexpr int kShown = 10;
  for (int i = 0; i < kShown; ++i) sum += digital(sensor, read(sensor, angle_rad), random);
  return toStep(sum / kShown, step);
}

Plan onePass(double from_rad, double to_rad, double speed_rad_per_s) {
  Plan plan;
  plan.from_rad = from_rad;
  plan.seal_state = to_rad > from_rad ? -1.0 : 1.0;
  Move m;
  m.to_rad = to_rad;
  m.speed_rad_per_s = speed_rad_per_s;
  // A driver eases off in time: half a second before the end.
  m.slow_down_rad = std::max(m.slow_down_rad, 0.5 * speed_rad_per_s);
  plan.moves = {m};
  return plan;
}

Plan stationsFromBelow(double from_rad, std::span<const double> stations_rad, double speed_rad_per_s) {
  Plan plan;
  plan.from_rad = from_rad;
  plan.seal_state = -1.0;
  for (const double station : stations_rad) {
    Move m;
    m.to_rad = station;
    m.speed_rad_per_s = speed_rad_per_s;
    // Feathered, so that the boom does not swing back over its friction.
    m.slow_down_rad = 4.0 * kDegree;
    m.slow_down_to = 0.03;
    m.stop_s = 0.4;
    m.hold_s = 3.0;
    plan.moves.push_back(m);
  }
  return plan;
}

Part loadAt(double mass_kg, double along_m, double across_m) {
  // A heap or a block of half a metre either way.
  return {mass_kg, along_m, across_m, mass_kg * 0.15};
}

}  // namespace hingepin::simulator
