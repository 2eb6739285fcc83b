// SPDX-License-Identifier: Apache-2.0
#include "engine/folder/far_side.h"

#include <array>
#include <chrono>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <thread>
#include <utility>

#include "engine/base/strict_json.h"
#include "engine/far_side/curl_client.h"
#include "engine/far_side/http.h"
#include "engine/far_side/s3.h"
#include "engine/far_side/webdav.h"
#include "engine/folder/files.h"
#include "engine/records/canonical_json.h"
#include "engine/records/encoding.h"
#include "engine/records/secret.h"

namespace hingepin::folder {
namespace {

using records::jsonObject;
using records::jsonString;

constexpr const char* kFarSideFormat = "hingepin-far-side/1";
constexpr const char* kDeviceFormat = "hingepin-device-key/1";

/// @param name of a file of the folder, or an absolute path, which stays as it is
std::string in(const Folder& folder, const std::string& name) {
  return (std::filesystem::path(folder.path) / name).string();
}

/// The members of a file of texts; nothing where there is none. Errors: `code`.
struct Texts {
  JsonDocument document;
  [[nodiscard]] std::string at(std::string_view key) const {
    const auto node = JsonNode(document).find(key);
    return node ? node->string().value_or("") : "";
  }
};
Expected<std::optional<Texts>> readTexts(const std::string& path,
                                         std::initializer_list<std::string_view> keys, const char* code,
                                         const char* format) {
  Expected<std::string> text = readFile(path);
  if (!text) {
    if (text.error().kind == ErrorKind::NotFound) return std::nullopt;
    return std::unexpected(text.error());
  }
  Expected<JsonDocument> document = readJson(*std::move(text), path);
  if (!document) return std::unexpected(document.error());
  Texts texts{*std::move(document)};
  const JsonNode root(texts.document);
  if (auto known = root.expectObject(keys); !known) return std::unexpected(known.error());
  if (texts.at("format") != format) return root.error(code, {{"expected", std::string(format)}});
  return texts;
}

Expected<void> checkFarSide(const FarSide& far_side) {
  const auto expected = [](const char* what) {
    return fail(ErrorKind::InvalidInput, "far-side-malformed", {{"expected", what}});
  };
  if (far_side.kind != "webdav" && far_side.kind != "s3") return expected("kind: webdav or s3");
  if (auto checked = far_side::checkUrl(far_side.url); !checked) return checked;
  if (far_side.url.ends_with('/')) return expected("url without / at its end");
  if (far_side.kind == "s3" &&
      (far_side.bucket.empty() || far_side.region.empty() || far_side.user.empty())) {
    return expected("bucket, region and the id of a key");
  }
  return {};
}

/// Beside the keys, which stay out of backups.
std::string secretPath(const Folder& folder, const records::SecretKey& owner) {
  return in(folder, "keys/" + owner.id() + ".secret.json");
}

Expected<sync::Device> keepDevice(const Folder& folder, sync::Device device) {
  const std::string text =
      records::canonicalJson(jsonObject({{"epoch", jsonString(device.epoch)},
                                         {"format", jsonString(kDeviceFormat)},
                                         {"seed", jsonString(records::base64Url(device.key.seed()))},
                                         {"voucher", jsonString(device.voucher)}}))
          .value_or("");
  if (auto written = writeFile(in(folder, "device.json"), text + "\n", Readers::OwnerOnly); !written) {
    return std::unexpected(written.error());
  }
  return device;
}

}  // namespace

Expected<std::string> keepAuthority(const Folder& folder, const std::string& chosen) {
  constexpr std::size_t kMost = 1U << 20U;
  const Expected<formats::ByteSource> source = openFile(chosen);
  if (!source) return std::unexpected(source.error());
  const Expected<std::string> bytes = formats::readAll(*source, chosen, kMost);
  if (!bytes) return bytes;
  if (bytes->find("-----BEGIN CERTIFICATE-----") == std::string::npos)
    return fail(ErrorKind::InvalidInput, "authority-not-pem", {{"path", chosen}});
  // Each under a name of its own: the one in use stays until the far side is set.
  std::string name = "far-side-authority-" + records::hashName(*bytes).substr(0, 12) + ".pem";
  if (const Expected<void> written = writeFile(in(folder, name), *bytes); !written)
    return std::unexpected(written.error());
  return name;
}

Expected<void> setFarSide(const Folder& folder, const FarSide& far_side) {
  if (auto checked = checkFarSide(far_side); !checked) return checked;
  const std::string text = records::canonicalJson(jsonObject({{"bucket", jsonString(far_side.bucket)},
                                                              {"ca_file", jsonString(far_side.ca_file)},
                                                              {"format", jsonString(kFarSideFormat)},
                                                              {"kind", jsonString(far_side.kind)},
                                                              {"prefix", jsonString(far_side.prefix)},
                                                              {"region", jsonString(far_side.region)},
                                                              {"url", jsonString(far_side.url)},
                                                              {"user", jsonString(far_side.user)}}))
                               .value_or("");
  return writeFile(in(folder, "far-side.json"), text + "\n");
}

Expected<FarSide> farSideOf(const Folder& folder) {
  const auto texts = readTexts(in(folder, "far-side.json"),
                               {"bucket", "ca_file", "format", "kind", "prefix", "region", "url", "user"},
                               "far-side-malformed", kFarSideFormat);
  if (!texts) return std::unexpected(texts.error());
  if (!*texts) return fail(ErrorKind::NotFound, "far-side-not-set-up");
  const Texts& read = **texts;
  FarSide far_side{.kind = read.at("kind"),
                   .url = read.at("url"),
                   .user = read.at("user"),
                   .bucket = read.at("bucket"),
                   .prefix = read.at("prefix"),
                   .region = read.at("region"),
                   .ca_file = read.at("ca_file")};
  if (auto checked = checkFarSide(far_side); !checked) return std::unexpected(checked.error());
  if (!far_side.ca_file.empty()) far_side.ca_file = in(folder, far_side.ca_file);
  return far_side;
}

Expected<std::string> readSecret(const std::string& file) {
  std::string secret;
  if (!file.empty()) {
    Expected<std::string> text = readFile(file);
    if (!text) return text;
    secret = *std::move(text);
    while (secret.ends_with('\n') || secret.ends_with('\r')) secret.pop_back();
  } else if (const char* const given = std::getenv("HINGEPIN_SYNC_SECRET")) {
    secret = given;
  }
  if (secret.empty()) return fail(ErrorKind::InvalidInput, "far-side-secret-missing");
  return secret;
}

Expected<void> keepSecret(const Folder& folder, const std::string& secret, const records::SecretKey& owner) {
  return writeFile(secretPath(folder, owner), records::sealSecret(secret, owner, fillBytes) + "\n",
                   Readers::OwnerOnly);
}

Expected<std::string> keptSecret(const Folder& folder, const records::SecretKey& owner) {
  Expected<std::string> text = readFile(secretPath(folder, owner));
  if (!text && text.error().kind == ErrorKind::NotFound)
    return fail(ErrorKind::NotFound, "far-side-secret-not-kept");
  if (!text) return text;
  return records::openSecret(*text, owner);
}

std::string addressOf(const FarSide& far_side) {
  return far_side.url + "/" + far_side.bucket + "/" + far_side.prefix;
}

sync::Remote remoteOf(const FarSide& far_side, const std::string& secret, std::function<bool()> goes_on) {
  const bool is_s3 = far_side.kind == "s3";
  const far_side::HttpClient client = far_side::curlClient(
      {.user = is_s3 ? "" : far_side.user, .secret = is_s3 ? "" : secret, .ca_file = far_side.ca_file});
  sync::Remote remote =
      is_s3 ? far_side::s3(client,
                           {.endpoint = far_side.url,
                            .bucket = far_side.bucket,
                            .prefix = far_side.prefix,
                            .key = {.id = far_side.user, .secret = secret, .region = far_side.region}},
                           [] { return momentOfComputer().utc_ms; })
            : far_side::webdav(client, far_side.url);
  return sync::patient(std::move(remote), {.jitter =
                                               [] {
                                                 std::array<std::uint8_t, 4> bytes{};
                                                 fillBytes(bytes);
                                                 std::uint32_t bits = 0;
                                                 std::memcpy(&bits, bytes.data(), sizeof bits);
                                                 return static_cast<double>(bits) / 4294967296.0;
                                               },
                                           .wait =
                                               [goes_on = std::move(goes_on)](std::int64_t ms) {
                                                 for (; ms > 0; ms -= 100) {
                                                   if (goes_on && !goes_on()) return false;
                                                   std::this_thread::sleep_for(std::chrono::milliseconds(
                                                       std::min<std::int64_t>(ms, 100)));
                                                 }
                                                 return true;
                                               }});
}

Expected<sync::Device> makeDevice(const Folder& folder) {
  return keepDevice(folder, {.key = records::newSecretKey(fillBytes), .epoch = folder.epoch});
}

Expected<sync::Device> openDevice(const Folder& folder) {
  const auto texts = readTexts(in(folder, "device.json"), {"epoch", "format", "seed", "voucher"},
                               "device-malformed", kDeviceFormat);
  if (!texts) return std::unexpected(texts.error());
  // A folder that was restored has another epoch, and sends as another device.
  if (!*texts || (*texts)->at("epoch") != folder.epoch) return makeDevice(folder);
  const auto seed = records::fromBase64Url((*texts)->at("seed"));
  if (!seed || seed->size() != 32) {
    return JsonNode((*texts)->document).error("device-malformed", {{"expected", "32 bytes"}});
  }
  return sync::Device{.key = records::SecretKey(records::bytesOf(*seed).first<32>()),
                      .epoch = folder.epoch,
                      .voucher = (*texts)->at("voucher")};
}

Expected<void> vouchForDevice(const Folder& folder, const records::SecretKey& signer) {
  Expected<sync::Device> device = openDevice(folder);
  if (!device) return std::unexpected(device.error());
  device->voucher = sync::vouch(device->key.publicKey(), device->epoch, signer);
  const auto kept = keepDevice(folder, *std::move(device));
  if (!kept) return std::unexpected(kept.error());
  return {};
}

Expected<sync::Outcome> exchangeWith(Folder& folder, const sync::Remote& remote, const std::string& address,
                                     const std::function<void(const sync::Progress&)>& progress,
                                     const std::function<bool()>& goes_on) {
  Expected<sync::Device> device = openDevice(folder);
  if (!device) return std::unexpected(device.error());
  const sync::Options options{
      .now_utc_ms = momentOfComputer().utc_ms, .far_side = address, .progress = progress, .goes_on = goes_on};
  Expected<sync::Outcome> outcome = sync::exchange(folder.store, remote, *device, options);
  if (!outcome || !outcome->is_doubled) return outcome;
  device = makeDevice(folder);
  if (!device) return std::unexpected(device.error());
  return sync::exchange(folder.store, remote, *device, options);
}

}  // namespace hingepin::folder
