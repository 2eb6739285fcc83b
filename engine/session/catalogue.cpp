// SPDX-License-Identifier: Apache-2.0
#include "engine/session/catalogue.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <nlohmann/json.hpp>
#include <utility>
#include <variant>

#include "engine/session/words.h"

namespace hingepin::session {

namespace {

/// UCUM codes that people write otherwise, with the space before them.
constexpr std::array<std::pair<std::string_view, std::string_view>, 11> kSymbols = {{
    {"1", ""},
    {"deg", "°"},
    {"deg/s", "°/s"},
    {"Cel", " °C"},
    {"[degF]", " °F"},
    {"m/s2", " m/s²"},
    {"[psi]", " psi"},
    {"[lb_av]", " lb"},
    {"[in_i]", " in"},
    {"[ft_i]", " ft"},
    {"[lbf_av]", " lbf"},
}};

/// UCUM codes that people write in words, and the codes of these.
constexpr std::array<std::pair<std::string_view, std::string_view>, 4> kUnitWords = {{
    {"[ston_av]", "unit-short-tons"},
    {"[lton_av]", "unit-long-tons"},
    {"/min", "unit-revolutions-per-minute"},
    {"{rev}/min", "unit-revolutions-per-minute"},
}};

/// What a catalogue must say in its own language or not at all.
constexpr std::array<std::string_view, 12> kSafety = {
    "document-do-not-use",        "document-not-for-trade", "document-cautions",
    "hazard-left-open",           "safety-not-waived",      "second-person-from-afar",
    "second-person-is-the-first", "second-person-missing",  "second-person-on-same-phone",
    "state-do-not-use",           "state-locked-out",       "zone-not-clear"};

/// Under which names words of the engine itself stand as values: what was expected, what was found.
constexpr std::array<std::string_view, 4> kWordValues = {"expected", "found", "dimension", "stated"};

/// The words of a value in a language: under "value-" and its English words joined by hyphens. nullptr for
/// none.
const std::string* wordsOf(const Catalogue& catalogue, std::string_view english) {
  std::string code = "value";
  bool joins = true;
  for (const char byte : english) {
    const auto letter = static_cast<char>(byte >= 'A' && byte <= 'Z' ? byte - 'A' + 'a' : byte);
    const bool stays = (letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9');
    if (stays && joins) code += '-';
    if (stays) code += letter;
    joins = !stays;
  }
  const auto found = catalogue.find(code);
  return found == catalogue.end() ? nullptr : &found->second;
}

std::string shown(const MessageValue& value, UnitSystem system, const Locale& locale) {
  if (const Amount* const amount = std::get_if<Amount>(&value)) return show(*amount, system, locale);
  std::string text = std::get<std::string>(value);
  std::ranges::replace_if(
      text, [](char byte) { return static_cast<unsigned char>(byte) < 0x20 || byte == 0x7F; }, '?');
  return isolated(std::move(text), locale);
}

}  // namespace

std::optional<Catalogue> readCatalogue(std::string_view json) {
  const nlohmann::json read = nlohmann::json::parse(json, nullptr, false);
  if (!read.is_object()) return std::nullopt;
  Catalogue catalogue;
  for (const auto& [code, sentence] : read.items()) {
    if (!sentence.is_string()) return std::nullopt;
    catalogue.emplace(code, sentence.get_ref<const std::string&>());
  }
  return catalogue;
}

const Catalogue& englishCatalogue() { return engineCatalogue("en"); }

bool isAboutSafety(std::string_view code) {
  return code.starts_with("tag-") || std::ranges::find(kSafety, code) != kSafety.end();
}

const Catalogue& engineCatalogue(std::string_view language) {
  static const std::map<std::string_view, Catalogue> all = [] {
    std::map<std::string_view, Catalogue> made;
    for (const LanguageFile& file : engineFiles()) {
      made[file.language] = readCatalogue(file.json).value_or(Catalogue());
    }
    const Catalogue& english = made["en"];
    for (auto& [tag, catalogue] : made) {
      for (const auto& [code, sentence] : english) {
        if (!isAboutSafety(code)) catalogue.emplace(code, sentence);  // what is there stays
      }
    }
    return made;
  }();
  const auto found = all.find(language);
  return found == all.end() ? all.at("en") : found->second;
}

std::string say(const Message& message, const Reader& reader) {
  return say(engineCatalogue(reader.language), message, reader.system, localeOf(reader.language));
}

std::string say(const Catalogue& catalogue, const Message& message, UnitSystem system, const Locale& locale) {
  const auto entry = catalogue.find(message.code);
  if (entry == catalogue.end()) {
    std::string text = message.code;
    for (const auto& [name, value] : message.values)
      text += fmt::format("; {}: {}", name, shown(value, system, locale));
    return text;
  }
  std::string text;
  std::string_view rest = entry->second;
  while (!rest.empty()) {
    const std::size_t open = std::min(rest.find('{'), rest.size());
    text += rest.substr(0, open);
    rest.remove_prefix(open);
    const std::size_t close = rest.find('}');
    if (close == std::string_view::npos) return text + std::string(rest);
    const std::string_view name = rest.substr(1, close - 1);
    const auto value = std::ranges::find(message.values, name,
                                         [](const auto& pair) { return std::string_view(pair.first); });
    const std::string* words = nullptr;
    if (value != message.values.end() && std::ranges::find(kWordValues, name) != kWordValues.end()) {
      if (const std::string* const english = std::get_if<std::string>(&value->second))
        words = wordsOf(catalogue, *english);
    }
    text += value == message.values.end() ? std::string(rest.substr(0, close + 1))
            : words != nullptr            ? *words
                                          : shown(value->second, system, locale);
    rest.remove_prefix(close + 1);
  }
  return text;
}

std::string unitText(std::string_view ucum, const Locale& locale) {
  const auto* const symbol =
      std::ranges::find(kSymbols, ucum, &std::pair<std::string_view, std::string_view>::first);
  if (symbol != kSymbols.end()) return std::string(symbol->second);
  const auto* const words =
      std::ranges::find(kUnitWords, ucum, &std::pair<std::string_view, std::string_view>::first);
  std::string text = " ";
  if (words == kUnitWords.end()) return text += ucum;
  const Catalogue& catalogue = engineCatalogue(locale.language);
  const auto found = catalogue.find(words->second);
  return text += found == catalogue.end() ? ucum : std::string_view(found->second);
}

std::string show(const Amount& amount, UnitSystem system, const Locale& locale) {
  const Amount converted = inSystem(amount, system);
  std::string text = fmt::format("{:.{}f}", converted.value, converted.decimals);
  if (text.starts_with('-') && text.find_first_of("123456789") == std::string::npos) text.erase(0, 1);
  return isolated(numberIn(text, locale) + unitText(converted.ucum, locale), locale);
}

}  // namespace hingepin::session
