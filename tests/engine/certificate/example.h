// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <gtest/gtest.h>

#include <string>

#include "engine/certificate/certificate.h"

namespace hingepin::certificate {

/// An invented certificate with everything that one can have: two proofs, a correction, a stop, conditions.
[[nodiscard]] Certificate exampleCertificate();

/// The same with this text wherever somebody's words may stand.
[[nodiscard]] Certificate exampleWith(const std::string& words, const std::string& country);

/// The name of a test of one language.
[[nodiscard]] std::string languageOf(const testing::TestParamInfo<std::string>& language);

}  // namespace hingepin::certificate
