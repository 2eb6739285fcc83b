// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "engine/base/error.h"
#include "engine/procedures/runner.h"
#include "engine/session/edge.h"
#include "engine/session/job.h"
#include "engine/session/profile.h"

/// Surveys of a linkage as the readings of a job give them.
namespace hingepin::session {

/// What a job has measured of its machine's linkage.
struct JobSurvey {
  std::string text;                ///< "hingepin-survey/1"
  std::vector<std::size_t> tries;  ///< of each measurement the try that gave it, by its index
};

/// Of the last check of a survey before or at the end of the steps; nothing where nothing was measured. The
/// rule stands under "What a survey is made of" in README.md.
/// @param check of kind Survey
[[nodiscard]] std::optional<JobSurvey> surveyOf(const OpenJob& job, const procedures::Step& check);

/// Judges a check of kind Survey. Passed: a mass is in doubt by no more than its limit, as a mass of the
/// rated payload, and nothing disagrees. `step` is the one that disagrees, whose try is set aside, else the
/// one that would help most; undecided where that needs a pose, or is not to be had. Errors: those of
/// valueOf.
[[nodiscard]] Expected<procedures::Verdict> surveyed(const OpenJob& job, const procedures::Step& check,
                                                     const Edge& edge);

/// Judges whatever check of a job is judged. Both must outlive it.
[[nodiscard]] procedures::Judge judgeOf(const OpenJob& job, const Edge& edge);

/// What came of such a check, in words, the most important first. @param step the words of the step that the
/// try names, or ""
[[nodiscard]] std::vector<Message> saySurvey(const std::string& result, const std::string& reason,
                                             const std::string& limit, const std::string& step);

/// A unit's linkage as a job has found it.
struct FoundLinkage {
  std::string survey;                    ///< the file that gave it
  std::string profile;                   ///< the unit's profile with it
  double expanded_uncertainty_kg = 0.0;  ///< of the rated payload, from the linkage alone
};
/// Nothing of a job that is not done, has no such check, or measured too little to weigh with.
/// @param profile of the unit as it stands in the store
[[nodiscard]] std::optional<FoundLinkage> foundLinkage(const OpenJob& job, const std::string& profile,
                                                       const Edge& edge);

}  // namespace hingepin::session
