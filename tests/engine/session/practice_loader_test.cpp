// SPDX-License-Identifier: Apache-2.0
#include "engine/session/practice_loader.h"

#include <fmt/format.h>
#include <gmock/gmock.h>

#include <cmath>

#include "engine/calibration/calibration.h"
#include "engine/formats/calibration_json.h"
#include "engine/session/lift_curves.h"
#include "engine/session/live.h"
#include "engine/units/degree.h"
#include "tests/engine/session/yard.h"

namespace hingepin::session {
namespace {

using procedures::Step;
using procedures::StepKind;

constexpr std::uint64_t kNumber = 27;

Step pose(procedures::BoomPlace boom, procedures::BucketPlace bucket = procedures::BucketPlace::RackedBack) {
  return {.id = "p", .kind = StepKind::Pose, .boom = boom, .bucket = bucket};
}
Step pass(procedures::Direction direction, procedures::Pace pace) {
  return {.id = "p", .kind = StepKind::Pass, .direction = direction, .pace = pace};
}

calibration::LiftLog logUntil(PracticeLoader& loader, double time_s) {
  return need(folder::edge().read_log(loader.linesUntil(time_s), "feed"));
}

TEST(PracticeLoaderTest, StandsStillWhileNothingIsAsked) {
  PracticeLoader loader(kNumber);
  const calibration::LiftLog log = logUntil(loader, 20.0);
  ASSERT_EQ(log.rows.size(), 1000U);
  double low = 1e9;
  double high = -1e9;
  for (const calibration::LiftRow& row : log.rows) {
    low = std::min(low, row.boom_sensor);
    high = std::max(high, row.boom_sensor);
  }
  // 1.2 mV of noise and steps of 1.2 mV.
  EXPECT_LT(high - low, 0.012);
  EXPECT_FALSE(loader.isMoving(20.0));
}

TEST(PracticeLoaderTest, GoesFromWhereItStandsWithoutAJump) {
  PracticeLoader loader(kNumber);
  std::string text = loader.linesUntil(1.0);
  double time_s = 1.0;
  for (const Step& step :
       {pose(procedures::BoomPlace::Lowest), pass(procedures::Direction::Up, procedures::Pace::Slow),
        pose(procedures::BoomPlace::Level),
        pose(procedures::BoomPlace::Level, procedures::BucketPlace::Dumped),
        pass(procedures::Direction::Up, procedures::Pace::Fast),
        pass(procedures::Direction::Down, procedures::Pace::Slow),
        pose(procedures::BoomPlace::Ground, procedures::BucketPlace::Level),
        pose(procedures::BoomPlace::Any)}) {
    need(loader.begin(step, 0.0, time_s));
    // What is asked before it is done waits for that.
    time_s += 0.5;
  }
  while (loader.isMoving(time_s)) text += loader.linesUntil(time_s += 0.04);
  text += loader.linesUntil(time_s += 2.0);
  const calibration::LiftLog log = need(folder::edge().read_log(text, "feed"));
  EXPECT_EQ(log.rows_dropped, 0U);
  ASSERT_GT(log.rows.size(), 2000U);
  for (std::size_t index = 1; index < log.rows.size(); ++index) {
    const calibration::LiftRow& before = log.rows[index - 1];
    const calibration::LiftRow& row = log.rows[index];
    ASSERT_NEAR(row.time_s - before.time_s, 0.02, 0.0101);
    // 30 deg/s at the most (0.04 V a degree), noise of 1.2 mV twice, steps; 20 ms.
    ASSERT_NEAR(row.boom_sensor, before.boom_sensor, 0.035) << row.time_s;
    ASSERT_NEAR(*row.bucket_sensor, *before.bucket_sensor, 0.09) << row.time_s;
  }
}

TEST(PracticeLoaderTest, IsWhereAPoseAsks) {
  PracticeLoader loader(kNumber);
  double time_s = 0.0;
  const auto standsAt = [&](const Step& step) {
    need(loader.begin(step, 0.0, time_s));
    while (loader.isMoving(time_s)) static_cast<void>(loader.linesUntil(time_s += 0.04));
    return loader.boom_rad() / kDegree;
  };
  const double lowest = loader.machine().lowest_rad / kDegree;
  const double highest = loader.machine().highest_rad / kDegree;
  EXPECT_NEAR(standsAt(pose(procedures::BoomPlace::Lowest)), lowest, 2.5);
  EXPECT_NEAR(standsAt(pose(procedures::BoomPlace::Highest)), highest, 2.5);
  Step step = pose(procedures::BoomPlace::Level);
  step.boom_angle = {.text = "-4 deg"};
  step.approach = procedures::Approach::FromBelow;
  EXPECT_NEAR(standsAt(step), -4.0, 1.0);
  EXPECT_NEAR(standsAt(pose(procedures::BoomPlace::Level)), loader.machine().reference_rad / kDegree, 1.0);
}

TEST(PracticeLoaderTest, DropsOutAndComesBackWithItsHeader) {
  PracticeLoader loader(kNumber);
  EXPECT_TRUE(loader.linesUntil(1.0).starts_with("time [s],"));
  EXPECT_FALSE(loader.linesUntil(2.0).starts_with("time"));
  loader.dropOut(5.0);
  for (double time_s = 2.1; time_s < 5.0; time_s += 0.1) EXPECT_EQ(loader.linesUntil(time_s), "");
  const calibration::LiftLog log = logUntil(loader, 6.0);
  EXPECT_NEAR(log.rows.front().time_s, 5.0, 0.03);
  EXPECT_NEAR(static_cast<double>(log.rows.size()), 50.0, 2.0);
}

TEST(PracticeLoaderTest, TheSameNumberDoesTheSameAndAMishapShows) {
  const auto liftedWith = [](std::uint64_t number, std::vector<simulator::Happening> happenings) {
    PracticeLoader loader(number);
    loader.suffer(std::move(happenings));
    need(loader.begin(pass(procedures::Direction::Up, procedures::Pace::Slow), 0.0, 1.0));
    return loader.linesUntil(15.0);
  };
  const std::string once = liftedWith(kNumber, {});
  EXPECT_EQ(once, liftedWith(kNumber, {}));
  EXPECT_NE(once, liftedWith(kNumber + 1, {}));
  const auto meanHead = [](const std::string& text) {
    const calibration::LiftLog log = need(folder::edge().read_log(text, "feed"));
    double sum = 0.0;
    for (const calibration::LiftRow& row : log.rows) sum += row.head_pressure_Pa;
    return sum / static_cast<double>(log.rows.size());
  };
  const simulator::MishapKind& zero = simulator::kindOf(simulator::Mishap::PressureZeroOff);
  const std::string off = liftedWith(kNumber, {{simulator::Mishap::PressureZeroOff, zero.most}});
  EXPECT_GT(std::abs(meanHead(off) - meanHead(once)), 1e4);
}

TEST(PracticeLoaderTest, MovesWhateverHappensToIt) {
  const std::vector<std::string> mishaps = practiceMishaps();
  EXPECT_EQ(mishaps.size(), 16U);
  std::string well;
  for (const std::string& mishap : mishaps) {
    PracticeLoader loader(kNumber);
    // What was chosen and taken back again leaves nothing.
    loader.suffer(mishap);
    loader.suffer("");
    need(loader.begin(pass(procedures::Direction::Up, procedures::Pace::Fast), 0.0, 1.0));
    if (well.empty()) well = loader.linesUntil(12.0);
    loader = PracticeLoader(kNumber);
    loader.suffer(mishap);
    need(loader.begin(pass(procedures::Direction::Up, procedures::Pace::Fast), 0.0, 1.0));
    const std::string text = loader.linesUntil(12.0);
    EXPECT_NE(text, well) << mishap;
    double time_s = 12.0;
    while (loader.isMoving(time_s)) static_cast<void>(loader.linesUntil(time_s += 0.5));
    // A boom that swings on its accumulator is not lowered onto the end of its cylinders: that is refused.
    const Expected<void> lowered =
        loader.begin(pose(procedures::BoomPlace::Lowest, procedures::BucketPlace::Dumped), 0.0, time_s);
    EXPECT_EQ(lowered.has_value(), mishap != "mishap-suspension-on") << mishap;
  }
}

/// A technician who has the phone in its cradle: what the watch calls held or complete goes on, live readings
/// are taken when they are steady, and the loader does what is asked.
class Cradle {
 public:
  explicit Cradle(Yard& yard) : yard_(yard), begin_ms_(yard.now.at_ms) {}

  /// @return "" or what stopped it
  std::string work(OpenJob& job) {
    for (int count = 0; count < 2000 && !procedures::hasEnded(job.state.phase); ++count) {
      const procedures::Prompt asked = procedures::prompt(job.procedure, job.state);
      const Step* const step = procedures::findStep(job.procedure, asked.about);
      procedures::Event event = yard_.honest(job);
      if (step != nullptr && asked.ask == procedures::Ask::Answer &&
          (step->kind == StepKind::Pose || step->kind == StepKind::Pass)) {
        need(loader.begin(*step, step->load == procedures::Load::TestMass ? mass_kg : 0.0, feedTime_s()));
        const std::string stopped = watch(job, *step, event);
        if (!stopped.empty()) return step->id + ": " + stopped;
      }
      if (step != nullptr && asked.ask == procedures::Ask::Reading) {
        if (step->quantity == "boom-angle") {
          // An inclinometer of 0.3 deg.
          event.value = fmt::format("{:.1f} deg", loader.boom_rad() / kDegree + 0.3 * random_.normal());
        } else if (step->source == procedures::Source::Machine && step->quantity != "indication") {
          const std::string stopped = watch(job, *step, event);
          if (!stopped.empty()) return step->id + ": " + stopped;
        }
      }
      if (const Expected<void> taken = yard_.tell(job, event); !taken)
        return event.about + ": " + taken.error().message.code;
      run(2.0);
    }
    return "";
  }

  PracticeLoader loader{kNumber};
  double mass_kg = 2000.0;
  int live_readings = 0;
  int logs = 0;

 private:
  [[nodiscard]] double feedTime_s() const {
    return static_cast<double>(yard_.now.at_ms - begin_ms_) / 1000.0;
  }
  void run(double seconds) {
    for (const double until_s = feedTime_s() + seconds; feedTime_s() < until_s;) tick();
  }
  void tick() {
    yard_.now.at_ms += 40;
    yard_.now.utc_ms += 40;
    feed_.take(loader.linesUntil(feedTime_s()), yard_.now.at_ms);
  }

  /// Looks on until there is an answer.
  std::string watch(const OpenJob& job, const Step& step, procedures::Event& event) {
    const BlobSource blobs = blobsOf(yard_.store);
    Watch watch(job.procedure, job.state, step, boomLineOf(job, folder::edge(), blobs));
    event.how = procedures::How::Live;
    constexpr double kLongest_s = 60.0;
    std::string trouble = "no end";
    for (const double until_s = feedTime_s() + kLongest_s; feedTime_s() < until_s;) {
      tick();
      const Sight sight = watch.look(feed_, yard_.now.at_ms);
      trouble = sight.trouble ? sight.trouble->code : "no end";
      if (step.kind == StepKind::Reading && sight.steady) {
        event.value = sight.value;
        ++live_readings;
        return "";
      }
      // A pose that says no time is for the person to call, who also sees that the boom is there already and
      // nothing has to move.
      const bool there = step.kind == StepKind::Pose && !loader.isMoving(feedTime_s()) &&
                         (step.duration.empty() || !sight.begun);
      if (sight.done || (step.duration.empty() && sight.held) || there) {
        if (step.kind == StepKind::Pass && step.log != procedures::LogNeed::None) {
          event.hashes = {need(keepFile(yard_.store, job, step.id, watch.log(), "live", folder::fillBytes,
                                        yard_.now, folder::edge()))};
          ++logs;
        }
        return "";
      }
    }
    return trouble;
  }

  Yard& yard_;
  std::int64_t begin_ms_;
  Feed feed_{folder::edge()};
  Random random_{11};
};

TEST(PracticeLoaderTest, AWholeJobTaughtLiveFindsTheTruthWithinItsStatedUncertainty) {
  Yard yard;
  yard.says = {{"hours", {"4211 h"}}, {"fuel", {"80 %"}}};
  OpenJob round = yard.begin("walk-round");
  ASSERT_EQ(yard.work(round), "");
  static_cast<void>(need(yard.seal(round)));

  yard.says = {{"found-empty", {"10 kg"}},
               {"found-mass", {"2000 kg"}},
               {"found-shown", {"2010 kg"}},
               {"pitch", {"0.2 deg"}},
               {"log-mass-known", {"2000 kg"}},
               {"zero-shown", {"0 kg"}},
               {"prove-mass", {"2000 kg"}},
               {"prove-shown", {"2005 kg", "2000 kg", "2000 kg", "1995 kg", "2005 kg"}},
               {"prove-shown-slow", {"2000 kg", "2005 kg", "2000 kg"}},
               {"upper-set", {"3.4 m"}},
               {"lower-set", {"300 mm"}},
               {"heel-set", {"300 mm"}},
               {"upper-reached", {"3.41 m"}},
               {"lower-reached", {"305 mm"}},
               {"heel-reached", {"305 mm"}}};
  Cradle cradle(yard);
  OpenJob job = yard.begin("after-attachment-change", "logged");
  ASSERT_EQ(cradle.work(job), "");
  ASSERT_EQ(job.state.phase, procedures::Phase::Done);
  EXPECT_GE(cradle.live_readings, 6);
  EXPECT_EQ(cradle.logs, 3 + 7 + 8);  // as found, taught, and proved fast and slowly
  const std::string record = need(yard.seal(job));
  const JsonValue content = need(recordOf(yard.store, record)).content;
  const auto blob = [&](const std::string& hash) { return need(yard.store.blob(hash)).value(); };
  const calibration::Calibration calibration =
      need(formats::readCalibration(blob(textAt(content, {"calibration", "hash"})), "stored"));

  // The boom line against the machine's truth, over the travel: its own doubt, and the sensor's ripple that
  // no line follows (drawn with 0.15 deg).
  PracticeLoader& loader = cradle.loader;
  double time_s = 1e5;
  static_cast<void>(loader.linesUntil(time_s));
  for (const auto place :
       {procedures::BoomPlace::Lowest, procedures::BoomPlace::Level, procedures::BoomPlace::Highest}) {
    need(loader.begin(pose(place), 0.0, time_s));
    while (loader.isMoving(time_s)) static_cast<void>(loader.linesUntil(time_s += 0.04));
    const calibration::LiftLog log = need(folder::edge().read_log(
        "time [s],boom_sensor [V],bucket_sensor [V],head_pressure [bar],rod_pressure [bar],engine_speed "
        "[/min],pitch [deg],oil_temperature [Cel]\n" +
            loader.linesUntil(time_s += 2.0),
        "feed"));
    double reading = 0.0;
    for (const calibration::LiftRow& row : log.rows)
      reading += row.boom_sensor / static_cast<double>(log.rows.size());
    const calibration::SensorLine& line = calibration.boom_line;
    const double u_rad =
        std::hypot(line.angle_u_rad, line.slope_u_rad_per_unit * (reading - line.reading_at), 0.0026);
    EXPECT_NEAR(line.angle(reading), loader.boom_rad(), 2.5 * u_rad);
  }

  // Masses that it was not taught, each against its own stated uncertainty.
  int inside = 0;
  int weighed = 0;
  for (const double mass_kg : {800.0, 1500.0, 2600.0, 3400.0, 4300.0}) {
    need(loader.begin(pose(procedures::BoomPlace::Lowest), mass_kg, time_s));
    while (loader.isMoving(time_s)) static_cast<void>(loader.linesUntil(time_s += 0.04));
    static_cast<void>(loader.linesUntil(time_s += 1.0));
    need(loader.begin(pass(procedures::Direction::Up, procedures::Pace::Slow), mass_kg, time_s));
    std::string text =
        "time [s],boom_sensor [V],bucket_sensor [V],head_pressure [bar],rod_pressure [bar],engine_speed "
        "[/min],pitch "
        "[deg],oil_temperature [Cel]\n";
    while (loader.isMoving(time_s)) text += loader.linesUntil(time_s += 0.04);
    const calibration::Weighing weighing =
        need(calibration::weigh(calibration, need(folder::edge().read_log(text, "weighed"))));
    ++weighed;
    const double off = std::abs(weighing.mass_kg - mass_kg);
    if (off <= weighing.expanded_uncertainty_kg) ++inside;
    // 95.45 % within U; nothing of five is expected beyond one and a half of it (0.3 %).
    EXPECT_LE(off, 1.5 * weighing.expanded_uncertainty_kg) << mass_kg << " kg";
    EXPECT_LT(weighing.expanded_uncertainty_kg, 0.03 * 4500.0);
    RecordProperty(fmt::format("off_{:.0f}", mass_kg),
                   fmt::format("{:.1f} of {:.1f}", off, weighing.expanded_uncertainty_kg));
  }
  EXPECT_GE(inside, weighed - 1);

  // What a chart shows of it.
  const BlobSource blobs = blobsOf(yard.store);
  const auto curves = liftCurvesOf(job, folder::edge(), blobs, 150);
  ASSERT_TRUE(curves);
  EXPECT_EQ(curves->passes.size(), 4U);
  EXPECT_EQ(curves->residuals.size(), 7U);
  ASSERT_EQ(curves->tare.size(), 150U);
  ASSERT_EQ(curves->tare_low.size(), curves->tare.size());
  for (std::size_t index = 0; index < curves->tare.size(); ++index) {
    EXPECT_LT(curves->tare_low[index].pressure_Pa, curves->tare[index].pressure_Pa);
    EXPECT_GT(curves->tare_high[index].pressure_Pa, curves->tare[index].pressure_Pa);
  }
  int lowering = 0;
  for (const EmptyPass& each : curves->passes) {
    EXPECT_LE(each.readings.size(), 150U);
    if (each.lowering) ++lowering;
  }
  EXPECT_EQ(lowering, 1);
  for (const PassResiduals& each : curves->residuals) {
    double squares = 0.0;
    for (const PressurePoint& point : each.points) squares += point.pressure_Pa * point.pressure_Pa;
    const double rms_Pa = std::sqrt(squares / static_cast<double>(each.points.size()));
    const auto summary = std::ranges::find(calibration.passes, each.name, &calibration::PassSummary::name);
    ASSERT_NE(summary, calibration.passes.end());
    // The fit's figure leaves out bounces that it found; a tenth of a bar is about one step of the sensor.
    EXPECT_LT(rms_Pa, 1.5 * summary->residual_Pa + 0.1e5) << each.name;
  }

  // The record shows the same, and its proof: what was said of 2000 kg, five times fast and three times
  // slowly.
  const JobCurves recorded = need(recordCurvesOf(yard.store, record, folder::edge()));
  ASSERT_TRUE(recorded.lift);
  EXPECT_EQ(recorded.lift->residuals.size(), 7U);
  EXPECT_THAT(recorded.proof.indications_kg,
              ::testing::ElementsAre(2005.0, 2000.0, 2000.0, 1995.0, 2005.0, 2000.0, 2005.0, 2000.0));
  EXPECT_EQ(recorded.proof.reference_kg, 2000.0);
  EXPECT_EQ(recordCurvesOf(yard.store, "none", folder::edge()).error().message.code, "record-not-in-store");
  EXPECT_EQ(jobCurvesOf(yard.store, job, folder::edge()).proof.indications_kg, recorded.proof.indications_kg);

  // Before there is a calibration the poses' line shows the passes that were made.
  OpenJob early = job;
  std::size_t logs = 0;
  for (procedures::Try& each : early.state.tries) {
    const Step* const step = procedures::findStep(early.procedure, each.event.about);
    if (step == nullptr || step->kind != procedures::StepKind::Pass || each.event.hashes.empty()) continue;
    const bool teaches = step->log == procedures::LogNeed::Required;
    if (!teaches || ++logs > 1) each.counts = false;
  }
  const auto first = liftCurvesOf(early, folder::edge(), blobs, 150);
  ASSERT_TRUE(first);
  ASSERT_EQ(first->passes.size(), 1U);
  EXPECT_FALSE(first->passes.front().lowering);
  for (const PressurePoint& point : first->passes.front().readings) {
    EXPECT_GT(point.boom_angle_rad, -60.0 * kDegree);
    EXPECT_LT(point.boom_angle_rad, 60.0 * kDegree);
  }
}

}  // namespace
}  // namespace hingepin::session
