// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <optional>

#include "tests/engine/soak.h"
#include "tests/engine/store/faulty_disk.h"
#include "tests/engine/store/model.h"
#include "tests/engine/store/samples.h"

namespace hingepin::store {
namespace {

using namespace samples;

// On a disk in memory, so that thousands of commits take seconds.
TEST(StorePropertyTest, RandomUseGivesWhatTheModelGivesAlsoAfterReopening) {
  unsigned applied = 0;
  unsigned refused = 0;
  for (std::uint64_t seed = 1; seed <= cases(7); ++seed) {
    FaultyDisk disk(seed);
    std::optional<Store> store(opened("demo", disk.vfs()));
    Model model;
    Chance chance(seed);
    for (const Operation& operation : chance.beginning()) {
      ASSERT_EQ(apply(*store, operation).code, model.apply(operation));
    }
    for (int step = 0; step < 300; ++step) {
      const Operation operation = chance.next(model);
      const std::string expected = model.apply(operation);
      ASSERT_EQ(apply(*store, operation).code, expected) << "seed " << seed << " step " << step;
      ++(expected.empty() ? applied : refused);
      if (step % 20 != 19) continue;
      ASSERT_EQ(the(factsOf(*store, chance.blobs())), model.facts()) << "seed " << seed << " step " << step;
      if (step % 60 != 59) continue;
      ASSERT_THAT(the(store->check()), testing::IsEmpty());
      store.reset();
      store.emplace(opened("demo", disk.vfs()));
      ASSERT_EQ(the(factsOf(*store, chance.blobs())), model.facts()) << "seed " << seed << " step " << step;
    }
  }
  // Both roads were taken.
  EXPECT_GT(applied, cases(7) * 200);
  EXPECT_GT(refused, cases(7) * 10);
}

}  // namespace
}  // namespace hingepin::store
