// SPDX-License-Identifier: Apache-2.0
#include "engine/records/verify.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/engine/records/people.h"
#include "tests/engine/soak.h"

namespace hingepin::records {
namespace {

using ::testing::AnyOf;
using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::Ge;
using ::testing::IsEmpty;
using ::testing::Not;
using ::testing::Pair;
using ::testing::SizeIs;
using ::testing::UnorderedElementsAre;
using ::testing::UnorderedElementsAreArray;

using Said = std::pair<std::string, std::string>;

Standing standingOf(const Verification& verification, const std::string& name) {
  const auto found = std::ranges::find(verification.statements, name, &StatementVerdict::name);
  EXPECT_NE(found, verification.statements.end());
  return found == verification.statements.end() ? Standing::Refused : found->standing;
}

class VerifyTest : public ::testing::Test {
 protected:
  // Takes in a statement and gives its name.
  std::string take(const SealedStatement& sealed) {
    evidence_.statements.push_back({.text = sealed.text});
    return sealed.name;
  }
  void list(std::vector<Signer> signers, std::vector<Revocation> revocations = {}) {
    const Evidence yard = yardWith(yard_key_, std::move(signers), std::move(revocations));
    evidence_.signers_lists = yard.signers_lists;
    evidence_.accepted_roots = yard.accepted_roots;
  }
  void SetUp() override { list({listed(technician_.key, "technician"), listed(lead_.key, "safety-lead")}); }
  Verification found() { return verify(evidence_); }
  std::vector<Said> said() { return saidOf(found().findings); }

  SecretKey yard_key_ = keyOf(100);
  Phone technician_{.key = keyOf(1)};
  Phone lead_{.key = keyOf(2), .role = "safety-lead"};
  Evidence evidence_;
};

TEST_F(VerifyTest, ASoundRecordAndASecondPersonsSignatureAreTrusted) {
  const std::string record = take(technician_.record());
  const std::string signature = take(lead_.sign(record));
  EXPECT_THAT(said(), IsEmpty());
  EXPECT_EQ(standingOf(found(), record), Standing::Trusted);
  EXPECT_EQ(standingOf(found(), signature), Standing::Trusted);
}

TEST_F(VerifyTest, WhatWasSealedComesBack) {
  const Record record{
      .envelope = technician_.next(),
      .content = jsonObject({{"mass_g", jsonInteger(kMostInteger)}, {"typed", jsonString("2,40")}}),
      .amends = hashName("earlier"),
      .personal = {{"operator", hashName("person")}}};
  take(technician_.sealNext(record));
  const Record back = std::get<Record>(*found().statements[0].statement);
  EXPECT_EQ(back.amends, record.amends);
  EXPECT_EQ(back.personal, record.personal);
  EXPECT_EQ(canonicalJson(back.content).value(), canonicalJson(record.content).value());
  EXPECT_EQ(back.envelope.sealed_utc_ms, record.envelope.sealed_utc_ms);
  EXPECT_EQ(back.envelope.place.epoch, record.envelope.place.epoch);
}

TEST_F(VerifyTest, TheSameStatementTwiceCountsOnce) {
  take(technician_.record());
  evidence_.statements.push_back(evidence_.statements[0]);
  EXPECT_THAT(found().statements, SizeIs(1));
  EXPECT_THAT(said(), IsEmpty());
}

TEST_F(VerifyTest, NothingIsTrustedWithoutAnAcceptedList) {
  const std::string record = take(technician_.record());
  evidence_.accepted_roots.clear();
  EXPECT_THAT(said(), ElementsAre(Said("record-unknown-signer", record)));
  EXPECT_EQ(standingOf(found(), record), Standing::Refused);
  EXPECT_THAT(codesOf(found().signers.findings), Contains("signers-none"));
}

// --- altered and malformed
// ---------------------------------------------------------------------------------------

TEST_F(VerifyTest, EveryFlippedBitOfThePayloadIsAltered) {
  const SealedStatement sealed = technician_.record();
  const Sealed parts = readSealed(sealed.text).value();
  const std::string encoded = base64Url(bytesOf(parts.payload));
  for (std::size_t bit = 0; bit < parts.payload.size() * 8; ++bit) {
    std::string text = sealed.text;
    text.replace(text.find(encoded), encoded.size(), base64Url(bytesOf(flipped(parts.payload, bit))));
    evidence_.statements = {{.text = text}};
    const Verification verification = found();
    ASSERT_THAT(codesOf(verification.findings), ElementsAre("record-altered")) << bit;
    ASSERT_EQ(verification.statements[0].standing, Standing::Refused);
  }
}

TEST_F(VerifyTest, EveryFlippedBitOfTheSignatureIsAltered) {
  const SealedStatement sealed = technician_.record();
  const std::string signature = textOf(readSealed(sealed.text)->seals[0].signature);
  const std::string encoded = base64Url(bytesOf(signature));
  for (std::size_t bit = 0; bit < signature.size() * 8; ++bit) {
    std::string text = sealed.text;
    text.replace(text.find(encoded), encoded.size(), base64Url(bytesOf(flipped(signature, bit))));
    evidence_.statements = {{.text = text}};
    ASSERT_THAT(codesOf(found().findings), ElementsAre("record-altered")) << bit;
  }
}

TEST_F(VerifyTest, EveryFlippedBitOfTheFileIsAlteredOrMalformed) {
  const SealedStatement sealed = technician_.record();
  for (std::size_t bit = 0; bit < sealed.text.size() * 8; ++bit) {
    evidence_.statements = {{.text = flipped(sealed.text, bit)}};
    const Verification verification = found();
    ASSERT_THAT(codesOf(verification.findings), ElementsAre(AnyOf("record-altered", "record-malformed")))
        << bit;
    ASSERT_EQ(verification.statements[0].standing, Standing::Refused);
  }
}

TEST_F(VerifyTest, EveryCutAndEveryZeroFilledFileIsMalformed) {
  const SealedStatement sealed = technician_.record();
  for (std::size_t length = 0; length < sealed.text.size(); ++length) {
    std::string torn = sealed.text;
    std::fill(torn.begin() + static_cast<std::ptrdiff_t>(length), torn.end(), '\0');
    evidence_.statements = {
        {.text = sealed.text.substr(0, length)}, {.text = std::string(length, '\0')}, {.text = torn}};
    const Verification verification = found();
    ASSERT_THAT(codesOf(verification.findings), ::testing::Each("record-malformed")) << length;
    ASSERT_THAT(verification.findings, SizeIs(verification.statements.size()));
    ASSERT_THAT(verification.findings, SizeIs(Ge(2U)));
    for (const auto& statement : verification.statements) ASSERT_EQ(statement.standing, Standing::Refused);
  }
}

TEST_F(VerifyTest, ARecordUnderAnotherNameIsAltered) {
  const SealedStatement sealed = technician_.record();
  evidence_.statements = {{.text = sealed.text, .name = hashName("another")}};
  EXPECT_THAT(codesOf(found().findings), ElementsAre("record-altered"));
  evidence_.statements = {{.text = sealed.text, .name = sealed.name}};
  EXPECT_THAT(said(), IsEmpty());
}

TEST_F(VerifyTest, WhatIsAlteredIsNamedAsItIsKept) {
  const SealedStatement sealed = technician_.record();
  const Sealed parts = readSealed(sealed.text).value();
  const std::string encoded = base64Url(bytesOf(parts.payload));
  std::string text = sealed.text;
  text.replace(text.find(encoded), encoded.size(), base64Url(bytesOf(flipped(parts.payload, 400))));
  for (const std::string& kept : {text, std::string("no record")}) {
    evidence_.statements = {{.text = kept, .name = sealed.name}};
    const Verification verification = found();
    EXPECT_THAT(saidOf(verification.findings),
                ElementsAre(Pair(AnyOf("record-altered", "record-malformed"), sealed.name)));
    ASSERT_THAT(verification.statements, SizeIs(1));
    EXPECT_NE(verification.statements[0].name, sealed.name);
    EXPECT_EQ(verification.statements[0].kept_as, sealed.name);
  }
}

TEST_F(VerifyTest, ACopyUnderAWrongNameDoesNotDisplaceARecordWhicheverComesFirst) {
  const SealedStatement sealed = technician_.record();
  const StoredText right{.text = sealed.text, .name = sealed.name};
  const StoredText wrong{.text = sealed.text, .name = hashName("another")};
  for (const auto& statements : {std::vector{right, wrong}, std::vector{wrong, right}}) {
    evidence_.statements = statements;
    const Verification verification = found();
    ASSERT_THAT(verification.statements, SizeIs(1));
    EXPECT_EQ(verification.statements[0].standing, Standing::Trusted);
    EXPECT_THAT(saidOf(verification.findings), ElementsAre(std::pair("record-altered", *wrong.name)));
  }
}

TEST_F(VerifyTest, ARecordOfOneKeySealedByAnotherListedKeyIsAltered) {
  const SealedStatement sealed = technician_.record();
  const std::string payload = readSealed(sealed.text)->payload;
  evidence_.statements = {{.text = seal(payload, kRecordType, lead_.key)}};
  EXPECT_THAT(codesOf(found().findings), ElementsAre("record-altered"));
}

TEST_F(VerifyTest, ARecordWithTwoSealsIsMalformed) {
  const std::string payload = readSealed(technician_.record().text)->payload;
  const SecretKey* const keys[] = {&technician_.key, &lead_.key};
  evidence_.statements = {{.text = seal(payload, kRecordType, keys)}};
  EXPECT_THAT(codesOf(found().findings), ElementsAre("record-malformed"));
}

TEST_F(VerifyTest, AListOfSignersIsNoRecord) {
  evidence_.statements = evidence_.signers_lists;
  EXPECT_THAT(codesOf(found().findings), ElementsAre("record-malformed"));
}

TEST_F(VerifyTest, AWellSealedPayloadThatIsNoRecordIsMalformed) {
  const std::string sound =
      payloadOf(Record{.envelope = technician_.next(), .content = jsonObject({})}).value();
  const auto with = [&](const std::string& old, const std::string& fresh) {
    std::string text = sound;
    EXPECT_NE(text.find(old), std::string::npos) << old;
    return text.replace(text.find(old), old.size(), fresh);
  };
  for (const std::string& payload : std::initializer_list<std::string>{
           "{}",
           "[]",
           "null",
           "\"text\"",
           std::string(8, '\0'),
           sound + "\n",
           with("{\"chain", "{ \"chain"),
           with("\"content\":{}", "\"content\":[]"),
           with("\"content\":{}", "\"content\":{\"kg\":1.5}"),
           with("\"content\":{}", "\"content\":{\"kg\":9007199254740992}"),
           with("\"content\":{}", "\"content\":{\"b\":1,\"a\":2}"),
           with("\"content\":{}", "\"content\":{\"a\":1,\"a\":1}"),
           with("\"content\":{},", ""),
           with("\"content\":{}", "\"content\":{},\"crew\":1"),
           with(
               "\"content\":{}", "\"content\":" +
                                     [] {
                                       std::string deep = "{\"a\":";
                                       return deep + std::string(40, '[') + std::string(40, ']') + "}";
                                     }()),
           with("record/1", "record/2"),
           with("\"previous\":null", "\"previous\":\"" + hashName("") + "\""),
           with("\"sequence\":1", "\"sequence\":2"),
           with("\"sequence\":1", "\"sequence\":0"),
           with("\"sequence\":1", "\"sequence\":-1"),
           with("\"role\":\"technician\"", "\"role\":\"\""),
           with("\"role\":\"technician\"", "\"role\":null"),
           with("\"sealed_utc_ms\":", "\"sealed_utc_ms\":-"),
           with("{\"chain", "{\"amends\":\"abc\",\"chain"),
           with("{\"chain", "{\"amends\":null,\"chain"),
           with("\"role\"", "\"personal\":{},\"role\""),
           with("\"role\"", "\"personal\":{\"a\":\"b\"},\"role\"")}) {
    evidence_.statements = {{.text = seal(payload, kRecordType, technician_.key)}};
    const Verification verification = found();
    EXPECT_THAT(codesOf(verification.findings), ElementsAre("record-malformed")) << payload;
    EXPECT_TRUE(verification.findings.empty() || verification.findings[0].cause) << payload;
  }
  evidence_.statements = {{.text = seal(sound, kSignatureType, technician_.key)}};
  EXPECT_THAT(codesOf(found().findings), ElementsAre("record-malformed"));
  evidence_.statements = {{.text = seal(sound, kRecordType, technician_.key)}};
  EXPECT_THAT(codesOf(found().findings), IsEmpty());
}

// --- who signed
// --------------------------------------------------------------------------------------------------

TEST_F(VerifyTest, AKeyThatIsNotListedIsAnUnknownSigner) {
  Phone stranger{.key = keyOf(9)};
  const std::string record = take(stranger.record());
  EXPECT_THAT(said(), ElementsAre(Said("record-unknown-signer", record)));
}

TEST_F(VerifyTest, ATechniciansKeyCannotSignAsSafetyLead) {
  const std::string record = take(lead_.sign(take(technician_.record())));
  technician_.role = "safety-lead";
  const std::string claimed = take(technician_.record());
  EXPECT_THAT(said(), ElementsAre(Said("record-wrong-role", claimed)));
  EXPECT_EQ(standingOf(found(), claimed), Standing::Refused);
  EXPECT_EQ(standingOf(found(), record), Standing::Trusted);
}

TEST_F(VerifyTest, TheDatesOfARoleCountFromTheFirstMomentToBeforeTheLast) {
  list({{.key = technician_.key.publicKey(),
         .role = "technician",
         .valid_from_utc_ms = 100,
         .valid_until_utc_ms = 200},
        {.key = technician_.key.publicKey(), .role = "office", .valid_from_utc_ms = 200}});
  for (const auto& [time, code] : std::vector<std::pair<std::int64_t, std::string>>{
           {99, "record-outside-validity"}, {100, ""}, {199, ""}, {200, "record-outside-validity"}}) {
    Phone phone{.key = keyOf(1), .now = time};
    evidence_.statements = {{.text = phone.record().text}};
    EXPECT_THAT(codesOf(found().findings), code.empty() ? std::vector<std::string>{} : std::vector{code})
        << time;
  }
}

TEST_F(VerifyTest, TwoSignersOnOnePhoneAreMarkedAndStayTrusted) {
  const std::string record = take(technician_.record());
  lead_.installation = technician_.key.id();
  const std::string signature = take(lead_.sign(record));
  EXPECT_THAT(said(), ElementsAre(Said("record-same-phone", signature)));
  EXPECT_EQ(standingOf(found(), signature), Standing::Trusted);
  std::ranges::reverse(evidence_.statements);
  EXPECT_THAT(said(), ElementsAre(Said("record-same-phone", signature)));
}

TEST_F(VerifyTest, TwoSignaturesFromOnePhoneAreMarkedThoughTheRecordIsFromAnother) {
  list({listed(technician_.key, "technician"), listed(lead_.key, "safety-lead"),
        listed(keyOf(3), "yard-checker")});
  Phone checker{.key = keyOf(3), .role = "yard-checker", .installation = lead_.key.id()};
  const std::string record = take(technician_.record());
  take(lead_.sign(record));
  const std::string signature = take(checker.sign(record));
  EXPECT_THAT(said(), ElementsAre(Said("record-same-phone", signature)));
}

TEST_F(VerifyTest, OneKeyThatSignsOneRecordTwiceIsNoSecondPerson) {
  list({listed(technician_.key, "technician"), listed(technician_.key, "safety-lead")});
  const std::string record = take(technician_.record());
  technician_.role = "safety-lead";
  const std::string signature = take(technician_.sign(record));
  EXPECT_THAT(said(), ElementsAre(Said("record-same-signer", signature)));
}

TEST_F(VerifyTest, ASignatureOnARecordThatIsNotHereIsSaid) {
  const std::string signature = take(lead_.sign(hashName("somewhere else")));
  EXPECT_THAT(said(), ElementsAre(Said("record-signed-not-here", signature)));
}

// --- revocation
// --------------------------------------------------------------------------------------------------

class RevocationTest : public VerifyTest {
 protected:
  void SetUp() override {
    for (int number = 0; number < 6; ++number) names_.push_back(take(technician_.record()));
  }
  void revoke(std::vector<TrustedUntil> trusted) {
    list({listed(technician_.key, "technician")},
         {{.key = technician_.key.id(), .trusted = std::move(trusted)}});
  }
  TrustedUntil until(std::int64_t sequence) {
    return {.epoch = technician_.epoch,
            .sequence = sequence,
            .name = names_[static_cast<std::size_t>(sequence) - 1]};
  }
  void remove(std::size_t number) {
    evidence_.statements.erase(evidence_.statements.begin() + static_cast<std::ptrdiff_t>(number) - 1);
  }
  std::vector<std::string> names_;
};

TEST_F(RevocationTest, WhatLeadsUpToTheLastTrustedRecordStaysTrustedAndTheRestWaits) {
  revoke({until(4)});
  EXPECT_THAT(said(), ElementsAre(Said("record-after-revocation", names_[4]),
                                  Said("record-after-revocation", names_[5])));
  for (std::size_t at = 0; at < 6; ++at) {
    EXPECT_EQ(standingOf(found(), names_[at]), at < 4 ? Standing::Trusted : Standing::Quarantined) << at;
  }
}

TEST_F(RevocationTest, ABackDatedRecordAfterTheRevocationWaitsWhateverItsDateSays) {
  revoke({until(6)});
  technician_.now = kNow - 500'000;  // long before the others, and inside the key's dates
  const std::string back_dated = take(technician_.record());
  EXPECT_THAT(said(), ElementsAre(Said("record-after-revocation", back_dated)));
  EXPECT_EQ(standingOf(found(), back_dated), Standing::Quarantined);
}

TEST_F(RevocationTest, ABackDatedRecordUnderAnEarlierNumberIsAForkAndWaits) {
  revoke({until(6)});
  Phone thief{.key = keyOf(1), .now = kNow - 500'000};
  thief.head = Head{.key = thief.key.id(), .epoch = thief.epoch, .sequence = 2, .name = names_[1]};
  const std::string forged = take(thief.record("forged"));
  EXPECT_THAT(codesOf(found().findings), UnorderedElementsAre("record-fork", "record-after-revocation"));
  EXPECT_EQ(standingOf(found(), forged), Standing::Quarantined);
  for (const std::string& name : names_) EXPECT_EQ(standingOf(found(), name), Standing::Trusted);
}

TEST_F(RevocationTest, ABackDatedRecordInAnEpochOfItsOwnWaits) {
  revoke({until(6)});
  Phone thief{.key = keyOf(1), .epoch = epochOf(8), .now = kNow - 500'000};
  const std::string forged = take(thief.record("forged"));
  EXPECT_THAT(codesOf(found().findings), UnorderedElementsAre("record-new-epoch", "record-after-revocation"));
  EXPECT_EQ(standingOf(found(), forged), Standing::Quarantined);
}

TEST_F(RevocationTest, EveryEpochThatIsNamedHasItsOwnLastTrustedRecord) {
  Phone restored{.key = keyOf(1), .epoch = epochOf(8)};
  const std::string first = take(restored.record("restored"));
  const std::string second = take(restored.record("restored"));
  revoke({until(6), {.epoch = restored.epoch, .sequence = 1, .name = first}});
  EXPECT_EQ(standingOf(found(), first), Standing::Trusted);
  EXPECT_EQ(standingOf(found(), second), Standing::Quarantined);
}

TEST_F(RevocationTest, AKeyRevokedWithoutATrustedRecordHasNone) {
  revoke({});
  for (const std::string& name : names_) EXPECT_EQ(standingOf(found(), name), Standing::Quarantined);
  EXPECT_THAT(codesOf(found().findings), ::testing::Each("record-after-revocation"));
}

TEST_F(RevocationTest, BeforeAGapItCannotBeToldYetAndTheArrivalSettlesIt) {
  revoke({until(5)});
  const StoredText third = evidence_.statements[2];
  remove(3);
  EXPECT_EQ(standingOf(found(), names_[0]), Standing::Quarantined);
  EXPECT_EQ(standingOf(found(), names_[4]), Standing::Trusted);
  EXPECT_THAT(codesOf(found().findings),
              UnorderedElementsAre("record-missing", "record-revocation-unproved",
                                   "record-revocation-unproved", "record-after-revocation"));
  evidence_.statements.push_back(third);
  EXPECT_EQ(standingOf(found(), names_[0]), Standing::Trusted);
}

TEST_F(RevocationTest, BeforeTheTrustedRecordArrivesNothingOfTheKeyIsTrusted) {
  revoke({until(5)});
  remove(5);
  for (std::size_t at : {0U, 1U, 2U, 3U, 5U})
    EXPECT_EQ(standingOf(found(), names_[at]), Standing::Quarantined);
  EXPECT_THAT(codesOf(found().findings), Contains("record-revocation-unproved").Times(4));
  EXPECT_THAT(said(), Contains(Said("record-after-revocation", names_[5])));
}

TEST_F(RevocationTest, AnotherRecordUnderTheNumberOfTheTrustedOneIsNotUndecided) {
  revoke({until(5)});
  remove(5);
  Phone thief{.key = keyOf(1)};
  thief.head = Head{.key = thief.key.id(), .epoch = thief.epoch, .sequence = 4, .name = names_[3]};
  const std::string forged = take(thief.record("forged"));
  EXPECT_THAT(said(), Contains(Said("record-after-revocation", forged)));
}

TEST_F(RevocationTest, ALastTrustedRecordOfAnotherNumberOrEpochTrustsNothing) {
  for (const TrustedUntil& wrong :
       {TrustedUntil{technician_.epoch, 3, names_[3]}, TrustedUntil{technician_.epoch, 5, names_[3]},
        TrustedUntil{epochOf(8), 4, names_[3]}}) {
    revoke({wrong});
    for (const std::string& name : names_) EXPECT_EQ(standingOf(found(), name), Standing::Quarantined);
  }
}

TEST_F(RevocationTest, ASignatureAfterTheRevocationWaitsToo) {
  revoke({until(6)});
  const std::string signature = take(technician_.sign(names_[0]));
  EXPECT_THAT(said(), Contains(Said("record-after-revocation", signature)));
}

// --- chains, amendments, personal objects
// ------------------------------------------------------------------------

TEST_F(VerifyTest, AnAlteredLinkLeavesItsPlaceEmpty) {
  std::vector<std::string> names;
  for (int number = 0; number < 3; ++number) names.push_back(take(technician_.record()));
  evidence_.statements[1].text[40] ^= 1;
  EXPECT_THAT(codesOf(found().findings), ElementsAre("record-altered", "record-missing"));
}

TEST_F(VerifyTest, BothBranchesOfAForkAreKept) {
  const std::string first = take(technician_.record());
  Phone twin{.key = keyOf(1), .head = technician_.head};
  const std::string left = take(technician_.record("left"));
  const std::string right = take(twin.record("right"));
  EXPECT_THAT(said(), ElementsAre(Said("record-fork", std::min(left, right))));
  for (const std::string& name : {first, left, right})
    EXPECT_EQ(standingOf(found(), name), Standing::Trusted);
}

TEST_F(VerifyTest, AnAmendmentIsSaidOfTheRecordThatItCorrects) {
  const std::string wrong = take(technician_.record());
  const std::string right = take(technician_.sealNext(
      Record{.envelope = technician_.next(), .content = jsonObject({}), .amends = wrong}));
  EXPECT_THAT(said(), ElementsAre(Said("record-amended", wrong)));
  EXPECT_EQ(standingOf(found(), wrong), Standing::Trusted);
  evidence_.statements.erase(evidence_.statements.begin());
  evidence_.known_heads.clear();
  EXPECT_THAT(said(),
              UnorderedElementsAre(Said("record-missing", ""), Said("record-amended-not-here", right)));
}

TEST_F(VerifyTest, AnAmendmentThatIsNotTrustedCorrectsNothing) {
  Phone technician{.key = keyOf(1)};
  const std::string wrong = take(technician.record());
  technician.role = "office";
  const std::string claimed = take(
      technician.sealNext(Record{.envelope = technician.next(), .content = jsonObject({}), .amends = wrong}));
  EXPECT_THAT(said(), ElementsAre(Said("record-wrong-role", claimed)));
}

TEST_F(VerifyTest, AnErasedPersonLeavesARecordThatVerifiesAndSaysErased) {
  Salt salt{};
  seededFill(30)(salt);
  const std::string name = personalName(salt, "A. Person");
  const std::string record = take(technician_.sealNext(
      Record{.envelope = technician_.next(), .content = jsonObject({}), .personal = {{"operator", name}}}));
  EXPECT_THAT(said(), ElementsAre(Said("personal-not-arrived", record)));
  evidence_.personal = {{.name = name, .salt = salt, .bytes = "A. Person"}};
  EXPECT_THAT(said(), IsEmpty());
  evidence_.personal[0].bytes = "B. Person";
  EXPECT_THAT(said(), ElementsAre(Said("personal-altered", record)));
  evidence_.personal[0].bytes = "A. Person";
  evidence_.personal[0].salt[31] ^= 1;
  EXPECT_THAT(said(), ElementsAre(Said("personal-altered", record)));
  evidence_.personal.clear();
  evidence_.erased = {name};
  EXPECT_THAT(said(), ElementsAre(Said("personal-erased", record)));
  EXPECT_EQ(standingOf(found(), record), Standing::Trusted);
}

TEST_F(VerifyTest, OneIntactCopyOfAPersonalObjectIsEnoughWhicheverComesFirst) {
  Salt salt{};
  seededFill(30)(salt);
  const std::string name = personalName(salt, "A. Person");
  take(technician_.sealNext(
      Record{.envelope = technician_.next(), .content = jsonObject({}), .personal = {{"operator", name}}}));
  const StoredPersonal intact{.name = name, .salt = salt, .bytes = "A. Person"};
  const StoredPersonal altered{.name = name, .salt = salt, .bytes = "B. Person"};
  for (const auto& objects : {std::vector{intact, altered}, std::vector{altered, intact}}) {
    evidence_.personal = objects;
    EXPECT_THAT(said(), IsEmpty());
  }
}

// --- thousands of random cases
// -----------------------------------------------------------------------------------

// A yard with a few phones, each with one or two epochs; one thing is done to it; what is said must be
// exactly that.
class RandomYard {
 public:
  explicit RandomYard(std::uint64_t seed) : random_(seed) {
    const std::size_t phones = 1 + pick(3);
    for (std::size_t at = 0; at < phones; ++at) {
      phones_.push_back({.key = keyOf(1000 + at), .epoch = epochOf(seed * 10 + at)});
      signers_.push_back(listed(phones_.back().key, "technician"));
    }
    const std::size_t rounds = 2 + pick(10);
    for (std::size_t round = 0; round < rounds; ++round) seal(pick(phones_.size()), std::to_string(round));
  }

  std::size_t pick(std::size_t count) { return random_.bits() % count; }

  struct Made {
    std::size_t phone;
    Envelope envelope;
    SealedStatement sealed;
    std::optional<std::string> stored_name{};
  };

  Made& seal(std::size_t phone, const std::string& note) {
    const Envelope envelope = phones_[phone].next();
    made_.push_back({phone, envelope,
                     phones_[phone].sealNext(
                         Record{.envelope = envelope, .content = jsonObject({{"note", jsonString(note)}})})});
    return made_.back();
  }
  // Another statement at a place of one's choice; the phone does not remember it.
  SealedStatement sealAt(std::size_t phone, Envelope envelope, const std::string& note) {
    return sealStatement(
               Record{.envelope = std::move(envelope), .content = jsonObject({{"note", jsonString(note)}})},
               phones_[phone].key)
        .value();
  }
  bool isLast(const Made& made) const { return phones_[made.phone].head->name == made.sealed.name; }

  Evidence evidence(const std::vector<Revocation>& revocations = {}) {
    Evidence evidence = yardWith(keyOf(99), signers_, revocations);
    for (const Made& made : made_)
      evidence.statements.push_back({.text = made.sealed.text, .name = made.stored_name});
    for (std::size_t at = evidence.statements.size(); at > 1; --at) {
      std::swap(evidence.statements[at - 1], evidence.statements[pick(at)]);
    }
    return evidence;
  }

  std::vector<Phone> phones_;
  std::vector<Signer> signers_;
  std::vector<Made> made_;

 private:
  Random random_;
};

struct Outcome {
  Evidence evidence;
  std::vector<std::string> expected;       ///< codes, in any order
  std::vector<std::string> not_trusted{};  ///< names; all others must be trusted
};

// What follows where a link can't be used: its place is empty, which is seen only if a later one is here.
void leaveGap(const RandomYard& yard, const RandomYard::Made& made, Outcome& outcome) {
  if (!yard.isLast(made)) outcome.expected.push_back("record-missing");
}

Outcome doSomething(RandomYard& yard, std::size_t what) {
  RandomYard::Made& made = yard.made_[yard.pick(yard.made_.size())];
  const std::string name = made.sealed.name;
  Phone& phone = yard.phones_[made.phone];
  Outcome outcome;
  switch (what) {
    case 0:  // nothing
      outcome.evidence = yard.evidence();
      return outcome;
    case 1: {  // a bit of the payload flips
      const Sealed parts = readSealed(made.sealed.text).value();
      const std::string encoded = base64Url(bytesOf(parts.payload));
      std::string& text = made.sealed.text;
      const std::string fresh = flipped(parts.payload, yard.pick(parts.payload.size() * 8));
      text.replace(text.find(encoded), encoded.size(), base64Url(bytesOf(fresh)));
      outcome.expected = {"record-altered"};
      outcome.not_trusted = {hashName(fresh)};
      leaveGap(yard, made, outcome);
      outcome.evidence = yard.evidence();
      return outcome;
    }
    case 2: {  // the file ends early
      made.sealed.text.resize(yard.pick(made.sealed.text.size()));
      outcome.expected = {"record-malformed"};
      outcome.not_trusted = {hashName(made.sealed.text)};
      leaveGap(yard, made, outcome);
      outcome.evidence = yard.evidence();
      return outcome;
    }
    case 3: {  // one is left out
      leaveGap(yard, made, outcome);
      std::erase_if(yard.made_, [&](const auto& other) { return other.sealed.name == name; });
      outcome.evidence = yard.evidence();
      return outcome;
    }
    case 4: {  // one is left out, and others know the heads
      outcome.expected = {yard.isLast(made) ? "record-not-arrived-yet" : "record-missing"};
      std::erase_if(yard.made_, [&](const auto& other) { return other.sealed.name == name; });
      outcome.evidence = yard.evidence();
      for (const Phone& any : yard.phones_) {
        if (any.head) outcome.evidence.known_heads.push_back(*any.head);
      }
      return outcome;
    }
    case 5: {  // the chain forks
      const SealedStatement twin = yard.sealAt(made.phone, made.envelope, "twin");
      outcome.expected = {"record-fork"};
      outcome.evidence = yard.evidence();
      outcome.evidence.statements.push_back({.text = twin.text});
      return outcome;
    }
    case 6: {  // one claims a role that its key does not have
      phone.role = "safety-lead";
      const std::string claimed = yard.seal(made.phone, "claimed").sealed.name;
      outcome.expected = {"record-wrong-role"};
      outcome.not_trusted = {claimed};
      outcome.evidence = yard.evidence();
      return outcome;
    }
    case 7: {  // a key is revoked at this record: what came later waits, and so does a back-dated one
      const bool fork = yard.pick(2) == 1;
      const auto later = [&](const auto& other) {
        return other.phone == made.phone && other.envelope.place.sequence > made.envelope.place.sequence;
      };
      for (const auto& other : yard.made_) {
        if (later(other)) outcome.not_trusted.push_back(other.sealed.name);
      }
      Envelope back_dated = fork ? made.envelope : phone.next();
      back_dated.sealed_utc_ms = kNow - 900'000;
      const SealedStatement forged = yard.sealAt(made.phone, back_dated, "forged");
      outcome.not_trusted.push_back(forged.name);
      outcome.expected.assign(outcome.not_trusted.size(), "record-after-revocation");
      if (fork) outcome.expected.push_back("record-fork");
      outcome.evidence = yard.evidence(
          {{.key = phone.key.id(),
            .trusted = {{.epoch = phone.epoch, .sequence = made.envelope.place.sequence, .name = name}}}});
      outcome.evidence.statements.push_back({.text = forged.text});
      return outcome;
    }
    case 8: {  // a key is struck off the list
      const auto count = std::ranges::count(yard.made_, made.phone, &RandomYard::Made::phone);
      for (const auto& other : yard.made_) {
        if (other.phone == made.phone) outcome.not_trusted.push_back(other.sealed.name);
      }
      outcome.expected.assign(static_cast<std::size_t>(count), "record-unknown-signer");
      yard.signers_.erase(yard.signers_.begin() + static_cast<std::ptrdiff_t>(made.phone));
      outcome.evidence = yard.evidence();
      return outcome;
    }
    case 9: {  // kept under the name of another
      made.stored_name = hashName(name);
      outcome.expected = {"record-altered"};
      outcome.not_trusted = {name};
      leaveGap(yard, made, outcome);
      outcome.evidence = yard.evidence();
      return outcome;
    }
    case 10: {  // names a record before it that is not the one
      Envelope next = phone.next();
      if (!next.place.previous) break;
      next.place.previous = hashName("no such record");
      outcome.expected = {"record-broken-chain"};
      outcome.evidence = yard.evidence();
      outcome.evidence.statements.push_back({.text = yard.sealAt(made.phone, next, "astray").text});
      return outcome;
    }
    default: {  // restored from a backup
      phone.epoch = epochOf(yard.pick(1'000'000));
      yard.seal(made.phone, "restored");
      outcome.expected = {"record-new-epoch"};
      outcome.evidence = yard.evidence();
      return outcome;
    }
  }
  return outcome;
}

TEST(VerifyRandomTest, EachOfManyCasesIsNamedExactly) {
  constexpr unsigned kKinds = 12;
  for (std::uint64_t seed = 0; seed < cases(100 * kKinds); ++seed) {
    RandomYard yard(seed);
    const Outcome outcome = doSomething(yard, seed % kKinds);
    const Verification verification = verify(outcome.evidence);
    ASSERT_THAT(codesOf(verification.findings), UnorderedElementsAreArray(outcome.expected))
        << "seed " << seed;
    for (const StatementVerdict& verdict : verification.statements) {
      const bool expected_trusted =
          std::ranges::find(outcome.not_trusted, verdict.name) == outcome.not_trusted.end();
      ASSERT_EQ(verdict.standing == Standing::Trusted, expected_trusted) << "seed " << seed;
    }
  }
}

TEST(VerifyRandomTest, RandomBytesAndRandomSplicesAreNeverTrusted) {
  Random random(5);
  Phone phone{.key = keyOf(1)};
  Evidence evidence = yardWith(keyOf(99), {listed(phone.key, "technician")});
  const std::string one = phone.record("one").text, two = phone.record("another note").text;
  for (unsigned round = 0; round < cases(1000); ++round) {
    std::string text;
    if (round % 2 == 0) {
      text.resize(random.bits() % 800);
      for (char& byte : text) byte = static_cast<char>(random.bits() >> 56U);
    } else {
      const std::size_t cut = random.bits() % one.size();
      text = one.substr(0, cut) + two.substr(std::min(two.size(), cut + random.bits() % 3));
      if (text == one || text == two) continue;
    }
    evidence.statements = {{.text = text}};
    const Verification verification = verify(evidence);
    ASSERT_EQ(verification.statements.size(), 1U);
    ASSERT_EQ(verification.statements[0].standing, Standing::Refused);
    ASSERT_THAT(codesOf(verification.findings), ElementsAre(AnyOf("record-malformed", "record-altered")));
  }
}

}  // namespace
}  // namespace hingepin::records
