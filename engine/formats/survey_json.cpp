// SPDX-License-Identifier: Apache-2.0
#include "engine/formats/survey_json.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>
#include <utility>
#include <vector>

#include "engine/formats/job_json.h"
#include "engine/formats/quantity_walk.h"

namespace hingepin::formats {
namespace {

using survey::Kind;
using survey::Measurement;
using survey::Target;

constexpr Limits kSurveyedLength{Dimension::Length, -20, 20, "m"};
constexpr Limits kSurveyedAngle{Dimension::Angle, -360, 360, "deg"};
constexpr Limits kLengthU{Dimension::Length, 0.1, 1000, "mm", 1};
constexpr Limits kSurveyedAngleU{Dimension::Angle, 0.001, 45, "deg", 3};
constexpr Limits kPinDiameter{Dimension::Length, 5, 500, "mm"};

// The search takes as long as the cube of the poses; nobody measures so many in a day.
constexpr std::size_t kMostPoses = 50;
constexpr std::size_t kMostMeasurements = 500;

/// Which edges of the two pins a tape went between.
enum class Edges { Like, Inner, Outer };
constexpr std::array kEdgeNames = {Named{"like", Edges::Like}, Named{"inner", Edges::Inner},
                                   Named{"outer", Edges::Outer}};
constexpr std::array kTiltEndNames = {Named{"retracted", survey::TiltEnd::Retracted},
                                      Named{"extended", survey::TiltEnd::Extended}};

class SurveyReader : public QuantityWalk {
 public:
  SurveyFile read(const JsonDocument& document);

 private:
  survey::Pose pose(const JsonNode& node);
  Measurement measurement(const JsonNode& node);
  /// What a tape from edge to edge has more than one from centre to centre.
  double edgesBeyondCentres(const JsonNode& node);
  void atMost(std::size_t most, const JsonNode& list);

  SurveyFile file_;
};

survey::Pose SurveyReader::pose(const JsonNode& node) {
  object(node, {"pose", "tilt_cylinder"});
  survey::Pose pose;
  pose.name = name(node, "pose");
  pose.tilt_end =
      optional(node, "tilt_cylinder", [this](const JsonNode& end) { return named(end, kTiltEndNames); });
  if (std::ranges::find(file_.survey.poses, pose.name, &survey::Pose::name) != file_.survey.poses.end())
    keep(node.error("survey-pose-twice", {{"pose", excerpt(pose.name)}}));
  return pose;
}

double SurveyReader::edgesBeyondCentres(const JsonNode& node) {
  const std::optional<Edges> edges =
      optional(node, "edges", [this](const JsonNode& each) { return named(each, kEdgeNames); });
  const std::optional<JsonNode> diameters = node.find("pin_diameters");
  if (!edges) {
    if (diameters) keep(diameters->error("survey-diameters-without-edges"));
    return 0.0;
  }
  if (!diameters) {
    // Like edges of equal pins are as far apart as their centres.
    if (*edges != Edges::Like) keep(node.error("survey-diameters-missing"));
    return 0.0;
  }
  const std::array<double, 2> diameters_m = pair(*diameters, kPinDiameter);
  const double first_m = 0.5 * diameters_m[0];
  const double second_m = 0.5 * diameters_m[1];
  switch (*edges) {
    case Edges::Like:
      return first_m - second_m;
    case Edges::Inner:
      return -(first_m + second_m);
    case Edges::Outer:
      return first_m + second_m;
  }
  return 0.0;
}

void SurveyReader::atMost(std::size_t most, const JsonNode& list) {
  if (elements(list).size() > most)
    keep(list.error("list-too-long", {{"most", Amount{static_cast<double>(most), "1"}}}));
}

Measurement SurveyReader::measurement(const JsonNode& node) {
  Measurement measurement;
  Target& target = measurement.target;
  if (!object(node, {"kind", "from", "to", "pin", "number", "pose", "edges", "pin_diameters", "value", "u"}))
    return measurement;
  target = survey::readTarget(*this, node);
  if (isRefused()) return measurement;
  std::vector<std::string_view> known = survey::keysOf(target.kind);
  known.insert(known.end(), {"value", "u"});
  if (target.kind == Kind::Distance) known.insert(known.end(), {"edges", "pin_diameters"});
  if (target.kind != Kind::DataSheet && target.kind != Kind::GroundAngle &&
      target.kind != Kind::BoomPlateOffset)
    known.emplace_back("pose");
  object(node, known);

  if (const std::optional<JsonNode> pose = node.find("pose")) {
    const std::string wanted = taken(pose->string());
    const auto& poses = file_.survey.poses;
    const auto found = std::ranges::find(poses, wanted, &survey::Pose::name);
    if (found == poses.end())
      keep(pose->error("survey-pose-unknown", {{"pose", excerpt(wanted)}}));
    else
      target.pose = static_cast<std::size_t>(found - poses.begin());
  } else if (survey::needsPose(target)) {
    keep(node.error("survey-pose-missing"));
  }

  const bool angle = survey::isAngle(target);
  measurement.value = required(node, "value", [&](const JsonNode& value) {
    return quantityIn(value, angle ? kSurveyedAngle : kSurveyedLength);
  });
  if (target.kind == Kind::Distance) {
    measurement.value -= edgesBeyondCentres(node);
    if (!(measurement.value > 0.0) && !isRefused()) keep(node.error("survey-distance-not-positive"));
  }
  measurement.u = maybeSi(node, "u", angle ? kSurveyedAngleU : kLengthU)
                      .value_or(angle ? file_.inclinometer_u_rad : file_.tape_u_m);
  return measurement;
}

SurveyFile SurveyReader::read(const JsonDocument& document) {
  const JsonNode root(document);
  object(root,
         {"format", "unit", "attachment", "tape_u", "inclinometer_u", "ground_u", "poses", "measurements"});
  format(root, "hingepin-survey/1");
  file_.unit = required(root, "unit", [&](const JsonNode& node) {
    if (node.value().kind == JsonKind::Object)
      for (const std::string_view key : {"linkage", "linkage_u"})
        if (const std::optional<JsonNode> given = node.find(key)) keep(given->error("survey-has-linkage"));
    return isRefused() ? calibration::LoaderUnit{} : taken(readUnit(document, node));
  });
  file_.attachment =
      optional(root, "attachment", [this](const JsonNode& node) { return taken(readAttachment(node)); });
  file_.tape_u_m = maybeSi(root, "tape_u", kLengthU).value_or(file_.tape_u_m);
  file_.inclinometer_u_rad =
      maybeSi(root, "inclinometer_u", kSurveyedAngleU).value_or(file_.inclinometer_u_rad);
  file_.survey.ground_u_rad = maybeSi(root, "ground_u", kSurveyedAngleU).value_or(file_.survey.ground_u_rad);
  optional(root, "poses", [this](const JsonNode& node) {
    atMost(kMostPoses, node);
    for (const JsonNode& each : elements(node)) file_.survey.poses.push_back(pose(each));
    return 0;
  });
  required(root, "measurements", [this](const JsonNode& node) {
    atMost(kMostMeasurements, node);
    for (const JsonNode& each : elements(node)) file_.survey.measurements.push_back(measurement(each));
    return 0;
  });
  return std::move(file_);
}

/// With as many digits as keep a doubt that hangs together together.
std::string quantityText(const linkage::LinkageNumber& number, double value) {
  return number.kind == linkage::LinkageNumber::Radians ? fmt::format("{:.6f} deg", value / kDegree)
                                                        : fmt::format("{:.7f} m", value);
}

}  // namespace

Expected<SurveyFile> readSurvey(std::string text, const std::string& file) {
  Expected<JsonDocument> document = readJson(std::move(text), file);
  if (!document) return std::unexpected(document.error());
  SurveyReader reader;
  SurveyFile read = reader.read(*document);
  if (std::optional<Error> error = reader.error()) return std::unexpected(*std::move(error));
  read.document = *std::move(document);
  return read;
}

std::string unitWithLinkage(const std::string& unit_json, const linkage::ZBarGeometry& geometry,
                            const linkage::LinkageDoubt& doubt) {
  using Json = nlohmann::ordered_json;
  Json unit = Json::parse(unit_json);
  Json& linkage = unit["linkage"] = Json::object();
  for (const linkage::LinkageNumber& number : linkage::linkageNumbers()) {
    const std::string name = number.name;
    const std::string value = quantityText(number, number.get(geometry));
    const std::size_t slash = name.find('/');
    if (slash == std::string::npos)
      linkage[name] = value;
    else
      linkage[name.substr(0, slash)].push_back(value);
  }
  Json& causes = unit["linkage_u"] = Json::array();
  for (const linkage::PerNumber& cause : doubt) {
    Json& changes = causes.emplace_back(Json::object());
    for (std::size_t i = 0; i < cause.size(); ++i)
      if (cause[i] != 0.0)
        changes[linkage::linkageNumbers()[i].name] = quantityText(linkage::linkageNumbers()[i], cause[i]);
  }
  return unit.dump(2);
}

}  // namespace hingepin::formats
