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
  const char* const end = text.data() + text.size();
  const auto past_digits = [end](const char* at) {
    while (at != end && *at >= '0' && *at <= '9') ++at;
    return at;
  };
  const char* const start = text.data() + (text.starts_with('-') ? 1 : 0);
  const char* at = start != end && *start == '0' ? start + 1 : past_digits(start);
  if (at == start) return 0;
  if (at != end && *at == '.') {
    const char* const fraction = past_digits(at + 1);
    if (fraction != at + 1) {
      at = fraction;
    } else {
      return static_cast<std::size_t>(at - text.data());
    }
  }
  if (at != end && (*at == 'e' || *at == 'E')) {
    const char* const first = at + 1 + (at + 1 != end && (at[1] == '+' || at[1] == '-') ? 1 : 0);
    const char* const exponent = past_digits(first);
    if (exponent != first) at = exponent;
  }
  return static_cast<std::size_t>(at - text.data());
}

/// @return the double nearest to `number`, all of which `scanNumber` accepted; nothing if it overflows, or if
/// it is not zero and underflows to zero.
[[nodiscard]] std::optional<double> valueOfNumber(std::string_view number);

/// What a text begins with.
struct LeadingNumber {
  std::size_t length = 0;         ///< as scanNumber has it
  std::optional<double> value{};  ///< as valueOfNumber has it
};

/// scanNumber and valueOfNumber in one pass where the number is as short as a logger's are.
[[nodiscard]] LeadingNumber leadingNumber(std::string_view text);

/// @return the fewest digits that read back as `value` (finite), in plain notation where that stays readable.
[[nodiscard]] std::string writeNumber(double value);

}  // namespace hingepin
