// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <map>
#include <string>
#include <vector>

#include "hand.h"

namespace hingepin::mobile {

/// Somebody who works through a job on the screen: reads what is asked, presses and types what a good person
/// would.
class Person {
 public:
  explicit Person(Hand& hand) : hand_(hand) {}

  /// What is read at a step, as a quantity ("52 Cel"), several where it is read again; as in the plans of the
  /// engine's tests.
  std::map<std::string, std::vector<std::string>> says;
  /// Answers that are not the good one, once each: "no", "failed", ...
  std::map<std::string, std::string> answers;
  /// Live values are taken where the feed has them.
  bool live = false;
  /// The passphrase of whoever confirms as a second person.
  QString other_passphrase;

  /// First start: a yard of one's own.
  void makeYard(const QString& name = QStringLiteral("Ada Example"));
  /// Adds a person who may confirm.
  void addPerson(const QString& name, const QString& role);
  void addUnit(bool practice = true);
  void addAttachment();
  /// From the list of units into a job.
  void begin(const QString& procedure, const QString& way = {});
  /// Works until the job has ended, or a step is asked for. @return whether it came there
  bool work(const QString& until = {});
  /// One thing that is asked for.
  bool step();
  /// What a plan of the engine's tests says is read.
  void readPlan(const QString& name);
  std::vector<QString> seen;  ///< steps in the order in which they were asked for

 private:
  [[nodiscard]] std::string next(const std::string& step);
  void enter(const QString& quantity);

  Hand& hand_;
  std::map<std::string, std::size_t> used_;
};

inline const QString kPassphrase = QStringLiteral("quiet gravel morning");
inline const QString kOtherPassphrase = QStringLiteral("seven yellow buckets");

}  // namespace hingepin::mobile
