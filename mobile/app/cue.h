// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QQmlEngine>
#include <QString>
#include <memory>

class QSoundEffect;
class QTextToSpeech;

namespace hingepin::mobile {

class App;

/// What reaches somebody who has both hands on the levers: a voice where there is one, a sound, a vibration,
/// and a flash of the whole screen for whoever wears ear defenders.
class Cue : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON
  Q_PROPERTY(bool hasVoice READ hasVoice NOTIFY voiceChanged)

 public:
  explicit Cue(App& app);
  ~Cue() override;
  static Cue* create(QQmlEngine* engine, QJSEngine* script);

  [[nodiscard]] bool hasVoice() const;
  Q_INVOKABLE void say(const QString& words);
  /// A pose is held or a hold is over.
  Q_INVOKABLE void held();
  /// A pass is complete.
  Q_INVOKABLE void complete();
  /// It has to be done again.
  Q_INVOKABLE void again();

 Q_SIGNALS:
  void voiceChanged();
  /// `kind`: "held", "complete", "again".
  void flash(const QString& kind);

 private:
  void signal(const QString& kind, int beeps);

  App& app_;
  std::unique_ptr<QSoundEffect> sound_;
  std::unique_ptr<QTextToSpeech> voice_;
};

}  // namespace hingepin::mobile
