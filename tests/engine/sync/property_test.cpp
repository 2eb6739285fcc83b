// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/engine/soak.h"
#include "tests/engine/sync/far_side.h"

namespace hingepin::sync {
namespace {

using namespace samples;
using ::testing::IsEmpty;

/// Phones at random moments work, exchange over a line with faults, are broken off and killed; one is
/// restored from a backup, one server is wound back. Then the line is mended.
void holdsTheSameSetInTheEnd(std::uint64_t seed, int steps) {
  SCOPED_TRACE("seed " + std::to_string(seed));
  Random random(seed);
  const Folder folder;
  auto yard = phones(folder, 4);
  FarSide far_side;
  far_side.random = random.fork(1);
  far_side.honours_none_match = seed % 2 == 0;
  far_side.faults.rate = 0.04;
  std::vector<std::string> made;
  std::vector<std::string> blobs;
  Objects snapshot;
  std::uint64_t lives = 0;
  for (int step = 0; step < steps; ++step) {
    Handset& phone = *yard[random.bits() % yard.size()];
    phone.pen.now = kNow + static_cast<std::int64_t>(random.bits() % 900'000);  // no two clocks agree
    const double what = random.uniform();
    if (what < 0.35) {
      std::string log = "log " + std::to_string(step);
      if (random.uniform() < 0.05) log += std::string(kPieceBytes + random.bits() % kPieceBytes, 'x');
      blobs.push_back(records::hashName(log));
      made.push_back(phone.work(log));
    } else if (what < 0.9) {
      std::int64_t left = random.uniform() < 0.2 ? static_cast<std::int64_t>(random.bits() % 6) : 1000;
      static_cast<void>(
          phone.exchangeWith(patient(far_side.remote(), noWait(2)), [&] { return --left > 0; }));
    } else if (what < 0.96) {
      phone.reopen();
    } else if (what < 0.97) {
      // Restored from a backup: what was not sent since is gone with the old phone, so it is sent first.
      const std::string backup = folder.file("backup-" + std::to_string(++lives));
      the(phone.store->backup(backup));
      phone.path = backup;
      phone.reopen();
      phone.newDevice(lives);
    } else if (what < 0.985) {
      snapshot = far_side.objects;
    } else if (!snapshot.empty()) {
      far_side.objects = snapshot;
    }
  }
  far_side.faults.rate = 0.0;
  for (int round = 0; round < 6; ++round) {
    for (const auto& phone : yard) static_cast<void>(phone->exchangeWith(far_side));
  }
  std::ranges::sort(made);
  for (const auto& phone : yard) {
    EXPECT_EQ(sortedNames(*phone->store), made) << phone->number;
    EXPECT_THAT(the(phone->store->waiting()), IsEmpty());
    EXPECT_THAT(the(phone->store->check()), IsEmpty());
    for (const std::string& blob : blobs) EXPECT_TRUE(the(phone->store->hasBlob(blob))) << blob;
    for (const InQuarantine& held : the(inQuarantine(*phone->store))) ADD_FAILURE() << held.why.code;
    far_side.requests = 0;
    const Outcome quiet = phone->exchangeWith(far_side);
    EXPECT_EQ(far_side.requests, 1);
    EXPECT_THAT(codesOf(quiet.findings), IsEmpty());
  }
  EXPECT_GT(far_side.faults.sum(), 20);
}

TEST(ExchangePropertyTest, WhateverGoesWrongAllStoresHoldTheSameSetInTheEnd) {
  for (std::uint64_t seed = 1; seed <= cases(1); ++seed) holdsTheSameSetInTheEnd(seed, 120);
}

}  // namespace
}  // namespace hingepin::sync
