// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "engine/linkage/linkage.h"
#include "engine/linkage/statics.h"
#include "tests/engine/linkage/machines.h"
#include "tests/engine/linkage/multibody_loader.h"
#include "tests/engine/linkage/quadrature.h"

namespace hingepin::linkage {
namespace {

class MultibodyTest : public testing::TestWithParam<Machine> {
 protected:
  const Machine& machine_ = GetParam();
  const Linkage linkage_ = Linkage::make(machine_.geometry).value();
};

// The library closes its loops to 1e-13 m; lengths over arms and the tightest transmission leave 1e-10.
constexpr double kPositionTolerance = 1e-10;

TEST_P(MultibodyTest, PosesEdgesAndLiftForceAgreeOverTheWholeRange) {
  peer::MultibodyLoader model = multibodyLoader(machine_);
  double worst_force = 0.0, worst_position = 0.0;
  int poses = 0;
  for (int i = 0; i <= 60; ++i) {
    const double boom = std::lerp(machine_.boom.low, machine_.boom.high, i / 60.0);
    const Range range = linkage_.tiltRange(boom);
    ASSERT_LE(range.low, range.high);
    for (const double share : {0.02, 0.25, 0.5, 0.75, 0.98}) {
      SCOPED_TRACE(testing::Message() << "boom " << boom / kDegree << " deg, tilt at " << share);
      const double tilt = std::lerp(range.low, range.high, share);
      model.moveTo(linkage_.liftCylinder(boom).value, tilt);
      ASSERT_LT(model.closingError(), 1e-12);

      const auto state = linkage_.tilt(boom, tilt).value();
      EXPECT_NEAR(model.boomAngle(), boom, kPositionTolerance);
      EXPECT_NEAR(std::remainder(model.bellcrankAngle() - state.bellcrank_by_boom.value, 360 * kDegree), 0.0,
                  kPositionTolerance);
      EXPECT_NEAR(std::remainder(model.bucketAngle() - state.bucket_by_boom.value, 360 * kDegree), 0.0,
                  kPositionTolerance);
      for (const Pin& tip : {machine_.heel, machine_.cutting_edge}) {
        const auto ours = linkage_.bucketPoint(boom, tilt, tip).value();
        const peer::Point theirs = model.onBucket(point(tip));
        EXPECT_NEAR(ours.x.value, theirs[0], kPositionTolerance);
        EXPECT_NEAR(ours.y.value, theirs[1], kPositionTolerance);
        worst_position = std::max(
            {worst_position, std::abs(ours.x.value - theirs[0]), std::abs(ours.y.value - theirs[1])});
      }

      const double ours = liftForce(linkage_, boom, tilt, machine_.masses, kGravity).value();
      const double theirs = model.liftForce();
      EXPECT_GT(ours, 0.0);
      // Asked for: 1e-6. Both are exact but for rounding, a few 1e-12.
      EXPECT_NEAR(ours, theirs, 1e-9 * std::abs(theirs));
      worst_force = std::max(worst_force, std::abs(ours / theirs - 1.0));
      ++poses;
    }
  }
  std::printf("%s: %d poses, lift force within %.1e relative, edges within %.1e m\n", machine_.name.c_str(),
              poses, worst_force, worst_position);
}

TEST_P(MultibodyTest, WorkOfTheLiftCylinderIsTheRiseOfPotentialEnergy) {
  for (const double share : {0.6, 1.0}) {
    const double tilt = std::lerp(machine_.geometry.tilt_cylinder_retracted.inMetres(),
                                  machine_.geometry.tilt_cylinder_extended.inMetres(), share);
    const double low = linkage_.liftCylinder(machine_.boom.low).value;
    const double high = linkage_.liftCylinder(machine_.boom.high).value;

    peer::MultibodyLoader model = multibodyLoader(machine_);
    model.moveTo(low, tilt);
    const double energy_low = model.potentialEnergy();
    const double their_work = integrate(
        [&](double lift) {
          model.moveTo(lift, tilt);
          return model.liftForce();
        },
        low, high, 40);
    model.moveTo(high, tilt);
    const double rise = model.potentialEnergy() - energy_low;
    const double our_work = integrate(
        [&](double lift) {
          return liftForce(linkage_, linkage_.boomAngle(lift).value(), tilt, machine_.masses, kGravity)
              .value();
        },
        low, high, 40);
    EXPECT_GT(rise, 0.0);
    EXPECT_NEAR(our_work, rise, 1e-9 * rise);
    EXPECT_NEAR(their_work, rise, 1e-9 * rise);
  }
}

INSTANTIATE_TEST_SUITE_P(Machines, MultibodyTest, testing::ValuesIn(machines()),
                         [](const auto& machine) { return machine.param.name; });

}  // namespace
}  // namespace hingepin::linkage
