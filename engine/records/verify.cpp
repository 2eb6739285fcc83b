// SPDX-License-Identifier: Apache-2.0
#include "engine/records/verify.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <set>
#include <unordered_map>
#include <unordered_set>
#include <utility>

#include "engine/records/encoding.h"

namespace hingepin::records {
namespace {

class Verifier {
 public:
  explicit Verifier(const Evidence& evidence) : evidence_(evidence) {}

  Verification run() {
    result_.signers = newestSigners(evidence_.signers_lists, evidence_.accepted_roots);
    keys_ = ListedKeys(result_.signers.list);
    // A text may be kept under several names: which of them comes first must not matter.
    std::unordered_map<std::string_view, std::set<std::string>> names;
    for (const StoredText& stored : evidence_.statements) names[stored.text].insert(stored.name.value_or(""));
    for (const StoredText& stored : evidence_.statements) {
      if (auto found = names.extract(stored.text)) add(stored.text, found.mapped());
    }
    checkAllChains();
    if (result_.signers.list) {
      for (const Revocation& revocation : result_.signers.list->revocations) quarantine(revocation);
    }
    checkSignatures();
    checkAmendments();
    checkPersonal();
    return std::move(result_);
  }

 private:
  void say(const char* code, const std::string& subject,
           std::vector<std::pair<std::string, MessageValue>> values = {}, std::optional<Error> cause = {}) {
    values.emplace(values.begin(), "record", subject);
    result_.findings.push_back(
        {.message = {code, std::move(values)}, .subject = subject, .cause = std::move(cause)});
  }

  // Reads one statement, finds its standing by itself, and says why it is refused.
  void add(std::string_view text, const std::set<std::string>& stored_names) {
    Judgement judged = judge(text, keys_);
    StatementVerdict verdict{.name = judged.name};
    const bool rightly_named = stored_names.contains("") || stored_names.contains(verdict.name);
    if (!rightly_named) verdict.kept_as = *stored_names.begin();
    const bool readable = !judged.key.empty();
    if (readable && !rightly_named) {
      judged.fault = "record-altered";
      judged.cause = {};
    }
    if (readable && rightly_named) {
      for (const std::string& name : stored_names) {
        if (!name.empty() && name != verdict.name) say("record-altered", name, {{"key", judged.key}});
      }
    }
    // A key can seal the same payload in more than one way.
    if (rightly_named && judged.statement) {
      if (!by_name_.emplace(verdict.name, result_.statements.size()).second) return;
      verdict.statement = std::move(judged.statement);
    }
    if (judged.fault == nullptr) {
      verdict.standing = Standing::Trusted;
    } else {
      std::vector<std::pair<std::string, MessageValue>> values;
      if (readable) values.emplace_back("key", judged.key);
      if (verdict.statement) values.emplace_back("role", envelopeOf(*verdict.statement).role);
      say(judged.fault, rightly_named ? verdict.name : verdict.kept_as, std::move(values),
          std::move(judged.cause));
    }
    result_.statements.push_back(std::move(verdict));
  }

  void checkAllChains() {
    std::vector<Link> links;
    for (const auto& verdict : result_.statements) {
      if (verdict.statement) links.push_back({verdict.name, envelopeOf(*verdict.statement).place});
    }
    std::ranges::move(checkChains(links, evidence_.known_heads), std::back_inserter(result_.findings));
  }

  const ChainPlace* placeOf(const std::string& name) const {
    const auto found = by_name_.find(name);
    return found == by_name_.end() ? nullptr
                                   : &envelopeOf(*result_.statements[found->second].statement).place;
  }

  // Trust runs backwards from the last trusted links; all else of the key waits.
  void quarantine(const Revocation& revocation) {
    std::unordered_set<std::string> trusted;
    struct Walk {
      std::int64_t until;    ///< sequence of the last trusted link
      std::int64_t stopped;  ///< lowest sequence that could be reached, `until` + 1 for none
    };
    std::map<std::string, Walk> walks;  // by epoch
    for (const TrustedUntil& until : revocation.trusted) {
      std::int64_t sequence = until.sequence;
      std::optional<std::string> name = until.name;
      while (name) {
        const ChainPlace* const place = placeOf(*name);
        if (place == nullptr || place->epoch != until.epoch || place->sequence != sequence) {
          break;
        }
        trusted.insert(*name);
        name = place->previous;
        --sequence;
      }
      walks.emplace(until.epoch, Walk{until.sequence, sequence + 1});
    }
    for (StatementVerdict& verdict : result_.statements) {
      if (verdict.standing != Standing::Trusted || trusted.contains(verdict.name)) continue;
      const ChainPlace& place = envelopeOf(*verdict.statement).place;
      if (place.key != revocation.key) continue;
      verdict.standing = Standing::Quarantined;
      const auto walk = walks.find(place.epoch);
      const bool undecided =
          walk != walks.end() && place.sequence < walk->second.stopped && place.sequence < walk->second.until;
      say(undecided ? "record-revocation-unproved" : "record-after-revocation", verdict.name,
          {{"key", place.key}, {"sequence", countOf(place.sequence)}});
    }
  }

  void checkSignatures() {
    std::unordered_map<std::string, std::vector<const StatementVerdict*>> on_record;
    for (const auto& verdict : result_.statements) {
      if (!verdict.statement) continue;
      if (std::holds_alternative<Record>(*verdict.statement)) {
        auto& all = on_record[verdict.name];
        all.insert(all.begin(), &verdict);
      } else {
        on_record[std::get<Signature>(*verdict.statement).record].push_back(&verdict);
      }
    }
    for (const auto& verdict : result_.statements) {
      if (!verdict.statement || !std::holds_alternative<Signature>(*verdict.statement)) continue;
      const Signature& signature = std::get<Signature>(*verdict.statement);
      const auto& all = on_record[signature.record];
      if (std::holds_alternative<Signature>(*all.front()->statement)) {
        say("record-signed-not-here", verdict.name, {{"signed", signature.record}});
      }
      bool same_key = false;
      bool same_phone = false;
      for (const StatementVerdict* other : all) {
        if (other == &verdict) break;  // what stands before: each pair is said once
        const ChainPlace& place = envelopeOf(*other->statement).place;
        same_key |= place.key == signature.envelope.place.key;
        same_phone |= place.key != signature.envelope.place.key &&
                      place.installation == signature.envelope.place.installation;
      }
      if (same_key) say("record-same-signer", verdict.name, {{"signed", signature.record}});
      if (same_phone) say("record-same-phone", verdict.name, {{"signed", signature.record}});
    }
  }

  void checkAmendments() {
    for (const auto& verdict : result_.statements) {
      if (!verdict.statement || !std::holds_alternative<Record>(*verdict.statement)) continue;
      const std::optional<std::string>& amends = std::get<Record>(*verdict.statement).amends;
      if (!amends) continue;
      const auto amended = by_name_.find(*amends);
      const bool here = amended != by_name_.end() &&
                        std::holds_alternative<Record>(*result_.statements[amended->second].statement);
      if (!here) {
        say("record-amended-not-here", verdict.name, {{"amended", *amends}});
      } else if (verdict.standing == Standing::Trusted) {
        say("record-amended", *amends, {{"by", verdict.name}});
      }
    }
  }

  void checkPersonal() {
    std::unordered_map<std::string_view, bool> intact;  // of those that are here; one intact copy is enough
    for (const StoredPersonal& object : evidence_.personal) {
      intact[object.name] |= personalName(object.salt, object.bytes) == object.name;
    }
    const std::unordered_set<std::string_view> erased(evidence_.erased.begin(), evidence_.erased.end());
    for (const auto& verdict : result_.statements) {
      if (!verdict.statement || !std::holds_alternative<Record>(*verdict.statement)) continue;
      for (const auto& [label, name] : std::get<Record>(*verdict.statement).personal) {
        const auto object = intact.find(name);
        const char* code = nullptr;
        if (object == intact.end()) {
          code = erased.contains(name) ? "personal-erased" : "personal-not-arrived";
        } else if (!object->second) {
          code = "personal-altered";
        }
        if (code != nullptr) say(code, verdict.name, {{"label", label}, {"object", name}});
      }
    }
  }

  const Evidence& evidence_;
  Verification result_;
  ListedKeys keys_{std::nullopt};                         // of result_.signers
  std::unordered_map<std::string, std::size_t> by_name_;  // statements whose seal holds
};

}  // namespace

ListedKeys::ListedKeys(const std::optional<SignersList>& list) {
  if (!list) return;
  for (const Signer& signer : list->signers) {
    Listed& listed = keys_[thumbprint(signer.key)];
    listed.key = signer.key;
    listed.roles.push_back(signer);
  }
}

const PublicKey* ListedKeys::find(const std::string& key) const {
  const auto listed = keys_.find(key);
  return listed == keys_.end() ? nullptr : &listed->second.key;
}

const char* ListedKeys::faultOf(const std::string& key, std::string_view role,
                                std::int64_t sealed_utc_ms) const {
  const auto listed = keys_.find(key);
  if (listed == keys_.end()) return "record-unknown-signer";
  const char* fault = "record-wrong-role";
  for (const Signer& signer : listed->second.roles) {
    if (signer.role != role) continue;
    if (sealed_utc_ms >= signer.valid_from_utc_ms &&
        (!signer.valid_until_utc_ms || sealed_utc_ms < *signer.valid_until_utc_ms)) {
      return nullptr;
    }
    fault = "record-outside-validity";
  }
  return fault;
}

Judgement judge(std::string_view text, const ListedKeys& keys) {
  const Expected<Sealed> sealed = readSealed(text);
  const bool readable =
      sealed && (sealed->type == kRecordType || sealed->type == kSignatureType) && sealed->seals.size() == 1;
  Judgement judged{.name = hashName(readable ? sealed->payload : text)};
  if (!readable) {
    judged.fault = "record-malformed";
    judged.cause = sealed ? fail(ErrorKind::InvalidInput, "seal-header-unexpected").error() : sealed.error();
    return judged;
  }
  const Seal& seal = sealed->seals.front();
  judged.key = seal.key;
  const PublicKey* const key = keys.find(seal.key);
  if (key != nullptr && !sealHolds(seal, *key)) {
    judged.fault = "record-altered";
    return judged;
  }
  Expected<Statement> statement = readPayload(sealed->payload, sealed->type);
  if (!statement) {
    judged.fault = "record-malformed";
    judged.cause = statement.error();
    return judged;
  }
  const Envelope& envelope = envelopeOf(*statement);
  if (envelope.place.key != seal.key) {
    judged.fault = "record-altered";
    return judged;
  }
  judged.fault = keys.faultOf(seal.key, envelope.role, envelope.sealed_utc_ms);
  if (key != nullptr) judged.statement = *std::move(statement);
  return judged;
}

Verification verify(const Evidence& evidence) { return Verifier(evidence).run(); }

}  // namespace hingepin::records
