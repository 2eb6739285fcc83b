// SPDX-License-Identifier: Apache-2.0
#include "engine/far_side/aws_signature.h"

#include <sodium.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <chrono>
#include <map>
#include <string_view>

#include "engine/records/encoding.h"

namespace hingepin::far_side {
namespace {

/// HMAC-SHA-256 (RFC 2104) with a key of any length.
std::string hmac(std::string_view key, std::string_view text) {
  crypto_auth_hmacsha256_state state;
  std::array<unsigned char, crypto_auth_hmacsha256_BYTES> result{};
  crypto_auth_hmacsha256_init(&state, records::bytesOf(key).data(), key.size());
  crypto_auth_hmacsha256_update(&state, records::bytesOf(text).data(), text.size());
  crypto_auth_hmacsha256_final(&state, result.data());
  return records::textOf(result);
}

std::string digits(int number, std::size_t width) {
  const std::string text = std::to_string(number);
  return std::string(width - std::min(width, text.size()), '0') + text;
}

std::string lower(std::string text) {
  std::ranges::transform(text, text.begin(), [](unsigned char byte) { return std::tolower(byte); });
  return text;
}

}  // namespace

std::string awsTime(std::int64_t utc_ms) {
  const std::chrono::sys_time<std::chrono::milliseconds> time{std::chrono::milliseconds(utc_ms)};
  const auto day = std::chrono::floor<std::chrono::days>(time);
  const std::chrono::year_month_day date(day);
  const std::chrono::hh_mm_ss clock(std::chrono::floor<std::chrono::seconds>(time - day));
  return digits(static_cast<int>(date.year()), 4) +
         digits(static_cast<int>(static_cast<unsigned>(date.month())), 2) +
         digits(static_cast<int>(static_cast<unsigned>(date.day())), 2) + "T" +
         digits(static_cast<int>(clock.hours().count()), 2) +
         digits(static_cast<int>(clock.minutes().count()), 2) +
         digits(static_cast<int>(clock.seconds().count()), 2) + "Z";
}

std::string uriEncoded(std::string_view text, bool keep_slash) {
  constexpr std::string_view kDigits = "0123456789ABCDEF";
  std::string encoded;
  for (const char each : text) {
    const auto byte = static_cast<unsigned char>(each);
    const bool plain = std::isalnum(byte) != 0 || each == '-' || each == '.' || each == '_' || each == '~';
    if ((plain && byte < 0x80) || (keep_slash && each == '/')) {
      encoded += each;
    } else {
      encoded += {'%', kDigits[byte >> 4U], kDigits[byte & 15U]};
    }
  }
  return encoded;
}

std::string awsAuthorization(const AwsKey& key, const std::string& method, const std::string& path,
                             std::vector<std::pair<std::string, std::string>> query,
                             const HttpHeaders& headers, const std::string& payload_hash,
                             const std::string& time) {
  for (auto& [name, value] : query) {
    name = uriEncoded(name, false);
    value = uriEncoded(value, false);
  }
  std::ranges::sort(query);
  std::string canonical = method + "\n" + path + "\n";
  for (const auto& [name, value] : query) {
    canonical += (canonical.ends_with('\n') ? "" : "&") + name + "=" + value;
  }
  canonical += "\n";
  std::map<std::string, std::string> sorted;
  for (const auto& [name, value] : headers) sorted[lower(name)] = value;
  std::string names;
  for (const auto& [name, value] : sorted) {
    canonical += name + ":" + value + "\n";
    names += (names.empty() ? "" : ";") + name;
  }
  canonical += "\n" + names + "\n" + payload_hash;

  const std::string day = time.substr(0, 8);
  const std::string scope = day + "/" + key.region + "/s3/aws4_request";
  const std::string to_sign =
      "AWS4-HMAC-SHA256\n" + time + "\n" + scope + "\n" + records::hashName(canonical);
  const std::string signing_key =
      hmac(hmac(hmac(hmac("AWS4" + key.secret, day), key.region), "s3"), "aws4_request");
  return "AWS4-HMAC-SHA256 Credential=" + key.id + "/" + scope + ",SignedHeaders=" + names +
         ",Signature=" + records::hexadecimal(hmac(signing_key, to_sign));
}

}  // namespace hingepin::far_side
