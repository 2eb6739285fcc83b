// SPDX-License-Identifier: Apache-2.0
#include "engine/session/job_record.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "engine/base/named.h"
#include "engine/calibration/calibration.h"
#include "engine/calibration/model.h"
#include "engine/procedures/evaluate.h"
#include "engine/procedures/journal.h"
#include "engine/records/encoding.h"
#include "engine/session/catalogue.h"
#include "engine/session/fitting.h"
#include "engine/session/surveying.h"
#include "engine/session/told.h"
#include "engine/units/degree.h"
#include "engine/units/ucum.h"

namespace hingepin::session {
namespace {

using procedures::Phase;
using procedures::Step;
using procedures::Try;
using records::jsonArray;
using records::jsonBoolean;
using records::jsonInteger;
using records::jsonNull;
using records::jsonObject;
using records::jsonString;
using Members = std::vector<std::pair<std::string, JsonValue>>;

constexpr std::array kFits = {Named{"boom-angle", procedures::Fit::BoomAngle},
                              Named{"bucket-angle", procedures::Fit::BucketAngle},
                              Named{"lift-pressure", procedures::Fit::LiftPressure}};

/// Adds a text that is not empty.
void add(Members& members, const char* key, const std::string& text) {
  if (!text.empty()) members.emplace_back(key, jsonString(text));
}

JsonValue decimal(double value, int decimals) { return jsonString(fmt::format("{:.{}f}", value, decimals)); }

template <class List>
JsonValue textList(const List& texts) {
  std::vector<JsonValue> items;
  for (const auto& text : texts) items.push_back(jsonString(std::string(text)));
  return jsonArray(std::move(items));
}

std::string limitText(const OpenJob& job, const procedures::Limit& limit) {
  if (limit.entry.empty()) return limit.text;
  const auto given = job.state.start.entries.find(limit.entry);
  if (given != job.state.start.entries.end()) return given->second;
  const auto entry = std::ranges::find(job.procedure.entries, limit.entry, &procedures::Entry::id);
  return entry == job.procedure.entries.end() ? "" : entry->standard;
}

/// What a check asks, with the limits that held for this job.
JsonValue checkContent(const OpenJob& job, const procedures::Check& check) {
  Members members = {{"kind", jsonString(std::string(procedures::nameOf(check.kind)))},
                     {"of", textList(check.of)}};
  const auto limit = [&](const char* key, const std::optional<procedures::Limit>& value) {
    if (value) add(members, key, limitText(job, *value));
  };
  limit("low", check.low);
  limit("high", check.high);
  limit("value", check.value);
  limit("target", check.target);
  limit("within", check.within);
  limit("at_most", check.at_most);
  limit("reference_entry", check.reference_entry);
  add(members, "reference", check.reference);
  add(members, "duration", check.duration);
  limit("interval", check.interval);
  add(members, "gross", check.gross);
  add(members, "tare", check.tare);
  limit("legal_gross", check.legal_gross);
  limit("tape_u", check.tape_u);
  limit("inclinometer_u", check.inclinometer_u);
  Members scale;
  for (const auto& [key, step] : check.scale) scale.emplace_back(key, jsonString(step));
  if (!scale.empty()) members.emplace_back("scale", jsonObject(std::move(scale)));
  if (check.count > 0) members.emplace_back("count", jsonInteger(check.count));
  if (check.kind == procedures::CheckKind::FitResidual) {
    add(members, "fit", std::string(nameIn(kFits, check.fit)));
  }
  return jsonObject(std::move(members));
}

/// Everybody who did something, each once, in the order in which they came in.
class People {
 public:
  std::int64_t indexOf(const procedures::Event& event) {
    const Actor actor{event.who, event.role, event.device};
    const auto same = [&](const Actor& each) {
      return each.who == actor.who && each.role == actor.role && each.device == actor.device;
    };
    const auto found = std::ranges::find_if(people_, same);
    const auto index = found - people_.begin();
    if (found == people_.end()) people_.push_back(actor);
    return index;
  }
  [[nodiscard]] JsonValue content() const {
    std::vector<JsonValue> items;
    for (const Actor& each : people_) {
      Members members;
      add(members, "key", each.who);
      add(members, "role", each.role);
      add(members, "device", each.device);
      items.push_back(jsonObject(std::move(members)));
    }
    return jsonArray(std::move(items));
  }

 private:
  std::vector<Actor> people_;
};

/// One try: the event as the journal has it, the person by number, and what came of it.
JsonValue tryContent(const OpenJob& job, const Try& each, People& people) {
  Members members;
  // What the runner wrote is JSON.
  const Expected<JsonDocument> event = readJson(procedures::writeEvent(each.event), "event");
  if (event) {
    for (std::size_t index = 0; index < event->root.keys.size(); ++index) {
      const std::string& key = event->root.keys[index];
      if (key == "who" || key == "role" || key == "device" || key == "start") continue;
      members.emplace_back(key, event->root.items[index]);
    }
  }
  members.emplace_back("by", jsonInteger(people.indexOf(each.event)));
  members.emplace_back("outcome", jsonString(std::string(procedures::nameOf(each.outcome))));
  members.emplace_back("counts", jsonBoolean(each.counts));
  add(members, "result", each.result);
  add(members, "reason", each.reason);
  add(members, "limit", each.limit);
  if (each.more > 0) members.emplace_back("more", jsonInteger(each.more));
  add(members, "step", each.step);
  Members rounds;
  for (const auto& [step, round] : each.rounds) rounds.emplace_back(step, jsonInteger(round));
  if (!rounds.empty()) members.emplace_back("rounds", jsonObject(std::move(rounds)));
  if (const Step* const step = procedures::findStep(job.procedure, each.event.about)) {
    add(members, "kind", std::string(procedures::nameOf(step->kind)));
    if (each.event.type == procedures::EventType::Reading) {
      add(members, "quantity", step->quantity);
      members.emplace_back("independent", jsonBoolean(step->source == procedures::Source::Independent));
    }
    if (step->check) members.emplace_back("check", checkContent(job, *step->check));
  }
  return jsonObject(std::move(members));
}

/// How the job was begun: variant, entries, what was done before, policy for lone work.
JsonValue startContent(const OpenJob& job) {
  const Expected<JsonDocument> event = readJson(procedures::writeEvent(job.journal.front()), "event");
  const JsonValue* const start = event ? memberAt(event->root, {"start"}) : nullptr;
  return start != nullptr ? *start : jsonNull();
}

JsonValue monitorContent(const UnitProfile& unit) {
  std::vector<JsonValue> items;
  for (const Shown& each : unit.monitor) {
    Members members = {{"quantity", jsonString(each.quantity)}, {"unit", jsonString(each.unit)}};
    add(members, "step", each.step);
    items.push_back(jsonObject(std::move(members)));
  }
  return jsonArray(std::move(items));
}

template <class Messages>
JsonValue codesOf(const Messages& messages) {
  std::vector<std::string> codes;
  for (const Message& message : messages) codes.push_back(message.code);
  return textList(codes);
}

/// What a calibration is worth: its sensor line, passes, known masses, and what each taught lift weighs by
/// it.
JsonValue summaryOf(const calibration::Job& job, const calibration::Calibration& calibration) {
  Members members;
  members.emplace_back("boom_line_angle_u_deg", decimal(calibration.boom_line.angle_u_rad / kDegree, 3));
  members.emplace_back("weigh_window_low_deg", decimal(calibration.window_low_rad / kDegree, 2));
  members.emplace_back("weigh_window_high_deg", decimal(calibration.window_high_rad / kDegree, 2));
  std::vector<JsonValue> passes;
  for (const calibration::PassSummary& pass : calibration.passes) {
    passes.push_back(
        jsonObject({{"name", jsonString(pass.name)},
                    {"direction", jsonString(pass.direction == calibration::Direction::Up ? "up" : "down")},
                    {"residual_bar", decimal(pass.residual_Pa / 1e5, 3)}}));
  }
  members.emplace_back("passes", jsonArray(std::move(passes)));
  std::vector<JsonValue> checks;
  for (const calibration::MassCheck& check : calibration.mass_checks) {
    checks.push_back(jsonObject({{"name", jsonString(check.name)},
                                 {"reference_kg", decimal(check.reference_kg, 1)},
                                 {"predicted_kg", decimal(check.predicted_kg, 1)},
                                 {"difference_u_kg", decimal(check.difference_u_kg, 1)}}));
  }
  members.emplace_back("known_masses", jsonArray(std::move(checks)));
  std::vector<JsonValue> weighed;
  for (const calibration::Lift& lift : job.lifts) {
    const Expected<calibration::Weighing> weighing = calibration::weigh(calibration, lift.readings);
    if (!weighing) continue;
    weighed.push_back(jsonObject({{"name", jsonString(lift.name)},
                                  {"mass_kg", decimal(weighing->mass_kg, 1)},
                                  {"expanded_uncertainty_kg", decimal(weighing->expanded_uncertainty_kg, 1)},
                                  {"coverage_factor", decimal(weighing->coverage_factor, 2)}}));
  }
  members.emplace_back("weighed", jsonArray(std::move(weighed)));
  members.emplace_back("taken", codesOf(calibration.taken));
  members.emplace_back("warnings", codesOf(calibration.warnings));
  return jsonObject(std::move(members));
}

/// "procedure/mark", so that a later job of the same procedure can lift what this one set.
std::string restrictionOf(const OpenJob& job, const std::string& mark) {
  return job.procedure.id + "/" + mark;
}

/// What now holds for unit and attachment. A job that taught starts afresh; any other changes its own
/// restrictions only.
Expected<std::optional<store::Pair>> pairAfter(const store::Store& store, const OpenJob& job,
                                               const std::string& calibration, const std::string& record,
                                               const Moment& now) {
  if (job.job.attachment.empty()) return std::nullopt;
  Expected<std::optional<store::Pair>> before = store.pair(job.job.unit, job.job.attachment);
  if (!before) return std::unexpected(before.error());
  store::Pair pair = before->value_or(store::Pair{.unit = job.job.unit, .attachment = job.job.attachment});
  const bool done = job.state.phase == Phase::Done;
  const bool offered =
      std::ranges::find(job.unit.teaching, job.state.start.variant) != job.unit.teaching.end();
  const bool taught = done && (offered || !calibration.empty());
  std::erase_if(pair.restrictions, [&](const std::string& restriction) {
    return taught || restriction.starts_with(job.procedure.id + "/");
  });
  if (!done) pair.restrictions.push_back(restrictionOf(job, job.procedure.tag));
  for (const procedures::Mark& mark : job.state.marks) {
    // What the runner marks by itself is about people and does not restrict the scale.
    if (!procedures::textCodesOf(job.procedure).contains(mark.mark)) continue;
    // Nor does what was found before the scale was taught anew.
    if (taught && isAsFound(mark.step)) continue;
    const std::string restriction = restrictionOf(job, mark.mark);
    if (std::ranges::find(pair.restrictions, restriction) == pair.restrictions.end()) {
      pair.restrictions.push_back(restriction);
    }
  }
  if (taught) {
    pair.calibration = calibration;
    pair.record = record;
    pair.due_utc_ms.reset();
    if (!job.unit.recheck_after.empty()) {
      pair.due_utc_ms = now.utc_ms + procedures::milliseconds(job.unit.recheck_after);
    }
  }
  if (!taught && !*before && pair.restrictions.empty()) return std::nullopt;
  return pair;
}

}  // namespace

const JsonValue* memberAt(const JsonValue& object, std::initializer_list<std::string_view> path) {
  const JsonValue* value = &object;
  for (const std::string_view key : path) {
    if (value->kind != JsonKind::Object) return nullptr;
    const auto found = std::ranges::find(value->keys, key);
    if (found == value->keys.end()) return nullptr;
    value = &value->items[static_cast<std::size_t>(found - value->keys.begin())];
  }
  return value;
}

std::string textAt(const JsonValue& object, std::initializer_list<std::string_view> path) {
  const JsonValue* const value = memberAt(object, path);
  return value != nullptr && value->kind == JsonKind::String ? value->text : "";
}

Expected<std::optional<Fit>> fitOf(const store::Store& store, const OpenJob& job, const Edge& edge) {
  std::optional<std::string> text = calibrationJobOf(job.procedure, job.state, job.unit, attachmentOf(job));
  if (!text) return std::nullopt;
  const BlobSource logs = blobsOf(store);
  Expected<calibration::Job> read = edge.read_job(*text, logs);
  const auto unusable = [](const Error& error) { return error.kind != ErrorKind::IoFailed; };
  if (!read) {
    if (unusable(read.error())) return std::nullopt;
    return std::unexpected(read.error());
  }
  Expected<calibration::Calibration> fitted = calibration::calibrate(*read);
  if (!fitted) return std::nullopt;
  return Fit{.job_file = *std::move(text), .job = *std::move(read), .calibration = *std::move(fitted)};
}

Expected<std::optional<Taught>> calibrationOf(const store::Store& store, const OpenJob& job,
                                              const Edge& edge) {
  Expected<std::optional<Fit>> fit = fitOf(store, job, edge);
  if (!fit) return std::unexpected(std::move(fit.error()));
  if (!*fit) return std::nullopt;
  return Taught{.job_file = (*fit)->job_file,
                .calibration = edge.write_calibration((*fit)->calibration),
                .summary = summaryOf((*fit)->job, (*fit)->calibration)};
}

JsonValue recordContent(const OpenJob& job, const JsonValue& calibration, std::string_view engine,
                        std::int64_t ended_utc_ms) {
  People people;
  std::vector<JsonValue> tries;
  for (const Try& each : job.state.tries) tries.push_back(tryContent(job, each, people));
  std::vector<JsonValue> marks;
  for (const procedures::Mark& mark : job.state.marks) {
    marks.push_back(jsonObject({{"step", jsonString(mark.step)}, {"mark", jsonString(mark.mark)}}));
  }
  const std::vector<std::string>& profiles = job.journal.front().hashes;
  Members unit = {{"id", jsonString(job.job.unit)},
                  {"profile", jsonString(profiles.front())},
                  {"monitor", monitorContent(job.unit)},
                  {"practice", jsonBoolean(job.unit.practice)}};
  Members members = {{"kind", jsonString("job")},
                     {"job", jsonString(job.job.id)},
                     {"unit", jsonObject(std::move(unit))},
                     {"procedure", jsonObject({{"id", jsonString(job.procedure.id)},
                                               {"version", jsonInteger(job.procedure.version)},
                                               {"hash", jsonString(job.job.procedure)}})},
                     {"words", jsonObject({{"language", jsonString(job.job.language)},
                                           {"hash", jsonString(job.job.words)}})},
                     {"start", startContent(job)},
                     {"begun_utc_ms", jsonInteger(job.job.begun_utc_ms)},
                     {"ended_utc_ms", jsonInteger(ended_utc_ms)},
                     {"phase", jsonString(std::string(procedures::nameOf(job.state.phase)))},
                     {"tries", jsonArray(std::move(tries))},
                     {"marks", jsonArray(std::move(marks))},
                     {"calibration", calibration},
                     {"engine", jsonString(std::string(engine))}};
  if (!job.job.attachment.empty()) {
    members.emplace_back("attachment", jsonObject({{"id", jsonString(job.job.attachment)},
                                                   {"profile", jsonString(profiles.back())}}));
  }
  if (job.state.phase != Phase::Done) {
    members.emplace_back("tag", jsonString(job.procedure.tag));
    add(members, "failed_step", job.state.failed_step);
  }
  members.emplace_back("people", people.content());
  return jsonObject(std::move(members));
}

JsonValue contentBefore(const OpenJob& job, const Step& check) {
  People people;
  std::vector<JsonValue> tries;
  for (const Try& each : job.state.tries) tries.push_back(tryContent(job, each, people));
  const Try now{.event = {.type = procedures::EventType::Evaluate, .about = check.id}};
  tries.push_back(tryContent(job, now, people));
  return jsonObject({{"kind", jsonString("job")},
                     {"unit", jsonObject({{"id", jsonString(job.job.unit)}})},
                     {"start", jsonObject({{"variant", jsonString(job.state.start.variant)}})},
                     {"tries", jsonArray(std::move(tries))}});
}

Expected<std::string> endJob(store::Store& store, const OpenJob& job, const Sealer& sealer,
                             std::string_view engine, const Moment& now, const Edge& edge) {
  if (!procedures::hasEnded(job.state.phase))
    return fail(ErrorKind::InvalidInput, "job-not-ended", {{"job", job.job.id}});
  if (!job.job.record.empty())
    return fail(ErrorKind::InvalidInput, "job-sealed-already", {{"record", job.job.record}});
  if (sealer.key.id() != job.state.person || sealer.role != job.state.role) {
    return fail(ErrorKind::InvalidInput, "not-in-charge");
  }
  if (const Expected<void> may = mayAct(store, sealer.key.id(), sealer.role, now.utc_ms); !may) {
    return std::unexpected(may.error());
  }
  JsonValue calibration = jsonNull();
  std::string calibration_hash;
  Expected<std::optional<Taught>> taught = calibrationOf(store, job, edge);
  if (!taught) return std::unexpected(taught.error());
  if (*taught) {
    const Expected<std::string> file = store.putBlob((*taught)->job_file, "application/json");
    if (!file) return file;
    const Expected<std::string> hash = store.putBlob((*taught)->calibration, "application/json");
    if (!hash) return hash;
    calibration_hash = *hash;
    calibration = (*taught)->summary;
    calibration.keys.insert(calibration.keys.end(), {"hash", "job_file"});
    calibration.items.insert(calibration.items.end(), {jsonString(*hash), jsonString(*file)});
  }

  records::Record record;
  record.content = recordContent(job, calibration, engine, now.utc_ms);
  const Expected<std::optional<store::Unit>> stored = store.unit(job.job.unit);
  if (!stored) return std::unexpected(stored.error());
  std::optional<store::Unit> unit;
  if (const auto found = *stored ? foundLinkage(job, (*stored)->profile, edge) : std::nullopt) {
    const Expected<std::string> survey = store.putBlob(found->survey, "application/json");
    if (!survey) return survey;
    const Expected<std::string> profile = store.putBlob(found->profile, "application/json");
    if (!profile) return profile;
    unit = store::Unit{.id = job.job.unit, .profile = found->profile};
    record.content.keys.emplace_back("linkage");
    record.content.items.push_back(
        jsonObject({{"survey", jsonString(*survey)},
                    {"unit_profile", jsonString(*profile)},
                    {"expanded_uncertainty_kg", decimal(found->expanded_uncertainty_kg, 1)}}));
  }
  // Photos and signatures on the glass are about people: named apart, so that they can be erased.
  const Expected<std::vector<store::Personal>> personal = store.personal();
  if (!personal) return std::unexpected(personal.error());
  std::map<std::string, int, std::less<>> numbers;
  for (const Try& each : job.state.tries) {
    for (const std::string& hash : each.event.hashes) {
      if (std::ranges::find(*personal, hash, &store::Personal::name) == personal->end()) continue;
      record.personal.emplace(fmt::format("{}-{}", each.event.about, ++numbers[each.event.about]), hash);
    }
  }
  const Expected<std::optional<records::Head>> head = store.head(sealer.key.id(), sealer.epoch);
  if (!head) return std::unexpected(head.error());
  record.envelope = {.place = records::nextPlace(*head, sealer.key.id(), sealer.installation, sealer.epoch),
                     .role = sealer.role,
                     .sealed_utc_ms = now.utc_ms};
  const Expected<records::SealedStatement> sealed = records::sealStatement(record, sealer.key);
  if (!sealed) return std::unexpected(sealed.error());
  Expected<std::optional<store::Pair>> pair = pairAfter(store, job, calibration_hash, sealed->name, now);
  if (!pair) return std::unexpected(pair.error());
  const store::Ending ending{
      .job = job.job.id,
      .phase = std::string(procedures::nameOf(job.state.phase)),
      .record = {.name = sealed->name, .text = sealed->text, .job = job.job.id, .unit = job.job.unit},
      .pair = *std::move(pair),
      .unit = std::move(unit),
      .now_utc_ms = now.utc_ms};
  if (const Expected<void> ended = store.endJob(ending); !ended) return std::unexpected(ended.error());
  return sealed->name;
}

Expected<records::Record> recordOf(const store::Store& store, std::string_view name) {
  const auto missing = [&] {
    return fail(ErrorKind::NotFound, "record-not-in-store", {{"record", std::string(name)}});
  };
  const Expected<std::optional<store::StoredStatement>> stored = store.statement(name);
  if (!stored) return std::unexpected(stored.error());
  if (!*stored) return missing();
  const Expected<records::Sealed> sealed = records::readSealed((*stored)->text);
  if (!sealed) return std::unexpected(sealed.error());
  Expected<records::Statement> statement = records::readPayload(sealed->payload, sealed->type);
  if (!statement) return std::unexpected(statement.error());
  if (const auto* const record = std::get_if<records::Record>(&*statement)) return *record;
  return missing();
}

namespace {

/// What the sealer says at the next place of the own chain. Errors: those of mayAct.
Expected<records::Envelope> nextEnvelope(const store::Store& store, const Sealer& sealer, const Moment& now) {
  if (const Expected<void> may = mayAct(store, sealer.key.id(), sealer.role, now.utc_ms); !may) {
    return std::unexpected(may.error());
  }
  const Expected<std::optional<records::Head>> head = store.head(sealer.key.id(), sealer.epoch);
  if (!head) return std::unexpected(head.error());
  return records::Envelope{
      .place = records::nextPlace(*head, sealer.key.id(), sealer.installation, sealer.epoch),
      .role = sealer.role,
      .sealed_utc_ms = now.utc_ms};
}

Expected<std::string> sealAndKeep(store::Store& store, const records::Statement& statement,
                                  const std::string& unit, const Sealer& sealer, const Moment& now) {
  const Expected<records::SealedStatement> sealed = records::sealStatement(statement, sealer.key);
  if (!sealed) return std::unexpected(sealed.error());
  const Expected<void> kept =
      store.putStatement({.name = sealed->name, .text = sealed->text, .unit = unit}, now.utc_ms);
  if (!kept) return std::unexpected(kept.error());
  return sealed->name;
}

}  // namespace

Expected<std::string> signRecord(store::Store& store, std::string_view name, const Sealer& sealer,
                                 const Moment& now) {
  const Expected<records::Record> record = recordOf(store, name);
  if (!record) return std::unexpected(record.error());
  if (record->envelope.place.key == sealer.key.id()) {
    return fail(ErrorKind::InvalidInput, "record-signed-by-itself", {{"record", std::string(name)}});
  }
  Expected<records::Envelope> envelope = nextEnvelope(store, sealer, now);
  if (!envelope) return std::unexpected(envelope.error());
  return sealAndKeep(store, records::Signature{.envelope = *std::move(envelope), .record = std::string(name)},
                     textAt(record->content, {"unit", "id"}), sealer, now);
}

Expected<std::string> amendRecord(store::Store& store, std::string_view name, std::string correction,
                                  const Sealer& sealer, const Moment& now) {
  const Expected<records::Record> record = recordOf(store, name);
  if (!record) return std::unexpected(record.error());
  if (correction.find_first_not_of(" \t\r\n") == std::string::npos) {
    return fail(ErrorKind::InvalidInput, "text-empty");
  }
  Expected<records::Envelope> envelope = nextEnvelope(store, sealer, now);
  if (!envelope) return std::unexpected(envelope.error());
  std::string unit = textAt(record->content, {"unit", "id"});
  return sealAndKeep(
      store,
      records::Record{.envelope = *std::move(envelope),
                      .content = records::jsonObject(
                          {{"correction", records::jsonString(std::move(correction))},
                           {"unit", records::jsonObject({{"id", records::jsonString(unit)}})}}),
                      .amends = std::string(name)},
      unit, sealer, now);
}

Expected<std::string> recordEvent(store::Store& store, const std::string& unit, const std::string& attachment,
                                  proof::Event event, std::string note, const Sealer& sealer,
                                  const Moment& now) {
  const Expected<std::optional<store::Unit>> stored = store.unit(unit);
  if (!stored) return std::unexpected(stored.error());
  if (!*stored) return fail(ErrorKind::NotFound, "unit-not-in-store", {{"unit", unit}});
  Expected<records::Envelope> envelope = nextEnvelope(store, sealer, now);
  if (!envelope) return std::unexpected(envelope.error());
  Members members = {{"kind", jsonString("event")},
                     {"unit", jsonObject({{"id", jsonString(unit)}})},
                     {"event", jsonString(std::string(nameIn(proof::kEventNames, event)))}};
  if (!attachment.empty()) members.emplace_back("attachment", jsonObject({{"id", jsonString(attachment)}}));
  add(members, "note", std::move(note));
  return sealAndKeep(
      store, records::Record{.envelope = *std::move(envelope), .content = jsonObject(std::move(members))},
      unit, sealer, now);
}

Expected<std::vector<std::string>> tagOf(const OpenJob& job) {
  const Phase phase = job.state.phase;
  if (phase != Phase::Failed && phase != Phase::Abandoned && phase != Phase::Tagging) {
    return fail(ErrorKind::InvalidInput, "job-has-no-tag", {{"job", job.job.id}});
  }
  const auto words = [&](const std::string& code) { return say(job.words, {code, {}}, UnitSystem::Metric); };
  std::vector<std::string> lines = {words(job.procedure.tag), job.job.unit};
  if (!job.job.attachment.empty()) lines.push_back(job.job.attachment);
  lines.push_back(words(job.procedure.title));
  if (const Step* const step = procedures::findStep(job.procedure, job.state.failed_step);
      step != nullptr && !step->text.empty()) {
    const std::string text =
        say(job.words, procedures::textOf(job.procedure, job.state, *step), UnitSystem::Metric);
    lines.push_back(say(engineCatalogue(job.job.language),
                        {job.state.abandoned ? "tag-given-up-at" : "tag-failed-at", {{"step", text}}},
                        UnitSystem::Metric));
  }
  lines.push_back(utcText(job.journal.back().wall_utc_ms.value_or(job.job.begun_utc_ms)));
  lines.push_back(job.job.record.empty() ? job.job.id : job.job.record);
  return lines;
}

}  // namespace hingepin::session
