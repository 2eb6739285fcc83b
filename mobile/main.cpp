// SPDX-License-Identifier: GPL-3.0-or-later
#include <QtQml/qqmlextensionplugin.h>
#include <QApplication>
#include <QCommandLineParser>
#include <QDir>
#include <QIcon>
#include <QQmlApplicationEngine>
#include <QQuickStyle>
#include <QQuickWindow>
#include <QStandardPaths>

#include "engine/folder/diagnostics.h"
#include "engine/folder/folder.h"
#include "models.h"
#include "tour.h"

Q_IMPORT_QML_PLUGIN(HingepinPlugin)

namespace {

hingepin::folder::Diagnostics* the_diagnostics = nullptr;
QtMessageHandler the_usual_handler = nullptr;

/// Qt's own warnings go to the log as well: what they say only of our own QML, since paths hold names.
void noteMessage(QtMsgType type, const QMessageLogContext& context, const QString& text) {
  using hingepin::folder::LogLevel;
  const LogLevel level = type == QtDebugMsg     ? LogLevel::Debug
                         : type == QtInfoMsg    ? LogLevel::Information
                         : type == QtWarningMsg ? LogLevel::Warning
                                                : LogLevel::Failure;
  if (the_diagnostics != nullptr) {
    const std::string place =
        text.startsWith(QLatin1String("qrc:/")) ? text.section(QLatin1Char(' '), 0, 0).toStdString() : "";
    the_diagnostics->note(level, context.category, place.empty() ? "message" : place);
  }
  the_usual_handler(type, context, text);
}

}  // namespace

int main(int argc, char** argv) {
  QCoreApplication::setOrganizationName(QStringLiteral("Hingepin"));
  QCoreApplication::setApplicationName(QStringLiteral("Hingepin"));
  QCoreApplication::setApplicationVersion(QStringLiteral(HINGEPIN_VERSION));
  const QApplication application(argc, argv);
  QGuiApplication::setDesktopFileName(QStringLiteral("org.hingepin.app"));
  QQuickStyle::setStyle(QStringLiteral("Basic"));

  QCommandLineParser parser;
  parser.setApplicationDescription(
      QStringLiteral("Takes a technician through the calibration of a wheel loader's scale and stops."));
  parser.addHelpOption();
  parser.addVersionOption();
  const QCommandLineOption folder(QStringLiteral("folder"), QStringLiteral("Where the yard is kept."),
                                  QStringLiteral("path"),
                                  QStandardPaths::writableLocation(QStandardPaths::AppDataLocation));
  parser.addOption(folder);
  const QCommandLineOption pictures(
      QStringLiteral("pictures"),
      QStringLiteral(
          "Shows the demo yard to nobody: keeps a picture of its screens and a record in this folder."),
      QStringLiteral("folder"));
  parser.addOption(pictures);
  parser.process(application);

  const QString path = QDir(parser.value(folder)).absolutePath();
  if (!QDir().mkpath(path)) {
    qCritical("%s: this folder can't be made. Name another with --folder.", qUtf8Printable(path));
    return 2;
  }
  const auto diagnostics = hingepin::folder::Diagnostics::open(
      {.path = QDir(path).filePath(QStringLiteral("log")).toStdString(),
       .utc_ms = [] { return hingepin::folder::momentOfComputer().utc_ms; }});
  if (diagnostics) {
    (*diagnostics)->catchCrashes();
    the_diagnostics = diagnostics->get();
  }
  the_usual_handler = qInstallMessageHandler(noteMessage);
  hingepin::mobile::Models models(
      {.folder = path, .clock = hingepin::folder::momentOfComputer, .diagnostics = the_diagnostics});
  QQmlApplicationEngine engine;
  engine.addImportPath(QStringLiteral("qrc:/qt/qml"));
  engine.load(QUrl(QStringLiteral("qrc:/qt/qml/Hingepin/Main.qml")));
  if (engine.rootObjects().isEmpty()) return 1;
  if (parser.isSet(pictures)) {
    auto* const window = qobject_cast<QQuickWindow*>(engine.rootObjects().first());
    return window == nullptr ? 1 : hingepin::mobile::takePictures(models, *window, parser.value(pictures));
  }
  return QApplication::exec();
}
