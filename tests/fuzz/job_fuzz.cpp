// SPDX-License-Identifier: Apache-2.0
#include <cmath>

#include "engine/formats/job_json.h"
#include "tests/engine/formats/samples.h"
#include "tests/fuzz/json_mutator.h"
#include "tests/fuzz/require.h"

namespace {

using namespace hingepin;
using fuzz::require;

void requireSound(const calibration::Lift& lift) {
  require(!lift.name.empty() && lift.pointer.starts_with('/'), "a lift has a name and a place");
  require(lift.mass.has_value() == (lift.kind == calibration::LiftKind::TestMass), "a test mass has a mass");
  require(!lift.mass || lift.mass->inKilograms() > 0, "which is more than nothing");
  for (const calibration::LiftRow& row : lift.readings.rows) {
    require(std::isfinite(row.boom_sensor) && std::isfinite(row.head_pressure_Pa), "readings are finite");
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  const formats::Opener open = [](const std::string& path) -> Expected<formats::ByteSource> {
    if (path.ends_with(".csv")) return formats::sourceOf(formats::kSampleLog);
    return fail(ErrorKind::NotFound, "file-not-found", {{"path", path}}, {.file = path});
  };
  const Expected<formats::JobFile> read =
      formats::readJob(std::string(fuzz::textOf(bytes, size)), "yard/job.json", open);
  if (!read) {
    fuzz::requireSound(read.error());
    require(!read.error().place.file.empty() && read.error().place.line > 0, "an error says where");
    return 0;
  }
  const calibration::Job& job = read->job;
  require(!job.unit.id.empty() && !job.poses.empty() && !job.lifts.empty(), "a job is whole");
  require(job.unit.rated_payload.inKilograms() > 0, "a rated payload is more than nothing");
  require(job.unit.lift_cylinders.rod < job.unit.lift_cylinders.bore, "a rod is thinner than its bore");
  require(job.unit.lift_cylinders.count >= 1 && job.unit.lift_cylinders.count <= 8,
          "cylinders can be counted");
  for (const calibration::PoseReading& pose : job.poses) {
    require(std::isfinite(pose.boom_sensor), "poses have readings");
    require(!pose.boom_angle_u || pose.boom_angle_u->inRadians() > 0, "no angle is known exactly");
  }
  for (const calibration::Lift& lift : job.lifts) {
    requireSound(lift);
    require(read->document.place(lift.pointer).line > 0, "what a lift points at is in the file");
  }
  for (const calibration::LoadGroup& group : job.loads) {
    require(!group.lifts.empty(), "a sum has lifts");
    for (const calibration::Lift& lift : group.lifts) requireSound(lift);
  }
  return 0;
}

HINGEPIN_MUTATE_JSON(false)
