// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/base/strict_json.h"
#include "engine/proof/proof.h"

namespace hingepin::formats {

/// A proof and the text it was read from, which tells line and column of a JSON Pointer.
struct ProofFile {
  JsonDocument document;
  proof::Proof proof;
};

/// Reads a proof ("hingepin-proof/1").
/// Errors: InvalidInput (malformed, out of range, a class that the scheme does not have, ...), with file,
/// line and JSON Pointer.
[[nodiscard]] Expected<ProofFile> readProof(std::string text, const std::string& file);

/// Reads the terms of a unit's profile: `tolerance` and `decision` as in a proof, both optional.
[[nodiscard]] Expected<proof::Terms> readTerms(const JsonNode& node);

/// The accuracy classes of a tolerance's `scheme`; empty for one that has none.
[[nodiscard]] std::vector<std::string> classesOfScheme(std::string_view scheme);

}  // namespace hingepin::formats
