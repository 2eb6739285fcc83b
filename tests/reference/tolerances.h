// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <limits>
#include <string_view>

namespace hingepin::reference {

/// Largest error allowed at loads above `from` up to `to`, all in intervals of the scale.
struct ToleranceRow {
  std::string_view accuracy_class;
  double from, to;
  double when_new, in_use;
};

inline constexpr double kNoLastLoad = std::numeric_limits<double>::infinity();

// Source: OIML R 76-1:2006 Table 6 (initial verification) and 3.5.2 (in service: twice that). Confirmed in a
// reprint of the table and in UK SI 1995/1907 Schedule 2 paragraph 4.
inline constexpr std::array<ToleranceRow, 12> kOimlR76{{{"I", 0, 50000, 0.5, 1.0},
                                                        {"I", 50000, 200000, 1.0, 2.0},
                                                        {"I", 200000, kNoLastLoad, 1.5, 3.0},
                                                        {"II", 0, 5000, 0.5, 1.0},
                                                        {"II", 5000, 20000, 1.0, 2.0},
                                                        {"II", 20000, 100000, 1.5, 3.0},
                                                        {"III", 0, 500, 0.5, 1.0},
                                                        {"III", 500, 2000, 1.0, 2.0},
                                                        {"III", 2000, 10000, 1.5, 3.0},
                                                        {"IIII", 0, 50, 0.5, 1.0},
                                                        {"IIII", 50, 200, 1.0, 2.0},
                                                        {"IIII", 200, 1000, 1.5, 3.0}}};

// Source: OIML R 51-1:2006, category Y (catchweighers; vehicle-mounted and vehicle-incorporated ones are in
// its scope). Classes and first rows confirmed in Directive 2014/32/EU Annex VIII chapter II; the rest from
// memory.
inline constexpr std::array<ToleranceRow, 6> kOimlR51{{{"Y(a)", 0, 500, 1, 1.5},
                                                       {"Y(a)", 500, 2000, 1.5, 2.5},
                                                       {"Y(a)", 2000, 10000, 2, 3.5},
                                                       {"Y(b)", 0, 50, 1, 1.5},
                                                       {"Y(b)", 50, 200, 1.5, 2.5},
                                                       {"Y(b)", 200, 1000, 2, 3.5}}};

// Source: NIST Handbook 44 section 2.20 Table 6 (maintenance; acceptance is half, T.N.3.1 and T.N.3.2). From
// memory; its rows "501 to 2000" are written here as above 500 up to 2000. Class III L goes on by 1 d for
// each further 500 d or part of them; the first of those rows stand here.
inline constexpr std::array<ToleranceRow, 20> kNistHb44{{{"I", 0, 50000, 0.5, 1},
                                                         {"I", 50000, 200000, 1, 2},
                                                         {"I", 200000, kNoLastLoad, 1.5, 3},
                                                         {"II", 0, 5000, 0.5, 1},
                                                         {"II", 5000, 20000, 1, 2},
                                                         {"II", 20000, kNoLastLoad, 1.5, 3},
                                                         {"III", 0, 500, 0.5, 1},
                                                         {"III", 500, 2000, 1, 2},
                                                         {"III", 2000, 4000, 1.5, 3},
                                                         {"III", 4000, kNoLastLoad, 2.5, 5},
                                                         {"IIII", 0, 50, 0.5, 1},
                                                         {"IIII", 50, 200, 1, 2},
                                                         {"IIII", 200, 400, 1.5, 3},
                                                         {"IIII", 400, kNoLastLoad, 2.5, 5},
                                                         {"III L", 0, 500, 0.5, 1},
                                                         {"III L", 500, 1000, 1, 2},
                                                         {"III L", 1000, 1500, 1.5, 3},
                                                         {"III L", 1500, 2000, 2, 4},
                                                         {"III L", 2000, 2500, 2.5, 5},
                                                         {"III L", 2500, 3000, 3, 6}}};

}  // namespace hingepin::reference
