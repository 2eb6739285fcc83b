// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>

#include "engine/base/error.h"
#include "engine/calibration/model.h"
#include "engine/procedures/runner.h"
#include "engine/session/edge.h"
#include "engine/session/profile.h"

namespace hingepin::session {

/// What a job's readings and logs say so far, as a calibration job ("hingepin-job/1") whose logs are named by
/// their hash; nothing where there is neither a pose with a sensor reading nor a lift. The rule stands under
/// "What a calibration is made of" in README.md.
[[nodiscard]] std::optional<std::string> calibrationJobOf(const procedures::Procedure& procedure,
                                                          const procedures::State& state,
                                                          const UnitProfile& unit,
                                                          const AttachmentProfile* attachment);

/// Gives the runner the largest residual of a fit to what was read so far: of the boom line or the
/// bellcrank's line an angle (rad), of the lift pressure the largest residual deviation of a pass (Pa). What
/// the readings don't support fails the check and doesn't stop the job: such errors are of kind Insufficient.
/// The arguments must outlive it; `state` is read when it is called.
[[nodiscard]] procedures::Measure measureOf(const procedures::Procedure& procedure,
                                            const procedures::State& state, const UnitProfile& unit,
                                            const AttachmentProfile* attachment, const Edge& edge,
                                            const BlobSource& logs);

}  // namespace hingepin::session
