// SPDX-License-Identifier: GPL-3.0-or-later
#include "cue.h"

#include <QDir>
#include <QFile>
#include <QLocale>
#include <QSoundEffect>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QUrl>
#include <cmath>
#include <cstdint>
#ifdef HINGEPIN_SPEECH
#include <QTextToSpeech>
#else
class QTextToSpeech {};
#endif
#ifdef Q_OS_ANDROID
#include <QCoreApplication>
#include <QJniObject>
#endif

#include "app.h"

namespace hingepin::mobile {
namespace {

Cue* the_cue = nullptr;

/// A beep of 0.25 s at 1 kHz with soft ends, 16 bit mono at 22050 Hz, as a WAV file (RIFF).
QByteArray beep() {
  constexpr int kRate_Hz = 22050;
  constexpr int kSamples = kRate_Hz / 4;
  QByteArray data;
  const auto put = [&](std::uint32_t value, int bytes) {
    for (int index = 0; index < bytes; ++index)
      data.append(static_cast<char>((value >> (8 * index)) & 0xFFU));
  };
  data.append("RIFF");
  put(36 + 2 * kSamples, 4);
  data.append("WAVEfmt ");
  put(16, 4);
  put(1, 2);
  put(1, 2);
  put(kRate_Hz, 4);
  put(2 * kRate_Hz, 4);
  put(2, 2);
  put(16, 2);
  data.append("data");
  put(2 * kSamples, 4);
  for (int index = 0; index < kSamples; ++index) {
    const double ends = std::min({1.0, index / 400.0, (kSamples - index) / 400.0});
    const double value = 24000.0 * ends * std::sin(2.0 * M_PI * 1000.0 * index / kRate_Hz);
    put(static_cast<std::uint32_t>(static_cast<std::uint16_t>(static_cast<std::int16_t>(std::lround(value)))),
        2);
  }
  return data;
}

void vibrate(int ms) {
#ifdef Q_OS_ANDROID
  const QJniObject context = QNativeInterface::QAndroidApplication::context();
  const QJniObject name = QJniObject::fromString(QStringLiteral("vibrator"));
  QJniObject service =
      context.callObjectMethod("getSystemService", "(Ljava/lang/String;)Ljava/lang/Object;", name.object());
  if (service.isValid()) service.callMethod<void>("vibrate", "(J)V", static_cast<jlong>(ms));
#else
  Q_UNUSED(ms)
#endif
}

}  // namespace

Cue::Cue(App& app) : app_(app) {
  the_cue = this;
#ifdef HINGEPIN_SPEECH
  if (!QTextToSpeech::availableEngines().isEmpty() &&
      QTextToSpeech::availableEngines() != QStringList{QStringLiteral("mock")}) {
    voice_ = std::make_unique<QTextToSpeech>();
    const auto speak = [this] {
      voice_->setLocale(QLocale(app_.language()));
      Q_EMIT voiceChanged();
    };
    connect(&app_, &App::languageChanged, this, speak);
    speak();
  }
#endif
}

Cue::~Cue() { the_cue = nullptr; }

Cue* Cue::create(QQmlEngine*, QJSEngine*) {
  QJSEngine::setObjectOwnership(the_cue, QJSEngine::CppOwnership);
  return the_cue;
}

bool Cue::hasVoice() const {
#ifdef HINGEPIN_SPEECH
  // Safety texts are spoken in their own language or not at all.
  return voice_ && voice_->state() != QTextToSpeech::Error &&
         voice_->locale().language() == QLocale(app_.language()).language();
#else
  return false;
#endif
}

void Cue::say(const QString& words) {
#ifdef HINGEPIN_SPEECH
  // Where a long word may break is for the eye; a voice may stop there.
  if (app_.property("speaks").toBool() && hasVoice())
    voice_->say(QString(words).remove(QChar(QChar::SoftHyphen)));
#else
  Q_UNUSED(words)
#endif
}

void Cue::held() { signal(QStringLiteral("held"), 1); }
void Cue::complete() { signal(QStringLiteral("complete"), 2); }
void Cue::again() { signal(QStringLiteral("again"), 3); }

void Cue::signal(const QString& kind, int beeps) {
  Q_EMIT flash(kind);
  vibrate(200 * beeps);
  if (!app_.property("sounds").toBool()) return;
  if (!sound_) {
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::CacheLocation);
    QDir().mkpath(folder);
    const QString path = QDir(folder).filePath(QStringLiteral("beep.wav"));
    QFile file(path);
    if (!file.open(QIODevice::WriteOnly)) return;
    file.write(beep());
    file.close();
    sound_ = std::make_unique<QSoundEffect>();
    sound_->setSource(QUrl::fromLocalFile(path));
  }
  sound_->setLoopCount(beeps);
  sound_->play();
}

}  // namespace hingepin::mobile
