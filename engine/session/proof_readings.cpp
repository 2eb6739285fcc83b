// SPDX-License-Identifier: Apache-2.0
#include "engine/session/proof_readings.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <map>
#include <tuple>
#include <utility>

#include "engine/calibration/calibration.h"
#include "engine/certificate/certificate.h"
#include "engine/session/job_record.h"
#include "engine/session/moment.h"
#include "engine/session/told.h"
#include "engine/units/ucum.h"

namespace hingepin::session {
namespace {

using procedures::Step;

/// The pass that a step's reading belongs to: the one done last before it.
const Step* passBefore(const procedures::Procedure& procedure, const std::string& variant,
                       std::string_view step) {
  const Step* pass = nullptr;
  for (const Step& each : procedure.steps) {
    if (each.id == step) return pass;
    if (each.kind == procedures::StepKind::Pass && procedures::hasStep(variant, each)) pass = &each;
  }
  return nullptr;
}

std::string paceOf(const Step* pass) {
  if (pass == nullptr) return "";
  switch (pass->pace) {
    case procedures::Pace::Slow:
      return "slow";
    case procedures::Pace::Fast:
      return "fast";
    case procedures::Pace::Own:
      return "own";
  }
  return "";
}

bool isIndication(const RecordedTry& each) { return each.type == "reading" && each.quantity == "indication"; }

Mass massAt(const RecordedJob& job, std::size_t at) {
  return Mass::fromSi(siOf(job.tries[at].value).value_or(0.0));
}

const procedures::Check* checkOf(const procedures::Procedure& procedure, std::string_view step) {
  const Step* const found = procedures::findStep(procedure, step);
  return found != nullptr && found->check ? &*found->check : nullptr;
}

/// The limit that a check names, for loads up to the heaviest that there is.
std::optional<proof::Tolerance> toleranceOf(const std::string& within) {
  constexpr double kAnyLoad_kg = 1e6;
  const Expected<ReadQuantity> read = readAnyQuantity(within);
  if (read && read->unit.dimension == Dimension::Number)
    return proof::PercentLimit{.limit = Fraction::fromSi(read->value_si)};
  if (read && read->unit.dimension == Dimension::Mass)
    return proof::StepLimit{
        {{.up_to = Mass::fromKilograms(kAnyLoad_kg), .limit = Mass::fromSi(read->value_si)}}};
  return std::nullopt;
}

std::vector<Mass> massesAt(const RecordedJob& job, const std::vector<std::size_t>& tries) {
  std::vector<Mass> masses;
  for (const std::size_t at : tries) masses.push_back(massAt(job, at));
  return masses;
}

/// Of one mass: its readings, all with what the check that compares them says of it.
void addMass(const RecordedJob& job, const procedures::Procedure& procedure, Mass reference,
             ProofReadings::Known known, ProofReadings& read) {
  const Step* const pass = passBefore(procedure, job.variant, job.tries[known.indications.front()].about);
  known.truck = pass == nullptr || pass->load != procedures::Load::TestMass;
  known.pace = known.truck ? "" : paceOf(pass);
  proof::KnownMass mass;
  mass.reference = reference;
  mass.indications = massesAt(job, known.indications);
  if (known.pace == "slow") mass.pace = proof::ProofPace::Slow;
  if (known.pace == "fast") mass.pace = proof::ProofPace::Fast;
  const std::string& how = job.tries[known.indications.front()].how;
  known.weighed = how == "log" || how == "live";
  // The same mass once more, lifted likewise, is the same series.
  for (std::size_t i = 0; i < read.masses.size(); ++i) {
    if (read.proof.masses[i].reference != reference || read.masses[i].pace != known.pace ||
        read.masses[i].weighed != known.weighed)
      continue;
    const auto append = [](auto& to, const auto& more) { to.insert(to.end(), more.begin(), more.end()); };
    append(read.proof.masses[i].indications, mass.indications);
    append(read.masses[i].indications, known.indications);
    return;
  }
  read.proof.masses.push_back(std::move(mass));
  read.masses.push_back(std::move(known));
}

/// An older check: all indications against one mass, or against one that an entry says.
void addAgreement(const RecordedJob& job, const procedures::Procedure& procedure, std::size_t index,
                  ProofReadings::Known known, ProofReadings& read) {
  const RecordedTry& made = job.tries[index];
  const procedures::Check* const check = checkOf(procedure, made.about);
  std::optional<double> reference;
  if (!made.check->reference_entry.empty()) {
    const Expected<double> mass = readSi(made.check->reference_entry, Dimension::Mass);
    if (mass) reference = *mass;
    known.reference_entry =
        check != nullptr && check->reference_entry ? check->reference_entry->entry : made.about;
  } else {
    const std::vector<std::size_t> references = readingsBefore(job, index, {made.check->reference});
    if (references.empty() || job.tries[references.back()].quantity != "reference-mass") return;
    known.references = {references.back()};
    reference = massAt(job, references.back()).inSi();
  }
  if (!reference || *reference <= 0) return;
  addMass(job, procedure, Mass::fromSi(*reference), std::move(known), read);
}

/// Each indication against the mass that was read last before it.
void addMasses(const RecordedJob& job, const procedures::Procedure& procedure, std::size_t index,
               const ProofReadings::Known& known, ProofReadings& read) {
  const std::vector<std::size_t> references = readingsBefore(job, index, {job.tries[index].check->reference});
  for (const std::size_t at : known.indications) {
    const auto after = std::ranges::lower_bound(references, at);
    if (after == references.begin()) continue;
    const Mass reference = massAt(job, *std::prev(after));
    if (reference.inSi() <= 0) continue;
    ProofReadings::Known one = known;
    one.references = {*std::prev(after)};
    one.indications = {at};
    addMass(job, procedure, reference, std::move(one), read);
  }
}

/// "2026-11-30": as a day of the calendar is compared with others.
bool isDay(std::string_view text) {
  constexpr std::string_view kShape = "0000-00-00";
  return std::ranges::equal(text, kShape, [](char byte, char wanted) {
    return wanted == '0' ? byte >= '0' && byte <= '9' : byte == wanted;
  });
}

/// What was told of the truck scale for one gross: what stands nearest to it.
proof::TruckScale scaleAt(const RecordedJob& job, const RecordedCheck& check, std::size_t gross,
                          std::size_t tare) {
  proof::TruckScale scale;
  scale.interval = Mass::fromSi(siOf(check.interval).value_or(0.0));
  if (const auto legal = siOf(check.legal_gross)) scale.legal_gross = Mass::fromSi(*legal);
  // "2026-05-04T10:15"
  constexpr std::size_t kMinutes = 16;
  scale.gross_time = utcText(job.tries[gross].utc_ms).substr(0, kMinutes);
  scale.tare_time = utcText(job.tries[tare].utc_ms).substr(0, kMinutes);
  for (const auto& [key, step] : check.scale) {
    const RecordedTry* before = nullptr;
    const RecordedTry* after = nullptr;
    for (std::size_t at = 0; at < job.tries.size() && after == nullptr; ++at) {
      const RecordedTry& each = job.tries[at];
      if (at > gross && each.counts && each.about == check.gross) break;
      if (each.about == step && each.type == "answer" && each.counts) (at < gross ? before : after) = &each;
    }
    // The ticket is written down after its gross, all else before it.
    const bool late = before == nullptr || (key == "gross_ticket" && after != nullptr);
    const RecordedTry* const told = late ? after : before;
    if (told == nullptr) continue;
    const bool yes = told->answer == "yes";
    if (key == "zeroed") scale.zeroed = yes;
    if (key == "whole_on_deck") scale.whole_on_deck = yes;
    if (key == "same_driver_fuel") scale.same_driver_fuel = yes;
    if (key == "gross_ticket") scale.gross_ticket = told->value;
    if (key == "tare_ticket") scale.tare_ticket = told->value;
    if (key == "certificate") scale.certificate = told->value;
    if (key == "certificate_expires" && isDay(told->value)) scale.certificate_expires = told->value;
  }
  return scale;
}

/// Each gross with the tare before it and the indications between the two.
void addTrucks(const RecordedJob& job, std::size_t index, const std::vector<std::size_t>& indications,
               ProofReadings& read) {
  const RecordedCheck& check = *job.tries[index].check;
  const std::vector<std::size_t> tares = readingsBefore(job, index, {check.tare});
  for (const std::size_t gross : readingsBefore(job, index, {check.gross})) {
    const auto after = std::ranges::lower_bound(tares, gross);
    if (after == tares.begin()) continue;
    ProofReadings::Known truck{
        .references = {gross, *std::prev(after)}, .truck = true, .indications = indications};
    std::erase_if(truck.indications,
                  [&](std::size_t at) { return at > gross || at < truck.references.back(); });
    if (truck.indications.empty()) continue;
    read.proof.trucks.push_back({.gross = massAt(job, gross),
                                 .tare = massAt(job, truck.references.back()),
                                 .scale = scaleAt(job, check, gross, truck.references.back()),
                                 .indications = massesAt(job, truck.indications)});
    read.trucks.push_back(std::move(truck));
  }
}

/// What holds of a scale for all weighings so far holds if it does for one more.
void meet(proof::TruckScale& all, const proof::TruckScale& more) {
  const auto both = [](std::optional<bool>& one, std::optional<bool> other) {
    one = one.value_or(false) && other.value_or(false);
  };
  both(all.zeroed, more.zeroed);
  both(all.whole_on_deck, more.whole_on_deck);
  both(all.same_driver_fuel, more.same_driver_fuel);
  all.gross_time = more.gross_time;
  if (more.gross_ticket.empty()) all.gross_ticket.clear();
}

/// Each loaded loader with the indication before it; those after one empty weighing are one series.
void addLoader(const RecordedJob& job, std::size_t index, const std::vector<std::size_t>& indications,
               ProofReadings& read) {
  const RecordedCheck& check = *job.tries[index].check;
  const std::vector<std::size_t> tares = readingsBefore(job, index, {check.tare});
  std::size_t since = 0;
  for (const std::size_t gross : readingsBefore(job, index, {check.gross})) {
    const auto after = std::ranges::lower_bound(tares, gross);
    const auto shown = std::ranges::lower_bound(indications, gross);
    if (after == tares.begin() || shown == indications.begin()) continue;
    const std::size_t tare = *std::prev(after);
    const std::size_t indication = *std::prev(shown);
    if (indication < std::max(tare, std::exchange(since, gross))) continue;
    const proof::TruckScale scale = scaleAt(job, check, gross, tare);
    if (read.loaders.empty() || read.loaders.back().references.front() != tare) {
      read.loaders.push_back({.references = {tare}, .truck = true});
      read.proof.loader_on_scale.push_back({.empty = massAt(job, tare), .scale = scale, .buckets = {}});
    }
    proof::LoaderOnScale& loader = read.proof.loader_on_scale.back();
    meet(loader.scale, scale);
    loader.buckets.push_back({.loaded = massAt(job, gross), .indication = massAt(job, indication)});
    read.loaders.back().references.push_back(gross);
    read.loaders.back().indications.push_back(indication);
  }
}

/// Indications of the empty bucket.
std::vector<std::size_t> zerosOf(const RecordedJob& job, const procedures::Procedure& procedure,
                                 bool as_found) {
  std::vector<std::size_t> zeros;
  for (std::size_t at = 0; at < job.tries.size(); ++at) {
    const RecordedTry& each = job.tries[at];
    if (!isIndication(each) || !each.counts || isAsFound(each) != as_found) continue;
    const Step* const pass = passBefore(procedure, job.variant, each.about);
    if (pass != nullptr && pass->load == procedures::Load::Empty) zeros.push_back(at);
  }
  return zeros;
}

std::string kilograms(double value_kg, int decimals) { return fmt::format("{:.{}f} kg", value_kg, decimals); }

/// How many buckets decide: the check of a plan, which only tells.
Expected<procedures::Verdict> planned(const RecordedJob& job, std::size_t index, bool loader_on_scale,
                                      const ScaleFacts& facts) {
  const RecordedCheck& check = *job.tries[index].check;
  const std::vector<double> buckets = valuesBefore(job, index, check.of);
  const std::vector<double> loads_kg = valuesBefore(job, index, {check.reference});
  if (buckets.empty() || loads_kg.empty()) return fail(ErrorKind::Insufficient, "no-value");
  const std::optional<proof::Tolerance> limit =
      facts.terms.tolerance ? facts.terms.tolerance : toleranceOf(check.within);
  if (!limit) return fail(ErrorKind::InvalidInput, "limit-missing");
  proof::Proof proof;
  proof.rated_payload = facts.rated;
  proof.tolerance = *limit;
  proof.decision = facts.terms.decision;
  proof.plan = proof::Plan{.bucket = Mass::fromSi(loads_kg.back()),
                           .loader_on_scale = loader_on_scale,
                           .buckets = std::max(1, static_cast<int>(std::lround(buckets.back()))),
                           .repeatability = Mass::fromSi(siOf(check.at_most).value_or(0.0)),
                           .scale_interval = Mass::fromSi(siOf(check.interval).value_or(0.0))};
  const Expected<proof::ProofResult> result = proof::prove(proof);
  if (!result) return std::unexpected(result.error());
  return procedures::Verdict{.passed = true,
                             .result = kilograms(result->plan->smallest_error_shown_kg, 0),
                             .reason = "planned",
                             .more = result->plan->buckets.value_or(0)};
}

}  // namespace

std::vector<const proof::Judgement*> judgementsOf(const proof::ProofResult& result) {
  std::vector<const proof::Judgement*> all;
  for (const proof::Judgement& each : result.masses) all.push_back(&each);
  if (result.trucks_together) {
    all.push_back(&*result.trucks_together);
  } else {
    for (const proof::Judgement& each : result.trucks) all.push_back(&each);
  }
  for (const proof::Judgement& each : result.loader_on_scale) all.push_back(&each);
  return all;
}

const proof::Judgement& worstOf(const std::vector<const proof::Judgement*>& all) {
  constexpr std::array kWorstFirst = {proof::Verdict::DoesNotHold, proof::Verdict::Undecided,
                                      proof::Verdict::Holds};
  return **std::ranges::min_element(all, {}, [&](const proof::Judgement* each) {
    return std::pair(std::ranges::find(kWorstFirst, each->verdict) - kWorstFirst.begin(),
                     each->probability_of_conformity);
  });
}

ScaleFacts factsOf(const UnitProfile& unit) {
  const auto massOf = [](const std::string& text) {
    const Expected<double> mass = readSi(text, Dimension::Mass);
    return mass ? std::optional(Mass::fromSi(*mass)) : std::nullopt;
  };
  ScaleFacts facts{.terms = unit.terms};
  const auto rated = unit.entries.find("rated-payload");
  if (rated != unit.entries.end()) facts.rated = massOf(rated->second);
  const auto shown = std::ranges::find(unit.monitor, "indication", &Shown::quantity);
  if (shown != unit.monitor.end()) facts.step = massOf(shown->step);
  return facts;
}

ProofReadings onTruckScale(const RecordedJob& job, std::size_t index) {
  ProofReadings read;
  const std::optional<RecordedCheck>& check = job.tries[index].check;
  if (!check) return read;
  const std::vector<std::size_t> indications = readingsBefore(job, index, check->of);
  if (check->kind == "truck-proof") addTrucks(job, index, indications, read);
  if (check->kind == "loader-proof") addLoader(job, index, indications, read);
  return read;
}

std::optional<ProofReadings> readingsOfCheck(const RecordedJob& job, const procedures::Procedure& procedure,
                                             std::size_t index, const ScaleFacts& facts) {
  const RecordedTry& made = job.tries[index];
  if (!made.check) return std::nullopt;
  const bool older = made.check->kind == "agreement-of-two-readings";
  const bool masses = made.check->kind == "proof";
  const bool on_scale = made.check->kind == "truck-proof" || made.check->kind == "loader-proof";
  if (!older && !masses && !on_scale) return std::nullopt;
  ProofReadings::Known known{.indications = readingsBefore(job, index, made.check->of)};
  if (known.indications.empty()) return std::nullopt;
  for (const std::size_t at : known.indications) {
    if (!isIndication(job.tries[at])) return std::nullopt;
  }
  const bool as_found = isAsFound(made);
  ProofReadings read = onTruckScale(job, index);
  read.proof.unit = job.unit;
  read.proof.rated_payload = facts.rated;
  read.proof.when = as_found ? proof::When::AsFound : proof::When::AsLeft;
  read.proof.display_step = facts.step;
  const procedures::Check* const check = checkOf(procedure, made.about);
  known.limit_entry =
      check != nullptr && check->within && !check->within->entry.empty() ? check->within->entry : made.about;
  std::optional<proof::Tolerance> limit = toleranceOf(made.check->within);
  if (!older) {
    read.proof.decision = facts.terms.decision;
    if (facts.terms.tolerance) {
      limit = facts.terms.tolerance;
      known.limit_entry = "proof";
    }
  }
  if (!limit) return std::nullopt;
  read.proof.tolerance = *std::move(limit);
  if (older) addAgreement(job, procedure, index, known, read);
  if (masses) addMasses(job, procedure, index, known, read);
  for (auto* const list : {&read.trucks, &read.loaders}) {
    for (ProofReadings::Known& each : *list) each.limit_entry = known.limit_entry;
  }
  if (read.masses.empty() && read.trucks.empty() && read.loaders.empty()) return std::nullopt;
  // The monitor's last digit is none of what the engine weighed.
  if (!read.masses.empty() && std::ranges::all_of(read.masses, &ProofReadings::Known::weighed))
    read.proof.display_step.reset();
  read.zeros = zerosOf(job, procedure, as_found);
  read.proof.zero_indications = massesAt(job, read.zeros);
  return read;
}

std::vector<ProofReadings> proofsOf(const RecordedJob& job, const procedures::Procedure& procedure,
                                    const ScaleFacts& facts) {
  std::map<std::string, std::size_t> last;  // each check's last time
  for (std::size_t index = 0; index < job.tries.size(); ++index) {
    if (job.tries[index].check) last[job.tries[index].about] = index;
  }
  std::vector<std::size_t> checks;
  for (const auto& [about, index] : last) checks.push_back(index);
  std::ranges::sort(checks);

  std::vector<ProofReadings> proofs;
  std::vector<std::tuple<bool, bool, std::string>> limits;  // of each: as left, judged by terms, limit
  for (const bool as_found : {true, false}) {
    for (const std::size_t index : checks) {
      const RecordedTry& made = job.tries[index];
      if (isAsFound(made) != as_found) continue;
      std::optional<ProofReadings> read = readingsOfCheck(job, procedure, index, facts);
      if (!read) continue;
      const std::tuple limit{!as_found, made.check->kind != "agreement-of-two-readings", made.check->within};
      const auto known = std::ranges::find(limits, limit);
      if (known == limits.end()) {
        limits.push_back(limit);
        proofs.push_back(*std::move(read));
        continue;
      }
      ProofReadings& all = proofs[static_cast<std::size_t>(known - limits.begin())];
      const auto append = [](auto& to, auto& more) { std::ranges::move(more, std::back_inserter(to)); };
      append(all.masses, read->masses);
      append(all.proof.masses, read->proof.masses);
      append(all.trucks, read->trucks);
      append(all.proof.trucks, read->proof.trucks);
      append(all.loaders, read->loaders);
      append(all.proof.loader_on_scale, read->proof.loader_on_scale);
    }
  }
  return proofs;
}

Expected<procedures::Verdict> judged(const OpenJob& job, const Step& check) {
  const JsonValue content = contentBefore(job, check);
  const std::optional<RecordedJob> recorded = readRecordedJob(content);
  if (!recorded || recorded->tries.empty()) return fail(ErrorKind::Insufficient, "no-value");
  const ScaleFacts facts = factsOf(job.unit);
  const std::size_t index = recorded->tries.size() - 1;
  if (check.check->kind == procedures::CheckKind::Plan)
    return planned(*recorded, index, check.check->loader_on_scale, facts);
  const std::optional<ProofReadings> read = readingsOfCheck(*recorded, job.procedure, index, facts);
  if (!read) return fail(ErrorKind::Insufficient, "no-value");
  const Expected<proof::ProofResult> result = proof::prove(read->proof);
  if (!result) return std::unexpected(result.error());
  const std::vector<const proof::Judgement*> all = judgementsOf(*result);
  const proof::Judgement& worst = worstOf(all);
  const int decimals = certificate::decimalsFor(worst.error.expanded_uncertainty_kg);
  procedures::Verdict verdict{.passed = worst.verdict == proof::Verdict::Holds,
                              .result = kilograms(worst.error.value_kg, decimals),
                              .limit = kilograms(worst.limit_kg, decimals),
                              .undecided = worst.verdict == proof::Verdict::Undecided};
  if (!verdict.passed) verdict.reason = proof::codeOf(worst.verdict);
  if (!verdict.undecided) return verdict;
  for (const proof::Judgement* const each : all) {
    if (each->verdict != proof::Verdict::Undecided) continue;
    // One that no number decides leaves all of it open.
    if (!each->readings_to_decide) {
      verdict.more = 0;
      return verdict;
    }
    verdict.more = std::max(verdict.more, *each->readings_to_decide - each->count);
  }
  return verdict;
}

namespace {

struct Weigher {
  calibration::Calibration calibration;
  std::string hash;  ///< "" for that of the job itself
};

/// By what the lift of a reading is weighed.
Expected<std::optional<Weigher>> weigherOf(const store::Store& store, const OpenJob& job, const Step& reading,
                                           const Edge& edge) {
  const bool as_found = isAsFound(reading.id);
  if (!as_found) {
    Expected<std::optional<Fit>> own = fitOf(store, job, edge);
    if (!own) return std::unexpected(std::move(own.error()));
    if (*own) return Weigher{std::move((*own)->calibration), ""};
  }
  // What is being taught anew is not proved by what held before.
  const bool teaches = std::ranges::any_of(
      job.procedure.steps, [](const Step& step) { return step.use == procedures::Use::Calibration; });
  if ((teaches && !as_found) || job.job.attachment.empty()) return std::nullopt;
  const Expected<std::optional<store::Pair>> pair = store.pair(job.job.unit, job.job.attachment);
  if (!pair) return std::unexpected(pair.error());
  if (!*pair || (*pair)->calibration.empty()) return std::nullopt;
  Expected<std::string> text = blobsOf(store)((*pair)->calibration);
  if (!text && text.error().kind == ErrorKind::NotFound) return std::nullopt;  // not arrived yet
  if (!text) return std::unexpected(std::move(text.error()));
  Expected<calibration::Calibration> read = edge.read_calibration(*std::move(text));
  if (!read) return std::nullopt;
  return Weigher{*std::move(read), (*pair)->calibration};
}

}  // namespace

Expected<std::optional<WeighedLift>> weighedLift(const store::Store& store, const OpenJob& job,
                                                 const Step& reading, const Edge& edge) {
  if (reading.quantity != "indication") return std::nullopt;
  const Step* const pass = passBefore(job.procedure, job.state.start.variant, reading.id);
  if (pass == nullptr) return std::nullopt;
  const auto lift =
      std::ranges::find_if(job.state.tries.rbegin(), job.state.tries.rend(), [&](const auto& each) {
        return each.counts && each.event.about == pass->id &&
               each.event.type == procedures::EventType::Answer;
      });
  if (lift == job.state.tries.rend() || lift->event.hashes.empty()) return std::nullopt;
  const Expected<std::optional<Weigher>> weigher = weigherOf(store, job, reading, edge);
  if (!weigher) return std::unexpected(weigher.error());
  if (!*weigher) return std::nullopt;
  const Expected<std::string> bytes = blobsOf(store)(lift->event.hashes.front());
  if (!bytes) return std::unexpected(bytes.error());
  const Expected<calibration::LiftLog> log = edge.read_log(*bytes, pass->id);
  if (!log) return std::nullopt;
  const Expected<calibration::Weighing> weighed = calibration::weigh((*weigher)->calibration, *log);
  if (!weighed) return std::nullopt;
  const int decimals = certificate::decimalsFor(weighed->expanded_uncertainty_kg);
  return WeighedLift{.value = kilograms(weighed->mass_kg, decimals),
                     .expanded_kg = weighed->expanded_uncertainty_kg,
                     .calibration = (*weigher)->hash};
}

std::optional<Message> sayProof(const std::string& result, const std::string& reason,
                                const std::string& limit, std::int64_t more) {
  const auto amountOf = [](const std::string& quantity) -> Amount {
    const Expected<ReadQuantity> read = readAnyQuantity(quantity);
    if (!read) return {0.0, "kg", 0};
    const std::string_view number = std::string_view(quantity).substr(0, quantity.find(' '));
    const std::size_t point = number.find('.');
    const int decimals = point == std::string_view::npos ? 0 : static_cast<int>(number.size() - point - 1);
    return {read->unit.fromSi(read->value_si), std::string(read->unit.ucum), decimals};
  };
  if (reason == "planned") {
    if (more == 0) return Message{"proof-plan-never-decides", {{"smallest", amountOf(result)}}};
    return Message{"check-proof-plan",
                   {{"buckets", Amount{static_cast<double>(more), "1"}}, {"smallest", amountOf(result)}}};
  }
  const bool undecided = reason == "proof-undecided";
  if (!undecided && reason != "proof-does-not-hold") return std::nullopt;
  const std::string code = !undecided ? "check-proof-does-not-hold"
                           : more > 0 ? "check-proof-undecided"
                                      : "check-proof-never-decides";
  return Message{code,
                 {{"error", amountOf(result)},
                  {"limit", amountOf(limit)},
                  {"more", Amount{static_cast<double>(more), "1"}}}};
}

}  // namespace hingepin::session
