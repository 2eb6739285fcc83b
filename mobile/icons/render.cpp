// SPDX-License-Identifier: GPL-3.0-or-later
// Draws the icon in the sizes that platforms want as PNG. Android takes its vector drawables, Linux also the
// SVG itself.
#include <QDir>
#include <QFileInfo>
#include <QGuiApplication>
#include <QImage>
#include <QPainter>
#include <QSvgRenderer>
#include <array>
#include <cstdio>

namespace {

struct Picture {
  const char* path;  ///< below mobile/
  int size_px;
  bool opaque;  ///< to the corners, which iOS rounds by itself; it takes no transparency
};

constexpr std::array kPictures = {
    Picture{"linux/icons/48x48/org.hingepin.app.png", 48, false},
    Picture{"linux/icons/128x128/org.hingepin.app.png", 128, false},
    Picture{"linux/icons/256x256/org.hingepin.app.png", 256, false},
    Picture{"ios/Assets.xcassets/AppIcon.appiconset/icon-1024.png", 1024, true},
    Picture{"ios/Assets.xcassets/LaunchIcon.imageset/launch-240.png", 240, false},
};

}  // namespace

int main(int argc, char** argv) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  const QGuiApplication application(argc, argv);
  if (argc != 3) {
    std::fputs("usage: hingepin-icons ICON.svg FOLDER\n", stderr);
    return 2;
  }
  QSvgRenderer icon(QString::fromLocal8Bit(argv[1]));
  if (!icon.isValid()) {
    std::fprintf(stderr, "%s: not a drawing that can be read\n", argv[1]);
    return 2;
  }
  for (const Picture& picture : kPictures) {
    QImage image(picture.size_px, picture.size_px,
                 picture.opaque ? QImage::Format_RGB32 : QImage::Format_ARGB32);
    image.fill(picture.opaque ? QColor(0x0d, 0x52, 0x61) : QColor(Qt::transparent));
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    icon.render(&painter);
    painter.end();
    const QString path = QDir(QString::fromLocal8Bit(argv[2])).filePath(QString::fromLatin1(picture.path));
    if (!QDir().mkpath(QFileInfo(path).path()) || !image.save(path, "PNG", 0)) {
      std::fprintf(stderr, "%s: can't be written\n", qPrintable(path));
      return 1;
    }
  }
  return 0;
}
