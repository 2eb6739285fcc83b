// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <filesystem>
#include <functional>
#include <map>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "engine/procedures/procedure.h"
#include "tests/engine/procedures/samples.h"

namespace hingepin::procedures::samples {

/// A procedure of the library, from its file.
inline Procedure libraryProcedure(const std::string& id) {
  return procedureOf(fileText("engine/procedures/library/" + id + ".json"));
}

/// Its variants, or "" for one way only.
inline std::vector<std::string> waysOf(const Procedure& procedure) {
  std::vector<std::string> ways;
  for (const Variant& variant : procedure.variants) ways.push_back(variant.id);
  if (ways.empty()) ways.emplace_back();
  return ways;
}

/// The English words of the library, by text code.
inline const std::map<std::string, std::string, std::less<>>& libraryWords() {
  static const auto words = [] {
    std::map<std::string, std::string, std::less<>> all;
    const std::string folder = "translations/procedures/en";
    for (const auto& file :
         std::filesystem::directory_iterator(std::string(HINGEPIN_SOURCE_DIR) + "/" + folder)) {
      const nlohmann::json read =
          nlohmann::json::parse(fileText(folder + "/" + file.path().filename().string()));
      for (const auto& [code, text] : read.items()) all.emplace(code, text.get<std::string>());
    }
    return all;
  }();
  return words;
}

}  // namespace hingepin::procedures::samples
