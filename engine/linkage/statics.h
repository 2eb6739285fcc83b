// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "engine/linkage/linkage.h"

namespace hingepin::linkage {

struct PointMass {
  Mass mass;
  Pin position;  ///< in the frame of the body that carries it
};

/// What hangs on the lift cylinders, as point masses: the bodies, their pins, the coupler, the payload.
struct LinkageMasses {
  std::vector<PointMass> boom;       ///< from A along A->B and square to it
  std::vector<PointMass> bellcrank;  ///< from its pivot along the tilt arm and square to it
  std::vector<PointMass> link;       ///< from its end at the bellcrank along the link and square to it
  std::vector<PointMass> bucket;     ///< from B along the bucket's floor direction and square to it
};

/// Potential energy (J, zero at the height of A), the moment about A that holds it up with the tilt cylinder
/// held at its length (J/rad), and the change of that moment with the boom angle (J/rad2). Errors: those of
/// Linkage::tilt.
[[nodiscard]] Expected<Derivatives> potentialEnergy(const Linkage& linkage, double boom_angle_rad,
                                                    double tilt_length_m, const LinkageMasses& masses,
                                                    Acceleration gravity);

/// Force of all lift cylinders together that holds the masses still, N, positive where they push; by virtual
/// work, without friction. Errors: those of Linkage::tilt; InvalidInput "boom-outside-lift-range" where the
/// lift cylinder does not lengthen as the boom rises.
[[nodiscard]] Expected<double> liftForce(const Linkage& linkage, double boom_angle_rad, double tilt_length_m,
                                         const LinkageMasses& masses, Acceleration gravity);

}  // namespace hingepin::linkage
