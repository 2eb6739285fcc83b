// SPDX-License-Identifier: Apache-2.0
#include "engine/session/level.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "engine/base/random.h"
#include "engine/units/degree.h"

namespace hingepin::session {
namespace {

constexpr double kGravity = 9.81;

/// A phone with an imperfect accelerometer.
struct Phone {
  double zero_x = 0.0;  ///< m/s2
  double zero_y = 0.0;
  double zero_z = 0.0;
  double gain_y = 1.0;
  double gain_z = 1.0;
  double cross_axis = 0.0;  ///< share of x that y sees
  double noise = 0.02;      ///< m/s2, of one sample
  double memory = 0.0;      ///< correlation of a sample's noise with the one before
};

/// Lies on a surface that rises by `slope` along the phone's first direction and by `cross` to its right,
/// turned about the surface's normal.
std::vector<AccelerationSample> lay(const Phone& phone, double slope_rad, double cross_rad, double turn_rad,
                                    Random& random, double seconds = 3.0, double rate_Hz = 100.0) {
  // Gravity's components in the surface, exactly: atan2(y, hypot(x, z)) is the slope.
  const double along = std::sin(slope_rad);
  const double across = std::sin(cross_rad);
  const double up = std::sqrt(1.0 - along * along - across * across);
  const double x = kGravity * (across * std::cos(turn_rad) - along * std::sin(turn_rad));
  const double y = kGravity * (along * std::cos(turn_rad) + across * std::sin(turn_rad));
  std::vector<AccelerationSample> samples;
  double wander[3] = {0.0, 0.0, 0.0};
  const double fresh = std::sqrt(1.0 - phone.memory * phone.memory);
  for (double& each : wander) each = random.normal();
  for (int index = 0; index <= seconds * rate_Hz; ++index) {
    for (double& each : wander) each = phone.memory * each + fresh * random.normal();
    samples.push_back({index / rate_Hz, x + phone.zero_x + phone.noise * wander[0],
                       phone.gain_y * (y + phone.cross_axis * x) + phone.zero_y + phone.noise * wander[1],
                       phone.gain_z * kGravity * up + phone.zero_z + phone.noise * wander[2]});
  }
  return samples;
}

std::string codeOf(const auto& result) { return result ? "" : result.error().message.code; }

TEST(LevelTest, APerfectPhoneReadsTheSlope) {
  Random random(1);
  Phone phone;
  phone.noise = 0.0;
  for (const double slope_deg : {-20.0, -3.0, 0.0, 0.5, 12.0}) {
    const auto read = readLevel(lay(phone, slope_deg * kDegree, 2.0 * kDegree, 0.0, random));
    ASSERT_TRUE(read) << codeOf(read);
    // Rounding of doubles only.
    EXPECT_NEAR(read->slope_rad / kDegree, slope_deg, 1e-9);
    EXPECT_NEAR(read->cross_rad / kDegree, 2.0, 1e-9);
  }
}

/// The principle of reversal (Evans, Hocken, Estler 1996, CIRP Annals 45, 617, from memory): half the
/// difference of two readings is free of what doesn't turn with the surface, whatever it is; half the sum is
/// it.
TEST(LevelTest, HalfTheDifferenceIsFreeOfTheZeroError) {
  Random random(2);
  for (int round = 0; round < 200; ++round) {
    Phone phone;
    phone.noise = 0.0;
    const double zero_deg = random.uniform(-4.0, 4.0);
    phone.zero_y = kGravity * std::sin(zero_deg * kDegree);
    const double slope_deg = random.uniform(-10.0, 10.0);
    const auto first = readLevel(lay(phone, slope_deg * kDegree, 0.0, 0.0, random));
    const auto turned = readLevel(lay(phone, slope_deg * kDegree, 0.0, 180.0 * kDegree, random));
    ASSERT_TRUE(first && turned);
    const auto level = combineLevels(*first, *turned);
    ASSERT_TRUE(level) << codeOf(level) << " " << zero_deg << " " << slope_deg;
    // The zero error adds to a component, not to the angle: second order, below 2 % of the slope at 4 and 10
    // degrees.
    EXPECT_NEAR(level->slope_rad / kDegree, slope_deg, 0.003 + 0.01 * std::abs(slope_deg));
    EXPECT_NEAR(level->zero_rad / kDegree, zero_deg, 0.15);
    // One reading alone is off by the zero error.
    EXPECT_NEAR((first->slope_rad / kDegree) - slope_deg, zero_deg, 0.15);
  }
}

TEST(LevelTest, UncertaintyOfAMeanCountsThatSamplesAreAlikeToTheirNeighbours) {
  for (const double memory : {0.0, 0.8, 0.95}) {
    Random random(3);
    Phone phone;
    phone.memory = memory;
    phone.noise = 0.05;
    double squares = 0.0;
    double stated = 0.0;
    int rounds = 0;
    for (int round = 0; round < 400; ++round) {
      const auto read = readLevel(lay(phone, 2.0 * kDegree, 0.0, 0.0, random, 10.0));
      if (!read) continue;
      squares += std::pow(read->slope_rad - 2.0 * kDegree, 2);
      stated += read->slope_u_rad * read->slope_u_rad;
      ++rounds;
      if (memory > 0.7) {
        EXPECT_LT(read->effective_samples, 0.5 * read->samples);
      }
    }
    ASSERT_GT(rounds, 350);
    // The variance of 400 rounds is known to 7 %; an estimated effective size is short by some per cent where
    // few values are left (25 of 1000 at 0.95).
    EXPECT_NEAR(std::sqrt(stated / squares), 1.0, 0.2) << memory;
  }
}

/// Everything at once: the stated uncertainty must cover what a real phone on a real spot does.
TEST(LevelTest, TheStatedUncertaintyCoversTurnsAxesGainsAndPlacing) {
  Random random(4);
  const LevelLimits limits;
  int inside = 0;
  int rounds = 0;
  double squares = 0.0;
  for (int round = 0; round < 1000; ++round) {
    Phone phone;
    phone.zero_x = 0.2 * random.normal();
    phone.zero_y = 0.2 * random.normal();
    phone.gain_y = 1.0 + limits.gain_u * random.normal() / std::sqrt(2.0);
    phone.gain_z = 1.0 + limits.gain_u * random.normal() / std::sqrt(2.0);
    phone.cross_axis = limits.cross_axis_u * random.normal();
    phone.noise = random.uniform(0.01, 0.1);
    phone.memory = random.uniform(0.0, 0.9);
    const double slope = random.uniform(-8.0, 8.0) * kDegree;
    const double cross = random.uniform(-8.0, 8.0) * kDegree;
    const double turn = 180.0 * kDegree + limits.turn_u_rad * random.normal();
    const auto first =
        readLevel(lay(phone, slope + limits.placing_u_rad * random.normal(), cross, 0.0, random));
    const auto turned =
        readLevel(lay(phone, slope + limits.placing_u_rad * random.normal(), cross, turn, random));
    if (!first || !turned) continue;
    const auto level = combineLevels(*first, *turned, limits);
    if (!level) continue;
    ++rounds;
    const double off = (level->slope_rad - slope) / level->slope_u_rad;
    squares += off * off;
    if (std::abs(off) <= 2.0) ++inside;
  }
  ASSERT_GT(rounds, 900);
  // 95.45 % of a normal spread lies within two; 1000 rounds know that to 0.7 %, and three times that is
  // allowed.
  EXPECT_NEAR(static_cast<double>(inside) / rounds, 0.9545, 0.025);
  EXPECT_NEAR(std::sqrt(squares / rounds), 1.0, 0.1);
}

TEST(LevelTest, AMovedPhoneIsRefused) {
  Random random(5);
  const Phone phone;
  auto knocked = lay(phone, 1.0 * kDegree, 0.0, 0.0, random);
  for (std::size_t index = 100; index < 112; ++index) knocked[index].y_m_per_s2 += 4.0;
  EXPECT_EQ(codeOf(readLevel(knocked)), "level-moved");
  auto tilted = lay(phone, 1.0 * kDegree, 0.0, 0.0, random);
  for (std::size_t index = 0; index < tilted.size(); ++index) {
    tilted[index].y_m_per_s2 += kGravity * 1.0 * kDegree * static_cast<double>(index) / 300.0;
  }
  EXPECT_EQ(codeOf(readLevel(tilted)), "level-moved");
  Phone shaken = phone;
  shaken.noise = 0.5;
  EXPECT_EQ(codeOf(readLevel(lay(shaken, 0.0, 0.0, 0.0, random))), "level-moved");
  auto lifted = lay(phone, 0.0, 0.0, 0.0, random);
  for (auto& each : lifted) each.z_m_per_s2 += 0.8;
  EXPECT_EQ(codeOf(readLevel(lifted)), "level-not-gravity");
}

TEST(LevelTest, TooFewSamplesOrNumbersThatAreNoneAreRefused) {
  Random random(6);
  EXPECT_EQ(codeOf(readLevel({})), "level-too-few");
  EXPECT_EQ(codeOf(readLevel(lay({}, 0.0, 0.0, 0.0, random, 0.5))), "level-too-few");
  EXPECT_EQ(codeOf(readLevel(lay({}, 0.0, 0.0, 0.0, random, 3.0, 5.0))), "level-too-few");
  auto broken = lay({}, 0.0, 0.0, 0.0, random);
  broken[7].x_m_per_s2 = std::nan("");
  EXPECT_EQ(codeOf(readLevel(broken)), "level-too-few");
}

TEST(LevelTest, APhoneThatWasNotTurnedIsFound) {
  Random random(7);
  Phone phone;
  phone.noise = 0.005;
  phone.zero_y = 0.05;
  const auto read = [&](double slope_deg, double turn_deg) {
    return *readLevel(lay(phone, slope_deg * kDegree, 0.0, turn_deg * kDegree, random));
  };
  EXPECT_EQ(codeOf(combineLevels(read(5.0, 0.0), read(5.0, 0.0))), "level-not-turned");
  EXPECT_EQ(codeOf(combineLevels(read(5.0, 0.0), read(5.0, 180.0))), "");
  // On a nearly level spot both are alike anyway; only the zero error that is known of the phone tells.
  const auto zero = combineLevels(read(1.0, 0.0), read(1.0, 180.0));
  ASSERT_TRUE(zero);
  EXPECT_EQ(codeOf(combineLevels(read(1.0, 0.0), read(1.0, 0.0))), "");
  EXPECT_EQ(codeOf(combineLevels(read(1.0, 0.0), read(1.0, 0.0), {}, zero->zero_rad)), "level-not-turned");
  EXPECT_EQ(codeOf(combineLevels(read(1.0, 0.0), read(1.0, 180.0), {}, zero->zero_rad)), "");
  // Turned by a quarter only: the zero error comes out as half the slopes' sum.
  EXPECT_EQ(codeOf(combineLevels(read(12.0, 0.0), read(12.0, 90.0))), "level-zero-implausible");
}

}  // namespace
}  // namespace hingepin::session
