// SPDX-License-Identifier: Apache-2.0
#include "engine/records/encoding.h"

#include <openssl/evp.h>

#include <algorithm>
#include <array>
#include <new>

namespace hingepin::records {
namespace {

constexpr std::string_view kAlphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
constexpr std::string_view kBase45 = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";
constexpr std::uint32_t kNoDigit = 1U << 31U;

/// What a character adds to the 24 bits of its group, by its place there.
using Digits = std::array<std::array<std::uint32_t, 256>, 4>;
constexpr Digits kDigits = [] {
  Digits digits{};
  for (std::size_t place = 0; place < 4; ++place) {
    digits[place].fill(kNoDigit);
    for (std::uint32_t value = 0; value < kAlphabet.size(); ++value) {
      digits[place][static_cast<std::uint8_t>(kAlphabet[value])] = value << (18U - 6U * place);
    }
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
  // Looked at once, after the loop.
  std::uint32_t all_bits = 0;
  for (std::size_t group = 0; group < whole; ++group, from += 4, to += 3) {
    const std::uint32_t bits =
        kDigits[0][from[0]] | kDigits[1][from[1]] | kDigits[2][from[2]] | kDigits[3][from[3]];
    all_bits |= bits;
    to[0] = static_cast<char>(bits >> 16U);
    to[1] = static_cast<char>(bits >> 8U);
    to[2] = static_cast<char>(bits);
  }
  if (rest > 0) {
    const std::uint32_t bits =
        kDigits[0][from[0]] | kDigits[1][from[1]] | (rest == 3 ? kDigits[2][from[2]] : 0U);
    all_bits |= bits;
    to[0] = static_cast<char>(bits >> 16U);
    if (rest == 3) to[1] = static_cast<char>(bits >> 8U);
    const std::uint32_t unused = rest == 3 ? 0xFFU : 0xFFFFU;
    if ((bits & unused) != 0) return std::nullopt;
  }
  if ((all_bits & kNoDigit) != 0) return std::nullopt;
  return bytes;
}

std::string base45(std::string_view bytes) {
  std::string text;
  text.reserve(bytes.size() / 2 * 3 + 2);
  for (std::size_t at = 0; at < bytes.size(); at += 2) {
    const Bytes group = bytesOf(bytes.substr(at, 2));
    std::size_t value = group.size() == 2 ? group[0] * std::size_t{256} + group[1] : group[0];
    for (std::size_t digit = 0; digit <= group.size(); ++digit, value /= kBase45.size())
      text += kBase45[value % kBase45.size()];
  }
  return text;
}

std::optional<std::string> fromBase45(std::string_view text) {
  std::string bytes;
  bytes.reserve(text.size() / 3 * 2 + 1);
  for (std::size_t at = 0; at < text.size(); at += 3) {
    const std::string_view group = text.substr(at, 3);
    std::size_t value = 0;
    for (std::size_t digit = group.size(); digit-- > 0;) {
      const std::size_t found = kBase45.find(group[digit]);
      if (found == std::string_view::npos) return std::nullopt;
      value = value * kBase45.size() + found;
    }
    if (group.size() == 1 || value > (group.size() == 3 ? 0xFFFFU : 0xFFU)) return std::nullopt;
    if (group.size() == 3) bytes += static_cast<char>(value >> 8U);
    bytes += static_cast<char>(value & 0xFFU);
  }
  return bytes;
}

std::string sha256(std::string_view text) {
  // By the processor's own instructions, where libsodium computes in plain C. Looking the algorithm up costs
  // as much as a short text.
  static EVP_MD* const algorithm = EVP_MD_fetch(nullptr, "SHA256", nullptr);
  std::string digest(32, '\0');
  const int done = EVP_Digest(text.data(), text.size(), reinterpret_cast<unsigned char*>(digest.data()),
                              nullptr, algorithm, nullptr);
  if (done != 1) throw std::bad_alloc();  // nothing else can fail
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
