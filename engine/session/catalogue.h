// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>

#include "engine/base/error.h"
#include "engine/units/ucum.h"

namespace hingepin::session {

/// The sentence of each message code, with {name} where a value goes.
using Catalogue = std::map<std::string, std::string, std::less<>>;

/// @return the catalogue in a JSON object of strings, nothing if it is not one.
[[nodiscard]] std::optional<Catalogue> readCatalogue(std::string_view json);

/// translations/engine/en.json, as it was when the program was built.
[[nodiscard]] const Catalogue& englishCatalogue();

/// Puts a message into words. A code without a sentence gives the code and its values, so that nothing is
/// lost. Control characters in values become '?'.
[[nodiscard]] std::string say(const Catalogue& catalogue, const Message& message, UnitSystem system);

/// "1987 kg", "3.0°", "285 psi": an amount in the units of the system, as people write them.
[[nodiscard]] std::string show(const Amount& amount, UnitSystem system);

}  // namespace hingepin::session
