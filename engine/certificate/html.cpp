// SPDX-License-Identifier: Apache-2.0
#include "engine/certificate/html.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "engine/certificate/drawing.h"
#include "engine/certificate/markup.h"

namespace hingepin::certificate {
namespace {

// What a printer that knows little CSS understands; tables have attributes for it, too.
constexpr std::string_view kStyle = R"css(
body { font-family: sans-serif; font-size: 10pt; color: #000; background: #fff; }
h1 { font-size: 17pt; }
h2 { font-size: 11.5pt; margin: 14px 0 4px 0; border-bottom: 1px solid #000; }
p { margin: 4px 0; }
table { border-collapse: collapse; }
th, td { padding: 2px 5px; border-bottom: 1px solid #bbb; vertical-align: top; }
thead th { background-color: #e8ebf0; font-size: 8.5pt; }
table.results td { font-size: 9pt; }
table.facts th { font-weight: normal; color: #444; }
.small { font-size: 8pt; color: #444; }
.stamp { border: 2px solid #000; padding: 6px; font-size: 12pt; font-weight: bold; }
.verdict { font-weight: bold; }
.holds { color: #0b5a1d; } .does-not-hold { color: #a00000; } .undecided { color: #6b4a00; }
.hash { font-family: monospace; font-size: 7.5pt; }
.head td { border: none; }
b .small { font-weight: normal; }
)css";

// The rest is for browsers: a phone's narrow screen, and sheets.
constexpr std::string_view kBrowserStyle = R"css(
body { line-height: 1.35; max-width: 182mm; margin: 0 auto; padding: 4mm; }
h1 { margin: 0 0 1mm 0; } h2, .lead { break-after: avoid; } tr { break-inside: avoid; }
table { width: 100%; } th, td { text-align: start; } table.facts th { width: 30%; }
bdi { white-space: nowrap; } .whole { white-space: normal; } .hash bdi { white-space: normal; word-break: break-all; }
img { max-width: 100%; height: auto; } .plot { width: 100%; } .code { width: 34mm; } .code img { width: 32mm; }
.end { text-align: center; border-top: 1px solid #000; margin-top: 5mm; padding-top: 1mm; font-size: 8pt; }
@media screen and (max-width: 44em) {
  body { font-size: 11pt; padding: 3mm; }
  table.results thead { display: none; }
  table.results tr { display: block; border: 1px solid #888; margin-bottom: 2mm; }
  table.results td { display: block; font-size: 11pt; border: none; }
  table.results td::before { content: attr(data-label); color: #444; }
}
@media print { body { padding: 0; max-width: none; } }
)css";

constexpr std::string_view kCardStyle =
    "body { font-family: sans-serif; font-size: 9pt; color: #000; background: #fff; max-width: 182mm; } "
    "table { border-collapse: collapse; } td { padding: 2px 5px; border-bottom: 1px solid #bbb; "
    "vertical-align: top; } "
    ".small { font-size: 8pt; } p { margin: 1mm 0; }";

/// Writes the page from top to bottom.
class Page {
 public:
  Page(const Certificate& certificate, const Voice& voice) : certificate_(certificate), voice_(voice) {}

  [[nodiscard]] std::string make();

 private:
  [[nodiscard]] std::string say(const Message& message) const { return escaped(voice_.say(message)); }
  [[nodiscard]] std::string say(const char* code) const { return say(Message{code, {}}); }
  [[nodiscard]] std::string colon() const { return voice_.language == "fr" ? "\u00a0: " : ": "; }
  [[nodiscard]] std::string given(const std::string& text) const {
    return text.empty() ? say("certificate-not-stated") : escaped(text);
  }
  [[nodiscard]] std::string time(std::int64_t utc_ms) const { return escaped(voice_.time(utc_ms)); }

  /// A number with its data; `with_doubt`: and its uncertainty in words.
  [[nodiscard]] std::string number(const std::string& name, const Figure& figure,
                                   bool with_doubt = false) const;
  /// Words of the record, which are in its own language, or typed by somebody: by their own direction.
  [[nodiscard]] static std::string asWritten(const std::string& text) {
    return "<bdi class=\"whole\">" + escaped(text) + "</bdi>";
  }
  /// Numbers and names of files read from left to right in every language. The characters U+2066 and U+2069
  /// say it to those who do not know the element. @param html escaped already
  [[nodiscard]] std::string leftToRight(const std::string& html, const std::string& attributes = "") const {
    const char* const begin = voice_.right_to_left ? "\u2066" : "";
    const char* const end = voice_.right_to_left ? "\u2069" : "";
    return fmt::format("<bdi dir=\"ltr\"{}>{}{}{}</bdi>", attributes, begin, html, end);
  }
  [[nodiscard]] std::string hash(const std::string& name) const {
    return "<span class=\"hash\">" + leftToRight(escaped(name)) + "</span>";
  }
  [[nodiscard]] std::string doubt(const Figure& figure) const;
  [[nodiscard]] std::string limit(const std::string& name, const std::optional<Figure>& figure) const;
  [[nodiscard]] std::string origin(const Figure& figure) const;
  [[nodiscard]] std::string verdict(const std::optional<Verdict>& verdict) const;

  void paragraph(const std::string& html, const char* css = "") {
    html_ += fmt::format("<p{}>{}</p>\n", *css == 0 ? "" : fmt::format(" class=\"{}\"", css), html);
  }
  void heading(const std::string& html) { html_ += "<h2>" + html + "</h2>\n"; }
  void beginFacts() {
    html_ += "<table class=\"facts\" width=\"100%\" cellspacing=\"0\" cellpadding=\"3\">\n";
  }
  void fact(const std::string& label, const std::string& value) {
    html_ +=
        fmt::format("<tr><th align=\"{}\" width=\"30%\">{}</th><td>{}</td></tr>\n", start(), label, value);
  }
  void beginResults(const std::vector<const char*>& labels);
  void cell(const std::string& html) {
    html_ += fmt::format("<td data-label=\"{}{}\">{}</td>", labels_[column_++], colon(), html);
  }
  void beginRow() {
    html_ += "<tr>";
    column_ = 0;
  }
  void endTable() { html_ += "</table>\n"; }
  [[nodiscard]] const char* start() const { return voice_.right_to_left ? "right" : "left"; }

  void head();
  void summary();
  void facts();
  void proof(std::size_t place);
  void correction();
  void stops();
  void conditions();
  void statements();
  void readings();
  void signatures();

  const Certificate& certificate_;
  const Voice& voice_;
  std::string html_{};
  std::vector<std::string> labels_{};
  std::size_t column_ = 0;
};

std::string rounded(const Amount& amount) { return fmt::format("{:.{}f}", amount.value, amount.decimals); }

std::string Page::number(const std::string& name, const Figure& figure, bool with_doubt) const {
  std::string data = fmt::format("data-figure=\"{}\" data-value=\"{}\" data-unit=\"{}\"", escaped(name),
                                 rounded(figure.amount), escaped(figure.amount.ucum));
  if (figure.expanded_uncertainty) {
    data += fmt::format(" data-u=\"{}\" data-k=\"{:.2f}\"",
                        rounded({*figure.expanded_uncertainty, figure.amount.ucum, figure.amount.decimals}),
                        figure.coverage_factor);
  }
  if (!figure.readings.empty()) data += fmt::format(" data-readings=\"{}\"", fmt::join(figure.readings, " "));
  if (!figure.entry.empty()) data += fmt::format(" data-entry=\"{}\"", escaped(figure.entry));
  const std::string shown = leftToRight(escaped(voice_.show(figure.amount)), " " + data);
  return with_doubt ? leftToRight(shown + doubt(figure), " class=\"whole\"") : shown;
}

std::string Page::doubt(const Figure& figure) const {
  if (!figure.expanded_uncertainty) return "";
  const Amount half{*figure.expanded_uncertainty, figure.amount.ucum, figure.amount.decimals};
  return " " + leftToRight("± " + escaped(voice_.show(half))) + " <span class=\"small\">" +
         leftToRight(fmt::format("(k = {})", escaped(voice_.show({figure.coverage_factor, "1", 2})))) +
         "</span>";
}

std::string Page::limit(const std::string& name, const std::optional<Figure>& figure) const {
  return figure ? leftToRight("± " + number(name, *figure)) : "–";
}

/// "1, 3–7, 9"
std::string runsOf(std::vector<std::size_t> numbers) {
  std::ranges::sort(numbers);
  const auto same = std::ranges::unique(numbers);
  numbers.erase(same.begin(), same.end());
  std::string text;
  for (std::size_t begin = 0; begin < numbers.size();) {
    std::size_t end = begin;
    while (end + 1 < numbers.size() && numbers[end + 1] == numbers[end] + 1) ++end;
    text += fmt::format("{}{}", text.empty() ? "" : ", ", numbers[begin]);
    if (end > begin) text += fmt::format("{}{}", end == begin + 1 ? ", " : "–", numbers[end]);
    begin = end + 1;
  }
  return text;
}

std::string Page::origin(const Figure& figure) const {
  if (!figure.readings.empty()) return leftToRight(runsOf(figure.readings));
  return figure.entry.empty() ? "" : say({"certificate-entry", {{"entry", figure.entry}}});
}

std::string Page::verdict(const std::optional<Verdict>& verdict) const {
  if (!verdict) return "";
  const char* const sign = *verdict == Verdict::Holds ? "✓" : *verdict == Verdict::DoesNotHold ? "✖" : "?";
  const std::string name(nameIn(proof::kVerdictNames, *verdict));
  return fmt::format("<span class=\"verdict {}\">{} {}</span>", name, sign,
                     say(Message{proof::codeOf(*verdict), {}}));
}

void Page::beginResults(const std::vector<const char*>& labels) {
  labels_.clear();
  html_ += "<table class=\"results\" width=\"100%\" cellspacing=\"0\" cellpadding=\"3\"><thead><tr>";
  for (const char* const label : labels) {
    labels_.push_back(say(label));
    html_ += fmt::format("<th align=\"{}\">{}</th>", start(), labels_.back());
  }
  html_ += "</tr></thead>\n";
}

void Page::head() {
  html_ +=
      fmt::format("<table class=\"head\" width=\"100%\"><tr><td><h1>{}</h1>\n", say("certificate-title"));
  paragraph(say("certificate-subtitle"));
  paragraph(say("document-unit") + colon() + "<b>" + escaped(certificate_.unit) + "</b>");
  if (!certificate_.attachment.empty()) {
    paragraph(say("document-attachment") + colon() + "<b>" + escaped(certificate_.attachment) + "</b>");
  }
  paragraph(say("certificate-number") + colon() + hash(certificate_.record), "small");
  html_ += "</td><td class=\"code\" width=\"130\">";
  if (!certificate_.qr_text.empty()) {
    html_ += fmt::format("<img width=\"121\" height=\"121\" alt=\"{}\" src=\"{}\">",
                         escaped(certificate_.qr_text), imageAddress(qrDrawing(certificate_.qr_text)));
  }
  html_ += "</td></tr></table>\n";
  for (const Message& stamp : certificate_.stamps) paragraph("⚠ " + say(stamp), "stamp");
  if (!certificate_.do_not_use.empty()) paragraph("⚠ " + escaped(certificate_.do_not_use), "stamp");
}

void Page::summary() {
  for (const Proof& proof : certificate_.proofs) {
    const bool found = proof.when == When::AsFound;
    paragraph(fmt::format("<b>{}</b>: {}", say(found ? "document-as-found" : "certificate-as-left"),
                          proof.verdict ? verdict(proof.verdict) : say("certificate-not-judged")));
  }
  if (certificate_.proofs.empty()) paragraph(say("certificate-no-proof"));
  paragraph("<b>" + say("document-not-for-trade") + "</b>");
  const std::string plot = errorPlot(certificate_, voice_);
  if (plot.empty()) return;
  html_ += fmt::format("<p><img class=\"plot\" width=\"620\" alt=\"{}\" src=\"{}\"></p>\n",
                       say("certificate-plot"), imageAddress(plot));
}

void Page::facts() {
  const Certificate& c = certificate_;
  heading(say("document-what"));
  beginFacts();
  fact(say("certificate-laboratory"), given(c.particulars.laboratory));
  fact(say("certificate-customer"), given(c.particulars.customer));
  fact(say("certificate-place"), given(c.particulars.place));
  fact(say("certificate-item"),
       say({"certificate-item-is",
            {{"unit", c.unit}, {"attachment", c.attachment.empty() ? "–" : c.attachment}}}));
  if (c.rated_payload) fact(say("certificate-rated-payload"), number("rated-payload", *c.rated_payload));
  fact(say("document-procedure"), escaped(c.procedure) + ", " +
                                      say({"document-version", {{"version", std::to_string(c.version)}}}) +
                                      "<br><span class=\"small\">SHA-256</span> " + hash(c.procedure_hash));
  fact(say("document-begun"), time(c.begun_utc_ms));
  fact(say("document-ended"), time(c.ended_utc_ms));
  fact(say("certificate-issued"), time(c.issued_utc_ms));
  endTable();
}

void Page::proof(std::size_t place) {
  const Proof& proof = certificate_.proofs[place];
  const bool found = proof.when == When::AsFound;
  const std::string when = nameOfProof(certificate_, place) + "/";
  heading(say("document-proof") + colon() + say(found ? "document-as-found" : "certificate-as-left"));
  beginResults({"certificate-against", "certificate-reference", "certificate-indication", "document-error",
                "certificate-repeatability", "certificate-limit", "certificate-verdict", "certificate-from"});
  for (std::size_t index = 0; index < proof.results.size(); ++index) {
    const Result& result = proof.results[index];
    const std::string at = when + std::to_string(index + 1) + "/";
    beginRow();
    cell(say(result.what) +
         (result.pace.empty()
              ? ""
              : "<br><span class=\"small\">" + say({"certificate-pace-" + result.pace, {}}) + "</span>"));
    cell(number(at + "reference", result.reference, true));
    cell(number(at + "indication", result.indication));
    cell("<b>" + number(at + "error", result.error, true) + "</b>");
    cell(result.repeatability ? number(at + "repeatability", *result.repeatability) : "–");
    cell(limit(at + "limit", result.limit));
    cell(verdict(result.verdict) +
         (result.probability ? "<br><span class=\"small\">" + say("certificate-probability") + colon() +
                                   number(at + "probability", *result.probability) + "</span>"
                             : ""));
    Figure all = result.reference;
    all.readings.insert(all.readings.end(), result.error.readings.begin(), result.error.readings.end());
    cell("<span class=\"small\">" + origin(all) + "</span>");
    html_ += "</tr>\n";
  }
  endTable();
  if (!proof.others.empty()) {
    beginFacts();
    for (const Characteristic& other : proof.others) {
      fact(say(other.name), number(when + other.name.code, other.figure, true) + " <span class=\"small\">" +
                                say("certificate-from") + colon() + origin(other.figure) + "</span>");
    }
    endTable();
  }
  if (!proof.tolerance.code.empty()) {
    paragraph(say({"certificate-tolerance", {{"tolerance", voice_.say(proof.tolerance)}}}), "small");
  }
  if (!proof.rule.code.empty())
    paragraph(say({"certificate-rule", {{"rule", voice_.say(proof.rule)}}}), "small");
  for (const Message& remark : proof.remarks) paragraph("⚠ " + say(remark), "small");
}

void Page::correction() {
  const Correction& c = certificate_.correction;
  if (!c.span_factor && !c.zero && c.reason.code.empty()) return;
  heading(say("certificate-to-enter"));
  paragraph(say("certificate-to-enter-how"), "lead");
  if (!c.reason.code.empty()) paragraph(say(c.reason));
  if (!c.span_factor && !c.zero) return;
  beginFacts();
  const auto row = [&](const char* label, const char* name, const std::optional<Figure>& figure) {
    if (!figure) return;
    fact(say(label), number(name, *figure, true) + " <span class=\"small\">" + say("certificate-from") +
                         colon() + origin(*figure) + "</span>");
  };
  row("certificate-zero-correction", "zero-correction", c.zero);
  row("certificate-span-factor", "span-factor", c.span_factor);
  endTable();
}

void Page::stops() {
  if (certificate_.stops.empty()) return;
  heading(say("document-stops"));
  beginResults({"certificate-stop", "certificate-wanted", "certificate-reached", "certificate-scatter",
                "certificate-limit", "certificate-verdict", "certificate-from"});
  for (std::size_t index = 0; index < certificate_.stops.size(); ++index) {
    const Stop& stop = certificate_.stops[index];
    const std::string at = "stop/" + std::to_string(index + 1) + "/";
    beginRow();
    cell(escaped(stop.name));
    cell(number(at + "wanted", stop.wanted));
    cell(number(at + "reached", stop.reached, true));
    cell(stop.scatter ? number(at + "scatter", *stop.scatter) : "–");
    cell(limit(at + "limit", stop.limit));
    cell(verdict(stop.verdict));
    cell("<span class=\"small\">" + origin(stop.reached) + "</span>");
    html_ += "</tr>\n";
  }
  endTable();
}

void Page::conditions() {
  if (certificate_.conditions.empty()) return;
  heading(say("document-conditions"));
  beginFacts();
  for (std::size_t index = 0; index < certificate_.conditions.size(); ++index) {
    const Condition& condition = certificate_.conditions[index];
    fact(escaped(condition.name), number("condition/" + std::to_string(index + 1), condition.figure) +
                                      " <span class=\"small\">" + say("certificate-from") + colon() +
                                      origin(condition.figure) + "</span>");
  }
  endTable();
  paragraph(say("certificate-conditions-note"), "small");
}

void Page::statements() {
  heading(say("certificate-statements"));
  paragraph(say(aboutUncertainty()));
  for (const char* const code : kStatements) paragraph(say(code));
  if (!certificate_.particulars.references.empty()) {
    paragraph(say("certificate-references") + colon() + escaped(certificate_.particulars.references));
  }
  const auto list = [&](const char* title, const std::vector<std::string>& texts) {
    if (texts.empty()) return;
    heading(say(title));
    for (const std::string& text : texts) paragraph(asWritten(text));
  };
  list("certificate-remarks", certificate_.remarks);
  list("document-corrections", certificate_.corrections);
}

void Page::signatures() {
  heading(say("document-signatures"));
  beginFacts();
  for (const Signatory& each : certificate_.signatories) {
    fact(say(each.sealed ? "document-sealed-by" : "document-signed-by"),
         fmt::format("{}, {}<br><span class=\"small\">{}</span> {}", escaped(each.name), escaped(each.role),
                     time(each.utc_ms), hash(each.key)));
  }
  fact(say("document-record") + " (SHA-256)", hash(certificate_.record));
  fact(say("document-engine"), escaped(certificate_.program));
  fact(say("certificate-issued-with"), escaped(certificate_.issued_by));
  endTable();
  paragraph(say("certificate-check"), "small");
}

void Page::readings() {
  if (certificate_.readings.empty()) return;
  heading(say("document-readings"));
  paragraph(say("certificate-readings-note"), "small");
  beginResults({"certificate-reading-number", "certificate-reading-what", "certificate-reading-value",
                "certificate-reading-how", "certificate-reading-when"});
  for (const Reading& reading : certificate_.readings) {
    beginRow();
    cell(fmt::format("<a id=\"reading-{0}\">{0}</a>", reading.number));
    cell(asWritten(reading.what));
    cell(leftToRight(
             escaped(voice_.asTyped(reading.typed)),
             fmt::format(" data-reading=\"{}\" data-typed=\"{}\"", reading.number, escaped(reading.typed))) +
         (reading.counts ? "" : " <span class=\"small\">" + say("document-done-again") + "</span>"));
    cell(reading.how.empty() ? "" : say({"how-" + reading.how, {}}));
    cell("<bdi>" + time(reading.utc_ms) + "</bdi>");
    html_ += "</tr>\n";
  }
  endTable();
}

/// Each sheet names the certificate and its place in it, so that none can be passed on as a whole (ISO/IEC
/// 17025:2017, 7.8.2.1 d, from memory).
std::string pageStyle(const std::string& record) {
  const bool plain = std::ranges::all_of(
      record, [](char byte) { return (byte >= '0' && byte <= '9') || (byte >= 'a' && byte <= 'f'); });
  return fmt::format(
      "\n@page {{ margin: 14mm; @bottom-left {{ content: \"{}\"; font: 7pt monospace; }} @bottom-right {{ "
      "content: "
      "counter(page) \" / \" counter(pages); font: 8pt sans-serif; }} }}\n",
      plain ? record : "");
}

std::string Page::make() {
  const char* const direction = voice_.right_to_left ? "rtl" : "ltr";
  html_ = fmt::format(
      "<!DOCTYPE html>\n<html lang=\"{0}\" dir=\"{1}\">\n<head><meta charset=\"utf-8\"><meta "
      "name=\"viewport\" "
      "content=\"width=device-width, initial-scale=1\">\n<title>{2} {3} "
      "{4}</title>\n<style>{5}</style>\n<style>{6}{7}</style></head>\n<body "
      "dir=\"{1}\">\n",
      escaped(voice_.language), direction, say("certificate-title"), escaped(certificate_.unit),
      escaped(certificate_.record.substr(0, 12)), kStyle, pageStyle(certificate_.record), kBrowserStyle);
  head();
  summary();
  facts();
  for (std::size_t place = 0; place < certificate_.proofs.size(); ++place) proof(place);
  correction();
  stops();
  conditions();
  statements();
  signatures();
  readings();
  html_ += "<p class=\"end\">" + say("certificate-end") + "</p>\n</body>\n</html>\n";
  return std::move(html_);
}

}  // namespace

std::string renderCard(const Card& card, const Voice& voice) {
  std::string html = fmt::format(
      "<!DOCTYPE html>\n<html lang=\"{0}\" dir=\"{1}\">\n<head><meta charset=\"utf-8\"><meta "
      "name=\"viewport\" "
      "content=\"width=device-width, "
      "initial-scale=1\">\n<title>{2}</title>\n<style>{3}</style></head>\n<body "
      "dir=\"{1}\">\n<p style=\"{4}\"><b>{5}{2}</b></p>\n<table width=\"100%\" cellspacing=\"0\" "
      "cellpadding=\"3\">\n",
      escaped(voice.language), voice.right_to_left ? "rtl" : "ltr", escaped(card.headline), kCardStyle,
      card.warns ? "font-size:40pt" : "font-size:14pt", card.warns ? "✖ " : "");
  for (const Card::Row& row : card.rows) {
    html += fmt::format("<tr><td width=\"45%\">{}</td><td><b>{}</b>{}</td></tr>\n", escaped(row.label),
                        escaped(row.value),
                        row.note.empty() ? "" : "<br><span class=\"small\">" + escaped(row.note) + "</span>");
  }
  html += "</table>\n";
  if (!card.qr_text.empty()) {
    html += fmt::format("<p><img width=\"{0}\" height=\"{0}\" alt=\"{1}\" src=\"{2}\"></p>\n",
                        card.warns ? 200 : 130, escaped(card.qr_text), imageAddress(qrDrawing(card.qr_text)));
  }
  return html + "</body>\n</html>\n";
}

std::string renderHtml(const Certificate& certificate, const Voice& voice) {
  return Page(certificate, voice).make();
}

}  // namespace hingepin::certificate
