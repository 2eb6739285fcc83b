// SPDX-License-Identifier: Apache-2.0
#include "tests/engine/store/fault_cases.h"

#include <array>
#include <optional>
#include <utility>
#include <vector>

#include "tests/engine/store/faulty_disk.h"
#include "tests/engine/store/model.h"
#include "tests/engine/store/samples.h"

namespace hingepin::store {
namespace {

const std::string kPath = "demo";

/// The first difference, for a person.
std::string difference(const Facts& expected, const Facts& found) {
  for (const auto& [name, value] : expected) {
    const auto other = found.find(name);
    if (other == found.end()) return "missing: " + name;
    if (other->second != value)
      return name + ": expected " + value.substr(0, 300) + " found " + other->second.substr(0, 300);
  }
  for (const auto& [name, value] : found) {
    if (!expected.contains(name)) return "too much: " + name;
  }
  return "";
}

/// A store on the disk, what it has acknowledged, and what may have been done besides.
class Use {
 public:
  Use(std::uint64_t seed, FaultyDisk& disk, Tally& tally) : disk_(disk), chance_(seed), tally_(tally) {}

  [[nodiscard]] Random& random() { return chance_.random(); }
  Chance& chance() { return chance_; }
  [[nodiscard]] bool isOpen() const { return store_.has_value(); }
  void close() { store_.reset(); }

  /// @return the code of the error, "" when it is open now
  std::string open() {
    auto opened = Store::open(kPath, disk_.vfs());
    if (!opened) return opened.error().message.code;
    store_.emplace(*std::move(opened));
    return "";
  }

  /// One operation. @return what was wrong
  std::string work() {
    const Operation operation =
        began_ < chance_.beginning().size() ? chance_.beginning()[began_] : chance_.next(model_);
    Model after = model_;
    const std::string expected = after.apply(operation);
    const Applied applied = apply(*store_, operation);
    if (applied.code.empty()) {
      if (!expected.empty()) return "done, and should be refused: " + expected;
      ++tally_.acknowledged;
      // What has written nothing has not written over what failed before it.
      if (!maybe_.empty() && after.facts() != model_.facts()) maybe_.clear();
      model_ = std::move(after);
      ++began_;
      return "";
    }
    if (applied.code == expected) return "";
    // An erasure is done once its commit is; what follows may fail by itself.
    if (applied.kind != ErrorKind::IoFailed && applied.code != "store-damaged")
      return "refused: " + applied.code;
    if (expected.empty()) maybe_.push_back(std::move(after));
    failed_ = true;
    return "";
  }
  [[nodiscard]] bool takeFailed() { return std::exchange(failed_, false); }

  [[nodiscard]] bool isReadable() const { return factsOf(*store_, chance_.blobs()).has_value(); }

  /// Compares the open store with what it has to hold. @return what is wrong
  std::string compare() {
    const auto found = factsOf(*store_, chance_.blobs());
    if (!found) return "not read: " + found.error().message.code;
    std::string wrong = difference(model_.facts(), *found);
    for (const Model& maybe : maybe_) {
      if (wrong.empty()) break;
      if (maybe.facts() != *found) continue;
      ++tally_.unanswered;
      model_ = Model(maybe);
      wrong.clear();
      break;
    }
    return wrong;
  }
  /// What was uncertain is certain once the store was opened after a power loss: it shows what the disk has.
  /// Until then something that failed may still appear, if nothing was written after it.
  void settle() { maybe_.clear(); }

  std::string check() {
    const auto findings = store_->check();
    if (!findings) return "not checked: " + findings.error().message.code;
    if (!findings->empty()) return "check: " + findings->front().message.code;
    return "";
  }

 private:
  FaultyDisk& disk_;
  Chance chance_;
  Tally& tally_;
  std::optional<Store> store_;
  Model model_;
  std::vector<Model> maybe_;
  std::size_t began_ = 0;
  bool failed_ = false;
};

std::int64_t upTo(Random& random, double most) { return static_cast<std::int64_t>(most * random.uniform()); }

int sectorOf(std::uint64_t seed) { return seed % 3 == 0 ? 4096 : 512; }

/// Most cases are short; some run on until the log is put back into the file by itself.
std::int64_t stepsOf(Use& use) {
  const double kind = use.random().uniform();
  use.chance().most_event_bytes = kind < 0.1 ? 9000 : 700;
  use.chance().most_blob_bytes = kind < 0.1 ? 200000 : 9000;
  return upTo(use.random(), 40);
}

}  // namespace

void Tally::add(const Tally& other) {
  cases += other.cases;
  power_losses += other.power_losses;
  faults += other.faults;
  acknowledged += other.acknowledged;
  unanswered += other.unanswered;
  refused_open += other.refused_open;
  lost += other.lost;
}

std::string losePowerCase(std::uint64_t seed, Tally& tally) {
  FaultyDisk disk(seed, sectorOf(seed));
  Use use(seed, disk, tally);
  ++tally.cases;
  for (int round = 0; round < 4; ++round) {
    // Opening again must also outlive losses.
    while (!use.isOpen()) {
      const bool sure = use.random().uniform() < 0.6;
      disk.plan({.power_lost_at = sure ? -1 : upTo(use.random(), 60)});
      const std::string code = use.open();
      if (code.empty()) break;
      if (!disk.isOff()) return "does not open: " + code;
      disk.losePower();
      ++tally.power_losses;
    }
    if (!disk.isOff()) {
      disk.plan({});
      if (auto wrong = use.compare(); !wrong.empty()) return wrong;
      use.settle();
      if (auto wrong = use.check(); !wrong.empty()) return wrong;
    }
    const std::int64_t steps = stepsOf(use);
    disk.plan({.power_lost_at = upTo(use.random(), 8.0 * static_cast<double>(steps + 1))});
    for (std::int64_t step = 0; step < steps && !disk.isOff(); ++step) {
      if (auto wrong = use.work(); !wrong.empty()) return wrong;
      if (use.takeFailed() && !disk.isOff()) return "failed on a sound disk";
      if (use.random().uniform() < 0.03) {
        use.close();
        if (auto code = use.open(); !code.empty() && !disk.isOff()) return "does not open again: " + code;
        if (!use.isOpen()) break;
      }
    }
    use.close();
    disk.losePower();
    ++tally.power_losses;
  }
  if (auto code = use.open(); !code.empty()) return "does not open in the end: " + code;
  if (auto wrong = use.compare(); !wrong.empty()) return wrong;
  return use.check();
}

std::string faultCase(std::uint64_t seed, Tally& tally) {
  constexpr std::array kFaults{Fault::WriteFails,    Fault::DiskFull,    Fault::SyncFails, Fault::SyncForgets,
                               Fault::TruncateFails, Fault::DeleteFails, Fault::ReadFails, Fault::ReadsShort};
  FaultyDisk disk(seed, sectorOf(seed));
  Use use(seed, disk, tally);
  ++tally.cases;
  for (int round = 0; round < 4; ++round) {
    const Fault fault = kFaults[static_cast<std::size_t>(use.random().bits() % kFaults.size())];
    const std::int64_t steps = stepsOf(use);
    disk.plan({.fault = fault,
               .fault_at = upTo(use.random(), 6.0 * static_cast<double>(steps + 3)),
               .fault_stays = use.random().uniform() < 0.3});
    if (!use.isOpen()) {
      const std::string code = use.open();
      if (!code.empty() && !disk.faultHappened()) return "does not open: " + code;
    }
    for (std::int64_t step = 0; step < steps && use.isOpen(); ++step) {
      if (auto wrong = use.work(); !wrong.empty()) return wrong;
      if (use.takeFailed()) {
        if (!disk.faultHappened()) return "failed on a sound disk";
        // As a caller has to: look what is there before going on.
        if (!use.isReadable()) break;
        if (auto wrong = use.compare(); !wrong.empty()) return "after a failure: " + wrong;
      }
      if (use.random().uniform() < 0.03) {
        use.close();
        const std::string code = use.open();
        if (!code.empty() && !disk.faultHappened()) return "does not open again: " + code;
        if (!code.empty()) continue;
        if (!use.isReadable()) break;
        if (auto wrong = use.compare(); !wrong.empty()) return "opened again: " + wrong;
      }
    }
    tally.faults += disk.faultHappened() ? 1 : 0;
    // The disk is sound again, with or without a power loss between.
    const double next = use.random().uniform();
    const bool lost = next < 0.5;
    if (lost) {
      use.close();
      disk.losePower();
      ++tally.power_losses;
    } else {
      disk.plan({});
      if (next < 0.75) use.close();
    }
    if (!use.isOpen()) {
      if (auto code = use.open(); !code.empty()) return "does not open on a sound disk: " + code;
      if (auto wrong = use.compare(); !wrong.empty()) return wrong;
      if (lost) use.settle();
    } else if (auto wrong = use.compare(); !wrong.empty()) {
      return wrong;
    }
    if (auto wrong = use.check(); !wrong.empty()) return wrong;
  }
  return "";
}

std::string lyingCase(std::uint64_t seed, Tally& tally) {
  FaultyDisk disk(seed, sectorOf(seed));
  Use use(seed, disk, tally);
  ++tally.cases;
  if (auto code = use.open(); !code.empty()) return "does not open: " + code;
  disk.settle();
  const std::int64_t steps = stepsOf(use);
  const bool syncs = use.random().uniform() < 0.5;
  disk.plan({.power_lost_at = upTo(use.random(), 8.0 * static_cast<double>(steps + 1)),
             .fault = syncs ? Fault::None : Fault::ReadsEnd,
             .fault_at = upTo(use.random(), static_cast<double>(steps)),
             .sync_lies = syncs});
  for (std::int64_t step = 0; step < steps && !disk.isOff(); ++step) {
    if (auto wrong = use.work(); !wrong.empty()) return wrong;
  }
  use.close();
  disk.losePower();
  ++tally.power_losses;
  if (!use.open().empty()) {
    ++tally.refused_open;
  } else if (!use.compare().empty()) {
    ++tally.lost;
  }
  return "";
}

}  // namespace hingepin::store
