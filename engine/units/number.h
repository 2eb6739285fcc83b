// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace hingepin {

/// @return how many leading bytes of `text` are a number by the grammar of RFC 8259 section 6, the longest
/// such prefix; 0 if there is none. No leading plus or zeros, no bare point, no NaN or infinity, independent
/// of locale.
[[nodiscard]] constexpr std::size_t scanNumber(std::string_view text) {
  const auto digits = [text](std::size_t at) {
    while (at < text.size() && text[at] >= '0' && text[at] <= '9') ++at;
    return at;
  };
  const std::size_t start = !text.empty() && text[0] == '-' ? 1 : 0;
  std::size_t end = start < text.size() && text[start] == '0' ? start + 1 : digits(start);
  if (end == start) return 0;
  if (end < text.size() && text[end] == '.') {
    const std::size_t fraction = digits(end + 1);
    if (fraction == end + 1) return end;
    end = fraction;
  }
  if (end < text.size() && (text[end] == 'e' || text[end] == 'E')) {
    const std::size_t sign = end + 1;
    const std::size_t first =
        sign < text.size() && (text[sign] == '+' || text[sign] == '-') ? sign + 1 : sign;
    const std::size_t exponent = digits(first);
    if (exponent != first) end = exponent;
  }
  return end;
}

/// @return the double nearest to `number`, all of which `scanNumber` accepted; nothing if it overflows, or if
/// it is not zero and underflows to zero.
[[nodiscard]] std::optional<double> valueOfNumber(std::string_view number);

/// @return the fewest digits that read back as `value` (finite), in plain notation where that stays readable.
[[nodiscard]] std::string writeNumber(double value);

}  // namespace hingepin
