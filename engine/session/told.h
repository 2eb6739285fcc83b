// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/procedures/runner.h"
#include "engine/records/record.h"
#include "engine/session/people.h"
#include "engine/session/procedure_text.h"
#include "engine/session/record_view.h"
#include "engine/store/store.h"

/// What documents and certificates are made from.
namespace hingepin::session {

/// A record of a job with all that is needed to tell of it. Move it, but don't copy it: `job.calibration`
/// points into the items of `record.content`, which stay where they are only when that is moved.
struct Told {
  std::string name{};
  records::Record record{};
  RecordedJob job{};
  const ProcedureText* text = nullptr;
  procedures::State state{};  ///< as far as the texts of steps need it
  Names names{};
};

/// Errors: NotFound "record-not-in-store", "blob-not-in-store" (its procedure); InvalidInput
/// "record-not-of-job" for a correction. @param shelf outlives the result
[[nodiscard]] Expected<Told> tell(const store::Store& store, std::string_view record, ProcedureShelf& shelf);

/// Another statement about a record: a further signature, or a correction.
struct Beside {
  std::string name{};
  std::string key{};
  std::string role{};
  std::int64_t utc_ms = 0;
  std::string correction{};  ///< as typed; "" of a signature
};
/// Errors: those of the store.
[[nodiscard]] Expected<std::vector<Beside>> besideRecord(const store::Store& store, const Told& told);

/// Whether a reading tells of the circumstances: oil temperature, pitch, ...
[[nodiscard]] bool isCondition(const RecordedTry& each);
/// Whether it was made before anything was set; the library names its steps so.
[[nodiscard]] bool isAsFound(std::string_view step);
[[nodiscard]] inline bool isAsFound(const RecordedTry& each) { return isAsFound(each.about); }
/// A stop as stored and as come to; likewise.
[[nodiscard]] bool isStop(const RecordedTry& each);

}  // namespace hingepin::session
