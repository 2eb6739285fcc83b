// SPDX-License-Identifier: Apache-2.0
#include "engine/cli/run.h"

int main(int argument_count, char** arguments) { return hingepin::cli::run(argument_count, arguments); }
