// SPDX-License-Identifier: Apache-2.0
#include "engine/session/job.h"

#include <algorithm>
#include <set>
#include <utility>

#include "engine/procedures/journal.h"
#include "engine/procedures/lint.h"
#include "engine/records/canonical_json.h"
#include "engine/records/personal.h"
#include "engine/session/confirmation.h"
#include "engine/session/fitting.h"
#include "engine/session/surveying.h"
#include "engine/session/yard.h"

namespace hingepin::session {
namespace {

using procedures::Ask;
using procedures::Event;
using procedures::EventType;
using procedures::State;
using procedures::Step;
using procedures::StepKind;
using store::Store;

constexpr const char* kJson = "application/json";

std::string canonicalWords(const Words& words) {
  std::vector<std::pair<std::string, JsonValue>> members;
  for (const auto& [code, text] : words) members.emplace_back(code, records::jsonString(text));
  // Texts that were read from JSON can be written as JSON.
  return records::canonicalJson(records::jsonObject(std::move(members))).value_or("{}");
}

/// Applies an event to the state with the fits of this job at hand.
Expected<State> applied(const Store& store, const OpenJob& job, const Event& event, const Edge& edge) {
  const BlobSource blobs = blobsOf(store);
  return procedures::apply(job.procedure, job.state, event,
                           measureOf(job.procedure, job.state, job.unit, attachmentOf(job), edge, blobs),
                           judgeOf(job, edge));
}

Expected<void> append(Store& store, OpenJob& job, const Event& event, const Edge& edge) {
  Expected<State> next = applied(store, job, event, edge);
  if (!next) return std::unexpected(std::move(next.error()));
  const Expected<void> kept = store.appendEvent(job.job.id, static_cast<std::int64_t>(job.journal.size()),
                                                procedures::writeEvent(event));
  if (!kept) return kept;
  job.journal.push_back(event);
  job.state = *std::move(next);
  return {};
}

void setTime(Event& event, const Moment& now) {
  event.at_ms = now.at_ms;
  event.boot = now.boot;
  event.wall_utc_ms = now.utc_ms;
}

/// The checks that the job has come to. Nobody presses for them.
Expected<void> evaluateChecks(Store& store, OpenJob& job, const Moment& now, const Edge& edge) {
  while (procedures::prompt(job.procedure, job.state).ask == Ask::Evaluate) {
    Event event{.type = EventType::Evaluate,
                .who = job.state.person,
                .role = job.state.role,
                .device = job.state.device,
                .how = procedures::How::Live,
                .about = procedures::prompt(job.procedure, job.state).about};
    setTime(event, now);
    if (const Expected<void> kept = append(store, job, event, edge); !kept) return kept;
  }
  return {};
}

/// A number said to come from the monitor is one that this monitor can show.
Expected<void> checkMonitor(const OpenJob& job, const Event& event) {
  if (event.type != EventType::Reading || event.how != procedures::How::Monitor || job.unit.monitor.empty())
    return {};
  const Step* const step = procedures::findStep(job.procedure, event.about);
  if (step == nullptr) return {};
  const auto shown = std::ranges::find(job.unit.monitor, step->quantity, &Shown::quantity);
  if (shown == job.unit.monitor.end()) {
    return fail(ErrorKind::InvalidInput, "monitor-does-not-show",
                {{"unit", job.unit.id}, {"quantity", step->quantity}});
  }
  const std::size_t space = event.value.find(' ');
  const std::string unit = space == std::string::npos ? "" : event.value.substr(space + 1);
  if (std::ranges::any_of(job.unit.monitor, [&](const Shown& each) {
        return each.quantity == step->quantity && each.unit == unit;
      })) {
    return {};
  }
  return fail(
      ErrorKind::InvalidInput, "monitor-shows-other-unit",
      {{"unit", job.unit.id}, {"quantity", step->quantity}, {"typed", event.value}, {"shown", shown->unit}});
}

/// The profiles as they were when the job began; its first event names them.
Expected<void> readProfiles(const Store& store, OpenJob& job, const Event& start, const Edge& edge) {
  if (start.hashes.empty()) return fail(ErrorKind::InvalidInput, "job-not-readable", {{"job", job.job.id}});
  const Expected<std::string> unit = blobsOf(store)(start.hashes[0]);
  if (!unit) return std::unexpected(unit.error());
  Expected<UnitProfile> profile = readUnitProfile(*unit, "unit " + job.job.unit, edge);
  if (!profile) return std::unexpected(profile.error());
  job.unit = *std::move(profile);
  if (start.hashes.size() < 2) return {};
  const Expected<std::string> attachment = blobsOf(store)(start.hashes[1]);
  if (!attachment) return std::unexpected(attachment.error());
  Expected<AttachmentProfile> fitted =
      readAttachmentProfile(*attachment, "attachment " + job.job.attachment, edge);
  if (!fitted) return std::unexpected(fitted.error());
  job.attachment = *std::move(fitted);
  return {};
}

/// The words that people will see: the yard's own first.
Expected<Words> wordsOf(const procedures::Procedure& procedure, const NewJob& job) {
  const Expected<const Words*> all = allWords(job.language);
  if (!all) return std::unexpected(all.error());
  Words words;
  for (const std::string& code : procedures::textCodesOf(procedure)) {
    const auto own = job.own_words.find(code);
    const auto found = own != job.own_words.end() ? own : (*all)->find(code);
    if (own == job.own_words.end() && found == (*all)->end()) {
      return fail(ErrorKind::NotFound, "words-missing",
                  {{"code", code}, {"language", job.language}, {"procedure", procedure.id}});
    }
    words[code] = found->second;
  }
  return words;
}

bool isPersonal(const Step& step) {
  return step.on_glass ||
         (step.kind == StepKind::Evidence && step.evidence == procedures::EvidenceKind::Photo);
}

}  // namespace

BlobSource blobsOf(const Store& store) {
  return [&store](const std::string& hash) -> Expected<std::string> {
    Expected<std::optional<std::string>> blob = store.blob(hash);
    if (!blob) return std::unexpected(blob.error());
    if (!*blob) return fail(ErrorKind::NotFound, "blob-not-in-store", {{"hash", hash}});
    return **std::move(blob);
  };
}

const AttachmentProfile* attachmentOf(const OpenJob& job) {
  return job.attachment ? &*job.attachment : nullptr;
}

Expected<std::vector<procedures::Completed>> completedOn(const Store& store, const std::string& unit,
                                                         const procedures::Procedure& procedure,
                                                         const Moment& now) {
  std::vector<procedures::Completed> completed;
  if (procedure.prerequisites.empty()) return completed;
  const Expected<std::vector<store::Job>> jobs = store.jobs(unit);
  if (!jobs) return std::unexpected(jobs.error());
  std::set<std::string> failed;
  for (const store::Job& job : *jobs) {  // the newest first
    const bool needed = std::ranges::any_of(
        procedure.prerequisites, [&](const auto& each) { return each.procedure == job.procedure_id; });
    if (!needed || failed.contains(job.procedure_id) || (job.phase != "done" && job.phase != "failed"))
      continue;
    const Expected<std::vector<std::string>> journal = store.journal(job.id);
    if (!journal) return std::unexpected(journal.error());
    std::optional<std::int64_t> age_ms;
    if (!journal->empty()) {
      const Expected<Event> last = procedures::readEvent(journal->back(), "journal");
      if (last && last->boot == now.boot) age_ms = now.at_ms - last->at_ms;
    }
    const bool later = age_ms && *age_ms < 0;
    if (later) age_ms.reset();
    if (job.phase == "failed") {
      if (!later) failed.insert(job.procedure_id);
    } else {
      completed.push_back({.procedure = job.procedure_id, .age_ms = age_ms});
    }
  }
  return completed;
}

Expected<OpenJob> beginJob(Store& store, const NewJob& given, const Actor& actor, const Moment& now,
                           const Edge& edge) {
  OpenJob job;
  Expected<procedures::Procedure> procedure = procedures::readProcedure(given.procedure_text, "procedure");
  if (!procedure) return std::unexpected(std::move(procedure.error()));
  job.procedure = *std::move(procedure);
  Expected<Words> words = wordsOf(job.procedure, given);
  if (!words) return std::unexpected(std::move(words.error()));
  job.words = *std::move(words);
  if (!procedures::lint(job.procedure, nullptr).empty()) {
    return fail(ErrorKind::InvalidInput, "procedure-not-sound");
  }
  if (const Expected<void> may = mayAct(store, actor.who, actor.role, now.utc_ms); !may) {
    return std::unexpected(may.error());
  }

  const Expected<std::optional<store::Unit>> unit = store.unit(given.unit);
  if (!unit) return std::unexpected(unit.error());
  if (!*unit) return fail(ErrorKind::NotFound, "unit-not-in-store", {{"unit", given.unit}});
  const Expected<std::string> yard = store.yardProfile();
  if (!yard) return std::unexpected(yard.error());
  Expected<std::string> profile_here = withYard((*unit)->profile, *yard);
  if (!profile_here) return std::unexpected(std::move(profile_here.error()));
  std::vector<std::string> profiles = {*std::move(profile_here)};
  if (!given.attachment.empty()) {
    const Expected<std::optional<store::Attachment>> attachment = store.attachment(given.attachment);
    if (!attachment) return std::unexpected(attachment.error());
    if (!*attachment) {
      return fail(ErrorKind::NotFound, "attachment-not-in-store", {{"attachment", given.attachment}});
    }
    profiles.push_back((*attachment)->profile);
  }
  const auto keep = [&](std::string_view bytes) { return store.putBlob(bytes, kJson); };
  Event start{.type = EventType::Start, .who = actor.who, .role = actor.role, .device = actor.device};
  for (const std::string& profile : profiles) {
    const Expected<std::string> hash = keep(profile);
    if (!hash) return std::unexpected(hash.error());
    start.hashes.push_back(*hash);
  }
  job.job = {.id = given.id,
             .unit = given.unit,
             .attachment = given.attachment,
             .procedure_id = job.procedure.id,
             .procedure = "",
             .words = "",
             .language = given.language,
             .begun_utc_ms = now.utc_ms};
  if (const Expected<void> read = readProfiles(store, job, start, edge); !read)
    return std::unexpected(read.error());

  const auto isTaught = [&](const std::string& variant) {
    return std::ranges::find(job.unit.teaching, variant) != job.unit.teaching.end();
  };
  if (!isTaught(given.variant) && std::ranges::any_of(job.procedure.variants, [&](const auto& variant) {
        return isTaught(variant.id);
      })) {
    return fail(ErrorKind::InvalidInput, "teaching-not-offered",
                {{"unit", given.unit}, {"variant", given.variant}});
  }
  Expected<std::vector<procedures::Completed>> completed = completedOn(store, given.unit, job.procedure, now);
  if (!completed) return std::unexpected(completed.error());
  start.start = procedures::StartOptions{
      .variant = given.variant,
      .lone_work = given.lone_work,
      .entries = entriesFor(job.procedure, job.unit, attachmentOf(job), given.entries),
      .completed = *std::move(completed)};
  setTime(start, now);

  Expected<State> state = applied(store, job, start, edge);
  if (!state) return std::unexpected(std::move(state.error()));
  const Expected<std::string> procedure_hash = keep(given.procedure_text);
  if (!procedure_hash) return std::unexpected(procedure_hash.error());
  const Expected<std::string> words_hash = keep(canonicalWords(job.words));
  if (!words_hash) return std::unexpected(words_hash.error());
  job.job.procedure = *procedure_hash;
  job.job.words = *words_hash;
  if (const Expected<void> begun = store.beginJob(job.job, procedures::writeEvent(start)); !begun) {
    return std::unexpected(begun.error());
  }
  job.journal.push_back(std::move(start));
  job.state = *std::move(state);
  if (const Expected<void> checked = evaluateChecks(store, job, now, edge); !checked) {
    return std::unexpected(checked.error());
  }
  return job;
}

Expected<void> handIn(Store& store, OpenJob& job, Event event, const Moment& now, const Edge& edge) {
  setTime(event, now);
  if (!event.who.empty() && event.type != EventType::Interrupt) {
    if (const Expected<void> may = mayAct(store, event.who, event.role, now.utc_ms); !may) return may;
  }
  if (!event.confirmation.empty()) {
    if (const Expected<void> holds = checkConfirmation(store, job, event, now); !holds) return holds;
  }
  if (const Expected<void> can = checkMonitor(job, event); !can) return can;
  if (const Expected<void> kept = append(store, job, event, edge); !kept) return kept;
  return evaluateChecks(store, job, now, edge);
}

Expected<std::string> keepFile(Store& store, const OpenJob& job, std::string_view step_id,
                               std::string_view bytes, const std::string& file,
                               const records::FillBytes& fill, const Moment& now, const Edge& edge) {
  const Step* const step = procedures::findStep(job.procedure, step_id);
  if (step != nullptr && isPersonal(*step)) {
    store::Personal personal{.name = "", .bytes = std::string(bytes)};
    fill(personal.salt);
    personal.name = records::personalName(personal.salt, bytes);
    if (const Expected<void> kept = store.putPersonal(personal, now.utc_ms); !kept) {
      return std::unexpected(kept.error());
    }
    return personal.name;
  }
  if (step != nullptr && step->kind == StepKind::Pass) {
    if (const auto checked = edge.read_log(std::string(bytes), file); !checked) {
      return std::unexpected(checked.error());
    }
    return store.putBlob(bytes, "text/csv");
  }
  return store.putBlob(bytes, "application/octet-stream");
}

Expected<OpenJob> openJob(const Store& store, std::string_view id, const Edge& edge) {
  const Expected<std::optional<store::Job>> found = store.job(id);
  if (!found) return std::unexpected(found.error());
  if (!*found) return fail(ErrorKind::NotFound, "job-not-in-store", {{"job", std::string(id)}});
  OpenJob job;
  job.job = **found;
  Expected<std::string> procedure = blobsOf(store)(job.job.procedure);
  if (!procedure) return std::unexpected(procedure.error());
  Expected<procedures::Procedure> read =
      procedures::readProcedure(*std::move(procedure), job.job.procedure_id);
  if (!read) return std::unexpected(read.error());
  job.procedure = *std::move(read);
  // The words as they were shown, whatever the program says today.
  const Expected<std::string> words = blobsOf(store)(job.job.words);
  if (!words) return std::unexpected(words.error());
  const Expected<JsonDocument> document = readJson(*words, "words");
  if (!document) return std::unexpected(document.error());
  for (std::size_t index = 0; index < document->root.keys.size(); ++index) {
    job.words[document->root.keys[index]] = document->root.items[index].text;
  }
  const Expected<std::vector<std::string>> journal = store.journal(id);
  if (!journal) return std::unexpected(journal.error());
  for (const std::string& text : *journal) {
    const Expected<Event> event = procedures::readEvent(text, "journal");
    if (!event) return std::unexpected(event.error());
    if (job.journal.empty()) {
      if (const Expected<void> profiles = readProfiles(store, job, *event, edge); !profiles) {
        return std::unexpected(profiles.error());
      }
    }
    Expected<State> next = applied(store, job, *event, edge);
    if (!next) return std::unexpected(std::move(next.error()));
    job.journal.push_back(*event);
    job.state = *std::move(next);
  }
  return job;
}

Expected<OpenJob> reopenJob(Store& store, std::string_view id, const Moment& now, const Edge& edge) {
  Expected<OpenJob> job = openJob(store, id, edge);
  if (!job || procedures::hasEnded(job->state.phase)) return job;
  const Event interrupt{
      .type = EventType::Interrupt, .device = job->state.device, .how = procedures::How::Live};
  if (const Expected<void> kept = handIn(store, *job, interrupt, now, edge); !kept) {
    return std::unexpected(kept.error());
  }
  return job;
}

Expected<void> mayAct(const Store& store, std::string_view key, std::string_view role, std::int64_t utc_ms) {
  const Expected<records::SignersVerdict> verdict = signersOf(store);
  if (!verdict) return std::unexpected(verdict.error());
  if (std::ranges::find(verdict->list->revocations, key, &records::Revocation::key) !=
      verdict->list->revocations.end()) {
    return fail(ErrorKind::InvalidInput, "signer-revoked", {{"key", std::string(key)}});
  }
  bool listed = false;
  for (const records::Signer& signer : verdict->list->signers) {
    if (signer.role != role || records::thumbprint(signer.key) != key) continue;
    listed = true;
    if (signer.valid_from_utc_ms <= utc_ms && utc_ms < signer.valid_until_utc_ms.value_or(utc_ms + 1))
      return {};
  }
  return fail(ErrorKind::InvalidInput, listed ? "signer-outside-validity" : "signer-not-listed",
              {{"key", std::string(key)}, {"role", std::string(role)}, {"time", utcText(utc_ms)}});
}

}  // namespace hingepin::session
