// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "engine/base/error.h"
#include "engine/records/canonical_json.h"
#include "engine/records/chain.h"
#include "engine/records/seal.h"

namespace hingepin::records {

/// What one key says at one place of its chain.
struct Envelope {
  ChainPlace place;
  std::string role;                ///< as which it signs: "technician", "safety-lead", ...
  std::int64_t sealed_utc_ms = 0;  ///< by the phone's clock, which may be wrong: a claim, and no more
};

/// A finished job, or whatever else must not change.
struct Record {
  Envelope envelope;
  JsonValue content;                              ///< an object; integers, strings, booleans, null
  std::optional<std::string> amends{};            ///< the name of the record that this one corrects
  std::map<std::string, std::string> personal{};  ///< what it is -> name of the personal object
};

/// A further signature on a record, made when and where the second person is.
struct Signature {
  Envelope envelope;
  std::string record;  ///< the name of the record
};

using Statement = std::variant<Record, Signature>;

[[nodiscard]] const Envelope& envelopeOf(const Statement& statement);

/// A role, or the label of a personal object: lower-case words joined by hyphens, 64 characters at most.
[[nodiscard]] bool isLabel(std::string_view text);

/// The canonical payload, whose hash is the statement's name: "hingepin-record/1" or "hingepin-signature/1".
/// Errors: InvalidInput, those that readPayload would give for it.
[[nodiscard]] Expected<std::string> payloadOf(const Statement& statement);

/// Errors: those of readCanonicalJson and checkSealable; "json-unknown-key", "json-missing-key",
/// "json-wrong-kind", "json-value-unexpected", with the JSON Pointer.
[[nodiscard]] Expected<Statement> readPayload(std::string_view payload, std::string_view type);

struct SealedStatement {
  std::string name;
  std::string text;
};

/// Errors: those of payloadOf; InvalidInput "seal-key-mismatch" when the key is not that of the place.
[[nodiscard]] Expected<SealedStatement> sealStatement(const Statement& statement, const SecretKey& key);

/// The head of the chain after a statement with this name.
[[nodiscard]] Head headAfter(const ChainPlace& place, std::string name);

}  // namespace hingepin::records
