// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <set>
#include <string>
#include <vector>

#include "engine/session/catalogue.h"
#include "engine/session/locale.h"
#include "engine/session/procedure_words.h"
#include "engine/session/words.h"

namespace hingepin::session {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

/// A sentence's placeholders, sorted, each as often as it stands there.
std::multiset<std::string> placeholdersOf(std::string_view sentence) {
  std::multiset<std::string> found;
  while (true) {
    const std::size_t open = sentence.find('{');
    const std::size_t close = sentence.find('}', open);
    if (close == std::string_view::npos) return found;
    found.emplace(sentence.substr(open, close - open + 1));
    sentence.remove_prefix(close + 1);
  }
}

/// What differs between a language and English, in words.
std::vector<std::string> differences(const Catalogue& english, const Catalogue& other) {
  std::vector<std::string> found;
  for (const auto& [code, sentence] : english) {
    const auto said = other.find(code);
    if (said == other.end()) {
      found.push_back("missing: " + code);
    } else if (said->second.empty()) {
      found.push_back("empty: " + code);
    } else if (placeholdersOf(sentence) != placeholdersOf(said->second)) {
      found.push_back("placeholders: " + code);
    }
  }
  for (const auto& [code, sentence] : other) {
    if (!english.contains(code)) found.push_back("unknown: " + code);
  }
  return found;
}

/// A language's own sentences, without what English lends.
Catalogue ownOf(std::span<const LanguageFile> files, std::string_view language) {
  Catalogue own;
  for (const LanguageFile& file : files) {
    if (file.language == language) own.merge(readCatalogue(file.json).value_or(Catalogue()));
  }
  return own;
}

TEST(LanguagesTest, AreTheSixOfTheProgramWithEnglishFirst) {
  EXPECT_THAT(languages(), ElementsAre("en", "es", "fr", "de", "pt-BR", "ar"));
}

class LanguageTest : public testing::TestWithParam<std::string> {};

TEST_P(LanguageTest, SaysEveryMessageOfTheEngineWithItsValues) {
  EXPECT_THAT(differences(ownOf(engineFiles(), "en"), ownOf(engineFiles(), GetParam())), IsEmpty());
}

TEST_P(LanguageTest, SaysEveryTextOfTheProceduresWithItsValues) {
  EXPECT_THAT(differences(ownOf(procedureFiles(), "en"), ownOf(procedureFiles(), GetParam())), IsEmpty());
}

TEST_P(LanguageTest, HasALocaleOfItsOwn) { EXPECT_EQ(localeOf(GetParam()).language, GetParam()); }

std::string testNameOf(const testing::TestParamInfo<std::string>& language) {
  return language.param.substr(0, 2);
}
INSTANTIATE_TEST_SUITE_P(Languages, LanguageTest, testing::Values("en", "es", "fr", "de", "pt-BR", "ar"),
                         testNameOf);

TEST(CatalogueTest, ALanguageThatIsNotKnownIsEnglish) {
  EXPECT_EQ(&engineCatalogue("tlh"), &englishCatalogue());
}

TEST(CatalogueTest, TagsAndWhatNobodyConfirmedAreAboutSafety) {
  for (const char* code : {"tag-failed-at", "zone-not-clear", "second-person-missing", "state-do-not-use",
                           "document-do-not-use", "document-not-for-trade"}) {
    EXPECT_TRUE(isAboutSafety(code)) << code;
    EXPECT_TRUE(englishCatalogue().contains(code)) << code;
  }
  EXPECT_FALSE(isAboutSafety("csv-empty"));
}

/// Digits are grouped by a narrow space from five on, and the decimal mark is the language's. Source: SI
/// Brochure, 9th edition (BIPM 2019), section 5.4.4.
TEST(LocaleTest, NumbersHaveTheLanguagesDecimalMarkAndAreGroupedBySpaces) {
  EXPECT_EQ(numberIn("1234.5", localeOf("de")), "1234,5");
  EXPECT_EQ(numberIn("-12345.25", localeOf("fr")), "-12\u202F345,25");
  EXPECT_EQ(numberIn("1234567", localeOf("en")), "1\u202F234\u202F567");
  EXPECT_EQ(numberIn("0.25", localeOf("ar")), "0.25");
  EXPECT_EQ(numberIn("12345.25", {}), "12345.25") << "the command line stays as it is";
}

TEST(LocaleTest, AnAmountIsShownInTheReadersUnitsAndMarks) {
  EXPECT_EQ(show({0.25, "t", 2}, UnitSystem::Metric, localeOf("es")), "0,25 t");
  EXPECT_EQ(show({2.5, "bar", 2}, UnitSystem::UsCustomary, localeOf("pt-BR")), "36,3 psi");
  EXPECT_EQ(show({1987, "kg", 0}, UnitSystem::Metric), "1987 kg");
}

TEST(LocaleTest, AQuantityStandsAsItWasTyped) {
  EXPECT_EQ(asTyped("2.50 [ston_av]", {}), "2.50 short tons");
  EXPECT_EQ(asTyped("0.20 m", localeOf("fr")), "0,20 m");
  EXPECT_EQ(asTyped("bay 2", localeOf("fr")), "bay 2");
}

TEST(LocaleTest, AConvertedQuantityKeepsAboutItsDigits) {
  Reader reader{.language = "en", .system = UnitSystem::UsCustomary};
  EXPECT_EQ(inUnitsOf("2000 kg", reader), "4409 lb");
  EXPECT_EQ(inUnitsOf("2.50 [ston_av]", reader), "2.50 short tons");
  reader.system = UnitSystem::Metric;
  EXPECT_EQ(inUnitsOf("2000 kg", reader), "2000 kg");
}

TEST(LocaleTest, DatesFollowTheReadersClockAndLanguage) {
  constexpr std::int64_t kLateEvening = 1'777'935'300'000;  // 2026-05-04T22:55:00Z
  EXPECT_EQ(dateTimeText(kLateEvening, {}), "2026-05-04 22:55");
  EXPECT_EQ(dateText(kLateEvening, {.language = "de", .utc_offset_min = 120}), "05.05.2026");
  EXPECT_EQ(dateTimeText(kLateEvening, {.language = "pt-BR", .utc_offset_min = -180}), "04/05/2026 19:55");
}

TEST(LocaleTest, WordsThatStandAsValuesAreOfTheReadersLanguage) {
  const Message message{"json-wrong-kind", {{"expected", "an object"}, {"found", "true or false"}}};
  EXPECT_EQ(say(message, Reader{.language = "de"}),
            "Hier erwartet: ein Objekt, gefunden: wahr oder falsch (true, false).");
  EXPECT_EQ(say(message, Reader{}), "Expected an object here, found true or false.");
  const Message typed{"format-unsupported", {{"text", "angle"}, {"expected", "hingepin-job/1"}}};
  EXPECT_THAT(say(typed, Reader{.language = "de"}), HasSubstr("„angle“")) << "what somebody typed stays";
}

/// Without the isolates the minus sign would stand to the right of its number. Source: Unicode Standard Annex
/// 9, rules P2 to P3 and X5c: a first strong isolate without a strong character runs from left to right.
TEST(LocaleTest, ValuesInArabicKeepTheirOwnDirection) {
  const Locale& arabic = localeOf("ar");
  EXPECT_EQ(show({-5, "deg", 1}, UnitSystem::Metric, arabic), "\u2068-5.0°\u2069");
  EXPECT_EQ(asTyped("-0.25 t", arabic), "\u2068-0.25 t\u2069");
  EXPECT_EQ(dateText(0, {.language = "ar"}), "\u206801/01/1970\u2069");
  const Message message{"live-not-at-pose",
                        {{"angle", "\u2068-5.0°\u2069"}, {"wanted", Amount{3, "deg", 0}}}};
  EXPECT_THAT(say(message, Reader{.language = "ar"}), HasSubstr("\u2068-5.0°\u2069"));
  EXPECT_THAT(say(message, Reader{.language = "ar"}), Not(HasSubstr("\u2068\u2068"))) << "once is enough";
  EXPECT_EQ(show({-5, "deg", 1}, UnitSystem::Metric, localeOf("de")), "-5,0°");
}

TEST(LocaleTest, AMessageOfTheEngineIsSaidToItsReader) {
  const Message message{"hold-too-short", {{"step", "x"}, {"left", Amount{2.5, "s", 1}}}};
  EXPECT_THAT(say(message, Reader{.language = "de"}), HasSubstr("2,5 s"));
}

}  // namespace
}  // namespace hingepin::session
