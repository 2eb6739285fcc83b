// SPDX-License-Identifier: GPL-3.0-or-later
// Whole jobs on the real app, by touch and typing alone; the record is then verified by the program
// `hingepin`.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "person.h"

namespace hingepin::mobile {
namespace {

/// The app's clock runs so much faster than the computer's.
constexpr double kSpeed = 16.0;
double speed() {
  return qEnvironmentVariableIsSet("HINGEPIN_SPEED") ? qEnvironmentVariable("HINGEPIN_SPEED").toDouble()
                                                     : kSpeed;
}

TEST(WholeJobTest, WalkRound) {
  Hand hand(speed());
  hand.resize(360, 740);
  hand.app().app.setTextScale(2.0);
  Person person(hand);
  person.readPlan(QStringLiteral("walk-round"));
  person.makeYard();
  person.addUnit();
  person.begin(QStringLiteral("Walk-round"));
  EXPECT_TRUE(person.work());
  expectSealed(hand);
}

TEST(WholeJobTest, SimulatedReadingsStayOutOfARealJob) {
  Hand hand(speed());
  Person person(hand);
  person.makeYard();
  person.addUnit(false);
  person.begin(QStringLiteral("Walk-round"));
  Live& live = hand.app().live;
  live.open(QStringLiteral("practice"));
  ASSERT_TRUE(hand.until([&] { return live.property("alive").toBool(); }));
  EXPECT_THAT(live.property("fault").toString().toStdString(), ::testing::HasSubstr("practice units only"));
  EXPECT_FALSE(hand.until(
      [&] { return live.property("steady").toBool() || live.property("progress").toDouble() > 0; }, 2000));
}

/// The main job in one of its ways, to the sealed record.
void calibrate(MadeYard& yard, const QString& plan, const QString& way) {
  yard.person.readPlan(plan);
  yard.person.begin(QStringLiteral("Calibrate after a change"), way);
  {
    const Cost cost(yard.person, yard.hand, plan);
    EXPECT_TRUE(yard.person.work());
  }
  expectSealed(yard.hand);
}

TEST(WholeJobTest, OwnRoutine) {
  MadeYard yard(speed());
  calibrate(yard, QStringLiteral("main-own-routine"), QStringLiteral("The machine's own"));
}

TEST(WholeJobTest, TypedReadings) {
  MadeYard yard(speed());
  calibrate(yard, QStringLiteral("main-typed"), QStringLiteral("Readings typed"));
}

/// Whether the unit's pins are on file, by what the first page has.
bool hasLinkage(Hand& hand) {
  const QVariantList units = hand.app().yard.property("units").toList();
  return !units.isEmpty() && units.first().toMap().value(QStringLiteral("hasLinkage")).toBool();
}

TEST(WholeJobTest, ASurveyGivesTheUnitItsLinkage) {
  Hand hand(speed());
  hand.resize(360, 740);
  Person person(hand);
  person.makeYard();
  person.addUnit();
  walkRound(hand);
  EXPECT_FALSE(hasLinkage(hand));
  // What the practice loader's tape and inclinometer say, at the first and the fourth height of the plan.
  person.readPlan(QStringLiteral("linkage-survey"));
  for (auto& [step, values] : person.says) {
    if (values.size() == 6) values = {values[0], values[3]};
  }
  person.answers["another"] = "another";
  person.begin(QStringLiteral("Linkage survey"));
  ASSERT_TRUE(person.work(QStringLiteral("boom-lift")));
  // The side view shows what is meant: from where to where.
  EXPECT_FALSE(hand.app().job.view().measure.isEmpty());
  EXPECT_TRUE(hand.shows(QStringLiteral("In the picture: from A to B"))) << hand.everything().toStdString();
  {
    const Cost cost(person, hand, QStringLiteral("survey"));
    EXPECT_TRUE(person.work());
  }
  expectSealed(hand);
  EXPECT_THAT(hand.app().job.view().marks, ::testing::IsEmpty());
  hand.tap(QStringLiteral("Show the record"));
  EXPECT_TRUE(hand.until([&] { return hand.shows(QStringLiteral("Sealed on this phone")); }))
      << hand.everything().toStdString();
  EXPECT_TRUE(hand.shows(QStringLiteral("Not sent yet")));
  EXPECT_THAT(faultsOf(hand), ::testing::IsEmpty());
  EXPECT_TRUE(hand.until([&] { return hasLinkage(hand); }));
}

TEST(WholeJobTest, LiveFeed) {
  MadeYard yard(speed());
  yard.person.live = true;
  yard.hand.app().live.open(QStringLiteral("practice"));
  calibrate(yard, QStringLiteral("main-logged"), QStringLiteral("Logs"));
}

}  // namespace
}  // namespace hingepin::mobile
