// SPDX-License-Identifier: GPL-3.0-or-later
// What the app costs, beside an empty window with a chart: start to the first usable frame, the work of a
// frame while steps change and charts run or records arrive, memory over an hour of live feed. Run by hand;
// figures in tests/benchmarks/RESULTS.md.
//   app_benchmark start [RUNS] | frames | chart | sync [RECORDS] | memory [MINUTES]
#include <gtest/gtest.h>

#include <QtQml/qqmlextensionplugin.h>
#include <unistd.h>
#include <QApplication>
#include <QElapsedTimer>
#include <QFile>
#include <QProcess>
#include <QQuickStyle>
#include <QTcpServer>
#include <QTcpSocket>
#include <QTemporaryDir>
#include <QThread>
#include <QTimer>
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "person.h"
#include "tests/engine/far_side/servers/real.h"
#include "tests/engine/sync/far_side.h"

Q_IMPORT_QML_PLUGIN(HingepinPlugin)

namespace hingepin::mobile {
namespace {

double quantile(std::vector<double> values, double share) {
  if (values.empty()) return std::nan("");
  std::ranges::sort(values);
  return values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1) + 0.5)];
}

void printQuantiles(const std::string& name, const std::vector<double>& values_ms) {
  std::printf("| %s | %zu | %.1f | %.1f | %.1f | %.1f |\n", name.c_str(), values_ms.size(),
              quantile(values_ms, 0.5), quantile(values_ms, 0.95), quantile(values_ms, 0.99),
              quantile(values_ms, 1.0));
}

/// Measures what the screen's thread works for each frame: all that it handled since the frame before, and
/// the frame itself (layout, drawing, handing it to the display).
class MeasuredApplication : public QApplication {
 public:
  using QApplication::QApplication;
  bool notify(QObject* receiver, QEvent* event) override {
    // Qt asks it for the events of every thread.
    if (QThread::currentThread() != thread()) return QApplication::notify(receiver, event);
    const bool is_frame = event->type() == QEvent::UpdateRequest && receiver->isWindowType();
    has_frame_ = has_frame_ || is_frame;
    // A display hands a frame over inside an event of its own.
    if (depth_ > 0) return QApplication::notify(receiver, event);
    QElapsedTimer timer;
    timer.start();
    ++depth_;
    const bool taken = QApplication::notify(receiver, event);
    --depth_;
    work_ms_ += static_cast<double>(timer.nsecsElapsed()) / 1e6;
    if (std::exchange(has_frame_, false)) {
      if (!kind.empty()) frames[kind].push_back(work_ms_);
      if (next_kind != kind) kind = next_kind;
      work_ms_ = 0;
    }
    return taken;
  }
  std::string kind;       ///< what the next frame counts as; "" for nothing
  std::string next_kind;  ///< and those after it
  std::map<std::string, std::vector<double>> frames;

 private:
  int depth_ = 0;
  bool has_frame_ = false;
  double work_ms_ = 0;
};

/// The real app, as its own main starts it; says "usable" with the first frame that shows a screen.
int startApp(const QString& folder) {
  Models models({.folder = folder, .clock = folder::momentOfComputer});
  QQmlApplicationEngine engine;
  engine.addImportPath(QStringLiteral("qrc:/qt/qml"));
  engine.load(QUrl(QStringLiteral("qrc:/qt/qml/Hingepin/Main.qml")));
  if (engine.rootObjects().isEmpty()) return 1;
  auto* const window = qobject_cast<QQuickWindow*>(engine.rootObjects().first());
  QObject::connect(window, &QQuickWindow::frameSwapped, [&] {
    if (models.app.state() == App::Starting) return;
    std::puts("usable");
    std::fflush(stdout);
    QCoreApplication::quit();
  });
  return QApplication::exec();
}

double untilUsable_ms(const QString& program, const QStringList& arguments) {
  QProcess process;
  QElapsedTimer timer;
  timer.start();
  process.start(program, arguments);
  while (process.waitForReadyRead(60000)) {
    if (process.readAllStandardOutput().contains("usable")) {
      const double spent_ms = static_cast<double>(timer.nsecsElapsed()) / 1e6;
      process.waitForFinished(60000);
      return spent_ms;
    }
  }
  return std::nan("");
}

int start(int runs) {
  const QString self = QCoreApplication::applicationFilePath();
  QTemporaryDir yard;
  {
    // A yard that is there: the screen that asks for its passphrase comes first.
    Hand hand(1.0, yard.path());
    Person person(hand);
    person.makeYard();
    person.addUnit();
  }
  std::map<std::string, std::vector<double>> spent;
  for (int run = 0; run <= runs; ++run) {
    QTemporaryDir fresh;
    const double empty = untilUsable_ms(QStringLiteral(EMPTY_WINDOW), {});
    const double first = untilUsable_ms(self, {QStringLiteral("app"), fresh.path()});
    const double later = untilUsable_ms(self, {QStringLiteral("app"), yard.path()});
    if (run == 0) continue;  // fills the caches of the system
    spent["empty window with a chart"].push_back(empty);
    spent["the app, first start"].push_back(first);
    spent["the app, a yard is there"].push_back(later);
    spent["ratio, first start"].push_back(first / empty);
    spent["ratio, a yard is there"].push_back(later / empty);
  }
  std::puts(
      "| to the first usable frame, ms | runs | p50 | p95 | p99 | most |\n| --- | --- | --- | --- | --- | "
      "--- |");
  for (const auto& [name, values] : spent) {
    if (!name.starts_with("ratio")) printQuantiles(name, values);
  }
  for (const auto& [name, values] : spent) {
    if (name.starts_with("ratio")) std::printf("%s: median %.2f\n", name.c_str(), quantile(values, 0.5));
  }
  return 0;
}

/// At the first pass that is logged, with everything that comes before it done eight times as fast.
struct AtFirstPass : MadeYard {
  AtFirstPass() : MadeYard(8.0) {
    hand.app().live.open(QStringLiteral("practice"));
    person.live = true;
    person.readPlan(QStringLiteral("main-logged"));
    person.begin(QStringLiteral("Calibrate after a change"), QStringLiteral("Logs"));
  }
};

/// A window with nothing but a chart to which 50 points a second come: what Qt itself needs for a frame of
/// it.
constexpr auto kChartOnly = R"(
import QtCharts
import QtQuick
import QtQuick.Controls.Basic

ApplicationWindow {
    width: 412
    height: 915
    visible: true
    ChartView {
        anchors.fill: parent
        antialiasing: true
        LineSeries {
            id: line
            axisX: ValueAxis { min: 0; max: 15 }
            axisY: ValueAxis { min: -1; max: 1 }
        }
        Timer {
            property int count: 0
            interval: 20
            repeat: true
            running: true
            onTriggered: line.append(0.02 * count, Math.sin(0.1 * count++))
        }
    }
}
)";

void printFrames(const MeasuredApplication& application) {
  std::puts(
      "| work for a frame, ms | frames | p50 | p95 | p99 | most |\n| --- | --- | --- | --- | --- | --- |");
  for (const auto& [name, values] : application.frames) printQuantiles(name, values);
}

int chart(MeasuredApplication& application) {
  application.kind = application.next_kind = "nothing but a chart, 50 points a second";
  QQmlApplicationEngine engine;
  engine.loadData(kChartOnly);
  QTimer::singleShot(15000, &application, &QCoreApplication::quit);
  QApplication::exec();
  printFrames(application);
  return 0;
}

int frames(MeasuredApplication& application) {
  AtFirstPass at;
  JobRunner& job = at.hand.app().job;
  Live& live = at.hand.app().live;
  QObject::connect(&job, &JobRunner::stepChanged, [&] { application.kind = "a step changes"; });
  QObject::connect(&live, &Live::rowsCame, [&] {
    const bool runs = job.view().kind == QLatin1String("pass") && job.view().ask == QLatin1String("answer") &&
                      live.property("travel").toString() != QLatin1String("still");
    application.next_kind = runs ? "a pass runs, with its chart" : "";
    if (application.kind != "a step changes") application.kind = application.next_kind;
  });
  at.person.work(QStringLiteral("log-slow"));
  at.hand.clock().setSpeed(1.0);
  for (int count = 0; count < 60 && job.view().phase == QLatin1String("running"); ++count) {
    if (!at.person.step()) break;
    if (job.view().about == QLatin1String("zero-shown")) break;
  }
  at.hand.clock().setSpeed(8.0);
  at.person.work();
  printFrames(application);
  return 0;
}

/// Opens a unit and goes back, again and again for as long as `goes_on`.
void lookAtUnit(MeasuredApplication& application, Hand& hand, const std::string& name,
                std::map<std::string, std::vector<double>>& waits, const std::function<bool()>& goes_on) {
  const QString unit =
      hand.app().yard.property("units").toList().first().toMap().value(QStringLiteral("id")).toString();
  QObject* const stack = hand.window().findChild<QObject*>(QStringLiteral("stack"));
  application.kind = application.next_kind = name;
  while (goes_on()) {
    QElapsedTimer timer;
    timer.start();
    QMetaObject::invokeMethod(&hand.window(), "open", Q_ARG(QString, QStringLiteral("UnitPage")),
                              Q_ARG(QVariant, QVariantMap({{QStringLiteral("unit"), unit}})));
    hand.until([&] { return !hand.app().app.busy(); });
    waits[name].push_back(static_cast<double>(timer.nsecsElapsed()) / 1e6);
    hand.wait(300);
    QMetaObject::invokeMethod(stack, "goBack");
    hand.wait(300);
  }
  application.kind = application.next_kind = "";
}

/// A yard's phone on which somebody works while the records of another one arrive from a share.
int sync(MeasuredApplication& application, int records) {
  const QTemporaryDir scratch;
  const QString yard = scratch.filePath(QStringLiteral("phone"));
  const far_side::samples::RealServer server("webdav",
                                             scratch.filePath(QStringLiteral("server")).toStdString());
  if (!server.runs()) {
    std::fprintf(stderr, "%s are needed.\n", server.packages());
    return 1;
  }
  {
    Hand hand(1.0, yard);
    Person person(hand);
    person.makeYard();
    person.addUnit();
    Syncer& syncer = hand.app().syncer;
    syncer.setByItself(false);
    syncer.setUp({{QStringLiteral("kind"), QStringLiteral("webdav")},
                  {QStringLiteral("url"), QString::fromStdString(server.url())},
                  {QStringLiteral("user"), QStringLiteral("technician")},
                  {QStringLiteral("ca_file"), QString::fromStdString(server.caFile())}},
                 QString::fromStdString(server.secret()));
    hand.until([&] { return syncer.canBegin(); });
  }
  const std::string store_file = (yard + QStringLiteral("/yard/store.db")).toStdString();
  {
    const hingepin::sync::samples::Folder folder;
    const auto others = hingepin::sync::samples::phones(folder, 1);
    hingepin::sync::samples::Handset& other = *others.front();
    {
      auto batch = other.store->beginBatch();
      for (int number = 0; number < records; ++number) other.workWithoutLog();
      if (!batch || !batch->commit()) return 1;
    }
    other.exchangeWith(server.remote());
    // The phone's yard knows who works on the other one.
    auto store = store::Store::open(store_file);
    const records::SealedSigners list = hingepin::sync::samples::yardOf(others);
    if (!store || !store->putSigners(list, hingepin::sync::samples::kNow, false) ||
        !store->acceptRoot(list.name))
      return 1;
  }
  std::map<std::string, std::vector<double>> waits;
  {
    Hand hand(1.0, yard);
    Person person(hand);
    person.unlock(QStringLiteral("Ada Example"), kPassphrase);
    Syncer& syncer = hand.app().syncer;
    hand.until([&] { return syncer.canBegin() && !hand.app().app.busy(); });
    QElapsedTimer timer;
    timer.start();
    constexpr int kQuiet_ms = 20000;
    lookAtUnit(application, hand, "a unit is opened, again and again", waits,
               [&] { return timer.elapsed() < kQuiet_ms; });
    timer.restart();
    syncer.begin();
    lookAtUnit(application, hand, "likewise, while records arrive", waits, [&] { return syncer.running(); });
    std::printf("%.1f s for the exchange; %s\n", static_cast<double>(timer.elapsed()) / 1000.0,
                qUtf8Printable(syncer.property("problem").toString()));
  }
  const auto store = store::Store::open(store_file);
  const auto names = store ? store->statementNames() : std::unexpected(store.error());
  std::printf("%zu statements are there\n", names ? names->size() : 0);
  printFrames(application);
  std::puts(
      "| from the press until all is read, ms | times | p50 | p95 | p99 | most |\n| --- | --- | --- | --- | "
      "--- | --- |");
  for (const auto& [name, values] : waits) printQuantiles(name, values);
  return 0;
}

/// Resident memory in MiB.
double resident_MiB() {
  QFile file(QStringLiteral("/proc/self/statm"));
  if (!file.open(QIODevice::ReadOnly)) return 0;
  return file.readAll().split(' ').value(1).toDouble() * static_cast<double>(sysconf(_SC_PAGESIZE)) /
         1048576.0;
}

/// A sensor gateway on a line: a boom that goes up and down, never far enough for a whole pass.
class Gateway {
 public:
  explicit Gateway(std::function<double()> now_s) : now_s_(std::move(now_s)), sent_s_(now_s_()) {
    server_.listen(QHostAddress::LocalHost);
    QObject::connect(&server_, &QTcpServer::newConnection, [this] {
      socket_ = server_.nextPendingConnection();
      socket_->write(
          "time [s],boom_sensor [V],head_pressure [bar],rod_pressure [bar],oil_temperature [Cel]\n");
      sent_s_ = now_s_();
    });
    QObject::connect(&timer_, &QTimer::timeout, [this] { send(); });
    timer_.start(20);
  }
  [[nodiscard]] QString address() const { return QStringLiteral("127.0.0.1:%1").arg(server_.serverPort()); }
  [[nodiscard]] long rows() const { return rows_; }

 private:
  void send() {
    constexpr double kPeriod_s = 0.02;
    while (socket_ != nullptr && sent_s_ + kPeriod_s <= now_s_()) {
      sent_s_ += kPeriod_s;
      // Four seconds up, two still, four down, two still.
      const double phase = std::fmod(sent_s_, 12.0);
      const double way = phase < 4 ? phase / 4 : phase < 6 ? 1 : phase < 10 ? (10 - phase) / 4 : 0;
      const double noise = std::sin(static_cast<double>(rows_) * 12.9898) * 0.5;
      socket_->write(QStringLiteral("%1,%2,%3,%4,55\n")
                         .arg(sent_s_, 0, 'f', 2)
                         .arg(2.0 + 0.4 * way + 0.001 * noise, 0, 'f', 4)
                         .arg(100 + 15 * way + noise, 0, 'f', 1)
                         .arg(4 + 0.2 * noise, 0, 'f', 1)
                         .toLatin1());
      ++rows_;
    }
  }
  std::function<double()> now_s_;
  double sent_s_;
  long rows_ = 0;
  QTcpServer server_;
  QTcpSocket* socket_ = nullptr;
  QTimer timer_;
};

int memory(double minutes) {
  constexpr double kSpeed = 15.0;  // faster, and what lies between two looks counts as a drop-out
  AtFirstPass at;
  at.person.work(QStringLiteral("log-slow"));
  at.hand.clock().setSpeed(kSpeed);
  const auto now_s = [&] { return static_cast<double>(at.hand.app().app.backend().now().at_ms) / 1000.0; };
  Gateway gateway(now_s);
  at.hand.app().live.open(QStringLiteral("line"), gateway.address());
  const double begun_s = now_s();
  std::puts("| minutes of feed | rows | resident, MiB |\n| --- | --- | --- |");
  for (double minute = 0; minute <= minutes; minute += 5) {
    at.hand.until([&] { return now_s() >= begun_s + 60 * minute; }, 600000);
    std::printf("| %.0f | %ld | %.1f |\n", minute, gateway.rows(), resident_MiB());
    std::fflush(stdout);
  }
  std::printf("alive at the end: %s, step %s\n", at.hand.app().live.property("alive").toBool() ? "yes" : "no",
              qUtf8Printable(at.hand.app().job.view().about));
  return 0;
}

}  // namespace
}  // namespace hingepin::mobile

int main(int argc, char** argv) {
  ::testing::InitGoogleTest(&argc, argv);
  hingepin::mobile::MeasuredApplication application(argc, argv);
  QQuickStyle::setStyle(QStringLiteral("Basic"));
  const QStringList arguments = QCoreApplication::arguments();
  const QString what = arguments.value(1);
  if (what == QLatin1String("app")) return hingepin::mobile::startApp(arguments.value(2));
  if (what == QLatin1String("start"))
    return hingepin::mobile::start(arguments.value(2, QStringLiteral("15")).toInt());
  if (what == QLatin1String("frames")) return hingepin::mobile::frames(application);
  if (what == QLatin1String("chart")) return hingepin::mobile::chart(application);
  if (what == QLatin1String("sync"))
    return hingepin::mobile::sync(application, arguments.value(2, QStringLiteral("10000")).toInt());
  if (what == QLatin1String("memory"))
    return hingepin::mobile::memory(arguments.value(2, QStringLiteral("60")).toDouble());
  std::fputs("app_benchmark start [RUNS] | frames | chart | sync [RECORDS] | memory [MINUTES]\n", stderr);
  return 2;
}
