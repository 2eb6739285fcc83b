// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <string>

#include "engine/base/error.h"
#include "engine/records/verify.h"
#include "engine/session/dispute.h"
#include "engine/store/store.h"

/// Sealed texts as files of a folder, which `records verify` reads.
namespace hingepin::folder {

inline constexpr const char* kSealedFile = ".jws.json";
inline constexpr const char* kStatementsPart = "statements";
inline constexpr const char* kSignersPart = "signers";

/// Sealed texts as files, and the keys as a JSON Web Key Set for any JOSE library.
/// @return how many statements
[[nodiscard]] Expected<std::size_t> writeEvidence(const std::string& folder,
                                                  const records::Evidence& evidence);

/// A dispute's answer ("dispute.json") with the records behind it, and those that sign or correct them.
[[nodiscard]] Expected<void> writeDisputeBundle(const std::string& folder, const store::Store& store,
                                                const session::Dispute& dispute);

}  // namespace hingepin::folder
