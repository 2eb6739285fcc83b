// SPDX-License-Identifier: GPL-3.0-or-later
// Charts want a QApplication, so that GoogleTest's own main won't do.
#include <gtest/gtest.h>

#include <QtQml/qqmlextensionplugin.h>
#include <QApplication>
#include <QQuickStyle>

Q_IMPORT_QML_PLUGIN(HingepinPlugin)

int main(int argc, char** argv) {
  ::testing::InitGoogleTest(&argc, argv);
  const QApplication application(argc, argv);
  QQuickStyle::setStyle(QStringLiteral("Basic"));
  return RUN_ALL_TESTS();
}
