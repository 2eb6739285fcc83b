// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/survey/target.h"
#include "engine/units/ucum.h"

/// Procedures as data. What each field means stands in README.md beside this file.
namespace hingepin::procedures {

enum class SignalWord { Danger, Warning, Caution, Notice };
enum class Hazard { RaisedBoom, MovingLinkage, StoredPressure, Overhead, PeopleNear, HotOil };
enum class StepKind {
  Caution,
  Confirm,
  Monitor,
  Reading,
  Hold,
  Pose,
  Pass,
  Check,
  Evidence,
  Note,
  Sign,
};
enum class CheckKind {
  WithinLimits,
  AtLeast,
  SteadyFor,
  PoseReached,
  FitResidual,
  Repeatability,
  Agreement,
  SecondPerson,
  NotOlderThan,
  Proof,
  TruckProof,
  LoaderProof,
  Plan,
  Survey,
};
enum class Source { Machine, Independent };
enum class Use { Unsaid, Record, Calibration };
enum class BoomPlace { Any, Lowest, Highest, Level, Carry, Ground };
enum class BucketPlace { Any, RackedBack, Level, Dumped };
enum class Approach { Either, FromBelow, FromAbove };
enum class Direction { Up, Down };
enum class Pace { Slow, Fast, Own };
enum class Load { Empty, TestMass, Any };
enum class LogNeed { None, Wanted, Required };
enum class Fit { BoomAngle, BucketAngle, LiftPressure };
enum class EvidenceKind { Photo, File };
enum class Absence { Absent, Refused };
enum class FailureAction { Repeat, GoBack, ReadAgain, More, GoOn, Stop };

/// A quantity as it stands in the file, or the id of an entry of the unit. One of the two is empty.
struct Limit {
  std::string text{};
  std::string entry{};
};

struct Limits {
  std::optional<Limit> low{};
  std::optional<Limit> high{};
};

struct Caution {
  std::string id{};
  SignalWord signal = SignalWord::Danger;
  std::vector<Hazard> covers{};
  std::string hazard{};
  std::string consequence{};
  std::string avoidance{};
};

struct Variant {
  std::string id{};
  std::string text{};
};

/// A value that the unit hands in. Without a default it must be given, in any unit of the dimension of
/// `unit`.
struct Entry {
  std::string id{};
  std::string standard{};  ///< the default, or ""
  std::string unit{};      ///< a UCUM code where there is no default
};

struct Prerequisite {
  std::string procedure{};
  std::string not_older_than{};
};

struct OnFailure {
  FailureAction action = FailureAction::Stop;
  std::string to{};
  std::optional<int> at_most{};
  bool goes_on_then = false;  ///< once `at_most` is used up; else it stops
  std::string mark{};
};

struct Repeat {
  std::string from{};
  int times = 1;
};

/// What a reading may be given in besides its own unit, in another dimension of its quantity.
struct OtherUnit {
  std::string unit{};
  Limits plausible{};
};

struct Expiry {
  std::string after{};
  std::string from{};  ///< "": read again on the spot
};

struct Answer {
  std::string id{};
  std::string text{};
  bool passes = false;
};

/// What a proof may be told of the truck scale, and the kind of step that tells it.
struct ScaleStep {
  std::string_view key;
  StepKind kind;
};
inline constexpr std::array kScaleSteps = {
    ScaleStep{"zeroed", StepKind::Confirm},           ScaleStep{"whole_on_deck", StepKind::Confirm},
    ScaleStep{"same_driver_fuel", StepKind::Confirm}, ScaleStep{"gross_ticket", StepKind::Note},
    ScaleStep{"tare_ticket", StepKind::Note},         ScaleStep{"certificate", StepKind::Note},
    ScaleStep{"certificate_expires", StepKind::Note}};

struct Check {
  CheckKind kind = CheckKind::WithinLimits;
  std::vector<std::string> of{};
  std::optional<Limit> low{};
  std::optional<Limit> high{};
  std::optional<Limit> value{};
  std::optional<Limit> target{};
  std::optional<Limit> within{};
  std::optional<Limit> at_most{};
  std::optional<Limit> reference_entry{};
  std::string reference{};      ///< a step
  std::string gross{}, tare{};  ///< steps of a truck or loader proof
  /// Steps that tell of the truck scale and its use, by kScaleSteps.
  std::map<std::string, std::string, std::less<>> scale{};
  std::optional<Limit> interval{};     ///< of the truck scale
  std::optional<Limit> legal_gross{};  ///< what a truck may weigh on the road
  std::optional<Limit> tape_u{};       ///< standard uncertainties of what a survey measured
  std::optional<Limit> inclinometer_u{};
  std::string duration{};  ///< `for` or `age`
  Fit fit = Fit::BoomAngle;
  int count = 0;
  bool loader_on_scale = false;  ///< of a plan: each bucket is weighed in the loader
};

/// One step. Fields of another kind stay empty.
struct Step {
  std::string id{};
  StepKind kind = StepKind::Confirm;
  std::string pointer{};  ///< JSON Pointer in the file
  std::string text{};
  std::string detail{};
  std::vector<std::string> only{};
  std::vector<std::string> roles{};
  std::vector<std::string> cites{};
  bool moves = false;  ///< of a pose and a pass always
  std::string zone_clear{};
  bool near = false;
  std::vector<Hazard> opens{};
  std::vector<Hazard> closes{};
  std::optional<Repeat> repeat{};
  std::optional<OnFailure> on_failure{};

  std::string caution{};
  bool second_person = false;
  std::vector<Answer> answers{};
  std::string quantity{};
  std::string unit{};
  Source source = Source::Machine;
  Limits plausible{};
  std::vector<OtherUnit> others{};
  std::optional<Limits> accept{};
  std::optional<Expiry> expires{};
  std::optional<survey::Target> survey{};  ///< what it measures of the linkage, without a pose
  Use use = Use::Unsaid;
  std::string duration{};  ///< `for` of a hold, `steady_for` of a pose
  BoomPlace boom = BoomPlace::Any;
  BucketPlace bucket = BucketPlace::Any;
  Approach approach = Approach::Either;
  std::optional<Limit> boom_angle{};
  std::optional<Limit> within{};
  Direction direction = Direction::Up;
  Pace pace = Pace::Slow;
  Load load = Load::Empty;
  LogNeed log = LogNeed::None;
  std::optional<Check> check{};
  std::optional<OnFailure> undecided{};  ///< of a proof whose readings do not decide yet
  EvidenceKind evidence = EvidenceKind::Photo;
  bool optional = false;
  bool on_glass = false;
  std::vector<Absence> may_be{};
};

struct Procedure {
  std::string id{};
  std::int64_t version = 0;
  std::string title{};
  std::string comes_first{};
  std::vector<std::string> run_roles{};
  std::vector<std::string> confirm_roles{};
  std::vector<Variant> variants{};
  std::vector<Entry> entries{};
  std::vector<std::string> tools{};
  std::vector<Prerequisite> prerequisites{};
  std::vector<Caution> cautions{};
  std::optional<OnFailure> on_failure{};
  std::vector<Step> steps{};
  std::vector<Step> make_safe{};
  std::string tag{};
};

/// Reads a procedure file strictly; what stands in it need not make sense yet (see lint.h).
/// Errors: InvalidInput with line, column and JSON Pointer: those of readJson and JsonNode, and
/// "format-unknown", "id-malformed", "word-unknown", "count-out-of-range".
[[nodiscard]] Expected<Procedure> readProcedure(std::string text, std::string file);

/// Whether this is a role that a procedure may name.
[[nodiscard]] bool isRole(std::string_view name);

/// The dimensions of the units that a quantity may be read in; empty for a quantity that nobody knows.
[[nodiscard]] std::span<const Dimension> dimensionsOf(std::string_view quantity);

/// The names that stand in files and journals.
[[nodiscard]] std::string_view nameOf(SignalWord signal);
[[nodiscard]] std::string_view nameOf(Hazard hazard);
[[nodiscard]] std::string_view nameOf(StepKind kind);
[[nodiscard]] std::string_view nameOf(CheckKind kind);
[[nodiscard]] std::string_view nameOf(Absence absence);

/// Whether a variant has a step. `variant` is "" for a procedure without variants.
[[nodiscard]] bool hasStep(std::string_view variant, const Step& step);

/// What a failed step leads to: its own words, else those of the procedure.
[[nodiscard]] const std::optional<OnFailure>& failureOf(const Procedure& procedure, const Step& step);

/// Whether a step can be answered in a way that fails it.
[[nodiscard]] bool canFail(const Step& step);

using TextCodes = std::set<std::string, std::less<>>;

/// Whether a check is judged from outside of the procedures (Judge): a proof by the tolerance of the unit, a
/// survey by the linkage that it gives.
[[nodiscard]] bool isJudged(CheckKind kind);

/// The steps that a check takes for something known: its reference, or gross and tare.
[[nodiscard]] std::vector<std::string> knownOf(const Check& check);

/// Every text code that stands in a procedure.
[[nodiscard]] TextCodes textCodesOf(const Procedure& procedure);

/// The caution or step of an id, or nullptr.
[[nodiscard]] const Caution* findCaution(const Procedure& procedure, std::string_view id);
[[nodiscard]] const Step* findStep(std::span<const Step> steps, std::string_view id);
/// Among the steps, else among those that make safe.
[[nodiscard]] const Step* findStep(const Procedure& procedure, std::string_view id);

}  // namespace hingepin::procedures
