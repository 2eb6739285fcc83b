// SPDX-License-Identifier: GPL-3.0-or-later
#include <QAccessible>
#include <QFontMetricsF>
#include <QImage>
#include <QRegularExpression>
#include <algorithm>
#include <cmath>
#include <unordered_map>

#include "hand.h"

namespace hingepin::mobile {
namespace {

bool isText(QQuickItem* item) { return item->inherits("QQuickText") && !textOf(item).trimmed().isEmpty(); }
bool isField(QQuickItem* item) { return item->inherits("QQuickTextInput"); }
bool isButton(QQuickItem* item) { return item->inherits("QQuickAbstractButton"); }

/// What is left to say of a text without the signs before it and the marks of its direction.
QString plainText(QString text) {
  static const QRegularExpression unsaid(QStringLiteral("[\\x{2066}-\\x{2069}\\x{200E}\\x{200F}]"));
  static const QRegularExpression sign(QStringLiteral("^[^\\p{L}\\p{N}]+"));
  return text.remove(unsaid).remove(sign).simplified();
}

QQuickItem* surfaceOf(QQuickItem* item) {
  QQuickItem* surface = item->parentItem();
  while (surface != nullptr && !surface->inherits("QQuickFlickable")) surface = surface->parentItem();
  return surface;
}

QRectF sceneRect(QQuickItem* item) {
  return item->mapRectToScene(QRectF(0, 0, item->width(), item->height()));
}

/// Where the letters are, without the empty place beside and below them.
QRectF lettersOf(QQuickItem* item) {
  const double width = std::min(item->property("contentWidth").toDouble(), item->width());
  const double height = std::min(item->property("contentHeight").toDouble(), item->height());
  const int across = item->property("effectiveHorizontalAlignment").toInt();
  const double left = across == Qt::AlignRight     ? item->width() - width
                      : across == Qt::AlignHCenter ? (item->width() - width) / 2
                                                   : 0;
  return item->mapRectToScene(QRectF(left, 0, width, height));
}

/// The part of a place that no surface cuts off.
QRectF seenOf(QQuickItem* item, QRectF rect, const QQuickWindow& window) {
  rect = rect.intersected(QRectF(0, 0, window.width(), window.height()));
  for (QQuickItem* parent = item->parentItem(); parent != nullptr; parent = parent->parentItem()) {
    if (parent->clip()) rect = rect.intersected(sceneRect(parent));
  }
  return rect;
}

QAccessibleInterface* spokenOf(QQuickItem* item) { return QAccessible::queryAccessibleInterface(item); }

/// What is looked at: the flash where it covers all else.
QQuickItem* lookedAt(Hand& hand) {
  auto* const flash = hand.window().findChild<QQuickItem*>(QStringLiteral("flash"));
  return flash != nullptr && flash->isVisible() && flash->opacity() > 0 ? flash : hand.window().contentItem();
}

/// The first word of a language that is wider than its place, so that it breaks where no syllable ends. A key
/// of letters and digits may, and the 22 of an epoch, which have capitals within also where they are all
/// letters.
QString brokenWordOf(QQuickItem* item, QString text) {
  static const QRegularExpression key(QStringLiteral(
      "[A-Za-z0-9_-]{43}|(?<![A-Za-z0-9_-])(?=[A-Za-z0-9_-]*[a-z][A-Z])[A-Za-z0-9_-]{22}(?![A-Za-z0-9_-])"));
  static const QRegularExpression words(
      QStringLiteral("(?<![\\p{L}\\p{N}_.-])\\p{L}{4,}(?![\\p{L}\\p{N}_])"));
  if (item->width() <= 0 || item->property("fontSizeMode").toInt() != 0) return {};
  const QFontMetricsF metrics(item->property("font").value<QFont>());
  text.remove(key);
  for (auto found = words.globalMatch(text); found.hasNext();) {
    const QString word = found.next().captured();
    if (metrics.horizontalAdvance(word) > item->width() + 1) return word;
  }
  return {};
}

void addTextFaults(QStringList& faults, QQuickItem* item, const QQuickWindow& window) {
  const QString text = textOf(item);
  if (const QString word = brokenWordOf(item, text); !word.isEmpty())
    faults.append(QStringLiteral("a word breaks: %1 in %2").arg(word, text));
  if (item->property("truncated").toBool()) faults.append(QStringLiteral("cut off: ") + text);
  const double wide = item->property("contentWidth").toDouble();
  if (wide > item->width() + 1.5 && item->width() > 0)
    faults.append(
        QStringLiteral("wider than its place (%1 > %2): %3").arg(wide).arg(item->width()).arg(text));
  const double high = item->property("contentHeight").toDouble();
  if (high > item->height() + 1.5)
    faults.append(
        QStringLiteral("higher than its place (%1 > %2): %3").arg(high).arg(item->height()).arg(text));
  const QRectF scene = sceneRect(item);
  if (scene.left() < -1 || scene.right() > window.width() + 1)
    faults.append(QStringLiteral("beside the screen: ") + text);
  // What no surface scrolls has to be on the screen.
  if (surfaceOf(item) == nullptr && (scene.top() < -1 || scene.bottom() > window.height() + 1))
    faults.append(QStringLiteral("above or below the screen: ") + text);
}

void addOverlaps(QStringList& faults, const std::vector<QQuickItem*>& items, const auto& rectOf) {
  std::vector<std::pair<QRectF, QQuickItem*>> places;
  for (QQuickItem* item : items) places.emplace_back(rectOf(item), item);
  std::ranges::sort(places, {}, [](const auto& place) { return place.first.top(); });
  for (std::size_t a = 0; a < places.size(); ++a) {
    for (std::size_t b = a + 1; b < places.size(); ++b) {
      if (places[b].first.top() >= places[a].first.bottom() - 1) break;
      if (surfaceOf(places[a].second) != surfaceOf(places[b].second)) continue;
      const QRectF both = places[a].first.intersected(places[b].first);
      if (both.width() > 1.5 && both.height() > 1.5)
        faults.append(
            QStringLiteral("overlap: %1 / %2").arg(textOf(places[a].second), textOf(places[b].second)));
    }
  }
}

void addSpokenFaults(QStringList& faults, const std::vector<QQuickItem*>& items) {
  QStringList names;
  for (QQuickItem* item : items) {
    if (QAccessibleInterface* const spoken = spokenOf(item))
      names.append(plainText(spoken->text(QAccessible::Name)));
  }
  const QString all = names.join(QLatin1Char('\n'));
  for (QQuickItem* item : items) {
    QAccessibleInterface* const spoken = spokenOf(item);
    if (isButton(item) || isField(item) || item->inherits("QQuickMouseArea")) {
      QQuickItem* told = item;
      while (told != nullptr && spokenOf(told) == nullptr) told = told->parentItem();
      if (item->inherits("QQuickScrollBar")) continue;
      if (told == nullptr || (isButton(item) && spoken == nullptr)) {
        faults.append(QStringLiteral("no screen reader knows of: ") + textOf(item));
        continue;
      }
      const QAccessible::Role role = spokenOf(told)->role();
      if (role == QAccessible::NoRole || role == QAccessible::Client || role == QAccessible::Pane)
        faults.append(QStringLiteral("without a role: ") + textOf(item));
      if (spokenOf(told)->text(QAccessible::Name).trimmed().isEmpty())
        faults.append(QStringLiteral("without a name: ") + textOf(item));
      const bool chosen = role == QAccessible::CheckBox || role == QAccessible::RadioButton;
      if (chosen && !spokenOf(told)->state().checkable)
        faults.append(QStringLiteral("nobody hears whether it is chosen: ") + textOf(item));
    }
    if (isText(item)) {
      const QString text = plainText(textOf(item));
      if (!text.isEmpty() && !all.contains(text)) faults.append(QStringLiteral("not read out: ") + text);
    }
    if (spoken != nullptr && spoken->role() == QAccessible::NoRole)
      faults.append(QStringLiteral("without a role: ") + spoken->text(QAccessible::Name));
  }
}

/// In a text that runs from right to left a minus sign before a bare number would stand on its other side,
/// and a date with hyphens begins with its day.
void addDirectionFaults(QStringList& faults, const QString& text) {
  if (!text.isRightToLeft()) return;
  static const QRegularExpression isolated(
      QStringLiteral("[\\x{2066}\\x{2068}][^\\x{2066}\\x{2068}\\x{2069}]*\\x{2069}"));
  static const QRegularExpression minus(QStringLiteral("(^|[^\\p{L}\\p{N}])[-+\\x{2212}]\\d|\\d-\\d"));
  QString rest = text;
  for (int depth = 0; depth < 3; ++depth) rest.remove(isolated);
  if (rest.contains(minus)) faults.append(QStringLiteral("a sign on the wrong side: ") + text);
}

/// As the screen is laid out at this moment.
QStringList faultsNow(Hand& hand) {
  QStringList faults;
  std::vector<QQuickItem*> seen;
  std::vector<QQuickItem*> texts;
  std::vector<QQuickItem*> targets;
  const QQuickWindow& window = hand.window();
  const double least = hand.app().app.property("gloves").toBool() ? 72 : 56;
  eachItem(lookedAt(hand), [&](QQuickItem* item) {
    seen.push_back(item);
    if (isText(item)) {
      texts.push_back(item);
      addTextFaults(faults, item, window);
      addDirectionFaults(faults, textOf(item));
    }
    if (isButton(item) || isField(item)) {
      targets.push_back(item);
      if (item->height() < least - 0.5 || item->width() < least - 0.5) {
        faults.append(QStringLiteral("too small (%1 x %2): %3")
                          .arg(item->width())
                          .arg(item->height())
                          .arg(textOf(item)));
      }
    }
    return true;
  });
  addOverlaps(faults, texts, lettersOf);
  addOverlaps(faults, targets, sceneRect);
  addSpokenFaults(faults, seen);
  return faults;
}

}  // namespace

QStringList faultsOf(Hand& hand) {
  // What is still being laid out is no fault; what stays is one.
  QStringList faults;
  hand.until(
      [&] {
        faults = faultsNow(hand);
        return faults.isEmpty();
      },
      1500);
  return faults;
}

double contrast(const QColor& first, const QColor& second) {
  const auto luminance = [](const QColor& color) {
    const auto part = [](double value) {
      return value <= 0.04045 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * part(color.redF()) + 0.7152 * part(color.greenF()) + 0.0722 * part(color.blueF());
  };
  const double a = luminance(first);
  const double b = luminance(second);
  return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05);
}

QStringList faintTextsOf(Hand& hand) {
  QStringList faint;
  const QImage picture = hand.grab().convertToFormat(QImage::Format_RGB32);
  eachItem(lookedAt(hand), [&](QQuickItem* item) {
    if (!isText(item)) return true;
    const QRect place = seenOf(item, lettersOf(item), hand.window()).toAlignedRect() & picture.rect();
    if (place.width() < 4 || place.height() < 4) return true;
    // The colour that is there most is what lies behind the letters.
    std::unordered_map<QRgb, int> count;
    for (int y = place.top(); y <= place.bottom(); ++y) {
      const auto* const line = reinterpret_cast<const QRgb*>(picture.constScanLine(y));
      for (int x = place.left(); x <= place.right(); ++x) ++count[line[x]];
    }
    const QColor behind = QColor::fromRgb(
        std::ranges::max_element(count, {}, [](const auto& each) { return each.second; })->first);
    const auto font = item->property("font").value<QFont>();
    const bool large = font.pixelSize() >= 24 || (font.bold() && font.pixelSize() >= 18.66);
    const double needed = large || !item->isEnabled() ? 4.5 : 7.0;
    const double there = contrast(item->property("color").value<QColor>(), behind);
    if (there < needed)
      faint.append(QStringLiteral("faint (%1 of %2, %3 on %4): %5")
                       .arg(there, 0, 'f', 2)
                       .arg(needed)
                       .arg(item->property("color").value<QColor>().name(), behind.name(), textOf(item)));
    return true;
  });
  return faint;
}

}  // namespace hingepin::mobile
