// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "engine/base/error.h"
#include "engine/base/named.h"
#include "engine/calibration/job.h"
#include "engine/calibration/lift_log.h"
#include "engine/linkage/linkage.h"

/// Automatic stops: where they have to be set, and where the machine really halted.
namespace hingepin::calibration {

enum class Stop : std::size_t { Lower, Upper, Level };
inline constexpr std::array kStopNames = {Named{"lower", Stop::Lower}, Named{"upper", Stop::Upper},
                                          Named{"level", Stop::Level}};

/// One value for each stop: lower and upper as the height of the cutting edge above ground in m, level as the
/// angle of the bucket floor above the horizontal in rad.
template <class T>
struct PerStop {
  std::array<T, 3> values{};
  [[nodiscard]] T& operator[](Stop stop) { return values[static_cast<std::size_t>(stop)]; }
  [[nodiscard]] const T& operator[](Stop stop) const { return values[static_cast<std::size_t>(stop)]; }
};

/// The boom sensor as a line through one known angle.
struct BoomSensorLine {
  SensorUnit unit = SensorUnit::Volt;
  double reading = 0.0;
  double boom_angle_rad = 0.0;
  double slope_per_rad = 0.0;  ///< reading per radian of boom
};

/// The bucket sensor by its readings at the two ends of the tilt cylinder, at one boom angle.
struct BucketSensorEnds {
  SensorUnit unit = SensorUnit::Volt;
  double racked = 0.0;
  double dumped = 0.0;
  double boom_angle_rad = 0.0;
};

/// One full cycle, where it came to rest; of what was not measured nothing.
struct StopCycle {
  PerStop<std::optional<double>> rest{};
  /// The furthest that it went before it came to rest.
  PerStop<std::optional<double>> furthest{};
};

/// What is asked about stops. `linkage` and an attachment with its cutting edge tell what to set; cycles are
/// judged without either.
struct StopsAsked {
  std::optional<linkage::ZBarGeometry> linkage{};
  std::optional<Attachment> attachment{};   ///< that is fitted now
  std::optional<Attachment> taught_with{};  ///< that the stored stops were set with
  std::optional<BoomSensorLine> boom_line{};
  std::optional<BucketSensorEnds> bucket_ends{};
  PerStop<std::optional<double>> wanted{};
  std::vector<StopCycle> cycles{};
  PerStop<std::optional<double>> limits{};  ///< lower and upper share one
};

/// Where boom and bucket stand at a stop, and what that means at the bucket.
struct StopPose {
  double boom_angle_rad = 0.0;
  double tilt_length_m = 0.0;
  double bucket_angle_rad = 0.0;  ///< of the floor above the horizontal
  std::optional<double> boom_sensor{};
  std::optional<double> bucket_sensor{};
  std::optional<double> edge_height_m{};  ///< above ground; none where the attachment's point is not known
  std::optional<double> heel_height_m{};
};

/// Where the heel touches the ground on the way down, before the stop is reached.
struct HeelContact {
  double boom_angle_rad = 0.0;
  double edge_height_m = 0.0;  ///< that the edge still has then
};

/// Where a stop that was set with one attachment puts another.
struct StoredStop {
  StopPose pose;
  /// The heel is lower than the edge, by more than a millimetre; not told of `upper`, nor where either point
  /// is unknown.
  std::optional<bool> heel_leads{};
  std::optional<HeelContact> heel_contact{};
};

/// Cycles against what was wanted; m or rad.
struct StopProof {
  int cycles = 0;
  double offset = 0.0;              ///< mean less wanted
  std::optional<double> scatter{};  ///< sample standard deviation; none of a single cycle
  double worst = 0.0;               ///< of all cycles, the one furthest off, less wanted
  double overshoot = 0.0;       ///< furthest past the wanted stop, in the direction it is come to from; >= 0
  std::optional<bool> holds{};  ///< mean and every cycle within the limit; none without a limit
};

struct StopAnswer {
  Stop stop = Stop::Lower;
  double wanted = 0.0;
  std::optional<StopPose> set{};
  std::optional<Message> not_set{};  ///< why `set` is missing
  std::optional<StoredStop> stored{};
  std::optional<StopProof> proof{};
};

struct StopsAnswer {
  std::vector<StopAnswer> stops;  ///< those wanted, in the order of kStopNames
  std::optional<bool> holds;      ///< all that were proved; none where nothing was judged
  std::vector<Message> taken;     ///< what was taken where nothing was said
  std::vector<Message> warnings;
};

/// What to set, where a stored stop puts the fitted attachment, and whether the cycles hold. `lower` goes
/// with `level` (0 where none is wanted): the edge's height with the floor at that angle. `upper` is taken
/// with the bucket racked back. `level` stands at the boom angle of `lower`, else with the edge on the
/// ground.
/// Errors: InvalidInput "stop-out-of-reach" with the heights that can be reached, those of Linkage (pointers
/// "/wanted/..." and "/unit/linkage/..."); Insufficient "stops-nothing-wanted", "stops-nothing-told" where
/// there is neither a linkage with a cutting edge nor a cycle.
[[nodiscard]] Expected<StopsAnswer> tellStops(const StopsAsked& asked);

/// Where boom and bucket, held at a stop, put the points of an attachment. Errors: those of Linkage::tilt.
[[nodiscard]] Expected<StopPose> poseAt(const linkage::Linkage& linkage, const Attachment& attachment,
                                        double boom_angle_rad, double tilt_length_m);

/// The heel's touching the ground while the boom comes down to a stop with the tilt cylinder held, if it
/// does. Common practice, no source: a bucket whose heel lies lower than its edge digs in at the back.
[[nodiscard]] std::optional<HeelContact> heelContact(const linkage::Linkage& linkage,
                                                     const Attachment& attachment, const StopPose& stop);

/// @param values the places where a stop came to rest, @param furthest beside them where known
/// REQUIRES: at least one value; both of one length.
[[nodiscard]] StopProof judgeStop(Stop stop, double wanted, const std::vector<double>& rest,
                                  const std::vector<std::optional<double>>& furthest,
                                  const std::optional<double>& limit);

}  // namespace hingepin::calibration
