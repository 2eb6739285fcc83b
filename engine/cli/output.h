// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

namespace hingepin::cli {

enum class OutputState { Open, ReaderGone, Failed };

/// Writes to standard output at once, for whoever reads along. ReaderGone: the other end of the pipe was
/// closed, which is its right; `reason` says why it failed otherwise.
[[nodiscard]] OutputState writeOutput(std::string_view text, std::string& reason);

/// Writes to standard error; there is nobody left to tell if that fails.
void writeDiagnostic(std::string_view text);

}  // namespace hingepin::cli
