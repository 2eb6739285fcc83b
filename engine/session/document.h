// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/session/locale.h"
#include "engine/store/store.h"

/// Records as documents for people: values in words, laid out by whoever shows or prints them.
namespace hingepin::session {

struct DocumentRow {
  std::string label;
  std::string value{};
  std::string note{};     ///< smaller, beside or below it
  std::string verdict{};  ///< "passed", "failed", "warning"; "" for what is only said
};

struct DocumentSection {
  std::string code;   ///< catalogue code of its title: "document-readings", ...
  std::string title;  ///< in words
  std::vector<DocumentRow> rows;
};

struct Document {
  std::string record;
  std::string language;  ///< of the words of procedure steps; the reader's, or else the record's own
  std::string title;
  std::vector<std::string> stamps{};  ///< large, at the top: practice, failed, do not use; in words
  std::string verdict{};              ///< "passed", "failed"
  std::vector<DocumentSection> sections{};
  std::string not_for_trade{};  ///< the sentence that it does not make a scale legal for trade
  std::string qr_text{};
};

/// The program's own name of a record, to be read by a camera: "hingepin:record/<hash>".
[[nodiscard]] std::string qrTextOf(std::string_view record);
/// @return the name of the record, or nothing if it is not such a text
[[nodiscard]] std::optional<std::string> recordOfQrText(std::string_view text);

/// A record as a document. Words of steps are the reader's where the procedure is the library's, else those
/// that were shown. Numbers stand as typed; where the reader's units differ, the note has them.
/// Errors: NotFound "record-not-in-store", "blob-not-in-store" (its procedure); InvalidInput
/// "record-not-of-job" for a correction; "language-unknown".
[[nodiscard]] Expected<Document> documentOf(const store::Store& store, std::string_view record,
                                            const Reader& reader);

/// What a sticker at the monitor says.
struct ScaleLabel {
  std::string title;
  std::string unit;
  std::string attachment;
  std::vector<DocumentRow> rows;  ///< unit, attachment, calibrated on, due, by whom, record
  std::string qr_text;
  bool practice = false;
};
/// The label of a pair that was taught. Errors: NotFound "pair-not-taught".
[[nodiscard]] Expected<ScaleLabel> labelOf(const store::Store& store, std::string_view unit,
                                           std::string_view attachment, const Reader& reader);

/// What a tag says: large words first.
struct TagDocument {
  std::string headline;  ///< the procedure's own: do not use this scale
  std::vector<DocumentRow> rows;
  std::string qr_text;
  bool practice = false;
};
/// The tag of a record of a failed or abandoned job. Errors: those of documentOf; InvalidInput
/// "job-has-no-tag".
[[nodiscard]] Expected<TagDocument> tagDocumentOf(const store::Store& store, std::string_view record,
                                                  const Reader& reader);

}  // namespace hingepin::session
