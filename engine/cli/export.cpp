// SPDX-License-Identifier: Apache-2.0
#include "engine/cli/export.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <functional>
#include <set>
#include <utility>

#include "engine/base/json_walk.h"
#include "engine/cli/commands.h"
#include "engine/cli/files.h"
#include "engine/cli/folder.h"
#include "engine/procedures/journal.h"
#include "engine/records/canonical_json.h"
#include "engine/records/encoding.h"
#include "engine/session/job_record.h"

namespace hingepin::cli {
namespace {

namespace fs = std::filesystem;
using records::jsonArray;
using records::jsonInteger;
using records::jsonObject;
using records::jsonString;
using Members = std::vector<std::pair<std::string, JsonValue>>;

constexpr const char* kFormat = "hingepin-store/1";
constexpr const char* kSealed = ".jws.json";

JsonValue textList(const std::vector<std::string>& texts) {
  std::vector<JsonValue> items;
  for (const std::string& text : texts) items.push_back(jsonString(text));
  return jsonArray(std::move(items));
}

/// Gathers what a store holds as lines of JSON and files.
class Export {
 public:
  Export(const store::Store& store, std::string folder) : store_(store), folder_(std::move(folder)) {}
  Expected<std::size_t> write();

 private:
  Expected<void> units();
  Expected<void> jobs();
  Expected<void> statements();
  Expected<void> people();
  Expected<void> blobs();
  void line(const char* kind, Members members) {
    members.emplace_back("kind", jsonString(kind));
    // All texts of a store are UTF-8.
    lines_ += records::canonicalJson(jsonObject(std::move(members))).value_or("") + "\n";
    ++count_;
  }
  [[nodiscard]] Expected<void> file(const std::string& part, const std::string& name,
                                    std::string_view bytes) const {
    const fs::path path = fs::path(folder_) / part;
    if (const auto made = makeFolder(path.string()); !made) return made;
    return writeFile((path / name).string(), bytes);
  }
  void addHash(const std::string& hash) {
    if (!hash.empty()) hashes_.insert(hash);
  }

  const store::Store& store_;
  std::string folder_;
  std::string lines_;
  std::size_t count_ = 0;
  std::set<std::string> hashes_;  ///< of everything that a job or a pair may name
};

Expected<void> Export::units() {
  const auto attachments = store_.attachments();
  if (!attachments) return std::unexpected(attachments.error());
  for (const store::Attachment& each : *attachments) {
    line("attachment", {{"id", jsonString(each.id)}, {"profile", jsonString(each.profile)}});
  }
  const auto units = store_.units();
  if (!units) return std::unexpected(units.error());
  for (const store::Unit& each : *units) {
    line("unit", {{"id", jsonString(each.id)}, {"profile", jsonString(each.profile)}});
  }
  for (const store::Unit& each : *units) {
    const auto pairs = store_.pairsOf(each.id);
    if (!pairs) return std::unexpected(pairs.error());
    for (const store::Pair& pair : *pairs) {
      Members members = {{"unit", jsonString(pair.unit)},
                         {"attachment", jsonString(pair.attachment)},
                         {"calibration", jsonString(pair.calibration)},
                         {"record", jsonString(pair.record)},
                         {"restrictions", textList(pair.restrictions)}};
      if (pair.due_utc_ms) members.emplace_back("due_utc_ms", jsonInteger(*pair.due_utc_ms));
      addHash(pair.calibration);
      line("pair", std::move(members));
    }
  }
  return {};
}

Expected<void> Export::jobs() {
  const auto jobs = store_.jobs();
  if (!jobs) return std::unexpected(jobs.error());
  for (const store::Job& job : std::vector(jobs->rbegin(), jobs->rend())) {  // the oldest first
    const auto journal = store_.journal(job.id);
    if (!journal) return std::unexpected(journal.error());
    addHash(job.procedure);
    addHash(job.words);
    for (const std::string& text : *journal) {
      const auto event = procedures::readEvent(text, "journal of " + job.id);
      if (!event) return std::unexpected(event.error());
      for (const std::string& hash : event->hashes) addHash(hash);
    }
    line("job", {{"id", jsonString(job.id)},
                 {"unit", jsonString(job.unit)},
                 {"attachment", jsonString(job.attachment)},
                 {"procedure_id", jsonString(job.procedure_id)},
                 {"procedure", jsonString(job.procedure)},
                 {"words", jsonString(job.words)},
                 {"language", jsonString(job.language)},
                 {"begun_utc_ms", jsonInteger(job.begun_utc_ms)},
                 {"phase", jsonString(job.phase)},
                 {"record", jsonString(job.record)},
                 {"journal", textList(*journal)}});
  }
  return {};
}

Expected<void> Export::statements() {
  const auto names = store_.statementNames();
  if (!names) return std::unexpected(names.error());
  // The oldest first, as they were kept.
  for (const std::string& name : std::vector(names->rbegin(), names->rend())) {
    const auto statement = store_.statement(name);
    if (!statement) return std::unexpected(statement.error());
    if (!*statement) continue;
    if (const auto written = file("statements", name + kSealed, (*statement)->text); !written) return written;
    line("statement", {{"name", jsonString(name)},
                       {"job", jsonString((*statement)->job)},
                       {"unit", jsonString((*statement)->unit)}});
    if (const auto record = session::recordOf(store_, name)) {
      addHash(session::textAt(record->content, {"calibration", "hash"}));
      addHash(session::textAt(record->content, {"calibration", "job_file"}));
    }
  }
  return {};
}

Expected<void> Export::people() {
  const auto lists = store_.signersLists();
  if (!lists) return std::unexpected(lists.error());
  for (const records::SealedSigners& list : *lists) {
    if (const auto written = file("signers", list.name + kSealed, list.text); !written) return written;
    line("signers", {{"name", jsonString(list.name)}});
  }
  const auto roots = store_.acceptedRoots();
  if (!roots) return std::unexpected(roots.error());
  for (const std::string& root : *roots) line("root", {{"name", jsonString(root)}});
  const auto personal = store_.personal();
  if (!personal) return std::unexpected(personal.error());
  for (const store::Personal& each : *personal) {
    Members members = {{"name", jsonString(each.name)}};
    if (!each.erased) {
      if (const auto written = file("personal", each.name, each.bytes); !written) return written;
      members.emplace_back("salt", jsonString(records::base64Url(each.salt)));
    }
    line("personal", std::move(members));
  }
  return {};
}

Expected<void> Export::blobs() {
  for (const std::string& hash : hashes_) {
    const auto blob = store_.blob(hash);
    if (!blob) return std::unexpected(blob.error());
    if (!*blob) continue;  // the name of a personal object
    if (const auto written = file("blobs", hash, **blob); !written) return written;
  }
  return {};
}

Expected<std::size_t> Export::write() {
  line("store", {{"format", jsonString(kFormat)}});
  for (const auto part :
       {&Export::units, &Export::people, &Export::jobs, &Export::statements, &Export::blobs}) {
    if (const auto done = (this->*part)(); !done) return std::unexpected(done.error());
  }
  // The list comes last: without it there is nothing to import.
  if (const auto written = file("", "store.jsonl", lines_); !written) return std::unexpected(written.error());
  return count_;
}

/// One line of store.jsonl.
class Line : public JsonWalk {
 public:
  explicit Line(const JsonDocument& document) : root_(document) {}
  [[nodiscard]] const JsonNode& root() const { return root_; }
  std::string text(std::string_view key) {
    return required(root_, key, [this](const JsonNode& node) { return taken(node.string()); });
  }
  std::optional<std::int64_t> maybeWhole(std::string_view key) {
    return optional(root_, key, [this](const JsonNode& node) {
      return whole<std::int64_t>(node, -records::kMostInteger, records::kMostInteger);
    });
  }
  std::vector<std::string> texts(std::string_view key) {
    return required(root_, key, [this](const JsonNode& node) {
      std::vector<std::string> list;
      for (const JsonNode& each : taken(node.elements())) list.push_back(taken(each.string()));
      return list;
    });
  }

 private:
  JsonNode root_;
};

/// What a store knows already stays as it is.
template <class T>
Expected<void> putIfNew(const Expected<std::optional<T>>& there, const std::function<Expected<void>()>& put) {
  if (!there) return std::unexpected(there.error());
  return *there ? Expected<void>() : put();
}

/// Takes the lines of an export into a store, each kind when what it refers to is there.
class Import {
 public:
  Import(store::Store& store, std::string folder, std::int64_t now_utc_ms)
      : store_(store), folder_(std::move(folder)), now_utc_ms_(now_utc_ms) {}
  Expected<std::size_t> read();

 private:
  Expected<void> blobs();
  Expected<void> take(std::string_view kind, Line& line);
  Expected<void> job(Line& line);
  [[nodiscard]] Expected<std::string> file(const char* part, const std::string& name) const {
    return readFile((fs::path(folder_) / part / name).string());
  }

  store::Store& store_;
  std::string folder_;
  std::int64_t now_utc_ms_;
};

Expected<void> Import::blobs() {
  const auto files = filesIn((fs::path(folder_) / "blobs").string(), "");
  if (!files && files.error().kind == ErrorKind::NotFound) return {};
  if (!files) return std::unexpected(files.error());
  for (const std::string& path : *files) {
    const auto bytes = readFile(path);
    if (!bytes) return std::unexpected(bytes.error());
    if (records::hashName(*bytes) != fs::path(path).filename().string()) {
      return fail(ErrorKind::InvalidInput, "import-altered", {{"path", path}}, {.file = path});
    }
    if (const auto put = store_.putBlob(*bytes, "application/octet-stream"); !put)
      return std::unexpected(put.error());
  }
  return {};
}

Expected<void> Import::job(Line& line) {
  const store::Job job{.id = line.text("id"),
                       .unit = line.text("unit"),
                       .attachment = line.text("attachment"),
                       .procedure_id = line.text("procedure_id"),
                       .procedure = line.text("procedure"),
                       .words = line.text("words"),
                       .language = line.text("language"),
                       .begun_utc_ms = line.maybeWhole("begun_utc_ms").value_or(0)};
  const std::string phase = line.text("phase");
  const std::string record = line.text("record");
  const std::vector<std::string> journal = line.texts("journal");
  if (line.error() || journal.empty()) return {};
  const auto there = store_.job(job.id);
  if (!there) return std::unexpected(there.error());
  if (*there) return {};
  if (const auto begun = store_.beginJob(job, journal.front()); !begun) return begun;
  for (std::size_t index = 1; index < journal.size(); ++index) {
    const auto kept = store_.appendEvent(job.id, static_cast<std::int64_t>(index), journal[index]);
    if (!kept) return kept;
  }
  if (record.empty()) return {};
  const auto text = file("statements", record + kSealed);
  if (!text) return std::unexpected(text.error());
  return store_.endJob({.job = job.id,
                        .phase = phase,
                        .record = {.name = record, .text = *text, .job = job.id, .unit = job.unit},
                        .pair = std::nullopt,
                        .now_utc_ms = now_utc_ms_});
}

Expected<void> Import::take(std::string_view kind, Line& line) {
  if (kind == "unit") {
    const store::Unit unit{.id = line.text("id"), .profile = line.text("profile")};
    return putIfNew(store_.unit(unit.id), [&] { return store_.putUnit(unit); });
  }
  if (kind == "attachment") {
    const store::Attachment attachment{.id = line.text("id"), .profile = line.text("profile")};
    return putIfNew(store_.attachment(attachment.id), [&] { return store_.putAttachment(attachment); });
  }
  if (kind == "pair") {
    const store::Pair pair{.unit = line.text("unit"),
                           .attachment = line.text("attachment"),
                           .calibration = line.text("calibration"),
                           .record = line.text("record"),
                           .due_utc_ms = line.maybeWhole("due_utc_ms"),
                           .restrictions = line.texts("restrictions")};
    return putIfNew(store_.pair(pair.unit, pair.attachment), [&] { return store_.putPair(pair); });
  }
  if (kind == "job") return job(line);
  const std::string name = line.text("name");
  if (kind == "root") return store_.acceptRoot(name);
  if (kind == "personal") {
    store::Personal personal{.name = name, .bytes = "", .erased = true};
    if (line.root().find("salt")) {
      const auto salt = records::fromBase64Url(line.text("salt"));
      const auto bytes = file("personal", name);
      if (!bytes) return std::unexpected(bytes.error());
      if (!salt || salt->size() != personal.salt.size())
        return line.root().error("import-altered", {{"path", name}});
      std::ranges::copy(*salt, personal.salt.begin());
      if (records::personalName(personal.salt, *bytes) != name) {
        return line.root().error("import-altered", {{"path", name}});
      }
      personal.bytes = *bytes;
      personal.erased = false;
    }
    return store_.putPersonal(personal, now_utc_ms_);
  }
  if (kind == "signers") {
    const auto text = file("signers", name + kSealed);
    if (!text) return std::unexpected(text.error());
    return store_.putSigners({.name = name, .text = *text}, now_utc_ms_);
  }
  const auto text = file("statements", name + kSealed);
  if (!text) return std::unexpected(text.error());
  return store_.putStatement(
      {.name = name, .text = *text, .job = line.text("job"), .unit = line.text("unit")}, now_utc_ms_);
}

Expected<std::size_t> Import::read() {
  const std::string path = (fs::path(folder_) / "store.jsonl").string();
  const auto text = readFile(path);
  if (!text) return std::unexpected(text.error());
  std::vector<JsonDocument> documents;
  for (std::string_view rest = *text; !rest.empty();) {
    const std::size_t end = std::min(rest.find('\n'), rest.size());
    auto document = readJson(std::string(rest.substr(0, end)), path);
    rest.remove_prefix(std::min(end + 1, rest.size()));
    if (!document) {
      document.error().place.line = documents.size() + 1;
      return std::unexpected(document.error());
    }
    documents.push_back(*std::move(document));
  }
  if (documents.empty() || session::textAt(documents.front().root, {"format"}) != kFormat) {
    return fail(ErrorKind::InvalidInput, "format-unsupported",
                {{"text", std::string()}, {"expected", std::string(kFormat)}}, {.file = path, .line = 1});
  }
  if (const auto done = blobs(); !done) return std::unexpected(done.error());
  std::size_t count = 0;
  // Jobs before the statements that name them, pairs when all that they name is there.
  for (const std::string_view kind :
       {"attachment", "unit", "personal", "signers", "root", "job", "statement", "pair"}) {
    for (std::size_t index = 1; index < documents.size(); ++index) {
      if (session::textAt(documents[index].root, {"kind"}) != kind) continue;
      Line line(documents[index]);
      Expected<void> taken = take(kind, line);
      if (std::optional<Error> wrong = line.error()) taken = std::unexpected(*std::move(wrong));
      if (!taken) {
        taken.error().place = {.file = path, .line = index + 1, .pointer = taken.error().place.pointer};
        return std::unexpected(taken.error());
      }
      ++count;
    }
  }
  return count;
}

int report(const Expected<std::size_t>& count, const Common& common, const std::string& folder) {
  if (!count) return complain(count.error(), common.system);
  return print(fmt::format("{}: {}\n", folder, *count), common.system);
}

}  // namespace

int exportStore(const Common& common, const std::string& folder) {
  const Expected<Folder> opened = openFolder(common.store);
  if (!opened) return complain(opened.error(), common.system);
  return report(Export(opened->store, folder).write(), common, folder);
}

int importStore(const Common& common, const std::string& folder) {
  Expected<Folder> opened = openFolder(common.store);
  if (!opened) return complain(opened.error(), common.system);
  return report(Import(opened->store, folder, momentOfComputer().utc_ms).read(), common, folder);
}

}  // namespace hingepin::cli
