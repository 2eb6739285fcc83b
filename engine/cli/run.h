// SPDX-License-Identifier: Apache-2.0
#pragma once

namespace hingepin::cli {

/// The program `hingepin`: sets how the process takes SIGPIPE and characters. `arguments` as `main` gets
/// them. @return the exit status
int run(int argument_count, char** arguments);

}  // namespace hingepin::cli
