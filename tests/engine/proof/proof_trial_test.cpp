// SPDX-License-Identifier: Apache-2.0
#include "tests/engine/proof/proof_trial.h"

#include <gtest/gtest.h>

namespace hingepin::proof {
namespace {

// The small version of tests/benchmarks/proof_trial.cpp: four standard deviations of so many draws are let
// by.
constexpr int kProofs = 1500;
const double kChance = 4.0 * std::sqrt(0.95 * 0.05 / kProofs);

TEST(ProofTrialTest, IntervalsHoldTheTruthInNinetyThreeToNinetySevenOfAHundred) {
  for (const Situation& situation :
       {Situation{2, 10.0, 1.0, 1.0}, Situation{2, 10.0, 1.0, 7.0}, Situation{3, 10.0, 1.0, 1.0},
        Situation{3, 10.0, 5.0, 6.0}, Situation{5, 10.0, 10.0, 3.0}, Situation{20, 10.0, 5.0, 2.0}}) {
    const double held = coverage(situation, kProofs, Random(17));
    EXPECT_GT(held, 0.93 - kChance) << situation.readings << " " << situation.reference_u;
    EXPECT_LT(held, 0.97 + kChance) << situation.readings << " " << situation.reference_u;
  }
}

// What rounding shifts stays, however many readings are taken of a scatter far below a step.
TEST(ProofTrialTest, ManyReadingsOnTwoMarksAreHeldToo) {
  EXPECT_GT(coverage({100, 1.5, 10.0, 0.0}, kProofs, Random(18)), 0.93 - kChance);
}

TEST(ProofTrialTest, GuardedAcceptanceAtTheLimitIsRare) {
  for (const Situation& situation :
       {Situation{2, 1.0, 0.5, 1.0}, Situation{3, 4.0, 1.0, 1.0}, Situation{6, 8.0, 5.0, 3.0}}) {
    EXPECT_LE(acceptedAtTheLimit(situation, 20.0, 400, Random(19)), 0.05 + 4.0 * std::sqrt(0.0475 / 400))
        << situation.readings;
  }
}

TEST(ProofTrialTest, AsManyBucketsAsSaidDecideAtTheStatedRate) {
  Loading loading;
  loading.readings = 0;
  const Decided decided = decidedAsPlanned(loading, 60, Random(23));
  EXPECT_GT(decided.buckets, 5);
  EXPECT_GE(decided.share, 0.9 - 4.0 * std::sqrt(0.09 / 60));
}

TEST(ProofTrialTest, AsManyWeighingsOfTheLoaderAsSaidDecideAtTheStatedRate) {
  Loading loading{.on_scale = true, .scatter = 30.0, .scale_u = 3.0};
  loading.readings = 0;
  const Decided decided = decidedAsPlanned(loading, 200, Random(29));
  EXPECT_GT(decided.buckets, 5);
  EXPECT_GE(decided.share, 0.9 - 4.0 * std::sqrt(0.09 / 200));
  EXPECT_GE(decided.held, 0.9545 - 4.0 * std::sqrt(0.0434 / 200));
}

}  // namespace
}  // namespace hingepin::proof
