// SPDX-License-Identifier: Apache-2.0
#include "engine/session/compare.h"

#include <algorithm>
#include <cmath>

#include "engine/procedures/procedure.h"
#include "engine/session/catalogue.h"
#include "engine/session/job_record.h"
#include "engine/session/told.h"
#include "engine/units/ucum.h"

namespace hingepin::session {
namespace {

struct Said {
  std::string step;
  std::string kind;
  std::string text;  ///< value or answer
  std::string words;
  std::string hashes;
};

/// The last try of each step that counts, in the order of the steps' first.
std::vector<Said> saidIn(const JsonValue& content) {
  std::vector<Said> said;
  const JsonValue* const tries = memberAt(content, {"tries"});
  if (tries == nullptr || tries->kind != JsonKind::Array) return said;
  for (const JsonValue& each : tries->items) {
    const JsonValue* const counts = memberAt(each, {"counts"});
    const std::string type = textAt(each, {"type"});
    if (counts == nullptr || !counts->boolean || (type != "reading" && type != "answer")) continue;
    Said one{.step = textAt(each, {"about"}),
             .kind = textAt(each, {"kind"}),
             .text = "",
             .words = "",
             .hashes = ""};
    one.text = type == "reading" ? textAt(each, {"value"}) : textAt(each, {"answer"});
    if (type == "answer") one.words = textAt(each, {"value"});
    if (const JsonValue* const hashes = memberAt(each, {"hashes"})) {
      for (const JsonValue& hash : hashes->items) one.hashes += (one.hashes.empty() ? "" : " ") + hash.text;
    }
    const auto known = std::ranges::find(said, one.step, &Said::step);
    if (known == said.end()) {
      said.push_back(std::move(one));
    } else {
      *known = std::move(one);
    }
  }
  return said;
}

/// What steps say that has anything to do with the machine's condition, or with who stands by it.
bool isAboutCondition(const Said& said) {
  return said.kind == "reading" || said.kind == "confirm" || said.kind == "monitor" || said.kind == "note" ||
         said.kind == "evidence" || said.kind == "sign";
}

void compareStep(const Said& before, const Said& after, std::vector<Difference>& differences) {
  const auto differs = [&](DifferenceKind kind, const std::string& was, const std::string& is) {
    differences.push_back({.step = before.step, .kind = kind, .before = was, .after = is});
  };
  if (before.kind == "reading") {
    const Expected<ReadQuantity> was = readAnyQuantity(before.text);
    const Expected<ReadQuantity> is = readAnyQuantity(after.text);
    if (!was || !is || was->unit.dimension != is->unit.dimension) {
      if (before.text != after.text) differs(DifferenceKind::Value, before.text, after.text);
      return;
    }
    if (was->value_si == is->value_si) return;
    differs(DifferenceKind::Value, before.text, after.text);
    const double change = (is->value_si - was->value_si) * was->unit.divisor / was->unit.factor;
    // Differences carry the digits of what was typed; a rounding of the subtraction is none of them.
    differences.back().change = writeQuantity(std::round(change * 1e6) / 1e6, "1");
    const std::string& change_text = differences.back().change;
    differences.back().change =
        change_text.substr(0, change_text.find(' ')) + " " + std::string(was->unit.ucum);
    return;
  }
  if (before.kind == "evidence") {
    if (!before.hashes.empty() && !after.hashes.empty())
      differs(DifferenceKind::Photo, before.hashes, after.hashes);
    if (before.hashes.empty() != after.hashes.empty())
      differs(DifferenceKind::Only, before.hashes, after.hashes);
    return;
  }
  if (before.text != after.text) differs(DifferenceKind::Answer, before.text, after.text);
  if (before.words != after.words) differs(DifferenceKind::Text, before.words, after.words);
}

}  // namespace

Expected<std::vector<Difference>> compareRecords(const JsonValue& before, const JsonValue& after) {
  if (textAt(before, {"unit", "id"}) != textAt(after, {"unit", "id"})) {
    return fail(ErrorKind::InvalidInput, "records-of-different-units",
                {{"before", textAt(before, {"unit", "id"})}, {"after", textAt(after, {"unit", "id"})}});
  }
  std::vector<Difference> differences;
  if (textAt(before, {"attachment", "id"}) != textAt(after, {"attachment", "id"})) {
    differences.push_back({.step = "attachment",
                           .kind = DifferenceKind::Text,
                           .before = textAt(before, {"attachment", "id"}),
                           .after = textAt(after, {"attachment", "id"})});
  }
  const std::vector<Said> was = saidIn(before);
  const std::vector<Said> is = saidIn(after);
  const auto textOf = [](const Said& said) {
    return said.text + (said.words.empty() ? "" : ": " + said.words);
  };
  for (const Said& each : was) {
    if (!isAboutCondition(each)) continue;
    const auto other = std::ranges::find(is, each.step, &Said::step);
    if (other != is.end()) {
      compareStep(each, *other, differences);
    } else {
      differences.push_back({.step = each.step, .kind = DifferenceKind::Only, .before = textOf(each)});
    }
  }
  for (const Said& each : is) {
    if (!isAboutCondition(each) || std::ranges::find(was, each.step, &Said::step) != was.end()) continue;
    differences.push_back({.step = each.step, .kind = DifferenceKind::Only, .after = textOf(each)});
  }
  return differences;
}

Message messageOf(const Difference& difference) {
  // A count is said without UCUM's "1", a change with its sign.
  const auto plain = [](const std::string& text) {
    return text.ends_with(" 1") ? text.substr(0, text.size() - 2) : text;
  };
  std::string change = plain(difference.change);
  // Inside the marks that keep it in its own direction, where it has them.
  const std::size_t number = change.find_first_of("-0123456789");
  if (number != std::string::npos && change[number] != '-') change.insert(number, "+");
  const std::vector<std::pair<std::string, MessageValue>> values = {{"step", difference.step},
                                                                    {"before", plain(difference.before)},
                                                                    {"after", plain(difference.after)},
                                                                    {"change", change}};
  switch (difference.kind) {
    case DifferenceKind::Value:
      return {difference.change.empty() ? "difference-answer" : "difference-value", values};
    case DifferenceKind::Answer:
      return {"difference-answer", values};
    case DifferenceKind::Text:
      return {"difference-words", values};
    case DifferenceKind::Photo:
      return {"difference-photo", values};
    case DifferenceKind::Only:
      return {difference.after.empty() ? "difference-only-before" : "difference-only-after", values};
  }
  return {};
}

Expected<std::vector<std::string>> differencesFor(const store::Store& store, std::string_view before,
                                                  std::string_view after, const Reader& reader) {
  ProcedureShelf shelf(store, reader);
  const Expected<Told> was = tell(store, before, shelf);
  if (!was) return std::unexpected(was.error());
  const Expected<Told> is = tell(store, after, shelf);
  if (!is) return std::unexpected(is.error());
  const auto differences = compareRecords(was->record.content, is->record.content);
  if (!differences) return std::unexpected(differences.error());
  std::vector<std::string> sentences;
  for (Difference each : *differences) {
    const Told& told = procedures::findStep(was->text->procedure, each.step) != nullptr ? *was : *is;
    const procedures::Step* const step = procedures::findStep(told.text->procedure, each.step);
    const auto words = [&](std::string& said) {
      constexpr std::size_t kShortName = 8;
      if (each.kind == DifferenceKind::Value) said = asTyped(said, localeOf(reader.language));
      if (each.kind == DifferenceKind::Photo) said = said.substr(0, kShortName);
      if (step == nullptr || (each.kind != DifferenceKind::Answer && each.kind != DifferenceKind::Only))
        return;
      const std::string code = said.substr(0, said.find(':'));
      const auto answer = std::ranges::find(step->answers, code, &procedures::Answer::id);
      if (answer != step->answers.end()) {
        said.replace(0, code.size(), wordsOf(*told.text, answer->text, reader));
      } else if (engineCatalogue(reader.language).contains("answer-" + code)) {
        said.replace(0, code.size(), session::say({"answer-" + code, {}}, reader));
      }
    };
    words(each.before);
    words(each.after);
    if (!each.change.empty()) each.change = asTyped(each.change, localeOf(reader.language));
    if (step != nullptr) {
      each.step = stepText(*told.text, told.state, each.step, reader);
      if (each.step.ends_with('.')) each.step.pop_back();
    }
    sentences.push_back(say(messageOf(each), reader));
  }
  return sentences;
}

}  // namespace hingepin::session
