// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/base/json_walk.h"
#include "engine/base/text.h"
#include "engine/units/quantity.h"
#include "engine/units/ucum.h"

namespace hingepin::formats {

/// Between which ends a quantity can be meant, both included, in the unit that shows them.
struct Limits {
  Dimension dimension;
  double low;
  double high;
  std::string_view ucum;
  int decimals = 0;
};

/// A string that is a quantity, in SI. Errors: "json-wrong-kind" and those of readSi.
[[nodiscard]] inline Expected<double> quantityOf(const JsonNode& node, Dimension dimension) {
  if (node.value().kind != JsonKind::String) {
    return node.wrongKind("a string with a number, one space and a UCUM code");
  }
  Expected<double> read = readSi(node.value().text, dimension);
  if (!read) {
    Error error = std::move(read.error());
    error.place = node.place();
    return std::unexpected(std::move(error));
  }
  return read;
}

/// A walk over a file whose values are quantities within limits.
class QuantityWalk : public JsonWalk {
 public:
  std::vector<JsonNode> elements(const JsonNode& node) { return taken(node.elements()); }

  /// In SI. Keeps the errors of quantityOf and "value-out-of-range".
  double quantityIn(const JsonNode& node, const Limits& limits) {
    const Expected<double> value_si = quantityOf(node, limits.dimension);
    if (!value_si) {
      keep(value_si.error());
      return 0.0;
    }
    const Unit unit = *findUnit(limits.ucum);
    if (*value_si < unit.toSi(limits.low) || *value_si > unit.toSi(limits.high)) {
      keep(node.error("value-out-of-range",
                      {{"text", excerpt(node.value().text)},
                       {"low", Amount{limits.low, std::string(limits.ucum), limits.decimals}},
                       {"high", Amount{limits.high, std::string(limits.ucum), limits.decimals}}}));
    }
    return *value_si;
  }
  template <Dimension D>
  Quantity<D> quantity(const JsonNode& parent, std::string_view key, const Limits& limits) {
    return required(parent, key,
                    [&](const JsonNode& node) { return Quantity<D>::fromSi(quantityIn(node, limits)); });
  }
  template <Dimension D>
  std::optional<Quantity<D>> maybeQuantity(const JsonNode& parent, std::string_view key,
                                           const Limits& limits) {
    return optional(parent, key,
                    [&](const JsonNode& node) { return Quantity<D>::fromSi(quantityIn(node, limits)); });
  }
  std::optional<double> maybeSi(const JsonNode& parent, std::string_view key, const Limits& limits) {
    return optional(parent, key, [&](const JsonNode& node) { return quantityIn(node, limits); });
  }
  /// In SI. Keeps "pair-expected" too.
  std::array<double, 2> pair(const JsonNode& node, const Limits& limits) {
    const std::vector<JsonNode> parts = elements(node);
    if (parts.size() != 2) {
      keep(node.error("pair-expected", {{"count", Amount{static_cast<double>(parts.size()), "1", 0}}}));
      return {};
    }
    return {quantityIn(parts[0], limits), quantityIn(parts[1], limits)};
  }

  std::string name(const JsonNode& parent, std::string_view key) {
    return required(parent, key, [this](const JsonNode& node) { return taken(node.name()); });
  }
  /// Keeps "format-unsupported" where the file is of another format.
  void format(const JsonNode& root, std::string_view expected) {
    required(root, "format", [&](const JsonNode& node) {
      const std::string text = taken(node.string());
      if (text != expected) {
        keep(
            node.error("format-unsupported", {{"text", excerpt(text)}, {"expected", std::string(expected)}}));
      }
      return 0;
    });
  }
};

}  // namespace hingepin::formats
