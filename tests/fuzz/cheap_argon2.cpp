// SPDX-License-Identifier: Apache-2.0
#include <sodium.h>

// Stands in for libsodium's function at link time; the bounds of its arguments are the caller's business.
extern "C" int __wrap_crypto_pwhash_argon2id(unsigned char* const out, unsigned long long out_length,
                                             const char* const passphrase,
                                             unsigned long long passphrase_length,
                                             const unsigned char* const salt, unsigned long long passes,
                                             size_t memory_bytes, int /*algorithm*/) {
  if (passes < crypto_pwhash_argon2id_OPSLIMIT_MIN || memory_bytes < crypto_pwhash_argon2id_MEMLIMIT_MIN)
    return -1;
  crypto_generichash_state state;
  crypto_generichash_init(&state, salt, crypto_pwhash_argon2id_SALTBYTES, out_length);
  crypto_generichash_update(&state, reinterpret_cast<const unsigned char*>(passphrase), passphrase_length);
  return crypto_generichash_final(&state, out, out_length);
}
