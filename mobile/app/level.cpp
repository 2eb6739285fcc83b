// SPDX-License-Identifier: GPL-3.0-or-later
#include "level.h"

#include "app.h"
#include "text.h"

#include "engine/units/degree.h"

namespace hingepin::mobile {
namespace {

Level* the_level = nullptr;
constexpr int kMeasure_ms = 4000;

}  // namespace

Level::Level(App& app) : app_(app) {
  the_level = this;
  timer_.setSingleShot(true);
  timer_.setInterval(kMeasure_ms);
  connect(&timer_, &QTimer::timeout, this, [this] {
    sensor_.stop();
    finish();
  });
  connect(&sensor_, &QAccelerometer::readingChanged, this, [this] {
    const QAccelerometerReading* const reading = sensor_.reading();
    constexpr double kPerMicrosecond = 1e-6;
    samples_.push_back({static_cast<double>(reading->timestamp()) * kPerMicrosecond, reading->x(),
                        reading->y(), reading->z()});
  });
}

Level::~Level() { the_level = nullptr; }

Level* Level::create(QQmlEngine*, QJSEngine*) {
  QJSEngine::setObjectOwnership(the_level, QJSEngine::CppOwnership);
  return the_level;
}

bool Level::present() const { return !QSensor::sensorsForType(QAccelerometer::sensorType).isEmpty(); }

void Level::measure() {
  samples_.clear();
  trouble_.clear();
  measuring_ = true;
  sensor_.setAccelerationMode(QAccelerometer::Combined);
  sensor_.start();
  timer_.start();
  Q_EMIT changed();
}

void Level::take(std::vector<session::AccelerationSample> samples) {
  samples_ = std::move(samples);
  finish();
}

void Level::finish() {
  measuring_ = false;
  const auto reading = session::readLevel(samples_);
  if (!reading) {
    trouble_ = app_.say(reading.error());
  } else if (!first_) {
    first_ = *reading;
    has_first_ = true;
  } else {
    const auto both = session::combineLevels(*first_, *reading);
    if (!both) {
      trouble_ = app_.say(both.error());
    } else {
      const session::Locale& locale = session::localeOf(app_.reader().language);
      constexpr double kExpanded = 2.0;
      typed_ =
          QString::number(both->slope_rad / kDegree, 'f', 2).replace(QLatin1Char('.'), app_.decimalMark());
      result_ = tr("%1 ± %2").arg(
          qt(session::show(Amount{both->slope_rad / kDegree, "deg", 2}, app_.system(), locale)),
          qt(session::show(Amount{kExpanded * both->slope_u_rad / kDegree, "deg", 2}, app_.system(),
                           locale)));
    }
  }
  Q_EMIT changed();
}

void Level::again() {
  first_.reset();
  has_first_ = false;
  result_.clear();
  typed_.clear();
  trouble_.clear();
  Q_EMIT changed();
}

}  // namespace hingepin::mobile
