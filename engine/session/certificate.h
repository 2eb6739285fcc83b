// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "engine/base/error.h"
#include "engine/certificate/certificate.h"
#include "engine/session/edge.h"
#include "engine/session/locale.h"
#include "engine/store/store.h"

/// Calibration certificates of records.
namespace hingepin::session {

/// The engine's words for a certificate's reader.
[[nodiscard]] certificate::Voice voiceOf(const Reader& reader);

/// Who issues a certificate, and when.
struct Issue {
  certificate::Particulars particulars{};
  std::string program{};  ///< and version
  std::int64_t utc_ms = 0;
};

/// What a record's job says of its scale: its proofs as found and as left, judged by the limits of its
/// checks or the terms of its unit; stops, conditions and remarks. Each number names the readings that it
/// comes from. Errors: NotFound "record-not-in-store", "blob-not-in-store" (its procedure); InvalidInput
/// "record-not-of-job" for a correction; "language-unknown"; "country-malformed".
[[nodiscard]] Expected<certificate::Certificate> certificateOf(const store::Store& store, const Edge& edge,
                                                               std::string_view record, const Reader& reader,
                                                               const Issue& issue);

/// The same as a page (HTML), and as a Digital Calibration Certificate (XML).
[[nodiscard]] Expected<std::string> certificateHtml(const store::Store& store, const Edge& edge,
                                                    std::string_view record, const Reader& reader,
                                                    const Issue& issue);
[[nodiscard]] Expected<std::string> certificateDcc(const store::Store& store, const Edge& edge,
                                                   std::string_view record, const Reader& reader,
                                                   const Issue& issue);

/// The label of a pair, and the tag of a record, as pages (HTML). Errors: those of labelOf and tagDocumentOf.
[[nodiscard]] Expected<std::string> labelHtml(const store::Store& store, std::string_view unit,
                                              std::string_view attachment, const Reader& reader);
[[nodiscard]] Expected<std::string> tagHtml(const store::Store& store, std::string_view record,
                                            const Reader& reader);

}  // namespace hingepin::session
