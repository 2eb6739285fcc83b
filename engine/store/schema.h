// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <span>

namespace hingepin::store {

/// In every file that is ours, where SQLite keeps the application's number: "HgPn".
inline constexpr std::int32_t kApplicationId = 0x4867506E;

/// The scripts that lead from nothing to the newest schema; script n makes version n of version n - 1. One
/// that was ever released is never changed: what comes after is one more.
[[nodiscard]] std::span<const char* const> migrations();

}  // namespace hingepin::store
