// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QQmlEngine>
#include <QUrl>
#include <QVariantMap>
#include <memory>

#include "engine/session/job.h"
#include "job_view.h"

namespace hingepin::mobile {

class App;

/// The job on the screen. Each press becomes an event of the engine; what the engine then asks for comes back
/// as a view.
class JobRunner : public QObject {
  Q_OBJECT
  QML_NAMED_ELEMENT(Job)
  QML_SINGLETON
  Q_PROPERTY(hingepin::mobile::JobView view READ view NOTIFY viewChanged)
  /// Of an indication that is asked for: what the engine weighed in its lift, as {text, doubt};
  /// empty where it weighed nothing.
  Q_PROPERTY(QVariantMap weighed MEMBER weighed_ NOTIFY weighedChanged)
  Q_PROPERTY(bool open READ isOpen NOTIFY viewChanged)
  Q_PROPERTY(QString refusal READ refusal NOTIFY refusalChanged)
  Q_PROPERTY(bool busy MEMBER busy_ NOTIFY busyChanged)
  /// The code that asks a second person on their own phone.
  Q_PROPERTY(QString ask MEMBER ask_ NOTIFY askChanged)

 public:
  explicit JobRunner(App& app);
  ~JobRunner() override;
  static JobRunner* create(QQmlEngine* engine, QJSEngine* script);
  static JobRunner* instance();

  [[nodiscard]] const JobView& view() const { return view_; }
  [[nodiscard]] bool isOpen() const { return job_ != nullptr; }
  [[nodiscard]] QString refusal() const { return refusal_; }
  /// The job as it was when the view was made; null when none is open. For other models, to read.
  [[nodiscard]] std::shared_ptr<const session::OpenJob> job() const { return job_; }

  /// Puts a job on the screen as it stands; null for none.
  void show(std::shared_ptr<const session::OpenJob> job);

  /// `options`: unit, attachment, procedure, variant, loneWork ("not-allowed", "photo-from-afar",
  /// "unconfirmed"), entries (a map of quantities).
  Q_INVOKABLE void begin(const QVariantMap& options);
  /// A job of the store, after the app or the phone was stopped, or looked at again.
  Q_INVOKABLE void reopen(const QString& id);
  /// Leaves it as it is; it goes on from here when it is opened again.
  Q_INVOKABLE void close();

  Q_INVOKABLE void resume();
  Q_INVOKABLE void takeOver();
  Q_INVOKABLE void acknowledge();
  Q_INVOKABLE void zoneClear();
  Q_INVOKABLE void evaluate();
  Q_INVOKABLE void beginHold();
  /// `words`: a note, or what the monitor said; `files`: paths or file URLs of photos, logs, a drawn
  /// signature.
  Q_INVOKABLE void answer(const QString& answer, const QString& words = {}, const QStringList& files = {});
  /// By somebody else at this phone, whose key the passphrase opens; `key` "" for who signs on the glass
  /// only.
  Q_INVOKABLE void answerAs(const QString& key, const QString& role, const QString& passphrase,
                            const QString& answer, const QStringList& files = {});
  /// Makes a code that asks somebody with a phone of their own, and takes the code of their answer.
  Q_INVOKABLE void askOtherPhone();
  Q_INVOKABLE void takeAnswer(const QString& code);
  /// `number` as typed, with the decimal mark of the language. `how`: "typed", "monitor", "live".
  Q_INVOKABLE void read(const QString& number, const QString& unit,
                        const QString& how = QStringLiteral("typed"));
  /// Takes what the engine weighed.
  Q_INVOKABLE void readWeighed();
  /// Takes a doubted number as it is, or one of the suggestions ("value" of it).
  Q_INVOKABLE void insist();
  Q_INVOKABLE void readInstead(const QString& quantity);
  Q_INVOKABLE void goBack();
  Q_INVOKABLE void abandon();
  /// A log that a live feed gave for the pass asked for: CSV.
  Q_INVOKABLE void answerWithLog(const QString& csv);
  /// Answers and readings that a live feed gave.
  void answerLive(const QString& answer);
  void readLive(const QString& quantity);
  /// Bytes that are to be kept with the answer, given as they are (a drawn signature, a picture).
  Q_INVOKABLE void answerWithBytes(const QString& answer, const QByteArray& bytes, const QString& file);
  /// Time left of a hold, in ms; 0 when it is over.
  Q_INVOKABLE double holdLeft_ms() const;
  Q_INVOKABLE void finishHold();
  Q_INVOKABLE void clearRefusal();

 Q_SIGNALS:
  void viewChanged();
  void refusalChanged();
  void weighedChanged();
  void busyChanged();
  void askChanged();
  /// Somebody's answer from their own phone is in the journal.
  void answerTaken();
  /// The job was sealed; `record` is its name.
  void sealed(const QString& record);
  /// What is asked for is another thing than before.
  void stepChanged();

 private:
  struct File {
    std::string name;
    std::string bytes;
  };
  void tell(procedures::Event event, std::vector<std::string> paths = {}, std::vector<File> files = {});
  [[nodiscard]] procedures::Event event(procedures::EventType type) const;
  void take(Expected<session::OpenJob> opened);
  void refuse(const Error& error);
  void setBusy(bool busy);
  void seal();
  void weigh();
  [[nodiscard]] ViewFor reader() const;

  App& app_;
  std::shared_ptr<const session::OpenJob> job_;
  JobView view_;
  QString refusal_;
  QString ask_;
  session::WeighedLift lift_;  ///< of `weighed_`
  QVariantMap weighed_;
  bool busy_ = false;
};

}  // namespace hingepin::mobile
