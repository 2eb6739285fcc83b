// SPDX-License-Identifier: GPL-3.0-or-later
// Parts of the app that no whole job passes through.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QTest>
#include <QXYSeries>

#include "job_view.h"
#include "person.h"

namespace hingepin::mobile {
namespace {

TEST(AppPartsTest, ThePracticeLoaderMisbehavesAndItsReadingsDropOut) {
  Hand hand(4.0);
  Person person(hand);
  person.makeYard();
  person.addUnit();
  hand.tap(QStringLiteral("Settings"));
  hand.tap(QStringLiteral("Live readings"));
  EXPECT_FALSE(hand.shows(QStringLiteral("The loader misbehaves")));
  hand.tap(QStringLiteral("Simulated loader"));
  Live& live = hand.app().live;
  ASSERT_TRUE(hand.until([&] { return live.property("alive").toBool(); }));

  hand.tap(QStringLiteral("▸ The loader misbehaves"));
  hand.tap(QStringLiteral("A front tyre is soft"));
  EXPECT_EQ(live.property("mishap").toString(), QStringLiteral("mishap-soft-tyre"));
  EXPECT_TRUE(hand.shows(QStringLiteral("A front tyre is soft")));
  EXPECT_TRUE(hand.shows(QStringLiteral("It stays so until you say")));
  EXPECT_THAT(faultsOf(hand), ::testing::IsEmpty());

  hand.tap(QStringLiteral("Cut the readings off"));
  EXPECT_TRUE(hand.until([&] { return !live.property("alive").toBool(); }, 3000));
  EXPECT_TRUE(hand.until([&] { return hand.shows(QStringLiteral("No readings are coming")); }, 1000));
  EXPECT_TRUE(hand.until([&] { return live.property("alive").toBool(); }, 6000));

  hand.tap(QStringLiteral("▸ The loader misbehaves"));
  hand.tap(QStringLiteral("All is well"));
  EXPECT_EQ(live.property("mishap").toString(), QString());
  EXPECT_FALSE(hand.shows(QStringLiteral("It stays so until you say")));

  // What was chosen goes with the loader.
  hand.app().live.suffer(QStringLiteral("mishap-cold-oil"));
  hand.app().live.open(QStringLiteral("none"));
  EXPECT_EQ(live.property("mishap").toString(), QString());
  EXPECT_FALSE(hand.shows(QStringLiteral("The loader misbehaves")));
}

TEST(AppPartsTest, WhatTheAppWeighedIsShownInTheUnitsOfWhoWorks) {
  const session::WeighedLift lift{.value = "2000.0 kg", .expanded_kg = 10.0};
  const QVariantMap us = weighedView(lift, {.language = "en", .system = UnitSystem::UsCustomary});
  // The pound of 0.45359237 kg (NIST Handbook 44, Appendix C, from memory).
  EXPECT_THAT(us.value(QStringLiteral("text")).toString().toStdString(), ::testing::HasSubstr("4409"));
  EXPECT_THAT(us.value(QStringLiteral("text")).toString().toStdString(), ::testing::HasSubstr("lb"));
  EXPECT_THAT(us.value(QStringLiteral("doubt")).toString().toStdString(), ::testing::HasSubstr("22"));
  const QVariantMap metric = weighedView(lift, {.language = "de"});
  EXPECT_THAT(metric.value(QStringLiteral("text")).toString().toStdString(), ::testing::HasSubstr("2000,0"));
  EXPECT_THAT(metric.value(QStringLiteral("text")).toString().toStdString(), ::testing::HasSubstr("kg"));
}

TEST(AppPartsTest, ARestoredPhoneSaysThatItsKeysAreLostAndMakesNewOnes) {
  QTemporaryDir folder;
  {
    Hand hand(1.0, folder.path());
    Person person(hand);
    person.makeYard();
    person.addUnit();
  }
  // What no backup holds.
  const QDir yard(folder.filePath(QStringLiteral("yard")));
  ASSERT_TRUE(QDir(yard.filePath(QStringLiteral("keys"))).removeRecursively());
  ASSERT_TRUE(QFile::remove(yard.filePath(QStringLiteral("installation.json"))));
  {
    Hand hand(1.0, folder.path());
    ASSERT_TRUE(hand.until([&] { return hand.app().app.state() == App::KeysLost; }));
    EXPECT_TRUE(hand.until([&] { return hand.shows(QStringLiteral("no key to sign with")); }));
    // Asked to make a yard over it, the app says the same and makes no key.
    hand.app().app.makeYard(QStringLiteral("Ada Example"), {QStringLiteral("technician")}, kPassphrase);
    hand.until([&] { return !hand.app().app.busy(); });
    EXPECT_EQ(hand.app().app.state(), App::KeysLost);
    EXPECT_TRUE(QDir(yard.filePath(QStringLiteral("keys"))).entryList(QDir::Files).isEmpty());

    hand.tap(QStringLiteral("Make new keys"));
    hand.type(QStringLiteral("Your name"), QStringLiteral("Ada Example"));
    hand.type(QStringLiteral("Passphrase"), kPassphrase);
    hand.type(QStringLiteral("The same passphrase"), kPassphrase);
    hand.tap(QStringLiteral("Make the new keys"));
    ASSERT_TRUE(hand.until([&] { return hand.app().app.state() == App::Open; }, 90000))
        << hand.everything().toStdString();
    ASSERT_TRUE(hand.until([&] { return hand.find(QStringLiteral("L-27")) != nullptr; }));
    EXPECT_EQ(hand.app().app.role(), QStringLiteral("technician"));

    // The new key may act: a job begins, which asks the list of signers.
    Person person(hand);
    person.begin(QStringLiteral("Walk-round"));
    EXPECT_EQ(hand.app().job.view().phase, QStringLiteral("running"));
  }
}

TEST(AppPartsTest, AFaultOfTheLastRunIsToldAndTheLogThatIsSavedHoldsNoNames) {
  QTemporaryDir folder;
  const QDir log(folder.filePath(QStringLiteral("log")));
  ASSERT_TRUE(log.mkpath(QStringLiteral(".")));
  {
    QFile mark(log.filePath(QStringLiteral("running")));
    ASSERT_TRUE(mark.open(QIODevice::WriteOnly));
    mark.write("1777881600123\n11\n");
  }
  Hand hand(1.0, folder.path());
  ASSERT_TRUE(hand.until([&] { return hand.shows(QStringLiteral("ended in a fault of its own")); }));
  hand.tap(QStringLiteral("Last time the app ended"));
  EXPECT_FALSE(hand.shows(QStringLiteral("ended in a fault of its own")));
  Person person(hand);
  person.makeYard();
  // Something that fails, said with a path.
  hand.app().app.tell({ErrorKind::NotFound, {"file-not-found", {{"path", "/srv/ada/example.json"}}}, {}});
  hand.tap(QStringLiteral("There is no file"));
  hand.tap(QStringLiteral("Settings"));
  hand.app().exporter.setFolder(folder.path());
  hand.tap(QStringLiteral("Save the app's log"));
  ASSERT_TRUE(hand.until([&] { return hand.shows(QStringLiteral("hingepin-log.txt")); }));
  EXPECT_THAT(faultsOf(hand), ::testing::IsEmpty());
  QFile saved(folder.filePath(QStringLiteral("hingepin-log.txt")));
  ASSERT_TRUE(saved.open(QIODevice::ReadOnly));
  const std::string text = saved.readAll().toStdString();
  EXPECT_THAT(text, ::testing::HasSubstr("warning run last-run:crashed-by-signal-11"));
  EXPECT_THAT(text, ::testing::HasSubstr("warning app file-not-found not-found\n"));
  EXPECT_THAT(text, ::testing::HasSubstr("information app state-Open"));
  for (const char* secret : {"ada", "Ada", "example", "srv"})
    EXPECT_THAT(text, ::testing::Not(::testing::HasSubstr(secret)));
}

TEST(AppPartsTest, TheYardAndAUnitSayByWhatProofsAreJudged) {
  Hand hand(4.0);
  Person person(hand);
  person.makeYard();
  person.addUnit();
  Profiles& profiles = hand.app().profiles;
  const auto problem = [&] { return profiles.problemAt(); };
  const auto term = [&](const char* key) { return profiles.terms().value(QLatin1String(key)).toString(); };
  hand.tap(QStringLiteral("Settings"));
  hand.tap(QStringLiteral("How proofs are judged in this yard"));
  hand.tap(QStringLiteral("○ A percentage of the load"));
  hand.tap(QStringLiteral("Save"));
  EXPECT_EQ(problem(), QStringLiteral("/proof/tolerance/limit"));
  EXPECT_TRUE(hand.shows(QStringLiteral("Type a number.")));
  EXPECT_TRUE(hand.shows(QStringLiteral("✖ Nothing was saved: see above.")));
  EXPECT_THAT(faultsOf(hand), ::testing::IsEmpty());
  hand.type(QStringLiteral("Largest error, up or down, %"), QStringLiteral("0"));
  hand.tap(QStringLiteral("Save"));
  ASSERT_TRUE(hand.until([&] { return profiles.problem() != QStringLiteral("Type a number."); }));
  EXPECT_EQ(problem(), QStringLiteral("/proof/tolerance/limit")) << "no limit at all";
  hand.type(QStringLiteral("Largest error, up or down, %"), QStringLiteral(".5"));
  hand.tap(QStringLiteral("○ When it is plain that its error is within the limit"));
  hand.wait(100);
  hand.type(QStringLiteral("How sure, %"), QStringLiteral("5"));  // 955
  hand.tap(QStringLiteral("Save"));
  EXPECT_EQ(problem(), QStringLiteral("/proof/decision/confidence"));
  hand.type(QStringLiteral("How sure, %"), {});
  QTest::keyClick(&hand.window(), Qt::Key_Backspace);
  hand.tap(QStringLiteral("Save"));
  ASSERT_TRUE(hand.until([&] { return hand.shows(QStringLiteral("Exchange with the office")); }));
  profiles.openTerms({});
  ASSERT_TRUE(hand.until([&] { return term("limit") == QStringLiteral("0.5"); }));
  EXPECT_EQ(term("of"), QStringLiteral("reference"));
  EXPECT_EQ(term("rule"), QStringLiteral("guarded"));
  EXPECT_EQ(term("confidence"), QStringLiteral("95"));

  // A unit says its own; what it leaves open the yard says.
  QMetaObject::invokeMethod(&hand.window(), "open", Q_ARG(QString, QStringLiteral("TermsPage")),
                            Q_ARG(QVariant, (QVariantMap{{QStringLiteral("unit"), QStringLiteral("L-27")}})));
  hand.tap(QStringLiteral("○ Steps of our own"));
  hand.type(QStringLiteral("Loads up to, kg"), QStringLiteral("2000"));
  hand.type(QStringLiteral("Largest error there, kg"), QStringLiteral("20"));
  hand.tap(QStringLiteral("One more step"));
  hand.tap(QStringLiteral("Remove this step"));  // the first of two
  hand.tap(QStringLiteral("Save"));
  EXPECT_EQ(problem(), QStringLiteral("/proof/tolerance/steps/0/up_to"));
  EXPECT_THAT(faultsOf(hand), ::testing::IsEmpty());
  hand.type(QStringLiteral("Loads up to, kg"), QStringLiteral("5000"));
  hand.type(QStringLiteral("Largest error there, kg"), QStringLiteral("50"));
  hand.tap(QStringLiteral("Save"));
  ASSERT_TRUE(hand.until([&] { return hand.shows(QStringLiteral("Exchange with the office")); }));
  profiles.openTerms(QStringLiteral("L-27"));
  ASSERT_TRUE(hand.until([&] { return term("scheme") == QStringLiteral("steps"); }));
  const QVariantList steps = profiles.terms().value(QStringLiteral("steps")).toList();
  ASSERT_EQ(steps.size(), 1);
  EXPECT_EQ(steps.constFirst().toMap().value(QStringLiteral("upTo")).toString(), QStringLiteral("5000"));
  EXPECT_EQ(term("rule"), QString());
  EXPECT_EQ(profiles.classesOf(QStringLiteral("oiml-r51")), (QStringList{"Y(a)", "Y(b)"}));
}

}  // namespace
}  // namespace hingepin::mobile
