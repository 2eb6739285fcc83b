// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <initializer_list>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "engine/base/random.h"

struct sqlite3_vfs;

/// A disk in memory below SQLite that fails and loses power as it is told. It keeps apart what a process sees
/// and what would be left after a power loss.
namespace hingepin::store {

enum class Fault {
  None,
  WriteFails,   ///< after a part of the bytes
  DiskFull,     ///< after a part of the bytes
  SyncFails,    ///< nothing more is on the disk than was
  SyncForgets,  ///< fails, keeps a part, and the system takes the rest for written (as Linux has done)
  TruncateFails,
  DeleteFails,
  ReadFails,
  ReadsShort,  ///< fails after a part of the bytes, with rubbish in the buffer
  ReadsEnd,    ///< a lie: says that the file ends there
};

struct DiskPlan {
  std::int64_t power_lost_at = -1;  ///< at which change (write, sync, truncate, delete, new file), from 0
  Fault fault = Fault::None;
  std::int64_t fault_at =
      0;  ///< the first that it can meet from this change on, or of reading from this read on
  bool fault_stays = false;
  bool sync_lies = false;  ///< syncs are said to be done and are not
};

class FaultyDisk {
 public:
  explicit FaultyDisk(std::uint64_t seed, int sector_bytes = 512);
  ~FaultyDisk();
  FaultyDisk(const FaultyDisk&) = delete;
  FaultyDisk& operator=(const FaultyDisk&) = delete;

  /// What Store::open takes.
  [[nodiscard]] const std::string& vfs() const { return name_; }
  void plan(const DiskPlan& plan);
  [[nodiscard]] std::int64_t changes() const { return changes_; }
  [[nodiscard]] std::int64_t reads() const { return reads_; }
  [[nodiscard]] bool faultHappened() const { return fault_happened_; }
  [[nodiscard]] bool isOff() const { return off_; }
  /// What was synced survives, and of each sector that was written since whatever chance says: as before, as
  /// written at any time since, cut off in the middle, or rubbish. Names of files that were made or deleted
  /// without a sync of their folder likewise. REQUIRES: no open file.
  void losePower();
  /// Everything is synced, and no plan is left.
  void settle();
  /// All files as a process sees them.
  [[nodiscard]] std::map<std::string, std::string> files() const;
  void put(const std::string& path, std::string bytes);

  // For the functions that SQLite calls.
  struct Change {
    std::int64_t offset;  ///< -1: a truncation to `size`
    std::string bytes;
    std::int64_t size;
  };
  struct File {
    std::string seen;
    std::string kept;
    std::vector<Change> unsynced{};
    std::vector<std::unique_ptr<std::vector<char>>> shared{};
  };
  using Files = std::map<std::string, std::shared_ptr<File>>;
  Files seen_;
  Files kept_;
  int sector_bytes_;
  bool whole_sectors_ = false;  ///< a write that was cut off may spoil all of its sector: what psow=0 expects
  /// Counts a change. @return the fault that meets it, if it is of those that it can meet
  /// @param off set when power goes at this very change
  Fault change(bool& off, std::initializer_list<Fault> possible);
  Fault read();
  void sync(File& file);
  void syncFolder() { kept_ = seen_; }
  [[nodiscard]] const DiskPlan& planned() const { return plan_; }
  Random random_;

 private:
  void keepByChance(File& file, bool spoil);
  bool strikes(std::int64_t now);

  std::string name_;
  std::unique_ptr<sqlite3_vfs> registered_;
  DiskPlan plan_{};
  std::int64_t changes_ = 0;
  std::int64_t reads_ = 0;
  bool fault_happened_ = false;
  bool off_ = false;
  friend struct DiskFunctions;
};

/// A number from 0 to `count` by chance.
std::size_t someOf(Random& random, std::size_t count);

}  // namespace hingepin::store
