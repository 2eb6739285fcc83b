// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

#include "engine/base/error.h"

namespace hingepin::fuzz {

/// Ends the target where a law does not hold, so that the input is kept as a finding.
inline void require(bool holds, const char* law, const std::string& detail = {}) {
  if (holds) return;
  std::fprintf(stderr, "does not hold: %s %s\n", law, detail.c_str());
  std::abort();
}

/// An error says what, and where it says a place it says all of it.
inline void requireSound(const Error& error) {
  require(!error.message.code.empty(), "an error has a code");
  require(error.place.column == 0 || error.place.line > 0, "a column has its line");
  require(error.place.pointer.empty() || error.place.pointer.front() == '/', "a pointer begins with a slash");
}

inline std::string_view textOf(const std::uint8_t* bytes, std::size_t size) {
  return {reinterpret_cast<const char*>(bytes), size};
}

}  // namespace hingepin::fuzz
