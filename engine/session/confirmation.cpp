// SPDX-License-Identifier: Apache-2.0
#include "engine/session/confirmation.h"

#include <algorithm>
#include <array>
#include <ranges>

#include "engine/base/contains.h"
#include "engine/base/json_walk.h"
#include "engine/procedures/journal.h"
#include "engine/records/canonical_json.h"
#include "engine/records/encoding.h"
#include "engine/records/seal.h"
#include "engine/session/catalogue.h"
#include "engine/session/code.h"
#include "engine/session/procedure_text.h"
#include "engine/session/yard.h"

namespace hingepin::session {
namespace {

using records::jsonArray;
using records::jsonInteger;
using records::jsonObject;
using records::jsonString;

constexpr std::string_view kAskPrefix = "HINGEPIN:ASK:";
constexpr std::string_view kAnswerPrefix = "HINGEPIN:ANSWER:";
constexpr std::string_view kAskFormat = "hingepin-ask/1";
constexpr std::string_view kAnswerFormat = "hingepin-answer/1";
constexpr std::string_view kConfirmationFormat = "hingepin-confirmation/1";

/// What came just before is told as far as the code stays small enough for a camera.
constexpr std::size_t kMostSeen = 3;
constexpr std::size_t kWantedBytes = 700;
constexpr std::size_t kKeyBytes = 32;
constexpr std::size_t kMostText = 600;

bool isText(std::string_view text) { return isLine(text, kMostText); }

bool isAnswer(std::string_view text) { return text == "yes" || text == "no"; }

JsonValue jsonOf(const Asked& asked) {
  std::vector<JsonValue> roles;
  for (const std::string& role : asked.roles) roles.push_back(jsonString(role));
  std::vector<JsonValue> seen;
  for (const auto& [step, said] : asked.seen) seen.push_back(jsonArray({jsonString(step), jsonString(said)}));
  std::vector<std::pair<std::string, JsonValue>> members = {
      {"format", jsonString(std::string(kAskFormat))},
      {"job", jsonString(asked.job)},
      {"unit", jsonString(asked.unit)},
      {"procedure", jsonString(digestOf(asked.procedure))},
      {"step", jsonString(asked.step)},
      {"text", jsonString(asked.text)},
      {"roles", jsonArray(std::move(roles))},
      {"seen", jsonArray(std::move(seen))},
      {"by", jsonString(asked.by)},
      {"device", jsonString(asked.device)},
      {"journal", jsonString(digestOf(asked.journal))},
      {"nonce", jsonString(asked.nonce)},
      {"at_ms", jsonInteger(asked.at_ms)},
      {"utc_ms", jsonInteger(asked.utc_ms)}};
  if (!asked.attachment.empty()) members.emplace_back("attachment", jsonString(asked.attachment));
  return jsonObject(std::move(members));
}

class CodeReader : public CodeWalk {
 public:
  Asked asked(const JsonNode& node) {
    Asked asked;
    if (!object(node, {"format", "job", "unit", "attachment", "procedure", "step", "text", "roles", "seen",
                       "by", "device", "journal", "nonce", "at_ms", "utc_ms"})) {
      keep(node.wrongKind("an object"));
      return asked;
    }
    format(node, kAskFormat);
    asked.job = name(node, "job");
    asked.unit = name(node, "unit");
    if (node.find("attachment")) asked.attachment = name(node, "attachment");
    asked.procedure = hashNameOf(text(node, "procedure", isDigest, "32 bytes in base64url"));
    asked.step = name(node, "step");
    asked.text = text(node, "text", isText, "text of one line");
    asked.roles = required(node, "roles", [&](const JsonNode& roles) {
      std::vector<std::string> read;
      for (const JsonNode& role : taken(roles.elements())) {
        read.push_back(taken(role.name()));
        if (!records::isLabel(read.back())) keep(role.wrongKind("a role such as technician"));
      }
      return read;
    });
    asked.seen = required(node, "seen", [&](const JsonNode& list) {
      std::vector<std::pair<std::string, std::string>> read;
      for (const JsonNode& each : taken(list.elements())) {
        const std::vector<JsonNode> pair = taken(each.elements());
        if (pair.size() != 2) {
          keep(each.wrongKind("a step and what was said"));
          break;
        }
        read.emplace_back(taken(pair[0].name()), taken(pair[1].name()));
      }
      return read;
    });
    asked.by = text(node, "by", records::isThumbprint, "a key's thumbprint");
    asked.device = name(node, "device");
    asked.journal = hashNameOf(text(node, "journal", isDigest, "32 bytes in base64url"));
    asked.nonce = text(node, "nonce", isNonce, "16 bytes in base64url");
    asked.at_ms = integer(node, "at_ms");
    asked.utc_ms = integer(node, "utc_ms");
    return asked;
  }

  /// What both the answer's code and the sealed confirmation have.
  void answer(const JsonNode& node, Confirmed& read) {
    read.answer = text(node, "answer", isAnswer, "yes or no");
    read.role = text(node, "role", records::isLabel, "a role such as technician");
    read.device = name(node, "device");
    read.utc_ms = integer(node, "utc_ms");
  }

 private:
  std::string name(const JsonNode& node, std::string_view key) {
    return text(node, key, isName, "a name of one line");
  }
  std::int64_t integer(const JsonNode& node, std::string_view key) {
    return taken(records::integerAt(node, key, 0));
  }
};

/// What a sealed confirmation says, as it is sealed.
std::string payloadOf(const Confirmed& confirmed) {
  return canonical(jsonObject({{"format", jsonString(std::string(kConfirmationFormat))},
                               {"asked", jsonOf(confirmed.asked)},
                               {"answer", jsonString(confirmed.answer)},
                               {"role", jsonString(confirmed.role)},
                               {"device", jsonString(confirmed.device)},
                               {"utc_ms", jsonInteger(confirmed.utc_ms)}}));
}

/// The step that a job asks a second person for, or nullptr.
const procedures::Step* awaitedOf(const OpenJob& job) {
  const procedures::Prompt asked = procedures::prompt(job.procedure, job.state);
  const procedures::Step* const step = procedures::findStep(job.procedure, asked.about);
  return asked.ask == procedures::Ask::Answer && step != nullptr && step->second_person ? step : nullptr;
}

std::string textFor(const OpenJob& job, const procedures::Step& step) {
  return say(job.words, procedures::textOf(job.procedure, job.state, step), UnitSystem::Metric);
}

/// What was said last before it, the oldest first.
std::vector<std::pair<std::string, std::string>> seenIn(const OpenJob& job) {
  using procedures::StepKind;
  std::vector<std::pair<std::string, std::string>> seen;
  for (const procedures::Try& made : job.state.tries | std::views::reverse) {
    const procedures::Step* const step = procedures::findStep(job.procedure, made.event.about);
    const bool told = step != nullptr && made.counts &&
                      (step->kind == StepKind::Confirm || step->kind == StepKind::Reading ||
                       step->kind == StepKind::Monitor || step->kind == StepKind::Evidence);
    const std::string& said = made.event.value.empty() ? made.event.answer : made.event.value;
    if (!told || !isName(said)) continue;
    seen.emplace(seen.begin(), step->id, said);
    if (seen.size() == kMostSeen) break;
  }
  return seen;
}

const records::Signer* signerOf(const records::SignersList& list, std::string_view key) {
  const auto found = std::ranges::find_if(
      list.signers, [&](const records::Signer& each) { return records::thumbprint(each.key) == key; });
  return found == list.signers.end() ? nullptr : &*found;
}

bool listsFor(const records::SignersList& list, std::string_view key, std::string_view role) {
  return std::ranges::any_of(list.signers, [&](const records::Signer& each) {
    return each.role == role && records::thumbprint(each.key) == key;
  });
}

}  // namespace

std::string journalHead(const std::vector<procedures::Event>& journal) {
  std::string all;
  for (const procedures::Event& event : journal) all += procedures::writeEvent(event) + "\n";
  return records::hashName(all);
}

Expected<std::string> askToConfirm(const OpenJob& job, const std::string& device, const Moment& now,
                                   const records::FillBytes& fill) {
  const procedures::Step* const step = awaitedOf(job);
  if (step == nullptr) return fail(ErrorKind::InvalidInput, "confirmation-not-asked", {{"job", job.job.id}});
  std::array<std::uint8_t, 16> nonce{};
  fill(nonce);
  Asked asked{.job = job.job.id,
              .unit = job.job.unit,
              .attachment = job.job.attachment,
              .procedure = job.job.procedure,
              .step = step->id,
              .text = textFor(job, *step),
              .roles = step->roles.empty() ? job.procedure.confirm_roles : step->roles,
              .seen = seenIn(job),
              .by = job.state.person,
              .device = device,
              .journal = journalHead(job.journal),
              .nonce = records::base64Url(nonce),
              .at_ms = now.at_ms,
              .utc_ms = now.utc_ms};
  std::string payload = canonical(jsonOf(asked));
  while (payload.size() > kWantedBytes && !asked.seen.empty()) {
    asked.seen.erase(asked.seen.begin());
    payload = canonical(jsonOf(asked));
  }
  return codeFrom(kAskPrefix, payload);
}

Expected<Asked> readAsk(std::string_view code) {
  Expected<std::string> payload = bytesOfCode(code, kAskPrefix, "ask-code-malformed");
  if (!payload) return std::unexpected(std::move(payload.error()));
  const Expected<JsonDocument> document = records::readCanonicalJson(*payload, kMostCodeBytes);
  if (!document) return std::unexpected(document.error());
  CodeReader reader;
  Asked asked = reader.asked(JsonNode(*document));
  if (reader.error()) return std::unexpected(*reader.error());
  return asked;
}

AskedInWords sayAsk(const store::Store& store, const Asked& asked, const Reader& reader) {
  AskedInWords words{.text = asked.text};
  ProcedureShelf shelf(store, reader);
  const Expected<const ProcedureText*> text = shelf.find(asked.procedure, "", reader.language);
  if (!text) return words;
  words.title = wordsOf(**text, (*text)->procedure.title, reader);
  // What a sentence's numbers are, this phone does not know.
  const auto plain = [&](const std::string& id) -> std::string {
    const procedures::Step* const step = procedures::findStep((*text)->procedure, id);
    const auto found = step == nullptr ? (*text)->words.end() : (*text)->words.find(step->text);
    return found == (*text)->words.end() || contains(found->second, '{') ? "" : found->second;
  };
  if (std::string own = plain(asked.step); !own.empty()) words.text = std::move(own);
  const Locale& locale = localeOf(reader.language);
  for (const auto& [step, said] : asked.seen) {
    std::string what = plain(step);
    if (what.empty()) continue;
    const bool is_answer = engineCatalogue(reader.language).contains("answer-" + said);
    words.seen.emplace_back(std::move(what),
                            is_answer ? say({"answer-" + said, {}}, reader) : asTyped(said, locale));
  }
  return words;
}

Expected<std::string> answerAsk(std::string_view ask_code, std::string_view answer, const Sealer& sealer,
                                const Moment& now) {
  Expected<Asked> asked = readAsk(ask_code);
  if (!asked) return std::unexpected(std::move(asked.error()));
  if (!isAnswer(answer)) {
    return fail(ErrorKind::InvalidInput, "answer-unknown",
                {{"answer", excerpt(answer)}, {"step", asked->step}});
  }
  if (sealer.key.id() == asked->by) return fail(ErrorKind::InvalidInput, "second-person-is-the-first");
  if (sealer.installation == asked->device) return fail(ErrorKind::InvalidInput, "confirmation-same-phone");
  if (!contains(asked->roles, sealer.role)) {
    return fail(ErrorKind::InvalidInput, "role-may-not", {{"role", sealer.role}, {"step", asked->step}});
  }
  const Confirmed confirmed{.asked = *std::move(asked),
                            .answer = std::string(answer),
                            .key = sealer.key.id(),
                            .role = sealer.role,
                            .device = sealer.installation,
                            .utc_ms = now.utc_ms};
  const Expected<records::Sealed> sealed =
      records::readSealed(records::seal(payloadOf(confirmed), records::kConfirmationType, sealer.key));
  if (!sealed) return std::unexpected(sealed.error());
  // The other phone has the question: only its hash goes back.
  const std::string of = digestOf(records::hashName(canonical(jsonOf(confirmed.asked))));
  std::string bytes = canonical(jsonObject({{"format", jsonString(std::string(kAnswerFormat))},
                                            {"of", jsonString(of)},
                                            {"answer", jsonString(confirmed.answer)},
                                            {"role", jsonString(confirmed.role)},
                                            {"device", jsonString(confirmed.device)},
                                            {"utc_ms", jsonInteger(confirmed.utc_ms)}}));
  bytes += records::fromBase64Url(confirmed.key).value_or("");
  bytes += records::textOf(sealed->seals.front().signature);
  return codeFrom(kAnswerPrefix, bytes);
}

Expected<procedures::Event> eventOfAnswer(std::string_view ask_code, std::string_view answer_code) {
  Expected<Asked> asked = readAsk(ask_code);
  if (!asked) return std::unexpected(std::move(asked.error()));
  const Expected<std::string> bytes = bytesOfCode(answer_code, kAnswerPrefix, "answer-code-malformed");
  if (!bytes) return std::unexpected(bytes.error());
  if (bytes->size() <= kKeyBytes + kSignatureBytes) {
    return fail(ErrorKind::InvalidInput, "answer-code-malformed");
  }
  const std::size_t json_bytes = bytes->size() - kKeyBytes - kSignatureBytes;
  const Expected<JsonDocument> document =
      records::readCanonicalJson(bytes->substr(0, json_bytes), kMostCodeBytes);
  if (!document) return std::unexpected(document.error());
  const JsonNode root(*document);
  CodeReader reader;
  if (!reader.object(root, {"format", "of", "answer", "role", "device", "utc_ms"}))
    reader.keep(root.wrongKind("an object"));
  reader.format(root, kAnswerFormat);
  const std::string of = reader.text(root, "of", isDigest, "32 bytes in base64url");
  Confirmed confirmed;
  reader.answer(root, confirmed);
  if (reader.error()) return std::unexpected(*reader.error());
  if (of != digestOf(records::hashName(canonical(jsonOf(*asked))))) {
    return fail(ErrorKind::InvalidInput, "confirmation-of-another-ask");
  }
  confirmed.asked = *std::move(asked);
  confirmed.key = records::base64Url(records::bytesOf(*bytes).subspan(json_bytes, kKeyBytes));
  std::array<std::uint8_t, kSignatureBytes> signature{};
  std::ranges::copy(records::bytesOf(*bytes).last(kSignatureBytes), signature.begin());
  return procedures::Event{.type = procedures::EventType::Answer,
                           .who = confirmed.key,
                           .role = confirmed.role,
                           .device = confirmed.device,
                           .about = confirmed.asked.step,
                           .answer = confirmed.answer,
                           .confirmation = records::sealedOf(payloadOf(confirmed), records::kConfirmationType,
                                                             confirmed.key, signature)};
}

Expected<Confirmed> readConfirmation(std::string_view text) {
  const Expected<records::Sealed> sealed = records::readSealed(text);
  if (!sealed) return std::unexpected(sealed.error());
  if (sealed->type != records::kConfirmationType || sealed->seals.size() != 1) {
    return fail(ErrorKind::InvalidInput, "seal-header-unexpected");
  }
  const Expected<JsonDocument> document = records::readCanonicalJson(sealed->payload, 2 * kMostCodeBytes);
  if (!document) return std::unexpected(document.error());
  const JsonNode root(*document);
  CodeReader reader;
  if (!reader.object(root, {"format", "asked", "answer", "role", "device", "utc_ms"}))
    reader.keep(root.wrongKind("an object"));
  reader.format(root, kConfirmationFormat);
  Confirmed confirmed{.key = sealed->seals.front().key};
  confirmed.asked = reader.required(root, "asked", [&](const JsonNode& node) { return reader.asked(node); });
  reader.answer(root, confirmed);
  if (reader.error()) return std::unexpected(*reader.error());
  return confirmed;
}

bool confirmationHolds(std::string_view text, const records::SignersList& signers) {
  const Expected<records::Sealed> sealed = records::readSealed(text);
  if (!sealed || sealed->type != records::kConfirmationType || sealed->seals.size() != 1) return false;
  const records::Signer* const signer = signerOf(signers, sealed->seals.front().key);
  return signer != nullptr && records::sealHolds(sealed->seals.front(), signer->key);
}

bool confirmationProves(const RecordedJob& job, const RecordedTry& made,
                        const records::SignersList& signers) {
  const Expected<Confirmed> read = readConfirmation(made.confirmation);
  return read && read->asked.job == job.job && read->asked.unit == job.unit &&
         read->asked.procedure == job.procedure_hash && read->asked.step == made.about &&
         read->answer == made.answer && read->key == made.by.key && read->role == made.by.role &&
         read->device == made.by.device && listsFor(signers, read->key, read->role) &&
         confirmationHolds(made.confirmation, signers);
}

Expected<void> checkConfirmation(const store::Store& store, const OpenJob& job,
                                 const procedures::Event& event, const Moment& now) {
  const Expected<Confirmed> confirmed = readConfirmation(event.confirmation);
  if (!confirmed) return std::unexpected(confirmed.error());
  const Asked& asked = confirmed->asked;
  const auto refuse = [&](const char* code) {
    return fail(ErrorKind::InvalidInput, code, {{"step", event.about}});
  };
  if (event.type != procedures::EventType::Answer || confirmed->key != event.who ||
      confirmed->role != event.role || confirmed->device != event.device ||
      confirmed->answer != event.answer || asked.step != event.about) {
    return refuse("confirmation-not-of-author");
  }
  for (const procedures::Event& before : job.journal) {
    if (before.confirmation.empty()) continue;
    const Expected<Confirmed> used = readConfirmation(before.confirmation);
    if (used && used->asked.nonce == asked.nonce) return refuse("confirmation-used");
  }
  const procedures::Step* const step = awaitedOf(job);
  if (step == nullptr || asked.step != step->id || asked.job != job.job.id || asked.unit != job.job.unit ||
      asked.procedure != job.job.procedure || asked.text != textFor(job, *step) ||
      asked.by != job.state.person || asked.journal != journalHead(job.journal)) {
    return refuse("confirmation-of-another-ask");
  }
  const std::int64_t age_ms = now.at_ms - asked.at_ms;
  if (now.boot != job.state.boot || age_ms < 0 || age_ms > kAskHolds_ms)
    return refuse("confirmation-too-late");
  if (confirmed->device == job.state.device || confirmed->device == asked.device) {
    return refuse("confirmation-same-phone");
  }
  const Expected<records::SignersVerdict> signers = signersOf(store);
  if (!signers) return std::unexpected(signers.error());
  if (!confirmationHolds(event.confirmation, *signers->list)) return refuse("confirmation-altered");
  return {};
}

}  // namespace hingepin::session
