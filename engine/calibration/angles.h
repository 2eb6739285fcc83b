// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/base/error.h"
#include "engine/calibration/job.h"
#include "engine/calibration/model.h"
#include "engine/linkage/linkage.h"

namespace hingepin::calibration {

/// The boom sensor's line from the poses with a known angle: weighted least squares of angle on reading; the
/// readings themselves are taken as exact, the stated standard uncertainties of the angles (0.5 deg if
/// absent) as known. Warnings: poses off the line (chi-squared beyond its 99 % point), a reversed sensor, an
/// implausible span, one pose read twice differently. Errors: Insufficient with fewer than two known angles,
/// less than 20 deg apart, or one reading for all; InvalidInput when the poses' readings contradict their
/// order (lowest below reference below highest).
[[nodiscard]] Expected<SensorLine> fitBoomLine(const Job& job, std::vector<Message>& warnings);

/// The bucket sensor, if the job's poses have one. `geometry` maps it to the bellcrank; null where no linkage
/// is known.
[[nodiscard]] Expected<std::optional<BucketSensor>> fitBucketSensor(const Job& job,
                                                                    const SensorLine& boom_line,
                                                                    const linkage::Linkage* geometry,
                                                                    std::vector<Message>& warnings);

}  // namespace hingepin::calibration
