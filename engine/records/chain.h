// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "engine/records/encoding.h"
#include "engine/records/finding.h"

namespace hingepin::records {

/// An epoch is one life of an installation: 16 random bytes that are kept out of every backup, base64url. A
/// phone restored from a backup has lost its epoch, so it begins a new chain instead of continuing a stale
/// one.
[[nodiscard]] std::string epochName(std::span<const std::uint8_t, 16> random_bytes);
[[nodiscard]] bool isEpoch(std::string_view text);

/// Where a record or signature stands. All that one key seals in one epoch makes one chain: numbered from 1,
/// each naming the one before.
struct ChainPlace {
  std::string key;  ///< thumbprint of the key that seals it
  std::string
      installation;  ///< thumbprint of the key of the installation that it was made on; often the same
  std::string epoch;
  std::int64_t sequence = 1;
  std::optional<std::string> previous{};  ///< hash name; missing exactly at sequence 1
};

/// The last known link of a chain.
struct Head {
  std::string key;
  std::string epoch;
  std::int64_t sequence = 0;
  std::string name;
};

/// The place after `head`; the first of a chain where there is none or its epoch is another.
[[nodiscard]] ChainPlace nextPlace(const std::optional<Head>& head, std::string key, std::string installation,
                                   std::string epoch);

/// One link whose seal holds.
struct Link {
  std::string name;
  ChainPlace place;
};

/// Checks chains from links in any order, each once.
/// @param known_heads heads that others have told of
/// @return, by code:
/// "record-broken-chain"     the link before it is here, but is not the one that it names
/// "record-fork"             two links at one place of a chain, or one that is not what a known head says
/// "record-missing"          places that are empty while a later link is here: first to last
/// "record-not-arrived-yet"  places beyond the last link here, up to a known head
/// "record-new-epoch"        the key has more than one chain: its phone was restored or replaced
[[nodiscard]] std::vector<Finding> checkChains(std::span<const Link> links,
                                               std::span<const Head> known_heads);

}  // namespace hingepin::records
