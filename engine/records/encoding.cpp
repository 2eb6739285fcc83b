// SPDX-License-Identifier: Apache-2.0
#include "engine/records/encoding.h"

#include <sodium.h>

#include <algorithm>
#include <array>

namespace hingepin::records {
namespace {

constexpr std::string_view kAlphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
constexpr std::uint8_t kNoDigit = 0xFF;

constexpr std::array<std::uint8_t, 256> kDigits = [] {
  std::array<std::uint8_t, 256> digits{};
  digits.fill(kNoDigit);
  for (std::size_t value = 0; value < kAlphabet.size(); ++value) {
    digits[static_cast<std::uint8_t>(kAlphabet[value])] = static_cast<std::uint8_t>(value);
  }
  return digits;
}();

}  // namespace

Bytes bytesOf(std::string_view text) {
  return {reinterpret_cast<const std::uint8_t*>(text.data()), text.size()};
}

std::string textOf(Bytes bytes) { return {reinterpret_cast<const char*>(bytes.data()), bytes.size()}; }

std::string base64Url(Bytes bytes) {
  const std::size_t whole = bytes.size() / 3;
  const std::size_t rest = bytes.size() % 3;
  std::string text(whole * 4 + (rest == 0 ? 0 : rest + 1), '\0');
  const std::uint8_t* from = bytes.data();
  char* to = text.data();
  for (std::size_t group = 0; group < whole; ++group, from += 3, to += 4) {
    const unsigned bits = (unsigned{from[0]} << 16U) | (unsigned{from[1]} << 8U) | from[2];
    to[0] = kAlphabet[bits >> 18U];
    to[1] = kAlphabet[(bits >> 12U) & 63U];
    to[2] = kAlphabet[(bits >> 6U) & 63U];
    to[3] = kAlphabet[bits & 63U];
  }
  if (rest > 0) {
    const unsigned bits = (unsigned{from[0]} << 16U) | (rest == 2 ? unsigned{from[1]} << 8U : 0U);
    to[0] = kAlphabet[bits >> 18U];
    to[1] = kAlphabet[(bits >> 12U) & 63U];
    if (rest == 2) to[2] = kAlphabet[(bits >> 6U) & 63U];
  }
  return text;
}

std::optional<std::string> fromBase64Url(std::string_view text) {
  const std::size_t whole = text.size() / 4;
  const std::size_t rest = text.size() % 4;
  if (rest == 1) return std::nullopt;
  std::string bytes(whole * 3 + (rest == 0 ? 0 : rest - 1), '\0');
  const Bytes characters = bytesOf(text);
  const std::uint8_t* from = characters.data();
  char* to = bytes.data();
  // A character outside the alphabet sets a bit above the six; looked at once, after the loop.
  unsigned faults = 0;
  for (std::size_t group = 0; group < whole; ++group, from += 4, to += 3) {
    const unsigned a = kDigits[from[0]], b = kDigits[from[1]], c = kDigits[from[2]], d = kDigits[from[3]];
    faults |= a | b | c | d;
    to[0] = static_cast<char>((a << 2U) | (b >> 4U));
    to[1] = static_cast<char>((b << 4U) | (c >> 2U));
    to[2] = static_cast<char>((c << 6U) | d);
  }
  if (rest > 0) {
    const unsigned a = kDigits[from[0]], b = kDigits[from[1]], c = rest == 3 ? kDigits[from[2]] : 0U;
    faults |= a | b | c;
    to[0] = static_cast<char>((a << 2U) | (b >> 4U));
    if (rest == 3) to[1] = static_cast<char>((b << 4U) | (c >> 2U));
    const unsigned unused = rest == 3 ? c & 3U : b & 15U;
    if (unused != 0) return std::nullopt;
  }
  if ((faults & ~63U) != 0) return std::nullopt;
  return bytes;
}

std::string sha256(std::string_view text) {
  std::string digest(crypto_hash_sha256_BYTES, '\0');
  crypto_hash_sha256(reinterpret_cast<unsigned char*>(digest.data()), bytesOf(text).data(), text.size());
  return digest;
}

std::string hexadecimal(std::string_view bytes) {
  constexpr std::string_view kDigitsOfHex = "0123456789abcdef";
  std::string text;
  text.reserve(bytes.size() * 2);
  for (const std::uint8_t byte : bytesOf(bytes)) {
    text += kDigitsOfHex[byte >> 4U];
    text += kDigitsOfHex[byte & 15U];
  }
  return text;
}

std::string hashName(std::string_view payload) { return hexadecimal(sha256(payload)); }

bool isHashName(std::string_view text) {
  return text.size() == 64 && std::ranges::all_of(text, [](char digit) {
           return (digit >= '0' && digit <= '9') || (digit >= 'a' && digit <= 'f');
         });
}

}  // namespace hingepin::records
