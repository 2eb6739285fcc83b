// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <span>
#include <string_view>

#include "engine/proof/cost.h"
#include "engine/proof/doubt.h"
#include "engine/proof/proof.h"
#include "engine/statistics/distributions.h"
#include "engine/statistics/straight_line.h"

namespace hingepin::proof {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
/// Of a reference mass whose uncertainty is not given; from the contract of the format.
constexpr double kReferenceU = 0.001;
/// References that differ by less, as a share, are one mass.
constexpr double kSameMass = 1e-6;
/// Beyond so many readings nobody would go on.
constexpr int kMostReadings = 1000;

Amount kilograms(double value_kg, int decimals = 1) { return {value_kg, "kg", decimals}; }

struct Series {
  double mean_kg = 0.0;
  double sd_kg = 0.0;
  int count = 0;
  [[nodiscard]] int degrees() const { return std::max(count - 1, 0); }
};

Series seriesOf(std::span<const double> values) {
  Series series{.count = static_cast<int>(values.size())};
  if (values.empty()) return series;
  // Against the first value, so that alike readings scatter by exactly nothing.
  double sum = 0.0;
  for (const double value : values) sum += value - values.front();
  const double mean = sum / series.count;
  double squares = 0.0;
  for (const double value : values) squares += std::pow(value - values.front() - mean, 2);
  series.mean_kg = values.front() + mean;
  series.sd_kg = series.count > 1 ? std::sqrt(squares / series.degrees()) : 0.0;
  return series;
}

Series seriesOf(const std::vector<Mass>& masses) {
  std::vector<double> values;
  for (const Mass mass : masses) values.push_back(mass.inKilograms());
  return seriesOf(values);
}

/// A standard deviation from several series.
struct Scatter {
  double sd_kg = 0.0;
  double degrees_of_freedom = 0.0;
  [[nodiscard]] bool known() const { return degrees_of_freedom > 0.0; }
};

Scatter pooled(const std::vector<Series>& all) {
  Scatter scatter;
  double squares = 0.0;
  for (const Series& series : all) {
    squares += series.degrees() * series.sd_kg * series.sd_kg;
    scatter.degrees_of_freedom += series.degrees();
  }
  if (scatter.known()) scatter.sd_kg = std::sqrt(squares / scatter.degrees_of_freedom);
  return scatter;
}

Finding findingOf(double value_kg, const Doubt& doubt,
                  const std::vector<std::pair<std::string, double>>& budget) {
  Finding finding{.value_kg = value_kg, .doubt = doubt, .expanded_uncertainty_kg = halfWidth(doubt)};
  for (const auto& [name, u_kg] : budget) {
    const bool scatters = name == "budget-scatter";
    finding.budget.push_back({name, u_kg, scatters ? doubt.degrees_of_freedom : kInfinity});
  }
  return finding;
}

/// What all judgements of a proof share.
struct Context {
  const Proof& proof;
  double step_kg;
  Scatter of_masses;  ///< of one indication, over all known masses

  [[nodiscard]] std::optional<NormalPrior> prior() const {
    if (!proof.decision.prior) return std::nullopt;
    return NormalPrior{proof.decision.prior->mean.inKilograms(), proof.decision.prior->u.inKilograms()};
  }
};

/// The doubt of the mean of `count` readings of one load, of which `seen` were made.
Doubt doubtOfMean(double sd_kg, int seen, int count, double step_kg, double reference_u_kg) {
  return {.scatter_u_kg = unhiddenScatter(sd_kg, seen, step_kg) / std::sqrt(count),
          .degrees_of_freedom = count - 1.0,
          .normal_u_kg = reference_u_kg,
          .rectangular_half_kg = roundingHalf(sd_kg, step_kg)};
}

double probability(const Context& context, double error_kg, const Doubt& doubt, double limit_kg,
                   double per_reference = 1.0) {
  std::optional<NormalPrior> prior = context.prior();
  // A prior is of one weighing; of a sum the same holds for each.
  if (prior) *prior = {prior->mean_kg * per_reference, prior->u_kg * per_reference};
  return probabilityWithin(error_kg, doubt, limit_kg, prior);
}

bool decides(const Decision& decision, double probability) {
  return probability >= decision.confidence || probability <= 1.0 - decision.confidence;
}

/// The fewest readings, more than `from`, from which `decided` says yes.
template <class Decided>
std::optional<int> fewest(int from, const Decided& decided) {
  if (!decided(kMostReadings)) return std::nullopt;
  int low = from;
  int high = from + 1;
  while (high < kMostReadings && !decided(high)) {
    low = high;
    high = std::min(2 * high, kMostReadings);
  }
  while (high - low > 1) {
    const int middle = (low + high) / 2;
    (decided(middle) ? high : low) = middle;
  }
  return high;
}

/// Verdict, probability and risks; error, limit and what is known of the scatter must stand already.
void judge(const Context& context, Judgement& judgement, double per_reference = 1.0) {
  const Decision& decision = context.proof.decision;
  const Finding& error = judgement.error;
  judgement.probability_of_conformity =
      probability(context, error.value_kg, error.doubt, judgement.limit_kg, per_reference);
  const double p = judgement.probability_of_conformity;
  if (decision.rule == Rule::Simple) {
    const bool within = std::abs(error.value_kg) <= judgement.limit_kg * (1.0 + 1e-12);
    judgement.verdict = within ? Verdict::Holds : Verdict::DoesNotHold;
    if (error.expanded_uncertainty_kg > judgement.limit_kg || !judgement.scatter_known) {
      judgement.warnings.push_back({"simple-rule-with-wide-doubt",
                                    {{"uncertainty", kilograms(error.expanded_uncertainty_kg)},
                                     {"limit", kilograms(judgement.limit_kg)}}});
    }
  } else if (judgement.scatter_known && decides(decision, p)) {
    judgement.verdict = p >= decision.confidence ? Verdict::Holds : Verdict::DoesNotHold;
  }
  if (judgement.verdict == Verdict::Holds) judgement.risk = 1.0 - p;
  if (judgement.verdict == Verdict::DoesNotHold) judgement.risk = p;

  if (std::optional<NormalPrior> prior = context.prior()) {
    *prior = {prior->mean_kg * per_reference, prior->u_kg * per_reference};
    const double u_kg = error.standardUncertainty();
    const double guard_kg =
        decision.rule == Rule::Guarded ? statistics::normalQuantile(decision.confidence) * u_kg : 0.0;
    judgement.risks_before =
        globalRisks(*prior, u_kg, judgement.limit_kg, std::max(judgement.limit_kg - guard_kg, 0.0));
  }
}

Expected<double> limitOf(const Context& context, double load_kg, const std::string& pointer) {
  const Expected<Mass> limit = limitAt(context.proof.tolerance, Mass::fromKilograms(std::max(load_kg, 0.0)),
                                       context.proof.rated_payload.value_or(Mass()));
  if (limit) return limit->inKilograms();
  Error error = limit.error();
  error.place.pointer = pointer;
  return std::unexpected(std::move(error));
}

Expected<Judgement> judgeMass(const Context& context, const KnownMass& mass, const std::string& pointer) {
  const Expected<double> limit_kg = limitOf(context, mass.reference.inKilograms(), pointer);
  if (!limit_kg) return std::unexpected(limit_kg.error());
  const Series series = seriesOf(mass.indications);
  Judgement judgement{.reference_kg = mass.reference.inKilograms(), .count = series.count};
  judgement.reference_u_kg = mass.reference_u.value_or(kReferenceU * mass.reference).inKilograms();
  judgement.indication_kg = series.mean_kg;
  judgement.limit_kg = *limit_kg;

  Doubt doubt;
  if (series.count > 1) {
    doubt = doubtOfMean(series.sd_kg, series.count, series.count, context.step_kg, judgement.reference_u_kg);
    judgement.repeatability_kg = series.sd_kg;
    judgement.scatter_known = true;
    if (context.step_kg > series.sd_kg) {
      judgement.warnings.push_back(
          {"step-hides-scatter",
           {{"step", kilograms(context.step_kg, 2)}, {"mass", kilograms(judgement.reference_kg, 0)}}});
    }
  } else {
    doubt = {.normal_u_kg = judgement.reference_u_kg,
             .rectangular_half_kg = roundingHalf(context.of_masses.sd_kg, context.step_kg)};
    if (context.of_masses.known()) {
      doubt.scatter_u_kg = context.of_masses.sd_kg;
      doubt.degrees_of_freedom = context.of_masses.degrees_of_freedom;
      judgement.scatter_known = true;
    }
    judgement.warnings.push_back({context.of_masses.known() ? "single-reading" : "scatter-unknown",
                                  {{"mass", kilograms(judgement.reference_kg, 0)}}});
  }
  judgement.error = findingOf(series.mean_kg - judgement.reference_kg, doubt,
                              {{"budget-scatter", doubt.scatter_u_kg},
                               {"budget-reference", doubt.normal_u_kg},
                               {"budget-display-step", doubt.rectangular_half_kg / kRoot3}});
  judge(context, judgement);
  if (judgement.verdict == Verdict::Undecided) {
    const double sd_kg = series.count > 1 ? series.sd_kg : context.of_masses.sd_kg;
    if (judgement.scatter_known) {
      judgement.readings_to_decide = fewest(std::max(series.count, 1), [&](int count) {
        const Doubt then =
            doubtOfMean(sd_kg, std::max(series.count, 2), count, context.step_kg, judgement.reference_u_kg);
        return decides(context.proof.decision,
                       probability(context, judgement.error.value_kg, then, judgement.limit_kg));
      });
    }
  }
  return judgement;
}

/// Standard uncertainty of a net from the truck scale's own error, its rounding apart.
double scaleU_kg(const TruckScale& scale, double net_kg) {
  if (scale.net_u) return scale.net_u->inKilograms();
  return assumedScaleU(scale.interval, Mass::fromKilograms(net_kg)).inKilograms();
}

/// What the rules of good weighing say.
void weighWell(const TruckScale& scale, double gross_kg, double net_kg, std::vector<Message>& warnings) {
  const auto warn = [&](std::string code, std::vector<std::pair<std::string, MessageValue>> values = {}) {
    warnings.push_back({std::move(code), std::move(values)});
  };
  if (!scale.net_u) warn("truck-scale-error-taken");
  if (scale.certificate.empty()) {
    warn("truck-scale-certificate-missing");
  } else if (scale.certificate_expires.empty()) {
    warn("truck-scale-expiry-missing");
  }
  const std::string day = scale.gross_time.substr(0, 10);
  if (!scale.certificate_expires.empty() && !day.empty() && scale.certificate_expires < day) {
    warn("truck-scale-certificate-expired", {{"day", scale.certificate_expires}});
  }
  if (scale.gross_ticket.empty() || scale.tare_ticket.empty()) warn("truck-ticket-missing");
  if (!scale.zeroed.value_or(false)) warn("truck-scale-not-zeroed");
  if (!scale.whole_on_deck.value_or(false)) warn("truck-not-whole-on-deck");
  if (!scale.same_driver_fuel.value_or(false)) warn("truck-driver-or-fuel-changed");
  if (day.empty() || scale.tare_time.substr(0, 10) != day) warn("truck-tare-not-fresh");
  if (scale.legal_gross && gross_kg > scale.legal_gross->inKilograms()) {
    warn("truck-over-legal-gross",
         {{"gross", kilograms(gross_kg, 0)}, {"legal", kilograms(scale.legal_gross->inKilograms(), 0)}});
  }
  // OIML R 76-1:2006 Table 3: the least load of class III is 20 intervals.
  if (net_kg < 20.0 * scale.interval.inKilograms()) warn("truck-net-too-small");
}

/// Scatter of one bucket from how trucks agree with each other: of the errors by bucket, weighted by buckets.
Scatter scatterOfTrucks(const std::vector<TruckLoad>& trucks) {
  if (trucks.size() < 2) return {};
  double buckets = 0.0;
  double errors_kg = 0.0;
  const auto errorOf = [](const TruckLoad& truck) {
    double sum_kg = -(truck.gross - truck.tare).inKilograms();
    for (const Mass indication : truck.indications) sum_kg += indication.inKilograms();
    return sum_kg;
  };
  for (const TruckLoad& truck : trucks) {
    buckets += static_cast<double>(truck.indications.size());
    errors_kg += errorOf(truck);
  }
  double squares = 0.0;
  for (const TruckLoad& truck : trucks) {
    const double count = static_cast<double>(truck.indications.size());
    squares += std::pow(errorOf(truck) - errors_kg / buckets * count, 2) / count;
  }
  const double degrees = static_cast<double>(trucks.size()) - 1.0;
  return {std::sqrt(squares / degrees), degrees};
}

constexpr std::string_view kScatterOfTrucks = "truck-scatter-of-trucks";

/// How one bucket scatters, from the best that the proof has. A code says what it was.
Scatter scatterOfBuckets(const Context& context, const Series& spread, std::string& source) {
  const double rounded_kg = context.step_kg / std::sqrt(12.0);
  if (context.of_masses.known()) {
    // Buckets differ, so their rounding scatters too.
    return {std::max(context.of_masses.sd_kg, rounded_kg), context.of_masses.degrees_of_freedom};
  }
  if (const Scatter scatter = scatterOfTrucks(context.proof.trucks); scatter.known()) {
    source = kScatterOfTrucks;
    return {std::max(scatter.sd_kg, rounded_kg), scatter.degrees_of_freedom};
  }
  if (spread.count > 1) {
    source = "truck-scatter-of-fills";
    return {std::max(spread.sd_kg, rounded_kg), static_cast<double>(spread.degrees())};
  }
  source = "truck-scatter-unknown";
  return {};
}

/// One truck, or several as one: errors, nets and limits added up.
Expected<Judgement> judgeTrucks(const Context& context, std::span<const TruckLoad> trucks,
                                const std::string& pointer) {
  Judgement judgement;
  std::vector<Mass> indications;
  double rounding_u_kg = 0.0;
  double scale_u_kg = 0.0;
  for (const TruckLoad& truck : trucks) {
    const double count = static_cast<double>(truck.indications.size());
    const double net_kg = (truck.gross - truck.tare).inKilograms();
    // Each bucket may be off by the limit of its own load, so their sum by as many.
    const Expected<double> bucket_limit_kg = limitOf(context, net_kg / count, pointer);
    if (!bucket_limit_kg) return std::unexpected(bucket_limit_kg.error());
    judgement.limit_kg += *bucket_limit_kg * count;
    judgement.reference_kg += net_kg;
    // Gross and tare are rounded anew each time; the scale's own error stays.
    rounding_u_kg = std::hypot(rounding_u_kg, truck.scale.interval.inKilograms() / std::sqrt(6.0));
    scale_u_kg += scaleU_kg(truck.scale, net_kg);
    indications.insert(indications.end(), truck.indications.begin(), truck.indications.end());
    if (trucks.size() == 1) weighWell(truck.scale, truck.gross.inKilograms(), net_kg, judgement.warnings);
  }
  const Series series = seriesOf(indications);
  const double count = series.count;
  judgement.count = series.count;
  judgement.indication_kg = series.mean_kg * count;
  judgement.reference_u_kg = std::hypot(rounding_u_kg, scale_u_kg);

  std::string source;
  const Scatter scatter = scatterOfBuckets(context, series, source);
  judgement.scatter_known = scatter.known();
  if (source.empty() || source == kScatterOfTrucks) judgement.repeatability_kg = scatter.sd_kg;
  if (!source.empty()) judgement.warnings.push_back({source, {}});
  Doubt doubt{.scatter_u_kg = scatter.sd_kg * std::sqrt(count), .normal_u_kg = judgement.reference_u_kg};
  if (scatter.known()) doubt.degrees_of_freedom = scatter.degrees_of_freedom;
  judgement.error = findingOf(judgement.indication_kg - judgement.reference_kg, doubt,
                              {{"budget-scatter", doubt.scatter_u_kg},
                               {"budget-truck-scale", scale_u_kg},
                               {"budget-truck-scale-interval", rounding_u_kg}});
  judge(context, judgement, count);
  if (judgement.verdict == Verdict::Undecided && scatter.known()) {
    const std::optional<int> times = fewest(1, [&](int number) {
      const Doubt then{.scatter_u_kg = doubt.scatter_u_kg * std::sqrt(number),
                       .degrees_of_freedom = doubt.degrees_of_freedom,
                       .normal_u_kg = std::hypot(rounding_u_kg * std::sqrt(number), scale_u_kg * number)};
      return decides(context.proof.decision, probability(context, judgement.error.value_kg * number, then,
                                                         judgement.limit_kg * number, count * number));
    });
    if (times) judgement.readings_to_decide = *times * series.count;
  }
  return judgement;
}

Expected<Judgement> judgeTruck(const Context& context, const TruckLoad& truck, const std::string& pointer) {
  return judgeTrucks(context, std::span(&truck, 1), pointer);
}

Expected<Judgement> judgeLoaderOnScale(const Context& context, const LoaderOnScale& loader,
                                       const std::string& pointer) {
  std::vector<double> errors_kg;
  double net_sum_kg = 0.0;
  double shown_sum_kg = 0.0;
  double most_gross_kg = 0.0;
  for (const LoaderOnScale::Bucket& bucket : loader.buckets) {
    const double net_kg = (bucket.loaded - loader.empty).inKilograms();
    errors_kg.push_back(bucket.indication.inKilograms() - net_kg);
    net_sum_kg += net_kg;
    shown_sum_kg += bucket.indication.inKilograms();
    most_gross_kg = std::max(most_gross_kg, bucket.loaded.inKilograms());
  }
  const Series series = seriesOf(errors_kg);
  Judgement judgement{.reference_kg = net_sum_kg / series.count, .count = series.count};
  const Expected<double> limit_kg = limitOf(context, judgement.reference_kg, pointer);
  if (!limit_kg) return std::unexpected(limit_kg.error());
  judgement.indication_kg = shown_sum_kg / series.count;
  judgement.limit_kg = *limit_kg;

  const double interval_kg = loader.scale.interval.inKilograms();
  const double scale_u_kg = scaleU_kg(loader.scale, judgement.reference_kg);
  // The empty weighing is common to all buckets; the rounding of the others scatters with them.
  Doubt doubt{.normal_u_kg = scale_u_kg, .rectangular_half_kg = interval_kg / 2.0};
  const double rounded_kg = std::hypot(interval_kg, context.step_kg) / std::sqrt(12.0);
  Scatter scatter{std::max(series.sd_kg, rounded_kg), static_cast<double>(series.degrees())};
  if (!scatter.known() && context.of_masses.known()) {
    scatter = {std::hypot(context.of_masses.sd_kg, rounded_kg), context.of_masses.degrees_of_freedom};
  }
  judgement.scatter_known = scatter.known();
  if (series.count > 1) judgement.repeatability_kg = series.sd_kg;
  if (series.count == 1) {
    judgement.warnings.push_back({scatter.known() ? "single-reading" : "scatter-unknown",
                                  {{"mass", kilograms(judgement.reference_kg, 0)}}});
  }
  if (scatter.known()) doubt.degrees_of_freedom = scatter.degrees_of_freedom;
  doubt.scatter_u_kg = scatter.known() ? scatter.sd_kg / std::sqrt(series.count) : 0.0;
  judgement.reference_u_kg = std::hypot(scale_u_kg, interval_kg / std::sqrt(12.0));
  judgement.error = findingOf(series.mean_kg, doubt,
                              {{"budget-scatter", doubt.scatter_u_kg},
                               {"budget-truck-scale", scale_u_kg},
                               {"budget-truck-scale-interval", interval_kg / std::sqrt(12.0)}});
  weighWell(loader.scale, most_gross_kg, judgement.reference_kg, judgement.warnings);
  judge(context, judgement);
  if (judgement.verdict == Verdict::Undecided && scatter.known()) {
    judgement.readings_to_decide = fewest(std::max(series.count, 1), [&](int count) {
      Doubt then = doubt;
      then.scatter_u_kg = scatter.sd_kg / std::sqrt(count);
      then.degrees_of_freedom = std::max(count - 1.0, scatter.degrees_of_freedom);
      return decides(context.proof.decision,
                     probability(context, judgement.error.value_kg, then, judgement.limit_kg));
    });
  }
  return judgement;
}

/// One level that the line goes through.
struct Level {
  double x_kg, u_x_kg, y_kg, u_y_kg;
};

std::vector<Level> levelsOf(const Context& context, const ProofResult& result) {
  std::vector<Level> levels;
  const auto rounding = [&](double sd_kg) { return roundingHalf(sd_kg, context.step_kg) / kRoot3; };
  const double sd_kg = context.of_masses.sd_kg;
  // A line needs some doubt at every level; a thousandth of a kilogram is none.
  constexpr double kLeast_kg = 1e-3;
  if (!context.proof.zero_indications.empty()) {
    const Series zero = seriesOf(context.proof.zero_indications);
    const double own_kg = zero.count > 1 ? unhiddenScatter(zero.sd_kg, zero.count, context.step_kg) : sd_kg;
    levels.push_back(
        {0.0, 0.0, zero.mean_kg, std::hypot(own_kg / std::sqrt(zero.count), rounding(own_kg), kLeast_kg)});
  }
  for (const Judgement& mass : result.masses) {
    levels.push_back({mass.reference_kg, mass.reference_u_kg, mass.indication_kg,
                      std::hypot(sd_kg / std::sqrt(mass.count), rounding(sd_kg), kLeast_kg)});
  }
  const auto addBuckets = [&](const Judgement& truck, double count) {
    levels.push_back({truck.reference_kg / count, truck.reference_u_kg / count, truck.indication_kg / count,
                      std::hypot(truck.error.doubt.scatter_u_kg / count, kLeast_kg)});
  };
  for (const Judgement& truck : result.trucks) addBuckets(truck, truck.count);
  for (const Judgement& loader : result.loader_on_scale) addBuckets(loader, 1.0);
  return levels;
}

std::expected<Correction, Message> correctionOf(const std::vector<Level>& levels) {
  const auto lines = static_cast<Eigen::Index>(levels.size());
  statistics::LinePoints points{
      Eigen::VectorXd(lines), Eigen::VectorXd(lines), Eigen::VectorXd(lines), Eigen::VectorXd(lines), {}};
  double low_kg = kInfinity;
  double high_kg = -kInfinity;
  for (Eigen::Index i = 0; i < lines; ++i) {
    const Level& level = levels[static_cast<std::size_t>(i)];
    points.x(i) = level.x_kg;
    points.u_x(i) = level.u_x_kg;
    points.y(i) = level.y_kg;
    points.u_y(i) = level.u_y_kg;
    low_kg = std::min(low_kg, level.x_kg);
    high_kg = std::max(high_kg, level.x_kg);
  }
  if (!(high_kg - low_kg > kSameMass * std::abs(high_kg)))
    return std::unexpected(Message{"correction-needs-two-levels", {}});
  const Expected<statistics::StraightLine> line =
      statistics::fitStraightLine(points, statistics::NoiseScale::Known);
  if (!line || !(line->slope > 0.0)) return std::unexpected(Message{"correction-not-told", {}});

  Correction correction{.span_factor = 1.0 / line->slope, .zero_kg = line->intercept};
  correction.levels = static_cast<int>(lines);
  correction.straight = line->degrees_of_freedom == 0 ||
                        statistics::chiSquaredTail(line->chi_squared, line->degrees_of_freedom) >= 0.01;
  // Levels that stray from the line tell that their doubt is larger than was thought.
  const double widen = correction.straight ? 1.0 : std::max(1.0, line->residual_scale);
  const double factor = correction.span_factor * correction.span_factor;
  correction.span_factor_u = widen * factor * std::sqrt(line->covariance(1, 1));
  correction.zero_u_kg = widen * std::sqrt(line->covariance(0, 0));
  correction.covariance_kg = -widen * widen * factor * line->covariance(0, 1);
  for (const Level& level : levels) {
    const double residual_kg = level.y_kg - line->intercept - line->slope * level.x_kg;
    if (std::abs(residual_kg) > std::abs(correction.largest_residual_kg)) {
      correction.largest_residual_kg = residual_kg;
      correction.largest_residual_at_kg = level.x_kg;
    }
  }
  return correction;
}

/// Second less first of two series; both may be one mass, whose doubt then is out.
Finding difference(const Judgement& first, const Judgement& second) {
  const Doubt& a = first.error.doubt;
  const Doubt& b = second.error.doubt;
  const double scatter = std::hypot(a.scatter_u_kg, b.scatter_u_kg);
  Doubt doubt{.scatter_u_kg = scatter,
              .normal_u_kg = std::hypot(a.rectangular_half_kg, b.rectangular_half_kg) / kRoot3};
  if (scatter > 0.0) {  // Welch, GUM eq. G.2b
    doubt.degrees_of_freedom = std::pow(scatter, 4) / (std::pow(a.scatter_u_kg, 4) / a.degrees_of_freedom +
                                                       std::pow(b.scatter_u_kg, 4) / b.degrees_of_freedom);
  }
  return findingOf(second.error.value_kg - first.error.value_kg, doubt,
                   {{"budget-scatter", doubt.scatter_u_kg}, {"budget-display-step", doubt.normal_u_kg}});
}

bool isSameMass(Mass a, Mass b) {
  return std::abs((a - b).inKilograms()) <= kSameMass * std::abs(a.inKilograms());
}

void compareSeries(const Proof& proof, ProofResult& result) {
  for (std::size_t i = 0; i < proof.masses.size(); ++i) {
    for (std::size_t j = 0; j < proof.masses.size(); ++j) {
      const KnownMass& a = proof.masses[i];
      const KnownMass& b = proof.masses[j];
      if (i == j || !isSameMass(a.reference, b.reference)) continue;
      if (!result.masses[i].scatter_known || !result.masses[j].scatter_known) continue;
      if (a.approach == Approach::Up && b.approach == Approach::Down && a.pace == b.pace)
        result.hysteresis.push_back({i, j, difference(result.masses[i], result.masses[j])});
      if (a.pace == ProofPace::Slow && b.pace == ProofPace::Fast && a.approach == b.approach)
        result.pace.push_back({i, j, difference(result.masses[i], result.masses[j])});
    }
  }
}

std::optional<Finding> zeroReturn(const Context& context) {
  const std::vector<Mass>& zeros = context.proof.zero_indications;
  if (zeros.size() < 2) return std::nullopt;
  // The scatter of one indication comes from the loaded ones: that of the zeros holds what is looked for.
  const double value_kg = (zeros.back() - zeros.front()).inKilograms();
  Doubt doubt{.normal_u_kg = context.step_kg / std::sqrt(6.0)};
  if (context.of_masses.known()) {
    doubt.scatter_u_kg = context.of_masses.sd_kg * std::sqrt(2.0);
    doubt.degrees_of_freedom = context.of_masses.degrees_of_freedom;
  }
  return findingOf(value_kg, doubt,
                   {{"budget-scatter", doubt.scatter_u_kg}, {"budget-display-step", doubt.normal_u_kg}});
}

void sumUp(ProofResult& result) {
  bool holds = true;
  result.verdict = Verdict::Undecided;
  result.probability_of_conformity = 1.0;
  bool fails = false;
  for (const std::vector<Judgement>* list : {&result.masses, &result.trucks, &result.loader_on_scale}) {
    for (const Judgement& judgement : *list) {
      fails = fails || judgement.verdict == Verdict::DoesNotHold;
      holds = holds && judgement.verdict == Verdict::Holds;
      result.probability_of_conformity =
          std::min(result.probability_of_conformity, judgement.probability_of_conformity);
    }
  }
  if (fails) {
    result.verdict = Verdict::DoesNotHold;
  } else if (holds) {
    result.verdict = Verdict::Holds;
  }
}

/// Each mass and truck has been read at least once.
Expected<void> checkIndications(const Proof& proof) {
  const auto check = [](const auto& items, std::string_view key, const auto& isEmpty) -> Expected<void> {
    const auto empty = std::ranges::find_if(items, isEmpty);
    if (empty == items.end()) return {};
    return fail(ErrorKind::Insufficient, "indications-empty", {},
                {.pointer = "/" + std::string(key) + "/" + std::to_string(empty - items.begin())});
  };
  const auto without = [](const auto& item) { return item.indications.empty(); };
  if (const Expected<void> masses = check(proof.masses, "masses", without); !masses) return masses;
  if (const Expected<void> trucks = check(proof.trucks, "trucks", without); !trucks) return trucks;
  return check(proof.loader_on_scale, "loader_on_scale",
               [](const LoaderOnScale& loader) { return loader.buckets.empty(); });
}

template <class Item, class Judge>
Expected<void> judgeAll(const Context& context, const std::vector<Item>& items, std::string_view key,
                        Judge judge, std::vector<Judgement>& judgements) {
  for (std::size_t i = 0; i < items.size(); ++i) {
    Expected<Judgement> judgement =
        judge(context, items[i], "/" + std::string(key) + "/" + std::to_string(i));
    if (!judgement) return std::unexpected(std::move(judgement.error()));
    judgements.push_back(*std::move(judgement));
  }
  return {};
}

}  // namespace

double Finding::coverageFactor() const {
  const double u_kg = standardUncertainty();
  return u_kg > 0.0 ? expanded_uncertainty_kg / u_kg : 0.0;
}

std::string codeOf(Verdict verdict) {
  switch (verdict) {
    case Verdict::Holds:
      return "proof-holds";
    case Verdict::DoesNotHold:
      return "proof-does-not-hold";
    case Verdict::Undecided:
      break;
  }
  return "proof-undecided";
}

std::string codeOf(When when) { return when == When::AsFound ? "proof-as-found" : "proof-as-left"; }

Message sayMore(const Judgement& judgement) {
  if (!judgement.readings_to_decide) return {"proof-more-readings-do-not-decide", {}};
  return {"proof-more-readings",
          {{"count", Amount{static_cast<double>(*judgement.readings_to_decide), "1"}},
           {"more", Amount{static_cast<double>(*judgement.readings_to_decide - judgement.count), "1"}}}};
}

Message sayPlan(const PlanResult& plan) {
  const Amount smallest = kilograms(plan.smallest_error_shown_kg);
  if (!plan.buckets) return {"proof-plan-never-decides", {{"smallest", smallest}}};
  // Weighed in the loader, as the check of a procedure says it.
  if (!plan.trucks)
    return {"check-proof-plan",
            {{"buckets", Amount{static_cast<double>(*plan.buckets), "1"}}, {"smallest", smallest}}};
  return {"proof-plan",
          {{"buckets", Amount{static_cast<double>(*plan.buckets), "1"}},
           {"trucks", Amount{static_cast<double>(*plan.trucks), "1"}},
           {"smallest", smallest}}};
}

Mass stepOf(const std::vector<Mass>& indications, Mass unit, Mass most) {
  const auto fits = [&](double step) {
    return std::ranges::all_of(indications, [&](Mass indication) {
      const double steps = indication / unit / step;
      return std::abs(steps - std::round(steps)) <= 1e-6;
    });
  };
  for (int power = 6; power >= -3; --power) {
    for (const double digit : {5.0, 2.0, 1.0}) {
      const double step = digit * std::pow(10.0, power);
      if (step * unit <= most && fits(step)) return step * unit;
    }
  }
  return Mass();
}

Expected<ProofResult> prove(const Proof& proof) {
  ProofResult result;
  if (const Expected<void> complete = checkIndications(proof); !complete)
    return std::unexpected(complete.error());
  std::vector<Mass> all = proof.zero_indications;
  std::vector<Series> series;
  for (const KnownMass& mass : proof.masses) {
    all.insert(all.end(), mass.indications.begin(), mass.indications.end());
    series.push_back(seriesOf(mass.indications));
  }
  for (const TruckLoad& truck : proof.trucks)
    all.insert(all.end(), truck.indications.begin(), truck.indications.end());
  for (const LoaderOnScale& loader : proof.loader_on_scale) {
    for (const LoaderOnScale::Bucket& bucket : loader.buckets) all.push_back(bucket.indication);
  }
  const bool has_judged = !proof.masses.empty() || !proof.trucks.empty() || !proof.loader_on_scale.empty();
  if (!has_judged && !proof.plan) return fail(ErrorKind::Insufficient, "proof-without-readings");

  const auto* const percent = std::get_if<PercentLimit>(&proof.tolerance);
  if (percent && percent->of == Of::Rated && !proof.rated_payload)
    return fail(ErrorKind::InvalidInput, "rated-payload-missing");

  Mass largest = proof.rated_payload.value_or(Mass());
  if (!proof.rated_payload) {
    for (const Mass indication : all) largest = std::max(largest, indication);
  }
  // No scale counts in more than a hundredth of what it weighs up to (OIML R 76-1:2006 Table 3).
  result.display_step_kg =
      proof.display_step.value_or(stepOf(all, proof.display_unit, largest / 100.0)).inKilograms();
  if (!proof.display_step && !all.empty()) {
    result.warnings.push_back({"display-step-taken", {{"step", kilograms(result.display_step_kg, 2)}}});
  }
  const Context context{proof, result.display_step_kg, pooled(series)};
  for (const Expected<void>& judged : {judgeAll(context, proof.masses, "masses", judgeMass, result.masses),
                                       judgeAll(context, proof.trucks, "trucks", judgeTruck, result.trucks),
                                       judgeAll(context, proof.loader_on_scale, "loader_on_scale",
                                                judgeLoaderOnScale, result.loader_on_scale)}) {
    if (!judged) return std::unexpected(judged.error());
  }
  if (proof.trucks.size() > 1) {
    const Expected<Judgement> together = judgeTrucks(context, proof.trucks, "/trucks");
    if (!together) return std::unexpected(together.error());
    result.trucks_together = *together;
  }
  if (has_judged) sumUp(result);
  if (std::ranges::any_of(proof.masses, [](const KnownMass& mass) { return !mass.reference_u; })) {
    result.warnings.push_back({"reference-u-taken", {}});
  }
  result.correction = correctionOf(levelsOf(context, result));
  if (result.correction && !result.correction->straight) {
    result.warnings.push_back({"correction-not-straight",
                               {{"residual", kilograms(std::abs(result.correction->largest_residual_kg))},
                                {"load", kilograms(result.correction->largest_residual_at_kg, 0)}}});
  }
  compareSeries(proof, result);
  result.zero_return = zeroReturn(context);
  if (proof.costs) result.cost = costOf(*proof.costs, result, context.of_masses.sd_kg);
  if (proof.plan) {
    const Expected<PlanResult> planned =
        planFor(*proof.plan, proof, {context.of_masses.sd_kg, context.of_masses.degrees_of_freedom});
    if (!planned) return std::unexpected(planned.error());
    result.plan = *planned;
  }
  return result;
}

std::vector<Change> changesBetween(const ProofResult& found, const ProofResult& left) {
  std::vector<Change> changes;
  for (const Judgement& before : found.masses) {
    for (const Judgement& after : left.masses) {
      if (before.scatter_known && after.scatter_known &&
          isSameMass(Mass::fromKilograms(before.reference_kg), Mass::fromKilograms(after.reference_kg))) {
        changes.push_back({before.reference_kg, difference(before, after)});
        break;
      }
    }
  }
  return changes;
}

}  // namespace hingepin::proof
