// SPDX-License-Identifier: GPL-3.0-or-later
#include "tour.h"

#include <QCoreApplication>
#include <QDir>
#include <QElapsedTimer>
#include <QEventLoop>
#include <QTimer>
#include <functional>

namespace hingepin::mobile {
namespace {

bool until(const std::function<bool()>& condition, int ms) {
  QElapsedTimer timer;
  timer.start();
  while (!condition() && timer.elapsed() < ms) {
    QEventLoop loop;
    QTimer::singleShot(20, &loop, &QEventLoop::quit);
    loop.exec();
  }
  return condition();
}

}  // namespace

int takePictures(Models& models, QQuickWindow& window, const QString& folder) {
  QDir().mkpath(folder);
  constexpr int kSettle_ms = 500;
  constexpr int kPatience_ms = 120000;
  bool all = true;
  int number = 0;
  const auto picture = [&](const QString& name) {
    until([&] { return !models.app.busy(); }, kPatience_ms);
    until([] { return false; }, kSettle_ms);
    const QString path =
        QDir(folder).filePath(QStringLiteral("%1-%2.png").arg(++number, 2, 10, QLatin1Char('0')).arg(name));
    all = window.grabWindow().save(path) && all;
  };
  const auto open = [&](const QString& page, const QVariantMap& properties) {
    QMetaObject::invokeMethod(&window, "open", Q_ARG(QString, page), Q_ARG(QVariant, properties));
  };
  window.resize(412, 915);
  until([&] { return models.app.state() != App::Starting; }, kPatience_ms);
  picture(QStringLiteral("first-start"));
  models.app.openDemo();
  if (!until([&] { return models.app.state() == App::Locked; }, kPatience_ms)) return 1;
  picture(QStringLiteral("who-is-there"));
  models.app.unlock(QStringLiteral("technician"), {});
  if (!until(
          [&] {
            return models.app.state() == App::Open && !models.yard.property("units").toList().isEmpty();
          },
          kPatience_ms))
    return 1;
  picture(QStringLiteral("yard"));
  const QVariantList units = models.yard.property("units").toList();
  const QString unit = QStringLiteral("L-27");
  open(QStringLiteral("UnitPage"), {{QStringLiteral("unit"), unit}});
  picture(QStringLiteral("unit"));
  const QVariantList records = models.yard.property("records").toList();
  open(QStringLiteral("BeginPage"),
       {{QStringLiteral("unit"), unit},
        {QStringLiteral("procedure"), QStringLiteral("after-attachment-change")}});
  picture(QStringLiteral("begin"));
  const QVariantList running = models.yard.property("running").toList();
  if (!running.isEmpty()) {
    models.job.reopen(running.last().toMap().value(QStringLiteral("id")).toString());
    until([&] { return models.job.isOpen(); }, kPatience_ms);
    open(QStringLiteral("JobPage"), {});
    picture(QStringLiteral("job-interrupted"));
    models.job.resume();
    until([&] { return models.job.view().ask != QLatin1String("resume"); }, kPatience_ms);
    picture(QStringLiteral("job-step"));
  }
  for (const QVariant& record : records) {
    const QVariantMap map = record.toMap();
    if (map.value(QStringLiteral("procedure")).toString() != QLatin1String("after-attachment-change"))
      continue;
    const QString name = map.value(QStringLiteral("record")).toString();
    open(QStringLiteral("RecordPage"), {{QStringLiteral("record"), name}});
    picture(QStringLiteral("record"));
    models.exporter.setFolder(folder);
    const auto saved = [&](const auto& save) {
      models.exporter.clear();
      save();
      return until([&] { return !models.exporter.property("saved").toString().isEmpty(); }, kPatience_ms);
    };
    all = saved([&] { models.exporter.document(name); }) && all;
    for (const char* const kind : {"pdf", "html", "dcc"}) {
      all = saved([&] { models.exporter.certificate(name, QLatin1String(kind), {}); }) && all;
    }
    open(QStringLiteral("CertificatePage"), {{QStringLiteral("record"), name}});
    picture(QStringLiteral("certificate"));
    break;
  }
  return all ? 0 : 1;
}

}  // namespace hingepin::mobile
