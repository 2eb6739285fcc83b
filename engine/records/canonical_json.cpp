// SPDX-License-Identifier: Apache-2.0
#include "engine/records/canonical_json.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <numeric>

#include "engine/base/text.h"

namespace hingepin::records {
namespace {

// The order of UTF-16 code units, told from UTF-8: a character beyond the basic plane begins with a surrogate
// (D800..DBFF), so its lead byte (F0..F4) comes before those of E000..FFFF (EE, EF).
bool comesBefore(std::string_view left, std::string_view right) {
  const auto [a, b] = std::ranges::mismatch(left, right);
  if (a == left.end() || b == right.end()) return a == left.end() && b != right.end();
  const auto byte_a = static_cast<unsigned char>(*a);
  const auto byte_b = static_cast<unsigned char>(*b);
  if ((byte_a >= 0xF0) != (byte_b >= 0xF0)) {
    if (byte_a >= 0xF0 && byte_b >= 0xEE) return true;
    if (byte_b >= 0xF0 && byte_a >= 0xEE) return false;
  }
  return byte_a < byte_b;
}

void appendString(std::string& text, std::string_view value) {
  constexpr std::string_view kHex = "0123456789abcdef";
  text += '"';
  std::size_t done = 0;
  for (std::size_t at = 0; at < value.size(); ++at) {
    const auto byte = static_cast<unsigned char>(value[at]);
    if (byte >= 0x20 && byte != '"' && byte != '\\') continue;
    text += value.substr(done, at - done);
    done = at + 1;
    text += '\\';
    switch (byte) {
      case '\b':
        text += 'b';
        break;
      case '\t':
        text += 't';
        break;
      case '\n':
        text += 'n';
        break;
      case '\f':
        text += 'f';
        break;
      case '\r':
        text += 'r';
        break;
      case '"':
      case '\\':
        text += static_cast<char>(byte);
        break;
      default:
        text += "u00";
        text += kHex[byte >> 4U];
        text += kHex[byte & 15U];
    }
  }
  text += value.substr(done);
  text += '"';
}

std::string pointerToken(std::string_view key) {
  std::string token = "/";
  for (const char character : key) {
    if (character == '~') {
      token += "~0";
    } else if (character == '/') {
      token += "~1";
    } else {
      token += character;
    }
  }
  return token;
}

std::string childToken(const JsonValue& parent, std::size_t index) {
  return pointerToken(parent.kind == JsonKind::Object ? parent.keys[index] : std::to_string(index));
}

// The pointer is put together on the way out, so that a sound value costs nothing.
std::unexpected<Error> inside(std::string token, Error error) {
  error.place.pointer = std::move(token) + error.place.pointer;
  return std::unexpected(std::move(error));
}

Expected<void> append(std::string& text, const JsonValue& value) {
  switch (value.kind) {
    case JsonKind::Null:
      text += "null";
      return {};
    case JsonKind::Boolean:
      text += value.boolean ? "true" : "false";
      return {};
    case JsonKind::Number:
      if (!std::isfinite(value.number)) return fail(ErrorKind::InvalidInput, "json-number-not-finite");
      text += numberText(value.number);
      return {};
    case JsonKind::String:
      if (firstBadUtf8(value.text) != std::string_view::npos)
        return fail(ErrorKind::InvalidInput, "not-utf8");
      appendString(text, value.text);
      return {};
    case JsonKind::Array:
      text += '[';
      for (std::size_t index = 0; index < value.items.size(); ++index) {
        if (index > 0) text += ',';
        if (Expected<void> done = append(text, value.items[index]); !done) {
          return inside(childToken(value, index), std::move(done.error()));
        }
      }
      text += ']';
      return {};
    case JsonKind::Object:
      break;
  }
  std::vector<std::size_t> order(value.items.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::sort(order,
                    [&](std::size_t a, std::size_t b) { return comesBefore(value.keys[a], value.keys[b]); });
  text += '{';
  for (std::size_t at = 0; at < order.size(); ++at) {
    const std::string& key = value.keys[order[at]];
    if (firstBadUtf8(key) != std::string_view::npos) return fail(ErrorKind::InvalidInput, "not-utf8");
    if (at > 0 && key == value.keys[order[at - 1]]) {
      return fail(ErrorKind::InvalidInput, "json-duplicate-key", {{"key", excerpt(key)}},
                  {.pointer = pointerToken(key)});
    }
    if (at > 0) text += ',';
    appendString(text, key);
    text += ':';
    if (Expected<void> done = append(text, value.items[order[at]]); !done) {
      return inside(pointerToken(key), std::move(done.error()));
    }
  }
  text += '}';
  return {};
}

Expected<void> checkSealable(const JsonValue& value, std::size_t depth) {
  if (value.kind == JsonKind::Number && (value.number != std::floor(value.number) ||
                                         std::abs(value.number) > static_cast<double>(kMostInteger))) {
    return fail(ErrorKind::InvalidInput, "json-number-not-integer");
  }
  if (value.kind != JsonKind::Array && value.kind != JsonKind::Object) return {};
  if (depth == kMostSealedDepth) {
    return fail(ErrorKind::InvalidInput, "json-too-deep",
                {{"most", Amount{static_cast<double>(kMostSealedDepth), "1", 0}}});
  }
  for (std::size_t index = 0; index < value.items.size(); ++index) {
    if (Expected<void> done = checkSealable(value.items[index], depth + 1); !done) {
      return inside(childToken(value, index), std::move(done.error()));
    }
  }
  return {};
}

}  // namespace

JsonValue jsonNull() { return {}; }

JsonValue jsonBoolean(bool value) { return {.kind = JsonKind::Boolean, .boolean = value}; }

JsonValue jsonInteger(std::int64_t value) {
  return {.kind = JsonKind::Number, .number = static_cast<double>(value)};
}

JsonValue jsonString(std::string text) { return {.kind = JsonKind::String, .text = std::move(text)}; }

JsonValue jsonArray(std::vector<JsonValue> items) {
  return {.kind = JsonKind::Array, .items = std::move(items)};
}

JsonValue jsonObject(std::vector<std::pair<std::string, JsonValue>> members) {
  JsonValue object{.kind = JsonKind::Object};
  for (auto& [key, value] : members) {
    object.keys.push_back(std::move(key));
    object.items.push_back(std::move(value));
  }
  return object;
}

std::string numberText(double value) {
  if (value == 0.0) return "0";
  char buffer[32];
  const auto end =
      std::to_chars(buffer, std::end(buffer), std::abs(value), std::chars_format::scientific).ptr;
  const std::string_view scientific(buffer, static_cast<std::size_t>(end - buffer));
  const std::size_t e = scientific.find('e');
  std::string digits(1, scientific[0]);
  if (e > 2) digits += scientific.substr(2, e - 2);
  const char* exponent_text = scientific.data() + e + (scientific[e + 1] == '+' ? 2 : 1);
  int exponent = 0;
  std::from_chars(exponent_text, end, exponent);

  // k digits, of which the first `point` stand before the decimal point: k and n of ECMA-262.
  const int count = static_cast<int>(digits.size());
  const int point = exponent + 1;
  std::string text = value < 0 ? "-" : "";
  if (count <= point && point <= 21) {
    text += digits;
    text.append(static_cast<std::size_t>(point - count), '0');
  } else if (0 < point && point <= 21) {
    text += digits.substr(0, static_cast<std::size_t>(point));
    text += '.';
    text += digits.substr(static_cast<std::size_t>(point));
  } else if (-6 < point && point <= 0) {
    text += "0.";
    text.append(static_cast<std::size_t>(-point), '0');
    text += digits;
  } else {
    text += digits[0];
    if (count > 1) text += '.';
    text.append(digits, 1);
    text += exponent < 0 ? "e-" : "e+";
    text += std::to_string(std::abs(exponent));
  }
  return text;
}

Expected<std::string> canonicalJson(const JsonValue& value) {
  std::string text;
  if (Expected<void> done = append(text, value); !done) return std::unexpected(std::move(done.error()));
  return text;
}

Expected<JsonDocument> readCanonicalJson(std::string_view text, std::size_t most_bytes) {
  if (text.size() > most_bytes) {
    return fail(ErrorKind::InvalidInput, "json-too-large",
                {{"most", Amount{static_cast<double>(most_bytes), "1", 0}}});
  }
  Expected<JsonDocument> document = readJson(std::string(text), "");
  if (!document) return document;
  const Expected<std::string> canonical = canonicalJson(document->root);
  if (!canonical) return std::unexpected(canonical.error());
  if (*canonical != text) {
    const auto at = std::ranges::mismatch(text, *canonical).in1 - text.begin();
    return fail(ErrorKind::InvalidInput, "json-not-canonical",
                {{"offset", Amount{static_cast<double>(at), "1", 0}}});
  }
  return document;
}

Expected<void> checkSealable(const JsonValue& value) { return checkSealable(value, 0); }

Expected<std::int64_t> integerAt(const JsonNode& object, std::string_view key, std::int64_t least) {
  const Expected<JsonNode> node = object.at(key);
  if (!node) return std::unexpected(node.error());
  const Expected<double> number = node->number();
  if (!number) return std::unexpected(number.error());
  constexpr double kMost = 9007199254740991.0;  // beyond it a double skips integers (RFC 8785, 3.2.2.3)
  if (*number < static_cast<double>(least) || *number > kMost || std::trunc(*number) != *number) {
    return node->error("json-value-unexpected", {{"expected", "an integer from " + std::to_string(least)}});
  }
  return static_cast<std::int64_t>(*number);
}

Expected<std::string> stringAt(const JsonNode& object, std::string_view key,
                               bool (*accepts)(std::string_view), std::string_view expected) {
  const Expected<JsonNode> node = object.at(key);
  if (!node) return std::unexpected(node.error());
  Expected<std::string> text = node->string();
  if (text && !accepts(*text)) {
    return node->error("json-value-unexpected", {{"expected", std::string(expected)}});
  }
  return text;
}

}  // namespace hingepin::records
