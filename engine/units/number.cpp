// SPDX-License-Identifier: Apache-2.0
#include "engine/units/number.h"

#include <fast_float/fast_float.h>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>

namespace hingepin {

std::optional<double> valueOfNumber(std::string_view number) {
  // The C++ library of the phones (LLVM's) has no std::from_chars for double.
  double value = 0.0;
  const auto [end, code] = fast_float::from_chars(number.data(), number.data() + number.size(), value);
  if (code != std::errc() || !std::isfinite(value)) return std::nullopt;
  if (value == 0.0 && number.substr(0, number.find_first_of("eE")).find_first_of("123456789") != number.npos)
    return std::nullopt;
  return value;
}

LeadingNumber leadingNumber(std::string_view text) {
  // Up to 15 digits and such a power of ten are exact doubles, so their quotient is the nearest (Clinger,
  // "How to read floating point numbers accurately", 1990, section 2).
  constexpr std::array kPowersOfTen = {1e0, 1e1, 1e2,  1e3,  1e4,  1e5,  1e6,  1e7,
                                       1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15};
  const char* const end = text.data() + text.size();
  const char* at = text.data();
  std::uint64_t digits = 0;
  const auto pastDigits = [&] {
    const char* const first = at;
    for (; at != end && *at >= '0' && *at <= '9'; ++at)
      digits = 10 * digits + static_cast<std::uint64_t>(*at - '0');
    return static_cast<std::size_t>(at - first);
  };
  const bool is_negative = at != end && *at == '-';
  if (is_negative) ++at;
  const bool begins_with_zero = at != end && *at == '0';
  const std::size_t whole = pastDigits();
  std::size_t fraction = 0;
  if (whole > 0 && at != end && *at == '.') {
    ++at;
    fraction = pastDigits();
    if (fraction == 0) --at;
  }
  const bool has_exponent = at != end && (*at == 'e' || *at == 'E');
  if (whole == 0 || (begins_with_zero && whole > 1) || has_exponent ||
      whole + fraction >= kPowersOfTen.size()) {
    const std::size_t length = scanNumber(text);
    return {length, length == 0 ? std::nullopt : valueOfNumber(text.substr(0, length))};
  }
  const double size = static_cast<double>(digits) / kPowersOfTen[fraction];
  return {static_cast<std::size_t>(at - text.data()), is_negative ? -size : size};
}

std::string writeNumber(double value) {
  if (value == 0.0) return "0";
  const double size = std::abs(value);
  std::array<char, 64> text{};
  const auto [end, code] = size >= 1e-5 && size < 1e15
                               ? std::to_chars(text.begin(), text.end(), value, std::chars_format::fixed)
                               : std::to_chars(text.begin(), text.end(), value);
  return std::string(text.begin(), end);
}

}  // namespace hingepin
