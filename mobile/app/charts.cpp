// SPDX-License-Identifier: GPL-3.0-or-later
#include "charts.h"

#include <QAreaSeries>
#include <QBrush>
#include <QXYSeries>
#include <algorithm>
#include <cmath>

#include "app.h"
#include "job_runner.h"
#include "text.h"

#include "engine/units/degree.h"

namespace hingepin::mobile {
namespace {

Charts* the_charts = nullptr;

QString key(const char* name) { return QString::fromLatin1(name); }

double shownPressure(double value_Pa, UnitSystem system) {
  return inSystem(Amount{value_Pa / 1e5, "bar", 1}, system).value;
}

QList<QPointF> shownPoints(const std::vector<session::PressurePoint>& points, UnitSystem system) {
  QList<QPointF> shown;
  shown.reserve(static_cast<qsizetype>(points.size()));
  for (const session::PressurePoint& point : points)
    shown.append({point.boom_angle_rad / kDegree, shownPressure(point.pressure_Pa, system)});
  return shown;
}

/// What can be said of a curve in words.
QVariantMap extentOf(const QList<QPointF>& points) {
  if (points.isEmpty()) return {};
  const auto [left, right] = std::ranges::minmax(points, {}, &QPointF::x);
  const auto [low, high] = std::ranges::minmax(points, {}, &QPointF::y);
  return {{key("left"), left.x()}, {key("right"), right.x()}, {key("low"), low.y()}, {key("high"), high.y()}};
}

QString paceOf(calibration::Pace pace) {
  return pace == calibration::Pace::Slow ? QStringLiteral("slow") : QStringLiteral("fast");
}

QString loadOf(calibration::LiftKind kind) {
  return kind == calibration::LiftKind::Empty      ? QStringLiteral("empty")
         : kind == calibration::LiftKind::TestMass ? QStringLiteral("test-mass")
                                                   : QStringLiteral("load");
}

void put(QObject* series, const QList<QPointF>& points) {
  if (auto* const line = qobject_cast<QXYSeries*>(series)) line->replace(points);
}

}  // namespace

Charts::Charts(App& app, JobRunner& job) : app_(app), job_(job) { the_charts = this; }
Charts::~Charts() { the_charts = nullptr; }
Charts* Charts::create(QQmlEngine*, QJSEngine*) {
  QJSEngine::setObjectOwnership(the_charts, QJSEngine::CppOwnership);
  return the_charts;
}

QString Charts::pressureUnit() const {
  return app_.system() == UnitSystem::UsCustomary ? QStringLiteral("psi") : QStringLiteral("bar");
}

void Charts::clear() {
  passes_.clear();
  residuals_.clear();
  tare_.clear();
  proof_.clear();
  pass_points_.clear();
  residual_points_.clear();
  tare_points_.clear();
  low_points_.clear();
  high_points_.clear();
  ready_ = false;
}

void Charts::readJob() {
  const auto job = job_.job();
  if (!job) return;
  read([job](Desk& desk) -> Expected<session::JobCurves> {
    return session::jobCurvesOf(desk.folder->store, *job, folder::edge());
  });
}

void Charts::readRecord(const QString& record) {
  read([record = plain(record)](Desk& desk) {
    return session::recordCurvesOf(desk.folder->store, record, folder::edge());
  });
}

void Charts::read(std::function<Expected<session::JobCurves>(Desk&)> work) {
  clear();
  Q_EMIT changed();
  app_.backend().ask(this, std::move(work),
                     [this, asked = ++asked_](const Expected<session::JobCurves>& curves) {
                       if (asked != asked_) return;
                       if (!curves) {
                         app_.tell(curves.error());
                       } else {
                         take(*curves);
                       }
                       ready_ = true;
                       Q_EMIT changed();
                     });
}

void Charts::take(const session::JobCurves& curves) {
  const UnitSystem system = app_.system();
  if (curves.lift) {
    for (const session::EmptyPass& pass : curves.lift->passes) {
      pass_points_.push_back(shownPoints(pass.readings, system));
      QVariantMap words = extentOf(pass_points_.back());
      words[key("pace")] = paceOf(pass.pace);
      words[key("lowering")] = pass.lowering;
      words[key("load")] = QStringLiteral("empty");
      passes_.append(words);
    }
    for (const session::PassResiduals& pass : curves.lift->residuals) {
      residual_points_.push_back(shownPoints(pass.points, system));
      const QList<QPointF>& points = residual_points_.back();
      QVariantMap words = extentOf(points);
      double squares = 0;
      for (const QPointF& point : points) squares += point.y() * point.y();
      words[key("deviation")] =
          points.isEmpty() ? 0.0 : std::sqrt(squares / static_cast<double>(points.size()));
      words[key("pace")] = paceOf(pass.pace);
      words[key("lowering")] = pass.lowering;
      words[key("load")] = loadOf(pass.kind);
      residuals_.append(words);
    }
    tare_points_ = shownPoints(curves.lift->tare, system);
    low_points_ = shownPoints(curves.lift->tare_low, system);
    high_points_ = shownPoints(curves.lift->tare_high, system);
    if (!tare_points_.isEmpty()) {
      tare_ = extentOf(tare_points_);
      double widest = 0;
      for (qsizetype index = 0; index < high_points_.size(); ++index)
        widest = std::max(widest, (high_points_[index].y() - low_points_[index].y()) / 2);
      tare_[key("band")] = widest;
    }
  }
  const session::HistoryPoint& proof = curves.proof;
  if (proof.reference_kg && !proof.indications_kg.empty()) {
    QVariantList errors;
    for (const double indication_kg : proof.indications_kg)
      errors.append((indication_kg - *proof.reference_kg) / *proof.reference_kg * 100.0);
    proof_ = {{key("errors"), errors},
              {key("mean"), proof.error_percent.value_or(0.0)},
              {key("limit"), proof.error_limit_percent.value_or(0.0)}};
  }
}

void Charts::fillPass(QObject* series, int curve) const {
  put(series, pass_points_.at(static_cast<std::size_t>(curve)));
}

void Charts::fillResidual(QObject* series, int curve) const {
  put(series, residual_points_.at(static_cast<std::size_t>(curve)));
}

void Charts::fillTare(QObject* series, QObject* low, QObject* high) const {
  put(series, tare_points_);
  put(low, low_points_);
  put(high, high_points_);
}

void Charts::hatch(QObject* area, const QColor& color) {
  auto* const series = qobject_cast<QAreaSeries*>(area);
  if (series == nullptr) return;
  series->setBrush(QBrush(color, Qt::BDiagPattern));
  series->setPen(QPen(color, 1));
}

}  // namespace hingepin::mobile
