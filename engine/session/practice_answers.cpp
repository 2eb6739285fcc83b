// SPDX-License-Identifier: Apache-2.0
#include "engine/session/practice_answers.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "engine/base/contains.h"
#include "engine/linkage/linkage.h"
#include "engine/linkage/numbers.h"
#include "engine/procedures/evaluate.h"
#include "engine/simulator/scenario.h"
#include "engine/simulator/simulator.h"
#include "engine/units/degree.h"
#include "engine/units/ucum.h"

namespace hingepin::session {
namespace {

using procedures::Ask;
using procedures::BoomPlace;
using procedures::Check;
using procedures::CheckKind;
using procedures::EventType;
using procedures::Load;
using procedures::Step;
using procedures::StepKind;
using procedures::Try;

/// The straight edge of the practice machine's boom, against its pins.
constexpr double kEdge_rad = 0.03;
constexpr double kEdge_m = 0.21;
/// At how many heights of the boom a survey is made: six give the lift cylinder's law.
constexpr int kSurveyedHeights = 6;

constexpr double kLogRate_Hz = 20.0;  // enough for a pass of ten seconds, and quick to fit

/// How long people take for a step (common practice, no source).
std::int64_t timeNeeded(Ask ask, const Step* step) {
  if (ask == Ask::Acknowledge) return 5'000;
  if (step == nullptr) return 2'000;
  switch (step->kind) {
    case StepKind::Pose:
      return 12'000;
    case StepKind::Pass:
      return 15'000;
    case StepKind::Reading:
    case StepKind::Note:
      return 8'000;
    case StepKind::Evidence:
    case StepKind::Sign:
      return 10'000;
    default:
      return 4'000;
  }
}

/// The last counting try of a step of some kind, or nullptr.
const Step* lastOf(const OpenJob& job, StepKind kind) {
  for (auto each = job.state.tries.rbegin(); each != job.state.tries.rend(); ++each) {
    const Step* const step = procedures::findStep(job.procedure, each->event.about);
    if (step != nullptr && step->kind == kind && each->outcome == procedures::Outcome::Passed) return step;
  }
  return nullptr;
}

/// The pose or pass that the machine came from last, or nullptr.
const Step* lastMovement(const OpenJob& job) {
  for (auto each = job.state.tries.rbegin(); each != job.state.tries.rend(); ++each) {
    const Step* const step = procedures::findStep(job.procedure, each->event.about);
    if (step != nullptr && (step->kind == StepKind::Pose || step->kind == StepKind::Pass)) return step;
  }
  return nullptr;
}

bool wasAnswered(const OpenJob& job, std::string_view step) {
  return std::ranges::any_of(job.state.tries,
                             [&](const Try& each) { return each.counts && each.event.about == step; });
}

std::optional<double> limitOf(const OpenJob& job, const std::optional<procedures::Limit>& limit) {
  if (!limit) return std::nullopt;
  const Expected<ReadQuantity> value = procedures::valueOf(job.procedure, job.state, *limit);
  return value ? std::optional(value->value_si) : std::nullopt;
}

/// The checks of this job's variant that look at a step.
std::vector<const Step*> checksOf(const OpenJob& job, std::string_view step) {
  std::vector<const Step*> checks;
  for (const Step& each : job.procedure.steps) {
    if (each.check && procedures::hasStep(job.state.start.variant, each) &&
        (contains(each.check->of, step) || contains(procedures::knownOf(*each.check), step))) {
      checks.push_back(&each);
    }
  }
  return checks;
}

/// What a step was last read as, SI.
std::optional<double> lastValue(const OpenJob& job, std::string_view step) {
  const auto values = procedures::observationsOf(job.procedure, job.state, step);
  return values.empty() ? std::nullopt : std::optional(values.back().value_si);
}

int timesDone(const OpenJob& job, std::string_view pose) {
  return static_cast<int>(std::ranges::count_if(job.state.tries, [&](const Try& each) {
    return each.event.about == pose && each.event.answer == "done";
  }));
}

/// Whether a pose is one at which a survey is made again and again.
bool surveysFrom(const OpenJob& job, const Step& pose) {
  return std::ranges::any_of(job.procedure.steps, [&](const Step& step) {
    return step.check && step.check->kind == CheckKind::Survey && step.undecided &&
           step.undecided->to == pose.id;
  });
}

double angleOfPose(const OpenJob& job, const Step& pose, const simulator::Machine& machine) {
  if (const std::optional<double> wanted = limitOf(job, pose.boom_angle)) {
    return pose.boom == BoomPlace::Level ? machine.reference_rad : *wanted;
  }
  switch (pose.boom) {
    case BoomPlace::Lowest:
      return machine.lowest_rad;
    case BoomPlace::Ground:
      return machine.lowest_rad + 6.0 * kDegree;
    case BoomPlace::Carry:
      return machine.lowest_rad + 14.0 * kDegree;
    case BoomPlace::Highest:
      return machine.highest_rad;
    case BoomPlace::Level:
      return machine.reference_rad;
    case BoomPlace::Any:
      break;
  }
  if (surveysFrom(job, pose)) {
    // From the lowest to the highest.
    const double share = std::min(1.0, (timesDone(job, pose.id) - 1) / (kSurveyedHeights - 1.0));
    return std::lerp(machine.lowest_rad, machine.highest_rad, std::max(0.0, share));
  }
  // Places spread over the weigh window, the next one each time round.
  const auto entry = [&](const char* id, double otherwise) {
    const Expected<ReadQuantity> value =
        procedures::valueOf(job.procedure, job.state, procedures::Limit{.entry = id});
    return value && value->unit.dimension == Dimension::Angle ? value->value_si : otherwise;
  };
  const double low = entry("window-low", machine.window_low_rad);
  const double high = entry("window-high", machine.window_high_rad);
  int times = 1;
  int round = 0;
  for (const Step& each : job.procedure.steps) {
    if (!each.repeat || each.repeat->from != pose.id) continue;
    times = each.repeat->times;
    const auto rounds = job.state.rounds.find(each.id);
    round = rounds == job.state.rounds.end() ? 0 : rounds->second;
  }
  return low + (high - low) * (std::min(round, times - 1) + 0.5) / times;
}

double boomAngle(const OpenJob& job, const simulator::Machine& machine) {
  const Step* const moved = lastMovement(job);
  if (moved == nullptr) return machine.lowest_rad + 6.0 * kDegree;
  if (moved->kind == StepKind::Pose) return angleOfPose(job, *moved, machine);
  const double margin = 2.0 * kDegree;
  return moved->direction == procedures::Direction::Up ? machine.highest_rad - margin
                                                       : machine.lowest_rad + margin;
}

/// Whether a known mass lies in the bucket: the library's steps that say so end in "-in" and "-out".
bool massIsIn(const OpenJob& job) {
  bool in = false;
  for (const Try& each : job.state.tries) {
    const std::string& id = each.event.about;
    if (!id.starts_with("mass-") || each.outcome != procedures::Outcome::Passed) continue;
    if (id.ends_with("-in")) in = true;
    if (id.ends_with("-out")) in = false;
  }
  return in;
}

/// A number with as many decimals as a person types.
std::string typed(double value_si, std::string_view ucum, std::string_view quantity) {
  const Unit unit = *findUnit(ucum);
  const double value = unit.fromSi(value_si);
  int decimals = 0;
  if (quantity == "boom-sensor" || quantity == "bucket-sensor") decimals = ucum == "V" ? 2 : 0;
  if (quantity == "boom-angle" || quantity == "pitch" || quantity == "angle") decimals = 1;
  if (quantity == "edge-height" || quantity == "length") decimals = ucum == "m" ? 2 : 0;
  std::string text = fmt::format("{:.{}f} {}", value, decimals, ucum);
  return text.starts_with("-0") && text.find_first_of("123456789") == std::string::npos ? text.substr(1)
                                                                                        : text;
}

/// As the monitor shows it, in its unit and steps.
std::string shownAs(double value_si, const Shown& shown) {
  const Unit unit = *findUnit(shown.unit);
  const std::string last_digit = shown.step.empty() ? "1 " + shown.unit : shown.step;
  const Expected<ReadQuantity> step = readAnyQuantity(last_digit);
  const double width =
      step ? (step->value_si - step->unit.toSi(0.0)) / (unit.toSi(1.0) - unit.toSi(0.0)) : 1.0;
  const std::string number = shown.step.substr(0, shown.step.find(' '));
  const std::size_t point = number.find('.');
  const int decimals = point == std::string::npos ? 0 : static_cast<int>(number.size() - point - 1);
  double value = unit.fromSi(value_si);
  if (width > 0.0) value = std::round(value / width) * width;
  std::string text = fmt::format("{:.{}f}", value + 0.0, decimals);
  if (text.starts_with('-') && text.find_first_of("123456789") == std::string::npos) text.erase(0, 1);
  return text + " " + shown.unit;
}

}  // namespace

PracticePerson::PracticePerson(std::uint64_t number, PracticeScale scale, PracticeWishes wishes,
                               std::uint64_t scatter)
    : random_(Random(number).fork(7 + scatter)),
      // The machine of the simulator's practice job of this number.
      machine_([&] {
        Random drawn = Random(number).fork(1);
        return simulator::practiceMachine(drawn);
      }()),
      scale_(scale),
      wishes_(std::move(wishes)) {}

bool PracticePerson::shallFail(const OpenJob& job, std::string_view step) const {
  const auto wish = wishes_.failing.find(step);
  if (wish == wishes_.failing.end()) return false;
  return wish->second == Failing::Always || std::ranges::none_of(job.state.tries, [&](const Try& each) {
           return each.event.about == step && each.outcome == procedures::Outcome::Failed;
         });
}

std::optional<std::string> PracticePerson::wished(std::string_view step) {
  const auto found = wishes_.says.find(step);
  if (found == wishes_.says.end() || found->second.empty()) return std::nullopt;
  std::string first = found->second.front();
  if (found->second.size() > 1) found->second.erase(found->second.begin());
  return first;
}

double PracticePerson::referenceOf(const OpenJob& job, const Step& step) const {
  constexpr double kTare_kg = 13460.0;
  for (const Step* check : checksOf(job, step.id)) {
    if (check->check->tare == step.id) return kTare_kg;
    if (check->check->gross != step.id) continue;
    if (check->check->kind == CheckKind::LoaderProof) return kTare_kg + scale_.mass_kg;
    // What went into the truck since its tare.
    double gross_kg = kTare_kg;
    for (auto each = job.state.tries.rbegin(); each != job.state.tries.rend(); ++each) {
      if (each->event.about == check->check->tare) break;
      if (each->counts && contains(check->check->of, each->event.about)) gross_kg += scale_.mass_kg;
    }
    return gross_kg;
  }
  return scale_.mass_kg;
}

Expected<double> PracticePerson::surveyed(const OpenJob& job, const survey::Target& target) const {
  const Expected<linkage::Linkage> linkage = linkage::Linkage::make(machine_.as_built);
  if (!linkage) return std::unexpected(linkage.error());
  const Step* const pose = lastOf(job, StepKind::Pose);
  const bool racked = pose != nullptr && pose->bucket == procedures::BucketPlace::RackedBack;
  const double boom_rad = boomAngle(job, machine_);
  const Expected<double> flat_m = linkage->tiltLengthOfBucket(boom_rad, 0.0);
  const double tilt_m = racked || !flat_m ? machine_.as_built.tilt_cylinder_extended.inMetres() : *flat_m;
  const auto pins = linkage->pins(boom_rad, tilt_m);
  if (!pins) return std::unexpected(pins.error());
  const auto tilt = linkage->tilt(boom_rad, tilt_m);
  if (!tilt) return std::unexpected(tilt.error());
  const std::array all = {pins->boom_pivot,         pins->hinge_pin,          pins->lift_frame_pin,
                          pins->lift_boom_pin,      pins->tilt_frame_pin,     pins->bellcrank_pivot,
                          pins->bellcrank_tilt_pin, pins->bellcrank_link_pin, pins->bucket_link_pin};
  const auto from = all[static_cast<std::size_t>(target.from)];
  const auto to = all[static_cast<std::size_t>(target.to)];
  const double edge_rad = boom_rad + kEdge_rad;
  switch (target.kind) {
    case survey::Kind::Distance:
      return std::hypot(to[0] - from[0], to[1] - from[1]);
    case survey::Kind::Horizontal:
      return to[0] - from[0];
    case survey::Kind::Vertical:
      return to[1] - from[1];
    case survey::Kind::Height:
      return machine_.as_built.boom_pivot_height.inMetres() + from[1];
    case survey::Kind::Inclination:
      return std::atan2(to[1] - from[1], to[0] - from[0]);
    case survey::Kind::BoomPlateAngle:
      return edge_rad;
    case survey::Kind::BoomPlateOffset:
      return kEdge_m + std::sin(edge_rad) * from[0] - std::cos(edge_rad) * from[1];
    case survey::Kind::BucketFloorAngle:
      return tilt->bucket_by_boom.value;
    case survey::Kind::GroundAngle:
      return 0.0;
    case survey::Kind::DataSheet:
      return linkage::linkageNumbers()[target.number].get(machine_.as_built);
  }
  return 0.0;
}

Expected<double> PracticePerson::siOf(const OpenJob& job, const Step& step) {
  const std::string& quantity = step.quantity;
  if (step.survey) return surveyed(job, *step.survey);
  const auto entry = [&](const char* id) { return limitOf(job, procedures::Limit{.text = "", .entry = id}); };
  if (quantity == "oil-temperature") {
    return std::max(scale_.oil_Cel + 273.15, entry("oil-minimum").value_or(0.0) + 3.0);
  }
  if (quantity == "operating-hours") return scale_.hours * 3600.0;
  if (quantity == "fuel-level") return scale_.fuel_percent / 100.0;
  if (quantity == "pitch") return 0.2 * kDegree;
  if (quantity == "count") return 2.0;
  if (quantity == "reference-mass") return referenceOf(job, step);
  if (quantity == "boom-angle") return boomAngle(job, machine_);
  if (quantity == "boom-sensor") {
    return simulator::readAtRest(machine_.boom_sensor, boomAngle(job, machine_), 0.01, random_);
  }
  if (quantity == "bucket-sensor") {
    const Expected<linkage::Linkage> linkage = linkage::Linkage::make(machine_.as_built);
    if (!linkage) return std::unexpected(linkage.error());
    const Step* const pose = lastOf(job, StepKind::Pose);
    const bool dumped = pose != nullptr && pose->bucket == procedures::BucketPlace::Dumped;
    const double tilt_m =
        dumped ? machine_.as_built.tilt_cylinder_retracted.inMetres() : machine_.tilt_length_m;
    const auto tilt = linkage->tilt(machine_.reference_rad, tilt_m);
    if (!tilt) return std::unexpected(tilt.error());
    return simulator::readAtRest(machine_.bucket_sensor, tilt->bellcrank_by_boom.value, 0.01, random_);
  }
  if (quantity == "head-pressure" || quantity == "rod-pressure") {
    const Step* const moved = lastMovement(job);
    if (moved == nullptr || moved->boom == BoomPlace::Ground) return 2e5;  // the boom rests
    const std::array at_rad = {boomAngle(job, machine_)};
    simulator::Lift lift;
    lift.oil_Cel = scale_.oil_Cel;
    lift.plan = simulator::stationsFromBelow(machine_.lowest_rad, at_rad, machine_.slow_rad_per_s);
    if (massIsIn(job)) {
      lift.load = simulator::loadAt(scale_.mass_kg, machine_.heap_true_along_m, machine_.heap_true_across_m);
    }
    const auto rows = simulator::readStations(machine_, lift, {}, random_.fork(1000 + drawn_++));
    if (!rows) return std::unexpected(rows.error());
    const auto& value =
        quantity == "head-pressure" ? rows->back().head_pressure_Pa : rows->back().rod_pressure_Pa;
    return value.value_or(0.0);
  }
  if (quantity == "edge-height" || quantity == "length") {
    for (const Step* check : checksOf(job, step.id)) {
      if (check->check->kind != CheckKind::Agreement) continue;
      // The other end of the bucket stands as high where it is level.
      if (check->check->reference == step.id) {
        if (const auto other = lastValue(job, check->check->of.front())) return *other + 0.004;
      }
      if (const auto wanted = limitOf(job, check->check->reference_entry)) {
        return *wanted + random_.uniform(-0.003, 0.012);
      }
    }
  }
  if (quantity == "indication") {
    double load_kg = 0.0;
    for (const Step* check : checksOf(job, step.id)) {
      const CheckKind kind = check->check->kind;
      if ((kind == CheckKind::Agreement || kind == CheckKind::Proof) && !check->check->reference.empty()) {
        load_kg = lastValue(job, check->check->reference).value_or(0.0);
      }
    }
    const Step* const pass = lastOf(job, StepKind::Pass);
    if (load_kg <= 0.0 && pass != nullptr && pass->load != Load::Empty) load_kg = scale_.mass_kg;
    const bool zeroed = wasAnswered(job, "zero");
    const bool taught = zeroed && job.procedure.id.starts_with("after-");
    const double zero_kg = zeroed ? scale_.zero_after_kg : scale_.zero_kg;
    return zero_kg + (taught ? scale_.span_after : scale_.span) * load_kg +
           scale_.scatter_kg * random_.normal();
  }
  if (quantity == "length") return scale_.tread_mm / 1000.0;
  const procedures::Limits& limits = step.accept ? *step.accept : step.plausible;
  const std::optional<double> low = limitOf(job, limits.low);
  const std::optional<double> high = limitOf(job, limits.high);
  return low && high ? (*low + *high) / 2.0 : low.value_or(high.value_or(0.0));
}

Expected<std::string> PracticePerson::valueOf(const OpenJob& job, const Step& step) {
  Expected<double> value = siOf(job, step);
  if (!value) return std::unexpected(std::move(value.error()));
  const bool angle_sensor = step.quantity == "boom-sensor" || step.quantity == "bucket-sensor";
  if (angle_sensor) return fmt::format("{:.2f} V", *value);

  // A check that shall fail fails by what it looks at.
  const std::size_t round = procedures::observationsOf(job.procedure, job.state, step.id).size();
  for (const Step* step_of_check : checksOf(job, step.id)) {
    const Check& check = *step_of_check->check;
    if (!shallFail(job, step_of_check->id) || !contains(check.of, step.id)) continue;
    const auto reference =
        check.reference.empty() ? limitOf(job, check.reference_entry) : lastValue(job, check.reference);
    double off = 0.0;
    if ((check.kind == CheckKind::Agreement || check.kind == CheckKind::Proof) && check.within && reference) {
      const Expected<ReadQuantity> within = procedures::valueOf(job.procedure, job.state, *check.within);
      const bool share = within && within->unit.dimension == Dimension::Number;
      off = !within ? 0.0 : 2.5 * within->value_si * (share ? std::abs(*reference) : 1.0);
    } else if (check.kind == CheckKind::Repeatability) {
      off = limitOf(job, check.at_most).value_or(0.0) * (round % 2 == 0 ? 1.5 : -1.5);
    } else if (const auto high = limitOf(job, check.high)) {
      off = *high - *value + std::abs(*high) * 0.5 + 1.0;
    } else if (const auto least = limitOf(job, check.low ? check.low : check.value)) {
      off = *least - *value - std::abs(*least) * 0.1;
    }
    *value += off;
  }
  if (shallFail(job, step.id) && step.accept) {
    const auto high = limitOf(job, step.accept->high);
    const auto low = limitOf(job, step.accept->low);
    const auto most = limitOf(job, step.plausible.high);
    const auto least = limitOf(job, step.plausible.low);
    if (low && least) {
      *value = 0.9 * *low + 0.1 * *least;
    } else if (high && most) {
      *value = 0.9 * *high + 0.1 * *most;
    }
  }
  if (step.source == procedures::Source::Machine) {
    const auto shown = std::ranges::find(job.unit.monitor, step.quantity, &Shown::quantity);
    if (shown != job.unit.monitor.end()) return shownAs(*value, *shown);
    if (step.quantity == "indication") return shownAs(*value, {"indication", "kg", "5 kg"});
  }
  return typed(*value, step.unit, step.quantity);
}

Expected<std::string> PracticePerson::logOf(const Step& step) {
  const double low = machine_.lowest_rad + 0.5 * kDegree;
  const double high = machine_.highest_rad - 2.0 * kDegree;
  const bool up = step.direction == procedures::Direction::Up;
  const double speed =
      step.pace == procedures::Pace::Fast ? machine_.fast_rad_per_s : machine_.slow_rad_per_s;
  simulator::Lift lift;
  lift.oil_Cel = scale_.oil_Cel;
  lift.plan = simulator::onePass(up ? low : high, up ? high : low, speed);
  lift.logging.rate_Hz = kLogRate_Hz;
  if (step.load != Load::Empty) {
    lift.load = simulator::loadAt(scale_.mass_kg, machine_.heap_true_along_m, machine_.heap_true_across_m);
  }
  const auto record = simulator::simulate(machine_, lift, random_.fork(1000 + drawn_++));
  if (!record) return std::unexpected(record.error());
  return simulator::csvOf(machine_, record->rows);
}

Expected<PracticeAnswer> PracticePerson::answer(const OpenJob& job) {
  const procedures::Prompt asked = procedures::prompt(job.procedure, job.state);
  const Step* const step = procedures::findStep(job.procedure, asked.about);
  PracticeAnswer answer;
  answer.event.about = asked.about;
  answer.takes_ms = timeNeeded(asked.ask, step);
  switch (asked.ask) {
    case Ask::Start:
    case Ask::Nothing:
    case Ask::Evaluate:
      return fail(ErrorKind::InvalidInput, "job-has-ended");
    case Ask::Resume:
      answer.event.type = EventType::Resume;
      return answer;
    case Ask::Acknowledge:
      answer.event.type = EventType::Acknowledge;
      return answer;
    case Ask::ZoneClear:
      answer.event.type = EventType::ZoneClear;
      answer.takes_ms = 2'000;
      return answer;
    case Ask::Begin:
      answer.event.type = EventType::Begin;
      return answer;
    case Ask::Tag:
      answer.event.answer = "hung";
      return answer;
    case Ask::Hold:
      answer.not_before_ms = asked.finished_at_ms;
      answer.event.answer = shallFail(job, asked.about) ? "failed" : "done";
      return answer;
    case Ask::Reading:
    case Ask::Doubt: {
      answer.event.type = EventType::Reading;
      if (step->source == procedures::Source::Machine) answer.event.how = procedures::How::Monitor;
      if (asked.ask == Ask::Doubt) {
        answer.event.value = job.state.doubt->value;
        answer.event.sure = true;
        return answer;
      }
      if (std::optional<std::string> said = wished(step->id)) {
        answer.event.value = *std::move(said);
        return answer;
      }
      Expected<std::string> value = valueOf(job, *step);
      if (!value) return std::unexpected(std::move(value.error()));
      answer.event.value = *std::move(value);
      return answer;
    }
    case Ask::Answer:
      break;
  }
  if (step == nullptr) return fail(ErrorKind::InvalidInput, "step-unknown", {{"step", asked.about}});
  const bool failing = shallFail(job, step->id);
  answer.event.answer = asked.answers.front();
  switch (step->kind) {
    case StepKind::Monitor: {
      const auto& failure = procedures::failureOf(job.procedure, *step);
      const Step* const again = failure && failure->action == procedures::FailureAction::More
                                    ? procedures::findStep(job.procedure, failure->to)
                                    : nullptr;
      const bool more =
          again != nullptr && surveysFrom(job, *again) && timesDone(job, again->id) < kSurveyedHeights;
      const auto found = std::ranges::find(step->answers, !failing && !more, &procedures::Answer::passes);
      if (found != step->answers.end()) answer.event.answer = found->id;
      break;
    }
    case StepKind::Confirm:
      if (failing) answer.event.answer = "no";
      break;
    case StepKind::Pose:
    case StepKind::Pass:
      if (failing) answer.event.answer = "failed";
      break;
    case StepKind::Sign:
      if (failing && contains(asked.answers, "absent") && !step->may_be.empty()) {
        answer.event.answer = procedures::nameOf(step->may_be.front());
      }
      break;
    default:
      break;
  }
  if (std::optional<std::string> said = wished(step->id)) {
    if (step->kind == StepKind::Note) {
      answer.event.answer = "written";
      answer.event.value = *std::move(said);
    } else {
      answer.event.answer = *std::move(said);
    }
  } else if (step->kind == StepKind::Note) {
    answer.event.answer = step->optional ? "skipped" : "written";
    if (!step->optional) {
      const bool asks_number = step->id.ends_with("-number") && !job.job.attachment.empty();
      answer.event.value = asks_number ? job.job.attachment : "-";
    }
  }
  const std::vector<std::string>& roles =
      step->roles.empty() && step->second_person ? job.procedure.confirm_roles : step->roles;
  const bool in_charge = contains(roles, job.state.role);
  answer.second_person = step->second_person && answer.event.answer == "yes";
  if (!roles.empty() && (answer.second_person || !in_charge)) {
    const auto other =
        std::ranges::find_if(roles, [&](const std::string& role) { return role != job.state.role; });
    answer.event.role = other == roles.end() ? roles.front() : *other;
  }
  if (step->kind == StepKind::Sign && answer.event.answer != "signed") answer.event.role.clear();
  if (answer.event.answer == "taken") {
    answer.file = step->evidence == procedures::EvidenceKind::Photo ? FileNeed::Photo : FileNeed::File;
  }
  if (step->on_glass && answer.event.answer == "signed") answer.file = FileNeed::Signature;
  if (step->kind == StepKind::Pass && step->log == procedures::LogNeed::Required &&
      answer.event.answer == "done") {
    Expected<std::string> log = logOf(*step);
    if (!log) return std::unexpected(std::move(log.error()));
    answer.log = *std::move(log);
    answer.file = FileNeed::Log;
  }
  return answer;
}

}  // namespace hingepin::session
