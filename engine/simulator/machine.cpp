// SPDX-License-Identifier: Apache-2.0
#include "engine/simulator/machine.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <optional>
#include <string>
#include <utility>

#include "engine/simulator/dynamics.h"
#include "engine/units/degree.h"

namespace hingepin::simulator {

namespace {

using linkage::Linkage;
using linkage::ZBarGeometry;

/// The practice unit's linkage, invented.
ZBarGeometry practiceGeometry() {
  const auto m = Length::fromMetres;
  ZBarGeometry g;
  g.boom_length = m(2.55);
  g.boom_pivot_height = m(1.95);
  g.lift_frame_pin = {m(0.08), m(-0.53)};
  g.lift_boom_pin = {m(1.50), m(-0.24)};
  g.tilt_frame_pin = {m(0.164), m(-0.158)};
  g.bellcrank_pivot = {m(1.543), m(0.487)};
  g.bellcrank_tilt_arm = m(0.71);
  g.bellcrank_link_arm = m(0.792);
  g.bellcrank_angle = Angle::fromDegrees(184.0);
  g.link_length = m(0.609);
  g.bucket_pin_distance = m(0.307);
  g.bucket_pin_angle = Angle::fromDegrees(94.0);
  g.tilt_cylinder_retracted = m(1.364);
  g.tilt_cylinder_extended = m(1.709);
  return g;
}

/// Every length through `change`.
template <class Change>
ZBarGeometry changed(const ZBarGeometry& from, Change&& change) {
  ZBarGeometry g = from;
  for (Length* length :
       {&g.boom_length, &g.boom_pivot_height, &g.lift_frame_pin.along, &g.lift_frame_pin.across,
        &g.lift_boom_pin.along, &g.lift_boom_pin.across, &g.tilt_frame_pin.along, &g.tilt_frame_pin.across,
        &g.bellcrank_pivot.along, &g.bellcrank_pivot.across, &g.bellcrank_tilt_arm, &g.bellcrank_link_arm,
        &g.link_length, &g.bucket_pin_distance, &g.tilt_cylinder_retracted, &g.tilt_cylinder_extended}) {
    *length = Length::fromMetres(change(length->inMetres()));
  }
  return g;
}

double rounded(double value, double step) { return std::round(value / step) * step; }

/// Whether the boom travels from lowest to highest with the bucket racked back, dumps at the reference, keeps
/// a load and turns it no more than a working Z-bar does.
bool works(const Machine& machine, const ZBarGeometry& geometry) {
  const auto linkage = Linkage::make(geometry);
  if (!linkage) return false;
  const double racked = geometry.tilt_cylinder_extended.inMetres();
  const double margin = 1.5 * kDegree;
  for (double boom = machine.lowest_rad - margin; boom <= machine.highest_rad + margin;
       boom += 0.5 * kDegree) {
    const auto tilt = linkage->tilt(boom, racked);
    if (!tilt || linkage->liftCylinder(boom).first < 0.1 * geometry.boom_length.inMetres()) return false;
    if (std::abs(tilt->bucket_by_boom.first) > 0.8) return false;
    const double floor_deg = tilt->bucket_by_boom.value / kDegree;
    if (floor_deg < 25.0 || floor_deg > 65.0) return false;
    // Inside the window a working linkage carries the bucket nearly parallel.
    if (boom > machine.window_low_rad && boom < machine.window_high_rad &&
        std::abs(tilt->bucket_by_boom.first) > 0.22) {
      return false;
    }
  }
  // A hundredth to spare, for pins are not where the drawing has them.
  const auto dumped =
      linkage->tilt(machine.reference_rad, 0.99 * geometry.tilt_cylinder_retracted.inMetres());
  return dumped && dumped->bucket_by_boom.value < -25.0 * kDegree;
}

double drawnShare(Random& random, const MachineRanges& ranges) {
  for (;;) {
    const double share = ranges.friction_mean + ranges.friction_sd * random.normal();
    if (share >= 0.0) return share;
  }
}

PressureSensor drawPressureSensor(Random& random, const MachineRanges& ranges, double range_Pa) {
  PressureSensor sensor;
  sensor.range_Pa = range_Pa;
  sensor.span_error = ranges.span_sd * random.normal();
  const double largest = random.uniform(0.0, ranges.linearity_limit);
  const double mix_rad = random.uniform(0.0, 2.0 * std::numbers::pi);
  sensor.bow = largest * std::cos(mix_rad);
  sensor.s_shape = largest * std::sin(mix_rad);
  sensor.zero_Pa = ranges.zero_sd * range_Pa * random.normal();
  sensor.zero_Pa_per_K = ranges.zero_per_K_sd * range_Pa * random.normal();
  sensor.drift_Pa_per_s = 20.0 * random.normal();  // 0.01 bar a minute, as it warms up (judgement)
  sensor.noise_sd_Pa = random.uniform(ranges.pressure_noise_low_Pa, ranges.pressure_noise_high_Pa);
  sensor.step_Pa = range_Pa / 4096.0;
  return sensor;
}

/// @param travel_rad sensed angles that must fit the output's range, from and to
AngleSensor drawAngleSensor(Random& random, const MachineRanges& ranges, double from_rad, double to_rad) {
  AngleSensor sensor;
  const double kind = random.uniform();
  const double sense = random.uniform() < 0.25 ? -1.0 : 1.0;
  const double middle_rad = 0.5 * (from_rad + to_rad);
  const double span_rad = to_rad - from_rad;
  if (kind < 0.65) {
    sensor.output = AngleOutput::Volt;  // 0 to 5 V through 12 bits
    sensor.gain_per_rad = sense * random.uniform(2.6, 3.9) / std::max(span_rad, 1.5);
    sensor.offset = random.uniform(2.3, 2.7) - sensor.gain_per_rad * middle_rad;
    sensor.step = 5.0 / 4096.0;
    sensor.noise_sd = random.uniform(0.5e-3, 2.5e-3);
  } else if (kind < 0.85) {
    sensor.output = AngleOutput::Count;  // 12 bits over a full turn or half of one
    sensor.gain_per_rad = sense * 4096.0 / (std::numbers::pi * (random.uniform() < 0.5 ? 1.0 : 2.0));
    sensor.offset = std::round(random.uniform(1850.0, 2250.0) - sensor.gain_per_rad * middle_rad);
    sensor.step = 1.0;
    sensor.noise_sd = random.uniform(0.2, 1.0);
  } else {
    sensor.output = AngleOutput::Degree;  // its own zero, 12 bits over a full turn
    sensor.gain_per_rad = 1.0 / kDegree * (1.0 + 0.01 * random.normal());
    sensor.offset = 4.0 * random.normal();
    sensor.step = 360.0 / 4096.0;
    sensor.noise_sd = random.uniform(0.02, 0.08);
  }
  sensor.first_rad = ranges.angle_ripple_sd_rad * random.normal();
  sensor.first_phase_rad = random.uniform(0.0, 2.0 * std::numbers::pi);
  sensor.second_rad = 0.5 * ranges.angle_ripple_sd_rad * random.normal();
  sensor.second_phase_rad = random.uniform(0.0, 2.0 * std::numbers::pi);
  return sensor;
}

/// What a hose between sensor and cylinder costs at full flow, oil at 40 Cel.
struct LineLoss {
  double laminar_Pa;  ///< of the hose: Hagen-Poiseuille
  double orifice_Pa;  ///< of its fittings, bends and port: loss coefficient times dynamic pressure
};

/// A hose to each cylinder, 1 to 2.5 m long and so wide that the oil runs at a speed between those given,
/// which is how lines are chosen (3 to 6 m/s under pressure, 2 to 5 m/s returning: common practice, no
/// source). Two to five dynamic pressures for ends and bends (handbook values of 0.5 to 1.5 each, from
/// memory).
LineLoss drawLine(Random& random, double flow_m3_per_s, int hoses, double slowest_m_per_s,
                  double fastest_m_per_s) {
  constexpr double kDensity_kg_per_m3 = 870.0;
  constexpr double kViscosity_m2_per_s = 46e-6;
  const double speed = random.uniform(slowest_m_per_s, fastest_m_per_s);
  const double bore_squared = 4.0 / std::numbers::pi * flow_m3_per_s / hoses / speed;
  const double length_m = random.uniform(1.0, 2.5);
  return {32.0 * kDensity_kg_per_m3 * kViscosity_m2_per_s * length_m * speed / bore_squared,
          random.uniform(2.0, 5.0) * 0.5 * kDensity_kg_per_m3 * speed * speed};
}

/// Everything that follows from drawing, travel and size: masses, cylinders, tyres, oil, sensors. Proportions
/// are judged from the one public multibody loader model at hand (1.2 t boom, 0.45 t bellcrank, 56 kg
/// link, 1.3 t bucket, 130 mm bore) and common practice.
void fit(Machine& machine, Random& random, const MachineRanges& ranges, double bucket_kg, double coupler_kg,
         std::optional<std::pair<double, double>> bore_and_rod_m) {
  const double size = machine.drawing.boom_length.inMetres() / 2.55;
  const double mass = machine.operating_mass_kg;
  const double length = machine.drawing.boom_length.inMetres();
  machine.as_built =
      changed(machine.drawing, [&](double m) { return m + ranges.pin_sd_m * random.normal(); });
  machine.tilt_length_m = machine.as_built.tilt_cylinder_extended.inMetres();

  MovingParts& parts = machine.parts;
  const double boom_kg = 0.078 * mass * random.uniform(0.9, 1.1);
  parts.boom = {boom_kg, 0.50 * length, 0.07 * length, boom_kg * length * length / 8.0};
  const double crank_kg = 0.020 * mass * random.uniform(0.9, 1.1);
  parts.bellcrank = {crank_kg, 0.05 * size, 0.0, crank_kg * 0.2 * size * size};
  parts.link_kg = 0.0036 * mass;
  parts.tilt_cylinder_kg = 0.0045 * mass;
  parts.bucket = {bucket_kg, 0.42 * size * random.uniform(0.9, 1.1), 0.22 * size * random.uniform(0.8, 1.2),
                  bucket_kg * 0.35 * size * size};
  parts.coupler = {coupler_kg, -0.02 * size, 0.08 * size, coupler_kg * 0.06 * size * size};

  Frame& frame = machine.frame;
  const double wheelbase = 3.1 * size;
  frame.mass_kg = mass - boom_kg - crank_kg - parts.link_kg - parts.tilt_cylinder_kg - bucket_kg - coupler_kg;
  frame.forward_m = 0.42 * wheelbase;
  frame.up_m = 1.25 * size;
  frame.inertia_kg_m2 = frame.mass_kg * 1.25 * size * size;
  frame.boom_pivot_forward_m = wheelbase - 0.55 * size;
  frame.boom_pivot_up_m = machine.drawing.boom_pivot_height.inMetres();
  // Pitch of the empty machine to the rated load: 0.5 to 2 deg; two front tyres of 0.5 to 1 MN/m each (from
  // memory).
  const double nod_N_m = machine.gravity_m_per_s2 * machine.rated_payload_kg *
                         (frame.boom_pivot_forward_m + length + machine.heap_along_m * 0.7);
  frame.tyre_stiffness_N_m_per_rad = nod_N_m / (random.uniform(0.7, 1.8) * kDegree);
  machine.heap_true_along_m = machine.heap_along_m + ranges.heap_sd_m * random.normal();
  machine.heap_true_across_m = machine.heap_across_m + ranges.heap_sd_m * random.normal();

  LiftHydraulics& oil_side = machine.hydraulics;
  const auto linkage = Linkage::make(machine.as_built);
  machine.friction.pin_radius_m = 0.042 * size;
  const auto table = MechanicsTable::make(machine, Part{});
  const Mechanics level = table->at(0.0);
  const auto heap = linkage->bucketPoint(
      0.0, machine.tilt_length_m,
      {Length::fromMetres(machine.heap_along_m), Length::fromMetres(machine.heap_across_m)});
  // A sixteenth to a seventh of critical with half a load: tyres bounce a few times (judgement).
  const double half_load_m = frame.boom_pivot_forward_m + length;
  const double pitch_inertia = level.pitch.value + 0.5 * machine.rated_payload_kg * half_load_m * half_load_m;
  frame.tyre_damping_N_m_s_per_rad =
      2.0 * random.uniform(0.06, 0.14) * std::sqrt(frame.tyre_stiffness_N_m_per_rad * pitch_inertia);
  if (bore_and_rod_m) {
    oil_side.bore_m = bore_and_rod_m->first;
    oil_side.rod_m = bore_and_rod_m->second;
  } else {
    const double force = machine.gravity_m_per_s2 *
                         (level.up.by_boom + machine.rated_payload_kg * heap->y.first) /
                         level.cylinder.by_boom;
    const double pressure = random.uniform(115e5, 160e5);  // at level with the rated payload
    oil_side.bore_m =
        rounded(std::sqrt(force / pressure / oil_side.cylinders / (std::numbers::pi / 4.0)), 0.005);
    oil_side.rod_m = rounded(oil_side.bore_m * random.uniform(0.54, 0.62), 0.005);
  }
  oil_side.shortest_m = linkage->liftCylinder(machine.lowest_rad).value - 0.002;
  oil_side.longest_m = linkage->liftCylinder(machine.highest_rad).value + 0.002;
  const double head_m2 = headArea(oil_side);
  const double rod_m2 = rodArea(oil_side);
  oil_side.dead_volume_m3 = random.uniform(0.35, 0.55) * head_m2 * (oil_side.longest_m - oil_side.shortest_m);
  // Oil in hoses is 0.6 to 1 GPa (from memory); the flex of boom and frame is lumped in (judgement). On
  // stands the boom then bounces at 1 to 4 Hz; on its tyres an empty one at up to 5, for the frame gives way.
  oil_side.bulk_modulus_Pa = random.uniform(0.40e9, 0.65e9);
  oil_side.air_share = random.uniform(0.002, 0.010);
  oil_side.flow_droop = random.uniform(0.02, 0.15);
  oil_side.piston_leak_m3_per_s_Pa = random.uniform(0.0, 3e-13);

  // Travel of 85 to 90 deg in 8 to 11 s slow, 4 to 6 s fast.
  const double travel_rad = machine.highest_rad - machine.lowest_rad;
  machine.slow_rad_per_s = travel_rad / random.uniform(8.0, 10.5);
  machine.fast_rad_per_s = travel_rad / random.uniform(4.2, 6.0);
  const double fast_m_per_s =
      machine.fast_rad_per_s * (oil_side.longest_m - oil_side.shortest_m) / travel_rad;
  const double head_flow = head_m2 * fast_m_per_s;
  const double rod_flow = rod_m2 * fast_m_per_s;
  const LineLoss head_line = drawLine(random, head_flow, oil_side.cylinders, 3.0, 6.0);
  oil_side.head_line_laminar = head_line.laminar_Pa / head_flow;
  oil_side.head_line_orifice = head_line.orifice_Pa / (head_flow * head_flow);
  const LineLoss rod_line = drawLine(random, rod_flow, oil_side.cylinders, 2.0, 5.0);
  oil_side.rod_line_laminar = rod_line.laminar_Pa / rod_flow;
  oil_side.rod_line_orifice = rod_line.orifice_Pa / (rod_flow * rod_flow);
  // From 2 bar at rest to 14 bar at full flow, as the measured-looking record shows.
  oil_side.rod_back_pressure_Pa = random.uniform(2e5, 5e5);
  oil_side.rod_valve_orifice = random.uniform(2e5, 9e5) / (rod_flow * rod_flow);

  Friction& friction = machine.friction;
  machine.load_friction_share = drawnShare(random, ranges);
  const double seals = random.uniform(0.4, 0.8);
  friction.seal_N_per_Pa = seals * machine.load_friction_share * head_m2 / oil_side.cylinders;
  friction.pin_coefficient =
      (1.0 - seals) * machine.load_friction_share * level.cylinder.by_boom / level.pin_lever.value;
  friction.seal_preload_N = random.uniform(40.0, 250.0) * oil_side.bore_m / 0.13;
  // 5000 N s/m on an 81 mm bore (public multibody example), by bore.
  friction.seal_viscous_N_s_per_m = 5000.0 * oil_side.bore_m / 0.081 * random.uniform(0.6, 1.4);
  friction.breakaway_ratio = random.uniform(1.1, 1.4);
  friction.stribeck_speed_m_per_s = random.uniform(0.004, 0.012);

  machine.oil_grade = random.uniform() < 0.7 ? 46.0 : random.uniform() < 0.5 ? 32.0 : 68.0;
  machine.oil = mineralOil(machine.oil_grade);
  const double thicker = random.uniform(0.92, 1.08);  // ISO 3448 allows 10 % either way
  machine.oil.at_40_Cel_mm2_per_s *= thicker;
  machine.oil.at_100_Cel_mm2_per_s *= thicker * random.uniform(0.97, 1.05);  // viscosity index 90 to 115
  machine.engine_speed_per_min = random.uniform(1200.0, 1900.0);

  const double kind = random.uniform();
  const double range_Pa = bore_and_rod_m || kind < 0.75 ? 400e5 : kind < 0.9 ? 250e5 : 600e5;
  machine.head_sensor = drawPressureSensor(random, ranges, range_Pa);
  machine.rod_sensor = drawPressureSensor(random, ranges, range_Pa);
  machine.boom_sensor = drawAngleSensor(random, ranges, machine.lowest_rad, machine.highest_rad);
  const auto crank = [&](double boom_rad, double tilt_m) {
    return linkage->tilt(boom_rad, tilt_m)->bellcrank_by_boom.value;
  };
  machine.bucket_sensor =
      drawAngleSensor(random, ranges, crank(machine.lowest_rad, machine.tilt_length_m),
                      crank(machine.reference_rad, machine.as_built.tilt_cylinder_retracted.inMetres()));
}

}  // namespace

Machine drawMachine(Random& random, const MachineRanges& ranges) {
  Machine machine;
  machine.operating_mass_kg = random.uniform(ranges.lightest_kg, ranges.heaviest_kg);
  machine.id = "L-" + std::to_string(100 + random.bits() % 900);
  const double size = std::cbrt(machine.operating_mass_kg / 15000.0) * random.uniform(0.96, 1.04);
  machine.gravity_m_per_s2 = 9.80665 + 0.015 * random.normal();
  machine.rated_payload_kg = rounded(0.30 * machine.operating_mass_kg * random.uniform(0.92, 1.08), 50.0);
  machine.heap_along_m = rounded(0.60 * size * random.uniform(0.9, 1.1), 0.01);
  machine.heap_across_m = rounded(0.45 * size * random.uniform(0.9, 1.1), 0.01);
  for (;;) {
    machine.lowest_rad = rounded(random.uniform(-42.0, -37.0), 0.5) * kDegree;
    machine.highest_rad = rounded(random.uniform(43.0, 50.0), 0.5) * kDegree;
    machine.reference_rad = rounded(random.uniform(-3.0, 5.0), 0.5) * kDegree;
    machine.window_low_rad = rounded(random.uniform(-12.0, -6.0), 1.0) * kDegree;
    machine.window_high_rad = rounded(random.uniform(12.0, 20.0), 1.0) * kDegree;
    ZBarGeometry g = changed(practiceGeometry(), [&](double m) {
      return rounded(m * size * (1.0 + 0.015 * random.normal()), 0.001);
    });
    g.bellcrank_angle = Angle::fromDegrees(rounded(184.0 + 1.5 * random.normal(), 0.5));
    g.bucket_pin_angle = Angle::fromDegrees(rounded(94.0 + 2.0 * random.normal(), 0.5));
    if (works(machine, g)) {
      machine.drawing = g;
      break;
    }
  }
  const double bucket_kg = rounded(0.28 * machine.rated_payload_kg * random.uniform(0.85, 1.15), 5.0);
  const double coupler_kg = rounded(0.07 * machine.rated_payload_kg * random.uniform(0.8, 1.2), 5.0);
  fit(machine, random, ranges, bucket_kg, coupler_kg, std::nullopt);
  return machine;
}

Machine practiceMachine(Random& random, const MachineRanges& ranges) {
  Machine machine;
  machine.id = "L-27";
  machine.operating_mass_kg = 15000.0;
  machine.rated_payload_kg = 4500.0;
  machine.drawing = practiceGeometry();
  machine.lowest_rad = -40.0 * kDegree;
  machine.highest_rad = 48.0 * kDegree;
  machine.reference_rad = 3.0 * kDegree;
  machine.window_low_rad = -8.0 * kDegree;
  machine.window_high_rad = 18.0 * kDegree;
  fit(machine, random, ranges, 1250.0, 320.0, std::pair{0.130, 0.075});
  machine.oil_grade = 46.0;
  machine.oil = mineralOil(46.0);
  const auto sensor = [](AngleSensor& s, double volts_per_deg, double volts, double at_deg) {
    s.output = AngleOutput::Volt;
    s.gain_per_rad = volts_per_deg / kDegree;
    s.offset = volts - volts_per_deg * at_deg;
    s.step = 5.0 / 4096.0;
    s.noise_sd = 1.2e-3;
  };
  sensor(machine.boom_sensor, 0.0399, 2.43, 3.0);
  sensor(machine.bucket_sensor, -0.0330, 2.71, 113.5);
  return machine;
}

}  // namespace hingepin::simulator
