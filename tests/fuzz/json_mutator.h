// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <cmath>
#include <cstring>
#include <nlohmann/json.hpp>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include "tests/fuzz/require.h"

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t max_size);

namespace hingepin::fuzz {

using Json = nlohmann::ordered_json;

inline void gather(Json& value, std::vector<Json*>& all) {
  all.push_back(&value);
  for (Json& item : value) {
    if (value.is_structured()) gather(item, all);
  }
}

/// A JSON text with one thing changed that leaves it well formed: a member dropped, moved, doubled or
/// replaced by another, a word or number altered. Nothing where it is not JSON.
inline std::optional<std::string> mutatedJson(std::string_view text, std::minstd_rand& random) {
  Json document = Json::parse(text, nullptr, false);
  if (document.is_discarded()) return std::nullopt;
  std::vector<Json*> all;
  gather(document, all);
  const auto pick = [&](std::size_t count) { return static_cast<std::size_t>(random()) % count; };
  Json& target = *all[pick(all.size())];
  switch (pick(6)) {
    case 0:
      if (!target.empty() && target.is_structured()) {
        target.erase(std::next(target.begin(), static_cast<std::ptrdiff_t>(pick(target.size()))));
      }
      break;
    case 1: {
      const Json other = *all[pick(all.size())];
      target = other;
      break;
    }
    case 2:
      if (target.is_array() && !target.empty()) {
        const Json copy = target[pick(target.size())];
        target.insert(std::next(target.begin(), static_cast<std::ptrdiff_t>(pick(target.size()))), copy);
      }
      break;
    case 3:
      if (target.is_array() && target.size() > 1) {
        std::swap(target[pick(target.size())], target[pick(target.size())]);
      }
      break;
    case 4: {  // a word from elsewhere, under a key from elsewhere
      const Json& other = *all[pick(all.size())];
      if (target.is_object() && other.is_object() && !other.empty()) {
        const auto member = std::next(other.begin(), static_cast<std::ptrdiff_t>(pick(other.size())));
        const std::string key = member.key();
        const Json value = member.value();
        target[key] = value;
      }
      break;
    }
    default:
      if (target.is_string()) {
        std::string word = target.get<std::string>();
        const std::size_t size = word.size();
        word.resize(size + 8);
        word.resize(LLVMFuzzerMutate(reinterpret_cast<std::uint8_t*>(word.data()), size, size + 8));
        target = word;
      } else if (target.is_number()) {
        constexpr double kNumbers[] = {0, 1, -1, 2, 1000, 1001, 1e-9, 9007199254740991, 1e19, -1e300, 0.5};
        const double number = kNumbers[pick(std::size(kNumbers))];
        if (number == std::floor(number) && std::abs(number) < 1e15) {
          target = static_cast<std::int64_t>(number);
        } else {
          target = number;
        }
      } else if (target.is_boolean()) {
        target = !target.get<bool>();
      }
  }
  return document.dump(-1, ' ', false, Json::error_handler_t::replace);
}

/// Bytes at random one time in four, else as mutatedJson; of a text of several lines, in the JSON of one of
/// them.
inline std::size_t mutateJson(std::uint8_t* data, std::size_t size, std::size_t max_size, unsigned seed,
                              bool lines) {
  std::minstd_rand random(seed);
  if (random() % 4 == 0) return LLVMFuzzerMutate(data, size, max_size);
  const std::string text(textOf(data, size));
  std::size_t begin = 0;
  std::size_t end = size;
  if (lines) {
    std::vector<std::size_t> starts = {0};
    for (std::size_t at = 0; at + 1 < size; ++at) {
      if (text[at] == '\n') starts.push_back(at + 1);
    }
    begin = starts[random() % starts.size()];
    end = std::min(text.find('\n', begin), size);
    begin = std::min(text.find('{', begin), end);
  }
  const std::optional<std::string> mutated =
      mutatedJson(std::string_view(text).substr(begin, end - begin), random);
  if (!mutated || begin + mutated->size() + (size - end) > max_size)
    return LLVMFuzzerMutate(data, size, max_size);
  const std::string made = text.substr(0, begin) + *mutated + text.substr(end);
  std::memcpy(data, made.data(), made.size());
  return made.size();
}

}  // namespace hingepin::fuzz

/// Defines the mutator of a target whose inputs are JSON, or lines with JSON in them.
#define HINGEPIN_MUTATE_JSON(lines)                                                                          \
  extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t max_size, \
                                                 unsigned seed) {                                            \
    return hingepin::fuzz::mutateJson(data, size, max_size, seed, lines);                                    \
  }
