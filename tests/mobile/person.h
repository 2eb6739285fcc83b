// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <functional>
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
  /// Gives the phone to somebody else, from the first page: they open it with their own passphrase.
  void handTo(const QString& name, const QString& passphrase);
  /// At the phone that asks who is there.
  void unlock(const QString& name, const QString& passphrase);
  void addUnit(bool practice = true);
  void addAttachment();
  /// From the list of units into a job, and back to the list with what was left open or has ended.
  void begin(const QString& procedure, const QString& way = {});
  void goOnWith(const QString& procedure);
  void leave();
  /// Works until the job has ended, or a step is asked for. @return whether it came there
  bool work(const QString& until = {});
  /// One thing that is asked for.
  bool step();
  /// What a plan of the engine's tests says is read.
  void readPlan(const QString& name);
  std::vector<QString> seen;  ///< steps in the order in which they were asked for
  /// Called when something was answered and taken, with the step.
  std::function<void(const QString&)> answered;
  /// What each kind of step cost, and the app's time that went into them. Moving the practice loader stands
  /// for levers and is none of it.
  std::map<QString, Effort> spent;
  double waited_s = 0;  ///< while the machine moved, or a hold was counted down
  int movements = 0;    ///< presses that stand for levers

 private:
  [[nodiscard]] std::string next(const std::string& step) const;
  void enter(const QString& quantity);
  /// Answers what is asked. @return whether that was possible
  bool act(const JobView& view);
  void move(const JobView& view);
  /// What changes when something else is asked for.
  [[nodiscard]] QString turn() const;

  Hand& hand_;
};

/// What a job costs who does it, apart from the machine's own time; kept in tests/benchmarks/RESULTS.md.
class Cost {
 public:
  Cost(Person& person, Hand& hand, QString job);
  ~Cost();

 private:
  Person& person_;
  Hand& hand_;
  QString job_;
  Effort before_;
  double begun_s_;
};

/// That the job on the screen is sealed, and that the program `hingepin` accepts its record and all others of
/// the yard.
void expectSealed(Hand& hand, const QString& phase = QStringLiteral("done"));

/// Works through a walk-round of the unit, back to the list.
void walkRound(Hand& hand);

/// A yard with two people, a unit and an attachment, made on the screen, and its walk-round done.
struct MadeYard {
  explicit MadeYard(double speed);
  Hand hand;
  Person person;
};

inline const QString kPassphrase = QStringLiteral("quiet gravel morning");
inline const QString kOtherPassphrase = QStringLiteral("seven yellow buckets");

}  // namespace hingepin::mobile
