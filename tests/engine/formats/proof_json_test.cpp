// SPDX-License-Identifier: Apache-2.0
#include "engine/formats/proof_json.h"

#include <gtest/gtest.h>

#include <string>

#include "tests/engine/formats/samples.h"

namespace hingepin::formats {
namespace {

using proof::Proof;

/// The sample with `from` (which must be there) replaced by `to`.
/// "code pointer" of the error.
std::string faultOfProof(const std::string& text) {
  const Expected<ProofFile> file = readProof(text, "yard/proof.json");
  if (file) return "";
  EXPECT_EQ(file.error().kind, ErrorKind::InvalidInput) << file.error().message.code;
  EXPECT_GT(file.error().place.line, 0U) << file.error().message.code;
  return file.error().message.code + " " + file.error().place.pointer;
}

TEST(ProofJsonTest, ReadsEveryKey) {
  const Expected<ProofFile> file = readProof(kSampleProof, "yard/proof.json");
  ASSERT_TRUE(file) << file.error().message.code << " " << file.error().place.pointer;
  const Proof& proof = file->proof;
  EXPECT_EQ(proof.unit, "L-27");
  EXPECT_EQ(proof.when, proof::When::AsLeft);
  EXPECT_EQ(proof.rated_payload->inKilograms(), 4500);
  const auto& percent = std::get<proof::PercentLimit>(proof.tolerance);
  EXPECT_EQ(percent.limit.inOnes(), 0.01);
  EXPECT_EQ(percent.of, proof::Of::Rated);
  EXPECT_EQ(proof.decision.rule, proof::Rule::Guarded);
  EXPECT_EQ(proof.decision.confidence, 0.9);
  EXPECT_EQ(proof.decision.prior->mean.inKilograms(), 2);
  EXPECT_EQ(proof.decision.prior->u.inKilograms(), 15);
  EXPECT_EQ(proof.display_step->inKilograms(), 5);
  EXPECT_EQ(proof.display_unit.inKilograms(), 1);
  ASSERT_EQ(proof.zero_indications.size(), 2U);
  EXPECT_EQ(proof.zero_indications[1].inKilograms(), -5);
  ASSERT_EQ(proof.masses.size(), 1U);
  EXPECT_EQ(proof.masses[0].reference.inKilograms(), 2000);
  EXPECT_EQ(proof.masses[0].reference_u->inKilograms(), 1);
  EXPECT_EQ(proof.masses[0].pace, proof::ProofPace::Fast);
  EXPECT_EQ(proof.masses[0].approach, proof::Approach::Down);
  EXPECT_EQ(proof.masses[0].indications.at(2).inKilograms(), 1995);
  ASSERT_EQ(proof.trucks.size(), 1U);
  const proof::TruckLoad& truck = proof.trucks[0];
  EXPECT_EQ(truck.gross.inKilograms(), 36120);
  EXPECT_EQ(truck.tare.inKilograms(), 13460);
  EXPECT_EQ(truck.scale.interval.inKilograms(), 20);
  EXPECT_EQ(truck.scale.net_u->inKilograms(), 6);
  EXPECT_EQ(truck.scale.certificate, "invented-17");
  EXPECT_EQ(truck.scale.certificate_expires, "2027-01-31");
  EXPECT_EQ(truck.scale.gross_ticket, "118");
  EXPECT_EQ(truck.scale.tare_ticket, "117");
  EXPECT_EQ(truck.scale.gross_time, "2026-05-04T10:15");
  EXPECT_EQ(truck.scale.tare_time, "2026-05-04T09:40");
  EXPECT_EQ(truck.scale.zeroed, true);
  EXPECT_EQ(truck.scale.whole_on_deck, false);
  EXPECT_EQ(truck.scale.same_driver_fuel, true);
  EXPECT_EQ(truck.scale.legal_gross->inKilograms(), 40000);
  EXPECT_EQ(truck.indications.at(4).inKilograms(), 4520);
  ASSERT_EQ(proof.loader_on_scale.size(), 1U);
  EXPECT_EQ(proof.loader_on_scale[0].empty.inKilograms(), 15240);
  EXPECT_EQ(proof.loader_on_scale[0].buckets.at(0).loaded.inKilograms(), 19760);
  EXPECT_EQ(proof.loader_on_scale[0].buckets.at(0).indication.inKilograms(), 4490);
  EXPECT_EQ(proof.costs->per_day.inKilograms(), 1200000);
  EXPECT_EQ(proof.costs->price_per_tonne, 18.5);
  EXPECT_EQ(proof.costs->currency, "EUR");
  EXPECT_EQ(proof.costs->trucks_per_day, 50);
  EXPECT_EQ(proof.costs->truck_target->inKilograms(), 22500);
  EXPECT_EQ(proof.costs->truck_legal->inKilograms(), 22660);
  EXPECT_EQ(proof.costs->buckets_per_truck, 5);
  EXPECT_EQ(proof.plan->bucket.inKilograms(), 4500);
  EXPECT_EQ(proof.plan->buckets, 5);
  EXPECT_EQ(proof.plan->repeatability->inKilograms(), 30);
  EXPECT_EQ(proof.plan->scale_interval.inKilograms(), 20);
  EXPECT_EQ(proof.plan->scale_net_u->inKilograms(), 6);
  EXPECT_EQ(proof.plan->error->inKilograms(), 20);
  EXPECT_EQ(proof.plan->rate, 0.8);
}

TEST(ProofJsonTest, ReadsEveryScheme) {
  const auto toleranceOf = [](const std::string& text) {
    const Expected<ProofFile> file = readProof(
        R"({"format": "hingepin-proof/1", "unit": "L-27", "tolerance": )" + text + "}", "proof.json");
    EXPECT_TRUE(file) << text;
    return file->proof.tolerance;
  };
  using proof::ClassScheme;
  const auto expectClass = [&](const std::string& scheme, const std::string& name, const std::string& stage,
                               ClassScheme expected, proof::Stage expected_stage) {
    const auto limit = std::get<proof::ClassLimit>(
        toleranceOf(R"({"scheme": ")" + scheme + R"(", "class": ")" + name +
                    R"(", "interval": "50 [lb_av]", "stage": ")" + stage + R"("})"));
    EXPECT_EQ(limit.scheme, expected);
    EXPECT_EQ(limit.accuracy_class, name);
    EXPECT_EQ(limit.stage, expected_stage);
    EXPECT_NEAR(limit.interval.inKilograms(), 22.6796185, 1e-9);
  };
  expectClass("oiml-r76", "IIII", "initial", ClassScheme::OimlR76, proof::Stage::Initial);
  expectClass("oiml-r51", "Y(b)", "in-service", ClassScheme::OimlR51, proof::Stage::InService);
  expectClass("nist-hb44", "III L", "acceptance", ClassScheme::NistHb44, proof::Stage::Initial);
  expectClass("nist-hb44", "III", "maintenance", ClassScheme::NistHb44, proof::Stage::InService);
  const auto steps = std::get<proof::StepLimit>(toleranceOf(
      R"({"scheme": "steps", "steps": [{"up_to": "1000 kg", "limit": "20 kg"}, {"up_to": "2 t", "limit": "30 kg"}]})"));
  EXPECT_EQ(steps.steps.at(1).up_to.inKilograms(), 2000);
  EXPECT_EQ(steps.steps.at(1).limit.inKilograms(), 30);
}

TEST(ProofJsonTest, WhatIsWrongIsSaidWithItsPlace) {
  EXPECT_EQ(faultOfProof("{"), "json-syntax ");
  EXPECT_EQ(faultOfProof(sampleWith(kSampleProof, "proof/1", "proof/2")), "format-unsupported /format");
  EXPECT_EQ(faultOfProof(sampleWith(kSampleProof, "\"unit\"", "\"machine\"")), "json-unknown-key /machine");
  EXPECT_EQ(faultOfProof(sampleWith(kSampleProof, "\"percent\"", "\"per-cent\"")),
            "word-unknown /tolerance/scheme");
  EXPECT_EQ(faultOfProof(sampleWith(kSampleProof, "\"1 %\"", "\"1 kg\"")),
            "unit-wrong-dimension /tolerance/limit");
  EXPECT_EQ(faultOfProof(sampleWith(kSampleProof, "\"1 %\"", "\"90 %\"")),
            "value-out-of-range /tolerance/limit");
  EXPECT_EQ(faultOfProof(sampleWith(kSampleProof, "\"2000 kg\"", "\"2000 m\"")),
            "unit-wrong-dimension /masses/0/reference");
  EXPECT_EQ(faultOfProof(sampleWith(kSampleProof, "\"1995 kg\"", "1995")),
            "json-wrong-kind /masses/0/indications/2");
  EXPECT_EQ(faultOfProof(sampleWith(kSampleProof, "0.9,", "1.2,")),
            "value-out-of-range /decision/confidence");
  EXPECT_EQ(faultOfProof(sampleWith(kSampleProof, ", \"prior_u\": \"15 kg\"", "")),
            "json-missing-key /decision");
  EXPECT_EQ(faultOfProof(sampleWith(kSampleProof, "\"13460 kg\"", "\"43460 kg\"")),
            "tare-not-below-gross /trucks/0/tare");
  EXPECT_EQ(faultOfProof(sampleWith(kSampleProof, "2026-05-04T10:15", "4.5.2026")),
            "day-malformed /trucks/0/gross_time");
  EXPECT_EQ(faultOfProof(sampleWith(kSampleProof, "2027-01-31", "2027-13-31")),
            "day-malformed /trucks/0/certificate_expires");
  EXPECT_EQ(faultOfProof(sampleWith(kSampleProof, "\"zeroed\": true", "\"zeroed\": \"yes\"")),
            "json-wrong-kind /trucks/0/zeroed");
  EXPECT_EQ(faultOfProof(sampleWith(kSampleProof, "\"buckets_per_truck\": 5", "\"buckets_per_truck\": 0")),
            "count-out-of-range /costs/buckets_per_truck");
  const std::string percent = R"({ "scheme": "percent", "limit": "1 %", "of": "rated" })";
  EXPECT_EQ(faultOfProof(sampleWith(
                kSampleProof, percent,
                R"({ "scheme": "oiml-r76", "class": "V", "interval": "20 kg", "stage": "initial" })")),
            "accuracy-class-unknown /tolerance/class");
  EXPECT_EQ(faultOfProof(sampleWith(kSampleProof, percent,
                                    R"({ "scheme": "oiml-r76", "class": "III", "interval": "20 kg" })")),
            "json-missing-key /tolerance");
  EXPECT_EQ(faultOfProof(sampleWith(kSampleProof, percent, R"({ "scheme": "steps", "steps": [] })")),
            "steps-empty /tolerance/steps");
  EXPECT_EQ(faultOfProof(sampleWith(kSampleProof, percent,
                                    R"({ "scheme": "steps", "steps": [{"up_to": "2 t", "limit": "9 kg"},
                                    {"up_to": "1 t", "limit": "9 kg"}] })")),
            "steps-not-increasing /tolerance/steps/1");
}

TEST(ProofJsonTest, IndicationsInPoundsKeepTheirStepInPounds) {
  const Expected<ProofFile> file = readProof(
      R"({"format": "hingepin-proof/1", "unit": "L-27", "rated_payload": "10000 [lb_av]",
          "tolerance": {"scheme": "percent", "limit": "1 %"},
          "masses": [{"reference": "4400 [lb_av]", "indications": ["4390 [lb_av]", "4410 [lb_av]"]}]})",
      "proof.json");
  ASSERT_TRUE(file);
  const auto result = proof::prove(file->proof);
  ASSERT_TRUE(result);
  EXPECT_NEAR(result->display_step_kg, 10 * 0.45359237, 1e-9);
}

}  // namespace
}  // namespace hingepin::formats
