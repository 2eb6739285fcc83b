// SPDX-License-Identifier: Apache-2.0
#include "engine/formats/proof_json.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>
#include <limits>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/formats/quantity_walk.h"
#include "engine/units/number.h"

namespace hingepin::formats {
namespace {

using proof::ClassScheme;
using proof::Proof;
using proof::Stage;

constexpr Limits kReference{Dimension::Mass, 0.1, 200000, "kg", 1};
constexpr Limits kReferenceU{Dimension::Mass, 0, 100000, "kg"};
constexpr Limits kIndication{Dimension::Mass, -200000, 200000, "kg"};
constexpr Limits kVehicle{Dimension::Mass, 0, 1000000, "kg"};
constexpr Limits kStep{Dimension::Mass, 0.001, 10000, "kg", 3};
constexpr Limits kLimit{Dimension::Mass, 0.001, 100000, "kg", 3};
constexpr Limits kPercent{Dimension::Number, 0.001, 50, "%", 3};
constexpr Limits kPriorMean{Dimension::Mass, -100000, 100000, "kg"};
constexpr Limits kPriorU{Dimension::Mass, 0.001, 100000, "kg", 3};
constexpr Limits kPerDay{Dimension::Mass, 0, 1e9, "kg"};
constexpr int kMostBuckets = 1000;

enum class Scheme { Percent, OimlR76, OimlR51, NistHb44, Steps };
constexpr std::array kSchemes = {Named{"percent", Scheme::Percent}, Named{"oiml-r76", Scheme::OimlR76},
                                 Named{"oiml-r51", Scheme::OimlR51}, Named{"nist-hb44", Scheme::NistHb44},
                                 Named{"steps", Scheme::Steps}};
constexpr std::array kOimlStages = {Named{"initial", Stage::Initial}, Named{"in-service", Stage::InService}};
constexpr std::array kNistStages = {Named{"acceptance", Stage::Initial},
                                    Named{"maintenance", Stage::InService}};

/// The keys of a truck scale and of its use, which stand beside those of what was weighed.
constexpr std::array<std::string_view, 12> kScaleKeys = {
    "scale_interval", "scale_u",   "certificate", "certificate_expires", "gross_ticket",     "tare_ticket",
    "gross_time",     "tare_time", "zeroed",      "whole_on_deck",       "same_driver_fuel", "legal_gross"};

/// Whether it is "2026-05-04", or with `with_time` also "2026-05-04T10:15".
bool isDay(std::string_view text, bool with_time) {
  constexpr std::string_view kPattern = "0000-00-00T00:00";
  if (text.size() != 10 && !(with_time && text.size() == kPattern.size())) return false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool is_digit = text[i] >= '0' && text[i] <= '9';
    if (kPattern[i] == '0' ? !is_digit : text[i] != kPattern[i]) return false;
  }
  const auto two = [&](std::size_t at) { return (text[at] - '0') * 10 + (text[at + 1] - '0'); };
  const bool day = two(5) >= 1 && two(5) <= 12 && two(8) >= 1 && two(8) <= 31;
  return day && (text.size() == 10 || (two(11) < 24 && two(14) < 60));
}

class ProofReader : public QuantityWalk {
 public:
  Proof read(const JsonDocument& document);
  proof::Terms terms(const JsonNode& node);

 private:
  Mass mass(const JsonNode& parent, std::string_view key, const Limits& limits) {
    return quantity<Dimension::Mass>(parent, key, limits);
  }
  std::optional<Mass> maybeMass(const JsonNode& parent, std::string_view key, const Limits& limits) {
    return maybeQuantity<Dimension::Mass>(parent, key, limits);
  }
  /// The keys of an object with those of a truck scale.
  void objectWithScale(const JsonNode& node, std::initializer_list<std::string_view> own) {
    std::vector<std::string_view> keys(own);
    keys.insert(keys.end(), kScaleKeys.begin(), kScaleKeys.end());
    object(node, keys);
  }
  Mass indication(const JsonNode& node);
  std::vector<Mass> indications(const JsonNode& node);
  std::optional<double> number(const JsonNode& parent, std::string_view key, double low, double high);
  std::optional<bool> yesOrNo(const JsonNode& parent, std::string_view key);
  std::string text(const JsonNode& parent, std::string_view key) {
    return orEmpty(parent, key, [this](const JsonNode& node) { return taken(node.name()); });
  }
  std::string day(const JsonNode& parent, std::string_view key, bool with_time);
  template <class Item, class Read>
  std::vector<Item> list(const JsonNode& parent, std::string_view key, Read read) {
    std::vector<Item> items;
    if (const std::optional<JsonNode> node = parent.find(key)) {
      for (const JsonNode& element : elements(*node)) items.push_back(read(element));
    }
    return items;
  }

  proof::Tolerance tolerance(const JsonNode& node);
  proof::Tolerance classLimit(const JsonNode& node, ClassScheme scheme);
  proof::Tolerance stepLimit(const JsonNode& node);
  proof::Decision decision(const JsonNode& node);
  proof::KnownMass knownMass(const JsonNode& node);
  proof::TruckScale truckScale(const JsonNode& node);
  proof::TruckLoad truck(const JsonNode& node);
  proof::LoaderOnScale loaderOnScale(const JsonNode& node);
  proof::Costs costs(const JsonNode& node);
  proof::Plan plan(const JsonNode& node);

  std::optional<Unit> display_unit_;  ///< of the first indication
};

Mass ProofReader::indication(const JsonNode& node) {
  const Mass read = Mass::fromSi(quantityIn(node, kIndication));
  if (!display_unit_ && !isRefused()) display_unit_ = readAnyQuantity(node.value().text)->unit;
  return read;
}

std::vector<Mass> ProofReader::indications(const JsonNode& node) {
  std::vector<Mass> read;
  for (const JsonNode& element : elements(node)) read.push_back(indication(element));
  return read;
}

std::optional<double> ProofReader::number(const JsonNode& parent, std::string_view key, double low,
                                          double high) {
  return optional(parent, key, [&](const JsonNode& node) {
    const double value = taken(node.number());
    if (value < low || value > high) {
      keep(node.error(
          "value-out-of-range",
          {{"text", writeNumber(value)}, {"low", Amount{low, "1", 2}}, {"high", Amount{high, "1", 2}}}));
    }
    return value;
  });
}

std::optional<bool> ProofReader::yesOrNo(const JsonNode& parent, std::string_view key) {
  return optional(parent, key, [this](const JsonNode& node) {
    if (node.value().kind != JsonKind::Boolean) keep(node.wrongKind("true or false"));
    return node.value().boolean;
  });
}

std::string ProofReader::day(const JsonNode& parent, std::string_view key, bool with_time) {
  return orEmpty(parent, key, [&](const JsonNode& node) {
    std::string read = taken(node.string());
    if (!isDay(read, with_time)) keep(node.error("day-malformed", {{"text", excerpt(read)}}));
    return read;
  });
}

proof::Tolerance ProofReader::classLimit(const JsonNode& node, ClassScheme scheme) {
  object(node, {"scheme", "class", "interval", "stage"});
  proof::ClassLimit limit{.scheme = scheme};
  limit.accuracy_class = required(node, "class", [&](const JsonNode& name) {
    std::string read = taken(name.string());
    const std::vector<std::string> known = proof::classesOf(scheme);
    if (std::ranges::find(known, read) == known.end()) {
      std::string all;
      for (const std::string& each : known) all += (all.empty() ? "" : ", ") + each;
      keep(name.error("accuracy-class-unknown", {{"class", excerpt(read)}, {"known", all}}));
    }
    return read;
  });
  limit.interval = mass(node, "interval", kStep);
  limit.stage = requiredNamed(node, "stage", scheme == ClassScheme::NistHb44 ? kNistStages : kOimlStages);
  return limit;
}

proof::Tolerance ProofReader::stepLimit(const JsonNode& node) {
  object(node, {"scheme", "steps"});
  proof::StepLimit limit;
  required(node, "steps", [&](const JsonNode& steps) {
    const std::vector<JsonNode> nodes = elements(steps);
    if (nodes.empty()) keep(steps.error("steps-empty"));
    for (const JsonNode& step : nodes) {
      object(step, {"up_to", "limit"});
      const proof::StepLimit::Step read{mass(step, "up_to", kVehicle), mass(step, "limit", kLimit)};
      if (!limit.steps.empty() && read.up_to <= limit.steps.back().up_to)
        keep(step.error("steps-not-increasing"));
      limit.steps.push_back(read);
    }
    return 0;
  });
  return limit;
}

proof::Tolerance ProofReader::tolerance(const JsonNode& node) {
  switch (requiredNamed(node, "scheme", kSchemes)) {
    case Scheme::OimlR76:
      return classLimit(node, ClassScheme::OimlR76);
    case Scheme::OimlR51:
      return classLimit(node, ClassScheme::OimlR51);
    case Scheme::NistHb44:
      return classLimit(node, ClassScheme::NistHb44);
    case Scheme::Steps:
      return stepLimit(node);
    case Scheme::Percent:
      break;
  }
  object(node, {"scheme", "limit", "of"});
  return proof::PercentLimit{quantity<Dimension::Number>(node, "limit", kPercent),
                             optionalNamed(node, "of", proof::kOfNames, proof::Of::Reference)};
}

proof::Decision ProofReader::decision(const JsonNode& node) {
  object(node, {"rule", "confidence", "prior_mean", "prior_u"});
  proof::Decision decision;
  decision.rule = requiredNamed(node, "rule", proof::kRuleNames);
  decision.confidence = number(node, "confidence", 0.5, 0.9999).value_or(decision.confidence);
  if (node.find("prior_mean") || node.find("prior_u"))
    decision.prior = {mass(node, "prior_mean", kPriorMean), mass(node, "prior_u", kPriorU)};
  return decision;
}

proof::KnownMass ProofReader::knownMass(const JsonNode& node) {
  object(node, {"reference", "reference_u", "pace", "approach", "indications"});
  return {
      .reference = mass(node, "reference", kReference),
      .reference_u = maybeMass(node, "reference_u", kReferenceU),
      .pace = optional(node, "pace", [this](const JsonNode& pace) { return named(pace, proof::kPaceNames); }),
      .approach =
          optional(node, "approach",
                   [this](const JsonNode& approach) { return named(approach, proof::kApproachNames); }),
      .indications =
          required(node, "indications", [this](const JsonNode& list) { return indications(list); })};
}

proof::TruckScale ProofReader::truckScale(const JsonNode& node) {
  return {.interval = mass(node, "scale_interval", kStep),
          .net_u = maybeMass(node, "scale_u", kReferenceU),
          .certificate = text(node, "certificate"),
          .certificate_expires = day(node, "certificate_expires", false),
          .gross_ticket = text(node, "gross_ticket"),
          .tare_ticket = text(node, "tare_ticket"),
          .gross_time = day(node, "gross_time", true),
          .tare_time = day(node, "tare_time", true),
          .zeroed = yesOrNo(node, "zeroed"),
          .whole_on_deck = yesOrNo(node, "whole_on_deck"),
          .same_driver_fuel = yesOrNo(node, "same_driver_fuel"),
          .legal_gross = maybeMass(node, "legal_gross", kVehicle)};
}

proof::TruckLoad ProofReader::truck(const JsonNode& node) {
  objectWithScale(node, {"gross", "tare", "indications"});
  proof::TruckLoad truck{.gross = mass(node, "gross", kVehicle),
                         .tare = mass(node, "tare", kVehicle),
                         .scale = truckScale(node),
                         .indications = required(node, "indications",
                                                 [this](const JsonNode& list) { return indications(list); })};
  const std::optional<JsonNode> tare = node.find("tare");
  if (tare && !isRefused() && truck.tare >= truck.gross) keep(tare->error("tare-not-below-gross"));
  return truck;
}

proof::LoaderOnScale ProofReader::loaderOnScale(const JsonNode& node) {
  objectWithScale(node, {"empty", "buckets"});
  proof::LoaderOnScale loader{
      .empty = mass(node, "empty", kVehicle), .scale = truckScale(node), .buckets = {}};
  required(node, "buckets", [&](const JsonNode& list) {
    for (const JsonNode& bucket : elements(list)) {
      object(bucket, {"loaded", "indication"});
      const Mass loaded = mass(bucket, "loaded", kVehicle);
      const std::optional<JsonNode> at = bucket.find("loaded");
      if (at && !isRefused() && loaded <= loader.empty) keep(at->error("tare-not-below-gross"));
      loader.buckets.push_back({loaded, required(bucket, "indication", [this](const JsonNode& shown) {
                                  return indication(shown);
                                })});
    }
    return 0;
  });
  return loader;
}

proof::Costs ProofReader::costs(const JsonNode& node) {
  object(node, {"per_day", "price_per_tonne", "currency", "trucks_per_day", "truck_target", "truck_legal",
                "buckets_per_truck"});
  constexpr double kMost = 1e9;
  return {.per_day = mass(node, "per_day", kPerDay),
          .price_per_tonne = number(node, "price_per_tonne", 0.0, kMost),
          .currency = text(node, "currency"),
          .trucks_per_day = number(node, "trucks_per_day", 0.0, kMost),
          .truck_target = maybeMass(node, "truck_target", kReference),
          .truck_legal = maybeMass(node, "truck_legal", kReference),
          .buckets_per_truck = optional(node, "buckets_per_truck", [this](const JsonNode& count) {
            return whole(count, 1, kMostBuckets);
          })};
}

proof::Plan ProofReader::plan(const JsonNode& node) {
  // One of the two keys says which way it goes.
  const bool loader_on_scale = node.find("buckets_on_scale").has_value();
  const char* const buckets = loader_on_scale ? "buckets_on_scale" : "buckets_per_truck";
  object(node, {"bucket", buckets, "repeatability", "scale_interval", "scale_u", "error", "rate"});
  proof::Plan plan{.bucket = mass(node, "bucket", kReference), .loader_on_scale = loader_on_scale};
  plan.buckets = required(node, buckets, [this](const JsonNode& count) {
                   return std::optional(whole(count, 1, kMostBuckets));
                 }).value_or(1);
  plan.repeatability = maybeMass(node, "repeatability", kReferenceU);
  plan.scale_interval = mass(node, "scale_interval", kStep);
  plan.scale_net_u = maybeMass(node, "scale_u", kReferenceU);
  plan.error = maybeMass(node, "error", kIndication);
  plan.rate = number(node, "rate", 0.5, 0.999).value_or(plan.rate);
  return plan;
}

proof::Terms ProofReader::terms(const JsonNode& node) {
  object(node, {"tolerance", "decision"});
  return {optional(node, "tolerance", [this](const JsonNode& each) { return tolerance(each); }),
          orEmpty(node, "decision", [this](const JsonNode& each) { return decision(each); })};
}

Proof ProofReader::read(const JsonDocument& document) {
  const JsonNode root(document);
  object(root, {"format", "unit", "when", "rated_payload", "tolerance", "decision", "display_step",
                "zero_indications", "masses", "trucks", "loader_on_scale", "costs", "plan"});
  format(root, "hingepin-proof/1");
  Proof proof;
  proof.unit = name(root, "unit");
  proof.when =
      optional(root, "when", [this](const JsonNode& when) { return named(when, proof::kWhenNames); });
  proof.rated_payload = maybeMass(root, "rated_payload", kReference);
  proof.tolerance = required(root, "tolerance", [this](const JsonNode& node) { return tolerance(node); });
  proof.decision = orEmpty(root, "decision", [this](const JsonNode& node) { return decision(node); });
  proof.display_step = maybeMass(root, "display_step", kStep);
  proof.zero_indications =
      orEmpty(root, "zero_indications", [this](const JsonNode& node) { return indications(node); });
  proof.masses =
      list<proof::KnownMass>(root, "masses", [this](const JsonNode& node) { return knownMass(node); });
  proof.trucks = list<proof::TruckLoad>(root, "trucks", [this](const JsonNode& node) { return truck(node); });
  proof.loader_on_scale = list<proof::LoaderOnScale>(
      root, "loader_on_scale", [this](const JsonNode& node) { return loaderOnScale(node); });
  proof.costs = optional(root, "costs", [this](const JsonNode& node) { return costs(node); });
  proof.plan = optional(root, "plan", [this](const JsonNode& node) { return plan(node); });
  if (display_unit_) proof.display_unit = Mass::fromSi(display_unit_->toSi(1.0));
  return proof;
}

}  // namespace

Expected<ProofFile> readProof(std::string text, const std::string& file) {
  Expected<JsonDocument> document = readJson(std::move(text), file);
  if (!document) return std::unexpected(std::move(document.error()));
  ProofReader reader;
  proof::Proof proof = reader.read(*document);
  if (std::optional<Error> error = reader.error()) return std::unexpected(*std::move(error));
  return ProofFile{*std::move(document), std::move(proof)};
}

Expected<proof::Terms> readTerms(const JsonNode& node) {
  ProofReader reader;
  proof::Terms terms = reader.terms(node);
  if (std::optional<Error> error = reader.error()) return std::unexpected(*std::move(error));
  return terms;
}

std::vector<std::string> classesOfScheme(std::string_view scheme) {
  const auto row = std::ranges::find(kSchemes, scheme, &Named<Scheme>::name);
  if (row == kSchemes.end()) return {};
  switch (row->value) {
    case Scheme::OimlR76:
      return proof::classesOf(ClassScheme::OimlR76);
    case Scheme::OimlR51:
      return proof::classesOf(ClassScheme::OimlR51);
    case Scheme::NistHb44:
      return proof::classesOf(ClassScheme::NistHb44);
    case Scheme::Percent:
    case Scheme::Steps:
      break;
  }
  return {};
}

}  // namespace hingepin::formats
