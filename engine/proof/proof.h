// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/base/error.h"
#include "engine/base/named.h"
#include "engine/proof/doubt.h"
#include "engine/proof/tolerance.h"
#include "engine/statistics/uncertainty.h"
#include "engine/units/quantity.h"

namespace hingepin::proof {

enum class When { AsFound, AsLeft };
inline constexpr std::array kWhenNames = {Named{"as-found", When::AsFound}, Named{"as-left", When::AsLeft}};

enum class Approach { Up, Down };  ///< from a smaller or a larger load
inline constexpr std::array kApproachNames = {Named{"up", Approach::Up}, Named{"down", Approach::Down}};

enum class ProofPace { Slow, Fast };
inline constexpr std::array kPaceNames = {Named{"slow", ProofPace::Slow}, Named{"fast", ProofPace::Fast}};

/// One known mass and what the scale showed for it, time after time.
struct KnownMass {
  Mass reference;
  std::optional<Mass> reference_u;  ///< standard; absent: 0.1 % of the reference
  std::optional<ProofPace> pace;
  std::optional<Approach> approach;
  std::vector<Mass> indications;
};

/// What is known of a truck scale and of how it was used. Empty texts and absent values are not known.
struct TruckScale {
  Mass interval;              ///< what its last digit counts in
  std::optional<Mass> net_u;  ///< standard uncertainty of a net from its certificate, its rounding apart
  std::string certificate;
  std::string certificate_expires;  ///< "2026-11-30"
  std::string gross_ticket;
  std::string tare_ticket;
  std::string gross_time;  ///< "2026-05-04T10:15"; compared with each other and with the expiry as texts
  std::string tare_time;
  std::optional<bool> zeroed;            ///< it showed zero before each weighing
  std::optional<bool> whole_on_deck;     ///< the whole vehicle stood on the deck, free of its ends
  std::optional<bool> same_driver_fuel;  ///< the same people and about the same fuel on it both times
  std::optional<Mass> legal_gross;       ///< what the vehicle may weigh on the road
};

/// N buckets into a truck, their sum against its net.
struct TruckLoad {
  Mass gross;
  Mass tare;
  TruckScale scale;
  std::vector<Mass> indications;  ///< one a bucket
};

/// The loader itself on a truck scale: once empty, then with each bucket.
struct LoaderOnScale {
  Mass empty;
  TruckScale scale;
  struct Bucket {
    Mass loaded;  ///< loader and load
    Mass indication;
  };
  std::vector<Bucket> buckets;
};

enum class Rule { Simple, Guarded };
inline constexpr std::array kRuleNames = {Named{"simple", Rule::Simple}, Named{"guarded", Rule::Guarded}};

/// What is thought of a scale's error before it is proved: normal.
struct Prior {
  Mass mean;
  Mass u;  ///< > 0
};

struct Decision {
  Rule rule = Rule::Simple;
  double confidence = 0.95;      ///< within [0.5, 1): the guarded rule's
  std::optional<Prior> prior{};  ///< absent: flat
};

/// By what the proofs of a unit are judged, where it says so.
struct Terms {
  std::optional<Tolerance> tolerance{};
  Decision decision{};
};

/// The user's own figures for what an error costs.
struct Costs {
  Mass per_day;                           ///< mass loaded and sold by this scale a day
  std::optional<double> price_per_tonne;  ///< in `currency`
  std::string currency;
  std::optional<double> trucks_per_day;
  std::optional<Mass> truck_target;  ///< net that the loader fills a truck to, by its own scale
  std::optional<Mass> truck_legal;   ///< net that the truck may carry
  std::optional<int> buckets_per_truck;
};

/// A proof against a truck scale that is still to be made: how many buckets it will take.
struct Plan {
  Mass bucket;                          ///< what one bucket holds
  bool loader_on_scale = false;         ///< each bucket is weighed in the loader; else they fill trucks
  int buckets = 1;                      ///< >= 1: that fill a truck, or that are meant to be weighed
  std::optional<Mass> repeatability{};  ///< standard deviation of one weighing; absent: of the masses
  Mass scale_interval{};
  std::optional<Mass> scale_net_u{};  ///< as TruckScale::net_u
  std::optional<Mass> error{};        ///< of one bucket, that the decision is to be made for; absent: 0
  double rate = 0.9;                  ///< how often it is to be decided
};

/// Everything that was read for one proof of one unit.
struct Proof {
  std::string unit;
  std::optional<Mass> rated_payload;  ///< needed for shares of it
  std::optional<When> when;
  Tolerance tolerance;
  Decision decision;
  std::optional<Mass> display_step;  ///< of the machine's monitor; absent: told from the indications
  Mass display_unit = Mass::fromKilograms(1);  ///< one of the unit that the indications were typed in
  std::vector<Mass> zero_indications;
  std::vector<KnownMass> masses;
  std::vector<TruckLoad> trucks;
  std::vector<LoaderOnScale> loader_on_scale;
  std::optional<Costs> costs;
  std::optional<Plan> plan;
};

enum class Verdict { Holds, DoesNotHold, Undecided };
inline constexpr std::array kVerdictNames = {Named{"holds", Verdict::Holds},
                                             Named{"does-not-hold", Verdict::DoesNotHold},
                                             Named{"undecided", Verdict::Undecided}};

[[nodiscard]] inline std::string_view nameOf(Verdict verdict) { return nameIn(kVerdictNames, verdict); }
/// The code of its words.
[[nodiscard]] std::string codeOf(Verdict verdict);
[[nodiscard]] std::string codeOf(When when);

/// What a proof says of an error (or of a difference of errors): estimate and coverage interval.
struct Finding {
  double value_kg = 0.0;
  Doubt doubt{};
  double expanded_uncertainty_kg = 0.0;            ///< for 95.45 % coverage
  std::vector<statistics::Contribution> budget{};  ///< kg; names are message codes

  [[nodiscard]] double standardUncertainty() const { return doubt.standardUncertainty(); }
  /// Expanded over standard uncertainty; 0 where there is neither.
  [[nodiscard]] double coverageFactor() const;
};

/// One mass, truck or series on a truck scale, judged.
struct Judgement {
  double reference_kg = 0.0;    ///< of a truck its net, of a loader on a scale the mean net of a bucket
  double reference_u_kg = 0.0;  ///< standard, all of the reference's
  int count = 0;                ///< indications
  double indication_kg = 0.0;   ///< their mean; of a truck their sum
  Finding error{};              ///< indication less reference
  std::optional<double>
      repeatability_kg{};  ///< sample standard deviation of one indication; absent: not known
  double limit_kg = 0.0;
  double probability_of_conformity = 0.0;
  /// Chance that the verdict is wrong: of Holds the consumer's (it does not hold), of DoesNotHold the
  /// producer's (it holds); of Undecided 0.
  double risk = 0.0;
  Verdict verdict = Verdict::Undecided;
  /// How many readings in all would decide, should error and scatter stay as they are; absent: decided, or
  /// no number would, because the doubt of the reference alone is too large.
  std::optional<int> readings_to_decide{};
  bool scatter_known = false;  ///< without it the uncertainty is of the rest only
  /// Where a prior is given: both risks of this way of deciding, before anything was read (JCGM 106 9.5).
  std::optional<Risks> risks_before{};
  std::vector<Message> warnings{};
};

/// What two series of one mass say against each other.
struct Comparison {
  std::size_t first;  ///< indices into `Proof::masses`
  std::size_t second;
  Finding difference;  ///< of the errors, second less first; the reference is the same, so its doubt is out
};

/// corrected = (indication - zero) x span_factor. A straight line through all levels, errors in both
/// coordinates (ISO/TS 28037:2010 clause 7).
struct Correction {
  double span_factor = 1.0;
  double span_factor_u = 0.0;  ///< standard
  double zero_kg = 0.0;
  double zero_u_kg = 0.0;      ///< standard
  double covariance_kg = 0.0;  ///< of span factor and zero
  int levels = 0;
  double largest_residual_kg =
      0.0;  ///< linearity: the mean indication that is farthest from the line, less it
  double largest_residual_at_kg = 0.0;  ///< its reference
  bool straight = true;  ///< whether the levels lie on the line to within their uncertainty (1 % of chance)
};

/// What the error was costing, on the user's own figures. Positive: shown less than there was.
struct Cost {
  double given_away_t_per_day = 0.0;
  double given_away_u_t_per_day = 0.0;  ///< standard
  std::optional<double> money_per_day;
  std::optional<double> overload_kg_per_truck;  ///< mean true net of a truck less the legal one
  std::optional<double> trucks_over_per_day;
};

/// How many buckets decide, said beforehand.
struct PlanResult {
  std::optional<int> buckets;            ///< absent: no number does
  std::optional<int> trucks;             ///< absent too where the loader itself is weighed
  double smallest_error_shown_kg = 0.0;  ///< of one bucket, by as many buckets as `Plan::buckets`
};

/// What all of it comes to.
struct ProofResult {
  double display_step_kg = 0.0;
  std::vector<Judgement> masses;  ///< in the order of the proof
  std::vector<Judgement> trucks;
  std::vector<Judgement> loader_on_scale;
  /// All trucks as one, where there are several: errors, limits and nets added up. Decides sooner; the
  /// verdict below goes by each truck alone.
  std::optional<Judgement> trucks_together;
  Verdict verdict = Verdict::Undecided;
  double probability_of_conformity = 0.0;         ///< the lowest
  std::expected<Correction, Message> correction;  ///< or why the readings can't give one
  std::vector<Comparison> hysteresis;             ///< down less up
  std::vector<Comparison> pace;                   ///< fast less slow
  std::optional<Finding> zero_return;             ///< last zero indication less the first
  std::optional<Cost> cost;
  std::optional<PlanResult> plan;
  std::vector<Message> warnings;
};

/// Judges a proof.
/// Errors: Insufficient "proof-without-readings", "indications-empty", and those of `limitAt` and `planFor`,
/// with `place.pointer` into the proof ("/masses/1"); InvalidInput "rated-payload-missing".
[[nodiscard]] Expected<ProofResult> prove(const Proof& proof);

/// The largest step of 1, 2 or 5 times a power of ten of `unit` that all indications are multiples of; at
/// most `most`, 0 where there is none.
[[nodiscard]] Mass stepOf(const std::vector<Mass>& indications, Mass unit, Mass most);

/// Of what is not decided: how many readings would, or that none would.
[[nodiscard]] Message sayMore(const Judgement& judgement);
/// How many buckets it takes, and what those of one truck can show.
[[nodiscard]] Message sayPlan(const PlanResult& plan);

/// What changed between two proofs, as found and as left: error of the same reference mass, after less
/// before.
struct Change {
  double reference_kg = 0.0;
  Finding difference;
};
[[nodiscard]] std::vector<Change> changesBetween(const ProofResult& found, const ProofResult& left);

}  // namespace hingepin::proof
