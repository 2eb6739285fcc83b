// SPDX-License-Identifier: GPL-3.0-or-later
#include "qr.h"

#include <QPainter>
#include <algorithm>
#include <qrcodegen.hpp>
#define ZX_USE_UTF8 1
#include <ZXing/ReadBarcode.h>

namespace hingepin::mobile {
namespace {

constexpr int kQuiet = 4;

qrcodegen::QrCode encoded(const std::string& text) {
  return qrcodegen::QrCode::encodeText(text.c_str(), qrcodegen::QrCode::Ecc::MEDIUM);
}

}  // namespace

QImage qrImage(const std::string& text, int module_px) {
  const qrcodegen::QrCode code = encoded(text);
  const int modules = code.getSize() + 2 * kQuiet;
  QImage image(modules * module_px, modules * module_px, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  for (int y = 0; y < code.getSize(); ++y) {
    for (int x = 0; x < code.getSize(); ++x) {
      if (code.getModule(x, y))
        painter.fillRect((x + kQuiet) * module_px, (y + kQuiet) * module_px, module_px, module_px, Qt::black);
    }
  }
  return image;
}

int qrModules(const std::string& text) { return encoded(text).getSize() + 2 * kQuiet; }

std::string readQr(const QImage& image) {
  const QImage grey = image.convertToFormat(QImage::Format_Grayscale8);
  if (grey.isNull()) return {};
  const ZXing::ImageView view(grey.constBits(), grey.width(), grey.height(), ZXing::ImageFormat::Lum,
                              static_cast<int>(grey.bytesPerLine()));
  const ZXing::Result result =
      ZXing::ReadBarcode(view, ZXing::DecodeHints().setFormats(ZXing::BarcodeFormat::QRCode));
  return result.isValid() ? result.text() : std::string();
}

void QrCode::setCode(const QString& code) {
  if (code == code_) return;
  code_ = code;
  update();
  Q_EMIT codeChanged();
}

void QrCode::paint(QPainter* painter) {
  if (code_.isEmpty()) return;
  const int side = static_cast<int>(std::min(width(), height()));
  // The painter's units may be several pixels of the screen: a module takes as many of these as fit.
  const double ratio = painter->deviceTransform().m11() > 0 ? painter->deviceTransform().m11() : 1.0;
  const int module_px = std::max(1, static_cast<int>(side * ratio) / modules());
  const QImage image = qrImage(code_.toStdString(), module_px);
  const double drawn = image.width() / ratio;
  painter->fillRect(QRectF(0, 0, width(), height()), Qt::white);
  painter->drawImage(QRectF((width() - drawn) / 2, (height() - drawn) / 2, drawn, drawn), image);
}

}  // namespace hingepin::mobile
