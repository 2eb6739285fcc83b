// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <chrono>
#include <cstdint>
#include <functional>
#include <string>
#include <thread>
#include <utility>
#include <vector>

#include "engine/base/random.h"
#include "engine/far_side/http.h"

namespace hingepin::far_side::samples {

/// What a proxy between a phone and a server does wrong, each counted.
struct LineFaults {
  enum Kind { Cut, LostAnswer, Delayed, Reordered, PartSent, PartRead, Flipped, Twice, Busy, Lied, kKinds };
  static constexpr std::array<const char*, kKinds> kNames = {
      "line cut before the request", "answer lost", "delayed",    "reordered",    "upload truncated",
      "download truncated",          "bit flipped", "sent twice", "answered 500", "lied about success"};
  double rate = 0.0;
  std::array<std::int64_t, kKinds> count{};
  std::int64_t requests = 0;
};

/// A client whose line has faults: real requests reach a real server, or don't. `faults` and `random` outlive
/// it.
inline HttpClient overFaultyLine(HttpClient client, LineFaults& faults, Random& random) {
  return [client = std::move(client), &faults, &random](std::span<const HttpRequest> requests) {
    const auto happens = [&](LineFaults::Kind kind) {
      if (faults.rate == 0.0 || random.uniform() >= faults.rate) return false;
      ++faults.count[kind];
      return true;
    };
    const auto cut = [] { return fail(ErrorKind::IoFailed, "far-side-cut", {{"reason", "as planned"}}); };
    std::vector<Expected<HttpAnswer>> answers(requests.size(), HttpAnswer{});
    std::vector<std::size_t> order(requests.size());
    for (std::size_t index = 0; index < order.size(); ++index) order[index] = index;
    if (order.size() > 1 && happens(LineFaults::Reordered)) {
      for (std::size_t at = order.size(); at > 1; --at) std::swap(order[at - 1], order[random.bits() % at]);
    }
    std::vector<std::size_t> sent_as;
    std::vector<HttpRequest> sent;
    for (const std::size_t index : order) {
      const HttpRequest& request = requests[index];
      ++faults.requests;
      if (happens(LineFaults::Cut)) {
        answers[index] = cut();
        continue;
      }
      if (happens(LineFaults::Busy)) {
        answers[index] = HttpAnswer{.status = 500};
        continue;
      }
      const bool writes = request.method == "PUT";
      if (writes && happens(LineFaults::Lied)) {
        answers[index] = HttpAnswer{.status = 201};
        continue;
      }
      sent.push_back(request);
      sent_as.push_back(index);
      if (writes && !request.body.empty() && happens(LineFaults::PartSent)) {
        sent.back().body = request.body.substr(0, random.bits() % request.body.size());
      }
      if (happens(LineFaults::Twice)) {
        sent.push_back(sent.back());
        sent_as.push_back(index);
      }
    }
    if (happens(LineFaults::Delayed)) {
      std::this_thread::sleep_for(std::chrono::milliseconds(random.bits() % 5));
    }
    std::vector<Expected<HttpAnswer>> got = client(sent);
    for (std::size_t at = 0; at < got.size(); ++at) {
      Expected<HttpAnswer>& answer = got[at];
      if (happens(LineFaults::LostAnswer)) answer = cut();
      if (answer && requests[sent_as[at]].method == "GET" && !answer->body.empty()) {
        if (happens(LineFaults::PartRead)) answer->body.resize(random.bits() % answer->body.size());
        if (!answer->body.empty() && happens(LineFaults::Flipped)) {
          answer->body[random.bits() % answer->body.size()] ^= static_cast<char>(1U << (random.bits() % 8));
        }
      }
      answers[sent_as[at]] = std::move(answer);
    }
    return answers;
  };
}

}  // namespace hingepin::far_side::samples
