// SPDX-License-Identifier: Apache-2.0
#include "engine/linkage/linkage.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>

#include "tests/engine/linkage/machines.h"

namespace hingepin::linkage {
namespace {

using Coordinates = std::array<double, 2>;

double distance(const Coordinates& a, const Coordinates& b) { return std::hypot(a[0] - b[0], a[1] - b[1]); }
/// Positive where `point` is to the left of the line from `from` to `to`.
double leftness(const Coordinates& from, const Coordinates& to, const Coordinates& point) {
  return (to[0] - from[0]) * (point[1] - from[1]) - (to[1] - from[1]) * (point[0] - from[0]);
}

double amount(const Error& error, const std::string& name) {
  for (const auto& [key, value] : error.message.values)
    if (key == name) return std::get<Amount>(value).value;
  ADD_FAILURE() << error.message.code << " has no " << name;
  return std::nan("");
}

/// First derivative by differences of four neighbours: error h^4/30 of the fifth derivative (here below 1e4
/// in SI, so 1e-9) and 1e-16/h of rounding (1e-12).
constexpr double kStep = 3e-4;
constexpr double kDifferenceTolerance = 1e-8;
double difference(const std::function<double(double)>& f, double x) {
  return (f(x - 2 * kStep) - 8 * f(x - kStep) + 8 * f(x + kStep) - f(x + 2 * kStep)) / (12 * kStep);
}

class LinkageTest : public testing::TestWithParam<Machine> {
 protected:
  const Machine& machine_ = GetParam();
  const Linkage linkage_ = Linkage::make(machine_.geometry).value();

  /// Every pose of a grid over the travel of boom and tilt cylinder; shares from 0 to 1 of what can close.
  void overPoses(double least_share, const std::function<void(double boom, double tilt)>& check) const {
    for (int i = 0; i <= 40; ++i) {
      const double boom = std::lerp(machine_.boom.low, machine_.boom.high, i / 40.0);
      const Range range = linkage_.tiltRange(boom);
      ASSERT_LE(range.low, range.high);
      for (int j = 0; j <= 16; ++j) {
        const double share = std::lerp(least_share, 1.0 - least_share, j / 16.0);
        const double tilt =
            j == 16 && least_share == 0.0 ? range.high : std::lerp(range.low, range.high, share);
        SCOPED_TRACE(testing::Message() << "boom " << boom / kDegree << " deg, tilt " << tilt << " m");
        check(boom, tilt);
      }
    }
  }
};

TEST_P(LinkageTest, DistancesBetweenPinsAreTheGivenLengths) {
  const ZBarGeometry& g = machine_.geometry;
  overPoses(0.0, [&](double boom, double tilt) {
    const auto pins = linkage_.pins(boom, tilt);
    ASSERT_TRUE(pins) << pins.error().message.code;
    constexpr double kGap_m = 1e-12;
    EXPECT_NEAR(distance(pins->boom_pivot, pins->hinge_pin), g.boom_length.inMetres(), kGap_m);
    EXPECT_NEAR(distance(pins->lift_frame_pin, pins->lift_boom_pin), linkage_.liftCylinder(boom).value,
                kGap_m);
    EXPECT_NEAR(distance(pins->tilt_frame_pin, pins->bellcrank_tilt_pin), tilt, kGap_m);
    EXPECT_NEAR(distance(pins->bellcrank_pivot, pins->bellcrank_tilt_pin), g.bellcrank_tilt_arm.inMetres(),
                kGap_m);
    EXPECT_NEAR(distance(pins->bellcrank_pivot, pins->bellcrank_link_pin), g.bellcrank_link_arm.inMetres(),
                kGap_m);
    EXPECT_NEAR(distance(pins->bellcrank_link_pin, pins->bucket_link_pin), g.link_length.inMetres(), kGap_m);
    EXPECT_NEAR(distance(pins->hinge_pin, pins->bucket_link_pin), g.bucket_pin_distance.inMetres(), kGap_m);
    // The angle between the bellcrank's arms, by the law of cosines.
    const double a = g.bellcrank_tilt_arm.inMetres(), b = g.bellcrank_link_arm.inMetres();
    EXPECT_NEAR(distance(pins->bellcrank_tilt_pin, pins->bellcrank_link_pin),
                std::sqrt(a * a + b * b - 2 * a * b * std::cos(g.bellcrank_angle.inRadians())), kGap_m);
  });
}

TEST_P(LinkageTest, BothLoopsCloseOnTheSideThatTheFormatNames) {
  overPoses(0.01, [&](double boom, double tilt) {
    const auto pins = linkage_.pins(boom, tilt).value();
    EXPECT_GT(leftness(pins.tilt_frame_pin, pins.bellcrank_pivot, pins.bellcrank_tilt_pin), 0.0);
    EXPECT_GT(leftness(pins.bellcrank_link_pin, pins.hinge_pin, pins.bucket_link_pin), 0.0);
  });
}

TEST_P(LinkageTest, AnglesAreThoseBetweenThePins) {
  overPoses(0.01, [&](double boom, double tilt) {
    const auto pins = linkage_.pins(boom, tilt).value();
    const auto state = linkage_.tilt(boom, tilt).value();
    const auto heading = [](const Coordinates& a, const Coordinates& b) {
      return std::atan2(b[1] - a[1], b[0] - a[0]);
    };
    const auto apart = [](double a, double b) { return std::remainder(a - b, 360 * kDegree); };
    EXPECT_NEAR(
        apart(heading(pins.bellcrank_pivot, pins.bellcrank_tilt_pin), boom + state.bellcrank_by_boom.value),
        0.0, 1e-12);
    EXPECT_NEAR(apart(heading(pins.hinge_pin, pins.bucket_link_pin),
                      state.bucket_by_boom.value + machine_.geometry.bucket_pin_angle.inRadians()),
                0.0, 1e-12);
    EXPECT_EQ(state.bellcrank_by_boom.value, state.bellcrank_by_tilt.value);
    EXPECT_EQ(state.bucket_by_boom.value, state.bucket_by_tilt.value);
  });
}

TEST_P(LinkageTest, BoomAngleComesBackFromLiftLength) {
  const Range lift = linkage_.liftRange();
  for (int i = 1; i < 400; ++i) {
    const double boom = std::lerp(lift.low, lift.high, i / 400.0);
    const double arm = linkage_.liftCylinder(boom).first;
    ASSERT_GT(arm, 0.0);
    // A length is good to 1e-15 m or so; over the moment arm that is the angle.
    EXPECT_NEAR(linkage_.boomAngle(linkage_.liftCylinder(boom).value).value(), boom, 1e-15 / arm + 1e-14);
  }
}

TEST_P(LinkageTest, LiftRangeIsWhereTheCylinderLengthens) {
  const Range lift = linkage_.liftRange();
  EXPECT_GT(lift.low, -180 * kDegree);
  EXPECT_LE(lift.high, 180 * kDegree);
  EXPECT_NEAR(linkage_.liftCylinder(lift.low).first, 0.0, 1e-12);
  EXPECT_NEAR(linkage_.liftCylinder(lift.high).first, 0.0, 1e-12);
  EXPECT_LT(linkage_.liftCylinder(lift.low - 0.01).first, 0.0);
  EXPECT_LT(linkage_.liftCylinder(lift.high + 0.01).first, 0.0);
}

TEST_P(LinkageTest, LiftLengthOutOfReachNamesTheRange) {
  const Range lift = linkage_.liftRange();
  for (const double length : {0.0, -1.0, linkage_.liftCylinder(lift.low).value - 1e-6,
                              linkage_.liftCylinder(lift.high).value + 1e-6, 100.0, std::nan("")}) {
    const auto boom = linkage_.boomAngle(length);
    ASSERT_FALSE(boom) << length;
    EXPECT_EQ(boom.error().message.code, "lift-length-out-of-range");
    EXPECT_TRUE(linkage_.boomAngle(amount(boom.error(), "low")));
    EXPECT_TRUE(linkage_.boomAngle(amount(boom.error(), "high")));
  }
}

TEST_P(LinkageTest, TiltLengthAndBucketAngleComeBackFromTheBellcrank) {
  overPoses(0.0, [&](double boom, double tilt) {
    const auto state = linkage_.tilt(boom, tilt).value();
    const double bellcrank = state.bellcrank_by_boom.value;
    EXPECT_NEAR(linkage_.tiltLengthOfBellcrank(boom, bellcrank), tilt, 1e-14);
    const auto bucket = linkage_.bucketOfBellcrank(boom, bellcrank);
    ASSERT_TRUE(bucket);
    EXPECT_NEAR(*bucket, state.bucket_by_boom.value, 1e-14);
  });
}

TEST_P(LinkageTest, TiltLengthComesBackFromBucketAngle) {
  overPoses(0.0, [&](double boom, double tilt) {
    const auto state = linkage_.tilt(boom, tilt).value();
    const auto back = linkage_.tiltLengthOfBucket(boom, state.bucket_by_tilt.value);
    ASSERT_TRUE(back) << back.error().message.code;
    const Range range = linkage_.tiltRange(boom);
    EXPECT_GE(*back, range.low);
    EXPECT_LE(*back, range.high);
    const auto again = linkage_.tilt(boom, *back).value();
    // Where the bucket turns back past a dead centre, two lengths give one angle: the racking one is
    // returned. Beside the dead centre itself half the digits are lost.
    EXPECT_NEAR(again.bucket_by_tilt.value, state.bucket_by_tilt.value, 1e-7);
    if (std::abs(state.bucket_by_tilt.first) < 0.1) return;
    EXPECT_NEAR(again.bucket_by_tilt.value, state.bucket_by_tilt.value, 1e-11);
    if (state.bucket_by_tilt.first > 0.0) {
      EXPECT_NEAR(*back, tilt, 1e-12);
    } else {
      EXPECT_GT(*back, tilt);
    }
  });
}

TEST_P(LinkageTest, BucketAngleOutOfReachNamesTheRange) {
  for (const double boom : {machine_.boom.low, 0.0, machine_.boom.high}) {
    for (const double bucket : {-170 * kDegree, 120 * kDegree}) {
      const auto tilt = linkage_.tiltLengthOfBucket(boom, bucket);
      ASSERT_FALSE(tilt);
      ASSERT_EQ(tilt.error().message.code, "bucket-angle-out-of-range");
      const double low = amount(tilt.error(), "low") * kDegree, high = amount(tilt.error(), "high") * kDegree;
      // The range is the true one: the lowest and highest of a fine sweep, and nothing beyond.
      const Range lengths = linkage_.tiltRange(boom);
      double lowest = 4.0, highest = -4.0;
      for (int i = 0; i <= 4000; ++i) {
        const double angle = linkage_.tilt(boom, std::lerp(lengths.low, lengths.high, i / 4000.0))
                                 .value()
                                 .bucket_by_tilt.value;
        lowest = std::min(lowest, angle);
        highest = std::max(highest, angle);
      }
      EXPECT_NEAR(low, lowest, 1e-5);
      EXPECT_NEAR(high, highest, 1e-5);
      EXPECT_TRUE(linkage_.tiltLengthOfBucket(boom, low + 1e-6));
      EXPECT_TRUE(linkage_.tiltLengthOfBucket(boom, high - 1e-6));
      EXPECT_FALSE(linkage_.tiltLengthOfBucket(boom, low - 1e-6));
      EXPECT_FALSE(linkage_.tiltLengthOfBucket(boom, high + 1e-6));
    }
  }
}

TEST_P(LinkageTest, LengthsThatCannotCloseNameThoseThatCan) {
  for (const double boom : {machine_.boom.low, 0.0, machine_.boom.high}) {
    for (const double tilt : {0.0, 0.3, 5.0, std::nan("")}) {
      const auto state = linkage_.tilt(boom, tilt);
      ASSERT_FALSE(state);
      EXPECT_THAT(state.error().message.code,
                  testing::AnyOf("tilt-loop-cannot-close", "bucket-loop-cannot-close"));
      const double low = amount(state.error(), "low"), high = amount(state.error(), "high");
      EXPECT_TRUE(linkage_.tilt(boom, low));
      EXPECT_TRUE(linkage_.tilt(boom, high));
      EXPECT_TRUE(linkage_.tilt(boom, 0.5 * (low + high)));
      EXPECT_FALSE(linkage_.tilt(boom, low - 1e-6));
      EXPECT_FALSE(linkage_.tilt(boom, high + 1e-6));
      EXPECT_FALSE(linkage_.bucketPoint(boom, tilt, machine_.heel));
      EXPECT_FALSE(linkage_.pins(boom, tilt));
    }
  }
}

TEST_P(LinkageTest, BellcrankAngleThatCannotCloseNamesThoseThatCan) {
  const auto bucket = linkage_.bucketOfBellcrank(0.0, 20 * kDegree);
  ASSERT_FALSE(bucket);
  EXPECT_EQ(bucket.error().message.code, "bellcrank-angle-out-of-range");
  const double low = amount(bucket.error(), "low") * kDegree, high = amount(bucket.error(), "high") * kDegree;
  EXPECT_TRUE(linkage_.bucketOfBellcrank(0.0, low + 1e-9));
  EXPECT_TRUE(linkage_.bucketOfBellcrank(0.0, high - 1e-9));
  EXPECT_FALSE(linkage_.bucketOfBellcrank(0.0, low - 1e-6));
  EXPECT_FALSE(linkage_.bucketOfBellcrank(0.0, high + 1e-6));
}

TEST_P(LinkageTest, TiltRangeLiesWithinTheCylindersEnds) {
  for (int i = 0; i <= 40; ++i) {
    const double boom = std::lerp(-70 * kDegree, 85 * kDegree, i / 40.0);
    const Range range = linkage_.tiltRange(boom);
    if (range.low > range.high) continue;
    EXPECT_GE(range.low, machine_.geometry.tilt_cylinder_retracted.inMetres());
    EXPECT_LE(range.high, machine_.geometry.tilt_cylinder_extended.inMetres());
    EXPECT_TRUE(linkage_.tilt(boom, range.low));
    EXPECT_TRUE(linkage_.tilt(boom, range.high));
  }
}

/// Compares value, first and second of a function with differences of `sample`.
void expectDerivatives(const std::function<Derivatives(double)>& sample, double x) {
  const Derivatives exact = sample(x);
  const double first = difference([&](double at) { return sample(at).value; }, x);
  const double second = difference([&](double at) { return sample(at).first; }, x);
  EXPECT_NEAR(exact.first, first, kDifferenceTolerance * std::max(1.0, std::abs(exact.first)));
  EXPECT_NEAR(exact.second, second, kDifferenceTolerance * std::max(1.0, std::abs(exact.second)));
}

TEST_P(LinkageTest, DerivativesOfTheLiftCylinderAgreeWithDifferences) {
  for (int i = 0; i <= 100; ++i)
    expectDerivatives([&](double boom) { return linkage_.liftCylinder(boom); },
                      std::lerp(machine_.boom.low, machine_.boom.high, i / 100.0));
}

TEST_P(LinkageTest, DerivativesOfTheTiltSideAgreeWithDifferences) {
  overPoses(0.15, [&](double boom, double tilt) {
    const auto at = [&](double b, double t) { return linkage_.tilt(b, t).value(); };
    expectDerivatives([&](double b) { return at(b, tilt).bellcrank_by_boom; }, boom);
    expectDerivatives([&](double b) { return at(b, tilt).bucket_by_boom; }, boom);
    expectDerivatives([&](double t) { return at(boom, t).bellcrank_by_tilt; }, tilt);
    expectDerivatives([&](double t) { return at(boom, t).bucket_by_tilt; }, tilt);
  });
}

TEST_P(LinkageTest, DerivativesOfABucketPointAgreeWithDifferences) {
  overPoses(0.15, [&](double boom, double tilt) {
    for (const Pin& point : {machine_.heel, machine_.cutting_edge, pinAt(0.6, 0.45)}) {
      const auto at = [&](double b) { return linkage_.bucketPoint(b, tilt, point).value(); };
      expectDerivatives([&](double b) { return at(b).x; }, boom);
      expectDerivatives([&](double b) { return at(b).y; }, boom);
    }
  });
}

TEST_P(LinkageTest, BucketAndBellcrankMoveWithoutJumps) {
  for (const double share : {0.05, 0.5, 0.95}) {
    for (int i = 0; i < 2000; ++i) {
      const double boom = std::lerp(machine_.boom.low, machine_.boom.high, i / 2000.0);
      const double next = std::lerp(machine_.boom.low, machine_.boom.high, (i + 1) / 2000.0);
      const Range range = linkage_.tiltRange(boom);
      const double tilt = std::lerp(range.low, range.high, share);
      const auto here = linkage_.tilt(boom, tilt).value();
      const auto there = linkage_.tilt(next, tilt).value();
      const auto step = [&](const Derivatives& a, const Derivatives& b) {
        return std::abs(b.value - a.value - 0.5 * (a.first + b.first) * (next - boom));
      };
      // The trapezium's error on a step of 7e-4 rad: far below any jump between branches.
      EXPECT_LT(step(here.bellcrank_by_boom, there.bellcrank_by_boom), 1e-6);
      EXPECT_LT(step(here.bucket_by_boom, there.bucket_by_boom), 1e-6);
    }
  }
}

TEST_P(LinkageTest, ALargerMachineOfTheSameShapeHasTheSameAngles) {
  for (const double scale : {0.6, 1.5}) {
    ZBarGeometry g = machine_.geometry;
    for (Length* length :
         {&g.boom_length, &g.boom_pivot_height, &g.bellcrank_tilt_arm, &g.bellcrank_link_arm, &g.link_length,
          &g.bucket_pin_distance, &g.tilt_cylinder_retracted, &g.tilt_cylinder_extended})
      *length = scale * *length;
    for (Pin* pin : {&g.lift_frame_pin, &g.lift_boom_pin, &g.tilt_frame_pin, &g.bellcrank_pivot})
      *pin = {scale * pin->along, scale * pin->across};
    const auto scaled = Linkage::make(g);
    ASSERT_TRUE(scaled);
    overPoses(0.02, [&](double boom, double tilt) {
      const auto ours = linkage_.tilt(boom, tilt).value();
      const auto theirs = scaled->tilt(boom, scale * tilt).value();
      EXPECT_NEAR(theirs.bucket_by_boom.value, ours.bucket_by_boom.value, 1e-12);
      EXPECT_NEAR(theirs.bucket_by_boom.first, ours.bucket_by_boom.first, 1e-11);
      EXPECT_NEAR(scale * theirs.bucket_by_tilt.first, ours.bucket_by_tilt.first,
                  1e-11 * std::abs(ours.bucket_by_tilt.first) + 1e-11);
      EXPECT_NEAR(scaled->liftCylinder(boom).first, scale * linkage_.liftCylinder(boom).first, 1e-12);
      EXPECT_NEAR(scaled->liftCylinder(boom).second, scale * linkage_.liftCylinder(boom).second, 1e-12);
    });
  }
}

TEST_P(LinkageTest, TurningTheFrameTurnsEverythingWithIt) {
  const double turn = 4 * kDegree;
  ZBarGeometry g = machine_.geometry;
  for (Pin* pin : {&g.lift_frame_pin, &g.tilt_frame_pin})
    *pin = {std::cos(turn) * pin->along - std::sin(turn) * pin->across,
            std::sin(turn) * pin->along + std::cos(turn) * pin->across};
  const auto turned = Linkage::make(g);
  ASSERT_TRUE(turned);
  overPoses(0.02, [&](double boom, double tilt) {
    const auto ours = linkage_.tilt(boom, tilt).value();
    const auto theirs = turned->tilt(boom + turn, tilt).value();
    EXPECT_NEAR(theirs.bellcrank_by_boom.value, ours.bellcrank_by_boom.value, 1e-12);
    EXPECT_NEAR(theirs.bucket_by_boom.value, ours.bucket_by_boom.value + turn, 1e-12);
    EXPECT_NEAR(turned->liftCylinder(boom + turn).value, linkage_.liftCylinder(boom).value, 1e-14);
  });
}

TEST_P(LinkageTest, TheMirrorImageOfTheLiftCylinderFallsAsTheOriginalRises) {
  // Mirrored in the horizontal, pins and boom angle change sign, lengths don't. Only the lift side can be
  // compared so: the format's branches of the other loops are on the left, and a mirror image closes on the
  // right.
  const ZBarGeometry& g = machine_.geometry;
  for (int i = 0; i <= 50; ++i) {
    const double boom = std::lerp(machine_.boom.low, machine_.boom.high, i / 50.0);
    const double x = std::cos(-boom) * g.lift_boom_pin.along.inMetres() +
                     std::sin(-boom) * g.lift_boom_pin.across.inMetres();
    const double y = std::sin(-boom) * g.lift_boom_pin.along.inMetres() -
                     std::cos(-boom) * g.lift_boom_pin.across.inMetres();
    EXPECT_NEAR(std::hypot(x - g.lift_frame_pin.along.inMetres(), y + g.lift_frame_pin.across.inMetres()),
                linkage_.liftCylinder(boom).value, 1e-14);
  }
}

INSTANTIATE_TEST_SUITE_P(Machines, LinkageTest, testing::ValuesIn(machines()),
                         [](const auto& machine) { return machine.param.name; });

}  // namespace
}  // namespace hingepin::linkage
