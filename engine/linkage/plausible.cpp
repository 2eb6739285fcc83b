// SPDX-License-Identifier: Apache-2.0
#include "engine/linkage/plausible.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <string>
#include <type_traits>

#include "engine/units/degree.h"

namespace hingepin::linkage {
namespace {

constexpr double kTurn = 2.0 * std::numbers::pi;

/// One number of the linkage file and where it may lie: metres, shares of the boom's length, or radians.
struct Field {
  const char* name;
  double (*get)(const ZBarGeometry&);
  void (*set)(ZBarGeometry&, double);
  double low;
  double high;
  enum { Metres, ShareOfBoom, Radians } kind;
};

template <auto Member>
constexpr Field number(const char* name, double low, double high, decltype(Field::kind) kind) {
  return {name,
          [](const ZBarGeometry& g) { return (g.*Member).inSi(); },
          [](ZBarGeometry& g, double value) { g.*Member = std::decay_t<decltype(g.*Member)>::fromSi(value); },
          low,
          high,
          kind};
}

template <auto Member, auto Coordinate>
constexpr Field coordinate(const char* name, double low, double high) {
  return {name,
          [](const ZBarGeometry& g) { return (g.*Member.*Coordinate).inSi(); },
          [](ZBarGeometry& g, double value) { g.*Member.*Coordinate = Length::fromMetres(value); },
          low,
          high,
          Field::ShareOfBoom};
}

using G = ZBarGeometry;
constexpr Field kBoomLength = number<&G::boom_length>("boom_length", 1.0, 6.0, Field::Metres);
constexpr Field kTiltExtended =
    number<&G::tilt_cylinder_extended>("tilt_cylinder_extended", 0.20, 1.20, Field::ShareOfBoom);
constexpr Field kFields[] = {
    number<&G::boom_pivot_height>("boom_pivot_height", 0.40, 1.30, Field::ShareOfBoom),
    coordinate<&G::lift_frame_pin, &Pin::along>("lift_frame_pin/0", -0.35, 0.35),
    coordinate<&G::lift_frame_pin, &Pin::across>("lift_frame_pin/1", -0.45, -0.04),
    coordinate<&G::lift_boom_pin, &Pin::along>("lift_boom_pin/0", 0.25, 0.90),
    coordinate<&G::lift_boom_pin, &Pin::across>("lift_boom_pin/1", -0.30, 0.30),
    coordinate<&G::tilt_frame_pin, &Pin::along>("tilt_frame_pin/0", -0.30, 0.45),
    coordinate<&G::tilt_frame_pin, &Pin::across>("tilt_frame_pin/1", -0.35, 0.45),
    coordinate<&G::bellcrank_pivot, &Pin::along>("bellcrank_pivot/0", 0.35, 0.90),
    coordinate<&G::bellcrank_pivot, &Pin::across>("bellcrank_pivot/1", 0.02, 0.45),
    number<&G::bellcrank_tilt_arm>("bellcrank_tilt_arm", 0.08, 0.55, Field::ShareOfBoom),
    number<&G::bellcrank_link_arm>("bellcrank_link_arm", 0.08, 0.55, Field::ShareOfBoom),
    number<&G::bellcrank_angle>("bellcrank_angle", 110 * kDegree, 250 * kDegree, Field::Radians),
    number<&G::link_length>("link_length", 0.08, 0.50, Field::ShareOfBoom),
    number<&G::bucket_pin_distance>("bucket_pin_distance", 0.04, 0.30, Field::ShareOfBoom),
    number<&G::bucket_pin_angle>("bucket_pin_angle", 30 * kDegree, 180 * kDegree, Field::Radians),
    number<&G::tilt_cylinder_retracted>("tilt_cylinder_retracted", 0.15, 1.00, Field::ShareOfBoom),
    kTiltExtended,
};

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
