// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "engine/base/error.h"
#include "engine/sync/remote.h"

namespace hingepin::folder {

/// A file as far side, for a cable, a memory card or a message: the same objects one after the other
/// (engine/sync/README.md). Made where it is not there; what was cut off at its end is left away. What is
/// removed leaves the file. Errors: InvalidInput "object-file-malformed"; those of the files.
[[nodiscard]] Expected<sync::Remote> objectFile(const std::string& path);

}  // namespace hingepin::folder
