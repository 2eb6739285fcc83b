// SPDX-License-Identifier: Apache-2.0
#include "engine/session/surveying.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <map>
#include <nlohmann/json.hpp>
#include <set>
#include <string_view>
#include <utility>

#include "engine/base/contains.h"
#include "engine/procedures/evaluate.h"
#include "engine/session/proof_readings.h"
#include "engine/survey/answer.h"
#include "engine/units/ucum.h"

namespace hingepin::session {
namespace {

using procedures::Check;
using procedures::CheckKind;
using procedures::EventType;
using procedures::Step;
using procedures::StepKind;
using procedures::Try;
using procedures::Verdict;
using survey::Answer;
using survey::Kind;
using survey::Target;
using Json = nlohmann::ordered_json;

/// For 95.45 %.
constexpr double kCoverage = 2.0;
/// Who has left it out as often can't measure it.
constexpr int kAskedAgain = 2;

Json targetJson(const Target& target) {
  Json json;
  for (const auto& [key, word] : survey::wordsOf(target)) json[std::string(key)] = word;
  return json;
}

std::string textOfLimit(const OpenJob& job, const std::optional<procedures::Limit>& limit) {
  if (!limit) return "";
  const Expected<ReadQuantity> value = procedures::valueOf(job.procedure, job.state, *limit);
  return value ? writeQuantity(value->value_si, value->unit.ucum) : "";
}

/// Whether two targets are the same apart from the pose. A distance has no direction.
bool isSame(Target a, Target b) {
  a.pose = b.pose = 0;
  if (a == b) return true;
  if (a.kind != Kind::Distance) return false;
  std::swap(b.from, b.to);
  return a == b;
}

/// The step of a check that measures a target; nullptr where there is none, or where it was left out before.
const Step* stepFor(const OpenJob& job, const Check& check, const Target& target) {
  for (const std::string& id : check.of) {
    const Step* const step = procedures::findStep(job.procedure.steps, id);
    if (step == nullptr || !step->survey || !isSame(*step->survey, target)) continue;
    const auto left_out = std::ranges::count_if(job.state.tries, [&](const Try& each) {
      return each.event.about == id && each.event.answer == "skipped";
    });
    if (survey::needsPose(target) || left_out < kAskedAgain) return step;
  }
  return nullptr;
}

/// "/measurements/3/value" -> 3
std::optional<std::size_t> measurementOf(std::string_view pointer) {
  constexpr std::string_view kList = "/measurements/";
  if (!pointer.starts_with(kList)) return std::nullopt;
  pointer.remove_prefix(kList.size());
  std::size_t index = 0;
  if (std::from_chars(pointer.data(), pointer.data() + pointer.size(), index).ec != std::errc())
    return std::nullopt;
  return index;
}

/// A check that fails by one measurement, which no longer counts.
Verdict setAside(const OpenJob& job, const JobSurvey& measured, std::size_t measurement, std::string reason) {
  const std::size_t index = measured.tries[measurement];
  return {.reason = std::move(reason), .step = job.state.tries[index].event.about, .set_aside = index};
}

/// A check that lacks something which only another stand of the machine can give.
Verdict lacking(std::string reason) { return {.reason = std::move(reason), .undecided = true, .more = 1}; }

std::string wholeKilograms(double mass_kg) { return fmt::format("{:.0f} kg", mass_kg); }

Expected<Answer> answerOf(const SurveyRead& read) {
  return survey::tellSurvey(read.survey, read.unit, read.attachment, read.tape_u_m, read.inclinometer_u_rad);
}

}  // namespace

std::optional<JobSurvey> surveyOf(const OpenJob& job, const Step& check) {
  JobSurvey measured;
  Json poses = Json::array();
  Json measurements = Json::array();
  std::optional<Json> stand;  // where the machine stands; kept once something is measured there
  for (std::size_t index = 0; index < job.state.tries.size(); ++index) {
    const Try& each = job.state.tries[index];
    const Step* const step = procedures::findStep(job.procedure.steps, each.event.about);
    if (step == nullptr) continue;
    if (step->kind == StepKind::Pose && each.event.answer == "done") {
      stand = Json{{"pose", fmt::format("{}-{}", step->id, poses.size() + 1)}};
      if (step->bucket == procedures::BucketPlace::RackedBack) (*stand)["tilt_cylinder"] = "extended";
      if (step->bucket == procedures::BucketPlace::Dumped) (*stand)["tilt_cylinder"] = "retracted";
    }
    const bool counts = each.counts && each.event.type == EventType::Reading;
    if (!counts || !step->survey || !contains(check.check->of, step->id)) continue;
    Json measurement = targetJson(*step->survey);
    if (survey::needsPose(*step->survey)) {
      if (!stand) continue;
      if (poses.empty() || poses.back() != *stand) poses.push_back(*stand);
      measurement["pose"] = stand->at("pose");
    }
    measurement["value"] = each.event.value;
    measurements.push_back(std::move(measurement));
    measured.tries.push_back(index);
  }
  if (measurements.empty()) return std::nullopt;
  Json unit = Json::parse(job.unit.block);
  unit.erase("linkage");
  unit.erase("linkage_u");
  Json file = {{"format", "hingepin-survey/1"}, {"unit", std::move(unit)}};
  if (const AttachmentProfile* const attachment = attachmentOf(job))
    file["attachment"] = Json::parse(attachment->block);
  file["tape_u"] = textOfLimit(job, check.check->tape_u);
  file["inclinometer_u"] = textOfLimit(job, check.check->inclinometer_u);
  file["poses"] = std::move(poses);
  file["measurements"] = std::move(measurements);
  measured.text = file.dump(1) + "\n";
  return measured;
}

Expected<Verdict> surveyed(const OpenJob& job, const Step& check, const Edge& edge) {
  const Expected<ReadQuantity> most = procedures::valueOf(job.procedure, job.state, *check.check->at_most);
  if (!most) return std::unexpected(most.error());
  const std::optional<JobSurvey> measured = surveyOf(job, check);
  if (!measured) return lacking("survey-empty");
  const Expected<SurveyRead> read = edge.read_survey(measured->text);
  if (!read) {
    // A number that was taken though it was doubted may be more than a survey takes.
    if (const auto wrong = measurementOf(read.error().place.pointer))
      return setAside(job, *measured, *wrong, read.error().message.code);
    return lacking(read.error().message.code);
  }
  const Expected<Answer> answer = answerOf(*read);
  if (!answer) {
    const auto worst = measurementOf(answer.error().place.pointer);
    if (worst && answer.error().message.code == "survey-not-found")
      return setAside(job, *measured, *worst, answer.error().message.code);
    return lacking(answer.error().message.code);
  }
  if (answer->estimate.disagrees)
    return setAside(job, *measured, *answer->estimate.disagrees, "survey-measurement-disagrees");
  Verdict verdict;
  const Step* helps = nullptr;
  for (const survey::Gain& gain : answer->next) {
    helps = stepFor(job, *check.check, gain.target);
    if (helps != nullptr) break;
  }
  if (helps != nullptr) verdict.step = helps->id;
  verdict.undecided = helps == nullptr || survey::needsPose(*helps->survey);
  verdict.more = 1;
  if (!answer->mass_u) {
    verdict.reason = answer->unusable->message.code;
    return verdict;
  }
  const double rated_kg = read->unit.rated_payload.inKilograms();
  verdict.result = wholeKilograms(kCoverage * *answer->mass_u * rated_kg);
  verdict.limit = wholeKilograms(most->value_si * rated_kg);
  verdict.passed = kCoverage * *answer->mass_u <= most->value_si;
  if (!verdict.passed) verdict.reason = "survey-too-doubtful";
  return verdict;
}

procedures::Judge judgeOf(const OpenJob& job, const Edge& edge) {
  return [&job, &edge](const Step& check) {
    return check.check->kind == CheckKind::Survey ? surveyed(job, check, edge) : judged(job, check);
  };
}

std::vector<Message> saySurvey(const std::string& result, const std::string& reason, const std::string& limit,
                               const std::string& step) {
  const auto massOf = [](const std::string& quantity) {
    return Amount{readSi(quantity, Dimension::Mass).value_or(0.0), "kg", 0};
  };
  std::vector<Message> said;
  if (!result.empty())
    said.push_back({"check-survey-doubt", {{"doubt", massOf(result)}, {"limit", massOf(limit)}}});
  const bool set_aside = !reason.empty() && result.empty() && !step.empty() &&
                         (reason == "survey-measurement-disagrees" || reason == "survey-not-found");
  if (set_aside) {
    said.push_back({"check-survey-set-aside", {{"step", step}}});
  } else {
    if (!reason.empty()) said.push_back({reason, {}});
    if (!step.empty()) said.push_back({"check-survey-helps-most", {{"step", step}}});
  }
  return said;
}

std::optional<FoundLinkage> foundLinkage(const OpenJob& job, const std::string& profile, const Edge& edge) {
  if (job.state.phase != procedures::Phase::Done) return std::nullopt;
  const Step* check = nullptr;
  for (const Step& step : job.procedure.steps) {
    const bool surveys = step.check && step.check->kind == CheckKind::Survey;
    if (surveys && procedures::hasStep(job.state.start.variant, step)) check = &step;
  }
  if (check == nullptr) return std::nullopt;
  const std::optional<JobSurvey> measured = surveyOf(job, *check);
  if (!measured) return std::nullopt;
  const Expected<SurveyRead> read = edge.read_survey(measured->text);
  if (!read) return std::nullopt;
  const Expected<Answer> answer = answerOf(*read);
  if (!answer || !answer->mass_u || answer->estimate.disagrees) return std::nullopt;
  Json with = Json::parse(profile);
  with["unit"] = Json::parse(
      edge.unit_with_linkage(with.at("unit").dump(), answer->estimate.geometry, answer->estimate.doubt));
  return FoundLinkage{
      .survey = measured->text,
      .profile = with.dump(2) + "\n",
      .expanded_uncertainty_kg = kCoverage * *answer->mass_u * read->unit.rated_payload.inKilograms()};
}

}  // namespace hingepin::session
