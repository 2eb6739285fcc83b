// SPDX-License-Identifier: Apache-2.0
#include "engine/session/document.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <utility>

#include "engine/records/encoding.h"
#include "engine/session/catalogue.h"
#include "engine/session/confirmation.h"
#include "engine/session/job.h"
#include "engine/session/job_record.h"
#include "engine/session/overview.h"
#include "engine/session/people.h"
#include "engine/session/procedure_text.h"
#include "engine/session/proof_readings.h"
#include "engine/session/record_view.h"
#include "engine/session/surveying.h"
#include "engine/session/told.h"
#include "engine/session/yard.h"

namespace hingepin::session {
namespace {

using store::Store;
using Rows = std::vector<DocumentRow>;
using Values = std::vector<std::pair<std::string, MessageValue>>;

constexpr std::string_view kQrBeginning = "hingepin:record/";
constexpr std::size_t kShortName = 12;

/// Cautions of the library that are for whoever uses the scale later.
constexpr std::array kCautionsOnUse = {"not-for-trade", "mass-missing", "mass-only", "moves-by-itself",
                                       "returns-by-itself"};

/// Puts things into words for one reader.
class Teller {
 public:
  Teller(const Store& store, const Reader& reader, const Told& told)
      : store_(store), reader_(reader), locale_(localeOf(reader.language)), told_(told) {}

  [[nodiscard]] std::string say(std::string code, Values values = {}) const {
    return session::say({std::move(code), std::move(values)}, reader_);
  }
  [[nodiscard]] DocumentRow row(std::string label, std::string value = "", std::string note = "",
                                std::string verdict = "") const {
    return {say(std::move(label)), std::move(value), std::move(note), std::move(verdict)};
  }
  [[nodiscard]] std::string words(std::string_view code) const { return wordsOf(*told_.text, code, reader_); }
  [[nodiscard]] std::string step(std::string_view id) const {
    return stepText(*told_.text, told_.state, id, reader_);
  }
  [[nodiscard]] std::string person(const RecordedPerson& person) const {
    const std::string role = say("role-" + person.role);
    return person.key.empty() ? role : nameOfKey(told_.names, person.key) + ", " + role;
  }
  [[nodiscard]] std::string mark(const std::string& code) const {
    return told_.text->words.contains(code) ? words(code) : say(code);
  }
  [[nodiscard]] std::string time(std::int64_t utc_ms) const {
    return utc_ms == 0 ? "" : dateTimeText(utc_ms, reader_);
  }
  /// A number with a unit, converted. @param ucum of the value
  [[nodiscard]] std::string amount(double value, const char* ucum, int decimals) const {
    return show({value, ucum, decimals}, reader_.system, locale_);
  }
  /// Text of a whole number or decimal of the record's calibration ("12.3"), as an amount.
  [[nodiscard]] std::string amountAt(const JsonValue& object, const char* key, const char* ucum,
                                     double factor = 1.0) const;
  [[nodiscard]] std::string typed(const std::string& quantity) const { return asTyped(quantity, locale_); }
  /// In the reader's units where these are others; "".
  [[nodiscard]] std::string converted(const std::string& quantity) const {
    std::string text = inUnitsOf(quantity, reader_);
    return text == typed(quantity) ? "" : text;
  }
  /// What a check computed, to four digits.
  [[nodiscard]] std::string result(const RecordedTry& check) const;
  [[nodiscard]] std::string limits(const RecordedCheck& check) const;
  /// A warning of a calibration: the record holds its code alone, so that dots stand for its numbers.
  [[nodiscard]] std::string warningText(const std::string& code) const;

  [[nodiscard]] Rows what() const;
  [[nodiscard]] Rows people() const;
  [[nodiscard]] Rows readings(const auto& wanted) const;
  [[nodiscard]] Rows answers() const;
  [[nodiscard]] Rows checks() const;
  [[nodiscard]] Rows calibration() const;
  [[nodiscard]] Rows proof() const;
  [[nodiscard]] Rows marks() const;
  [[nodiscard]] Rows cautions() const;
  [[nodiscard]] Rows recordItself() const;

 private:
  [[nodiscard]] DocumentRow reading(const RecordedTry& each) const;
  /// Of a second person who answered on a phone of their own; "" of any other.
  [[nodiscard]] std::string ownPhone(const RecordedTry& each) const;

  const Store& store_;
  const Reader& reader_;
  const Locale& locale_;
  const Told& told_;
};

std::string joined(std::initializer_list<std::string> parts) {
  std::string text;
  for (const std::string& part : parts) {
    if (!part.empty()) text += (text.empty() ? "" : "; ") + part;
  }
  return text;
}

std::string Teller::amountAt(const JsonValue& object, const char* key, const char* ucum,
                             double factor) const {
  std::string text = textAt(object, {key});
  const std::optional<double> value = siOf(text + " 1");
  if (!value) return text;
  const std::size_t point = text.find('.');
  const int decimals = point == std::string::npos ? 0 : static_cast<int>(text.size() - point - 1);
  return amount(*value * factor, ucum, decimals);
}

std::string Teller::result(const RecordedTry& check) const {
  if (const auto proved = sayProof(check.result, check.reason, check.limit, check.more))
    return session::say(*proved, reader_);
  if (check.check && check.check->kind == "linkage-survey") {
    std::string text;
    for (const Message& message :
         saySurvey(check.result, check.reason, check.limit, check.step.empty() ? "" : step(check.step)))
      text += (text.empty() ? "" : " ") + session::say(message, reader_);
    return text;
  }
  if (!check.reason.empty()) return say(check.reason);
  const Expected<ReadQuantity> read = readAnyQuantity(check.result);
  if (!read) return check.result;
  const Amount amount =
      inSystem({read->unit.fromSi(read->value_si), std::string(read->unit.ucum), 0}, reader_.system);
  const double size = std::abs(amount.value);
  const int decimals = size < 1e-6 ? 0 : std::clamp(3 - static_cast<int>(std::floor(std::log10(size))), 0, 4);
  std::string number = fmt::format("{:.{}f}", amount.value, decimals);
  if (number.find('.') != std::string::npos) {
    number.erase(number.find_last_not_of('0') + 1);
    if (number.ends_with('.')) number.pop_back();
  }
  if (number == "-0") number = "0";
  return isolated(numberIn(number, locale_) + unitText(amount.ucum, locale_), locale_);
}

std::string Teller::limits(const RecordedCheck& check) const {
  const auto shown = [&](const std::string& quantity) { return inUnitsOf(quantity, reader_); };
  if (check.kind == "within-limits") {
    if (check.low.empty()) return say("document-limit-most", {{"high", shown(check.high)}});
    if (check.high.empty()) return say("document-limit-least", {{"low", shown(check.low)}});
    return say("document-limit-between", {{"low", shown(check.low)}, {"high", shown(check.high)}});
  }
  if (check.kind == "at-least") return say("document-limit-least", {{"low", shown(check.value)}});
  if (!check.at_most.empty()) return say("document-limit-most", {{"high", shown(check.at_most)}});
  if (check.kind == "not-older-than") return say("document-limit-age", {{"age", shown(check.duration)}});
  if (!check.within.empty()) {
    const std::string target = !check.reference_entry.empty() ? shown(check.reference_entry)
                               : !check.target.empty()        ? shown(check.target)
                               : !check.reference.empty()     ? "\"" + step(check.reference) + "\""
                                                              : "";
    return target.empty() ? say("document-limit-most", {{"high", shown(check.within)}})
                          : say("document-limit-within", {{"within", shown(check.within)}, {"of", target}});
  }
  return "";
}

Rows Teller::what() const {
  const RecordedJob& job = told_.job;
  Rows rows = {row("document-unit", job.unit)};
  if (!job.attachment.empty()) rows.push_back(row("document-attachment", job.attachment));
  rows.push_back(row("document-procedure", words(told_.text->procedure.title),
                     say("document-version", {{"version", std::to_string(job.version)}})));
  const auto variant =
      std::ranges::find(told_.text->procedure.variants, job.variant, &procedures::Variant::id);
  if (variant != told_.text->procedure.variants.end()) {
    rows.push_back(row("document-variant", words(variant->text)));
  }
  rows.push_back(row("document-begun", time(job.begun_utc_ms)));
  rows.push_back(row("document-ended", time(job.ended_utc_ms)));
  rows.push_back(
      row("document-outcome", say("phase-" + job.phase), "", job.phase == "done" ? "passed" : "failed"));
  if (!job.failed_step.empty()) {
    rows.push_back(row(job.phase == "abandoned" ? "document-given-up-at" : "document-failed-at",
                       step(job.failed_step), "", "failed"));
  }
  return rows;
}

Rows Teller::people() const {
  Rows rows;
  for (const RecordedPerson& each : told_.job.people) {
    const std::string name = nameOfKey(told_.names, each.key);
    const std::string note =
        joined({each.key.empty() ? say("document-no-key") : each.key.substr(0, kShortName), each.device});
    rows.push_back({say("role-" + each.role), name, note, ""});
  }
  return rows;
}

DocumentRow Teller::reading(const RecordedTry& each) const {
  std::string note =
      joined({converted(each.value), time(each.utc_ms), each.how.empty() ? "" : say("how-" + each.how),
              each.outcome == "doubted" ? say("document-doubted") : "",
              each.counts ? "" : say("document-done-again")});
  return {step(each.about), typed(each.value), std::move(note),
          each.outcome == "failed" || each.outcome == "doubted" ? "warning" : ""};
}

Rows Teller::readings(const auto& wanted) const {
  Rows rows;
  for (const RecordedTry& each : told_.job.tries) {
    if (each.type == "reading" && wanted(each)) rows.push_back(reading(each));
  }
  return rows;
}

std::string Teller::ownPhone(const RecordedTry& each) const {
  if (each.confirmation.empty()) return "";
  const Expected<records::SignersVerdict> signers = signersOf(store_);
  const bool proved = signers && confirmationProves(told_.job, each, *signers->list);
  return say(proved ? "document-own-phone" : "document-own-phone-unproved",
             {{"key", each.by.key.substr(0, kShortName)}});
}

Rows Teller::answers() const {
  Rows rows;
  for (const RecordedTry& each : told_.job.tries) {
    const bool asked = each.kind == "confirm" || each.kind == "monitor" || each.kind == "evidence" ||
                       each.kind == "note" || each.kind == "pose" || each.kind == "pass";
    if (each.type != "answer" || !asked) continue;
    std::string value = each.value;
    const procedures::Step* const of = procedures::findStep(told_.text->procedure, each.about);
    if (each.kind == "monitor" && of != nullptr) {
      const auto found = std::ranges::find(of->answers, each.answer, &procedures::Answer::id);
      value = joined({found == of->answers.end() ? each.answer : words(found->text), each.value});
    } else if (each.kind != "note" || each.answer == "skipped") {
      value = say("answer-" + each.answer);
    }
    if (each.kind == "evidence" && !each.hashes.empty()) {
      value = joined({value, each.hashes.front().substr(0, kShortName)});
    }
    const bool second = of != nullptr && of->second_person;
    std::string note = joined({time(each.utc_ms), second ? person(each.by) : "", ownPhone(each),
                               each.counts || each.outcome != "passed" ? "" : say("document-done-again")});
    rows.push_back(
        {step(each.about), std::move(value), std::move(note), each.outcome == "failed" ? "failed" : ""});
  }
  return rows;
}

Rows Teller::checks() const {
  Rows rows;
  for (const RecordedTry& each : told_.job.tries) {
    if (!each.check) continue;
    rows.push_back(
        {step(each.about), result(each),
         joined({each.limit.empty() ? limits(*each.check)
                                    : say("document-limit-most", {{"high", inUnitsOf(each.limit, reader_)}}),
                 time(each.utc_ms),
                 each.counts || each.outcome != "passed" ? "" : say("document-done-again")}),
         each.outcome == "passed" ? "passed"
         : each.outcome == "more" ? "warning"
                                  : "failed"});
  }
  return rows;
}

std::string Teller::warningText(const std::string& code) const {
  const std::string sentence = say(code);
  std::string text;
  bool in_place = false;
  for (const char byte : sentence) {
    if (byte == '{') text += "\u2026";
    if (!in_place && byte != '{') text += byte;
    in_place = byte == '{' || (in_place && byte != '}');
  }
  return text;
}

Rows Teller::calibration() const {
  Rows rows;
  if (told_.job.calibration == nullptr) return rows;
  const JsonValue& summary = *told_.job.calibration;
  const auto each = [&](const char* key, const auto& make) {
    const JsonValue* const list = memberAt(summary, {key});
    if (list == nullptr) return;
    for (const JsonValue& item : list->items) rows.push_back(make(item));
  };
  rows.push_back(row("document-boom-line", amountAt(summary, "boom_line_angle_u_deg", "deg"),
                     say("document-standard-uncertainty")));
  rows.push_back(row("document-window",
                     say("document-range", {{"low", amountAt(summary, "weigh_window_low_deg", "deg")},
                                            {"high", amountAt(summary, "weigh_window_high_deg", "deg")}})));
  each("passes", [&](const JsonValue& pass) {
    return DocumentRow{say("document-pass", {{"name", textAt(pass, {"name"}).substr(0, kShortName)}}),
                       amountAt(pass, "residual_bar", "bar"),
                       joined({say("direction-" + textAt(pass, {"direction"})), say("document-residual")}),
                       ""};
  });
  each("known_masses", [&](const JsonValue& mass) {
    return row("document-known-mass", amountAt(mass, "reference_kg", "kg"),
               say("document-predicted", {{"mass", amountAt(mass, "predicted_kg", "kg")},
                                          {"u", amountAt(mass, "difference_u_kg", "kg")}}));
  });
  each("weighed", [&](const JsonValue& lift) {
    return row("document-weighed",
               say("document-plus-minus", {{"value", amountAt(lift, "mass_kg", "kg")},
                                           {"u", amountAt(lift, "expanded_uncertainty_kg", "kg")}}),
               say("document-expanded-uncertainty",
                   {{"factor", numberIn(textAt(lift, {"coverage_factor"}), locale_)}}));
  });
  each("warnings",
       [&](const JsonValue& code) { return row("document-warning", warningText(code.text), "", "warning"); });
  rows.push_back(row("document-numbers", textAt(summary, {"hash"}).substr(0, kShortName)));
  return rows;
}

Rows Teller::proof() const {
  Rows rows;
  const HistoryPoint point = historyPointOf(store_, told_.job, told_.name);
  const auto percent = [&](double value) { return amount(value, "%", 2); };
  const auto add = [&](const char* label, const std::optional<double>& value, const char* ucum, int decimals,
                       std::string note = "", std::string verdict = "") {
    if (!value) return;
    rows.push_back(row(label, amount(*value, ucum, decimals), std::move(note), std::move(verdict)));
  };
  add("document-zero-found", point.zero_found_kg, "kg", 0);
  if (point.zero_kg) {
    const bool within = !point.zero_low_kg || (*point.zero_kg >= *point.zero_low_kg &&
                                               *point.zero_kg <= point.zero_high_kg.value_or(*point.zero_kg));
    add("document-zero", point.zero_kg, "kg", 1,
        point.zero_low_kg ? say("document-limit-between", {{"low", amount(*point.zero_low_kg, "kg", 0)},
                                                           {"high", amount(*point.zero_high_kg, "kg", 0)}})
                          : "",
        within ? "passed" : "failed");
  }
  add("document-reference", point.reference_kg, "kg", 0);
  add("document-indication", point.indication_kg, "kg", 1);
  if (point.error_percent) {
    const bool within =
        !point.error_limit_percent || std::abs(*point.error_percent) <= *point.error_limit_percent;
    rows.push_back(row("document-error", percent(*point.error_percent),
                       point.error_limit_percent
                           ? say("document-limit-most", {{"high", percent(*point.error_limit_percent)}})
                           : "",
                       within ? "passed" : "failed"));
  }
  add("document-spread", point.spread_kg, "kg", 0,
      point.spread_limit_kg ? say("document-limit-most", {{"high", amount(*point.spread_limit_kg, "kg", 0)}})
                            : "",
      !point.spread_limit_kg || *point.spread_kg <= *point.spread_limit_kg ? "passed" : "failed");
  return rows;
}

Rows Teller::marks() const {
  Rows rows;
  for (const RecordedMark& each : told_.job.marks) {
    rows.push_back({step(each.step), mark(each.mark), "", "warning"});
  }
  return rows;
}

Rows Teller::cautions() const {
  Rows rows;
  std::set<std::string> shown;
  for (const RecordedTry& each : told_.job.tries) {
    const procedures::Step* const of = procedures::findStep(told_.text->procedure, each.about);
    if (of != nullptr && of->kind == procedures::StepKind::Caution) shown.insert(of->caution);
  }
  for (const procedures::Caution& caution : told_.text->procedure.cautions) {
    if (!shown.contains(caution.id) || std::ranges::find(kCautionsOnUse, caution.id) == kCautionsOnUse.end())
      continue;
    rows.push_back({words(caution.hazard), words(caution.avoidance), words(caution.consequence), "warning"});
  }
  return rows;
}

Rows Teller::recordItself() const {
  const records::ChainPlace& place = told_.record.envelope.place;
  return {row("document-record", told_.name),
          row("document-number", std::to_string(place.sequence), place.epoch),
          row("document-procedure-file", told_.job.procedure_hash),
          row("document-words", told_.job.language, told_.job.words.substr(0, kShortName)),
          row("document-engine", told_.job.engine)};
}

/// Who sealed and signed, and what corrects the record.
struct Around {
  Rows signatures;
  Rows corrections;
};

Expected<Around> around(const Store& store, const Teller& teller, const Told& told) {
  Around found;
  const records::Envelope& sealed = told.record.envelope;
  found.signatures.push_back(teller.row("document-sealed-by",
                                        teller.person({sealed.place.key, sealed.role, ""}),
                                        teller.time(sealed.sealed_utc_ms)));
  for (const RecordedTry& each : told.job.tries) {
    if (each.kind != "sign" || !each.counts) continue;
    const procedures::Step* const step = procedures::findStep(told.text->procedure, each.about);
    RecordedPerson by = each.by;
    if (step != nullptr && !step->roles.empty()) by.role = step->roles.front();
    if (step != nullptr && step->on_glass) by.key.clear();
    const bool is_signed = each.answer == "signed";
    found.signatures.push_back({teller.step(each.about), teller.say("answer-" + each.answer),
                                joined({teller.person(by), teller.time(each.utc_ms)}),
                                is_signed ? "" : "warning"});
  }
  const Expected<std::vector<Beside>> beside = besideRecord(store, told);
  if (!beside) return std::unexpected(beside.error());
  for (const Beside& each : *beside) {
    const std::string by = teller.person({each.key, each.role, ""});
    const std::string when = teller.time(each.utc_ms);
    if (each.correction.empty()) {
      found.signatures.push_back(teller.row("document-signed-by", by, when));
    } else {
      found.corrections.push_back(teller.row("document-correction", each.correction,
                                             joined({by, when, each.name.substr(0, kShortName)}), "warning"));
    }
  }
  return found;
}

}  // namespace

std::string qrTextOf(std::string_view record) { return std::string(kQrBeginning) + std::string(record); }

std::optional<std::string> recordOfQrText(std::string_view text) {
  if (!text.starts_with(kQrBeginning)) return std::nullopt;
  const std::string_view name = text.substr(kQrBeginning.size());
  return records::isHashName(name) ? std::optional<std::string>(name) : std::nullopt;
}

Expected<Document> documentOf(const Store& store, std::string_view record, const Reader& reader) {
  if (const Expected<const Words*> known = allWords(reader.language); !known) {
    return std::unexpected(known.error());
  }
  ProcedureShelf shelf(store, reader);
  Expected<Told> found = tell(store, record, shelf);
  if (!found) return std::unexpected(std::move(found.error()));
  const Told& told = *found;
  const Teller teller(store, reader, told);
  const RecordedJob& job = told.job;
  Document document{.record = told.name,
                    .language = told.text->language,
                    .title = teller.words(told.text->procedure.title),
                    .verdict = job.phase == "done" ? "passed" : "failed",
                    .not_for_trade = teller.say("document-not-for-trade"),
                    .qr_text = qrTextOf(told.name)};
  if (job.practice) document.stamps.push_back(teller.say("document-practice"));
  if (job.phase != "done") {
    document.stamps.push_back(teller.say("phase-" + job.phase));
    document.stamps.push_back(job.tag.empty() ? teller.say("document-do-not-use") : teller.words(job.tag));
  }
  Expected<Around> beside = around(store, teller, told);
  if (!beside) return std::unexpected(std::move(beside.error()));
  if (!beside->corrections.empty()) document.stamps.push_back(teller.say("document-corrected"));

  const auto add = [&](const char* code, Rows rows) {
    if (!rows.empty()) document.sections.push_back({code, teller.say(code), std::move(rows)});
  };
  add("document-what", teller.what());
  add("document-corrections", std::move(beside->corrections));
  add("document-people", teller.people());
  add("document-marks", teller.marks());
  add("document-cautions", teller.cautions());
  add("document-conditions",
      teller.readings([](const RecordedTry& each) { return isCondition(each) && !isAsFound(each); }));
  add("document-as-found", teller.readings([](const RecordedTry& each) { return isAsFound(each); }));
  add("document-proof", teller.proof());
  add("document-calibration", teller.calibration());
  add("document-stops", teller.readings(isStop));
  add("document-readings", teller.readings([](const RecordedTry& each) {
    return !isCondition(each) && !isAsFound(each) && !isStop(each);
  }));
  add("document-checks", teller.checks());
  add("document-answers", teller.answers());
  add("document-signatures", std::move(beside->signatures));
  add("document-record-itself", teller.recordItself());
  return document;
}

Expected<ScaleLabel> labelOf(const Store& store, std::string_view unit, std::string_view attachment,
                             const Reader& reader) {
  const Expected<std::optional<store::Pair>> pair = store.pair(unit, attachment);
  if (!pair) return std::unexpected(pair.error());
  if (!*pair || (*pair)->record.empty()) {
    return fail(ErrorKind::NotFound, "pair-not-taught",
                {{"unit", std::string(unit)}, {"attachment", std::string(attachment)}});
  }
  ProcedureShelf shelf(store, reader);
  const Expected<Told> told = tell(store, (*pair)->record, shelf);
  if (!told) return std::unexpected(told.error());
  const Teller teller(store, reader, *told);
  const records::Envelope& sealed = told->record.envelope;
  ScaleLabel label{.title = teller.say("label-title"),
                   .unit = std::string(unit),
                   .attachment = std::string(attachment),
                   .rows = {teller.row("document-unit", std::string(unit)),
                            teller.row("document-attachment", std::string(attachment)),
                            teller.row("label-calibrated", dateText(sealed.sealed_utc_ms, reader))},
                   .qr_text = qrTextOf(told->name),
                   .practice = told->job.practice};
  if ((*pair)->due_utc_ms)
    label.rows.push_back(teller.row("label-due", dateText(*(*pair)->due_utc_ms, reader)));
  label.rows.push_back(teller.row("label-by", teller.person({sealed.place.key, sealed.role, ""})));
  label.rows.push_back(teller.row("document-record", told->name.substr(0, kShortName)));
  if (label.practice) label.rows.push_back(teller.row("document-practice"));
  return label;
}

Expected<TagDocument> tagDocumentOf(const Store& store, std::string_view record, const Reader& reader) {
  ProcedureShelf shelf(store, reader);
  const Expected<Told> told = tell(store, record, shelf);
  if (!told) return std::unexpected(told.error());
  const RecordedJob& job = told->job;
  if (job.tag.empty()) return fail(ErrorKind::InvalidInput, "job-has-no-tag", {{"job", job.job}});
  const Teller teller(store, reader, *told);
  const records::Envelope& sealed = told->record.envelope;
  TagDocument tag{.headline = teller.words(job.tag),
                  .rows = {teller.row("document-unit", job.unit)},
                  .qr_text = qrTextOf(told->name),
                  .practice = job.practice};
  if (!job.attachment.empty()) tag.rows.push_back(teller.row("document-attachment", job.attachment));
  tag.rows.push_back(teller.row("document-procedure", teller.words(told->text->procedure.title)));
  if (!job.failed_step.empty()) {
    std::string why;
    for (const RecordedTry& each : job.tries) {
      if (each.about == job.failed_step && each.outcome == "failed" && each.check) {
        why = joined({teller.result(each), teller.limits(*each.check)});
      }
    }
    tag.rows.push_back(teller.row(job.phase == "abandoned" ? "document-given-up-at" : "document-failed-at",
                                  teller.step(job.failed_step), std::move(why), "failed"));
  }
  tag.rows.push_back(teller.row("tag-hung-by", teller.person({sealed.place.key, sealed.role, ""}),
                                dateTimeText(sealed.sealed_utc_ms, reader)));
  tag.rows.push_back(teller.row("document-record", told->name.substr(0, kShortName)));
  if (tag.practice) tag.rows.push_back(teller.row("document-practice"));
  return tag;
}

}  // namespace hingepin::session
