// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/records/verify.h"
#include "engine/store/store.h"

/// What a store holds as tables, for the tools that offices already have (README.md).
namespace hingepin::session {

/// What a statement is worth, as a word: "trusted", "quarantined", "refused".
[[nodiscard]] std::string_view nameOf(records::Standing standing);

struct TableColumn {
  const char* name;
  const char* type;  ///< of PostgreSQL
};
struct TableShape {
  const char* name;
  std::span<const TableColumn> columns;
  const char* constraint = "";  ///< of PostgreSQL, over several columns
};

/// Units, jobs, readings: each comes after those that it refers to.
[[nodiscard]] std::span<const TableShape> officeTables();

/// Takes a row: one cell a column, "" where nothing is known.
using RowSink = std::function<Expected<void>(const TableShape& table, const std::vector<std::string>& cells)>;

/// Gives every row of all tables, in their order. Units are those of the store and those that records name.
/// People stand in them by key only. The whole store is verified, and each job says what its record is worth.
/// Errors: those of the store and of the sink.
[[nodiscard]] Expected<void> eachOfficeRow(const store::Store& store, const RowSink& sink);

/// A row of RFC 4180 with its line feed.
[[nodiscard]] std::string csvRow(const std::vector<std::string>& cells);

/// A script for PostgreSQL's psql that makes the tables in the schema "hingepin" where they are not there yet
/// and fills them from NAME.csv beside it, in one transaction: again and again, always with the newest.
[[nodiscard]] std::string loadScript();

}  // namespace hingepin::session
