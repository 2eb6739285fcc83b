// SPDX-License-Identifier: Apache-2.0
#include "engine/sync/parcel.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/engine/sync/far_side.h"

namespace hingepin::sync {
namespace {

using samples::codeOf;
using samples::the;
using ::testing::ElementsAre;

Device deviceOf(std::uint64_t seed) { return {.key = records::keyOf(seed), .epoch = records::epochOf(seed)}; }

TEST(ParcelTest, WhatIsPackedComesOutAgain) {
  const Device device = deviceOf(1);
  const std::vector<ParcelPlace> seen = {
      {sourceOf(records::keyOf(2).publicKey(), records::epochOf(2)), 12, records::hashName("x")}};
  const std::string before = records::hashName("the one before");
  const SealedParcel parcel = the(makeParcel(device, 2, before, seen, "{\"a\":1}\nb\n"));
  const OpenedParcel opened = the(openParcel(parcel.bytes, parcel.place));
  EXPECT_EQ(opened.manifest.place, parcel.place);
  EXPECT_EQ(opened.manifest.previous, before);
  EXPECT_EQ(opened.manifest.seen, seen);
  EXPECT_THAT(opened.lines, ElementsAre("{\"a\":1}", "b"));
  EXPECT_EQ(parcelBytes(opened.sealed, opened.lines), parcel.bytes);
}

TEST(ParcelTest, NoFlippedBitIsTakenAndNoOtherPlace) {
  const Device device = deviceOf(1);
  const SealedParcel parcel = the(makeParcel(device, 1, std::nullopt, {}, "line\n"));
  for (std::size_t bit = 0; bit < parcel.bytes.size() * 8; bit += 5) {
    EXPECT_EQ(codeOf(openParcel(records::flipped(parcel.bytes, bit), parcel.place)), "parcel-altered") << bit;
  }
  for (std::size_t size = 0; size < parcel.bytes.size(); size += 7) {
    EXPECT_EQ(codeOf(openParcel(parcel.bytes.substr(0, size), parcel.place)), "parcel-altered") << size;
  }
  const SealedParcel next = the(makeParcel(device, 2, parcel.place.name, {}, "line\n"));
  EXPECT_EQ(codeOf(openParcel(next.bytes, parcel.place)), "parcel-out-of-order");
  const SealedParcel other = the(makeParcel(deviceOf(2), 1, std::nullopt, {}, "line\n"));
  EXPECT_EQ(codeOf(openParcel(other.bytes, parcel.place)), "parcel-replaced");
}

TEST(ParcelTest, NamesReadBackAndSuitSharesThatDoNotTellCapitals) {
  const Device device = deviceOf(1);
  const ParcelPlace place{sourceOf(device.key.publicKey(), device.epoch), 513, records::hashName("x")};
  const std::string object = parcelObject(place);
  const std::string head = headObject(place);
  EXPECT_EQ(parcelOfFile(place.source, object.substr(object.rfind('/') + 1)), place);
  EXPECT_TRUE(object.starts_with(parcelFolder(place.source, 513) + "/"));
  EXPECT_EQ(parcelFolder(place.source, 512), parcelFolder(place.source, 767));
  EXPECT_NE(parcelFolder(place.source, 512), parcelFolder(place.source, 768));
  EXPECT_EQ(headOfFile(head.substr(head.rfind('/') + 1)), place);
  const Wanted wanted[] = {{.kind = Wanted::Kind::Parcel, .parcel = place},
                           {.kind = Wanted::Kind::Blob, .name = place.name},
                           {.kind = Wanted::Kind::Personal, .name = place.name}};
  for (const Wanted& each : wanted) {
    const std::string name = wantedObject(each);
    EXPECT_EQ(wantedOfFile(name.substr(name.rfind('/') + 1)), each);
    EXPECT_EQ(headOfFile(name.substr(name.rfind('/') + 1)), std::nullopt);
    EXPECT_LE(name.substr(name.rfind('/') + 1).size(), 255U);  // the most that common file systems take
  }
  for (const std::string& name : {object, head, wantedObject(wanted[0]), blobPieceObject(place.name),
                                  personalPieceObject(place.name, 3)}) {
    EXPECT_EQ(name.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-/"), std::string::npos) << name;
  }
  for (const char* not_ours : {"", "x", "wanted-", "readme.txt", "wanted-blob-xyz"}) {
    EXPECT_EQ(headOfFile(not_ours), std::nullopt);
    EXPECT_EQ(wantedOfFile(not_ours), std::nullopt);
    EXPECT_EQ(parcelOfFile(place.source, not_ours), std::nullopt);
  }
}

TEST(ParcelTest, EvidenceIsOfferedInPiecesAndOfPersonalOnesNoHashOfTheBytesTravels) {
  const std::string bytes(2 * kPieceBytes + 5, 'p');
  const auto blob = readItem(blobLine(bytes, "image/jpeg"));
  ASSERT_TRUE(blob.has_value());
  EXPECT_EQ(blob->name, records::hashName(bytes));
  EXPECT_EQ(blob->size, std::ssize(bytes));
  EXPECT_EQ(blob->pieces.size(), 3U);
  EXPECT_EQ(blob->pieces[2], blobPieceObject(records::hashName("ppppp")));
  store::Personal person{.name = "", .bytes = bytes};
  person.name = records::personalName(person.salt, person.bytes);
  const std::string line = personalLine(person);
  EXPECT_EQ(line.find(records::hashName(bytes)), std::string::npos);
  const auto item = readItem(line);
  ASSERT_TRUE(item.has_value());
  EXPECT_THAT(item->pieces,
              ElementsAre(personalPieceObject(person.name, 0), personalPieceObject(person.name, 1),
                          personalPieceObject(person.name, 2)));
  for (const char* wrong : {"", "{}", "{\"blob\":\"x\"}", "{\"erased\":\"x\"}", "null", "{\"size\":1}"}) {
    EXPECT_FALSE(readItem(wrong).has_value()) << wrong;
  }
}

TEST(ParcelTest, OnlyASignerThatTheYardListsCanVouchForADevice) {
  const records::SecretKey signer = records::keyOf(5);
  const records::SecretKey stranger = records::keyOf(6);
  Device device = deviceOf(1);
  records::SignersList list{.yard_key = records::keyOf(3).publicKey(),
                            .signers = {records::listed(signer, "technician")}};
  const auto vouched = [&](const std::string& voucher, const records::SignersList& by) {
    device.voucher = voucher;
    const SealedParcel parcel = the(makeParcel(device, 1, std::nullopt, {}, "line\n"));
    return isVouchedFor(the(openParcel(parcel.bytes, parcel.place)).manifest, records::ListedKeys(by), by);
  };
  const records::PublicKey key = device.key.publicKey();
  EXPECT_TRUE(vouched(vouch(key, device.epoch, signer), list));
  EXPECT_FALSE(vouched("", list));
  EXPECT_FALSE(vouched(vouch(key, device.epoch, stranger), list));
  EXPECT_FALSE(vouched(vouch(key, records::epochOf(9), signer), list));
  EXPECT_FALSE(vouched(vouch(stranger.publicKey(), device.epoch, signer), list));
  list.revocations.push_back({.key = signer.id()});
  EXPECT_FALSE(vouched(vouch(key, device.epoch, signer), list));
}

}  // namespace
}  // namespace hingepin::sync
