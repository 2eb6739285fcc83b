// SPDX-License-Identifier: Apache-2.0
#include "engine/procedures/procedure.h"

#include <algorithm>
#include <array>
#include <initializer_list>
#include <utility>

#include "engine/base/json_walk.h"

namespace hingepin::procedures {
namespace {

constexpr std::array kSignals = {Named{"danger", SignalWord::Danger}, Named{"warning", SignalWord::Warning},
                                 Named{"caution", SignalWord::Caution}, Named{"notice", SignalWord::Notice}};
constexpr std::array kHazards = {
    Named{"raised-boom", Hazard::RaisedBoom},         Named{"moving-linkage", Hazard::MovingLinkage},
    Named{"stored-pressure", Hazard::StoredPressure}, Named{"overhead", Hazard::Overhead},
    Named{"people-near", Hazard::PeopleNear},         Named{"hot-oil", Hazard::HotOil}};
constexpr std::array kStepKinds = {Named{"caution", StepKind::Caution},   Named{"confirm", StepKind::Confirm},
                                   Named{"monitor", StepKind::Monitor},   Named{"reading", StepKind::Reading},
                                   Named{"hold", StepKind::Hold},         Named{"pose", StepKind::Pose},
                                   Named{"pass", StepKind::Pass},         Named{"check", StepKind::Check},
                                   Named{"evidence", StepKind::Evidence}, Named{"note", StepKind::Note},
                                   Named{"sign", StepKind::Sign}};
constexpr std::array kCheckKinds = {Named{"within-limits", CheckKind::WithinLimits},
                                    Named{"at-least", CheckKind::AtLeast},
                                    Named{"steady-for", CheckKind::SteadyFor},
                                    Named{"pose-reached", CheckKind::PoseReached},
                                    Named{"fit-residual", CheckKind::FitResidual},
                                    Named{"repeatability", CheckKind::Repeatability},
                                    Named{"agreement-of-two-readings", CheckKind::Agreement},
                                    Named{"confirmed-by-second-person", CheckKind::SecondPerson},
                                    Named{"not-older-than", CheckKind::NotOlderThan},
                                    Named{"proof", CheckKind::Proof},
                                    Named{"truck-proof", CheckKind::TruckProof},
                                    Named{"loader-proof", CheckKind::LoaderProof},
                                    Named{"proof-plan", CheckKind::Plan},
                                    Named{"linkage-survey", CheckKind::Survey}};
constexpr std::array kFailureActions = {
    Named{"repeat", FailureAction::Repeat},        Named{"go-back", FailureAction::GoBack},
    Named{"read-again", FailureAction::ReadAgain}, Named{"more", FailureAction::More},
    Named{"go-on", FailureAction::GoOn},           Named{"stop", FailureAction::Stop}};
constexpr std::array kSources = {Named{"machine", Source::Machine},
                                 Named{"independent", Source::Independent}};

enum class Role { Technician, Operator, Supervisor, SafetyLead, YardClerk, Customer };
enum class By { SecondPerson };
constexpr std::array kRoles = {Named{"technician", Role::Technician}, Named{"operator", Role::Operator},
                               Named{"supervisor", Role::Supervisor}, Named{"safety-lead", Role::SafetyLead},
                               Named{"yard-clerk", Role::YardClerk},  Named{"customer", Role::Customer}};
constexpr std::array kBy = {Named{"second-person", By::SecondPerson}};
constexpr std::array kThen = {Named{"stop", FailureAction::Stop}, Named{"go-on", FailureAction::GoOn}};
constexpr std::array kUses = {Named{"record", Use::Record}, Named{"calibration", Use::Calibration}};
constexpr std::array kBoomPlaces = {Named{"lowest", BoomPlace::Lowest}, Named{"highest", BoomPlace::Highest},
                                    Named{"level", BoomPlace::Level},   Named{"carry", BoomPlace::Carry},
                                    Named{"ground", BoomPlace::Ground}, Named{"any", BoomPlace::Any}};
constexpr std::array kBucketPlaces = {Named{"racked-back", BucketPlace::RackedBack},
                                      Named{"level", BucketPlace::Level},
                                      Named{"dumped", BucketPlace::Dumped}, Named{"any", BucketPlace::Any}};
constexpr std::array kApproaches = {Named{"either", Approach::Either},
                                    Named{"from-below", Approach::FromBelow},
                                    Named{"from-above", Approach::FromAbove}};
constexpr std::array kDirections = {Named{"up", Direction::Up}, Named{"down", Direction::Down}};
constexpr std::array kPaces = {Named{"slow", Pace::Slow}, Named{"fast", Pace::Fast}, Named{"own", Pace::Own}};
constexpr std::array kLoads = {Named{"empty", Load::Empty}, Named{"test-mass", Load::TestMass},
                               Named{"any", Load::Any}};
constexpr std::array kLogNeeds = {Named{"none", LogNeed::None}, Named{"wanted", LogNeed::Wanted},
                                  Named{"required", LogNeed::Required}};
constexpr std::array kFits = {Named{"boom-angle", Fit::BoomAngle}, Named{"bucket-angle", Fit::BucketAngle},
                              Named{"lift-pressure", Fit::LiftPressure}};
constexpr std::array kEvidenceKinds = {Named{"photo", EvidenceKind::Photo},
                                       Named{"file", EvidenceKind::File}};
constexpr std::array kAbsences = {Named{"absent", Absence::Absent}, Named{"refused", Absence::Refused}};

constexpr std::array kAngle = {Dimension::Angle};
constexpr std::array kPressure = {Dimension::Pressure};
constexpr std::array kTemperature = {Dimension::Temperature};
constexpr std::array kMass = {Dimension::Mass};
constexpr std::array kLength = {Dimension::Length};
constexpr std::array kFrequency = {Dimension::Frequency};
constexpr std::array kTime = {Dimension::Time};
constexpr std::array kNumber = {Dimension::Number};
constexpr std::array kSensor = {Dimension::Voltage, Dimension::Current, Dimension::Number, Dimension::Angle};

using Dimensions = std::span<const Dimension>;
const std::array<Named<Dimensions>, 22> kQuantities = {{{"boom-angle", kAngle},
                                                        {"bucket-angle", kAngle},
                                                        {"pitch", kAngle},
                                                        {"angle", kAngle},
                                                        {"boom-sensor", kSensor},
                                                        {"bucket-sensor", kSensor},
                                                        {"head-pressure", kPressure},
                                                        {"rod-pressure", kPressure},
                                                        {"tyre-pressure", kPressure},
                                                        {"pressure", kPressure},
                                                        {"oil-temperature", kTemperature},
                                                        {"temperature", kTemperature},
                                                        {"reference-mass", kMass},
                                                        {"indication", kMass},
                                                        {"edge-height", kLength},
                                                        {"length", kLength},
                                                        {"engine-speed", kFrequency},
                                                        {"duration", kTime},
                                                        {"operating-hours", kTime},
                                                        {"fuel-level", kNumber},
                                                        {"share", kNumber},
                                                        {"count", kNumber}}};

constexpr std::size_t kLongestId = 80;

bool isKebab(std::string_view id) {
  if (id.empty() || id.size() > kLongestId || id.front() == '-' || id.back() == '-') return false;
  if (id.find("--") != std::string_view::npos) return false;
  return std::ranges::all_of(id, [](char character) {
    return character == '-' || (character >= 'a' && character <= 'z') ||
           (character >= '0' && character <= '9');
  });
}

using Keys = std::vector<std::string_view>;

class Reader : public JsonWalk {
 public:
  Procedure read(const JsonDocument& document);

 private:
  template <class Read>
  auto list(const JsonNode& node, std::size_t least, Read read) -> std::vector<decltype(read(node))> {
    std::vector<decltype(read(node))> items;
    for (const JsonNode& element : taken(node.elements())) items.push_back(read(element));
    if (items.size() < least && node.value().kind == JsonKind::Array) {
      keep(node.error("list-too-short", {{"least", Amount{static_cast<double>(least), "1"}}}));
    }
    return items;
  }

  std::string id(const JsonNode& node) {
    std::string text = taken(node.string());
    if (node.value().kind == JsonKind::String && !isKebab(text)) keep(node.error("id-malformed"));
    return text;
  }
  /// A list in which nothing stands twice.
  template <class Read>
  auto distinct(const JsonNode& node, std::size_t least, Read read) -> std::vector<decltype(read(node))> {
    auto items = list(node, least, read);
    auto sorted = items;
    std::ranges::sort(sorted);
    if (std::ranges::adjacent_find(sorted) != sorted.end()) keep(node.error("list-repeats-itself"));
    return items;
  }
  std::vector<std::string> ids(const JsonNode& node, std::size_t least) {
    return distinct(node, least, [&](const JsonNode& element) { return id(element); });
  }
  std::string requiredId(const JsonNode& parent, std::string_view key) {
    return required(parent, key, [&](const JsonNode& node) { return id(node); });
  }
  std::string optionalId(const JsonNode& parent, std::string_view key) {
    return orEmpty(parent, key, [&](const JsonNode& node) { return id(node); });
  }
  std::string requiredText(const JsonNode& parent, std::string_view key) {
    return required(parent, key, [&](const JsonNode& node) { return taken(node.name()); });
  }
  std::string optionalText(const JsonNode& parent, std::string_view key) {
    return orEmpty(parent, key, [&](const JsonNode& node) { return taken(node.name()); });
  }
  std::vector<Hazard> hazards(const JsonNode& node, std::size_t least) {
    return distinct(node, least, [&](const JsonNode& element) { return named(element, kHazards); });
  }

  Limit limit(const JsonNode& node) {
    if (node.value().kind == JsonKind::Object) {
      object(node, {"entry"});
      return {.entry = requiredId(node, "entry")};
    }
    return {.text = taken(node.name())};
  }
  std::optional<Limit> requiredLimit(const JsonNode& parent, std::string_view key) {
    return required(parent, key, [&](const JsonNode& node) { return std::optional(limit(node)); });
  }
  std::optional<Limit> optionalLimit(const JsonNode& parent, std::string_view key) {
    return optional(parent, key, [&](const JsonNode& node) { return limit(node); });
  }
  Limits acceptLimits(const JsonNode& node) {
    if (!object(node, {"low", "high"})) return {};
    Limits limits{.low = optionalLimit(node, "low"), .high = optionalLimit(node, "high")};
    if (!limits.low && !limits.high) keep(node.error("limit-missing"));
    return limits;
  }
  Limits bothLimits(const JsonNode& node) {
    if (!object(node, {"low", "high"})) return {};
    return {.low = requiredLimit(node, "low"), .high = requiredLimit(node, "high")};
  }

  OnFailure onFailure(const JsonNode& node);
  Check check(const JsonNode& node);
  Caution caution(const JsonNode& node);
  Entry entry(const JsonNode& node);
  Step step(const JsonNode& node);
  void stepOfKind(const JsonNode& node, Step& step);
  void movement(const JsonNode& node, Step& step) {
    step.moves = flag(node, "moves");
    step.zone_clear = optionalId(node, "zone_clear");
  }
  std::vector<Step> steps(const JsonNode& node) {
    return list(node, 0, [&](const JsonNode& element) { return step(element); });
  }
};

OnFailure Reader::onFailure(const JsonNode& node) {
  if (node.value().kind != JsonKind::Object) {
    keep(node.wrongKind("an object"));
    return {};
  }
  OnFailure failure{.action = requiredNamed(node, "do", kFailureActions)};
  switch (failure.action) {
    case FailureAction::Stop:
      object(node, {"do"});
      return failure;
    case FailureAction::GoOn:
      object(node, {"do", "mark"});
      failure.mark = requiredId(node, "mark");
      return failure;
    case FailureAction::GoBack:
    case FailureAction::More:
      object(node, {"do", "to", "at_most", "then", "mark"});
      failure.to = requiredId(node, "to");
      break;
    case FailureAction::Repeat:
    case FailureAction::ReadAgain:
      object(node, {"do", "at_most", "then", "mark"});
      break;
  }
  failure.at_most = optional(node, "at_most", [&](const JsonNode& most) { return whole(most, 1, 1000); });
  failure.goes_on_then = optionalNamed(node, "then", kThen, FailureAction::Stop) == FailureAction::GoOn;
  if (failure.goes_on_then) {
    failure.mark = requiredId(node, "mark");
  } else if (const std::optional<JsonNode> mark = node.find("mark")) {
    keep(mark->error("mark-without-go-on"));
  }
  return failure;
}

Check Reader::check(const JsonNode& node) {
  if (node.value().kind != JsonKind::Object) {
    keep(node.wrongKind("an object"));
    return {};
  }
  Check check{.kind = requiredNamed(node, "kind", kCheckKinds),
              .of = required(node, "of", [&](const JsonNode& of) { return ids(of, 1); })};
  switch (check.kind) {
    case CheckKind::WithinLimits:
      object(node, {"kind", "of", "low", "high"});
      check.low = optionalLimit(node, "low");
      check.high = optionalLimit(node, "high");
      if (!check.low && !check.high) keep(node.error("limit-missing"));
      break;
    case CheckKind::AtLeast:
      object(node, {"kind", "of", "value", "count"});
      check.value = optionalLimit(node, "value");
      check.count = orEmpty(node, "count", [&](const JsonNode& least) { return whole(least, 1, 1000); });
      if (check.value.has_value() == node.find("count").has_value()) {
        keep(node.error("value-or-count"));
      }
      break;
    case CheckKind::SteadyFor:
      object(node, {"kind", "of", "within", "for"});
      check.within = requiredLimit(node, "within");
      check.duration = requiredText(node, "for");
      break;
    case CheckKind::PoseReached:
      object(node, {"kind", "of", "target", "within"});
      check.target = requiredLimit(node, "target");
      check.within = requiredLimit(node, "within");
      break;
    case CheckKind::FitResidual:
      object(node, {"kind", "of", "fit", "at_most"});
      check.fit = requiredNamed(node, "fit", kFits);
      check.at_most = requiredLimit(node, "at_most");
      break;
    case CheckKind::Repeatability:
      object(node, {"kind", "of", "reference", "at_most"});
      check.at_most = requiredLimit(node, "at_most");
      if (node.find("reference")) check.reference = requiredId(node, "reference");
      break;
    case CheckKind::Agreement:
      object(node, {"kind", "of", "reference", "within"});
      check.within = requiredLimit(node, "within");
      required(node, "reference", [&](const JsonNode& reference) {
        if (reference.value().kind == JsonKind::Object) {
          check.reference_entry = limit(reference);
        } else {
          check.reference = id(reference);
        }
        return 0;
      });
      break;
    case CheckKind::SecondPerson:
      object(node, {"kind", "of"});
      break;
    case CheckKind::NotOlderThan:
      object(node, {"kind", "of", "age"});
      check.duration = requiredText(node, "age");
      break;
    case CheckKind::Proof:
      object(node, {"kind", "of", "reference", "within"});
      check.within = requiredLimit(node, "within");
      check.reference = requiredId(node, "reference");
      break;
    case CheckKind::TruckProof:
    case CheckKind::LoaderProof:
      if (check.kind == CheckKind::TruckProof) {
        object(node, {"kind", "of", "gross", "tare", "interval", "within", "legal_gross", "scale"});
      } else {
        object(node, {"kind", "of", "gross", "tare", "interval", "within", "scale"});
      }
      check.within = requiredLimit(node, "within");
      check.interval = requiredLimit(node, "interval");
      check.gross = requiredId(node, "gross");
      check.tare = requiredId(node, "tare");
      check.legal_gross = optionalLimit(node, "legal_gross");
      if (const std::optional<JsonNode> scale = node.find("scale")) {
        Keys keys;
        for (const ScaleStep& each : kScaleSteps) keys.push_back(each.key);
        if (!object(*scale, keys)) break;
        for (const std::string& key : scale->value().keys) check.scale[key] = requiredId(*scale, key);
      }
      break;
    case CheckKind::Plan:
      object(node, {"kind", "of", "reference", "interval", "at_most", "within", "loader_on_scale"});
      check.loader_on_scale = flag(node, "loader_on_scale");
      check.within = requiredLimit(node, "within");
      check.interval = requiredLimit(node, "interval");
      check.at_most = requiredLimit(node, "at_most");
      check.reference = requiredId(node, "reference");
      break;
    case CheckKind::Survey:
      object(node, {"kind", "of", "tape_u", "inclinometer_u", "at_most"});
      check.tape_u = requiredLimit(node, "tape_u");
      check.inclinometer_u = requiredLimit(node, "inclinometer_u");
      check.at_most = requiredLimit(node, "at_most");
      break;
  }
  const bool of_one = check.kind == CheckKind::SteadyFor || check.kind == CheckKind::PoseReached ||
                      check.kind == CheckKind::Repeatability || check.kind == CheckKind::Agreement ||
                      check.kind == CheckKind::SecondPerson || check.kind == CheckKind::TruckProof ||
                      check.kind == CheckKind::LoaderProof || check.kind == CheckKind::Plan;
  if (of_one && check.of.size() > 1) {
    keep(node.find("of")->error("list-too-long", {{"most", Amount{1.0, "1"}}}));
  }
  return check;
}

Caution Reader::caution(const JsonNode& node) {
  if (!object(node, {"id", "signal", "covers", "hazard", "consequence", "avoidance"})) return {};
  return {.id = requiredId(node, "id"),
          .signal = requiredNamed(node, "signal", kSignals),
          .covers = required(node, "covers", [&](const JsonNode& covers) { return hazards(covers, 0); }),
          .hazard = requiredId(node, "hazard"),
          .consequence = requiredId(node, "consequence"),
          .avoidance = requiredId(node, "avoidance")};
}

Entry Reader::entry(const JsonNode& node) {
  if (!object(node, {"id", "default", "unit"})) return {};
  Entry entry{.id = requiredId(node, "id"),
              .standard = optionalText(node, "default"),
              .unit = optionalText(node, "unit")};
  if (entry.standard.empty() == entry.unit.empty()) keep(node.error("default-or-unit"));
  return entry;
}

void Reader::stepOfKind(const JsonNode& node, Step& step) {
  Keys known = {"id", "kind", "detail", "only", "roles", "repeat", "on_failure", "cites"};
  const auto also = [&](std::initializer_list<std::string_view> keys) {
    known.insert(known.end(), keys.begin(), keys.end());
  };
  if (step.kind != StepKind::Caution) {
    also({"text"});
    step.text = requiredId(node, "text");
  }
  switch (step.kind) {
    case StepKind::Caution:
      also({"caution"});
      step.caution = requiredId(node, "caution");
      break;
    case StepKind::Confirm:
      also({"by", "moves", "zone_clear", "near", "opens", "closes"});
      step.second_person = orEmpty(node, "by", [&](const JsonNode& by) {
        named(by, kBy);
        return true;
      });
      movement(node, step);
      break;
    case StepKind::Monitor:
      also({"answers", "moves", "zone_clear", "opens", "closes"});
      step.answers = required(node, "answers", [&](const JsonNode& answers) {
        return list(answers, 1, [&](const JsonNode& each) {
          if (!object(each, {"id", "text", "passes"})) return Answer{};
          Answer answer{.id = requiredId(each, "id"), .text = requiredId(each, "text")};
          answer.passes = required(each, "passes", [&](const JsonNode& passes) {
            if (passes.value().kind != JsonKind::Boolean) keep(passes.wrongKind("true or false"));
            return passes.value().boolean;
          });
          return answer;
        });
      });
      movement(node, step);
      break;
    case StepKind::Reading:
      also({"quantity", "unit", "source", "plausible", "or", "accept", "expires", "use", "optional", "survey",
            "moves", "zone_clear", "near", "opens", "closes"});
      step.quantity = requiredId(node, "quantity");
      step.unit = requiredText(node, "unit");
      step.source = requiredNamed(node, "source", kSources);
      step.plausible =
          required(node, "plausible", [&](const JsonNode& limits) { return bothLimits(limits); });
      if (const std::optional<JsonNode> others = node.find("or")) {
        step.others = list(*others, 1, [&](const JsonNode& each) {
          if (!object(each, {"unit", "plausible"})) return OtherUnit{};
          return OtherUnit{.unit = requiredText(each, "unit"),
                           .plausible = required(each, "plausible",
                                                 [&](const JsonNode& limits) { return bothLimits(limits); })};
        });
      }
      step.accept = optional(node, "accept", [&](const JsonNode& limits) { return acceptLimits(limits); });
      step.expires = optional(node, "expires", [&](const JsonNode& expires) {
        if (!object(expires, {"after", "from"})) return Expiry{};
        return Expiry{.after = requiredText(expires, "after"), .from = optionalId(expires, "from")};
      });
      step.use = optionalNamed(node, "use", kUses, Use::Unsaid);
      step.optional = flag(node, "optional");
      step.survey = optional(node, "survey", [&](const JsonNode& measured) {
        const survey::Target target = survey::readTarget(*this, measured);
        if (!isRefused()) object(measured, survey::keysOf(target.kind));
        return target;
      });
      movement(node, step);
      break;
    case StepKind::Hold:
      also({"for", "moves", "zone_clear", "near", "opens", "closes"});
      step.duration = requiredText(node, "for");
      movement(node, step);
      break;
    case StepKind::Pose:
      also({"boom", "bucket", "approach", "boom_angle", "within", "steady_for", "zone_clear", "opens",
            "closes"});
      step.boom = requiredNamed(node, "boom", kBoomPlaces);
      step.bucket = requiredNamed(node, "bucket", kBucketPlaces);
      step.approach = optionalNamed(node, "approach", kApproaches, Approach::Either);
      step.boom_angle = optionalLimit(node, "boom_angle");
      step.within = optionalLimit(node, "within");
      step.duration = optionalText(node, "steady_for");
      step.zone_clear = optionalId(node, "zone_clear");
      step.moves = true;
      break;
    case StepKind::Pass:
      also({"direction", "pace", "load", "log", "zone_clear", "opens", "closes"});
      step.direction = requiredNamed(node, "direction", kDirections);
      step.pace = requiredNamed(node, "pace", kPaces);
      step.load = requiredNamed(node, "load", kLoads);
      step.log = optionalNamed(node, "log", kLogNeeds, LogNeed::None);
      step.zone_clear = optionalId(node, "zone_clear");
      step.moves = true;
      break;
    case StepKind::Check:
      also({"check", "undecided"});
      step.check =
          required(node, "check", [&](const JsonNode& checked) { return std::optional(check(checked)); });
      step.undecided =
          optional(node, "undecided", [&](const JsonNode& failure) { return onFailure(failure); });
      break;
    case StepKind::Evidence:
      also({"evidence", "optional", "near"});
      step.evidence = requiredNamed(node, "evidence", kEvidenceKinds);
      step.optional = flag(node, "optional");
      break;
    case StepKind::Note:
      also({"optional", "near"});
      step.optional = flag(node, "optional");
      break;
    case StepKind::Sign:
      also({"on_glass", "may_be"});
      step.on_glass = flag(node, "on_glass");
      step.may_be = orEmpty(node, "may_be", [&](const JsonNode& may_be) {
        return distinct(may_be, 1, [&](const JsonNode& outcome) { return named(outcome, kAbsences); });
      });
      break;
  }
  object(node, known);
}

Step Reader::step(const JsonNode& node) {
  Step step{.pointer = node.pointer()};
  if (node.value().kind != JsonKind::Object) {
    keep(node.wrongKind("an object"));
    return step;
  }
  step.id = requiredId(node, "id");
  step.kind = requiredNamed(node, "kind", kStepKinds);
  step.detail = optionalId(node, "detail");
  step.only = orEmpty(node, "only", [&](const JsonNode& only) { return ids(only, 1); });
  step.roles = orEmpty(node, "roles", [&](const JsonNode& roles) { return ids(roles, 1); });
  step.cites = orEmpty(node, "cites", [&](const JsonNode& cites) {
    return list(cites, 1, [&](const JsonNode& cite) { return taken(cite.name()); });
  });
  step.near = flag(node, "near");
  step.opens = orEmpty(node, "opens", [&](const JsonNode& opens) { return hazards(opens, 1); });
  step.closes = orEmpty(node, "closes", [&](const JsonNode& closes) { return hazards(closes, 1); });
  step.repeat = optional(node, "repeat", [&](const JsonNode& repeat) {
    if (!object(repeat, {"from", "times"})) return Repeat{};
    return Repeat{
        .from = requiredId(repeat, "from"),
        .times = required(repeat, "times", [&](const JsonNode& times) { return whole(times, 2, 1000); })};
  });
  step.on_failure = optional(node, "on_failure", [&](const JsonNode& failure) { return onFailure(failure); });
  stepOfKind(node, step);
  return step;
}

Procedure Reader::read(const JsonDocument& document) {
  const JsonNode root(document);
  if (!object(root, {"format", "id", "version", "title", "comes_first", "roles", "variants", "entries",
                     "tools", "prerequisites", "cautions", "on_failure", "steps", "make_safe", "tag"})) {
    return {};
  }
  required(root, "format", [&](const JsonNode& node) {
    const std::string format = taken(node.string());
    if (node.value().kind == JsonKind::String && format != "hingepin-procedure/1") {
      keep(node.error("format-unknown", {{"known", "hingepin-procedure/1"}}));
    }
    return 0;
  });
  Procedure procedure;
  procedure.id = requiredId(root, "id");
  procedure.version =
      required(root, "version", [&](const JsonNode& node) { return whole(node, 1, 1000000); });
  procedure.title = requiredId(root, "title");
  procedure.comes_first = requiredId(root, "comes_first");
  required(root, "roles", [&](const JsonNode& node) {
    if (!object(node, {"run", "confirm"})) return 0;
    procedure.run_roles = required(node, "run", [&](const JsonNode& roles) { return ids(roles, 1); });
    procedure.confirm_roles = required(node, "confirm", [&](const JsonNode& roles) { return ids(roles, 0); });
    return 0;
  });
  procedure.variants = orEmpty(root, "variants", [&](const JsonNode& node) {
    return list(node, 1, [&](const JsonNode& variant) {
      if (!object(variant, {"id", "text"})) return Variant{};
      return Variant{.id = requiredId(variant, "id"), .text = requiredId(variant, "text")};
    });
  });
  procedure.entries = orEmpty(root, "entries", [&](const JsonNode& node) {
    return list(node, 0, [&](const JsonNode& each) { return entry(each); });
  });
  procedure.tools = orEmpty(root, "tools", [&](const JsonNode& node) { return ids(node, 0); });
  procedure.prerequisites = orEmpty(root, "prerequisites", [&](const JsonNode& node) {
    return list(node, 0, [&](const JsonNode& each) {
      if (!object(each, {"procedure", "not_older_than"})) return Prerequisite{};
      return Prerequisite{.procedure = requiredId(each, "procedure"),
                          .not_older_than = requiredText(each, "not_older_than")};
    });
  });
  procedure.cautions = required(root, "cautions", [&](const JsonNode& node) {
    return list(node, 0, [&](const JsonNode& each) { return caution(each); });
  });
  procedure.on_failure = optional(root, "on_failure", [&](const JsonNode& node) { return onFailure(node); });
  procedure.steps = required(root, "steps", [&](const JsonNode& node) { return steps(node); });
  procedure.make_safe = required(root, "make_safe", [&](const JsonNode& node) { return steps(node); });
  procedure.tag = requiredId(root, "tag");
  return procedure;
}

}  // namespace

Expected<Procedure> readProcedure(std::string text, std::string file) {
  const Expected<JsonDocument> document = readJson(std::move(text), std::move(file));
  if (!document) return std::unexpected(document.error());
  Reader reader;
  Procedure procedure = reader.read(*document);
  if (reader.error()) return std::unexpected(*reader.error());
  return procedure;
}

bool isRole(std::string_view name) {
  return std::ranges::find(kRoles, name, &Named<Role>::name) != kRoles.end();
}

std::span<const Dimension> dimensionsOf(std::string_view quantity) {
  const auto* const row = std::ranges::find(kQuantities, quantity, &Named<Dimensions>::name);
  return row == kQuantities.end() ? Dimensions() : row->value;
}

std::string_view nameOf(SignalWord signal) { return nameIn(kSignals, signal); }
std::string_view nameOf(Hazard hazard) { return nameIn(kHazards, hazard); }
std::string_view nameOf(StepKind kind) { return nameIn(kStepKinds, kind); }
std::string_view nameOf(CheckKind kind) { return nameIn(kCheckKinds, kind); }
std::string_view nameOf(Absence absence) { return nameIn(kAbsences, absence); }

bool hasStep(std::string_view variant, const Step& step) {
  return step.only.empty() || std::ranges::find(step.only, variant) != step.only.end();
}

const std::optional<OnFailure>& failureOf(const Procedure& procedure, const Step& step) {
  return step.on_failure ? step.on_failure : procedure.on_failure;
}

bool canFail(const Step& step) {
  switch (step.kind) {
    case StepKind::Caution:
    case StepKind::Evidence:
    case StepKind::Note:
      return false;
    case StepKind::Monitor:
      return !std::ranges::all_of(step.answers, &Answer::passes);
    case StepKind::Reading:
      return step.accept.has_value();
    case StepKind::Sign:
      return step.may_be.size() < 2;
    case StepKind::Confirm:
    case StepKind::Hold:
    case StepKind::Pose:
    case StepKind::Pass:
    case StepKind::Check:
      return true;
  }
  return true;
}

bool isJudged(CheckKind kind) {
  return kind == CheckKind::Proof || kind == CheckKind::TruckProof || kind == CheckKind::LoaderProof ||
         kind == CheckKind::Plan || kind == CheckKind::Survey;
}

std::vector<std::string> knownOf(const Check& check) {
  std::vector<std::string> known = {check.reference, check.gross, check.tare};
  std::erase(known, "");
  return known;
}

TextCodes textCodesOf(const Procedure& procedure) {
  TextCodes codes = {procedure.title, procedure.comes_first, procedure.tag};
  codes.insert(procedure.tools.begin(), procedure.tools.end());
  for (const Variant& variant : procedure.variants) codes.insert(variant.text);
  for (const Caution& caution : procedure.cautions) {
    codes.insert({caution.hazard, caution.consequence, caution.avoidance});
  }
  if (procedure.on_failure) codes.insert(procedure.on_failure->mark);
  for (const auto* const steps : {&procedure.steps, &procedure.make_safe}) {
    for (const Step& step : *steps) {
      codes.insert({step.text, step.detail, step.zone_clear});
      if (step.on_failure) codes.insert(step.on_failure->mark);
      if (step.undecided) codes.insert(step.undecided->mark);
      for (const Answer& answer : step.answers) codes.insert(answer.text);
    }
  }
  codes.erase("");  // what a step doesn't have
  return codes;
}

const Caution* findCaution(const Procedure& procedure, std::string_view id) {
  const auto found = std::ranges::find(procedure.cautions, id, &Caution::id);
  return found == procedure.cautions.end() ? nullptr : &*found;
}

const Step* findStep(std::span<const Step> steps, std::string_view id) {
  const auto found = std::ranges::find(steps, id, &Step::id);
  return found == steps.end() ? nullptr : &*found;
}

const Step* findStep(const Procedure& procedure, std::string_view id) {
  const Step* const step = findStep(procedure.steps, id);
  return step != nullptr ? step : findStep(procedure.make_safe, id);
}

}  // namespace hingepin::procedures
