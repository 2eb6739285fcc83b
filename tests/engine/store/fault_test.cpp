// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "tests/engine/soak.h"
#include "tests/engine/store/fault_cases.h"

namespace hingepin::store {
namespace {

// More cases by hand: fault_harness.
const std::uint64_t kCases = cases(50);

TEST(StoreFaultTest, PowerLossKeepsWhatWasAcknowledgedAndLeavesNothingHalfDone) {
  Tally tally;
  for (std::uint64_t seed = 1; seed <= kCases; ++seed)
    EXPECT_EQ(losePowerCase(seed, tally), "") << "seed " << seed;
  EXPECT_GE(tally.power_losses, 4 * tally.cases);
  EXPECT_GT(tally.acknowledged, 10 * tally.cases);
}

TEST(StoreFaultTest, DiskThatAnswersWithErrorsLosesNothingAcknowledged) {
  Tally tally;
  for (std::uint64_t seed = 1; seed <= kCases; ++seed)
    EXPECT_EQ(faultCase(seed, tally), "") << "seed " << seed;
  EXPECT_GT(tally.faults, tally.cases);
}

}  // namespace
}  // namespace hingepin::store
