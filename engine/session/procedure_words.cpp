// SPDX-License-Identifier: Apache-2.0
#include "engine/session/procedure_words.h"

#include "engine/session/catalogue.h"
#include "engine/session/words.h"

namespace hingepin::session {
namespace {

using AllWords = std::map<std::string, Words, std::less<>>;

const AllWords& wordsByLanguage() {
  static const AllWords all = [] {
    AllWords made;
    for (const LanguageFile& file : procedureFiles()) {
      made[std::string(file.language)].merge(readCatalogue(file.json).value_or(Catalogue()));
    }
    return made;
  }();
  return all;
}

}  // namespace

Expected<const Words*> allWords(std::string_view language) {
  const auto found = wordsByLanguage().find(language);
  if (found != wordsByLanguage().end()) return &found->second;
  std::string known;
  for (const std::string& tag : languages()) known += (known.empty() ? "" : ", ") + tag;
  return fail(ErrorKind::NotFound, "language-unknown",
              {{"language", std::string(language)}, {"known", std::move(known)}});
}

Expected<Words> wordsFor(const procedures::Procedure& procedure, std::string_view language) {
  const Expected<const Words*> all = allWords(language);
  if (!all) return std::unexpected(all.error());
  Words used;
  for (const std::string& code : procedures::textCodesOf(procedure)) {
    const auto words = (*all)->find(code);
    if (words == (*all)->end()) {
      return fail(ErrorKind::NotFound, "words-missing",
                  {{"code", code}, {"procedure", procedure.id}, {"language", std::string(language)}});
    }
    used.insert(*words);
  }
  return used;
}

}  // namespace hingepin::session
