// SPDX-License-Identifier: Apache-2.0
#include "engine/calibration/linkage_doubt.h"

#include <cmath>
#include <optional>

namespace hingepin::calibration {
namespace {

constexpr int kAngles = 9;
constexpr double kStep = 1e-5;  // m or rad

using PerAngle = std::array<double, kAngles>;

double placeOf(int k) { return -1.0 + 2.0 * k / (kAngles - 1.0); }

/// ln(c' / y') over the window.
Expected<PerAngle> logArms(const linkage::ZBarGeometry& geometry, const linkage::Pin& centre,
                           linkage::Range window_rad) {
  const Expected<linkage::Linkage> made = linkage::Linkage::make(geometry);
  if (!made) return std::unexpected(made.error());
  PerAngle arms{};
  for (int k = 0; k < kAngles; ++k) {
    const double boom_rad = std::lerp(window_rad.low, window_rad.high, 0.5 * (1.0 + placeOf(k)));
    const auto load = made->bucketPoint(boom_rad, geometry.tilt_cylinder_extended.inMetres(), centre);
    if (!load) return std::unexpected(load.error());
    arms[static_cast<std::size_t>(k)] = std::log(made->liftCylinder(boom_rad).first / load->y.first);
  }
  return arms;
}

}  // namespace

linkage::Pin usualPayloadCenter(Length boom_length) {
  return {Length::fromMetres(0.24 * boom_length.inMetres()),
          Length::fromMetres(0.18 * boom_length.inMetres())};
}

Expected<std::array<MassEffect, linkage::kLinkageNumbers>> massEffects(const linkage::ZBarGeometry& geometry,
                                                                       const linkage::Pin& payload_center,
                                                                       linkage::Range window_rad) {
  const Expected<PerAngle> at = logArms(geometry, payload_center, window_rad);
  if (!at) return std::unexpected(at.error());
  std::array<MassEffect, linkage::kLinkageNumbers> effects{};
  for (std::size_t i = 0; i < effects.size(); ++i) {
    const linkage::LinkageNumber& number = linkage::linkageNumbers()[i];
    // At the edge of what is plausible there is one side only.
    PerAngle ends[2] = {*at, *at};
    double width = 0.0;
    for (const int side : {0, 1}) {
      linkage::ZBarGeometry moved = geometry;
      number.set(moved, number.get(geometry) + (side == 0 ? -kStep : kStep));
      if (const auto there = logArms(moved, payload_center, window_rad)) {
        ends[side] = *there;
        width += kStep;
      }
    }
    if (width == 0.0) continue;
    double squares = 0.0;
    for (int k = 0; k < kAngles; ++k) {
      const auto index = static_cast<std::size_t>(k);
      const double effect = (ends[1][index] - ends[0][index]) / width;
      effects[i].level += effect / kAngles;
      effects[i].slope += effect * placeOf(k);
      squares += placeOf(k) * placeOf(k);
    }
    effects[i].slope /= squares;
  }
  return effects;
}

}  // namespace hingepin::calibration
