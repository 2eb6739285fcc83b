// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <string>

#include "engine/base/error.h"
#include "engine/calibration/lift_log.h"
#include "engine/formats/byte_source.h"

namespace hingepin::formats {

inline constexpr std::size_t kMostLogLineBytes = 65536;

/// Reads a lift log (CSV, RFC 4180, columns as engine/formats/README.md lists them) as a stream: memory does
/// not grow with its length, see LiftLogBuilder. Rows without a required reading are dropped and counted; a
/// log in which that leaves none is still well formed.
/// @param file names the log in errors and in the result
/// Errors: InvalidInput with file, line and column (codes "csv-..." and "not-utf8"); those of the source.
[[nodiscard]] Expected<calibration::LiftLog> readLiftLog(const ByteSource& source, const std::string& file);

}  // namespace hingepin::formats
