// SPDX-License-Identifier: Apache-2.0
#include "engine/linkage/plausible.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <string>

#include "engine/linkage/numbers.h"
#include "engine/units/degree.h"

namespace hingepin::linkage {
namespace {

constexpr double kTurn = 2.0 * std::numbers::pi;

using Field = LinkageNumber;

const Field& kBoomLength = linkageNumbers().front();
const Field& kTiltExtended = linkageNumbers().back();
const auto kFields = linkageNumbers().subspan<1>();

Range plausibleRange(const Field& field, const ZBarGeometry& geometry) {
  const double scale = field.kind == Field::ShareOfBoom ? geometry.boom_length.inMetres() : 1.0;
  return {field.low * scale, field.high * scale};
}

bool within(double value, Range range) { return value >= range.low && value <= range.high; }

/// An angle may be written a turn away (-176 deg for 184 deg); farther off it is degrees taken for radians.
bool plausible(const Field& field, const ZBarGeometry& geometry) {
  double value = field.get(geometry);
  if (field.kind == Field::Radians && value < 0.0 && value >= -kTurn) value += kTurn;
  return within(value, plausibleRange(field, geometry));
}

std::unexpected<Error> refuse(std::string code, const Field& field, const ZBarGeometry& geometry,
                              Range should_be) {
  const auto amount = [&](double si) {
    return field.kind == Field::Radians ? Amount{si / kDegree, "deg", 1} : Amount{si, "m", 3};
  };
  Place place;
  place.pointer = std::string("/") + field.name;
  return fail(ErrorKind::InvalidInput, std::move(code),
              {{"field", field.name},
               {"value", amount(field.get(geometry))},
               {"low", amount(should_be.low)},
               {"high", amount(should_be.high)},
               {"boom_length", Amount{geometry.boom_length.inMetres(), "m", 3}}},
              std::move(place));
}

/// Refuses the first number out of its plausible range.
Expected<void> checkRanges(const ZBarGeometry& geometry) {
  if (!plausible(kBoomLength, geometry))
    return refuse("linkage-number-implausible", kBoomLength, geometry, plausibleRange(kBoomLength, geometry));

  Range boom_for_all = plausibleRange(kBoomLength, geometry);
  const Field* first_out = nullptr;
  int out = 0;
  for (const Field& field : kFields) {
    if (!plausible(field, geometry)) {
      ++out;
      if (!first_out) first_out = &field;
    }
    const double value = field.get(geometry);
    if (field.kind != Field::ShareOfBoom || value == 0.0) continue;
    const bool positive = value > 0.0;
    const double far = positive ? field.high : field.low, near = positive ? field.low : field.high;
    if (far == 0.0 || (far > 0.0) != positive) boom_for_all.high = 0.0;  // the sign is wrong for any boom
    boom_for_all.low = std::max(boom_for_all.low, value / far);
    if (near != 0.0 && (near > 0.0) == positive)
      boom_for_all.high = std::min(boom_for_all.high, value / near);
  }
  if (!first_out) return {};
  // Several lengths out of proportion at once, and a boom length that would suit all: that is the wrong one.
  if (out > 1 && boom_for_all.low <= boom_for_all.high)
    return refuse("linkage-number-implausible", kBoomLength, geometry, boom_for_all);
  return refuse("linkage-number-implausible", *first_out, geometry, plausibleRange(*first_out, geometry));
}

/// Why a linkage whose numbers are plausible one by one would not work: a message code; none if it would.
std::optional<std::string> fault(const Linkage& linkage) {
  // A loader lowers to about -40 deg and lifts to about 45 deg; common practice, no source.
  const Range lift = linkage.liftRange();
  if (lift.low > -25 * kDegree || lift.high < 30 * kDegree) return "linkage-lift-cylinder-shortens";

  const double retracted = linkage.geometry().tilt_cylinder_retracted.inMetres();
  const double extended = linkage.geometry().tilt_cylinder_extended.inMetres();
  std::optional<std::string> first_fault;
  for (const double boom_angle_deg : {0.0, 10.0, -10.0, 20.0, -20.0}) {
    const double boom_angle_rad = boom_angle_deg * kDegree;
    const auto faultHere = [&]() -> std::optional<std::string> {
      const Range tilt = linkage.tiltRange(boom_angle_rad);
      if (tilt.low > retracted || tilt.high < extended) return "linkage-does-not-close";
      constexpr int kSteps = 12;
      for (int i = 0; i <= kSteps; ++i) {
        const auto state = linkage.tilt(boom_angle_rad, std::lerp(retracted, extended, i / double{kSteps}));
        if (!state) return "linkage-does-not-close";
        if (!(state->bucket_by_tilt.first > 0.0)) return "linkage-bucket-turns-back";
        const double bucket = state->bucket_by_tilt.value;
        if (i == 0 && !within(bucket, {-150 * kDegree, -5 * kDegree})) return "linkage-does-not-dump";
        if (i == kSteps && !within(bucket, {-5 * kDegree, 100 * kDegree})) return "linkage-does-not-rack";
      }
      return std::nullopt;
    }();
    if (!faultHere) return std::nullopt;
    if (!first_fault) first_fault = faultHere;
  }
  return first_fault;
}

/// A field, and the values around the nearest one for which the linkage would work.
struct Mend {
  const Field* field;
  Range values;
};

/// The one number whose smallest change, as a share of its plausible range, makes the linkage work; a change
/// of sign is a slip of the pen and goes before all others.
std::optional<Mend> smallestMend(const ZBarGeometry& geometry, Linkage (*assemble)(const ZBarGeometry&)) {
  std::optional<Mend> best;
  double best_change = 2.0;
  const auto consider = [&](const Field& field) {
    const double value = field.get(geometry);
    const Range allowed = plausibleRange(field, geometry);
    const double width = allowed.high - allowed.low;
    const auto works = [&](double tried) {
      ZBarGeometry changed = geometry;
      field.set(changed, tried);
      return within(tried, allowed) && checkRanges(changed) && !fault(assemble(changed));
    };
    const auto take = [&](double start, double change) {
      if (change >= best_change || !works(start)) return;
      const double step = width / 200.0;
      Range values{start, start};
      while (works(values.low - step)) values.low -= step;
      while (works(values.high + step)) values.high += step;
      best = {&field, values};
      best_change = change;
    };
    take(-value, 0.01 * std::abs(2.0 * value) / width);
    constexpr int kSteps = 120;
    for (int i = 0; i <= kSteps; ++i) {
      const double tried = std::lerp(allowed.low, allowed.high, i / double{kSteps});
      take(tried, std::abs(tried - value) / width);
    }
  };
  consider(kBoomLength);
  for (const Field& field : kFields) consider(field);
  return best;
}

}  // namespace

Expected<void> checkPlausible(const ZBarGeometry& geometry, Linkage (*assemble)(const ZBarGeometry&)) {
  if (auto ranges = checkRanges(geometry); !ranges) return ranges;

  // A cylinder holds its own rod: the stroke is shorter than the retracted length.
  const double retracted = geometry.tilt_cylinder_retracted.inMetres();
  const Range possible{1.05 * retracted, 1.95 * retracted};
  if (!within(geometry.tilt_cylinder_extended.inMetres(), possible))
    return refuse("tilt-cylinder-stroke-implausible", kTiltExtended, geometry, possible);

  const auto found = fault(assemble(geometry));
  if (!found) return {};
  if (const auto mend = smallestMend(geometry, assemble))
    return refuse(*found, *mend->field, geometry, mend->values);
  return fail(ErrorKind::InvalidInput, "linkage-numbers-disagree");
}

}  // namespace hingepin::linkage
