// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QString>
#include <QStringList>
#include <QVariantList>
#include <string>

#include "engine/session/catalogue.h"
#include "engine/session/job.h"
#include "engine/session/locale.h"
#include "engine/session/proof_readings.h"

namespace hingepin::mobile {

/// What a job asks for now, in words: what a screen shows of it.
struct JobView {
  Q_GADGET
  QML_VALUE_TYPE(jobView)
  Q_PROPERTY(QString id MEMBER id)
  Q_PROPERTY(QString unit MEMBER unit)
  Q_PROPERTY(QString attachment MEMBER attachment)
  Q_PROPERTY(QString procedure MEMBER procedure)
  Q_PROPERTY(QString title MEMBER title)
  Q_PROPERTY(QString comesFirst MEMBER comes_first)
  Q_PROPERTY(QString phase MEMBER phase)
  Q_PROPERTY(bool practice MEMBER practice)
  Q_PROPERTY(int done MEMBER done)
  Q_PROPERTY(int total MEMBER total)
  Q_PROPERTY(QString ask MEMBER ask)
  Q_PROPERTY(QString kind MEMBER kind)
  Q_PROPERTY(QString about MEMBER about)
  Q_PROPERTY(QString text MEMBER text)
  Q_PROPERTY(QString detail MEMBER detail)
  Q_PROPERTY(QString signalWord MEMBER signal_word)
  Q_PROPERTY(QString hazard MEMBER hazard)
  Q_PROPERTY(QString consequence MEMBER consequence)
  Q_PROPERTY(QString avoidance MEMBER avoidance)
  Q_PROPERTY(QVariantList answers MEMBER answers)
  Q_PROPERTY(bool secondPerson MEMBER second_person)
  Q_PROPERTY(QStringList actingRoles MEMBER acting_roles)
  Q_PROPERTY(bool machineSource MEMBER machine_source)
  Q_PROPERTY(bool fromMonitor MEMBER from_monitor)
  Q_PROPERTY(QString quantity MEMBER quantity)
  Q_PROPERTY(QString unitCode MEMBER unit_code)
  Q_PROPERTY(QVariantList units MEMBER units)
  Q_PROPERTY(QString low MEMBER low)
  Q_PROPERTY(QString high MEMBER high)
  Q_PROPERTY(QString lastValue MEMBER last_value)
  Q_PROPERTY(QVariantMap known MEMBER known)
  Q_PROPERTY(bool byItself MEMBER by_itself)
  Q_PROPERTY(QVariantMap measure MEMBER measure)
  Q_PROPERTY(QStringList found MEMBER found)
  Q_PROPERTY(QString doubtValue MEMBER doubt_value)
  Q_PROPERTY(QVariantList suggestions MEMBER suggestions)
  Q_PROPERTY(int hold_ms MEMBER hold_ms)
  Q_PROPERTY(double finishedAt_ms MEMBER finished_at_ms)
  Q_PROPERTY(QString boom MEMBER boom)
  Q_PROPERTY(QString bucket MEMBER bucket)
  Q_PROPERTY(QString approach MEMBER approach)
  Q_PROPERTY(QString direction MEMBER direction)
  Q_PROPERTY(QString pace MEMBER pace)
  Q_PROPERTY(QString load MEMBER load)
  Q_PROPERTY(QString log MEMBER log)
  Q_PROPERTY(bool photo MEMBER photo)
  Q_PROPERTY(bool optional MEMBER optional)
  Q_PROPERTY(bool onGlass MEMBER on_glass)
  Q_PROPERTY(QString failed MEMBER failed)
  Q_PROPERTY(QString failedWhy MEMBER failed_why)
  Q_PROPERTY(QStringList marks MEMBER marks)
  Q_PROPERTY(QStringList tag MEMBER tag)
  Q_PROPERTY(QVariantList history MEMBER history)
  Q_PROPERTY(QString goBackTo MEMBER go_back_to)
  Q_PROPERTY(QString record MEMBER record)
  Q_PROPERTY(bool mine MEMBER mine)
  Q_PROPERTY(QString inCharge MEMBER in_charge)
  Q_PROPERTY(bool mayTakeOver MEMBER may_take_over)

 public:
  QString id, unit, attachment, procedure, title, comes_first, phase;
  bool practice = false;
  int done = 0;
  int total = 0;
  QString ask, kind, about, text, detail, signal_word, hazard, consequence, avoidance;
  QVariantList answers;  ///< {id, text, good}
  bool second_person = false;
  QStringList acting_roles;  ///< who may answer, where that is not whoever is in charge
  bool machine_source = false;
  bool from_monitor = false;  ///< the unit's monitor shows it, or nobody knows what that shows
  QString quantity, unit_code;
  QVariantList units;  ///< {code, symbol}
  QString low, high, last_value, doubt_value;
  /// {number, unit, text}: what a mass on file or read before in this job was; it may be the same one.
  QVariantMap known;
  QVariantMap measure;       ///< what of the linkage is measured, as measureMap has it; empty for none
  QStringList found;         ///< what the last survey of the linkage says, once it was judged
  bool by_itself = false;    ///< no person need press
  QVariantList suggestions;  ///< {value, text}
  int hold_ms = 0;
  double finished_at_ms = -1;
  QString boom, bucket, approach, direction, pace, load, log;
  bool photo = true;
  bool optional = false;
  bool on_glass = false;
  QString failed, failed_why;
  QStringList marks, tag;
  QVariantList history;  ///< {step, text, value, outcome, counts, time}, the newest first
  QString go_back_to;    ///< the step that may be done again now; "" for none
  QString record;
  bool mine = true;            ///< who is at the phone is in charge
  QString in_charge;           ///< the key of who is
  bool may_take_over = false;  ///< who is at the phone acts in a role that may run it
};

struct ViewFor {
  session::Reader reader;
  std::string key;  ///< of who looks
  std::string role;
};

[[nodiscard]] JobView viewOf(const session::OpenJob& job, const ViewFor& reader);

/// What the engine weighed in a lift, as its press shows it in the reader's units: {text, doubt}.
[[nodiscard]] QVariantMap weighedView(const session::WeighedLift& lift, const session::Reader& reader);

/// A unit as people write it: "kg", "°C", "bar".
[[nodiscard]] QString unitSymbol(std::string_view ucum, const session::Locale& locale = {});

}  // namespace hingepin::mobile
