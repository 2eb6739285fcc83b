// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/procedures/runner.h"
#include "engine/records/keys.h"
#include "engine/session/edge.h"
#include "engine/session/moment.h"
#include "engine/session/procedure_words.h"
#include "engine/session/profile.h"
#include "engine/store/store.h"

/// A job from its beginning to the moment it can be sealed. The store's errors may come out of every function
/// that takes one.
namespace hingepin::session {

/// Somebody, as what, and on which phone.
struct Actor {
  std::string who;  ///< key; "" for somebody who only signs on the glass
  std::string role;
  std::string device;
};

/// A job that is worked on: what is in the store, read.
struct OpenJob {
  store::Job job;
  procedures::Procedure procedure;
  Words words;
  UnitProfile unit;
  std::optional<AttachmentProfile> attachment{};
  std::vector<procedures::Event> journal{};
  procedures::State state{};
};

/// The profile of what is fitted, or nullptr.
[[nodiscard]] const AttachmentProfile* attachmentOf(const OpenJob& job);

/// The files of a store by their hash. Errors: NotFound "blob-not-in-store".
[[nodiscard]] BlobSource blobsOf(const store::Store& store);

/// What was done on a unit of what a procedure needs before it, and how long ago by the clock that nobody can
/// set. What ended done before the same failed does not count any more.
[[nodiscard]] Expected<std::vector<procedures::Completed>> completedOn(const store::Store& store,
                                                                       const std::string& unit,
                                                                       const procedures::Procedure& procedure,
                                                                       const Moment& now);

struct NewJob {
  std::string id;  ///< made at random by the caller
  std::string unit;
  std::string attachment{};  ///< "" where the procedure is about the unit alone
  std::string procedure_text;
  std::string variant{};
  std::string language = "en";
  Words own_words{};  ///< beside those of the program, for a procedure of the yard's own
  procedures::LoneWork lone_work = procedures::LoneWork::NotAllowed;
  Entries entries{};  ///< over those of the profiles
};

/// Begins a job and keeps its first event. What the unit has done before comes from the store, with its age
/// where the same start of the same phone knows it.
/// Errors: NotFound "unit-not-in-store", "attachment-not-in-store"; InvalidInput "procedure-not-sound",
/// "teaching-not-offered", those of readProcedure, wordsFor, the profiles, mayAct and procedures::apply.
[[nodiscard]] Expected<OpenJob> beginJob(store::Store& store, const NewJob& job, const Actor& actor,
                                         const Moment& now, const Edge& edge);

/// Takes an event into a job: checks that the key may act so, applies it, keeps it, and only then changes the
/// state; then evaluates the checks that follow, each kept in the same way. Time is that of `now`.
/// Errors, with the job as it was: those of mayAct, checkConfirmation and procedures::apply,
/// "monitor-does-not-show", "monitor-shows-other-unit". If a check after the event fails to be evaluated, the
/// event is in all the same.
[[nodiscard]] Expected<void> handIn(store::Store& store, OpenJob& job, procedures::Event event,
                                    const Moment& now, const Edge& edge);

/// Keeps a file that an event brings: a photo or a signature on the glass as a personal object, that can be
/// erased; all else as it is. @return what the event's hashes name
/// Errors: those of Edge::read_log where the step asks for a log.
[[nodiscard]] Expected<std::string> keepFile(store::Store& store, const OpenJob& job, std::string_view step,
                                             std::string_view bytes, const std::string& file,
                                             const records::FillBytes& fill, const Moment& now,
                                             const Edge& edge);

/// Reads a job from its journal. The state is that after the last event that was kept.
/// Errors: NotFound "job-not-in-store"; InvalidInput "job-not-readable" with the cause in its place.
[[nodiscard]] Expected<OpenJob> openJob(const store::Store& store, std::string_view id, const Edge& edge);

/// Opens a job after the program or the phone was stopped: from its journal, then interrupted, so that it
/// waits for a person. A job that has ended is left as it is.
[[nodiscard]] Expected<OpenJob> reopenJob(store::Store& store, std::string_view id, const Moment& now,
                                          const Edge& edge);

/// Whether a key may act in a role now, by the newest trusted list of signers.
/// Errors: InvalidInput "signers-none", "signer-not-listed", "signer-outside-validity", "signer-revoked".
[[nodiscard]] Expected<void> mayAct(const store::Store& store, std::string_view key, std::string_view role,
                                    std::int64_t utc_ms);

}  // namespace hingepin::session
