// SPDX-License-Identifier: Apache-2.0
#include "engine/sync/remote.h"

#include <algorithm>
#include <array>
#include <memory>
#include <string_view>
#include <utility>

#include "engine/base/named.h"

namespace hingepin::sync {
namespace {

enum class Later { MayHelp };
constexpr std::array kPassing = {Named{"far-side-unreachable", Later::MayHelp},
                                 Named{"far-side-cut", Later::MayHelp},
                                 Named{"far-side-busy", Later::MayHelp}};

std::int64_t askedFor_ms(const Error& error) {
  for (const auto& [name, value] : error.message.values) {
    if (name != "retry_after_s") continue;
    if (const auto* amount = std::get_if<Amount>(&value))
      return static_cast<std::int64_t>(amount->value * 1000);
  }
  return 0;
}

/// Asks for all, then again for those that failed in a way that may pass. `ask` takes what of `inputs` is to
/// be done.
template <class Input, class Result>
std::vector<Expected<Result>> insist(
    std::span<const Input> inputs,
    const std::function<std::vector<Expected<Result>>(std::span<const Input>)>& ask, const Backoff& backoff) {
  std::vector<Expected<Result>> results = ask(inputs);
  for (int tried = 1; tried < backoff.most_tries; ++tried) {
    std::vector<std::size_t> open;
    std::int64_t asked_ms = 0;
    for (std::size_t index = 0; index < results.size(); ++index) {
      if (results[index] || !mayPass(results[index].error())) continue;
      open.push_back(index);
      asked_ms = std::max(asked_ms, askedFor_ms(results[index].error()));
    }
    if (open.empty()) return results;
    const std::int64_t longest_ms =
        std::min(backoff.most_ms, backoff.first_ms * (std::int64_t{1} << std::min(tried - 1, 20)));
    const auto jittered_ms = static_cast<std::int64_t>(backoff.jitter() * static_cast<double>(longest_ms));
    if (!backoff.wait(std::min(backoff.most_ms, asked_ms + jittered_ms))) return results;
    std::vector<Input> again;
    for (const std::size_t index : open) again.push_back(inputs[index]);
    std::vector<Expected<Result>> answers = ask(again);
    for (std::size_t index = 0; index < open.size(); ++index) {
      results[open[index]] = std::move(answers[index]);
    }
  }
  return results;
}

}  // namespace

bool mayPass(const Error& error) {
  return std::ranges::find(kPassing, error.message.code, &Named<Later>::name) != kPassing.end();
}

Remote patient(Remote remote, Backoff backoff) {
  const auto inner = std::make_shared<const Remote>(std::move(remote));
  const auto how = std::make_shared<const Backoff>(std::move(backoff));
  return {.list =
              [=](const std::string& folder) {
                const std::function<std::vector<Expected<std::vector<Listed>>>(std::span<const std::string>)>
                    ask = [&](std::span<const std::string> names) {
                      std::vector<Expected<std::vector<Listed>>> answers;
                      for (const std::string& name : names) answers.push_back(inner->list(name));
                      return answers;
                    };
                const std::array folders{folder};
                return std::move(insist(std::span<const std::string>(folders), ask, *how).front());
              },
          .get = [=](std::span<const std::string> names) { return insist(names, inner->get, *how); },
          .sizes = [=](std::span<const std::string> names) { return insist(names, inner->sizes, *how); },
          .put = [=](std::span<const Upload> uploads) { return insist(uploads, inner->put, *how); },
          .remove = [=](std::span<const std::string> names) { return insist(names, inner->remove, *how); }};
}

}  // namespace hingepin::sync
