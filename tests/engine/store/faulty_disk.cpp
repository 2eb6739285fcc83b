// SPDX-License-Identifier: Apache-2.0
#include "tests/engine/store/faulty_disk.h"

#include <sqlite3.h>

#include <algorithm>
#include <cstring>
#include <set>
#include <utility>

namespace hingepin::store {
namespace {

void writeInto(std::string& bytes, const FaultyDisk::Change& change) {
  if (change.offset < 0) {
    bytes.resize(static_cast<std::size_t>(change.size), '\0');
    return;
  }
  const auto offset = static_cast<std::size_t>(change.offset);
  if (bytes.size() < offset + change.bytes.size()) bytes.resize(offset + change.bytes.size(), '\0');
  bytes.replace(offset, change.bytes.size(), change.bytes);
}

}  // namespace

std::size_t someOf(Random& random, std::size_t count) {
  return count == 0 ? 0 : static_cast<std::size_t>(random.bits() % (count + 1));
}

/// The functions that SQLite calls, by the names of its structures.
struct DiskFunctions {
  struct OpenFile {
    sqlite3_file base;
    FaultyDisk* disk;
    std::shared_ptr<FaultyDisk::File>* file;
    bool sync_folder;
    bool psow;
    bool delete_on_close;
    std::string* path;
  };

  static OpenFile& of(sqlite3_file* file) { return *reinterpret_cast<OpenFile*>(file); }
  static FaultyDisk& of(sqlite3_vfs* vfs) { return *static_cast<FaultyDisk*>(vfs->pAppData); }

  static int open(sqlite3_vfs* vfs, const char* path, sqlite3_file* base, int flags, int* out_flags) {
    FaultyDisk& disk = of(vfs);
    OpenFile& open = of(base);
    open.base.pMethods = nullptr;
    const std::string name = path == nullptr ? "temporary" : path;
    auto found = disk.seen_.find(name);
    if (found == disk.seen_.end()) {
      if ((flags & SQLITE_OPEN_CREATE) == 0) return SQLITE_CANTOPEN;
      bool off = false;
      const Fault fault = disk.change(off, {Fault::WriteFails, Fault::DiskFull});
      if (disk.off_ || fault != Fault::None) return SQLITE_CANTOPEN;
      found = disk.seen_.emplace(name, std::make_shared<FaultyDisk::File>()).first;
    } else if (disk.off_) {
      return SQLITE_CANTOPEN;
    }
    open.disk = &disk;
    open.file = new std::shared_ptr<FaultyDisk::File>(found->second);
    open.path = new std::string(name);
    // As SQLite's own layer for Unix has it: journals bring their folder to the disk, whether they were there
    // or not.
    open.sync_folder =
        (flags & SQLITE_OPEN_CREATE) != 0 && (flags & (SQLITE_OPEN_MAIN_JOURNAL | SQLITE_OPEN_WAL)) != 0;
    open.psow = sqlite3_uri_boolean((flags & SQLITE_OPEN_URI) != 0 ? path : nullptr, "psow", 1) != 0;
    open.delete_on_close = (flags & SQLITE_OPEN_DELETEONCLOSE) != 0;
    if ((flags & SQLITE_OPEN_MAIN_DB) != 0) disk.whole_sectors_ = !open.psow;
    open.base.pMethods = &kMethods;
    if (out_flags != nullptr) *out_flags = flags;
    return SQLITE_OK;
  }

  static int remove(sqlite3_vfs* vfs, const char* path, int sync_folder) {
    FaultyDisk& disk = of(vfs);
    if (!disk.seen_.contains(path)) return SQLITE_IOERR_DELETE_NOENT;
    bool off = false;
    const Fault fault = disk.change(off, {Fault::DeleteFails});
    if ((disk.off_ && !off) || fault != Fault::None) return SQLITE_IOERR_DELETE;
    disk.seen_.erase(path);
    if (off) return SQLITE_IOERR_DELETE;
    if (sync_folder != 0 && !disk.planned().sync_lies) disk.syncFolder();
    return SQLITE_OK;
  }

  static int access(sqlite3_vfs* vfs, const char* path, int, int* result) {
    FaultyDisk& disk = of(vfs);
    const auto found = disk.seen_.find(path);
    *result = found != disk.seen_.end() && !found->second->seen.empty() ? 1 : 0;
    return SQLITE_OK;
  }

  static int fullPath(sqlite3_vfs*, const char* path, int most, char* full) {
    sqlite3_snprintf(most, full, "%s", path);
    return SQLITE_OK;
  }

  static int randomness(sqlite3_vfs* vfs, int count, char* bytes) {
    for (int byte = 0; byte < count; ++byte) bytes[byte] = static_cast<char>(of(vfs).random_.bits() >> 56U);
    return count;
  }
  static int sleep(sqlite3_vfs*, int microseconds) { return microseconds; }
  static int time(sqlite3_vfs*, double* days) {
    *days = 2461000.5;
    return SQLITE_OK;
  }
  static int time64(sqlite3_vfs*, sqlite3_int64* milliseconds) {
    *milliseconds = 2461000LL * 86400000;
    return SQLITE_OK;
  }
  static int lastError(sqlite3_vfs*, int, char*) { return 0; }

  static int close(sqlite3_file* base) {
    OpenFile& open = of(base);
    if (open.delete_on_close) open.disk->seen_.erase(*open.path);
    delete open.file;
    delete open.path;
    return SQLITE_OK;
  }

  static int read(sqlite3_file* base, void* bytes, int count, sqlite3_int64 offset) {
    OpenFile& open = of(base);
    if (open.disk->off_) return SQLITE_IOERR_READ;
    const Fault fault = open.disk->read();
    if (fault == Fault::ReadFails) return SQLITE_IOERR_READ;
    const std::string& seen = (*open.file)->seen;
    const auto from = std::min(static_cast<std::size_t>(offset), seen.size());
    std::size_t there = std::min(static_cast<std::size_t>(count), seen.size() - from);
    // An end inside the file is what xRead must never make up; the layers below it ask again after a short
    // read.
    if (fault == Fault::ReadsEnd) there = someOf(open.disk->random_, there);
    std::memcpy(bytes, seen.data() + from, there);
    if (fault == Fault::ReadsShort) {
      std::memset(bytes, 0x5A, someOf(open.disk->random_, there));
      return SQLITE_IOERR_READ;
    }
    std::memset(static_cast<char*>(bytes) + there, 0, static_cast<std::size_t>(count) - there);
    return there == static_cast<std::size_t>(count) ? SQLITE_OK : SQLITE_IOERR_SHORT_READ;
  }

  static int write(sqlite3_file* base, const void* bytes, int count, sqlite3_int64 offset) {
    OpenFile& open = of(base);
    bool off = false;
    const Fault fault = open.disk->change(off, {Fault::WriteFails, Fault::DiskFull});
    if (open.disk->off_ && !off) return SQLITE_IOERR_WRITE;
    const bool fails = fault != Fault::None;
    FaultyDisk::Change change{
        .offset = offset,
        .bytes = std::string(static_cast<const char*>(bytes), static_cast<std::size_t>(count)),
        .size = 0};
    if (fails) change.bytes.resize(someOf(open.disk->random_, change.bytes.size()));
    writeInto((*open.file)->seen, change);
    (*open.file)->unsynced.push_back(std::move(change));
    if (off) return SQLITE_IOERR_WRITE;
    if (fault == Fault::DiskFull) return SQLITE_FULL;
    return fails ? SQLITE_IOERR_WRITE : SQLITE_OK;
  }

  static int truncate(sqlite3_file* base, sqlite3_int64 size) {
    OpenFile& open = of(base);
    bool off = false;
    const Fault fault = open.disk->change(off, {Fault::TruncateFails});
    if ((open.disk->off_ && !off) || fault != Fault::None) return SQLITE_IOERR_TRUNCATE;
    FaultyDisk::Change change{.offset = -1, .bytes = {}, .size = size};
    writeInto((*open.file)->seen, change);
    (*open.file)->unsynced.push_back(std::move(change));
    return off ? SQLITE_IOERR_TRUNCATE : SQLITE_OK;
  }

  static int sync(sqlite3_file* base, int) {
    OpenFile& open = of(base);
    bool off = false;
    const Fault fault = open.disk->change(off, {Fault::SyncFails, Fault::SyncForgets});
    if (open.disk->off_) return SQLITE_IOERR_FSYNC;
    if (fault == Fault::SyncFails) return SQLITE_IOERR_FSYNC;
    if (fault == Fault::SyncForgets) {
      open.disk->keepByChance(**open.file, false);
      return SQLITE_IOERR_FSYNC;
    }
    if (open.disk->planned().sync_lies) return SQLITE_OK;
    open.disk->sync(**open.file);
    if (std::exchange(open.sync_folder, false)) open.disk->syncFolder();
    return SQLITE_OK;
  }

  static int size(sqlite3_file* base, sqlite3_int64* bytes) {
    *bytes = static_cast<sqlite3_int64>((*of(base).file)->seen.size());
    return SQLITE_OK;
  }
  static int lock(sqlite3_file*, int) { return SQLITE_OK; }
  static int reserved(sqlite3_file*, int* result) {
    *result = 0;
    return SQLITE_OK;
  }
  static int control(sqlite3_file*, int, void*) { return SQLITE_NOTFOUND; }
  static int sectorSize(sqlite3_file* base) { return of(base).disk->sector_bytes_; }
  static int characteristics(sqlite3_file* base) {
    return of(base).psow ? SQLITE_IOCAP_POWERSAFE_OVERWRITE : 0;
  }

  static int mapShared(sqlite3_file* base, int region, int bytes, int extend, void volatile** memory) {
    auto& regions = (*of(base).file)->shared;
    while (std::cmp_less_equal(regions.size(), region)) {
      if (extend == 0) {
        *memory = nullptr;
        return SQLITE_OK;
      }
      regions.push_back(std::make_unique<std::vector<char>>(static_cast<std::size_t>(bytes)));
    }
    *memory = regions[static_cast<std::size_t>(region)]->data();
    return SQLITE_OK;
  }
  static int lockShared(sqlite3_file*, int, int, int) { return SQLITE_OK; }
  static void barrier(sqlite3_file*) {}
  static int unmapShared(sqlite3_file* base, int) {
    (*of(base).file)->shared.clear();  // only one connection at a time
    return SQLITE_OK;
  }

  static constexpr sqlite3_io_methods kMethods{
      2,           close,    read,    write,      truncate,        sync,      size,       lock,
      lock,        reserved, control, sectorSize, characteristics, mapShared, lockShared, barrier,
      unmapShared, nullptr,  nullptr};
};

FaultyDisk::FaultyDisk(std::uint64_t seed, int sector_bytes)
    : sector_bytes_(sector_bytes), random_(seed), registered_(std::make_unique<sqlite3_vfs>()) {
  static int number = 0;
  name_ = "faulty-disk-" + std::to_string(++number);
  *registered_ = {};
  registered_->iVersion = 2;
  registered_->szOsFile = sizeof(DiskFunctions::OpenFile);
  registered_->mxPathname = 500;
  registered_->zName = name_.c_str();
  registered_->pAppData = this;
  registered_->xOpen = DiskFunctions::open;
  registered_->xDelete = DiskFunctions::remove;
  registered_->xAccess = DiskFunctions::access;
  registered_->xFullPathname = DiskFunctions::fullPath;
  registered_->xRandomness = DiskFunctions::randomness;
  registered_->xSleep = DiskFunctions::sleep;
  registered_->xCurrentTime = DiskFunctions::time;
  registered_->xCurrentTimeInt64 = DiskFunctions::time64;
  registered_->xGetLastError = DiskFunctions::lastError;
  sqlite3_vfs_register(registered_.get(), 0);
}

FaultyDisk::~FaultyDisk() { sqlite3_vfs_unregister(registered_.get()); }

void FaultyDisk::plan(const DiskPlan& plan) {
  plan_ = plan;
  changes_ = 0;
  reads_ = 0;
  fault_happened_ = false;
  off_ = false;
}

bool FaultyDisk::strikes(std::int64_t now) {
  if (now < plan_.fault_at || (fault_happened_ && !plan_.fault_stays)) return false;
  fault_happened_ = true;
  return true;
}

Fault FaultyDisk::change(bool& off, std::initializer_list<Fault> possible) {
  const std::int64_t now = changes_++;
  if (off_) return Fault::None;
  if (plan_.power_lost_at >= 0 && now >= plan_.power_lost_at) {
    off = true;
    off_ = true;
    return Fault::None;
  }
  if (std::ranges::find(possible, plan_.fault) == possible.end() || !strikes(now)) return Fault::None;
  return plan_.fault;
}

Fault FaultyDisk::read() {
  const std::int64_t now = reads_++;
  if ((plan_.fault != Fault::ReadFails && plan_.fault != Fault::ReadsShort) || !strikes(now))
    return Fault::None;
  return plan_.fault;
}

void FaultyDisk::sync(File& file) {
  file.kept = file.seen;
  file.unsynced.clear();
}

void FaultyDisk::keepByChance(File& file, bool spoil) {
  const auto sector = static_cast<std::size_t>(sector_bytes_);
  std::vector<Change> pieces;
  for (const Change& change : file.unsynced) {
    if (change.offset < 0) {
      pieces.push_back(change);
      continue;
    }
    std::size_t done = 0;
    while (done < change.bytes.size()) {
      const std::size_t at = static_cast<std::size_t>(change.offset) + done;
      const std::size_t most = std::min(change.bytes.size() - done, sector - at % sector);
      pieces.push_back({static_cast<std::int64_t>(at), change.bytes.substr(done, most), 0});
      done += most;
    }
  }
  file.unsynced.clear();
  // Nearly all, nearly none, or anything between; now and then in another order than they were written in.
  const double share = random_.uniform() < 0.3 ? (random_.uniform() < 0.5 ? 0.03 : 0.97) : random_.uniform();
  if (random_.uniform() < 0.3) {
    for (std::size_t last = pieces.size(); last > 1; --last) {
      std::swap(pieces[last - 1], pieces[static_cast<std::size_t>(random_.bits() % last)]);
    }
  }
  for (Change& piece : pieces) {
    if (random_.uniform() >= share) {
      if (!spoil || piece.offset < 0 || random_.uniform() >= 0.05) continue;
      const std::size_t begin = static_cast<std::size_t>(piece.offset) / sector * sector;
      if (whole_sectors_ && random_.uniform() < 0.5) {
        Change rubbish{
            .offset = static_cast<std::int64_t>(begin), .bytes = std::string(sector, '\0'), .size = 0};
        for (char& byte : rubbish.bytes) byte = static_cast<char>(random_.bits() >> 56U);
        piece = std::move(rubbish);
      } else {
        piece.bytes.resize(someOf(random_, piece.bytes.size()));
      }
    }
    writeInto(file.kept, piece);
  }
}

void FaultyDisk::losePower() {
  std::set<std::string> names;
  for (const auto* files : {&seen_, &kept_}) {
    for (const auto& [name, file] : *files) names.insert(name);
  }
  Files left;
  for (const std::string& name : names) {
    const Files& side = random_.uniform() < 0.5 ? seen_ : kept_;
    const auto found = side.find(name);
    if (found != side.end()) left.insert(*found);
  }
  std::set<File*> done;
  for (const auto& [name, file] : left) {
    file->shared.clear();
    if (!done.insert(file.get()).second) continue;
    keepByChance(*file, true);
    file->seen = file->kept;
  }
  seen_ = left;
  kept_ = std::move(left);
  plan({});
}

void FaultyDisk::settle() {
  plan({});
  for (const auto& [name, file] : seen_) sync(*file);
  syncFolder();
}

std::map<std::string, std::string> FaultyDisk::files() const {
  std::map<std::string, std::string> files;
  for (const auto& [name, file] : seen_) files.emplace(name, file->seen);
  return files;
}

void FaultyDisk::put(const std::string& path, std::string bytes) {
  auto file = std::make_shared<File>();
  file->seen = file->kept = std::move(bytes);
  seen_[path] = file;
  kept_[path] = std::move(file);
}

}  // namespace hingepin::store
