// SPDX-License-Identifier: Apache-2.0
#include "engine/session/lift_curves.h"

#include <algorithm>

#include "engine/calibration/angles.h"
#include "engine/calibration/calibration.h"
#include "engine/calibration/lift_model.h"
#include "engine/session/fitting.h"
#include "engine/session/job_record.h"
#include "engine/session/record_view.h"

namespace hingepin::session {
namespace {

using calibration::Calibration;
using calibration::Lift;
using calibration::LiftKind;

/// At most so many of the points, evenly chosen, both ends among them.
std::vector<PressurePoint> thinned(const std::vector<PressurePoint>& all, int points) {
  const auto most = static_cast<std::size_t>(points);
  if (all.size() <= most) return all;
  std::vector<PressurePoint> some;
  some.reserve(most);
  for (std::size_t index = 0; index < most; ++index) {
    some.push_back(all[index * (all.size() - 1) / (most - 1)]);
  }
  return some;
}

/// The tare is a sum of spline functions, so its doubt is that of the coefficients at an angle. Coverage
/// factor 2 gives 95.45 % of a normal spread (JCGM 100:2008, table G.1).
void addBand(const Calibration& calibration, const linkage::Linkage* linkage, LiftCurves& curves) {
  constexpr double kCoverage = 2.0;
  const statistics::SplineBasis& basis = calibration.tare_basis;
  const Eigen::MatrixXd factor = calibration.state.factor.middleRows(calibration::kUnknowns, basis.size());
  const double area_m2 = calibration.cylinder_count * calibration.head_area_m2;
  for (const PressurePoint& point : curves.tare) {
    const double arm_m = linkage != nullptr ? linkage->liftCylinder(point.boom_angle_rad).first : 1.0;
    const double u_Pa = (basis.row(point.boom_angle_rad) * factor).norm() / (arm_m * area_m2);
    curves.tare_low.push_back({point.boom_angle_rad, point.pressure_Pa - kCoverage * u_Pa});
    curves.tare_high.push_back({point.boom_angle_rad, point.pressure_Pa + kCoverage * u_Pa});
  }
}

std::optional<PassResiduals> residualsOf(const Lift& lift, const Calibration& calibration,
                                         const calibration::LiftModel& model, int points) {
  const auto pass = calibration::findPass(lift.readings, calibration.boom_line,
                                          {calibration.window_low_rad, calibration.window_high_rad},
                                          calibration::kWindowMargin_rad, lift.direction);
  if (!pass) return std::nullopt;
  const auto rows = model.rows(*pass, 0.0);
  if (!rows) return std::nullopt;
  Eigen::VectorXd left = rows->balance - rows->tare * calibration.state.mean;
  const Eigen::ArrayXd inside = (rows->angle_rad.array() >= calibration.window_low_rad &&
                                 rows->angle_rad.array() <= calibration.window_high_rad)
                                    .cast<double>();
  if (lift.kind != LiftKind::Empty) {
    // In newtons of cylinder force, so that the arm does not weight the rows.
    const Eigen::ArrayXd load = left.array() / rows->arm.array();
    const Eigen::ArrayXd span = rows->span.array() / rows->arm.array();
    const double mass_kg = (inside * load * span).sum() / (inside * span * span).sum();
    left -= mass_kg * rows->span;
  }
  const double area_m2 = calibration.cylinder_count * calibration.head_area_m2;
  std::vector<PressurePoint> all;
  all.reserve(static_cast<std::size_t>(left.size()));
  for (Eigen::Index index = 0; index < left.size(); ++index) {
    if (inside(index) == 0.0) continue;
    all.push_back({rows->angle_rad(index), left(index) / (rows->arm(index) * area_m2)});
  }
  return PassResiduals{.name = lift.name,
                       .kind = lift.kind,
                       .pace = lift.pace,
                       .lowering = pass->direction == calibration::Direction::Down,
                       .points = thinned(all, points)};
}

}  // namespace

Expected<LiftCurves> liftCurves(const calibration::Job& job, const Calibration& calibration, int points) {
  Expected<EmptyLift> empty = emptyLift(job, calibration, points);
  if (!empty) return std::unexpected(empty.error());
  const Expected<calibration::LiftModel> model = calibration::LiftModel::make(calibration);
  if (!model) return std::unexpected(model.error());
  LiftCurves curves;
  curves.passes = std::move(empty->passes);
  for (EmptyPass& pass : curves.passes) pass.readings = thinned(pass.readings, points);
  curves.tare = std::move(empty->tare);
  addBand(calibration, model->geometry(), curves);
  for (const Lift& lift : job.lifts) {
    if (std::optional<PassResiduals> residuals = residualsOf(lift, calibration, *model, points))
      curves.residuals.push_back(*std::move(residuals));
  }
  return curves;
}

std::optional<LiftCurves> liftCurvesOf(const OpenJob& job, const Edge& edge, const BlobSource& logs,
                                       int points) {
  const std::optional<std::string> text =
      calibrationJobOf(job.procedure, job.state, job.unit, attachmentOf(job));
  if (!text) return std::nullopt;
  const Expected<calibration::Job> read = edge.read_job(*text, logs);
  if (!read) return std::nullopt;
  if (const Expected<Calibration> calibration = calibration::calibrate(*read)) {
    if (Expected<LiftCurves> curves = liftCurves(*read, *calibration, points)) return *std::move(curves);
  }
  std::vector<Message> warnings;
  const Expected<calibration::SensorLine> line = calibration::fitBoomLine(*read, warnings);
  if (!line) return std::nullopt;
  LiftCurves curves;
  curves.passes = emptyPasses(*read, *line, rodShareOf(read->unit.lift_cylinders), nullptr);
  for (EmptyPass& pass : curves.passes) pass.readings = thinned(pass.readings, points);
  return curves;
}

JobCurves jobCurvesOf(const store::Store& store, const OpenJob& job, const Edge& edge) {
  JobCurves curves{.lift = liftCurvesOf(job, edge, blobsOf(store)), .proof = {}};
  const JsonValue content = recordContent(job, JsonValue(), "", 0);
  if (const std::optional<RecordedJob> recorded = readRecordedJob(content))
    curves.proof = historyPointOf(store, *recorded, job.job.record);
  return curves;
}

Expected<JobCurves> recordCurvesOf(const store::Store& store, std::string_view record, const Edge& edge) {
  const Expected<records::Record> read = recordOf(store, record);
  if (!read) return std::unexpected(read.error());
  const std::optional<RecordedJob> recorded = readRecordedJob(read->content);
  if (!recorded) return fail(ErrorKind::NotFound, "record-not-of-job", {{"record", std::string(record)}});
  JobCurves curves{.lift = {}, .proof = historyPointOf(store, *recorded, std::string(record))};
  // A record that came from another phone may have left its journal there.
  if (const Expected<OpenJob> job = openJob(store, recorded->job, edge))
    curves.lift = liftCurvesOf(*job, edge, blobsOf(store));
  return curves;
}

}  // namespace hingepin::session
