// SPDX-License-Identifier: Apache-2.0
#include "engine/calibration/viscosity.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>
#include <set>

#include "tests/reference/oil_viscosity.h"

namespace hingepin::calibration {
namespace {

RelativeEstimate at(const Oil& oil, double celsius) {
  return kinematicViscosity(oil, Temperature::fromCelsius(celsius)).value();
}

TEST(ViscosityTest, Vg46FollowsThePublishedLaw) {
  const Oil oil = oilOfGrade(46).value();
  for (const auto& row : reference::kVg46) {
    EXPECT_NEAR(at(oil, row.temperature_Cel).value, row.viscosity_mm2_s, 0.6e-4);  // four decimals
    const double kelvin = row.temperature_Cel + 273.15;
    const double walther =
        std::pow(10.0, std::pow(10.0, reference::kWaltherA - reference::kWaltherB * std::log10(kelvin))) -
        0.7;
    // A and B have ten digits; two powers of ten make 1e-7 of that when cold.
    EXPECT_NEAR(at(oil, row.temperature_Cel).value, walther, 2e-7 * walther);
  }
}

TEST(ViscosityTest, EveryGradeOfTheSeriesPassesThroughItsMidpoint) {
  for (const auto& grade : reference::kIso3448) {
    const auto oil = oilOfGrade(grade.number);
    ASSERT_TRUE(oil) << grade.number;
    EXPECT_NEAR(at(*oil, 40).value, grade.midpoint_mm2_s, 1e-12 * grade.midpoint_mm2_s);
    EXPECT_NEAR(at(*oil, 40).relative_u, 0.10 / std::sqrt(3.0), 1e-12);
  }
}

TEST(ViscosityTest, OtherGradesAreRefused) {
  std::set<int> series;
  for (const auto& grade : reference::kIso3448) series.insert(grade.number);
  for (int grade = -10; grade <= 4000; ++grade)
    EXPECT_EQ(oilOfGrade(grade).has_value(), series.contains(grade));
  EXPECT_EQ(oilOfGrade(45).error().message.code, "oil-grade-unknown");
}

TEST(ViscosityTest, ThickerGradesAreThickerAtEveryTemperatureAndAllThinWithHeat) {
  for (double celsius = -20; celsius <= 110; celsius += 5) {
    double thinner = 0.0;
    for (const auto& grade : reference::kIso3448) {
      const Oil oil = oilOfGrade(grade.number).value();
      const double here = at(oil, celsius).value;
      EXPECT_GT(here, thinner) << grade.number << " at " << celsius;
      thinner = here;
      if (celsius > -20) {
        EXPECT_LT(here, at(oil, celsius - 5).value);
      }
    }
  }
}

TEST(ViscosityTest, DoubtIsWhatDrawnOilsScatter) {
  // By drawing the oil's two points, JCGM 101: 20000 draws give the standard deviation to 0.5 %, and the
  // doubt is small enough to be linear to a few per cent.
  const Oil oil = oilOfGrade(46).value();
  std::mt19937_64 random(11);
  const auto normal = [&] {
    const double u = static_cast<double>((random() >> 11) + 1) * 0x1p-53,
                 v = static_cast<double>(random() >> 11) * 0x1p-53;
    return std::sqrt(-2.0 * std::log(u)) * std::cos(2.0 * std::numbers::pi * v);
  };
  for (const double celsius : {10.0, 60.0, 75.0}) {
    constexpr int kDraws = 20000;
    double sum = 0, squares = 0, ratio_sum = 0, ratio_squares = 0;
    for (int i = 0; i < kDraws; ++i) {
      Oil drawn = oil;
      // A quarter of the doubt, so that the curvature of the law does not matter.
      drawn.at_40_Cel_mm2_s *= std::exp(0.25 * oil.at_40_Cel_relative_u * normal());
      drawn.at_100_Cel_mm2_s *= std::exp(0.25 * oil.at_100_Cel_relative_u * normal());
      const double here = std::log(at(drawn, celsius).value);
      const double ratio = here - std::log(at(drawn, 50).value);
      sum += here;
      squares += here * here;
      ratio_sum += ratio;
      ratio_squares += ratio * ratio;
    }
    const auto scatter = [](double total, double total_squares) {
      return 4.0 * std::sqrt(total_squares / kDraws - std::pow(total / kDraws, 2));
    };
    EXPECT_NEAR(scatter(sum, squares) / at(oil, celsius).relative_u, 1.0, 0.03);
    const auto ratio =
        viscosityRatio(oil, Temperature::fromCelsius(celsius), Temperature::fromCelsius(50)).value();
    EXPECT_NEAR(scatter(ratio_sum, ratio_squares) / ratio.relative_u, 1.0, 0.03);
    EXPECT_NEAR(ratio.value, at(oil, celsius).value / at(oil, 50).value, 1e-12 * ratio.value);
  }
}

TEST(ViscosityTest, RatioAtOneTemperatureIsCertain) {
  const auto ratio =
      viscosityRatio(oilOfGrade(32).value(), Temperature::fromCelsius(55), Temperature::fromCelsius(55));
  EXPECT_EQ(ratio->value, 1.0);
  EXPECT_EQ(ratio->relative_u, 0.0);
}

TEST(ViscosityTest, TemperaturesOutsideTheLawAreRefused) {
  const Oil oil = oilOfGrade(46).value();
  EXPECT_TRUE(kinematicViscosity(oil, Temperature::fromCelsius(-20)));
  EXPECT_TRUE(kinematicViscosity(oil, Temperature::fromCelsius(110)));
  for (const double celsius : {-21.0, 111.0, -300.0, std::nan("")}) {
    const auto none = kinematicViscosity(oil, Temperature::fromCelsius(celsius));
    ASSERT_FALSE(none);
    EXPECT_EQ(none.error().message.code, "oil-temperature-out-of-range");
    EXPECT_FALSE(viscosityRatio(oil, Temperature::fromCelsius(50), Temperature::fromCelsius(celsius)));
  }
}

}  // namespace
}  // namespace hingepin::calibration
