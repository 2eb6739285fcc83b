// SPDX-License-Identifier: Apache-2.0
#include "engine/session/stops_view.h"

#include <cmath>

#include "engine/calibration/stops.h"
#include "engine/session/catalogue.h"
#include "engine/session/record_view.h"
#include "engine/units/degree.h"

namespace hingepin::session {
namespace {

using calibration::Stop;
using calibration::StopPose;

Amount inDegrees(double angle_rad) { return {angle_rad / kDegree, "deg", 1}; }
Amount inMillimetres(double length_m) { return {length_m * 1000.0, "mm"}; }

std::optional<double> heightIn(const Entries& entries, const char* id) {
  const auto entry = entries.find(id);
  return entry == entries.end() ? std::nullopt : siOf(entry->second);
}

/// What the boom sensor reads at an angle.
std::optional<Amount> sensorAt(const calibration::Calibration* calibration, double boom_angle_rad) {
  if (calibration == nullptr || calibration->boom_line.slope_rad_per_unit == 0.0) return std::nullopt;
  const calibration::SensorLine& line = calibration->boom_line;
  const double reading = line.reading_at + (boom_angle_rad - line.angle_rad) / line.slope_rad_per_unit;
  switch (calibration->boom_sensor_unit) {
    case calibration::SensorUnit::Volt:
      return Amount{reading, "V", 3};
    case calibration::SensorUnit::Count:
      return Amount{reading, "1"};
    case calibration::SensorUnit::Radian:
      return Amount{reading / kDegree, "deg", 1};
  }
  return std::nullopt;
}

}  // namespace

std::vector<std::string> sayStopsToSet(const calibration::LoaderUnit& unit,
                                       const calibration::Attachment& attachment, const Entries& entries,
                                       const calibration::Calibration* calibration, const Reader& reader) {
  std::vector<std::string> lines;
  if (!unit.linkage || !attachment.cutting_edge) return lines;
  const Expected<linkage::Linkage> linkage = linkage::Linkage::make(*unit.linkage);
  if (!linkage) return lines;
  const auto tell = [&](const Message& message) { lines.push_back(say(message, reader)); };
  const auto tellSensor = [&](const StopPose& pose) {
    if (const std::optional<Amount> reading = sensorAt(calibration, pose.boom_angle_rad))
      tell({"stops-set-sensor", {{"reading", *reading}}});
  };
  if (const std::optional<double> pin_m = heightIn(entries, "upper-height")) {
    const linkage::ZBarGeometry& geometry = linkage->geometry();
    const double rise = (*pin_m - geometry.boom_pivot_height.inMetres()) / geometry.boom_length.inMetres();
    const Expected<StopPose> pose =
        std::abs(rise) <= 1.0 ? calibration::poseAt(*linkage, attachment, std::asin(rise),
                                                    geometry.tilt_cylinder_extended.inMetres())
                              : Expected<StopPose>(fail(ErrorKind::InvalidInput, "stop-pose-impossible"));
    if (pose) {
      tell({"stops-set-upper",
            {{"pin", inMillimetres(*pin_m)},
             {"boom", inDegrees(pose->boom_angle_rad)},
             {"edge", inMillimetres(*pose->edge_height_m)}}});
      tellSensor(*pose);
    } else {
      tell(pose.error().message);
    }
  }
  if (const std::optional<double> edge_m = heightIn(entries, "lower-height")) {
    calibration::StopsAsked asked{.linkage = unit.linkage, .attachment = attachment};
    asked.wanted[Stop::Lower] = edge_m;
    asked.wanted[Stop::Level] = 0.0;
    const Expected<calibration::StopsAnswer> answer = calibration::tellStops(asked);
    if (answer) {
      const StopPose& pose = *answer->stops.front().set;
      tell({"stops-set-lower", {{"edge", inMillimetres(*edge_m)}, {"boom", inDegrees(pose.boom_angle_rad)}}});
      if (pose.heel_height_m) tell({"stops-set-heel", {{"heel", inMillimetres(*pose.heel_height_m)}}});
      tellSensor(pose);
      for (const Message& warning : answer->warnings) tell(warning);
    } else {
      tell(answer.error().message);
    }
  }
  if (!lines.empty()) tell({"stops-caution", {}});
  return lines;
}

}  // namespace hingepin::session
