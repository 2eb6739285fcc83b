// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <Eigen/Core>
#include <string>
#include <vector>

#include "engine/calibration/model.h"
#include "engine/statistics/uncertainty.h"

namespace hingepin::calibration {

/// Adds an unknown's prior: mean and standard uncertainty, as an independent source.
void setPrior(State& state, int unknown, double mean, double standard_uncertainty, const std::string& source);

/// What a row of unknowns is known to, before and apart from its own noise.
[[nodiscard]] double standardUncertainty(const State& state, const Eigen::RowVectorXd& row);

/// Takes in an observation `row . unknowns = value` with independent noise from `source` (Kalman's update;
/// the factor's columns stay independent sources, so budgets by source remain exact).
void observe(State& state, const Eigen::RowVectorXd& row, double value, double noise_u,
             const std::string& source);

/// The uncertainty of row . unknowns, split by source (columns of one name summed in squares).
[[nodiscard]] std::vector<statistics::Contribution> splitBySource(const State& state,
                                                                  const Eigen::RowVectorXd& row);

}  // namespace hingepin::calibration
