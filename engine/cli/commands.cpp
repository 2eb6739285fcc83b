// SPDX-License-Identifier: Apache-2.0
#include "engine/cli/commands.h"

#include <langinfo.h>

#include <algorithm>
#include <filesystem>
#include <string_view>

#include "engine/calibration/calibration.h"
#include "engine/cli/output.h"
#include "engine/cli/report.h"
#include "engine/cli/words.h"
#include "engine/folder/files.h"
#include "engine/formats/calibration_json.h"
#include "engine/formats/job_json.h"
#include "engine/formats/proof_json.h"
#include "engine/session/catalogue.h"
#include "engine/session/linkage_table.h"
#include "engine/simulator/scenario.h"

namespace hingepin::cli {
namespace {

using namespace folder;

constexpr std::string_view kMishapPrefix = "mishap-";
/// Of a job's random numbers, those that its readings take: the scenario takes 1 and 2.
constexpr std::uint64_t kReadings = 3;

Expected<formats::JobFile> openJob(const std::string& path) {
  Expected<std::string> text = readFile(path);
  if (!text) return std::unexpected(text.error());
  return formats::readJob(*std::move(text), path, openFile);
}

/// An error by JSON Pointer gets the job's file, line and column.
Error placed(Error error, const formats::JobFile& file) {
  if (error.place.file.empty()) error.place = file.document.place(error.place.pointer);
  return error;
}

Expected<calibration::Weighing> weighLog(const calibration::Calibration& calibration,
                                         const std::string& log) {
  const Expected<formats::ByteSource> source = openFile(log);
  if (!source) return std::unexpected(source.error());
  const Expected<calibration::LiftLog> lift = formats::readLift(*source, log);
  if (!lift) return std::unexpected(lift.error());
  Expected<calibration::Weighing> weighing = calibration::weigh(calibration, *lift);
  if (!weighing && weighing.error().place.file.empty()) weighing.error().place.file = log;
  return weighing;
}

}  // namespace

Charset terminalCharset() {
  return std::string_view(::nl_langinfo(CODESET)) == "UTF-8" ? Charset::Utf8 : Charset::Ascii;
}

int complain(const Error& error, UnitSystem system) {
  writeDiagnostic(sayError(error, system));
  return error.kind == ErrorKind::Insufficient || error.kind == ErrorKind::RankDeficient ? kInsufficient
                                                                                         : kWrong;
}

int print(const std::string& text, UnitSystem system) {
  std::string reason;
  switch (writeOutput(text, reason)) {
    case OutputState::Open:
      return kDone;
    case OutputState::ReaderGone:
      return kWrong;
    case OutputState::Failed:
      break;
  }
  return complain({ErrorKind::IoFailed,
                   {"file-write-failed", {{"path", std::string("standard output")}, {"reason", reason}}},
                   {}},
                  system);
}

int calibrateCommand(const CalibrateOptions& options, UnitSystem system) {
  const Expected<formats::JobFile> file = openJob(options.job);
  if (!file) return complain(file.error(), system);
  std::vector<std::string> outputs = {options.out};
  if (!options.report.empty()) outputs.push_back(options.report);
  std::vector<std::string> inputs = {options.job};
  const auto addLog = [&](const calibration::Lift& lift) {
    if (!lift.readings.typed_points)
      inputs.push_back((std::filesystem::path(options.job).parent_path() / lift.name).string());
  };
  std::ranges::for_each(file->job.lifts, addLog);
  for (const calibration::LoadGroup& group : file->job.loads) std::ranges::for_each(group.lifts, addLog);
  for (const std::string& output : outputs) {
    if (std::ranges::any_of(inputs, [&](const std::string& input) { return isSameFile(input, output); })) {
      return complain({ErrorKind::InvalidInput, {"output-is-input", {{"path", output}}}, {.file = output}},
                      system);
    }
  }

  const Expected<calibration::Calibration> calibration = calibration::calibrate(file->job);
  if (!calibration) return complain(placed(calibration.error(), *file), system);
  const Expected<session::EmptyLift> empty = session::emptyLift(file->job, *calibration, 101);
  if (!empty) return complain(placed(empty.error(), *file), system);
  if (const auto written = writeFile(options.out, formats::writeCalibration(*calibration)); !written) {
    return complain(written.error(), system);
  }
  if (!options.report.empty()) {
    const Expected<session::LiftCurves> curves = session::liftCurves(file->job, *calibration, 101);
    if (!curves) return complain(placed(curves.error(), *file), system);
    const std::string page =
        calibrationHtml(file->job, *calibration, *curves, weighedLifts(file->job, *calibration), system);
    if (const auto written = writeFile(options.report, page); !written)
      return complain(written.error(), system);
  }
  return print(sayCalibration(file->job, *calibration, *empty, system, terminalCharset()), system);
}

int weighCommand(const WeighOptions& options, UnitSystem system) {
  Expected<std::string> text = readFile(options.calibration);
  if (!text) return complain(text.error(), system);
  const Expected<calibration::Calibration> calibration =
      formats::readCalibration(*std::move(text), options.calibration);
  if (!calibration) return complain(calibration.error(), system);

  int worst = kDone;
  for (const std::string& log : options.logs) {
    const Expected<calibration::Weighing> weighing = weighLog(*calibration, log);
    int status = kDone;
    std::string line;
    if (weighing) {
      line = options.json ? weighingJson(log, *weighing, system)
                          : sayWeighing(log, *weighing, system, terminalCharset());
    } else {
      status = complain(weighing.error(), system);
      if (options.json) line = errorJson(log, weighing.error(), system);
    }
    worst = std::max(worst, status);
    if (line.empty()) continue;
    if (const int printed = print(line, system); printed != kDone) return printed;
  }
  return worst;
}

int proveCommand(const ProveOptions& options, UnitSystem system) {
  Expected<std::string> text = readFile(options.proof);
  if (!text) return complain(text.error(), system);
  const Expected<formats::ProofFile> file = formats::readProof(*std::move(text), options.proof);
  const Expected<proof::ProofResult> result =
      file ? proof::prove(file->proof) : std::unexpected(file.error());
  if (!result) {
    Error error = result.error();
    if (error.place.file.empty()) error.place = file->document.place(error.place.pointer);
    const int status = complain(error, system);
    if (options.json) {
      if (const int printed = print(errorJson(error, system), system); printed != kDone) return printed;
    }
    return status;
  }
  return print(options.json ? proofJson(file->proof, *result, system)
                            : sayProof(file->proof, *result, system, terminalCharset()),
               system);
}

std::string misbehaviourList(UnitSystem system) {
  std::vector<std::vector<std::string>> table;
  for (const simulator::MishapKind& kind : simulator::mishapKinds()) {
    table.push_back({std::string(kind.code.substr(kMishapPrefix.size())),
                     session::say(session::englishCatalogue(), {std::string(kind.code), {}}, system)});
  }
  return layOut(table, terminalCharset(), 2);
}

int simulateCommand(const SimulateOptions& options, UnitSystem system) {
  const std::uint64_t number = options.machine_seed.value_or(options.seed);
  simulator::Scenario scenario =
      options.machine_seed ? simulator::drawnScenario(number) : simulator::demoScenario(number);
  for (const std::string& name : options.misbehaviours) {
    const auto kinds = simulator::mishapKinds();
    const auto kind =
        std::ranges::find(kinds, std::string(kMishapPrefix) + name, &simulator::MishapKind::code);
    if (kind == kinds.end()) {
      std::string known;
      for (const simulator::MishapKind& other : kinds) {
        known += (known.empty() ? "" : ", ") + std::string(other.code.substr(kMishapPrefix.size()));
      }
      return complain(
          {ErrorKind::InvalidInput, {"misbehaviour-unknown", {{"name", name}, {"known", known}}}, {}},
          system);
    }
    for (simulator::JobLift& lift : scenario.taught)
      lift.lift.happenings.push_back({kind->mishap, kind->usual});
    for (simulator::JobLift& lift : scenario.unknown)
      lift.lift.happenings.push_back({kind->mishap, kind->usual});
  }
  const Expected<simulator::Files> files = simulator::filesOf(scenario, Random(number).fork(kReadings));
  if (!files) return complain(files.error(), system);
  if (const auto made = makeFolder(options.out); !made) return complain(made.error(), system);
  std::string listed;
  for (const auto& [name, content] : *files) {
    const std::string path = (std::filesystem::path(options.out) / name).string();
    if (const auto written = writeFile(path, content); !written) return complain(written.error(), system);
    listed += path + "\n";
  }
  return print(listed, system);
}

int linkageCommand(const std::string& job, UnitSystem system) {
  const Expected<formats::JobFile> file = openJob(job);
  if (!file) return complain(file.error(), system);
  const Expected<session::LinkageTable> table = session::tabulateLinkage(file->job, Angle::fromDegrees(5));
  if (!table) return complain(placed(table.error(), *file), system);
  return print(sayLinkage(file->job, *table, system, terminalCharset()), system);
}

}  // namespace hingepin::cli
