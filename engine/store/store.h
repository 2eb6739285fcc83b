// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <iosfwd>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/records/chain.h"
#include "engine/records/personal.h"
#include "engine/records/record.h"
#include "engine/records/signers.h"
#include "engine/records/verify.h"

/// One SQLite file that holds what an installation knows. What is returned as done is on the disk.
namespace hingepin::store {

class Database;

inline constexpr std::size_t kMostTextBytes = 2U << 20U;  ///< of a profile or an event
inline constexpr std::size_t kMostBlobBytes = 256U << 20U;

/// A machine. `profile` is JSON that the store keeps as it is: what its monitor shows, linkage, entries.
struct Unit {
  std::string id;
  std::string profile;
  bool operator==(const Unit&) const = default;
};

struct Attachment {
  std::string id;
  std::string profile;
  bool operator==(const Attachment&) const = default;
};

/// What holds for a unit with one attachment fitted.
struct Pair {
  std::string unit;
  std::string attachment;
  std::string calibration{};                 ///< hash of the blob, "" for none
  std::string record{};                      ///< name of the record that says so, "" for none
  std::optional<std::int64_t> due_utc_ms{};  ///< when it has to be proved again
  std::vector<std::string> restrictions{};   ///< codes of marks that restrict its use
  bool operator==(const Pair&) const = default;
};

/// When a pair has to be proved again by all that is here of it, as somebody has worked it out. No fact of
/// its own: it goes with every change of what it stands on (profile and pairs of the unit, statements about
/// it).
struct ScaleDue {
  std::string unit;
  std::string attachment;
  std::optional<std::int64_t> due_utc_ms{};
  std::string told{};  ///< all that was worked out, as text; "" where it has to be worked out
  bool operator==(const ScaleDue&) const = default;
};

/// A job that was begun. Procedure and words are blobs, by hash.
struct Job {
  std::string id;
  std::string unit;
  std::string attachment{};  ///< "" where the procedure is about the unit alone
  std::string procedure_id;
  std::string procedure;  ///< hash of the exact bytes of its file
  std::string words;      ///< hash of the words that are shown
  std::string language;
  std::int64_t begun_utc_ms = 0;  ///< by the phone's clock: for information
  std::string phase = "running";  ///< "running", "done", "failed", "abandoned"
  std::string record{};           ///< name, once it is sealed
  bool operator==(const Job&) const = default;
};

/// A record or a further signature, as sealed.
struct StoredStatement {
  std::string name;
  std::string text;
  std::string job{};   ///< of this store; "" for one that came from elsewhere
  std::string unit{};  ///< that it is about; "" for none
};

/// A person's name, face or photo. Without bytes it was erased.
struct Personal {
  std::string name;
  records::Salt salt{};
  std::string bytes{};
  bool erased = false;
};

enum class WaitingKind { Statement, Signers, Blob, Personal };

/// Something that the far side may not have yet.
struct Waiting {
  WaitingKind kind = WaitingKind::Statement;
  std::string name;
  std::int64_t since_utc_ms = 0;
  bool operator==(const Waiting&) const = default;
};

/// Something that is in no parcel yet.
struct Unpacked {
  std::int64_t number = 0;  ///< its place in the order in which things began to wait
  Waiting what;
  std::optional<std::string_view> text{};  ///< of a statement, as sealed
};

/// Numbers of what waits, both ends included.
struct WaitingRange {
  std::int64_t first = 1;
  std::int64_t last = 0;
};

/// What one device sent in one go (engine/sync makes and reads it).
struct ParcelPlace {
  std::string source;         ///< device and epoch
  std::int64_t sequence = 1;  ///< in the chain of its source
  std::string name;           ///< hash of its manifest
  bool operator==(const ParcelPlace&) const = default;
};
struct Parcel {
  ParcelPlace place;
  std::string manifest;            ///< sealed
  std::vector<std::string> items;  ///< "statement NAME" and "signers NAME" stand for the text kept under it
};

/// How far the parcels of one source go.
struct ParcelSource {
  ParcelPlace head;        ///< the last that is here
  std::int64_t whole = 0;  ///< from 1 up to this number none is missing
};

/// The furthest parcel of a source that somebody showed or told of.
struct SeenParcel {
  ParcelPlace place;
  std::string witness;
};

/// Something that arrived and was not taken.
struct Quarantined {
  std::string name;    ///< hash of its bytes, or the name that they should have had
  std::string source;  ///< whose parcel brought it
  std::string reason;  ///< a message as text
  std::int64_t since_utc_ms = 0;
  std::string bytes;
};

/// Evidence that is not here yet.
struct Awaited {
  WaitingKind kind = WaitingKind::Blob;  ///< Blob or Personal
  std::string name;
  bool named = false;   ///< by a record that was taken
  std::string offer{};  ///< where it can be had, "" where nobody has said so
};

/// Something wrong in a store, in words for a person (code and values).
struct StoreFinding {
  Message message;
};

/// What is written in one commit when a job ends with its record. All of it or nothing.
struct Ending {
  std::string job;
  std::string phase;
  StoredStatement record;
  std::optional<Pair> pair{};
  std::optional<Unit> unit{};  ///< its profile, where the job changes it
  std::int64_t now_utc_ms = 0;
};

class Transaction;

/// All that is written to a store while this is there is one commit: none of it is there unless `commit`
/// returns, and it is on the disk then and not before. For filling a new store; the events of a job that
/// people work on are each a commit.
class Batch {
 public:
  ~Batch();
  Batch(Batch&&) noexcept;
  Batch& operator=(Batch&&) = delete;
  [[nodiscard]] Expected<void> commit();

 private:
  friend class Store;
  explicit Batch(std::unique_ptr<Transaction> transaction);
  std::unique_ptr<Transaction> transaction_;
};

/// What an import did.
struct Imported {
  std::int64_t added = 0;       ///< objects, events and ends of jobs that were new
  std::vector<Message> kept{};  ///< what is otherwise here, and was left so
};

class Store {
 public:
  /// Opens the file, makes it where it is not there, brings an older version up to date (in one commit), and
  /// checks what can be checked at once.
  /// @param vfs name of the SQLite VFS to use, "" for the usual one (tests hand in one that fails)
  /// Errors: IoFailed "store-not-opened"; InvalidInput "store-not-ours" (another application's file),
  /// "store-newer" (left untouched), "store-damaged".
  [[nodiscard]] static Expected<Store> open(const std::string& path, const std::string& vfs = "");
  ~Store();
  Store(Store&&) noexcept;
  Store& operator=(Store&&) noexcept;

  /// The store outlives it. Errors: "store-busy".
  [[nodiscard]] Expected<Batch> beginBatch();

  // All functions below: IoFailed "store-write-failed", "store-read-failed", "store-full", "store-busy"
  // (another process is writing; nothing was done); InvalidInput "store-damaged", and "store-value-refused"
  // for what the tables don't take: an empty id, text that is not UTF-8 or too long, a time beyond 0 to 2^53
  // - 1 ms.

  [[nodiscard]] Expected<void> putUnit(const Unit& unit);
  [[nodiscard]] Expected<std::optional<Unit>> unit(std::string_view id) const;
  [[nodiscard]] Expected<std::vector<Unit>> units() const;
  [[nodiscard]] Expected<void> putAttachment(const Attachment& attachment);
  [[nodiscard]] Expected<std::optional<Attachment>> attachment(std::string_view id) const;
  [[nodiscard]] Expected<std::vector<Attachment>> attachments() const;
  /// Errors: NotFound "unit-not-in-store", "attachment-not-in-store", "blob-not-in-store" (its calibration).
  [[nodiscard]] Expected<void> putPair(const Pair& pair);
  [[nodiscard]] Expected<std::optional<Pair>> pair(std::string_view unit, std::string_view attachment) const;
  [[nodiscard]] Expected<std::vector<Pair>> pairsOf(std::string_view unit) const;
  /// Pairs that are due at or before a time, the longest overdue first.
  [[nodiscard]] Expected<std::vector<Pair>> due(std::int64_t until_utc_ms) const;

  /// Pairs that by this rule are due at or before a time, and those of which nothing is kept, by unit and
  /// attachment. @param rule number of the way in which it was worked out
  [[nodiscard]] Expected<std::vector<ScaleDue>> scalesDue(std::int64_t rule, std::int64_t until_utc_ms) const;
  /// REQUIRES: in the Batch in which what it stands on was read.
  [[nodiscard]] Expected<void> keepDue(const ScaleDue& scale, std::int64_t rule);

  /// What holds for all units, as JSON that the store keeps as it is; "" where nothing does.
  [[nodiscard]] Expected<void> putYardProfile(std::string_view profile);
  [[nodiscard]] Expected<std::string> yardProfile() const;

  /// Bytes by their SHA-256: photos, files, logs, calibrations, procedures, words. Putting what is there
  /// already changes nothing. @return the hash name.
  [[nodiscard]] Expected<std::string> putBlob(std::string_view bytes, std::string_view media_type);
  [[nodiscard]] Expected<std::optional<std::string>> blob(std::string_view hash) const;
  [[nodiscard]] Expected<bool> hasBlob(std::string_view hash) const;
  /// "" for one that is not here.
  [[nodiscard]] Expected<std::string> mediaType(std::string_view hash) const;

  /// Begins a job with its first event, in one commit. Errors: InvalidInput "job-already-in-store"; NotFound
  /// "unit-not-in-store", "attachment-not-in-store", "blob-not-in-store".
  [[nodiscard]] Expected<void> beginJob(const Job& job, std::string_view first_event);
  /// Appends one event to a job's journal; durable when it returns. After an error other than InvalidInput
  /// and NotFound the event may or may not be there: read the journal again before the next.
  /// @param sequence of the event: as many as are there already
  /// Errors: InvalidInput "journal-not-continued" (somebody else has written), "job-ended"; NotFound
  /// "job-not-in-store".
  [[nodiscard]] Expected<void> appendEvent(std::string_view job, std::int64_t sequence,
                                           std::string_view event);
  [[nodiscard]] Expected<std::vector<std::string>> journal(std::string_view job) const;
  [[nodiscard]] Expected<std::optional<Job>> job(std::string_view id) const;
  /// The newest first; with a unit only those of it.
  [[nodiscard]] Expected<std::vector<Job>> jobs(std::string_view unit = "") const;
  [[nodiscard]] Expected<std::vector<Job>> jobsRunning() const;
  /// Errors: as appendEvent, putPair and putStatement; InvalidInput "job-ended".
  [[nodiscard]] Expected<void> endJob(const Ending& ending);

  /// Keeps a statement and queues it, and with it each blob here that its content names by hash. Same name
  /// twice changes nothing. The caller has verified its seal. Errors: InvalidInput, those of readSealed and
  /// readPayload; "statement-name-differs"; "chain-not-continued" when it belongs to a job of this store and
  /// its place in the chain is taken; NotFound "job-not-in-store".
  [[nodiscard]] Expected<void> putStatement(const StoredStatement& statement, std::int64_t now_utc_ms,
                                            bool queue = true);
  /// Likewise one from elsewhere, of no job here, which its caller has read from this very text and found to
  /// have this name. It is not queued.
  [[nodiscard]] Expected<void> putVerified(const StoredStatement& statement, const records::Statement& read);
  [[nodiscard]] Expected<std::optional<StoredStatement>> statement(std::string_view name) const;
  /// The time that a statement claims.
  [[nodiscard]] Expected<std::optional<std::int64_t>> sealedUtcMs(std::string_view name) const;
  /// Names, the newest first by the time they claim; with a unit only those about it.
  [[nodiscard]] Expected<std::vector<std::string>> statementNames(std::string_view unit = "") const;
  /// The head of the chain of a key in an epoch, from what is stored.
  [[nodiscard]] Expected<std::optional<records::Head>> head(std::string_view key,
                                                            std::string_view epoch) const;

  /// Errors: those of readSigners; InvalidInput "statement-name-differs".
  [[nodiscard]] Expected<void> putSigners(const records::SealedSigners& list, std::int64_t now_utc_ms,
                                          bool queue = true);
  [[nodiscard]] Expected<std::vector<records::SealedSigners>> signersLists() const;
  /// Root lists that a person has accepted, in that order. One that is accepted again becomes the last.
  [[nodiscard]] Expected<void> acceptRoot(std::string_view name);
  [[nodiscard]] Expected<std::vector<std::string>> acceptedRoots() const;
  /// Heads that other devices have told of.
  [[nodiscard]] Expected<void> putKnownHead(const records::Head& head);

  /// Keeps a personal object and queues it. What was erased stays so; what comes as erased is erased here
  /// too. Errors: InvalidInput "personal-name-differs".
  [[nodiscard]] Expected<void> putPersonal(const Personal& personal, std::int64_t now_utc_ms,
                                           bool queue = true);
  /// Removes bytes and salt, so that they can't be found in the file either, and queues that; what refers to
  /// it keeps the name. After "store-busy" they are gone from the tables, but another process still reads an
  /// older state of the file: call it again.
  [[nodiscard]] Expected<void> erasePersonal(std::string_view name, std::int64_t now_utc_ms,
                                             bool queue = true);
  [[nodiscard]] Expected<std::optional<Personal>> personal(std::string_view name) const;
  [[nodiscard]] Expected<std::vector<Personal>> personal() const;
  /// Those whose bytes begin so, in the order in which they came; the others are not read.
  [[nodiscard]] Expected<std::vector<Personal>> personalBeginning(std::string_view bytes) const;

  /// All that verification needs.
  [[nodiscard]] Expected<records::Evidence> evidence() const;

  [[nodiscard]] Expected<std::vector<Waiting>> waiting() const;
  /// Shows one after the other what is in no parcel yet, in order, until `visit` answers false or an error,
  /// which is given back. A text is there until `visit` returns; what waits must not be changed meanwhile.
  [[nodiscard]] Expected<void> visitUnpacked(
      const std::function<Expected<bool>(const Unpacked&)>& visit) const;
  [[nodiscard]] Expected<std::int64_t> unpackedCount() const;
  /// Takes it off the list, unless it was queued anew since.
  [[nodiscard]] Expected<void> sent(const Waiting& waiting);

  /// Keeps a parcel; the same twice changes nothing. What waits in a range and is in no parcel is from now on
  /// in this.
  [[nodiscard]] Expected<void> putParcel(const Parcel& parcel, WaitingRange holds = {});
  [[nodiscard]] Expected<std::optional<Parcel>> parcel(const ParcelPlace& place) const;
  [[nodiscard]] Expected<bool> hasParcel(const ParcelPlace& place) const;
  /// In order, those after a number, at most so many.
  [[nodiscard]] Expected<std::vector<ParcelPlace>> parcelsAfter(std::string_view source,
                                                                std::int64_t sequence,
                                                                std::int64_t most) const;
  [[nodiscard]] Expected<std::vector<ParcelSource>> parcelSources() const;
  /// Takes what the parcels of a source up to a number hold off the list of what waits. @return how many
  /// those were
  [[nodiscard]] Expected<std::int64_t> parcelsSent(std::string_view source, std::int64_t sequence);
  /// Keeps the furthest that each witness tells of.
  [[nodiscard]] Expected<void> putSeenParcel(const SeenParcel& seen);
  [[nodiscard]] Expected<std::vector<SeenParcel>> seenParcels() const;

  /// Of one name the newest is kept.
  [[nodiscard]] Expected<void> putQuarantined(const Quarantined& object);
  [[nodiscard]] Expected<std::vector<Quarantined>> quarantine() const;
  [[nodiscard]] Expected<void> releaseQuarantined(std::string_view name);

  /// Adds what is new of it to what is known.
  [[nodiscard]] Expected<void> putAwaited(const Awaited& awaited);
  /// Those that a record names and somebody offers.
  [[nodiscard]] Expected<std::vector<Awaited>> awaitedOnOffer() const;
  [[nodiscard]] Expected<void> arrived(WaitingKind kind, std::string_view name);
  /// Parts of evidence that arrived before the rest.
  [[nodiscard]] Expected<void> putPiece(std::string_view name, std::string_view bytes);
  [[nodiscard]] Expected<std::optional<std::string>> piece(std::string_view name) const;
  [[nodiscard]] Expected<void> dropPiece(std::string_view name);

  /// Looks at everything: SQLite's integrity check, foreign keys, every blob and statement against its hash,
  /// journals without gaps, jobs with their records. Empty: nothing wrong.
  [[nodiscard]] Expected<std::vector<StoreFinding>> check() const;
  /// Writes a consistent copy to a file that must not be there yet; opening it is all that restoring takes.
  /// It is whole and on the disk, or else opens as empty. Errors: IoFailed "backup-not-written".
  [[nodiscard]] Expected<void> backup(const std::string& path) const;

  /// Writes all that is here as text (README.md): one canonical JSON object a line. Errors: IoFailed
  /// "export-not-written".
  [[nodiscard]] Expected<void> exportTo(std::ostream& out) const;
  /// Takes in what is new of an export, all of it or nothing. Units, attachments and pairs that are otherwise
  /// here stay as they are, and are told; so are root lists where a person here has accepted one already.
  /// Errors: InvalidInput "import-malformed" and those of the readers, with the line; "import-job-differs"
  /// for a job that went on in another way here; IoFailed "import-not-read".
  [[nodiscard]] Expected<Imported> importFrom(std::istream& in);

 private:
  explicit Store(std::unique_ptr<Database> database);
  std::unique_ptr<Database> database_;
};

}  // namespace hingepin::store
