// SPDX-License-Identifier: Apache-2.0
#include "engine/sync/exchange.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

#include "tests/engine/sync/far_side.h"

namespace hingepin::sync {
namespace {

using namespace samples;
using store::WaitingKind;
using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::IsEmpty;
using ::testing::IsSupersetOf;
using ::testing::Not;
using ::testing::SizeIs;

/// Four pieces, no two alike.
std::string large(char byte) {
  std::string bytes(3 * kPieceBytes + 17, byte);
  for (std::size_t at = 0; at < bytes.size(); at += kPieceBytes)
    bytes[at] = static_cast<char>('0' + at / kPieceBytes);
  return bytes;
}

class ExchangeTest : public ::testing::Test {
 protected:
  const Folder folder;
  std::vector<std::unique_ptr<Handset>> yard = phones(folder, 2);
  Handset& first = *yard[0];
  Handset& second = *yard[1];
  FarSide far_side;

  /// Objects of a folder, by the start of their names.
  [[nodiscard]] std::vector<std::string> objectsIn(const std::string& start) const {
    std::vector<std::string> names;
    for (const auto& [name, bytes] : far_side.objects) {
      if (name.starts_with(start)) names.push_back(name);
    }
    return names;
  }

  /// The far side over a line that breaks when so many objects have been put.
  [[nodiscard]] Remote breaksAfter(int puts) {
    Remote remote = far_side.remote();
    remote.put = [left = puts, put = remote.put](std::span<const Upload> uploads) mutable {
      std::vector<Expected<Put>> answers;
      for (const Upload& upload : uploads)
        answers.push_back(left-- > 0 ? std::move(put(std::span(&upload, 1)).front()) : Expected<Put>(cut()));
      return answers;
    };
    return remote;
  }
};

TEST_F(ExchangeTest, RecordsAndEvidenceReachTheOtherPhoneOnceAndUnaltered) {
  const std::string name = first.work("time [s],boom_sensor [V]\n0,1\n");
  const Outcome sent = first.exchangeWith(far_side);
  EXPECT_EQ(stopOf(sent), "");
  EXPECT_THAT(the(first.store->waiting()), IsEmpty());
  const Outcome received = second.exchangeWith(far_side);
  EXPECT_EQ(stopOf(received), "");
  EXPECT_EQ(received.progress.statements_received, 1);
  EXPECT_EQ(received.progress.evidence_received, 1);
  const auto here = the(first.store->statement(name));
  const auto there = the(second.store->statement(name));
  ASSERT_TRUE(here && there);
  EXPECT_EQ(there->text, here->text);
  EXPECT_EQ(there->unit, "loader-7");
  EXPECT_EQ(the(second.store->blob(records::hashName("time [s],boom_sensor [V]\n0,1\n"))),
            "time [s],boom_sensor [V]\n0,1\n");
  EXPECT_THAT(the(second.store->waiting()), IsEmpty());
  EXPECT_THAT(the(second.store->check()), IsEmpty());
}

TEST_F(ExchangeTest, WhereNothingIsNewThereIsOneRequest) {
  for (int job = 0; job < 5; ++job) {
    first.work("log " + std::to_string(job));
    second.work("other log " + std::to_string(job));
    first.exchangeWith(far_side);
    second.exchangeWith(far_side);
  }
  first.exchangeWith(far_side);
  far_side.requests = 0;
  const Outcome again = first.exchangeWith(far_side);
  EXPECT_EQ(far_side.requests, 1);
  EXPECT_EQ(again.progress.bytes_sent + again.progress.bytes_received, 0);
}

TEST_F(ExchangeTest, CostFollowsWhatIsNew) {
  for (int job = 0; job < 300; ++job) {
    first.work("log");
    first.exchangeWith(far_side);
  }
  second.exchangeWith(far_side);
  EXPECT_EQ(the(second.store->statementNames()).size(), 300U);
  first.work("log");
  far_side.requests = 0;
  first.exchangeWith(far_side);
  // heads; the blob and the parcel put and looked at; the head put; heads; the old head removed
  EXPECT_LE(far_side.requests, 8);
  far_side.requests = 0;
  EXPECT_EQ(second.exchangeWith(far_side).progress.statements_received, 1);
  EXPECT_LE(far_side.requests, 2);
}

TEST_F(ExchangeTest, NewestParcelsOfManyDevicesAreFetchedInOneGo) {
  const Folder other_folder;
  auto fleet = phones(other_folder, 5);
  for (std::size_t number = 1; number < fleet.size(); ++number) {
    fleet[number]->workWithoutLog();
    fleet[number]->exchangeWith(far_side);
  }
  Remote remote = far_side.remote();
  std::vector<std::size_t> asked;
  remote.get = [&asked, get = remote.get](std::span<const std::string> names) {
    asked.push_back(names.size());
    return get(names);
  };
  EXPECT_EQ(fleet[0]->exchangeWith(patient(remote, noWait())).progress.statements_received, 4);
  EXPECT_THAT(asked, ElementsAre(4U));
}

TEST_F(ExchangeTest, ServerThatIgnoresIfNoneMatchIsSafeToo) {
  far_side.honours_none_match = false;
  for (int job = 0; job < 3; ++job) {
    first.work("log " + std::to_string(job));
    second.work("log " + std::to_string(job));
  }
  for (int round = 0; round < 2; ++round) {
    first.exchangeWith(far_side);
    second.exchangeWith(far_side);
  }
  EXPECT_THAT(sortedNames(*first.store), SizeIs(6));
  EXPECT_EQ(sortedNames(*first.store), sortedNames(*second.store));
}

TEST_F(ExchangeTest, LargeEvidenceGoesOnWhereTheLineBrokeBothWays) {
  const std::string photo = large('p');
  first.work(photo);
  EXPECT_EQ(stopOf(first.exchangeWith(breaksAfter(3))), "far-side-cut");
  EXPECT_THAT(objectsIn("pieces/"), SizeIs(3));
  const Outcome rest = first.exchangeWith(far_side);
  EXPECT_LT(rest.progress.bytes_sent, static_cast<std::int64_t>(kPieceBytes));

  int gets = 0;
  Remote cuts = far_side.remote();
  const auto get = cuts.get;
  cuts.get = [&](std::span<const std::string> names) {
    std::vector<Expected<std::string>> answers;
    for (const std::string& name : names) {
      answers.push_back(++gets > 2 ? Expected<std::string>(cut())
                                   : std::move(get(std::span(&name, 1)).front()));
    }
    return answers;
  };
  EXPECT_EQ(stopOf(second.exchangeWith(cuts)), "far-side-cut");
  EXPECT_FALSE(the(second.store->hasBlob(records::hashName(photo))));
  second.reopen();
  const Outcome after = second.exchangeWith(far_side);
  EXPECT_LT(after.progress.bytes_received, 3 * static_cast<std::int64_t>(kPieceBytes));
  EXPECT_TRUE(the(second.store->blob(records::hashName(photo))) == photo);
}

TEST_F(ExchangeTest, ParcelsThatWereThereWhenTheLineBrokeDoNotTravelAgain) {
  const std::string readings(100'000, '7');
  for (int job = 0; job < 30; ++job) first.seal({{"readings", records::jsonString(readings)}});
  EXPECT_EQ(stopOf(first.exchangeWith(breaksAfter(4))), "far-side-cut");
  const auto there = objectsIn("parcels/");
  EXPECT_THAT(there, SizeIs(4));
  EXPECT_THAT(objectsIn("heads/"), IsEmpty());
  std::vector<std::string> travelled;
  Remote counts = far_side.remote();
  counts.put = [&, put = counts.put](std::span<const Upload> uploads) {
    for (const Upload& upload : uploads) travelled.push_back(upload.name);
    return put(uploads);
  };
  EXPECT_EQ(stopOf(first.exchangeWith(counts)), "");
  for (const std::string& name : there) EXPECT_THAT(travelled, Not(Contains(name)));
  second.exchangeWith(far_side);
  EXPECT_EQ(sortedNames(*second.store), sortedNames(*first.store));
  EXPECT_THAT(sortedNames(*second.store), SizeIs(30));
}

/// Objects as files of a folder: what a process that is killed has put stays.
Remote folderAsFarSide(const std::string& root) {
  namespace fs = std::filesystem;
  const auto read = [root](const std::string& name) -> Expected<std::string> {
    std::ifstream in(root + "/" + name, std::ios::binary);
    if (!in) return fail(ErrorKind::NotFound, "object-not-there", {{"name", name}});
    return std::string(std::istreambuf_iterator<char>(in), {});
  };
  return {.list = [root](const std::string& folder) -> Expected<std::vector<Listed>> {
            std::vector<Listed> listed;
            std::error_code none;
            for (const auto& each : fs::directory_iterator(root + "/" + folder, none)) {
              if (each.is_regular_file())
                listed.push_back({each.path().filename(), static_cast<std::int64_t>(each.file_size())});
            }
            return listed;
          },
          .get =
              [read](std::span<const std::string> names) {
                std::vector<Expected<std::string>> answers;
                for (const std::string& name : names) answers.push_back(read(name));
                return answers;
              },
          .sizes =
              [read](std::span<const std::string> names) {
                std::vector<Expected<std::optional<std::int64_t>>> answers;
                for (const std::string& name : names) {
                  const auto bytes = read(name);
                  answers.push_back(bytes ? std::optional(std::ssize(*bytes)) : std::nullopt);
                }
                return answers;
              },
          .put =
              [root](std::span<const Upload> uploads) {
                for (const Upload& upload : uploads) {
                  const fs::path path = root + "/" + upload.name;
                  fs::create_directories(path.parent_path());
                  std::ofstream(path, std::ios::binary) << upload.bytes;
                }
                return std::vector<Expected<Put>>(uploads.size(), Put::Done);
              },
          .remove =
              [root](std::span<const std::string> names) {
                for (const std::string& name : names) fs::remove(root + "/" + name);
                return std::vector<Expected<void>>(names.size());
              }};
}

TEST_F(ExchangeTest, PhoneKilledAtAnyParcelOfALargePushDoublesAndLosesNothing) {
  const Remote there = folderAsFarSide(folder.file("share"));
  const std::string readings(100'000, '7');
  for (int job = 0; job < 40; ++job) first.seal({{"readings", records::jsonString(readings)}});
  for (const int most_puts : {0, 1, 3, 0, 4}) {
    first.store.reset();
    const pid_t child = ::fork();
    if (child == 0) {
      Remote deadly = there;
      deadly.put = [left = most_puts, &there](std::span<const Upload> uploads) mutable {
        std::vector<Expected<Put>> answers;
        for (const Upload& upload : uploads) {
          if (left-- == 0) ::kill(::getpid(), SIGKILL);
          answers.push_back(std::move(there.put(std::span(&upload, 1)).front()));
        }
        return answers;
      };
      first.reopen();
      static_cast<void>(first.exchangeWith(deadly));
      ::_exit(0);
    }
    int status = 0;
    ::waitpid(child, &status, 0);
    EXPECT_TRUE(WIFSIGNALED(status));
    first.reopen();
    first.workWithoutLog();  // what is made meanwhile must get no number that was given away
  }
  EXPECT_EQ(stopOf(first.exchangeWith(there)), "");
  const Outcome received = second.exchangeWith(there);
  EXPECT_EQ(stopOf(received), "");
  EXPECT_THAT(received.findings, IsEmpty());
  EXPECT_EQ(sortedNames(*second.store), sortedNames(*first.store));
  EXPECT_THAT(sortedNames(*second.store), SizeIs(45));
  const auto parcels = the(there.list(parcelFolder(first.source(), 1)));
  EXPECT_EQ(std::ssize(parcels), received.progress.parcels_received);
  EXPECT_EQ(the(second.store->parcelSources()).front().whole, std::ssize(parcels));
}

TEST_F(ExchangeTest, ProgressTellsInTheEndAsManyParcelsToSendAsWereSent) {
  const std::string readings(100'000, '7');
  for (int job = 0; job < 30; ++job) first.seal({{"readings", records::jsonString(readings)}});
  const Progress progress = first.exchangeWith(far_side).progress;
  EXPECT_GT(progress.parcels_sent, 4);
  EXPECT_EQ(progress.parcels_sent, progress.parcels_to_send);
  EXPECT_EQ(std::ssize(objectsIn("parcels/")), progress.parcels_sent);
}

TEST_F(ExchangeTest, StrangersRecordWaitsInQuarantineUntilTheYardListsItsKey) {
  Handset stranger(folder, 7);
  const std::string name = stranger.work("log");
  stranger.exchangeWith(far_side);
  const std::string good = second.work("good");
  second.exchangeWith(far_side);
  const Outcome outcome = first.exchangeWith(far_side);
  EXPECT_EQ(outcome.progress.quarantined, 1);
  EXPECT_THAT(sortedNames(*first.store), ElementsAre(good));
  const auto held = the(inQuarantine(*first.store));
  ASSERT_THAT(held, SizeIs(1));
  EXPECT_EQ(held[0].why.code, "record-unknown-signer");
  EXPECT_EQ(held[0].source, stranger.source());

  const records::SecretKey yard_key = records::keyOf(3);
  const auto lists = the(first.store->signersLists());
  records::SignersList next = the(records::readSigners(lists[0].text)).list;
  next.number = 2;
  next.previous = lists[0].name;
  next.signers.push_back(records::listed(stranger.pen.key, "technician"));
  the(second.store->putSigners(the(records::sealSigners(next, yard_key)), kNow));
  second.exchangeWith(far_side);
  EXPECT_EQ(first.exchangeWith(far_side).progress.statements_received, 1);
  EXPECT_TRUE(the(first.store->statement(name)).has_value());
  EXPECT_THAT(the(inQuarantine(*first.store)), IsEmpty());
  EXPECT_TRUE(the(first.store->hasBlob(records::hashName("log"))));
}

TEST_F(ExchangeTest, OfARevokedKeyOnlyWhatLeadsToItsLastTrustedRecordIsTaken) {
  const std::string one = second.work("1");
  const std::string two = second.work("2");
  const std::string three = second.work("3");
  const records::SecretKey yard_key = records::keyOf(3);
  const auto lists = the(first.store->signersLists());
  records::SignersList next = the(records::readSigners(lists[0].text)).list;
  next.number = 2;
  next.previous = lists[0].name;
  next.revocations.push_back({.key = second.pen.key.id(), .trusted = {{second.pen.epoch, 2, two}}});
  the(first.store->putSigners(the(records::sealSigners(next, yard_key)), kNow, false));
  second.exchangeWith(far_side);
  first.exchangeWith(far_side);
  first.exchangeWith(far_side);
  EXPECT_THAT(sortedNames(*first.store), ::testing::UnorderedElementsAre(one, two));
  const auto held = the(inQuarantine(*first.store));
  ASSERT_THAT(held, SizeIs(1));
  EXPECT_EQ(held[0].why.code, "record-after-revocation");
}

TEST_F(ExchangeTest, AlteredParcelIsNamedHoldsUpNothingAndIsMendedByWhoHasIt) {
  first.work("1");
  first.exchangeWith(far_side);
  const std::string victim = objectsIn("parcels/").front();
  first.work("2");
  first.exchangeWith(far_side);
  far_side.objects[victim][far_side.objects[victim].size() / 2] ^= 1;
  const Outcome noticed = second.exchangeWith(far_side);
  EXPECT_THAT(codesOf(noticed.findings), IsSupersetOf({"parcel-altered", "parcel-missing"}));
  EXPECT_EQ(noticed.progress.statements_received, 1);
  ASSERT_THAT(the(inQuarantine(*second.store)), SizeIs(1));
  EXPECT_THAT(objectsIn("heads/wanted-"), SizeIs(1));

  first.exchangeWith(far_side);
  EXPECT_THAT(objectsIn("heads/wanted-"), IsEmpty());
  EXPECT_THAT(second.exchangeWith(far_side).findings, IsEmpty());
  EXPECT_EQ(sortedNames(*second.store), sortedNames(*first.store));
  EXPECT_THAT(the(inQuarantine(*second.store)), IsEmpty());
}

TEST_F(ExchangeTest, ReplacedAndReorderedParcelsAreNamed) {
  first.work("1");
  first.exchangeWith(far_side);
  first.work("2");
  first.exchangeWith(far_side);
  second.work("3");
  second.exchangeWith(far_side);
  const auto of_first = objectsIn("parcels/" + first.source());
  const auto of_second = objectsIn("parcels/" + second.source());
  const Objects before = far_side.objects;
  Handset third(folder, 9);
  third.takeYard(yardOf(yard));
  std::swap(far_side.objects[of_first[0]], far_side.objects[of_first[1]]);
  EXPECT_THAT(codesOf(third.exchangeWith(far_side).findings), Contains("parcel-out-of-order"));
  far_side.objects = before;
  far_side.objects[of_first[0]] = far_side.objects[of_second[0]];
  Handset fourth(folder, 10);
  fourth.takeYard(yardOf(yard));
  EXPECT_THAT(codesOf(fourth.exchangeWith(far_side).findings), Contains("parcel-replaced"));
}

TEST_F(ExchangeTest, DroppedParcelIsNamedAskedForAndComesBack) {
  for (int job = 0; job < 4; ++job) {
    first.work(std::to_string(job));
    first.exchangeWith(far_side);
  }
  far_side.objects.erase(objectsIn("parcels/")[1]);
  const Outcome noticed = second.exchangeWith(far_side);
  EXPECT_THAT(codesOf(noticed.findings), ElementsAre("parcel-missing"));
  EXPECT_EQ(noticed.progress.statements_received, 3);
  first.exchangeWith(far_side);
  EXPECT_THAT(second.exchangeWith(far_side).findings, IsEmpty());
  EXPECT_EQ(sortedNames(*second.store), sortedNames(*first.store));
}

TEST_F(ExchangeTest, FarSideThatRollsBackIsNamedAndGivenWhatItLost) {
  first.work("1");
  first.exchangeWith(far_side);
  second.exchangeWith(far_side);
  const Objects older = far_side.objects;
  first.work("2");
  first.exchangeWith(far_side);
  second.exchangeWith(far_side);
  far_side.objects = older;
  // The phone that made it is away: whoever else saw it notices, and has it.
  const Outcome noticed = second.exchangeWith(far_side);
  EXPECT_THAT(codesOf(noticed.findings), ElementsAre("far-side-rolled-back"));
  EXPECT_EQ(noticed.progress.parcels_sent, 1);
  Handset third(folder, 9);
  third.takeYard(yardOf(yard));
  third.exchangeWith(far_side);
  EXPECT_EQ(sortedNames(*third.store), sortedNames(*first.store));
}

TEST_F(ExchangeTest, WhatOneDeviceToldOfAnotherRevealsAServerThatHidesIt) {
  FarSide card{.address = "card"};
  first.work("1");
  first.exchangeWith(far_side);
  first.work("2");
  first.exchangeWith(card);
  // The second phone has both, from the card, and tells of them in what it sends.
  second.exchangeWith(card);
  second.work("3");
  const auto honest = far_side.remote();
  Remote hides = honest;
  hides.put = [&](std::span<const Upload> uploads) {
    std::vector<Upload> let_through;
    for (const Upload& upload : uploads) {
      if (upload.name.find(first.source()) == std::string::npos) let_through.push_back(upload);
    }
    auto answers = honest.put(let_through);
    answers.resize(uploads.size(), Put::Done);
    return answers;
  };
  second.exchangeWith(hides);
  Handset third(folder, 9);
  third.takeYard(yardOf(yard));
  const Outcome outcome = third.exchangeWith(far_side);
  ASSERT_THAT(codesOf(outcome.findings), Contains("parcel-not-arrived-yet"));
  for (const Message& finding : outcome.findings) {
    EXPECT_EQ(std::get<std::string>(finding.values[0].second), shortName(first.source()));
  }
}

TEST_F(ExchangeTest, ServerThatLiesAboutStoringIsFoundOutAndNothingLeavesTheListOfWhatWaits) {
  first.work("1");
  Remote lies = far_side.remote();
  lies.put = [](std::span<const Upload> uploads) {
    return std::vector<Expected<Put>>(uploads.size(), Put::Done);
  };
  const Outcome outcome = first.exchangeWith(lies);
  ASSERT_TRUE(outcome.stopped.has_value());
  EXPECT_EQ(outcome.stopped->message.code, "object-not-kept");
  const auto waits = the(whatWaits(*first.store, outcome.stopped));
  ASSERT_THAT(waits, SizeIs(2));
  EXPECT_EQ(waits[0].why.code, "object-not-kept");
  EXPECT_EQ(the(whatWaits(*first.store, std::nullopt))[0].why.code, "waits-for-exchange");
  EXPECT_EQ(stopOf(first.exchangeWith(far_side)), "");
  EXPECT_THAT(the(first.store->waiting()), IsEmpty());
}

TEST_F(ExchangeTest, OfManyParcelsAListShowsThoseThatWereNotKeptAndOnlyTheyAreAskedForAgain) {
  const std::string readings(100'000, '7');
  for (int job = 0; job < 30; ++job) first.seal({{"readings", records::jsonString(readings)}});
  Remote lies = far_side.remote();
  lies.put = [this, number = 0, put = lies.put](std::span<const Upload> uploads) mutable {
    std::vector<Expected<Put>> answers;
    for (const Upload& upload : uploads) {
      answers.push_back(Put::Done);
      ++number;
      if (number == 2) continue;
      answers.back() = std::move(put(std::span(&upload, 1)).front());
      if (number == 5) far_side.objects[upload.name].resize(1000);
    }
    return answers;
  };
  std::size_t sizes = 0;
  lies.sizes = [&sizes, ask = lies.sizes](std::span<const std::string> names) {
    sizes += names.size();
    return ask(names);
  };
  EXPECT_EQ(stopOf(first.exchangeWith(lies)), "");
  EXPECT_GT(std::ssize(objectsIn("parcels/")), 5);
  EXPECT_EQ(sizes, 2U);
  EXPECT_THAT(the(first.store->waiting()), IsEmpty());
  EXPECT_EQ(second.exchangeWith(far_side).progress.statements_received, 30);
}

TEST_F(ExchangeTest, OfManyParcelsNoneIsAnnouncedWhereOneIsNotKept) {
  const std::string readings(100'000, '7');
  for (int job = 0; job < 30; ++job) first.seal({{"readings", records::jsonString(readings)}});
  Remote lies = far_side.remote();
  lies.put = [put = lies.put](std::span<const Upload> uploads) {
    std::vector<Expected<Put>> answers;
    for (const Upload& upload : uploads) {
      const bool kept = upload.name.find("/000000000003-") == std::string::npos;
      answers.push_back(kept ? std::move(put(std::span(&upload, 1)).front()) : Expected<Put>(Put::Done));
    }
    return answers;
  };
  EXPECT_EQ(stopOf(first.exchangeWith(lies)), "object-not-kept");
  EXPECT_THAT(objectsIn("heads/"), IsEmpty());
  EXPECT_THAT(the(first.store->waiting()), SizeIs(30));
}

TEST_F(ExchangeTest, ErasedPersonalObjectGoesEverywhereAndFromTheServer) {
  store::Personal person{.name = "",
                         .bytes = R"({"format":"hingepin-person/1","key":"demo","name":"A. Demo"})"};
  person.name = records::personalName(person.salt, person.bytes);
  the(first.store->putPersonal(person, kNow));
  first.exchangeWith(far_side);
  second.exchangeWith(far_side);
  EXPECT_EQ(the(second.store->personal(person.name))->bytes, person.bytes);
  the(first.store->erasePersonal(person.name, kNow + 1));
  first.exchangeWith(far_side);
  EXPECT_THAT(objectsIn("personal/"), IsEmpty());
  second.exchangeWith(far_side);
  EXPECT_TRUE(the(second.store->personal(person.name))->erased);
  for (const auto& [name, bytes] : far_side.objects)
    EXPECT_EQ(bytes.find("A. Demo"), std::string::npos) << name;
}

TEST_F(ExchangeTest, DeviceThatNobodyVouchesForCanNeitherEraseNorName) {
  store::Personal person{.name = "", .bytes = "A. Demo"};
  person.name = records::personalName(person.salt, person.bytes);
  the(first.store->putPersonal(person, kNow, false));
  Handset stranger(folder, 7);
  the(stranger.store->putPersonal(person, kNow, false));
  the(stranger.store->erasePersonal(person.name, kNow));
  store::Personal name{.name = "", .bytes = "B. Demo"};
  name.name = records::personalName(name.salt, name.bytes);
  the(stranger.store->putPersonal(name, kNow));
  stranger.exchangeWith(far_side);
  first.exchangeWith(far_side);
  EXPECT_FALSE(the(first.store->personal(person.name))->erased);
  EXPECT_EQ(the(first.store->personal(name.name)), std::nullopt);
  const auto held = the(inQuarantine(*first.store));
  ASSERT_THAT(held, SizeIs(2));
  EXPECT_EQ(held[0].why.code, "parcel-not-vouched-for");
}

TEST_F(ExchangeTest, CopiedInstallationIsNoticedBeforeItSends) {
  first.work("1");
  first.exchangeWith(far_side);
  Handset copy(folder, 20);
  copy.pen.key = records::keyOf(1000);
  copy.store.reset();
  the(first.store->backup(copy.path + "-copy"));
  copy.path += "-copy";
  copy.reopen();
  copy.device = std::make_unique<Device>(
      Device{.key = records::keyOf(5000), .epoch = records::epochOf(5000), .voucher = first.device->voucher});
  first.work("2");
  first.exchangeWith(far_side);
  the(copy.store->putBlob("x", "text/csv"));
  const Outcome outcome = copy.exchangeWith(far_side);
  EXPECT_TRUE(outcome.is_doubled);
  EXPECT_EQ(outcome.progress.parcels_sent, 0);
  EXPECT_EQ(sortedNames(*copy.store), sortedNames(*first.store));
}

TEST_F(ExchangeTest, ForgedHeadsSendNobodyLookingForMillions) {
  first.work("1");
  first.exchangeWith(far_side);
  far_side.objects[headObject({first.source(), 900'000'000, records::hashName("nothing")})] = "";
  far_side.requests = 0;
  const Outcome outcome = second.exchangeWith(far_side);
  EXPECT_LT(far_side.requests, 12);
  EXPECT_EQ(outcome.progress.statements_received, 1);
  EXPECT_THAT(codesOf(outcome.findings), Contains("parcel-missing"));
}

TEST_F(ExchangeTest, CardCarriesWhatOthersMade) {
  FarSide card{.address = "card"};
  const std::string name = first.work(large('q'));
  first.exchangeWith(far_side);
  second.exchangeWith(far_side);
  const Outcome carried = second.exchangeWith(card);
  EXPECT_THAT(carried.findings, IsEmpty());
  Handset office(folder, 9);
  office.takeYard(yardOf(yard));
  office.exchangeWith(card);
  EXPECT_TRUE(the(office.store->statement(name)).has_value());
  EXPECT_TRUE(the(office.store->hasBlob(records::hashName(large('q')))));
}

}  // namespace
}  // namespace hingepin::sync
