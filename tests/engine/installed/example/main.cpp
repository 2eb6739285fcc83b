// SPDX-License-Identifier: Apache-2.0
// Calibrates a job's loader and weighs one lift with it: main JOB.json LIFT.csv
#include <cstdio>
#include <expected>

#include "engine/calibration/calibration.h"
#include "engine/folder/files.h"
#include "engine/formats/job_json.h"

int main(int, char** arguments) {
  using namespace hingepin;
  const auto weighing = [&]() -> Expected<calibration::Weighing> {
    const auto text = folder::readFile(arguments[1]);
    if (!text) return std::unexpected(text.error());
    const auto job = formats::readJob(*text, arguments[1], folder::openFile);
    if (!job) return std::unexpected(job.error());
    const auto calibration = calibration::calibrate(job->job);
    if (!calibration) return std::unexpected(calibration.error());
    const auto source = folder::openFile(arguments[2]);
    if (!source) return std::unexpected(source.error());
    const auto lift = formats::readLift(*source, arguments[2]);
    if (!lift) return std::unexpected(lift.error());
    return calibration::weigh(*calibration, *lift);
  }();
  if (!weighing) return std::fprintf(stderr, "%s\n", weighing.error().message.code.c_str()), 1;
  std::printf("%.0f kg +- %.0f kg\n", weighing->mass_kg, weighing->expanded_uncertainty_kg);
}
