// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QQmlEngine>
#include <QString>
#include <QStringList>
#include <QVariantList>
#include <QVariantMap>
#include <functional>
#include <string>

#include "backend.h"

namespace hingepin::mobile {

class App;

/// What the yard holds, as lists for screens. What holds for whom is the engine's to say; everything is read
/// anew when the store has changed.
class Yard : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON
  Q_PROPERTY(QVariantList units MEMBER units_ NOTIFY unitsChanged)
  Q_PROPERTY(QVariantList running MEMBER running_ NOTIFY unitsChanged)
  Q_PROPERTY(QVariantMap counts MEMBER counts_ NOTIFY unitsChanged)
  Q_PROPERTY(QVariantList checkedOut MEMBER checked_out_ NOTIFY unitsChanged)
  Q_PROPERTY(QVariantList awaited MEMBER awaited_ NOTIFY unitsChanged)
  Q_PROPERTY(QVariantList confirmed MEMBER confirmed_ NOTIFY unitsChanged)
  Q_PROPERTY(QVariantList procedures MEMBER procedures_ NOTIFY proceduresChanged)
  Q_PROPERTY(QVariantList records MEMBER records_ NOTIFY recordsChanged)
  Q_PROPERTY(QVariantList history MEMBER history_ NOTIFY historyChanged)
  Q_PROPERTY(QVariantMap document MEMBER document_ NOTIFY documentChanged)
  Q_PROPERTY(QVariantList differences MEMBER differences_ NOTIFY differencesChanged)
  Q_PROPERTY(QStringList dispute MEMBER dispute_ NOTIFY disputeChanged)

 public:
  explicit Yard(App& app);
  ~Yard() override;
  static Yard* create(QQmlEngine* engine, QJSEngine* script);

  Q_INVOKABLE void readProcedures(const QString& unit, const QString& attachment);
  Q_INVOKABLE void readRecords(const QString& unit);
  Q_INVOKABLE void readHistory(const QString& unit, const QString& attachment);
  Q_INVOKABLE void readDocument(const QString& record);
  Q_INVOKABLE void compare(const QString& before, const QString& after);
  /// A further signature on a record, by whoever is at the phone.
  Q_INVOKABLE void sign(const QString& record);
  Q_INVOKABLE void amend(const QString& record, const QString& correction);
  /// What may have happened to a machine after which its scale is proved again: `value` and `text`.
  Q_INVOKABLE QVariantList events() const;
  /// Seals that it has, by whoever is at the phone. @param attachment "" for all of them
  Q_INVOKABLE void noteEvent(const QString& unit, const QString& attachment, const QString& event,
                             const QString& note);
  /// What a scale was worth at the end of a day ("2026-05-04"), in lines; empty for no such day.
  Q_INVOKABLE void readDispute(const QString& unit, const QString& attachment, const QString& day);

 Q_SIGNALS:
  void unitsChanged();
  void proceduresChanged();
  void recordsChanged();
  void historyChanged();
  void documentChanged();
  void differencesChanged();
  void disputeChanged();

 private:
  void read();
  /// Seals a statement by whoever is at the phone, and calls `then` once it is in the store.
  void write(const std::function<Expected<std::string>(Desk&, const session::Sealer&)>& statement,
             const std::function<void()>& then);

  App& app_;
  QVariantList units_, running_, checked_out_, awaited_, confirmed_, procedures_, records_, history_,
      differences_;
  QVariantMap counts_, document_;
  QStringList dispute_;
};

}  // namespace hingepin::mobile
