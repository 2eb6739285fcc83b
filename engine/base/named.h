// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <string_view>

namespace hingepin {

/// A value and the name that files have for it.
template <class T>
struct Named {
  std::string_view name;
  T value;
};

/// The name of a value, "" if the table does not have it.
template <class T, std::size_t Size>
[[nodiscard]] constexpr std::string_view nameIn(const std::array<Named<T>, Size>& table, const T& value) {
  const auto row = std::ranges::find(table, value, &Named<T>::value);
  return row == table.end() ? std::string_view() : row->name;
}

}  // namespace hingepin
