// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <regex>
#include <sstream>
#include <string>
#include <vector>

#include "tests/engine/cli/place.h"
#include "tests/engine/cli/process.h"

namespace hingepin::cli {
namespace {

namespace fs = std::filesystem;
using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using ::testing::StartsWith;

const char* const kHours = R"({"hours":"4211 h","fuel":"80 %"})";

TEST(JobCommandTest, EveryCommandOfEveryGroupExplainsItself) {
  const std::vector<std::pair<std::string, std::vector<std::string>>> groups = {
      {"procedures", {"list", "show", "check"}},
      {"units", {"put", "list", "due", "when"}},
      {"yard", {"put", "show"}},
      {"attachments", {"put", "list"}},
      {"keys", {"make", "list"}},
      {"signers", {"make", "add", "revoke", "accept", "show"}},
      {"jobs", {"run", "continue", "list", "show", "tag", "seal"}},
      {"records", {"list", "show", "verify", "export", "sign", "amend", "event", "compare", "dispute"}},
      {"store", {"check", "backup", "export", "tables", "import"}}};
  const TemporaryFolder folder;
  for (const auto& [group, commands] : groups) {
    EXPECT_THAT(runHingepin({"help"}, folder.path()).output, HasSubstr(group));
    const std::string about = runHingepin({"help", group}, folder.path()).output;
    for (const std::string& command : commands) {
      EXPECT_THAT(about, HasSubstr(command));
      const std::string usage = "Usage: hingepin " + group + " " + command;
      EXPECT_THAT(runHingepin({"help", group, command}, folder.path()).output, HasSubstr(usage));
      EXPECT_THAT(runHingepin({group, command, "--help"}, folder.path()).output, HasSubstr(usage));
    }
    EXPECT_EQ(runHingepin({group}, folder.path()).status, 2);
    EXPECT_EQ(runHingepin({group, "nonsense"}, folder.path()).status, 2);
  }
}

TEST(JobCommandTest, AWrongLineSaysWhereTheJobIsAndWhatItWouldTake) {
  const Place place;
  std::vector<std::string> lines = place.walkRound(kHours);
  const auto press =
      std::ranges::find_if(lines, [](const auto& line) { return line.starts_with(R"({"press")"); });
  ASSERT_NE(press, lines.end());
  const auto number = press - lines.begin() + 2;
  const std::string awaited = *press;
  lines.erase(press);
  place.writeScript("no-press.jsonl", lines);
  const ProcessResult result = place.run({"jobs", "run", "no-press.jsonl"});
  EXPECT_EQ(result.status, 2);
  EXPECT_THAT(result.diagnostics, StartsWith("no-press.jsonl:" + std::to_string(number) + ": "));
  EXPECT_THAT(result.diagnostics, HasSubstr("press first that the zone is clear"));
  EXPECT_THAT(result.diagnostics, HasSubstr(awaited));
  EXPECT_THAT(place.done({"jobs", "show", place.runningJob()}), HasSubstr(awaited));
}

TEST(JobCommandTest, AJobGoesOnFromWhereItStopped) {
  const Place place;
  const std::vector<std::string> lines = place.walkRound(kHours);
  const auto half = lines.begin() + static_cast<std::ptrdiff_t>(lines.size() / 2);
  place.writeScript("first.jsonl", {lines.begin(), half});
  EXPECT_EQ(place.run({"jobs", "run", "first.jsonl"}).status, 1);
  const std::string job = place.runningJob();
  std::vector<std::string> rest = {R"({"resume":true})"};
  std::string header = kScriptHeader;
  header.replace(header.find("06:10"), 5, "06:30");
  // After an interruption the cautions of what is open are read again, and what was pressed is pressed again.
  rest.insert(rest.end(), half, lines.end());
  place.writeScript("rest.jsonl", rest, header);
  EXPECT_THAT(place.done({"jobs", "continue", job, "rest.jsonl"}), HasSubstr("phase done"));
  EXPECT_THAT(place.done({"jobs", "list", "--running"}), Not(HasSubstr(job)));
  place.done({"records", "verify"});
}

TEST(JobCommandTest, AKilledProgramLosesNothingThatWasDone) {
  const Place place;
  const std::vector<std::string> lines = place.walkRound(kHours);
  std::vector<std::string> begun(lines.begin(), lines.begin() + 4);
  begun.emplace_back(R"({"after":"10 min","interrupt":true})");  // waits for the computer's clock
  std::string header = kScriptHeader;
  header = std::regex_replace(header, std::regex(R"("begun_utc":"[^"]*","phone_started_utc":"[^"]*",)"), "");
  for (std::size_t index = 0; index < 4; ++index) {
    begun[index] = std::regex_replace(begun[index], std::regex(R"(^\{)"), R"({"after":"0 s",)");
  }
  place.writeScript("slow.jsonl", begun, header);
  const ProcessResult killed = place.runAndKill({"jobs", "run", "slow.jsonl"}, 3);
  EXPECT_EQ(killed.signal, SIGKILL);
  const std::string where = place.done({"jobs", "show", place.runningJob()});
  const auto awaited = nlohmann::json::parse(lines[4]);
  EXPECT_THAT(where, HasSubstr(awaited.begin()->is_string() ? awaited.begin()->get<std::string>() : ""));
  place.done({"store", "check"});
}

TEST(JobCommandTest, ARestartOfThePhoneMakesThePressVoid) {
  const Place place;
  std::vector<std::string> lines = place.walkRound(kHours);
  const auto press =
      std::ranges::find_if(lines, [](const auto& line) { return line.starts_with(R"({"press")"); });
  const std::string pressed = *press;
  lines.erase(press + 1, lines.end());
  lines.insert(lines.end(), {R"({"restart":true})", R"({"resume":true})"});
  place.writeScript("restarted.jsonl", lines);
  const ProcessResult result = place.run({"jobs", "run", "restarted.jsonl"});
  EXPECT_EQ(result.status, 1) << result.diagnostics;
  EXPECT_THAT(result.output, HasSubstr(pressed));
}

TEST(JobCommandTest, AJobGivenUpPrintsItsTag) {
  const Place place;
  place.writeScript("given-up.jsonl", {place.walkRound(kHours)[0], R"({"abandon":true})"});
  const ProcessResult waiting = place.run({"jobs", "run", "given-up.jsonl"});
  EXPECT_EQ(waiting.status, 1);
  const std::string job = place.runningJob();
  std::string header = kScriptHeader;
  header.replace(header.find("06:10"), 5, "06:30");
  std::string shown = place.done({"jobs", "show", job});
  std::vector<std::string> lines = {R"({"resume":true})"};
  // Does what is asked for, one line at a time.
  std::string ended;
  for (int count = 0; count < 20 && ended.empty(); ++count) {
    place.writeScript("more.jsonl", lines, header);
    const std::string minute = std::to_string(31 + count);
    header.replace(header.find("T06:") + 4, 2, minute);
    const ProcessResult result = place.run({"jobs", "continue", job, "more.jsonl"});
    if (result.status == 0) ended = result.output;
    std::smatch awaited;
    if (!std::regex_search(result.output, awaited, std::regex(R"(\{.*\})"))) break;
    lines = {R"({"resume":true})",
             std::regex_replace(awaited.str(), std::regex(R"( \| [^"]*|,"files":\["..."\])"), "")};
    if (lines[1].find("taken") != std::string::npos)
      lines[1] = std::regex_replace(lines[1], std::regex("taken"), "skipped");
  }
  EXPECT_THAT(ended, HasSubstr("phase abandoned"));
  EXPECT_THAT(place.done({"jobs", "tag", job}), HasSubstr("L-27"));
  EXPECT_THAT(place.done({"units", "list"}), HasSubstr("DO NOT START"));
  const std::string done_record = place.seal(place.walkRound(kHours));
  const std::string list = place.done({"jobs", "list"});
  std::smatch done_job;
  const std::regex row("([0-9a-f]{32}).*done +" + done_record.substr(0, 12));
  ASSERT_TRUE(std::regex_search(list, done_job, row)) << list;
  EXPECT_EQ(place.run({"jobs", "tag", done_job[1]}).status, 2);
}

TEST(RecordCommandTest, ASecondPersonSignsAndARevokedKeyIsNotTrustedAnyMore) {
  const Place place;
  const std::string first = place.seal(place.walkRound(kHours));
  place.done({"records", "sign", first, "--key", "lead-1", "--role", "safety-lead"});
  EXPECT_THAT(place.done({"records", "verify"}), AllOf(HasSubstr("signature"), Not(HasSubstr("refused"))));
  EXPECT_EQ(place.run({"records", "sign", first, "--key", "lead-1", "--role", "technician"}).status, 2);
  EXPECT_EQ(place.run({"records", "sign", first, "--key", "technician-1", "--role", "technician"}).status, 2);
  const std::string second = place.seal(place.walkRound(kHours));
  place.done({"signers", "revoke", "technician-1", "--last", first, "--yard-key", "yard"});
  const ProcessResult verified = place.run({"records", "verify"});
  EXPECT_EQ(verified.status, 1);
  EXPECT_THAT(verified.output, HasSubstr(second + "  record     quarantined"));
  EXPECT_THAT(verified.output, HasSubstr(first + "  record     trusted"));
  EXPECT_THAT(place.run({"jobs", "run", "whole.jsonl"}).diagnostics, HasSubstr("is revoked"));
  EXPECT_THAT(place.done({"signers", "show"}), HasSubstr("revoked"));
}

TEST(RecordCommandTest, AnAlteredFileIsNamed) {
  const Place place;
  const std::string name = place.seal(place.walkRound(kHours));
  place.done({"records", "export", "out"});
  const fs::path file = place.path() / "out/statements" / (name + ".jws.json");
  std::string text = readText(file);
  const std::size_t at = text.find("\"payload\":\"") + 400;
  text[at] = text[at] == 'A' ? 'B' : 'A';
  writeText(file, text);
  std::string root;
  for (const auto& entry : fs::directory_iterator(place.path() / "out/signers")) {
    root = entry.path().filename().string().substr(0, 64);
  }
  const ProcessResult verified = place.run({"records", "verify", "out", "--root", root});
  EXPECT_EQ(verified.status, 1);
  EXPECT_THAT(verified.output, HasSubstr(name + "  record  refused"));
  EXPECT_THAT(verified.output,
              HasSubstr("out/statements/" + name + ".jws.json: Record " + name + " was altered"));
  const ProcessResult as_json = place.run({"records", "verify", "out", "--root", root, "--json"});
  EXPECT_EQ(as_json.status, 1);
  EXPECT_THAT(as_json.output, HasSubstr(R"({"name":")" + name + R"(","standing":"refused"})"));
  EXPECT_THAT(as_json.output, HasSubstr(R"({"finding":"record-altered","about":")" + name +
                                        R"(","file":"out/statements/)" + name + R"(.jws.json",)"));
}

TEST(RecordCommandTest, WhatChangedBetweenTwoRecordsIsSaid) {
  const Place place;
  const std::string before = place.seal(place.walkRound(kHours));
  const std::string after = place.seal(place.walkRound(R"({"hours":"4260 h","fuel":"80 %","glass":"no"})"));
  const std::string said = place.done({"records", "compare", before, after});
  EXPECT_THAT(said, HasSubstr("hours on the monitor: 4211 h became 4260 h (+49 h)."));
  EXPECT_THAT(said, HasSubstr("clean?: \"yes\" became \"no\"."));
  EXPECT_THAT(said, Not(HasSubstr("fuel")));
  std::istringstream lines(place.done({"records", "compare", before, after, "--json"}));
  for (std::string line; std::getline(lines, line);) EXPECT_TRUE(nlohmann::json::accept(line)) << line;
}

TEST(StoreCommandTest, AnExportImportedElsewhereIsExportedAlike) {
  const Place place;
  place.seal(place.walkRound(kHours));
  place.writeScript("part.jsonl", {place.walkRound(kHours)[0]});
  EXPECT_EQ(place.run({"jobs", "run", "part.jsonl"}).status, 1);
  place.done({"store", "export", "first.jsonl"});
  EXPECT_THAT(place.run({"store", "export", "first.jsonl"}).diagnostics, HasSubstr("there already"));
  const auto other = [&](std::vector<std::string> arguments) {
    arguments.insert(arguments.end(), {"--store", "other"});
    const ProcessResult result = runHingepin(arguments, place.path());
    EXPECT_EQ(result.status, 0) << result.diagnostics;
    return result.output;
  };
  EXPECT_NE(other({"store", "import", "first.jsonl"}), "0\n");
  EXPECT_EQ(other({"store", "import", "first.jsonl"}), "0\n");
  other({"store", "check"});
  EXPECT_THAT(other({"records", "verify"}), HasSubstr("trusted"));
  const std::string text = readText(place.path() / "first.jsonl");
  other({"store", "export", "second.jsonl"});
  const auto sorted = [](const std::string& lines) {
    std::vector<std::string> all;
    std::istringstream stream(lines);
    for (std::string line; std::getline(stream, line);) {
      // The last line holds what the order gives.
      if (!line.contains(R"("kind":"end")")) all.push_back(line);
    }
    std::ranges::sort(all);
    return all;
  };
  EXPECT_EQ(sorted(text), sorted(readText(place.path() / "second.jsonl")));
  // What was changed on the way is refused, and nothing of it taken.
  std::string altered = text;
  altered[altered.size() / 2] ^= 1;
  writeText(place.path() / "altered.jsonl", altered);
  const ProcessResult refused =
      runHingepin({"store", "import", "altered.jsonl", "--store", "third"}, place.path());
  EXPECT_EQ(refused.status, 2);
  EXPECT_THAT(runHingepin({"records", "list", "--store", "third"}, place.path()).output,
              Not(HasSubstr("walk-round")));
  EXPECT_EQ(runHingepin({"store", "import", "none.jsonl", "--store", "third"}, place.path()).status, 2);
}

TEST(StoreCommandTest, ABackupHasNoKeyAndBeginsANewChain) {
  const Place place;
  place.seal(place.walkRound(kHours));
  place.done({"store", "backup", "store.db.copy"});
  EXPECT_EQ(place.run({"store", "backup", "store.db.copy"}).status, 2);
  // The keys are brought along apart.
  fs::create_directories(place.path() / "restored");
  fs::copy_file(place.path() / "store.db.copy", place.path() / "restored/store.db");
  fs::copy(place.path() / "store/keys", place.path() / "restored/keys");
  place.writeScript("whole.jsonl", place.walkRound(kHours));
  const auto restored = [&](std::vector<std::string> arguments) {
    arguments.insert(arguments.end(), {"--store", "restored", "--passphrase-file", "passphrase"});
    return runHingepin(arguments, place.path());
  };
  EXPECT_THAT(restored({"jobs", "run", "whole.jsonl"}).diagnostics, HasSubstr("hingepin keys make"));
  EXPECT_EQ(restored({"keys", "make", "phone-2"}).status, 0);
  EXPECT_EQ(restored({"jobs", "run", "whole.jsonl"}).status, 0);
  const ProcessResult verified = restored({"records", "verify"});
  EXPECT_EQ(verified.status, 0);
  EXPECT_THAT(verified.output, HasSubstr("has 2 chains"));
}

TEST(KeyCommandTest, APassphraseIsNeverTakenFromTheCommandLineAndMustBeWorthIt) {
  const TemporaryFolder folder;
  writeText(folder.path() / "short", "1234\n");
  EXPECT_THAT(runHingepin({"keys", "make", "a", "--store", "s"}, folder.path()).diagnostics,
              HasSubstr("No passphrase"));
  EXPECT_EQ(runHingepin({"keys", "make", "a", "--store", "s", "--passphrase", "x"}, folder.path()).status, 2);
  EXPECT_THAT(runHingepin({"keys", "make", "a", "--store", "s", "--passphrase-file", "short"}, folder.path())
                  .diagnostics,
              HasSubstr("too short"));
  writeText(folder.path() / "good", "seven brave otters hum\n");
  writeText(folder.path() / "wrong", "seven brave badgers hum\n");
  const std::vector<std::string> make = {"keys", "make", "a", "--store", "s", "--passphrase-file", "good"};
  EXPECT_EQ(runHingepin(make, folder.path()).status, 0);
  EXPECT_EQ(runHingepin(make, folder.path()).status, 2);  // it is there already
  EXPECT_EQ(runHingepin({"keys", "make", "../a", "--store", "s", "--passphrase-file", "good"}, folder.path())
                .status,
            2);
  EXPECT_EQ(runHingepin({"signers", "make", "--yard-key", "a", "--store", "s", "--passphrase-file", "wrong"},
                        folder.path())
                .status,
            2);
}

TEST(ProcedureCommandTest, AFindingIsSaidWithItsPlaceAndItsMend) {
  const TemporaryFolder folder;
  const fs::path library = fs::path(HINGEPIN_SOURCE_DIR) / "engine/procedures/library/walk-round.json";
  std::string text = readText(library);
  EXPECT_EQ(runHingepin({"procedures", "check", library.string()}, folder.path()).status, 0);
  const std::regex press(R"re("zone_clear": "[a-z-]+",\s*)re");
  writeText(folder.path() / "mine.json",
            std::regex_replace(text, press, "", std::regex_constants::format_first_only));
  const ProcessResult checked = runHingepin({"procedures", "check", "mine.json"}, folder.path());
  EXPECT_EQ(checked.status, 2);
  EXPECT_THAT(checked.diagnostics, testing::ContainsRegex("^mine.json:[0-9]+:[0-9]+: /steps/[0-9]+"));
  EXPECT_THAT(checked.diagnostics, HasSubstr("asks for no press that the zone is clear"));
  EXPECT_GE(std::ranges::count(checked.diagnostics, '\n'), 2);
}

TEST(ProcedureCommandTest, EveryProcedureIsShownInWordsWithNothingLeftToFill) {
  const TemporaryFolder folder;
  std::istringstream list(runHingepin({"procedures", "list"}, folder.path()).output);
  int count = 0;
  for (std::string id; list >> id; ++count) {
    const ProcessResult shown = runHingepin({"procedures", "show", id}, folder.path());
    EXPECT_EQ(shown.status, 0) << id << shown.diagnostics;
    EXPECT_THAT(shown.output, HasSubstr("Tag: ")) << id;
    std::getline(list, id);
  }
  EXPECT_GE(count, 12);
  EXPECT_EQ(runHingepin({"procedures", "show", "no-such-thing"}, folder.path()).status, 2);
  EXPECT_EQ(runHingepin({"procedures", "show", "stops", "--way", "none"}, folder.path()).status, 2);
  EXPECT_EQ(runHingepin({"procedures", "list", "--language", "xx"}, folder.path()).status, 2);
}

TEST(YardCommandTest, AProfileIsCheckedBeforeItIsKept) {
  const TemporaryFolder folder;
  writeText(folder.path() / "unit.json", R"({"format": "hingepin-unit/1", "unit": {"id": "X"}})");
  const ProcessResult put = runHingepin({"units", "put", "unit.json", "--store", "s"}, folder.path());
  EXPECT_EQ(put.status, 2);
  EXPECT_THAT(put.diagnostics, StartsWith("unit.json:1:"));
  EXPECT_THAT(runHingepin({"units", "list"}, folder.path()).diagnostics, HasSubstr("--store FOLDER"));
}

TEST(YardCommandTest, ProfileOfTheYardIsPutAndShownAndAFaultIsNamed) {
  const TemporaryFolder folder;
  const std::string profile =
      R"({"format":"hingepin-yard/1","proof":{"decision":{"rule":"guarded","confidence":0.95}}})";
  writeText(folder.path() / "yard.json", profile);
  writeText(folder.path() / "wrong.json",
            R"({"format":"hingepin-yard/1","proof":{"decision":{"rule":"mild"}}})");
  EXPECT_EQ(runHingepin({"yard", "show", "--store", "s"}, folder.path()).output, "");
  EXPECT_EQ(runHingepin({"yard", "put", "yard.json", "--store", "s"}, folder.path()).status, 0);
  const ProcessResult wrong = runHingepin({"yard", "put", "wrong.json", "--store", "s"}, folder.path());
  EXPECT_EQ(wrong.status, 2);
  EXPECT_THAT(wrong.diagnostics, HasSubstr("/proof/decision/rule"));
  EXPECT_EQ(runHingepin({"yard", "show", "--store", "s"}, folder.path()).output, profile + "\n");
}

}  // namespace
}  // namespace hingepin::cli
