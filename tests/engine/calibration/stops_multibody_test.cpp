// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "engine/calibration/stops.h"
#include "tests/engine/calibration/attachments.h"
#include "tests/engine/linkage/multibody_loader.h"

namespace hingepin::calibration {
namespace {

using linkage::pinAt;

/// Three invented attachments: a general bucket, a light-material bucket with a deep heel, a pallet fork.
const std::vector<Attachment>& attachments() {
  static const std::vector<Attachment> all = {
      attachmentOf("general", pinAt(-0.10, -0.22), pinAt(1.22, -0.22)),
      attachmentOf("light-material", pinAt(-0.25, -0.40), pinAt(1.45, -0.33)),
      attachmentOf("fork", pinAt(0.05, -0.45), pinAt(1.60, -0.47))};
  return all;
}

// Asked for: 1 mm. The peer closes its loops to 1e-13 m; halving the angle sixty times leaves less than that.
constexpr double kAsked_m = 0.001;

TEST(StopsMultibodyTest, EdgeAndHeelStandWhereAnIndependentMultibodyLibraryPutsThem) {
  for (const linkage::Machine& machine : linkage::machines()) {
    peer::MultibodyLoader model = linkage::multibodyLoader(machine);
    const auto linkage = linkage::Linkage::make(machine.geometry).value();
    const double pivot_m = machine.geometry.boom_pivot_height.inMetres();
    double worst_m = 0.0;
    for (const Attachment& attachment : attachments()) {
      StopsAsked asked{
          .linkage = machine.geometry, .attachment = attachment, .taught_with = attachments()[0]};
      // Both machines reach these; the library then moves there and is asked where the points are.
      asked.wanted[Stop::Lower] = 0.25;
      asked.wanted[Stop::Upper] = machine.name == "demo" ? 3.1 : 2.2;
      asked.wanted[Stop::Level] = -2 * kDegree;
      const StopsAnswer answer = tellStops(asked).value();
      ASSERT_EQ(answer.stops.size(), 3U);
      const auto check = [&](const StopPose& pose) {
        model.moveTo(linkage.liftCylinder(pose.boom_angle_rad).value, pose.tilt_length_m);
        ASSERT_LT(model.closingError(), 1e-12);
        EXPECT_NEAR(model.boomAngle(), pose.boom_angle_rad, 1e-9);
        EXPECT_NEAR(std::remainder(model.bucketAngle() - pose.bucket_angle_rad, 360 * kDegree), 0.0, 1e-9);
        const double edge_m = pivot_m + model.onBucket(linkage::point(*attachment.cutting_edge))[1];
        const double heel_m = pivot_m + model.onBucket(linkage::point(*attachment.heel))[1];
        EXPECT_NEAR(*pose.edge_height_m, edge_m, kAsked_m);
        EXPECT_NEAR(*pose.heel_height_m, heel_m, kAsked_m);
        worst_m = std::max(
            {worst_m, std::abs(*pose.edge_height_m - edge_m), std::abs(*pose.heel_height_m - heel_m)});
      };
      for (const StopAnswer& stop : answer.stops) {
        SCOPED_TRACE(machine.name + " with " + attachment.id + ", " +
                     std::string(nameIn(kStopNames, stop.stop)));
        check(*stop.set);
        check(stop.stored->pose);
        const double wanted_m = stop.stop == Stop::Level ? 0.25 : stop.wanted;
        EXPECT_NEAR(*stop.set->edge_height_m, wanted_m, 1e-6);
      }
    }
    std::printf("%s: stops of three attachments within %.1e m of the multibody library\n",
                machine.name.c_str(), worst_m);
  }
}

TEST(StopsMultibodyTest, TheHeelMeetsTheGroundWhereTheLibraryHasItOnTheGround) {
  const linkage::Machine machine = linkage::demoMachine();
  const auto linkage = linkage::Linkage::make(machine.geometry).value();
  peer::MultibodyLoader model = linkage::multibodyLoader(machine);
  StopsAsked asked{
      .linkage = machine.geometry, .attachment = attachments()[1], .taught_with = attachments()[0]};
  asked.wanted[Stop::Lower] = 0.1;
  asked.wanted[Stop::Level] = 0.0;
  const StopAnswer lower = tellStops(asked).value().stops[0];
  ASSERT_TRUE(lower.stored->heel_contact);
  model.moveTo(linkage.liftCylinder(lower.stored->heel_contact->boom_angle_rad).value,
               lower.stored->pose.tilt_length_m);
  const double pivot_m = machine.geometry.boom_pivot_height.inMetres();
  EXPECT_NEAR(pivot_m + model.onBucket(linkage::point(*attachments()[1].heel))[1], 0.0, kAsked_m);
  EXPECT_NEAR(pivot_m + model.onBucket(linkage::point(*attachments()[1].cutting_edge))[1],
              lower.stored->heel_contact->edge_height_m, kAsked_m);
  EXPECT_GT(lower.stored->heel_contact->edge_height_m, 0.05);
}

}  // namespace
}  // namespace hingepin::calibration
