// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/session/document.h"
#include "engine/session/locale.h"
#include "engine/store/store.h"

namespace hingepin::session {

/// Where a record stands, in words: made on this phone or received, sent or what it waits for, and what its
/// seal is worth here.
/// @param installation this phone
/// @param last what kept the last exchange from being whole
/// Errors: NotFound "record-not-in-store"; those of the store.
[[nodiscard]] Expected<std::vector<DocumentRow>> recordState(const store::Store& store,
                                                             std::string_view record,
                                                             std::string_view installation,
                                                             const std::optional<Error>& last,
                                                             const Reader& reader);

}  // namespace hingepin::session
