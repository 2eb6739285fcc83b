// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QCoreApplication>
#include <QObject>
#include <QPointer>
#include <QThread>
#include <atomic>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <utility>

#include "engine/folder/folder.h"
#include "engine/session/job_record.h"
#include "engine/session/moment.h"

namespace hingepin::mobile {

/// What the engine holds while the app runs. Lives on the backend's thread, and nobody else touches it.
struct Desk {
  std::optional<folder::Folder> folder;
  std::map<std::string, records::SecretKey> keys;  ///< opened with their passphrase, by thumbprint
};

/// The hand that seals for a key that was opened. Errors: NotFound "key-not-here".
[[nodiscard]] Expected<session::Sealer> sealerOf(const Desk& desk, const std::string& key,
                                                 const std::string& role);

/// Gives the time; a test may hand in one that runs faster.
using Clock = std::function<session::Moment()>;

/// The one thread on which the engine works, so that the screen never waits for a disk or a fit. Work is done
/// in the order in which it was asked for.
class Backend : public QObject {
  Q_OBJECT

 public:
  explicit Backend(Clock clock);
  ~Backend() override;

  [[nodiscard]] session::Moment now() const { return clock_(); }
  [[nodiscard]] bool isBusy() const { return waiting_ > 0; }

  /// Does `work(desk)` on the backend's thread, then `then(result)` on the thread of `receiver`, if that
  /// still lives.
  template <class Work, class Then>
  void ask(QObject* receiver, Work work, Then then) {
    change(+1);
    QMetaObject::invokeMethod(
        worker_,
        [this, guard = QPointer<QObject>(receiver), work = std::move(work),
         then = std::move(then)]() mutable {
          using Result = std::invoke_result_t<Work, Desk&>;
          auto result = std::make_shared<Result>(work(desk_));
          QMetaObject::invokeMethod(
              this,
              [this, guard, result, then = std::move(then)]() mutable {
                change(-1);
                if (guard) then(std::move(*result));
              },
              Qt::QueuedConnection);
        },
        Qt::QueuedConnection);
  }

 Q_SIGNALS:
  void busyChanged();

 private:
  void change(int by);

  Clock clock_;
  Desk desk_;
  int waiting_ = 0;
  QThread thread_;
  QObject* worker_;
};

}  // namespace hingepin::mobile
