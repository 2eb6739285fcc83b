// SPDX-License-Identifier: Apache-2.0
#include "engine/simulator/oil.h"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>
#include <string>

namespace hingepin::simulator {
namespace {

// Source of the table: its own header lines.
TEST(OilTest, ViscosityFollowsThePublishedTable) {
  std::ifstream table(HINGEPIN_REFERENCE_DIR "/simulator/oil_viscosity_iso_vg46.csv");
  ASSERT_TRUE(table);
  const Oil oil{46.0, 6.8};
  int rows = 0;
  for (std::string line; std::getline(table, line);) {
    if (line.empty() || line[0] == '#' || line[0] == 't') continue;
    std::istringstream cells(line);
    double temperature_Cel = 0.0;
    double expected = 0.0;
    char comma = 0;
    ASSERT_TRUE(cells >> temperature_Cel >> comma >> expected);
    // The table has four decimals and its constants ten digits; the double logarithm multiplies the latter's
    // rounding by up to 100 at the cold end.
    EXPECT_NEAR(viscosity(oil, temperature_Cel), expected, 1e-4 + 2e-7 * expected)
        << temperature_Cel << " Cel";
    ++rows;
  }
  EXPECT_EQ(rows, 13);
}

// ISO 3448: the grade's number is the midpoint at 40 Cel (from memory).
TEST(OilTest, AGradeIsItsViscosityAtFortyCelsius) {
  for (const double grade : {22.0, 32.0, 46.0, 68.0, 100.0}) {
    EXPECT_NEAR(viscosity(mineralOil(grade), 40.0), grade, 1e-9 * grade);
  }
  // Typical of viscosity index 100 (from memory): 6.8 mm2/s at 100 Cel for VG 46, 8.7 for VG 68; a percent
  // covers the spread between data sheets.
  EXPECT_NEAR(mineralOil(46.0).at_100_Cel_mm2_per_s, 6.8, 0.07);
  EXPECT_NEAR(mineralOil(68.0).at_100_Cel_mm2_per_s, 8.7, 0.09);
}

TEST(OilTest, WarmerIsThinnerAndAHigherGradeThicker) {
  for (double cel = -20.0; cel < 95.0; cel += 5.0) {
    EXPECT_GT(viscosity(mineralOil(46.0), cel), viscosity(mineralOil(46.0), cel + 5.0));
    EXPECT_GT(viscosity(mineralOil(68.0), cel), viscosity(mineralOil(46.0), cel));
  }
}

}  // namespace
}  // namespace hingepin::simulator
