// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <string>
#include <variant>
#include <vector>

#include "engine/base/error.h"
#include "engine/base/named.h"
#include "engine/units/quantity.h"

namespace hingepin::proof {

enum class Of { Reference, Rated };
inline constexpr std::array kOfNames = {Named{"reference", Of::Reference}, Named{"rated", Of::Rated}};

/// A share of the reference mass or of the rated payload.
struct PercentLimit {
  Fraction limit;
  Of of = Of::Reference;
};

/// The published schemes whose limits are counted in intervals of the scale.
enum class ClassScheme { OimlR76, OimlR51, NistHb44 };

/// Whether the scale is new (or just repaired) or in use: OIML "initial" and "in-service", Handbook 44
/// "acceptance" and "maintenance".
enum class Stage { Initial, InService };

/// Limits by class, interval and stage.
struct ClassLimit {
  ClassScheme scheme = ClassScheme::OimlR76;
  std::string accuracy_class{};  ///< as the scheme writes it: "IIII", "Y(b)", "III L"
  Mass interval{};               ///< verification interval e, or scale division d
  Stage stage = Stage::InService;
};

/// A yard's own steps: the limit of the first step whose `up_to` the load does not exceed.
struct StepLimit {
  struct Step {
    Mass up_to;
    Mass limit;
  };
  std::vector<Step> steps;  ///< `up_to` increasing
};

using Tolerance = std::variant<PercentLimit, ClassLimit, StepLimit>;

/// The largest error, up or down, that the scheme allows at a load.
/// @param load >= 0
/// @param rated the rated payload, for shares of it
/// Errors: Insufficient "load-beyond-tolerance" for a load beyond the scheme's last row; InvalidInput
/// "accuracy-class-unknown" (names those that are).
/// Source: OIML R 76-1:2006 Table 6 and 3.5.2; OIML R 51-1:2006 category Y; NIST Handbook 44 section 2.20
/// Table 6 (the tables as in tolerance.cpp, which says what of them is from memory).
[[nodiscard]] Expected<Mass> limitAt(const Tolerance& tolerance, Mass load, Mass rated);

/// The classes that a scheme has, in the order of the table.
[[nodiscard]] std::vector<std::string> classesOf(ClassScheme scheme);

}  // namespace hingepin::proof
