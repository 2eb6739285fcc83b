// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <Eigen/Core>
#include <optional>

#include "engine/calibration/model.h"
#include "engine/calibration/pass.h"
#include "engine/calibration/viscosity.h"
#include "engine/linkage/linkage.h"

namespace hingepin::calibration {

/// The rows of a pass in the terms of the lift model
///   balance = tare(unknowns) + mass * span(unknowns) + noise,
/// where the balance is the lift-cylinder moment, N m (with a linkage) or the lift-cylinder force, N
/// (without).
struct ModelRows {
  Eigen::VectorXd angle_rad;        ///< of the boom against the machine
  Eigen::VectorXd balance;          ///< measured
  Eigen::VectorXd arm;              ///< balance per newton of lift-cylinder force
  Eigen::VectorXd speed_rad_per_s;  ///< of the boom
  Eigen::VectorXd span;             ///< balance per kg of payload at its stated centre, inertia included
  Eigen::VectorXd span_along;       ///< change of span per m of centre along the bucket floor
  Eigen::VectorXd span_across;      ///< and square to it
  Eigen::VectorXd
      unsteady_span;  ///< balance per kg of payload by acceleration beyond that of a constant oil flow
  Eigen::VectorXd unsteady_tare;    ///< and the same of the tare, as a share of it
  Eigen::VectorXd log_span_slope;   ///< d ln(span/arm)/d angle, 1/rad; 0 without a linkage
  Eigen::VectorXd gravity_tan;      ///< tan of the boom angle against the horizontal
  Eigen::MatrixXd tare;             ///< (rows, unknowns): derivative of the tare by each unknown
  Eigen::VectorXd unracked_tare;    ///< what a bucket off its rack stop adds to the tare
  double viscosity_ratio = 1.0;     ///< of the oil to the same oil at 40 Cel
  double viscosity_change_u = 0.0;  ///< relative doubt of that ratio against the taught one's
};

/// Rows this far beyond the window are fitted too, to see the bounce of a machine and to steady the tare's
/// ends.
inline constexpr double kWindowMargin_rad = 14.0 * 0.017453292519943295;

/// How alike two passes are, as a share of the lift force. Standard uncertainty; a judgement, no source.
inline constexpr double kPassRepeatability_u = 0.0005;

/// The lift model with the linkage of a calibration at hand.
class LiftModel {
 public:
  /// Errors: those of linkage::Linkage::make and oilOfGrade.
  [[nodiscard]] static Expected<LiftModel> make(const Calibration& calibration);

  /// Oil of no stated temperature is taken at the taught one, or at 50 Cel.
  /// @param tilt_offset_m the tilt cylinder's length less its racked end
  /// Errors: a loop that cannot close at an angle of the pass; an oil temperature beyond the viscosity law.
  [[nodiscard]] Expected<ModelRows> rows(const Pass& pass, double tilt_offset_m) const;

  [[nodiscard]] int unknowns() const { return kUnknowns + calibration_->tare_basis.size(); }
  [[nodiscard]] const linkage::Linkage* geometry() const { return geometry_ ? &*geometry_ : nullptr; }
  [[nodiscard]] double windowMiddle_rad() const {
    return 0.5 * (calibration_->window_low_rad + calibration_->window_high_rad);
  }
  [[nodiscard]] double windowHalf_rad() const {
    return 0.5 * (calibration_->window_high_rad - calibration_->window_low_rad);
  }

 private:
  struct Motion {
    Eigen::VectorXd speed_rad_per_s;
    Eigen::VectorXd acceleration_rad_per_s2;
  };
  [[nodiscard]] Motion motionOf(const Pass& pass) const;

  LiftModel(const Calibration& calibration, const std::optional<linkage::Linkage>& geometry, const Oil& oil)
      : calibration_(&calibration), geometry_(geometry), oil_(oil) {}
  const Calibration* calibration_;
  std::optional<linkage::Linkage> geometry_;
  Oil oil_;
};

/// A mass estimated from a pass, linear in the unknowns about the state's means.
struct MassEstimate {
  double mass_kg = 0.0;
  Eigen::RowVectorXd jacobian;  ///< change of mass_kg per unit of each unknown's true value
  double noise_u_kg = 0.0;      ///< from the scatter of this pass, its correlation counted in
  double degrees_of_freedom = 0.0;
  double kg_per_pascal = 0.0;       ///< of a common error of the head pressure
  double repeatability_u_kg = 0.0;  ///< from what no two passes have alike
  double unsteady_u_kg = 0.0;       ///< from acceleration within the window
  double residual_Pa = 0.0;         ///< SD of the residuals, as head pressure
  double swing_kg = 0.0;  ///< how the readings vary about one mass, bounces and all; root mean square
  int rows = 0;           ///< within the window
  int bounces = 0;        ///< oscillations that were found and fitted
};

/// Best linear unbiased estimate of (balance - tare) on span within the weigh window, given the state's
/// doubts; averaged over the plausible models of the pass's noise (Hoeting et al. 1999, Bayesian model
/// averaging).
/// @param is_test_mass whose centre, not the heap's, is in doubt
[[nodiscard]] MassEstimate estimateMass(const Calibration& calibration, const LiftModel& model,
                                        const Pass& pass, const ModelRows& rows, bool is_test_mass);

/// How far the tilt cylinder was from its racked end during a pass.
struct RackCheck {
  double tilt_offset_m = 0.0;      ///< 0 without a linkage
  double bucket_offset_rad = 0.0;  ///< bucket angle less racked; negative is towards dumped
  bool known = false;
};
[[nodiscard]] RackCheck checkRacked(const Calibration& calibration, const LiftModel& model, const Pass& pass);

}  // namespace hingepin::calibration
