// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "engine/records/verify.h"

namespace hingepin::fuzz {

/// Makes evidence of bytes. No mutation of a sealed text would ever hold its seal, so the bytes are a script,
/// one line an item, and what stands in it is sealed here with known keys. A line begins with what it is: R1,
/// G1  a record, a further signature: the payload follows, sealed with key 1 L1, L12 a list of signers,
/// sealed with key 1, with keys 1 and 2 T, U    a text as it stands among the statements, among the lists A3,
/// H3  the name of line 3 is accepted as a root; told of as a head N3 NAME line 3 comes once more, under a
/// name P1, Q1, E1  a personal object with salt 1; the same altered; its name, erased In all that follows,
/// <k1> is replaced by the thumbprint of key 1, <x1> by its public key, <e1> by an epoch, <n3> by the name of
/// line 3 (from 0).
struct Script {
  records::Evidence evidence;
  std::vector<std::string> payloads;  ///< of each line, "" where it has none
};

[[nodiscard]] Script readScript(std::string_view text);

/// Key 0 to 9 of the scripts.
[[nodiscard]] const records::SecretKey& scriptKey(std::size_t number);
[[nodiscard]] std::string scriptEpoch(std::size_t number);

}  // namespace hingepin::fuzz
