// SPDX-License-Identifier: Apache-2.0
#include "engine/session/job.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>

#include "engine/procedures/journal.h"
#include "engine/records/verify.h"
#include "engine/session/certificate.h"
#include "engine/session/compare.h"
#include "engine/session/dispute.h"
#include "engine/session/overview.h"
#include "engine/session/proof_readings.h"
#include "tests/engine/session/yard.h"

namespace hingepin::session {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

/// Reads of the walk-round.
void knowWalkRound(Yard& yard) { yard.says = {{"hours", {"4211 h"}}, {"fuel", {"80 %"}}}; }

std::string walkRound(Yard& yard) {
  knowWalkRound(yard);
  OpenJob job = yard.begin("walk-round");
  EXPECT_EQ(yard.work(job), "");
  return need(yard.seal(job));
}

TEST(JobTest, TheStateIsThatOfTheJournalAtEveryMoment) {
  Yard yard;
  knowWalkRound(yard);
  OpenJob job = yard.begin("walk-round");
  while (!procedures::hasEnded(job.state.phase)) {
    need(yard.tell(job, yard.honest(job)));
    const OpenJob again = need(openJob(yard.store, job.job.id, folder::edge()));
    ASSERT_EQ(procedures::writeState(again.state), procedures::writeState(job.state));
  }
}

TEST(JobTest, AnEventThatIsRefusedIsNotKept) {
  Yard yard;
  OpenJob job = yard.begin("walk-round");
  const std::string before = procedures::writeState(job.state);
  procedures::Event wrong = yard.honest(job);
  wrong.about = "somewhere-else";
  EXPECT_EQ(codeOf(yard.tell(job, wrong)), "wrong-step");
  EXPECT_EQ(procedures::writeState(job.state), before);
  EXPECT_EQ(need(yard.store.journal(job.job.id)).size(), 1U);
}

TEST(JobTest, AReopenedJobWaitsForAPersonAndHasEveryReading) {
  Yard yard;
  knowWalkRound(yard);
  OpenJob job = yard.begin("walk-round");
  ASSERT_EQ(yard.work(job, "lights"), "");
  const std::size_t kept = job.state.tries.size();
  yard.now = {.at_ms = 5000, .boot = "boot-2", .utc_ms = yard.now.utc_ms + 60'000};
  OpenJob again = need(reopenJob(yard.store, job.job.id, yard.now, folder::edge()));
  EXPECT_EQ(procedures::prompt(again.procedure, again.state).ask, procedures::Ask::Resume);
  ASSERT_EQ(again.state.tries.size(), kept + 1);
  EXPECT_EQ(again.state.tries[kept].event.type, procedures::EventType::Interrupt);
  EXPECT_EQ(procedures::observationsOf(again.procedure, again.state, "hours").size(), 1U);
  EXPECT_EQ(yard.work(again), "");
  EXPECT_EQ(again.state.phase, procedures::Phase::Done);
}

TEST(JobTest, OnlyWhoTheYardListsForTheRoleMayAct) {
  Yard yard;
  const records::SecretKey stranger = records::newSecretKey(folder::fillBytes);
  const auto begunBy = [&](const std::string& key, const std::string& role) {
    return codeOf(beginJob(yard.store, yard.jobOf("walk-round"),
                           {.who = key, .role = role, .device = "phone-1"}, yard.now, folder::edge()));
  };
  EXPECT_EQ(begunBy(stranger.id(), "technician"), "signer-not-listed");
  EXPECT_EQ(begunBy(yard.lead.id(), "technician"), "signer-not-listed");
  EXPECT_EQ(begunBy(yard.technician.id(), "technician"), "");
  yard.now.utc_ms = kMorning - 1;
  EXPECT_EQ(begunBy(yard.technician.id(), "technician"), "signer-outside-validity");
}

TEST(JobTest, ARevokedKeyCannotGoOn) {
  Yard yard;
  OpenJob job = yard.begin("walk-round");
  need(revokeSigner(yard.store, yard.yard_key, yard.technician.id(), std::nullopt, yard.now.utc_ms));
  EXPECT_EQ(codeOf(yard.tell(job, yard.honest(job))), "signer-revoked");
}

TEST(JobTest, AYardWhoseKeyWasLostGoesOnWithANewOne) {
  Yard yard;
  const std::size_t before = need(signersOf(yard.store)).list->signers.size();
  const records::SecretKey new_yard_key = records::newSecretKey(folder::fillBytes);
  const records::SecretKey new_technician = records::newSecretKey(folder::fillBytes);
  const records::Signer signer{.key = new_technician.publicKey(),
                               .role = "technician",
                               .valid_from_utc_ms = yard.now.utc_ms,
                               .valid_until_utc_ms = {}};
  EXPECT_EQ(codeOf(addSigners(yard.store, new_yard_key, {signer}, yard.now.utc_ms)), "yard-key-other");
  need(renewYard(yard.store, new_yard_key, {signer}, yard.now.utc_ms));
  EXPECT_EQ(need(signersOf(yard.store)).list->signers.size(), before + 1);
  for (const std::string& key : {new_technician.id(), yard.technician.id()})
    EXPECT_EQ(codeOf(mayAct(yard.store, key, "technician", yard.now.utc_ms)), "");
  // The lost key may not change the list any more.
  EXPECT_EQ(codeOf(addSigners(yard.store, yard.yard_key, {signer}, yard.now.utc_ms)), "yard-key-other");
}

TEST(JobTest, TheAgeOfWhatWasDoneBeforeIsKnownWithinOneStartOnly) {
  Yard yard;
  EXPECT_EQ(codeOf(yard.tryBegin(yard.jobOf("warm-up"))), "prerequisite-missing");
  walkRound(yard);
  EXPECT_EQ(codeOf(yard.tryBegin(yard.jobOf("warm-up"))), "");
  // 12 h are allowed.
  yard.now.at_ms += 13 * 3'600'000LL;
  EXPECT_EQ(codeOf(yard.tryBegin(yard.jobOf("warm-up"))), "prerequisite-too-old");
  // After a restart nobody knows, whatever the date says.
  yard.now = {.at_ms = 1000, .boot = "boot-2", .utc_ms = yard.now.utc_ms};
  EXPECT_EQ(codeOf(yard.tryBegin(yard.jobOf("warm-up"))), "prerequisite-too-old");
}

TEST(JobTest, WhatFailedSinceIsNotDoneAnyMore) {
  Yard yard;
  walkRound(yard);
  EXPECT_EQ(codeOf(yard.tryBegin(yard.jobOf("warm-up"))), "");
  knowWalkRound(yard);
  yard.says["leaks"] = {"no"};
  OpenJob job = yard.begin("walk-round");
  ASSERT_EQ(yard.work(job), "");
  need(yard.seal(job));
  ASSERT_EQ(need(yard.store.job(job.job.id))->phase, "failed");
  EXPECT_EQ(codeOf(yard.tryBegin(yard.jobOf("warm-up"))), "prerequisite-missing");
  walkRound(yard);
  EXPECT_EQ(codeOf(yard.tryBegin(yard.jobOf("warm-up"))), "");
}

TEST(JobTest, EntriesComeFromTheJobThenTheAttachmentThenTheUnit) {
  Yard yard;
  walkRound(yard);
  NewJob given = yard.jobOf("stops");
  given.entries = {{"lower-height", "280 mm"}};
  const OpenJob job = need(yard.tryBegin(given));
  EXPECT_EQ(job.state.start.entries.at("lower-height"), "280 mm");
  EXPECT_EQ(job.state.start.entries.at("upper-height"), "3.4 m");
  EXPECT_EQ(job.state.start.entries.at("oil-minimum"), "40 Cel");
  given = yard.jobOf("stops");
  given.entries = {{"no-such-entry", "1 m"}};
  EXPECT_EQ(codeOf(yard.tryBegin(given)), "entry-unknown");
}

TEST(JobTest, AUnitIsTaughtOnlyInAWayThatItOffers) {
  Yard yard;
  walkRound(yard);
  std::string profile = testFile("files/unit.json");
  profile.replace(profile.find("\"logged\""), 8, "\"other\"");
  need(yard.store.putUnit({.id = "L-27", .profile = profile}));
  EXPECT_EQ(codeOf(yard.tryBegin(yard.jobOf("after-attachment-change", "logged"))), "teaching-not-offered");
  EXPECT_EQ(codeOf(yard.tryBegin(yard.jobOf("after-attachment-change", "typed-readings"))), "");
}

TEST(JobTest, TheMonitorGivesOnlyWhatItShowsInItsOwnTon) {
  Yard yard;
  knowWalkRound(yard);
  OpenJob job = yard.begin("walk-round");
  ASSERT_EQ(yard.work(job, "hours"), "");
  procedures::Event reading = yard.honest(job);
  reading.value = "252660 min";
  EXPECT_EQ(codeOf(yard.tell(job, reading)), "monitor-shows-other-unit");
  reading.value = "4211 h";
  EXPECT_EQ(codeOf(yard.tell(job, reading)), "");
  job.unit.monitor = {{.quantity = "indication", .unit = "[ston_av]"}};
  procedures::Event fuel = yard.honest(job);
  EXPECT_EQ(codeOf(yard.tell(job, fuel)), "monitor-does-not-show");
}

TEST(JobTest, APhotoCanBeErasedAndAFileStaysByItsHash) {
  Yard yard;
  knowWalkRound(yard);
  OpenJob job = yard.begin("walk-round");
  ASSERT_EQ(yard.work(job), "");
  const std::string record = need(yard.seal(job));
  const auto& personal = need(recordOf(yard.store, record)).personal;
  ASSERT_EQ(personal.size(), 1U);
  EXPECT_EQ(personal.begin()->first, "defect-photo-1");
  need(yard.store.erasePersonal(personal.begin()->second, yard.now.utc_ms));
  const records::Verification verification = records::verify(need(yard.store.evidence()));
  EXPECT_EQ(verification.statements.front().standing, records::Standing::Trusted);
  ASSERT_EQ(verification.findings.size(), 1U);
  EXPECT_EQ(verification.findings.front().message.code, "personal-erased");
}

TEST(JobTest, AYardsOwnProcedureBringsItsOwnWords) {
  Yard yard;
  NewJob own = yard.jobOf("walk-round");
  own.procedure_text.replace(own.procedure_text.find("\"text\": \""), 9, "\"text\": \"our-own-");
  EXPECT_EQ(codeOf(yard.tryBegin(own)), "words-missing");
  const std::size_t from = own.procedure_text.find("our-own-");
  const std::string code = own.procedure_text.substr(from, own.procedure_text.find('"', from) - from);
  own.own_words = {{code, "As our manual says."}};
  EXPECT_EQ(need(yard.tryBegin(own)).words.at(code), "As our manual says.");
}

TEST(JobTest, WhoTakesOverGoesOnAndSeals) {
  Yard yard;
  knowWalkRound(yard);
  OpenJob job = yard.begin("walk-round");
  ASSERT_EQ(yard.work(job, "lights"), "");
  procedures::Event take_over{.type = procedures::EventType::TakeOver,
                              .who = yard.second_technician.id(),
                              .role = "safety-lead",
                              .device = "phone-3"};
  EXPECT_EQ(codeOf(yard.tell(job, take_over)), "signer-not-listed");
  take_over.role = "technician";
  need(yard.tell(job, take_over));
  ASSERT_EQ(yard.work(job), "");
  EXPECT_EQ(codeOf(yard.seal(job)), "not-in-charge");  // the first technician has handed it over
  const Sealer second{.key = yard.second_technician,
                      .role = "technician",
                      .installation = yard.second_technician.id(),
                      .epoch = yard.epoch};
  const JsonValue content =
      need(recordOf(yard.store,
                    need(endJob(yard.store, job, second, "hingepin test", yard.now, folder::edge()))))
          .content;
  std::vector<std::string> keys;
  for (const JsonValue& each : memberAt(content, {"people"})->items) keys.push_back(textAt(each, {"key"}));
  EXPECT_THAT(keys, Contains(yard.technician.id()));
  EXPECT_THAT(keys, Contains(yard.second_technician.id()));
}

TEST(EndTest, AnUnfinishedJobCannotBeSealed) {
  Yard yard;
  const OpenJob job = yard.begin("walk-round");
  EXPECT_EQ(codeOf(yard.seal(job)), "job-not-ended");
}

TEST(EndTest, AJobIsSealedOnceAndByWhoEndedIt) {
  Yard yard;
  knowWalkRound(yard);
  OpenJob job = yard.begin("walk-round");
  ASSERT_EQ(yard.work(job), "");
  EXPECT_EQ(
      codeOf(endJob(
          yard.store, job,
          {.key = yard.lead, .role = "safety-lead", .installation = yard.lead.id(), .epoch = yard.epoch},
          "hingepin test", yard.now, folder::edge())),
      "not-in-charge");
  const std::string record = need(yard.seal(job));
  EXPECT_EQ(codeOf(yard.seal(need(openJob(yard.store, job.job.id, folder::edge())))), "job-sealed-already");
  EXPECT_EQ(need(yard.store.job(job.job.id))->record, record);
}

TEST(EndTest, AJobGivenUpEndsWithItsTagAndNeverAsDone) {
  Yard yard;
  knowWalkRound(yard);
  OpenJob job = yard.begin("walk-round");
  ASSERT_EQ(yard.work(job, "lower"), "");  // the boom is up
  procedures::Event abandon = yard.honest(job);
  abandon.type = procedures::EventType::Abandon;
  need(yard.tell(job, abandon));
  ASSERT_EQ(yard.work(job), "");
  const std::string record = need(yard.seal(job));
  EXPECT_EQ(need(yard.store.job(job.job.id))->phase, "abandoned");
  const JsonValue content = need(recordOf(yard.store, record)).content;
  EXPECT_EQ(textAt(content, {"phase"}), "abandoned");
  EXPECT_EQ(textAt(content, {"tag"}), job.procedure.tag);
  EXPECT_EQ(textAt(content, {"failed_step"}), "lower");
  const std::vector<std::string> tag = need(tagOf(need(openJob(yard.store, job.job.id, folder::edge()))));
  EXPECT_THAT(tag, Contains("L-27"));
  EXPECT_THAT(tag, Contains(record));
  const auto pair = need(yard.store.pair("L-27", "GP-2.7"));
  ASSERT_TRUE(pair.has_value());
  EXPECT_THAT(pair->restrictions, ElementsAre("walk-round/" + job.procedure.tag));
  // The same procedure, done, lifts what it set.
  walkRound(yard);
  EXPECT_THAT(need(yard.store.pair("L-27", "GP-2.7"))->restrictions, IsEmpty());
}

TEST(EndTest, TheTagSpeaksTheLanguageOfItsJob) {
  Yard yard;
  knowWalkRound(yard);
  NewJob begun = yard.jobOf("walk-round");
  begun.language = "de";
  OpenJob job = need(yard.tryBegin(begun));
  ASSERT_EQ(yard.work(job, "lower"), "");
  procedures::Event abandon = yard.honest(job);
  abandon.type = procedures::EventType::Abandon;
  need(yard.tell(job, abandon));
  ASSERT_EQ(yard.work(job), "");
  EXPECT_THAT(need(tagOf(job)), Contains(HasSubstr("Abgebrochen bei")));
}

TEST(EndTest, TheRecordHoldsEveryTryAlsoThoseThatFailed) {
  Yard yard;
  knowWalkRound(yard);
  yard.says["bucket-clean"] = {"no", "yes"};
  OpenJob job = yard.begin("walk-round");
  ASSERT_EQ(yard.work(job), "");
  const JsonValue content = need(recordOf(yard.store, need(yard.seal(job)))).content;
  std::vector<std::string> outcomes;
  for (const JsonValue& each : memberAt(content, {"tries"})->items) {
    if (textAt(each, {"about"}) == "bucket-clean")
      outcomes.push_back(textAt(each, {"answer"}) + " " + textAt(each, {"outcome"}));
  }
  EXPECT_THAT(outcomes, ElementsAre("no failed", "yes passed"));
  EXPECT_EQ(memberAt(content, {"tries"})->items.size(), job.state.tries.size());
}

TEST(EndTest, AReadingIsKeptAsItWasTypedWithItsUnitTimeAndPerson) {
  Yard yard;
  knowWalkRound(yard);
  yard.says["fuel"] = {"80.0 %"};
  OpenJob job = yard.begin("walk-round");
  ASSERT_EQ(yard.work(job), "");
  const JsonValue content = need(recordOf(yard.store, need(yard.seal(job)))).content;
  const auto& tries = memberAt(content, {"tries"})->items;
  const auto fuel =
      std::ranges::find_if(tries, [](const JsonValue& each) { return textAt(each, {"about"}) == "fuel"; });
  ASSERT_NE(fuel, tries.end());
  EXPECT_EQ(textAt(*fuel, {"value"}), "80.0 %");
  EXPECT_EQ(textAt(*fuel, {"quantity"}), "fuel-level");
  EXPECT_EQ(textAt(*fuel, {"how"}), "monitor");
  EXPECT_GT(memberAt(*fuel, {"wall_utc_ms"})->number, 0.0);
  const auto by = static_cast<std::size_t>(memberAt(*fuel, {"by"})->number);
  EXPECT_EQ(textAt(memberAt(content, {"people"})->items[by], {"key"}), yard.technician.id());
  EXPECT_EQ(textAt(content, {"engine"}), "hingepin test");
  EXPECT_EQ(textAt(content, {"procedure", "hash"}),
            records::hashName(procedures::findInLibrary("walk-round")->text));
}

TEST(SignTest, ASecondPersonSignsTheSameRecord) {
  Yard yard;
  const std::string record = walkRound(yard);
  const Sealer lead{
      .key = yard.lead, .role = "safety-lead", .installation = yard.lead.id(), .epoch = yard.epoch};
  need(signRecord(yard.store, record, lead, yard.now));
  EXPECT_EQ(codeOf(signRecord(
                yard.store, record,
                {.key = yard.technician, .role = "technician", .installation = "x", .epoch = yard.epoch},
                yard.now)),
            "record-signed-by-itself");
  EXPECT_EQ(codeOf(signRecord(yard.store, std::string(64, '0'), lead, yard.now)), "record-not-in-store");
  const records::Verification verification = records::verify(need(yard.store.evidence()));
  ASSERT_EQ(verification.statements.size(), 2U);
  for (const auto& each : verification.statements) EXPECT_EQ(each.standing, records::Standing::Trusted);
  EXPECT_THAT(verification.findings, IsEmpty());
}

TEST(SignTest, ACorrectionIsARecordOfItsOwnThatNamesWhatItCorrects) {
  Yard yard;
  const std::string record = walkRound(yard);
  const Sealer technician{.key = yard.technician,
                          .role = "technician",
                          .installation = yard.technician.id(),
                          .epoch = yard.epoch};
  EXPECT_EQ(codeOf(amendRecord(yard.store, record, " \n", technician, yard.now)), "text-empty");
  const std::string correction =
      need(amendRecord(yard.store, record, "The hours were 4212, not 4211.", technician, yard.now));
  const records::Record read = need(recordOf(yard.store, correction));
  EXPECT_EQ(read.amends, record);
  EXPECT_EQ(textAt(read.content, {"correction"}), "The hours were 4212, not 4211.");
  EXPECT_EQ(textAt(read.content, {"unit", "id"}), "L-27");
  const records::Verification verified = records::verify(need(yard.store.evidence()));
  for (const auto& each : verified.statements) EXPECT_EQ(each.standing, records::Standing::Trusted);
  ASSERT_EQ(verified.findings.size(), 1U);
  EXPECT_EQ(verified.findings[0].message.code, "record-amended");
  EXPECT_EQ(verified.findings[0].subject, record);
}

TEST(SignTest, OnOnePhoneTheTwoSignersAreMarked) {
  Yard yard;
  const std::string record = walkRound(yard);
  need(signRecord(
      yard.store, record,
      {.key = yard.lead, .role = "safety-lead", .installation = yard.technician.id(), .epoch = yard.epoch},
      yard.now));
  const records::Verification verification = records::verify(need(yard.store.evidence()));
  ASSERT_EQ(verification.findings.size(), 1U);
  EXPECT_EQ(verification.findings.front().message.code, "record-same-phone");
}

TEST(CompareTest, AChangeHasItsSignInsideTheMarksOfItsDirection) {
  for (const auto& [change, told] :
       std::vector<std::pair<std::string, std::string>>{{"-55 %", "-55 %"},
                                                        {"157 h", "+157 h"},
                                                        {"2 1", "+2"},
                                                        {"\u2068-55 %\u2069", "\u2068-55 %\u2069"},
                                                        {"\u2068157 h\u2069", "\u2068+157 h\u2069"}}) {
    const Message message = messageOf({.step = "read", .before = "1", .after = "2", .change = change});
    EXPECT_EQ(std::get<std::string>(message.values.back().second), told);
  }
}

TEST(CompareTest, WhatDiffersIsSaidByStep) {
  Yard yard;
  const std::string before = walkRound(yard);
  knowWalkRound(yard);
  yard.says["hours"] = {"4260.5 h"};
  yard.says["glass"] = {"no"};
  OpenJob job = yard.begin("walk-round");
  ASSERT_EQ(yard.work(job), "");
  const std::string after = need(yard.seal(job));
  const auto content = [&](const std::string& name) { return need(recordOf(yard.store, name)).content; };
  std::vector<std::string> said;
  for (const Difference& each : need(compareRecords(content(before), content(after)))) {
    said.push_back(each.step + " " + messageOf(each).code + " " + each.before.substr(0, 8) + " " +
                   each.after.substr(0, 8) + " " + each.change);
  }
  EXPECT_THAT(said, Contains("hours difference-value 4211 h 4260.5 h 49.5 h"));
  EXPECT_THAT(said, Contains("glass difference-answer yes no "));
  EXPECT_THAT(said, Contains(HasSubstr("defect-photo difference-photo")));
  EXPECT_THAT(said, Not(Contains(HasSubstr("fuel"))));
  EXPECT_THAT(need(compareRecords(content(before), content(before))),
              testing::SizeIs(1));  // its photo, to be looked at
}

/// A whole proof with two masses on the practice unit, judged by these terms.
OpenJob provedBy(Yard& yard, const std::string& terms, const std::vector<std::string>& shown) {
  std::string profile = testFile("files/unit.json");
  profile.insert(profile.rfind('}'), terms.empty() ? "" : ",\"proof\":" + terms);
  need(yard.store.putUnit({.id = "L-27", .profile = profile}));
  yard.says = {{"oil", {"52 Cel"}},       {"zero-shown", {"0 kg"}}, {"zero-back", {"5 kg"}},
               {"mass", {"2000 kg"}},     {"shown-slow", shown},    {"shown-fast", shown},
               {"attachment", {"right"}}, {"zero", {"set"}}};
  OpenJob job = yard.begin("scale-proof", "masses");
  EXPECT_EQ(yard.work(job), "");
  return job;
}

const procedures::Try& lastOf(const OpenJob& job, const std::string& step) {
  return *std::ranges::find_if(job.state.tries.rbegin(), job.state.tries.rend(),
                               [&](const procedures::Try& each) { return each.event.about == step; });
}

TEST(ProofOfAJobTest, IsJudgedByTheProcedureWhereTheUnitSaysNothing) {
  Yard yard;
  const OpenJob job = provedBy(yard, "", {"2010 kg", "2015 kg", "2010 kg"});
  EXPECT_EQ(job.state.phase, procedures::Phase::Done);
  EXPECT_TRUE(job.state.marks.empty());
  EXPECT_EQ(readSi(lastOf(job, "masses-hold").limit, Dimension::Mass).value_or(0.0), 20.0) << "1 %";
}

TEST(ProofOfAJobTest, IsJudgedByTheTermsOfItsUnit) {
  Yard yard;
  const OpenJob job =
      provedBy(yard, R"({"tolerance":{"scheme":"steps","steps":[{"up_to":"5000 kg","limit":"5 kg"}]}})",
               {"2010 kg", "2015 kg", "2010 kg"});
  EXPECT_EQ(job.state.phase, procedures::Phase::Failed);
  EXPECT_EQ(job.state.failed_step, "masses-hold");
  const procedures::Try& judged = lastOf(job, "masses-hold");
  EXPECT_EQ(judged.reason, "proof-does-not-hold");
  EXPECT_EQ(readSi(judged.limit, Dimension::Mass).value_or(0.0), 5.0);
}

TEST(ProofOfAJobTest, IsJudgedByTheTermsOfTheYardAndKeepsThem) {
  const std::string yards =
      R"({"format":"hingepin-yard/1","proof":{"tolerance":{"scheme":"steps","steps":[{"up_to":"5000 kg","limit":"5 kg"}]}}})";
  Yard yard;
  need(yard.store.putYardProfile(yards));
  const OpenJob job = provedBy(yard, "", {"2010 kg", "2015 kg", "2010 kg"});
  EXPECT_EQ(job.state.phase, procedures::Phase::Failed);
  EXPECT_EQ(readSi(lastOf(job, "masses-hold").limit, Dimension::Mass).value_or(0.0), 5.0);
  // What the yard says later does not change what this job was judged by.
  need(yard.store.putYardProfile(R"({"format":"hingepin-yard/1"})"));
  EXPECT_EQ(need(openJob(yard.store, job.job.id, folder::edge())).state, job.state);

  Yard other;
  need(other.store.putYardProfile(yards));
  const OpenJob own = provedBy(other, R"({"tolerance":{"scheme":"percent","limit":"1 %"}})",
                               {"2010 kg", "2015 kg", "2010 kg"});
  EXPECT_EQ(own.state.phase, procedures::Phase::Done) << "the unit's own comes first";
}

TEST(ProofOfAJobTest, IsLeftOpenWhereNoReadingsDecide) {
  Yard yard;
  // One kilogram from the limit, and the mass itself is known to 2 kg.
  const OpenJob job = provedBy(yard, R"({"decision":{"rule":"guarded","confidence":0.95}})",
                               {"2020 kg", "2015 kg", "2020 kg"});
  EXPECT_EQ(job.state.phase, procedures::Phase::Done);
  ASSERT_FALSE(job.state.marks.empty());
  EXPECT_EQ(job.state.marks.back().mark, "scale-undecided-mark");
  const procedures::Try& judged = lastOf(job, "masses-hold");
  EXPECT_EQ(judged.reason, "proof-undecided");
  const auto said = sayProof(judged.result, judged.reason, judged.limit, judged.more);
  ASSERT_TRUE(said);
  EXPECT_EQ(said->code, judged.more > 0 ? "check-proof-undecided" : "check-proof-never-decides");
}

TEST(ProofOfAJobTest, MoreReadingsDecideWhatFewLeftOpen) {
  Yard yard;
  // Three readings scatter too much to tell; those of one more round agree.
  const OpenJob job = provedBy(yard, R"({"decision":{"rule":"guarded","confidence":0.95}})",
                               {"1950 kg", "2045 kg", "2015 kg", "2000 kg", "2005 kg", "2000 kg"});
  EXPECT_EQ(job.state.phase, procedures::Phase::Done);
  const auto count = std::ranges::count_if(job.state.tries, [](const procedures::Try& each) {
    return each.event.about == "masses-hold" && each.outcome == procedures::Outcome::More;
  });
  EXPECT_GE(count, 1);
  EXPECT_EQ(lastOf(job, "masses-hold").outcome, procedures::Outcome::Passed);
  EXPECT_TRUE(job.state.marks.empty());
}

TEST(ProofOfAJobTest, TheSameJournalIsJudgedAlike) {
  Yard yard;
  const OpenJob job = provedBy(yard, R"({"decision":{"rule":"guarded","confidence":0.95}})",
                               {"1950 kg", "2045 kg", "2015 kg", "2000 kg", "2005 kg", "2000 kg"});
  EXPECT_EQ(need(openJob(yard.store, job.job.id, folder::edge())).state, job.state);
}

/// The loader itself on a truck scale of 10 kg steps, empty and with four buckets.
OpenJob provedOnScale(Yard& yard, const std::string& terms, const std::string& expires = "2026-11-30") {
  std::string profile = testFile("files/unit.json");
  const std::string entries = "\"entries\": {";
  profile.insert(profile.find(entries) + entries.size(), R"("truck-interval": "10 kg",)");
  profile.insert(profile.rfind('}'), R"(,"proof":)" + terms);
  need(yard.store.putUnit({.id = "L-27", .profile = profile}));
  yard.says = {{"oil", {"52 Cel"}},
               {"zero-shown", {"0 kg"}},
               {"attachment", {"right"}},
               {"zero", {"set"}},
               {"truck-scale", {"number 2, certificate 2026-114"}},
               {"truck-expires", {expires}},
               {"bucket-load", {"3000 kg"}},
               {"buckets-on-scale", {"4 1"}},
               {"loader-empty", {"15240 kg"}},
               {"loaded-shown", {"3010 kg", "2945 kg", "3060 kg", "2990 kg"}},
               {"loader-loaded", {"18240 kg", "18180 kg", "18300 kg", "18220 kg"}},
               {"enough", {"another", "another", "another", "enough"}}};
  OpenJob job = yard.begin("scale-proof", "loader");
  EXPECT_EQ(yard.work(job), "");
  return job;
}

constexpr const char* kGuarded =
    R"({"tolerance":{"scheme":"percent","limit":"1 %"},"decision":{"rule":"guarded","confidence":0.95}})";

TEST(ProofOfAJobTest, TheLoaderOnATruckScaleIsJudgedByTheMeanOfItsBuckets) {
  Yard yard;
  const OpenJob job = provedOnScale(yard, kGuarded);
  EXPECT_EQ(job.state.phase, procedures::Phase::Done);
  EXPECT_TRUE(job.state.marks.empty());
  const procedures::Try& judged = lastOf(job, "loader-holds");
  EXPECT_EQ(judged.outcome, procedures::Outcome::Passed);
  // Shown less net: 10, 5, 0, 10 kg; 1 % of their mean net of 2995 kg.
  EXPECT_NEAR(readSi(judged.result, Dimension::Mass).value_or(0.0), 6.25, 0.5);
  EXPECT_NEAR(readSi(judged.limit, Dimension::Mass).value_or(0.0), 29.95, 0.5);

  const procedures::Step& check = *procedures::findStep(job.procedure, "loader-holds");
  const JsonValue content = contentBefore(job, check);
  const std::optional<RecordedJob> recorded = readRecordedJob(content);
  const auto read = readingsOfCheck(*recorded, job.procedure, recorded->tries.size() - 1, factsOf(job.unit));
  ASSERT_TRUE(read);
  ASSERT_EQ(read->proof.loader_on_scale.size(), 1U);
  const proof::LoaderOnScale& loader = read->proof.loader_on_scale[0];
  EXPECT_EQ(loader.empty.inKilograms(), 15240);
  ASSERT_EQ(loader.buckets.size(), 4U);
  EXPECT_EQ(loader.buckets[3].loaded.inKilograms(), 18220);
  EXPECT_EQ(loader.buckets[3].indication.inKilograms(), 2990);
  EXPECT_EQ(loader.scale.interval.inKilograms(), 10);
  EXPECT_EQ(loader.scale.certificate_expires, "2026-11-30");
  EXPECT_TRUE(loader.scale.zeroed && *loader.scale.zeroed);
  EXPECT_TRUE(loader.scale.whole_on_deck && *loader.scale.whole_on_deck);
  EXPECT_TRUE(loader.scale.same_driver_fuel && *loader.scale.same_driver_fuel);
  EXPECT_FALSE(loader.scale.gross_ticket.empty() || loader.scale.tare_ticket.empty());
  EXPECT_LT(loader.scale.tare_time, loader.scale.gross_time);
}

TEST(ProofOfAJobTest, HowManyWeighingsOfTheLoaderDecideIsToldBeforehand) {
  Yard yard;
  const OpenJob job = provedOnScale(yard, kGuarded);
  const procedures::Try& planned = lastOf(job, "plan-on-scale");
  proof::Proof proof;
  proof.tolerance = proof::PercentLimit{.limit = Fraction::fromPercent(1)};
  proof.decision = {.rule = proof::Rule::Guarded};
  proof.plan = proof::Plan{.bucket = Mass::fromKilograms(3000), .loader_on_scale = true, .buckets = 4};
  proof.plan->repeatability = Mass::fromKilograms(20);
  proof.plan->scale_interval = Mass::fromKilograms(10);
  const proof::PlanResult plan = *need(proof::prove(proof)).plan;
  ASSERT_TRUE(plan.buckets);
  EXPECT_EQ(planned.more, *plan.buckets);
  EXPECT_NEAR(readSi(planned.result, Dimension::Mass).value_or(0.0), plan.smallest_error_shown_kg, 0.5);
}

TEST(ProofOfAJobTest, TheCertificateTellsOfTheLoaderOnATruckScale) {
  Yard yard;
  const std::string record = need(yard.seal(provedOnScale(yard, kGuarded, "2026-05-01")));
  const certificate::Certificate made =
      need(certificateOf(yard.store, folder::edge(), record, {}, {.utc_ms = yard.now.utc_ms}));
  ASSERT_EQ(made.proofs.size(), 1U);
  ASSERT_EQ(made.proofs[0].results.size(), 1U);
  const certificate::Result& row = made.proofs[0].results[0];
  EXPECT_EQ(row.what.code, "certificate-loader-on-scale");
  EXPECT_NEAR(row.reference.amount.value, 2995.0, 1e-9);
  EXPECT_EQ(row.reference.readings.size(), 5U) << "empty, and with each bucket";
  EXPECT_EQ(row.indication.readings.size(), 4U);
  EXPECT_NEAR(row.error.amount.value, 6.25, 1e-9);
  std::vector<std::string> said;
  for (const Message& each : made.proofs[0].remarks) said.push_back(each.code);
  EXPECT_THAT(said, Contains("truck-scale-certificate-expired"));
  EXPECT_THAT(said, Not(Contains("truck-ticket-missing")));
  EXPECT_THAT(made.remarks, Contains(HasSubstr("2026-114")));
  // Between Arabic words a day of digits and hyphens would be turned round (Unicode Standard Annex 9, W2,
  // W4).
  const certificate::Certificate arabic = need(
      certificateOf(yard.store, folder::edge(), record, {.language = "ar"}, {.utc_ms = yard.now.utc_ms}));
  EXPECT_THAT(arabic.remarks, Contains(HasSubstr("\u20682026-05-01\u2069")));
}

TEST(ProofOfAJobTest, AProofOnATruckScaleIsInTheHistoryWithTheDoubtOfThatScale) {
  Yard yard;
  const std::string record = need(yard.seal(provedOnScale(yard, kGuarded)));
  const std::vector<HistoryPoint> points = need(historyOf(yard.store, "L-27", ""));
  ASSERT_EQ(points.size(), 1U);
  EXPECT_EQ(points[0].record, record);
  EXPECT_NEAR(points[0].reference_kg.value_or(0), 2995.0, 1e-9);
  EXPECT_NEAR(points[0].error_percent.value_or(0), 6.25 / 2995.0 * 100.0, 1e-9);
  EXPECT_NEAR(points[0].error_limit_percent.value_or(0), 1.0, 0.02);
  EXPECT_EQ(points[0].indications_kg.size(), 4U);
  // OIML R 76-1:2006 Table 6: 299.5 intervals of class III keep 0.5 interval, in service twice that.
  EXPECT_NEAR(points[0].reference_u_kg.value_or(0), std::hypot(10.0 / std::sqrt(3.0), 10.0 / std::sqrt(6.0)),
              1e-9);
  const Dispute dispute = need(disputeOf(yard.store, "L-27", "GP-2.7", yard.now.utc_ms));
  ASSERT_TRUE(dispute.before);
  EXPECT_GT(dispute.before->expanded_percent, 2.0 * *points[0].reference_u_kg / 2995.0 * 100.0);
}

TEST(ProofOfAJobTest, ALoaderThatWasNotWholeOnTheDeckOnceIsSaid) {
  Yard yard;
  OpenJob job = provedOnScale(yard, kGuarded);
  const procedures::Step& check = *procedures::findStep(job.procedure, "loader-holds");
  const auto once = std::ranges::find_if(
      job.state.tries, [](const procedures::Try& each) { return each.event.about == "whole-loaded"; });
  once->event.answer = "no";
  const JsonValue content = contentBefore(job, check);
  const std::optional<RecordedJob> recorded = readRecordedJob(content);
  const auto read = readingsOfCheck(*recorded, job.procedure, recorded->tries.size() - 1, factsOf(job.unit));
  ASSERT_TRUE(read);
  EXPECT_EQ(read->proof.loader_on_scale[0].scale.whole_on_deck, false);
}

}  // namespace
}  // namespace hingepin::session
