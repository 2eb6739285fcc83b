// SPDX-License-Identifier: GPL-3.0-or-later
#include "backend.h"

namespace hingepin::mobile {

Expected<session::Sealer> sealerOf(const Desk& desk, const std::string& key, const std::string& role) {
  const auto own = desk.keys.find(key);
  if (own == desk.keys.end()) {
    constexpr std::size_t kShort = 8;
    return fail(ErrorKind::NotFound, "key-not-here", {{"name", key.substr(0, kShort)}});
  }
  return session::Sealer{.key = own->second,
                         .role = role,
                         .installation = desk.folder->installation,
                         .epoch = desk.folder->epoch};
}

Backend::Backend(Clock clock) : clock_(std::move(clock)), worker_(new QObject) {
  worker_->moveToThread(&thread_);
  thread_.setObjectName(QStringLiteral("engine"));
  connect(&thread_, &QThread::finished, worker_, &QObject::deleteLater);
  thread_.start();
}

Backend::~Backend() {
  thread_.quit();
  thread_.wait();
}

void Backend::change(int by) {
  const bool was = isBusy();
  waiting_ += by;
  if (was != isBusy()) Q_EMIT busyChanged();
}

}  // namespace hingepin::mobile
