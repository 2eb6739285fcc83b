// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QQmlEngine>
#include <QString>
#include <QVariantMap>
#include <string>

#include "engine/base/error.h"

namespace hingepin::mobile {

class App;

/// Units, attachments and what a unit's monitor shows, entered and edited on the phone. A form is a map of
/// texts; what it doesn't show of a profile (pins read from a file, entries) stays as it was. The engine's
/// own reader says what is wrong.
class Profiles : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON
  Q_PROPERTY(QVariantMap form READ form NOTIFY formChanged)
  Q_PROPERTY(QString problem READ problem NOTIFY problemChanged)
  Q_PROPERTY(QVariantList attachments MEMBER attachments_ NOTIFY attachmentsChanged)

 public:
  explicit Profiles(App& app);
  ~Profiles() override;
  static Profiles* create(QQmlEngine* engine, QJSEngine* script);

  [[nodiscard]] QVariantMap form() const { return form_; }
  [[nodiscard]] QString problem() const { return problem_; }

  Q_INVOKABLE void openUnit(const QString& id);
  Q_INVOKABLE void openAttachment(const QString& id);
  Q_INVOKABLE void saveUnit(const QVariantMap& form);
  Q_INVOKABLE void saveAttachment(const QVariantMap& form);
  /// The pins of a linkage from a file: a unit's profile, a calibration job, or the linkage alone.
  Q_INVOKABLE void readLinkage(const QString& file);
  Q_INVOKABLE void readAttachments();
  /// What a monitor may show: {id, text, units: [{code, symbol}]}.
  Q_INVOKABLE QVariantList quantities() const;

 Q_SIGNALS:
  void formChanged();
  void problemChanged();
  void attachmentsChanged();
  void saved(const QString& id);

 private:
  void show(const QVariantMap& form);
  void complain(const QString& problem);
  /// What came of keeping a profile: its id, or what is wrong with it.
  void tellKept(const Expected<std::string>& kept);

  App& app_;
  QVariantMap form_;
  QString text_;  ///< the profile that the form was made from
  QString linkage_;
  QString problem_;
  QVariantList attachments_;
};

}  // namespace hingepin::mobile
