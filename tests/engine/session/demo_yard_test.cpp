// SPDX-License-Identifier: Apache-2.0
#include "engine/session/demo_yard.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "engine/session/catalogue.h"
#include "engine/session/certificate.h"
#include "engine/session/compare.h"
#include "engine/session/dispute.h"
#include "engine/session/document.h"
#include "engine/session/due_list.h"
#include "engine/session/job_record.h"
#include "engine/session/overview.h"
#include "engine/session/past.h"
#include "engine/session/people.h"
#include "engine/session/stops_view.h"
#include "engine/session/words.h"
#include "tests/engine/linkage/machines.h"
#include "tests/engine/session/yard.h"

namespace hingepin::session {
namespace {

using ::testing::AllOf;
using ::testing::AnyOf;
using ::testing::Contains;
using ::testing::Each;
using ::testing::ElementsAre;
using ::testing::Field;
using ::testing::Ge;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::IsSupersetOf;
using ::testing::Not;
using ::testing::SizeIs;
using ::testing::StartsWith;

constexpr std::int64_t kToday = kMorning + 200LL * 24 * 3600 * 1000;

/// A store that is filled as the app fills it.
class DemoStore {
 public:
  DemoStore() : store(need(store::Store::open((folder.path() / "store.db").string()))) {
    for (std::size_t index = 0; index < demoPeople().size(); ++index) {
      keys.push_back(records::newSecretKey(folder::fillBytes));
    }
  }
  [[nodiscard]] Expected<void> fill(const Progress& progress = {}) {
    DemoYard yard{.yard_key = yard_key,
                  .keys = {},
                  .installation = keys.front().id(),
                  .epoch = records::epochName(std::array<std::uint8_t, 16>{7}),
                  .engine = "hingepin test",
                  .now = now};
    for (const records::SecretKey& key : keys) yard.keys.push_back(&key);
    return fillDemoYard(store, yard, folder::fillBytes, folder::edge(), progress);
  }
  [[nodiscard]] Overview overview() const { return need(unitStates(store, kToday, folder::edge(), {})); }
  [[nodiscard]] UnitOverview unit(const std::string& id) const {
    const Overview all = overview();
    return *std::ranges::find(all.units, id, &UnitOverview::id);
  }

  cli::TemporaryFolder folder{};
  records::SecretKey yard_key = records::newSecretKey(folder::fillBytes);
  std::vector<records::SecretKey> keys{};
  store::Store store;
  Moment now{.at_ms = 600'000, .boot = "boot-now", .utc_ms = kToday};
};

/// One that all tests look at, since filling it takes a while.
DemoStore& demo() {
  static DemoStore shared;
  static const bool filled = [] {
    need(shared.fill());
    return true;
  }();
  EXPECT_TRUE(filled);
  return shared;
}

TEST(DemoYardTest, EveryRecordIsTrustedAndNothingIsFoundButACorrection) {
  const auto lines = need(recordsOf(demo().store, "", {}));
  EXPECT_THAT(lines, SizeIs(Ge(60)));
  EXPECT_THAT(lines, Each(Field(&RecordLine::standing, records::Standing::Trusted)));
  std::set<std::string> findings;
  for (const RecordLine& line : lines) {
    for (const Message& finding : line.findings) findings.insert(finding.code);
  }
  EXPECT_THAT(findings, ElementsAre("record-amended"));
  EXPECT_THAT(need(demo().store.check()), IsEmpty());
}

TEST(DemoYardTest, IsMarkedAsPracticeEverywhere) {
  EXPECT_THAT(demo().overview().units, Each(Field(&UnitOverview::practice, true)));
  for (const RecordLine& line : need(recordsOf(demo().store, "", {}))) {
    EXPECT_TRUE(line.practice || !line.amends.empty()) << line.title;
  }
}

TEST(DemoYardTest, HasUnitsInEveryState) {
  const Overview overview = demo().overview();
  for (const int count : {overview.do_not_use, overview.restricted, overview.due, overview.due_soon,
                          overview.not_calibrated, overview.ready}) {
    EXPECT_GT(count, 0);
  }
  EXPECT_EQ(overview.do_not_use + overview.restricted + overview.due + overview.due_soon +
                overview.not_calibrated + overview.ready,
            static_cast<int>(overview.units.size()));
  EXPECT_EQ(overview.units.front().state, UnitState::DoNotUse);
  EXPECT_EQ(overview.units.back().state, UnitState::Ready);
}

TEST(DemoYardTest, StopsWhereItIsToldToAndLeavesTheStoreEmpty) {
  DemoStore other;
  const Expected<void> filled = other.fill([](int done, int) { return done < 2; });
  EXPECT_EQ(codeOf(filled), "demo-cancelled");
  EXPECT_THAT(need(other.store.units()), IsEmpty());
  EXPECT_THAT(need(other.store.statementNames()), IsEmpty());
  EXPECT_THAT(need(other.store.acceptedRoots()), IsEmpty());
}

TEST(DemoYardTest, IsNotPutOverAnotherYard) { EXPECT_EQ(codeOf(demo().fill()), "demo-store-not-empty"); }

TEST(OverviewTest, AFailedProofPutsItsTagOnTheUnit) {
  const UnitOverview unit = demo().unit("L-31");
  EXPECT_EQ(unit.state, UnitState::DoNotUse);
  ASSERT_TRUE(unit.tag);
  EXPECT_EQ(unit.tag->procedure, "shift-proof");
  EXPECT_EQ(unit.tag->failed_step, "mass-error");
  EXPECT_EQ(unit.tag->phase, "failed");
  EXPECT_EQ(unit.pairs.front().restrictions.front().mark, unit.tag->tag);
  EXPECT_TRUE(unit.pairs.front().restrictions.front().is_tag);
}

TEST(OverviewTest, AMarkThatIsNoTagRestricts) {
  const UnitOverview unit = demo().unit("L-33");
  EXPECT_EQ(unit.state, UnitState::Restricted);
  ASSERT_THAT(unit.pairs.front().restrictions, SizeIs(1));
  EXPECT_EQ(unit.pairs.front().restrictions.front().mark, "shift-proof-mark-oil-cold");
  EXPECT_FALSE(unit.tag);
}

TEST(OverviewTest, WhatWasFoundBeforeTeachingDoesNotRestrictWhatWasTaught) {
  const UnitOverview unit = demo().unit("L-27");
  EXPECT_EQ(unit.state, UnitState::Ready);
  const auto lines = need(recordsOf(demo().store, "L-27", {}));
  const auto taught = std::ranges::find_if(
      lines, [](const RecordLine& line) { return line.taught && line.attachment == "LM-4.5"; });
  const auto content = need(recordOf(demo().store, taught->name)).content;
  EXPECT_THAT(need(records::canonicalJson(*memberAt(content, {"marks"}))),
              HasSubstr("scale-found-error-mark"));
}

TEST(OverviewTest, DueAndDueSoonFollowTheClock) {
  const auto stateAt = [&](const char* id, std::int64_t utc_ms) {
    const Overview all = need(unitStates(demo().store, utc_ms, folder::edge(), {}));
    return std::ranges::find(all.units, id, &UnitOverview::id)->state;
  };
  const std::int64_t due = *demo().unit("L-14").due_utc_ms;
  EXPECT_EQ(stateAt("L-14", due - kSoon_ms - 1), UnitState::Ready);
  EXPECT_EQ(stateAt("L-14", due - kSoon_ms), UnitState::DueSoon);
  EXPECT_EQ(stateAt("L-14", due - 1), UnitState::DueSoon);
  EXPECT_EQ(stateAt("L-14", due), UnitState::Due);
}

TEST(OverviewTest, ALockoutThatNoRemovalEndedKeepsTheUnitFromUse) {
  const UnitOverview unit = demo().unit("L-42");
  EXPECT_TRUE(unit.locked_out);
  EXPECT_EQ(unit.state, UnitState::DoNotUse);
  EXPECT_EQ(unit.pairs.front().state, UnitState::Ready) << "its scale is as good as before";
  EXPECT_FALSE(demo().unit("L-36").locked_out) << "there the lockout was taken off";
}

TEST(OverviewTest, ARunningJobSaysWhatItWaitsFor) {
  const UnitOverview unit = demo().unit("L-48");
  ASSERT_THAT(unit.running, SizeIs(1));
  EXPECT_EQ(unit.running.front().waits_at, "level-angle");
  EXPECT_THAT(unit.running.front().waits_for, HasSubstr("angle"));
  EXPECT_FALSE(unit.running.front().for_second_person);
}

TEST(ConfirmationsTest, ALockoutWaitsForItsSecondPerson) {
  const Confirmations list = need(confirmations(demo().store, folder::edge(), {}, 0));
  ASSERT_THAT(list.awaited, SizeIs(1));
  EXPECT_EQ(list.awaited.front().unit, "L-42");
  EXPECT_EQ(list.awaited.front().job.waits_at, "second");
  EXPECT_TRUE(list.awaited.front().second_person);
  EXPECT_THAT(list.awaited.front().roles, Contains("safety-lead"));
  EXPECT_THAT(list.awaited.front().photos, Not(IsEmpty()));
}

TEST(ConfirmationsTest, WhoConfirmedAndFromWhereIsSaid) {
  const Confirmations list = need(confirmations(demo().store, folder::edge(), {}, 0));
  const auto of_lockout = std::ranges::find_if(list.confirmed, [](const Confirmation& each) {
    return each.unit == "L-36" && each.procedure == "lockout";
  });
  ASSERT_NE(of_lockout, list.confirmed.end());
  EXPECT_EQ(of_lockout->key, demo().keys[3].id());
  EXPECT_EQ(of_lockout->role, "safety-lead");
  EXPECT_THAT(of_lockout->marks, ElementsAre("second-person-from-afar"));
  const auto at_it = std::ranges::find(list.confirmed, "lockout-removal", &Confirmation::procedure);
  ASSERT_NE(at_it, list.confirmed.end());
  EXPECT_THAT(at_it->marks, IsEmpty());
  EXPECT_TRUE(std::ranges::is_sorted(list.confirmed, std::ranges::greater{}, &Confirmation::utc_ms));
}

TEST(ConfirmationsTest, OnlyWhatIsNotTooLongAgoIsListed) {
  const std::int64_t week_ago = kToday - 7LL * 24 * 3600 * 1000;
  const Confirmations list = need(confirmations(demo().store, folder::edge(), {}, week_ago));
  EXPECT_THAT(list.confirmed, SizeIs(Ge(1)));
  EXPECT_THAT(list.confirmed, Each(Field(&Confirmation::utc_ms, Ge(week_ago))));
}

TEST(CheckOutsTest, AUnitIsOutUntilItsReturnCheck) {
  const auto out = need(checkOuts(demo().store));
  ASSERT_THAT(out, SizeIs(1));
  EXPECT_EQ(out.front().unit, "L-36");
  const auto hires = need(hiresOf(demo().store, "L-40"));
  ASSERT_THAT(hires, SizeIs(1));
  const auto before = need(recordOf(demo().store, hires.front().check_out));
  const auto after = need(recordOf(demo().store, hires.front().return_check));
  std::set<std::string> steps;
  for (const Difference& each : need(compareRecords(before.content, after.content))) steps.insert(each.step);
  EXPECT_THAT(steps, IsSupersetOf({"bucket", "glass", "fuel", "hours", "tread"}));
}

TEST(HistoryTest, ShowsZeroAndErrorDriftingFromProofToProof) {
  auto points = need(historyOf(demo().store, "L-31", "GP-3.4"));
  ASSERT_THAT(points, SizeIs(6));
  EXPECT_TRUE(points.front().calibration);
  EXPECT_EQ(points.back().verdict, "failed");
  EXPECT_GT(*points.back().error_percent, *points.back().error_limit_percent);
  EXPECT_LT(*points[1].zero_found_kg, *points.back().zero_found_kg);
  for (const HistoryPoint& point : points) {
    EXPECT_TRUE(point.verdict == "failed" || std::abs(*point.error_percent) <= *point.error_limit_percent);
    EXPECT_EQ(*point.error_limit_percent, 1.0);
    EXPECT_EQ(*point.spread_limit_kg, 20.0);
  }
}

TEST(HistoryTest, TellsWhatWasFoundFromWhatWasLeft) {
  const auto points = need(historyOf(demo().store, "L-27", "LM-4.5"));
  ASSERT_TRUE(points.front().calibration);
  EXPECT_GT(*points.front().error_found_percent, 10.0) << "by the weight of the new bucket";
  EXPECT_LT(std::abs(*points.front().error_percent), 1.0);
  EXPECT_EQ(points.front().verdict, "passed");
}

constexpr std::int64_t kDay_ms = 24LL * 3600 * 1000;

/// A scale that was taught on day 0 and proved every 30 days; its error grows by 0.1 % from proof to proof.
ScalePast driftingScale(int proofs) {
  ScalePast past;
  for (int i = 0; i <= proofs; ++i) {
    const double error = 0.1 * i + (i % 2 == 0 ? 0.01 : -0.01);
    past.points.push_back({.record = "record-" + std::to_string(i),
                           .procedure = i == 0 ? "after-attachment-change" : "shift-proof",
                           .utc_ms = 30 * i * kDay_ms,
                           .phase = "done",
                           .error_percent = error,
                           .error_found_percent = error,
                           .error_limit_percent = 1.0,
                           .verdict = "passed",
                           .calibration = i == 0});
  }
  return past;
}

TEST(WhenAgainTest, PlainDriftMakesAScaleDueBeforeItLeavesItsTolerance) {
  const store::Pair pair{.unit = "L-1", .attachment = "A", .due_utc_ms = 400 * kDay_ms};
  const WhenAgain when = whenAgain(driftingScale(6), pair, nullptr);
  ASSERT_TRUE(when.drift);
  EXPECT_NEAR(when.drift->per_30_days_percent, 0.1, 0.01);
  ASSERT_TRUE(when.drift->expected_utc_ms && when.drift->earliest_utc_ms && when.drift->latest_utc_ms);
  EXPECT_NEAR(double(*when.drift->expected_utc_ms) / double(kDay_ms), 300, 10) << "1 % at 0.1 % in 30 days";
  EXPECT_LT(*when.drift->earliest_utc_ms, *when.drift->expected_utc_ms);
  ASSERT_THAT(when.reasons, SizeIs(2));
  EXPECT_EQ(when.reasons[0].why.code, "due-by-drift");
  EXPECT_EQ(when.reasons[0].utc_ms, *when.drift->earliest_utc_ms);
  EXPECT_EQ(when.reasons[1].why.code, "due-by-time");
  EXPECT_EQ(when.reasons[1].utc_ms, 400 * kDay_ms);
}

TEST(WhenAgainTest, TooFewProofsGiveNoDriftAndNoDueDayByIt) {
  const store::Pair pair{.unit = "L-1", .attachment = "A"};
  const WhenAgain when = whenAgain(driftingScale(1), pair, nullptr);
  EXPECT_FALSE(when.drift);
  EXPECT_EQ(when.no_drift->code, "history-too-short");
  EXPECT_THAT(when.reasons, IsEmpty());
}

TEST(WhenAgainTest, HoursOfUseCountByTheUnitsMeter) {
  ScalePast past = driftingScale(1);
  past.hours = {{0, 1000.0}, {40 * kDay_ms, 1200.0}};
  UnitProfile profile;
  profile.recheck_after_use = "250 h";
  const store::Pair pair{.unit = "L-1", .attachment = "A"};
  const WhenAgain when = whenAgain(past, pair, &profile);
  ASSERT_THAT(when.reasons, SizeIs(1));
  EXPECT_EQ(when.reasons[0].why.code, "due-by-hours");
  EXPECT_EQ(when.reasons[0].utc_ms, 50 * kDay_ms);
}

/// All that a list tells of its pairs.
std::string toldOf(const std::vector<DuePair>& pairs) {
  std::string text;
  for (const DuePair& each : pairs) {
    text += each.pair.unit + " " + each.pair.attachment + "\n";
    for (const std::string& line : sayWhenAgain(each.when, {})) text += "  " + line + "\n";
    if (each.when.no_drift) text += "  " + say(*each.when.no_drift, {}) + "\n";
    for (const proof::DueReason& reason : each.when.reasons) text += std::to_string(reason.utc_ms) + "\n";
  }
  return text;
}

/// A copy of the demo yard's store that a test may change.
class DemoCopy {
 public:
  DemoCopy() : store(open()) {}
  cli::TemporaryFolder folder{};
  store::Store store;

 private:
  [[nodiscard]] store::Store open() const {
    const std::string path = (folder.path() / "copy.db").string();
    need(demo().store.backup(path));
    return need(store::Store::open(path));
  }
};

TEST(DueListTest, WhatIsKeptSaysTheSameAsTheRecords) {
  DemoCopy copy;
  const std::vector<DuePair> worked_out = need(duePairs(copy.store, folder::edge(), INT64_MAX));
  const auto due_now = [&] { return toldOf(need(duePairs(copy.store, folder::edge(), kToday))); };
  const std::string due_before = due_now();
  EXPECT_THAT(worked_out, SizeIs(Ge(8)));
  EXPECT_THAT(due_before, Not(IsEmpty()));

  need(keepDue(copy.store, folder::edge()));
  EXPECT_THAT(need(copy.store.scalesDue(kDueRule, INT64_MIN)), IsEmpty());
  EXPECT_EQ(toldOf(need(duePairs(copy.store, folder::edge(), INT64_MAX))), toldOf(worked_out));
  EXPECT_EQ(due_now(), due_before);
  for (const DuePair& each : worked_out) {
    const auto of_unit = need(duePairsOf(copy.store, each.pair.unit, folder::edge()));
    EXPECT_TRUE(std::ranges::any_of(of_unit, [&](const DuePair& same) {
      return toldOf({same}) == toldOf({each});
    })) << each.pair.unit;
  }
}

TEST(DueListTest, IsReadFromWhatIsKeptAndNotFromTheRecords) {
  DemoCopy copy;
  need(keepDue(copy.store, folder::edge()));
  const DuePair first = need(duePairs(copy.store, folder::edge(), INT64_MAX)).front();
  need(copy.store.keepDue({.unit = first.pair.unit,
                           .attachment = first.pair.attachment,
                           .told = R"({"reasons":[],"signals":[]})"},
                          kDueRule));
  const auto pairs = need(duePairs(copy.store, folder::edge(), INT64_MAX));
  const auto same = std::ranges::find_if(pairs, [&](const DuePair& each) { return each.pair == first.pair; });
  EXPECT_THAT(same->when.reasons, IsEmpty());
  // What can't be read is worked out.
  need(copy.store.keepDue(
      {.unit = first.pair.unit, .attachment = first.pair.attachment, .told = R"({"reasons":)"}, kDueRule));
  EXPECT_EQ(toldOf({need(duePairs(copy.store, folder::edge(), INT64_MAX)).front()}), toldOf({first}));
}

TEST(DueListTest, IsNotKeptBeforeAllThatARecordNamesHasCome) {
  const DemoStore& full = demo();
  DemoStore other;  // an empty one, to which records come before their files, as by sync
  for (const store::Unit& each : need(full.store.units())) need(other.store.putUnit(each));
  for (const store::Attachment& each : need(full.store.attachments())) need(other.store.putAttachment(each));
  for (const store::Pair& each : need(full.store.pairsOf("L-27"))) {
    store::Pair pair = each;
    pair.calibration.clear();
    need(other.store.putPair(pair));
  }
  std::set<std::string> profiles;
  for (const std::string& name : need(full.store.statementNames("L-27"))) {
    store::StoredStatement statement = *need(full.store.statement(name));
    statement.job.clear();
    need(other.store.putStatement(statement, kToday));
    const Expected<records::Record> record = recordOf(other.store, name);
    if (record) profiles.insert(textAt(record->content, {"unit", "profile"}));
  }
  profiles.erase("");
  ASSERT_THAT(profiles, Not(IsEmpty()));
  need(keepDue(other.store, folder::edge()));
  EXPECT_THAT(need(other.store.scalesDue(kDueRule, INT64_MIN)), Not(IsEmpty()));
  for (const std::string& profile : profiles)
    (void)need(other.store.putBlob(*need(full.store.blob(profile)), "application/json"));
  need(keepDue(other.store, folder::edge()));
  EXPECT_THAT(need(other.store.scalesDue(kDueRule, INT64_MIN)), IsEmpty());
  EXPECT_EQ(toldOf(need(duePairs(other.store, folder::edge(), INT64_MAX))),
            toldOf(need(duePairsOf(full.store, "L-27", folder::edge()))));
}

TEST(WhenAgainTest, AnEventThatWasRecordedMakesEveryScaleOfItsUnitDue) {
  Yard yard;
  const Sealer sealer{.key = yard.technician,
                      .role = "technician",
                      .installation = yard.technician.id(),
                      .epoch = records::epochName(std::array<std::uint8_t, 16>{7})};
  const Moment then{.at_ms = 1, .boot = "boot-1", .utc_ms = kMorning + kDay_ms};
  EXPECT_EQ(codeOf(recordEvent(yard.store, "L-0", "", proof::Event::BoomWelded, "", sealer, then)),
            "unit-not-in-store");
  const std::string name =
      need(recordEvent(yard.store, "L-27", "", proof::Event::BoomWelded, "at the yard", sealer, then));

  UnitPast past = need(pastOf(yard.store, "L-27", {"GP-2.7"}));
  ScalePast& scale = past.scales["GP-2.7"];
  EXPECT_THAT(scale.happening_records, ElementsAre(name));
  scale.points = {{.record = "taught", .utc_ms = kMorning, .verdict = "passed", .calibration = true}};
  const WhenAgain when = whenAgain(scale, {.unit = "L-27", .attachment = "GP-2.7"}, nullptr);
  ASSERT_THAT(when.reasons, SizeIs(1));
  EXPECT_EQ(when.reasons.front().why.code, "due-event-boom-welded");
  EXPECT_EQ(when.reasons.front().utc_ms, then.utc_ms);

  const auto lines = need(recordsOf(yard.store, "L-27", {}));
  ASSERT_THAT(lines, SizeIs(1));
  EXPECT_EQ(lines.front().title, "The boom was welded.");
  EXPECT_EQ(lines.front().standing, records::Standing::Trusted);
  EXPECT_THAT(need(yard.store.check()), IsEmpty());
}

TEST(StopsToSetTest, TellsAnglesHeightsAndWhatTheBoomSensorReads) {
  calibration::LoaderUnit unit;
  calibration::Attachment bucket;
  bucket.heel = linkage::pinAt(-0.10, -0.22);
  bucket.cutting_edge = linkage::pinAt(1.22, -0.22);
  const Entries entries = {{"upper-height", "3.4 m"}, {"lower-height", "300 mm"}};
  EXPECT_THAT(sayStopsToSet(unit, bucket, entries, nullptr, {}), IsEmpty()) << "no linkage on file";
  unit.linkage = linkage::demoMachine().geometry;
  calibration::Calibration calibration;
  calibration.boom_line = {.reading_at = 2.0, .slope_rad_per_unit = 25 * kDegree};
  const auto lines = sayStopsToSet(unit, bucket, entries, &calibration, {});
  // Hinge pin: asin((3.4 - 1.95) / 2.55) = 34.7 deg; edge: asin((0.3 + 0.22 - 1.95) / 2.55) = -34.1 deg.
  EXPECT_THAT(lines, Contains(AllOf(HasSubstr("3400 mm"), HasSubstr("34.7°"))));
  EXPECT_THAT(lines, Contains(AllOf(HasSubstr("300 mm"), HasSubstr("-34.1°"))));
  EXPECT_THAT(lines, Contains(HasSubstr("3.386 V"))) << "2 V and 34.65 deg over 25 deg for a volt";
  EXPECT_THAT(lines.back(), HasSubstr("Keep everybody out of the zone"));
  const auto beyond = sayStopsToSet(unit, bucket, {{"upper-height", "6 m"}}, nullptr, {});
  ASSERT_THAT(beyond, SizeIs(2));
  EXPECT_THAT(beyond.front(), HasSubstr("can't stand so"));
}

TEST(DisputeTest, ALoadIsBoundedByTheProofsAroundIt) {
  const auto points = need(historyOf(demo().store, "L-31", "GP-3.4"));
  const std::int64_t between_ms = (points[2].utc_ms + points[3].utc_ms) / 2;
  const Dispute dispute = need(disputeOf(demo().store, "L-31", "GP-3.4", between_ms));
  ASSERT_TRUE(dispute.before && dispute.after);
  EXPECT_EQ(dispute.before->record, points[2].record);
  EXPECT_EQ(dispute.after->record, points[3].record);
  EXPECT_DOUBLE_EQ(dispute.before->error_percent, *points[2].error_percent);
  EXPECT_DOUBLE_EQ(dispute.after->error_percent, *points[3].error_found_percent);
  EXPECT_LT(*dispute.low_percent, std::min(*points[2].error_percent, *points[3].error_percent));
  EXPECT_GT(*dispute.high_percent, std::max(*points[2].error_percent, *points[3].error_percent));
  EXPECT_NEAR(*dispute.between_percent, 0.5 * (*points[2].error_percent + *points[3].error_percent), 1e-6);
  EXPECT_THAT(dispute.records, IsSupersetOf({points[2].record, points[3].record}));
  EXPECT_THAT(dispute.remarks, Contains(Field(&Message::code, "dispute-bounded")));
  EXPECT_THAT(writeDispute(dispute), HasSubstr(points[2].record));
  EXPECT_THAT(sayDispute(dispute, {}), Contains(HasSubstr("legal for trade")));
}

TEST(DisputeTest, AfterTheLastProofALoadIsOpenOnOneSide) {
  const auto points = need(historyOf(demo().store, "L-31", "GP-3.4"));
  const Dispute late = need(disputeOf(demo().store, "L-31", "GP-3.4", points.back().utc_ms + 1));
  EXPECT_TRUE(late.before && !late.after);
  EXPECT_THAT(late.remarks, Contains(Field(&Message::code, "dispute-open-after")));
  const Dispute early = need(disputeOf(demo().store, "L-31", "GP-3.4", points.front().utc_ms - 1));
  EXPECT_FALSE(early.before);
  EXPECT_EQ(codeOf(disputeOf(demo().store, "L-0", "GP-3.4", 1)), "unit-not-in-store");
  const Dispute nothing = need(disputeOf(demo().store, "L-31", "no-such-bucket", kToday));
  EXPECT_FALSE(nothing.low_percent);
  EXPECT_THAT(nothing.remarks, ElementsAre(Field(&Message::code, "dispute-unproved")));
}

TEST(RecordsTest, ACorrectionAndAFurtherSignatureStandBesideTheirRecord) {
  const auto returned = need(recordsOf(demo().store, "L-40", {}));
  const auto corrected =
      std::ranges::find_if(returned, [](const RecordLine& line) { return line.procedure == "return-check"; });
  ASSERT_THAT(corrected->amended_by, SizeIs(1));
  EXPECT_THAT(returned, Contains(Field(&RecordLine::amends, corrected->name)));
  const auto lines = need(recordsOf(demo().store, "L-27", {}));
  const auto signed_twice =
      std::ranges::find_if(lines, [](const RecordLine& line) { return !line.signatures.empty(); });
  ASSERT_NE(signed_twice, lines.end());
  EXPECT_EQ(signed_twice->signatures.front().role, "safety-lead");
}

TEST(ProceduresForTest, OffersWhatARoleMayBegin) {
  const auto offers =
      need(proceduresFor(demo().store, "L-27", "LM-4.5", "yard-clerk", demo().now, folder::edge(), {}));
  std::set<std::string> ids;
  for (const OfferedProcedure& offer : offers) ids.insert(offer.id);
  EXPECT_THAT(ids, ElementsAre("check-out", "return-check", "walk-round"));
  const auto out = std::ranges::find(offers, "check-out", &OfferedProcedure::id);
  EXPECT_FALSE(out->can_begin);
  ASSERT_THAT(out->prerequisites, SizeIs(1));
  EXPECT_EQ(out->prerequisites.front().procedure, "walk-round");
  EXPECT_TRUE(out->prerequisites.front().too_old) << "that of another start of the phone";
  EXPECT_TRUE(std::ranges::find(offers, "walk-round", &OfferedProcedure::id)->can_begin);
}

TEST(ProceduresForTest, SaysWhichEntriesMustBeGiven) {
  const auto entryOf = [&](const char* attachment) {
    const auto offers =
        need(proceduresFor(demo().store, "L-27", attachment, "technician", demo().now, folder::edge(), {}));
    const auto offer = std::ranges::find(offers, "stops", &OfferedProcedure::id);
    return *std::ranges::find(offer->entries, "upper-height", &NeededEntry::id);
  };
  EXPECT_EQ(entryOf("LM-4.5").value, "3.4 m");
  EXPECT_EQ(entryOf("LM-4.5").from, "attachment");
  EXPECT_EQ(entryOf("").value, "");
  EXPECT_EQ(entryOf("").unit, "m");
}

TEST(PeopleTest, NamesAreThereUntilTheyAreErased) {
  DemoStore other;
  const std::string key = other.keys.front().id();
  const std::string name = need(keepName(other.store, key, "Nobody Real", folder::fillBytes, kToday));
  EXPECT_EQ(nameOfKey(need(namesOf(other.store)), key), "Nobody Real");
  need(other.store.erasePersonal(name, kToday));
  EXPECT_EQ(nameOfKey(need(namesOf(other.store)), key), key.substr(0, 8));
  EXPECT_EQ(codeOf(keepName(other.store, key, "  ", folder::fillBytes, kToday)), "text-empty");
}

/// All that a document says.
std::vector<std::string> textsOf(const Document& document) {
  std::vector<std::string> texts = document.stamps;
  texts.push_back(document.title);
  texts.push_back(document.not_for_trade);
  for (const DocumentSection& section : document.sections) {
    texts.push_back(section.title);
    for (const DocumentRow& row : section.rows) {
      texts.insert(texts.end(), {row.label, row.value, row.note});
    }
  }
  return texts;
}

const DocumentSection* sectionOf(const Document& document, const std::string& code) {
  const auto found = std::ranges::find(document.sections, code, &DocumentSection::code);
  return found == document.sections.end() ? nullptr : &*found;
}

std::string recordOfProcedure(const std::string& unit, const std::string& procedure,
                              const std::string& phase = "done") {
  for (const RecordLine& line : need(recordsOf(demo().store, unit, {}))) {
    if (line.procedure == procedure && line.phase == phase) return line.name;
  }
  throw std::runtime_error("no record of " + procedure);
}

class DocumentLanguageTest : public testing::TestWithParam<std::string> {};

TEST_P(DocumentLanguageTest, EveryWordOfEveryRecordIsSaid) {
  const Reader reader{.language = GetParam(), .system = UnitSystem::UsCustomary, .utc_offset_min = 60};
  for (const RecordLine& line : need(recordsOf(demo().store, "", reader))) {
    if (line.phase.empty()) continue;
    const Document document = need(documentOf(demo().store, line.name, reader));
    EXPECT_EQ(document.language, GetParam());
    for (const std::string& text : textsOf(document)) {
      EXPECT_THAT(text, Not(AnyOf(HasSubstr("{"), StartsWith("document-"), StartsWith("role-"),
                                  StartsWith("how-"), StartsWith("answer-"), StartsWith("phase-"))))
          << line.title;
    }
  }
}
INSTANTIATE_TEST_SUITE_P(Languages, DocumentLanguageTest, testing::ValuesIn(languages()),
                         [](const auto& language) { return language.param.substr(0, 2); });

TEST(DocumentTest, HasTheReadingsAsTypedWithTheReadersUnitsBeside) {
  const std::string record = recordOfProcedure("L-31", "shift-proof", "failed");
  const Document document = need(documentOf(demo().store, record, {}));
  const DocumentSection* const readings = sectionOf(document, "document-readings");
  ASSERT_NE(readings, nullptr);
  EXPECT_THAT(readings->rows, Contains(AllOf(Field(&DocumentRow::value, "2500 kg"),
                                             Field(&DocumentRow::note, HasSubstr("typed")))));
  EXPECT_THAT(readings->rows, Contains(AllOf(Field(&DocumentRow::value, HasSubstr("short tons")),
                                             Field(&DocumentRow::note, HasSubstr(" t;")))));
}

TEST(DocumentTest, OfAFailedJobSaysNotToUseTheScale) {
  const std::string record = recordOfProcedure("L-31", "shift-proof", "failed");
  const Document document = need(documentOf(demo().store, record, {}));
  EXPECT_EQ(document.verdict, "failed");
  EXPECT_THAT(document.stamps, Contains(HasSubstr("DO NOT USE THIS SCALE")));
  EXPECT_THAT(document.stamps, Contains(HasSubstr("Practice")));
  EXPECT_THAT(sectionOf(document, "document-proof")->rows, Contains(Field(&DocumentRow::verdict, "failed")));
}

TEST(DocumentTest, NamesPeopleWhereTheirNamesAreKept) {
  const Document document =
      need(documentOf(demo().store, recordOfProcedure("L-27", "after-attachment-change"), {}));
  EXPECT_THAT(sectionOf(document, "document-people")->rows,
              Contains(AllOf(Field(&DocumentRow::label, "technician"),
                             Field(&DocumentRow::value, demoPeople().front().name))));
}

TEST(DocumentTest, ACalibrationHasItsUncertainties) {
  const Document document =
      need(documentOf(demo().store, recordOfProcedure("L-27", "after-attachment-change"), {}));
  const DocumentSection* const calibration = sectionOf(document, "document-calibration");
  ASSERT_NE(calibration, nullptr);
  EXPECT_THAT(calibration->rows, Contains(AllOf(Field(&DocumentRow::value, HasSubstr("±")),
                                                Field(&DocumentRow::note, HasSubstr("coverage factor 2")))));
}

TEST(DocumentTest, ACorrectionStandsOnTheDocumentThatItCorrects) {
  const Document document = need(documentOf(demo().store, recordOfProcedure("L-40", "return-check"), {}));
  EXPECT_THAT(document.stamps, Contains("Corrected"));
  EXPECT_THAT(sectionOf(document, "document-corrections")->rows,
              Contains(Field(&DocumentRow::value, HasSubstr("45 %"))));
}

TEST(DocumentTest, OfACorrectionAloneThereIsNone) {
  for (const RecordLine& line : need(recordsOf(demo().store, "L-40", {}))) {
    if (line.amends.empty()) continue;
    EXPECT_EQ(codeOf(documentOf(demo().store, line.name, {})), "record-not-of-job");
  }
}

TEST(LabelTest, SaysWhatWasCalibratedAndWhenItIsDue) {
  const ScaleLabel label = need(labelOf(demo().store, "L-14", "GP-2.0", {}));
  EXPECT_THAT(label.rows, Contains(Field(&DocumentRow::value, "GP-2.0")));
  const std::string due = dateText(*demo().unit("L-14").due_utc_ms, {});
  EXPECT_THAT(label.rows,
              Contains(AllOf(Field(&DocumentRow::label, "Due again"), Field(&DocumentRow::value, due))));
  EXPECT_EQ(recordOfQrText(label.qr_text), demo().unit("L-14").pairs.front().record);
  EXPECT_TRUE(label.practice);
  EXPECT_EQ(codeOf(labelOf(demo().store, "L-45", "GP-1.6", {})), "pair-not-taught");
}

TEST(TagTest, SaysWhyTheScaleMustNotBeUsed) {
  const std::string record = recordOfProcedure("L-31", "shift-proof", "failed");
  const TagDocument tag = need(tagDocumentOf(demo().store, record, {}));
  EXPECT_THAT(tag.headline, HasSubstr("DO NOT USE THIS SCALE"));
  EXPECT_THAT(tag.rows, Contains(AllOf(Field(&DocumentRow::label, "Failed at"),
                                       Field(&DocumentRow::note, HasSubstr("1 %")))));
  EXPECT_EQ(codeOf(tagDocumentOf(demo().store, recordOfProcedure("L-31", "shift-proof"), {})),
            "job-has-no-tag");
}

TEST(QrTextTest, NamesARecordAndNothingElse) {
  const std::string name(64, 'a');
  EXPECT_EQ(recordOfQrText(qrTextOf(name)), name);
  for (const std::string& text : {name, "hingepin:record/" + name.substr(1), "hingepin:record/" + name + "a",
                                  "Hingepin:record/" + name, std::string()}) {
    EXPECT_EQ(recordOfQrText(text), std::nullopt) << text;
  }
}

/// A certificate with the record that it is of.
struct Issued {
  RecordLine line;
  JsonValue content;
  certificate::Certificate certificate;
};

/// Of every job in the yard that says something of a scale.
std::vector<Issued> allCertificates() {
  std::vector<Issued> all;
  for (const RecordLine& line : need(recordsOf(demo().store, "", {}))) {
    if (!line.amends.empty()) continue;
    all.push_back({line, need(recordOf(demo().store, line.name)).content,
                   need(certificateOf(demo().store, folder::edge(), line.name, {},
                                      {.program = "test", .utc_ms = kToday}))});
  }
  return all;
}

/// A number of the record's own text, without any of the engine's readers. @param number from 1
double typedAt(const JsonValue& content, std::size_t number) {
  const JsonValue* const tries = memberAt(content, {"tries"});
  return std::stod(textAt(tries->items.at(number - 1), {"value"}));
}

struct Numbers {
  double mean = 0;
  double deviation = 0;  ///< sample standard deviation
};
Numbers numbersOf(const JsonValue& content, const std::vector<std::size_t>& readings) {
  Numbers numbers;
  const double count = static_cast<double>(readings.size());
  for (const std::size_t each : readings) numbers.mean += typedAt(content, each) / count;
  for (const std::size_t each : readings) {
    numbers.deviation += std::pow(typedAt(content, each) - numbers.mean, 2) / (count - 1);
  }
  numbers.deviation = std::sqrt(numbers.deviation);
  return numbers;
}

/// The demo's monitors show kilograms or tonnes.
double kilograms(const certificate::Certificate& certificate, std::size_t reading) {
  const auto found = std::ranges::find(certificate.readings, reading, &certificate::Reading::number);
  return found->typed.ends_with(" t")          ? 1000.0
         : found->typed.ends_with("[ston_av]") ? 907.18474
         : found->typed.ends_with("[lb_av]")   ? 0.45359237
                                               : 1.0;
}

TEST(CertificateTest, EveryNumberTracesToTheReadingsOfItsRecord) {
  std::size_t results = 0;
  for (const auto& [line, content, certificate] : allCertificates()) {
    SCOPED_TRACE(certificate.unit + " " + line.title);
    const JsonValue* const tries = memberAt(content, {"tries"});
    for (const certificate::Reading& reading : certificate.readings) {
      EXPECT_EQ(reading.typed, textAt(tries->items.at(reading.number - 1), {"value"}));
    }
    for (const auto& [name, figure] : certificate::figuresOf(certificate)) {
      EXPECT_NE(figure->readings.empty(), figure->entry.empty()) << name;
      EXPECT_FALSE(figure->amount.ucum.empty()) << name;
      for (const std::size_t each : figure->readings) {
        EXPECT_THAT(certificate.readings, Contains(Field(&certificate::Reading::number, each))) << name;
      }
    }
    for (const certificate::Proof& proof : certificate.proofs) {
      for (const certificate::Result& result : proof.results) {
        ++results;
        ASSERT_THAT(result.reference.readings, SizeIs(1));
        const double reference = typedAt(content, result.reference.readings.front()) *
                                 kilograms(certificate, result.reference.readings.front());
        const Numbers shown = numbersOf(content, result.indication.readings);
        const double unit = kilograms(certificate, result.indication.readings.front());
        EXPECT_NEAR(result.reference.amount.value, reference, 1e-6);
        EXPECT_NEAR(result.indication.amount.value, shown.mean * unit, 1e-6);
        EXPECT_NEAR(result.error.amount.value, shown.mean * unit - reference, 1e-6);
        EXPECT_TRUE(result.reference.expanded_uncertainty && result.error.expanded_uncertainty);
        EXPECT_GE(result.error.coverage_factor, 1.0);
        if (result.repeatability) {
          EXPECT_NEAR(result.repeatability->amount.value, shown.deviation * unit, 1e-6);
        }
        ASSERT_TRUE(result.limit);
        EXPECT_FALSE(result.limit->entry.empty());
        EXPECT_THAT(result.error.readings, IsSupersetOf(result.indication.readings));
        EXPECT_THAT(result.error.readings, Contains(result.reference.readings.front()));
      }
    }
  }
  EXPECT_GE(results, 20U);
}

TEST(CertificateTest, TheDemoUnitHasItsProofAsFoundAndAsLeftAndWhatToEnter) {
  const certificate::Certificate made =
      need(certificateOf(demo().store, folder::edge(), recordOfProcedure("L-27", "after-attachment-change"),
                         {}, {.utc_ms = kToday}));
  ASSERT_THAT(made.proofs, SizeIs(2));
  EXPECT_EQ(made.proofs[0].when, proof::When::AsFound);
  EXPECT_EQ(made.proofs[1].when, proof::When::AsLeft);
  EXPECT_EQ(made.proofs[1].verdict, proof::Verdict::Holds);
  EXPECT_LT(std::abs(made.proofs[1].results[0].error.amount.value),
            std::abs(made.proofs[0].results[0].error.amount.value));
  // What the work changed is the difference of both errors.
  const auto change = std::ranges::find_if(
      made.proofs[1].others, [](const auto& each) { return each.name.code == "certificate-change"; });
  ASSERT_NE(change, made.proofs[1].others.end());
  EXPECT_NEAR(change->figure.amount.value,
              made.proofs[1].results[0].error.amount.value - made.proofs[0].results[0].error.amount.value,
              1e-9);
  EXPECT_TRUE(made.correction.span_factor && made.correction.zero);
  EXPECT_FALSE(made.stops.empty());
  EXPECT_FALSE(made.conditions.empty());
  EXPECT_FALSE(made.signatories.empty());
  EXPECT_EQ(made.stamps.front().code, "document-practice");
}

TEST(CertificateTest, OfAFailedProofDoesNotHoldAndForbidsTheScale) {
  const certificate::Certificate made =
      need(certificateOf(demo().store, folder::edge(), recordOfProcedure("L-31", "shift-proof", "failed"), {},
                         {.utc_ms = kToday}));
  EXPECT_THAT(made.do_not_use, HasSubstr("DO NOT USE THIS SCALE"));
  EXPECT_EQ(made.proofs.back().verdict, proof::Verdict::DoesNotHold);
}

TEST(CertificateTest, HasNoCodeLeftInAnyLanguage) {
  const std::string record = recordOfProcedure("L-27", "after-attachment-change");
  for (const std::string& language : languages()) {
    const std::string html = need(
        certificateHtml(demo().store, folder::edge(), record, {.language = language}, {.utc_ms = kToday}));
    for (const char* const code : {">certificate-", ">document-", ">proof-", "; mass:"}) {
      EXPECT_THAT(html, Not(HasSubstr(code))) << language;
    }
    EXPECT_THAT(need(certificateDcc(demo().store, folder::edge(), record, {.language = language},
                                    {.utc_ms = kToday})),
                HasSubstr("schemaVersion=\"3.2.1\""));
  }
}

// The schemas are of Physikalisch-Technische Bundesanstalt: DCC 3.2.1 and D-SI 2.1.0.
TEST(CertificateTest, EachRecordsDccFitsThePublishedSchemaInEveryLanguage) {
  namespace fs = std::filesystem;
  const fs::path schemas = fs::path(HINGEPIN_SOURCE_DIR) / "../shared/reference/dcc";
  if (!fs::exists(schemas / "dcc_3.2.1.xsd"))
    GTEST_SKIP() << "not checked: the published schema " << (schemas / "dcc_3.2.1.xsd") << " is not there";
  const cli::TemporaryFolder folder;
  std::vector<std::string> arguments = {cli::xmlCatalogSetting(schemas / "catalog.xml"),
                                        "xmllint",
                                        "--nonet",
                                        "--noout",
                                        "--schema",
                                        (schemas / "dcc_3.2.1.xsd").string()};
  const std::string taught = recordOfProcedure("L-27", "after-attachment-change");
  for (const RecordLine& line : need(recordsOf(demo().store, "", {}))) {
    if (!line.amends.empty()) continue;
    for (const std::string& language : languages()) {
      // The words of a record are in its own language; of the others one with its own script is enough.
      if (line.name != taught && language != "ar") continue;
      const std::string file = language + line.name + ".xml";
      cli::writeText(folder.path() / file, need(certificateDcc(demo().store, folder::edge(), line.name,
                                                               {.language = language}, {.utc_ms = kToday})));
      arguments.push_back(file);
    }
  }
  ASSERT_GT(arguments.size(), 20U);
  const cli::ProcessResult result = cli::runProgram("env", arguments, folder.path());
  if (result.status == 127) GTEST_SKIP() << "not checked: xmllint is not installed";
  EXPECT_EQ(result.status, 0) << result.diagnostics;
}

TEST(CertificateTest, NothingOfAPageIsLostInAnyLanguage) {
  const std::string record = recordOfProcedure("L-27", "after-attachment-change");
  for (const std::string& language : languages()) {
    const Reader reader{.language = language};
    const Issue now{.utc_ms = kToday};
    for (const Expected<std::string>& page :
         {certificateHtml(demo().store, folder::edge(), record, reader, now),
          certificateDcc(demo().store, folder::edge(), record, reader, now),
          labelHtml(demo().store, "L-27", "GP-2.7", reader)}) {
      EXPECT_THAT(need(page), Not(HasSubstr("\uFFFD")))
          << language << ": a mark that stands for what can't be shown";
    }
  }
}

TEST(CertificateTest, ACountryIsTwoCapitalLetters) {
  const std::string record = recordOfProcedure("L-27", "after-attachment-change");
  for (const char* const country : {"de", "DEU", "D1", "Ä"}) {
    EXPECT_EQ(codeOf(certificateDcc(demo().store, folder::edge(), record, {},
                                    {.particulars = {.country = country}})),
              "country-malformed");
  }
}

TEST(CertificateTest, ALabelIsAPageWithItsCode) {
  const std::string html = need(labelHtml(demo().store, "L-27", "GP-2.7", {}));
  EXPECT_THAT(html, HasSubstr("Scale calibrated"));
  EXPECT_THAT(html, HasSubstr("alt=\"hingepin:record/"));
}

}  // namespace
}  // namespace hingepin::session
