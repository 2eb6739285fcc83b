// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <utility>

#include "engine/cli/commands.h"
#include "engine/cli/groups.h"
#include "engine/cli/output.h"
#include "engine/cli/words.h"
#include "engine/folder/files.h"
#include "engine/folder/folder.h"
#include "engine/session/catalogue.h"
#include "engine/session/due_list.h"
#include "engine/session/procedure_words.h"
#include "engine/session/profile.h"
#include "engine/session/tables.h"
#include "engine/session/yard.h"

namespace hingepin::cli {
namespace {

using namespace folder;

struct YardOptions {
  std::string file;
  std::string name;
  std::string yard_key;
  std::string last;
  std::string from;
  std::string until;
  std::vector<std::string> signers;
};
using Options = std::shared_ptr<YardOptions>;

/// Opens the folder and does something with it.
int withFolder(const Common& common, const std::function<int(Folder&)>& act) {
  Expected<Folder> folder = openFolder(common.store);
  if (!folder) return complain(folder.error(), common.system);
  return act(*folder);
}

/// Makes something of a store's answer, or complains.
template <class T>
int show(const Expected<T>& result, const Common& common, const std::function<std::string(const T&)>& text) {
  if (!result) return complain(result.error(), common.system);
  return print(in(text(*result), terminalCharset()), common.system);
}

int putUnit(const Common& common, const std::string& path) {
  Expected<std::string> text = readFile(path);
  if (!text) return complain(text.error(), common.system);
  const auto profile = session::readUnitProfile(*text, path, edge());
  if (!profile) return complain(profile.error(), common.system);
  return withFolder(common, [&](Folder& folder) {
    const auto put = folder.store.putUnit({.id = profile->id, .profile = *text});
    if (!put) return complain(put.error(), common.system);
    return print(profile->id + "\n", common.system);
  });
}

int putYard(const Common& common, const std::string& path) {
  Expected<std::string> text = readFile(path);
  if (!text) return complain(text.error(), common.system);
  if (const auto profile = session::readYardProfile(*text, path, edge()); !profile)
    return complain(profile.error(), common.system);
  return withFolder(common, [&](Folder& folder) {
    const auto put = folder.store.putYardProfile(*text);
    return put ? static_cast<int>(kDone) : complain(put.error(), common.system);
  });
}

int showYard(const Common& common) {
  return withFolder(common, [&](Folder& folder) {
    return show<std::string>(folder.store.yardProfile(), common, [](const std::string& text) {
      return text.empty() || text.ends_with('\n') ? text : text + "\n";
    });
  });
}

int putAttachment(const Common& common, const std::string& path) {
  Expected<std::string> text = readFile(path);
  if (!text) return complain(text.error(), common.system);
  const auto profile = session::readAttachmentProfile(*text, path, edge());
  if (!profile) return complain(profile.error(), common.system);
  return withFolder(common, [&](Folder& folder) {
    const auto put = folder.store.putAttachment({.id = profile->id, .profile = *text});
    if (!put) return complain(put.error(), common.system);
    return print(profile->id + "\n", common.system);
  });
}

/// What restricts a pair, in words; "procedure/code" where nobody has words for it.
std::string restrictionsText(const std::vector<std::string>& restrictions) {
  const Expected<const session::Words*> words = session::allWords("en");
  std::string text;
  for (const std::string& restriction : restrictions) {
    const std::string code = restriction.substr(restriction.find('/') + 1);
    const bool known = words && (*words)->contains(code);
    text += (text.empty() ? "" : " ") +
            (known ? session::say(**words, {code, {}}, UnitSystem::Metric) : restriction);
  }
  return text;
}

/// When and why a pair is due first.
const proof::DueReason* firstReason(const session::WhenAgain& when) {
  return when.reasons.empty() ? nullptr : &when.reasons.front();
}

std::vector<std::string> pairRow(const session::DuePair& due) {
  const store::Pair& pair = due.pair;
  const proof::DueReason* const first = firstReason(due.when);
  return {pair.unit, pair.attachment, first != nullptr ? session::utcText(first->utc_ms) : "-",
          pair.calibration.empty() ? "-" : pair.calibration.substr(0, 12),
          pair.restrictions.empty() ? "-" : restrictionsText(pair.restrictions)};
}

int listUnits(const Common& common) {
  return withFolder(common, [&](Folder& folder) {
    const auto units = folder.store.units();
    if (!units) return complain(units.error(), common.system);
    (void)session::keepDue(folder.store, edge());  // where it can't be kept it is worked out
    const auto pairs = session::duePairs(folder.store, edge(), INT64_MAX);
    if (!pairs) return complain(pairs.error(), common.system);
    std::multimap<std::string, const session::DuePair*> of_unit;
    for (const session::DuePair& each : *pairs) of_unit.emplace(each.pair.unit, &each);
    Table table = {{"unit", "attachment", "due", "calibration", "restrictions"}};
    for (const store::Unit& unit : *units) {
      const auto [first, last] = of_unit.equal_range(unit.id);
      for (auto each = first; each != last; ++each) table.push_back(pairRow(*each->second));
      if (first == last) table.push_back({unit.id, "-", "-", "-", "-"});
    }
    return print(layOut(table, terminalCharset(), 5), common.system);
  });
}

Expected<std::int64_t> timeOr(const std::string& text, std::int64_t otherwise) {
  if (text.empty()) return otherwise;
  const std::optional<std::int64_t> read = session::readUtc(text);
  if (!read) return fail(ErrorKind::InvalidInput, "script-time-malformed", {{"text", text}});
  return *read;
}

int listDue(const Common& common, const std::string& until) {
  const Expected<std::int64_t> time = timeOr(until, momentOfComputer().utc_ms);
  if (!time) return complain(time.error(), common.system);
  return withFolder(common, [&](Folder& folder) {
    (void)session::keepDue(folder.store, edge());  // where it can't be kept it is worked out
    return show<std::vector<session::DuePair>>(
        session::duePairs(folder.store, edge(), *time), common, [&](const auto& pairs) {
          Table table = {{"unit", "attachment", "due", "calibration", "restrictions", "why"}};
          for (const session::DuePair& each : pairs) {
            table.push_back(pairRow(each));
            table.back().push_back(
                session::say(session::englishCatalogue(), each.when.reasons.front().why, common.system));
          }
          return layOut(table, Charset::Utf8, 6);
        });
  });
}

/// Why and when each scale of a unit is due, its drift, and what its charts say.
int tellWhen(const Common& common, const std::string& unit) {
  return withFolder(common, [&](Folder& folder) {
    return show<std::vector<session::DuePair>>(
        session::duePairsOf(folder.store, unit, edge()), common, [&](const auto& pairs) {
          std::string text;
          for (const session::DuePair& each : pairs) {
            text += fmt::format("{} with {}\n", unit, each.pair.attachment);
            for (const std::string& line : session::sayWhenAgain(each.when, {.system = common.system}))
              text += "  " + line + "\n";
            if (each.when.no_drift)
              text +=
                  "  " + session::say(session::englishCatalogue(), *each.when.no_drift, common.system) + "\n";
          }
          return text;
        });
  });
}

int listAttachments(const Common& common) {
  return withFolder(common, [&](Folder& folder) {
    return show<std::vector<store::Attachment>>(folder.store.attachments(), common,
                                                [](const auto& attachments) {
                                                  std::string text;
                                                  for (const store::Attachment& each : attachments)
                                                    text += each.id + "\n";
                                                  return text;
                                                });
  });
}

int makeKeyCommand(const Common& common, const std::string& name) {
  const Expected<std::string> passphrase = readPassphrase(common.passphrase_file);
  if (!passphrase) return complain(passphrase.error(), common.system);
  return withFolder(common, [&](Folder& folder) {
    return show<NamedKey>(makeKey(folder, name, *passphrase), common, [](const NamedKey& made) {
      return fmt::format("{}  {}  {}\n", made.name, records::thumbprint(made.key),
                         records::publicKeyText(made.key));
    });
  });
}

int listKeys(const Common& common) {
  return withFolder(common, [&](Folder& folder) {
    return show<std::vector<NamedKey>>(keysOf(folder), common, [](const auto& keys) {
      Table table;
      for (const NamedKey& each : keys) {
        table.push_back({each.name, records::thumbprint(each.key), records::publicKeyText(each.key)});
      }
      return layOut(table, Charset::Utf8, 3);
    });
  });
}

/// "NAME:ROLE", where NAME is a key of the folder or the x of its JSON Web Key.
Expected<std::vector<records::Signer>> signersFrom(const Folder& folder, const YardOptions& options) {
  const Expected<std::int64_t> from = timeOr(options.from, momentOfComputer().utc_ms);
  if (!from) return std::unexpected(from.error());
  std::optional<std::int64_t> until;
  if (!options.until.empty()) {
    const Expected<std::int64_t> read = timeOr(options.until, 0);
    if (!read) return std::unexpected(read.error());
    until = *read;
  }
  const Expected<std::vector<NamedKey>> keys = keysOf(folder);
  if (!keys) return std::unexpected(keys.error());
  std::vector<records::Signer> signers;
  for (const std::string& text : options.signers) {
    const std::size_t colon = text.rfind(':');
    const std::string name = text.substr(0, colon);
    const std::string role = colon == std::string::npos ? "" : text.substr(colon + 1);
    if (!procedures::isRole(role)) return fail(ErrorKind::InvalidInput, "signer-malformed", {{"text", text}});
    const auto known = std::ranges::find(*keys, name, &NamedKey::name);
    Expected<records::PublicKey> key =
        known != keys->end() ? Expected<records::PublicKey>(known->key) : records::readPublicKey(name);
    if (!key) return fail(ErrorKind::NotFound, "key-not-here", {{"name", name}});
    signers.push_back({.key = *key, .role = role, .valid_from_utc_ms = *from, .valid_until_utc_ms = until});
  }
  return signers;
}

/// Does something with the yard's key.
int withYardKey(const Common& common, const YardOptions& options,
                const std::function<Expected<std::string>(Folder&, const records::SecretKey&)>& act) {
  const Expected<std::string> passphrase = readPassphrase(common.passphrase_file);
  if (!passphrase) return complain(passphrase.error(), common.system);
  return withFolder(common, [&](Folder& folder) {
    const Expected<records::SecretKey> key = openKey(folder, options.yard_key, *passphrase);
    if (!key) return complain(key.error(), common.system);
    return show<std::string>(act(folder, *key), common, [](const std::string& name) { return name + "\n"; });
  });
}

int showSigners(const Common& common) {
  return withFolder(common, [&](Folder& folder) {
    const auto newest = session::signersOf(folder.store);
    if (!newest) return complain(newest.error(), common.system);
    std::string text = fmt::format("list {} {}\nyard's key {}\n", newest->list->number, newest->name,
                                   records::thumbprint(newest->list->yard_key));
    Table table = {{"key", "role", "from", "until", ""}};
    for (const records::Signer& each : newest->list->signers) {
      const std::string id = records::thumbprint(each.key);
      const bool revoked = std::ranges::find(newest->list->revocations, id, &records::Revocation::key) !=
                           newest->list->revocations.end();
      table.push_back({id, each.role, session::utcText(each.valid_from_utc_ms),
                       each.valid_until_utc_ms ? session::utcText(*each.valid_until_utc_ms) : "-",
                       revoked ? "revoked" : ""});
    }
    text += layOut(table, Charset::Utf8, 5);
    for (const records::Finding& finding : newest->findings) {
      text += session::say(session::englishCatalogue(), finding.message, common.system) + "\n";
    }
    return print(in(text, terminalCharset()), common.system);
  });
}

int acceptSigners(const Common& common, const std::string& file) {
  Expected<std::string> text = readFile(file);
  if (!text) return complain(text.error(), common.system);
  Expected<records::ReadSigners> list = records::readSigners(*text);
  if (!list) {
    list.error().place.file = file;
    return complain(list.error(), common.system);
  }
  return withFolder(common, [&](Folder& folder) {
    const std::int64_t now = momentOfComputer().utc_ms;
    if (const auto put = folder.store.putSigners({list->name, *text}, now, false); !put) {
      return complain(put.error(), common.system);
    }
    // Only the first of a yard has to be compared with the yard by a person; those after it follow its chain.
    if (!list->list.previous) {
      if (const auto accepted = folder.store.acceptRoot(list->name); !accepted) {
        return complain(accepted.error(), common.system);
      }
    }
    return print(list->name + "\n", common.system);
  });
}

int checkStore(const Common& common) {
  return withFolder(common, [&](Folder& folder) {
    const auto findings = folder.store.check();
    if (!findings) return complain(findings.error(), common.system);
    for (const store::StoreFinding& finding : *findings) {
      writeDiagnostic(session::say(session::englishCatalogue(), finding.message, common.system) + "\n");
    }
    if (!findings->empty()) return static_cast<int>(kWrong);
    return print("Nothing is wrong.\n", common.system);
  });
}

int backupStore(const Common& common, const std::string& file) {
  return withFolder(common, [&](Folder& folder) {
    if (const auto made = folder.store.backup(file); !made) return complain(made.error(), common.system);
    return print(file + "\n", common.system);
  });
}

/// Units, jobs and readings as CSV, and the script that loads them into PostgreSQL.
Expected<void> writeTables(const store::Store& store, const std::filesystem::path& out) {
  if (auto made = makeFolder(out.string()); !made) return made;
  std::map<std::string, std::ofstream> files;
  const auto failure = [&](const char* table) {
    return fail(ErrorKind::IoFailed, "export-not-written", {},
                {.file = (out / (std::string(table) + ".csv")).string()});
  };
  for (const session::TableShape& table : session::officeTables()) {
    std::vector<std::string> names;
    for (const session::TableColumn& column : table.columns) names.emplace_back(column.name);
    std::ofstream& file = files[table.name];
    file.open(out / (std::string(table.name) + ".csv"), std::ios::binary | std::ios::trunc);
    if (!(file << session::csvRow(names))) return failure(table.name);
  }
  const auto written = session::eachOfficeRow(
      store, [&](const session::TableShape& table, const std::vector<std::string>& cells) -> Expected<void> {
        if (!(files[table.name] << session::csvRow(cells))) return failure(table.name);
        return {};
      });
  if (!written) return written;
  for (auto& [name, file] : files) {
    file.close();
    if (file.fail()) return failure(name.c_str());
  }
  return writeFile((out / "load.sql").string(), session::loadScript());
}

int exportTables(const Common& common, const std::string& path) {
  return withFolder(common, [&](Folder& folder) {
    const auto written = writeTables(folder.store, path);
    return written ? print(path + "\n", common.system) : complain(written.error(), common.system);
  });
}

/// Writes a file beside it first, so that what has the name is whole.
int exportStore(const Common& common, const std::string& path) {
  return withFolder(common, [&](Folder& folder) {
    std::error_code ignored;
    if (std::filesystem::exists(path, ignored))
      return complain({ErrorKind::InvalidInput, {"export-there-already", {{"path", path}}}, {}},
                      common.system);
    const std::string part = path + ".part";
    std::ofstream out(part, std::ios::binary | std::ios::trunc);
    Expected<void> written = folder.store.exportTo(out);
    out.close();
    if (written && out.fail()) written = fail(ErrorKind::IoFailed, "export-not-written");
    std::error_code failed;
    if (written) std::filesystem::rename(part, path, failed);
    if (written && failed) written = fail(ErrorKind::IoFailed, "export-not-written");
    if (!written) {
      std::filesystem::remove(part, ignored);
      written.error().place.file = path;
      return complain(written.error(), common.system);
    }
    return print(path + "\n", common.system);
  });
}

int importStore(const Common& common, const std::string& path) {
  return withFolder(common, [&](Folder& folder) {
    std::ifstream in(path, std::ios::binary);
    if (!in)
      return complain({ErrorKind::NotFound, {"file-not-found", {{"path", path}}}, {.file = path}},
                      common.system);
    Expected<store::Imported> imported = folder.store.importFrom(in);
    if (!imported) {
      imported.error().place.file = path;
      return complain(imported.error(), common.system);
    }
    for (const Message& kept : imported->kept)
      writeDiagnostic(session::say(session::englishCatalogue(), kept, common.system) + "\n");
    return print(fmt::format("{}\n", imported->added), common.system);
  });
}

CLI::App* addGroup(CLI::App& app, const char* name, const char* help) {
  CLI::App* const group = app.add_subcommand(name, help);
  group->require_subcommand(1);
  return group;
}

}  // namespace

void addYardCommands(CLI::App& app, const Common& common, Action& action) {
  const auto options = std::make_shared<YardOptions>();
  const auto command = [&](CLI::App* group, const char* name, const char* help, std::function<int()> act) {
    CLI::App* const added = group->add_subcommand(name, help);
    added->callback([&action, act = std::move(act)] { action = act; });
    return added;
  };

  CLI::App* const units = addGroup(app, "units", "The machines of the store and what holds for them");
  command(units, "put", "Put a machine's profile into the store (hingepin-unit/1)",
          [&common, options] { return putUnit(common, options->file); })
      ->add_option("FILE", options->file, "The profile")
      ->required();
  command(units, "list", "List machines with what is fitted, what is due and what restricts them",
          [&common] { return listUnits(common); });
  command(units, "due", "List what has to be proved again, the longest overdue first",
          [&common, options] { return listDue(common, options->until); })
      ->add_option("--until", options->until, "Up to this time; now if not given")
      ->type_name("UTC");
  command(units, "when", "Tell when a machine's scales are due, why, how they drift and until when they hold",
          [&common, options] { return tellWhen(common, options->name); })
      ->add_option("UNIT", options->name, "The machine")
      ->required();

  CLI::App* const yard = addGroup(app, "yard", "What holds for all machines that do not say otherwise");
  command(yard, "put", "Put the yard's profile into the store (hingepin-yard/1)",
          [&common, options] { return putYard(common, options->file); })
      ->add_option("FILE", options->file, "The profile")
      ->required();
  command(yard, "show", "Show the yard's profile", [&common] { return showYard(common); });

  CLI::App* const attachments = addGroup(app, "attachments", "Buckets and forks of the store");
  command(attachments, "put", "Put an attachment's profile into the store (hingepin-attachment/1)",
          [&common, options] { return putAttachment(common, options->file); })
      ->add_option("FILE", options->file, "The profile")
      ->required();
  command(attachments, "list", "List the attachments", [&common] { return listAttachments(common); });

  CLI::App* const keys = addGroup(app, "keys", "The keys of this store folder");
  command(keys, "make", "Make a key, wrapped by a passphrase; prints name, thumbprint and public key",
          [&common, options] { return makeKeyCommand(common, options->name); })
      ->add_option("NAME", options->name, "What it is called here: lower-case words joined by hyphens")
      ->required();
  command(keys, "list", "List the keys with thumbprint and public key",
          [&common] { return listKeys(common); });

  CLI::App* const signers = addGroup(app, "signers", "Who may sign as what, as the yard says");
  const auto addYardKey = [&](CLI::App* added) {
    added->add_option("--yard-key", options->yard_key, "The yard's key by its name here")
        ->required()
        ->type_name("NAME");
    return added;
  };
  const auto addSignerOptions = [&](CLI::App* added) {
    added
        ->add_option("--signer", options->signers,
                     "A key (its name here, or its public key) and a role; may be repeated")
        ->type_name("KEY:ROLE")
        ->allow_extra_args(false);
    added->add_option("--from", options->from, "From when they may sign; now if not given")->type_name("UTC");
    added->add_option("--until", options->until, "Until when; for good if not given")->type_name("UTC");
  };
  addSignerOptions(addYardKey(
      command(signers, "make", "Begin a yard: its first list of signers, accepted here", [&common, options] {
        return withYardKey(
            common, *options, [&](Folder& folder, const records::SecretKey& key) -> Expected<std::string> {
              auto listed = signersFrom(folder, *options);
              if (!listed) return std::unexpected(listed.error());
              return session::makeYard(folder.store, key, *std::move(listed), momentOfComputer().utc_ms);
            });
      })));
  addSignerOptions(
      addYardKey(command(signers, "add", "Add signers, in a new list after the newest", [&common, options] {
        return withYardKey(
            common, *options, [&](Folder& folder, const records::SecretKey& key) -> Expected<std::string> {
              auto listed = signersFrom(folder, *options);
              if (!listed) return std::unexpected(listed.error());
              return session::addSigners(folder.store, key, *listed, momentOfComputer().utc_ms);
            });
      })));
  CLI::App* const revoke = addYardKey(command(
      signers, "revoke", "Revoke a key: what it seals after its last trusted record is not trusted any more",
      [&common, options] {
        return withYardKey(
            common, *options, [&](Folder& folder, const records::SecretKey& key) -> Expected<std::string> {
              const auto known = keysOf(folder);
              if (!known) return std::unexpected(known.error());
              const auto named = std::ranges::find(*known, options->name, &NamedKey::name);
              const std::string id = named == known->end() ? options->name : records::thumbprint(named->key);
              return session::revokeSigner(
                  folder.store, key, id, options->last.empty() ? std::nullopt : std::optional(options->last),
                  momentOfComputer().utc_ms);
            });
      }));
  revoke->add_option("KEY", options->name, "Its name here, or its thumbprint")->required();
  revoke
      ->add_option("--last", options->last, "The last record of it that is still trusted; none if not given")
      ->type_name("RECORD");
  command(signers, "accept",
          "Take a list of signers from a file; the first of a yard becomes the one to trust",
          [&common, options] { return acceptSigners(common, options->file); })
      ->add_option("FILE", options->file, "The sealed list. Compare its name with the yard first")
      ->required();
  command(signers, "show", "Show the newest trusted list", [&common] { return showSigners(common); });

  CLI::App* const store = addGroup(app, "store", "The store folder as a whole");
  command(store, "check", "Look at everything in the store", [&common] { return checkStore(common); });
  command(store, "backup",
          "Copy the store to a file, without keys and without what makes this installation itself",
          [&common, options] { return backupStore(common, options->file); })
      ->add_option("FILE", options->file, "A file that is not there yet")
      ->required();
  command(store, "export", "Write all that the store holds as text, a JSON object a line; without keys",
          [&common, options] { return exportStore(common, options->file); })
      ->add_option("FILE", options->file, "A file that is not there yet")
      ->required();
  command(store, "tables",
          "Write units, jobs and readings as CSV, with a script that loads them into PostgreSQL",
          [&common, options] { return exportTables(common, options->file); })
      ->add_option("FOLDER", options->file, "Where to; tables that are there are written anew")
      ->required();
  command(store, "import",
          "Take what is new of another store's export: all of it or nothing; prints how much",
          [&common, options] { return importStore(common, options->file); })
      ->add_option("FILE", options->file, "What export wrote")
      ->required();
}

}  // namespace hingepin::cli
