// SPDX-License-Identifier: Apache-2.0
#include "engine/session/catalogue.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "engine/procedures/procedure.h"
#include "engine/proof/due.h"
#include "engine/session/overview.h"

namespace hingepin::session {
namespace {

/// Words of the file formats that look like message codes and stand outside a table of words and enumerators.
const std::set<std::string> kFormatWords = {
    "z-bar",         "boom-lowest",    "boom-highest",       "boom-reference", "bucket-dumped",
    "bucket-racked", "test-mass",      "boom-angle",         "boom-sensor",    "bucket-sensor",
    "head-pressure", "rod-pressure",   "oil-temperature",    "reference-mass", "rated-payload",
    "window-low",    "window-high",    "end-of-job",         "accepted-root",  "known-head",
    "engine-speed",  "not-older-than", "content-length",     "content-type",   "retry-after",
    "if-none-match", "list-type",      "continuation-token", "x-amz-date",     "x-amz-content-sha256",
    "does-not-hold", "nist-hb44",      "nlohmann-json",      "oiml-r51",       "oiml-r76",
    "span-factor",   "zero-correction"};

/// What such a word becomes a code by: "role-" and a role.
constexpr std::array<std::string_view, 9> kComposed = {
    "answer-", "certificate-", "direction-", "due-event-", "how-", "phase-", "role-", "state-", "value-"};

bool isComposed(std::string_view code) {
  return std::ranges::any_of(kComposed, [&](std::string_view part) { return code.starts_with(part); });
}

struct Use {
  std::string file;
  std::set<std::string> values;  ///< that a message of this code is given there
};

std::string withoutComments(const std::string& text) {
  std::istringstream stream(text);
  std::string kept;
  for (std::string line; std::getline(stream, line);) {
    const std::size_t comment = line.find("//");
    kept += line.substr(0, comment) + "\n";
  }
  return kept;
}

std::set<std::string> namesIn(const std::string& text, const std::regex& pattern) {
  std::set<std::string> names;
  for (std::sregex_iterator match(text.begin(), text.end(), pattern), end; match != end; ++match) {
    names.insert((*match)[1]);
  }
  return names;
}

/// The text from `from` to the bracket that closes what it stands in.
std::string restOfCall(const std::string& text, std::size_t from) {
  int depth = 0;
  for (std::size_t at = from; at < text.size(); ++at) {
    if (text[at] == '(' || text[at] == '{') ++depth;
    if (text[at] == ')' || text[at] == '}') --depth;
    if (depth < 0) return text.substr(from, at - from);
  }
  return text.substr(from);
}

/// Ids and words of the library's procedures, which sources may name too.
const std::set<std::string>& libraryWords() {
  static const std::set<std::string> found = [] {
    std::set<std::string> words;
    const std::regex word("\"([a-z]+(?:-[a-z0-9]+)+)\"");
    for (const auto& entry : std::filesystem::directory_iterator(std::filesystem::path(HINGEPIN_SOURCE_DIR) /
                                                                 "engine/procedures/library")) {
      std::ostringstream stream;
      stream << std::ifstream(entry.path()).rdbuf();
      words.merge(namesIn(stream.str(), word));
    }
    return words;
  }();
  return found;
}

/// All sources of the engine, one after the other.
const std::string& sources() {
  static const std::string all = [] {
    std::ostringstream stream;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(
             std::filesystem::path(HINGEPIN_SOURCE_DIR) / "engine")) {
      const std::string extension = entry.path().extension();
      if (extension == ".cpp" || extension == ".h") stream << std::ifstream(entry.path()).rdbuf();
    }
    return stream.str();
  }();
  return all;
}

/// Every literal in the engine that is a message code, with the names of the values that go with it.
const std::multimap<std::string, Use>& usesInSources() {
  static const std::multimap<std::string, Use> found = [] {
    std::multimap<std::string, Use> uses;
    const std::regex code("\"([a-z]+(?:-[a-z0-9]+)+)\"");
    const std::regex enumerator(
        R"re(\s*,\s*[A-Za-z]+(?:::[A-Za-z]+)*::[A-Z][A-Za-z]*\s*\}|\s*,\s*k[A-Z][A-Za-z]*\s*\})re");
    const std::regex value_name(R"re(\{\s*"([a-z_]+)"\s*,)re");
    const std::regex added_name(R"re(emplace(?:_back)?\([^"\n]*"([a-z_]+)",)re");
    const std::regex next_name(R"re(^\s*,\s*"([a-z_]+)"\s*,)re");
    for (const auto& entry : std::filesystem::recursive_directory_iterator(
             std::filesystem::path(HINGEPIN_SOURCE_DIR) / "engine")) {
      const std::string extension = entry.path().extension();
      if (extension != ".cpp" && extension != ".h" && extension != ".in") continue;
      std::ostringstream stream;
      stream << std::ifstream(entry.path()).rdbuf();
      const std::string text = withoutComments(stream.str());
      for (std::sregex_iterator match(text.begin(), text.end(), code), end; match != end; ++match) {
        const std::string word = (*match)[1];
        const std::size_t after = static_cast<std::size_t>(match->position() + match->length());
        const bool in_table = std::regex_search(text.begin() + static_cast<std::ptrdiff_t>(after), text.end(),
                                                enumerator, std::regex_constants::match_continuous);
        if (in_table || word.starts_with("hingepin-") || kFormatWords.contains(word)) continue;
        if (libraryWords().contains(word) && !englishCatalogue().contains(word)) continue;
        std::set<std::string> names = namesIn(restOfCall(text, after), value_name);
        // Codes handed to a helper get their values there.
        if (names.empty()) names = namesIn(text, value_name);
        names.merge(namesIn(text, added_name));
        std::smatch handed_on;  // `helper("code", "name of its one value", ...)`
        const std::string rest = text.substr(after, 80);
        if (std::regex_search(rest, handed_on, next_name)) names.insert(handed_on[1]);
        uses.emplace(word, Use{entry.path().lexically_relative(HINGEPIN_SOURCE_DIR).string(), names});
      }
    }
    return uses;
  }();
  return found;
}

TEST(CatalogueTest, EveryCodeInTheSourcesHasASentence) {
  EXPECT_GT(usesInSources().size(), 100U);
  for (const auto& [code, use] : usesInSources()) {
    EXPECT_TRUE(englishCatalogue().contains(code)) << code << " in " << use.file;
  }
}

TEST(CatalogueTest, EverySentenceHasACodeInTheSources) {
  for (const auto& [code, sentence] : englishCatalogue()) {
    EXPECT_TRUE(usesInSources().contains(code) || isComposed(code)) << code;
  }
}

TEST(CatalogueTest, EveryWordThatCodesAreMadeOfHasItsSentence) {
  const auto expect = [](const std::string& code) {
    EXPECT_TRUE(englishCatalogue().contains(code)) << code;
    return code;
  };
  std::set<std::string> composed;
  for (const char* role : {"technician", "operator", "supervisor", "safety-lead", "yard-clerk", "customer"}) {
    ASSERT_TRUE(procedures::isRole(role));
    composed.insert(expect(std::string("role-") + role));
  }
  for (const char* answer : {"yes", "no", "unconfirmed", "done", "failed", "taken", "skipped", "written",
                             "signed", "absent", "refused"}) {
    composed.insert(expect(std::string("answer-") + answer));
  }
  for (const char* how : {"typed", "log", "live", "monitor"})
    composed.insert(expect(std::string("how-") + how));
  for (const char* phase : {"running", "done", "failed", "abandoned"}) {
    composed.insert(expect(std::string("phase-") + phase));
  }
  for (const char* condition : {"engine-speed", "fuel-level", "oil-temperature", "operating-hours", "pitch"})
    composed.insert(expect(std::string("certificate-") + condition));
  for (const char* pace : {"slow", "fast", "own"})
    composed.insert(expect(std::string("certificate-pace-") + pace));
  for (const auto& event : proof::kEventNames)
    composed.insert(expect("due-event-" + std::string(event.name)));
  for (const char* direction : {"up", "down"}) composed.insert(expect(std::string("direction-") + direction));
  for (int state = 0; state <= static_cast<int>(UnitState::Ready); ++state) {
    composed.insert(expect(sentenceOf(static_cast<UnitState>(state))));
  }
  // Of words that stand as values the sources hold the English.
  for (const auto& [code, sentence] : englishCatalogue()) {
    if (code.starts_with("value-") && sources().contains('"' + sentence + '"')) composed.insert(code);
  }
  for (const auto& [code, sentence] : englishCatalogue()) {
    EXPECT_TRUE(!isComposed(code) || composed.contains(code) || usesInSources().contains(code)) << code;
  }
}

TEST(CatalogueTest, EveryPlaceholderIsFilledWhereverTheCodeIsUsed) {
  const std::regex placeholder(R"re(\{([^}]*)\})re");
  for (const auto& [code, use] : usesInSources()) {
    const auto sentence = englishCatalogue().find(code);
    if (sentence == englishCatalogue().end()) continue;
    if (use.file == "engine/session/catalogue.cpp") continue;  // it lists codes and says none of them
    for (const std::string& name : namesIn(sentence->second, placeholder)) {
      EXPECT_TRUE(use.values.contains(name)) << "{" << name << "} of " << code << " in " << use.file;
    }
  }
}

TEST(CatalogueTest, ValuesAreShownInTheUnitsAsked) {
  const Catalogue catalogue = {{"heavy", "{log}: {mass} at {angle}, {oil}."}};
  const Message message{"heavy",
                        {{"log", std::string("a.csv")},
                         {"mass", Amount{1987.4, "kg", 0}},
                         {"angle", Amount{-0.04, "deg", 1}},
                         {"oil", Amount{40, "Cel", 0}}}};
  EXPECT_EQ(say(catalogue, message, UnitSystem::Metric), "a.csv: 1987 kg at 0.0°, 40 °C.");
  EXPECT_EQ(say(catalogue, message, UnitSystem::UsCustomary), "a.csv: 4381 lb at 0.0°, 104 °F.");
}

TEST(CatalogueTest, NothingIsLostWithoutASentence) {
  EXPECT_EQ(say({}, {"some-code", {{"mass", Amount{2, "t", 0}}}}, UnitSystem::Metric),
            "some-code; mass: 2 t");
  EXPECT_EQ(say({{"a-b", "x {y} {z"}}, {"a-b", {}}, UnitSystem::Metric), "x {y} {z");
}

TEST(CatalogueTest, ControlCharactersDoNotReachTheTerminal) {
  EXPECT_EQ(say({{"a-b", "{x}"}}, {"a-b", {{"x", std::string("\x1B[31m\nred")}}}, UnitSystem::Metric),
            "?[31m?red");
}

TEST(CatalogueTest, OnlyAnObjectOfStringsIsACatalogue) {
  EXPECT_TRUE(readCatalogue("{\"a\": \"b\"}"));
  for (const char* text : {"", "[]", "{\"a\": 1}", "{\"a\"", "nonsense"})
    EXPECT_FALSE(readCatalogue(text)) << text;
}

}  // namespace
}  // namespace hingepin::session
