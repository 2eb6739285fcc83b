// SPDX-License-Identifier: Apache-2.0
// Makes the golden database of the newest version: write_golden tests/engine/store/golden/v<N>.hingepin
// One that was released is never made again.
#include <cstdio>
#include <cstdlib>
#include <filesystem>

#include "tests/engine/store/golden.h"

int main(int count, char** arguments) {
  if (count != 2 || std::filesystem::exists(arguments[1])) {
    std::fputs("write_golden FILE, which must not be there yet\n", stderr);
    return EXIT_FAILURE;
  }
  hingepin::store::samples::Yard yard(arguments[1]);
  hingepin::store::samples::fillGolden(yard);
  return EXIT_SUCCESS;
}
