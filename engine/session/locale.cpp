// SPDX-License-Identifier: Apache-2.0
#include "engine/session/locale.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <optional>

#include "engine/session/catalogue.h"
#include "engine/session/words.h"

namespace hingepin::session {
namespace {

/// Between digits: U+202F, a narrow space that does not break. A point or comma there would be read as a
/// decimal mark by some. Source: SI Brochure, 9th edition (BIPM 2019), section 5.4.4.
constexpr const char* kGroup = "\u202F";

/// Decimal marks and dates as usual in the language (from memory of the Unicode CLDR). English dates are
/// written as ISO 8601 has them, since 04/05 is read in two ways.
const std::array<Locale, 6>& locales() {
  static const std::array<Locale, 6> all = {{
      {"en", ".", kGroup, DateOrder::YearMonthDay, "-"},
      {"es", ",", kGroup, DateOrder::DayMonthYear, "/"},
      {"fr", ",", kGroup, DateOrder::DayMonthYear, "/"},
      {"de", ",", kGroup, DateOrder::DayMonthYear, "."},
      {"pt-BR", ",", kGroup, DateOrder::DayMonthYear, "/"},
      {"ar", ".", kGroup, DateOrder::DayMonthYear, "/", true},
  }};
  return all;
}

bool isDigit(char byte) { return byte >= '0' && byte <= '9'; }

/// A time by the reader's clock.
std::chrono::sys_time<std::chrono::milliseconds> clockOf(std::int64_t utc_ms, const Reader& reader) {
  return std::chrono::sys_time<std::chrono::milliseconds>(std::chrono::milliseconds(utc_ms) +
                                                          std::chrono::minutes(reader.utc_offset_min));
}

struct Typed {
  std::string_view number;
  std::string_view ucum;
};
/// The parts of a quantity, or nothing.
std::optional<Typed> partsOf(std::string_view quantity) {
  const std::size_t space = quantity.find(' ');
  if (space == std::string_view::npos || !readAnyQuantity(quantity)) return std::nullopt;
  return Typed{quantity.substr(0, space), quantity.substr(space + 1)};
}

}  // namespace

std::vector<std::string> languages() {
  std::vector<std::string> tags;
  for (const LanguageFile& file : engineFiles()) tags.emplace_back(file.language);
  return tags;
}

const Locale& localeOf(std::string_view language) {
  const auto* const found = std::ranges::find(locales(), language, &Locale::language);
  return found == locales().end() ? locales().front() : *found;
}

std::string isolated(std::string text, const Locale& locale) {
  constexpr std::string_view kOpen = "\u2068";
  constexpr std::string_view kClose = "\u2069";
  if (!locale.right_to_left || text.empty() || (text.starts_with(kOpen) && text.ends_with(kClose)))
    return text;
  return std::string(kOpen) + text + std::string(kClose);
}

std::string numberIn(std::string_view number, const Locale& locale) {
  const std::size_t first = static_cast<std::size_t>(std::ranges::find_if(number, isDigit) - number.begin());
  std::size_t end = first;
  while (end < number.size() && isDigit(number[end])) ++end;
  std::string text(number.substr(0, first));
  const std::size_t digits = end - first;
  for (std::size_t index = first; index < end; ++index) {
    const std::size_t left = end - index;
    if (digits > 4 && index > first && left % 3 == 0) text += locale.group_mark;
    text += number[index];
  }
  for (const char byte : number.substr(end)) {
    if (byte == '.') {
      text += locale.decimal_mark;
    } else {
      text += byte;
    }
  }
  return text;
}

std::string asTyped(std::string_view quantity, const Locale& locale) {
  const std::optional<Typed> typed = partsOf(quantity);
  if (!typed) return std::string(quantity);
  return isolated(numberIn(typed->number, locale) + unitText(typed->ucum, locale), locale);
}

std::string inUnitsOf(std::string_view quantity, const Reader& reader) {
  const std::optional<Typed> typed = partsOf(quantity);
  if (!typed) return std::string(quantity);
  const Unit unit = *findUnit(typed->ucum);
  const std::size_t point = typed->number.find('.');
  const bool plain = typed->number.find_first_of("eE") == std::string_view::npos;
  const auto decimals =
      point == std::string_view::npos || !plain ? 0 : static_cast<int>(typed->number.size() - point - 1);
  const double value = unit.fromSi(readAnyQuantity(quantity)->value_si);
  const Amount amount{value, std::string(typed->ucum), decimals};
  if (inSystem(amount, reader.system).ucum == typed->ucum)
    return asTyped(quantity, localeOf(reader.language));
  return show(amount, reader.system, localeOf(reader.language));
}

std::string dateText(std::int64_t utc_ms, const Reader& reader) {
  const std::chrono::year_month_day day(std::chrono::floor<std::chrono::days>(clockOf(utc_ms, reader)));
  const Locale& locale = localeOf(reader.language);
  const int year = static_cast<int>(day.year());
  const unsigned month = static_cast<unsigned>(day.month());
  const unsigned number = static_cast<unsigned>(day.day());
  if (locale.date_order == DateOrder::YearMonthDay)
    return fmt::format("{:04}{}{:02}{}{:02}", year, locale.date_mark, month, locale.date_mark, number);
  return isolated(fmt::format("{:02}{}{:02}{}{:04}", number, locale.date_mark, month, locale.date_mark, year),
                  locale);
}

std::string dateTimeText(std::int64_t utc_ms, const Reader& reader) {
  const auto time = clockOf(utc_ms, reader);
  const auto minutes =
      std::chrono::floor<std::chrono::minutes>(time - std::chrono::floor<std::chrono::days>(time));
  return fmt::format("{} {:02}:{:02}", dateText(utc_ms, reader), minutes.count() / 60, minutes.count() % 60);
}

}  // namespace hingepin::session
