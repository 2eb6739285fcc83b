// SPDX-License-Identifier: Apache-2.0
#include "engine/procedures/evaluate.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <utility>
#include <vector>

#include "engine/units/number.h"

namespace hingepin::procedures {
namespace {

// A limit given in one unit and a value typed in another differ by roundings: 104 [degF] is 40 Cel.
constexpr double kRounding = 1e-12;

bool reaches(double value, double limit) { return value >= limit - kRounding * std::abs(limit); }
bool staysBelow(double value, double limit) { return value <= limit + kRounding * std::abs(limit); }

/// A difference in the unit of a limit; without the offset of that unit.
std::string differenceText(double difference_si, const Unit& unit) {
  return writeNumber(difference_si * unit.divisor / unit.factor) + " " + std::string(unit.ucum);
}

std::string amountText(double value_si, const Step& step) { return writeQuantity(value_si, step.unit); }

double sampleDeviation(const std::vector<Observation>& values) {
  double sum = 0.0;
  for (const Observation& each : values) sum += each.value_si;
  const double mean = sum / static_cast<double>(values.size());
  double squares = 0.0;
  for (const Observation& each : values) squares += (each.value_si - mean) * (each.value_si - mean);
  return std::sqrt(squares / static_cast<double>(values.size() - 1));
}

class Evaluation {
 public:
  Evaluation(const Procedure& procedure, const State& state, const Step& step, std::int64_t now_ms)
      : procedure_(procedure), state_(state), step_(step), check_(*step.check), now_ms_(now_ms) {
    for (const std::string& id : check_.of) {
      std::vector<Observation> found = observationsOf(procedure, state, id);
      missing_ = missing_ || found.empty();
      std::ranges::move(found, std::back_inserter(values_));
    }
  }

  Expected<Verdict> verdict(const Measure& measure, const Judge& judge);

 private:
  [[nodiscard]] Expected<ReadQuantity> limit(const std::optional<Limit>& limit) const {
    if (!limit) return fail(ErrorKind::InvalidInput, "limit-missing", {}, {.pointer = step_.pointer});
    return valueOf(procedure_, state_, *limit);
  }
  [[nodiscard]] Expected<Verdict> withinLimits() const;
  [[nodiscard]] Expected<Verdict> atLeast() const;
  [[nodiscard]] Expected<Verdict> steadyFor() const;
  [[nodiscard]] Expected<Verdict> poseReached() const;
  [[nodiscard]] Expected<Verdict> fitResidual(const Measure& measure) const;
  [[nodiscard]] Expected<Verdict> judged(const Judge& judge) const;
  [[nodiscard]] Expected<Verdict> repeatability() const;
  /// How many of the values were read since the newest reference: those of one mass.
  [[nodiscard]] std::ptrdiff_t valuesSinceReference() const;
  [[nodiscard]] Expected<Verdict> agreement() const;
  [[nodiscard]] Verdict secondPerson() const;
  [[nodiscard]] Verdict notOlderThan() const;

  const Procedure& procedure_;
  const State& state_;
  const Step& step_;
  const Check& check_;
  std::int64_t now_ms_;
  std::vector<Observation> values_;
  bool missing_ = false;
};

Expected<Verdict> Evaluation::withinLimits() const {
  Verdict verdict{.passed = true};
  const Limits limits{check_.low, check_.high};
  for (const Observation& each : values_) {
    const Expected<bool> within = isWithin(procedure_, state_, limits, each.value_si);
    if (!within) return std::unexpected(within.error());
    // The first value outside is the one to show, else the last.
    if (verdict.passed) verdict.result = amountText(each.value_si, *each.step);
    verdict.passed = verdict.passed && *within;
  }
  return verdict;
}

Expected<Verdict> Evaluation::atLeast() const {
  if (!check_.value) {
    return Verdict{.passed = values_.size() >= static_cast<std::size_t>(check_.count),
                   .result = std::to_string(values_.size()) + " 1"};
  }
  const Expected<ReadQuantity> least = limit(check_.value);
  if (!least) return std::unexpected(least.error());
  const Observation& lowest = *std::ranges::min_element(values_, {}, &Observation::value_si);
  return Verdict{.passed = reaches(lowest.value_si, least->value_si),
                 .result = amountText(lowest.value_si, *lowest.step)};
}

Expected<Verdict> Evaluation::steadyFor() const {
  const Expected<ReadQuantity> within = limit(check_.within);
  if (!within) return std::unexpected(within.error());
  const Observation& last = values_.back();
  const std::int64_t since_ms = last.at_ms - milliseconds(check_.duration);
  double low = last.value_si;
  double high = last.value_si;
  bool reaches_back = false;
  std::size_t used = 0;
  // Backwards, up to and with the first value that is old enough.
  for (auto each = values_.rbegin(); each != values_.rend() && !reaches_back && each->boot == last.boot;
       ++each) {
    low = std::min(low, each->value_si);
    high = std::max(high, each->value_si);
    reaches_back = each->at_ms <= since_ms;
    ++used;
  }
  if (!reaches_back || used < 2) return Verdict{.reason = "not-long-enough"};
  return Verdict{.passed = staysBelow(high - low, within->value_si),
                 .result = differenceText(high - low, within->unit)};
}

Expected<Verdict> Evaluation::poseReached() const {
  const Expected<ReadQuantity> target = limit(check_.target);
  if (!target) return std::unexpected(target.error());
  const Expected<ReadQuantity> within = limit(check_.within);
  if (!within) return std::unexpected(within.error());
  const double off = values_.back().value_si - target->value_si;
  return Verdict{.passed = staysBelow(std::abs(off), within->value_si),
                 .result = differenceText(off, within->unit)};
}

Expected<Verdict> Evaluation::fitResidual(const Measure& measure) const {
  const Expected<ReadQuantity> most = limit(check_.at_most);
  if (!most) return std::unexpected(most.error());
  if (!measure) return fail(ErrorKind::InvalidInput, "fit-not-at-hand", {{"step", step_.id}});
  const Expected<double> residual = measure(check_, values_);
  if (!residual) {
    if (residual.error().kind != ErrorKind::Insufficient) return std::unexpected(residual.error());
    return Verdict{.reason = residual.error().message.code};
  }
  if (!std::isfinite(*residual)) return Verdict{.reason = "residual-not-finite"};
  return Verdict{.passed = staysBelow(*residual, most->value_si),
                 .result = differenceText(*residual, most->unit)};
}

Expected<Verdict> Evaluation::judged(const Judge& judge) const {
  if (!judge) return fail(ErrorKind::InvalidInput, "proof-not-at-hand", {{"step", step_.id}});
  Expected<Verdict> verdict = judge(step_);
  if (!verdict && verdict.error().kind == ErrorKind::Insufficient)
    return Verdict{.reason = verdict.error().message.code};
  return verdict;
}

std::ptrdiff_t Evaluation::valuesSinceReference() const {
  std::ptrdiff_t count = 0;
  for (const Try& each : state_.tries) {
    if (!each.counts || each.event.type != EventType::Reading) continue;
    if (each.event.about == check_.reference) count = 0;
    if (each.event.about == check_.of.front()) ++count;
  }
  return count;
}

Expected<Verdict> Evaluation::repeatability() const {
  const Expected<ReadQuantity> most = limit(check_.at_most);
  if (!most) return std::unexpected(most.error());
  std::vector<Observation> values = values_;
  if (!check_.reference.empty())
    values.erase(values.begin(), values.end() - std::min(valuesSinceReference(), std::ssize(values)));
  if (values.size() < 2) return Verdict{.reason = "too-few-values"};
  const double deviation = sampleDeviation(values);
  return Verdict{.passed = staysBelow(deviation, most->value_si),
                 .result = differenceText(deviation, most->unit)};
}

Expected<Verdict> Evaluation::agreement() const {
  std::vector<double> references;
  if (check_.reference_entry) {
    const Expected<ReadQuantity> entry = valueOf(procedure_, state_, *check_.reference_entry);
    if (!entry) return std::unexpected(entry.error());
    references.push_back(entry->value_si);
  } else {
    for (const Observation& each : observationsOf(procedure_, state_, check_.reference)) {
      references.push_back(each.value_si);
    }
  }
  if (references.empty()) return Verdict{.reason = "no-value"};
  if (references.size() != 1 && references.size() != values_.size()) return Verdict{.reason = "not-in-pairs"};
  const Expected<ReadQuantity> within = limit(check_.within);
  if (!within) return std::unexpected(within.error());
  const std::optional<Unit> unit = findUnit(values_.front().step->unit);
  const bool share =
      within->unit.dimension == Dimension::Number && unit && unit->dimension != Dimension::Number;
  Verdict verdict{.passed = true};
  double largest = -1.0;
  for (std::size_t index = 0; index < values_.size(); ++index) {
    const double reference = references[references.size() == 1 ? 0 : index];
    if (share && reference == 0.0) return Verdict{.reason = "reference-is-zero"};
    const double off = (values_[index].value_si - reference) / (share ? std::abs(reference) : 1.0);
    if (std::abs(off) <= largest) continue;
    largest = std::abs(off);
    verdict.passed = staysBelow(largest, within->value_si);
    verdict.result = differenceText(off, within->unit);
  }
  return verdict;
}

Verdict Evaluation::secondPerson() const {
  for (const Try& each : state_.tries) {
    if (!each.counts || each.event.type != EventType::Answer || each.event.about != check_.of.front())
      continue;
    // What the yard allows in place of a second person was judged when it was said, and is marked.
    return {.passed = true, .reason = each.event.answer == "yes" ? "" : each.event.answer};
  }
  return {.reason = "no-value"};
}

Verdict Evaluation::notOlderThan() const {
  for (const Observation& each : values_) {
    if (each.boot != state_.boot) return {.reason = "age-unknown"};
  }
  std::int64_t oldest_ms = 0;
  for (const Observation& each : values_) oldest_ms = std::max(oldest_ms, now_ms_ - each.at_ms);
  return {.passed = oldest_ms <= milliseconds(check_.duration), .result = std::to_string(oldest_ms) + " ms"};
}

Expected<Verdict> Evaluation::verdict(const Measure& measure, const Judge& judge) {
  if (check_.kind == CheckKind::SecondPerson) return secondPerson();
  if (check_.kind == CheckKind::Survey) return judged(judge);  // each of its readings may be missing
  if (missing_) return Verdict{.reason = "no-value"};
  switch (check_.kind) {
    case CheckKind::WithinLimits:
      return withinLimits();
    case CheckKind::AtLeast:
      return atLeast();
    case CheckKind::SteadyFor:
      return steadyFor();
    case CheckKind::PoseReached:
      return poseReached();
    case CheckKind::FitResidual:
      return fitResidual(measure);
    case CheckKind::Repeatability:
      return repeatability();
    case CheckKind::Agreement:
      return agreement();
    case CheckKind::NotOlderThan:
      return notOlderThan();
    case CheckKind::Proof:
    case CheckKind::TruckProof:
    case CheckKind::LoaderProof:
    case CheckKind::Plan:
      return judged(judge);
    case CheckKind::Survey:
    case CheckKind::SecondPerson:
      break;
  }
  return Verdict{};
}

}  // namespace

Expected<ReadQuantity> valueOf(const Procedure& procedure, const State& state, const Limit& limit) {
  if (limit.entry.empty()) return readAnyQuantity(limit.text);
  if (const auto given = state.start.entries.find(limit.entry); given != state.start.entries.end()) {
    return readAnyQuantity(given->second);
  }
  const auto entry = std::ranges::find(procedure.entries, limit.entry, &Entry::id);
  if (entry == procedure.entries.end() || entry->standard.empty()) {
    return fail(ErrorKind::InvalidInput, "entry-missing", {{"entry", limit.entry}});
  }
  return readAnyQuantity(entry->standard);
}

Expected<bool> isWithin(const Procedure& procedure, const State& state, const Limits& limits,
                        double value_si) {
  bool within = true;
  if (limits.low) {
    const Expected<ReadQuantity> low = valueOf(procedure, state, *limits.low);
    if (!low) return std::unexpected(low.error());
    within = within && reaches(value_si, low->value_si);
  }
  if (limits.high) {
    const Expected<ReadQuantity> high = valueOf(procedure, state, *limits.high);
    if (!high) return std::unexpected(high.error());
    within = within && staysBelow(value_si, high->value_si);
  }
  return within;
}

std::vector<std::string> suggestionsFor(const Procedure& procedure, const State& state,
                                        const Limits& plausible, const std::string& typed) {
  std::vector<std::string> suggestions;
  const Expected<ReadQuantity> read = readAnyQuantity(typed);
  if (!read) return suggestions;
  const std::string number = typed.substr(0, typed.find(' '));
  const double value = valueOfNumber(number).value_or(0.0);
  const auto offer = [&](double value_si, std::string text) {
    if (isWithin(procedure, state, plausible, value_si).value_or(false)) {
      suggestions.push_back(std::move(text));
    }
  };
  for (const double factor : {0.1, 10.0, 0.01, 100.0}) {
    const double value_si = read->unit.toSi(value * factor);
    offer(value_si, writeQuantity(value_si, read->unit.ucum));
  }
  for (const Unit& unit : allUnits()) {
    if (unit.dimension != read->unit.dimension || unit.ucum == read->unit.ucum) continue;
    offer(unit.toSi(value), number + " " + std::string(unit.ucum));
  }
  return suggestions;
}

bool isOlder(const State& state, const Observation& observation, std::int64_t now_ms,
             const std::string& limit) {
  return observation.boot != state.boot || now_ms - observation.at_ms > milliseconds(limit);
}

std::int64_t milliseconds(const std::string& duration) {
  const double duration_s = readSi(duration, Dimension::Time).value_or(0.0);
  constexpr double kLongest_s = 1e12;
  return std::llround(std::clamp(duration_s, 0.0, kLongest_s) * 1000.0);
}

Expected<Verdict> evaluate(const Procedure& procedure, const State& state, const Step& step,
                           std::int64_t now_ms, const Measure& measure, const Judge& judge) {
  return Evaluation(procedure, state, step, now_ms).verdict(measure, judge);
}

}  // namespace hingepin::procedures
