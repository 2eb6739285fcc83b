// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QElapsedTimer>
#include <QQmlApplicationEngine>
#include <QQuickItem>
#include <QQuickWindow>
#include <QString>
#include <QTemporaryDir>
#include <QTimer>
#include <atomic>
#include <functional>
#include <memory>

#include "models.h"

namespace hingepin::mobile {

/// What a job cost its user.
struct Effort {
  int taps = 0;
  int keys = 0;
};

/// The computer's clock, running faster. It goes on only while the screen's thread has time for it: a busy
/// computer makes the app's time slower, never the feed thinner.
class TestClock {
 public:
  /// @param begun when it was the computer's time; that of another process makes this clock go on from it
  TestClock(double speed, session::Moment begun);
  [[nodiscard]] session::Moment now() const;
  /// From now on.
  void setSpeed(double speed) { speed_ = speed; }

 private:
  session::Moment begun_;
  double speed_;
  std::atomic<double> gone_ms_ = 0;
  QElapsedTimer since_;
  QTimer timer_;
};

/// The app in a window of its own, and a finger on it: presses where something stands on the screen, types on
/// the keyboard, scrolls what lies below. It knows no more of the app than what is shown.
class Hand {
 public:
  /// @param folder where the yard is kept; "" for a new one of its own
  /// @param speed how many times faster the app's clock runs than the test's, and how much shorter a press is
  /// held, for holds and passes of minutes
  explicit Hand(double speed = 1.0, const QString& folder = {},
                const QString& language = QStringLiteral("en"),
                const session::Moment& begun = folder::momentOfComputer());
  ~Hand();

  [[nodiscard]] Models& app() { return *models_; }
  [[nodiscard]] TestClock& clock() { return clock_; }
  [[nodiscard]] QQuickWindow& window() { return *window_; }
  /// The singleton of colours and sizes.
  [[nodiscard]] QObject* theme();
  [[nodiscard]] QString folder() const { return folder_; }
  [[nodiscard]] Effort effort() const { return effort_; }
  /// Of the app's clock, since the first start of that clock.
  [[nodiscard]] double now_s() const { return static_cast<double>(clock_.now().at_ms) / 1000.0; }

  /// Whether a press with this text (or beginning) is on the screen, also below the fold.
  [[nodiscard]] QQuickItem* find(const QString& text) const;
  [[nodiscard]] bool shows(const QString& text) const;
  /// Waits until it can be pressed, brings it into view, presses it, as long as it asks to be held. Fails the
  /// test where it does not come.
  void tap(const QString& text);
  /// Into the field of that label, after what stands there.
  void type(const QString& label, const QString& text);
  void keys(const QString& text);
  void drag(QQuickItem* item);
  void wait(int ms);
  /// @return whether it came true in time
  bool until(const std::function<bool()>& condition, int ms = 60000);
  void resize(int width, int height);
  QImage grab();
  /// All texts that are on the screen now, for messages.
  [[nodiscard]] QString everything() const;

 private:
  void show(QQuickItem* item);
  void press(QQuickItem* item);

  QTemporaryDir own_;
  QString folder_;
  TestClock clock_;
  std::unique_ptr<folder::Diagnostics> diagnostics_;
  std::unique_ptr<Models> models_;
  std::unique_ptr<QQmlApplicationEngine> engine_;
  std::unique_ptr<QObject> holder_;
  QQuickWindow* window_ = nullptr;
  Effort effort_;
};

/// Visits an item and all below it that can be seen; `visit` returns false to stop.
void eachItem(QQuickItem* item, const std::function<bool(QQuickItem*)>& visit);

/// What is wrong on the screen now: text cut off, larger than its place, over other text or beside the
/// screen; targets too small or over each other; what a screen reader is not told, or is told without its
/// role.
[[nodiscard]] QStringList faultsOf(Hand& hand);

/// Text that does not stand out from what is behind it on the screen now: less than 7:1, for large letters
/// less than 4.5:1 (WCAG 2.1, success criteria 1.4.6 and 1.4.3; large: 24 px, bold 18.66 px, of its
/// definition of large scale at 96 px an inch). What can't be pressed now, which WCAG leaves out, has to
/// be 4.5:1 as well.
[[nodiscard]] QStringList faintTextsOf(Hand& hand);

/// Contrast ratio of two colours, 1 to 21. Source: WCAG 2.1, definitions of relative luminance and contrast
/// ratio.
[[nodiscard]] double contrast(const QColor& first, const QColor& second);

/// What a press is called: its text.
[[nodiscard]] QString textOf(QQuickItem* item);

}  // namespace hingepin::mobile
