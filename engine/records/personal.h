// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

namespace hingepin::records {

/// 32 random bytes kept beside the object they belong to, and erased with it.
using Salt = std::array<std::uint8_t, 32>;

/// The name of a personal object (a name, a face, a photo): HMAC-SHA-256 (RFC 2104) keyed with its salt,
/// hexadecimal. Once object and salt are erased, nobody can test a guess against what a record holds.
[[nodiscard]] std::string personalName(const Salt& salt, std::string_view bytes);

}  // namespace hingepin::records
