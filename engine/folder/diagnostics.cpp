// SPDX-License-Identifier: Apache-2.0
#include "engine/folder/diagnostics.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <atomic>
#include <cerrno>
#include <charconv>
#include <csignal>
#include <filesystem>
#include <system_error>
#include <utility>

#include "engine/base/named.h"
#include "engine/folder/files.h"
#include "engine/session/moment.h"

namespace hingepin::folder {
namespace {

namespace fs = std::filesystem;

constexpr std::array kLevelNames = {Named{"debug", LogLevel::Debug},
                                    Named{"information", LogLevel::Information},
                                    Named{"warning", LogLevel::Warning}, Named{"failure", LogLevel::Failure}};
constexpr std::array kKindNames = {
    Named{"invalid-input", ErrorKind::InvalidInput}, Named{"not-found", ErrorKind::NotFound},
    Named{"io-failed", ErrorKind::IoFailed}, Named{"insufficient", ErrorKind::Insufficient},
    Named{"rank-deficient", ErrorKind::RankDeficient}};
constexpr std::array kCrashes = {SIGSEGV, SIGBUS, SIGFPE, SIGILL, SIGABRT};
constexpr std::size_t kMostOfLine = 400;

/// Codes are ours, but what stands where a code should may have come from outside.
std::string codeOf(std::string_view text) {
  std::string code;
  for (const char c : text.substr(0, kMostOfLine)) {
    const bool is_code = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                         std::string_view("-.:_/").contains(c);
    if (is_code) code += c;
  }
  return code;
}

std::string lineStart(std::int64_t utc_ms, LogLevel level, std::string_view part) {
  return fmt::format("{} {} {}", session::utcText(utc_ms), nameIn(kLevelNames, level), codeOf(part));
}

/// "<begun, ms of UTC>\n" and, after a crash, "<signal>\n".
Interrupted readMark(std::string_view text) {
  Interrupted mark;
  const std::size_t end = text.find('\n');
  std::int64_t begun = 0;
  if (const auto [at, problem] = std::from_chars(text.data(), text.data() + text.size(), begun);
      problem == std::errc() && end != std::string_view::npos && at == text.data() + end) {
    mark.begun_utc_ms = begun;
  }
  if (end == std::string_view::npos) return mark;
  const std::string_view rest = text.substr(end + 1);
  int number = 0;
  if (std::from_chars(rest.data(), rest.data() + rest.size(), number).ec == std::errc()) mark.signal = number;
  return mark;
}

// A handler of signals reaches nothing but what is global and lock-free.
std::atomic<int> the_marker = -1;
static_assert(std::atomic<int>::is_always_lock_free);

void onCrash(int number) {
  const int marker = the_marker.load();
  if (marker >= 0) {
    const std::array<char, 3> text = {static_cast<char>('0' + number / 10 % 10),
                                      static_cast<char>('0' + number % 10), '\n'};
    static_cast<void>(!::write(marker, text.data(), text.size()));
  }
  // The handler was set for one time: now the signal takes its usual course.
  static_cast<void>(::raise(number));
}

}  // namespace

std::string logLine(std::int64_t utc_ms, LogLevel level, std::string_view part, const Error& error) {
  std::string line = fmt::format("{} {} {}", lineStart(utc_ms, level, part), codeOf(error.message.code),
                                 nameIn(kKindNames, error.kind));
  if (error.place.line > 0) line += fmt::format(" line {}", error.place.line);
  if (error.place.column > 0) line += fmt::format(" column {}", error.place.column);
  for (const auto& [name, value] : error.message.values) {
    const auto* amount = std::get_if<Amount>(&value);
    if (amount != nullptr)
      line += fmt::format(" {}={:.6g}{}", codeOf(name), amount->value, codeOf(amount->ucum));
  }
  return line.substr(0, kMostOfLine) + "\n";
}

std::string logLine(std::int64_t utc_ms, LogLevel level, std::string_view part, std::string_view what) {
  return (lineStart(utc_ms, level, part) + " " + codeOf(what)).substr(0, kMostOfLine) + "\n";
}

Diagnostics::Diagnostics(DiagnosticsOptions options) : options_(std::move(options)) {}

Expected<std::unique_ptr<Diagnostics>> Diagnostics::open(DiagnosticsOptions options) {
  if (const auto made = makeFolder(options.path); !made) return std::unexpected(made.error());
  const std::string path = options.path + "/running";
  const int marker = ::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0600);
  if (marker < 0) {
    return fail(ErrorKind::IoFailed, "file-write-failed",
                {{"path", path}, {"reason", std::generic_category().message(errno)}}, {.file = path});
  }
  auto diagnostics = std::unique_ptr<Diagnostics>(new Diagnostics(std::move(options)));
  diagnostics->begun_utc_ms_ = diagnostics->options_.utc_ms();
  if (::flock(marker, LOCK_EX | LOCK_NB) != 0) {
    ::close(marker);  // another run goes on here
    return diagnostics;
  }
  diagnostics->marker_ = marker;
  std::array<char, 64> text{};
  const ssize_t count = ::pread(marker, text.data(), text.size(), 0);
  if (count > 0) {
    diagnostics->interrupted_ = readMark({text.data(), static_cast<std::size_t>(count)});
    const auto& signal = diagnostics->interrupted_->signal;
    diagnostics->note(LogLevel::Warning, "run",
                      signal ? fmt::format("last-run:crashed-by-signal-{}", *signal) : "last-run:cut-off");
  }
  diagnostics->mark();
  diagnostics->note(LogLevel::Information, "run", "begun");
  return diagnostics;
}

Diagnostics::~Diagnostics() {
  note(LogLevel::Information, "run", "ended");
  if (marker_ < 0) return;
  int mine = marker_;
  the_marker.compare_exchange_strong(mine, -1);
  static_cast<void>(!::ftruncate(marker_, 0));
  ::close(marker_);
}

void Diagnostics::mark() {
  const std::string text = std::to_string(begun_utc_ms_) + "\n";
  static_cast<void>(!::ftruncate(marker_, 0));
  ::lseek(marker_, 0, SEEK_SET);
  static_cast<void>(writeAll(marker_, text));
}

void Diagnostics::setResting(bool resting) {
  note(LogLevel::Debug, "run", resting ? "rests" : "resumed");
  if (marker_ < 0) return;
  if (resting) {
    static_cast<void>(!::ftruncate(marker_, 0));
  } else {
    mark();
  }
}

void Diagnostics::catchCrashes() {
  if (marker_ < 0) return;
  the_marker = marker_;
  struct sigaction action{};
  action.sa_handler = onCrash;
  action.sa_flags = static_cast<int>(SA_RESETHAND) | SA_NODEFER;
  for (const int number : kCrashes) static_cast<void>(::sigaction(number, &action, nullptr));
}

void Diagnostics::note(LogLevel level, std::string_view part, const Error& error) {
  write(level, logLine(options_.utc_ms(), level, part, error));
}

void Diagnostics::note(LogLevel level, std::string_view part, std::string_view what) {
  write(level, logLine(options_.utc_ms(), level, part, what));
}

std::string Diagnostics::nameOf(int number) const {
  return number == 0 ? options_.path + "/log.txt" : fmt::format("{}/log.{}.txt", options_.path, number);
}

std::string Diagnostics::text() const {
  std::string all;
  for (int number = options_.files - 1; number >= 0; --number) {
    if (const Expected<std::string> file = readFile(nameOf(number)); file) all += *file;
  }
  return all;
}

void Diagnostics::write(LogLevel level, const std::string& line) {
  if (level < options_.least) return;
  const std::scoped_lock lock(guard_);
  std::error_code ignored;
  const std::uintmax_t size = fs::file_size(nameOf(0), ignored);
  if (!ignored && size + line.size() > options_.most_bytes) {
    fs::remove(nameOf(options_.files - 1), ignored);
    for (int number = options_.files - 2; number >= 0; --number) {
      fs::rename(nameOf(number), nameOf(number + 1), ignored);
    }
  }
  const int file = ::open(nameOf(0).c_str(), O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC | O_NOFOLLOW, 0600);
  if (file < 0) return;
  static_cast<void>(writeAll(file, line));
  ::close(file);
}

}  // namespace hingepin::folder
