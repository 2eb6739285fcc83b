// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QQmlEngine>
#include <QString>
#include <QVariantMap>

namespace hingepin::mobile {

class App;

/// Whoever is at this phone confirms, as a second person, what another phone asks by a code.
class Confirmer : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON
  /// unit, attachment, title, text, by, time, roles, may, seen: [{what, said}]; empty where nothing is asked
  Q_PROPERTY(QVariantMap asked MEMBER asked_ NOTIFY changed)
  /// The code for the other phone, once it was answered.
  Q_PROPERTY(QString answer MEMBER answer_ NOTIFY changed)
  Q_PROPERTY(bool confirmed MEMBER confirmed_ NOTIFY changed)
  Q_PROPERTY(QString problem MEMBER problem_ NOTIFY changed)

 public:
  explicit Confirmer(App& app);
  ~Confirmer() override;
  static Confirmer* create(QQmlEngine* engine, QJSEngine* script);

  Q_INVOKABLE void read(const QString& code);
  /// Seals the answer with the key of whoever is at the phone.
  Q_INVOKABLE void give(bool yes);
  Q_INVOKABLE void clear();

 Q_SIGNALS:
  void changed();

 private:
  App& app_;
  QString code_;
  QString role_;
  QVariantMap asked_;
  QString answer_;
  bool confirmed_ = false;
  QString problem_;
};

}  // namespace hingepin::mobile
