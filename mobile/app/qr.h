// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QImage>
#include <QQuickPaintedItem>
#include <QString>
#include <string>

namespace hingepin::mobile {

/// A QR code of level M, black on white whatever the look, with the quiet zone of four modules round it that
/// ISO/IEC 18004 asks for. REQUIRES: text that one code can hold.
[[nodiscard]] QImage qrImage(const std::string& text, int module_px);

/// Modules along a side of it, quiet zone and all.
[[nodiscard]] int qrModules(const std::string& text);

/// What a QR code in an image says, however it lies; "" where none is found.
[[nodiscard]] std::string readQr(const QImage& image);

/// A QR code on the screen, in whole pixels a module.
class QrCode : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QString code MEMBER code_ WRITE setCode NOTIFY codeChanged)
  Q_PROPERTY(int modules READ modules NOTIFY codeChanged)

 public:
  explicit QrCode(QQuickItem* parent = nullptr) : QQuickPaintedItem(parent) {}
  void paint(QPainter* painter) override;
  void setCode(const QString& code);
  [[nodiscard]] int modules() const { return code_.isEmpty() ? 0 : qrModules(code_.toStdString()); }

 Q_SIGNALS:
  void codeChanged();

 private:
  QString code_;
};

}  // namespace hingepin::mobile
