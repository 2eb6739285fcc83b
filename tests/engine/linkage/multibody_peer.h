// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <memory>
#include <vector>

namespace hingepin::peer {

using Point = std::array<double, 2>;

struct PointMass {
  double mass_kg;
  Point position_m;
};

/// A loader as bodies, joints and loops, in metres, radians and kilograms; body frames as in the linkage
/// file.
struct Loader {
  double boom_length;
  Point lift_frame_pin, lift_boom_pin, tilt_frame_pin, bellcrank_pivot;
  Point bellcrank_tilt_pin, bellcrank_link_pin;  ///< from the pivot, in the bellcrank's frame
  double link_length;
  Point bucket_link_pin;  ///< from the hinge pin, in the bucket's frame
  std::vector<PointMass> boom, bellcrank, link, bucket;
  double gravity_m_s2;
};

/// The loader in an independent multibody library: Simbody 3.7 (Sherman, Seth, Delp 2011, Procedia IUTAM 2,
/// doi:10.1016/j.piutam.2011.04.023). Bodies hang on pin joints; constraints close the loops; the two
/// cylinders are rods whose tension is the answer. It includes none of the engine, and is C++17, as that
/// library's headers demand.
class MultibodyLoader {
 public:
  explicit MultibodyLoader(const Loader& loader);
  ~MultibodyLoader();

  /// Moves from wherever the loader is to these cylinder lengths, in steps too small to jump to another
  /// branch, and lets it rest there.
  void moveTo(double lift_length_m, double tilt_length_m);

  [[nodiscard]] double boomAngle() const;
  [[nodiscard]] double bellcrankAngle() const;  ///< against the boom
  [[nodiscard]] double bucketAngle() const;     ///< above the horizontal
  [[nodiscard]] Point onBucket(const Point& point) const;
  [[nodiscard]] double liftForce() const;  ///< N, positive where the cylinder pushes
  [[nodiscard]] double potentialEnergy() const;
  [[nodiscard]] double closingError() const;  ///< the largest gap in any loop, m

 private:
  struct Model;
  std::unique_ptr<Model> model_;
};

}  // namespace hingepin::peer
