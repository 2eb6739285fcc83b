// SPDX-License-Identifier: Apache-2.0
#include "engine/survey/survey.h"

#include <Eigen/QR>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <span>
#include <string>
#include <unsupported/Eigen/AutoDiff>
#include <utility>

namespace hingepin::survey {
namespace {

using linkage::kLinkageNumbers;
using linkage::LinkageNumber;
using linkage::linkageNumbers;
using linkage::PerNumber;
using std::numbers::pi;

// Unknowns: the linkage's numbers, these three, then three angles a pose.
constexpr int kNumbers = static_cast<int>(kLinkageNumbers);
constexpr int kGround = kNumbers;
constexpr int kPlateAngle = kNumbers + 1;
constexpr int kPlateOffset = kNumbers + 2;
constexpr int kFirstPose = kNumbers + 3;
constexpr int kPerPose = 3;
constexpr int kLocal = kFirstPose + kPerPose;  // what one measurement can depend on

// Beforehand, standard uncertainties; judgements. A straight edge of the boom runs within some 20 degrees of
// its pins, some decimetres off.
constexpr double kPlateAngle_u_rad = 15.0 * kDegree;
constexpr double kPlateOffset_u_m = 0.5;
constexpr double kBoomAngle_u_rad = 40.0 * kDegree;
constexpr double kLoopAngle_u_rad = 60.0 * kDegree;
constexpr double kRackedFloor_rad = 45.0 * kDegree;

// A link and a cylinder at its end close to within this; wider at first, so that the way to the optimum is
// smooth.
constexpr std::array kClosure_u_m = {0.05, 1e-3, 1e-5};
constexpr int kMostSteps = 80;
constexpr int kRoughSteps = 10;
// Of the sum of squares: nothing is left to be gained; a hundredth of a standard uncertainty is left, where
// the closures bend too much for a step of it.
constexpr double kLeastDecrease = 1e-6;
constexpr double kFound = 1e-4;
constexpr double kLittleDamping = 0.011;  // against the 1 of what was known beforehand

// Studentised residuals beyond this happen in about one survey in fifty of forty measurements.
constexpr double kDisagrees = 3.5;

// Two optima whose sums of squares differ by less are both allowed for: odds of one in ninety.
constexpr double kEquallyGood = 9.0;

using Dual = Eigen::AutoDiffScalar<Eigen::Matrix<double, kLocal, 1>>;

template <class T>
struct Point {
  T x;
  T y;
};
template <class T>
Point<T> operator+(const Point<T>& a, const Point<T>& b) {
  return {T(a.x + b.x), T(a.y + b.y)};
}
template <class T>
Point<T> operator-(const Point<T>& a, const Point<T>& b) {
  return {T(a.x - b.x), T(a.y - b.y)};
}
template <class T>
T distance(const Point<T>& a, const Point<T>& b) {
  using std::sqrt;
  const T x = b.x - a.x;
  const T y = b.y - a.y;
  return T(sqrt(T(x * x + y * y + 1e-18)));  // a pin upon a pin has no direction
}
template <class T>
Point<T> turned(const Point<T>& a, const T& angle) {
  using std::cos;
  using std::sin;
  const T c = cos(angle);
  const T s = sin(angle);
  return {T(c * a.x - s * a.y), T(s * a.x + c * a.y)};
}
template <class T>
T cross(const Point<T>& a, const Point<T>& b) {
  return T(a.x * b.y - a.y * b.x);
}

/// Everything that a measurement can depend on: numbers in metres and radians.
template <class T>
struct Stand {
  std::array<T, kLinkageNumbers> number;
  T ground;
  T plate_angle;   ///< of the straight edge against A->B
  T plate_offset;  ///< of the edge from A, square to the edge
  T boom;
  T crank;   ///< of the tilt arm against A->B
  T bucket;  ///< of hinge pin -> bucket link pin against A->B
};

/// Places of the numbers in the file's order.
enum Number : std::size_t {
  kBoomLength,
  kPivotHeight,
  kLiftFrame,
  kLiftBoom = kLiftFrame + 2,
  kTiltFrame = kLiftBoom + 2,
  kCrankPivot = kTiltFrame + 2,
  kTiltArm = kCrankPivot + 2,
  kLinkArm,
  kCrankAngle,
  kLink,
  kBucketPinDistance,
  kBucketPinAngle,
  kRetracted,
  kExtended
};
static_assert(kExtended + 1 == kLinkageNumbers);

template <class T>
Point<T> pinOf(const Stand<T>& s, std::size_t first) {
  return {s.number[first], s.number[first + 1]};
}

/// In the frame of the boom pivot, forward and up, ground level taken as level.
template <class T>
Point<T> at(const Stand<T>& s, Pin pin) {
  const Point<T> pivot = pinOf(s, kCrankPivot);
  switch (pin) {
    case Pin::BoomPivot:
      return {T(0.0), T(0.0)};
    case Pin::LiftFramePin:
      return pinOf(s, kLiftFrame);
    case Pin::TiltFramePin:
      return pinOf(s, kTiltFrame);
    case Pin::HingePin:
      return turned({s.number[kBoomLength], T(0.0)}, s.boom);
    case Pin::LiftBoomPin:
      return turned(pinOf(s, kLiftBoom), s.boom);
    case Pin::BellcrankPivot:
      return turned(pivot, s.boom);
    case Pin::BellcrankTiltPin:
      return turned(pivot + turned({s.number[kTiltArm], T(0.0)}, s.crank), s.boom);
    case Pin::BellcrankLinkPin:
      return turned(pivot + turned({s.number[kLinkArm], T(0.0)}, T(s.crank + s.number[kCrankAngle])), s.boom);
    case Pin::BucketLinkPin:
      return turned(
          Point<T>{s.number[kBoomLength], T(0.0)} + turned({s.number[kBucketPinDistance], T(0.0)}, s.bucket),
          s.boom);
  }
  return {T(0.0), T(0.0)};
}

enum class Body : unsigned { Frame = 1, Boom = 2, Bellcrank = 4, Bucket = 8, Link = 16 };

/// The bodies that a pin belongs to, as bits.
unsigned bodiesOf(Pin pin) {
  const auto bit = [](Body body) { return static_cast<unsigned>(body); };
  switch (pin) {
    case Pin::BoomPivot:
      return bit(Body::Frame) | bit(Body::Boom);
    case Pin::HingePin:
      return bit(Body::Boom) | bit(Body::Bucket);
    case Pin::LiftFramePin:
    case Pin::TiltFramePin:
      return bit(Body::Frame);
    case Pin::LiftBoomPin:
      return bit(Body::Boom);
    case Pin::BellcrankPivot:
      return bit(Body::Boom) | bit(Body::Bellcrank);
    case Pin::BellcrankTiltPin:
      return bit(Body::Bellcrank);
    case Pin::BellcrankLinkPin:
      return bit(Body::Bellcrank) | bit(Body::Link);
    case Pin::BucketLinkPin:
      return bit(Body::Bucket) | bit(Body::Link);
  }
  return 0;
}
bool onFrame(Pin pin) { return (bodiesOf(pin) & static_cast<unsigned>(Body::Frame)) != 0; }
bool onOneBody(Pin a, Pin b) { return (bodiesOf(a) & bodiesOf(b)) != 0; }
bool onLink(Pin pin) { return (bodiesOf(pin) & static_cast<unsigned>(Body::Link)) != 0; }
bool beyondBoom(Pin pin) { return !onFrame(pin) && !isOnBoom(pin); }

template <class T>
T predict(const Target& target, const Stand<T>& s) {
  using std::atan2;
  using std::cos;
  using std::sin;
  const Point<T> from = at(s, target.from);
  // As plumb line and level have it: the machine stands on the ground, not on the horizontal.
  const Point<T> way = turned(at(s, target.to) - from, s.ground);
  switch (target.kind) {
    case Kind::Distance:
      // The link has no angle of its own among the unknowns.
      if (onLink(target.from) && onLink(target.to)) return s.number[kLink];
      return distance(from, at(s, target.to));
    case Kind::Horizontal:
      return way.x;
    case Kind::Vertical:
      return way.y;
    case Kind::Height:
      return T(s.number[kPivotHeight] + from.y);
    case Kind::Inclination:
      return T(atan2(way.y, way.x));
    case Kind::BoomPlateAngle:
      return T(s.boom + s.plate_angle + s.ground);
    case Kind::BoomPlateOffset: {
      const Point<T> on_boom = turned(from, T(-s.boom - s.plate_angle));
      return T(s.plate_offset - on_boom.y);
    }
    case Kind::BucketFloorAngle:
      return T(s.boom + s.bucket - s.number[kBucketPinAngle] + s.ground);
    case Kind::GroundAngle:
      return s.ground;
    case Kind::DataSheet:
      return s.number[target.number];
  }
  return T(0.0);
}

/// Whether the bellcrank's and the bucket's angle of the pose matter.
bool asksOfTilt(const Target& target) {
  if (target.kind == Kind::BucketFloorAngle) return true;
  if (target.kind == Kind::Distance && onOneBody(target.from, target.to)) return false;
  return (takesTwoPins(target.kind) && (beyondBoom(target.from) || beyondBoom(target.to))) ||
         (takesOnePin(target.kind) && beyondBoom(target.from));
}

/// A value with its derivatives by all unknowns.
struct Line {
  double value = 0.0;
  Eigen::RowVectorXd by;
};

struct System {
  Eigen::VectorXd residuals;  ///< measured less predicted, over u; last the unknowns themselves
  Eigen::MatrixXd design;
  [[nodiscard]] double cost() const { return residuals.squaredNorm(); }
};

class Model {
 public:
  explicit Model(const Survey& survey);

  [[nodiscard]] Eigen::Index size() const { return mean_.size(); }
  [[nodiscard]] bool usesTilt(std::size_t pose) const { return uses_tilt_[pose]; }

  /// @param unknowns in units of what was in doubt of each beforehand, from its mean
  template <class T>
  [[nodiscard]] Stand<T> stand(const Eigen::VectorXd& unknowns, std::optional<std::size_t> pose) const;

  [[nodiscard]] Line line(const Target& target, const Eigen::VectorXd& unknowns) const {
    return linear(target.pose, unknowns, [&](const auto& s) { return predict(target, s); });
  }
  /// How far the link is from reaching, of a pose.
  [[nodiscard]] Line linkGap(std::size_t pose, const Eigen::VectorXd& unknowns) const {
    return linear(pose, unknowns, [](const auto& s) {
      using T = std::decay_t<decltype(s.boom)>;
      return T(distance(at(s, Pin::BellcrankLinkPin), at(s, Pin::BucketLinkPin)) - s.number[kLink]);
    });
  }
  /// How far the tilt cylinder is from its end.
  [[nodiscard]] Line endGap(std::size_t pose, TiltEnd end, const Eigen::VectorXd& unknowns) const {
    return linear(pose, unknowns, [end](const auto& s) {
      using T = std::decay_t<decltype(s.boom)>;
      return T(distance(at(s, Pin::TiltFramePin), at(s, Pin::BellcrankTiltPin)) -
               s.number[end == TiltEnd::Extended ? kExtended : kRetracted]);
    });
  }
  [[nodiscard]] System system(const Eigen::VectorXd& unknowns, double closure_u_m) const;
  [[nodiscard]] linkage::ZBarGeometry geometry(const Eigen::VectorXd& unknowns) const;
  /// (numbers, unknowns)
  [[nodiscard]] Eigen::MatrixXd numbersBy(const Eigen::VectorXd& unknowns) const;
  /// Whether every loop that was asked of closes the way that a job file means.
  [[nodiscard]] bool closesRightly(const Eigen::VectorXd& unknowns) const;

  [[nodiscard]] double mean(Eigen::Index unknown) const { return mean_(unknown); }
  [[nodiscard]] double sd(Eigen::Index unknown) const { return sd_(unknown); }

  /// A pose more, at this stand of the linkage, with what was in doubt of it beforehand.
  void addPose(double boom_rad, double crank_rad, double bucket_rad);

 private:
  template <class F>
  [[nodiscard]] Line linear(std::optional<std::size_t> pose, const Eigen::VectorXd& unknowns, F f) const;
  void addStart(std::size_t pose);

  const Survey* survey_;
  Eigen::VectorXd mean_;
  Eigen::VectorXd sd_;
  std::vector<bool> uses_tilt_;
};

/// The even spread between the ends of what is plausible, as a normal one of the same variance.
double spread(double low, double high) { return (high - low) / std::sqrt(12.0); }

Model::Model(const Survey& survey) : survey_(&survey), mean_(kFirstPose), sd_(kFirstPose) {
  for (int i = 0; i < kNumbers; ++i) {
    const LinkageNumber& number = linkageNumbers()[i];
    // The boom's length by its logarithm, other lengths as shares of it.
    const bool size = i == kBoomLength;
    const double low = size ? std::log(number.low) : number.low;
    const double high = size ? std::log(number.high) : number.high;
    mean_(i) = 0.5 * (low + high);
    sd_(i) = spread(low, high);
  }
  mean_.tail(3).setZero();
  sd_(kGround) = survey.ground_u_rad;
  sd_(kPlateAngle) = kPlateAngle_u_rad;
  sd_(kPlateOffset) = kPlateOffset_u_m;
  for (const Pose& pose : survey.poses) uses_tilt_.push_back(pose.tilt_end.has_value());
  for (const Measurement& each : survey.measurements)
    if (each.target.pose && asksOfTilt(each.target)) uses_tilt_[*each.target.pose] = true;
  for (std::size_t pose = 0; pose < survey.poses.size(); ++pose) addStart(pose);
}

void Model::addPose(double boom_rad, double crank_rad, double bucket_rad) {
  mean_.conservativeResize(mean_.size() + kPerPose);
  sd_.conservativeResize(mean_.size());
  mean_.tail(kPerPose) << boom_rad, crank_rad, bucket_rad;
  sd_.tail(kPerPose) << kBoomAngle_u_rad, kLoopAngle_u_rad, kLoopAngle_u_rad;
}

/// Where the search begins: the boom as an inclinometer had it, the bucket as its floor stood, the bellcrank
/// where the link of a middling loader holds it.
void Model::addStart(std::size_t pose) {
  const auto measured = [&](auto wanted) -> std::optional<double> {
    for (const Measurement& each : survey_->measurements)
      if (each.target.pose == pose && wanted(each.target)) return each.value;
    return std::nullopt;
  };
  const std::optional<double> pins = measured([](const Target& t) {
    return t.kind == Kind::Inclination && t.from == Pin::BoomPivot && t.to == Pin::HingePin;
  });
  const std::optional<double> plate =
      measured([](const Target& t) { return t.kind == Kind::BoomPlateAngle; });
  const double boom_rad = pins.value_or(plate.value_or(0.0));
  const std::optional<TiltEnd> end = survey_->poses[pose].tilt_end;
  const double floor_rad = measured([](const Target& t) { return t.kind == Kind::BucketFloorAngle; })
                               .value_or(!end                        ? 0.5 * kRackedFloor_rad
                                         : *end == TiltEnd::Extended ? kRackedFloor_rad
                                                                     : -kRackedFloor_rad);
  const double bucket_rad = floor_rad - boom_rad + mean_(kBucketPinAngle);
  const Point<double> link_pin{1.0 + mean_(kBucketPinDistance) * std::cos(bucket_rad) - mean_(kCrankPivot),
                               mean_(kBucketPinDistance) * std::sin(bucket_rad) - mean_(kCrankPivot + 1)};
  const double base = std::hypot(link_pin.x, link_pin.y);
  const double arm = mean_(kLinkArm);
  const double inner = std::acos(
      std::clamp((base * base + arm * arm - mean_(kLink) * mean_(kLink)) / (2.0 * base * arm), -0.98, 0.98));
  // The link arm hangs on the near side of the line from its pivot to the link pin.
  double crank_rad = std::atan2(link_pin.y, link_pin.x) - inner - mean_(kCrankAngle);
  crank_rad += 2.0 * pi * std::ceil(-crank_rad / (2.0 * pi));
  addPose(boom_rad, crank_rad, bucket_rad);
}

template <class T>
Stand<T> Model::stand(const Eigen::VectorXd& unknowns, std::optional<std::size_t> pose) const {
  using std::exp;
  const auto value = [&](Eigen::Index unknown, int local) {
    T z(unknowns(unknown));
    if constexpr (!std::is_same_v<T, double>) z.derivatives() = Eigen::Matrix<double, kLocal, 1>::Unit(local);
    return T(mean_(unknown) + sd_(unknown) * z);
  };
  Stand<T> s;
  const T length = exp(value(kBoomLength, kBoomLength));
  for (int i = 0; i < kNumbers; ++i) {
    s.number[i] = i == kBoomLength ? length : value(i, i);
    if (linkageNumbers()[i].kind == LinkageNumber::ShareOfBoom) s.number[i] = T(s.number[i] * length);
  }
  s.ground = value(kGround, kGround);
  s.plate_angle = value(kPlateAngle, kPlateAngle);
  s.plate_offset = value(kPlateOffset, kPlateOffset);
  s.boom = s.crank = s.bucket = T(0.0);
  if (pose) {
    const auto first = static_cast<Eigen::Index>(kFirstPose + kPerPose * *pose);
    s.boom = value(first, kFirstPose);
    s.crank = value(first + 1, kFirstPose + 1);
    s.bucket = value(first + 2, kFirstPose + 2);
  }
  return s;
}

template <class F>
Line Model::linear(std::optional<std::size_t> pose, const Eigen::VectorXd& unknowns, F f) const {
  const Dual value = f(stand<Dual>(unknowns, pose));
  Line line{value.value(), Eigen::RowVectorXd::Zero(size())};
  line.by.head(kFirstPose) = value.derivatives().head(kFirstPose).transpose();
  if (pose)
    line.by.segment(static_cast<Eigen::Index>(kFirstPose + kPerPose * *pose), kPerPose) =
        value.derivatives().tail(kPerPose).transpose();
  return line;
}

double difference(const Target& target, double measured, double predicted) {
  const double off = measured - predicted;
  return isAngle(target) ? std::remainder(off, 2.0 * pi) : off;
}

System Model::system(const Eigen::VectorXd& unknowns, double closure_u_m) const {
  const auto measured = static_cast<Eigen::Index>(survey_->measurements.size());
  Eigen::Index gaps = 0;
  for (std::size_t pose = 0; pose < survey_->poses.size(); ++pose)
    gaps += (uses_tilt_[pose] ? 1 : 0) + (survey_->poses[pose].tilt_end ? 1 : 0);
  const Eigen::Index rows = measured + gaps + size();
  System system{Eigen::VectorXd(rows), Eigen::MatrixXd::Zero(rows, size())};
  Eigen::Index row = 0;
  for (const Measurement& each : survey_->measurements) {
    const Line predicted = line(each.target, unknowns);
    system.residuals(row) = difference(each.target, each.value, predicted.value) / each.u;
    system.design.row(row++) = predicted.by / each.u;
  }
  const auto close = [&](const Line& gap) {
    system.residuals(row) = -gap.value / closure_u_m;
    system.design.row(row++) = gap.by / closure_u_m;
  };
  for (std::size_t pose = 0; pose < survey_->poses.size(); ++pose) {
    if (uses_tilt_[pose]) close(linkGap(pose, unknowns));
    if (const auto end = survey_->poses[pose].tilt_end) close(endGap(pose, *end, unknowns));
  }
  system.residuals.tail(size()) = -unknowns;
  system.design.bottomRows(size()).setIdentity();
  return system;
}

linkage::ZBarGeometry Model::geometry(const Eigen::VectorXd& unknowns) const {
  const Stand<double> s = stand<double>(unknowns, std::nullopt);
  linkage::ZBarGeometry geometry;
  for (std::size_t i = 0; i < kLinkageNumbers; ++i) linkageNumbers()[i].set(geometry, s.number[i]);
  return geometry;
}

Eigen::MatrixXd Model::numbersBy(const Eigen::VectorXd& unknowns) const {
  Eigen::MatrixXd by(kNumbers, size());
  for (std::size_t i = 0; i < kLinkageNumbers; ++i)
    by.row(static_cast<Eigen::Index>(i)) = line({.kind = Kind::DataSheet, .number = i}, unknowns).by;
  return by;
}

bool Model::closesRightly(const Eigen::VectorXd& unknowns) const {
  for (std::size_t pose = 0; pose < survey_->poses.size(); ++pose) {
    if (!uses_tilt_[pose]) continue;
    const auto s = stand<double>(unknowns, pose);
    const auto tilt_frame = at(s, Pin::TiltFramePin);
    const auto link = at(s, Pin::BellcrankLinkPin);
    // Where nothing tells the tilt cylinder, its side is not asked for.
    const bool told = survey_->poses[pose].tilt_end.has_value();
    if (told && cross(at(s, Pin::BellcrankPivot) - tilt_frame, at(s, Pin::BellcrankTiltPin) - tilt_frame) < 0)
      return false;
    if (cross(at(s, Pin::HingePin) - link, at(s, Pin::BucketLinkPin) - link) < 0) return false;
  }
  return true;
}

struct Found {
  Eigen::VectorXd unknowns;
  double cost = 0.0;
  bool settled = false;
};

/// Levenberg-Marquardt, each step the least-squares solution of the linearised and damped system.
Found search(const Model& model, Eigen::VectorXd unknowns,
             std::span<const double> closures_u_m = kClosure_u_m, int most_steps = kMostSteps) {
  const Eigen::Index n = model.size();
  Found found;
  for (const double closure_u_m : closures_u_m) {
    System now = model.system(unknowns, closure_u_m);
    double damping = 1e-2;
    found.settled = false;
    for (int step = 0; step < most_steps && !found.settled; ++step) {
      const Eigen::Index rows = now.design.rows();
      Eigen::MatrixXd damped = Eigen::MatrixXd::Zero(rows + n, n);
      damped.topRows(rows) = now.design;
      damped.bottomRows(n).diagonal().setConstant(std::sqrt(damping));
      Eigen::VectorXd right = Eigen::VectorXd::Zero(rows + n);
      right.head(rows) = now.residuals;
      const Eigen::VectorXd change = damped.householderQr().solve(right);
      const double expected = now.cost() - (now.residuals - now.design * change).squaredNorm();
      const System then = model.system(unknowns + change, closure_u_m);
      if (then.cost() <= now.cost()) {
        found.settled = expected < kLeastDecrease && damping < kLittleDamping;
        unknowns += change;
        now = then;
        damping = std::max(damping / 5.0, 1e-12);
      } else {
        found.settled = expected < kFound && damping < kLittleDamping;
        damping *= 8.0;
      }
      if (damping > 1e9) break;
    }
    found.cost = now.cost();
  }
  found.unknowns = unknowns;
  return found;
}

/// Independent causes that make the same covariance as the columns of `factor` (numbers, any).
linkage::LinkageDoubt causesOf(const Eigen::MatrixXd& factor) {
  const Eigen::HouseholderQR<Eigen::MatrixXd> qr(factor.transpose());
  const Eigen::MatrixXd upper = qr.matrixQR().topRows(kNumbers).triangularView<Eigen::Upper>();
  linkage::LinkageDoubt causes(kLinkageNumbers);
  for (std::size_t k = 0; k < kLinkageNumbers; ++k)
    for (std::size_t i = 0; i < kLinkageNumbers; ++i)
      causes[k][i] = upper(static_cast<Eigen::Index>(k), static_cast<Eigen::Index>(i));
  return causes;
}

/// R^-1 of the design's QR decomposition: its columns are independent causes of the unknowns' doubt.
Eigen::MatrixXd rootOf(const Eigen::MatrixXd& design) {
  const Eigen::Index n = design.cols();
  const Eigen::MatrixXd r = design.householderQr().matrixQR().topRows(n);
  return r.triangularView<Eigen::Upper>().solve(Eigen::MatrixXd::Identity(n, n));
}

/// Coordinates whose sign distances alone don't tell: seen in a mirror, all of them are the same.
constexpr std::array<int, 4> kMirrored = {kLiftFrame, kLiftBoom + 1, kTiltFrame, kTiltFrame + 1};

/// Another optimum with a coordinate on the other side, if the measurements allow for one.
std::optional<Found> mirrored(const Model& model, const Found& found, int coordinate, double coordinate_u) {
  Eigen::VectorXd start = found.unknowns;
  start(coordinate) = -start(coordinate) - 2.0 * model.mean(coordinate) / model.sd(coordinate);
  // Roughly first: most of the time it is out of the question, or comes back.
  const auto elsewhere = [&](const Found& other) {
    return std::abs(other.unknowns(coordinate) - found.unknowns(coordinate)) > kDisagrees * coordinate_u;
  };
  const Found roughly = search(model, start, std::span(kClosure_u_m).first(1), kRoughSteps);
  if (!elsewhere(roughly) || roughly.cost > found.cost + 3.0 * kEquallyGood) return std::nullopt;
  Found other = search(model, roughly.unknowns);
  other.settled = other.settled && model.closesRightly(other.unknowns);
  if (!other.settled || !elsewhere(other) || other.cost > found.cost + kEquallyGood) return std::nullopt;
  return other;
}

/// Takes in a measurement that has yet to be made: the factor's columns stay independent causes (Potter
/// 1963).
void learn(Eigen::MatrixXd& factor, const Eigen::RowVectorXd& row, double u) {
  const Eigen::RowVectorXd effect = row * factor;
  const double variance = effect.squaredNorm() + u * u;
  const Eigen::VectorXd gain = factor * effect.transpose() / variance;
  factor -= gain * effect / (1.0 + u / std::sqrt(variance));
}

std::optional<std::size_t> worstOf(const std::vector<Check>& checks) {
  const auto worst =
      std::ranges::max_element(checks, {}, [](const Check& check) { return std::abs(check.standardised); });
  if (worst == checks.end()) return std::nullopt;
  return static_cast<std::size_t>(worst - checks.begin());
}

}  // namespace

bool isAngle(const Target& target) {
  return target.kind == Kind::Inclination || target.kind == Kind::BoomPlateAngle ||
         target.kind == Kind::BucketFloorAngle || target.kind == Kind::GroundAngle ||
         (target.kind == Kind::DataSheet && linkageNumbers()[target.number].kind == LinkageNumber::Radians);
}
bool takesTwoPins(Kind kind) {
  return kind == Kind::Distance || kind == Kind::Horizontal || kind == Kind::Vertical ||
         kind == Kind::Inclination;
}
bool isOnBoom(Pin pin) { return (bodiesOf(pin) & static_cast<unsigned>(Body::Boom)) != 0; }
bool takesOnePin(Kind kind) { return kind == Kind::Height || kind == Kind::BoomPlateOffset; }

bool needsPose(const Target& target) {
  switch (target.kind) {
    case Kind::Distance:
      return !onOneBody(target.from, target.to);
    case Kind::Horizontal:
    case Kind::Vertical:
    case Kind::Inclination:
      return !(onFrame(target.from) && onFrame(target.to));
    case Kind::Height:
      return !onFrame(target.from);
    case Kind::BoomPlateAngle:
    case Kind::BucketFloorAngle:
      return true;
    case Kind::BoomPlateOffset:
    case Kind::GroundAngle:
    case Kind::DataSheet:
      return false;
  }
  return false;
}

Expected<Estimate> estimate(const Survey& survey) {
  if (survey.measurements.empty())
    return fail(ErrorKind::Insufficient, "survey-empty", {}, {.pointer = "/measurements"});
  const Model model(survey);
  // The bellcrank's start is the least certain; another one where the first leads astray.
  std::optional<Found> best;
  bool crossed = false;
  for (const double crank_off : {0.0, 0.5, -0.5}) {
    Eigen::VectorXd start = Eigen::VectorXd::Zero(model.size());
    // In the middle of a mirror all derivatives are 0.
    for (const int coordinate : kMirrored) start(coordinate) = 0.3;
    for (std::size_t pose = 0; pose < survey.poses.size(); ++pose)
      start(static_cast<Eigen::Index>(kFirstPose + kPerPose * pose + 1)) = crank_off;
    Found found = search(model, start);
    const bool good = found.settled && model.closesRightly(found.unknowns);
    crossed = crossed || (found.settled && !good);
    found.settled = good;
    if (!best || (good && !best->settled) || (good == best->settled && found.cost < best->cost))
      best = std::move(found);
    if (best->settled && best->cost < 4.0 * static_cast<double>(model.size() + survey.measurements.size()))
      break;
  }

  Eigen::MatrixXd others(model.size(), 0);
  Estimate result;
  if (best->settled) {
    const auto look = [&] {
      const Eigen::MatrixXd root = rootOf(model.system(best->unknowns, kClosure_u_m.back()).design);
      others.resize(model.size(), 0);
      result.either_sign.clear();
      for (const int coordinate : kMirrored) {
        std::optional<Found> other = mirrored(model, *best, coordinate, root.row(coordinate).norm());
        if (!other) continue;
        if (other->cost < best->cost - kLeastDecrease) {
          best = std::move(other);
          return false;
        }
        result.either_sign.push_back(static_cast<std::size_t>(coordinate));
        others.conservativeResize(Eigen::NoChange, others.cols() + 1);
        others.rightCols(1) = other->unknowns - best->unknowns;
      }
      return true;
    };
    for (int round = 0; round < 4 && !look(); ++round) {
    }
  }

  const System system = model.system(best->unknowns, kClosure_u_m.back());
  const auto measured = static_cast<Eigen::Index>(survey.measurements.size());
  result.unknowns = best->unknowns;
  result.root = rootOf(system.design);
  for (Eigen::Index i = 0; i < measured; ++i) {
    const Measurement& each = survey.measurements[static_cast<std::size_t>(i)];
    const double redundancy = std::max(0.0, 1.0 - (system.design.row(i) * result.root).squaredNorm());
    Check check{.redundancy = redundancy};
    if (redundancy > 1e-6) {
      check.standardised = system.residuals(i) / std::sqrt(redundancy);
      check.others = each.value - system.residuals(i) * each.u / redundancy;
    }
    result.checks.push_back(check);
  }
  const std::optional<std::size_t> worst = worstOf(result.checks);
  if (!best->settled && crossed)
    return fail(ErrorKind::Insufficient, "survey-loops-untold", {}, {.pointer = "/measurements"});
  if (!best->settled)
    return fail(ErrorKind::Insufficient, "survey-not-found", {},
                {.pointer = "/measurements/" + std::to_string(worst.value_or(0))});
  if (std::abs(result.checks[*worst].standardised) > kDisagrees) result.disagrees = worst;
  // What could be elsewhere altogether is a cause of doubt as wide as the way there.
  Eigen::MatrixXd causes(model.size(), model.size() + others.cols());
  causes << result.root, others;
  result.root = std::move(causes);
  result.geometry = model.geometry(best->unknowns);
  result.doubt = causesOf(model.numbersBy(best->unknowns) * result.root);
  for (int i = 0; i < kNumbers; ++i)
    result.told[static_cast<std::size_t>(i)] = 1.0 - std::min(1.0, result.root.row(i).norm());
  result.chi_squared = best->cost;
  for (std::size_t pose = 0; pose < survey.poses.size(); ++pose)
    result.boom_angles_rad.push_back(model.stand<double>(best->unknowns, pose).boom);
  return result;
}

double effectUncertainty(const linkage::LinkageDoubt& doubt, const PerNumber& effect) {
  double sum = 0.0;
  for (const PerNumber& cause : doubt) {
    double change = 0.0;
    for (std::size_t i = 0; i < kLinkageNumbers; ++i) change += cause[i] * effect[i];
    sum += change * change;
  }
  return std::sqrt(sum);
}

std::vector<Gain> gains(const Survey& survey, const Estimate& estimate, const PerNumber& effect,
                        double tape_u_m, double inclinometer_u_rad) {
  const Model model(survey);
  const Eigen::RowVectorXd effect_by_unknown =
      Eigen::Map<const Eigen::RowVectorXd>(effect.data(), kNumbers) * model.numbersBy(estimate.unknowns);
  std::vector<Gain> list;
  const auto taken = [&](const Target& target) {
    return std::ranges::any_of(survey.measurements, [&](const Measurement& each) {
      Target turned = target;
      if (target.kind == Kind::Distance) std::swap(turned.from, turned.to);
      return each.target == target || each.target == turned;
    });
  };
  const auto uOf = [&](const Target& target) { return isAngle(target) ? inclinometer_u_rad : tape_u_m; };
  /// Kalman's update of one variance.
  const auto left = [](const Eigen::RowVectorXd& wanted, const Eigen::RowVectorXd& row) {
    const double shared = wanted.dot(row);
    return std::sqrt(std::max(0.0, wanted.squaredNorm() - shared * shared / (1.0 + row.squaredNorm())));
  };
  const Eigen::RowVectorXd wanted = effect_by_unknown * estimate.root;
  const auto consider = [&](const Target& target) {
    if (taken(target)) return;
    const double u = uOf(target);
    const Eigen::RowVectorXd row = model.line(target, estimate.unknowns).by * estimate.root / u;
    list.push_back({.target = target, .u = u, .boom_angle_rad = {}, .effect_u = left(wanted, row)});
  };

  for (std::size_t a = 0; a < kPinNames.size(); ++a)
    for (std::size_t b = a + 1; b < kPinNames.size(); ++b) {
      const Pin from = kPinNames[a].value;
      const Pin to = kPinNames[b].value;
      if (onOneBody(from, to)) consider({.kind = Kind::Distance, .from = from, .to = to});
      if (onFrame(from) && onFrame(to)) {
        consider({.kind = Kind::Horizontal, .from = from, .to = to});
        consider({.kind = Kind::Vertical, .from = from, .to = to});
      }
    }
  for (const Pin pin : {Pin::BoomPivot, Pin::LiftFramePin, Pin::TiltFramePin})
    consider({.kind = Kind::Height, .from = pin});
  const bool has_plate = std::ranges::any_of(survey.measurements, [](const Measurement& each) {
    return each.target.kind == Kind::BoomPlateAngle || each.target.kind == Kind::BoomPlateOffset;
  });
  if (has_plate)
    for (const Pin pin : {Pin::BoomPivot, Pin::HingePin, Pin::LiftBoomPin, Pin::BellcrankPivot})
      consider({.kind = Kind::BoomPlateOffset, .from = pin});
  const std::array in_pose = {
      Target{.kind = Kind::Inclination, .from = Pin::BoomPivot, .to = Pin::HingePin},
      Target{.kind = Kind::Distance, .from = Pin::LiftFramePin, .to = Pin::LiftBoomPin},
      Target{.kind = Kind::Height, .from = Pin::HingePin},
      Target{.kind = Kind::Height, .from = Pin::LiftBoomPin}};
  const std::array of_tilt = {
      Target{.kind = Kind::Distance, .from = Pin::TiltFramePin, .to = Pin::BellcrankTiltPin},
      Target{.kind = Kind::BucketFloorAngle}};
  for (std::size_t pose = 0; pose < survey.poses.size(); ++pose) {
    for (Target target : in_pose) {
      target.pose = pose;
      consider(target);
    }
    if (model.usesTilt(pose))
      for (Target target : of_tilt) {
        target.pose = pose;
        consider(target);
      }
  }

  // Poses that nobody has taken yet, racked back, the boom's angle measured with each.
  const Expected<linkage::Linkage> made = linkage::Linkage::make(estimate.geometry);
  if (made) {
    const double extended_m = estimate.geometry.tilt_cylinder_extended.inMetres();
    for (const double boom_deg : {-40.0, -20.0, 0.0, 20.0, 40.0}) {
      const double boom_rad = boom_deg * kDegree;
      if (std::ranges::any_of(estimate.boom_angles_rad,
                              [&](double have) { return std::abs(have - boom_rad) < 5.0 * kDegree; }))
        continue;
      const Expected<linkage::TiltState> tilt = made->tilt(boom_rad, extended_m);
      if (!tilt) continue;
      const std::size_t pose = survey.poses.size();
      Model further(survey);
      further.addPose(boom_rad, tilt->bellcrank_by_boom.value,
                      tilt->bucket_by_boom.value + estimate.geometry.bucket_pin_angle.inRadians() - boom_rad);
      const Eigen::Index n = model.size();
      const Eigen::Index all = further.size();
      Eigen::VectorXd unknowns = Eigen::VectorXd::Zero(all);
      unknowns.head(n) = estimate.unknowns;
      // What is known already, then what holds in the new pose.
      Eigen::MatrixXd root = Eigen::MatrixXd::Zero(all, estimate.root.cols() + kPerPose);
      root.topLeftCorner(n, estimate.root.cols()) = estimate.root;
      root.bottomRightCorner(kPerPose, kPerPose).setIdentity();
      const Target boom{.kind = Kind::Inclination, .from = Pin::BoomPivot, .to = Pin::HingePin, .pose = pose};
      learn(root, further.linkGap(pose, unknowns).by, kClosure_u_m.back());
      learn(root, further.endGap(pose, TiltEnd::Extended, unknowns).by, kClosure_u_m.back());
      learn(root, further.line(boom, unknowns).by, inclinometer_u_rad);
      Eigen::RowVectorXd wider_effect = Eigen::RowVectorXd::Zero(all);
      wider_effect.head(n) = effect_by_unknown;
      for (Target target : {in_pose[1], of_tilt[1]}) {
        target.pose = pose;
        const double u = uOf(target);
        const Eigen::RowVectorXd row = further.line(target, unknowns).by * root / u;
        target.pose.reset();
        list.push_back({.target = target,
                        .u = u,
                        .boom_angle_rad = boom_rad,
                        .effect_u = left(wider_effect * root, row)});
      }
    }
  }
  std::ranges::sort(list, {}, &Gain::effect_u);
  return list;
}

}  // namespace hingepin::survey
