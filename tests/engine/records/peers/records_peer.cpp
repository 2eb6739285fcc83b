// SPDX-License-Identifier: Apache-2.0
// Our side of the exchange with other implementations of JOSE.
//   records_peer make FOLDER    writes ours.json and the sealed objects that it names
//   records_peer check FOLDER   reads theirs.json: objects sealed by the peer, and what we ought to find
#include <cstdio>
#include <fstream>
#include <iterator>
#include <string>

#include "engine/base/random.h"
#include "engine/records/verify.h"

namespace hingepin::records {
namespace {

constexpr std::int64_t kNow = 1'780'000'000'000;

SecretKey keyOf(std::uint64_t seed) {
  return newSecretKey([random = Random(seed)](std::span<std::uint8_t> bytes) mutable {
    for (std::uint8_t& byte : bytes) byte = static_cast<std::uint8_t>(random.bits() >> 56U);
  });
}

void write(const std::string& file, const std::string& text) {
  std::ofstream(file, std::ios::binary) << text;
}

std::string read(const std::string& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

JsonValue jwk(const SecretKey& key) {
  return jsonObject({{"crv", jsonString("Ed25519")},
                     {"kid", jsonString(key.id())},
                     {"kty", jsonString("OKP")},
                     {"x", jsonString(publicKeyText(key.publicKey()))}});
}

int make(const std::string& folder) {
  const SecretKey technician = keyOf(1), lead = keyOf(2), yard = keyOf(3), old_yard = keyOf(4);
  const std::string epoch = epochName(std::span<const std::uint8_t, 16>(technician.seed().first<16>()));
  JsonValue manifest = jsonArray({});
  const auto add = [&](const std::string& file, const std::string& text, std::vector<JsonValue> keys,
                       bool holds) {
    write(folder + "/" + file, text);
    manifest.items.push_back(jsonObject(
        {{"file", jsonString(file)}, {"holds", jsonBoolean(holds)}, {"keys", jsonArray(std::move(keys))}}));
  };

  std::optional<Head> head;
  std::string last;
  for (int round = 0; round < 20; ++round) {
    const ChainPlace place = nextPlace(head, technician.id(), technician.id(), epoch);
    const auto sealed = sealStatement(
        Record{
            .envelope = {.place = place, .role = "technician", .sealed_utc_ms = kNow + round},
            .content = jsonObject({{"demo", jsonString("Ladeschaufel \xE2\x82\xAC \xF0\x9F\x9A\x9C \"\\\n")},
                                   {"mass_g", jsonInteger(1987400 + round)}})},
        technician);
    if (!sealed) return 1;
    head = headAfter(place, sealed->name);
    last = sealed->name;
    add("record-" + std::to_string(round) + ".json", sealed->text, {jwk(technician)}, true);
    add("wrong-key-" + std::to_string(round) + ".json", sealed->text, {jwk(lead)}, false);
    // Another character in the payload, its kind kept, so that the peer can read but not accept it.
    std::string altered = sealed->text;
    char& character = altered[20U + 7U * static_cast<std::size_t>(round)];
    character = character == 'A' ? 'B' : 'A';
    add("altered-" + std::to_string(round) + ".json", altered, {jwk(technician)}, false);
  }
  const auto signature =
      sealStatement(Signature{.envelope = {.place = nextPlace({}, lead.id(), lead.id(), epoch),
                                           .role = "safety-lead",
                                           .sealed_utc_ms = kNow},
                              .record = last},
                    lead);
  const auto list = sealSigners({.number = 2,
                                 .previous = hashName("1"),
                                 .yard_key = yard.publicKey(),
                                 .signers = {{.key = lead.publicKey(), .role = "safety-lead"}}},
                                yard, &old_yard);
  if (!signature || !list) return 1;
  add("signature.json", signature->text, {jwk(lead)}, true);
  add("signers.json", list->text, {jwk(yard), jwk(old_yard)}, true);
  write(folder + "/ours.json", canonicalJson(manifest).value_or(""));
  return 0;
}

int check(const std::string& folder) {
  const Expected<JsonDocument> manifest = readCanonicalJson(read(folder + "/theirs.json"), 1U << 20U);
  if (!manifest) return std::puts("theirs.json is not canonical"), 1;
  const SecretKey yard = keyOf(3);
  int wrong = 0, right = 0;
  const auto entries = JsonNode(*manifest).elements();
  for (const JsonNode& entry : *entries) {
    const std::string file = *entry.at("file")->string();
    const std::string finding = *entry.at("finding")->string();
    const auto key = readPublicKey(*entry.at("x")->string());
    const auto list =
        sealSigners({.yard_key = yard.publicKey(), .signers = {{.key = *key, .role = "technician"}}}, yard);
    const Verification found = verify({.statements = {{.text = read(folder + "/" + file)}},
                                       .signers_lists = {{.text = list->text}},
                                       .accepted_roots = {list->name}});
    const std::string code = found.findings.empty() ? "" : found.findings[0].message.code;
    const bool trusted = found.statements[0].standing == Standing::Trusted;
    if (code == finding && trusted == finding.empty()) {
      ++right;
      continue;
    }
    ++wrong;
    std::printf("%s: expected \"%s\", found \"%s\"\n", file.c_str(), finding.c_str(), code.c_str());
  }
  std::printf("%d of theirs judged rightly, %d wrongly\n", right, wrong);
  return wrong == 0 && right > 0 ? 0 : 1;
}

}  // namespace
}  // namespace hingepin::records

int main(int count, char** arguments) {
  if (count != 3) return 2;
  const std::string command = arguments[1];
  if (command == "make") return hingepin::records::make(arguments[2]);
  if (command == "check") return hingepin::records::check(arguments[2]);
  return 2;
}
