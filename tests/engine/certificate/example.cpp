// SPDX-License-Identifier: Apache-2.0
#include "tests/engine/certificate/example.h"

#include <cmath>
#include <string>
#include <vector>

namespace hingepin::certificate {
namespace {

constexpr std::int64_t kMorning = 1'777'874'400'000;  // 2026-05-04T06:00:00Z

/// Takes readings and gives their numbers.
struct Notebook {
  Certificate& certificate;
  std::size_t next = 11;

  std::size_t read(const std::string& what, const std::string& typed, const std::string& how = "monitor") {
    certificate.readings.push_back({.number = next,
                                    .what = what,
                                    .typed = typed,
                                    .how = how,
                                    .utc_ms = kMorning + static_cast<std::int64_t>(next) * 60'000});
    return next++;
  }
  std::vector<std::size_t> readMasses(const std::string& what, const std::vector<double>& values_kg) {
    std::vector<std::size_t> numbers;
    for (const double value : values_kg) {
      numbers.push_back(read(what, std::to_string(static_cast<int>(value)) + " kg"));
      ++next;  // a pass stands between
    }
    return numbers;
  }
};

/// A result with a made up uncertainty: three digits of it do not matter to who renders.
Result resultOf(Notebook& notebook, double reference_kg, const std::string& pace,
                const std::vector<double>& shown_kg, Verdict verdict) {
  const std::size_t reference =
      notebook.read("Mass of the test mass", std::to_string(static_cast<int>(reference_kg)) + " kg", "typed");
  const std::vector<std::size_t> shown = notebook.readMasses("Mass that the scale shows", shown_kg);
  double sum = 0;
  for (const double value : shown_kg) sum += value;
  const double mean = sum / static_cast<double>(shown_kg.size());
  double squares = 0;
  for (const double value : shown_kg) squares += (value - mean) * (value - mean);
  const double deviation = std::sqrt(squares / static_cast<double>(shown_kg.size() - 1));
  std::vector<std::size_t> all = shown;
  all.insert(all.begin(), reference);
  return {.what = {"certificate-mass", {}},
          .pace = pace,
          .reference = {.amount = {reference_kg, "kg", 1},
                        .expanded_uncertainty = 2.0,
                        .coverage_factor = 2,
                        .readings = {reference}},
          .indication = {.amount = {mean, "kg", 1}, .readings = shown},
          .error = {.amount = {mean - reference_kg, "kg", 1},
                    .expanded_uncertainty = 6.4,
                    .coverage_factor = 2.32,
                    .readings = all},
          .repeatability = Figure{.amount = {deviation, "kg", 1}, .readings = shown},
          .limit = Figure{.amount = {0.01 * reference_kg, "kg", 1}, .entry = "error"},
          .verdict = verdict,
          .probability = Figure{.amount = {verdict == Verdict::Holds ? 99.8 : 2.0, "%", 1}, .readings = all}};
}

}  // namespace

Certificate exampleCertificate() {
  Certificate made{.record = "0f3a9b5c7d1e2f4061728394a5b6c7d8e9fa0b1c2d3e4f5061728394a5b6c7d8",
                   .unit = "L-27",
                   .attachment = "GP-2.7",
                   .rated_payload = Figure{.amount = {4500, "kg", 0}, .entry = "rated-payload"},
                   .procedure = "After a change of attachment",
                   .procedure_hash = "5c7d1e2f4061728394a5b6c7d8e9fa0b1c2d3e4f5061728394a5b6c7d80f3a9b",
                   .version = 1,
                   .program = "hingepin 0.1.0",
                   .issued_by = "hingepin 0.1.0",
                   .begun_utc_ms = kMorning,
                   .ended_utc_ms = kMorning + 7'200'000,
                   .issued_utc_ms = kMorning + 7'300'000,
                   .stamps = {{"document-practice", {}}},
                   .remarks = {"Bucket teeth changed <yesterday> & \"weighed\"."},
                   .signatories = {{.name = "Demo technician (invented)",
                                    .role = "technician",
                                    .key = "kPrK_qmxVWaYVA9wwBF6Iuo3vVzz7TxHCTwXBygrS4k",
                                    .utc_ms = kMorning + 7'200'000,
                                    .sealed = true}}};
  made.qr_text = "hingepin:record/" + made.record;
  Notebook notebook{made};
  const std::size_t oil = notebook.read("Oil temperature", "52 Cel");
  made.conditions.push_back({"Oil temperature", {.amount = {52, "Cel", 0}, .readings = {oil}}});

  Proof found{.when = When::AsFound,
              .utc_ms = kMorning + 1'000'000,
              .verdict = Verdict::DoesNotHold,
              .tolerance = {"certificate-tolerance-reference", {{"limit", Amount{1, "%", 0}}}},
              .rule = {"certificate-rule-simple", {}}};
  found.results.push_back(resultOf(notebook, 2000, "own", {2058, 2066, 2061}, Verdict::DoesNotHold));
  made.proofs.push_back(found);

  Proof left{.when = When::AsLeft,
             .utc_ms = kMorning + 7'000'000,
             .verdict = Verdict::Undecided,
             .tolerance = {"certificate-tolerance-reference", {{"limit", Amount{1, "%", 0}}}},
             .rule = {"certificate-rule-guarded", {{"confidence", Amount{95, "%", 0}}}}};
  left.results.push_back(resultOf(notebook, 1000, "slow", {1002, 1006, 1001}, Verdict::Undecided));
  left.results.push_back(resultOf(notebook, 2000, "slow", {1998, 2005, 2001, 2003}, Verdict::Holds));
  left.results.push_back(resultOf(notebook, 2000, "fast", {2006, 2001, 2011}, Verdict::Holds));
  left.results.push_back(resultOf(notebook, 4000, "slow", {4007, 3999, 4011}, Verdict::Holds));
  const std::vector<std::size_t> zeros = notebook.readMasses("Mass that the scale shows, empty", {5, 0, 5});
  left.others.push_back(
      {{"document-zero", {}},
       {.amount = {3.33, "kg", 1}, .expanded_uncertainty = 4.2, .coverage_factor = 4.53, .readings = zeros}});
  made.proofs.push_back(left);

  const std::vector<std::size_t>& behind = made.proofs.back().results.back().error.readings;
  made.correction.span_factor = Figure{
      .amount = {0.9987, "1", 4}, .expanded_uncertainty = 0.0021, .coverage_factor = 2.1, .readings = behind};
  made.correction.zero = Figure{
      .amount = {3.1, "kg", 1}, .expanded_uncertainty = 4.0, .coverage_factor = 2.1, .readings = zeros};

  std::vector<std::size_t> heights;
  for (const char* const height : {"3.085 m", "3.092 m", "3.088 m"})
    heights.push_back(notebook.read("Height of the cutting edge", height, "typed"));
  made.stops.push_back({.name = "Upper stop",
                        .wanted = {.amount = {3.1, "m", 3}, .entry = "upper-height"},
                        .reached = {.amount = {3.0883, "m", 3}, .readings = heights},
                        .scatter = Figure{.amount = {0.0035, "m", 4}, .readings = heights},
                        .limit = Figure{.amount = {0.05, "m", 3}, .entry = "upper-offset"},
                        .verdict = Verdict::Holds});
  return made;
}

Certificate exampleWith(const std::string& words, const std::string& country) {
  Certificate certificate = exampleCertificate();
  certificate.unit = certificate.attachment = certificate.procedure = certificate.do_not_use = words;
  certificate.particulars = {words, words, words, country, words};
  certificate.remarks = certificate.corrections = {words};
  certificate.program = certificate.issued_by = certificate.record = certificate.procedure_hash = words;
  certificate.signatories.front() = {words, words, words, 0, true};
  certificate.conditions.front().name = certificate.stops.front().name = words;
  certificate.proofs.front().results.front().limit->entry = words;
  for (Reading& reading : certificate.readings) reading.what = reading.typed = words;
  return certificate;
}

std::string languageOf(const testing::TestParamInfo<std::string>& language) {
  return language.param.substr(0, 2);
}

}  // namespace hingepin::certificate
