// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QByteArray>
#include <QObject>
#include <QQmlEngine>
#include <QString>

namespace hingepin::mobile {

/// The camera of the phone, where it has one.
class Photos : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON
  Q_PROPERTY(bool present READ present CONSTANT)

 public:
  using QObject::QObject;
  [[nodiscard]] bool present() const;
  /// Asks whether the camera may be used, where the system wants that asked; the answer comes as a signal.
  Q_INVOKABLE void askForCamera();
  /// A file that is not there yet, in the app's own cache; once it is kept in the store nobody needs it.
  Q_INVOKABLE QString newPhotoPath() const;
  /// A picture for a practice job: what it stands for, and that it is invented (PNG).
  Q_INVOKABLE QByteArray practicePicture(const QString& words) const;

 Q_SIGNALS:
  void cameraAllowed();
  void cameraRefused();
};

}  // namespace hingepin::mobile
