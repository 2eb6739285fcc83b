// SPDX-License-Identifier: GPL-3.0-or-later
#include "live.h"

#include <QFile>
#include <QUrl>
#include <QXYSeries>
#include <algorithm>
#include <cmath>

#include "app.h"
#include "drawings.h"
#include "engine/formats/calibration_json.h"
#include "engine/formats/job_json.h"
#include "engine/session/empty_lift.h"
#include "engine/units/degree.h"
#include "job_runner.h"
#include "text.h"

namespace hingepin::mobile {
namespace {

Live* the_live = nullptr;

constexpr int kTick_ms = 40;

}  // namespace

Live::Live(App& app, JobRunner& job) : app_(app), job_(job) {
  the_live = this;
  timer_.setInterval(kTick_ms);
  connect(&timer_, &QTimer::timeout, this, &Live::tick);
  connect(&job_, &JobRunner::stepChanged, this, &Live::stepChanged);
  connect(&app_, &App::languageChanged, this, &Live::sourceChanged);
}

Live::~Live() { the_live = nullptr; }

Live* Live::create(QQmlEngine*, QJSEngine*) {
  QJSEngine::setObjectOwnership(the_live, QJSEngine::CppOwnership);
  return the_live;
}

bool Live::connected() const {
  return source_ != QLatin1String("none") &&
         (!socket_ || socket_->state() == QAbstractSocket::ConnectedState);
}

double Live::practiceTime_s() const {
  return (static_cast<double>(app_.backend().now().at_ms) - zero_ms_) / 1000.0;
}

void Live::open(const QString& source, const QString& address) {
  socket_.reset();
  loader_.reset();
  watch_.reset();
  feed_ = std::make_unique<session::Feed>(folder::edge());
  fault_.clear();
  refused_.clear();
  mishap_.clear();
  source_ = source;
  address_ = address;
  zero_ms_ = static_cast<double>(app_.backend().now().at_ms);
  if (source == QLatin1String("practice")) {
    constexpr std::uint64_t kPracticeDraw = 27;
    loader_ = std::make_unique<session::PracticeLoader>(kPracticeDraw);
  } else if (source == QLatin1String("file")) {
    QFile file(QUrl(address).isLocalFile() ? QUrl(address).toLocalFile() : address);
    if (file.open(QIODevice::ReadOnly)) {
      played_ = QString::fromUtf8(file.readAll());
      played_at_ = 0;
      played_from_s_ = std::nan("");
    } else {
      fault_ = tr("%1 can't be opened: %2").arg(address, file.errorString());
      source_ = QStringLiteral("none");
    }
  } else if (source == QLatin1String("line")) {
    connectLine();
  } else {
    source_ = QStringLiteral("none");
  }
  if (source_ == QLatin1String("none")) {
    timer_.stop();
    alive_ = false;
    value_.clear();
    trouble_.clear();
  } else {
    timer_.start();
  }
  Q_EMIT sourceChanged();
  Q_EMIT changed();
  stepChanged();
}

void Live::connectLine() {
  const qsizetype colon = address_.lastIndexOf(QLatin1Char(':'));
  const QString host = address_.left(colon);
  const auto port = static_cast<quint16>(address_.mid(colon + 1).toUInt());
  socket_ = std::make_unique<QTcpSocket>();
  connect(socket_.get(), &QTcpSocket::readyRead, this, [this] {
    const QByteArray bytes = socket_->readAll();
    feed({bytes.constData(), static_cast<std::size_t>(bytes.size())});
  });
  // A gateway that goes away is called again until another source is chosen.
  connect(socket_.get(), &QTcpSocket::stateChanged, this,
          [this, host, port](QAbstractSocket::SocketState state) {
            if (state == QAbstractSocket::UnconnectedState) {
              feed_->disconnected();
              constexpr int kAgain_ms = 1000;
              QTimer::singleShot(kAgain_ms, socket_.get(), [this, host, port] {
                if (socket_->state() == QAbstractSocket::UnconnectedState) socket_->connectToHost(host, port);
              });
            }
            Q_EMIT changed();
          });
  socket_->connectToHost(host, port);
}

void Live::feed(std::string_view bytes) {
  if (feed_) feed_->take(bytes, app_.backend().now().at_ms);
}

void Live::stepChanged() {
  watch_.reset();
  refused_.clear();
  taking_ = false;
  value_.clear();
  value_text_.clear();
  instrument_.clear();
  trouble_.clear();
  progress_ = 0;
  steady_ = false;
  held_ = false;
  const auto job = job_.job();
  if (!job) {
    line_.reset();
    line_of_.clear();
    Q_EMIT changed();
    return;
  }
  // What the job's own poses tell stands before what an earlier calibration said.
  app_.backend().ask(
      this,
      [job](Desk& desk) -> std::optional<session::KnownLine> {
        const session::BlobSource blobs = session::blobsOf(desk.folder->store);
        if (const auto own = session::boomLineOf(*job, folder::edge(), blobs)) return own;
        const auto pair = desk.folder->store.pair(job->job.unit, job->job.attachment);
        if (!pair || !*pair || (*pair)->calibration.empty()) return std::nullopt;
        Expected<std::string> text = blobs((*pair)->calibration);
        if (!text) return std::nullopt;
        const auto calibration = formats::readCalibration(*std::move(text), "stored");
        if (!calibration) return std::nullopt;
        return session::boomLineOf(*calibration);
      },
      [this, job](const std::optional<session::KnownLine>& line) {
        if (job_.job() != job) return;
        line_ = line;
        const auto unit = unitOf(*job);
        rod_share_ = unit ? session::rodShareOf(unit->lift_cylinders) : 0.0;
        const procedures::Step* const step = procedures::findStep(job->procedure, plain(job_.view().about));
        if (step != nullptr && job_.view().ask != QLatin1String("zone") && source_ != QLatin1String("none") &&
            !isOutOfPlace()) {
          watch_ = std::make_unique<session::Watch>(job->procedure, job->state, *step, line_);
        }
        drawMachine();
        Q_EMIT changed();
      });
}

bool Live::isOutOfPlace() const { return loader_ && job_.job() && !job_.job()->unit.practice; }

void Live::move() {
  const auto job = job_.job();
  if (!job || !loader_ || isOutOfPlace()) return;
  const procedures::Step* const step = procedures::findStep(job->procedure, plain(job_.view().about));
  if (step == nullptr) return;
  double mass_kg = 0;
  if (step->kind == procedures::StepKind::Pass && step->load == procedures::Load::TestMass) {
    mass_kg = 2000;
    for (const procedures::Try& made : job->state.tries) {
      const procedures::Step* const read = procedures::findStep(job->procedure, made.event.about);
      if (read == nullptr || read->quantity != "reference-mass" || !made.counts) continue;
      if (const auto value = readSi(made.event.value, Dimension::Mass)) mass_kg = *value;
    }
  }
  const Expected<void> begun = loader_->begin(*step, mass_kg, practiceTime_s());
  refused_ = begun ? QString() : app_.say(begun.error());
}

QString Live::mishapText() const {
  return mishap_.isEmpty() ? QString() : app_.say(Message{plain(mishap_), {}});
}

QVariantList Live::mishaps() const {
  QVariantList list;
  for (const std::string& code : session::practiceMishaps()) {
    list.append(QVariantMap{{QStringLiteral("value"), qt(code)},
                            {QStringLiteral("text"), app_.say(Message{code, {}})}});
  }
  return list;
}

void Live::suffer(const QString& mishap) {
  if (!loader_) return;
  mishap_ = mishap;
  loader_->suffer(plain(mishap));
  Q_EMIT sourceChanged();
}

void Live::dropOut(double s) {
  if (loader_) loader_->dropOut(practiceTime_s() + s);
}

void Live::tick() {
  if (!feed_) return;
  const std::int64_t now_ms = app_.backend().now().at_ms;
  if (loader_) feed(loader_->linesUntil(practiceTime_s()));
  if (source_ == QLatin1String("file")) {
    // Played at the pace of its own times.
    while (played_at_ < played_.size()) {
      const qsizetype end = played_.indexOf(QLatin1Char('\n'), played_at_);
      const QString text = played_.mid(played_at_, (end < 0 ? played_.size() : end + 1) - played_at_);
      bool isNumber = false;
      const double time_s = text.section(QLatin1Char(','), 0, 0).toDouble(&isNumber);
      if (isNumber) {
        if (std::isnan(played_from_s_)) played_from_s_ = time_s - practiceTime_s();
        if (time_s - played_from_s_ > practiceTime_s()) break;
      }
      const QByteArray bytes =
          text.endsWith(QLatin1Char('\n')) ? text.toUtf8() : (text + QLatin1Char('\n')).toUtf8();
      feed({bytes.constData(), static_cast<std::size_t>(bytes.size())});
      played_at_ += text.size();
    }
  }
  alive_ = feed_->isAlive(now_ms);
  rows_per_second_ = feed_->rowsPerSecond();
  fault_ = isOutOfPlace()   ? tr("The simulated loader is for practice units only.")
           : feed_->fault() ? app_.say(*feed_->fault())
                            : refused_;
  if (!feed_->rows().empty()) {
    const calibration::LiftRow& row = feed_->rows().back();
    pressure_ = qt(session::show(Amount{row.head_pressure_Pa / 1e5, "bar", 0}, app_.system(),
                                 session::localeOf(app_.reader().language)));
    if (line_ && line_->unit == feed_->boomSensorUnit()) {
      boom_deg_ = line_->line.angle(row.boom_sensor) / kDegree;
      angle_known_ = true;
    } else if (loader_) {
      angle_known_ = false;
      boom_deg_ = loader_->boom_rad() / kDegree;
    }
  }
  // Practice has no inclinometer to look at: what one on the boom would show.
  const bool by_inclinometer =
      loader_ && job_.view().quantity == QLatin1String("boom-angle") && !job_.view().machine_source;
  instrument_ = by_inclinometer ? qt(session::show(Amount{loader_->boom_rad() / kDegree, "deg", 1},
                                                   app_.system(), session::localeOf(app_.reader().language)))
                                : QString();
  if (watch_) {
    const session::Sight sight = watch_->look(*feed_, now_ms);
    travel_ = sight.travel == session::Travel::Up     ? QStringLiteral("up")
              : sight.travel == session::Travel::Down ? QStringLiteral("down")
                                                      : QStringLiteral("still");
    angle_wanted_ = sight.wanted_rad.has_value();
    wanted_deg_ = sight.wanted_rad.value_or(0) / kDegree;
    progress_ = sight.progress;
    steady_ = sight.steady;
    value_ = qt(sight.value);
    if (const auto read = readAnyQuantity(sight.value)) {
      const qsizetype point = value_.indexOf(QLatin1Char('.'));
      const int decimals = point < 0 ? 0 : static_cast<int>(value_.indexOf(QLatin1Char(' ')) - point - 1);
      value_text_ =
          qt(session::show(Amount{read->unit.fromSi(read->value_si), std::string(read->unit.ucum), decimals},
                           app_.system(), session::localeOf(app_.reader().language)));
    }
    const QString trouble = sight.trouble ? app_.say(*sight.trouble) : QString();
    const bool is_pass = job_.view().kind == QLatin1String("pass");
    if (sight.held && !held_) Q_EMIT poseHeld();
    if (is_pass && !trouble.isEmpty() && trouble_.isEmpty()) Q_EMIT onceMore();
    held_ = sight.held;
    trouble_ = trouble;
    const bool awaited = sight.done && !taking_ && !job_.property("busy").toBool();
    if (awaited && job_.view().ask == QLatin1String("reading")) takeValue();
    if (awaited && job_.view().ask == QLatin1String("answer")) {
      taking_ = true;
      if (is_pass) Q_EMIT passComplete();
      if (watch_->log().empty()) {
        job_.answerLive(QStringLiteral("done"));
      } else if (job_.view().log == QLatin1String("none")) {
        job_.answerLive(QStringLiteral("done"));
      } else {
        job_.answerWithLog(qt(watch_->log()));
      }
    }
  }
  drawMachine();
  Q_EMIT changed();
  Q_EMIT rowsCame();
}

void Live::takeValue() {
  const qsizetype space = value_.indexOf(QLatin1Char(' '));
  if (!steady_ || space < 0 || taking_) return;
  taking_ = true;
  job_.readLive(value_);
}

void Live::drawMachine() {
  const auto job = job_.job();
  if (!job) return;
  const QString bucket = job_.view().bucket;
  const double boom = boom_deg_ * kDegree;
  const double share = bucket == QLatin1String("dumped")  ? 0.0
                       : bucket == QLatin1String("level") ? -1.0
                                                          : 1.0;
  if (line_of_ == job->job.id && std::abs(boom - drawn_boom_) < 0.002 && share == drawn_share_) return;
  const auto unit = unitOf(*job);
  if (!unit) return;
  const auto attachment = fittedOf(*job);
  const double racked = share < 0 ? session::levelShare(*unit, boom) : share;
  const auto drawing = session::drawMachine(*unit, attachment ? &*attachment : nullptr, boom, racked);
  if (!drawing) return;
  line_of_ = job->job.id;
  drawn_boom_ = boom;
  drawn_share_ = share;
  machine_ = machineMap(*drawing);
  Q_EMIT machineChanged();
}

QRectF Live::fill(QObject* series) const {
  auto* const line = qobject_cast<QXYSeries*>(series);
  if (line == nullptr || !watch_ || !feed_) return {};
  QList<QPointF> points;
  double left = 0, right = 0, low = 0, high = 0;
  const double to_unit = inSystem(Amount{1e-5, "bar", 1}, app_.system()).value;
  const double x_unit = line_ ? kDegree : 1.0;
  for (const auto& [x, y] : watch_->track(*feed_, rod_share_)) {
    const QPointF point(x / x_unit, y * to_unit);
    left = points.isEmpty() ? point.x() : std::min(left, point.x());
    right = points.isEmpty() ? point.x() : std::max(right, point.x());
    low = points.isEmpty() ? point.y() : std::min(low, point.y());
    high = points.isEmpty() ? point.y() : std::max(high, point.y());
    points.append(point);
  }
  line->replace(points);
  return {left, low, right - left, high - low};
}

}  // namespace hingepin::mobile
