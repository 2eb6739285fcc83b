// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/base/error.h"
#include "engine/calibration/job.h"
#include "engine/calibration/model.h"

namespace hingepin::calibration {

/// Fits a calibration to a job whose logs have been read.
/// Errors: InvalidInput (exit status 2) or Insufficient (exit status 1); `place.pointer` and `place.file` say
/// where.
[[nodiscard]] Expected<Calibration> calibrate(const Job& job);

/// Weighs one lift with a calibration.
/// Errors: Insufficient when it can't be weighed, with the reason; InvalidInput for a sensor in another unit.
[[nodiscard]] Expected<Weighing> weigh(const Calibration& calibration, const LiftLog& log);

}  // namespace hingepin::calibration
