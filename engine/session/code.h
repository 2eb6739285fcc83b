// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "engine/base/error.h"
#include "engine/base/json_walk.h"
#include "engine/base/strict_json.h"

/// What two phones show each other's cameras: a prefix, then Base45 (RFC 9285). For the sources of this area.
namespace hingepin::session {

/// Beyond it a code is refused unread: no camera reads a denser one from a phone's screen.
inline constexpr std::size_t kMostCodeBytes = 2400;
inline constexpr std::size_t kSignatureBytes = 64;

[[nodiscard]] std::string codeFrom(std::string_view prefix, std::string_view bytes);
/// The bytes of a code. Error: InvalidInput `malformed`.
[[nodiscard]] Expected<std::string> bytesOfCode(std::string_view code, std::string_view prefix,
                                                const char* malformed);

/// Text of one line, of 1 to `most` bytes.
[[nodiscard]] bool isLine(std::string_view text, std::size_t most);
/// A name of one line.
[[nodiscard]] bool isName(std::string_view text);

/// 32 bytes as the codes have them: shorter than in hexadecimal. And from and to a hash name.
[[nodiscard]] bool isDigest(std::string_view text);
[[nodiscard]] std::string digestOf(std::string_view hash_name);
[[nodiscard]] std::string hashNameOf(std::string_view digest);
/// 16 bytes in base64url.
[[nodiscard]] bool isNonce(std::string_view text);

/// REQUIRES: whole numbers and UTF-8, as all that was read has them.
[[nodiscard]] std::string canonical(const JsonValue& value);

/// What is read of a phone that may send anything.
class CodeWalk : public JsonWalk {
 public:
  void format(const JsonNode& node, std::string_view wanted);
  /// @param expected what `accepts` stands for, for whoever reads the error
  std::string text(const JsonNode& node, std::string_view member, bool (*accepts)(std::string_view),
                   std::string_view expected);
};

}  // namespace hingepin::session
