// SPDX-License-Identifier: Apache-2.0
#include "engine/sync/remote.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/engine/sync/far_side.h"

namespace hingepin::sync {
namespace {

using samples::busy;
using samples::codeOf;
using samples::cut;
using ::testing::ElementsAre;

Remote thatGives(std::function<Expected<std::string>(const std::string&)> one) {
  return {.get = [one](std::span<const std::string> names) {
    std::vector<Expected<std::string>> answers;
    for (const std::string& name : names) answers.push_back(one(name));
    return answers;
  }};
}

TEST(PatientRemoteTest, OnlyWhatMayPassIsTriedAgainAndEachAnswerKeepsItsPlace) {
  std::map<std::string, int> asked;
  const Remote remote = patient(thatGives([&](const std::string& name) -> Expected<std::string> {
                                  const int time = ++asked[name];
                                  if (name == "never") return fail(ErrorKind::IoFailed, "far-side-refused");
                                  if (name == "late" && time < 3) return cut();
                                  return name + "!";
                                }),
                                samples::noWait(5));
  const std::vector<std::string> names = {"never", "late", "soon"};
  const auto answers = remote.get(names);
  EXPECT_EQ(codeOf(answers[0]), "far-side-refused");
  EXPECT_EQ(answers[1].value_or(""), "late!");
  EXPECT_EQ(answers[2].value_or(""), "soon!");
  EXPECT_THAT(asked, ElementsAre(std::pair("late", 3), std::pair("never", 1), std::pair("soon", 1)));
}

TEST(PatientRemoteTest, WaitsDoubleUpToTheLongestAndEndWhereTheJitterSays) {
  std::vector<std::int64_t> waits;
  const Remote remote =
      patient(thatGives([](const std::string&) { return cut(); }), {.most_tries = 7,
                                                                    .first_ms = 100,
                                                                    .most_ms = 1000,
                                                                    .jitter = [] { return 0.75; },
                                                                    .wait =
                                                                        [&](std::int64_t ms) {
                                                                          waits.push_back(ms);
                                                                          return true;
                                                                        }});
  const std::vector<std::string> names = {"a"};
  EXPECT_EQ(codeOf(remote.get(names).front()), "far-side-cut");
  EXPECT_THAT(waits, ElementsAre(75, 150, 300, 600, 750, 750));
}

TEST(PatientRemoteTest, FarSideThatSaysWhenToComeBackIsGivenThatTime) {
  std::vector<std::int64_t> waits;
  int asked = 0;
  const Remote remote =
      patient(thatGives([&](const std::string&) -> Expected<std::string> {
                if (++asked > 1) return "there";
                return fail(ErrorKind::IoFailed, "far-side-busy", {{"retry_after_s", Amount{7, "s", 0}}});
              }),
              {.first_ms = 100,
               .jitter = [] { return 0.5; },
               .wait =
                   [&](std::int64_t ms) {
                     waits.push_back(ms);
                     return true;
                   }});
  const std::vector<std::string> names = {"a"};
  EXPECT_EQ(remote.get(names).front().value_or(""), "there");
  EXPECT_THAT(waits, ElementsAre(7050));
}

TEST(PatientRemoteTest, WhereThereIsNoGoingOnTheLastAnswerStands) {
  int asked = 0;
  const Remote remote = patient(thatGives([&](const std::string&) -> Expected<std::string> {
                                  ++asked;
                                  return busy();
                                }),
                                {.jitter = [] { return 0.5; }, .wait = [](std::int64_t) { return false; }});
  const std::vector<std::string> names = {"a"};
  EXPECT_EQ(codeOf(remote.get(names).front()), "far-side-busy");
  EXPECT_EQ(asked, 1);
}

}  // namespace
}  // namespace hingepin::sync
