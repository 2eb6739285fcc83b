// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QQmlEngine>
#include <QString>
#include <QVariantMap>

namespace hingepin::mobile {

class App;

/// A new phone asks by a code to be let into a yard, and the phone that has the yard's key lets it in.
class Joiner : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON
  /// On the new phone: the code that asks, kept until it is let in; "" before it was made.
  Q_PROPERTY(QString code MEMBER code_ NOTIFY changed)
  /// On the new phone: how its key begins.
  Q_PROPERTY(QString key READ key NOTIFY changed)
  /// On the yard's phone: name, key (how it begins), time; empty where nobody asks.
  Q_PROPERTY(QVariantMap asking MEMBER asking_ NOTIFY changed)
  /// On the yard's phone: the code for the new one, once it was let in, and whether the lists are in it.
  Q_PROPERTY(QString admission MEMBER admission_ NOTIFY changed)
  Q_PROPERTY(bool hasLists MEMBER has_lists_ NOTIFY changed)
  Q_PROPERTY(QString problem MEMBER problem_ NOTIFY changed)

 public:
  explicit Joiner(App& app);
  ~Joiner() override;
  static Joiner* create(QQmlEngine* engine, QJSEngine* script);
  [[nodiscard]] QString key() const;

  /// On the new phone: a new code; what answers an earlier one is then not taken. The passphrase opens the
  /// key where it is not open yet.
  Q_INVOKABLE void makeCode(const QString& passphrase);
  /// On the new phone: what the yard's phone shows.
  Q_INVOKABLE void take(const QString& code);
  /// On the yard's phone.
  Q_INVOKABLE void read(const QString& code);
  Q_INVOKABLE void letIn(const QString& role, const QString& yard_passphrase);
  /// Forgets who asks.
  Q_INVOKABLE void clear();

 Q_SIGNALS:
  void changed();
  void codeMade();

 private:
  void enterState();
  void say(const QString& problem);

  App& app_;
  QString code_;
  QString read_;  ///< the code of who asks
  QVariantMap asking_;
  QString admission_;
  bool has_lists_ = false;
  bool is_taking_ = false;
  QString problem_;
};

}  // namespace hingepin::mobile
