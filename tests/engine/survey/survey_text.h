// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <fmt/format.h>

#include <string>

#include "tests/engine/survey/surveyor.h"

namespace hingepin::survey {

/// The survey as a file, with the unit given as JSON.
inline std::string surveyText(const Surveyor& surveyor, const std::string& unit_json) {
  std::string text = fmt::format(R"({{"format": "hingepin-survey/1", "unit": {}, "poses": [)", unit_json);
  for (const Pose& pose : surveyor.survey.poses) {
    text += fmt::format(R"({}{{"pose": "{}")", text.ends_with('[') ? "" : ",\n  ", pose.name);
    if (pose.tilt_end)
      text += *pose.tilt_end == TiltEnd::Extended ? R"(, "tilt_cylinder": "extended")"
                                                  : R"(, "tilt_cylinder": "retracted")";
    text += "}";
  }
  text += "],\n \"measurements\": [";
  for (const Measurement& each : surveyor.survey.measurements) {
    const Target& target = each.target;
    text += fmt::format("{}\n  {{\"kind\": \"{}\"", text.ends_with('[') ? "" : ",",
                        nameIn(kKindNames, target.kind));
    if (takesTwoPins(target.kind))
      text += fmt::format(R"(, "from": "{}", "to": "{}")", nameIn(kPinNames, target.from),
                          nameIn(kPinNames, target.to));
    if (takesOnePin(target.kind)) text += fmt::format(R"(, "pin": "{}")", nameIn(kPinNames, target.from));
    if (target.pose) text += fmt::format(R"(, "pose": "{}")", surveyor.survey.poses[*target.pose].name);
    const bool angle = isAngle(target);
    text += angle ? fmt::format(R"(, "value": "{:.5f} deg", "u": "{:.4f} deg"}})", each.value / kDegree,
                                each.u / kDegree)
                  : fmt::format(R"(, "value": "{:.6f} m", "u": "{:.5f} m"}})", each.value, each.u);
  }
  return text + "]}\n";
}

}  // namespace hingepin::survey
