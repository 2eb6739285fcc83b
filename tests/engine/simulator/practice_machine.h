// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/simulator/machine.h"

namespace hingepin::simulator {

/// The practice loader as one seed draws it.
inline Machine practice() {
  Random random(3);
  return practiceMachine(random);
}

}  // namespace hingepin::simulator
