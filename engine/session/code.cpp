// SPDX-License-Identifier: Apache-2.0
#include "engine/session/code.h"

#include <algorithm>
#include <utility>

#include "engine/records/canonical_json.h"
#include "engine/records/encoding.h"

namespace hingepin::session {
namespace {

constexpr std::size_t kMostName = 200;

bool isBytes(std::string_view text, std::size_t count) {
  const auto bytes = records::fromBase64Url(text);
  return bytes && bytes->size() == count;
}

}  // namespace

std::string codeFrom(std::string_view prefix, std::string_view bytes) {
  return std::string(prefix) + records::base45(bytes);
}

Expected<std::string> bytesOfCode(std::string_view code, std::string_view prefix, const char* malformed) {
  if (code.size() <= kMostCodeBytes && code.starts_with(prefix)) {
    if (auto bytes = records::fromBase45(code.substr(prefix.size()))) return *std::move(bytes);
  }
  return fail(ErrorKind::InvalidInput, malformed);
}

bool isLine(std::string_view text, std::size_t most) {
  return !text.empty() && text.size() <= most &&
         std::ranges::none_of(text, [](char c) { return static_cast<unsigned char>(c) < 0x20; });
}

bool isName(std::string_view text) { return isLine(text, kMostName); }

bool isDigest(std::string_view text) { return isBytes(text, 32); }

bool isNonce(std::string_view text) { return isBytes(text, 16); }

std::string digestOf(std::string_view hash_name) {
  std::string bytes;
  for (std::size_t at = 0; at + 1 < hash_name.size(); at += 2) {
    const auto digit = [&](char c) { return c <= '9' ? c - '0' : c - 'a' + 10; };
    bytes += static_cast<char>(digit(hash_name[at]) * 16 + digit(hash_name[at + 1]));
  }
  return records::base64Url(records::bytesOf(bytes));
}

std::string hashNameOf(std::string_view digest) {
  return records::hexadecimal(records::fromBase64Url(digest).value_or(""));
}

void CodeWalk::format(const JsonNode& node, std::string_view wanted) {
  const std::string found = text(node, "format", [](std::string_view) { return true; }, "");
  if (found != wanted)
    keep(node.error("json-value-unexpected", {{"text", excerpt(found)}, {"expected", std::string(wanted)}}));
}

std::string CodeWalk::text(const JsonNode& node, std::string_view member, bool (*accepts)(std::string_view),
                           std::string_view expected) {
  return taken(records::stringAt(node, member, accepts, expected));
}

std::string canonical(const JsonValue& value) { return records::canonicalJson(value).value_or(""); }

}  // namespace hingepin::session
