// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "engine/base/error.h"
#include "engine/calibration/lift_log.h"
#include "engine/formats/byte_source.h"

namespace hingepin::formats {

inline constexpr std::size_t kMostLogLineBytes = 65536;

/// Where the bytes of a log come from. In a file a quoted cell may hold line breaks, time must increase, and
/// blank lines stand at the end only. In a feed a line ends at its line break, its times are as they come, a
/// blank line is passed over, and a line that names columns begins a new log.
enum class LogOrigin { File, Feed };

/// Reads a lift log as its bytes come, a line at a time, in memory that does not grow with its length.
class LiftLogLines {
 public:
  /// @param file names the log in errors
  LiftLogLines(std::string file, LogOrigin origin);
  ~LiftLogLines();
  LiftLogLines(LiftLogLines&&) noexcept;
  LiftLogLines& operator=(LiftLogLines&&) noexcept;
  LiftLogLines(const LiftLogLines&) = delete;
  LiftLogLines& operator=(const LiftLogLines&) = delete;

  /// Where the next bytes go; never empty once next() has given nothing.
  [[nodiscard]] std::span<char> space();
  /// So many bytes were put there; 0: no more will come.
  void came(std::size_t count);

  /// The next line that is whole, header first, into `line`; false where it needs more bytes, or all were
  /// read. Errors: InvalidInput with file, line and column (codes "csv-..." and "not-utf8"). The line at
  /// fault is passed over, and what comes after it can be read; where no header was read, the next line is
  /// taken as one.
  [[nodiscard]] Expected<bool> next(calibration::LogLine& line);
  /// No more bytes come, and all lines were read.
  [[nodiscard]] bool atEnd() const;
  /// Units, unknown columns and counts of the log whose header came last; its rows are not kept.
  [[nodiscard]] const calibration::LiftLog& log() const;

  /// Takes bytes of a feed as they come and tells each line that they complete, with log().
  void take(std::string_view bytes, const calibration::LogLineSink& each);

 private:
  struct Reading;
  std::unique_ptr<Reading> reading_;
};

/// Reads a lift log (CSV, RFC 4180, columns as engine/formats/README.md lists them) as a stream: memory does
/// not grow with its length, see LiftLogBuilder. Rows without a required reading are dropped and counted; a
/// log in which that leaves none is still well formed.
/// @param file names the log in errors and in the result
/// Errors: InvalidInput with file, line and column (codes "csv-..." and "not-utf8"); those of the source.
[[nodiscard]] Expected<calibration::LiftLog> readLiftLog(const ByteSource& source, const std::string& file);

}  // namespace hingepin::formats
