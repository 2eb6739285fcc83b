// SPDX-License-Identifier: Apache-2.0
#include "engine/simulator/scenario.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>

namespace hingepin::simulator {
namespace {

using Json = nlohmann::json;

Files demo(std::uint64_t number) { return filesOf(demoScenario(number), Random(number).fork(3)).value(); }
Files drawn(std::uint64_t number) { return filesOf(drawnScenario(number), Random(number).fork(3)).value(); }

TEST(ScenarioTest, TheSameNumberGivesTheSameBytesAndAnotherDoesNot) {
  EXPECT_EQ(demo(7), demo(7));
  const Files one = demo(7);
  const Files other = demo(8);
  EXPECT_NE(one.at("empty-slow.csv"), other.at("empty-slow.csv"));
  EXPECT_NE(one.at("truth.json"), other.at("truth.json"));
}

TEST(ScenarioTest, TheDemoHoldsItsLogsItsLoadsAndItsTruthAndSaysThatItIsInvented) {
  const Files files = demo(1);
  for (const char* name :
       {"job.json", "truth.json", "README.txt", "empty-slow.csv", "empty-fast.csv", "mass-2000-slow.csv",
        "load-1.csv", "load-2.csv", "load-3.csv", "load-4.csv", "load-5.csv", "load-6.csv"}) {
    EXPECT_TRUE(files.contains(name)) << name;
  }
  EXPECT_EQ(files.size(), 12u);
  EXPECT_NE(files.at("README.txt").find("Invented"), std::string::npos);
  const Json truth = Json::parse(files.at("truth.json"));
  EXPECT_NE(truth["note"].get<std::string>().find("Invented"), std::string::npos);
  ASSERT_EQ(truth["unknown"].size(), 6u);
  for (const Json& lift : truth["unknown"]) {
    EXPECT_GT(lift["mass_kg"].get<double>(), 0.2 * 4500.0);
    EXPECT_LE(lift["mass_kg"].get<double>(), 4500.0);
    EXPECT_TRUE(files.contains(lift["file"].get<std::string>()));
  }
}

TEST(ScenarioTest, ADrawnMachineHasItsJobItsLogsAndItsTruthByItsNumberAlone) {
  const Files files = drawn(7);
  EXPECT_EQ(files, drawn(7));
  EXPECT_NE(files.at("job.json"), drawn(8).at("job.json"));
  for (const char* name : {"job.json", "truth.json", "README.txt", "empty-slow.csv", "empty-fast.csv",
                           "mass-slow.csv", "load-1.csv", "load-2.csv", "load-3.csv", "load-4.csv"}) {
    EXPECT_TRUE(files.contains(name)) << name;
  }
  EXPECT_EQ(files.size(), 10u);
  EXPECT_NE(files.at("README.txt").find("Invented"), std::string::npos);
  const Json job = Json::parse(files.at("job.json"));
  EXPECT_TRUE(job["unit"].contains("linkage"));
  EXPECT_EQ(job["lifts"][2]["kind"], "test-mass");
  const Json truth = Json::parse(files.at("truth.json"));
  EXPECT_GE(truth["machine"]["operating_mass_kg"].get<double>(), 8000.0);
  EXPECT_LE(truth["machine"]["operating_mass_kg"].get<double>(), 25000.0);
  EXPECT_EQ(truth["unknown"].size(), 4u);
}

TEST(ScenarioTest, WhatTeachesAJobIsWhatWasAskedFor) {
  for (const Teaching teaching : {Teaching::RisingOverLinkage, Teaching::BothWaysOverLinkage,
                                  Teaching::TestMass, Teaching::TestMassOverLinkage}) {
    Random random(11);
    const Scenario s = drawScenario(teaching, random);
    EXPECT_EQ(s.parts.linkage, teaching != Teaching::TestMass);
    const auto isMass = [](const JobLift& lift) { return lift.kind == "test-mass" && lift.mass_kg; };
    const auto isLowering = [](const JobLift& lift) {
      return lift.lift.plan.moves[0].to_rad < lift.lift.plan.from_rad;
    };
    EXPECT_EQ(std::ranges::any_of(s.taught, isMass),
              teaching == Teaching::TestMass || teaching == Teaching::TestMassOverLinkage);
    EXPECT_EQ(std::ranges::any_of(s.taught, isLowering), teaching == Teaching::BothWaysOverLinkage);
  }
}

// The example of the project's own job format.
TEST(ScenarioTest, TheDemosJobIsTheExampleOfTheFormat) {
  const Json job = Json::parse(demo(1).at("job.json"));
  EXPECT_EQ(job["format"], "hingepin-job/1");
  EXPECT_EQ(job["unit"]["id"], "L-27");
  EXPECT_EQ(job["unit"]["lift_cylinders"], (Json{{"count", 2}, {"bore", "130 mm"}, {"rod", "75 mm"}}));
  EXPECT_EQ(job["unit"]["rated_payload"], "4500 kg");
  EXPECT_EQ(job["unit"]["weigh_window"], (Json{"-8 deg", "18 deg"}));
  EXPECT_EQ(job["unit"]["linkage"], (Json{{"boom_length", "2.55 m"},
                                          {"boom_pivot_height", "1.95 m"},
                                          {"lift_frame_pin", {"0.08 m", "-0.53 m"}},
                                          {"lift_boom_pin", {"1.5 m", "-0.24 m"}},
                                          {"tilt_frame_pin", {"0.164 m", "-0.158 m"}},
                                          {"bellcrank_pivot", {"1.543 m", "0.487 m"}},
                                          {"bellcrank_tilt_arm", "0.71 m"},
                                          {"bellcrank_link_arm", "0.792 m"},
                                          {"bellcrank_angle", "184 deg"},
                                          {"link_length", "0.609 m"},
                                          {"bucket_pin_distance", "0.307 m"},
                                          {"bucket_pin_angle", "94 deg"},
                                          {"tilt_cylinder_retracted", "1.364 m"},
                                          {"tilt_cylinder_extended", "1.709 m"}}));
  EXPECT_EQ(job["attachment"]["coupler"], "320 kg");
  EXPECT_EQ(job["attachment"]["bucket"], "1250 kg");
  EXPECT_EQ(job["gravity"], "9.80665 m/s2");
  ASSERT_EQ(job["poses"].size(), 5u);
  ASSERT_EQ(job["lifts"].size(), 3u);
  EXPECT_EQ(job["lifts"][2]["mass"], "2000 kg");
  // The example's own voltages, to the angle sensor's ripple of 0.15 deg and the pose's 0.01 V.
  EXPECT_NEAR(std::stod(job["poses"][0]["boom_sensor"].get<std::string>()), 0.71, 0.04);
  EXPECT_NEAR(std::stod(job["poses"][1]["boom_sensor"].get<std::string>()), 4.22, 0.04);
  EXPECT_NEAR(std::stod(job["poses"][3]["bucket_sensor"].get<std::string>()), 1.76, 0.04);
}

TEST(ScenarioTest, ALogsHeaderNamesItsUnitsAndItsRowsAreWhole) {
  std::istringstream log(demo(1).at("empty-slow.csv"));
  std::string line;
  ASSERT_TRUE(std::getline(log, line));
  EXPECT_EQ(
      line,
      "time [s],boom_sensor [V],bucket_sensor [V],head_pressure [bar],rod_pressure [bar],engine_speed [/min],"
      "oil_temperature [Cel]");
  int rows = 0;
  double before = -1.0;
  while (std::getline(log, line)) {
    EXPECT_EQ(std::count(line.begin(), line.end(), ','), 6) << line;
    const double time_s = std::stod(line);
    EXPECT_GT(time_s, before);
    before = time_s;
    ++rows;
  }
  EXPECT_GT(rows, 400);  // 10 to 13 s at 50 Hz
  EXPECT_LT(rows, 800);
}

TEST(ScenarioTest, UnitsOfALogAreThoseAskedFor) {
  Random random(1);
  const Machine m = practiceMachine(random);
  LogRow row{};
  row.time_s = 0.25;
  row.boom_sensor = 2.5;
  row.head_pressure_Pa = 6894757.293168;  // 1000 pounds per square inch (NIST SP 811: 6894.757 Pa)
  row.oil_temperature_Cel = 50.0;
  EXPECT_EQ(csvOf(m, {row}, {true, true, "[psi]", "[degF]"}),
            "time [ms],boom_sensor [mV],head_pressure [[psi]],oil_temperature "
            "[[degF]]\n250.00,2500.0,1000.00,122.0\n");
  row.oil_temperature_Cel.reset();
  row.head_pressure_Pa.reset();
  EXPECT_EQ(csvOf(m, {row}), "time [s],boom_sensor [V],head_pressure [bar]\n0.25000,2.5000,\n");
}

TEST(ScenarioTest, TypedReadingsStandInTheJobAndInAFileOfTheirOwn) {
  Scenario s = demoScenario(4);
  JobLift typed = s.taught[0];
  typed.typed = true;
  const double stations[] = {-0.1, 0.0, 0.1, 0.2};
  typed.lift.plan = stationsFromBelow(-0.3, stations, s.machine.slow_rad_per_s);
  typed.file = "typed.json";
  s.taught = {typed};
  typed.kind = "load";
  s.unknown = {typed};
  const Files files = filesOf(s, Random(4)).value();
  const Json job = Json::parse(files.at("job.json"));
  ASSERT_EQ(job["lifts"][0]["points"].size(), 4u);
  EXPECT_FALSE(job["lifts"][0].contains("log"));
  const Json readings = Json::parse(files.at("typed.json"));
  EXPECT_EQ(readings["format"], "hingepin-readings/1");
  EXPECT_EQ(readings["points"].size(), 4u);
  EXPECT_NE(readings["points"][0]["head_pressure"].get<std::string>().find(" bar"), std::string::npos);
}

}  // namespace
}  // namespace hingepin::simulator
