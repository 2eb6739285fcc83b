// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "engine/base/random.h"
#include "engine/records/keys.h"

namespace hingepin::fuzz {

inline constexpr std::string_view kPassphrase = "gravel under the third belt";

/// The only texts that open.
inline std::vector<std::string> wrappedKeys() {
  std::vector<std::string> texts;
  for (const std::uint64_t seed : {1, 2, 3}) {
    const records::FillBytes fill = [random = Random(seed)](std::span<std::uint8_t> bytes) mutable {
      for (std::uint8_t& byte : bytes) byte = static_cast<std::uint8_t>(random.bits() >> 56U);
    };
    const records::SecretKey key = records::newSecretKey(fill);
    const records::PassphraseCost cost{.passes = seed, .memory_KiB = 8 * seed};
    texts.push_back(records::wrapKey(key, kPassphrase, cost, fill).value());
  }
  return texts;
}

}  // namespace hingepin::fuzz
