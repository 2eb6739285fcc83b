// SPDX-License-Identifier: Apache-2.0
#include "tests/engine/linkage/multibody_peer.h"

#include <Simbody.h>

#include <algorithm>
#include <cmath>

namespace hingepin::peer {
namespace {

SimTK::Vec3 station(const Point& point) { return {point[0], point[1], 0.0}; }

SimTK::Body::Rigid bodyOf(const std::vector<PointMass>& points) {
  double mass = 0.0;
  SimTK::Vec3 moment(0.0);
  SimTK::Inertia inertia(0.0);
  for (const PointMass& point : points) {
    mass += point.mass_kg;
    moment += point.mass_kg * station(point.position_m);
    inertia += SimTK::Inertia(station(point.position_m), point.mass_kg);
  }
  return SimTK::Body::Rigid(SimTK::MassProperties(mass, moment / mass, inertia));
}

}  // namespace

struct MultibodyLoader::Model {
  SimTK::MultibodySystem system;
  SimTK::SimbodyMatterSubsystem matter{system};
  SimTK::GeneralForceSubsystem forces{system};
  SimTK::Force::UniformGravity gravity;
  SimTK::MobilizedBody::Pin boom, bellcrank, link, bucket;
  SimTK::Constraint::Rod lift_cylinder, tilt_cylinder;
  SimTK::State state;
  double lift_length_m = 0.0;
  double tilt_length_m = 0.0;

  explicit Model(const Loader& loader)
      : gravity(forces, matter, SimTK::Vec3(0.0, -loader.gravity_m_s2, 0.0)),
        boom(matter.Ground(), SimTK::Transform(), bodyOf(loader.boom), SimTK::Transform()),
        bellcrank(boom, SimTK::Transform(station(loader.bellcrank_pivot)), bodyOf(loader.bellcrank),
                  SimTK::Transform()),
        link(bellcrank, SimTK::Transform(station(loader.bellcrank_link_pin)), bodyOf(loader.link),
             SimTK::Transform()),
        bucket(boom, SimTK::Transform(SimTK::Vec3(loader.boom_length, 0.0, 0.0)), bodyOf(loader.bucket),
               SimTK::Transform()),
        lift_cylinder(matter.Ground(), station(loader.lift_frame_pin), boom, station(loader.lift_boom_pin),
                      1.0),
        tilt_cylinder(matter.Ground(), station(loader.tilt_frame_pin), bellcrank,
                      station(loader.bellcrank_tilt_pin), 1.0) {
    // The link's far end sits on the bucket's link pin: two planes in the bucket meet there.
    const SimTK::Vec3 link_end(loader.link_length, 0.0, 0.0);
    SimTK::Constraint::PointInPlane(bucket, SimTK::UnitVec3(1, 0, 0), loader.bucket_link_pin[0], link,
                                    link_end);
    SimTK::Constraint::PointInPlane(bucket, SimTK::UnitVec3(0, 1, 0), loader.bucket_link_pin[1], link,
                                    link_end);
    state = system.realizeTopology();
    // A rough drawing of a Z-bar at level: tilt arm up and back, link arm down, bucket level. The solver does
    // the rest.
    const double degree = SimTK::Pi / 180.0;
    boom.setAngle(state, 0.0);
    bellcrank.setAngle(state, 125.0 * degree);
    link.setAngle(state, -85.0 * degree);
    bucket.setAngle(state, 0.0);
    system.realize(state, SimTK::Stage::Position);
    settle(matter.Ground().calcStationToStationDistance(state, station(loader.lift_frame_pin), boom,
                                                        station(loader.lift_boom_pin)),
           matter.Ground().calcStationToStationDistance(state, station(loader.tilt_frame_pin), bellcrank,
                                                        station(loader.bellcrank_tilt_pin)));
  }

  void settle(double lift_m, double tilt_m) {
    lift_length_m = lift_m;
    tilt_length_m = tilt_m;
    lift_cylinder.setRodLength(state, lift_m);
    tilt_cylinder.setRodLength(state, tilt_m);
    state.updU() = 0.0;
    SimTK::ProjectOptions options(1e-13);
    options.setProjectionLimit(SimTK::Infinity);
    options.setOption(SimTK::ProjectOptions::ForceProjection);
    SimTK::ProjectResults results;
    SimTK::Vector no_estimate;
    system.realize(state, SimTK::Stage::Position);
    system.projectQ(state, no_estimate, options, results);
  }
};

MultibodyLoader::MultibodyLoader(const Loader& loader) : model_(std::make_unique<Model>(loader)) {}
MultibodyLoader::~MultibodyLoader() = default;

void MultibodyLoader::moveTo(double lift_length_m, double tilt_length_m) {
  const double lift_way = lift_length_m - model_->lift_length_m;
  const double tilt_way = tilt_length_m - model_->tilt_length_m;
  const int steps = std::max(1, int(std::ceil(std::max(std::abs(lift_way), std::abs(tilt_way)) / 0.01)));
  for (int left = steps - 1; left >= 0; --left)
    model_->settle(lift_length_m - lift_way * left / steps, tilt_length_m - tilt_way * left / steps);
  model_->system.realize(model_->state, SimTK::Stage::Acceleration);
}

double MultibodyLoader::boomAngle() const { return model_->boom.getAngle(model_->state); }
double MultibodyLoader::bellcrankAngle() const { return model_->bellcrank.getAngle(model_->state); }
double MultibodyLoader::bucketAngle() const { return boomAngle() + model_->bucket.getAngle(model_->state); }
double MultibodyLoader::liftForce() const { return -model_->lift_cylinder.getRodTension(model_->state); }
double MultibodyLoader::potentialEnergy() const { return model_->system.calcPotentialEnergy(model_->state); }
double MultibodyLoader::closingError() const { return model_->state.getQErr().normInf(); }

Point MultibodyLoader::onBucket(const Point& point) const {
  const SimTK::Vec3 ground = model_->bucket.findStationLocationInGround(model_->state, station(point));
  return {ground[0], ground[1]};
}

}  // namespace hingepin::peer
