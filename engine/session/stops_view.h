// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "engine/calibration/job.h"
#include "engine/calibration/model.h"
#include "engine/session/locale.h"
#include "engine/session/profile.h"

namespace hingepin::session {

/// What to set for the stops of a unit with an attachment, in words, a line each: for the entries
/// `upper-height` (of the hinge pin) and `lower-height` (of the cutting edge, bucket level) the boom's angle,
/// the heights of edge and heel and, with a calibration, what the boom sensor reads there; then warnings and
/// the caution. A height that can't be reached is said. Empty where there is no linkage or no cutting edge on
/// file, or no height is asked for.
/// @param entries of the unit, those of the attachment over them
[[nodiscard]] std::vector<std::string> sayStopsToSet(const calibration::LoaderUnit& unit,
                                                     const calibration::Attachment& attachment,
                                                     const Entries& entries,
                                                     const calibration::Calibration* calibration,
                                                     const Reader& reader);

}  // namespace hingepin::session
