// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QQmlEngine>
#include <QSettings>
#include <QString>
#include <QStringList>
#include <QTranslator>
#include <QVariantList>
#include <memory>

#include "backend.h"
#include "engine/base/error.h"
#include "engine/folder/diagnostics.h"
#include "engine/session/catalogue.h"
#include "engine/session/locale.h"

namespace hingepin::mobile {

/// The app's own words. In a language that is written from right to left the values in them keep their own
/// direction: U+2068 before, U+2069 after.
class Translator : public QTranslator {
 public:
  [[nodiscard]] QString translate(const char* context, const char* source, const char* comment,
                                  int count) const override;
  bool right_to_left = false;
};

struct Start {
  QString folder;  ///< where yard and settings are kept
  Clock clock;
  folder::Diagnostics* diagnostics = nullptr;  ///< the log; none: nothing is noted
};

/// What the yard's own key is called in a folder of this app.
inline constexpr const char* kYardKey = "yard";

/// What holds for the whole app: who is at it, the yard that is open, and how it looks and speaks.
class App : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON
  Q_PROPERTY(State state READ state NOTIFY stateChanged)
  Q_PROPERTY(bool busy READ busy NOTIFY busyChanged)
  Q_PROPERTY(bool demo READ demo NOTIFY stateChanged)
  Q_PROPERTY(double progress MEMBER progress_ NOTIFY progressChanged)
  Q_PROPERTY(QString problem READ problem NOTIFY problemChanged)
  Q_PROPERTY(QString person READ person NOTIFY personChanged)
  Q_PROPERTY(QString role READ role NOTIFY personChanged)
  Q_PROPERTY(QStringList roles MEMBER roles_ NOTIFY personChanged)
  Q_PROPERTY(QVariantList people MEMBER people_ NOTIFY peopleChanged)
  /// Who may sign with a key on a phone of their own.
  Q_PROPERTY(QVariantList peopleElsewhere MEMBER people_elsewhere_ NOTIFY peopleChanged)
  Q_PROPERTY(QString language READ language WRITE setLanguage NOTIFY languageChanged)
  Q_PROPERTY(QStringList languages READ languages CONSTANT)
  Q_PROPERTY(bool rightToLeft READ rightToLeft NOTIFY languageChanged)
  Q_PROPERTY(QString decimalMark READ decimalMark NOTIFY languageChanged)
  Q_PROPERTY(bool usUnits MEMBER us_units_ WRITE setUsUnits NOTIFY settingsChanged)
  Q_PROPERTY(Look look READ look WRITE setLook NOTIFY settingsChanged)
  Q_PROPERTY(double textScale MEMBER text_scale_ WRITE setTextScale NOTIFY settingsChanged)
  Q_PROPERTY(bool gloves MEMBER gloves_ WRITE setGloves NOTIFY settingsChanged)
  Q_PROPERTY(bool wet MEMBER wet_ WRITE setWet NOTIFY settingsChanged)
  Q_PROPERTY(bool sounds MEMBER sounds_ WRITE setSounds NOTIFY settingsChanged)
  Q_PROPERTY(bool speaks MEMBER speaks_ WRITE setSpeaks NOTIFY settingsChanged)
  Q_PROPERTY(QString version READ version CONSTANT)

 public:
  enum State { Starting, FirstStart, Locked, Open, Broken, KeysLost, Joining };
  Q_ENUM(State)
  enum Look { Day, Night, Sunlight };
  Q_ENUM(Look)

  explicit App(Start start);
  ~App() override;
  /// The one that `main` made; QML asks for it.
  static App* create(QQmlEngine* engine, QJSEngine* script);
  static App* instance();

  [[nodiscard]] State state() const { return state_; }
  [[nodiscard]] bool busy() const { return backend_.isBusy(); }
  [[nodiscard]] bool demo() const { return demo_; }
  [[nodiscard]] QString problem() const { return problem_; }
  [[nodiscard]] QString person() const { return person_; }
  [[nodiscard]] QString role() const { return role_; }
  [[nodiscard]] QString key() const { return key_; }
  [[nodiscard]] QString language() const { return language_; }
  [[nodiscard]] QStringList languages() const;
  [[nodiscard]] bool rightToLeft() const;
  /// Of the engine's locale: what people type is what they are shown.
  [[nodiscard]] QString decimalMark() const;
  [[nodiscard]] Look look() const { return look_; }
  [[nodiscard]] static QString version();
  [[nodiscard]] static QString demoPassphrase();
  /// For whom the engine puts things into words.
  [[nodiscard]] session::Reader reader() const;
  [[nodiscard]] UnitSystem system() const { return us_units_ ? UnitSystem::UsCustomary : UnitSystem::Metric; }
  [[nodiscard]] const session::Catalogue& catalogue() const;
  [[nodiscard]] Backend& backend() { return backend_; }
  /// Of this installation, for what other models keep.
  [[nodiscard]] QSettings& settings() { return settings_; }
  /// In the language of the screen, in the units of its reader.
  [[nodiscard]] QString say(const Message& message) const;
  [[nodiscard]] QString say(const Error& error) const;
  /// Shows what went wrong, and notes it in the log.
  void tell(const Error& error);
  /// Shows something that a person has to know and nothing else shows.
  void tell(const QString& words);
  [[nodiscard]] const folder::Diagnostics* diagnostics() const { return start_.diagnostics; }

  void setLanguage(const QString& language);
  void setLook(Look look);
  void setUsUnits(bool on);
  void setTextScale(double scale);
  void setGloves(bool on);
  void setWet(bool on);
  void setSounds(bool on);
  void setSpeaks(bool on);

  /// Opens what was open last, or asks for a first start; says so where the last run ended in a fault.
  Q_INVOKABLE void begin();
  /// A key for a person, a key for the yard, and the yard's first list of signers. `roles`: what the person
  /// acts as; `anew`: over a yard whose keys are lost, as a restored phone has it.
  Q_INVOKABLE void makeYard(const QString& name, const QStringList& roles, const QString& passphrase,
                            bool anew = false);
  /// A key for somebody whose yard is on another phone; then it waits to be let in.
  Q_INVOKABLE void beginJoining(const QString& name, const QString& passphrase);
  /// Removes that key again: back to the first start.
  Q_INVOKABLE void giveUpJoining();
  /// The yard that lets this phone in is accepted: whoever has opened their key is in, else the app asks for
  /// it.
  void joined();
  /// The invented yard, filled where it is not there yet.
  Q_INVOKABLE void openDemo();
  Q_INVOKABLE void unlock(const QString& key_name, const QString& passphrase);
  Q_INVOKABLE void lock();
  Q_INVOKABLE void setRole(const QString& role);
  Q_INVOKABLE void leaveYard();
  Q_INVOKABLE void clearProblem();
  /// Another person on this phone: their key, opened, for what only they may do.
  Q_INVOKABLE void addPerson(const QString& name, const QStringList& roles, const QString& passphrase,
                             const QString& yard_passphrase);
  /// Empty, or why the passphrase won't do.
  Q_INVOKABLE QString passphraseProblem(const QString& passphrase) const;
  Q_INVOKABLE static QString roleName(const QString& role);
  Q_INVOKABLE static QString signalName(const QString& word);
  Q_INVOKABLE static QString languageName(const QString& language);
  /// A number as the language writes it.
  Q_INVOKABLE QString number(double value, int decimals) const;
  Q_INVOKABLE QString date(double utc_ms) const;
  Q_INVOKABLE QString dateAndTime(double utc_ms) const;

  /// Reads again who may sign.
  void readPeople();

 Q_SIGNALS:
  void stateChanged();
  void busyChanged();
  void progressChanged();
  void problemChanged();
  void personChanged();
  void peopleChanged();
  void languageChanged();
  void settingsChanged();
  /// Something in the store is not as it was: lists read it again.
  void storeChanged();

 private:
  void openYard(bool demo);
  void setState(State state);
  void enter(const QString& key_name, const QString& key, const QStringList& roles);
  void speakLanguage();

  Start start_;
  QSettings settings_;
  Backend backend_;
  Translator translator_;
  State state_ = Starting;
  bool demo_ = false;
  double progress_ = 0;
  QString problem_;
  QString person_;
  QString key_;
  QString role_;
  QStringList roles_;
  QVariantList people_;
  QVariantList people_elsewhere_;
  QString language_;
  bool us_units_ = false;
  Look look_ = Day;
  double text_scale_ = 1;
  bool gloves_ = false;
  bool wet_ = false;
  bool sounds_ = true;
  bool speaks_ = true;
};

}  // namespace hingepin::mobile
