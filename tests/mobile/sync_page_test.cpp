// SPDX-License-Identifier: GPL-3.0-or-later
// The page of the far side, with a real share on this computer.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QDir>
#include <QDirIterator>
#include <QElapsedTimer>
#include <QFile>

#include "person.h"
#include "tests/engine/far_side/servers/real.h"

namespace hingepin::mobile {
namespace {

using far_side::samples::RealServer;

TEST(SyncPageTest, AShareIsSetUpInAMinuteAndSaysWhatWaitsAndWhy) {
  const QTemporaryDir scratch;
  const RealServer server("webdav", (scratch.path() + QStringLiteral("/server")).toStdString());
  if (server.isMissing()) GTEST_SKIP() << server.packages() << " are needed";
  ASSERT_TRUE(server.runs());
  Hand hand(4.0);
  Person person(hand);
  person.makeYard();
  hand.tap(QStringLiteral("Settings"));
  hand.tap(QStringLiteral("Exchange with the office"));
  Syncer& syncer = hand.app().syncer;
  ASSERT_TRUE(hand.until([&] { return !syncer.property("waiting").toList().isEmpty(); }));
  EXPECT_TRUE(hand.shows(QStringLiteral("◷ List of who may sign")));

  // What somebody types who stands beside the server. Its certificate is of an authority that nobody knows.
  const Effort before = hand.effort();
  hand.tap(QStringLiteral("Set up the place"));
  hand.type(QStringLiteral("Address, beginning with https://"),
            QString::fromStdString(server.url().substr(std::string_view("https://").size())));
  hand.type(QStringLiteral("User name"), QStringLiteral("technician"));
  hand.type(QStringLiteral("Password of the share"), QString::fromStdString(server.secret()));
  hand.tap(QStringLiteral("Keep this place"));
  EXPECT_LE(hand.effort().taps - before.taps, 6);
  EXPECT_LE(hand.effort().keys - before.keys, 60);
  ASSERT_TRUE(hand.until([&] { return syncer.canBegin(); }));
  hand.tap(QStringLiteral("Send and fetch now"));
  ASSERT_TRUE(hand.until([&] { return !syncer.property("problem").toString().isEmpty(); }));
  ASSERT_TRUE(hand.until([&] { return hand.shows(QStringLiteral("Send and fetch now")); }));
  EXPECT_FALSE(syncer.property("waiting").toList().isEmpty());
  const QVariantMap first = syncer.property("waiting").toList().constFirst().toMap();
  EXPECT_TRUE(hand.until([&] {
    const QVariantMap waits = syncer.property("waiting").toList().constFirst().toMap();
    return waits[QStringLiteral("why")].toString() == syncer.property("problem").toString();
  })) << first[QStringLiteral("why")].toString().toStdString();
  EXPECT_THAT(faultsOf(hand), ::testing::IsEmpty());

  // With its authority known, all is sent, and the share has it.
  QVariantMap form = syncer.property("farSide").toMap();
  form[QStringLiteral("ca_file")] = QString::fromStdString(server.caFile());
  syncer.setUp(form, {});
  ASSERT_TRUE(hand.until([&] { return syncer.property("problem").toString().isEmpty(); }));
  ASSERT_TRUE(hand.until([&] {
    if (syncer.canBegin() && !syncer.running() && !syncer.property("waiting").toList().isEmpty())
      syncer.begin();
    return syncer.property("waiting").toList().isEmpty();
  })) << syncer.property("problem").toString().toStdString();
  EXPECT_TRUE(hand.until([&] { return hand.shows(QStringLiteral("✓ Nothing waits.")); }));
  const auto heads = server.remote().list("heads");
  ASSERT_TRUE(heads.has_value());
  EXPECT_EQ(heads->size(), 1U);
  EXPECT_THAT(faultsOf(hand), ::testing::IsEmpty());

  // The password stands in no file.
  QDirIterator files(hand.folder(), QDir::Files | QDir::Hidden, QDirIterator::Subdirectories);
  int looked_at = 0;
  while (files.hasNext()) {
    QFile file(files.next());
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_FALSE(file.readAll().contains(QByteArray::fromStdString(server.secret())))
        << file.fileName().toStdString();
    ++looked_at;
  }
  EXPECT_GT(looked_at, 4);

  // Who comes next has it only by their own passphrase.
  hand.app().app.lock();
  EXPECT_TRUE(hand.until([&] { return !syncer.canBegin(); }));
}

}  // namespace
}  // namespace hingepin::mobile
