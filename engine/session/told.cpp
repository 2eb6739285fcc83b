// SPDX-License-Identifier: Apache-2.0
#include "engine/session/told.h"

#include <algorithm>
#include <array>
#include <utility>
#include <variant>

#include "engine/records/seal.h"
#include "engine/session/job_record.h"

namespace hingepin::session {
namespace {

constexpr std::array kConditions = {"oil-temperature", "pitch", "operating-hours", "fuel-level",
                                    "engine-speed"};

}  // namespace

Expected<Told> tell(const store::Store& store, std::string_view name, ProcedureShelf& shelf) {
  Expected<records::Record> record = recordOf(store, name);
  if (!record) return std::unexpected(std::move(record.error()));
  Told told{.name = std::string(name), .record = *std::move(record)};
  std::optional<RecordedJob> job = readRecordedJob(told.record.content);
  if (!job) {
    return fail(ErrorKind::InvalidInput, "record-not-of-job", {{"record", std::string(name)}});
  }
  told.job = *std::move(job);
  const Expected<const ProcedureText*> text =
      shelf.find(told.job.procedure_hash, told.job.words, told.job.language);
  if (!text) return std::unexpected(text.error());
  told.text = *text;
  told.state.start.variant = told.job.variant;
  told.state.start.entries.insert(told.job.entries.begin(), told.job.entries.end());
  Expected<Names> names = namesOf(store);
  if (!names) return std::unexpected(std::move(names.error()));
  told.names = *std::move(names);
  return told;
}

Expected<std::vector<Beside>> besideRecord(const store::Store& store, const Told& told) {
  std::vector<Beside> found;
  const Expected<std::vector<std::string>> names = store.statementNames(told.job.unit);
  if (!names) return std::unexpected(names.error());
  for (const std::string& name : *names) {
    const Expected<std::optional<store::StoredStatement>> stored = store.statement(name);
    if (!stored) return std::unexpected(stored.error());
    const Expected<records::Sealed> read = records::readSealed((*stored)->text);
    if (!read || read->payload.find(told.name) == std::string::npos) continue;
    const Expected<records::Statement> statement = records::readPayload(read->payload, read->type);
    if (!statement) continue;
    const records::Envelope& envelope = records::envelopeOf(*statement);
    Beside beside{
        .name = name, .key = envelope.place.key, .role = envelope.role, .utc_ms = envelope.sealed_utc_ms};
    if (const auto* const signature = std::get_if<records::Signature>(&*statement)) {
      if (signature->record == told.name) found.push_back(std::move(beside));
    } else if (const auto& record = std::get<records::Record>(*statement); record.amends == told.name) {
      beside.correction = textAt(record.content, {"correction"});
      found.push_back(std::move(beside));
    }
  }
  return found;
}

bool isCondition(const RecordedTry& each) {
  return std::ranges::find(kConditions, each.quantity) != kConditions.end();
}
bool isAsFound(std::string_view step) { return step.starts_with("found-"); }
bool isStop(const RecordedTry& each) {
  const bool named = each.about.ends_with("-set") || each.about.ends_with("-reached");
  return each.quantity == "edge-height" || (each.quantity == "length" && named);
}

}  // namespace hingepin::session
