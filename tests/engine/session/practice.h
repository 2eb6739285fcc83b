// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <map>
#include <string>

namespace hingepin::session {

/// The practice unit of the simulator (seed 1) as a job meets it: texts by file name. Logs of passes, all of
/// one machine with one oil: empty-slow-1.csv, empty-slow-2.csv, empty-down.csv, empty-fast.csv, mass-1.csv
/// to mass-3.csv (2000 kg); of it held still, as typed from a monitor: stations.json, {"empty": [...],
/// "mass": [...]} with boom_angle, boom_sensor, head_pressure and rod_pressure as quantities. Invented.
[[nodiscard]] std::map<std::string, std::string> practiceFiles();

}  // namespace hingepin::session
