// SPDX-License-Identifier: Apache-2.0
#include "engine/session/people.h"

#include <utility>

#include "engine/base/strict_json.h"
#include "engine/records/canonical_json.h"
#include "engine/records/personal.h"
#include "engine/session/job_record.h"

namespace hingepin::session {
namespace {

// Canonical JSON sorts its keys, so that every name begins like this.
constexpr std::string_view kBeginning = R"({"format":"hingepin-person/1",)";
constexpr std::size_t kShortKey = 8;

}  // namespace

Expected<std::string> keepName(store::Store& store, std::string_view key, std::string_view name,
                               const records::FillBytes& fill, std::int64_t now_utc_ms) {
  if (name.find_first_not_of(" \t\r\n") == std::string_view::npos) {
    return fail(ErrorKind::InvalidInput, "text-empty");
  }
  Expected<std::string> text =
      records::canonicalJson(records::jsonObject({{"format", records::jsonString("hingepin-person/1")},
                                                  {"key", records::jsonString(std::string(key))},
                                                  {"name", records::jsonString(std::string(name))}}));
  if (!text) return std::unexpected(std::move(text.error()));
  store::Personal personal{.name = "", .bytes = *std::move(text)};
  fill(personal.salt);
  personal.name = records::personalName(personal.salt, personal.bytes);
  if (const Expected<void> kept = store.putPersonal(personal, now_utc_ms); !kept) {
    return std::unexpected(kept.error());
  }
  return personal.name;
}

Expected<Names> namesOf(const store::Store& store) {
  const Expected<std::vector<store::Personal>> kept = store.personalBeginning(kBeginning);
  if (!kept) return std::unexpected(kept.error());
  Names names;
  for (const store::Personal& each : *kept) {
    const Expected<JsonDocument> document = readJson(each.bytes, "person");
    if (!document) continue;  // whoever sent it does not write as this program does
    const std::string key = textAt(document->root, {"key"});
    std::string name = textAt(document->root, {"name"});
    if (!key.empty() && !name.empty()) names[key] = std::move(name);
  }
  return names;
}

std::string nameOfKey(const Names& names, std::string_view key) {
  const auto found = names.find(key);
  return found != names.end() ? found->second : std::string(key.substr(0, kShortKey));
}

}  // namespace hingepin::session
