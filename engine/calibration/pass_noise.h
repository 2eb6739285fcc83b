// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <Eigen/Core>
#include <vector>

namespace hingepin::calibration {

/// A damped oscillation exp(-decay t) cos(2 pi f t + phase) of a machine on its tyres and oil columns.
struct Bounce {
  double frequency_Hz = 0.0;
  double decay_per_s = 0.0;
  bool drifts =
      false;  ///< its pitch and decay change on the way: its columns times the time stand beside them
};

/// What disturbs the readings of one pass: independent noise; beside it a wander whose memory fades over
/// `memory_s`, with `wander` times the variance of the independent noise, and swings at `turn_Hz` while it
/// fades (0: it only fades); and bounces, whose size and phase are unknown.
struct PassNoise {
  double wander = 0.0;
  double memory_s = 1.0;
  double turn_Hz = 0.0;
  std::vector<Bounce> bounces{};
  double weight = 1.0;  ///< how plausible among the models that were tried; the weights sum to 1
};

/// The models of a pass's noise that its readings speak for. A grid of wanders is tried, each with as many
/// bounces (searched over frequency and decay by variable projection, Golub and Pereyra 1973) as the Bayesian
/// information criterion (Schwarz 1978) lets stand; the weights are exp(-BIC/2), those under a hundredth of
/// the best left out, the best first.
/// @param regressors (n, k) what else the series is made of
/// @param series (n) evenly spaced by step_s
[[nodiscard]] std::vector<PassNoise> plausibleNoise(const Eigen::MatrixXd& regressors,
                                                    const Eigen::VectorXd& series, double step_s);

/// Cosine and sine of each bounce at the n times 0, step_s, ...; of one that drifts also both times the time:
/// (n, 2 or 4 each).
[[nodiscard]] Eigen::MatrixXd bounceColumns(const std::vector<Bounce>& bounces, Eigen::Index n,
                                            double step_s);

/// Columns (n rows, evenly spaced) with the noise made independent and its independent part kept at its size:
/// L^-1 times each, for a correlation L L^T of independent noise and wander.
[[nodiscard]] Eigen::MatrixXd whitened(const PassNoise& noise, const Eigen::MatrixXd& columns, double step_s);

}  // namespace hingepin::calibration
