// SPDX-License-Identifier: Apache-2.0
#include <exception>
#include <iostream>
#include <stdexcept>

#include "tests/engine/session/plan.h"

int main(int argument_count, char** arguments) {
  try {
    if (argument_count != 2) throw std::runtime_error("usage: write_script PLAN.json > SCRIPT.jsonl");
    const hingepin::session::PlannedScript script = hingepin::session::scriptOf(arguments[1]);
    std::cerr << script.remarks;
    std::cout << script.text;
    return 0;
  } catch (const std::exception& error) {
    std::cerr << "write_script: " << error.what() << "\n";
    return 2;
  }
}
