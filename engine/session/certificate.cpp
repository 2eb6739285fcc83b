// SPDX-License-Identifier: Apache-2.0
#include "engine/session/certificate.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <map>
#include <numeric>
#include <set>
#include <utility>

#include "engine/base/strict_json.h"
#include "engine/certificate/dcc.h"
#include "engine/certificate/html.h"
#include "engine/session/catalogue.h"
#include "engine/session/document.h"
#include "engine/session/job.h"
#include "engine/session/job_record.h"
#include "engine/session/proof_readings.h"
#include "engine/session/told.h"
#include "engine/statistics/uncertainty.h"

namespace hingepin::session {
namespace {

using certificate::Certificate;
using certificate::Figure;

/// The profile that held; nothing where it can't be read.
std::optional<UnitProfile> profileOf(const store::Store& store, const Edge& edge, const RecordedJob& job) {
  Expected<std::string> text = blobsOf(store)(job.unit_profile);
  if (!text) return std::nullopt;
  Expected<UnitProfile> profile = readUnitProfile(*std::move(text), "unit " + job.unit, edge);
  return profile ? std::optional(*std::move(profile)) : std::nullopt;
}

/// Makes the parts of a certificate from a record.
class Issuer {
 public:
  Issuer(const store::Store& store, const Edge& edge, const Reader& reader, const Told& told)
      : store_(store), reader_(reader), told_(told), job_(told.job), profile_(profileOf(store, edge, job_)) {}

  [[nodiscard]] Expected<Certificate> make(const Issue& issue) const;

 private:
  [[nodiscard]] std::string words(std::string_view code) const { return wordsOf(*told_.text, code, reader_); }
  [[nodiscard]] std::string step(std::string_view id) const {
    return stepText(*told_.text, told_.state, id, reader_);
  }
  [[nodiscard]] std::string role(const std::string& name) const { return say({"role-" + name, {}}, reader_); }
  [[nodiscard]] std::string titled() const;
  void machine(Certificate& made) const;
  [[nodiscard]] Expected<certificate::Proof> proof(const ProofReadings& read, Certificate& made) const;
  void changes(const std::vector<ProofReadings>& reads, Certificate& made) const;
  void conditions(Certificate& made) const;
  void stops(Certificate& made) const;
  void remarks(Certificate& made) const;
  [[nodiscard]] Expected<void> people(Certificate& made) const;
  void readings(Certificate& made) const;

  const store::Store& store_;
  const Reader& reader_;
  const Told& told_;
  const RecordedJob& job_;
  std::optional<UnitProfile> profile_;
};

/// The number of a try on a certificate.
std::size_t numberOf(std::size_t at) { return at + 1; }
std::vector<std::size_t> numbersOf(const std::vector<std::size_t>& tries) {
  std::vector<std::size_t> numbers;
  for (const std::size_t at : tries) numbers.push_back(numberOf(at));
  return numbers;
}

/// Decimals of a quantity as it was typed.
int decimalsOf(std::string_view quantity) {
  const std::string_view number = quantity.substr(0, quantity.find(' '));
  const std::size_t point = number.find('.');
  return point == std::string_view::npos ? 0 : static_cast<int>(number.size() - point - 1);
}

/// A quantity as a number of a certificate, as it was typed.
std::optional<Figure> asRead(std::string_view quantity) {
  const Expected<ReadQuantity> read = readAnyQuantity(quantity);
  if (!read) return std::nullopt;
  return Figure{
      .amount = {read->unit.fromSi(read->value_si), std::string(read->unit.ucum), decimalsOf(quantity)}};
}

Figure figureOf(const proof::Finding& finding, const char* ucum, std::vector<std::size_t> readings) {
  return {.amount = {finding.value_kg, ucum, certificate::decimalsFor(finding.expanded_uncertainty_kg)},
          .expanded_uncertainty = finding.expanded_uncertainty_kg,
          .coverage_factor = finding.coverageFactor(),
          .readings = std::move(readings)};
}

/// From a standard uncertainty that nothing was estimated for: its factor is that of the normal distribution.
Figure figureOf(double value, double standard_u, const char* ucum, std::vector<std::size_t> readings) {
  const std::array contributions = {statistics::Contribution{.name = "", .standard_uncertainty = standard_u}};
  const statistics::CombinedUncertainty u = statistics::combine(contributions, certificate::kCoverage);
  return {.amount = {value, ucum, certificate::decimalsFor(u.expanded_uncertainty)},
          .expanded_uncertainty = u.expanded_uncertainty,
          .coverage_factor = u.coverage_factor,
          .readings = std::move(readings)};
}

/// The mean of indications with the doubt of their scatter and of the step that the monitor shows them in
/// (GUM F.2.2.1); of one alone nothing tells the scatter, and no uncertainty is given.
Figure meanOf(const std::vector<Mass>& indications, double step_kg, std::vector<std::size_t> readings) {
  const double count = static_cast<double>(indications.size());
  double mean = 0;
  for (const Mass& each : indications) mean += each.inSi() / count;
  Figure figure{.amount = {mean, "kg", 0}, .readings = std::move(readings)};
  if (indications.size() < 2) return figure;
  double squares = 0;
  for (const Mass& each : indications) squares += (each.inSi() - mean) * (each.inSi() - mean);
  const std::array contributions = {
      statistics::Contribution{.name = "",
                               .standard_uncertainty = std::sqrt(squares / (count - 1) / count),
                               .degrees_of_freedom = count - 1},
      statistics::Contribution{.name = "", .standard_uncertainty = step_kg / std::sqrt(12.0)}};
  const statistics::CombinedUncertainty u = statistics::combine(contributions, certificate::kCoverage);
  if (!(u.expanded_uncertainty > 0)) return figure;
  figure.amount.decimals = certificate::decimalsFor(u.expanded_uncertainty);
  figure.expanded_uncertainty = u.expanded_uncertainty;
  figure.coverage_factor = u.coverage_factor;
  return figure;
}

/// With as many decimals, up to 4, as keep what is not certain from reading as 0 or 100 %, which it never
/// does.
Amount percentOf(double probability) {
  constexpr double kLeast = 1e-4;
  const double percent = std::clamp(100 * probability, kLeast, 100 - kLeast);
  const double edge = std::min(percent, 100 - percent);
  int decimals = 1;
  while (decimals < 4 && edge * std::pow(10, decimals) < 0.5) ++decimals;
  return {percent, "%", decimals};
}

/// The limit in words.
Message wordsOfTolerance(const proof::Tolerance& tolerance) {
  if (const auto* const percent = std::get_if<proof::PercentLimit>(&tolerance)) {
    const double value = percent->limit.inPercent();
    int decimals = 0;
    while (decimals < 3 &&
           std::abs(value - std::round(value * std::pow(10, decimals)) / std::pow(10, decimals)) > 1e-9) {
      ++decimals;
    }
    return {
        percent->of == proof::Of::Rated ? "certificate-tolerance-rated" : "certificate-tolerance-reference",
        {{"limit", Amount{value, "%", decimals}}}};
  }
  return {};  // the limit of each mass stands beside it
}

Message wordsOfRule(const proof::Decision& decision) {
  if (decision.rule == proof::Rule::Simple) return {"certificate-rule-simple", {}};
  return {"certificate-rule-guarded", {{"confidence", Amount{100 * decision.confidence, "%", 0}}}};
}

std::string Issuer::titled() const {
  std::string title = words(told_.text->procedure.title);
  const auto variant =
      std::ranges::find(told_.text->procedure.variants, job_.variant, &procedures::Variant::id);
  if (variant != told_.text->procedure.variants.end()) title += ": " + words(variant->text);
  return title;
}

void Issuer::machine(Certificate& made) const {
  if (!profile_) return;
  const auto rated = profile_->entries.find("rated-payload");
  std::optional<Figure> figure = rated == profile_->entries.end() ? std::nullopt : asRead(rated->second);
  if (!figure) return;
  figure->entry = "rated_payload";
  made.rated_payload = std::move(figure);
}

Expected<certificate::Proof> Issuer::proof(const ProofReadings& read, Certificate& made) const {
  const Expected<proof::ProofResult> result = proof::prove(read.proof);
  if (!result) return std::unexpected(result.error());
  certificate::Proof told{.when = *read.proof.when,
                          .verdict = worstOf(judgementsOf(*result)).verdict,
                          .tolerance = wordsOfTolerance(read.proof.tolerance),
                          .rule = wordsOfRule(read.proof.decision),
                          .remarks = result->warnings};
  std::vector<std::size_t> all = numbersOf(read.zeros);
  const auto tell = [&](const ProofReadings::Known& known, const proof::Judgement& judged) {
    const std::vector<std::size_t> shown = numbersOf(known.indications);
    std::vector<std::size_t> behind = numbersOf(known.references);
    behind.insert(behind.end(), shown.begin(), shown.end());
    all.insert(all.end(), behind.begin(), behind.end());
    const Figure error = figureOf(judged.error, "kg", behind);
    const int decimals = error.amount.decimals;
    Figure reference = figureOf(judged.reference_kg, judged.reference_u_kg, "kg", {});
    reference.readings = numbersOf(known.references);
    reference.entry = known.reference_entry;
    certificate::Result row{
        .what = {known.truck ? "certificate-truck" : "certificate-mass", {}},
        .pace = known.pace,
        .reference = std::move(reference),
        .indication = {.amount = {judged.indication_kg, "kg", decimals}, .readings = shown},
        .error = error,
        .limit = Figure{.amount = {judged.limit_kg, "kg", decimals}, .entry = known.limit_entry},
        .verdict = judged.verdict,
        .probability = Figure{.amount = percentOf(judged.probability_of_conformity), .readings = behind}};
    if (judged.repeatability_kg) {
      row.repeatability = Figure{.amount = {*judged.repeatability_kg, "kg", decimals}, .readings = shown};
    }
    told.results.push_back(std::move(row));
    for (const Message& warning : judged.warnings) {
      const auto same = [&](const Message& said) { return say(said, reader_) == say(warning, reader_); };
      if (std::ranges::none_of(told.remarks, same)) told.remarks.push_back(warning);
    }
    if (judged.verdict == proof::Verdict::Undecided) told.remarks.push_back(proof::sayMore(judged));
    for (const std::size_t at : known.indications) told.utc_ms = std::max(told.utc_ms, job_.tries[at].utc_ms);
  };
  for (std::size_t i = 0; i < read.masses.size(); ++i) tell(read.masses[i], result->masses[i]);
  for (std::size_t i = 0; i < read.trucks.size(); ++i) tell(read.trucks[i], result->trucks[i]);
  if (result->trucks_together) {
    ProofReadings::Known together = read.trucks.front();
    for (std::size_t i = 1; i < read.trucks.size(); ++i) {
      const ProofReadings::Known& more = read.trucks[i];
      together.references.insert(together.references.end(), more.references.begin(), more.references.end());
      together.indications.insert(together.indications.end(), more.indications.begin(),
                                  more.indications.end());
    }
    tell(together, *result->trucks_together);
    told.results.back().what = {"certificate-trucks-together", {}};
  }
  for (std::size_t i = 0; i < read.loaders.size(); ++i) {
    tell(read.loaders[i], result->loader_on_scale[i]);
    told.results.back().what = {"certificate-loader-on-scale", {}};
  }
  if (!read.zeros.empty()) {
    told.others.push_back(
        {{"document-zero", {}},
         meanOf(read.proof.zero_indications, result->display_step_kg, numbersOf(read.zeros))});
  }
  if (result->zero_return) {
    told.others.push_back(
        {{"certificate-zero-return", {}}, figureOf(*result->zero_return, "kg", numbersOf(read.zeros))});
  }
  const auto comparisons = [&](const char* code, const std::vector<proof::Comparison>& list) {
    for (const proof::Comparison& each : list) {
      std::vector<std::size_t> from = numbersOf(read.masses[each.first].indications);
      const std::vector<std::size_t> more = numbersOf(read.masses[each.second].indications);
      from.insert(from.end(), more.begin(), more.end());
      const Amount mass{read.proof.masses[each.first].reference.inKilograms(), "kg", 0};
      told.others.push_back({{code, {{"mass", mass}}}, figureOf(each.difference, "kg", std::move(from))});
    }
  };
  comparisons("certificate-hysteresis", result->hysteresis);
  comparisons("certificate-pace-effect", result->pace);
  // What was found before teaching is not what the machine has to be told now.
  if (told.when == proof::When::AsFound) return told;
  if (result->correction) {
    const proof::Correction& correction = *result->correction;
    made.correction.span_factor = figureOf(correction.span_factor, correction.span_factor_u, "1", all);
    made.correction.zero = figureOf(correction.zero_kg, correction.zero_u_kg, "kg", all);
    if (correction.levels > 2) {
      told.others.push_back({{"certificate-linearity", {}},
                             {.amount = {correction.largest_residual_kg, "kg", 1}, .readings = all}});
    }
  } else {
    made.correction.reason = result->correction.error();
  }
  return told;
}

/// What the work changed: the error of a mass as left less that as found, told with the former.
void Issuer::changes(const std::vector<ProofReadings>& reads, Certificate& made) const {
  for (const ProofReadings& found : reads) {
    for (std::size_t i = 0; i < reads.size(); ++i) {
      const ProofReadings& left = reads[i];
      if (found.proof.when != proof::When::AsFound || left.proof.when != proof::When::AsLeft) continue;
      const Expected<proof::ProofResult> before = proof::prove(found.proof);
      const Expected<proof::ProofResult> after = proof::prove(left.proof);
      if (!before || !after) continue;
      for (const proof::Change& change : proof::changesBetween(*before, *after)) {
        std::vector<std::size_t> from;
        for (const ProofReadings* const read : {&found, &left}) {
          for (std::size_t mass = 0; mass < read->masses.size(); ++mass) {
            // Half a kilogram apart is another mass.
            if (std::abs(read->proof.masses[mass].reference.inSi() - change.reference_kg) > 0.5) continue;
            const std::vector<std::size_t> more = numbersOf(read->masses[mass].indications);
            from.insert(from.end(), more.begin(), more.end());
          }
        }
        made.proofs[i].others.push_back(
            {{"certificate-change", {{"mass", Amount{change.reference_kg, "kg", 0}}}},
             figureOf(change.difference, "kg", std::move(from))});
      }
    }
  }
}

void Issuer::conditions(Certificate& made) const {
  for (std::size_t at = 0; at < job_.tries.size(); ++at) {
    const RecordedTry& each = job_.tries[at];
    if (each.type != "reading" || !each.counts || !isCondition(each)) continue;
    std::optional<Figure> figure = asRead(each.value);
    if (!figure) continue;
    figure->readings = {numberOf(at)};
    made.conditions.push_back({say({"certificate-" + each.quantity, {}}, reader_), *std::move(figure)});
  }
}

void Issuer::stops(Certificate& made) const {
  std::map<std::string, std::size_t> last;
  for (std::size_t index = 0; index < job_.tries.size(); ++index) {
    const RecordedTry& each = job_.tries[index];
    if (each.check && each.check->kind == "agreement-of-two-readings" &&
        !each.check->reference_entry.empty()) {
      last[each.about] = index;
    }
  }
  std::vector<std::size_t> checks;
  for (const auto& [about, index] : last) checks.push_back(index);
  std::ranges::sort(checks);
  for (const std::size_t index : checks) {
    const RecordedTry& made_check = job_.tries[index];
    const std::vector<std::size_t> tries = readingsBefore(job_, index, made_check.check->of);
    // What was stored is a setting; what was reached is a result.
    const bool reached = !tries.empty() && std::ranges::all_of(tries, [&](std::size_t at) {
      return isStop(job_.tries[at]) && job_.tries[at].about.ends_with("-reached");
    });
    std::optional<Figure> wanted = asRead(made_check.check->reference_entry);
    if (!reached || !wanted) continue;
    const std::optional<Unit> unit = findUnit(wanted->amount.ucum);
    std::vector<double> values;
    int decimals = wanted->amount.decimals;
    for (const std::size_t at : tries) values.push_back(unit->fromSi(*siOf(job_.tries[at].value)));
    const double count = static_cast<double>(values.size());
    const double mean = std::accumulate(values.begin(), values.end(), 0.0) / count;
    certificate::Stop stop{.wanted = *std::move(wanted)};
    const procedures::Step* const check = procedures::findStep(told_.text->procedure, made_check.about);
    const bool has = check != nullptr && check->check;
    stop.wanted.entry =
        has && check->check->reference_entry ? check->check->reference_entry->entry : made_check.about;
    stop.name = stop.wanted.entry == "upper-height"   ? say({"certificate-stop-upper", {}}, reader_)
                : stop.wanted.entry == "lower-height" ? say({"certificate-stop-lower", {}}, reader_)
                                                      : step(job_.tries[tries.front()].about);
    stop.reached = {.amount = {mean, stop.wanted.amount.ucum, decimals}, .readings = numbersOf(tries)};
    if (values.size() > 1) {
      double squares = 0;
      for (const double value : values) squares += (value - mean) * (value - mean);
      const double scatter = std::sqrt(squares / (count - 1));
      const std::array contributions = {statistics::Contribution{
          .name = "", .standard_uncertainty = scatter / std::sqrt(count), .degrees_of_freedom = count - 1}};
      const statistics::CombinedUncertainty u = statistics::combine(contributions, certificate::kCoverage);
      decimals = std::max(decimals, certificate::decimalsFor(u.expanded_uncertainty));
      stop.reached.amount.decimals = decimals;
      stop.reached.expanded_uncertainty = u.expanded_uncertainty;
      stop.reached.coverage_factor = u.coverage_factor;
      stop.scatter =
          Figure{.amount = {scatter, stop.wanted.amount.ucum, decimals}, .readings = numbersOf(tries)};
    }
    if (std::optional<Figure> limit = asRead(made_check.check->within)) {
      limit->entry = has && check->check->within && !check->check->within->entry.empty()
                         ? check->check->within->entry
                         : made_check.about;
      stop.limit = std::move(limit);
    }
    stop.verdict =
        made_check.outcome == "passed" ? certificate::Verdict::Holds : certificate::Verdict::DoesNotHold;
    made.stops.push_back(std::move(stop));
  }
}

void Issuer::remarks(Certificate& made) const {
  for (const RecordedTry& each : job_.tries) {
    const bool says = !each.value.empty() && each.value != "-";
    if (each.kind == "note" && each.type == "answer" && each.counts && says) {
      made.remarks.push_back(step(each.about) + " – " + isolated(each.value, localeOf(reader_.language)));
    }
  }
}

Expected<void> Issuer::people(Certificate& made) const {
  const records::Envelope& sealed = told_.record.envelope;
  made.signatories.push_back({.name = nameOfKey(told_.names, sealed.place.key),
                              .role = role(sealed.role),
                              .key = sealed.place.key,
                              .utc_ms = sealed.sealed_utc_ms,
                              .sealed = true});
  const Expected<std::vector<Beside>> beside = besideRecord(store_, told_);
  if (!beside) return std::unexpected(beside.error());
  for (const Beside& each : *beside) {
    if (each.correction.empty()) {
      made.signatories.push_back({.name = nameOfKey(told_.names, each.key),
                                  .role = role(each.role),
                                  .key = each.key,
                                  .utc_ms = each.utc_ms});
    } else {
      made.corrections.push_back(each.correction);
    }
  }
  return {};
}

/// Those that a number of the certificate comes from.
void Issuer::readings(Certificate& made) const {
  std::set<std::size_t> numbers;
  for (const auto& [name, figure] : certificate::figuresOf(made)) {
    numbers.insert(figure->readings.begin(), figure->readings.end());
  }
  for (const std::size_t number : numbers) {
    const RecordedTry& each = job_.tries[number - 1];
    made.readings.push_back({.number = number,
                             .what = step(each.about),
                             .typed = each.value,
                             .how = each.how,
                             .utc_ms = each.utc_ms,
                             .counts = each.counts});
  }
}

Expected<Certificate> Issuer::make(const Issue& issue) const {
  Certificate made{.record = told_.name,
                   .qr_text = qrTextOf(told_.name),
                   .unit = job_.unit,
                   .attachment = job_.attachment,
                   .procedure = titled(),
                   .procedure_hash = job_.procedure_hash,
                   .version = job_.version,
                   .program = job_.engine,
                   .issued_by = issue.program,
                   .begun_utc_ms = job_.begun_utc_ms,
                   .ended_utc_ms = job_.ended_utc_ms,
                   .issued_utc_ms = issue.utc_ms,
                   .particulars = issue.particulars};
  if (job_.practice) made.stamps.push_back({"document-practice", {}});
  if (job_.phase != "done") {
    made.stamps.push_back({"phase-" + job_.phase, {}});
    made.do_not_use = job_.tag.empty() ? say({"document-do-not-use", {}}, reader_) : words(job_.tag);
  }
  machine(made);
  const ScaleFacts facts = profile_ ? factsOf(*profile_) : ScaleFacts{};
  const std::vector<ProofReadings> reads = proofsOf(job_, told_.text->procedure, facts);
  for (const ProofReadings& read : reads) {
    Expected<certificate::Proof> told = proof(read, made);
    if (!told) return std::unexpected(std::move(told.error()));
    made.proofs.push_back(*std::move(told));
  }
  changes(reads, made);
  conditions(made);
  stops(made);
  remarks(made);
  if (const Expected<void> done = people(made); !done) return std::unexpected(done.error());
  if (!made.corrections.empty()) made.stamps.push_back({"document-corrected", {}});
  readings(made);
  return made;
}

certificate::Card cardOf(const std::string& headline, const std::vector<DocumentRow>& rows,
                         const std::string& qr_text) {
  certificate::Card card{.headline = headline, .qr_text = qr_text};
  for (const DocumentRow& row : rows) card.rows.push_back({row.label, row.value, row.note});
  return card;
}

/// "UTC", "UTC+02:00": by which clock the times of a certificate are.
std::string zoneOf(const Reader& reader) {
  if (reader.utc_offset_min == 0) return "UTC";
  const int size = std::abs(reader.utc_offset_min);
  return fmt::format("UTC{}{:02}:{:02}", reader.utc_offset_min < 0 ? "-" : "+", size / 60, size % 60);
}

}  // namespace

certificate::Voice voiceOf(const Reader& reader) {
  const Locale& locale = localeOf(reader.language);
  // No line ends between a number and its unit.
  const auto show = [reader, &locale](const Amount& amount) {
    std::string text = session::show(amount, reader.system, locale);
    for (std::size_t at = text.find(' '); at != std::string::npos; at = text.find(' ', at)) {
      text.replace(at, 1, "\u00A0");
    }
    return text;
  };
  const auto say_it = [reader, show](Message message) {
    for (auto& [name, value] : message.values) {
      if (const auto* const amount = std::get_if<Amount>(&value)) value = show(*amount);
    }
    return session::say(message, reader);
  };
  return {
      .language = locale.language,
      .right_to_left = locale.right_to_left,
      .system = reader.system,
      .say = say_it,
      .show = show,
      .asTyped = [&locale](const std::string& quantity) { return session::asTyped(quantity, locale); },
      .time = [reader](std::int64_t utc_ms) { return dateTimeText(utc_ms, reader) + " " + zoneOf(reader); }};
}

Expected<Certificate> certificateOf(const store::Store& store, const Edge& edge, std::string_view record,
                                    const Reader& reader, const Issue& issue) {
  if (const Expected<const Words*> known = allWords(reader.language); !known)
    return std::unexpected(known.error());
  const std::string& country = issue.particulars.country;
  const auto isCapital = [](char byte) { return byte >= 'A' && byte <= 'Z'; };
  if (!country.empty() && (country.size() != 2 || !std::ranges::all_of(country, isCapital))) {
    return fail(ErrorKind::InvalidInput, "country-malformed", {{"country", country}});
  }
  ProcedureShelf shelf(store, reader);
  const Expected<Told> told = tell(store, record, shelf);
  if (!told) return std::unexpected(told.error());
  return Issuer(store, edge, reader, *told).make(issue);
}

Expected<std::string> certificateHtml(const store::Store& store, const Edge& edge, std::string_view record,
                                      const Reader& reader, const Issue& issue) {
  const Expected<Certificate> made = certificateOf(store, edge, record, reader, issue);
  if (!made) return std::unexpected(made.error());
  return certificate::renderHtml(*made, voiceOf(reader));
}

Expected<std::string> certificateDcc(const store::Store& store, const Edge& edge, std::string_view record,
                                     const Reader& reader, const Issue& issue) {
  const Expected<Certificate> made = certificateOf(store, edge, record, reader, issue);
  if (!made) return std::unexpected(made.error());
  return certificate::renderDcc(*made, voiceOf(reader), voiceOf({.system = reader.system}));
}

Expected<std::string> labelHtml(const store::Store& store, std::string_view unit, std::string_view attachment,
                                const Reader& reader) {
  const Expected<ScaleLabel> label = labelOf(store, unit, attachment, reader);
  if (!label) return std::unexpected(label.error());
  return certificate::renderCard(cardOf(label->title, label->rows, label->qr_text), voiceOf(reader));
}

Expected<std::string> tagHtml(const store::Store& store, std::string_view record, const Reader& reader) {
  const Expected<TagDocument> tag = tagDocumentOf(store, record, reader);
  if (!tag) return std::unexpected(tag.error());
  certificate::Card card = cardOf(tag->headline, tag->rows, tag->qr_text);
  card.warns = true;
  return certificate::renderCard(card, voiceOf(reader));
}

}  // namespace hingepin::session
