// SPDX-License-Identifier: Apache-2.0
#include "engine/calibration/state.h"

#include <algorithm>
#include <cmath>

namespace hingepin::calibration {

void setPrior(State& state, int unknown, double mean, double standard_uncertainty,
              const std::string& source) {
  state.mean(unknown) = mean;
  const Eigen::Index columns = state.factor.cols();
  state.factor.conservativeResize(state.mean.size(), columns + 1);
  state.factor.col(columns).setZero();
  state.factor(unknown, columns) = standard_uncertainty;
  state.sources.push_back(source);
}

double standardUncertainty(const State& state, const Eigen::RowVectorXd& row) {
  return (row * state.factor).norm();
}

void observe(State& state, const Eigen::RowVectorXd& row, double value, double noise_u,
             const std::string& source) {
  const Eigen::RowVectorXd effect = row * state.factor;
  const double variance = effect.squaredNorm() + noise_u * noise_u;
  if (!(variance > 0.0)) return;
  const Eigen::VectorXd gain = state.factor * effect.transpose() / variance;
  state.mean += gain * (value - row.dot(state.mean));
  const Eigen::Index columns = state.factor.cols();
  Eigen::MatrixXd factor(state.mean.size(), columns + 1);
  factor.leftCols(columns) = state.factor - gain * effect;
  factor.col(columns) = -gain * noise_u;
  state.factor = std::move(factor);
  state.sources.push_back(source);
}

std::vector<statistics::Contribution> splitBySource(const State& state, const Eigen::RowVectorXd& row) {
  const Eigen::RowVectorXd effect = row * state.factor;
  std::vector<statistics::Contribution> contributions;
  for (Eigen::Index column = 0; column < effect.size(); ++column) {
    const std::string& source = state.sources[column];
    auto found = std::ranges::find(contributions, source, &statistics::Contribution::name);
    if (found == contributions.end()) found = contributions.insert(contributions.end(), {source});
    found->standard_uncertainty = std::hypot(found->standard_uncertainty, effect(column));
  }
  return contributions;
}

}  // namespace hingepin::calibration
