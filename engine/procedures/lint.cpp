// SPDX-License-Identifier: Apache-2.0
#include "engine/procedures/lint.h"
#include "engine/base/contains.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <initializer_list>
#include <iterator>
#include <map>
#include <optional>
#include <span>
#include <string_view>
#include <utility>

namespace hingepin::procedures {
namespace {

using Values = std::vector<std::pair<std::string, MessageValue>>;
using Hazards = std::set<Hazard>;

constexpr std::array kNearHazards = {Hazard::RaisedBoom, Hazard::MovingLinkage, Hazard::StoredPressure};

bool goesBack(const OnFailure& failure) {
  return failure.action == FailureAction::GoBack || failure.action == FailureAction::More;
}

std::string at(std::string_view pointer, std::string_view key) {
  return std::string(pointer) + "/" + std::string(key);
}
std::string at(std::string_view pointer, std::string_view key, std::size_t index) {
  return at(at(pointer, key), std::to_string(index));
}

struct Rule {
  std::string_view problem;
  std::string_view mend;
};

constexpr std::array kMends = {Rule{"id-twice", "mend-give-another-id"},
                               Rule{"text-code-unknown", "mend-write-the-words"},
                               Rule{"role-unknown", "mend-correct-the-name"},
                               Rule{"quantity-unknown", "mend-correct-the-name"},
                               Rule{"step-unknown", "mend-correct-the-name"},
                               Rule{"caution-unknown", "mend-correct-the-name"},
                               Rule{"entry-unknown", "mend-correct-the-name"},
                               Rule{"variant-unknown", "mend-correct-the-name"},
                               Rule{"unit-unknown", "mend-correct-the-quantity"},
                               Rule{"unit-wrong-dimension", "mend-correct-the-quantity"},
                               Rule{"dimension-twice", "mend-keep-one-of-a-dimension"},
                               Rule{"dimensions-mixed", "mend-judge-one-dimension"},
                               Rule{"quantity-malformed", "mend-correct-the-quantity"},
                               Rule{"number-out-of-range", "mend-correct-the-quantity"},
                               Rule{"duration-not-positive", "mend-correct-the-quantity"},
                               Rule{"unit-has-offset", "mend-say-kelvin"},
                               Rule{"limits-crossed", "mend-swap-the-limits"},
                               Rule{"nothing-acceptable-is-plausible", "mend-let-limits-overlap"},
                               Rule{"too-few-values", "mend-repeat-the-reading"},
                               Rule{"nobody-may-confirm", "mend-name-who-confirms"},
                               Rule{"no-answer-passes", "mend-let-an-answer-pass"},
                               Rule{"expires-too-soon", "mend-read-after-the-holds"},
                               Rule{"no-steps", "mend-give-it-steps"},
                               Rule{"needs-itself", "mend-drop-the-prerequisite"},
                               Rule{"loop-endless", "mend-say-at-most"},
                               Rule{"failure-no-way-on", "mend-say-what-follows-failure"},
                               Rule{"go-back-forward", "mend-name-an-earlier-step"},
                               Rule{"go-back-into-repeat", "mend-go-back-to-the-first-of-the-repeat"},
                               Rule{"movement-without-press", "mend-ask-for-the-press"},
                               Rule{"press-without-movement", "mend-drop-the-press"},
                               Rule{"hazard-without-caution", "mend-put-a-caution-before"},
                               Rule{"near-open-hazard", "mend-close-the-hazard-before"},
                               Rule{"hazard-left-open", "mend-close-the-hazard-after"},
                               Rule{"make-safe-leaves-hazard", "mend-close-the-hazard-when-making-safe"},
                               Rule{"safety-not-waived", "mend-stop-or-repeat"},
                               Rule{"reading-unused", "mend-use-or-drop-it"},
                               Rule{"entry-unused", "mend-use-or-drop-it"},
                               Rule{"caution-unused", "mend-use-or-drop-it"},
                               Rule{"check-without-reading", "mend-read-before-the-check"},
                               Rule{"reference-not-independent", "mend-read-an-independent-instrument"},
                               Rule{"read-again-impossible", "mend-go-back-instead"},
                               Rule{"reading-may-be-missing", "mend-need-the-reading"},
                               Rule{"survey-without-pose", "mend-put-a-pose-before"},
                               Rule{"make-safe-kind", "mend-keep-making-safe-plain"}};

std::string mendOf(std::string_view problem) {
  const auto* const rule = std::ranges::find(kMends, problem, &Rule::problem);
  return rule == kMends.end() ? std::string() : std::string(rule->mend);
}

/// What is known of a limit before a job starts: an entry without a default has no value yet.
struct KnownLimit {
  std::string text;
  Unit unit;
  std::optional<double> value_si;
};

/// A way through the procedure: indices into its steps, in order.
using Way = std::vector<std::size_t>;

struct RepeatedSteps {
  std::size_t first;
  std::size_t last;
  int times;
  [[nodiscard]] bool holds(std::size_t step) const { return first <= step && step <= last; }
};

class Linter {
 public:
  Linter(const Procedure& procedure, const TextCodes* text_codes)
      : procedure_(procedure), text_codes_(text_codes) {}

  std::vector<Finding> run();

 private:
  void add(std::string pointer, const std::string& code, Values values = {});
  void needText(const std::string& code, std::string pointer);
  template <class List>
  void needOnce(const List& list, std::string_view key);
  void needRoles(const std::vector<std::string>& roles, const std::string& pointer);

  std::optional<KnownLimit> known(const Limit& limit, const std::string& pointer);
  std::optional<KnownLimit> knownText(const std::string& text, const std::string& pointer);
  std::optional<Dimension> known(std::string_view ucum, const std::string& pointer);
  void unknownUnit(std::string_view ucum, const std::string& pointer);
  void wrongDimension(const std::string& text, const Unit& unit, Dimension expected,
                      const std::string& pointer);
  [[nodiscard]] std::optional<double> valueOf(const std::optional<Limit>& limit) const;
  void needDimension(const std::optional<Limit>& limit, std::span<const Dimension> allowed, bool difference,
                     const std::string& pointer);
  void needDuration(const std::string& text, const std::string& pointer);
  void needOrder(const Limits& limits, const std::string& pointer);
  [[nodiscard]] std::optional<Dimension> dimensionOf(const Step& step) const;

  void header();
  void step(const Step& step);
  void plausible(const Limits& limits, const std::vector<Dimension>& allowed, const std::string& pointer);
  void reading(const Step& reading);
  void checkLimits(const Step& step);
  void failure(const Step& step, std::size_t index);
  void wayOn(const Step& step, std::size_t index, const OnFailure& failure, const std::string& said,
             const std::string& pointer);
  void target(const Step& step, std::size_t index, const std::string& to, const std::string& pointer);
  void nearOpen(const Step& step, const Hazards& open);
  void makeSafe();

  void variant(const std::string& id);
  void way(const std::string& variant, const Way& way);
  void cautionsOnWay(const Way& way);
  void hazardsOnWay(const Way& way);
  void checkOnWay(const Way& way, std::size_t index);
  void limitsCanBeMet(const Step& step, const Step& reading);
  void valuesSuffice(const Step& step, int most_values);
  [[nodiscard]] bool hasPoseBefore(const Way& way, std::size_t reading) const;
  void readAgainOnTheSpot(const Step& reading, std::size_t index, const Way& way, const std::string& pointer);
  void usesOnWay(const Way& way);
  [[nodiscard]] bool agesTooMuch(const Way& way, std::size_t reading, std::size_t check,
                                 const std::string& limit) const;

  [[nodiscard]] std::vector<RepeatedSteps> rangesOn(const Way& way) const;
  [[nodiscard]] int mostValues(const Way& way, std::size_t reading) const;
  [[nodiscard]] std::optional<std::size_t> indexOf(std::string_view id) const;

  const Procedure& procedure_;
  const TextCodes* text_codes_;
  std::vector<Finding> findings_;
  std::set<std::pair<std::string, std::string>> said_;
  std::set<std::string, std::less<>> used_entries_;
};

void Linter::add(std::string pointer, const std::string& code, Values values) {
  if (!said_.emplace(pointer, code).second) return;  // once, not once a variant
  findings_.push_back({std::move(pointer), {code, values}, {mendOf(code), values}});
}

void Linter::needText(const std::string& code, std::string pointer) {
  if (text_codes_ == nullptr || code.empty() || text_codes_->contains(code)) return;
  add(std::move(pointer), "text-code-unknown", {{"code", code}});
}

template <class List>
void Linter::needOnce(const List& list, std::string_view key) {
  std::set<std::string, std::less<>> seen;
  for (std::size_t index = 0; index < list.size(); ++index) {
    if (!seen.insert(list[index].id).second)
      add(at(at("", key, index), "id"), "id-twice", {{"id", list[index].id}});
  }
}

void Linter::needRoles(const std::vector<std::string>& roles, const std::string& pointer) {
  for (std::size_t index = 0; index < roles.size(); ++index) {
    if (!isRole(roles[index])) {
      add(at(pointer, std::to_string(index)), "role-unknown", {{"role", roles[index]}});
    }
  }
}

std::optional<std::size_t> Linter::indexOf(std::string_view id) const {
  const auto found = std::ranges::find(procedure_.steps, id, &Step::id);
  if (found == procedure_.steps.end()) return std::nullopt;
  return static_cast<std::size_t>(found - procedure_.steps.begin());
}

std::optional<Dimension> Linter::known(std::string_view ucum, const std::string& pointer) {
  const std::optional<Unit> unit = findUnit(ucum);
  if (unit) return unit->dimension;
  unknownUnit(ucum, pointer);
  return std::nullopt;
}

void Linter::unknownUnit(std::string_view ucum, const std::string& pointer) {
  std::string units;
  for (const Unit& unit : allUnits()) units += (units.empty() ? "" : ", ") + std::string(unit.ucum);
  add(pointer, "unit-unknown",
      {{"unit", std::string(ucum)}, {"expected", "any dimension"}, {"units", std::move(units)}});
}

void Linter::wrongDimension(const std::string& text, const Unit& unit, Dimension expected,
                            const std::string& pointer) {
  std::string units;
  for (const Unit& each : allUnits()) {
    if (each.dimension == expected) units += (units.empty() ? "" : ", ") + std::string(each.ucum);
  }
  add(pointer, "unit-wrong-dimension",
      {{"text", text},
       {"unit", std::string(unit.ucum)},
       {"dimension", std::string(nameOf(unit.dimension))},
       {"expected", std::string(nameOf(expected))},
       {"units", std::move(units)}});
}

std::optional<KnownLimit> Linter::knownText(const std::string& text, const std::string& pointer) {
  const Expected<ReadQuantity> read = readAnyQuantity(text);
  if (read) return KnownLimit{text, read->unit, read->value_si};
  if (read.error().message.code == "unit-unknown") {
    unknownUnit(std::string_view(text).substr(text.find(' ') + 1), pointer);
  } else {
    add(pointer, read.error().message.code, read.error().message.values);
  }
  return std::nullopt;
}

std::optional<KnownLimit> Linter::known(const Limit& limit, const std::string& pointer) {
  if (limit.entry.empty()) return knownText(limit.text, pointer);
  const auto entry = std::ranges::find(procedure_.entries, limit.entry, &Entry::id);
  if (entry == procedure_.entries.end()) {
    add(at(pointer, "entry"), "entry-unknown", {{"entry", limit.entry}});
    return std::nullopt;
  }
  used_entries_.insert(limit.entry);
  // What is wrong with the entry itself is said where it stands.
  if (entry->standard.empty()) {
    const std::optional<Unit> unit = findUnit(entry->unit);
    return unit ? std::optional(KnownLimit{entry->id, *unit, std::nullopt}) : std::nullopt;
  }
  const Expected<ReadQuantity> read = readAnyQuantity(entry->standard);
  return read ? std::optional(KnownLimit{entry->standard, read->unit, read->value_si}) : std::nullopt;
}

std::optional<double> Linter::valueOf(const std::optional<Limit>& limit) const {
  if (!limit) return std::nullopt;
  std::string text = limit->text;
  if (!limit->entry.empty()) {
    const auto entry = std::ranges::find(procedure_.entries, limit->entry, &Entry::id);
    if (entry == procedure_.entries.end()) return std::nullopt;
    text = entry->standard;
  }
  const Expected<ReadQuantity> read = readAnyQuantity(text);
  return read ? std::optional(read->value_si) : std::nullopt;
}

void Linter::needDimension(const std::optional<Limit>& limit, std::span<const Dimension> allowed,
                           bool difference, const std::string& pointer) {
  if (!limit) return;
  const std::optional<KnownLimit> found = known(*limit, pointer);
  if (!found || allowed.empty()) return;
  if (!contains(allowed, found->unit.dimension)) {
    wrongDimension(found->text, found->unit, allowed.front(), pointer);
  } else if (difference && found->unit.offset != 0.0) {
    // 2 degrees of difference are not 2 °C, which lie 275 K above the origin.
    add(pointer, "unit-has-offset", {{"unit", std::string(found->unit.ucum)}});
  }
}

void Linter::needDuration(const std::string& text, const std::string& pointer) {
  const std::optional<KnownLimit> found = knownText(text, pointer);
  if (!found) return;
  if (found->unit.dimension != Dimension::Time) {
    wrongDimension(text, found->unit, Dimension::Time, pointer);
  } else if (!(*found->value_si > 0.0)) {
    add(pointer, "duration-not-positive", {{"text", text}});
  }
}

void Linter::needOrder(const Limits& limits, const std::string& pointer) {
  const std::optional<double> low = valueOf(limits.low);
  const std::optional<double> high = valueOf(limits.high);
  if (low && high && *low > *high) add(pointer, "limits-crossed");
}

std::optional<Dimension> Linter::dimensionOf(const Step& step) const {
  const std::optional<Unit> unit = findUnit(step.unit);
  return unit ? std::optional(unit->dimension) : std::nullopt;
}

void Linter::header() {
  needText(procedure_.title, "/title");
  needText(procedure_.comes_first, "/comes_first");
  needText(procedure_.tag, "/tag");
  needRoles(procedure_.run_roles, "/roles/run");
  needRoles(procedure_.confirm_roles, "/roles/confirm");
  needOnce(procedure_.variants, "variants");
  needOnce(procedure_.entries, "entries");
  needOnce(procedure_.cautions, "cautions");
  needOnce(procedure_.steps, "steps");
  needOnce(procedure_.make_safe, "make_safe");
  for (std::size_t index = 0; index < procedure_.make_safe.size(); ++index) {
    if (indexOf(procedure_.make_safe[index].id)) {
      add(at(at("", "make_safe", index), "id"), "id-twice", {{"id", procedure_.make_safe[index].id}});
    }
  }
  for (std::size_t index = 0; index < procedure_.variants.size(); ++index) {
    needText(procedure_.variants[index].text, at(at("", "variants", index), "text"));
  }
  for (std::size_t index = 0; index < procedure_.tools.size(); ++index) {
    needText(procedure_.tools[index], at("", "tools", index));
  }
  for (std::size_t index = 0; index < procedure_.entries.size(); ++index) {
    const Entry& entry = procedure_.entries[index];
    const std::string pointer = at("", "entries", index);
    if (entry.standard.empty()) {
      known(std::string_view(entry.unit), at(pointer, "unit"));
    } else {
      knownText(entry.standard, at(pointer, "default"));
    }
  }
  for (std::size_t index = 0; index < procedure_.prerequisites.size(); ++index) {
    const std::string pointer = at("", "prerequisites", index);
    needDuration(procedure_.prerequisites[index].not_older_than, at(pointer, "not_older_than"));
    if (procedure_.prerequisites[index].procedure == procedure_.id) {
      add(at(pointer, "procedure"), "needs-itself", {{"procedure", procedure_.id}});
    }
  }
  for (std::size_t index = 0; index < procedure_.cautions.size(); ++index) {
    const Caution& caution = procedure_.cautions[index];
    const std::string pointer = at("", "cautions", index);
    needText(caution.hazard, at(pointer, "hazard"));
    needText(caution.consequence, at(pointer, "consequence"));
    needText(caution.avoidance, at(pointer, "avoidance"));
    const auto shows = [&](const Step& step) { return step.caution == caution.id; };
    if (!std::ranges::any_of(procedure_.steps, shows) && !std::ranges::any_of(procedure_.make_safe, shows)) {
      add(pointer, "caution-unused", {{"caution", caution.id}});
    }
  }
  if (procedure_.on_failure) needText(procedure_.on_failure->mark, "/on_failure/mark");
}

void Linter::step(const Step& step) {
  needText(step.text, at(step.pointer, "text"));
  needText(step.detail, at(step.pointer, "detail"));
  needText(step.zone_clear, at(step.pointer, "zone_clear"));
  needRoles(step.roles, at(step.pointer, "roles"));
  if (step.on_failure) needText(step.on_failure->mark, at(step.pointer, "on_failure/mark"));
  if (step.undecided) needText(step.undecided->mark, at(step.pointer, "undecided/mark"));
  std::set<std::string, std::less<>> answers;
  for (std::size_t index = 0; index < step.answers.size(); ++index) {
    const std::string pointer = at(step.pointer, "answers", index);
    needText(step.answers[index].text, at(pointer, "text"));
    if (!answers.insert(step.answers[index].id).second) {
      add(at(pointer, "id"), "id-twice", {{"id", step.answers[index].id}});
    }
  }
  for (std::size_t index = 0; index < step.only.size(); ++index) {
    if (std::ranges::find(procedure_.variants, step.only[index], &Variant::id) == procedure_.variants.end()) {
      add(at(step.pointer, "only", index), "variant-unknown", {{"variant", step.only[index]}});
    }
  }
  if (step.moves && step.zone_clear.empty()) add(step.pointer, "movement-without-press", {{"step", step.id}});
  if (!step.moves && !step.zone_clear.empty()) {
    add(at(step.pointer, "zone_clear"), "press-without-movement", {{"step", step.id}});
  }
  if (step.kind == StepKind::Caution && findCaution(procedure_, step.caution) == nullptr) {
    add(at(step.pointer, "caution"), "caution-unknown", {{"caution", step.caution}});
  }
  if (step.second_person && step.roles.empty() && procedure_.confirm_roles.empty()) {
    add(step.pointer, "nobody-may-confirm", {{"step", step.id}});
  }
  if (step.kind == StepKind::Monitor && std::ranges::none_of(step.answers, &Answer::passes)) {
    add(at(step.pointer, "answers"), "no-answer-passes", {{"step", step.id}});
  }
  if (!step.duration.empty()) {
    needDuration(step.duration, at(step.pointer, step.kind == StepKind::Pose ? "steady_for" : "for"));
  }
  constexpr std::array kAngle = {Dimension::Angle};
  needDimension(step.boom_angle, kAngle, false, at(step.pointer, "boom_angle"));
  if (step.kind == StepKind::Pose) needDimension(step.within, kAngle, true, at(step.pointer, "within"));
  if (step.kind == StepKind::Reading) reading(step);
  if (step.check) checkLimits(step);
}

void Linter::plausible(const Limits& limits, const std::vector<Dimension>& allowed,
                       const std::string& pointer) {
  needDimension(limits.low, allowed, false, at(pointer, "low"));
  needDimension(limits.high, allowed, false, at(pointer, "high"));
  needOrder(limits, pointer);
}

void Linter::reading(const Step& reading) {
  const std::optional<Dimension> dimension =
      known(std::string_view(reading.unit), at(reading.pointer, "unit"));
  const std::span<const Dimension> meant = dimensionsOf(reading.quantity);
  if (meant.empty()) {
    add(at(reading.pointer, "quantity"), "quantity-unknown", {{"quantity", reading.quantity}});
  } else if (dimension && !contains(meant, *dimension)) {
    wrongDimension(reading.unit, *findUnit(reading.unit), meant.front(), at(reading.pointer, "unit"));
  }
  if (reading.survey && dimension) {
    const Dimension measured = survey::isAngle(*reading.survey) ? Dimension::Angle : Dimension::Length;
    if (*dimension != measured)
      wrongDimension(reading.unit, *findUnit(reading.unit), measured, at(reading.pointer, "unit"));
  }
  std::vector<Dimension> allowed;
  if (dimension) allowed.push_back(*dimension);
  plausible(reading.plausible, allowed, at(reading.pointer, "plausible"));
  std::vector<Dimension> taken = allowed;
  for (std::size_t index = 0; index < reading.others.size(); ++index) {
    const OtherUnit& other = reading.others[index];
    const std::string pointer = at(reading.pointer, "or", index);
    const std::optional<Dimension> another = known(std::string_view(other.unit), at(pointer, "unit"));
    if (another && !meant.empty() && !contains(meant, *another)) {
      wrongDimension(other.unit, *findUnit(other.unit), meant.front(), at(pointer, "unit"));
    }
    if (another && contains(taken, *another)) {
      add(at(pointer, "unit"), "dimension-twice", {{"unit", other.unit}});
    }
    plausible(other.plausible, another ? std::vector{*another} : std::vector<Dimension>(),
              at(pointer, "plausible"));
    if (another) taken.push_back(*another);
  }
  if (reading.accept && !reading.others.empty()) {
    add(at(reading.pointer, "accept"), "dimensions-mixed", {{"step", reading.id}});
  }
  if (reading.accept) {
    const std::string accept = at(reading.pointer, "accept");
    needDimension(reading.accept->low, allowed, false, at(accept, "low"));
    needDimension(reading.accept->high, allowed, false, at(accept, "high"));
    needOrder(*reading.accept, accept);
    const std::optional<double> low = valueOf(reading.accept->low);
    const std::optional<double> high = valueOf(reading.accept->high);
    const std::optional<double> lowest = valueOf(reading.plausible.low);
    const std::optional<double> highest = valueOf(reading.plausible.high);
    if ((low && highest && *low > *highest) || (high && lowest && *high < *lowest)) {
      add(accept, "nothing-acceptable-is-plausible", {{"step", reading.id}});
    }
  }
  if (reading.expires) needDuration(reading.expires->after, at(reading.pointer, "expires/after"));
}

void Linter::checkLimits(const Step& step) {
  const Check& check = *step.check;
  const std::string pointer = at(step.pointer, "check");
  if (!check.duration.empty()) {
    needDuration(check.duration, at(pointer, check.kind == CheckKind::NotOlderThan ? "age" : "for"));
  }
  for (std::size_t index = 0; index < check.of.size(); ++index) {
    if (!indexOf(check.of[index])) {
      add(at(pointer, "of", index), "check-without-reading", {{"step", check.of[index]}});
    }
  }
  std::vector<Dimension> allowed;
  const std::optional<std::size_t> first = indexOf(check.of.front());
  if (check.kind == CheckKind::Survey) {
    constexpr std::array kLength = {Dimension::Length};
    constexpr std::array kAngle = {Dimension::Angle};
    needDimension(check.tape_u, kLength, true, at(pointer, "tape_u"));
    needDimension(check.inclinometer_u, kAngle, true, at(pointer, "inclinometer_u"));
    allowed.push_back(Dimension::Number);  // a share of a mass
  } else if (check.kind == CheckKind::FitResidual) {
    allowed.push_back(check.fit == Fit::LiftPressure ? Dimension::Pressure : Dimension::Angle);
  } else if (first) {
    if (const std::optional<Dimension> dimension = dimensionOf(procedure_.steps[*first])) {
      allowed.push_back(*dimension);
    }
  }
  needDimension(check.low, allowed, false, at(pointer, "low"));
  needDimension(check.high, allowed, false, at(pointer, "high"));
  needOrder({check.low, check.high}, pointer);
  needDimension(check.value, allowed, false, at(pointer, "value"));
  needDimension(check.target, allowed, false, at(pointer, "target"));
  needDimension(check.reference_entry, allowed, false, at(pointer, "reference"));
  // All readings that one check looks at are of one dimension.
  const bool mixed = check.kind == CheckKind::FitResidual || check.kind == CheckKind::Survey;
  for (std::size_t index = 1; index < check.of.size() && !mixed; ++index) {
    const std::optional<std::size_t> other = indexOf(check.of[index]);
    const std::optional<Dimension> dimension =
        other ? dimensionOf(procedure_.steps[*other]) : std::optional<Dimension>();
    if (check.kind == CheckKind::NotOlderThan || !dimension || allowed.empty()) continue;
    if (*dimension != allowed.front()) {
      const std::string& ucum = procedure_.steps[*other].unit;
      wrongDimension(ucum, *findUnit(ucum), allowed.front(), at(pointer, "of", index));
    }
  }
  if (check.kind == CheckKind::Plan) allowed = {Dimension::Mass};
  needDimension(check.interval, allowed, true, at(pointer, "interval"));
  needDimension(check.at_most, allowed, true, at(pointer, "at_most"));
  needDimension(check.legal_gross, allowed, true, at(pointer, "legal_gross"));
  for (const auto& [key, id] : check.scale) {
    const std::optional<std::size_t> told = indexOf(id);
    const StepKind kind = std::ranges::find(kScaleSteps, key, &ScaleStep::key)->kind;
    if (!told || procedure_.steps[*told].kind != kind)
      add(at(at(pointer, "scale"), key), "check-without-reading", {{"step", id}});
  }
  if (check.kind == CheckKind::Agreement || check.kind == CheckKind::Repeatability || isJudged(check.kind)) {
    if (!allowed.empty()) allowed.push_back(Dimension::Number);  // a share of the reference
    for (const std::string& id : knownOf(check)) {
      const std::string where = at(pointer, id == check.gross  ? "gross"
                                            : id == check.tare ? "tare"
                                                               : "reference");
      const std::optional<std::size_t> reference = indexOf(id);
      if (!reference) {
        add(where, "check-without-reading", {{"step", id}});
        continue;
      }
      const std::optional<Dimension> dimension = dimensionOf(procedure_.steps[*reference]);
      if (dimension && !allowed.empty() && *dimension != allowed.front()) {
        const std::string& ucum = procedure_.steps[*reference].unit;
        wrongDimension(ucum, *findUnit(ucum), allowed.front(), where);
      }
      if (procedure_.steps[*reference].kind == StepKind::Reading &&
          procedure_.steps[*reference].source == Source::Machine) {
        add(where, "reference-not-independent", {{"step", id}});
      }
    }
  }
  needDimension(check.within, allowed, true, at(pointer, "within"));
}

void Linter::target(const Step& step, std::size_t index, const std::string& to, const std::string& pointer) {
  const std::optional<std::size_t> goal = indexOf(to);
  if (!goal) {
    add(pointer, "step-unknown", {{"step", to}});
    return;
  }
  bool on_every_way = *goal <= index;
  for (const Variant& variant : procedure_.variants) {
    if (hasStep(variant.id, step) && !hasStep(variant.id, procedure_.steps[*goal])) on_every_way = false;
  }
  if (!on_every_way) {
    add(pointer, "go-back-forward", {{"step", to}});
    return;
  }
  // Into the middle of a repeat that has ended, its first half would be missing from the new round.
  for (std::size_t last = *goal; last < index; ++last) {
    const Step& repeated = procedure_.steps[last];
    if (!repeated.repeat) continue;
    const std::optional<std::size_t> first = indexOf(repeated.repeat->from);
    if (first && *first < *goal)
      add(pointer, "go-back-into-repeat", {{"step", to}, {"first", repeated.repeat->from}});
  }
}

void Linter::failure(const Step& step, std::size_t index) {
  if (step.undecided) {
    const std::string pointer = at(step.pointer, "undecided");
    const bool has_way = step.undecided->action == FailureAction::More ||
                         step.undecided->action == FailureAction::GoOn ||
                         step.undecided->action == FailureAction::Stop;
    if (!step.check || !isJudged(step.check->kind) || !has_way)
      add(pointer, "failure-no-way-on", {{"step", step.id}});
    wayOn(step, index, *step.undecided, pointer, pointer);
  }
  if (!canFail(step)) return;
  const std::optional<OnFailure>& failure = failureOf(procedure_, step);
  if (!failure) {
    add(step.pointer, "failure-no-way-on", {{"step", step.id}});
    return;
  }
  const std::string own = at(step.pointer, "on_failure");
  wayOn(step, index, *failure, step.on_failure ? own : "/on_failure", step.on_failure ? own : step.pointer);
}

/// @param said where the way on is written, @param pointer what is amiss where it does not fit the step
void Linter::wayOn(const Step& step, std::size_t index, const OnFailure& failure, const std::string& said,
                   const std::string& pointer) {
  const bool loops = failure.action != FailureAction::GoOn && failure.action != FailureAction::Stop;
  if (loops && !failure.at_most) add(said, "loop-endless");
  if (goesBack(failure)) target(step, index, failure.to, at(said, "to"));
  const bool is_check = step.kind == StepKind::Check;
  // What a reading or a movement failed at does not count, so there is nothing to read more of.
  const bool takes_more = step.kind == StepKind::Monitor || (is_check && isJudged(step.check->kind));
  if ((failure.action == FailureAction::ReadAgain && !is_check) ||
      (failure.action == FailureAction::Repeat && is_check) ||
      (failure.action == FailureAction::More && !takes_more)) {
    add(pointer, "failure-no-way-on", {{"step", step.id}});
  }
  const bool goes_on = failure.action == FailureAction::GoOn || failure.goes_on_then;
  const bool second_person =
      step.second_person || (step.check && step.check->kind == CheckKind::SecondPerson);
  if (goes_on && (step.moves || second_person || !step.closes.empty() || !step.opens.empty())) {
    add(pointer, "safety-not-waived", {{"step", step.id}});
  }
}

void Linter::nearOpen(const Step& step, const Hazards& open) {
  if (!step.near) return;
  for (const Hazard hazard : kNearHazards) {
    if (!open.contains(hazard) || contains(step.closes, hazard)) continue;
    // The oil is let go only once the boom lies on its support.
    if (hazard == Hazard::StoredPressure && contains(step.closes, Hazard::RaisedBoom)) continue;
    add(at(step.pointer, "near"), "near-open-hazard", {{"hazard", std::string(nameOf(hazard))}});
  }
}

void Linter::makeSafe() {
  Hazards open;
  bool moving_cautioned = false;
  for (const Step& step : procedure_.steps) {
    open.insert(step.opens.begin(), step.opens.end());
    const Caution* const caution = findCaution(procedure_, step.caution);
    if (caution != nullptr && contains(caution->covers, Hazard::MovingLinkage)) moving_cautioned = true;
  }
  bool cautioned_here = false;
  for (const Step& step : procedure_.make_safe) {
    this->step(step);
    const bool fits = step.kind == StepKind::Caution || step.kind == StepKind::Confirm ||
                      step.kind == StepKind::Pose || step.kind == StepKind::Evidence ||
                      step.kind == StepKind::Note || step.kind == StepKind::Monitor;
    if (!fits || step.second_person || step.repeat || step.on_failure || !step.opens.empty() ||
        !step.only.empty() || !step.roles.empty()) {
      add(step.pointer, "make-safe-kind", {{"step", step.id}});
    }
    const Caution* const caution = findCaution(procedure_, step.caution);
    if (caution != nullptr && contains(caution->covers, Hazard::MovingLinkage)) cautioned_here = true;
    // A step that closes a hazard is asked for only once that is open, and then its caution was passed.
    if (step.moves && !cautioned_here && !(moving_cautioned && !step.closes.empty())) {
      add(step.pointer, "hazard-without-caution", {{"hazard", std::string(nameOf(Hazard::MovingLinkage))}});
    }
    nearOpen(step, open);
    for (const Hazard hazard : step.closes) open.erase(hazard);
  }
  for (const Hazard hazard : open) {
    add("/make_safe", "make-safe-leaves-hazard", {{"hazard", std::string(nameOf(hazard))}});
  }
}

std::vector<RepeatedSteps> Linter::rangesOn(const Way& way) const {
  std::vector<RepeatedSteps> ranges;
  for (const std::size_t last : way) {
    const std::optional<Repeat>& repeat = procedure_.steps[last].repeat;
    if (!repeat) continue;
    const std::optional<std::size_t> first = indexOf(repeat->from);
    if (first && *first <= last) ranges.push_back({*first, last, repeat->times});
  }
  return ranges;
}

int Linter::mostValues(const Way& way, std::size_t reading) const {
  constexpr int kMany = 1000000;
  int most = 1;
  for (const RepeatedSteps& range : rangesOn(way)) {
    if (range.holds(reading)) most = std::min(kMany, most * range.times);
  }
  return most;
}

void Linter::cautionsOnWay(const Way& way) {
  Hazards covered;
  for (const std::size_t index : way) {
    const Step& step = procedure_.steps[index];
    if (const Caution* const caution = findCaution(procedure_, step.caution)) {
      covered.insert(caution->covers.begin(), caution->covers.end());
    }
    for (std::size_t each = 0; each < step.opens.size(); ++each) {
      if (covered.contains(step.opens[each])) continue;
      add(at(step.pointer, "opens", each), "hazard-without-caution",
          {{"hazard", std::string(nameOf(step.opens[each]))}});
    }
    if (step.moves && !covered.contains(Hazard::MovingLinkage)) {
      add(step.pointer, "hazard-without-caution", {{"hazard", std::string(nameOf(Hazard::MovingLinkage))}});
    }
  }
}

void Linter::hazardsOnWay(const Way& way) {
  // Which hazards may be open before each step, along every edge of the way: next, repeat, go back, expiry.
  std::map<std::size_t, Hazards> before;
  bool changed = true;
  const auto flow = [&](std::size_t to, const Hazards& hazards) {
    Hazards& there = before[to];
    const std::size_t size = there.size();
    there.insert(hazards.begin(), hazards.end());
    changed = changed || there.size() != size;
  };
  const auto flowBack = [&](const std::string& to, std::size_t from, const Hazards& hazards) {
    const std::optional<std::size_t> goal = indexOf(to);
    if (goal && *goal <= from) flow(*goal, hazards);
  };
  Hazards left_open;
  while (changed) {
    changed = false;
    for (std::size_t place = 0; place < way.size(); ++place) {
      const std::size_t index = way[place];
      const Step& step = procedure_.steps[index];
      Hazards tried = before[index];  // a failed step may have opened, and has not closed
      tried.insert(step.opens.begin(), step.opens.end());
      Hazards after = tried;
      for (const Hazard hazard : step.closes) after.erase(hazard);
      if (place + 1 < way.size()) {
        flow(way[place + 1], after);
      } else {
        left_open = after;
      }
      if (step.repeat) flowBack(step.repeat->from, index, after);
      const std::optional<OnFailure>& failure = failureOf(procedure_, step);
      if (canFail(step) && failure && goesBack(*failure)) flowBack(failure->to, index, tried);
      if (step.undecided && goesBack(*step.undecided)) flowBack(step.undecided->to, index, tried);
      if (!step.check) continue;
      std::vector<std::string> readings = step.check->of;
      std::ranges::move(knownOf(*step.check), std::back_inserter(readings));
      for (const std::string& id : readings) {
        const std::optional<std::size_t> reading = indexOf(id);
        if (!reading || !procedure_.steps[*reading].expires) continue;
        flowBack(procedure_.steps[*reading].expires->from, index, before[index]);
      }
    }
  }
  for (const std::size_t index : way) {
    const Step& step = procedure_.steps[index];
    nearOpen(step, before[index]);
    if (!step.check || step.check->kind != CheckKind::Survey) continue;
    const std::optional<OnFailure>& failure = failureOf(procedure_, step);
    if (!failure || failure->action != FailureAction::ReadAgain) continue;
    for (const std::string& id : step.check->of) {
      const Step* const reading = findStep(procedure_.steps, id);
      if (reading != nullptr && reading->survey && !survey::needsPose(*reading->survey))
        nearOpen(*reading, before[index]);
    }
  }
  for (const Hazard hazard : left_open) {
    for (const std::size_t index : way) {
      const Step& step = procedure_.steps[index];
      const auto opened = std::ranges::find(step.opens, hazard);
      if (opened == step.opens.end()) continue;
      add(at(step.pointer, "opens", static_cast<std::size_t>(opened - step.opens.begin())),
          "hazard-left-open", {{"hazard", std::string(nameOf(hazard))}});
      break;
    }
  }
}

bool Linter::agesTooMuch(const Way& way, std::size_t reading, std::size_t check,
                         const std::string& limit) const {
  const Expected<double> most_s = readSi(limit, Dimension::Time);
  if (!most_s) return false;
  double least_s = 0.0;
  for (const std::size_t index : way) {
    const Step& step = procedure_.steps[index];
    if (index <= reading || index >= check || step.kind != StepKind::Hold) continue;
    least_s += readSi(step.duration, Dimension::Time).value_or(0.0);
  }
  return least_s > *most_s;
}

void Linter::limitsCanBeMet(const Step& step, const Step& reading) {
  const Check& check = *step.check;
  const std::optional<double> lowest = valueOf(reading.plausible.low);
  const std::optional<double> highest = valueOf(reading.plausible.high);
  std::optional<double> low = valueOf(check.kind == CheckKind::AtLeast ? check.value : check.low);
  std::optional<double> high = valueOf(check.high);
  if (check.kind == CheckKind::PoseReached) {
    const std::optional<double> target = valueOf(check.target);
    const std::optional<double> within = valueOf(check.within);
    if (target && within) {
      low = *target - *within;
      high = *target + *within;
    }
  }
  if ((low && highest && *low > *highest) || (high && lowest && *high < *lowest)) {
    add(at(step.pointer, "check"), "nothing-acceptable-is-plausible", {{"step", step.id}});
  }
}

void Linter::valuesSuffice(const Step& step, int most_values) {
  const Check& check = *step.check;
  int needed = 1;
  if (check.kind == CheckKind::Repeatability || check.kind == CheckKind::SteadyFor) needed = 2;
  if (check.kind == CheckKind::AtLeast) needed = std::max(1, check.count);
  if (most_values < needed) {
    add(at(step.pointer, "check"), "too-few-values", {{"step", step.id}});
  }
}

void Linter::readAgainOnTheSpot(const Step& reading, std::size_t index, const Way& way,
                                const std::string& pointer) {
  if (reading.moves || reading.near || !reading.opens.empty() || !reading.closes.empty() ||
      mostValues(way, index) > 1) {
    add(pointer, "read-again-impossible", {{"step", reading.id}});
  }
}

bool Linter::hasPoseBefore(const Way& way, std::size_t reading) const {
  return std::ranges::any_of(way, [&](std::size_t index) {
    return index < reading && procedure_.steps[index].kind == StepKind::Pose;
  });
}

void Linter::checkOnWay(const Way& way, std::size_t index) {
  const Step& step = procedure_.steps[index];
  const Check& check = *step.check;
  const std::string pointer = at(step.pointer, "check");
  const std::optional<OnFailure>& failure = failureOf(procedure_, step);

  std::vector<std::pair<std::string, std::string>> named;  // step and where it is named
  for (std::size_t each = 0; each < check.of.size(); ++each) {
    named.emplace_back(check.of[each], at(pointer, "of", each));
  }
  const std::vector<std::string> held_against = knownOf(check);
  for (const std::string& id : held_against) {
    const char* const key = id == check.gross ? "gross" : id == check.tare ? "tare" : "reference";
    named.emplace_back(id, at(pointer, key));
  }

  int values = 0;
  std::size_t latest = 0;
  for (const auto& [id, where] : named) {
    const std::optional<std::size_t> found = indexOf(id);
    if (!found) return;  // said already
    const Step& reading = procedure_.steps[*found];
    const bool fits = check.kind == CheckKind::SecondPerson
                          ? reading.second_person
                          : reading.kind == StepKind::Reading ||
                                (check.kind == CheckKind::FitResidual && reading.kind == StepKind::Pass &&
                                 reading.log != LogNeed::None);
    const bool surveys = check.kind == CheckKind::Survey;
    if (!fits || *found >= index || !contains(way, *found) || (surveys && !reading.survey)) {
      add(where, "check-without-reading", {{"step", id}});
      return;
    }
    if (surveys && survey::needsPose(*reading.survey) && !hasPoseBefore(way, *found))
      add(reading.pointer, "survey-without-pose", {{"step", id}});
    if (reading.kind == StepKind::Reading && reading.optional && !surveys)
      add(where, "reading-may-be-missing", {{"step", id}});
    latest = std::max(latest, *found);
    if (!contains(held_against, id)) values += mostValues(way, *found);
    if (reading.kind != StepKind::Reading) continue;
    // Only a fit knows what to do with volts here and degrees there.
    if (!reading.others.empty() && check.kind != CheckKind::FitResidual &&
        check.kind != CheckKind::NotOlderThan) {
      add(where, "dimensions-mixed", {{"step", id}});
    }
    if (reading.expires) {
      const std::string expires = at(reading.pointer, "expires");
      if (reading.expires->from.empty()) {
        readAgainOnTheSpot(reading, *found, way, expires);
      } else if (agesTooMuch(way, *found, index, reading.expires->after)) {
        add(expires, "expires-too-soon", {{"step", step.id}});
      }
    }
    if (surveys) {
      // What needs a pose is not read again, and what is near waits for no hazard: see hazardsOnWay.
      if (failure && failure->action == FailureAction::ReadAgain && !survey::needsPose(*reading.survey)) {
        Step from_afar = reading;
        from_afar.near = false;
        readAgainOnTheSpot(from_afar, *found, way, at(step.pointer, "on_failure"));
      }
    } else if (failure && failure->action == FailureAction::ReadAgain) {
      readAgainOnTheSpot(reading, *found, way, at(step.pointer, "on_failure"));
    } else if (check.kind == CheckKind::NotOlderThan && agesTooMuch(way, *found, index, check.duration)) {
      add(at(pointer, "age"), "expires-too-soon", {{"step", step.id}});
    }
    if (!contains(held_against, id)) limitsCanBeMet(step, reading);
  }
  if (check.kind != CheckKind::SecondPerson) valuesSuffice(step, values);
  if (!failure) return;
  if (failure->action == FailureAction::ReadAgain && check.kind == CheckKind::SecondPerson) {
    add(at(step.pointer, "on_failure"), "read-again-impossible", {{"step", step.id}});
  }
  const std::optional<std::size_t> goal =
      failure->action == FailureAction::GoBack ? indexOf(failure->to) : std::optional<std::size_t>();
  if (goal && *goal > latest) {
    add(at(step.pointer, step.on_failure ? "on_failure/to" : "check"), "failure-no-way-on",
        {{"step", step.id}});
  }
}

void Linter::usesOnWay(const Way& way) {
  for (const std::size_t index : way) {
    const Step& reading = procedure_.steps[index];
    if (reading.kind != StepKind::Reading || reading.accept || reading.use != Use::Unsaid) continue;
    const bool used = std::ranges::any_of(way, [&](std::size_t other) {
      const std::optional<Check>& check = procedure_.steps[other].check;
      return check && (contains(check->of, reading.id) || contains(knownOf(*check), reading.id));
    });
    if (!used) add(reading.pointer, "reading-unused", {{"step", reading.id}});
  }
}

void Linter::way(const std::string& variant, const Way& way) {
  if (way.empty()) {
    add("/steps", "no-steps", {{"variant", variant}});
    return;
  }
  cautionsOnWay(way);
  hazardsOnWay(way);
  for (const std::size_t index : way) {
    if (procedure_.steps[index].check) checkOnWay(way, index);
  }
  usesOnWay(way);
}

void Linter::variant(const std::string& id) {
  Way way;
  for (std::size_t index = 0; index < procedure_.steps.size(); ++index) {
    if (hasStep(id, procedure_.steps[index])) way.push_back(index);
  }
  this->way(id, way);
}

std::vector<Finding> Linter::run() {
  header();
  for (std::size_t index = 0; index < procedure_.steps.size(); ++index) {
    const Step& each = procedure_.steps[index];
    step(each);
    failure(each, index);
    if (each.repeat) target(each, index, each.repeat->from, at(each.pointer, "repeat/from"));
    if (each.expires && !each.expires->from.empty()) {
      target(each, index, each.expires->from, at(each.pointer, "expires/from"));
    }
  }
  if (procedure_.variants.empty()) variant("");
  for (const Variant& each : procedure_.variants) variant(each.id);
  makeSafe();
  for (std::size_t index = 0; index < procedure_.entries.size(); ++index) {
    const std::string& id = procedure_.entries[index].id;
    if (!used_entries_.contains(id)) add(at("", "entries", index), "entry-unused", {{"entry", id}});
  }
  return std::move(findings_);
}

}  // namespace

std::vector<Finding> lint(const Procedure& procedure, const TextCodes* text_codes) {
  return Linter(procedure, text_codes).run();
}

}  // namespace hingepin::procedures
