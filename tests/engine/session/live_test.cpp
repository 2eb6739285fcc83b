// SPDX-License-Identifier: Apache-2.0
#include "engine/session/live.h"

#include <fmt/format.h>
#include <gmock/gmock.h>

#include <cmath>
#include <functional>

#include "engine/base/random.h"
#include "engine/folder/folder.h"
#include "engine/units/degree.h"
#include "engine/units/ucum.h"

namespace hingepin::session {
namespace {

using procedures::Approach;
using procedures::Step;
using procedures::StepKind;

constexpr double kVoltsPerDegree = 0.04;

/// A sensor that reads 2.4 V at level.
KnownLine kLine{.line = {.reading_at = 2.4, .slope_rad_per_unit = kDegree / kVoltsPerDegree},
                .unit = calibration::SensorUnit::Volt};

/// A machine that is told where its boom goes, and the feed of it.
struct Bench {
  explicit Bench(std::uint64_t seed = 1) : random(seed) { say(header); }

  void say(const std::string& text) { feed.take(text, now_ms); }

  /// Holds or moves the boom evenly, a row at a time, the watch looking on.
  void run(double seconds, double speed_deg_per_s = 0.0, double bucket_V_per_s = 0.0) {
    const int rows = static_cast<int>(std::lround(seconds * rate_Hz));
    for (int row = 0; row < rows; ++row) {
      boom_deg += speed_deg_per_s / rate_Hz;
      bucket_V += bucket_V_per_s / rate_Hz;
      time_s += 1.0 / rate_Hz;
      now_ms = static_cast<std::int64_t>(std::lround(time_s * 1000.0)) + 5000;
      const double volts = 2.4 + sense * boom_deg * kVoltsPerDegree + noise_V * random.normal();
      const double bar = 60.0 + 0.2 * boom_deg + noise_bar * random.normal();
      if (!silent)
        say(fmt::format("{:.3f},{:.5f},{:.4f},{:.3f},{:.4f}\n", time_s, volts, bucket_V, bar, 52.0));
      if (watch) {
        sight = watch->look(feed, now_ms);
        if (sight.done && !done_at_s) done_at_s = time_s;
      }
    }
  }
  /// To an angle at a speed.
  void go(double to_deg, double speed_deg_per_s = 9.0) {
    const double way = to_deg - boom_deg;
    run(std::abs(way) / speed_deg_per_s, std::copysign(speed_deg_per_s, way));
    boom_deg = to_deg;
  }
  void ask(const Step& step, std::optional<KnownLine> line = kLine) {
    watch.emplace(procedure, state, step, std::move(line));
    done_at_s.reset();
  }
  [[nodiscard]] std::string trouble() const { return sight.trouble ? sight.trouble->code : ""; }

  std::string header =
      "time [s],boom_sensor [V],bucket_sensor [V],head_pressure [bar],oil_temperature [Cel]\n";
  Random random;
  double rate_Hz = 50.0;
  double time_s = 100.0;
  double boom_deg = -30.0;
  double bucket_V = 2.7;
  double sense = 1.0;
  double noise_V = 0.0012;
  double noise_bar = 0.3;
  bool silent = false;
  std::int64_t now_ms = 105'000;
  procedures::Procedure procedure{
      .entries = {{.id = "window-low", .standard = "-5 deg"}, {.id = "window-high", .standard = "15 deg"}}};
  procedures::State state{};
  Feed feed{folder::edge()};
  std::optional<Watch> watch{};
  Sight sight{};
  std::optional<double> done_at_s{};
};

Step pose(const char* steady_for = "3 s") {
  return {.id = "p", .kind = StepKind::Pose, .duration = steady_for};
}
Step pass(procedures::Direction direction = procedures::Direction::Up) {
  return {.id = "p", .kind = StepKind::Pass, .direction = direction};
}
Step reading(const char* quantity, const char* unit) {
  return {.id = "r", .kind = StepKind::Reading, .quantity = quantity, .unit = unit};
}

TEST(FeedTest, DropsOutAndComesBack) {
  Bench bench;
  bench.run(2.0);
  EXPECT_TRUE(bench.feed.isAlive(bench.now_ms));
  EXPECT_NEAR(bench.feed.rowsPerSecond(), 50.0, 0.5);
  EXPECT_FALSE(bench.feed.isAlive(bench.now_ms + 1001));
  bench.silent = true;
  bench.run(3.0);
  EXPECT_EQ(bench.feed.dropOuts(), 0U);
  bench.silent = false;
  bench.run(0.1);
  EXPECT_TRUE(bench.feed.isAlive(bench.now_ms));
  EXPECT_EQ(bench.feed.dropOuts(), 1U);
  EXPECT_EQ(bench.feed.connection(), 1U);
}

TEST(FeedTest, AFaultyLineIsCountedAndSaidForAWhile) {
  Bench bench;
  bench.run(1.0);
  const std::size_t rows = bench.feed.rows().size();
  bench.say("101.5,?,2.7,60,52\n\n101.6,2\n");
  EXPECT_EQ(bench.feed.unreadable(), 2U);
  ASSERT_TRUE(bench.feed.fault());
  EXPECT_EQ(bench.feed.fault()->message.code, "csv-ragged-row");
  EXPECT_EQ(bench.feed.rows().size(), rows);
  bench.run(4.0);
  EXPECT_TRUE(bench.feed.fault());
  bench.run(2.0);
  EXPECT_FALSE(bench.feed.fault());
  EXPECT_EQ(bench.feed.connection(), 1U);
}

TEST(FeedTest, AReconnectMayComeWithOtherColumns) {
  Bench bench;
  bench.run(1.0);
  bench.say("103.0,2.4,2.");
  bench.feed.disconnected();
  bench.say("time [ms],boom_sensor [deg],head_pressure [kPa]\n5,30,6000\n");
  EXPECT_EQ(bench.feed.connection(), 2U);
  EXPECT_EQ(bench.feed.unreadable(), 0U);
  ASSERT_EQ(bench.feed.rows().size(), 1U);
  EXPECT_EQ(bench.feed.boomSensorUnit(), calibration::SensorUnit::Radian);
  EXPECT_FALSE(bench.feed.bucketSensorUnit());
  EXPECT_NEAR(bench.feed.rows().front().boom_sensor, 30.0 * kDegree, 1e-12);
  // Without the connection having ended, too.
  bench.say(bench.header + "7,2.4,2.7,60,52\n");
  EXPECT_EQ(bench.feed.connection(), 3U);
  EXPECT_EQ(bench.feed.boomSensorUnit(), calibration::SensorUnit::Volt);
}

TEST(FeedTest, AClockThatBeginsAnewBeginsAConnectionAndALineThatCameTwiceDoesNot) {
  Bench bench;
  bench.run(1.0);
  const std::size_t rows = bench.feed.rows().size();
  bench.say(fmt::format("{:.3f},2.4,2.7,60,52\n", bench.time_s));
  EXPECT_EQ(bench.feed.rows().size(), rows);
  EXPECT_EQ(bench.feed.connection(), 1U);
  bench.say("0.02,2.4,2.7,60,52\n");
  EXPECT_EQ(bench.feed.connection(), 2U);
  EXPECT_EQ(bench.feed.rows().size(), 1U);
}

TEST(FeedTest, AnHourAtManyRowsASecondStaysBounded) {
  Bench bench;
  bench.rate_Hz = 20.0;
  bench.run(3600.0);
  EXPECT_LE(bench.feed.rows().back().time_s - bench.feed.rows().front().time_s, LiveLimits{}.kept_s);
  EXPECT_LE(bench.feed.rows().size(), 180U * 20U + 1U);
}

TEST(FeedTest, ShownValuesAreSmootherThanRows) {
  Bench bench;
  bench.run(1.0);
  double shown = 0.0;
  double single = 0.0;
  constexpr int kLooks = 200;
  for (int look = 0; look < kLooks; ++look) {
    bench.run(0.3);
    const double middle = 60.0 + 0.2 * bench.boom_deg;
    shown += std::pow(bench.feed.current()->head_pressure_Pa / 1e5 - middle, 2);
    single += std::pow(bench.feed.rows().back().head_pressure_Pa / 1e5 - middle, 2);
  }
  // The mean of 15 independent rows has a variance of 1/15; a bound of 1/8 is 4 standard deviations off for
  // 200 looks.
  EXPECT_LT(shown, single / 8.0);
  EXPECT_NEAR(bench.feed.current()->oil_temperature_K.value(), 325.15, 1e-9);
}

TEST(FeedTest, ItsLogIsALiftLogOfTheSameRows) {
  Bench bench;
  bench.run(3.0, 5.0);
  const auto log = folder::edge().read_log(bench.feed.log(101.0, 102.0), "log");
  ASSERT_TRUE(log) << log.error().message.code;
  EXPECT_EQ(log->rows.size(), 51U);
  EXPECT_EQ(log->rows_dropped, 0U);
}

TEST(WatchTest, AReadingIsTheSteadyMeanInTheUnitOfTheStep) {
  Bench bench;
  bench.boom_deg = 10.0;
  bench.ask(reading("head-pressure", "bar"));
  bench.run(0.5);
  EXPECT_FALSE(bench.sight.steady);
  bench.run(1.0);
  ASSERT_TRUE(bench.sight.steady);
  // 62 bar; the mean of 50 rows of 0.3 bar has a standard deviation of 0.04 bar.
  EXPECT_NEAR(*readSi(bench.sight.value, Dimension::Pressure) / 1e5, 62.0, 0.2);
  EXPECT_NEAR(*readSi(bench.sight.spread, Dimension::Pressure) / 1e5, 0.3, 0.15);
  EXPECT_TRUE(bench.sight.value.ends_with(" bar"));
  EXPECT_LE(bench.sight.value.size(), std::string("62.03 bar").size());

  bench.ask(reading("head-pressure", "[psi]"));
  bench.run(1.5);
  EXPECT_NEAR(*readSi(bench.sight.value, Dimension::Pressure) / 1e5, 62.0, 0.2);
  EXPECT_TRUE(bench.sight.value.ends_with(" [psi]"));
  bench.ask(reading("oil-temperature", "Cel"));
  bench.run(1.5);
  EXPECT_EQ(bench.sight.value, "52 Cel");
  bench.ask(reading("boom-sensor", "V"));
  bench.run(1.5);
  EXPECT_NEAR(*readSi(bench.sight.value, Dimension::Voltage), 2.8, 0.001);
  bench.ask(reading("boom-angle", "deg"));
  bench.run(1.5);
  EXPECT_NEAR(*readSi(bench.sight.value, Dimension::Angle) / kDegree, 10.0, 0.03);
}

TEST(WatchTest, AReadingIsTakenByItselfOnlyWhileTheBoomIsUp) {
  Bench bench;
  bench.boom_deg = 10.0;
  bench.ask(reading("head-pressure", "bar"));
  bench.run(3.0);
  EXPECT_TRUE(bench.sight.steady);
  EXPECT_FALSE(bench.sight.done);
  bench.state.open = {procedures::Hazard::RaisedBoom};
  bench.ask(reading("head-pressure", "bar"));
  bench.run(0.5);
  EXPECT_FALSE(bench.sight.done);
  bench.run(1.0);
  EXPECT_TRUE(bench.sight.done);
  EXPECT_NEAR(*readSi(bench.sight.value, Dimension::Pressure) / 1e5, 62.0, 0.2);
  // Not while it moves.
  bench.ask(reading("head-pressure", "bar"));
  bench.go(20.0);
  EXPECT_FALSE(bench.done_at_s);
}

TEST(WatchTest, AReadingTakesTheUnitInWhichTheFeedsSensorReads) {
  Bench bench;
  Step step = reading("boom-sensor", "deg");
  step.others = {{.unit = "V", .plausible = {}}};
  bench.ask(step);
  bench.run(1.5);
  EXPECT_TRUE(bench.sight.value.ends_with(" V")) << bench.sight.value;
}

TEST(WatchTest, NothingIsReadOfWhatMovesWasLostOrNobodySends) {
  Bench bench;
  bench.ask(reading("head-pressure", "bar"));
  bench.run(2.0, 4.0);
  EXPECT_FALSE(bench.sight.steady);
  bench.run(2.0);
  EXPECT_TRUE(bench.sight.steady);
  bench.silent = true;
  bench.run(1.2);
  EXPECT_FALSE(bench.sight.alive);
  EXPECT_FALSE(bench.sight.steady);
  EXPECT_EQ(bench.sight.value, "");
  bench.silent = false;
  bench.run(0.5);
  EXPECT_FALSE(bench.sight.steady);
  bench.ask(reading("pitch", "deg"));
  bench.run(2.0);
  EXPECT_EQ(bench.sight.value, "");
  Step independent = reading("head-pressure", "bar");
  independent.source = procedures::Source::Independent;
  bench.ask(independent);
  bench.run(2.0);
  EXPECT_EQ(bench.sight.value, "");
}

TEST(WatchTest, NoiseAloneNeverBeginsAMovement) {
  for (const double rate_Hz : {10.0, 50.0, 100.0}) {
    for (std::uint64_t seed = 1; seed <= 3; ++seed) {
      Bench bench(seed);
      bench.rate_Hz = rate_Hz;
      bench.noise_V = 0.0035;  // more than the noisiest sensor that the simulator draws (2.5 mV)
      bench.ask(pose());
      for (int second = 0; second < 60; ++second) {
        bench.run(1.0);
        ASSERT_FALSE(bench.sight.begun) << rate_Hz << " " << seed;
        ASSERT_FALSE(bench.sight.done);
      }
      bench.ask(pass(), std::nullopt);
      bench.run(60.0);
      ASSERT_FALSE(bench.sight.begun) << rate_Hz << " " << seed;
    }
  }
}

TEST(WatchTest, APoseIsHeldOnceItStoodForItsTime) {
  Bench bench;
  bench.ask(pose("3 s"));
  bench.run(1.0);
  EXPECT_EQ(bench.sight.progress, 0.0);
  bench.go(0.0);
  EXPECT_EQ(bench.sight.travel, Travel::Up);
  const double stopped_s = bench.time_s;
  bench.run(1.5);
  EXPECT_EQ(bench.sight.travel, Travel::Still);
  EXPECT_GT(bench.sight.progress, 0.2);
  EXPECT_FALSE(bench.sight.held);
  bench.run(2.5);
  EXPECT_TRUE(bench.sight.held);
  ASSERT_TRUE(bench.done_at_s);
  // A stop is seen half a second late at most, for a speed is looked at over so long.
  EXPECT_GE(*bench.done_at_s - stopped_s, 3.0);
  EXPECT_LE(*bench.done_at_s - stopped_s, 3.6);
}

TEST(WatchTest, APoseThatSaysNoTimeIsHeldButLeftToThePerson) {
  Bench bench;
  bench.ask(pose(""));
  bench.run(1.0);
  bench.go(0.0);
  bench.run(3.0);
  EXPECT_TRUE(bench.sight.held);
  EXPECT_FALSE(bench.sight.done);
  bench.go(5.0);
  EXPECT_FALSE(bench.sight.held);
}

TEST(WatchTest, APoseIsNotHeldElsewhere) {
  Bench bench;
  Step step = pose();
  step.boom_angle = {.text = "0 deg"};
  step.within = {.text = "2 deg"};
  bench.ask(step);
  bench.run(1.0);
  bench.go(-6.0);
  bench.run(5.0);
  EXPECT_EQ(bench.trouble(), "live-not-at-pose");
  EXPECT_FALSE(bench.sight.done);
  EXPECT_NEAR(*bench.sight.off_rad / kDegree, 6.0, 0.1);
  EXPECT_NEAR(*bench.sight.wanted_rad, 0.0, 1e-12);
  bench.go(1.0, 4.0);
  EXPECT_EQ(bench.trouble(), "");
  bench.run(4.0);
  EXPECT_TRUE(bench.sight.done);
  // Where no line is known, nobody can say that it is elsewhere.
  bench.ask(step, std::nullopt);
  bench.run(1.0);
  bench.go(-6.0);
  bench.run(4.0);
  EXPECT_TRUE(bench.sight.done);
}

TEST(WatchTest, WhatStandsThereAlreadyNeedNotMove) {
  Bench bench;
  bench.boom_deg = 0.5;
  Step step = pose();
  step.boom_angle = {.text = "0 deg"};
  step.within = {.text = "2 deg"};
  bench.ask(step);
  bench.run(4.0);
  EXPECT_TRUE(bench.sight.done);
  step.approach = Approach::FromBelow;
  bench.ask(step);
  bench.run(10.0);
  EXPECT_FALSE(bench.sight.done);
}

TEST(WatchTest, APoseIsComeToFromTheSideThatIsAskedFor) {
  for (const double sense : {1.0, -1.0}) {
    Bench bench;
    bench.sense = sense;
    KnownLine line = kLine;
    line.line.slope_rad_per_unit *= sense;
    bench.boom_deg = 20.0;
    Step step = pose();
    step.approach = Approach::FromBelow;
    bench.ask(step, line);
    bench.run(1.0);
    bench.go(0.0);
    bench.run(6.0);
    EXPECT_EQ(bench.trouble(), "live-approach-from-below");
    EXPECT_FALSE(bench.sight.done);
    // Nothing to object to: the way down is only to come again.
    bench.go(-5.0, 6.0);
    bench.run(0.3);
    bench.go(0.0, 6.0);
    EXPECT_EQ(bench.trouble(), "");
    bench.run(4.0);
    EXPECT_TRUE(bench.sight.done) << sense;
    step.approach = Approach::FromAbove;
    bench.ask(step, line);
    bench.run(1.0);
    bench.go(10.0);
    bench.run(6.0);
    EXPECT_EQ(bench.trouble(), "live-approach-from-above") << sense;
  }
}

TEST(WatchTest, ABucketThatTiltsIsTheMovementOfAPose) {
  Bench bench;
  bench.ask(pose());
  bench.run(1.0);
  bench.run(2.5, 0.0, -0.5);
  EXPECT_FALSE(bench.sight.held);
  bench.run(4.0);
  EXPECT_TRUE(bench.sight.done);
}

TEST(WatchTest, APassIsCompleteOnceItWentThroughTheWindowAndGivesItsLog) {
  Bench bench;
  bench.ask(pass());
  bench.run(4.0);
  EXPECT_FALSE(bench.sight.begun);
  const double begun_s = bench.time_s;
  bench.go(40.0);
  EXPECT_TRUE(bench.sight.begun);
  EXPECT_EQ(bench.watch->log(), "");
  const double stopped_s = bench.time_s;
  bench.run(3.0);
  ASSERT_TRUE(bench.sight.done) << bench.trouble();
  const auto log = folder::edge().read_log(bench.watch->log(), "log");
  ASSERT_TRUE(log) << log.error().message.code;
  EXPECT_NEAR(log->rows.front().time_s, begun_s - 1.5, 0.5);
  EXPECT_GE(log->rows.back().time_s, stopped_s + 1.0);
  EXPECT_LE(log->rows.back().time_s, stopped_s + 1.6);
  const auto track = bench.watch->track(bench.feed, 0.0);
  ASSERT_EQ(track.size(), 400U);
  EXPECT_NEAR(track.front().first / kDegree, -30.0, 3.0);
  EXPECT_NEAR(track.back().first / kDegree, 40.0, 1.0);
}

TEST(WatchTest, APassIsRefusedWithItsReasonAndMayBeDoneAgain) {
  Bench bench;
  bench.boom_deg = 40.0;
  bench.ask(pass());
  bench.run(1.0);
  bench.go(-30.0);
  bench.run(2.0);
  EXPECT_EQ(bench.trouble(), "live-pass-went-down");
  EXPECT_FALSE(bench.sight.begun);
  bench.go(5.0);
  bench.run(2.0);
  EXPECT_EQ(bench.trouble(), "live-pass-too-short");
  bench.go(40.0);
  bench.run(2.0);
  EXPECT_EQ(bench.trouble(), "live-pass-too-short");
  bench.go(-30.0);
  bench.run(2.0);
  EXPECT_EQ(bench.trouble(), "live-pass-went-down");
  bench.go(40.0);
  EXPECT_EQ(bench.trouble(), "");
  bench.run(2.0);
  EXPECT_TRUE(bench.sight.done);

  bench.ask(pass(procedures::Direction::Down));
  bench.boom_deg = -30.0;
  bench.run(2.0);
  bench.ask(pass(procedures::Direction::Down));
  bench.run(1.0);
  bench.go(40.0);
  bench.run(2.0);
  EXPECT_EQ(bench.trouble(), "live-pass-went-up");
  bench.go(-30.0);
  bench.run(2.0);
  EXPECT_TRUE(bench.sight.done);
}

TEST(WatchTest, ABounceOrALittleSinkingAtTheEndTurnsNoPassRound) {
  Bench bench;
  bench.ask(pass());
  bench.run(1.0);
  bench.go(40.0, 20.0);
  for (const double way : {-0.5, 0.35, -0.2, 0.1}) bench.go(bench.boom_deg + way, 4.0);
  bench.run(0.2);
  bench.go(bench.boom_deg - 1.5, 2.0);
  bench.run(2.0);
  EXPECT_TRUE(bench.sight.done) << bench.trouble();
}

TEST(WatchTest, ADropOutInTheMiddleSpoilsAPass) {
  for (const bool reconnects : {false, true}) {
    Bench bench;
    bench.ask(pass());
    bench.run(1.0);
    bench.go(0.0);
    bench.silent = true;
    bench.run(2.0, 9.0);
    EXPECT_EQ(bench.trouble(), "live-dropped-out");
    bench.silent = false;
    if (reconnects) {
      bench.feed.disconnected();
      bench.say(bench.header);
    }
    bench.go(40.0);
    bench.run(3.0);
    EXPECT_FALSE(bench.sight.done) << reconnects;
    bench.go(-30.0);
    bench.run(2.0);
    bench.go(40.0);
    bench.run(2.0);
    EXPECT_TRUE(bench.sight.done) << reconnects;
  }
}

TEST(WatchTest, AShortHoleThatNobodyLookedAtSpoilsAPassAsWell) {
  Bench bench;
  bench.ask(pass());
  bench.run(1.0);
  bench.go(0.0);
  bench.boom_deg += 15.0;
  bench.time_s += 1.7;
  bench.go(40.0);
  bench.run(2.0);
  EXPECT_FALSE(bench.sight.done);
}

TEST(WatchTest, WithoutALineASensorMayReadEitherWay) {
  for (const double sense : {1.0, -1.0}) {
    Bench bench;
    bench.sense = sense;
    bench.ask(pass(), std::nullopt);
    bench.run(1.0);
    bench.go(40.0);
    bench.run(2.0);
    EXPECT_TRUE(bench.sight.done) << sense;
    EXPECT_FALSE(bench.sight.boom_rad);
    // What was seen says what a whole pass is.
    bench.ask(pass(procedures::Direction::Down), std::nullopt);
    bench.run(1.0);
    bench.go(20.0);
    bench.run(2.0);
    EXPECT_EQ(bench.trouble(), "live-pass-too-short") << sense;
  }
}

/// Whatever speed, rate and noise: a pass is complete if and only if it goes through the window.
TEST(WatchTest, APassIsCompleteIfAndOnlyIfItCoversTheWindow) {
  Random random(7);
  for (int round = 0; round < 150; ++round) {
    Bench bench(static_cast<std::uint64_t>(round));
    bench.rate_Hz = random.uniform(10.0, 100.0);
    bench.noise_V = random.uniform(0.0, 0.0025);
    const double from = random.uniform(-40.0, 5.0);
    const double to = random.uniform(std::max(from + 8.0, 0.0), 48.0);
    // So near to the window's ends noise decides.
    if (std::abs(from + 5.0) < 1.0 || std::abs(to - 15.0) < 1.0) continue;
    bench.boom_deg = from;
    bench.ask(pass());
    bench.run(1.5);
    bench.go(to, random.uniform(5.0, 30.0));
    bench.run(2.5);
    const bool covers = from < -5.0 && to > 15.0;
    ASSERT_EQ(bench.sight.done, covers) << round << ": " << from << " to " << to << " " << bench.trouble();
    ASSERT_EQ(bench.trouble(), covers ? "" : "live-pass-too-short");
  }
}

TEST(WatchTest, SpikesOfASensorAreNoMovement) {
  Bench bench;
  bench.ask(pass());
  for (int spike = 0; spike < 30; ++spike) {
    bench.run(0.5);
    bench.boom_deg += 25.0;
    bench.run(0.02);
    bench.boom_deg -= 25.0;
    ASSERT_FALSE(bench.sight.begun);
  }
}

}  // namespace
}  // namespace hingepin::session
