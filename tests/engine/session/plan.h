// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <filesystem>
#include <nlohmann/json.hpp>
#include <string>

namespace hingepin::session {

/// A plan as README.md beside this file describes it, laid over those that it is like (RFC 7396).
/// @return what is no object where a file is missing or no JSON
nlohmann::ordered_json readPlan(const std::filesystem::path& path);

struct PlannedScript {
  std::string text;     ///< a line an event
  std::string remarks;  ///< what the plan left open, what did not pass, and how the job ends
};

/// A plan's script of events, made by walking its procedure's prompts and doing what is asked.
/// Throws std::runtime_error that says what is wrong with the plan.
PlannedScript scriptOf(const std::filesystem::path& path);

}  // namespace hingepin::session
