// SPDX-License-Identifier: Apache-2.0
#include "engine/session/machine_drawing.h"

#include <algorithm>
#include <cmath>

#include "engine/base/random.h"
#include "engine/linkage/linkage.h"
#include "engine/simulator/machine.h"
#include "engine/units/degree.h"

namespace hingepin::session {
namespace {

/// A loader of no particular make: that which one practises on, invented.
linkage::ZBarGeometry plausibleGeometry() {
  Random random(1);  // its hidden errors; the drawing has none
  return simulator::practiceMachine(random).drawing;
}

struct Chosen {
  linkage::Linkage linkage;
  bool known;
};

std::optional<Chosen> linkageOf(const calibration::LoaderUnit& unit) {
  if (unit.linkage) {
    if (const auto made = linkage::Linkage::make(*unit.linkage)) return Chosen{*made, true};
  }
  if (const auto made = linkage::Linkage::make(plausibleGeometry())) return Chosen{*made, false};
  return std::nullopt;
}

/// Of the travel: what lengthens the lift cylinder, within what booms do.
linkage::Range travelOf(const linkage::Linkage& linkage) {
  const linkage::Range lifts = linkage.liftRange();
  return {std::max(lifts.low, -42.0 * kDegree), std::min(lifts.high, 50.0 * kDegree)};
}

}  // namespace

std::optional<MachineDrawing> drawMachine(const calibration::LoaderUnit& unit,
                                          const calibration::Attachment* attachment, double boom_rad,
                                          double racked) {
  const std::optional<Chosen> chosen = linkageOf(unit);
  if (!chosen) return std::nullopt;
  const linkage::Linkage& linkage = chosen->linkage;
  MachineDrawing drawing;
  drawing.known = chosen->known;
  const linkage::Range travel = travelOf(linkage);
  drawing.low_rad = travel.low;
  drawing.high_rad = travel.high;
  const double boom = std::clamp(boom_rad, travel.low, travel.high);
  const linkage::Range tilt = linkage.tiltRange(boom);
  if (tilt.low > tilt.high) return std::nullopt;
  const double share = std::clamp(racked, 0.0, 1.0);
  const double length = tilt.low + (tilt.high - tilt.low) * (0.002 + 0.996 * share);
  const auto pins = linkage.pins(boom, length);
  const auto state = linkage.tilt(boom, length);
  if (!pins || !state) return std::nullopt;
  const double height = linkage.geometry().boom_pivot_height.inMetres();
  const auto grounded = [&](const DrawnPoint& p) { return DrawnPoint{p[0], p[1] + height}; };
  drawing.boom_pivot = grounded(pins->boom_pivot);
  drawing.hinge_pin = grounded(pins->hinge_pin);
  drawing.lift_frame_pin = grounded(pins->lift_frame_pin);
  drawing.lift_boom_pin = grounded(pins->lift_boom_pin);
  drawing.tilt_frame_pin = grounded(pins->tilt_frame_pin);
  drawing.bellcrank_pivot = grounded(pins->bellcrank_pivot);
  drawing.bellcrank_tilt_pin = grounded(pins->bellcrank_tilt_pin);
  drawing.bellcrank_link_pin = grounded(pins->bellcrank_link_pin);
  drawing.bucket_link_pin = grounded(pins->bucket_link_pin);
  drawing.bucket_rad = state->bucket_by_boom.value;
  const double across = std::sin(drawing.bucket_rad);
  const double along = std::cos(drawing.bucket_rad);
  const auto inBucket = [&](double u, double v) {
    return DrawnPoint{drawing.hinge_pin[0] + u * along - v * across,
                      drawing.hinge_pin[1] + u * across + v * along};
  };
  const linkage::Pin heel = attachment != nullptr && attachment->heel
                                ? *attachment->heel
                                : linkage::Pin{Length::fromMetres(-0.1), Length::fromMetres(-0.22)};
  const linkage::Pin edge = attachment != nullptr && attachment->cutting_edge
                                ? *attachment->cutting_edge
                                : linkage::Pin{Length::fromMetres(1.22), Length::fromMetres(-0.22)};
  const double heel_u = heel.along.inMetres();
  const double heel_v = heel.across.inMetres();
  const double edge_u = edge.along.inMetres();
  const double edge_v = edge.across.inMetres();
  const double depth = std::max(0.4, edge_u - heel_u);
  drawing.heel = inBucket(heel_u, heel_v);
  drawing.cutting_edge = inBucket(edge_u, edge_v);
  // Floor, a rounded back, the top lip: the shape of a bucket, no drawing of any.
  drawing.bucket = {inBucket(edge_u, edge_v),
                    inBucket(heel_u, heel_v),
                    inBucket(heel_u - 0.12 * depth, heel_v + 0.14 * depth),
                    inBucket(heel_u - 0.14 * depth, heel_v + 0.42 * depth),
                    inBucket(heel_u + 0.02 * depth, heel_v + 0.74 * depth),
                    inBucket(heel_u + 0.34 * depth, heel_v + 0.92 * depth),
                    inBucket(edge_u, edge_v)};
  const double low = unit.weigh_window ? unit.weigh_window->low.inRadians() : -5.0 * kDegree;
  const double high = unit.weigh_window ? unit.weigh_window->high.inRadians() : 15.0 * kDegree;
  const double reach = linkage.geometry().boom_length.inMetres();
  constexpr int kArcPoints = 24;
  for (int point = 0; point <= kArcPoints; ++point) {
    const double angle = low + (high - low) * point / kArcPoints;
    drawing.window_arc.push_back({reach * std::cos(angle), height + reach * std::sin(angle)});
  }
  return drawing;
}

std::optional<DrawnMeasure> drawMeasure(const MachineDrawing& drawing, const survey::Target& target) {
  const std::array pins = {drawing.boom_pivot,         drawing.hinge_pin,          drawing.lift_frame_pin,
                           drawing.lift_boom_pin,      drawing.tilt_frame_pin,     drawing.bellcrank_pivot,
                           drawing.bellcrank_tilt_pin, drawing.bellcrank_link_pin, drawing.bucket_link_pin};
  const DrawnPoint from = pins[static_cast<std::size_t>(target.from)];
  const DrawnPoint to = pins[static_cast<std::size_t>(target.to)];
  const auto levelFrom = [](const DrawnPoint& p) {
    constexpr double kLevel_m = 1.0;
    return std::array<DrawnPoint, 2>{p, DrawnPoint{p[0] + kLevel_m, p[1]}};
  };
  // The straight edge of the boom: a hand's breadth above the line of its pins.
  constexpr double kEdge_m = 0.24;
  const double x = drawing.hinge_pin[0] - drawing.boom_pivot[0];
  const double y = drawing.hinge_pin[1] - drawing.boom_pivot[1];
  const double length = std::hypot(x, y);
  const auto onEdge = [&](double along) {
    return DrawnPoint{drawing.boom_pivot[0] + (along * x - kEdge_m * y) / length,
                      drawing.boom_pivot[1] + (along * y + kEdge_m * x) / length};
  };
  const std::array<DrawnPoint, 2> edge = {onEdge(0.0), onEdge(length)};
  switch (target.kind) {
    case survey::Kind::Distance:
      return DrawnMeasure{.from = from, .to = to};
    case survey::Kind::Horizontal: {
      const DrawnPoint below{from[0], to[1]};
      return DrawnMeasure{.from = below, .to = to, .helpers = {{from, below}}};
    }
    case survey::Kind::Vertical: {
      const DrawnPoint beside{to[0], from[1]};
      return DrawnMeasure{.from = beside, .to = to, .helpers = {{from, beside}}};
    }
    case survey::Kind::Height:
      return DrawnMeasure{.from = {from[0], 0.0}, .to = from};
    case survey::Kind::Inclination:
      return DrawnMeasure{.from = from, .to = to, .helpers = {levelFrom(from)}};
    case survey::Kind::BoomPlateAngle: {
      const DrawnPoint low = onEdge(0.25 * length);
      return DrawnMeasure{.from = low, .to = onEdge(0.75 * length), .helpers = {levelFrom(low)}};
    }
    case survey::Kind::BoomPlateOffset: {
      const double along =
          ((from[0] - drawing.boom_pivot[0]) * x + (from[1] - drawing.boom_pivot[1]) * y) / length;
      return DrawnMeasure{.from = onEdge(along), .to = from, .helpers = {edge}};
    }
    case survey::Kind::BucketFloorAngle:
      return DrawnMeasure{
          .from = drawing.heel, .to = drawing.cutting_edge, .helpers = {levelFrom(drawing.heel)}};
    case survey::Kind::GroundAngle:
      return DrawnMeasure{.from = {-1.0, 0.0}, .to = {1.0, 0.0}};
    case survey::Kind::DataSheet:
      return std::nullopt;
  }
  return std::nullopt;
}

double levelShare(const calibration::LoaderUnit& unit, double boom_rad) {
  const std::optional<Chosen> chosen = linkageOf(unit);
  if (!chosen) return 0.5;
  const linkage::Range travel = travelOf(chosen->linkage);
  const double boom = std::clamp(boom_rad, travel.low, travel.high);
  const linkage::Range tilt = chosen->linkage.tiltRange(boom);
  const Expected<double> length = chosen->linkage.tiltLengthOfBucket(boom, 0.0);
  if (!length || tilt.low >= tilt.high) return 0.5;
  return std::clamp((*length - tilt.low) / (tilt.high - tilt.low), 0.0, 1.0);
}

}  // namespace hingepin::session
