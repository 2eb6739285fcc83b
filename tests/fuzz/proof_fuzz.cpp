// SPDX-License-Identifier: Apache-2.0
#include <cmath>

#include "engine/formats/proof_json.h"
#include "tests/fuzz/json_mutator.h"
#include "tests/fuzz/require.h"

namespace {

using namespace hingepin;
using fuzz::require;

void requireSound(const proof::Judgement& judgement) {
  require(std::isfinite(judgement.error.value_kg), "an error is a number");
  require(judgement.error.expanded_uncertainty_kg >= 0.0, "an uncertainty is not below nothing");
  require(judgement.probability_of_conformity >= 0.0 && judgement.probability_of_conformity <= 1.0,
          "a probability is one");
  require(judgement.limit_kg >= 0.0, "a limit is not below nothing");
  require(!judgement.readings_to_decide || *judgement.readings_to_decide > judgement.count,
          "more readings are more");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  const Expected<formats::ProofFile> read =
      formats::readProof(std::string(fuzz::textOf(bytes, size)), "yard/proof.json");
  if (!read) {
    fuzz::requireSound(read.error());
    require(!read.error().place.file.empty() && read.error().place.line > 0, "an error says where");
    return 0;
  }
  const Expected<proof::ProofResult> result = proof::prove(read->proof);
  if (!result) {
    require(read->document.place(result.error().place.pointer).line > 0, "what it points at is in the file");
    return 0;
  }
  require(result->masses.size() == read->proof.masses.size() &&
              result->trucks.size() == read->proof.trucks.size(),
          "each is judged");
  for (const proof::Judgement& judgement : result->masses) requireSound(judgement);
  for (const proof::Judgement& judgement : result->trucks) requireSound(judgement);
  for (const proof::Judgement& judgement : result->loader_on_scale) requireSound(judgement);
  return 0;
}

HINGEPIN_MUTATE_JSON(false)
