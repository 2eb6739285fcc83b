// SPDX-License-Identifier: Apache-2.0
#include "engine/linkage/linkage.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "engine/linkage/plausible.h"

namespace hingepin::linkage {
namespace {

using std::numbers::pi;

struct Vector {
  double x;
  double y;
};

Vector operator+(Vector a, Vector b) { return {a.x + b.x, a.y + b.y}; }
Vector operator-(Vector a, Vector b) { return {a.x - b.x, a.y - b.y}; }
Vector operator*(double s, Vector a) { return {s * a.x, s * a.y}; }
double dot(Vector a, Vector b) { return a.x * b.x + a.y * b.y; }
double length(Vector a) { return std::hypot(a.x, a.y); }
double direction(Vector a) { return std::atan2(a.y, a.x); }
Vector quarterTurn(Vector a) { return {-a.y, a.x}; }
Vector unit(double angle_rad) { return {std::cos(angle_rad), std::sin(angle_rad)}; }
Vector turned(Vector a, double angle_rad) {
  return std::cos(angle_rad) * a + std::sin(angle_rad) * quarterTurn(a);
}
Vector vector(const Pin& pin) { return {pin.along.inMetres(), pin.across.inMetres()}; }
std::array<double, 2> array(Vector a) { return {a.x, a.y}; }

double wrapped(double angle_rad) { return std::remainder(angle_rad, 2.0 * pi); }

/// The angle, in [0, pi], between the sides a and b of a triangle whose third side is c; none if it can't
/// close. Half-angle form: keeps its digits where the triangle is nearly flat.
std::optional<double> angleBetween(double a, double b, double c) {
  // The end of a range must close although it was rounded: a gap of 1e-13 of the reach counts as flat.
  const double rounding = 1e-13 * (a + b);
  const double beyond_fold = c - std::abs(a - b), before_reach = (a + b) - c;
  if (!(beyond_fold >= -rounding) || !(before_reach >= -rounding)) return std::nullopt;
  return 2.0 * std::atan2(std::sqrt(std::max(beyond_fold, 0.0) * (c + std::abs(a - b))),
                          std::sqrt(std::max(before_reach, 0.0) * ((a + b) + c)));
}

/// y(x) and its derivatives from G(x, y) = constant, given the partial derivatives of G.
struct Partials {
  double x, y, xx, xy, yy;
};

Derivatives implicit(double value, const Partials& g) {
  const double first = -g.x / g.y;
  return {value, first, -(g.xx + 2.0 * g.xy * first + g.yy * first * first) / g.y};
}

/// The linkage in the frame of the boom (A at the origin, x along A->B) at one boom angle.
class BoomFrame {
 public:
  BoomFrame(const ZBarGeometry& geometry, double boom_angle_rad)
      : hinge_pin_{geometry.boom_length.inMetres(), 0.0},
        tilt_frame_pin_(turned(vector(geometry.tilt_frame_pin), -boom_angle_rad)),
        pivot_(vector(geometry.bellcrank_pivot)),
        tilt_arm_(geometry.bellcrank_tilt_arm.inMetres()),
        link_arm_(geometry.bellcrank_link_arm.inMetres()),
        arms_angle_(geometry.bellcrank_angle.inRadians()),
        link_(geometry.link_length.inMetres()),
        pin_distance_(geometry.bucket_pin_distance.inMetres()) {}

  [[nodiscard]] Vector frameToPivot() const { return pivot_ - tilt_frame_pin_; }
  [[nodiscard]] Vector tiltPin(double bellcrank) const { return pivot_ + tilt_arm_ * unit(bellcrank); }
  [[nodiscard]] Vector linkPin(double bellcrank) const {
    return pivot_ + link_arm_ * unit(bellcrank + arms_angle_);
  }
  [[nodiscard]] Vector bucketLinkPin(double bucket_arm) const {
    return hinge_pin_ + pin_distance_ * unit(bucket_arm);
  }
  [[nodiscard]] double tiltLength(double bellcrank) const {
    return length(tiltPin(bellcrank) - tilt_frame_pin_);
  }

  /// Tilt-cylinder lengths that close the tilt loop.
  [[nodiscard]] Range tiltLoop() const {
    const double base = length(frameToPivot());
    return {std::abs(base - tilt_arm_), base + tilt_arm_};
  }

  /// The angle of the tilt arm; its end to the left of frame pin -> pivot. Falls as the cylinder lengthens.
  [[nodiscard]] std::optional<double> bellcrank(double tilt_length) const {
    const Vector base = frameToPivot();
    const auto inner = angleBetween(length(base), tilt_arm_, tilt_length);
    if (!inner) return std::nullopt;
    return direction(base) + pi - *inner;
  }

  /// The angle of hinge pin -> bucket's link pin, that pin to the left of link arm's end -> hinge pin.
  [[nodiscard]] std::optional<double> bucketArm(double bellcrank) const {
    const Vector base = hinge_pin_ - linkPin(bellcrank);
    const auto inner = angleBetween(length(base), pin_distance_, link_);
    if (!inner) return std::nullopt;
    return direction(base) + pi - *inner;
  }

  /// The bellcrank angles, within half a turn of `near`, for which the bucket loop closes: one interval where
  /// it closes right across pivot -> hinge pin, else one with the link arm's end below that line and one
  /// above it.
  [[nodiscard]] std::vector<Range> bucketLoop(double near) const {
    const Vector base = hinge_pin_ - pivot_;
    const double spread = length(base);
    const double reach = link_ + pin_distance_;
    const double fold = std::abs(link_ - pin_distance_);
    if (std::abs(spread - link_arm_) > reach || spread + link_arm_ < fold) return {};
    const double widest = angleBetween(spread, link_arm_, reach).value_or(pi);
    const double narrowest = angleBetween(spread, link_arm_, fold).value_or(0.0);
    const double centre = near + wrapped(direction(base) - arms_angle_ - near);
    if (narrowest == 0.0) return {{centre - widest, centre + widest}};
    return {{centre - widest, centre - narrowest}, {centre + narrowest, centre + widest}};
  }

  /// Tilt-cylinder lengths within `limits` for which both loops close; empty (low > high) if none.
  [[nodiscard]] Range bothLoops(Range limits) const {
    const Range loop = tiltLoop();
    const Range lengths{std::max(limits.low, loop.low), std::min(limits.high, loop.high)};
    if (lengths.low > lengths.high) return lengths;
    // The bellcrank turns down as the cylinder lengthens, so the ends change places.
    const double base = direction(frameToPivot());
    const Range angles{bellcrank(lengths.high).value_or(base), bellcrank(lengths.low).value_or(base + pi)};
    // A Z-bar's link arm hangs below pivot -> hinge pin: that interval comes first.
    for (const Range closes : bucketLoop(0.5 * (angles.low + angles.high))) {
      const Range both{std::max(angles.low, closes.low), std::min(angles.high, closes.high)};
      if (both.low > both.high) continue;
      // Where the cylinder's own end bounds the range, give it back as it came.
      return {both.high == angles.high ? lengths.low : tiltLength(both.high),
              both.low == angles.low ? lengths.high : tiltLength(both.low)};
    }
    return {1.0, 0.0};
  }

  [[nodiscard]] Derivatives bellcrankByBoom(double bellcrank) const {
    const Vector u = unit(bellcrank), n = quarterTurn(u);
    // In this frame the frame pin turns backwards as the boom rises.
    const Vector w = frameToPivot(), dw = quarterTurn(tilt_frame_pin_), ddw = tilt_frame_pin_;
    return implicit(bellcrank, {dot(w, dw) + tilt_arm_ * dot(dw, u), tilt_arm_ * dot(w, n),
                                dot(dw, dw) + dot(w, ddw) + tilt_arm_ * dot(ddw, u), tilt_arm_ * dot(dw, n),
                                -tilt_arm_ * dot(w, u)});
  }

  [[nodiscard]] Derivatives bellcrankByTilt(double bellcrank, double tilt_length) const {
    const Vector u = unit(bellcrank), w = frameToPivot();
    return implicit(bellcrank,
                    {-tilt_length, tilt_arm_ * dot(w, quarterTurn(u)), -1.0, 0.0, -tilt_arm_ * dot(w, u)});
  }

  [[nodiscard]] Derivatives bucketArmByBellcrank(double bellcrank, double bucket_arm) const {
    const Vector arm = link_arm_ * unit(bellcrank + arms_angle_);
    const Vector bucket = pin_distance_ * unit(bucket_arm);
    const Vector link = bucketLinkPin(bucket_arm) - linkPin(bellcrank);
    const Vector by_arm = -1.0 * quarterTurn(arm), by_bucket = quarterTurn(bucket);
    return implicit(bucket_arm,
                    {dot(link, by_arm), dot(link, by_bucket), dot(by_arm, by_arm) + dot(link, arm),
                     dot(by_arm, by_bucket), dot(by_bucket, by_bucket) - dot(link, bucket)});
  }

  /// The two bellcrank angles at which the bucket's link pin stands at this angle, whichever way the loop
  /// closes.
  [[nodiscard]] std::vector<double> bellcranksOfBucketArm(double bucket_arm) const {
    const Vector base = bucketLinkPin(bucket_arm) - pivot_;
    const auto inner = angleBetween(length(base), link_arm_, link_);
    if (!inner) return {};
    return {direction(base) - *inner - arms_angle_, direction(base) + *inner - arms_angle_};
  }

  /// The bellcrank angles at which link arm and link are in line, so that the bucket turns back.
  [[nodiscard]] std::vector<double> deadCentres() const {
    const Vector base = pivot_ - hinge_pin_;
    std::vector<double> angles;
    for (const double reach : {link_arm_ + link_, link_arm_ - link_}) {
      const auto inner = angleBetween(length(base), pin_distance_, std::abs(reach));
      if (!inner) continue;
      for (const double side : {-1.0, 1.0}) {
        const Vector pin = bucketLinkPin(direction(base) + side * *inner);
        angles.push_back(direction((reach < 0.0 ? -1.0 : 1.0) * (pin - pivot_)) - arms_angle_);
      }
    }
    return angles;
  }

 private:
  Vector hinge_pin_;
  Vector tilt_frame_pin_;
  Vector pivot_;
  double tilt_arm_;
  double link_arm_;
  double arms_angle_;
  double link_;
  double pin_distance_;
};

Derivatives chain(const Derivatives& outer, const Derivatives& inner) {
  return {outer.value, outer.first * inner.first,
          outer.second * inner.first * inner.first + outer.first * inner.second};
}

Amount metres(double value) { return {value, "m", 3}; }
Amount degrees(double angle_rad) { return {Angle::fromRadians(angle_rad).inDegrees(), "deg", 1}; }

std::unexpected<Error> cannotClose(std::string code, double boom_angle_rad, double tilt_length_m,
                                   Range lengths) {
  if (lengths.low > lengths.high)
    return fail(ErrorKind::InvalidInput, "linkage-never-closes", {{"boom_angle", degrees(boom_angle_rad)}});
  return fail(ErrorKind::InvalidInput, std::move(code),
              {{"boom_angle", degrees(boom_angle_rad)},
               {"tilt_length", metres(tilt_length_m)},
               {"low", metres(lengths.low)},
               {"high", metres(lengths.high)}});
}

constexpr Range kAnyLength{0.0, 1e9};

/// The angle at A between the lift cylinder's two pins is the boom angle plus this; the cylinder lengthens
/// while that angle grows from 0 to pi.
double liftOffset(const ZBarGeometry& geometry) {
  // The middle of the lengthening half turn is taken nearest to the level boom.
  return 0.5 * pi + wrapped(direction(vector(geometry.lift_boom_pin)) -
                            direction(vector(geometry.lift_frame_pin)) - 0.5 * pi);
}

}  // namespace

Expected<Linkage> Linkage::make(const ZBarGeometry& geometry) {
  const auto plausible =
      checkPlausible(geometry, [](const ZBarGeometry& assembled) { return Linkage(assembled); });
  if (!plausible) return std::unexpected(plausible.error());
  return Linkage(geometry);
}

Derivatives Linkage::liftCylinder(double boom_angle_rad) const {
  const Vector boom_pin = turned(vector(geometry_.lift_boom_pin), boom_angle_rad);
  const Vector frame_pin = vector(geometry_.lift_frame_pin);
  const double value = length(boom_pin - frame_pin);
  const double first = -dot(frame_pin, quarterTurn(boom_pin)) / value;
  return {value, first, (dot(frame_pin, boom_pin) - first * first) / value};
}

Range Linkage::liftRange() const {
  const double low = -liftOffset(geometry_);
  return {std::max(low, -pi), std::min(low + pi, pi)};
}

Expected<double> Linkage::boomAngle(double lift_length_m) const {
  const auto angle = angleBetween(length(vector(geometry_.lift_frame_pin)),
                                  length(vector(geometry_.lift_boom_pin)), lift_length_m);
  const Range boom = liftRange();
  const double boom_angle_rad = angle ? *angle - liftOffset(geometry_) : 0.0;
  if (!angle || boom_angle_rad < boom.low || boom_angle_rad > boom.high)
    return fail(ErrorKind::InvalidInput, "lift-length-out-of-range",
                {{"length", metres(lift_length_m)},
                 {"low", metres(liftCylinder(boom.low).value)},
                 {"high", metres(liftCylinder(boom.high).value)}});
  return boom_angle_rad;
}

Expected<TiltState> Linkage::tilt(double boom_angle_rad, double tilt_length_m) const {
  const BoomFrame frame(geometry_, boom_angle_rad);
  const auto bellcrank = frame.bellcrank(tilt_length_m);
  if (!bellcrank)
    return cannotClose("tilt-loop-cannot-close", boom_angle_rad, tilt_length_m, frame.bothLoops(kAnyLength));
  const auto bucket_arm = frame.bucketArm(*bellcrank);
  if (!bucket_arm)
    return cannotClose("bucket-loop-cannot-close", boom_angle_rad, tilt_length_m,
                       frame.bothLoops(kAnyLength));

  TiltState state{.bellcrank_by_boom = frame.bellcrankByBoom(*bellcrank),
                  .bellcrank_by_tilt = frame.bellcrankByTilt(*bellcrank, tilt_length_m),
                  .bucket_by_boom = {},
                  .bucket_by_tilt = {}};
  const Derivatives arm = frame.bucketArmByBellcrank(*bellcrank, *bucket_arm);
  state.bucket_by_boom = chain(arm, state.bellcrank_by_boom);
  state.bucket_by_boom.first += 1.0;  // the bucket is carried by the boom
  state.bucket_by_tilt = chain(arm, state.bellcrank_by_tilt);
  const double bucket_angle = wrapped(boom_angle_rad + *bucket_arm - geometry_.bucket_pin_angle.inRadians());
  state.bucket_by_boom.value = bucket_angle;
  state.bucket_by_tilt.value = bucket_angle;
  return state;
}

double Linkage::tiltLengthOfBellcrank(double boom_angle_rad, double bellcrank_angle_rad) const {
  return BoomFrame(geometry_, boom_angle_rad).tiltLength(bellcrank_angle_rad);
}

Expected<double> Linkage::bucketOfBellcrank(double boom_angle_rad, double bellcrank_angle_rad) const {
  const BoomFrame frame(geometry_, boom_angle_rad);
  if (const auto bucket_arm = frame.bucketArm(bellcrank_angle_rad))
    return wrapped(boom_angle_rad + *bucket_arm - geometry_.bucket_pin_angle.inRadians());
  const auto closes = frame.bucketLoop(bellcrank_angle_rad);
  if (closes.empty())
    return fail(ErrorKind::InvalidInput, "linkage-never-closes", {{"boom_angle", degrees(boom_angle_rad)}});
  const double centre = 0.5 * (closes.front().low + closes.back().high);
  const Range near = bellcrank_angle_rad < centre ? closes.front() : closes.back();
  return fail(ErrorKind::InvalidInput, "bellcrank-angle-out-of-range",
              {{"bellcrank_angle", degrees(bellcrank_angle_rad)},
               {"low", degrees(near.low)},
               {"high", degrees(near.high)}});
}

Expected<double> Linkage::tiltLengthOfBucket(double boom_angle_rad, double bucket_angle_rad) const {
  const BoomFrame frame(geometry_, boom_angle_rad);
  const Range lengths = tiltRange(boom_angle_rad);
  if (lengths.low > lengths.high)
    return fail(ErrorKind::InvalidInput, "linkage-never-closes", {{"boom_angle", degrees(boom_angle_rad)}});
  const double pin_angle = geometry_.bucket_pin_angle.inRadians();

  // Rounding may put a length just outside the range that it came from.
  constexpr double kRounding_m = 1e-12;
  const auto within = [&](double tilt_length) {
    return tilt_length >= lengths.low - kRounding_m && tilt_length <= lengths.high + kRounding_m;
  };
  std::optional<double> found;
  for (const double bellcrank : frame.bellcranksOfBucketArm(bucket_angle_rad - boom_angle_rad + pin_angle)) {
    const double tilt_length = std::clamp(frame.tiltLength(bellcrank), lengths.low, lengths.high);
    if (!within(frame.tiltLength(bellcrank))) continue;
    const auto state = tilt(boom_angle_rad, tilt_length);
    // Both loops must be on their branch: the state at that length is then this bucket angle. Rounding in a
    // flat triangle costs half the digits.
    if (!state || std::abs(wrapped(state->bucket_by_tilt.value - bucket_angle_rad)) > 1e-7) continue;
    // Past a dead centre the bucket turns back; the way it goes first is the one where it racks as the
    // cylinder extends.
    if (!found || state->bucket_by_tilt.first > 0.0) found = tilt_length;
  }
  if (found) return *found;

  Range reached{pi, -pi};
  const auto reach = [&](double tilt_length) {
    if (const auto state = tilt(boom_angle_rad, std::clamp(tilt_length, lengths.low, lengths.high))) {
      reached.low = std::min(reached.low, state->bucket_by_tilt.value);
      reached.high = std::max(reached.high, state->bucket_by_tilt.value);
    }
  };
  reach(lengths.low);
  reach(lengths.high);
  for (const double bellcrank : frame.deadCentres())
    if (within(frame.tiltLength(bellcrank))) reach(frame.tiltLength(bellcrank));
  return fail(ErrorKind::InvalidInput, "bucket-angle-out-of-range",
              {{"bucket_angle", degrees(bucket_angle_rad)},
               {"boom_angle", degrees(boom_angle_rad)},
               {"low", degrees(reached.low)},
               {"high", degrees(reached.high)}});
}

Range Linkage::tiltRange(double boom_angle_rad) const {
  return BoomFrame(geometry_, boom_angle_rad)
      .bothLoops({geometry_.tilt_cylinder_retracted.inMetres(), geometry_.tilt_cylinder_extended.inMetres()});
}

Expected<PointMotion> Linkage::bucketPoint(double boom_angle_rad, double tilt_length_m,
                                           const Pin& point) const {
  const auto state = tilt(boom_angle_rad, tilt_length_m);
  if (!state) return std::unexpected(state.error());
  const Derivatives& turn = state->bucket_by_boom;
  const Vector hinge = geometry_.boom_length.inMetres() * unit(boom_angle_rad);
  const Vector arm = turned(vector(point), turn.value);
  const Vector first = quarterTurn(hinge) + turn.first * quarterTurn(arm);
  const Vector second = -1.0 * hinge + turn.second * quarterTurn(arm) - turn.first * turn.first * arm;
  return PointMotion{{hinge.x + arm.x, first.x, second.x}, {hinge.y + arm.y, first.y, second.y}};
}

Expected<PinPositions> Linkage::pins(double boom_angle_rad, double tilt_length_m) const {
  const auto state = tilt(boom_angle_rad, tilt_length_m);
  if (!state) return std::unexpected(state.error());
  const BoomFrame frame(geometry_, boom_angle_rad);
  const double bellcrank = state->bellcrank_by_boom.value;
  const double bucket_arm =
      state->bucket_by_boom.value + geometry_.bucket_pin_angle.inRadians() - boom_angle_rad;
  const auto ground = [&](Vector on_boom) { return array(turned(on_boom, boom_angle_rad)); };
  return PinPositions{.boom_pivot = {0.0, 0.0},
                      .hinge_pin = ground({geometry_.boom_length.inMetres(), 0.0}),
                      .lift_frame_pin = array(vector(geometry_.lift_frame_pin)),
                      .lift_boom_pin = ground(vector(geometry_.lift_boom_pin)),
                      .tilt_frame_pin = array(vector(geometry_.tilt_frame_pin)),
                      .bellcrank_pivot = ground(vector(geometry_.bellcrank_pivot)),
                      .bellcrank_tilt_pin = ground(frame.tiltPin(bellcrank)),
                      .bellcrank_link_pin = ground(frame.linkPin(bellcrank)),
                      .bucket_link_pin = ground(frame.bucketLinkPin(bucket_arm))};
}

}  // namespace hingepin::linkage
