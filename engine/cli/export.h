// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "engine/cli/groups.h"

namespace hingepin::cli {

/// Writes everything that a store holds as plain files: store.jsonl, blobs/, statements/, signers/.
[[nodiscard]] int exportStore(const Common& common, const std::string& folder);
/// Takes them into a store. What is there already stays.
[[nodiscard]] int importStore(const Common& common, const std::string& folder);

}  // namespace hingepin::cli
