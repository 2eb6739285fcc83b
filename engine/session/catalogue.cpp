// SPDX-License-Identifier: Apache-2.0
#include "engine/session/catalogue.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <nlohmann/json.hpp>
#include <utility>
#include <variant>

namespace hingepin::session {

extern const std::string_view kEnglishJson;

namespace {

/// UCUM codes that people write otherwise, with the space before them.
constexpr std::array<std::pair<std::string_view, std::string_view>, 15> kSymbols = {{
    {"1", ""},
    {"deg", "°"},
    {"deg/s", "°/s"},
    {"Cel", " °C"},
    {"[degF]", " °F"},
    {"m/s2", " m/s²"},
    {"[psi]", " psi"},
    {"[lb_av]", " lb"},
    {"[ston_av]", " short tons"},
    {"[lton_av]", " long tons"},
    {"[in_i]", " in"},
    {"[ft_i]", " ft"},
    {"[lbf_av]", " lbf"},
    {"/min", " rpm"},
    {"{rev}/min", " rpm"},
}};

std::string shown(const MessageValue& value, UnitSystem system) {
  if (const Amount* const amount = std::get_if<Amount>(&value)) return show(*amount, system);
  std::string text = std::get<std::string>(value);
  std::ranges::replace_if(
      text, [](char byte) { return static_cast<unsigned char>(byte) < 0x20 || byte == 0x7F; }, '?');
  return text;
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

const Catalogue& englishCatalogue() {
  static const Catalogue catalogue = readCatalogue(kEnglishJson).value_or(Catalogue());
  return catalogue;
}

std::string say(const Catalogue& catalogue, const Message& message, UnitSystem system) {
  const auto entry = catalogue.find(message.code);
  if (entry == catalogue.end()) {
    std::string text = message.code;
    for (const auto& [name, value] : message.values)
      text += fmt::format("; {}: {}", name, shown(value, system));
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
    text +=
        value == message.values.end() ? std::string(rest.substr(0, close + 1)) : shown(value->second, system);
    rest.remove_prefix(close + 1);
  }
  return text;
}

std::string show(const Amount& amount, UnitSystem system) {
  const Amount converted = inSystem(amount, system);
  std::string text = fmt::format("{:.{}f}", converted.value, converted.decimals);
  if (text.starts_with('-') && text.find_first_of("123456789") == std::string::npos) text.erase(0, 1);
  const auto* const symbol = std::ranges::find(kSymbols, std::string_view(converted.ucum),
                                               &std::pair<std::string_view, std::string_view>::first);
  return symbol != kSymbols.end() ? text + std::string(symbol->second) : text + " " + converted.ucum;
}

}  // namespace hingepin::session
