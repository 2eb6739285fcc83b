// SPDX-License-Identifier: Apache-2.0
#include "engine/calibration/stops.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "tests/engine/calibration/attachments.h"
#include "tests/engine/linkage/machines.h"

namespace hingepin::calibration {
namespace {

using linkage::pinAt;

const Attachment kGeneral = attachmentOf("general", pinAt(-0.10, -0.22), pinAt(1.22, -0.22));
const Attachment kDeepHeel = attachmentOf("deep", pinAt(-0.25, -0.40), pinAt(1.30, -0.30));

StopsAsked asked() {
  StopsAsked stops{.linkage = linkage::demoMachine().geometry, .attachment = kGeneral};
  stops.wanted[Stop::Lower] = 0.25;
  stops.wanted[Stop::Upper] = 3.1;
  stops.wanted[Stop::Level] = 0.0;
  return stops;
}

bool says(const std::vector<Message>& messages, const std::string& code) {
  return std::ranges::find(messages, code, &Message::code) != messages.end();
}

TEST(StopsTest, EdgeStandsAtTheHeightWantedAndTheFloorAtTheLevel) {
  const StopsAnswer answer = tellStops(asked()).value();
  const StopPose& lower = *answer.stops[0].set;
  const StopPose& upper = *answer.stops[1].set;
  const StopPose& level = *answer.stops[2].set;
  EXPECT_NEAR(*lower.edge_height_m, 0.25, 1e-9);
  EXPECT_NEAR(lower.bucket_angle_rad, 0.0, 1e-9);
  // A level floor has edge and heel at one height where both lie on it.
  EXPECT_NEAR(*lower.heel_height_m, 0.25, 1e-9);
  EXPECT_NEAR(*upper.edge_height_m, 3.1, 1e-9);
  EXPECT_DOUBLE_EQ(upper.tilt_length_m, 1.709) << "racked back: the tilt cylinder at its end";
  EXPECT_EQ(level.boom_angle_rad, lower.boom_angle_rad);
  EXPECT_EQ(level.tilt_length_m, lower.tilt_length_m);
  // With a level floor only the hinge pin carries the height: pivot + L sin(beta) - 0.22.
  EXPECT_NEAR(lower.boom_angle_rad, std::asin((0.25 + 0.22 - 1.95) / 2.55), 1e-9);
}

TEST(StopsTest, SensorsReadWhatTheirLinesSayAtTheStops) {
  StopsAsked stops = asked();
  stops.boom_line = BoomSensorLine{SensorUnit::Volt, 0.71, -40 * kDegree, 0.0399 / kDegree};
  stops.bucket_ends = BucketSensorEnds{SensorUnit::Volt, 2.71, 1.76, 3 * kDegree};
  const StopsAnswer answer = tellStops(stops).value();
  for (const StopAnswer& stop : answer.stops)
    EXPECT_NEAR(*stop.set->boom_sensor, 0.71 + 0.0399 * (stop.set->boom_angle_rad / kDegree + 40), 1e-9);
  const double level_V = *answer.stops[2].set->bucket_sensor;
  EXPECT_GT(level_V, 1.76);
  EXPECT_LT(level_V, 2.71);

  // Racked back at the angle at which the ends were read, the bucket sensor reads what was read there.
  const auto linkage = linkage::Linkage::make(*stops.linkage).value();
  StopsAsked racked = stops;
  racked.wanted = {};
  racked.wanted[Stop::Upper] = *poseAt(linkage, kGeneral, 3 * kDegree, 1.709).value().edge_height_m;
  EXPECT_NEAR(*tellStops(racked).value().stops[0].set->bucket_sensor, 2.71, 1e-9);
}

TEST(StopsTest, StoredStopsPutADeeperHeelLowerAndSayThatItMeetsTheGroundFirst) {
  StopsAsked stops = asked();
  stops.attachment = kDeepHeel;
  stops.taught_with = kGeneral;
  stops.wanted[Stop::Lower] = 0.1;
  const StopsAnswer answer = tellStops(stops).value();
  const StoredStop& lower = *answer.stops[0].stored;
  // The level floor of the one is the level floor of the other: heights differ by what lies under the pin.
  EXPECT_NEAR(*lower.pose.edge_height_m, 0.1 + 0.22 - 0.30, 1e-9);
  EXPECT_NEAR(*lower.pose.heel_height_m, 0.1 + 0.22 - 0.40, 1e-9);
  EXPECT_EQ(lower.heel_leads, true);
  ASSERT_TRUE(lower.heel_contact);
  EXPECT_GT(lower.heel_contact->boom_angle_rad, lower.pose.boom_angle_rad);
  EXPECT_GT(lower.heel_contact->edge_height_m, 0.08);
  EXPECT_TRUE(says(answer.warnings, "stored-stop-heel-first"));

  stops.wanted[Stop::Lower] = 0.25;
  const StopsAnswer high = tellStops(stops).value();
  EXPECT_EQ(high.stops[0].stored->heel_leads, true);
  EXPECT_FALSE(high.stops[0].stored->heel_contact) << "the heel leads and stays above the ground";
}

TEST(StopsTest, AStopThatIsSetForADeepHeelWarnsWhereTheHeelWouldBeUnderground) {
  StopsAsked stops = asked();
  stops.attachment = kDeepHeel;
  stops.wanted[Stop::Lower] = 0.02;
  EXPECT_TRUE(says(tellStops(stops).value().warnings, "stop-heel-below-ground"));
}

TEST(StopsTest, AHeightThatCannotBeReachedIsRefusedWithThoseThatCan) {
  StopsAsked stops = asked();
  stops.wanted[Stop::Upper] = 6.0;
  const Error error = tellStops(stops).error();
  EXPECT_EQ(error.kind, ErrorKind::InvalidInput);
  EXPECT_EQ(error.message.code, "stop-out-of-reach");
  EXPECT_EQ(error.place.pointer, "/wanted/upper");
}

TEST(StopsTest, CyclesAreJudgedWithoutALinkageByMeasuredHeightsAlone) {
  StopsAsked stops;
  stops.wanted[Stop::Lower] = 0.25;
  stops.limits[Stop::Lower] = 0.05;
  for (const double rest : {0.262, 0.258, 0.266}) stops.cycles.emplace_back().rest[Stop::Lower] = rest;
  const StopsAnswer answer = tellStops(stops).value();
  EXPECT_FALSE(answer.stops[0].set);
  EXPECT_EQ(answer.stops[0].not_set->code, "stops-without-linkage");
  const StopProof& proof = *answer.stops[0].proof;
  EXPECT_EQ(proof.cycles, 3);
  EXPECT_NEAR(proof.offset, 0.012, 1e-12);
  EXPECT_NEAR(*proof.scatter, 0.004, 1e-12);
  EXPECT_EQ(proof.holds, true);
  EXPECT_EQ(answer.holds, true);
}

TEST(StopsTest, OneCycleBeyondTheLimitFailsAStopWhoseMeanHolds) {
  const std::vector<std::optional<double>> none(3);
  EXPECT_EQ(judgeStop(Stop::Upper, 3.1, {3.10, 3.10, 3.151}, none, 0.05).holds, false);
  EXPECT_EQ(judgeStop(Stop::Upper, 3.1, {3.10, 3.10, 3.150}, none, 0.05).holds, true) << "at the limit";
  EXPECT_EQ(judgeStop(Stop::Upper, 3.1, {3.10, 3.10, 3.2}, none, std::nullopt).holds, std::nullopt);
}

TEST(StopsTest, OvershootIsHowFarItWentPastInItsDirection) {
  const std::vector<std::optional<double>> none(2);
  EXPECT_NEAR(judgeStop(Stop::Upper, 3.1, {3.11, 3.08}, none, {}).overshoot, 0.01, 1e-12);
  EXPECT_NEAR(judgeStop(Stop::Lower, 0.25, {0.26, 0.24}, none, {}).overshoot, 0.01, 1e-12);
  EXPECT_NEAR(judgeStop(Stop::Upper, 3.1, {3.11, 3.08}, {std::nullopt, 3.14}, {}).overshoot, 0.04, 1e-12);
  EXPECT_EQ(judgeStop(Stop::Lower, 0.25, {0.26, 0.27}, none, {}).overshoot, 0.0);
}

TEST(StopsTest, NothingToGoByIsInsufficient) {
  StopsAsked stops;
  EXPECT_EQ(tellStops(stops).error().kind, ErrorKind::Insufficient);
  stops.wanted[Stop::Upper] = 3.0;
  EXPECT_EQ(tellStops(stops).error().message.code, "stops-nothing-told");
}

}  // namespace
}  // namespace hingepin::calibration
