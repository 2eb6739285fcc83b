// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/units/quantity.h"

namespace hingepin::proof {

inline Mass kg(double value) { return Mass::fromKilograms(value); }

}  // namespace hingepin::proof
