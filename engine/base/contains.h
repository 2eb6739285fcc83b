// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>

namespace hingepin {

/// Whether a list has a value.
template <class List, class T>
[[nodiscard]] bool contains(const List& list, const T& value) {
  return std::ranges::find(list, value) != std::ranges::end(list);
}

}  // namespace hingepin
