// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <map>
#include <string>
#include <vector>

#include "engine/base/error.h"
#include "engine/base/random.h"

namespace hingepin::benchmarks {

/// From what machines of the plain world are drawn. Standard deviations and ends of even spreads; judgements.
struct PlainRanges {
  double centre_sd_m = 0.0;                  ///< of each load and test mass about its stated centre, each way
  double least_constant_friction_bar = 0.0;  ///< that no load adds to, as head pressure
  double most_constant_friction_bar = 0.5;
  double most_orifice_share = 0.0;  ///< of what moving costs at the fast pace
  double liveliness = 0.25;         ///< how much of a jerk the livelier bounces take up
};

/// A load to be weighed, and what a plain estimator that knows the world's laws makes of it.
struct PlainLoad {
  std::string file;
  double mass_kg = 0.0;
  double plainly_kg = 0.0;
};

struct PlainScenario {
  std::map<std::string, std::string> files;  ///< job.json and the logs
  double rated_kg = 0.0;
  double taught_Cel = 0.0;
  std::vector<PlainLoad> loads;
};

/// A loader that shares nothing with the simulator but the linkage's geometry: the flow is given and the boom
/// follows it; bounces are two damped modes that the flow's changes set ringing; friction is a constant and
/// a share of the force; oil follows Vogel's law. Written from the file formats, as somebody else would.
/// @param lowering teach by a lowering pass, too
/// @param test_mass teach by a test mass
/// Errors: those of linkage::Linkage.
[[nodiscard]] Expected<PlainScenario> drawPlain(const PlainRanges& ranges, bool linkage, bool lowering,
                                                bool test_mass, Random random);

}  // namespace hingepin::benchmarks
