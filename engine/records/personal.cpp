// SPDX-License-Identifier: Apache-2.0
#include "engine/records/personal.h"

#include <sodium.h>

#include "engine/records/encoding.h"

namespace hingepin::records {

static_assert(crypto_auth_hmacsha256_KEYBYTES == 32);

std::string personalName(const Salt& salt, std::string_view bytes) {
  std::string code(crypto_auth_hmacsha256_BYTES, '\0');
  crypto_auth_hmacsha256(reinterpret_cast<unsigned char*>(code.data()), bytesOf(bytes).data(), bytes.size(),
                         salt.data());
  return hexadecimal(code);
}

}  // namespace hingepin::records
