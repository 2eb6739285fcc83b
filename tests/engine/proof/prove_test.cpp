// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>

#include "engine/proof/cost.h"
#include "engine/proof/proof.h"
#include "engine/statistics/distributions.h"
#include "tests/engine/proof/kilograms.h"

namespace hingepin::proof {
namespace {

using testing::Contains;
using testing::Field;
using testing::Not;

std::vector<Mass> masses(std::initializer_list<double> values_kg) {
  std::vector<Mass> all;
  for (const double value : values_kg) all.push_back(kg(value));
  return all;
}

/// Invented readings of an invented machine.
Proof example() {
  Proof proof;
  proof.unit = "L-27";
  proof.rated_payload = kg(4500);
  proof.tolerance = PercentLimit{Fraction::fromPercent(1)};
  proof.decision = {.rule = Rule::Guarded};
  proof.display_step = kg(1);
  proof.zero_indications = masses({5, 0, 5});
  proof.masses.push_back({.reference = kg(2000),
                          .reference_u = kg(1),
                          .pace = ProofPace::Slow,
                          .approach = {},
                          .indications = masses({1985, 1990, 1992})});
  return proof;
}

TruckLoad truck(double gross_kg, double tare_kg, std::initializer_list<double> indications_kg) {
  TruckLoad load;
  load.gross = kg(gross_kg);
  load.tare = kg(tare_kg);
  load.scale.interval = kg(20);
  load.indications = masses(indications_kg);
  return load;
}

auto hasCode(const char* code) { return Contains(Field(&Message::code, code)); }

TEST(ProveTest, ErrorRepeatabilityAndLimitAreThoseOfTheReadings) {
  const ProofResult result = prove(example()).value();
  const Judgement& mass = result.masses.at(0);
  EXPECT_NEAR(mass.error.value_kg, -11.0, 1e-9);
  // By hand: deviations -4, 1, 3 of the mean 1989.
  EXPECT_NEAR(*mass.repeatability_kg, std::sqrt(26.0 / 2.0), 1e-9);
  EXPECT_NEAR(mass.limit_kg, 20.0, 1e-9);
  EXPECT_NEAR(mass.error.doubt.scatter_u_kg, std::sqrt(26.0 / 2.0 / 3.0), 1e-9);
  // Between Welch-Satterthwaite (GUM G.4: 3.03 degrees of freedom, so k = 3.31) and t and normal convolved.
  EXPECT_GT(mass.error.expanded_uncertainty_kg, 3.307 * std::hypot(std::sqrt(26.0 / 6.0), 1.0));
  EXPECT_LT(mass.error.expanded_uncertainty_kg, std::hypot(4.527 * std::sqrt(26.0 / 6.0), 2.0));
}

// Twenty temperatures, their mean 100.14, their standard deviation 1.49, that of the mean 0.33.
// Source: JCGM 100:2008 (GUM) 4.4.3 and table 1, from memory; the readings give the three figures again.
TEST(ProveTest, RepeatabilityIsThatOfTheGumsTwentyTemperatures) {
  Proof proof = example();
  proof.tolerance = PercentLimit{Fraction::fromPercent(5)};
  proof.display_step = kg(0.01);
  proof.masses = {{.reference = kg(100),
                   .reference_u = kg(0),
                   .pace = {},
                   .approach = {},
                   .indications = masses({96.90,  98.18,  98.25,  98.61,  99.03,  99.49,  99.56,
                                          99.74,  99.89,  100.07, 100.33, 100.42, 100.68, 100.95,
                                          101.11, 101.20, 101.57, 101.84, 102.36, 102.72})}};
  const Judgement mass = prove(proof).value().masses.at(0);
  EXPECT_NEAR(mass.indication_kg, 100.145, 0.006);
  EXPECT_NEAR(*mass.repeatability_kg, 1.489, 0.002);
  EXPECT_NEAR(mass.error.doubt.scatter_u_kg, 0.333, 0.001);
  EXPECT_EQ(mass.error.doubt.degrees_of_freedom, 19);
}

TEST(ProveTest, SimpleRuleComparesTheErrorWithTheLimitAlone) {
  Proof proof = example();
  proof.decision = {};
  EXPECT_EQ(prove(proof)->verdict, Verdict::Holds);
  proof.masses[0].indications = masses({1979, 1980, 1979});
  EXPECT_EQ(prove(proof)->verdict, Verdict::DoesNotHold);
  proof.masses[0].indications = masses({1980, 1980});  // the limit itself is allowed
  EXPECT_EQ(prove(proof)->verdict, Verdict::Holds);
}

TEST(ProveTest, GuardedRuleHasThreeVerdictsAndSaysWhatWouldDecide) {
  Proof proof = example();
  proof.masses[0].indications = masses({1999, 2001, 2000, 2000});
  Judgement judged = prove(proof)->masses[0];
  EXPECT_EQ(judged.verdict, Verdict::Holds);
  EXPECT_NEAR(judged.risk, 1.0 - judged.probability_of_conformity, 1e-12);
  EXPECT_FALSE(judged.readings_to_decide);

  proof.masses[0].indications = masses({1949, 1951, 1950, 1950});
  judged = prove(proof)->masses[0];
  EXPECT_EQ(judged.verdict, Verdict::DoesNotHold);
  EXPECT_NEAR(judged.risk, judged.probability_of_conformity, 1e-12);

  proof.masses[0].indications = masses({1978, 1990, 1984});
  judged = prove(proof)->masses[0];
  EXPECT_EQ(judged.verdict, Verdict::Undecided);
  ASSERT_TRUE(judged.readings_to_decide);
  EXPECT_GT(*judged.readings_to_decide, 3);

  // An error at the limit itself is never decided.
  proof.masses[0].indications = masses({1980, 1981, 1979});
  judged = prove(proof)->masses[0];
  EXPECT_EQ(judged.verdict, Verdict::Undecided);
  EXPECT_FALSE(judged.readings_to_decide);
  EXPECT_EQ(sayMore(judged).code, "proof-more-readings-do-not-decide");
}

TEST(ProveTest, OverallVerdictIsTheWorstOfAll) {
  Proof proof = example();
  proof.decision = {};
  KnownMass second = proof.masses[0];
  second.reference = kg(4000);
  second.indications = masses({4000, 4001});
  proof.masses.push_back(second);
  EXPECT_EQ(prove(proof)->verdict, Verdict::Holds);
  proof.masses[1].indications = masses({4100, 4101});
  const ProofResult result = prove(proof).value();
  EXPECT_EQ(result.verdict, Verdict::DoesNotHold);
  EXPECT_EQ(result.probability_of_conformity,
            std::min(result.masses[0].probability_of_conformity, result.masses[1].probability_of_conformity));
}

TEST(ProveTest, SingleReadingBorrowsItsScatterOrStaysUndecided) {
  Proof proof = example();
  proof.masses.push_back({.reference = kg(1000),
                          .reference_u = kg(1),
                          .pace = {},
                          .approach = {},
                          .indications = masses({1000})});
  ProofResult result = prove(proof).value();
  EXPECT_FALSE(result.masses[1].repeatability_kg);
  EXPECT_TRUE(result.masses[1].scatter_known);
  EXPECT_THAT(result.masses[1].warnings, hasCode("single-reading"));

  proof.masses.erase(proof.masses.begin());
  result = prove(proof).value();
  EXPECT_FALSE(result.masses[0].scatter_known);
  EXPECT_EQ(result.masses[0].verdict, Verdict::Undecided);
  EXPECT_THAT(result.masses[0].warnings, hasCode("scatter-unknown"));
}

TEST(ProveTest, StepIsTheLargestThatAllIndicationsFit) {
  EXPECT_NEAR(stepOf(masses({1985, 1990, 0}), kg(1), kg(45)).inKilograms(), 5, 1e-12);
  EXPECT_NEAR(stepOf(masses({1985, 1992}), kg(1), kg(45)).inKilograms(), 1, 1e-12);
  EXPECT_NEAR(stepOf(masses({1985.2, 1990.4}), kg(1), kg(45)).inKilograms(), 0.2, 1e-12);
  EXPECT_NEAR(stepOf(masses({2000, 2000}), kg(1), kg(45)).inKilograms(), 20, 1e-12);
  const Mass pound = kg(0.45359237);
  EXPECT_NEAR(stepOf({4410 * pound, 4420 * pound}, pound, kg(45)) / pound, 10, 1e-9);
}

TEST(ProveTest, StepWiderThanTheScatterIsSaidToHideIt) {
  Proof proof = example();
  proof.display_step = kg(20);
  proof.masses[0].indications = masses({1980, 1980, 1980});
  const Judgement mass = prove(proof)->masses[0];
  EXPECT_EQ(*mass.repeatability_kg, 0.0);
  EXPECT_THAT(mass.warnings, hasCode("step-hides-scatter"));
  // Half a step may hide.
  EXPECT_GT(mass.error.expanded_uncertainty_kg, 9.0);
}

TEST(ProveTest, TwoLevelsGiveTheLineThroughThem) {
  Proof proof = example();
  const ProofResult result = prove(proof).value();
  ASSERT_TRUE(result.correction);
  const double zero = 10.0 / 3.0;
  EXPECT_NEAR(result.correction->zero_kg, zero, 1e-6);
  EXPECT_NEAR(result.correction->span_factor, 2000.0 / (1989.0 - zero), 1e-6);
  // Corrected, the mean reading is the mass.
  EXPECT_NEAR((1989.0 - result.correction->zero_kg) * result.correction->span_factor, 2000.0, 1e-3);
}

TEST(ProveTest, OneLevelGivesNoCorrectionButAReason) {
  Proof proof = example();
  proof.zero_indications.clear();
  const ProofResult result = prove(proof).value();
  ASSERT_FALSE(result.correction);
  EXPECT_EQ(result.correction.error().code, "correction-needs-two-levels");
}

TEST(ProveTest, CurvedScaleIsSaidToBeSo) {
  Proof proof = example();
  for (const double load : {1000.0, 3000.0, 4000.0}) {
    proof.masses.push_back({.reference = kg(load),
                            .reference_u = kg(1),
                            .pace = {},
                            .approach = {},
                            .indications = masses({load + load * load / 1e5, load + load * load / 1e5 + 2})});
  }
  const ProofResult result = prove(proof).value();
  ASSERT_TRUE(result.correction);
  EXPECT_FALSE(result.correction->straight);
  EXPECT_THAT(result.warnings, hasCode("correction-not-straight"));
}

TEST(ProveTest, HysteresisPaceAndZeroReturnAreDifferencesWithTheirDoubt) {
  Proof proof = example();
  proof.masses[0].approach = Approach::Up;
  KnownMass down = proof.masses[0];
  down.approach = Approach::Down;
  down.indications = masses({1995, 1999, 2003});
  KnownMass fast = proof.masses[0];
  fast.pace = ProofPace::Fast;
  fast.indications = masses({1970, 1973, 1973});
  proof.masses.push_back(down);
  proof.masses.push_back(fast);
  const ProofResult result = prove(proof).value();
  ASSERT_EQ(result.hysteresis.size(), 1u);
  EXPECT_NEAR(result.hysteresis[0].difference.value_kg, 10.0, 1e-9);
  ASSERT_EQ(result.pace.size(), 1u);
  EXPECT_NEAR(result.pace[0].difference.value_kg, -17.0, 1e-9);
  // The reference is the same mass, so its doubt is in neither.
  EXPECT_NEAR(result.pace[0].difference.doubt.scatter_u_kg, std::sqrt(13.0 / 3.0 + 3.0 / 3.0), 1e-9);
  ASSERT_TRUE(result.zero_return);
  EXPECT_NEAR(result.zero_return->value_kg, 0.0, 1e-9);
}

TEST(ProveTest, TruckIsJudgedBySumAgainstNetAndBucketLimits) {
  Proof proof = example();
  proof.trucks = {truck(36120, 13460, {4480, 4535, 4490, 4550, 4520})};
  const Judgement judged = prove(proof)->trucks.at(0);
  EXPECT_NEAR(judged.reference_kg, 22660, 1e-9);
  EXPECT_NEAR(judged.error.value_kg, -85, 1e-9);
  EXPECT_NEAR(judged.limit_kg, 226.6, 1e-9);
  // Scatter of the masses, five times; gross and tare rounded to 20 kg; the scale within 2 e (class III, 1133
  // e).
  const double scatter = std::sqrt(13.0 * 5.0);
  const double scale = std::hypot(20.0 / std::sqrt(6.0), 40.0 / std::sqrt(3.0));
  EXPECT_NEAR(judged.error.standardUncertainty(), std::hypot(scatter, scale), 1e-6);

  // Of the rated payload: each bucket may be off by 45 kg.
  proof.tolerance = PercentLimit{Fraction::fromPercent(1), Of::Rated};
  EXPECT_NEAR(prove(proof)->trucks.at(0).limit_kg, 225.0, 1e-9);
}

TEST(ProveTest, RulesOfGoodWeighingAreSaidUntilTheyAreKept) {
  Proof proof = example();
  TruckLoad load = truck(36120, 13460, {4480, 4535, 4490, 4550, 4520});
  load.scale.legal_gross = kg(36000);
  load.scale.certificate_expires = "2026-05-01";
  load.scale.gross_time = "2026-05-04T10:15";
  load.scale.tare_time = "2026-05-03T10:15";
  proof.trucks = {load};
  for (const char* code :
       {"truck-scale-error-taken", "truck-scale-certificate-missing", "truck-scale-certificate-expired",
        "truck-ticket-missing", "truck-scale-not-zeroed", "truck-not-whole-on-deck",
        "truck-driver-or-fuel-changed", "truck-tare-not-fresh", "truck-over-legal-gross"}) {
    EXPECT_THAT(prove(proof)->trucks[0].warnings, hasCode(code));
  }
  TruckScale& scale = proof.trucks[0].scale;
  scale.net_u = kg(5);
  scale.certificate = "invented-17";
  scale.certificate_expires = "";
  EXPECT_THAT(prove(proof)->trucks[0].warnings, hasCode("truck-scale-expiry-missing"));
  scale.certificate_expires = "2027-01-31";
  scale.gross_ticket = "1";
  scale.tare_ticket = "2";
  scale.tare_time = "2026-05-04T09:40";
  scale.zeroed = scale.whole_on_deck = scale.same_driver_fuel = true;
  scale.legal_gross = kg(40000);
  EXPECT_TRUE(prove(proof)->trucks[0].warnings.empty());
}

TEST(ProveTest, TrucksTogetherDecideSoonerThanOneAlone) {
  Proof proof = example();
  for (int i = 0; i < 4; ++i) proof.trucks.push_back(truck(36120, 13460, {4480, 4535, 4490, 4550, 4520}));
  const ProofResult result = prove(proof).value();
  ASSERT_TRUE(result.trucks_together);
  EXPECT_NEAR(result.trucks_together->error.value_kg, -340, 1e-9);
  EXPECT_NEAR(result.trucks_together->limit_kg, 4 * 226.6, 1e-9);
  EXPECT_GT(result.trucks_together->probability_of_conformity, result.trucks[0].probability_of_conformity);
}

TEST(ProveTest, LoaderOnTheScaleIsJudgedByTheMeanOfItsBuckets) {
  Proof proof = example();
  proof.masses.clear();
  LoaderOnScale loader;
  loader.empty = kg(15240);
  loader.scale.interval = kg(20);
  loader.buckets = {
      {kg(19760), kg(4490)}, {kg(19700), kg(4445)}, {kg(19800), kg(4520)}, {kg(19740), kg(4480)}};
  proof.loader_on_scale = {loader};
  const Judgement judged = prove(proof)->loader_on_scale.at(0);
  EXPECT_NEAR(judged.error.value_kg, (-30 - 15 - 40 - 20) / 4.0, 1e-9);
  EXPECT_NEAR(judged.reference_kg, 4510, 1e-9);
  EXPECT_EQ(judged.count, 4);
  // The empty weighing's rounding is common to all: it does not fall with the number of buckets.
  EXPECT_NEAR(judged.error.doubt.rectangular_half_kg, 10, 1e-9);
}

TEST(ProveTest, LoadBeyondTheSchemeIsSaidWithItsPlace) {
  Proof proof = example();
  proof.tolerance = StepLimit{{{kg(1000), kg(20)}}};
  const Expected<ProofResult> result = prove(proof);
  ASSERT_FALSE(result);
  EXPECT_EQ(result.error().kind, ErrorKind::Insufficient);
  EXPECT_EQ(result.error().place.pointer, "/masses/0");
}

TEST(ProveTest, NothingReadCannotBeJudged) {
  Proof proof = example();
  proof.masses[0].indications.clear();
  EXPECT_EQ(prove(proof).error().message.code, "indications-empty");
  proof.masses.clear();
  EXPECT_EQ(prove(proof).error().message.code, "proof-without-readings");
}

TEST(ProveTest, CostIsWhatTheErrorGaveAway) {
  Proof proof = example();
  proof.zero_indications = masses({0, 0, 0});
  proof.masses[0].indications = masses({1980, 1980, 1980});  // shows 1 % less than there is
  proof.costs = Costs{.per_day = kg(990000),
                      .price_per_tonne = 10.0,
                      .currency = "EUR",
                      .trucks_per_day = 20.0,
                      .truck_target = kg(19800),
                      .truck_legal = kg(19900),
                      .buckets_per_truck = 5};
  const Cost cost = prove(proof)->cost.value();
  // 990 t shown were 1000 t.
  EXPECT_NEAR(cost.given_away_t_per_day, 10.0, 1e-3);
  EXPECT_NEAR(*cost.money_per_day, 100.0, 1e-2);
  EXPECT_NEAR(*cost.overload_kg_per_truck, 100.0, 0.1);
  EXPECT_NEAR(*cost.trucks_over_per_day, 20.0, 1e-6);
}

TEST(ProveTest, PlanSaysHowManyBucketsDecideAndWhatOneTruckShows) {
  Proof proof = example();
  proof.plan = Plan{.bucket = kg(4500), .buckets = 5};
  proof.plan->scale_interval = kg(20);
  proof.plan->repeatability = kg(60);
  proof.plan->scale_net_u = kg(10);
  proof.plan->error = kg(20);
  const PlanResult plan = prove(proof)->plan.value();
  ASSERT_TRUE(plan.buckets);
  EXPECT_EQ(*plan.buckets, *plan.trucks * 5);
  EXPECT_GT(*plan.trucks, 1);
  // Normal approximation: N (L - e) >= (z95 + z90) u, with N buckets in N/5 trucks.
  const auto enough = [&](double trucks) {
    const double u =
        std::hypot(60.0 * std::sqrt(5.0 * trucks), 20.0 / std::sqrt(6.0) * std::sqrt(trucks), 10.0 * trucks);
    return 5.0 * trucks * (45.0 - 20.0) >=
           (statistics::normalQuantile(0.95) + statistics::normalQuantile(0.9)) * u;
  };
  EXPECT_TRUE(enough(*plan.trucks));
  EXPECT_FALSE(enough(*plan.trucks - 1));
  // A scale that may be off by more than the limit never decides.
  proof.plan->scale_net_u = kg(400);
  EXPECT_FALSE(prove(proof)->plan->buckets);
}

TEST(ProveTest, PlanForTheLoaderOnTheScaleSaysHowManyWeighingsDecide) {
  Proof proof = example();
  proof.plan = Plan{.bucket = kg(4500), .loader_on_scale = true, .buckets = 5};
  proof.plan->scale_interval = kg(20);
  proof.plan->repeatability = kg(60);
  proof.plan->scale_net_u = kg(3);
  const PlanResult plan = prove(proof)->plan.value();
  ASSERT_TRUE(plan.buckets);
  EXPECT_FALSE(plan.trucks);
  EXPECT_EQ(sayPlan(plan).code, "check-proof-plan");
  // The rounding of the empty weighing is in all of them, so its half interval stays; the scatter of five has
  // four degrees of freedom (GUM table G.2: 2.87 for 95.45 %).
  const double scatter = std::hypot(60.0, 20.0 / std::sqrt(12.0)) / std::sqrt(5.0);
  EXPECT_GT(plan.smallest_error_shown_kg, 2.0 * std::hypot(scatter, 20.0 / std::sqrt(12.0), 3.0));
  EXPECT_LT(plan.smallest_error_shown_kg, 2.87 * std::hypot(scatter, 20.0 / std::sqrt(12.0), 3.0));
  // An interval whose half is beyond the limit never decides.
  proof.plan->scale_interval = kg(100);
  EXPECT_FALSE(prove(proof)->plan->buckets);
  // One weighing tells no scatter, so the simple rule takes two.
  proof.decision.rule = Rule::Simple;
  EXPECT_EQ(prove(proof)->plan->buckets, 2);
}

TEST(ProveTest, ChangeFromFoundToLeftLeavesTheReferencesDoubtOut) {
  Proof found = example();
  Proof left = example();
  left.masses[0].indications = masses({1998, 2000, 2002});
  const std::vector<Change> changes = changesBetween(prove(found).value(), prove(left).value());
  ASSERT_EQ(changes.size(), 1u);
  EXPECT_NEAR(changes[0].difference.value_kg, 11.0, 1e-9);
  EXPECT_NEAR(changes[0].difference.doubt.scatter_u_kg, std::sqrt(13.0 / 3.0 + 4.0 / 3.0), 1e-9);
}

TEST(ProveTest, PriorMovesTheProbabilityAndGivesBothRisksBeforehand) {
  Proof proof = example();
  const double flat = prove(proof)->masses[0].probability_of_conformity;
  proof.decision.prior = Prior{kg(0), kg(5)};
  const Judgement judged = prove(proof)->masses[0];
  EXPECT_GT(judged.probability_of_conformity, flat);
  ASSERT_TRUE(judged.risks_before);
  EXPECT_LT(judged.risks_before->consumers, 0.01);
}

}  // namespace
}  // namespace hingepin::proof
