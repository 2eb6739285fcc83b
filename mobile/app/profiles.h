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
  /// JSON Pointer of what is wrong, "" where no one place is.
  Q_PROPERTY(QString problemAt READ problemAt NOTIFY problemChanged)
  /// By what proofs are judged: a form of its own, for the yard and for a unit.
  Q_PROPERTY(QVariantMap terms READ terms NOTIFY termsChanged)
  Q_PROPERTY(QVariantList attachments MEMBER attachments_ NOTIFY attachmentsChanged)

 public:
  explicit Profiles(App& app);
  ~Profiles() override;
  static Profiles* create(QQmlEngine* engine, QJSEngine* script);

  [[nodiscard]] QVariantMap form() const { return form_; }
  [[nodiscard]] QString problem() const { return problem_; }
  [[nodiscard]] QString problemAt() const { return problem_at_; }
  [[nodiscard]] QVariantMap terms() const { return terms_; }

  Q_INVOKABLE void openUnit(const QString& id);
  Q_INVOKABLE void openAttachment(const QString& id);
  Q_INVOKABLE void saveUnit(const QVariantMap& form);
  Q_INVOKABLE void saveAttachment(const QVariantMap& form);
  /// @param unit "" for the yard's own
  Q_INVOKABLE void openTerms(const QString& unit);
  Q_INVOKABLE void saveTerms(const QString& unit, const QVariantMap& form);
  Q_INVOKABLE QStringList classesOf(const QString& scheme) const;
  /// The pins of a linkage from a file: a unit's profile, a calibration job, or the linkage alone.
  Q_INVOKABLE void readLinkage(const QString& file);
  Q_INVOKABLE void readAttachments();
  /// What a monitor may show: {id, text, units: [{code, symbol}]}.
  Q_INVOKABLE QVariantList quantities() const;

 Q_SIGNALS:
  void formChanged();
  void problemChanged();
  void termsChanged();
  void attachmentsChanged();
  void saved(const QString& id);

 private:
  void show(const QVariantMap& form);
  void complain(const QString& problem, const QString& at = {});
  /// What came of keeping a profile: its id, or what is wrong with it.
  void tellKept(const Expected<std::string>& kept);

  App& app_;
  QVariantMap form_;
  QString text_;  ///< the profile that the form was made from
  QString linkage_;
  QString problem_;
  QString problem_at_;
  QVariantMap terms_;
  QString terms_text_;  ///< the profile that they were read from
  QVariantList attachments_;
};

}  // namespace hingepin::mobile
