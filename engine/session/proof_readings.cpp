// SPDX-License-Identifier: Apache-2.0
#include "engine/session/proof_readings.h"

#include <algorithm>
#include <map>
#include <utility>

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

/// A proof of a known mass, from the last time that its check was made; nothing for another check.
struct Judged {
  ProofReadings::Mass mass;
  proof::KnownMass known;
  proof::Tolerance tolerance{};
};

std::optional<Judged> judgedBy(const RecordedJob& job, const procedures::Procedure& procedure,
                               std::size_t index) {
  const RecordedTry& made = job.tries[index];
  if (!made.check || made.check->kind != "agreement-of-two-readings") return std::nullopt;
  Judged judged;
  judged.mass.indications = readingsBefore(job, index, made.check->of);
  if (judged.mass.indications.empty()) return std::nullopt;
  for (const std::size_t at : judged.mass.indications) {
    if (!isIndication(job.tries[at])) return std::nullopt;
    judged.known.indications.push_back(massAt(job, at));
  }
  const Step* const step = procedures::findStep(procedure, made.about);
  if (!made.check->reference_entry.empty()) {
    const Expected<double> mass = readSi(made.check->reference_entry, Dimension::Mass);
    if (!mass || *mass <= 0) return std::nullopt;
    judged.known.reference = Mass::fromSi(*mass);
    judged.mass.reference_entry = step != nullptr && step->check && step->check->reference_entry
                                      ? step->check->reference_entry->entry
                                      : made.about;
  } else {
    const std::vector<std::size_t> references = readingsBefore(job, index, {made.check->reference});
    if (references.empty() || job.tries[references.back()].quantity != "reference-mass") return std::nullopt;
    judged.mass.reference = references.back();
    judged.known.reference = massAt(job, references.back());
    if (judged.known.reference.inSi() <= 0) return std::nullopt;
  }
  const Step* const pass = passBefore(procedure, job.variant, made.check->of.front());
  judged.mass.truck = pass == nullptr || pass->load != procedures::Load::TestMass;
  judged.mass.pace = judged.mass.truck ? "" : paceOf(pass);
  if (judged.mass.pace == "slow") judged.known.pace = proof::ProofPace::Slow;
  if (judged.mass.pace == "fast") judged.known.pace = proof::ProofPace::Fast;
  const Expected<ReadQuantity> within = readAnyQuantity(made.check->within);
  if (within && within->unit.dimension == Dimension::Number) {
    judged.tolerance = proof::PercentLimit{.limit = Fraction::fromSi(within->value_si)};
  } else if (within && within->unit.dimension == Dimension::Mass) {
    judged.tolerance =
        proof::StepLimit{{{.up_to = judged.known.reference, .limit = Mass::fromSi(within->value_si)}}};
  }
  judged.mass.limit_entry =
      step != nullptr && step->check && step->check->within && !step->check->within->entry.empty()
          ? step->check->within->entry
          : made.about;
  return judged;
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

}  // namespace

std::vector<ProofReadings> proofsOf(const RecordedJob& job, const procedures::Procedure& procedure,
                                    std::optional<Mass> rated, std::optional<Mass> step) {
  std::map<std::string, std::size_t> last;  // each check's last time
  for (std::size_t index = 0; index < job.tries.size(); ++index) {
    if (job.tries[index].check) last[job.tries[index].about] = index;
  }
  std::vector<std::size_t> checks;
  for (const auto& [about, index] : last) checks.push_back(index);
  std::ranges::sort(checks);

  std::vector<ProofReadings> proofs;
  for (const bool as_found : {true, false}) {
    std::map<std::string, ProofReadings> by_limit;
    std::vector<std::string> limits;
    for (const std::size_t index : checks) {
      if (isAsFound(job.tries[index]) != as_found) continue;
      std::optional<Judged> judged = judgedBy(job, procedure, index);
      if (!judged) continue;
      const std::string& limit = job.tries[index].check->within;
      ProofReadings& read = by_limit[limit];
      if (read.masses.empty()) limits.push_back(limit);
      read.proof.tolerance = std::move(judged->tolerance);
      read.masses.push_back(std::move(judged->mass));
      read.proof.masses.push_back(std::move(judged->known));
    }
    for (const std::string& limit : limits) {
      ProofReadings& read = by_limit[limit];
      read.proof.unit = job.unit;
      read.proof.rated_payload = rated;
      read.proof.when = as_found ? proof::When::AsFound : proof::When::AsLeft;
      read.proof.display_step = step;
      read.zeros = zerosOf(job, procedure, as_found);
      for (const std::size_t at : read.zeros) read.proof.zero_indications.push_back(massAt(job, at));
      proofs.push_back(std::move(read));
    }
  }
  return proofs;
}

}  // namespace hingepin::session
