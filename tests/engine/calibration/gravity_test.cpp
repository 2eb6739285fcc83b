// SPDX-License-Identifier: Apache-2.0
#include "engine/calibration/gravity.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/reference/normal_gravity.h"

namespace hingepin::calibration {
namespace {

double gravity(double latitude_deg, double height_m) {
  return gravityAt(Angle::fromDegrees(latitude_deg), Length::fromMetres(height_m))
      .value()
      .value.inMetresPerSecondSquared();
}

TEST(GravityTest, NormalGravityIsThatOfGrs80) {
  // Check values have ten decimals.
  for (const auto& row : reference::kNormalGravity)
    EXPECT_NEAR(gravity(row.latitude_deg, 0), row.grs80_at_sea_level, 0.6e-10);
  EXPECT_NEAR(gravity(0, 0), reference::kGrs80Equator, 0.6e-10);
  EXPECT_NEAR(gravity(90, 0), reference::kGrs80Pole, 1.1e-10);  // derived there, ten decimals
  EXPECT_NEAR(gravity(45, 0), reference::kGrs80At45, 0.6e-9);   // nine decimals
}

TEST(GravityTest, BothHemispheresAreAlike) {
  for (const double latitude : {5.0, 33.3, 71.0}) EXPECT_EQ(gravity(latitude, 250), gravity(-latitude, 250));
}

TEST(GravityTest, HeightTakesTheFreeAirGradientOff) {
  EXPECT_NEAR(gravity(45, 0) - gravity(45, 1000), 3.086e-3, 1e-12);
  EXPECT_NEAR(gravity(45, -100) - gravity(45, 0), 3.086e-4, 1e-12);
}

TEST(GravityTest, WelmecsFormulaAgreesWithinItsRounding) {
  // An older ellipsoid, seven digits: 9e-6 m/s2 apart all over, and 1e-9 /s2 in the gradient.
  for (const auto& row : reference::kNormalGravity)
    EXPECT_NEAR(gravity(row.latitude_deg, row.height_m), row.welmec_at_height, 1e-5);
}

TEST(GravityTest, DoubtIsFarBelowThatOfNoPlaceAtAll) {
  const auto here = gravityAt(Angle::fromDegrees(44.5), Length::fromMetres(310)).value();
  EXPECT_GE(here.standard_uncertainty.inMetresPerSecondSquared(), 3e-4);
  EXPECT_LE(here.standard_uncertainty.inMetresPerSecondSquared(), 0.015 / 10);
}

TEST(GravityTest, PlacesThatAreNoneAreRefused) {
  const auto code = [](double latitude_deg, double height_m) {
    const auto here = gravityAt(Angle::fromDegrees(latitude_deg), Length::fromMetres(height_m));
    return here ? std::string("taken") : here.error().message.code;
  };
  EXPECT_EQ(code(90, 0), "taken");
  EXPECT_EQ(code(-90, 0), "taken");
  EXPECT_EQ(code(90.1, 0), "latitude-out-of-range");
  EXPECT_EQ(code(std::nan(""), 0), "latitude-out-of-range");
  EXPECT_EQ(code(45, 9000), "height-out-of-range");
  EXPECT_EQ(code(45, -1000), "height-out-of-range");
  EXPECT_EQ(code(45, std::nan("")), "height-out-of-range");
}

}  // namespace
}  // namespace hingepin::calibration
