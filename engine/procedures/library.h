// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <span>
#include <string_view>

namespace hingepin::procedures {

/// A procedure that comes with the program.
struct LibraryEntry {
  std::string_view id;
  std::string_view text;  ///< the exact bytes of library/<id>.json, by whose hash a record names it
};

/// Every procedure of library/, as it was when the program was built, in the order of their ids.
[[nodiscard]] std::span<const LibraryEntry> library();

/// The procedure of an id, or nullptr.
[[nodiscard]] const LibraryEntry* findInLibrary(std::string_view id);

}  // namespace hingepin::procedures
