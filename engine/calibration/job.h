// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "engine/base/named.h"
#include "engine/calibration/lift_log.h"
#include "engine/linkage/linkage.h"
#include "engine/linkage/numbers.h"
#include "engine/units/quantity.h"

namespace hingepin::calibration {

struct LiftCylinders {
  int count = 2;
  Length bore;
  Length rod;
};

struct PressureSensor {
  Pressure range = Pressure::fromBar(400);
  Fraction span_u = Fraction::fromPercent(0.25);
  Fraction linearity_u = Fraction::fromPercent(0.25);
};

/// Load-proportional friction as a share of the lift force.
struct LoadFriction {
  Fraction mean = Fraction::fromPercent(1.0);
  Fraction u = Fraction::fromPercent(0.5);
};

struct AngleWindow {
  Angle low;
  Angle high;
};

/// The machine, as the job file gives it. An absent optional means that the default is taken and said.
struct LoaderUnit {
  std::string id;
  LiftCylinders lift_cylinders;
  Mass rated_payload;
  std::optional<AngleWindow> weigh_window;
  std::optional<linkage::ZBarGeometry> linkage;
  std::optional<linkage::LinkageDoubt> linkage_u;
  std::optional<PressureSensor> pressure_sensor;
  std::optional<LoadFriction> load_friction;
  std::optional<int> oil_grade;  ///< n of "ISO VG n"
};

struct Attachment {
  std::string id;
  std::optional<Mass> coupler;
  std::optional<Mass> bucket;
  std::optional<linkage::Pin> payload_center;
  std::optional<linkage::Pin> payload_center_u;
  std::optional<linkage::Pin> heel;
  std::optional<linkage::Pin> cutting_edge;
};

enum class PoseKind { BoomLowest, BoomHighest, BoomReference, BucketDumped, BucketRacked };

/// The names of poses in job files and messages.
inline constexpr std::array kPoseNames = {
    Named{"boom-lowest", PoseKind::BoomLowest}, Named{"boom-highest", PoseKind::BoomHighest},
    Named{"boom-reference", PoseKind::BoomReference}, Named{"bucket-dumped", PoseKind::BucketDumped},
    Named{"bucket-racked", PoseKind::BucketRacked}};

/// One pose reading. Sensor values are in the base unit of their SensorUnit.
struct PoseReading {
  PoseKind kind;
  std::optional<Angle> boom_angle;
  std::optional<Angle> boom_angle_u;
  double boom_sensor = 0.0;
  std::optional<double> bucket_sensor;
};

enum class LiftKind { Empty, TestMass, Load };
enum class Pace { Slow, Fast };

/// One pass of the boom: its readings are a log (moving) or points (typed from a monitor).
struct Lift {
  LiftKind kind = LiftKind::Empty;
  Pace pace = Pace::Slow;
  std::optional<Direction> direction;  ///< as the job states it; must agree with the readings
  std::optional<Mass> mass;            ///< test-mass lifts
  std::optional<Mass> mass_u;
  std::string name;     ///< the log's file name, or "lifts/2 points"
  std::string pointer;  ///< JSON Pointer of this lift in the job file
  LiftLog readings;
};

/// Passes whose masses are known only in sum.
struct LoadGroup {
  Mass net;
  std::optional<Mass> net_u;
  std::vector<Lift> lifts;
  std::string pointer;
};

struct Site {
  Angle latitude;
  Length height;
};

struct Job {
  LoaderUnit unit;
  std::optional<Attachment> attachment;
  std::optional<Acceleration> gravity;
  std::optional<Site> site;
  SensorUnit boom_sensor_unit = SensorUnit::Volt;
  std::optional<SensorUnit> bucket_sensor_unit;
  std::vector<PoseReading> poses;
  std::vector<Lift> lifts;
  std::vector<LoadGroup> loads;
};

}  // namespace hingepin::calibration
