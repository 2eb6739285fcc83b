// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sqlite3.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include "engine/store/database.h"
#include "engine/store/schema.h"
#include "tests/engine/soak.h"
#include "tests/engine/store/faulty_disk.h"
#include "tests/engine/store/golden.h"
#include "tests/engine/store/model.h"
#include "tests/engine/store/samples.h"

namespace hingepin::store {
namespace {

using namespace samples;
using testing::IsEmpty;

std::string withoutLogs(const std::string& path) {
  for (const char* suffix : {"-wal", "-shm", "-journal"}) {
    if (std::filesystem::exists(path + suffix)) return suffix;
  }
  return "";
}

void sql(const std::string& path, const std::string& script, bool keep_log = false) {
  sqlite3* database = nullptr;
  ASSERT_EQ(sqlite3_open(path.c_str(), &database), SQLITE_OK);
  if (keep_log) sqlite3_db_config(database, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 1, nullptr);
  EXPECT_EQ(sqlite3_exec(database, script.c_str(), nullptr, nullptr, nullptr), SQLITE_OK)
      << sqlite3_errmsg(database);
  sqlite3_close(database);
}

void write(const std::string& path, const std::string& bytes) {
  std::ofstream(path, std::ios::binary) << bytes;
}

TEST(StoreOpenTest, NewerStoreIsRefusedUntouched) {
  const Folder folder;
  const std::string path = folder.file();
  {
    Yard yard(path);
  }
  sql(path, "PRAGMA user_version = 99");
  const std::string before = bytesOfFile(path);
  EXPECT_EQ(codeOf(Store::open(path)), "store-newer");
  EXPECT_EQ(bytesOfFile(path), before);
  EXPECT_EQ(withoutLogs(path), "");
}

TEST(StoreOpenTest, NewerStoreWhoseLogAloneSaysSoIsRefusedWithFileAndLogUntouched) {
  const Folder folder;
  const std::string path = folder.file();
  {
    Yard yard(path);
  }
  sql(path, "PRAGMA user_version = 99", true);
  const std::string before = bytesOfFile(path);
  const std::string log = bytesOfFile(path + "-wal");
  ASSERT_NE(log, "");
  EXPECT_EQ(codeOf(Store::open(path)), "store-newer");
  EXPECT_EQ(bytesOfFile(path), before);
  EXPECT_EQ(bytesOfFile(path + "-wal"), log);
}

TEST(StoreOpenTest, WhatIsNotOursIsRefusedUntouched) {
  const Folder folder;
  const std::string other = folder.file("other.sqlite");
  sql(other, "PRAGMA application_id = 4711; CREATE TABLE t (a); INSERT INTO t VALUES (1)");
  const std::string nameless = folder.file("nameless.sqlite");
  sql(nameless, "CREATE TABLE t (a)");
  const std::string text = folder.file("letter.txt");
  write(text, std::string(5000, 'l'));
  const std::string zeros = folder.file("zeros");
  write(zeros, std::string(8192, '\0'));
  const std::string brief = folder.file("brief");
  write(brief, "SQLite");
  for (const std::string& path : {other, nameless, text, zeros, brief}) {
    const std::string before = bytesOfFile(path);
    EXPECT_EQ(codeOf(Store::open(path)), "store-not-ours") << path;
    EXPECT_EQ(bytesOfFile(path), before) << path;
    EXPECT_EQ(withoutLogs(path), "") << path;
  }
}

TEST(StoreOpenTest, NotOursIsRefusedUntouchedWithTheJournalOfWorkCutOff) {
  const Folder folder;
  const std::string other = folder.file("other.sqlite");
  const std::string left = folder.file("left.sqlite");
  sql(other, "PRAGMA application_id = 4711; CREATE TABLE t (a); INSERT INTO t VALUES (1)");
  sqlite3* working = nullptr;
  ASSERT_EQ(sqlite3_open(other.c_str(), &working), SQLITE_OK);
  ASSERT_EQ(sqlite3_exec(working, "BEGIN; INSERT INTO t VALUES (2)", nullptr, nullptr, nullptr), SQLITE_OK);
  for (const char* suffix : {"", "-journal"}) std::filesystem::copy_file(other + suffix, left + suffix);
  sqlite3_close(working);
  const std::string before = bytesOfFile(left);
  const std::string journal = bytesOfFile(left + "-journal");
  ASSERT_NE(journal, "");
  EXPECT_EQ(codeOf(Store::open(left)), "store-not-ours");
  EXPECT_EQ(bytesOfFile(left), before);
  EXPECT_EQ(bytesOfFile(left + "-journal"), journal);
}

TEST(StoreOpenTest, FirstPageCutOffAnywhereWhileAStoreIsFirstMadeLeavesNothing) {
  std::string page;
  std::string journal;
  for (std::int64_t lost_at = 0; page.empty(); ++lost_at) {
    FaultyDisk disk(1);
    disk.plan({.power_lost_at = lost_at});
    ASSERT_NE(codeOf(Store::open("demo", disk.vfs())), "");
    page = disk.files()["demo"];
    journal = disk.files()["demo-journal"];
  }
  ASSERT_EQ(page.size(), 4096U);
  ASSERT_NE(journal, "");
  // Each byte of the header, which has 100 (SQLite, "Database File Format", section 1.3), and some of the
  // rest.
  const auto after = [](std::size_t bytes) { return bytes + (bytes < 100 || isSoaking() ? 1 : 8); };
  for (std::size_t written = 0; written <= 512; written = after(written)) {
    for (const std::size_t size : {written, page.size()}) {
      FaultyDisk disk(1);
      std::string torn = page.substr(0, written);
      torn.resize(size, '\0');
      disk.put("demo", torn);
      disk.put("demo-journal", journal);
      const auto store = Store::open("demo", disk.vfs());
      ASSERT_EQ(codeOf(store), "") << written << " of " << size;
      EXPECT_THAT(the(store->units()), IsEmpty());
    }
  }
}

TEST(StoreOpenTest, FolderOrNothingIsNotOpened) {
  const Folder folder;
  EXPECT_EQ(codeOf(Store::open(folder.file(""))), "store-not-opened");
  EXPECT_EQ(codeOf(Store::open(folder.file("no/such/folder"))), "store-not-opened");
  EXPECT_EQ(codeOf(Store::open("")), "store-not-opened");
}

TEST(StoreOpenTest, PathMayHoldWhatMeansSomethingInAnAddress) {
  const Folder folder;
  const std::string path = folder.file("50% of #1?mode=memory&x.hingepin");
  {
    Yard yard(path);
  }
  EXPECT_TRUE(std::filesystem::exists(path));
  EXPECT_EQ(the(opened(path).units()).size(), 1U);
}

TEST(StoreOpenTest, CutOffFileIsDamaged) {
  const Folder folder;
  const std::string path = folder.file();
  {
    Yard yard(path);
  }
  const std::string whole = bytesOfFile(path);
  for (const std::size_t pages : {1U, 2U, 5U, 10U}) {
    write(path, whole.substr(0, pages * 4096));
    EXPECT_EQ(codeOf(Store::open(path)), "store-damaged") << pages;
  }
}

TEST(StoreOpenTest, AlteredSchemaIsDamaged) {
  for (const char* script :
       {"DROP INDEX pair_due", "DROP TABLE waiting", "CREATE TABLE more (a TEXT) STRICT",
        "CREATE TRIGGER forget AFTER INSERT ON journal BEGIN DELETE FROM journal; END"}) {
    const Folder folder;
    const std::string path = folder.file();
    {
      Yard yard(path);
    }
    sql(path, script);
    EXPECT_EQ(codeOf(Store::open(path)), "store-damaged") << script;
  }
}

TEST(StoreOpenTest, GapInARunningJournalIsDamagedAndInAnEndedOneIsFound) {
  const Folder folder;
  const std::string path = folder.file();
  {
    Yard yard(path);
    fillGolden(yard);
    the(yard.store.appendEvent("job-2", 1, "second"));
    the(yard.store.appendEvent("job-2", 2, "third"));
  }
  sql(path, "DELETE FROM journal WHERE sequence = 1 AND job = (SELECT number FROM job WHERE id = 'job-1')");
  const auto findings = the(opened(path).check());
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].message.code, "store-journal-gap");
  sql(path, "DELETE FROM journal WHERE sequence = 1 AND job = (SELECT number FROM job WHERE id = 'job-2')");
  EXPECT_EQ(codeOf(Store::open(path)), "store-damaged");
}

TEST(StoreCheckTest, EachAlterationIsFound) {
  const std::vector<std::pair<std::string, std::string>> alterations{
      {"UPDATE blob SET bytes = zeroblob(length(bytes)) WHERE number = 3", "store-blob-altered"},
      {"UPDATE statement SET sequence = 7 WHERE kind = 'record'", "store-statement-altered"},
      {"UPDATE statement SET text = replace(text, 'payload', 'payloae')", "store-statement-altered"},
      {"UPDATE signers_list SET text = text || ' '", "store-signers-altered"},
      {"UPDATE personal SET bytes = x'00' WHERE bytes IS NOT NULL", "store-personal-altered"},
      {"UPDATE pair SET restrictions = '[1]'", "store-restrictions-altered"},
      {"UPDATE statement SET job = NULL", "store-job-record-differs"},
      {"DELETE FROM signers_list", "store-waiting-for-nothing"},
      {"PRAGMA foreign_keys = OFF; DELETE FROM attachment", "store-reference-dangling"},
  };
  for (const auto& [script, code] : alterations) {
    const Folder folder;
    const std::string path = folder.file();
    {
      Yard yard(path);
      fillGolden(yard);
      ASSERT_THAT(the(yard.store.check()), IsEmpty());
    }
    sql(path, script);
    const auto findings = the(opened(path).check());
    EXPECT_TRUE(std::ranges::any_of(findings, [&](const StoreFinding& each) {
      return each.message.code == code;
    })) << script;
  }
}

TEST(StoreCheckTest, NameThatDiffersBetweenTableAndIndexIsFoundWhereverItStands) {
  const Folder folder;
  const std::string path = folder.file();
  {
    Yard yard(path);
    fillGolden(yard);
  }
  const std::string whole = bytesOfFile(path);
  int places = 0;
  for (std::size_t at = 0; (at = whole.find(kUnit.id, at)) != std::string::npos; ++at) {
    std::string altered = whole;
    altered[at + kUnit.id.size() - 1] = '9';
    write(path, altered);
    const auto store = Store::open(path);
    ++places;
    if (store) {
      EXPECT_FALSE(the(store->check()).empty()) << at;
    }
  }
  EXPECT_GE(places, 6);
}

TEST(StoreGoldenTest, DatabaseOfEachVersionOpensWithWhatItHeld) {
  const Folder folder;
  Yard fresh(folder.file("fresh"));
  const std::vector<std::string> blobs = fillGolden(fresh);
  const Facts expected = the(factsOf(fresh.store, blobs));
  for (std::size_t version = 1; version <= migrations().size(); ++version) {
    const std::string name = "v" + std::to_string(version) + ".hingepin";
    const std::string golden = std::string(HINGEPIN_SOURCE_DIR) + "/tests/engine/store/golden/" + name;
    ASSERT_TRUE(std::filesystem::exists(golden)) << golden;
    std::filesystem::copy_file(golden, folder.file(name));
    const Store store = opened(folder.file(name));
    EXPECT_EQ(the(factsOf(store, blobs)), expected) << name;
    EXPECT_THAT(the(store.check()), IsEmpty()) << name;
  }
}

// A version after the newest that does not exist, to hold the way from one to the next.
constexpr const char* kNextScript = R"sql(
ALTER TABLE unit ADD COLUMN place TEXT NOT NULL DEFAULT 'yard';
CREATE TABLE wheel (unit TEXT NOT NULL REFERENCES unit (id), number INTEGER NOT NULL, PRIMARY KEY (unit, number)) STRICT;
INSERT INTO wheel SELECT id, 1 FROM unit;
)sql";

std::vector<const char*> scriptsAnd(std::initializer_list<const char*> more) {
  std::vector<const char*> scripts(migrations().begin(), migrations().end());
  scripts.insert(scripts.end(), more);
  return scripts;
}

std::int64_t numberIn(Database& database, const char* query) {
  return the(firstRow(database, [](const Query& row) { return row.integer(0); }, query)).value_or(-1);
}

TEST(StoreMigrationTest, PowerLossAtAnyMomentLeavesTheOldVersionOrTheNew) {
  const std::vector<const char*> next = scriptsAnd({kNextScript});
  int old_left = 0;
  int new_left = 0;
  for (std::int64_t lost_at = 0;; ++lost_at) {
    FaultyDisk disk(static_cast<std::uint64_t>(lost_at) + 1);
    {
      Yard yard("demo", disk.vfs());
    }
    disk.settle();
    disk.plan({.power_lost_at = lost_at});
    const bool done = Database::open("demo", disk.vfs(), next).has_value() && !disk.isOff();
    disk.losePower();
    if (Store::open("demo", disk.vfs())) {
      ++old_left;
      EXPECT_EQ(the(opened("demo", disk.vfs()).units()).size(), 1U);
    } else {
      ++new_left;
      EXPECT_EQ(codeOf(Store::open("demo", disk.vfs())), "store-newer");
    }
    auto migrated = Database::open("demo", disk.vfs(), next);
    ASSERT_TRUE(migrated.has_value()) << migrated.error().message.code << " at " << lost_at;
    EXPECT_EQ(numberIn(**migrated, "PRAGMA user_version"), static_cast<std::int64_t>(next.size()));
    EXPECT_EQ(numberIn(**migrated, "SELECT count(*) FROM wheel"), 1);
    EXPECT_EQ(numberIn(**migrated, "SELECT count(*) FROM unit WHERE place = 'yard'"), 1);
    if (done) break;
  }
  EXPECT_GT(old_left, 3);
  EXPECT_GT(new_left, 1);
}

TEST(StoreMigrationTest, ScriptThatFailsOrLeavesDanglingReferencesChangesNothing) {
  for (const char* wrong : {"CREATE TABLE wheel (a TEXT) STRICT", "INSERT INTO unit VALUES (1)",
                            "DELETE FROM unit; INSERT INTO journal VALUES (77, 0, 'of no job')"}) {
    const Folder folder;
    const std::string path = folder.file();
    {
      Yard yard(path);
    }
    const std::vector<const char*> broken = scriptsAnd({kNextScript, wrong});
    EXPECT_FALSE(Database::open(path, "", broken).has_value()) << wrong;
    EXPECT_EQ(the(opened(path).units()).size(), 1U) << wrong;
    EXPECT_THAT(the(opened(path).check()), IsEmpty());
  }
}

TEST(StoreSharingTest, TwoOnOneFileSeeEachOtherAndTheSequenceProtectsTheJournal) {
  const Folder folder;
  Yard yard(folder.file());
  Store other = opened(folder.file());
  the(yard.store.beginJob(yard.job(), "first"));
  the(other.appendEvent("job-1", 1, "from the other"));
  EXPECT_EQ(codeOf(yard.store.appendEvent("job-1", 1, "too late")), "journal-not-continued");
  the(yard.store.appendEvent("job-1", 2, "after reading again"));
  EXPECT_EQ(the(other.journal("job-1")).size(), 3U);
}

TEST(StoreSharingTest, WhileAnotherWritesAStoreIsBusyAndThenGoesOn) {
  const Folder folder;
  Yard yard(folder.file());
  sqlite3* other = nullptr;
  ASSERT_EQ(sqlite3_open(folder.file().c_str(), &other), SQLITE_OK);
  ASSERT_EQ(sqlite3_exec(other, "BEGIN IMMEDIATE", nullptr, nullptr, nullptr), SQLITE_OK);
  EXPECT_EQ(codeOf(yard.store.putUnit({.id = "second", .profile = "{}"})), "store-busy");
  EXPECT_EQ(the(yard.store.units()).size(), 1U);  // reading goes on
  ASSERT_EQ(sqlite3_exec(other, "ROLLBACK", nullptr, nullptr, nullptr), SQLITE_OK);
  the(yard.store.putUnit({.id = "second", .profile = "{}"}));
  sqlite3_close(other);
}

TEST(StoreBackupTest, BackupOpensAsTheSameStoreAndIsNeverWrittenOverAFile) {
  const Folder folder;
  Yard yard(folder.file());
  const std::vector<std::string> blobs = fillGolden(yard);
  const std::string copy = folder.file("copy.hingepin");
  the(yard.store.backup(copy));
  const Facts before = the(factsOf(yard.store, blobs));
  the(yard.store.putUnit({.id = "later", .profile = "{}"}));
  {
    const Store restored = opened(copy);
    EXPECT_EQ(the(factsOf(restored, blobs)), before);
    EXPECT_THAT(the(restored.check()), IsEmpty());
  }
  EXPECT_EQ(codeOf(yard.store.backup(copy)), "backup-not-written");
  EXPECT_EQ(codeOf(yard.store.backup(folder.file("no/such/folder"))), "backup-not-written");
}

TEST(StoreBackupTest, PowerLossDuringABackupLeavesAWholeCopyOrAnEmptyStore) {
  int whole = 0;
  for (std::int64_t lost_at = 0; lost_at < 90; lost_at += isSoaking() ? 1 : 3) {
    FaultyDisk disk(static_cast<std::uint64_t>(lost_at) + 1);
    Facts expected;
    std::vector<std::string> blobs;
    {
      Yard yard("demo", disk.vfs());
      blobs = fillGolden(yard);
      expected = the(factsOf(yard.store, blobs));
      disk.settle();
      disk.plan({.power_lost_at = lost_at});
      const bool said = yard.store.backup("copy").has_value();
      EXPECT_TRUE(!said || !disk.isOff());
      if (said) ++whole;
    }
    const bool said = !disk.isOff();
    disk.losePower();
    EXPECT_EQ(the(factsOf(opened("demo", disk.vfs()), blobs)), expected);
    const Store copy = opened("copy", disk.vfs());
    EXPECT_THAT(the(copy.check()), IsEmpty());
    const Facts found = the(factsOf(copy, blobs));
    if (said || !the(copy.units()).empty()) {
      EXPECT_EQ(found, expected) << lost_at;
    }
  }
  EXPECT_GT(whole, 1);
  EXPECT_LT(whole, isSoaking() ? 85 : 28);
}

TEST(StoreErasingTest, ErasedBytesAreInNoneOfTheFiles) {
  FaultyDisk disk(1);  // whose files can be looked through at any time
  Random random(5);
  Yard yard("demo", disk.vfs());
  std::vector<Personal> people;
  std::vector<std::string> erased;
  const auto inFiles = [&disk](const std::string& bytes) {
    for (const auto& [name, file] : disk.files()) {
      if (file.find(bytes) != std::string::npos) return name;
    }
    return std::string();
  };
  std::int64_t now = kNow;
  for (unsigned step = 0; step < cases(300); ++step) {
    if (people.empty() || random.uniform() < 0.6) {
      // From a name to a photo, so that rows of every size stand beside each other.
      Personal person{
          .name = "",
          .bytes = std::string(static_cast<std::size_t>(16 + 30000 * std::pow(random.uniform(), 6)), ' ')};
      for (char& byte : person.bytes) byte = static_cast<char>(random.bits() >> 56U);
      for (auto& byte : person.salt) byte = static_cast<std::uint8_t>(random.bits() >> 56U);
      person.name = records::personalName(person.salt, person.bytes);
      the(yard.store.putPersonal(person, ++now));
      people.push_back(person);
      continue;
    }
    const auto who = static_cast<std::size_t>(random.bits() % people.size());
    const Personal person = people[who];
    people.erase(people.begin() + static_cast<std::ptrdiff_t>(who));
    if (step % 50 == 1) {
      ASSERT_NE(inFiles(person.bytes.substr(0, 16)), "") << "the search finds what is there";
    }
    the(yard.store.erasePersonal(person.name, ++now));
    erased.push_back(person.bytes.substr(0, 16));
    erased.push_back(person.bytes.substr(person.bytes.size() - 16));
    erased.push_back(records::textOf(person.salt));
    ASSERT_EQ(inFiles(erased[erased.size() - 3]), "") << step;
  }
  for (const std::string& bytes : erased) EXPECT_EQ(inFiles(bytes), "");
}

TEST(StoreErasingTest, WhatWasErasedStaysErasedAndIsToldToTheFarSide) {
  const Folder folder;
  Yard yard(folder.file());
  Personal person{.name = "", .bytes = "C. Demo"};
  person.name = records::personalName(person.salt, person.bytes);
  the(yard.store.putPersonal(person, kNow));
  const Waiting queued = the(yard.store.waiting()).front();
  the(yard.store.erasePersonal(person.name, kNow));
  the(yard.store.sent(queued));  // of the state before
  ASSERT_EQ(the(yard.store.waiting()).size(), 1U);
  the(yard.store.sent(the(yard.store.waiting()).front()));
  the(yard.store.putPersonal(person, kNow + 1));
  EXPECT_TRUE(the(yard.store.personal()).front().erased);
  EXPECT_THAT(the(yard.store.waiting()), IsEmpty());
  EXPECT_THAT(the(yard.store.evidence()).erased, testing::ElementsAre(person.name));
}

TEST(StoreValueTest, ValuesThatNoTableTakesAreRefused) {
  const Folder folder;
  Yard yard(folder.file());
  Store& store = yard.store;
  EXPECT_EQ(codeOf(store.putUnit({.id = "", .profile = "{}"})), "store-value-refused");
  EXPECT_EQ(codeOf(store.putUnit({.id = "\xFF", .profile = "{}"})), "store-value-refused");
  EXPECT_EQ(codeOf(store.putUnit({.id = "u", .profile = std::string(kMostTextBytes + 1, ' ')})),
            "store-value-refused");
  EXPECT_EQ(codeOf(store.putPair({.unit = kUnit.id, .attachment = kBucket.id, .due_utc_ms = -1})),
            "store-value-refused");
  EXPECT_EQ(codeOf(store.acceptRoot("short")), "store-value-refused");
  EXPECT_EQ(codeOf(store.putKnownHead({"key", "epoch", 0, records::hashName("")})), "store-value-refused");
  Job done = yard.job();
  done.phase = "done";
  EXPECT_EQ(codeOf(store.beginJob(done, "first")), "store-value-refused");
  EXPECT_EQ(codeOf(store.putPersonal({.name = records::hashName("x"), .bytes = "y"}, kNow)),
            "personal-name-differs");
  records::Phone phone{.key = records::keyOf(1)};
  StoredStatement renamed = stored(phone.record());
  renamed.name = records::hashName("another");
  EXPECT_EQ(codeOf(store.putStatement(renamed, kNow)), "statement-name-differs");
  EXPECT_EQ(codeOf(store.putStatement({.name = renamed.name, .text = ""}, kNow)), "seal-malformed");
}

}  // namespace
}  // namespace hingepin::store
