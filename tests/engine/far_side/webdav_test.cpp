// SPDX-License-Identifier: Apache-2.0
// The real thing: Apache httpd with mod_dav over TLS on loopback.
#include "engine/far_side/webdav.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "engine/far_side/curl_client.h"
#include "tests/engine/far_side/servers/server.h"
#include "tests/engine/sync/far_side.h"

namespace hingepin::far_side {
namespace {

using namespace sync;
using namespace sync::samples;
using ::testing::IsEmpty;
using ::testing::SizeIs;

class WebdavTest : public ::testing::Test {
 protected:
  static void SetUpTestSuite() {
    folder_ = new Folder;
    server_ = new Server("apache.sh", folder_->file("apache"));
  }
  static void TearDownTestSuite() {
    delete server_;
    delete folder_;
  }
  void SetUp() override {
    if (server_->isMissing()) GTEST_SKIP() << "Debian's apache2-bin and openssl are needed";
    ASSERT_TRUE(server_->runs());
  }
  static CurlOptions options() {
    return {.user = "technician", .secret = "demo password", .ca_file = folder_->file("apache/ca.pem")};
  }
  static std::string url() { return "https://localhost:" + std::to_string(server_->port()) + "/share"; }
  static Remote remote(const CurlOptions& with = options()) { return webdav(curlClient(with), url()); }

  static Folder* folder_;
  static Server* server_;
};
Folder* WebdavTest::folder_ = nullptr;
Server* WebdavTest::server_ = nullptr;

TEST_F(WebdavTest, ObjectsArePutListedReadAndRemoved) {
  const Remote share = remote();
  EXPECT_THAT(the(share.list("objects/deep")), IsEmpty());
  const std::string bytes("\0\xFF binary\n", 10);
  const std::vector<Upload> uploads = {{.name = "objects/deep/a", .bytes = bytes},
                                       {.name = "objects/deep/b", .bytes = ""},
                                       {.name = "objects/other/c", .bytes = "c"}};
  for (const auto& put : share.put(uploads)) EXPECT_EQ(the(put), Put::Done);
  const std::vector<Upload> again = {{.name = "objects/deep/a", .bytes = "other"}};
  EXPECT_EQ(the(share.put(again).front()), Put::ThereAlready);
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

TEST_F(WebdavTest, WrongPasswordUnknownAuthorityAndNobodyThereAreToldApart) {
  CurlOptions wrong = options();
  wrong.secret = "not the password";
  EXPECT_EQ(codeOf(remote(wrong).list("heads")), "far-side-refused");
  CurlOptions strange = options();
  strange.ca_file = "";
  EXPECT_EQ(codeOf(remote(strange).list("heads")), "far-side-not-trusted");
  const Remote nobody =
      webdav(curlClient(options()), "https://localhost:" + std::to_string(freePort()) + "/share");
  const auto answer = nobody.list("heads");
  EXPECT_EQ(codeOf(answer), "far-side-unreachable");
  EXPECT_TRUE(mayPass(answer.error()));
}

TEST_F(WebdavTest, RecordsEvidenceAndErasuresGoFromPhoneToPhone) {
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
    for (const auto& phone : yard) EXPECT_EQ(stopOf(phone->exchangeWith(remote())), "");
  }
  for (const auto& phone : yard) {
    EXPECT_THAT(sortedNames(*phone->store), SizeIs(21));
    EXPECT_TRUE(the(phone->store->blob(records::hashName(photo))) == photo);
    EXPECT_TRUE(the(phone->store->personal(person.name)).has_value());
  }
  the(yard[0]->store->erasePersonal(person.name, kNow + 1));
  for (const auto& phone : yard) static_cast<void>(phone->exchangeWith(remote()));
  EXPECT_TRUE(the(yard[2]->store->personal(person.name))->erased);
  EXPECT_THAT(the(remote().list(personalFolder(person.name))), IsEmpty());
}

}  // namespace
}  // namespace hingepin::far_side
