// SPDX-License-Identifier: Apache-2.0
// A question and its answer between two phones, as codes: the first line of an input is the question's JSON,
// the second the answer's, the third what a record says was sealed.
#include "engine/records/encoding.h"
#include "engine/session/confirmation.h"
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

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  std::string_view text = fuzz::textOf(bytes, size);
  if (const Expected<Asked> raw = readAsk(text); !raw) fuzz::requireSound(raw.error());
  const std::string ask = "HINGEPIN:ASK:" + records::base45(nextLine(text));
  const Expected<Asked> asked = readAsk(ask);
  if (asked) {
    goThereAndBack(ask, *asked);
  } else {
    fuzz::requireSound(asked.error());
  }
  // Of a key that sealed nothing: read, and believed by nobody.
  const std::string answer = nextLine(text) + std::string(32 + 64, 'x');
  const Expected<procedures::Event> event = eventOfAnswer(ask, "HINGEPIN:ANSWER:" + records::base45(answer));
  if (!event) fuzz::requireSound(event.error());
  if (event) require(!confirmationHolds(event->confirmation, {}), "an unsealed answer does not hold");
  if (const Expected<Confirmed> sealed = readConfirmation(text); !sealed) fuzz::requireSound(sealed.error());
  return 0;
}

HINGEPIN_MUTATE_JSON(true)
