// SPDX-License-Identifier: Apache-2.0
#include "engine/proof/history.h"

#include <Eigen/Core>
#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "engine/statistics/distributions.h"
#include "engine/statistics/least_squares.h"

namespace hingepin::proof {
namespace {

/// d2 of two values: the mean range of two normal values over their standard deviation, 2 / sqrt(pi).
constexpr double kMeanRangeOfTwo = 1.128;

/// The first time >= 0 after the last check at which error + drift t + side k u(t) is at the bound or beyond,
/// in the direction of the bound. Squared, both edges of the band are one quadratic.
std::optional<double> firstReach(const Trend& trend, double bound, double side, double k) {
  const double direction = bound > 0 ? 1.0 : -1.0;
  const auto beyond = [&](double t) {
    const double variance =
        trend.error_u * trend.error_u + 2.0 * t * trend.covariance + t * t * trend.drift_u * trend.drift_u;
    return direction * (trend.error + trend.drift * t - bound) +
           side * k * std::sqrt(std::max(variance, 0.0));
  };
  if (beyond(0.0) >= 0.0) return 0.0;
  const double off = trend.error - bound;
  const double a = trend.drift * trend.drift - k * k * trend.drift_u * trend.drift_u;
  const double b = off * trend.drift - k * k * trend.covariance;
  const double c = off * off - k * k * trend.error_u * trend.error_u;
  std::array<double, 2> roots{};
  if (a == 0.0) {
    if (b == 0.0) return std::nullopt;
    roots = {-0.5 * c / b, -0.5 * c / b};
  } else {
    const double discriminant = b * b - a * c;
    // Without a doubt both roots are one, and rounding must not part them.
    if (discriminant < -1e-12 * b * b) return std::nullopt;
    const double q = -(b + std::copysign(std::sqrt(std::max(discriminant, 0.0)), b));
    roots = {q / a, q == 0.0 ? 0.0 : c / q};
  }
  std::ranges::sort(roots);
  for (const double root : roots) {
    // One root belongs to the other edge; there this edge is off by twice the band.
    if (root > 0.0 && std::abs(beyond(root)) <= 1e-6 * std::abs(bound)) return root;
  }
  return std::nullopt;
}

std::optional<double> sooner(std::optional<double> a, std::optional<double> b) {
  return a && b ? std::min(*a, *b) : (a ? a : b);
}

}  // namespace

Expected<Trend> trendOf(std::span<const Check> checks) {
  const auto count = static_cast<Eigen::Index>(checks.size());
  Eigen::Index settings = checks.empty() ? 0 : 1;
  for (std::size_t i = 1; i < checks.size(); ++i) {
    if (checks[i].set_before) ++settings;
    if (!(checks[i].at >= checks[i - 1].at)) return fail(ErrorKind::InvalidInput, "history-disordered");
  }
  if (count < settings + 2)
    return fail(ErrorKind::Insufficient, "history-too-short",
                {{"count", Amount{double(count), "1"}}, {"needed", Amount{double(settings + 2), "1"}}});

  const double last_at = checks.back().at;
  Eigen::MatrixXd design = Eigen::MatrixXd::Zero(count, settings + 1);
  Eigen::VectorXd errors(count), u(count);
  Eigen::Index setting = 0;
  for (Eigen::Index i = 0; i < count; ++i) {
    const Check& check = checks[static_cast<std::size_t>(i)];
    if (i > 0 && check.set_before) ++setting;
    design(i, setting) = 1.0;
    design(i, settings) = check.at - last_at;
    errors(i) = check.error;
    u(i) = check.relative_u;
  }
  const auto fit = statistics::fitWeighted(design, errors, u, statistics::NoiseScale::FromResiduals);
  if (!fit && fit.error().kind == ErrorKind::RankDeficient)
    return fail(ErrorKind::Insufficient, "history-at-one-time");
  if (!fit) return std::unexpected(fit.error());
  const Eigen::Index newest = settings - 1;
  return Trend{.drift = fit->coefficients(settings),
               .drift_u = std::sqrt(fit->covariance(settings, settings)),
               .error = fit->coefficients(newest),
               .error_u = std::sqrt(fit->covariance(newest, newest)),
               .covariance = fit->covariance(newest, settings),
               .scatter = fit->residual_scale,
               .degrees_of_freedom = fit->degrees_of_freedom,
               .last_at = last_at};
}

Leaving leavingOf(const Trend& trend, double limit, double coverage) {
  const double k = statistics::studentQuantile(0.5 + 0.5 * coverage, trend.degrees_of_freedom);
  const auto reach = [&](double side, double factor) {
    std::optional<double> after =
        sooner(firstReach(trend, limit, side, factor), firstReach(trend, -limit, side, factor));
    if (after) *after += trend.last_at;
    return after;
  };
  return {.expected = reach(0.0, 0.0), .earliest = reach(1.0, k), .latest = reach(-1.0, k)};
}

double nextInterval(double interval, double error, double limit, const Staircase& rule) {
  const double off = std::abs(error);
  const double factor = off > limit ? rule.shorten : off <= rule.safe_share * limit ? rule.lengthen : 1.0;
  return std::clamp(interval * factor, rule.shortest, rule.longest);
}

Expected<Baseline> baselineOf(std::span<const double> values) {
  if (values.size() < 2)
    return fail(ErrorKind::Insufficient, "history-too-short",
                {{"count", Amount{double(values.size()), "1"}}, {"needed", Amount{2, "1"}}});
  double ranges = 0.0;
  for (std::size_t i = 1; i < values.size(); ++i) ranges += std::abs(values[i] - values[i - 1]);
  if (ranges == 0.0) return fail(ErrorKind::Insufficient, "history-without-scatter");
  return Baseline{std::accumulate(values.begin(), values.end(), 0.0) / double(values.size()),
                  ranges / double(values.size() - 1) / kMeanRangeOfTwo};
}

ControlChart shewhartChart(std::span<const double> values, const Baseline& baseline, double width) {
  return ewmaChart(values, baseline, 1.0, width);
}

ControlChart ewmaChart(std::span<const double> values, const Baseline& baseline, double weight,
                       double width) {
  const double half = width * baseline.sigma * std::sqrt(weight / (2.0 - weight));
  ControlChart chart{.low = baseline.centre - half, .high = baseline.centre + half};
  double mean = baseline.centre;
  for (const double value : values) {
    mean = weight * value + (1.0 - weight) * mean;
    if (mean < chart.low || mean > chart.high) chart.signals.push_back(chart.shown.size());
    chart.shown.push_back(mean);
  }
  return chart;
}

CusumChart cusumChart(std::span<const double> values, const Baseline& baseline, double slack,
                      double decision) {
  CusumChart chart{.decision = decision * baseline.sigma};
  double high = 0.0, low = 0.0;
  for (const double value : values) {
    high = std::max(0.0, high + value - baseline.centre - slack * baseline.sigma);
    low = std::max(0.0, low + baseline.centre - value - slack * baseline.sigma);
    if (high > chart.decision || low > chart.decision) chart.signals.push_back(chart.high_sums.size());
    chart.high_sums.push_back(high);
    chart.low_sums.push_back(low);
  }
  return chart;
}

}  // namespace hingepin::proof
