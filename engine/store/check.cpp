// SPDX-License-Identifier: Apache-2.0
#include <utility>

#include "engine/records/encoding.h"
#include "engine/store/database.h"
#include "engine/store/rows.h"
#include "engine/store/store.h"

namespace hingepin::store {
namespace {

using Findings = std::vector<StoreFinding>;

/// Adds a finding for each row that is `wrong`. The row's first column names it.
Expected<void> checkRows(Database& database, Findings& findings, const char* code,
                         bool (*wrong)(const Query&), std::string_view sql) {
  Query query(database, sql);
  while (true) {
    const Expected<bool> row = query.step();
    if (!row) return std::unexpected(row.error());
    if (!*row) return {};
    if (wrong(std::as_const(query))) findings.push_back({{code, {{"name", query.text(0)}}}});
  }
}

bool always(const Query&) { return true; }

bool notOk(const Query& row) { return row.text(0) != "ok"; }

bool blobIsWrong(const Query& row) { return records::hashName(row.text(1)) != row.text(0); }

bool statementIsWrong(const Query& row) {
  const auto read = readStatement({.name = row.text(0), .text = row.text(1)});
  return !read || read->kind != row.text(2) || read->place.key != row.text(3) ||
         read->place.epoch != row.text(4) || read->place.sequence != row.integer(5) ||
         read->sealed_utc_ms != row.integer(6);
}

bool signersAreWrong(const Query& row) {
  const auto read = records::readSigners(row.text(1));
  return !read || read->name != row.text(0);
}

bool personalIsWrong(const Query& row) {
  const Personal personal = personalOf(row);
  return records::personalName(personal.salt, personal.bytes) != personal.name;
}

bool restrictionsAreWrong(const Query& row) { return !restrictionsOf(row.text(1)); }

}  // namespace

Expected<std::vector<StoreFinding>> Store::check() const {
  Database& database = *database_;
  auto transaction = Transaction::beginReading(database);
  if (!transaction) return std::unexpected(transaction.error());
  Findings findings;
  const struct {
    const char* code;
    bool (*wrong)(const Query&);
    std::string_view sql;
  } checks[] = {
      {"store-integrity", notOk, "PRAGMA integrity_check"},
      {"store-reference-dangling", always, "PRAGMA foreign_key_check"},
      {"store-blob-altered", blobIsWrong, "SELECT hash, bytes FROM blob"},
      {"store-statement-altered", statementIsWrong,
       "SELECT name, text, kind, key, epoch, sequence, sealed_utc_ms FROM statement"},
      {"store-signers-altered", signersAreWrong, "SELECT name, text FROM signers_list"},
      {"store-personal-altered", personalIsWrong,
       "SELECT name, salt, bytes FROM personal WHERE bytes IS NOT NULL"},
      {"store-restrictions-altered", restrictionsAreWrong, "SELECT unit, restrictions FROM pair"},
      {"store-journal-gap", always,
       "SELECT id FROM job WHERE (SELECT count(*) FROM journal WHERE job = number) <> "
       "(SELECT coalesce(max(sequence), 0) + 1 FROM journal WHERE job = number)"},
      {"store-job-record-differs", always,
       "SELECT id FROM job WHERE record IS NOT NULL AND NOT EXISTS "
       "(SELECT 1 FROM statement WHERE name = record AND statement.job = job.number AND kind = 'record')"},
      {"store-waiting-for-nothing", always,
       "SELECT name FROM waiting WHERE NOT CASE kind WHEN 'statement' THEN name IN (SELECT name FROM "
       "statement) "
       "WHEN 'signers' THEN name IN (SELECT name FROM signers_list) WHEN 'blob' THEN name IN (SELECT hash "
       "FROM blob) "
       "ELSE name IN (SELECT name FROM personal) END"},
  };
  for (const auto& [code, wrong, sql] : checks) {
    if (auto done = checkRows(database, findings, code, wrong, sql); !done)
      return std::unexpected(done.error());
  }
  return findings;
}

}  // namespace hingepin::store
