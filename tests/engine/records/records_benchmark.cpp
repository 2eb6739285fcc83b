// SPDX-License-Identifier: Apache-2.0
// Sealing and verifying against what libsodium alone takes for the same bytes, and, apart from it, what
// canonicalisation and naming take. Arguments: bytes of payload.
#include <benchmark/benchmark.h>
#include <sodium.h>

#include <string>
#include <vector>

#include "engine/base/random.h"
#include "engine/records/canonical_json.h"
#include "engine/records/seal.h"

namespace hingepin::records {
namespace {

SecretKey benchmarkKey() {
  return newSecretKey([random = Random(1)](std::span<std::uint8_t> bytes) mutable {
    for (std::uint8_t& byte : bytes) byte = static_cast<std::uint8_t>(random.bits() >> 56U);
  });
}

// Like the readings of a job, as many as fill the bytes.
std::string payloadOf(std::size_t bytes) {
  std::vector<JsonValue> readings;
  std::string payload;
  while (payload.size() < bytes) {
    for (int more = 0; more < 10; ++more) {
      const auto number = static_cast<std::int64_t>(readings.size());
      readings.push_back(jsonObject({{"how", jsonString("typed")},
                                     {"reading", jsonString("boom-lowest")},
                                     {"sensor_mV", jsonInteger(710 + number)},
                                     {"taken_utc_ms", jsonInteger(1780000000000 + number)}}));
    }
    payload = canonicalJson(jsonObject({{"readings", jsonArray(readings)}})).value();
  }
  return payload;
}

std::string signingInput(const std::string& payload, const SecretKey& key) {
  return readSealed(seal(payload, kRecordType, key))->seals[0].signed_bytes;
}

void bareSign(benchmark::State& state) {
  const SecretKey key = benchmarkKey();
  const std::string input = signingInput(payloadOf(static_cast<std::size_t>(state.range(0))), key);
  unsigned char public_key[32], secret_key[64], signature[64];
  crypto_sign_seed_keypair(public_key, secret_key, key.seed().data());
  for (auto _ : state) {
    crypto_sign_detached(signature, nullptr, bytesOf(input).data(), input.size(), secret_key);
    benchmark::DoNotOptimize(signature);
  }
}

void sealing(benchmark::State& state) {
  const SecretKey key = benchmarkKey();
  const std::string payload = payloadOf(static_cast<std::size_t>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(seal(payload, kRecordType, key));
}

void bareVerify(benchmark::State& state) {
  const SecretKey key = benchmarkKey();
  const std::string input = signingInput(payloadOf(static_cast<std::size_t>(state.range(0))), key);
  const auto signature = key.sign(input);
  for (auto _ : state) {
    benchmark::DoNotOptimize(crypto_sign_verify_detached(signature.data(), bytesOf(input).data(),
                                                         input.size(), key.publicKey().bytes.data()));
  }
}

void verifying(benchmark::State& state) {
  const SecretKey key = benchmarkKey();
  const std::string text = seal(payloadOf(static_cast<std::size_t>(state.range(0))), kRecordType, key);
  for (auto _ : state) {
    const Expected<Sealed> sealed = readSealed(text);
    benchmark::DoNotOptimize(sealHolds(sealed->seals[0], key.publicKey()));
  }
}

void readingCanonical(benchmark::State& state) {
  const std::string payload = payloadOf(static_cast<std::size_t>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(readCanonicalJson(payload, kMostPayloadBytes));
}

void writingCanonical(benchmark::State& state) {
  const JsonDocument document =
      readCanonicalJson(payloadOf(static_cast<std::size_t>(state.range(0))), kMostPayloadBytes).value();
  for (auto _ : state) benchmark::DoNotOptimize(canonicalJson(document.root));
}

void naming(benchmark::State& state) {
  const std::string payload = payloadOf(static_cast<std::size_t>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(hashName(payload));
}

void sizes(benchmark::internal::Benchmark* benchmark) {
  for (const int bytes : {1000, 10000, 100000, 900000}) benchmark->Arg(bytes);
}

BENCHMARK(bareSign)->Apply(sizes);
BENCHMARK(sealing)->Apply(sizes);
BENCHMARK(bareVerify)->Apply(sizes);
BENCHMARK(verifying)->Apply(sizes);
BENCHMARK(readingCanonical)->Apply(sizes);
BENCHMARK(writingCanonical)->Apply(sizes);
BENCHMARK(naming)->Apply(sizes);

}  // namespace
}  // namespace hingepin::records

BENCHMARK_MAIN();
