// SPDX-License-Identifier: Apache-2.0
#include "engine/session/fitting.h"

#include <gmock/gmock.h>

#include <nlohmann/json.hpp>

#include "engine/calibration/calibration.h"
#include "engine/session/proof_readings.h"
#include "engine/units/ucum.h"
#include "tests/engine/session/practice.h"
#include "tests/engine/session/yard.h"

namespace hingepin::session {
namespace {

using Json = nlohmann::json;

/// A small teaching procedure of the test's own: poses, points with and without a mass, two passes.
const char* const kTeaching = R"({
  "format": "hingepin-procedure/1", "id": "teaching", "version": 1, "title": "t", "comes_first": "t",
  "roles": {"run": ["technician"], "confirm": []},
  "cautions": [{"id": "c", "signal": "danger", "covers": ["moving-linkage"], "hazard": "t", "consequence": "t", "avoidance": "t"}],
  "on_failure": {"do": "stop"},
  "steps": [
    {"id": "beware", "kind": "caution", "caution": "c"},
    {"id": "low", "kind": "pose", "text": "t", "zone_clear": "t", "boom": "lowest", "bucket": "racked-back"},
    {"id": "low-angle", "kind": "reading", "text": "t", "quantity": "boom-angle", "unit": "deg", "source": "independent", "plausible": {"low": "-90 deg", "high": "90 deg"}},
    {"id": "low-sensor", "kind": "reading", "text": "t", "quantity": "boom-sensor", "unit": "V", "source": "machine", "plausible": {"low": "0 V", "high": "5 V"}},
    {"id": "high", "kind": "pose", "text": "t", "zone_clear": "t", "boom": "highest", "bucket": "racked-back"},
    {"id": "high-angle", "kind": "reading", "text": "t", "quantity": "boom-angle", "unit": "deg", "source": "independent", "plausible": {"low": "-90 deg", "high": "90 deg"}},
    {"id": "high-sensor", "kind": "reading", "text": "t", "quantity": "boom-sensor", "unit": "V", "source": "machine", "plausible": {"low": "0 V", "high": "5 V"}},
    {"id": "angles", "kind": "check", "text": "t", "check": {"kind": "fit-residual", "of": ["low-angle", "low-sensor", "high-angle", "high-sensor"], "fit": "boom-angle", "at_most": "1 deg"}, "on_failure": {"do": "go-back", "to": "low", "at_most": 2}},
    {"id": "point", "kind": "pose", "text": "t", "zone_clear": "t", "boom": "any", "bucket": "racked-back"},
    {"id": "point-sensor", "kind": "reading", "text": "t", "quantity": "boom-sensor", "unit": "V", "source": "machine", "plausible": {"low": "0 V", "high": "5 V"}},
    {"id": "point-head", "kind": "reading", "text": "t", "quantity": "head-pressure", "unit": "bar", "source": "machine", "plausible": {"low": "0 bar", "high": "400 bar"}, "repeat": {"from": "point", "times": 2}},
    {"id": "mass", "kind": "reading", "text": "t", "quantity": "reference-mass", "unit": "kg", "source": "independent", "plausible": {"low": "0 kg", "high": "9000 kg"}, "use": "calibration"},
    {"id": "held", "kind": "pose", "text": "t", "zone_clear": "t", "boom": "any", "bucket": "racked-back"},
    {"id": "held-sensor", "kind": "reading", "text": "t", "quantity": "boom-sensor", "unit": "V", "source": "machine", "plausible": {"low": "0 V", "high": "5 V"}},
    {"id": "held-head", "kind": "reading", "text": "t", "quantity": "head-pressure", "unit": "bar", "source": "machine", "plausible": {"low": "0 bar", "high": "400 bar"}},
    {"id": "up", "kind": "pass", "text": "t", "zone_clear": "t", "direction": "up", "pace": "fast", "load": "empty", "log": "required"},
    {"id": "loaded", "kind": "pass", "text": "t", "zone_clear": "t", "direction": "up", "pace": "slow", "load": "test-mass", "log": "required"},
    {"id": "seen", "kind": "reading", "text": "t", "quantity": "head-pressure", "unit": "bar", "source": "machine", "plausible": {"low": "0 bar", "high": "400 bar"}, "use": "record"},
    {"id": "pressures", "kind": "check", "text": "t", "check": {"kind": "fit-residual", "of": ["point-sensor", "point-head", "held-sensor", "held-head", "up", "loaded"], "fit": "lift-pressure", "at_most": "3 bar"}, "on_failure": {"do": "stop"}}
  ],
  "make_safe": [], "tag": "t"
})";

NewJob teaching(Yard& yard) {
  NewJob job = yard.jobOf("walk-round");
  job.procedure_text = kTeaching;
  job.own_words = {{"t", "..."}};
  return job;
}

void know(Yard& yard) {
  const auto files = practiceFiles();
  yard.logs = {{"up", files.at("empty-fast.csv")}, {"loaded", files.at("mass-1.csv")}};
  yard.says = {{"low-angle", {"-39.7 deg"}},
               {"low-sensor", {"0.71 V"}},
               {"high-angle", {"48.1 deg"}},
               {"high-sensor", {"4.22 V"}},
               {"point-sensor", {"2.15 V", "2.47 V"}},
               {"point-head", {"44 bar", "45 bar"}},
               {"mass", {"2000 kg"}},
               {"held-sensor", {"2.31 V"}},
               {"held-head", {"79 bar"}},
               {"seen", {"50 bar"}}};
}

Json jobFileOf(const OpenJob& job) {
  const auto text =
      calibrationJobOf(job.procedure, job.state, job.unit, job.attachment ? &*job.attachment : nullptr);
  return text ? Json::parse(*text) : Json();
}

TEST(FittingTest, ReadingsBelongToThePoseAndTheMassBeforeThem) {
  Yard yard;
  know(yard);
  OpenJob job = need(yard.tryBegin(teaching(yard)));
  EXPECT_TRUE(jobFileOf(job).is_null());
  ASSERT_EQ(yard.work(job, "pressures"), "");
  const Json file = jobFileOf(job);
  EXPECT_EQ(file.at("unit").at("id"), "L-27");
  EXPECT_EQ(file.at("attachment").at("id"), "GP-2.7");
  EXPECT_EQ(file.at("gravity"), "9.80665 m/s2");
  EXPECT_EQ(file.at("poses"), Json::parse(R"([
    {"pose": "boom-lowest", "boom_angle": "-39.7 deg", "boom_sensor": "0.71 V"},
    {"pose": "boom-highest", "boom_angle": "48.1 deg", "boom_sensor": "4.22 V"}])"));
  const Json& lifts = file.at("lifts");
  ASSERT_EQ(lifts.size(), 4U);
  EXPECT_EQ(lifts[0].at("pace"), "fast");
  EXPECT_EQ(lifts[0].at("log"), records::hashName(yard.logs.at("up")));
  EXPECT_EQ(lifts[1].at("direction"), "up");
  EXPECT_EQ(lifts[1].at("kind"), "test-mass");
  EXPECT_EQ(lifts[1].at("mass"), "2000 kg");
  EXPECT_EQ(lifts[2], Json::parse(R"({"kind": "empty", "points": [
    {"boom_sensor": "2.15 V", "head_pressure": "44 bar"}, {"boom_sensor": "2.47 V", "head_pressure": "45 bar"}]})"));
  EXPECT_EQ(lifts[3], Json::parse(R"({"kind": "test-mass", "mass": "2000 kg", "points": [
    {"boom_sensor": "2.31 V", "head_pressure": "79 bar"}]})"));
}

TEST(FittingTest, ReadingsThatContradictEachOtherFailTheCheckAndAreTakenAgain) {
  Yard yard;
  know(yard);
  yard.says["high-sensor"] = {"0.71 V", "4.22 V"};
  OpenJob job = need(yard.tryBegin(teaching(yard)));
  ASSERT_EQ(yard.work(job, "point"), "");
  std::vector<std::string> checks;
  for (const procedures::Try& each : job.state.tries) {
    if (each.event.about == "angles")
      checks.push_back(each.reason + (each.outcome == procedures::Outcome::Passed ? "passed" : ""));
  }
  EXPECT_THAT(checks, testing::ElementsAre("poses-share-one-reading", "passed"));
  // The first round stays, and no longer counts.
  EXPECT_EQ(jobFileOf(job).at("poses").size(), 2U);
}

TEST(FittingTest, ALogThatCannotBeReadIsRefusedWhenItIsHandedIn) {
  Yard yard;
  know(yard);
  const OpenJob job = need(yard.tryBegin(teaching(yard)));
  const auto kept = keepFile(yard.store, job, "up", "time [s],boom_sensor [V]\n1,2\n", "my.csv",
                             folder::fillBytes, yard.now, folder::edge());
  ASSERT_FALSE(kept.has_value());
  EXPECT_EQ(kept.error().place.file, "my.csv");
}

TEST(FittingTest, AJobThatTaughtSetsWhatHoldsForUnitAndAttachment) {
  Yard yard;
  know(yard);
  OpenJob job = need(yard.tryBegin(teaching(yard)));
  ASSERT_EQ(yard.work(job), "");
  ASSERT_EQ(job.state.phase, procedures::Phase::Done);
  const std::string record = need(yard.seal(job));
  const store::Pair pair = need(yard.store.pair("L-27", "GP-2.7")).value();
  EXPECT_EQ(pair.record, record);
  EXPECT_EQ(pair.due_utc_ms, yard.now.utc_ms + 2160 * 3'600'000LL);
  EXPECT_THAT(pair.restrictions, testing::IsEmpty());
  const JsonValue content = need(recordOf(yard.store, record)).content;
  EXPECT_EQ(textAt(content, {"calibration", "hash"}), pair.calibration);
  // The job file that is kept gives the calibration that is kept.
  const auto blob = [&](const std::string& hash) { return need(yard.store.blob(hash)).value(); };
  const auto again = need(calibration::calibrate(need(folder::edge().read_job(
      blob(textAt(content, {"calibration", "job_file"})),
      [&](const std::string& hash) -> Expected<std::string> { return blob(hash); }))));
  EXPECT_EQ(folder::edge().write_calibration(again), blob(pair.calibration));
  EXPECT_THAT(need(yard.store.due(yard.now.utc_ms)), testing::IsEmpty());
  EXPECT_THAT(need(yard.store.due(*pair.due_utc_ms)), testing::SizeIs(1));
}

/// A yard with its walk-round done, which can teach and prove by the practice unit's logs.
void knowLogged(Yard& yard) {
  yard.says = {{"hours", {"4211 h"}}, {"fuel", {"80 %"}}};
  OpenJob round = yard.begin("walk-round");
  ASSERT_EQ(yard.work(round), "");
  static_cast<void>(need(yard.seal(round)));
  const auto files = practiceFiles();
  yard.logs = {{"log-slow", files.at("empty-slow-1.csv")}, {"log-down", files.at("empty-down.csv")},
               {"log-fast", files.at("empty-fast.csv")},   {"log-mass", files.at("mass-1.csv")},
               {"prove-lift", files.at("mass-2.csv")},     {"prove-lift-slow", files.at("mass-3.csv")}};
  yard.says = {{"found-oil", {"50 Cel"}},
               {"found-empty", {"10 kg"}},
               {"found-mass", {"2000 kg"}},
               {"found-shown", {"2010 kg"}},
               {"pitch", {"0.2 deg"}},
               {"oil", {"52 Cel"}},
               {"lowest-angle", {"-39.7 deg"}},
               {"lowest-sensor", {"0.71 V"}},
               {"level-angle", {"3.0 deg"}},
               {"level-sensor", {"2.43 V"}},
               {"level-bucket-sensor", {"2.71 V"}},
               {"dumped-boom-sensor", {"2.43 V"}},
               {"dumped-bucket-sensor", {"1.75 V"}},
               {"highest-angle", {"48.1 deg"}},
               {"highest-sensor", {"4.22 V"}},
               {"log-mass-known", {"2000 kg"}},
               {"zero-shown", {"0 kg"}},
               {"prove-mass", {"2000 kg"}},
               {"prove-shown", {"2005 kg"}},
               {"prove-shown-slow", {"2005 kg"}},
               {"upper-set", {"3.41 m"}},
               {"lower-set", {"300 mm"}},
               {"heel-set", {"305 mm"}},
               {"upper-reached", {"3.42 m"}},
               {"lower-reached", {"305 mm"}},
               {"heel-reached", {"310 mm"}}};
}

TEST(FittingTest, TheEngineWeighsTheLiftsThatProveWhatItTaught) {
  Yard yard;
  knowLogged(yard);
  OpenJob job = yard.begin("after-attachment-change", "logged");
  const auto weighed = [&](const std::string& step) {
    return need(weighedLift(yard.store, job, *procedures::findStep(job.procedure, step), folder::edge()));
  };
  ASSERT_EQ(yard.work(job, "zero-shown"), "");
  EXPECT_FALSE(weighed("zero-shown")) << "a lift without a log";
  EXPECT_FALSE(weighed("prove-mass")) << "no indication";
  ASSERT_EQ(yard.work(job, "prove-shown"), "");
  // One is read off the monitor, as if the machine showed one; the others are weighed.
  need(yard.tell(job, yard.honest(job)));
  while (procedures::prompt(job.procedure, job.state).about != "mass-prove-out-off") {
    procedures::Event event = yard.honest(job);
    if (event.type == procedures::EventType::Reading) {
      const std::optional<WeighedLift> lift = weighed(event.about);
      ASSERT_TRUE(lift) << event.about;
      EXPECT_NEAR(readSi(lift->value, Dimension::Mass).value_or(0.0), 2000.0, lift->expanded_kg)
          << "the mass of these invented logs";
      EXPECT_LT(lift->expanded_kg, 60.0);
      event.value = lift->value;
      event.how = procedures::How::Log;
    }
    need(yard.tell(job, event));
  }
  // It holds: the job did not go back to the teaching.
  const procedures::Step& check = *procedures::findStep(job.procedure, "prove-error");
  const JsonValue content = contentBefore(job, check);
  const std::optional<RecordedJob> recorded = readRecordedJob(content);
  const auto read = readingsOfCheck(*recorded, job.procedure, recorded->tries.size() - 1, factsOf(job.unit));
  ASSERT_TRUE(read);
  std::vector<std::string> series;
  for (const ProofReadings::Known& each : read->masses) {
    series.push_back(each.pace + (each.weighed ? " weighed " : " shown ") +
                     std::to_string(each.indications.size()));
  }
  EXPECT_THAT(series, testing::ElementsAre("fast shown 1", "fast weighed 4", "slow weighed 3"));
}

TEST(FittingTest, AProofWeighsByTheCalibrationThatHoldsAndNamesIt) {
  Yard yard;
  knowLogged(yard);
  const auto weighed = [&](const OpenJob& job, const std::string& step) {
    return need(weighedLift(yard.store, job, *procedures::findStep(job.procedure, step), folder::edge()));
  };
  const auto prove = [&] {
    yard.logs["lift-slow"] = practiceFiles().at("mass-3.csv");
    yard.says["mass"] = {"2000 kg"};
    OpenJob job = yard.begin("scale-proof", "masses");
    EXPECT_EQ(yard.work(job, "shown-slow"), "");
    return job;
  };
  EXPECT_FALSE(weighed(prove(), "shown-slow")) << "no calibration holds yet";
  OpenJob teaching = yard.begin("after-attachment-change", "logged");
  ASSERT_EQ(yard.work(teaching), "");
  ASSERT_EQ(teaching.state.phase, procedures::Phase::Done);
  static_cast<void>(need(yard.seal(teaching)));
  const std::string calibration = need(yard.store.pair("L-27", "GP-2.7")).value().calibration;
  ASSERT_NE(calibration, "");

  OpenJob job = prove();
  const std::optional<WeighedLift> lift = weighed(job, "shown-slow");
  ASSERT_TRUE(lift);
  EXPECT_EQ(lift->calibration, calibration);
  EXPECT_NEAR(readSi(lift->value, Dimension::Mass).value_or(0.0), 2000.0, lift->expanded_kg);
  EXPECT_FALSE(weighed(job, "zero-shown")) << "a lift without a log";
  procedures::Event event = yard.honest(job);
  event.value = lift->value;
  event.how = procedures::How::Log;
  event.hashes = {lift->calibration};
  need(yard.tell(job, event));
  EXPECT_THAT(job.state.tries.back().event.hashes, testing::ElementsAre(calibration));
}

TEST(FittingTest, WhatIsTaughtAnewIsNotWeighedByWhatHeldBefore) {
  Yard yard;
  knowLogged(yard);
  OpenJob first = yard.begin("after-attachment-change", "logged");
  ASSERT_EQ(yard.work(first), "");
  static_cast<void>(need(yard.seal(first)));
  yard.logs.erase("log-slow");
  yard.says["routine-mass-known"] = {"2000 kg"};
  OpenJob again = yard.begin("after-attachment-change", "own-routine");
  yard.logs["found-lift"] = practiceFiles().at("mass-2.csv");
  ASSERT_EQ(yard.work(again, "found-shown"), "");
  const auto found = need(
      weighedLift(yard.store, again, *procedures::findStep(again.procedure, "found-shown"), folder::edge()));
  ASSERT_TRUE(found) << "as found it is what held before";
  EXPECT_NE(found->calibration, "");
  ASSERT_EQ(yard.work(again, "prove-shown"), "");
  EXPECT_FALSE(need(
      weighedLift(yard.store, again, *procedures::findStep(again.procedure, "prove-shown"), folder::edge())));
}

/// Both kinds of job file must give the same: the one of the job's readings, and one put together by hand.
TEST(FittingTest, TheResidualIsThatOfTheCalibrationItself) {
  const auto files = practiceFiles();
  Json file = {
      {"format", "hingepin-job/1"},
      {"unit", Json::parse(testFile("files/unit.json")).at("unit")},
      {"poses", Json::parse(R"([{"pose": "boom-lowest", "boom_angle": "-39.7 deg", "boom_sensor": "0.71 V"},
                                         {"pose": "boom-highest", "boom_angle": "48.1 deg", "boom_sensor": "4.22 V"}])")},
      {"lifts",
       Json::parse(R"([{"kind": "empty", "pace": "fast", "direction": "up", "log": "empty-fast.csv"}])")}};
  const auto job = need(folder::edge().read_job(
      file.dump(), [&](const std::string& name) -> Expected<std::string> { return files.at(name); }));
  const auto calibration = need(calibration::calibrate(job));

  Yard yard;
  know(yard);
  NewJob teach = teaching(yard);
  teach.attachment.clear();
  const std::string steps = teach.procedure_text;
  OpenJob open = need(yard.tryBegin(teach));
  ASSERT_EQ(yard.work(open, "up"), "");
  // Without the points and the mass only the fast pass stays, as in the file above.
  for (procedures::Try& each : open.state.tries) {
    if (each.event.about.starts_with("point-") || each.event.about.starts_with("held-")) each.counts = false;
  }
  procedures::Try pass;
  pass.event.about = "up";
  pass.event.answer = "done";
  pass.event.hashes = {"hash"};
  open.state.tries.push_back(pass);
  const BlobSource logs = [&](const std::string&) -> Expected<std::string> {
    return files.at("empty-fast.csv");
  };
  const procedures::Check check{.kind = procedures::CheckKind::FitResidual,
                                .fit = procedures::Fit::LiftPressure};
  const double residual_Pa =
      need(measureOf(open.procedure, open.state, open.unit, nullptr, folder::edge(), logs)(check, {}));
  ASSERT_EQ(calibration.passes.size(), 1U);
  EXPECT_DOUBLE_EQ(residual_Pa, calibration.passes.front().residual_Pa);
}

}  // namespace
}  // namespace hingepin::session
