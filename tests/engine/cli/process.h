// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace hingepin::cli {

struct ProcessResult {
  int status = -1;  ///< exit status; -1 if it was ended by a signal
  int signal = 0;   ///< that ended it; SIGKILL after the time limit
  std::string output;
  std::string diagnostics;
};

struct ProcessOptions {
  std::string output_path{};       ///< where standard output goes instead of the result, such as /dev/full
  const char* locale = "C.UTF-8";  ///< that the program finds itself in
  int most_seconds = 20;           ///< then a process of its own is ended
};

/// Runs a program with these arguments in a folder.
ProcessResult runProgram(const std::string& program, const std::vector<std::string>& arguments,
                         const std::filesystem::path& folder, const ProcessOptions& options = {});

/// The same of `hingepin`, in this very process: loading the program anew, or copying this one, costs more
/// than most of what it is asked, by far with the sanitizers. The limit of time is that of the test.
ProcessResult runHingepin(const std::vector<std::string>& arguments, const std::filesystem::path& folder,
                          const ProcessOptions& options = {});

/// The same as a process of its own, which can be killed; in an emulator where it is for another processor.
ProcessResult startHingepin(const std::vector<std::string>& arguments, const std::filesystem::path& folder,
                            const ProcessOptions& options);

/// The setting by which xmllint finds a catalogue of schemas: a list that blanks part, so those of its path
/// are escaped.
[[nodiscard]] std::string xmlCatalogSetting(const std::filesystem::path& catalog);

/// A folder of its own that is removed at the end.
class TemporaryFolder {
 public:
  TemporaryFolder();
  ~TemporaryFolder();
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;
  [[nodiscard]] const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

void writeText(const std::filesystem::path& path, const std::string& text);
[[nodiscard]] std::string readText(const std::filesystem::path& path);

/// The practice job with its logs and the calibration made of it, by the program itself, once for all tests.
[[nodiscard]] const std::filesystem::path& practiceFolder();

}  // namespace hingepin::cli
