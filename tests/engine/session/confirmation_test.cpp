// SPDX-License-Identifier: Apache-2.0
#include "engine/session/confirmation.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <set>

#include "engine/base/random.h"
#include "engine/procedures/journal.h"
#include "engine/records/encoding.h"
#include "engine/records/seal.h"
#include "engine/records/verify.h"
#include "engine/session/document.h"
#include "engine/session/overview.h"
#include "tests/engine/session/yard.h"

namespace hingepin::session {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

/// A lockout that waits for its second person, and the phone of the safety lead.
struct TwoPhones {
  TwoPhones() : job(yard.begin("lockout", "boom-down")) {
    EXPECT_EQ(yard.work(job, "second"), "");
    ask = asks();
  }
  std::string asks() { return need(askToConfirm(job, "phone-1", yard.now, folder::fillBytes)); }
  Sealer lead() const {
    return {.key = yard.lead, .role = "safety-lead", .installation = "phone-2", .epoch = yard.epoch};
  }
  std::string answers(const std::string& answer = "yes") {
    return need(answerAsk(ask, answer, lead(), yard.now));
  }
  std::string taken(const std::string& answer_code) {
    const auto event = eventOfAnswer(ask, answer_code);
    return event ? codeOf(yard.tell(job, *event)) : event.error().message.code;
  }
  [[nodiscard]] std::string about() const { return procedures::prompt(job.procedure, job.state).about; }

  Yard yard{};
  OpenJob job;
  std::string ask{};
};

/// A code with other bytes in it.
std::string withBytes(std::string code, const std::string& prefix, const auto& change) {
  std::string bytes = *records::fromBase45(code.substr(prefix.size()));
  change(bytes);
  return prefix + records::base45(bytes);
}

TEST(ConfirmationTest, ASafetyLeadConfirmsOnTheirOwnPhoneAndTheSealedRecordProvesIt) {
  TwoPhones phones;
  Yard& yard = phones.yard;
  const Asked asked = need(readAsk(phones.ask));
  EXPECT_EQ(asked.job, phones.job.job.id);
  EXPECT_EQ(asked.unit, "L-27");
  EXPECT_EQ(asked.step, "second");
  EXPECT_EQ(asked.by, yard.technician.id());
  EXPECT_THAT(asked.roles, ElementsAre("technician", "supervisor", "safety-lead"));
  ASSERT_EQ(phones.taken(phones.answers()), "");
  // Neither on the same phone nor from afar: nothing is marked.
  EXPECT_THAT(phones.job.state.marks, IsEmpty());
  ASSERT_EQ(yard.work(phones.job), "");

  // A journal that is read again holds it.
  const OpenJob again = need(openJob(yard.store, phones.job.job.id, folder::edge()));
  EXPECT_EQ(procedures::writeState(again.state), procedures::writeState(phones.job.state));

  const std::string name = need(yard.seal(phones.job));
  const records::Verification verified = records::verify(need(yard.store.evidence()));
  ASSERT_EQ(verified.statements.size(), 1U);
  EXPECT_EQ(verified.statements.front().standing, records::Standing::Trusted);
  EXPECT_THAT(verified.findings, IsEmpty());
  const records::Record record = need(recordOf(yard.store, name));
  const std::optional<RecordedJob> recorded = readRecordedJob(record.content);
  ASSERT_TRUE(recorded.has_value());
  const auto made = std::ranges::find(recorded->tries, "second", &RecordedTry::about);
  ASSERT_NE(made, recorded->tries.end());
  const Confirmed sealed = need(readConfirmation(made->confirmation));
  EXPECT_EQ(sealed.key, yard.lead.id());
  EXPECT_EQ(sealed.device, "phone-2");
  EXPECT_EQ(sealed.asked.text, asked.text);
  const records::SignersVerdict signers = need(signersOf(yard.store));
  EXPECT_TRUE(confirmationProves(*recorded, *made, *signers.list));

  const auto rowOf = [&](const Document& document) {
    std::string found;
    for (const DocumentSection& section : document.sections) {
      for (const DocumentRow& row : section.rows) {
        if (row.label.starts_with("Second person: look at")) found = row.value + " | " + row.note;
      }
    }
    return found;
  };
  EXPECT_THAT(
      rowOf(need(documentOf(yard.store, name, {}))),
      HasSubstr("on their own phone, sealed with key " + yard.lead.id().substr(0, 12) + ": the seal holds"));
  // Said of somebody else, or of another answer, it proves nothing.
  RecordedTry other = *made;
  other.by.key = yard.second_technician.id();
  EXPECT_FALSE(confirmationProves(*recorded, other, *signers.list));
  other = *made;
  other.answer = "no";
  EXPECT_FALSE(confirmationProves(*recorded, other, *signers.list));
  RecordedJob elsewhere = *recorded;
  elsewhere.unit = "L-28";
  EXPECT_FALSE(confirmationProves(elsewhere, *made, *signers.list));
}

TEST(ConfirmationTest, ARoleThatTheYardDoesNotListTheKeyForProvesNothing) {
  TwoPhones phones;
  Yard& yard = phones.yard;
  ASSERT_EQ(phones.taken(phones.answers()), "");
  ASSERT_EQ(yard.work(phones.job), "");
  const records::Record record = need(recordOf(yard.store, need(yard.seal(phones.job))));
  const std::optional<RecordedJob> recorded = readRecordedJob(record.content);
  ASSERT_TRUE(recorded.has_value());
  const auto made = std::ranges::find(recorded->tries, "second", &RecordedTry::about);
  ASSERT_NE(made, recorded->tries.end());
  records::SignersList list = *need(signersOf(yard.store)).list;
  EXPECT_TRUE(confirmationProves(*recorded, *made, list));
  for (records::Signer& each : list.signers) {
    if (each.role == "safety-lead") each.role = "technician";
  }
  EXPECT_FALSE(confirmationProves(*recorded, *made, list));
  list.signers.push_back({.key = yard.lead.publicKey(), .role = "safety-lead"});
  EXPECT_TRUE(confirmationProves(*recorded, *made, list)) << "a key may be listed for several roles";
}

TEST(ConfirmationTest, TheSafetyLeadsListSaysOnTheirOwnPhoneOnlyWhereTheSealProvesIt) {
  for (const bool forged : {false, true}) {
    TwoPhones phones;
    Yard& yard = phones.yard;
    ASSERT_EQ(phones.taken(phones.answers()), "");
    ASSERT_EQ(yard.work(phones.job), "");
    if (forged) {
      // What a phone writes that does not keep to the rules: the confirmation of a key of its own.
      const records::SecretKey stranger = records::newSecretKey(folder::fillBytes);
      const std::string answer = need(
          answerAsk(phones.ask, "yes",
                    {.key = stranger, .role = "safety-lead", .installation = "phone-2", .epoch = yard.epoch},
                    yard.now));
      const std::string confirmation = need(eventOfAnswer(phones.ask, answer)).confirmation;
      for (procedures::Try& made : phones.job.state.tries) {
        if (made.event.about == "second") made.event.confirmation = confirmation;
      }
    }
    const std::string name = need(yard.seal(phones.job));
    const Confirmations list = need(confirmations(yard.store, folder::edge(), {}, 0));
    ASSERT_EQ(list.confirmed.size(), 1U);
    EXPECT_EQ(list.confirmed.front().record, name);
    EXPECT_EQ(list.confirmed.front().key, yard.lead.id());
    EXPECT_EQ(list.confirmed.front().own_phone, !forged);
  }
}

TEST(ConfirmationTest, WhatWasAskedIsShownInTheReadersOwnLanguage) {
  TwoPhones phones;
  const Asked asked = need(readAsk(phones.ask));
  const store::Store elsewhere = need(store::Store::open((phones.yard.folder.path() / "other.db").string()));
  const AskedInWords english = sayAsk(elsewhere, asked, {});
  EXPECT_EQ(english.title, "Lockout and clear zone");
  EXPECT_EQ(english.text, asked.text);
  EXPECT_FALSE(english.seen.empty());
  const AskedInWords german = sayAsk(elsewhere, asked, {.language = "de"});
  EXPECT_THAT(german.text, HasSubstr("Zweite Person: Trennschalter"));
  for (const auto& [what, said] : german.seen) {
    EXPECT_EQ(what.find('{'), std::string::npos) << what;
    EXPECT_FALSE(said.empty());
  }
  // Of a procedure that this phone does not know there are the words of the other phone.
  Asked unknown = asked;
  unknown.procedure = std::string(64, '7');
  EXPECT_EQ(sayAsk(elsewhere, unknown, {.language = "de"}).text, asked.text);
}

TEST(ConfirmationTest, ANoFailsTheStepAndIsOnRecordAsSealed) {
  TwoPhones phones;
  const std::size_t before = phones.job.state.tries.size();
  ASSERT_EQ(phones.taken(phones.answers("no")), "");
  ASSERT_GT(phones.job.state.tries.size(), before);
  EXPECT_EQ(phones.job.state.tries[before].outcome, procedures::Outcome::Failed);
  EXPECT_EQ(phones.job.state.tries[before].event.who, phones.yard.lead.id());
  EXPECT_FALSE(phones.job.state.tries[before].event.confirmation.empty());
}

TEST(ConfirmationTest, NoAlteredBitOfAnAnswerIsTaken) {
  TwoPhones phones;
  const std::string answer = phones.answers();
  const std::string prefix = "HINGEPIN:ANSWER:";
  const std::size_t bits = records::fromBase45(answer.substr(prefix.size()))->size() * 8;
  std::set<std::string> reasons;
  for (std::size_t bit = 0; bit < bits; ++bit) {
    const std::string altered = withBytes(answer, prefix, [&](std::string& bytes) {
      bytes[bit / 8] = static_cast<char>(static_cast<unsigned char>(bytes[bit / 8]) ^ (1U << (bit % 8)));
    });
    const auto event = eventOfAnswer(phones.ask, altered);
    OpenJob job = phones.job;
    const std::string reason =
        event ? codeOf(handIn(phones.yard.store, job, *event, phones.yard.now, folder::edge()))
              : event.error().message.code;
    ASSERT_NE(reason, "") << "bit " << bit;
    reasons.insert(reason);
  }
  EXPECT_TRUE(reasons.contains("confirmation-altered"));
  EXPECT_TRUE(reasons.contains("confirmation-of-another-ask"));
  EXPECT_TRUE(reasons.contains("signer-not-listed"));
  EXPECT_EQ(phones.taken(answer), "");
}

TEST(ConfirmationTest, AnAnswerCountsForItsQuestionAlone) {
  TwoPhones phones;
  const std::string answer = phones.answers();
  {
    // The same question asked once more is another one.
    const auto again = eventOfAnswer(phones.asks(), answer);
    EXPECT_EQ(codeOf(again), "confirmation-of-another-ask");
  }
  {
    TwoPhones other;
    EXPECT_EQ(codeOf(eventOfAnswer(other.ask, answer)), "confirmation-of-another-ask");
    // Nor where the question is handed in along with it.
    const procedures::Event event = need(eventOfAnswer(phones.ask, answer));
    EXPECT_EQ(codeOf(other.yard.tell(other.job, event)), "signer-not-listed");
  }
  Yard& yard = phones.yard;
  OpenJob second = yard.begin("lockout", "boom-down");
  ASSERT_EQ(yard.work(second, "second"), "");
  const procedures::Event event = need(eventOfAnswer(phones.ask, answer));
  EXPECT_EQ(codeOf(yard.tell(second, event)), "confirmation-of-another-ask") << "another job";
  // Something happened between: what was seen may no longer be so.
  need(yard.tell(phones.job, {.type = procedures::EventType::Interrupt, .how = procedures::How::Live}));
  need(yard.tell(phones.job, yard.honest(phones.job)));
  while (procedures::prompt(phones.job.procedure, phones.job.state).ask == procedures::Ask::Acknowledge)
    need(yard.tell(phones.job, yard.honest(phones.job)));
  ASSERT_EQ(phones.about(), "second");
  EXPECT_EQ(phones.taken(answer), "confirmation-of-another-ask");
  phones.ask = phones.asks();
  EXPECT_EQ(phones.taken(phones.answers()), "");
}

TEST(ConfirmationTest, AnAnswerCountsOnce) {
  TwoPhones phones;
  const std::string answer = phones.answers();
  const procedures::Event event = need(eventOfAnswer(phones.ask, answer));
  ASSERT_EQ(codeOf(phones.yard.tell(phones.job, event)), "");
  EXPECT_EQ(codeOf(phones.yard.tell(phones.job, event)), "confirmation-used");
}

TEST(ConfirmationTest, AnAnswerToAnotherStepIsNotTaken) {
  TwoPhones phones;
  procedures::Event event = need(eventOfAnswer(phones.ask, phones.answers()));
  event.about = "isolated";
  EXPECT_EQ(codeOf(phones.yard.tell(phones.job, event)), "confirmation-not-of-author");
  for (const auto change : {0, 1, 2, 3}) {
    procedures::Event other = need(eventOfAnswer(phones.ask, phones.answers()));
    if (change == 0) other.who = phones.yard.second_technician.id(), other.role = "technician";
    if (change == 1) other.device = "phone-3";
    if (change == 2) other.answer = "no";
    if (change == 3) other.type = procedures::EventType::Acknowledge;
    EXPECT_EQ(codeOf(phones.yard.tell(phones.job, other)), "confirmation-not-of-author") << change;
  }
}

TEST(ConfirmationTest, AnAnswerHoldsAQuarterOfAnHour) {
  TwoPhones phones;
  const std::string answer = phones.answers();
  const procedures::Event event = need(eventOfAnswer(phones.ask, answer));
  const std::int64_t asked_at_ms = phones.yard.now.at_ms;
  OpenJob late = phones.job;
  phones.yard.now.at_ms = asked_at_ms + kAskHolds_ms - 1999;  // two seconds pass with each event
  EXPECT_EQ(codeOf(phones.yard.tell(late, event)), "confirmation-too-late");
  phones.yard.now.at_ms = asked_at_ms + kAskHolds_ms - 2000;
  EXPECT_EQ(codeOf(phones.yard.tell(phones.job, event)), "");
}

TEST(ConfirmationTest, OnlyWhoTheYardListsForTheRoleConfirms) {
  TwoPhones phones;
  Yard& yard = phones.yard;
  const records::SecretKey stranger = records::newSecretKey(folder::fillBytes);
  const auto answeredBy = [&](const records::SecretKey& key, const std::string& role) {
    return phones.taken(need(
        answerAsk(phones.ask, "yes",
                  {.key = key, .role = role, .installation = "phone-2", .epoch = yard.epoch}, yard.now)));
  };
  EXPECT_EQ(answeredBy(stranger, "safety-lead"), "signer-not-listed");
  EXPECT_EQ(answeredBy(yard.lead, "supervisor"), "signer-not-listed") << "not listed for this role";
  EXPECT_EQ(
      codeOf(answerAsk(phones.ask, "yes",
                       {.key = yard.lead, .role = "customer", .installation = "phone-2", .epoch = yard.epoch},
                       yard.now)),
      "role-may-not");
  EXPECT_EQ(codeOf(answerAsk(phones.ask, "maybe", phones.lead(), yard.now)), "answer-unknown");
  const std::string answer = phones.answers();
  need(revokeSigner(yard.store, yard.yard_key, yard.lead.id(), std::nullopt, yard.now.utc_ms));
  EXPECT_EQ(phones.taken(answer), "signer-revoked");
}

TEST(ConfirmationTest, NobodyConfirmsWhatTheyAskAndNoPhoneItself) {
  TwoPhones phones;
  Yard& yard = phones.yard;
  EXPECT_EQ(
      codeOf(answerAsk(
          phones.ask, "yes",
          {.key = yard.technician, .role = "technician", .installation = "phone-2", .epoch = yard.epoch},
          yard.now)),
      "second-person-is-the-first");
  EXPECT_EQ(codeOf(answerAsk(
                phones.ask, "yes",
                {.key = yard.lead, .role = "safety-lead", .installation = "phone-1", .epoch = yard.epoch},
                yard.now)),
            "confirmation-same-phone");
  // A phone that does not keep to that is not believed either.
  std::string forged_ask = withBytes(phones.ask, "HINGEPIN:ASK:", [](std::string& bytes) {
    const std::size_t at = bytes.find(R"("device":"phone-1")");
    bytes.replace(at, 18, R"("device":"phone-9")");
  });
  const std::string answer = need(answerAsk(
      forged_ask, "yes",
      {.key = yard.lead, .role = "safety-lead", .installation = "phone-1", .epoch = yard.epoch}, yard.now));
  const procedures::Event event = need(eventOfAnswer(forged_ask, answer));
  EXPECT_EQ(codeOf(yard.tell(phones.job, event)), "confirmation-same-phone");
}

TEST(ConfirmationTest, OtherWordsThanTheStepsAreNotTaken) {
  TwoPhones phones;
  const std::string forged_ask = withBytes(phones.ask, "HINGEPIN:ASK:", [](std::string& bytes) {
    const std::size_t at = bytes.find("Second person");
    ASSERT_NE(at, std::string::npos);
    bytes.replace(at, 13, "Is the coffee");
  });
  const std::string answer = need(answerAsk(forged_ask, "yes", phones.lead(), phones.yard.now));
  const procedures::Event event = need(eventOfAnswer(forged_ask, answer));
  EXPECT_EQ(codeOf(phones.yard.tell(phones.job, event)), "confirmation-of-another-ask");
}

TEST(ConfirmationTest, CodesAreReadStrictly) {
  TwoPhones phones;
  EXPECT_EQ(codeOf(readAsk("")), "ask-code-malformed");
  EXPECT_EQ(codeOf(readAsk("hingepin:record/" + std::string(64, 'a'))), "ask-code-malformed");
  EXPECT_EQ(codeOf(readAsk(phones.ask + "!")), "ask-code-malformed");
  EXPECT_EQ(codeOf(readAsk(phones.answers())), "ask-code-malformed");
  EXPECT_EQ(codeOf(eventOfAnswer(phones.ask, phones.ask)), "answer-code-malformed");
  const auto changed = [&](const std::string& from, const std::string& to) {
    return codeOf(readAsk(withBytes(phones.ask, "HINGEPIN:ASK:", [&](std::string& bytes) {
      const std::size_t at = bytes.find(from);
      if (at == std::string::npos) throw std::runtime_error(from + " is not there");
      bytes.replace(at, from.size(), to);
    })));
  };
  EXPECT_EQ(changed("\"at_ms\":", "\"at_us\":"), "json-unknown-key");
  EXPECT_EQ(changed("hingepin-ask/1", "hingepin-ask/2"), "json-value-unexpected");
  EXPECT_EQ(changed("\"device\":\"phone-1\"", "\"device\":\"\""), "json-value-unexpected");
  EXPECT_EQ(changed("\"nonce\":\"", "\"nonce\":\"A"), "json-value-unexpected");
  EXPECT_EQ(changed("\"unit\":\"L-27\"", "\"unit\":7"), "json-wrong-kind");
  EXPECT_EQ(changed("\"safety-lead\"", "\"saf)ty-lead\""), "json-wrong-kind");
  EXPECT_EQ(changed("\"utc_ms\":", "\"utc_ms\":9999"), "json-value-unexpected");
  EXPECT_EQ(changed("{\"at_ms\"", "{ \"at_ms\""), "json-not-canonical");
  EXPECT_EQ(codeOf(askToConfirm(phones.yard.begin("lockout", "boom-down"), "phone-1", phones.yard.now,
                                folder::fillBytes)),
            "confirmation-not-asked");
  // Whatever comes is answered.
  Random random(7);
  for (int count = 0; count < 300; ++count) {
    std::string code = count % 2 == 0 ? phones.ask : phones.answers();
    code[static_cast<std::size_t>(random.uniform() * static_cast<double>(code.size()))] =
        static_cast<char>(random.bits() & 0xFFU);
    (void)readAsk(code);
    (void)eventOfAnswer(phones.ask, code);
  }
}

TEST(ConfirmationTest, CodesAreSmallEnoughForACamera) {
  // Level M of ISO/IEC 18004 holds 1035 characters of this alphabet in version 21, 101 modules a side, and
  // 574 in version 15, 77 modules: table 7, from memory.
  TwoPhones phones;
  EXPECT_LE(records::fromBase45(phones.ask.substr(13))->size(), 700U);
  EXPECT_LE(phones.ask.size(), 1035U);
  EXPECT_LE(phones.answers().size(), 574U);
}

TEST(ConfirmationTest, Base45IsThatOfRfc9285) {
  // RFC 9285, 4.3 and 4.4: the examples.
  EXPECT_EQ(records::base45("AB"), "BB8");
  EXPECT_EQ(records::base45("Hello!!"), "%69 VD92EX0");
  EXPECT_EQ(records::base45("base-45"), "UJCLQE7W581");
  EXPECT_EQ(records::fromBase45("QED8WEX0"), "ietf!");
  EXPECT_EQ(records::fromBase45("GGW"), std::nullopt) << "RFC 9285, 6: 65536 is no two bytes";
  EXPECT_EQ(records::fromBase45("A"), std::nullopt);
  EXPECT_EQ(records::fromBase45("bb8"), std::nullopt);
}

}  // namespace
}  // namespace hingepin::session
