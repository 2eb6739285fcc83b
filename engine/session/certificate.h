// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/certificate/certificate.h"
#include "engine/session/locale.h"

/// Calibration certificates.
namespace hingepin::session {

/// The engine's words for a certificate's reader.
[[nodiscard]] certificate::Voice voiceOf(const Reader& reader);

}  // namespace hingepin::session
