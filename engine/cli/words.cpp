// SPDX-License-Identifier: Apache-2.0
#include "engine/cli/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <nlohmann/json.hpp>
#include <utility>

#include "engine/cli/plot.h"
#include "engine/session/catalogue.h"
#include "engine/units/degree.h"

namespace hingepin::cli {
namespace {

using calibration::Calibration;
using calibration::Weighing;
using Json = nlohmann::ordered_json;

/// Invalid UTF-8, as a file name may hold, is replaced.
std::string jsonLine(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace) + "\n";
}

/// The characters that begin in a text, as a terminal counts them.
std::size_t widthOf(const std::string& text) {
  return static_cast<std::size_t>(std::ranges::count_if(
      text, [](char byte) { return (static_cast<unsigned char>(byte) & 0xC0) != 0x80; }));
}

std::string_view nameOf(calibration::LiftKind kind) {
  switch (kind) {
    case calibration::LiftKind::Empty:
      return "empty";
    case calibration::LiftKind::TestMass:
      return "test mass";
    case calibration::LiftKind::Load:
      return "load of known sum";
  }
  return "";
}

std::string_view unitOf(calibration::SensorUnit unit) {
  switch (unit) {
    case calibration::SensorUnit::Volt:
      return "V";
    case calibration::SensorUnit::Count:
      return "count";
    case calibration::SensorUnit::Radian:
      return "°";
  }
  return "";
}

/// A sensor's slope in degrees for one of what it reads in; a sensor in degrees has a plain number.
std::string slopeOf(double slope_rad_per_unit, calibration::SensorUnit unit) {
  if (unit == calibration::SensorUnit::Radian) return fmt::format("{:.4f}", slope_rad_per_unit);
  return fmt::format("{:.{}f}°/{}", slope_rad_per_unit / kDegree,
                     unit == calibration::SensorUnit::Count ? 5 : 3, unitOf(unit));
}

std::string optionalAngle(const std::optional<double>& radians) { return radians ? angle(*radians) : "-"; }

std::string optionalLength(const std::optional<double>& metres, UnitSystem system) {
  return metres ? shown(*metres, "m", 3, system) : "-";
}

}  // namespace

std::string words(const Message& message, UnitSystem system) {
  return session::say(session::englishCatalogue(), message, system);
}

std::string shown(double value, const char* ucum, int decimals, UnitSystem system) {
  return session::show(Amount{value, ucum, decimals}, system);
}

std::string angle(double radians, int decimals) {
  return shown(radians / kDegree, "deg", decimals, UnitSystem::Metric);
}

std::string sensorText(double value, std::optional<calibration::SensorUnit> unit) {
  switch (unit.value_or(calibration::SensorUnit::Volt)) {
    case calibration::SensorUnit::Volt:
      return fmt::format("{:.3f} V", value);
    case calibration::SensorUnit::Count:
      return fmt::format("{:.0f}", value);
    case calibration::SensorUnit::Radian:
      return angle(value, 2);
  }
  return "";
}

std::string in(const std::string& text, Charset charset) {
  if (charset == Charset::Utf8) return text;
  static constexpr std::array<std::pair<std::string_view, std::string_view>, 14> kPlain = {{{"°C", "degC"},
                                                                                            {"°F", "degF"},
                                                                                            {"°", " deg"},
                                                                                            {"±", "+/-"},
                                                                                            {"×", "*"},
                                                                                            {"−", "-"},
                                                                                            {"²", "2"},
                                                                                            {"█", "#"},
                                                                                            {"─", "-"},
                                                                                            {"│", "|"},
                                                                                            {"┤", "+"},
                                                                                            {"┬", "+"},
                                                                                            {"└", "+"},
                                                                                            {"…", "..."}}};
  std::string result;
  for (std::string_view rest = text; !rest.empty();) {
    const auto* const entry =
        std::ranges::find_if(kPlain, [&](const auto& pair) { return rest.starts_with(pair.first); });
    if (entry != kPlain.end()) {
      result += entry->second;
      rest.remove_prefix(entry->first.size());
      continue;
    }
    const auto byte = static_cast<unsigned char>(rest.front());
    if (byte < 0x80) result += rest.front();
    if (byte >= 0xC0) result += '?';
    rest.remove_prefix(1);
  }
  return result;
}

int decimalsOf(double uncertainty) {
  if (!(uncertainty > 0.0)) return 1;
  return std::clamp(1 - static_cast<int>(std::floor(std::log10(uncertainty))), 0, 6);
}

std::string layOut(const Table& given, Charset charset, std::size_t texts) {
  Table table = given;
  for (auto& row : table)
    std::ranges::transform(row, row.begin(), [&](const auto& cell) { return in(cell, charset); });
  std::vector<std::size_t> widths;
  for (const auto& row : table) {
    widths.resize(std::max(widths.size(), row.size()));
    for (std::size_t column = 0; column < row.size(); ++column) {
      widths[column] = std::max(widths[column], widthOf(row[column]));
    }
  }
  std::string text;
  for (const auto& row : table) {
    std::string line = "  ";
    for (std::size_t column = 0; column < row.size(); ++column) {
      const std::string space(widths[column] - widthOf(row[column]), ' ');
      line += column == 0 ? "" : "  ";
      line += column < texts ? row[column] + space : space + row[column];
    }
    line.erase(line.find_last_not_of(' ') + 1);
    text += line + "\n";
  }
  return text;
}

std::vector<double> varianceShares(const std::vector<statistics::Contribution>& budget) {
  std::vector<double> shares;
  double total = 0.0;
  for (const statistics::Contribution& line : budget) {
    shares.push_back(line.standard_uncertainty * line.standard_uncertainty);
    total += shares.back();
  }
  for (double& share : shares) share = total > 0.0 ? share / total : 0.0;
  return shares;
}

std::string sayError(const Error& error, UnitSystem system) {
  const Place& place = error.place;
  std::string sentence = words(error.message, system);
  std::string text = place.file.empty() ? "hingepin" : place.file;
  // Sentences about one log among several begin with its name.
  if (sentence.starts_with(text + ": ")) sentence.erase(0, text.size() + 2);
  if (place.line > 0) text += fmt::format(":{}", place.line);
  if (place.column > 0) text += fmt::format(":{}", place.column);
  if (!place.pointer.empty()) text += ": " + place.pointer;
  return text + ": " + sentence + "\n";
}

std::string sayWeighing(const std::string& log, const Weighing& weighing, UnitSystem system,
                        Charset charset) {
  const int decimals = decimalsOf(weighing.expanded_uncertainty_kg);
  std::string text = fmt::format(
      "{}: {} ± {}  (95.45 %, k = {:.2f})\n", log, shown(weighing.mass_kg, "kg", decimals, system),
      shown(weighing.expanded_uncertainty_kg, "kg", decimals, system), weighing.coverage_factor);
  Table table;
  const std::vector<double> shares = varianceShares(weighing.budget);
  for (std::size_t index = 0; index < shares.size(); ++index) {
    const statistics::Contribution& line = weighing.budget[index];
    std::string bar;
    for (long length = std::lround(shares[index] * 24.0); length > 0; --length) bar += "█";
    bar += std::string(24 - widthOf(bar), ' ');
    table.push_back({words({line.name, {}}, system),
                     shown(line.standard_uncertainty, "kg", decimalsOf(line.standard_uncertainty), system),
                     bar});
  }
  text += layOut(table, charset);
  for (const Message& warning : weighing.warnings) text += "  Note: " + words(warning, system) + "\n";
  return in(text, charset);
}

std::string weighingJson(const std::string& log, const Weighing& weighing, UnitSystem system) {
  const int decimals = std::max(1, decimalsOf(weighing.expanded_uncertainty_kg));
  // The contract has kilograms, whatever is shown to people.
  Json json = {
      {"log", log},
      {"mass", shown(weighing.mass_kg, "kg", decimals, UnitSystem::Metric)},
      {"expanded_uncertainty", shown(weighing.expanded_uncertainty_kg, "kg", decimals, UnitSystem::Metric)},
      {"coverage_factor", std::round(weighing.coverage_factor * 1000.0) / 1000.0},
      {"warnings", Json::array()}};
  for (const Message& warning : weighing.warnings) json["warnings"].push_back(words(warning, system));
  if (weighing.rows_left_out > 0) json["rows_left_out"] = weighing.rows_left_out;
  return jsonLine(json);
}

std::string errorJson(const std::string& log, const Error& error, UnitSystem system) {
  return jsonLine(
      {{"log", log}, {"error", {{"code", error.message.code}, {"message", words(error.message, system)}}}});
}

std::string errorJson(const Error& error, UnitSystem system) {
  return jsonLine({{"error", {{"code", error.message.code}, {"message", words(error.message, system)}}}});
}

Table summaryTable(const Calibration& calibration, UnitSystem system) {
  const calibration::SensorLine& line = calibration.boom_line;
  const calibration::SensorUnit unit = calibration.boom_sensor_unit;
  Table table = {
      {"unit", calibration.unit_id},
      {"attachment", calibration.attachment_id.empty() ? "-" : calibration.attachment_id},
      {"rated payload", shown(calibration.rated_payload_kg, "kg", 0, system)},
      {"weigh window", angle(calibration.window_low_rad) + " to " + angle(calibration.window_high_rad)},
      {"gravity", shown(calibration.gravity_m_per_s2, "m/s2", 5, system)},
      {"boom angle by its sensor",
       fmt::format("{} + {} × (reading − {})", angle(line.angle_rad, 2),
                   slopeOf(line.slope_rad_per_unit, unit), sensorText(line.reading_at, unit))},
      {"standard uncertainty of that",
       fmt::format("{}, slope {}", angle(line.angle_u_rad, 2), slopeOf(line.slope_u_rad_per_unit, unit))}};
  if (calibration.reference_pose_kg_per_deg) {
    table.push_back({"1° of error at the reference pose",
                     fmt::format("changes a load of the rated payload by {}",
                                 shown(std::abs(*calibration.reference_pose_kg_per_deg), "kg", 1, system))});
  }
  return table;
}

Table poseTable(const calibration::Job& job, const calibration::SensorLine* line) {
  Table table = {{"pose", "boom angle", "boom sensor", "bucket sensor"}};
  if (line != nullptr) table[0].insert(table[0].begin() + 2, {"uncertainty", "by the line", "off"});
  for (const calibration::PoseReading& pose : job.poses) {
    table.push_back({std::string(nameIn(calibration::kPoseNames, pose.kind)),
                     pose.boom_angle ? angle(pose.boom_angle->inRadians()) : "-",
                     sensorText(pose.boom_sensor, job.boom_sensor_unit),
                     pose.bucket_sensor ? sensorText(*pose.bucket_sensor, job.bucket_sensor_unit) : "-"});
    if (line == nullptr) continue;
    const double by_line_rad = line->angle(pose.boom_sensor);
    table.back().insert(
        table.back().begin() + 2,
        {pose.boom_angle_u ? angle(pose.boom_angle_u->inRadians(), 2) : "-", angle(by_line_rad),
         pose.boom_angle ? angle(by_line_rad - pose.boom_angle->inRadians(), 2) : "-"});
  }
  return table;
}

Table passTable(const Calibration& calibration, UnitSystem system) {
  Table table = {{"pass", "bucket", "direction", "from", "to", "pace", "oil", "readings", "residual"}};
  for (const calibration::PassSummary& pass : calibration.passes) {
    table.push_back({pass.name, std::string(nameOf(pass.kind)),
                     pass.direction == calibration::Direction::Up ? "up" : "down", angle(pass.low_rad),
                     angle(pass.high_rad),
                     pass.mean_speed_rad_per_s == 0.0
                         ? "held"
                         : shown(pass.mean_speed_rad_per_s / kDegree, "deg/s", 1, system),
                     pass.oil_temperature_K ? shown(*pass.oil_temperature_K - 273.15, "Cel", 0, system) : "-",
                     std::to_string(pass.rows), shown(pass.residual_Pa / 1e5, "bar", 2, system)});
  }
  return table;
}

Table massTable(const Calibration& calibration, UnitSystem system) {
  Table table = {{"known mass", "stated", "predicted", "difference", "doubt of it (k = 2)"}};
  for (const calibration::MassCheck& check : calibration.mass_checks) {
    table.push_back({check.name, shown(check.reference_kg, "kg", 0, system),
                     shown(check.predicted_kg, "kg", 0, system),
                     shown(check.predicted_kg - check.reference_kg, "kg", 0, system),
                     "± " + shown(2.0 * check.difference_u_kg, "kg", 0, system)});
  }
  return table;
}

std::string sayCalibration(const calibration::Job& job, const Calibration& calibration,
                           const session::EmptyLift& empty, UnitSystem system, Charset charset) {
  std::string text = "Calibration\n" + layOut(summaryTable(calibration, system), charset, 2) + "\nPoses\n" +
                     layOut(poseTable(job, &calibration.boom_line), charset) + "\nPasses\n" +
                     layOut(passTable(calibration, system), charset, 3);
  if (!calibration.mass_checks.empty())
    text += "\nKnown masses, beside what was predicted before they were told\n" +
            layOut(massTable(calibration, system), charset);
  text += "\nEmpty passes\n" + plotOf(empty, calibration, system);
  if (!calibration.taken.empty()) text += "\nTaken where the job was silent\n";
  for (const Message& message : calibration.taken) text += "  " + words(message, system) + "\n";
  if (!calibration.warnings.empty()) text += "\nLook at\n";
  for (const Message& message : calibration.warnings) text += "  " + words(message, system) + "\n";
  return in(text, charset);
}

std::string sayLinkage(const calibration::Job& job, const session::LinkageTable& table, UnitSystem system,
                       Charset charset) {
  std::string text = fmt::format("Linkage of {}\n", job.unit.id);
  text += fmt::format("  The lift cylinder lengthens from a boom angle of {} to {}.\n",
                      angle(table.lift_range_rad.low), angle(table.lift_range_rad.high));
  text += fmt::format(
      "  The table covers {} to {}, {}.\n", angle(table.travel_rad.low), angle(table.travel_rad.high),
      table.travel_from_poses ? "between the lowest and the highest pose" : "as far as the linkage allows");
  text +=
      fmt::format("  The load arm is the rise per radian of boom of the {}, bucket racked back.\n",
                  table.payload_center_known ? "payload centre" : "hinge pin (no payload centre is given)");
  text += "\nPoses\n" + layOut(poseTable(job, nullptr), charset);

  Table rows = {{"boom angle", "lift length", "moment arm c'", "c'' per rad", "racked", "dumped", "tilt from",
                 "tilt to", "load arm", "edge height", "heel height"}};
  for (const session::LinkageRow& row : table.rows) {
    const auto tilt = [&](double linkage::Range::* end) {
      return row.tilt_length_m ? optionalLength((*row.tilt_length_m).*end, system) : std::string("-");
    };
    rows.push_back(
        {angle(row.boom_angle_rad), shown(row.lift_cylinder.value, "m", 4, system),
         shown(row.lift_cylinder.first, "m", 4, system), shown(row.lift_cylinder.second, "m", 4, system),
         optionalAngle(row.racked_bucket_rad), optionalAngle(row.dumped_bucket_rad),
         tilt(&linkage::Range::low), tilt(&linkage::Range::high), optionalLength(row.load_arm_m, system),
         optionalLength(row.cutting_edge_height_m, system), optionalLength(row.heel_height_m, system)});
  }
  text +=
      "\nOver the boom angle (racked and dumped: bucket above the horizontal; heights above ground, racked "
      "back)\n" +
      layOut(rows, charset);
  return in(text, charset);
}

}  // namespace hingepin::cli
