// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/session/edge.h"
#include "engine/session/empty_lift.h"
#include "engine/session/job.h"
#include "engine/session/overview.h"

/// What a chart shows of a fit to lift pressures.
namespace hingepin::session {

/// What a lift's readings within the weigh window leave when the model is taken off, as head pressure; of a
/// lift with a mass, the mass that fits it best is taken off too.
struct PassResiduals {
  std::string name;
  calibration::LiftKind kind = calibration::LiftKind::Empty;
  calibration::Pace pace = calibration::Pace::Slow;
  bool lowering = false;
  std::vector<PressurePoint> points;  ///< pressure_Pa is the residual
};

struct LiftCurves {
  std::vector<EmptyPass> passes;    ///< thinned
  std::vector<PressurePoint> tare;  ///< rising, at rest
  std::vector<PressurePoint>
      tare_low;  ///< less the expanded uncertainty (95.45 %), at the angles of the tare
  std::vector<PressurePoint> tare_high;
  std::vector<PassResiduals> residuals;
};

/// @param points at most so many of each curve, 2 or more
/// Errors: those of emptyLift and LiftModel.
[[nodiscard]] Expected<LiftCurves> liftCurves(const calibration::Job& job,
                                              const calibration::Calibration& calibration, int points);

/// The curves of a job's readings and logs so far: the passes alone where they give no calibration yet,
/// nothing where the poses give no angles.
[[nodiscard]] std::optional<LiftCurves> liftCurvesOf(const OpenJob& job, const Edge& edge,
                                                     const BlobSource& logs, int points = 200);

/// What a job's charts show.
struct JobCurves {
  std::optional<LiftCurves> lift{};
  HistoryPoint proof{};  ///< empty where nothing was proved
};
/// Of a job that is open, and of one that a record is about.
/// Errors: NotFound "record-not-of-job"; those of recordOf.
[[nodiscard]] JobCurves jobCurvesOf(const store::Store& store, const OpenJob& job, const Edge& edge);
[[nodiscard]] Expected<JobCurves> recordCurvesOf(const store::Store& store, std::string_view record,
                                                 const Edge& edge);

}  // namespace hingepin::session
