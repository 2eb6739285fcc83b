// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QQmlEngine>
#include <QString>
#include <QVariantList>

namespace hingepin::mobile {

class App;

/// What the yard holds, as lists for screens. Everything is read anew when the store has changed.
class Yard : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON
  Q_PROPERTY(QVariantList units MEMBER units_ NOTIFY unitsChanged)
  Q_PROPERTY(QVariantList running MEMBER running_ NOTIFY unitsChanged)
  Q_PROPERTY(QVariantList procedures MEMBER procedures_ NOTIFY proceduresChanged)
  Q_PROPERTY(QVariantList records MEMBER records_ NOTIFY recordsChanged)

 public:
  explicit Yard(App& app);
  ~Yard() override;
  static Yard* create(QQmlEngine* engine, QJSEngine* script);

  Q_INVOKABLE void readProcedures(const QString& unit);
  Q_INVOKABLE void readRecords(const QString& unit);

 Q_SIGNALS:
  void unitsChanged();
  void proceduresChanged();
  void recordsChanged();

 private:
  void read();

  App& app_;
  QVariantList units_;
  QVariantList running_;
  QVariantList procedures_;
  QVariantList records_;
};

}  // namespace hingepin::mobile
