// SPDX-License-Identifier: Apache-2.0
#include "engine/formats/stops_json.h"

#include <cmath>
#include <utility>
#include <vector>

#include "engine/formats/job_json.h"
#include "engine/formats/quantity_walk.h"

namespace hingepin::formats {
namespace {

using calibration::PerStop;
using calibration::SensorUnit;
using calibration::Stop;

constexpr Limits kStopHeight{Dimension::Length, -1, 20, "m"};
constexpr Limits kStopHeightLimit{Dimension::Length, 1, 2000, "mm"};
constexpr Limits kLevel{Dimension::Angle, -90, 90, "deg"};
constexpr Limits kLevelLimit{Dimension::Angle, 0.01, 45, "deg", 2};

class StopsReader : public QuantityWalk {
 public:
  explicit StopsReader(const JsonDocument& document) : document_(document) {}
  StopsFile read();

 private:
  /// In the sensor's base unit per radian.
  double slope(const JsonNode& node, SensorUnit unit);
  SensorReading sensor(const JsonNode& node) { return taken(readSensor(node)); }
  calibration::BoomSensorLine boomLine(const JsonNode& node);
  calibration::BucketSensorEnds bucketEnds(const JsonNode& node);
  void values(const JsonNode& node, std::string_view suffix, PerStop<std::optional<double>>& into);
  double angle(const JsonNode& parent, std::string_view key) {
    return quantity<Dimension::Angle>(parent, key, kLevel).inRadians();
  }

  const JsonDocument& document_;
};

double StopsReader::slope(const JsonNode& node, SensorUnit unit) {
  const std::string text = taken(node.string());
  const std::size_t slash = text.rfind('/');
  if (slash != std::string::npos) {
    std::string over = text.substr(0, slash);
    if (over.ends_with(' ')) over += '1';  // "/deg" is UCUM for "1/deg"
    const Expected<ReadQuantity> read = readAnyQuantity(over);
    const std::optional<Unit> below = findUnit(text.substr(slash + 1));
    if (read && below && below->dimension == Dimension::Angle && sensorUnitOf(read->unit) == unit) {
      const double per_rad = read->value_si / below->toSi(1.0);
      if (per_rad == 0.0) keep(node.error("slope-zero"));
      return per_rad;
    }
  }
  keep(node.error("slope-malformed", {{"text", excerpt(text)},
                                      {"unit", std::string(nameIn(calibration::kSensorUnitNames, unit))}}));
  return 1.0;
}

calibration::BoomSensorLine StopsReader::boomLine(const JsonNode& node) {
  object(node, {"boom_sensor", "boom_angle", "slope"});
  const SensorReading reading =
      required(node, "boom_sensor", [this](const JsonNode& each) { return sensor(each); });
  return {.unit = reading.unit,
          .reading = reading.value,
          .boom_angle_rad = angle(node, "boom_angle"),
          .slope_per_rad =
              required(node, "slope", [&](const JsonNode& each) { return slope(each, reading.unit); })};
}

calibration::BucketSensorEnds StopsReader::bucketEnds(const JsonNode& node) {
  object(node, {"racked", "dumped", "boom_angle"});
  const auto read = [this](const JsonNode& each) { return sensor(each); };
  const SensorReading racked = required(node, "racked", read);
  const SensorReading dumped = required(node, "dumped", [&](const JsonNode& each) {
    SensorReading reading = sensor(each);
    if (reading.unit != racked.unit)
      keep(each.error("sensor-unit-changes",
                      {{"text", excerpt(each.value().text)},
                       {"unit", std::string(nameIn(calibration::kSensorUnitNames, racked.unit))}}));
    return reading;
  });
  return {.unit = racked.unit,
          .racked = racked.value,
          .dumped = dumped.value,
          .boom_angle_rad = angle(node, "boom_angle")};
}

void StopsReader::values(const JsonNode& node, std::string_view suffix,
                         PerStop<std::optional<double>>& into) {
  for (const auto& [name, stop] : calibration::kStopNames)
    into[stop] =
        maybeSi(node, std::string(name) + std::string(suffix), stop == Stop::Level ? kLevel : kStopHeight);
}

StopsFile StopsReader::read() {
  const JsonNode root(document_);
  StopsFile file;
  calibration::StopsAsked& asked = file.asked;
  object(root, {"format", "unit", "attachment", "taught_with", "boom_line", "bucket_line", "wanted", "cycles",
                "limits"});
  format(root, "hingepin-stops/1");
  optional(root, "unit", [&](const JsonNode& node) {
    const calibration::LoaderUnit unit = taken(readUnit(document_, node));
    file.unit = unit.id;
    asked.linkage = unit.linkage;
    return 0;
  });
  const auto attachment = [this](const JsonNode& node) { return taken(readAttachment(node)); };
  asked.attachment = optional(root, "attachment", attachment);
  if (asked.attachment) file.attachment = asked.attachment->id;
  asked.taught_with = optional(root, "taught_with", attachment);
  asked.boom_line = optional(root, "boom_line", [this](const JsonNode& node) { return boomLine(node); });
  asked.bucket_ends =
      optional(root, "bucket_line", [this](const JsonNode& node) { return bucketEnds(node); });
  required(root, "wanted", [&](const JsonNode& node) {
    object(node, {"lower", "upper", "level"});
    values(node, "", asked.wanted);
    return 0;
  });
  optional(root, "cycles", [&](const JsonNode& node) {
    for (const JsonNode& each : elements(node)) {
      object(each, {"lower", "upper", "level", "lower_furthest", "upper_furthest", "level_furthest"});
      calibration::StopCycle& cycle = asked.cycles.emplace_back();
      values(each, "", cycle.rest);
      values(each, "_furthest", cycle.furthest);
    }
    return 0;
  });
  optional(root, "limits", [&](const JsonNode& node) {
    object(node, {"height", "level"});
    asked.limits[Stop::Lower] = asked.limits[Stop::Upper] = maybeSi(node, "height", kStopHeightLimit);
    asked.limits[Stop::Level] = maybeSi(node, "level", kLevelLimit);
    return 0;
  });
  return file;
}

}  // namespace

Expected<StopsFile> readStops(std::string text, const std::string& file) {
  Expected<JsonDocument> document = readJson(std::move(text), file);
  if (!document) return std::unexpected(document.error());
  StopsReader reader(*document);
  StopsFile read = reader.read();
  if (std::optional<Error> error = reader.error()) return std::unexpected(*std::move(error));
  read.document = *std::move(document);
  return read;
}

}  // namespace hingepin::formats
