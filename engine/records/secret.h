// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

#include "engine/base/error.h"
#include "engine/records/keys.h"

namespace hingepin::records {

/// Seals a password so that only the holder of a key can read it: XChaCha20-Poly1305 under a key that BLAKE2b
/// derives from the key's seed; all else in the text is authenticated with it.
/// @return canonical JSON, "hingepin-secret/1"
[[nodiscard]] std::string sealSecret(std::string_view secret, const SecretKey& owner, const FillBytes& fill);

/// Errors: InvalidInput "secret-not-opened": another key's, altered, or not a sealed secret at all.
[[nodiscard]] Expected<std::string> openSecret(std::string_view text, const SecretKey& owner);

}  // namespace hingepin::records
