// SPDX-License-Identifier: Apache-2.0
#include "engine/cli/run.h"

#include <algorithm>
#include <clocale>
#include <csignal>
#include <string>
#include <vector>

#include "engine/cli/commands.h"
#include "engine/cli/groups.h"
#include "engine/cli/versions.h"

namespace hingepin::cli {

int run(int argument_count, char** arguments) {
  // A reader that goes away is told by the write, not by a signal.
  std::signal(SIGPIPE, SIG_IGN);
  // What characters the terminal has; numbers keep their decimal point.
  std::setlocale(LC_CTYPE, "");

  CLI::App app{
      "Takes a wheel loader's payload scale through its calibration: procedures, jobs and records; and "
      "calibrates and weighs from readings and logs.",
      "hingepin"};
  bool version = false;
  bool verbose = false;
  app.add_flag("--version", version, "Show the program's version");
  app.add_flag("--verbose", verbose, "With --version: also what it was built with");
  app.require_subcommand(0, 1);
  app.fallthrough();
  app.footer(
      "Exit status: 0 done; 1 the files are well formed but can't support a result; 2 the command or a file "
      "is wrong.");
  std::string units = "metric";
  app.add_option("--units", units, "Units that results are shown in: metric (the default) or us")
      ->check(CLI::IsMember({"metric", "us"}).description(""))
      ->type_name("SYSTEM");

  CalibrateOptions calibrate;
  CLI::App* const calibrate_app =
      app.add_subcommand("calibrate", "Calibrate a loader from a job and its lift logs");
  calibrate_app->add_option("JOB.json", calibrate.job, "The job: unit, attachment, poses, lifts")->required();
  calibrate_app->add_option("--out", calibrate.out, "Where the calibration is written")
      ->required()
      ->type_name("FILE");
  calibrate_app->add_option("--report", calibrate.report, "Where a page to read is written (HTML)")
      ->type_name("FILE");

  WeighOptions weigh;
  CLI::App* const weigh_app = app.add_subcommand("weigh", "Weigh lifts with a calibration");
  weigh_app->add_option("CALIBRATION.json", weigh.calibration, "What calibrate wrote")->required();
  weigh_app->add_option("LIFT.csv", weigh.logs, "Lift logs, or readings typed from a monitor (JSON)")
      ->required();
  weigh_app->add_flag("--json", weigh.json, "Print one JSON object a log, in kilograms");

  ProveOptions prove;
  CLI::App* const prove_app =
      app.add_subcommand("prove", "Judge a scale against known masses and truck scales");
  prove_app->add_option("PROOF.json", prove.proof, "The proof: tolerance, masses, trucks")->required();
  prove_app->add_flag("--json", prove.json, "Print one JSON object, in kilograms");

  SimulateOptions simulate;
  CLI::App* const simulate_app =
      app.add_subcommand("simulate", "Make an invented loader's job and lift logs, for practice");
  CLI::Option* const demo = simulate_app->add_flag(
      "--demo", simulate.demo, "The practice unit L-27, which is also taken if nothing else is asked for");
  simulate_app->add_option("--out", simulate.out, "The folder for the files")
      ->required()
      ->type_name("FOLDER");
  CLI::Option* const seed =
      simulate_app->add_option("--seed", simulate.seed, "Number of the practice unit's job; 1 if not given")
          ->check(CLI::NonNegativeNumber.description(""))
          ->type_name("NUMBER");
  simulate_app
      ->add_option("--machine-seed", simulate.machine_seed,
                   "A machine drawn at random by this number, 8 to 25 t, instead of the practice unit")
      ->check(CLI::NonNegativeNumber.description(""))
      ->type_name("NUMBER")
      ->excludes(demo)
      ->excludes(seed);
  simulate_app
      ->add_option("--misbehaviour", simulate.misbehaviours,
                   "Something that goes wrong in every lift, one of those below; may be repeated")
      ->type_name("NAME")
      ->allow_extra_args(false);
  simulate_app->footer([&] { return "Misbehaviours:\n" + misbehaviourList(UnitSystem::Metric); });

  std::string linkage_job;
  CLI::App* const linkage_app =
      app.add_subcommand("linkage", "Show poses, moment arms and ranges of a job's linkage");
  linkage_app->add_option("JOB.json", linkage_job, "The job")->required();

  SurveyOptions survey;
  CLI::App* const survey_app = app.add_subcommand(
      "survey",
      "Estimate a linkage from what a tape and an inclinometer measured, and what that costs in a mass");
  survey_app->add_option("SURVEY.json", survey.survey, "The survey: unit, poses, measurements")->required();
  survey_app->add_flag("--json", survey.json, "Print one JSON object, in millimetres, degrees and kilograms");
  CLI::Option* const survey_out =
      survey_app->add_option("--out", survey.out, "Write a job with the linkage and its doubt in its unit")
          ->type_name("JOB.json");
  survey_app
      ->add_option("--job", survey.job,
                   "The job that the linkage is put into; else one is begun from the survey's unit")
      ->type_name("JOB.json")
      ->needs(survey_out);
  survey_app->footer(
      "Measure with the boom on its support or the bucket on the ground, engine off, key out, pressure\n"
      "relieved. What a survey may hold stands in engine/formats/README.md.");

  std::string stops_file;
  bool stops_json = false;
  CLI::App* const stops_app =
      app.add_subcommand("stops", "Tell what to set for the automatic stops, and whether the cycles hold");
  stops_app->add_option("STOPS.json", stops_file, "The stops: linkage, attachment, what is wanted, cycles")
      ->required();
  stops_app->add_flag("--json", stops_json, "Print one JSON object, in millimetres and degrees");

  Common common;
  Action action;
  app.add_option("--store", common.store,
                 "The store folder of procedures, jobs and records; made if it isn't there")
      ->envname("HINGEPIN_STORE")
      ->type_name("FOLDER");
  app.add_option("--passphrase-file", common.passphrase_file,
                 "Where the passphrase of a key stands; else the environment's HINGEPIN_PASSPHRASE is taken")
      ->type_name("FILE");
  addProcedureCommands(app, common, action);
  addYardCommands(app, common, action);
  addJobCommands(app, common, action);
  addRecordCommands(app, common, action);
  addCertificateCommand(app, common, action);
  addSyncCommands(app, common, action);

  std::vector<std::string> help_about;
  CLI::App* const help_app = app.add_subcommand("help", "Explain the program or one command");
  help_app->add_option("COMMAND", help_about, "The command, one or two words");

  UnitSystem& system = common.system;
  const auto complainOfCommand = [&](const std::string& detail) {
    return complain({ErrorKind::InvalidInput, {"command-line", {{"detail", detail}}}, {}}, system);
  };
  try {
    app.parse(argument_count, arguments);
  } catch (const CLI::CallForHelp&) {
    const CLI::App* chosen = &app;
    std::string name;
    while (!chosen->get_subcommands().empty()) {
      name += (name.empty() ? "" : " ") + chosen->get_name();
      chosen = chosen->get_subcommands().front();
    }
    return print(name.empty() ? app.help() : chosen->help(name), system);
  } catch (const CLI::Error& error) {
    const std::string detail = error.what();
    return complainOfCommand(detail.ends_with('.') ? detail : detail + ".");
  }

  if (version) return print(versions(verbose), system);
  if (verbose) return complainOfCommand("--verbose goes with --version.");
  system = units == "us" ? UnitSystem::UsCustomary : UnitSystem::Metric;
  if (calibrate_app->parsed()) return calibrateCommand(calibrate, system);
  if (weigh_app->parsed()) return weighCommand(weigh, system);
  if (prove_app->parsed()) return proveCommand(prove, system);
  if (simulate_app->parsed()) return simulateCommand(simulate, system);
  if (linkage_app->parsed()) return linkageCommand(linkage_job, system);
  if (survey_app->parsed()) return surveyCommand(survey, system);
  if (stops_app->parsed()) return stopsCommand(stops_file, stops_json, system);
  if (action) return action();
  if (!help_app->parsed()) return complainOfCommand("A command is expected.");
  if (help_about.empty()) {
    return print(app.get_formatter()->make_help(&app, app.get_name(), CLI::AppFormatMode::Normal), system);
  }
  const CLI::App* about = &app;
  std::string name;
  for (const std::string& word : help_about) {
    name += (name.empty() ? "" : " ") + about->get_name();
    const auto subcommands = about->get_subcommands(nullptr);
    const auto found = std::ranges::find(subcommands, word, &CLI::App::get_name);
    if (found == subcommands.end()) return complainOfCommand("There is no command " + word + ".");
    about = *found;
  }
  return print(about->help(name), system);
}

}  // namespace hingepin::cli
