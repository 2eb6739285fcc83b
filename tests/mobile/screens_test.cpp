// SPDX-License-Identifier: GPL-3.0-or-later
// Every screen of the demo yard at the sizes, looks, languages and text sizes that people use: nothing
// clipped or overlapping, targets large enough, names for screen readers. With HINGEPIN_SCREENSHOTS=<folder>
// a picture of each is kept.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QDir>
#include <cmath>

#include "hand.h"

namespace hingepin::mobile {
namespace {

struct Look {
  QString language;
  int width;
  int height;
  double scale;
  App::Look look;
  [[nodiscard]] QString name() const {
    return QStringLiteral("%1-%2x%3-%4-%5")
        .arg(language)
        .arg(width)
        .arg(height)
        .arg(std::lround(scale * 100))
        .arg(look == App::Sunlight ? QStringLiteral("sunlight")
             : look == App::Night  ? QStringLiteral("night")
                                   : QStringLiteral("day"));
  }
};

class Screens {
 public:
  explicit Screens(Hand& hand) : hand_(hand), folder_(qEnvironmentVariable("HINGEPIN_SCREENSHOTS")) {}

  void look(const Look& look) {
    look_ = look;
    App& app = hand_.app().app;
    app.setLanguage(look.language);
    app.setTextScale(look.scale);
    app.setLook(look.look);
    hand_.resize(look.width, look.height);
  }
  void open(const QString& page, const QVariantMap& properties = {}) {
    QMetaObject::invokeMethod(&hand_.window(), "open", Q_ARG(QString, page), Q_ARG(QVariant, properties));
    hand_.until([&] { return !hand_.app().app.busy(); });
    hand_.wait(150);
    check(page);
  }
  void check(const QString& page) {
    // What is still being laid out is no fault; what stays is one.
    QStringList faults;
    hand_.until(
        [&] {
          faults = faultsOf(hand_);
          return faults.isEmpty() && !hand_.app().app.busy();
        },
        2000);
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
  Hand& hand_;
  QString folder_;
  Look look_;
};

void openDemo(Hand& hand) {
  hand.tap(QStringLiteral("Look round the demo yard"));
  ASSERT_TRUE(hand.until([&] { return hand.app().app.state() == App::Locked; }, 240000))
      << hand.everything().toStdString();
  hand.tap(QStringLiteral("Open"));
  ASSERT_TRUE(hand.until(
      [&] {
        return hand.app().app.state() == App::Open && !hand.app().yard.property("units").toList().isEmpty();
      },
      30000))
      << hand.everything().toStdString();
}

std::vector<Look> looks() {
  std::vector<Look> all;
  const bool every = qEnvironmentVariableIsSet("HINGEPIN_SCREENSHOTS");
  for (const auto& [width, height] : {std::pair{360, 740}, {412, 915}, {740, 360}, {800, 1280}}) {
    for (const char* language : {"en", "de", "ar"}) {
      for (const double scale : {1.0, 2.0}) {
        // In each run the corners; all of them where pictures are wanted.
        if (!every && !(scale == 2.0 && width != 412)) continue;
        all.push_back({QString::fromLatin1(language), width, height, scale, App::Day});
        if (every) all.push_back({QString::fromLatin1(language), width, height, scale, App::Sunlight});
      }
    }
  }
  return all;
}

TEST(ScreensTest, NothingIsClippedOverlapsOrIsTooSmall) {
  Hand hand;
  Screens screens(hand);
  screens.check(QStringLiteral("FirstStartPage"));
  openDemo(hand);
  const QVariantList units = hand.app().yard.property("units").toList();
  const QString unit = units.first().toMap().value(QStringLiteral("id")).toString();
  hand.app().yard.readRecords(unit);
  ASSERT_TRUE(hand.until([&] { return !hand.app().yard.property("records").toList().isEmpty(); }));
  const QString record =
      hand.app().yard.property("records").toList().last().toMap().value(QStringLiteral("record")).toString();
  for (const Look& look : looks()) {
    screens.look(look);
    screens.check(QStringLiteral("HomePage"));
    screens.open(QStringLiteral("UnitPage"), {{QStringLiteral("unit"), unit}});
    screens.open(QStringLiteral("BeginPage"), {{QStringLiteral("unit"), unit}});
    screens.open(QStringLiteral("RecordPage"), {{QStringLiteral("record"), record}});
    screens.open(QStringLiteral("SettingsPage"));
    screens.open(QStringLiteral("PeoplePage"));
    screens.open(QStringLiteral("FeedPage"));
    screens.open(QStringLiteral("LevelPage"));
    screens.open(QStringLiteral("UnitEditPage"), {{QStringLiteral("unit"), unit}});
    screens.open(QStringLiteral("AttachmentsPage"));
    screens.open(QStringLiteral("AttachmentEditPage"));
    screens.open(QStringLiteral("MakeYardPage"));
    for (int depth = 0; depth < 11; ++depth) {
      QObject* const stack = hand.window().findChild<QObject*>(QStringLiteral("stack"));
      ASSERT_NE(stack, nullptr);
      QMetaObject::invokeMethod(stack, "goBack");
    }
    hand.wait(30);
  }
  EXPECT_GT(screens.seen, 100);
}

/// Contrast of two colours by WCAG 2.1, relative luminance and contrast ratio (definitions, from memory).
double contrast(const QColor& first, const QColor& second) {
  const auto luminance = [](const QColor& color) {
    const auto part = [](double value) {
      return value <= 0.03928 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * part(color.redF()) + 0.7152 * part(color.greenF()) + 0.0722 * part(color.blueF());
  };
  const double a = luminance(first);
  const double b = luminance(second);
  return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05);
}

TEST(ScreensTest, TextStandsOutInEveryLook) {
  Hand hand;
  QObject* const theme = hand.theme();
  ASSERT_NE(theme, nullptr);
  for (const App::Look look : {App::Day, App::Night, App::Sunlight}) {
    hand.app().app.setLook(look);
    const double least = look == App::Sunlight ? 7.0 : 4.5;
    for (const char* ink : {"ink", "faintInk", "good", "bad", "warn", "accent"}) {
      for (const char* ground : {"ground", "surface"}) {
        EXPECT_GE(contrast(theme->property(ink).value<QColor>(), theme->property(ground).value<QColor>()),
                  least)
            << ink << " on " << ground << " in " << look;
      }
    }
    EXPECT_GE(
        contrast(theme->property("accentInk").value<QColor>(), theme->property("accent").value<QColor>()),
        least)
        << look;
  }
}

}  // namespace
}  // namespace hingepin::mobile
