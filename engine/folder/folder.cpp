// SPDX-License-Identifier: Apache-2.0
#include "engine/folder/folder.h"

#include <sodium.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <utility>

#include "engine/folder/files.h"
#include "engine/formats/calibration_json.h"
#include "engine/formats/job_json.h"
#include "engine/formats/lift_log_csv.h"
#include "engine/formats/proof_json.h"
#include "engine/formats/survey_json.h"
#include "engine/records/canonical_json.h"
#include "engine/records/chain.h"
#include "engine/records/encoding.h"
#include "engine/records/record.h"

namespace hingepin::folder {
namespace {

namespace fs = std::filesystem;
using records::jsonObject;
using records::jsonString;

constexpr const char* kInstallation = "hingepin-installation/1";

std::string in(const std::string& folder, const std::string& name) {
  return (fs::path(folder) / name).string();
}

std::string jsonOf(std::vector<std::pair<std::string, JsonValue>> members) {
  return records::canonicalJson(jsonObject(std::move(members))).value_or("{}") + "\n";
}

Expected<void> writeInstallation(const Folder& folder) {
  return writeFile(in(folder.path, "installation.json"), jsonOf({{"format", jsonString(kInstallation)},
                                                                 {"epoch", jsonString(folder.epoch)},
                                                                 {"key", jsonString(folder.installation)}}));
}

/// A new life of the installation: a folder without the file, or one restored from a backup, begins another
/// chain.
Expected<void> readInstallation(Folder& folder) {
  const std::string path = in(folder.path, "installation.json");
  Expected<std::string> text = readFile(path);
  if (!text) {
    if (text.error().kind != ErrorKind::NotFound) return std::unexpected(text.error());
    std::array<std::uint8_t, 16> bytes{};
    fillBytes(bytes);
    folder.epoch = records::epochName(bytes);
    return writeInstallation(folder);
  }
  const Expected<JsonDocument> document = readJson(*std::move(text), path);
  if (!document) return std::unexpected(document.error());
  const JsonNode root(*document);
  if (const Expected<void> known = root.expectObject({"format", "epoch", "key"}); !known) return known;
  const auto member = [&](std::string_view key) {
    const std::optional<JsonNode> node = root.find(key);
    return node ? node->string().value_or("") : std::string();
  };
  folder.epoch = member("epoch");
  folder.installation = member("key");
  const bool sound = member("format") == kInstallation && records::isEpoch(folder.epoch) &&
                     (folder.installation.empty() || records::isThumbprint(folder.installation));
  if (!sound) return root.error("installation-malformed");
  return {};
}

std::string keyPath(const Folder& folder, const std::string& name, const char* ending) {
  return (fs::path(folder.path) / "keys" / (name + ending)).string();
}

template <class T>
Expected<void> checked(const Expected<T>& read) {
  if (!read) return std::unexpected(read.error());
  return {};
}

}  // namespace

Expected<Folder> openFolder(const std::string& path) {
  if (path.empty()) return fail(ErrorKind::InvalidInput, "store-folder-missing");
  if (const Expected<void> made = makeFolder(in(path, "keys")); !made) return std::unexpected(made.error());
  Expected<store::Store> store = store::Store::open(in(path, "store.db"));
  if (!store) return std::unexpected(std::move(store.error()));
  Folder folder{.path = path, .store = *std::move(store), .epoch = "", .installation = ""};
  if (const Expected<void> read = readInstallation(folder); !read) return std::unexpected(read.error());
  return folder;
}

Expected<NamedKey> makeKey(Folder& folder, const std::string& name, const std::string& passphrase,
                           records::PassphraseCost cost) {
  if (!records::isLabel(name)) return fail(ErrorKind::InvalidInput, "key-name-malformed", {{"name", name}});
  const std::string path = keyPath(folder, name, ".key.json");
  if (fs::exists(path)) return fail(ErrorKind::InvalidInput, "key-there-already", {{"name", name}});
  const records::SecretKey key = records::newSecretKey(fillBytes);
  const Expected<std::string> wrapped = records::wrapKey(key, passphrase, cost, fillBytes);
  if (!wrapped) return std::unexpected(wrapped.error());
  if (const Expected<void> written = writeFile(path, *wrapped); !written)
    return std::unexpected(written.error());
  if (const Expected<void> written =
          writeFile(keyPath(folder, name, ".jwk.json"), records::jsonWebKey(key.publicKey()) + "\n");
      !written) {
    return std::unexpected(written.error());
  }
  if (folder.installation.empty()) {
    folder.installation = key.id();
    if (const Expected<void> written = writeInstallation(folder); !written) {
      return std::unexpected(written.error());
    }
  }
  return NamedKey{name, key.publicKey()};
}

Expected<std::vector<NamedKey>> keysOf(const Folder& folder) {
  const Expected<std::vector<std::string>> files = filesIn(in(folder.path, "keys"), ".jwk.json");
  if (!files) return std::unexpected(files.error());
  std::vector<NamedKey> keys;
  for (const std::string& path : *files) {
    Expected<std::string> text = readFile(path);
    if (!text) return std::unexpected(text.error());
    const Expected<JsonDocument> document = readJson(*std::move(text), path);
    if (!document) return std::unexpected(document.error());
    const JsonNode root(*document);
    if (root.value().kind != JsonKind::Object) return root.wrongKind("a JSON Web Key");
    const Expected<JsonNode> x = root.at("x");
    if (!x) return std::unexpected(x.error());
    Expected<records::PublicKey> key = records::readPublicKey(x->string().value_or(""));
    if (!key) {
      key.error().place = x->place();
      return std::unexpected(key.error());
    }
    const std::string file = fs::path(path).filename().string();
    keys.push_back({file.substr(0, file.size() - std::string_view(".jwk.json").size()), *key});
  }
  return keys;
}

Expected<records::SecretKey> openKey(const Folder& folder, const std::string& name,
                                     const std::string& passphrase) {
  const std::string path = keyPath(folder, name, ".key.json");
  const Expected<std::string> text = readFile(path);
  if (!text) {
    if (text.error().kind != ErrorKind::NotFound) return std::unexpected(text.error());
    return fail(ErrorKind::NotFound, "key-not-here", {{"name", name}});
  }
  Expected<records::SecretKey> key = records::unwrapKey(*text, passphrase);
  if (!key) key.error().place.file = path;
  return key;
}

Expected<records::SecretKey> openSealingKey(const Folder& folder, const std::string& name,
                                            const std::string& passphrase) {
  if (folder.installation.empty()) return fail(ErrorKind::InvalidInput, "installation-without-key");
  return openKey(folder, name, passphrase);
}

Expected<void> dropKeys(const Folder& folder) {
  const auto roots = folder.store.acceptedRoots();
  if (!roots) return std::unexpected(roots.error());
  if (!roots->empty()) return fail(ErrorKind::InvalidInput, "join-already", {{"list", roots->back()}});
  const auto keys = keysOf(folder);
  if (!keys) return std::unexpected(keys.error());
  for (const NamedKey& key : *keys) {
    // The public half last: while it is there, the key is seen and can be dropped again.
    for (const char* const ending : {".key.json", ".jwk.json"}) {
      std::error_code code;
      const std::string path = keyPath(folder, key.name, ending);
      fs::remove(path, code);
      if (code) {
        return fail(ErrorKind::IoFailed, "file-write-failed", {{"path", path}, {"reason", code.message()}},
                    {.file = path});
      }
    }
  }
  return {};
}

Expected<std::string> readPassphrase(const std::string& file) {
  std::string passphrase;
  if (!file.empty()) {
    Expected<std::string> text = readFile(file);
    if (!text) return text;
    passphrase = *std::move(text);
    while (passphrase.ends_with('\n') || passphrase.ends_with('\r')) passphrase.pop_back();
  } else if (const char* const given = std::getenv("HINGEPIN_PASSPHRASE")) {
    passphrase = given;
  }
  if (passphrase.empty()) return fail(ErrorKind::InvalidInput, "passphrase-missing");
  return passphrase;
}

Expected<std::vector<std::string>> filesIn(const std::string& folder, const std::string& extension) {
  std::error_code code;
  std::vector<std::string> files;
  for (auto entry = fs::directory_iterator(folder, code); !code && entry != fs::directory_iterator();
       entry.increment(code)) {
    if (entry->path().string().ends_with(extension)) files.push_back(entry->path().string());
  }
  if (code == std::errc::no_such_file_or_directory) {
    return fail(ErrorKind::NotFound, "file-not-found", {{"path", folder}}, {.file = folder});
  }
  if (code) {
    return fail(ErrorKind::IoFailed, "file-read-failed", {{"path", folder}, {"reason", code.message()}},
                {.file = folder});
  }
  std::ranges::sort(files);
  return files;
}

void fillBytes(std::span<std::uint8_t> bytes) {
  static const int prepared = sodium_init();
  if (prepared < 0) std::abort();  // a key must not be made of anything less
  randombytes_buf(bytes.data(), bytes.size());
}

session::Moment momentOfComputer() {
#ifdef __APPLE__
  constexpr clockid_t kSinceStart = CLOCK_MONOTONIC;  // goes on while the phone sleeps, there
#else
  constexpr clockid_t kSinceStart = CLOCK_BOOTTIME;  // goes on while the computer sleeps; nobody can set it
#endif
  timespec since_start{};
  ::clock_gettime(kSinceStart, &since_start);
  // Where the system doesn't name its start, this start of the program stands for it: readings then count as
  // too old sooner, never later.
  static const std::string boot = [] {
    std::string name = readFile("/proc/sys/kernel/random/boot_id").value_or("");
    while (name.ends_with('\n')) name.pop_back();
    if (!name.empty()) return name;
    std::array<std::uint8_t, 16> bytes{};
    fillBytes(bytes);
    return records::hexadecimal(records::textOf(bytes));
  }();
  const auto utc = std::chrono::system_clock::now().time_since_epoch();
  return {.at_ms = static_cast<std::int64_t>(since_start.tv_sec) * 1000 + since_start.tv_nsec / 1000000,
          .boot = boot,
          .utc_ms = std::chrono::duration_cast<std::chrono::milliseconds>(utc).count()};
}

const session::Edge& edge() {
  static const session::Edge edge = {
      .check_unit = [](const JsonDocument& document, const JsonNode& node) -> Expected<void> {
        return checked(formats::readUnit(document, node));
      },
      .check_attachment = [](const JsonDocument&, const JsonNode& node) -> Expected<void> {
        return checked(formats::readAttachment(node));
      },
      .read_terms = [](const JsonNode& node) { return formats::readTerms(node); },
      .read_log =
          [](const std::string& bytes, const std::string& file) {
            return formats::readLiftLog(formats::sourceOf(bytes), file);
          },
      .open_feed = []() -> session::FeedReader {
        const auto lines = std::make_shared<formats::LiftLogLines>("", formats::LogOrigin::Feed);
        return [lines](std::string_view bytes, const calibration::LogLineSink& each) {
          lines->take(bytes, each);
        };
      },
      .read_job = [](std::string text, const session::BlobSource& logs) -> Expected<calibration::Job> {
        // The bytes stay until the job is read.
        std::map<std::string, std::string> read;
        return formats::readUnfinishedJob(std::move(text), "readings",
                                          [&](const std::string& hash) -> Expected<formats::ByteSource> {
                                            Expected<std::string> bytes = logs(hash);
                                            if (!bytes) return std::unexpected(bytes.error());
                                            read[hash] = *std::move(bytes);
                                            return formats::sourceOf(read[hash]);
                                          });
      },
      .write_calibration =
          [](const calibration::Calibration& calibration) { return formats::writeCalibration(calibration); },
      .read_calibration =
          [](std::string text) { return formats::readCalibration(std::move(text), "calibration"); },
      .read_survey = [](std::string text) -> Expected<session::SurveyRead> {
        Expected<formats::SurveyFile> file = formats::readSurvey(std::move(text), "readings");
        if (!file) return std::unexpected(std::move(file.error()));
        return session::SurveyRead{.unit = std::move(file->unit),
                                   .attachment = std::move(file->attachment),
                                   .survey = std::move(file->survey),
                                   .tape_u_m = file->tape_u_m,
                                   .inclinometer_u_rad = file->inclinometer_u_rad};
      },
      .unit_with_linkage = &formats::unitWithLinkage};
  return edge;
}

}  // namespace hingepin::folder
