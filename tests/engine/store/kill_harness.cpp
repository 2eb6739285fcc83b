// SPDX-License-Identifier: Apache-2.0
// Kills a process that runs jobs, at random moments: kill_harness <kills> [seed] [folder]
// The child does jobs of the library as an honest person would and says through a pipe what the store has
// acknowledged. The parent kills it (SIGKILL), opens the store and compares.
#include <signal.h>
#include <sys/types.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "engine/base/random.h"
#include "engine/procedures/journal.h"
#include "engine/procedures/library.h"
#include "engine/records/encoding.h"
#include "tests/engine/procedures/samples.h"
#include "tests/engine/procedures/technician.h"
#include "tests/engine/store/samples.h"

namespace {

using namespace hingepin;
using namespace hingepin::store;
using namespace hingepin::store::samples;
using procedures::samples::Technician;

constexpr const char* kUsage = "kill_harness <kills> [seed] [folder]\n";

/// A job that somebody honest has done in memory: what the child puts into the store.
struct Done {
  std::string procedure_id;
  std::string procedure;  ///< text
  std::vector<std::string> events;
};

/// The jobs of library and sample, each as far as an honest person comes.
std::vector<Done> doneJobs() {
  std::vector<Done> jobs;
  const auto work = [&jobs](Technician technician, std::string text) {
    (void)technician.work();
    Done job{technician.procedure().id, std::move(text), {}};
    for (const procedures::Event& event : technician.journal())
      job.events.push_back(procedures::writeEvent(event));
    if (job.events.size() > 3) jobs.push_back(std::move(job));
  };
  work(Technician::onEverything(), procedures::samples::everythingText());
  for (const procedures::LibraryEntry& entry : procedures::library()) {
    procedures::Procedure procedure = procedures::samples::procedureOf(std::string(entry.text));
    const std::string variant = procedure.variants.empty() ? "" : procedure.variants.front().id;
    Technician technician(std::move(procedure), variant);
    for (const auto& needed : technician.procedure().prerequisites) {
      technician.options.completed.push_back({needed.procedure, 1000});
    }
    for (const auto& entry_of_unit : technician.procedure().entries) {
      if (entry_of_unit.standard.empty()) {
        technician.options.entries[entry_of_unit.id] = "1 " + entry_of_unit.unit;
      }
    }
    for (const procedures::Step& step : technician.procedure().steps) {
      if (step.kind != procedures::StepKind::Reading) continue;
      const procedures::Limits& limits = step.accept ? *step.accept : step.plausible;
      for (const auto& limit : {step.plausible.low, limits.high, limits.low}) {
        if (limit && limit->entry.empty()) technician.says[step.id] = limit->text;
      }
    }
    work(std::move(technician), std::string(entry.text));
  }
  return jobs;
}

void say(int pipe, const std::string& line) {
  const std::string text = line + "\n";
  if (::write(pipe, text.data(), text.size()) != static_cast<ssize_t>(text.size())) ::_exit(3);
}

/// What every process of the harness can work out again: the jobs' names and records.
StoredStatement recordOf(const records::SecretKey& key, const std::optional<records::Head>& head,
                         const std::string& job, const std::string& procedure) {
  const records::Record record{
      .envelope = {.place = records::nextPlace(head, key.id(), key.id(), records::epochOf(7)),
                   .role = "technician",
                   .sealed_utc_ms = kNow},
      .content = records::jsonObject(
          {{"job", records::jsonString(job)}, {"procedure", records::jsonString(procedure)}})};
  return stored(records::sealStatement(record, key).value(), job, kUnit.id);
}

/// Goes on where the store is, until it is killed.
[[noreturn]] void child(const std::string& path, std::uint64_t seed, int pipe,
                        const std::vector<Done>& done) {
  try {
    Random random(seed);
    const records::SecretKey key = records::keyOf(1);
    Yard yard(path);
    Store& store = yard.store;
    say(pipe, "open");
    while (true) {
      const std::vector<Job> running = the(store.jobsRunning());
      const auto pick = static_cast<std::size_t>(random.bits());
      if (running.empty() || (running.size() < 3 && random.uniform() < 0.02)) {
        const Done& next = done[pick % done.size()];
        Job job = yard.job("job-" + std::to_string(the(store.jobs()).size()));
        job.procedure_id = next.procedure_id;
        job.procedure = the(store.putBlob(next.procedure, "application/json"));
        the(store.beginJob(job, next.events.front()));
        say(pipe, "event " + job.id + " 0");
        continue;
      }
      const Job& job = running[pick % running.size()];
      const Done& events = *std::ranges::find(done, job.procedure_id, &Done::procedure_id);
      std::size_t next = the(store.journal(job.id)).size();
      for (int more = 0; more < 20 && next < events.events.size(); ++more, ++next) {
        if (random.uniform() < 0.03) {
          const std::string photo(static_cast<std::size_t>(random.uniform(0, 300000)),
                                  static_cast<char>(random.bits()));
          say(pipe, "blob " + the(store.putBlob(photo, "image/jpeg")));
        }
        the(store.appendEvent(job.id, static_cast<std::int64_t>(next), events.events[next]));
        say(pipe, "event " + job.id + " " + std::to_string(next));
      }
      if (next < events.events.size()) continue;
      const auto head = the(store.head(key.id(), records::epochOf(7)));
      const Ending ending{.job = job.id,
                          .phase = "done",
                          .record = recordOf(key, head, job.id, job.procedure),
                          .pair = Pair{.unit = kUnit.id, .attachment = kBucket.id, .due_utc_ms = kNow},
                          .now_utc_ms = kNow};
      the(store.endJob(ending));
      say(pipe, "end " + job.id + " " + ending.record.name);
    }
  } catch (const std::exception& wrong) {
    say(pipe, std::string("wrong ") + wrong.what());
  }
  ::_exit(2);
}

/// All that was ever acknowledged.
struct Acknowledged {
  std::map<std::string, std::size_t> events;  ///< by job: how many
  std::map<std::string, std::string> ended;   ///< by job: its record
  std::set<std::string> blobs;
  bool opened = false;
};

/// @return what is wrong
std::string take(Acknowledged& acknowledged, const std::string& line) {
  char what[16], job[80], more[80] = "";
  if (line == "open") {
    acknowledged.opened = true;
    return "";
  }
  if (std::sscanf(line.c_str(), "%15s %79s %79s", what, job, more) < 2) return "said: " + line;
  const std::string kind = what;
  if (kind == "event") {
    acknowledged.events[job] = static_cast<std::size_t>(std::atoi(more)) + 1;
  } else if (kind == "end") {
    acknowledged.ended[job] = more;
  } else if (kind == "blob") {
    acknowledged.blobs.insert(job);
  } else {
    return "said: " + line;
  }
  return "";
}

/// Opens the store and compares. What it shows has to stay from now on. @return what is wrong
std::string compare(const std::string& path, Acknowledged& acknowledged, const std::vector<Done>& done,
                    std::int64_t& unanswered) {
  const auto opened = Store::open(path);
  if (!opened) return "does not open: " + opened.error().message.code;
  const Store& store = *opened;
  std::int64_t beyond = 0;
  std::set<std::string> there;
  for (const Job& job : the(store.jobs())) {
    there.insert(job.id);
    const std::vector<std::string> journal = the(store.journal(job.id));
    const Done& events = *std::ranges::find(done, job.procedure_id, &Done::procedure_id);
    if (journal.empty() || journal.size() > events.events.size() ||
        !std::equal(journal.begin(), journal.end(), events.events.begin())) {
      return "half an event in " + job.id;
    }
    const auto known = acknowledged.events.find(job.id);
    const std::size_t least = known == acknowledged.events.end() ? 0 : known->second;
    if (journal.size() < least) return "lost events of " + job.id;
    beyond += static_cast<std::int64_t>(journal.size() - least);
    const auto ended = acknowledged.ended.find(job.id);
    if (known == acknowledged.events.end() || least < journal.size())
      acknowledged.events[job.id] = journal.size();
    if (ended != acknowledged.ended.end() && ended->second != job.record) return "lost the end of " + job.id;
    if (job.phase == "running") {
      // The job goes on: its journal replays to a state.
      const procedures::Procedure procedure = procedures::samples::procedureOf(events.procedure);
      std::vector<procedures::Event> replayed;
      for (const std::string& event : journal)
        replayed.push_back(the(procedures::readEvent(event, "journal")));
      const auto state = procedures::replay(procedure, replayed,
                                            [](const auto&, auto) -> Expected<double> { return 1.0e5; });
      if (!state) return "does not replay: " + job.id + " " + state.error().message.code;
    } else {
      if (ended == acknowledged.ended.end()) {
        ++beyond;
        acknowledged.ended[job.id] = job.record;
      }
      const auto record = the(store.statement(job.record));
      if (!record || record->job != job.id) return "half an end of " + job.id;
      const auto waiting = the(store.waiting());
      if (std::ranges::none_of(waiting, [&](const Waiting& each) { return each.name == job.record; })) {
        return "not queued: the record of " + job.id;
      }
    }
  }
  for (const auto& [job, events] : acknowledged.events) {
    if (!there.contains(job)) return "lost " + job;
  }
  for (const std::string& hash : acknowledged.blobs) {
    if (!the(store.hasBlob(hash))) return "lost a blob";
  }
  if (beyond > 1) return "more than one event that nobody acknowledged";
  unanswered += beyond;
  const auto findings = the(store.check());
  if (!findings.empty()) return "check: " + findings.front().message.code;
  return "";
}

}  // namespace

int main(int count, char** arguments) {
  if (count < 2) {
    std::fputs(kUsage, stderr);
    return EXIT_FAILURE;
  }
  const int kills = std::atoi(arguments[1]);
  const std::uint64_t seed = count > 2 ? std::strtoull(arguments[2], nullptr, 10) : 1;
  const Folder folder;
  if (count > 3) std::filesystem::create_directories(arguments[3]);
  const std::string path = count > 3 ? std::string(arguments[3]) + "/killed.hingepin" : folder.file();
  const std::vector<Done> done = doneJobs();
  for (const Done& job : done) std::printf("%s: %zu events\n", job.procedure_id.c_str(), job.events.size());
  Random random(seed);
  Acknowledged acknowledged;
  std::int64_t events = 0, ends = 0, blobs = 0, unanswered = 0, while_opening = 0, log_left = 0;
  for (int kill = 0; kill < kills; ++kill) {
    if (kill % 50 == 0) {  // a young store again, so that it is also killed while it is made
      for (const char* suffix : {"", "-wal", "-shm", "-journal"}) std::filesystem::remove(path + suffix);
      acknowledged = {};
    }
    int ends_of_pipe[2];
    if (::pipe(ends_of_pipe) != 0) return EXIT_FAILURE;
    const std::uint64_t child_seed = random.bits();
    std::fflush(stdout);
    const pid_t process = ::fork();
    if (process == 0) {
      ::close(ends_of_pipe[0]);
      child(path, child_seed, ends_of_pipe[1], done);
    }
    ::close(ends_of_pipe[1]);
    // From at once (while it is made or opened) to long after: evenly on a logarithmic scale, 0.1 ms to 0.4
    // s.
    const double delay_us = 100.0 * std::pow(4000.0, random.uniform());
    ::usleep(static_cast<useconds_t>(delay_us));
    ::kill(process, SIGKILL);
    int status = 0;
    ::waitpid(process, &status, 0);
    std::string said;
    char buffer[4096];
    for (ssize_t size = 0; (size = ::read(ends_of_pipe[0], buffer, sizeof buffer)) > 0;) {
      said.append(buffer, static_cast<std::size_t>(size));
    }
    ::close(ends_of_pipe[0]);
    acknowledged.opened = false;
    std::string wrong = WIFSIGNALED(status) ? "" : "the child ended by itself";
    for (std::size_t begin = 0, end = 0; (end = said.find('\n', begin)) != std::string::npos;
         begin = end + 1) {
      const std::string line = said.substr(begin, end - begin);
      if (wrong.empty()) wrong = take(acknowledged, line);
      events += line.starts_with("event ") ? 1 : 0;
      ends += line.starts_with("end ") ? 1 : 0;
      blobs += line.starts_with("blob ") ? 1 : 0;
    }
    while_opening += acknowledged.opened ? 0 : 1;
    std::error_code none;
    log_left += std::filesystem::file_size(path + "-wal", none) > 0 && !none ? 1 : 0;
    if (wrong.empty()) {
      try {
        wrong = compare(path, acknowledged, done, unanswered);
      } catch (const std::exception& thrown) {
        wrong = thrown.what();
      }
    }
    if (!wrong.empty()) {
      std::printf("kill %d of seed %llu: %s (%s)\n", kill, static_cast<unsigned long long>(seed),
                  wrong.c_str(), path.c_str());
      return EXIT_FAILURE;
    }
  }
  std::printf(
      "%d kills (%lld before the store was open, %lld with a log left behind): %lld events, %lld ends of "
      "jobs and "
      "%lld blobs acknowledged, %lld done but not acknowledged, 0 lost\n",
      kills, static_cast<long long>(while_opening), static_cast<long long>(log_left),
      static_cast<long long>(events), static_cast<long long>(ends), static_cast<long long>(blobs),
      static_cast<long long>(unanswered));
  return EXIT_SUCCESS;
}
