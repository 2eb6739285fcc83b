// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <filesystem>
#include <utility>

#include "engine/cli/commands.h"
#include "engine/cli/groups.h"
#include "engine/cli/output.h"
#include "engine/cli/words.h"
#include "engine/folder/files.h"
#include "engine/procedures/library.h"
#include "engine/procedures/lint.h"
#include "engine/procedures/runner.h"
#include "engine/session/catalogue.h"
#include "engine/session/procedure_words.h"

namespace hingepin::cli {
namespace {

using namespace folder;

using procedures::Procedure;
using procedures::Step;

/// A procedure of the library by its id, or one of a file.
Expected<std::pair<std::string, Procedure>> readAny(const std::string& name) {
  std::string text;
  if (const procedures::LibraryEntry* const entry = procedures::findInLibrary(name)) {
    text = entry->text;
  } else {
    Expected<std::string> read = readFile(name);
    if (!read && read.error().kind == ErrorKind::NotFound && !name.ends_with(".json")) {
      return fail(ErrorKind::NotFound, "procedure-not-in-library", {{"procedure", name}});
    }
    if (!read) return std::unexpected(read.error());
    text = *std::move(read);
  }
  Expected<Procedure> procedure = procedures::readProcedure(text, name);
  if (!procedure) return std::unexpected(procedure.error());
  return std::pair(std::move(text), *std::move(procedure));
}

/// Words of a language, and codes where a yard's own procedure has no words yet.
class Speech {
 public:
  Speech(const session::Words* words, UnitSystem system) : words_(words), system_(system) {}
  [[nodiscard]] std::string operator()(const Message& message) const {
    return session::say(*words_, message, system_);
  }
  [[nodiscard]] std::string operator()(const std::string& code) const { return (*this)(Message{code, {}}); }

 private:
  const session::Words* words_;
  UnitSystem system_;
};

int listCommand(const std::string& language, UnitSystem system) {
  const auto words = session::allWords(language);
  if (!words) return complain(words.error(), system);
  Table table;
  for (const procedures::LibraryEntry& entry : procedures::library()) {
    const auto procedure = procedures::readProcedure(std::string(entry.text), std::string(entry.id));
    if (!procedure) return complain(procedure.error(), system);
    table.push_back({procedure->id, Speech(*words, system)(procedure->title)});
  }
  return print(layOut(table, terminalCharset(), 2), system);
}

std::string joined(const std::vector<std::string>& parts) {
  std::string text;
  for (const std::string& part : parts) text += (text.empty() ? "" : ", ") + part;
  return text;
}

std::string capitals(std::string_view text) {
  std::string upper(text);
  for (char& letter : upper) {
    if (letter >= 'a' && letter <= 'z') letter = static_cast<char>(letter - 'a' + 'A');
  }
  return upper;
}

std::string cautionText(const procedures::Caution& caution, const Speech& say) {
  return fmt::format("     {}: {}\n       {}\n       {}\n", capitals(procedures::nameOf(caution.signal)),
                     say(caution.hazard), say(caution.consequence), say(caution.avoidance));
}

std::string failureText(const procedures::OnFailure& failure, const Speech& say) {
  std::string text;
  const std::string most = failure.at_most ? fmt::format(", {} times at most", *failure.at_most) : "";
  switch (failure.action) {
    case procedures::FailureAction::Repeat:
      text = "once more" + most;
      break;
    case procedures::FailureAction::GoBack:
      text = "back to " + failure.to + most;
      break;
    case procedures::FailureAction::ReadAgain:
      text = "read again" + most;
      break;
    case procedures::FailureAction::More:
      text = "more of the same, from " + failure.to + most;
      break;
    case procedures::FailureAction::GoOn:
      return "go on, marked: " + say(failure.mark);
    case procedures::FailureAction::Stop:
      return "stop and make safe";
  }
  return text +
         (failure.goes_on_then ? "; then go on, marked: " + say(failure.mark) : "; then stop and make safe");
}

std::string stepText(const Procedure& procedure, const procedures::State& state, const Step& step, int number,
                     const Speech& say) {
  const procedures::Prompt asked = procedures::prompt(procedure, state);
  const std::string head = fmt::format("{:>4} ", number);
  if (step.kind == procedures::StepKind::Caution) {
    const procedures::Caution* const caution = procedures::findCaution(procedure, step.caution);
    return caution == nullptr ? head + step.caution + "\n" : head + "read\n" + cautionText(*caution, say);
  }
  std::string text =
      head + say(asked.text) + fmt::format("  [{}: {}]\n", procedures::nameOf(step.kind), step.id);
  if (!step.zone_clear.empty()) text += "     press first: " + say(step.zone_clear) + "\n";
  if (!step.detail.empty()) text += "     " + say(step.detail) + "\n";
  for (const procedures::Answer& answer : step.answers) {
    text +=
        fmt::format("     {}: {}{}\n", answer.id, say(answer.text), answer.passes ? "" : " (doesn't pass)");
  }
  if (step.second_person) text += "     by a second person: " + joined(procedure.confirm_roles) + "\n";
  if (!step.roles.empty()) text += "     by: " + joined(step.roles) + "\n";
  if (step.repeat)
    text += fmt::format("     {} times in all, from {}\n", step.repeat->times, step.repeat->from);
  if (const auto& failure = procedures::failureOf(procedure, step); failure && procedures::canFail(step)) {
    text += "     if not: " + failureText(*failure, say) + "\n";
  }
  if (step.undecided) text += "     if not decided yet: " + failureText(*step.undecided, say) + "\n";
  for (const std::string& cited : step.cites) text += "     " + cited + "\n";
  return text;
}

/// A state in which a step is asked for, with the entries' own values.
procedures::State stateAt(const std::string& variant, std::size_t position, procedures::Phase phase) {
  procedures::State state;
  state.phase = phase;
  state.start.variant = variant;
  state.position = position;
  state.zone_clear = true;
  return state;
}

int showCommand(const std::string& name, const std::string& variant, const std::string& language,
                UnitSystem system) {
  const auto read = readAny(name);
  if (!read) return complain(read.error(), system);
  const Procedure& procedure = read->second;
  const auto words = session::allWords(language);
  if (!words) return complain(words.error(), system);
  const Speech say(*words, system);
  std::vector<std::string> ways;
  for (const procedures::Variant& each : procedure.variants) ways.push_back(each.id);
  if (!variant.empty() && std::ranges::find(ways, variant) == ways.end()) {
    return complain(
        {ErrorKind::InvalidInput, {"variant-not-among", {{"variant", variant}, {"known", joined(ways)}}}, {}},
        system);
  }
  std::string text = fmt::format("{}  ({}, version {})\n{}\n\n", say(procedure.title), procedure.id,
                                 procedure.version, say(procedure.comes_first));
  text += "Run by: " + joined(procedure.run_roles) + "\n";
  if (!procedure.confirm_roles.empty()) text += "Second person: " + joined(procedure.confirm_roles) + "\n";
  for (const procedures::Variant& each : procedure.variants) {
    text += fmt::format("Way {}: {}\n", each.id, say(each.text));
  }
  for (const procedures::Prerequisite& each : procedure.prerequisites) {
    text += fmt::format("Before: {}, not older than {}\n", each.procedure, each.not_older_than);
  }
  if (!procedure.entries.empty()) {
    text += "Entries of the unit:\n";
    for (const procedures::Entry& each : procedure.entries) {
      text += fmt::format("  {}: {}\n", each.id,
                          each.standard.empty() ? "needed, in " + each.unit : each.standard);
    }
  }
  if (!procedure.tools.empty()) text += "Tools:\n";
  for (const std::string& tool : procedure.tools) text += "  " + say(tool) + "\n";
  const auto addSteps = [&](const std::vector<Step>& steps, procedures::Phase phase) {
    int number = 0;
    for (std::size_t position = 0; position < steps.size(); ++position) {
      if (!variant.empty() && !procedures::hasStep(variant, steps[position])) continue;
      std::string only;
      if (variant.empty() && !steps[position].only.empty())
        only = "     only: " + joined(steps[position].only) + "\n";
      text += stepText(procedure, stateAt(variant, position, phase), steps[position], ++number, say) + only;
    }
  };
  text += "\nSteps\n";
  addSteps(procedure.steps, procedures::Phase::Running);
  text += "\nTo make safe after a failure, or when the job is given up\n";
  addSteps(procedure.make_safe, procedures::Phase::MakingSafe);
  text += "\nTag: " + say(procedure.tag) + "\n";
  return print(in(text, terminalCharset()), system);
}

int checkCommand(const std::string& path, const std::string& words_path, UnitSystem system) {
  const auto read = readAny(path);
  if (!read) return complain(read.error(), system);
  const auto words = session::allWords("en");
  if (!words) return complain(words.error(), system);
  procedures::TextCodes codes;
  for (const auto& [code, sentence] : **words) codes.insert(code);
  if (!words_path.empty()) {
    const Expected<std::string> own = readFile(words_path);
    if (!own) return complain(own.error(), system);
    const std::optional<session::Catalogue> catalogue = session::readCatalogue(*own);
    if (!catalogue) {
      return complain({ErrorKind::InvalidInput, {"words-malformed", {}}, {.file = words_path}}, system);
    }
    for (const auto& [code, sentence] : *catalogue) codes.insert(code);
  }
  const Expected<JsonDocument> document = readJson(read->first, path);
  const std::vector<procedures::Finding> findings = procedures::lint(read->second, &codes);
  for (const procedures::Finding& finding : findings) {
    const Place place =
        document ? document->place(finding.pointer) : Place{.file = path, .pointer = finding.pointer};
    writeDiagnostic(sayError({ErrorKind::InvalidInput, finding.problem, place}, system));
    writeDiagnostic("  " + session::say(session::englishCatalogue(), finding.mend, system) + "\n");
  }
  if (!findings.empty()) return kWrong;
  return print(fmt::format("{}: {} can be run.\n", path, read->second.id), system);
}

struct ProcedureOptions {
  std::string name;
  std::string variant;
  std::string language = "en";
  std::string words;
};

}  // namespace

void addProcedureCommands(CLI::App& app, const Common& common, Action& action) {
  const auto options = std::make_shared<ProcedureOptions>();
  CLI::App* const group =
      app.add_subcommand("procedures", "What to do in which order: show and check procedures");
  group->require_subcommand(1);

  CLI::App* const list = group->add_subcommand("list", "List the procedures of the library");
  list->add_option("--language", options->language, "Language of the words; en if not given")
      ->type_name("TAG");
  list->callback([&common, &action, options] {
    action = [&common, options] { return listCommand(options->language, common.system); };
  });

  CLI::App* const show =
      group->add_subcommand("show", "Show a procedure with its words, in the order of its steps");
  show->add_option("PROCEDURE", options->name, "Its id in the library, or a file")->required();
  show->add_option("--way", options->variant, "Only the steps of one way through it")->type_name("ID");
  show->add_option("--language", options->language, "Language of the words; en if not given")
      ->type_name("TAG");
  show->callback([&common, &action, options] {
    action = [&common, options] {
      return showCommand(options->name, options->variant, options->language, common.system);
    };
  });

  CLI::App* const check = group->add_subcommand(
      "check", "Check a procedure file: each finding with its place and how to mend it (status 2)");
  check->add_option("FILE", options->name, "The procedure")->required();
  check->add_option("--words", options->words, "Words of its own, beside those of the library (JSON)")
      ->type_name("FILE");
  check->callback([&common, &action, options] {
    action = [&common, options] { return checkCommand(options->name, options->words, common.system); };
  });
}

}  // namespace hingepin::cli
