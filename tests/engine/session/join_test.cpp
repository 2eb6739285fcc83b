// SPDX-License-Identifier: Apache-2.0
#include "engine/session/join.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <set>

#include "engine/base/random.h"
#include "engine/records/encoding.h"
#include "engine/records/seal.h"
#include "engine/session/code.h"
#include "engine/session/confirmation.h"
#include "engine/session/people.h"
#include "tests/engine/session/yard.h"

namespace hingepin::session {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;
using ::testing::SizeIs;

constexpr std::string_view kJoin = "HINGEPIN:JOIN:";
constexpr std::string_view kAdmit = "HINGEPIN:ADMIT:";

/// The phone with the yard's key, and a new one with nothing but a key of its own.
struct NewPhone {
  NewPhone() : store(need(store::Store::open((yard.folder.path() / "new.db").string()))) {
    (void)need(keepName(yard.store, yard.technician.id(), "Ada Example", folder::fillBytes, kMorning));
    ask = asks();
  }
  std::string asks() { return need(askToJoin(key, "Cy Specimen", key.id(), yard.now, folder::fillBytes)); }
  Expected<LetIn> lets(const std::string& code, const std::string& role = "safety-lead") {
    return letIn(yard.store, yard.yard_key, code, role, yard.now, folder::fillBytes);
  }
  Expected<Admission> takes(const std::string& code) {
    return takeAdmission(store, ask, code, yard.now, folder::fillBytes);
  }
  [[nodiscard]] std::vector<std::string> rolesOf(const store::Store& of) const {
    std::vector<std::string> roles;
    const records::SignersVerdict newest = need(signersOf(of));
    for (const records::Signer& each : newest.list->signers) {
      if (each.key == key.publicKey()) roles.push_back(each.role);
    }
    return roles;
  }
  void expectUntouched() const {
    EXPECT_THAT(need(store.acceptedRoots()), IsEmpty());
    EXPECT_THAT(need(store.signersLists()), IsEmpty());
    EXPECT_THAT(need(namesOf(store)), IsEmpty());
  }

  Yard yard{};
  store::Store store;
  records::SecretKey key = records::newSecretKey(folder::fillBytes);
  std::string ask{};
};

std::string bytesIn(const std::string& code, std::string_view prefix) {
  return *records::fromBase45(std::string_view(code).substr(prefix.size()));
}

std::string flipped(const std::string& code, std::string_view prefix, std::size_t bit) {
  std::string bytes = bytesIn(code, prefix);
  bytes[bit / 8] = static_cast<char>(static_cast<unsigned char>(bytes[bit / 8]) ^ (1U << (bit % 8)));
  return codeFrom(prefix, bytes);
}

std::size_t bitsOf(const std::string& code, std::string_view prefix) {
  return bytesIn(code, prefix).size() * 8;
}

TEST(JoinTest, ANewPhoneIsLetInKnowsTheYardAndConfirmsForTheOther) {
  NewPhone phone;
  Yard& yard = phone.yard;
  const Joining asking = need(readJoin(phone.ask));
  EXPECT_EQ(asking.key, phone.key.publicKey());
  EXPECT_EQ(asking.name, "Cy Specimen");
  EXPECT_EQ(asking.device, phone.key.id());
  const LetIn let_in = need(phone.lets(phone.ask));
  EXPECT_TRUE(let_in.has_lists);
  EXPECT_THAT(phone.rolesOf(yard.store), ElementsAre("safety-lead"));
  EXPECT_EQ(need(namesOf(yard.store)).at(phone.key.id()), "Cy Specimen");

  const Admission admission = need(phone.takes(let_in.code));
  EXPECT_EQ(admission.role, "safety-lead");
  EXPECT_EQ(need(phone.store.acceptedRoots()), need(yard.store.acceptedRoots()));
  EXPECT_EQ(need(signersOf(phone.store)).name, need(signersOf(yard.store)).name);
  EXPECT_EQ(need(namesOf(phone.store)).at(yard.technician.id()), "Ada Example");

  OpenJob job = yard.begin("lockout", "boom-down");
  ASSERT_EQ(yard.work(job, "second"), "");
  const std::string ask = need(askToConfirm(job, "phone-1", yard.now, folder::fillBytes));
  const std::string answer = need(answerAsk(
      ask, "yes",
      {.key = phone.key, .role = "safety-lead", .installation = phone.key.id(), .epoch = yard.epoch},
      yard.now));
  EXPECT_EQ(codeOf(yard.tell(job, need(eventOfAnswer(ask, answer)))), "");
}

TEST(JoinTest, WhatIsLetInComesWholeThroughChangesAndRevocationsOfTheList) {
  NewPhone phone;
  Yard& yard = phone.yard;
  const records::SecretKey lost = records::newSecretKey(folder::fillBytes);
  (void)need(addSigners(yard.store, yard.yard_key,
                        {{.key = lost.publicKey(), .role = "safety-lead", .valid_from_utc_ms = kMorning}},
                        kMorning));
  (void)need(revokeSigner(yard.store, yard.yard_key, lost.id(), std::nullopt, kMorning));
  const LetIn let_in = need(phone.lets(phone.ask));
  ASSERT_TRUE(let_in.has_lists);
  EXPECT_THAT(need(readAdmission(let_in.code)).lists, SizeIs(4));
  (void)need(phone.takes(let_in.code));
  const records::SignersVerdict here = need(signersOf(phone.store));
  EXPECT_EQ(here.name, need(signersOf(yard.store)).name);
  EXPECT_THAT(here.list->revocations, SizeIs(1));
}

TEST(JoinTest, NoAlteredBitOfARequestIsRead) {
  NewPhone phone;
  std::set<std::string> reasons;
  for (std::size_t bit = 0; bit < bitsOf(phone.ask, kJoin); ++bit) {
    const std::string reason = codeOf(readJoin(flipped(phone.ask, kJoin, bit)));
    ASSERT_NE(reason, "") << "bit " << bit;
    reasons.insert(reason);
  }
  EXPECT_TRUE(reasons.contains("join-altered"));
  EXPECT_EQ(codeOf(readJoin(phone.ask)), "");
}

TEST(JoinTest, NoAlteredBitOfAnAdmissionIsTaken) {
  NewPhone phone;
  const std::string code = need(phone.lets(phone.ask)).code;
  std::set<std::string> reasons;
  for (std::size_t bit = 0; bit < bitsOf(code, kAdmit); ++bit) {
    const std::string reason = codeOf(phone.takes(flipped(code, kAdmit, bit)));
    ASSERT_NE(reason, "") << "bit " << bit;
    reasons.insert(reason);
  }
  EXPECT_TRUE(reasons.contains("admission-code-malformed"));
  EXPECT_TRUE(reasons.contains("admission-altered"));
  phone.expectUntouched();
  EXPECT_EQ(codeOf(phone.takes(code)), "");
}

TEST(JoinTest, WhoeverHasNotTheSecretOfAKeyCannotAskWithIt) {
  NewPhone phone;
  // Somebody else's key, sealed with one's own.
  const records::SecretKey other = records::newSecretKey(folder::fillBytes);
  std::string bytes =
      bytesIn(need(askToJoin(other, "Cy Specimen", "phone-9", phone.yard.now, folder::fillBytes)), kJoin);
  const std::string own = records::publicKeyText(other.publicKey());
  bytes.replace(bytes.find(own), own.size(), records::publicKeyText(phone.yard.lead.publicKey()));
  EXPECT_EQ(codeOf(phone.lets(codeFrom(kJoin, bytes))), "join-altered");
}

TEST(JoinTest, AnAdmissionCountsForItsRequestAlone) {
  NewPhone phone;
  const std::string code = need(phone.lets(phone.ask)).code;
  phone.ask = phone.asks();
  EXPECT_EQ(codeOf(phone.takes(code)), "admission-of-another") << "an earlier request of the same phone";
  NewPhone other;
  EXPECT_EQ(codeOf(other.takes(code)), "admission-of-another");
  phone.expectUntouched();
  other.expectUntouched();
}

TEST(JoinTest, ARequestThatComesAgainIsAnsweredAgainAndListedOnce) {
  NewPhone phone;
  (void)need(phone.lets(phone.ask));
  const std::string newest = need(signersOf(phone.yard.store)).name;
  const std::string code = need(phone.lets(phone.ask)).code;
  EXPECT_EQ(need(signersOf(phone.yard.store)).name, newest);
  EXPECT_THAT(phone.rolesOf(phone.yard.store), ElementsAre("safety-lead"));
  EXPECT_EQ(codeOf(phone.takes(code)), "");
  EXPECT_EQ(codeOf(phone.takes(code)), "join-already");
  // A second role is a decision of its own.
  (void)need(phone.lets(phone.ask, "technician"));
  EXPECT_THAT(phone.rolesOf(phone.yard.store), ElementsAre("safety-lead", "technician"));
}

TEST(JoinTest, AnotherKeyThanTheYardsLetsNobodyIn) {
  NewPhone phone;
  Yard& yard = phone.yard;
  const std::string newest = need(signersOf(yard.store)).name;
  const records::SecretKey stranger = records::newSecretKey(folder::fillBytes);
  EXPECT_EQ(codeOf(letIn(yard.store, stranger, phone.ask, "safety-lead", yard.now, folder::fillBytes)),
            "yard-key-other");
  EXPECT_EQ(codeOf(phone.lets(phone.ask, "Safety Lead")), "json-value-unexpected");
  EXPECT_EQ(need(signersOf(yard.store)).name, newest);
  EXPECT_FALSE(need(namesOf(yard.store)).contains(phone.key.id())) << "a refusal keeps nothing";
}

TEST(JoinTest, AKeyThatTheYardRevokedIsNotLetInAgain) {
  NewPhone phone;
  (void)need(phone.lets(phone.ask));
  (void)need(revokeSigner(phone.yard.store, phone.yard.yard_key, phone.key.id(), std::nullopt, kMorning));
  EXPECT_EQ(codeOf(phone.lets(phone.ask)), "join-key-revoked");
}

TEST(JoinTest, ARequestHoldsADayByBothClocks) {
  NewPhone phone;
  const std::int64_t asked_ms = phone.yard.now.utc_ms;
  for (const int sign : {-1, 1}) {
    phone.yard.now.utc_ms = asked_ms + sign * (kJoinHolds_ms + 1);
    EXPECT_EQ(codeOf(phone.lets(phone.ask)), "join-too-old") << sign;
  }
  phone.yard.now.utc_ms = asked_ms + kJoinHolds_ms;
  EXPECT_EQ(codeOf(phone.lets(phone.ask)), "");
  EXPECT_EQ(need(signersOf(phone.yard.store)).list->signers.back().valid_from_utc_ms, asked_ms)
      << "on the phone whose clock is behind it holds at once";
}

TEST(JoinTest, ListsThatDoNotHoldTheKeyOrAreNoChainOfTheYardAreRefused) {
  NewPhone phone;
  const records::SecretKey& yard_key = phone.yard.yard_key;
  const Admission whole = need(readAdmission(need(phone.lets(phone.ask)).code));
  ASSERT_THAT(whole.lists, SizeIs(2));
  const auto refusal = [&](const auto& change, const records::SecretKey& by) {
    Admission changed = whole;
    change(changed);
    return codeOf(phone.takes(codeOfAdmission(changed, by)));
  };
  EXPECT_EQ(refusal([](Admission& a) { a.lists.pop_back(); }, yard_key), "admission-key-not-listed");
  EXPECT_EQ(refusal([](Admission& a) { a.role = "technician"; }, yard_key), "admission-key-not-listed");
  EXPECT_EQ(refusal([](Admission& a) { a.lists.erase(a.lists.begin()); }, yard_key),
            "admission-lists-broken");
  EXPECT_EQ(refusal([](Admission& a) { std::swap(a.lists[0], a.lists[1]); }, yard_key),
            "admission-lists-broken");
  (void)need(revokeSigner(phone.yard.store, yard_key, phone.key.id(), std::nullopt, kMorning));
  EXPECT_EQ(refusal([&](Admission& a) { a.lists.push_back(need(phone.yard.store.signersLists()).back()); },
                    yard_key),
            "admission-key-not-listed")
      << "revoked since";
  const records::SecretKey forger = records::newSecretKey(folder::fillBytes);
  EXPECT_EQ(refusal([](Admission&) {}, forger), "admission-altered") << "sealed by another key";
  EXPECT_EQ(refusal([&](Admission& a) { a.yard_key = forger.publicKey(); }, forger), "admission-lists-broken")
      << "lists of another yard's key";
  phone.expectUntouched();
  EXPECT_EQ(refusal([](Admission&) {}, yard_key), "");
}

TEST(JoinTest, WhatDoesNotFitInACodeComesLaterFromTheRootThatWasAccepted) {
  NewPhone phone;
  Yard& yard = phone.yard;
  while (need(signersOf(yard.store)).list->number < 30) {
    const records::SecretKey more = records::newSecretKey(folder::fillBytes);
    (void)need(addSigners(yard.store, yard.yard_key,
                          {{.key = more.publicKey(), .role = "operator", .valid_from_utc_ms = kMorning}},
                          kMorning));
  }
  const LetIn let_in = need(phone.lets(phone.ask));
  EXPECT_FALSE(let_in.has_lists);
  EXPECT_LE(let_in.code.size(), kMostCodeBytes);
  EXPECT_THAT(need(phone.takes(let_in.code)).lists, IsEmpty());
  EXPECT_EQ(codeOf(signersOf(phone.store)), "signers-none");
  for (const records::SealedSigners& list : need(yard.store.signersLists()))
    need(phone.store.putSigners(list, kMorning));
  EXPECT_THAT(phone.rolesOf(phone.store), ElementsAre("safety-lead"));
}

TEST(JoinTest, NamesGiveWayToListsWhereACodeHoldsNotBoth) {
  NewPhone phone;
  Yard& yard = phone.yard;
  Random random(11);
  for (int count = 0; count < 3; ++count) {
    const records::SecretKey more = records::newSecretKey(folder::fillBytes);
    (void)need(addSigners(yard.store, yard.yard_key,
                          {{.key = more.publicKey(), .role = "operator", .valid_from_utc_ms = kMorning}},
                          kMorning));
    std::string name;
    while (name.size() < 199) name += static_cast<char>('a' + random.bits() % 26U);
    (void)need(keepName(yard.store, more.id(), name, folder::fillBytes, kMorning));
  }
  const Admission admission = need(readAdmission(need(phone.lets(phone.ask)).code));
  EXPECT_THAT(admission.lists, SizeIs(5));
  EXPECT_THAT(admission.names, IsEmpty());
}

TEST(JoinTest, CodesAreReadStrictly) {
  NewPhone phone;
  const std::string admit = need(phone.lets(phone.ask)).code;
  EXPECT_EQ(codeOf(readJoin("")), "join-code-malformed");
  EXPECT_EQ(codeOf(readJoin(admit)), "join-code-malformed");
  EXPECT_EQ(codeOf(readJoin(phone.ask + "!")), "join-code-malformed");
  EXPECT_EQ(codeOf(readJoin(codeFrom(kJoin, "{}"))), "join-code-malformed");
  EXPECT_EQ(codeOf(readAdmission(phone.ask)), "admission-code-malformed");
  EXPECT_EQ(codeOf(readAdmission(std::string(kAdmit) + std::string(kMostCodeBytes, 'A'))),
            "admission-code-malformed");
  EXPECT_EQ(codeOf(askToJoin(phone.key, " ", "phone-2", phone.yard.now, folder::fillBytes)), "text-empty");
  EXPECT_EQ(codeOf(askToJoin(phone.key, std::string(201, 'a'), "phone-2", phone.yard.now, folder::fillBytes)),
            "join-name-too-long");
  EXPECT_EQ(codeOf(askToJoin(phone.key, "Cy\nSpecimen", "phone-2", phone.yard.now, folder::fillBytes)),
            "join-name-too-long");
  // Whatever comes is answered.
  Random random(7);
  for (int count = 0; count < 400; ++count) {
    const std::string_view prefix = count % 2 == 0 ? kJoin : kAdmit;
    std::string bytes = bytesIn(count % 2 == 0 ? phone.ask : admit, prefix);
    bytes.resize(static_cast<std::size_t>(random.uniform() * static_cast<double>(bytes.size())));
    const std::string cut = codeFrom(prefix, bytes);
    EXPECT_NE(count % 2 == 0 ? codeOf(readJoin(cut)) : codeOf(readAdmission(cut)), "") << bytes.size();
  }
}

/// The codes of a yard as the app makes it.
struct ScratchYard {
  ScratchYard() {
    NewPhone phone;
    store::Store store = need(store::Store::open((phone.yard.folder.path() / "app.db").string()));
    std::vector<records::Signer> signers;
    for (const char* role : {"technician", "supervisor", "safety-lead", "yard-clerk", "operator"})
      signers.push_back(
          {.key = phone.yard.technician.publicKey(), .role = role, .valid_from_utc_ms = kMorning});
    (void)need(makeYard(store, phone.yard.yard_key, signers, kMorning));
    (void)need(keepName(store, phone.yard.technician.id(), "Ada Example", folder::fillBytes, kMorning));
    ask = phone.ask;
    const LetIn let_in =
        need(letIn(store, phone.yard.yard_key, ask, "safety-lead", phone.yard.now, folder::fillBytes));
    EXPECT_TRUE(let_in.has_lists);
    admission = let_in.code;
  }
  std::string ask{};
  std::string admission{};
};

TEST(JoinTest, TheCodesOfAYardOfTwoAreSmallEnoughForACamera) {
  // The yard that the app makes lists its one person for five roles. Level M of ISO/IEC 18004 holds 1035
  // characters of this alphabet in version 21, 101 modules a side, and 574 in version 15: table 7, from
  // memory.
  const ScratchYard scratch;
  EXPECT_LE(scratch.ask.size(), 574U);
  EXPECT_LE(scratch.admission.size(), 1035U);
}

}  // namespace
}  // namespace hingepin::session
