// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "engine/folder/folder.h"
#include "engine/procedures/library.h"
#include "engine/session/job.h"
#include "engine/session/job_record.h"
#include "engine/session/yard.h"
#include "tests/engine/cli/process.h"

// An invented yard with the practice unit, and somebody who works in it.
namespace hingepin::session {

inline constexpr std::int64_t kMorning = 1'777'874'400'000;  // 2026-05-04T06:00:00Z

inline std::string testFile(const std::string& name) {
  std::ifstream file(std::string(HINGEPIN_SOURCE_DIR) + "/tests/engine/session/" + name, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

/// A value that a test needs to go on. REQUIRES: that there is one.
template <class T>
T need(Expected<T> value) {
  if (!value) throw std::runtime_error(value.error().message.code + " " + value.error().place.pointer);
  return *std::move(value);
}
inline void need(const Expected<void>& done) {
  if (!done) throw std::runtime_error(done.error().message.code + " " + done.error().place.pointer);
}
template <class T>
std::string codeOf(const Expected<T>& value) {
  return value ? "" : value.error().message.code;
}

class Yard {
 public:
  Yard() : store(need(store::Store::open((folder.path() / "store.db").string()))) {
    need(
        makeYard(store, yard_key,
                 {{.key = technician.publicKey(), .role = "technician", .valid_from_utc_ms = kMorning},
                  {.key = second_technician.publicKey(), .role = "technician", .valid_from_utc_ms = kMorning},
                  {.key = lead.publicKey(), .role = "safety-lead", .valid_from_utc_ms = kMorning}},
                 kMorning));
    need(store.putUnit({.id = "L-27", .profile = testFile("files/unit.json")}));
    need(store.putAttachment({.id = "GP-2.7", .profile = testFile("files/attachment.json")}));
  }

  [[nodiscard]] Actor technicianHere() const {
    return {.who = technician.id(), .role = "technician", .device = "phone-1"};
  }
  [[nodiscard]] NewJob jobOf(const std::string& procedure, const std::string& variant = "") {
    return {.id = "job-" + std::to_string(++jobs_),
            .unit = "L-27",
            .attachment = "GP-2.7",
            .procedure_text = std::string(procedures::findInLibrary(procedure)->text),
            .variant = variant};
  }
  [[nodiscard]] Expected<OpenJob> tryBegin(const NewJob& job) {
    return beginJob(store, job, technicianHere(), now, folder::edge());
  }
  [[nodiscard]] OpenJob begin(const std::string& procedure, const std::string& variant = "") {
    return need(tryBegin(jobOf(procedure, variant)));
  }
  [[nodiscard]] Expected<void> tell(OpenJob& job, procedures::Event event) {
    now.at_ms += 2000;
    now.utc_ms += 2000;
    return handIn(store, job, std::move(event), now, folder::edge());
  }

  /// What an obliging technician does next; `says` has values and answers by step, of a list each time the
  /// next.
  [[nodiscard]] procedures::Event honest(const OpenJob& job) {
    using procedures::Ask;
    using procedures::EventType;
    using procedures::StepKind;
    const procedures::Prompt asked = procedures::prompt(job.procedure, job.state);
    procedures::Event event{.type = EventType::Answer,
                            .who = job.state.person,
                            .role = job.state.role,
                            .device = job.state.device};
    event.about = asked.about;
    const procedures::Step* step = procedures::findStep(job.procedure, asked.about);
    switch (asked.ask) {
      case Ask::Resume:
        event.type = EventType::Resume;
        return event;
      case Ask::Acknowledge:
        event.type = EventType::Acknowledge;
        return event;
      case Ask::ZoneClear:
        event.type = EventType::ZoneClear;
        return event;
      case Ask::Begin:
        event.type = EventType::Begin;
        return event;
      case Ask::Hold:
        now.at_ms = std::max(now.at_ms, *asked.finished_at_ms);
        event.answer = "done";
        return event;
      case Ask::Reading:
      case Ask::Doubt:
        event.type = EventType::Reading;
        event.value = said(asked.about, "0 1");
        if (step->source == procedures::Source::Machine) event.how = procedures::How::Monitor;
        return event;
      default:
        break;
    }
    event.answer = asked.answers.front();
    if (step == nullptr) return event;
    for (const procedures::Answer& answer : step->answers) {
      if (answer.passes) event.answer = answer.id;
    }
    event.answer = said(asked.about, event.answer);
    if (step->second_person)
      event = {.type = event.type,
               .who = lead.id(),
               .role = "safety-lead",
               .device = "phone-2",
               .about = event.about,
               .answer = event.answer};
    if (step->on_glass) {
      event.who = "";
      event.role = step->roles.empty() ? event.role : step->roles.front();
    }
    if (event.answer == "taken" || (step->on_glass && event.answer == "signed")) {
      event.hashes = {need(keepFile(store, job, step->id, "picture of " + step->id, "picture",
                                    folder::fillBytes, now, folder::edge()))};
    }
    if (step->kind == StepKind::Pass && logs.contains(step->id)) {
      event.hashes = {need(
          keepFile(store, job, step->id, logs.at(step->id), "log", folder::fillBytes, now, folder::edge()))};
    }
    if (step->kind == StepKind::Note && event.answer != "skipped") {
      event.value = event.answer == "written" ? "nothing to note" : event.answer;
      event.answer = "written";
    }
    return event;
  }
  /// Works until a step is asked for, or to the end. @return "" or why it went no further
  std::string work(OpenJob& job, const std::string& until = "") {
    for (int count = 0; count < 2000 && !procedures::hasEnded(job.state.phase); ++count) {
      if (!until.empty() && procedures::prompt(job.procedure, job.state).about == until) return "";
      const procedures::Event event = honest(job);
      if (const Expected<void> taken = tell(job, event); !taken) {
        return event.about + ": " + taken.error().message.code;
      }
    }
    return procedures::hasEnded(job.state.phase) ? "" : "no end";
  }
  [[nodiscard]] Expected<std::string> seal(const OpenJob& job) {
    return endJob(store, job,
                  {.key = technician, .role = "technician", .installation = technician.id(), .epoch = epoch},
                  "hingepin test", now, folder::edge());
  }

  cli::TemporaryFolder folder{};
  records::SecretKey yard_key = records::newSecretKey(folder::fillBytes);
  records::SecretKey technician = records::newSecretKey(folder::fillBytes);
  records::SecretKey second_technician = records::newSecretKey(folder::fillBytes);
  records::SecretKey lead = records::newSecretKey(folder::fillBytes);
  std::string epoch = records::epochName(std::array<std::uint8_t, 16>{7});
  store::Store store;
  Moment now{.at_ms = 600'000, .boot = "boot-1", .utc_ms = kMorning + 600'000};
  std::map<std::string, std::vector<std::string>> says{};
  std::map<std::string, std::string> logs{};

 private:
  std::string said(const std::string& step, const std::string& otherwise) {
    const auto found = says.find(step);
    if (found == says.end() || found->second.empty()) return otherwise;
    const std::string first = found->second.front();
    if (found->second.size() > 1) found->second.erase(found->second.begin());
    return first;
  }
  int jobs_ = 0;
};

}  // namespace hingepin::session
