// SPDX-License-Identifier: Apache-2.0
#include "engine/procedures/library.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <set>

#include "engine/procedures/lint.h"
#include "engine/session/procedure_words.h"
#include "tests/engine/procedures/samples.h"

namespace hingepin::procedures {
namespace {

using samples::fileText;
using samples::procedureOf;
using session::Words;
using testing::IsEmpty;

const Words& english() {
  static const Words words = **session::allWords("en");
  return words;
}

std::vector<Procedure> allProcedures() {
  std::vector<Procedure> all;
  for (const LibraryEntry& entry : library()) all.push_back(procedureOf(std::string(entry.text)));
  return all;
}

TEST(LibraryTest, EachEntryHoldsTheExactBytesOfItsFile) {
  std::size_t files = 0;
  for (const auto& file :
       std::filesystem::directory_iterator(std::string(HINGEPIN_SOURCE_DIR) + "/engine/procedures/library")) {
    const std::string id = file.path().stem().string();
    const LibraryEntry* const entry = findInLibrary(id);
    ASSERT_NE(entry, nullptr) << id;
    EXPECT_EQ(entry->id, id);
    EXPECT_EQ(entry->text, fileText("engine/procedures/library/" + id + ".json")) << id;
    EXPECT_EQ(procedureOf(std::string(entry->text)).id, id);
    ++files;
  }
  EXPECT_EQ(library().size(), files);
  EXPECT_EQ(findInLibrary("dreamt"), nullptr);
}

TEST(LibraryTest, NoProcedureHasAFinding) {
  TextCodes codes;
  for (const auto& [code, words] : english()) codes.insert(code);
  for (const Procedure& procedure : allProcedures()) {
    for (const Finding& finding : lint(procedure, &codes)) {
      ADD_FAILURE() << procedure.id << finding.pointer << ": " << finding.problem.code;
    }
  }
}

TEST(ProcedureWordsTest, ThereAreWordsForExactlyWhatAProcedureSays) {
  for (const Procedure& procedure : allProcedures()) {
    const Expected<Words> words = session::wordsFor(procedure, "en");
    ASSERT_TRUE(words) << procedure.id;
    TextCodes codes;
    for (const auto& [code, text] : *words) codes.insert(code);
    EXPECT_EQ(codes, textCodesOf(procedure));
  }
}

TEST(ProcedureWordsTest, WhatIsMissingIsNamed) {
  Procedure procedure = allProcedures().front();
  const Expected<Words> unknown = session::wordsFor(procedure, "xx");
  ASSERT_FALSE(unknown);
  EXPECT_EQ(unknown.error().message.code, "language-unknown");
  procedure.steps.front().detail = "dreamt-of";
  const Expected<Words> words = session::wordsFor(procedure, "en");
  ASSERT_FALSE(words);
  EXPECT_EQ(words.error().message.code, "words-missing");
  EXPECT_EQ(std::get<std::string>(words.error().message.values.front().second), "dreamt-of");
  EXPECT_THAT(session::languages(), testing::Contains("en"));
}

}  // namespace
}  // namespace hingepin::procedures
