// SPDX-License-Identifier: Apache-2.0
#include "engine/formats/byte_source.h"

#include <algorithm>
#include <cstring>

namespace hingepin::formats {

ByteSource sourceOf(std::string_view bytes, std::size_t most) {
  return [bytes, most](std::span<char> buffer) mutable -> Expected<std::size_t> {
    const std::size_t count = std::min({bytes.size(), buffer.size(), most});
    if (count > 0) std::memcpy(buffer.data(), bytes.data(), count);
    bytes.remove_prefix(count);
    return count;
  };
}

Expected<std::string> readAll(const ByteSource& source, const std::string& file, std::size_t most_bytes) {
  std::string text;
  std::size_t used = 0;
  while (true) {
    text.resize(used + 65536);
    const Expected<std::size_t> count = source(std::span(text).subspan(used));
    if (!count) return std::unexpected(count.error());
    used += *count;
    if (used > most_bytes) {
      return fail(ErrorKind::InvalidInput, "file-too-large",
                  {{"most", Amount{static_cast<double>(most_bytes) / 1048576.0, "1", 0}}}, {.file = file});
    }
    if (*count == 0) break;
  }
  text.resize(used);
  return text;
}

}  // namespace hingepin::formats
