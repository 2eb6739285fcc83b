// SPDX-License-Identifier: Apache-2.0
// store_benchmark commit [folder]  what a journalled event takes against the bare SQLite commit of the same
// bytes store_benchmark fill FILE        makes a store of 10,000 units and 100,000 records store_benchmark
// open FILE        opens it, lists what is due, and tells the CPU time of this process for it
#include <sqlite3.h>
#include <sys/resource.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <string>
#include <vector>

#include "engine/procedures/journal.h"
#include "tests/engine/procedures/samples.h"
#include "tests/engine/procedures/technician.h"
#include "tests/engine/store/samples.h"

namespace {

using namespace hingepin;
using namespace hingepin::store;
using namespace hingepin::store::samples;
using procedures::samples::Technician;

using Clock = std::chrono::steady_clock;

double microseconds(Clock::duration duration) {
  return std::chrono::duration<double, std::micro>(duration).count();
}

/// CPU of this process so far, user and system.
double cpu_ms() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  const auto of = [](const timeval& time) {
    return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_usec) * 1e-3;
  };
  return of(usage.ru_utime) + of(usage.ru_stime);
}

double quantile(std::vector<double> values, double share) {
  std::ranges::sort(values);
  return values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1))];
}

double mean(const std::vector<double>& values) {
  double sum = 0;
  for (const double value : values) sum += value;
  return sum / static_cast<double>(values.size());
}

void require(int code, const char* what) {
  if (code != SQLITE_OK && code != SQLITE_DONE) {
    std::fprintf(stderr, "%s: %s\n", what, sqlite3_errstr(code));
    std::exit(EXIT_FAILURE);
  }
}

int commit(const std::string& folder) {
  std::filesystem::create_directories(folder);
  const std::string bare_path = folder + "/bare.sqlite";
  const std::string store_path = folder + "/journal.hingepin";
  for (const std::string& path : {bare_path, store_path}) {
    for (const char* suffix : {"", "-wal", "-shm"}) std::filesystem::remove(path + suffix);
  }

  // The same events for both, done once by somebody honest.
  Technician honest = Technician::onEverything();
  (void)honest.work();
  const std::vector<procedures::Event>& events = honest.journal();
  const std::string text = procedures::samples::everythingText();

  sqlite3* bare = nullptr;
  require(sqlite3_open_v2(("file://" + std::filesystem::absolute(bare_path).string() + "?psow=0").c_str(),
                          &bare, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE | SQLITE_OPEN_URI, nullptr),
          "open");
  // The store's own pragmas.
  require(sqlite3_exec(
              bare,
              "PRAGMA journal_mode = WAL; PRAGMA synchronous = EXTRA; PRAGMA fullfsync = ON; "
              "PRAGMA checkpoint_fullfsync = ON; PRAGMA secure_delete = ON; PRAGMA cell_size_check = ON; "
              "PRAGMA mmap_size = 0; PRAGMA temp_store = MEMORY; PRAGMA journal_size_limit = 4194304; "
              "PRAGMA foreign_keys = ON; "
              "CREATE TABLE event (number INTEGER PRIMARY KEY, text TEXT NOT NULL) STRICT",
              nullptr, nullptr, nullptr),
          "pragmas");
  sqlite3_stmt* insert = nullptr;
  require(sqlite3_prepare_v2(bare, "INSERT INTO event (text) VALUES (?)", -1, &insert, nullptr), "prepare");

  Yard yard(store_path);
  const procedures::Procedure procedure = procedures::samples::procedureOf(text);
  std::vector<double> bare_us, ours_us, ours_cpu_us;
  std::size_t bytes = 0;
  constexpr int kJobs = 40;
  for (int number = 0; number < kJobs; ++number) {
    Job job = yard.job("job-" + std::to_string(number));
    procedures::State state = the(procedures::apply(procedure, {}, events.front(), honest.measure));
    the(yard.store.beginJob(job, procedures::writeEvent(events.front())));
    for (std::size_t sequence = 1; sequence < events.size(); ++sequence) {
      const auto ours = [&] {
        const auto begin = Clock::now();
        const double cpu = cpu_ms();
        procedures::State next = the(procedures::apply(procedure, state, events[sequence], honest.measure));
        const std::string event = procedures::writeEvent(events[sequence]);
        the(yard.store.appendEvent(job.id, static_cast<std::int64_t>(sequence), event));
        state = std::move(next);
        ours_us.push_back(microseconds(Clock::now() - begin));
        ours_cpu_us.push_back((cpu_ms() - cpu) * 1e3);
      };
      const std::string event = procedures::writeEvent(events[sequence]);
      bytes += event.size();
      const auto theirs = [&] {
        const auto begin = Clock::now();
        sqlite3_bind_text(insert, 1, event.data(), static_cast<int>(event.size()), SQLITE_STATIC);
        require(sqlite3_step(insert), "insert");
        sqlite3_reset(insert);
        bare_us.push_back(microseconds(Clock::now() - begin));
      };
      // By turns, so that neither always finds the other's writing under way.
      if ((sequence + static_cast<std::size_t>(number)) % 2 == 0) {
        ours();
        theirs();
      } else {
        theirs();
        ours();
      }
    }
  }
  sqlite3_finalize(insert);
  sqlite3_close(bare);
  std::printf("%zu events of %zu bytes on average\n", ours_us.size(), bytes / ours_us.size());
  std::printf("               median     mean   90 %%   99 %% (us)\n");
  std::printf("bare commit   %8.0f %8.0f %8.0f %8.0f\n", quantile(bare_us, 0.5), mean(bare_us),
              quantile(bare_us, 0.9), quantile(bare_us, 0.99));
  std::printf("journalled    %8.0f %8.0f %8.0f %8.0f\n", quantile(ours_us, 0.5), mean(ours_us),
              quantile(ours_us, 0.9), quantile(ours_us, 0.99));
  std::printf("ratio         %8.3f %8.3f\n", quantile(ours_us, 0.5) / quantile(bare_us, 0.5),
              mean(ours_us) / mean(bare_us));
  std::printf("CPU of a journalled event: %.0f us on average\n", mean(ours_cpu_us));
  return EXIT_SUCCESS;
}

int fill(const std::string& path) {
  constexpr int kUnits = 10000;
  constexpr int kRecordsOfAUnit = 10;
  Yard yard(path);
  const records::SecretKey key = records::keyOf(1);
  records::Phone phone{.key = records::keyOf(1)};
  // Straight into the tables after the first of each kind: 100,000 durable commits would take hours, and what
  // is measured is reading.
  const std::string note(2000, 'n');
  sqlite3* raw = nullptr;
  require(sqlite3_open(path.c_str(), &raw), "open");
  require(sqlite3_exec(raw, "PRAGMA synchronous = OFF; BEGIN", nullptr, nullptr, nullptr), "begin");
  sqlite3_stmt *unit = nullptr, *pair = nullptr, *statement = nullptr;
  require(sqlite3_prepare_v2(raw, "INSERT INTO unit (id, profile) VALUES (?, ?)", -1, &unit, nullptr),
          "prepare");
  require(sqlite3_prepare_v2(raw,
                             "INSERT INTO pair (unit, attachment, record, due_utc_ms, restrictions) "
                             "VALUES (?, 'bucket-3', ?, ?, ?)",
                             -1, &pair, nullptr),
          "prepare");
  require(sqlite3_prepare_v2(
              raw,
              "INSERT INTO statement (name, kind, key, epoch, sequence, sealed_utc_ms, unit, text) "
              "VALUES (?, 'record', ?, ?, ?, ?, ?, ?)",
              -1, &statement, nullptr),
          "prepare");
  const auto text = [](sqlite3_stmt* query, int column, const std::string& value) {
    sqlite3_bind_text(query, column, value.data(), static_cast<int>(value.size()), SQLITE_TRANSIENT);
  };
  const auto write = [](sqlite3_stmt* query) {
    require(sqlite3_step(query), "insert");
    sqlite3_reset(query);
  };
  const std::string profile = R"({"demo":true,"monitor":")" + std::string(600, 'm') + "\"}";
  for (int number = 0; number < kUnits; ++number) {
    const std::string id = "unit-" + std::to_string(number);
    text(unit, 1, id);
    text(unit, 2, profile);
    write(unit);
    std::string name;
    for (int record = 0; record < kRecordsOfAUnit; ++record) {
      const std::int64_t sealed_utc_ms = phone.now;
      const records::SealedStatement sealed = phone.record(note);
      name = sealed.name;
      text(statement, 1, sealed.name);
      text(statement, 2, key.id());
      text(statement, 3, phone.epoch);
      sqlite3_bind_int64(statement, 4, phone.head->sequence);
      sqlite3_bind_int64(statement, 5, sealed_utc_ms);
      text(statement, 6, id);
      text(statement, 7, sealed.text);
      write(statement);
    }
    text(pair, 1, id);
    text(pair, 2, name);
    // A twentieth of all is due.
    sqlite3_bind_int64(pair, 3, kNow + (number % 20 == 0 ? -number : 1 + number));
    text(pair, 4, number % 7 == 0 ? R"(["cold-oil"])" : "[]");
    write(pair);
  }
  for (sqlite3_stmt* query : {unit, pair, statement}) sqlite3_finalize(query);
  require(sqlite3_exec(raw, "COMMIT", nullptr, nullptr, nullptr), "commit");
  sqlite3_close(raw);
  std::printf("%zu findings\n", the(yard.store.check()).size());
  return EXIT_SUCCESS;
}

int open(const std::string& path) {
  const double before = cpu_ms();
  const auto begin = Clock::now();
  const Store store = opened(path);
  const double opened_at = cpu_ms();
  const std::vector<Pair> due = the(store.due(kNow));
  const double after = cpu_ms();
  const double wall_ms = microseconds(Clock::now() - begin) * 1e-3;
  const double all_before = after;
  const std::vector<Pair> all = the(store.due(kNow + 1000000));
  std::printf(
      "%zu due: %.1f ms CPU (%.1f ms opening; %.1f ms the process so far), %.1f ms wall; all %zu pairs: %.1f "
      "ms CPU\n",
      due.size(), after - before, opened_at - before, after, wall_ms, all.size(), cpu_ms() - all_before);
  return EXIT_SUCCESS;
}

}  // namespace

int main(int count, char** arguments) {
  const std::string what = count > 1 ? arguments[1] : "";
  if (what == "commit") return commit(count > 2 ? arguments[2] : ".");
  if (what == "fill" && count > 2) return fill(arguments[2]);
  if (what == "open" && count > 2) return open(arguments[2]);
  std::fputs("store_benchmark commit [FOLDER] | fill FILE | open FILE\n", stderr);
  return EXIT_FAILURE;
}
