// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/base/error.h"
#include "engine/base/strict_json.h"

namespace hingepin::records {

[[nodiscard]] JsonValue jsonNull();
[[nodiscard]] JsonValue jsonBoolean(bool value);
[[nodiscard]] JsonValue jsonInteger(std::int64_t value);
[[nodiscard]] JsonValue jsonString(std::string text);
[[nodiscard]] JsonValue jsonArray(std::vector<JsonValue> items);
[[nodiscard]] JsonValue jsonObject(std::vector<std::pair<std::string, JsonValue>> members);

/// A finite number as ECMAScript writes it: the fewest digits that read back to the same double, laid out by
/// Number::toString. Minus zero is "0". REQUIRES: finite.
/// Source: RFC 8785 section 3.2.2.3; ECMA-262 section 6.1.6.1.20.
[[nodiscard]] std::string numberText(double value);

/// The one canonical text of a value: no blanks, keys in the order of their UTF-16 code units, the shortest
/// escapes and numbers. Source: RFC 8785.
/// Errors: InvalidInput "json-number-not-finite", "not-utf8", "json-duplicate-key", with the JSON Pointer.
[[nodiscard]] Expected<std::string> canonicalJson(const JsonValue& value);

/// Reads a text only if it is canonical already.
/// Errors: those of readJson; InvalidInput "json-not-canonical" with the place of the first difference,
/// "json-too-large" above `most_bytes`.
[[nodiscard]] Expected<JsonDocument> readCanonicalJson(std::string_view text, std::size_t most_bytes);

inline constexpr std::int64_t kMostInteger = 9007199254740991;  // 2^53 - 1: exact in every JSON reader
inline constexpr std::size_t kMostSealedDepth = 24;

/// Checks that all numbers are integers of magnitude 2^53 - 1 at most (others are written as strings) and
/// that nothing is nested deeper than kMostSealedDepth. Errors: InvalidInput "json-number-not-integer",
/// "json-too-deep", with the JSON Pointer.
[[nodiscard]] Expected<void> checkSealable(const JsonValue& value);

/// Readers of members that a sealed payload has. Errors: those of JsonNode; InvalidInput
/// "json-value-unexpected" with what was expected.
[[nodiscard]] Expected<std::int64_t> integerAt(const JsonNode& object, std::string_view key,
                                               std::int64_t least);
[[nodiscard]] Expected<std::string> stringAt(const JsonNode& object, std::string_view key,
                                             bool (*accepts)(std::string_view), std::string_view expected);

}  // namespace hingepin::records
