// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/units/ucum.h"

namespace hingepin::session {

enum class DateOrder { YearMonthDay, DayMonthYear };

/// How a language writes numbers and dates. The default is what the command line prints.
struct Locale {
  std::string language = "en";
  std::string decimal_mark = ".";
  std::string group_mark{};  ///< between groups of three digits, in numbers of five digits and more
  DateOrder date_order = DateOrder::YearMonthDay;
  std::string date_mark = "-";
  bool right_to_left = false;
};

/// The languages of the program by their tags (BCP 47), English first: those of procedures and engine alike.
[[nodiscard]] std::vector<std::string> languages();

/// The locale of a language; digits are Western in all of them. One that is not known is written as English.
[[nodiscard]] const Locale& localeOf(std::string_view language);

/// For whom something is put into words.
struct Reader {
  std::string language = "en";
  UnitSystem system = UnitSystem::Metric;
  int utc_offset_min = 0;  ///< of the reader's clock
};

/// A value that keeps its own direction inside a sentence: where the language is written from right to left
/// it stands between U+2068 and U+2069 (Unicode Standard Annex 9, section 2.4.2), so that minus signs and
/// units stay on their side; elsewhere as it is.
[[nodiscard]] std::string isolated(std::string text, const Locale& locale);

/// "0,25" for "0.25": digits as a person of that language reads them. @param number as the engine writes it
[[nodiscard]] std::string numberIn(std::string_view number, const Locale& locale);

/// A quantity as typed ("1987 kg"), in words of the reader: its own digits and unit, no conversion. What is
/// no quantity stays as it is.
[[nodiscard]] std::string asTyped(std::string_view quantity, const Locale& locale);
/// The same in the units of the reader's system ("4381 lb"), with as many digits as it was typed with.
[[nodiscard]] std::string inUnitsOf(std::string_view quantity, const Reader& reader);

/// "2026-05-04", and "2026-05-04 07:00", by the reader's clock and in the order of the language.
[[nodiscard]] std::string dateText(std::int64_t utc_ms, const Reader& reader);
[[nodiscard]] std::string dateTimeText(std::int64_t utc_ms, const Reader& reader);

}  // namespace hingepin::session
