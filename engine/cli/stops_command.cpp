// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <utility>

#include "engine/calibration/stops.h"
#include "engine/cli/commands.h"
#include "engine/cli/words.h"
#include "engine/folder/files.h"
#include "engine/formats/stops_json.h"
#include "engine/units/degree.h"

namespace hingepin::cli {
namespace {

using calibration::Stop;
using calibration::StopAnswer;
using calibration::StopPose;
using calibration::StopsAnswer;
using formats::StopsFile;
using Json = nlohmann::ordered_json;

/// A height in mm or, of the level stop, an angle in degrees.
Amount amountOf(Stop stop, double value) {
  return stop == Stop::Level ? Amount{value / kDegree, "deg", 1} : Amount{value * 1000, "mm", 0};
}

std::string quantity(double value, std::string_view ucum, int decimals) {
  // No "-0.0".
  const double scale = std::pow(10.0, decimals);
  return fmt::format("{:.{}f} {}", std::round(value * scale) / scale + 0.0, decimals, ucum);
}
std::string valueJson(Stop stop, double value) {
  return stop == Stop::Level ? quantity(value / kDegree, "deg", 3) : quantity(value * 1000, "mm", 1);
}
Json sensorJson(const std::optional<double>& reading, calibration::SensorUnit unit) {
  if (!reading) return nullptr;
  switch (unit) {
    case calibration::SensorUnit::Volt:
      return quantity(*reading, "V", 4);
    case calibration::SensorUnit::Count:
      return quantity(*reading, "1", 1);
    case calibration::SensorUnit::Radian:
      return quantity(*reading / kDegree, "deg", 3);
  }
  return nullptr;
}
Json heightJson(const std::optional<double>& height_m) {
  return height_m ? Json(quantity(*height_m * 1000, "mm", 1)) : Json(nullptr);
}

Json poseJson(const StopsFile& file, const StopPose& pose) {
  const auto& line = file.asked.boom_line;
  const auto& ends = file.asked.bucket_ends;
  return {
      {"boom_angle", quantity(pose.boom_angle_rad / kDegree, "deg", 3)},
      {"bucket_angle", quantity(pose.bucket_angle_rad / kDegree, "deg", 3)},
      {"tilt_cylinder_length", quantity(pose.tilt_length_m, "m", 5)},
      {"boom_sensor", sensorJson(pose.boom_sensor, line ? line->unit : calibration::SensorUnit::Volt)},
      {"bucket_sensor", sensorJson(pose.bucket_sensor, ends ? ends->unit : calibration::SensorUnit::Volt)},
      {"edge_height", heightJson(pose.edge_height_m)},
      {"heel_height", heightJson(pose.heel_height_m)}};
}

Json proofJson(Stop stop, const calibration::StopProof& proof) {
  return {{"count", proof.cycles},
          {"offset", valueJson(stop, proof.offset)},
          {"scatter", proof.scatter ? Json(valueJson(stop, *proof.scatter)) : Json(nullptr)},
          {"worst", valueJson(stop, proof.worst)},
          {"overshoot", valueJson(stop, proof.overshoot)},
          {"verdict", proof.holds ? Json(*proof.holds ? "holds" : "does-not-hold") : Json(nullptr)}};
}

Json answerJson(const StopsFile& file, const StopsAnswer& answer, UnitSystem system) {
  Json json = {{"unit", file.unit.empty() ? Json(nullptr) : Json(file.unit)},
               {"attachment", file.attachment.empty() ? Json(nullptr) : Json(file.attachment)},
               {"verdict", answer.holds ? Json(*answer.holds ? "holds" : "does-not-hold") : Json(nullptr)},
               {"wanted", Json::object()},
               {"stored", Json::object()},
               {"cycles", Json::object()},
               {"taken", Json::array()},
               {"warnings", Json::array()}};
  for (const StopAnswer& each : answer.stops) {
    const std::string name(nameIn(calibration::kStopNames, each.stop));
    json["wanted"][name] =
        each.set ? poseJson(file, *each.set) : Json{{"reason", words(*each.not_set, system)}};
    if (each.stored) {
      Json& stored = json["stored"][name] = poseJson(file, each.stored->pose);
      stored["heel_leads"] = each.stored->heel_leads ? Json(*each.stored->heel_leads) : Json(nullptr);
      stored["heel_meets_ground_first"] = each.stored->heel_contact.has_value();
      if (const auto& contact = each.stored->heel_contact) {
        stored["heel_contact"] = {{"boom_angle", quantity(contact->boom_angle_rad / kDegree, "deg", 3)},
                                  {"edge_height", heightJson(contact->edge_height_m)}};
      }
    }
    if (each.proof) json["cycles"][name] = proofJson(each.stop, *each.proof);
  }
  for (const Message& message : answer.taken) json["taken"].push_back(words(message, system));
  for (const Message& message : answer.warnings) json["warnings"].push_back(words(message, system));
  return json;
}

std::string verdictText(const std::optional<bool>& holds) {
  return !holds ? "not judged: no limit" : *holds ? "holds" : "DOES NOT HOLD";
}

std::string answerText(const StopsFile& file, const StopsAnswer& answer, UnitSystem system) {
  const auto height = [&](const std::optional<double>& metres) {
    return metres ? shown(*metres * 1000, "mm", 0, system) : std::string("-");
  };
  const auto value = [&](Stop stop, double number) {
    const Amount amount = amountOf(stop, number);
    return shown(amount.value, amount.ucum.c_str(), amount.decimals, system);
  };
  const auto row = [&](const StopAnswer& each, const StopPose& pose) {
    const auto& line = file.asked.boom_line;
    const auto& ends = file.asked.bucket_ends;
    return std::vector<std::string>{std::string(nameIn(calibration::kStopNames, each.stop)),
                                    value(each.stop, each.wanted),
                                    angle(pose.boom_angle_rad, 2),
                                    angle(pose.bucket_angle_rad),
                                    shown(pose.tilt_length_m * 1000, "mm", 0, system),
                                    pose.boom_sensor ? sensorText(*pose.boom_sensor, line->unit) : "-",
                                    pose.bucket_sensor ? sensorText(*pose.bucket_sensor, ends->unit) : "-",
                                    height(pose.edge_height_m),
                                    height(pose.heel_height_m)};
  };
  const std::vector<std::string> head = {"stop",          "wanted",        "boom angle",
                                         "bucket angle",  "tilt cylinder", "boom sensor",
                                         "bucket sensor", "edge height",   "heel height"};
  Table set = {head}, stored = {head};
  stored[0].emplace_back("heel first");
  Table proved = {
      {"stop", "wanted", "cycles", "offset", "scatter", "worst", "past the stop", "limit", "verdict"}};
  std::vector<Message> not_set;
  for (const StopAnswer& each : answer.stops) {
    if (each.set) set.push_back(row(each, *each.set));
    if (each.not_set && not_set.empty()) not_set.push_back(*each.not_set);
    if (each.stored) {
      stored.push_back(row(each, each.stored->pose));
      stored.back().emplace_back(!each.stored->heel_leads ? "-" : *each.stored->heel_leads ? "yes" : "no");
    }
    if (const auto& proof = each.proof) {
      const auto& limit = file.asked.limits[each.stop];
      proved.push_back({std::string(nameIn(calibration::kStopNames, each.stop)),
                        value(each.stop, each.wanted), std::to_string(proof->cycles),
                        value(each.stop, proof->offset),
                        proof->scatter ? value(each.stop, *proof->scatter) : "-",
                        value(each.stop, proof->worst), value(each.stop, proof->overshoot),
                        limit ? value(each.stop, *limit) : "-", verdictText(proof->holds)});
    }
  }
  const Charset charset = terminalCharset();
  std::string text = "Automatic stops";
  if (!file.unit.empty()) text += " of " + file.unit;
  if (!file.attachment.empty()) text += " with " + file.attachment;
  text += "\n";
  if (set.size() > 1) text += "\nWhat to set\n" + layOut(set, charset);
  for (const Message& reason : not_set) text += "\n  " + words(reason, system) + "\n";
  if (stored.size() > 1)
    text += fmt::format("\nWhere the stops that were set with {} put it\n", file.asked.taught_with->id) +
            layOut(stored, charset);
  if (proved.size() > 1) text += "\nWhere it halted\n" + layOut(proved, charset);
  if (!answer.taken.empty()) text += "\nTaken where the file was silent\n";
  for (const Message& message : answer.taken) text += "  " + words(message, system) + "\n";
  text += "\nLook at\n";
  for (const Message& message : answer.warnings) text += "  " + words(message, system) + "\n";
  text += "  " + words({"stops-caution", {}}, system) + "\n";
  return in(text, charset);
}

}  // namespace

int stopsCommand(const std::string& path, bool json, UnitSystem system) {
  const auto refuse = [&](const Error& error) {
    const int status = complain(error, system);
    if (!json) return status;
    const Json line = {{"error", {{"code", error.message.code}, {"message", words(error.message, system)}}}};
    const int printed = print(line.dump() + "\n", system);
    return std::max(status, printed);
  };
  Expected<std::string> text = folder::readFile(path);
  if (!text) return refuse(text.error());
  const Expected<StopsFile> file = formats::readStops(*std::move(text), path);
  if (!file) return refuse(file.error());
  const Expected<StopsAnswer> answer = calibration::tellStops(file->asked);
  if (!answer) {
    Error error = answer.error();
    error.place = file->document.place(error.place.pointer);
    return refuse(error);
  }
  return print(
      json ? answerJson(*file, *answer, system).dump(-1, ' ', false, Json::error_handler_t::replace) + "\n"
           : answerText(*file, *answer, system),
      system);
}

}  // namespace hingepin::cli
