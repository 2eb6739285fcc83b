// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "engine/base/error.h"

struct sqlite3;
struct sqlite3_stmt;

/// SQLite as the store uses it. For the sources and tests of this area.
namespace hingepin::store {

/// An open file and its prepared statements. Used by one thread at a time.
class Database {
 public:
  /// Opens, makes or brings up to date a file: see Store::open, whose errors it gives.
  /// @param migrations as migrations() gives them; each text outlives the database
  [[nodiscard]] static Expected<std::unique_ptr<Database>> open(const std::string& path,
                                                                const std::string& vfs,
                                                                std::span<const char* const> migrations);
  ~Database();
  Database(const Database&) = delete;
  Database& operator=(const Database&) = delete;

  [[nodiscard]] sqlite3* handle() const { return handle_; }
  [[nodiscard]] const std::string& path() const { return path_; }
  [[nodiscard]] const std::string& vfs() const { return vfs_; }
  /// What an SQLite result code means to a caller.
  [[nodiscard]] Error error(int code, bool writing) const;
  /// Runs SQL that gives no rows, or whose rows don't matter.
  [[nodiscard]] Expected<void> execute(const char* sql);
  /// Puts the log into the file and empties it, so that no older state of a page is left. Errors: IoFailed
  /// "store-busy" when another process reads an older state.
  [[nodiscard]] Expected<void> emptyLog();

 private:
  friend class Query;
  Database(std::string path, std::string vfs) : path_(std::move(path)), vfs_(std::move(vfs)) {}
  [[nodiscard]] Expected<void> openFile();
  [[nodiscard]] bool isHalfMade() const;
  [[nodiscard]] Expected<void> refuseByHeader(std::size_t newest);
  [[nodiscard]] Expected<bool> isCurrent(std::size_t newest);
  [[nodiscard]] Expected<void> migrate(std::span<const char* const> migrations);
  [[nodiscard]] Expected<void> checkSchema(std::span<const char* const> migrations);

  std::string path_;
  std::string vfs_;
  sqlite3* handle_ = nullptr;
  std::unordered_map<std::string_view, sqlite3_stmt*> prepared_;  // by literals
};

struct Blob {
  std::string_view bytes;
};

/// A text that stands as NULL when it is empty.
struct TextOrNull {
  std::string_view text;
};

/// One run of a prepared statement. What it binds and what it gives is there until it goes.
class Query {
 public:
  /// @param sql a literal: prepared statements are kept by it
  template <class... Values>
  Query(Database& database, std::string_view sql, const Values&... values) : Query(database, sql, 0) {
    int column = 0;
    (bind(++column, values), ...);
  }
  ~Query();
  Query(const Query&) = delete;
  Query& operator=(const Query&) = delete;

  /// @return whether there is a(nother) row
  [[nodiscard]] Expected<bool> step();

  [[nodiscard]] bool isNull(int column) const;
  [[nodiscard]] std::int64_t integer(int column) const;
  /// Text or bytes; "" for NULL.
  [[nodiscard]] std::string text(int column) const { return std::string(view(column)); }
  /// Likewise, there until the next step.
  [[nodiscard]] std::string_view view(int column) const;
  [[nodiscard]] std::optional<std::int64_t> integerOrNothing(int column) const;

 private:
  Query(Database& database, std::string_view sql, int);
  void bind(int column, std::int64_t value);
  void bind(int column, const std::optional<std::int64_t>& value);
  void bind(int column, std::string_view text);
  void bind(int column, Blob blob);
  void bind(int column, TextOrNull value);

  Database& database_;
  sqlite3_stmt* statement_ = nullptr;
  int code_ = 0;
};

/// Runs a statement that gives no rows. @return how many rows it wrote
template <class... Values>
[[nodiscard]] Expected<std::int64_t> run(Database& database, std::string_view sql, const Values&... values);
/// What such a statement says where only its success matters.
[[nodiscard]] inline Expected<void> done(const Expected<std::int64_t>& written) {
  if (!written) return std::unexpected(written.error());
  return {};
}

/// The first row as `make` sees it, or nothing.
template <class Make, class... Values>
[[nodiscard]] auto firstRow(Database& database, Make make, std::string_view sql, const Values&... values)
    -> Expected<std::optional<decltype(make(std::declval<const Query&>()))>> {
  Query query(database, sql, values...);
  const Expected<bool> row = query.step();
  if (!row) return std::unexpected(row.error());
  if (!*row) return std::nullopt;
  return make(query);
}

template <class Make, class... Values>
[[nodiscard]] auto allRows(Database& database, Make make, std::string_view sql, const Values&... values)
    -> Expected<std::vector<decltype(make(std::declval<const Query&>()))>> {
  Query query(database, sql, values...);
  std::vector<decltype(make(std::declval<const Query&>()))> rows;
  while (true) {
    const Expected<bool> row = query.step();
    if (!row) return std::unexpected(row.error());
    if (!*row) return rows;
    rows.push_back(make(query));
  }
}

[[nodiscard]] std::int64_t changesOf(Database& database);

template <class... Values>
Expected<std::int64_t> run(Database& database, std::string_view sql, const Values&... values) {
  const Expected<bool> row = Query(database, sql, values...).step();
  if (!row) return std::unexpected(row.error());
  return changesOf(database);
}

/// Makes `path` a copy of the database. Errors: IoFailed "backup-not-written".
[[nodiscard]] Expected<void> copyDatabase(Database& database, const std::string& path);

/// What is read or written together. Rolled back unless committed. Inside another it is a part of that.
class Transaction {
 public:
  [[nodiscard]] static Expected<Transaction> beginWriting(Database& database);
  /// All that is read in it is of one moment.
  [[nodiscard]] static Expected<Transaction> beginReading(Database& database);
  ~Transaction();
  Transaction(Transaction&& other) noexcept : database_(other.database_), inner_(other.inner_) {
    other.database_ = nullptr;
  }
  Transaction& operator=(Transaction&&) = delete;

  /// On the disk when it returns; of an inner one, when the outer is committed.
  [[nodiscard]] Expected<void> commit();

 private:
  [[nodiscard]] static Expected<Transaction> begin(Database& database, std::string_view sql);
  Transaction(Database& database, bool inner) : database_(&database), inner_(inner) {}
  Database* database_;
  bool inner_;
};

}  // namespace hingepin::store
