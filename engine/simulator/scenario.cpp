// SPDX-License-Identifier: Apache-2.0
#include "engine/simulator/scenario.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <nlohmann/json.hpp>
#include <numbers>
#include <string_view>

#include "engine/units/degree.h"

namespace hingepin::simulator {

namespace {

using Json = nlohmann::ordered_json;

/// Fixed decimals without the zeros at the end.
std::string quantity(double value, int decimals, std::string_view ucum) {
  std::string text = fmt::format("{:.{}f}", value, decimals);
  if (decimals > 0) {
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
  }
  if (text == "-0") text = "0";
  return text.append(" ").append(ucum);
}

struct Column {
  std::string_view ucum;
  double per_si;  // of the value that the row holds
  int decimals;
};

Column angleColumn(const AngleSensor& sensor, bool millivolts) {
  switch (sensor.output) {
    case AngleOutput::Volt:
      return millivolts ? Column{"mV", 1000.0, 1} : Column{"V", 1.0, 4};
    case AngleOutput::Count:
      return {"1", 1.0, 0};
    case AngleOutput::Degree:
      break;
  }
  return {"deg", 1.0, 3};
}

Column pressureColumn(std::string_view ucum) {
  if (ucum == "kPa") return {"kPa", 1e-3, 1};
  if (ucum == "MPa") return {"MPa", 1e-6, 4};
  if (ucum == "[psi]") return {"[psi]", 1.0 / 6894.757293168, 2};
  return {"bar", 1e-5, 3};
}

double temperatureIn(std::string_view ucum, double cel) {
  return ucum == "K" ? cel + 273.15 : ucum == "[degF]" ? 1.8 * cel + 32.0 : cel;
}

std::string angleReading(const AngleSensor& sensor, double value) {
  const Column column = angleColumn(sensor, false);
  return quantity(value, column.decimals, column.ucum);
}

double monitorStep(const AngleSensor& sensor) {
  return sensor.output == AngleOutput::Volt ? 0.01 : sensor.output == AngleOutput::Count ? 1.0 : 0.1;
}

std::string metres(Length length) { return quantity(length.inMetres(), 4, "m"); }
std::string degrees(double rad) { return quantity(rad / kDegree, 2, "deg"); }
Json pin(const linkage::Pin& p) { return {metres(p.along), metres(p.across)}; }

Json linkageJson(const linkage::ZBarGeometry& g) {
  return {{"boom_length", metres(g.boom_length)},
          {"boom_pivot_height", metres(g.boom_pivot_height)},
          {"lift_frame_pin", pin(g.lift_frame_pin)},
          {"lift_boom_pin", pin(g.lift_boom_pin)},
          {"tilt_frame_pin", pin(g.tilt_frame_pin)},
          {"bellcrank_pivot", pin(g.bellcrank_pivot)},
          {"bellcrank_tilt_arm", metres(g.bellcrank_tilt_arm)},
          {"bellcrank_link_arm", metres(g.bellcrank_link_arm)},
          {"bellcrank_angle", degrees(g.bellcrank_angle.inRadians())},
          {"link_length", metres(g.link_length)},
          {"bucket_pin_distance", metres(g.bucket_pin_distance)},
          {"bucket_pin_angle", degrees(g.bucket_pin_angle.inRadians())},
          {"tilt_cylinder_retracted", metres(g.tilt_cylinder_retracted)},
          {"tilt_cylinder_extended", metres(g.tilt_cylinder_extended)}};
}

Expected<Json> posesJson(const Machine& machine, const JobParts& parts, Random random) {
  const auto linkage = linkage::Linkage::make(machine.as_built);
  if (!linkage) return std::unexpected(linkage.error());
  struct Pose {
    const char* name;
    double boom_rad;
    double tilt_m;
    double u_deg;  // 0: no angle given
  };
  const double racked_m = machine.tilt_length_m;
  const double dumped_m = machine.as_built.tilt_cylinder_retracted.inMetres();
  Json poses = Json::array();
  for (const Pose& pose : {Pose{"boom-lowest", machine.lowest_rad, racked_m, parts.pose_u_deg[0]},
                           Pose{"boom-highest", machine.highest_rad, racked_m, parts.pose_u_deg[1]},
                           Pose{"boom-reference", machine.reference_rad, racked_m, parts.pose_u_deg[2]},
                           Pose{"bucket-dumped", machine.reference_rad, dumped_m, 0.0},
                           Pose{"bucket-racked", machine.reference_rad, racked_m, 0.0}}) {
    const auto tilt = linkage->tilt(pose.boom_rad, pose.tilt_m);
    if (!tilt) return std::unexpected(tilt.error());
    Json entry = {{"pose", pose.name}};
    if (pose.u_deg > 0.0) {
      // What is known of the boom there misses the truth by its uncertainty.
      entry["boom_angle"] = quantity(pose.boom_rad / kDegree + pose.u_deg * random.normal(), 1, "deg");
      entry["boom_angle_u"] = quantity(pose.u_deg, 2, "deg");
    }
    const AngleSensor& boom = machine.boom_sensor;
    const AngleSensor& bucket = machine.bucket_sensor;
    entry["boom_sensor"] = angleReading(boom, readAtRest(boom, pose.boom_rad, monitorStep(boom), random));
    entry["bucket_sensor"] =
        angleReading(bucket, readAtRest(bucket, tilt->bellcrank_by_boom.value, monitorStep(bucket), random));
    poses.push_back(entry);
  }
  return poses;
}

Json pointsJson(const Machine& machine, const std::vector<LogRow>& rows) {
  Json points = Json::array();
  for (const LogRow& row : rows) {
    Json point;
    if (row.boom_sensor) point["boom_sensor"] = angleReading(machine.boom_sensor, *row.boom_sensor);
    if (row.head_pressure_Pa) point["head_pressure"] = quantity(*row.head_pressure_Pa / 1e5, 1, "bar");
    if (row.rod_pressure_Pa) point["rod_pressure"] = quantity(*row.rod_pressure_Pa / 1e5, 1, "bar");
    if (row.bucket_sensor) point["bucket_sensor"] = angleReading(machine.bucket_sensor, *row.bucket_sensor);
    if (row.oil_temperature_Cel) point["oil_temperature"] = quantity(*row.oil_temperature_Cel, 1, "Cel");
    points.push_back(point);
  }
  return points;
}

Json truthOf(const JobLift& lift) {
  Json truth = {{"file", lift.file}, {"kind", lift.kind}, {"pace", lift.pace}};
  if (lift.lift.load) {
    truth["mass_kg"] = lift.lift.load->mass_kg;
    truth["centre_along_m"] = lift.lift.load->along_m;
    truth["centre_across_m"] = lift.lift.load->across_m;
  }
  truth["oil_Cel"] = lift.lift.oil_Cel;
  truth["slope_deg"] = lift.lift.slope_rad / kDegree;
  truth["from_deg"] = lift.lift.plan.from_rad / kDegree;
  if (!lift.lift.plan.moves.empty()) {
    truth["to_deg"] = lift.lift.plan.moves.back().to_rad / kDegree;
    truth["speed_deg_per_s"] = lift.lift.plan.moves.back().speed_rad_per_s / kDegree;
  }
  for (const Happening& h : lift.lift.happenings) {
    const MishapKind& kind = kindOf(h.mishap);
    truth["happenings"].push_back({{"code", kind.code}, {"size", h.size}, {"unit", kind.ucum}});
  }
  return truth;
}

Json truthOf(const PressureSensor& s) {
  return {{"range_Pa", s.range_Pa},      {"span_error", s.span_error}, {"bow", s.bow},
          {"s_shape", s.s_shape},        {"zero_Pa", s.zero_Pa},       {"zero_Pa_per_K", s.zero_Pa_per_K},
          {"noise_sd_Pa", s.noise_sd_Pa}};
}

Json truthOf(const Machine& m) {
  return {{"id", m.id},
          {"operating_mass_kg", m.operating_mass_kg},
          {"rated_payload_kg", m.rated_payload_kg},
          {"gravity_m_per_s2", m.gravity_m_per_s2},
          {"load_friction_share", m.load_friction_share},
          {"oil_at_40_Cel_mm2_per_s", m.oil.at_40_Cel_mm2_per_s},
          {"heap_along_m", m.heap_true_along_m},
          {"heap_across_m", m.heap_true_across_m},
          {"bucket_kg", m.parts.bucket.mass_kg},
          {"coupler_kg", m.parts.coupler.mass_kg},
          {"tyre_stiffness_N_m_per_rad", m.frame.tyre_stiffness_N_m_per_rad},
          {"boom_sensor_gain_per_rad", m.boom_sensor.gain_per_rad},
          {"boom_sensor_offset", m.boom_sensor.offset},
          {"head_sensor", truthOf(m.head_sensor)},
          {"rod_sensor", truthOf(m.rod_sensor)}};
}

std::string textOf(const Json& json) { return json.dump(2) + "\n"; }

Part drawHeap(const Machine& machine, double mass_kg, Random& random) {
  // One after the other: compilers differ in which argument of a call they draw first.
  const double across_m = machine.heap_true_across_m + kHeapScatter_m * random.normal();
  const double along_m = machine.heap_true_along_m + kHeapScatter_m * random.normal();
  return loadAt(mass_kg, along_m, across_m);
}

Part drawTestMass(const Machine& machine, double mass_kg, Random& random) {
  // A block is set down by hand near the middle of the bucket.
  const double across_m = machine.heap_across_m + 0.08 * random.normal();
  const double along_m = machine.heap_along_m + 0.08 * random.normal();
  return loadAt(mass_kg, along_m, across_m);
}

constexpr std::size_t kDrawnLoads = 4;

/// How one machine's logger behaves; the same for all its logs.
struct Logger {
  Logging logging;
  LogStyle style;
};

Logger drawLogger(Random& random) {
  Logger logger;
  Logging& log = logger.logging;
  log.rate_Hz = random.uniform() < 0.6 ? 50.0 : std::round(random.uniform(20.0, 100.0));
  log.jitter_s = random.uniform(0.0, 0.08) / log.rate_Hz;
  log.stamp_error_s = random.uniform(0.0, 0.08) / log.rate_Hz;
  log.missing_cell_share = random.uniform(0.0, 0.01);
  log.dropped_share = random.uniform(0.0, 0.01);
  log.spike_share = random.uniform() < 0.3 ? random.uniform(0.0, 0.002) : 0.0;
  log.rod_pressure = random.uniform() < 0.9;
  log.bucket_sensor = random.uniform() < 0.8;
  log.engine_speed = random.uniform() < 0.5;
  log.pitch = random.uniform() < 0.3;
  log.oil_temperature = random.uniform() < 0.9;
  logger.style.milliseconds = random.uniform() < 0.2;
  logger.style.millivolts = random.uniform() < 0.1;
  constexpr std::array kPressures = {"bar", "bar", "bar", "kPa", "MPa", "[psi]"};
  logger.style.pressure = kPressures[random.bits() % kPressures.size()];
  logger.style.temperature = random.uniform() < 0.8 ? "Cel" : "[degF]";
  return logger;
}

JobLift drawLift(const Machine& machine, const Logger& logger, Random& random, std::string kind,
                 std::string pace, std::string file, double from_rad, double to_rad, double speed_rad_per_s) {
  JobLift lift;
  lift.kind = std::move(kind);
  lift.pace = std::move(pace);
  lift.file = std::move(file);
  lift.style = logger.style;
  if (machine.boom_sensor.output != AngleOutput::Volt || machine.bucket_sensor.output != AngleOutput::Volt) {
    lift.style.millivolts = false;
  }
  lift.lift.logging = logger.logging;
  lift.lift.oil_Cel = random.uniform(40.0, 75.0);
  // Level ground as a person finds it by eye or on a yard's slab (judgement).
  lift.lift.slope_rad = 0.3 * kDegree * random.normal();
  lift.lift.plan = onePass(from_rad, to_rad, speed_rad_per_s);
  lift.lift.plan.lever_phase_rad = random.uniform(0.0, 2.0 * std::numbers::pi);
  lift.lift.plan.lever_wobble = random.uniform(0.0, 0.03);
  lift.lift.plan.moves[0].ramp_s = random.uniform(0.4, 1.0);
  return lift;
}

}  // namespace

std::string csvOf(const Machine& machine, const std::vector<LogRow>& rows, const LogStyle& style) {
  struct Field {
    std::string_view name;
    Column column;
    std::optional<double> LogRow::* cell;
  };
  const Column pressure = pressureColumn(style.pressure);
  const std::array fields = {
      Field{"boom_sensor", angleColumn(machine.boom_sensor, style.millivolts), &LogRow::boom_sensor},
      Field{"bucket_sensor", angleColumn(machine.bucket_sensor, style.millivolts), &LogRow::bucket_sensor},
      Field{"head_pressure", pressure, &LogRow::head_pressure_Pa},
      Field{"rod_pressure", pressure, &LogRow::rod_pressure_Pa},
      Field{"engine_speed", {"/min", 1.0, 0}, &LogRow::engine_speed_per_min},
      Field{"pitch", {"deg", 1.0 / kDegree, 2}, &LogRow::pitch_rad},
      Field{"oil_temperature", {style.temperature, 1.0, 1}, &LogRow::oil_temperature_Cel},
  };
  std::vector<const Field*> used;
  for (const Field& field : fields) {
    const bool required = field.cell == &LogRow::boom_sensor || field.cell == &LogRow::head_pressure_Pa;
    if (required ||
        std::any_of(rows.begin(), rows.end(), [&](const LogRow& r) { return (r.*field.cell).has_value(); })) {
      used.push_back(&field);
    }
  }

  std::string text = style.milliseconds ? "time [ms]" : "time [s]";
  for (const Field* field : used) text += fmt::format(",{} [{}]", field->name, field->column.ucum);
  text += "\n";
  text.reserve(text.size() + rows.size() * 64);
  for (const LogRow& row : rows) {
    fmt::format_to(std::back_inserter(text), "{:.{}f}", row.time_s * (style.milliseconds ? 1e3 : 1.0),
                   style.milliseconds ? 2 : 5);
    for (const Field* field : used) {
      text += ',';
      const std::optional<double>& cell = row.*field->cell;
      if (!cell) continue;
      const double value = field->cell == &LogRow::oil_temperature_Cel
                               ? temperatureIn(style.temperature, *cell)
                               : *cell * field->column.per_si;
      fmt::format_to(std::back_inserter(text), "{:.{}f}", value, field->column.decimals);
    }
    text += '\n';
  }
  return text;
}

Expected<Files> filesOf(const Scenario& scenario, Random random) {
  const Machine& machine = scenario.machine;
  const JobParts& parts = scenario.parts;
  Files files;
  Json truth = {{"note", scenario.note}, {"machine", truthOf(machine)}};

  Json unit = {{"id", machine.id},
               {"lift_cylinders",
                {{"count", machine.hydraulics.cylinders},
                 {"bore", quantity(machine.hydraulics.bore_m * 1e3, 1, "mm")},
                 {"rod", quantity(machine.hydraulics.rod_m * 1e3, 1, "mm")}}},
               {"rated_payload", quantity(machine.rated_payload_kg, 0, "kg")},
               {"weigh_window", {degrees(machine.window_low_rad), degrees(machine.window_high_rad)}}};
  if (parts.linkage) unit["linkage"] = linkageJson(machine.drawing);
  if (parts.oil && machine.oil_grade != 46.0) {
    unit["oil"] = {{"grade", fmt::format("ISO VG {:.0f}", machine.oil_grade)}};
  }
  if (machine.head_sensor.range_Pa != 400e5 || parts.pressure_sensor) {
    // The largest deviation is drawn evenly up to the class limit of 0.25 %: its root mean square is 0.14 %.
    unit["pressure_sensor"] = {{"range", quantity(machine.head_sensor.range_Pa / 1e5, 0, "bar")},
                               {"span_u", "0.25 %"},
                               {"linearity_u", "0.14 %"}};
  }
  Json job = {{"format", "hingepin-job/1"}, {"unit", unit}};
  if (parts.attachment) {
    job["attachment"] = {{"id", parts.attachment_id},
                         {"coupler", quantity(machine.parts.coupler.mass_kg, 0, "kg")},
                         {"bucket", quantity(machine.parts.bucket.mass_kg, 0, "kg")},
                         {"payload_center",
                          {quantity(machine.heap_along_m, 3, "m"), quantity(machine.heap_across_m, 3, "m")}}};
    if (parts.payload_center_u_m) {
      const Json u = quantity(*parts.payload_center_u_m, 3, "m");
      job["attachment"]["payload_center_u"] = {u, u};
    }
    if (parts.edge) {
      job["attachment"]["heel"] = pin({Length::fromMetres(-0.10), Length::fromMetres(-0.22)});
      job["attachment"]["cutting_edge"] = pin({Length::fromMetres(1.22), Length::fromMetres(-0.22)});
    }
  }
  if (parts.gravity) job["gravity"] = quantity(machine.gravity_m_per_s2, 5, "m/s2");
  const auto poses = posesJson(machine, parts, random.fork(1));
  if (!poses) return std::unexpected(poses.error());
  job["poses"] = *poses;

  job["lifts"] = Json::array();
  std::uint64_t stream = 100;
  const auto readingsOf = [&](const JobLift& lift) -> Expected<std::vector<LogRow>> {
    const Random own = random.fork(stream++);
    if (lift.typed) {
      const MonitorSteps steps{monitorStep(machine.boom_sensor), 1e5, 1.0};
      return readStations(machine, lift.lift, steps, own);
    }
    auto record = simulate(machine, lift.lift, own);
    if (!record) return std::unexpected(record.error());
    return std::move(record->rows);
  };

  for (const JobLift& lift : scenario.taught) {
    const auto rows = readingsOf(lift);
    if (!rows) return std::unexpected(rows.error());
    Json entry = {{"kind", lift.kind}, {"pace", lift.pace}};
    if (!lift.direction.empty()) entry["direction"] = lift.direction;
    if (lift.mass_kg) entry["mass"] = quantity(*lift.mass_kg, 1, "kg");
    if (lift.mass_u_kg) entry["mass_u"] = quantity(*lift.mass_u_kg, 2, "kg");
    if (lift.typed) {
      entry["points"] = pointsJson(machine, *rows);
    } else {
      entry["log"] = lift.file;
      files[lift.file] = csvOf(machine, *rows, lift.style);
    }
    job["lifts"].push_back(entry);
    truth["taught"].push_back(truthOf(lift));
  }
  for (const JobLift& lift : scenario.unknown) {
    const auto rows = readingsOf(lift);
    if (!rows) return std::unexpected(rows.error());
    files[lift.file] =
        lift.typed ? textOf({{"format", "hingepin-readings/1"}, {"points", pointsJson(machine, *rows)}})
                   : csvOf(machine, *rows, lift.style);
    truth["unknown"].push_back(truthOf(lift));
  }
  files["job.json"] = textOf(job);
  files["truth.json"] = textOf(truth);
  files["README.txt"] = scenario.note + "\n";
  return files;
}

Scenario demoScenario(std::uint64_t number) {
  const Random all(number);
  Random of_machine = all.fork(1);
  Random random = all.fork(2);
  Scenario s;
  s.note =
      "Invented unit, attachment and readings, made by Hingepin's simulator for practice. No real machine.";
  s.machine = practiceMachine(of_machine);
  const Machine& m = s.machine;
  s.parts.attachment_id = "GP-2.7";
  s.parts.edge = true;
  const double low = m.lowest_rad + 0.5 * kDegree;
  const double high = m.highest_rad - 2.0 * kDegree;

  const auto lift = [&](std::string kind, std::string pace, std::string file, double from_rad, double to_rad,
                        double speed, double oil_Cel) {
    JobLift l;
    l.kind = std::move(kind);
    l.pace = std::move(pace);
    l.file = std::move(file);
    l.lift.oil_Cel = oil_Cel;
    l.lift.plan = onePass(from_rad, to_rad, speed);
    l.lift.plan.lever_phase_rad = random.uniform(0.0, 2.0 * std::numbers::pi);
    l.lift.logging.jitter_s = 1e-3;
    l.lift.logging.missing_cell_share = 2e-3;
    return l;
  };
  s.taught.push_back(lift("empty", "slow", "empty-slow.csv", low, high, m.slow_rad_per_s, 52.0));
  s.taught.push_back(lift("empty", "fast", "empty-fast.csv", low, high, m.fast_rad_per_s, 53.0));
  JobLift mass = lift("test-mass", "slow", "mass-2000-slow.csv", low, high, m.slow_rad_per_s, 54.0);
  mass.mass_kg = 2000.0;
  mass.mass_u_kg = 2.0;
  mass.lift.load = drawTestMass(m, 2000.0 + 2.0 * random.normal(), random);
  s.taught.push_back(mass);

  struct Unknown {
    double share_low, share_high;  // of the rated payload
    double pace;                   // 0 slow, 1 fast
    double from_deg, to_deg;       // from the low end and high end where outside
    double oil_Cel;
  };
  int index = 0;
  for (const Unknown& u :
       {Unknown{0.65, 0.75, 0.0, -90.0, 90.0, 55.0}, Unknown{0.90, 1.00, 1.0, -90.0, 90.0, 58.0},
        Unknown{0.25, 0.35, 0.5, -90.0, 90.0, 63.0}, Unknown{0.80, 0.90, 0.3, -25.0, 30.0, 60.0},
        Unknown{0.50, 0.60, 0.7, -90.0, 90.0, 47.0}, Unknown{0.70, 0.85, 0.4, -14.0, 90.0, 66.0}}) {
    const double from = std::max(low, u.from_deg * kDegree);
    const double to = std::min(high, u.to_deg * kDegree);
    const double speed = m.slow_rad_per_s + u.pace * (m.fast_rad_per_s - m.slow_rad_per_s);
    JobLift l = lift("load", "", fmt::format("load-{}.csv", ++index), from, to, speed, u.oil_Cel);
    l.lift.load =
        drawHeap(m, std::round(m.rated_payload_kg * random.uniform(u.share_low, u.share_high)), random);
    s.unknown.push_back(l);
  }
  return s;
}

Scenario drawScenario(Teaching teaching, Random& random) {
  Scenario s;
  s.note = "Invented machine, drawn at random by Hingepin's simulator for practice. No real machine.";
  s.machine = drawMachine(random);
  const Machine& m = s.machine;
  s.parts.linkage = teaching != Teaching::TestMass;
  s.parts.gravity = random.uniform() < 0.5;
  s.parts.attachment_id = "GP";
  s.parts.pressure_sensor = true;
  s.parts.pose_u_deg = {random.uniform(0.15, 0.5), random.uniform(0.15, 0.5), random.uniform(0.3, 0.6)};
  const Logger logger = drawLogger(random);
  const double low = m.lowest_rad + 0.5 * kDegree;
  const double high = m.highest_rad - 2.0 * kDegree;

  // A technician teaches warm oil, one pass after another: within a few kelvin.
  const double taught_Cel = random.uniform(42.0, 70.0);
  const auto teach = [&](std::string kind, std::string pace, std::string file, bool up, double speed) {
    const double slower = speed * random.uniform(0.95, 1.05);
    JobLift lift = drawLift(m, logger, random, std::move(kind), std::move(pace), std::move(file),
                            up ? low : high, up ? high : low, slower);
    lift.lift.oil_Cel = taught_Cel + random.uniform(-2.0, 3.0);
    s.taught.push_back(lift);
  };
  teach("empty", "slow", "empty-slow.csv", true, m.slow_rad_per_s);
  teach("empty", "fast", "empty-fast.csv", true, m.fast_rad_per_s);
  if (teaching == Teaching::BothWaysOverLinkage)
    teach("empty", "slow", "empty-slow-down.csv", false, m.slow_rad_per_s);
  if (teaching == Teaching::TestMass || teaching == Teaching::TestMassOverLinkage) {
    const double mass_kg = std::round(random.uniform(0.35, 0.7) * m.rated_payload_kg / 50.0) * 50.0;
    const double mass_u_kg = std::max(0.5, std::round(mass_kg * random.uniform(0.0005, 0.001) * 2.0) / 2.0);
    teach("test-mass", "slow", "mass-slow.csv", true, m.slow_rad_per_s);
    JobLift& lift = s.taught.back();
    lift.mass_kg = mass_kg;
    lift.mass_u_kg = mass_u_kg;
    lift.lift.load = drawTestMass(m, mass_kg + mass_u_kg * random.normal(), random);
  }

  for (std::size_t k = 0; k < kDrawnLoads; ++k) {
    double from = low;
    double to = high;
    if (random.uniform() < 0.4) {
      // A partial lift still crosses most of the window.
      from = std::max(low, m.window_low_rad + random.uniform(-20.0, 4.0) * kDegree);
      to = std::min(high, m.window_high_rad + random.uniform(-3.0, 15.0) * kDegree);
    }
    const double speed = random.uniform(m.slow_rad_per_s, m.fast_rad_per_s);
    JobLift lift =
        drawLift(m, logger, random, "load", "", fmt::format("load-{}.csv", k + 1), from, to, speed);
    lift.lift.load = drawHeap(m, random.uniform(0.2, 1.0) * m.rated_payload_kg, random);
    s.unknown.push_back(lift);
  }
  return s;
}

Scenario drawnScenario(std::uint64_t number) {
  Random random = Random(number).fork(1);
  return drawScenario(Teaching::TestMassOverLinkage, random);
}

}  // namespace hingepin::simulator
