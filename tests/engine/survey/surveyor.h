// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cmath>
#include <cstdlib>
#include <functional>

#include "engine/survey/survey.h"
#include "engine/units/degree.h"

namespace hingepin::survey {

/// Someone with a tape and an inclinometer at a machine whose linkage is known, by its closed form. Each
/// value has an error of the standard uncertainty times what `error` gives.
struct Surveyor {
  linkage::ZBarGeometry truth;
  double tape_u_m = 0.005;
  double inclinometer_u_rad = 0.3 * kDegree;
  std::function<double()> error = [] { return 0.0; };
  double plate_rad = 0.03;  ///< of the boom's straight edge against its pins
  double plate_m = 0.21;
  double ground_rad = 0.0;
  Survey survey = {};
  std::vector<double> boom_rad = {};  ///< of the poses
  std::vector<double> tilt_m = {};

  std::size_t stand(const std::string& name, double boom_angle_rad, std::optional<TiltEnd> end,
                    double tilt_length_m = 0.0) {
    survey.poses.push_back({name, end});
    boom_rad.push_back(boom_angle_rad);
    tilt_m.push_back(end == TiltEnd::Extended    ? truth.tilt_cylinder_extended.inMetres()
                     : end == TiltEnd::Retracted ? truth.tilt_cylinder_retracted.inMetres()
                                                 : tilt_length_m);
    return survey.poses.size() - 1;
  }

  [[nodiscard]] double trueValue(const Target& target) const {
    const auto linkage = linkage::Linkage::make(truth);
    if (!linkage) std::abort();
    const double boom = target.pose ? boom_rad[*target.pose] : 0.0;
    const double tilt = target.pose ? tilt_m[*target.pose] : truth.tilt_cylinder_extended.inMetres();
    const auto pins = linkage->pins(boom, tilt);
    const auto state = linkage->tilt(boom, tilt);
    if (!pins || !state) std::abort();
    const auto at = [&](Pin pin) {
      const std::array all = {pins->boom_pivot,         pins->hinge_pin,          pins->lift_frame_pin,
                              pins->lift_boom_pin,      pins->tilt_frame_pin,     pins->bellcrank_pivot,
                              pins->bellcrank_tilt_pin, pins->bellcrank_link_pin, pins->bucket_link_pin};
      return all[static_cast<std::size_t>(pin)];
    };
    const auto from = at(target.from);
    const auto to = at(target.to);
    const double x = to[0] - from[0];
    const double y = to[1] - from[1];
    const double c = std::cos(ground_rad);
    const double s = std::sin(ground_rad);
    switch (target.kind) {
      case Kind::Distance:
        return std::hypot(x, y);
      case Kind::Horizontal:
        return c * x - s * y;
      case Kind::Vertical:
        return s * x + c * y;
      case Kind::Height:
        return truth.boom_pivot_height.inMetres() + from[1];
      case Kind::Inclination:
        return std::atan2(y, x) + ground_rad;
      case Kind::BoomPlateAngle:
        return boom + plate_rad + ground_rad;
      case Kind::BoomPlateOffset: {
        const double edge = boom + plate_rad;
        return plate_m - (-std::sin(edge) * from[0] + std::cos(edge) * from[1]);
      }
      case Kind::BucketFloorAngle:
        return state->bucket_by_boom.value + ground_rad;
      case Kind::GroundAngle:
        return ground_rad;
      case Kind::DataSheet:
        return linkage::linkageNumbers()[target.number].get(truth);
    }
    return 0.0;
  }

  void measure(const Target& target) {
    const double u = isAngle(target) ? inclinometer_u_rad : tape_u_m;
    survey.measurements.push_back({target, trueValue(target) + u * error(), u});
  }
  void distance(Pin from, Pin to, std::optional<std::size_t> pose = {}) {
    measure({.kind = Kind::Distance, .from = from, .to = to, .pose = pose});
  }
};

/// What an afternoon gives: pins of one body against each other, the frame's pins against the ground and by
/// plumb line, and the boom at six heights with both cylinders, racked back and once dumped.
/// @param low, high the boom's travel
inline Surveyor usualSurvey(Surveyor surveyor, double low_rad, double high_rad) {
  surveyor.distance(Pin::BoomPivot, Pin::HingePin);
  surveyor.distance(Pin::BoomPivot, Pin::LiftBoomPin);
  surveyor.distance(Pin::LiftBoomPin, Pin::HingePin);
  surveyor.distance(Pin::BoomPivot, Pin::BellcrankPivot);
  surveyor.distance(Pin::BellcrankPivot, Pin::HingePin);
  surveyor.distance(Pin::LiftBoomPin, Pin::BellcrankPivot);
  surveyor.distance(Pin::BoomPivot, Pin::LiftFramePin);
  surveyor.distance(Pin::BoomPivot, Pin::TiltFramePin);
  surveyor.distance(Pin::BellcrankPivot, Pin::BellcrankTiltPin);
  surveyor.distance(Pin::BellcrankPivot, Pin::BellcrankLinkPin);
  surveyor.distance(Pin::BellcrankTiltPin, Pin::BellcrankLinkPin);
  surveyor.distance(Pin::BellcrankLinkPin, Pin::BucketLinkPin);
  surveyor.distance(Pin::HingePin, Pin::BucketLinkPin);
  for (const Pin pin : {Pin::BoomPivot, Pin::LiftFramePin, Pin::TiltFramePin})
    surveyor.measure({.kind = Kind::Height, .from = pin});
  for (const Pin pin : {Pin::LiftFramePin, Pin::TiltFramePin})
    surveyor.measure({.kind = Kind::Horizontal, .from = Pin::BoomPivot, .to = pin});
  surveyor.measure({.kind = Kind::BoomPlateOffset, .from = Pin::BoomPivot});
  surveyor.measure({.kind = Kind::BoomPlateOffset, .from = Pin::HingePin});
  for (int k = 0; k < 6; ++k) {
    const std::size_t pose = surveyor.stand("racked-" + std::to_string(k + 1),
                                            std::lerp(low_rad, high_rad, k / 5.0), TiltEnd::Extended);
    surveyor.measure({.kind = Kind::BoomPlateAngle, .pose = pose});
    surveyor.distance(Pin::LiftFramePin, Pin::LiftBoomPin, pose);
    surveyor.measure({.kind = Kind::BucketFloorAngle, .pose = pose});
    if (k == 0 || k == 3) surveyor.distance(Pin::TiltFramePin, Pin::BellcrankTiltPin, pose);
    surveyor.measure({.kind = Kind::Height, .from = Pin::HingePin, .pose = pose});
  }
  const std::size_t dumped = surveyor.stand("dumped", 0.0, TiltEnd::Retracted);
  surveyor.measure({.kind = Kind::BoomPlateAngle, .pose = dumped});
  surveyor.distance(Pin::TiltFramePin, Pin::BellcrankTiltPin, dumped);
  surveyor.measure({.kind = Kind::BucketFloorAngle, .pose = dumped});
  return surveyor;
}

/// What an hour gives: nothing of the bellcrank but how the bucket's floor turns at four heights of the boom.
inline Surveyor shortSurvey(Surveyor surveyor, double low_rad, double high_rad) {
  surveyor.distance(Pin::BoomPivot, Pin::HingePin);
  surveyor.distance(Pin::BoomPivot, Pin::LiftBoomPin);
  surveyor.distance(Pin::LiftBoomPin, Pin::HingePin);
  surveyor.distance(Pin::BoomPivot, Pin::LiftFramePin);
  for (const Pin pin : {Pin::BoomPivot, Pin::LiftFramePin})
    surveyor.measure({.kind = Kind::Height, .from = pin});
  for (const Pin pin : {Pin::BoomPivot, Pin::HingePin, Pin::LiftBoomPin})
    surveyor.measure({.kind = Kind::BoomPlateOffset, .from = pin});
  for (int k = 0; k < 4; ++k) {
    const std::size_t pose = surveyor.stand("racked-" + std::to_string(k + 1),
                                            std::lerp(low_rad, high_rad, k / 3.0), TiltEnd::Extended);
    surveyor.measure({.kind = Kind::BoomPlateAngle, .pose = pose});
    surveyor.distance(Pin::LiftFramePin, Pin::LiftBoomPin, pose);
    surveyor.measure({.kind = Kind::BucketFloorAngle, .pose = pose});
  }
  return surveyor;
}

}  // namespace hingepin::survey
