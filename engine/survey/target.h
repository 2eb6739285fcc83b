// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/base/json_walk.h"
#include "engine/base/named.h"

namespace hingepin::survey {

/// The centres of the pins, named as in linkage::PinPositions.
enum class Pin {
  BoomPivot,
  HingePin,
  LiftFramePin,
  LiftBoomPin,
  TiltFramePin,
  BellcrankPivot,
  BellcrankTiltPin,
  BellcrankLinkPin,
  BucketLinkPin
};
inline constexpr std::array kPinNames = {Named{"boom-pivot", Pin::BoomPivot},
                                         Named{"hinge-pin", Pin::HingePin},
                                         Named{"lift-frame-pin", Pin::LiftFramePin},
                                         Named{"lift-boom-pin", Pin::LiftBoomPin},
                                         Named{"tilt-frame-pin", Pin::TiltFramePin},
                                         Named{"bellcrank-pivot", Pin::BellcrankPivot},
                                         Named{"bellcrank-tilt-pin", Pin::BellcrankTiltPin},
                                         Named{"bellcrank-link-pin", Pin::BellcrankLinkPin},
                                         Named{"bucket-link-pin", Pin::BucketLinkPin}};

enum class Kind {
  Distance,          ///< between the centres of two pins, m
  Horizontal,        ///< how far `to` is forward of `from`, by plumb line, m
  Vertical,          ///< how far `to` is above `from`, by level, m
  Height,            ///< of `from` above the ground, m
  Inclination,       ///< of the line `from` -> `to` above the horizontal, rad
  BoomPlateAngle,    ///< of a straight edge of the boom above the horizontal, rad
  BoomPlateOffset,   ///< how far that edge is above `from`, square to it, m
  BucketFloorAngle,  ///< of the bucket floor, heel to cutting edge, above the horizontal, rad
  GroundAngle,       ///< of the ground under the machine, rising forwards, rad
  DataSheet          ///< a number of the linkage as a paper gives it, m or rad
};
inline constexpr std::array kKindNames = {Named{"distance", Kind::Distance},
                                          Named{"horizontal", Kind::Horizontal},
                                          Named{"vertical", Kind::Vertical},
                                          Named{"height", Kind::Height},
                                          Named{"inclination", Kind::Inclination},
                                          Named{"boom-plate-angle", Kind::BoomPlateAngle},
                                          Named{"boom-plate-offset", Kind::BoomPlateOffset},
                                          Named{"bucket-floor-angle", Kind::BucketFloorAngle},
                                          Named{"ground-angle", Kind::GroundAngle},
                                          Named{"data-sheet", Kind::DataSheet}};

[[nodiscard]] bool takesTwoPins(Kind kind);
[[nodiscard]] bool takesOnePin(Kind kind);

/// What is measured, apart from what it gave.
struct Target {
  Kind kind = Kind::Distance;
  Pin from = Pin::BoomPivot;
  Pin to = Pin::HingePin;
  std::size_t number = 0;                ///< of linkage::linkageNumbers(), of DataSheet
  std::optional<std::size_t> pose = {};  ///< of Survey::poses

  friend bool operator==(const Target&, const Target&) = default;
};

/// Whether the value is an angle; else it is a length.
[[nodiscard]] bool isAngle(const Target& target);
/// Whether the value changes as the linkage moves, so that a pose has to be named.
[[nodiscard]] bool needsPose(const Target& target);
/// Whether the pin is on the boom, whose straight edge can be measured against it.
[[nodiscard]] bool isOnBoom(Pin pin);

/// The keys that say what is measured, of a kind: "kind" itself, its pins, its number.
[[nodiscard]] std::vector<std::string_view> keysOf(Kind kind);
/// What stands at those keys, each by its name.
[[nodiscard]] std::vector<std::pair<std::string_view, std::string_view>> wordsOf(const Target& target);
/// What is measured, as these keys of an object say it; whether others stand there is the caller's.
/// Keeps "json-wrong-kind", "word-unknown", "survey-same-pin", "survey-pin-off-boom".
[[nodiscard]] Target readTarget(JsonWalk& walk, const JsonNode& node);

}  // namespace hingepin::survey
