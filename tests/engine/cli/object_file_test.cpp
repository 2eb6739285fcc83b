// SPDX-License-Identifier: Apache-2.0
#include "engine/folder/object_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>

#include "tests/engine/sync/far_side.h"

namespace hingepin::folder {
namespace {

using namespace sync;
using namespace sync::samples;
using ::testing::IsEmpty;
using ::testing::SizeIs;

void write(const std::string& path, const std::string& bytes) {
  std::ofstream(path, std::ios::binary) << bytes;
}

TEST(ObjectFileTest, CarriesRecordsAndEvidenceFromPhoneToOffice) {
  const sync::samples::Folder folder;
  const std::string path = folder.file("card");
  auto yard = phones(folder, 2);
  const std::string name = yard[0]->work("log");
  EXPECT_EQ(stopOf(yard[0]->exchangeWith(the(objectFile(path)))), "");
  EXPECT_EQ(yard[1]->exchangeWith(the(objectFile(path))).progress.statements_received, 1);
  EXPECT_TRUE(the(yard[1]->store->statement(name)).has_value());
  EXPECT_TRUE(the(yard[1]->store->hasBlob(records::hashName("log"))));
}

TEST(ObjectFileTest, FileThatWasCutOffAnywhereKeepsWhatIsWholeAndGoesOn) {
  const sync::samples::Folder folder;
  const std::string path = folder.file("card");
  const std::vector<Upload> uploads = {{.name = "a/1", .bytes = "first\n"},
                                       {.name = "a/2", .bytes = std::string(40, '7')}};
  for (const auto& put : the(objectFile(path)).put(uploads)) EXPECT_TRUE(put.has_value());
  const std::string whole = store::samples::bytesOfFile(path);
  for (std::size_t size = whole.find("first"); size < whole.size(); ++size) {
    write(path, whole.substr(0, size));
    const Remote cut_off = the(objectFile(path));
    const std::size_t left = the(cut_off.list("a")).size();
    EXPECT_LE(left, 1U);
    for (const auto& put : cut_off.put(uploads)) EXPECT_TRUE(put.has_value());
    const Remote again = the(objectFile(path));
    EXPECT_THAT(the(again.list("a")), SizeIs(2));
    const std::vector<std::string> names = {"a/1", "a/2"};
    EXPECT_EQ(the(again.get(names)[0]), "first\n");
    EXPECT_EQ(the(again.get(names)[1]), uploads[1].bytes);
  }
}

TEST(ObjectFileTest, WhatIsRemovedLeavesTheFileAndOtherFilesAreRefused) {
  const sync::samples::Folder folder;
  const std::string path = folder.file("card");
  const std::vector<Upload> uploads = {{.name = "a/1", .bytes = "A. Demo"},
                                       {.name = "a/2", .bytes = "stays"}};
  const Remote card = the(objectFile(path));
  EXPECT_EQ(the(card.put(uploads)[0]), Put::Done);
  EXPECT_EQ(the(card.put(uploads)[0]), Put::ThereAlready);
  const std::vector<std::string> first = {"a/1"};
  EXPECT_TRUE(card.remove(first)[0].has_value());
  EXPECT_EQ(store::samples::bytesOfFile(path).find("A. Demo"), std::string::npos);
  EXPECT_EQ(codeOf(card.get(first)[0]), "object-not-there");
  EXPECT_THAT(the(card.list("a")), SizeIs(1));
  EXPECT_THAT(the(card.list("b")), IsEmpty());
  write(path, "something else that is long enough");
  EXPECT_EQ(codeOf(objectFile(path)), "object-file-malformed");
  EXPECT_EQ(store::samples::bytesOfFile(path), "something else that is long enough");
}

}  // namespace
}  // namespace hingepin::folder
