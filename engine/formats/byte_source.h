// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <functional>
#include <span>
#include <string>
#include <string_view>

#include "engine/base/error.h"

namespace hingepin::formats {

/// Fills the front of a buffer with the next bytes of an input and says how many; 0 at its end.
/// Errors: IoFailed.
using ByteSource = std::function<Expected<std::size_t>(std::span<char>)>;

/// Opens an input by its path. Errors: NotFound, IoFailed.
using Opener = std::function<Expected<ByteSource>(const std::string& path)>;

/// A source of bytes that are already in memory; `bytes` must outlive it. Hands out at most `most` bytes at a
/// time.
[[nodiscard]] ByteSource sourceOf(std::string_view bytes, std::size_t most = 65536);

/// Reads a whole input. Errors: those of the source; InvalidInput "file-too-large" beyond `most_bytes`.
[[nodiscard]] Expected<std::string> readAll(const ByteSource& source, const std::string& file,
                                            std::size_t most_bytes);

}  // namespace hingepin::formats
