// SPDX-License-Identifier: Apache-2.0
#include "engine/session/fitting.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <nlohmann/json.hpp>
#include <set>
#include <utility>
#include <vector>

#include "engine/calibration/angles.h"
#include "engine/calibration/calibration.h"
#include "engine/linkage/linkage.h"

namespace hingepin::session {
namespace {

using procedures::BoomPlace;
using procedures::BucketPlace;
using procedures::EventType;
using procedures::Procedure;
using procedures::State;
using procedures::Step;
using procedures::StepKind;
using procedures::Try;
using Json = nlohmann::ordered_json;

/// Where the machine stood, and what was read there, by the key that a calibration job has for it.
struct Stand {
  BoomPlace boom = BoomPlace::Any;
  BucketPlace bucket = BucketPlace::Any;
  std::string mass{};  ///< of the test mass in the bucket, "" for none
  std::map<std::string, std::string> read{};
};

/// The key in a calibration job for a quantity that was read; "" for one that it doesn't use.
std::string keyOf(const Step& step) {
  if (step.quantity == "boom-angle") {
    return step.source == procedures::Source::Independent ? "boom_angle" : "boom_sensor";
  }
  static const std::map<std::string, std::string, std::less<>> keys = {
      {"boom-sensor", "boom_sensor"},
      {"bucket-sensor", "bucket_sensor"},
      {"head-pressure", "head_pressure"},
      {"rod-pressure", "rod_pressure"},
      {"oil-temperature", "oil_temperature"}};
  const auto found = keys.find(step.quantity);
  return found == keys.end() ? "" : found->second;
}

/// Steps whose values go into a calibration: said so, or looked at by a fit.
std::set<std::string> stepsForCalibration(const Procedure& procedure, const std::string& variant) {
  std::set<std::string> steps;
  for (const Step& step : procedure.steps) {
    if (!procedures::hasStep(variant, step)) continue;
    if (step.use == procedures::Use::Calibration) steps.insert(step.id);
    if (step.check && step.check->kind == procedures::CheckKind::FitResidual) {
      steps.insert(step.check->of.begin(), step.check->of.end());
    }
  }
  return steps;
}

class Gathering {
 public:
  Gathering(const Procedure& procedure, const State& state)
      : procedure_(procedure), state_(state), wanted_(stepsForCalibration(procedure, state.start.variant)) {
    for (const std::string& id : wanted_) {
      const Step* const step = procedures::findStep(procedure.steps, id);
      has_boom_sensor_ = has_boom_sensor_ || (step != nullptr && step->quantity == "boom-sensor");
    }
  }

  void gather() {
    for (const Try& each : state_.tries) {
      const Step* const step = procedures::findStep(procedure_.steps, each.event.about);
      if (step == nullptr || !each.counts) continue;
      if (each.event.type == EventType::Answer && each.event.answer == "done") {
        if (step->kind == StepKind::Pose) pose(*step);
        if (step->kind == StepKind::Pass) pass(*step, each);
      }
      if (each.event.type == EventType::Reading && wanted_.contains(step->id))
        reading(*step, each.event.value);
    }
    leave();
  }

  [[nodiscard]] Json poses() const;
  [[nodiscard]] Json lifts() const;

 private:
  /// The mass that the steps before this one have put into the bucket.
  [[nodiscard]] std::string massAt(const Step& step) const {
    std::string mass;
    for (const Step& before : procedure_.steps) {
      if (&before == &step) break;
      if (before.quantity != "reference-mass" || !wanted_.contains(before.id)) continue;
      for (const Try& each : state_.tries) {
        if (each.counts && each.event.about == before.id) mass = each.event.value;
      }
    }
    return mass;
  }
  void pose(const Step& step) {
    leave();
    stand_ = Stand{.boom = step.boom, .bucket = step.bucket};
  }
  void pass(const Step& step, const Try& done) {
    leave();
    stand_.reset();
    if (!wanted_.contains(step.id) || done.event.hashes.empty() || step.load == procedures::Load::Any) return;
    Json lift = {{"kind", "empty"},
                 {"pace", step.pace == procedures::Pace::Fast ? "fast" : "slow"},
                 {"direction", step.direction == procedures::Direction::Down ? "down" : "up"}};
    if (step.load == procedures::Load::TestMass) {
      std::string mass = massAt(step);
      if (const auto entry = state_.start.entries.find("test-mass");
          mass.empty() && entry != state_.start.entries.end()) {
        mass = entry->second;
      }
      if (mass.empty()) return;
      lift["kind"] = "test-mass";
      lift["mass"] = mass;
    }
    lift["log"] = done.event.hashes.front();
    logged_.push_back(std::move(lift));
  }
  void reading(const Step& step, const std::string& value) {
    const std::string key = keyOf(step);
    if (key.empty() || !stand_) return;
    // The monitor's own angle serves as the sensor where nothing nearer to the sensor is read.
    if (step.quantity == "boom-angle" && key == "boom_sensor" && has_boom_sensor_) return;
    if (stand_->read.contains(key)) leave();  // the same once more: the next of several readings at one place
    stand_->read[key] = value;
    stand_->mass = massAt(step);
  }
  /// Keeps what was read where the machine stood.
  void leave() {
    if (!stand_ || stand_->read.empty()) return;
    stands_.push_back(*stand_);
    stand_->read.clear();
  }

  const Procedure& procedure_;
  const State& state_;
  std::set<std::string> wanted_;
  std::optional<Stand> stand_{};
  std::vector<Stand> stands_{};
  std::vector<Json> logged_{};
  bool has_boom_sensor_ = false;
};

Json Gathering::poses() const {
  Json poses = Json::array();
  const auto add = [&](const char* name, const Stand& stand, bool angle, bool bucket) {
    Json pose = {{"pose", name}, {"boom_sensor", stand.read.at("boom_sensor")}};
    if (angle) pose["boom_angle"] = stand.read.at("boom_angle");
    if (bucket) pose["bucket_sensor"] = stand.read.at("bucket_sensor");
    poses.push_back(std::move(pose));
  };
  for (const Stand& stand : stands_) {
    if (!stand.read.contains("boom_sensor")) continue;
    const bool bucket = stand.read.contains("bucket_sensor");
    if (bucket && stand.bucket == BucketPlace::Dumped) add("bucket-dumped", stand, false, true);
    // Only the racked bucket stands where the linkage knows it.
    const bool racked = stand.bucket == BucketPlace::RackedBack;
    const bool known_place =
        stand.boom == BoomPlace::Lowest || stand.boom == BoomPlace::Highest || stand.boom == BoomPlace::Level;
    if (stand.read.contains("boom_angle") && (known_place || !stand.read.contains("head_pressure"))) {
      add(stand.boom == BoomPlace::Lowest    ? "boom-lowest"
          : stand.boom == BoomPlace::Highest ? "boom-highest"
                                             : "boom-reference",
          stand, true, bucket && racked);
    }
    if (bucket && racked && stand.boom == BoomPlace::Level) add("bucket-racked", stand, false, true);
  }
  return poses;
}

Json Gathering::lifts() const {
  Json lifts = logged_;
  std::map<std::string, Json> points;  // by the mass that was held
  for (const Stand& stand : stands_) {
    if (!stand.read.contains("boom_sensor") || !stand.read.contains("head_pressure")) continue;
    Json point = Json::object();
    for (const auto& [key, value] : stand.read) {
      if (key != "boom_angle") point[key] = value;
    }
    points[stand.mass].push_back(std::move(point));
  }
  for (auto& [mass, held] : points) {
    Json lift = {{"kind", mass.empty() ? "empty" : "test-mass"}};
    if (!mass.empty()) lift["mass"] = mass;
    lift["points"] = std::move(held);
    lifts.push_back(std::move(lift));
  }
  return lifts;
}

double largest(const std::vector<double>& values) {
  double most = 0.0;
  for (const double value : values) most = std::max(most, std::abs(value));
  return most;
}

Expected<double> boomAngleResidual(const calibration::Job& job) {
  std::vector<Message> warnings;
  const Expected<calibration::SensorLine> line = calibration::fitBoomLine(job, warnings);
  if (!line) return std::unexpected(line.error());
  std::vector<double> off_rad;
  for (const calibration::PoseReading& pose : job.poses) {
    if (pose.boom_angle) off_rad.push_back(pose.boom_angle->inRadians() - line->angle(pose.boom_sensor));
  }
  return largest(off_rad);
}

/// Of the bellcrank's angle against the boom, which is what the bucket sensor senses.
Expected<double> bucketAngleResidual(const calibration::Job& job) {
  if (!job.unit.linkage) return fail(ErrorKind::Insufficient, "job-has-no-linkage");
  std::vector<Message> warnings;
  const Expected<calibration::SensorLine> line = calibration::fitBoomLine(job, warnings);
  if (!line) return std::unexpected(line.error());
  const Expected<linkage::Linkage> linkage = linkage::Linkage::make(*job.unit.linkage);
  if (!linkage) return std::unexpected(linkage.error());
  const auto sensor = calibration::fitBucketSensor(job, *line, &*linkage, warnings);
  if (!sensor) return std::unexpected(sensor.error());
  if (!*sensor || !(*sensor)->bellcrank_line) return fail(ErrorKind::Insufficient, "too-few-values");
  std::vector<double> off_rad;
  for (const calibration::PoseReading& pose : job.poses) {
    if (!pose.bucket_sensor) continue;
    const bool dumped = pose.kind == calibration::PoseKind::BucketDumped;
    const Length tilt =
        dumped ? job.unit.linkage->tilt_cylinder_retracted : job.unit.linkage->tilt_cylinder_extended;
    const auto state = linkage->tilt(line->angle(pose.boom_sensor), tilt.inMetres());
    if (!state) return std::unexpected(state.error());
    off_rad.push_back(state->bellcrank_by_boom.value - (*sensor)->bellcrank_line->angle(*pose.bucket_sensor));
  }
  return largest(off_rad);
}

Expected<double> liftPressureResidual(const calibration::Job& job) {
  const Expected<calibration::Calibration> fitted = calibration::calibrate(job);
  if (!fitted) return std::unexpected(fitted.error());
  std::vector<double> deviations_Pa;
  for (const calibration::PassSummary& pass : fitted->passes) deviations_Pa.push_back(pass.residual_Pa);
  return largest(deviations_Pa);
}

}  // namespace

std::optional<std::string> calibrationJobOf(const Procedure& procedure, const State& state,
                                            const UnitProfile& unit, const AttachmentProfile* attachment) {
  Gathering gathering(procedure, state);
  gathering.gather();
  const Json poses = gathering.poses();
  const Json lifts = gathering.lifts();
  if (poses.empty() && lifts.empty()) return std::nullopt;
  std::string text = R"({"format":"hingepin-job/1","unit":)" + unit.block;
  if (attachment != nullptr) text += R"(,"attachment":)" + attachment->block;
  return text + unit.place + R"(,"poses":)" + poses.dump() + R"(,"lifts":)" + lifts.dump() + "}\n";
}

procedures::Measure measureOf(const Procedure& procedure, const State& state, const UnitProfile& unit,
                              const AttachmentProfile* attachment, const Edge& edge, const BlobSource& logs) {
  return [&procedure, &state, &unit, attachment, &edge, &logs](
             const procedures::Check& check, std::span<const procedures::Observation>) -> Expected<double> {
    const std::optional<std::string> text = calibrationJobOf(procedure, state, unit, attachment);
    if (!text) return fail(ErrorKind::Insufficient, "no-value");
    Expected<double> residual = 0.0;
    if (const Expected<calibration::Job> job = edge.read_job(*text, logs); !job) {
      residual = std::unexpected(job.error());
    } else {
      switch (check.fit) {
        case procedures::Fit::BoomAngle:
          residual = boomAngleResidual(*job);
          break;
        case procedures::Fit::BucketAngle:
          residual = bucketAngleResidual(*job);
          break;
        case procedures::Fit::LiftPressure:
          residual = liftPressureResidual(*job);
          break;
      }
    }
    // Readings that contradict each other fail the check, and are taken again.
    if (!residual && residual.error().kind == ErrorKind::InvalidInput)
      residual.error().kind = ErrorKind::Insufficient;
    if (!residual && residual.error().kind == ErrorKind::RankDeficient)
      residual.error().kind = ErrorKind::Insufficient;
    return residual;
  };
}

}  // namespace hingepin::session
