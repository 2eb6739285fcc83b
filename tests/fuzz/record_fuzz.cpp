// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <map>
#include <set>

#include "engine/records/encoding.h"
#include "tests/fuzz/json_mutator.h"
#include "tests/fuzz/require.h"
#include "tests/fuzz/script.h"

namespace {

using namespace hingepin;
using namespace hingepin::records;
using fuzz::require;

/// There is one way to write a sealed object.
void readSealedText(std::string_view text) {
  const Expected<Sealed> sealed = readSealed(text);
  if (!sealed) return fuzz::requireSound(sealed.error());
  std::string written = R"({"payload":")" + base64Url(bytesOf(sealed->payload)) + R"(","signatures":[)";
  for (const Seal& seal : sealed->seals) {
    if (&seal != sealed->seals.data()) written += ',';
    written += R"({"protected":")" + seal.signed_bytes.substr(0, seal.signed_bytes.find('.'));
    written += R"(","signature":")" + base64Url(seal.signature) + R"("})";
  }
  require(written + "]}" == text, "what is read is written as the same bytes");
}

void readPayloadText(std::string_view payload, std::string_view type) {
  const Expected<Statement> statement = readPayload(payload, type);
  if (!statement) return fuzz::requireSound(statement.error());
  require(std::holds_alternative<Record>(*statement) == (type == kRecordType), "a payload is of its type");
  require(payloadOf(*statement) == payload, "a payload is written as the same bytes");
}

using Standings = std::map<std::string, std::multiset<Standing>>;

Standings standingsOf(const Verification& verification) {
  Standings standings;
  for (const StatementVerdict& verdict : verification.statements) {
    standings[verdict.name].insert(verdict.standing);
  }
  return standings;
}

/// What is said, without whom: of two that signed on one phone, the later one is named.
std::multiset<std::string> codesOf(const std::vector<Finding>& findings) {
  std::multiset<std::string> codes;
  for (const Finding& finding : findings) codes.insert(finding.message.code);
  return codes;
}

bool isListed(const SignersList& list, const Envelope& envelope) {
  return std::ranges::any_of(list.signers, [&](const Signer& signer) {
    return thumbprint(signer.key) == envelope.place.key && signer.role == envelope.role &&
           signer.valid_from_utc_ms <= envelope.sealed_utc_ms &&
           (!signer.valid_until_utc_ms || envelope.sealed_utc_ms < *signer.valid_until_utc_ms);
  });
}

void verifyAll(const Evidence& evidence) {
  const Verification verification = verify(evidence);
  for (const StatementVerdict& verdict : verification.statements) {
    require(isHashName(verdict.name), "a verdict has a name");
    require(verdict.standing == Standing::Refused || verdict.statement.has_value(),
            "what is not refused was read");
    if (verdict.statement) {
      const Expected<std::string> payload = payloadOf(*verdict.statement);
      require(payload && hashName(*payload) == verdict.name, "a statement is named by its payload");
    }
    if (verdict.standing == Standing::Refused) continue;
    require(verification.signers.list && isListed(*verification.signers.list, envelopeOf(*verdict.statement)),
            "who is not on the list is refused");
  }
  for (const Finding& finding : verification.findings) {
    require(!finding.message.code.empty(), "a finding has a code");
  }

  Evidence other = evidence;
  std::ranges::reverse(other.statements);
  std::ranges::reverse(other.signers_lists);
  std::ranges::reverse(other.personal);
  std::ranges::reverse(other.known_heads);
  other.statements.insert(other.statements.end(), evidence.statements.begin(), evidence.statements.end());
  other.signers_lists.insert(other.signers_lists.end(), evidence.signers_lists.begin(),
                             evidence.signers_lists.end());
  other.known_heads.insert(other.known_heads.end(), evidence.known_heads.begin(), evidence.known_heads.end());
  other.personal.insert(other.personal.end(), evidence.personal.begin(), evidence.personal.end());
  const Verification again = verify(other);
  require(standingsOf(again) == standingsOf(verification), "order and repetition change no standing");
  require(codesOf(again.findings) == codesOf(verification.findings), "nor what is found");
  require(again.signers.name == verification.signers.name, "nor which list is the newest");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  const std::string_view text = fuzz::textOf(bytes, size);
  readSealedText(text);
  readPayloadText(text, kRecordType);
  readPayloadText(text, kSignatureType);
  const fuzz::Script script = fuzz::readScript(text);
  for (const StoredText& stored : script.evidence.statements) readSealedText(stored.text);
  for (const std::string& payload : script.payloads) {
    readPayloadText(payload, kRecordType);
    readPayloadText(payload, kSignatureType);
  }
  verifyAll(script.evidence);
  return 0;
}

HINGEPIN_MUTATE_JSON(true)
