// SPDX-License-Identifier: GPL-3.0-or-later
// Whole jobs on the real app, by touch and typing alone; the record is then verified by the program
// `hingepin`.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QDir>
#include <QElapsedTimer>
#include <QProcess>
#include <iostream>

#include "person.h"

namespace hingepin::mobile {
namespace {

/// What the command line says of all records of a yard.
QString verified(const Hand& hand) {
  QProcess program;
  program.start(QStringLiteral(HINGEPIN_PROGRAM),
                {QStringLiteral("records"), QStringLiteral("verify"), QStringLiteral("--store"),
                 QDir(hand.folder()).filePath(QStringLiteral("yard"))});
  program.waitForFinished(30000);
  const QString said = QString::fromUtf8(program.readAllStandardOutput() + program.readAllStandardError());
  return program.exitCode() == 0 ? said : QStringLiteral("FAILED: ") + said;
}

/// What a job costs who does it, apart from the machine's own time; kept in tests/benchmarks/RESULTS.md.
class Cost {
 public:
  Cost(Hand& hand, const char* job) : hand_(hand), job_(job), before_(hand.effort()) { timer_.start(); }
  ~Cost() {
    std::cout << job_ << ": " << hand_.effort().taps - before_.taps << " taps, "
              << hand_.effort().keys - before_.keys << " keystrokes, " << timer_.elapsed() / 1000
              << " s of the app's own time" << std::endl;
  }

 private:
  Hand& hand_;
  const char* job_;
  Effort before_;
  QElapsedTimer timer_;
};

TEST(WholeJobTest, WalkRound) {
  Hand hand(8.0);
  hand.resize(360, 740);
  hand.app().app.setTextScale(2.0);
  Person person(hand);
  person.readPlan(QStringLiteral("walk-round"));
  person.makeYard();
  person.addUnit();
  person.begin(QStringLiteral("Walk-round"));
  EXPECT_TRUE(person.work());
  EXPECT_EQ(hand.app().job.view().phase, QStringLiteral("done"));
  EXPECT_THAT(verified(hand).toStdString(), ::testing::Not(::testing::HasSubstr("FAILED")));
}

TEST(WholeJobTest, SimulatedReadingsStayOutOfARealJob) {
  Hand hand(8.0);
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

/// A yard with two people, a unit and an attachment, made on the screen, and its walk-round done.
class MadeYard {
 public:
  explicit MadeYard(double speed = 8.0) : hand(speed), person(hand) {
    person.makeYard();
    person.addPerson(QStringLiteral("Bo Sample"), QStringLiteral("Safety lead"));
    person.addUnit();
    person.addAttachment();
    Person walker(hand);
    walker.readPlan(QStringLiteral("walk-round"));
    walker.begin(QStringLiteral("Walk-round"));
    EXPECT_TRUE(walker.work());
    hand.tap(QStringLiteral("Show the record"));
    hand.tap(QStringLiteral("←"));
    hand.tap(QStringLiteral("←"));
  }
  Hand hand;
  Person person;
};

TEST(WholeJobTest, OwnRoutine) {
  MadeYard yard;
  yard.person.readPlan(QStringLiteral("main-own-routine"));
  yard.person.begin(QStringLiteral("Calibrate after a change"), QStringLiteral("The machine's own"));
  {
    const Cost cost(yard.hand, "by the machine's own routine");
    EXPECT_TRUE(yard.person.work());
  }
  EXPECT_EQ(yard.hand.app().job.view().phase.toStdString(), "done")
      << yard.hand.app().job.view().tag.join(QLatin1Char('|')).toStdString();
  EXPECT_THAT(verified(yard.hand).toStdString(), ::testing::Not(::testing::HasSubstr("FAILED")));
}

TEST(WholeJobTest, LiveFeed) {
  MadeYard yard;
  yard.person.live = true;
  yard.hand.app().live.open(QStringLiteral("practice"));
  yard.person.readPlan(QStringLiteral("main-logged"));
  yard.person.begin(QStringLiteral("Calibrate after a change"), QStringLiteral("Logs"));
  {
    const Cost cost(yard.hand, "by live readings");
    EXPECT_TRUE(yard.person.work());
  }
  EXPECT_EQ(yard.hand.app().job.view().phase.toStdString(), "done")
      << yard.hand.app().job.view().tag.join(QLatin1Char('|')).toStdString();
  EXPECT_THAT(verified(yard.hand).toStdString(), ::testing::Not(::testing::HasSubstr("FAILED")));
}

}  // namespace
}  // namespace hingepin::mobile
