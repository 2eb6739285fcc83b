// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/base/error.h"

namespace hingepin {

enum class JsonKind { Null, Boolean, Number, String, Array, Object };

/// One value of a JSON text and where it stands there.
struct JsonValue {
  JsonKind kind = JsonKind::Null;
  bool boolean = false;
  double number = 0.0;
  std::string text{};               ///< of a string
  std::vector<std::string> keys{};  ///< of an object, as long as `items` and in the same order
  std::vector<JsonValue> items{};   ///< of an array or object
  std::size_t offset = 0;           ///< of the first byte, of an object or array its bracket
};

/// A JSON text and its values.
struct JsonDocument {
  std::string file;
  std::string text;
  JsonValue root;

  /// @return file, line, column and pointer of what a JSON Pointer names, or of the deepest value on the way
  /// there.
  [[nodiscard]] Place place(std::string_view pointer) const;
};

inline constexpr std::size_t kMostJsonBytes = 16U << 20U;
inline constexpr std::size_t kMostJsonDepth = 64;

/// A value together with its JSON Pointer: what readers of a file format walk over. Every error that it gives
/// carries file, line, column and pointer. The document must outlive it.
class JsonNode {
 public:
  explicit JsonNode(const JsonDocument& document) : document_(&document), value_(&document.root) {}

  [[nodiscard]] const JsonValue& value() const { return *value_; }
  [[nodiscard]] const std::string& pointer() const { return pointer_; }
  [[nodiscard]] Place place() const;
  [[nodiscard]] std::unexpected<Error> error(std::string code,
                                             std::vector<std::pair<std::string, MessageValue>> values = {},
                                             ErrorKind kind = ErrorKind::InvalidInput) const;

  /// Checks that this is an object all of whose keys are among `known`.
  /// Errors: "json-wrong-kind", "json-unknown-key" (names the key and what is known).
  [[nodiscard]] Expected<void> expectObject(std::span<const std::string_view> known) const;
  [[nodiscard]] Expected<void> expectObject(std::initializer_list<std::string_view> known) const {
    return expectObject(std::span(known.begin(), known.size()));
  }
  /// The member of an object, if it has one. REQUIRES: an object.
  [[nodiscard]] std::optional<JsonNode> find(std::string_view key) const;
  /// Errors: "json-missing-key".
  [[nodiscard]] Expected<JsonNode> at(std::string_view key) const;
  /// The elements of an array. Errors: "json-wrong-kind".
  [[nodiscard]] Expected<std::vector<JsonNode>> elements() const;
  /// The members of an object by their keys. Errors: "json-wrong-kind".
  [[nodiscard]] Expected<std::vector<std::pair<std::string, JsonNode>>> members() const;
  /// Errors: "json-wrong-kind".
  [[nodiscard]] Expected<std::string> string() const;
  [[nodiscard]] Expected<double> number() const;
  /// A string that is not empty. Errors: "json-wrong-kind", "text-empty".
  [[nodiscard]] Expected<std::string> name() const;
  /// The error of a value that is not of the kind `expected`, in words. Code "json-wrong-kind".
  [[nodiscard]] std::unexpected<Error> wrongKind(std::string_view expected) const;

 private:
  [[nodiscard]] JsonNode child(std::string_view token, const JsonValue& value) const;

  const JsonDocument* document_;
  const JsonValue* value_;
  std::string pointer_;
};

/// Reads a JSON text strictly: RFC 8259 grammar, valid UTF-8, no duplicate keys; a byte order mark is ignored
/// (section 8.1 allows it).
/// Errors: InvalidInput "json-syntax", "json-duplicate-key", "json-too-deep", "not-utf8", with line and
/// column.
[[nodiscard]] Expected<JsonDocument> readJson(std::string text, std::string file);

}  // namespace hingepin
