// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>
#include <string>
#include <vector>

#include "tests/engine/store/faulty_disk.h"
#include "tests/engine/store/golden.h"
#include "tests/engine/store/model.h"
#include "tests/engine/store/samples.h"

namespace hingepin::store {
namespace {

using namespace samples;
using testing::ElementsAre;
using testing::IsEmpty;

std::string exported(const Store& store) {
  std::ostringstream out;
  the(store.exportTo(out));
  return out.str();
}

Expected<Imported> importInto(Store& store, const std::string& text) {
  std::istringstream in(text);
  return store.importFrom(in);
}

std::vector<std::string> linesOf(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

TEST(StoreTransferTest, RandomStoreComesBackFromItsExportAndImportingTwiceChangesNothing) {
  for (std::uint64_t seed = 1; seed <= 10; ++seed) {
    FaultyDisk disk(seed);
    Store store = opened("demo", disk.vfs());
    Model model;
    Chance chance(seed + 100);
    for (const Operation& operation : chance.beginning()) {
      ASSERT_EQ(apply(store, operation).code, model.apply(operation));
    }
    for (int step = 0; step < 200; ++step) {
      const Operation operation = chance.next(model);
      ASSERT_EQ(apply(store, operation).code, model.apply(operation));
    }
    const std::string text = exported(store);
    Store copy = opened("copy", disk.vfs());
    const Imported first = the(importInto(copy, text));
    EXPECT_GT(first.added, 50);
    EXPECT_THAT(first.kept, IsEmpty());
    EXPECT_EQ(the(factsOf(copy, chance.blobs())), model.facts()) << seed;
    EXPECT_THAT(the(copy.check()), IsEmpty());
    EXPECT_EQ(exported(copy), text);

    // What was sent in the meantime does not wait again.
    if (!model.waiting.empty()) the(copy.sent(model.waiting.front()));
    const Facts before = the(factsOf(copy, chance.blobs()));
    const Imported second = the(importInto(copy, text));
    EXPECT_EQ(second.added, 0);
    EXPECT_THAT(second.kept, IsEmpty());
    EXPECT_EQ(the(factsOf(copy, chance.blobs())), before);
  }
}

TEST(StoreTransferTest, ProfileOfTheYardComesAlongWhereThereIsNone) {
  FaultyDisk disk(1);
  Store store = opened("demo", disk.vfs());
  EXPECT_EQ(the(store.yardProfile()), "");
  the(store.putYardProfile("{\"demo\":1}"));
  the(store.putYardProfile("{\"demo\":2}"));
  Store copy = opened("copy", disk.vfs());
  EXPECT_EQ(the(importInto(copy, exported(store))).added, 1);
  EXPECT_EQ(the(copy.yardProfile()), "{\"demo\":2}");
  EXPECT_EQ(exported(copy), exported(store));
  the(copy.putYardProfile("{\"demo\":3}"));
  const Imported second = the(importInto(copy, exported(store)));
  EXPECT_EQ(second.added, 0);
  ASSERT_EQ(second.kept.size(), 1U);
  EXPECT_EQ(second.kept.front().code, "import-kept-yard");
  EXPECT_EQ(the(copy.yardProfile()), "{\"demo\":3}");
}

TEST(StoreTransferTest, BytesLongerThanALineComeBack) {
  FaultyDisk disk(1);
  Store store = opened("demo", disk.vfs());
  std::string photo(3'200'001, ' ');
  Random random(3);
  for (char& byte : photo) byte = static_cast<char>(random.bits() >> 56U);
  const std::string hash = the(store.putBlob(photo, "image/jpeg"));
  const std::string nothing = the(store.putBlob("", ""));
  Store copy = opened("copy", disk.vfs());
  the(importInto(copy, exported(store)));
  EXPECT_EQ(the(copy.blob(hash)), photo);
  EXPECT_EQ(the(copy.blob(nothing)), "");
}

TEST(StoreTransferTest, AlteredExportIsRefusedAsAWhole) {
  FaultyDisk disk(1);
  Yard yard("demo", disk.vfs());
  const std::vector<std::string> blobs = fillGolden(yard);
  const std::string text = exported(yard.store);
  Store copy = opened("copy", disk.vfs());
  const Facts before = the(factsOf(copy, blobs));
  const auto refused = [&](const std::string& altered) {
    const auto imported = importInto(copy, altered);
    EXPECT_FALSE(imported.has_value());
    if (!imported) {
      EXPECT_EQ(imported.error().kind, ErrorKind::InvalidInput) << imported.error().message.code;
    }
    return !imported.has_value();
  };
  const std::vector<std::string> lines = linesOf(text);
  for (std::size_t left_out = 0; left_out < lines.size(); ++left_out) {
    std::string altered;
    for (std::size_t line = 0; line < lines.size(); ++line) {
      if (line != left_out) altered += lines[line] + "\n";
    }
    ASSERT_TRUE(refused(altered)) << lines[left_out];
  }
  Random random(8);
  for (int flip = 0; flip < 150; ++flip) {
    std::string altered = text;
    altered[static_cast<std::size_t>(random.bits() % text.size())] ^=
        static_cast<char>(1U << static_cast<unsigned>(random.bits() % 8));
    ASSERT_TRUE(refused(altered));
  }
  for (int cut = 0; cut < 40; ++cut) {
    ASSERT_TRUE(refused(text.substr(0, static_cast<std::size_t>(random.bits() % text.size()))));
  }
  ASSERT_TRUE(refused(text + "\n"));
  ASSERT_TRUE(refused(text + text));
  EXPECT_EQ(the(factsOf(copy, blobs)), before);
  the(importInto(copy, text));
}

TEST(StoreTransferTest, WhatIsNewIsMergedAndWhatIsOtherwiseHereIsKeptAndTold) {
  FaultyDisk disk(1);
  Yard there("there", disk.vfs());
  Yard here("here", disk.vfs());
  for (Yard* yard : {&there, &here}) the(yard->store.beginJob(yard->job(), "first"));
  the(there.store.appendEvent("job-1", 1, "second"));
  the(there.store.putUnit({.id = "loader-8", .profile = "{}"}));
  the(here.store.putUnit({.id = kUnit.id, .profile = "{\"here\":1}"}));
  the(here.store.acceptRoot(records::hashName("root here")));
  the(there.store.acceptRoot(records::hashName("root there")));
  const Imported imported = the(importInto(here.store, exported(there.store)));
  EXPECT_EQ(imported.added, 2);  // the unit and the event
  std::vector<std::string> kept;
  for (const Message& message : imported.kept) kept.push_back(message.code);
  EXPECT_THAT(kept, ElementsAre("import-kept-unit", "import-kept-roots"));
  EXPECT_EQ(the(here.store.unit(kUnit.id))->profile, "{\"here\":1}");
  EXPECT_THAT(the(here.store.journal("job-1")), ElementsAre("first", "second"));
  EXPECT_THAT(the(here.store.acceptedRoots()), ElementsAre(records::hashName("root here")));
}

TEST(StoreTransferTest, JobThatWentOnInTwoWaysIsRefusedAndNothingIsTaken) {
  FaultyDisk disk(1);
  Yard there("there", disk.vfs());
  Yard here("here", disk.vfs());
  for (Yard* yard : {&there, &here}) the(yard->store.beginJob(yard->job(), "first"));
  the(there.store.putUnit({.id = "loader-8", .profile = "{}"}));
  the(there.store.appendEvent("job-1", 1, "second there"));
  the(here.store.appendEvent("job-1", 1, "second here"));
  EXPECT_EQ(codeOf(importInto(here.store, exported(there.store))), "import-job-differs");
  EXPECT_THAT(the(here.store.units()), ElementsAre(kUnit));
  EXPECT_THAT(the(here.store.journal("job-1")), ElementsAre("first", "second here"));
}

TEST(StoreTransferTest, ErasureComesAlong) {
  FaultyDisk disk(1);
  Store there = opened("there", disk.vfs());
  Store here = opened("here", disk.vfs());
  Personal person{.name = "", .bytes = "D. Demo, somewhere"};
  person.name = records::personalName(person.salt, person.bytes);
  for (Store* store : {&there, &here}) the(store->putPersonal(person, kNow));
  the(there.erasePersonal(person.name, kNow));
  const std::string text = exported(there);
  EXPECT_EQ(text.find(records::base64Url(records::bytesOf(person.bytes))), std::string::npos);
  EXPECT_EQ(the(importInto(here, text)).added, 1);
  EXPECT_TRUE(the(here.personal()).front().erased);
  for (const auto& [name, bytes] : disk.files())
    EXPECT_EQ(bytes.find(person.bytes), std::string::npos) << name;
}

}  // namespace
}  // namespace hingepin::store
