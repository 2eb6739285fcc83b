// SPDX-License-Identifier: GPL-3.0-or-later
#include "scanner.h"

#include <QImage>
#include <QImageReader>
#include <QSize>
#include <QVideoSink>
#include <algorithm>
#include <utility>

#include "qr.h"

namespace hingepin::mobile {
namespace {

Scanner* the_scanner = nullptr;

/// Of a picture along its longer side: more shows no code better and takes long.
constexpr int kMostPixels = 2400;

QImage pictureAt(const QString& path) {
  QImageReader reader(path);
  reader.setAutoTransform(true);
  const QSize size = reader.size();
  if (std::max(size.width(), size.height()) > kMostPixels)
    reader.setScaledSize(size.scaled(kMostPixels, kMostPixels, Qt::KeepAspectRatio));
  return reader.read();
}

/// A frame's light and dark: most cameras give that apart from the colours. No image for a format that is not
/// known here, or a frame that stays with the graphics processor.
QImage greyOf(QVideoFrame frame) {
  if (!frame.map(QVideoFrame::ReadOnly)) return {};
  const int width = frame.width();
  const int height = frame.height();
  const auto plane = [&](QImage::Format format) {
    return QImage(frame.bits(0), width, height, frame.bytesPerLine(0), format);
  };
  const auto everySecond = [&](int first) {
    QImage grey(width, height, QImage::Format_Grayscale8);
    for (int y = 0; y < height; ++y) {
      const uchar* const from = frame.bits(0) + qsizetype{y} * frame.bytesPerLine(0) + first;
      uchar* const to = grey.scanLine(y);
      for (int x = 0; x < width; ++x) to[x] = from[2 * x];
    }
    return grey;
  };
  QImage grey;
  switch (frame.pixelFormat()) {
    case QVideoFrameFormat::Format_NV12:
    case QVideoFrameFormat::Format_NV21:
    case QVideoFrameFormat::Format_YUV420P:
    case QVideoFrameFormat::Format_YUV422P:
    case QVideoFrameFormat::Format_YV12:
    case QVideoFrameFormat::Format_Y8:
      grey = plane(QImage::Format_Grayscale8).copy();
      break;
    case QVideoFrameFormat::Format_YUYV:
      grey = everySecond(0);
      break;
    case QVideoFrameFormat::Format_UYVY:
      grey = everySecond(1);
      break;
    case QVideoFrameFormat::Format_Jpeg:
      grey = QImage::fromData(frame.bits(0), frame.mappedBytes(0)).convertToFormat(QImage::Format_Grayscale8);
      break;
    default:
      if (const auto format = QVideoFrameFormat::imageFormatFromPixelFormat(frame.pixelFormat());
          format != QImage::Format_Invalid)
        grey = plane(format).convertToFormat(QImage::Format_Grayscale8);
  }
  frame.unmap();
  return grey;
}

}  // namespace

Scanner::Scanner(QObject* parent) : QObject(parent), worker_(new QObject) {
  the_scanner = this;
  worker_->moveToThread(&thread_);
  thread_.setObjectName(QStringLiteral("scanner"));
  connect(&thread_, &QThread::finished, worker_, &QObject::deleteLater);
  thread_.start();
}

Scanner::~Scanner() {
  thread_.quit();
  thread_.wait();
  the_scanner = nullptr;
}

Scanner* Scanner::create(QQmlEngine*, QJSEngine*) {
  QJSEngine::setObjectOwnership(the_scanner, QJSEngine::CppOwnership);
  return the_scanner;
}

void Scanner::watch(QObject* sink) {
  if (sink_ != nullptr) disconnect(sink_, nullptr, this, nullptr);
  sink_ = sink;
  if (auto* const frames = qobject_cast<QVideoSink*>(sink))
    connect(frames, &QVideoSink::videoFrameChanged, this, &Scanner::look);
}

template <class Image>
void Scanner::lookAt(Image image, bool says_nothing_found) {
  looking_ = true;
  QMetaObject::invokeMethod(
      worker_,
      [this, image = std::move(image), says_nothing_found] {
        const QString code = QString::fromStdString(readQr(image()));
        QMetaObject::invokeMethod(
            this,
            [this, code, says_nothing_found] {
              looking_ = false;
              if (!code.isEmpty()) {
                Q_EMIT found(code);
              } else if (says_nothing_found) {
                Q_EMIT nothingFound();
              }
            },
            Qt::QueuedConnection);
      },
      Qt::QueuedConnection);
}

void Scanner::look(const QVideoFrame& frame) {
  if (looking_ || !frame.isValid()) return;
  lookAt([frame] { return greyOf(frame); }, false);
}

void Scanner::lookAtPicture(const QUrl& file) {
  lookAt([path = file.isLocalFile() ? file.toLocalFile() : file.toString()] { return pictureAt(path); },
         true);
}

}  // namespace hingepin::mobile
