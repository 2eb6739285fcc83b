// SPDX-License-Identifier: Apache-2.0
#include "engine/calibration/pass_noise.h"

#include <Eigen/Cholesky>
#include <Eigen/QR>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace hingepin::calibration {
namespace {

constexpr double kLowestFrequency_Hz = 0.5;  // slower than a loader bounces on its tyres
constexpr double kHighestFrequency_Hz = 6.0;
constexpr double kLeastCycles = 1.2;
constexpr double kFrequencyStep = 1.12;
constexpr double kDecays_per_s[] = {0.1, 0.6, 1.5, 3.0};
constexpr double kMostDecay_per_s = 4.0;
constexpr double kLeastInterval = 0.3;  // of the logarithm of two bounces' frequencies
constexpr double kLeastLevel = 0.2;     // share of the level's square that bounces must leave
constexpr int kMostBounces = 2;         // on the tyres, and on the oil
constexpr double kWanders[] = {1.5, 8.0, 40.0};
constexpr double kMemories_s[] = {0.08, 0.2, 0.5};
// A machine that is jolted all the way, by its lever or its pins, keeps bouncing on its tyres.
constexpr double kTurns_Hz[] = {0.7, 1.0, 1.4};
constexpr double kTurningWanders[] = {8.0, 40.0};
constexpr double kTurningMemory_s = 1.0;
constexpr double kLeastWeight = 0.01;
constexpr double kSearchPenalty =
    8.0;  // 2 ln of the number of bounces tried, for having taken the best of them

Eigen::MatrixXd correlationRoot(const PassNoise& noise, Eigen::Index n, double step_s) {
  Eigen::VectorXd by_lag(n);
  for (Eigen::Index lag = 0; lag < n; ++lag) {
    const double lag_s = static_cast<double>(lag) * step_s;
    by_lag(lag) = noise.wander * std::exp(-lag_s / noise.memory_s) *
                  std::cos(2.0 * std::numbers::pi * noise.turn_Hz * lag_s);
  }
  Eigen::MatrixXd covariance(n, n);
  for (Eigen::Index i = 0; i < n; ++i)
    for (Eigen::Index k = 0; k <= i; ++k) covariance(i, k) = (i == k ? 1.0 : 0.0) + by_lag(i - k);
  return covariance.llt().matrixL();
}

/// The part of each column that is square to the orthonormal q.
void project(const Eigen::MatrixXd& q, Eigen::MatrixXd& columns) { columns -= q * (q.transpose() * columns); }

Eigen::MatrixXd basisOf(const Eigen::MatrixXd& columns) {
  return Eigen::HouseholderQR<Eigen::MatrixXd>(columns).householderQ() *
         Eigen::MatrixXd::Identity(columns.rows(), columns.cols());
}

/// What two columns take off the squared sum of `series`, both square to the same span.
double gainOf(const Eigen::MatrixXd& columns, const Eigen::VectorXd& series) {
  const double a = columns.col(0).squaredNorm();
  const double b = columns.col(0).dot(columns.col(1));
  const double c = columns.col(1).squaredNorm();
  const double determinant = a * c - b * b;
  if (!(determinant > 1e-9 * a * c)) return 0.0;
  const double u = columns.col(0).dot(series);
  const double v = columns.col(1).dot(series);
  return (c * u * u - 2.0 * b * u * v + a * v * v) / determinant;
}

/// Whether enough of the level is left beside the bounces to be told from them.
bool leavesLevel(const Eigen::MatrixXd& bounces, const Eigen::VectorXd& level) {
  const Eigen::MatrixXd q = basisOf(bounces);
  return (level - q * (q.transpose() * level)).squaredNorm() > kLeastLevel * level.squaredNorm();
}

struct Candidate {
  PassNoise noise;
  double criterion;
};

}  // namespace

Eigen::MatrixXd bounceColumns(const std::vector<Bounce>& bounces, Eigen::Index n, double step_s) {
  Eigen::Index count = 0;
  for (const Bounce& bounce : bounces) count += bounce.drifts ? 4 : 2;
  Eigen::MatrixXd columns(n, count);
  Eigen::Index at = 0;
  for (const Bounce& bounce : bounces) {
    const double turn = 2.0 * std::numbers::pi * bounce.frequency_Hz * step_s;
    const double fade = std::exp(-bounce.decay_per_s * step_s);
    // One rotation a step instead of two transcendental functions: this is the inner loop of a search.
    const double cosine = fade * std::cos(turn);
    const double sine = fade * std::sin(turn);
    double x = 1.0;
    double y = 0.0;
    for (Eigen::Index i = 0; i < n; ++i) {
      columns(i, at) = x;
      columns(i, at + 1) = y;
      if (bounce.drifts) {
        const double time_s = step_s * static_cast<double>(i);
        columns(i, at + 2) = x * time_s;
        columns(i, at + 3) = y * time_s;
      }
      const double next = cosine * x - sine * y;
      y = sine * x + cosine * y;
      x = next;
    }
    at += bounce.drifts ? 4 : 2;
  }
  return columns;
}

Eigen::MatrixXd whitened(const PassNoise& noise, const Eigen::MatrixXd& columns, double step_s) {
  if (noise.wander == 0.0) return columns;
  return correlationRoot(noise, columns.rows(), step_s).triangularView<Eigen::Lower>().solve(columns);
}

std::vector<PassNoise> plausibleNoise(const Eigen::MatrixXd& regressors, const Eigen::VectorXd& series,
                                      double step_s) {
  const Eigen::Index n = series.size();
  const auto rows = static_cast<double>(n);
  const double duration_s = step_s * rows;
  const double lowest_Hz = std::max(kLowestFrequency_Hz, kLeastCycles / duration_s);
  const double highest_Hz = std::min(kHighestFrequency_Hz, 0.25 / step_s);
  const double per_parameter = std::log(rows);

  std::vector<Candidate> candidates;
  const auto consider = [&](PassNoise noise) {
    const bool wanders = noise.wander > 0.0;
    const Eigen::MatrixXd root = wanders ? correlationRoot(noise, n, step_s) : Eigen::MatrixXd();
    const auto whiten = [&](Eigen::MatrixXd columns) {
      if (wanders) root.triangularView<Eigen::Lower>().solveInPlace(columns);
      return columns;
    };
    const double log_determinant = wanders ? 2.0 * root.diagonal().array().log().sum() : 0.0;
    Eigen::MatrixXd known = whiten(regressors);
    Eigen::MatrixXd q = basisOf(known);
    const Eigen::MatrixXd white_series = whiten(series);
    const Eigen::VectorXd white_level = known.col(0);
    Eigen::MatrixXd left = white_series;
    project(q, left);
    Eigen::Index bounces_columns = 0;
    double parameters = static_cast<double>(regressors.cols()) + 1.0 + (wanders ? 2.0 : 0.0) +
                        (noise.turn_Hz > 0.0 ? 1.0 : 0.0);
    const auto criterionOf = [&](double squares, double count) {
      return rows * std::log(std::max(squares, 1e-300) / rows) + log_determinant + count * per_parameter +
             kSearchPenalty * static_cast<double>(noise.bounces.size());
    };
    double squares = left.squaredNorm();
    candidates.push_back({noise, criterionOf(squares, parameters)});
    while (static_cast<int>(noise.bounces.size()) < kMostBounces && n > known.cols() + 8) {
      Bounce best;
      double best_gain = 0.0;
      const auto tryOne = [&](double frequency_Hz, double decay_per_s) {
        if (frequency_Hz < lowest_Hz || frequency_Hz > highest_Hz || decay_per_s < 0.0 ||
            decay_per_s > kMostDecay_per_s)
          return;
        const bool taken = std::ranges::any_of(noise.bounces, [&](const Bounce& other) {
          return std::abs(std::log(frequency_Hz / other.frequency_Hz)) < kLeastInterval;
        });
        if (taken) return;
        const Bounce candidate{frequency_Hz, decay_per_s};
        Eigen::MatrixXd columns = whiten(bounceColumns({candidate}, n, step_s));
        project(q, columns);
        if (const double gain = gainOf(columns, left); gain > best_gain) {
          best_gain = gain;
          best = candidate;
        }
      };
      for (double frequency_Hz = lowest_Hz; frequency_Hz <= highest_Hz; frequency_Hz *= kFrequencyStep)
        for (const double decay_per_s : kDecays_per_s) tryOne(frequency_Hz, decay_per_s);
      double frequency_step = 0.5 * (kFrequencyStep - 1.0);
      double decay_step = 0.4;
      for (int round = 0; round < 3; ++round, frequency_step *= 0.5, decay_step *= 0.5) {
        const Bounce centre = best;
        for (const int f : {-1, 0, 1})
          for (const int d : {-1, 0, 1})
            if (f != 0 || d != 0)
              tryOne(centre.frequency_Hz * (1.0 + f * frequency_step), centre.decay_per_s + d * decay_step);
      }
      const double reduced = squares - best_gain;
      parameters += 4.0;
      if (best_gain == 0.0) break;
      noise.bounces.push_back(best);
      // A bounce that looks like the level itself would take the mass with it.
      if (!leavesLevel(whiten(bounceColumns(noise.bounces, n, step_s)), white_level)) break;
      if (criterionOf(reduced, parameters) >= candidates.back().criterion) break;
      const auto take = [&](const Bounce& bounce) {
        const Eigen::MatrixXd columns = whiten(bounceColumns({bounce}, n, step_s));
        known.conservativeResize(n, regressors.cols() + bounces_columns + columns.cols());
        known.rightCols(columns.cols()) = columns;
        q = basisOf(known);
        left = white_series;
        project(q, left);
        squares = left.squaredNorm();
        candidates.push_back({noise, criterionOf(squares, parameters)});
      };
      take(best);
      noise.bounces.back().drifts = true;
      const bool clear = leavesLevel(whiten(bounceColumns(noise.bounces, n, step_s)), white_level);
      parameters += 2.0;
      take(noise.bounces.back());
      if (!clear || candidates.back().criterion >= candidates[candidates.size() - 2].criterion) {
        candidates.pop_back();
        noise.bounces.back().drifts = false;
        parameters -= 2.0;
        candidates.pop_back();
        take(noise.bounces.back());
      }
      bounces_columns = known.cols() - regressors.cols();
    }
  };
  consider({});
  if (n > regressors.cols() + 8) {
    for (const double memory_s : kMemories_s)
      for (const double wander : kWanders) consider({.wander = wander, .memory_s = memory_s});
    for (const double turn_Hz : kTurns_Hz)
      for (const double wander : kTurningWanders)
        consider({.wander = wander, .memory_s = kTurningMemory_s, .turn_Hz = turn_Hz});
  }

  std::ranges::sort(candidates, {}, &Candidate::criterion);
  std::vector<PassNoise> result;
  double sum = 0.0;
  for (Candidate& candidate : candidates) {
    const double weight = std::exp(-0.5 * (candidate.criterion - candidates.front().criterion));
    if (weight < kLeastWeight) break;
    candidate.noise.weight = weight;
    sum += weight;
    result.push_back(std::move(candidate.noise));
  }
  for (PassNoise& noise : result) noise.weight /= sum;
  return result;
}

}  // namespace hingepin::calibration
