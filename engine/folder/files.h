// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

#include "engine/base/error.h"
#include "engine/formats/byte_source.h"

namespace hingepin::folder {

/// Opens a file to be read as a stream. Errors: NotFound "file-not-found"; IoFailed "file-is-folder",
/// "file-open-failed"; the source gives IoFailed "file-read-failed".
[[nodiscard]] Expected<formats::ByteSource> openFile(const std::string& path);

/// Reads a whole JSON file. Errors: as above, and InvalidInput "file-too-large".
[[nodiscard]] Expected<std::string> readFile(const std::string& path);

enum class Readers { AsUsual, OwnerOnly };

/// Writes a file so that at any moment the old or the new content is there whole: a temporary file beside it,
/// flushed to the disk, then renamed over it. What is no ordinary file (a pipe, a device) is written as it
/// is. Errors: IoFailed "file-is-folder", "file-write-failed"; the temporary file is then gone.
[[nodiscard]] Expected<void> writeFile(const std::string& path, std::string_view content,
                                       Readers readers = Readers::AsUsual);

/// Creates a folder and those above it. Errors: IoFailed "file-write-failed".
[[nodiscard]] Expected<void> makeFolder(const std::string& path);

/// Whether two paths lead to the same existing file.
[[nodiscard]] bool isSameFile(const std::string& first, const std::string& second);

/// Writes all of a text to an open file. @return 0, or the error number that says why not all was written.
[[nodiscard]] int writeAll(int descriptor, std::string_view text);

}  // namespace hingepin::folder
