// SPDX-License-Identifier: Apache-2.0
#include "engine/statistics/distributions.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <vector>

#include "engine/statistics/uncertainty.h"
#include "tests/reference/gum.h"

namespace hingepin::statistics {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
constexpr double kNan = std::numeric_limits<double>::quiet_NaN();

TEST(DistributionsTest, CoverageFactorsAreThoseOfGumTableG2) {
  for (const auto& row : reference::kCoverageFactors) {
    for (std::size_t column = 0; column < reference::kCoverages.size(); ++column) {
      // Half a unit of the sixth decimal, in which the table stands.
      EXPECT_NEAR(coverageFactor(reference::kCoverages[column], row.degrees_of_freedom), row.factors[column],
                  5.1e-7)
          << "nu " << row.degrees_of_freedom << " p " << reference::kCoverages[column];
    }
  }
}

TEST(DistributionsTest, QuantilesAreThoseOfJcgm106) {
  for (const auto& [probability, z] : reference::kConformanceQuantiles)
    EXPECT_NEAR(normalQuantile(probability), z, 5.1e-10);
  const double z = (reference::kZenerLimit_V - reference::kZenerValue_V) / reference::kZenerUncertainty_V;
  EXPECT_NEAR(normalCdf(z), reference::kZenerConformance, 1e-14);
}

TEST(DistributionsTest, TwoSigmaCoverageIsThatOfTheNormal) {
  EXPECT_NEAR(normalCdf(2.0) - normalCdf(-2.0), kTwoSigmaCoverage, 1e-15);
  EXPECT_NEAR(coverageFactor(kTwoSigmaCoverage, kInfinity), 2.0, 1e-14);
}

TEST(DistributionsTest, DegreesOfFreedomAreTruncatedButNotByARoundingError) {
  EXPECT_EQ(coverageFactor(0.95, 9.99), coverageFactor(0.95, 9.0));
  EXPECT_EQ(coverageFactor(0.95, 9.0 - 1e-12), coverageFactor(0.95, 9.0));
  EXPECT_EQ(coverageFactor(0.95, 0.3), coverageFactor(0.95, 1.0));
}

TEST(DistributionsTest, StudentWithOneAndTwoDegreesHasItsClosedForm) {
  for (const double t : {-30.0, -2.0, -0.1, 0.0, 0.7, 5.0, 1e4}) {
    EXPECT_NEAR(studentCdf(t, 1.0), 0.5 + std::atan(t) / M_PI, 1e-14);
    EXPECT_NEAR(studentCdf(t, 2.0), 0.5 + t / (2.0 * std::sqrt(2.0 + t * t)), 1e-14);
  }
}

TEST(DistributionsTest, ChiSquaredWithTwoDegreesIsExponential) {
  for (const double x : {1e-6, 0.1, 1.0, 10.0, 600.0}) {
    EXPECT_NEAR(chiSquaredTail(x, 2.0), std::exp(-x / 2.0), 1e-13 * std::exp(-x / 2.0));
  }
  // The familiar 5 % point with one degree of freedom is that of the normal squared.
  EXPECT_NEAR(chiSquaredQuantile(0.95, 1.0), std::pow(normalQuantile(0.975), 2), 1e-12);
}

TEST(DistributionsTest, QuantileUndoesTheDistribution) {
  for (const double p : {1e-12, 1e-4, 0.02, 0.5, 0.83, 0.999}) {
    EXPECT_NEAR(normalCdf(normalQuantile(p)), p, 1e-12 * p);
    for (const double nu : {0.7, 1.0, 2.5, 7.0, 40.3, 200.0, 1e7}) {
      EXPECT_NEAR(studentCdf(studentQuantile(p, nu), nu), p, 1e-11 * p) << p << " " << nu;
      EXPECT_NEAR(1.0 - chiSquaredTail(chiSquaredQuantile(p, nu), nu), p, 1e-12) << p << " " << nu;
    }
  }
}

TEST(DistributionsTest, StudentWithInfiniteDegreesIsNormal) {
  for (const double z : {-5.0, -1.0, 0.0, 0.3, 8.0}) EXPECT_EQ(studentCdf(z, kInfinity), normalCdf(z));
  EXPECT_NEAR(studentQuantile(0.9, kInfinity), normalQuantile(0.9), 1e-14);
  EXPECT_NEAR(studentQuantile(0.9, 1e9), normalQuantile(0.9), 1e-8);
}

TEST(DistributionsTest, EndsOfTheRangeAreInfinite) {
  EXPECT_EQ(normalQuantile(0.0), -kInfinity);
  EXPECT_EQ(normalQuantile(1.0), kInfinity);
  EXPECT_EQ(studentQuantile(0.0, 3.0), -kInfinity);
  EXPECT_EQ(studentQuantile(1.0, 3.0), kInfinity);
  EXPECT_EQ(chiSquaredQuantile(0.0, 3.0), 0.0);
  EXPECT_EQ(chiSquaredQuantile(1.0, 3.0), kInfinity);
  EXPECT_EQ(chiSquaredTail(kInfinity, 3.0), 0.0);
  EXPECT_EQ(chiSquaredTail(-1.0, 3.0), 1.0);
  EXPECT_EQ(studentCdf(-kInfinity, 3.0), 0.0);
}

TEST(DistributionsTest, ArgumentsOutsideTheirRangeGiveNan) {
  for (const double value :
       {normalQuantile(-0.1), normalQuantile(1.1), normalQuantile(kNan), studentQuantile(0.5, 0.0),
        studentQuantile(kNan, 3.0), studentQuantile(0.5, kNan), studentCdf(kNan, 3.0), studentCdf(1.0, -1.0),
        chiSquaredTail(1.0, 0.0), chiSquaredTail(kNan, 1.0), chiSquaredQuantile(2.0, 1.0),
        coverageFactor(1.2, 3.0), coverageFactor(0.95, kNan)})
    EXPECT_TRUE(std::isnan(value));
}

TEST(UncertaintyTest, IndependentContributionsAddInQuadrature) {
  const std::vector<Contribution> budget{{"a", 3.0}, {"b", 4.0}};
  const CombinedUncertainty result = combine(budget, kTwoSigmaCoverage);
  EXPECT_DOUBLE_EQ(result.standard_uncertainty, 5.0);
  EXPECT_EQ(result.degrees_of_freedom, kInfinity);
  EXPECT_NEAR(result.expanded_uncertainty, 10.0, 1e-13);
}

// Source: JCGM 100:2008 (GUM) H.1.6, end gauge: contributions in nm, effective degrees 16.7, t_99(16) = 2.92.
// From memory, unconfirmed; the contributions are rounded, so that 0.1 is what 16.7 is worth.
TEST(UncertaintyTest, EndGaugeOfGumH1HasItsEffectiveDegrees) {
  const std::vector<Contribution> budget{{"standard", 25.0, 18.0},
                                         {"difference", 9.7, 25.6},
                                         {"expansion", 2.9, 50.0},
                                         {"temperature", 16.6, 2.0}};
  const CombinedUncertainty result = combine(budget, 0.99);
  EXPECT_NEAR(result.degrees_of_freedom, 16.7, 0.1);
  EXPECT_NEAR(result.coverage_factor, 2.92, 0.005);
  EXPECT_NEAR(result.standard_uncertainty, 32.0, 0.5);
}

TEST(UncertaintyTest, OneContributionKeepsItsDegreesWhateverItsUnit) {
  for (const double u : {1e-100, 0.37, 1e100}) {
    const std::vector<Contribution> budget{{"only", u, 9.0}, {"nothing", 0.0, 1.0}};
    const CombinedUncertainty result = combine(budget, 0.95);
    EXPECT_NEAR(result.degrees_of_freedom, 9.0, 1e-12);
    EXPECT_NEAR(result.coverage_factor, 2.262157, 1e-6);
  }
}

TEST(UncertaintyTest, EffectiveDegreesLieBetweenTheSmallestAndTheSum) {
  const std::vector<Contribution> budget{{"a", 1.0, 4.0}, {"b", 1.3, 7.0}, {"c", 0.2, 30.0}};
  const double degrees = combine(budget, 0.95).degrees_of_freedom;
  EXPECT_GT(degrees, 4.0);
  EXPECT_LT(degrees, 41.0);
}

TEST(UncertaintyTest, NoContributionIsNoUncertainty) {
  for (const std::vector<Contribution>& budget : {std::vector<Contribution>{}, {{"zero", 0.0, 3.0}}}) {
    const CombinedUncertainty result = combine(budget, 0.95);
    EXPECT_EQ(result.expanded_uncertainty, 0.0);
    EXPECT_EQ(result.degrees_of_freedom, kInfinity);
  }
}

TEST(UncertaintyTest, NanIsNotHidden) {
  const std::vector<Contribution> budget{{"a", kNan, 4.0}, {"b", 1.0}};
  EXPECT_TRUE(std::isnan(combine(budget, 0.95).expanded_uncertainty));
}

}  // namespace
}  // namespace hingepin::statistics
