// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <gtest/gtest.h>

#include <filesystem>
#include <regex>
#include <sstream>
#include <string>
#include <vector>

#include "tests/engine/cli/process.h"
#include "tests/engine/cli/quick_key.h"
#include "tests/engine/session/plan.h"

namespace hingepin::cli {

inline constexpr const char* kScriptHeader =
    R"({"format":"hingepin-script/1","procedure":"walk-round","unit":"L-27","attachment":"GP-2.7",)"
    R"("begun_utc":"2026-05-04T06:10:00Z","phone_started_utc":"2026-05-04T06:00:00Z",)"
    R"("people":{"technician-1":{"role":"technician","key":"technician-1"}}})";

/// A store folder with a yard, a unit and an attachment.
class Place {
 public:
  Place() {
    writeText(path() / "passphrase", kPassphrase + std::string("\n"));
    writeText(path() / "photo.txt", "not a real photo");
    for (const char* key : {"technician-1", "lead-1", "yard"}) makeQuickKey(path() / "store", key);
    done({"signers", "make", "--yard-key", "yard", "--from", "2026-01-01T00:00:00Z", "--signer",
          "technician-1:technician", "--signer", "lead-1:safety-lead"});
    const std::filesystem::path files =
        std::filesystem::path(HINGEPIN_SOURCE_DIR) / "tests/engine/session/files";
    done({"units", "put", (files / "unit.json").string()});
    done({"attachments", "put", (files / "attachment.json").string()});
  }
  [[nodiscard]] const std::filesystem::path& path() const { return folder_.path(); }
  [[nodiscard]] ProcessResult run(const std::vector<std::string>& arguments) const {
    return runHingepin(here(arguments), path());
  }
  [[nodiscard]] ProcessResult runAndKill(const std::vector<std::string>& arguments, int after_s) const {
    return startHingepin(here(arguments), path(), {.most_seconds = after_s});
  }
  std::string done(const std::vector<std::string>& arguments) const {
    const ProcessResult result = run(arguments);
    EXPECT_EQ(result.status, 0) << arguments[0] << " " << arguments[1] << ": " << result.diagnostics;
    return result.output;
  }
  /// The lines of a walk-round as an obliging technician does it, without the header.
  [[nodiscard]] std::vector<std::string> walkRound(const std::string& says = "{}") const {
    const std::string plan = R"({"header":)" + std::string(kScriptHeader) + R"(,"says":)" + says + "}";
    writeText(path() / "plan.json", plan);
    std::istringstream stream(session::scriptOf(path() / "plan.json").text);
    std::vector<std::string> lines;
    for (std::string line; std::getline(stream, line);) lines.push_back(line);
    lines.erase(lines.begin());
    return lines;
  }
  void writeScript(const std::string& name, const std::vector<std::string>& lines,
                   const std::string& header = kScriptHeader) const {
    std::string text = header + "\n";
    for (const std::string& line : lines) text += line + "\n";
    writeText(path() / name, text);
  }
  /// @return the name of the record
  std::string seal(const std::vector<std::string>& lines) const {
    writeScript("whole.jsonl", lines);
    const std::string said = done({"jobs", "run", "whole.jsonl"});
    const std::size_t at = said.find("record ");
    return at == std::string::npos ? "" : said.substr(at + 7, 64);
  }
  [[nodiscard]] std::string runningJob() const {
    const std::string list = done({"jobs", "list", "--running"});
    std::smatch job;
    return std::regex_search(list, job, std::regex("[0-9a-f]{32}")) ? job.str() : "";
  }

 private:
  static std::vector<std::string> here(std::vector<std::string> arguments) {
    arguments.insert(arguments.end(), {"--store", "store", "--passphrase-file", "passphrase"});
    return arguments;
  }

  TemporaryFolder folder_;
};

}  // namespace hingepin::cli
