// SPDX-License-Identifier: Apache-2.0
#include "engine/units/ucum.h"

#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "engine/base/random.h"
#include "engine/units/number.h"

namespace hingepin {
namespace {

struct Factor {
  std::string code;
  std::string dimension;
  double factor;
  double offset;
  std::string sp811;
};

std::vector<Factor> publishedFactors() {
  std::ifstream file(HINGEPIN_REFERENCE_DIR "/units/factors.csv");
  std::vector<Factor> factors;
  for (std::string line; std::getline(file, line);) {
    if (line.starts_with('#') || line.starts_with("code,")) continue;
    std::vector<std::string> cells;
    std::stringstream stream(line + ",");
    for (std::string cell; std::getline(stream, cell, ',');) cells.push_back(cell);
    factors.push_back({cells[0], cells[1], std::stod(cells[2]), std::stod(cells[3]), cells[4]});
  }
  return factors;
}

std::string codeOf(const Expected<double>& read) { return read ? "" : read.error().message.code; }

// UCUM 2.2 codes, factors by definition.
TEST(UcumTest, EveryPublishedCodeIsKnownWithItsFactor) {
  const std::vector<Factor> factors = publishedFactors();
  ASSERT_EQ(factors.size(), 30U);
  for (const Factor& published : factors) {
    const std::optional<Unit> unit = findUnit(published.code);
    ASSERT_TRUE(unit) << published.code;
    EXPECT_EQ(nameOf(unit->dimension), published.dimension) << published.code;
    for (const double value : {0.0, 1.0, 37.5, 1234.0}) {
      const double expected = (value + published.offset) * published.factor;
      // Two roundings apart at most.
      EXPECT_NEAR(unit->toSi(value), expected, 4e-16 * std::abs(expected)) << published.code;
    }
  }
}

// NIST SP 811 (2008), appendix B.8: seven digits.
TEST(NumberTest, IsTheNearestDouble) {
  // IEEE 754-2019, 4.3.1: to nearest, ties to even; 3.3: the range of binary64.
  EXPECT_EQ(valueOfNumber("9007199254740993"), 9007199254740992.0);
  EXPECT_EQ(valueOfNumber("9007199254740995"), 9007199254740996.0);
  EXPECT_EQ(valueOfNumber("9007199254740993.0000000000000000000000000000001"), 9007199254740994.0);
  EXPECT_EQ(valueOfNumber("4.9e-324"), std::numeric_limits<double>::denorm_min());
  EXPECT_EQ(valueOfNumber("2.4e-324"), std::nullopt);
  EXPECT_EQ(valueOfNumber("1.7976931348623157e308"), std::numeric_limits<double>::max());
  EXPECT_EQ(valueOfNumber("1.7976931348623159e308"), std::nullopt);
  EXPECT_EQ(valueOfNumber("-0.000e-999"), 0.0);
}

TEST(UcumTest, FactorsRoundToThoseOfNistSp811) {
  int compared = 0;
  for (const Factor& published : publishedFactors()) {
    if (published.sp811.empty()) continue;
    const double rounded = std::stod(published.sp811);
    const double half_last_digit = 0.5 * std::pow(10.0, std::floor(std::log10(rounded)) - 6);
    EXPECT_NEAR(findUnit(published.code)->toSi(1.0), rounded, half_last_digit) << published.code;
    ++compared;
  }
  EXPECT_EQ(compared, 12);
}

// Fixed points: water freezes at 32 degF = 0 Cel = 273.15 K; the two scales meet at -40.
TEST(UcumTest, TemperatureScalesMeetWhereTheyShould) {
  EXPECT_DOUBLE_EQ(*readSi("32 [degF]", Dimension::Temperature), 273.15);
  EXPECT_DOUBLE_EQ(*readSi("0 Cel", Dimension::Temperature), 273.15);
  EXPECT_DOUBLE_EQ(*readSi("-40 [degF]", Dimension::Temperature), *readSi("-40 Cel", Dimension::Temperature));
}

TEST(UcumTest, DecimalPartsReadAsTheSameDoubleAsTheSiUnit) {
  for (int millimetres = 1; millimetres < 5000; ++millimetres) {
    EXPECT_EQ(*readSi(std::to_string(millimetres) + " mm", Dimension::Length),
              *valueOfNumber(std::to_string(millimetres / 1000) + "." +
                             std::to_string(1000 + millimetres % 1000).substr(1)));
  }
}

TEST(UcumTest, QuantitiesOfTheJobFileRead) {
  EXPECT_EQ(*readSi("130 mm", Dimension::Length), 0.13);
  EXPECT_EQ(*readSi("-5 deg", Dimension::Angle), -5 * 0.017453292519943295);
  EXPECT_EQ(*readSi("4500 kg", Dimension::Mass), 4500.0);
  EXPECT_EQ(*readSi("2500 [psi]", Dimension::Pressure), 2500 * 6894.757293168361);
  EXPECT_EQ(*readSi("0.25 %", Dimension::Number), 0.0025);
  EXPECT_EQ(*readSi("9.80665 m/s2", Dimension::Acceleration), 9.80665);
  EXPECT_EQ(*readSi("2048 1", Dimension::Number), 2048.0);
  EXPECT_EQ(readQuantity<Dimension::AngularSpeed>("8 deg/s")->inSi(), 8 * 0.017453292519943295);
  EXPECT_EQ(readQuantity<Dimension::Mass>("1e3 kg")->inKilograms(), 1000.0);
}

TEST(UcumTest, WhatIsNoNumberSpaceAndCodeIsMalformed) {
  for (const char* text : {"",
                           " ",
                           "130",
                           "130mm",
                           "130  mm",
                           " 130 mm",
                           "130\tmm",
                           "130 ",
                           "mm",
                           "+5 mm",
                           ".5 m",
                           "5. m",
                           "05 m",
                           "0x10 m",
                           "1,5 m",
                           "1e m",
                           "1e+ m",
                           "nan m",
                           "inf m",
                           "Infinity m",
                           "-inf m",
                           "NaN m",
                           "- 5 m",
                           "--5 m",
                           "1_000 m",
                           "1'000 m",
                           "\xEF\xBB\xBF"
                           "5 m",
                           "\xE2\x88\x92"
                           "5 m"}) {
    EXPECT_EQ(codeOf(readSi(text, Dimension::Length)), "quantity-malformed") << '"' << text << '"';
  }
}

TEST(UcumTest, UnknownCodesAreRefused) {
  for (const char* text : {"5 M", "5 psi", "5 KG", "5 lb", "5 \xC2\xB0", "5 m ", "5 m m", "5 kilogram"}) {
    EXPECT_EQ(codeOf(readSi(text, Dimension::Length)), "unit-unknown") << '"' << text << '"';
  }
}

TEST(UcumTest, WrongDimensionNamesBoth) {
  const Expected<double> read = readSi("130 bar", Dimension::Length);
  ASSERT_FALSE(read);
  EXPECT_EQ(read.error().kind, ErrorKind::InvalidInput);
  EXPECT_EQ(read.error().message.code, "unit-wrong-dimension");
  std::string values;
  for (const auto& [name, value] : read.error().message.values)
    values += name + "=" + std::get<std::string>(value) + ";";
  EXPECT_NE(values.find("dimension=pressure;"), std::string::npos) << values;
  EXPECT_NE(values.find("expected=length;"), std::string::npos) << values;
}

TEST(UcumTest, NumbersBeyondADoubleAreAnError) {
  for (const char* text : {"1e309 m", "-1e309 m", "1e308 [psi]", "1e999999999999 m", "1e-400 m"}) {
    const Dimension dimension = std::string(text).ends_with('m') ? Dimension::Length : Dimension::Pressure;
    EXPECT_EQ(codeOf(readSi(text, dimension)), "number-out-of-range") << text;
  }
}

TEST(UcumTest, ScannerTakesTheLongestPrefixOfTheGrammar) {
  const std::vector<std::pair<std::string, std::size_t>> cases = {
      {"0", 1},  {"-0", 2},  {"00", 1},    {"12.5", 4}, {"12.", 2},    {"1e5", 3},    {"1E-05", 5},
      {"1e", 1}, {"1e+", 1}, {"-", 0},     {"", 0},     {"1.5e3x", 5}, {"-1.2.3", 4}, {"1e5.5", 3},
      {"+1", 0}, {".1", 0},  {"0.0e0", 5}, {"nan", 0},  {"-inf", 0},   {"0x1", 1}};
  for (const auto& [text, length] : cases) EXPECT_EQ(scanNumber(text), length) << text;
}

TEST(NumberTest, OnePassReadsWhatTwoRead) {
  Random random(6);
  int numbers = 0;
  for (int count = 0; count < 200000; ++count) {
    constexpr std::string_view kCharacters = "0123456789012345678901234567890123456789.-eE+,";
    std::string text;
    for (auto length = random.bits() % 24; length > 0; --length)
      text += kCharacters[random.bits() % kCharacters.size()];
    const LeadingNumber read = leadingNumber(text);
    ASSERT_EQ(read.length, scanNumber(text)) << text;
    if (read.length == 0) {
      ASSERT_EQ(read.value, std::nullopt) << text;
      continue;
    }
    ++numbers;
    const std::optional<double> value = valueOfNumber(std::string_view(text).substr(0, read.length));
    ASSERT_EQ(read.value, value) << text;
    ASSERT_EQ(std::signbit(read.value.value_or(1)), std::signbit(value.value_or(1))) << text;
  }
  EXPECT_GT(numbers, 100000);
}

TEST(UcumTest, WrittenQuantitiesReadBackEqual) {
  Random random(20260101);
  for (const Unit& unit : allUnits()) {
    for (int draw = 0; draw < 2000; ++draw) {
      const double value =
          std::round(random.uniform(-1e6, 1e6)) * std::pow(10.0, std::floor(random.uniform(-6, 3)));
      const double value_si = unit.toSi(value);
      const std::string text = writeQuantity(value_si, unit.ucum);
      ASSERT_EQ(*readSi(text, unit.dimension), value_si) << text;
    }
  }
}

TEST(UcumTest, AnySiValueReadsBackWithinARounding) {
  Random random(20260102);
  for (const Unit& unit : allUnits()) {
    for (int draw = 0; draw < 2000; ++draw) {
      const double value_si = random.normal() * std::pow(10.0, random.uniform(-8, 8));
      const double offset_si = std::abs(unit.toSi(0.0));
      const double read = *readSi(writeQuantity(value_si, unit.ucum), unit.dimension);
      // Two roundings, at the size of the larger of value and offset.
      EXPECT_NEAR(read, value_si, 4.5e-16 * std::max(std::abs(value_si), offset_si)) << unit.ucum;
      if (unit.toSi(1.0) == 1.0) {
        EXPECT_EQ(read, value_si) << unit.ucum;
      }
    }
  }
}

TEST(UcumTest, WritesNoMoreDigitsThanNeeded) {
  EXPECT_EQ(writeQuantity(2.55, "m"), "2.55 m");
  EXPECT_EQ(writeQuantity(0.13, "mm"), "130 mm");
  EXPECT_EQ(writeQuantity(313.15, "Cel"), "40 Cel");
  EXPECT_EQ(writeQuantity(0.0025, "%"), "0.25 %");
  EXPECT_EQ(writeQuantity(8 * 0.017453292519943295, "deg"), "8 deg");
  EXPECT_EQ(writeQuantity(400e5, "bar"), "400 bar");
  EXPECT_EQ(writeQuantity(100000.0, "kg"), "100000 kg");
  EXPECT_EQ(writeQuantity(-0.0, "kg"), "0 kg");
  EXPECT_EQ(writeQuantity(1.5e-12, "V"), "1.5e-12 V");
}

// 1 kg = 2.2046 lb, 1 bar = 14.504 psi, 1 in = 25.4 mm (NIST SP 811 appendix B).
TEST(UcumTest, AmountsShowInUsCustomaryUnitsAndBack) {
  const auto show = [](Amount amount, UnitSystem system) {
    const Amount shown = inSystem(amount, system);
    const double scale = std::pow(10.0, shown.decimals);
    return writeNumber(std::round(shown.value * scale) / scale) + " " + shown.ucum + " " +
           std::to_string(shown.decimals);
  };
  EXPECT_EQ(show({1987, "kg", 0}, UnitSystem::UsCustomary), "4381 [lb_av] 0");
  EXPECT_EQ(show({88.0, "bar", 1}, UnitSystem::UsCustomary), "1276 [psi] 0");
  EXPECT_EQ(show({130, "mm", 0}, UnitSystem::UsCustomary), "5.12 [in_i] 2");
  EXPECT_EQ(show({40, "Cel", 0}, UnitSystem::UsCustomary), "104 [degF] 0");
  EXPECT_EQ(show({3.25, "m", 2}, UnitSystem::UsCustomary), "10.66 [ft_i] 2");
  EXPECT_EQ(show({104, "[degF]", 0}, UnitSystem::Metric), "40 Cel 1");
  EXPECT_EQ(show({1000, "[lb_av]", 0}, UnitSystem::Metric), "453.6 kg 1");
  EXPECT_EQ(show({88, "bar", 0}, UnitSystem::Metric), "88 bar 0");
  EXPECT_EQ(show({3, "deg", 1}, UnitSystem::UsCustomary), "3 deg 1");
}

TEST(UcumTest, ShownDecimalsNeitherLoseNorInventADigit) {
  for (const auto system : {UnitSystem::Metric, UnitSystem::UsCustomary}) {
    for (const Unit& unit : allUnits()) {
      for (int decimals = 0; decimals < 6; ++decimals) {
        const Amount shown = inSystem({12.3, std::string(unit.ucum), decimals}, system);
        const Unit other = *findUnit(shown.ucum);
        const double old_step = std::pow(10.0, -decimals) * (unit.toSi(1.0) - unit.toSi(0.0));
        const double new_step = std::pow(10.0, -shown.decimals) * (other.toSi(1.0) - other.toSi(0.0));
        if (shown.decimals > 0) {
          EXPECT_LE(new_step, old_step * (1 + 1e-9)) << unit.ucum;
        }
        EXPECT_LT(old_step, shown.decimals > 0 ? 10.0001 * new_step : HUGE_VAL) << unit.ucum;
      }
    }
  }
}

}  // namespace
}  // namespace hingepin
