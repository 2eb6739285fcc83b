// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

/// Text that goes into HTML and XML.
namespace hingepin::certificate {

/// A text that means itself between tags and within a quoted attribute: & < > " ' as entities. What XML 1.0
/// has no place for (control characters, non-characters, bytes that are no UTF-8) becomes U+FFFD, and so do
/// the marks that would turn the direction of the text after them (U+202A to U+202E, and of U+2066 to U+2069
/// those that have no partner in the text).
[[nodiscard]] std::string escaped(std::string_view text);

/// Spaces and line breaks at the ends gone, and those within made one space each.
[[nodiscard]] std::string collapsed(std::string_view text);

/// A drawing as the address of an image: "data:image/svg+xml,...".
[[nodiscard]] std::string imageAddress(std::string_view svg);

}  // namespace hingepin::certificate
