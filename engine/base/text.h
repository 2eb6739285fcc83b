// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace hingepin {

inline constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

/// @return the offset of the first byte that is not part of well-formed UTF-8 (Unicode 15, table 3-7), or
/// npos.
[[nodiscard]] std::size_t firstBadUtf8(std::string_view text);

/// @return the number of characters (code points) that begin in `text`, which need not be valid.
[[nodiscard]] std::size_t countCharacters(std::string_view text);

/// What a message may repeat of a faulty text: at most 60 characters on one line, what does not print
/// replaced by '?'.
[[nodiscard]] std::string excerpt(std::string_view text);

}  // namespace hingepin
