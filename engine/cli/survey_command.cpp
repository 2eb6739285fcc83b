// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <utility>

#include "engine/cli/commands.h"
#include "engine/cli/words.h"
#include "engine/folder/files.h"
#include "engine/formats/job_json.h"
#include "engine/formats/survey_json.h"
#include "engine/survey/answer.h"
#include "engine/units/degree.h"

namespace hingepin::cli {
namespace {

using formats::SurveyFile;
using linkage::LinkageNumber;
using survey::Answer;
using survey::Gain;
using survey::Kind;
using survey::Target;
using Json = nlohmann::ordered_json;

constexpr std::size_t kMostSuggestions = 5;
constexpr std::size_t kWorstChecks = 3;

std::string surveyedText(bool is_angle, double value, UnitSystem system) {
  return is_angle ? angle(value) : shown(value * 1000.0, "mm", 0, system);
}
std::string surveyedJson(bool is_angle, double value) {
  return is_angle ? fmt::format("{:.4f} deg", value / kDegree) : fmt::format("{:.2f} mm", value * 1000.0);
}

std::string pinName(survey::Pin pin) {
  std::string name(nameIn(survey::kPinNames, pin));
  std::ranges::replace(name, '-', ' ');
  return name;
}

/// "lift_frame_pin/1" as a person reads it.
std::string numberName(std::size_t number) {
  std::string name = linkage::linkageNumbers()[number].name;
  std::ranges::replace(name, '_', ' ');
  const bool on_frame = name.starts_with("lift frame") || name.starts_with("tilt frame");
  if (name.ends_with("/0")) name.replace(name.size() - 2, 2, on_frame ? ", forward" : ", along the boom");
  if (name.ends_with("/1")) name.replace(name.size() - 2, 2, on_frame ? ", up" : ", square to the boom");
  return name;
}

/// What is measured, and where the machine stands for it.
std::string targetText(const SurveyFile& file, const Target& target) {
  const std::string between = pinName(target.from) + " to " + pinName(target.to);
  std::string text;
  switch (target.kind) {
    case Kind::Distance:
      text = "distance " + between;
      break;
    case Kind::Horizontal:
      text = "by plumb line, " + between;
      break;
    case Kind::Vertical:
      text = "by level, height from " + between;
      break;
    case Kind::Height:
      text = "height of " + pinName(target.from) + " above ground";
      break;
    case Kind::Inclination:
      text = "angle of the line " + between;
      break;
    case Kind::BoomPlateAngle:
      text = "angle of the boom's plate";
      break;
    case Kind::BoomPlateOffset:
      text = "boom's plate to " + pinName(target.from);
      break;
    case Kind::BucketFloorAngle:
      text = "angle of the bucket's floor";
      break;
    case Kind::GroundAngle:
      text = "angle of the ground";
      break;
    case Kind::DataSheet:
      text = "data sheet, " + numberName(target.number);
      break;
  }
  if (target.pose) text += ", pose " + file.survey.poses[*target.pose].name;
  return text;
}

std::string gainText(const SurveyFile& file, const Gain& gain) {
  std::string text = targetText(file, gain.target);
  if (gain.boom_angle_rad)
    text += fmt::format(", in a new pose: boom near {}, bucket racked back, with the boom's angle",
                        angle(*gain.boom_angle_rad, 0));
  return text;
}

Json targetJson(const SurveyFile& file, const Target& target) {
  Json json;
  for (const auto& [key, word] : survey::wordsOf(target)) json[std::string(key)] = word;
  if (target.pose) json["pose"] = file.survey.poses[*target.pose].name;
  return json;
}

double massOf(const SurveyFile& file, double share) {
  return 2.0 * share * file.unit.rated_payload.inKilograms();
}

Json surveyJson(const SurveyFile& file, const Answer& answer, UnitSystem system) {
  const linkage::PerNumber u = linkage::standardUncertainties(answer.estimate.doubt);
  Json json = {{"unit", file.unit.id}, {"numbers", Json::object()}};
  for (std::size_t i = 0; i < u.size(); ++i) {
    const LinkageNumber& number = linkage::linkageNumbers()[i];
    const bool is_angle = number.kind == LinkageNumber::Radians;
    json["numbers"][number.name] = {{"value", surveyedJson(is_angle, number.get(answer.estimate.geometry))},
                                    {"standard_uncertainty", surveyedJson(is_angle, u[i])},
                                    {"told", std::round(1000.0 * answer.estimate.told[i]) / 1000.0}};
  }
  json["usable"] = !answer.unusable;
  if (answer.unusable) json["reason"] = words(answer.unusable->message, system);
  json["mass_expanded_uncertainty"] =
      answer.mass_u ? Json(fmt::format("{:.1f} kg", massOf(file, *answer.mass_u))) : Json(nullptr);
  json["measurements"] = Json::array();
  for (std::size_t k = 0; k < answer.estimate.checks.size(); ++k) {
    const survey::Measurement& measurement = file.survey.measurements[k];
    const survey::Check& check = answer.estimate.checks[k];
    const bool is_angle = survey::isAngle(measurement.target);
    Json each = targetJson(file, measurement.target);
    each["value"] = surveyedJson(is_angle, measurement.value);
    each["others"] = check.redundancy > 0.0 ? Json(surveyedJson(is_angle, check.others)) : Json(nullptr);
    each["standardised"] = std::round(100.0 * check.standardised) / 100.0;
    each["redundancy"] = std::round(1000.0 * check.redundancy) / 1000.0;
    json["measurements"].push_back(each);
  }
  json["disagrees"] = answer.estimate.disagrees ? Json(*answer.estimate.disagrees) : Json(nullptr);
  json["next"] = Json::array();
  for (const Gain& gain : answer.next) {
    Json each = targetJson(file, gain.target);
    if (gain.boom_angle_rad) each["new_pose_boom_angle"] = surveyedJson(true, *gain.boom_angle_rad);
    each["u"] = surveyedJson(survey::isAngle(gain.target), gain.u);
    if (answer.mass_u)
      each["mass_expanded_uncertainty"] = fmt::format("{:.1f} kg", massOf(file, gain.effect_u));
    json["next"].push_back(each);
  }
  json["taken"] = Json::array();
  for (const Message& message : answer.taken) json["taken"].push_back(words(message, system));
  json["warnings"] = Json::array();
  for (const Message& message : answer.warnings) json["warnings"].push_back(words(message, system));
  return json;
}

std::string surveyText(const SurveyFile& file, const Answer& answer, UnitSystem system) {
  const survey::Estimate& estimate = answer.estimate;
  const Charset charset = terminalCharset();
  std::string text =
      fmt::format("Linkage of {} from {} measurements\n", file.unit.id, file.survey.measurements.size());
  const linkage::PerNumber u = linkage::standardUncertainties(estimate.doubt);
  Table numbers = {{"number", "estimate", "in doubt by", ""}};
  for (std::size_t i = 0; i < u.size(); ++i) {
    const LinkageNumber& number = linkage::linkageNumbers()[i];
    const bool is_angle = number.kind == LinkageNumber::Radians;
    numbers.push_back({numberName(i), surveyedText(is_angle, number.get(estimate.geometry), system),
                       "± " + surveyedText(is_angle, 2.0 * u[i], system),
                       estimate.told[i] < 0.5 ? "hardly measured" : ""});
  }
  text += "\nThe linkage, its doubts for 95 %\n" + layOut(numbers, charset);

  std::vector<std::size_t> order;
  for (std::size_t k = 0; k < estimate.checks.size(); ++k)
    if (estimate.checks[k].redundancy > 0.01) order.push_back(k);
  std::ranges::sort(order, std::greater{},
                    [&](std::size_t k) { return std::abs(estimate.checks[k].standardised); });
  if (order.size() > kWorstChecks) order.resize(kWorstChecks);
  Table checks = {{"measurement", "measured", "by all others", "times its doubt"}};
  for (const std::size_t k : order) {
    const survey::Measurement& each = file.survey.measurements[k];
    checks.push_back({targetText(file, each.target),
                      surveyedText(survey::isAngle(each.target), each.value, system),
                      surveyedText(survey::isAngle(each.target), estimate.checks[k].others, system),
                      fmt::format("{:.1f}", std::abs(estimate.checks[k].standardised))});
  }
  if (order.empty()) {
    text += "\nNo measurement can be checked by the others: measure more than is needed.\n";
  } else {
    text += estimate.disagrees ? "\nThe first of these DISAGREES with all others\n"
                               : "\nAll measurements agree; what fits least\n";
    text += layOut(checks, charset);
  }

  const auto mass = [&](double share) { return shown(massOf(file, share), "kg", 0, system); };
  text += "\nWhat it costs\n";
  if (answer.mass_u) {
    text += fmt::format(
        "  From the linkage alone, a rated payload of {} is in doubt by ± {} ({:.2f} %) for 95 %.\n",
        shown(file.unit.rated_payload.inKilograms(), "kg", 0, system), mass(*answer.mass_u),
        200.0 * *answer.mass_u);
  } else {
    text += "  " + words({"survey-unusable", {}}, system) + "\n  " + words(answer.unusable->message, system) +
            "\n";
    text += "  Told least so far: " + numberName(answer.least_told) + ".\n";
  }
  Table next = {{"measurement", answer.mass_u ? "then in doubt by" : ""}};
  for (const Gain& gain : answer.next) {
    if (next.size() > kMostSuggestions) break;
    next.push_back({gainText(file, gain), answer.mass_u ? "± " + mass(gain.effect_u) : ""});
  }
  if (next.size() > 1) text += "\nWhat would help most, one at a time\n" + layOut(next, charset);
  if (!answer.taken.empty()) text += "\nTaken where the file was silent\n";
  for (const Message& message : answer.taken) text += "  " + words(message, system) + "\n";
  text += "\nLook at\n";
  for (const Message& message : answer.warnings) text += "  " + words(message, system) + "\n";
  text += "  " + words({"survey-caution", {}}, system) + "\n";
  return in(text, charset);
}

/// The job with the linkage put into its unit; without a job, one that begins with the survey's unit.
std::string jobText(const SurveyFile& file, const Answer& answer, const std::optional<std::string>& job) {
  Json root = Json::parse(job ? *job : file.document.text);
  const Json unit = Json::parse(
      formats::unitWithLinkage(root.at("unit").dump(), answer.estimate.geometry, answer.estimate.doubt));
  if (!job) {
    Json begun = {{"format", "hingepin-job/1"}, {"unit", unit}};
    if (root.contains("attachment")) begun["attachment"] = root["attachment"];
    begun["poses"] = Json::array();
    begun["lifts"] = Json::array();
    return begun.dump(2) + "\n";
  }
  root["unit"] = unit;
  return root.dump(2) + "\n";
}

}  // namespace

int surveyCommand(const SurveyOptions& options, UnitSystem system) {
  const auto refuse = [&](const Error& error) {
    const int status = complain(error, system);
    if (!options.json) return status;
    const Json line = {{"error", {{"code", error.message.code}, {"message", words(error.message, system)}}}};
    const int printed = print(line.dump() + "\n", system);
    return std::max(status, printed);
  };
  if (!options.out.empty()) {
    for (const std::string& input : {options.survey, options.job})
      if (!input.empty() && folder::isSameFile(options.out, input))
        return refuse(
            {ErrorKind::InvalidInput, {"output-is-input", {{"path", options.out}}}, {.file = options.out}});
  }
  Expected<std::string> text = folder::readFile(options.survey);
  if (!text) return refuse(text.error());
  const Expected<SurveyFile> file = formats::readSurvey(*std::move(text), options.survey);
  if (!file) return refuse(file.error());
  std::optional<std::string> job;
  if (!options.job.empty()) {
    Expected<std::string> read = folder::readFile(options.job);
    if (!read) return refuse(read.error());
    if (const auto checked = formats::readUnfinishedJob(*read, options.job, folder::openFile); !checked)
      return refuse(checked.error());
    job = *std::move(read);
  }
  const Expected<Answer> answer = survey::tellSurvey(file->survey, file->unit, file->attachment,
                                                     file->tape_u_m, file->inclinometer_u_rad);
  if (!answer) {
    Error error = answer.error();
    error.place = file->document.place(error.place.pointer);
    return refuse(error);
  }
  int status = print(
      options.json
          ? surveyJson(*file, *answer, system).dump(-1, ' ', false, Json::error_handler_t::replace) + "\n"
          : surveyText(*file, *answer, system),
      system);
  if (answer->unusable) return std::max<int>(status, kInsufficient);
  if (!options.out.empty()) {
    if (const auto written = folder::writeFile(options.out, jobText(*file, *answer, job)); !written)
      status = std::max(status, complain(written.error(), system));
  }
  return status;
}

}  // namespace hingepin::cli
