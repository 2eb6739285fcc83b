// SPDX-License-Identifier: Apache-2.0
// The trial: machines drawn at random are calibrated from their own files and weigh loads whose masses are
// known. How far off is it, and do the intervals hold the truth as often as they say?
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <atomic>
#include <cmath>
#include <cstdint>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <limits>
#include <map>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <thread>
#include <vector>

#include "engine/base/random.h"
#include "engine/calibration/calibration.h"
#include "engine/formats/calibration_json.h"
#include "engine/formats/job_json.h"
#include "engine/formats/survey_json.h"
#include "engine/simulator/scenario.h"
#include "engine/survey/answer.h"
#include "engine/units/degree.h"
#include "tests/benchmarks/plain_world.h"
#include "tests/engine/survey/survey_text.h"

namespace hingepin {
namespace {

using simulator::Files;
using simulator::JobLift;
using simulator::Scenario;

constexpr int kResamples = 2000;
constexpr double kKnownCentre_u_m = 0.01;

struct Group {
  simulator::Teaching teaching;
  const char* name;
};
constexpr std::array kGroups = {
    Group{simulator::Teaching::RisingOverLinkage, "linkage, rising empty passes only"},
    Group{simulator::Teaching::BothWaysOverLinkage, "linkage with a lowering pass"},
    Group{simulator::Teaching::TestMass, "test mass without linkage"},
    Group{simulator::Teaching::TestMassOverLinkage, "linkage and test mass"}};

// --- What the machines are spared ---

/// A cause of error, and how a scenario looks without it.
struct Cause {
  const char* name;
  const char* means;
  void (*spare)(Scenario&);
};

template <class Change>
void changeLifts(Scenario& s, Change&& change) {
  for (JobLift& lift : s.taught) change(lift);
  for (JobLift& lift : s.unknown) change(lift);
}

/// Angles and friction are scaled so that what stays keeps its size.
constexpr std::array kCauses = {
    Cause{"centres", "heaps and test masses lie elsewhere than stated",
          [](Scenario& s) {
            changeLifts(s, [&](JobLift& lift) {
              if (!lift.lift.load) return;
              lift.lift.load->along_m = s.machine.heap_along_m;
              lift.lift.load->across_m = s.machine.heap_across_m;
            });
            // Who knows them says so: else the job would be taken to allow for the usual scatter.
            s.parts.payload_center_u_m = kKnownCentre_u_m;
          }},
    Cause{"pins", "pins are bored elsewhere than drawn",
          [](Scenario& s) {
            s.machine.as_built = s.machine.drawing;
            s.machine.tilt_length_m = s.machine.drawing.tilt_cylinder_extended.inMetres();
          }},
    Cause{"load-friction", "friction takes another share than usual",
          [](Scenario& s) {
            simulator::Friction& f = s.machine.friction;
            const double to_usual =
                simulator::MachineRanges{}.friction_mean / std::max(s.machine.load_friction_share, 1e-6);
            f.seal_N_per_Pa *= to_usual;
            f.pin_coefficient *= to_usual;
          }},
    Cause{"seal-preload", "friction that no load adds to",
          [](Scenario& s) { s.machine.friction.seal_preload_N = 0.0; }},
    Cause{"pressure-span", "the pressure sensors' gains",
          [](Scenario& s) { s.machine.head_sensor.span_error = s.machine.rod_sensor.span_error = 0.0; }},
    Cause{"pressure-shape", "their non-linearity",
          [](Scenario& s) {
            for (auto* sensor : {&s.machine.head_sensor, &s.machine.rod_sensor})
              sensor->bow = sensor->s_shape = 0.0;
          }},
    Cause{"pressure-zero", "their zero, and its drift with temperature and time",
          [](Scenario& s) {
            for (auto* sensor : {&s.machine.head_sensor, &s.machine.rod_sensor})
              sensor->zero_Pa = sensor->zero_Pa_per_K = sensor->drift_Pa_per_s = 0.0;
          }},
    Cause{"pressure-noise", "their noise",
          [](Scenario& s) { s.machine.head_sensor.noise_sd_Pa = s.machine.rod_sensor.noise_sd_Pa = 0.0; }},
    Cause{"angle-ripple", "the angle sensors' non-linearity",
          [](Scenario& s) {
            for (auto* sensor : {&s.machine.boom_sensor, &s.machine.bucket_sensor})
              sensor->first_rad = sensor->second_rad = 0.0;
          }},
    Cause{"poses", "what is known of the angles at the poses",
          [](Scenario& s) { s.parts.pose_u_deg = {0.05, 0.05, 0.05}; }},
    Cause{"tyres", "the machine stands on tyres that give",
          [](Scenario& s) {
            s.machine.frame.tyre_stiffness_N_m_per_rad = std::numeric_limits<double>::infinity();
          }},
    Cause{"slope", "ground that is not quite level",
          [](Scenario& s) { changeLifts(s, [](JobLift& lift) { lift.lift.slope_rad = 0.0; }); }},
    Cause{"temperature", "the oil's temperature is not that of the first pass",
          [](Scenario& s) {
            const double taught_Cel = s.taught.front().lift.oil_Cel;
            changeLifts(s, [&](JobLift& lift) { lift.lift.oil_Cel = taught_Cel; });
          }},
    Cause{"oil", "the oil is not quite that of its grade",
          [](Scenario& s) { s.machine.oil = simulator::mineralOil(s.machine.oil_grade); }},
    Cause{"orifices", "losses that follow the square of the flow",
          [](Scenario& s) {
            simulator::LiftHydraulics& h = s.machine.hydraulics;
            h.head_line_orifice = h.rod_line_orifice = 0.0;
          }},
    Cause{"lever", "the lever is not held still",
          [](Scenario& s) { changeLifts(s, [](JobLift& lift) { lift.lift.plan.lever_wobble = 0.0; }); }},
    Cause{"logger", "jitter, wrong stamps, missing cells and rows, spikes",
          [](Scenario& s) {
            changeLifts(s, [](JobLift& lift) {
              simulator::Logging& log = lift.lift.logging;
              log.jitter_s = log.stamp_error_s = log.dropped_share = log.missing_cell_share =
                  log.spike_share = 0.0;
            });
          }},
    Cause{"columns", "rod pressure or oil temperature is not logged",
          [](Scenario& s) {
            changeLifts(s, [](JobLift& lift) {
              lift.lift.logging.rod_pressure = lift.lift.logging.oil_temperature = true;
            });
          }},
    Cause{"gravity", "gravity is not stated", [](Scenario& s) { s.parts.gravity = true; }},
    Cause{"partial", "lifts that do not cross the whole window",
          [](Scenario& s) {
            const simulator::Plan& whole = s.taught.front().lift.plan;
            for (JobLift& lift : s.unknown) {
              lift.lift.plan.from_rad = whole.from_rad;
              lift.lift.plan.moves[0].to_rad = whole.moves[0].to_rad;
            }
          }},
};

const Cause* causeOf(const std::string& name) {
  const auto* found = std::ranges::find(kCauses, name, [](const Cause& c) { return std::string(c.name); });
  return found == kCauses.end() ? nullptr : found;
}

// --- What the engine makes of it ---

struct Weighed {
  double mass_kg;
  double expanded_kg;  // 95.45 %
  std::vector<statistics::Contribution> budget;
};

/// The files through the public calls, as a program would: the job with its logs, then each load; the
/// calibration goes through its own file as well. An entry is an error where the engine refuses; all of them
/// where it refuses the job.
std::vector<Expected<Weighed>> weighAll(const Files& files, const std::vector<std::string>& loads) {
  const formats::Opener open = [&](const std::string& path) -> Expected<formats::ByteSource> {
    const auto file = files.find(path);
    if (file == files.end()) return fail(ErrorKind::NotFound, "file-not-found", {{"path", path}});
    return formats::sourceOf(file->second);
  };
  const auto learn = [&]() -> Expected<calibration::Calibration> {
    const auto job = formats::readJob(files.at("job.json"), "job.json", open);
    if (!job) return std::unexpected(job.error());
    const auto calibration = calibration::calibrate(job->job);
    if (!calibration) return std::unexpected(calibration.error());
    return formats::readCalibration(formats::writeCalibration(*calibration), "calibration.json");
  };
  const auto calibration = learn();
  std::vector<Expected<Weighed>> results;
  for (const std::string& load : loads) {
    const auto weigh = [&]() -> Expected<Weighed> {
      if (!calibration) return std::unexpected(calibration.error());
      const auto log = formats::readLift(formats::sourceOf(files.at(load)), load);
      if (!log) return std::unexpected(log.error());
      const auto weighing = calibration::weigh(*calibration, *log);
      if (!weighing) return std::unexpected(weighing.error());
      return Weighed{weighing->mass_kg, weighing->expanded_uncertainty_kg, weighing->budget};
    };
    results.push_back(weigh());
  }
  return results;
}

// --- A linkage that was surveyed ---

/// How well a machine's linkage is measured.
struct Surveying {
  double tape_u_m = 0.005;
  double inclinometer_u_rad = 0.3 * kDegree;
  bool brief = false;       ///< the short survey instead of the usual one
  double true_share = 1.0;  ///< of the stated uncertainties that the errors have
};

/// Measures the machine as it was built, through a survey's file, and puts what that gives into the job.
/// @return the standard uncertainty that the linkage gives a mass, share of it
Expected<double> putSurveyed(const Surveying& how, const simulator::Machine& machine, Files& files,
                             Random random) {
  survey::Surveyor surveyor{.truth = machine.as_built,
                            .tape_u_m = how.tape_u_m,
                            .inclinometer_u_rad = how.inclinometer_u_rad,
                            .error = [&] { return how.true_share * random.normal(); },
                            .plate_rad = 0.06 * random.normal(),
                            .plate_m = random.uniform(0.1, 0.35)};
  surveyor.ground_rad = how.true_share * 0.3 * kDegree * random.normal();
  surveyor = (how.brief ? survey::shortSurvey : survey::usualSurvey)(surveyor, machine.lowest_rad,
                                                                     machine.highest_rad);
  auto job = nlohmann::ordered_json::parse(files.at("job.json"));
  auto unit = job.at("unit");
  unit.erase("linkage");
  const auto file = formats::readSurvey(surveyText(surveyor, unit.dump()), "survey.json");
  if (!file) return std::unexpected(file.error());
  const auto answer =
      survey::tellSurvey(file->survey, file->unit, file->attachment, how.tape_u_m, how.inclinometer_u_rad);
  if (!answer) return std::unexpected(answer.error());
  if (answer->unusable) return std::unexpected(*answer->unusable);
  job["unit"] = nlohmann::ordered_json::parse(
      formats::unitWithLinkage(unit.dump(), answer->estimate.geometry, answer->estimate.doubt));
  files["job.json"] = job.dump();
  return *answer->mass_u;
}

// --- How good that is ---

/// One load, in % of the rated payload; a refused one has no error.
struct Result {
  double truth_kg = 0.0;
  double mass_kg = 0.0;
  double error = 0.0;
  double expanded = 0.0;
  std::string refusal;                     // the code; empty where weighed
  double plainly = 0.0;                    // the plain estimator's error, where the world has one
  std::map<std::string, double> budget{};  // standard uncertainties by the line's name
};

struct MachineResult {
  std::size_t group = 0;
  double rated_kg = 0.0;
  double survey_u = 0.0;  ///< what its linkage was said to cost, % of a mass
  double taught_Cel = 0.0;
  std::vector<Result> loads;
  std::string broken;  // the simulator itself failed
};

struct Score {
  double rms = 0.0;
  double bias = 0.0;
  double coverage = 0.0;  // %
  double width = 0.0;     // mean of the expanded uncertainty
  double plainly = 0.0;   // RMS error of the plain estimator
  std::size_t weighed = 0;
};

Score scoreOf(const std::vector<const MachineResult*>& machines) {
  double squares = 0.0;
  double sum = 0.0;
  double width = 0.0;
  double plain_squares = 0.0;
  std::size_t inside = 0;
  Score score;
  for (const MachineResult* machine : machines) {
    for (const Result& r : machine->loads) {
      if (!r.refusal.empty()) continue;
      squares += r.error * r.error;
      plain_squares += r.plainly * r.plainly;
      sum += r.error;
      width += r.expanded;
      if (std::abs(r.error) <= r.expanded) ++inside;
      ++score.weighed;
    }
  }
  if (score.weighed == 0) return score;
  const auto n = static_cast<double>(score.weighed);
  score.rms = std::sqrt(squares / n);
  score.plainly = std::sqrt(plain_squares / n);
  score.bias = sum / n;
  score.width = width / n;
  score.coverage = 100.0 * static_cast<double>(inside) / n;
  return score;
}

struct Interval {
  double low = 0.0;
  double high = 0.0;
};

/// The middle 95 % of a figure over resampled machines (percentile bootstrap, Efron 1979): loads of one
/// machine share its errors, so machines are what is drawn.
std::pair<Interval, Interval> bootstrap(const std::vector<const MachineResult*>& machines, Random random) {
  std::vector<double> rms;
  std::vector<double> coverage;
  std::vector<const MachineResult*> sample(machines.size());
  for (int i = 0; i < kResamples; ++i) {
    for (const MachineResult*& drawn : sample) drawn = machines[random.bits() % machines.size()];
    const Score score = scoreOf(sample);
    rms.push_back(score.rms);
    coverage.push_back(score.coverage);
  }
  const auto middle = [](std::vector<double>& values) {
    std::sort(values.begin(), values.end());
    const auto at = [&](double share) {
      return values[static_cast<std::size_t>(share * (kResamples - 1) + 0.5)];
    };
    return Interval{at(0.025), at(0.975)};
  };
  return {middle(rms), middle(coverage)};
}

void printRow(const std::string& name, const std::vector<const MachineResult*>& machines, Random random) {
  if (machines.empty()) return;
  const Score score = scoreOf(machines);
  const auto [rms, coverage] = bootstrap(machines, random);
  std::size_t loads = 0;
  for (const MachineResult* machine : machines) loads += machine->loads.size();
  fmt::print(
      "{:<34} {:>8} {:>6} {:>7} {:>7.3f} {:>6.3f}-{:<6.3f} {:>+7.3f} {:>8.2f} {:>6.1f}-{:<6.1f} {:>7.3f}{}\n",
      name, machines.size(), loads, loads - score.weighed, score.rms, rms.low, rms.high, score.bias,
      score.coverage, coverage.low, coverage.high, score.width,
      score.plainly > 0.0 ? fmt::format(" {:>7.3f}", score.plainly) : "");
}

void print(const std::vector<MachineResult>& results, const Random& random) {
  fmt::print(
      "Errors, bias and half-widths in % of the rated payload; intervals hold 95 % by bootstrap over "
      "machines.\n\n");
  fmt::print("{:<34} {:>8} {:>6} {:>7} {:>7} {:^13} {:>7} {:>8} {:^13} {:>7}\n", "group", "machines", "loads",
             "refused", "RMS", "", "bias", "inside %", "", "width");  // and the plain estimator's RMS
  std::vector<const MachineResult*> all;
  for (std::size_t group = 0; group < kGroups.size(); ++group) {
    std::vector<const MachineResult*> of_group;
    for (const MachineResult& r : results) {
      if (r.group == group && r.broken.empty()) of_group.push_back(&r);
    }
    all.insert(all.end(), of_group.begin(), of_group.end());
    printRow(kGroups[group].name, of_group, random.fork(group));
  }
  printRow("all", all, random.fork(kGroups.size()));

  std::map<std::string, int> refusals;
  for (const MachineResult& r : results) {
    if (!r.broken.empty()) ++refusals["simulator: " + r.broken];
    for (const Result& load : r.loads) {
      if (!load.refusal.empty()) ++refusals[load.refusal];
    }
  }
  for (const auto& [code, count] : refusals) fmt::print("  refused {} times: {}\n", count, code);
  double squares = 0.0;
  int surveyed = 0;
  for (const MachineResult& r : results) {
    squares += r.survey_u * r.survey_u;
    surveyed += r.survey_u > 0.0 ? 1 : 0;
  }
  if (surveyed > 0)
    fmt::print("  {} linkages surveyed; said to cost {:.3f} % of a mass (standard uncertainty, RMS)\n",
               surveyed, std::sqrt(squares / surveyed));
}

// --- Running it ---

struct Options {
  std::uint64_t seed = 0;
  std::size_t machines = 480;
  unsigned workers = 1;
  std::string dump;
  std::string table;
  bool only_make = false;
  std::vector<std::string> without;
  std::optional<benchmarks::PlainRanges> plain_world;
  std::optional<Surveying> surveying;
  std::optional<std::uint64_t> same_machine;  ///< all from this number, each surveyed afresh
};

bool writeFolder(const std::filesystem::path& folder, const Files& files) {
  std::error_code failed;
  std::filesystem::create_directories(folder, failed);
  for (const auto& [name, text] : files) {
    std::ofstream file(folder / name, std::ios::binary);
    file << text;
    if (!file) return false;
  }
  return true;
}

/// A machine's files, and what there is to be weighed.
struct Drawn {
  Files files;
  std::vector<benchmarks::PlainLoad> loads;
};

Expected<Drawn> draw(const Options& options, std::size_t group, Random random, MachineResult& result) {
  using simulator::Teaching;
  const Teaching teaching = kGroups[group].teaching;
  if (options.plain_world) {
    const bool test_mass = teaching == Teaching::TestMass || teaching == Teaching::TestMassOverLinkage;
    auto scenario = benchmarks::drawPlain(*options.plain_world, teaching != Teaching::TestMass,
                                          teaching == Teaching::BothWaysOverLinkage, test_mass, random);
    if (!scenario) return std::unexpected(scenario.error());
    result.rated_kg = scenario->rated_kg;
    result.taught_Cel = scenario->taught_Cel;
    return Drawn{std::move(scenario->files), std::move(scenario->loads)};
  }
  const Random of_survey = random.fork(2);
  if (options.same_machine) random = Random(*options.same_machine);
  Scenario scenario = simulator::drawScenario(teaching, random);
  scenario.note = std::string("Invented machine of the trial, made by Hingepin's simulator. Group: ") +
                  kGroups[group].name + ".";
  for (const std::string& name : options.without) causeOf(name)->spare(scenario);
  result.rated_kg = scenario.machine.rated_payload_kg;
  result.taught_Cel = scenario.taught[0].lift.oil_Cel;
  auto files = simulator::filesOf(scenario, random.fork(1));
  if (!files) return std::unexpected(files.error());
  if (options.surveying && scenario.parts.linkage) {
    const auto mass_u = putSurveyed(*options.surveying, scenario.machine, *files, of_survey);
    if (!mass_u) return std::unexpected(mass_u.error());
    result.survey_u = 100.0 * *mass_u;
  }
  Drawn drawn{std::move(*files), {}};
  for (const JobLift& lift : scenario.unknown)
    drawn.loads.push_back({lift.file, lift.lift.load->mass_kg, lift.lift.load->mass_kg});
  return drawn;
}

MachineResult runMachine(const Options& options, std::size_t index) {
  MachineResult result;
  result.group = index % kGroups.size();
  const auto drawn = draw(options, result.group, Random(options.seed).fork(index), result);
  if (!drawn) {
    result.broken = drawn.error().message.code;
    return result;
  }
  if (!options.dump.empty()) {
    const auto folder = std::filesystem::path(options.dump) / fmt::format("machine-{:04}", index);
    if (!writeFolder(folder, drawn->files)) result.broken = "cannot write " + folder.string();
  }
  if (options.only_make) return result;

  std::vector<std::string> names;
  for (const auto& load : drawn->loads) names.push_back(load.file);
  const auto weighed = weighAll(drawn->files, names);
  for (std::size_t k = 0; k < weighed.size(); ++k) {
    Result r;
    r.truth_kg = drawn->loads[k].mass_kg;
    const auto percent = [&](double kg) { return 100.0 * kg / result.rated_kg; };
    r.plainly = percent(drawn->loads[k].plainly_kg - r.truth_kg);
    if (weighed[k]) {
      r.mass_kg = weighed[k]->mass_kg;
      r.error = percent(weighed[k]->mass_kg - r.truth_kg);
      r.expanded = percent(weighed[k]->expanded_kg);
      for (const statistics::Contribution& line : weighed[k]->budget)
        r.budget[line.name] = std::hypot(r.budget[line.name], percent(line.standard_uncertainty));
    } else {
      r.refusal = weighed[k].error().message.code;
    }
    result.loads.push_back(r);
  }
  return result;
}

bool writeTable(const std::string& path, const std::vector<MachineResult>& results) {
  std::ofstream file(path);
  file << "machine,group,rated_kg,taught_Cel,load,truth_kg,mass_kg,error_percent,expanded_percent,refusal,"
          "budget_percent\n";
  for (std::size_t i = 0; i < results.size(); ++i) {
    const MachineResult& m = results[i];
    for (std::size_t k = 0; k < m.loads.size(); ++k) {
      const Result& r = m.loads[k];
      file << fmt::format("{},{},{:.0f},{:.1f},{},{:.2f},{:.2f},{:.4f},{:.4f},{},", i, m.group, m.rated_kg,
                          m.taught_Cel, k + 1, r.truth_kg, r.mass_kg, r.error, r.expanded, r.refusal);
      for (const auto& [name, u] : r.budget) file << fmt::format("{}:{:.5f} ", name, u);
      file << '\n';
    }
  }
  return static_cast<bool>(file);
}

int run(int argc, char** argv) {
  Options options;
  CLI::App app("Calibrates and weighs with machines drawn at random, and says how good that is.");
  app.add_option("--seed", options.seed, "Number that the machines are drawn from")->required();
  app.add_option("--machines", options.machines, "How many, the four groups in turn");
  app.add_option("--workers", options.workers, "Threads")->check(CLI::Range(1U, 64U));
  app.add_option("--dump", options.dump,
                 "Write each machine's job.json, logs and truth.json into this folder");
  app.add_option("--table", options.table, "Write every load's result into this CSV file");
  app.add_flag("--only-make", options.only_make, "Make the machines' files and stop");
  benchmarks::PlainRanges plain;
  app.add_option("--bounce", plain.liveliness, "How much of a jerk the livelier bounces take up, share");
  bool is_plain = false;
  auto* of_plain =
      app.add_flag("--plain", is_plain, "Machines of the plain world, with its plain estimator beside");
  app.add_option("--centres", plain.centre_sd_m, "Scatter of the loads' centres in the plain world, m")
      ->needs(of_plain);
  app.add_option("--constant-friction", plain.most_constant_friction_bar,
                 "Most friction that no load adds to, bar")
      ->needs(of_plain);
  app.add_option("--least-constant-friction", plain.least_constant_friction_bar, "and least")
      ->needs(of_plain);
  app.add_option("--orifice", plain.most_orifice_share, "Most of the moving cost that is orifice, share")
      ->needs(of_plain);
  std::string causes = "Spare the machines a cause of error (may be repeated):";
  std::vector<std::string> names;
  for (const Cause& cause : kCauses) {
    names.emplace_back(cause.name);
    causes += fmt::format("\n    {}: {}", cause.name, cause.means);
  }
  app.add_option("--without", options.without, causes)->delimiter(',')->check(CLI::IsMember(names));
  bool is_surveyed = false;
  Surveying surveying;
  auto* of_survey = app.add_flag("--survey", is_surveyed,
                                 "Linkages come from a survey of the machine as built, not from its drawing");
  double tape_mm = 5.0;
  double inclinometer_deg = 0.3;
  app.add_option("--tape", tape_mm, "Standard uncertainty of a length, mm")->needs(of_survey);
  app.add_option("--inclinometer", inclinometer_deg, "and of an angle, deg")->needs(of_survey);
  app.add_option("--true-share", surveying.true_share, "The survey's real errors, as a share of those stated")
      ->needs(of_survey);
  app.add_flag("--short", surveying.brief, "Only what an hour gives is measured")->needs(of_survey);
  app.add_option("--same-machine", options.same_machine,
                 "One machine by this number, with the same logs, surveyed again and again")
      ->needs(of_survey);
  CLI11_PARSE(app, argc, argv);
  if (is_surveyed) {
    surveying.tape_u_m = 1e-3 * tape_mm;
    surveying.inclinometer_u_rad = inclinometer_deg * kDegree;
    options.surveying = surveying;
  }
  if (is_plain) options.plain_world = plain;

  const std::clock_t start = std::clock();
  std::vector<MachineResult> results(options.machines);
  std::atomic<std::size_t> next = 0;
  const auto work = [&] {
    for (std::size_t i = next++; i < options.machines; i = next++) results[i] = runMachine(options, i);
  };
  std::vector<std::thread> workers;
  for (unsigned i = 1; i < options.workers; ++i) workers.emplace_back(work);
  work();
  for (std::thread& worker : workers) worker.join();
  const double cpu_s = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;

  int status = 0;
  for (const MachineResult& r : results) {
    if (!r.broken.empty()) status = 1;
  }
  if (!options.only_make) print(results, Random(options.seed).fork(std::uint64_t{1} << 32));
  if (!options.table.empty() && !writeTable(options.table, results)) {
    fmt::print(stderr, "Cannot write {}\n", options.table);
    status = 1;
  }
  fmt::print("\n{} machines, {:.3f} s of processor each\n", options.machines,
             cpu_s / static_cast<double>(std::max<std::size_t>(options.machines, 1)));
  return status;
}

}  // namespace
}  // namespace hingepin

int main(int argc, char** argv) { return hingepin::run(argc, argv); }
