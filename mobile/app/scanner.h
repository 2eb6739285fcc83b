// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QQmlEngine>
#include <QString>
#include <QThread>
#include <QUrl>
#include <QVideoFrame>

namespace hingepin::mobile {

/// Finds QR codes in what a camera sees, or in a picture. Looking is done on a thread of its own: a frame
/// that comes while another is looked at is passed over.
class Scanner : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON

 public:
  /// Not without an argument: QML would then make one of its own beside that of `create`.
  explicit Scanner(QObject* parent);
  ~Scanner() override;
  static Scanner* create(QQmlEngine* engine, QJSEngine* script);

  /// From now on the frames of a video output's sink; null for none.
  Q_INVOKABLE void watch(QObject* sink);
  /// One frame of a camera.
  void look(const QVideoFrame& frame);
  Q_INVOKABLE void lookAtPicture(const QUrl& file);

 Q_SIGNALS:
  void found(const QString& code);
  /// A picture has none; a frame without one is nothing to speak of.
  void nothingFound();

 private:
  /// @param image gives what to look at, on the other thread
  template <class Image>
  void lookAt(Image image, bool says_nothing_found);

  QObject* sink_ = nullptr;
  bool looking_ = false;
  QThread thread_;
  QObject* worker_;
};

}  // namespace hingepin::mobile
