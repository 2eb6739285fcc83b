// SPDX-License-Identifier: GPL-3.0-or-later
// Charts want a QApplication, so that GoogleTest's own main won't do.
#include <gtest/gtest.h>

#include <QtQml/qqmlextensionplugin.h>
#include <QApplication>
#include <QQuickStyle>

Q_IMPORT_QML_PLUGIN(HingepinPlugin)

namespace {

QtMessageHandler before = nullptr;

/// What QML only finds out while it runs: a name that is not there, a value of the wrong kind.
void failOnScriptErrors(QtMsgType type, const QMessageLogContext& context, const QString& text) {
  if (type == QtWarningMsg && text.startsWith(QLatin1String("qrc:/qt/qml/Hingepin/")))
    ADD_FAILURE() << text.toStdString();
  before(type, context, text);
}

}  // namespace

int main(int argc, char** argv) {
  ::testing::InitGoogleTest(&argc, argv);
  const QApplication application(argc, argv);
  QQuickStyle::setStyle(QStringLiteral("Basic"));
  before = qInstallMessageHandler(failOnScriptErrors);
  return RUN_ALL_TESTS();
}
