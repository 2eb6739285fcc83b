// SPDX-License-Identifier: Apache-2.0
#include <algorithm>

#include "tests/fuzz/require.h"
#include "tests/fuzz/wrapped_keys.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  using namespace hingepin;
  using namespace hingepin::records;
  static const std::vector<std::string> genuine = fuzz::wrappedKeys();
  const std::string_view text = fuzz::textOf(bytes, size);
  const bool known = std::ranges::find(genuine, text) != genuine.end();
  const Expected<SecretKey> key = unwrapKey(text, fuzz::kPassphrase);
  fuzz::require(key.has_value() == known, "what was wrapped opens, and nothing else");
  if (key) {
    fuzz::require(text.contains("\"key\":\"" + key->id() + "\""), "a key has the name that it is kept under");
  } else {
    fuzz::requireSound(key.error());
  }
  fuzz::require(!unwrapKey(text, "another passphrase").has_value(), "another passphrase opens nothing");
  return 0;
}
