// SPDX-License-Identifier: Apache-2.0
#include "engine/certificate/dcc.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstdlib>
#include <numbers>
#include <utility>

#include "engine/certificate/markup.h"
#include "engine/units/ucum.h"

namespace hingepin::certificate {
namespace {

using Attributes = std::vector<std::pair<const char*, std::string>>;

constexpr std::string_view kNobodysCountry = "ZZ";  // of the codes that ISO 3166-1 leaves to users

constexpr std::array<std::pair<Dimension, std::string_view>, 13> kSiCodes = {{
    {Dimension::Number, R"(\one)"},
    {Dimension::Length, R"(\metre)"},
    {Dimension::Angle, R"(\degree)"},
    {Dimension::Mass, R"(\kilogram)"},
    {Dimension::Time, R"(\second)"},
    {Dimension::Temperature, R"(\degreecelsius)"},
    {Dimension::Pressure, R"(\pascal)"},
    {Dimension::Voltage, R"(\volt)"},
    {Dimension::Current, R"(\ampere)"},
    {Dimension::Force, R"(\newton)"},
    {Dimension::Acceleration, R"(\metre\second\tothe{-2})"},
    {Dimension::Frequency, R"(\second\tothe{-1})"},
    {Dimension::AngularSpeed, R"(\degree\second\tothe{-1})"},
}};

std::chrono::sys_time<std::chrono::milliseconds> timeOf(std::int64_t utc_ms) {
  return std::chrono::sys_time<std::chrono::milliseconds>(std::chrono::milliseconds(utc_ms));
}
std::string dateOf(std::int64_t utc_ms) {
  const std::chrono::year_month_day day{std::chrono::floor<std::chrono::days>(timeOf(utc_ms))};
  return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(day.year()), static_cast<unsigned>(day.month()),
                     static_cast<unsigned>(day.day()));
}
std::string dateTimeOf(std::int64_t utc_ms) {
  const auto time = timeOf(utc_ms);
  const std::chrono::hh_mm_ss clock{
      std::chrono::floor<std::chrono::seconds>(time - std::chrono::floor<std::chrono::days>(time))};
  return fmt::format("{}T{:02}:{:02}:{:02}Z", dateOf(utc_ms), clock.hours().count(), clock.minutes().count(),
                     clock.seconds().count());
}

/// What the schema takes where it wants a text that is not empty.
std::string someText(const std::string& text) {
  std::string made = collapsed(text);
  return made.empty() ? "-" : made;
}

/// A plain decimal of a number shown with so many decimals in its own unit.
std::string decimal(double value, int decimals, double factor, double offset = 0.0) {
  const double shown = std::strtod(fmt::format("{:.{}f}", value, decimals).c_str(), nullptr);
  const double si = shown * factor + offset;
  return fmt::format("{:.10g}", si == 0 ? 0.0 : si);
}

class Writer {
 public:
  Writer(const Certificate& certificate, const Voice& voice, const Voice& english)
      : certificate_(certificate), voice_(voice), english_(english), language_(voice.language.substr(0, 2)) {}

  [[nodiscard]] std::string make();

 private:
  void open(const char* tag, const Attributes& attributes = {}) {
    start(tag, attributes);
    xml_ += ">\n";
    tags_.push_back(tag);
  }
  void close() {
    const char* const tag = tags_.back();
    tags_.pop_back();
    xml_ += std::string(2 * tags_.size(), ' ') + "</" + tag + ">\n";
  }
  void leaf(const char* tag, std::string_view text, const Attributes& attributes = {}) {
    start(tag, attributes);
    xml_ += ">" + escaped(text) + "</" + tag + ">\n";
  }
  void start(const char* tag, const Attributes& attributes) {
    xml_ += std::string(2 * tags_.size(), ' ') + "<" + tag;
    for (const auto& [key, value] : attributes) xml_ += fmt::format(" {}=\"{}\"", key, escaped(value));
  }
  /// A text of the certificate's language, English beside it where that is another.
  void say(const char* tag, const Message& message) {
    open(tag);
    content(message);
    close();
  }
  void content(const Message& message) {
    leaf("dcc:content", voice_.say(message), {{"lang", language_}});
    if (language_ != "en") leaf("dcc:content", english_.say(message), {{"lang", "en"}});
  }
  /// A text that stands in the certificate as it is. @param own in its language, not somebody's own words
  void plain(const char* tag, const std::string& text, bool own = false) {
    open(tag);
    leaf("dcc:content", someText(text), own ? Attributes{{"lang", language_}} : Attributes{});
    close();
  }
  void statedOrNot(const char* tag, const std::string& text) {
    text.empty() ? say(tag, {"certificate-not-stated", {}}) : plain(tag, text);
  }
  void identification(const char* issuer, const std::string& value, const char* name) {
    open("dcc:identification");
    leaf("dcc:issuer", issuer);
    leaf("dcc:value", someText(value));
    say("dcc:name", {name, {}});
    close();
  }
  void contact(const char* tag, const std::string& who) {
    open(tag);
    statedOrNot("dcc:name", who);
    open("dcc:location");
    statedOrNot("dcc:further", who);
    close();
    close();
  }
  void statement(const Message& declaration) {
    open("dcc:statement");
    say("dcc:declaration", declaration);
    close();
  }
  void conformity(const std::optional<Verdict>& verdict) {
    if (verdict == Verdict::Holds) leaf("dcc:conformity", "pass");
    if (verdict == Verdict::DoesNotHold) leaf("dcc:conformity", "fail");
  }
  void real(const Figure& figure, std::int64_t utc_ms = 0);
  void quantity(const Message& name, const Figure& figure, const std::optional<Verdict>& verdict = {});
  void quantityBody(const Figure& figure, const std::optional<Verdict>& verdict);
  void methods(const Proof* proof);
  void conditions(When when);

  void administration();
  void core();
  void item();
  void people();
  void statements();
  void proof(const Proof& proof);
  void correction();
  void stops();
  void readings();

  const Certificate& certificate_;
  const Voice& voice_;
  const Voice& english_;
  std::string language_;
  std::string xml_{};
  std::vector<const char*> tags_{};
};

void Writer::real(const Figure& figure, std::int64_t utc_ms) {
  const SiUnit unit = siUnitOf(figure.amount.ucum);
  const int decimals = figure.amount.decimals;
  open("si:real");
  leaf("si:value", decimal(figure.amount.value, decimals, unit.factor, unit.offset));
  leaf("si:unit", unit.code);
  if (utc_ms != 0) leaf("si:dateTime", dateTimeOf(utc_ms));
  if (figure.expanded_uncertainty) {
    open("si:expandedUnc");
    leaf("si:uncertainty", decimal(*figure.expanded_uncertainty, decimals, unit.factor));
    leaf("si:coverageFactor", fmt::format("{:.2f}", std::max(1.0, figure.coverage_factor)));
    leaf("si:coverageProbability", fmt::format("{}", kCoverage));
    close();
  }
  close();
}

void Writer::quantity(const Message& name, const Figure& figure, const std::optional<Verdict>& verdict) {
  Attributes attributes;
  if (!figure.readings.empty()) {
    attributes = {{"refId", fmt::format("reading-{}", fmt::join(figure.readings, " reading-"))}};
  }
  open("dcc:quantity", attributes);
  say("dcc:name", name);
  if (!figure.entry.empty()) say("dcc:description", {"certificate-entry", {{"entry", figure.entry}}});
  quantityBody(figure, verdict);
  close();
}

void Writer::quantityBody(const Figure& figure, const std::optional<Verdict>& verdict) {
  real(figure);
  if (!verdict) return;
  open("dcc:measurementMetaData");
  open("dcc:metaData");
  say("dcc:declaration", {proof::codeOf(*verdict), {}});
  conformity(verdict);
  close();
  close();
}

void Writer::core() {
  const Certificate& c = certificate_;
  open("dcc:coreData");
  leaf("dcc:countryCodeISO3166_1", c.particulars.country.empty() ? kNobodysCountry : c.particulars.country);
  leaf("dcc:usedLangCodeISO639_1", language_);
  if (language_ != "en") leaf("dcc:usedLangCodeISO639_1", "en");
  leaf("dcc:mandatoryLangCodeISO639_1", language_);
  leaf("dcc:uniqueIdentifier", someText(c.record));
  if (!c.qr_text.empty()) {
    open("dcc:identifications");
    identification("calibrationLaboratory", c.qr_text, "document-record");
    close();
  }
  leaf("dcc:beginPerformanceDate", dateOf(c.begun_utc_ms));
  leaf("dcc:endPerformanceDate", dateOf(c.ended_utc_ms));
  leaf("dcc:performanceLocation", "other");
  leaf("dcc:issueDate", dateOf(c.issued_utc_ms));
  close();
}

void Writer::item() {
  const Certificate& c = certificate_;
  open("dcc:items");
  open("dcc:item");
  say("dcc:name",
      {"certificate-item-is", {{"unit", c.unit}, {"attachment", c.attachment.empty() ? "–" : c.attachment}}});
  open("dcc:identifications");
  identification("owner", c.unit, "document-unit");
  if (!c.attachment.empty()) identification("owner", c.attachment, "document-attachment");
  close();
  if (c.rated_payload) {
    open("dcc:itemQuantities");
    open("dcc:itemQuantity");
    say("dcc:name", {"certificate-rated-payload", {}});
    real(*c.rated_payload);
    close();
    close();
  }
  close();
  close();
}

void Writer::people() {
  open("dcc:respPersons");
  for (const Signatory& each : certificate_.signatories) {
    open("dcc:respPerson");
    open("dcc:person");
    plain("dcc:name", each.name);
    close();
    if (!each.key.empty()) plain("dcc:description", dateTimeOf(each.utc_ms) + " " + each.key);
    leaf("dcc:role", someText(each.role));
    leaf("dcc:mainSigner", each.sealed ? "true" : "false");
    close();
  }
  if (certificate_.signatories.empty()) {
    open("dcc:respPerson");
    open("dcc:person");
    say("dcc:name", {"certificate-not-stated", {}});
    close();
    close();
  }
  close();
}

void Writer::statements() {
  open("dcc:statements");
  for (const Message& stamp : certificate_.stamps) statement(stamp);
  statement(aboutUncertainty());
  for (const char* const code : kStatements) statement({code, {}});
  const auto typed = [&](const char* name, const std::string& text) {
    if (text.empty()) return;
    open("dcc:statement");
    say("dcc:name", {name, {}});
    plain("dcc:declaration", text);
    close();
  };
  typed("document-do-not-use", certificate_.do_not_use);
  typed("certificate-place", certificate_.particulars.place);
  typed("certificate-references", certificate_.particulars.references);
  for (const std::string& remark : certificate_.remarks) typed("certificate-remarks", remark);
  for (const std::string& text : certificate_.corrections) typed("document-correction", text);
  close();
}

void Writer::administration() {
  open("dcc:administrativeData");
  open("dcc:dccSoftware");
  open("dcc:software");
  plain("dcc:name", "Hingepin");
  leaf("dcc:release", someText(certificate_.issued_by));
  leaf("dcc:type", "application");
  close();
  close();
  core();
  item();
  open("dcc:calibrationLaboratory");
  contact("dcc:contact", certificate_.particulars.laboratory);
  close();
  people();
  contact("dcc:customer", certificate_.particulars.customer);
  statements();
  close();
}

void Writer::methods(const Proof* proof) {
  open("dcc:usedMethods");
  open("dcc:usedMethod");
  plain("dcc:name", certificate_.procedure, true);
  say("dcc:description", {"document-version", {{"version", std::to_string(certificate_.version)}}});
  leaf("dcc:reference", someText("SHA-256 " + certificate_.procedure_hash));
  close();
  if (proof != nullptr && !proof->rule.code.empty()) {
    open("dcc:usedMethod");
    say("dcc:name", proof->rule);
    if (!proof->tolerance.code.empty()) say("dcc:description", proof->tolerance);
    leaf("dcc:norm", "JCGM 106:2012");
    close();
  }
  close();
}

void Writer::conditions(When when) {
  if (certificate_.conditions.empty()) return;
  open("dcc:influenceConditions");
  for (const Condition& condition : certificate_.conditions) {
    open("dcc:influenceCondition");
    plain("dcc:name", condition.name, true);
    leaf("dcc:status", when == When::AsFound ? "beforeAdjustment" : "afterAdjustment");
    open("dcc:data");
    const std::vector<std::size_t>& from = condition.figure.readings;
    open("dcc:quantity",
         from.empty() ? Attributes{}
                      : Attributes{{"refId", fmt::format("reading-{}", fmt::join(from, " reading-"))}});
    real(condition.figure);
    close();
    close();
    close();
  }
  close();
}

void Writer::proof(const Proof& proof) {
  open("dcc:measurementResult");
  say("dcc:name", {proof.when == When::AsFound ? "document-as-found" : "certificate-as-left", {}});
  if (!proof.remarks.empty()) {
    open("dcc:description");
    for (const Message& remark : proof.remarks) content(remark);
    close();
  }
  methods(&proof);
  conditions(proof.when);
  open("dcc:results");
  for (const Result& result : proof.results) {
    open("dcc:result");
    say("dcc:name", result.what);
    if (!result.pace.empty()) say("dcc:description", {"certificate-pace-" + result.pace, {}});
    open("dcc:data");
    open("dcc:list");
    quantity({"certificate-reference", {}}, result.reference);
    quantity({"certificate-indication", {}}, result.indication);
    quantity({"document-error", {}}, result.error, result.verdict);
    if (result.repeatability) quantity({"certificate-repeatability", {}}, *result.repeatability);
    if (result.limit) quantity({"certificate-limit", {}}, *result.limit);
    if (result.probability) {
      quantity({"certificate-probability", {}}, *result.probability);
    }
    close();
    close();
    close();
  }
  for (const Characteristic& other : proof.others) {
    open("dcc:result");
    say("dcc:name", other.name);
    open("dcc:data");
    quantity(other.name, other.figure);
    close();
    close();
  }
  close();
  if (proof.verdict) {
    open("dcc:measurementMetaData");
    open("dcc:metaData");
    say("dcc:declaration", {proof::codeOf(*proof.verdict), {}});
    conformity(proof.verdict);
    close();
    close();
  }
  close();
}

void Writer::correction() {
  const Correction& c = certificate_.correction;
  if (!c.span_factor && !c.zero) return;
  open("dcc:measurementResult");
  say("dcc:name", {"certificate-to-enter", {}});
  say("dcc:description", {"certificate-to-enter-how", {}});
  open("dcc:results");
  const auto result = [&](const char* name, const std::optional<Figure>& figure) {
    if (!figure) return;
    open("dcc:result");
    say("dcc:name", {name, {}});
    open("dcc:data");
    quantity({name, {}}, *figure);
    close();
    close();
  };
  result("certificate-zero-correction", c.zero);
  result("certificate-span-factor", c.span_factor);
  close();
  close();
}

void Writer::stops() {
  if (certificate_.stops.empty()) return;
  open("dcc:measurementResult");
  say("dcc:name", {"document-stops", {}});
  open("dcc:results");
  for (const Stop& stop : certificate_.stops) {
    open("dcc:result");
    plain("dcc:name", stop.name, true);
    open("dcc:data");
    open("dcc:list");
    quantity({"certificate-wanted", {}}, stop.wanted);
    quantity({"certificate-reached", {}}, stop.reached, stop.verdict);
    if (stop.scatter) quantity({"certificate-scatter", {}}, *stop.scatter);
    if (stop.limit) quantity({"certificate-limit", {}}, *stop.limit);
    close();
    close();
    close();
  }
  close();
  close();
}

void Writer::readings() {
  const bool nothing = certificate_.proofs.empty() && certificate_.readings.empty();
  if (certificate_.readings.empty() && !nothing) return;
  open("dcc:measurementResult");
  say("dcc:name", {"document-readings", {}});
  say("dcc:description", {"certificate-readings-note", {}});
  methods(nullptr);
  open("dcc:results");
  open("dcc:result");
  say("dcc:name", {"document-readings", {}});
  open("dcc:data");
  if (nothing) say("dcc:text", {"certificate-no-proof", {}});
  for (const Reading& reading : certificate_.readings) {
    const Expected<ReadQuantity> read = readAnyQuantity(reading.typed);
    open("dcc:quantity", {{"id", fmt::format("reading-{}", reading.number)}});
    plain("dcc:name", reading.what, true);
    plain("dcc:description", reading.typed);
    if (read) {
      const double value = read->unit.fromSi(read->value_si);
      constexpr int kAsTyped = 9;  // decimals; more than anybody types
      real({.amount = {value, std::string(read->unit.ucum), kAsTyped}}, reading.utc_ms);
    } else {
      plain("dcc:noQuantity", reading.typed);
    }
    close();
  }
  close();
  close();
  close();
  close();
}

std::string Writer::make() {
  xml_ = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
  open("dcc:digitalCalibrationCertificate",
       {{"xmlns:dcc", "https://ptb.de/dcc"},
        {"xmlns:si", "https://ptb.de/si"},
        {"xmlns:xsi", "http://www.w3.org/2001/XMLSchema-instance"},
        {"xsi:schemaLocation", "https://ptb.de/dcc https://ptb.de/dcc/v3.2.1/dcc.xsd"},
        {"schemaVersion", "3.2.1"}});
  administration();
  open("dcc:measurementResults");
  for (const Proof& each : certificate_.proofs) proof(each);
  correction();
  stops();
  readings();
  close();
  close();
  return std::move(xml_);
}

}  // namespace

SiUnit siUnitOf(std::string_view ucum) {
  const std::optional<Unit> unit = findUnit(ucum);
  const auto* const code =
      unit ? std::ranges::find(kSiCodes, unit->dimension, &std::pair<Dimension, std::string_view>::first)
           : kSiCodes.end();
  if (code == kSiCodes.end()) return {R"(\one)"};
  SiUnit si{code->second, unit->factor / unit->divisor, unit->offset * unit->factor / unit->divisor};
  if (unit->dimension == Dimension::Angle || unit->dimension == Dimension::AngularSpeed) {
    si.factor *= 180 / std::numbers::pi;
  }
  if (unit->dimension == Dimension::Temperature) si.offset -= 273.15;
  return si;
}

std::string renderDcc(const Certificate& certificate, const Voice& voice, const Voice& english) {
  return Writer(certificate, voice, english).make();
}

}  // namespace hingepin::certificate
