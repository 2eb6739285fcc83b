// SPDX-License-Identifier: Apache-2.0
#include "engine/certificate/markup.h"

#include <fmt/format.h>

#include <cstdint>

#include "engine/base/text.h"

namespace hingepin::certificate {
namespace {

constexpr std::string_view kReplacement = "\xEF\xBF\xBD";

std::size_t lengthOf(unsigned char first) {
  return first < 0x80 ? 1 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
}

/// The code point of a whole character of valid UTF-8.
std::uint32_t codePointOf(std::string_view character) {
  const auto byte = [&](std::size_t at) {
    return static_cast<std::uint32_t>(static_cast<unsigned char>(character[at]));
  };
  if (character.size() == 1) return byte(0);
  std::uint32_t point = byte(0) & (0x7FU >> character.size());
  for (std::size_t at = 1; at < character.size(); ++at) point = (point << 6U) | (byte(at) & 0x3FU);
  return point;
}

bool isShown(std::uint32_t point) {
  if (point < 0x20) return point == '\t' || point == '\n' || point == '\r';
  if (point >= 0x7F && point < 0xA0) return false;
  if ((point >= 0x202A && point <= 0x202E) || (point >= 0x2066 && point <= 0x2069)) return false;
  return (point & 0xFFFEU) != 0xFFFEU;
}

}  // namespace

std::string escaped(std::string_view text) {
  std::string made;
  made.reserve(text.size());
  while (!text.empty()) {
    const std::size_t bad = firstBadUtf8(text);
    std::string_view good = text.substr(0, bad);
    text.remove_prefix(good.size());
    if (!text.empty()) text.remove_prefix(1);
    while (!good.empty()) {
      const std::string_view character = good.substr(0, lengthOf(static_cast<unsigned char>(good.front())));
      good.remove_prefix(character.size());
      switch (character.front()) {
        case '&':
          made += "&amp;";
          break;
        case '<':
          made += "&lt;";
          break;
        case '>':
          made += "&gt;";
          break;
        case '"':
          made += "&quot;";
          break;
        case '\'':
          made += "&#39;";
          break;
        default:
          made += isShown(codePointOf(character)) ? character : kReplacement;
      }
    }
    if (bad != std::string_view::npos) made += kReplacement;
  }
  return made;
}

std::string collapsed(std::string_view text) {
  std::string made;
  bool space = false;
  for (const char byte : text) {
    if (byte == ' ' || byte == '\t' || byte == '\n' || byte == '\r') {
      space = !made.empty();
      continue;
    }
    if (space) made += ' ';
    space = false;
    made += byte;
  }
  return made;
}

std::string imageAddress(std::string_view svg) {
  std::string made = "data:image/svg+xml,";
  for (const char byte : svg) {
    const auto code = static_cast<unsigned char>(byte);
    const bool plain = (code >= 'a' && code <= 'z') || (code >= 'A' && code <= 'Z') ||
                       (code >= '0' && code <= '9') ||
                       std::string_view("-_.~/:=,;() ").find(byte) != std::string_view::npos;
    if (plain && byte != ' ') {
      made += byte;
    } else {
      made += fmt::format("%{:02X}", code);
    }
  }
  return made;
}

}  // namespace hingepin::certificate
