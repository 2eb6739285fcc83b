// SPDX-License-Identifier: Apache-2.0
#include "engine/session/tables.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <utility>

#include "engine/base/strict_json.h"
#include "engine/session/job_record.h"
#include "engine/session/moment.h"
#include "engine/session/record_view.h"

namespace hingepin::session {
namespace {

constexpr std::array kUnitColumns = {TableColumn{"unit", "text PRIMARY KEY"},
                                     TableColumn{"practice", "boolean NOT NULL"},
                                     TableColumn{"profile", "jsonb"}};
constexpr std::array kJobColumns = {
    TableColumn{"record", "text PRIMARY KEY"},
    TableColumn{"job", "text NOT NULL"},
    TableColumn{"unit", "text REFERENCES hingepin.units"},
    TableColumn{"attachment", "text"},
    TableColumn{"procedure", "text NOT NULL"},
    TableColumn{"procedure_version", "bigint NOT NULL"},
    TableColumn{"variant", "text"},
    TableColumn{"phase", "text NOT NULL"},
    TableColumn{"failed_step", "text"},
    TableColumn{"practice", "boolean NOT NULL"},
    TableColumn{"begun", "timestamptz NOT NULL"},
    TableColumn{"ended", "timestamptz NOT NULL"},
    TableColumn{"key", "text NOT NULL"},
    TableColumn{"role", "text NOT NULL"},
    TableColumn{"standing", "text NOT NULL"},
    TableColumn{"findings", "text"},
};
constexpr std::array kReadingColumns = {
    TableColumn{"record", "text NOT NULL REFERENCES hingepin.jobs"},
    TableColumn{"place", "bigint NOT NULL"},
    TableColumn{"step", "text"},
    TableColumn{"kind", "text"},
    TableColumn{"type", "text NOT NULL"},
    TableColumn{"quantity", "text"},
    TableColumn{"value", "numeric"},
    TableColumn{"unit", "text"},
    TableColumn{"value_si", "double precision"},
    TableColumn{"answer", "text"},
    TableColumn{"how", "text"},
    TableColumn{"counts", "boolean NOT NULL"},
    TableColumn{"outcome", "text"},
    TableColumn{"result", "text"},
    TableColumn{"at", "timestamptz"},
    TableColumn{"key", "text"},
    TableColumn{"role", "text"},
};

constexpr std::array kTables = {TableShape{"units", kUnitColumns}, TableShape{"jobs", kJobColumns},
                                TableShape{"readings", kReadingColumns, ",\n  PRIMARY KEY (record, place)"}};

std::string flag(bool value) { return value ? "true" : "false"; }

/// By id, their profiles: as the store has them, else as the newest record that names them does.
Expected<std::map<std::string, std::string>> profilesOf(const store::Store& store,
                                                        const records::Verification& verified) {
  std::map<std::string, std::string> profiles;
  std::map<std::string, std::int64_t> newest;
  for (const records::StatementVerdict& each : verified.statements) {
    const auto* record = each.statement ? std::get_if<records::Record>(&*each.statement) : nullptr;
    const auto job = record != nullptr ? readRecordedJob(record->content) : std::nullopt;
    if (!job || job->unit.empty()) continue;
    const auto [found, is_new] = newest.try_emplace(job->unit, job->ended_utc_ms);
    if (!is_new && job->ended_utc_ms < found->second) continue;
    found->second = job->ended_utc_ms;
    auto profile = store.blob(job->unit_profile);
    if (!profile) return std::unexpected(profile.error());
    profiles[job->unit] = profile->value_or("");
  }
  const auto own = store.units();
  if (!own) return std::unexpected(own.error());
  for (const store::Unit& each : *own) profiles[each.id] = each.profile;
  return profiles;
}

bool isPractice(const std::string& profile) {
  const auto document = readJson(profile, "");
  const auto practice = document ? JsonNode(*document).find("practice") : std::nullopt;
  return practice && practice->value().boolean;
}

}  // namespace

std::string_view nameOf(records::Standing standing) {
  switch (standing) {
    case records::Standing::Trusted:
      return "trusted";
    case records::Standing::Quarantined:
      return "quarantined";
    case records::Standing::Refused:
      return "refused";
  }
  return "";
}

std::span<const TableShape> officeTables() { return kTables; }

Expected<void> eachOfficeRow(const store::Store& store, const RowSink& sink) {
  const auto evidence = store.evidence();
  if (!evidence) return std::unexpected(evidence.error());
  const records::Verification verified = records::verify(*evidence);
  std::map<std::string, std::set<std::string>> findings;
  for (const records::Finding& each : verified.findings) findings[each.subject].insert(each.message.code);

  const auto profiles = profilesOf(store, verified);
  if (!profiles) return std::unexpected(profiles.error());
  for (const auto& [id, profile] : *profiles) {
    if (auto taken = sink(kTables[0], {id, flag(isPractice(profile)), profile}); !taken) return taken;
  }
  const auto eachJob = [&](const auto& act) -> Expected<void> {
    for (const records::StatementVerdict& each : verified.statements) {
      const auto* record = each.statement ? std::get_if<records::Record>(&*each.statement) : nullptr;
      const auto job = record != nullptr ? readRecordedJob(record->content) : std::nullopt;
      if (!job) continue;
      if (Expected<void> done = act(each, *record, *job); !done) return done;
    }
    return {};
  };
  auto done = eachJob(
      [&](const records::StatementVerdict& verdict, const records::Record& record, const RecordedJob& job) {
        std::string remarks;
        for (const std::string& code : findings[verdict.name]) remarks += (remarks.empty() ? "" : " ") + code;
        return sink(kTables[1],
                    {verdict.name, job.job, job.unit, job.attachment, job.procedure,
                     std::to_string(job.version), job.variant, job.phase, job.failed_step, flag(job.practice),
                     utcText(job.begun_utc_ms), utcText(job.ended_utc_ms), record.envelope.place.key,
                     record.envelope.role, std::string(nameOf(verdict.standing)), remarks});
      });
  if (!done) return done;
  return eachJob([&](const records::StatementVerdict& verdict, const records::Record&,
                     const RecordedJob& job) -> Expected<void> {
    for (std::size_t index = 0; index < job.tries.size(); ++index) {
      const RecordedTry& each = job.tries[index];
      const std::size_t blank = each.value.find(' ');
      const auto si = siOf(each.value);
      const std::vector<std::string> cells = {verdict.name,
                                              std::to_string(index + 1),
                                              each.about,
                                              each.kind,
                                              each.type,
                                              each.quantity,
                                              si ? each.value.substr(0, blank) : "",
                                              si ? each.value.substr(blank + 1) : "",
                                              si ? fmt::format("{}", *si) : "",
                                              each.answer,
                                              each.how,
                                              flag(each.counts),
                                              each.outcome,
                                              each.result,
                                              each.utc_ms > 0 ? utcText(each.utc_ms) : "",
                                              each.by.key,
                                              each.by.role};
      if (auto taken = sink(kTables[2], cells); !taken) return taken;
    }
    return {};
  });
}

std::string csvRow(const std::vector<std::string>& cells) {
  std::string row;
  for (const std::string& cell : cells) {
    if (&cell != &cells.front()) row += ',';
    if (cell.find_first_of("\",\r\n") == std::string::npos) {
      row += cell;
      continue;
    }
    row += '"';
    for (const char byte : cell) row += byte == '"' ? "\"\"" : std::string(1, byte);
    row += '"';
  }
  return row + "\n";
}

std::string loadScript() {
  std::string script =
      "-- psql -f load.sql, in this folder: makes the tables where they are not there, and fills them anew.\n"
      "\\set ON_ERROR_STOP on\n"
      "BEGIN;\n"
      "CREATE SCHEMA IF NOT EXISTS hingepin;\n";
  std::string names;
  for (const TableShape& table : kTables) {
    script += fmt::format("CREATE TABLE IF NOT EXISTS hingepin.{} (", table.name);
    for (const TableColumn& column : table.columns) {
      script +=
          fmt::format("{}\n  {} {}", &column == table.columns.data() ? "" : ",", column.name, column.type);
    }
    script += fmt::format("{}\n);\n", table.constraint);
    names += fmt::format("{}hingepin.{}", names.empty() ? "" : ", ", table.name);
  }
  script += fmt::format("TRUNCATE {};\n", names);
  for (const TableShape& table : kTables) {
    script += fmt::format("\\copy hingepin.{0} FROM '{0}.csv' WITH (FORMAT csv, HEADER, ENCODING 'UTF8')\n",
                          table.name);
  }
  return script + "COMMIT;\n";
}

}  // namespace hingepin::session
