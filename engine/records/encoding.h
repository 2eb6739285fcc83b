// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace hingepin::records {

using Bytes = std::span<const std::uint8_t>;

/// The bytes of a text, and the other way round.
[[nodiscard]] Bytes bytesOf(std::string_view text);
[[nodiscard]] std::string textOf(Bytes bytes);

/// Base64url without padding (RFC 4648 section 5, as RFC 7515 uses it).
[[nodiscard]] std::string base64Url(Bytes bytes);

/// @return the bytes, or nothing unless `text` is what base64Url() gives for them: no padding, no other
/// character, unused bits zero.
[[nodiscard]] std::optional<std::string> fromBase64Url(std::string_view text);

/// Base45 (RFC 9285): two bytes as three characters of those that a QR code packs most densely besides
/// digits.
[[nodiscard]] std::string base45(std::string_view bytes);
/// @return the bytes, or nothing unless `text` is what base45() gives for them.
[[nodiscard]] std::optional<std::string> fromBase45(std::string_view text);

/// SHA-256 (FIPS 180-4), 32 bytes.
[[nodiscard]] std::string sha256(std::string_view text);

/// The name of a payload: SHA-256 in 64 lower-case hexadecimal digits. Not base64url, because names become
/// file names on shares that do not tell capitals from small letters.
[[nodiscard]] std::string hashName(std::string_view payload);
[[nodiscard]] std::string hexadecimal(std::string_view bytes);
[[nodiscard]] bool isHashName(std::string_view text);

}  // namespace hingepin::records
