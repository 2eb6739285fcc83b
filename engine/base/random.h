// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>

namespace hingepin {

/// A seeded stream of random numbers, the same on every machine (xoshiro256++ of Blackman and Vigna 2021,
/// seeded by SplitMix64). Not for keys.
class Random {
 public:
  explicit Random(std::uint64_t seed);
  [[nodiscard]] std::uint64_t bits();
  /// In [0, 1), 53 bits.
  [[nodiscard]] double uniform();
  [[nodiscard]] double uniform(double low, double high) { return low + (high - low) * uniform(); }
  /// Mean 0, SD 1.
  [[nodiscard]] double normal();
  /// A stream of its own for a named part, set by the seed and the part alone: draws taken here or in another
  /// part do not change it.
  [[nodiscard]] Random fork(std::uint64_t part) const;

 private:
  std::uint64_t seed_;
  std::uint64_t state_[4];
  double spare_ = 0.0;
  bool has_spare_ = false;
};

}  // namespace hingepin
