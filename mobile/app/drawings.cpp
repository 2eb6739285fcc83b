// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawings.h"

#include <ranges>

#include "engine/formats/job_json.h"
#include "engine/units/degree.h"

namespace hingepin::mobile {
namespace {

QVariantList pointOf(const session::DrawnPoint& point) { return {point[0], point[1]}; }

QVariantList pointsOf(const auto& points) {
  QVariantList list;
  for (const session::DrawnPoint& point : points) list.append(QVariant(pointOf(point)));
  return list;
}

/// The pose that the machine was brought into last, or nullptr.
const procedures::Step* poseOf(const session::OpenJob& job) {
  for (const procedures::Try& made : job.state.tries | std::views::reverse) {
    const procedures::Step* const step = procedures::findStep(job.procedure, made.event.about);
    if (step != nullptr && step->kind == procedures::StepKind::Pose && made.event.answer == "done")
      return step;
  }
  return nullptr;
}

}  // namespace

std::optional<calibration::LoaderUnit> unitOf(const session::OpenJob& job) {
  Expected<JsonDocument> document = readJson(job.unit.block, "unit");
  if (!document) return std::nullopt;
  Expected<calibration::LoaderUnit> unit = formats::readUnit(*document, JsonNode(*document));
  if (!unit) return std::nullopt;
  return *std::move(unit);
}

std::optional<calibration::Attachment> fittedOf(const session::OpenJob& job) {
  if (!job.attachment) return std::nullopt;
  const Expected<JsonDocument> document = readJson(job.attachment->block, "attachment");
  if (!document) return std::nullopt;
  Expected<calibration::Attachment> attachment = formats::readAttachment(JsonNode(*document));
  if (!attachment) return std::nullopt;
  return *std::move(attachment);
}

QVariantMap machineMap(const session::MachineDrawing& drawing) {
  return {{QStringLiteral("known"), drawing.known},
          {QStringLiteral("boomPivot"), QVariant(pointOf(drawing.boom_pivot))},
          {QStringLiteral("hingePin"), QVariant(pointOf(drawing.hinge_pin))},
          {QStringLiteral("liftFramePin"), QVariant(pointOf(drawing.lift_frame_pin))},
          {QStringLiteral("liftBoomPin"), QVariant(pointOf(drawing.lift_boom_pin))},
          {QStringLiteral("tiltFramePin"), QVariant(pointOf(drawing.tilt_frame_pin))},
          {QStringLiteral("bellcrankPivot"), QVariant(pointOf(drawing.bellcrank_pivot))},
          {QStringLiteral("bellcrankTiltPin"), QVariant(pointOf(drawing.bellcrank_tilt_pin))},
          {QStringLiteral("bellcrankLinkPin"), QVariant(pointOf(drawing.bellcrank_link_pin))},
          {QStringLiteral("bucketLinkPin"), QVariant(pointOf(drawing.bucket_link_pin))},
          {QStringLiteral("bucket"), QVariant(pointsOf(drawing.bucket))},
          {QStringLiteral("windowArc"), QVariant(pointsOf(drawing.window_arc))}};
}

QVariantMap measureMap(const session::OpenJob& job, const procedures::Step& step) {
  if (!step.survey) return {};
  const auto unit = unitOf(job);
  if (!unit) return {};
  const procedures::Step* const pose = poseOf(job);
  const bool racked = pose != nullptr && pose->bucket == procedures::BucketPlace::RackedBack;
  const auto attachment = fittedOf(job);
  // Where on its way a raised boom stands nobody knows yet.
  constexpr double kRaised_rad = 12.0 * kDegree;
  constexpr double kDown_rad = -90.0 * kDegree;  // held within the boom's travel
  const double boom_rad = racked ? kRaised_rad : kDown_rad;
  const double share = racked ? 1.0 : session::levelShare(*unit, boom_rad);
  const auto drawing = session::drawMachine(*unit, attachment ? &*attachment : nullptr, boom_rad, share);
  if (!drawing) return {};
  const auto measure = session::drawMeasure(*drawing, *step.survey);
  if (!measure) return {};
  QVariantList helpers;
  for (const auto& line : measure->helpers) helpers.append(QVariant(pointsOf(line)));
  return {{QStringLiteral("machine"), machineMap(*drawing)},
          {QStringLiteral("from"), QVariant(pointOf(measure->from))},
          {QStringLiteral("to"), QVariant(pointOf(measure->to))},
          {QStringLiteral("helpers"), helpers},
          {QStringLiteral("slope"), survey::isAngle(*step.survey)}};
}

}  // namespace hingepin::mobile
