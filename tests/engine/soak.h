// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdlib>

namespace hingepin {

/// Whether tests/soak runs the test, which then need not be quick.
inline bool isSoaking() { return std::getenv("HINGEPIN_SOAK") != nullptr; }

/// How many random cases a test tries: `usual` of them, ten times as many while soaking.
inline unsigned cases(unsigned usual) { return isSoaking() ? 10 * usual : usual; }

}  // namespace hingepin
