// SPDX-License-Identifier: Apache-2.0
#include "tests/engine/session/practice.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "engine/simulator/scenario.h"
#include "engine/units/degree.h"

namespace hingepin::session {
namespace {

constexpr std::array kStations_deg = {-4.0, 0.0, 4.0, 8.0, 12.0};

/// REQUIRES: what the simulator can do.
template <class T>
T made(Expected<T> value) {
  if (!value) throw std::runtime_error(value.error().message.code);
  return *std::move(value);
}

nlohmann::ordered_json stationsOf(const simulator::Machine& machine, simulator::Lift lift, Random random) {
  std::array<double, kStations_deg.size()> stations_rad{};
  std::ranges::transform(kStations_deg, stations_rad.begin(), [](double deg) { return deg * kDegree; });
  lift.plan = simulator::stationsFromBelow(machine.lowest_rad, stations_rad, machine.slow_rad_per_s);
  const auto rows = made(simulator::readStations(machine, lift, {}, random));
  nlohmann::ordered_json list = nlohmann::ordered_json::array();
  for (std::size_t index = 0; index < rows.size(); ++index) {
    list.push_back({{"boom_angle", fmt::format("{:.1f} deg", kStations_deg[index])},
                    {"boom_sensor", fmt::format("{:.2f} V", *rows[index].boom_sensor)},
                    {"head_pressure", fmt::format("{:.0f} bar", *rows[index].head_pressure_Pa / 1e5)},
                    {"rod_pressure", fmt::format("{:.0f} bar", *rows[index].rod_pressure_Pa / 1e5)}});
  }
  return list;
}

}  // namespace

std::map<std::string, std::string> practiceFiles() {
  const simulator::Scenario scenario = simulator::demoScenario(1);
  const simulator::Machine& machine = scenario.machine;
  const auto find = [&](const char* file) {
    return std::ranges::find(scenario.taught, file, &simulator::JobLift::file)->lift;
  };
  const simulator::Lift slow = find("empty-slow.csv");
  const simulator::Lift mass = find("mass-2000-slow.csv");
  simulator::Lift down = slow;
  down.plan = simulator::onePass(machine.highest_rad - 2.0 * kDegree, machine.lowest_rad + 2.0 * kDegree,
                                 machine.slow_rad_per_s);
  const Random random(1);
  std::map<std::string, std::string> files;
  std::uint64_t part = 100;
  const auto log = [&](const char* name, simulator::Lift lift) {
    lift.logging.rate_Hz = 20.0;  // enough for a pass of ten seconds, and quick to fit
    const auto record = made(simulator::simulate(machine, lift, random.fork(++part)));
    files[name] = simulator::csvOf(machine, record.rows);
  };
  log("empty-slow-1.csv", slow);
  log("empty-slow-2.csv", slow);
  log("empty-down.csv", down);
  log("empty-fast.csv", find("empty-fast.csv"));
  for (const char* name : {"mass-1.csv", "mass-2.csv", "mass-3.csv"}) log(name, mass);
  files["stations.json"] = nlohmann::ordered_json({{"empty", stationsOf(machine, slow, random.fork(200))},
                                                   {"mass", stationsOf(machine, mass, random.fork(201))}})
                               .dump(2);
  return files;
}

}  // namespace hingepin::session
