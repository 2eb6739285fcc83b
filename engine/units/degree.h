// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <numbers>

namespace hingepin {

/// One degree, in rad.
inline constexpr double kDegree = std::numbers::pi / 180.0;

}  // namespace hingepin
