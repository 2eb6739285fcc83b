// SPDX-License-Identifier: Apache-2.0
#include <csignal>
#include <filesystem>
#include <memory>
#include <utility>

#include "engine/cli/commands.h"
#include "engine/cli/groups.h"
#include "engine/cli/output.h"
#include "engine/cli/words.h"
#include "engine/folder/far_side.h"
#include "engine/folder/folder.h"
#include "engine/folder/object_file.h"
#include "engine/session/catalogue.h"
#include "engine/session/moment.h"
#include "engine/sync/exchange.h"

namespace hingepin::cli {
namespace {

using namespace folder;

struct SyncOptions {
  FarSide far_side;
  std::string webdav;
  std::string s3;
  std::string secret_file;
  std::string file;
  std::string key;
};

volatile std::sig_atomic_t interrupted = 0;

std::string kindText(store::WaitingKind kind) {
  switch (kind) {
    case store::WaitingKind::Statement:
      return "record";
    case store::WaitingKind::Signers:
      return "signers";
    case store::WaitingKind::Blob:
      return "evidence";
    case store::WaitingKind::Personal:
      return "personal";
  }
  return "";
}

std::string sentence(const Message& message, const Common& common) {
  return session::say(session::englishCatalogue(), message, common.system) + "\n";
}

int setUp(const Common& common, SyncOptions options) {
  const Expected<Folder> folder = openFolder(common.store);
  if (!folder) return complain(folder.error(), common.system);
  options.far_side.kind = options.s3.empty() ? "webdav" : "s3";
  options.far_side.url = options.s3.empty() ? options.webdav : options.s3;
  if (!options.far_side.ca_file.empty()) {
    options.far_side.ca_file = std::filesystem::absolute(options.far_side.ca_file).string();
  }
  if (auto set = setFarSide(*folder, options.far_side); !set) return complain(set.error(), common.system);
  return print(options.far_side.url + "\n", common.system);
}

/// What was done, for a person; what is wrong with the far side, a line each.
int report(const Expected<sync::Outcome>& outcome, const Common& common) {
  if (!outcome) return complain(outcome.error(), common.system);
  const sync::Progress& done = outcome->progress;
  const Table table = {{"", "sent", "received"},
                       {"parcels", std::to_string(done.parcels_sent), std::to_string(done.parcels_received)},
                       {"records and signatures, new here", "", std::to_string(done.statements_received)},
                       {"photos, logs and other evidence", std::to_string(done.evidence_sent),
                        std::to_string(done.evidence_received)},
                       {"bytes", std::to_string(done.bytes_sent), std::to_string(done.bytes_received)},
                       {"put into quarantine", "", std::to_string(done.quarantined)}};
  if (const int printed = print(layOut(table, terminalCharset(), 1), common.system); printed != kDone)
    return printed;
  for (const Message& finding : outcome->findings) writeDiagnostic(sentence(finding, common));
  if (outcome->stopped) return complain(*outcome->stopped, common.system);
  return outcome->findings.empty() && done.quarantined == 0 ? kDone : kInsufficient;
}

/// Ends at the next step when it is interrupted; the next exchange goes on there.
bool goesOn() { return interrupted == 0; }

int withRemote(const Common& common,
               const std::function<Expected<std::pair<sync::Remote, std::string>>(const Folder&)>& remoteIn) {
  Expected<Folder> folder = openFolder(common.store);
  if (!folder) return complain(folder.error(), common.system);
  const auto remote = remoteIn(*folder);
  if (!remote) return complain(remote.error(), common.system);
  std::signal(SIGINT, [](int) { interrupted = 1; });
  std::signal(SIGTERM, [](int) { interrupted = 1; });
  return report(exchangeWith(*folder, remote->first, remote->second, {}, goesOn), common);
}

int runSync(const Common& common, const SyncOptions& options) {
  return withRemote(common, [&](const Folder& folder) -> Expected<std::pair<sync::Remote, std::string>> {
    const Expected<FarSide> far_side = farSideOf(folder);
    if (!far_side) return std::unexpected(far_side.error());
    const Expected<std::string> secret = readSecret(options.secret_file);
    if (!secret) return std::unexpected(secret.error());
    return std::pair(remoteOf(*far_side, *secret, goesOn), addressOf(*far_side));
  });
}

int syncFile(const Common& common, const SyncOptions& options) {
  return withRemote(common, [&](const Folder&) -> Expected<std::pair<sync::Remote, std::string>> {
    auto remote = objectFile(options.file);
    if (!remote) return std::unexpected(remote.error());
    // Cards change: a file is not held to what another one of its name has shown.
    return std::pair(*std::move(remote), std::string());
  });
}

int listWaiting(const Common& common) {
  const Expected<Folder> folder = openFolder(common.store);
  if (!folder) return complain(folder.error(), common.system);
  const auto waits = sync::whatWaits(folder->store, std::nullopt);
  if (!waits) return complain(waits.error(), common.system);
  Table table = {{"what", "name", "since", "why"}};
  for (const sync::Waits& each : *waits) {
    std::string why = sentence(each.why, common);
    why.pop_back();
    table.push_back(
        {kindText(each.what.kind), each.what.name, session::utcText(each.what.since_utc_ms), std::move(why)});
  }
  return print(layOut(table, terminalCharset(), 4), common.system);
}

int listQuarantine(const Common& common) {
  const Expected<Folder> folder = openFolder(common.store);
  if (!folder) return complain(folder.error(), common.system);
  const auto held = sync::inQuarantine(folder->store);
  if (!held) return complain(held.error(), common.system);
  Table table = {{"name", "device", "why"}};
  for (const sync::InQuarantine& each : *held) {
    std::string why = sentence(each.why, common);
    why.pop_back();
    table.push_back({each.name, sync::shortName(each.source), std::move(why)});
  }
  return print(layOut(table, terminalCharset(), 3), common.system);
}

int vouchCommand(const Common& common, const SyncOptions& options) {
  const Expected<std::string> passphrase = readPassphrase(common.passphrase_file);
  if (!passphrase) return complain(passphrase.error(), common.system);
  const Expected<Folder> folder = openFolder(common.store);
  if (!folder) return complain(folder.error(), common.system);
  const Expected<records::SecretKey> key = openKey(*folder, options.key, *passphrase);
  if (!key) return complain(key.error(), common.system);
  if (auto vouched = vouchForDevice(*folder, *key); !vouched) return complain(vouched.error(), common.system);
  const auto device = openDevice(*folder);
  if (!device) return complain(device.error(), common.system);
  return print(sync::shortName(sync::sourceOf(device->key.publicKey(), device->epoch)) + "\n", common.system);
}

}  // namespace

void addSyncCommands(CLI::App& app, const Common& common, Action& action) {
  const auto options = std::make_shared<SyncOptions>();
  CLI::App* const group =
      app.add_subcommand("sync", "Records, evidence and lists of signers to and from a far side");
  group->require_subcommand(1);
  const auto command = [&](const char* name, const char* help, std::function<int()> act) {
    CLI::App* const added = group->add_subcommand(name, help);
    added->callback([&action, act = std::move(act)] { action = act; });
    return added;
  };
  CLI::App* const set_up =
      command("setup", "Say where the far side is: a WebDAV share, or S3-compatible object storage",
              [&common, options] { return setUp(common, *options); });
  CLI::Option* const webdav =
      set_up->add_option("--webdav", options->webdav, "Folder of a WebDAV share")->type_name("URL");
  CLI::Option* const s3 =
      set_up->add_option("--s3", options->s3, "Object storage, without the bucket")->type_name("URL");
  webdav->excludes(s3);
  set_up->add_option("--user", options->far_side.user, "User of the share, or id of the storage's key")
      ->type_name("NAME");
  set_up->add_option("--bucket", options->far_side.bucket, "Bucket of the storage")->type_name("NAME");
  set_up->add_option("--prefix", options->far_side.prefix, "What all names in the bucket begin with")
      ->type_name("TEXT");
  set_up->add_option("--region", options->far_side.region, "Region of the storage")->type_name("NAME");
  set_up->add_option("--ca", options->far_side.ca_file, "Certificates to trust instead of the system's")
      ->type_name("FILE");
  CLI::App* const run = command("run", "Exchange with the far side: send what it lacks, fetch what is new",
                                [&common, options] { return runSync(common, *options); });
  run->add_option(
         "--secret-file", options->secret_file,
         "Where the password or secret key stands; else the environment's HINGEPIN_SYNC_SECRET is taken")
      ->type_name("FILE");
  command("file",
          "The same with a file, to be carried by cable, memory card or message; made if it isn't there",
          [&common, options] { return syncFile(common, *options); })
      ->add_option("FILE", options->file, "The file")
      ->required();
  command("waiting", "List what has not reached a far side yet, and why",
          [&common] { return listWaiting(common); });
  command("quarantine", "List what arrived and was not taken, and why",
          [&common] { return listQuarantine(common); });
  command("vouch", "Vouch as a signer for this device, so that names and erasures that it sends are taken",
          [&common, options] { return vouchCommand(common, *options); })
      ->add_option("--key", options->key, "The signer's key by its name here")
      ->required()
      ->type_name("NAME");
}

}  // namespace hingepin::cli
