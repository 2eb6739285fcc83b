// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/certificate/certificate.h"

namespace hingepin::certificate {

/// An invented certificate with everything that one can have: two proofs, a correction, a stop, conditions.
[[nodiscard]] Certificate exampleCertificate();

}  // namespace hingepin::certificate
