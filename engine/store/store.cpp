// SPDX-License-Identifier: Apache-2.0
#include "engine/store/store.h"

#include <sqlite3.h>

#include <algorithm>
#include <array>
#include <set>
#include <utility>

#include "engine/base/text.h"
#include "engine/records/canonical_json.h"
#include "engine/records/encoding.h"
#include "engine/records/seal.h"
#include "engine/store/database.h"
#include "engine/store/rows.h"
#include "engine/store/schema.h"

namespace hingepin::store {
namespace {

std::unexpected<Error> refusedValue(std::string reason) {
  return fail(ErrorKind::InvalidInput, "store-value-refused", {{"reason", std::move(reason)}});
}

/// What the tables can't check themselves.
Expected<void> checkText(const char* what, std::string_view text) {
  if (text.size() > kMostTextBytes) return refusedValue(std::string(what) + " too long");
  if (firstBadUtf8(text) != std::string_view::npos) return refusedValue(std::string(what) + " not UTF-8");
  return {};
}

Expected<void> checkTexts(std::initializer_list<std::pair<const char*, std::string_view>> texts) {
  for (const auto& [what, text] : texts) {
    if (auto checked = checkText(what, text); !checked) return checked;
  }
  return {};
}

Expected<bool> isThere(Database& database, std::string_view sql, std::string_view id) {
  const auto found = firstRow(database, [](const Query&) { return true; }, sql, id);
  if (!found) return std::unexpected(found.error());
  return found->has_value();
}

Expected<void> requireUnit(Database& database, std::string_view id) {
  const auto there = isThere(database, "SELECT 1 FROM unit WHERE id = ?", id);
  if (!there) return std::unexpected(there.error());
  if (!*there) return notThere("unit-not-in-store", "unit", id);
  return {};
}

Expected<void> requireAttachment(Database& database, std::string_view id) {
  const auto there = isThere(database, "SELECT 1 FROM attachment WHERE id = ?", id);
  if (!there) return std::unexpected(there.error());
  if (!*there) return notThere("attachment-not-in-store", "attachment", id);
  return {};
}

Expected<void> requireBlob(Database& database, std::string_view hash) {
  const auto there = isThere(database, "SELECT 1 FROM blob WHERE hash = ?", hash);
  if (!there) return std::unexpected(there.error());
  if (!*there) return notThere("blob-not-in-store", "hash", hash);
  return {};
}

constexpr std::string_view kPairColumns =
    "SELECT unit, attachment, calibration, record, due_utc_ms, restrictions FROM pair ";

template <class... Values>
Expected<std::vector<Pair>> readPairs(Database& database, std::string_view sql, const Values&... values) {
  Query query(database, sql, values...);
  std::vector<Pair> pairs;
  while (true) {
    const Expected<bool> row = query.step();
    if (!row) return std::unexpected(row.error());
    if (!*row) return pairs;
    auto restrictions = restrictionsOf(query.text(5));
    // A restriction that can't be read must not look like none.
    if (!restrictions) {
      return fail(ErrorKind::InvalidInput, "store-damaged", {{"reason", "restrictions of " + query.text(0)}},
                  {.file = database.path()});
    }
    pairs.push_back({.unit = query.text(0),
                     .attachment = query.text(1),
                     .calibration = query.text(2),
                     .record = query.text(3),
                     .due_utc_ms = query.integerOrNothing(4),
                     .restrictions = *std::move(restrictions)});
  }
}

Job jobOf(const Query& row) {
  return {.id = row.text(0),
          .unit = row.text(1),
          .attachment = row.text(2),
          .procedure_id = row.text(3),
          .procedure = row.text(4),
          .words = row.text(5),
          .language = row.text(6),
          .begun_utc_ms = row.integer(7),
          .phase = row.text(8),
          .record = row.text(9)};
}

Expected<void> writeUnit(Database& database, const Unit& unit) {
  if (auto checked = checkTexts({{"unit", unit.id}, {"profile", unit.profile}}); !checked) return checked;
  if (auto dropped = dropDue(database, unit.id); !dropped) return dropped;
  return done(run(database,
                  "INSERT INTO unit (id, profile) VALUES (?, ?) "
                  "ON CONFLICT DO UPDATE SET profile = excluded.profile",
                  unit.id, unit.profile));
}

Expected<void> writePair(Database& database, const Pair& pair) {
  if (auto checked = checkTexts({{"unit", pair.unit}, {"attachment", pair.attachment}}); !checked)
    return checked;
  const Expected<std::string> restrictions = textOfRestrictions(pair.restrictions);
  if (!restrictions) return std::unexpected(restrictions.error());
  if (auto checked = checkText("restrictions", *restrictions); !checked) return checked;
  if (auto there = requireUnit(database, pair.unit); !there) return there;
  if (auto there = requireAttachment(database, pair.attachment); !there) return there;
  if (!pair.calibration.empty()) {
    if (auto there = requireBlob(database, pair.calibration); !there) return there;
  }
  if (auto dropped = dropDue(database, pair.unit); !dropped) return dropped;
  return done(run(database,
                  "INSERT INTO pair (unit, attachment, calibration, record, due_utc_ms, restrictions) "
                  "VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT DO UPDATE SET calibration = excluded.calibration, "
                  "record = excluded.record, due_utc_ms = excluded.due_utc_ms, "
                  "restrictions = excluded.restrictions",
                  pair.unit, pair.attachment, TextOrNull{pair.calibration}, TextOrNull{pair.record},
                  pair.due_utc_ms, *restrictions));
}

Expected<void> queue(Database& database, std::string_view kind, std::string_view name,
                     std::int64_t now_utc_ms) {
  return done(run(database,
                  "INSERT INTO waiting (kind, name, since_utc_ms) VALUES (?, ?, ?) ON CONFLICT DO NOTHING",
                  kind, name, now_utc_ms));
}

void collectHashNames(const JsonValue& value, std::set<std::string>& names) {
  if (value.kind == JsonKind::String && records::isHashName(value.text)) names.insert(value.text);
  for (const JsonValue& item : value.items) collectHashNames(item, names);
}

/// Errors: as Store::putStatement.
Expected<void> writeStatement(Database& database, const StoredStatement& statement, std::int64_t now_utc_ms,
                              bool queued) {
  const auto read = readStatement(statement);
  if (!read) return std::unexpected(read.error());
  if (auto checked = checkText("unit", statement.unit); !checked) return checked;
  const records::ChainPlace& place = read->place;
  if (!statement.job.empty()) {
    const auto other = firstRow(
        database, [](const Query& row) { return row.text(0); },
        "SELECT name FROM statement WHERE key = ? AND epoch = ? AND sequence = ? AND name <> ?", place.key,
        place.epoch, place.sequence, statement.name);
    if (!other) return std::unexpected(other.error());
    if (*other) {
      return fail(ErrorKind::InvalidInput, "chain-not-continued",
                  {{"name", **other}, {"sequence", Amount{static_cast<double>(place.sequence), "1"}}});
    }
  }
  const auto is_new = insertStatement(database, statement, *read);
  if (!is_new) return std::unexpected(is_new.error());
  if (!*is_new || !queued) return {};
  std::set<std::string> names;
  if (read->content) collectHashNames(*read->content, names);
  for (const std::string& name : names) {
    const auto there = isThere(database, "SELECT 1 FROM blob WHERE hash = ?", name);
    if (!there) return std::unexpected(there.error());
    if (!*there) continue;
    if (auto waits = queue(database, "blob", name, now_utc_ms); !waits) return waits;
  }
  return queue(database, "statement", statement.name, now_utc_ms);
}

Expected<void> writeErased(Database& database, std::string_view name, std::int64_t now_utc_ms, bool queued) {
  const auto erased = run(database,
                          "INSERT INTO personal (name) VALUES (?) ON CONFLICT DO UPDATE SET salt = NULL, "
                          "bytes = NULL WHERE bytes IS NOT NULL",
                          name);
  if (!erased) return std::unexpected(erased.error());
  if (*erased == 0 || !queued) return {};
  // Later than before in any case, so that what is being sent right now does not count for it.
  return done(
      run(database,
          "INSERT INTO waiting (kind, name, since_utc_ms) VALUES ('personal', ?, ?) ON CONFLICT DO UPDATE "
          "SET since_utc_ms = max(since_utc_ms + 1, excluded.since_utc_ms), parcel = NULL",
          name, now_utc_ms));
}

}  // namespace

Store::Store(std::unique_ptr<Database> database) : database_(std::move(database)) {}
Store::~Store() = default;
Store::Store(Store&&) noexcept = default;
Store& Store::operator=(Store&&) noexcept = default;

Expected<Store> Store::open(const std::string& path, const std::string& vfs) {
  auto database = Database::open(path, vfs, migrations());
  if (!database) return std::unexpected(database.error());
  // Of what is in progress all has to be there; the rest is for check().
  const auto gap = firstRow(
      **database, [](const Query& row) { return row.text(0); },
      "SELECT id FROM job WHERE phase = 'running' AND (SELECT count(*) FROM journal WHERE job = number) <> "
      "(SELECT coalesce(max(sequence), 0) + 1 FROM journal WHERE job = number)");
  if (!gap) return std::unexpected(gap.error());
  if (*gap) {
    return fail(ErrorKind::InvalidInput, "store-damaged", {{"reason", "journal of " + **gap}},
                {.file = path});
  }
  return Store(*std::move(database));
}

Batch::Batch(std::unique_ptr<Transaction> transaction) : transaction_(std::move(transaction)) {}
Batch::~Batch() = default;
Batch::Batch(Batch&&) noexcept = default;
Expected<void> Batch::commit() { return transaction_->commit(); }

Expected<Batch> Store::beginBatch() {
  auto begun = Transaction::beginWriting(*database_);
  if (!begun) return std::unexpected(begun.error());
  return Batch(std::make_unique<Transaction>(*std::move(begun)));
}

Expected<void> Store::putUnit(const Unit& unit) {
  auto transaction = Transaction::beginWriting(*database_);
  if (!transaction) return std::unexpected(transaction.error());
  if (auto written = writeUnit(*database_, unit); !written) return written;
  return transaction->commit();
}

Expected<std::optional<Unit>> Store::unit(std::string_view id) const {
  return firstRow(
      *database_, [](const Query& row) { return Unit{row.text(0), row.text(1)}; },
      "SELECT id, profile FROM unit WHERE id = ?", id);
}

Expected<std::vector<Unit>> Store::units() const {
  return allRows(
      *database_, [](const Query& row) { return Unit{row.text(0), row.text(1)}; },
      "SELECT id, profile FROM unit ORDER BY id");
}

Expected<void> Store::putAttachment(const Attachment& attachment) {
  if (auto checked = checkTexts({{"attachment", attachment.id}, {"profile", attachment.profile}}); !checked) {
    return checked;
  }
  return done(run(*database_,
                  "INSERT INTO attachment (id, profile) VALUES (?, ?) "
                  "ON CONFLICT DO UPDATE SET profile = excluded.profile",
                  attachment.id, attachment.profile));
}

Expected<std::optional<Attachment>> Store::attachment(std::string_view id) const {
  return firstRow(
      *database_, [](const Query& row) { return Attachment{row.text(0), row.text(1)}; },
      "SELECT id, profile FROM attachment WHERE id = ?", id);
}

Expected<std::vector<Attachment>> Store::attachments() const {
  return allRows(
      *database_, [](const Query& row) { return Attachment{row.text(0), row.text(1)}; },
      "SELECT id, profile FROM attachment ORDER BY id");
}

Expected<void> Store::putPair(const Pair& pair) {
  auto transaction = Transaction::beginWriting(*database_);
  if (!transaction) return std::unexpected(transaction.error());
  if (auto written = writePair(*database_, pair); !written) return written;
  return transaction->commit();
}

Expected<std::optional<Pair>> Store::pair(std::string_view unit, std::string_view attachment) const {
  static const std::string sql = std::string(kPairColumns) + "WHERE unit = ? AND attachment = ?";
  auto found = readPairs(*database_, sql, unit, attachment);
  if (!found) return std::unexpected(found.error());
  if (found->empty()) return std::nullopt;
  return std::move(found->front());
}

Expected<std::vector<Pair>> Store::pairsOf(std::string_view unit) const {
  static const std::string sql = std::string(kPairColumns) + "WHERE unit = ? ORDER BY attachment";
  return readPairs(*database_, sql, unit);
}

Expected<std::vector<Pair>> Store::due(std::int64_t until_utc_ms) const {
  static const std::string sql =
      std::string(kPairColumns) + "WHERE due_utc_ms <= ? ORDER BY due_utc_ms, unit, attachment";
  return readPairs(*database_, sql, until_utc_ms);
}

Expected<std::vector<ScaleDue>> Store::scalesDue(std::int64_t rule, std::int64_t until_utc_ms) const {
  return allRows(
      *database_,
      [](const Query& row) {
        return ScaleDue{.unit = row.text(0),
                        .attachment = row.text(1),
                        .due_utc_ms = row.integerOrNothing(2),
                        .told = row.text(3)};
      },
      "SELECT pair.unit, pair.attachment, known.due_utc_ms, known.told FROM pair LEFT JOIN scale_due AS "
      "known "
      "ON known.unit = pair.unit AND known.attachment = pair.attachment AND known.rule = ?1 "
      "WHERE known.told IS NULL OR coalesce(known.due_utc_ms, 9223372036854775807) <= ?2 "
      "ORDER BY pair.unit, pair.attachment",
      rule, until_utc_ms);
}

Expected<void> Store::keepDue(const ScaleDue& scale, std::int64_t rule) {
  return done(run(
      *database_,
      "INSERT OR REPLACE INTO scale_due (unit, attachment, rule, due_utc_ms, told) VALUES (?, ?, ?, ?, ?)",
      scale.unit, scale.attachment, rule, scale.due_utc_ms, scale.told));
}

Expected<void> Store::putYardProfile(std::string_view profile) {
  if (auto checked = checkText("profile", profile); !checked) return checked;
  return done(run(*database_, "INSERT OR REPLACE INTO yard (number, profile) VALUES (1, ?)", profile));
}

Expected<std::string> Store::yardProfile() const {
  const auto found =
      firstRow(*database_, [](const Query& row) { return row.text(0); }, "SELECT profile FROM yard");
  if (!found) return std::unexpected(found.error());
  return found->value_or("");
}

Expected<std::string> Store::putBlob(std::string_view bytes, std::string_view media_type) {
  if (bytes.size() > kMostBlobBytes) return refusedValue("blob too long");
  if (auto checked = checkText("media type", media_type); !checked) return std::unexpected(checked.error());
  std::string hash = records::hashName(bytes);
  const auto written =
      run(*database_, "INSERT INTO blob (hash, media_type, bytes) VALUES (?, ?, ?) ON CONFLICT DO NOTHING",
          hash, media_type, Blob{bytes});
  if (!written) return std::unexpected(written.error());
  return hash;
}

Expected<std::optional<std::string>> Store::blob(std::string_view hash) const {
  return firstRow(
      *database_, [](const Query& row) { return row.text(0); }, "SELECT bytes FROM blob WHERE hash = ?",
      hash);
}

Expected<bool> Store::hasBlob(std::string_view hash) const {
  return isThere(*database_, "SELECT 1 FROM blob WHERE hash = ?", hash);
}

Expected<std::string> Store::mediaType(std::string_view hash) const {
  const auto found = firstRow(
      *database_, [](const Query& row) { return row.text(0); }, "SELECT media_type FROM blob WHERE hash = ?",
      hash);
  if (!found) return std::unexpected(found.error());
  return found->value_or("");
}

Expected<void> Store::beginJob(const Job& job, std::string_view first_event) {
  if (auto checked = checkTexts({{"job", job.id},
                                 {"procedure", job.procedure_id},
                                 {"language", job.language},
                                 {"event", first_event}});
      !checked) {
    return checked;
  }
  if (job.phase != "running" || !job.record.empty())
    return refusedValue("a job begins running, without a record");
  auto transaction = Transaction::beginWriting(*database_);
  if (!transaction) return std::unexpected(transaction.error());
  const auto there = isThere(*database_, "SELECT 1 FROM job WHERE id = ?", job.id);
  if (!there) return std::unexpected(there.error());
  if (*there) return fail(ErrorKind::InvalidInput, "job-already-in-store", {{"job", job.id}});
  if (auto found = requireUnit(*database_, job.unit); !found) return found;
  if (!job.attachment.empty()) {
    if (auto found = requireAttachment(*database_, job.attachment); !found) return found;
  }
  for (const std::string* hash : {&job.procedure, &job.words}) {
    if (auto found = requireBlob(*database_, *hash); !found) return found;
  }
  const auto begun = run(*database_,
                         "INSERT INTO job (id, unit, attachment, procedure_id, procedure, words, language, "
                         "begun_utc_ms, phase) VALUES (?, ?, ?, ?, ?, ?, ?, ?, 'running')",
                         job.id, job.unit, TextOrNull{job.attachment}, job.procedure_id, job.procedure,
                         job.words, job.language, job.begun_utc_ms);
  if (!begun) return std::unexpected(begun.error());
  const auto first = run(*database_, "INSERT INTO journal (job, sequence, event) VALUES (?, 0, ?)",
                         std::int64_t{sqlite3_last_insert_rowid(database_->handle())}, first_event);
  if (!first) return std::unexpected(first.error());
  return transaction->commit();
}

Expected<void> Store::appendEvent(std::string_view job, std::int64_t sequence, std::string_view event) {
  if (auto checked = checkText("event", event); !checked) return checked;
  // One statement is its own commit, and looks at the journal under the lock that it writes with.
  const auto written =
      run(*database_,
          "INSERT INTO journal (job, sequence, event) SELECT number, ?2, ?3 FROM job WHERE id = ?1 AND "
          "phase = 'running' AND ?2 = (SELECT max(sequence) + 1 FROM journal WHERE job = number)",
          job, sequence, event);
  if (!written) return std::unexpected(written.error());
  if (*written == 1) return {};
  const auto found = findJob(*database_, job);
  if (!found) return std::unexpected(found.error());
  if (!found->running) return fail(ErrorKind::InvalidInput, "job-ended");
  return fail(ErrorKind::InvalidInput, "journal-not-continued",
              {{"job", std::string(job)}, {"sequence", Amount{static_cast<double>(sequence), "1"}}});
}

Expected<std::vector<std::string>> Store::journal(std::string_view job) const {
  return allRows(
      *database_, [](const Query& row) { return row.text(0); },
      "SELECT event FROM journal WHERE job = (SELECT number FROM job WHERE id = ?) ORDER BY sequence", job);
}

constexpr std::string_view kJobColumns =
    "SELECT id, unit, attachment, procedure_id, procedure, words, language, begun_utc_ms, phase, record FROM "
    "job ";

Expected<std::optional<Job>> Store::job(std::string_view id) const {
  static const std::string sql = std::string(kJobColumns) + "WHERE id = ?";
  return firstRow(*database_, jobOf, sql, id);
}

Expected<std::vector<Job>> Store::jobs(std::string_view unit) const {
  static const std::string every = std::string(kJobColumns) + "ORDER BY number DESC";
  static const std::string of_unit = std::string(kJobColumns) + "WHERE unit = ? ORDER BY number DESC";
  return unit.empty() ? allRows(*database_, jobOf, every) : allRows(*database_, jobOf, of_unit, unit);
}

Expected<std::vector<Job>> Store::jobsRunning() const {
  static const std::string sql = std::string(kJobColumns) + "WHERE phase = 'running' ORDER BY number DESC";
  return allRows(*database_, jobOf, sql);
}

Expected<void> Store::endJob(const Ending& ending) {
  if (ending.phase == "running") return refusedValue("a job does not end running");
  auto transaction = Transaction::beginWriting(*database_);
  if (!transaction) return std::unexpected(transaction.error());
  const auto found = findJob(*database_, ending.job);
  if (!found) return std::unexpected(found.error());
  if (!found->running) return fail(ErrorKind::InvalidInput, "job-ended");
  StoredStatement record = ending.record;
  record.job = ending.job;
  if (auto written = writeStatement(*database_, record, ending.now_utc_ms, true); !written) return written;
  if (ending.pair) {
    if (auto written = writePair(*database_, *ending.pair); !written) return written;
  }
  if (ending.unit) {
    if (auto written = writeUnit(*database_, *ending.unit); !written) return written;
  }
  const auto ended = run(*database_, "UPDATE job SET phase = ?, record = ? WHERE number = ?", ending.phase,
                         record.name, found->number);
  if (!ended) return std::unexpected(ended.error());
  return transaction->commit();
}

Expected<void> Store::putStatement(const StoredStatement& statement, std::int64_t now_utc_ms, bool queue) {
  auto transaction = Transaction::beginWriting(*database_);
  if (!transaction) return std::unexpected(transaction.error());
  if (auto written = writeStatement(*database_, statement, now_utc_ms, queue); !written) return written;
  return transaction->commit();
}

Expected<void> Store::putVerified(const StoredStatement& statement, const records::Statement& read) {
  if (auto checked = checkText("unit", statement.unit); !checked) return checked;
  auto transaction = Transaction::beginWriting(*database_);
  if (!transaction) return std::unexpected(transaction.error());
  if (auto written = insertStatement(*database_, statement, outlineOf(read)); !written)
    return std::unexpected(written.error());
  return transaction->commit();
}

Expected<std::optional<StoredStatement>> Store::statement(std::string_view name) const {
  return firstRow(
      *database_,
      [](const Query& row) {
        return StoredStatement{
            .name = row.text(0), .text = row.text(1), .job = row.text(2), .unit = row.text(3)};
      },
      "SELECT name, text, (SELECT id FROM job WHERE job.number = statement.job), unit FROM statement "
      "WHERE name = ?",
      name);
}

Expected<std::optional<std::int64_t>> Store::sealedUtcMs(std::string_view name) const {
  return firstRow(
      *database_, [](const Query& row) { return row.integer(0); },
      "SELECT sealed_utc_ms FROM statement WHERE name = ?", name);
}

Expected<std::vector<std::string>> Store::statementNames(std::string_view unit) const {
  const auto name = [](const Query& row) { return row.text(0); };
  if (unit.empty()) {
    return allRows(*database_, name, "SELECT name FROM statement ORDER BY sealed_utc_ms DESC, number DESC");
  }
  return allRows(*database_, name,
                 "SELECT name FROM statement WHERE unit = ? ORDER BY sealed_utc_ms DESC, number DESC", unit);
}

Expected<std::optional<records::Head>> Store::head(std::string_view key, std::string_view epoch) const {
  return firstRow(*database_, headOf,
                  "SELECT key, epoch, sequence, name FROM statement WHERE key = ? AND epoch = ? "
                  "ORDER BY sequence DESC, number LIMIT 1",
                  key, epoch);
}

Expected<void> Store::putSigners(const records::SealedSigners& list, std::int64_t now_utc_ms, bool queue) {
  const auto read = records::readSigners(list.text);
  if (!read) return std::unexpected(read.error());
  if (read->name != list.name) {
    return fail(ErrorKind::InvalidInput, "statement-name-differs", {{"name", excerpt(list.name)}});
  }
  auto transaction = Transaction::beginWriting(*database_);
  if (!transaction) return std::unexpected(transaction.error());
  const auto written =
      run(*database_, "INSERT INTO signers_list (name, text) VALUES (?, ?) ON CONFLICT DO NOTHING", list.name,
          list.text);
  if (!written) return std::unexpected(written.error());
  if (*written == 1 && queue) {
    if (auto waits = store::queue(*database_, "signers", list.name, now_utc_ms); !waits) return waits;
  }
  return transaction->commit();
}

Expected<std::vector<records::SealedSigners>> Store::signersLists() const {
  return allRows(
      *database_, [](const Query& row) { return records::SealedSigners{row.text(0), row.text(1)}; },
      "SELECT name, text FROM signers_list ORDER BY number");
}

Expected<void> Store::acceptRoot(std::string_view name) {
  return done(run(*database_, "INSERT OR REPLACE INTO accepted_root (name) VALUES (?)", name));
}

Expected<std::vector<std::string>> Store::acceptedRoots() const {
  return allRows(
      *database_, [](const Query& row) { return row.text(0); },
      "SELECT name FROM accepted_root ORDER BY number");
}

Expected<void> Store::putKnownHead(const records::Head& head) {
  if (auto checked = checkTexts({{"key", head.key}, {"epoch", head.epoch}}); !checked) return checked;
  return done(
      run(*database_,
          "INSERT INTO known_head (key, epoch, sequence, name) VALUES (?, ?, ?, ?) ON CONFLICT DO NOTHING",
          head.key, head.epoch, head.sequence, head.name));
}

Expected<void> Store::putPersonal(const Personal& personal, std::int64_t now_utc_ms, bool queue) {
  if (personal.erased) return erasePersonal(personal.name, now_utc_ms, queue);
  if (personal.bytes.size() > kMostBlobBytes) return refusedValue("personal object too long");
  if (records::personalName(personal.salt, personal.bytes) != personal.name) {
    return fail(ErrorKind::InvalidInput, "personal-name-differs", {{"name", excerpt(personal.name)}});
  }
  auto transaction = Transaction::beginWriting(*database_);
  if (!transaction) return std::unexpected(transaction.error());
  const auto written =
      run(*database_, "INSERT INTO personal (name, salt, bytes) VALUES (?, ?, ?) ON CONFLICT DO NOTHING",
          personal.name, Blob{records::textOf(personal.salt)}, Blob{personal.bytes});
  if (!written) return std::unexpected(written.error());
  if (*written == 1 && queue) {
    if (auto waits = store::queue(*database_, "personal", personal.name, now_utc_ms); !waits) return waits;
  }
  return transaction->commit();
}

Expected<void> Store::erasePersonal(std::string_view name, std::int64_t now_utc_ms, bool queue) {
  {
    auto transaction = Transaction::beginWriting(*database_);
    if (!transaction) return std::unexpected(transaction.error());
    if (auto erased = writeErased(*database_, name, now_utc_ms, queue); !erased) return erased;
    if (auto committed = transaction->commit(); !committed) return committed;
  }
  return database_->emptyLog();
}

Expected<std::optional<Personal>> Store::personal(std::string_view name) const {
  return firstRow(*database_, personalOf, "SELECT name, salt, bytes FROM personal WHERE name = ?", name);
}

Expected<std::vector<Personal>> Store::personal() const {
  return allRows(*database_, personalOf, "SELECT name, salt, bytes FROM personal ORDER BY number");
}

Expected<std::vector<Personal>> Store::personalBeginning(std::string_view bytes) const {
  return allRows(*database_, personalOf,
                 "SELECT name, salt, bytes FROM personal WHERE substr(bytes, 1, ?) = ? ORDER BY number",
                 static_cast<std::int64_t>(bytes.size()), Blob{bytes});
}

Expected<records::Evidence> Store::evidence() const {
  auto transaction = Transaction::beginReading(*database_);
  if (!transaction) return std::unexpected(transaction.error());
  const auto stored = [](const Query& row) { return records::StoredText{row.text(1), row.text(0)}; };
  auto statements = allRows(*database_, stored, "SELECT name, text FROM statement ORDER BY number");
  if (!statements) return std::unexpected(statements.error());
  auto lists = allRows(*database_, stored, "SELECT name, text FROM signers_list ORDER BY number");
  if (!lists) return std::unexpected(lists.error());
  auto roots = acceptedRoots();
  if (!roots) return std::unexpected(roots.error());
  auto heads = allRows(*database_, headOf, "SELECT key, epoch, sequence, name FROM known_head");
  if (!heads) return std::unexpected(heads.error());
  auto objects = personal();
  if (!objects) return std::unexpected(objects.error());
  records::Evidence evidence{.statements = *std::move(statements),
                             .signers_lists = *std::move(lists),
                             .accepted_roots = *std::move(roots),
                             .known_heads = *std::move(heads)};
  for (Personal& object : *objects) {
    if (object.erased) {
      evidence.erased.push_back(std::move(object.name));
    } else {
      evidence.personal.push_back({std::move(object.name), object.salt, std::move(object.bytes)});
    }
  }
  return evidence;
}

Expected<std::vector<Waiting>> Store::waiting() const {
  return allRows(*database_, waitingOf, "SELECT kind, name, since_utc_ms FROM waiting ORDER BY number");
}

Expected<void> Store::visitUnpacked(const std::function<Expected<bool>(const Unpacked&)>& visit) const {
  Query query(*database_,
              "SELECT w.kind, w.name, w.since_utc_ms, w.number, s.text FROM waiting AS w LEFT JOIN statement "
              "AS s ON w.kind = 'statement' AND s.name = w.name WHERE w.parcel IS NULL ORDER BY w.number");
  while (true) {
    const Expected<bool> row = query.step();
    if (!row) return std::unexpected(row.error());
    if (!*row) return {};
    Unpacked unpacked{.number = query.integer(3), .what = waitingOf(query)};
    if (!query.isNull(4)) unpacked.text = query.view(4);
    const Expected<bool> goes_on = visit(unpacked);
    if (!goes_on) return std::unexpected(goes_on.error());
    if (!*goes_on) return {};
  }
}

Expected<std::int64_t> Store::unpackedCount() const {
  const auto count = firstRow(
      *database_, [](const Query& row) { return row.integer(0); },
      "SELECT count(*) FROM waiting WHERE parcel IS NULL");
  if (!count) return std::unexpected(count.error());
  return count->value_or(0);
}

Expected<void> Store::sent(const Waiting& waiting) {
  return done(run(*database_, "DELETE FROM waiting WHERE kind = ? AND name = ? AND since_utc_ms = ?",
                  textOf(waiting.kind), waiting.name, waiting.since_utc_ms));
}

Expected<void> Store::backup(const std::string& path) const { return copyDatabase(*database_, path); }

}  // namespace hingepin::store
