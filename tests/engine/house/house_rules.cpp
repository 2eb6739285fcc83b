// SPDX-License-Identifier: Apache-2.0
#include "tests/engine/house/house_rules.h"

#include <algorithm>
#include <array>
#include <fstream>
#include <iterator>
#include <map>
#include <regex>
#include <set>
#include <sstream>

namespace hingepin::house {
namespace {

namespace fs = std::filesystem;

using Areas = std::set<std::string, std::less<>>;

// Who may know whom. An area may also know what those it knows may know.
const std::map<std::string, Areas, std::less<>>& directArrows() {
  static const std::map<std::string, Areas, std::less<>> arrows = {
      {"base", {}},
      {"units", {"base"}},
      {"statistics", {"base"}},
      {"linkage", {"units"}},
      {"calibration", {"linkage", "statistics"}},
      {"survey", {"calibration"}},
      {"proof", {"units", "statistics"}},
      {"faults", {"calibration"}},
      {"simulator", {"linkage"}},
      {"procedures", {"units", "survey"}},
      {"records", {"base"}},
      {"store", {"procedures", "records"}},
      {"sync", {"store"}},
      {"far_side", {"sync"}},
      {"certificate", {"proof"}},
      {"session", {"certificate", "faults", "proof", "simulator", "sync"}},
      {"formats", {"units", "calibration", "survey", "proof"}},
      {"folder", {"session", "formats", "far_side"}},
      {"cli", {"folder"}},
  };
  return arrows;
}

void addReachable(std::string_view area, Areas& reachable) {
  for (const std::string& next : directArrows().find(area)->second) {
    if (reachable.insert(next).second) addReachable(next, reachable);
  }
}

Areas mayKnow(std::string_view area) {
  Areas reachable{std::string(area)};
  addReachable(area, reachable);
  return reachable;
}

// "engine/units/ucum.h" -> "units"; "" for a file that lies in no area.
std::string areaOf(std::string_view path) {
  constexpr std::string_view kEngine = "engine/";
  if (!path.starts_with(kEngine)) return "";
  path.remove_prefix(kEngine.size());
  const std::size_t slash = path.find('/');
  return slash == std::string_view::npos ? "" : std::string(path.substr(0, slash));
}

bool isQt(const std::string& header) {
  static const std::regex qt("Q[A-Za-z0-9]*(/.*)?|q(t|global|object|string)[a-z0-9_]*\\.h");
  return std::regex_match(header, qt);
}

struct Include {
  std::size_t line;
  bool quoted;
  std::string header;
};

std::vector<Include> includesOf(std::string_view text) {
  static const std::regex directive("^\\s*#\\s*include\\s*([<\"])([^>\"]+)[>\"].*");
  std::vector<Include> includes;
  std::istringstream lines{std::string(text)};
  std::string line;
  for (std::size_t number = 1; std::getline(lines, line); ++number) {
    std::smatch match;
    if (std::regex_match(line, match, directive)) includes.push_back({number, match[1] == "\"", match[2]});
  }
  return includes;
}

// Why a file under engine/ must not include a header, or "".
std::string breachInEngine(const std::string& area, const Include& include) {
  if (isQt(include.header)) return "Qt below engine/";
  if (include.header.starts_with("mobile/")) return "the engine does not know the app";
  if (include.quoted && !include.header.starts_with("engine/")) return "quoted includes start from the root";
  const std::string other = areaOf(include.header);
  if (other.empty()) return "";
  if (!directArrows().contains(area)) return "area " + area + " is not on the list of who may know whom";
  return mayKnow(area).contains(other) ? "" : area + " may not know " + other;
}

// The same for a file under mobile/.
std::string breachInMobile(const Include& include) {
  const std::string other = areaOf(include.header);
  // The use cases, the edges that are handed to them, and the values that both speak in.
  static const Areas seen = {"base", "units", "procedures", "records", "formats", "folder", "session"};
  return other.empty() || seen.contains(other) ? "" : "the app may not know " + other;
}

bool hasSuffix(std::string_view path, const auto& suffixes) {
  return std::ranges::any_of(suffixes, [&](std::string_view suffix) { return path.ends_with(suffix); });
}

// Files without a place for a comment, or whose tool would drop it.
constexpr std::array kNoComment = {std::string_view(".json"), std::string_view(".csv"),
                                   std::string_view(".ts")};

}  // namespace

std::vector<std::string> forbiddenIncludes(std::string_view path, std::string_view text) {
  const bool engine = path.starts_with("engine/");
  if (!engine && !path.starts_with("mobile/")) return {};
  if (!hasSuffix(path,
                 std::array{std::string_view(".h"), std::string_view(".cpp"), std::string_view(".in")})) {
    return {};
  }
  const std::string area = areaOf(path);
  std::vector<std::string> breaches;
  for (const Include& include : includesOf(text)) {
    const std::string breach = engine ? breachInEngine(area, include) : breachInMobile(include);
    if (breach.empty()) continue;
    breaches.push_back(std::string(path) + ":" + std::to_string(include.line) + ": includes " +
                       include.header + ": " + breach);
  }
  return breaches;
}

std::vector<std::string> missingLicence(std::string_view path, std::string_view text) {
  if (path == "LICENSE" || hasSuffix(path, kNoComment)) return {};
  const bool app = path.starts_with("mobile/") || path.starts_with("tests/mobile/");
  const std::string_view licence = app ? "GPL-3.0-or-later" : "Apache-2.0";
  const std::regex line_with_licence("(.*[ \t])?SPDX-License-Identifier: " + std::string(licence) +
                                     "( .*)?\r?");
  std::istringstream lines{std::string(text)};
  std::string line;
  for (int number = 1; number <= 5 && std::getline(lines, line); ++number) {
    if (std::regex_match(line, line_with_licence)) return {};
  }
  return {std::string(path) + ": no SPDX line for " + std::string(licence) + " in the first five lines"};
}

std::vector<std::string> machinePaths(std::string_view path, std::string_view text) {
  std::vector<std::string> breaches;
  // Put together here so that this file keeps its own rule.
  for (const std::string folder : {"work", "root", "home"}) {
    const std::string forbidden = "/" + folder + "/";
    if (text.find(forbidden) != std::string_view::npos) {
      breaches.push_back(std::string(path) + ": a path of somebody's machine: " + forbidden);
    }
  }
  return breaches;
}

bool isText(std::string_view text) { return text.substr(0, 8000).find('\0') == std::string_view::npos; }

std::vector<std::string> projectFiles(const fs::path& top) {
  std::vector<std::string> files;
  for (auto entry = fs::recursive_directory_iterator(top); entry != fs::recursive_directory_iterator();
       ++entry) {
    const std::string name = entry->path().filename().string();
    if (entry->is_directory()) {
      const bool made_by_a_build = entry.depth() == 0 && (name == "build" || name.starts_with("build-"));
      const bool made_by_a_tool = name.starts_with(".") && name != ".ci";
      if (made_by_a_build || made_by_a_tool) entry.disable_recursion_pending();
    } else if (entry->is_regular_file() && name != ".git") {  // in a linked work tree .git is a file
      files.push_back(fs::relative(entry->path(), top).generic_string());
    }
  }
  std::ranges::sort(files);
  return files;
}

std::string readFile(const fs::path& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

}  // namespace hingepin::house
