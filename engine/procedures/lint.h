// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "engine/procedures/procedure.h"

namespace hingepin::procedures {

/// Something that keeps a procedure from being run, and how to mend it; both have the same values.
struct Finding {
  std::string pointer;  ///< JSON Pointer in the file
  Message problem;
  Message mend;
};

/// Looks for all that README.md says the linter refuses. A procedure without findings can be run: every step
/// of every variant can be reached and, whatever is answered, the job ends.
/// @param text_codes the keys of the catalogue of words; nullptr leaves them unchecked.
[[nodiscard]] std::vector<Finding> lint(const Procedure& procedure, const TextCodes* text_codes);

}  // namespace hingepin::procedures
