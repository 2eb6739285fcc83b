// SPDX-License-Identifier: GPL-3.0-or-later
#include "syncer.h"

#include <QNetworkInformation>
#include <QUrl>
#include <chrono>
#include <map>
#include <utility>
#include <vector>

#include "app.h"
#include "document_rows.h"
#include "engine/session/record_state.h"
#include "text.h"

namespace hingepin::mobile {
namespace {

using namespace std::chrono_literals;

Syncer* the_syncer = nullptr;

/// Something was just sealed: soon. Nothing new here: others may have sent something.
constexpr auto kSoon = 5s;
constexpr auto kLater = 10min;

folder::FarSide farSideFrom(const QVariantMap& form) {
  const auto at = [&](const char* field) { return plain(form[QLatin1String(field)].toString().trimmed()); };
  folder::FarSide far_side{.kind = at("kind"),
                           .url = at("url"),
                           .user = at("user"),
                           .bucket = at("bucket"),
                           .region = at("region"),
                           .ca_file = at("ca_file")};
  if (const QUrl chosen(qt(far_side.ca_file)); chosen.isLocalFile())
    far_side.ca_file = plain(chosen.toLocalFile());
  while (far_side.url.ends_with('/')) far_side.url.pop_back();
  return far_side;
}

QVariantMap formOf(const folder::FarSide& far_side) {
  return {{QStringLiteral("kind"), qt(far_side.kind)},     {QStringLiteral("url"), qt(far_side.url)},
          {QStringLiteral("user"), qt(far_side.user)},     {QStringLiteral("bucket"), qt(far_side.bucket)},
          {QStringLiteral("region"), qt(far_side.region)}, {QStringLiteral("ca_file"), qt(far_side.ca_file)}};
}

/// What the screen shows of the far side.
struct View {
  std::optional<folder::FarSide> far_side{};
  std::string folder{};
  std::string secret{};
  std::vector<sync::Waits> waiting{};
  std::vector<sync::InQuarantine> quarantine{};
};

Expected<View> viewOf(const folder::Folder& yard, const records::SecretKey* key,
                      const std::optional<Error>& last) {
  View view{.folder = yard.path};
  auto waits = sync::whatWaits(yard.store, last);
  if (!waits) return std::unexpected(waits.error());
  view.waiting = *std::move(waits);
  auto held = sync::inQuarantine(yard.store);
  if (!held) return std::unexpected(held.error());
  view.quarantine = *std::move(held);
  auto far_side = folder::farSideOf(yard);
  if (!far_side && far_side.error().kind == ErrorKind::NotFound) return view;
  if (!far_side) return std::unexpected(far_side.error());
  view.far_side = *std::move(far_side);
  if (key == nullptr) return view;
  auto secret = folder::keptSecret(yard, *key);
  if (secret) view.secret = *std::move(secret);
  return view;
}

}  // namespace

Syncer::Syncer(App& app) : app_(app), worker_(new QObject) {
  the_syncer = this;
  worker_->moveToThread(&thread_);
  thread_.setObjectName(QStringLiteral("sync"));
  connect(&thread_, &QThread::finished, worker_, &QObject::deleteLater);
  thread_.start();
  by_itself_ = app_.settings().value(QStringLiteral("sync_by_itself"), true).toBool();
  over_metered_ = app_.settings().value(QStringLiteral("sync_over_metered"), false).toBool();
  QNetworkInformation::loadBackendByFeatures(QNetworkInformation::Feature::Reachability);
  if (auto* const network = QNetworkInformation::instance()) {
    connect(network, &QNetworkInformation::reachabilityChanged, this, &Syncer::changed);
    connect(network, &QNetworkInformation::isMeteredChanged, this, &Syncer::changed);
    connect(network, &QNetworkInformation::reachabilityChanged, this, [this] { again_.start(kSoon); });
  }
  again_.setSingleShot(true);
  connect(&again_, &QTimer::timeout, this, &Syncer::consider);
  connect(&app_, &App::storeChanged, this, [this] {
    if (running_) return;
    read();
    again_.start(kSoon);
  });
  connect(&app_, &App::stateChanged, this, [this] {
    if (app_.state() == App::Open) {
      read();
      again_.start(kSoon);
      return;
    }
    // Whoever comes next opens their own password.
    stop();
    again_.stop();
    secret_.assign(secret_.size(), '\0');
    secret_.clear();
    far_side_.clear();
    Q_EMIT changed();
  });
}

Syncer::~Syncer() {
  stop();
  thread_.quit();
  thread_.wait();
  the_syncer = nullptr;
}

Syncer* Syncer::create(QQmlEngine*, QJSEngine*) {
  QJSEngine::setObjectOwnership(the_syncer, QJSEngine::CppOwnership);
  return the_syncer;
}

QString Syncer::rests() const {
  if (!by_itself_) return tr("You begin each exchange yourself.");
  const auto* const network = QNetworkInformation::instance();
  if (network == nullptr) return {};
  if (network->reachability() == QNetworkInformation::Reachability::Disconnected)
    return tr("No network now.");
  if (network->isMetered() && !over_metered_) return tr("This network is paid for by what it carries.");
  return {};
}

void Syncer::setByItself(bool on) {
  by_itself_ = on;
  app_.settings().setValue(QStringLiteral("sync_by_itself"), on);
  Q_EMIT changed();
}

void Syncer::setOverMetered(bool on) {
  over_metered_ = on;
  app_.settings().setValue(QStringLiteral("sync_over_metered"), on);
  Q_EMIT changed();
}

void Syncer::read() {
  app_.backend().ask(
      this,
      [key = plain(app_.key()), last = last_](Desk& desk) -> Expected<View> {
        if (!desk.folder) return View{};
        const auto own = desk.keys.find(key);
        return viewOf(*desk.folder, own == desk.keys.end() ? nullptr : &own->second, last);
      },
      [this](const Expected<View>& view) {
        if (app_.state() != App::Open) return;  // locked meanwhile
        if (!view) {
          problem_ = app_.say(view.error());
          Q_EMIT changed();
          return;
        }
        folder_ = view->folder;
        secret_ = view->secret;
        far_side_ = view->far_side ? formOf(*view->far_side) : QVariantMap{};
        waiting_.clear();
        const std::map<store::WaitingKind, QString> kinds = {
            {store::WaitingKind::Statement, tr("Record or signature")},
            {store::WaitingKind::Signers, tr("List of who may sign")},
            {store::WaitingKind::Blob, tr("Photo, log or other evidence")},
            {store::WaitingKind::Personal, tr("A person's name or photo")}};
        for (const sync::Waits& each : view->waiting) {
          waiting_.append(QVariantMap{{QStringLiteral("what"), kinds.at(each.what.kind)},
                                      {QStringLiteral("name"), qt(each.what.name)},
                                      {QStringLiteral("since"), double(each.what.since_utc_ms)},
                                      {QStringLiteral("why"), app_.say(each.why)}});
        }
        quarantine_.clear();
        for (const sync::InQuarantine& each : view->quarantine) {
          quarantine_.append(QVariantMap{{QStringLiteral("name"), qt(each.name)},
                                         {QStringLiteral("why"), app_.say(each.why)}});
        }
        Q_EMIT changed();
      });
}

void Syncer::readRecord(const QString& record) {
  record_state_.clear();
  Q_EMIT recordStateChanged();
  app_.backend().ask(
      this,
      [record = plain(record), reader = app_.reader(), last = last_](Desk& desk) {
        return session::recordState(desk.folder->store, record, desk.folder->installation, last, reader);
      },
      [this](const Expected<std::vector<session::DocumentRow>>& rows) {
        if (!rows) {
          app_.tell(rows.error());
          return;
        }
        record_state_ = rowsOf(*rows);
        Q_EMIT recordStateChanged();
      });
}

void Syncer::setUp(const QVariantMap& form, const QString& secret) {
  problem_.clear();
  app_.backend().ask(
      this,
      [far_side = farSideFrom(form), secret = plain(secret),
       key = plain(app_.key())](Desk& desk) mutable -> Expected<void> {
        const auto own = desk.keys.find(key);
        if (!desk.folder || own == desk.keys.end())
          return fail(ErrorKind::NotFound, "key-not-here", {{"name", key.substr(0, 8)}});
        if (!far_side.ca_file.empty()) {
          auto kept = folder::keepAuthority(*desk.folder, far_side.ca_file);
          if (!kept) return std::unexpected(kept.error());
          far_side.ca_file = *std::move(kept);
        }
        if (auto set = folder::setFarSide(*desk.folder, far_side); !set) return set;
        if (!secret.empty()) {
          if (auto kept = folder::keepSecret(*desk.folder, secret, own->second); !kept) return kept;
        }
        return folder::vouchForDevice(*desk.folder, own->second);
      },
      [this](const Expected<void>& set) {
        if (!set) {
          problem_ = app_.say(set.error());
          Q_EMIT changed();
        } else {
          last_.reset();
          read();
          again_.start(kSoon);
        }
        Q_EMIT done();
      });
}

void Syncer::consider() {
  again_.start(kLater);
  if (canBegin() && !running_ && rests().isEmpty() && app_.state() == App::Open) begin();
}

void Syncer::begin() {
  if (running_ || !canBegin()) return;
  running_ = true;
  goes_on_ = true;
  problem_.clear();
  findings_.clear();
  show({});
  QMetaObject::invokeMethod(
      worker_,
      [this, path = folder_, far_side = farSideFrom(far_side_), secret = secret_] {
        const auto goes_on = [this] { return goes_on_.load(); };
        auto outcome = [&]() -> Expected<sync::Outcome> {
          Expected<folder::Folder> yard = folder::openFolder(path);
          if (!yard) return std::unexpected(yard.error());
          auto told = std::chrono::steady_clock::now();
          return folder::exchangeWith(
              *yard, folder::remoteOf(far_side, secret, goes_on), folder::addressOf(far_side),
              [this, told](const sync::Progress& progress) mutable {
                // The screen is told some times a second, not with each object.
                const auto now = std::chrono::steady_clock::now();
                if (now - told < 200ms) return;
                told = now;
                QMetaObject::invokeMethod(this, [this, progress] { show(progress); }, Qt::QueuedConnection);
              },
              goes_on);
        }();
        QMetaObject::invokeMethod(
            this, [this, outcome = std::move(outcome)] { end(outcome); }, Qt::QueuedConnection);
      },
      Qt::QueuedConnection);
}

void Syncer::show(const sync::Progress& progress) {
  const auto count = [&](std::int64_t number) { return app_.number(double(number), 0); };
  progress_ = tr("%1 of %2 parcels sent, %3 received; %4 records new here; evidence: %5 sent, %6 received")
                  .arg(count(progress.parcels_sent), count(progress.parcels_to_send),
                       count(progress.parcels_received), count(progress.statements_received),
                       count(progress.evidence_sent), count(progress.evidence_received));
  Q_EMIT changed();
}

void Syncer::end(const Expected<sync::Outcome>& outcome) {
  running_ = false;
  last_.reset();
  if (!outcome) {
    problem_ = app_.say(outcome.error());
    last_ = outcome.error();
  } else {
    show(outcome->progress);
    for (const Message& each : outcome->findings) findings_.append(app_.say(each));
    if (outcome->stopped) {
      problem_ = app_.say(*outcome->stopped);
      last_ = outcome->stopped;
    }
  }
  const bool has_new =
      outcome && (outcome->progress.statements_received > 0 || outcome->progress.evidence_received > 0);
  again_.start(kLater);
  read();
  if (has_new) Q_EMIT app_.storeChanged();
  Q_EMIT changed();
  Q_EMIT done();
}

}  // namespace hingepin::mobile
