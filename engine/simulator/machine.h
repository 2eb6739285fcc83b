// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <limits>
#include <string>

#include "engine/base/error.h"
#include "engine/base/random.h"
#include "engine/linkage/linkage.h"
#include "engine/simulator/oil.h"

namespace hingepin::simulator {

/// A rigid part: mass, centre in the part's own frame, and inertia about that centre.
struct Part {
  double mass_kg = 0.0;
  double along_m = 0.0;
  double across_m = 0.0;
  double inertia_kg_m2 = 0.0;
};

/// What moves with the linkage. Frames: the boom's is A->B; the bellcrank's is its pivot and link arm; the
/// bucket's is B and the floor direction. The link is a slender rod.
struct MovingParts {
  Part boom;  ///< the lift cylinders' rods included
  Part bellcrank;
  double link_kg = 0.0;
  double tilt_cylinder_kg = 0.0;  ///< the half of it that hangs on the bellcrank
  Part bucket;
  Part coupler;
};

/// The lift cylinders, their oil and their lines. Resistances are for the flow of all cylinders together: a
/// laminar part (Pa s/m3) at 40 Cel, which follows the viscosity, and an orifice part (Pa s2/m6), which does
/// not.
struct LiftHydraulics {
  int cylinders = 2;
  double bore_m = 0.13;
  double rod_m = 0.075;
  double bulk_modulus_Pa = 0.5e9;  ///< of oil, hoses and the flex of the boom, without air
  double air_share = 0.005;        ///< volume of free air at atmospheric pressure
  double dead_volume_m3 = 0.006;   ///< head side and hoses with the cylinder at `shortest_m`
  double shortest_m = 1.0;         ///< cylinder length at its lower end stop
  double longest_m = 1.9;
  double relief_Pa = 250e5;
  double flow_droop = 0.08;  ///< share of the flow that the valve loses at relief pressure
  double piston_leak_m3_per_s_Pa = 0.0;
  double head_line_laminar = 0.0;  ///< between sensor and cylinder
  double head_line_orifice = 0.0;
  double rod_line_laminar = 0.0;  ///< between cylinder and sensor
  double rod_line_orifice = 0.0;
  double rod_back_pressure_Pa = 3e5;  ///< at the sensor, at rest
  double rod_valve_orifice = 0.0;     ///< from the sensor on to the tank
  double suspension_gas_m3 = 0.0;     ///< accumulator on the head side at its precharge; 0: valve shut
  double suspension_precharge_Pa = 25e5;
};

/// Friction of the lift cylinders' seals and of the pins. Seals: Coulomb by pressure with a preload, more at
/// breakaway and falling off with speed (Stribeck), and a viscous part by the oil. Pins: Coulomb by the
/// forces on them.
struct Friction {
  double seal_N_per_Pa = 0.8e-4;           ///< per cylinder
  double seal_preload_N = 150.0;           ///< per cylinder
  double seal_viscous_N_s_per_m = 8000.0;  ///< per cylinder at 40 Cel
  double breakaway_ratio = 1.2;
  double stribeck_speed_m_per_s = 0.01;
  double presliding_m = 3e-4;  ///< cylinder travel over which friction turns round
  double pin_coefficient = 0.02;
  double pin_radius_m = 0.04;
  double bush_catch_share =
      0.0;  ///< torque at which a sticking bush lets go, as a share of the lift torque at start
  double bush_wind_up_rad = 0.05;  ///< turn of the pin between one catch and the next
};

/// The rest of the machine, which turns about the rear wheels' foot when the front tyres give: positions are
/// forward of it and above ground.
struct Frame {
  double mass_kg = 12000.0;
  double forward_m = 1.3;
  double up_m = 1.2;
  double inertia_kg_m2 = 18000.0;
  double boom_pivot_forward_m = 2.6;
  double boom_pivot_up_m = 1.95;
  double tyre_stiffness_N_m_per_rad = std::numeric_limits<double>::infinity();  ///< infinite: on stands
  double tyre_damping_N_m_s_per_rad = 0.0;
};

enum class AngleOutput { Volt, Count, Degree };

/// An angle sensor: reading = offset + gain (angle + ripple), with noise, rounded to its step. In the
/// output's own unit. The ripple is first_rad sin(angle + first_phase) + second_rad sin(2 angle +
/// second_phase).
struct AngleSensor {
  AngleOutput output = AngleOutput::Volt;
  double offset = 2.3;
  double gain_per_rad = 2.3;  ///< negative: reversed sense
  double first_rad = 0.0;
  double first_phase_rad = 0.0;
  double second_rad = 0.0;
  double second_phase_rad = 0.0;
  double noise_sd = 0.0;
  double step = 0.0;
};

/// A pressure transducer. Its non-linearity is terminal-based: nothing at zero and at full range, a bow and
/// an S between, given by their largest value as a share of the range.
struct PressureSensor {
  double range_Pa = 400e5;
  double span_error = 0.0;  ///< share of the reading
  double bow = 0.0;
  double s_shape = 0.0;
  double zero_Pa = 0.0;
  double zero_Pa_per_K = 0.0;  ///< from 50 Cel
  double drift_Pa_per_s = 0.0;
  double noise_sd_Pa = 0.0;
  double step_Pa = 0.0;
};

/// A loader with everything about it that is true, and what its papers say where that differs.
struct Machine {
  std::string id;
  double operating_mass_kg = 15000.0;
  double rated_payload_kg = 4500.0;
  linkage::ZBarGeometry drawing;   ///< what the job file says
  linkage::ZBarGeometry as_built;  ///< what moves
  double lowest_rad = 0.0;
  double highest_rad = 0.0;
  double reference_rad = 0.0;
  double window_low_rad = 0.0;
  double window_high_rad = 0.0;
  double gravity_m_per_s2 = 9.80665;
  MovingParts parts;
  LiftHydraulics hydraulics;
  Friction friction;
  Frame frame;
  Oil oil;
  double oil_grade = 46.0;
  double tilt_length_m = 0.0;  ///< with the bucket racked back
  double heap_along_m = 0.6;   ///< the payload's usual centre, as the papers say
  double heap_across_m = 0.45;
  double heap_true_along_m = 0.6;
  double heap_true_across_m = 0.45;
  AngleSensor boom_sensor;
  AngleSensor bucket_sensor;
  PressureSensor head_sensor;
  PressureSensor rod_sensor;
  double engine_speed_per_min = 1500.0;
  double slow_rad_per_s = 0.16;  ///< mean boom speed of a slow and of a fast pass
  double fast_rad_per_s = 0.35;
  double load_friction_share = 0.01;  ///< truth: load-proportional friction over lift force near level
};

/// From what a machine is drawn. Each `_sd` is a standard deviation, each pair the ends of an even spread.
struct MachineRanges {
  double lightest_kg = 8000.0;  // operating mass
  double heaviest_kg = 25000.0;
  // Load-proportional share of the lift force. One public multibody example gives 1e-4 N/Pa per cylinder,
  // which is 0.75 % on a 130 mm bore; its own 81 mm bore 1.9 %; a boom pivot pin alone about 0.9 %. Drawn
  // again when negative.
  double friction_mean = 0.010;
  double friction_sd = 0.005;
  // Share of the reading. Class 0.25 transducers are usual (from memory); as a standard deviation that is a
  // sensor some years after its last adjustment (drift of 0.1 to 0.25 % a year, from memory).
  double span_sd = 0.0025;
  // Share of the range. The class is a limit that the maker keeps, so the largest deviation is spread evenly
  // within it (standard deviation 0.58 of the limit) and shared between bow and S by an even angle.
  double linearity_limit = 0.0025;
  // A zero error of 0.1 % of the range is what is left by an adjustment against open air (judgement).
  double zero_sd = 0.001;
  // Per kelvin: a total band of twice the class over -20 to 80 Cel (from memory) leaves 0.25 % over 50 K as
  // limit.
  double zero_per_K_sd = 2e-5;
  // Pump ripple, aliased, and electronics: the measured-looking record shows 0.6 bar steps and 2 bar while
  // travelling on rough ground; standing, 0.15 to 0.5 bar (judgement).
  double pressure_noise_low_Pa = 0.15e5;
  double pressure_noise_high_Pa = 0.5e5;
  // Ripple amplitude of an angle sensor, rad: linearity limits of 0.3 to 1.0 deg (from memory) over 120 deg.
  double angle_ripple_sd_rad = 0.0026;
  // Pins as built against the drawing: bored in one setting on a milling machine, 0.5 mm (common practice, no
  // source).
  double pin_sd_m = 0.0005;
  // Usual heap centre against the papers, m, and each load against the usual heap: together 0.08 m.
  double heap_sd_m = 0.06;
};

/// Each load's own centre against the machine's usual heap, m.
inline constexpr double kHeapScatter_m = 0.053;

/// A loader of `ranges`, its geometry scaled and varied from the practice unit's. Its loops close with the
/// bucket racked back and dumped, and its lift cylinder lengthens, over the whole travel.
[[nodiscard]] Machine drawMachine(Random& random, const MachineRanges& ranges = {});

/// The invented unit "L-27" of the practice job: its geometry is fixed, its hidden errors are drawn.
[[nodiscard]] Machine practiceMachine(Random& random, const MachineRanges& ranges = {});

/// Total piston area of the head side and of the rod side, m2.
[[nodiscard]] double headArea(const LiftHydraulics& hydraulics);
[[nodiscard]] double rodArea(const LiftHydraulics& hydraulics);

}  // namespace hingepin::simulator
