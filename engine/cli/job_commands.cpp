// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <thread>
#include <utility>

#include "engine/cli/commands.h"
#include "engine/cli/groups.h"
#include "engine/cli/output.h"
#include "engine/cli/words.h"
#include "engine/folder/files.h"
#include "engine/folder/folder.h"
#include "engine/procedures/journal.h"
#include "engine/procedures/library.h"
#include "engine/records/encoding.h"
#include "engine/session/catalogue.h"
#include "engine/session/job.h"
#include "engine/session/job_record.h"
#include "engine/session/proof_readings.h"
#include "engine/session/script.h"

namespace hingepin::cli {
namespace {

using namespace folder;

namespace fs = std::filesystem;
using procedures::Ask;
using session::OpenJob;

constexpr std::int64_t kHour_ms = 3'600'000;
constexpr const char* kEngine = "hingepin " HINGEPIN_VERSION;

struct JobOptions {
  std::string script;
  std::string job;
  std::string unit;
  bool running = false;
};

/// The clock of a script: its own where it says when it begins, else the computer's, and then it waits.
class Clock {
 public:
  explicit Clock(const session::ScriptHeader& header) : scripted_(header.begun_utc_ms.has_value()) {
    if (!scripted_) return;
    const std::int64_t begun = *header.begun_utc_ms;
    started_utc_ms_ = header.phone_started_utc_ms.value_or(begun - kHour_ms);
    now_utc_ms_ = begun;
  }
  [[nodiscard]] session::Moment now() const {
    if (!scripted_) return momentOfComputer();
    return {.at_ms = now_utc_ms_ - started_utc_ms_,
            .boot = "script-" + session::utcText(started_utc_ms_),
            .utc_ms = now_utc_ms_};
  }
  void pass(std::int64_t time_ms) {
    now_utc_ms_ += time_ms;
    if (!scripted_) std::this_thread::sleep_for(std::chrono::milliseconds(time_ms));
  }
  void restart() { started_utc_ms_ = now_utc_ms_; }
  [[nodiscard]] bool isSound() const { return !scripted_ || started_utc_ms_ <= now_utc_ms_; }

 private:
  bool scripted_;
  std::int64_t started_utc_ms_ = 0;
  std::int64_t now_utc_ms_ = 0;
};

std::string sayCaution(const OpenJob& job, const std::string& id, UnitSystem system) {
  const procedures::Caution* const caution = procedures::findCaution(job.procedure, id);
  if (caution == nullptr) return id;
  const auto say = [&](const std::string& code) { return session::say(job.words, {code, {}}, system); };
  return say(caution->hazard) + " " + say(caution->consequence) + " " + say(caution->avoidance);
}

/// Where a job is and what it waits for.
std::string sayWhere(const OpenJob& job, UnitSystem system) {
  const procedures::Prompt asked = procedures::prompt(job.procedure, job.state);
  const auto say = [&](const std::string& code) {
    return session::say(session::englishCatalogue(), {code, {{"step", asked.about}}}, system);
  };
  std::string words;
  if (!asked.caution.empty()) {
    words = sayCaution(job, asked.caution, system);
  } else if (!asked.text.code.empty()) {
    words = session::say(job.words, asked.text, system);
  }
  switch (asked.ask) {
    case Ask::Nothing:
      return say(job.job.record.empty() ? "job-waits-for-its-seal" : "job-has-ended");
    case Ask::Resume:
      return say("job-waits-to-go-on") + "\n  " + session::awaitedLine(job.procedure, job.state);
    default:
      return say("job-waits-at") + "\n  " + words + "\n  " + session::awaitedLine(job.procedure, job.state);
  }
}

class ScriptRun {
 public:
  ScriptRun(const Common& common, Folder& folder, const session::Script& script, std::string path)
      : common_(common), folder_(folder), script_(script), path_(std::move(path)), clock_(script.header) {}

  int run(const std::string& continued);

 private:
  [[nodiscard]] int complainAt(Error error, std::size_t line) const {
    if (error.place.file.empty() || error.place.line == 0) error.place = {.file = path_, .line = line};
    return complain(error, common_.system);
  }
  [[nodiscard]] Expected<std::string> beside(const std::string& file) const {
    return readFile((fs::path(path_).parent_path() / file).string());
  }
  [[nodiscard]] Expected<OpenJob> begin();
  [[nodiscard]] Expected<void> take(OpenJob& job, const session::ScriptLine& line);
  int finish(OpenJob& job, const std::string& passphrase);
  [[nodiscard]] Expected<records::SecretKey> keyOf(const std::string& id,
                                                   const std::string& passphrase) const;

  const Common& common_;
  Folder& folder_;
  const session::Script& script_;
  std::string path_;
  Clock clock_;
  std::map<std::string, std::string> key_of_;
};

Expected<records::SecretKey> ScriptRun::keyOf(const std::string& id, const std::string& passphrase) const {
  for (const auto& [name, key] : key_of_) {
    if (key == id) return openSealingKey(folder_, name, passphrase);
  }
  return fail(ErrorKind::NotFound, "key-not-here", {{"name", id}});
}

Expected<OpenJob> ScriptRun::begin() {
  const session::ScriptHeader& header = script_.header;
  std::string text;
  if (const procedures::LibraryEntry* const entry = procedures::findInLibrary(header.procedure)) {
    text = entry->text;
  } else if (header.procedure.ends_with(".json")) {
    Expected<std::string> read = beside(header.procedure);
    if (!read) return std::unexpected(read.error());
    text = *std::move(read);
  } else {
    return fail(ErrorKind::NotFound, "procedure-not-in-library", {{"procedure", header.procedure}});
  }
  session::Words own_words;
  if (!header.words.empty()) {
    const Expected<std::string> read = beside(header.words);
    if (!read) return std::unexpected(read.error());
    const std::optional<session::Catalogue> words = session::readCatalogue(*read);
    if (!words) return fail(ErrorKind::InvalidInput, "words-malformed", {}, {.file = header.words});
    own_words = *words;
  }
  std::array<std::uint8_t, 16> bytes{};
  fillBytes(bytes);
  const session::ScriptPerson& person = header.people.at(header.in_charge);
  return session::beginJob(folder_.store,
                           {.id = records::hexadecimal(records::textOf(bytes)),
                            .unit = header.unit,
                            .attachment = header.attachment,
                            .procedure_text = std::move(text),
                            .variant = header.variant,
                            .language = header.language,
                            .own_words = std::move(own_words),
                            .lone_work = header.lone_work,
                            .entries = header.entries},
                           {.who = key_of_[person.key],
                            .role = person.role,
                            .device = person.device.empty() ? folder_.installation : person.device},
                           clock_.now(), edge());
}

Expected<void> ScriptRun::take(OpenJob& job, const session::ScriptLine& line) {
  clock_.pass(line.after_ms);
  if (line.restart) {
    clock_.restart();
    Expected<OpenJob> again = session::reopenJob(folder_.store, job.job.id, clock_.now(), edge());
    if (!again) return std::unexpected(again.error());
    job = *std::move(again);
    return {};
  }
  Expected<procedures::Event> event = session::eventOf(script_.header, line, key_of_, job.state);
  if (!event) return std::unexpected(event.error());
  for (const std::string& file : line.files) {
    const Expected<std::string> bytes = beside(file);
    if (!bytes) return std::unexpected(bytes.error());
    const Expected<std::string> hash =
        session::keepFile(folder_.store, job, event->about, *bytes, file, fillBytes, clock_.now(), edge());
    if (!hash) return std::unexpected(hash.error());
    event->hashes.push_back(*hash);
  }
  if (event->type == procedures::EventType::Reading && event->value == "weighed") {
    const procedures::Step* const step = procedures::findStep(job.procedure, event->about);
    Expected<std::optional<session::WeighedLift>> lift;
    if (step != nullptr) lift = session::weighedLift(folder_.store, job, *step, edge());
    if (!lift) return std::unexpected(lift.error());
    if (!*lift) return fail(ErrorKind::Insufficient, "lift-not-weighed", {{"step", event->about}});
    event->value = (*lift)->value;
    event->how = procedures::How::Log;
    if (!(*lift)->calibration.empty()) event->hashes.push_back((*lift)->calibration);
  }
  return session::handIn(folder_.store, job, *std::move(event), clock_.now(), edge());
}

std::string sayMarks(const OpenJob& job, UnitSystem system) {
  std::string text;
  for (const procedures::Mark& mark : job.state.marks) {
    const session::Catalogue& words = job.words.contains(mark.mark) ? job.words : session::englishCatalogue();
    text += "mark " + mark.step + ": " + session::say(words, {mark.mark, {}}, system) + "\n";
  }
  return text;
}

std::string sayEnd(const OpenJob& job, const std::string& record, UnitSystem system) {
  const std::string text =
      fmt::format("job {}\nphase {}\nrecord {}\n", job.job.id, procedures::nameOf(job.state.phase), record);
  return text + sayMarks(job, system);
}

int ScriptRun::finish(OpenJob& job, const std::string& passphrase) {
  const Expected<records::SecretKey> key = keyOf(job.state.person, passphrase);
  if (!key) return complain(key.error(), common_.system);
  const Expected<std::string> record = session::endJob(
      folder_.store, job,
      {.key = *key, .role = job.state.role, .installation = folder_.installation, .epoch = folder_.epoch},
      kEngine, clock_.now(), edge());
  if (!record) return complain(record.error(), common_.system);
  return print(in(sayEnd(job, *record, common_.system), terminalCharset()), common_.system);
}

int ScriptRun::run(const std::string& continued) {
  if (!clock_.isSound()) {
    return complainAt({ErrorKind::InvalidInput, {"script-begins-before-its-phone", {}}, {}}, 1);
  }
  const Expected<std::string> passphrase = readPassphrase(common_.passphrase_file);
  if (!passphrase) return complain(passphrase.error(), common_.system);
  const Expected<std::vector<NamedKey>> keys = keysOf(folder_);
  if (!keys) return complain(keys.error(), common_.system);
  for (const NamedKey& key : *keys) key_of_[key.name] = records::thumbprint(key.key);
  for (const auto& [name, person] : script_.header.people) {
    if (person.key.empty() || key_of_.contains(person.key)) continue;
    return complainAt({ErrorKind::NotFound, {"key-not-here", {{"name", person.key}}}, {}}, 1);
  }
  Expected<OpenJob> job =
      continued.empty() ? begin() : session::reopenJob(folder_.store, continued, clock_.now(), edge());
  if (!job) return complainAt(job.error(), 1);
  for (const session::ScriptLine& line : script_.lines) {
    const Expected<void> taken = take(*job, line);
    if (taken) continue;
    const int status = complainAt(taken.error(), line.number);
    writeDiagnostic(
        in(fmt::format("job {}: {}\n", job->job.id, sayWhere(*job, common_.system)), terminalCharset()));
    return status;
  }
  if (procedures::hasEnded(job->state.phase)) return finish(*job, *passphrase);
  const int printed =
      print(in(fmt::format("job {}: {}\n", job->job.id, sayWhere(*job, common_.system)), terminalCharset()),
            common_.system);
  return printed == kDone ? static_cast<int>(kInsufficient) : printed;
}

int runCommand(const Common& common, const JobOptions& options) {
  const Expected<std::string> text = readFile(options.script);
  if (!text) return complain(text.error(), common.system);
  const Expected<session::Script> script = session::readScript(*text, options.script);
  if (!script) return complain(script.error(), common.system);
  Expected<Folder> folder = openFolder(common.store);
  if (!folder) return complain(folder.error(), common.system);
  return ScriptRun(common, *folder, *script, options.script).run(options.job);
}

int listCommand(const Common& common, const JobOptions& options) {
  const Expected<Folder> folder = openFolder(common.store);
  if (!folder) return complain(folder.error(), common.system);
  const auto jobs = options.running ? folder->store.jobsRunning() : folder->store.jobs(options.unit);
  if (!jobs) return complain(jobs.error(), common.system);
  Table table = {{"job", "begun", "unit", "attachment", "procedure", "phase", "record"}};
  for (const store::Job& job : *jobs) {
    table.push_back({job.id, session::utcText(job.begun_utc_ms), job.unit,
                     job.attachment.empty() ? "-" : job.attachment, job.procedure_id, job.phase,
                     job.record.empty() ? "-" : job.record.substr(0, 12)});
  }
  return print(layOut(table, terminalCharset(), 7), common.system);
}

/// Opens a job to look at it; nothing is written.
int lookAt(const Common& common, const std::string& id,
           const std::function<Expected<std::string>(const OpenJob&)>& text) {
  const Expected<Folder> folder = openFolder(common.store);
  if (!folder) return complain(folder.error(), common.system);
  const Expected<OpenJob> job = session::openJob(folder->store, id, edge());
  if (!job) return complain(job.error(), common.system);
  const Expected<std::string> made = text(*job);
  if (!made) return complain(made.error(), common.system);
  return print(in(*made, terminalCharset()), common.system);
}

int showCommand(const Common& common, const JobOptions& options) {
  return lookAt(common, options.job, [&](const OpenJob& job) -> Expected<std::string> {
    const std::string text =
        fmt::format("job {}\nunit {}{}\nprocedure {}{}\nbegun {}\n", job.job.id, job.job.unit,
                    job.job.attachment.empty() ? "" : " with " + job.job.attachment, job.procedure.id,
                    job.state.start.variant.empty() ? "" : " by " + job.state.start.variant,
                    session::utcText(job.job.begun_utc_ms));
    return text + sayMarks(job, common.system) + sayWhere(job, common.system) + "\n";
  });
}

int tagCommand(const Common& common, const JobOptions& options) {
  return lookAt(common, options.job, [](const OpenJob& job) -> Expected<std::string> {
    const Expected<std::vector<std::string>> lines = session::tagOf(job);
    if (!lines) return std::unexpected(lines.error());
    std::string text;
    for (const std::string& line : *lines) text += line + "\n";
    return text;
  });
}

int sealCommand(const Common& common, const JobOptions& options) {
  const Expected<std::string> passphrase = readPassphrase(common.passphrase_file);
  if (!passphrase) return complain(passphrase.error(), common.system);
  Expected<Folder> folder = openFolder(common.store);
  if (!folder) return complain(folder.error(), common.system);
  const Expected<OpenJob> job = session::openJob(folder->store, options.job, edge());
  if (!job) return complain(job.error(), common.system);
  const Expected<std::vector<NamedKey>> keys = keysOf(*folder);
  if (!keys) return complain(keys.error(), common.system);
  const auto named = std::ranges::find_if(
      *keys, [&](const NamedKey& each) { return records::thumbprint(each.key) == job->state.person; });
  if (named == keys->end()) {
    return complain({ErrorKind::NotFound, {"key-not-here", {{"name", job->state.person}}}, {}},
                    common.system);
  }
  const Expected<records::SecretKey> key = openSealingKey(*folder, named->name, *passphrase);
  if (!key) return complain(key.error(), common.system);
  // What a script's clock said last is as late as this job can be known to have ended.
  session::Moment now = momentOfComputer();
  if (!job->journal.empty() && job->journal.back().boot != now.boot) {
    now.utc_ms = job->journal.back().wall_utc_ms.value_or(now.utc_ms);
  }
  const Expected<std::string> record = session::endJob(
      folder->store, *job,
      {.key = *key, .role = job->state.role, .installation = folder->installation, .epoch = folder->epoch},
      kEngine, now, edge());
  if (!record) return complain(record.error(), common.system);
  return print(in(sayEnd(*job, *record, common.system), terminalCharset()), common.system);
}

}  // namespace

void addJobCommands(CLI::App& app, const Common& common, Action& action) {
  const auto options = std::make_shared<JobOptions>();
  CLI::App* const group = app.add_subcommand("jobs", "Jobs: one visit to one machine, from begin to record");
  group->require_subcommand(1);
  const auto command = [&](const char* name, const char* help, int (*act)(const Common&, const JobOptions&)) {
    CLI::App* const added = group->add_subcommand(name, help);
    added->callback([&common, &action, options, act] {
      action = [&common, options, act] { return act(common, *options); };
    });
    return added;
  };
  const auto addJob = [&](CLI::App* added) {
    added->add_option("JOB", options->job, "The job, as list has it")->required();
  };
  const auto addScript = [&](CLI::App* added) {
    added->add_option("SCRIPT.jsonl", options->script, "What people did (hingepin-script/1), a line each")
        ->required();
  };
  addScript(command("run",
                    "Run a job from a script of events, and seal its record (status 1: it waits for more)",
                    runCommand));
  CLI::App* const go_on =
      command("continue", "Go on with a job that waits, from a script of further events", runCommand);
  addJob(go_on);
  addScript(go_on);
  CLI::App* const list = command("list", "List jobs, the newest first", listCommand);
  list->add_option("--unit", options->unit, "Only those of one machine")->type_name("UNIT");
  list->add_flag("--running", options->running, "Only those that have not ended");
  addJob(command("show", "Say where a job is and what it waits for", showCommand));
  addJob(command("tag", "Print the tag of a job that failed or was given up", tagCommand));
  addJob(command("seal", "Seal the record of a job that ended without its seal", sealCommand));
}

}  // namespace hingepin::cli
