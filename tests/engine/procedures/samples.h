// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <string>

#include "engine/procedures/procedure.h"

namespace hingepin::procedures::samples {

inline std::string fileText(const std::string& path) {
  std::ifstream file(std::string(HINGEPIN_SOURCE_DIR) + "/" + path);
  return {std::istreambuf_iterator<char>(file), {}};
}

/// The example that the format's description shows.
inline std::string exampleText() {
  const std::string page = fileText("engine/procedures/README.md");
  const std::size_t begin = page.find("```json\n") + 8;
  return page.substr(begin, page.find("```", begin) - begin);
}

/// A procedure that uses every kind of step and of check, in three variants.
inline std::string everythingText() { return fileText("tests/engine/procedures/files/everything.json"); }

/// REQUIRES: a text that reads.
inline Procedure procedureOf(const std::string& text) {
  Expected<Procedure> read = readProcedure(text, "sample.json");
  if (!read) throw std::runtime_error(read.error().message.code + " at " + read.error().place.pointer);
  return *std::move(read);
}

/// A text with an RFC 6902 patch applied.
inline std::string patched(const std::string& text, const std::string& patch) {
  return nlohmann::ordered_json::parse(text).patch(nlohmann::ordered_json::parse(patch)).dump(2);
}

}  // namespace hingepin::procedures::samples
