// SPDX-License-Identifier: Apache-2.0
// What the engine's work costs beside the least that such work can cost, all in one run. The ratios stand at
// the end.
#include <benchmark/benchmark.h>
#include <fmt/format.h>
#include <gsl/gsl_multifit.h>

#include <Eigen/Core>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <map>
#include <string>
#include <vector>

#include "engine/base/random.h"
#include "engine/calibration/calibration.h"
#include "engine/formats/job_json.h"
#include "engine/formats/lift_log_csv.h"
#include "engine/simulator/scenario.h"
#include "engine/statistics/least_squares.h"
#include "engine/statistics/monte_carlo.h"

namespace hingepin {
namespace {

template <typename T>
T orStop(Expected<T> value, const char* what) {
  if (value) return *std::move(value);
  fmt::print(stderr, "{}: {}\n", what, value.error().message.code);
  std::exit(2);
}

// --- Reading a log: one hour at 50 Hz, 180,000 rows of five columns ---

const std::string& hourOfLog() {
  static const std::string text = [] {
    std::string rows =
        "time [s],boom_sensor [V],head_pressure [bar],rod_pressure [bar],oil_temperature [Cel]\n";
    Random random(1);
    for (int row = 0; row < 180000; ++row) {
      const double phase = 0.002 * row;
      fmt::format_to(std::back_inserter(rows), "{:.3f},{:.4f},{:.2f},{:.2f},{:.1f}\n", 0.02 * row,
                     2.5 + 1.5 * std::sin(phase), 120 + 40 * std::sin(phase) + random.normal(),
                     5 + 0.2 * random.normal(), 55 + 0.1 * random.normal());
    }
    return rows;
  }();
  return text;
}

void readsLog(benchmark::State& state) {
  for (auto _ : state) {
    const auto log = formats::readLiftLog(formats::sourceOf(hourOfLog()), "hour.csv");
    if (!log || log->rows_read != 180000) state.SkipWithError("the log was not read");
    benchmark::DoNotOptimize(log);
  }
}

void readsNumbersOnly(benchmark::State& state) {
  const std::string& text = hourOfLog();
  const std::size_t body = text.find('\n') + 1;
  for (auto _ : state) {
    double sum = 0;
    for (const char *at = text.data() + body, *const end = text.data() + text.size(); at < end; ++at) {
      double value = 0;
      at = std::from_chars(at, end, value).ptr;
      sum += value;
    }
    benchmark::DoNotOptimize(sum);
  }
}

// --- A fit: 600 observations, 6 coefficients, as a taught pass has them ---

struct Observations {
  Eigen::MatrixXd design{600, 6};
  Eigen::VectorXd values{600};
  Eigen::VectorXd standard_uncertainty = Eigen::VectorXd::Constant(600, 0.3);
};

const Observations& observations() {
  static const Observations made = [] {
    Observations all;
    Random random(2);
    for (int row = 0; row < 600; ++row) {
      const double angle = -0.7 + 0.0025 * row;
      all.design.row(row) << 1, angle, angle * angle, angle * angle * angle, std::sin(angle), random.normal();
      all.values(row) = 80 + 12 * angle + 0.3 * random.normal();
    }
    return all;
  }();
  return made;
}

void fits(benchmark::State& state) {
  const Observations& all = observations();
  for (auto _ : state) {
    const auto fit = statistics::fitWeighted(all.design, all.values, all.standard_uncertainty,
                                             statistics::NoiseScale::Known);
    if (!fit) state.SkipWithError("no fit");
    benchmark::DoNotOptimize(fit);
  }
}

void fitsWithGsl(benchmark::State& state) {
  const Observations& all = observations();
  const std::size_t rows = 600;
  const std::size_t columns = 6;
  gsl_matrix* const design = gsl_matrix_alloc(rows, columns);
  gsl_vector* const weights = gsl_vector_alloc(rows);
  gsl_vector* const values = gsl_vector_alloc(rows);
  for (std::size_t row = 0; row < rows; ++row) {
    const auto r = static_cast<Eigen::Index>(row);
    for (std::size_t column = 0; column < columns; ++column)
      gsl_matrix_set(design, row, column, all.design(r, static_cast<Eigen::Index>(column)));
    gsl_vector_set(weights, row, 1 / (all.standard_uncertainty(r) * all.standard_uncertainty(r)));
    gsl_vector_set(values, row, all.values(r));
  }
  for (auto _ : state) {
    // Its workspace counts, for ours is made anew as well.
    gsl_multifit_linear_workspace* const work = gsl_multifit_linear_alloc(rows, columns);
    gsl_vector* const coefficients = gsl_vector_alloc(columns);
    gsl_matrix* const covariance = gsl_matrix_alloc(columns, columns);
    double chi_squared = 0;
    gsl_multifit_wlinear(design, weights, values, coefficients, covariance, &chi_squared, work);
    benchmark::DoNotOptimize(chi_squared);
    gsl_matrix_free(covariance);
    gsl_vector_free(coefficients);
    gsl_multifit_linear_free(work);
  }
  gsl_vector_free(values);
  gsl_vector_free(weights);
  gsl_matrix_free(design);
}

// --- 10^6 trials of a weighing with ten doubts ---

constexpr int kTrials = 1000000;
constexpr int kDoubts = 10;

/// The moment balance about the boom pivot, each input with its doubt.
double massOf(const std::array<double, kDoubts>& z) {
  const double head_Pa = 140e5 + 0.5e5 * z[0];
  const double rod_Pa = 5e5 + 0.5e5 * z[1];
  const double gain = 1 + 0.0025 * z[2];
  const double bore_m = 0.120 + 0.0001 * z[3];
  const double rod_m = 0.070 + 0.0001 * z[4];
  const double arm_m = 0.45 + 0.002 * z[5];
  const double tare_Nm = 60e3 + 300 * z[6];
  const double reach_m = 2.1 + 0.02 * z[7];
  const double friction = 0.010 + 0.005 * z[8];
  const double gravity = 9.81 + 0.001 * z[9];
  constexpr double kQuarterPi = 0.78539816339744831;
  const double force_N =
      2 * gain * kQuarterPi * (head_Pa * bore_m * bore_m - rod_Pa * (bore_m * bore_m - rod_m * rod_m));
  return (force_N * arm_m - tare_Nm) / (reach_m * gravity * (1 + friction));
}

void drawsWeighings(benchmark::State& state) {
  for (auto _ : state) {
    const auto trial = [](Random& random) {
      std::array<double, kDoubts> z;
      for (double& value : z) value = random.normal();
      return massOf(z);
    };
    // Nine digits are never met, so that all trials are made.
    const auto drawn = statistics::propagate(trial, Random(3), 0.9545, 9, kTrials);
    if (drawn.trials != kTrials) state.SkipWithError("not all trials were made");
    benchmark::DoNotOptimize(drawn);
  }
}

void drawsNormalsOnly(benchmark::State& state) {
  for (auto _ : state) {
    Random random(3);
    double sum = 0;
    for (int draw = 0; draw < kTrials * kDoubts; ++draw) sum += random.normal();
    benchmark::DoNotOptimize(sum);
  }
}

// --- Calibrating and weighing, the practice job's files in memory ---

const simulator::Files& practiceFiles() {
  static const simulator::Files files =
      orStop(simulator::filesOf(simulator::demoScenario(1), Random(1)), "the practice job");
  return files;
}

Expected<formats::ByteSource> opened(const std::string& path) {
  const auto file = practiceFiles().find(path);
  if (file == practiceFiles().end()) return fail(ErrorKind::NotFound, "file-not-found", {{"path", path}});
  return formats::sourceOf(file->second);
}

calibration::Job readPractice() {
  return orStop(formats::readJob(practiceFiles().at("job.json"), "job.json", opened),
                "the practice job's file")
      .job;
}

void calibratesThreeLogs(benchmark::State& state) {
  for (auto _ : state) {
    const auto calibration = orStop(calibration::calibrate(readPractice()), "calibrate");
    benchmark::DoNotOptimize(&calibration);
  }
}

void weighsOneLog(benchmark::State& state) {
  const calibration::Calibration calibration = orStop(calibration::calibrate(readPractice()), "calibrate");
  for (auto _ : state) {
    const auto log = formats::readLiftLog(orStop(opened("load-1.csv"), "the load's log"), "load-1.csv");
    const auto weighing = orStop(calibration::weigh(calibration, orStop(log, "the load's log")), "weigh");
    benchmark::DoNotOptimize(&weighing);
  }
}

BENCHMARK(readsLog)->Unit(benchmark::kMillisecond);
BENCHMARK(readsNumbersOnly)->Unit(benchmark::kMillisecond);
BENCHMARK(fits)->Unit(benchmark::kMicrosecond);
BENCHMARK(fitsWithGsl)->Unit(benchmark::kMicrosecond);
BENCHMARK(drawsWeighings)->Unit(benchmark::kMillisecond);
BENCHMARK(drawsNormalsOnly)->Unit(benchmark::kMillisecond);
BENCHMARK(calibratesThreeLogs)->Unit(benchmark::kMillisecond);
BENCHMARK(weighsOneLog)->Unit(benchmark::kMillisecond);

/// Keeps the processor time of each, for the ratios.
class Kept : public benchmark::ConsoleReporter {
 public:
  void ReportRuns(const std::vector<Run>& runs) override {
    for (const Run& run : runs)
      if (run.run_type != Run::RT_Aggregate || run.aggregate_name == "median")
        spent[run.run_name.function_name] = run.GetAdjustedCPUTime();
    ConsoleReporter::ReportRuns(runs);
  }
  std::map<std::string, double> spent;
};

}  // namespace
}  // namespace hingepin

int main(int argc, char** argv) {
  benchmark::Initialize(&argc, argv);
  hingepin::Kept kept;
  benchmark::RunSpecifiedBenchmarks(&kept);
  const auto ratio = [&](const char* name, const char* least) {
    if (kept.spent.contains(name) && kept.spent.contains(least))
      fmt::print("{} / {}: {:.2f}\n", name, least, kept.spent[name] / kept.spent[least]);
  };
  ratio("readsLog", "readsNumbersOnly");
  ratio("fits", "fitsWithGsl");
  ratio("drawsWeighings", "drawsNormalsOnly");
  return 0;
}
