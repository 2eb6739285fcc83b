// SPDX-License-Identifier: Apache-2.0
#include "tests/engine/cli/process.h"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <csignal>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <thread>

namespace hingepin::cli {

ProcessResult runHingepin(const std::vector<std::string>& arguments, const std::filesystem::path& folder,
                          const std::string& output_path, const char* locale) {
  return runProgram(HINGEPIN_PROGRAM, arguments, folder, {.output_path = output_path, .locale = locale});
}

ProcessResult runProgram(const std::string& program, const std::vector<std::string>& arguments,
                         const std::filesystem::path& folder, const ProcessOptions& options) {
  const TemporaryFolder streams;
  const std::string output =
      options.output_path.empty() ? (streams.path() / "out").string() : options.output_path;
  const std::string diagnostics = (streams.path() / "err").string();
  std::vector<char*> pointers = {const_cast<char*>(program.c_str())};
  for (const std::string& argument : arguments) pointers.push_back(const_cast<char*>(argument.c_str()));
  pointers.push_back(nullptr);

  const pid_t child = ::fork();
  if (child == 0) {
    const int out = ::open(output.c_str(), O_WRONLY | O_CREAT, 0600);
    const int err = ::open(diagnostics.c_str(), O_WRONLY | O_CREAT, 0600);
    if (::chdir(folder.c_str()) != 0 || ::dup2(out, 1) < 0 || ::dup2(err, 2) < 0) ::_exit(126);
    ::setenv("LC_ALL", options.locale, 1);
    ::execvp(program.c_str(), pointers.data());
    ::_exit(127);
  }
  int state = 0;
  const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(options.most_seconds);
  while (::waitpid(child, &state, WNOHANG) == 0) {
    if (std::chrono::steady_clock::now() > end) {
      ::kill(child, SIGKILL);
      ::waitpid(child, &state, 0);
      break;
    }
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
  }
  ProcessResult result;
  if (WIFEXITED(state)) result.status = WEXITSTATUS(state);
  if (WIFSIGNALED(state)) result.signal = WTERMSIG(state);
  if (options.output_path.empty()) result.output = readText(output);
  result.diagnostics = readText(diagnostics);
  return result;
}

TemporaryFolder::TemporaryFolder() {
  std::string name = (std::filesystem::temp_directory_path() / "hingepin-test-XXXXXX").string();
  path_ = ::mkdtemp(name.data());
}

TemporaryFolder::~TemporaryFolder() {
  std::error_code ignored;
  std::filesystem::remove_all(path_, ignored);
}

void writeText(const std::filesystem::path& path, const std::string& text) {
  std::ofstream(path, std::ios::binary) << text;
}

std::string readText(const std::filesystem::path& path) {
  std::ostringstream text;
  text << std::ifstream(path, std::ios::binary).rdbuf();
  return text.str();
}

const std::filesystem::path& practiceFolder() {
  static const TemporaryFolder folder;
  static const bool made = [] {
    const ProcessResult simulated = runHingepin({"simulate", "--demo", "--out", "."}, folder.path());
    EXPECT_EQ(simulated.status, 0) << simulated.diagnostics;
    const ProcessResult calibrated =
        runHingepin({"calibrate", "job.json", "--out", "calibration.json"}, folder.path());
    EXPECT_EQ(calibrated.status, 0) << calibrated.diagnostics;
    return true;
  }();
  static_cast<void>(made);
  return folder.path();
}

}  // namespace hingepin::cli
