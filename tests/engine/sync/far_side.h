// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <array>
#include <map>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "engine/base/random.h"
#include "engine/records/canonical_json.h"
#include "engine/records/encoding.h"
#include "engine/records/personal.h"
#include "engine/sync/exchange.h"
#include "engine/sync/remote.h"
#include "tests/engine/store/samples.h"

// A far side in memory that can go wrong in every way that a line or a server can, and invented phones.
namespace hingepin::sync::samples {

using store::samples::codeOf;
using store::samples::Folder;
using store::samples::kNow;
using store::samples::the;

using Objects = std::map<std::string, std::string>;

/// The last part of each name that lies directly in a folder.
inline std::vector<Listed> listedIn(const Objects& objects, const std::string& folder) {
  std::vector<Listed> listed;
  for (auto object = objects.lower_bound(folder + "/");
       object != objects.end() && object->first.starts_with(folder + "/"); ++object) {
    const std::string rest = object->first.substr(folder.size() + 1);
    if (rest.find('/') == std::string::npos) listed.push_back({rest, std::ssize(object->second)});
  }
  return listed;
}

/// What can go wrong, each counted. The rates are of each request.
struct Faults {
  enum Kind { Cut, LostAnswer, Busy, Lie, PartKept, PartRead, Flipped, Twice, kKinds };
  static constexpr std::array<const char*, kKinds> kNames = {
      "line cut before", "answer lost",  "answered 500", "lied about success",
      "kept in part",    "read in part", "bit flipped",  "done twice"};
  double rate = 0.0;
  std::array<std::int64_t, kKinds> count{};
  [[nodiscard]] std::int64_t sum() const {
    std::int64_t all = 0;
    for (const std::int64_t each : count) all += each;
    return all;
  }
};

inline std::unexpected<Error> cut() {
  return fail(ErrorKind::IoFailed, "far-side-cut", {{"reason", "as planned"}});
}
inline std::unexpected<Error> busy() {
  return fail(ErrorKind::IoFailed, "far-side-busy", {{"status", Amount{500, "1", 0}}});
}

/// A server that honours If-None-Match, or not, behind a line with faults.
struct FarSide {
  std::string address = "demo";
  Objects objects{};
  Faults faults{};
  Random random{1};
  bool honours_none_match = true;
  std::int64_t requests = 0;

  [[nodiscard]] bool happens(Faults::Kind kind) {
    if (faults.rate == 0.0 || random.uniform() >= faults.rate) return false;
    ++faults.count[kind];
    return true;
  }
  [[nodiscard]] std::string spoiled(std::string bytes) {
    if (!bytes.empty() && happens(Faults::PartRead)) bytes.resize(random.bits() % bytes.size());
    if (!bytes.empty() && happens(Faults::Flipped)) {
      bytes[random.bits() % bytes.size()] ^= static_cast<char>(1U << (random.bits() % 8));
    }
    return bytes;
  }

  Expected<std::string> getOne(const std::string& name) {
    ++requests;
    if (happens(Faults::Cut)) return cut();
    if (happens(Faults::Busy)) return busy();
    const auto found = objects.find(name);
    if (found == objects.end()) return fail(ErrorKind::NotFound, "object-not-there", {{"name", name}});
    return spoiled(found->second);
  }
  Expected<Put> putOne(const Upload& upload) {
    ++requests;
    if (happens(Faults::Cut)) return cut();
    if (happens(Faults::Busy)) return busy();
    if (happens(Faults::Lie)) return Put::Done;
    if (honours_none_match && !upload.replace && objects.contains(upload.name)) return Put::ThereAlready;
    std::string bytes = upload.bytes;
    if (!bytes.empty() && happens(Faults::PartKept)) bytes.resize(random.bits() % bytes.size());
    objects[upload.name] = std::move(bytes);
    if (happens(Faults::LostAnswer)) return cut();
    if (happens(Faults::Twice)) return putOne(upload);
    return Put::Done;
  }
  Expected<void> removeOne(const std::string& name) {
    ++requests;
    if (happens(Faults::Cut)) return cut();
    objects.erase(name);
    if (happens(Faults::LostAnswer)) return cut();
    return {};
  }

  [[nodiscard]] Remote remote() {
    const auto each = [](const auto& inputs, auto act) {
      std::vector<decltype(act(inputs.front()))> answers;
      for (const auto& input : inputs) answers.push_back(act(input));
      return answers;
    };
    return {.list = [this](const std::string& folder) -> Expected<std::vector<Listed>> {
              ++requests;
              if (happens(Faults::Cut)) return cut();
              if (happens(Faults::Busy)) return busy();
              std::vector<Listed> listed = listedIn(objects, folder);
              for (std::size_t at = listed.size(); at > 1; --at) {
                std::swap(listed[at - 1], listed[random.bits() % at]);  // no server promises an order
              }
              return listed;
            },
            .get =
                [this, each](std::span<const std::string> names) {
                  return each(names, [this](const std::string& name) { return getOne(name); });
                },
            .sizes =
                [this, each](std::span<const std::string> names) {
                  return each(names,
                              [this](const std::string& name) -> Expected<std::optional<std::int64_t>> {
                                ++requests;
                                if (happens(Faults::Cut)) return cut();
                                const auto found = objects.find(name);
                                if (found == objects.end()) return std::nullopt;
                                return std::ssize(found->second);
                              });
                },
            .put =
                [this, each](std::span<const Upload> uploads) {
                  return each(uploads, [this](const Upload& upload) { return putOne(upload); });
                },
            .remove =
                [this, each](std::span<const std::string> names) {
                  return each(names, [this](const std::string& name) { return removeOne(name); });
                }};
  }
};

inline Backoff noWait(int most_tries = 3) {
  return {.most_tries = most_tries, .jitter = [] { return 0.5; }, .wait = [](std::int64_t) { return true; }};
}

/// A phone of an invented yard, with a store of its own.
struct Handset {
  std::string path;
  std::unique_ptr<store::Store> store;
  records::Phone pen;
  std::unique_ptr<Device> device;
  std::uint64_t number;

  struct At {
    std::string path;
  };
  Handset(const Folder& folder, std::uint64_t number_)
      : Handset(At{folder.file("phone-" + std::to_string(number_))}, number_) {}
  Handset(At at, std::uint64_t number_)
      : path(std::move(at.path)),
        pen{.key = records::keyOf(1000 + number_), .epoch = records::epochOf(2000 + number_)},
        number(number_) {
    reopen();
    newDevice(0);
  }
  void reopen() {
    store.reset();
    store = std::make_unique<store::Store>(store::samples::opened(path));
  }
  /// What a phone is that lost what no backup holds.
  void newDevice(std::uint64_t life) {
    const std::uint64_t seed = 5000 + 100 * number + life;
    device = std::make_unique<Device>(Device{.key = records::keyOf(seed), .epoch = records::epochOf(seed)});
    device->voucher = vouch(device->key.publicKey(), device->epoch, pen.key);
    if (life > 0) {
      pen.epoch = records::epochOf(seed);
      pen.head.reset();
    }
  }
  [[nodiscard]] std::string source() const { return sourceOf(device->key.publicKey(), device->epoch); }

  /// Seals a record and keeps it. @return its name
  std::string seal(std::vector<std::pair<std::string, JsonValue>> content) {
    content.emplace_back("unit", records::jsonObject({{"id", records::jsonString("loader-7")}}));
    const auto sealed = pen.sealNext(
        records::Record{.envelope = pen.next(), .content = records::jsonObject(std::move(content))});
    the(store->putStatement({.name = sealed.name, .text = sealed.text, .unit = "loader-7"}, pen.now));
    return sealed.name;
  }
  /// Likewise, naming a blob that is kept too.
  std::string work(const std::string& log) {
    return seal({{"log", records::jsonString(the(store->putBlob(log, "text/csv")))}});
  }
  std::string workWithoutLog() {
    return seal({{"number", records::jsonInteger(pen.head ? pen.head->sequence : 0)}});
  }
  void takeYard(const records::SealedSigners& list) {
    the(store->putSigners(list, kNow, false));
    the(store->acceptRoot(list.name));
  }
  Outcome exchangeWith(const Remote& remote, std::function<bool()> goes_on = {},
                       const std::string& address = "demo") {
    return the(exchange(*store, remote, *device,
                        {.now_utc_ms = kNow, .far_side = address, .goes_on = std::move(goes_on)}));
  }
  Outcome exchangeWith(FarSide& far_side) {
    return exchangeWith(patient(far_side.remote(), noWait()), {}, far_side.address);
  }
};

/// A list of signers with all of these phones, sealed by the yard.
inline records::SealedSigners yardOf(const std::vector<std::unique_ptr<Handset>>& phones) {
  const records::SecretKey yard_key = records::keyOf(3);
  records::SignersList list{.yard_key = yard_key.publicKey()};
  for (const auto& phone : phones) list.signers.push_back(records::listed(phone->pen.key, "technician"));
  return the(records::sealSigners(list, yard_key));
}

inline std::vector<std::unique_ptr<Handset>> phones(const Folder& folder, std::uint64_t count) {
  std::vector<std::unique_ptr<Handset>> all;
  for (std::uint64_t number = 0; number < count; ++number) {
    all.push_back(std::make_unique<Handset>(folder, number));
  }
  const auto list = yardOf(all);
  for (const auto& phone : all) phone->takeYard(list);
  return all;
}

/// Why an exchange was not whole, "" where it was.
inline std::string stopOf(const Outcome& outcome) {
  return outcome.stopped ? outcome.stopped->message.code : "";
}

inline std::vector<std::string> codesOf(const std::vector<Message>& messages) {
  std::vector<std::string> codes;
  for (const Message& message : messages) codes.push_back(message.code);
  return codes;
}

inline std::vector<std::string> sortedNames(const store::Store& store) {
  std::vector<std::string> names = the(store.statementNames());
  std::ranges::sort(names);
  return names;
}

}  // namespace hingepin::sync::samples
