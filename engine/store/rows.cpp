// SPDX-License-Identifier: Apache-2.0
#include "engine/store/rows.h"

#include <algorithm>
#include <array>
#include <utility>

#include "engine/base/strict_json.h"
#include "engine/base/text.h"
#include "engine/records/canonical_json.h"
#include "engine/records/encoding.h"
#include "engine/records/seal.h"

namespace hingepin::store {
namespace {

constexpr std::array<std::pair<WaitingKind, std::string_view>, 4> kWaitingKinds{{
    {WaitingKind::Statement, "statement"},
    {WaitingKind::Signers, "signers"},
    {WaitingKind::Blob, "blob"},
    {WaitingKind::Personal, "personal"},
}};

}  // namespace

std::string_view textOf(WaitingKind kind) {
  return std::ranges::find(kWaitingKinds, kind, &std::pair<WaitingKind, std::string_view>::first)->second;
}

std::optional<WaitingKind> waitingKindOf(std::string_view text) {
  const auto* found =
      std::ranges::find(kWaitingKinds, text, &std::pair<WaitingKind, std::string_view>::second);
  if (found == kWaitingKinds.end()) return std::nullopt;
  return found->first;
}

Expected<std::string> textOfRestrictions(const std::vector<std::string>& restrictions) {
  std::vector<JsonValue> items;
  for (const std::string& restriction : restrictions) items.push_back(records::jsonString(restriction));
  return records::canonicalJson(records::jsonArray(std::move(items)));
}

Expected<std::vector<std::string>> restrictionsOf(std::string text) {
  std::vector<std::string> restrictions;
  if (text == "[]") return restrictions;  // nearly always
  const Expected<JsonDocument> read = readJson(std::move(text), "");
  if (!read) return std::unexpected(read.error());
  const auto elements = JsonNode(*read).elements();
  if (!elements) return std::unexpected(elements.error());
  for (const JsonNode& element : *elements) {
    auto restriction = element.string();
    if (!restriction) return std::unexpected(restriction.error());
    restrictions.push_back(*std::move(restriction));
  }
  return restrictions;
}

ReadStatement outlineOf(const records::Statement& statement) {
  const records::Envelope& envelope = records::envelopeOf(statement);
  return {.kind = std::holds_alternative<records::Record>(statement) ? "record" : "signature",
          .place = envelope.place,
          .sealed_utc_ms = envelope.sealed_utc_ms};
}

Expected<ReadStatement> readStatement(const StoredStatement& statement) {
  const auto sealed = records::readSealed(statement.text);
  if (!sealed) return std::unexpected(sealed.error());
  if (records::hashName(sealed->payload) != statement.name) {
    return fail(ErrorKind::InvalidInput, "statement-name-differs", {{"name", excerpt(statement.name)}});
  }
  auto read = records::readPayload(sealed->payload, sealed->type);
  if (!read) return std::unexpected(read.error());
  ReadStatement result = outlineOf(*read);
  if (auto* record = std::get_if<records::Record>(&*read)) result.content = std::move(record->content);
  return result;
}

std::unexpected<Error> notThere(const char* code, const char* what, std::string_view name) {
  return fail(ErrorKind::NotFound, code, {{what, std::string(name)}});
}

Expected<void> dropDue(Database& database, std::string_view unit) {
  return done(run(database, "DELETE FROM scale_due WHERE unit = ?", unit));
}

Expected<JobHere> findJob(Database& database, std::string_view id) {
  const auto found = firstRow(
      database, [](const Query& row) { return JobHere{row.integer(0), row.text(1) == "running"}; },
      "SELECT number, phase FROM job WHERE id = ?", id);
  if (!found) return std::unexpected(found.error());
  if (!*found) return notThere("job-not-in-store", "job", id);
  return **found;
}

Expected<bool> insertStatement(Database& database, const StoredStatement& statement,
                               const ReadStatement& read) {
  std::optional<std::int64_t> job;
  if (!statement.job.empty()) {
    const auto found = findJob(database, statement.job);
    if (!found) return std::unexpected(found.error());
    job = found->number;
  }
  const auto written =
      run(database,
          "INSERT INTO statement (name, kind, key, epoch, sequence, sealed_utc_ms, job, unit, text) "
          "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT (name) DO NOTHING",
          statement.name, read.kind, read.place.key, read.place.epoch, read.place.sequence,
          read.sealed_utc_ms, job, TextOrNull{statement.unit}, statement.text);
  if (!written) return std::unexpected(written.error());
  if (*written == 1 && !statement.unit.empty()) {
    if (auto dropped = dropDue(database, statement.unit); !dropped)
      return std::unexpected(std::move(dropped.error()));
  }
  return *written == 1;
}

Waiting waitingOf(const Query& row) {
  return {waitingKindOf(row.text(0)).value_or(WaitingKind::Statement), row.text(1), row.integer(2)};
}

records::Head headOf(const Query& row) {
  return {.key = row.text(0), .epoch = row.text(1), .sequence = row.integer(2), .name = row.text(3)};
}

Personal personalOf(const Query& row) {
  Personal personal{.name = row.text(0), .erased = row.isNull(1)};
  if (personal.erased) return personal;
  std::ranges::copy(records::bytesOf(row.text(1)).first(personal.salt.size()), personal.salt.begin());
  personal.bytes = row.text(2);
  return personal;
}

}  // namespace hingepin::store
