// SPDX-License-Identifier: GPL-3.0-or-later
#include "job_runner.h"

#include <QLocale>
#include <QQmlEngine>
#include <array>

#include "app.h"
#include "engine/folder/files.h"
#include "engine/procedures/library.h"
#include "engine/records/encoding.h"
#include "engine/session/catalogue.h"
#include "engine/session/confirmation.h"
#include "engine/session/proof_readings.h"
#include "text.h"

namespace hingepin::mobile {
namespace {

using procedures::Event;
using procedures::EventType;
using session::OpenJob;

JobRunner* the_runner = nullptr;

constexpr const char* kEngine = "hingepin " HINGEPIN_VERSION;

/// A finished event, and what came of it: the job after it, and why it was not taken where it was not.
struct Told {
  std::shared_ptr<const OpenJob> job;
  std::optional<Error> refused;
};

std::string jobId() {
  std::array<std::uint8_t, 16> bytes{};
  folder::fillBytes(bytes);
  return records::hexadecimal(records::textOf(bytes));
}

procedures::LoneWork loneWorkOf(const QString& name) {
  if (name == QLatin1String("photo-from-afar")) return procedures::LoneWork::PhotoFromAfar;
  if (name == QLatin1String("unconfirmed")) return procedures::LoneWork::Unconfirmed;
  return procedures::LoneWork::NotAllowed;
}

/// Bytes of a picture, a log, a file that a person chose. Errors: those of the file.
Expected<std::string> bytesOf(const std::string& path) {
  constexpr std::size_t kMost = 64U << 20U;
  const Expected<formats::ByteSource> source = folder::openFile(path);
  if (!source) return std::unexpected(source.error());
  return formats::readAll(*source, path, kMost);
}

}  // namespace

JobRunner::JobRunner(App& app) : app_(app) {
  the_runner = this;
  connect(&app_, &App::languageChanged, this, [this] { show(job_); });
  connect(&app_, &App::settingsChanged, this, [this] { show(job_); });
  connect(&app_, &App::stateChanged, this, [this] {
    if (app_.state() != App::Open) close();
  });
}

JobRunner::~JobRunner() { the_runner = nullptr; }

JobRunner* JobRunner::create(QQmlEngine*, QJSEngine*) {
  QJSEngine::setObjectOwnership(the_runner, QJSEngine::CppOwnership);
  return the_runner;
}

JobRunner* JobRunner::instance() { return the_runner; }

ViewFor JobRunner::reader() const { return {app_.reader(), plain(app_.key()), plain(app_.role())}; }

void JobRunner::setBusy(bool busy) {
  if (busy_ == busy) return;
  busy_ = busy;
  Q_EMIT busyChanged();
}

void JobRunner::refuse(const Error& error) {
  refusal_ = app_.say(error);
  Q_EMIT refusalChanged();
}

void JobRunner::clearRefusal() {
  if (refusal_.isEmpty()) return;
  refusal_.clear();
  Q_EMIT refusalChanged();
}

void JobRunner::show(std::shared_ptr<const OpenJob> job) {
  // A step that is asked again is another turn.
  const auto turn = [this] {
    return view_.ask + view_.about + QString::number(job_ ? job_->state.tries.size() : 0);
  };
  const QString before = turn();
  job_ = std::move(job);
  view_ = job_ ? viewOf(*job_, reader()) : JobView();
  Q_EMIT viewChanged();
  if (before == turn()) return;
  weigh();
  Q_EMIT stepChanged();
}

void JobRunner::weigh() {
  weighed_.clear();
  Q_EMIT weighedChanged();
  const procedures::Step* const step =
      job_ ? procedures::findStep(job_->procedure, plain(view_.about)) : nullptr;
  if (step == nullptr || step->kind != procedures::StepKind::Reading || step->quantity != "indication")
    return;
  app_.backend().ask(
      this,
      [job = job_, step = *step](Desk& desk) -> Expected<std::optional<session::WeighedLift>> {
        if (!desk.folder) return std::nullopt;
        return session::weighedLift(desk.folder->store, *job, step, folder::edge());
      },
      [this, job = job_](const Expected<std::optional<session::WeighedLift>>& lift) {
        if (!lift || !*lift || job != job_) return;
        lift_ = **lift;
        weighed_ = weighedView(lift_, app_.reader());
        Q_EMIT weighedChanged();
      });
}

void JobRunner::take(Expected<OpenJob> opened) {
  setBusy(false);
  if (!opened) {
    refuse(opened.error());
    return;
  }
  show(std::make_shared<const OpenJob>(*std::move(opened)));
  Q_EMIT app_.storeChanged();
  if (procedures::hasEnded(job_->state.phase) && job_->job.record.empty()) seal();
}

void JobRunner::begin(const QVariantMap& options) {
  if (busy_) return;
  clearRefusal();
  const std::string procedure = plain(options.value(QStringLiteral("procedure")).toString());
  const procedures::LibraryEntry* const entry = procedures::findInLibrary(procedure);
  if (entry == nullptr) {
    refuse({ErrorKind::NotFound, {"procedure-not-in-library", {{"procedure", procedure}}}, {}});
    return;
  }
  session::NewJob job{.id = jobId(),
                      .unit = plain(options.value(QStringLiteral("unit")).toString()),
                      .attachment = plain(options.value(QStringLiteral("attachment")).toString()),
                      .procedure_text = std::string(entry->text),
                      .variant = plain(options.value(QStringLiteral("variant")).toString()),
                      .language = plain(app_.language()),
                      .own_words = {},
                      .lone_work = loneWorkOf(options.value(QStringLiteral("loneWork")).toString()),
                      .entries = {}};
  const QVariantMap entries = options.value(QStringLiteral("entries")).toMap();
  for (auto entry_value = entries.begin(); entry_value != entries.end(); ++entry_value) {
    if (const QString text = entry_value.value().toString(); !text.isEmpty())
      job.entries[plain(entry_value.key())] = plain(text);
  }
  setBusy(true);
  app_.backend().ask(
      this,
      [job = std::move(job), who = plain(app_.key()), role = plain(app_.role()),
       now = app_.backend().now()](Desk& desk) {
        return session::beginJob(desk.folder->store, job,
                                 {.who = who, .role = role, .device = desk.folder->installation}, now,
                                 folder::edge());
      },
      [this](Expected<OpenJob> opened) { take(std::move(opened)); });
}

void JobRunner::reopen(const QString& id) {
  if (busy_) return;
  clearRefusal();
  setBusy(true);
  app_.backend().ask(
      this,
      [id = plain(id), now = app_.backend().now()](Desk& desk) {
        return session::reopenJob(desk.folder->store, id, now, folder::edge());
      },
      [this](Expected<OpenJob> opened) { take(std::move(opened)); });
}

void JobRunner::close() {
  if (!job_) return;
  clearRefusal();
  show(nullptr);
  Q_EMIT app_.storeChanged();
}

Event JobRunner::event(EventType type) const {
  Event made;
  made.type = type;
  made.about = plain(view_.about);
  made.who = plain(app_.key());
  made.role = plain(app_.role());
  return made;
}

void JobRunner::tell(Event event, std::vector<std::string> paths, std::vector<File> files) {
  if (!job_ || busy_) return;
  clearRefusal();
  setBusy(true);
  const bool from_other_phone = !event.confirmation.empty();
  app_.backend().ask(
      this,
      [job = job_, event = std::move(event), paths = std::move(paths), files = std::move(files),
       now = app_.backend().now()](Desk& desk) mutable -> Told {
        auto changed = std::make_shared<OpenJob>(*job);
        if (event.confirmation.empty()) event.device = desk.folder->installation;
        for (const std::string& path : paths) {
          Expected<std::string> bytes = bytesOf(path);
          if (!bytes) return {job, bytes.error()};
          files.push_back({path, *std::move(bytes)});
        }
        for (const File& file : files) {
          const Expected<std::string> hash =
              session::keepFile(desk.folder->store, *changed, event.about, file.bytes, file.name,
                                folder::fillBytes, now, folder::edge());
          if (!hash) return {job, hash.error()};
          event.hashes.push_back(*hash);
        }
        const Expected<void> taken =
            session::handIn(desk.folder->store, *changed, std::move(event), now, folder::edge());
        if (!taken) return {changed, taken.error()};
        return {changed, std::nullopt};
      },
      [this, from_other_phone](const Told& told) {
        setBusy(false);
        if (told.refused) refuse(*told.refused);
        show(told.job);
        if (from_other_phone && !told.refused) Q_EMIT answerTaken();
        if (procedures::hasEnded(job_->state.phase) && job_->job.record.empty()) seal();
      });
}

void JobRunner::seal() {
  setBusy(true);
  app_.backend().ask(
      this,
      [job = job_, now = app_.backend().now()](Desk& desk) -> Expected<OpenJob> {
        const Expected<session::Sealer> sealer = sealerOf(desk, job->state.person, job->state.role);
        if (!sealer) return std::unexpected(sealer.error());
        const Expected<std::string> record =
            session::endJob(desk.folder->store, *job, *sealer, kEngine, now, folder::edge());
        if (!record) return std::unexpected(record.error());
        return session::openJob(desk.folder->store, job->job.id, folder::edge());
      },
      [this](Expected<OpenJob> sealed_job) {
        setBusy(false);
        if (!sealed_job) {
          refuse(sealed_job.error());
          return;
        }
        show(std::make_shared<const OpenJob>(*std::move(sealed_job)));
        Q_EMIT app_.storeChanged();
        Q_EMIT sealed(view_.record);
      });
}

void JobRunner::resume() { tell(event(EventType::Resume)); }
void JobRunner::takeOver() { tell(event(EventType::TakeOver)); }
void JobRunner::acknowledge() { tell(event(EventType::Acknowledge)); }
void JobRunner::zoneClear() { tell(event(EventType::ZoneClear)); }
void JobRunner::evaluate() { tell(event(EventType::Evaluate)); }
void JobRunner::beginHold() { tell(event(EventType::Begin)); }
void JobRunner::abandon() {
  Event made = event(EventType::Abandon);
  made.about.clear();
  tell(std::move(made));
}
void JobRunner::goBack() {
  Event made = event(EventType::GoBack);
  made.about = plain(view_.go_back_to);
  tell(std::move(made));
}

void JobRunner::answer(const QString& answer, const QString& words, const QStringList& files) {
  Event made = event(EventType::Answer);
  made.answer = plain(answer);
  made.value = plain(words.trimmed());
  std::vector<std::string> paths;
  for (const QString& file : files)
    paths.push_back(plain(QUrl(file).isLocalFile() ? QUrl(file).toLocalFile() : file));
  tell(std::move(made), std::move(paths));
}

void JobRunner::answerAs(const QString& key, const QString& role, const QString& passphrase,
                         const QString& answer, const QStringList& files) {
  Event made = event(EventType::Answer);
  made.answer = plain(answer);
  made.role = plain(role);
  std::vector<std::string> paths;
  for (const QString& file : files)
    paths.push_back(plain(QUrl(file).isLocalFile() ? QUrl(file).toLocalFile() : file));
  if (key.isEmpty()) {
    made.who.clear();
    tell(std::move(made), std::move(paths));
    return;
  }
  // The key is opened to see that it is that person, and is not kept.
  setBusy(true);
  app_.backend().ask(
      this,
      [name = plain(key),
       pass = plain(app_.demo() ? App::demoPassphrase() : passphrase)](Desk& desk) -> Expected<std::string> {
        const Expected<records::SecretKey> opened = folder::openKey(*desk.folder, name, pass);
        if (!opened) return std::unexpected(opened.error());
        return opened->id();
      },
      [this, made, paths](const Expected<std::string>& id) mutable {
        setBusy(false);
        if (!id) {
          refuse(id.error());
          return;
        }
        made.who = *id;
        tell(std::move(made), std::move(paths));
      });
}

void JobRunner::askOtherPhone() {
  ask_.clear();
  Q_EMIT askChanged();
  clearRefusal();
  if (!job_) return;
  app_.backend().ask(
      this,
      [job = job_, now = app_.backend().now()](Desk& desk) {
        return session::askToConfirm(*job, desk.folder->installation, now, folder::fillBytes);
      },
      [this](const Expected<std::string>& code) {
        if (!code) {
          refuse(code.error());
          return;
        }
        ask_ = qt(*code);
        Q_EMIT askChanged();
      });
}

void JobRunner::takeAnswer(const QString& code) {
  Expected<Event> answer = session::eventOfAnswer(plain(ask_), plain(code));
  if (!answer) {
    refuse(answer.error());
    return;
  }
  tell(*std::move(answer));
}

void JobRunner::read(const QString& number, const QString& unit, const QString& how) {
  QString digits = number.trimmed();
  digits.replace(app_.decimalMark(), QStringLiteral("."));
  digits.replace(QChar(0x2212), QLatin1Char('-'));
  while (digits.size() > 1 && digits.startsWith(QLatin1Char('0')) && digits.at(1).isDigit())
    digits.remove(0, 1);
  if (digits.startsWith(QLatin1Char('.'))) digits.prepend(QLatin1Char('0'));
  if (digits.startsWith(QLatin1String("-."))) digits.insert(1, QLatin1Char('0'));
  if (digits.endsWith(QLatin1Char('.'))) digits.chop(1);
  Event made = event(EventType::Reading);
  made.value = plain(digits + QLatin1Char(' ') + unit);
  made.how = how == QLatin1String("monitor") ? procedures::How::Monitor
             : how == QLatin1String("live")  ? procedures::How::Live
                                             : procedures::How::Typed;
  tell(std::move(made));
}

void JobRunner::readWeighed() {
  Event made = event(EventType::Reading);
  made.value = lift_.value;
  made.how = procedures::How::Log;
  if (!lift_.calibration.empty()) made.hashes = {lift_.calibration};
  tell(std::move(made));
}

void JobRunner::insist() {
  if (!job_ || !job_->state.doubt) return;
  Event made = event(EventType::Reading);
  made.value = job_->state.doubt->value;
  made.sure = true;
  // It came as it came when it was doubted.
  if (!job_->journal.empty()) {
    made.how = job_->journal.back().how;
    made.hashes = job_->journal.back().hashes;
  }
  tell(std::move(made));
}

void JobRunner::readInstead(const QString& quantity) {
  Event made = event(EventType::Reading);
  made.value = plain(quantity);
  if (job_ && !job_->journal.empty()) made.how = job_->journal.back().how;
  tell(std::move(made));
}

void JobRunner::answerWithLog(const QString& csv) {
  Event made = event(EventType::Answer);
  made.answer = "done";
  made.how = procedures::How::Live;
  tell(std::move(made), {}, {{"live.csv", plain(csv)}});
}

void JobRunner::answerLive(const QString& answer) {
  Event made = event(EventType::Answer);
  made.answer = plain(answer);
  made.how = procedures::How::Live;
  tell(std::move(made));
}

void JobRunner::readLive(const QString& quantity) {
  Event made = event(EventType::Reading);
  made.value = plain(quantity);
  made.how = procedures::How::Live;
  tell(std::move(made));
}

void JobRunner::answerWithBytes(const QString& answer, const QByteArray& bytes, const QString& file) {
  Event made = event(EventType::Answer);
  made.answer = plain(answer);
  if (view_.on_glass) made.who.clear();
  if (!view_.acting_roles.isEmpty()) made.role = plain(view_.acting_roles.front());
  tell(std::move(made), {}, {{plain(file), bytes.toStdString()}});
}

double JobRunner::holdLeft_ms() const {
  if (view_.finished_at_ms < 0) return view_.hold_ms;
  return std::max(0.0, view_.finished_at_ms - static_cast<double>(app_.backend().now().at_ms));
}

void JobRunner::finishHold() {
  Event made = event(EventType::Answer);
  made.answer = "done";
  tell(std::move(made));
}

}  // namespace hingepin::mobile
