// SPDX-License-Identifier: Apache-2.0
#include "tests/benchmarks/plain_world.h"

#include <fmt/format.h>

#include <Eigen/QR>
#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <numbers>
#include <optional>

#include "engine/linkage/linkage.h"
#include "engine/units/degree.h"

namespace hingepin::benchmarks {
namespace {

using Json = nlohmann::ordered_json;
using linkage::Linkage;
using linkage::Pin;

constexpr double kBar = 1e5;
constexpr double kLogStep_s = 0.02;
constexpr double kUsualFriction = 0.01;  // what a job says where it says nothing

/// Vogel's law with constants near those of VG 46, relative to 40 Cel.
double thickness(double oil_Cel) { return std::exp(950.0 / (oil_Cel + 120.0) - 950.0 / 160.0); }

Pin pinAt(double along_m, double across_m) {
  return {Length::fromMetres(along_m), Length::fromMetres(across_m)};
}

/// An invented linkage of a 15 t loader, by size.
linkage::ZBarGeometry geometryOf(double size) {
  const auto m = [&](double metres) { return Length::fromMetres(std::round(metres * size * 1e3) / 1e3); };
  const auto p = [&](double along, double across) { return Pin{m(along), m(across)}; };
  linkage::ZBarGeometry g;
  g.boom_length = m(2.55);
  g.boom_pivot_height = m(1.95);
  g.lift_frame_pin = p(0.08, -0.53);
  g.lift_boom_pin = p(1.50, -0.24);
  g.tilt_frame_pin = p(0.164, -0.158);
  g.bellcrank_pivot = p(1.543, 0.487);
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

struct Body {
  double mass_kg;
  Pin in_bucket;
};

/// A machine with its truth.
struct World {
  const Linkage* geometry;
  double gravity, rated_kg, head_m2, rod_m2;
  double low_rad, high_rad, window_low_rad, window_high_rad;
  double boom_kg, boom_along_m, boom_across_m;
  std::vector<Body> empty;
  double friction_share, constant_friction_N;
  double viscous_N_s_per_m, orifice_N_s2_per_m2;
  double rod_rest_Pa, rod_Pa_s_per_m;
  double bounce_Hz[2], damping[2], liveliness[2];
  double nod_rad;  // of the frame under the rated load
  double sensor_per_rad, sensor_at_level, sensor_noise, sensor_bow_rad;
  double span, bow, zero_Pa, noise_Pa, ripple_Pa, range_Pa;
  double jitter_s, missing;
};

struct Row {
  double time_s;
  std::optional<double> boom_V, head_Pa, rod_Pa;
};

struct Travel {
  bool up;
  double from_rad, to_rad, speed_m_per_s, oil_Cel;
  std::optional<Body> load;
};

/// d(potential)/d(boom angle), and the square of the speed per boom speed summed over masses.
struct Weight {
  double moment;
  double inertia;
};

Expected<Weight> weightAt(const World& w, double boom_rad, double pitch_rad,
                          const std::optional<Body>& load) {
  const double tilt_m = w.geometry->geometry().tilt_cylinder_extended.inMetres();
  Weight sum{0.0, 0.0};
  const auto add = [&](double mass, double x, double y) {
    sum.moment += w.gravity * mass * (y * std::cos(pitch_rad) + x * std::sin(pitch_rad));
    sum.inertia += mass * (x * x + y * y);
  };
  const double c = std::cos(boom_rad);
  const double s = std::sin(boom_rad);
  add(w.boom_kg, -w.boom_along_m * s - w.boom_across_m * c, w.boom_along_m * c - w.boom_across_m * s);
  const auto addBody = [&](const Body& body) -> Expected<void> {
    const auto point = w.geometry->bucketPoint(boom_rad, tilt_m, body.in_bucket);
    if (!point) return std::unexpected(point.error());
    add(body.mass_kg, point->x.first, point->y.first);
    return {};
  };
  for (const Body& body : w.empty)
    if (auto added = addBody(body); !added) return std::unexpected(added.error());
  if (load)
    if (auto added = addBody(*load); !added) return std::unexpected(added.error());
  return sum;
}

Expected<std::vector<Row>> travel(const World& w, const Travel& t, Random& random) {
  constexpr double kStep_s = 1e-3;
  const double way = t.up ? 1.0 : -1.0;
  const double ramp_s = random.uniform(0.3, 0.8);
  const double wait_s = 0.8;
  const double wobble = random.uniform(0.0, 0.015);
  const double phase = random.uniform(0.0, 6.28);
  const double pitch_rad = -w.nod_rad * (t.load ? t.load->mass_kg / w.rated_kg : 0.0);
  const double viscosity = thickness(t.oil_Cel);
  const double ease_m = 0.03 * w.geometry->geometry().boom_length.inMetres();
  const double end_m = w.geometry->liftCylinder(t.to_rad).value;

  double boom = t.from_rad;
  double last_rate = 0.0;
  double stopping = 1.0;
  double ring[2] = {0.0, 0.0};
  double ring_rate[2] = {0.0, 0.0};
  double next_log_s = 0.0;
  double stop_at_s = 1e9;
  std::vector<Row> rows;
  const double drift_Pa = 0.03 * kBar * random.normal();
  for (double time = 0.0; time < std::min(stop_at_s + 1.5, 40.0); time += kStep_s) {
    const auto cylinder = w.geometry->liftCylinder(boom);
    const double left_m = way * (end_m - cylinder.value);
    double share = std::clamp((time - wait_s) / ramp_s, 0.0, 1.0);
    share = share * share * (3.0 - 2.0 * share);
    if (left_m < ease_m) {
      stopping = std::max(0.0, std::min(stopping, left_m / ease_m + 0.02));
      if (left_m <= 0.0) stopping = 0.0;
      if (stopping == 0.0 && stop_at_s > 1e8) stop_at_s = time;
    }
    const double speed = way * t.speed_m_per_s * share * stopping *
                         (1.0 + wobble * std::sin(2.0 * std::numbers::pi * 0.3 * time + phase));
    const double rate = speed / cylinder.first;
    const double asked = (rate - last_rate) / kStep_s;
    last_rate = rate;
    boom += rate * kStep_s;
    double shaken = asked;
    double seen = boom;
    for (int k : {0, 1}) {
      const double turn = 2.0 * std::numbers::pi * w.bounce_Hz[k];
      const double force =
          -w.liveliness[k] * asked - 2.0 * w.damping[k] * turn * ring_rate[k] - turn * turn * ring[k];
      ring_rate[k] += force * kStep_s;
      ring[k] += ring_rate[k] * kStep_s;
      shaken += force;
      seen += ring[k];
    }
    if (time < next_log_s) continue;
    const double stamp_s = next_log_s;
    next_log_s += kLogStep_s + w.jitter_s * std::clamp(random.normal(), -2.0, 2.0);
    const auto weight = weightAt(w, seen, pitch_rad, t.load);
    if (!weight) return std::unexpected(weight.error());
    const double sense = std::clamp(speed / 0.002, -1.0, 1.0);
    const double carried = (weight->moment + weight->inertia * shaken) / cylinder.first;
    const double pressed =
        carried + sense * (w.friction_share * carried + w.constant_friction_N) +
        (w.viscous_N_s_per_m * viscosity + w.orifice_N_s2_per_m2 * std::abs(speed)) * speed;
    const double rod = w.rod_rest_Pa + w.rod_Pa_s_per_m * std::max(0.0, speed);
    const double head = (pressed + rod * w.rod_m2) / w.head_m2;
    const auto sensed = [&](double pressure, double drift) {
      const double at = pressure / w.range_Pa;
      const double noise = w.noise_Pa * random.normal() + w.ripple_Pa * std::sin(78.0 * time + phase);
      return std::clamp(std::round((pressure * (1.0 + w.span) + w.range_Pa * w.bow * 4.0 * at * (1.0 - at) +
                                    drift + noise) /
                                   (0.05 * kBar)) *
                            0.05 * kBar,
                        0.0, w.range_Pa);
    };
    Row row{std::round(stamp_s * 1e4) / 1e4, {}, {}, {}};
    const double shown = seen + w.sensor_bow_rad * std::sin(2.0 * seen);
    if (random.uniform() >= w.missing)
      row.boom_V =
          std::round((w.sensor_at_level + w.sensor_per_rad * shown + w.sensor_noise * random.normal()) *
                     1e3) /
          1e3;
    if (random.uniform() >= w.missing) row.head_Pa = sensed(head, w.zero_Pa + drift_Pa);
    if (random.uniform() >= w.missing) row.rod_Pa = sensed(rod, 0.0);
    rows.push_back(row);
  }
  return rows;
}

std::string csvOf(const std::vector<Row>& rows, double oil_Cel) {
  std::string text =
      "time [s],boom_sensor [V],head_pressure [bar],rod_pressure [bar],oil_temperature [Cel]\n";
  const auto cell = [](const std::optional<double>& value, double per_SI, int decimals) {
    return value ? fmt::format("{:.{}f}", *value * per_SI, decimals) : std::string();
  };
  for (const Row& row : rows)
    text += fmt::format("{:.4f},{},{},{},{:.1f}\n", row.time_s, cell(row.boom_V, 1.0, 3),
                        cell(row.head_Pa, 1.0 / kBar, 2), cell(row.rod_Pa, 1.0 / kBar, 2), oil_Cel);
  return text;
}

// --- The plain estimator ---

/// What can be read off the steady part of a travel within the window: force, arm, angle, speed.
struct Steady {
  Eigen::VectorXd angle_rad, force_N;
  double speed_m_per_s, thickness;
};

/// The boom line of the job's poses, as a plain least-squares line.
struct Line {
  double at_level, per_rad;
};

Steady steadyOf(const World& w, const Line& line, const Travel& t, const std::vector<Row>& rows) {
  std::vector<double> angles, forces, times;
  for (const Row& row : rows) {
    if (!row.boom_V || !row.head_Pa || !row.rod_Pa) continue;
    const double angle = (*row.boom_V - line.at_level) / line.per_rad;
    if (angle < w.window_low_rad || angle > w.window_high_rad) continue;
    angles.push_back(angle);
    forces.push_back(*row.head_Pa * w.head_m2 - *row.rod_Pa * w.rod_m2);
    times.push_back(row.time_s);
  }
  // The first tenth is left to what rings.
  const std::size_t skip = angles.size() / 10;
  const auto n = static_cast<Eigen::Index>(angles.size() - skip);
  Steady s;
  s.angle_rad = Eigen::Map<Eigen::VectorXd>(angles.data() + skip, n);
  s.force_N = Eigen::Map<Eigen::VectorXd>(forces.data() + skip, n);
  const double rate = (angles.back() - angles.front()) / (times.back() - times.front());
  s.speed_m_per_s = rate * w.geometry->liftCylinder(s.angle_rad.mean()).first;
  s.thickness = thickness(t.oil_Cel);
  return s;
}

Eigen::VectorXd quadratic(const Eigen::VectorXd& at, const Eigen::VectorXd& values) {
  Eigen::MatrixXd design(at.size(), 3);
  design << Eigen::VectorXd::Ones(at.size()), at, at.cwiseAbs2();
  return design.colPivHouseholderQr().solve(values);
}

double at(const Eigen::VectorXd& curve, double angle) {
  return curve(0) + angle * (curve(1) + angle * curve(2));
}

/// Knows that losses follow viscosity, that viscosity follows Vogel, and friction the force.
struct Plain {
  Eigen::VectorXd tare;  // N at rest, friction in it, over angle
  double per_speed = 0.0;
  double friction = kUsualFriction;
  std::optional<Eigen::VectorXd> span;  // N per kg over angle, where no linkage tells it
  double scale = 1.0;
};

double loadOf(const World& w, const Plain& plain, const Steady& s, const Pin& centre) {
  const double tilt_m = w.geometry->geometry().tilt_cylinder_extended.inMetres();
  double sum = 0.0;
  for (Eigen::Index i = 0; i < s.angle_rad.size(); ++i) {
    const double angle = s.angle_rad(i);
    const double load =
        s.force_N(i) - at(plain.tare, angle) - plain.per_speed * s.speed_m_per_s * s.thickness;
    const double per_kg = plain.span ? at(*plain.span, angle)
                                     : (1.0 + plain.friction) * w.gravity *
                                           w.geometry->bucketPoint(angle, tilt_m, centre)->y.first /
                                           w.geometry->liftCylinder(angle).first;
    sum += load / per_kg;
  }
  return plain.scale * sum / static_cast<double>(s.angle_rad.size());
}

}  // namespace

Expected<PlainScenario> drawPlain(const PlainRanges& ranges, bool linkage, bool lowering, bool test_mass,
                                  Random random) {
  const double machine_t = random.uniform(8.0, 25.0);
  const double size = std::round(std::cbrt(machine_t / 15.0) * 100.0) / 100.0;
  const auto geometry = Linkage::make(geometryOf(size));
  if (!geometry) return std::unexpected(geometry.error());
  World w{};
  w.geometry = &*geometry;
  w.gravity = 9.80665;
  w.rated_kg = std::round(machine_t * 6.0) * 50.0;
  w.low_rad = -38.0 * kDegree;
  w.high_rad = 45.0 * kDegree;
  w.window_low_rad = std::round(random.uniform(-12.0, -5.0)) * kDegree;
  w.window_high_rad = std::round(random.uniform(12.0, 20.0)) * kDegree;
  w.boom_kg = 0.09 * machine_t * 1e3 * random.uniform(0.9, 1.1);
  w.boom_along_m = 1.3 * size;
  w.boom_across_m = 0.1 * size;
  const double bucket_kg = std::round(0.08 * machine_t * 1e3 * random.uniform(0.9, 1.1));
  const double coupler_kg = std::round(0.02 * machine_t * 1e3);
  w.empty = {{bucket_kg, pinAt(0.45 * size, 0.2 * size)}, {coupler_kg, pinAt(0.0, 0.1 * size)}};
  const Pin centre = pinAt(std::round(60.0 * size) / 100.0, std::round(45.0 * size) / 100.0);

  const auto full = weightAt(w, 0.0, 0.0, Body{w.rated_kg, centre});
  if (!full) return std::unexpected(full.error());
  const double full_N = full->moment / geometry->liftCylinder(0.0).first;
  const double bore_m =
      std::round(std::sqrt(full_N / random.uniform(120e5, 170e5) / 2.0 * 4.0 / std::numbers::pi) * 200.0) /
      200.0;
  const double rod_m = std::round(bore_m * 0.58 * 200.0) / 200.0;
  w.head_m2 = 2.0 * std::numbers::pi / 4.0 * bore_m * bore_m;
  w.rod_m2 = w.head_m2 - 2.0 * std::numbers::pi / 4.0 * rod_m * rod_m;

  const double stroke_m = geometry->liftCylinder(w.high_rad).value - geometry->liftCylinder(w.low_rad).value;
  const double slow_m_per_s = stroke_m / random.uniform(7.5, 10.0);
  const double fast_m_per_s = stroke_m / random.uniform(4.0, 5.5);
  w.friction_share = std::max(0.0, kUsualFriction + 0.004 * random.normal());
  w.constant_friction_N =
      w.head_m2 * kBar *
      random.uniform(ranges.least_constant_friction_bar, ranges.most_constant_friction_bar);
  const double moving_N = w.head_m2 * kBar * random.uniform(1.5, 5.0);  // at the fast pace, 40 Cel
  const double orifice = random.uniform(0.0, ranges.most_orifice_share);
  w.viscous_N_s_per_m = (1.0 - orifice) * moving_N / fast_m_per_s;
  w.orifice_N_s2_per_m2 = orifice * moving_N / (fast_m_per_s * fast_m_per_s);
  w.rod_rest_Pa = kBar * random.uniform(1.0, 4.0);
  w.rod_Pa_s_per_m = kBar * random.uniform(2.0, 8.0) / fast_m_per_s;
  w.bounce_Hz[0] = random.uniform(1.2, 2.5);
  w.bounce_Hz[1] = random.uniform(3.0, 5.0);
  for (int k : {0, 1}) {
    w.damping[k] = random.uniform(0.06, 0.15);
    w.liveliness[k] = ranges.liveliness * random.uniform(0.2, 1.0);
  }
  w.nod_rad = random.uniform() < 0.5 ? 0.0 : random.uniform(0.3, 1.5) * kDegree;
  w.sensor_per_rad = 0.04 / kDegree;
  w.sensor_at_level = random.uniform(2.2, 2.5);
  w.sensor_noise = random.uniform(0.5e-3, 2e-3);
  w.sensor_bow_rad = 0.1 * kDegree * random.normal();
  w.range_Pa = 400.0 * kBar;
  w.span = 0.0025 * random.normal();
  w.bow = 0.0010 * random.normal();
  w.zero_Pa = 0.3 * kBar * random.normal();
  w.noise_Pa = random.uniform(0.1, 0.4) * kBar;
  w.ripple_Pa = random.uniform(0.0, 0.3) * kBar;
  w.jitter_s = random.uniform(0.0, 2e-3);
  w.missing = random.uniform(0.0, 0.02);

  PlainScenario scenario;
  scenario.rated_kg = w.rated_kg;
  Json job = {{"format", "hingepin-job/1"}};
  const auto metres = [](Length length) { return fmt::format("{:.4f} m", length.inMetres()); };
  const auto pin = [&](const Pin& p) { return Json{metres(p.along), metres(p.across)}; };
  const auto degrees = [](double rad) { return fmt::format("{:.2f} deg", rad / kDegree); };
  job["unit"] = {{"id", "P-1"},
                 {"lift_cylinders",
                  {{"count", 2},
                   {"bore", fmt::format("{:.0f} mm", bore_m * 1e3)},
                   {"rod", fmt::format("{:.0f} mm", rod_m * 1e3)}}},
                 {"rated_payload", fmt::format("{:.0f} kg", w.rated_kg)},
                 {"weigh_window", {degrees(w.window_low_rad), degrees(w.window_high_rad)}}};
  if (linkage) {
    const linkage::ZBarGeometry& g = geometry->geometry();
    job["unit"]["linkage"] = {{"boom_length", metres(g.boom_length)},
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
  job["attachment"] = {{"id", "B-1"},
                       {"coupler", fmt::format("{:.0f} kg", coupler_kg)},
                       {"bucket", fmt::format("{:.0f} kg", bucket_kg)},
                       {"payload_center", pin(centre)}};
  job["gravity"] = fmt::format("{:.5f} m/s2", w.gravity);
  job["poses"] = Json::array();
  Eigen::MatrixXd line_design(3, 2);
  Eigen::VectorXd line_readings(3);
  int row = 0;
  for (const auto& [name, angle, u_deg] :
       {std::tuple{"boom-lowest", w.low_rad, 0.3}, std::tuple{"boom-highest", w.high_rad, 0.3},
        std::tuple{"boom-reference", 3.0 * kDegree, 0.5}}) {
    const double told_deg = std::round((angle / kDegree + u_deg * random.normal()) * 10.0) / 10.0;
    const double shown = angle + w.sensor_bow_rad * std::sin(2.0 * angle);
    const double reading = std::round((w.sensor_at_level + w.sensor_per_rad * shown) * 100.0) / 100.0;
    job["poses"].push_back({{"pose", name},
                            {"boom_angle", fmt::format("{:.1f} deg", told_deg)},
                            {"boom_angle_u", fmt::format("{:.1f} deg", u_deg)},
                            {"boom_sensor", fmt::format("{:.2f} V", reading)}});
    line_design.row(row) << 1.0 / u_deg, told_deg * kDegree / u_deg;
    line_readings(row++) = reading / u_deg;
  }
  const Eigen::VectorXd told = line_design.colPivHouseholderQr().solve(line_readings);
  const Line line{told(0), told(1)};

  const double taught_Cel = random.uniform(42.0, 70.0);
  scenario.taught_Cel = taught_Cel;
  const auto scattered = [&](double mass_kg) {
    return Body{mass_kg, pinAt(centre.along.inMetres() + ranges.centre_sd_m * random.normal(),
                               centre.across.inMetres() + ranges.centre_sd_m * random.normal())};
  };
  const double bottom_rad = w.low_rad + 0.5 * kDegree;
  const double top_rad = w.high_rad - 1.0 * kDegree;
  job["lifts"] = Json::array();
  Plain plain;
  const auto teach = [&](const char* kind, const char* pace, const char* file, const Travel& t,
                         double mass_kg) -> Expected<Steady> {
    const auto rows = travel(w, t, random);
    if (!rows) return std::unexpected(rows.error());
    scenario.files[file] = csvOf(*rows, t.oil_Cel);
    Json lift = {{"kind", kind}, {"pace", pace}, {"log", file}};
    if (mass_kg > 0.0) lift["mass"] = fmt::format("{:.0f} kg", mass_kg);
    job["lifts"].push_back(lift);
    return steadyOf(w, line, t, *rows);
  };
  const auto warmth = [&] { return taught_Cel + random.uniform(0.0, 5.0); };
  const auto slow =
      teach("empty", "slow", "empty-slow.csv", {true, bottom_rad, top_rad, slow_m_per_s, warmth(), {}}, 0.0);
  if (!slow) return std::unexpected(slow.error());
  const auto fast =
      teach("empty", "fast", "empty-fast.csv", {true, bottom_rad, top_rad, fast_m_per_s, warmth(), {}}, 0.0);
  if (!fast) return std::unexpected(fast.error());
  const Eigen::VectorXd slow_curve = quadratic(slow->angle_rad, slow->force_N);
  const double middle_rad = 0.5 * (w.window_low_rad + w.window_high_rad);
  plain.per_speed = (at(quadratic(fast->angle_rad, fast->force_N), middle_rad) - at(slow_curve, middle_rad)) /
                    (fast->speed_m_per_s * fast->thickness - slow->speed_m_per_s * slow->thickness);
  plain.tare = slow_curve;
  plain.tare(0) -= plain.per_speed * slow->speed_m_per_s * slow->thickness;
  if (lowering) {
    const auto down = teach("empty", "slow", "empty-down.csv",
                            {false, top_rad, bottom_rad, slow_m_per_s, warmth(), {}}, 0.0);
    if (!down) return std::unexpected(down.error());
    const double lowered = at(quadratic(down->angle_rad, down->force_N), middle_rad) -
                           plain.per_speed * down->speed_m_per_s * down->thickness;
    const double risen = at(plain.tare, middle_rad);
    plain.friction = (risen - lowered) / (risen + lowered);
  }
  if (test_mass) {
    const double mass_kg = std::round(random.uniform(0.4, 0.7) * w.rated_kg / 50.0) * 50.0;
    const auto mass = teach("test-mass", "slow", "mass.csv",
                            {true, bottom_rad, top_rad, slow_m_per_s, warmth(), scattered(mass_kg)}, mass_kg);
    if (!mass) return std::unexpected(mass.error());
    if (linkage) {
      plain.scale = mass_kg / loadOf(w, plain, *mass, centre);
    } else {
      Eigen::VectorXd per_kg(mass->angle_rad.size());
      for (Eigen::Index i = 0; i < per_kg.size(); ++i)
        per_kg(i) = (mass->force_N(i) - at(plain.tare, mass->angle_rad(i)) -
                     plain.per_speed * mass->speed_m_per_s * mass->thickness) /
                    mass_kg;
      plain.span = quadratic(mass->angle_rad, per_kg);
    }
  }
  scenario.files["job.json"] = job.dump(2);

  for (int k = 1; k <= 4; ++k) {
    double from_rad = bottom_rad;
    double to_rad = top_rad;
    if (random.uniform() < 0.4) {
      from_rad = w.window_low_rad + random.uniform(-18.0, 4.0) * kDegree;
      to_rad = w.window_high_rad + random.uniform(-3.0, 15.0) * kDegree;
    }
    const double mass_kg = random.uniform(0.2, 1.0) * w.rated_kg;
    const Travel t{true,
                   from_rad,
                   std::min(to_rad, top_rad),
                   random.uniform(slow_m_per_s, fast_m_per_s),
                   random.uniform(40.0, 75.0),
                   scattered(mass_kg)};
    const auto rows = travel(w, t, random);
    if (!rows) return std::unexpected(rows.error());
    PlainLoad load{fmt::format("load-{}.csv", k), mass_kg, 0.0};
    scenario.files[load.file] = csvOf(*rows, t.oil_Cel);
    load.plainly_kg = loadOf(w, plain, steadyOf(w, line, t, *rows), centre);
    scenario.loads.push_back(load);
  }
  return scenario;
}

}  // namespace hingepin::benchmarks
