// SPDX-License-Identifier: Apache-2.0
#include "engine/records/signers.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/engine/records/people.h"

namespace hingepin::records {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::IsEmpty;
using ::testing::UnorderedElementsAre;

class SignersTest : public ::testing::Test {
 protected:
  SealedSigners next(const SecretKey& key, const SecretKey* old_key = nullptr,
                     const std::string& role = "technician") {
    const Expected<SealedSigners> sealed = sealSigners({.number = number_,
                                                        .previous = previous_,
                                                        .yard_key = key.publicKey(),
                                                        .signers = {listed(keyOf(50), role)}},
                                                       key, old_key);
    EXPECT_TRUE(sealed) << codeOf(sealed);
    previous_ = sealed->name;
    ++number_;
    lists_.push_back({.text = sealed->text, .name = sealed->name});
    return *sealed;
  }
  SignersVerdict verdict() { return newestSigners(lists_, accepted_); }

  SecretKey yard_ = keyOf(1);
  SecretKey new_yard_ = keyOf(2);
  std::int64_t number_ = 1;
  std::optional<std::string> previous_;
  std::vector<StoredText> lists_;
  std::vector<std::string> accepted_;
};

TEST_F(SignersTest, TheNewestOfAChainIsTrustedInAnyOrder) {
  accepted_ = {next(yard_).name};
  next(yard_);
  const std::string newest = next(yard_).name;
  std::ranges::reverse(lists_);
  lists_.push_back(lists_[0]);
  EXPECT_EQ(verdict().name, newest);
  EXPECT_EQ(verdict().list->number, 3);
  EXPECT_THAT(verdict().findings, IsEmpty());
}

TEST_F(SignersTest, ARootThatNobodyAcceptedIsNotTrusted) {
  next(yard_);
  EXPECT_FALSE(verdict().list);
  EXPECT_THAT(codesOf(verdict().findings), ElementsAre("signers-root-not-accepted", "signers-none"));
}

TEST_F(SignersTest, AListBySomebodyElseDoesNotContinueTheChain) {
  const std::string root = next(yard_).name;
  accepted_ = {root};
  next(new_yard_);
  EXPECT_EQ(verdict().name, root);
  EXPECT_THAT(codesOf(verdict().findings), ElementsAre("signers-not-continued"));
}

TEST_F(SignersTest, AChangeOfTheYardsKeyIsTrustedWhenBothKeysSealIt) {
  accepted_ = {next(yard_).name};
  next(new_yard_, &yard_);
  EXPECT_THAT(codesOf(verdict().findings), ElementsAre("signers-key-changed"));
  const std::string newest = next(new_yard_).name;
  EXPECT_EQ(verdict().name, newest);
  // The old key has no say any more.
  next(yard_);
  EXPECT_EQ(verdict().name, newest);
  EXPECT_THAT(codesOf(verdict().findings),
              UnorderedElementsAre("signers-key-changed", "signers-not-continued"));
}

TEST_F(SignersTest, ALostKeyIsReplacedByARootThatAPersonAccepts) {
  const std::string old_root = next(yard_).name;
  accepted_ = {old_root};
  previous_.reset();
  const std::string new_root = next(new_yard_).name;
  EXPECT_EQ(verdict().name, old_root);
  EXPECT_THAT(codesOf(verdict().findings), ElementsAre("signers-root-not-accepted"));
  accepted_.push_back(new_root);
  EXPECT_EQ(verdict().name, new_root);
  EXPECT_EQ(verdict().list->number, 2);
  EXPECT_THAT(codesOf(verdict().findings), ElementsAre("signers-root-replaced"));
  // While the root accepted last is not here, the one that it replaced must not come back.
  lists_.pop_back();
  EXPECT_FALSE(verdict().list);
}

TEST_F(SignersTest, TwoNextListsLeaveTheOneBeforeThem) {
  const std::string root = next(yard_).name;
  accepted_ = {root};
  next(yard_, nullptr, "technician");
  previous_ = root;
  number_ = 2;
  next(yard_, nullptr, "safety-lead");
  EXPECT_EQ(verdict().name, root);
  EXPECT_THAT(codesOf(verdict().findings), ElementsAre("signers-fork", "signers-fork"));
}

TEST_F(SignersTest, AListWhosePredecessorIsNotHereIsNotUsed) {
  const std::string root = next(yard_).name;
  accepted_ = {root};
  next(yard_);
  next(yard_);
  lists_.erase(lists_.begin() + 1);
  EXPECT_EQ(verdict().name, root);
  EXPECT_THAT(codesOf(verdict().findings), ElementsAre("signers-not-arrived-yet"));
}

TEST_F(SignersTest, ANumberThatSkipsDoesNotContinueTheChain) {
  const std::string root = next(yard_).name;
  accepted_ = {root};
  number_ = 3;
  next(yard_);
  EXPECT_EQ(verdict().name, root);
  EXPECT_THAT(codesOf(verdict().findings), ElementsAre("signers-not-continued"));
}

TEST_F(SignersTest, EveryFlippedBitOfAListIsNoticed) {
  accepted_ = {next(yard_).name};
  const std::string sound = lists_[0].text;
  for (std::size_t bit = 0; bit < sound.size() * 8; ++bit) {
    lists_[0].text = flipped(sound, bit);
    const SignersVerdict found = verdict();
    EXPECT_FALSE(found.list) << bit;
    EXPECT_THAT(codesOf(found.findings), Contains(::testing::AnyOf("signers-altered", "signers-malformed")))
        << bit;
  }
}

TEST_F(SignersTest, EveryCutOfAListAndZerosAreMalformed) {
  const std::string sound = next(yard_).text;
  for (std::size_t length = 0; length < sound.size(); ++length) {
    EXPECT_FALSE(readSigners(sound.substr(0, length)));
    EXPECT_FALSE(readSigners(std::string(length, '\0')));
  }
}

TEST_F(SignersTest, AListSealedAsARecordIsNoList) {
  const std::string payload = readSealed(next(yard_).text)->payload;
  EXPECT_EQ(codeOf(readSigners(seal(payload, kSignersType, yard_))), "");
  EXPECT_EQ(codeOf(readSigners(seal(payload, kRecordType, yard_))), "seal-header-unexpected");
}

TEST_F(SignersTest, AListUnderAnotherNameIsAltered) {
  accepted_ = {next(yard_).name};
  lists_[0].name = hashName("another");
  EXPECT_THAT(codesOf(verdict().findings), ElementsAre("signers-altered", "signers-none"));
}

TEST_F(SignersTest, ACopyUnderAWrongNameDoesNotDisplaceAListWhicheverComesFirst) {
  accepted_ = {next(yard_).name};
  StoredText wrong = lists_[0];
  wrong.name = hashName("another");
  for (const auto& lists : {std::vector{lists_[0], wrong}, std::vector{wrong, lists_[0]}}) {
    lists_ = lists;
    EXPECT_EQ(verdict().name, accepted_[0]);
    EXPECT_THAT(saidOf(verdict().findings), ElementsAre(std::pair("signers-altered", *wrong.name)));
  }
}

TEST_F(SignersTest, WhatAListHoldsComesBack) {
  const SignersList list{
      .number = 4,
      .previous = hashName("3"),
      .yard_key = yard_.publicKey(),
      .signers = {{.key = keyOf(5).publicKey(),
                   .role = "safety-lead",
                   .valid_from_utc_ms = 10,
                   .valid_until_utc_ms = 20},
                  {.key = keyOf(5).publicKey(), .role = "yard-checker", .valid_from_utc_ms = 15}},
      .revocations = {
          {.key = keyOf(6).id(), .trusted = {{.epoch = epochOf(1), .sequence = 7, .name = hashName("7")}}}}};
  const Expected<ReadSigners> read = readSigners(sealSigners(list, yard_)->text);
  ASSERT_TRUE(read) << codeOf(read);
  EXPECT_EQ(read->list.number, 4);
  EXPECT_EQ(read->list.previous, list.previous);
  ASSERT_EQ(read->list.signers.size(), 2U);
  EXPECT_EQ(read->list.signers[0].key, keyOf(5).publicKey());
  EXPECT_EQ(read->list.signers[0].valid_until_utc_ms, 20);
  EXPECT_EQ(read->list.signers[1].role, "yard-checker");
  ASSERT_EQ(read->list.revocations.size(), 1U);
  EXPECT_EQ(read->list.revocations[0].trusted[0].sequence, 7);
}

TEST_F(SignersTest, WhatMakesNoSenseIsNotSealed) {
  const SignersList sound{.yard_key = yard_.publicKey(), .signers = {listed(keyOf(5), "technician")}};
  EXPECT_EQ(codeOf(sealSigners(sound, yard_)), "");
  EXPECT_EQ(codeOf(sealSigners(sound, new_yard_)), "seal-key-mismatch");
  SignersList list = sound;
  list.signers[0].role = "Technician ";
  EXPECT_EQ(codeOf(sealSigners(list, yard_)), "json-value-unexpected");
  list = sound;
  list.signers[0].valid_until_utc_ms = list.signers[0].valid_from_utc_ms - 1;
  EXPECT_EQ(codeOf(sealSigners(list, yard_)), "json-value-unexpected");
  list = sound;
  list.signers[0].key = {};
  EXPECT_EQ(codeOf(sealSigners(list, yard_)), "json-value-unexpected");
  list = sound;
  list.number = 0;
  EXPECT_EQ(codeOf(sealSigners(list, yard_)), "json-value-unexpected");
  list = sound;
  list.previous = hashName("0");
  EXPECT_EQ(codeOf(sealSigners(list, yard_)), "json-value-unexpected");
}

}  // namespace
}  // namespace hingepin::records
