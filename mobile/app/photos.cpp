// SPDX-License-Identifier: GPL-3.0-or-later
#include "photos.h"

#include <QBuffer>
#include <QCameraDevice>
#include <QDir>
#include <QImage>
#include <QMediaDevices>
#include <QPainter>
#include <QStandardPaths>
#include <QUuid>
#if QT_VERSION >= QT_VERSION_CHECK(6, 5, 0)
#include <QCoreApplication>
#include <QPermissions>
#endif

namespace hingepin::mobile {

bool Photos::present() const { return !QMediaDevices::videoInputs().isEmpty(); }

void Photos::askForCamera() {
#if QT_VERSION >= QT_VERSION_CHECK(6, 5, 0)
  QCoreApplication::instance()->requestPermission(QCameraPermission(), this,
                                                  [this](const QPermission& camera) {
                                                    if (camera.status() == Qt::PermissionStatus::Granted) {
                                                      Q_EMIT cameraAllowed();
                                                    } else {
                                                      Q_EMIT cameraRefused();
                                                    }
                                                  });
#else
  // Up to Qt 6.4 Qt Multimedia asks when the camera opens.
  Q_EMIT cameraAllowed();
#endif
}

QString Photos::newPhotoPath() const {
  const QString folder = QStandardPaths::writableLocation(QStandardPaths::CacheLocation);
  QDir().mkpath(folder);
  return QDir(folder).filePath(QUuid::createUuid().toString(QUuid::WithoutBraces) + QStringLiteral(".jpg"));
}

QByteArray Photos::practicePicture(const QString& words) const {
  QImage image(480, 320, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  painter.setPen(Qt::black);
  painter.drawRect(4, 4, 471, 311);
  QFont font = painter.font();
  font.setPixelSize(22);
  painter.setFont(font);
  painter.drawText(QRect(20, 20, 440, 280), Qt::TextWordWrap | Qt::AlignCenter,
                   tr("Practice picture, invented") + QStringLiteral("\n\n") + words);
  painter.end();
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  image.save(&buffer, "PNG");
  return bytes;
}

}  // namespace hingepin::mobile
