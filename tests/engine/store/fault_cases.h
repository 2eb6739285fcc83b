// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <string>

/// Random use of a store on a disk that fails. Each case is set by its seed alone.
namespace hingepin::store {

struct Tally {
  std::int64_t cases = 0;
  std::int64_t power_losses = 0;
  std::int64_t faults = 0;        ///< that the disk answered with
  std::int64_t acknowledged = 0;  ///< operations that returned as done
  std::int64_t unanswered = 0;    ///< of those cut off or failed, how many were there afterwards, as a whole
  std::int64_t refused_open = 0;  ///< only on a lying disk, else a failure
  std::int64_t lost = 0;          ///< only on a lying disk, else a failure

  void add(const Tally& other);
};

/// Power is lost again and again, at random changes, also while the store is opened after the last loss.
/// @return what was wrong, "" for nothing: something acknowledged was lost, something half-done was seen, a
/// store did not open, or its check found something
[[nodiscard]] std::string losePowerCase(std::uint64_t seed, Tally& tally);

/// One kind of fault at random places, once or from there on; then the work goes on or power is lost.
[[nodiscard]] std::string faultCase(std::uint64_t seed, Tally& tally);

/// A disk that says it has synced and has not, or that a file ends where it does not. Nothing can be kept
/// that way; what happens is counted, and only a store that opens, passes its check and still shows something
/// half-done is wrong.
[[nodiscard]] std::string lyingCase(std::uint64_t seed, Tally& tally);

}  // namespace hingepin::store
