// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "engine/cli/words.h"
#include "engine/units/number.h"

namespace hingepin::cli {
namespace {

using proof::Finding;
using proof::Judgement;
using proof::Proof;
using proof::ProofResult;
using Json = nlohmann::ordered_json;

/// The contract has kilograms, whatever is shown to people; to the gram.
std::string kilograms(double value_kg) {
  const double rounded = std::round(value_kg * 1e3) / 1e3;
  return writeNumber(rounded == 0.0 ? 0.0 : rounded) + " kg";
}

double digits(double value, double scale) { return std::round(value * scale) / scale; }

Json jsonOf(const Finding& finding) {
  return {{"value", kilograms(finding.value_kg)},
          {"expanded_uncertainty", kilograms(finding.expanded_uncertainty_kg)},
          {"coverage_factor", digits(finding.coverageFactor(), 1e3)}};
}

Json jsonOf(const std::vector<Message>& warnings, UnitSystem system) {
  Json list = Json::array();
  for (const Message& warning : warnings) list.push_back(words(warning, system));
  return list;
}

Json jsonOf(const Judgement& judgement, std::string_view reference, UnitSystem system) {
  Json json = {{std::string(reference), kilograms(judgement.reference_kg)},
               {"reference_u", kilograms(judgement.reference_u_kg)},
               {"indications", judgement.count},
               {"error", kilograms(judgement.error.value_kg)},
               {"repeatability", nullptr},
               {"expanded_uncertainty", nullptr},
               {"coverage_factor", nullptr},
               {"limit", kilograms(judgement.limit_kg)},
               {"verdict", proof::nameOf(judgement.verdict)},
               {"probability_of_conformity", digits(judgement.probability_of_conformity, 1e5)},
               {"risk", digits(judgement.risk, 1e5)},
               {"readings_to_decide", nullptr},
               {"budget", Json::array()},
               {"warnings", jsonOf(judgement.warnings, system)}};
  if (judgement.repeatability_kg) json["repeatability"] = kilograms(*judgement.repeatability_kg);
  if (judgement.scatter_known) {
    json["expanded_uncertainty"] = kilograms(judgement.error.expanded_uncertainty_kg);
    json["coverage_factor"] = digits(judgement.error.coverageFactor(), 1e3);
  }
  if (judgement.readings_to_decide) json["readings_to_decide"] = *judgement.readings_to_decide;
  for (const statistics::Contribution& line : judgement.error.budget) {
    Json row = {{"name", line.name},
                {"standard_uncertainty", kilograms(line.standard_uncertainty)},
                {"degrees_of_freedom", nullptr}};
    if (std::isfinite(line.degrees_of_freedom))
      row["degrees_of_freedom"] = digits(line.degrees_of_freedom, 10);
    json["budget"].push_back(std::move(row));
  }
  if (judgement.risks_before) {
    json["consumers_risk_before"] = digits(judgement.risks_before->consumers, 1e5);
    json["producers_risk_before"] = digits(judgement.risks_before->producers, 1e5);
  }
  return json;
}

Json jsonOf(const std::vector<Judgement>& judgements, std::string_view reference, UnitSystem system) {
  Json list = Json::array();
  for (const Judgement& judgement : judgements) list.push_back(jsonOf(judgement, reference, system));
  return list;
}

Json jsonOf(const std::vector<proof::Comparison>& comparisons) {
  Json list = Json::array();
  for (const proof::Comparison& comparison : comparisons) {
    Json json = jsonOf(comparison.difference);
    json["masses"] = {comparison.first, comparison.second};
    list.push_back(std::move(json));
  }
  return list;
}

std::string kg(double value_kg, double uncertainty_kg, UnitSystem system) {
  return shown(value_kg, "kg", decimalsOf(uncertainty_kg), system);
}

/// A signed value with its uncertainty.
std::string withDoubt(const Finding& finding, UnitSystem system) {
  return (finding.value_kg > 0.0 ? "+" : "") + kg(finding.value_kg, finding.expanded_uncertainty_kg, system) +
         " ± " + kg(finding.expanded_uncertainty_kg, finding.expanded_uncertainty_kg, system);
}

std::string percent(double share) { return fmt::format("{:.1f} %", share * 100.0); }

Table tableOf(const std::vector<Judgement>& judgements, std::string_view what, UnitSystem system) {
  Table table = {{std::string(what), "readings", "error", "repeatability", "limit", "conforms", "verdict"}};
  for (const Judgement& judgement : judgements) {
    const double u_kg = judgement.error.expanded_uncertainty_kg;
    table.push_back({shown(judgement.reference_kg, "kg", 0, system), std::to_string(judgement.count),
                     judgement.scatter_known
                         ? withDoubt(judgement.error, system)
                         : kg(judgement.error.value_kg, u_kg, system) + ", doubt not known",
                     judgement.repeatability_kg ? kg(*judgement.repeatability_kg, u_kg, system) : "-",
                     "± " + kg(judgement.limit_kg, judgement.limit_kg, system),
                     percent(judgement.probability_of_conformity),
                     words({proof::codeOf(judgement.verdict), {}}, system)});
  }
  return table;
}

std::string notesOf(const std::vector<Judgement>& judgements, UnitSystem system) {
  std::string text;
  std::vector<std::string> said;
  for (const Judgement& judgement : judgements) {
    for (const Message& warning : judgement.warnings) {
      const std::string sentence = words(warning, system);
      if (std::ranges::find(said, sentence) != said.end()) continue;
      said.push_back(sentence);
      text += "  Note: " + sentence + "\n";
    }
    if (judgement.verdict == proof::Verdict::Undecided) {
      text += "  " + words(proof::sayMore(judgement), system) + "\n";
    }
  }
  return text;
}

std::string sayCorrection(const ProofResult& result, UnitSystem system) {
  if (!result.correction) return "  " + words(result.correction.error(), system) + "\n";
  const proof::Correction& correction = *result.correction;
  return fmt::format("  span factor {:.5f} ± {:.5f}, zero {} ± {} (k = 2)\n  {}\n", correction.span_factor,
                     2.0 * correction.span_factor_u,
                     kg(correction.zero_kg, 2.0 * correction.zero_u_kg, system),
                     kg(2.0 * correction.zero_u_kg, 2.0 * correction.zero_u_kg, system),
                     words({"proof-correction", {}}, system));
}

std::string sayCost(const Proof& proof, const proof::Cost& cost, UnitSystem system) {
  std::string text =
      fmt::format("  {} ± {} a day given away\n", shown(cost.given_away_t_per_day, "t", 2, system),
                  shown(2.0 * cost.given_away_u_t_per_day, "t", 2, system));
  if (cost.money_per_day)
    text += fmt::format("  {:.2f} {} a day\n", *cost.money_per_day, proof.costs->currency);
  if (cost.overload_kg_per_truck)
    text += fmt::format("  a truck filled to its target: {} over what it may carry\n",
                        shown(*cost.overload_kg_per_truck, "kg", 0, system));
  if (cost.trucks_over_per_day)
    text += fmt::format("  {:.1f} trucks a day over what they may carry\n", *cost.trucks_over_per_day);
  return text;
}

}  // namespace

std::string proofJson(const Proof& proof, const ProofResult& result, UnitSystem system) {
  Json json = {{"unit", proof.unit}};
  if (proof.when) json["when"] = nameIn(proof::kWhenNames, *proof.when);
  json["verdict"] = proof::nameOf(result.verdict);
  json["probability_of_conformity"] = digits(result.probability_of_conformity, 1e5);
  json["masses"] = jsonOf(result.masses, "reference", system);
  json["trucks"] = jsonOf(result.trucks, "net", system);
  if (!result.loader_on_scale.empty())
    json["loader_on_scale"] = jsonOf(result.loader_on_scale, "net", system);
  if (result.trucks_together) json["trucks_together"] = jsonOf(*result.trucks_together, "net", system);
  for (const char* key : {"span_factor", "span_factor_u", "zero", "zero_u"}) json[key] = nullptr;
  if (result.correction) {
    json["span_factor"] = digits(result.correction->span_factor, 1e7);
    json["span_factor_u"] = digits(result.correction->span_factor_u, 1e7);
    json["zero"] = kilograms(result.correction->zero_kg);
    json["zero_u"] = kilograms(result.correction->zero_u_kg);
    json["linearity"] = {{"largest", kilograms(result.correction->largest_residual_kg)},
                         {"at", kilograms(result.correction->largest_residual_at_kg)},
                         {"straight", result.correction->straight}};
  } else {
    json["reason"] = words(result.correction.error(), system);
  }
  if (!result.hysteresis.empty()) json["hysteresis"] = jsonOf(result.hysteresis);
  if (!result.pace.empty()) json["pace"] = jsonOf(result.pace);
  if (result.zero_return) json["zero_return"] = jsonOf(*result.zero_return);
  if (result.cost) {
    const proof::Cost& cost = *result.cost;
    Json& costs = json["cost"];
    costs = {{"given_away_per_day", fmt::format("{:.3f} t", cost.given_away_t_per_day)},
             {"given_away_per_day_u", fmt::format("{:.3f} t", cost.given_away_u_t_per_day)}};
    if (cost.money_per_day) {
      costs["money_per_day"] = digits(*cost.money_per_day, 100);
      costs["currency"] = proof.costs->currency;
    }
    if (cost.overload_kg_per_truck) costs["overload_per_truck"] = kilograms(*cost.overload_kg_per_truck);
    if (cost.trucks_over_per_day) costs["trucks_over_per_day"] = digits(*cost.trucks_over_per_day, 100);
  }
  if (result.plan) {
    Json& plan = json["plan"];
    plan = {{"buckets", nullptr},
            {"trucks", nullptr},
            {"smallest_error_shown", kilograms(result.plan->smallest_error_shown_kg)}};
    if (result.plan->buckets) plan["buckets"] = *result.plan->buckets;
    if (result.plan->trucks) plan["trucks"] = *result.plan->trucks;
  }
  json["display_step"] = kilograms(result.display_step_kg);
  json["warnings"] = jsonOf(result.warnings, system);
  json["note"] = words({"proof-not-legal-for-trade", {}}, system);
  return json.dump(-1, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string sayProof(const Proof& proof, const ProofResult& result, UnitSystem system, Charset charset) {
  const bool has_judged = !result.masses.empty() || !result.trucks.empty() || !result.loader_on_scale.empty();
  std::string text = proof.unit;
  if (proof.when) text += ", " + words({proof::codeOf(*proof.when), {}}, system);
  if (has_judged) text += ": " + words({proof::codeOf(result.verdict), {}}, system);
  text += "\n";
  const auto add = [&](const std::vector<Judgement>& judgements, std::string_view what) {
    if (judgements.empty()) return;
    text += layOut(tableOf(judgements, what, system), charset) + notesOf(judgements, system);
  };
  add(result.masses, "known mass");
  add(result.trucks, "truck's net");
  if (result.trucks_together) add({*result.trucks_together}, "all trucks");
  add(result.loader_on_scale, "loader on scale");
  if (has_judged) text += "What to enter\n" + sayCorrection(result, system);
  for (const proof::Comparison& comparison : result.hysteresis)
    text += "  hysteresis, down less up: " + withDoubt(comparison.difference, system) + "\n";
  for (const proof::Comparison& comparison : result.pace)
    text += "  pace, fast less slow: " + withDoubt(comparison.difference, system) + "\n";
  if (result.zero_return)
    text += "  zero return, last less first: " + withDoubt(*result.zero_return, system) + "\n";
  if (result.cost) text += "What the error costs\n" + sayCost(proof, *result.cost, system);
  if (result.plan) text += "How many buckets\n  " + words(proof::sayPlan(*result.plan), system) + "\n";
  for (const Message& warning : result.warnings) text += "  Note: " + words(warning, system) + "\n";
  text += "  " + words({"proof-not-legal-for-trade", {}}, system) + "\n";
  return in(text, charset);
}

}  // namespace hingepin::cli
