// SPDX-License-Identifier: GPL-3.0-or-later
#include "person.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QDir>
#include <QProcess>
#include <QTest>
#include <algorithm>
#include <cmath>
#include <iostream>

#include "tests/engine/session/plan.h"

namespace hingepin::mobile {

void Person::readPlan(const QString& name) {
  const auto plan = session::readPlan(std::string(HINGEPIN_SOURCE_DIR) + "/tests/engine/session/plans/" +
                                      name.toStdString() + ".plan.json");
  for (const auto& [step, said] : plan.at("says").items()) {
    std::vector<std::string> values;
    for (const auto& value : said.is_array() ? said : nlohmann::ordered_json::array({said})) {
      if (value.is_string()) values.push_back(value.get<std::string>());
      if (value.is_object() && value.contains("words")) values.push_back(value["words"].get<std::string>());
    }
    says[step] = values;
  }
}

void Person::makeYard(const QString& name) {
  hand_.tap(QStringLiteral("Make my yard"));
  hand_.type(QStringLiteral("Your name"), name);
  hand_.type(QStringLiteral("Passphrase"), kPassphrase);
  hand_.type(QStringLiteral("The same passphrase"), kPassphrase);
  hand_.tap(QStringLiteral("Make the keys and the yard"));
  ASSERT_TRUE(hand_.until([&] { return hand_.app().app.state() == App::Open; }, 90000));
}

void Person::addPerson(const QString& name, const QString& role) {
  hand_.tap(QStringLiteral("Settings"));
  hand_.tap(QStringLiteral("People who may sign"));
  hand_.tap(QStringLiteral("Add a person"));
  hand_.type(QStringLiteral("Their name"), name);
  hand_.tap(QStringLiteral("Operator"));  // chosen beforehand; not that
  hand_.tap(role);
  hand_.type(QStringLiteral("A passphrase of their own"), kOtherPassphrase);
  hand_.type(QStringLiteral("The yard's passphrase"), kPassphrase);
  hand_.tap(QStringLiteral("Add this person"));
  ASSERT_TRUE(hand_.until([&] { return hand_.shows(name); })) << hand_.everything().toStdString();
  hand_.tap(QStringLiteral("←"));
  hand_.tap(QStringLiteral("←"));
  other_passphrase = kOtherPassphrase;
}

void Person::handTo(const QString& name, const QString& passphrase) {
  hand_.tap(QStringLiteral("Settings"));
  hand_.tap(QStringLiteral("Lock"));
  unlock(name, passphrase);
}

void Person::unlock(const QString& name, const QString& passphrase) {
  ASSERT_TRUE(hand_.until([&] { return hand_.app().app.state() == App::Locked; }));
  hand_.tap(name);
  hand_.type(QStringLiteral("Passphrase"), passphrase);
  hand_.tap(QStringLiteral("Open"));
  ASSERT_TRUE(hand_.until([&] { return hand_.app().app.state() == App::Open; }))
      << hand_.everything().toStdString();
}

void Person::addUnit(bool practice) {
  hand_.tap(QStringLiteral("Add a unit"));
  hand_.type(QStringLiteral("Number or name of the unit"), QStringLiteral("L-27"));
  hand_.type(QStringLiteral("Rated payload"), QStringLiteral("4500"));
  hand_.type(QStringLiteral("Lift cylinder bore"), QStringLiteral("130"));
  hand_.type(QStringLiteral("Lift cylinder rod"), QStringLiteral("75"));
  hand_.type(QStringLiteral("Test mass of the yard"), QStringLiteral("2000"));
  hand_.tap(QStringLiteral("Readings typed"));
  hand_.tap(QStringLiteral("Logs or a live feed"));
  if (practice) hand_.tap(QStringLiteral("For practice"));
  hand_.tap(QStringLiteral("Save"));
  ASSERT_TRUE(hand_.until([&] { return hand_.find(QStringLiteral("L-27")) != nullptr; }))
      << hand_.everything().toStdString();
}

void Person::addAttachment() {
  hand_.tap(QStringLiteral("L-27"));
  hand_.tap(QStringLiteral("Attachments"));
  hand_.tap(QStringLiteral("Add an attachment"));
  hand_.type(QStringLiteral("Number or name of the attachment"), QStringLiteral("GP-2.7"));
  hand_.type(QStringLiteral("Quick coupler"), QStringLiteral("320"));
  hand_.type(QStringLiteral("Bucket, kg"), QStringLiteral("1250"));
  hand_.type(QStringLiteral("Load's centre along"), QStringLiteral("600"));
  hand_.type(QStringLiteral("Load's centre square"), QStringLiteral("450"));
  hand_.type(QStringLiteral("Upper stop"), QStringLiteral("3400"));
  hand_.type(QStringLiteral("Lower stop"), QStringLiteral("300"));
  hand_.tap(QStringLiteral("Save"));
  ASSERT_TRUE(hand_.until([&] { return hand_.find(QStringLiteral("GP-2.7")) != nullptr; }))
      << hand_.everything().toStdString();
  hand_.tap(QStringLiteral("←"));
  hand_.tap(QStringLiteral("←"));
}

void Person::begin(const QString& procedure, const QString& way) {
  hand_.tap(QStringLiteral("L-27"));
  hand_.tap(QStringLiteral("Begin a job"));
  hand_.tap(procedure);
  if (!way.isEmpty()) hand_.tap(way);
  hand_.tap(QStringLiteral("Begin"));
  ASSERT_TRUE(hand_.until([&] { return hand_.app().job.isOpen(); })) << hand_.everything().toStdString();
}

void Person::goOnWith(const QString& procedure) {
  hand_.tap(procedure);
  ASSERT_TRUE(hand_.until([&] { return hand_.app().job.isOpen(); })) << hand_.everything().toStdString();
}

void Person::leave() {
  const bool ended = hand_.app().job.view().ask == QLatin1String("ended");
  if (ended) {
    hand_.tap(QStringLiteral("Show the record"));
  } else {
    hand_.tap(QStringLiteral("All that was done"));
    hand_.tap(QStringLiteral("Go on later"));
  }
  ASSERT_TRUE(hand_.until([&] { return !hand_.app().job.isOpen(); }));
  while (hand_.until([&] { return hand_.find(QStringLiteral("Settings")) == nullptr; }, 50)) {
    hand_.tap(QStringLiteral("←"));
    if (::testing::Test::HasFatalFailure()) return;
  }
}

/// The next of what a step reads, also where another hand began the job: by how often it was answered.
std::string Person::next(const std::string& step) const {
  const auto found = says.find(step);
  if (found == says.end() || found->second.empty()) return {};
  const auto job = hand_.app().job.job();
  const auto before = std::ranges::count_if(job->state.tries, [&](const procedures::Try& made) {
    return made.event.about == step && made.outcome != procedures::Outcome::Doubted &&
           (made.event.type == procedures::EventType::Reading ||
            made.event.type == procedures::EventType::Answer);
  });
  return found->second[std::min(static_cast<std::size_t>(before), found->second.size() - 1)];
}

void Person::enter(const QString& quantity) {
  const QString number = quantity.section(QLatin1Char(' '), 0, 0);
  const QString unit = quantity.section(QLatin1Char(' '), 1);
  const QString symbol = unitSymbol(unit.toStdString());
  const JobView& view = hand_.app().job.view();
  if (!view.units.isEmpty() && view.units.first().toMap().value(QStringLiteral("code")).toString() != unit)
    hand_.tap(symbol);
  hand_.keys(number);
  hand_.tap(QStringLiteral("Enter ") + number);
}

QString Person::turn() const {
  const JobRunner& job = hand_.app().job;
  const std::size_t tries = job.job() ? job.job()->state.tries.size() : 0;
  return job.view().ask + job.view().about + QString::number(tries) + job.refusal();
}

/// The loader does what the step asks, and the person waits until the app says that it is held or goes on by
/// itself.
void Person::move(const JobView& view) {
  const Live& feed = hand_.app().live;
  const QString before = turn();
  const double begun_s = hand_.now_s();
  hand_.tap(QStringLiteral("Move the practice loader"));
  ++movements;
  // On a busy machine the app's clock runs on while little is done; a pass that needs its log is waited for.
  const bool is_logged = view.kind == QLatin1String("pass") && view.log == QLatin1String("required");
  const double most_s = is_logged ? 1e9 : 120.0;
  bool by_itself = false;
  hand_.until(
      [&] {
        by_itself = turn() != before;
        // A pass ends by itself, or it was none.
        const bool held = view.kind == QLatin1String("pose") && feed.property("held").toBool();
        return by_itself || held || hand_.now_s() > begun_s + most_s;
      },
      120000);
  waited_s += hand_.now_s() - begun_s;
  if (!by_itself && view.hold_ms > 0) by_itself = hand_.until([&] { return turn() != before; }, 2000);
  if (!by_itself)
    hand_.tap(view.kind == QLatin1String("pass") ? QStringLiteral("The pass is done")
                                                 : QStringLiteral("It stands there"));
}

bool Person::act(const JobView& view) {
  const std::string about = view.about.toStdString();
  // A zone that is clear is not the answer.
  std::string other;
  if (view.ask == QLatin1String("answer")) {
    if (const auto bad = answers.find(about); bad != answers.end()) {
      other = bad->second;
      answers.erase(bad);
    } else if (view.kind == QLatin1String("confirm") || view.kind == QLatin1String("sign")) {
      other = next(about);
    }
  }
  if (view.ask == QLatin1String("caution")) {
    hand_.tap(QStringLiteral("I have read this"));
  } else if (view.ask == QLatin1String("zone")) {
    hand_.tap(QStringLiteral("Hold: the zone is clear"));
  } else if (view.ask == QLatin1String("begin")) {
    if (!view.by_itself) hand_.tap(QStringLiteral("Begin"));
  } else if (view.ask == QLatin1String("hold")) {
    const double begun_s = hand_.now_s();
    const QString before = turn();
    hand_.until([&] { return turn() != before; }, 120000);
    waited_s += hand_.now_s() - begun_s;
  } else if (view.ask == QLatin1String("resume")) {
    hand_.tap(view.mine ? QStringLiteral("Go on") : QStringLiteral("Take the job over"));
  } else if (view.ask == QLatin1String("reading")) {
    const Live& feed = hand_.app().live;
    const QString before = turn();
    // What the feed has comes at once; it is steady a second later.
    if (live && view.machine_source &&
        hand_.until([&] { return !feed.property("value").toString().isEmpty(); }, 400)) {
      const double begun_s = hand_.now_s();
      EXPECT_TRUE(hand_.until([&] { return turn() != before || feed.property("steady").toBool(); }, 30000))
          << about;
      waited_s += hand_.now_s() - begun_s;
      // While the boom is up it is taken by itself.
      if (turn() == before && !hand_.app().job.property("busy").toBool())
        hand_.tap(QStringLiteral("Take the live value"));
      return true;
    }
    if (live && !view.machine_source)
      hand_.until([&] { return !feed.property("instrument").toString().isEmpty(); }, 200);
    const QString shown = feed.property("instrument").toString();
    const std::string value = shown.isEmpty() ? next(about) : shown.chopped(1).toStdString() + " deg";
    if (value.empty()) {
      ADD_FAILURE() << "nobody knows what " << about << " reads: " << view.text.toStdString();
      return false;
    }
    const QString known = view.known.value(QStringLiteral("number")).toString() + QLatin1Char(' ') +
                          view.known.value(QStringLiteral("unit")).toString();
    if (known.toStdString() == value) {
      hand_.tap(QStringLiteral("It is the known mass"));
    } else {
      enter(QString::fromStdString(value));
    }
  } else if (view.ask == QLatin1String("doubt")) {
    hand_.tap(QStringLiteral("It is "));
  } else if (view.ask == QLatin1String("check")) {
    hand_.wait(50);
  } else if (view.ask == QLatin1String("tag")) {
    hand_.tap(QStringLiteral("The tag hangs"));
  } else if (view.ask == QLatin1String("answer")) {
    if (view.kind == QLatin1String("pose") || view.kind == QLatin1String("pass")) {
      if (!other.empty()) {
        hand_.tap(QStringLiteral("Failed"));
      } else if (live) {
        move(view);
      } else {
        hand_.tap(view.kind == QLatin1String("pass") ? QStringLiteral("The pass is done")
                                                     : QStringLiteral("It stands there"));
      }
    } else if (view.kind == QLatin1String("monitor")) {
      QString text;
      for (const QVariant& answer : view.answers) {
        const QVariantMap map = answer.toMap();
        const bool wanted = other.empty() ? map.value(QStringLiteral("good")).toBool()
                                          : map.value(QStringLiteral("id")).toString().toStdString() == other;
        if (text.isEmpty() && wanted) text = map.value(QStringLiteral("text")).toString();
      }
      hand_.tap(text);
    } else if (view.kind == QLatin1String("evidence")) {
      hand_.tap(other.empty() ? QStringLiteral("Use a practice picture") : QStringLiteral("Leave it out"));
    } else if (view.kind == QLatin1String("note")) {
      const std::string words = next(about);
      if (words.empty() && view.optional) {
        hand_.tap(QStringLiteral("Nothing to note"));
      } else {
        hand_.type(QStringLiteral("In your own words"),
                   words.empty() ? QStringLiteral("as found") : QString::fromStdString(words));
        hand_.tap(QStringLiteral("Write it down"));
      }
    } else if (view.kind == QLatin1String("sign")) {
      if (view.on_glass && other.empty()) {
        QQuickItem* pad = nullptr;
        eachItem(hand_.window().contentItem(), [&](QQuickItem* item) {
          if (item->property("strokes").isValid()) pad = item;
          return pad == nullptr;
        });
        if (pad != nullptr) hand_.drag(pad);
      }
      hand_.tap(other == "absent"    ? QStringLiteral("Absent")
                : other == "refused" ? QStringLiteral("Refused")
                                     : QStringLiteral("Sign"));
    } else if (view.second_person) {
      if (other == "no") {
        hand_.tap(QStringLiteral("No, it is not so"));
      } else {
        if (!hand_.app().app.demo()) hand_.type(QStringLiteral("Their passphrase"), other_passphrase);
        hand_.tap(QStringLiteral("I confirm it"));
      }
    } else {
      hand_.tap(other == "no" ? QStringLiteral("No") : QStringLiteral("Yes"));
    }
  }
  return true;
}

bool Person::step() {
  JobRunner& job = hand_.app().job;
  const auto isBusy = [&] { return job.property("busy").toBool(); };
  hand_.until([&] { return !isBusy(); });
  const JobView view = job.view();
  const std::string about = view.about.toStdString();
  for (const QString& fault : faultsOf(hand_)) ADD_FAILURE() << about << ": " << fault.toStdString();
  seen.push_back(view.about);
  const QString before = turn();
  const Effort effort = hand_.effort();
  if (!act(view)) return false;
  Effort& sum = spent[view.ask == QLatin1String("answer") ? view.kind : view.ask];
  sum.taps += hand_.effort().taps - effort.taps;
  sum.keys += hand_.effort().keys - effort.keys;
  if (!hand_.until([&] { return turn() != before && !isBusy(); })) {
    ADD_FAILURE() << "nothing came after " << view.ask.toStdString() << " of " << about
                  << "; on the screen: " << hand_.everything().toStdString();
    return false;
  }
  if (!job.refusal().isEmpty()) {
    ADD_FAILURE() << about << " was refused: " << job.refusal().toStdString();
    return false;
  }
  if (answered) answered(view.about);
  return !::testing::Test::HasFatalFailure();
}

bool Person::work(const QString& until) {
  constexpr int kMostSteps = 600;
  JobRunner& job = hand_.app().job;
  for (int count = 0; count < kMostSteps; ++count) {
    hand_.until([&] { return !job.property("busy").toBool(); });
    const JobView& view = job.view();
    if (!until.isEmpty() && view.about == until && view.ask != QLatin1String("zone")) return true;
    if (view.ask == QLatin1String("ended")) return until.isEmpty() && !view.record.isEmpty();
    if (!step()) return false;
  }
  ADD_FAILURE() << "the job does not end";
  return false;
}

Cost::Cost(Person& person, Hand& hand, QString job)
    : person_(person), hand_(hand), job_(std::move(job)), before_(hand.effort()), begun_s_(hand.now_s()) {}

Cost::~Cost() {
  // The keystroke-level model (Card, Moran and Newell 1980; its values from memory): before a press one
  // thinks 1.35 s and points 1.1 s, to press takes 0.2 s and a digit 0.28 s.
  constexpr double kPress_s = 1.35 + 1.1 + 0.2;
  constexpr double kKey_s = 0.28;
  const double all_s = hand_.now_s() - begun_s_;
  const int presses = hand_.effort().taps - before_.taps - person_.movements;
  const int keys = hand_.effort().keys - before_.keys;
  std::cout << job_.toStdString() << ": " << presses << " presses, " << keys << " keystrokes, "
            << std::lround(presses * kPress_s + keys * kKey_s) << " s for a practised user; the test took "
            << std::lround(all_s - person_.waited_s) << " s, and " << std::lround(person_.waited_s)
            << " s of the machine in " << person_.movements << " movements\n";
  for (const auto& [kind, effort] : person_.spent)
    std::cout << "  " << kind.toStdString() << ": " << effort.taps << " presses, " << effort.keys
              << " keystrokes\n";
  std::cout << std::flush;
}

void expectSealed(Hand& hand, const QString& phase) {
  const JobView& view = hand.app().job.view();
  EXPECT_EQ(view.phase.toStdString(), phase.toStdString()) << view.tag.join(QLatin1Char('|')).toStdString();
  ASSERT_FALSE(view.record.isEmpty());
  QProcess program;
  program.start(QStringLiteral(HINGEPIN_PROGRAM),
                {QStringLiteral("records"), QStringLiteral("verify"), QStringLiteral("--json"),
                 QStringLiteral("--store"), QDir(hand.folder()).filePath(QStringLiteral("yard"))});
  ASSERT_TRUE(program.waitForFinished(60000));
  const std::string said = (program.readAllStandardOutput() + program.readAllStandardError()).toStdString();
  EXPECT_EQ(program.exitCode(), 0) << said;
  EXPECT_THAT(said, ::testing::HasSubstr("{\"name\":\"" + view.record.toStdString() +
                                         "\",\"standing\":\"trusted\"}"));
}

void walkRound(Hand& hand) {
  Person walker(hand);
  walker.readPlan(QStringLiteral("walk-round"));
  walker.begin(QStringLiteral("Walk-round"));
  ASSERT_TRUE(walker.work());
  walker.leave();
}

MadeYard::MadeYard(double speed) : hand(speed), person(hand) {
  person.makeYard();
  person.addPerson(QStringLiteral("Bo Sample"), QStringLiteral("Safety lead"));
  person.addUnit();
  person.addAttachment();
  walkRound(hand);
}

}  // namespace hingepin::mobile
