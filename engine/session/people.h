// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <string_view>

#include "engine/base/error.h"
#include "engine/records/keys.h"
#include "engine/store/store.h"

/// Who is behind a key. Records name keys alone; a name is a personal object, "hingepin-person/1", that can
/// be erased.
namespace hingepin::session {

/// Names by key.
using Names = std::map<std::string, std::string, std::less<>>;

/// Keeps the name of a key's holder. @return the name of the personal object
/// Errors: InvalidInput "text-empty"; those of the store.
[[nodiscard]] Expected<std::string> keepName(store::Store& store, std::string_view key, std::string_view name,
                                             const records::FillBytes& fill, std::int64_t now_utc_ms);

/// Every name that the store holds; of two for one key the later.
[[nodiscard]] Expected<Names> namesOf(const store::Store& store);

/// The name of a key, else its first 8 characters; "" of "".
[[nodiscard]] std::string nameOfKey(const Names& names, std::string_view key);

}  // namespace hingepin::session
