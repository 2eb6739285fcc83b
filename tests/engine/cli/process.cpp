// SPDX-License-Identifier: Apache-2.0
#include "tests/engine/cli/process.h"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <functional>
#include <ranges>
#include <set>
#include <sstream>
#include <thread>
#include <utility>

#ifdef __SANITIZE_ADDRESS__
#include <sanitizer/lsan_interface.h>
#endif

#include "engine/cli/run.h"

namespace hingepin::cli {

namespace {

constexpr int kLeaked = 23;  // as the sanitizer itself ends a program

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

/// The command and, where it has several, which; help is one, whatever it is about.
std::string commandOf(const std::vector<std::string>& arguments) {
  if (std::ranges::find(arguments, "--help") != arguments.end()) return "help";
  std::string command;
  for (std::size_t i = 0; i < std::min<std::size_t>(2, arguments.size()); ++i) command += arguments[i] + " ";
  return command;
}

/// The program as a process of its own, in an emulator where it is for another processor.
ProcessResult startHingepin(const std::vector<std::string>& arguments, const std::filesystem::path& folder,
                            const ProcessOptions& options) {
  std::vector<std::string> all;
  for (const auto part : std::string_view(HINGEPIN_PROGRAM) | std::views::split('|'))
    all.emplace_back(part.begin(), part.end());
  all.insert(all.end(), arguments.begin(), arguments.end());
  return runProgram(all.front(), {all.begin() + 1, all.end()}, folder, options);
}

bool onlyThread() {
  return std::ranges::distance(std::filesystem::directory_iterator("/proc/self/task")) == 1;
}

}  // namespace

ProcessResult runHingepin(const std::vector<std::string>& arguments, const std::filesystem::path& folder,
                          const ProcessOptions& options) {
  // A copy of a process has one thread, and what others had locked stays so.
  if (!onlyThread()) return startHingepin(arguments, folder, options);
  const std::string name = "hingepin";
  std::vector<char*> pointers = pointersOf(name, arguments);
  // To look for leaks takes longer than most commands: once for each way in which one ended.
  static std::set<std::pair<std::string, int>> looked_at;
  const std::string command = commandOf(arguments);
  const auto program = [&] {
    int status = run(static_cast<int>(pointers.size()) - 1, pointers.data());
#ifdef __SANITIZE_ADDRESS__
    if (!looked_at.contains({command, status}) && __lsan_do_recoverable_leak_check() != 0) status = kLeaked;
#endif
    std::fflush(nullptr);
    ::_exit(status);  // not what this process would clear up at its own end
  };
  ProcessResult result = runChild(program, folder, options);
  looked_at.emplace(command, result.status);
  return result;
}

ProcessResult runProgram(const std::string& program, const std::vector<std::string>& arguments,
                         const std::filesystem::path& folder, const ProcessOptions& options) {
  const std::vector<char*> pointers = pointersOf(program, arguments);
  return runChild([&] { ::execvp(program.c_str(), pointers.data()); }, folder, options);
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
