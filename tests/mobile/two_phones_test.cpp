// SPDX-License-Identifier: GPL-3.0-or-later
// Two running apps, each with a yard folder and a key of its own: the screen of one is what the camera of the
// other sees.
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
#include <random>

#include "engine/folder/folder.h"
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

/// An invented yard on two phones: the technician's key on the first, the safety lead's on the second, and
/// both on the list that both phones have.
void makeTwoPhones(const QString& first_path, const QString& second_path, std::int64_t utc_ms) {
  const auto folderAt = [](const QString& path) {
    QFile settings(path + QStringLiteral("/settings.ini"));
    if (!settings.open(QIODevice::WriteOnly)) throw std::runtime_error("settings");
    settings.write("[General]\nopen=yard\nlanguage=en\nsounds=false\n");
    return need(folder::openFolder((path + QStringLiteral("/yard")).toStdString()));
  };
  folder::Folder first = folderAt(first_path);
  folder::Folder second = folderAt(second_path);
  const folder::NamedKey technician = need(folder::makeKey(first, "ada-example", kPassphrase.toStdString()));
  const folder::NamedKey lead = need(folder::makeKey(second, "bo-sample", kOtherPassphrase.toStdString()));
  need(folder::makeKey(first, "yard", kPassphrase.toStdString()));
  const records::SecretKey yard_key = need(folder::openKey(first, "yard", kPassphrase.toStdString()));
  const auto root = need(session::makeYard(
      first.store, yard_key,
      {{.key = technician.key, .role = "technician", .valid_from_utc_ms = utc_ms, .valid_until_utc_ms = {}},
       {.key = lead.key, .role = "safety-lead", .valid_from_utc_ms = utc_ms, .valid_until_utc_ms = {}}},
      utc_ms));
  for (const records::SealedSigners& list : need(first.store.signersLists()))
    need(second.store.putSigners(list, utc_ms));
  need(second.store.acceptRoot(root));
  for (folder::Folder* const each : {&first, &second}) {
    for (const auto& [key, name] :
         {std::pair(technician.key, "Ada Example"), std::pair(lead.key, "Bo Sample")})
      (void)need(session::keepName(each->store, records::thumbprint(key), name, folder::fillBytes, utc_ms));
  }
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

/// No test of its own: the phone of the safety lead.
TEST(OtherPhoneProcessTest, DISABLED_ConfirmsWhatItIsAsked) {
  const QString scratch = qEnvironmentVariable(kScratch);
  Hand hand(kSpeed, scratch + QStringLiteral("/second"), QStringLiteral("en"),
            begunAt(qEnvironmentVariable(kBegun)));
  hand.resize(360, 740);
  Person lead(hand);
  lead.unlock(QStringLiteral("Bo Sample"), kOtherPassphrase);
  hand.tap(QStringLiteral("Confirm for another phone"));
  const QString asking = scratch + QStringLiteral("/ask.png");
  ASSERT_TRUE(hand.until([&] { return QFile::exists(asking); }, 120000));
  Confirmer& confirmer = hand.app().confirmer;
  holdOver(hand, QImage(asking), 1, [&] { return !confirmer.property("asked").toMap().isEmpty(); });
  for (const char* words : {"L-27", "Lockout and clear zone", "Second person: look at isolator",
                            "Ada Example asks", "Go to the machine and look for yourself"})
    EXPECT_TRUE(hand.until([&] { return hand.shows(QString::fromLatin1(words)); }, 5000))
        << words << " is not among " << hand.everything().toStdString();
  expectWhole(hand, QStringLiteral("asked"));
  hand.tap(QStringLiteral("I confirm it"));
  ASSERT_TRUE(hand.until([&] { return hand.find(QStringLiteral("The other phone has read it")) != nullptr; }))
      << hand.everything().toStdString();
  expectWhole(hand, QStringLiteral("answered"));
  handOver(hand.grab(), scratch + QStringLiteral("/answer.png"));
}

TEST(TwoPhonesTest, TheSafetyLeadConfirmsOnTheirOwnPhoneFromScreenToCameraAndBack) {
  const QTemporaryDir scratch;
  const session::Moment begun = folder::momentOfComputer();
  for (const char* name : {"first", "second"})
    ASSERT_TRUE(QDir(scratch.path()).mkpath(QString::fromLatin1(name)));
  makeTwoPhones(scratch.filePath(QStringLiteral("first")), scratch.filePath(QStringLiteral("second")),
                begun.utc_ms);
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
