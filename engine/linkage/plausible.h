// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/linkage/linkage.h"

namespace hingepin::linkage {

/// How far from level a loader's boom can go: 60 degrees (common practice, no source).
inline constexpr double kMostTravel_rad = 1.0471975511965976;

/// Whether a linkage file describes a wheel loader that could be built and would work: each number in its
/// plausible range (of a loader from 2 t to 60 t; lengths as shares of the boom's), the tilt cylinder of a
/// possible stroke, the lift cylinder lengthening through level, and both loops closing over the whole stroke
/// at some boom angle near level with the bucket racking back as the cylinder extends. The plausible ranges
/// are common practice, no source.
/// @param assemble makes the unchecked linkage of a geometry
/// Errors: InvalidInput, with "field", "value", "low", "high". Where the numbers only disagree with each
/// other, the field named is the one whose smallest change would mend the linkage, a change of sign first.
[[nodiscard]] Expected<void> checkPlausible(const ZBarGeometry& geometry,
                                            Linkage (*assemble)(const ZBarGeometry&));

}  // namespace hingepin::linkage
