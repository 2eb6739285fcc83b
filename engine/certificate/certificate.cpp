// SPDX-License-Identifier: Apache-2.0
#include "engine/certificate/certificate.h"

#include <algorithm>
#include <cmath>

namespace hingepin::certificate {

std::string nameOfProof(const Certificate& certificate, std::size_t index) {
  const When when = certificate.proofs[index].when;
  const auto end = certificate.proofs.begin() + static_cast<std::ptrdiff_t>(index);
  const auto before = std::ranges::count(certificate.proofs.begin(), end, when, &Proof::when);
  std::string name(nameIn(proof::kWhenNames, when));
  return before == 0 ? name : name + "-" + std::to_string(before + 1);
}

std::vector<NamedFigure> figuresOf(const Certificate& certificate) {
  std::vector<NamedFigure> all;
  const auto add = [&](std::string name, const Figure& figure) { all.push_back({std::move(name), &figure}); };
  const auto addIf = [&](const std::string& name, const std::optional<Figure>& figure) {
    if (figure) add(name, *figure);
  };
  addIf("rated-payload", certificate.rated_payload);
  for (std::size_t index = 0; index < certificate.conditions.size(); ++index) {
    add("condition/" + std::to_string(index + 1), certificate.conditions[index].figure);
  }
  for (std::size_t number = 0; number < certificate.proofs.size(); ++number) {
    const Proof& proof = certificate.proofs[number];
    const std::string when = nameOfProof(certificate, number) + "/";
    for (std::size_t index = 0; index < proof.results.size(); ++index) {
      const Result& result = proof.results[index];
      const std::string at = when + std::to_string(index + 1) + "/";
      add(at + "reference", result.reference);
      add(at + "indication", result.indication);
      add(at + "error", result.error);
      addIf(at + "repeatability", result.repeatability);
      addIf(at + "limit", result.limit);
      addIf(at + "probability", result.probability);
    }
    for (const Characteristic& other : proof.others) add(when + other.name.code, other.figure);
  }
  addIf("span-factor", certificate.correction.span_factor);
  addIf("zero-correction", certificate.correction.zero);
  for (std::size_t index = 0; index < certificate.stops.size(); ++index) {
    const Stop& stop = certificate.stops[index];
    const std::string at = "stop/" + std::to_string(index + 1) + "/";
    add(at + "wanted", stop.wanted);
    add(at + "reached", stop.reached);
    addIf(at + "scatter", stop.scatter);
    addIf(at + "limit", stop.limit);
  }
  return all;
}

Message aboutUncertainty() {
  return {"certificate-uncertainty", {{"coverage", Amount{100 * kCoverage, "%", 2}}}};
}

int decimalsFor(double uncertainty) {
  if (!(uncertainty > 0) || !std::isfinite(uncertainty)) return 0;
  return std::clamp(1 - static_cast<int>(std::floor(std::log10(uncertainty))), 0, 9);
}

}  // namespace hingepin::certificate
