// SPDX-License-Identifier: Apache-2.0
#include "engine/units/ucum.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "engine/units/number.h"

namespace hingepin {
namespace {

// Factors are exact by definition (NIST SP 811 appendix B.6, UCUM 2.2), those of deg and [psi] rounded to a
// double.
constexpr std::array kUnits = {
    Unit{"1", Dimension::Number},
    Unit{"%", Dimension::Number, 1.0, 100.0},
    Unit{"m", Dimension::Length},
    Unit{"cm", Dimension::Length, 1.0, 100.0},
    Unit{"mm", Dimension::Length, 1.0, 1000.0},
    Unit{"[in_i]", Dimension::Length, 0.0254},
    Unit{"[ft_i]", Dimension::Length, 0.3048},
    Unit{"rad", Dimension::Angle},
    Unit{"mrad", Dimension::Angle, 1.0, 1000.0},
    Unit{"deg", Dimension::Angle, 0.017453292519943295},
    Unit{"kg", Dimension::Mass},
    Unit{"g", Dimension::Mass, 1.0, 1000.0},
    Unit{"t", Dimension::Mass, 1000.0},
    Unit{"[lb_av]", Dimension::Mass, 0.45359237},
    Unit{"[ston_av]", Dimension::Mass, 907.18474},
    Unit{"[lton_av]", Dimension::Mass, 1016.0469088},
    Unit{"s", Dimension::Time},
    Unit{"ms", Dimension::Time, 1.0, 1000.0},
    Unit{"min", Dimension::Time, 60.0},
    Unit{"h", Dimension::Time, 3600.0},
    Unit{"K", Dimension::Temperature},
    Unit{"Cel", Dimension::Temperature, 1.0, 1.0, 273.15},
    Unit{"[degF]", Dimension::Temperature, 5.0, 9.0, 459.67},
    Unit{"Pa", Dimension::Pressure},
    Unit{"kPa", Dimension::Pressure, 1e3},
    Unit{"MPa", Dimension::Pressure, 1e6},
    Unit{"bar", Dimension::Pressure, 1e5},
    Unit{"[psi]", Dimension::Pressure, 6894.757293168361},
    Unit{"V", Dimension::Voltage},
    Unit{"mV", Dimension::Voltage, 1.0, 1000.0},
    Unit{"A", Dimension::Current},
    Unit{"mA", Dimension::Current, 1.0, 1000.0},
    Unit{"N", Dimension::Force},
    Unit{"kN", Dimension::Force, 1000.0},
    Unit{"[lbf_av]", Dimension::Force, 4.4482216152605},
    Unit{"m/s2", Dimension::Acceleration},
    Unit{"/s", Dimension::Frequency},
    Unit{"/min", Dimension::Frequency, 1.0, 60.0},
    Unit{"{rev}/min", Dimension::Frequency, 1.0, 60.0},
    Unit{"rad/s", Dimension::AngularSpeed},
    Unit{"deg/s", Dimension::AngularSpeed, 0.017453292519943295},
};

struct UnitPair {
  std::string_view from;
  std::string_view to;
};
constexpr std::array kToUsCustomary = {
    UnitPair{"kg", "[lb_av]"},  UnitPair{"g", "[lb_av]"},  UnitPair{"t", "[ston_av]"},
    UnitPair{"bar", "[psi]"},   UnitPair{"Pa", "[psi]"},   UnitPair{"kPa", "[psi]"},
    UnitPair{"MPa", "[psi]"},   UnitPair{"mm", "[in_i]"},  UnitPair{"cm", "[in_i]"},
    UnitPair{"m", "[ft_i]"},    UnitPair{"Cel", "[degF]"}, UnitPair{"N", "[lbf_av]"},
    UnitPair{"kN", "[lbf_av]"},
};
constexpr std::array kToMetric = {
    UnitPair{"[lb_av]", "kg"}, UnitPair{"[ston_av]", "t"}, UnitPair{"[lton_av]", "t"},
    UnitPair{"[psi]", "bar"},  UnitPair{"[in_i]", "mm"},   UnitPair{"[ft_i]", "m"},
    UnitPair{"[degF]", "Cel"}, UnitPair{"[lbf_av]", "N"},
};

constexpr std::size_t kMostQuoted = 60;  // bytes of a faulty text that a message repeats

std::string quoted(std::string_view text) {
  if (text.size() <= kMostQuoted) return std::string(text);
  std::size_t end = kMostQuoted;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80)
    --end;  // not inside a UTF-8 character
  return std::string(text.substr(0, end)) + "...";
}

std::string codesOf(Dimension dimension) {
  std::string codes;
  for (const Unit& unit : kUnits) {
    if (unit.dimension != dimension) continue;
    if (!codes.empty()) codes += ", ";
    codes += unit.ucum;
  }
  return codes;
}

}  // namespace

std::span<const Unit> allUnits() { return kUnits; }

std::optional<Unit> findUnit(std::string_view ucum) {
  const auto* const found = std::ranges::find(kUnits, ucum, &Unit::ucum);
  if (found == kUnits.end()) return std::nullopt;
  return *found;
}

std::string_view nameOf(Dimension dimension) {
  switch (dimension) {
    case Dimension::Number:
      return "number";
    case Dimension::Length:
      return "length";
    case Dimension::Angle:
      return "angle";
    case Dimension::Mass:
      return "mass";
    case Dimension::Time:
      return "time";
    case Dimension::Temperature:
      return "temperature";
    case Dimension::Pressure:
      return "pressure";
    case Dimension::Voltage:
      return "voltage";
    case Dimension::Current:
      return "electric current";
    case Dimension::Force:
      return "force";
    case Dimension::Acceleration:
      return "acceleration";
    case Dimension::Frequency:
      return "frequency";
    case Dimension::AngularSpeed:
      return "angular speed";
  }
  return "";
}

Expected<ReadQuantity> readAnyQuantity(std::string_view text) {
  const std::size_t length = scanNumber(text);
  if (length == 0 || length + 1 >= text.size() || text[length] != ' ' || text[length + 1] == ' ') {
    return fail(ErrorKind::InvalidInput, "quantity-malformed", {{"text", quoted(text)}});
  }
  const std::optional<Unit> unit = findUnit(text.substr(length + 1));
  if (!unit) {
    return fail(ErrorKind::InvalidInput, "unit-unknown", {{"unit", quoted(text.substr(length + 1))}});
  }
  const std::optional<double> value = valueOfNumber(text.substr(0, length));
  if (!value || !std::isfinite(unit->toSi(*value))) {
    return fail(ErrorKind::InvalidInput, "number-out-of-range", {{"text", quoted(text)}});
  }
  return ReadQuantity{unit->toSi(*value), *unit};
}

Expected<double> readSi(std::string_view text, Dimension dimension) {
  Expected<ReadQuantity> read = readAnyQuantity(text);
  if (!read) {
    Error error = std::move(read.error());
    error.message.values.emplace_back("expected", std::string(nameOf(dimension)));
    error.message.values.emplace_back("units", codesOf(dimension));
    return std::unexpected(std::move(error));
  }
  if (read->unit.dimension != dimension) {
    return fail(ErrorKind::InvalidInput, "unit-wrong-dimension",
                {{"text", quoted(text)},
                 {"unit", std::string(read->unit.ucum)},
                 {"dimension", std::string(nameOf(read->unit.dimension))},
                 {"expected", std::string(nameOf(dimension))},
                 {"units", codesOf(dimension)}});
  }
  return read->value_si;
}

std::string writeQuantity(double value_si, std::string_view ucum) {
  const std::optional<Unit> unit = findUnit(ucum);
  const double value = unit ? unit->fromSi(value_si) : value_si;
  // Conversion rounds, so the value in the unit may carry digits that are not needed to read back the SI
  // value, or be one double off the one that does.
  for (const double near : {value, std::nextafter(value, HUGE_VAL), std::nextafter(value, -HUGE_VAL)}) {
    for (int digits = 1; unit && digits <= 17; ++digits) {
      std::array<char, 32> text{};
      const auto [end, code] =
          std::to_chars(text.begin(), text.end(), near, std::chars_format::scientific, digits - 1);
      const double candidate =
          valueOfNumber({text.data(), static_cast<std::size_t>(end - text.data())}).value_or(0.0);
      if (unit->toSi(candidate) == value_si) return writeNumber(candidate) + " " + std::string(ucum);
    }
  }
  return writeNumber(value) + " " + std::string(ucum);
}

Amount inSystem(const Amount& amount, UnitSystem system) {
  const std::span<const UnitPair> pairs = system == UnitSystem::Metric
                                              ? std::span<const UnitPair>(kToMetric)
                                              : std::span<const UnitPair>(kToUsCustomary);
  const auto pair = std::ranges::find(pairs, amount.ucum, &UnitPair::from);
  if (pair == pairs.end()) return amount;
  const Unit from = *findUnit(pair->from);
  const Unit to = *findUnit(pair->to);
  const double step =
      std::pow(10.0, -amount.decimals) * (from.factor / from.divisor) / (to.factor / to.divisor);
  return {to.fromSi(from.toSi(amount.value)), std::string(to.ucum),
          std::max(0, static_cast<int>(std::ceil(-std::log10(step))))};
}

}  // namespace hingepin
