// SPDX-License-Identifier: Apache-2.0
#include "engine/certificate/markup.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <vector>

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
  if (point >= 0x202A && point <= 0x202E) return false;
  return (point & 0xFFFEU) != 0xFFFEU;
}

bool isIsolate(std::uint32_t point) { return point >= 0x2066 && point <= 0x2069; }

/// Where the isolates of a text stand that end within it: they set its numbers apart and turn nothing after.
std::vector<const char*> pairedIsolates(std::string_view text) {
  std::vector<const char*> begun, paired;
  for (std::size_t at = 0; (at = text.find("\xE2\x81", at)) != std::string_view::npos; at += 2) {
    const unsigned char last = at + 2 < text.size() ? static_cast<unsigned char>(text[at + 2]) : 0;
    if (last >= 0xA6 && last <= 0xA8) begun.push_back(text.data() + at);
    if (last != 0xA9 || begun.empty()) continue;
    paired.insert(paired.end(), {begun.back(), text.data() + at});
    begun.pop_back();
  }
  return paired;
}

}  // namespace

std::string escaped(std::string_view text) {
  std::string made;
  made.reserve(text.size());
  const std::vector<const char*> paired = pairedIsolates(text);
  const auto mayStand = [&](std::string_view character) {
    const std::uint32_t point = codePointOf(character);
    return isIsolate(point) ? std::ranges::find(paired, character.data()) != paired.end() : isShown(point);
  };
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
          made += mayStand(character) ? character : kReplacement;
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
