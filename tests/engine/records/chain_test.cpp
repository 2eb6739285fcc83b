// SPDX-License-Identifier: Apache-2.0
#include "engine/records/chain.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/engine/records/people.h"

namespace hingepin::records {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;
using ::testing::UnorderedElementsAre;

std::string name(const std::string& text) { return hashName(text); }

// Links a1, a2, ... of one chain.
std::vector<Link> chainOf(std::int64_t length, const std::string& letter = "a", const std::string& key = "k",
                          const std::string& epoch = "e") {
  std::vector<Link> links;
  std::optional<Head> head;
  for (std::int64_t at = 1; at <= length; ++at) {
    links.push_back({name(letter + std::to_string(at)), nextPlace(head, key, "phone", epoch)});
    head = headAfter(links.back().place, links.back().name);
  }
  return links;
}

std::string rangeOf(const Finding& finding) {
  std::string text = finding.message.code;
  for (const auto& [key, value] : finding.message.values) {
    if (key == "first" || key == "last")
      text += " " + std::to_string(static_cast<int>(std::get<Amount>(value).value));
  }
  return text;
}

std::vector<std::string> rangesOf(const std::vector<Finding>& findings) {
  std::vector<std::string> all;
  for (const Finding& finding : findings) all.push_back(rangeOf(finding));
  return all;
}

TEST(ChainTest, AWholeChainIsContinuousInAnyOrder) {
  std::vector<Link> links = chainOf(6);
  EXPECT_THAT(checkChains(links, {}), IsEmpty());
  std::ranges::reverse(links);
  EXPECT_THAT(checkChains(links, {}), IsEmpty());
  EXPECT_THAT(checkChains({}, {}), IsEmpty());
}

TEST(ChainTest, EveryLinkLeftOutIsMissingButTheLastIsNotKnownToBe) {
  const std::vector<Link> whole = chainOf(6);
  for (std::size_t out = 0; out < whole.size(); ++out) {
    std::vector<Link> links = whole;
    links.erase(links.begin() + static_cast<std::ptrdiff_t>(out));
    const std::string number = std::to_string(out + 1);
    if (out + 1 < whole.size()) {
      EXPECT_THAT(rangesOf(checkChains(links, {})), ElementsAre("record-missing " + number + " " + number));
      continue;
    }
    EXPECT_THAT(checkChains(links, {}), IsEmpty());
    const Head head = headAfter(whole.back().place, whole.back().name);
    EXPECT_THAT(rangesOf(checkChains(links, {{head}})), ElementsAre("record-not-arrived-yet 6 6"));
  }
}

TEST(ChainTest, MissingAndNotArrivedYetAreToldApart) {
  std::vector<Link> links = chainOf(5);
  links.erase(links.begin() + 1, links.begin() + 3);
  const Head head{.key = "k", .epoch = "e", .sequence = 9, .name = name("a9")};
  EXPECT_THAT(rangesOf(checkChains(links, {{head}})),
              ElementsAre("record-missing 2 3", "record-not-arrived-yet 6 9"));
  EXPECT_THAT(rangesOf(checkChains({}, {{head}})), ElementsAre("record-not-arrived-yet 1 9"));
}

TEST(ChainTest, AKnownHeadThatWeHaveSaysNothing) {
  const std::vector<Link> links = chainOf(5);
  EXPECT_THAT(checkChains(links, {{headAfter(links[2].place, links[2].name)}}), IsEmpty());
}

TEST(ChainTest, AKnownHeadThatDiffersIsAFork) {
  const std::vector<Link> links = chainOf(5);
  const Head head = headAfter(links[2].place, name("another"));
  EXPECT_THAT(codesOf(checkChains(links, {{head}})), ElementsAre("record-fork"));
}

TEST(ChainTest, ALinkThatNamesAnotherThanTheOneBeforeBreaksTheChain) {
  std::vector<Link> links = chainOf(5);
  links[3].place.previous = name("elsewhere");
  EXPECT_THAT(saidOf(checkChains(links, {})), ElementsAre(std::pair("record-broken-chain", links[3].name)));
}

TEST(ChainTest, AForkIsSaidOnceWhereTheBranchesPart) {
  std::vector<Link> links = chainOf(6);
  std::optional<Head> head = headAfter(links[2].place, links[2].name);
  for (int at = 4; at <= 6; ++at) {
    links.push_back({name("b" + std::to_string(at)), nextPlace(head, "k", "phone", "e")});
    head = headAfter(links.back().place, links.back().name);
  }
  const std::vector<Finding> findings = checkChains(links, {});
  ASSERT_THAT(codesOf(findings), ElementsAre("record-fork"));
  EXPECT_EQ(std::get<Amount>(findings[0].message.values[1].second).value, 4.0);
}

TEST(ChainTest, AFirstLinkTwiceIsAForkToo) {
  std::vector<Link> links = chainOf(2);
  links.push_back(chainOf(1, "b")[0]);
  EXPECT_THAT(codesOf(checkChains(links, {})), ElementsAre("record-fork"));
}

TEST(ChainTest, ANewEpochAfterARestoreIsSaidAndIsNoFork) {
  std::vector<Link> links = chainOf(4);
  const Head head = headAfter(links.back().place, links.back().name);
  const ChainPlace restored = nextPlace(head, "k", "phone", "another epoch");
  EXPECT_EQ(restored.sequence, 1);
  EXPECT_FALSE(restored.previous);
  links.push_back({name("c1"), restored});
  EXPECT_THAT(codesOf(checkChains(links, {})), ElementsAre("record-new-epoch"));
}

TEST(ChainTest, ChainsOfDifferentKeysDoNotMix) {
  std::vector<Link> links = chainOf(3);
  std::ranges::move(chainOf(3, "b", "other key"), std::back_inserter(links));
  EXPECT_THAT(checkChains(links, {}), IsEmpty());
}

TEST(ChainTest, AnAbsurdSequenceCostsNoMoreThanAnother) {
  std::vector<Link> links = chainOf(1);
  links[0].place.sequence = 9007199254740991;
  links[0].place.previous = name("x");
  EXPECT_THAT(codesOf(checkChains(links, {})), ElementsAre("record-missing"));
}

TEST(ChainTest, AnEpochIsSixteenBytes) {
  EXPECT_TRUE(isEpoch(epochOf(1)));
  EXPECT_FALSE(isEpoch(""));
  EXPECT_FALSE(isEpoch(epochOf(1) + "A"));
  EXPECT_FALSE(isEpoch(std::string(22, '\0')));
}

}  // namespace
}  // namespace hingepin::records
