// SPDX-License-Identifier: GPL-3.0-or-later
#include "hand.h"

#include <gtest/gtest.h>
#include <QDir>
#include <QPointer>
#include <QQmlComponent>
#include <QSettings>
#include <QSignalSpy>
#include <QTest>
#include <cmath>

namespace hingepin::mobile {
namespace {

QPointingDevice* finger() {
  static QPointingDevice* const device = QTest::createTouchDevice();
  return device;
}

bool isPress(QQuickItem* item) { return item->metaObject()->indexOfSignal("pressedFully()") >= 0; }

/// How well a text is the one that is wanted: 0 not, 1 it begins so, 2 it is. A sign stands before some.
int match(const QString& shown, const QString& wanted) {
  const QString plain = shown.mid(2);
  if (shown == wanted || plain == wanted) return 2;
  return shown.startsWith(wanted) || plain.startsWith(wanted) ? 1 : 0;
}

/// More at once would count as a feed that dropped out (session::LiveLimits::silent_ms), with what passes
/// between two looks at it.
constexpr double kMostAtOnce_ms = 250;

}  // namespace

TestClock::TestClock(double speed, session::Moment begun)
    : begun_(std::move(begun)),
      speed_(speed),
      gone_ms_(speed * static_cast<double>(folder::momentOfComputer().at_ms - begun_.at_ms)) {
  since_.start();
  QObject::connect(&timer_, &QTimer::timeout, [this] {
    const double passed_ms = static_cast<double>(since_.nsecsElapsed()) / 1e6;
    since_.restart();
    gone_ms_ = gone_ms_ + std::min(passed_ms * speed_, kMostAtOnce_ms);
  });
  timer_.start(1);
}

session::Moment TestClock::now() const {
  session::Moment now = begun_;
  const auto gone_ms = static_cast<std::int64_t>(gone_ms_.load());
  now.at_ms += gone_ms;
  now.utc_ms += gone_ms;
  return now;
}

void eachItem(QQuickItem* item, const std::function<bool(QQuickItem*)>& visit) {
  if (!item->isVisible() || item->opacity() <= 0) return;
  if (!visit(item)) return;
  for (QQuickItem* child : item->childItems()) eachItem(child, visit);
}

QString textOf(QQuickItem* item) { return item->property("text").toString(); }

Hand::Hand(double speed, const QString& folder, const QString& language, const session::Moment& begun)
    : folder_(folder.isEmpty() ? own_.path() : folder), clock_(speed, begun) {
  {
    QSettings settings(QDir(folder_).filePath(QStringLiteral("settings.ini")), QSettings::IniFormat);
    if (!settings.contains(QStringLiteral("language")))
      settings.setValue(QStringLiteral("language"), language);
    settings.setValue(QStringLiteral("sounds"), false);
  }
  auto diagnostics =
      folder::Diagnostics::open({.path = QDir(folder_).filePath(QStringLiteral("log")).toStdString(),
                                 .utc_ms = [this] { return clock_.now().utc_ms; }});
  if (!diagnostics) qFatal("the log can't be kept");
  diagnostics_ = std::move(*diagnostics);
  models_ = std::make_unique<Models>(
      Start{.folder = folder_, .clock = [this] { return clock_.now(); }, .diagnostics = diagnostics_.get()});
  engine_ = std::make_unique<QQmlApplicationEngine>();
  engine_->addImportPath(QStringLiteral("qrc:/qt/qml"));
  engine_->load(QUrl(QStringLiteral("qrc:/qt/qml/Hingepin/Main.qml")));
  if (engine_->rootObjects().isEmpty()) qFatal("the app does not start");
  window_ = qobject_cast<QQuickWindow*>(engine_->rootObjects().first());
  for (const char* time : {"settle_ms", "movementHold_ms", "wetHold_ms"}) {
    QObject* const times = theme();
    times->setProperty(time, static_cast<int>(std::lround(times->property(time).toInt() / speed)));
  }
  window_->requestActivate();
  EXPECT_TRUE(QTest::qWaitForWindowExposed(window_));
}

Hand::~Hand() {
  holder_.reset();
  engine_.reset();
  models_.reset();
}

QQuickItem* Hand::find(const QString& text) const {
  QQuickItem* found = nullptr;
  int best = 0;
  eachItem(window_->contentItem(), [&](QQuickItem* item) {
    const int how = isPress(item) ? match(textOf(item), text) : 0;
    if (how > best) {
      best = how;
      found = item;
    }
    return true;
  });
  return found;
}

bool Hand::shows(const QString& text) const {
  bool found = false;
  eachItem(window_->contentItem(), [&](QQuickItem* item) {
    found = found || textOf(item).contains(text);
    return !found;
  });
  return found;
}

QString Hand::everything() const {
  QStringList texts;
  eachItem(window_->contentItem(), [&](QQuickItem* item) {
    if (const QString text = textOf(item); !text.isEmpty()) texts.append(text);
    return true;
  });
  texts.removeDuplicates();
  return texts.join(QStringLiteral(" | "));
}

QObject* Hand::theme() {
  QQmlComponent component(engine_.get());
  component.setData("import QtQml\nimport Hingepin\nQtObject { property QtObject theme: Theme }", QUrl());
  holder_.reset(component.create());
  return holder_ ? holder_->property("theme").value<QObject*>() : nullptr;
}

void Hand::wait(int ms) { QTest::qWait(ms); }

bool Hand::until(const std::function<bool()>& condition, int ms) { return QTest::qWaitFor(condition, ms); }

void Hand::resize(int width, int height) {
  window_->resize(width, height);
  until([&] { return window_->width() == width && window_->height() == height; }, 2000);
  wait(60);
}

QImage Hand::grab() { return window_->grabWindow(); }

/// Brings an item into the middle of the surface that it lies on, as far as that scrolls.
void Hand::show(QQuickItem* item) {
  QQuickItem* surface = item->parentItem();
  while (surface != nullptr && !surface->inherits("QQuickFlickable")) surface = surface->parentItem();
  if (surface == nullptr) return;
  const qreal middle = item->mapToItem(surface, QPointF(0, item->height() / 2)).y();
  if (middle > item->height() / 2 && middle < surface->height() - item->height() / 2) return;
  const qreal most = std::max<qreal>(0, surface->property("contentHeight").toReal() - surface->height());
  const qreal wanted = surface->property("contentY").toReal() + middle - surface->height() / 2;
  surface->setProperty("contentY", std::clamp<qreal>(wanted, 0, most));
  wait(30);
}

void Hand::press(QQuickItem* item) {
  QPointingDevice* const device = finger();
  const QPoint at = item->mapToScene(QPointF(item->width() / 2, item->height() / 2)).toPoint();
  const bool is_held = item->property("hold_ms").toInt() > 0;
  const auto pressed = is_held ? std::make_unique<QSignalSpy>(item, SIGNAL(pressedFully())) : nullptr;
  QTest::touchEvent(window_, device).press(1, at);
  // Held until it counts.
  if (pressed) {
    EXPECT_TRUE(until([&] { return !pressed->isEmpty(); }));
  }
  QTest::touchEvent(window_, device).release(1, at);
  ++effort_.taps;
}

void Hand::tap(const QString& text) {
  QPointer<QQuickItem> item;
  const auto can_be_pressed = [&] {
    // Lists are made anew while the app says that it works.
    return item && !models_->app.busy() && item->isEnabled() && item->property("settled").toBool();
  };
  // While it is brought into view it may be made anew too.
  do {
    if (!until([&] {
          item = find(text);
          return can_be_pressed();
        })) {
      FAIL() << "\"" << text.toStdString()
             << "\" can't be pressed; on the screen: " << everything().toStdString();
    }
    show(item);
  } while (!can_be_pressed());
  press(item);
  wait(5);
}

void Hand::type(const QString& label, const QString& text) {
  QQuickItem* field = nullptr;
  const bool there = until([&] {
    eachItem(window_->contentItem(), [&](QQuickItem* item) {
      if (item->property("label").toString().startsWith(label) && item->property("echoMode").isValid())
        field = item;
      return field == nullptr;
    });
    return field != nullptr;
  });
  if (!there)
    FAIL() << "no field \"" << label.toStdString() << "\"; on the screen: " << everything().toStdString();
  QPointer<QQuickItem> input;
  eachItem(field, [&](QQuickItem* item) {
    if (item->inherits("QQuickTextField")) input = item;
    return input == nullptr;
  });
  show(input);
  press(input);
  EXPECT_TRUE(until([&] { return input && input->hasFocus(); })) << label.toStdString();
  keys(text);
}

/// A stroke across an item, as a signature is.
void Hand::drag(QQuickItem* item) {
  show(item);
  QPointingDevice* const device = finger();
  const QPointF from = item->mapToScene(QPointF(item->width() * 0.2, item->height() * 0.6));
  QTest::touchEvent(window_, device).press(1, from.toPoint());
  constexpr int kSteps = 12;
  for (int step = 1; step <= kSteps; ++step) {
    const QPointF way(item->width() * 0.6 * step / kSteps, (step % 2 == 0 ? -1 : 1) * item->height() * 0.2);
    QTest::touchEvent(window_, device).move(1, (from + way).toPoint());
    wait(4);
  }
  QTest::touchEvent(window_, device).release(1, (from + QPointF(item->width() * 0.6, 0)).toPoint());
  ++effort_.taps;
}

void Hand::keys(const QString& text) {
  for (const QChar c : text) {
    QTest::keyClick(window_, c.toLatin1());
    ++effort_.keys;
  }
}

}  // namespace hingepin::mobile
