// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>
#include <string>
#include <vector>

#include "engine/simulator/simulator.h"

#include "engine/units/degree.h"

namespace hingepin::simulator {
namespace {

constexpr double kBar = 1e5;

class MishapTest : public testing::Test {
 protected:
  MishapTest()
      : machine_([] {
          Random random(3);
          return practiceMachine(random);
        }()) {
    // One machine whose own errors do not blur what is looked for.
    machine_.friction.breakaway_ratio = 1.2;
  }

  [[nodiscard]] Lift lift(bool up = true, double load_kg = 0.0) const {
    Lift l;
    l.plan = up ? onePass(machine_.lowest_rad + kDegree, machine_.highest_rad - 3.0 * kDegree,
                          machine_.slow_rad_per_s)
                : onePass(machine_.highest_rad - 3.0 * kDegree, machine_.lowest_rad + kDegree,
                          machine_.slow_rad_per_s);
    l.plan.moves[0].hold_s = 4.0;
    l.logging.rate_Hz = 100.0;
    l.logging.pitch = true;
    if (load_kg > 0.0) l.load = loadAt(load_kg, 0.6, 0.45);
    return l;
  }

  [[nodiscard]] std::vector<LogRow> rows(Lift l, std::vector<Happening> happenings = {}) const {
    l.happenings = std::move(happenings);
    auto record = simulate(machine_, l, Random(77));
    EXPECT_TRUE(record.has_value());
    return record ? record->rows : std::vector<LogRow>{};
  }

  [[nodiscard]] static Happening usual(Mishap mishap) { return {mishap, kindOf(mishap).usual}; }

  /// Mean head pressure while the boom sensor reads between two angles of the travel.
  [[nodiscard]] double meanPressure(const std::vector<LogRow>& log, double low_deg = -8.0,
                                    double high_deg = 18.0) const {
    double sum = 0.0;
    int count = 0;
    for (const LogRow& row : log) {
      if (!row.boom_sensor || !row.head_pressure_Pa) continue;
      const double deg = angle(*row.boom_sensor);
      if (deg < low_deg || deg > high_deg) continue;
      sum += *row.head_pressure_Pa;
      ++count;
    }
    return count > 0 ? sum / count : std::numeric_limits<double>::quiet_NaN();
  }

  [[nodiscard]] double angle(double sensor) const {
    return (sensor - machine_.boom_sensor.offset) / machine_.boom_sensor.gain_per_rad / kDegree;
  }

  /// Times at which a share of the travel is reached.
  [[nodiscard]] double timeAt(const std::vector<LogRow>& log, double deg) const {
    for (const LogRow& row : log) {
      if (row.boom_sensor && angle(*row.boom_sensor) >= deg) return row.time_s;
    }
    return std::numeric_limits<double>::infinity();
  }

  /// How far the boom swings about its place after the stop, rad.
  [[nodiscard]] double swing(std::vector<Happening> happenings) const {
    Lift l = lift();
    l.happenings = std::move(happenings);
    const auto record = simulate(machine_, l, Random(1)).value();
    const double stop_s = record.truth.held_s[0] - 4.0;
    double low = 10.0;
    double high = -10.0;
    for (const Instant& i : record.truth.instants) {
      if (i.time_s < stop_s) continue;
      low = std::min(low, i.boom_rad);
      high = std::max(high, i.boom_rad);
    }
    return high - low;
  }

  Machine machine_;
};

TEST_F(MishapTest, EveryKindHasItsOwnCodeAndAUsualSizeWithinItsRange) {
  std::set<std::string> codes;
  for (const MishapKind& kind : mishapKinds()) {
    EXPECT_TRUE(codes.insert(std::string(kind.code)).second);
    EXPECT_GE(kind.usual, kind.least);
    EXPECT_LE(kind.usual, kind.most);
    EXPECT_EQ(&kindOf(kind.mishap), &kind);
    Lift l = lift();
    l.happenings = {{kind.mishap, kind.most * 1.01 + 1.0}};
    const auto refused = simulate(machine_, l, Random(1));
    ASSERT_FALSE(refused.has_value());
    EXPECT_EQ(refused.error().message.code, "simulator-mishap-size");
  }
  EXPECT_EQ(codes.size(), 16u);
}

TEST_F(MishapTest, ColdOilRaisesThePressureOfTheWholePassAndTheThermometerSaysSo) {
  const auto cold = rows(lift(), {usual(Mishap::ColdOil)});
  EXPECT_GT(meanPressure(cold), meanPressure(rows(lift())) + 1.5 * kBar);
  EXPECT_NEAR(*cold[0].oil_temperature_Cel, kindOf(Mishap::ColdOil).usual, 3.0);
}

TEST_F(MishapTest, AirInTheOilMakesTheBoomSpongy) {
  EXPECT_GT(swing({usual(Mishap::AirInOil)}), 1.15 * swing({}));
}

TEST_F(MishapTest, AWornSealWidensTheGapBetweenUpAndDown) {
  const auto gap = [&](const std::vector<Happening>& happenings) {
    return meanPressure(rows(lift(true), happenings)) - meanPressure(rows(lift(false), happenings));
  };
  EXPECT_GT(gap({usual(Mishap::WornSeal)}), gap({}) + 2.0 * kBar);
}

TEST_F(MishapTest, ALeakingCylinderSinksWhileHeld) {
  const auto sunk = [&](const std::vector<Happening>& happenings) {
    Lift l = lift(true, 2500.0);
    l.plan.moves[0].hold_s = 8.0;  // the swing has died when it is looked at
    const auto log = rows(l, happenings);
    const double end_s = log.back().time_s;
    double early = 0.0;
    double late = 0.0;
    for (const LogRow& row : log) {
      if (std::abs(row.time_s - (end_s - 2.5)) < 0.25) early += angle(*row.boom_sensor);
      if (std::abs(row.time_s - (end_s - 0.25)) < 0.25) late += angle(*row.boom_sensor);
    }
    return (early - late) / 50.0;
  };
  EXPECT_LT(std::abs(sunk({})), 0.1);
  EXPECT_GT(sunk({usual(Mishap::LeakingCylinder)}), 0.5);
}

TEST_F(MishapTest, AStickingPinSawsAtThePressure) {
  // Roughness in the window: spread of differences over a tenth of a second.
  const auto roughness = [&](const std::vector<Happening>& happenings) {
    const auto log = rows(lift(), happenings);
    std::vector<double> smooth;
    for (std::size_t i = 5; i + 5 < log.size(); ++i) {
      const double deg = angle(*log[i].boom_sensor);
      if (deg < -8.0 || deg > 18.0) continue;
      double sum = 0.0;
      for (std::size_t k = i - 5; k <= i + 5; ++k) sum += *log[k].head_pressure_Pa;
      smooth.push_back(sum / 11.0);
    }
    double squares = 0.0;
    for (std::size_t i = 10; i < smooth.size(); ++i) squares += std::pow(smooth[i] - smooth[i - 10], 2);
    return std::sqrt(squares / static_cast<double>(smooth.size() - 10));
  };
  EXPECT_GT(roughness({usual(Mishap::StickingPin)}), 2.0 * roughness({}));
}

TEST_F(MishapTest, ASensorThatSlipsOnItsShaftJumpsOnceByItsAngle) {
  const auto before = rows(lift());
  const auto after = rows(lift(), {usual(Mishap::SlippedAngleSensor)});
  ASSERT_EQ(before.size(), after.size());
  EXPECT_NEAR(angle(*after.front().boom_sensor), angle(*before.front().boom_sensor), 0.3);
  EXPECT_NEAR(angle(*after.back().boom_sensor) - angle(*before.back().boom_sensor),
              kindOf(Mishap::SlippedAngleSensor).usual, 0.3);
}

TEST_F(MishapTest, ALooseConnectorDropsToNothingInBursts) {
  const auto log = rows(lift(), {{Mishap::LooseConnector, 10.0}});
  int dead = 0;
  int bursts = 0;
  bool was_dead = false;
  for (const LogRow& row : log) {
    const bool is_dead = *row.boom_sensor == 0.0;
    if (is_dead) ++dead;
    if (is_dead && !was_dead) ++bursts;
    was_dead = is_dead;
  }
  EXPECT_GT(dead, static_cast<int>(log.size()) / 50);
  EXPECT_LT(dead, static_cast<int>(log.size()) / 4);
  EXPECT_GT(dead, 4 * bursts);
}

TEST_F(MishapTest, APressureZeroThatIsOffShiftsEveryReading) {
  EXPECT_NEAR(meanPressure(rows(lift(), {usual(Mishap::PressureZeroOff)})) - meanPressure(rows(lift())),
              kindOf(Mishap::PressureZeroOff).usual * kBar, 0.1 * kBar);
}

TEST_F(MishapTest, ABlockedPressureLineHidesTheBounceAtTheStart) {
  const auto peak = [&](const std::vector<Happening>& happenings) {
    const auto log = rows(lift(true, 2500.0), happenings);
    double most = 0.0;
    for (const LogRow& row : log) {
      if (row.time_s < 3.0) most = std::max(most, *row.head_pressure_Pa);
    }
    return most - *log.front().head_pressure_Pa;
  };
  EXPECT_LT(peak({usual(Mishap::BlockedPressureLine)}), 0.6 * peak({}));
}

TEST_F(MishapTest, CushioningLeftOnSlowsTheEndOfThePass) {
  const auto last_part = [&](const std::vector<Happening>& happenings) {
    const auto log = rows(lift(), happenings);
    return timeAt(log, 43.0) - timeAt(log, 25.0);
  };
  EXPECT_GT(last_part({usual(Mishap::CushioningOn)}), 1.7 * last_part({}));
}

TEST_F(MishapTest, SuspensionLeftOnLetsTheBoomSwingFarAfterTheStop) {
  EXPECT_GT(swing({usual(Mishap::SuspensionOn)}), 3.0 * swing({}));
}

TEST_F(MishapTest, ABucketNotRackedShowsInTheBucketSensor) {
  const auto normal = rows(lift());
  const auto open = rows(lift(), {usual(Mishap::BucketNotRacked)});
  const double volts_per_deg = std::abs(machine_.bucket_sensor.gain_per_rad) * kDegree;
  EXPECT_GT(std::abs(*open[0].bucket_sensor - *normal[0].bucket_sensor), 3.0 * volts_per_deg);
}

TEST_F(MishapTest, MudInTheBucketAndAHeavierAttachmentAddTheirWeightToTheTare) {
  const double tare = meanPressure(rows(lift()));
  const double muddy = meanPressure(rows(lift(), {usual(Mishap::DirtyBucket)})) - tare;
  const double heavy = meanPressure(rows(lift(), {usual(Mishap::WrongAttachment)})) - tare;
  const double light = meanPressure(rows(lift(), {{Mishap::WrongAttachment, -300.0}})) - tare;
  // About 55 kg a bar on this unit: 150 kg and 300 kg.
  EXPECT_NEAR(muddy, 150.0 / 55.0 * kBar, 0.5 * kBar);
  EXPECT_NEAR(heavy, 300.0 / 55.0 * kBar, 0.8 * kBar);
  EXPECT_NEAR(light, -heavy, 0.2 * kBar);
}

TEST_F(MishapTest, SlopingGroundShowsInThePitchAndTiltsTheTareCurve) {
  const auto level = rows(lift());
  const auto slope = rows(lift(), {usual(Mishap::SlopingGround)});
  EXPECT_NEAR((*slope[0].pitch_rad - *level[0].pitch_rad) / kDegree, kindOf(Mishap::SlopingGround).usual,
              0.2);
  // Nose up: below level the load hangs farther forward, above level less far.
  EXPECT_GT(meanPressure(slope, -35.0, -25.0), meanPressure(level, -35.0, -25.0) + 0.5 * kBar);
  EXPECT_LT(meanPressure(slope, 25.0, 35.0), meanPressure(level, 25.0, 35.0) - 0.5 * kBar);
}

TEST_F(MishapTest, ASoftTyreNodsFartherUnderALoad) {
  const auto nod = [&](const std::vector<Happening>& happenings) {
    return *rows(lift(), happenings)[0].pitch_rad - *rows(lift(true, 4000.0), happenings)[0].pitch_rad;
  };
  EXPECT_NEAR(nod({usual(Mishap::SoftTyre)}) / nod({}), 1.0 / 0.6, 0.25);
}

}  // namespace
}  // namespace hingepin::simulator
