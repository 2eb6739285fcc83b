// SPDX-License-Identifier: GPL-3.0-or-later
// Two running apps, one with a yard and one that is new: the screen of one is what the camera of the other
// sees.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QPainter>
#include <QProcess>
#include <QVideoFrame>
#include <algorithm>
#include <cstring>
#include <iostream>
#include <memory>
#include <random>

#include "engine/folder/folder.h"
#include "engine/session/join.h"
#include "engine/session/people.h"
#include "engine/session/yard.h"
#include "person.h"
#include "tests/engine/session/yard.h"

namespace hingepin::mobile {
namespace {

constexpr double kSpeed = 12.0;
constexpr const char* kScratch = "HINGEPIN_TEST_SCRATCH";
constexpr const char* kBegun = "HINGEPIN_TEST_BEGUN";

using session::need;

/// An invented yard on the first phone: the technician's key and the yard's.
void makeYardOf(const QString& path, std::int64_t utc_ms) {
  QFile settings(path + QStringLiteral("/settings.ini"));
  if (!settings.open(QIODevice::WriteOnly)) throw std::runtime_error("settings");
  settings.write("[General]\nopen=yard\nlanguage=en\nsounds=false\n");
  folder::Folder first = need(folder::openFolder((path + QStringLiteral("/yard")).toStdString()));
  const folder::NamedKey technician = need(folder::makeKey(first, "ada-example", kPassphrase.toStdString()));
  need(folder::makeKey(first, kYardKey, kPassphrase.toStdString()));
  const records::SecretKey yard_key = need(folder::openKey(first, kYardKey, kPassphrase.toStdString()));
  std::vector<records::Signer> signers;
  for (const char* role : {"technician", "supervisor", "safety-lead", "yard-clerk", "operator"})
    signers.push_back(
        {.key = technician.key, .role = role, .valid_from_utc_ms = utc_ms, .valid_until_utc_ms = {}});
  (void)need(session::makeYard(first.store, yard_key, signers, utc_ms));
  (void)need(session::keepName(first.store, records::thumbprint(technician.key), "Ada Example",
                               folder::fillBytes, utc_ms));
  need(first.store.putUnit({.id = "L-27", .profile = session::testFile("files/unit.json")}));
  need(first.store.putAttachment({.id = "GP-2.7", .profile = session::testFile("files/attachment.json")}));
}

/// A screen as a hand-held camera sees it: askew, from a side, a little out of focus, light falling off to
/// one side, each pixel with noise.
QImage asACameraSees(const QImage& screen, std::mt19937& random) {
  constexpr int kWidth = 1080;
  constexpr int kHeight = 1920;
  std::uniform_real_distribution<double> unit(-1.0, 1.0);
  const double width = screen.width() / screen.devicePixelRatio();
  const double height = screen.height() / screen.devicePixelRatio();
  const double scale = 0.86 * std::min(kWidth / width, kHeight / height);
  const QPointF corner((kWidth - width * scale) / 2, (kHeight - height * scale) / 2);
  // Each corner up to 4 % of the width off: more than 5 degrees of tilt and turn.
  const auto seen = [&](double x, double y) {
    return corner +
           QPointF(x * scale + unit(random) * 0.04 * kWidth, y * scale + unit(random) * 0.04 * kWidth);
  };
  QPolygonF from;
  from << QPointF(0, 0) << QPointF(screen.width(), 0) << QPointF(screen.width(), screen.height())
       << QPointF(0, screen.height());
  QPolygonF to;
  to << seen(0, 0) << seen(width, 0) << seen(width, height) << seen(0, height);
  QTransform askew;
  EXPECT_TRUE(QTransform::quadToQuad(from, to, askew));
  QImage image(kWidth, kHeight, QImage::Format_RGB32);
  image.fill(QColor(90, 96, 88));
  QPainter painter(&image);
  painter.setRenderHint(QPainter::SmoothPixmapTransform);
  painter.setTransform(askew);
  painter.drawImage(0, 0, screen);
  painter.resetTransform();
  QLinearGradient light(0, 0, kWidth, kHeight);
  light.setColorAt(0, QColor(0, 0, 0, 0));
  light.setColorAt(1, QColor(0, 0, 0, 90));
  painter.fillRect(image.rect(), light);
  painter.end();
  // Out of focus: as if it were taken with two thirds of the pixels.
  image = image.scaled(kWidth * 2 / 3, kHeight * 2 / 3, Qt::IgnoreAspectRatio, Qt::SmoothTransformation)
              .scaled(kWidth, kHeight, Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
  for (int y = 0; y < kHeight; ++y) {
    auto* const line = reinterpret_cast<QRgb*>(image.scanLine(y));
    for (int x = 0; x < kWidth; ++x) {
      const int noise = static_cast<int>(random() % 41U) - 20;  // some 12 of 255, standard deviation
      const auto with = [&](int value) { return std::clamp(value + noise, 0, 255); };
      line[x] = qRgb(with(qRed(line[x])), with(qGreen(line[x])), with(qBlue(line[x])));
    }
  }
  return image;
}

QVideoFrame frameOf(const QImage& image) {
  QVideoFrame frame(
      QVideoFrameFormat(image.size(), QVideoFrameFormat::pixelFormatFromImageFormat(image.format())));
  EXPECT_TRUE(frame.map(QVideoFrame::WriteOnly));
  for (int y = 0; y < image.height(); ++y) {
    std::memcpy(frame.bits(0) + qsizetype{y} * frame.bytesPerLine(0), image.constScanLine(y),
                static_cast<std::size_t>(image.bytesPerLine()));
  }
  frame.unmap();
  return frame;
}

/// Holds the camera of one phone over the screen of another until that has come of it. @return frames it took
int holdOver(Hand& hand, const QImage& screen, std::uint32_t seed, const std::function<bool()>& done) {
  std::mt19937 random(seed);
  constexpr int kMostFrames = 20;
  for (int frame = 1; frame <= kMostFrames; ++frame) {
    hand.app().scanner.look(frameOf(asACameraSees(screen, random)));
    if (hand.until(done, 2500)) return frame;
  }
  ADD_FAILURE() << "the camera finds nothing; on the screen: " << hand.everything().toStdString();
  return kMostFrames;
}

/// A picture for the other process, there at once or not at all.
void handOver(const QImage& picture, const QString& path) {
  ASSERT_TRUE(picture.save(path + QStringLiteral(".part"), "PNG"));
  ASSERT_TRUE(QFile::rename(path + QStringLiteral(".part"), path));
}

/// Nothing is cut off, faint or too small, in a short language, a long one and one from right to left. A
/// picture of each where HINGEPIN_SCREENSHOTS names a folder.
void expectWhole(Hand& hand, const QString& page) {
  const QString folder = qEnvironmentVariable("HINGEPIN_SCREENSHOTS");
  for (const char* language : {"de", "ar", "en"}) {
    hand.app().app.setLanguage(QString::fromLatin1(language));
    hand.until([&] { return !hand.app().app.busy(); });
    hand.wait(150);
    EXPECT_THAT(faultsOf(hand), ::testing::IsEmpty()) << page.toStdString() << " " << language;
    EXPECT_THAT(faintTextsOf(hand), ::testing::IsEmpty()) << page.toStdString() << " " << language;
    if (!folder.isEmpty())
      hand.grab().save(QStringLiteral("%1/%2-%3.png").arg(folder, page, QString::fromLatin1(language)));
  }
}

session::Moment begunAt(const QString& text) {
  session::Moment begun = folder::momentOfComputer();
  begun.at_ms = text.section(QLatin1Char(' '), 0, 0).toLongLong();
  begun.utc_ms = text.section(QLatin1Char(' '), 1, 1).toLongLong();
  return begun;
}

/// From the first start of a new phone to where it asks to be let in.
void askToJoin(Hand& hand, const QString& name) {
  hand.tap(QStringLiteral("Join a yard"));
  hand.type(QStringLiteral("Your name"), name);
  hand.type(QStringLiteral("Passphrase"), kOtherPassphrase);
  hand.type(QStringLiteral("The same passphrase"), kOtherPassphrase);
  hand.tap(QStringLiteral("Make my key"));
  ASSERT_TRUE(hand.until([&] { return !hand.app().joiner.property("code").toString().isEmpty(); }, 90000))
      << hand.everything().toStdString();
  EXPECT_EQ(hand.app().app.state(), App::Joining);
}

/// No test of its own: the phone of the safety lead, as new.
TEST(OtherPhoneProcessTest, DISABLED_JoinsTheYardAndConfirmsWhatItIsAsked) {
  const QString scratch = qEnvironmentVariable(kScratch);
  const QString folder = scratch + QStringLiteral("/second");
  const session::Moment begun = begunAt(qEnvironmentVariable(kBegun));
  auto first_run = std::make_unique<Hand>(kSpeed, folder, QStringLiteral("en"), begun);
  first_run->resize(360, 740);
  askToJoin(*first_run, QStringLiteral("Bo Sample"));
  expectWhole(*first_run, QStringLiteral("joining"));
  const QString code = first_run->app().joiner.property("code").toString();
  handOver(first_run->grab(), scratch + QStringLiteral("/join.png"));
  first_run.reset();

  // What was begun is there when the app is started again.
  Hand hand(kSpeed, folder, QStringLiteral("en"), begun);
  hand.resize(360, 740);
  ASSERT_TRUE(hand.until([&] { return hand.app().joiner.property("code").toString() == code; }));
  hand.tap(QStringLiteral("Read the yard's code"));
  expectWhole(hand, QStringLiteral("reading-yard"));
  holdOver(hand, QImage(scratch + QStringLiteral("/join.png")), 4,
           [&] { return hand.shows(QStringLiteral("This code lets nobody in")); });
  const QString admission = scratch + QStringLiteral("/admit.png");
  ASSERT_TRUE(hand.until([&] { return QFile::exists(admission); }, 120000));
  holdOver(hand, QImage(admission), 5, [&] { return hand.app().app.state() == App::Locked; });
  Person lead(hand);
  lead.unlock(QStringLiteral("Bo Sample"), kOtherPassphrase);
  EXPECT_EQ(hand.app().app.property("roles").toStringList(), QStringList(QStringLiteral("safety-lead")));
  hand.tap(QStringLiteral("Confirm for another phone"));
  const QString asking = scratch + QStringLiteral("/ask.png");
  ASSERT_TRUE(hand.until([&] { return QFile::exists(asking); }, 120000));
  Confirmer& confirmer = hand.app().confirmer;
  holdOver(hand, QImage(asking), 1, [&] { return !confirmer.property("asked").toMap().isEmpty(); });
  for (const char* words : {"L-27", "Lockout and clear zone", "Second person: look at isolator",
                            "Ada Example asks", "Go to the machine and look for yourself"})
    EXPECT_TRUE(hand.until([&] { return hand.shows(QString::fromLatin1(words)); }))
        << words << " is not among " << hand.everything().toStdString();
  expectWhole(hand, QStringLiteral("asked"));
  hand.tap(QStringLiteral("I confirm it"));
  ASSERT_TRUE(hand.until([&] { return hand.find(QStringLiteral("The other phone has read it")) != nullptr; }))
      << hand.everything().toStdString();
  expectWhole(hand, QStringLiteral("answered"));
  handOver(hand.grab(), scratch + QStringLiteral("/answer.png"));
}

TEST(TwoPhonesTest, WhoeverWouldJoinCanMakeAYardOfTheirOwnInstead) {
  const QTemporaryDir folder;
  {
    Hand hand(kSpeed, folder.path());
    askToJoin(hand, QStringLiteral("Bo Sample"));
    hand.tap(QStringLiteral("Make a yard of my own instead"));
    expectWhole(hand, QStringLiteral("giving-up"));
  }
  Hand hand(kSpeed, folder.path());
  // A new code takes the passphrase again.
  ASSERT_TRUE(hand.until([&] { return !hand.app().joiner.property("code").toString().isEmpty(); }));
  const QString before = hand.app().joiner.property("code").toString();
  hand.tap(QStringLiteral("Make a new code"));
  hand.type(QStringLiteral("Your passphrase"), QStringLiteral("seven yellow"));
  hand.tap(QStringLiteral("Make the code"));
  ASSERT_TRUE(
      hand.until([&] { return hand.shows(QStringLiteral("The passphrase does not open this key")); }));
  expectWhole(hand, QStringLiteral("new-code"));
  hand.type(QStringLiteral("Your passphrase"), kOtherPassphrase);
  hand.tap(QStringLiteral("Make the code"));
  ASSERT_TRUE(hand.until([&] { return hand.app().joiner.property("code").toString() != before; }));
  hand.tap(QStringLiteral("Make a yard of my own instead"));
  hand.tap(QStringLiteral("Hold to remove the key"));
  ASSERT_TRUE(hand.until([&] { return hand.app().app.state() == App::FirstStart; }))
      << hand.everything().toStdString();
  Person person(hand);
  person.makeYard();
  hand.until([&] { return !hand.app().app.busy(); });
  EXPECT_EQ(hand.app().app.property("people").toList().size(), 1) << "the key that waited is gone";
}

TEST(TwoPhonesTest, WhoIsLetInRightAwayIsInWithoutGivingTheirPassphraseAgain) {
  const QTemporaryDir scratch;
  const std::int64_t utc_ms = folder::momentOfComputer().utc_ms;
  ASSERT_TRUE(QDir(scratch.path()).mkpath(QStringLiteral("first")));
  makeYardOf(scratch.filePath(QStringLiteral("first")), utc_ms);
  folder::Folder yard =
      need(folder::openFolder(scratch.filePath(QStringLiteral("first/yard")).toStdString()));
  const records::SecretKey yard_key = need(folder::openKey(yard, kYardKey, kPassphrase.toStdString()));
  Hand hand(kSpeed, scratch.filePath(QStringLiteral("second")));
  askToJoin(hand, QStringLiteral("Bo Sample"));
  Joiner& joiner = hand.app().joiner;
  const session::LetIn let_in =
      need(session::letIn(yard.store, yard_key, joiner.property("code").toString().toStdString(),
                          "technician", hand.clock().now(), folder::fillBytes));
  joiner.take(QString::fromStdString(let_in.code));
  ASSERT_TRUE(hand.until([&] { return hand.app().app.state() == App::Open; }))
      << hand.everything().toStdString();
  EXPECT_EQ(hand.app().app.person(), QStringLiteral("Bo Sample"));
  EXPECT_EQ(hand.app().app.role(), QStringLiteral("technician"));
  Person person(hand);
  person.addUnit();
}

TEST(TwoPhonesTest, WhoseKeyIsRevokedIsNotAmongThoseWhoMaySign) {
  for (const bool revoked : {false, true}) {
    const QTemporaryDir scratch;
    const session::Moment begun = folder::momentOfComputer();
    makeYardOf(scratch.path(), begun.utc_ms);
    {
      folder::Folder yard = need(folder::openFolder(scratch.filePath(QStringLiteral("yard")).toStdString()));
      const records::SecretKey yard_key = need(folder::openKey(yard, kYardKey, kPassphrase.toStdString()));
      const records::SecretKey key = records::newSecretKey(folder::fillBytes);
      const std::string ask = need(session::askToJoin(key, "Bo Sample", key.id(), begun, folder::fillBytes));
      need(session::letIn(yard.store, yard_key, ask, "safety-lead", begun, folder::fillBytes));
      if (revoked) need(session::revokeSigner(yard.store, yard_key, key.id(), std::nullopt, begun.utc_ms));
    }
    Hand hand(kSpeed, scratch.path(), QStringLiteral("en"), begun);
    ASSERT_TRUE(hand.until([&] { return hand.app().app.state() == App::Locked; }));
    EXPECT_EQ(hand.app().app.property("people").toList().size(), 1);
    EXPECT_EQ(hand.app().app.property("peopleElsewhere").toList().size(), revoked ? 0 : 1);
  }
}

TEST(TwoPhonesTest, TheSafetyLeadJoinsAndConfirmsOnTheirOwnPhoneFromScreenToCameraAndBack) {
  const QTemporaryDir scratch;
  const session::Moment begun = folder::momentOfComputer();
  for (const char* name : {"first", "second"})
    ASSERT_TRUE(QDir(scratch.path()).mkpath(QString::fromLatin1(name)));
  makeYardOf(scratch.filePath(QStringLiteral("first")), begun.utc_ms);
  QProcess other;
  QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
  environment.insert(QString::fromLatin1(kScratch), scratch.path());
  environment.insert(QString::fromLatin1(kBegun), QStringLiteral("%1 %2").arg(begun.at_ms).arg(begun.utc_ms));
  other.setProcessEnvironment(environment);
  other.setProcessChannelMode(QProcess::MergedChannels);
  other.start(QCoreApplication::applicationFilePath(),
              {QStringLiteral("--gtest_filter=OtherPhoneProcessTest.*"),
               QStringLiteral("--gtest_also_run_disabled_tests")});

  Hand hand(kSpeed, scratch.filePath(QStringLiteral("first")), QStringLiteral("en"), begun);
  hand.resize(360, 740);
  Person worker(hand);
  worker.unlock(QStringLiteral("Ada Example"), kPassphrase);

  // The safety lead is let in.
  hand.tap(QStringLiteral("Settings"));
  hand.tap(QStringLiteral("People who may sign"));
  hand.tap(QStringLiteral("Add somebody on their own phone"));
  const QString joining = scratch.filePath(QStringLiteral("join.png"));
  ASSERT_TRUE(
      hand.until([&] { return QFile::exists(joining) || other.state() == QProcess::NotRunning; }, 180000));
  ASSERT_TRUE(QFile::exists(joining)) << other.readAll().toStdString();
  Joiner& joiner = hand.app().joiner;
  const auto isAsked = [&] { return !joiner.property("asking").toMap().isEmpty(); };
  holdOver(hand, QImage(joining), 6, isAsked);
  ASSERT_TRUE(isAsked());
  for (const char* words : {"Bo Sample", "Their key begins with", "Let in only who stands before you"})
    EXPECT_TRUE(hand.until([&] { return hand.shows(QString::fromLatin1(words)); }))
        << words << " is not among " << hand.everything().toStdString();
  expectWhole(hand, QStringLiteral("admitting"));
  hand.tap(QStringLiteral("Safety lead"));
  hand.type(QStringLiteral("The yard's passphrase"), QStringLiteral("quiet gravel"));
  hand.tap(QStringLiteral("Let them in"));
  ASSERT_TRUE(
      hand.until([&] { return hand.shows(QStringLiteral("The passphrase does not open this key")); }));
  expectWhole(hand, QStringLiteral("not-admitted"));
  hand.type(QStringLiteral("The yard's passphrase"), kPassphrase);
  hand.tap(QStringLiteral("Let them in"));
  ASSERT_TRUE(hand.until([&] { return !joiner.property("admission").toString().isEmpty(); }))
      << hand.everything().toStdString();
  EXPECT_TRUE(joiner.property("hasLists").toBool());
  expectWhole(hand, QStringLiteral("admitted"));
  handOver(hand.grab(), scratch.filePath(QStringLiteral("admit.png")));
  hand.tap(QStringLiteral("The other phone has read it"));
  hand.tap(QStringLiteral("Settings"));
  hand.tap(QStringLiteral("People who may sign"));
  EXPECT_TRUE(hand.until([&] { return hand.shows(QStringLiteral("Signs on their own phone")); }))
      << hand.everything().toStdString();
  EXPECT_TRUE(hand.shows(QStringLiteral("Bo Sample")));
  expectWhole(hand, QStringLiteral("people"));
  hand.tap(QStringLiteral("←"));
  hand.tap(QStringLiteral("←"));

  worker.readPlan(QStringLiteral("lockout"));
  worker.begin(QStringLiteral("Lockout and clear zone"), QStringLiteral("Boom down"));
  ASSERT_TRUE(worker.work(QStringLiteral("second")));
  // Nobody else has a key on this phone.
  EXPECT_EQ(hand.find(QStringLiteral("I confirm it")), nullptr);
  expectWhole(hand, QStringLiteral("second-person"));
  hand.tap(QStringLiteral("Ask another phone"));
  ASSERT_TRUE(hand.until([&] { return !hand.app().job.property("ask").toString().isEmpty(); }));
  expectWhole(hand, QStringLiteral("asking"));
  const QImage question = hand.grab();
  handOver(question, scratch.filePath(QStringLiteral("ask.png")));

  hand.tap(QStringLiteral("Read their answer"));
  expectWhole(hand, QStringLiteral("reading"));
  // A code that is no answer says so, and nothing is confirmed.
  holdOver(hand, question, 2,
           [&] { return hand.shows(QStringLiteral("This is no answer from another phone")); });
  EXPECT_EQ(hand.app().job.view().about, QStringLiteral("second"));
  const QString answer = scratch.filePath(QStringLiteral("answer.png"));
  EXPECT_TRUE(
      hand.until([&] { return QFile::exists(answer) || other.state() == QProcess::NotRunning; }, 180000));
  EXPECT_TRUE(other.waitForFinished(60000));
  const QByteArray said = other.readAll();
  ASSERT_EQ(other.exitCode(), 0) << said.toStdString();
  holdOver(hand, QImage(answer), 3, [&] { return hand.app().job.view().about != QLatin1String("second"); });

  ASSERT_TRUE(worker.work());
  expectSealed(hand);
  EXPECT_THAT(hand.app().job.view().marks, ::testing::IsEmpty()) << "neither on the same phone nor from afar";
  hand.tap(QStringLiteral("Show the record"));
  ASSERT_TRUE(hand.until([&] { return hand.shows(QStringLiteral("on their own phone, sealed with key")); }))
      << hand.everything().toStdString();
  EXPECT_TRUE(hand.shows(QStringLiteral("the seal holds")));
  EXPECT_TRUE(hand.shows(QStringLiteral("Bo Sample, safety lead")) ||
              hand.shows(QStringLiteral("Bo Sample, Safety lead")))
      << hand.everything().toStdString();
}

}  // namespace
}  // namespace hingepin::mobile
