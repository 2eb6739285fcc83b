// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <span>
#include <vector>

#include "engine/linkage/linkage.h"

namespace hingepin::linkage {

/// One number of the linkage file, as the file names it (a coordinate of a pin by its index,
/// "lift_frame_pin/1"), and where it may lie in a loader from 2 t to 60 t: metres, shares of the boom's
/// length, or radians. The ranges are common practice, no source.
struct LinkageNumber {
  const char* name;
  double (*get)(const ZBarGeometry&);
  void (*set)(ZBarGeometry&, double);
  double low;
  double high;
  enum Kind { Metres, ShareOfBoom, Radians } kind;
};

inline constexpr std::size_t kLinkageNumbers = 18;

/// One value for each of them: metres and radians.
using PerNumber = std::array<double, kLinkageNumbers>;

/// All of them in the file's order, the boom's length first.
[[nodiscard]] std::span<const LinkageNumber, kLinkageNumbers> linkageNumbers();

/// What is in doubt of a linkage: each row is one cause, independent of the others, and says by how much one
/// standard uncertainty of it changes each number. The covariance is the sum of the rows' outer products.
using LinkageDoubt = std::vector<PerNumber>;

/// Standard uncertainty of each number.
[[nodiscard]] PerNumber standardUncertainties(const LinkageDoubt& doubt);

}  // namespace hingepin::linkage
