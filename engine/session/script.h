// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/procedures/runner.h"

/// A job as a file of events, "hingepin-script/1": JSON Lines, the first a header. What each key means stands
/// in README.md beside this file.
namespace hingepin::session {

struct ScriptPerson {
  std::string role{};
  std::string key{};     ///< the name of a key; "" for somebody who signs on the glass only
  std::string device{};  ///< "" for the phone that the script runs on
};

struct ScriptHeader {
  std::string procedure{};  ///< id in the library, or the path of a file that ends in ".json"
  std::string variant{};
  std::string unit{};
  std::string attachment{};
  std::string language = "en";
  std::string words{};  ///< a file of the procedure's own words; "" where the program has them all
  procedures::LoneWork lone_work = procedures::LoneWork::NotAllowed;
  std::map<std::string, std::string, std::less<>> entries{};
  std::optional<std::int64_t> begun_utc_ms{};          ///< else the computer's clock
  std::optional<std::int64_t> phone_started_utc_ms{};  ///< else an hour before
  std::map<std::string, ScriptPerson, std::less<>> people{};
  std::string in_charge{};  ///< one of them
};

/// What a line says that somebody does.
struct ScriptLine {
  std::size_t number = 0;  ///< of the line in its file, from 1
  std::int64_t after_ms = 1000;
  std::string who{};  ///< one of the people; "" for whoever is in charge
  procedures::EventType type = procedures::EventType::Answer;
  std::string about{};
  std::string answer{};
  std::string value{};
  std::vector<std::string> files{};
  procedures::How how = procedures::How::Typed;
  bool sure = false;
  bool restart = false;  ///< the phone stops and is started again
};

struct Script {
  ScriptHeader header;
  std::vector<ScriptLine> lines;
};

/// Errors: InvalidInput with file and line: those of readJson and JsonNode, "format-unsupported",
/// "script-time-malformed", "script-person-unknown", "script-line-unclear", "word-unknown", those of
/// readSi.
[[nodiscard]] Expected<Script> readScript(std::string_view text, const std::string& file);
[[nodiscard]] Expected<ScriptHeader> readScriptHeader(std::string_view text, const std::string& file);
[[nodiscard]] Expected<ScriptLine> readScriptLine(std::string_view text, const std::string& file,
                                                  std::size_t number);

/// The event of a line, without hashes and time.
/// @param key_of the thumbprint of each key, by name
/// Errors: InvalidInput "script-person-unknown".
[[nodiscard]] Expected<procedures::Event> eventOf(const ScriptHeader& header, const ScriptLine& line,
                                                  const std::map<std::string, std::string>& key_of,
                                                  const procedures::State& state);

/// A line that the job would take now, with "..." for what only a person knows; "" once it has ended.
[[nodiscard]] std::string awaitedLine(const procedures::Procedure& procedure, const procedures::State& state);

}  // namespace hingepin::session
