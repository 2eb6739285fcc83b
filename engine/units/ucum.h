// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "engine/base/error.h"
#include "engine/units/quantity.h"

namespace hingepin {

// Own table, for the kept libraries (nholthaus' units, UDUNITS) neither read UCUM codes nor check text for
// dimension.

/// One row of the table of units: value_si = (value + offset) * factor / divisor. The divisor makes decimal
/// and sixtieth parts round once, so that "9 mm" and "0.009 m" are the same double.
struct Unit {
  std::string_view ucum;  ///< case-sensitive UCUM code
  Dimension dimension;
  double factor = 1.0;
  double divisor = 1.0;
  double offset = 0.0;

  [[nodiscard]] constexpr double toSi(double value) const {
    const double scaled = (value + offset) * factor;
    return divisor == 1.0 ? scaled : scaled / divisor;  // most have none, and to divide takes longest
  }
  [[nodiscard]] constexpr double fromSi(double value_si) const {
    return value_si * divisor / factor - offset;
  }
};

/// @return the unit of a UCUM code, or nothing if it is not one that Hingepin knows.
[[nodiscard]] std::optional<Unit> findUnit(std::string_view ucum);

/// @return all units that Hingepin knows.
[[nodiscard]] std::span<const Unit> allUnits();

/// @return the English name of a dimension, for messages ("length").
[[nodiscard]] std::string_view nameOf(Dimension dimension);

/// A quantity as it stood in a text.
struct ReadQuantity {
  double value_si;
  Unit unit;
};

/// Reads "<number> <UCUM code>" of any dimension.
/// Errors: InvalidInput with code "quantity-malformed", "unit-unknown" or "number-out-of-range".
[[nodiscard]] Expected<ReadQuantity> readAnyQuantity(std::string_view text);

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

/// Writes a finite value with the fewest digits that read back equal, e.g. "2.55 m". Where no double of that
/// unit converts to exactly `value_si` (possible only for a unit that is not the SI one), it reads back
/// within 2^-52 of it. `ucum` is a code that `findUnit` knows.
[[nodiscard]] std::string writeQuantity(double value_si, std::string_view ucum);

enum class UnitSystem { Metric, UsCustomary };

/// An amount as people of that system read it: kg to lb, bar to psi, mm to in, °C to °F; decimals adapted:
/// the new last digit is no coarser than the old one and less than ten times finer. Other units stay.
[[nodiscard]] Amount inSystem(const Amount& amount, UnitSystem system);

}  // namespace hingepin
