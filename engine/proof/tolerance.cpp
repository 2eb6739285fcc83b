// SPDX-License-Identifier: Apache-2.0
#include "engine/proof/tolerance.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <span>
#include <string_view>

namespace hingepin::proof {
namespace {

constexpr double kNoEnd = std::numeric_limits<double>::infinity();
/// Loads that differ by less are one load: pounds in kilograms don't divide exactly.
constexpr double kSameLoad = 1e-9;

/// Loads above the row before and up to this one have this limit. All counted in intervals.
struct ClassRow {
  double up_to;
  double initial;
  double in_service;
};

struct ClassTable {
  ClassScheme scheme;
  std::string_view accuracy_class;
  std::array<ClassRow, 5> rows;
  std::size_t count;
  /// Beyond the last row each so many intervals, or a part of them, add one (in service).
  double one_more_each = 0.0;
};

// OIML R 76-1:2006 Table 6, in service twice the initial (3.5.2). Both confirmed in a reprint of the table
// and in UK SI 1995/1907 Schedule 2, which prints the same limits. OIML R 51-1:2006 category Y: classes and
// first row confirmed in Directive 2014/32/EU Annex VIII chapter II; the other rows from memory. NIST
// Handbook 44 section 2.20 Table 6, acceptance half of maintenance: from memory.
constexpr std::array kClassTables = {
    ClassTable{ClassScheme::OimlR76, "I", {{{50000, 0.5, 1}, {200000, 1, 2}, {kNoEnd, 1.5, 3}}}, 3},
    ClassTable{ClassScheme::OimlR76, "II", {{{5000, 0.5, 1}, {20000, 1, 2}, {100000, 1.5, 3}}}, 3},
    ClassTable{ClassScheme::OimlR76, "III", {{{500, 0.5, 1}, {2000, 1, 2}, {10000, 1.5, 3}}}, 3},
    ClassTable{ClassScheme::OimlR76, "IIII", {{{50, 0.5, 1}, {200, 1, 2}, {1000, 1.5, 3}}}, 3},
    ClassTable{ClassScheme::OimlR51, "Y(a)", {{{500, 1, 1.5}, {2000, 1.5, 2.5}, {10000, 2, 3.5}}}, 3},
    ClassTable{ClassScheme::OimlR51, "Y(b)", {{{50, 1, 1.5}, {200, 1.5, 2.5}, {1000, 2, 3.5}}}, 3},
    ClassTable{ClassScheme::NistHb44, "I", {{{50000, 0.5, 1}, {200000, 1, 2}, {kNoEnd, 1.5, 3}}}, 3},
    ClassTable{ClassScheme::NistHb44, "II", {{{5000, 0.5, 1}, {20000, 1, 2}, {kNoEnd, 1.5, 3}}}, 3},
    ClassTable{
        ClassScheme::NistHb44, "III", {{{500, 0.5, 1}, {2000, 1, 2}, {4000, 1.5, 3}, {kNoEnd, 2.5, 5}}}, 4},
    ClassTable{
        ClassScheme::NistHb44, "IIII", {{{50, 0.5, 1}, {200, 1, 2}, {400, 1.5, 3}, {kNoEnd, 2.5, 5}}}, 4},
    ClassTable{ClassScheme::NistHb44, "III L", {{{500, 0.5, 1}, {1000, 1, 2}}}, 2, 500}};

Expected<Mass> limitOf(const PercentLimit& percent, Mass load, Mass rated) {
  return percent.limit.inOnes() * (percent.of == Of::Rated ? rated : load);
}

Expected<Mass> limitOf(const ClassLimit& limit, Mass load, Mass /*rated*/) {
  const auto* const table = std::ranges::find_if(kClassTables, [&](const ClassTable& each) {
    return each.scheme == limit.scheme && each.accuracy_class == limit.accuracy_class;
  });
  if (table == kClassTables.end()) {
    std::string known;
    for (const std::string& each : classesOf(limit.scheme)) known += (known.empty() ? "" : ", ") + each;
    return fail(ErrorKind::InvalidInput, "accuracy-class-unknown",
                {{"class", limit.accuracy_class}, {"known", known}});
  }
  const double intervals = load / limit.interval * (1.0 - kSameLoad);
  const bool initial = limit.stage == Stage::Initial;
  const std::span rows = std::span(table->rows).first(table->count);
  const auto row = std::ranges::find_if(rows, [&](const ClassRow& each) { return intervals <= each.up_to; });
  if (row != rows.end()) return (initial ? row->initial : row->in_service) * limit.interval;

  const ClassRow& last = rows.back();
  if (table->one_more_each == 0.0) {
    return fail(ErrorKind::Insufficient, "load-beyond-tolerance",
                {{"load", Amount{load.inKilograms(), "kg"}},
                 {"most", Amount{last.up_to * limit.interval.inKilograms(), "kg"}}});
  }
  const double steps = std::ceil((intervals - last.up_to) / table->one_more_each);
  return (last.in_service + steps) * (initial ? 0.5 : 1.0) * limit.interval;
}

Expected<Mass> limitOf(const StepLimit& limit, Mass load, Mass /*rated*/) {
  const auto step = std::ranges::find_if(
      limit.steps, [&](const StepLimit::Step& each) { return load * (1.0 - kSameLoad) <= each.up_to; });
  if (step != limit.steps.end()) return step->limit;
  return fail(ErrorKind::Insufficient, "load-beyond-tolerance",
              {{"load", Amount{load.inKilograms(), "kg"}},
               {"most", Amount{limit.steps.empty() ? 0.0 : limit.steps.back().up_to.inKilograms(), "kg"}}});
}

}  // namespace

Expected<Mass> limitAt(const Tolerance& tolerance, Mass load, Mass rated) {
  return std::visit([&](const auto& limit) { return limitOf(limit, load, rated); }, tolerance);
}

std::vector<std::string> classesOf(ClassScheme scheme) {
  std::vector<std::string> classes;
  for (const ClassTable& table : kClassTables) {
    if (table.scheme == scheme) classes.emplace_back(table.accuracy_class);
  }
  return classes;
}

}  // namespace hingepin::proof
