// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

/// The rules of the house that a compiler does not keep: who may include whom, a licence line in each file,
/// and no path of somebody's machine. Each rule looks at one file, given by its path from the top of the
/// project ('/' between folders) and its text, and returns a sentence for each breach.
namespace hingepin::house {

[[nodiscard]] std::vector<std::string> forbiddenIncludes(std::string_view path, std::string_view text);
[[nodiscard]] std::vector<std::string> missingLicence(std::string_view path, std::string_view text);
[[nodiscard]] std::vector<std::string> machinePaths(std::string_view path, std::string_view text);

/// @return whether git would call it text: no zero byte in its first 8000.
[[nodiscard]] bool isText(std::string_view text);

/// @return the path, from `top`, of every file of the project; folders that builds, editors and git make are
/// left out.
[[nodiscard]] std::vector<std::string> projectFiles(const std::filesystem::path& top);

[[nodiscard]] std::string readFile(const std::filesystem::path& file);

}  // namespace hingepin::house
