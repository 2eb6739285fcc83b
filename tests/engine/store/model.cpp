// SPDX-License-Identifier: Apache-2.0
#include "tests/engine/store/model.h"

#include <algorithm>
#include <set>

#include "engine/records/encoding.h"
#include "tests/engine/store/samples.h"

namespace hingepin::store {
namespace {

using records::kNow;

constexpr std::int64_t kDueAsked = kNow + 500;

struct Place {
  records::ChainPlace place;
  std::int64_t sealed_utc_ms;
  JsonValue content;
};

const Place& placeOf(const StoredStatement& statement) {
  static std::map<std::string, Place> known;  // reading is slow, and a name has one text
  if (const auto found = known.find(statement.name); found != known.end()) return found->second;
  const auto sealed = records::readSealed(statement.text).value();
  const auto read = records::readPayload(sealed.payload, sealed.type).value();
  const records::Envelope& envelope = records::envelopeOf(read);
  const auto* record = std::get_if<records::Record>(&read);
  const Place place{envelope.place, envelope.sealed_utc_ms,
                    record == nullptr ? JsonValue{} : record->content};
  return known.emplace(statement.name, place).first->second;
}

void hashesIn(const JsonValue& value, std::set<std::string>& hashes) {
  if (value.kind == JsonKind::String && value.text.size() == 64) hashes.insert(value.text);
  for (const JsonValue& item : value.items) hashesIn(item, hashes);
}

std::string joined(const std::vector<std::string>& texts) {
  std::string all;
  for (const std::string& text : texts) all += std::to_string(text.size()) + ":" + text + ";";
  return all;
}

std::string written(const Pair& pair) {
  return joined({pair.unit, pair.attachment, pair.calibration, pair.record,
                 pair.due_utc_ms ? std::to_string(*pair.due_utc_ms) : "", joined(pair.restrictions)});
}

std::string written(const Job& job) {
  return joined({job.id, job.unit, job.attachment, job.procedure_id, job.procedure, job.words, job.language,
                 std::to_string(job.begun_utc_ms), job.phase, job.record});
}

std::string written(const records::Head& head) {
  return joined({head.key, head.epoch, std::to_string(head.sequence), head.name});
}

std::string written(const StoredStatement& statement) {
  return joined({statement.name, statement.text, statement.job, statement.unit});
}

std::string written(const Personal& personal) {
  return joined(
      {personal.name, records::textOf(personal.salt), personal.bytes, personal.erased ? "erased" : ""});
}

std::string written(const Waiting& waiting) {
  return joined(
      {std::to_string(static_cast<int>(waiting.kind)), waiting.name, std::to_string(waiting.since_utc_ms)});
}

template <class Items>
std::string writtenAll(const Items& items) {
  std::string all;
  for (const auto& item : items) all += written(item);
  return all;
}

Facts writtenHeads(std::vector<records::Head> heads) {
  Facts facts;
  for (const records::Head& head : heads) facts["known head " + written(head)] = "";
  return facts;
}

std::string putPair(Model& model, const Pair& pair) {
  if (!model.units.contains(pair.unit)) return "unit-not-in-store";
  if (!model.attachments.contains(pair.attachment)) return "attachment-not-in-store";
  if (!pair.calibration.empty() && !model.blobs.contains(pair.calibration)) return "blob-not-in-store";
  model.pairs[{pair.unit, pair.attachment}] = pair;
  return "";
}

void queue(Model& model, WaitingKind kind, const std::string& name, std::int64_t now_utc_ms) {
  const auto same = [&](const Waiting& waiting) { return waiting.kind == kind && waiting.name == name; };
  if (std::ranges::none_of(model.waiting, same)) model.waiting.push_back({kind, name, now_utc_ms});
}

std::string putStatement(Model& model, const StoredStatement& statement, std::int64_t now_utc_ms,
                         bool queued) {
  const Place& read = placeOf(statement);
  if (!statement.job.empty()) {
    if (!model.journals.contains(statement.job)) return "job-not-in-store";
    for (const StoredStatement& other : model.statements) {
      const Place& there = placeOf(other);
      if (there.place.key == read.place.key && there.place.epoch == read.place.epoch &&
          there.place.sequence == read.place.sequence && other.name != statement.name) {
        return "chain-not-continued";
      }
    }
  }
  if (std::ranges::find(model.statements, statement.name, &StoredStatement::name) != model.statements.end())
    return "";
  model.statements.push_back(statement);
  if (!queued) return "";
  std::set<std::string> hashes;
  hashesIn(read.content, hashes);
  for (const std::string& hash : hashes) {
    if (model.blobs.contains(hash)) queue(model, WaitingKind::Blob, hash, now_utc_ms);
  }
  queue(model, WaitingKind::Statement, statement.name, now_utc_ms);
  return "";
}

Job* findJob(Model& model, const std::string& id) {
  const auto found = std::ranges::find(model.jobs, id, &Job::id);
  return found == model.jobs.end() ? nullptr : &*found;
}

struct ApplyToModel {
  Model& model;

  std::string operator()(const Unit& unit) const {
    model.units[unit.id] = unit.profile;
    return "";
  }
  std::string operator()(const Attachment& attachment) const {
    model.attachments[attachment.id] = attachment.profile;
    return "";
  }
  std::string operator()(const Pair& pair) const { return putPair(model, pair); }
  std::string operator()(const PutBlob& put) const {
    model.blobs[records::hashName(put.bytes)] = put.bytes;
    return "";
  }
  std::string operator()(const BeginJob& begin) const {
    if (findJob(model, begin.job.id) != nullptr) return "job-already-in-store";
    if (!model.units.contains(begin.job.unit)) return "unit-not-in-store";
    if (!begin.job.attachment.empty() && !model.attachments.contains(begin.job.attachment)) {
      return "attachment-not-in-store";
    }
    if (!model.blobs.contains(begin.job.procedure) || !model.blobs.contains(begin.job.words)) {
      return "blob-not-in-store";
    }
    model.jobs.push_back(begin.job);
    model.journals[begin.job.id] = {begin.event};
    return "";
  }
  std::string operator()(const AppendEvent& append) const {
    const Job* job = findJob(model, append.job);
    if (job == nullptr) return "job-not-in-store";
    if (job->phase != "running") return "job-ended";
    if (append.sequence != std::ssize(model.journals[append.job])) return "journal-not-continued";
    model.journals[append.job].push_back(append.event);
    return "";
  }
  std::string operator()(const Ending& ending) const {
    Job* job = findJob(model, ending.job);
    if (job == nullptr) return "job-not-in-store";
    if (job->phase != "running") return "job-ended";
    Model changed = model;
    StoredStatement record = ending.record;
    record.job = ending.job;
    if (auto code = putStatement(changed, record, ending.now_utc_ms, true); !code.empty()) return code;
    if (ending.pair) {
      if (auto code = putPair(changed, *ending.pair); !code.empty()) return code;
    }
    model = std::move(changed);
    job = findJob(model, ending.job);
    job->phase = ending.phase;
    job->record = record.name;
    return "";
  }
  std::string operator()(const PutStatement& put) const {
    return putStatement(model, put.statement, put.now_utc_ms, put.queue);
  }
  std::string operator()(const PutSigners& put) const {
    if (std::ranges::find(model.signers, put.list.name, &records::SealedSigners::name) != model.signers.end())
      return "";
    model.signers.push_back(put.list);
    queue(model, WaitingKind::Signers, put.list.name, put.now_utc_ms);
    return "";
  }
  std::string operator()(const AcceptRoot& accept) const {
    std::erase(model.roots, accept.name);
    model.roots.push_back(accept.name);
    return "";
  }
  std::string operator()(const records::Head& head) const {
    if (std::ranges::find(model.heads, written(head), [](const auto& each) { return written(each); }) ==
        model.heads.end()) {
      model.heads.push_back(head);
    }
    return "";
  }
  std::string operator()(const PutPersonal& put) const {
    const auto found = std::ranges::find(model.personal, put.personal.name, &Personal::name);
    if (found != model.personal.end()) return "";
    model.personal.push_back(put.personal);
    queue(model, WaitingKind::Personal, put.personal.name, put.now_utc_ms);
    return "";
  }
  std::string operator()(const ErasePersonal& erase) const {
    auto found = std::ranges::find(model.personal, erase.name, &Personal::name);
    if (found != model.personal.end() && found->erased) return "";
    if (found == model.personal.end()) {
      model.personal.push_back({.name = erase.name});
      found = model.personal.end() - 1;
    }
    *found = {.name = erase.name, .erased = true};
    for (Waiting& waiting : model.waiting) {
      if (waiting.kind == WaitingKind::Personal && waiting.name == erase.name) {
        waiting.since_utc_ms = std::max(waiting.since_utc_ms + 1, erase.now_utc_ms);
      }
    }
    queue(model, WaitingKind::Personal, erase.name, erase.now_utc_ms);
    return "";
  }
  std::string operator()(const Waiting& sent) const {
    std::erase(model.waiting, sent);
    return "";
  }
};

struct ApplyToStore {
  Store& store;

  Expected<void> operator()(const Unit& unit) const { return store.putUnit(unit); }
  Expected<void> operator()(const Attachment& attachment) const { return store.putAttachment(attachment); }
  Expected<void> operator()(const Pair& pair) const { return store.putPair(pair); }
  Expected<void> operator()(const PutBlob& put) const {
    const auto hash = store.putBlob(put.bytes, "application/octet-stream");
    if (!hash) return std::unexpected(hash.error());
    return {};
  }
  Expected<void> operator()(const BeginJob& begin) const { return store.beginJob(begin.job, begin.event); }
  Expected<void> operator()(const AppendEvent& append) const {
    return store.appendEvent(append.job, append.sequence, append.event);
  }
  Expected<void> operator()(const Ending& ending) const { return store.endJob(ending); }
  Expected<void> operator()(const PutStatement& put) const {
    return store.putStatement(put.statement, put.now_utc_ms, put.queue);
  }
  Expected<void> operator()(const PutSigners& put) const {
    return store.putSigners(put.list, put.now_utc_ms);
  }
  Expected<void> operator()(const AcceptRoot& accept) const { return store.acceptRoot(accept.name); }
  Expected<void> operator()(const records::Head& head) const { return store.putKnownHead(head); }
  Expected<void> operator()(const PutPersonal& put) const {
    return store.putPersonal(put.personal, put.now_utc_ms);
  }
  Expected<void> operator()(const ErasePersonal& erase) const {
    return store.erasePersonal(erase.name, erase.now_utc_ms);
  }
  Expected<void> operator()(const Waiting& sent) const { return store.sent(sent); }
};

const records::SecretKey& keyOf(std::size_t number) {
  static const records::SecretKey keys[] = {records::keyOf(21), records::keyOf(22)};
  return keys[number];
}

}  // namespace

std::string Model::apply(const Operation& operation) { return std::visit(ApplyToModel{*this}, operation); }

Facts Model::facts() const {
  Facts facts = writtenHeads(heads);
  std::vector<Pair> due;
  for (const auto& [id, profile] : units) facts["unit " + id] = profile;
  for (const auto& [id, profile] : attachments) facts["attachment " + id] = profile;
  for (const auto& [name, pair] : pairs) {
    facts["pair " + joined({name.first, name.second})] = written(pair);
    if (pair.due_utc_ms && *pair.due_utc_ms <= kDueAsked) due.push_back(pair);
  }
  std::ranges::stable_sort(due, {}, [](const Pair& pair) { return *pair.due_utc_ms; });
  facts["due"] = writtenAll(due);
  for (const auto& [hash, bytes] : blobs) facts["blob " + hash] = bytes;
  std::vector<Job> newest(jobs.rbegin(), jobs.rend());
  facts["jobs"] = writtenAll(newest);
  for (const auto& [unit, profile] : units) {
    std::vector<Job> of_unit = newest;
    std::erase_if(of_unit, [&](const Job& job) { return job.unit != unit; });
    facts["jobs of " + unit] = writtenAll(of_unit);
  }
  std::erase_if(newest, [](const Job& job) { return job.phase != "running"; });
  facts["running"] = writtenAll(newest);
  for (const auto& [job, journal] : journals) facts["journal " + job] = joined(journal);

  std::vector<StoredStatement> by_time(statements.rbegin(), statements.rend());
  std::ranges::stable_sort(by_time, std::ranges::greater{},
                           [](const StoredStatement& each) { return placeOf(each).sealed_utc_ms; });
  facts["statements"] = writtenAll(by_time);
  for (const auto& [unit, profile] : units) {
    std::string about;
    for (const StoredStatement& statement : by_time) {
      if (statement.unit == unit) about += statement.name;
    }
    facts["statements about " + unit] = about;
  }
  for (const StoredStatement& statement : statements) {
    const records::ChainPlace& place = placeOf(statement).place;
    std::string& head = facts["head " + place.key + place.epoch];
    const records::Head best = records::headAfter(place, statement.name);
    bool highest = true;
    for (const StoredStatement& other : statements) {
      const records::ChainPlace& there = placeOf(other).place;
      if (there.key == place.key && there.epoch == place.epoch && there.sequence > place.sequence)
        highest = false;
    }
    if (highest && head.empty()) head = written(best);
  }
  std::string all;
  for (const records::SealedSigners& list : signers) all += joined({list.name, list.text});
  facts["signers"] = all;
  facts["roots"] = joined(roots);
  facts["personal"] = writtenAll(personal);
  facts["waiting"] = writtenAll(waiting);
  return facts;
}

Applied apply(Store& store, const Operation& operation) {
  const Expected<void> done = std::visit(ApplyToStore{store}, operation);
  if (done) return {};
  return {done.error().message.code, done.error().kind};
}

Expected<Facts> factsOf(const Store& store, const std::vector<std::string>& blobs) {
  Facts facts;
  // Whatever question fails first is told.
  std::optional<Error> error;
  const auto ask = [&error]<class T>(Expected<T> answer) -> T {
    if (answer) return *std::move(answer);
    if (!error) error = answer.error();
    return T{};
  };
  const std::vector<Unit> units = ask(store.units());
  for (const Unit& unit : units) {
    facts["unit " + unit.id] = unit.profile;
    for (const Pair& pair : ask(store.pairsOf(unit.id))) {
      facts["pair " + joined({pair.unit, pair.attachment})] = written(pair);
    }
    facts["jobs of " + unit.id] = writtenAll(ask(store.jobs(unit.id)));
    std::string about;
    for (const std::string& name : ask(store.statementNames(unit.id))) about += name;
    facts["statements about " + unit.id] = about;
  }
  for (const Attachment& attachment : ask(store.attachments()))
    facts["attachment " + attachment.id] = attachment.profile;
  facts["due"] = writtenAll(ask(store.due(kDueAsked)));
  for (const std::string& hash : blobs) {
    if (const auto bytes = ask(store.blob(hash))) facts["blob " + hash] = *bytes;
  }
  const std::vector<Job> jobs = ask(store.jobs());
  facts["jobs"] = writtenAll(jobs);
  facts["running"] = writtenAll(ask(store.jobsRunning()));
  for (const Job& job : jobs) facts["journal " + job.id] = joined(ask(store.journal(job.id)));
  std::string statements;
  for (const std::string& name : ask(store.statementNames())) {
    const auto statement = ask(store.statement(name));
    if (!statement) continue;
    statements += written(*statement);
    const records::ChainPlace& place = placeOf(*statement).place;
    if (const auto head = ask(store.head(place.key, place.epoch))) {
      facts["head " + place.key + place.epoch] = written(*head);
    }
  }
  facts["statements"] = statements;
  std::string signers;
  for (const records::SealedSigners& list : ask(store.signersLists()))
    signers += joined({list.name, list.text});
  facts["signers"] = signers;
  facts["roots"] = joined(ask(store.acceptedRoots()));
  facts["personal"] = writtenAll(ask(store.personal()));
  facts["waiting"] = writtenAll(ask(store.waiting()));
  facts.merge(writtenHeads(ask(store.evidence()).known_heads));
  if (error) return std::unexpected(*error);
  return facts;
}

Chance::Chance(std::uint64_t seed) : random_(seed), seed_(seed), now_utc_ms_(kNow) {}

std::string Chance::letters(double most) {
  // Mostly short, now and then long.
  std::string text(static_cast<std::size_t>(most * random_.uniform() * random_.uniform()), ' ');
  for (char& letter : text) letter = static_cast<char>('a' + random_.bits() % 26);
  return text;
}

PutBlob Chance::blob() {
  PutBlob put{fresh("blob ") + letters(most_blob_bytes)};
  blobs_.push_back(records::hashName(put.bytes));
  return put;
}

std::vector<Operation> Chance::beginning() const { return {samples::kUnit, samples::kBucket}; }

StoredStatement Chance::statement(const Model& model, const std::string& job) {
  const records::SecretKey& key = keyOf(below(2));
  const std::string epoch = records::epochOf(7 + below(2));
  std::optional<records::Head> head;
  for (const StoredStatement& each : model.statements) {
    const records::ChainPlace& place = placeOf(each).place;
    if (place.key == key.id() && place.epoch == epoch && (!head || place.sequence > head->sequence)) {
      head = records::headAfter(place, each.name);
    }
  }
  // Sometimes beside the head: a fork.
  if (head && head->sequence > 1 && often(0.1)) {
    head->sequence -= 1;
    head->name = records::hashName(fresh("other"));
  }
  const records::Envelope envelope{.place = records::nextPlace(head, key.id(), key.id(), epoch),
                                   .role = "technician",
                                   .sealed_utc_ms = kNow + static_cast<std::int64_t>(below(2000))};
  if (job.empty() && !model.statements.empty() && often(0.4)) {
    const std::string& name = model.statements[below(model.statements.size())].name;
    return samples::stored(
        records::sealStatement(records::Signature{.envelope = envelope, .record = name}, key).value());
  }
  std::vector<JsonValue> hashes;
  while (!model.blobs.empty() && hashes.size() < 3 && often(0.7)) {
    hashes.push_back(records::jsonString(
        std::next(model.blobs.begin(), static_cast<std::ptrdiff_t>(below(model.blobs.size())))->first));
  }
  const records::Record record{
      .envelope = envelope,
      .content = records::jsonObject({{"evidence", records::jsonArray(std::move(hashes))},
                                      {"note", records::jsonString(letters(2000))}})};
  return samples::stored(records::sealStatement(record, key).value(), job,
                         often(0.8) ? "unit-" + std::to_string(below(4)) : "");
}

Operation Chance::next(const Model& model) {
  now_utc_ms_ += static_cast<std::int64_t>(below(10));
  const std::string unit = often(0.4) ? samples::kUnit.id : "unit-" + std::to_string(below(4));
  const std::string attachment = often(0.4) ? samples::kBucket.id : "bucket-" + std::to_string(below(3));
  const auto someBlob = [&]() -> std::string {
    if (blobs_.empty() || often(0.05)) return records::hashName("nowhere");
    return blobs_[below(blobs_.size())];
  };
  const auto pair = [&] {
    Pair made{.unit = unit, .attachment = attachment, .restrictions = {}};
    if (often(0.5)) made.calibration = someBlob();
    if (often(0.5) && !model.statements.empty())
      made.record = model.statements[below(model.statements.size())].name;
    if (often(0.8)) made.due_utc_ms = kNow + static_cast<std::int64_t>(below(1000));
    while (often(0.3)) made.restrictions.push_back(fresh("restriction-") + (often(0.1) ? "\"\\\n" : ""));
    return made;
  };
  std::vector<const Job*> running;
  for (const Job& job : model.jobs) {
    if (job.phase == "running") running.push_back(&job);
  }
  const double chosen = random_.uniform();
  if (chosen < 0.45 && !model.jobs.empty()) {
    const Job& job = running.empty() || often(0.03) ? model.jobs[below(model.jobs.size())]
                                                    : *running[below(running.size())];
    auto sequence = std::ssize(model.journals.at(job.id));
    if (often(0.03)) sequence += static_cast<std::ptrdiff_t>(below(3)) - 1;
    return AppendEvent{job.id, sequence, fresh("event ") + letters(most_event_bytes)};
  }
  if (chosen < 0.52) {
    Job job{
        .id = often(0.05) && !model.jobs.empty() ? model.jobs[below(model.jobs.size())].id : fresh("job-"),
        .unit = unit,
        .attachment = often(0.2) ? "" : attachment,
        .procedure_id = "demo",
        .procedure = someBlob(),
        .words = someBlob(),
        .language = "en",
        .begun_utc_ms = now_utc_ms_};
    return BeginJob{std::move(job), fresh("begun ") + letters(most_event_bytes)};
  }
  if (chosen < 0.58 && !running.empty()) {
    const std::string job = running[below(running.size())]->id;
    Ending ending{.job = job,
                  .phase = often(0.7) ? "done" : (often(0.5) ? "failed" : "abandoned"),
                  .record = statement(model, job),
                  .now_utc_ms = now_utc_ms_};
    if (often(0.7)) ending.pair = pair();
    return ending;
  }
  if (chosen < 0.64) return PutStatement{statement(model, ""), now_utc_ms_, often(0.7)};
  if (chosen < 0.74)
    return often(0.1) && !model.blobs.empty() ? PutBlob{model.blobs.begin()->second} : blob();
  if (chosen < 0.78) return pair();
  if (chosen < 0.81) return Unit{unit, letters(500)};
  if (chosen < 0.83) return Attachment{attachment, letters(500)};
  if (chosen < 0.88) {
    Personal personal{.name = "", .bytes = fresh("person ") + letters(often(0.2) ? 12000 : 200)};
    for (auto& byte : personal.salt) byte = static_cast<std::uint8_t>(random_.bits() >> 56U);
    personal.name = records::personalName(personal.salt, personal.bytes);
    return PutPersonal{std::move(personal), now_utc_ms_};
  }
  if (chosen < 0.91) {
    const bool known = !model.personal.empty() && often(0.9);
    return ErasePersonal{known ? model.personal[below(model.personal.size())].name
                               : records::personalName({}, fresh("nobody")),
                         now_utc_ms_};
  }
  if (chosen < 0.97 && !model.waiting.empty()) {
    Waiting sent = model.waiting[below(model.waiting.size())];
    if (often(0.1)) --sent.since_utc_ms;
    return sent;
  }
  if (chosen < 0.98) {
    return records::Head{.key = keyOf(0).id(),
                         .epoch = records::epochOf(seed_),
                         .sequence = 1 + static_cast<std::int64_t>(below(3)),
                         .name = records::hashName(std::to_string(below(3)))};
  }
  if (chosen < 0.99) {
    const records::SecretKey yard = records::keyOf(100 + below(5));
    return PutSigners{records::sealSigners({.yard_key = yard.publicKey(), .signers = {}}, yard).value(),
                      now_utc_ms_};
  }
  return AcceptRoot{records::hashName(std::to_string(below(4)))};
}

}  // namespace hingepin::store
