// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <set>
#include <utility>

#include "engine/base/named.h"
#include "engine/cli/commands.h"
#include "engine/cli/groups.h"
#include "engine/cli/words.h"
#include "engine/folder/evidence.h"
#include "engine/folder/files.h"
#include "engine/folder/folder.h"
#include "engine/records/canonical_json.h"
#include "engine/records/seal.h"
#include "engine/records/verify.h"
#include "engine/session/catalogue.h"
#include "engine/session/compare.h"
#include "engine/session/dispute.h"
#include "engine/session/job_record.h"
#include "engine/session/past.h"
#include "engine/session/tables.h"
#include "engine/session/yard.h"

namespace hingepin::cli {
namespace {

using namespace folder;
using Json = nlohmann::ordered_json;

namespace fs = std::filesystem;

struct RecordOptions {
  std::string folder;
  std::string name;
  std::string other;
  std::string unit;
  std::string key;
  std::string role;
  std::string correction;
  std::string attachment;
  std::string event;
  std::string note;
  std::string on;
  std::vector<std::string> roots;
  bool json = false;
};

enum class Weight { Fault, Remark };

/// Findings that take nothing from a record's worth.
constexpr std::array kWeights = {
    Named{"record-amended", Weight::Remark},       Named{"record-same-phone", Weight::Remark},
    Named{"record-new-epoch", Weight::Remark},     Named{"personal-erased", Weight::Remark},
    Named{"personal-not-arrived", Weight::Remark}, Named{"signers-key-changed", Weight::Remark},
    Named{"signers-root-replaced", Weight::Remark}};

bool isRemark(const std::string& code) {
  return std::ranges::find(kWeights, code, &Named<Weight>::name) != kWeights.end();
}

std::string nameOfFile(const std::string& path) {
  const std::string file = fs::path(path).filename().string();
  return file.substr(0, file.size() - std::string_view(kSealedFile).size());
}

Expected<std::vector<records::StoredText>> sealedTexts(const std::string& folder) {
  const Expected<std::vector<std::string>> files = filesIn(folder, kSealedFile);
  if (!files) return std::unexpected(files.error());
  std::vector<records::StoredText> texts;
  for (const std::string& path : *files) {
    Expected<std::string> text = readFile(path);
    if (!text) return std::unexpected(text.error());
    texts.push_back({.text = *std::move(text), .name = nameOfFile(path)});
  }
  return texts;
}

/// What a folder holds that export wrote. Whom to trust is not among it: that is for a person to say.
Expected<records::Evidence> evidenceIn(const RecordOptions& options) {
  records::Evidence evidence;
  auto statements = sealedTexts((fs::path(options.folder) / kStatementsPart).string());
  if (!statements) return std::unexpected(statements.error());
  auto signers = sealedTexts((fs::path(options.folder) / kSignersPart).string());
  if (!signers) return std::unexpected(signers.error());
  evidence.statements = *std::move(statements);
  evidence.signers_lists = *std::move(signers);
  evidence.accepted_roots = options.roots;
  return evidence;
}

/// Where a folder holds what is kept there under a name; "" for what is not there.
std::string fileOf(const RecordOptions& options, const char* part, const std::string& name) {
  const fs::path path = fs::path(options.folder) / part / (name + kSealedFile);
  return options.folder.empty() || name.empty() || !fs::exists(path) ? "" : path.string();
}

const std::string& keptAs(const records::StatementVerdict& verdict) {
  return verdict.kept_as.empty() ? verdict.name : verdict.kept_as;
}

std::string verificationJson(const RecordOptions& options, const records::Verification& verification) {
  std::string text;
  const auto line = [&](const Json& json) {
    text += json.dump(-1, ' ', false, Json::error_handler_t::replace) + "\n";
  };
  for (const records::StatementVerdict& each : verification.statements) {
    line({{"name", keptAs(each)}, {"standing", session::nameOf(each.standing)}});
  }
  const auto findings = [&](const char* part, const std::vector<records::Finding>& list) {
    for (const records::Finding& finding : list) {
      Json said = {{"finding", finding.message.code}, {"about", finding.subject}};
      if (const std::string file = fileOf(options, part, finding.subject); !file.empty()) said["file"] = file;
      said["message"] = session::say(session::englishCatalogue(), finding.message, UnitSystem::Metric);
      line(said);
    }
  };
  findings(kSignersPart, verification.signers.findings);
  findings(kStatementsPart, verification.findings);
  return text;
}

int verifyCommand(const Common& common, const RecordOptions& options) {
  Expected<records::Evidence> evidence = records::Evidence();
  if (!options.folder.empty()) {
    evidence = evidenceIn(options);
  } else {
    const Expected<Folder> folder = openFolder(common.store);
    if (!folder) return complain(folder.error(), common.system);
    evidence = folder->store.evidence();
  }
  if (!evidence) return complain(evidence.error(), common.system);
  const records::Verification verification = records::verify(*evidence);
  bool holds = true;
  std::string text;
  Table table;
  for (const records::StatementVerdict& each : verification.statements) {
    holds = holds && each.standing == records::Standing::Trusted;
    const bool signature = each.statement && std::holds_alternative<records::Signature>(*each.statement);
    table.push_back(
        {keptAs(each), signature ? "signature" : "record", std::string(session::nameOf(each.standing))});
  }
  text = layOut(table, Charset::Utf8, 3);
  const auto findings = [&](const char* part, const std::vector<records::Finding>& list) {
    for (const records::Finding& finding : list) {
      holds = holds && isRemark(finding.message.code);
      if (const std::string file = fileOf(options, part, finding.subject); !file.empty()) text += file + ": ";
      text += session::say(session::englishCatalogue(), finding.message, common.system) + "\n";
    }
  };
  findings(kSignersPart, verification.signers.findings);
  findings(kStatementsPart, verification.findings);
  const int printed = print(
      options.json ? verificationJson(options, verification) : in(text, terminalCharset()), common.system);
  if (printed != kDone) return printed;
  return holds ? kDone : kInsufficient;
}

int listCommand(const Common& common, const RecordOptions& options) {
  const Expected<Folder> folder = openFolder(common.store);
  if (!folder) return complain(folder.error(), common.system);
  const auto names = folder->store.statementNames(options.unit);
  if (!names) return complain(names.error(), common.system);
  Table table = {{"name", "sealed", "role", "unit", "procedure", "phase"}};
  for (const std::string& name : *names) {
    const auto stored = folder->store.statement(name);
    if (!stored) return complain(stored.error(), common.system);
    const auto sealed = records::readSealed((*stored)->text);
    if (!sealed) return complain(sealed.error(), common.system);
    const auto statement = records::readPayload(sealed->payload, sealed->type);
    if (!statement) return complain(statement.error(), common.system);
    const records::Envelope& envelope = records::envelopeOf(*statement);
    std::vector<std::string> row = {name, session::utcText(envelope.sealed_utc_ms), envelope.role};
    if (const auto* const record = std::get_if<records::Record>(&*statement)) {
      row.push_back(session::textAt(record->content, {"unit", "id"}));
      row.push_back(record->amends ? "corrects " + record->amends->substr(0, 12)
                    : session::eventOf(record->content)
                        ? "event " + session::textAt(record->content, {"event"})
                        : session::textAt(record->content, {"procedure", "id"}));
      row.push_back(record->amends ? "-" : session::textAt(record->content, {"phase"}));
    } else {
      row.push_back((*stored)->unit);
      row.push_back("signs " + std::get<records::Signature>(*statement).record.substr(0, 12));
      row.emplace_back("-");
    }
    table.push_back(std::move(row));
  }
  return print(layOut(table, terminalCharset(), 6), common.system);
}

int showCommand(const Common& common, const RecordOptions& options) {
  const Expected<Folder> folder = openFolder(common.store);
  if (!folder) return complain(folder.error(), common.system);
  const Expected<std::optional<store::StoredStatement>> stored = folder->store.statement(options.name);
  if (!stored) return complain(stored.error(), common.system);
  if (!*stored) {
    return complain({ErrorKind::NotFound, {"record-not-in-store", {{"record", options.name}}}, {}},
                    common.system);
  }
  const Expected<records::Sealed> sealed = records::readSealed((*stored)->text);
  if (!sealed) return complain(sealed.error(), common.system);
  return print(nlohmann::ordered_json::parse(sealed->payload).dump(2) + "\n", common.system);
}

int exportCommand(const Common& common, const RecordOptions& options) {
  const Expected<Folder> folder = openFolder(common.store);
  if (!folder) return complain(folder.error(), common.system);
  const auto evidence = folder->store.evidence();
  if (!evidence) return complain(evidence.error(), common.system);
  const Expected<std::size_t> written = writeEvidence(options.folder, *evidence);
  if (!written) return complain(written.error(), common.system);
  return print(fmt::format("{}: {}\n", options.folder, *written), common.system);
}

/// A moment, or a day, whose end is meant.
Expected<std::int64_t> momentIn(const std::string& text) {
  if (const auto moment = session::readUtc(text)) return *moment;
  if (const auto day = session::readUtc(text + "T23:59:59Z")) return *day;
  return fail(ErrorKind::InvalidInput, "script-time-malformed", {{"text", text}});
}

int disputeCommand(const Common& common, const RecordOptions& options) {
  const Expected<std::int64_t> moment = momentIn(options.on);
  if (!moment) return complain(moment.error(), common.system);
  const Expected<Folder> folder = openFolder(common.store);
  if (!folder) return complain(folder.error(), common.system);
  const Expected<session::Dispute> dispute =
      session::disputeOf(folder->store, options.unit, options.attachment, *moment);
  if (!dispute) return complain(dispute.error(), common.system);
  if (!options.folder.empty()) {
    if (const auto written = folder::writeDisputeBundle(options.folder, folder->store, *dispute); !written)
      return complain(written.error(), common.system);
  }
  std::string text = session::writeDispute(*dispute) + "\n";
  if (!options.json) {
    text.clear();
    for (const std::string& line : session::sayDispute(*dispute, {.system = common.system}))
      text += line + "\n";
    text = in(text, terminalCharset());
  }
  const int printed = print(text, common.system);
  return printed == kDone && !dispute->before && !dispute->after ? kInsufficient : printed;
}

/// Opens the folder and a key of it, and prints the name of what was sealed with that.
int sealWithKey(const Common& common, const RecordOptions& options,
                const std::function<Expected<std::string>(store::Store&, const session::Sealer&,
                                                          const session::Moment&)>& seal) {
  const Expected<std::string> passphrase = readPassphrase(common.passphrase_file);
  if (!passphrase) return complain(passphrase.error(), common.system);
  Expected<Folder> folder = openFolder(common.store);
  if (!folder) return complain(folder.error(), common.system);
  const Expected<records::SecretKey> key = openSealingKey(*folder, options.key, *passphrase);
  if (!key) return complain(key.error(), common.system);
  const Expected<std::string> name =
      seal(folder->store,
           {.key = *key, .role = options.role, .installation = folder->installation, .epoch = folder->epoch},
           momentOfComputer());
  if (!name) return complain(name.error(), common.system);
  return print(*name + "\n", common.system);
}

int signCommand(const Common& common, const RecordOptions& options) {
  return sealWithKey(common, options, [&](store::Store& store, const session::Sealer& by, const auto& now) {
    return session::signRecord(store, options.name, by, now);
  });
}

int amendCommand(const Common& common, const RecordOptions& options) {
  return sealWithKey(common, options, [&](store::Store& store, const session::Sealer& by, const auto& now) {
    return session::amendRecord(store, options.name, options.correction, by, now);
  });
}

int eventCommand(const Common& common, const RecordOptions& options) {
  const auto event = std::ranges::find(proof::kEventNames, options.event, &Named<proof::Event>::name);
  if (event == proof::kEventNames.end()) {
    std::string known;
    for (const auto& each : proof::kEventNames) known += (known.empty() ? "" : ", ") + std::string(each.name);
    return complain(
        {ErrorKind::InvalidInput, {"word-unknown", {{"text", options.event}, {"known", known}}}, {}},
        common.system);
  }
  return sealWithKey(common, options, [&](store::Store& store, const session::Sealer& by, const auto& now) {
    return session::recordEvent(store, options.unit, options.attachment, event->value, options.note, by, now);
  });
}

int compareCommand(const Common& common, const RecordOptions& options) {
  const Expected<Folder> folder = openFolder(common.store);
  if (!folder) return complain(folder.error(), common.system);
  if (!options.json) {
    const auto differences =
        session::differencesFor(folder->store, options.name, options.other, {.system = common.system});
    if (!differences) return complain(differences.error(), common.system);
    std::string text;
    for (const std::string& each : *differences) text += each + "\n";
    return print(in(text, terminalCharset()), common.system);
  }
  const Expected<records::Record> before = session::recordOf(folder->store, options.name);
  if (!before) return complain(before.error(), common.system);
  const Expected<records::Record> after = session::recordOf(folder->store, options.other);
  if (!after) return complain(after.error(), common.system);
  const auto differences = session::compareRecords(before->content, after->content);
  if (!differences) return complain(differences.error(), common.system);
  std::string text;
  for (const session::Difference& each : *differences) {
    text += nlohmann::ordered_json({{"step", each.step},
                                    {"difference", session::messageOf(each).code},
                                    {"before", each.before},
                                    {"after", each.after},
                                    {"change", each.change}})
                .dump() +
            "\n";
  }
  return print(text, common.system);
}

}  // namespace

void addRecordCommands(CLI::App& app, const Common& common, Action& action) {
  const auto options = std::make_shared<RecordOptions>();
  CLI::App* const group = app.add_subcommand("records", "Records: finished, sealed jobs");
  group->require_subcommand(1);
  const auto command = [&](const char* name, const char* help,
                           int (*act)(const Common&, const RecordOptions&)) {
    CLI::App* const added = group->add_subcommand(name, help);
    added->callback([&common, &action, options, act] {
      action = [&common, options, act] { return act(common, *options); };
    });
    return added;
  };
  CLI::App* const list =
      command("list", "List records and further signatures, the newest first", listCommand);
  list->add_option("--unit", options->unit, "Only those about one machine")->type_name("UNIT");
  command("show", "Show what a record says (JSON)", showCommand)
      ->add_option("RECORD", options->name, "Its name")
      ->required();
  CLI::App* const verify = command(
      "verify", "Check every seal, signer and chain; say exactly what fails (status 1)", verifyCommand);
  verify->add_option("FOLDER", options->folder, "Files that export wrote; the store if not given");
  verify->add_option("--root", options->roots, "Name of a yard's first list that you trust; may be repeated")
      ->type_name("LIST")
      ->allow_extra_args(false);
  verify->add_flag("--json", options->json, "One JSON object a line");
  command("export", "Write every sealed text as a file of its own, and the public keys", exportCommand)
      ->add_option("FOLDER", options->folder, "Where to")
      ->required();
  CLI::App* const sign = command("sign", "Add the signature of another person to a record", signCommand);
  CLI::App* const amend = command(
      "amend", "Correct a record by a new one that names it; the old one stays as it is", amendCommand);
  CLI::App* const event = command(
      "event", "Record what happened to a machine after which its scale is proved again", eventCommand);
  event->add_option("UNIT", options->unit, "The machine")->required();
  event->add_option("EVENT", options->event, "What happened, one of those below")->required();
  event->add_option("--attachment", options->attachment, "Only with this one; all if not given")
      ->type_name("ATTACHMENT");
  event->add_option("--note", options->note, "In words, kept as typed")->type_name("TEXT");
  event->footer([] {
    std::string text = "Events:\n";
    for (const auto& each : proof::kEventNames) text += "  " + std::string(each.name) + "\n";
    return text;
  });
  for (CLI::App* const sealing : {sign, amend})
    sealing->add_option("RECORD", options->name, "Its name")->required();
  for (CLI::App* const sealing : {sign, amend, event}) {
    sealing->add_option("--key", options->key, "The key by its name here")->required()->type_name("NAME");
    sealing->add_option("--role", options->role, "As which the person signs")->required()->type_name("ROLE");
  }
  amend->add_option("--correction", options->correction, "What was wrong, and what is right")
      ->required()
      ->type_name("TEXT");
  CLI::App* const compare = command(
      "compare", "Say what differs between two records of one machine: check-out and return", compareCommand);
  compare->add_option("BEFORE", options->name, "How it left")->required();
  compare->add_option("AFTER", options->other, "How it came back")->required();
  compare->add_flag("--json", options->json, "One JSON object a difference");

  CLI::App* const dispute =
      command("dispute", "Tell what a scale was worth on a day, bounded by the proofs before and after it",
              disputeCommand);
  dispute->add_option("UNIT", options->unit, "The machine")->required();
  dispute->add_option("ATTACHMENT", options->attachment, "What it carried")->required();
  dispute->add_option("--on", options->on, "The day, or the moment in UTC")->required()->type_name("UTC");
  dispute->add_option("--out", options->folder, "Write a folder with the answer and the records behind it")
      ->type_name("FOLDER");
  dispute->add_flag("--json", options->json, "Print the answer as one JSON object");
}

}  // namespace hingepin::cli
