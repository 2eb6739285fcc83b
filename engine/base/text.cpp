// SPDX-License-Identifier: Apache-2.0
#include "engine/base/text.h"

#include <algorithm>
#include <cstring>

namespace hingepin {
namespace {

constexpr std::size_t kMostExcerpt = 60;

bool isContinuation(char byte) { return (static_cast<unsigned char>(byte) & 0xC0) == 0x80; }

/// @return the length of the well-formed UTF-8 character at the front of `text` (not empty), 0 if there is
/// none.
std::size_t characterLength(std::string_view text) {
  const auto byte = [text](std::size_t at) { return static_cast<unsigned char>(text[at]); };
  const unsigned lead = byte(0);
  if (lead < 0x80) return 1;
  const std::size_t length = lead >= 0xC2 && lead <= 0xDF   ? 2
                             : lead >= 0xE0 && lead <= 0xEF ? 3
                             : lead >= 0xF0 && lead <= 0xF4 ? 4
                                                            : 0;
  if (length == 0 || text.size() < length) return 0;
  for (std::size_t at = 1; at < length; ++at) {
    if (!isContinuation(text[at])) return 0;
  }
  const unsigned second = byte(1);
  const bool overlong = (lead == 0xE0 && second < 0xA0) || (lead == 0xF0 && second < 0x90);
  const bool surrogate = lead == 0xED && second > 0x9F;
  const bool beyond = lead == 0xF4 && second > 0x8F;
  return overlong || surrogate || beyond ? 0 : length;
}

}  // namespace

std::size_t firstBadUtf8(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t length = characterLength(text.substr(at));
    if (length == 0) return at;
    at += length;
  }
  return std::string_view::npos;
}

std::size_t countCharacters(std::string_view text) {
  return static_cast<std::size_t>(
      std::ranges::count_if(text, [](char byte) { return !isContinuation(byte); }));
}

std::string excerpt(std::string_view text) {
  std::string shown;
  for (std::size_t characters = 0; !text.empty(); ++characters) {
    if (characters == kMostExcerpt) return shown + "...";
    const std::size_t length = characterLength(text);
    const auto lead = static_cast<unsigned char>(text[0]);
    const bool c1_control = length == 2 && lead == 0xC2 && static_cast<unsigned char>(text[1]) < 0xA0;
    if (length == 0 || lead < 0x20 || lead == 0x7F || c1_control) {
      shown += '?';
    } else {
      shown += text.substr(0, length);
    }
    text.remove_prefix(length == 0 ? 1 : length);
  }
  return shown;
}

}  // namespace hingepin
