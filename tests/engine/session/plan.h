// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <filesystem>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <string>

namespace hingepin::session {

/// A plan as README.md beside this file describes it, laid over those that it is like (RFC 7396).
/// @return what is no object where a file is missing or no JSON
inline nlohmann::ordered_json readPlan(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  nlohmann::ordered_json plan = nlohmann::ordered_json::parse(text, nullptr, false);
  if (!plan.is_object() || !plan.contains("like")) return plan;
  nlohmann::ordered_json whole = readPlan(path.parent_path() / plan["like"].get<std::string>());
  plan.erase("like");
  whole.merge_patch(plan);
  return whole;
}

}  // namespace hingepin::session
