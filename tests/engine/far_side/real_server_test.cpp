// SPDX-License-Identifier: Apache-2.0
// The real thing on loopback: Apache httpd with mod_dav over TLS, or OpenStack Swift with its s3api. Which,
// the build says.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/engine/far_side/servers/real.h"
#include "tests/engine/sync/far_side.h"

namespace hingepin::far_side {
namespace {

using namespace sync;
using namespace sync::samples;
using samples::RealServer;
using ::testing::IsEmpty;
using ::testing::SizeIs;

class RealServerTest : public ::testing::Test {
 protected:
  static void SetUpTestSuite() {
    folder_ = new Folder;
    server_ = new RealServer(HINGEPIN_FAR_SIDE, folder_->file("server"));
  }
  static void TearDownTestSuite() {
    delete server_;
    delete folder_;
  }
  void SetUp() override {
    if (server_->isMissing()) GTEST_SKIP() << server_->packages() << " are needed";
    ASSERT_TRUE(server_->runs());
  }

  static Folder* folder_;
  static RealServer* server_;
};
Folder* RealServerTest::folder_ = nullptr;
RealServer* RealServerTest::server_ = nullptr;

TEST_F(RealServerTest, ObjectsArePutListedReadAndRemoved) {
  const Remote share = server_->remote();
  EXPECT_THAT(the(share.list("objects/deep")), IsEmpty());
  const std::string bytes("\0\xFF binary\n", 10);
  const std::vector<Upload> uploads = {{.name = "objects/deep/a", .bytes = bytes},
                                       {.name = "objects/deep/b", .bytes = ""},
                                       {.name = "objects/other/c", .bytes = "c"}};
  for (const auto& put : share.put(uploads)) EXPECT_EQ(the(put), Put::Done);
  // Swift's s3api refuses If-None-Match in a PUT with 501. Names say what bytes an object has, so there the
  // same bytes are put twice.
  const std::vector<Upload> again = {{.name = "objects/deep/a", .bytes = server_->isS3() ? bytes : "other"}};
  EXPECT_EQ(the(share.put(again).front()), server_->isS3() ? Put::Done : Put::ThereAlready);
  const std::vector<std::string> names = {"objects/deep/a", "objects/deep/b", "objects/deep/none"};
  auto got = share.get(names);
  EXPECT_EQ(the(got[0]), bytes);
  EXPECT_EQ(the(got[1]), "");
  EXPECT_EQ(codeOf(got[2]), "object-not-there");
  const auto sizes = share.sizes(names);
  EXPECT_EQ(the(sizes[0]), 10);
  EXPECT_EQ(the(sizes[1]), 0);
  EXPECT_EQ(the(sizes[2]), std::nullopt);
  EXPECT_THAT(the(share.list("objects/deep")), SizeIs(2));
  EXPECT_THAT(the(share.list("objects")), IsEmpty());  // folders are not objects
  const std::vector<Upload> replace = {{.name = "objects/deep/a", .bytes = "other", .replace = true}};
  EXPECT_EQ(the(share.put(replace).front()), Put::Done);
  EXPECT_EQ(the(share.get(names)[0]), "other");
  for (const auto& removed : share.remove(names)) EXPECT_TRUE(removed.has_value());
  EXPECT_THAT(the(share.list("objects/deep")), IsEmpty());
}

TEST_F(RealServerTest, WrongSecretUnknownAuthorityAndNobodyThereAreToldApart) {
  const std::string wrong = "not the secret";
  EXPECT_EQ(codeOf(server_->remote(server_->client(wrong), wrong, samples::nowMs).list("heads")),
            "far-side-refused");
  if (!server_->isS3()) {
    const Remote strange =
        webdav(curlClient({.user = "technician", .secret = server_->secret()}), server_->url());
    EXPECT_EQ(codeOf(strange.list("heads")), "far-side-not-trusted");
  }
  const Remote nobody =
      webdav(server_->client(), "https://localhost:" + std::to_string(freePort()) + "/share");
  const auto answer = nobody.list("heads");
  EXPECT_EQ(codeOf(answer), "far-side-unreachable");
  EXPECT_TRUE(mayPass(answer.error()));
}

TEST_F(RealServerTest, ClockThatIsYearsOffIsNoHindrance) {
  for (const std::int64_t years : {-7, 11}) {
    const Remote share = server_->remote(server_->client(), server_->secret(),
                                         [=] { return samples::nowMs() + years * 365 * 86'400'000LL; });
    EXPECT_TRUE(share.list("heads").has_value()) << years;
  }
}

TEST_F(RealServerTest, FolderOfMoreObjectsThanOneAnswerHoldsIsListedWhole) {
  constexpr int kMany = 1010;  // S3 lists 1000 at a time
  const Remote share = server_->remote();
  std::vector<Upload> uploads;
  for (int number = 0; number < kMany; ++number) {
    uploads.push_back({.name = "objects/many/" + std::to_string(number), .bytes = "x"});
  }
  for (const auto& put : share.put(uploads)) ASSERT_TRUE(put.has_value()) << codeOf(put);
  EXPECT_THAT(the(share.list("objects/many")), SizeIs(kMany));
}

TEST_F(RealServerTest, RecordsEvidenceAndErasuresGoFromPhoneToPhone) {
  const Folder folder;
  auto yard = phones(folder, 3);
  std::string photo(2 * kPieceBytes + 100, 'p');
  photo[0] = 'q';
  const std::string name = yard[0]->work(photo);
  store::Personal person{.name = "", .bytes = "A. Demo"};
  person.name = records::personalName(person.salt, person.bytes);
  the(yard[0]->store->putPersonal(person, kNow));
  for (int job = 0; job < 20; ++job) yard[1]->work("log " + std::to_string(job));
  for (int round = 0; round < 2; ++round) {
    for (const auto& phone : yard) EXPECT_EQ(stopOf(phone->exchangeWith(server_->remote())), "");
  }
  for (const auto& phone : yard) {
    EXPECT_THAT(sortedNames(*phone->store), SizeIs(21));
    EXPECT_TRUE(the(phone->store->blob(records::hashName(photo))) == photo);
    EXPECT_TRUE(the(phone->store->personal(person.name)).has_value());
  }
  the(yard[0]->store->erasePersonal(person.name, kNow + 1));
  for (const auto& phone : yard) static_cast<void>(phone->exchangeWith(server_->remote()));
  EXPECT_TRUE(the(yard[2]->store->personal(person.name))->erased);
  EXPECT_THAT(the(server_->remote().list(personalFolder(person.name))), IsEmpty());
}

}  // namespace
}  // namespace hingepin::far_side
