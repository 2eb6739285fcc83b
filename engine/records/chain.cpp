// SPDX-License-Identifier: Apache-2.0
#include "engine/records/chain.h"

#include <map>
#include <set>
#include <utility>

namespace hingepin::records {
namespace {

struct Chain {
  std::map<std::int64_t, std::set<std::string>> names_at;  ///< of links here and of known heads
  std::map<std::int64_t, std::vector<const Link*>> links_at;
};

void checkChain(const std::string& key, const std::string& epoch, const Chain& chain,
                std::vector<Finding>& findings) {
  const auto range = [&](const char* code, std::int64_t first, std::int64_t last) {
    findings.push_back(
        {.message = {code,
                     {{"key", key}, {"epoch", epoch}, {"first", countOf(first)}, {"last", countOf(last)}}}});
  };

  std::int64_t expected = 1;
  for (const auto& [sequence, links] : chain.links_at) {
    if (sequence > expected) range("record-missing", expected, sequence - 1);
    expected = sequence + 1;
    const auto before = chain.names_at.find(sequence - 1);
    if (before == chain.names_at.end()) continue;
    for (const Link* link : links) {
      if (before->second.contains(*link->place.previous)) continue;
      findings.push_back({.message = {"record-broken-chain",
                                      {{"record", link->name},
                                       {"sequence", countOf(sequence)},
                                       {"previous", *link->place.previous}}},
                          .subject = link->name});
    }
  }
  const std::int64_t furthest = chain.names_at.rbegin()->first;
  if (furthest >= expected) range("record-not-arrived-yet", expected, furthest);

  // Said once, where the branches part; what follows on each is the same fork.
  std::int64_t last_split = -1;
  for (const auto& [sequence, names] : chain.names_at) {
    if (names.size() < 2) continue;
    if (last_split != sequence - 1) {
      const std::string& first = *names.begin();
      for (auto other = std::next(names.begin()); other != names.end(); ++other) {
        findings.push_back(
            {.message =
                 {"record-fork",
                  {{"key", key}, {"sequence", countOf(sequence)}, {"first", first}, {"second", *other}}},
             .subject = first});
      }
    }
    last_split = sequence;
  }
}

}  // namespace

std::string epochName(std::span<const std::uint8_t, 16> random_bytes) { return base64Url(random_bytes); }

bool isEpoch(std::string_view text) { return text.size() == 22 && fromBase64Url(text).has_value(); }

ChainPlace nextPlace(const std::optional<Head>& head, std::string key, std::string installation,
                     std::string epoch) {
  const bool continues = head && head->epoch == epoch && head->key == key;
  return {.key = std::move(key),
          .installation = std::move(installation),
          .epoch = std::move(epoch),
          .sequence = continues ? head->sequence + 1 : 1,
          .previous = continues ? std::optional(head->name) : std::nullopt};
}

std::vector<Finding> checkChains(std::span<const Link> links, std::span<const Head> known_heads) {
  std::map<std::string, std::map<std::string, Chain>> chains;  // by key, then epoch
  for (const Link& link : links) {
    Chain& chain = chains[link.place.key][link.place.epoch];
    chain.names_at[link.place.sequence].insert(link.name);
    chain.links_at[link.place.sequence].push_back(&link);
  }
  for (const Head& head : known_heads) {
    chains[head.key][head.epoch].names_at[head.sequence].insert(head.name);
  }
  std::vector<Finding> findings;
  for (const auto& [key, epochs] : chains) {
    if (epochs.size() > 1) {
      findings.push_back(
          {.message = {"record-new-epoch", {{"key", key}, {"count", countOf(epochs.size())}}}});
    }
    for (const auto& [epoch, chain] : epochs) checkChain(key, epoch, chain, findings);
  }
  return findings;
}

}  // namespace hingepin::records
