// SPDX-License-Identifier: Apache-2.0
#include "engine/formats/job_json.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstring>
#include <filesystem>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/base/text.h"
#include "engine/formats/lift_log_csv.h"
#include "engine/formats/quantity_walk.h"
#include "engine/linkage/linkage.h"
#include "engine/linkage/numbers.h"
#include "engine/units/ucum.h"

namespace hingepin::formats {
namespace {

using calibration::Attachment;
using calibration::Direction;
using calibration::Job;
using calibration::Lift;
using calibration::LiftKind;
using calibration::LiftLog;
using calibration::LiftRow;
using calibration::LoaderUnit;
using calibration::Pace;
using calibration::SensorUnit;

constexpr Limits kCylinderBore{Dimension::Length, 20, 1000, "mm"};
constexpr Limits kCylinderRod{Dimension::Length, 5, 1000, "mm"};
constexpr Limits kLinkageLength{Dimension::Length, 0.01, 20, "m", 2};
constexpr Limits kPosition{Dimension::Length, -20, 20, "m"};
constexpr Limits kPositionU{Dimension::Length, 0, 5, "m"};
constexpr Limits kLinkageChange{Dimension::Length, -20, 20, "m"};
constexpr Limits kAnyTurn{Dimension::Angle, -360, 360, "deg"};
constexpr Limits kBoomAngle{Dimension::Angle, -90, 90, "deg"};
constexpr Limits kAngleU{Dimension::Angle, 0.001, 45, "deg", 3};
constexpr Limits kMassLimits{Dimension::Mass, 1, 200000, "kg"};
constexpr Limits kTare{Dimension::Mass, 0, 100000, "kg"};
constexpr Limits kNet{Dimension::Mass, 1, 1000000, "kg"};
constexpr Limits kMassU{Dimension::Mass, 0, 100000, "kg"};
constexpr Limits kSensorRange{Dimension::Pressure, 1, 10000, "bar"};
constexpr Limits kShare{Dimension::Number, 0, 50, "%"};
constexpr Limits kGravity{Dimension::Acceleration, 9.7, 9.9, "m/s2", 1};
constexpr Limits kLatitude{Dimension::Angle, -90, 90, "deg"};
constexpr Limits kHeight{Dimension::Length, -500, 9000, "m"};
constexpr Limits kPressure{Dimension::Pressure, -1000, 10000, "bar"};
constexpr Limits kBoomSpeed{Dimension::AngularSpeed, -360, 360, "deg/s"};
constexpr Limits kOilTemperatureLimits{Dimension::Temperature, -80, 300, "Cel"};

// ISO 3448:1992, table 1.
constexpr std::array kOilGrades = {2,   3,   5,   7,   10,  15,  22,   32,   46,   68,
                                   100, 150, 220, 320, 460, 680, 1000, 1500, 2200, 3200};

class JobReader : public QuantityWalk {
 public:
  explicit JobReader(const Opener* open = nullptr) : open_(open) {}

  Job readJob(const JsonDocument& document);
  LiftLog readReadings(const JsonDocument& document);
  LoaderUnit readUnit(const JsonDocument& document, const JsonNode& node) {
    document_ = &document;
    return unit(node);
  }
  Attachment readAttachment(const JsonNode& node) { return attachment(node); }

 private:
  Length length(const JsonNode& parent, std::string_view key, const Limits& limits) {
    return quantity<Dimension::Length>(parent, key, limits);
  }
  linkage::Pin pin(const JsonNode& node, const Limits& limits) {
    const std::array<double, 2> lengths_m = pair(node, limits);
    return {Length::fromMetres(lengths_m[0]), Length::fromMetres(lengths_m[1])};
  }
  linkage::Pin pin(const JsonNode& parent, std::string_view key) {
    return required(parent, key, [this](const JsonNode& node) { return pin(node, kPosition); });
  }
  std::optional<linkage::Pin> maybePin(const JsonNode& parent, std::string_view key, const Limits& limits) {
    return optional(parent, key, [&](const JsonNode& node) { return pin(node, limits); });
  }

  /// Takes the reading's value if its unit is that of the readings before it.
  double sensorIn(const JsonNode& node, std::optional<SensorUnit>& unit);
  LoaderUnit unit(const JsonNode& node);
  linkage::ZBarGeometry geometry(const JsonNode& node);
  linkage::LinkageDoubt linkageDoubt(const JsonNode& node);
  Attachment attachment(const JsonNode& node);
  calibration::PoseReading pose(const JsonNode& node);
  LiftLog points(const JsonNode& node);
  Lift lift(const JsonNode& node, bool in_sum_only);
  LiftLog log(const JsonNode& node, const std::string& path);
  std::vector<Lift> lifts(const JsonNode& node, bool in_sum_only);
  void sensorsAsPoses(const JsonNode& node, const LiftLog& log);

  [[nodiscard]] Place place(std::string_view pointer) const { return document_->place(pointer); }

  const Opener* open_;
  const JsonDocument* document_ = nullptr;
  std::optional<SensorUnit> boom_unit_;    ///< of the poses
  std::optional<SensorUnit> bucket_unit_;  ///< of the poses
};

double JobReader::sensorIn(const JsonNode& node, std::optional<SensorUnit>& unit) {
  const SensorReading reading = taken(readSensor(node));
  if (unit && *unit != reading.unit) {
    keep(node.error("sensor-unit-changes",
                    {{"text", excerpt(node.value().text)},
                     {"unit", std::string(nameIn(calibration::kSensorUnitNames, *unit))}}));
  }
  unit = reading.unit;
  return reading.value;
}

linkage::ZBarGeometry JobReader::geometry(const JsonNode& node) {
  object(node,
         {"kind", "boom_length", "boom_pivot_height", "lift_frame_pin", "lift_boom_pin", "tilt_frame_pin",
          "bellcrank_pivot", "bellcrank_tilt_arm", "bellcrank_link_arm", "bellcrank_angle", "link_length",
          "bucket_pin_distance", "bucket_pin_angle", "tilt_cylinder_retracted", "tilt_cylinder_extended"});
  optional(node, "kind", [this](const JsonNode& kind) {
    const std::string text = taken(kind.string());
    if (text != "z-bar") keep(kind.error("linkage-kind-unsupported", {{"text", excerpt(text)}}));
    return 0;
  });
  const linkage::ZBarGeometry geometry{
      .boom_length = length(node, "boom_length", kLinkageLength),
      .boom_pivot_height = length(node, "boom_pivot_height", kLinkageLength),
      .lift_frame_pin = pin(node, "lift_frame_pin"),
      .lift_boom_pin = pin(node, "lift_boom_pin"),
      .tilt_frame_pin = pin(node, "tilt_frame_pin"),
      .bellcrank_pivot = pin(node, "bellcrank_pivot"),
      .bellcrank_tilt_arm = length(node, "bellcrank_tilt_arm", kLinkageLength),
      .bellcrank_link_arm = length(node, "bellcrank_link_arm", kLinkageLength),
      .bellcrank_angle = quantity<Dimension::Angle>(node, "bellcrank_angle", kAnyTurn),
      .link_length = length(node, "link_length", kLinkageLength),
      .bucket_pin_distance = length(node, "bucket_pin_distance", kLinkageLength),
      .bucket_pin_angle = quantity<Dimension::Angle>(node, "bucket_pin_angle", kAnyTurn),
      .tilt_cylinder_retracted = length(node, "tilt_cylinder_retracted", kLinkageLength),
      .tilt_cylinder_extended = length(node, "tilt_cylinder_extended", kLinkageLength)};
  if (isRefused()) return geometry;
  if (const Expected<linkage::Linkage> made = linkage::Linkage::make(geometry); !made) {
    Error error = made.error();
    error.place = place(node.pointer() + error.place.pointer);
    keep(std::move(error));
  }
  return geometry;
}

linkage::LinkageDoubt JobReader::linkageDoubt(const JsonNode& node) {
  std::array<std::string_view, linkage::kLinkageNumbers> names;
  std::ranges::transform(linkage::linkageNumbers(), names.begin(), &linkage::LinkageNumber::name);
  linkage::LinkageDoubt doubt;
  for (const JsonNode& each : elements(node)) {
    linkage::PerNumber& cause = doubt.emplace_back();
    if (!object(each, names)) continue;
    for (std::size_t i = 0; i < names.size(); ++i) {
      const bool angle = linkage::linkageNumbers()[i].kind == linkage::LinkageNumber::Radians;
      cause[i] = maybeSi(each, names[i], angle ? kAnyTurn : kLinkageChange).value_or(0.0);
    }
  }
  return doubt;
}

LoaderUnit JobReader::unit(const JsonNode& node) {
  object(node, {"id", "lift_cylinders", "rated_payload", "weigh_window", "linkage", "linkage_u",
                "pressure_sensor", "load_friction", "oil"});
  LoaderUnit unit;
  unit.id = name(node, "id");
  unit.lift_cylinders = required(node, "lift_cylinders", [this](const JsonNode& cylinders) {
    object(cylinders, {"count", "bore", "rod"});
    calibration::LiftCylinders read;
    read.count = required(cylinders, "count", [this](const JsonNode& count) {
      const double value = taken(count.number());
      if (value != std::floor(value) || value < 1 || value > 8) keep(count.error("cylinder-count"));
      return static_cast<int>(std::clamp(value, 1.0, 8.0));
    });
    read.bore = length(cylinders, "bore", kCylinderBore);
    read.rod = length(cylinders, "rod", kCylinderRod);
    const std::optional<JsonNode> rod = cylinders.find("rod");
    if (rod && cylinders.find("bore") && read.rod >= read.bore) keep(rod->error("rod-not-thinner-than-bore"));
    return read;
  });
  unit.rated_payload = quantity<Dimension::Mass>(node, "rated_payload", kMassLimits);
  unit.weigh_window = optional(node, "weigh_window", [this](const JsonNode& window) {
    const std::array<double, 2> ends_rad = pair(window, kBoomAngle);
    if (ends_rad[0] >= ends_rad[1]) keep(window.error("window-upside-down"));
    return calibration::AngleWindow{Angle::fromRadians(ends_rad[0]), Angle::fromRadians(ends_rad[1])};
  });
  unit.linkage = optional(node, "linkage", [this](const JsonNode& linkage) { return geometry(linkage); });
  if (const std::optional<JsonNode> doubt = node.find("linkage_u")) {
    unit.linkage_u = linkageDoubt(*doubt);
    if (!unit.linkage) keep(doubt->error("linkage-doubt-without-linkage"));
  }
  unit.pressure_sensor = optional(node, "pressure_sensor", [this](const JsonNode& sensor) {
    object(sensor, {"range", "span_u", "linearity_u"});
    calibration::PressureSensor read;
    read.range = maybeQuantity<Dimension::Pressure>(sensor, "range", kSensorRange).value_or(read.range);
    read.span_u = maybeQuantity<Dimension::Number>(sensor, "span_u", kShare).value_or(read.span_u);
    read.linearity_u =
        maybeQuantity<Dimension::Number>(sensor, "linearity_u", kShare).value_or(read.linearity_u);
    return read;
  });
  unit.load_friction = optional(node, "load_friction", [this](const JsonNode& friction) {
    object(friction, {"mean", "u"});
    calibration::LoadFriction read;
    read.mean = maybeQuantity<Dimension::Number>(friction, "mean", kShare).value_or(read.mean);
    read.u = maybeQuantity<Dimension::Number>(friction, "u", kShare).value_or(read.u);
    return read;
  });
  const std::optional<JsonNode> oil = node.find("oil");
  if (oil) {
    object(*oil, {"grade"});
    unit.oil_grade = required(*oil, "grade", [this](const JsonNode& grade) {
      const std::string text = taken(grade.string());
      for (const int known : kOilGrades) {
        if (text == "ISO VG " + std::to_string(known)) return known;
      }
      keep(grade.error("oil-grade-malformed", {{"text", excerpt(text)}}));
      return 0;
    });
  }
  return unit;
}

Attachment JobReader::attachment(const JsonNode& node) {
  object(node, {"id", "coupler", "bucket", "payload_center", "payload_center_u", "heel", "cutting_edge"});
  return {.id = name(node, "id"),
          .coupler = maybeQuantity<Dimension::Mass>(node, "coupler", kTare),
          .bucket = maybeQuantity<Dimension::Mass>(node, "bucket", kTare),
          .payload_center = maybePin(node, "payload_center", kPosition),
          .payload_center_u = maybePin(node, "payload_center_u", kPositionU),
          .heel = maybePin(node, "heel", kPosition),
          .cutting_edge = maybePin(node, "cutting_edge", kPosition)};
}

calibration::PoseReading JobReader::pose(const JsonNode& node) {
  object(node, {"pose", "boom_angle", "boom_angle_u", "boom_sensor", "bucket_sensor"});
  return {.kind = requiredNamed(node, "pose", calibration::kPoseNames),
          .boom_angle = maybeQuantity<Dimension::Angle>(node, "boom_angle", kBoomAngle),
          .boom_angle_u = maybeQuantity<Dimension::Angle>(node, "boom_angle_u", kAngleU),
          .boom_sensor = required(node, "boom_sensor",
                                  [this](const JsonNode& sensor) { return sensorIn(sensor, boom_unit_); }),
          .bucket_sensor = optional(node, "bucket_sensor", [this](const JsonNode& sensor) {
            return sensorIn(sensor, bucket_unit_);
          })};
}

LiftLog JobReader::points(const JsonNode& node) {
  LiftLog log;
  log.typed_points = true;
  std::optional<SensorUnit> boom_unit;
  const std::vector<JsonNode> nodes = elements(node);
  if (nodes.empty()) keep(node.error("points-empty", {}, ErrorKind::Insufficient));
  for (const JsonNode& point : nodes) {
    object(point, {"boom_sensor", "bucket_sensor", "head_pressure", "rod_pressure", "boom_speed",
                   "oil_temperature"});
    LiftRow row;
    row.boom_sensor =
        required(point, "boom_sensor", [&](const JsonNode& sensor) { return sensorIn(sensor, boom_unit); });
    row.bucket_sensor = optional(point, "bucket_sensor", [&](const JsonNode& sensor) {
      return sensorIn(sensor, log.bucket_sensor_unit);
    });
    row.head_pressure_Pa = required(
        point, "head_pressure", [this](const JsonNode& pressure) { return quantityIn(pressure, kPressure); });
    row.rod_pressure_Pa = maybeSi(point, "rod_pressure", kPressure);
    row.boom_speed_rad_per_s = maybeSi(point, "boom_speed", kBoomSpeed);
    row.oil_temperature_K = maybeSi(point, "oil_temperature", kOilTemperatureLimits);
    log.has_rod_pressure = log.has_rod_pressure || row.rod_pressure_Pa.has_value();
    log.rows.push_back(row);
  }
  log.boom_sensor_unit = boom_unit.value_or(SensorUnit::Volt);
  log.rows_read = log.rows.size();
  return log;
}

LiftLog JobReader::log(const JsonNode& node, const std::string& path) {
  if (isRefused()) return {};  // the file is refused anyway
  const Expected<ByteSource> source = (*open_)(path);
  if (!source) {
    Error error = source.error();
    error.place = node.place();
    keep(std::move(error));
    return {};
  }
  return taken(readLiftLog(*source, path));
}

Lift JobReader::lift(const JsonNode& node, bool in_sum_only) {
  Lift lift;
  lift.pointer = node.pointer();
  if (in_sum_only) {
    object(node, {"pace", "direction", "log", "points"});
    lift.kind = LiftKind::Load;
  } else {
    object(node, {"kind", "pace", "direction", "mass", "mass_u", "log", "points"});
    constexpr std::array kKinds = {Named{"empty", LiftKind::Empty}, Named{"test-mass", LiftKind::TestMass}};
    lift.kind = requiredNamed(node, "kind", kKinds);
  }
  constexpr std::array kPaces = {Named{"slow", Pace::Slow}, Named{"fast", Pace::Fast}};
  constexpr std::array kDirections = {Named{"up", Direction::Up}, Named{"down", Direction::Down}};
  lift.direction =
      optional(node, "direction", [&](const JsonNode& direction) { return named(direction, kDirections); });
  if (lift.kind == LiftKind::TestMass) {
    lift.mass = quantity<Dimension::Mass>(node, "mass", kMassLimits);
    lift.mass_u = maybeQuantity<Dimension::Mass>(node, "mass_u", kMassU);
  } else if (const std::optional<JsonNode> mass = node.find(node.find("mass") ? "mass" : "mass_u")) {
    keep(mass->error("mass-of-empty-lift"));
  }

  const std::optional<JsonNode> log_node = node.find("log");
  const std::optional<JsonNode> points_node = node.find("points");
  if (log_node.has_value() == points_node.has_value()) {
    if (node.value().kind == JsonKind::Object) {
      keep(points_node ? points_node->error("points-beside-log") : node.error("lift-without-readings"));
    }
    return lift;
  }
  if (points_node) {
    lift.pace = optionalNamed(node, "pace", kPaces, Pace::Slow);
    lift.name = node.pointer().substr(1) + " points";
    lift.readings = points(*points_node);
  } else {
    lift.pace = requiredNamed(node, "pace", kPaces);
    lift.name = taken(log_node->name());
    lift.readings =
        log(*log_node, (std::filesystem::path(document_->file).parent_path() / lift.name).string());
  }
  lift.readings.name = lift.name;
  sensorsAsPoses(points_node ? *points_node : *log_node, lift.readings);
  return lift;
}

void JobReader::sensorsAsPoses(const JsonNode& node, const LiftLog& log) {
  if (isRefused() || log.rows_read == 0) return;
  const auto check = [&](std::string_view sensor, std::optional<SensorUnit> unit,
                         std::optional<SensorUnit> of_poses) {
    if (!unit || !of_poses || *unit == *of_poses) return;
    keep(node.error("sensor-not-as-poses",
                    {{"sensor", std::string(sensor)},
                     {"unit", std::string(nameIn(calibration::kSensorUnitNames, *unit))},
                     {"expected", std::string(nameIn(calibration::kSensorUnitNames, *of_poses))}}));
  };
  check("boom_sensor", log.boom_sensor_unit, boom_unit_);
  check("bucket_sensor", log.bucket_sensor_unit, bucket_unit_);
}

std::vector<Lift> JobReader::lifts(const JsonNode& node, bool in_sum_only) {
  std::vector<Lift> read;
  const std::vector<JsonNode> nodes = elements(node);
  if (nodes.empty()) keep(node.error("lifts-empty", {}, ErrorKind::Insufficient));
  for (const JsonNode& lift_node : nodes) read.push_back(lift(lift_node, in_sum_only));
  return read;
}

Job JobReader::readJob(const JsonDocument& document) {
  document_ = &document;
  const JsonNode root(document);
  Job job;
  object(root, {"format", "unit", "attachment", "gravity", "site", "poses", "lifts", "loads"});
  format(root, "hingepin-job/1");
  job.unit = required(root, "unit", [this](const JsonNode& node) { return unit(node); });
  job.attachment = optional(root, "attachment", [this](const JsonNode& node) { return attachment(node); });
  job.gravity = maybeQuantity<Dimension::Acceleration>(root, "gravity", kGravity);
  job.site = optional(root, "site", [this](const JsonNode& node) {
    object(node, {"latitude", "height"});
    return calibration::Site{quantity<Dimension::Angle>(node, "latitude", kLatitude),
                             length(node, "height", kHeight)};
  });
  job.poses = required(root, "poses", [this](const JsonNode& node) {
    std::vector<calibration::PoseReading> poses;
    const std::vector<JsonNode> nodes = elements(node);
    if (nodes.empty()) keep(node.error("poses-empty", {}, ErrorKind::Insufficient));
    for (const JsonNode& pose_node : nodes) poses.push_back(pose(pose_node));
    return poses;
  });
  job.lifts = required(root, "lifts", [this](const JsonNode& node) { return lifts(node, false); });
  job.loads =
      optional(root, "loads", [this](const JsonNode& node) {
        std::vector<calibration::LoadGroup> groups;
        for (const JsonNode& group : elements(node)) {
          object(group, {"net", "net_u", "lifts"});
          groups.push_back({.net = quantity<Dimension::Mass>(group, "net", kNet),
                            .net_u = maybeQuantity<Dimension::Mass>(group, "net_u", kMassU),
                            .lifts = required(group, "lifts",
                                              [this](const JsonNode& in_sum) { return lifts(in_sum, true); }),
                            .pointer = group.pointer()});
        }
        return groups;
      }).value_or(std::vector<calibration::LoadGroup>());
  job.boom_sensor_unit = boom_unit_.value_or(SensorUnit::Volt);
  job.bucket_sensor_unit = bucket_unit_;
  return job;
}

LiftLog JobReader::readReadings(const JsonDocument& document) {
  const JsonNode root(document);
  object(root, {"format", "points"});
  format(root, "hingepin-readings/1");
  LiftLog log = required(root, "points", [this](const JsonNode& node) { return points(node); });
  log.name = document.file;
  return log;
}

}  // namespace

Expected<JobFile> readJob(std::string text, const std::string& file, const Opener& open) {
  Expected<JsonDocument> document = readJson(std::move(text), file);
  if (!document) return std::unexpected(std::move(document.error()));
  JobReader reader(&open);
  Job job = reader.readJob(*document);
  if (std::optional<Error> error = reader.error()) return std::unexpected(*std::move(error));
  return JobFile{*std::move(document), std::move(job)};
}

Expected<calibration::Job> readUnfinishedJob(std::string text, const std::string& file, const Opener& open) {
  const Expected<JsonDocument> document = readJson(std::move(text), file);
  if (!document) return std::unexpected(document.error());
  JobReader reader(&open);
  Job job = reader.readJob(*document);
  std::optional<Error> error = reader.error();
  if (error && error->kind != ErrorKind::Insufficient) return std::unexpected(*std::move(error));
  return job;
}

std::optional<SensorUnit> sensorUnitOf(const Unit& unit) {
  if (unit.dimension == Dimension::Voltage) return SensorUnit::Volt;
  if (unit.dimension == Dimension::Angle) return SensorUnit::Radian;
  if (unit.ucum == "1") return SensorUnit::Count;
  return std::nullopt;
}

Expected<SensorReading> readSensor(const JsonNode& node) {
  const Expected<std::string> text = node.string();
  if (!text) return std::unexpected(text.error());
  const Expected<ReadQuantity> read = readAnyQuantity(*text);
  const std::optional<SensorUnit> unit = read ? sensorUnitOf(read->unit) : std::nullopt;
  if (!unit) return node.error("sensor-reading-malformed", {{"text", excerpt(*text)}});
  return SensorReading{*unit, read->value_si};
}

Expected<LoaderUnit> readUnit(const JsonDocument& document, const JsonNode& unit) {
  JobReader reader;
  LoaderUnit read = reader.readUnit(document, unit);
  if (std::optional<Error> error = reader.error()) return std::unexpected(*std::move(error));
  return read;
}

Expected<Attachment> readAttachment(const JsonNode& attachment) {
  JobReader reader;
  Attachment read = reader.readAttachment(attachment);
  if (std::optional<Error> error = reader.error()) return std::unexpected(*std::move(error));
  return read;
}

Expected<LiftLog> readLift(const ByteSource& source, const std::string& file) {
  // The first bytes are read ahead, then handed on before the rest.
  std::string ahead(4096, '\0');
  std::size_t used = 0;
  std::string_view front;
  while (used < ahead.size()) {
    const Expected<std::size_t> count = source(std::span(ahead).subspan(used));
    if (!count) return std::unexpected(count.error());
    used += *count;
    front = std::string_view(ahead).substr(0, used);
    if (front.starts_with(kByteOrderMark)) front.remove_prefix(kByteOrderMark.size());
    front.remove_prefix(std::min(front.find_first_not_of(" \t\r\n"), front.size()));
    if (*count == 0 || (!front.empty() && used > kByteOrderMark.size())) break;
  }
  const ByteSource whole = [&source, rest = std::string_view(ahead).substr(0, used)](
                               std::span<char> buffer) mutable -> Expected<std::size_t> {
    if (rest.empty()) return source(buffer);
    const std::size_t count = std::min(rest.size(), buffer.size());
    std::memcpy(buffer.data(), rest.data(), count);
    rest.remove_prefix(count);
    return count;
  };
  if (!front.starts_with('{')) return readLiftLog(whole, file);

  Expected<std::string> text = readAll(whole, file, kMostJsonBytes);
  if (!text) return std::unexpected(std::move(text.error()));
  const Expected<JsonDocument> document = readJson(*std::move(text), file);
  if (!document) return std::unexpected(document.error());
  JobReader reader;
  LiftLog log = reader.readReadings(*document);
  if (std::optional<Error> error = reader.error()) return std::unexpected(*std::move(error));
  return log;
}

}  // namespace hingepin::formats
