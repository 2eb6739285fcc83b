// SPDX-License-Identifier: Apache-2.0
// Reads one procedure a line and says of each "taken" or why it is refused, for validate_procedures.py.
#include <iostream>
#include <string>

#include "engine/procedures/lint.h"
#include "engine/procedures/procedure.h"

using namespace hingepin::procedures;

namespace {

std::string judged(const std::string& text) {
  const hingepin::Expected<Procedure> read = readProcedure(text, "line");
  if (!read) return read.error().message.code;
  // The schema knows the grammar of quantities, which the reader leaves to the linter.
  for (const Finding& finding : lint(*read, nullptr)) {
    if (finding.problem.code == "quantity-malformed") return finding.problem.code;
  }
  return "taken";
}

}  // namespace

int main() {
  for (std::string line; std::getline(std::cin, line);) std::cout << judged(line) << "\n";
}
