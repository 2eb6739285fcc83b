// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "engine/base/error.h"
#include "engine/units/quantity.h"

namespace hingepin {

/// One row of the table of units: value_si = (value + offset) * factor.
struct Unit {
  std::string_view ucum;  ///< case-sensitive UCUM code
  Dimension dimension;
  double factor;
  double offset = 0.0;
};

/// @return the unit of a UCUM code, or nothing if it is not one that Hingepin knows.
[[nodiscard]] std::optional<Unit> findUnit(std::string_view ucum);

/// @return the English name of a dimension, for messages ("length").
[[nodiscard]] std::string_view nameOf(Dimension dimension);

/// Reads "<number> <UCUM code>": an RFC 8259 number, one space, a code ("130 mm", "2500 [psi]", "0.25 %").
/// @return the value in the SI unit of `dimension`.
/// Errors: InvalidInput with code "quantity-malformed", "unit-unknown" or "unit-wrong-dimension" (names both
/// dimensions), or "number-out-of-range".
[[nodiscard]] Expected<double> readSi(std::string_view text, Dimension dimension);

template <Dimension D>
[[nodiscard]] Expected<Quantity<D>> readQuantity(std::string_view text) {
  const Expected<double> value_si = readSi(text, D);
  if (!value_si) return std::unexpected(value_si.error());
  return Quantity<D>::fromSi(*value_si);
}

/// Writes a value with the fewest digits that read back equal, e.g. "2.55 m".
[[nodiscard]] std::string writeQuantity(double value_si, std::string_view ucum);

enum class UnitSystem { Metric, UsCustomary };

/// An amount as people of that system read it: kg to lb, bar to psi, mm to in, °C to °F; decimals adapted so that
/// no digit is lost or invented.
[[nodiscard]] Amount inSystem(const Amount& amount, UnitSystem system);

}  // namespace hingepin
