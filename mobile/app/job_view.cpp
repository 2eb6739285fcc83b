// SPDX-License-Identifier: GPL-3.0-or-later
#include "job_view.h"

#include <QCoreApplication>
#include <QVariantMap>
#include <algorithm>
#include <array>
#include <ranges>

#include "drawings.h"
#include "engine/procedures/evaluate.h"
#include "engine/procedures/journal.h"
#include "engine/session/job_record.h"
#include "engine/session/proof_readings.h"
#include "engine/session/surveying.h"
#include "engine/units/ucum.h"
#include "text.h"

namespace hingepin::mobile {
namespace {

using procedures::Ask;
using procedures::Step;
using procedures::StepKind;
using session::OpenJob;

QString tr(const char* text) { return QCoreApplication::translate("hingepin::mobile", text); }

QString askName(Ask ask) {
  switch (ask) {
    case Ask::Start:
      return QStringLiteral("start");
    case Ask::Resume:
      return QStringLiteral("resume");
    case Ask::Acknowledge:
      return QStringLiteral("caution");
    case Ask::ZoneClear:
      return QStringLiteral("zone");
    case Ask::Begin:
      return QStringLiteral("begin");
    case Ask::Hold:
      return QStringLiteral("hold");
    case Ask::Answer:
      return QStringLiteral("answer");
    case Ask::Reading:
      return QStringLiteral("reading");
    case Ask::Doubt:
      return QStringLiteral("doubt");
    case Ask::Evaluate:
      return QStringLiteral("check");
    case Ask::Tag:
      return QStringLiteral("tag");
    case Ask::Nothing:
      return QStringLiteral("ended");
  }
  return {};
}

/// A quantity as typed ("52.5 Cel") as people of a system read it; what is none stays as it is.
QString shown(const std::string& quantity, const ViewFor& reader) {
  const Expected<ReadQuantity> read = readAnyQuantity(quantity);
  if (!read) return qt(quantity);
  const std::string number = quantity.substr(0, quantity.find(' '));
  const std::size_t point = number.find('.');
  const int decimals =
      point == std::string::npos ? 0 : static_cast<int>(std::min<std::size_t>(number.size() - point - 1, 6));
  return qt(session::show(Amount{read->unit.fromSi(read->value_si), std::string(read->unit.ucum), decimals},
                          reader.reader.system, session::localeOf(reader.reader.language)));
}

class Words {
 public:
  Words(const OpenJob& job, const ViewFor& reader) : job_(job), reader_(reader) {}
  [[nodiscard]] QString of(const Message& message) const {
    if (message.code.empty()) return {};
    // A job's own words stay in the language in which it was begun.
    if (!job_.words.contains(message.code)) return qt(session::say(message, reader_.reader));
    return qt(session::say(job_.words, message, reader_.reader.system, session::localeOf(job_.job.language)));
  }
  [[nodiscard]] QString of(const std::string& code) const { return of(Message{code, {}}); }

 private:
  const OpenJob& job_;
  const ViewFor& reader_;
};

QString limitText(const OpenJob& job, const std::optional<procedures::Limit>& limit, const ViewFor& reader) {
  if (!limit) return {};
  if (!limit->text.empty()) return shown(limit->text, reader);
  if (const auto given = job.state.start.entries.find(limit->entry); given != job.state.start.entries.end()) {
    return shown(given->second, reader);
  }
  const auto entry = std::ranges::find(job.procedure.entries, limit->entry, &procedures::Entry::id);
  return entry == job.procedure.entries.end() ? QString() : shown(entry->standard, reader);
}

/// The units that people use for a dimension, metric first.
std::vector<std::string> usualUnits(Dimension dimension, UnitSystem system) {
  using enum UnitSystem;
  const bool us = system == UsCustomary;
  switch (dimension) {
    case Dimension::Mass:
      return us ? std::vector<std::string>{"[lb_av]", "[ston_av]", "kg", "t"}
                : std::vector<std::string>{"kg", "t", "[lb_av]", "[ston_av]"};
    case Dimension::Pressure:
      return us ? std::vector<std::string>{"[psi]", "bar", "kPa", "MPa"}
                : std::vector<std::string>{"bar", "kPa", "MPa", "[psi]"};
    case Dimension::Temperature:
      return us ? std::vector<std::string>{"[degF]", "Cel"} : std::vector<std::string>{"Cel", "[degF]"};
    case Dimension::Length:
      return us ? std::vector<std::string>{"[in_i]", "[ft_i]", "mm", "m"}
                : std::vector<std::string>{"m", "mm", "[in_i]", "[ft_i]"};
    default:
      return {};
  }
}

QVariantMap unitChoice(const std::string& code, const session::Locale& locale) {
  return {{QStringLiteral("code"), qt(code)}, {QStringLiteral("symbol"), unitSymbol(code, locale)}};
}

/// The unit of the last reading of a step, else of its quantity in this job; "" where there is none.
std::string lastUnit(const OpenJob& job, const Step& step) {
  std::string of_quantity;
  for (const procedures::Try& made : job.state.tries | std::views::reverse) {
    if (made.event.type != procedures::EventType::Reading) continue;
    const Step* const read = procedures::findStep(job.procedure, made.event.about);
    if (read == nullptr || read->quantity != step.quantity) continue;
    const std::string unit = made.event.value.substr(made.event.value.find(' ') + 1);
    if (read->id == step.id) return unit;
    if (of_quantity.empty()) of_quantity = unit;
  }
  return of_quantity;
}

/// A known mass that was read before in this job, else the one on file; "" where there is none.
std::string knownMass(const OpenJob& job) {
  for (const procedures::Try& made : job.state.tries | std::views::reverse) {
    const Step* const read = procedures::findStep(job.procedure, made.event.about);
    if (made.counts && made.event.type == procedures::EventType::Reading && read != nullptr &&
        read->quantity == "reference-mass")
      return made.event.value;
  }
  const auto on_file = job.unit.entries.find("test-mass");
  return on_file == job.unit.entries.end() ? std::string() : on_file->second;
}

/// In which units a reading may be typed, the one that was typed last first: those that the monitor has where
/// it comes from there, else what its people use.
QVariantList unitsFor(const OpenJob& job, const Step& step, const ViewFor& reader) {
  std::vector<std::string> codes;
  const auto add = [&](const std::string& code) {
    if (std::ranges::find(codes, code) == codes.end()) codes.push_back(code);
  };
  if (step.source == procedures::Source::Machine) {
    for (const session::Shown& shows : job.unit.monitor) {
      if (shows.quantity == step.quantity) add(shows.unit);
    }
  }
  if (codes.empty()) {
    const std::optional<Unit> own = findUnit(step.unit);
    const std::vector<std::string> usual =
        own ? usualUnits(own->dimension, reader.reader.system) : std::vector<std::string>();
    // The unit that the step names stands first, unless the reader's are of another system.
    if (reader.reader.system == UnitSystem::UsCustomary && !usual.empty()) add(usual.front());
    add(step.unit);
    for (const procedures::OtherUnit& other : step.others) add(other.unit);
    for (const std::string& unit : usual) add(unit);
  }
  if (const auto last = std::ranges::find(codes, lastUnit(job, step)); last != codes.end())
    std::rotate(codes.begin(), last, last + 1);
  QVariantList choices;
  for (const std::string& code : codes)
    choices.append(unitChoice(code, session::localeOf(reader.reader.language)));
  return choices;
}

QString boomName(procedures::BoomPlace place) {
  using enum procedures::BoomPlace;
  switch (place) {
    case Lowest:
      return QStringLiteral("lowest");
    case Highest:
      return QStringLiteral("highest");
    case Level:
      return QStringLiteral("level");
    case Carry:
      return QStringLiteral("carry");
    case Ground:
      return QStringLiteral("ground");
    case Any:
      break;
  }
  return {};
}

QString bucketName(procedures::BucketPlace place) {
  using enum procedures::BucketPlace;
  switch (place) {
    case RackedBack:
      return QStringLiteral("racked");
    case Level:
      return QStringLiteral("level");
    case Dumped:
      return QStringLiteral("dumped");
    case Any:
      break;
  }
  return {};
}

/// What a survey says of the linkage, a sentence each.
QStringList foundBy(const OpenJob& job, const procedures::Try& made, const Words& words,
                    const ViewFor& reader) {
  const Step* const named = procedures::findStep(job.procedure, made.step);
  const std::string step = named == nullptr ? "" : plain(words.of(named->text));
  QStringList lines;
  for (const Message& message : session::saySurvey(made.result, made.reason, made.limit, step))
    lines.append(qt(session::say(message, reader.reader)));
  return lines;
}

/// What a try said: an answer in words, a number, a note.
QString saidBy(const OpenJob& job, const procedures::Try& made, const Words& words, const ViewFor& reader) {
  const Step* const step = procedures::findStep(job.procedure, made.event.about);
  const procedures::Event& event = made.event;
  if (event.type == procedures::EventType::Reading) return shown(event.value, reader);
  if (event.type == procedures::EventType::Evaluate) {
    if (step != nullptr && step->check && step->check->kind == procedures::CheckKind::Survey)
      return foundBy(job, made, words, reader).join(QLatin1Char(' '));
    if (const auto proved = session::sayProof(made.result, made.reason, made.limit, made.more))
      return qt(session::say(*proved, reader.reader));
    if (!made.result.empty()) return shown(made.result, reader);
    return made.reason.empty() ? QString() : words.of(made.reason);
  }
  if (event.type == procedures::EventType::Acknowledge) return tr("read");
  if (event.type == procedures::EventType::ZoneClear) return tr("zone clear");
  if (event.type == procedures::EventType::GoBack) return tr("gone back to do it again");
  if (event.type != procedures::EventType::Answer) return {};
  if (step != nullptr && step->kind == StepKind::Monitor) {
    const auto answer = std::ranges::find(step->answers, event.answer, &procedures::Answer::id);
    const QString said = answer == step->answers.end() ? qt(event.answer) : words.of(answer->text);
    return event.value.empty() ? said : said + QStringLiteral(" (") + qt(event.value) + QStringLiteral(")");
  }
  if (!event.value.empty()) return qt(event.value);
  if (event.answer == "yes") return tr("yes");
  if (event.answer == "no") return tr("no");
  if (event.answer == "done") return tr("done");
  if (event.answer == "failed") return tr("did not work");
  if (event.answer == "taken") return tr("photo or file kept");
  if (event.answer == "skipped") return tr("left out");
  if (event.answer == "signed") return tr("signed");
  if (event.answer == "absent") return tr("not there to sign");
  if (event.answer == "refused") return tr("refused to sign");
  if (event.answer == "unconfirmed") return tr("nobody there to confirm");
  return qt(event.answer);
}

void addHistory(JobView& view, const OpenJob& job, const Words& words, const ViewFor& reader) {
  constexpr std::size_t kShown = 40;
  for (const procedures::Try& made : job.state.tries | std::views::reverse) {
    if (view.history.size() >= static_cast<qsizetype>(kShown)) break;
    QString text;
    if (const Step* const step = procedures::findStep(job.procedure, made.event.about)) {
      text = words.of(procedures::textOf(job.procedure, job.state, *step));
    } else if (const procedures::Caution* const caution =
                   procedures::findCaution(job.procedure, made.event.about)) {
      text = words.of(caution->hazard);
    } else {
      continue;
    }
    view.history.append(QVariantMap{{QStringLiteral("step"), qt(made.event.about)},
                                    {QStringLiteral("text"), text},
                                    {QStringLiteral("value"), saidBy(job, made, words, reader)},
                                    {QStringLiteral("failed"), made.outcome == procedures::Outcome::Failed},
                                    {QStringLiteral("counts"), made.counts}});
  }
}

void addStep(JobView& view, const OpenJob& job, const Step& step, const ViewFor& reader) {
  view.kind = qt(procedures::nameOf(step.kind));
  view.second_person = step.second_person;
  for (const std::string& role : step.second_person ? job.procedure.confirm_roles : step.roles)
    view.acting_roles.append(qt(role));
  view.optional = step.optional;
  view.measure = measureMap(job, step);
  view.on_glass = step.on_glass;
  view.photo = step.evidence == procedures::EvidenceKind::Photo;
  view.boom = boomName(step.boom);
  view.bucket = bucketName(step.bucket);
  view.approach = step.approach == procedures::Approach::FromBelow   ? QStringLiteral("from-below")
                  : step.approach == procedures::Approach::FromAbove ? QStringLiteral("from-above")
                                                                     : QString();
  view.direction =
      step.direction == procedures::Direction::Up ? QStringLiteral("up") : QStringLiteral("down");
  view.pace = step.pace == procedures::Pace::Slow   ? QStringLiteral("slow")
              : step.pace == procedures::Pace::Fast ? QStringLiteral("fast")
                                                    : QStringLiteral("own");
  view.load = step.load == procedures::Load::Empty      ? QStringLiteral("empty")
              : step.load == procedures::Load::TestMass ? QStringLiteral("test-mass")
                                                        : QStringLiteral("any");
  view.log = step.log == procedures::LogNeed::Required ? QStringLiteral("required")
             : step.log == procedures::LogNeed::Wanted ? QStringLiteral("wanted")
                                                       : QStringLiteral("none");
  if (!step.duration.empty()) view.hold_ms = static_cast<int>(procedures::milliseconds(step.duration));
  if (step.kind == StepKind::Reading) {
    view.machine_source = step.source == procedures::Source::Machine;
    const auto& monitor = job.unit.monitor;
    view.from_monitor = view.machine_source &&
                        (monitor.empty() || std::ranges::find(monitor, step.quantity,
                                                              &session::Shown::quantity) != monitor.end());
    view.quantity = qt(step.quantity);
    view.unit_code = qt(step.unit);
    view.units = unitsFor(job, step, reader);
    const procedures::Limits& limits = step.accept ? *step.accept : step.plausible;
    view.low = limitText(job, limits.low, reader);
    view.high = limitText(job, limits.high, reader);
    if (step.quantity == "reference-mass") {
      if (const std::string mass = knownMass(job); !mass.empty()) {
        const std::size_t space = mass.find(' ');
        view.known = {
            {QStringLiteral("number"), qt(mass.substr(0, space))},
            {QStringLiteral("unit"), qt(mass.substr(space + 1))},
            {QStringLiteral("text"), qt(session::asTyped(mass, session::localeOf(reader.reader.language)))}};
      }
    }
  }
  for (const procedures::Try& made : job.state.tries | std::views::reverse) {
    if (made.event.about == step.id && made.event.type == procedures::EventType::Reading) {
      view.last_value = shown(made.event.value, reader);
      break;
    }
  }
}

}  // namespace

QString unitSymbol(std::string_view ucum, const session::Locale& locale) {
  return qt(session::unitText(ucum, locale)).trimmed();
}

QVariantMap weighedView(const session::WeighedLift& lift, const session::Reader& reader) {
  const session::Locale& locale = session::localeOf(reader.language);
  return {{QStringLiteral("text"), qt(session::inUnitsOf(lift.value, reader))},
          {QStringLiteral("doubt"), qt(session::show({lift.expanded_kg, "kg", 1}, reader.system, locale))}};
}

JobView viewOf(const OpenJob& job, const ViewFor& reader) {
  const Words words(job, reader);
  const procedures::Prompt asked = procedures::prompt(job.procedure, job.state);
  JobView view;
  view.id = qt(job.job.id);
  view.unit = qt(job.job.unit);
  view.attachment = qt(job.job.attachment);
  view.procedure = qt(job.procedure.id);
  view.title = words.of(job.procedure.title);
  view.comes_first = words.of(job.procedure.comes_first);
  view.practice = job.unit.practice;
  view.phase = qt(procedures::nameOf(job.state.phase));
  view.ask = askName(asked.ask);
  view.about = qt(asked.about);
  view.text = words.of(asked.text);
  view.detail = words.of(asked.detail);
  view.go_back_to = qt(asked.back_to);
  view.by_itself = asked.by_itself;
  view.record = qt(job.job.record);
  view.mine = reader.key == job.state.person;
  view.in_charge = qt(job.state.person);
  view.may_take_over =
      std::ranges::find(job.procedure.run_roles, reader.role) != job.procedure.run_roles.end();
  const bool safe = job.state.phase == procedures::Phase::MakingSafe;
  for (std::size_t index = 0; index < job.procedure.steps.size(); ++index) {
    if (!procedures::hasStep(job.state.start.variant, job.procedure.steps[index])) continue;
    ++view.total;
    if (index < job.state.position || procedures::hasEnded(job.state.phase) || safe) ++view.done;
  }
  if (!asked.caution.empty()) {
    if (const procedures::Caution* const caution = procedures::findCaution(job.procedure, asked.caution)) {
      view.signal_word = qt(procedures::nameOf(caution->signal));
      view.hazard = words.of(caution->hazard);
      view.consequence = words.of(caution->consequence);
      view.avoidance = words.of(caution->avoidance);
    }
  }
  const Step* const step = procedures::findStep(job.procedure, asked.about);
  if (step != nullptr && asked.caution.empty()) addStep(view, job, *step, reader);
  for (const std::string& id : asked.answers) {
    QVariantMap answer{{QStringLiteral("id"), qt(id)}};
    if (step != nullptr && step->kind == StepKind::Monitor) {
      const auto found = std::ranges::find(step->answers, id, &procedures::Answer::id);
      answer[QStringLiteral("text")] = found == step->answers.end() ? qt(id) : words.of(found->text);
      answer[QStringLiteral("good")] = found != step->answers.end() && found->passes;
    }
    if (id == "unconfirmed" && job.state.start.lone_work != procedures::LoneWork::Unconfirmed) continue;
    view.answers.append(answer);
  }
  if (job.state.doubt) {
    const session::Locale& locale = session::localeOf(reader.reader.language);
    view.doubt_value = qt(session::asTyped(job.state.doubt->value, locale));
    for (const std::string& suggestion : asked.suggestions) {
      view.suggestions.append(
          QVariantMap{{QStringLiteral("value"), qt(suggestion)},
                      {QStringLiteral("text"), qt(session::asTyped(suggestion, locale))}});
    }
  }
  if (asked.finished_at_ms) view.finished_at_ms = static_cast<double>(*asked.finished_at_ms);
  if (asked.after_failure) {
    const procedures::Try& made = job.state.tries[*asked.after_failure];
    if (const Step* const failed = procedures::findStep(job.procedure, made.event.about)) {
      view.failed = words.of(procedures::textOf(job.procedure, job.state, *failed));
      view.failed_why = saidBy(job, made, words, reader);
    }
  }
  for (const procedures::Try& made : job.state.tries | std::views::reverse) {
    const Step* const judged = procedures::findStep(job.procedure, made.event.about);
    if (judged == nullptr || !judged->check || judged->check->kind != procedures::CheckKind::Survey) continue;
    view.found = foundBy(job, made, words, reader);
    break;
  }
  for (const procedures::Mark& mark : job.state.marks) view.marks.append(words.of(mark.mark));
  if (const auto tag = session::tagOf(job)) {
    for (const std::string& line : *tag) view.tag.append(qt(line));
  }
  addHistory(view, job, words, reader);
  return view;
}

}  // namespace hingepin::mobile
