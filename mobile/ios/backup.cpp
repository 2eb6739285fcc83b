// SPDX-License-Identifier: GPL-3.0-or-later
// A phone restored from a backup starts a new chain: what names this installation, and its keys, stay out of
// backups. The mark sits on the file and is lost when the file is replaced, so it is set again each time the
// app leaves the screen; no backup is made of an app in use.
#include <CoreFoundation/CoreFoundation.h>

#include <QDir>
#include <QFileInfo>
#include <QGuiApplication>
#include <QStandardPaths>

namespace {

void keepOutOfBackups(const QString& path) {
  if (!QFileInfo::exists(path)) return;
  const QByteArray bytes = path.toUtf8();
  CFURLRef url = CFURLCreateFromFileSystemRepresentation(kCFAllocatorDefault,
                                                         reinterpret_cast<const UInt8*>(bytes.constData()),
                                                         bytes.size(), QFileInfo(path).isDir());
  if (url == nullptr) return;
  if (!CFURLSetResourcePropertyForKey(url, kCFURLIsExcludedFromBackupKey, kCFBooleanTrue, nullptr)) {
    qWarning("%s: may get into a backup", bytes.constData());
  }
  CFRelease(url);
}

void keepKeysOutOfBackups() {
  const QDir folder(QStandardPaths::writableLocation(QStandardPaths::AppDataLocation));
  keepOutOfBackups(folder.filePath(QStringLiteral("yard/keys")));
  keepOutOfBackups(folder.filePath(QStringLiteral("yard/installation.json")));
  keepOutOfBackups(folder.filePath(QStringLiteral("demo")));
}

void begin() {
  keepKeysOutOfBackups();
  QObject::connect(qGuiApp, &QGuiApplication::applicationStateChanged, qGuiApp,
                   [](Qt::ApplicationState state) {
                     if (state != Qt::ApplicationActive) keepKeysOutOfBackups();
                   });
}

}  // namespace

Q_COREAPP_STARTUP_FUNCTION(begin)
