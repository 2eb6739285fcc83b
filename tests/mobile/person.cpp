// SPDX-License-Identifier: GPL-3.0-or-later
#include "person.h"

#include <gtest/gtest.h>
#include <QTest>

#include "tests/engine/session/plan.h"

namespace hingepin::mobile {

void Person::readPlan(const QString& name) {
  const auto plan = session::readPlan(std::string(HINGEPIN_SOURCE_DIR) + "/tests/engine/session/plans/" +
                                      name.toStdString() + ".plan.json");
  for (const auto& [step, said] : plan.at("says").items()) {
    std::vector<std::string> values;
    for (const auto& value : said.is_array() ? said : nlohmann::ordered_json::array({said})) {
      if (value.is_string()) values.push_back(value.get<std::string>());
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
  ASSERT_TRUE(hand_.until([&] { return hand_.app().app.state() == App::Open; }));
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

void Person::addUnit(bool practice) {
  hand_.tap(QStringLiteral("Add a unit"));
  hand_.type(QStringLiteral("Number or name of the unit"), QStringLiteral("L-27"));
  hand_.type(QStringLiteral("Rated payload"), QStringLiteral("4500"));
  hand_.type(QStringLiteral("Lift cylinder bore"), QStringLiteral("130"));
  hand_.type(QStringLiteral("Lift cylinder rod"), QStringLiteral("75"));
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

std::string Person::next(const std::string& step) {
  const auto found = says.find(step);
  if (found == says.end() || found->second.empty()) return {};
  std::size_t& index = used_[step];
  const std::string value = found->second[std::min(index, found->second.size() - 1)];
  ++index;
  return value;
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

bool Person::step() {
  JobRunner& job = hand_.app().job;
  hand_.until([&] { return !job.property("busy").toBool(); });
  const JobView view = job.view();
  const std::string about = view.about.toStdString();
  QStringList faults;
  hand_.until(
      [&] {
        faults = faultsOf(hand_);
        return faults.isEmpty();
      },
      1000);
  for (const QString& fault : faults) ADD_FAILURE() << about << ": " << fault.toStdString();
  seen.push_back(view.about);
  const auto turn = [&] {
    return job.view().ask + job.view().about + QString::number(job.view().history.size()) + job.refusal();
  };
  const QString before = turn();
  const auto bad = answers.find(about);
  const std::string other = bad == answers.end() ? std::string() : bad->second;
  if (bad != answers.end()) answers.erase(bad);
  if (view.ask == QLatin1String("caution")) {
    hand_.tap(QStringLiteral("I have read this"));
  } else if (view.ask == QLatin1String("zone")) {
    hand_.tap(QStringLiteral("Hold: the zone is clear"));
  } else if (view.ask == QLatin1String("begin")) {
    hand_.tap(QStringLiteral("Begin"));
  } else if (view.ask == QLatin1String("hold")) {
    hand_.wait(100);
  } else if (view.ask == QLatin1String("resume")) {
    hand_.tap(view.mine ? QStringLiteral("Go on") : QStringLiteral("Take the job over"));
  } else if (view.ask == QLatin1String("reading")) {
    const bool could = live && view.machine_source;
    if (could && hand_.until(
                     [&] {
                       return hand_.app().live.property("steady").toBool() &&
                              hand_.find(QStringLiteral("Take the live value")) != nullptr;
                     },
                     2500)) {
      hand_.tap(QStringLiteral("Take the live value"));
    } else {
      if (live)
        hand_.until([&] { return !hand_.app().live.property("instrument").toString().isEmpty(); }, 500);
      const QString shown = hand_.app().live.property("instrument").toString();
      const std::string value = shown.isEmpty() ? next(about) : shown.chopped(1).toStdString() + " deg";
      if (value.empty()) {
        ADD_FAILURE() << "nobody knows what " << about << " reads: " << view.text.toStdString();
        return false;
      }
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
        hand_.tap(QStringLiteral("Move the practice loader"));
        // It goes on by itself where the step says from when on; else when it stands.
        const bool by_itself =
            hand_.until([&] { return turn() != before; }, view.kind == QLatin1String("pass") ? 20000 : 6000);
        if (!by_itself)
          hand_.tap(view.kind == QLatin1String("pass") ? QStringLiteral("The pass is done")
                                                       : QStringLiteral("It stands there"));
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
  if (!hand_.until([&] { return turn() != before && !job.property("busy").toBool(); }, 15000) &&
      view.ask != QLatin1String("hold")) {
    ADD_FAILURE() << "nothing came after " << view.ask.toStdString() << " of " << about
                  << "; on the screen: " << hand_.everything().toStdString();
    return false;
  }
  if (!job.refusal().isEmpty()) {
    ADD_FAILURE() << about << " was refused: " << job.refusal().toStdString();
    return false;
  }
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

}  // namespace hingepin::mobile
