// SPDX-License-Identifier: Apache-2.0
#include "engine/proof/history.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <vector>

#include "engine/statistics/distributions.h"
#include "tests/engine/proof/drift_trial.h"
#include "tests/reference/control_charts.h"

namespace hingepin::proof {
namespace {

namespace charts = reference::control_charts;

TEST(ControlChartTest, IndividualsGiveTheLimitsOfTheHandbook) {
  const Baseline baseline = baselineOf(charts::kFlowRates).value();
  EXPECT_NEAR(baseline.centre, charts::kFlowMean, 0.005);
  EXPECT_NEAR(baseline.sigma, charts::kFlowMeanRange / 1.128, 0.0001);
  const ControlChart chart = shewhartChart(charts::kFlowRates, baseline);
  EXPECT_NEAR(chart.high, charts::kFlowHigh, 0.0002);
  EXPECT_NEAR(chart.low, charts::kFlowLow, 0.0002);
  EXPECT_TRUE(chart.signals.empty());
}

TEST(ControlChartTest, MovingAverageIsThatOfTheHandbook) {
  std::vector<double> values;
  for (const auto& point : charts::kEwma) values.push_back(point.value);
  const ControlChart chart =
      ewmaChart(values, {charts::kEwmaCentre, charts::kEwmaSigma}, charts::kEwmaWeight);
  // The page rounds the root in its limits to 0.4201.
  EXPECT_NEAR(chart.high, charts::kEwmaHigh, 0.0002);
  EXPECT_NEAR(chart.low, charts::kEwmaLow, 0.0002);
  for (std::size_t i = 0; i < values.size(); ++i)
    EXPECT_NEAR(chart.shown[i], charts::kEwma[i].shown, 0.0051) << i;  // printed to two decimals
  EXPECT_TRUE(chart.signals.empty());
}

TEST(ControlChartTest, CumulativeSumsSignalWhereTheHandbookSays) {
  std::vector<double> values;
  for (const auto& point : charts::kCusum) values.push_back(point.value);
  const CusumChart chart =
      cusumChart(values, {charts::kCusumTarget, charts::kCusumSigma},
                 charts::kCusumSlack / charts::kCusumSigma, charts::kCusumDecision / charts::kCusumSigma);
  for (std::size_t i = 0; i < values.size(); ++i) {
    EXPECT_NEAR(chart.high_sums[i], charts::kCusum[i].high, 0.0055) << i;  // two decimals and ties
    EXPECT_NEAR(chart.low_sums[i], charts::kCusum[i].low, 0.0055) << i;
  }
  ASSERT_FALSE(chart.signals.empty());
  EXPECT_EQ(chart.signals.front() + 1, std::size_t(charts::kCusumFirstSignal));
}

TEST(ControlChartTest, AJumpOfTheZeroIsSignalledByAllThree) {
  std::vector<double> zeros = {1, -1, 2, 0, -2, 1, 0, -1, 1, 0};
  const Baseline baseline = baselineOf(zeros).value();
  zeros.insert(zeros.end(), {9, 8, 10, 9});
  EXPECT_EQ(shewhartChart(zeros, baseline).signals.front(), 10U);
  EXPECT_FALSE(ewmaChart(zeros, baseline).signals.empty());
  EXPECT_FALSE(cusumChart(zeros, baseline).signals.empty());
}

TEST(ControlChartTest, ValuesThatAreAllAlikeGiveNoLimits) {
  EXPECT_EQ(baselineOf(std::vector<double>{5, 5, 5}).error().message.code, "history-without-scatter");
  EXPECT_EQ(baselineOf(std::vector<double>{5}).error().message.code, "history-too-short");
}

TEST(TrendTest, DriftOfAPlainLineIsThatOfTheTextbook) {
  // Slope and its uncertainty worked by hand: x - mean -1.5 .. 1.5, sum of squares 5; residuals +-0.05.
  const std::vector<Check> checks = {
      {.at = 0, .error = 0.0}, {.at = 1, .error = 0.1}, {.at = 2, .error = 0.3}, {.at = 3, .error = 0.4}};
  const Trend trend = trendOf(checks).value();
  EXPECT_NEAR(trend.drift, 0.14, 1e-12);
  const double residuals = 0.01 * 0.01 + 0.03 * 0.03 + 0.03 * 0.03 + 0.01 * 0.01;
  EXPECT_NEAR(trend.scatter, std::sqrt(residuals / 2), 1e-12);
  EXPECT_NEAR(trend.drift_u, trend.scatter / std::sqrt(5.0), 1e-12);
  EXPECT_NEAR(trend.error, 0.2 + 0.14 * 1.5, 1e-12);
  EXPECT_EQ(trend.degrees_of_freedom, 2);
}

TEST(TrendTest, SettingTheScaleChangesWhereItStandsNotHowItDrifts) {
  std::vector<Check> checks;
  for (int i = 0; i < 8; ++i)
    checks.push_back({.at = double(i), .error = 0.1 * i - (i >= 4 ? 0.4 : 0.0), .set_before = i == 4});
  const Trend trend = trendOf(checks).value();
  EXPECT_NEAR(trend.drift, 0.1, 1e-12);
  EXPECT_NEAR(trend.error, 0.3, 1e-12);
  EXPECT_EQ(trend.degrees_of_freedom, 5);
  EXPECT_NEAR(*leavingOf(trend, 1.0, 0.95).expected, 7 + 7.0, 1e-9);
}

TEST(TrendTest, TooFewChecksAreToldHowManyItTakes) {
  const std::vector<Check> two = {{.at = 0}, {.at = 1}};
  EXPECT_EQ(trendOf(two).error().kind, ErrorKind::Insufficient);
  const std::vector<Check> same = {{.at = 1}, {.at = 1}, {.at = 1}};
  EXPECT_EQ(trendOf(same).error().message.code, "history-at-one-time");
  const std::vector<Check> back = {{.at = 2}, {.at = 1}, {.at = 3}};
  EXPECT_EQ(trendOf(back).error().kind, ErrorKind::InvalidInput);
}

TEST(LeavingTest, TheBandEndsWhereTheEdgesOfTheLineReachTheLimit) {
  const Trend trend{.drift = 0.1,
                    .drift_u = 0.01,
                    .error = 0.2,
                    .error_u = 0.05,
                    .covariance = 0.0002,
                    .scatter = 0.1,
                    .degrees_of_freedom = 6,
                    .last_at = 10};
  const Leaving leaving = leavingOf(trend, 1.0, 0.95);
  const double k = statistics::studentQuantile(0.975, 6);
  const auto edge = [&](double at, double side) {
    const double t = at - trend.last_at;
    return trend.error + trend.drift * t +
           side * k * std::sqrt(0.05 * 0.05 + 2 * t * 0.0002 + t * t * 0.01 * 0.01);
  };
  EXPECT_NEAR(*leaving.expected, 18.0, 1e-9);
  EXPECT_NEAR(edge(*leaving.earliest, 1.0), 1.0, 1e-9);
  EXPECT_NEAR(edge(*leaving.latest, -1.0), 1.0, 1e-9);
  EXPECT_LT(*leaving.earliest, *leaving.expected);
  EXPECT_GT(*leaving.latest, *leaving.expected);
}

TEST(LeavingTest, AScaleBeyondItsLimitHasLeftAndOneWithoutPlainDriftMayNever) {
  const Trend out{
      .drift = 0.1, .drift_u = 0.001, .error = 1.2, .error_u = 0.01, .degrees_of_freedom = 4, .last_at = 3};
  EXPECT_EQ(*leavingOf(out, 1.0, 0.95).earliest, 3.0);
  EXPECT_EQ(*leavingOf(out, 1.0, 0.95).latest, 3.0);
  const Trend still{.drift = 0.001, .drift_u = 0.02, .error = 0.0, .error_u = 0.02, .degrees_of_freedom = 4};
  EXPECT_FALSE(leavingOf(still, 1.0, 0.95).latest);
  EXPECT_TRUE(leavingOf(still, 1.0, 0.95).earliest);
}

TEST(LeavingTest, TheBandHoldsTheTrueTimeAtItsStatedRate) {
  // 4000 scales: the rate of 95 % is known to 0.35 % (one standard deviation); more than four of them are
  // let.
  const int scales = 4000;
  std::uint64_t part = 0;
  for (const DriftCase& each :
       {DriftCase{.checks = 3, .drift_per_month = 0.1, .scatter = 0.03},
        DriftCase{.checks = 5, .drift_per_month = 0.1, .scatter = 0.05},
        DriftCase{.checks = 12, .settings = 3, .drift_per_month = 0.1, .scatter = 0.1}}) {
    const DriftRate rate = runDrift(each, scales, 0.95, Random(20261130).fork(++part));
    std::printf("%d checks, %d settings: %.2f %% held (%d early, %d late), %d of %d bands with both ends\n",
                each.checks, each.settings, 100 * rate.share(), rate.early, rate.late, rate.bounded,
                rate.scales);
    EXPECT_EQ(rate.scales, scales);
    EXPECT_GT(rate.share(), 0.935);
    EXPECT_LT(rate.share(), 0.985);
  }
}

TEST(StaircaseTest, TheIntervalGrowsWithAMarginAndShrinksOnAFailure) {
  const Staircase rule{.shortest = 30, .longest = 400};
  EXPECT_DOUBLE_EQ(nextInterval(100, 0.5, 1.0, rule), 125);
  EXPECT_DOUBLE_EQ(nextInterval(100, -0.9, 1.0, rule), 100);
  EXPECT_DOUBLE_EQ(nextInterval(100, 1.1, 1.0, rule), 50);
  EXPECT_DOUBLE_EQ(nextInterval(380, 0.1, 1.0, rule), 400);
  EXPECT_DOUBLE_EQ(nextInterval(40, -2.0, 1.0, rule), 30);
}

}  // namespace
}  // namespace hingepin::proof
