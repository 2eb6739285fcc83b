// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/proof/due.h"
#include "engine/records/keys.h"
#include "engine/records/record.h"
#include "engine/session/edge.h"
#include "engine/session/job.h"
#include "engine/session/moment.h"
#include "engine/store/store.h"

/// From a job that has ended to its record.
namespace hingepin::session {

/// Whose hand seals, and where.
struct Sealer {
  const records::SecretKey& key;
  std::string role;
  std::string installation;  ///< thumbprint of the key of the installation
  std::string epoch;
};

/// What was taught, and how sure it is.
struct Taught {
  std::string job_file;     ///< "hingepin-job/1", its logs named by their hash
  std::string calibration;  ///< "hingepin-calibration/1"
  JsonValue summary;        ///< for the record; without the hashes of the two
};

/// A job's readings and logs as a calibration job, and what fits them.
struct Fit {
  std::string job_file;  ///< as in Taught
  calibration::Job job;
  calibration::Calibration calibration;
};
/// Nothing where they give none.
[[nodiscard]] Expected<std::optional<Fit>> fitOf(const store::Store& store, const OpenJob& job,
                                                 const Edge& edge);
/// The calibration that a job's readings and logs give; nothing where they give none.
[[nodiscard]] Expected<std::optional<Taught>> calibrationOf(const store::Store& store, const OpenJob& job,
                                                            const Edge& edge);

/// What the record says, as README.md beside this file describes it.
/// @param calibration its summary with hashes, or null
[[nodiscard]] JsonValue recordContent(const OpenJob& job, const JsonValue& calibration,
                                      std::string_view engine, std::int64_t ended_utc_ms);

/// As much of that as a check looks at, of a job that has come to it: variant and tries, with one more for
/// the check itself.
[[nodiscard]] JsonValue contentBefore(const OpenJob& job, const procedures::Step& check);

/// Seals a job that has ended and keeps record, phase, calibration, a linkage that it found and what now
/// holds for unit and attachment in one commit. @return the name of the record Errors: InvalidInput
/// "job-not-ended", "job-sealed-already", "not-in-charge" (the key is not that of who ended the job), those
/// of mayAct and sealStatement.
[[nodiscard]] Expected<std::string> endJob(store::Store& store, const OpenJob& job, const Sealer& sealer,
                                           std::string_view engine, const Moment& now, const Edge& edge);

/// Adds a further signature to a record, made by another person on this installation or another.
/// @return the name of the signature
/// Errors: NotFound "record-not-in-store"; InvalidInput "record-signed-by-itself", those of mayAct.
[[nodiscard]] Expected<std::string> signRecord(store::Store& store, std::string_view record,
                                               const Sealer& sealer, const Moment& now);

/// Corrects a record by a new one that names it; the old one stays as it is.
/// @param correction what was wrong and what is right, in words, kept as typed
/// @return the name of the new record
/// Errors: NotFound "record-not-in-store"; InvalidInput "text-empty", those of mayAct and sealStatement.
[[nodiscard]] Expected<std::string> amendRecord(store::Store& store, std::string_view record,
                                                std::string correction, const Sealer& sealer,
                                                const Moment& now);

/// Seals that something happened to a unit after which its scale has to be proved.
/// @param attachment "" for all of them
/// @param note as typed, or ""
/// @return the name of the record
/// Errors: NotFound "unit-not-in-store"; those of mayAct and sealStatement.
[[nodiscard]] Expected<std::string> recordEvent(store::Store& store, const std::string& unit,
                                                const std::string& attachment, proof::Event event,
                                                std::string note, const Sealer& sealer, const Moment& now);

/// A record of the store, read. Errors: NotFound "record-not-in-store"; those of readSealed and readPayload.
[[nodiscard]] Expected<records::Record> recordOf(const store::Store& store, std::string_view name);

/// A text member of a record's content, by its path; "" where there is none.
[[nodiscard]] std::string textAt(const JsonValue& object, std::initializer_list<std::string_view> path);
/// Any member, or nullptr.
[[nodiscard]] const JsonValue* memberAt(const JsonValue& object,
                                        std::initializer_list<std::string_view> path);

/// What the tag of a failed or abandoned job says in the job's language, a line each: its words, unit,
/// attachment, why, when, record. Errors: InvalidInput "job-has-no-tag".
[[nodiscard]] Expected<std::vector<std::string>> tagOf(const OpenJob& job);

}  // namespace hingepin::session
