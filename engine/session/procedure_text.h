// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <map>
#include <string>
#include <string_view>

#include "engine/base/error.h"
#include "engine/procedures/runner.h"
#include "engine/session/locale.h"
#include "engine/session/procedure_words.h"
#include "engine/store/store.h"

namespace hingepin::session {

/// A procedure with words to tell somebody of it.
struct ProcedureText {
  procedures::Procedure procedure;
  Words words;
  std::string language;  ///< of the words
};

/// The words of a code; the code itself where there are none.
[[nodiscard]] std::string wordsOf(const ProcedureText& text, std::string_view code, const Reader& reader);
/// The text of a step with its values. @param state as far as it is known
[[nodiscard]] std::string stepText(const ProcedureText& text, const procedures::State& state,
                                   std::string_view step, const Reader& reader);

/// Procedures as jobs and records name them, each read once, for one reader.
class ProcedureShelf {
 public:
  /// Both outlive it.
  ProcedureShelf(const store::Store& store, const Reader& reader) : store_(store), reader_(reader) {}

  /// By its hash: in the words of the reader where it is one of the library as it is today, else in those
  /// that were shown. Errors: NotFound "blob-not-in-store"; those of readProcedure.
  [[nodiscard]] Expected<const ProcedureText*> find(const std::string& procedure, const std::string& words,
                                                    const std::string& language);
  /// The title of a procedure of the library; its id if it is none.
  [[nodiscard]] std::string titleOf(std::string_view id) const;

 private:
  const store::Store& store_;
  const Reader& reader_;
  std::map<std::string, ProcedureText> read_;  // by the hashes of procedure and words
};

}  // namespace hingepin::session
