// SPDX-License-Identifier: Apache-2.0
#include "engine/proof/due.h"

#include <gtest/gtest.h>

#include <string>

namespace hingepin::proof {
namespace {

constexpr std::int64_t kDay = 86'400'000;

DueAsked taughtOnDay(std::int64_t day) {
  return {.taught_utc_ms = day * kDay, .proved_utc_ms = day * kDay + 1};
}

TEST(DueTest, TheSoonestReasonComesFirst) {
  DueAsked asked = taughtOnDay(10);
  asked.every_ms = 90 * kDay;
  asked.leaving_utc_ms = 80 * kDay;
  const auto reasons = dueReasons(asked);
  ASSERT_EQ(reasons.size(), 2U);
  EXPECT_EQ(reasons[0].why.code, "due-by-drift");
  EXPECT_EQ(reasons[1].why.code, "due-by-time");
  EXPECT_EQ(reasons[1].utc_ms, 100 * kDay);
}

TEST(DueTest, HoursComeDueAtTheRateOfTheirMeter) {
  DueAsked asked = taughtOnDay(10);
  asked.every_hours = 200;
  asked.hours = {{0, 1000}, {50 * kDay, 1250}};  // five a day, 1050 at the teaching
  const auto reasons = dueReasons(asked);
  ASSERT_EQ(reasons.size(), 1U);
  EXPECT_EQ(reasons[0].why.code, "due-by-hours");
  EXPECT_EQ(reasons[0].utc_ms, 50 * kDay) << "1250 is where it comes due";
  asked.hours.back().hours = 1150;  // three a day: 1030 at the teaching, 80 left
  const auto later = dueReasons(asked);
  EXPECT_NEAR(double(later[0].utc_ms) / kDay, 50 + 80 / 3.0, 1e-6);
  asked.hours.clear();
  EXPECT_TRUE(dueReasons(asked).empty()) << "without a meter nothing is known of hours";
}

TEST(DueTest, EveryEventMakesItDueFromItsTimeOn) {
  for (const auto& [name, event] : kEventNames) {
    DueAsked asked = taughtOnDay(10);
    asked.happenings = {{event, 20 * kDay}};
    const auto reasons = dueReasons(asked);
    ASSERT_EQ(reasons.size(), 1U) << name;
    EXPECT_EQ(reasons[0].why.code, "due-event-" + std::string(name));
    EXPECT_EQ(reasons[0].utc_ms, 20 * kDay);
  }
}

TEST(DueTest, AShiftProofSettlesSomeEventsAndOnlyTeachingTheOthers) {
  for (const auto& [name, event] : kEventNames) {
    DueAsked asked = taughtOnDay(10);
    asked.happenings = {{event, 20 * kDay}};
    asked.proved_utc_ms = 21 * kDay;
    EXPECT_EQ(dueReasons(asked).empty(), isSettledByShiftProof(event)) << name;
    asked.taught_utc_ms = 21 * kDay;
    asked.proved_utc_ms = 21 * kDay;
    EXPECT_TRUE(dueReasons(asked).empty()) << name;
  }
}

TEST(DueTest, TeachingMakesTheFirstShiftDueUntilItIsProved) {
  DueAsked asked = taughtOnDay(10);
  asked.proved_utc_ms.reset();
  asked.happenings = {{Event::Taught, 10 * kDay}};
  ASSERT_EQ(dueReasons(asked).size(), 1U);
  EXPECT_EQ(dueReasons(asked)[0].why.code, "due-event-taught");
  asked.proved_utc_ms = 11 * kDay;
  EXPECT_TRUE(dueReasons(asked).empty());
}

TEST(DueTest, AScaleThatWasNeverTaughtIsNotDue) { EXPECT_TRUE(dueReasons({.every_ms = kDay}).empty()); }

}  // namespace
}  // namespace hingepin::proof
