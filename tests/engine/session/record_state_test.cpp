// SPDX-License-Identifier: Apache-2.0
#include "engine/session/record_state.h"

#include <gmock/gmock.h>

#include "tests/engine/session/yard.h"

namespace hingepin::session {
namespace {

using ::testing::ElementsAre;

/// Value and note of each row, the sign of its verdict before.
std::vector<std::string> said(const std::vector<DocumentRow>& rows) {
  std::vector<std::string> all;
  for (const DocumentRow& row : rows) {
    const char sign = row.verdict == "passed"    ? '+'
                      : row.verdict == "failed"  ? '-'
                      : row.verdict == "warning" ? '!'
                                                 : ' ';
    all.push_back(sign + row.value + (row.note.empty() ? "" : ": " + row.note));
  }
  return all;
}

constexpr const char* kHolds = "+Verified: unaltered, by a key that the yard lists for this role";

TEST(RecordStateTest, ARecordSaysWhereItComesFromWhetherItWasSentAndWhatItsSealIsWorth) {
  Yard yard;
  yard.says = {{"hours", {"4211 h"}}, {"fuel", {"80 %"}}};
  OpenJob job = yard.begin("walk-round");
  ASSERT_EQ(yard.work(job), "");
  const std::string name = need(yard.seal(job));
  const std::string here = yard.technician.id();
  const auto stateOn = [&](const std::string& phone, const std::optional<Error>& last = std::nullopt) {
    return said(need(recordState(yard.store, name, phone, last, {})));
  };
  EXPECT_THAT(stateOn(here),
              ElementsAre(" Sealed on this phone", "!Not sent yet: It waits for the next exchange.", kHolds));
  // What kept the last exchange from being whole is why.
  const Error no_key{ErrorKind::InvalidInput, {"signer-revoked", {{"key", "abc"}}}, {}};
  EXPECT_THAT(stateOn(here, no_key),
              ElementsAre(" Sealed on this phone", "!Not sent yet: Key abc is revoked.", kHolds));
  for (const store::Waiting& each : need(yard.store.waiting())) need(yard.store.sent(each));
  EXPECT_THAT(stateOn(here), ElementsAre(" Sealed on this phone", "+Sent", kHolds));
  EXPECT_THAT(stateOn("another phone"),
              ElementsAre(" Received from the phone of " + here.substr(0, 8), kHolds));
  need(revokeSigner(yard.store, yard.yard_key, here, std::nullopt, yard.now.utc_ms));
  const std::vector<std::string> revoked = stateOn(here);
  ASSERT_EQ(revoked.size(), 3U);
  EXPECT_TRUE(revoked[2].starts_with("-Not believed: Record " + name + " is by a revoked key")) << revoked[2];
  EXPECT_EQ(codeOf(recordState(yard.store, std::string(64, '7'), here, std::nullopt, {})),
            "record-not-in-store");
}

}  // namespace
}  // namespace hingepin::session
