// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QQmlEngine>
#include <QString>
#include <QVariantMap>

namespace hingepin::mobile {

class App;

/// What is handed over, as files: a record as a PDF or as it is sealed, the label of a scale, the tag of one
/// that must not be used.
class Exporter : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON
  Q_PROPERTY(QString saved MEMBER saved_ NOTIFY changed)
  Q_PROPERTY(bool letter MEMBER letter_ NOTIFY changed)
  Q_PROPERTY(bool canShare READ canShare CONSTANT)

 public:
  explicit Exporter(App& app);
  ~Exporter() override;
  static Exporter* create(QQmlEngine* engine, QJSEngine* script);

  /// Into the folder for documents; `saved` then names the file.
  Q_INVOKABLE void document(const QString& record);
  Q_INVOKABLE void file(const QString& record);
  /// The calibration certificate. @param kind "pdf", "html", "dcc"
  /// @param stated language, and what no record holds: laboratory, customer, place, country, references
  Q_INVOKABLE void certificate(const QString& record, const QString& kind, const QVariantMap& stated);
  /// What a scale was worth at the end of a day ("2026-05-04"), as a folder with the records behind it.
  Q_INVOKABLE void dispute(const QString& unit, const QString& attachment, const QString& day);
  Q_INVOKABLE void label(const QString& unit, const QString& attachment);
  /// @param record of a failed or abandoned job; before it is sealed `lines` says what its tag says
  Q_INVOKABLE void tag(const QString& record);
  Q_INVOKABLE void tagOfLines(const QStringList& lines, const QString& name);
  /// What the app noted of itself: no names, no secrets.
  Q_INVOKABLE void log();
  Q_INVOKABLE void clear();
  /// Whether this phone can hand a file to another app that the person picks.
  [[nodiscard]] static bool canShare();
  /// Hands over the file that was saved last; `title` heads the question to whom.
  Q_INVOKABLE void share(const QString& title);
  /// Where files are put; a test may choose.
  void setFolder(const QString& folder) { folder_ = folder; }

 Q_SIGNALS:
  void changed();

 private:
  [[nodiscard]] QString pathFor(const QString& name) const;
  void done(const QString& path, bool ok);

  App& app_;
  QString folder_;
  QString saved_;
  bool letter_ = false;
};

}  // namespace hingepin::mobile
