// SPDX-License-Identifier: Apache-2.0
#include "engine/folder/diagnostics.h"

#include <gmock/gmock.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <string>
#include <vector>

namespace hingepin::folder {
namespace {

namespace fs = std::filesystem;
using testing::EndsWith;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

constexpr std::int64_t kNow_ms = 1777881600123;

class DiagnosticsTest : public testing::Test {
 protected:
  DiagnosticsTest()
      : path_(fs::temp_directory_path() / ("hingepin-log-" + std::to_string(std::random_device()()))) {}
  ~DiagnosticsTest() override { fs::remove_all(path_); }
  DiagnosticsTest(const DiagnosticsTest&) = delete;
  DiagnosticsTest& operator=(const DiagnosticsTest&) = delete;

  [[nodiscard]] std::unique_ptr<Diagnostics> opened(LogLevel least = LogLevel::Information,
                                                    std::size_t most_bytes = 1 << 18) const {
    auto made = Diagnostics::open({.path = path_.string(),
                                   .utc_ms = [] { return kNow_ms; },
                                   .least = least,
                                   .most_bytes = most_bytes,
                                   .files = 3});
    EXPECT_TRUE(made) << made.error().message.code;
    return std::move(*made);
  }
  [[nodiscard]] std::string log(const std::string& name = "log.txt") const {
    std::ifstream file(path_ / name);
    return {std::istreambuf_iterator<char>(file), {}};
  }
  /// What `run` does in a process of its own, that ends without tidying up.
  template <class Run>
  [[nodiscard]] int inAnother(Run run) const {
    const pid_t child = ::fork();
    if (child == 0) {
      run();
      ::_exit(0);
    }
    int status = 0;
    ::waitpid(child, &status, 0);
    return status;
  }

  fs::path path_;
};

TEST_F(DiagnosticsTest, ALineHasCodeKindPlaceAndNumbersButNoTexts) {
  const Error error{
      ErrorKind::InvalidInput,
      {"quantity-out-of-range",
       {{"name", "Somebody's name"}, {"value", Amount{12.5, "bar", 1}}, {"path", "/srv/somebody"}}},
      {.file = "/srv/somebody/secret.json", .line = 3, .column = 7, .pointer = "/people/somebody"}};
  EXPECT_EQ(logLine(kNow_ms, LogLevel::Warning, "store", error),
            "2026-05-04T08:00:00.123Z warning store quantity-out-of-range invalid-input line 3 column 7 "
            "value=12.5bar\n");
}

TEST_F(DiagnosticsTest, WhatIsNoCodeIsLeftOutOfALine) {
  EXPECT_EQ(logLine(kNow_ms, LogLevel::Debug, "a b\n", "x;y\r\n\xc3\xa9"),
            "2026-05-04T08:00:00.123Z debug ab xy\n");
  EXPECT_LE(logLine(kNow_ms, LogLevel::Debug, "p", std::string(100000, 'x')).size(), 401U);
}

TEST_F(DiagnosticsTest, BelowTheLeastLevelNothingIsWritten) {
  const auto diagnostics = opened(LogLevel::Warning);
  diagnostics->note(LogLevel::Information, "app", "not-worth-it");
  diagnostics->note(LogLevel::Failure, "app", "worth-it");
  EXPECT_THAT(log(), Not(HasSubstr("not-worth-it")));
  EXPECT_THAT(log(), EndsWith("failure app worth-it\n"));
}

TEST_F(DiagnosticsTest, AFullFileIsPutAsideAndTheOldestGoes) {
  const auto diagnostics = opened(LogLevel::Information, 2000);
  for (int i = 0; i < 1000; ++i) diagnostics->note(LogLevel::Warning, "app", "line-" + std::to_string(i));
  for (const char* name : {"log.txt", "log.1.txt", "log.2.txt"}) {
    EXPECT_LE(log(name).size(), 2000U) << name;
    EXPECT_THAT(log(name), StartsWith("2026-")) << name;
    EXPECT_THAT(log(name), EndsWith("\n")) << name;
  }
  EXPECT_FALSE(fs::exists(path_ / "log.3.txt"));
  EXPECT_THAT(log(), EndsWith("line-999\n"));
}

TEST_F(DiagnosticsTest, ARunThatEndsByItselfLeavesNoMark) {
  static_cast<void>(opened());
  EXPECT_FALSE(opened()->interrupted());
}

TEST_F(DiagnosticsTest, ACrashTellsTheNextStartItsSignal) {
  for (const int number : {SIGSEGV, SIGABRT, SIGFPE}) {
    const int status = inAnother([&] {
      const auto diagnostics = opened();
      diagnostics->catchCrashes();
      ::raise(number);
    });
    ASSERT_TRUE(WIFSIGNALED(status));
    EXPECT_EQ(WTERMSIG(status), number) << "a crash takes its course";
    const auto next = opened();
    ASSERT_TRUE(next->interrupted());
    EXPECT_EQ(next->interrupted()->signal, number);
    EXPECT_EQ(next->interrupted()->begun_utc_ms, kNow_ms);
    EXPECT_THAT(log(), HasSubstr("warning run last-run:crashed-by-signal-" + std::to_string(number)));
  }
  EXPECT_FALSE(opened()->interrupted()) << "it is told once";
}

TEST_F(DiagnosticsTest, ARunThatWasKilledIsToldApartFromACrash) {
  static_cast<void>(inAnother([&] {
    const auto diagnostics = opened();
    diagnostics->catchCrashes();
    ::raise(SIGKILL);
  }));
  const auto next = opened();
  ASSERT_TRUE(next->interrupted());
  EXPECT_FALSE(next->interrupted()->signal);
}

TEST_F(DiagnosticsTest, WhoIsEndedWhileRestingDidNotCrash) {
  static_cast<void>(inAnother([&] {
    const auto diagnostics = opened();
    diagnostics->setResting(true);
    ::raise(SIGKILL);
  }));
  EXPECT_FALSE(opened()->interrupted());
  static_cast<void>(inAnother([&] {
    const auto diagnostics = opened();
    diagnostics->setResting(true);
    diagnostics->setResting(false);
    ::raise(SIGKILL);
  }));
  EXPECT_TRUE(opened()->interrupted());
}

TEST_F(DiagnosticsTest, ASecondRunInTheFolderIsNotTakenForACrash) {
  const auto first = opened();
  {
    const auto second = opened();
    EXPECT_FALSE(second->interrupted());
    second->note(LogLevel::Warning, "app", "from-the-second");
  }
  EXPECT_THAT(log(), HasSubstr("from-the-second"));
  EXPECT_TRUE(fs::file_size(path_ / "running") > 0) << "the first still goes on";
}

TEST_F(DiagnosticsTest, AMarkThatIsRubbishIsStillOnlyACutOffRun) {
  for (const std::string& text : std::vector<std::string>{"x", "\n", "99999999999999999999999999\n11\n", "12",
                                                          "12\n9x", std::string(500, '1')}) {
    fs::create_directories(path_);
    std::ofstream(path_ / "running") << text;
    EXPECT_TRUE(opened()->interrupted()) << text;
  }
}

TEST_F(DiagnosticsTest, AFolderThatCannotBeMadeIsNamed) {
  const auto made = Diagnostics::open({.path = "/proc/nowhere/log", .utc_ms = [] { return kNow_ms; }});
  ASSERT_FALSE(made);
  EXPECT_EQ(made.error().message.code, "file-write-failed");
}

}  // namespace
}  // namespace hingepin::folder
