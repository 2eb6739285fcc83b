// SPDX-License-Identifier: Apache-2.0
#include "engine/base/random.h"

#include <bit>
#include <cmath>

namespace hingepin {
namespace {

constexpr std::uint64_t kGoldenGamma = 0x9e3779b97f4a7c15u;

/// The output function of SplitMix64 (Steele, Lea and Flood 2014).
std::uint64_t mix(std::uint64_t z) {
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
  return z ^ (z >> 31);
}

/// Natural logarithm of 0 < x < 1 to a few units in the last place, from exact operations only: the library's
/// log may differ in its last bit between processors, and a stream must not.
double portableLog(double x) {
  constexpr double kLn2High = 0x1.62e42fefa38p-1;  // trailing zeros, so that its multiples are exact
  constexpr double kLn2Low = 0x1.ef35793c7673p-45;
  int exponent = 0;
  double fraction = std::frexp(x, &exponent);
  if (fraction < 0.70710678118654752) {
    fraction *= 2.0;
    --exponent;
  }
  // log(f) = 2 atanh(s), |s| < 0.172: the first term left out is below 1e-18 of the sum.
  const double s = (fraction - 1.0) / (fraction + 1.0);
  const double s2 = s * s;
  double series = 0.0;
  for (int k = 11; k >= 1; --k) series = s2 * (series + 1.0 / (2 * k + 1));
  return exponent * kLn2High + (exponent * kLn2Low + 2.0 * (s + s * series));
}

}  // namespace

Random::Random(std::uint64_t seed) : seed_(seed) {
  for (std::uint64_t& word : state_) word = mix(seed += kGoldenGamma);
}

std::uint64_t Random::bits() {
  const std::uint64_t result = std::rotl(state_[0] + state_[3], 23) + state_[0];
  const std::uint64_t shifted = state_[1] << 17;
  state_[2] ^= state_[0];
  state_[3] ^= state_[1];
  state_[1] ^= state_[2];
  state_[0] ^= state_[3];
  state_[2] ^= shifted;
  state_[3] = std::rotl(state_[3], 45);
  return result;
}

double Random::uniform() { return static_cast<double>(bits() >> 11) * 0x1p-53; }

double Random::normal() {
  if (has_spare_) {
    has_spare_ = false;
    return spare_;
  }
  // Polar method (Marsaglia and Bray 1964).
  double u = 0.0;
  double v = 0.0;
  double radius2 = 0.0;
  do {
    u = uniform(-1.0, 1.0);
    v = uniform(-1.0, 1.0);
    radius2 = u * u + v * v;
  } while (radius2 >= 1.0 || radius2 == 0.0);
  const double factor = std::sqrt(-2.0 * portableLog(radius2) / radius2);
  spare_ = v * factor;
  has_spare_ = true;
  return u * factor;
}

Random Random::fork(std::uint64_t part) const { return Random(mix(mix(seed_ + kGoldenGamma) + part)); }

}  // namespace hingepin
