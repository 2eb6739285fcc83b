// SPDX-License-Identifier: Apache-2.0
#include "engine/calibration/stops.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <numeric>
#include <utility>

#include "engine/linkage/plausible.h"
#include "engine/units/degree.h"

namespace hingepin::calibration {
namespace {

using linkage::Linkage;
using linkage::Range;

/// Fine enough that no turn of an edge's path hides between two steps.
constexpr double kScan_rad = 0.5 * kDegree;
/// What a staff can tell apart.
constexpr double kSameHeight_m = 0.001;
/// What reading a value in its unit may cost it: one at the limit as typed must not fail by that.
constexpr double kRounding = 1e-9;

std::string pointerOf(Stop stop) { return "/wanted/" + std::string(nameIn(kStopNames, stop)); }

/// The edge's height at a boom angle, or nothing where the linkage can't stand so.
using HeightAt = std::function<std::optional<double>(double boom_angle_rad)>;

double bisect(const HeightAt& height, double wanted_m, double low_rad, double high_rad) {
  const bool rising = height(low_rad).value_or(wanted_m) < wanted_m;
  for (int i = 0; i < 60; ++i) {
    const double middle = std::midpoint(low_rad, high_rad);
    const std::optional<double> there = height(middle);
    (there && (*there < wanted_m) == rising ? low_rad : high_rad) = middle;
  }
  return std::midpoint(low_rad, high_rad);
}

/// The lowest boom angle at which a height is reached. Errors: "stop-out-of-reach".
Expected<double> boomAngleFor(const HeightAt& height, double wanted_m, Range travel_rad, Stop stop) {
  double lowest_m = std::numeric_limits<double>::infinity(), highest_m = -lowest_m;
  bool joined = false;  // the step before this one could stand too
  double before_rad = 0.0, before_m = 0.0;
  const int steps = static_cast<int>(std::ceil((travel_rad.high - travel_rad.low) / kScan_rad));
  for (int i = 0; i <= steps; ++i) {
    const double angle_rad = std::lerp(travel_rad.low, travel_rad.high, double(i) / steps);
    const std::optional<double> there_m = height(angle_rad);
    if (!there_m) {
      joined = false;
      continue;
    }
    lowest_m = std::min(lowest_m, *there_m);
    highest_m = std::max(highest_m, *there_m);
    if (*there_m == wanted_m) return angle_rad;
    if (joined && (before_m < wanted_m) != (*there_m < wanted_m))
      return bisect(height, wanted_m, before_rad, angle_rad);
    joined = true;
    before_rad = angle_rad;
    before_m = *there_m;
  }
  if (lowest_m > highest_m)
    return fail(ErrorKind::InvalidInput, "stop-pose-impossible", {}, {.pointer = pointerOf(stop)});
  return fail(ErrorKind::InvalidInput, "stop-out-of-reach",
              {{"wanted", Amount{wanted_m * 1000, "mm"}},
               {"low", Amount{std::ceil(lowest_m * 1000), "mm"}},
               {"high", Amount{std::floor(highest_m * 1000), "mm"}}},
              {.pointer = pointerOf(stop)});
}

std::optional<double> heightOf(const Linkage& linkage, double boom_angle_rad, double tilt_length_m,
                               const std::optional<linkage::Pin>& point) {
  if (!point) return std::nullopt;
  const Expected<linkage::PointMotion> motion = linkage.bucketPoint(boom_angle_rad, tilt_length_m, *point);
  if (!motion) return std::nullopt;
  return linkage.geometry().boom_pivot_height.inMetres() + motion->y.value;
}

/// All that is needed to tell a stop.
struct Fitted {
  const StopsAsked& asked;
  Linkage linkage;
  Range travel_rad;
  double level_rad;
};

void addSensors(const Fitted& fitted, StopPose& pose) {
  if (const auto& line = fitted.asked.boom_line)
    pose.boom_sensor = line->reading + line->slope_per_rad * (pose.boom_angle_rad - line->boom_angle_rad);
  if (const auto& ends = fitted.asked.bucket_ends) {
    const auto bellcrank = [&](double boom_rad, double tilt_m) -> std::optional<double> {
      const auto state = fitted.linkage.tilt(boom_rad, tilt_m);
      return state ? std::optional(state->bellcrank_by_boom.value) : std::nullopt;
    };
    const linkage::ZBarGeometry& geometry = fitted.linkage.geometry();
    const auto racked = bellcrank(ends->boom_angle_rad, geometry.tilt_cylinder_extended.inMetres());
    const auto dumped = bellcrank(ends->boom_angle_rad, geometry.tilt_cylinder_retracted.inMetres());
    const auto here = bellcrank(pose.boom_angle_rad, pose.tilt_length_m);
    if (racked && dumped && here && *racked != *dumped)
      pose.bucket_sensor =
          ends->racked + (ends->dumped - ends->racked) * (*here - *racked) / (*dumped - *racked);
  }
}

/// The tilt-cylinder length of a stop at a boom angle.
Expected<double> tiltAt(const Fitted& fitted, Stop stop, double boom_angle_rad) {
  if (stop == Stop::Upper) return fitted.linkage.geometry().tilt_cylinder_extended.inMetres();
  return fitted.linkage.tiltLengthOfBucket(boom_angle_rad, fitted.level_rad);
}

/// The pose in which the edge of an attachment stands at a height, as the stop has the bucket.
Expected<StopPose> poseFor(const Fitted& fitted, const Attachment& attachment, Stop stop, double height_m) {
  const HeightAt height = [&](double boom_angle_rad) -> std::optional<double> {
    const Expected<double> tilt_m = tiltAt(fitted, stop, boom_angle_rad);
    if (!tilt_m) return std::nullopt;
    return heightOf(fitted.linkage, boom_angle_rad, *tilt_m, attachment.cutting_edge);
  };
  const Expected<double> boom_rad = boomAngleFor(height, height_m, fitted.travel_rad, stop);
  if (!boom_rad) return std::unexpected(boom_rad.error());
  const Expected<double> tilt_m = tiltAt(fitted, stop, *boom_rad);
  if (!tilt_m) return std::unexpected(tilt_m.error());
  Expected<StopPose> pose = poseAt(fitted.linkage, attachment, *boom_rad, *tilt_m);
  if (pose) addSensors(fitted, *pose);
  return pose;
}

/// The height that `level` is told at: that of `lower`, else on the ground.
double heightWanted(const StopsAsked& asked, Stop stop) {
  return stop == Stop::Level ? asked.wanted[Stop::Lower].value_or(0.0) : *asked.wanted[stop];
}

StoredStop storedStop(const Fitted& fitted, Stop stop, const StopPose& taught) {
  const Attachment& attachment = *fitted.asked.attachment;
  StoredStop stored{.pose = poseAt(fitted.linkage, attachment, taught.boom_angle_rad, taught.tilt_length_m)
                                .value_or(StopPose{})};
  addSensors(fitted, stored.pose);
  if (stop != Stop::Upper && stored.pose.edge_height_m && stored.pose.heel_height_m) {
    stored.heel_leads = *stored.pose.heel_height_m < *stored.pose.edge_height_m - kSameHeight_m;
    stored.heel_contact = heelContact(fitted.linkage, attachment, stored.pose);
  }
  return stored;
}

std::optional<StopProof> proofOf(const StopsAsked& asked, Stop stop) {
  std::vector<double> rest;
  std::vector<std::optional<double>> furthest;
  for (const StopCycle& cycle : asked.cycles) {
    if (!cycle.rest[stop]) continue;
    rest.push_back(*cycle.rest[stop]);
    furthest.push_back(cycle.furthest[stop]);
  }
  if (rest.empty()) return std::nullopt;
  return judgeStop(stop, *asked.wanted[stop], rest, furthest, asked.limits[stop]);
}

/// What is wrong with the ways of telling a stop, if anything is.
std::optional<Message> whyNotSet(const StopsAsked& asked) {
  if (!asked.linkage) return Message{"stops-without-linkage", {}};
  if (!asked.attachment) return Message{"stops-without-attachment", {}};
  if (!asked.attachment->cutting_edge) return Message{"stops-without-edge", {}};
  return std::nullopt;
}

Expected<Linkage> linkageOf(const linkage::ZBarGeometry& geometry) {
  Expected<Linkage> made = Linkage::make(geometry);
  if (!made) made.error().place.pointer = "/unit/linkage" + made.error().place.pointer;
  return made;
}

void warn(const StopAnswer& answer, std::vector<Message>& warnings) {
  const auto mm = [](double metres) { return Amount{metres * 1000, "mm"}; };
  if (answer.stop == Stop::Lower && answer.set && answer.set->heel_height_m && *answer.set->heel_height_m < 0)
    warnings.push_back({"stop-heel-below-ground", {{"heel", mm(-*answer.set->heel_height_m)}}});
  if (answer.stop == Stop::Lower && answer.stored && answer.stored->heel_contact)
    warnings.push_back(
        {"stored-stop-heel-first", {{"edge", mm(answer.stored->heel_contact->edge_height_m)}}});
}

}  // namespace

Expected<StopPose> poseAt(const Linkage& linkage, const Attachment& attachment, double boom_angle_rad,
                          double tilt_length_m) {
  const Expected<linkage::TiltState> state = linkage.tilt(boom_angle_rad, tilt_length_m);
  if (!state) return std::unexpected(state.error());
  return StopPose{.boom_angle_rad = boom_angle_rad,
                  .tilt_length_m = tilt_length_m,
                  .bucket_angle_rad = state->bucket_by_boom.value,
                  .edge_height_m = heightOf(linkage, boom_angle_rad, tilt_length_m, attachment.cutting_edge),
                  .heel_height_m = heightOf(linkage, boom_angle_rad, tilt_length_m, attachment.heel)};
}

std::optional<HeelContact> heelContact(const Linkage& linkage, const Attachment& attachment,
                                       const StopPose& stop) {
  if (!stop.heel_height_m || !stop.edge_height_m || *stop.heel_height_m > 0) return std::nullopt;
  const HeightAt heel = [&](double boom_angle_rad) {
    return heightOf(linkage, boom_angle_rad, stop.tilt_length_m, attachment.heel);
  };
  const double top_rad = std::min(linkage.liftRange().high, linkage::kMostTravel_rad);
  for (double high = stop.boom_angle_rad; high < top_rad;) {
    const double low = high;
    high = std::min(high + kScan_rad, top_rad);
    const std::optional<double> there = heel(high);
    if (!there) return std::nullopt;
    if (*there <= 0) continue;
    const double contact_rad = bisect(heel, 0.0, low, high);
    const std::optional<double> edge_m =
        heightOf(linkage, contact_rad, stop.tilt_length_m, attachment.cutting_edge);
    if (!edge_m || *edge_m <= kSameHeight_m) return std::nullopt;  // the edge is down first, or with it
    return HeelContact{contact_rad, *edge_m};
  }
  return std::nullopt;
}

StopProof judgeStop(Stop stop, double wanted, const std::vector<double>& rest,
                    const std::vector<std::optional<double>>& furthest, const std::optional<double>& limit) {
  StopProof proof{.cycles = static_cast<int>(rest.size())};
  const double mean = std::accumulate(rest.begin(), rest.end(), 0.0) / double(rest.size());
  proof.offset = mean - wanted;
  if (rest.size() > 1) {
    double squares = 0.0;
    for (const double each : rest) squares += (each - mean) * (each - mean);
    proof.scatter = std::sqrt(squares / double(rest.size() - 1));
  }
  // The boom comes down to the lower stop; it rises to the upper, and the bucket racks back to level.
  const double onward = stop == Stop::Lower ? -1.0 : 1.0;
  for (std::size_t i = 0; i < rest.size(); ++i) {
    if (std::abs(rest[i] - wanted) > std::abs(proof.worst)) proof.worst = rest[i] - wanted;
    for (const double reached : {rest[i], furthest[i].value_or(rest[i])})
      proof.overshoot = std::max(proof.overshoot, onward * (reached - wanted));
  }
  if (limit) {
    const double most = *limit + kRounding * (*limit + std::abs(wanted));
    proof.holds = std::abs(proof.offset) <= most && std::abs(proof.worst) <= most;
  }
  return proof;
}

Expected<StopsAnswer> tellStops(const StopsAsked& asked) {
  StopsAnswer answer;
  std::optional<Fitted> fitted;
  const std::optional<Message> not_set = whyNotSet(asked);
  if (asked.linkage) {
    const Expected<Linkage> linkage = linkageOf(*asked.linkage);
    if (!linkage) return std::unexpected(linkage.error());
    const Range lift_rad = linkage->liftRange();
    if (!not_set)
      fitted.emplace(asked, *linkage,
                     Range{std::max(lift_rad.low, -linkage::kMostTravel_rad),
                           std::min(lift_rad.high, linkage::kMostTravel_rad)},
                     asked.wanted[Stop::Level].value_or(0.0));
  }
  for (const auto& [name, stop] : kStopNames) {
    if (!asked.wanted[stop]) continue;
    StopAnswer each{.stop = stop, .wanted = *asked.wanted[stop]};
    each.proof = proofOf(asked, stop);
    if (fitted) {
      const double height_m = heightWanted(asked, stop);
      Expected<StopPose> set = poseFor(*fitted, *asked.attachment, stop, height_m);
      if (!set) return std::unexpected(set.error());
      each.set = *set;
      if (asked.taught_with && asked.taught_with->cutting_edge) {
        const Expected<StopPose> taught = poseFor(*fitted, *asked.taught_with, stop, height_m);
        if (!taught) return std::unexpected(taught.error());
        each.stored = storedStop(*fitted, stop, *taught);
      }
    } else {
      each.not_set = not_set;
    }
    warn(each, answer.warnings);
    if (each.proof && each.proof->holds) answer.holds = answer.holds.value_or(true) && *each.proof->holds;
    answer.stops.push_back(std::move(each));
  }
  if (answer.stops.empty())
    return fail(ErrorKind::Insufficient, "stops-nothing-wanted", {}, {.pointer = "/wanted"});
  const bool any_proof =
      std::ranges::any_of(answer.stops, [](const auto& stop) { return stop.proof.has_value(); });
  if (!fitted && !any_proof)
    return fail(ErrorKind::Insufficient, "stops-nothing-told", {}, {.pointer = "/cycles"});
  if (std::ranges::any_of(answer.stops, [](const auto& stop) { return stop.proof && !stop.proof->scatter; }))
    answer.warnings.push_back({"stop-proved-once", {}});
  if (fitted && asked.taught_with && !asked.taught_with->cutting_edge)
    answer.warnings.push_back({"stored-stop-without-edge", {}});
  if (fitted && asked.wanted[Stop::Lower] && !asked.wanted[Stop::Level])
    answer.taken.push_back({"taken-stop-level", {}});
  if (fitted && asked.wanted[Stop::Level] && !asked.wanted[Stop::Lower])
    answer.taken.push_back({"taken-stop-on-ground", {}});
  return answer;
}

}  // namespace hingepin::calibration
