// SPDX-License-Identifier: Apache-2.0
#include "engine/session/record_state.h"

#include <algorithm>
#include <utility>

#include "engine/records/verify.h"
#include "engine/session/catalogue.h"
#include "engine/session/job_record.h"
#include "engine/session/people.h"
#include "engine/session/yard.h"
#include "engine/sync/exchange.h"

namespace hingepin::session {
namespace {

/// Why a record is not believed; nothing where it is. All of the store is looked at only where the key was
/// revoked, since only then its chain decides.
Expected<std::optional<Message>> faultOf(const store::Store& store, std::string_view name,
                                         const std::string& text) {
  const Expected<records::SignersVerdict> signers = signersOf(store);
  if (!signers) return signers.error().message;
  const records::Judgement judged = records::judge(text, records::ListedKeys(signers->list));
  if (judged.fault != nullptr) {
    Message fault{judged.fault, {{"record", std::string(name)}, {"key", judged.key}}};
    if (judged.statement) fault.values.emplace_back("role", records::envelopeOf(*judged.statement).role);
    return fault;
  }
  if (std::ranges::find(signers->list->revocations, judged.key, &records::Revocation::key) ==
      signers->list->revocations.end()) {
    return std::nullopt;
  }
  const Expected<records::Evidence> evidence = store.evidence();
  if (!evidence) return std::unexpected(evidence.error());
  const records::Verification verified = records::verify(*evidence);
  for (const records::Finding& finding : verified.findings) {
    const bool waits = finding.message.code == "record-after-revocation" ||
                       finding.message.code == "record-revocation-unproved";
    if (waits && finding.subject == name) return finding.message;
  }
  return std::nullopt;
}

}  // namespace

Expected<std::vector<DocumentRow>> recordState(const store::Store& store, std::string_view record,
                                               std::string_view installation,
                                               const std::optional<Error>& last, const Reader& reader) {
  const auto words = [&](std::string code, std::vector<std::pair<std::string, MessageValue>> values = {}) {
    return say({std::move(code), std::move(values)}, reader);
  };
  const Expected<records::Record> read = recordOf(store, record);
  if (!read) return std::unexpected(read.error());
  const Expected<std::optional<store::StoredStatement>> stored = store.statement(record);
  if (!stored) return std::unexpected(stored.error());
  const Expected<Names> names = namesOf(store);
  if (!names) return std::unexpected(names.error());
  const std::string& maker = read->envelope.place.installation;
  std::vector<DocumentRow> rows = {
      {.label = words("standing-origin"),
       .value = maker == installation ? words("standing-made-here")
                                      : words("standing-received", {{"phone", nameOfKey(*names, maker)}})}};

  const auto waits = sync::whatWaits(store, last);
  if (!waits) return std::unexpected(waits.error());
  const auto waiting = std::ranges::find_if(*waits, [&](const sync::Waits& each) {
    return each.what.kind == store::WaitingKind::Statement && each.what.name == record;
  });
  if (waiting != waits->end()) {
    rows.push_back({.label = words("standing-exchange"),
                    .value = words("standing-waits"),
                    .note = say(waiting->why, reader),
                    .verdict = "warning"});
  } else if (maker == installation) {
    rows.push_back(
        {.label = words("standing-exchange"), .value = words("standing-sent"), .verdict = "passed"});
  }

  const Expected<std::optional<Message>> fault = faultOf(store, record, (*stored)->text);
  if (!fault) return std::unexpected(fault.error());
  rows.push_back(*fault ? DocumentRow{.label = words("standing-seal"),
                                      .value = words("standing-not-believed"),
                                      .note = say(**fault, reader),
                                      .verdict = "failed"}
                        : DocumentRow{.label = words("standing-seal"),
                                      .value = words("standing-verified"),
                                      .verdict = "passed"});
  return rows;
}

}  // namespace hingepin::session
