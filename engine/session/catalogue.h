// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>

#include "engine/base/error.h"
#include "engine/session/locale.h"
#include "engine/units/ucum.h"

namespace hingepin::session {

/// The sentence of each message code, with {name} where a value goes.
using Catalogue = std::map<std::string, std::string, std::less<>>;

/// @return the catalogue in a JSON object of strings, nothing if it is not one.
[[nodiscard]] std::optional<Catalogue> readCatalogue(std::string_view json);

/// translations/engine/en.json, as it was when the program was built.
[[nodiscard]] const Catalogue& englishCatalogue();

/// The engine's sentences in a language: translations/engine/<tag>.json, as it was when the program was
/// built. Where it lacks one the English stands in, unless it is about safety: that is never said in a
/// language that was not asked for. A language that is not known gives the English.
[[nodiscard]] const Catalogue& engineCatalogue(std::string_view language);

/// Whether a code's sentence is about safety: what not to use, not to do, or what nobody has confirmed.
[[nodiscard]] bool isAboutSafety(std::string_view code);

/// Puts a message into words. A code without a sentence gives the code and its values, so that nothing is
/// lost. Control characters in values become '?'.
[[nodiscard]] std::string say(const Catalogue& catalogue, const Message& message, UnitSystem system,
                              const Locale& locale = {});
/// The same for a reader, in the engine's own words.
[[nodiscard]] std::string say(const Message& message, const Reader& reader);

/// "1987 kg", "3.0°", "285 psi": an amount in the units of the system, as people write them.
[[nodiscard]] std::string show(const Amount& amount, UnitSystem system, const Locale& locale = {});

/// A unit with the space before it, as people write it: " kg", "°", " short tons". @param ucum its code
[[nodiscard]] std::string unitText(std::string_view ucum, const Locale& locale = {});

}  // namespace hingepin::session
