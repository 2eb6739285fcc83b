// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <gtest/gtest.h>

#include <filesystem>
#include <string>

#include "engine/folder/folder.h"
#include "tests/engine/cli/process.h"

namespace hingepin::cli {

inline constexpr const char* kPassphrase = "seven brave otters hum";

/// A key in a store folder as `keys make` makes it, but opened at once: its passphrase, which is no secret,
/// is not made dear to guess. That costs most commands more than all else they do.
inline void makeQuickKey(const std::filesystem::path& store, const std::string& name) {
  auto folder = folder::openFolder(store.string());
  ASSERT_TRUE(folder.has_value());
  ASSERT_TRUE(folder::makeKey(*folder, name, kPassphrase, {.passes = 1, .memory_KiB = 64}).has_value());
}

}  // namespace hingepin::cli
