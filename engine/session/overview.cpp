// SPDX-License-Identifier: Apache-2.0
#include "engine/session/overview.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <map>
#include <numeric>
#include <set>
#include <tuple>
#include <utility>

#include "engine/base/named.h"
#include "engine/procedures/evaluate.h"
#include "engine/procedures/library.h"
#include "engine/procedures/runner.h"
#include "engine/proof/cost.h"
#include "engine/session/catalogue.h"
#include "engine/session/confirmation.h"
#include "engine/session/due_list.h"
#include "engine/session/job.h"
#include "engine/session/job_record.h"
#include "engine/session/past.h"
#include "engine/session/procedure_text.h"
#include "engine/session/proof_readings.h"
#include "engine/session/record_view.h"
#include "engine/session/yard.h"

namespace hingepin::session {
namespace {

using procedures::Ask;
using procedures::Phase;
using procedures::Step;
using store::Job;
using store::Store;

constexpr std::array kStates = {Named{"do-not-use", UnitState::DoNotUse},
                                Named{"restricted", UnitState::Restricted},
                                Named{"due", UnitState::Due},
                                Named{"due-soon", UnitState::DueSoon},
                                Named{"not-calibrated", UnitState::NotCalibrated},
                                Named{"ready", UnitState::Ready}};

/// The step that a job waits at, also while it is interrupted.
procedures::Prompt awaited(const OpenJob& job) {
  procedures::State state = job.state;
  state.paused = false;
  state.unread.clear();
  return procedures::prompt(job.procedure, state);
}

/// Who may answer what a job asks now, where that is not just whoever is in charge.
std::vector<std::string> othersFor(const OpenJob& job, const Step& step) {
  if (step.on_glass) return {};
  const std::vector<std::string>& roles =
      step.roles.empty() && step.second_person ? job.procedure.confirm_roles : step.roles;
  const bool in_charge = std::ranges::find(roles, job.state.role) != roles.end();
  if (!step.second_person && (roles.empty() || in_charge)) return {};
  return roles;
}

Expected<RunningJob> runningJob(const OpenJob& job, ProcedureShelf& shelf, const Reader& reader) {
  RunningJob running{.job = job.job.id,
                     .procedure = job.job.procedure_id,
                     .attachment = job.job.attachment,
                     .language = job.job.language,
                     .person = job.state.person,
                     .role = job.state.role,
                     .begun_utc_ms = job.job.begun_utc_ms,
                     .last_utc_ms = job.journal.back().wall_utc_ms.value_or(job.job.begun_utc_ms)};
  const Expected<const ProcedureText*> text = shelf.find(job.job.procedure, job.job.words, job.job.language);
  if (!text) return std::unexpected(text.error());
  running.title = wordsOf(**text, job.procedure.title, reader);
  if (procedures::hasEnded(job.state.phase)) return running;
  const procedures::Prompt asked = awaited(job);
  running.waits_at = asked.about;
  if (asked.ask == Ask::Tag) {
    running.waits_for = wordsOf(**text, job.procedure.tag, reader);
  } else if (const Step* const step = procedures::findStep(job.procedure, asked.about)) {
    running.waits_for = stepText(**text, job.state, asked.about, reader);
    running.for_second_person = !othersFor(job, *step).empty();
  } else if (const auto* const caution = procedures::findCaution(job.procedure, asked.about)) {
    running.waits_for = wordsOf(**text, caution->hazard, reader);
  }
  return running;
}

bool hasEnded(const Job& job) { return job.phase != "running"; }

/// Whether a lockout stands: begun, and not ended by a removal. @param jobs the newest first
bool isLockedOut(const std::vector<Job>& jobs) {
  for (const Job& job : jobs) {
    if (job.procedure_id == "lockout-removal" && job.phase == "done") return false;
    if (job.procedure_id == "lockout" && (job.phase == "done" || job.phase == "running")) return true;
  }
  return false;
}

/// The text code of a procedure's tag, as its newest job here has it.
std::string tagCodeOf(const std::vector<Job>& jobs, const std::string& procedure, ProcedureShelf& shelf) {
  for (const Job& job : jobs) {
    if (job.procedure_id != procedure) continue;
    const Expected<const ProcedureText*> text = shelf.find(job.procedure, job.words, job.language);
    if (text) return (*text)->procedure.tag;
  }
  const procedures::LibraryEntry* const entry = procedures::findInLibrary(procedure);
  if (entry == nullptr) return "";
  const auto read = procedures::readProcedure(std::string(entry->text), procedure);
  return read ? read->tag : "";
}

Expected<PairState> pairState(const Store& store, const store::Pair& pair, WhenAgain when,
                              const std::vector<Job>& jobs, ProcedureShelf& shelf, std::int64_t utc_ms,
                              std::int64_t soon_ms) {
  PairState state{.attachment = pair.attachment,
                  .calibrated = !pair.record.empty(),
                  .calibration = pair.calibration,
                  .record = pair.record,
                  .when = std::move(when)};
  if (!state.when.reasons.empty()) state.due_utc_ms = state.when.reasons.front().utc_ms;
  if (state.calibrated) {
    const Expected<std::optional<std::int64_t>> sealed = store.sealedUtcMs(pair.record);
    if (!sealed) return std::unexpected(sealed.error());
    state.calibrated_utc_ms = *sealed;
  }
  for (const std::string& text : pair.restrictions) {
    const std::size_t slash = std::min(text.find('/'), text.size());
    Restriction restriction{.procedure = text.substr(0, slash),
                            .mark = slash < text.size() ? text.substr(slash + 1) : ""};
    restriction.is_tag = restriction.mark == tagCodeOf(jobs, restriction.procedure, shelf);
    state.restrictions.push_back(std::move(restriction));
  }
  if (std::ranges::any_of(state.restrictions, &Restriction::is_tag)) {
    state.state = UnitState::DoNotUse;
  } else if (!state.restrictions.empty()) {
    state.state = UnitState::Restricted;
  } else if (state.due_utc_ms && *state.due_utc_ms <= utc_ms) {
    state.state = UnitState::Due;
  } else if (state.due_utc_ms && *state.due_utc_ms <= utc_ms + soon_ms) {
    state.state = UnitState::DueSoon;
  } else if (!state.calibrated) {
    state.state = UnitState::NotCalibrated;
  }
  return state;
}

/// The newest tag that nothing has lifted. @param jobs the newest first
Expected<std::optional<OpenTag>> openTag(const Store& store, const std::vector<Job>& jobs,
                                         const std::vector<PairState>& pairs) {
  std::set<std::pair<std::string, std::string>> seen;
  for (const Job& job : jobs) {
    if (!hasEnded(job) || !seen.emplace(job.procedure_id, job.attachment).second || job.phase == "done")
      continue;
    const Expected<records::Record> record = recordOf(store, job.record);
    if (!record) return std::unexpected(record.error());
    OpenTag tag{.job = job.id,
                .record = job.record,
                .procedure = job.procedure_id,
                .attachment = job.attachment,
                .tag = textAt(record->content, {"tag"}),
                .phase = job.phase,
                .failed_step = textAt(record->content, {"failed_step"}),
                .utc_ms = record->envelope.sealed_utc_ms};
    const bool stands = std::ranges::any_of(pairs, [&](const PairState& pair) {
      return pair.attachment == job.attachment &&
             std::ranges::any_of(pair.restrictions, [&](const Restriction& each) {
               return each.procedure == tag.procedure && each.mark == tag.tag;
             });
    });
    if (job.attachment.empty() || stands) return tag;
  }
  return std::nullopt;
}

int& countOf(Overview& overview, UnitState state) {
  switch (state) {
    case UnitState::DoNotUse:
      return overview.do_not_use;
    case UnitState::Restricted:
      return overview.restricted;
    case UnitState::Due:
      return overview.due;
    case UnitState::DueSoon:
      return overview.due_soon;
    case UnitState::NotCalibrated:
      return overview.not_calibrated;
    case UnitState::Ready:
      return overview.ready;
  }
  return overview.ready;
}

Expected<UnitOverview> unitOverview(const Store& store, const store::Unit& unit, std::vector<DuePair> pairs,
                                    std::int64_t utc_ms, const Edge& edge, const Reader& reader,
                                    ProcedureShelf& shelf, std::int64_t soon_ms) {
  UnitOverview view{.id = unit.id};
  const Expected<UnitProfile> profile = readUnitProfile(unit.profile, "unit " + unit.id, edge);
  view.readable = profile.has_value();
  view.has_linkage = !profile || hasLinkage(*profile);
  view.practice = profile && profile->practice;
  const Expected<std::vector<Job>> jobs = store.jobs(unit.id);
  if (!jobs) return std::unexpected(jobs.error());
  view.state = UnitState::Ready;
  const auto atLeast = [&](UnitState state) { view.state = std::min(view.state, state); };
  std::ranges::sort(pairs, {}, [](const DuePair& each) -> auto& { return each.pair.attachment; });
  for (DuePair& each : pairs) {
    Expected<PairState> state =
        pairState(store, each.pair, std::move(each.when), *jobs, shelf, utc_ms, soon_ms);
    if (!state) return std::unexpected(std::move(state.error()));
    atLeast(state->state);
    if (state->due_utc_ms && (!view.due_utc_ms || *state->due_utc_ms < *view.due_utc_ms))
      view.due_utc_ms = state->due_utc_ms;
    view.pairs.push_back(*std::move(state));
  }
  if (std::ranges::none_of(view.pairs, &PairState::calibrated)) atLeast(UnitState::NotCalibrated);
  Expected<std::optional<OpenTag>> tag = openTag(store, *jobs, view.pairs);
  if (!tag) return std::unexpected(std::move(tag.error()));
  view.tag = *std::move(tag);
  view.locked_out = isLockedOut(*jobs);
  if (view.tag || view.locked_out) atLeast(UnitState::DoNotUse);
  for (const Job& job : *jobs) {
    if (hasEnded(job)) continue;
    const Expected<OpenJob> open = openJob(store, job.id, edge);
    if (!open) return std::unexpected(open.error());
    Expected<RunningJob> running = runningJob(*open, shelf, reader);
    if (!running) return std::unexpected(std::move(running.error()));
    view.running.push_back(*std::move(running));
  }
  return view;
}

bool isSecondPersonMark(std::string_view mark) { return mark.starts_with("second-person-"); }

std::vector<std::string> marksOf(const auto& marks, const std::string& step) {
  std::vector<std::string> found;
  for (const auto& each : marks) {
    if (each.step == step && isSecondPersonMark(each.mark)) found.push_back(each.mark);
  }
  return found;
}

void addConfirmed(std::vector<Confirmation>& list, const OpenJob& job, const ProcedureText& text,
                  const Reader& reader) {
  for (const procedures::Try& each : job.state.tries) {
    const Step* const step = procedures::findStep(job.procedure, each.event.about);
    if (step == nullptr || !step->second_person) continue;
    list.push_back({.unit = job.job.unit,
                    .attachment = job.job.attachment,
                    .job = job.job.id,
                    .procedure = job.job.procedure_id,
                    .step = step->id,
                    .text = stepText(text, job.state, step->id, reader),
                    .answer = each.event.answer,
                    .key = each.event.answer == "unconfirmed" ? "" : each.event.who,
                    .role = each.event.role,
                    .device = each.event.device,
                    .own_phone = !each.event.confirmation.empty(),
                    .utc_ms = each.event.wall_utc_ms.value_or(0)});
    if (each.counts) list.back().marks = marksOf(job.state.marks, step->id);
  }
}

/// @param signers nullptr where this phone has no list: then no seal proves anything
void addConfirmed(std::vector<Confirmation>& list, const RecordedJob& job, const std::string& record,
                  const ProcedureText& text, const records::SignersList* signers, const Reader& reader) {
  procedures::State state;
  state.start.variant = job.variant;
  state.start.entries.insert(job.entries.begin(), job.entries.end());
  for (const RecordedTry& each : job.tries) {
    const Step* const step = procedures::findStep(text.procedure, each.about);
    if (step == nullptr || !step->second_person) continue;
    list.push_back({.unit = job.unit,
                    .attachment = job.attachment,
                    .job = job.job,
                    .record = record,
                    .procedure = job.procedure,
                    .step = step->id,
                    .text = stepText(text, state, step->id, reader),
                    .answer = each.answer,
                    .key = each.answer == "unconfirmed" ? "" : each.by.key,
                    .role = each.by.role,
                    .device = each.by.device,
                    .own_phone = signers != nullptr && confirmationProves(job, each, *signers),
                    .utc_ms = each.utc_ms});
    if (each.counts) list.back().marks = marksOf(job.marks, step->id);
  }
}

std::optional<double> meanOf(const std::vector<double>& values) {
  if (values.empty()) return std::nullopt;
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

/// Whether all steps of a check read a quantity.
bool readsOnly(const RecordedJob& job, const std::vector<std::string>& steps, std::string_view quantity) {
  return !steps.empty() && std::ranges::all_of(steps, [&](const std::string& step) {
    return std::ranges::any_of(
        job.tries, [&](const RecordedTry& each) { return each.about == step && each.quantity == quantity; });
  });
}

/// The heaviest reference of a check, and the values that were read for it: of an older check the last one
/// and all values.
std::pair<std::optional<double>, std::vector<double>> heaviest(const RecordedJob& job, std::size_t index) {
  const RecordedCheck& check = *job.tries[index].check;
  const std::vector<double> values = valuesBefore(job, index, check.of);
  if (!check.reference_entry.empty()) return {siOf(check.reference_entry), values};
  const std::vector<std::size_t> references = readingsBefore(job, index, {check.reference});
  if (references.empty()) return {};
  if (check.kind != "proof") return {siOf(job.tries[references.back()].value), values};
  std::pair<std::optional<double>, std::vector<double>> most;
  for (const std::size_t at : readingsBefore(job, index, check.of)) {
    const auto after = std::ranges::lower_bound(references, at);
    if (after == references.begin()) continue;
    const double reference = *siOf(job.tries[*std::prev(after)].value);
    if (most.first && reference < *most.first) continue;
    if (most.first != reference) most = {reference, {}};
    most.second.push_back(*siOf(job.tries[at].value));
  }
  return most;
}

/// The error of what stands in a point as reference and indications.
void tellError(HistoryPoint& point) {
  point.indication_kg = meanOf(point.indications_kg);
  point.error_percent = (*point.indication_kg - *point.reference_kg) / *point.reference_kg * 100.0;
  if (point.error_found_percent) return;
  point.error_found_percent = point.error_percent;
  point.found_indications_kg = point.indications_kg;
}

/// What a proof on a truck scale says: the error of each net, at the mean of all.
/// @return whether it says anything
bool addNets(HistoryPoint& point, const RecordedJob& job, std::size_t index) {
  const ProofReadings read = onTruckScale(job, index);
  std::vector<double> nets_kg;
  std::vector<double> errors_kg;
  double interval_kg = 0.0;
  const auto add = [&](Mass net, Mass shown, const proof::TruckScale& scale) {
    nets_kg.push_back(net.inKilograms());
    errors_kg.push_back((shown - net).inKilograms());
    interval_kg = scale.interval.inKilograms();
  };
  for (const proof::TruckLoad& truck : read.proof.trucks) {
    const Mass shown = std::accumulate(truck.indications.begin(), truck.indications.end(), Mass());
    add(truck.gross - truck.tare, shown, truck.scale);
  }
  for (const proof::LoaderOnScale& loader : read.proof.loader_on_scale) {
    for (const proof::LoaderOnScale::Bucket& bucket : loader.buckets)
      add(bucket.loaded - loader.empty, bucket.indication, loader.scale);
  }
  const std::optional<double> net_kg = meanOf(nets_kg);
  if (!net_kg || *net_kg <= 0.0) return false;
  point.reference_kg = net_kg;
  // The scale itself, and both weighings rounded.
  point.reference_u_kg = std::hypot(
      proof::assumedScaleU(Mass::fromKilograms(interval_kg), Mass::fromKilograms(*net_kg)).inKilograms(),
      interval_kg / std::sqrt(6.0));
  point.indications_kg.clear();
  for (const double error_kg : errors_kg) point.indications_kg.push_back(*net_kg + error_kg);
  // Several trucks are held against their limits together.
  const double judged_kg = read.trucks.empty() ? *net_kg : *net_kg * static_cast<double>(nets_kg.size());
  if (const auto limit_kg = siOf(job.tries[index].limit))
    point.error_limit_percent = *limit_kg / judged_kg * 100.0;
  return true;
}

/// What a check of zero or proof says.
void addCheck(HistoryPoint& point, const RecordedJob& job, std::size_t index) {
  const RecordedTry& made = job.tries[index];
  const RecordedCheck& check = *made.check;
  if (!readsOnly(job, check.of, "indication")) return;
  const std::vector<double> values = valuesBefore(job, index, check.of);
  if (values.empty()) return;
  if (check.kind == "within-limits") {
    const double low = siOf(check.low).value_or(1.0);
    const double high = siOf(check.high).value_or(-1.0);
    if (low > 0.0 || high < 0.0) return;  // of a load
    if (!point.zero_found_kg) point.zero_found_kg = values.front();
    point.zeros_kg = values;
    point.zero_kg = meanOf(values);
    point.zero_low_kg = low;
    point.zero_high_kg = high;
  } else if (check.kind == "repeatability") {
    std::vector<std::size_t> series = readingsBefore(job, index, check.of);
    if (!check.reference.empty()) {
      const std::vector<std::size_t> references = readingsBefore(job, index, {check.reference});
      std::erase_if(series, [&](std::size_t at) { return !references.empty() && at < references.back(); });
    }
    if (series.empty()) return;
    std::vector<double> shown;
    for (const std::size_t at : series) shown.push_back(*siOf(job.tries[at].value));
    point.spread_kg = std::ranges::max(shown) - std::ranges::min(shown);
    point.spread_limit_kg = siOf(check.at_most);
  } else if (check.kind == "agreement-of-two-readings" || check.kind == "proof") {
    // Of several masses the heaviest tells the span best.
    const auto [reference, indications] = heaviest(job, index);
    if (!reference || *reference <= 0.0) return;
    point.reference_kg = reference;
    point.reference_u_kg.reset();
    point.indications_kg = indications;
    const Expected<ReadQuantity> limit = readAnyQuantity(made.limit.empty() ? check.within : made.limit);
    if (limit) {
      point.error_limit_percent = limit->unit.dimension == Dimension::Mass
                                      ? limit->value_si / *reference * 100.0
                                      : limit->value_si * 100.0;
    }
    tellError(point);
  } else if (check.kind == "truck-proof" || check.kind == "loader-proof") {
    if (addNets(point, job, index)) tellError(point);
  } else {
    return;
  }
}

/// Whether a job that ended done taught the scale: it gave a calibration, or went one of the ways that its
/// unit offered.
bool hasTaught(const Store& store, const RecordedJob& job) {
  if (job.phase != "done") return false;
  if (job.calibration != nullptr) return true;
  if (job.variant.empty()) return false;
  const Expected<std::string> profile = blobsOf(store)(job.unit_profile);
  if (!profile) return false;
  const Expected<JsonDocument> document = readJson(*profile, "unit");
  if (!document) return false;
  const JsonValue* const teaching = memberAt(document->root, {"teaching"});
  return teaching != nullptr &&
         std::ranges::find(teaching->items, job.variant, &JsonValue::text) != teaching->items.end();
}

/// The records about a unit that are a job's, with their contents; the newest first.
template <class Visit>
Expected<void> visitRecords(const Store& store, std::string_view unit, Visit visit) {
  const Expected<std::vector<std::string>> names = store.statementNames(unit);
  if (!names) return std::unexpected(names.error());
  for (const std::string& name : *names) {
    const Expected<records::Record> record = recordOf(store, name);
    if (!record) continue;  // a further signature, or what verification will speak of
    const std::optional<RecordedJob> job = readRecordedJob(record->content);
    if (!job) continue;
    const Expected<bool> more = visit(name, *record, *job);
    if (!more) return std::unexpected(more.error());
    if (!*more) break;
  }
  return {};
}

}  // namespace

std::string_view nameOf(UnitState state) { return nameIn(kStates, state); }

std::string sentenceOf(UnitState state) { return "state-" + std::string(nameOf(state)); }

Expected<Overview> unitStates(const Store& store, std::int64_t utc_ms, const Edge& edge, const Reader& reader,
                              std::int64_t soon_ms) {
  const Expected<std::vector<store::Unit>> units = store.units();
  if (!units) return std::unexpected(units.error());
  Expected<std::vector<DuePair>> due = duePairs(store, edge, INT64_MAX);
  if (!due) return std::unexpected(due.error());
  std::map<std::string, std::vector<DuePair>> pairs;
  for (DuePair& each : *due) pairs[each.pair.unit].push_back(std::move(each));
  ProcedureShelf shelf(store, reader);
  Overview overview;
  for (const store::Unit& unit : *units) {
    Expected<UnitOverview> view =
        unitOverview(store, unit, std::move(pairs[unit.id]), utc_ms, edge, reader, shelf, soon_ms);
    if (!view) return std::unexpected(std::move(view.error()));
    ++countOf(overview, view->state);
    overview.running += static_cast<int>(view->running.size());
    overview.waiting_for_second_person +=
        static_cast<int>(std::ranges::count_if(view->running, &RunningJob::for_second_person));
    overview.units.push_back(*std::move(view));
  }
  std::ranges::sort(overview.units, {}, [](const auto& each) { return std::tie(each.state, each.id); });
  return overview;
}

Expected<Confirmations> confirmations(const Store& store, const Edge& edge, const Reader& reader,
                                      std::int64_t since_utc_ms) {
  Confirmations list;
  ProcedureShelf shelf(store, reader);
  const Expected<std::vector<Job>> running = store.jobsRunning();
  if (!running) return std::unexpected(running.error());
  for (const Job& each : *running) {
    const Expected<OpenJob> job = openJob(store, each.id, edge);
    if (!job) return std::unexpected(job.error());
    const Expected<const ProcedureText*> text = shelf.find(each.procedure, each.words, each.language);
    if (!text) return std::unexpected(text.error());
    addConfirmed(list.confirmed, *job, **text, reader);
    Expected<RunningJob> view = runningJob(*job, shelf, reader);
    if (!view) return std::unexpected(std::move(view.error()));
    if (!view->for_second_person) continue;
    const Step& step = *procedures::findStep(job->procedure, view->waits_at);
    AwaitedConfirmation awaited{.job = *std::move(view),
                                .unit = each.unit,
                                .second_person = step.second_person,
                                .roles = othersFor(*job, step)};
    for (const procedures::Try& made : job->state.tries) {
      const Step* const of = procedures::findStep(job->procedure, made.event.about);
      if (of == nullptr || of->kind != procedures::StepKind::Evidence ||
          of->evidence != procedures::EvidenceKind::Photo) {
        continue;
      }
      awaited.photos.insert(awaited.photos.end(), made.event.hashes.begin(), made.event.hashes.end());
    }
    list.awaited.push_back(std::move(awaited));
  }
  std::ranges::sort(list.awaited, {},
                    [](const auto& each) { return std::tie(each.job.last_utc_ms, each.unit); });
  const Expected<records::SignersVerdict> signers = signersOf(store);
  if (!signers && signers.error().message.code != "signers-none") return std::unexpected(signers.error());
  const records::SignersList* const listed = signers ? &*signers->list : nullptr;
  const Expected<void> visited = visitRecords(
      store, "",
      [&](const std::string& name, const records::Record& record, const RecordedJob& job) -> Expected<bool> {
        if (record.envelope.sealed_utc_ms < since_utc_ms) return false;
        const Expected<const ProcedureText*> text = shelf.find(job.procedure_hash, job.words, job.language);
        // A record from elsewhere may have come without its procedure.
        if (text) addConfirmed(list.confirmed, job, name, **text, listed, reader);
        return true;
      });
  if (!visited) return std::unexpected(visited.error());
  std::erase_if(list.confirmed, [&](const Confirmation& each) { return each.utc_ms < since_utc_ms; });
  std::ranges::sort(list.confirmed, std::ranges::greater{},
                    [](const auto& each) { return std::tie(each.utc_ms, each.unit, each.step); });
  return list;
}

Expected<std::vector<CheckedOut>> checkOuts(const Store& store) {
  const Expected<std::vector<store::Unit>> units = store.units();
  if (!units) return std::unexpected(units.error());
  std::vector<CheckedOut> out;
  for (const store::Unit& unit : *units) {
    const Expected<std::vector<Job>> jobs = store.jobs(unit.id);
    if (!jobs) return std::unexpected(jobs.error());
    for (const Job& job : *jobs) {
      if (job.procedure_id == "return-check" && hasEnded(job)) break;
      if (job.procedure_id != "check-out" || job.phase != "done") continue;
      const Expected<records::Record> record = recordOf(store, job.record);
      if (!record) return std::unexpected(record.error());
      out.push_back({.unit = unit.id,
                     .attachment = job.attachment,
                     .record = job.record,
                     .variant = textAt(record->content, {"start", "variant"}),
                     .utc_ms = record->envelope.sealed_utc_ms});
      break;
    }
  }
  std::ranges::sort(out, {}, [](const auto& each) { return std::tie(each.utc_ms, each.unit); });
  return out;
}

Expected<std::vector<Hire>> hiresOf(const Store& store, std::string_view unit) {
  const Expected<std::vector<Job>> jobs = store.jobs(unit);
  if (!jobs) return std::unexpected(jobs.error());
  std::vector<Hire> hires;
  std::optional<Hire> back;
  for (const Job& job : *jobs) {
    if (!hasEnded(job)) continue;
    if (job.procedure_id == "return-check") {
      back = Hire{.unit = job.unit, .return_check = job.record, .back_utc_ms = job.begun_utc_ms};
    } else if (job.procedure_id == "check-out" && job.phase == "done" && back) {
      hires.push_back(*back);
      hires.back().check_out = job.record;
      hires.back().out_utc_ms = job.begun_utc_ms;
      back.reset();
    }
  }
  return hires;
}

HistoryPoint historyPointOf(const Store& store, const RecordedJob& job, const std::string& name) {
  HistoryPoint point{.record = name,
                     .procedure = job.procedure,
                     .utc_ms = job.ended_utc_ms,
                     .phase = job.phase,
                     .calibration = hasTaught(store, job)};
  std::map<std::string, bool, std::less<>> passed;  // of each check, the last time
  for (std::size_t index = 0; index < job.tries.size(); ++index) {
    if (!job.tries[index].check) continue;
    addCheck(point, job, index);
    const std::string& quantity_check = job.tries[index].about;
    if (readsOnly(job, job.tries[index].check->of, "indication")) {
      passed[quantity_check] = job.tries[index].outcome == "passed";
    }
  }
  if (point.zero_kg && point.indication_kg && point.reference_kg) {
    point.span = (*point.indication_kg - *point.zero_kg) / *point.reference_kg;
  }
  if (point.error_percent) {
    // What was found before teaching does not judge what was left.
    const bool failed = job.phase == "failed" && std::ranges::any_of(passed, [&](const auto& each) {
                          return each.first == job.failed_step;
                        });
    point.verdict = failed ? "failed" : (job.phase == "done" ? "passed" : "");
  }
  return point;
}

Expected<std::vector<HistoryPoint>> historyOf(const Store& store, std::string_view unit,
                                              std::string_view attachment) {
  std::vector<HistoryPoint> points;
  const Expected<void> visited = visitRecords(
      store, unit,
      [&](const std::string& name, const records::Record&, const RecordedJob& job) -> Expected<bool> {
        if (!attachment.empty() && job.attachment != attachment) return true;
        HistoryPoint point = historyPointOf(store, job, name);
        if (point.zero_kg || point.error_percent || point.calibration) points.push_back(std::move(point));
        return true;
      });
  if (!visited) return std::unexpected(visited.error());
  std::ranges::sort(points, {}, [](const auto& each) { return std::tie(each.utc_ms, each.record); });
  return points;
}

Expected<std::vector<RecordLine>> recordsOf(const Store& store, std::string_view unit, const Reader& reader) {
  const Expected<records::Evidence> evidence = store.evidence();
  if (!evidence) return std::unexpected(evidence.error());
  const records::Verification verification = records::verify(*evidence);
  std::multimap<std::string, const records::Finding*> found;
  for (const records::Finding& finding : verification.findings) found.emplace(finding.subject, &finding);
  ProcedureShelf shelf(store, reader);
  std::vector<RecordLine> lines;
  std::map<std::string, std::vector<RecordSignature>> signatures;
  std::map<std::string, std::vector<std::string>> amendments;
  for (const records::StatementVerdict& verdict : verification.statements) {
    if (!verdict.statement) {
      if (unit.empty()) lines.push_back({.name = verdict.name, .standing = verdict.standing});
    } else if (const auto* const signature = std::get_if<records::Signature>(&*verdict.statement)) {
      signatures[signature->record].push_back({.name = verdict.name,
                                               .key = signature->envelope.place.key,
                                               .role = signature->envelope.role,
                                               .utc_ms = signature->envelope.sealed_utc_ms,
                                               .standing = verdict.standing});
    } else {
      const auto& record = std::get<records::Record>(*verdict.statement);
      if (record.amends && verdict.standing == records::Standing::Trusted) {
        amendments[*record.amends].push_back(verdict.name);
      }
      if (!unit.empty() && textAt(record.content, {"unit", "id"}) != unit) continue;
      RecordLine line{.name = verdict.name,
                      .utc_ms = record.envelope.sealed_utc_ms,
                      .key = record.envelope.place.key,
                      .role = record.envelope.role,
                      .amends = record.amends.value_or(""),
                      .standing = verdict.standing};
      if (const std::optional<RecordedJob> job = readRecordedJob(record.content)) {
        line.procedure = job->procedure;
        line.attachment = job->attachment;
        line.phase = job->phase;
        line.practice = job->practice;
        line.taught = hasTaught(store, *job);
        const Expected<const ProcedureText*> text =
            shelf.find(job->procedure_hash, job->words, job->language);
        line.title = text ? wordsOf(**text, (*text)->procedure.title, reader) : shelf.titleOf(job->procedure);
      } else if (const std::optional<proof::Event> event = eventOf(record.content)) {
        line.attachment = textAt(record.content, {"attachment", "id"});
        line.title = say({"due-event-" + std::string(nameIn(proof::kEventNames, *event)), {}}, reader);
      } else {
        line.title = say({"document-correction", {}}, reader);
      }
      lines.push_back(std::move(line));
    }
  }
  for (RecordLine& line : lines) {
    line.signatures = signatures[line.name];
    line.amended_by = amendments[line.name];
    const auto [first, last] = found.equal_range(line.name);
    for (auto each = first; each != last; ++each) line.findings.push_back(each->second->message);
  }
  std::ranges::sort(lines, std::ranges::greater{},
                    [](const auto& each) { return std::tie(each.utc_ms, each.name); });
  return lines;
}

Expected<std::vector<OfferedProcedure>> proceduresFor(const Store& store, std::string_view unit_id,
                                                      std::string_view attachment_id, std::string_view role,
                                                      const Moment& now, const Edge& edge,
                                                      const Reader& reader) {
  const Expected<std::optional<store::Unit>> stored = store.unit(unit_id);
  if (!stored) return std::unexpected(stored.error());
  if (!*stored) return fail(ErrorKind::NotFound, "unit-not-in-store", {{"unit", std::string(unit_id)}});
  const Expected<UnitProfile> unit =
      readUnitProfile((*stored)->profile, "unit " + std::string(unit_id), edge);
  if (!unit) return std::unexpected(unit.error());
  std::optional<AttachmentProfile> attachment;
  if (!attachment_id.empty()) {
    const Expected<std::optional<store::Attachment>> fitted = store.attachment(attachment_id);
    if (!fitted) return std::unexpected(fitted.error());
    if (!*fitted) {
      return fail(ErrorKind::NotFound, "attachment-not-in-store",
                  {{"attachment", std::string(attachment_id)}});
    }
    Expected<AttachmentProfile> read =
        readAttachmentProfile((*fitted)->profile, "attachment " + std::string(attachment_id), edge);
    if (!read) return std::unexpected(std::move(read.error()));
    attachment = *std::move(read);
  }
  const Expected<const Words*> words = allWords(reader.language);
  if (!words) return std::unexpected(words.error());
  const ProcedureShelf shelf(store, reader);
  const auto wordOf = [&](const std::string& code) {
    const auto found = (*words)->find(code);
    return found == (*words)->end() ? code : found->second;
  };

  std::vector<OfferedProcedure> offers;
  for (const procedures::LibraryEntry& entry : procedures::library()) {
    const auto procedure = procedures::readProcedure(std::string(entry.text), std::string(entry.id));
    if (!procedure) return std::unexpected(procedure.error());
    if (std::ranges::find(procedure->run_roles, role) == procedure->run_roles.end()) continue;
    OfferedProcedure offer{.id = procedure->id,
                           .title = wordOf(procedure->title),
                           .comes_first = wordOf(procedure->comes_first),
                           .can_begin = true};
    for (const std::string& tool : procedure->tools) offer.tools.push_back(wordOf(tool));
    const auto isTaught = [&](const procedures::Variant& variant) {
      return std::ranges::find(unit->teaching, variant.id) != unit->teaching.end();
    };
    // As beginJob refuses them: where any variant is a way that the unit teaches by, the others are not.
    const bool teaches = std::ranges::any_of(procedure->variants, isTaught);
    for (const procedures::Variant& variant : procedure->variants) {
      offer.variants.push_back(
          {.id = variant.id, .text = wordOf(variant.text), .offered = !teaches || isTaught(variant)});
    }
    for (const procedures::Entry& each : procedure->entries) {
      NeededEntry needed{.id = each.id, .unit = each.unit};
      const auto give = [&](const Entries& entries, const char* from) {
        const auto found = entries.find(each.id);
        if (needed.from.empty() && found != entries.end()) {
          needed.value = found->second;
          needed.from = from;
        }
      };
      if (attachment) give(attachment->entries, "attachment");
      give(unit->entries, "unit");
      if (needed.from.empty() && !each.standard.empty()) {
        needed.value = each.standard;
        needed.from = "procedure";
      }
      if (needed.unit.empty()) needed.unit = each.standard.substr(each.standard.find(' ') + 1);
      if (needed.from.empty()) offer.can_begin = false;
      offer.entries.push_back(std::move(needed));
    }
    const Expected<std::vector<procedures::Completed>> completed =
        completedOn(store, std::string(unit_id), *procedure, now);
    if (!completed) return std::unexpected(completed.error());
    for (const procedures::Prerequisite& needed : procedure->prerequisites) {
      OfferedPrerequisite prerequisite{
          .procedure = needed.procedure, .title = shelf.titleOf(needed.procedure), .missing = true};
      bool young = false;
      for (const procedures::Completed& each : *completed) {
        if (each.procedure != needed.procedure) continue;
        prerequisite.missing = false;
        young = young || (each.age_ms && *each.age_ms <= procedures::milliseconds(needed.not_older_than));
      }
      prerequisite.too_old = !prerequisite.missing && !young;
      if (!young) offer.can_begin = false;
      offer.prerequisites.push_back(std::move(prerequisite));
    }
    offers.push_back(std::move(offer));
  }
  std::ranges::sort(offers, {}, [](const auto& each) { return std::tie(each.title, each.id); });
  return offers;
}

}  // namespace hingepin::session
