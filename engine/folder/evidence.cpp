// SPDX-License-Identifier: Apache-2.0
#include "engine/folder/evidence.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <filesystem>
#include <set>
#include <variant>

#include "engine/folder/files.h"
#include "engine/records/keys.h"
#include "engine/records/seal.h"

namespace hingepin::folder {

namespace fs = std::filesystem;

namespace {

/// Whether a sealed text is one of these records, or signs or corrects one.
bool isAbout(const records::StoredText& text, const std::set<std::string>& names) {
  if (text.name && names.contains(*text.name)) return true;
  const Expected<records::Sealed> sealed = records::readSealed(text.text);
  if (!sealed) return false;
  const auto statement = records::readPayload(sealed->payload, sealed->type);
  if (!statement) return false;
  if (const auto* const signature = std::get_if<records::Signature>(&*statement))
    return names.contains(signature->record);
  const auto& record = std::get<records::Record>(*statement);
  return record.amends && names.contains(*record.amends);
}

}  // namespace

Expected<std::size_t> writeEvidence(const std::string& folder, const records::Evidence& evidence) {
  const fs::path out(folder);
  for (const char* part : {kStatementsPart, kSignersPart}) {
    if (const auto made = makeFolder((out / part).string()); !made) return std::unexpected(made.error());
  }
  const auto write = [&](const char* part, const records::StoredText& text) {
    const std::string name = text.name.value_or("");
    return writeFile((out / part / (name + kSealedFile)).string(), text.text);
  };
  for (const records::StoredText& each : evidence.statements) {
    if (const auto done = write(kStatementsPart, each); !done) return std::unexpected(done.error());
  }
  for (const records::StoredText& each : evidence.signers_lists) {
    if (const auto done = write(kSignersPart, each); !done) return std::unexpected(done.error());
  }
  std::set<std::string> keys;
  const records::SignersVerdict verdict =
      records::newestSigners(evidence.signers_lists, evidence.accepted_roots);
  if (verdict.list) {
    keys.insert(records::jsonWebKey(verdict.list->yard_key));
    for (const records::Signer& each : verdict.list->signers) keys.insert(records::jsonWebKey(each.key));
  }
  const std::string set = fmt::format("{{\"keys\":[{}]}}\n", fmt::join(keys, ","));
  if (const auto done = writeFile((out / "keys.jwks.json").string(), set); !done)
    return std::unexpected(done.error());
  return evidence.statements.size();
}

Expected<void> writeDisputeBundle(const std::string& folder, const store::Store& store,
                                  const session::Dispute& dispute) {
  Expected<records::Evidence> evidence = store.evidence();
  if (!evidence) return std::unexpected(evidence.error());
  const std::set<std::string> names(dispute.records.begin(), dispute.records.end());
  std::erase_if(evidence->statements, [&](const auto& each) { return !isAbout(each, names); });
  if (const auto written = writeEvidence(folder, *evidence); !written)
    return std::unexpected(written.error());
  return writeFile((fs::path(folder) / "dispute.json").string(), session::writeDispute(dispute) + "\n");
}

}  // namespace hingepin::folder
