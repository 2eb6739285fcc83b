// SPDX-License-Identifier: Apache-2.0
#include "engine/units/number.h"

#include <fast_float/fast_float.h>
#include <array>
#include <charconv>
#include <cmath>

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
