// SPDX-License-Identifier: Apache-2.0
// Writes the practice unit's logs and typed readings into a folder, for scripts of the main job.
#include <filesystem>
#include <fstream>
#include <iostream>

#include "tests/engine/session/practice.h"

int main(int argument_count, char** arguments) {
  if (argument_count != 2) {
    std::cerr << "usage: write_practice FOLDER\n";
    return 2;
  }
  std::filesystem::create_directories(arguments[1]);
  for (const auto& [name, text] : hingepin::session::practiceFiles()) {
    std::ofstream(std::filesystem::path(arguments[1]) / name, std::ios::binary) << text;
  }
  return 0;
}
