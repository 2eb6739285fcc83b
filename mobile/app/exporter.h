// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QQmlEngine>
#include <QString>

namespace hingepin::mobile {

class App;

/// What is handed over: a record as a PDF or as the file itself, the label of a scale, the tag of one that must not be used.
class Exporter : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON
  Q_PROPERTY(QString saved MEMBER saved_ NOTIFY changed)

 public:
  explicit Exporter(App& app);
  ~Exporter() override;
  static Exporter* create(QQmlEngine* engine, QJSEngine* script);
  Q_INVOKABLE void tag(const QString& job);

 Q_SIGNALS:
  void changed();

 private:
  App& app_;
  QString saved_;
};

}  // namespace hingepin::mobile
