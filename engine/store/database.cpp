// SPDX-License-Identifier: Apache-2.0
#include "engine/store/database.h"

#include <sqlite3.h>

#include <array>
#include <cassert>
#include <cstddef>
#include <utility>

#include "engine/store/schema.h"

namespace hingepin::store {
namespace {

constexpr int kBusyTimeout_ms = 2000;

// README.md says why of each.
constexpr const char* kPragmas = R"sql(
PRAGMA synchronous = EXTRA;
PRAGMA fullfsync = ON;
PRAGMA checkpoint_fullfsync = ON;
PRAGMA secure_delete = ON;
PRAGMA cell_size_check = ON;
PRAGMA mmap_size = 0;
PRAGMA temp_store = MEMORY;
PRAGMA journal_size_limit = 4194304;
PRAGMA foreign_keys = ON;
)sql";

// As SQLite's file format has it, section 1.3.
constexpr std::size_t kHeaderSize = 100;
constexpr std::size_t kUserVersionOffset = 60;
constexpr std::size_t kApplicationIdOffset = 68;
constexpr std::string_view kMagic{"SQLite format 3\0", 16};

// Section 3 of the same: the header of a rollback journal.
constexpr std::size_t kJournalHeaderSize = 28;
constexpr std::size_t kJournalPagesOffset = 16;  // how many pages the file had before
constexpr std::string_view kJournalMagic{"\xD9\xD5\x05\xF9\x20\xA1\x63\xD7", 8};

std::uint32_t bigEndian(const unsigned char* bytes) {
  return (std::uint32_t{bytes[0]} << 24U) | (std::uint32_t{bytes[1]} << 16U) |
         (std::uint32_t{bytes[2]} << 8U) | bytes[3];
}

// A URI, because only a URI can say psow=0: a write that was cut off by a power loss may have spoiled the
// whole sector, also what stood there before.
std::string uriOf(std::string_view path) {
  constexpr std::string_view kHexadecimal = "0123456789ABCDEF";
  std::string uri = path.starts_with('/') ? "file://" : "file:";
  for (const char letter : path) {
    const bool plain = (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z') ||
                       (letter >= '0' && letter <= '9') || letter == '/' || letter == '.' || letter == '_' ||
                       letter == '-';
    if (plain) {
      uri += letter;
    } else {
      const auto byte = static_cast<unsigned char>(letter);
      uri += {'%', kHexadecimal[byte >> 4U], kHexadecimal[byte & 15U]};
    }
  }
  return uri + "?psow=0";
}

std::unexpected<Error> refused(std::string code, const std::string& path,
                               std::vector<std::pair<std::string, MessageValue>> values = {}) {
  return fail(ErrorKind::InvalidInput, std::move(code), std::move(values), {.file = path});
}

Expected<std::int64_t> pragma(Database& database, std::string_view sql) {
  Query query(database, sql);
  const Expected<bool> row = query.step();
  if (!row) return std::unexpected(row.error());
  return query.integer(0);
}

Expected<std::string> schemaOf(Database& database) {
  std::string schema;
  const auto rows = allRows(
      database, [](const Query& row) { return row.text(0) + "\n"; },
      "SELECT sql FROM sqlite_schema WHERE name NOT GLOB 'sqlite_*' ORDER BY type, name");
  if (!rows) return std::unexpected(rows.error());
  for (const std::string& row : *rows) schema += row;
  return schema;
}

}  // namespace

Expected<std::unique_ptr<Database>> Database::open(const std::string& path, const std::string& vfs,
                                                   std::span<const char* const> migrations) {
  std::unique_ptr<Database> database(new Database(path, vfs));
  if (auto opened = database->openFile(); !opened) return std::unexpected(opened.error());
  if (auto ours = database->refuseByHeader(migrations.size()); !ours) return std::unexpected(ours.error());
  if (auto set = database->execute(kPragmas); !set) return std::unexpected(set.error());
  const auto current = database->isCurrent(migrations.size());
  if (!current) return std::unexpected(current.error());
  // Only now may closing write the log back into the file: what was refused stays as it was.
  sqlite3_db_config(database->handle_, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 0, nullptr);
  if (!*current) {
    if (auto migrated = database->migrate(migrations); !migrated) return std::unexpected(migrated.error());
  }
  const auto mode = firstRow(*database, [](const Query& row) { return row.text(0); }, "PRAGMA journal_mode");
  if (!mode) return std::unexpected(mode.error());
  if (*mode != "wal") {
    const auto set =
        firstRow(*database, [](const Query& row) { return row.text(0); }, "PRAGMA journal_mode = WAL");
    if (!set) return std::unexpected(set.error());
    if (*set != "wal") return std::unexpected(database->error(SQLITE_CANTOPEN, true));
  }
  if (auto settled = database->emptyLog(); !settled && settled.error().message.code != "store-busy") {
    return std::unexpected(settled.error());
  }
  if (auto checked = database->checkSchema(migrations); !checked) return std::unexpected(checked.error());
  return database;
}

Database::~Database() {
  for (const auto& [sql, statement] : prepared_) sqlite3_finalize(statement);
  sqlite3_close(handle_);
}

Expected<void> Database::openFile() {
  const int code = path_.empty()
                       ? SQLITE_CANTOPEN
                       : sqlite3_open_v2(uriOf(path_).c_str(), &handle_,
                                         SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE | SQLITE_OPEN_URI |
                                             SQLITE_OPEN_EXRESCODE | SQLITE_OPEN_NOMUTEX,
                                         vfs_.empty() ? nullptr : vfs_.c_str());
  // A file that may only be read is opened for reading without a word, and can't hold a journal.
  if (code != SQLITE_OK || sqlite3_db_readonly(handle_, "main") != 0) {
    return fail(ErrorKind::IoFailed, "store-not-opened", {{"reason", sqlite3_errstr(code)}}, {.file = path_});
  }
  sqlite3_busy_timeout(handle_, kBusyTimeout_ms);
  for (const auto& [option, on] :
       {std::pair{SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 1}, std::pair{SQLITE_DBCONFIG_DEFENSIVE, 1},
        std::pair{SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0}, std::pair{SQLITE_DBCONFIG_ENABLE_VIEW, 0},
        std::pair{SQLITE_DBCONFIG_ENABLE_TRIGGER, 0}, std::pair{SQLITE_DBCONFIG_DQS_DML, 0},
        std::pair{SQLITE_DBCONFIG_DQS_DDL, 0}}) {
    sqlite3_db_config(handle_, option, on, nullptr);
  }
  return {};
}

/// Whether the file was first being made when power went: a rollback journal beside it takes it back to
/// nothing, and what its first bytes say may be cut off anywhere.
bool Database::isHalfMade() const {
  sqlite3_vfs* vfs = nullptr;
  if (sqlite3_file_control(handle_, "main", SQLITE_FCNTL_VFS_POINTER, static_cast<void*>(&vfs)) !=
          SQLITE_OK ||
      vfs == nullptr) {
    return false;
  }
  std::vector<std::byte> memory(static_cast<std::size_t>(vfs->szOsFile));
  auto* const journal = reinterpret_cast<sqlite3_file*>(memory.data());
  std::array<unsigned char, kJournalHeaderSize> header{};
  const bool read = vfs->xOpen(vfs, sqlite3_filename_journal(sqlite3_db_filename(handle_, "main")), journal,
                               SQLITE_OPEN_READONLY | SQLITE_OPEN_MAIN_JOURNAL, nullptr) == SQLITE_OK &&
                    journal->pMethods->xRead(journal, header.data(), kJournalHeaderSize, 0) == SQLITE_OK;
  if (journal->pMethods != nullptr) journal->pMethods->xClose(journal);
  return read &&
         std::string_view(reinterpret_cast<const char*>(header.data()), kJournalMagic.size()) ==
             kJournalMagic &&
         bigEndian(&header[kJournalPagesOffset]) == 0;
}

/// Refuses what the first bytes show to be newer or not ours before SQLite looks at the file: its first look
/// would make or replay a log. What they don't show, isCurrent() does.
Expected<void> Database::refuseByHeader(std::size_t newest) {
  sqlite3_file* file = nullptr;
  std::array<unsigned char, kHeaderSize> header{};
  if (sqlite3_file_control(handle_, "main", SQLITE_FCNTL_FILE_POINTER, static_cast<void*>(&file)) !=
          SQLITE_OK ||
      file == nullptr || file->pMethods == nullptr) {
    return {};
  }
  if (file->pMethods->xRead(file, header.data(), kHeaderSize, 0) != SQLITE_OK) return {};
  if (std::string_view(reinterpret_cast<const char*>(header.data()), kMagic.size()) != kMagic) return {};
  const std::uint32_t application = bigEndian(&header[kApplicationIdOffset]);
  const std::uint32_t version = bigEndian(&header[kUserVersionOffset]);
  if (application == 0) return {};
  const bool ours = application == static_cast<std::uint32_t>(kApplicationId);
  if ((ours && version <= newest) || isHalfMade()) return {};
  if (!ours) return refused("store-not-ours", path_);
  return refused("store-newer", path_,
                 {{"version", Amount{static_cast<double>(version), "1"}},
                  {"known", Amount{static_cast<double>(newest), "1"}}});
}

/// Whether the schema is there in the newest version; not, if the file is empty or older.
Expected<bool> Database::isCurrent(std::size_t newest) {
  const auto application = pragma(*this, "PRAGMA application_id");
  if (!application) return std::unexpected(application.error());
  const auto version = pragma(*this, "PRAGMA user_version");
  if (!version) return std::unexpected(version.error());
  const auto objects = pragma(*this, "SELECT count(*) FROM sqlite_schema");
  if (!objects) return std::unexpected(objects.error());
  const bool empty = *application == 0 && *version == 0 && *objects == 0;
  if (!empty && *application != kApplicationId) return refused("store-not-ours", path_);
  if (*version < 0 || (!empty && *version == 0))
    return refused("store-damaged", path_, {{"reason", "version"}});
  if (std::cmp_greater(*version, newest)) {
    return refused("store-newer", path_,
                   {{"version", Amount{static_cast<double>(*version), "1"}},
                    {"known", Amount{static_cast<double>(newest), "1"}}});
  }
  return std::cmp_equal(*version, newest);
}

/// All that is missing, in one commit. A new file is made with a rollback journal, so that its header says at
/// once what it is.
Expected<void> Database::migrate(std::span<const char* const> migrations) {
  // Tables that are made anew must not take along what refers to them; checked before the commit instead.
  if (auto off = execute("PRAGMA foreign_keys = OFF"); !off) return off;
  {
    auto transaction = Transaction::beginWriting(*this);
    if (!transaction) return std::unexpected(transaction.error());
    const auto version = pragma(*this, "PRAGMA user_version");  // somebody else may have been quicker
    if (!version) return std::unexpected(version.error());
    for (std::size_t next = static_cast<std::size_t>(*version); next < migrations.size(); ++next) {
      if (auto done = execute(migrations[next]); !done) return done;
    }
    const auto dangling = firstRow(*this, [](const Query&) { return true; }, "PRAGMA foreign_key_check");
    if (!dangling) return std::unexpected(dangling.error());
    if (*dangling) return refused("store-damaged", path_, {{"reason", "foreign keys"}});
    const std::string marks = "PRAGMA application_id = " + std::to_string(kApplicationId) +
                              "; PRAGMA user_version = " + std::to_string(migrations.size());
    if (auto marked = execute(marks.c_str()); !marked) return marked;
    if (auto committed = transaction->commit(); !committed) return committed;
  }
  return execute("PRAGMA foreign_keys = ON");
}

/// The schema has to be the one that the scripts make.
Expected<void> Database::checkSchema(std::span<const char* const> migrations) {
  Database model(":memory:", "");
  int code = sqlite3_open_v2(":memory:", &model.handle_, SQLITE_OPEN_READWRITE | SQLITE_OPEN_MEMORY, nullptr);
  if (code != SQLITE_OK) return std::unexpected(error(code, false));
  for (const char* script : migrations) {
    if (auto done = model.execute(script); !done) return done;
  }
  const auto expected = schemaOf(model);
  const auto found = schemaOf(*this);
  if (!expected) return std::unexpected(expected.error());
  if (!found) return std::unexpected(found.error());
  if (*expected != *found) return refused("store-damaged", path_, {{"reason", "schema"}});
  return {};
}

/// A log that is found on opening may hold a commit that failed to sync and that the system has forgotten, or
/// taken for written: before anything is built on it, it goes into the file. Busy means that another process
/// has the file open, so that there was nothing to recover.
Expected<void> Database::emptyLog() {
  const int code = sqlite3_wal_checkpoint_v2(handle_, "main", SQLITE_CHECKPOINT_TRUNCATE, nullptr, nullptr);
  if (code != SQLITE_OK) return std::unexpected(error(code, true));
  return {};
}

Error Database::error(int code, bool writing) const {
  const auto say = [&](ErrorKind kind, const char* message) {
    return Error{kind, {message, {{"reason", std::string(sqlite3_errstr(code))}}}, {.file = path_}};
  };
  switch (code & 0xFF) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
    case SQLITE_PROTOCOL:
      return say(ErrorKind::IoFailed, "store-busy");
    case SQLITE_FULL:
      return say(ErrorKind::IoFailed, "store-full");
    case SQLITE_NOTADB:
      return say(ErrorKind::InvalidInput, "store-not-ours");
    case SQLITE_CORRUPT:
      return say(ErrorKind::InvalidInput, "store-damaged");
    case SQLITE_CONSTRAINT:
    case SQLITE_TOOBIG:
    case SQLITE_MISMATCH:
      return Error{ErrorKind::InvalidInput,
                   {"store-value-refused", {{"reason", std::string(sqlite3_errmsg(handle_))}}},
                   {.file = path_}};
    case SQLITE_CANTOPEN:
      return say(ErrorKind::IoFailed, "store-not-opened");
    default:
      return say(ErrorKind::IoFailed, writing ? "store-write-failed" : "store-read-failed");
  }
}

Expected<void> Database::execute(const char* sql) {
  const int code = sqlite3_exec(handle_, sql, nullptr, nullptr, nullptr);
  if (code != SQLITE_OK) return std::unexpected(error(code, true));
  return {};
}

Query::Query(Database& database, std::string_view sql, int) : database_(database) {
  sqlite3_stmt*& prepared = database.prepared_[sql];
  if (prepared == nullptr) {
    code_ = sqlite3_prepare_v3(database.handle_, sql.data(), static_cast<int>(sql.size()),
                               SQLITE_PREPARE_PERSISTENT, &prepared, nullptr);
  }
  assert(prepared == nullptr || sqlite3_stmt_busy(prepared) == 0);
  statement_ = prepared;
}

Query::~Query() {
  sqlite3_reset(statement_);
  sqlite3_clear_bindings(statement_);
}

Expected<bool> Query::step() {
  if (code_ == SQLITE_OK) code_ = sqlite3_step(statement_);
  if (code_ == SQLITE_ROW) {
    code_ = SQLITE_OK;
    return true;
  }
  if (code_ == SQLITE_DONE) return false;
  const bool writing = statement_ != nullptr && sqlite3_stmt_readonly(statement_) == 0;
  return std::unexpected(database_.error(code_, writing));
}

bool Query::isNull(int column) const { return sqlite3_column_type(statement_, column) == SQLITE_NULL; }

std::int64_t Query::integer(int column) const { return sqlite3_column_int64(statement_, column); }

std::string_view Query::view(int column) const {
  const void* bytes = sqlite3_column_blob(statement_, column);
  const int size = sqlite3_column_bytes(statement_, column);
  return bytes == nullptr ? std::string_view()
                          : std::string_view(static_cast<const char*>(bytes), static_cast<std::size_t>(size));
}

std::optional<std::int64_t> Query::integerOrNothing(int column) const {
  if (isNull(column)) return std::nullopt;
  return integer(column);
}

void Query::bind(int column, std::int64_t value) {
  if (code_ == SQLITE_OK) code_ = sqlite3_bind_int64(statement_, column, value);
}

void Query::bind(int column, const std::optional<std::int64_t>& value) {
  if (value) bind(column, *value);
}

void Query::bind(int column, std::string_view text) {
  if (code_ == SQLITE_OK) {
    code_ = sqlite3_bind_text64(statement_, column, text.data() == nullptr ? "" : text.data(), text.size(),
                                SQLITE_STATIC, SQLITE_UTF8);
  }
}

void Query::bind(int column, Blob blob) {
  if (code_ == SQLITE_OK) {
    code_ = sqlite3_bind_blob64(statement_, column, blob.bytes.data() == nullptr ? "" : blob.bytes.data(),
                                blob.bytes.size(), SQLITE_STATIC);
  }
}

void Query::bind(int column, TextOrNull value) {
  if (!value.text.empty()) bind(column, value.text);
}

std::int64_t changesOf(Database& database) { return sqlite3_changes64(database.handle()); }

Expected<void> copyDatabase(Database& database, const std::string& path) {
  const auto notWritten = [&path](const char* reason) {
    return fail(ErrorKind::IoFailed, "backup-not-written", {{"reason", reason}}, {.file = path});
  };
  const char* vfs_name = database.vfs().empty() ? nullptr : database.vfs().c_str();
  sqlite3_vfs* vfs = sqlite3_vfs_find(vfs_name);
  int there = 1;
  if (path.empty() || vfs == nullptr ||
      vfs->xAccess(vfs, path.c_str(), SQLITE_ACCESS_EXISTS, &there) != SQLITE_OK) {
    return notWritten(sqlite3_errstr(SQLITE_CANTOPEN));
  }
  if (there != 0) return notWritten("there is a file of that name");
  sqlite3* copy = nullptr;
  int code = sqlite3_open_v2(uriOf(path).c_str(), &copy,
                             SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE | SQLITE_OPEN_URI, vfs_name);
  // With its own rollback journal, SQLite makes the copy in one durable commit.
  if (code == SQLITE_OK) code = sqlite3_exec(copy, kPragmas, nullptr, nullptr, nullptr);
  if (code == SQLITE_OK) {
    sqlite3_backup* backup = sqlite3_backup_init(copy, "main", database.handle(), "main");
    if (backup != nullptr) sqlite3_backup_step(backup, -1);
    code = backup != nullptr ? sqlite3_backup_finish(backup) : sqlite3_errcode(copy);
  }
  sqlite3_close(copy);
  if (code != SQLITE_OK) return notWritten(sqlite3_errstr(code));
  return {};
}

Expected<Transaction> Transaction::begin(Database& database, std::string_view sql) {
  const bool inner = sqlite3_get_autocommit(database.handle()) == 0;
  const auto begun = run(database, inner ? "SAVEPOINT part" : sql);
  if (!begun) return std::unexpected(begun.error());
  return Transaction(database, inner);
}

Expected<Transaction> Transaction::beginWriting(Database& database) {
  return begin(database, "BEGIN IMMEDIATE");
}

Expected<Transaction> Transaction::beginReading(Database& database) { return begin(database, "BEGIN"); }

Transaction::~Transaction() {
  // SQLite has rolled back already after some errors.
  if (database_ == nullptr || sqlite3_get_autocommit(database_->handle()) != 0) return;
  [[maybe_unused]] const auto undone = run(*database_, inner_ ? "ROLLBACK TO part" : "ROLLBACK");
  if (!inner_) return;
  [[maybe_unused]] const auto released = run(*database_, "RELEASE part");
}

Expected<void> Transaction::commit() {
  auto done = run(*database_, inner_ ? "RELEASE part" : "COMMIT");
  if (!done) {
    // SQLite counts COMMIT among what only reads.
    if (done.error().message.code == "store-read-failed") done.error().message.code = "store-write-failed";
    return std::unexpected(done.error());
  }
  database_ = nullptr;
  return {};
}

}  // namespace hingepin::store
