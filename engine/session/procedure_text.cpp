// SPDX-License-Identifier: Apache-2.0
#include "engine/session/procedure_text.h"

#include <utility>

#include "engine/procedures/library.h"
#include "engine/records/encoding.h"
#include "engine/session/catalogue.h"
#include "engine/session/job.h"

namespace hingepin::session {
namespace {

/// The library by the hashes of its files.
const std::map<std::string, procedures::Procedure, std::less<>>& libraryByHash() {
  static const auto read = [] {
    std::map<std::string, procedures::Procedure, std::less<>> made;
    for (const procedures::LibraryEntry& entry : procedures::library()) {
      auto procedure = procedures::readProcedure(std::string(entry.text), std::string(entry.id));
      if (procedure) made.emplace(records::hashName(entry.text), *std::move(procedure));
    }
    return made;
  }();
  return read;
}

}  // namespace

std::string wordsOf(const ProcedureText& text, std::string_view code, const Reader& reader) {
  return say(text.words, {std::string(code), {}}, reader.system, localeOf(text.language));
}

std::string stepText(const ProcedureText& text, const procedures::State& state, std::string_view step,
                     const Reader& reader) {
  const procedures::Step* const found = procedures::findStep(text.procedure, step);
  if (found == nullptr) return std::string(step);
  if (found->kind == procedures::StepKind::Caution) {
    const procedures::Caution* const caution = procedures::findCaution(text.procedure, found->caution);
    return caution == nullptr ? std::string(step) : wordsOf(text, caution->hazard, reader);
  }
  return say(text.words, procedures::textOf(text.procedure, state, *found), reader.system,
             localeOf(text.language));
}

Expected<const ProcedureText*> ProcedureShelf::find(const std::string& procedure, const std::string& words,
                                                    const std::string& language) {
  const std::string name = procedure + words;
  if (const auto known = read_.find(name); known != read_.end()) return &known->second;
  ProcedureText text{.procedure = {}, .words = {}, .language = language};
  const auto in_library = libraryByHash().find(procedure);
  if (in_library != libraryByHash().end()) {
    text.procedure = in_library->second;
    if (Expected<Words> own = wordsFor(text.procedure, reader_.language)) {
      text.words = *std::move(own);
      text.language = reader_.language;
    }
  } else {
    Expected<std::string> bytes = blobsOf(store_)(procedure);
    if (!bytes) return std::unexpected(std::move(bytes.error()));
    Expected<procedures::Procedure> read = procedures::readProcedure(*std::move(bytes), "procedure");
    if (!read) return std::unexpected(std::move(read.error()));
    text.procedure = *std::move(read);
  }
  if (text.words.empty()) {
    const Expected<std::string> bytes = blobsOf(store_)(words);
    if (!bytes) return std::unexpected(bytes.error());
    text.words = readCatalogue(*bytes).value_or(Words());
  }
  return &read_.emplace(name, std::move(text)).first->second;
}

std::string ProcedureShelf::titleOf(std::string_view id) const {
  const procedures::LibraryEntry* const entry = procedures::findInLibrary(id);
  const Expected<const Words*> words = allWords(reader_.language);
  if (entry == nullptr || !words) return std::string(id);
  for (const auto& [hash, procedure] : libraryByHash()) {
    if (procedure.id != id) continue;
    const auto title = (*words)->find(procedure.title);
    if (title != (*words)->end()) return title->second;
  }
  return std::string(id);
}

}  // namespace hingepin::session
