// SPDX-License-Identifier: Apache-2.0
// A first push beside `curl --parallel` for the same objects, an exchange with nothing new, and the memory of
// a large pull, with a real Apache httpd over TLS. Run by hand: see tests/benchmarks/RESULTS.md.
#include <fmt/format.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <fstream>

#include "tests/engine/far_side/servers/real.h"
#include "tests/engine/far_side/servers/slow_line.h"
#include "tests/engine/sync/far_side.h"

namespace {

using namespace hingepin;
using namespace hingepin::far_side;
using namespace hingepin::far_side::samples;
using namespace hingepin::sync;
using namespace hingepin::sync::samples;

double seconds(const timeval& time) {
  return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_usec) * 1e-6;
}

double cpu_s() {
  rusage usage{};
  ::getrusage(RUSAGE_SELF, &usage);
  return seconds(usage.ru_utime) + seconds(usage.ru_stime);
}

double wall_s() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

double peak_MiB() {
  rusage usage{};
  ::getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024;
}

/// In a process of its own, so that its peak of memory is its own.
template <class Act>
void apart(Act act) {
  std::fflush(stdout);
  const pid_t child = ::fork();
  if (child == 0) {
    act();
    std::fflush(stdout);
    ::_exit(0);
  }
  ::waitpid(child, nullptr, 0);
}

void fill(Handset& phone, int records) {
  auto batch = the(phone.store->beginBatch());
  const std::string readings(4000, '7');
  for (int number = 0; number < records; ++number) {
    const auto sealed = phone.pen.sealNext(
        records::Record{.envelope = phone.pen.next(),
                        .content = records::jsonObject({{"number", records::jsonInteger(number)},
                                                        {"readings", records::jsonString(readings)}})});
    the(phone.store->putStatement({.name = sealed.name, .text = sealed.text}, kNow));
  }
  the(batch.commit());
}

}  // namespace

int main(int count, char** arguments) {
  const int first_push = count > 1 ? std::atoi(arguments[1]) : 10'000;
  const int large = count > 2 ? std::atoi(arguments[2]) : 100'000;
  const sync::samples::Folder folder;
  const RealServer server("webdav", folder.file("server"));
  if (!server.runs()) {
    fmt::print(stderr, "{} are needed.\n", server.packages());
    return EXIT_FAILURE;
  }
  // In Mbit/s, 0 for no limit: on one computer the server takes half of the processor, on a line it does not.
  const int line_rate = count > 3 ? std::atoi(arguments[3]) : 0;
  std::unique_ptr<SlowLine> line;
  if (line_rate > 0) line = std::make_unique<SlowLine>(server.port(), line_rate * 1e6 / 8);
  const std::string url =
      line ? "https://localhost:" + std::to_string(line->port()) + "/share" : server.url();
  const std::string ca = server.caFile();
  std::int64_t requests = 0;
  const auto remote = [&] {
    const HttpClient counted = [&requests, client = server.client()](std::span<const HttpRequest> asked) {
      requests += std::ssize(asked);
      return client(asked);
    };
    return patient(webdav(counted, url), noWait());
  };
  auto yard = phones(folder, 3);

  fill(*yard[0], first_push);
  yard[0]->reopen();
  double begun = wall_s();
  const double cpu = cpu_s();
  const Outcome pushed = yard[0]->exchangeWith(remote());
  const double pushed_s = wall_s() - begun;
  if (pushed.stopped) std::fputs("The push stopped.\n", stderr);
  fmt::print(
      "first push of {} records: {} parcels, {} requests, {:.1f} MiB in {:.2f} s ({:.1f} MiB/s), {:.2f} s of "
      "CPU\n",
      first_push, pushed.progress.parcels_sent, requests,
      static_cast<double>(pushed.progress.bytes_sent) / 1048576, pushed_s,
      static_cast<double>(pushed.progress.bytes_sent) / 1048576 / pushed_s, cpu_s() - cpu);

  // The same objects by curl, into another folder of the share.
  const Remote there = remote();
  const std::string local = folder.file("objects");
  std::filesystem::create_directories(local);
  std::string config = fmt::format(
      "parallel\nparallel-max = 8\nsilent\ncacert = \"{}\"\nuser = \"technician:demo password\"\n", ca);
  const std::vector<Upload> dummy = {{.name = "curl/x", .bytes = "x"}};
  static_cast<void>(there.put(dummy));
  int number = 0;
  for (std::int64_t bucket = 0; bucket * kPlacesInFolder <= pushed.progress.parcels_sent; ++bucket) {
    const std::string name = parcelFolder(yard[0]->source(), bucket * kPlacesInFolder);
    for (const Listed& each : the(there.list(name))) {
      const std::vector<std::string> names = {name + "/" + each.name};
      const std::string file = local + "/" + std::to_string(number);
      std::ofstream(file, std::ios::binary) << the(there.get(names).front());
      config += fmt::format("upload-file = \"{}\"\nurl = \"{}/curl/{}\"\n", file, url, number++);
    }
  }
  std::ofstream(folder.file("curl.conf")) << config;
  begun = wall_s();
  const int status = std::system(("curl --config " + folder.file("curl.conf") + " >/dev/null").c_str());
  const double curl_s = wall_s() - begun;
  fmt::print(
      "curl --parallel for the same {} objects: {:.2f} s (status {}); the push ran at {:.0f} % of its rate\n",
      number, curl_s, status, 100 * curl_s / pushed_s);

  const auto pull = [&] {
    for (const auto& phone : yard) phone->store.reset();
    apart([&] {
      yard[2]->reopen();
      const double before = cpu_s();
      const double wall = wall_s();
      const Outcome pulled = yard[2]->exchangeWith(remote());
      fmt::print("pull of {} records: {:.1f} MiB in {:.1f} s, {:.1f} s of CPU, peak memory {:.0f} MiB\n",
                 pulled.progress.statements_received,
                 static_cast<double>(pulled.progress.bytes_received) / 1048576, wall_s() - wall,
                 cpu_s() - before, peak_MiB());
    });
  };
  pull();
  yard[1]->reopen();
  fill(*yard[1], large);
  static_cast<void>(yard[1]->exchangeWith(remote()));
  pull();
  apart([&] {
    yard[2]->reopen();
    fmt::print("{} records are there\n", the(yard[2]->store->statementNames()).size());
    const Remote far = remote();
    static_cast<void>(yard[2]->exchangeWith(far));
    for (const bool fresh : {false, true}) {
      double sum = 0;
      requests = 0;
      constexpr int kTimes = 20;
      for (int time = 0; time < kTimes; ++time) {
        const double before = cpu_s();
        static_cast<void>(yard[2]->exchangeWith(fresh ? remote() : far));
        sum += cpu_s() - before;
      }
      fmt::print("nothing new, {}: {:.2f} ms of CPU, {:.2f} requests\n",
                 fresh ? "with a new connection" : "on an open connection", sum / kTimes * 1000,
                 static_cast<double>(requests) / kTimes);
    }
  });
  return EXIT_SUCCESS;
}
