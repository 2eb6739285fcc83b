// SPDX-License-Identifier: Apache-2.0
#include "engine/survey/survey.h"

#include <gtest/gtest.h>

#include <cmath>

#include "engine/base/random.h"
#include "engine/calibration/linkage_doubt.h"
#include "tests/engine/linkage/machines.h"
#include "tests/engine/survey/surveyor.h"

namespace hingepin::survey {
namespace {

constexpr linkage::Range kWindow{-8 * kDegree, 18 * kDegree};

Surveyor usualOf(const linkage::Machine& machine, std::function<double()> error = [] { return 0.0; }) {
  return usualSurvey({.truth = machine.geometry, .error = std::move(error)}, machine.boom.low + 0.02,
                     machine.boom.high - 0.02);
}

/// What each number does to a mass that is weighed in the middle of the window.
linkage::PerNumber massLevel(const linkage::ZBarGeometry& geometry) {
  const auto effects =
      calibration::massEffects(geometry, calibration::usualPayloadCenter(geometry.boom_length), kWindow);
  linkage::PerNumber level{};
  EXPECT_TRUE(effects.has_value());
  for (std::size_t i = 0; effects && i < level.size(); ++i) level[i] = (*effects)[i].level;
  return level;
}

double massChange(const linkage::ZBarGeometry& from, const linkage::ZBarGeometry& to) {
  const linkage::PerNumber level = massLevel(from);
  double change = 0.0;
  for (std::size_t i = 0; i < level.size(); ++i) {
    const linkage::LinkageNumber& number = linkage::linkageNumbers()[i];
    change += level[i] * (number.get(to) - number.get(from));
  }
  return change;
}

class SurveyTest : public testing::TestWithParam<linkage::Machine> {};

TEST_P(SurveyTest, ExactMeasurementsGiveTheLinkageBack) {
  Surveyor surveyor = {
      .truth = GetParam().geometry, .tape_u_m = 1e-5, .inclinometer_u_rad = 1e-6, .ground_rad = 0.01};
  surveyor.measure({.kind = Kind::GroundAngle});
  surveyor = usualSurvey(surveyor, GetParam().boom.low + 0.02, GetParam().boom.high - 0.02);
  const auto found = estimate(surveyor.survey);
  ASSERT_TRUE(found.has_value()) << found.error().message.code;
  for (const linkage::LinkageNumber& number : linkage::linkageNumbers())
    EXPECT_NEAR(number.get(found->geometry), number.get(surveyor.truth), 2e-6) << number.name;
  EXPECT_FALSE(found->disagrees.has_value());
  for (const double told : found->told) EXPECT_GT(told, 0.99);
}

TEST(SurveyDoubtTest, IsWhatTheMeasurementsDoToTheResult) {
  // Each measurement moved by half its uncertainty: differences of whole estimates against derivatives.
  const Surveyor exact = usualOf(linkage::demoMachine());
  const auto before = estimate(exact.survey);
  ASSERT_TRUE(before.has_value());
  linkage::PerNumber variance{};
  for (std::size_t k = 0; k < exact.survey.measurements.size(); ++k) {
    linkage::PerNumber ends[2];
    for (const int side : {0, 1}) {
      Survey moved = exact.survey;
      moved.measurements[k].value += (side == 0 ? -0.5 : 0.5) * moved.measurements[k].u;
      const auto after = estimate(moved);
      ASSERT_TRUE(after.has_value());
      for (std::size_t i = 0; i < variance.size(); ++i)
        ends[side][i] = linkage::linkageNumbers()[i].get(after->geometry);
    }
    for (std::size_t i = 0; i < variance.size(); ++i) variance[i] += std::pow(ends[1][i] - ends[0][i], 2);
  }
  const linkage::PerNumber stated = linkage::standardUncertainties(before->doubt);
  // The rest of the doubt is what was in doubt of the ground beforehand, and little else.
  for (std::size_t i = 0; i < variance.size(); ++i) {
    EXPECT_LT(std::sqrt(variance[i]), 1.01 * stated[i]) << linkage::linkageNumbers()[i].name;
    EXPECT_GT(std::sqrt(variance[i]), 0.80 * stated[i]) << linkage::linkageNumbers()[i].name;
  }
}

TEST(SurveyDoubtTest, ErrorsInAWeighedMassAreAsLargeAsStated) {
  Random random(20261130);
  constexpr int kSurveysOfEach = 30;
  double squares = 0.0;
  double surveys = 0.0;
  for (const linkage::Machine& machine : linkage::machines()) {
    for (int k = 0; k < kSurveysOfEach; ++k) {
      Surveyor surveyor = usualOf(machine, [&] { return random.normal(); });
      const auto found = estimate(surveyor.survey);
      ASSERT_TRUE(found.has_value()) << machine.name;
      const double u = effectUncertainty(found->doubt, massLevel(found->geometry));
      squares += std::pow(massChange(surveyor.truth, found->geometry) / u, 2);
      surveys += 1.0;
    }
  }
  // The ground was level though it might have sloped, so a little less than 1; scatter of the ratio 9 %.
  EXPECT_NEAR(std::sqrt(squares / surveys), 0.95, 0.2);
}

TEST_P(SurveyTest, AWrongMeasurementIsNamedAndTheOthersTellItsValue) {
  const Surveyor right = usualOf(GetParam());
  const auto clean = estimate(right.survey);
  ASSERT_TRUE(clean.has_value());
  int tried = 0;
  for (std::size_t k = 0; k < right.survey.measurements.size(); k += 3) {
    if (clean->checks[k].redundancy < 0.25) continue;
    ++tried;
    Survey wrong = right.survey;
    wrong.measurements[k].value += 12.0 * wrong.measurements[k].u;
    const auto found = estimate(wrong);
    ASSERT_TRUE(found.has_value());
    EXPECT_EQ(found->disagrees, std::optional(k));
    EXPECT_NEAR(found->checks[k].others, right.survey.measurements[k].value, 1.5 * wrong.measurements[k].u);
  }
  EXPECT_GT(tried, 5);
}

TEST_P(SurveyTest, NoMeasurementMoreMakesTheDoubtLarger) {
  const Surveyor all = usualOf(GetParam());
  const linkage::PerNumber level = massLevel(all.truth);
  const auto whole = estimate(all.survey);
  ASSERT_TRUE(whole.has_value());
  for (std::size_t k = 0; k < all.survey.measurements.size(); k += 2) {
    Survey fewer = all.survey;
    fewer.measurements.erase(fewer.measurements.begin() + static_cast<std::ptrdiff_t>(k));
    const auto found = estimate(fewer);
    ASSERT_TRUE(found.has_value());
    EXPECT_GE(effectUncertainty(found->doubt, level), 0.999 * effectUncertainty(whole->doubt, level));
  }
}

TEST_P(SurveyTest, WhatAMeasurementWouldBringIsWhatItBrings) {
  Surveyor surveyor = usualOf(GetParam());
  const auto before = estimate(surveyor.survey);
  ASSERT_TRUE(before.has_value());
  const linkage::PerNumber level = massLevel(before->geometry);
  const double u_before = effectUncertainty(before->doubt, level);
  const auto list = gains(surveyor.survey, *before, level, surveyor.tape_u_m, surveyor.inclinometer_u_rad);
  ASSERT_GT(list.size(), 20U);
  EXPECT_LT(list.front().effect_u, 0.95 * u_before);
  EXPECT_LE(list.back().effect_u, 1.0001 * u_before);
  bool new_pose = false;
  for (std::size_t k = 0; k < list.size(); k += 4) {
    Surveyor then = surveyor;
    Target target = list[k].target;
    if (list[k].boom_angle_rad) {
      new_pose = true;
      target.pose = then.stand("new", *list[k].boom_angle_rad, TiltEnd::Extended);
      then.measure(
          {.kind = Kind::Inclination, .from = Pin::BoomPivot, .to = Pin::HingePin, .pose = target.pose});
    }
    then.measure(target);
    const auto after = estimate(then.survey);
    ASSERT_TRUE(after.has_value());
    EXPECT_NEAR(effectUncertainty(after->doubt, level), list[k].effect_u, 0.005 * u_before);
  }
  EXPECT_TRUE(new_pose);
}

INSTANTIATE_TEST_SUITE_P(Machines, SurveyTest, testing::ValuesIn(linkage::machines()),
                         [](const auto& each) { return each.param.name; });

TEST(LiftLawTest, SixCylinderLengthsGiveItWithoutTheCylindersPins) {
  const linkage::Machine machine = linkage::demoMachine();
  Surveyor surveyor = {.truth = machine.geometry, .tape_u_m = 1e-4, .inclinometer_u_rad = 0.005 * kDegree};
  surveyor.distance(Pin::BoomPivot, Pin::HingePin);
  for (int k = 0; k < 6; ++k) {
    const std::size_t pose = surveyor.stand("p" + std::to_string(k), (-38.0 + 16.0 * k) * kDegree, {}, 1.6);
    surveyor.measure({.kind = Kind::Inclination, .from = Pin::BoomPivot, .to = Pin::HingePin, .pose = pose});
    surveyor.distance(Pin::LiftFramePin, Pin::LiftBoomPin, pose);
  }
  surveyor.survey.ground_u_rad = 1e-5;
  const auto found = estimate(surveyor.survey);
  ASSERT_TRUE(found.has_value());
  // Law of cosines at the boom pivot: c^2 = a^2 + b^2 - 2 a b cos(angle), so c' = a b sin(angle) / c.
  const auto arm = [](const linkage::ZBarGeometry& g, double boom_rad) {
    const double fx = g.lift_frame_pin.along.inMetres(), fy = g.lift_frame_pin.across.inMetres();
    const double bx = g.lift_boom_pin.along.inMetres(), by = g.lift_boom_pin.across.inMetres();
    const double a = std::hypot(fx, fy), b = std::hypot(bx, by);
    const double angle = boom_rad + std::atan2(by, bx) - std::atan2(fy, fx);
    return a * b * std::sin(angle) / std::sqrt(a * a + b * b - 2.0 * a * b * std::cos(angle));
  };
  for (const double boom_deg : {-8.0, 5.0, 18.0})
    EXPECT_NEAR(arm(found->geometry, boom_deg * kDegree) / arm(machine.geometry, boom_deg * kDegree), 1.0,
                1e-3);
  // The pins themselves may turn about the boom pivot together: the drawing isn't told.
  EXPECT_GT(linkage::standardUncertainties(found->doubt)[5], 0.1);
}

TEST(MirrorTest, ASignThatDistancesDoNotTellIsInDoubtUntilAPlumbLineTellsIt) {
  const linkage::Machine machine = linkage::demoMachine();
  Surveyor surveyor = {.truth = machine.geometry, .tape_u_m = 0.002};
  surveyor.distance(Pin::BoomPivot, Pin::HingePin);
  surveyor.distance(Pin::BoomPivot, Pin::LiftFramePin);
  for (const Pin pin : {Pin::BoomPivot, Pin::LiftFramePin})
    surveyor.measure({.kind = Kind::Height, .from = pin});
  surveyor.distance(Pin::BoomPivot, Pin::LiftBoomPin);
  surveyor.distance(Pin::LiftBoomPin, Pin::HingePin);
  const auto before = estimate(surveyor.survey);
  ASSERT_TRUE(before.has_value());
  EXPECT_FALSE(before->disagrees.has_value());
  EXPECT_EQ(before->either_sign, (std::vector<std::size_t>{2, 5}));
  EXPECT_NEAR(std::abs(before->geometry.lift_boom_pin.across.inMetres()), 0.24, 0.03);
  EXPECT_GT(linkage::standardUncertainties(before->doubt)[5], 0.4);

  surveyor.measure({.kind = Kind::BoomPlateOffset, .from = Pin::BoomPivot});
  surveyor.measure({.kind = Kind::BoomPlateOffset, .from = Pin::HingePin});
  surveyor.measure({.kind = Kind::BoomPlateOffset, .from = Pin::LiftBoomPin});
  surveyor.measure({.kind = Kind::Horizontal, .from = Pin::BoomPivot, .to = Pin::LiftFramePin});
  const auto after = estimate(surveyor.survey);
  ASSERT_TRUE(after.has_value());
  EXPECT_TRUE(after->either_sign.empty());
  EXPECT_NEAR(after->geometry.lift_boom_pin.across.inMetres(), -0.24, 0.01);
  EXPECT_NEAR(after->geometry.lift_frame_pin.along.inMetres(), 0.08, 0.01);
  EXPECT_LT(linkage::standardUncertainties(after->doubt)[5], 0.02);
}

TEST(SurveyErrorTest, NothingMeasuredIsSaid) {
  const auto found = estimate({});
  ASSERT_FALSE(found.has_value());
  EXPECT_EQ(found.error().message.code, "survey-empty");
  EXPECT_EQ(found.error().kind, ErrorKind::Insufficient);
}

TEST(ShortSurveyTest, FloorAnglesStandInForTheBellcrankOrItIsSaidThatTheyDoNot) {
  // The bellcrank and its link are known by the turn of the bucket alone; the drawing of them is not told.
  Random random(7);
  for (const linkage::Machine& machine : linkage::machines()) {
    double squares = 0.0;
    int weighed = 0;
    for (int k = 0; k < 25; ++k) {
      const Surveyor surveyor =
          shortSurvey({.truth = machine.geometry, .error = [&] { return random.normal(); }},
                      machine.boom.low + 0.02, machine.boom.high - 0.02);
      const auto found = estimate(surveyor.survey);
      if (!found) {
        EXPECT_EQ(found.error().message.code, "survey-loops-untold");
        continue;
      }
      const auto centre = calibration::usualPayloadCenter(found->geometry.boom_length);
      if (!calibration::massEffects(found->geometry, centre, kWindow)) continue;
      const double u = effectUncertainty(found->doubt, massLevel(found->geometry));
      EXPECT_LT(u, 0.02);
      const auto arm = [&](const linkage::ZBarGeometry& g) {
        const auto made = linkage::Linkage::make(g);
        return std::log(made->liftCylinder(5 * kDegree).first /
                        made->bucketPoint(5 * kDegree, g.tilt_cylinder_extended.inMetres(), centre)->y.first);
      };
      squares += std::pow((arm(found->geometry) - arm(surveyor.truth)) / u, 2);
      ++weighed;
    }
    EXPECT_GT(weighed, 12) << machine.name;
    // Scatter of the ratio 15 % and more.
    EXPECT_LT(std::sqrt(squares / weighed), 1.5) << machine.name;
  }
}

TEST(MassEffectTest, AStraightLineOverTheWindowIsAllThereIs) {
  // Each number a millimetre or a twentieth of a degree off; 0.02 % is what massEffects promises.
  for (const linkage::Machine& machine : linkage::machines()) {
    const auto centre = calibration::usualPayloadCenter(machine.geometry.boom_length);
    const auto effects = calibration::massEffects(machine.geometry, centre, kWindow);
    ASSERT_TRUE(effects.has_value());
    const auto logArm = [&](const linkage::ZBarGeometry& g, double boom_rad) {
      const auto made = linkage::Linkage::make(g);
      return std::log(made->liftCylinder(boom_rad).first /
                      made->bucketPoint(boom_rad, g.tilt_cylinder_extended.inMetres(), centre)->y.first);
    };
    for (std::size_t i = 0; i < effects->size(); ++i) {
      const linkage::LinkageNumber& number = linkage::linkageNumbers()[i];
      linkage::ZBarGeometry moved = machine.geometry;
      number.set(moved, number.get(moved) + 1e-3);
      for (const double share : {0.0, 0.25, 0.5, 0.75, 1.0}) {
        const double boom_rad = std::lerp(kWindow.low, kWindow.high, share);
        EXPECT_NEAR(logArm(moved, boom_rad) - logArm(machine.geometry, boom_rad),
                    1e-3 * ((*effects)[i].level + (2.0 * share - 1.0) * (*effects)[i].slope), 2e-4)
            << number.name;
      }
    }
  }
}

TEST(MassEffectTest, ALoaderMadeLargerAsAWholeWeighsTheSame) {
  // Euler's theorem: c' / y' is homogeneous of degree 0 in all lengths.
  for (const linkage::Machine& machine : linkage::machines()) {
    const linkage::ZBarGeometry& g = machine.geometry;
    const linkage::PerNumber level = massLevel(g);
    double change = 0.0;
    double largest = 0.0;
    for (std::size_t i = 0; i < level.size(); ++i) {
      const linkage::LinkageNumber& number = linkage::linkageNumbers()[i];
      if (number.kind == linkage::LinkageNumber::Radians) continue;
      change += number.get(g) * level[i];
      largest = std::max(largest, std::abs(number.get(g) * level[i]));
    }
    // The load's centre goes with the boom's length too, beyond what the numbers hold.
    const auto centred = [&](double scale) {
      const auto centre = calibration::usualPayloadCenter(scale * g.boom_length);
      const auto made = linkage::Linkage::make(g);
      const auto point = made->bucketPoint(5 * kDegree, g.tilt_cylinder_extended.inMetres(), centre);
      return -std::log(point->y.first);
    };
    change += (centred(1.001) - centred(0.999)) / 0.002;
    EXPECT_GT(largest, 0.5);
    EXPECT_NEAR(change, 0.0, 0.005);
    EXPECT_NEAR(level[1], 0.0, 1e-9) << "how high the pivot stands doesn't matter";
  }
}

}  // namespace
}  // namespace hingepin::survey
