// SPDX-License-Identifier: Apache-2.0
#include <cmath>
#include <string>

#include "engine/records/canonical_json.h"
#include "tests/fuzz/require.h"

namespace {

using namespace hingepin;
using namespace hingepin::records;
using fuzz::require;

bool isSealable(const JsonValue& value, std::size_t depth) {
  if (value.kind == JsonKind::Number) {
    return value.number == std::floor(value.number) &&
           std::abs(value.number) <= static_cast<double>(kMostInteger);
  }
  if (value.kind != JsonKind::Array && value.kind != JsonKind::Object) return true;
  if (depth == kMostSealedDepth) return false;
  for (const JsonValue& item : value.items) {
    if (!isSealable(item, depth + 1)) return false;
  }
  return true;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  const std::string_view text = fuzz::textOf(bytes, size);
  const Expected<JsonDocument> canonical = readCanonicalJson(text, kMostJsonBytes);
  if (canonical) {
    const Expected<std::string> written = canonicalJson(canonical->root);
    require(written && *written == text, "what is read as canonical is written as the same bytes");
    require(checkSealable(canonical->root).has_value() == isSealable(canonical->root, 0),
            "sealable: whole numbers, not too deep");
  } else {
    fuzz::requireSound(canonical.error());
  }

  const Expected<JsonDocument> read = readJson(std::string(text), "fuzz.json");
  require(read || !canonical, "canonical JSON is JSON");
  if (!read) {
    fuzz::requireSound(read.error());
    require(read.error().place.file == "fuzz.json", "an error names the file");
    return 0;
  }
  const Expected<std::string> written = canonicalJson(read->root);
  require(written.has_value(), "what is read can be written");
  const Expected<JsonDocument> again = readCanonicalJson(*written, written->size());
  require(again.has_value(), "what is written is canonical");
  require(canonicalJson(again->root).value_or("") == *written, "and stays so");
  return 0;
}
