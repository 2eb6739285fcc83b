// SPDX-License-Identifier: Apache-2.0
#include "tests/engine/cli/process.h"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <functional>
#include <iostream>
#include <ranges>
#include <sstream>
#include <thread>
#include <utility>

#include "engine/cli/run.h"

namespace hingepin::cli {

namespace {

/// `then` runs in the new process, in its folder, with its streams; it must not return.
ProcessResult runChild(const std::function<void()>& then, const std::filesystem::path& folder,
                       const ProcessOptions& options) {
  const TemporaryFolder streams;
  const std::string output =
      options.output_path.empty() ? (streams.path() / "out").string() : options.output_path;
  const std::string diagnostics = (streams.path() / "err").string();
  std::fflush(nullptr);  // else both processes write what waits
  const pid_t child = ::fork();
  if (child == 0) {
    const int out = ::open(output.c_str(), O_WRONLY | O_CREAT, 0600);
    const int err = ::open(diagnostics.c_str(), O_WRONLY | O_CREAT, 0600);
    if (::chdir(folder.c_str()) != 0 || ::dup2(out, 1) < 0 || ::dup2(err, 2) < 0) ::_exit(126);
    ::setenv("LC_ALL", options.locale, 1);
    then();
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

std::vector<char*> pointersOf(const std::string& program, const std::vector<std::string>& arguments) {
  std::vector<char*> pointers = {const_cast<char*>(program.c_str())};
  for (const std::string& argument : arguments) pointers.push_back(const_cast<char*>(argument.c_str()));
  pointers.push_back(nullptr);
  return pointers;
}

/// Where a stream of this process goes, until the end.
class Redirected {
 public:
  Redirected(int stream, const std::string& path) : stream_(stream), before_(::dup(stream)) {
    const int file = ::open(path.c_str(), O_WRONLY | O_CREAT, 0600);
    ::dup2(file, stream_);
    ::close(file);
  }
  ~Redirected() {
    ::dup2(before_, stream_);
    ::close(before_);
  }
  Redirected(const Redirected&) = delete;
  Redirected& operator=(const Redirected&) = delete;

 private:
  int stream_;
  int before_;
};

}  // namespace

ProcessResult runHingepin(const std::vector<std::string>& arguments, const std::filesystem::path& folder,
                          const ProcessOptions& options) {
  const TemporaryFolder streams;
  const std::string output =
      options.output_path.empty() ? (streams.path() / "out").string() : options.output_path;
  const std::string diagnostics = (streams.path() / "err").string();
  const std::string name = "hingepin";
  std::vector<char*> pointers = pointersOf(name, arguments);
  const std::filesystem::path before = std::filesystem::current_path();
  const auto flush = [] {
    std::cout.flush();
    std::fflush(nullptr);
  };
  ProcessResult result;
  flush();
  {
    const Redirected out(STDOUT_FILENO, output);
    const Redirected err(STDERR_FILENO, diagnostics);
    std::filesystem::current_path(folder);
    ::setenv("LC_ALL", options.locale, 1);
    result.status = run(static_cast<int>(pointers.size()) - 1, pointers.data());
    flush();
  }
  // What could not be written is not the next command's.
  std::cout.clear();
  std::clearerr(stdout);
  std::filesystem::current_path(before);
  if (options.output_path.empty()) result.output = readText(output);
  result.diagnostics = readText(diagnostics);
  return result;
}

ProcessResult runProgram(const std::string& program, const std::vector<std::string>& arguments,
                         const std::filesystem::path& folder, const ProcessOptions& options) {
  const std::vector<char*> pointers = pointersOf(program, arguments);
  return runChild([&] { ::execvp(program.c_str(), pointers.data()); }, folder, options);
}

ProcessResult startHingepin(const std::vector<std::string>& arguments, const std::filesystem::path& folder,
                            const ProcessOptions& options) {
  std::vector<std::string> all;
  for (const auto part : std::string_view(HINGEPIN_PROGRAM) | std::views::split('|'))
    all.emplace_back(part.begin(), part.end());
  all.insert(all.end(), arguments.begin(), arguments.end());
  return runProgram(all.front(), {all.begin() + 1, all.end()}, folder, options);
}

std::string xmlCatalogSetting(const std::filesystem::path& catalog) {
  std::string setting = "XML_CATALOG_FILES=";
  for (const char c : catalog.string()) setting += c == ' ' ? "%20" : std::string(1, c);
  return setting;
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
