// SPDX-License-Identifier: Apache-2.0
#include "engine/session/empty_lift.h"

#include <algorithm>

namespace hingepin::session {
namespace {

/// Summaries of passes and lifts of a job bear the same names.
bool isLowering(const calibration::Calibration* calibration, const calibration::Lift& lift) {
  if (calibration == nullptr) return lift.direction == calibration::Direction::Down;
  const auto summary = std::ranges::find(calibration->passes, lift.name, &calibration::PassSummary::name);
  return summary != calibration->passes.end() && summary->direction == calibration::Direction::Down;
}

}  // namespace

double rodShareOf(const calibration::LiftCylinders& cylinders) {
  const double bore_m = cylinders.bore.inMetres();
  const double rod_m = cylinders.rod.inMetres();
  return 1.0 - rod_m * rod_m / (bore_m * bore_m);
}

std::vector<EmptyPass> emptyPasses(const calibration::Job& job, const calibration::SensorLine& boom_line,
                                   double rod_share, const calibration::Calibration* calibration) {
  std::vector<EmptyPass> passes;
  for (const calibration::Lift& lift : job.lifts) {
    if (lift.kind != calibration::LiftKind::Empty) continue;
    EmptyPass pass{lift.name, lift.pace, isLowering(calibration, lift), {}};
    pass.readings.reserve(lift.readings.rows.size());
    for (const calibration::LiftRow& row : lift.readings.rows) {
      pass.readings.push_back({boom_line.angle(row.boom_sensor),
                               row.head_pressure_Pa - rod_share * row.rod_pressure_Pa.value_or(0.0)});
    }
    passes.push_back(std::move(pass));
  }
  return passes;
}

Expected<EmptyLift> emptyLift(const calibration::Job& job, const calibration::Calibration& calibration,
                              int points) {
  const double rod_share = calibration.rod_area_m2 / calibration.head_area_m2;
  EmptyLift empty{.passes = emptyPasses(job, calibration.boom_line, rod_share, &calibration), .tare = {}};
  std::optional<linkage::Linkage> linkage;
  if (calibration.linkage) {
    const Expected<linkage::Linkage> made = linkage::Linkage::make(*calibration.linkage);
    if (!made) return std::unexpected(made.error());
    linkage = *made;
  }
  const statistics::SplineBasis& basis = calibration.tare_basis;
  double low_rad = basis.high;
  double high_rad = basis.low;
  for (const calibration::PassSummary& pass : calibration.passes) {
    if (pass.kind != calibration::LiftKind::Empty || pass.direction != calibration::Direction::Up) continue;
    low_rad = std::min(low_rad, std::max(pass.low_rad, basis.low));
    high_rad = std::max(high_rad, std::min(pass.high_rad, basis.high));
  }
  if (!(low_rad < high_rad)) return empty;
  const Eigen::VectorXd coefficients = calibration.state.mean.segment(calibration::kUnknowns, basis.size());
  const double area_m2 = calibration.cylinder_count * calibration.head_area_m2;
  for (int point = 0; point < points; ++point) {
    const double angle_rad = low_rad + (high_rad - low_rad) * point / (points - 1);
    // The balance is a moment where a linkage is known, a force where none is.
    const double arm_m = linkage ? linkage->liftCylinder(angle_rad).first : 1.0;
    empty.tare.push_back({angle_rad, basis.row(angle_rad).dot(coefficients) / (arm_m * area_m2)});
  }
  return empty;
}

}  // namespace hingepin::session
