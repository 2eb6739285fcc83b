// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>

#include "engine/base/error.h"
#include "engine/linkage/linkage.h"
#include "engine/linkage/numbers.h"
#include "engine/units/degree.h"

namespace hingepin::calibration {

/// Half the weigh window where a job names none.
inline constexpr double kDefaultWindow_rad = 15.0 * kDegree;

/// Where a heap's centre is taken to be where nobody says, in the bucket's frame: loaders of a shape.
[[nodiscard]] linkage::Pin usualPayloadCenter(Length boom_length);

/// How the mass that a lift is weighed as changes, relative to itself, over the weigh window: at its middle,
/// and more at its upper end (less at the lower).
struct MassEffect {
  double level = 0.0;
  double slope = 0.0;
};

/// The effect of each number of a linkage: mass goes with the lift cylinder's arm over that of the load,
/// c'(beta) / y'(beta) with the bucket racked back. By central differences; what bends over the window is
/// within 0.02 % of the mass for a millimetre and left out.
/// Errors: those of linkage::Linkage; a loop that cannot close within the window.
[[nodiscard]] Expected<std::array<MassEffect, linkage::kLinkageNumbers>> massEffects(
    const linkage::ZBarGeometry& geometry, const linkage::Pin& payload_center, linkage::Range window_rad);

}  // namespace hingepin::calibration
