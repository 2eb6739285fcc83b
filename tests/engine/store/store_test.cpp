// SPDX-License-Identifier: Apache-2.0
#include "engine/store/store.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>
#include <string>
#include <vector>

#include "tests/engine/store/samples.h"

namespace hingepin::store {
namespace {

using namespace samples;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;
using testing::UnorderedElementsAre;

std::vector<std::string> codesOf(const std::vector<StoreFinding>& findings) {
  std::vector<std::string> codes;
  for (const StoreFinding& finding : findings) codes.push_back(finding.message.code);
  return codes;
}

TEST(StoreTest, NewFileIsAnEmptySoundStore) {
  const Folder folder;
  const Store store = opened(folder.file());
  EXPECT_THAT(the(store.units()), IsEmpty());
  EXPECT_THAT(the(store.jobs()), IsEmpty());
  EXPECT_THAT(the(store.waiting()), IsEmpty());
  EXPECT_THAT(the(store.check()), IsEmpty());
}

TEST(StoreTest, WhatWasPutIsThereAfterReopening) {
  const Folder folder;
  {
    Yard yard(folder.file());
    const Pair pair{.unit = kUnit.id,
                    .attachment = kBucket.id,
                    .calibration = the(yard.store.putBlob("calibration", "application/json")),
                    .due_utc_ms = kNow,
                    .restrictions = {"cold-oil", "no-full-lift"}};
    the(yard.store.putPair(pair));
    the(yard.store.beginJob(yard.job(), "first"));
    the(yard.store.appendEvent("job-1", 1, "second"));
  }
  const Store store = opened(folder.file());
  EXPECT_EQ(the(store.unit(kUnit.id)), kUnit);
  EXPECT_EQ(the(store.attachment(kBucket.id)), kBucket);
  EXPECT_THAT(the(store.pair(kUnit.id, kBucket.id))->restrictions, ElementsAre("cold-oil", "no-full-lift"));
  EXPECT_EQ(the(store.blob(the(store.pair(kUnit.id, kBucket.id))->calibration)), "calibration");
  EXPECT_THAT(the(store.journal("job-1")), ElementsAre("first", "second"));
  EXPECT_THAT(the(store.jobsRunning()), SizeIs(1));
  EXPECT_THAT(the(store.check()), IsEmpty());
}

TEST(StoreTest, WhenAScaleIsDueIsKeptUntilSomethingThatItStandsOnChanges) {
  const Folder folder;
  Yard yard(folder.file());
  Store& store = yard.store;
  const Unit other{.id = "loader-8", .profile = "{}"};
  the(store.putUnit(other));
  for (const Unit& unit : {kUnit, other}) the(store.putPair({.unit = unit.id, .attachment = kBucket.id}));
  const ScaleDue unknown{.unit = kUnit.id, .attachment = kBucket.id};
  const ScaleDue known{
      .unit = kUnit.id, .attachment = kBucket.id, .due_utc_ms = kNow, .told = "why it is due"};
  const ScaleDue never{.unit = other.id, .attachment = kBucket.id, .told = "nothing makes it due"};
  constexpr std::int64_t kRule = 3;

  EXPECT_THAT(the(store.scalesDue(kRule, INT64_MIN)), SizeIs(2));
  records::Phone phone{.key = records::keyOf(1)};
  const std::vector<std::function<void()>> changes = {
      [&] { the(store.putUnit(kUnit)); }, [&] { the(store.putPair(the(store.pairsOf(kUnit.id)).front())); },
      [&] { the(store.putStatement(stored(phone.record("about it"), "", kUnit.id), kNow)); }};
  for (const auto& change : changes) {
    for (const ScaleDue& each : {known, never}) the(store.keepDue(each, kRule));
    EXPECT_THAT(the(store.scalesDue(kRule, INT64_MIN)), IsEmpty());
    EXPECT_THAT(the(store.scalesDue(kRule, kNow - 1)), IsEmpty());
    EXPECT_THAT(the(store.scalesDue(kRule, kNow)), ElementsAre(known));
    EXPECT_THAT(the(store.scalesDue(kRule, INT64_MAX)), ElementsAre(known, never));
    EXPECT_THAT(the(store.scalesDue(kRule + 1, INT64_MIN)), SizeIs(2)) << "worked out in another way";
    change();
    EXPECT_THAT(the(store.scalesDue(kRule, INT64_MIN)), ElementsAre(unknown));
  }
  the(store.keepDue(known, kRule));
  the(store.putStatement(stored(phone.record("about nothing here")), kNow));
  EXPECT_THAT(the(store.scalesDue(kRule, INT64_MIN)), IsEmpty());
  EXPECT_THAT(the(store.check()), IsEmpty());
}

TEST(BatchTest, WhatIsWrittenIsThereOnceItIsCommittedAndNotBefore) {
  const Folder folder;
  Store store = opened(folder.file());
  const Store other = opened(folder.file());
  {
    Batch batch = the(store.beginBatch());
    the(store.putUnit(kUnit));
    the(store.putAttachment(kBucket));
    the(store.putPair({.unit = kUnit.id, .attachment = kBucket.id}));
    EXPECT_THAT(the(store.units()), SizeIs(1));
    EXPECT_THAT(the(other.units()), IsEmpty());
    the(batch.commit());
  }
  EXPECT_THAT(the(other.units()), SizeIs(1));
  EXPECT_THAT(the(other.pairsOf(kUnit.id)), SizeIs(1));
  EXPECT_THAT(the(store.check()), IsEmpty());
}

TEST(BatchTest, WithoutACommitNothingWasWritten) {
  const Folder folder;
  Store store = opened(folder.file());
  {
    const Batch batch = the(store.beginBatch());
    the(store.putUnit(kUnit));
    the(store.putAttachment(kBucket));
    the(store.putPair({.unit = kUnit.id, .attachment = kBucket.id}));
  }
  EXPECT_THAT(the(store.units()), IsEmpty());
  the(store.putUnit(kUnit));
  EXPECT_THAT(the(store.units()), SizeIs(1)) << "it works on as before";
}

TEST(BatchTest, WhatFailsInItLeavesTheRest) {
  const Folder folder;
  Store store = opened(folder.file());
  {
    Batch batch = the(store.beginBatch());
    the(store.putUnit(kUnit));
    EXPECT_FALSE(store.putPair({.unit = kUnit.id, .attachment = "nowhere"}));
    the(store.putAttachment(kBucket));
    the(batch.commit());
  }
  EXPECT_THAT(the(store.units()), SizeIs(1));
  EXPECT_THAT(the(store.attachments()), SizeIs(1));
  EXPECT_THAT(the(store.pairsOf(kUnit.id)), IsEmpty());
}

TEST(StoreTest, PersonalObjectsAreFoundByTheirBeginning) {
  const Folder folder;
  Store store = opened(folder.file());
  for (const char* bytes : {"name: A", "photo", "name: B"}) {
    Personal personal{.name = "", .bytes = bytes};
    personal.name = records::personalName(personal.salt, personal.bytes);
    the(store.putPersonal(personal, kNow));
  }
  const auto names = the(store.personalBeginning("name:"));
  ASSERT_THAT(names, SizeIs(2));
  EXPECT_EQ(names.front().bytes, "name: A");
  EXPECT_THAT(the(store.personalBeginning("names")), IsEmpty());
  the(store.erasePersonal(names.front().name, kNow));
  EXPECT_THAT(the(store.personalBeginning("name:")), SizeIs(1));
}

TEST(StoreTest, EventIsTakenOnlyAtTheEndOfTheJournal) {
  const Folder folder;
  Yard yard(folder.file());
  the(yard.store.beginJob(yard.job(), "first"));
  EXPECT_EQ(codeOf(yard.store.appendEvent("job-1", 0, "again")), "journal-not-continued");
  EXPECT_EQ(codeOf(yard.store.appendEvent("job-1", 2, "too far")), "journal-not-continued");
  EXPECT_EQ(codeOf(yard.store.appendEvent("job-2", 1, "whose?")), "job-not-in-store");
  the(yard.store.appendEvent("job-1", 1, "second"));
  EXPECT_THAT(the(yard.store.journal("job-1")), ElementsAre("first", "second"));
}

TEST(StoreTest, JobEndsWithRecordPairAndQueueTogether) {
  const Folder folder;
  Yard yard(folder.file());
  records::Phone phone{.key = records::keyOf(1)};
  the(yard.store.beginJob(yard.job(), "first"));
  const Ending ending{.job = "job-1",
                      .phase = "done",
                      .record = stored(phone.record(yard.procedure), "", kUnit.id),
                      .pair = Pair{.unit = kUnit.id, .attachment = kBucket.id, .due_utc_ms = kNow},
                      .now_utc_ms = kNow};
  Ending without_bucket = ending;
  without_bucket.pair->attachment = "bucket-9";
  EXPECT_EQ(codeOf(yard.store.endJob(without_bucket)), "attachment-not-in-store");
  EXPECT_THAT(the(yard.store.statementNames()), IsEmpty());
  EXPECT_THAT(the(yard.store.waiting()), IsEmpty());

  the(yard.store.endJob(ending));
  EXPECT_EQ(the(yard.store.job("job-1"))->phase, "done");
  EXPECT_EQ(the(yard.store.job("job-1"))->record, ending.record.name);
  EXPECT_EQ(the(yard.store.statement(ending.record.name))->job, "job-1");
  EXPECT_THAT(the(yard.store.statementNames(kUnit.id)), ElementsAre(ending.record.name));
  EXPECT_THAT(the(yard.store.waiting()),
              ElementsAre(Waiting{WaitingKind::Blob, yard.procedure, kNow},
                          Waiting{WaitingKind::Statement, ending.record.name, kNow}));
  EXPECT_THAT(the(yard.store.due(kNow)), SizeIs(1));
  EXPECT_THAT(the(yard.store.due(kNow - 1)), IsEmpty());
  EXPECT_EQ(codeOf(yard.store.appendEvent("job-1", 1, "late")), "job-ended");
  EXPECT_EQ(codeOf(yard.store.endJob(ending)), "job-ended");
  EXPECT_THAT(codesOf(the(yard.store.check())), IsEmpty());
}

}  // namespace
}  // namespace hingepin::store
