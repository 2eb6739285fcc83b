// SPDX-License-Identifier: GPL-3.0-or-later
// Every screen at the sizes, looks, languages and text sizes that people use: nothing clipped, overlapping,
// faint or untranslated, targets large enough, everything told to a screen reader. With
// HINGEPIN_SCREENSHOTS=<folder> all of them, and a picture of each is kept; else the corners.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QQmlComponent>
#include <QRegularExpression>
#include <QSet>
#include <QSettings>
#include <cmath>

#include "hand.h"
#include "job_view.h"
#include "panels.h"
#include "person.h"

namespace hingepin::mobile {
namespace {

struct Look {
  QString language;
  int width = 0;
  int height = 0;
  double scale = 1.0;
  App::Look look = App::Day;
  bool gloves = false;
  [[nodiscard]] QString name() const {
    return QStringLiteral("%1-%2x%3-%4-%5%6")
        .arg(language)
        .arg(width)
        .arg(height)
        .arg(std::lround(scale * 100))
        .arg(look == App::Sunlight ? QStringLiteral("sunlight")
             : look == App::Night  ? QStringLiteral("night")
                                   : QStringLiteral("day"),
             gloves ? QStringLiteral("-gloves") : QString());
  }
};

bool keepsPictures() { return qEnvironmentVariableIsSet("HINGEPIN_SCREENSHOTS"); }

/// English comes first: what the others have in common with it is not translated.
std::vector<Look> looks() {
  if (!keepsPictures()) {
    return {{"en", 800, 1280, 1.0, App::Day},
            {"de", 360, 740, 2.0, App::Sunlight},
            {"ar", 320, 640, 2.0, App::Day, true},
            {"de", 740, 360, 2.0, App::Night}};
  }
  std::vector<Look> all;
  for (const char* language : {"en", "de", "ar"}) {
    for (const auto& [width, height] : {std::pair{360, 740}, {412, 915}, {740, 360}, {800, 1280}}) {
      for (const double scale : {1.0, 2.0}) {
        for (const App::Look look : {App::Day, App::Sunlight})
          all.push_back({QString::fromLatin1(language), width, height, scale, look});
      }
    }
    all.push_back({QString::fromLatin1(language), 360, 740, 1.0, App::Night});
    all.push_back({QString::fromLatin1(language), 320, 640, 1.0, App::Day, true});
    all.push_back({QString::fromLatin1(language), 320, 640, 2.0, App::Day, true});
  }
  return all;
}

/// Whether these are words of the app: two at least, and none of what people wrote or what has a name of its
/// own.
bool areWords(const QString& text) {
  static const QRegularExpression two(QStringLiteral("\\p{L}{3,}[,.:;]? \\p{L}{3,}"));
  static const QRegularExpression own(QStringLiteral("\\(demo\\)|Example|\\S{24}|^hingepin:|Hingepin"));
  return text.contains(two) && !text.contains(own);
}

class Screens {
 public:
  explicit Screens(Hand& hand) : hand_(hand), folder_(qEnvironmentVariable("HINGEPIN_SCREENSHOTS")) {}

  void look(const Look& look) {
    SCOPED_TRACE("from " + look_.name().toStdString() + " to " + look.name().toStdString());
    look_ = look;
    App& app = hand_.app().app;
    app.setLanguage(look.language);
    app.setTextScale(look.scale);
    app.setLook(look.look);
    app.setGloves(look.gloves);
    hand_.resize(look.width, look.height);
    // The yard is read again in the new language.
    hand_.until([&] { return !app.busy(); });
  }
  void open(const QString& page, const QVariantMap& properties = {}, const QString& name = {}) {
    QMetaObject::invokeMethod(&hand_.window(), "open", Q_ARG(QString, page), Q_ARG(QVariant, properties));
    hand_.until([&] { return !hand_.app().app.busy(); });
    hand_.wait(100);
    check(name.isEmpty() ? page : name);
    back();
  }
  void back() {
    QObject* const stack = hand_.window().findChild<QObject*>(QStringLiteral("stack"));
    ASSERT_NE(stack, nullptr);
    QMetaObject::invokeMethod(stack, "goBack");
  }
  void show(const Panel& panel) {
    SCOPED_TRACE(panel.name.toStdString() + " " + look_.name().toStdString());
    session::OpenJob job = panel.job;
    App& app = hand_.app().app;
    if (job.state.person == "technician-1") job.state.person = app.key().toStdString();
    if (job.state.held_since_ms) job.state.held_since_ms = app.backend().now().at_ms;
    hand_.app().job.show(nullptr);
    hand_.app().job.show(std::make_shared<const session::OpenJob>(std::move(job)));
    hand_.wait(40);
  }
  void check(const QString& page) {
    // What has just been laid out has still to be drawn.
    QStringList faults;
    hand_.until(
        [&] {
          faults = faultsOf(hand_) + faintTextsOf(hand_);
          return faults.isEmpty() && !hand_.app().app.busy();
        },
        1500);
    faults += untranslated(page);
    for (const QString& fault : faults) {
      ADD_FAILURE() << page.toStdString() << " " << look_.name().toStdString() << ": " << fault.toStdString();
    }
    ++seen;
    if (folder_.isEmpty()) return;
    QDir().mkpath(folder_);
    hand_.grab().save(QDir(folder_).filePath(QStringLiteral("%1-%2.png").arg(page, look_.name())));
  }
  int seen = 0;

 private:
  QStringList untranslated(const QString& page) {
    QStringList faults;
    for (const QString& text : hand_.everything().split(QStringLiteral(" | "))) {
      if (look_.language == QLatin1String("en")) {
        english_[page].insert(text);
      } else if (english_[page].contains(text) && areWords(text)) {
        faults.append(QStringLiteral("not translated: ") + text);
      }
    }
    return faults;
  }

  Hand& hand_;
  QString folder_;
  Look look_;
  QMap<QString, QSet<QString>> english_;
};

void enterDemo(Hand& hand, const QString& person) {
  ASSERT_TRUE(hand.until([&] { return hand.app().app.state() == App::Locked; }, 240000))
      << hand.everything().toStdString();
  const QVariantList people = hand.app().app.property("people").toList();
  for (const QVariant& each : people) {
    const QVariantMap map = each.toMap();
    if (map.value(QStringLiteral("roles")).toStringList().contains(person))
      hand.app().app.unlock(map.value(QStringLiteral("key")).toString(), App::demoPassphrase());
  }
  ASSERT_TRUE(hand.until(
      [&] {
        return hand.app().app.state() == App::Open && !hand.app().yard.property("units").toList().isEmpty();
      },
      30000))
      << hand.everything().toStdString();
}

QVariantList recordsOf(Hand& hand, const QString& unit) {
  Yard& yard = hand.app().yard;
  yard.readRecords(unit);
  hand.until([&] { return !hand.app().app.busy(); });
  hand.wait(20);
  return yard.property("records").toList();
}

/// The record of the demo yard's unit that was taught by logs.
QString taughtByLogs(Hand& hand) {
  Yard& yard = hand.app().yard;
  yard.readRecords(QStringLiteral("L-27"));
  hand.until([&] { return !hand.app().app.busy(); });
  for (const QVariant& each : yard.property("records").toList()) {
    if (each.toMap().value(QStringLiteral("procedure")) != QLatin1String("after-attachment-change")) continue;
    const QString record = each.toMap().value(QStringLiteral("record")).toString();
    hand.app().charts.readRecord(record);
    hand.until([&] { return hand.app().charts.property("ready").toBool(); });
    if (!hand.app().charts.property("passes").toList().isEmpty()) return record;
  }
  ADD_FAILURE() << "no record has charts";
  return {};
}

/// The record of a unit that was done by a procedure, the newest; "" for none.
QString recordBy(const QVariantList& records, const QString& procedure) {
  for (const QVariant& each : records) {
    const QVariantMap map = each.toMap();
    if (map.value(QStringLiteral("procedure")).toString() == procedure)
      return map.value(QStringLiteral("record")).toString();
  }
  return {};
}

QString idOf(const QVariant& unit) { return unit.toMap().value(QStringLiteral("id")).toString(); }

TEST(ScreensTest, EveryPageOfTheDemoYardIsWhole) {
  Hand hand;
  Screens screens(hand);
  for (const Look& look : looks()) {
    screens.look(look);
    screens.check(QStringLiteral("FirstStartPage"));
    screens.open(QStringLiteral("MakeYardPage"));
    screens.open(QStringLiteral("JoinPage"));
  }
  screens.look({"en", 412, 915, 1.0, App::Day});
  hand.tap(QStringLiteral("Look round the demo yard"));
  enterDemo(hand, QStringLiteral("technician"));
  const QVariantList units = hand.app().yard.property("units").toList();
  const QString unit = idOf(units.first());
  // A failed record says most; a unit that came back can be compared.
  QString record;
  QString before;
  QString after;
  for (const QVariant& each : units) {
    const QVariantList records = recordsOf(hand, idOf(each));
    for (const QVariant& one : records) {
      if (one.toMap().value(QStringLiteral("phase")) == QLatin1String("failed"))
        record = one.toMap().value(QStringLiteral("record")).toString();
    }
    if (record.isEmpty() && !records.isEmpty())
      record = records.last().toMap().value(QStringLiteral("record")).toString();
    if (before.isEmpty() && !recordBy(records, QStringLiteral("return-check")).isEmpty()) {
      before = recordBy(records, QStringLiteral("check-out"));
      after = recordBy(records, QStringLiteral("return-check"));
    }
  }
  ASSERT_FALSE(record.isEmpty());
  ASSERT_FALSE(before.isEmpty());
  QObject* const flash = hand.window().findChild<QObject*>(QStringLiteral("flash"));
  ASSERT_NE(flash, nullptr);
  const QString charted = taughtByLogs(hand);
  Profiles& profiles = hand.app().profiles;
  const auto judgeBy = [&](const QString& of_unit, const QVariantMap& terms) {
    profiles.openTerms(of_unit);
    hand.until([&] { return !hand.app().app.busy(); });
    profiles.saveTerms(of_unit, terms);
    hand.until([&] { return !hand.app().app.busy(); });
    ASSERT_EQ(profiles.problem(), QString());
  };
  judgeBy({}, {{QStringLiteral("scheme"), QStringLiteral("steps")},
               {QStringLiteral("mass"), QStringLiteral("kg")},
               {QStringLiteral("steps"),
                QVariantList{QVariantMap{{QStringLiteral("upTo"), 2000}, {QStringLiteral("limit"), 20}},
                             QVariantMap{{QStringLiteral("upTo"), 5000}, {QStringLiteral("limit"), 50}}}},
               {QStringLiteral("rule"), QStringLiteral("guarded")},
               {QStringLiteral("confidence"), 95}});
  judgeBy(unit, {{QStringLiteral("scheme"), QStringLiteral("nist-hb44")},
                 {QStringLiteral("accuracyClass"), QStringLiteral("III L")},
                 {QStringLiteral("mass"), QStringLiteral("[lb_av]")},
                 {QStringLiteral("interval"), 50},
                 {QStringLiteral("stage"), QStringLiteral("maintenance")},
                 {QStringLiteral("rule"), QStringLiteral("simple")}});
  // One whose linkage can be surveyed.
  const auto unsurveyed = std::ranges::find_if(
      units, [](const QVariant& each) { return !each.toMap().value(QStringLiteral("hasLinkage")).toBool(); });
  ASSERT_NE(unsurveyed, units.end());
  for (const Look& look : looks()) {
    screens.look(look);
    screens.check(QStringLiteral("HomePage"));
    for (const QVariant& each : units) {
      if (each == units.first() || each == *unsurveyed || keepsPictures())
        screens.open(QStringLiteral("UnitPage"), {{QStringLiteral("unit"), idOf(each)}},
                     QStringLiteral("UnitPage-") + idOf(each));
    }
    screens.open(QStringLiteral("BeginPage"), {{QStringLiteral("unit"), unit}});
    screens.open(QStringLiteral("RecordPage"), {{QStringLiteral("record"), record}});
    screens.open(QStringLiteral("RecordPage"),
                 {{QStringLiteral("record"), record}, {QStringLiteral("isCorrecting"), true}},
                 QStringLiteral("RecordPage-correcting"));
    screens.open(QStringLiteral("ComparePage"),
                 {{QStringLiteral("before"), before}, {QStringLiteral("after"), after}});
    screens.open(QStringLiteral("ChartsPage"), {{QStringLiteral("record"), charted}});
    screens.open(QStringLiteral("HistoryPage"), {{QStringLiteral("unit"), QStringLiteral("L-27")},
                                                 {QStringLiteral("attachment"), QStringLiteral("GP-2.7")}});
    screens.open(
        QStringLiteral("EventPage"),
        {{QStringLiteral("unit"), QStringLiteral("L-27")},
         {QStringLiteral("attachments"), QStringList{QStringLiteral("GP-2.7"), QStringLiteral("LM-4.5")}}});
    screens.open(QStringLiteral("DisputePage"), {{QStringLiteral("unit"), QStringLiteral("L-27")},
                                                 {QStringLiteral("attachment"), QStringLiteral("GP-2.7")}});
    screens.open(QStringLiteral("KeysLostPage"));
    screens.open(QStringLiteral("CertificatePage"), {{QStringLiteral("record"), record}});
    screens.open(QStringLiteral("SettingsPage"));
    screens.open(QStringLiteral("PeoplePage"));
    screens.open(QStringLiteral("FeedPage"));
    screens.open(QStringLiteral("SyncPage"));
    screens.open(QStringLiteral("SyncPage"),
                 {{QStringLiteral("isSettingUp"), true}, {QStringLiteral("kind"), QStringLiteral("s3")}},
                 QStringLiteral("SyncPage-setting-up"));
    screens.open(QStringLiteral("LevelPage"));
    screens.open(QStringLiteral("UnitEditPage"), {{QStringLiteral("unit"), unit}});
    screens.open(QStringLiteral("TermsPage"));
    screens.open(QStringLiteral("TermsPage"), {{QStringLiteral("unit"), unit}},
                 QStringLiteral("TermsPage-of-unit"));
    screens.open(QStringLiteral("AttachmentsPage"));
    screens.open(QStringLiteral("AttachmentEditPage"));
    screens.open(QStringLiteral("UnlockPage"));
    screens.open(QStringLiteral("AnswerPage"));
    screens.open(QStringLiteral("AdmitPage"));
    screens.open(QStringLiteral("JoiningPage"), {}, QStringLiteral("JoiningPage-passphrase"));
    hand.app().joiner.setProperty("code", QStringLiteral("HINGEPIN:JOIN:ANY"));
    screens.open(QStringLiteral("JoiningPage"), {{QStringLiteral("isGivingUp"), true}});
    hand.app().joiner.setProperty("code", QString());
    for (const char* kind : {"held", "complete", "again"}) {
      flash->setProperty("kind", QString::fromLatin1(kind));
      flash->setProperty("opacity", 1.0);
      hand.wait(20);
      screens.check(QStringLiteral("Flash-") + QString::fromLatin1(kind));
      flash->setProperty("opacity", 0.0);
    }
    hand.app().app.tell({ErrorKind::IoFailed, {"store-full", {}}, {}});
    hand.wait(60);
    screens.check(QStringLiteral("HomePage-problem"));
    hand.app().app.clearProblem();
  }
  for (const char* role : {"safety-lead", "yard-clerk"}) {
    hand.app().app.lock();
    enterDemo(hand, QString::fromLatin1(role));
    for (const Look& look : looks()) {
      screens.look(look);
      screens.check(QStringLiteral("HomePage-") + QString::fromLatin1(role));
    }
  }
  EXPECT_GT(screens.seen, 80);
}

TEST(ScreensTest, EveryStepOfAJobIsWhole) {
  Hand hand;
  Screens screens(hand);
  Person person(hand);
  person.makeYard();
  person.addPerson(QStringLiteral("Bo Example"), QStringLiteral("Safety lead"));
  std::vector<std::string> languages;
  for (const Look& look : looks()) languages.push_back(look.language.toStdString());
  const std::map<std::string, Panels> panels = panelsIn(languages);
  for (const Look& look : looks()) {
    screens.look(look);
    screens.check(QStringLiteral("HomePage-empty"));
    screens.open(QStringLiteral("PeoplePage"), {{QStringLiteral("isAdding"), true}},
                 QStringLiteral("PeoplePage-adding"));
    screens.open(QStringLiteral("UnlockPage"), {}, QStringLiteral("UnlockPage-passphrase"));
    const Panels& asked = panels.at(look.language.toStdString());
    ASSERT_EQ(asked.refused, "");
    ASSERT_GT(asked.all.size(), 30U);
    screens.show(asked.all.front());
    QMetaObject::invokeMethod(&hand.window(), "open", Q_ARG(QString, QStringLiteral("JobPage")),
                              Q_ARG(QVariant, QVariantMap()));
    for (const Panel& panel : asked.all) {
      screens.show(panel);
      screens.check(QStringLiteral("Job-") + panel.name);
      if (panel.name == QLatin1String("reading")) {
        hand.app().job.setProperty(
            "weighed", weighedView({.value = "12345.6 kg", .expanded_kg = 123.4}, hand.app().app.reader()));
        hand.wait(40);
        screens.check(QStringLiteral("Job-") + panel.name + QStringLiteral("-weighed"));
      }
      if (panel.name == QLatin1String("answer-pose") ||
          panel.name.startsWith(QLatin1String("answer-pass-log"))) {
        hand.app().live.open(QStringLiteral("practice"));
        hand.until(
            [&] { return hand.app().live.property("machine").toMap().contains(QStringLiteral("hingePin")); });
        hand.wait(100);
        screens.check(QStringLiteral("Job-") + panel.name + QStringLiteral("-live"));
        hand.app().live.open(QStringLiteral("none"));
      }
    }
    screens.show(asked.all.at(asked.all.size() / 2));
    screens.open(QStringLiteral("JobMorePage"));
    screens.open(QStringLiteral("JobMorePage"), {{QStringLiteral("asked"), true}},
                 QStringLiteral("JobMorePage-asked"));
    hand.app().job.show(nullptr);
    screens.back();
  }
}

TEST(ScreensTest, AYardThatCannotBeOpenedSaysSo) {
  QTemporaryDir folder;
  QDir(folder.path()).mkpath(QStringLiteral("yard"));
  QFile store(QDir(folder.path()).filePath(QStringLiteral("yard/store.db")));
  ASSERT_TRUE(store.open(QIODevice::WriteOnly));
  store.write("no store");
  store.close();
  QSettings(QDir(folder.path()).filePath(QStringLiteral("settings.ini")), QSettings::IniFormat)
      .setValue(QStringLiteral("open"), QStringLiteral("yard"));
  QString language;
  std::unique_ptr<Hand> hand;
  for (const Look& look : looks()) {
    if (look.language != language) {
      language = look.language;
      hand.reset();
      QSettings(QDir(folder.path()).filePath(QStringLiteral("settings.ini")), QSettings::IniFormat)
          .setValue(QStringLiteral("language"), language);
      hand = std::make_unique<Hand>(1.0, folder.path());
      ASSERT_TRUE(hand->until([&] { return hand->app().app.state() == App::Broken; }));
    }
    Screens screens(*hand);
    screens.look(look);
    screens.check(QStringLiteral("BrokenPage"));
  }
}

TEST(ScreensTest, TextStandsOutInEveryLook) {
  Hand hand;
  QObject* const theme = hand.theme();
  ASSERT_NE(theme, nullptr);
  const auto color = [&](const char* name) { return theme->property(name).value<QColor>(); };
  for (const App::Look look : {App::Day, App::Night, App::Sunlight}) {
    hand.app().app.setLook(look);
    for (const char* ground : {"ground", "surface"}) {
      for (const char* ink : {"ink", "faintInk", "good", "bad", "warn", "accent"})
        EXPECT_GE(contrast(color(ink), color(ground)), 7.0) << ink << " on " << ground << " in " << look;
      // Edges of what can be pressed, and lines of charts. Source: WCAG 2.1, success criterion 1.4.11.
      EXPECT_GE(contrast(color("line"), color(ground)), 3.0) << ground << " in " << look;
    }
    EXPECT_GE(contrast(color("accentInk"), color("accent")), 7.0) << look;
  }
}

/// Presses of every kind, as they are, while they are pressed, and when they can't be; panels of every signal
/// word.
TEST(ScreensTest, WhatIsPressedOrForbiddenStandsOutInEveryLook) {
  Hand hand;
  QQmlComponent component(qmlEngine(&hand.app().app));
  component.setData(R"(
import QtQuick
import QtQuick.Layouts
import Hingepin
Rectangle {
    color: Theme.ground
    anchors.fill: parent
    ColumnLayout {
        width: parent.width
        Repeater {
            model: [["main", true, false], ["main", true, true], ["main", false, false], ["plain", true, false],
                ["plain", true, true], ["plain", false, false], ["bad", true, false], ["bad", true, true],
                ["bad", false, false], ["quiet", true, true]]
            Press {
                required property var modelData
                Layout.fillWidth: true
                kind: modelData[0]
                enabled: modelData[1]
                down: modelData[2]
                text: modelData.join(" ")
                note: "note of " + modelData.join(" ")
            }
        }
        Repeater {
            model: ["danger", "warning", "caution", "notice"]
            CautionPanel {
                required property string modelData
                signalWord: modelData
                signalText: App.signalName(modelData)
                hazard: "hazard of " + modelData
                consequence: "consequence of " + modelData
                avoidance: "avoidance of " + modelData
            }
        }
    }
})",
                    QUrl());
  std::unique_ptr<QObject> made(component.create());
  auto* const scene = qobject_cast<QQuickItem*>(made.get());
  ASSERT_NE(scene, nullptr) << component.errorString().toStdString();
  hand.window().findChild<QQuickItem*>(QStringLiteral("stack"))->setVisible(false);
  scene->setParentItem(hand.window().contentItem());
  hand.resize(412, 1300);
  for (const App::Look look : {App::Day, App::Night, App::Sunlight}) {
    hand.app().app.setLook(look);
    hand.wait(50);
    for (const QString& fault : faintTextsOf(hand)) ADD_FAILURE() << look << ": " << fault.toStdString();
    if (keepsPictures())
      hand.grab().save(QDir(qEnvironmentVariable("HINGEPIN_SCREENSHOTS"))
                           .filePath(QStringLiteral("Presses-%1.png").arg(look)));
  }
}

/// What a value in a sentence of the app looks like where it is written from right to left: isolated.
TEST(ScreensTest, ValuesInArabicWordsKeepTheirOwnDirection) {
  const Hand hand(1.0, {}, QStringLiteral("ar"));
  const QString text = QCoreApplication::translate("JobPage", "Step %1 of %2");
  EXPECT_TRUE(text.contains(QStringLiteral("\u2068%1\u2069"))) << text.toStdString();
  EXPECT_TRUE(text.contains(QStringLiteral("\u2068%2\u2069"))) << text.toStdString();
  EXPECT_EQ(QCoreApplication::translate("hingepin::mobile::Level", "%1 ± %2"),
            QStringLiteral("\u2068%1 ± %2\u2069"));
}

}  // namespace
}  // namespace hingepin::mobile
