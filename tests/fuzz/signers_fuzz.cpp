// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <set>

#include "engine/records/encoding.h"
#include "tests/fuzz/json_mutator.h"
#include "tests/fuzz/require.h"
#include "tests/fuzz/script.h"

namespace {

using namespace hingepin;
using namespace hingepin::records;
using fuzz::require;

void readList(const std::string& text) {
  const Expected<ReadSigners> read = readSigners(text);
  if (!read) return fuzz::requireSound(read.error());
  require(read->name == hashName(read->sealed.payload), "a list is named by its payload");
  for (std::size_t key = 0; key < 10; ++key) {
    if (fuzz::scriptKey(key).publicKey() != read->list.yard_key) continue;
    const Expected<SealedSigners> sealed = sealSigners(read->list, fuzz::scriptKey(key));
    require(sealed && sealed->name == read->name, "a list is written as the same bytes");
  }
}

std::multiset<std::string> saidOf(const std::vector<Finding>& findings) {
  std::multiset<std::string> said;
  for (const Finding& finding : findings) said.insert(finding.message.code + " " + finding.subject);
  return said;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  const std::string_view text = fuzz::textOf(bytes, size);
  const Expected<ReadSigners> raw = readSigners(text);
  if (!raw) fuzz::requireSound(raw.error());

  const Evidence evidence = fuzz::readScript(text).evidence;
  for (const StoredText& stored : evidence.signers_lists) readList(stored.text);
  const SignersVerdict verdict = newestSigners(evidence.signers_lists, evidence.accepted_roots);
  require(verdict.list.has_value() != verdict.name.empty(), "a list and its name come together");
  if (verdict.list) {
    const bool here = std::ranges::any_of(evidence.signers_lists, [&](const StoredText& stored) {
      const Expected<ReadSigners> read = readSigners(stored.text);
      return read && read->name == verdict.name;
    });
    require(here, "the newest list is one of those that are here");
    require(!evidence.accepted_roots.empty(), "nothing is trusted that no person accepted");
  } else {
    const bool said = std::ranges::any_of(
        verdict.findings, [](const Finding& finding) { return finding.message.code == "signers-none"; });
    require(said, "no list: said so");
  }

  std::vector<StoredText> other(evidence.signers_lists.rbegin(), evidence.signers_lists.rend());
  other.insert(other.end(), evidence.signers_lists.begin(), evidence.signers_lists.end());
  const SignersVerdict again = newestSigners(other, evidence.accepted_roots);
  require(again.name == verdict.name, "order and repetition do not change which list is the newest");
  require(saidOf(again.findings) == saidOf(verdict.findings), "nor what is found");
  return 0;
}

HINGEPIN_MUTATE_JSON(true)
