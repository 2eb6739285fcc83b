// SPDX-License-Identifier: Apache-2.0
#include "engine/session/linkage_table.h"

#include <algorithm>
#include <cmath>

#include "engine/linkage/plausible.h"

namespace hingepin::session {
namespace {

std::optional<double> heightOf(const linkage::Linkage& linkage, double boom_angle_rad, double tilt_length_m,
                               const std::optional<linkage::Pin>& point) {
  if (!point) return std::nullopt;
  const Expected<linkage::PointMotion> motion = linkage.bucketPoint(boom_angle_rad, tilt_length_m, *point);
  if (!motion) return std::nullopt;
  return linkage.geometry().boom_pivot_height.inMetres() + motion->y.value;
}

LinkageRow rowAt(const linkage::Linkage& linkage, const calibration::Attachment& attachment,
                 double boom_angle_rad) {
  LinkageRow row;
  row.boom_angle_rad = boom_angle_rad;
  row.lift_cylinder = linkage.liftCylinder(boom_angle_rad);
  const linkage::Range tilt_m = linkage.tiltRange(boom_angle_rad);
  if (!(tilt_m.low <= tilt_m.high)) return row;
  row.tilt_length_m = tilt_m;
  if (const auto dumped = linkage.tilt(boom_angle_rad, tilt_m.low))
    row.dumped_bucket_rad = dumped->bucket_by_tilt.value;
  const double racked_m = linkage.geometry().tilt_cylinder_extended.inMetres();
  const Expected<linkage::TiltState> racked = linkage.tilt(boom_angle_rad, racked_m);
  if (!racked) return row;
  row.racked_bucket_rad = racked->bucket_by_tilt.value;
  const linkage::Pin load_point = attachment.payload_center.value_or(linkage::Pin{});
  if (const auto load = linkage.bucketPoint(boom_angle_rad, racked_m, load_point))
    row.load_arm_m = load->y.first;
  row.cutting_edge_height_m = heightOf(linkage, boom_angle_rad, racked_m, attachment.cutting_edge);
  row.heel_height_m = heightOf(linkage, boom_angle_rad, racked_m, attachment.heel);
  return row;
}

}  // namespace

Expected<LinkageTable> tabulateLinkage(const calibration::Job& job, Angle step) {
  if (!job.unit.linkage) return fail(ErrorKind::InvalidInput, "job-has-no-linkage", {}, {.pointer = "/unit"});
  const Expected<linkage::Linkage> linkage = linkage::Linkage::make(*job.unit.linkage);
  if (!linkage) {
    Error error = linkage.error();
    error.place.pointer = "/unit/linkage" + error.place.pointer;
    return std::unexpected(std::move(error));
  }
  LinkageTable table;
  const calibration::Attachment attachment = job.attachment.value_or(calibration::Attachment{});
  table.payload_center_known = attachment.payload_center.has_value();
  table.lift_range_rad = linkage->liftRange();

  std::vector<double> known_rad;
  for (const calibration::PoseReading& pose : job.poses) {
    if (pose.boom_angle) known_rad.push_back(pose.boom_angle->inRadians());
  }
  table.travel_from_poses = known_rad.size() >= 2;
  if (table.travel_from_poses) {
    const auto [low, high] = std::ranges::minmax(known_rad);
    table.travel_rad = {low, high};
  } else {
    table.travel_rad = {std::max(table.lift_range_rad.low, -linkage::kMostTravel_rad),
                        std::min(table.lift_range_rad.high, linkage::kMostTravel_rad)};
  }
  const double step_rad = step.inRadians();
  table.rows.push_back(rowAt(*linkage, attachment, table.travel_rad.low));
  // Round angles between the two ends, none within a tenth of a step of them.
  for (double index = std::ceil(table.travel_rad.low / step_rad + 0.1);
       index * step_rad < table.travel_rad.high - 0.1 * step_rad; ++index) {
    table.rows.push_back(rowAt(*linkage, attachment, index * step_rad));
  }
  if (table.travel_rad.high > table.travel_rad.low) {
    table.rows.push_back(rowAt(*linkage, attachment, table.travel_rad.high));
  }
  return table;
}

}  // namespace hingepin::session
