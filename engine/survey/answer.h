// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <vector>

#include "engine/base/error.h"
#include "engine/calibration/job.h"
#include "engine/survey/survey.h"

namespace hingepin::survey {

/// What a technician wants to know of a survey.
struct Answer {
  Estimate estimate;
  /// Why the linkage can't be weighed with, if it can't: what was measured does not tell it yet, or is wrong.
  std::optional<Error> unusable;
  /// Standard uncertainty of a weighed mass from the linkage alone, as a share of it, over the weigh window;
  /// none where the linkage is unusable.
  std::optional<double> mass_u;
  std::size_t least_told =
      0;  ///< the number that the measurements tell least of, of linkage::linkageNumbers()
  /// What could be measured next, the best first. `effect_u` is the share of a mass that would then be in
  /// doubt; where the linkage is unusable, the doubt of the least told number.
  std::vector<Gain> next;
  std::vector<Message> taken;     ///< what was taken where the survey was silent
  std::vector<Message> warnings;  ///< what a person should look at
};

/// @param unit its weigh window counts, where it has one
/// @param tape_u_m, inclinometer_u_rad of what might be measured next
/// Errors: those of `estimate`.
[[nodiscard]] Expected<Answer> tellSurvey(const Survey& survey, const calibration::LoaderUnit& unit,
                                          const std::optional<calibration::Attachment>& attachment,
                                          double tape_u_m, double inclinometer_u_rad);

}  // namespace hingepin::survey
