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

#include "engine/far_side/curl_client.h"
#include "engine/far_side/s3.h"
#include "engine/far_side/webdav.h"
#include "tests/engine/far_side/faulty_line.h"
#include "tests/engine/far_side/servers/server.h"
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

struct Place {
  const Trial& trial;
  std::string url;
  std::string ca_file;

  [[nodiscard]] Remote remote(LineFaults& faults, Random& random, std::int64_t now_utc_ms) const {
    const bool is_s3 = trial.kind == "s3";
    const HttpClient client = overFaultyLine(
        curlClient({.user = is_s3 ? "" : "technician", .secret = "demo password", .ca_file = ca_file}),
        faults, random);
    Remote remote = is_s3 ? s3(client,
                               {.endpoint = url,
                                .bucket = "fleet",
                                .prefix = "yard/",
                                .key = {"yard:technician", "demo-secret", "us-east-1"}},
                               [now_utc_ms] { return now_utc_ms; })
                          : webdav(client, url);
    return patient(std::move(remote), {.most_tries = 3,
                                       .first_ms = 2,
                                       .most_ms = 20,
                                       .jitter = [&random] { return random.uniform(); },
                                       .wait =
                                           [](std::int64_t ms) {
                                             ::usleep(static_cast<useconds_t>(ms) * 1000);
                                             return true;
                                           }});
  }
};

std::int64_t nowMs() {
  return std::chrono::duration_cast<std::chrono::milliseconds>(
             std::chrono::system_clock::now().time_since_epoch())
      .count();
}

int run(const Trial& trial) {
  const Folder scratch;
  const std::string base = trial.folder.empty() ? scratch.file("trial") : trial.folder;
  std::filesystem::create_directories(base);
  const Server server(trial.kind == "s3" ? "swift.sh" : "apache.sh", base + "/server");
  if (!server.runs()) {
    std::fputs(server.isMissing() ? "The server is not installed.\n" : "The server did not start.\n", stderr);
    return EXIT_FAILURE;
  }
  const Place place{trial,
                    trial.kind == "s3" ? "http://127.0.0.1:" + std::to_string(server.port())
                                       : "https://localhost:" + std::to_string(server.port()) + "/share",
                    trial.kind == "s3" ? "" : base + "/server/ca.pem"};
  Random random(trial.seed);
  LineFaults faults;
  if (trial.kind == "s3") {
    // Swift's ports open one after the other.
    for (int tries = 0; tries < 100; ++tries) {
      const HttpRequest make_bucket{.method = "PUT", .url = ""};
      const auto made = s3(
          [&](std::span<const HttpRequest> requests) {
            std::vector<HttpRequest> put(requests.begin(), requests.end());
            return curlClient({})(put);
          },
          {.endpoint = place.url, .bucket = "fleet", .key = {"yard:technician", "demo-secret", "us-east-1"}},
          nowMs);
      const std::vector<Upload> bucket = {{.name = "", .bytes = "", .replace = true}};
      if (made.put(bucket).front()) break;
      ::usleep(500'000);
    }
  }

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
      const std::int64_t jobs = std::min<std::int64_t>(1 + static_cast<std::int64_t>(random.bits() % 12),
                                                       trial.jobs - std::ssize(made));
      for (std::int64_t job = 0; job < jobs; ++job) {
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
        static_cast<void>(phone->exchangeWith(place.remote(line, line_random, nowMs() + absent.clock_ms)));
      }
      std::ofstream out(tally, std::ios::app);
      for (const std::int64_t count : line.count) out << count << ' ';
      out << line.requests << '\n';
      out.close();
      ::_exit(0);
    }
    if (to_be_killed) {
      ::usleep(static_cast<useconds_t>(random.bits() % 250'000));
      if (::kill(child, SIGKILL) == 0) ++killed;
    }
    ::waitpid(child, nullptr, 0);
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
      const Outcome outcome = phone->exchangeWith(place.remote(faults, random, nowMs() + absent.clock_ms));
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
  app.add_option("--rate", trial.fault_rate, "of each kind of fault, a request");
  app.add_option("--seed", trial.seed);
  app.add_option("--kind", trial.kind, "webdav or s3")->check(CLI::IsMember({"webdav", "s3"}));
  app.add_option("--folder", trial.folder, "where all of it is kept");
  CLI11_PARSE(app, count, arguments);
  return run(trial);
}
