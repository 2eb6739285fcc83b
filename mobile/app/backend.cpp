// SPDX-License-Identifier: GPL-3.0-or-later
#include "backend.h"

namespace hingepin::mobile {

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
