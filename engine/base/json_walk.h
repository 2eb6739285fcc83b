// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>

#include "engine/base/named.h"
#include "engine/base/strict_json.h"
#include "engine/base/text.h"

namespace hingepin {

/// What readers of a file format build on. The first fault is kept and the walk goes on with stand-ins, so
/// that each field is one line.
class JsonWalk {
 public:
  /// What is wrong with the file, else what it lacks to support a result.
  [[nodiscard]] std::optional<Error> error() const { return error_ ? error_ : insufficient_; }

  /// Whether it is refused for good, so that there is no need to look further.
  [[nodiscard]] bool isRefused() const { return error_.has_value(); }

  void keep(Error error) {
    std::optional<Error>& slot = error.kind == ErrorKind::Insufficient ? insufficient_ : error_;
    if (!slot) slot = std::move(error);
  }
  void keep(std::unexpected<Error> unexpected) { keep(std::move(unexpected.error())); }
  template <class T>
  T taken(Expected<T> read) {
    if (read) return *std::move(read);
    keep(std::move(read.error()));
    return T();
  }

  /// Whether this is an object; a key that is not among `known` is kept as a fault.
  bool object(const JsonNode& node, std::span<const std::string_view> known) {
    if (Expected<void> checked = node.expectObject(known); !checked) keep(std::move(checked.error()));
    return node.value().kind == JsonKind::Object;
  }
  bool object(const JsonNode& node, std::initializer_list<std::string_view> known) {
    return object(node, std::span(known.begin(), known.size()));
  }

  /// What `read` makes of a member that must be there.
  template <class Read>
  auto required(const JsonNode& parent, std::string_view key, Read read) -> decltype(read(parent)) {
    if (parent.value().kind != JsonKind::Object) return {};
    if (const Expected<JsonNode> node = parent.at(key)) return read(*node);
    keep(parent.at(key).error());
    return {};
  }
  /// What `read` makes of a member that may be missing.
  template <class Read>
  auto optional(const JsonNode& parent, std::string_view key, Read read)
      -> std::optional<decltype(read(parent))> {
    if (const std::optional<JsonNode> node = parent.find(key)) return read(*node);
    return std::nullopt;
  }

  /// The same, or an empty value.
  template <class Read>
  auto orEmpty(const JsonNode& parent, std::string_view key, Read read) -> decltype(read(parent)) {
    return optional(parent, key, read).value_or(decltype(read(parent)){});
  }

  /// A value by its name. Keeps "json-wrong-kind", "word-unknown".
  template <class T, std::size_t Size>
  T named(const JsonNode& node, const std::array<Named<T>, Size>& table) {
    const Expected<std::string> text = node.string();
    const auto row = text ? std::ranges::find(table, *text, &Named<T>::name) : table.end();
    if (row != table.end()) return row->value;
    std::string known;
    for (const Named<T>& each : table) known += (known.empty() ? "" : ", ") + std::string(each.name);
    keep(text ? node.error("word-unknown", {{"text", excerpt(*text)}, {"known", known}}).error()
              : text.error());
    return table.front().value;
  }
  template <class T, std::size_t Size>
  T requiredNamed(const JsonNode& parent, std::string_view key, const std::array<Named<T>, Size>& table) {
    const std::optional<T> value =
        required(parent, key, [&](const JsonNode& node) { return std::optional(named(node, table)); });
    return value.value_or(table.front().value);
  }
  template <class T, std::size_t Size>
  T optionalNamed(const JsonNode& parent, std::string_view key, const std::array<Named<T>, Size>& table,
                  T absent) {
    return optional(parent, key, [&](const JsonNode& node) { return named(node, table); }).value_or(absent);
  }

  /// A whole number from `low` to `high`. Keeps "json-wrong-kind", "count-out-of-range".
  template <class Integer>
  Integer whole(const JsonNode& node, Integer low, Integer high) {
    const Expected<double> number = node.number();
    if (!number) {
      keep(number.error());
      return low;
    }
    if (*number == std::floor(*number) && *number >= static_cast<double>(low) &&
        *number <= static_cast<double>(high)) {
      return static_cast<Integer>(*number);
    }
    keep(node.error("count-out-of-range", {{"low", Amount{static_cast<double>(low), "1"}},
                                           {"high", Amount{static_cast<double>(high), "1"}}}));
    return low;
  }
  /// A flag that is either true or left out, so that there is one way to say no. Keeps "json-wrong-kind".
  bool flag(const JsonNode& parent, std::string_view key) {
    const std::optional<JsonNode> node = parent.find(key);
    if (!node) return false;
    const bool on = node->value().kind == JsonKind::Boolean && node->value().boolean;
    if (!on) keep(node->wrongKind("true, or no such key"));
    return on;
  }

 private:
  std::optional<Error> error_;
  std::optional<Error> insufficient_;
};

}  // namespace hingepin
