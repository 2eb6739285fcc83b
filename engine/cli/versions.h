// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

namespace hingepin::cli {

/// The program's version on one line; with `verbose` the compiler and each library that it was built with
/// below, and beside it the library that is loaded now where that is another.
[[nodiscard]] std::string versions(bool verbose);

}  // namespace hingepin::cli
