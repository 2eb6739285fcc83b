// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "engine/base/random.h"
#include "engine/calibration/job.h"
#include "engine/linkage/linkage.h"
#include "engine/units/degree.h"

namespace hingepin::calibration::test {

inline bool has(const std::vector<Message>& messages, const std::string& code) {
  return std::ranges::any_of(messages, [&](const Message& message) { return message.code == code; });
}

/// The demonstration linkage, invented.
inline linkage::ZBarGeometry demoGeometry() {
  const auto m = [](double value) { return Length::fromMetres(value); };
  const auto deg = [](double value) { return Angle::fromDegrees(value); };
  return {.boom_length = m(2.55),
          .boom_pivot_height = m(1.95),
          .lift_frame_pin = {m(0.08), m(-0.53)},
          .lift_boom_pin = {m(1.50), m(-0.24)},
          .tilt_frame_pin = {m(0.164), m(-0.158)},
          .bellcrank_pivot = {m(1.543), m(0.487)},
          .bellcrank_tilt_arm = m(0.71),
          .bellcrank_link_arm = m(0.792),
          .bellcrank_angle = deg(184),
          .link_length = m(0.609),
          .bucket_pin_distance = m(0.307),
          .bucket_pin_angle = deg(94),
          .tilt_cylinder_retracted = m(1.364),
          .tilt_cylinder_extended = m(1.709)};
}

/// A loader without surprises: quasi-static virtual work written down once more for the tests, with the
/// friction, speed and sensor terms that a test switches on. Its lift cylinder moves at one speed.
struct IdealLoader {
  linkage::Linkage geometry = *linkage::Linkage::make(demoGeometry());
  double gravity = 9.80665;
  double boom_mass_kg = 1400.0;  // at the middle of the boom
  double attachment_mass_kg = 1570.0;
  linkage::Pin payload_center{Length::fromMetres(0.60), Length::fromMetres(0.45)};
  double load_friction = 0.0;  // share of the lift force
  double constant_friction_N = 0.0;
  double viscous_N_per_m_s = 0.0;  // at 40 Cel, scaled by `viscosity_ratio`
  double orifice_N_per_m2_s2 = 0.0;
  double pressure_noise_Pa = 0.0;
  double pressure_correlation = 0.0;  // of neighbouring samples
  double angle_noise_rad = 0.0;
  double pressure_gain = 1.0;
  double rod_pressure_Pa = 6e5;
  double head_area_m2 = 0.013273228961416875;  // 130 mm bore
  double rod_area_m2 = 0.008855362091;         // less a 75 mm rod

  static double sensorOf(double boom_angle_rad) { return 0.71 + (boom_angle_rad / kDegree + 40.0) * 0.0399; }

  struct Ask {
    double mass_kg = 0.0;
    double cylinder_speed_m_per_s = 0.05;
    bool rising = true;
    double from_rad = -40 * kDegree;
    double to_rad = 48 * kDegree;
    double viscosity_ratio = 1.0;
    std::optional<double> oil_temperature_K = 323.15;
    double step_s = 0.02;
    std::uint64_t seed = 1;
    bool with_holds = true;  // a second at rest before and after
  };

  [[nodiscard]] double headPressure(const Ask& ask, double boom_rad, double cylinder_speed) const {
    const linkage::Derivatives lift = geometry.liftCylinder(boom_rad);
    const double tilt_m = geometry.geometry().tilt_cylinder_extended.inMetres();
    const linkage::PointMotion load = *geometry.bucketPoint(boom_rad, tilt_m, payload_center);
    const double length_m = geometry.geometry().boom_length.inMetres();
    const double speed = cylinder_speed / lift.first;
    const double acceleration = -lift.second / lift.first * speed * speed;
    const auto moment = [&](double mass_kg, const linkage::PointMotion& point) {
      return mass_kg * (gravity * point.y.first +
                        (point.x.first * point.x.first + point.y.first * point.y.first) * acceleration +
                        (point.x.first * point.x.second + point.y.first * point.y.second) * speed * speed);
    };
    const double half = 0.5 * length_m;
    const double total = moment(ask.mass_kg + attachment_mass_kg, load) +
                         boom_mass_kg * half * (gravity * std::cos(boom_rad) + half * acceleration);
    const double still_N = total / lift.first;
    const double sign = cylinder_speed < 0.0 ? -1.0 : 1.0;
    const double force_N = (still_N + sign * constant_friction_N) / (1.0 - sign * load_friction) +
                           viscous_N_per_m_s * ask.viscosity_ratio * cylinder_speed +
                           orifice_N_per_m2_s2 * cylinder_speed * std::abs(cylinder_speed);
    return (0.5 * force_N + rod_pressure_Pa * rod_area_m2) / head_area_m2;
  }

  [[nodiscard]] LiftLog lift(const Ask& ask, const std::string& name = "lift.csv") const {
    LiftLog log;
    log.name = name;
    log.has_rod_pressure = true;
    Random random(ask.seed);
    const double direction = ask.rising ? 1.0 : -1.0;
    const double start_m = geometry.liftCylinder(ask.rising ? ask.from_rad : ask.to_rad).value;
    const double end_m = geometry.liftCylinder(ask.rising ? ask.to_rad : ask.from_rad).value;
    const double hold_s = ask.with_holds ? 1.0 : 0.0;
    const double travel_s = std::abs(end_m - start_m) / ask.cylinder_speed_m_per_s;
    double noise = 0.0;
    for (double time_s = 0.0; time_s < travel_s + 2.0 * hold_s; time_s += ask.step_s) {
      const double moved_s = std::clamp(time_s - hold_s, 0.0, travel_s);
      const bool moving = time_s > hold_s && time_s < hold_s + travel_s;
      const double boom_rad = *geometry.boomAngle(start_m + direction * ask.cylinder_speed_m_per_s * moved_s);
      noise = pressure_correlation * noise +
              std::sqrt(1.0 - pressure_correlation * pressure_correlation) * random.normal();
      LiftRow row;
      row.time_s = time_s;
      row.boom_sensor = sensorOf(boom_rad + angle_noise_rad * random.normal());
      row.head_pressure_Pa =
          pressure_gain * headPressure(ask, boom_rad, moving ? direction * ask.cylinder_speed_m_per_s : 0.0) +
          pressure_noise_Pa * noise;
      row.rod_pressure_Pa = rod_pressure_Pa;
      row.oil_temperature_K = ask.oil_temperature_K;
      log.rows.push_back(row);
    }
    log.rows_read = log.rows.size();
    return log;
  }

  /// A job for this loader with exact poses and no lifts yet.
  [[nodiscard]] Job job(bool with_linkage) const {
    Job job;
    job.unit.id = "L-27";
    job.unit.lift_cylinders = {2, Length::fromMillimetres(130), Length::fromMillimetres(75)};
    job.unit.rated_payload = Mass::fromKilograms(4500);
    job.unit.weigh_window = AngleWindow{Angle::fromDegrees(-8), Angle::fromDegrees(18)};
    if (with_linkage) job.unit.linkage = geometry.geometry();
    Attachment attachment;
    attachment.id = "GP-2.7";
    attachment.coupler = Mass::fromKilograms(320);
    attachment.bucket = Mass::fromKilograms(1250);
    attachment.payload_center = payload_center;
    job.attachment = attachment;
    job.gravity = Acceleration::fromMetresPerSecondSquared(gravity);
    const auto pose = [](PoseKind kind, double angle_deg, double u_deg) {
      PoseReading reading;
      reading.kind = kind;
      reading.boom_angle = Angle::fromDegrees(angle_deg);
      reading.boom_angle_u = Angle::fromDegrees(u_deg);
      reading.boom_sensor = sensorOf(angle_deg * kDegree);
      return reading;
    };
    job.poses = {pose(PoseKind::BoomLowest, -40, 0.3), pose(PoseKind::BoomHighest, 48, 0.3),
                 pose(PoseKind::BoomReference, 3, 0.6)};
    return job;
  }

  [[nodiscard]] Lift empty(Pace pace, bool rising = true, std::uint64_t seed = 11) const {
    Lift result;
    result.pace = pace;
    result.name = "empty.csv";
    Ask ask;
    ask.rising = rising;
    ask.seed = seed;
    ask.cylinder_speed_m_per_s = pace == Pace::Slow ? 0.05 : 0.16;
    result.readings = lift(ask, result.name);
    return result;
  }

  [[nodiscard]] Lift testMass(double mass_kg, std::uint64_t seed = 21) const {
    Lift result;
    result.kind = LiftKind::TestMass;
    result.mass = Mass::fromKilograms(mass_kg);
    result.mass_u = Mass::fromKilograms(0.001 * mass_kg);
    result.name = "mass.csv";
    Ask ask;
    ask.mass_kg = mass_kg;
    ask.seed = seed;
    result.readings = lift(ask, result.name);
    return result;
  }
};

}  // namespace hingepin::calibration::test
