// SPDX-License-Identifier: Apache-2.0
// The plain form of a store: README.md describes it.
#include <algorithm>
#include <istream>
#include <map>
#include <ostream>
#include <set>
#include <utility>

#include "engine/base/strict_json.h"
#include "engine/records/canonical_json.h"
#include "engine/records/encoding.h"
#include "engine/store/database.h"
#include "engine/store/rows.h"
#include "engine/store/store.h"

namespace hingepin::store {
namespace {

constexpr std::string_view kFormat = "hingepin-export/1";
constexpr std::size_t kPieceBytes = 3U << 20U;
constexpr std::size_t kMostLineBytes = kMostJsonBytes;

using Members = std::vector<std::pair<std::string, JsonValue>>;

/// A member that is left out where it is empty.
void add(Members& members, const char* key, const std::string& text) {
  if (!text.empty()) members.emplace_back(key, records::jsonString(text));
}

/// Writes lines and keeps count.
class Writer {
 public:
  explicit Writer(std::ostream& out) : out_(out) {}

  Expected<void> line(std::string kind, Members members) {
    members.emplace_back("kind", records::jsonString(std::move(kind)));
    const Expected<std::string> text = records::canonicalJson(records::jsonObject(std::move(members)));
    if (!text) return std::unexpected(text.error());
    // All before it goes into the name of the last line, so that nothing can be left out or altered by
    // accident.
    digest_ = records::hashName(digest_ + *text);
    out_ << *text << '\n';
    if (!out_) return fail(ErrorKind::IoFailed, "export-not-written");
    return {};
  }
  /// Long bytes, in lines of their own.
  Expected<void> pieces(std::string_view bytes) {
    for (std::size_t done = 0; done < bytes.size(); done += kPieceBytes) {
      auto written = line("bytes", {{"base64url", records::jsonString(records::base64Url(
                                                      records::bytesOf(bytes.substr(done, kPieceBytes))))}});
      if (!written) return written;
    }
    return {};
  }
  Expected<void> end() { return line("end", {{"digest", records::jsonString(digest_)}}); }

 private:
  std::ostream& out_;
  std::string digest_;
};

/// Writes a line for each row.
template <class Write>
Expected<void> writeRows(Database& database, Write write, std::string_view sql) {
  Query query(database, sql);
  while (true) {
    const Expected<bool> row = query.step();
    if (!row) return std::unexpected(row.error());
    if (!*row) return {};
    if (auto written = write(std::as_const(query)); !written) return written;
  }
}

std::unexpected<Error> atLine(Error error, std::int64_t line) {
  error.place.line = static_cast<std::size_t>(line);
  return std::unexpected(std::move(error));
}

std::unexpected<Error> malformed(std::string expected) {
  return fail(ErrorKind::InvalidInput, "import-malformed", {{"expected", std::move(expected)}});
}

/// One line, read, with getters that remember the first thing that was wrong.
class Line {
 public:
  explicit Line(JsonDocument document) : document_(std::move(document)), node_(document_) {}
  Line(const Line&) = delete;
  Line& operator=(const Line&) = delete;

  [[nodiscard]] std::string text(std::string_view key) {
    std::string found = optionalText(key);
    if (found.empty()) note(node_.error("json-missing-key", {{"key", std::string(key)}}).error());
    return found;
  }
  /// "" where it is left out; "" itself is never written.
  [[nodiscard]] std::string optionalText(std::string_view key) {
    const auto member = take(key);
    if (!member) return "";
    auto found = member->name();
    if (!found) note(found.error());
    return found ? *std::move(found) : "";
  }
  [[nodiscard]] std::optional<std::int64_t> optionalInteger(std::string_view key) {
    if (!take(key)) return std::nullopt;
    const auto found = records::integerAt(node_, key, 0);
    if (!found) note(found.error());
    return found ? std::optional(*found) : std::nullopt;
  }
  [[nodiscard]] std::int64_t integer(std::string_view key) {
    const auto found = optionalInteger(key);
    if (!found) note(node_.error("json-missing-key", {{"key", std::string(key)}}).error());
    return found.value_or(0);
  }
  [[nodiscard]] std::vector<std::string> texts(std::string_view key) {
    std::vector<std::string> found;
    const auto member = take(key);
    if (!member) return found;
    const auto elements = member->elements();
    if (!elements) {
      note(elements.error());
      return found;
    }
    for (const JsonNode& element : *elements) {
      auto text = element.string();
      if (!text) note(text.error());
      found.push_back(text ? *std::move(text) : "");
    }
    return found;
  }
  /// Errors: what was wrong with a member, or one that nobody asked for.
  [[nodiscard]] Expected<void> done() {
    if (error_) return std::unexpected(*error_);
    for (const std::string& key : document_.root.keys) {
      if (!taken_.contains(key)) {
        return node_.error("json-unknown-key", {{"key", key}, {"known", joinedTaken()}});
      }
    }
    return {};
  }

 private:
  std::optional<JsonNode> take(std::string_view key) {
    taken_.emplace(key);
    if (document_.root.kind != JsonKind::Object) {
      note(node_.wrongKind("an object").error());
      return std::nullopt;
    }
    return node_.find(key);
  }
  void note(Error error) {
    if (!error_) error_ = std::move(error);
  }
  [[nodiscard]] std::string joinedTaken() const {
    std::string all;
    for (const std::string& key : taken_) all += (all.empty() ? "" : ", ") + key;
    return all;
  }

  JsonDocument document_;
  JsonNode node_;
  std::set<std::string> taken_;
  std::optional<Error> error_;
};

}  // namespace

Expected<void> Store::exportTo(std::ostream& out) const {
  Database& database = *database_;
  auto transaction = Transaction::beginReading(database);
  if (!transaction) return std::unexpected(transaction.error());
  Writer writer(out);
  const auto text = [](const Query& row, int column) { return records::jsonString(row.text(column)); };
  const auto integer = [](const Query& row, int column) { return records::jsonInteger(row.integer(column)); };
  if (auto begun = writer.line("begin", {{"format", records::jsonString(std::string(kFormat))}}); !begun)
    return begun;

  const auto withProfile = [&](const char* kind) {
    return [&, kind](const Query& row) {
      Members members{{"id", text(row, 0)}};
      add(members, "profile", row.text(1));
      return writer.line(kind, std::move(members));
    };
  };
  auto written = writeRows(
      database, [&](const Query& row) { return writer.line("yard", {{"profile", text(row, 0)}}); },
      "SELECT profile FROM yard");
  if (!written) return written;
  written = writeRows(database, withProfile("unit"), "SELECT id, profile FROM unit ORDER BY id");
  if (!written) return written;
  written = writeRows(database, withProfile("attachment"), "SELECT id, profile FROM attachment ORDER BY id");
  if (!written) return written;
  written = writeRows(
      database,
      [&](const Query& row) -> Expected<void> {
        const std::string bytes = row.text(2);
        Members members{{"hash", text(row, 0)}, {"size", records::jsonInteger(std::ssize(bytes))}};
        add(members, "media_type", row.text(1));
        if (auto head = writer.line("blob", std::move(members)); !head) return head;
        return writer.pieces(bytes);
      },
      "SELECT hash, media_type, bytes FROM blob ORDER BY number");
  if (!written) return written;
  written = writeRows(
      database,
      [&](const Query& row) {
        Members members{{"id", text(row, 0)},
                        {"unit", text(row, 1)},
                        {"procedure_id", text(row, 3)},
                        {"procedure", text(row, 4)},
                        {"words", text(row, 5)},
                        {"language", text(row, 6)},
                        {"begun_utc_ms", integer(row, 7)}};
        add(members, "attachment", row.text(2));
        return writer.line("job", std::move(members));
      },
      "SELECT id, unit, attachment, procedure_id, procedure, words, language, begun_utc_ms FROM job ORDER BY "
      "number");
  if (!written) return written;
  written = writeRows(
      database,
      [&](const Query& row) {
        Members members{{"job", text(row, 0)}, {"sequence", integer(row, 1)}};
        add(members, "event", row.text(2));
        return writer.line("event", std::move(members));
      },
      "SELECT id, sequence, event FROM journal JOIN job ON job.number = journal.job ORDER BY journal.job, "
      "sequence");
  if (!written) return written;
  written = writeRows(
      database,
      [&](const Query& row) {
        Members members{{"name", text(row, 0)}, {"text", text(row, 1)}};
        add(members, "job", row.text(2));
        add(members, "unit", row.text(3));
        return writer.line("statement", std::move(members));
      },
      "SELECT name, text, (SELECT id FROM job WHERE job.number = statement.job), unit FROM statement ORDER "
      "BY number");
  if (!written) return written;
  written = writeRows(
      database,
      [&](const Query& row) {
        return writer.line("end-of-job", {{"job", text(row, 0)},
                                          {"phase", text(row, 1)},
                                          {"record", text(row, 2)},
                                          {"events", integer(row, 3)}});
      },
      "SELECT id, phase, record, (SELECT count(*) FROM journal WHERE job = number) FROM job "
      "WHERE phase <> 'running' ORDER BY number");
  if (!written) return written;
  written = writeRows(
      database,
      [&](const Query& row) -> Expected<void> {
        Members members{{"unit", text(row, 0)}, {"attachment", text(row, 1)}};
        add(members, "calibration", row.text(2));
        add(members, "record", row.text(3));
        if (!row.isNull(4)) members.emplace_back("due_utc_ms", integer(row, 4));
        const auto restrictions = restrictionsOf(row.text(5));
        if (!restrictions) return std::unexpected(restrictions.error());
        std::vector<JsonValue> items;
        for (const std::string& restriction : *restrictions)
          items.push_back(records::jsonString(restriction));
        members.emplace_back("restrictions", records::jsonArray(std::move(items)));
        return writer.line("pair", std::move(members));
      },
      "SELECT unit, attachment, calibration, record, due_utc_ms, restrictions FROM pair ORDER BY unit, "
      "attachment");
  if (!written) return written;
  written = writeRows(
      database,
      [&](const Query& row) {
        return writer.line("signers", {{"name", text(row, 0)}, {"text", text(row, 1)}});
      },
      "SELECT name, text FROM signers_list ORDER BY number");
  if (!written) return written;
  written = writeRows(
      database, [&](const Query& row) { return writer.line("accepted-root", {{"name", text(row, 0)}}); },
      "SELECT name FROM accepted_root ORDER BY number");
  if (!written) return written;
  written = writeRows(
      database,
      [&](const Query& row) {
        return writer.line("known-head", {{"key", text(row, 0)},
                                          {"epoch", text(row, 1)},
                                          {"sequence", integer(row, 2)},
                                          {"name", text(row, 3)}});
      },
      "SELECT key, epoch, sequence, name FROM known_head ORDER BY key, epoch, sequence, name");
  if (!written) return written;
  written = writeRows(
      database,
      [&](const Query& row) -> Expected<void> {
        if (row.isNull(1)) return writer.line("erased", {{"name", text(row, 0)}});
        const std::string bytes = row.text(2);
        auto head = writer.line(
            "personal", {{"name", text(row, 0)},
                         {"salt", records::jsonString(records::base64Url(records::bytesOf(row.text(1))))},
                         {"size", records::jsonInteger(std::ssize(bytes))}});
        if (!head) return head;
        return writer.pieces(bytes);
      },
      "SELECT name, salt, bytes FROM personal ORDER BY number");
  if (!written) return written;
  written = writeRows(
      database,
      [&](const Query& row) {
        return writer.line(
            "waiting", {{"what", text(row, 0)}, {"name", text(row, 1)}, {"since_utc_ms", integer(row, 2)}});
      },
      "SELECT kind, name, since_utc_ms FROM waiting ORDER BY number");
  if (!written) return written;
  if (auto ended = writer.end(); !ended) return ended;
  out.flush();
  if (!out) return fail(ErrorKind::IoFailed, "export-not-written");
  return {};
}

/// Takes an export in, line by line, inside one transaction of the caller.
class Importer {
 public:
  explicit Importer(Database& database) : database_(database) {}

  Expected<void> read(std::istream& in);
  [[nodiscard]] bool erased() const { return erased_; }
  [[nodiscard]] Imported& result() { return imported_; }

 private:
  Expected<bool> nextLine(std::istream& in, std::string& line);
  Expected<void> take(const std::string& kind, Line& line);
  Expected<void> takeYard(Line& line);
  Expected<void> takeUnit(Line& line);
  Expected<void> takeAttachment(Line& line);
  Expected<void> takeBlob(Line& line);
  Expected<void> takePersonal(Line& line);
  Expected<void> takePiece(Line& line);
  Expected<void> finishBytes();
  Expected<void> takeJob(Line& line);
  Expected<void> takeEvent(Line& line);
  Expected<void> takeStatement(Line& line);
  Expected<void> takeEnd(Line& line);
  Expected<void> takePair(Line& line);
  Expected<void> takeSigners(Line& line);
  Expected<void> takeRoot(Line& line);
  Expected<void> takeHead(Line& line);
  Expected<void> takeErased(Line& line);
  Expected<void> takeWaiting(Line& line);

  /// Counts what was written. @return whether it was new
  Expected<bool> added(const Expected<std::int64_t>& written, std::string_view what = "",
                       std::string_view name = "");
  void kept(const char* code, const char* what, std::string name) {
    imported_.kept.push_back({code, {{what, std::move(name)}}});
  }
  static std::unexpected<Error> differs(std::string job) {
    return fail(ErrorKind::InvalidInput, "import-job-differs", {{"job", std::move(job)}});
  }

  /// Bytes that are still to come.
  struct Awaited {
    bool is_blob = false;
    std::string name{};
    std::string media_type{};
    records::Salt salt{};
    std::size_t size = 0;
    std::string bytes{};
  };

  Database& database_;
  Imported imported_;
  std::optional<Awaited> awaited_;
  std::set<std::pair<std::string, std::string>> new_;  // kind and name, for what waits
  std::optional<bool> takes_roots_;
  bool erased_ = false;
  std::int64_t line_ = 0;
};

Expected<bool> Importer::nextLine(std::istream& in, std::string& line) {
  line.clear();
  for (int byte = in.get(); byte != std::char_traits<char>::eof(); byte = in.get()) {
    if (byte == '\n') return true;
    if (line.size() == kMostLineBytes) return malformed("a line of 16 MiB at most");
    line += static_cast<char>(byte);
  }
  if (in.bad()) return fail(ErrorKind::IoFailed, "import-not-read");
  if (!line.empty()) return malformed("a line feed at the end of each line");
  return false;
}

Expected<void> Importer::read(std::istream& in) {
  std::string text;
  std::string digest;
  bool ended = false;
  while (true) {
    ++line_;
    const auto more = nextLine(in, text);
    if (!more) return atLine(more.error(), line_);
    if (!*more) break;
    if (ended) return atLine(malformed("nothing after the end").error(), line_);
    auto document = records::readCanonicalJson(text, kMostLineBytes);
    if (!document) return atLine(document.error(), line_);
    Line line(*std::move(document));
    const std::string kind = line.text("kind");
    Expected<void> taken;
    if ((kind == "begin") != (line_ == 1)) {
      taken = malformed("one line of kind begin, the first");
    } else if (kind == "begin") {
      if (line.text("format") != kFormat) return atLine(malformed(std::string(kFormat)).error(), line_);
      taken = line.done();
    } else if (kind == "end") {
      if (awaited_) return atLine(malformed("bytes").error(), line_);
      if (line.text("digest") != digest)
        return atLine(malformed("the digest of all lines before").error(), line_);
      taken = line.done();
      ended = true;
    } else {
      taken = take(kind, line);
    }
    if (!taken) return atLine(taken.error(), line_);
    digest += text;
    digest = records::hashName(digest);
  }
  if (!ended) return atLine(malformed("a line of kind end").error(), line_);
  return {};
}

Expected<void> Importer::take(const std::string& kind, Line& line) {
  static const std::map<std::string, Expected<void> (Importer::*)(Line&), std::less<>> kinds{
      {"yard", &Importer::takeYard},
      {"unit", &Importer::takeUnit},
      {"attachment", &Importer::takeAttachment},
      {"blob", &Importer::takeBlob},
      {"bytes", &Importer::takePiece},
      {"job", &Importer::takeJob},
      {"event", &Importer::takeEvent},
      {"statement", &Importer::takeStatement},
      {"end-of-job", &Importer::takeEnd},
      {"pair", &Importer::takePair},
      {"signers", &Importer::takeSigners},
      {"accepted-root", &Importer::takeRoot},
      {"known-head", &Importer::takeHead},
      {"personal", &Importer::takePersonal},
      {"erased", &Importer::takeErased},
      {"waiting", &Importer::takeWaiting}};
  const auto found = kinds.find(kind);
  if (found == kinds.end()) return malformed("a known kind of line");
  if (awaited_.has_value() != (kind == "bytes")) return malformed(awaited_ ? "bytes" : "no bytes here");
  return (this->*found->second)(line);
}

Expected<bool> Importer::added(const Expected<std::int64_t>& written, std::string_view what,
                               std::string_view name) {
  if (!written) return std::unexpected(written.error());
  if (*written == 0) return false;
  ++imported_.added;
  if (!what.empty()) new_.emplace(what, name);
  return true;
}

Expected<void> Importer::takeYard(Line& line) {
  const std::string profile = line.text("profile");
  if (auto done = line.done(); !done) return done;
  const auto is_new = added(
      run(database_, "INSERT INTO yard (number, profile) VALUES (1, ?) ON CONFLICT DO NOTHING", profile));
  if (!is_new) return std::unexpected(is_new.error());
  if (*is_new) return {};
  const auto same =
      firstRow(database_, [](const Query&) { return true; }, "SELECT 1 FROM yard WHERE profile = ?", profile);
  if (!same) return std::unexpected(same.error());
  if (!*same) imported_.kept.push_back({"import-kept-yard", {}});
  return {};
}

Expected<void> Importer::takeUnit(Line& line) {
  const Unit unit{.id = line.text("id"), .profile = line.optionalText("profile")};
  if (auto done = line.done(); !done) return done;
  const auto is_new =
      added(run(database_, "INSERT INTO unit (id, profile) VALUES (?, ?) ON CONFLICT DO NOTHING", unit.id,
                unit.profile));
  if (!is_new) return std::unexpected(is_new.error());
  if (*is_new) return {};
  const auto here = firstRow(
      database_, [](const Query& row) { return row.text(0); }, "SELECT profile FROM unit WHERE id = ?",
      unit.id);
  if (!here) return std::unexpected(here.error());
  if (*here != unit.profile) kept("import-kept-unit", "unit", unit.id);
  return {};
}

Expected<void> Importer::takeAttachment(Line& line) {
  const Attachment attachment{.id = line.text("id"), .profile = line.optionalText("profile")};
  if (auto done = line.done(); !done) return done;
  const auto is_new =
      added(run(database_, "INSERT INTO attachment (id, profile) VALUES (?, ?) ON CONFLICT DO NOTHING",
                attachment.id, attachment.profile));
  if (!is_new) return std::unexpected(is_new.error());
  if (*is_new) return {};
  const auto here = firstRow(
      database_, [](const Query& row) { return row.text(0); }, "SELECT profile FROM attachment WHERE id = ?",
      attachment.id);
  if (!here) return std::unexpected(here.error());
  if (*here != attachment.profile) kept("import-kept-attachment", "attachment", attachment.id);
  return {};
}

Expected<void> Importer::takeBlob(Line& line) {
  Awaited awaited{.is_blob = true, .name = line.text("hash"), .media_type = line.optionalText("media_type")};
  const std::int64_t size = line.integer("size");
  if (auto done = line.done(); !done) return done;
  if (std::cmp_greater(size, kMostBlobBytes)) return malformed("a size of 256 MiB at most");
  awaited.size = static_cast<std::size_t>(size);
  awaited_ = std::move(awaited);
  return finishBytes();
}

Expected<void> Importer::takePersonal(Line& line) {
  Awaited awaited{.name = line.text("name")};
  const auto salt = records::fromBase64Url(line.text("salt"));
  const std::int64_t size = line.integer("size");
  if (auto done = line.done(); !done) return done;
  if (!salt || salt->size() != awaited.salt.size()) return malformed("a salt of 32 bytes in base64url");
  if (std::cmp_greater(size, kMostBlobBytes)) return malformed("a size of 256 MiB at most");
  std::ranges::copy(records::bytesOf(*salt), awaited.salt.begin());
  awaited.size = static_cast<std::size_t>(size);
  awaited_ = std::move(awaited);
  return finishBytes();
}

Expected<void> Importer::takePiece(Line& line) {
  const auto piece = records::fromBase64Url(line.text("base64url"));
  if (auto done = line.done(); !done) return done;
  const std::size_t missing = awaited_->size - awaited_->bytes.size();
  if (!piece || piece->size() != std::min(missing, kPieceBytes))
    return malformed("as many bytes as were announced");
  awaited_->bytes += *piece;
  return finishBytes();
}

Expected<void> Importer::finishBytes() {
  if (awaited_->bytes.size() < awaited_->size) return {};
  const Awaited all = *std::exchange(awaited_, std::nullopt);
  if (all.is_blob) {
    if (records::hashName(all.bytes) != all.name) return malformed("bytes with the hash that was announced");
    const auto is_new = added(
        run(database_, "INSERT INTO blob (hash, media_type, bytes) VALUES (?, ?, ?) ON CONFLICT DO NOTHING",
            all.name, all.media_type, Blob{all.bytes}),
        "blob", all.name);
    if (!is_new) return std::unexpected(is_new.error());
    return {};
  }
  if (records::personalName(all.salt, all.bytes) != all.name)
    return malformed("bytes with the name that was announced");
  const std::string salt = records::textOf(all.salt);
  const auto is_new =
      added(run(database_, "INSERT INTO personal (name, salt, bytes) VALUES (?, ?, ?) ON CONFLICT DO NOTHING",
                all.name, Blob{salt}, Blob{all.bytes}),
            "personal", all.name);
  if (!is_new) return std::unexpected(is_new.error());
  return {};
}

Expected<void> Importer::takeJob(Line& line) {
  const Job job{.id = line.text("id"),
                .unit = line.text("unit"),
                .attachment = line.optionalText("attachment"),
                .procedure_id = line.text("procedure_id"),
                .procedure = line.text("procedure"),
                .words = line.text("words"),
                .language = line.text("language"),
                .begun_utc_ms = line.integer("begun_utc_ms")};
  if (auto done = line.done(); !done) return done;
  const auto is_new =
      added(run(database_,
                "INSERT INTO job (id, unit, attachment, procedure_id, procedure, words, language, "
                "begun_utc_ms, phase) VALUES (?, ?, ?, ?, ?, ?, ?, ?, 'running') ON CONFLICT DO NOTHING",
                job.id, job.unit, TextOrNull{job.attachment}, job.procedure_id, job.procedure, job.words,
                job.language, job.begun_utc_ms));
  if (!is_new) return std::unexpected(is_new.error());
  if (*is_new) return {};
  const auto same = firstRow(
      database_, [](const Query&) { return true; },
      "SELECT 1 FROM job WHERE id = ? AND unit = ? AND coalesce(attachment, '') = ? AND procedure_id = ? AND "
      "procedure = ? AND words = ? AND language = ? AND begun_utc_ms = ?",
      job.id, job.unit, job.attachment, job.procedure_id, job.procedure, job.words, job.language,
      job.begun_utc_ms);
  if (!same) return std::unexpected(same.error());
  if (!*same) return differs(job.id);
  return {};
}

Expected<void> Importer::takeEvent(Line& line) {
  const std::string job = line.text("job");
  const std::int64_t sequence = line.integer("sequence");
  const std::string event = line.optionalText("event");
  if (auto done = line.done(); !done) return done;
  const auto is_new = added(run(
      database_,
      "INSERT INTO journal (job, sequence, event) SELECT number, ?2, ?3 FROM job WHERE id = ?1 AND "
      "phase = 'running' AND ?2 = (SELECT coalesce(max(sequence) + 1, 0) FROM journal WHERE job = number)",
      job, sequence, event));
  if (!is_new) return std::unexpected(is_new.error());
  if (*is_new) return {};
  const auto here = firstRow(
      database_, [](const Query& row) { return row.text(0); },
      "SELECT event FROM journal WHERE job = (SELECT number FROM job WHERE id = ?) AND sequence = ?", job,
      sequence);
  if (!here) return std::unexpected(here.error());
  if (!*here || **here != event) return differs(job);
  return {};
}

Expected<void> Importer::takeStatement(Line& line) {
  const StoredStatement statement{.name = line.text("name"),
                                  .text = line.text("text"),
                                  .job = line.optionalText("job"),
                                  .unit = line.optionalText("unit")};
  if (auto done = line.done(); !done) return done;
  const auto read = readStatement(statement);
  if (!read) return std::unexpected(read.error());
  const auto is_new = insertStatement(database_, statement, *read);
  if (!is_new) return std::unexpected(is_new.error());
  if (!*is_new) {
    // It may have come before without its job.
    const auto joined =
        run(database_,
            "UPDATE statement SET job = (SELECT number FROM job WHERE id = ?2), unit = coalesce(unit, "
            "?3) WHERE name = ?1 AND job IS NULL AND ?2 IS NOT NULL",
            statement.name, TextOrNull{statement.job}, TextOrNull{statement.unit});
    if (!joined) return std::unexpected(joined.error());
    return {};
  }
  ++imported_.added;
  new_.emplace("statement", statement.name);
  return {};
}

Expected<void> Importer::takeEnd(Line& line) {
  const std::string job = line.text("job");
  const std::string phase = line.text("phase");
  const std::string record = line.text("record");
  const std::int64_t events = line.integer("events");
  if (auto done = line.done(); !done) return done;
  if (phase == "running") return malformed("a phase in which a job ends");
  const auto ended = added(
      run(database_,
          "UPDATE job SET phase = ?2, record = ?3 WHERE id = ?1 AND phase = 'running' AND "
          "?4 = (SELECT count(*) FROM journal WHERE job = number) AND EXISTS (SELECT 1 FROM statement WHERE "
          "name = ?3 AND kind = 'record' AND statement.job = job.number)",
          job, phase, record, events));
  if (!ended) return std::unexpected(ended.error());
  if (*ended) return {};
  const auto same = firstRow(
      database_, [](const Query&) { return true; },
      "SELECT 1 FROM job WHERE id = ? AND phase = ? AND record = ? AND ? = (SELECT count(*) FROM journal "
      "WHERE "
      "job = number)",
      job, phase, record, events);
  if (!same) return std::unexpected(same.error());
  if (!*same) return differs(job);
  return {};
}

Expected<void> Importer::takePair(Line& line) {
  const Pair pair{.unit = line.text("unit"),
                  .attachment = line.text("attachment"),
                  .calibration = line.optionalText("calibration"),
                  .record = line.optionalText("record"),
                  .due_utc_ms = line.optionalInteger("due_utc_ms"),
                  .restrictions = line.texts("restrictions")};
  if (auto done = line.done(); !done) return done;
  const auto restrictions = textOfRestrictions(pair.restrictions);
  if (!restrictions) return std::unexpected(restrictions.error());
  const auto is_new =
      added(run(database_,
                "INSERT INTO pair (unit, attachment, calibration, record, due_utc_ms, restrictions) "
                "VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING",
                pair.unit, pair.attachment, TextOrNull{pair.calibration}, TextOrNull{pair.record},
                pair.due_utc_ms, *restrictions));
  if (!is_new) return std::unexpected(is_new.error());
  if (*is_new) return {};
  const auto same = firstRow(
      database_, [](const Query&) { return true; },
      "SELECT 1 FROM pair WHERE unit = ? AND attachment = ? AND coalesce(calibration, '') = ? AND "
      "coalesce(record, '') = ? AND due_utc_ms IS ? AND restrictions = ?",
      pair.unit, pair.attachment, pair.calibration, pair.record, pair.due_utc_ms, *restrictions);
  if (!same) return std::unexpected(same.error());
  if (!*same) kept("import-kept-pair", "unit", pair.unit);
  return {};
}

Expected<void> Importer::takeSigners(Line& line) {
  const records::SealedSigners list{.name = line.text("name"), .text = line.text("text")};
  if (auto done = line.done(); !done) return done;
  const auto read = records::readSigners(list.text);
  if (!read) return std::unexpected(read.error());
  if (read->name != list.name) return malformed("the name of the list");
  const auto is_new =
      added(run(database_, "INSERT INTO signers_list (name, text) VALUES (?, ?) ON CONFLICT DO NOTHING",
                list.name, list.text),
            "signers", list.name);
  if (!is_new) return std::unexpected(is_new.error());
  return {};
}

/// Whom to trust is for a person here to say: roots come along only where nobody has said so yet.
Expected<void> Importer::takeRoot(Line& line) {
  const std::string name = line.text("name");
  if (auto done = line.done(); !done) return done;
  if (!takes_roots_) {
    const auto here = firstRow(database_, [](const Query&) { return true; }, "SELECT 1 FROM accepted_root");
    if (!here) return std::unexpected(here.error());
    takes_roots_ = !here->has_value();
  }
  if (*takes_roots_) {
    const auto is_new =
        added(run(database_, "INSERT INTO accepted_root (name) VALUES (?) ON CONFLICT DO NOTHING", name));
    if (!is_new) return std::unexpected(is_new.error());
    return {};
  }
  const auto same = firstRow(
      database_, [](const Query&) { return true; }, "SELECT 1 FROM accepted_root WHERE name = ?", name);
  if (!same) return std::unexpected(same.error());
  if (!*same) kept("import-kept-roots", "list", name);
  return {};
}

Expected<void> Importer::takeHead(Line& line) {
  const records::Head head{.key = line.text("key"),
                           .epoch = line.text("epoch"),
                           .sequence = line.integer("sequence"),
                           .name = line.text("name")};
  if (auto done = line.done(); !done) return done;
  const auto is_new = added(
      run(database_,
          "INSERT INTO known_head (key, epoch, sequence, name) VALUES (?, ?, ?, ?) ON CONFLICT DO NOTHING",
          head.key, head.epoch, head.sequence, head.name));
  if (!is_new) return std::unexpected(is_new.error());
  return {};
}

Expected<void> Importer::takeErased(Line& line) {
  const std::string name = line.text("name");
  if (auto done = line.done(); !done) return done;
  const auto is_new =
      added(run(database_,
                "INSERT INTO personal (name) VALUES (?) ON CONFLICT DO UPDATE SET salt = NULL, "
                "bytes = NULL WHERE bytes IS NOT NULL",
                name),
            "personal", name);
  if (!is_new) return std::unexpected(is_new.error());
  erased_ = erased_ || *is_new;
  return {};
}

/// Only what came along now waits: the rest may have been sent since.
Expected<void> Importer::takeWaiting(Line& line) {
  const std::string what = line.text("what");
  const std::string name = line.text("name");
  const std::int64_t since_utc_ms = line.integer("since_utc_ms");
  if (auto done = line.done(); !done) return done;
  if (!waitingKindOf(what)) return malformed("statement, signers, blob or personal");
  if (!new_.contains({what, name})) return {};
  const auto waits =
      run(database_, "INSERT INTO waiting (kind, name, since_utc_ms) VALUES (?, ?, ?) ON CONFLICT DO NOTHING",
          what, name, since_utc_ms);
  if (!waits) return std::unexpected(waits.error());
  return {};
}

Expected<Imported> Store::importFrom(std::istream& in) {
  Importer importer(*database_);
  {
    auto transaction = Transaction::beginWriting(*database_);
    if (!transaction) return std::unexpected(transaction.error());
    if (auto read = importer.read(in); !read) return std::unexpected(read.error());
    if (auto committed = transaction->commit(); !committed) return std::unexpected(committed.error());
  }
  if (importer.erased()) {
    if (auto emptied = database_->emptyLog(); !emptied) return std::unexpected(emptied.error());
  }
  return std::move(importer.result());
}

}  // namespace hingepin::store
