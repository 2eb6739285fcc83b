// SPDX-License-Identifier: Apache-2.0
// Many phones, a real server, a line that does everything wrong; phones are killed in mid-flight and one is
// restored from a backup. In the end all stores have to hold the same set. Run by hand: see
// tests/benchmarks/RESULTS.md.
#include <fmt/format.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <set>

#include "tests/engine/far_side/faulty_line.h"
#include "tests/engine/far_side/servers/real.h"
#include "tests/engine/sync/far_side.h"

namespace {

using namespace hingepin;
using namespace hingepin::sync;
using namespace hingepin::sync::samples;
using namespace hingepin::far_side;
using namespace hingepin::far_side::samples;

struct Trial {
  int phones = 20;
  int jobs = 10000;
  std::uint64_t most_jobs = 12;  ///< done on a phone between two exchanges
  double logs = 1.0;             ///< share of jobs with a log as evidence
  double fault_rate = 0.06;
  std::uint64_t seed = 1;
  std::string kind = "webdav";
  std::string folder = "";
};

/// A phone between two doings: its store is closed, so that a process of its own can open it and be killed.
struct Absent {
  std::string path;
  std::uint64_t number = 0;
  std::uint64_t lives = 0;
  std::optional<records::Head> head{};
  std::int64_t clock_ms = 0;  ///< how far its clock is off
};

/// The real server over a line with faults, by a clock that may be wrong.
Remote remoteOver(const RealServer& server, LineFaults& faults, Random& random, std::int64_t clock_ms) {
  const HttpClient client = overFaultyLine(server.client(), faults, random);
  return patient(server.remote(client, server.secret(), [clock_ms] { return nowMs() + clock_ms; }),
                 {.most_tries = 3,
                  .first_ms = 2,
                  .most_ms = 20,
                  .jitter = [&random] { return random.uniform(); },
                  .wait =
                      [](std::int64_t ms) {
                        ::usleep(static_cast<useconds_t>(ms) * 1000);
                        return true;
                      }});
}

int run(const Trial& trial) {
  const Folder scratch;
  const std::string base = trial.folder.empty() ? scratch.file("") : trial.folder;
  std::filesystem::create_directories(base);
  const RealServer server(trial.kind, base + "/server");
  if (!server.runs()) {
    fmt::print(stderr, "{} are needed, or did not start.\n", server.packages());
    return EXIT_FAILURE;
  }
  Random random(trial.seed);
  LineFaults faults;

  // The yard: one list with all keys. Phones are opened one at a time.
  std::vector<Absent> phones;
  records::SignersList list{.yard_key = records::keyOf(3).publicKey()};
  {
    const Folder unused;
    for (int number = 0; number < trial.phones; ++number) {
      list.signers.push_back({.key = records::keyOf(1000 + static_cast<std::uint64_t>(number)).publicKey(),
                              .role = "technician",
                              .valid_from_utc_ms = 0});
      phones.push_back({.path = base + "/phone-" + std::to_string(number),
                        .number = static_cast<std::uint64_t>(number),
                        // Clocks are off by years, both ways.
                        .clock_ms = static_cast<std::int64_t>(random.uniform(-5.0, 5.0) * 365.25 * 86400e3)});
    }
  }
  const auto signers = the(records::sealSigners(list, records::keyOf(3)));
  const auto open = [&](Absent& absent) {
    auto phone = std::make_unique<Handset>(Handset::At{absent.path}, absent.number);
    if (absent.lives > 0) phone->newDevice(absent.lives);
    phone->pen.head = absent.head;
    phone->pen.now = nowMs() + absent.clock_ms;
    return phone;
  };
  for (Absent& absent : phones) open(absent)->takeYard(signers);

  std::set<std::string> made;
  int killed = 0;
  int restored = 0;
  int exchanges = 0;
  int reported = 0;
  faults.rate = trial.fault_rate;
  const std::string tally = base + "/tally";
  while (std::ssize(made) < trial.jobs) {
    Absent& absent = phones[random.bits() % phones.size()];
    {
      const auto phone = open(absent);
      const std::int64_t jobs = std::min<std::int64_t>(
          1 + static_cast<std::int64_t>(random.bits() % trial.most_jobs), trial.jobs - std::ssize(made));
      for (std::int64_t job = 0; job < jobs; ++job) {
        if (random.uniform() >= trial.logs) {
          made.insert(phone->workWithoutLog());
          continue;
        }
        std::string log = fmt::format("time [s],boom_sensor [V]\n{},{}\n", made.size(), random.uniform());
        if (random.uniform() < 0.002) log += std::string(kPieceBytes + random.bits() % kPieceBytes, 'x');
        const std::string name = phone->work(log);
        made.insert(name);
      }
      absent.head = phone->pen.head;
      if (restored == 0 && std::ssize(made) > trial.jobs / 2) {
        ++restored;
        const std::string backup = absent.path + "-restored";
        the(phone->store->backup(backup));
        absent.path = backup;
        absent.head.reset();
        absent.lives = 1;
      }
    }
    // The exchange runs in a process of its own, which may be killed at any moment.
    ++exchanges;
    const std::uint64_t child_seed = random.bits();
    const bool to_be_killed = random.uniform() < 0.1;
    const pid_t child = ::fork();
    if (child == 0) {
      Random line_random(child_seed);
      LineFaults line = faults;
      line.count = {};
      line.requests = 0;
      {
        const auto phone = open(absent);
        static_cast<void>(phone->exchangeWith(remoteOver(server, line, line_random, absent.clock_ms)));
      }
      std::ofstream out(tally, std::ios::app);
      for (const std::int64_t count : line.count) out << count << ' ';
      out << line.requests << '\n';
      out.close();
      ::_exit(0);
    }
    if (to_be_killed) {
      ::usleep(static_cast<useconds_t>(random.bits() % 250'000));
      ::kill(child, SIGKILL);
    }
    int status = 0;
    ::waitpid(child, &status, 0);
    if (WIFSIGNALED(status)) ++killed;  // one that had ended before was not
    if (std::ssize(made) / 1000 > reported) {
      reported = static_cast<int>(std::ssize(made) / 1000);
      fmt::print("{} jobs, {} exchanges\n", made.size(), exchanges);
      std::fflush(stdout);
    }
  }

  std::ifstream in(tally);
  for (std::int64_t number = 0, column = 0; in >> number; column = (column + 1) % (LineFaults::kKinds + 1)) {
    (column == LineFaults::kKinds ? faults.requests : faults.count[static_cast<std::size_t>(column)]) +=
        number;
  }
  std::int64_t sum = 0;
  fmt::print("\n{} phones, {} jobs, {} exchanges, {} requests; {} killed, {} restored\n", trial.phones,
             made.size(), exchanges, faults.requests, killed, restored);
  for (int kind = 0; kind < LineFaults::kKinds; ++kind) {
    fmt::print("{:28} {:8}\n", LineFaults::kNames[static_cast<std::size_t>(kind)],
               faults.count[static_cast<std::size_t>(kind)]);
    sum += faults.count[static_cast<std::size_t>(kind)];
  }
  fmt::print("{:28} {:8}\n", "faults in all", sum);

  // The line is mended.
  faults.rate = 0.0;
  int rounds = 0;
  for (bool quiet = false; !quiet && rounds < 8; ++rounds) {
    quiet = true;
    for (Absent& absent : phones) {
      const auto phone = open(absent);
      const Outcome outcome = phone->exchangeWith(remoteOver(server, faults, random, absent.clock_ms));
      const Progress& done = outcome.progress;
      if (outcome.stopped) fmt::print("stopped: {}\n", outcome.stopped->message.code);
      quiet = quiet && !outcome.stopped &&
              done.parcels_sent + done.parcels_received + done.evidence_received == 0;
    }
  }
  int wrong = 0;
  const std::vector<std::string> expected(made.begin(), made.end());
  for (Absent& absent : phones) {
    const auto phone = open(absent);
    const std::vector<std::string> here = sortedNames(*phone->store);
    const std::size_t held = the(inQuarantine(*phone->store)).size();
    const std::size_t waiting = the(phone->store->waiting()).size();
    const std::size_t awaited = the(phone->store->awaitedOnOffer()).size();
    const std::size_t found = the(phone->store->check()).size();
    if (here == expected && held + waiting + awaited + found == 0) continue;
    ++wrong;
    fmt::print(
        "phone {}: {} records of {}, {} in quarantine, {} waiting, {} awaited, {} findings of the store\n",
        absent.number, here.size(), expected.size(), held, waiting, awaited, found);
  }
  fmt::print("{} rounds after the line was mended; stores that do not hold the same set: {}\n", rounds,
             wrong);
  return wrong == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}

}  // namespace

int main(int count, char** arguments) {
  Trial trial;
  CLI::App app{"Many phones, a real server and a line with faults."};
  app.add_option("--phones", trial.phones);
  app.add_option("--jobs", trial.jobs);
  app.add_option("--most-jobs", trial.most_jobs, "on one phone between two exchanges")
      ->check(CLI::PositiveNumber);
  app.add_option("--logs", trial.logs, "share of jobs with a log as evidence");
  app.add_option("--rate", trial.fault_rate, "of each kind of fault, a request");
  app.add_option("--seed", trial.seed);
  app.add_option("--kind", trial.kind, "webdav or s3")->check(CLI::IsMember({"webdav", "s3"}));
  app.add_option("--folder", trial.folder, "where all of it is kept");
  CLI11_PARSE(app, count, arguments);
  return run(trial);
}
