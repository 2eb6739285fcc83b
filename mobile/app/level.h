// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAccelerometer>
#include <QObject>
#include <QQmlEngine>
#include <QString>
#include <QTimer>
#include <optional>
#include <vector>

#include "engine/session/level.h"

namespace hingepin::mobile {

class App;

/// The phone laid on a surface: measured, turned half round, measured again. The engine does the mathematics.
class Level : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON
  Q_PROPERTY(bool present READ present CONSTANT)
  Q_PROPERTY(bool measuring MEMBER measuring_ NOTIFY changed)
  Q_PROPERTY(bool first MEMBER has_first_ NOTIFY changed)
  Q_PROPERTY(QString result MEMBER result_ NOTIFY changed)
  /// The slope in degrees as a person of this language types it; "" before there is one.
  Q_PROPERTY(QString typed MEMBER typed_ NOTIFY changed)
  Q_PROPERTY(QString trouble MEMBER trouble_ NOTIFY changed)

 public:
  explicit Level(App& app);
  ~Level() override;
  static Level* create(QQmlEngine* engine, QJSEngine* script);

  [[nodiscard]] bool present() const;
  Q_INVOKABLE void measure();
  Q_INVOKABLE void again();
  /// Samples from elsewhere than the phone's sensor: for a phone that has none in a test.
  void take(std::vector<session::AccelerationSample> samples);

 Q_SIGNALS:
  void changed();

 private:
  void finish();

  App& app_;
  QAccelerometer sensor_;
  QTimer timer_;
  std::vector<session::AccelerationSample> samples_;
  std::optional<session::LevelReading> first_;
  bool measuring_ = false;
  bool has_first_ = false;
  QString result_, typed_, trouble_;
};

}  // namespace hingepin::mobile
