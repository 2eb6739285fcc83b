// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <limits>
#include <numbers>
#include <optional>

namespace hingepin::proof {

/// Half the width of what is evenly spread, over its standard deviation.
inline constexpr double kRoot3 = std::numbers::sqrt3;

/// How an error that was found may be off: the sum of a scatter that was estimated, something normal that is
/// known, and a rounding. All in kg.
struct Doubt {
  double scatter_u_kg = 0.0;  ///< standard uncertainty of a mean from its own scatter
  double degrees_of_freedom = std::numeric_limits<double>::infinity();  ///< of that scatter
  double normal_u_kg = 0.0;                                             ///< standard
  double rectangular_half_kg = 0.0;  ///< half the width of what is evenly spread
  /// Root sum of squares of the three.
  [[nodiscard]] double standardUncertainty() const;
};

/// The half width of an interval that covers the truth in 95.45 % of proofs, whatever the share of scatter
/// and from one degree of freedom up. The scatter's own coverage factor goes from that of Student's t to 2 as
/// its share falls. Neither the Welch-Satterthwaite formula (down to 88 %) nor the convolution of both (up to
/// 99 %) keeps to the rate for two or three readings.
/// Against the truth by simulation: 94 to 97 % for two readings, 95 to 96 % from three up; a step that is
/// wide against the scatter makes it more.
[[nodiscard]] double halfWidth(const Doubt& doubt);

/// What is thought of the true error before: normal.
struct NormalPrior {
  double mean_kg = 0.0;
  double u_kg = 0.0;
};

/// The probability that the true error lies within -limit to limit, given the estimate: the posterior of
/// JCGM 106:2012 6.2 and 7, Student's t, normal and rectangular convolved (JCGM 101:2008 6.4), under a flat
/// prior or the one given. Accuracy 1e-4, with a prior 1e-3.
[[nodiscard]] double probabilityWithin(double estimate_kg, const Doubt& doubt, double limit_kg,
                                       const std::optional<NormalPrior>& prior = std::nullopt);

/// The sample standard deviation to reckon with where a display counts in steps. Where all readings look
/// alike it is a part of a step, by which they may have differed. Where they stand on two or three marks a
/// little is taken off: Student's factor allows for samples that by chance scatter much less than their kind,
/// and below one reading that differs there are none but those alike.
[[nodiscard]] double unhiddenScatter(double scatter_kg, int readings, double step_kg);

/// How far rounding to `step_kg` may still shift a mean whose readings scatter by `scatter_kg` as displayed:
/// half a step where nothing scatters, nothing from half a step on, when it lies in the scatter already. That
/// of a true scatter far below a step: readings on two neighbouring marks, a share p of them on the upper
/// one, have the variance p (1 - p) and come from next to the middle, so the mean is off by p - 1/2 steps.
[[nodiscard]] double roundingHalf(double scatter_kg, double step_kg);

/// Both risks before anything is measured (JCGM 106:2012 clause 9.5, normal prior and normal measurement): of
/// accepting what does not conform, and of rejecting what does.
struct Risks {
  double consumers = 0.0;
  double producers = 0.0;
};
/// @param limit_kg the tolerance, both ways; @param acceptance_kg an estimate within it is accepted
[[nodiscard]] Risks globalRisks(const NormalPrior& prior, double u_kg, double limit_kg, double acceptance_kg);

}  // namespace hingepin::proof
