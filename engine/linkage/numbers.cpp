// SPDX-License-Identifier: Apache-2.0
#include "engine/linkage/numbers.h"

#include <cmath>
#include <type_traits>

#include "engine/units/degree.h"

namespace hingepin::linkage {
namespace {

template <auto Member>
constexpr LinkageNumber number(const char* name, double low, double high, LinkageNumber::Kind kind) {
  return {name,
          [](const ZBarGeometry& g) { return (g.*Member).inSi(); },
          [](ZBarGeometry& g, double value) { g.*Member = std::decay_t<decltype(g.*Member)>::fromSi(value); },
          low,
          high,
          kind};
}

template <auto Member, auto Coordinate>
constexpr LinkageNumber coordinate(const char* name, double low, double high) {
  return {name,
          [](const ZBarGeometry& g) { return (g.*Member.*Coordinate).inSi(); },
          [](ZBarGeometry& g, double value) { g.*Member.*Coordinate = Length::fromMetres(value); },
          low,
          high,
          LinkageNumber::ShareOfBoom};
}

using G = ZBarGeometry;
using N = LinkageNumber;
constexpr std::array<LinkageNumber, kLinkageNumbers> kNumbers = {
    number<&G::boom_length>("boom_length", 1.0, 6.0, N::Metres),
    number<&G::boom_pivot_height>("boom_pivot_height", 0.40, 1.30, N::ShareOfBoom),
    coordinate<&G::lift_frame_pin, &Pin::along>("lift_frame_pin/0", -0.35, 0.35),
    coordinate<&G::lift_frame_pin, &Pin::across>("lift_frame_pin/1", -0.45, -0.04),
    coordinate<&G::lift_boom_pin, &Pin::along>("lift_boom_pin/0", 0.25, 0.90),
    coordinate<&G::lift_boom_pin, &Pin::across>("lift_boom_pin/1", -0.30, 0.30),
    coordinate<&G::tilt_frame_pin, &Pin::along>("tilt_frame_pin/0", -0.30, 0.45),
    coordinate<&G::tilt_frame_pin, &Pin::across>("tilt_frame_pin/1", -0.35, 0.45),
    coordinate<&G::bellcrank_pivot, &Pin::along>("bellcrank_pivot/0", 0.35, 0.90),
    coordinate<&G::bellcrank_pivot, &Pin::across>("bellcrank_pivot/1", 0.02, 0.45),
    number<&G::bellcrank_tilt_arm>("bellcrank_tilt_arm", 0.08, 0.55, N::ShareOfBoom),
    number<&G::bellcrank_link_arm>("bellcrank_link_arm", 0.08, 0.55, N::ShareOfBoom),
    number<&G::bellcrank_angle>("bellcrank_angle", 110 * kDegree, 250 * kDegree, N::Radians),
    number<&G::link_length>("link_length", 0.08, 0.50, N::ShareOfBoom),
    number<&G::bucket_pin_distance>("bucket_pin_distance", 0.04, 0.30, N::ShareOfBoom),
    number<&G::bucket_pin_angle>("bucket_pin_angle", 30 * kDegree, 180 * kDegree, N::Radians),
    number<&G::tilt_cylinder_retracted>("tilt_cylinder_retracted", 0.15, 1.00, N::ShareOfBoom),
    number<&G::tilt_cylinder_extended>("tilt_cylinder_extended", 0.20, 1.20, N::ShareOfBoom)};

}  // namespace

std::span<const LinkageNumber, kLinkageNumbers> linkageNumbers() { return kNumbers; }

PerNumber standardUncertainties(const LinkageDoubt& doubt) {
  PerNumber u{};
  for (const PerNumber& cause : doubt)
    for (std::size_t i = 0; i < u.size(); ++i) u[i] = std::hypot(u[i], cause[i]);
  return u;
}

}  // namespace hingepin::linkage
