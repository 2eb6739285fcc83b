// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QList>
#include <QObject>
#include <QPointF>
#include <QQmlEngine>
#include <QString>
#include <QVariantList>
#include <QVariantMap>
#include <functional>
#include <vector>

#include "backend.h"
#include "engine/session/lift_curves.h"

namespace hingepin::mobile {

class App;
class JobRunner;

/// What the charts of a job show: its passes, the tare that was fitted to them, what the fit leaves, and its
/// proof. Pressures in bar or psi, angles in degrees.
class Charts : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON
  Q_PROPERTY(QVariantList passes MEMBER passes_ NOTIFY changed)
  Q_PROPERTY(QVariantList residuals MEMBER residuals_ NOTIFY changed)
  Q_PROPERTY(QVariantMap tare MEMBER tare_ NOTIFY changed)
  Q_PROPERTY(QVariantMap proof MEMBER proof_ NOTIFY changed)
  Q_PROPERTY(QString pressureUnit READ pressureUnit NOTIFY changed)
  Q_PROPERTY(bool ready MEMBER ready_ NOTIFY changed)

 public:
  Charts(App& app, JobRunner& job);
  ~Charts() override;
  static Charts* create(QQmlEngine* engine, QJSEngine* script);

  [[nodiscard]] QString pressureUnit() const;

  /// Of the job on the screen, as far as it is done.
  Q_INVOKABLE void readJob();
  Q_INVOKABLE void readRecord(const QString& record);
  /// Into a chart's series. `curve` counts within `passes` or `residuals`.
  Q_INVOKABLE void fillPass(QObject* series, int curve) const;
  Q_INVOKABLE void fillResidual(QObject* series, int curve) const;
  Q_INVOKABLE void fillTare(QObject* series, QObject* low, QObject* high) const;
  /// The area between two lines is hatched, so that no colour has to be told from another.
  Q_INVOKABLE static void hatch(QObject* area, const QColor& color);

 Q_SIGNALS:
  void changed();

 private:
  void read(std::function<Expected<session::JobCurves>(Desk&)> work);
  void take(const session::JobCurves& curves);
  void clear();

  App& app_;
  JobRunner& job_;
  QVariantList passes_, residuals_;
  QVariantMap tare_, proof_;
  bool ready_ = false;
  int asked_ = 0;
  std::vector<QList<QPointF>> pass_points_, residual_points_;
  QList<QPointF> tare_points_, low_points_, high_points_;
};

}  // namespace hingepin::mobile
