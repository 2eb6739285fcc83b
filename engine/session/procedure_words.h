// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <map>
#include <string>
#include <string_view>

#include "engine/base/error.h"
#include "engine/procedures/procedure.h"
#include "engine/session/locale.h"

namespace hingepin::session {

/// Words by text code, with {name} where a value goes.
using Words = std::map<std::string, std::string, std::less<>>;

/// All words of a language. Errors: NotFound "language-unknown".
[[nodiscard]] Expected<const Words*> allWords(std::string_view language);

/// The words of exactly the text codes that a procedure uses: what people may see in a job. A record names
/// them by the hash of their canonical JSON. Errors: NotFound "language-unknown", "words-missing" (names the
/// code).
[[nodiscard]] Expected<Words> wordsFor(const procedures::Procedure& procedure, std::string_view language);

}  // namespace hingepin::session
