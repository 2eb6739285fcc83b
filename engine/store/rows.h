// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/store/database.h"
#include "engine/store/store.h"

/// How values stand in rows. For the sources of this area.
namespace hingepin::store {

[[nodiscard]] std::string_view textOf(WaitingKind kind);
[[nodiscard]] std::optional<WaitingKind> waitingKindOf(std::string_view text);

/// A list of codes as a canonical JSON array. Errors: InvalidInput "not-utf8".
[[nodiscard]] Expected<std::string> textOfRestrictions(const std::vector<std::string>& restrictions);
[[nodiscard]] Expected<std::vector<std::string>> restrictionsOf(std::string text);

/// What a statement's text says of itself.
struct ReadStatement {
  std::string kind;  ///< "record", "signature"
  records::ChainPlace place;
  std::int64_t sealed_utc_ms = 0;
  std::optional<JsonValue> content{};  ///< of a record
};
/// Of a statement, without its content.
[[nodiscard]] ReadStatement outlineOf(const records::Statement& statement);
/// Errors: as Store::putStatement.
[[nodiscard]] Expected<ReadStatement> readStatement(const StoredStatement& statement);

[[nodiscard]] std::unexpected<Error> notThere(const char* code, const char* what, std::string_view name);

/// Forgets what was worked out of when the scales of a unit are due. For all that changes what it stands on.
[[nodiscard]] Expected<void> dropDue(Database& database, std::string_view unit);

struct JobHere {
  std::int64_t number;
  bool running;
};
/// Errors: NotFound "job-not-in-store".
[[nodiscard]] Expected<JobHere> findJob(Database& database, std::string_view id);

/// Puts a statement into its table. @return whether it was new. Errors: NotFound "job-not-in-store".
[[nodiscard]] Expected<bool> insertStatement(Database& database, const StoredStatement& statement,
                                             const ReadStatement& read);

/// Of the columns kind, name, since_utc_ms.
[[nodiscard]] Waiting waitingOf(const Query& row);
/// Of the columns key, epoch, sequence, name.
[[nodiscard]] records::Head headOf(const Query& row);
/// Of the columns name, salt, bytes.
[[nodiscard]] Personal personalOf(const Query& row);

}  // namespace hingepin::store
