// SPDX-License-Identifier: Apache-2.0
#include "engine/survey/answer.h"

#include <algorithm>

#include "engine/calibration/linkage_doubt.h"
#include "engine/units/degree.h"

namespace hingepin::survey {

Expected<Answer> tellSurvey(const Survey& survey, const calibration::LoaderUnit& unit,
                            const std::optional<calibration::Attachment>& attachment, double tape_u_m,
                            double inclinometer_u_rad) {
  Expected<Estimate> estimated = estimate(survey);
  if (!estimated) return std::unexpected(estimated.error());
  Answer answer;
  answer.estimate = *std::move(estimated);
  const linkage::PerNumber& told = answer.estimate.told;
  answer.least_told = static_cast<std::size_t>(std::ranges::min_element(told) - told.begin());

  linkage::Range window_rad{-calibration::kDefaultWindow_rad, calibration::kDefaultWindow_rad};
  if (unit.weigh_window) {
    window_rad = {unit.weigh_window->low.inRadians(), unit.weigh_window->high.inRadians()};
  } else {
    answer.taken.push_back({"taken-weigh-window",
                            {{"low", Amount{window_rad.low / kDegree, "deg", 1}},
                             {"high", Amount{window_rad.high / kDegree, "deg", 1}}}});
  }
  linkage::Pin centre = calibration::usualPayloadCenter(answer.estimate.geometry.boom_length);
  if (attachment && attachment->payload_center) {
    centre = *attachment->payload_center;
  } else {
    answer.taken.push_back({"taken-payload-center",
                            {{"along", Amount{centre.along.inMetres(), "m", 2}},
                             {"across", Amount{centre.across.inMetres(), "m", 2}}}});
  }

  linkage::PerNumber effect{};
  const auto effects = calibration::massEffects(answer.estimate.geometry, centre, window_rad);
  if (effects) {
    for (std::size_t i = 0; i < effect.size(); ++i) effect[i] = (*effects)[i].level;
    answer.mass_u = effectUncertainty(answer.estimate.doubt, effect);
  } else {
    answer.unusable = effects.error();
    effect[answer.least_told] = 1.0;
  }
  answer.next = gains(survey, answer.estimate, effect, tape_u_m, inclinometer_u_rad);
  for (const std::size_t number : answer.estimate.either_sign)
    answer.warnings.push_back({"survey-two-linkages", {{"number", linkage::linkageNumbers()[number].name}}});
  if (answer.estimate.disagrees) answer.warnings.push_back({"survey-measurement-disagrees", {}});
  return answer;
}

}  // namespace hingepin::survey
