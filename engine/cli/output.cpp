// SPDX-License-Identifier: Apache-2.0
#include "engine/cli/output.h"

#include <unistd.h>

#include <cerrno>
#include <system_error>

#include "engine/folder/files.h"

namespace hingepin::cli {

OutputState writeOutput(std::string_view text, std::string& reason) {
  const int problem = folder::writeAll(STDOUT_FILENO, text);
  if (problem == 0) return OutputState::Open;
  if (problem == EPIPE) return OutputState::ReaderGone;
  reason = std::generic_category().message(problem);
  return OutputState::Failed;
}

void writeDiagnostic(std::string_view text) { static_cast<void>(folder::writeAll(STDERR_FILENO, text)); }

}  // namespace hingepin::cli
