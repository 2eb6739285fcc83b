// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>

#include "engine/base/error.h"

/// What a program did, for whoever has to find out later why it failed: a log with levels, and a mark that
/// tells the next start how the last one ended.
namespace hingepin::folder {

enum class LogLevel { Debug, Information, Warning, Failure };

/// One line of the log: time, level, part of the program, code, kind, place, and the numbers of the message.
/// Texts, paths and pointers stay out: they may be names or secrets. With its line end.
[[nodiscard]] std::string logLine(std::int64_t utc_ms, LogLevel level, std::string_view part,
                                  const Error& error);
/// The same of something that is no error. `what` is a code: what is not of a-z, 0-9 and "-.:_/" is left out.
[[nodiscard]] std::string logLine(std::int64_t utc_ms, LogLevel level, std::string_view part,
                                  std::string_view what);

/// How the last run ended, where it did not end by itself.
struct Interrupted {
  std::optional<int> signal;  ///< of the crash; none where the phone went out or the system ended the program
  std::optional<std::int64_t> begun_utc_ms;
};

struct DiagnosticsOptions {
  std::string path;                                ///< the folder of the log, made where there is none
  std::function<std::int64_t()> utc_ms;            ///< the clock
  LogLevel least = LogLevel::Information;          ///< what is below is not written
  std::size_t most_bytes = std::size_t{1} << 18U;  ///< of one file; then the next is begun
  int files = 4;                                   ///< kept: log.txt, then log.1.txt, the newest first
};

/// Writes the log. What can't be written is lost without a word: it must never stop the work. May be called
/// from any thread.
class Diagnostics {
 public:
  /// Looks how the last run ended and marks that this one goes on. Where another run of the program goes on
  /// in the folder, its mark is left alone. Errors: IoFailed "file-write-failed".
  [[nodiscard]] static Expected<std::unique_ptr<Diagnostics>> open(DiagnosticsOptions options);
  Diagnostics(const Diagnostics&) = delete;
  Diagnostics& operator=(const Diagnostics&) = delete;
  /// Ends the run: the mark is taken away.
  ~Diagnostics();

  [[nodiscard]] const std::optional<Interrupted>& interrupted() const { return interrupted_; }
  /// All that is kept, the oldest first.
  [[nodiscard]] std::string text() const;
  void note(LogLevel level, std::string_view part, const Error& error);
  void note(LogLevel level, std::string_view part, std::string_view what);
  /// While a program rests the system may end it at will: that is no crash.
  void setResting(bool resting);
  /// From now on a crash (SIGSEGV, SIGBUS, SIGFPE, SIGILL, SIGABRT) writes its signal into the mark before it
  /// takes its course. Once in a process.
  void catchCrashes();

 private:
  explicit Diagnostics(DiagnosticsOptions options);
  [[nodiscard]] std::string nameOf(int number) const;
  void mark();
  void write(LogLevel level, const std::string& line);

  DiagnosticsOptions options_;
  std::mutex guard_;
  std::int64_t begun_utc_ms_ = 0;
  int marker_ = -1;  ///< the open and locked file of the mark; -1 where another run holds it
  std::optional<Interrupted> interrupted_;
};

}  // namespace hingepin::folder
