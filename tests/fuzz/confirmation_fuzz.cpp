// SPDX-License-Identifier: Apache-2.0
// What two phones show each other as codes: the first line of an input is a question's JSON, the second its
// answer's, the third what a record says was sealed; a request to join is a question too, and what lets it in
// is of the second line.
#include <zlib.h>

#include "engine/records/encoding.h"
#include "engine/session/confirmation.h"
#include "engine/session/join.h"
#include "tests/fuzz/json_mutator.h"
#include "tests/fuzz/require.h"
#include "tests/fuzz/script.h"

namespace {

using namespace hingepin;
using namespace hingepin::session;
using fuzz::require;

std::string nextLine(std::string_view& text) {
  const std::size_t end = std::min(text.find('\n'), text.size());
  std::string line(text.substr(0, end));
  text.remove_prefix(std::min(end + 1, text.size()));
  return line;
}

/// What somebody answers on another phone comes back as they gave it, and is sealed by them.
void goThereAndBack(const std::string& ask, const Asked& asked) {
  if (asked.roles.empty()) return;
  const records::SecretKey& key = fuzz::scriptKey(1);
  const std::string device = fuzz::scriptKey(2).id();
  const Sealer sealer{
      .key = key, .role = asked.roles.front(), .installation = device, .epoch = fuzz::scriptEpoch(1)};
  const Expected<std::string> answer = answerAsk(ask, "yes", sealer, {.at_ms = 0, .boot = "b", .utc_ms = 1});
  if (!answer) return fuzz::requireSound(answer.error());
  const Expected<procedures::Event> event = eventOfAnswer(ask, *answer);
  require(event.has_value(), "an answer is read where it was asked for");
  require(event->about == asked.step && event->answer == "yes" && event->who == key.id(),
          "it says what was answered");
  const Expected<Confirmed> confirmed = readConfirmation(event->confirmation);
  require(confirmed.has_value(), "what was sealed is read");
  require(confirmed->asked.nonce == asked.nonce && confirmed->asked.seen == asked.seen,
          "it holds the question");
  records::SignersList list;
  require(!confirmationHolds(event->confirmation, list), "nobody is believed who is not listed");
  list.signers.push_back({.key = key.publicKey(), .role = asked.roles.front()});
  require(confirmationHolds(event->confirmation, list), "the seal holds");
}

/// Bytes with nobody's signature after them are read by their form, and believed by nobody.
void askToBeLetIn(const std::string& json, const std::string& answer) {
  const std::string unsealed(64, 'x');
  const Expected<Joining> joining = readJoin("HINGEPIN:JOIN:" + records::base45(json + unsealed));
  require(!joining, "nobody asks without a key");
  fuzz::requireSound(joining.error());
  const Expected<Admission> admission = readAdmission("HINGEPIN:ADMIT:" + records::base45(answer + unsealed));
  require(!admission, "nobody is let in without the yard's key");
  fuzz::requireSound(admission.error());
}

/// A name that can be sealed comes back; so does an admission with any name in it.
void joinThereAndBack(const std::string& name) {
  const records::SecretKey& key = fuzz::scriptKey(1);
  const records::SecretKey& yard_key = fuzz::scriptKey(2);
  const auto fill = [](std::span<std::uint8_t> bytes) { std::ranges::fill(bytes, std::uint8_t{7}); };
  const Expected<std::string> code =
      askToJoin(key, name, key.id(), {.at_ms = 0, .boot = "b", .utc_ms = 1}, fill);
  if (!code) return fuzz::requireSound(code.error());
  const Expected<Joining> joining = readJoin(*code);
  require(joining && joining->name == name && joining->key == key.publicKey(), "a request says who asks");
  const Admission made{.of = std::string(64, 'a'),
                       .root = std::string(64, 'b'),
                       .yard_key = yard_key.publicKey(),
                       .role = "technician",
                       .names = {{key.publicKey(), name}}};
  const Expected<Admission> read = readAdmission(codeOfAdmission(made, yard_key));
  require(read && read->of == made.of && read->root == made.root && read->names == made.names,
          "an admission says what was sealed");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  std::string_view text = fuzz::textOf(bytes, size);
  if (const Expected<Joining> raw = readJoin(text); !raw) fuzz::requireSound(raw.error());
  if (const Expected<Admission> raw = readAdmission(text); !raw) fuzz::requireSound(raw.error());
  if (const Expected<Asked> raw = readAsk(text); !raw) fuzz::requireSound(raw.error());
  const std::string question = nextLine(text);
  joinThereAndBack(question);
  const std::string ask = "HINGEPIN:ASK:" + records::base45(question);
  const Expected<Asked> asked = readAsk(ask);
  if (asked) {
    goThereAndBack(ask, *asked);
  } else {
    fuzz::requireSound(asked.error());
  }
  // Of a key that sealed nothing: read, and believed by nobody.
  const std::string said = nextLine(text);
  askToBeLetIn(question, said);
  const std::string answer = said + std::string(32 + 64, 'x');
  const Expected<procedures::Event> event = eventOfAnswer(ask, "HINGEPIN:ANSWER:" + records::base45(answer));
  if (!event) fuzz::requireSound(event.error());
  if (event) require(!confirmationHolds(event->confirmation, {}), "an unsealed answer does not hold");
  if (const Expected<Confirmed> sealed = readConfirmation(text); !sealed) fuzz::requireSound(sealed.error());
  return 0;
}

HINGEPIN_MUTATE_JSON(true)
