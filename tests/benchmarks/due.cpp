// SPDX-License-Identifier: Apache-2.0
// hingepin_due fill FOLDER      makes a yard of 10,000 invented units and 100,000 records of jobs
// hingepin_due measure FOLDER   the CPU time of its lists, beside SQLite reading the same rows
#include <fmt/format.h>
#include <sqlite3.h>
#include <sys/resource.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <filesystem>
#include <functional>
#include <optional>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "engine/folder/folder.h"
#include "engine/records/record.h"
#include "engine/session/demo_yard.h"
#include "engine/session/due_list.h"
#include "engine/session/job_record.h"
#include "engine/session/overview.h"

namespace {

using namespace hingepin;

constexpr int kUnits = 10'000;
constexpr std::size_t kRecordsOfAUnit = 10;
constexpr std::int64_t kToday = 1'795'000'000'000;  // 2026-11-18
constexpr const char* kUnitOfCopies = "L-27";

template <class T>
T need(Expected<T> value) {
  if (!value) throw std::runtime_error(value.error().message.code);
  return *std::move(value);
}
void need(const Expected<void>& done) {
  if (!done) throw std::runtime_error(done.error().message.code);
}

double cpu_ms() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  const auto of = [](const timeval& time) { return double(time.tv_sec) * 1e3 + double(time.tv_usec) * 1e-3; };
  return of(usage.ru_utime) + of(usage.ru_stime);
}

double timed_ms(const std::function<void()>& act) {
  const double before = cpu_ms();
  act();
  return cpu_ms() - before;
}

std::string storeIn(const std::string& folder) {
  return (std::filesystem::path(folder) / "store.db").string();
}

/// A value of an object by its path. REQUIRES: that it is there.
JsonValue& memberOf(JsonValue& object, std::initializer_list<std::string_view> path) {
  return const_cast<JsonValue&>(*session::memberAt(object, path));
}

/// The newest records of one unit of the demo yard, the oldest first, as jobs of as many units as are wanted.
void fill(const std::string& folder) {
  std::filesystem::create_directories(folder);
  const std::string demo_file = (std::filesystem::path(folder) / "demo.db").string();
  store::Store demo = need(store::Store::open(demo_file));
  const records::SecretKey yard_key = records::newSecretKey(folder::fillBytes);
  std::vector<records::SecretKey> keys;
  for (std::size_t index = 0; index < session::demoPeople().size(); ++index)
    keys.push_back(records::newSecretKey(folder::fillBytes));
  const std::string epoch = records::epochName(std::array<std::uint8_t, 16>{7});
  session::DemoYard yard{.yard_key = yard_key,
                         .keys = {},
                         .installation = keys.front().id(),
                         .epoch = epoch,
                         .engine = "hingepin benchmark",
                         .now = {.at_ms = 600'000, .boot = "boot", .utc_ms = kToday}};
  for (const records::SecretKey& key : keys) yard.keys.push_back(&key);
  need(session::fillDemoYard(demo, yard, folder::fillBytes, folder::edge()));

  struct Source {
    records::Record record;
    store::Job job;
  };
  std::vector<Source> sources;
  for (const std::string& name : need(demo.statementNames(kUnitOfCopies))) {
    if (sources.size() == kRecordsOfAUnit) break;
    const auto statement = need(demo.statement(name));
    if (statement->job.empty()) continue;
    sources.push_back({need(session::recordOf(demo, name)), *need(demo.job(statement->job))});
  }
  std::ranges::reverse(sources);

  store::Store large = need(store::Store::open(storeIn(folder)));
  store::Batch batch = need(large.beginBatch());
  for (const store::Attachment& each : need(demo.attachments())) need(large.putAttachment(each));
  const auto keepBlob = [&](const std::string& hash) {
    if (hash.empty() || need(large.hasBlob(hash))) return;
    if (const auto bytes = need(demo.blob(hash)))
      (void)need(large.putBlob(*bytes, need(demo.mediaType(hash))));
  };
  for (const Source& source : sources) {
    keepBlob(source.job.procedure);
    keepBlob(source.job.words);
    keepBlob(session::textAt(source.record.content, {"unit", "profile"}));
  }
  const store::Unit model = *need(demo.unit(kUnitOfCopies));
  const std::vector<store::Pair> pairs = need(demo.pairsOf(kUnitOfCopies));
  std::optional<records::Head> head;
  std::size_t bytes = 0;
  for (int number = 0; number < kUnits; ++number) {
    const std::string unit = fmt::format("U-{:05}", number);
    std::string profile = model.profile;
    const std::string own = fmt::format("\"{}\"", kUnitOfCopies);
    for (std::size_t at = 0; (at = profile.find(own, at)) != std::string::npos;)
      profile.replace(at, own.size(), "\"" + unit + "\"");
    need(large.putUnit({.id = unit, .profile = profile}));
    for (std::size_t index = 0; index < sources.size(); ++index) {
      records::Record record = sources[index].record;
      store::Job job = sources[index].job;
      const std::string outcome = std::exchange(job.phase, "running");
      job.record.clear();
      job.id = fmt::format("{}-job-{}", unit, index);
      job.unit = unit;
      need(large.beginJob(job, "{}"));
      memberOf(record.content, {"job"}).text = job.id;
      memberOf(record.content, {"unit", "id"}).text = unit;
      // A twentieth of all was proved half a year longer ago.
      const std::int64_t earlier = number % 20 == 0 ? 182LL * 24 * 3600 * 1000 : number * 60'000LL;
      memberOf(record.content, {"ended_utc_ms"}).number -= static_cast<double>(earlier);
      record.envelope.sealed_utc_ms -= earlier;
      record.envelope.place = records::nextPlace(head, keys.front().id(), keys.front().id(), epoch);
      const records::SealedStatement sealed = need(records::sealStatement(record, keys.front()));
      head = records::headAfter(record.envelope.place, sealed.name);
      bytes += sealed.text.size();
      std::optional<store::Pair> pair;
      if (index + 1 == sources.size() && !pairs.empty()) {
        pair = pairs.front();
        pair->unit = unit;
        pair->calibration.clear();
        if (pair->due_utc_ms) *pair->due_utc_ms -= earlier;
      }
      need(large.endJob({.job = job.id,
                         .phase = outcome,
                         .record = {.name = sealed.name, .text = sealed.text, .unit = unit},
                         .pair = pair,
                         .now_utc_ms = kToday}));
    }
  }
  need(batch.commit());
  fmt::print("{} units, {} records of {} bytes on average\n", kUnits, kUnits * sources.size(),
             bytes / (kUnits * sources.size()));
}

/// What SQLite alone takes for the rows of a query, each column read.
double scan_ms(const std::string& path, const char* sql) {
  sqlite3* database = nullptr;
  sqlite3_stmt* query = nullptr;
  if (sqlite3_open_v2(path.c_str(), &database, SQLITE_OPEN_READONLY, nullptr) != SQLITE_OK ||
      sqlite3_prepare_v2(database, sql, -1, &query, nullptr) != SQLITE_OK)
    throw std::runtime_error(sqlite3_errmsg(database));
  std::size_t read = 0;
  const double taken = timed_ms([&] {
    while (sqlite3_step(query) == SQLITE_ROW) {
      for (int column = 0; column < sqlite3_column_count(query); ++column) {
        const auto* const text = sqlite3_column_text(query, column);
        read += text == nullptr ? 0 : std::string(reinterpret_cast<const char*>(text)).size();
      }
    }
  });
  sqlite3_finalize(query);
  sqlite3_close(database);
  if (read == 0) throw std::runtime_error("nothing to read");
  return taken;
}

void measure(const std::string& folder) {
  const std::string path = storeIn(folder);
  constexpr const char* kPairs =
      "SELECT unit, attachment, calibration, record, due_utc_ms, restrictions FROM pair";
  constexpr const char* kRecords = "SELECT name, unit, text FROM statement";
  (void)scan_ms(path, kRecords);  // so that none of them waits for the disk
  const double pairs_ms = scan_ms(path, kPairs);
  const double records_ms = scan_ms(path, kRecords);
  store::Store store = need(store::Store::open(path));
  const session::Edge& edge = folder::edge();
  const auto tell = [&](const char* what, double taken, double known) {
    fmt::print("| {} | {:.1f} | {:.1f} |\n", what, taken, taken / known);
  };
  std::size_t due = 0;
  const auto listDue = [&] { due = need(session::duePairs(store, edge, kToday)).size(); };
  fmt::print("| what | CPU, ms | ratio |\n| --- | --- | --- |\n");
  tell("SQLite reads all pairs", pairs_ms, pairs_ms);
  tell("SQLite reads all records", records_ms, records_ms);
  tell("what is due, nothing kept (to reading all records)", timed_ms(listDue), records_ms);
  tell("keeping all of it, once (to reading all records)",
       timed_ms([&] { need(session::keepDue(store, edge)); }), records_ms);
  tell("what is due (to reading all pairs)", timed_ms(listDue), pairs_ms);
  fmt::print("| ({} due) | | |\n", due);
  tell("all pairs with when they are due (to reading all pairs)",
       timed_ms([&] { (void)need(session::duePairs(store, edge, INT64_MAX)); }), pairs_ms);
  tell("every unit with its state (to reading all pairs)",
       timed_ms([&] { (void)need(session::unitStates(store, kToday, edge, {})); }), pairs_ms);
  const store::Unit one = *need(store.unit("U-00007"));
  need(store.putUnit(one));
  tell("keeping and listing what is due after a change of one unit (to reading all pairs)", timed_ms([&] {
         need(session::keepDue(store, edge));
         listDue();
       }),
       pairs_ms);
}

}  // namespace

int main(int count, char** arguments) {
  const std::string what = count == 3 ? arguments[1] : "";
  if (what == "fill") {
    fill(arguments[2]);
  } else if (what == "measure") {
    measure(arguments[2]);
  } else {
    fmt::print(stderr, "hingepin_due fill FOLDER | measure FOLDER\n");
    return EXIT_FAILURE;
  }
  return EXIT_SUCCESS;
}
