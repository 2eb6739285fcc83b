// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QElapsedTimer>
#include <QObject>
#include <QPointF>
#include <QQmlEngine>
#include <QRectF>
#include <QString>
#include <QTcpSocket>
#include <QTimer>
#include <QVariantList>
#include <QVariantMap>
#include <memory>
#include <optional>

#include "engine/session/live.h"
#include "engine/session/practice_loader.h"

class QXYSeries;

namespace hingepin::mobile {

class App;
class JobRunner;

/// Live readings of the machine, from the source that was chosen, and what the engine makes of them for the
/// step on the screen. What the engine calls held or complete goes on by itself; a caution never does.
class Live : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON
  Q_PROPERTY(QString source READ source NOTIFY sourceChanged)
  Q_PROPERTY(QString address MEMBER address_ NOTIFY sourceChanged)
  Q_PROPERTY(QString mishap READ mishap NOTIFY sourceChanged)
  Q_PROPERTY(QString mishapText READ mishapText NOTIFY sourceChanged)
  Q_PROPERTY(bool connected READ connected NOTIFY changed)
  Q_PROPERTY(bool alive MEMBER alive_ NOTIFY changed)
  Q_PROPERTY(QString trouble MEMBER trouble_ NOTIFY changed)
  Q_PROPERTY(QString fault MEMBER fault_ NOTIFY changed)
  Q_PROPERTY(QString value MEMBER value_ NOTIFY changed)
  Q_PROPERTY(QString valueText MEMBER value_text_ NOTIFY changed)
  Q_PROPERTY(bool steady MEMBER steady_ NOTIFY changed)
  Q_PROPERTY(bool held MEMBER held_ NOTIFY changed)
  Q_PROPERTY(QString instrument MEMBER instrument_ NOTIFY changed)
  Q_PROPERTY(QString travel MEMBER travel_ NOTIFY changed)
  Q_PROPERTY(double progress MEMBER progress_ NOTIFY changed)
  Q_PROPERTY(bool angleKnown MEMBER angle_known_ NOTIFY changed)
  Q_PROPERTY(double boomAngle MEMBER boom_deg_ NOTIFY changed)
  Q_PROPERTY(double wantedAngle MEMBER wanted_deg_ NOTIFY changed)
  Q_PROPERTY(bool angleWanted MEMBER angle_wanted_ NOTIFY changed)
  Q_PROPERTY(double rowsPerSecond MEMBER rows_per_second_ NOTIFY changed)
  Q_PROPERTY(QString pressure MEMBER pressure_ NOTIFY changed)
  Q_PROPERTY(QVariantMap machine MEMBER machine_ NOTIFY machineChanged)

 public:
  Live(App& app, JobRunner& job);
  ~Live() override;
  static Live* create(QQmlEngine* engine, QJSEngine* script);

  [[nodiscard]] QString source() const { return source_; }
  [[nodiscard]] QString mishap() const { return mishap_; }
  [[nodiscard]] QString mishapText() const;
  [[nodiscard]] bool connected() const;

  /// "none", "practice" (the simulator; practice units only), "file" (a lift log played back), "line"
  /// (host:port).
  Q_INVOKABLE void open(const QString& source, const QString& address = {});
  Q_INVOKABLE void takeValue();
  /// The practice loader does what the step asks for; it has no levers of its own.
  Q_INVOKABLE void move();
  /// Practice: what may happen to the loader, {value, text}; and lets that happen from its next movement on,
  /// "" for nothing any more.
  Q_INVOKABLE QVariantList mishaps() const;
  Q_INVOKABLE void suffer(const QString& mishap);
  /// Practice: nothing comes for some seconds.
  Q_INVOKABLE void dropOut(double s);
  /// The running pass into a chart's series, angle in degrees (or the sensor's reading) and pressure in bar
  /// or psi. @return what it spans
  Q_INVOKABLE QRectF fill(QObject* series) const;

 Q_SIGNALS:
  void sourceChanged();
  void changed();
  void machineChanged();
  void rowsCame();
  /// What somebody with both hands on the levers has to notice: the pose is held, the pass is complete, it
  /// has to be done once more.
  void poseHeld();
  void passComplete();
  void onceMore();

 private:
  void tick();
  void feed(std::string_view bytes);
  void stepChanged();
  void connectLine();
  void drawMachine();
  /// The simulated loader never speaks in a job on a real machine.
  [[nodiscard]] bool isOutOfPlace() const;
  [[nodiscard]] double practiceTime_s() const;

  App& app_;
  JobRunner& job_;
  QTimer timer_;
  QString source_ = QStringLiteral("none");
  QString address_;
  QString mishap_;
  QString refused_;  ///< why the loader did not move
  std::unique_ptr<session::Feed> feed_;
  std::unique_ptr<session::Watch> watch_;
  std::unique_ptr<session::PracticeLoader> loader_;
  std::optional<session::KnownLine> line_;
  double rod_share_ = 0;
  std::string line_of_;  ///< the job for which `line_` holds
  std::unique_ptr<QTcpSocket> socket_;
  QString played_;  ///< of a file: what is still to come, and from when on
  qsizetype played_at_ = 0;
  double played_from_s_ = 0;
  double zero_ms_ = 0;
  bool taking_ = false;
  bool alive_ = false;
  QString trouble_, fault_, value_, value_text_, instrument_, pressure_;
  QString travel_ = QStringLiteral("still");
  bool steady_ = false;
  bool held_ = false;
  double progress_ = 0;
  bool angle_known_ = false;
  double boom_deg_ = 0;
  double wanted_deg_ = 0;
  bool angle_wanted_ = false;
  double rows_per_second_ = 0;
  QVariantMap machine_;
  double drawn_boom_ = 1e9;
  double drawn_share_ = 1e9;
};

}  // namespace hingepin::mobile
