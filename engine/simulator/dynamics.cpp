// SPDX-License-Identifier: Apache-2.0
#include "engine/simulator/dynamics.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <utility>

#include "engine/units/degree.h"

namespace hingepin::simulator {

namespace {

constexpr double kAtmosphere_Pa = 1.01325e5;
constexpr double kGridStep_rad = 0.25 * kDegree;
constexpr double kGridMargin_rad = 1.0 * kDegree;
constexpr double kLeverTick_s = 5e-3;
// Polytropic exponent of the suspension's nitrogen over a second or so, between isothermal 1 and
// adiabatic 1.4.
constexpr double kGasExponent = 1.2;
// Steel on steel at the cylinder's end: stiff against the oil, soft against the step.
constexpr double kEndStop_N_per_m = 3e8;
constexpr double kEndStop_N_s_per_m = 2e6;
// A bush that has let go keeps this share of its torque.
constexpr double kBushKeeps = 0.15;

struct Vec {
  double x = 0.0;
  double y = 0.0;
};

Vec operator+(Vec a, Vec b) { return {a.x + b.x, a.y + b.y}; }
Vec turned(double angle_rad, double along, double across) {
  const double c = std::cos(angle_rad);
  const double s = std::sin(angle_rad);
  return {along * c - across * s, along * s + across * c};
}
Vec toVec(const std::array<double, 2>& p) { return {p[0], p[1]}; }

struct Placed {
  double mass_kg;
  double inertia_kg_m2;
  Vec at;  // from the rear wheels' foot
  double angle_rad;
};

constexpr std::size_t kParts = 7;

struct Position {
  std::array<Placed, kParts> parts;
  double cylinder_m;
  Vec cylinder_way;  // unit vector, frame pin to boom pin
};

Expected<Position> positionAt(const Machine& machine, const linkage::Linkage& linkage, const Part& load,
                              double boom_rad) {
  const auto tilt = linkage.tilt(boom_rad, machine.tilt_length_m);
  if (!tilt) return std::unexpected(tilt.error());
  const auto pins = linkage.pins(boom_rad, machine.tilt_length_m);
  if (!pins) return std::unexpected(pins.error());

  const MovingParts& m = machine.parts;
  const Vec pivot{machine.frame.boom_pivot_forward_m, machine.frame.boom_pivot_up_m};
  const double bucket_rad = tilt->bucket_by_boom.value;
  const double crank_rad =
      boom_rad + tilt->bellcrank_by_boom.value + machine.as_built.bellcrank_angle.inRadians();
  const Vec hinge = toVec(pins->hinge_pin);
  const Vec crank = toVec(pins->bellcrank_pivot);
  const Vec link_top = toVec(pins->bellcrank_link_pin);
  const Vec link_low = toVec(pins->bucket_link_pin);
  const double link_m = machine.as_built.link_length.inMetres();
  const auto fixedTo = [&](Vec origin, double angle_rad, const Part& part) {
    return Placed{part.mass_kg, part.inertia_kg_m2,
                  pivot + origin + turned(angle_rad, part.along_m, part.across_m), angle_rad};
  };

  Position position{};
  position.parts = {
      fixedTo({}, boom_rad, m.boom),
      fixedTo(crank, crank_rad, m.bellcrank),
      Placed{m.link_kg, m.link_kg * link_m * link_m / 12.0,
             pivot + Vec{0.5 * (link_top.x + link_low.x), 0.5 * (link_top.y + link_low.y)},
             std::atan2(link_low.y - link_top.y, link_low.x - link_top.x)},
      Placed{m.tilt_cylinder_kg, 0.0, pivot + toVec(pins->bellcrank_tilt_pin), 0.0},
      fixedTo(hinge, bucket_rad, m.bucket),
      fixedTo(hinge, bucket_rad, m.coupler),
      fixedTo(hinge, bucket_rad, load),
  };
  position.cylinder_m = linkage.liftCylinder(boom_rad).value;
  const Vec from = toVec(pins->lift_frame_pin);
  const Vec to = toVec(pins->lift_boom_pin);
  position.cylinder_way = {(to.x - from.x) / position.cylinder_m, (to.y - from.y) / position.cylinder_m};
  return position;
}

/// First derivative on an even grid, by five points, to the fourth order of the step.
double slopeAt(const std::vector<double>& f, std::size_t i, double step) {
  const std::size_t n = f.size();
  static constexpr double kWeights[5][5] = {{-25, 48, -36, 16, -3},
                                            {-3, -10, 18, -6, 1},
                                            {1, -8, 0, 8, -1},
                                            {-1, 6, -18, 10, 3},
                                            {3, -16, 36, -48, 25}};
  const std::size_t row = i < 2 ? i : i + 2 >= n ? 4 - (n - 1 - i) : 2;
  double sum = 0.0;
  for (std::size_t k = 0; k < 5; ++k) sum += kWeights[row][k] * f[i - row + k];
  return sum / (12.0 * step);
}

void unwrap(std::vector<double>& angles_rad) {
  for (std::size_t i = 1; i < angles_rad.size(); ++i) {
    angles_rad[i] =
        angles_rad[i - 1] + std::remainder(angles_rad[i] - angles_rad[i - 1], 2.0 * std::numbers::pi);
  }
}

Vec firstMoment(const Position& position, const Frame& frame) {
  Vec sum{frame.mass_kg * frame.forward_m, frame.mass_kg * frame.up_m};
  for (const Placed& part : position.parts)
    sum = sum + Vec{part.mass_kg * part.at.x, part.mass_kg * part.at.y};
  return sum;
}

}  // namespace

Expected<MechanicsTable> MechanicsTable::make(const Machine& machine, const Part& load) {
  const auto linkage = linkage::Linkage::make(machine.as_built);
  if (!linkage) return std::unexpected(linkage.error());

  MechanicsTable table;
  table.step_rad_ = kGridStep_rad;
  table.low_rad_ = machine.lowest_rad - kGridMargin_rad;
  const auto count = static_cast<std::size_t>(
      std::ceil((machine.highest_rad - machine.lowest_rad + 2.0 * kGridMargin_rad) / kGridStep_rad) + 1.0);

  std::vector<Position> positions;
  positions.reserve(count);
  for (std::size_t i = 0; i < count; ++i) {
    const auto position =
        positionAt(machine, *linkage, load, table.low_rad_ + static_cast<double>(i) * kGridStep_rad);
    if (!position) return std::unexpected(position.error());
    positions.push_back(*position);
  }
  const auto column = [&](auto&& pick) {
    std::vector<double> values(count);
    for (std::size_t i = 0; i < count; ++i) values[i] = pick(positions[i]);
    return values;
  };

  enum { kCylinder, kForward, kUp, kBoom, kMixed, kPitch, kPinLever };
  std::array<std::vector<double>, kFunctions> f;
  for (auto& values : f) values.assign(count, 0.0);
  f[kCylinder] = column([](const Position& p) { return p.cylinder_m; });
  for (std::size_t i = 0; i < count; ++i) {
    const Vec moment = firstMoment(positions[i], machine.frame);
    f[kForward][i] = moment.x;
    f[kUp][i] = moment.y;
    const Frame& frame = machine.frame;
    f[kPitch][i] =
        frame.inertia_kg_m2 + frame.mass_kg * (frame.forward_m * frame.forward_m + frame.up_m * frame.up_m);
  }
  for (std::size_t part = 0; part < kParts; ++part) {
    const auto x = column([&](const Position& p) { return p.parts[part].at.x; });
    const auto y = column([&](const Position& p) { return p.parts[part].at.y; });
    auto angle = column([&](const Position& p) { return p.parts[part].angle_rad; });
    unwrap(angle);
    const double mass = positions[0].parts[part].mass_kg;
    const double inertia = positions[0].parts[part].inertia_kg_m2;
    for (std::size_t i = 0; i < count; ++i) {
      const double dx = slopeAt(x, i, kGridStep_rad);
      const double dy = slopeAt(y, i, kGridStep_rad);
      const double turn = slopeAt(angle, i, kGridStep_rad);
      f[kBoom][i] += mass * (dx * dx + dy * dy) + inertia * turn * turn;
      f[kMixed][i] += mass * (x[i] * dy - y[i] * dx) + inertia * turn;
      f[kPitch][i] += mass * (x[i] * x[i] + y[i] * y[i]) + inertia;
    }
  }

  // Pins: the boom's pivot carries what cylinder and weight leave over, the cylinder's two pins its own
  // force. Each rubs as it turns. Reactions from the static state; the rest of the linkage's pins turn little
  // or carry little.
  double boom_side_kg = 0.0;
  for (const Placed& part : positions[0].parts) boom_side_kg += part.mass_kg;
  auto way = column([](const Position& p) { return std::atan2(p.cylinder_way.y, p.cylinder_way.x); });
  unwrap(way);
  for (std::size_t i = 0; i < count; ++i) {
    const double force = machine.gravity_m_per_s2 * slopeAt(f[kUp], i, kGridStep_rad) /
                         slopeAt(f[kCylinder], i, kGridStep_rad);
    const Vec reaction{force * positions[i].cylinder_way.x,
                       force * positions[i].cylinder_way.y - machine.gravity_m_per_s2 * boom_side_kg};
    const double cylinder_turn = slopeAt(way, i, kGridStep_rad);
    f[kPinLever][i] =
        machine.friction.pin_radius_m * (std::hypot(reaction.x, reaction.y) / std::max(std::abs(force), 1.0) +
                                         std::abs(cylinder_turn) + std::abs(1.0 - cylinder_turn));
  }

  table.cells_.resize(count - 1);
  for (int k = 0; k < kFunctions; ++k) {
    for (std::size_t i = 0; i + 1 < count; ++i) {
      const double left = slopeAt(f[k], i, kGridStep_rad) * kGridStep_rad;
      const double right = slopeAt(f[k], i + 1, kGridStep_rad) * kGridStep_rad;
      const double rise = f[k][i + 1] - f[k][i];
      table.cells_[i][k] = {f[k][i], left, 3.0 * rise - 2.0 * left - right, left + right - 2.0 * rise};
    }
  }
  return table;
}

Mechanics MechanicsTable::at(double boom_rad) const {
  const double place = (boom_rad - low_rad_) / step_rad_;
  const double last = static_cast<double>(cells_.size() - 1);
  const auto cell = static_cast<std::size_t>(std::clamp(std::floor(place), 0.0, last));
  const double u = place - static_cast<double>(cell);
  const double per_step = 1.0 / step_rad_;
  const Cell& c = cells_[cell];
  const auto slope = [&](int k) {
    return Slope{c[k][0] + u * (c[k][1] + u * (c[k][2] + u * c[k][3])),
                 per_step * (c[k][1] + u * (2.0 * c[k][2] + u * 3.0 * c[k][3]))};
  };
  return {slope(0), slope(1), slope(2), slope(3), slope(4), slope(5), slope(6)};
}

double headArea(const LiftHydraulics& h) {
  return h.cylinders * std::numbers::pi / 4.0 * h.bore_m * h.bore_m;
}

double rodArea(const LiftHydraulics& h) {
  return headArea(h) - h.cylinders * std::numbers::pi / 4.0 * h.rod_m * h.rod_m;
}

namespace {

struct State {
  double boom;
  double boom_rate;
  double pitch;
  double pitch_rate;
  double head_Pa;
  double seal;  // -1 to 1: which way, and how far, friction is set
};

State operator+(const State& a, const State& b) {
  return {a.boom + b.boom,       a.boom_rate + b.boom_rate,
          a.pitch + b.pitch,     a.pitch_rate + b.pitch_rate,
          a.head_Pa + b.head_Pa, a.seal + b.seal};
}

State operator*(double k, const State& a) {
  return {k * a.boom, k * a.boom_rate, k * a.pitch, k * a.pitch_rate, k * a.head_Pa, k * a.seal};
}

/// The machine, ready to give the rates of its state.
class Loader {
 public:
  Loader(const Machine& machine, const MechanicsTable& table, double oil_Cel, double slope_rad,
         double tyre_rest_rad)
      : machine_(machine),
        table_(table),
        thickness_(viscosity(machine.oil, oil_Cel) / viscosity(machine.oil, 40.0)),
        head_m2_(headArea(machine.hydraulics)),
        rod_m2_(rodArea(machine.hydraulics)),
        slope_rad_(slope_rad),
        tyre_rest_rad_(tyre_rest_rad),
        on_stands_(std::isinf(machine.frame.tyre_stiffness_N_m_per_rad)) {}

  /// What the valve lets through for a flow that the lever asks, m3/s.
  [[nodiscard]] double flow(double asked, double head_Pa) const {
    const LiftHydraulics& h = machine_.hydraulics;
    if (asked <= 0.0) return asked;
    const double left = std::clamp((h.relief_Pa - head_Pa) / (0.03 * h.relief_Pa), 0.0, 1.0);
    return asked * left * (1.0 - h.flow_droop * std::max(head_Pa, 0.0) / h.relief_Pa);
  }

  [[nodiscard]] double headSensor(const State& s, double asked) const {
    const double q = flow(asked, s.head_Pa);
    return s.head_Pa + machine_.hydraulics.head_line_laminar * thickness_ * q +
           machine_.hydraulics.head_line_orifice * q * std::abs(q);
  }

  /// Rod pressure at the sensor, and in the cylinder beyond its line.
  [[nodiscard]] std::pair<double, double> rod(double cylinder_speed) const {
    const LiftHydraulics& h = machine_.hydraulics;
    const double q = rod_m2_ * cylinder_speed;
    const double at_sensor = h.rod_back_pressure_Pa + (q > 0.0 ? h.rod_valve_orifice * q * q : 0.0);
    const double inside =
        at_sensor + h.rod_line_laminar * thickness_ * q + h.rod_line_orifice * q * std::abs(q);
    return {at_sensor, std::max(inside, 0.0)};
  }

  /// Torque on the boom of cylinder pressure less friction.
  [[nodiscard]] double boomTorque(const Mechanics& m, const State& s, double cylinder_speed) const {
    const LiftHydraulics& h = machine_.hydraulics;
    const Friction& f = machine_.friction;
    const double rod_Pa = rod(cylinder_speed).second;
    const double pressed = s.head_Pa * head_m2_ - rod_Pa * rod_m2_;
    const double fast = cylinder_speed / f.stribeck_speed_m_per_s;
    const double stribeck = 1.0 + (f.breakaway_ratio - 1.0) * std::exp(-fast * fast);
    const double coulomb =
        h.cylinders * (f.seal_preload_N + f.seal_N_per_Pa * (std::max(s.head_Pa, 0.0) + rod_Pa));
    const double seals =
        coulomb * stribeck * s.seal + h.cylinders * f.seal_viscous_N_s_per_m * thickness_ * cylinder_speed;
    const double pins = f.pin_coefficient * m.pin_lever.value * std::abs(pressed) * stribeck * s.seal;
    double stop = 0.0;
    if (const double in = h.shortest_m - m.cylinder.value; in > 0.0) {
      stop = std::max(0.0, kEndStop_N_per_m * in - kEndStop_N_s_per_m * cylinder_speed);
    } else if (const double out = m.cylinder.value - h.longest_m; out > 0.0) {
      stop = -std::max(0.0, kEndStop_N_per_m * out + kEndStop_N_s_per_m * cylinder_speed);
    }
    return (pressed - seals + stop) * m.cylinder.by_boom - pins -
           bush_N_m_per_rad_ * (s.boom - bush_from_rad_);
  }

  [[nodiscard]] State rates(const State& s, double asked) const {
    const LiftHydraulics& h = machine_.hydraulics;
    const Mechanics m = table_.at(s.boom);
    const double speed = m.cylinder.by_boom * s.boom_rate;
    const auto [lift, nod] = gravity(m, s.pitch);
    const double w = s.boom_rate;
    const double W = s.pitch_rate;
    const double on_boom =
        boomTorque(m, s, speed) - lift - 0.5 * m.boom.by_boom * w * w + 0.5 * m.pitch.by_boom * W * W;

    State d{};
    d.boom = w;
    if (on_stands_) {
      d.boom_rate = on_boom / m.boom.value;
    } else {
      const Frame& frame = machine_.frame;
      const double on_frame = -frame.tyre_stiffness_N_m_per_rad * (s.pitch - tyre_rest_rad_) -
                              frame.tyre_damping_N_m_s_per_rad * W - nod - m.mixed.by_boom * w * w -
                              m.pitch.by_boom * w * W;
      const double determinant = m.boom.value * m.pitch.value - m.mixed.value * m.mixed.value;
      d.boom_rate = (m.pitch.value * on_boom - m.mixed.value * on_frame) / determinant;
      d.pitch = W;
      d.pitch_rate = (m.boom.value * on_frame - m.mixed.value * on_boom) / determinant;
    }

    const double absolute_Pa = std::max(s.head_Pa + kAtmosphere_Pa, 5e3);
    const double volume = h.dead_volume_m3 + head_m2_ * std::max(m.cylinder.value - h.shortest_m, 0.0);
    double give =
        volume * (1.0 / h.bulk_modulus_Pa + h.air_share * kAtmosphere_Pa / (absolute_Pa * absolute_Pa));
    const double charge_Pa = h.suspension_precharge_Pa + kAtmosphere_Pa;
    if (h.suspension_gas_m3 > 0.0 && absolute_Pa > charge_Pa) {
      give += h.suspension_gas_m3 * std::pow(charge_Pa / absolute_Pa, 1.0 / kGasExponent) /
              (kGasExponent * absolute_Pa);
    }
    const double leak = h.piston_leak_m3_per_s_Pa * (s.head_Pa - rod(speed).second);
    d.head_Pa = (flow(asked, s.head_Pa) - head_m2_ * speed - leak) / give;
    d.seal = (speed - std::abs(speed) * s.seal) / machine_.friction.presliding_m;
    return d;
  }

  /// At rest with friction set as given: pitch and cylinder pressure in balance.
  [[nodiscard]] State rest(double boom_rad, double seal) const {
    State s{boom_rad, 0.0, 0.0, 0.0, 0.0, seal};
    const Mechanics m = table_.at(boom_rad);
    // Both are contractions: friction is a small share of the force, pitch a small angle.
    for (int i = 0; i < 30; ++i) {
      if (!on_stands_) {
        s.pitch = tyre_rest_rad_ - gravity(m, s.pitch).second / machine_.frame.tyre_stiffness_N_m_per_rad;
      }
      s.head_Pa += (gravity(m, s.pitch).first - boomTorque(m, s, 0.0)) / (head_m2_ * m.cylinder.by_boom);
    }
    return s;
  }

  /// A sticking bush starts unwound at the first state.
  void setBush(const State& s) {
    const Friction& f = machine_.friction;
    if (f.bush_catch_share <= 0.0) return;
    bush_from_rad_ = s.boom;
    bush_N_m_per_rad_ =
        f.bush_catch_share * s.head_Pa * head_m2_ * table_.at(s.boom).cylinder.by_boom / f.bush_wind_up_rad;
  }
  void letBushGo(const State& s) {
    const double wound = s.boom - bush_from_rad_;
    if (bush_N_m_per_rad_ > 0.0 && std::abs(wound) > machine_.friction.bush_wind_up_rad) {
      bush_from_rad_ = s.boom - std::copysign(kBushKeeps * machine_.friction.bush_wind_up_rad, wound);
    }
  }

  [[nodiscard]] Instant instant(double time_s, const State& s, double asked) const {
    const double speed = table_.at(s.boom).cylinder.by_boom * s.boom_rate;
    return {time_s,           s.boom,    s.boom_rate, s.pitch, headSensor(s, asked),
            rod(speed).first, s.head_Pa, s.pitch_rate};
  }

 private:
  /// dV/d(boom) and dV/d(pitch).
  [[nodiscard]] std::pair<double, double> gravity(const Mechanics& m, double pitch_rad) const {
    const double s = std::sin(pitch_rad + slope_rad_);
    const double c = std::cos(pitch_rad + slope_rad_);
    const double g = machine_.gravity_m_per_s2;
    return {g * (m.forward.by_boom * s + m.up.by_boom * c), g * (m.forward.value * c - m.up.value * s)};
  }

  const Machine& machine_;
  const MechanicsTable& table_;
  double thickness_;
  double head_m2_;
  double rod_m2_;
  double slope_rad_;
  double tyre_rest_rad_;
  bool on_stands_;
  double bush_from_rad_ = 0.0;
  double bush_N_m_per_rad_ = 0.0;
};

/// The lever: looks at the boom every tick and says which flow it will ask for at the tick's end.
class Lever {
 public:
  Lever(const Plan& plan, double flow_per_speed) : plan_(plan), flow_per_speed_(flow_per_speed) {}

  [[nodiscard]] bool done() const { return done_; }

  double look(double time_s, double boom_rad, double boom_rate, std::vector<double>& held_s) {
    if (still_until_s_ < 0.0) still_until_s_ = plan_.wait_s;
    if (!moving_ && time_s >= still_until_s_ - 1e-9) {
      if (index_ > 0 && held_s.size() < index_) held_s.push_back(time_s);
      if (index_ == plan_.moves.size()) {
        done_ = true;
        return asked_;
      }
      const Move& next = plan_.moves[index_];
      way_ = next.to_rad > boom_rad ? 1.0 : -1.0;
      moving_ = true;
    }
    if (!moving_) {
      const double full = flow_per_speed_ * plan_.moves[index_ > 0 ? index_ - 1 : 0].speed_rad_per_s;
      const double back_s = plan_.moves[index_ > 0 ? index_ - 1 : 0].stop_s;
      return asked_ = toward(0.0, full * kLeverTick_s / std::max(back_s, kLeverTick_s));
    }
    const Move& m = plan_.moves[index_];
    const double full = flow_per_speed_ * m.speed_rad_per_s;
    const double left = way_ * (m.to_rad - boom_rad);
    // What the boom still goes while the lever comes back.
    const double back_s = m.stop_s * std::min(std::abs(asked_) / full, 1.0);
    if (left <= 0.5 * std::abs(boom_rate) * back_s) {
      moving_ = false;
      still_until_s_ = time_s + m.stop_s + m.hold_s;
      ++index_;
      return asked_ = toward(0.0, full * kLeverTick_s / std::max(m.stop_s, kLeverTick_s));
    }
    double share = 1.0;
    if (left < m.slow_down_rad) share = m.slow_down_to + (1.0 - m.slow_down_to) * left / m.slow_down_rad;
    const double turn = 2.0 * std::numbers::pi * time_s;
    const double wobble = plan_.lever_wobble * (std::sin(0.13 * turn + plan_.lever_phase_rad) +
                                                0.5 * std::sin(0.37 * turn + 1.7 * plan_.lever_phase_rad));
    return asked_ = toward(way_ * full * share * (1.0 + wobble),
                           full * kLeverTick_s / std::max(m.ramp_s, kLeverTick_s));
  }

  [[nodiscard]] double asked() const { return asked_; }

 private:
  [[nodiscard]] double toward(double target, double most) const {
    return asked_ + std::clamp(target - asked_, -most, most);
  }

  const Plan& plan_;
  double flow_per_speed_;
  double asked_ = 0.0;
  double way_ = 1.0;
  double still_until_s_ = -1.0;
  std::size_t index_ = 0;
  bool moving_ = false;
  bool done_ = false;
};

}  // namespace

Expected<Motion> move(const Machine& machine, const Part& load, double oil_Cel, double slope_rad,
                      const Plan& plan, const Integration& integration) {
  const auto outside = [&](double angle_rad) {
    return angle_rad < machine.lowest_rad - 1e-9 || angle_rad > machine.highest_rad + 1e-9;
  };
  bool leaves = outside(plan.from_rad);
  for (const Move& m : plan.moves) leaves = leaves || outside(m.to_rad);
  if (leaves) {
    return fail(ErrorKind::InvalidInput, "simulator-outside-travel",
                {{"low", Amount{machine.lowest_rad / kDegree, "deg", 1}},
                 {"high", Amount{machine.highest_rad / kDegree, "deg", 1}}});
  }
  const auto table = MechanicsTable::make(machine, load);
  if (!table) return std::unexpected(table.error());

  // The tyres' rest: the empty machine stands level with its boom down.
  double tyre_rest_rad = 0.0;
  if (!std::isinf(machine.frame.tyre_stiffness_N_m_per_rad)) {
    const auto linkage = linkage::Linkage::make(machine.as_built);
    const auto down = positionAt(machine, *linkage, Part{}, machine.lowest_rad);
    if (!down) return std::unexpected(down.error());
    tyre_rest_rad = machine.gravity_m_per_s2 * firstMoment(*down, machine.frame).x /
                    machine.frame.tyre_stiffness_N_m_per_rad;
  }

  Loader loader(machine, *table, oil_Cel, slope_rad, tyre_rest_rad);
  State s = loader.rest(plan.from_rad, plan.seal_state);
  if (s.head_Pa > 0.97 * machine.hydraulics.relief_Pa) {
    return fail(ErrorKind::InvalidInput, "simulator-load-too-heavy",
                {{"pressure", Amount{s.head_Pa / 1e5, "bar", 0}},
                 {"relief", Amount{machine.hydraulics.relief_Pa / 1e5, "bar", 0}}});
  }
  loader.setBush(s);

  const double travel_rad = machine.highest_rad - machine.lowest_rad;
  const double mean_arm_m =
      (table->at(machine.highest_rad).cylinder.value - table->at(machine.lowest_rad).cylinder.value) /
      travel_rad;
  Lever lever(plan, headArea(machine.hydraulics) * mean_arm_m);

  Motion motion;
  const int steps_a_tick = std::max(1, static_cast<int>(std::lround(kLeverTick_s / integration.step_s)));
  const double h = kLeverTick_s / steps_a_tick;
  const auto ticks = static_cast<long>(integration.longest_s / kLeverTick_s);
  motion.instants.reserve(16384);
  motion.instants.push_back(loader.instant(0.0, s, 0.0));
  for (long tick = 0; tick < ticks && !plan.moves.empty(); ++tick) {
    const double time_s = static_cast<double>(tick) * kLeverTick_s;
    const double before = lever.asked();
    const double after = lever.look(time_s, s.boom, s.boom_rate, motion.held_s);
    if (lever.done()) break;
    for (int step = 0; step < steps_a_tick; ++step) {
      const double from = before + (after - before) * step / steps_a_tick;
      const double to = before + (after - before) * (step + 1) / steps_a_tick;
      const double half = 0.5 * (from + to);
      const State k1 = loader.rates(s, from);
      const State k2 = loader.rates(s + 0.5 * h * k1, half);
      const State k3 = loader.rates(s + 0.5 * h * k2, half);
      const State k4 = loader.rates(s + h * k3, to);
      s = s + (h / 6.0) * (k1 + 2.0 * k2 + 2.0 * k3 + k4);
      loader.letBushGo(s);
      motion.instants.push_back(loader.instant(time_s + (step + 1) * h, s, to));
    }
  }
  return motion;
}

}  // namespace hingepin::simulator
