// SPDX-License-Identifier: GPL-3.0-or-later
// Says "usable" when its first frame is on the screen, and ends.
#include <QApplication>
#include <QQmlApplicationEngine>
#include <QQuickStyle>
#include <QQuickWindow>
#include <cstdio>

int main(int argc, char** argv) {
  const QApplication application(argc, argv);
  QQuickStyle::setStyle(QStringLiteral("Basic"));
  QQmlApplicationEngine engine;
  engine.addImportPath(QStringLiteral("qrc:/qt/qml"));
  engine.load(QUrl(QStringLiteral("qrc:/qt/qml/Empty/EmptyWindow.qml")));
  if (engine.rootObjects().isEmpty()) return 1;
  auto* const window = qobject_cast<QQuickWindow*>(engine.rootObjects().first());
  QObject::connect(window, &QQuickWindow::frameSwapped, [] {
    std::puts("usable");
    std::fflush(stdout);
    QCoreApplication::quit();
  });
  return QApplication::exec();
}
